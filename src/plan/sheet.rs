//! The shop plan as plain text, to be read beside the machine: boxes to tick, one thing a line.

use super::order::ShopPlan;
use super::route::Setting;
use super::sheet_thread::thread_lines;
use super::step::Step;
use crate::document::{Design, columns, wrapped};
use crate::mount::{Unit, show_number};
use crate::workshop::Workshop;

/// Letters in a line of text.
const WIDTH: usize = 100;
/// The box to tick.
const BOX: &str = "[ ]";
/// What stands above everything.
const FIRST: [&str; 3] = [
    "The rules of the workshop you stand in come first: where they and this sheet differ, follow them.",
    "Eye protection; no gloves, sleeves, rings or long hair near a turning spindle; chuck key out of the chuck.",
    "Stop and wait for standstill before measuring or clearing chips; hook or brush, never fingers.",
];

/// The plan as text, lines of at most a hundred letters but for tables.
#[must_use]
pub fn plan_sheet(design: &Design, workshop: &Workshop, plan: &ShopPlan) -> String {
    let mut lines = vec![format!("SHOP PLAN  {}", design.name), String::new()];
    lines.extend(FIRST.map(str::to_owned));
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
    lines.extend(stock_lines(design, workshop, plan));
    heading(&mut lines, "ORDER OF CUTS");
    lines.push(format!("Route: {}", plan.route.word()));
    lines.push(format!("It costs {}.", plan.route.cost()));
    lines.push(
        "Speeds are for high-speed steel, the low end; carbide goes about twice as fast."
            .to_owned(),
    );
    lines.extend(step_lines(plan));
    heading(
        &mut lines,
        "DIVIDING, seen from the body side, clockwise from datum zero (12 o'clock)",
    );
    lines.extend(dividing_lines(plan, workshop));
    heading(&mut lines, &format!("THREAD {}", plan.threading.thread));
    lines.extend(thread_lines(&plan.threading, workshop));
    heading(&mut lines, "WHERE THE ORDER IS FREE");
    lines.extend(freedom_lines(plan));
    heading(&mut lines, "WHY THIS ORDER");
    lines.extend(reason_lines(plan));
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

fn stock_lines(design: &Design, workshop: &Workshop, plan: &ShopPlan) -> Vec<String> {
    let material = workshop.material(&design.ring.material);
    let Some((bar, material)) = plan.stock.zip(material) else {
        return vec!["The workshop does not know the material: enter it there.".to_owned()];
    };
    let cost = bar.cost.map_or_else(
        || "cost unknown: enter the price of a kilogram in the workshop".to_owned(),
        |cost| format!("cost {cost:.2} in your money"),
    );
    vec![
        format!(
            "{BOX} {}, round bar {:.0} mm, sawn {:.0} mm long ({:.3} kg)",
            material.name, bar.diameter_mm, bar.length_mm, bar.mass_kg
        ),
        format!(
            "    ring {} long, {} parted off, {:.0} mm in the chuck",
            mm(bar.ring_length_mm),
            mm(bar.kerf_mm),
            bar.grip_mm
        ),
        format!(
            "    ring {:.1} g, waste {:.3} kg, bar over ring {:.1} : 1, {cost}",
            bar.ring_kg * 1000.0,
            bar.waste_kg(),
            bar.buy_to_use()
        ),
    ]
}

fn step_lines(plan: &ShopPlan) -> Vec<String> {
    let mut lines = Vec::new();
    let mut setting: Option<Setting> = None;
    for (index, step) in plan.steps.iter().enumerate() {
        if setting != Some(step.setting) {
            setting = Some(step.setting);
            lines.push(String::new());
            lines.push(format!("Held: {}.", plan.route.holding(step.setting)));
        }
        lines.extend(one_step(index + 1, step));
    }
    lines
}

fn one_step(number: usize, step: &Step) -> Vec<String> {
    let mut lines = vec![format!("{BOX} {number:>2}  {}", step.operation.label())];
    let mut add = |head: &str, text: &str| {
        if !text.is_empty() {
            lines.push(format!("        {head:<8}{text}"));
        }
    };
    add("tool", &step.tool);
    for size in &step.sizes {
        add("size", &size.text());
    }
    add(
        "speed",
        &step.speed.map(|speed| speed.text()).unwrap_or_default(),
    );
    add("check", step.check);
    add("CAUTION", step.caution);
    lines
}

fn dividing_lines(plan: &ShopPlan, workshop: &Workshop) -> Vec<String> {
    let list = &plan.dividing;
    let mut lines = list.set_up.clone();
    lines.extend(list.faults.iter().map(|fault| format!("CAUTION {fault}")));
    let head = &workshop.dividing_head;
    lines.push(format!(
        "{}: every row counts from datum zero, never from the row before. Always come to the hole from the same side; \
         past it, go back a quarter turn and come again.",
        head.name
    ));
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
        "The sector arms take in one hole more than the spaces counted. mm: the error along the lug diameter. x, y: \
         centre of the tool from the axis, x right and y up, seen from the body side, 12 o'clock up."
            .to_owned(),
    );
    lines
}

fn freedom_lines(plan: &ShopPlan) -> Vec<String> {
    let mut lines: Vec<String> = plan
        .exchangeable
        .iter()
        .map(|(one, next)| format!("{one}, and {next}: either first"))
        .collect();
    for other in &plan.alternatives {
        lines.push(format!("Other route: {}.", other.route.word()));
        lines.push(format!("    It costs {}.", other.route.cost()));
        lines.extend(
            other
                .lacking
                .iter()
                .map(|lacking| format!("    Not with this workshop, {lacking}.")),
        );
    }
    lines
}

/// Each reason once, with everything that it holds apart.
fn reason_lines(plan: &ShopPlan) -> Vec<String> {
    let mut reasons: Vec<&str> = Vec::new();
    for rule in &plan.rules {
        if !reasons.contains(&rule.reason) {
            reasons.push(rule.reason);
        }
    }
    reasons
        .into_iter()
        .map(|reason| {
            let of_it = || plan.rules.iter().filter(move |rule| rule.reason == reason);
            let befores = joined(of_it().map(|rule| rule.before.label()));
            let afters = joined(of_it().map(|rule| rule.after.label()));
            format!("{befores}; then {afters}: {reason}")
        })
        .collect()
}

fn joined<'a>(labels: impl Iterator<Item = &'a str>) -> String {
    let mut each: Vec<&str> = Vec::new();
    for label in labels {
        if !each.contains(&label) {
            each.push(label);
        }
    }
    each.join(", ")
}

fn mm(value: f64) -> String {
    Unit::Mm.show(value)
}

fn degrees(value: f64) -> String {
    format!("{}\u{b0}", show_number(value, 4))
}
