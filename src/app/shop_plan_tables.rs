//! The settings of the head and the passes of the thread, as tables on the page Shop plan.

use egui::{Grid, Label, RichText, Ui};

use super::shop_plan_page::caution_ui;
use super::view::View;
use crate::drawing::printed::{Column, Table};
use crate::paper::plan_tables::{
    crank_table, infeed_table, readout_table, rotary_table, stop_table,
};
use crate::plan::{
    COUNTED_FROM_ZERO, SEEN_FROM_WORDS, ShopPlan, THREAD_DEPTHS_ARE, depth_words, gauge_words,
    gear_words, run_out_words, ways_out,
};

/// The settings of the head, the table and the readout.
pub fn dividing_ui(ui: &mut Ui, view: &View<'_>, plan: &ShopPlan) {
    let list = &plan.dividing;
    ui.set_max_width(ui.available_width().max(600.0));
    ui.label(RichText::new(SEEN_FROM_WORDS).strong());
    for line in &list.set_up {
        text(ui, line);
    }
    for fault in &list.faults {
        caution_ui(ui, view, fault);
    }
    let shop = view.workshop;
    if list.rows.iter().any(|row| row.setting.is_some()) {
        heading(ui, &shop.dividing_head.name);
        text(ui, COUNTED_FROM_ZERO);
        table_ui(ui, "crank", &crank_table(list));
    }
    if let Some(table) = &shop.rotary_table {
        heading(ui, &table.name);
        table_ui(ui, "rotary", &rotary_table(list));
    }
    if shop.mill.has_readout {
        heading(ui, "digital readout");
        text(
            ui,
            "Centre of the tool from the axis, mm; x right and y up, seen from the body side, 12 o'clock up.",
        );
        table_ui(ui, "readout", &readout_table(list));
    }
}

/// Gears, passes, times to stop, gauges.
pub fn thread_ui(ui: &mut Ui, view: &View<'_>, plan: &ShopPlan) {
    let (threading, shop) = (&plan.threading, view.workshop);
    ui.set_max_width(ui.available_width().max(600.0));
    ui.label(RichText::new(format!("Thread {}", threading.thread)).heading());
    for line in gear_words(threading, shop) {
        text(ui, &line);
    }
    text(ui, &depth_words(threading));
    table_ui(ui, "infeed", &infeed_table(threading, shop.lathe.dials));
    text(ui, THREAD_DEPTHS_ARE);
    ui.add_space(6.0);
    text(ui, &run_out_words(threading));
    if let Some(run_out) = &threading.run_out {
        table_ui(ui, "stop", &stop_table(run_out, shop));
    }
    for way in ways_out(threading, shop) {
        caution_ui(ui, view, &way);
    }
    ui.add_space(6.0);
    for line in gauge_words(threading) {
        text(ui, &line);
    }
}

fn heading(ui: &mut Ui, words: &str) {
    ui.add_space(8.0);
    ui.label(RichText::new(words).heading());
}

fn text(ui: &mut Ui, words: &str) {
    ui.add(Label::new(words).wrap());
}

/// A printed table on the screen; boxes to tick are for paper and left out.
fn table_ui(ui: &mut Ui, name: &str, table: &Table) {
    let shown = |column: &Column| !matches!(column, Column::Tick | Column::Room(..));
    Grid::new(("plan table", name))
        .striped(true)
        .spacing(egui::vec2(16.0, 4.0))
        .show(ui, |ui| {
            for column in table.columns.iter().filter(|column| shown(column)) {
                let head = match column {
                    Column::Tick => "",
                    Column::Words(head) | Column::Number(head) | Column::Room(head, _) => head,
                };
                ui.label(RichText::new(head).small().strong());
            }
            ui.end_row();
            for row in &table.rows {
                for (column, cell) in table.columns.iter().zip(row) {
                    if shown(column) {
                        ui.label(cell);
                    }
                }
                ui.end_row();
            }
        });
}
