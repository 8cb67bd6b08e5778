//! A frame of the design page: what the processor does before anything is handed to the screen.

use egui_kittest::Harness;
use flangewright::app::chooser::{FileAnswer, FileChooser, FileQuestion};
use flangewright::app::window::Window;
use flangewright::app::workspace::Workspace;
use flangewright::workshop::Workshop;

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

/// Layout and triangles of the page while the pointer moves over the drawing.
pub fn frame(bounds_s: (f64, f64)) -> Figure {
    let demo = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/assets/demos/archive_portrait.ron"
    );
    let mut window = Harness::builder()
        .with_size(egui::vec2(1280.0, 800.0))
        .with_max_steps(12)
        .build_eframe(move |creation: &mut eframe::CreationContext<'static>| {
            let workspace = Workspace::empty(Workshop::default_set().unwrap());
            let mut window = Window::new(workspace, Box::new(Nobody), &creation.egui_ctx);
            window.open(demo.as_ref());
            window
        });
    window.run();
    let mut along = 0.0_f32;
    Figure::measured("frame of the design page", bounds_s, 200, || {
        along = (along + 7.0) % 400.0;
        window.event(egui::Event::PointerMoved(egui::pos2(300.0 + along, 250.0)));
        window.step();
        let shapes = window.output().shapes.clone();
        window.ctx.tessellate(shapes, 1.0)
    })
}
