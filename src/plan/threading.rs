//! Everything about cutting the ring's thread: infeed, gears, half-nut, time to stop, gauges.

use super::gear_train::{GearTrain, HalfNut, best_train};
use super::infeed::{InfeedMethod, deeper_by_tip_mm, on_compound_mm, suggested_passes};
use super::run_out::RunOut;
use crate::document::Design;
use crate::ring::ResolvedRing;
use crate::standards::{Side, Thread, ThreadForm, ThreadGauge, thread_gauge};
use crate::workshop::{CuttingGroup, ToolDuty, TurningTool, Workshop};

/// One pass.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pass {
    /// Depth after it by constant area, mm, radially from the bore.
    pub even_mm: f64,
    /// The same on the compound slide, mm.
    pub even_on_compound_mm: f64,
    /// Depth after it with the softer first cut, mm, radially.
    pub soft_mm: f64,
    /// The same on the compound slide, mm.
    pub soft_on_compound_mm: f64,
}

/// The thread as it is cut.
#[derive(Clone, Debug, PartialEq)]
pub struct Threading {
    /// The thread.
    pub thread: Thread,
    /// The bore it is cut in, mm; if the bore came out otherwise, half the difference is taken off the depth.
    pub bore_mm: f64,
    /// Radial depth from the bore to the basic major diameter, mm.
    pub depth_mm: f64,
    /// How much deeper a sharp tool goes at most, mm; 0 for a form that has no flat.
    pub sharp_tool_mm: f64,
    /// Angle of the compound slide from the cross-slide direction, degrees.
    pub compound_angle_deg: f64,
    /// The passes.
    pub passes: Vec<Pass>,
    /// Change gears, where any make the pitch.
    pub train: Option<GearTrain>,
    /// What to do with the half-nut; stop and reverse where the pitch is not exact.
    pub half_nut: Option<HalfNut>,
    /// The relief; none where the thread runs through or the workshop has no tool.
    pub run_out: Option<RunOut>,
    /// What balls in the thread must read.
    pub inside: Option<ThreadGauge>,
    /// What wires over a male trial thread or arbor must read.
    pub arbor: Option<ThreadGauge>,
}

/// The thread of a ring as this workshop cuts it.
#[must_use]
pub fn threading(design: &Design, ring: &ResolvedRing, workshop: &Workshop) -> Threading {
    let thread = ring.thread;
    let lathe = &workshop.lathe;
    let depth_mm = (thread.basic().major_diameter - ring.thread_minor) / 2.0;
    let group = workshop
        .material(&design.ring.material)
        .map_or(CuttingGroup::Unknown, |stuff| stuff.cutting);
    let train = best_train(
        lathe.leadscrew_pitch_mm,
        thread.pitch_mm(),
        &lathe.change_gears,
    );
    let half_nut = train.as_ref().map(|train| {
        let every = train.leadscrew_turns();
        if train.is_exact() {
            train.half_nut(&lathe.thread_dial_teeth)
        } else {
            HalfNut::StopAndReverse { every }
        }
    });
    Threading {
        thread,
        bore_mm: ring.thread_minor,
        depth_mm,
        sharp_tool_mm: match thread.form() {
            ThreadForm::Metric | ThreadForm::Unified { .. } => {
                deeper_by_tip_mm(thread.pitch_mm(), 0.0)
            }
            ThreadForm::Whitworth => 0.0,
        },
        compound_angle_deg: lathe.compound_angle_deg,
        passes: passes(
            depth_mm,
            suggested_passes(thread.pitch_mm(), depth_mm, group),
            lathe.compound_angle_deg,
        ),
        train,
        half_nut,
        run_out: run_out(design, ring, workshop),
        inside: thread_gauge(&thread, Side::Internal),
        arbor: thread_gauge(&thread.without_class(), Side::External),
    }
}

fn passes(depth_mm: f64, count: u32, compound_deg: f64) -> Vec<Pass> {
    let even = InfeedMethod::ConstantArea.sums_mm(depth_mm, count);
    let soft = InfeedMethod::SofterFirstCut.sums_mm(depth_mm, count);
    even.into_iter()
        .zip(soft)
        .map(|(even_mm, soft_mm)| Pass {
            even_mm,
            even_on_compound_mm: on_compound_mm(even_mm, compound_deg),
            soft_mm,
            soft_on_compound_mm: on_compound_mm(soft_mm, compound_deg),
        })
        .collect()
}

fn run_out(design: &Design, ring: &ResolvedRing, workshop: &Workshop) -> Option<RunOut> {
    if ring.thread_runs_through {
        return None;
    }
    let tool = threading_tool(ring, workshop)?;
    Some(RunOut {
        relief_mm: ring.sizes.relief_width,
        tool_mm: tool.width_mm,
        pitch_mm: ring.thread.pitch_mm(),
        wanted_s: design.limits.stop_time_caution,
    })
}

/// The narrowest inside threading tool that enters the bore.
#[must_use]
pub fn threading_tool<'a>(ring: &ResolvedRing, workshop: &'a Workshop) -> Option<&'a TurningTool> {
    workshop
        .turning_tools
        .iter()
        .filter(|tool| {
            tool.duty() == ToolDuty::InsideThread && tool.least_bore_mm <= ring.thread_minor
        })
        .min_by(|a, b| a.width_mm.total_cmp(&b.width_mm))
}
