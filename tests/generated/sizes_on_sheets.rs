//! Every size of the half-section is given once, and no chain of sizes is closed.
//!
//! The lengths are looked at as a graph: a station is a place along the axis where the outline has a corner, a
//! dimension joins two stations. Everything is sized when every station is joined to the others, and no chain is
//! closed when there is no way round.

use flangewright::document::Design;
use flangewright::drawing::dimension::Style;
use flangewright::drawing::number::DecimalMark;
use flangewright::drawing::ring_dimensions::{relief_note, section_dimensions};
use flangewright::drawing::ring_sheet;
use flangewright::evaluate::evaluate;
use flangewright::ring::Feature;
use flangewright::workshop::Workshop;

use crate::pairs::plausible;
use crate::sheet_lines::lettering;

const SEED: u64 = 31;
const SAME: f64 = 1e-6;

/// A place (z, r).
type Corner = (f64, f64);
/// A piece of outline.
type Piece = (Corner, Corner, Feature);

/// One dimension in the lengths of the part.
struct Size {
    from: (f64, f64),
    to: (f64, f64),
    axial: bool,
    auxiliary: bool,
    text: String,
}

fn sizes(design: &Design, workshop: &Workshop) -> Option<(Vec<Size>, Vec<Piece>, Vec<String>)> {
    let evaluation = evaluate(design, workshop);
    let (ring, parts) = (
        evaluation.derivation.ring.as_ref()?,
        evaluation.parts.as_ref()?,
    );
    let style = Style {
        mark: DecimalMark::Point,
        ..Style::default()
    };
    let mut sizes = Vec::new();
    for side in section_dimensions(design, &evaluation, ring, style, 1.0) {
        for one in side.dimensions {
            sizes.push(Size {
                from: (one.from.x, one.from.y),
                to: (one.to.x, one.to.y),
                axial: (one.from.x - one.to.x).abs() > SAME,
                auxiliary: one.label.main.starts_with('('),
                text: one.label.main.clone(),
            });
        }
    }
    // The relief is called out by width and diameter on one leader.
    if let Some(relief) = relief_note(design, &evaluation, ring, style) {
        let ends = [(relief.from, relief.to), (relief.to, relief.to)];
        for (place, (from, to)) in ends.into_iter().enumerate() {
            sizes.push(Size {
                from: (from.x, from.y),
                to: (to.x, to.y),
                axial: place == 0,
                auxiliary: false,
                text: relief.label.main.clone(),
            });
        }
    }
    let ends =
        |piece: flangewright::geometry::Segment| ((piece.a.x, piece.a.y), (piece.b.x, piece.b.y));
    let pieces = parts
        .through_lug
        .pieces()
        .map(|(piece, feature)| (ends(piece).0, ends(piece).1, feature))
        .collect();
    let texts = ring_sheet(design, &evaluation)
        .map(|scene| lettering(&scene))
        .unwrap_or_default();
    Some((
        sizes,
        pieces,
        texts.into_iter().map(|text| text.text).collect(),
    ))
}

fn same(a: f64, b: f64) -> bool {
    (a - b).abs() < SAME
}

/// The corners of an outline that are not fixed by a chamfer note: of a chamfer at 45 degrees one end is dimensioned,
/// the other follows from its size.
fn corners(pieces: &[Piece]) -> Vec<Corner> {
    let deeper = |one: Corner, other: Corner| if one.0 > other.0 { one } else { other };
    let follows: Vec<Corner> = pieces
        .iter()
        .filter_map(|(a, b, feature)| match feature {
            Feature::ThreadChamfer => Some([deeper(*a, *b), *a, *b]),
            Feature::LugLeadIn => Some([if a.0 < b.0 { *a } else { *b }, *a, *b]),
            _ => None,
        })
        .map(|ends| ends[0])
        .collect();
    let mut corners: Vec<Corner> = Vec::new();
    for (a, b, _) in pieces {
        for corner in [a, b] {
            let known = |other: &Corner| same(other.0, corner.0) && same(other.1, corner.1);
            if !corners.iter().any(known) {
                corners.push(*corner);
            }
        }
    }
    corners.retain(|corner| {
        !follows
            .iter()
            .any(|other| same(other.0, corner.0) && same(other.1, corner.1))
    });
    corners
}

#[test]
fn every_length_once_and_no_closed_chain() {
    let workshop = Workshop::default_set().unwrap();
    let mut looked_at = 0;
    for index in 0..320 {
        let Some((sizes, pieces, texts)) = sizes(&plausible(SEED, index), &workshop) else {
            continue;
        };
        looked_at += 1;
        let mut stations: Vec<f64> = Vec::new();
        for (z, _) in corners(&pieces) {
            if !stations.iter().any(|known| same(*known, z)) {
                stations.push(z);
            }
        }
        let mut group: Vec<usize> = (0..stations.len()).collect();
        for size in sizes.iter().filter(|size| size.axial && !size.auxiliary) {
            let find = |x: f64| stations.iter().position(|station| same(*station, x));
            let (Some(a), Some(b)) = (find(size.from.0), find(size.to.0)) else {
                panic!(
                    "{index}: {} is not between corners of the outline: {:?} {:?} {stations:?}",
                    size.text, size.from, size.to
                )
            };
            assert_ne!(group[a], group[b], "{index}: {} closes a chain", size.text);
            let (old, new) = (group[b], group[a]);
            for one in group.iter_mut().filter(|one| **one == old) {
                *one = new;
            }
        }
        let first = group[0];
        let loose: Vec<f64> = stations
            .iter()
            .zip(&group)
            .filter(|(_, one)| **one != first)
            .map(|(at, _)| *at)
            .collect();
        assert!(
            loose.is_empty(),
            "{index}: no size leads to {loose:?} of {stations:?}"
        );
        for size in &sizes {
            assert!(
                texts
                    .iter()
                    .any(|text| text == &size.text || text.replace(',', ".") == size.text),
                "{index}: {} is not on the sheet {texts:?}",
                size.text
            );
        }
    }
    assert!(looked_at >= 300, "{looked_at}");
}

#[test]
fn every_diameter_once() {
    let workshop = Workshop::default_set().unwrap();
    for index in 0..320 {
        let design = plausible(SEED, index);
        let Some((sizes, pieces, _)) = sizes(&design, &workshop) else {
            continue;
        };
        let ring = evaluate(&design, &workshop).derivation.ring.unwrap();
        let mouth = ring.thread_minor / 2.0 + ring.sizes.thread_chamfer;
        let tip_less_lead_in = ring.sizes.lug_diameter / 2.0 - ring.sizes.lug_lead_in;
        let mut radii: Vec<f64> = Vec::new();
        for (a, b, _) in &pieces {
            // Both ends of a chamfer follow from its size and the faces beside it, which list their own ends.
            for (z, r) in [a, b] {
                let at_mouth = same(*z, -ring.sizes.seat_height) && same(*r, mouth);
                let at_lead_in = same(*z, ring.sizes.groove_width + ring.sizes.lug_thickness)
                    && same(*r, tip_less_lead_in);
                let by_chamfer = at_mouth || at_lead_in;
                // The thread is named, not measured at its minor diameter.
                let radius = if same(*r, ring.thread_minor / 2.0) {
                    ring.thread_major / 2.0
                } else {
                    *r
                };
                if !by_chamfer && !radii.iter().any(|known| same(*known, radius)) {
                    radii.push(radius);
                }
            }
        }
        for radius in &radii {
            let given: Vec<&str> = sizes
                .iter()
                .filter(|size| !size.axial && same(size.to.1, *radius))
                .map(|size| size.text.as_str())
                .collect();
            assert_eq!(
                given.len(),
                1,
                "{index}: diameter {} is given by {given:?}",
                2.0 * radius
            );
        }
        let upright = sizes.iter().filter(|size| !size.axial).count();
        let given: Vec<String> = sizes
            .iter()
            .filter(|size| !size.axial)
            .map(|size| format!("{} at {:?}", size.text, size.to))
            .collect();
        assert_eq!(upright, radii.len(), "{index}: {given:?} for {radii:?}");
    }
}
