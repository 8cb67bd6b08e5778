//! The window through its accessibility tree, as a person with a keyboard or a screen reader meets it.

mod bench;
mod drawing;
mod files;
mod inspection;
mod keyboard;
mod limits;
mod measure;
mod on_disk;
mod optics;
mod recent;
mod recovery;
mod room;
mod room_page;
mod sheet;
mod shop_plan;
mod tabs;
mod values;
mod working;
mod workshop;
