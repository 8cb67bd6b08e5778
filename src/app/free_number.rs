//! A number that belongs to a page and not to the design: what a plot shows, how far a dimension may be settled.

use egui::{Id, Ui};

use super::field::{shown, typed_ui};
use super::view::{Typed, View};
use crate::document::parse_quantity;
use crate::mount::Unit;

/// What a box for such a number shows.
#[derive(Clone, Copy, Debug)]
pub struct FreeNumber<'a> {
    /// What sets it apart.
    pub id: Id,
    /// The whole name for a screen reader.
    pub name: &'a str,
    /// The number it holds; none shows the hint.
    pub value: Option<f64>,
    /// Its unit.
    pub unit: Unit,
    /// What an empty box stands for.
    pub hint: &'static str,
    /// Least and greatest value taken.
    pub range: (f64, f64),
}

/// Width of the box, points.
const WIDTH: f32 = 58.0;

/// The box; puts the number that was typed into `place`, or none where the box was emptied. A refusal is remembered
/// under the box's id.
pub fn free_number_ui(
    ui: &mut Ui,
    view: &mut View<'_>,
    number: FreeNumber<'_>,
    place: &mut Option<f64>,
) {
    let unit = number.unit;
    let holds = number
        .value
        .map_or_else(String::new, |value| shown(value, unit));
    let (response, typed) = typed_ui(ui, view, number.id, &holds, WIDTH, number.hint);
    let (low, high) = number.range;
    response.accessible_name(number.name).on_hover_text(format!(
        "{}: {} to {}",
        number.name,
        unit.show(low),
        unit.show(high)
    ));
    let Typed::Finished(text) = typed else {
        return;
    };
    match read(&text, unit, number.range) {
        Ok(read) => {
            view.typing.forget_refusal(number.id);
            *place = read;
        }
        Err(why) => view.typing.refuse(number.id, why),
    }
}

/// The number of a text; none of an empty one.
fn read(text: &str, unit: Unit, (low, high): (f64, f64)) -> Result<Option<f64>, String> {
    if text.trim().is_empty() {
        return Ok(None);
    }
    match parse_quantity(text, unit) {
        Ok(value) if (low..=high).contains(&value) => Ok(Some(value)),
        Ok(value) => Err(format!(
            "{} is not between {} and {}",
            unit.show(value),
            unit.show(low),
            unit.show(high)
        )),
        Err(error) => Err(error.to_string()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_out_of_range_is_refused_with_the_range() {
        let range = (0.2, 5.0);
        assert_eq!(read(" 1,25 ", Unit::Mm, range), Ok(Some(1.25)));
        assert_eq!(read("", Unit::Mm, range), Ok(None));
        let why = read("9", Unit::Mm, range).unwrap_err();
        assert!(why.contains("0.20 mm") && why.contains("5.00 mm"), "{why}");
        assert!(read("thick", Unit::Mm, range).is_err());
    }
}
