//! Turns of the crank and holes on the best circle of a dividing head, for any angle.
//!
//! `T = K A / 360`; the nearest hole of every circle is looked at, and the least error wins (US Army course OD1644,
//! dividing head). An angle is always counted from datum zero: rounded steps are never added up.

use std::fmt;

use super::degrees::tidy_deg;
use super::whole::whole;
use crate::workshop::DividingHead;

/// Errors nearer than this are the same, degrees: far under what any head shows.
const SAME_DEG: f64 = 1e-9;

/// A place of the crank: whole turns and holes from datum zero.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Setting {
    /// Whole turns.
    pub turns: u32,
    /// Spaces beyond them; the sector arms take in one hole more, both ends counted.
    pub spaces: u32,
    /// Holes of the circle.
    pub circle: u32,
    /// The plate, from 0.
    pub plate: usize,
    /// What the work stands too far, degrees.
    pub error_deg: f64,
}

impl Setting {
    /// The error, minutes of arc.
    #[must_use]
    pub fn error_minutes(&self) -> f64 {
        self.error_deg * 60.0
    }

    /// The error along a circle of radius `radius_mm`, mm.
    #[must_use]
    pub fn error_mm(&self, radius_mm: f64) -> f64 {
        self.error_deg.to_radians() * radius_mm
    }
}

impl fmt::Display for Setting {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.spaces == 0 {
            return write!(f, "{} turns, any circle", self.turns);
        }
        write!(
            f,
            "{} turns + {} in {}",
            self.turns, self.spaces, self.circle
        )
    }
}

/// Every setting of the least error for an angle from datum zero, degrees, the largest circle first: its crank is the
/// finest. Empty where the head has no ratio or no circle.
///
/// ```
/// use flangewright::plan::settings;
/// use flangewright::workshop::Workshop;
/// let head = Workshop::default_set()?.dividing_head;
/// let all = settings(&head, 17.0 + 20.0 / 60.0);
/// assert_eq!(all[0].to_string(), "1 turns + 25 in 27");
/// # Ok::<(), flangewright::document::ReadError>(())
/// ```
#[must_use]
pub fn settings(head: &DividingHead, angle_deg: f64) -> Vec<Setting> {
    let mut all: Vec<Setting> = head
        .plates
        .iter()
        .enumerate()
        .flat_map(|(plate, circles)| circles.iter().map(move |circle| (plate, *circle)))
        .filter(|(_, circle)| *circle > 0 && head.is_there && head.ratio > 0)
        .map(|(plate, circle)| nearest(head.ratio, plate, circle, angle_deg))
        .collect();
    let least = all
        .iter()
        .map(|setting| setting.error_deg.abs())
        .fold(f64::INFINITY, f64::min);
    all.retain(|setting| setting.error_deg.abs() <= least + SAME_DEG);
    all.sort_by(|a, b| b.circle.cmp(&a.circle).then(a.plate.cmp(&b.plate)));
    all
}

fn nearest(ratio: u32, plate: usize, circle: u32, angle_deg: f64) -> Setting {
    let a_turn = 360.0 / f64::from(ratio);
    let turns = tidy_deg(angle_deg) / a_turn;
    let holes = whole(turns * f64::from(circle));
    Setting {
        turns: holes / circle,
        spaces: holes % circle,
        circle,
        plate,
        error_deg: (f64::from(holes) / f64::from(circle) - turns) * a_turn,
    }
}

/// For each angle one setting of the least error; where several are as good, on the plate that serves the most angles,
/// so that plates are changed seldom. `None` where the head cannot divide.
#[must_use]
pub fn settings_on_few_plates(head: &DividingHead, angles_deg: &[f64]) -> Vec<Option<Setting>> {
    let all: Vec<Vec<Setting>> = angles_deg
        .iter()
        .map(|angle| settings(head, *angle))
        .collect();
    let serves = |plate: usize| {
        all.iter()
            .filter(|of_one| of_one.iter().any(|setting| setting.plate == plate))
            .count()
    };
    all.iter()
        .map(|of_one| {
            of_one
                .iter()
                .min_by_key(|setting| std::cmp::Reverse(serves(setting.plate)))
                .copied()
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::workshop::Workshop;

    fn head() -> DividingHead {
        Workshop::default_set().unwrap().dividing_head
    }

    #[test]
    fn a_head_without_plates_or_ratio_divides_nothing() {
        let mut bare = head();
        bare.plates = vec![vec![0]];
        assert!(settings(&bare, 30.0).is_empty());
        let mut no_ratio = head();
        no_ratio.ratio = 0;
        assert!(settings(&no_ratio, 30.0).is_empty());
        assert_eq!(settings_on_few_plates(&bare, &[1.0, 2.0]), vec![None, None]);
    }

    #[test]
    fn few_plates_are_used_where_circles_are_equally_good() {
        // 120 degrees can be set on every plate, 17° 20' only on the second.
        let two = settings_on_few_plates(&head(), &[120.0, 17.0 + 20.0 / 60.0]);
        assert_eq!(two[0].unwrap().plate, 1);
        assert_eq!(two[1].unwrap().plate, 1);
    }

    #[test]
    fn the_error_is_told_in_minutes_and_millimetres() {
        // One hole of 49 off, K = 40: 360 / 40 / 49 = 0.18367 degrees.
        let setting = Setting {
            turns: 0,
            spaces: 1,
            circle: 49,
            plate: 2,
            error_deg: 0.1,
        };
        assert!((setting.error_minutes() - 6.0).abs() < 1e-12);
        // 0.1 degrees at a radius of 25.5 are 0.0445 mm (arc length).
        assert!((setting.error_mm(25.5) - 0.0445).abs() < 5e-5);
    }
}
