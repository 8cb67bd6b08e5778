//! Lists of rows of numbers: barrel steps, ears, lugs, free depth, obstacles.

use egui::{Id, Ui};

use super::cell_field::{Cell, cell_ui};
use super::edit::Edit;
use super::field::refusal_ui;
use super::text_field::text_ui;
use super::view::View;
use crate::mount::{BarrelStep, FreeDepth, Obstacle, Sector, Unit};

/// A number of a row.
pub struct Column<T> {
    word: &'static str,
    unit: Unit,
    get: fn(&T) -> f64,
    set: fn(&mut T, f64),
}

/// How the rows of one kind of list are shown.
pub struct Rows<T: 'static> {
    /// What one row is called.
    pub one: &'static str,
    columns: &'static [Column<T>],
    name: Option<Name<T>>,
    /// What a new row begins with, after the rows there are.
    fresh: fn(&[T]) -> T,
}

struct Name<T> {
    get: fn(&T) -> &String,
    set: fn(&mut T, String),
}

/// Ears and lugs.
pub const SECTORS: [Column<Sector>; 2] = [
    Column {
        word: "from",
        unit: Unit::Deg,
        get: |row| row.start_deg,
        set: |row, value| row.start_deg = value,
    },
    Column {
        word: "over",
        unit: Unit::Deg,
        get: |row| row.extent_deg,
        set: |row, value| row.extent_deg = value,
    },
];

/// A new sector stands a little behind the last one.
fn next_sector(rows: &[Sector]) -> Sector {
    rows.last().map_or(
        Sector {
            start_deg: 0.0,
            extent_deg: 30.0,
        },
        |last| Sector {
            start_deg: (last.end_deg() + 30.0).rem_euclid(360.0),
            extent_deg: 30.0,
        },
    )
}

/// The ears.
pub const EARS: Rows<Sector> = Rows {
    one: "ear",
    columns: &SECTORS,
    name: None,
    fresh: next_sector,
};
/// The lugs.
pub const LUGS: Rows<Sector> = Rows {
    one: "lug",
    columns: &SECTORS,
    name: None,
    fresh: next_sector,
};

/// The steps of a rear barrel.
pub const STEPS: Rows<BarrelStep> = Rows {
    one: "step",
    columns: &[
        Column {
            word: "to depth",
            unit: Unit::Mm,
            get: |row| row.depth_mm,
            set: |row, value| row.depth_mm = value,
        },
        Column {
            word: "Ø",
            unit: Unit::Mm,
            get: |row| row.diameter_mm,
            set: |row, value| row.diameter_mm = value,
        },
    ],
    name: None,
    fresh: |rows| {
        rows.last().map_or(
            BarrelStep {
                depth_mm: 1.0,
                diameter_mm: 30.0,
            },
            |last| BarrelStep {
                depth_mm: last.depth_mm + 1.0,
                diameter_mm: last.diameter_mm,
            },
        )
    },
};

/// The free depth behind the flange.
pub const DEPTHS: Rows<FreeDepth> = Rows {
    one: "point",
    columns: &[
        Column {
            word: "at radius",
            unit: Unit::Mm,
            get: |row| row.radius_mm,
            set: |row, value| row.radius_mm = value,
        },
        Column {
            word: "depth",
            unit: Unit::Mm,
            get: |row| row.depth_mm,
            set: |row, value| row.depth_mm = value,
        },
    ],
    name: None,
    fresh: |rows| {
        rows.last().map_or(
            FreeDepth {
                radius_mm: 0.0,
                depth_mm: 10.0,
            },
            |last| FreeDepth {
                radius_mm: last.radius_mm + 5.0,
                depth_mm: last.depth_mm,
            },
        )
    },
};

/// The obstacles near the mount.
pub const OBSTACLES: Rows<Obstacle> = Rows {
    one: "obstacle",
    columns: &[
        Column {
            word: "from",
            unit: Unit::Deg,
            get: |row| row.sector.start_deg,
            set: |row, value| row.sector.start_deg = value,
        },
        Column {
            word: "over",
            unit: Unit::Deg,
            get: |row| row.sector.extent_deg,
            set: |row, value| row.sector.extent_deg = value,
        },
        Column {
            word: "radius",
            unit: Unit::Mm,
            get: |row| row.inner_radius_mm,
            set: |row, value| row.inner_radius_mm = value,
        },
        Column {
            word: "to",
            unit: Unit::Mm,
            get: |row| row.outer_radius_mm,
            set: |row, value| row.outer_radius_mm = value,
        },
        Column {
            word: "z",
            unit: Unit::Mm,
            get: |row| row.from_z_mm,
            set: |row, value| row.from_z_mm = value,
        },
        Column {
            word: "to",
            unit: Unit::Mm,
            get: |row| row.to_z_mm,
            set: |row, value| row.to_z_mm = value,
        },
    ],
    name: Some(Name {
        get: |row| &row.name,
        set: |row, name| row.name = name,
    }),
    fresh: |_| Obstacle {
        name: "obstacle".to_owned(),
        sector: Sector {
            start_deg: 0.0,
            extent_deg: 20.0,
        },
        inner_radius_mm: 35.0,
        outer_radius_mm: 40.0,
        from_z_mm: -5.0,
        to_z_mm: 0.0,
    },
};

/// The rows with a button to remove each, and one to add a row.
pub fn list_ui<T: Clone>(
    ui: &mut Ui,
    view: &mut View<'_>,
    salt: Id,
    title: &str,
    shape: &Rows<T>,
    rows: &[T],
    edit: &dyn Fn(Vec<T>) -> Edit,
) {
    for place in 0..rows.len() {
        row_ui(ui, view, salt.with(place), title, shape, rows, place, edit);
    }
    let add = salt.with("add");
    if ui.button(format!("Add {}", shape.one)).clicked() {
        let mut more = rows.to_vec();
        more.push((shape.fresh)(rows));
        view.wish_from(add, edit(more));
    }
    refusal_ui(ui, view, add);
}

#[expect(
    clippy::too_many_arguments,
    reason = "one row of the list above, with everything the list was given"
)]
fn row_ui<T: Clone>(
    ui: &mut Ui,
    view: &mut View<'_>,
    salt: Id,
    title: &str,
    shape: &Rows<T>,
    rows: &[T],
    place: usize,
    edit: &dyn Fn(Vec<T>) -> Edit,
) {
    let Some(row) = rows.get(place) else { return };
    let changed = |change: &dyn Fn(&mut T)| {
        let mut rows = rows.to_vec();
        if let Some(row) = rows.get_mut(place) {
            change(row);
        }
        edit(rows)
    };
    let number = place + 1;
    if let Some(name) = &shape.name
        && let Some(text) = text_ui(
            ui,
            view,
            salt.with("name"),
            &format!("{number}"),
            (name.get)(row),
            "name",
        )
    {
        view.wish_from(salt, changed(&|row| (name.set)(row, text.clone())));
    }
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing.x = 3.0;
        if shape.name.is_none() {
            ui.label(format!("{number}"));
        }
        for (index, column) in shape.columns.iter().enumerate() {
            let cell_name = format!("{title}, {} {number}, {} ({index})", shape.one, column.word);
            let cell = Cell {
                id: salt.with(index),
                word: column.word,
                name: &cell_name,
                value: (column.get)(row),
                unit: column.unit,
            };
            cell_ui(ui, view, cell, |value| {
                changed(&|row| (column.set)(row, value))
            });
        }
        let name = format!("remove {} {number}", shape.one);
        let remove = ui
            .small_button("×")
            .accessible_name(&name)
            .on_hover_text(name);
        if remove.clicked() {
            let mut fewer = rows.to_vec();
            fewer.remove(place);
            view.wish_from(salt, edit(fewer));
        }
    });
    for index in 0..shape.columns.len() {
        refusal_ui(ui, view, salt.with(index));
    }
    refusal_ui(ui, view, salt);
}
