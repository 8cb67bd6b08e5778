//! Time to stop the threading tool in the relief, at each speed of the lathe, and the ways out where it is too short.
//!
//! `t = 60 w / (P n)` with the relief's width less the tool's (from the feed). Simple reaction takes 0.16 to 0.19 s
//! (Galton 1899, Welford 1980, as quoted in a public review), and two hands must move: 1 s is asked for, under 0.5 s is
//! warned of, under 0.3 s advised against (common practice, no source).

use crate::mount::Unit;
use crate::workshop::Lathe;

/// Under this many seconds it is a matter of luck.
const LUCK_S: f64 = 0.3;
/// Under this many seconds a practised hand is needed.
const PRACTISED_S: f64 = 0.5;

/// How much time there is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Comfort {
    /// At least what is asked for.
    Enough,
    /// Less than is asked for.
    Short,
    /// For a practised hand.
    Practised,
    /// Do not try.
    TooShort,
}

impl Comfort {
    /// The words in the table.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Enough => "enough",
            Self::Short => "short",
            Self::Practised => "for a practised hand",
            Self::TooShort => "do not try",
        }
    }
}

/// The time at one speed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StopTime {
    /// Spindle speed, rpm.
    pub rpm: f64,
    /// Time from the thread's end to the relief's end, s.
    pub seconds: f64,
    /// How much that is.
    pub comfort: Comfort,
}

/// Seconds that a tool takes over `free_mm` at a pitch and a spindle speed.
///
/// ```
/// use flangewright::plan::seconds_to_stop;
/// assert!((seconds_to_stop(2.0, 1.0, 100.0) - 1.2).abs() < 1e-12);
/// ```
#[must_use]
pub const fn seconds_to_stop(free_mm: f64, pitch_mm: f64, rpm: f64) -> f64 {
    60.0 * free_mm / (pitch_mm * rpm)
}

/// The greatest spindle speed that leaves `seconds`, rpm.
#[must_use]
pub const fn greatest_rpm(free_mm: f64, pitch_mm: f64, seconds: f64) -> f64 {
    60.0 * free_mm / (pitch_mm * seconds)
}

/// Relief less tool, mm, and what is asked of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RunOut {
    /// Width of the relief, mm.
    pub relief_mm: f64,
    /// Width of the tool, mm.
    pub tool_mm: f64,
    /// Pitch, mm.
    pub pitch_mm: f64,
    /// Seconds asked for.
    pub wanted_s: f64,
}

impl RunOut {
    /// What the tool has left to stop in, mm; negative where it does not go in.
    #[must_use]
    pub const fn free_mm(&self) -> f64 {
        self.relief_mm - self.tool_mm
    }

    /// The time at each speed, slowest first; speeds that are none are left out.
    #[must_use]
    pub fn at_speeds(&self, steps_rpm: &[f64]) -> Vec<StopTime> {
        let mut steps: Vec<f64> = steps_rpm.iter().copied().filter(|rpm| *rpm > 0.0).collect();
        steps.sort_by(f64::total_cmp);
        steps
            .into_iter()
            .map(|rpm| {
                let seconds = seconds_to_stop(self.free_mm(), self.pitch_mm, rpm);
                StopTime {
                    rpm,
                    seconds,
                    comfort: self.comfort(seconds),
                }
            })
            .collect()
    }

    fn comfort(&self, seconds: f64) -> Comfort {
        if seconds >= self.wanted_s {
            Comfort::Enough
        } else if seconds >= PRACTISED_S {
            Comfort::Short
        } else if seconds >= LUCK_S {
            Comfort::Practised
        } else {
            Comfort::TooShort
        }
    }

    /// The fastest of the speeds that leaves the time asked for.
    #[must_use]
    pub fn fastest_rpm(&self, steps_rpm: &[f64]) -> Option<f64> {
        self.at_speeds(steps_rpm)
            .iter()
            .rev()
            .find(|time| time.comfort == Comfort::Enough)
            .map(|time| time.rpm)
    }

    /// What can be done where no speed leaves the time asked for; empty where one does.
    #[must_use]
    pub fn ways_out(&self, lathe: &Lathe) -> Vec<String> {
        let steps_rpm = &lathe.speeds_rpm();
        if self.fastest_rpm(steps_rpm).is_some() {
            return Vec::new();
        }
        let mut ways = Vec::new();
        if self.free_mm() > 0.0 {
            let most = greatest_rpm(self.free_mm(), self.pitch_mm, self.wanted_s);
            ways.push(format!(
                "turn the spindle by hand with a crank: up to {most:.0} rpm leave {}",
                Unit::S.show(self.wanted_s)
            ));
        }
        let tool = if lathe.has_left_hand_tool {
            "your left-hand tool"
        } else {
            "tool upside down or on the far side"
        };
        ways.push(format!(
            "cut outward: {tool}, spindle in reverse, starting in the relief. Never in reverse with a screwed-on chuck \
             that is not locked"
        ));
        if let Some(slowest) = self.at_speeds(steps_rpm).first() {
            let width = self.tool_mm + self.wanted_s * self.pitch_mm * slowest.rpm / 60.0;
            ways.push(format!(
                "a relief of {} gives {} at {} rpm; or grind a narrower tool",
                Unit::Mm.show(width),
                Unit::S.show(self.wanted_s),
                slowest.rpm
            ));
        }
        ways
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const NARROW: RunOut = RunOut {
        relief_mm: 2.5,
        tool_mm: 1.0,
        pitch_mm: 1.0,
        wanted_s: 1.0,
    };

    fn lathe(speeds: &[f64]) -> Lathe {
        Lathe {
            spindle_rpm: speeds.to_vec(),
            ..crate::workshop::Workshop::default_set().unwrap().lathe
        }
    }

    #[test]
    fn the_fastest_speed_with_time_enough() {
        // 1.5 mm at 1 mm a turn: 90 rpm leave one second.
        assert!((greatest_rpm(1.5, 1.0, 1.0) - 90.0).abs() < 1e-12);
        assert_eq!(NARROW.fastest_rpm(&[100.0, 70.0, 180.0]), Some(70.0));
        assert!(NARROW.ways_out(&lathe(&[70.0])).is_empty());
        let comforts: Vec<Comfort> = NARROW
            .at_speeds(&[70.0, 125.0, 250.0, 360.0])
            .iter()
            .map(|time| time.comfort)
            .collect();
        assert_eq!(
            comforts,
            [
                Comfort::Enough,
                Comfort::Short,
                Comfort::Practised,
                Comfort::TooShort
            ]
        );
    }

    #[test]
    fn ways_out_are_named_with_their_numbers() {
        let ways = NARROW.ways_out(&lathe(&[125.0])).join("; ");
        assert!(
            ways.contains("90 rpm") && ways.contains("reverse"),
            "{ways}"
        );
        // 1.0 + 1 x 1 x 125 / 60 = 3.083.
        assert!(ways.contains("3.083 mm"), "{ways}");
        let outward = Lathe {
            has_left_hand_tool: true,
            ..lathe(&[125.0])
        };
        assert!(
            NARROW
                .ways_out(&outward)
                .join(" ")
                .contains("your left-hand tool")
        );
        let blocked = RunOut {
            relief_mm: 0.8,
            ..NARROW
        };
        assert!(
            !blocked
                .ways_out(&lathe(&[70.0]))
                .join(" ")
                .contains("by hand")
        );
        assert!(NARROW.ways_out(&lathe(&[])).len() == 2);
    }
}
