//! The window through its accessibility tree, as a person with a keyboard or a screen reader meets it.

mod bench;
mod drawing;
mod files;
mod inspection;
mod keyboard;
mod limits;
mod look;
mod measure;
mod optics;
mod sheet;
mod values;
mod working;
