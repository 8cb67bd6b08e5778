//! What balls in the ring's thread and wires over a male thread must read.

use super::limits::Side;
use super::thread::Thread;
use super::wires::{best_wire_mm, over_balls_mm, over_wires_mm, usable_wires_mm};

/// A measurement over balls or wires, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ThreadGauge {
    /// Diameter of ball or wire that touches at the pitch diameter.
    pub ball_mm: f64,
    /// Smallest and largest that can be used.
    pub usable_mm: (f64, f64),
    /// The least reading allowed.
    pub least_mm: f64,
    /// The greatest reading allowed.
    pub greatest_mm: f64,
}

/// Over two opposed balls in the internal thread, or over three wires on the external one, for the limits of the
/// thread's class, 6H and 6g or 2B and 2A without one. `None` where the standard sets no pitch diameter.
#[must_use]
pub fn thread_gauge(thread: &Thread, side: Side) -> Option<ThreadGauge> {
    let limits = thread
        .limits(side)
        .or_else(|_| thread.without_class().limits(side))
        .ok()?;
    let (pitch, half_angle) = (thread.pitch_mm(), thread.half_angle_deg());
    let ball_mm = best_wire_mm(pitch, half_angle);
    let over = |pitch_diameter| match side {
        Side::Internal => over_balls_mm(pitch_diameter, pitch, half_angle, ball_mm),
        Side::External => over_wires_mm(pitch_diameter, pitch, half_angle, ball_mm),
    };
    Some(ThreadGauge {
        ball_mm,
        usable_mm: usable_wires_mm(thread),
        least_mm: over(limits.pitch_diameter_min?),
        greatest_mm: over(limits.pitch_diameter_max?),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// M42x1: 6g at most 41.324 over wires 0.5774 reads 42.190; 6H from 41.350 (ISO 965-1).
    #[test]
    fn a_thread_and_its_plug() {
        let thread: Thread = "M42x1-6H".parse().unwrap();
        let plug = thread_gauge(&thread, Side::External).unwrap();
        assert!((plug.greatest_mm - 42.190).abs() < 5e-4);
        assert!((plug.ball_mm - 0.577_35).abs() < 1e-5);
        let ring = thread_gauge(&thread, Side::Internal).unwrap();
        // Mirror of the wires: d2 + P/2 cot a - w / sin a + w.
        let by_hand = 41.350 + 0.866_025 - 2.0 * 0.577_350 + 0.577_350;
        assert!((ring.least_mm - by_hand).abs() < 1e-5);
        assert!((ring.greatest_mm - ring.least_mm - 0.170).abs() < 1e-9);
    }
}
