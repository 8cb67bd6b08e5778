//! A frame of a page: what the processor does before anything is handed to the screen.

use egui::accesskit::Role;
use egui::{Key, Modifiers};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
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
    let mut window = opened(design, page);
    moving(name, bounds_s, &mut window)
}

/// A window on a design, its page in sight.
fn opened(design: &Design, page: Page) -> Harness<'static, Window> {
    let design = design.clone();
    let mut window = Harness::builder()
        .with_size(egui::vec2(1280.0, 800.0))
        .with_max_steps(12)
        .build_eframe(move |creation: &mut eframe::CreationContext<'static>| {
            let workspace = Workspace::new(design.clone(), Workshop::default_set().unwrap());
            Window::new(workspace, Box::new(Nobody), &creation.egui_ctx)
        });
    window.run();
    show(&mut window, page);
    window
}

fn show(window: &mut Harness<'static, Window>, page: Page) {
    window.key_press_modifiers(Modifiers::COMMAND, page.key().unwrap());
    window.run();
}

/// Layout and triangles while the pointer moves over the page.
fn moving(
    name: &'static str,
    bounds_s: (f64, f64),
    window: &mut Harness<'static, Window>,
) -> Figure {
    let mut along = 0.0_f32;
    Figure::measured(name, bounds_s, 200, || {
        along = (along + 7.0) % 400.0;
        window.event(egui::Event::PointerMoved(egui::pos2(300.0 + along, 250.0)));
        window.step();
        let shapes = window.output().shapes.clone();
        window.ctx.tessellate(shapes, 1.0)
    })
}

/// The page Compare with six designs on it: while the pointer moves, and while a limit goes to and fro in every frame, so
/// that all six are evaluated, compared and drawn anew.
pub fn comparing_six(bounds_s: (f64, f64)) -> [Figure; 2] {
    let mut window = opened(&designs::six_variants(), Page::Limits);
    change_a_limit(&mut window);
    show(&mut window, Page::Compare);
    let still = moving("frame comparing six designs", bounds_s, &mut window);
    let mut is_back = false;
    let changing = Figure::measured("frame after all six have changed", bounds_s, 100, || {
        is_back = !is_back;
        let shift = if is_back {
            Modifiers::NONE
        } else {
            Modifiers::SHIFT
        };
        window.key_press_modifiers(Modifiers::COMMAND | shift, Key::Z);
        window.step();
        let shapes = window.output().shapes.clone();
        window.ctx.tessellate(shapes, 1.0)
    });
    [still, changing]
}

/// One step to be undone and done again, on which every variant rests.
fn change_a_limit(window: &mut Harness<'static, Window>) {
    let label = "Lip thickness, caution under";
    window.get_by_role_and_label(Role::TextInput, label).focus();
    window.run();
    window.key_press_modifiers(Modifiers::COMMAND, Key::A);
    window
        .get_by_role_and_label(Role::TextInput, label)
        .type_text("1.3");
    window.run();
    window.key_press(Key::Enter);
    window.run();
}
