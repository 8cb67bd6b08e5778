//! The gaps between the lugs, and the end mill for them.

use super::context::Context;
use super::finding::{Change, Place, Remedy};
use super::tool_access::{Job, Need, judged, no_tool, score};
use crate::document::MillingMethod;
use crate::ring::{Feature, gaps_between, least_gap_deg};
use crate::workshop::Cutter;

/// The gaps, where there are any.
pub(super) fn all(cx: &Context) -> Vec<Job> {
    let gaps = gaps_between(&cx.ring.lugs);
    let narrowest = gaps.iter().map(|gap| gap.extent_deg).reduce(f64::min);
    narrowest
        .map(|gap_deg| gap_job(cx, gap_deg))
        .into_iter()
        .collect()
}

fn gap_job(cx: &Context, gap_deg: f64) -> Job {
    let named = &cx.design.ring.cutter;
    let Some(cutter) = cx.workshop.cutter(named) else {
        return no_tool("gaps", "an end mill", Feature::LugTip);
    };
    let own = needs(cx, cutter, gap_deg);
    let own_score = score(&own);
    let better = cx
        .workshop
        .cutters
        .iter()
        .map(|other| (other, score(&needs(cx, other, gap_deg))))
        .filter(|(_, other)| *other > own_score)
        .max_by(|a, b| a.1.total_cmp(&b.1));
    let remedy = match better {
        Some((other, _)) => Remedy {
            text: format!("take the {}", other.name),
            change: Some(Change::Cutter(other.name.clone())),
        },
        None => {
            Remedy::words("buy a longer or thinner end mill, or a wider groove behind the lugs")
        }
    };
    let mut job = judged(cx, "gaps", &cutter.name, &own);
    job.finding = job
        .finding
        .at(Place::Feature(Feature::LugTip))
        .cured_by(remedy);
    job
}

/// What a cutter must have to mill the narrowest gap: it fits in, cuts the whole lug and runs out in the groove.
fn needs(cx: &Context, cutter: &Cutter, gap_deg: f64) -> Vec<Need> {
    let sizes = &cx.ring.sizes;
    let (root, tip) = (sizes.nose_diameter / 2.0, sizes.lug_diameter / 2.0);
    let radius = cutter.diameter_mm / 2.0;
    let run_out = cx.limits().cutter_run_out;
    let arc = |angle_deg: f64| angle_deg.to_radians() * root;
    // A cutter that cannot make the flank at all needs more than there is.
    let least = least_gap_deg(cx.ring, radius).map_or(f64::INFINITY, arc);
    let gap = Need::of("width of the narrowest gap", arc(gap_deg), least);
    match cx.ring.milling {
        MillingMethod::OffsetFeed | MillingMethod::CentreFeed | MillingMethod::PlungeAndTurn => {
            let lug = sizes.lug_thickness + run_out;
            // Beside the nose the shank would rub where the edges end.
            let with_nose = (sizes.spigot_length - sizes.groove_width + run_out).max(lug);
            vec![
                gap,
                Need::of(
                    "length of the cutting edges",
                    cutter.cutting_length_mm,
                    with_nose,
                )
                .or_less_by(with_nose - lug),
                Need::of("run-out in the groove", sizes.groove_width, run_out),
            ]
        }
        MillingMethod::RadialCutter => vec![
            gap,
            Need::of(
                "length of the cutting edges",
                cutter.cutting_length_mm,
                tip - root,
            ),
            Need::of(
                "room in the groove for the nose of the mill",
                sizes.groove_width,
                radius + run_out,
            )
            .or_less_by(run_out),
        ],
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::Severity;
    use crate::checks::finding::Finding;
    use crate::checks::fixture::{Bench, cured, design, workshop};
    use crate::checks::tool_access::check;
    use crate::document::Design;

    fn in_shop(design: &Design, length_of_the_first: f64) -> Finding {
        let mut shop = workshop();
        shop.cutters[0].cutting_length_mm = length_of_the_first;
        check(&Bench::in_shop(design.clone(), shop).cx()).unwrap()
    }

    /// Lug 1.3 and run-out 0.3; groove 3.35, spigot 6.54: 3.49 with the nose.
    #[test]
    fn a_short_mill_is_changed_for_a_longer_one() {
        for (length, severity) in [
            (1.5, Severity::Clash),
            (2.5, Severity::Caution),
            (8.0, Severity::Ok),
        ] {
            let finding = in_shop(&design(), length);
            assert_eq!(finding.severity, severity, "{length}: {}", finding.message);
            if severity != Severity::Ok {
                let design = cured(&design(), &finding);
                assert_eq!(in_shop(&design, length).severity, Severity::Ok);
            }
        }
    }

    #[test]
    fn a_mill_that_points_at_the_axis_needs_room_for_its_nose() {
        let mut design = design();
        design.ring.milling = MillingMethod::RadialCutter;
        // Groove 3.35: a mill of 6 wants 3 + 0.3, one of 8 wants 4.
        design.ring.cutter = "end mill 6".to_owned();
        let mut shop = workshop();
        assert_eq!(
            check(&Bench::in_shop(design.clone(), shop.clone()).cx())
                .unwrap()
                .severity,
            Severity::Caution
        );
        shop.cutters
            .iter_mut()
            .for_each(|cutter| cutter.diameter_mm = 8.0);
        assert_eq!(
            check(&Bench::in_shop(design, shop).cx()).unwrap().severity,
            Severity::Clash
        );
    }

    #[test]
    fn a_shop_without_a_mill_says_so() {
        let mut shop = workshop();
        shop.cutters.clear();
        let finding = check(&Bench::in_shop(design(), shop).cx()).unwrap();
        assert_eq!(finding.severity, Severity::Clash, "{}", finding.message);
    }
}
