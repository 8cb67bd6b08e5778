//! Floor `app`: what a person sees and touches.
//!
//! May use every floor. Must not work out a dimension or judge one: views read the evaluation, and change the
//! design by [`command::Command`] alone. [`files`] is the one place that touches the disk.
//!
//! - [`window`] draws pages and dialogs, gathers their wishes and does them on the [`workspace`];
//! - [`command`] lists everything that can be asked for, [`edit`] every change of the design, [`history`] takes it back;
//! - [`field`] is the one field for a number, [`canvas`] the one canvas for a drawing.

mod areas;
mod body_column;
mod canvas;
mod cell_field;
pub mod chooser;
mod clipboard;
mod clocking_rows;
pub mod command;
mod correction_note;
mod correction_panel;
mod corrections_list;
mod design_page;
mod desk;
mod dialog_log;
mod dialogs;
mod dimension_axis;
mod dimension_list;
mod disk_question;
mod drawing_page;
pub mod edit;
mod export_panel;
mod field;
pub mod file_locks;
pub mod files;
mod findings_panel;
mod finished_picture;
mod finished_readings;
mod focus_table;
mod free_number;
mod group;
pub mod history;
pub mod inspection_edit;
mod inspection_page;
pub mod inspection_print;
mod job;
mod keeping;
pub mod kept_work;
mod lens_column;
mod let_go_list;
mod lettering_paint;
mod light_plot;
mod limits_page;
mod list_editor;
mod long_work;
mod machine_rows;
mod margin_plot;
mod measure_page;
mod menu_bar;
mod messages;
mod missing_panel;
mod mount_question;
mod new_panel;
mod opener;
mod optics_page;
pub mod origin;
mod origin_editor;
mod own_commands;
pub mod own_folder;
mod own_mounts;
mod own_shop;
pub mod page;
mod palette;
mod path_panel;
mod path_words;
mod pick;
mod places;
mod plan_panel;
mod plot_grid;
pub mod print_out;
mod readings_editor;
mod recent;
pub mod recovery;
mod recovery_panel;
mod ring_column;
mod room_bar;
mod room_map;
mod room_page;
mod room_scale;
pub mod room_work;
mod row_edit;
mod row_readings_editor;
mod rows;
mod scene_paint;
mod section_panel;
mod sensitivity_list;
mod settle_panel;
mod settled_view;
mod severity_sign;
mod sharpness_plot;
mod sheet_choices;
pub mod sheet_edit;
mod shop_choices;
pub mod shop_edit;
mod shop_lists;
mod shop_plan_order;
mod shop_plan_page;
mod shop_plan_tables;
mod shop_rows;
mod sight;
mod split;
mod stack_page;
mod tabs;
mod text_field;
mod tolerance_editor;
mod tolerance_text;
mod trial_panel;
mod trial_readings;
mod unsaved_question;
mod values_panel;
mod view;
mod watching;
pub mod window;
mod working_grid;
mod working_panel;
mod workshop_page;
pub mod workspace;
mod workspace_file;

use std::path::PathBuf;

use thiserror::Error;

use crate::document::{ReadError, demo_designs};
use crate::workshop::Workshop;
use chooser::SystemChooser;
use window::Window;
use workspace::Workspace;

/// Why the window could not be opened.
#[derive(Debug, Error)]
pub enum AppError {
    /// The shipped workshop is broken.
    #[error("the shipped workshop cannot be read: {0}")]
    Workshop(#[from] ReadError),
    /// The system gives no window.
    #[error(
        "no window could be opened: {0}. The commands `check`, `draw` and `mounts` work without one"
    )]
    Window(String),
}

/// Opens the window, with a design where one is given, and returns when it is closed.
///
/// # Errors
/// [`AppError`] when the system gives no window.
pub fn run(open: Option<PathBuf>) -> Result<(), AppError> {
    let workshop = Workshop::default_set()?;
    let workspace = match demo_designs()?.into_iter().next() {
        Some(demo) => Workspace::new(demo, workshop),
        None => Workspace::empty(workshop),
    };
    let viewport = egui::ViewportBuilder::default()
        .with_title("Flangewright")
        .with_app_id("flangewright")
        .with_inner_size([1280.0, 800.0])
        .with_min_inner_size([1000.0, 640.0])
        .with_drag_and_drop(true);
    let options = eframe::NativeOptions {
        viewport,
        renderer: eframe::Renderer::Glow,
        system_font_fallback: false,
        ..eframe::NativeOptions::default()
    };
    let start = move |creation: &eframe::CreationContext<'_>| {
        let chooser = SystemChooser::of_window(creation);
        let mut window = Window::new(workspace, Box::new(chooser), &creation.egui_ctx);
        if let Some(folder) = own_folder::own_folder() {
            window.use_own_folder(folder);
        }
        if let Some(path) = &open {
            window.open(path);
        }
        let window: Box<dyn eframe::App> = Box::new(window);
        Ok(window)
    };
    // The library's error holds handles that may not leave this thread; its words may.
    eframe::run_native("flangewright", options, Box::new(start))
        .map_err(|error| AppError::Window(error.to_string()))
}
