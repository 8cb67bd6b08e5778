//! The files that were open last.

use std::fs;

use egui_kittest::kittest::Queryable as _;

use crate::bench::{Bench, demo};

fn recent(bench: &mut Bench, entry: &str) {
    bench.click("File");
    bench.window.get_by_label_contains("Recent files").click();
    bench.window.run();
    bench.window.get_by_label_contains(entry).click();
    bench.window.run();
}

#[test]
fn a_file_that_was_open_is_opened_again_from_the_menu() {
    let (own, folder) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let path = folder.path().join("Blende 50%.ron");
    fs::copy(demo("tall_ring.ron"), &path).unwrap();
    drop(Bench::on_file(&path, own.path()));
    let mut bench = Bench::with_own_folder(own.path());
    recent(&mut bench, "Blende 50%.ron");
    assert_eq!(
        bench.workspace().path(),
        Some(fs::canonicalize(&path).unwrap().as_path())
    );
}

#[test]
fn one_that_is_gone_says_so_in_the_list_and_when_it_is_asked_for() {
    let (own, folder) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let path = folder.path().join("gone.ron");
    fs::copy(demo("tall_ring.ron"), &path).unwrap();
    drop(Bench::on_file(&path, own.path()));
    fs::remove_file(&path).unwrap();
    let mut bench = Bench::with_own_folder(own.path());
    bench.click("File");
    bench.window.get_by_label_contains("Recent files").click();
    bench.wait_until(|bench| bench.says("gone.ron (not there)"));
    bench
        .window
        .get_by_label_contains("gone.ron (not there)")
        .click();
    bench.window.run();
    assert!(
        bench.says("is not there any more: it was moved, renamed, or its disk is not connected")
    );

    recent(&mut bench, "Clear this list");
    bench.click("File");
    bench.window.get_by_label_contains("Recent files").click();
    bench.window.run();
    assert!(bench.says("none yet"));
}
