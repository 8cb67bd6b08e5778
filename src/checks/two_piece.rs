//! The ring in two pieces: a threaded insert, turned to the mark and clamped by set-screws.

use super::context::Context;
use super::finding::{Finding, Place, Remedy};
use super::index_mark::KEY;
use super::judge::{Bounds, at_least};
use crate::document::{FieldRef, LORE, LimitKey, RingKey, SeatKind, Term, Working};
use crate::mount::Unit;
use crate::ring::Feature;
use crate::standards::Thread;
use crate::standards::iso_261::coarse_pitch_mm;
use crate::standards::shear_area::tensile_stress_area_mm2;

/// Dry metal on metal (common practice, no source).
const FRICTION: f64 = 0.15;
/// Friction of small screws scatters by so much: the clamp should hold the hand's torque this many times.
const WANTED_TIMES: f64 = 2.0;
/// Stress area as a share of the full circle where no coarse thread has the diameter (from memory: M3 has 0.71).
const STRESS_AREA_SHARE: f64 = 0.65;

/// What clamps the insert.
#[derive(Clone, Copy, Debug)]
pub(super) struct Clamp {
    /// Wall of the ring round the insert, mm.
    pub(super) wall_mm: f64,
    /// Thread diameter of the set-screws, mm.
    pub(super) screw_mm: f64,
    pub(super) count: u32,
}

impl Clamp {
    /// Its walls, its screws, and whether it holds.
    pub(super) fn judged(&self, cx: &Context) -> Vec<Finding> {
        vec![
            self.insert_wall(cx),
            self.screw_thread(cx),
            self.rim(cx),
            self.torque(cx),
        ]
    }

    /// Outside of the ring where the screws sit: boss, else the neck that the insert must fit into.
    fn insert_diameter(&self, cx: &Context) -> Term {
        let outer = match cx.ring.seat {
            SeatKind::Boss => cx.size(RingKey::SeatDiameter),
            SeatKind::Flush | SeatKind::Counterbore => cx.size(RingKey::GrooveRootDiameter),
        };
        outer - 2.0 * Term::named("clamp wall", self.wall_mm, Unit::Mm)
    }

    fn insert_wall(&self, cx: &Context) -> Finding {
        let major = Term::named("thread major diameter", cx.ring.thread_major, Unit::Mm);
        let wall = (self.insert_diameter(cx) - major) / 2.0;
        let thinner = self.wall_mm + wall.value() - cx.limits().wall_caution;
        let working = Working::new("wall of the insert over its thread", wall, Unit::Mm, LORE);
        let bounds = cx.bounds(LimitKey::WallClash, LimitKey::WallCaution);
        pieces(at_least(KEY, working, bounds)).cured_by(Remedy::words(format!(
            "a clamp wall of {} leaves the insert its wall; where that is none, make the ring in one piece and clock the thread",
            Unit::Mm.show(thinner.max(0.0))
        )))
    }

    fn screw_thread(&self, cx: &Context) -> Finding {
        let wall = Term::named("clamp wall", self.wall_mm, Unit::Mm);
        let turns = wall / Term::named("set-screw diameter", self.screw_mm, Unit::Mm);
        let working = Working::new("set-screw thread in its diameters", turns, Unit::One, LORE);
        let bounds = cx.bounds(LimitKey::ScrewThreadClash, LimitKey::ScrewThreadCaution);
        let wanted = self.screw_mm * bounds.caution;
        pieces(at_least(KEY, working, bounds)).cured_by(Remedy::words(format!(
            "a clamp wall of {} or thinner set-screws",
            Unit::Mm.show(wanted)
        )))
    }

    /// Metal ahead of and behind the screws: in the boss, else in the plate's rim.
    fn rim(&self, cx: &Context) -> Finding {
        let plate = cx.size(RingKey::PlateThickness);
        let height = match cx.ring.seat {
            SeatKind::Boss => (cx.size(RingKey::SeatHeight) - plate.clone()).max(plate),
            SeatKind::Flush | SeatKind::Counterbore => plate,
        };
        let most = height.value() - 2.0 * cx.limits().hole_rim_caution;
        let rim = (height - Term::named("set-screw diameter", self.screw_mm, Unit::Mm)) / 2.0;
        let working = Working::new("metal beside the set-screws", rim, Unit::Mm, LORE);
        let bounds = cx.bounds(LimitKey::HoleRimClash, LimitKey::HoleRimCaution);
        let text = if most > 0.0 {
            format!("set-screws of at most {}", Unit::Mm.show(most))
        } else {
            "the ring is too thin for set-screws: make it in one piece and clock the thread"
                .to_owned()
        };
        pieces(at_least(KEY, working, bounds)).cured_by(Remedy::words(text))
    }

    /// What the screws hold by friction against a hand on the lens's rings.
    fn torque(&self, cx: &Context) -> Finding {
        let area = Term::named(
            "stress area of a set-screw",
            self.stress_area_mm2(),
            Unit::Mm2,
        );
        let force = cx.limit(LimitKey::SetScrewStress) * area;
        let count = Term::named("number of set-screws", f64::from(self.count), Unit::One);
        let torque = count * FRICTION * force * self.insert_diameter(cx) / 2.0;
        let working = Working::new(
            "torque that the set-screws hold",
            torque,
            Unit::Nmm,
            "n μ F r, friction 0.15; common practice, no source",
        );
        let hand = cx.limits().service_torque;
        let bounds = Bounds {
            clash: hand,
            caution: WANTED_TIMES * hand,
            scale: 1.0,
        };
        pieces(at_least(KEY, working, bounds))
            .cured_by(Remedy::words("more set-screws, or thicker ones"))
    }

    /// ISO 898-1 stress area of the coarse thread of that diameter, mm².
    fn stress_area_mm2(&self) -> f64 {
        coarse_pitch_mm(self.screw_mm)
            .and_then(|pitch| Thread::metric(self.screw_mm, pitch).ok())
            .and_then(|thread| tensile_stress_area_mm2(&thread))
            .unwrap_or(STRESS_AREA_SHARE * std::f64::consts::PI / 4.0 * self.screw_mm.powi(2))
    }
}

fn pieces(finding: Finding) -> Finding {
    finding
        .at(Place::Field(FieldRef::Pieces))
        .at(Place::Feature(Feature::Thread))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::Severity;
    use crate::checks::fixture::{design, judged, measured, set};
    use crate::checks::index_mark::check;
    use crate::document::{Design, Pieces};

    /// A tall ring with a boss wide enough for an insert.
    fn two_pieces(wall: f64, screw: f64, count: u32) -> Design {
        let mut design = design();
        design.lens.register = measured(60.0);
        set(&mut design, &[(RingKey::SeatDiameter, 49.0)]);
        design.ring.pieces = Pieces::Two {
            clamp_wall_mm: wall,
            screw_diameter_mm: screw,
            screw_count: count,
        };
        design
    }

    /// Boss 49, thread 42: 7 for two walls of insert and two of clamp.
    #[test]
    fn a_sound_clamp_passes_and_asks_for_no_thread_start() {
        let finding = judged(check, &two_pieces(2.0, 2.0, 3));
        assert_eq!(finding.severity, Severity::Ok, "{}", finding.message);
    }

    #[test]
    fn each_part_of_the_clamp_is_judged() {
        for (wall, screw, count, severity, part) in [
            (2.7, 2.0, 3, Severity::Caution, "wall of the insert"),
            (3.2, 2.0, 3, Severity::Clash, "wall of the insert"),
            (2.0, 2.5, 3, Severity::Caution, "set-screw thread"),
            (2.0, 5.0, 3, Severity::Clash, "set-screw thread"),
            (2.0, 1.2, 2, Severity::Clash, "torque"),
            (2.0, 1.6, 2, Severity::Caution, "torque"),
        ] {
            let finding = judged(check, &two_pieces(wall, screw, count));
            assert_eq!(
                finding.severity, severity,
                "{wall} {screw} {count}: {}",
                finding.message
            );
            assert!(finding.message.contains(part), "{}", finding.message);
        }
    }

    /// ISO 898-1: 2.07 mm² for M2, 5.03 for M3 (from memory).
    #[test]
    fn stress_areas_are_the_standards() {
        let area = |screw_mm| {
            Clamp {
                wall_mm: 2.0,
                screw_mm,
                count: 3,
            }
            .stress_area_mm2()
        };
        assert!((area(2.0) - 2.07).abs() < 0.01 && (area(3.0) - 5.03).abs() < 0.01);
        assert!(area(2.35) > 2.07);
    }

    #[test]
    fn a_flush_ring_is_too_thin_for_set_screws() {
        let mut design = design();
        design.ring.pieces = Pieces::Two {
            clamp_wall_mm: 2.0,
            screw_diameter_mm: 2.0,
            screw_count: 3,
        };
        let finding = judged(check, &design);
        assert_eq!(finding.severity, Severity::Clash, "{}", finding.message);
        assert!(finding.remedy.is_some());
    }
}
