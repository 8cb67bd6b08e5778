//! The turned cuts of a ring, and the lathe tool for each: groove, bores, relief and thread.

use super::context::Context;
use super::finding::{Place, Remedy};
use super::tool_access::{Job, Need, judged, no_tool, score};
use crate::mount::Unit;
use crate::ring::Feature;
use crate::workshop::{ToolDuty, TurningTool};

/// Overhang beyond the limit by this share is only a caution: a stiffer bar of tungsten or carbide does it.
const STIFFER_BAR: f64 = 0.5;

/// Every turned cut, in the order in which they are made.
pub(super) fn all(cx: &Context) -> Vec<Job> {
    let mut jobs = vec![groove(cx), bores(cx)];
    if !cx.ring.thread_runs_through && cx.ring.sizes.relief_width > 0.0 {
        jobs.push(relief(cx));
    }
    jobs.push(thread(cx));
    jobs
}

/// The best tool for a cut: the one with most to spare in its tightest need.
fn best(
    cx: &Context,
    cut: &str,
    kind: &str,
    duty: ToolDuty,
    feature: Feature,
    needs: impl Fn(&TurningTool) -> Vec<Need>,
) -> Job {
    let candidates = cx
        .workshop
        .turning_tools
        .iter()
        .filter(|tool| tool.duty() == duty);
    let chosen = candidates
        .map(|tool| (tool, needs(tool)))
        .max_by(|a, b| score(&a.1).total_cmp(&score(&b.1)));
    let Some((tool, needs)) = chosen else {
        return no_tool(cut, kind, feature);
    };
    let mut job = judged(cx, cut, &tool.name, &needs);
    let wants: Vec<String> = needs
        .iter()
        .map(|need| format!("{} {}", need.what, Unit::Mm.show(need.wants)))
        .collect();
    job.finding = job
        .finding
        .at(Place::Feature(feature))
        .cured_by(Remedy::words(format!(
            "grind or buy {kind} for it; this one would have to reckon with {}",
            wants.join(", ")
        )));
    job
}

/// From outside, between flange and lugs, before the gaps are milled: the blade reaches the root past the lugs, and
/// past the flange too unless it stands flush on that side of its holder.
fn groove(cx: &Context) -> Job {
    let sizes = &cx.ring.sizes;
    let depth = |outer: f64| ((outer - sizes.groove_root_diameter) / 2.0).max(0.0);
    let past_lugs = depth(sizes.lug_diameter);
    let past_flange = depth(sizes.flange_diameter).max(past_lugs);
    best(
        cx,
        "groove",
        "a groove tool",
        ToolDuty::OutsideGroove,
        Feature::GrooveRoot,
        |tool| {
            vec![
                Need::of("width in the groove", sizes.groove_width, tool.width_mm),
                Need::of("reach past lugs and flange", tool.reach_mm, past_flange)
                    .or_less_by(past_flange - past_lugs),
            ]
        },
    )
}

/// The bar goes through the narrowest bore and as deep as the longer side of it, each side in its own setting.
fn bores(cx: &Context) -> Job {
    let sizes = &cx.ring.sizes;
    let whole = sizes.seat_height + sizes.spigot_length;
    let (bore, depth) = if cx.ring.thread_runs_through {
        (cx.ring.thread_minor, whole)
    } else {
        (
            sizes.lip_bore,
            sizes.lip_face_depth.max(whole - sizes.lip_face_depth),
        )
    };
    best(
        cx,
        "bores",
        "a boring bar",
        ToolDuty::Boring,
        Feature::LipBore,
        |tool| {
            vec![
                Need::of("width of the bore", bore, tool.least_bore_mm),
                overhang(cx, tool, depth),
            ]
        },
    )
}

/// In through the bore of the thread, out behind it.
fn relief(cx: &Context) -> Job {
    let sizes = &cx.ring.sizes;
    let deep = ((sizes.relief_diameter - cx.ring.thread_minor) / 2.0).max(0.0);
    best(
        cx,
        "relief",
        "an inside groove tool",
        ToolDuty::InsideGroove,
        Feature::ReliefFloor,
        |tool| {
            vec![
                Need::of("width in the relief", sizes.relief_width, tool.width_mm),
                Need::of("reach out of the bore", tool.reach_mm, deep),
                Need::of(
                    "width of the bore",
                    cx.ring.thread_minor,
                    tool.least_bore_mm,
                ),
                overhang(cx, tool, sizes.thread_length + sizes.relief_width),
            ]
        },
    )
}

/// In through its own bore; the width of the tool in the relief is the relief's own check.
fn thread(cx: &Context) -> Job {
    let sizes = &cx.ring.sizes;
    let deep = (cx.ring.thread_major - cx.ring.thread_minor) / 2.0;
    best(
        cx,
        "thread",
        "an inside threading tool",
        ToolDuty::InsideThread,
        Feature::Thread,
        |tool| {
            vec![
                Need::of("reach out of the bore", tool.reach_mm, deep),
                Need::of(
                    "width of the bore",
                    cx.ring.thread_minor,
                    tool.least_bore_mm,
                ),
                overhang(cx, tool, sizes.thread_length + sizes.relief_width),
            ]
        },
    )
}

fn overhang(cx: &Context, tool: &TurningTool, depth: f64) -> Need {
    let reach = cx.limits().bar_overhang * tool.bar_diameter_mm();
    Need::of("overhang of the bar", reach, depth).or_less_by(depth.max(0.0) * STIFFER_BAR)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::Severity;
    use crate::checks::finding::Finding;
    use crate::checks::fixture::{Bench, design, with, workshop};
    use crate::checks::tool_access::check;
    use crate::document::{Design, RingKey};
    use crate::workshop::Workshop;

    /// M42x1-6H: middle of 40.917 and 41.153 (ISO 965-1).
    const MINOR: f64 = 41.035;

    fn in_shop(design: Design, change: impl Fn(&mut TurningTool)) -> Finding {
        let mut shop: Workshop = workshop();
        shop.turning_tools.iter_mut().for_each(change);
        check(&Bench::in_shop(design, shop).cx()).unwrap()
    }

    #[test]
    fn a_groove_narrower_than_every_blade_cannot_be_cut() {
        for (width, severity) in [
            (3.4, Severity::Clash),
            (3.3, Severity::Caution),
            (3.2, Severity::Ok),
        ] {
            let finding = in_shop(design(), |tool| {
                if tool.duty() == ToolDuty::OutsideGroove {
                    tool.width_mm = width;
                    tool.reach_mm = 14.0;
                }
            });
            assert_eq!(finding.severity, severity, "{width}: {}", finding.message);
        }
    }

    /// Flange 64 over a root of 49.7: 7.15 deep; lugs of 53.7: 2.0.
    #[test]
    fn a_short_blade_must_stand_flush_on_the_flange_side() {
        for (reach, severity) in [
            (1.9, Severity::Clash),
            (4.0, Severity::Caution),
            (8.0, Severity::Ok),
        ] {
            let finding = in_shop(design(), |tool| {
                if tool.duty() == ToolDuty::OutsideGroove {
                    tool.reach_mm = reach;
                }
            });
            assert_eq!(finding.severity, severity, "{reach}: {}", finding.message);
        }
    }

    #[test]
    fn a_bar_too_thick_for_the_bore_does_not_enter() {
        for (least, severity) in [
            (45.0, Severity::Clash),
            (MINOR - 0.05, Severity::Caution),
            (14.0, Severity::Ok),
        ] {
            let finding = in_shop(design(), |tool| {
                if tool.duty() == ToolDuty::InsideThread {
                    tool.least_bore_mm = least;
                }
            });
            assert_eq!(finding.severity, severity, "{least}: {}", finding.message);
        }
    }

    #[test]
    fn a_relief_narrower_than_every_tool_is_told() {
        let finding = in_shop(with(&[(RingKey::ReliefWidth, 0.8)]), |_| {});
        assert_eq!(finding.severity, Severity::Clash, "{}", finding.message);
        assert!(
            finding
                .message
                .contains("short by 0.20 mm in width in the relief"),
            "{}",
            finding.message
        );
    }

    #[test]
    fn a_shop_without_a_boring_bar_says_so() {
        let mut shop = workshop();
        shop.turning_tools
            .retain(|tool| tool.duty() != ToolDuty::Boring);
        let finding = check(&Bench::in_shop(design(), shop).cx()).unwrap();
        assert_eq!(finding.severity, Severity::Clash);
        assert!(
            finding.message.contains("no a boring bar") || finding.message.contains("boring bar")
        );
    }
}
