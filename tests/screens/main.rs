//! The window through its accessibility tree, as a person with a keyboard or a screen reader meets it.

mod bench;
mod compare;
mod drawing;
mod files;
mod hands;
mod help;
mod icon;
mod inspection;
mod keyboard;
mod limits;
mod look;
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
