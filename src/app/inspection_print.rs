//! The inspection sheet as pages of A4: limits to read against, room for readings, what is proved and what to correct.

use thiserror::Error;

use crate::document::{Design, SizeOf};
use crate::drawing::pdf::{PdfError, pdf_of_pages};
use crate::drawing::printed::{Block, Column, PrintedSheet, Table, pages};
use crate::drawing::{LineGroup, Stations, register_sketch, stations, trial_sketch};
use crate::evaluate::Evaluation;
use crate::inspection::{
    BEFORE, Basis, InspectedSize, Inspection, RULE, RegisterMethod, TRIAL_HOW, advice, fine,
    history, inspect, inspection_sheet, off_text, proposals, tilt_lines, trial_text,
};
use crate::mount::show_number;
use crate::workshop::Workshop;

/// Room to write readings in, mm.
const READINGS_MM: f64 = 58.0;
/// Width of the sketches beside their text, mm.
const SKETCH_MM: f64 = 78.0;
/// Height of the picture of the stations, mm.
const STATIONS_MM: f64 = 70.0;

/// What holds of every angle on the sheet.
const ANGLES: &str =
    "Angles are clock angles seen from the lens side, ring locked: 0° at 12 o'clock, clockwise.";

/// Why there is no sheet.
#[derive(Debug, Error)]
pub enum PrintError {
    /// The design makes no whole ring.
    #[error("there is no whole ring to inspect: measure what is missing first")]
    NoRing,
    /// The file could not be put together.
    #[error(transparent)]
    Pdf(#[from] PdfError),
}

/// The inspection sheet as a PDF file.
///
/// # Errors
/// [`PrintError`] where there is no whole ring.
pub fn inspection_pdf(
    design: &Design,
    workshop: &Workshop,
    evaluation: &Evaluation,
) -> Result<Vec<u8>, PrintError> {
    let found = inspect(design, workshop, evaluation).ok_or(PrintError::NoRing)?;
    let sheet = printed(design, workshop, evaluation, &found);
    Ok(pdf_of_pages(&pages(&sheet), &sheet.title, LineGroup::Half)?)
}

/// The inspection sheet as a text file.
///
/// # Errors
/// [`PrintError`] where there is no whole ring.
pub fn inspection_text(
    design: &Design,
    workshop: &Workshop,
    evaluation: &Evaluation,
) -> Result<String, PrintError> {
    inspect(design, workshop, evaluation).ok_or(PrintError::NoRing)?;
    let mut text = inspection_sheet(design, workshop, evaluation);
    text.push('\n');
    Ok(text)
}

fn printed(
    design: &Design,
    workshop: &Workshop,
    evaluation: &Evaluation,
    found: &Inspection,
) -> PrintedSheet {
    let mut blocks = vec![
        Block::Tick(BEFORE.to_owned()),
        Block::Small(format!("Rule: {RULE}")),
        Block::Heading("Sizes".to_owned()),
        sizes(design, found),
        Block::Small(ANGLES.to_owned()),
    ];
    blocks.extend(notes(found));
    blocks.extend(register(design, found));
    blocks.extend(trial(design, found));
    blocks.extend(correction(design, workshop, evaluation, found));
    blocks.extend(made(design, workshop, found));
    PrintedSheet {
        title: "Inspection".to_owned(),
        foot: design.name.clone(),
        blocks,
    }
}

/// The name of a size in the table; what it says besides stands under the table once for all.
fn name(one: &InspectedSize) -> String {
    match one.size.of {
        SizeOf::ThreadOverBalls => one.size.label.clone(),
        SizeOf::Ring(_) | SizeOf::LugStart(_) | SizeOf::LugWidth(_) => one.size.of.label(),
    }
}

fn number(one: &InspectedSize, value: f64) -> String {
    show_number(value, one.size.unit.decimals())
}

/// Every size with its limits; what was read stands in its row, what was not has room.
fn sizes(design: &Design, found: &Inspection) -> Block {
    let row = |one: &InspectedSize| {
        let reading = one.place.and_then(|place| design.readings.get(place));
        let stands = match (&one.judged, reading) {
            (Ok(judged), Some(_)) => format!(
                "{} ± {}: {}",
                number(one, judged.mean),
                fine(judged.doubt.expanded, one.size.unit),
                judged.word()
            ),
            (Err(reason), Some(_)) => reason.to_string(),
            (_, None) => String::new(),
        };
        let instrument = reading
            .map(|reading| reading.instrument.clone())
            .or_else(|| one.size.instrument.clone())
            .unwrap_or_else(|| "none suits".to_owned());
        let ticked = if reading.is_some() { "x" } else { "" };
        vec![
            ticked.to_owned(),
            name(one),
            number(one, one.size.limits.low_mm),
            number(one, one.size.limits.high_mm),
            one.size.unit.sign().to_owned(),
            instrument,
            stands,
        ]
    };
    Block::Table(Table {
        columns: vec![
            Column::Tick,
            Column::Words("size".to_owned()),
            Column::Number("least".to_owned()),
            Column::Number("greatest".to_owned()),
            Column::Words(String::new()),
            Column::Words("read with".to_owned()),
            Column::Room("readings, five or more".to_owned(), READINGS_MM),
        ],
        rows: found.sizes.iter().map(row).collect(),
    })
}

/// What would prove more of a size that is not proved.
fn notes(found: &Inspection) -> Vec<Block> {
    found
        .sizes
        .iter()
        .filter_map(|one| {
            let judged = one.judged.as_ref().ok()?;
            let advice = advice(&one.size, judged, one.better.as_deref())?;
            Some(Block::Small(format!("{}: {advice}", one.size.label)))
        })
        .collect()
}

fn register(design: &Design, found: &Inspection) -> Vec<Block> {
    let mut words = vec![Block::Text(format!("{}.", capital(found.method.how())))];
    match &found.register {
        Some(register) => {
            words.extend(tilt_lines(register).into_iter().map(Block::Text));
            let off = found.error(Basis::SeatReadings).map(off_text);
            words.extend(off.map(Block::Text));
        }
        None => words.push(Block::Table(Table {
            columns: vec![
                Column::Words("place".to_owned()),
                Column::Room("read".to_owned(), 30.0),
            ],
            rows: ["0°", "60°", "120°", "180°", "240°", "300°"]
                .map(|place| vec![place.to_owned()])
                .to_vec(),
        })),
    }
    let beside = Block::Beside {
        blocks: words,
        scene: register_sketch(found.seat, found.method == RegisterMethod::OverBlocks),
        width_mm: SKETCH_MM,
        height_mm: SKETCH_MM,
        caption: format!("sketch, not to scale: a seat {}", found.seat.word()),
    };
    let mut blocks = vec![
        Block::Heading("Register and parallelism".to_owned()),
        beside,
    ];
    blocks.extend(round(design, found));
    blocks
}

/// The readings round the ring as a picture, where there are some.
fn round(design: &Design, found: &Inspection) -> Option<Block> {
    let register = found.register.as_ref()?;
    let one = found.sizes.first()?;
    let reading = design.readings.get(one.place?)?;
    let scene = stations(&Stations {
        readings_mm: &reading.values,
        places: register.places,
        mean_mm: register.mean_mm,
        wave_mm: register.tilt.map(|tilt| tilt.wave_mm),
        limits_mm: (one.size.limits.low_mm, one.size.limits.high_mm),
    });
    Some(Block::Picture {
        scene,
        height_mm: STATIONS_MM,
        caption: "heights of the seat round the ring, much enlarged".to_owned(),
    })
}

fn trial(design: &Design, found: &Inspection) -> Vec<Block> {
    let mut words = vec![Block::Text(TRIAL_HOW.to_owned())];
    let present = design
        .present_trial()
        .and_then(|place| design.trials.get(place));
    if let (Some(trial), Some(said)) = (present, &found.trial) {
        words.push(Block::Text(trial_text(trial)));
        words.push(Block::Text(match said {
            Ok(measured) => format!("Lens, ring and body together: {}", off_text(*measured)),
            Err(error) => error.to_string(),
        }));
    }
    let mut blocks = vec![
        Block::Heading("Infinity trial".to_owned()),
        Block::Beside {
            blocks: words,
            scene: trial_sketch(),
            width_mm: SKETCH_MM,
            height_mm: SKETCH_MM,
            caption: String::new(),
        },
    ];
    if found.trial.is_none() {
        let room = |head: &str, least_mm| Column::Room(head.to_owned(), least_mm);
        blocks.push(Block::Table(Table {
            columns: vec![
                room("object at, m", 26.0),
                room("known within, m", 26.0),
                room("scale when sharp, m: five settings", 80.0),
            ],
            rows: vec![Vec::new(), Vec::new()],
        }));
    }
    blocks
}

fn correction(
    design: &Design,
    workshop: &Workshop,
    evaluation: &Evaluation,
    found: &Inspection,
) -> Vec<Block> {
    let mut words = vec![Block::Heading("Correction".to_owned())];
    let all = proposals(design, workshop, evaluation, found);
    if all.is_empty() {
        let first = "It follows from readings of the seat height or from an infinity trial.";
        words.push(Block::Text(first.to_owned()));
    }
    for (basis, corrected) in all {
        words.push(Block::Text(format!(
            "By {}: {}",
            basis.words(),
            corrected.text()
        )));
    }
    words.push(Block::Table(Table {
        columns: vec![
            Column::Tick,
            Column::Words("done".to_owned()),
            Column::Room("how much, mm".to_owned(), 30.0),
            Column::Room("when".to_owned(), 40.0),
        ],
        rows: [
            "skimmed off the seat",
            "shim laid on the seat",
            "made again",
        ]
        .map(|done| vec![String::new(), done.to_owned()])
        .to_vec(),
    }));
    vec![Block::Together(words)]
}

fn made(design: &Design, workshop: &Workshop, found: &Inspection) -> Vec<Block> {
    let all = history(design, workshop, found.method, found.seat_height_mm);
    if all.is_empty() {
        return Vec::new();
    }
    let rows = all.iter().map(|followed| {
        let done = followed.correction;
        vec![
            done.date.clone(),
            followed.done_text(),
            followed.errors_text(),
            done.note.clone(),
        ]
    });
    vec![
        Block::Heading("Corrections made".to_owned()),
        Block::Table(Table {
            columns: ["when", "what", "errors", "why"]
                .map(|head| Column::Words(head.to_owned()))
                .to_vec(),
            rows: rows.collect(),
        }),
    ]
}

/// A text that begins with a capital.
fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(letters).collect()
    })
}
