//! How the drawing of a design is laid out, dimensioned and signed.

use serde::{Deserialize, Serialize};

use super::DimensionId;
use crate::standards::Scale;

/// Paper of the drawing.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum Paper {
    /// 297 x 210 mm.
    #[default]
    A4Landscape,
    /// 420 x 297 mm.
    A3Landscape,
}

/// How the views are arranged (ISO 5456-2).
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Projection {
    /// The view from the left stands on the right: the lens side right of the half-section, the body side left.
    FirstAngle,
    /// The view from the left stands on the left: the lens side left of the half-section, the body side right.
    #[default]
    ThirdAngle,
}

impl Projection {
    /// Both.
    pub const ALL: [Self; 2] = [Self::FirstAngle, Self::ThirdAngle];

    /// The words for it.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::FirstAngle => "first angle",
            Self::ThirdAngle => "third angle",
        }
    }
}

/// Whether a view is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum ViewChoice {
    /// Left out.
    Never,
    /// Drawn where the sheet has room for it beside the others.
    WhereRoom,
    /// Drawn, or the sheet is refused as too small.
    Always,
}

impl ViewChoice {
    /// Every choice.
    pub const ALL: [Self; 3] = [Self::Never, Self::WhereRoom, Self::Always];

    /// The words on screen.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Never => "no",
            Self::WhereRoom => "where there is room",
            Self::Always => "always",
        }
    }
}

/// The views beside the half-section, which every sheet has.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct SheetViews {
    /// The lug pattern from the body side.
    pub body_side: ViewChoice,
    /// The plan from the lens side.
    pub lens_side: ViewChoice,
    /// The relief, enlarged.
    pub relief_detail: ViewChoice,
    /// A lug, enlarged.
    pub lug_detail: ViewChoice,
}

impl Default for SheetViews {
    fn default() -> Self {
        Self {
            body_side: ViewChoice::Always,
            lens_side: ViewChoice::WhereRoom,
            relief_detail: ViewChoice::WhereRoom,
            lug_detail: ViewChoice::WhereRoom,
        }
    }
}

/// The unit of lengths on the sheet.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum Lengths {
    /// Millimetres.
    #[default]
    Millimetres,
    /// Millimetres, with inches after them in square brackets.
    WithInches,
}

/// What the user did to one dimension of the sheet.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DimensionOverride {
    /// Which one; a dimension between two faces is there only because it stands here.
    pub dimension: DimensionId,
    /// Whether it is left out.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub hidden: bool,
    /// How far it was moved from the place that the program gives it, mm on paper: right, up.
    #[serde(default, skip_serializing_if = "is_unmoved")]
    pub moved_mm: (f64, f64),
}

fn is_unmoved(moved_mm: &(f64, f64)) -> bool {
    *moved_mm == (0.0, 0.0)
}

/// The sheet: paper, views, dimensions and title block (fields of ISO 7200).
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Sheet {
    /// Paper.
    pub paper: Paper,
    /// Scale of the half-section; none for the largest that fits.
    pub scale: Option<Scale>,
    /// How the views are arranged.
    pub projection: Projection,
    /// Which views there are.
    pub views: SheetViews,
    /// Unit of lengths.
    pub lengths: Lengths,
    /// Clock angle at which the half-section is cut, degrees.
    pub section_angle_deg: f64,
    /// Resolution of a PNG export, dots an inch.
    pub dpi: u32,
    /// Whether a picture has no white ground.
    pub transparent: bool,
    /// Legal owner.
    pub owner: String,
    /// Identification number.
    pub number: String,
    /// Title; empty for the name of the design.
    pub title: String,
    /// Supplementary title; empty for the names of lens and body.
    pub supplement: String,
    /// Creator.
    pub creator: String,
    /// Approval person.
    pub approved: String,
    /// Date of issue, as the user writes it.
    pub date: String,
    /// Revision.
    pub revision: String,
    /// Status of the document.
    pub status: String,
    /// Further notes, one a line.
    pub notes: String,
    /// Whether numbers carry a decimal comma, as ISO 129-1 has it.
    pub decimal_comma: bool,
    /// What the user did to dimensions.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub overrides: Vec<DimensionOverride>,
}

impl Default for Sheet {
    fn default() -> Self {
        Self {
            paper: Paper::A4Landscape,
            scale: None,
            projection: Projection::default(),
            views: SheetViews::default(),
            lengths: Lengths::default(),
            section_angle_deg: 0.0,
            dpi: 300,
            transparent: false,
            owner: String::new(),
            number: String::new(),
            title: String::new(),
            supplement: String::new(),
            creator: String::new(),
            approved: String::new(),
            date: String::new(),
            revision: String::new(),
            status: String::new(),
            notes: String::new(),
            decimal_comma: false,
            overrides: Vec::new(),
        }
    }
}

impl Sheet {
    /// What the user did to a dimension.
    #[must_use]
    pub fn override_of(&self, dimension: DimensionId) -> Option<&DimensionOverride> {
        self.overrides.iter().find(|own| own.dimension == dimension)
    }

    /// Whether a dimension is left out.
    #[must_use]
    pub fn hides(&self, dimension: DimensionId) -> bool {
        self.override_of(dimension).is_some_and(|own| own.hidden)
    }

    /// How far a dimension was moved, mm on paper.
    #[must_use]
    pub fn moved_mm(&self, dimension: DimensionId) -> (f64, f64) {
        self.override_of(dimension)
            .map_or((0.0, 0.0), |own| own.moved_mm)
    }

    /// What the user did to a dimension, to change; [`Self::tidy`] takes out again what says nothing.
    pub fn override_mut(&mut self, dimension: DimensionId) -> &mut DimensionOverride {
        let place = self
            .overrides
            .iter()
            .position(|own| own.dimension == dimension);
        let place = place.unwrap_or_else(|| {
            self.overrides.push(DimensionOverride {
                dimension,
                hidden: false,
                moved_mm: (0.0, 0.0),
            });
            self.overrides.len() - 1
        });
        // The place was found, or is that of the one just pushed.
        &mut self.overrides[place]
    }

    /// Drops overrides that change nothing, and brings the rest into one order.
    pub fn tidy(&mut self) {
        self.overrides
            .retain(|own| own.hidden || !is_unmoved(&own.moved_mm) || own.dimension.is_added());
        self.overrides.sort_by_key(|own| own.dimension);
    }
}
