//! The drawing as a picture for the clipboard, made off the frame.

use std::io;

use egui::{ColorImage, Context};
use thiserror::Error;

use super::job::{Job, Progress};
use crate::document::Design;
use crate::drawing::raster::{Ground, Pixels, Raster, RasterError, pixels};
use crate::drawing::ring_sheet::{SheetError, format_of, ring_sheet};
use crate::evaluate::Evaluation;

/// Why there is no picture.
#[derive(Debug, Error)]
pub enum CopyError {
    /// The sheet cannot be drawn.
    #[error("the drawing was not copied: {0}")]
    Sheet(#[from] SheetError),
    /// The picture cannot be made.
    #[error("the drawing was not copied: {0}")]
    Raster(#[from] RasterError),
    /// The thread broke off.
    #[error("the drawing was not copied: the work broke off. Try again")]
    BrokenOff,
}

/// A picture on its way to the clipboard.
#[derive(Debug, Default)]
pub struct Copying {
    job: Option<Job<Result<Pixels, CopyError>>>,
}

/// Most dots an inch of a copied picture: programs that it is pasted into choke on larger ones (common practice, no
/// source).
const MOST_DPI: u32 = 300;

impl Copying {
    /// Begins to draw.
    ///
    /// # Errors
    /// The system gives no thread.
    pub fn begin(
        &mut self,
        context: &Context,
        design: &Design,
        evaluation: &Evaluation,
    ) -> io::Result<()> {
        let (design, evaluation) = (design.clone(), evaluation.clone());
        self.job = Some(Job::begin("picture", context, move || {
            picture(&design, &evaluation)
        })?);
        Ok(())
    }

    /// Puts a finished picture on the clipboard and says so; none while nothing is finished.
    pub fn poll(&mut self, context: &Context) -> Option<Result<String, CopyError>> {
        let result = match self.job.as_ref()?.poll() {
            Progress::Working => return None,
            Progress::Done(result) => result,
            Progress::BrokenOff => Err(CopyError::BrokenOff),
        };
        self.job = None;
        Some(result.map(|picture| {
            let said = format!(
                "drawing copied to the clipboard, {} x {} dots",
                picture.width, picture.height
            );
            context.copy_image(image_of(&picture));
            said
        }))
    }
}

fn picture(design: &Design, evaluation: &Evaluation) -> Result<Pixels, CopyError> {
    let sheet = ring_sheet(design, evaluation)?;
    let raster = Raster {
        dpi: design.sheet.dpi.min(MOST_DPI),
        ground: if design.sheet.transparent {
            Ground::Transparent
        } else {
            Ground::White
        },
        group: format_of(design).line_group(),
    };
    Ok(pixels(&sheet, raster)?)
}

fn image_of(picture: &Pixels) -> ColorImage {
    // A picture that fits into memory has fewer dots than an address has values.
    let dots = |dots: u32| usize::try_from(dots).unwrap_or(usize::MAX);
    let size = [dots(picture.width), dots(picture.height)];
    ColorImage::from_rgba_unmultiplied(size, &picture.rgba)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::demo_designs;
    use crate::evaluate::evaluate;
    use crate::workshop::Workshop;

    #[test]
    fn the_picture_has_the_size_of_the_paper() {
        let mut design = demo_designs().unwrap().remove(0);
        design.sheet.dpi = 100;
        let evaluation = evaluate(&design, &Workshop::default_set().unwrap());
        let picture = picture(&design, &evaluation).unwrap();
        // 297 x 210 mm at 100 dots to the 25.4 mm.
        assert_eq!((picture.width, picture.height), (1169, 827));
        assert_eq!(image_of(&picture).size, [1169, 827]);
    }
}
