//! `nose-depth`: everything behind the flange stays clear of mirror, shutter and whatever else stands there.

use super::aspects::worst_aspect;
use super::context::{Context, NotJudged};
use super::finding::{Finding, FindingKey, Place, Remedy, Severity};
use super::judge::{Bounds, at_least};
use crate::document::{FieldRef, LimitKey, RingKey, Term, Working};
use crate::geometry::{Clearance, Outline, OutlineBuilder, Path, Point, clearance_to_path};
use crate::mount::{Presence, Unit};
use crate::ring::{BodyPart, Feature};

const KEY: FindingKey = FindingKey::NoseDepth;

const SOURCE: &str = "derived: true least distance of two outlines in the half-section";
/// Halvings of a search along the axis: from 100 mm to far under a nanometre.
const HALVINGS: u32 = 48;
/// A lug thinner than this is no remedy, mm; common practice, no source.
const LEAST_LUG: f64 = 0.8;

/// Judges nose and swept rear barrel against the free depth inside the throat, and the lugs against what stands
/// behind the ears.
///
/// # Errors
/// [`NotJudged`] when the free depth is unknown.
pub fn check(cx: &Context) -> Result<Finding, NotJudged> {
    let Some(behind) = &cx.parts.behind_flange else {
        return Err(FieldRef::FreeDepth.into());
    };
    let inside_of = cx
        .design
        .body
        .throat
        .number()
        .unwrap_or(cx.ring.sizes.nose_diameter)
        / 2.0;
    let unknown = || NotJudged(vec![FieldRef::FreeDepth]);
    let in_the_throat = between(behind, 0.0, inside_of).ok_or_else(unknown);
    let mut aspects = match &in_the_throat {
        Ok(behind) => vec![Ok(nose(cx, behind)), barrel(cx, behind)],
        Err(missing) => vec![Err(missing.clone())],
    };
    // Where nobody has measured behind the ears, nothing is known to stand there.
    let lug = between(behind, inside_of, f64::INFINITY).zip(lug_outline(cx));
    aspects.extend(lug.map(|(behind, lug)| Ok(lugs(cx, &lug, &behind))));
    worst_aspect(KEY, aspects)
}

/// The part of the free depth between two radii; `None` where nothing was measured there.
fn between(behind: &Path<BodyPart>, inner: f64, outer: f64) -> Option<Path<BodyPart>> {
    let mut points: Vec<Point> = Vec::new();
    for (piece, _) in behind.pieces() {
        let (a, b) = (piece.a.y, piece.b.y);
        if b < inner || a > outer {
            continue;
        }
        let share = |radius: f64| {
            if b > a {
                ((radius - a) / (b - a)).clamp(0.0, 1.0)
            } else {
                0.0
            }
        };
        let ends = if b > a {
            (share(inner), share(outer))
        } else {
            (0.0, 1.0)
        };
        points.extend([piece.point_at(ends.0), piece.point_at(ends.1)]);
    }
    Path::straight(points, BodyPart::BehindFlange).ok()
}

/// One lug in the half-section.
fn lug_outline(cx: &Context) -> Option<Outline<Feature>> {
    let sizes = &cx.ring.sizes;
    let (front, rear) = (sizes.groove_width, sizes.groove_width + sizes.lug_thickness);
    let (root, tip) = (sizes.nose_diameter / 2.0, sizes.lug_diameter / 2.0);
    OutlineBuilder::start(Point::new(front, root))
        .line_to(Point::new(front, tip), Feature::LugFront)
        .line_to(Point::new(rear - sizes.lug_lead_in, tip), Feature::LugTip)
        .line_to(
            Point::new(rear, tip - sizes.lug_lead_in),
            Feature::LugLeadIn,
        )
        .line_to(Point::new(rear, root), Feature::LugRear)
        .close(Feature::Nose)
        .ok()
}

/// A mirror bounces; what stands still needs less. Nobody has looked: it may be a mirror.
fn bounds(cx: &Context) -> Bounds {
    match cx.design.body.mirror {
        Presence::Present | Presence::Unknown => {
            cx.bounds(LimitKey::MirrorClash, LimitKey::MirrorCaution)
        }
        Presence::Absent => cx.bounds(LimitKey::ClearanceClash, LimitKey::ClearanceCaution),
    }
}

/// Behind the ears stand screws, not a mirror: the gap that the lug thickness leaves there by rule is enough.
fn lug_bounds(cx: &Context) -> Bounds {
    let bounds = cx.bounds(LimitKey::ClearanceClash, LimitKey::ClearanceCaution);
    let gap = cx.limits().lug_behind_gap;
    Bounds {
        clash: bounds.clash.min(gap),
        caution: bounds.caution.min(gap),
        ..bounds
    }
}

fn judged<T: Copy + PartialEq>(
    cx: &Context,
    what: &str,
    outline: &Outline<T>,
    behind: &Path<BodyPart>,
    bounds: Bounds,
) -> Finding {
    let nearest = clearance_to_path(outline, behind);
    let value = if nearest.is_free() {
        nearest.distance
    } else {
        -moved_clear(outline, behind, 0.0)
    };
    let term = Term::named(
        "least distance to what is behind the flange",
        value,
        Unit::Mm,
    );
    let working = Working::new(
        format!("{what} to what is behind it"),
        term,
        Unit::Mm,
        SOURCE,
    )
    .assuming("the free depth was measured over all radii of ring and barrel");
    let mut finding = at_least(KEY, working, bounds).at(span(&nearest));
    if cx.design.body.mirror == Presence::Unknown {
        finding
            .message
            .push_str("; judged as if a mirror moves there: look whether one does");
    }
    finding
}

fn span<A, B>(nearest: &Clearance<A, B>) -> Place {
    Place::Span {
        a: (nearest.a.x, nearest.a.y),
        b: (nearest.b.x, nearest.b.y),
    }
}

/// How far the outline must move toward the lens until it keeps `wanted` from the path, mm.
fn moved_clear<T: Copy + PartialEq>(
    outline: &Outline<T>,
    behind: &Path<BodyPart>,
    wanted: f64,
) -> f64 {
    let is_clear = |by: f64| {
        let nearest = clearance_to_path(&outline.translated(Point::new(-by, 0.0)), behind);
        nearest.is_free() && nearest.distance >= wanted
    };
    let (mut near, mut far) = (
        0.0,
        (outline.bounding_box().max.x - behind.bounding_box().min.x + wanted).max(0.0),
    );
    for _ in 0..HALVINGS {
        let middle = f64::midpoint(near, far);
        if is_clear(middle) {
            far = middle;
        } else {
            near = middle;
        }
    }
    far
}

fn nose(cx: &Context, behind: &Path<BodyPart>) -> Finding {
    let bounds = bounds(cx);
    let outline = &cx.parts.between_lugs;
    let finding = judged(cx, "nose", outline, behind, bounds);
    if finding.margin.is_some_and(|margin| margin >= 0.0) {
        return finding;
    }
    let sizes = &cx.ring.sizes;
    let shorter = sizes.spigot_length - moved_clear(outline, behind, bounds.caution);
    finding.cured_by(if shorter >= sizes.groove_width + sizes.lug_thickness {
        Remedy::dimension(RingKey::SpigotLength, shorter)
    } else {
        Remedy::words(
            "the body leaves too little depth for groove and lugs: measure the free depth again",
        )
    })
}

fn lugs(cx: &Context, lug: &Outline<Feature>, behind: &Path<BodyPart>) -> Finding {
    let bounds = lug_bounds(cx);
    let finding = judged(cx, "lug", lug, behind, bounds);
    if finding.margin.is_some_and(|margin| margin >= 0.0) {
        return finding;
    }
    let thinner = cx.ring.sizes.lug_thickness - moved_clear(lug, behind, bounds.caution);
    finding.cured_by(if thinner >= LEAST_LUG {
        Remedy::dimension(RingKey::LugThickness, thinner)
    } else {
        Remedy::words("the lugs reach too deep behind the ears: measure the free depth there again")
    })
}

/// The lens's own barrel: no ring draws it back.
fn barrel(cx: &Context, behind: &Path<BodyPart>) -> Result<Finding, NotJudged> {
    if cx.design.lens.barrel_at_infinity.value().is_none() {
        return Err(FieldRef::BarrelAtInfinity.into());
    }
    let Some(barrel) = &cx.parts.barrel_swept else {
        return Ok(Finding::said(
            KEY,
            Severity::Ok,
            "the lens has no rear barrel",
        ));
    };
    Ok(judged(cx, "rear barrel", barrel, behind, bounds(cx)).cured_by(Remedy::words(
        "the lens itself reaches too deep: this lens cannot stand on this body at every focus, whatever the ring",
    )))
}

#[cfg(test)]
mod tests {
    use super::*;

    use crate::checks::fixture::{cured, design, judged as said, lacking, with};
    use crate::document::Design;
    use crate::mount::{BarrelStep, FreeDepth, Interface};

    fn with_depth(mut design: Design, depths: &[(f64, f64)]) -> Design {
        let points = depths.iter().map(|(radius_mm, depth_mm)| FreeDepth {
            radius_mm: *radius_mm,
            depth_mm: *depth_mm,
        });
        design.body.free_depth = Interface::measured(points.collect(), "depth micrometer");
        design
    }

    /// A spigot of 8.0 set by hand, before a flat mirror: the distance is plain arithmetic.
    fn nose_before(depth: f64) -> Design {
        with_depth(
            with(&[(RingKey::SpigotLength, 8.0)]),
            &[(0.0, depth), (40.0, depth)],
        )
    }

    #[test]
    fn a_nose_well_before_the_mirror_passes() {
        let finding = said(check, &nose_before(12.0));
        assert_eq!(finding.severity, Severity::Ok, "{}", finding.message);
        let nose = finding
            .working
            .iter()
            .find(|line| line.result.starts_with("nose"))
            .unwrap();
        assert!((nose.term.value() - 4.0).abs() < 1e-9);
    }

    #[test]
    fn near_a_mirror_it_is_a_caution_and_nearer_a_clash() {
        let near = nose_before(8.7);
        let finding = said(check, &near);
        assert_eq!(finding.severity, Severity::Caution, "{}", finding.message);
        assert!((finding.value.unwrap() - 0.7).abs() < 1e-9);
        assert_eq!(said(check, &cured(&near, &finding)).severity, Severity::Ok);
        let through = nose_before(7.75);
        let finding = said(check, &through);
        assert_eq!(finding.severity, Severity::Clash);
        assert!(
            (finding.value.unwrap() + 0.25).abs() < 1e-9,
            "{:?}",
            finding.value
        );
        assert_eq!(
            said(check, &cured(&through, &finding)).severity,
            Severity::Ok
        );
    }

    #[test]
    fn without_a_mirror_less_is_enough() {
        let mut still = nose_before(8.3);
        still.body.mirror = Presence::Absent;
        assert_eq!(said(check, &still).severity, Severity::Ok);
        still.body.mirror = Presence::Unknown;
        let finding = said(check, &still);
        assert_eq!(finding.severity, Severity::Clash);
        assert!(
            finding.message.ends_with("look whether one does"),
            "{}",
            finding.message
        );
    }

    #[test]
    fn a_slanted_mirror_is_cured_by_its_true_distance() {
        // 45 degrees, nearer toward the axis: depth = radius - 8.
        let slanted = with_depth(
            with(&[(RingKey::SpigotLength, 8.0)]),
            &[(15.0, 7.0), (40.0, 32.0)],
        );
        let finding = said(check, &slanted);
        assert_eq!(finding.severity, Severity::Caution, "{}", finding.message);
        // The inner edge of the nose face is nearest: what the depth there leaves, times sin 45.
        let inner = crate::checks::fixture::Bench::of(slanted.clone())
            .cx()
            .ring
            .sizes
            .rear_bore
            / 2.0;
        let expected = (inner - 16.0) / 2.0_f64.sqrt();
        let distance = finding.value.unwrap();
        assert!((distance - expected).abs() < 1e-9, "{distance} {expected}");
        assert_eq!(
            said(check, &cured(&slanted, &finding)).severity,
            Severity::Ok
        );
    }

    #[test]
    fn lugs_are_judged_against_what_stands_behind_the_ears() {
        // Groove 3.35 + lug 1.3 = 4.65; a screw head at 4.8 behind the ears leaves 0.15.
        let depths = [(0.0, 12.0), (25.0, 12.0), (25.001, 4.8), (40.0, 4.8)];
        let screws = with_depth(with(&[(RingKey::LugThickness, 1.3)]), &depths);
        let finding = said(check, &screws);
        assert_eq!(finding.severity, Severity::Caution, "{}", finding.message);
        assert!(
            (finding.value.unwrap() - 0.15).abs() < 1e-6,
            "{:?}",
            finding.value
        );
        assert_eq!(
            said(check, &cured(&screws, &finding)).severity,
            Severity::Ok
        );
    }

    #[test]
    fn a_barrel_that_reaches_the_mirror_has_no_remedy_by_dimension() {
        let mut deep = design();
        // 1.46 of seat height: 13.2 behind the seat is 11.74 behind the flange, the mirror at 12.
        let steps = vec![BarrelStep {
            depth_mm: 13.2,
            diameter_mm: 33.0,
        }];
        deep.lens.barrel_at_infinity = Interface::measured(steps, "depth micrometer");
        deep.ring.dimensions.seat_height.value = crate::document::Choice::Set(1.46);
        let finding = said(check, &deep);
        assert_eq!(finding.severity, Severity::Clash);
        assert!(
            (finding.value.unwrap() - 0.26).abs() < 1e-9,
            "{:?}",
            finding.value
        );
        assert_eq!(finding.remedy.unwrap().change, None);
    }

    #[test]
    fn an_unknown_depth_is_named() {
        let mut unknown = design();
        unknown.body.free_depth = Interface::Unknown;
        assert_eq!(
            lacking(check, &unknown),
            NotJudged(vec![FieldRef::FreeDepth])
        );
    }
}
