//! The sentences about cutting the thread, one wording for text, pages and window.

use super::gear_train::HalfNut;
use super::threading::Threading;
use crate::mount::Unit;
use crate::standards::ThreadGauge;
use crate::workshop::Workshop;

/// What the depths of the infeed table are.
pub const THREAD_DEPTHS_ARE: &str = "Depths are sums from the touch of the bore, radially; use one method. Then one to \
                                     three passes without infeed, the more the slimmer the bar. Inside a bore the \
                                     compound swings to the other side, so that the leading flank cuts.";

/// Gears and half-nut.
#[must_use]
pub fn gear_words(threading: &Threading, workshop: &Workshop) -> Vec<String> {
    let pitch = threading.thread.pitch_mm();
    let Some(train) = &threading.train else {
        return vec![format!(
            "The change gears do not make a pitch of {}.",
            Unit::Mm.show(pitch)
        )];
    };
    let error = if train.is_exact() {
        "exact".to_owned()
    } else {
        format!(
            "{:+.5} mm a turn, {:+.4} mm over 5 mm of thread",
            train.pitch_mm - pitch,
            train.error_mm(5.0)
        )
    };
    let half_nut = threading.half_nut.map(|half_nut| match half_nut {
        HalfNut::Anywhere => "Half-nut: open it, and close it anywhere.".to_owned(),
        HalfNut::ByDial { teeth, every } => format!(
            "Half-nut: close it at a mark of the thread dial, wheel of {teeth} teeth, every {every} turns of the \
             leadscrew."
        ),
        HalfNut::StopAndReverse { .. } => {
            "Half-nut: leave it closed. At the relief withdraw the tool, stop, run back in reverse."
                .to_owned()
        }
    });
    let gears = format!(
        "Gears, spindle to leadscrew of {}: {train} ({error}).",
        Unit::Mm.show(workshop.lathe.leadscrew_pitch_mm)
    );
    std::iter::once(gears).chain(half_nut).collect()
}

/// How deep, and from where.
#[must_use]
pub fn depth_words(threading: &Threading) -> String {
    format!(
        "Depth {} from a bore of {}; start from the bore as you measure it, half the difference off the depth. A sharp \
         tool goes up to {} deeper: gauge or lens decide.",
        Unit::Mm.show(threading.depth_mm),
        Unit::Mm.show(threading.bore_mm),
        Unit::Mm.show(threading.sharp_tool_mm)
    )
}

/// What there is to stop in.
#[must_use]
pub fn run_out_words(threading: &Threading) -> String {
    threading.run_out.map_or_else(
        || "No relief: the thread runs right through.".to_owned(),
        |run_out| {
            format!(
                "Time to stop: relief {} less tool {}, asked for {}.",
                Unit::Mm.show(run_out.relief_mm),
                Unit::Mm.show(run_out.tool_mm),
                Unit::S.show(run_out.wanted_s)
            )
        },
    )
}

/// What can be done where no speed leaves the time asked for; empty where one does.
#[must_use]
pub fn ways_out(threading: &Threading, workshop: &Workshop) -> Vec<String> {
    let ways = threading
        .run_out
        .map(|run_out| run_out.ways_out(&workshop.lathe))
        .unwrap_or_default();
    if ways.is_empty() {
        return ways;
    }
    std::iter::once("No speed leaves that time. Ways out:".to_owned())
        .chain(ways)
        .collect()
}

/// What gauges read.
#[must_use]
pub fn gauge_words(threading: &Threading) -> Vec<String> {
    let line = |what: &str, gauge: &ThreadGauge| {
        format!(
            "{what} of {:.3} ({:.3} to {:.3} can be used): {:.3} to {}.",
            gauge.ball_mm,
            gauge.usable_mm.0,
            gauge.usable_mm.1,
            gauge.least_mm,
            Unit::Mm.show(gauge.greatest_mm)
        )
    };
    let inside = threading
        .inside
        .as_ref()
        .map(|gauge| line("Ring, over two opposed balls", gauge));
    let arbor = threading
        .arbor
        .as_ref()
        .map(|gauge| line("Male gauge or arbor, over three wires", gauge));
    [inside, arbor].into_iter().flatten().collect()
}
