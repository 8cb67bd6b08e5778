//! What can be chosen for the sheet: paper, scale, views, units, title block, notes.

use egui::{Id, Ui};

use super::edit::Edit;
use super::export_panel::sheet_ui;
use super::field::{NumberField, number_ui};
use super::group::group_ui;
use super::sheet_edit::{SheetEdit, SheetPart, TitleField};
use super::text_field::{choice_ui, lines_ui, text_ui};
use super::view::View;
use crate::document::{Lengths, Projection, ViewChoice};
use crate::mount::Unit;
use crate::standards::{SCALES, Scale};

/// All choices, in groups.
pub fn sheet_choices_ui(ui: &mut Ui, view: &mut View<'_>, fitted: Option<Scale>) {
    group_ui(ui, view, "Sheet", true, &[], |ui, view| {
        sheet_ui(ui, view, "page");
        scale_ui(ui, view, fitted);
        projection_ui(ui, view);
        cut_ui(ui, view);
        numbers_ui(ui, view);
    });
    group_ui(ui, view, "Views", true, &[], views_ui);
    group_ui(ui, view, "Title block", false, &[], title_ui);
    group_ui(ui, view, "Notes", false, &[], |ui, view| {
        let salt = Id::unique("sheet notes");
        let holds = view.design.sheet.notes.clone();
        if let Some(text) = lines_ui(ui, view, salt, "Further notes, one a line", &holds) {
            wish(view, salt.with("box"), SheetEdit::Notes(text));
        }
    });
}

fn wish(view: &mut View<'_>, field: Id, edit: SheetEdit) {
    view.wish_from(field, Edit::Sheet(edit));
}

fn scale_ui(ui: &mut Ui, view: &mut View<'_>, fitted: Option<Scale>) {
    let words = fitted.map_or_else(
        || "the largest that fits".to_owned(),
        |scale| format!("the largest that fits: {scale}"),
    );
    let scales = SCALES.map(|scale| (Some(scale), scale.to_string()));
    let choices: Vec<(Option<Scale>, String)> =
        std::iter::once((None, words)).chain(scales).collect();
    let salt = Id::unique("scale");
    let hover = "scale of the half-section, of the list of ISO 5455";
    let now = view.design.sheet.scale;
    if let Some(scale) = choice_ui(ui, salt, false, "Scale", &now, &choices, hover) {
        wish(view, salt, SheetEdit::Scale(scale));
    }
}

fn projection_ui(ui: &mut Ui, view: &mut View<'_>) {
    let choices = Projection::ALL.map(|projection| (projection, projection.words().to_owned()));
    let salt = Id::unique("projection");
    let hover = "first angle: the lens side is drawn right of the half-section; third angle: left of it (ISO 5456-2)";
    let now = view.design.sheet.projection;
    if let Some(projection) = choice_ui(ui, salt, false, "Projection", &now, &choices, hover) {
        wish(view, salt, SheetEdit::Projection(projection));
    }
}

fn cut_ui(ui: &mut Ui, view: &mut View<'_>) {
    let cut = NumberField {
        label: "Section A-A at",
        salt: Id::unique("sheet section angle"),
        field: None,
        value: Some(view.design.sheet.section_angle_deg),
        unit: Unit::Deg,
        label_width: None,
        hover: "clock angle of the cut, clockwise from 12 o'clock, seen from the lens side"
            .to_owned(),
        step: 0.5,
    };
    number_ui(ui, view, &cut, Edit::SectionAngle, |_, _| {});
}

fn numbers_ui(ui: &mut Ui, view: &mut View<'_>) {
    let lengths = [
        (Lengths::Millimetres, "mm".to_owned()),
        (Lengths::WithInches, "mm, inches in brackets".to_owned()),
    ];
    let salt = Id::unique("lengths");
    let now = view.design.sheet.lengths;
    if let Some(lengths) = choice_ui(
        ui,
        salt,
        false,
        "Lengths",
        &now,
        &lengths,
        "unit of lengths",
    ) {
        wish(view, salt, SheetEdit::Lengths(lengths));
    }
    let marks = [
        (false, "point, 1.5".to_owned()),
        (true, "comma, 1,5".to_owned()),
    ];
    let salt = Id::unique("decimal mark");
    let now = view.design.sheet.decimal_comma;
    let hover = "what stands between whole and broken numbers; ISO 129-1 has the comma";
    if let Some(comma) = choice_ui(ui, salt, false, "Decimal sign", &now, &marks, hover) {
        wish(view, salt, SheetEdit::DecimalComma(comma));
    }
    let mut clear = view.design.sheet.transparent;
    if ui.checkbox(&mut clear, "Pictures without ground").changed() {
        wish(
            view,
            Id::unique("transparent"),
            SheetEdit::Transparent(clear),
        );
    }
}

fn views_ui(ui: &mut Ui, view: &mut View<'_>) {
    for part in SheetPart::ALL {
        let choices = ViewChoice::ALL.map(|choice| (choice, choice.words().to_owned()));
        let salt = Id::unique(("sheet view", part));
        let now = part.of(&view.design.sheet.views);
        let hover = "whether it is drawn beside the half-section";
        if let Some(choice) = choice_ui(ui, salt, false, part.label(), &now, &choices, hover) {
            wish(view, salt, SheetEdit::View(part, choice));
        }
    }
}

fn title_ui(ui: &mut Ui, view: &mut View<'_>) {
    for field in TitleField::ALL {
        let salt = Id::unique(("title block", field));
        let holds = field.of(&view.design.sheet).to_owned();
        if let Some(text) = text_ui(ui, view, salt, field.label(), &holds, field.hint()) {
            wish(view, salt.with("box"), SheetEdit::Title(field, text));
        }
    }
}
