//! The lists on the page Workshop: end mills, lathe tools, instruments, materials, each row with its sizes.

use egui::{Id, RichText, Ui};

use super::cell_field::{Cell, box_ui};
use super::field::{refusal_ui, typed_ui};
use super::shop_edit::ShopEdit;
use super::shop_rows::{salt, whole};
use super::text_field::{choice_ui, text_ui};
use super::view::{Typed, View};
use crate::mount::Unit;
use crate::workshop::{
    Cutter, CuttingGroup, Instrument, Material, ToolDuty, TurningTool, Workshop,
};

/// Width of a name, points.
const NAME_WIDTH: f32 = 150.0;
/// Width of a number, points.
const BOX_WIDTH: f32 = 56.0;

/// A number of a row.
struct Column<T> {
    word: &'static str,
    unit: Unit,
    get: fn(&T) -> f64,
    set: fn(&mut T, f64),
}

impl<T> Column<T> {
    /// The word over the column, with the unit.
    fn head(&self) -> String {
        match self.unit.sign() {
            "" => self.word.to_owned(),
            sign => format!("{}, {sign}", self.word),
        }
    }
}

/// How the rows of one list are shown.
struct List<T: 'static> {
    /// What one row is called.
    one: &'static str,
    columns: &'static [Column<T>],
    rows: fn(&Workshop) -> &Vec<T>,
    rows_mut: fn(&mut Workshop) -> &mut Vec<T>,
    name: fn(&T) -> &String,
    name_mut: fn(&mut T) -> &mut String,
    fresh: fn() -> T,
}

const CUTTERS: List<Cutter> = List {
    one: "end mill",
    columns: &[
        Column {
            word: "Ø",
            unit: Unit::Mm,
            get: |row| row.diameter_mm,
            set: |row, value| row.diameter_mm = value,
        },
        Column {
            word: "edges",
            unit: Unit::One,
            get: |row| f64::from(row.flutes),
            set: |row, value| row.flutes = whole(value),
        },
        Column {
            word: "cuts to",
            unit: Unit::Mm,
            get: |row| row.cutting_length_mm,
            set: |row, value| row.cutting_length_mm = value,
        },
    ],
    rows: |shop| &shop.cutters,
    rows_mut: |shop| &mut shop.cutters,
    name: |row| &row.name,
    name_mut: |row| &mut row.name,
    fresh: || Cutter {
        name: "end mill".to_owned(),
        diameter_mm: 4.0,
        flutes: 3,
        cutting_length_mm: 10.0,
    },
};

const TOOLS: List<TurningTool> = List {
    one: "lathe tool",
    columns: &[
        Column {
            word: "wide",
            unit: Unit::Mm,
            get: |row| row.width_mm,
            set: |row, value| row.width_mm = value,
        },
        Column {
            word: "reach",
            unit: Unit::Mm,
            get: |row| row.reach_mm,
            set: |row, value| row.reach_mm = value,
        },
        Column {
            word: "least bore",
            unit: Unit::Mm,
            get: |row| row.least_bore_mm,
            set: |row, value| row.least_bore_mm = value,
        },
    ],
    rows: |shop| &shop.turning_tools,
    rows_mut: |shop| &mut shop.turning_tools,
    name: |row| &row.name,
    name_mut: |row| &mut row.name,
    fresh: || TurningTool {
        name: "tool".to_owned(),
        width_mm: 1.0,
        reach_mm: 3.0,
        least_bore_mm: 0.0,
    },
};

const INSTRUMENTS: List<Instrument> = List {
    one: "instrument",
    columns: &[
        Column {
            word: "error ±",
            unit: Unit::Mm,
            get: |row| row.permissible_error_mm,
            set: |row, value| row.permissible_error_mm = value,
        },
        Column {
            word: "step",
            unit: Unit::Mm,
            get: |row| row.step_mm,
            set: |row, value| row.step_mm = value,
        },
    ],
    rows: |shop| &shop.instruments,
    rows_mut: |shop| &mut shop.instruments,
    name: |row| &row.name,
    name_mut: |row| &mut row.name,
    fresh: || Instrument {
        name: "instrument".to_owned(),
        permissible_error_mm: 0.01,
        step_mm: 0.01,
    },
};

const MATERIALS: List<Material> = List {
    one: "material",
    columns: &[
        Column {
            word: "kg/m³",
            unit: Unit::One,
            get: |row| row.density_kg_m3,
            set: |row, value| row.density_kg_m3 = value,
        },
        Column {
            word: "E, GPa",
            unit: Unit::One,
            get: |row| row.youngs_modulus_gpa,
            set: |row, value| row.youngs_modulus_gpa = value,
        },
        Column {
            word: "yield",
            unit: Unit::Mpa,
            get: |row| row.yield_mpa,
            set: |row, value| row.yield_mpa = value,
        },
        Column {
            word: "1e-6/K",
            unit: Unit::One,
            get: |row| row.expansion_um_m_k,
            set: |row, value| row.expansion_um_m_k = value,
        },
        Column {
            word: "price/kg",
            unit: Unit::One,
            get: |row| row.price_per_kg,
            set: |row, value| row.price_per_kg = value,
        },
    ],
    rows: |shop| &shop.materials,
    rows_mut: |shop| &mut shop.materials,
    name: |row| &row.name,
    name_mut: |row| &mut row.name,
    fresh: || Material {
        name: "material".to_owned(),
        density_kg_m3: 2700.0,
        youngs_modulus_gpa: 70.0,
        yield_mpa: 100.0,
        expansion_um_m_k: 23.0,
        source: "entered by hand".to_owned(),
        cutting: CuttingGroup::Unknown,
        price_per_kg: 0.0,
    },
};

/// The end mills.
pub fn cutters_ui(ui: &mut Ui, view: &mut View<'_>) {
    weak(
        ui,
        "Diameter as it cuts, run-out counted: mill a trial slot and measure it.",
    );
    list_ui(ui, view, &CUTTERS, |_| "");
}

/// The lathe tools.
pub fn tools_ui(ui: &mut Ui, view: &mut View<'_>) {
    weak(
        ui,
        "A least bore of 0 is an outside tool. \"thread\" or \"groov\" in the name of an inside tool says what it cuts, \
         \"part\" in that of an outside one that it parts off.",
    );
    list_ui(ui, view, &TOOLS, |tool| match tool.duty() {
        ToolDuty::OutsideGroove => "grooves outside",
        ToolDuty::Boring => "bores",
        ToolDuty::InsideGroove => "grooves inside",
        ToolDuty::InsideThread => "threads inside",
    });
}

/// The measuring instruments.
pub fn instruments_ui(ui: &mut Ui, view: &mut View<'_>) {
    weak(
        ui,
        "The permissible error is what its maker allows, either way.",
    );
    list_ui(ui, view, &INSTRUMENTS, |_| "");
}

/// The materials.
pub fn materials_ui(ui: &mut Ui, view: &mut View<'_>) {
    weak(ui, "The price is in your own money; 0 for not known.");
    list_ui(ui, view, &MATERIALS, |_| "");
    for (place, stuff) in view.workshop.materials.iter().enumerate() {
        let groups = CuttingGroup::ALL.map(|group| (group, group.words().to_owned()));
        let label = format!("{} cuts like", stuff.name);
        let hover = "speeds and feeds of the plan follow from it";
        let id = salt("material").with(("cutting", place));
        if let Some(group) = choice_ui(ui, id, false, &label, &stuff.cutting, &groups, hover) {
            let edit = ShopEdit::of(view.workshop, |shop| {
                if let Some(row) = shop.materials.get_mut(place) {
                    row.cutting = group;
                }
            });
            view.wish_from(id, edit);
        }
        source_ui(ui, view, &stuff.source, place);
    }
}

/// Where the numbers of a material come from.
fn source_ui(ui: &mut Ui, view: &mut View<'_>, source: &str, place: usize) {
    let id = salt("material").with(("source", place));
    let label = format!("Source of material {}", place + 1);
    if let Some(text) = text_ui(ui, view, id, &label, source, "where its numbers come from") {
        let edit = ShopEdit::of(view.workshop, |shop| {
            if let Some(row) = shop.materials.get_mut(place) {
                row.source = text;
            }
        });
        view.wish_from(id, edit);
    }
}

fn weak(ui: &mut Ui, text: &str) {
    ui.add(egui::Label::new(RichText::new(text).small().weak()).wrap());
}

/// A table of rows, with a box in every cell, a word on each row, a button to remove it, and one to add a row.
fn list_ui<T: Clone>(
    ui: &mut Ui,
    view: &mut View<'_>,
    list: &List<T>,
    word_of: impl Fn(&T) -> &'static str,
) {
    let rows = (list.rows)(view.workshop);
    egui::Grid::new(("workshop", list.one))
        .spacing(egui::vec2(5.0, 3.0))
        .show(ui, |ui| {
            ui.label("");
            for column in list.columns {
                ui.label(RichText::new(column.head()).small().weak());
            }
            ui.end_row();
            for (place, row) in rows.iter().enumerate() {
                row_ui(ui, view, list, row, place);
                ui.label(RichText::new(word_of(row)).small().weak());
                ui.end_row();
            }
        });
    for place in 0..rows.len() {
        let id = salt(list.one).with(place);
        refusal_ui(ui, view, id);
        for index in 0..list.columns.len() {
            refusal_ui(ui, view, id.with(index));
        }
    }
    let add = salt(list.one).with("add");
    if ui.button(format!("Add {}", list.one)).clicked() {
        let edit = ShopEdit::of(view.workshop, |shop| {
            let mut fresh = (list.fresh)();
            *(list.name_mut)(&mut fresh) = free_name(list, (list.rows)(shop));
            (list.rows_mut)(shop).push(fresh);
        });
        view.wish_from(add, edit);
    }
    refusal_ui(ui, view, add);
}

/// A name that no row has yet.
fn free_name<T>(list: &List<T>, rows: &[T]) -> String {
    (rows.len() + 1..=2 * rows.len() + 1)
        .map(|number| format!("{} {number}", list.one))
        .find(|name| rows.iter().all(|row| (list.name)(row) != name))
        .unwrap_or_else(|| list.one.to_owned())
}

fn row_ui<T: Clone>(ui: &mut Ui, view: &mut View<'_>, list: &List<T>, row: &T, place: usize) {
    let id = salt(list.one).with(place);
    let name = (list.name)(row);
    name_ui(ui, view, list, id, name, place);
    for (index, column) in list.columns.iter().enumerate() {
        let of = format!("{name}, {}", column.word);
        let cell = Cell {
            id: id.with(index),
            word: column.word,
            name: &of,
            value: (column.get)(row),
            unit: column.unit,
        };
        let workshop = view.workshop;
        sized_ui(ui, BOX_WIDTH, |ui| {
            box_ui(ui, view, cell, BOX_WIDTH - 8.0, |value| {
                ShopEdit::of(workshop, |shop| {
                    if let Some(row) = (list.rows_mut)(shop).get_mut(place) {
                        (column.set)(row, value);
                    }
                })
            });
        });
    }
    let words = format!("remove {name}");
    let remove = ui
        .small_button("\u{d7}")
        .accessible_name(&words)
        .on_hover_text(words);
    if remove.clicked() {
        let edit = ShopEdit::of(view.workshop, |shop| {
            let rows = (list.rows_mut)(shop);
            if place < rows.len() {
                rows.remove(place);
            }
        });
        view.wish_from(id, edit);
    }
}

/// A cell of the table: without a width of its own a box shrinks with the column.
fn sized_ui<R>(ui: &mut Ui, width: f32, add: impl FnOnce(&mut Ui) -> R) -> R {
    let layout = egui::Layout::left_to_right(egui::Align::Center);
    ui.allocate_ui_with_layout(egui::vec2(width, 20.0), layout, |ui| {
        ui.set_min_width(width);
        add(ui)
    })
    .inner
}

fn name_ui<T>(ui: &mut Ui, view: &mut View<'_>, list: &List<T>, id: Id, name: &str, place: usize) {
    let (response, typed) = sized_ui(ui, NAME_WIDTH, |ui| {
        typed_ui(ui, view, id.with("name"), name, NAME_WIDTH - 8.0, "name")
    });
    let response = response.accessible_name(format!("{} {}, name", list.one, place + 1));
    response.on_hover_text(name);
    if let Typed::Finished(text) = typed {
        let edit = ShopEdit::of(view.workshop, |shop| {
            if let Some(row) = (list.rows_mut)(shop).get_mut(place) {
                text.trim().clone_into((list.name_mut)(row));
            }
        });
        view.wish_from(id, edit);
    }
}
