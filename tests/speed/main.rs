//! How fast the program is on this machine: a table of figures against what they must be and what they aim at.
//!
//! `cargo bench --bench speed`. Ends with an error where a figure is twice what it must be: less is the noise of a
//! busy machine.

mod designs;
mod figure;
mod page;
mod program;

use std::sync::atomic::AtomicBool;

use flangewright::document::{Design, RingKey};
use flangewright::drawing::mesh::{MeshOptions, stl, trial_print};
use flangewright::drawing::pdf::pdf;
use flangewright::drawing::raster::{Ground, Raster, png};
use flangewright::drawing::ring_sheet;
use flangewright::drawing::ring_sheet::format_of;
use flangewright::evaluate::evaluate;
use flangewright::ring::derive;
use flangewright::settle::{Axis, map, rooms};
use flangewright::workshop::Workshop;

use figure::Figure;

const US: f64 = 1e-6;
const MS: f64 = 1e-3;

fn main() -> std::process::ExitCode {
    let workshop = Workshop::default_set().unwrap();
    let default = designs::default_design();
    let (many_lugs, many_steps) = (designs::sixty_lugs(), designs::two_hundred_pieces());
    let evaluation = evaluate(&default, &workshop);
    let scene = ring_sheet(&default, &evaluation).unwrap();
    let raster = Raster {
        dpi: 300,
        ground: Ground::White,
        group: format_of(&default).line_group(),
    };
    let never = AtomicBool::new(false);
    let figures = [
        Figure::measured(
            "evaluation, default design",
            (300.0 * US, 100.0 * US),
            3000,
            || evaluate(&default, &workshop),
        ),
        Figure::measured("evaluation, 60 lugs", (2.0 * MS, 1.0 * MS), 500, || {
            evaluate(&many_lugs, &workshop)
        }),
        Figure::measured(
            "evaluation, 200 outline pieces",
            (2.0 * MS, 1.0 * MS),
            500,
            || evaluate(&many_steps, &workshop),
        ),
        page::frame((8.0 * MS, 4.0 * MS)),
        page::inspection_frame((8.0 * MS, 4.0 * MS)),
        page::frame_beside_room((8.0 * MS, 4.0 * MS)),
        Figure::measured(
            "room to move, all dimensions",
            (300.0 * MS, 100.0 * MS),
            10,
            || rooms(&default, &workshop, RingKey::ALL, &[], &never, |_| {}),
        ),
        Figure::measured("map 200 x 200", (5000.0 * MS, 2000.0 * MS), 1, || {
            let [across, up] = map_axes(&default, &workshop);
            map(&default, &workshop, across, up, &never, |_| {})
        }),
        Figure::measured("sheet laid out", (100.0 * MS, 50.0 * MS), 20, || {
            ring_sheet(&default, &evaluation)
        }),
        Figure::measured("A4 PNG, 300 dpi", (300.0 * MS, 150.0 * MS), 10, || {
            png(&scene, raster)
        }),
        Figure::measured("A4 PDF", (100.0 * MS, 50.0 * MS), 20, || {
            pdf(&scene, &default.name, raster.group)
        }),
        Figure::measured("mesh and STL", (200.0 * MS, 100.0 * MS), 20, || {
            trial_print(&evaluation, MeshOptions::default()).map(|mesh| stl(&mesh))
        }),
    ];
    println!("{}, one core; room and map on every core", machine());
    println!(
        "{:<34}{:>11}{:>11}{:>11}{:>11}",
        "figure", "median", "99 of 100", "must", "aim"
    );
    for figure in &figures {
        println!("{figure}");
    }
    program::print();
    if figures.iter().any(Figure::is_far_off) {
        println!("a figure is twice what it must be");
        return std::process::ExitCode::FAILURE;
    }
    std::process::ExitCode::SUCCESS
}

/// Two hundred rings along the room of lip face and spigot.
fn map_axes(design: &Design, workshop: &Workshop) -> [Axis; 2] {
    let derivation = derive(design, workshop);
    [RingKey::LipFaceDepth, RingKey::SpigotLength].map(|key| {
        let present = derivation.dimension(key).and_then(|state| state.value);
        let present = present.unwrap_or_default();
        Axis {
            key,
            from: present - 1.0,
            to: present + 1.0,
            cells: 200,
        }
    })
}

/// The processor's name, where the system tells it.
fn machine() -> String {
    let facts = std::fs::read_to_string("/proc/cpuinfo").unwrap_or_default();
    let name = facts
        .lines()
        .find_map(|line| line.strip_prefix("model name")?.split_once(':'));
    name.map_or_else(
        || "unknown processor".to_owned(),
        |(_, name)| name.trim().to_owned(),
    )
}
