//! How much of the exit pupil the bores cut off, seen from a point of the image.
//!
//! Every edge of every land is thrown on the pupil plane by straight rays from the image point; what is left is
//! the area common to the pupil and all of them. Taking the worst edge alone would report too much light.

use super::disc::{Disc, common_area_mm2};
use super::exit_pupil::ExitPupil;

/// A round edge on the axis that can cut light off.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BoreEdge {
    /// Its distance from the image plane, mm; positive, and behind the last surface of the lens.
    pub distance_mm: f64,
    /// Its radius, mm.
    pub radius_mm: f64,
}

impl BoreEdge {
    /// Both edges of a straight or tapered land, each `(distance from the image, radius)`, mm.
    #[must_use]
    pub const fn of_land(front: (f64, f64), rear: (f64, f64)) -> [Self; 2] {
        [
            Self {
                distance_mm: front.0,
                radius_mm: front.1,
            },
            Self {
                distance_mm: rear.0,
                radius_mm: rear.1,
            },
        ]
    }

    /// Its picture on the plane of the pupil, seen from `height_mm` in the image; the centre lies on the line
    /// of the image height.
    fn on_the_pupil(&self, pupil: ExitPupil, height_mm: f64) -> Disc {
        let scale = pupil.distance_mm() / self.distance_mm;
        Disc {
            x_mm: height_mm * (1.0 - scale),
            y_mm: 0.0,
            radius_mm: self.radius_mm * scale,
        }
    }
}

/// What reaches one point of the image.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Light {
    /// Distance from the middle of the image, mm.
    pub height_mm: f64,
    /// Share of the pupil that the bores leave clear, 0 to 1.
    pub clear_share: f64,
    /// The light lost to the bores, stops; infinite where all is cut off.
    pub lost_stops: f64,
    /// Fall-off from the slant alone, `cos⁴`: the lens's own, kept apart.
    pub slant_share: f64,
    /// The edge that cuts most by itself, by its place in the list; none where nothing is cut.
    pub worst_edge: Option<usize>,
}

/// The light over the image height at one f-number.
#[derive(Clone, Debug, PartialEq)]
pub struct LightCurve {
    /// The f-number.
    pub f_number: f64,
    /// From the middle of the image outward.
    pub points: Vec<Light>,
}

/// The pupil and the edges before it.
#[derive(Clone, Debug, PartialEq)]
pub struct Vignetting {
    pupil: ExitPupil,
    edges: Vec<BoreEdge>,
}

impl Vignetting {
    /// A pupil seen through the edges. Edges at or behind the image plane cannot cut and are left out of
    /// account.
    #[must_use]
    pub const fn new(pupil: ExitPupil, edges: Vec<BoreEdge>) -> Self {
        Self { pupil, edges }
    }

    /// The edges in the order of [`Light::worst_edge`].
    #[must_use]
    pub fn edges(&self) -> &[BoreEdge] {
        &self.edges
    }

    /// Share of the pupil left clear at `height_mm` from the middle of the image, 0 to 1.
    #[must_use]
    pub fn clear_share(&self, height_mm: f64, f_number: f64) -> f64 {
        self.share_through(
            self.before_the_image().map(|(_, edge)| edge),
            height_mm,
            f_number,
        )
    }

    /// What reaches the image at `height_mm` from its middle.
    #[must_use]
    pub fn light(&self, height_mm: f64, f_number: f64) -> Light {
        let clear_share = self.clear_share(height_mm, f_number);
        Light {
            height_mm,
            clear_share,
            lost_stops: lost_stops(clear_share),
            slant_share: self.pupil.slant_share(height_mm),
            worst_edge: self.worst_edge(height_mm, f_number),
        }
    }

    /// The light from the middle of the image to `greatest_height_mm` in `steps` even steps, for every one
    /// of the f-numbers.
    #[must_use]
    pub fn curves(
        &self,
        f_numbers: &[f64],
        greatest_height_mm: f64,
        steps: u32,
    ) -> Vec<LightCurve> {
        let height = |step: u32| greatest_height_mm * f64::from(step) / f64::from(steps.max(1));
        f_numbers
            .iter()
            .map(|&f_number| LightCurve {
                f_number,
                points: (0..=steps)
                    .map(|step| self.light(height(step), f_number))
                    .collect(),
            })
            .collect()
    }

    /// The f-number from which on nothing is cut off at `height_mm`: the largest of `D_e' / D` over the
    /// edges, by similar triangles; 0 without edges. `None` where an edge hides the middle of the pupil and
    /// stopping down never helps.
    #[must_use]
    pub fn clipping_ends_at(&self, height_mm: f64) -> Option<f64> {
        let mut ends = 0.0_f64;
        for (_, edge) in self.before_the_image() {
            let seen = edge.on_the_pupil(self.pupil, height_mm);
            let room = seen.radius_mm - seen.x_mm.abs();
            if room <= 0.0 {
                return None;
            }
            // The pupil at f/1 is as many times wider as the f-number that just passes.
            ends = ends.max(self.pupil.diameter_mm(1.0) / (2.0 * room));
        }
        Some(ends)
    }

    fn before_the_image(&self) -> impl Iterator<Item = (usize, &BoreEdge)> {
        self.edges
            .iter()
            .enumerate()
            .filter(|(_, edge)| edge.distance_mm > 0.0)
    }

    fn share_through<'a>(
        &self,
        edges: impl Iterator<Item = &'a BoreEdge>,
        height_mm: f64,
        f_number: f64,
    ) -> f64 {
        let radius_mm = self.pupil.diameter_mm(f_number) / 2.0;
        let pupil = Disc {
            x_mm: 0.0,
            y_mm: 0.0,
            radius_mm,
        };
        let mut discs = vec![pupil];
        discs.extend(edges.map(|edge| edge.on_the_pupil(self.pupil, height_mm)));
        // Rounding must not make more light than there is.
        (common_area_mm2(&discs) / pupil.area_mm2()).min(1.0)
    }

    fn worst_edge(&self, height_mm: f64, f_number: f64) -> Option<usize> {
        let alone =
            |edge: &BoreEdge| self.share_through(std::iter::once(edge), height_mm, f_number);
        self.before_the_image()
            .map(|(index, edge)| (index, alone(edge)))
            .filter(|(_, share)| *share < UNCUT)
            .min_by(|a, b| a.1.total_cmp(&b.1))
            .map(|(index, _)| index)
    }
}

/// A share nearer to 1 than this is rounding, not a cut.
const UNCUT: f64 = 1.0 - 1e-12;

/// The loss of a share in stops, `-log2`: 0 for all of it, 1 for a half, infinite for nothing.
#[must_use]
pub fn lost_stops(clear_share: f64) -> f64 {
    // Without the addition a share of 1 gives -0.
    -clear_share.log2() + 0.0
}

#[cfg(test)]
#[path = "vignetting_tests.rs"]
mod tests;
