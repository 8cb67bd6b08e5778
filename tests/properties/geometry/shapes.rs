//! Random shapes of the kinds that rings, lugs and lenses have, from a fixed seed.

use std::f64::consts::TAU;

use flangewright::geometry::{Interval, Outline, OutlineBuilder, Point, sector::AnnularSector};

/// Numbers without end from one seed (`SplitMix64`, public domain).
pub struct Random(pub u64);

impl Random {
    pub fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    /// Evenly from `low` to `high`.
    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        let share = f64::from(u32::try_from(self.next() >> 32).unwrap()) / f64::from(u32::MAX);
        low + (high - low) * share
    }

    pub fn below(&mut self, count: u64) -> u64 {
        self.next() % count
    }
}

pub fn polygon(corners: &[Point]) -> Option<Outline> {
    let first = *corners.first()?;
    corners[1..]
        .iter()
        .fold(OutlineBuilder::start(first), |run, corner| {
            run.line_to(*corner, ())
        })
        .close(())
        .ok()
}

/// Spikes and arcs about a centre; simple, because the angles only grow.
pub fn star(random: &mut Random, centre: Point, size: f64, points: u32) -> Option<Outline> {
    let start = random.between(0.0, TAU);
    let mut corner = |index: u32| {
        let angle = start + TAU * f64::from(index) / f64::from(points);
        centre + Point::polar(size * random.between(0.4, 1.0), angle)
    };
    let corners: Vec<Point> = (0..points).map(&mut corner).collect();
    let mut run = OutlineBuilder::start(corners[0]);
    for corner in &corners[1..] {
        let bulge = if random.below(2) == 0 {
            0.0
        } else {
            random.between(-0.3, 0.3)
        };
        run = run.arc_to(*corner, bulge, ());
    }
    run.close(()).ok()
}

/// Half-section of a ring: a plate, a spigot and a lug, with fillets and a chamfer. `z` is its front face; the radii
/// are on a grid of 0.05 so that two rings often share a face.
pub fn ring(random: &mut Random, z: f64) -> Option<Outline> {
    let mut grid = |low: f64, high: f64| (random.between(low, high) * 20.0).round() / 20.0;
    let bore = grid(14.0, 17.0);
    let neck = bore + grid(1.0, 3.0);
    let lug = neck + grid(0.5, 3.0);
    let rim = lug + grid(1.0, 6.0);
    let plate = grid(1.0, 3.0);
    let groove = plate + grid(0.5, 3.0);
    let end = groove + grid(0.8, 2.0);
    let fillet = grid(0.05, 0.4);
    let at = |dz: f64, r: f64| Point::new(z + dz, r);
    let quarter = -(TAU / 16.0).tan();
    OutlineBuilder::start(at(0.0, bore))
        .line_to(at(end, bore), ())
        .line_to(at(end, lug - 0.2), ())
        .line_to(at(end - 0.2, lug), ())
        .line_to(at(groove, lug), ())
        .line_to(at(groove, neck), ())
        .line_to(at(plate + fillet, neck), ())
        .arc_to(at(plate, neck + fillet), quarter, ())
        .line_to(at(plate, rim), ())
        .line_to(at(0.0, rim), ())
        .close(())
        .ok()
}

pub fn lug(
    inner: f64,
    outer: f64,
    start_rad: f64,
    extent_rad: f64,
    corner: f64,
) -> Option<Outline> {
    let interval = Interval::new(start_rad, extent_rad)?;
    let sector = AnnularSector::new(inner, outer, interval).ok()?;
    let fits = corner.min(sector.largest_corner() * 0.99);
    Some(sector.outline(fits, fits).ok()?.retagged(|_| ()))
}
