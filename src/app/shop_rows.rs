//! Rows of the workshop's machines: numbers, yes or no, choices, and lists of numbers, each one change of the workshop.

use egui::{Id, Ui};

use super::field::{NumberField, number_ui};
use super::shop_edit::ShopEdit;
use super::text_field::{choice_ui, text_ui};
use super::view::View;
use crate::document::parse_quantity;
use crate::mount::Unit;
use crate::workshop::Workshop;

/// Room for a label, points.
const LABEL_WIDTH: f32 = 190.0;

/// What sets a row of the workshop apart.
pub fn salt(label: &str) -> Id {
    Id::unique(("workshop", label))
}

/// A number.
pub struct Number<'a> {
    /// The label.
    pub label: &'a str,
    /// What it is for.
    pub hover: &'a str,
    /// The unit.
    pub unit: Unit,
    /// The number; none shows an empty box.
    pub value: Option<f64>,
}

/// A row with a number.
pub fn shop_number_ui(
    ui: &mut Ui,
    view: &mut View<'_>,
    number: &Number<'_>,
    set: impl Fn(&mut Workshop, f64),
) {
    let field = NumberField {
        label: number.label,
        salt: salt(number.label),
        field: None,
        value: number.value,
        unit: number.unit,
        label_width: Some(LABEL_WIDTH),
        hover: number.hover.to_owned(),
        step: 0.0,
    };
    let workshop = view.workshop;
    number_ui(
        ui,
        view,
        &field,
        |value| ShopEdit::of(workshop, |shop| set(shop, value)),
        |_, _| {},
    );
}

/// A row with a name.
pub fn shop_name_ui(
    ui: &mut Ui,
    view: &mut View<'_>,
    label: &str,
    holds: &str,
    set: impl FnOnce(&mut Workshop, String),
) {
    if let Some(text) = text_ui(ui, view, salt(label), label, holds, "name") {
        wish(ui, view, label, |shop| set(shop, text.trim().to_owned()));
    }
}

/// Wishes for a change from the row of this label.
pub fn wish(_ui: &Ui, view: &mut View<'_>, label: &str, change: impl FnOnce(&mut Workshop)) {
    let edit = ShopEdit::of(view.workshop, change);
    view.wish_from(salt(label).with("box"), edit);
}

/// A box to tick.
pub fn shop_tick_ui(
    ui: &mut Ui,
    view: &mut View<'_>,
    label: &str,
    hover: &str,
    mut now: bool,
    set: impl FnOnce(&mut Workshop, bool),
) {
    if ui.checkbox(&mut now, label).on_hover_text(hover).changed() {
        wish(ui, view, label, |shop| set(shop, now));
    }
}

/// One of a few choices.
pub fn shop_choice_ui<T: PartialEq + Clone>(
    ui: &mut Ui,
    view: &mut View<'_>,
    label: &str,
    hover: &str,
    (now, choices): (&T, &[(T, String)]),
    set: impl FnOnce(&mut Workshop, T),
) {
    if let Some(chosen) = choice_ui(ui, salt(label), false, label, now, choices, hover) {
        wish(ui, view, label, |shop| set(shop, chosen));
    }
}

/// A list of numbers in one box, with blanks between them.
pub fn shop_list_ui(
    ui: &mut Ui,
    view: &mut View<'_>,
    label: &str,
    hover: &'static str,
    numbers: &[f64],
    set: impl FnOnce(&mut Workshop, Vec<f64>),
) {
    let shown: Vec<String> = numbers.iter().map(|number| format!("{number}")).collect();
    let shown = shown.join(" ");
    let Some(text) = text_ui(ui, view, salt(label), label, &shown, hover) else {
        return;
    };
    match read_list(&text) {
        Ok(numbers) => wish(ui, view, label, |shop| set(shop, numbers)),
        Err(why) => view.typing.refuse(salt(label).with("box"), why),
    }
}

/// The same for whole numbers.
pub fn shop_counts_ui(
    ui: &mut Ui,
    view: &mut View<'_>,
    label: &str,
    hover: &'static str,
    counts: &[u32],
    set: impl FnOnce(&mut Workshop, Vec<u32>),
) {
    let shown: Vec<String> = counts.iter().map(ToString::to_string).collect();
    let Some(text) = text_ui(ui, view, salt(label), label, &shown.join(" "), hover) else {
        return;
    };
    match read_counts(&text) {
        Ok(counts) => wish(ui, view, label, |shop| set(shop, counts)),
        Err(why) => view.typing.refuse(salt(label).with("box"), why),
    }
}

/// Numbers with blanks or semicolons between them.
///
/// # Errors
/// Why one of them is no number.
fn read_list(text: &str) -> Result<Vec<f64>, String> {
    parts(text)
        .map(|part| parse_quantity(part, Unit::One).map_err(|error| error.to_string()))
        .collect()
}

/// Whole numbers with blanks, commas or semicolons between them.
///
/// # Errors
/// Which of them is none.
pub fn read_counts(text: &str) -> Result<Vec<u32>, String> {
    text.split(|sign: char| sign.is_whitespace() || sign == ';' || sign == ',')
        .filter(|part| !part.is_empty())
        .map(|part| {
            part.parse::<u32>()
                .map_err(|_| format!("\"{part}\" is no whole number; write such as 15 16 17"))
        })
        .collect()
}

fn parts(text: &str) -> impl Iterator<Item = &str> {
    text.split(|sign: char| sign.is_whitespace() || sign == ';')
        .filter(|part| !part.is_empty())
}

/// A typed number as a count; what is out of range is refused when the workshop is checked.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "`as` stops at the ends of the range, and the range is checked after"
)]
pub fn whole(count: f64) -> u32 {
    count.round() as u32
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lists_are_read_with_blanks_between_and_a_comma_in_a_number() {
        assert_eq!(read_list("70 100;125,5").unwrap(), [70.0, 100.0, 125.5]);
        assert_eq!(read_list("").unwrap(), [0.0; 0]);
        assert!(read_list("70 fast").is_err());
        assert_eq!(read_counts("15, 16 17;18").unwrap(), [15, 16, 17, 18]);
        assert!(read_counts("15.5").unwrap_err().contains("15.5"));
        assert!(read_counts("-3").is_err());
    }
}
