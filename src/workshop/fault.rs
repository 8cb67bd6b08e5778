//! Values that no workshop may have: each named with its field, the value and what is allowed.
//!
//! The ranges are wide: they keep out slips of the finger and wrong units, not odd machines (own choice).

use super::{Chuck, Cutter, DividingHead, Instrument, Lathe, Material, Mill, RotaryTable};
use super::{TurningTool, Workshop};
use crate::document::{Fault, check_range};
use crate::mount::Unit;

/// Letters in a name at most.
const LONGEST_NAME: usize = 80;
/// Rows in a list at most.
const MOST_ROWS: usize = 200;
/// Spindle speeds of a machine at most.
const MOST_SPEEDS: usize = 60;
/// Least and greatest spindle speed, rpm.
const RPM: (f64, f64) = (1.0, 60_000.0);

/// Every fault of a workshop; empty where it may be worked with.
#[must_use]
pub fn faults_of(workshop: &Workshop) -> Vec<Fault> {
    let mut faults = Faults::default();
    faults.lathe(&workshop.lathe);
    faults.chuck(&workshop.chuck);
    faults.mill(&workshop.mill);
    faults.head(&workshop.dividing_head);
    if let Some(table) = &workshop.rotary_table {
        faults.table(table);
    }
    faults.rows("cutter", &workshop.cutters, |one| &one.name, Faults::cutter);
    faults.rows(
        "lathe tool",
        &workshop.turning_tools,
        |one| &one.name,
        Faults::tool,
    );
    faults.rows(
        "instrument",
        &workshop.instruments,
        |one| &one.name,
        Faults::instrument,
    );
    faults.rows(
        "material",
        &workshop.materials,
        |one| &one.name,
        Faults::material,
    );
    faults.0
}

#[derive(Default)]
struct Faults(Vec<Fault>);

impl Faults {
    fn range(&mut self, field: &str, value: f64, unit: Unit, allowed: (f64, f64)) {
        self.0
            .extend(check_range(field, value, unit, allowed).err());
    }

    fn whole(&mut self, field: &str, value: u32, allowed: (u32, u32)) {
        self.range(
            field,
            f64::from(value),
            Unit::One,
            (f64::from(allowed.0), f64::from(allowed.1)),
        );
    }

    fn refuse(&mut self, field: impl Into<String>, value: impl Into<String>, allowed: &str) {
        self.0.push(Fault {
            field: field.into(),
            value: value.into(),
            allowed: allowed.to_owned(),
        });
    }

    fn name(&mut self, field: &str, name: &str) {
        let letters = name.chars().count();
        if name.trim().is_empty() || letters > LONGEST_NAME || name.chars().any(char::is_control) {
            let allowed = "allowed is a name of 1 to 80 letters on one line";
            self.refuse(field, format!("\"{name}\""), allowed);
        }
    }

    fn count(&mut self, field: &str, count: usize, most: usize) {
        if count > most {
            self.refuse(
                field,
                count.to_string(),
                &format!("allowed are at most {most}"),
            );
        }
    }

    /// Speeds stand lowest first: the gears and the times to stop are listed in their order.
    fn speeds(&mut self, field: &str, speeds: &[f64]) {
        self.count(field, speeds.len(), MOST_SPEEDS);
        for speed in speeds {
            self.range(&format!("{field}, rpm"), *speed, Unit::One, RPM);
        }
        if !speeds.is_sorted_by(|one, next| one < next) {
            let listed: Vec<String> = speeds.iter().map(|speed| format!("{speed}")).collect();
            self.refuse(
                field,
                listed.join(" "),
                "allowed is each speed once, lowest first",
            );
        }
    }

    fn lathe(&mut self, lathe: &Lathe) {
        self.name("lathe, name", &lathe.name);
        self.speeds("lathe speeds", &lathe.spindle_rpm);
        self.range(
            "lathe, speed for threading, rpm",
            lathe.threading_rpm,
            Unit::One,
            RPM,
        );
        self.range(
            "leadscrew pitch",
            lathe.leadscrew_pitch_mm,
            Unit::Mm,
            (0.5, 30.0),
        );
        self.range(
            "compound angle",
            lathe.compound_angle_deg,
            Unit::Deg,
            (0.0, 60.0),
        );
        self.count("change gears", lathe.change_gears.len(), MOST_SPEEDS);
        for teeth in &lathe.change_gears {
            self.whole("change gear, teeth", *teeth, (10, 300));
        }
        self.count(
            "thread dial wheels",
            lathe.thread_dial_teeth.len(),
            MOST_SPEEDS,
        );
        for teeth in &lathe.thread_dial_teeth {
            self.whole("thread dial wheel, teeth", *teeth, (5, 100));
        }
    }

    fn chuck(&mut self, chuck: &Chuck) {
        self.whole("chuck, jaws", chuck.jaws, (2, 8));
        if let Some(force) = chuck.jaw_force_n {
            self.range("chuck, force of a jaw", force, Unit::N, (0.1, 1e5));
        }
        if let Some(rpm) = chuck.limit_rpm {
            self.range("chuck, greatest speed, rpm", rpm, Unit::One, RPM);
        }
        if let Some(key) = chuck.key {
            self.range("chuck key, torque", key.torque_nmm, Unit::Nmm, (1.0, 1e6));
            self.range(
                "chuck key, turns for one of the scroll",
                key.turns_per_scroll_turn,
                Unit::One,
                (0.1, 50.0),
            );
            self.range("scroll pitch", key.scroll_pitch_mm, Unit::Mm, (0.5, 50.0));
            self.range(
                "chuck key, efficiency",
                key.efficiency,
                Unit::One,
                (0.01, 1.0),
            );
        }
    }

    fn mill(&mut self, mill: &Mill) {
        self.name("mill, name", &mill.name);
        self.speeds("mill speeds", &mill.spindle_rpm);
    }

    fn head(&mut self, head: &DividingHead) {
        if !head.is_there {
            return;
        }
        self.name("dividing head, name", &head.name);
        self.whole("dividing head, turns of the crank", head.ratio, (1, 360));
        self.count("dividing head, plates", head.plates.len(), MOST_SPEEDS);
        for circles in &head.plates {
            self.count(
                "dividing head, hole circles of a plate",
                circles.len(),
                MOST_SPEEDS,
            );
            for holes in circles {
                self.whole("hole circle, holes", *holes, (2, 1000));
            }
        }
    }

    fn table(&mut self, table: &RotaryTable) {
        self.name("rotary table, name", &table.name);
        self.whole(
            "rotary table, step in seconds",
            table.step_seconds,
            (1, 3600),
        );
    }

    fn rows<T>(
        &mut self,
        kind: &str,
        rows: &[T],
        name: impl Fn(&T) -> &String,
        each: impl Fn(&mut Self, &T),
    ) {
        self.count(&format!("{kind}s"), rows.len(), MOST_ROWS);
        for (index, row) in rows.iter().enumerate() {
            self.name(&format!("{kind} {}, name", index + 1), name(row));
            let earlier = rows.iter().take(index);
            if earlier.into_iter().any(|other| name(other) == name(row)) {
                let allowed = "allowed is each name once: designs choose by it";
                self.refuse(
                    format!("{kind} {}, name", index + 1),
                    format!("\"{}\"", name(row)),
                    allowed,
                );
            }
            each(self, row);
        }
    }

    fn cutter(&mut self, cutter: &Cutter) {
        let of = |what: &str| format!("{}, {what}", cutter.name);
        self.range(&of("diameter"), cutter.diameter_mm, Unit::Mm, (0.2, 50.0));
        self.whole(&of("cutting edges"), cutter.flutes, (1, 20));
        self.range(
            &of("cutting length"),
            cutter.cutting_length_mm,
            Unit::Mm,
            (0.2, 200.0),
        );
    }

    fn tool(&mut self, tool: &TurningTool) {
        let of = |what: &str| format!("{}, {what}", tool.name);
        self.range(&of("width"), tool.width_mm, Unit::Mm, (0.05, 30.0));
        self.range(&of("reach"), tool.reach_mm, Unit::Mm, (0.1, 200.0));
        self.range(
            &of("least bore"),
            tool.least_bore_mm,
            Unit::Mm,
            (0.0, 300.0),
        );
    }

    fn instrument(&mut self, instrument: &Instrument) {
        let of = |what: &str| format!("{}, {what}", instrument.name);
        self.range(
            &of("permissible error"),
            instrument.permissible_error_mm,
            Unit::Mm,
            (1e-5, 2.0),
        );
        self.range(&of("step"), instrument.step_mm, Unit::Mm, (1e-5, 2.0));
    }

    fn material(&mut self, material: &Material) {
        let of = |what: &str| format!("{}, {what}", material.name);
        self.range(
            &of("density in kg/m3"),
            material.density_kg_m3,
            Unit::One,
            (100.0, 25_000.0),
        );
        self.range(
            &of("modulus in GPa"),
            material.youngs_modulus_gpa,
            Unit::One,
            (0.01, 1000.0),
        );
        self.range(
            &of("yield strength"),
            material.yield_mpa,
            Unit::Mpa,
            (0.1, 5000.0),
        );
        self.range(
            &of("expansion in 1e-6/K"),
            material.expansion_um_m_k,
            Unit::One,
            (0.0, 1000.0),
        );
        self.range(
            &of("price of a kilogram"),
            material.price_per_kg,
            Unit::One,
            (0.0, 1e6),
        );
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn told(change: impl FnOnce(&mut Workshop)) -> String {
        let mut workshop = Workshop::default_set().unwrap();
        change(&mut workshop);
        let texts: Vec<String> = faults_of(&workshop)
            .iter()
            .map(ToString::to_string)
            .collect();
        texts.join("; ")
    }

    #[test]
    fn the_shipped_workshop_has_no_fault() {
        assert_eq!(told(|_| {}), "");
    }

    /// Field, value and what is allowed are all there.
    #[test]
    fn what_is_refused_is_named_with_what_is_allowed() {
        let text = told(|shop| shop.cutters[0].diameter_mm = -4.0);
        assert!(
            text.contains("end mill 4, diameter") && text.contains("-4.00 mm"),
            "{text}"
        );
        assert!(text.contains("allowed is 0.20 mm to 50.00 mm"), "{text}");
        assert!(told(|shop| shop.materials[0].density_kg_m3 = f64::NAN).contains("NaN"));
        assert!(told(|shop| shop.lathe.leadscrew_pitch_mm = f64::INFINITY).contains("leadscrew"));
        assert!(told(|shop| shop.lathe.change_gears.push(0)).contains("change gear"));
        assert!(told(|shop| shop.dividing_head.plates[0].push(1)).contains("hole circle"));
        assert!(told(|shop| shop.lathe.spindle_rpm.reverse()).contains("lowest first"));
    }

    #[test]
    fn a_name_is_there_once_and_not_empty() {
        assert!(told(|shop| shop.cutters[1].name = "end mill 4".to_owned()).contains("once"));
        assert!(
            told(|shop| shop.instruments[0].name = "  ".to_owned()).contains("name of 1 to 80")
        );
        assert!(told(|shop| shop.materials[0].name = "a\nb".to_owned()).contains("one line"));
    }

    #[test]
    fn a_head_that_is_not_there_needs_no_plates() {
        let text = told(|shop| {
            shop.dividing_head.is_there = false;
            shop.dividing_head.ratio = 0;
        });
        assert_eq!(text, "");
        assert!(told(|shop| shop.dividing_head.ratio = 0).contains("turns of the crank"));
    }
}
