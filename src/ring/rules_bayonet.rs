//! Rules for spigot, groove and lugs, but for the lug angles.

use crate::document::{LimitKey, RingKey, Term};
use crate::mount::{BodyField, Presence, Unit};

use super::rules::{Rules, Worked, both};

/// Lead-in chamfer of the lugs, mm at 45 degrees.
const LEAD_IN: f64 = 0.3;
/// The lead-in never takes more than this share of the lug.
const LEAD_IN_SHARE: f64 = 0.25;

pub(super) fn work(rules: &mut Rules) {
    for key in [RingKey::GrooveRootDiameter, RingKey::NoseDiameter] {
        let root = rules
            .body(BodyField::Throat)
            .map(|throat| throat - 2.0 * rules.limit(LimitKey::SpigotClearance));
        rules.settle(key, root);
    }
    let tip = rules
        .body(BodyField::SlotDiameter)
        .map(|slot| slot - 2.0 * rules.limit(LimitKey::LugClearance));
    rules.settle(RingKey::LugDiameter, tip);
    let groove = groove_width(rules);
    rules.settle(RingKey::GrooveWidth, groove);
    let thickness = lug_thickness(rules);
    rules.settle(RingKey::LugThickness, thickness);
    let lead_in = rules
        .size(RingKey::LugThickness)
        .map(|thickness| Term::from(LEAD_IN).min(LEAD_IN_SHARE * thickness));
    rules.settle(RingKey::LugLeadIn, lead_in);
}

/// Springs take up a wider groove; without them, or while nobody has looked, play would go into focus.
fn groove_width(rules: &Rules) -> Worked {
    let (front, ear) = both(
        rules.body(BodyField::EarFrontDepth),
        rules.body(BodyField::EarThickness),
    )?;
    let play = match rules.design.body.springs {
        Presence::Present => rules.limit(LimitKey::GroovePlaySprung),
        Presence::Absent | Presence::Unknown => rules.limit(LimitKey::PlayCaution),
    };
    Ok(front + ear + play)
}

fn lug_thickness(rules: &Rules) -> Worked {
    let wanted = rules.limit(LimitKey::LugThickness);
    let lug_tip = rules.size(RingKey::LugDiameter);
    let (Some(free), Ok(tip)) = (rules.design.body.free_depth.value(), lug_tip) else {
        return Ok(wanted);
    };
    let groove = rules.size(RingKey::GrooveWidth)?;
    let root = rules.size(RingKey::GrooveRootDiameter)?;
    let Some(depth) = least_depth(free, root.value() / 2.0, tip.value() / 2.0) else {
        return Ok(wanted);
    };
    let behind = Term::named("least free depth at the lugs", depth, Unit::Mm);
    Ok(wanted.min(behind - groove - rules.limit(LimitKey::LugBehindGap)))
}

/// The least free depth between two radii, mm; the depth runs straight between the measured radii.
/// `None` where nothing was measured there.
pub(super) fn least_depth(points: &[crate::mount::FreeDepth], from: f64, to: f64) -> Option<f64> {
    let mut sorted: Vec<_> = points
        .iter()
        .map(|point| (point.radius_mm, point.depth_mm))
        .collect();
    sorted.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut least: Option<f64> = None;
    let mut take = |depth: f64| least = Some(least.map_or(depth, |known: f64| known.min(depth)));
    for (radius, depth) in &sorted {
        if *radius >= from && *radius <= to {
            take(*depth);
        }
    }
    for pair in sorted.windows(2) {
        let [(r0, d0), (r1, d1)] = pair else { continue };
        for radius in [from, to] {
            if radius > *r0 && radius < *r1 {
                take(d0 + (d1 - d0) * (radius - r0) / (r1 - r0));
            }
        }
    }
    least
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::mount::FreeDepth;

    #[test]
    fn least_depth_reads_between_the_points() {
        let points = [
            FreeDepth {
                radius_mm: 10.0,
                depth_mm: 20.0,
            },
            FreeDepth {
                radius_mm: 20.0,
                depth_mm: 10.0,
            },
        ];
        assert_eq!(least_depth(&points, 12.0, 14.0), Some(16.0));
        assert_eq!(least_depth(&points, 15.0, 25.0), Some(10.0));
        assert_eq!(least_depth(&points, 25.0, 30.0), None);
        assert_eq!(least_depth(&[], 0.0, 30.0), None);
    }
}
