//! The machines on the page Workshop: lathe and chuck, mill, dividing head, rotary table.

use egui::Ui;

use super::shop_rows::{
    Number, shop_choice_ui, shop_counts_ui, shop_list_ui, shop_name_ui, shop_number_ui,
    shop_tick_ui, whole,
};
use super::view::View;
use crate::mount::Unit;
use crate::workshop::{Chuck, ChuckKey, Dials, RotaryTable, Workshop};

/// Lathe and chuck.
pub fn lathe_ui(ui: &mut Ui, view: &mut View<'_>) {
    let lathe = &view.workshop.lathe;
    shop_name_ui(ui, view, "Lathe", &lathe.name, |shop, name| {
        shop.lathe.name = name;
    });
    shop_list_ui(
        ui,
        view,
        "Lathe speeds, rpm",
        "70 100 125",
        &lathe.spindle_rpm,
        |shop, speeds| shop.lathe.spindle_rpm = speeds,
    );
    shop_tick_ui(
        ui,
        view,
        "lathe: any speed between the least and the greatest",
        "a drive without steps",
        lathe.is_variable,
        |shop, is_variable| shop.lathe.is_variable = is_variable,
    );
    let number = |label, hover, unit, value| Number {
        label,
        hover,
        unit,
        value: Some(value),
    };
    shop_number_ui(
        ui,
        view,
        &number(
            "Speed for threading, rpm",
            "the speed that you cut threads with; what the checks of the relief count with",
            Unit::One,
            lathe.threading_rpm,
        ),
        |shop, value| shop.lathe.threading_rpm = value,
    );
    shop_number_ui(
        ui,
        view,
        &number(
            "Leadscrew pitch",
            "in mm, or typed in inches: 0.125 in is 3.175 mm",
            Unit::Mm,
            lathe.leadscrew_pitch_mm,
        ),
        |shop, value| shop.lathe.leadscrew_pitch_mm = value,
    );
    shop_counts_ui(
        ui,
        view,
        "Change gears, teeth",
        "20 25 30",
        &lathe.change_gears,
        |shop, teeth| shop.lathe.change_gears = teeth,
    );
    shop_counts_ui(
        ui,
        view,
        "Thread dial wheels, teeth",
        "none",
        &lathe.thread_dial_teeth,
        |shop, teeth| shop.lathe.thread_dial_teeth = teeth,
    );
    shop_number_ui(
        ui,
        view,
        &number(
            "Compound angle",
            "from the direction of the cross-slide, as it is set for threading; 0 feeds straight in",
            Unit::Deg,
            lathe.compound_angle_deg,
        ),
        |shop, value| shop.lathe.compound_angle_deg = value,
    );
    let dials = Dials::ALL.map(|dials| (dials, dials.words().to_owned()));
    shop_choice_ui(
        ui,
        view,
        "Dials of the lathe in",
        "the infeed table and the sizes of each step are given as the dials show them",
        (&lathe.dials, &dials),
        |shop, dials| shop.lathe.dials = dials,
    );
    shop_tick_ui(
        ui,
        view,
        "a left-hand inside threading tool",
        "cuts outward, from the relief to the mouth, with the spindle in reverse",
        lathe.has_left_hand_tool,
        |shop, has| shop.lathe.has_left_hand_tool = has,
    );
    chuck_ui(ui, view, &view.workshop.chuck);
}

fn chuck_ui(ui: &mut Ui, view: &mut View<'_>, chuck: &Chuck) {
    shop_name_ui(ui, view, "Chuck", &chuck.name, |shop, name| {
        shop.chuck.name = name;
    });
    let number = |label, hover, unit, value| Number {
        label,
        hover,
        unit,
        value,
    };
    shop_number_ui(
        ui,
        view,
        &number(
            "Jaws",
            "how many jaws grip the ring",
            Unit::One,
            Some(f64::from(chuck.jaws)),
        ),
        |shop, value| shop.chuck.jaws = whole(value),
    );
    shop_number_ui(
        ui,
        view,
        &number(
            "Force of a jaw",
            "on thin work, where somebody has measured it; 0 for not known",
            Unit::N,
            chuck.jaw_force_n,
        ),
        |shop, value| shop.chuck.jaw_force_n = (value != 0.0).then_some(value),
    );
    shop_number_ui(
        ui,
        view,
        &number(
            "Greatest speed marked, rpm",
            "no step of the plan goes faster; 0 for no mark",
            Unit::One,
            chuck.limit_rpm,
        ),
        |shop, value| shop.chuck.limit_rpm = (value != 0.0).then_some(value),
    );
    key_ui(ui, view, chuck.key);
}

/// The chuck's key, where the force of a jaw follows from it.
fn key_ui(ui: &mut Ui, view: &mut View<'_>, key: Option<ChuckKey>) {
    shop_tick_ui(
        ui,
        view,
        "the force of a jaw follows from the chuck's key",
        "from its torque, where nobody has measured the force itself",
        key.is_some(),
        |shop, has| shop.chuck.key = has.then_some(USUAL_KEY),
    );
    let Some(key) = key else { return };
    let rows: [(&str, &str, Unit, f64, SetKey); 4] = [
        (
            "Torque on the key",
            "as it is tightened on thin work",
            Unit::Nmm,
            key.torque_nmm,
            |key, value| key.torque_nmm = value,
        ),
        (
            "Turns of the key a scroll turn",
            "how often the key goes round for one turn of the scroll",
            Unit::One,
            key.turns_per_scroll_turn,
            |key, value| key.turns_per_scroll_turn = value,
        ),
        (
            "Scroll pitch",
            "travel of a jaw for one turn of the scroll",
            Unit::Mm,
            key.scroll_pitch_mm,
            |key, value| key.scroll_pitch_mm = value,
        ),
        (
            "Share not lost to friction",
            "0 to 1; a dry scroll loses most of it",
            Unit::One,
            key.efficiency,
            |key, value| key.efficiency = value,
        ),
    ];
    for (label, hover, unit, value, set) in rows {
        let number = Number {
            label,
            hover,
            unit,
            value: Some(value),
        };
        shop_number_ui(ui, view, &number, |shop, value| {
            if let Some(key) = &mut shop.chuck.key {
                set(key, value);
            }
        });
    }
}

/// Sets one number of a chuck's key.
type SetKey = fn(&mut ChuckKey, f64);

/// What a key begins with when it is told of: a small chuck tightened by hand; from memory.
const USUAL_KEY: ChuckKey = ChuckKey {
    torque_nmm: 3000.0,
    turns_per_scroll_turn: 4.0,
    scroll_pitch_mm: 6.0,
    efficiency: 0.25,
};

/// The mill.
pub fn mill_ui(ui: &mut Ui, view: &mut View<'_>) {
    let mill = &view.workshop.mill;
    shop_name_ui(ui, view, "Mill", &mill.name, |shop, name| {
        shop.mill.name = name;
    });
    shop_list_ui(
        ui,
        view,
        "Mill speeds, rpm",
        "200 350 600",
        &mill.spindle_rpm,
        |shop, speeds| shop.mill.spindle_rpm = speeds,
    );
    shop_tick_ui(
        ui,
        view,
        "mill: any speed between the least and the greatest",
        "a drive without steps",
        mill.is_variable,
        |shop, is_variable| shop.mill.is_variable = is_variable,
    );
    shop_tick_ui(
        ui,
        view,
        "a digital readout",
        "the plan then gives x and y of the cutter for every edge",
        mill.has_readout,
        |shop, has| shop.mill.has_readout = has,
    );
}

/// The dividing head.
pub fn head_ui(ui: &mut Ui, view: &mut View<'_>) {
    let head = &view.workshop.dividing_head;
    shop_tick_ui(
        ui,
        view,
        "there is a dividing head",
        "with a crank and plates of hole circles",
        head.is_there,
        |shop, is_there| shop.dividing_head.is_there = is_there,
    );
    if !head.is_there {
        return;
    }
    shop_name_ui(ui, view, "Dividing head", &head.name, |shop, name| {
        shop.dividing_head.name = name;
    });
    let number = Number {
        label: "Turns of the crank",
        hover: "for one turn of the work: 40, 60, 72, 90",
        unit: Unit::One,
        value: Some(f64::from(head.ratio)),
    };
    shop_number_ui(ui, view, &number, |shop, value| {
        shop.dividing_head.ratio = whole(value);
    });
    for (index, circles) in head.plates.iter().enumerate() {
        let label = format!("Circles of plate {}", index + 1);
        shop_counts_ui(ui, view, &label, "15 16 17", circles, |shop, circles| {
            set_plate(shop, index, circles);
        });
    }
    let another = format!("Circles of plate {}", head.plates.len() + 1);
    shop_counts_ui(ui, view, &another, "no plate", &[], |shop, circles| {
        shop.dividing_head.plates.push(circles);
    });
    shop_tick_ui(
        ui,
        view,
        "takes the lathe's chuck with the work in it",
        "then the gaps can be milled while the ring is still on the bar",
        head.takes_lathe_chuck,
        |shop, takes| shop.dividing_head.takes_lathe_chuck = takes,
    );
}

/// A plate without circles is no plate.
fn set_plate(shop: &mut Workshop, index: usize, circles: Vec<u32>) {
    let plates = &mut shop.dividing_head.plates;
    if circles.is_empty() && index < plates.len() {
        plates.remove(index);
    } else if let Some(plate) = plates.get_mut(index) {
        *plate = circles;
    }
}

/// The rotary table.
pub fn table_ui(ui: &mut Ui, view: &mut View<'_>) {
    let table = &view.workshop.rotary_table;
    shop_tick_ui(
        ui,
        view,
        "there is a rotary table",
        "read by its scale",
        table.is_some(),
        |shop, is_there| {
            shop.rotary_table = is_there.then(|| RotaryTable {
                name: "rotary table".to_owned(),
                step_seconds: 60,
            });
        },
    );
    let Some(table) = table else { return };
    shop_name_ui(ui, view, "Rotary table", &table.name, |shop, name| {
        if let Some(table) = &mut shop.rotary_table {
            table.name = name;
        }
    });
    let number = Number {
        label: "Least step, seconds of arc",
        hover: "of its scale or vernier: 60 is a minute",
        unit: Unit::One,
        value: Some(f64::from(table.step_seconds)),
    };
    shop_number_ui(ui, view, &number, |shop, value| {
        if let Some(table) = &mut shop.rotary_table {
            table.step_seconds = whole(value);
        }
    });
}
