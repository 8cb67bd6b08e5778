//! The shop plan as a printed sheet: cautions first, then material, the steps with their pictures, settings and thread.

use super::plan_tables::{crank_table, infeed_table, readout_table, rotary_table, stop_table};
use super::step_picture::{caption, step_picture};
use crate::document::Design;
use crate::drawing::printed::{Block, PrintedSheet};
use crate::evaluate::Evaluation;
use crate::plan::{
    CAUTIONS, COUNTED_FROM_ZERO, SEEN_FROM_WORDS, SPEEDS_ARE, Setting, ShopPlan, Stage, Step,
    THREAD_DEPTHS_ARE, depth_words, freedom_words, gauge_words, gear_words, reason_words,
    run_out_words, stock_words, ways_out,
};
use crate::workshop::Workshop;

/// Greatest width and height of the picture beside a step, mm.
const PICTURE_MM: (f64, f64) = (48.0, 38.0);

/// The sheet.
#[must_use]
pub fn printed_plan(
    design: &Design,
    workshop: &Workshop,
    evaluation: &Evaluation,
    plan: &ShopPlan,
) -> PrintedSheet {
    let mut blocks: Vec<Block> = CAUTIONS.map(|text| Block::Caution(text.to_owned())).into();
    blocks.extend(before_cutting(plan));
    blocks.push(Block::Heading("Material".to_owned()));
    blocks.extend(
        stock_words(design, workshop, plan)
            .into_iter()
            .map(Block::Tick),
    );
    blocks.push(Block::Heading("Order of cuts".to_owned()));
    blocks.push(Block::Text(format!("Route: {}.", plan.route.word())));
    blocks.push(Block::Text(format!("It costs {}.", plan.route.cost())));
    blocks.push(Block::Text(SPEEDS_ARE.to_owned()));
    blocks.extend(steps(workshop, evaluation, plan));
    blocks.extend(dividing(workshop, plan));
    blocks.extend(thread(workshop, plan));
    blocks.push(Block::Heading("Where the order is free".to_owned()));
    blocks.extend(freedom_words(plan).into_iter().map(Block::Small));
    blocks.push(Block::Heading("Why this order".to_owned()));
    blocks.extend(
        reason_words(plan)
            .into_iter()
            .map(|reason| Block::Small(reason.text())),
    );
    PrintedSheet {
        title: format!("Shop plan: {}", design.name),
        foot: format!(
            "{}; {}, {}",
            design.name, workshop.lathe.name, workshop.dividing_head.name
        ),
        blocks,
    }
}

fn before_cutting(plan: &ShopPlan) -> Vec<Block> {
    if plan.before_cutting.is_empty() {
        return Vec::new();
    }
    let mut blocks = vec![Block::Heading(
        "Do not cut before this is put right or measured".to_owned(),
    )];
    blocks.extend(plan.before_cutting.iter().cloned().map(Block::Tick));
    blocks
}

fn steps(workshop: &Workshop, evaluation: &Evaluation, plan: &ShopPlan) -> Vec<Block> {
    let stages = plan.stages(evaluation);
    let mut setting: Option<Setting> = None;
    let mut blocks = Vec::new();
    for (index, step) in plan.steps.iter().enumerate() {
        let one = one_step(index + 1, step, stages.get(index), workshop, evaluation);
        if setting == Some(step.setting) {
            blocks.push(one);
            continue;
        }
        setting = Some(step.setting);
        let held = format!("Held: {}.", plan.route.holding(step.setting));
        blocks.push(Block::Together(vec![
            Block::Heading(step.setting.word().to_owned()),
            Block::Text(held),
            one,
        ]));
    }
    blocks
}

fn one_step(
    number: usize,
    step: &Step,
    stage: Option<&Stage>,
    workshop: &Workshop,
    evaluation: &Evaluation,
) -> Block {
    let mut blocks = vec![Block::Tick(format!("{number}  {}", step.operation.label()))];
    blocks.extend(
        step.details(workshop.lathe.dials)
            .into_iter()
            .map(|(head, text)| Block::Named(head.to_owned(), text)),
    );
    if !step.caution.is_empty() {
        blocks.push(Block::Caution(format!("Caution: {}", step.caution)));
    }
    blocks.push(Block::Gap(2.0));
    match stage {
        Some(stage) => Block::Beside {
            blocks,
            scene: step_picture(stage, evaluation),
            width_mm: PICTURE_MM.0,
            height_mm: PICTURE_MM.1,
            caption: caption(stage).to_owned(),
        },
        None => Block::Together(blocks),
    }
}

fn dividing(workshop: &Workshop, plan: &ShopPlan) -> Vec<Block> {
    let list = &plan.dividing;
    let mut blocks = vec![
        Block::Heading("Dividing".to_owned()),
        Block::Text(SEEN_FROM_WORDS.to_owned()),
    ];
    blocks.extend(list.set_up.iter().cloned().map(Block::Text));
    blocks.extend(
        list.faults
            .iter()
            .map(|fault| Block::Caution(format!("Caution: {fault}"))),
    );
    if list.rows.iter().any(|row| row.setting.is_some()) {
        blocks.push(Block::Together(vec![
            Block::Text(format!(
                "{}: {COUNTED_FROM_ZERO}",
                workshop.dividing_head.name
            )),
            Block::Table(crank_table(list)),
        ]));
    }
    if let Some(table) = &workshop.rotary_table {
        blocks.push(Block::Together(vec![
            Block::Text(format!("{}, from datum zero:", table.name)),
            Block::Table(rotary_table(list)),
        ]));
    }
    if !workshop.mill.has_readout {
        return blocks;
    }
    blocks.push(Block::Together(vec![
        Block::Text(
            "By digital readout: centre of the tool from the axis, mm; x right and y up, seen from the body side, 12 \
             o'clock up:"
                .to_owned(),
        ),
        Block::Table(readout_table(list)),
    ]));
    blocks
}

fn thread(workshop: &Workshop, plan: &ShopPlan) -> Vec<Block> {
    let threading = &plan.threading;
    let mut blocks = vec![Block::Heading(format!("Thread {}", threading.thread))];
    blocks.extend(gear_words(threading, workshop).into_iter().map(Block::Text));
    blocks.push(Block::Text(depth_words(threading)));
    blocks.push(Block::Table(infeed_table(threading, workshop.lathe.dials)));
    blocks.push(Block::Text(THREAD_DEPTHS_ARE.to_owned()));
    blocks.push(Block::Text(run_out_words(threading)));
    if let Some(run_out) = &threading.run_out {
        blocks.push(Block::Table(stop_table(run_out, workshop)));
    }
    blocks.extend(
        ways_out(threading, workshop)
            .into_iter()
            .map(Block::Caution),
    );
    blocks.extend(gauge_words(threading).into_iter().map(Block::Tick));
    blocks
}
