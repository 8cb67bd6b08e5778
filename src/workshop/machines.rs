//! Lathe, mill and dividing head.

use serde::{Deserialize, Serialize};

use super::Dials;

/// A lathe.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Lathe {
    /// Its name.
    pub name: String,
    /// Spindle speeds, rpm, lowest first.
    pub spindle_rpm: Vec<f64>,
    /// Whether every speed between the least and the greatest can be set.
    #[serde(default)]
    pub is_variable: bool,
    /// What its dials count in.
    #[serde(default)]
    pub dials: Dials,
    /// Whether there is an inside threading tool that cuts outward, the spindle in reverse.
    #[serde(default)]
    pub has_left_hand_tool: bool,
    /// The speed used for threading, rpm.
    pub threading_rpm: f64,
    /// Pitch of the leadscrew, mm.
    pub leadscrew_pitch_mm: f64,
    /// Angle of the compound slide for threading, degrees from the cross-slide direction.
    pub compound_angle_deg: f64,
    /// Teeth of the change gears between spindle and leadscrew, each gear once.
    #[serde(default = "common_change_gears")]
    pub change_gears: Vec<u32>,
    /// Teeth of the wheels that the thread dial can be given; empty without a dial.
    #[serde(default)]
    pub thread_dial_teeth: Vec<u32>,
}

impl Lathe {
    /// The speeds to choose from, rpm, lowest first: its steps, or for a drive without steps preferred numbers.
    #[must_use]
    pub fn speeds_rpm(&self) -> Vec<f64> {
        speeds(&self.spindle_rpm, self.is_variable)
    }
}

impl Mill {
    /// The speeds to choose from, as [`Lathe::speeds_rpm`].
    #[must_use]
    pub fn speeds_rpm(&self) -> Vec<f64> {
        speeds(&self.spindle_rpm, self.is_variable)
    }
}

/// Ten preferred numbers to a decade (ISO 3, series R10).
const PREFERRED: [f64; 10] = [1.0, 1.25, 1.6, 2.0, 2.5, 3.15, 4.0, 5.0, 6.3, 8.0];

/// The listed speeds; without steps, the least, the greatest and the preferred numbers between them.
fn speeds(listed_rpm: &[f64], is_variable: bool) -> Vec<f64> {
    let ends = listed_rpm.first().zip(listed_rpm.last());
    let Some((least, greatest)) = ends.filter(|_| is_variable) else {
        return listed_rpm.to_vec();
    };
    let between = (0..5).flat_map(|decade| PREFERRED.map(|number| number * 10_f64.powi(decade)));
    std::iter::once(*least)
        .chain(between.filter(|rpm| rpm > least && rpm < greatest))
        .chain((greatest > least).then_some(*greatest))
        .collect()
}

/// The change gears of many small lathes, and the 127 that turns inches into millimetres; common practice, no source.
fn common_change_gears() -> Vec<u32> {
    vec![20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 75, 80, 127]
}

/// A mill.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Mill {
    /// Its name.
    pub name: String,
    /// Spindle speeds, rpm, lowest first.
    pub spindle_rpm: Vec<f64>,
    /// Whether every speed between the least and the greatest can be set.
    #[serde(default)]
    pub is_variable: bool,
    /// Whether a digital readout shows where the table stands.
    #[serde(default)]
    pub has_readout: bool,
}

/// A dividing head.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DividingHead {
    /// Whether there is one.
    #[serde(default = "yes")]
    pub is_there: bool,
    /// Its name.
    pub name: String,
    /// Turns of the crank for one turn of the work.
    pub ratio: u32,
    /// Hole circles, plate by plate.
    pub plates: Vec<Vec<u32>>,
    /// Whether the lathe's chuck, with the work in it, can be moved over to it.
    #[serde(default = "yes")]
    pub takes_lathe_chuck: bool,
}

const fn yes() -> bool {
    true
}

/// A rotary table that is read by its scale.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RotaryTable {
    /// Its name.
    pub name: String,
    /// Smallest step of its scale, seconds of arc.
    pub step_seconds: u32,
}

/// A scroll chuck on the lathe.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Chuck {
    /// Its name.
    pub name: String,
    /// How many jaws.
    pub jaws: u32,
    /// Force of each jaw on thin work, N, where somebody has measured it.
    pub jaw_force_n: Option<f64>,
    /// How the key makes that force, where its torque is known.
    pub key: Option<ChuckKey>,
    /// The greatest speed marked on it, rpm, where there is a mark.
    pub limit_rpm: Option<f64>,
}

/// The key and the scroll of a chuck.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ChuckKey {
    /// Torque on the key for thin work, N·mm.
    pub torque_nmm: f64,
    /// Turns of the key for one turn of the scroll.
    pub turns_per_scroll_turn: f64,
    /// Travel of a jaw for one turn of the scroll, mm.
    pub scroll_pitch_mm: f64,
    /// Share of the work that is not lost to friction, 0 to 1.
    pub efficiency: f64,
}

impl Default for Chuck {
    fn default() -> Self {
        Self {
            name: String::new(),
            jaws: 3,
            jaw_force_n: None,
            key: None,
            limit_rpm: None,
        }
    }
}

impl Chuck {
    /// Force of each jaw, N: as measured, else from the work of the key, shared by the jaws:
    /// `2 π i T η / (n p)`. `None` where neither is known or a number makes no sense.
    #[must_use]
    pub fn force_of_a_jaw_n(&self) -> Option<f64> {
        let by_key = || {
            let key = self.key?;
            let work =
                std::f64::consts::TAU * key.turns_per_scroll_turn * key.torque_nmm * key.efficiency;
            Some(work / (f64::from(self.jaws) * key.scroll_pitch_mm))
        };
        self.jaw_force_n
            .or_else(by_key)
            .filter(|force| force.is_finite() && *force > 0.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// ISO 3, series R10: 63 80 100 125 160.
    #[test]
    fn a_drive_without_steps_offers_preferred_numbers() {
        assert_eq!(
            speeds(&[70.0, 160.0], true),
            [70.0, 80.0, 100.0, 125.0, 160.0]
        );
        assert_eq!(speeds(&[70.0, 160.0], false), [70.0, 160.0]);
        assert_eq!(speeds(&[70.0], true), [70.0]);
        assert!(speeds(&[], true).is_empty());
    }

    /// 3 N·m on the key, 4 turns of it for one of the scroll of 6 mm, a quarter of the work: 2π·4·3000·0.25/(3·6).
    #[test]
    fn the_work_of_the_key_is_shared_by_the_jaws() {
        let key = ChuckKey {
            torque_nmm: 3000.0,
            turns_per_scroll_turn: 4.0,
            scroll_pitch_mm: 6.0,
            efficiency: 0.25,
        };
        let mut chuck = Chuck {
            key: Some(key),
            ..Chuck::default()
        };
        assert!((chuck.force_of_a_jaw_n().unwrap() - 1047.2).abs() < 0.1);
        chuck.jaw_force_n = Some(200.0);
        assert_eq!(chuck.force_of_a_jaw_n(), Some(200.0));
        assert_eq!(Chuck::default().force_of_a_jaw_n(), None);
        let idle = ChuckKey {
            scroll_pitch_mm: 0.0,
            ..key
        };
        assert_eq!(
            Chuck {
                key: Some(idle),
                ..Chuck::default()
            }
            .force_of_a_jaw_n(),
            None
        );
    }
}
