//! What a workshop lacks for a ring: a tool, a gear, a way to divide.

use thiserror::Error;

use super::gear_train::best_train;
use super::route::has_relief;
use super::threading::threading_tool;
use crate::document::Route;
use crate::ring::{ResolvedRing, gaps_between, least_gap_deg};
use crate::workshop::{ToolDuty, TurningTool, Workshop};

/// One thing that is missing, with the sizes that a new one must have. Lengths mm.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum Shortfall {
    /// A lathe without speeds.
    #[error("the lathe has no spindle speeds: enter them in the workshop")]
    Speeds,
    /// No bar that enters the bore.
    #[error("to bore the ring: a boring bar that enters {bore_mm:.2} mm")]
    BoringBar {
        /// The smallest bore.
        bore_mm: f64,
    },
    /// No threading tool that enters.
    #[error("to cut the thread: an inside threading tool that enters {bore_mm:.2} mm")]
    ThreadingTool {
        /// The minor diameter.
        bore_mm: f64,
    },
    /// No tool for the relief.
    #[error(
        "to turn the relief: an inside grooving tool at most {width_mm:.2} mm wide that reaches {depth_mm:.2} mm and \
         enters {bore_mm:.2} mm"
    )]
    ReliefTool {
        /// Width of the relief.
        width_mm: f64,
        /// Its depth from the bore.
        depth_mm: f64,
        /// The bore.
        bore_mm: f64,
    },
    /// No tool for the groove.
    #[error(
        "to turn the groove behind the flange: an outside grooving tool at most {width_mm:.2} mm wide that reaches \
         {depth_mm:.2} mm"
    )]
    GrooveTool {
        /// Width of the groove.
        width_mm: f64,
        /// Its depth under the lugs.
        depth_mm: f64,
    },
    /// No gears for the pitch.
    #[error(
        "to cut a pitch of {pitch_mm:.4} mm on a leadscrew of {leadscrew_mm} mm: change gears that make it within \
         half a per cent"
    )]
    ChangeGears {
        /// The pitch.
        pitch_mm: f64,
        /// The leadscrew's pitch.
        leadscrew_mm: f64,
    },
    /// Nothing to divide with.
    #[error("to mill the gaps: a dividing head with hole circles, or a rotary table")]
    Dividing,
    /// No end mill at all.
    #[error("to mill the gaps: an end mill")]
    NoEndMill,
    /// An end mill too large for a gap.
    #[error(
        "to mill the gap of {gap_deg:.2} degrees: a smaller end mill than {cutter_mm} mm, which needs {least_deg:.2}"
    )]
    EndMill {
        /// The narrowest gap, degrees.
        gap_deg: f64,
        /// The cutter's diameter.
        cutter_mm: f64,
        /// What it needs, degrees.
        least_deg: f64,
    },
    /// The head does not take the chuck.
    #[error("to mill in the bar: a dividing head that takes the lathe's chuck with the bar in it")]
    ChuckOnHead,
}

/// Everything that a route lacks in this workshop.
#[must_use]
pub fn shortfalls(route: Route, ring: &ResolvedRing, workshop: &Workshop) -> Vec<Shortfall> {
    let mut lacking = on_the_lathe(ring, workshop);
    lacking.extend(on_the_mill(ring, workshop));
    let needs_chuck = match route {
        Route::LugsInTheBar => true,
        Route::ThreadFirst | Route::LugsOnAMandrel => false,
    };
    let head = &workshop.dividing_head;
    if needs_chuck && !(head.is_there && head.takes_lathe_chuck) {
        lacking.push(Shortfall::ChuckOnHead);
    }
    lacking
}

fn on_the_lathe(ring: &ResolvedRing, workshop: &Workshop) -> Vec<Shortfall> {
    let sizes = &ring.sizes;
    let lathe = &workshop.lathe;
    let mut lacking = Vec::new();
    if !lathe.spindle_rpm.iter().any(|rpm| *rpm > 0.0) {
        lacking.push(Shortfall::Speeds);
    }
    if boring_bar(ring, workshop).is_none() {
        lacking.push(Shortfall::BoringBar {
            bore_mm: smallest_bore_mm(ring),
        });
    }
    if threading_tool(ring, workshop).is_none() {
        lacking.push(Shortfall::ThreadingTool {
            bore_mm: ring.thread_minor,
        });
    }
    if has_relief(ring) && relief_tool(ring, workshop).is_none() {
        lacking.push(Shortfall::ReliefTool {
            width_mm: sizes.relief_width,
            depth_mm: (sizes.relief_diameter - ring.thread_minor) / 2.0,
            bore_mm: ring.thread_minor,
        });
    }
    if groove_tool(ring, workshop).is_none() {
        lacking.push(Shortfall::GrooveTool {
            width_mm: sizes.groove_width,
            depth_mm: (sizes.lug_diameter - sizes.groove_root_diameter) / 2.0,
        });
    }
    let pitch_mm = ring.thread.pitch_mm();
    if best_train(lathe.leadscrew_pitch_mm, pitch_mm, &lathe.change_gears).is_none() {
        lacking.push(Shortfall::ChangeGears {
            pitch_mm,
            leadscrew_mm: lathe.leadscrew_pitch_mm,
        });
    }
    lacking
}

fn on_the_mill(ring: &ResolvedRing, workshop: &Workshop) -> Vec<Shortfall> {
    let mut lacking = Vec::new();
    let head = &workshop.dividing_head;
    let has_circles =
        head.is_there && head.ratio > 0 && head.plates.iter().flatten().any(|circle| *circle > 0);
    if !has_circles && workshop.rotary_table.is_none() {
        lacking.push(Shortfall::Dividing);
    }
    if workshop.cutters.is_empty() {
        lacking.push(Shortfall::NoEndMill);
        return lacking;
    }
    let narrowest = gaps_between(&ring.lugs)
        .iter()
        .map(|gap| gap.extent_deg)
        .fold(f64::INFINITY, f64::min);
    // A cutter that makes no such lug at all needs more than any gap.
    let least = least_gap_deg(ring, ring.cutter_radius).unwrap_or(360.0);
    if narrowest < least {
        lacking.push(Shortfall::EndMill {
            gap_deg: narrowest,
            cutter_mm: 2.0 * ring.cutter_radius,
            least_deg: least,
        });
    }
    lacking
}

fn smallest_bore_mm(ring: &ResolvedRing) -> f64 {
    let sizes = &ring.sizes;
    if ring.thread_runs_through {
        ring.thread_minor
    } else {
        sizes.lip_bore.min(sizes.rear_bore)
    }
}

/// A boring bar that enters the smallest bore.
#[must_use]
pub fn boring_bar<'a>(ring: &ResolvedRing, workshop: &'a Workshop) -> Option<&'a TurningTool> {
    workshop.turning_tools.iter().find(|tool| {
        tool.duty() == ToolDuty::Boring && tool.least_bore_mm <= smallest_bore_mm(ring)
    })
}

/// The widest tool that turns the relief.
#[must_use]
pub fn relief_tool<'a>(ring: &ResolvedRing, workshop: &'a Workshop) -> Option<&'a TurningTool> {
    let depth = (ring.sizes.relief_diameter - ring.thread_minor) / 2.0;
    widest(workshop, |tool| {
        tool.duty() == ToolDuty::InsideGroove
            && tool.width_mm <= ring.sizes.relief_width
            && tool.reach_mm >= depth
            && tool.least_bore_mm <= ring.thread_minor
    })
}

/// The widest tool that turns the groove behind the flange.
#[must_use]
pub fn groove_tool<'a>(ring: &ResolvedRing, workshop: &'a Workshop) -> Option<&'a TurningTool> {
    let sizes = &ring.sizes;
    let depth = (sizes.lug_diameter - sizes.groove_root_diameter) / 2.0;
    widest(workshop, |tool| {
        tool.duty() == ToolDuty::OutsideGroove
            && tool.width_mm <= sizes.groove_width
            && tool.reach_mm >= depth
    })
}

fn widest(workshop: &Workshop, fits: impl Fn(&TurningTool) -> bool) -> Option<&TurningTool> {
    workshop
        .turning_tools
        .iter()
        .filter(|tool| fits(tool))
        .max_by(|a, b| a.width_mm.total_cmp(&b.width_mm))
}
