//! The program's sign as files for the desktop: the same as the window wears.
//!
//! `FLANGEWRIGHT_WRITE_ICON=1` writes them anew.

use std::fs::File;
use std::io::{BufReader, BufWriter};
use std::path::{Path, PathBuf};

use flangewright::app::icon::icon;

const SIDES: [u32; 5] = [16, 32, 48, 128, 256];

fn file_of(side: u32) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("assets/icon/flangewright-{side}.png"))
}

fn write(side: u32) {
    let file = BufWriter::new(File::create(file_of(side)).unwrap());
    let mut encoder = png::Encoder::new(file, side, side);
    encoder.set_color(png::ColorType::Rgba);
    encoder.set_depth(png::BitDepth::Eight);
    let mut writer = encoder.write_header().unwrap();
    writer.write_image_data(&icon(side).rgba).unwrap();
}

#[test]
fn the_files_show_the_sign_that_the_window_wears() {
    for side in SIDES {
        if std::env::var("FLANGEWRIGHT_WRITE_ICON").is_ok() {
            write(side);
        }
        let file = BufReader::new(File::open(file_of(side)).unwrap());
        let mut reader = png::Decoder::new(file).read_info().unwrap();
        let mut dots = vec![0; reader.output_buffer_size().unwrap()];
        let info = reader.next_frame(&mut dots).unwrap();
        assert_eq!((info.width, info.height), (side, side));
        assert_eq!(dots, icon(side).rgba, "{side}");
    }
}

#[test]
fn the_desktop_entry_names_program_and_sign() {
    // Keys of the freedesktop Desktop Entry Specification 1.5 (from memory): Type and Name are required.
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("assets/flangewright.desktop");
    let text = std::fs::read_to_string(path).unwrap();
    let mut lines = text.lines();
    assert_eq!(lines.next(), Some("[Desktop Entry]"));
    for wanted in [
        "Type=Application",
        "Name=Flangewright",
        "Exec=flangewright %f",
        "Icon=flangewright",
        "Terminal=false",
        "StartupWMClass=flangewright",
    ] {
        assert!(text.lines().any(|line| line == wanted), "{wanted}");
    }
}
