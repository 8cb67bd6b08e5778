//! A sheet can be read whatever the ring: no lettering over lettering, none crossed by a line, nothing off the frame
//! or over the title block.

use flangewright::document::Design;
use flangewright::drawing::ring_sheet::format_of;
use flangewright::drawing::sheet::sheet;
use flangewright::drawing::title_block::TitleBlock;
use flangewright::drawing::{Item, Role, Scene, SheetError, ring_sheet};
use flangewright::evaluate::evaluate;
use flangewright::workshop::Workshop;

use crate::pairs::plausible;
use crate::sheet_lines::{lettering, strokes};

const SEED: u64 = 31;
const COUNT: usize = 300;
/// What rounding may let touch, mm.
const TOUCH: f64 = 0.02;

/// Everything wrong with a sheet.
pub fn faults(design: &Design, scene: &Scene) -> Vec<String> {
    let mut faults = Vec::new();
    let texts = lettering(scene);
    let lines = strokes(scene);
    for (place, text) in texts.iter().enumerate() {
        let space = text.space.grown(-TOUCH);
        for other in &texts[place + 1..] {
            if space.overlaps(&other.space.grown(-TOUCH)) {
                faults.push(format!("\"{}\" over \"{}\"", text.text, other.text));
            }
        }
        for line in &lines {
            if space.meets_line(line.from, line.to) {
                faults.push(format!(
                    "\"{}\" at {:.0}, {:.0} crossed by a line of {:?}, {:?} from {:.1}, {:.1} to {:.1}, {:.1}",
                    text.text,
                    text.space.corner.x,
                    text.space.corner.y,
                    line.role,
                    line.line,
                    line.from.x,
                    line.from.y,
                    line.to.x,
                    line.to.y
                ));
                break;
            }
        }
    }
    let block = TitleBlock {
        projection: design.sheet.projection,
        ..TitleBlock::default()
    };
    let blank = sheet(format_of(design), &block).unwrap();
    let is_of_the_form =
        |item: &&Item| item.pen.role == Role::Frame || blank.scene.items.contains(item);
    for item in scene.items.iter().filter(|item| !is_of_the_form(item)) {
        let Some(extent) = item.extent() else {
            continue;
        };
        let frame = blank.frame;
        if extent.left < frame.left
            || extent.right > frame.right
            || extent.bottom < frame.bottom
            || extent.top > frame.top
        {
            faults.push(format!("off the frame: {:?}", item.shape));
        }
        if extent.overlaps(&blank.title_block) {
            faults.push(format!("over the title block: {:?}", item.shape));
        }
    }
    faults
}

#[test]
fn three_hundred_sheets_can_be_read() {
    let workshop = Workshop::default_set().unwrap();
    let (mut drawn, mut too_large) = (0, Vec::new());
    let mut wrong = Vec::new();
    for index in 0..COUNT + 30 {
        let design = plausible(SEED, index);
        let evaluation = evaluate(&design, &workshop);
        match ring_sheet(&design, &evaluation) {
            Ok(scene) => {
                drawn += 1;
                let faults = faults(&design, &scene);
                if !faults.is_empty() {
                    wrong.push(format!(
                        "{index} ({:?}): {}",
                        design.sheet.paper,
                        faults.join("\n    ")
                    ));
                }
            }
            Err(SheetError::NoRing(_)) => assert!(evaluation.parts.is_none(), "{index}"),
            Err(error) => too_large.push(format!("{index} {:?}: {error}", design.sheet.paper)),
        }
    }
    assert!(
        wrong.is_empty(),
        "{} of {drawn} sheets, {} too large {:?}\n{}",
        wrong.len(),
        too_large.len(),
        too_large,
        wrong.join("\n")
    );
    assert!(
        drawn >= COUNT && too_large.is_empty(),
        "{drawn} drawn, {too_large:?}"
    );
}
