//! A frame of a page: what the processor does before anything is handed to the screen.

use egui_kittest::Harness;
use flangewright::app::chooser::{FileAnswer, FileChooser, FileQuestion};
use flangewright::app::page::Page;
use flangewright::app::window::Window;
use flangewright::app::workspace::Workspace;
use flangewright::document::{Design, Reading, RingKey, SizeOf};
use flangewright::workshop::Workshop;

use super::designs;
use super::figure::Figure;

/// Nobody chooses a file here.
struct Nobody;

impl FileChooser for Nobody {
    fn start_open(&mut self, _: FileQuestion) {}

    fn start_save(&mut self, _: FileQuestion) {}

    fn poll(&mut self) -> Option<FileAnswer> {
        None
    }
}

/// Layout and triangles of the design page while the pointer moves over the drawing.
pub fn frame(bounds_s: (f64, f64)) -> Figure {
    moved(
        "frame of the design page",
        bounds_s,
        &designs::default_design(),
        Page::Design,
    )
}

/// The same of the page Inspection, with readings round the ring.
pub fn inspection_frame(bounds_s: (f64, f64)) -> Figure {
    let mut design = designs::default_design();
    design.readings.push(Reading {
        dimension: SizeOf::Ring(RingKey::SeatHeight),
        values: vec![1.46, 1.47, 1.46, 1.45, 1.45, 1.46],
        instrument: "micrometer 0-25".to_owned(),
        places: 6,
        after_corrections: 0,
    });
    moved(
        "frame of the inspection page",
        bounds_s,
        &design,
        Page::Inspection,
    )
}

fn moved(name: &'static str, bounds_s: (f64, f64), design: &Design, page: Page) -> Figure {
    let design = design.clone();
    let mut window = Harness::builder()
        .with_size(egui::vec2(1280.0, 800.0))
        .with_max_steps(12)
        .build_eframe(move |creation: &mut eframe::CreationContext<'static>| {
            let workspace = Workspace::new(design.clone(), Workshop::default_set().unwrap());
            Window::new(workspace, Box::new(Nobody), &creation.egui_ctx)
        });
    window.run();
    window.key_press_modifiers(egui::Modifiers::COMMAND, page.key().unwrap());
    window.run();
    let mut along = 0.0_f32;
    Figure::measured(name, bounds_s, 200, || {
        along = (along + 7.0) % 400.0;
        window.event(egui::Event::PointerMoved(egui::pos2(300.0 + along, 250.0)));
        window.step();
        let shapes = window.output().shapes.clone();
        window.ctx.tessellate(shapes, 1.0)
    })
}
