//! Section lines: equally spaced straight lines clipped to a region of lines and arcs.

use crate::drawing::extent::Extent;
use crate::drawing::path::{Path, Piece, Vertex, within_sweep};
use crate::drawing::placement::{Placement, direction_deg, turned};
use crate::geometry::Point;

/// A hatched region.
#[derive(Debug, Clone, PartialEq)]
pub struct Hatch {
    /// The border; a loop inside a loop is a hole.
    pub loops: Vec<Path>,
    /// Places that stay free of lines, as closed paths: round lettering.
    pub gaps: Vec<Path>,
    /// Direction of the lines, degrees counter-clockwise from x.
    pub angle_deg: f64,
    /// Distance from line to line, mm on paper.
    pub spacing_mm: f64,
    /// A point that a line (long enough) would pass through, so that separate regions of one part line up.
    pub origin: Point,
}

/// ISO 128-2 wants at least this clear between parallel lines, mm (from ISO 128:1982 clause 3, as
/// quoted in public excerpts).
pub const MIN_SPACING_MM: f64 = 0.7;

/// A scan line nearer than this to a corner of the border is moved off it by twice as much, so
/// that it always crosses the border and never grazes it, mm. Far under what paper shows.
const CORNER_NEARNESS_MM: f64 = 1e-7;

/// More lines than this are never wanted; the spacing is doubled until there are fewer.
const MOST_LINES: f64 = 5000.0;

impl Hatch {
    /// Hatching at 45 degrees with nothing left free.
    #[must_use]
    pub fn at_45_deg(loops: Vec<Path>, spacing_mm: f64) -> Self {
        Self {
            loops,
            gaps: Vec::new(),
            angle_deg: 45.0,
            spacing_mm,
            origin: Point { x: 0.0, y: 0.0 },
        }
    }

    /// The hatch after a placement; the spacing is on paper and stays.
    #[must_use]
    pub fn placed(&self, placement: &Placement) -> Self {
        let all = |paths: &[Path]| paths.iter().map(|path| path.placed(placement)).collect();
        Self {
            loops: all(&self.loops),
            gaps: all(&self.gaps),
            angle_deg: placement.angle_deg(self.angle_deg),
            spacing_mm: self.spacing_mm,
            origin: placement.point(self.origin),
        }
    }

    /// The lines, each inside the border and outside the gaps, ends exact on lines and arcs.
    #[must_use]
    pub fn lines(&self) -> Vec<Path> {
        let border = Border::turned(&self.loops, self);
        let gaps: Vec<Border> = self
            .gaps
            .iter()
            .map(|gap| Border::turned(std::slice::from_ref(gap), self))
            .collect();
        let Some(extent) = border.extent else {
            return Vec::new();
        };
        let mut spacing = self.spacing_mm.max(MIN_SPACING_MM);
        while extent.height() / spacing > MOST_LINES {
            spacing *= 2.0;
        }
        let mut lines = Vec::new();
        let mut row = (extent.bottom / spacing).ceil();
        while row * spacing < extent.top {
            let v = border.off_corners(row * spacing);
            let mut spans = border.spans(v);
            for gap in &gaps {
                spans = without(&spans, &gap.spans(v));
            }
            lines.extend(spans.into_iter().map(|(from, to)| self.line(from, to, v)));
            row += 1.0;
        }
        lines
    }

    /// A line of the turned picture, turned back.
    fn line(&self, from: f64, to: f64, v: f64) -> Path {
        let back = |u: f64| {
            let offset = turned(Point { x: u, y: v }, self.angle_deg);
            Point {
                x: self.origin.x + offset.x,
                y: self.origin.y + offset.y,
            }
        };
        Path::line(back(from), back(to))
    }
}

/// Closed loops turned so that the hatch lines run level.
struct Border {
    pieces: Vec<Piece>,
    extent: Option<Extent>,
}

impl Border {
    fn turned(loops: &[Path], hatch: &Hatch) -> Self {
        let level = |path: &Path| Path {
            vertices: path
                .vertices
                .iter()
                .map(|vertex| {
                    let offset = Point {
                        x: vertex.at.x - hatch.origin.x,
                        y: vertex.at.y - hatch.origin.y,
                    };
                    Vertex {
                        at: turned(offset, -hatch.angle_deg),
                        bulge: vertex.bulge,
                    }
                })
                .collect(),
            closed: true,
        };
        let pieces: Vec<Piece> = loops
            .iter()
            .flat_map(|path| level(path).pieces().collect::<Vec<_>>())
            .collect();
        let extent = pieces.iter().map(Piece::extent).reduce(Extent::union);
        Self { pieces, extent }
    }

    /// The height `v`, moved off every corner that it would touch.
    fn off_corners(&self, v: f64) -> f64 {
        let touches = |height: f64| {
            self.pieces.iter().any(|piece| {
                (piece.at_share(0.0).y - height).abs() < CORNER_NEARNESS_MM
                    || (piece.at_share(1.0).y - height).abs() < CORNER_NEARNESS_MM
            })
        };
        let mut height = v;
        // Every corner can push at most once, as the moves go one way.
        for _ in 0..=self.pieces.len() {
            if !touches(height) {
                break;
            }
            height += 2.0 * CORNER_NEARNESS_MM;
        }
        height
    }

    /// The stretches of the level line at `v` that lie inside, from left to right.
    fn spans(&self, v: f64) -> Vec<(f64, f64)> {
        let v = self.off_corners(v);
        let mut crossings: Vec<f64> = self
            .pieces
            .iter()
            .flat_map(|piece| crossings(piece, v))
            .collect();
        crossings.sort_by(f64::total_cmp);
        crossings
            .chunks_exact(2)
            .filter_map(|pair| match pair {
                [from, to] if to > from => Some((*from, *to)),
                _ => None,
            })
            .collect()
    }
}

/// Where a piece crosses the level line at `v`.
fn crossings(piece: &Piece, v: f64) -> Vec<f64> {
    match *piece {
        Piece::Line { from, to } => {
            if (from.y > v) == (to.y > v) {
                return Vec::new();
            }
            let share = (v - from.y) / (to.y - from.y);
            vec![share.mul_add(to.x - from.x, from.x)]
        }
        Piece::Arc {
            centre,
            radius_mm,
            start_deg,
            sweep_deg,
        } => {
            let rise = v - centre.y;
            let square = radius_mm * radius_mm - rise * rise;
            if square <= 0.0 {
                return Vec::new();
            }
            let half_chord = square.sqrt();
            [-half_chord, half_chord]
                .into_iter()
                .map(|reach| Point {
                    x: centre.x + reach,
                    y: v,
                })
                .filter(|&at| within_sweep(direction_deg(centre, at), start_deg, sweep_deg))
                .map(|at| at.x)
                .collect()
        }
    }
}

/// The stretches with others cut out of them; both from left to right.
fn without(spans: &[(f64, f64)], cuts: &[(f64, f64)]) -> Vec<(f64, f64)> {
    let mut left = Vec::new();
    for &(from, to) in spans {
        let mut start = from;
        for &(cut_from, cut_to) in cuts {
            if cut_to <= start || cut_from >= to {
                continue;
            }
            if cut_from > start {
                left.push((start, cut_from));
            }
            start = cut_to;
        }
        if start < to {
            left.push((start, to));
        }
    }
    left
}

#[cfg(test)]
mod tests {
    use super::*;

    fn point(x: f64, y: f64) -> Point {
        Point { x, y }
    }

    fn total_mm(lines: &[Path]) -> f64 {
        lines.iter().map(Path::length_mm).sum()
    }

    #[test]
    fn lines_times_spacing_give_the_area_of_a_ring() {
        // Area of an annulus 20/10: pi (400 - 100) = 942.478 mm2.
        let hatch = Hatch {
            angle_deg: 30.0,
            ..Hatch::at_45_deg(
                vec![
                    Path::circle(point(5.0, 5.0), 20.0),
                    Path::circle(point(5.0, 5.0), 10.0),
                ],
                0.7,
            )
        };
        let area = total_mm(&hatch.lines()) * 0.7;
        let exact = std::f64::consts::PI * 300.0;
        assert!((area / exact - 1.0).abs() < 2e-3, "{area} against {exact}");
    }

    #[test]
    fn midpoints_lie_inside_the_region_and_ends_on_its_border() {
        let centre = point(1.0, -2.0);
        let hatch = Hatch::at_45_deg(
            vec![Path::circle(centre, 9.0), Path::circle(centre, 4.0)],
            2.0,
        );
        let lines = hatch.lines();
        assert!(lines.len() > 8);
        for line in &lines {
            for piece in line.pieces() {
                let radius =
                    |share| crate::drawing::placement::distance_mm(centre, piece.at_share(share));
                assert!(radius(0.5) < 9.0 && radius(0.5) > 3.999);
                for end in [radius(0.0), radius(1.0)] {
                    assert!((end - 9.0).abs() < 1e-9 || (end - 4.0).abs() < 1e-9);
                }
            }
        }
    }

    #[test]
    fn scan_lines_through_corners_still_alternate() {
        // A square stood on its corner: every hatch line at 0 deg through its side corners.
        let diamond = Path::polygon([
            point(0.0, -4.0),
            point(4.0, 0.0),
            point(0.0, 4.0),
            point(-4.0, 0.0),
        ]);
        let hatch = Hatch {
            angle_deg: 0.0,
            ..Hatch::at_45_deg(vec![diamond], 1.0)
        };
        // Chords at v = -3..3 are 2, 4, 6, 8, 6, 4, 2 long, and nothing at the tips.
        assert!((total_mm(&hatch.lines()) - 32.0).abs() < 1e-5);
    }

    #[test]
    fn gap_round_lettering_stays_free() {
        let square = Path::polygon(Extent::sized(point(0.0, 0.0), 20.0, 20.0).corners());
        let gap = Path::polygon(Extent::sized(point(5.0, 8.0), 30.0, 4.0).corners());
        let hatch = Hatch {
            gaps: vec![gap],
            ..Hatch::at_45_deg(vec![square], 1.0)
        };
        let area = total_mm(&hatch.lines());
        // 400 less the 15 x 4 that lies inside, spacing 1.
        assert!((area - 340.0).abs() < 4.0, "{area}");
        for line in hatch.lines() {
            let middle = line.pieces().next().unwrap().at_share(0.5);
            assert!(!(middle.x > 5.0 && middle.y > 8.0 && middle.y < 12.0));
        }
    }

    #[test]
    fn nearby_parts_share_their_lines() {
        // Two squares of one part, apart: their lines lie on the same ruling.
        let lines_of = |x: f64| {
            let square = Path::polygon(Extent::sized(point(x, 0.0), 6.0, 6.0).corners());
            Hatch::at_45_deg(vec![square], 1.5).lines()
        };
        for line in lines_of(0.0).iter().chain(&lines_of(11.3)) {
            let at = line.vertices[0].at;
            let ruling = (at.y - at.x) / 2.0_f64.sqrt() / 1.5;
            assert!((ruling - ruling.round()).abs() < 1e-6);
        }
    }
}
