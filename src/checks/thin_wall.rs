//! `thin-wall`: the thinnest metal anywhere in the half-section.

use super::context::Context;
use super::finding::{Finding, FindingKey, Place, Remedy, Severity};
use super::judge::at_least;
use crate::document::{LORE, LimitKey, RingKey, Term, Working};
use crate::geometry::{Outline, OutlineBuilder, Point, Wall, thinnest_wall_where};
use crate::mount::Unit;
use crate::ring::{Feature, PinUse, ResolvedRing, outlines};

const KEY: FindingKey = FindingKey::ThinWall;
/// How far a remedy may go, in steps of what a wall square to the axis would need.
const STEPS: [f64; 5] = [1.0, 1.5, 2.0, 3.0, 4.0];
/// What halving leaves open of a thickness, mm.
const ROUNDING_MM: f64 = 1e-7;
/// A wall found by halving touches its pieces as nearly as this, mm.
const AT_THE_PLACE_MM: f64 = 1e-5;

/// Judges the smallest disc in the metal, cut through a lug and between the lugs; behind the thread the wall
/// begins at its major diameter. The lip under a pressed pin has a check of its own.
#[must_use]
pub fn check(cx: &Context) -> Finding {
    let Some(thinnest) = thinnest([&cx.parts.through_lug, &cx.parts.between_lugs], cx.ring) else {
        return Finding::said(KEY, Severity::Ok, "the section has no wall to measure");
    };
    let wall = thinnest.wall;
    let thickness = Term::named(
        "smallest disc in the metal, by search",
        wall.thickness,
        Unit::Mm,
    );
    let bounds = cx.bounds(LimitKey::WallClash, LimitKey::WallCaution);
    let finding = at_least(
        KEY,
        Working::new("thinnest wall", thickness, Unit::Mm, LORE),
        bounds,
    );
    let (one, other) = thinnest.facing();
    let message = format!(
        "{}: {} against {}",
        finding.message,
        one.label(),
        other.label()
    );
    let finding = finding
        .saying(message)
        .at(Place::Span {
            a: (wall.a.x, wall.a.y),
            b: (wall.b.x, wall.b.y),
        })
        .at(Place::Feature(one))
        .at(Place::Feature(other));
    let needs_cure = matches!(finding.severity, Severity::Clash | Severity::Caution);
    if needs_cure {
        finding.cured_by(remedy(cx, &thinnest, bounds.caution))
    } else {
        finding
    }
}

/// The thinnest wall, with every feature that its two ends lie on: a corner belongs to two.
struct Thinnest {
    wall: Wall<Feature>,
    at_a: Vec<Feature>,
    at_b: Vec<Feature>,
}

impl Thinnest {
    fn of(outline: &Outline<Feature>, wall: Wall<Feature>) -> Self {
        let across = wall.b - wall.a;
        Self {
            wall,
            at_a: features_at(outline, wall.a, across),
            at_b: features_at(outline, wall.b, across),
        }
    }

    /// The two features that face each other most squarely.
    fn facing(&self) -> (Feature, Feature) {
        let first = |features: &[Feature], tag| features.first().copied().unwrap_or(tag);
        (
            first(&self.at_a, self.wall.tag_a),
            first(&self.at_b, self.wall.tag_b),
        )
    }
}

/// The features at a place of the outline, those square to `across` first.
fn features_at(outline: &Outline<Feature>, place: Point, across: Point) -> Vec<Feature> {
    let mut found: Vec<(f64, Feature)> = outline
        .pieces()
        .filter(|(segment, _)| segment.nearest(place).distance(place) < AT_THE_PLACE_MM)
        .map(|(segment, feature)| {
            let along = segment
                .tangent_at(segment.share_of(place))
                .unit()
                .unwrap_or_default();
            (along.dot(across).abs(), feature)
        })
        .collect();
    found.sort_by(|one, other| one.0.total_cmp(&other.0));
    found.into_iter().map(|(_, feature)| feature).collect()
}

fn thinnest(cuts: [&Outline<Feature>; 2], ring: &ResolvedRing) -> Option<Thinnest> {
    let judged_here = |one: Feature, two: Feature| ring.pin != PinUse::Pressed || !is_lip(one, two);
    cuts.into_iter()
        .filter_map(|cut| {
            let rooted = to_the_thread_root(cut, ring.thread_major / 2.0);
            let outline = rooted.as_ref().unwrap_or(cut);
            thinnest_wall_where(outline, judged_here).map(|wall| Thinnest::of(outline, wall))
        })
        .min_by(|one, two| one.wall.thickness.total_cmp(&two.wall.thickness))
}

/// Both sides belong to the lip: it ends the chamber on one side and the spigot on the other.
fn is_lip(one: Feature, two: Feature) -> bool {
    let front = |feature| {
        matches!(
            feature,
            Feature::LipFace | Feature::LipBore | Feature::ReliefFloor | Feature::ReliefEnd
        )
    };
    let rear = |feature| {
        matches!(
            feature,
            Feature::NoseFace | Feature::RearBore | Feature::LipBore
        )
    };
    (front(one) && rear(two)) || (front(two) && rear(one))
}

/// The outline with the thread at its major diameter: that deep the grooves of the thread go. `None` where there
/// is no metal between the thread's root and what is behind it: then the plain outline must do.
fn to_the_thread_root(outline: &Outline<Feature>, root_mm: f64) -> Option<Outline<Feature>> {
    let ends: Vec<Point> = outline
        .pieces()
        .filter(|(_, feature)| *feature == Feature::Thread)
        .flat_map(|(segment, _)| [segment.a, segment.b])
        .collect();
    let moved = |point: Point| {
        if ends.contains(&point) {
            Point::new(point.x, point.y.max(root_mm))
        } else {
            point
        }
    };
    let mut pieces: Vec<_> = outline.pieces().collect();
    let (last, feature) = pieces.pop()?;
    let (first, _) = pieces.first()?;
    let start = OutlineBuilder::start(moved(first.a));
    let run = pieces.iter().fold(start, |run, (segment, feature)| {
        run.arc_to(moved(segment.b), segment.bulge, *feature)
    });
    run.close_with(last.bulge, feature).ok()
}

/// The first change beside the wall that cures it, or else the one that helps most; each is tried on the shape.
fn remedy(cx: &Context, thinnest: &Thinnest, wanted: f64) -> Remedy {
    let now = thinnest.wall.thickness;
    let short = wanted - now;
    let mut best: Option<(f64, RingKey, f64)> = None;
    for (key, per_mm) in thinnest
        .at_a
        .iter()
        .chain(&thinnest.at_b)
        .copied()
        .filter_map(thickens)
    {
        for step in STEPS {
            let value = cx.ring.sizes.get(key) + per_mm * short * step;
            let Some(thickness) = thickness_with(cx, key, value) else {
                continue;
            };
            if best.is_none_or(|(known, ..)| thickness > known) {
                best = Some((thickness, key, value));
            }
            if thickness >= wanted - ROUNDING_MM {
                return Remedy::dimension(key, value);
            }
        }
    }
    let (one, other) = thinnest.facing();
    match best {
        Some((thickness, key, value)) if thickness > now => Remedy::dimension(key, value),
        _ => Remedy::words(format!(
            "no single dimension gives {} between {} and {}",
            Unit::Mm.show(wanted),
            one.label(),
            other.label()
        )),
    }
}

/// Thinnest wall with one size changed; `None` where the change is not allowed or leaves no shape.
fn thickness_with(cx: &Context, key: RingKey, value: f64) -> Option<f64> {
    let (least, greatest) = key.range();
    let cuts_the_thread = key == RingKey::ReliefDiameter && value < cx.ring.thread_major;
    if value < least || value > greatest || cuts_the_thread {
        return None;
    }
    let mut ring = cx.ring.clone();
    *ring.sizes.get_mut(key) = value;
    let (through_lug, between_lugs) = outlines(&ring).ok()?;
    thinnest([&through_lug, &between_lugs], &ring).map(|thinnest| thinnest.wall.thickness)
}

/// The dimension that thickens the metal at a feature, and how much it changes for a millimetre square to it.
const fn thickens(feature: Feature) -> Option<(RingKey, f64)> {
    match feature {
        Feature::ReliefFloor | Feature::ReliefStart | Feature::ReliefEnd => {
            Some((RingKey::ReliefDiameter, -2.0))
        }
        Feature::GrooveRoot => Some((RingKey::GrooveRootDiameter, 2.0)),
        Feature::Nose => Some((RingKey::NoseDiameter, 2.0)),
        Feature::PlateFront => Some((RingKey::PlateThickness, 1.0)),
        Feature::LugFront | Feature::LugRear => Some((RingKey::LugThickness, 1.0)),
        Feature::CounterboreSide => Some((RingKey::SeatDiameter, -2.0)),
        Feature::BossSide => Some((RingKey::SeatDiameter, 2.0)),
        Feature::Rim => Some((RingKey::FlangeDiameter, 2.0)),
        Feature::RearBore => Some((RingKey::RearBore, -2.0)),
        Feature::LipBore => Some((RingKey::LipBore, -2.0)),
        Feature::AnnulusSide => Some((RingKey::AnnulusOuter, -2.0)),
        Feature::AnnulusFloor => Some((RingKey::AnnulusDepth, -1.0)),
        Feature::NoseFace => Some((RingKey::SpigotLength, 1.0)),
        Feature::ThreadChamfer => Some((RingKey::ThreadChamfer, -1.0)),
        Feature::Seat
        | Feature::FlangeRearFace
        | Feature::LugTip
        | Feature::LugLeadIn
        | Feature::LipFace
        | Feature::Thread => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::fixture::{Bench, cured, design, with};
    use crate::document::Design;

    fn of(design: &Design) -> Finding {
        check(&Bench::of(design.clone()).cx())
    }

    /// The thinnest of the rule's ring is its lug of 1.3.
    #[test]
    fn the_rule_leaves_no_thin_wall() {
        let finding = of(&design());
        assert_eq!(finding.severity, Severity::Ok, "{}", finding.message);
        assert!(
            (finding.value.unwrap() - 1.3).abs() < 1e-6,
            "{}",
            finding.message
        );
    }

    /// Groove root 49.7 over a relief of 48.2 leaves 0.75.
    #[test]
    fn a_deep_relief_under_the_groove() {
        for (relief, thickness, severity) in [
            (48.2, 0.75, Severity::Caution),
            (48.6, 0.55, Severity::Clash),
        ] {
            let design = with(&[(RingKey::ReliefDiameter, relief)]);
            let finding = of(&design);
            assert_eq!(finding.severity, severity, "{}", finding.message);
            assert!(
                (finding.value.unwrap() - thickness).abs() < 1e-6,
                "{}",
                finding.message
            );
            assert_eq!(of(&cured(&design, &finding)).severity, Severity::Ok);
        }
    }

    /// Groove root 43.4 over M42: 0.7 from the root of the thread, though 1.18 from its crests.
    #[test]
    fn behind_the_thread_the_wall_begins_at_its_major_diameter() {
        let design = with(&[
            (RingKey::GrooveRootDiameter, 43.4),
            (RingKey::LipFaceDepth, 9.0),
        ]);
        let finding = of(&design);
        assert_eq!(finding.severity, Severity::Caution, "{}", finding.message);
        assert!(
            (finding.value.unwrap() - 0.7).abs() < 1e-6,
            "{}",
            finding.message
        );
        assert!(finding.message.contains("thread"), "{}", finding.message);
        assert_eq!(of(&cured(&design, &finding)).severity, Severity::Ok);
    }

    #[test]
    fn a_thin_plate_is_cured_by_a_thicker_one() {
        let design = with(&[(RingKey::PlateThickness, 0.5)]);
        let finding = of(&design);
        assert_eq!(finding.severity, Severity::Clash, "{}", finding.message);
        assert!((finding.value.unwrap() - 0.5).abs() < 1e-6);
        assert_eq!(of(&cured(&design, &finding)).severity, Severity::Ok);
    }

    #[test]
    fn the_lip_is_left_to_its_own_check() {
        let finding = of(&with(&[(RingKey::LipThickness, 0.7)]));
        assert_eq!(finding.severity, Severity::Ok, "{}", finding.message);
    }
}
