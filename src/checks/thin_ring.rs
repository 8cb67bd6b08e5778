//! A thin ring squeezed by equal jaws: how far it goes out of round, and the stress in it.
//!
//! Formulas for a thin circular ring under equal radial point loads, bending only (Roark, Formulas for Stress and
//! Strain, table of circular rings; the case number from memory), worked out again with a frame model.

use std::f64::consts::PI;

/// A thin ring of rectangular section, mm and MPa.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct ThinRing {
    /// Mean radius.
    pub(super) radius_mm: f64,
    /// Radial thickness.
    pub(super) wall_mm: f64,
    /// Length along the axis.
    pub(super) length_mm: f64,
    /// Young's modulus.
    pub(super) modulus_mpa: f64,
}

/// What jaws do to a ring, in shares of `W R³ / (E I)`, and of `W R` for the moment.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Squeeze {
    /// Inward under a jaw.
    pub(super) inward: f64,
    /// Outward midway between two.
    pub(super) outward: f64,
    /// Bending moment under a jaw.
    pub(super) moment: f64,
}

impl Squeeze {
    /// By `jaws` equal jaws, two or more.
    pub(super) fn by(jaws: u32) -> Self {
        let a = PI / f64::from(jaws.max(2));
        let (sine, cosine) = a.sin_cos();
        Self {
            inward: 0.5 * ((a + sine * cosine) / (2.0 * sine * sine) - 1.0 / a),
            outward: 0.5 * (1.0 / a - (sine + a * cosine) / (2.0 * sine * sine)),
            moment: 0.5 * (1.0 / a - cosine / sine),
        }
    }
}

impl ThinRing {
    /// Greatest less least radius under `force_n` on each jaw, mm.
    pub(super) fn out_of_round_mm(&self, jaws: u32, force_n: f64) -> f64 {
        let squeeze = Squeeze::by(jaws);
        let inertia = self.length_mm * self.wall_mm.powi(3) / 12.0;
        (squeeze.inward + squeeze.outward) * force_n * self.radius_mm.powi(3)
            / (self.modulus_mpa * inertia)
    }

    /// Bending stress under a jaw, MPa.
    pub(super) fn stress_mpa(&self, jaws: u32, force_n: f64) -> f64 {
        6.0 * Squeeze::by(jaws).moment * force_n * self.radius_mm
            / (self.length_mm * self.wall_mm.powi(2))
    }

    /// The force on each jaw that leaves the ring just so far out of round, N.
    pub(super) fn force_for_n(&self, jaws: u32, out_of_round_mm: f64) -> f64 {
        out_of_round_mm / self.out_of_round_mm(jaws, 1.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Table worked with a frame model of 120 elements, agreement 1e-6.
    #[test]
    fn the_table_of_the_ring() {
        for (jaws, inward, outward, moment) in [
            (2, 0.074_389, 0.068_310, 0.318_31),
            (3, 0.015_939, 0.014_257, 0.188_79),
            (6, 0.001_682, 0.001_480, 0.088_90),
        ] {
            let squeeze = Squeeze::by(jaws);
            assert!(
                (squeeze.inward - inward).abs() < 1e-6,
                "{jaws}: {squeeze:?}"
            );
            assert!(
                (squeeze.outward - outward).abs() < 1e-6,
                "{jaws}: {squeeze:?}"
            );
            assert!(
                (squeeze.moment - moment).abs() < 1e-5,
                "{jaws}: {squeeze:?}"
            );
        }
    }

    /// 60/52 x 8 of aluminium under 500 N a jaw: 0.113 mm and 124 MPa; 22 N leave 0.005. 60/56 x 8: 1.00 mm, 513 MPa.
    #[test]
    fn worked_examples() {
        let ring = |inner: f64| ThinRing {
            radius_mm: (60.0 + inner) / 4.0,
            wall_mm: (60.0 - inner) / 2.0,
            length_mm: 8.0,
            modulus_mpa: 68_900.0,
        };
        let thick = ring(52.0);
        assert!((thick.out_of_round_mm(3, 500.0) - 0.113).abs() < 0.0005);
        assert!((thick.stress_mpa(3, 500.0) - 124.0).abs() < 0.5);
        assert!((thick.force_for_n(3, 0.005) - 22.0).abs() < 0.3);
        let thin = ring(56.0);
        assert!((thin.out_of_round_mm(3, 500.0) - 1.00).abs() < 0.005);
        assert!((thin.stress_mpa(3, 500.0) - 513.0).abs() < 0.6);
        assert!((thin.force_for_n(3, 0.005) - 2.5).abs() < 0.05);
    }
}
