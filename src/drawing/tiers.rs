//! Dimension lines of one side of a view put into tiers so that nothing overlaps.
//!
//! The shortest dimension lies nearest to the part and what is nested lies inside (ISO 129-1 practice).
//! Each dimension takes the first tier, and in it the first place for its lettering, that
//! - lies clear of every extension line that runs past it to a tier farther out, and
//! - lies clear of everything already in that tier (interval colouring).
//!
//! Lettering may always go to a tail past the end of the part, where no extension line can be: so there
//! is a place for every dimension.

use crate::drawing::dimension::{
    EXTENSION_OVERSHOOT_MM, FIRST_LINE_MM, LINE_PITCH_MM, Reach, Style,
};

/// A dimension wanted on a side; all lengths along the side, mm on paper.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Request {
    /// Its number, given back with its place.
    pub id: u32,
    /// Lower end of the span, mm.
    pub low_mm: f64,
    /// Upper end of the span, mm.
    pub high_mm: f64,
    /// Whether the low end lies on the part, with arrow and extension line.
    pub on_part_low: bool,
    /// Whether the high end does.
    pub on_part_high: bool,
    /// Width of the lettering, mm.
    pub text_mm: f64,
    /// Height of the lettering over its dimension line, mm.
    pub rise_mm: f64,
}

/// What the side is like.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Side {
    /// Lower end of the view along the side, mm.
    pub part_low_mm: f64,
    /// Upper end, mm.
    pub part_high_mm: f64,
    /// Whether lettering, above its line as it reads, lies away from the part: above and left of a
    /// view it does, below and right of one it lies toward the part.
    pub text_outward: bool,
}

/// Where a dimension goes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Placed {
    /// Number of the request.
    pub id: u32,
    /// Tier, 0 nearest to the part.
    pub tier: usize,
    /// Distance of the dimension line from the outline, mm.
    pub offset_mm: f64,
    /// Middle of the lettering along the side, mm.
    pub text_centre_mm: f64,
}

/// Least distance of lettering from an extension line that passes it, mm (common practice, no source).
pub const TEXT_CLEARANCE_MM: f64 = 1.0;

/// Least distance between two dimensions in one tier that are not a chain, mm (common practice, no source).
const SIDE_CLEARANCE_MM: f64 = 2.0;

/// What rounding may take off a clearance that was meant to be kept exactly, mm.
const ROUNDING_MM: f64 = 1e-9;

/// Ends nearer than this are the same end, mm on paper.
const SAME_END_MM: f64 = 1e-6;

/// Places for all the dimensions of a side, in the order of the requests.
#[must_use]
pub fn place(requests: &[Request], side: &Side, style: &Style) -> Vec<Placed> {
    let mut tiers: Vec<Vec<Seat>> = Vec::new();
    let mut waiting = in_nested_order(requests, side);
    waiting.reverse();
    while let Some(next) = waiting.pop() {
        let mut tier = lowest_tier(next, &tiers);
        let seat = loop {
            if tier == tiers.len() {
                tiers.push(Vec::new());
            }
            let lines: Vec<f64> = waiting
                .iter()
                .copied()
                .chain(
                    tiers
                        .iter()
                        .skip(tier + 1)
                        .flatten()
                        .map(|seat| &seat.request),
                )
                .flat_map(extension_ends)
                .collect();
            let taken = tiers.get(tier).map_or(&[][..], Vec::as_slice);
            if let Some(seat) = seat_in(next, &lines, taken, side, style) {
                break seat;
            }
            tier += 1;
        };
        if let Some(row) = tiers.get_mut(tier) {
            row.push(seat);
        }
    }
    in_request_order(requests, &tiers, &offsets_mm(&tiers, side))
}

/// A dimension that has its lettering.
#[derive(Clone, Copy)]
struct Seat {
    request: Request,
    text_centre_mm: f64,
    /// Start and end of its line, tails and lettering included.
    line_mm: (f64, f64),
}

impl Request {
    fn span_mm(&self) -> f64 {
        self.high_mm - self.low_mm
    }

    fn centre_mm(&self) -> f64 {
        self.low_mm.midpoint(self.high_mm)
    }

    /// Its extent along the side with the lettering at a place.
    #[must_use]
    pub fn reach(&self, text_centre_mm: f64) -> Reach {
        Reach {
            low_mm: self.low_mm,
            high_mm: self.high_mm,
            text_low_mm: text_centre_mm - self.text_mm / 2.0,
            text_high_mm: text_centre_mm + self.text_mm / 2.0,
            arrow_low: self.on_part_low,
            arrow_high: self.on_part_high,
        }
    }

    fn contains(&self, other: &Self) -> bool {
        other.low_mm >= self.low_mm - SAME_END_MM && other.high_mm <= self.high_mm + SAME_END_MM
    }
}

/// Where the extension lines of a dimension stand.
fn extension_ends(request: &Request) -> impl Iterator<Item = f64> + use<> {
    [
        (request.on_part_low, request.low_mm),
        (request.on_part_high, request.high_mm),
    ]
    .into_iter()
    .filter_map(|(on_part, end)| on_part.then_some(end))
}

/// Shortest first; equal ones from the middle of the part outward, then by number. The order is
/// the same for the mirrored part.
fn in_nested_order<'a>(requests: &'a [Request], side: &Side) -> Vec<&'a Request> {
    let middle = side.part_low_mm.midpoint(side.part_high_mm);
    let mut order: Vec<&Request> = requests.iter().collect();
    order.sort_by(|a, b| {
        let off_middle = |request: &Request| (request.centre_mm() - middle).abs();
        a.span_mm()
            .total_cmp(&b.span_mm())
            .then(off_middle(a).total_cmp(&off_middle(b)))
            .then(a.id.cmp(&b.id))
    });
    order
}

/// The tier outside everything nested in a dimension.
fn lowest_tier(request: &Request, tiers: &[Vec<Seat>]) -> usize {
    tiers
        .iter()
        .rposition(|row| row.iter().any(|seat| request.contains(&seat.request)))
        .map_or(0, |tier| tier + 1)
}

/// The first place for the lettering that is free in a tier.
fn seat_in(
    request: &Request,
    lines: &[f64],
    taken: &[Seat],
    side: &Side,
    style: &Style,
) -> Option<Seat> {
    text_places(request, lines, side, style)
        .into_iter()
        .find_map(|text_centre_mm| {
            let reach = request.reach(text_centre_mm);
            let is_clear = lines.iter().all(|&line| {
                line <= reach.text_low_mm - TEXT_CLEARANCE_MM + ROUNDING_MM
                    || line >= reach.text_high_mm + TEXT_CLEARANCE_MM - ROUNDING_MM
            });
            let seat = Seat {
                request: *request,
                text_centre_mm,
                line_mm: reach.line_mm(style),
            };
            (is_clear && taken.iter().all(|other| is_apart(&seat, other))).then_some(seat)
        })
}

/// True when two dimensions of a tier keep their distance, or meet as a chain at a common end.
fn is_apart(a: &Seat, b: &Seat) -> bool {
    let follows = |low: &Seat, high: &Seat| {
        let gap = high.line_mm.0 - low.line_mm.1;
        let is_chain = (low.line_mm.1 - low.request.high_mm).abs() < SAME_END_MM
            && (high.line_mm.0 - high.request.low_mm).abs() < SAME_END_MM
            && gap.abs() < SAME_END_MM;
        is_chain || gap >= SIDE_CLEARANCE_MM - ROUNDING_MM
    };
    follows(a, b) || follows(b, a)
}

/// Middles of the places where lettering could go, best first.
fn text_places(request: &Request, lines: &[f64], side: &Side, style: &Style) -> Vec<f64> {
    let text = request.text_mm;
    let (low, high) = inside_mm(request, style);
    let mut places = Vec::new();
    if text <= high - low {
        // The middle of the span, moved off an arrowhead that only one end has.
        let middle = request.centre_mm();
        places.push(middle.min(high - text / 2.0).max(low + text / 2.0));
        places.extend(gap_places(request, lines, (low, high)));
    }
    let part_middle = side.part_low_mm.midpoint(side.part_high_mm);
    let beside_high = Reach::centre_beside_high(request.high_mm, text, style);
    let beside_low = -Reach::centre_beside_high(-request.low_mm, text, style);
    let past_all = lines
        .iter()
        .copied()
        .chain([side.part_low_mm, side.part_high_mm]);
    let (first, last) = past_all.fold((f64::INFINITY, f64::NEG_INFINITY), |(least, most), line| {
        (least.min(line), most.max(line))
    });
    let past_high = beside_high.max(last + TEXT_CLEARANCE_MM + text / 2.0);
    let past_low = beside_low.min(first - TEXT_CLEARANCE_MM - text / 2.0);
    if request.centre_mm() >= part_middle {
        places.extend([beside_high, beside_low, past_high, past_low]);
    } else {
        places.extend([beside_low, beside_high, past_low, past_high]);
    }
    places
}

/// The stretch of the span that arrowheads leave free for lettering.
fn inside_mm(request: &Request, style: &Style) -> (f64, f64) {
    let both = request.on_part_low && request.on_part_high;
    let head = |has_arrow: bool| match (has_arrow, both) {
        (true, true) => style.end_room_mm(request.span_mm()),
        (true, false) => style.arrow_mm(),
        (false, _) => 0.0,
    };
    (
        request.low_mm + head(request.on_part_low),
        request.high_mm - head(request.on_part_high),
    )
}

/// Middles of the gaps between passing extension lines that are wide enough, nearest to the middle first.
fn gap_places(request: &Request, lines: &[f64], inside: (f64, f64)) -> Vec<f64> {
    let mut bounds: Vec<f64> = lines
        .iter()
        .copied()
        .filter(|&line| line > inside.0 && line < inside.1)
        .collect();
    bounds.sort_by(f64::total_cmp);
    // The ends of the free stretch need no clearance of their own: arrowheads already keep it.
    bounds.insert(0, inside.0 - TEXT_CLEARANCE_MM);
    bounds.push(inside.1 + TEXT_CLEARANCE_MM);
    let needed = 2.0_f64.mul_add(TEXT_CLEARANCE_MM, request.text_mm);
    let mut places: Vec<f64> = bounds
        .iter()
        .zip(bounds.iter().skip(1))
        .filter(|(low, high)| *high - *low >= needed)
        .map(|(low, high)| low.midpoint(*high))
        .collect();
    let off_centre = |place: &f64| (place - request.centre_mm()).abs();
    places.sort_by(|a, b| off_centre(a).total_cmp(&off_centre(b)));
    places
}

/// Distance of each tier from the outline, mm: the usual ones, or more where stacked lettering needs it.
fn offsets_mm(tiers: &[Vec<Seat>], side: &Side) -> Vec<f64> {
    let rise = |row: &[Seat]| {
        row.iter()
            .map(|seat| seat.request.rise_mm)
            .fold(0.0, f64::max)
    };
    let text = TEXT_CLEARANCE_MM;
    let mut offsets = Vec::with_capacity(tiers.len());
    let mut last: Option<(f64, f64)> = None;
    for row in tiers {
        let own_rise = rise(row);
        let offset = match (last, side.text_outward) {
            (None, true) => FIRST_LINE_MM,
            (None, false) => FIRST_LINE_MM.max(own_rise + text),
            (Some((inner, inner_rise)), true) => inner + LINE_PITCH_MM.max(inner_rise + text),
            // The extension lines of the tier inside stick out towards this lettering.
            (Some((inner, _)), false) => {
                inner + LINE_PITCH_MM.max(own_rise + text + EXTENSION_OVERSHOOT_MM)
            }
        };
        offsets.push(offset);
        last = Some((offset, own_rise));
    }
    offsets
}

fn in_request_order(requests: &[Request], tiers: &[Vec<Seat>], offsets: &[f64]) -> Vec<Placed> {
    let placed: Vec<Placed> = tiers
        .iter()
        .zip(offsets)
        .enumerate()
        .flat_map(|(tier, (row, &offset_mm))| {
            row.iter().map(move |seat| Placed {
                id: seat.request.id,
                tier,
                offset_mm,
                text_centre_mm: seat.text_centre_mm,
            })
        })
        .collect();
    requests
        .iter()
        .filter_map(|request| placed.iter().find(|place| place.id == request.id).copied())
        .collect()
}

#[cfg(test)]
#[path = "tiers_tests.rs"]
mod tests;
