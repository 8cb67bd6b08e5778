//! An angle as a rotary table shows it: degrees, minutes and seconds.

use std::fmt;

use super::whole::whole;

/// Seconds of arc in a degree.
const SECONDS: f64 = 3600.0;

/// An angle of 0 to under 360 degrees, to the nearest step of a scale.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct DegreesMinutesSeconds {
    /// Degrees.
    pub degrees: u32,
    /// Minutes, 0 to 59.
    pub minutes: u32,
    /// Seconds, 0 to 59.
    pub seconds: u32,
}

impl DegreesMinutesSeconds {
    /// `angle_deg` to the nearest `step_seconds` (at least 1), a full turn taken off.
    #[must_use]
    pub fn nearest(angle_deg: f64, step_seconds: u32) -> Self {
        let step = step_seconds.max(1);
        let steps = whole(tidy_deg(angle_deg) * SECONDS / f64::from(step));
        let all = steps * step % (360 * 3600);
        Self {
            degrees: all / 3600,
            minutes: all / 60 % 60,
            seconds: all % 60,
        }
    }

    /// The angle, degrees.
    #[must_use]
    pub fn deg(self) -> f64 {
        f64::from(self.degrees * 3600 + self.minutes * 60 + self.seconds) / SECONDS
    }
}

impl fmt::Display for DegreesMinutesSeconds {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "{}\u{b0} {:02}' {:02}\"",
            self.degrees, self.minutes, self.seconds
        )
    }
}

/// An angle from 0 to under 360 degrees, without the last digits that turning it round leaves: an edge at 0 must not
/// become one at 359.999 999 999.
#[must_use]
pub fn tidy_deg(angle_deg: f64) -> f64 {
    const STEP: f64 = 1e9;
    (angle_deg.rem_euclid(360.0) * STEP).round() / STEP % 360.0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn angles_are_shown_to_the_step_and_wrap() {
        let shown = |angle, step| DegreesMinutesSeconds::nearest(angle, step).to_string();
        assert_eq!(shown(17.0 + 20.0 / 60.0, 1), "17° 20' 00\"");
        assert_eq!(shown(6.3794, 1), "6° 22' 46\"");
        assert_eq!(shown(6.3794, 10), "6° 22' 50\"");
        assert_eq!(shown(359.9999, 10), "0° 00' 00\"");
        assert_eq!(shown(-1e-13, 1), "0° 00' 00\"");
        assert_eq!(shown(-90.0, 0), "270° 00' 00\"");
    }
}
