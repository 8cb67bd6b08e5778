//! A design as the bytes of a file, by the ending of the file's name: the one place that window and command line ask.

use std::path::Path;

use thiserror::Error;

use crate::document::Design;
use crate::drawing::dxf::dxf;
use crate::drawing::mesh::{MeshError, MeshOptions, stl, three_mf, trial_print};
use crate::drawing::pdf::{PdfError, pdf};
use crate::drawing::raster::{Ground, Raster, RasterError, png};
use crate::drawing::ring_sheet::{SheetError, format_of, ring_sheet};
use crate::drawing::svg::svg;
use crate::drawing::template::{FORMAT, TemplateError, template};
use crate::drawing::true_size::true_size;
use crate::drawing::{LineGroup, Scene};
use crate::evaluate::Evaluation;

/// A kind of file.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Format {
    /// The drawing as dots.
    Png,
    /// The drawing as curves for the screen.
    Svg,
    /// The drawing as curves for the printer.
    Pdf,
    /// The views at true size, and the drawing beside them.
    Dxf,
    /// The ring as triangles.
    Stl,
    /// The ring as triangles, with its unit.
    ThreeMf,
}

/// What is wanted beside the kind of file.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct ExportOptions {
    /// Dots to the inch of a PNG; none for what the design says.
    pub dpi: Option<u32>,
    /// What lies behind the lines of PNG and SVG.
    pub ground: Ground,
    /// The lug template in place of the drawing.
    pub template: bool,
    /// How a mesh is made.
    pub mesh: MeshOptions,
}

/// Why there are no bytes.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum ExportError {
    /// The name ends in nothing we know.
    #[error("{0}: this ending stands for no file that can be written. End the name in {list}", list = endings())]
    Ending(String),
    /// A mesh of the template was wanted.
    #[error("a template is a drawing, not a solid: end the name in .png, .svg, .pdf or .dxf")]
    SolidTemplate,
    /// There is nothing to show.
    #[error("the drawing is empty: there is nothing to write")]
    Empty,
    /// The sheet cannot be drawn.
    #[error(transparent)]
    Sheet(#[from] SheetError),
    /// The template cannot be drawn.
    #[error(transparent)]
    Template(#[from] TemplateError),
    /// The picture cannot be made.
    #[error(transparent)]
    Raster(#[from] RasterError),
    /// The PDF cannot be made.
    #[error(transparent)]
    Pdf(#[from] PdfError),
    /// The mesh cannot be made.
    #[error(transparent)]
    Mesh(#[from] MeshError),
}

/// The right endings in a sentence.
fn endings() -> String {
    let all: Vec<String> = Format::ALL
        .iter()
        .map(|format| format!(".{}", format.ending()))
        .collect();
    match all.split_last() {
        Some((last, others)) => format!("{} or {last}", others.join(", ")),
        None => String::new(),
    }
}

impl Format {
    /// Every kind.
    pub const ALL: [Self; 6] = [
        Self::Png,
        Self::Svg,
        Self::Pdf,
        Self::Dxf,
        Self::ThreeMf,
        Self::Stl,
    ];

    /// The ending of the file's name, without the point.
    #[must_use]
    pub const fn ending(self) -> &'static str {
        match self {
            Self::Png => "png",
            Self::Svg => "svg",
            Self::Pdf => "pdf",
            Self::Dxf => "dxf",
            Self::Stl => "stl",
            Self::ThreeMf => "3mf",
        }
    }

    /// The words for it.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Png => "PNG, a picture",
            Self::Svg => "SVG, curves for the screen",
            Self::Pdf => "PDF, prints at true size",
            Self::Dxf => "DXF, views at true size and the sheet",
            Self::Stl => "STL, a trial print",
            Self::ThreeMf => "3MF, a trial print with its unit",
        }
    }

    /// Whether it holds the ring as a solid rather than a drawing.
    #[must_use]
    pub const fn is_solid(self) -> bool {
        match self {
            Self::Stl | Self::ThreeMf => true,
            Self::Png | Self::Svg | Self::Pdf | Self::Dxf => false,
        }
    }

    /// The kind that the ending of a path stands for, capitals or not.
    ///
    /// # Errors
    /// [`ExportError::Ending`], which lists the right ones.
    pub fn of_ending(path: &Path) -> Result<Self, ExportError> {
        let found = path.extension().and_then(|own| {
            Self::ALL
                .into_iter()
                .find(|format| own.eq_ignore_ascii_case(format.ending()))
        });
        found.ok_or_else(|| ExportError::Ending(path.display().to_string()))
    }
}

/// The bytes of the file.
///
/// # Errors
/// [`ExportError`] says what stands against it.
pub fn bytes(
    design: &Design,
    evaluation: &Evaluation,
    format: Format,
    options: &ExportOptions,
) -> Result<Vec<u8>, ExportError> {
    if format.is_solid() && options.template {
        return Err(ExportError::SolidTemplate);
    }
    match format {
        Format::Stl => Ok(stl(&trial_print(evaluation, options.mesh)?)),
        Format::ThreeMf => Ok(three_mf(
            &trial_print(evaluation, options.mesh)?,
            &design.name,
        )?),
        Format::Png => {
            let raster = Raster {
                dpi: options.dpi.unwrap_or(design.sheet.dpi),
                ground: options.ground,
                group: group(design, options),
            };
            Ok(png(&drawn(design, evaluation, options)?, raster)?)
        }
        Format::Svg => {
            let scene = drawn(design, evaluation, options)?;
            let text = svg(&scene, &design.name, options.ground, group(design, options));
            Ok(text.ok_or(ExportError::Empty)?.into_bytes())
        }
        Format::Pdf => {
            let scene = drawn(design, evaluation, options)?;
            Ok(pdf(&scene, &design.name, group(design, options))?)
        }
        Format::Dxf => {
            let mut scene = drawn(design, evaluation, options)?;
            if !options.template {
                scene = true_size(design, evaluation, &scene);
            }
            Ok(dxf(&scene, group(design, options)))
        }
    }
}

/// Sheet or template.
fn drawn(
    design: &Design,
    evaluation: &Evaluation,
    options: &ExportOptions,
) -> Result<Scene, ExportError> {
    if options.template {
        Ok(template(design, evaluation)?)
    } else {
        Ok(ring_sheet(design, evaluation)?)
    }
}

/// The line widths of the paper.
fn group(design: &Design, options: &ExportOptions) -> LineGroup {
    if options.template {
        FORMAT.line_group()
    } else {
        format_of(design).line_group()
    }
}
