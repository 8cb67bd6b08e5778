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
mod tests;
