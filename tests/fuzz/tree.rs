//! Designs changed as trees of values: a number, a word, a list or a whole branch, of its own or of another design.

use flangewright::document::Design;
use serde_json::Value;

use crate::dice::Dice;

/// Numbers at the edges of what a design may hold, and of what numbers are.
const NUMBERS: [f64; 22] = [
    0.0,
    -0.0,
    1e-300,
    f64::MIN_POSITIVE,
    1e-9,
    0.001,
    0.01,
    0.1,
    0.5,
    1.0,
    1.3,
    2.0,
    10.0,
    41.999_999_999,
    42.0,
    90.0,
    180.0,
    359.999_999_9,
    360.0,
    500.0,
    1000.0,
    1e9,
];

/// The design with one thing changed, where what comes out can be a design at all.
pub fn changed(dice: &mut Dice, design: &Design, other: &Design) -> Option<Design> {
    let mut tree = serde_json::to_value(design).ok()?;
    let places = places_of(&tree);
    let place = dice.pick(&places);
    let given = serde_json::to_value(other).ok()?;
    let branch = given.pointer(&place).cloned();
    let elsewhere = tree.pointer(&dice.pick(&places)).cloned();
    let spot = tree.pointer_mut(&place)?;
    match branch {
        // The same branch of another design.
        Some(branch) if dice.chance(30) => *spot = branch,
        _ => change(dice, spot, elsewhere),
    }
    serde_json::from_value(tree).ok()
}

fn places_of(tree: &Value) -> Vec<String> {
    let mut places = Vec::new();
    collect(tree, String::new(), &mut places);
    places
}

fn collect(tree: &Value, place: String, places: &mut Vec<String>) {
    match tree {
        Value::Array(list) => {
            for (index, one) in list.iter().enumerate() {
                collect(one, format!("{place}/{index}"), places);
            }
        }
        Value::Object(fields) => {
            for (name, one) in fields {
                let name = name.replace('~', "~0").replace('/', "~1");
                collect(one, format!("{place}/{name}"), places);
            }
        }
        Value::Null | Value::Bool(_) | Value::Number(_) | Value::String(_) => {}
    }
    places.push(place);
}

fn change(dice: &mut Dice, spot: &mut Value, elsewhere: Option<Value>) {
    match spot {
        Value::Number(number) => {
            let now = number.as_f64().unwrap_or(1.0);
            let next = match dice.below(5) {
                0 => dice.pick(&NUMBERS),
                1 => -now,
                2 => now * dice.between(0.1, 3.0),
                3 => now + dice.between(-2.0, 2.0),
                // As near as a number can be without being the same.
                _ => f64::from_bits(now.to_bits().wrapping_add(1)),
            };
            *spot = if number.is_f64() {
                Value::from(next)
            } else {
                Value::from(next.abs() as u64)
            };
        }
        Value::Array(list) => change_list(dice, list),
        Value::Bool(yes) => *yes = !*yes,
        Value::String(word) if dice.chance(30) => {
            dice.pick(&["", "none such", "ß\u{0}\n", "end mill 3"])
                .clone_into(word);
        }
        Value::Null | Value::String(_) | Value::Object(_) => {
            *spot = elsewhere.unwrap_or(Value::Null);
        }
    }
}

fn change_list(dice: &mut Dice, list: &mut Vec<Value>) {
    if list.is_empty() {
        return;
    }
    let (one, other) = (dice.below(list.len()), dice.below(list.len()));
    match dice.below(4) {
        0 => {
            list.remove(one);
        }
        1 => list.swap(one, other),
        2 if list.len() < 80 => list.insert(other, list[one].clone()),
        _ => list.truncate(one),
    }
}
