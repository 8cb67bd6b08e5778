//! The sheet of one ring: half-section, lug pattern, main sizes, lug table, notes, title block.

use thiserror::Error;

use crate::document::{Design, Paper};
use crate::drawing::cell::CellError;
use crate::drawing::dimension::{Style, view_title};
use crate::drawing::extent::Extent;
use crate::drawing::number::DecimalMark;
use crate::drawing::ring_notes::{note_block, note_lines};
use crate::drawing::ring_plan::RingPlan;
use crate::drawing::ring_section::RingSection;
use crate::drawing::scales::{Scale, largest_scale};
use crate::drawing::sheet::{Sheet, SheetFormat, sheet};
use crate::drawing::title_block::TitleBlock;
use crate::drawing::{Annotation, Item, Role, Scene};
use crate::evaluate::Evaluation;
use crate::geometry::Point;
use crate::mount::Unit;
use crate::ring::ResolvedRing;

/// Why a drawing cannot be made.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum SheetError {
    /// The ring is not whole.
    #[error("there is no whole ring to draw: {0}")]
    NoRing(String),
    /// A text of the title block is too long.
    #[error("title block: {0}")]
    TitleBlock(#[from] CellError),
    /// The views or the lug table do not fit.
    #[error(
        "views, lug table and notes do not fit on {0} at any standard scale; take a larger sheet"
    )]
    TooLarge(&'static str),
}

/// Share of the width that the half-section gets beside the lug pattern.
const SECTION_SHARE: f64 = 0.58;
/// Width kept for the lug table and notes where they stand beside the lug pattern, mm.
const NOTES_WIDTH: f64 = 64.0;
/// Height kept for them where they stand under it, mm.
const NOTES_HEIGHT: f64 = 56.0;
/// Room for a view's title, in lettering heights.
const TITLE_ROOM: f64 = 3.0;
/// Distance between views, mm.
const BETWEEN: f64 = 6.0;

/// The drawing of a design as it prints.
///
/// # Errors
/// [`SheetError`] when the ring is not whole, a title text is too long, or nothing fits.
pub fn ring_sheet(design: &Design, evaluation: &Evaluation) -> Result<Scene, SheetError> {
    let (Some(ring), Some(_)) = (&evaluation.derivation.ring, &evaluation.parts) else {
        return Err(SheetError::NoRing(why_no_ring(evaluation)));
    };
    let format = format_of(design);
    let style = style_of(design, format);
    let maker = Maker {
        design,
        evaluation,
        ring,
        style,
    };
    // The title block names the scale, so the views come first, on the field of an unsigned sheet.
    let blank = sheet(format, &TitleBlock::default())?;
    let too_large = SheetError::TooLarge(format.words());
    let lines = note_lines(design, evaluation, ring, style.mark);
    let drawn = ways(&blank).into_iter().filter_map(|areas| {
        let (section, section_scale) = maker.section(&areas.section)?;
        let (plan, _) = maker.plan(&areas.plan)?;
        let notes = note_block(&lines, &areas.notes, style.height_mm)?;
        Some((section, section_scale, plan, notes))
    });
    // The first of equals: the full-height column leaves the notes more room.
    let best = drawn.reduce(|best, next| {
        if next.1.factor() > best.1.factor() {
            next
        } else {
            best
        }
    });
    let (section, section_scale, plan, notes) = best.ok_or(too_large)?;
    let mut whole = sheet(format, &maker.title_block(section_scale))?.scene;
    whole.extend(section);
    whole.extend(plan);
    whole.extend(notes);
    Ok(whole)
}

/// The sheet format of a design.
#[must_use]
pub const fn format_of(design: &Design) -> SheetFormat {
    match design.sheet.paper {
        Paper::A4Landscape => SheetFormat::A4Landscape,
        Paper::A3Landscape => SheetFormat::A3Landscape,
    }
}

fn style_of(design: &Design, format: SheetFormat) -> Style {
    let height_mm = match format {
        SheetFormat::A4Landscape | SheetFormat::A4Portrait => 2.5,
        SheetFormat::A3Landscape => 3.5,
    };
    let mark = if design.sheet.decimal_comma {
        DecimalMark::Comma
    } else {
        DecimalMark::Point
    };
    Style {
        height_mm,
        mark,
        role: Role::Dimension,
    }
}

fn why_no_ring(evaluation: &Evaluation) -> String {
    if let Some(refusal) = &evaluation.derivation.refusal {
        return refusal.reason.clone();
    }
    if let Some(fault) = &evaluation.shape_fault {
        return fault.clone();
    }
    let missing: Vec<String> = evaluation
        .derivation
        .missing
        .iter()
        .map(|field| field.long_label())
        .collect();
    format!("measure {}", missing.join(", "))
}

/// Where the views go.
struct Areas {
    section: Extent,
    plan: Extent,
    notes: Extent,
}

/// Two ways to use a sheet: the half-section in the column left of the title block, full height, for thin rings;
/// or beside the lug pattern above the title block, with the notes left of it, for tall ones.
fn ways(blank: &Sheet) -> Vec<Areas> {
    let field = blank.field;
    let right = Extent {
        left: blank.title_block.left,
        ..field
    };
    let (plan, notes) = if right.height() > right.width() {
        let split = right.bottom + NOTES_HEIGHT;
        (
            Extent {
                bottom: split,
                ..right
            },
            Extent {
                top: split - BETWEEN,
                ..right
            },
        )
    } else {
        let split = right.right - NOTES_WIDTH;
        (
            Extent {
                right: split - BETWEEN,
                ..right
            },
            Extent {
                left: split,
                ..right
            },
        )
    };
    let mut ways = Vec::new();
    if let Some(beside) = blank.beside {
        let section = Extent {
            right: blank.title_block.left - BETWEEN,
            bottom: beside.bottom,
            ..field
        };
        ways.push(Areas {
            section,
            plan,
            notes,
        });
        let split = field.left + SECTION_SHARE * field.width();
        let section = Extent {
            right: split - BETWEEN / 2.0,
            ..field
        };
        ways.push(Areas {
            section,
            plan: Extent {
                left: split + BETWEEN / 2.0,
                ..field
            },
            notes: beside,
        });
    }
    ways
}

struct Maker<'a> {
    design: &'a Design,
    evaluation: &'a Evaluation,
    ring: &'a ResolvedRing,
    style: Style,
}

/// Moves a finished view into the middle of an area; its title stands above it.
fn centred(view: Annotation, title: &str, area: &Extent, style: &Style) -> Option<Scene> {
    let mut scene = Scene::default();
    scene.extend(view.items);
    let bounds = scene.bounds()?;
    let top = area.top - TITLE_ROOM * style.height_mm;
    if bounds.width() > area.width() || bounds.height() > top - area.bottom {
        return None;
    }
    let free = Extent { top, ..*area };
    let (from, to) = (bounds.centre(), free.centre());
    let mut placed = Scene::default();
    placed.place(
        &scene,
        1.0,
        Point {
            x: to.x - from.x,
            y: to.y - from.y,
        },
    );
    let middle = Point {
        x: to.x,
        y: area.top - 2.0 * style.height_mm,
    };
    placed.extend(view_title(title, middle, style).items);
    Some(placed)
}

impl Maker<'_> {
    /// The dimensioned half-section at the largest standard scale that fits.
    fn section(&self, area: &Extent) -> Option<(Vec<Item>, Scale)> {
        self.view(area, "A-A", |factor| {
            RingSection {
                design: self.design,
                evaluation: self.evaluation,
                ring: self.ring,
                style: self.style,
                factor,
            }
            .drawn()
        })
    }

    /// The lug pattern from the body side, where the lugs are milled.
    fn plan(&self, area: &Extent) -> Option<(Vec<Item>, Scale)> {
        self.view(area, "from the body side", |factor| {
            RingPlan {
                design: self.design,
                evaluation: self.evaluation,
                ring: self.ring,
                style: self.style,
                factor,
            }
            .drawn()
        })
    }

    /// A view under its title at the largest standard scale that fits.
    fn view(
        &self,
        area: &Extent,
        title: &str,
        drawn: impl Fn(f64) -> Annotation,
    ) -> Option<(Vec<Item>, Scale)> {
        let mut best = None;
        largest_scale(|scale| {
            let title = format!("{title} ({scale})");
            best = centred(drawn(scale.factor()), &title, area, &self.style)
                .map(|scene| (scene.items, scale));
            best.is_some()
        })?;
        best
    }

    fn title_block(&self, scale: Scale) -> TitleBlock {
        let sheet = &self.design.sheet;
        let mass = self
            .evaluation
            .solid
            .map_or_else(String::new, |solid| Unit::G.show(solid.mass_g));
        TitleBlock {
            owner: sheet.owner.clone(),
            identification: sheet.number.clone(),
            issued: sheet.date.clone(),
            sheet: "1/1".to_owned(),
            title: self.design.name.clone(),
            approved_by: sheet.approved.clone(),
            created_by: sheet.creator.clone(),
            document_type: "Part drawing".to_owned(),
            material: self.design.ring.material.clone(),
            finish: self.finish(),
            supplement: format!("{} on {}", self.design.lens.name, self.design.body.name),
            mass,
            scale: scale.to_string(),
            general_tolerances: "ISO 2768-m".to_owned(),
            surface: "Ra 3.2".to_owned(),
            outside_edges: "−0.2".to_owned(),
            inside_edges: "+0.2".to_owned(),
            ..TitleBlock::default()
        }
    }

    fn finish(&self) -> String {
        let finish = &self.design.ring.finish;
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
}
