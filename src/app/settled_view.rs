//! What settling came to: before and after in a table and in the half-section, or what contradicts what.

use egui::{Grid, RichText, ScrollArea, Ui};

use super::canvas::{Canvas, Showing};
use super::command::Command;
use super::edit::Edit;
use super::severity_sign::sign_ui;
use super::view::View;
use super::working_panel::link_ui;
use crate::checks::Severity;
use crate::document::{Choice, Design, FieldRef, RingKey};
use crate::drawing::outlines::path_of;
use crate::drawing::section_view::{SectionOptions, section_view};
use crate::drawing::{LineType, Role, Scene, Shape};
use crate::evaluate::Evaluation;
use crate::settle::{Contradiction, Member, Release, Settled};

/// Moves less than this are none, mm or degrees.
const UNMOVED: f64 = 1e-9;

/// The overlay, drawn once for each result.
#[derive(Default)]
pub struct SettledView {
    canvas: Canvas,
    scene: Option<(u64, f64, Scene)>,
    drawn: u64,
}

impl SettledView {
    /// Table, button and overlay; `number` tells the design that was settled.
    pub fn settled_ui(
        &mut self,
        ui: &mut Ui,
        view: &mut View<'_>,
        settled: &Settled,
        number: u64,
        is_current: bool,
    ) {
        if settled.moves.is_empty() {
            ui.label("The ring has no clash: nothing has to move.");
            return;
        }
        if !is_current {
            stale_ui(ui, view);
        }
        ScrollArea::vertical()
            .id_salt("settled")
            .max_height((ui.available_height() * 0.5).max(120.0))
            .show(ui, |ui| {
                moves_ui(ui, settled);
                findings_ui(ui, view, settled);
            });
        let take = ui.add_enabled(is_current, egui::Button::new("Take it"));
        if take
            .on_hover_text("sets what moved by hand; one step of undo takes it back")
            .clicked()
        {
            let sizes = set_anew(view.design, &settled.design);
            view.wish(Command::Edit(Edit::Dimensions(sizes)));
        }
        ui.label(
            RichText::new("the settled ring; the ring before it in dash-double-dotted lines")
                .small()
                .weak(),
        );
        self.overlay_ui(ui, view, settled, number);
    }

    fn overlay_ui(&mut self, ui: &mut Ui, view: &View<'_>, settled: &Settled, number: u64) {
        let is_of_it = |(of, measure, _): &(u64, f64, Scene)| {
            *of == number && measure.to_bits() == settled.measure.to_bits()
        };
        if !self.scene.as_ref().is_some_and(is_of_it) {
            self.drawn += 1;
            self.scene = Some((number, settled.measure, overlay(settled)));
        }
        let Some((_, _, scene)) = &self.scene else {
            return;
        };
        let showing = Showing {
            name: "Half-section before and after",
            scene,
            revision: self.drawn,
            axes: ["z", "r"],
            is_lit: &|_| false,
            light: 0,
            grabs: &|_, _| false,
            palette: view.palette,
            sheet: None,
        };
        self.canvas.canvas_ui(ui, &showing);
    }
}

fn stale_ui(ui: &mut Ui, view: &View<'_>) {
    ui.colored_label(
        view.palette.caution,
        "The design has changed since: find it again for the present one.",
    );
}

/// The settled ring as it is drawn, and the outline of the one before it over it.
fn overlay(settled: &Settled) -> Scene {
    let options = SectionOptions::on_screen(settled.design.sheet.section_angle_deg);
    let mut scene = section_view(&settled.design, &settled.after, &options);
    if let Some(parts) = &settled.before.parts {
        scene.draw(
            Shape::Path(path_of(&parts.through_lug)),
            LineType::LongDashDoubleDotNarrow,
            Role::Highlight,
        );
    }
    scene
}

/// What must be set by hand to make one design of the other.
fn set_anew(from: &Design, to: &Design) -> Vec<(RingKey, f64)> {
    let differs = |key: &RingKey| match to.ring.dimensions.get(*key).value {
        Choice::Set(value) if from.ring.dimensions.get(*key).value != Choice::Set(value) => {
            Some((*key, value))
        }
        Choice::Set(_) | Choice::Derived => None,
    };
    RingKey::ALL.iter().filter_map(differs).collect()
}

/// Every dimension that differs: what was let go, and what followed its rule after it.
fn moves_ui(ui: &mut Ui, settled: &Settled) {
    let value = |evaluation: &Evaluation, key| evaluation.derivation.dimension(key)?.value;
    Grid::new("moves")
        .striped(true)
        .num_columns(5)
        .show(ui, |ui| {
            for title in ["dimension", "before", "after", "moved by", ""] {
                ui.label(RichText::new(title).small().strong());
            }
            ui.end_row();
            for key in RingKey::ALL {
                let both = value(&settled.before, *key).zip(value(&settled.after, *key));
                let Some((before, after)) = both.filter(|(a, b)| (a - b).abs() > UNMOVED) else {
                    continue;
                };
                let unit = key.unit();
                let moved = settled.moves.iter().any(|one| one.key == *key);
                ui.label(key.label());
                ui.label(unit.show(before));
                ui.label(RichText::new(unit.show(after)).strong());
                ui.label(format!(
                    "{}{}",
                    if after > before { "+" } else { "" },
                    unit.show(after - before)
                ));
                ui.label(RichText::new(if moved { "" } else { "by its rule" }).small());
                ui.end_row();
            }
        });
}

/// The findings that were a clash or a caution, or became one.
fn findings_ui(ui: &mut Ui, view: &View<'_>, settled: &Settled) {
    let count = |evaluation: &Evaluation| {
        let clashes = evaluation.count(Severity::Clash);
        let cautions = evaluation.count(Severity::Caution);
        format!(
            "{clashes} {}, {cautions} {}",
            if clashes == 1 { "clash" } else { "clashes" },
            if cautions == 1 { "caution" } else { "cautions" }
        )
    };
    ui.label(RichText::new(format!(
        "findings before: {}; after: {}",
        count(&settled.before),
        count(&settled.after)
    )));
    Grid::new("settled findings")
        .striped(true)
        .num_columns(3)
        .show(ui, |ui| {
            for before in &settled.before.findings {
                let Some(after) = settled.after.finding(before.key) else {
                    continue;
                };
                let bad = |severity| matches!(severity, Severity::Clash | Severity::Caution);
                if !bad(before.severity) && !bad(after.severity) {
                    continue;
                }
                ui.label(RichText::new(before.key.title()).small());
                for severity in [before.severity, after.severity] {
                    ui.horizontal(|ui| {
                        sign_ui(ui, view.palette, severity);
                        ui.label(RichText::new(severity.word()).small());
                    });
                }
                ui.end_row();
            }
        });
}

/// Why there is no ring: the members that contradict each other, and what each release would give.
pub fn none_ui(ui: &mut Ui, view: &mut View<'_>, why: &Contradiction, is_current: bool) {
    if !is_current {
        stale_ui(ui, view);
    }
    ui.label(
        RichText::new("No ring without a clash was found by moving these dimensions.").strong(),
    );
    if let Some(reason) = &why.no_ring {
        ui.label(format!("Not even with every dimension let go: {reason}"));
        return;
    }
    ui.label(format!(
        "These {} cannot all hold. {}",
        why.releases.len(),
        why.standing.words()
    ));
    for release in &why.releases {
        ui.separator();
        ui.horizontal_wrapped(|ui| {
            let (what, field) = member_words(release.member);
            match field {
                Some(field) => link_ui(ui, view, field, &what),
                None => {
                    ui.label(RichText::new(what).strong());
                }
            }
        });
        ui.label(RichText::new(release_words(view, release)).small());
    }
}

/// A member in words, and the field it stands in, if it is one.
fn member_words(member: Member) -> (String, Option<FieldRef>) {
    match member {
        Member::Finding(key) => (format!("{}: no clash", key.title()), None),
        Member::Held(key) => (
            format!("{} held as it stands", key.label()),
            Some(FieldRef::Ring(key)),
        ),
        Member::Bounds(key) => (
            format!("the bounds of {}", key.label().to_lowercase()),
            Some(FieldRef::Ring(key)),
        ),
    }
}

/// The ring that was found without one member.
fn release_words(view: &View<'_>, release: &Release) -> String {
    let given_up = match release.member {
        Member::Finding(_) => "With this clash left",
        Member::Held(_) => "With this let go",
        Member::Bounds(_) => "Without these bounds",
    };
    let moved: Vec<String> = release
        .sizes
        .iter()
        .filter_map(|(key, value)| {
            let present = view.evaluation.derivation.dimension(*key)?.value?;
            let far = (present - value).abs() > 5e-4;
            far.then(|| format!("{} {}", key.label().to_lowercase(), key.unit().show(*value)))
        })
        .collect();
    if moved.is_empty() {
        return format!("{given_up}, the others hold as the ring stands.");
    }
    format!(
        "{given_up}, the others hold, such as with {}.",
        moved.join(", ")
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::demo_designs;

    #[test]
    fn only_what_was_set_is_taken_over() {
        let from = demo_designs().unwrap().swap_remove(0);
        let mut to = from.clone();
        to.ring.dimensions.lip_thickness.value = Choice::Set(1.25);
        assert_eq!(set_anew(&from, &to), [(RingKey::LipThickness, 1.25)]);
        assert!(set_anew(&from, &from).is_empty());
    }
}
