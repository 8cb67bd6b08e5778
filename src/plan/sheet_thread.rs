//! The thread's part of the shop plan as plain text.

use super::gear_train::HalfNut;
use super::run_out::RunOut;
use super::threading::Threading;
use crate::document::columns;
use crate::mount::Unit;
use crate::standards::ThreadGauge;
use crate::workshop::Workshop;

pub(super) fn thread_lines(threading: &Threading, workshop: &Workshop) -> Vec<String> {
    let mut lines = gear_lines(threading, workshop);
    lines.extend(infeed_lines(threading));
    match &threading.run_out {
        Some(run_out) => lines.extend(run_out_lines(run_out, workshop)),
        None => lines.push("No relief: the thread runs right through.".to_owned()),
    }
    lines.extend(gauge_lines(threading));
    lines
}

fn gear_lines(threading: &Threading, workshop: &Workshop) -> Vec<String> {
    let pitch = threading.thread.pitch_mm();
    let Some(train) = &threading.train else {
        return vec![format!(
            "The change gears do not make a pitch of {}.",
            mm(pitch)
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
    let half_nut = match threading.half_nut {
        None => String::new(),
        Some(HalfNut::Anywhere) => "Half-nut: open it, and close it anywhere.".to_owned(),
        Some(HalfNut::ByDial { teeth, every }) => format!(
            "Half-nut: close it at a mark of the thread dial, wheel of {teeth} teeth, every {every} turns of the \
             leadscrew."
        ),
        Some(HalfNut::StopAndReverse { .. }) => {
            "Half-nut: leave it closed. At the relief withdraw the tool, stop, run back in reverse."
                .to_owned()
        }
    };
    vec![
        format!(
            "Gears, spindle to leadscrew of {}: {train} ({error}).",
            mm(workshop.lathe.leadscrew_pitch_mm)
        ),
        half_nut,
    ]
}

fn infeed_lines(threading: &Threading) -> Vec<String> {
    let angle = Unit::Deg.show(threading.compound_angle_deg);
    let mut lines = vec![format!(
        "Depth {} from a bore of {}; start from the bore as you measure it, half the difference off the depth. A sharp \
         tool goes up to {} deeper: gauge or lens decide.",
        mm(threading.depth_mm),
        mm(threading.bore_mm),
        mm(threading.sharp_tool_mm)
    )];
    let rows: Vec<Vec<String>> = threading
        .passes
        .iter()
        .enumerate()
        .map(|(index, pass)| {
            vec![
                "[ ]".to_owned(),
                (index + 1).to_string(),
                three(pass.even_mm),
                three(pass.even_on_compound_mm),
                three(pass.soft_mm),
                three(pass.soft_on_compound_mm),
            ]
        })
        .collect();
    lines.push(columns(
        &[
            "",
            "pass",
            "constant area",
            &format!("on compound {angle}"),
            "softer first cut",
            &format!("on compound {angle}"),
        ],
        &rows,
    ));
    lines.push(
        "Depths are sums from the touch of the bore, mm radially; use one method. Then one to three passes without \
         infeed, the more the slimmer the bar. Inside a bore the compound swings to the other side, so that the leading \
         flank cuts."
            .to_owned(),
    );
    lines
}

fn run_out_lines(run_out: &RunOut, workshop: &Workshop) -> Vec<String> {
    let steps = &workshop.lathe.spindle_rpm;
    let rows: Vec<Vec<String>> = run_out
        .at_speeds(steps)
        .iter()
        .map(|time| {
            vec![
                format!("{:.0}", time.rpm),
                format!("{:.2}", time.seconds),
                time.comfort.word().to_owned(),
            ]
        })
        .collect();
    let mut lines = vec![
        format!(
            "Time to stop: relief {} less tool {}, asked for {}.",
            mm(run_out.relief_mm),
            mm(run_out.tool_mm),
            Unit::S.show(run_out.wanted_s)
        ),
        columns(&["rpm", "s", ""], &rows),
    ];
    let ways = run_out.ways_out(steps);
    if !ways.is_empty() {
        lines.push("No speed leaves that time. Ways out:".to_owned());
        lines.extend(ways.iter().map(|way| format!("  - {way}")));
    }
    lines
}

fn gauge_lines(threading: &Threading) -> Vec<String> {
    let line = |what: &str, gauge: &ThreadGauge| {
        format!(
            "{what} of {} ({} to {} can be used): {} to {}.",
            three(gauge.ball_mm),
            three(gauge.usable_mm.0),
            three(gauge.usable_mm.1),
            three(gauge.least_mm),
            mm(gauge.greatest_mm)
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

fn mm(value: f64) -> String {
    Unit::Mm.show(value)
}

fn three(value: f64) -> String {
    format!("{value:.3}")
}
