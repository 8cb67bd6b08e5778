//! A count of samples in many fine cells, and the quantiles read off it.
//!
//! Inside a cell the samples are taken to lie evenly. With the thousands of cells used here that moves a quantile
//! by far less than chance does at a million samples.

/// A count of samples by where they fall, mm.
#[derive(Clone, Debug, PartialEq)]
pub struct Histogram {
    low_mm: f64,
    cell_mm: f64,
    counts: Vec<u32>,
}

/// One bar for a plot.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bin {
    /// Its left edge, mm.
    pub from_mm: f64,
    /// Its right edge, mm.
    pub to_mm: f64,
    /// Samples in it.
    pub count: u32,
}

impl Histogram {
    /// An empty count from `low_mm` to `high_mm`. What falls outside is counted at the ends.
    pub(super) fn empty(low_mm: f64, high_mm: f64, cells: u32) -> Self {
        let cell_mm = (high_mm - low_mm).max(0.0) / f64::from(cells.max(1));
        Self {
            low_mm,
            cell_mm,
            counts: (0..cells.max(1)).map(|_| 0).collect(),
        }
    }

    /// Counts every sample.
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "the cast stops at the ends of its range, and the last cell takes what is beyond it"
    )]
    pub(super) fn count(&mut self, samples_mm: &[f64]) {
        let cells_per_mm = if self.cell_mm > 0.0 {
            self.cell_mm.recip()
        } else {
            0.0
        };
        let last = self.counts.len() - 1; // never empty: see `empty`
        for sample in samples_mm {
            let cell = ((sample - self.low_mm) * cells_per_mm) as usize;
            if let Some(count) = self.counts.get_mut(cell.min(last)) {
                *count += 1;
            }
        }
    }

    /// Adds another count over the same cells.
    pub(super) fn add(&mut self, other: &Self) {
        for (count, more) in self.counts.iter_mut().zip(&other.counts) {
            *count += more;
        }
    }

    /// How many samples were counted.
    #[must_use]
    pub fn total(&self) -> f64 {
        self.counts.iter().map(|count| f64::from(*count)).sum()
    }

    /// The value below which the share `p` of the samples lies, mm; `p` from 0 to 1.
    #[must_use]
    pub fn quantile_mm(&self, p: f64) -> f64 {
        self.at(Climb::new(&self.counts).reach(p * self.total()))
    }

    /// The interval that leaves the same share outside at either end and holds `p`, mm.
    #[must_use]
    pub fn symmetric_mm(&self, p: f64) -> (f64, f64) {
        (
            self.quantile_mm((1.0 - p) / 2.0),
            self.quantile_mm(f64::midpoint(1.0, p)),
        )
    }

    /// The shortest interval that holds the share `p` of the samples, mm (JCGM 101 7.7).
    #[must_use]
    pub fn shortest_mm(&self, p: f64) -> (f64, f64) {
        let total = self.total();
        let wanted = p * total;
        let (mut right_climb, mut left_climb) =
            (Climb::new(&self.counts), Climb::new(&self.counts));
        let (mut edge, mut below) = (-1.0, 0.0);
        let mut best = (0.0, f64::INFINITY);
        let mut offer = |from: f64, to: f64| {
            if to - from < best.1 - best.0 {
                best = (from, to);
            }
        };
        // The count runs straight inside a cell, so one end of the shortest interval is at an edge of a cell.
        for count in std::iter::once(&0).chain(&self.counts) {
            edge += 1.0;
            below += f64::from(*count);
            if below + wanted <= total {
                offer(edge, right_climb.reach(below + wanted));
            }
            if below >= wanted {
                offer(left_climb.reach(below - wanted), edge);
            }
        }
        (self.at(best.0), self.at(best.1))
    }

    /// The samples in about `bars` even bars, from the first cell that holds one to the last.
    #[must_use]
    pub fn bins(&self, bars: usize) -> Vec<Bin> {
        let is_filled = |count: &u32| *count > 0;
        let Some(first) = self.counts.iter().position(is_filled) else {
            return Vec::new();
        };
        let end = self
            .counts
            .iter()
            .rposition(is_filled)
            .map_or(first, |last| last + 1);
        let filled = self.counts.get(first..end).unwrap_or_default();
        let cells_per_bar = filled.len().div_ceil(bars.max(1));
        let mut bins = Vec::new();
        let mut from = (0..first).map(|_| 1.0).sum::<f64>();
        for bar in filled.chunks(cells_per_bar) {
            let to = from + bar.iter().map(|_| 1.0).sum::<f64>();
            bins.push(Bin {
                from_mm: self.at(from),
                to_mm: self.at(to),
                count: bar.iter().sum(),
            });
            from = to;
        }
        bins
    }

    fn at(&self, cells: f64) -> f64 {
        self.low_mm + cells * self.cell_mm
    }
}

/// Walks up the cells once, to rising counts.
struct Climb<'a> {
    rest: std::slice::Iter<'a, u32>,
    edge: f64,
    below: f64,
    here: f64,
}

impl<'a> Climb<'a> {
    fn new(counts: &'a [u32]) -> Self {
        let mut rest = counts.iter();
        let here = rest.next().map_or(0.0, |count| f64::from(*count));
        Self {
            rest,
            edge: 0.0,
            below: 0.0,
            here,
        }
    }

    /// Where `wanted` samples lie below, in cells from the first edge.
    fn reach(&mut self, wanted: f64) -> f64 {
        while self.below + self.here < wanted || self.here == 0.0 {
            let Some(next) = self.rest.next() else { break };
            self.below += self.here;
            self.here = f64::from(*next);
            self.edge += 1.0;
        }
        let inside = if self.here > 0.0 {
            (wanted - self.below) / self.here
        } else {
            1.0
        };
        self.edge + inside.clamp(0.0, 1.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of(counts: &[u32]) -> Histogram {
        Histogram {
            low_mm: 10.0,
            cell_mm: 0.5,
            counts: counts.to_vec(),
        }
    }

    #[test]
    fn quantiles_between_the_edges() {
        let even = of(&[5, 5, 5, 5]);
        for (p, at) in [
            (0.0, 10.0),
            (0.25, 10.5),
            (0.5, 11.0),
            (0.6, 11.2),
            (1.0, 12.0),
        ] {
            assert!((even.quantile_mm(p) - at).abs() < 1e-12, "{p}");
        }
        let gap = of(&[0, 10, 0, 0, 10, 0]);
        assert!((gap.quantile_mm(0.0) - 10.5).abs() < 1e-12);
        assert!((gap.quantile_mm(1.0) - 12.5).abs() < 1e-12);
    }

    /// Leaning to the left: the shortest half is the first full cell, the symmetric half is not.
    #[test]
    fn the_shortest_interval_leans_with_the_samples() {
        let leaning = of(&[0, 50, 25, 15, 10]);
        let (from, to) = leaning.shortest_mm(0.5);
        assert!(
            (from - 10.5).abs() < 1e-12 && (to - 11.0).abs() < 1e-12,
            "{from} {to}"
        );
        let (low, high) = leaning.symmetric_mm(0.5);
        assert!(
            (low - 10.75).abs() < 1e-12 && (high - 11.5).abs() < 1e-12,
            "{low} {high}"
        );
        let (all_from, all_to) = leaning.shortest_mm(1.0);
        assert!((all_from - 10.5).abs() < 1e-12 && (all_to - 12.5).abs() < 1e-12);
    }

    #[test]
    fn counting_and_adding() {
        let mut one = Histogram::empty(0.0, 1.0, 4);
        one.count(&[-3.0, 0.1, 0.3, 0.99, 5.0]);
        assert_eq!(one.counts, [2, 1, 0, 2]);
        let other = one.clone();
        one.add(&other);
        assert!((one.total() - 10.0).abs() < 1e-12);
        let bins = one.bins(2);
        assert_eq!(bins.iter().map(|bin| bin.count).collect::<Vec<_>>(), [6, 4]);
        assert!((bins[1].from_mm - 0.5).abs() < 1e-12 && (bins[1].to_mm - 1.0).abs() < 1e-12);
    }

    #[test]
    fn nothing_counted_and_no_width() {
        let nothing = Histogram::empty(0.0, 1.0, 4);
        assert!(nothing.bins(10).is_empty());
        let mut point = Histogram::empty(2.0, 2.0, 4);
        point.count(&[2.0, 2.0]);
        assert_eq!(point.shortest_mm(0.95), (2.0, 2.0));
        assert_eq!(point.symmetric_mm(0.5), (2.0, 2.0));
    }
}
