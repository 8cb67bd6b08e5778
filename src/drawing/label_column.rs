//! Notes in a column beside a view, with leaders that do not cross.
//!
//! The labels lie at an even pitch in the order of their places along the side; where a straight leader
//! would still cross another one (its place lies deeper in the view), the two exchange labels. Each exchange makes
//! the leaders shorter in all, so it ends (boundary labelling, after Bekos and others, 2005).

use thiserror::Error;

use crate::geometry::Point;

/// The column.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Column {
    /// Where leaders meet their landings, mm.
    pub elbow_x_mm: f64,
    /// Lowest place for a landing, mm.
    pub bottom_mm: f64,
    /// Highest place for a landing, mm.
    pub top_mm: f64,
    /// Least distance from landing to landing, mm.
    pub pitch_mm: f64,
}

/// Why notes cannot be placed.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
pub enum ColumnError {
    /// The column is too short.
    #[error(
        "{count} notes need {needed_mm:.1} mm beside the view and there are {available_mm:.1} mm: \
         put some on the other side, or take a larger sheet"
    )]
    TooShort {
        /// How many notes.
        count: usize,
        /// Height that they need, mm.
        needed_mm: f64,
        /// Height of the column, mm.
        available_mm: f64,
    },
}

/// The elbow for each place on the part, in the order of the places.
///
/// # Errors
/// When the column is too short for so many notes at its pitch.
pub fn elbows(tips: &[Point], column: &Column) -> Result<Vec<Point>, ColumnError> {
    let available_mm = column.top_mm - column.bottom_mm;
    let gaps = crate::drawing::whole::as_f64(tips.len().saturating_sub(1));
    let needed_mm = gaps * column.pitch_mm;
    if needed_mm > available_mm + 1e-9 {
        return Err(ColumnError::TooShort {
            count: tips.len(),
            needed_mm,
            available_mm,
        });
    }
    let mut order: Vec<usize> = (0..tips.len()).collect();
    let height = |index: &usize| tips.get(*index).map_or(0.0, |tip| tip.y);
    order.sort_by(|a, b| height(a).total_cmp(&height(b)).then(a.cmp(b)));
    let wanted: Vec<f64> = order.iter().map(height).collect();
    let slots = spread(&wanted, column);
    let mut elbow_ys = vec![0.0; tips.len()];
    for (index, slot) in order.into_iter().zip(slots) {
        if let Some(elbow_y) = elbow_ys.get_mut(index) {
            *elbow_y = slot;
        }
    }
    let mut elbows: Vec<Point> = elbow_ys
        .into_iter()
        .map(|y| Point {
            x: column.elbow_x_mm,
            y,
        })
        .collect();
    uncross(tips, &mut elbows);
    Ok(elbows)
}

/// Heights in rising order pushed apart to the pitch and kept in the column: one pass up, one down.
fn spread(rising: &[f64], column: &Column) -> Vec<f64> {
    let mut least = column.bottom_mm;
    let mut slots: Vec<f64> = rising
        .iter()
        .map(|&wanted| {
            let slot = wanted.max(least);
            least = slot + column.pitch_mm;
            slot
        })
        .collect();
    let mut most = column.top_mm;
    for slot in slots.iter_mut().rev() {
        *slot = slot.min(most);
        most = *slot - column.pitch_mm;
    }
    slots
}

/// Exchanges the labels of leaders that cross until none do.
fn uncross(tips: &[Point], elbows: &mut [Point]) {
    // Each exchange shortens the leaders; the bound only guards against rounding.
    for _ in 0..tips.len().pow(3) {
        let Some((a, b)) = first_crossing(tips, elbows) else {
            return;
        };
        elbows.swap(a, b);
    }
}

/// The first two leaders that cross.
fn first_crossing(tips: &[Point], elbows: &[Point]) -> Option<(usize, usize)> {
    let leaders: Vec<(Point, Point)> = tips.iter().copied().zip(elbows.iter().copied()).collect();
    leaders.iter().enumerate().find_map(|(a, first)| {
        let rest = leaders.iter().enumerate().skip(a + 1);
        rest.filter(|(_, second)| cross(*first, **second))
            .map(|(b, _)| (a, b))
            .next()
    })
}

/// True when two straight lines cross between their ends.
fn cross(a: (Point, Point), b: (Point, Point)) -> bool {
    // Twice the area of a triangle, positive counter-clockwise.
    let turn = |p: Point, q: Point, r: Point| (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
    let parts = |line: (Point, Point), other: (Point, Point)| {
        let sides = (turn(line.0, line.1, other.0), turn(line.0, line.1, other.1));
        (sides.0 > 0.0 && sides.1 < 0.0) || (sides.0 < 0.0 && sides.1 > 0.0)
    };
    parts(a, b) && parts(b, a)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::test_random::Random;

    const COLUMN: Column = Column {
        elbow_x_mm: 100.0,
        bottom_mm: 0.0,
        top_mm: 120.0,
        pitch_mm: 7.0,
    };

    #[test]
    fn leaders_never_cross_and_labels_keep_their_pitch() {
        let mut random = Random::seeded(7);
        for _ in 0..2000 {
            let count = 1 + random.below(16);
            let tips: Vec<Point> = (0..count)
                .map(|_| Point {
                    x: random.between(0.0, 95.0),
                    y: random.between(-10.0, 130.0),
                })
                .collect();
            let elbows = elbows(&tips, &COLUMN).unwrap();
            assert_eq!(first_crossing(&tips, &elbows), None);
            let mut heights: Vec<f64> = elbows.iter().map(|elbow| elbow.y).collect();
            heights.sort_by(f64::total_cmp);
            assert!(heights[0] >= -1e-9 && heights[heights.len() - 1] <= 120.0 + 1e-9);
            for pair in heights.windows(2) {
                assert!(pair[1] - pair[0] >= 7.0 - 1e-9);
            }
        }
    }

    #[test]
    fn too_many_notes_are_refused_with_the_numbers() {
        let tips = vec![Point { x: 0.0, y: 0.0 }; 20];
        let refusal = elbows(&tips, &COLUMN).unwrap_err();
        assert!(refusal.to_string().contains("need 133.0 mm"));
    }
}
