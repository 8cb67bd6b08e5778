//! Where the lens's mark comes to rest in the locked ring, and three ways to bring it to the index.
//!
//! Angles are clock degrees seen from the lens side, clockwise positive. Going along a right-hand thread toward the
//! sensor, away from who looks, the groove turns clockwise; along a left-hand one anticlockwise. So a lens whose seat
//! lies deeper turns on further clockwise before it stops (right-hand), one turn for each pitch.

use crate::document::Design;
use crate::standards::Thread;
use crate::standards::play::clocking_shift_deg;

use super::resolved::ResolvedRing;

/// How the rest of the lens's mark is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum KnownBy {
    /// Read in a trial fit.
    TrialFit,
    /// Worked out from where both threads begin and the seat height.
    ThreadStarts,
}

/// Where the lens's mark comes to rest, ring locked.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rest {
    /// Clock angle of the lens's mark, degrees from 0 to 360.
    pub mark_deg: f64,
    /// The angle it should stand at: the ring's own mark, degrees.
    pub wanted_deg: f64,
    /// How it is known.
    pub known_by: KnownBy,
}

impl Rest {
    /// How far past the wanted angle it stands, degrees, clockwise positive, from -180 to 180.
    #[must_use]
    pub fn off_deg(&self) -> f64 {
        wrapped_deg(self.mark_deg - self.wanted_deg)
    }
}

/// Three ways to bring a mark to its place, for a lens mark that stands off it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WaysOut {
    /// Move the whole thread along the axis so far, mm, positive toward the sensor; any whole pitch more or less does
    /// the same.
    pub thread_toward_sensor_mm: f64,
    /// Mill lugs and lock hole further round by so much, degrees, clockwise positive seen from the lens side.
    pub lugs_clockwise_deg: f64,
    /// Take so much off the seat, mm, from 0 to one pitch: the lens turns on to the mark.
    pub skim_mm: f64,
    /// Or lay so much under the lens, mm, from 0 to one pitch: it stops before.
    pub shim_mm: f64,
}

/// Degrees that the lens turns on clockwise for each millimetre off the seat: negative for a left-hand thread.
#[must_use]
pub fn clockwise_deg_per_mm(thread: &Thread) -> f64 {
    hand(thread) * clocking_shift_deg(1.0, thread.pitch_mm())
}

/// Clock angle of the lens's mark at rest, degrees from 0 to 360.
///
/// `thread_start_deg` is where the ring's groove meets the plane of the flange rear face, `lens_start_deg` how far
/// clockwise of its mark the lens's ridge meets the shoulder. The seat stands `seat_height_mm` ahead of that plane.
#[must_use]
pub fn mark_at_rest_deg(
    thread_start_deg: f64,
    lens_start_deg: f64,
    seat_height_mm: f64,
    thread: &Thread,
) -> f64 {
    let groove_at_seat = thread_start_deg - clockwise_deg_per_mm(thread) * seat_height_mm;
    (groove_at_seat - lens_start_deg).rem_euclid(360.0)
}

/// The three ways out for a mark that stands `off_deg` clockwise of its place.
#[must_use]
pub fn ways_out(off_deg: f64, thread: &Thread) -> WaysOut {
    let pitch = thread.pitch_mm();
    let in_hand = hand(thread) * off_deg;
    WaysOut {
        thread_toward_sensor_mm: pitch * in_hand / 360.0,
        lugs_clockwise_deg: off_deg,
        skim_mm: pitch * (-in_hand).rem_euclid(360.0) / 360.0,
        shim_mm: pitch * in_hand.rem_euclid(360.0) / 360.0,
    }
}

/// Where the lens's mark comes to rest: as read in a trial fit, else from the thread starts. `None` while neither
/// is known.
#[must_use]
pub fn rest_of(design: &Design, ring: &ResolvedRing) -> Option<Rest> {
    let clocking = &design.ring.clocking;
    let by_starts = || {
        let (own, lens) = (clocking.thread_start_deg?, clocking.lens_start_deg?);
        let mark = mark_at_rest_deg(own, lens, ring.sizes.seat_height, &ring.thread);
        Some((mark, KnownBy::ThreadStarts))
    };
    let read = clocking
        .trial_reading_deg
        .map(|mark| (mark.rem_euclid(360.0), KnownBy::TrialFit));
    read.or_else(by_starts).map(|(mark_deg, known_by)| Rest {
        mark_deg,
        wanted_deg: ring.sizes.index_mark_angle,
        known_by,
    })
}

/// An angle from -180 to 180 degrees.
#[must_use]
pub fn wrapped_deg(angle_deg: f64) -> f64 {
    180.0 - (180.0 - angle_deg).rem_euclid(360.0)
}

fn hand(thread: &Thread) -> f64 {
    if thread.is_left_hand() { -1.0 } else { 1.0 }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn thread(left_hand: bool) -> Thread {
        let thread: Thread = "M42x1".parse().unwrap();
        thread.with_left_hand(left_hand)
    }

    fn near(a: f64, b: f64) -> bool {
        wrapped_deg(a - b).abs() < 1e-9
    }

    /// 0.05 mm on a pitch of 1 mm is 18 degrees (360 dz / P), clockwise for a right-hand thread.
    #[test]
    fn a_skim_turns_the_lens_on() {
        let rest = |height, left| mark_at_rest_deg(30.0, 10.0, height, &thread(left));
        assert!(near(rest(0.0, false), 20.0));
        assert!(near(rest(1.46, false) + 18.0, rest(1.41, false)));
        assert!(near(rest(1.46, true) - 18.0, rest(1.41, true)));
        assert!(near(rest(1.46, false), rest(2.46, false)));
        assert!((clockwise_deg_per_mm(&thread(false)) - 360.0).abs() < 1e-9);
    }

    /// Each way is done to the ring and the mark worked out again.
    #[test]
    fn every_way_out_brings_the_mark_home() {
        for left in [false, true] {
            let thread = thread(left);
            for start in [5.0, 97.0, 200.0, 333.0] {
                let height = 1.46;
                let mark = mark_at_rest_deg(start, 12.0, height, &thread);
                let ways = ways_out(wrapped_deg(mark), &thread);
                // A thread moved toward the sensor by x has at the flange what it had x nearer the lens.
                let moved = start - clockwise_deg_per_mm(&thread) * ways.thread_toward_sensor_mm;
                assert!(near(mark_at_rest_deg(moved, 12.0, height, &thread), 0.0));
                // Lugs turned clockwise on the ring: the rest of the ring locks as far anticlockwise.
                let turned = start - ways.lugs_clockwise_deg;
                assert!(near(mark_at_rest_deg(turned, 12.0, height, &thread), 0.0));
                let skimmed = mark_at_rest_deg(start, 12.0, height - ways.skim_mm, &thread);
                assert!(near(skimmed, 0.0) && (0.0..1.0).contains(&ways.skim_mm));
                let shimmed = mark_at_rest_deg(start, 12.0, height + ways.shim_mm, &thread);
                assert!(near(shimmed, 0.0) && (0.0..1.0).contains(&ways.shim_mm));
            }
        }
    }

    /// A mark 36 degrees clockwise of 12 on M42x1: 0.1 toward the sensor, 36 clockwise, skim 0.9 or shim 0.1.
    #[test]
    fn numbers_worked_by_hand() {
        let ways = ways_out(36.0, &thread(false));
        assert!((ways.thread_toward_sensor_mm - 0.1).abs() < 1e-12);
        assert!((ways.lugs_clockwise_deg - 36.0).abs() < 1e-12);
        assert!((ways.skim_mm - 0.9).abs() < 1e-12 && (ways.shim_mm - 0.1).abs() < 1e-12);
        let mirrored = ways_out(36.0, &thread(true));
        assert!((mirrored.thread_toward_sensor_mm + 0.1).abs() < 1e-12);
        assert!((mirrored.skim_mm - 0.1).abs() < 1e-12);
    }

    #[test]
    fn angles_are_wrapped_to_the_nearer_side() {
        for (angle, wrapped) in [
            (190.0, -170.0),
            (-190.0, 170.0),
            (180.0, 180.0),
            (720.0, 0.0),
        ] {
            assert!((wrapped_deg(angle) - wrapped).abs() < 1e-12, "{angle}");
        }
    }
}
