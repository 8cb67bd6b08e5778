//! Solids of revolution: volume, surface and centroid by Pappus and Guldin, exact for lines and arcs.

use std::f64::consts::TAU;

use thiserror::Error;

use super::{CONTACT, Outline, Segment};

/// Why an outline cannot be turned.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
pub enum RevolveError {
    /// The outline reaches below the axis.
    #[error(
        "the shape reaches {below:.3} mm past the axis it is turned about; look at its smallest diameter"
    )]
    CrossesAxis {
        /// How far, mm.
        below: f64,
    },
}

/// A solid about the z axis.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Solid {
    /// Volume, mm3.
    pub volume: f64,
    /// Surface, mm2.
    pub surface: f64,
    /// Volume times the z of its centroid, mm4.
    pub moment: f64,
}

/// A hole or a gap of one plan right through between two flat faces.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Prism {
    /// Area in the plan, mm2.
    pub area: f64,
    /// Length of the wall in the plan, mm.
    pub wall: f64,
    /// Where it begins along z, mm.
    pub from_z: f64,
    /// Where it ends, mm.
    pub to_z: f64,
}

/// The solid that an outline with x = z and y = radius makes in a full turn.
///
/// # Errors
/// [`RevolveError::CrossesAxis`].
pub fn revolve<T: Copy + PartialEq>(outline: &Outline<T>) -> Result<Solid, RevolveError> {
    let lowest = outline.bounding_box().min.y;
    if lowest < -CONTACT {
        return Err(RevolveError::CrossesAxis { below: -lowest });
    }
    let moments = outline.moments();
    let swept: f64 = outline
        .pieces()
        .map(|(segment, _)| radius_times_length(&segment))
        .sum();
    Ok(Solid {
        volume: TAU * moments.y,
        surface: TAU * swept,
        moment: TAU * moments.xy,
    })
}

/// The integral of the radius along a piece, mm2.
fn radius_times_length(segment: &Segment) -> f64 {
    let middle = segment.a.midpoint(segment.b).y;
    if segment.is_line() {
        return middle * segment.length();
    }
    let chord = segment.chord();
    let along = chord.unit().unwrap_or_default();
    let out = -along.left() * segment.bulge.signum();
    let half = 2.0 * segment.bulge.abs().atan();
    let radius = chord.norm() / (2.0 * half.sin());
    // First moment of the arc about its chord: 2 r^2 (sin a - a cos a).
    middle * segment.length() + out.y * 2.0 * radius * radius * rise_of(half)
}

/// sin a - a cos a; as a series where the two nearly cancel.
fn rise_of(angle: f64) -> f64 {
    if angle > 0.3 {
        return angle.sin() - angle * angle.cos();
    }
    let square = angle * angle;
    let (mut power, mut sum) = (angle * square / 3.0, 0.0);
    for index in 1..10_u32 {
        sum += power;
        let order = f64::from(2 * index);
        power *= -square / (order * (order + 3.0));
    }
    sum
}

impl Solid {
    /// The z of the centroid, mm; `None` for an empty solid.
    #[must_use]
    pub fn centroid_z(&self) -> Option<f64> {
        (self.volume > 0.0).then(|| self.moment / self.volume)
    }

    /// The mass, kg, of a density in kg/m3.
    #[must_use]
    pub fn mass(&self, density_kg_m3: f64) -> f64 {
        self.volume * 1e-9 * density_kg_m3
    }

    /// The part of the solid over an angle, without the two cut faces in its surface. True for radial flanks.
    #[must_use]
    pub fn part_of_turn(&self, angle_rad: f64) -> Self {
        let share = angle_rad / TAU;
        Self {
            volume: self.volume * share,
            surface: self.surface * share,
            moment: self.moment * share,
        }
    }

    /// With another solid beside it; faces that the two share stay in the surface.
    #[must_use]
    pub fn plus(&self, other: &Self) -> Self {
        Self {
            volume: self.volume + other.volume,
            surface: self.surface + other.surface,
            moment: self.moment + other.moment,
        }
    }

    /// With a hole or gap cut through: its wall is new surface, its two ends are lost.
    #[must_use]
    pub fn without(&self, prism: &Prism) -> Self {
        Self {
            volume: self.volume - prism.volume(),
            surface: self.surface + prism.wall * prism.thickness() - 2.0 * prism.area,
            moment: self.moment - prism.volume() * f64::midpoint(prism.from_z, prism.to_z),
        }
    }
}

impl Prism {
    /// A round hole.
    #[must_use]
    pub fn round(diameter: f64, from_z: f64, to_z: f64) -> Self {
        let circumference = TAU / 2.0 * diameter;
        Self {
            area: circumference * diameter / 4.0,
            wall: circumference,
            from_z,
            to_z,
        }
    }

    /// Its length along z, mm.
    #[must_use]
    pub fn thickness(&self) -> f64 {
        (self.to_z - self.from_z).abs()
    }

    /// Its volume, mm3.
    #[must_use]
    pub fn volume(&self) -> f64 {
        self.area * self.thickness()
    }
}

#[cfg(test)]
mod tests {
    use super::super::{OutlineBuilder, Point};
    use super::*;
    use std::f64::consts::PI;

    fn assert_near(value: f64, expected: f64) {
        assert!((value / expected - 1.0).abs() < 4e-15, "{value} {expected}");
    }

    fn disc(z: f64, r: f64, radius: f64) -> Outline {
        OutlineBuilder::start(Point::new(z + radius, r))
            .arc_about(Point::new(z, r), TAU, ())
            .close(())
            .unwrap()
    }

    #[test]
    fn a_torus() {
        // Volume 2 pi^2 R r^2, surface 4 pi^2 R r (Machinery's Handbook, volumes of solids).
        let torus = revolve(&disc(3.0, 20.0, 2.0)).unwrap();
        assert_near(torus.volume, 2.0 * PI * PI * 20.0 * 4.0);
        assert_near(torus.surface, 4.0 * PI * PI * 20.0 * 2.0);
        assert_near(torus.centroid_z().unwrap(), 3.0);
    }

    #[test]
    fn a_cone_and_a_ball() {
        let cone = OutlineBuilder::start(Point::new(0.0, 0.0))
            .line_to(Point::new(12.0, 0.0), ())
            .line_to(Point::new(12.0, 5.0), ())
            .close(())
            .unwrap();
        let cone = revolve(&cone).unwrap();
        assert_near(cone.volume, PI * 25.0 * 12.0 / 3.0);
        assert_near(cone.surface, PI * 5.0 * 13.0 + PI * 25.0);
        assert_near(cone.centroid_z().unwrap(), 9.0);
        let ball = OutlineBuilder::start(Point::new(2.0, 0.0))
            .arc_to(Point::new(-2.0, 0.0), 1.0, ())
            .close(())
            .unwrap();
        let ball = revolve(&ball.translated(Point::new(5.0, 0.0))).unwrap();
        assert_near(ball.volume, 4.0 / 3.0 * PI * 8.0);
        assert_near(ball.surface, 4.0 * PI * 4.0);
        assert_near(ball.centroid_z().unwrap(), 5.0);
        // Half a ball has its centroid 3/8 of the radius from its face.
        let half = OutlineBuilder::start(Point::new(0.0, 0.0))
            .line_to(Point::new(2.0, 0.0), ())
            .arc_about(Point::default(), PI / 2.0, ())
            .close(())
            .unwrap();
        assert_near(revolve(&half).unwrap().centroid_z().unwrap(), 0.75);
    }

    #[test]
    fn flat_arcs_keep_their_digits() {
        // A barrel bulged so little that it is nearly a cylinder, against the closed forms in high precision:
        // radius 10 + sagitta (1 - (z / 5)^2) to second order.
        let rise = 1e-4;
        let bulge = rise / 5.0;
        let barrel = OutlineBuilder::start(Point::new(-5.0, 0.0))
            .line_to(Point::new(5.0, 0.0), ())
            .line_to(Point::new(5.0, 10.0), ())
            .arc_to(Point::new(-5.0, 10.0), bulge, ())
            .close(())
            .unwrap();
        let solid = revolve(&barrel).unwrap();
        let volume = PI * (1000.0 + 20.0 * rise * 20.0 / 3.0 + rise * rise * 16.0 / 3.0);
        assert!((solid.volume / volume - 1.0).abs() < 1e-13);
        assert!(solid.centroid_z().unwrap().abs() < 1e-13);
    }

    #[test]
    fn holes_and_parts() {
        let rod = OutlineBuilder::start(Point::new(0.0, 0.0))
            .line_to(Point::new(7.0, 0.0), ())
            .line_to(Point::new(7.0, 5.0), ())
            .line_to(Point::new(0.0, 5.0), ())
            .close(())
            .unwrap();
        let tube = revolve(&rod).unwrap().without(&Prism::round(6.0, 0.0, 7.0));
        assert_near(tube.volume, PI * 16.0 * 7.0);
        assert_near(tube.surface, TAU * 7.0 * 8.0 + 2.0 * PI * 16.0);
        assert_near(tube.centroid_z().unwrap(), 3.5);
        assert_near(tube.mass(7850.0), PI * 16.0 * 7.0 * 7.85e-6);
        let third = tube.part_of_turn(TAU / 3.0);
        assert_near(third.plus(&third).plus(&third).volume, tube.volume);
        assert!(matches!(
            revolve(&disc(0.0, 1.0, 2.0)),
            Err(RevolveError::CrossesAxis { below }) if (below - 1.0).abs() < 1e-12
        ));
    }
}
