//! Line types, their widths and the lengths of their dashes.

/// The line types used on the drawings, with their numbers in ISO 128-2.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum LineType {
    /// 01.2: visible edges, thread crests.
    ContinuousWide,
    /// 01.1: dimensions, leaders, hatching, thread roots.
    ContinuousNarrow,
    /// 02.1: hidden edges.
    DashedNarrow,
    /// 04.1: axes, circles of holes and lugs.
    LongDashDotNarrow,
    /// 04.2: ends of a cutting plane.
    LongDashDotWide,
    /// 05.1: neighbouring parts, end positions.
    LongDashDoubleDotNarrow,
}

/// The pair of line widths of a drawing, wide to narrow as 2 to 1 (ISO 128-2).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum LineGroup {
    /// 0.5 and 0.25 mm, for A4.
    Half,
    /// 0.7 and 0.35 mm, for A3.
    SevenTenths,
}

/// Lengths of the elements of a line in line widths (ISO 128-20 table 3, from memory).
const DOT: f64 = 0.5;
const GAP: f64 = 3.0;
const DASH: f64 = 12.0;
const LONG_DASH: f64 = 24.0;

/// A line that would repeat its dashes more often than this is drawn continuous: it is no drawing.
const MOST_REPEATS: f64 = 100_000.0;

impl LineGroup {
    /// Wide line, mm.
    #[must_use]
    pub fn wide_mm(self) -> f64 {
        match self {
            Self::Half => 0.5,
            Self::SevenTenths => 0.7,
        }
    }

    /// Narrow line, mm.
    #[must_use]
    pub fn narrow_mm(self) -> f64 {
        self.wide_mm() / 2.0
    }
}

impl LineType {
    /// Every type, in the order of the standard's numbers.
    pub const ALL: [Self; 6] = [
        Self::ContinuousNarrow,
        Self::ContinuousWide,
        Self::DashedNarrow,
        Self::LongDashDotNarrow,
        Self::LongDashDotWide,
        Self::LongDashDoubleDotNarrow,
    ];

    /// The number in ISO 128-2.
    #[must_use]
    pub fn number(self) -> &'static str {
        match self {
            Self::ContinuousNarrow => "01.1",
            Self::ContinuousWide => "01.2",
            Self::DashedNarrow => "02.1",
            Self::LongDashDotNarrow => "04.1",
            Self::LongDashDotWide => "04.2",
            Self::LongDashDoubleDotNarrow => "05.1",
        }
    }

    /// Whether it is drawn with the wide line of the group.
    #[must_use]
    pub fn is_wide(self) -> bool {
        match self {
            Self::ContinuousWide | Self::LongDashDotWide => true,
            Self::ContinuousNarrow
            | Self::DashedNarrow
            | Self::LongDashDotNarrow
            | Self::LongDashDoubleDotNarrow => false,
        }
    }

    /// Width on paper, mm.
    #[must_use]
    pub fn width_mm(self, group: LineGroup) -> f64 {
        if self.is_wide() {
            group.wide_mm()
        } else {
            group.narrow_mm()
        }
    }

    /// The dash that repeats and the dots after it; none for a continuous line.
    fn pattern(self) -> Option<Pattern> {
        match self {
            Self::ContinuousWide | Self::ContinuousNarrow => None,
            Self::DashedNarrow => Some(Pattern {
                dash: DASH,
                dots: &[],
            }),
            Self::LongDashDotNarrow | Self::LongDashDotWide => Some(Pattern {
                dash: LONG_DASH,
                dots: &[0.0],
            }),
            Self::LongDashDoubleDotNarrow => Some(Pattern {
                dash: LONG_DASH,
                dots: &[0.0, DOT + GAP],
            }),
        }
    }
}

/// What repeats along a broken line, in line widths.
struct Pattern {
    dash: f64,
    /// Starts of the dots, counted from the first.
    dots: &'static [f64],
}

impl Pattern {
    /// Everything between one dash and the next.
    fn between(&self) -> f64 {
        self.dots.last().map_or(GAP, |last| GAP + last + DOT + GAP)
    }
}

/// The drawn stretches of a line of `length_mm`, as lengths from its start, mm.
///
/// The dashes are stretched or shortened a little so that an open line starts and ends with a
/// whole dash, and a closed one holds whole repeats with a dash across its start (which then
/// begins below 0). A line too short for two dashes comes out continuous.
#[must_use]
pub fn dashes(length_mm: f64, line: LineType, width_mm: f64, closed: bool) -> Vec<(f64, f64)> {
    let Some(pattern) = line.pattern() else {
        return vec![(0.0, length_mm)];
    };
    let between = pattern.between() * width_mm;
    let usual_dash = pattern.dash * width_mm;
    let fixed = if closed { 0.0 } else { usual_dash };
    let repeats = ((length_mm - fixed) / (usual_dash + between)).round();
    // False for what is not a number, too.
    let is_broken = (1.0..=MOST_REPEATS).contains(&repeats);
    if !is_broken {
        return vec![(0.0, length_mm)];
    }
    let dash_count = if closed { repeats } else { repeats + 1.0 };
    let dash = (length_mm - repeats * between) / dash_count;
    if dash <= 0.0 {
        return vec![(0.0, length_mm)];
    }
    let mut start = if closed { -dash / 2.0 } else { 0.0 };
    let mut drawn = Vec::new();
    let mut left = repeats;
    loop {
        if !(closed && left < 0.5) {
            drawn.push((start, start + dash));
        }
        if left < 0.5 {
            return drawn;
        }
        let first_dot = start + dash + GAP * width_mm;
        drawn.extend(pattern.dots.iter().map(|dot| {
            let from = dot.mul_add(width_mm, first_dot);
            (from, DOT.mul_add(width_mm, from))
        }));
        start += dash + between;
        left -= 1.0;
    }
}

/// What repeats along a broken line of a width: drawn lengths positive, gaps negative, mm; none where it is
/// continuous.
#[must_use]
pub fn pattern_mm(line: LineType, width_mm: f64) -> Option<Vec<f64>> {
    let pattern = line.pattern()?;
    let dots = pattern.dots.iter().flat_map(|_| [-GAP, DOT]);
    let elements = [pattern.dash].into_iter().chain(dots).chain([-GAP]);
    Some(elements.map(|element| element * width_mm).collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn wide_is_twice_narrow() {
        // ISO 128-2: wide to narrow as 2 to 1; series 0.18, 0.25, 0.35, 0.5, 0.7, 1.
        assert_eq!(LineGroup::Half.wide_mm().to_string(), "0.5");
        assert_eq!(LineGroup::Half.narrow_mm().to_string(), "0.25");
        assert_eq!(LineGroup::SevenTenths.wide_mm().to_string(), "0.7");
        assert_eq!(LineGroup::SevenTenths.narrow_mm().to_string(), "0.35");
    }

    #[test]
    fn elements_have_the_lengths_of_the_standard_where_they_fit() {
        // ISO 128-20 table 3 (from memory) at d = 0.35: long dash 8.4, gap 1.05, dot 0.175.
        // One repeat more and the closing dash: 8.4 + 1.05 + 0.175 + 1.05 + 8.4 = 19.075.
        let drawn = dashes(19.075, LineType::LongDashDotNarrow, 0.35, false);
        let expected = [(0.0, 8.4), (9.45, 9.625), (10.675, 19.075)];
        assert_eq!(drawn.len(), 3);
        for (got, want) in drawn.iter().zip(expected) {
            assert!((got.0 - want.0).abs() < 1e-9 && (got.1 - want.1).abs() < 1e-9);
        }
    }

    #[test]
    fn broken_lines_start_and_end_with_a_dash_at_any_length() {
        for line in LineType::ALL {
            for step in 1..400 {
                let length = 0.37 * f64::from(step);
                let drawn = dashes(length, line, 0.25, false);
                let (first, last) = (drawn[0], drawn[drawn.len() - 1]);
                assert!(first.0.abs() < 1e-9);
                assert!((last.1 - length).abs() < 1e-9, "{line:?} {length}");
                assert!(((first.1 - first.0) - (last.1 - last.0)).abs() < 1e-9);
                for pair in drawn.windows(2) {
                    // Gaps are 3d, d = 0.25.
                    assert!((pair[1].0 - pair[0].1 - 0.75).abs() < 1e-9);
                }
                let dash = first.1 - first.0;
                assert!(drawn.len() == 1 || dash > 0.4 * 12.0 * 0.25);
            }
        }
    }

    #[test]
    fn closed_line_closes_on_a_dash() {
        let length = 2.0 * std::f64::consts::PI * 20.0;
        let drawn = dashes(length, LineType::LongDashDotNarrow, 0.25, true);
        let (first, last) = (drawn[0], drawn[drawn.len() - 1]);
        assert!((first.0 + first.1).abs() < 1e-9);
        // The last element is a dot, and a gap of 3d leads back to the first dash.
        assert!((length + first.0 - last.1 - 0.75).abs() < 1e-9);
    }
}
