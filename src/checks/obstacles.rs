//! `obstacles`: ring and mounted lens miss everything that stands out of the body, from entry to lock.

use super::aspects::worst_aspect;
use super::context::{Context, NotJudged};
use super::finding::{Finding, FindingKey, Place, Remedy, Severity};
use super::judge::at_least;
use super::lug_entry::{turned, twist_of};
use super::lug_flank::{widened, widest_deg};
use super::obstacle_gap::{Box3, gap_to_lug, gap_to_turned};
use crate::document::{FieldRef, LimitKey, RingKey, Term, Working};
use crate::mount::{LensField, Obstacle, Presence, Sector, Unit};
use crate::ring::Twist;

const KEY: FindingKey = FindingKey::Obstacles;

const SOURCE: &str =
    "derived: least distance of turned bodies and annular sectors, over entry and twist";

/// What of ring and lens is nearest to an obstacle.
struct Nearest {
    part: Part,
    gap_mm: f64,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Part {
    Ring,
    Lug,
    Shoulder,
    ApertureRing,
    Barrel,
}

impl Part {
    const fn word(self) -> &'static str {
        match self {
            Self::Ring => "the ring",
            Self::Lug => "the lugs",
            Self::Shoulder => "the lens shoulder",
            Self::ApertureRing => "the aperture ring",
            Self::Barrel => "the rear barrel",
        }
    }
}

/// Judges every obstacle against the ring, its lugs and the mounted lens: dropping in along the axis at the entry
/// angle, and over the whole twist.
///
/// # Errors
/// [`NotJudged`] when nobody has looked for obstacles.
pub fn check(cx: &Context) -> Result<Finding, NotJudged> {
    let obstacles = cx.known(FieldRef::Obstacles, &cx.design.body.obstacles)?;
    if obstacles.is_empty() {
        return Ok(Finding::said(
            KEY,
            Severity::Ok,
            "nothing stands out of the body",
        ));
    }
    let mut aspects: Vec<_> = obstacles
        .iter()
        .map(|obstacle| judge(cx, obstacle))
        .collect();
    let lacking = unknown_of_the_lens(cx);
    if !lacking.is_empty() {
        aspects.push(Err(NotJudged(lacking)));
    }
    worst_aspect(KEY, aspects)
}

/// Parts of the lens that may be there, and whose place nobody knows.
fn unknown_of_the_lens(cx: &Context) -> Vec<FieldRef> {
    let lens = &cx.design.lens;
    let mut keys = vec![LensField::ShoulderDiameter];
    let mut lacking = Vec::new();
    match lens.aperture_ring {
        Presence::Unknown => lacking.push(FieldRef::ApertureRing),
        Presence::Absent => {}
        Presence::Present => {
            keys.extend([
                LensField::ApertureRingInner,
                LensField::ApertureRingOuter,
                LensField::ApertureRingAhead,
            ]);
        }
    }
    lacking.extend(
        keys.into_iter()
            .filter(|key| lens.field(*key).number().is_none())
            .map(FieldRef::Lens),
    );
    lacking
}

fn judge(cx: &Context, obstacle: &Obstacle) -> Result<Finding, NotJudged> {
    let bounds = cx.bounds(LimitKey::ClearanceClash, LimitKey::ClearanceCaution);
    let nearest = nearest_to(cx, obstacle, bounds.caution)?;
    let term = Term::named(
        "least distance over entry and twist",
        nearest.gap_mm,
        Unit::Mm,
    );
    let result = format!("{} to {}", obstacle.name, nearest.part.word());
    let (inner_mm, outer_mm) = (obstacle.inner_radius_mm, obstacle.outer_radius_mm);
    let (a, b) = ((obstacle.from_z_mm, inner_mm), (obstacle.to_z_mm, outer_mm));
    Ok(
        at_least(KEY, Working::new(result, term, Unit::Mm, SOURCE), bounds)
            .at(Place::Plan {
                sector: obstacle.sector,
                inner_mm,
                outer_mm,
            })
            .at(Place::Span { a, b })
            .cured_by(remedy(cx, obstacle, nearest.part, bounds.caution)),
    )
}

fn nearest_to(cx: &Context, obstacle: &Obstacle, enough: f64) -> Result<Nearest, NotJudged> {
    let parts = &cx.parts;
    let mut nearest = Nearest {
        part: Part::Ring,
        gap_mm: gap_to_turned(&parts.between_lugs, obstacle),
    };
    for (part, outline) in [
        (Part::Shoulder, &parts.shoulder),
        (Part::ApertureRing, &parts.aperture_ring),
        (Part::Barrel, &parts.barrel_swept),
    ] {
        take(
            &mut nearest,
            part,
            outline
                .as_ref()
                .map(|outline| gap_to_turned(outline, obstacle)),
        );
    }
    take(
        &mut nearest,
        Part::Lug,
        Some(lug_gap(cx, obstacle, enough)?),
    );
    Ok(nearest)
}

fn take(nearest: &mut Nearest, part: Part, gap_mm: Option<f64>) {
    if let Some(gap_mm) = gap_mm.filter(|gap| *gap < nearest.gap_mm) {
        *nearest = Nearest { part, gap_mm };
    }
}

/// The lugs' place along the axis and in radius.
fn lug_box(cx: &Context) -> Box3 {
    let sizes = &cx.ring.sizes;
    Box3 {
        z: (sizes.groove_width, sizes.groove_width + sizes.lug_thickness),
        r: (sizes.nose_diameter / 2.0, sizes.lug_diameter / 2.0),
        sector: Sector {
            start_deg: 0.0,
            extent_deg: 360.0,
        },
    }
}

/// The least gap to any lug. An obstacle that the whole circle of the lugs misses needs no twist to be judged.
fn lug_gap(cx: &Context, obstacle: &Obstacle, enough: f64) -> Result<f64, NotJudged> {
    let circle = lug_box(cx);
    let fixed = Box3::of(obstacle);
    let at_any_angle = gap_to_lug(circle, fixed.swept_to_the_rear());
    if at_any_angle >= enough {
        return Ok(at_any_angle);
    }
    let twist = twist_of(cx)?;
    let out_deg = widest_deg(cx.ring, radii_met(circle.r, fixed.r));
    let lugs = cx.ring.lugs.iter().map(|lug| widened(*lug, out_deg));
    Ok(lugs
        .map(|lug| gap_on_the_way(circle, lug, twist, fixed))
        .fold(f64::INFINITY, f64::min))
}

/// The radii of the lug that are nearest to the obstacle's radii.
fn radii_met(lug: (f64, f64), obstacle: (f64, f64)) -> (f64, f64) {
    let inner = obstacle.0.clamp(lug.0, lug.1);
    (inner, obstacle.1.clamp(inner, lug.1))
}

/// Dropping in at the entry angle, the lug comes along the axis from the lens side; then it turns at its depth.
/// Both motions are one box each, so no step between is missed.
fn gap_on_the_way(circle: Box3, locked: Sector, twist: Twist, obstacle: Box3) -> f64 {
    let entry = turned(locked, -twist.signed_deg());
    let first = if twist.signed_deg() > 0.0 {
        entry
    } else {
        locked
    };
    let extent_deg = (locked.extent_deg + twist.degrees).min(360.0);
    let dropping = gap_to_lug(
        Box3 {
            sector: entry,
            ..circle
        },
        obstacle.swept_to_the_rear(),
    );
    let turning = gap_to_lug(
        Box3 {
            sector: Sector {
                extent_deg,
                ..first
            },
            ..circle
        },
        obstacle,
    );
    dropping.min(turning)
}

fn remedy(cx: &Context, obstacle: &Obstacle, part: Part, wanted: f64) -> Remedy {
    let name = &obstacle.name;
    match part {
        Part::Shoulder | Part::ApertureRing | Part::Barrel => Remedy::words(format!(
            "{} comes too near {name}: no ring cures that",
            part.word()
        )),
        Part::Lug => Remedy::words(format!(
            "the lugs sweep {name}: measure its place again, or leave out the lug that meets it"
        )),
        Part::Ring if obstacle.from_z_mm >= 0.0 => spigot_remedy(cx, obstacle, wanted),
        Part::Ring => {
            let narrower = 2.0 * (obstacle.inner_radius_mm - wanted);
            if narrower > cx.ring.sizes.groove_root_diameter {
                Remedy::dimension(RingKey::FlangeDiameter, narrower)
            } else {
                Remedy::words(format!(
                    "{name} stands over the flange: measure its place again"
                ))
            }
        }
    }
}

/// The spigot made shorter, or narrower where it must be long.
fn spigot_remedy(cx: &Context, obstacle: &Obstacle, wanted: f64) -> Remedy {
    let sizes = &cx.ring.sizes;
    let shorter = obstacle.from_z_mm - wanted;
    if shorter >= sizes.groove_width + sizes.lug_thickness {
        Remedy::dimension(RingKey::SpigotLength, shorter)
    } else if obstacle.inner_radius_mm > sizes.groove_root_diameter / 2.0 {
        Remedy::dimension(
            RingKey::NoseDiameter,
            2.0 * (obstacle.inner_radius_mm - wanted),
        )
    } else {
        Remedy::words(format!(
            "{} stands in the way of the spigot: measure its place again",
            obstacle.name
        ))
    }
}

#[cfg(test)]
#[path = "obstacles_tests.rs"]
mod tests;
