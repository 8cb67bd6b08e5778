//! A frame of each page: what the processor does before anything is handed to the screen.

use egui_kittest::Harness;
use flangewright::app::chooser::{FileAnswer, FileChooser, FileQuestion};
use flangewright::app::page::Page;
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

/// Layout and triangles of every page while the pointer moves over it.
pub fn frames(bounds_s: (f64, f64)) -> Vec<Figure> {
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
    let frame = |page: &Page| {
        window.key_press_modifiers(egui::Modifiers::COMMAND, page.key().unwrap());
        window.run_steps(6);
        let mut along = 0.0_f32;
        let name = format!("frame of the page {}", page.title());
        Figure::measured(name, bounds_s, 200, || {
            along = (along + 7.0) % 400.0;
            window.event(egui::Event::PointerMoved(egui::pos2(300.0 + along, 250.0)));
            window.step();
            let shapes = window.output().shapes.clone();
            window.ctx.tessellate(shapes, 1.0)
        })
    };
    Page::ALL.iter().map(frame).collect()
}
