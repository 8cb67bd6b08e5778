//! One flank of a lug as the cutter leaves it, at every radius.

use super::{CutterError, Method, Side};

/// The flank that a method leaves between gap floor and lug tip. All radii in mm; the edge that the drawing asks for
/// is a radial line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Flank {
    method: Method,
    floor: f64,
    tip: f64,
    cutter: f64,
    reference: f64,
}

impl Flank {
    /// The flank of a lug from `floor` to `tip`, milled with a cutter of radius `cutter` as measured. The lug angle
    /// refers to the tip.
    ///
    /// # Errors
    /// [`CutterError`] when the radii make no lug or the cutter cannot make this flank.
    pub fn new(method: Method, floor: f64, tip: f64, cutter: f64) -> Result<Self, CutterError> {
        let are_sizes = [floor, tip, cutter]
            .iter()
            .all(|size| *size > 0.0 && size.is_finite());
        if !are_sizes || (tip - floor).abs() <= 0.0 {
            return Err(CutterError::Radii { floor, tip, cutter });
        }
        let flank = Self {
            method,
            floor,
            tip,
            cutter,
            reference: tip,
        };
        if flank.side() == Side::Inward {
            if matches!(method, Method::RadialOnCentre | Method::RadialOffset) {
                return Err(CutterError::RadialInside);
            }
            // The cutter stands beside the axis, and on its way it is nowhere wider than the circle of the tips.
            let limit = (floor / 2.0).min(tip);
            if cutter > limit {
                return Err(CutterError::TooLarge { cutter, limit });
            }
        }
        Ok(flank)
    }

    /// The same with the lug angle referring to another radius; only centre-line feeds differ by it.
    ///
    /// # Errors
    /// [`CutterError::Reference`] when the radius is not on the lug.
    pub fn referred_to(self, radius: f64) -> Result<Self, CutterError> {
        if self.is_on_lug(radius) {
            Ok(Self {
                reference: radius,
                ..self
            })
        } else {
            Err(CutterError::Reference { radius })
        }
    }

    /// The method.
    #[must_use]
    pub const fn method(&self) -> Method {
        self.method
    }

    /// Radius of the cutter, mm.
    #[must_use]
    pub const fn cutter(&self) -> f64 {
        self.cutter
    }

    /// Which way the lug stands.
    #[must_use]
    pub fn side(&self) -> Side {
        if self.tip > self.floor {
            Side::Outward
        } else {
            Side::Inward
        }
    }

    /// Radius of the cutter's centre when it touches the gap floor, Rc.
    #[must_use]
    pub fn centre_radius(&self) -> f64 {
        self.floor + self.outward(self.cutter)
    }

    /// Half the angle that the cutter covers there, s, radians.
    #[must_use]
    pub fn half_angle_rad(&self) -> f64 {
        (self.cutter / self.centre_radius()).min(1.0).asin()
    }

    /// Radius at which a radial line touches the cutter there, rt.
    #[must_use]
    pub fn tangent_radius(&self) -> f64 {
        let centre = self.centre_radius();
        ((centre - self.cutter) * (centre + self.cutter))
            .max(0.0)
            .sqrt()
    }

    /// Radius at which the straight flank begins. Toward the floor from there the flank is the cutter's own arc, or,
    /// with a radial cutter on the centre line, its flat end.
    #[must_use]
    pub fn straight_from(&self) -> f64 {
        match self.method {
            Method::OffsetFeed => self.tangent_radius(),
            Method::CentreFeed => self.centre_radius().hypot(self.cutter),
            Method::PlungeAndTurn => self.tip,
            Method::RadialOnCentre => self.floor.hypot(self.cutter),
            Method::RadialOffset => self.floor,
        }
    }

    /// Length of the straight flank, mm; 0 or negative when there is none.
    #[must_use]
    pub fn straight_length(&self) -> f64 {
        self.outward(self.tip - self.straight_from())
    }

    /// The narrowest gap the cutter can make, radians: one pass.
    #[must_use]
    pub fn least_gap_rad(&self) -> f64 {
        match self.method {
            Method::CentreFeed => 2.0 * self.centre_edge_rad(self.reference),
            Method::OffsetFeed | Method::PlungeAndTurn => 2.0 * self.half_angle_rad(),
            Method::RadialOnCentre => 2.0 * (self.cutter / self.floor).atan(),
            Method::RadialOffset => (2.0 * self.cutter / self.floor).atan(),
        }
    }

    /// Refuses a gap that is too narrow.
    ///
    /// # Errors
    /// [`CutterError::GapTooNarrow`].
    pub fn check_gap(&self, gap_rad: f64) -> Result<(), CutterError> {
        let least = self.least_gap_rad();
        if gap_rad >= least {
            return Ok(());
        }
        Err(CutterError::GapTooNarrow {
            gap_deg: gap_rad.to_degrees(),
            least_deg: least.to_degrees(),
        })
    }

    /// Height left on the gap floor in the corner at the end of the cut, mm.
    #[must_use]
    pub fn floor_left(&self) -> f64 {
        match self.method {
            Method::RadialOnCentre => self.floor.hypot(self.cutter) - self.floor,
            Method::CentreFeed
            | Method::OffsetFeed
            | Method::PlungeAndTurn
            | Method::RadialOffset => 0.0,
        }
    }

    /// Radii at which the cutter is plunged: one, at the floor, where its diameter covers the lug; else a radius of
    /// the cutter apart, until its centre stands on the tip circle.
    #[must_use]
    pub fn plunge_radii(&self) -> Vec<f64> {
        let first = self.centre_radius();
        let mut radii = vec![first];
        let way = (self.tip - first).abs();
        if 2.0 * self.cutter >= (self.tip - self.floor).abs() {
            return radii;
        }
        let mut gone = 0.0;
        while gone < way {
            gone = way.min(gone + self.cutter);
            radii.push(first + self.outward(gone));
        }
        radii
    }

    /// How much wider than its true radial edge the lug still stands at a radius, as an angle; negative where too
    /// much is removed. `None` off the lug.
    #[must_use]
    pub fn intrusion_rad(&self, radius: f64) -> Option<f64> {
        if !self.is_on_lug(radius) {
            return None;
        }
        let intrusion = match self.method {
            Method::CentreFeed => {
                self.centre_edge_rad(self.reference) - self.centre_edge_rad(radius)
            }
            Method::OffsetFeed => {
                let is_straight = self.outward(radius - self.tangent_radius()) >= 0.0;
                if is_straight {
                    0.0
                } else {
                    self.half_angle_rad() - self.arc_rad(radius)
                }
            }
            Method::PlungeAndTurn => self.plunged_rad(radius),
            Method::RadialOnCentre => {
                self.radial_edge_rad(self.reference) - self.radial_edge_rad(radius)
            }
            Method::RadialOffset => 0.0,
        };
        Some(intrusion)
    }

    /// The same along the circle, mm.
    #[must_use]
    pub fn intrusion(&self, radius: f64) -> Option<f64> {
        self.intrusion_rad(radius).map(|angle| radius * angle)
    }

    fn is_on_lug(&self, radius: f64) -> bool {
        radius >= self.floor.min(self.tip) && radius <= self.floor.max(self.tip)
    }

    /// Positive toward the lug's tip.
    fn outward(&self, length: f64) -> f64 {
        match self.side() {
            Side::Outward => length,
            Side::Inward => -length,
        }
    }

    /// Half the angle that the cutter at its last place covers at a radius.
    fn arc_rad(&self, radius: f64) -> f64 {
        half_angle_of_disc(self.centre_radius(), self.cutter, radius)
    }

    /// Edge of a gap fed along the centre line, from that line.
    fn centre_edge_rad(&self, radius: f64) -> f64 {
        if self.outward(radius - self.straight_from_centre_feed()) >= 0.0 {
            (self.cutter / radius).min(1.0).asin()
        } else {
            self.arc_rad(radius)
        }
    }

    fn straight_from_centre_feed(&self) -> f64 {
        self.centre_radius().hypot(self.cutter)
    }

    /// Edge of a gap cut by a mill pointing at the axis: its side, or its flat end near the floor.
    fn radial_edge_rad(&self, radius: f64) -> f64 {
        let side = (self.cutter / radius).min(1.0).asin();
        side.min((self.floor / radius).min(1.0).acos())
    }

    /// Each pass is turned until it touches the edge; the lug is what none of them reaches.
    fn plunged_rad(&self, radius: f64) -> f64 {
        self.plunge_radii()
            .into_iter()
            .filter(|centre| (radius - centre).abs() <= self.cutter * (1.0 + 1e-12))
            .map(|centre| {
                (self.cutter / centre).min(1.0).asin()
                    - half_angle_of_disc(centre, self.cutter, radius)
            })
            .fold(f64::INFINITY, f64::min)
    }
}

/// Half the angle that a disc at `centre` from the axis covers at a radius; 0 where it does not reach.
fn half_angle_of_disc(centre: f64, disc: f64, radius: f64) -> f64 {
    let cosine = (radius * radius + (centre - disc) * (centre + disc)) / (2.0 * radius * centre);
    cosine.clamp(-1.0, 1.0).acos()
}

#[cfg(test)]
mod tests {
    use super::*;

    const FLOOR: f64 = 24.0;
    const TIP: f64 = 27.0;

    fn flank(method: Method, cutter: f64) -> Flank {
        Flank::new(method, FLOOR, TIP, cutter).unwrap()
    }

    fn degrees(flank: &Flank, radius: f64) -> f64 {
        flank.intrusion_rad(radius).unwrap().to_degrees()
    }

    fn assert_digits(value: f64, printed: f64, half_digit: f64) {
        assert!(
            (value - printed).abs() <= half_digit,
            "{value} printed as {printed}"
        );
    }

    /// Own table for floor 24, tip 27: cutter, Rc, s, rt, least gap.
    #[test]
    fn sizes_of_four_cutters() {
        let rows = [
            (1.5, 25.5, 3.3723, 25.4558, 6.745),
            (2.0, 26.0, 4.4117, 25.9230, 8.823),
            (3.0, 27.0, 6.3794, 26.8328, 12.759),
            (4.0, 28.0, 8.2132, 27.7128, 16.426),
        ];
        for (cutter, centre, half, tangent, least) in rows {
            let flank = flank(Method::OffsetFeed, cutter);
            assert_digits(flank.centre_radius(), centre, 1e-12);
            assert_digits(flank.half_angle_rad().to_degrees(), half, 5e-5);
            assert_digits(flank.tangent_radius(), tangent, 5e-5);
            assert_digits(flank.least_gap_rad().to_degrees(), least, 5.1e-4);
            assert_eq!(
                flank.straight_length() > 0.0,
                cutter <= (TIP * TIP - FLOOR * FLOOR) / 48.0
            );
        }
        // Largest cutter that leaves a straight flank: (tip^2 - floor^2) / (2 floor).
        assert!(flank(Method::OffsetFeed, 3.1875).straight_length().abs() < 1e-12);
    }

    /// The same table: offset feed, intrusion in degrees and in mm.
    #[test]
    fn offset_feed_at_three_radii() {
        let rows = [
            (
                24.2,
                [
                    (1.5, 1.646, 0.695),
                    (2.0, 2.420, 1.022),
                    (3.0, 3.965, 1.675),
                    (4.0, 5.464, 2.308),
                ],
            ),
            (
                25.0,
                [
                    (1.5, 0.163, 0.071),
                    (2.0, 0.5185, 0.226),
                    (3.0, 1.447, 0.631),
                    (4.0, 2.481, 1.083),
                ],
            ),
            (
                25.5,
                [
                    (1.5, 0.0, 0.0),
                    (2.0, 0.1017, 0.045),
                    (3.0, 0.704, 0.313),
                    (4.0, 1.514, 0.674),
                ],
            ),
        ];
        for (radius, cells) in rows {
            for (cutter, angle, length) in cells {
                let flank = flank(Method::OffsetFeed, cutter);
                assert_digits(degrees(&flank, radius), angle, 5.1e-4);
                assert_digits(flank.intrusion(radius).unwrap(), length, 5.1e-4);
            }
        }
    }

    /// The same table: edge angle at the tip by the centre-line feed, and where the straight flank begins.
    #[test]
    fn centre_feed_at_the_tip() {
        let rows = [
            (1.5, 3.1847, 25.544),
            (2.0, 4.2480, 26.077),
            (3.0, 6.3695, 27.166),
            (4.0, 8.0773, 28.284),
        ];
        for (cutter, edge, straight) in rows {
            let flank = flank(Method::CentreFeed, cutter);
            assert_digits(flank.centre_edge_rad(TIP).to_degrees(), edge, 5.1e-5);
            assert_digits(flank.straight_from(), straight, 5.1e-4);
            assert_digits(flank.least_gap_rad().to_degrees(), 2.0 * edge, 1.1e-4);
        }
    }

    /// The same table: what too much the centre-line feed removes, cutter radius 2.
    #[test]
    fn centre_feed_by_reference_radius() {
        let by_tip = flank(Method::CentreFeed, 2.0);
        let by_middle = by_tip.referred_to(26.5).unwrap();
        let tangent = by_tip.tangent_radius();
        for (radius, length) in [
            (25.5, -0.028),
            (tangent, -0.074),
            (26.5, -0.037),
            (27.0, 0.0),
        ] {
            assert_digits(by_tip.intrusion(radius).unwrap(), length, 5.1e-4);
        }
        for (radius, length) in [(25.5, 0.008), (tangent, -0.038), (26.5, 0.0), (27.0, 0.038)] {
            assert_digits(by_middle.intrusion(radius).unwrap(), length, 5.1e-4);
        }
    }

    /// The same table: plunge and turn, edge angle at the tip and what it is short of s.
    #[test]
    fn plunge_and_turn_at_the_tip() {
        for (cutter, edge, short) in [
            (1.5, 0.0, 3.372),
            (2.0, 3.7462, 0.666),
            (3.0, 6.3695, 0.010),
            (4.0, 8.0773, 0.136),
        ] {
            let flank = flank(Method::PlungeAndTurn, cutter);
            assert_digits(flank.arc_rad(TIP).to_degrees(), edge, 5.1e-5);
            assert_digits(degrees(&flank, TIP), short, 5.1e-4);
            if flank.tangent_radius() < TIP {
                assert!(degrees(&flank, flank.tangent_radius()).abs() < 1e-5);
            }
        }
        assert_eq!(flank(Method::PlungeAndTurn, 1.5).plunge_radii(), vec![25.5]);
        assert_eq!(
            flank(Method::PlungeAndTurn, 1.0).plunge_radii(),
            vec![25.0, 26.0, 27.0]
        );
    }

    /// Own check values for lugs standing inward: floor 27, tip 24, cutter 2.
    #[test]
    fn inward_lugs() {
        let flank = Flank::new(Method::OffsetFeed, 27.0, 24.0, 2.0).unwrap();
        assert_digits(flank.centre_radius(), 25.0, 1e-12);
        assert_digits(flank.half_angle_rad().to_degrees(), 4.5886, 5.1e-5);
        assert_digits(flank.tangent_radius(), 24.9199, 5.1e-5);
        assert_digits(degrees(&flank, 26.0), 0.6953, 1e-4);
        assert_digits(degrees(&flank, 26.5), 1.6435, 1e-4);
        assert_digits(degrees(&flank, 24.5), 0.0, 1e-15);
        assert!((flank.straight_length() - 0.9199).abs() < 1e-4);
    }

    /// Own check values for the cutter pointing at the axis.
    #[test]
    fn radial_cutter() {
        for (cutter, left) in [(2.0, 0.083), (3.0, 0.187), (4.0, 0.331)] {
            assert_digits(
                flank(Method::RadialOnCentre, cutter).floor_left(),
                left,
                5.1e-4,
            );
        }
        let least = flank(Method::RadialOffset, 2.0)
            .least_gap_rad()
            .to_degrees();
        assert_digits(least, 9.462, 5.1e-4);
        let on_centre = flank(Method::RadialOnCentre, 2.0)
            .least_gap_rad()
            .to_degrees();
        assert_digits(on_centre, 9.527, 5.1e-4);
        assert_digits(degrees(&flank(Method::RadialOffset, 2.0), 24.2), 0.0, 1e-15);
    }

    #[test]
    fn refusals_name_the_way_out() {
        assert!(matches!(
            Flank::new(Method::OffsetFeed, 24.0, 24.0, 2.0),
            Err(CutterError::Radii { .. })
        ));
        assert!(matches!(
            Flank::new(Method::OffsetFeed, 24.0, f64::NAN, 2.0),
            Err(CutterError::Radii { .. })
        ));
        assert_eq!(
            Flank::new(Method::RadialOffset, 27.0, 24.0, 2.0),
            Err(CutterError::RadialInside)
        );
        assert!(matches!(
            Flank::new(Method::OffsetFeed, 6.0, 5.0, 4.0),
            Err(CutterError::TooLarge { .. })
        ));
        assert!(
            flank(Method::OffsetFeed, 2.0)
                .check_gap(9_f64.to_radians())
                .is_ok()
        );
        assert!(
            flank(Method::OffsetFeed, 2.0)
                .check_gap(8_f64.to_radians())
                .is_err()
        );
        assert_eq!(flank(Method::OffsetFeed, 2.0).intrusion_rad(28.0), None);
        assert!(flank(Method::CentreFeed, 2.0).referred_to(28.0).is_err());
    }
}
