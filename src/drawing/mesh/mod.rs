//! The trial print: the ring as one closed mesh of triangles, for a plastic fit before metal is cut.
//!
//! No booleans: the turn is cut at every lug edge, each sector has its own section, and the lock hole is let into
//! the faces it goes through. x to the right and y up as seen from the body side, z along the optical axis with 0
//! at the flange rear face, all mm.

mod build;
mod hole;
mod profile;
mod stl;
mod three_mf;
mod turn;
mod zip;

use thiserror::Error;

use crate::evaluate::Evaluation;
use crate::geometry::Outline;
use crate::ring::{Feature, ResolvedRing, ShapeFault, outlines};

use super::number::machine;
use super::ring_sheet::why_no_ring;
use build::Build;

pub use stl::stl;
pub use three_mf::three_mf;

/// How the mesh is made.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MeshOptions {
    /// How far the flat faces may lie off the round ones, mm.
    pub chord_mm: f64,
    /// What is added to the minor diameter of the thread, which is a plain bore, mm. With the difference of major
    /// and minor diameter the lens slides in without turning.
    pub thread_allowance_mm: f64,
}

impl Default for MeshOptions {
    fn default() -> Self {
        Self {
            chord_mm: 0.01,
            thread_allowance_mm: 0.0,
        }
    }
}

/// Least and greatest chord error, mm: finer than any printer, and as coarse as still fits together.
pub const CHORD_RANGE_MM: (f64, f64) = (0.001, 0.2);

/// Least and greatest allowance of the thread bore, mm: from stock left for a tap to a bore over any major diameter.
pub const ALLOWANCE_RANGE_MM: (f64, f64) = (-0.5, 5.0);

/// A closed mesh.
#[derive(Debug, Clone, PartialEq)]
pub struct Mesh {
    /// Corners, mm.
    pub vertices: Vec<[f64; 3]>,
    /// Triangles, counter-clockwise seen from outside, as places in `vertices`.
    pub triangles: Vec<[u32; 3]>,
    /// How true it is, in sentences: written into the file.
    pub notes: Vec<String>,
}

/// Why no mesh can be made.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum MeshError {
    /// The ring is not whole.
    #[error("there is no whole ring to print: {0}")]
    NoRing(String),
    /// Chord error out of range.
    #[error("a chord error of {0} mm is out of range: give one from {least} to {most} mm", least = CHORD_RANGE_MM.0, most = CHORD_RANGE_MM.1)]
    Chord(f64),
    /// Allowance out of range.
    #[error("a thread allowance of {0} mm is out of range: give one from {least} to {most} mm", least = ALLOWANCE_RANGE_MM.0, most = ALLOWANCE_RANGE_MM.1)]
    Allowance(f64),
    /// The bore with its allowance leaves no ring.
    #[error("with this thread allowance the ring cannot be made: {0}")]
    Shape(#[from] ShapeFault),
    /// The triangles do not close.
    #[error(
        "the surface of the ring does not close; change the lugs or the lock hole a little and try again"
    )]
    NotClosed,
    /// The file could not be put together.
    #[error("the file could not be put together: {0}")]
    Packing(String),
}

/// The ring of an evaluation as a closed mesh.
///
/// # Errors
/// [`MeshError`] when the ring is not whole or an option is out of range.
pub fn trial_print(evaluation: &Evaluation, options: MeshOptions) -> Result<Mesh, MeshError> {
    let within = |value: f64, range: (f64, f64)| (range.0..=range.1).contains(&value);
    if !within(options.chord_mm, CHORD_RANGE_MM) {
        return Err(MeshError::Chord(options.chord_mm));
    }
    if !within(options.thread_allowance_mm, ALLOWANCE_RANGE_MM) {
        return Err(MeshError::Allowance(options.thread_allowance_mm));
    }
    let (Some(ring), Some(_)) = (&evaluation.derivation.ring, &evaluation.parts) else {
        return Err(MeshError::NoRing(why_no_ring(evaluation)));
    };
    let bored = bored(ring, options.thread_allowance_mm);
    let sections = outlines(&bored)?;
    meshed(&bored, &sections, options)
}

/// The ring with its thread bored to the allowance; the relief never stands into that bore.
fn bored(ring: &ResolvedRing, allowance_mm: f64) -> ResolvedRing {
    let mut bored = ring.clone();
    bored.thread_minor += allowance_mm;
    bored.sizes.relief_diameter = bored.sizes.relief_diameter.max(bored.thread_minor);
    bored
}

fn meshed(
    ring: &ResolvedRing,
    sections: &(Outline<Feature>, Outline<Feature>),
    options: MeshOptions,
) -> Result<Mesh, MeshError> {
    let mut build = Build::new(ring, sections, options.chord_mm);
    build.surfaces()?;
    build.flanks()?;
    let mut notes = vec![
        format!("Lengths in mm; flat faces lie within {} mm of the round ones.", machine(options.chord_mm, 4)),
        format!(
            "The thread is a plain bore of {} mm: minor diameter and an allowance of {} mm.",
            machine(ring.thread_minor, 3),
            machine(options.thread_allowance_mm, 3)
        ),
        "Lug flanks are radial; the root fillets that the cutter leaves, broken edges and the index mark are left out."
            .to_owned(),
    ];
    notes.extend(build.hole_note());
    let mesh = build.finish(notes);
    if mesh.is_closed() {
        Ok(mesh)
    } else {
        Err(MeshError::NotClosed)
    }
}

impl Mesh {
    /// Whether every edge is passed once in each direction, so that the surface has an inside.
    #[must_use]
    pub fn is_closed(&self) -> bool {
        let mut edges: Vec<(u32, u32)> = self.directed_edges().collect();
        let mut backward: Vec<(u32, u32)> = edges.iter().map(|&(from, to)| (to, from)).collect();
        edges.sort_unstable();
        backward.sort_unstable();
        let once = edges.windows(2).all(|pair| pair.first() != pair.last());
        once && edges == backward && !edges.is_empty()
    }

    fn directed_edges(&self) -> impl Iterator<Item = (u32, u32)> + '_ {
        self.triangles
            .iter()
            .flat_map(|&[a, b, c]| [(a, b), (b, c), (c, a)])
    }

    /// Corners less edges plus faces: 0 for a ring, and 2 less for every hole through it.
    #[must_use]
    pub fn euler(&self) -> i64 {
        let count = |number: usize| i64::try_from(number).unwrap_or(i64::MAX);
        count(self.vertices.len()) - count(3 * self.triangles.len() / 2)
            + count(self.triangles.len())
    }

    /// The enclosed volume, mm3, by the divergence theorem; negative where the faces look inward.
    #[must_use]
    pub fn volume_mm3(&self) -> f64 {
        self.corners()
            .map(|[a, b, c]| dot(a, cross(b, c)) / 6.0)
            .sum()
    }

    /// The triangles as places.
    pub fn corners(&self) -> impl Iterator<Item = [[f64; 3]; 3]> + '_ {
        // Triangles name corners that are there: only `build` makes a mesh.
        self.triangles
            .iter()
            .map(|triangle| triangle.map(|corner| self.vertices[corner as usize]))
    }
}

fn cross(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    [
        a[1] * b[2] - a[2] * b[1],
        a[2] * b[0] - a[0] * b[2],
        a[0] * b[1] - a[1] * b[0],
    ]
}

fn dot(a: [f64; 3], b: [f64; 3]) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

#[cfg(test)]
mod mesh_tests;
