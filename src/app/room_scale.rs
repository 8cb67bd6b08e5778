//! Which stretch of a dimension its bar shows: the span round the present value, and a little of what lies beyond.

use crate::mount::Unit;
use crate::settle::{Room, Span};

/// Farther than this from the present value a bar shows nothing, mm.
const REACH_MM: f64 = 3.0;
/// The same for angles, degrees.
const REACH_DEG: f64 = 30.0;
/// What is shown beyond the ends, as a share of the rest.
const BEYOND: f64 = 0.18;
/// A bar shows so much at least, mm or degrees.
const LEAST: f64 = 0.2;

/// A stretch of a dimension along a bar.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scale {
    /// Value at the left end.
    pub from: f64,
    /// Value at the right end.
    pub to: f64,
}

impl Scale {
    /// The stretch for a room, where `present` is the value in force now.
    #[must_use]
    pub fn of(room: &Room, present: f64) -> Self {
        let (mut from, mut to) = match nearest(&room.without_clash, present) {
            Some(span) => shown(span, present, reach(room.key.unit())),
            None => (present, present),
        };
        let beyond = (BEYOND * (to - from)).max(LEAST / 2.0);
        from -= beyond;
        to += beyond;
        Self { from, to }
    }

    /// Where a value stands, 0 at the left end, 1 at the right one; beyond them outside of that.
    #[must_use]
    pub fn share(self, value: f64) -> f64 {
        (value - self.from) / (self.to - self.from)
    }

    /// The length of the stretch.
    #[must_use]
    pub fn length(self) -> f64 {
        self.to - self.from
    }
}

fn reach(unit: Unit) -> f64 {
    if unit == Unit::Deg {
        REACH_DEG
    } else {
        REACH_MM
    }
}

/// The span that holds a value, else the one nearest to it.
fn nearest(spans: &[Span], value: f64) -> Option<&Span> {
    let off = |span: &Span| (span.from - value).max(value - span.to).max(0.0);
    spans.iter().min_by(|a, b| off(a).total_cmp(&off(b)))
}

/// As much of a span as lies within reach of the present value, or of its own near end; and the present value.
fn shown(span: &Span, present: f64, reach: f64) -> (f64, f64) {
    let near = present.clamp(span.from, span.to);
    let (from, to) = (span.from.max(near - reach), span.to.min(near + reach));
    (from.min(present), to.max(present))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::RingKey;
    use crate::settle::End;

    fn room(spans: &[(f64, f64)]) -> Room {
        let span = |(from, to): &(f64, f64)| Span {
            from: *from,
            to: *to,
            below: End::Range,
            above: End::Range,
        };
        Room {
            key: RingKey::LipThickness,
            present: None,
            without_clash: spans.iter().map(span).collect(),
            without_caution: Vec::new(),
            evaluations: 0,
        }
    }

    #[test]
    fn both_ends_of_a_small_room_are_shown_with_something_beyond() {
        let scale = Scale::of(&room(&[(0.8, 1.8)]), 1.0);
        assert!((scale.from - 0.62).abs() < 1e-9 && (scale.to - 1.98).abs() < 1e-9);
        assert!((scale.share(1.3) - 0.5).abs() < 1e-9);
    }

    #[test]
    fn a_room_without_end_is_shown_as_far_as_one_would_go() {
        let scale = Scale::of(&room(&[(0.8, 200.0)]), 1.0);
        assert!(scale.to < 5.0, "{scale:?}");
    }

    #[test]
    fn a_value_outside_shows_the_way_to_the_nearest_room() {
        let scale = Scale::of(&room(&[(0.8, 1.8), (30.0, 31.0)]), 0.5);
        assert!(scale.from < 0.5 && scale.to > 1.8 && scale.to < 3.0);
    }

    #[test]
    fn no_room_at_all_is_shown_round_the_present_value() {
        let scale = Scale::of(&room(&[]), 2.0);
        assert!(scale.from < 2.0 && scale.to > 2.0 && scale.length() >= LEAST);
    }
}
