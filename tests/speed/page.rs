//! A frame of a page: what the processor does before anything is handed to the screen.

use std::hint::black_box;
use std::sync::LazyLock;
use std::time::{Duration, Instant};

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

/// A frame of every page while the pointer moves over it; the ring has been cut and read.
pub fn frames(bounds_s: (f64, f64)) -> Vec<Figure> {
    let mut design = designs::default_design();
    design.readings.push(Reading {
        dimension: SizeOf::Ring(RingKey::SeatHeight),
        values: vec![1.46, 1.47, 1.46, 1.45, 1.45, 1.46],
        instrument: "micrometer 0-25".to_owned(),
        places: 6,
        after_corrections: 0,
    });
    Page::ALL
        .iter()
        .map(|page| moved(bounds_s, &design, *page))
        .collect()
}

/// What a frame of the design page takes of the processor while the room to move is worked beside it and the value
/// changes from frame to frame, as under a hand that drags it.
pub fn frame_beside_room(bounds_s: (f64, f64)) -> Figure {
    let mut window = opened(&designs::default_design(), Page::Design);
    let grip = window.get_by_label("Drag Flange diameter").rect().center();
    window.drag_at(grip);
    window.step();
    let mut along = 0.0_f32;
    let times = (0..200)
        .map(|turn| {
            // Every now and then the hand rests for as long as it takes to begin.
            if turn % 10 == 0 {
                std::thread::sleep(Duration::from_millis(200));
            } else {
                along = (along + 1.0) % 30.0;
                window.hover_at(grip - egui::vec2(along, 0.0));
            }
            let begun = processor_time();
            window.step();
            let shapes = window.output().shapes.clone();
            black_box(window.ctx.tessellate(shapes, 1.0));
            processor_time().saturating_sub(begun)
        })
        .collect();
    Figure::of("frame while room is worked, processor", bounds_s, times)
}

/// What this thread has had of the processor, where the system tells it; else the clock on the wall.
fn processor_time() -> Duration {
    static BEGUN: LazyLock<Instant> = LazyLock::new(Instant::now);
    let told = std::fs::read_to_string("/proc/thread-self/schedstat").unwrap_or_default();
    let nanoseconds = told
        .split_whitespace()
        .next()
        .and_then(|one| one.parse().ok());
    nanoseconds.map_or_else(|| BEGUN.elapsed(), Duration::from_nanos)
}

fn moved(bounds_s: (f64, f64), design: &Design, page: Page) -> Figure {
    let mut window = opened(design, page);
    // The room to move has a figure of its own.
    window.state_mut().show_room(false);
    let name = format!("frame of the page {}", page.title());
    moving(&name, bounds_s, &mut window)
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
    window.run_steps(4);
    show(&mut window, page);
    window
}

fn show(window: &mut Harness<'static, Window>, page: Page) {
    window.key_press_modifiers(Modifiers::COMMAND, page.key().unwrap());
    window.run_steps(6);
}

/// Layout and triangles while the pointer moves over the page.
fn moving(name: &str, bounds_s: (f64, f64), window: &mut Harness<'static, Window>) -> Figure {
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
