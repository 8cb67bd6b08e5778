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
#[path = "nose_depth_tests.rs"]
mod tests;
