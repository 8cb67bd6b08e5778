//! The pictures of the README: every page of the real window, small enough to be kept beside the code.
//!
//! `FLANGEWRIGHT_WRITE_PICTURES=1` writes them anew to `assets/pictures`; without it they are only tried.

use std::path::{Path, PathBuf};
use std::process::Command;

use flangewright::app::page::Page;

use crate::hand::{Area, Bench, colours_of};

const WHOLE: Area = Area {
    x: 0,
    y: 0,
    width: 1280,
    height: 800,
};
/// More than this a picture may not weigh, bytes.
const MOST: u64 = 120_000;

/// The name of the file of a page.
fn file_name(page: Page) -> String {
    format!("{}.png", page.title().to_lowercase().replace(' ', "-"))
}

/// Few colours are enough for lines and letters, and keep the file small.
fn small_png(picture: &Path, to: &Path) {
    let status = Command::new("convert")
        .arg(picture)
        .args(["+dither", "-colors", "64", "-strip"])
        .arg(format!("PNG8:{}", to.display()))
        .status()
        .unwrap();
    assert!(status.success(), "convert could not write {}", to.display());
}

#[test]
#[ignore = "needs an X display; .ci/run brings one"]
fn every_page_has_its_picture() {
    let design = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/assets/demos/archive_portrait.ron"
    );
    let bench = Bench::open_as(Path::new(design), (1280, 800), "(look: (colours: Light))");
    let kept = std::env::var("FLANGEWRIGHT_WRITE_PICTURES").is_ok();
    let folder = if kept {
        Path::new(env!("CARGO_MANIFEST_DIR")).join("assets/pictures")
    } else {
        bench.folder().to_owned()
    };
    for page in Page::ALL {
        let key = page.key().unwrap().name().to_lowercase();
        bench.key(&format!("ctrl+{key}"));
        let seen = bench.look_away(WHOLE);
        let to: PathBuf = folder.join(file_name(page));
        small_png(&seen, &to);
        let bytes = std::fs::metadata(&to).unwrap().len();
        assert!(bytes <= MOST, "{}: {bytes} bytes", to.display());
        assert!(colours_of(&to) > 20, "{} shows nothing", to.display());
    }
    bench.quit();
}
