//! A new design: one lens and one body from the library, side by side.

use egui::{RichText, ScrollArea, Ui};

use super::command::Command;
use crate::document::{Design, Library};
use crate::mount::{Body, BodyField, Lens, LensField};

/// The choice in progress.
#[derive(Debug)]
pub struct NewPanel {
    library: Library,
    demos: Vec<Design>,
    lens: Option<usize>,
    body: Option<usize>,
}

/// What a dialog wants next.
#[derive(Debug, PartialEq)]
pub enum Wanted {
    /// Stay.
    Nothing,
    /// Close.
    Close,
    /// Do this and close.
    Do(Command),
}

/// Height of the lists, points.
const LIST_HEIGHT: f32 = 300.0;

impl NewPanel {
    /// A panel with these mounts to choose from, and invented designs to look at.
    #[must_use]
    pub const fn new(library: Library, demos: Vec<Design>) -> Self {
        Self {
            library,
            demos,
            lens: None,
            body: None,
        }
    }

    /// The panel.
    pub fn new_ui(&mut self, ui: &mut Ui) -> Wanted {
        ui.label(RichText::new("New design").heading());
        ui.label("Choose the lens and the body. What is not known of them stays unknown until you measure it.");
        ui.add_space(4.0);
        let width = (ui.available_width() - 12.0) / 2.0;
        ui.horizontal_top(|ui| {
            let lenses = self.library.lenses.iter().map(lens_words);
            list_ui(
                ui,
                "Lens",
                "a lens that is not in the list",
                width,
                lenses,
                &mut self.lens,
            );
            let bodies = self.library.bodies.iter().map(body_words);
            list_ui(
                ui,
                "Body",
                "a body that is not in the list",
                width,
                bodies,
                &mut self.body,
            );
        });
        ui.add_space(6.0);
        let mut wanted = Wanted::Nothing;
        ui.horizontal(|ui| {
            if ui
                .button("Start")
                .on_hover_text(Command::New.explains())
                .clicked()
            {
                wanted = Wanted::Do(self.chosen());
            }
            if ui.button("Cancel").clicked() {
                wanted = Wanted::Close;
            }
        });
        self.demos_ui(ui, &mut wanted);
        wanted
    }

    /// The invented designs; each opens as a copy that nobody has saved.
    fn demos_ui(&self, ui: &mut Ui, wanted: &mut Wanted) {
        if self.demos.is_empty() {
            return;
        }
        ui.separator();
        ui.strong("Or look at an invented design");
        ui.horizontal_wrapped(|ui| {
            for demo in &self.demos {
                let button = ui.button(&demo.name).on_hover_text(&demo.notes);
                if button.clicked() {
                    *wanted = Wanted::Do(Command::StartFrom(Box::new(demo.clone())));
                }
            }
        });
    }

    fn chosen(&self) -> Command {
        let lens = self
            .lens
            .and_then(|place| self.library.lenses.get(place))
            .cloned();
        let body = self
            .body
            .and_then(|place| self.library.bodies.get(place))
            .cloned();
        let lens = lens.unwrap_or_else(|| Lens {
            name: "my lens".to_owned(),
            ..Lens::default()
        });
        let body = body.unwrap_or_else(|| Body {
            name: "my body".to_owned(),
            ..Body::default()
        });
        Command::Start(Box::new(lens), Box::new(body))
    }
}

fn lens_words(lens: &Lens) -> (String, String) {
    let unknown = LensField::ALL
        .iter()
        .filter(|key| lens.field(**key).number().is_none())
        .count();
    (
        lens.name.clone(),
        format!(
            "{unknown} of {} values still to be measured",
            LensField::ALL.len()
        ),
    )
}

fn body_words(body: &Body) -> (String, String) {
    let unknown = BodyField::ALL
        .iter()
        .filter(|key| body.field(**key).number().is_none())
        .count();
    (
        body.name.clone(),
        format!(
            "{unknown} of {} values still to be measured",
            BodyField::ALL.len()
        ),
    )
}

fn list_ui(
    ui: &mut Ui,
    title: &str,
    other: &str,
    width: f32,
    all: impl Iterator<Item = (String, String)>,
    chosen: &mut Option<usize>,
) {
    ui.vertical(|ui| {
        ui.set_width(width);
        ui.strong(title);
        ScrollArea::vertical()
            .id_salt(title)
            .max_height(LIST_HEIGHT)
            .auto_shrink([false, true])
            .show(ui, |ui| {
                if ui.radio(chosen.is_none(), other).clicked() {
                    *chosen = None;
                }
                for (place, (name, words)) in all.enumerate() {
                    if ui.radio(*chosen == Some(place), name).clicked() {
                        *chosen = Some(place);
                    }
                    ui.horizontal_wrapped(|ui| {
                        ui.add_space(20.0);
                        ui.label(RichText::new(words).small().weak());
                    });
                }
            });
    });
}
