//! What the title block of a ring's sheet says.

use crate::document::Design;
use crate::drawing::number::{DecimalMark, plain};
use crate::drawing::scales::Scale;
use crate::drawing::title_block::TitleBlock;
use crate::evaluate::Evaluation;
use crate::mount::Unit;

/// General roughness, um (common practice, no source).
const GENERAL_RA_UM: f64 = 3.2;
/// Least and most that edges may be off, mm (common practice, no source).
const EDGE_MM: f64 = 0.2;

/// The title block of a design, filled in.
#[must_use]
pub fn title_of(design: &Design, evaluation: &Evaluation, scale: Scale) -> TitleBlock {
    let sheet = &design.sheet;
    let mark = if sheet.decimal_comma {
        DecimalMark::Comma
    } else {
        DecimalMark::Point
    };
    let number = |value: f64| plain(value, 2, mark);
    let or = |own: &str, other: String| {
        if own.trim().is_empty() {
            other
        } else {
            own.to_owned()
        }
    };
    TitleBlock {
        owner: sheet.owner.clone(),
        identification: sheet.number.clone(),
        issued: sheet.date.clone(),
        sheet: "1/1".to_owned(),
        title: or(&sheet.title, design.name.clone()),
        approved_by: sheet.approved.clone(),
        created_by: sheet.creator.clone(),
        document_type: "Part drawing".to_owned(),
        supplement: or(
            &sheet.supplement,
            format!("{} on {}", design.lens.name, design.body.name),
        ),
        revision: sheet.revision.clone(),
        status: sheet.status.clone(),
        material: design.ring.material.clone(),
        finish: finish(design),
        mass: evaluation
            .solid
            .map_or_else(String::new, |solid| Unit::G.show(solid.mass_g)),
        scale: scale.to_string(),
        general_tolerances: "ISO 2768-m".to_owned(),
        surface: format!("Ra {}", number(GENERAL_RA_UM)),
        outside_edges: format!("\u{2212}{}", number(EDGE_MM)),
        inside_edges: format!("+{}", number(EDGE_MM)),
        projection: sheet.projection,
    }
}

fn finish(design: &Design) -> String {
    let finish = &design.ring.finish;
    let mut words = Vec::new();
    if finish.build_up_mm > 0.0 {
        words.push(format!(
            "coating {} a face",
            Unit::Mm.show(finish.build_up_mm)
        ));
        words.push(
            if finish.faces_masked {
                "seat and flange masked"
            } else {
                "seat and flange coated"
            }
            .to_owned(),
        );
    }
    if finish.inside_blackened {
        words.push("inside blackened".to_owned());
    }
    if words.is_empty() {
        "bare".to_owned()
    } else {
        words.join(", ")
    }
}
