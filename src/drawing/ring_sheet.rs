//! The sheet of one ring: half-section, plans, details, notes, title block, in the places that they find.

use thiserror::Error;

use crate::document::{Design, DimensionId, Paper};
use crate::drawing::cell::CellError;
use crate::drawing::dimension::Style;
use crate::drawing::number::DecimalMark;
use crate::drawing::ring_title::title_of;
use crate::drawing::scales::Scale;
use crate::drawing::sheet::{SheetFormat, sheet};
use crate::drawing::sheet_layout::Room;
use crate::drawing::sheet_views::{Arrangement, Views};
use crate::drawing::title_block::TitleBlock;
use crate::drawing::{Extent, Role, Scene, TextBox};
use crate::evaluate::Evaluation;

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
        "views, lug table and notes do not fit on {0} at any standard scale; take a larger sheet or fewer views"
    )]
    TooLarge(&'static str),
    /// They do not fit at the scale asked for.
    #[error(
        "views, lug table and notes do not fit on {paper} at {scale}; take a smaller scale, a larger sheet or fewer views"
    )]
    ScaleTooLarge {
        /// The sheet.
        paper: &'static str,
        /// The scale.
        scale: Scale,
    },
}

/// A sheet, and what on it can be taken hold of.
#[derive(Clone, Debug, PartialEq)]
pub struct RingSheet {
    /// The sheet as it prints.
    pub scene: Scene,
    /// Its dimensions, call-outs and signs.
    pub dimensions: Vec<SheetDimension>,
    /// Scale of the half-section.
    pub scale: Scale,
    /// Views that were wanted where there is room, and had none.
    pub left_out: Vec<&'static str>,
}

/// A dimension, call-out or sign on the sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct SheetDimension {
    /// Which one.
    pub id: DimensionId,
    /// The picking number of what is drawn of it.
    pub tag: u32,
    /// What its lettering covers, mm on the sheet.
    pub boxes: Vec<TextBox>,
}

/// Picking number of the first dimension of a sheet; the others follow.
pub const DIMENSION_TAG: u32 = 10_000;

/// The drawing of a design as it prints.
///
/// # Errors
/// [`SheetError`] when the ring is not whole, a title text is too long, or nothing fits.
pub fn ring_sheet(design: &Design, evaluation: &Evaluation) -> Result<Scene, SheetError> {
    Ok(laid_out(design, evaluation)?.scene)
}

/// The drawing of a design with the places of its dimensions.
///
/// # Errors
/// As [`ring_sheet`].
pub fn laid_out(design: &Design, evaluation: &Evaluation) -> Result<RingSheet, SheetError> {
    lay_out(design, evaluation)?.drawn(design, evaluation)
}

/// Views, details and notes in their places. They stay there when dimensions are moved by hand.
#[derive(Clone, Debug)]
pub struct Laid {
    design: Design,
    arrangement: Arrangement,
    style: Style,
}

/// Finds the places of views, details and notes.
///
/// # Errors
/// [`SheetError`] when the ring is not whole or nothing fits.
pub fn lay_out(design: &Design, evaluation: &Evaluation) -> Result<Laid, SheetError> {
    let (Some(ring), Some(_)) = (&evaluation.derivation.ring, &evaluation.parts) else {
        return Err(SheetError::NoRing(why_no_ring(evaluation)));
    };
    let format = format_of(design);
    // The title block names the scale, so the views come first, on the room of an unsigned sheet.
    let room = Room::of(&sheet(format, &TitleBlock::default())?);
    let with_lettering = |height_mm: &f64| {
        let style = style_of(design, *height_mm);
        let views = Views {
            design,
            evaluation,
            ring,
            style,
        };
        Some((views.arranged(&room)?, style))
    };
    let arranged = lettering_heights_mm(format).iter().find_map(with_lettering);
    let (arrangement, style) = arranged.ok_or_else(|| {
        let paper = format.words();
        match design.sheet.scale {
            Some(scale) => SheetError::ScaleTooLarge { paper, scale },
            None => SheetError::TooLarge(paper),
        }
    })?;
    Ok(Laid {
        design: at_rest(design),
        arrangement,
        style,
    })
}

impl Laid {
    /// Whether everything stands in the same places for another design: whether they differ at most in what was moved.
    #[must_use]
    pub fn holds_for(&self, design: &Design) -> bool {
        self.design == at_rest(design)
    }

    /// The sheet, with the dimensions where the user has them.
    ///
    /// # Errors
    /// When a text of the title block is too long.
    pub fn drawn(&self, design: &Design, evaluation: &Evaluation) -> Result<RingSheet, SheetError> {
        let block = title_of(design, evaluation, self.arrangement.scale);
        let scene = sheet(format_of(design), &block)?.scene;
        Ok(put_together(design, scene, &self.arrangement, &self.style))
    }
}

/// A design with every dimension of its sheet in the place that the program gives it.
fn at_rest(design: &Design) -> Design {
    let mut design = design.clone();
    for own in &mut design.sheet.overrides {
        own.moved_mm = (0.0, 0.0);
    }
    design.sheet.tidy();
    design
}

/// Everything on the sheet, dimensions where the user has them.
fn put_together(
    design: &Design,
    mut scene: Scene,
    arrangement: &Arrangement,
    style: &Style,
) -> RingSheet {
    let mut dimensions = Vec::new();
    for placed in &arrangement.views {
        let (right, up) = placed.moved_mm;
        scene.extend(placed.view.part.clone().moved(right, up).items);
        scene.extend(placed.title.items.clone());
        for (tag, (id, drawn)) in (DIMENSION_TAG + count(dimensions.len())..)
            .zip(placed.view.by_hand(&design.sheet, style))
        {
            let drawn = drawn.moved(right, up).tagged(tag);
            dimensions.push(SheetDimension {
                id,
                tag,
                boxes: drawn.boxes,
            });
            scene.extend(drawn.items);
        }
    }
    scene.extend(arrangement.notes.iter().cloned());
    RingSheet {
        scene,
        dimensions,
        scale: arrangement.scale,
        left_out: arrangement.left_out.clone(),
    }
}

fn count(length: usize) -> u32 {
    // A sheet has a few dozen dimensions.
    u32::try_from(length).unwrap_or(0)
}

impl SheetDimension {
    /// The rectangle round its lettering, mm on the sheet.
    #[must_use]
    pub fn extent(&self) -> Option<Extent> {
        self.boxes.iter().map(TextBox::extent).reduce(Extent::union)
    }
}

/// The sheet format of a design.
#[must_use]
pub const fn format_of(design: &Design) -> SheetFormat {
    match design.sheet.paper {
        Paper::A4Landscape => SheetFormat::A4Landscape,
        Paper::A3Landscape => SheetFormat::A3Landscape,
    }
}

/// Lettering of the views, mm (ISO 3098-1 series): the usual one of a format, and the next smaller where everything would
/// not fit otherwise.
const fn lettering_heights_mm(format: SheetFormat) -> [f64; 2] {
    match format {
        SheetFormat::A4Landscape | SheetFormat::A4Portrait => [2.5, 1.8],
        SheetFormat::A3Landscape => [3.5, 2.5],
    }
}

fn style_of(design: &Design, height_mm: f64) -> Style {
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

/// Why there is no whole ring, in words.
#[must_use]
pub fn why_no_ring(evaluation: &Evaluation) -> String {
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
