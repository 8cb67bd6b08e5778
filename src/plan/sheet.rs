//! The shop plan as plain text, to be read beside the machine: boxes to tick, one thing a line.

use super::order::ShopPlan;
use super::route::Setting;
use super::run_out::RunOut;
use super::step::Step;
use super::thread_words::{
    THREAD_DEPTHS_ARE, depth_words, gauge_words, gear_words, run_out_words, ways_out,
};
use super::threading::Threading;
use super::words::{
    CAUTIONS, COUNTED_FROM_ZERO, Reason, SPEEDS_ARE, freedom_words, reason_words, stock_words,
};
use crate::document::{Design, columns, wrapped};
use crate::mount::{Unit, show_number};
use crate::workshop::Workshop;

/// Letters in a line of text.
const WIDTH: usize = 100;
/// The box to tick.
const BOX: &str = "[ ]";
/// The plan as text, lines of at most a hundred letters but for tables.
#[must_use]
pub fn plan_sheet(design: &Design, workshop: &Workshop, plan: &ShopPlan) -> String {
    let mut lines = vec![format!("SHOP PLAN  {}", design.name), String::new()];
    lines.extend(CAUTIONS.map(str::to_owned));
    if !plan.before_cutting.is_empty() {
        heading(
            &mut lines,
            "DO NOT CUT before this is put right or measured",
        );
        lines.extend(
            plan.before_cutting
                .iter()
                .map(|fault| format!("{BOX} {fault}")),
        );
    }
    heading(&mut lines, "MATERIAL");
    for (index, line) in stock_words(design, workshop, plan).iter().enumerate() {
        let head = if index == 0 { BOX } else { "   " };
        lines.push(format!("{head} {line}"));
    }
    heading(&mut lines, "ORDER OF CUTS");
    lines.push(format!("Route: {}", plan.route.word()));
    lines.push(format!("It costs {}.", plan.route.cost()));
    lines.push(SPEEDS_ARE.to_owned());
    lines.extend(step_lines(plan, workshop));
    heading(
        &mut lines,
        "DIVIDING, seen from the body side, clockwise from datum zero (12 o'clock)",
    );
    lines.extend(dividing_lines(plan, workshop));
    heading(&mut lines, &format!("THREAD {}", plan.threading.thread));
    lines.extend(thread_lines(&plan.threading, workshop));
    heading(&mut lines, "WHERE THE ORDER IS FREE");
    lines.extend(freedom_words(plan));
    heading(&mut lines, "WHY THIS ORDER");
    lines.extend(reason_words(plan).iter().map(Reason::text));
    let broken: Vec<String> = lines.iter().map(|line| readable(line)).collect();
    broken.join("\n")
}

/// A line as wide as a page; a table is left alone.
fn readable(line: &str) -> String {
    if line.contains('\n') {
        return line.to_owned();
    }
    let hanging = if line.starts_with("        ") { 8 } else { 4 };
    wrapped(line, WIDTH, hanging)
}

fn heading(lines: &mut Vec<String>, text: &str) {
    lines.extend([
        String::new(),
        text.to_owned(),
        "-".repeat(text.chars().count()),
    ]);
}

fn step_lines(plan: &ShopPlan, workshop: &Workshop) -> Vec<String> {
    let mut lines = Vec::new();
    let mut setting: Option<Setting> = None;
    for (index, step) in plan.steps.iter().enumerate() {
        if setting != Some(step.setting) {
            setting = Some(step.setting);
            lines.push(String::new());
            lines.push(format!("Held: {}.", plan.route.holding(step.setting)));
        }
        lines.extend(one_step(index + 1, step, workshop));
    }
    lines
}

fn one_step(number: usize, step: &Step, workshop: &Workshop) -> Vec<String> {
    let mut lines = vec![format!("{BOX} {number:>2}  {}", step.operation.label())];
    let mut add = |head: &str, text: &str| {
        if !text.is_empty() {
            lines.push(format!("        {head:<8}{text}"));
        }
    };
    for (head, text) in step.details(workshop.lathe.dials) {
        add(head, &text);
    }
    add("CAUTION", step.caution);
    lines
}

fn dividing_lines(plan: &ShopPlan, workshop: &Workshop) -> Vec<String> {
    let list = &plan.dividing;
    let mut lines = list.set_up.clone();
    lines.extend(list.faults.iter().map(|fault| format!("CAUTION {fault}")));
    let head = &workshop.dividing_head;
    lines.push(format!("{}: {COUNTED_FROM_ZERO}", head.name));
    let rows: Vec<Vec<String>> = list
        .rows
        .iter()
        .map(|row| {
            let setting = row.setting;
            vec![
                BOX.to_owned(),
                row.mark.label(),
                degrees(row.edge_deg),
                degrees(row.work_deg),
                setting.map_or_else(|| "-".to_owned(), |one| one.to_string()),
                setting.map_or_else(String::new, |one| (one.plate + 1).to_string()),
                setting.map_or_else(String::new, |one| format!("{:+.2}'", one.error_minutes())),
                setting.map_or_else(String::new, |_| format!("{:+.4}", row.error_mm)),
                row.table.to_string(),
                row.readout
                    .map_or_else(|| "-".to_owned(), |point| format!("{:+.3}", point.x)),
                row.readout
                    .map_or_else(|| "-".to_owned(), |point| format!("{:+.3}", point.y)),
            ]
        })
        .collect();
    lines.push(columns(
        &[
            "", "what", "edge", "turn to", "crank", "plate", "error", "mm", "table", "x", "y",
        ],
        &rows,
    ));
    lines.push(
        "mm: the error along the lug diameter. x, y: \
         centre of the tool from the axis, x right and y up, seen from the body side, 12 o'clock up."
            .to_owned(),
    );
    lines
}

fn thread_lines(threading: &Threading, workshop: &Workshop) -> Vec<String> {
    let mut lines = gear_words(threading, workshop);
    lines.push(depth_words(threading));
    lines.push(infeed_table(threading, workshop));
    lines.push(THREAD_DEPTHS_ARE.to_owned());
    lines.push(run_out_words(threading));
    if let Some(run_out) = &threading.run_out {
        lines.push(stop_table(run_out, workshop));
    }
    for (index, way) in ways_out(threading, workshop).into_iter().enumerate() {
        lines.push(if index == 0 {
            way
        } else {
            format!("  - {way}")
        });
    }
    lines.extend(gauge_words(threading));
    lines
}

fn infeed_table(threading: &Threading, workshop: &Workshop) -> String {
    let dials = workshop.lathe.dials;
    let angle = Unit::Deg.show(threading.compound_angle_deg);
    let rows: Vec<Vec<String>> = threading
        .passes
        .iter()
        .enumerate()
        .map(|(index, pass)| {
            vec![
                BOX.to_owned(),
                (index + 1).to_string(),
                dials.shown(pass.even_mm),
                dials.shown(pass.even_on_compound_mm),
                dials.shown(pass.soft_mm),
                dials.shown(pass.soft_on_compound_mm),
            ]
        })
        .collect();
    columns(
        &[
            "",
            "pass",
            &format!("constant area, {}", dials.unit()),
            &format!("on compound {angle}"),
            &format!("softer first cut, {}", dials.unit()),
            &format!("on compound {angle}"),
        ],
        &rows,
    )
}

fn stop_table(run_out: &RunOut, workshop: &Workshop) -> String {
    let rows: Vec<Vec<String>> = run_out
        .at_speeds(&workshop.lathe.speeds_rpm())
        .iter()
        .map(|time| {
            vec![
                format!("{:.0}", time.rpm),
                format!("{:.2}", time.seconds),
                time.comfort.word().to_owned(),
            ]
        })
        .collect();
    columns(&["rpm", "s", ""], &rows)
}

fn degrees(value: f64) -> String {
    format!("{}\u{b0}", show_number(value, 4))
}
