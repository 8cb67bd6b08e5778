//! Sections turned round the axis, flanks between unlike sections, and the faces round the lock hole.

use std::collections::BTreeMap;

use crate::geometry::{Outline, Point};
use crate::ring::{Feature, ResolvedRing};

use super::hole::{Bottom, LockHole, Made, lock_hole};
use super::profile::{Profile, edges};
use super::turn::{Step, span_rad, steps};
use super::{Mesh, MeshError};

/// A mesh in the making.
pub(super) struct Build {
    profile: Profile,
    steps: Vec<Step>,
    hole: Made,
    chord_mm: f64,
    vertices: Vec<[f64; 3]>,
    /// Place in `vertices` of a corner of the section at a step.
    placed: BTreeMap<(usize, usize), u32>,
    triangles: Vec<[u32; 3]>,
}

/// Room round the lock hole over the chord error, mm.
const MARGIN_MM: f64 = 0.02;

impl Build {
    pub(super) fn new(
        ring: &ResolvedRing,
        sections: &(Outline<Feature>, Outline<Feature>),
        chord_mm: f64,
    ) -> Self {
        let profile = Profile::new(&sections.0, &sections.1, chord_mm);
        let margin = chord_mm + MARGIN_MM;
        let hole = lock_hole(ring, &profile, margin);
        let window = hole.hole().map(|hole| hole.window(margin));
        let steps = steps(&ring.lugs, window, span_rad(profile.outer_mm(), chord_mm));
        Self {
            profile,
            steps,
            hole,
            chord_mm,
            vertices: Vec::new(),
            placed: BTreeMap::new(),
            triangles: Vec::new(),
        }
    }

    pub(super) fn hole_note(&self) -> Option<String> {
        self.hole.note()
    }

    pub(super) fn finish(self, notes: Vec<String>) -> Mesh {
        Mesh {
            vertices: self.vertices,
            triangles: self.triangles,
            notes,
        }
    }

    fn vertex(&mut self, place: [f64; 3]) -> u32 {
        // A mesh of 2^32 corners would not fit into memory.
        let index = u32::try_from(self.vertices.len()).unwrap_or(u32::MAX);
        self.vertices.push(place);
        index
    }

    /// The corner of the section at the begin of a step; steps are counted on past the turn.
    fn corner(&mut self, node: usize, step: usize) -> u32 {
        let step = step % self.steps.len();
        if let Some(index) = self.placed.get(&(node, step)) {
            return *index;
        }
        let (at, angle) = (self.profile.at(node), self.steps[step].from);
        let index = self.vertex(on_turn(at.y, angle, at.x));
        self.placed.insert((node, step), index);
        index
    }

    /// Every section turned through its steps, with the faces round the lock hole.
    pub(super) fn surfaces(&mut self) -> Result<(), MeshError> {
        let hole = self.hole.hole().copied();
        let skipped: Vec<(usize, usize)> = hole.iter().flat_map(faces_of).collect();
        for (index, step) in self.steps.clone().into_iter().enumerate() {
            let section: Vec<(usize, usize)> = edges(self.profile.section(step.in_lug)).collect();
            for edge in section {
                if !(step.in_window && skipped.contains(&edge)) {
                    self.quad(edge, index);
                }
            }
        }
        hole.map_or(Ok(()), |hole| self.lock_hole(&hole))
    }

    fn quad(&mut self, (from, to): (usize, usize), step: usize) {
        let near = [self.corner(from, step), self.corner(to, step)];
        let far = [self.corner(from, step + 1), self.corner(to, step + 1)];
        self.triangles.push([near[0], near[1], far[1]]);
        self.triangles.push([near[0], far[1], far[0]]);
    }

    /// The flat faces where a lug begins or ends: what one section has and its neighbour has not.
    pub(super) fn flanks(&mut self) -> Result<(), MeshError> {
        for index in 0..self.steps.len() {
            let before = self.steps[(index + self.steps.len() - 1) % self.steps.len()];
            let after = self.steps[index];
            if before.in_lug == after.in_lug {
                continue;
            }
            let left: Vec<_> = edges(self.profile.section(before.in_lug)).collect();
            let right: Vec<_> = edges(self.profile.section(after.in_lug)).collect();
            let only_left = left.iter().filter(|edge| !right.contains(edge)).copied();
            let only_right = right
                .iter()
                .filter(|edge| !left.contains(edge))
                .map(|(from, to)| (*to, *from));
            for nodes in loops(only_left.chain(only_right).collect()) {
                let places: Vec<Point> = nodes.iter().map(|node| self.profile.at(*node)).collect();
                let corners: Vec<u32> =
                    nodes.iter().map(|node| self.corner(*node, index)).collect();
                self.fill(&places, &[], &corners, signed_area(&places))?;
            }
        }
        Ok(())
    }

    /// Rear face, wall, and bottom or front face of the lock hole.
    fn lock_hole(&mut self, hole: &LockHole) -> Result<(), MeshError> {
        let rear_z = self.profile.at(hole.rear.0).x;
        let rear = self.ring_of_hole(hole, rear_z);
        self.face_with_hole(hole.rear, &rear, 1.0)?;
        let bottom_z = match hole.bottom {
            Bottom::Through(edge) => self.profile.at(edge.0).x,
            Bottom::Blind(z) => z,
        };
        let bottom = self.ring_of_hole(hole, bottom_z);
        let around = |ring: &[u32]| {
            ring.iter()
                .copied()
                .cycle()
                .skip(1)
                .take(ring.len())
                .collect::<Vec<_>>()
        };
        let next = around(&rear).into_iter().zip(around(&bottom));
        for ((top, low), (next_top, next_low)) in rear.iter().zip(&bottom).zip(next) {
            self.triangles.push([*top, next_top, next_low]);
            self.triangles.push([*top, next_low, *low]);
        }
        match hole.bottom {
            Bottom::Through(edge) => self.face_with_hole(edge, &bottom, -1.0),
            Bottom::Blind(_) => {
                let places = self.seen_from_behind(&bottom);
                self.fill(&places, &[], &bottom, 1.0)
            }
        }
    }

    /// The rim of the lock hole at a z, counter-clockwise seen from the body side.
    fn ring_of_hole(&mut self, hole: &LockHole, z: f64) -> Vec<u32> {
        let radius = hole.hole.diameter_mm / 2.0;
        let middle = on_turn(hole.hole.radius_mm, hole.hole.angle_deg.to_radians(), z);
        let count = (std::f64::consts::TAU / span_rad(radius, self.chord_mm)).ceil();
        let mut rim = Vec::new();
        let mut index = 0.0;
        while index < count {
            let (sin, cos) = (std::f64::consts::TAU * index / count).sin_cos();
            rim.push(self.vertex([middle[0] + radius * cos, middle[1] + radius * sin, z]));
            index += 1.0;
        }
        rim
    }

    /// A flat face over the window with the lock hole in it, looking along z where `toward` is positive.
    fn face_with_hole(
        &mut self,
        (from, to): (usize, usize),
        rim: &[u32],
        toward: f64,
    ) -> Result<(), MeshError> {
        let window = self.window_stations();
        let outward: Vec<u32> = window.iter().map(|step| self.corner(from, *step)).collect();
        let back: Vec<u32> = window
            .iter()
            .rev()
            .map(|step| self.corner(to, *step))
            .collect();
        let border: Vec<u32> = outward.into_iter().chain(back).collect();
        let holes = [border.len()];
        let corners: Vec<u32> = border.into_iter().chain(rim.iter().copied()).collect();
        let places = self.seen_from_behind(&corners);
        self.fill(&places, &holes, &corners, toward)
    }

    /// The begins of the steps in the window and the end of the last, in the order of the turn.
    fn window_stations(&self) -> Vec<usize> {
        let count = self.steps.len();
        let first = (0..count).find(|index| {
            self.steps[*index].in_window && !self.steps[(index + count - 1) % count].in_window
        });
        let first = first.unwrap_or(0);
        let length = (0..count)
            .take_while(|ahead| self.steps[(first + ahead) % count].in_window)
            .count();
        (first..=first + length).collect()
    }

    fn seen_from_behind(&self, corners: &[u32]) -> Vec<Point> {
        // The corners were made by `vertex`.
        corners
            .iter()
            .map(|corner| self.vertices[*corner as usize])
            .map(|[x, y, _]| Point::new(x, y))
            .collect()
    }

    /// Fills a border, with holes that begin at `holes`, by triangles that turn as the sign of `turn` says.
    fn fill(
        &mut self,
        places: &[Point],
        holes: &[usize],
        corners: &[u32],
        turn: f64,
    ) -> Result<(), MeshError> {
        let flat: Vec<f64> = places.iter().flat_map(|place| [place.x, place.y]).collect();
        let found = earcutr::earcut(&flat, holes, 2).map_err(|_| MeshError::NotClosed)?;
        for triple in found.chunks_exact(3) {
            let &[a, b, c] = triple else { continue };
            // The triangulation names only corners it was given.
            let area = (places[b] - places[a]).cross(places[c] - places[a]);
            let triangle = [corners[a], corners[b], corners[c]];
            self.triangles.push(if area * turn >= 0.0 {
                triangle
            } else {
                [triangle[0], triangle[2], triangle[1]]
            });
        }
        Ok(())
    }
}

/// The edges of the section that the hole goes through.
fn faces_of(hole: &LockHole) -> Vec<(usize, usize)> {
    match hole.bottom {
        Bottom::Through(edge) => vec![hole.rear, edge],
        Bottom::Blind(_) => vec![hole.rear],
    }
}

/// A place at a radius and a clock angle: clock angles run to the left of someone who looks from the body side.
fn on_turn(radius: f64, clock_rad: f64, z: f64) -> [f64; 3] {
    let (sin, cos) = clock_rad.sin_cos();
    [-radius * sin, radius * cos, z]
}

/// Directed edges joined to closed loops.
fn loops(mut left: Vec<(usize, usize)>) -> Vec<Vec<usize>> {
    let mut found = Vec::new();
    while let Some((start, mut at)) = left.pop() {
        let mut nodes = vec![start];
        while at != start {
            nodes.push(at);
            let Some(next) = left.iter().position(|(from, _)| *from == at) else {
                break;
            };
            at = left.swap_remove(next).1;
        }
        found.push(nodes);
    }
    found
}

/// Twice the area of a polygon, positive counter-clockwise.
fn signed_area(places: &[Point]) -> f64 {
    places
        .iter()
        .zip(places.iter().cycle().skip(1))
        .map(|(a, b)| a.cross(*b))
        .sum()
}
