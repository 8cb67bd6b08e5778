//! The page Drawing: the sheet, its choices, its dimensions, the way out to files and the clipboard.

use egui::accesskit::Role;
use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable as _;
use flangewright::app::page::Page;
use flangewright::document::{DimensionId, Paper, Projection, RingKey};
use flangewright::drawing::laid_out;
use flangewright::geometry::Point;
use flangewright::mount::Interface;

use crate::bench::{Bench, demo};

const THREAD: DimensionId = DimensionId::Thread;

fn on_page() -> Bench {
    let mut bench = Bench::new();
    bench.show(Page::Drawing);
    bench
}

impl Bench {
    fn sheet(&self) -> &flangewright::document::Sheet {
        &self.workspace().design().sheet
    }

    /// Where the middle of a dimension's lettering is on the screen; the whole sheet is in sight.
    pub fn on_screen(&self, id: DimensionId) -> egui::Pos2 {
        let (design, evaluation) = (self.workspace().design(), self.workspace().evaluation());
        let sheet = laid_out(design, evaluation).unwrap();
        let own = sheet.dimensions.iter().find(|own| own.id == id).unwrap();
        let at = own.extent().unwrap().centre();
        self.of_sheet(at)
    }

    #[expect(
        clippy::cast_possible_truncation,
        reason = "places on a screen are of single precision"
    )]
    fn of_sheet(&self, at: Point) -> egui::Pos2 {
        let canvas = self.window.get_by_label("Drawing as it prints").rect();
        let paper = match self.sheet().paper {
            Paper::A4Landscape => egui::vec2(297.0, 210.0),
            Paper::A3Landscape => egui::vec2(420.0, 297.0),
        };
        // The sheet stands in the middle with 26 points round it.
        let scale = ((canvas.width() - 52.0) / paper.x).min((canvas.height() - 52.0) / paper.y);
        let off = egui::vec2(at.x as f32, -(at.y as f32)) - egui::vec2(paper.x, -paper.y) / 2.0;
        canvas.center() + off * scale
    }

    fn drag(&mut self, from: egui::Pos2, by: egui::Vec2) {
        self.window.hover_at(from);
        self.window.step();
        self.window.drag_at(from);
        self.window.step();
        for share in [0.3, 0.7, 1.0] {
            self.window.hover_at(from + by * share);
            self.window.step();
            self.window.step();
        }
        self.window.drop_at(from + by);
        self.window.run();
    }
}

#[test]
fn choices_change_the_sheet_and_are_undone() {
    let mut bench = on_page();
    bench.choose("Paper", "A3, 420 x 297 mm");
    assert_eq!(bench.sheet().paper, Paper::A3Landscape);
    assert!(bench.says("A3 landscape, 5:1"));
    bench.choose("Projection", "first angle");
    assert_eq!(bench.sheet().projection, Projection::FirstAngle);
    bench.choose("Scale", "2:1");
    assert!(bench.says("A3 landscape, 2:1"));
    for _ in 0..3 {
        bench.press(Modifiers::COMMAND, Key::Z);
    }
    assert_eq!(bench.sheet().paper, Paper::A4Landscape);
    assert_eq!(bench.sheet().scale, None);
}

#[test]
fn a_scale_that_does_not_fit_is_told_in_place_of_the_sheet() {
    let mut bench = on_page();
    bench.choose("Scale", "50:1");
    assert!(bench.says("do not fit on A4 landscape at 50:1"));
    bench.choose("Scale", "1:1");
    assert!(
        bench
            .window
            .query_by_label("Drawing as it prints")
            .is_some()
    );
}

#[test]
fn a_dimension_is_dragged_as_one_step_of_undo_and_put_back() {
    let mut bench = on_page();
    let from = bench.on_screen(THREAD);
    bench.drag(from, egui::vec2(-20.0, 15.0));
    let (right, up) = bench.sheet().moved_mm(THREAD);
    assert!(right < -4.0 && up < -3.0, "{right} {up}");
    let now = bench.on_screen(THREAD);
    assert!(
        (now - from - egui::vec2(-20.0, 15.0)).length() < 2.0,
        "{from} {now}"
    );
    bench.press(Modifiers::COMMAND, Key::Z);
    assert!(bench.sheet().overrides.is_empty());
    bench.press(Modifiers::COMMAND, Key::Y);
    assert_eq!(bench.sheet().overrides.len(), 1);
    bench.press_by_key("All back to their places");
    assert!(bench.sheet().overrides.is_empty());
}

#[test]
fn a_dimension_is_hidden_and_the_page_says_so() {
    let mut bench = on_page();
    let bore = DimensionId::Size(RingKey::LipBore);
    let show = |bench: &mut Bench| {
        bench
            .window
            .get_by_role_and_label(Role::CheckBox, "Show Lip bore")
            .click();
        bench.window.run();
    };
    show(&mut bench);
    assert!(bench.sheet().hides(bore));
    assert!(bench.says("1 hidden by hand"));
    show(&mut bench);
    assert!(bench.sheet().overrides.is_empty() && !bench.says("hidden by hand"));
}

#[test]
fn the_title_block_takes_words_and_refuses_too_many() {
    let mut bench = on_page();
    bench.window.get_by_label("Title block").click();
    bench.window.run();
    bench.enter("Created by", "A. N. Turner");
    assert_eq!(bench.sheet().creator, "A. N. Turner");
    bench.enter("Created by", &"x".repeat(90));
    assert_eq!(bench.sheet().creator, "A. N. Turner");
    assert!(bench.says("at most 80 fit"));
}

#[test]
fn what_is_missing_stands_in_place_of_the_sheet() {
    let folder = tempfile::tempdir().unwrap();
    let mut design = flangewright::app::files::open_design(&demo("archive_portrait.ron")).unwrap();
    design.body.throat = Interface::Unknown;
    let path = folder.path().join("unknown.ron");
    flangewright::app::files::save_design(&path, &design).unwrap();
    let mut bench = Bench::sized(&path, 1280.0, 800.0);
    bench.show(Page::Drawing);
    assert!(bench.says("There is no whole ring yet"));
}

#[test]
fn a_written_drawing_tells_where_it_is_and_offers_to_show_it() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("ring.svg");
    let mut bench = on_page();
    bench.press_button("Export…");
    bench.window.run();
    bench.write("Path", &path.display().to_string());
    bench.press_button("Write SVG");
    bench.wait_until(|bench| bench.says("written to"));
    assert!(path.is_file());
    assert!(bench.says("Show the file") && bench.says("Show the folder"));
}

#[test]
fn the_drawing_is_copied_as_a_picture() {
    let mut bench = on_page();
    bench.press_button("Copy picture");
    let copied = |bench: &Bench| {
        let output = bench.window.output();
        let is_image = |command: &egui::OutputCommand| matches!(command, egui::OutputCommand::CopyImage(image) if image.size == [3508, 2480]);
        output.platform_output.commands.iter().any(is_image)
    };
    let seen = std::cell::Cell::new(false);
    bench.wait_until(|bench| {
        seen.set(seen.get() || copied(bench));
        bench.says("drawing copied to the clipboard, 3508 x 2480 dots")
    });
    assert!(seen.get());
}
