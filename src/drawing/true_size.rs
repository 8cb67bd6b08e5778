//! What a DXF file shows: the views at 1:1, to take lengths from, and the sheet as it prints beside them.
//!
//! The plan from the body side has its centre in the origin. Over it stands the half-section, under it the plan from
//! the lens side. The sheet is to the right; its views have the scale that their titles say.

use crate::document::Design;
use crate::drawing::dimension::{Style, view_title};
use crate::drawing::number::DecimalMark;
use crate::drawing::placement::Placement;
use crate::drawing::plan_view::{PlanOptions, plan_view};
use crate::drawing::section_view::{SectionOptions, section_view};
use crate::drawing::{Role, Scene};
use crate::evaluate::Evaluation;
use crate::geometry::{Point, Side};

/// Room between views, mm.
const BETWEEN: f64 = 20.0;
/// Room from a view up to the baseline of its title, mm.
const TITLE_ROOM: f64 = 6.0;
/// Distance of the section's hatch lines, mm.
const HATCH: f64 = 1.8;

/// How far the axis runs past the section, mm.
const AXIS_OVERRUN: f64 = 3.0;

const STYLE: Style = Style {
    height_mm: 3.5,
    mark: DecimalMark::Point,
    role: Role::Annotation,
};

/// The views at true size with the finished sheet beside them.
#[must_use]
pub fn true_size(design: &Design, evaluation: &Evaluation, sheet: &Scene) -> Scene {
    let plan = |side| {
        let options = PlanOptions {
            side,
            body: false,
            entry: false,
            cut_deg: None,
        };
        plan_view(design, evaluation, &options)
    };
    let section = section_view(
        design,
        evaluation,
        &SectionOptions {
            angle_deg: design.sheet.section_angle_deg,
            partners: false,
            edges_behind: true,
            // At true size the thread is drawn where it is.
            least_thread_gap_mm: 0.0,
            hatch_spacing_mm: HATCH,
            axis_overrun_mm: AXIS_OVERRUN,
        },
    );
    let behind = titled(plan(Side::Body), "From the body side, true size");
    let front = titled(plan(Side::Lens), "From the lens side, true size");
    let section = titled(section, "Half-section, true size, lens to the left");
    let mut whole = Scene::view();
    whole.extend(behind.items);
    over(&mut whole, &section);
    under(&mut whole, &front);
    beside(&mut whole, sheet);
    whole
}

fn titled(mut view: Scene, title: &str) -> Scene {
    if let Some(bounds) = view.bounds() {
        let at = Point {
            x: bounds.centre().x,
            y: bounds.top + TITLE_ROOM,
        };
        view.extend(view_title(title, at, &STYLE).items);
    }
    view
}

/// Sets a view over all there is, middle over the origin.
fn over(whole: &mut Scene, view: &Scene) {
    if let (Some(all), Some(own)) = (whole.bounds(), view.bounds()) {
        whole.place(
            view,
            1.0,
            Point {
                x: -own.centre().x,
                y: all.top + BETWEEN - own.bottom,
            },
        );
    }
}

/// Sets a view under all there is.
fn under(whole: &mut Scene, view: &Scene) {
    if let (Some(all), Some(own)) = (whole.bounds(), view.bounds()) {
        whole.place(
            view,
            1.0,
            Point {
                x: 0.0,
                y: all.bottom - BETWEEN - own.top,
            },
        );
    }
}

/// Sets a sheet to the right of all there is.
fn beside(whole: &mut Scene, sheet: &Scene) {
    if let (Some(all), Some(own)) = (whole.bounds(), sheet.frame()) {
        let at = Placement::translation(all.right + BETWEEN - own.left, -own.height() / 2.0);
        whole.extend(sheet.transformed(&at).items);
    }
}
