//! Datums, geometrical tolerances and surface texture on the half-section, each where it finds room.

use crate::document::{Design, DimensionId, SeatKind};
use crate::drawing::call_out::CallOut;
use crate::drawing::dimension::{Linear, Style};
use crate::drawing::free_room::Occupied;
use crate::drawing::number::plain;
use crate::drawing::placed_dimension::{Form, PlacedDimension};
use crate::drawing::signs::datum::datum_sign;
use crate::drawing::signs::tolerance_frame::{Characteristic, ToleranceFrame};
use crate::drawing::spot::Search;
use crate::drawing::{Annotation, Extent};
use crate::evaluate::Evaluation;
use crate::geometry::Point;
use crate::ring::{ResolvedRing, geometrical};

/// Roughness of the two faces that the register is measured between, um (common practice, no source).
const FACE_RA_UM: f64 = 1.6;
/// Letter of the datum on the flange rear face.
pub const FLANGE_DATUM: char = 'A';
/// Letter of the datum on the axis of the spigot.
pub const SPIGOT_DATUM: char = 'B';
/// Places along a face where a leader may take hold, as shares of its length.
const ALONG: [f64; 5] = [0.5, 0.65, 0.35, 0.8, 0.2];
/// Steps in which the stem of a datum is made longer until its letter has room, mm, and how many.
const STEM_STEP_MM: f64 = 3.0;
const STEM_STEPS: u32 = 24;
/// Directions of a leader away from a face that looks toward the lens, degrees.
const TO_THE_LEFT: [f64; 7] = [180.0, 165.0, 195.0, 150.0, 210.0, 135.0, 225.0];
/// Directions away from a face that looks toward the sensor, degrees.
const TO_THE_RIGHT: [f64; 7] = [0.0, 15.0, -15.0, 30.0, -30.0, 45.0, -45.0];
/// Directions from the thread toward the axis, degrees.
const INWARD: [f64; 8] = [240.0, 225.0, 255.0, 210.0, 300.0, 315.0, 285.0, 330.0];

/// Where signs may stand.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Signs {
    /// Wherever they are read best.
    Anywhere,
    /// Inside what the dimensions take; what has no room there goes into the notes.
    Inside,
}

/// The signs of one half-section on paper.
pub struct RingSigns<'a> {
    /// The design.
    pub design: &'a Design,
    /// What it came to.
    pub evaluation: &'a Evaluation,
    /// Its ring.
    pub ring: &'a ResolvedRing,
    /// The lettering.
    pub style: Style,
    /// Paper mm per mm of the part.
    pub factor: f64,
    /// What the ring covers on paper.
    pub part: Extent,
    /// Where they may stand.
    pub signs: Signs,
}

/// The signs, in the order in which they find their places.
#[derive(Clone, Copy)]
enum Sign {
    FlangeDatum,
    SpigotDatum,
    Seat,
    FlangeTexture,
    ThreadRunOut,
}

impl Sign {
    const ALL: [Self; 5] = [
        Self::FlangeDatum,
        Self::SpigotDatum,
        Self::Seat,
        Self::FlangeTexture,
        Self::ThreadRunOut,
    ];

    const fn id(self) -> DimensionId {
        match self {
            Self::FlangeDatum => DimensionId::DatumFlange,
            Self::SpigotDatum => DimensionId::DatumSpigot,
            Self::Seat => DimensionId::SeatParallelism,
            Self::FlangeTexture => DimensionId::FlangeTexture,
            Self::ThreadRunOut => DimensionId::ThreadRunOut,
        }
    }
}

impl RingSigns<'_> {
    /// All signs in their places, and what found none as lines for the notes. `spigot` is the dimension of the
    /// nose diameter, where it is drawn.
    #[must_use]
    pub fn placed(
        &self,
        occupied: &mut Occupied,
        view: Extent,
        spigot: Option<&Linear>,
    ) -> (Vec<PlacedDimension>, Vec<String>) {
        let mut placed = Vec::new();
        let mut notes = Vec::new();
        for sign in Sign::ALL {
            let id = sign.id();
            if self.design.sheet.hides(id) {
                continue;
            }
            match self.form(sign, occupied, view, spigot) {
                Some(form) => {
                    let dimension = PlacedDimension { id, form };
                    occupied.add(&dimension.settled(&self.style));
                    placed.push(dimension);
                }
                None => notes.push(self.in_words(sign)),
            }
        }
        (placed, notes)
    }

    fn form(
        &self,
        sign: Sign,
        occupied: &Occupied,
        view: Extent,
        spigot: Option<&Linear>,
    ) -> Option<Form> {
        match sign {
            Sign::FlangeDatum => self.flange_datum(occupied, view),
            Sign::SpigotDatum => self.spigot_datum(occupied, view, spigot?),
            Sign::Seat => {
                let frame = self.frame(sign);
                self.call_out(
                    occupied,
                    view,
                    &self.seat_tips(),
                    &TO_THE_LEFT,
                    frame.as_ref(),
                    Some(&self.texture()),
                )
            }
            Sign::FlangeTexture => self.call_out(
                occupied,
                view,
                &self.flange_tips(),
                &TO_THE_RIGHT,
                None,
                Some(&self.texture()),
            ),
            Sign::ThreadRunOut => {
                let frame = self.frame(sign);
                self.call_out(
                    occupied,
                    view,
                    &self.thread_tips(),
                    &INWARD,
                    frame.as_ref(),
                    None,
                )
            }
        }
    }

    /// The same said in a line of the notes.
    fn in_words(&self, sign: Sign) -> String {
        let within = |value_mm: f64| plain(value_mm, 3, self.style.mark);
        let wanted = geometrical(&self.evaluation.derivation);
        match sign {
            Sign::FlangeDatum => format!("Datum {FLANGE_DATUM}: flange rear face"),
            Sign::SpigotDatum => format!("Datum {SPIGOT_DATUM}: axis of the spigot"),
            Sign::Seat => format!(
                "Seat parallel to {FLANGE_DATUM} within {}, {}",
                within(wanted.seat_parallelism_mm),
                self.texture()
            ),
            Sign::FlangeTexture => format!("Flange rear face {}", self.texture()),
            Sign::ThreadRunOut => format!(
                "Thread runs true to {SPIGOT_DATUM} within {}",
                within(wanted.thread_run_out_mm)
            ),
        }
    }

    fn texture(&self) -> String {
        format!("Ra {}", plain(FACE_RA_UM, 1, self.style.mark))
    }

    fn frame(&self, sign: Sign) -> Option<ToleranceFrame> {
        let wanted = geometrical(&self.evaluation.derivation);
        let (characteristic, zone_mm, datum) = match sign {
            Sign::Seat => (
                Characteristic::Parallelism,
                wanted.seat_parallelism_mm,
                FLANGE_DATUM,
            ),
            Sign::ThreadRunOut => (
                Characteristic::CircularRunOut,
                wanted.thread_run_out_mm,
                SPIGOT_DATUM,
            ),
            Sign::FlangeDatum | Sign::SpigotDatum | Sign::FlangeTexture => return None,
        };
        Some(ToleranceFrame {
            characteristic,
            zone: plain(zone_mm, 3, self.style.mark),
            datums: vec![datum],
        })
    }

    fn call_out(
        &self,
        occupied: &Occupied,
        view: Extent,
        tips: &[Point],
        directions_deg: &[f64],
        frame: Option<&ToleranceFrame>,
        texture: Option<&str>,
    ) -> Option<Form> {
        let search = Search {
            tips,
            directions_deg,
            view,
            signs: self.signs,
        };
        let at = |tip: Point, elbow: Point| CallOut {
            tip,
            elbow,
            frame: frame.cloned(),
            texture: texture.map(str::to_owned),
        };
        let (tip, elbow) = search.best(occupied, |tip, elbow| at(tip, elbow).drawn(&self.style))?;
        Some(Form::CallOut(at(tip, elbow)))
    }

    /// A place on a face of the ring between two radii, mm of the part, on paper.
    fn along(&self, z: f64, from: f64, to: f64) -> Vec<Point> {
        let at = |share: &f64| Point {
            x: z * self.factor,
            y: (from + (to - from) * share) * self.factor,
        };
        ALONG.iter().map(at).collect()
    }

    /// Places on the extension line of a face over the ring.
    fn over(&self, z: f64) -> Vec<Point> {
        let height = self.style.height_mm;
        [1.6, 2.2, 1.2]
            .iter()
            .map(|rise| Point {
                x: z * self.factor,
                y: self.part.top + rise * height,
            })
            .collect()
    }

    fn seat_tips(&self) -> Vec<Point> {
        let sizes = &self.ring.sizes;
        let mouth = self.ring.thread_minor / 2.0 + sizes.thread_chamfer;
        let outer = match self.ring.seat {
            SeatKind::Flush => sizes.flange_diameter / 2.0,
            SeatKind::Boss | SeatKind::Counterbore => sizes.seat_diameter / 2.0,
        };
        let mut tips = self.along(-sizes.seat_height, mouth, outer);
        // The extension line over a sunk seat runs through metal.
        if self.ring.seat != SeatKind::Counterbore {
            tips.extend(self.over(-sizes.seat_height));
        }
        tips
    }

    fn flange_tips(&self) -> Vec<Point> {
        let sizes = &self.ring.sizes;
        let mut tips = self.along(0.0, sizes.lug_diameter / 2.0, sizes.flange_diameter / 2.0);
        tips.extend(self.over(0.0));
        tips
    }

    fn thread_tips(&self) -> Vec<Point> {
        let sizes = &self.ring.sizes;
        let begin = -sizes.seat_height + sizes.thread_chamfer;
        let end = if self.ring.thread_runs_through {
            sizes.spigot_length
        } else {
            -sizes.seat_height + sizes.thread_length
        };
        let at = |share: &f64| Point {
            x: (begin + (end - begin) * share) * self.factor,
            y: self.ring.thread_minor / 2.0 * self.factor,
        };
        ALONG.iter().map(at).collect()
    }

    /// On the face itself or on its extension line, its letter toward the sensor.
    fn flange_datum(&self, occupied: &Occupied, view: Extent) -> Option<Form> {
        self.datum(occupied, view, &self.flange_tips(), 0.0, FLANGE_DATUM)
    }

    /// In line with the dimension line of the spigot, so that it means the axis (ISO 5459).
    fn spigot_datum(&self, occupied: &Occupied, view: Extent, spigot: &Linear) -> Option<Form> {
        let end = Point {
            x: spigot.through.x,
            y: spigot.to.y,
        };
        self.datum(occupied, view, &[end], 90.0, SPIGOT_DATUM)
    }

    /// A datum on the first of some places, its stem as short as there is room for its letter.
    fn datum(
        &self,
        occupied: &Occupied,
        view: Extent,
        places: &[Point],
        away_deg: f64,
        letter: char,
    ) -> Option<Form> {
        let longer = (0..STEM_STEPS).map(|step| STEM_STEP_MM * f64::from(step));
        longer
            .flat_map(|longer_mm| places.iter().map(move |at| (*at, longer_mm)))
            .map(|(at, longer_mm)| framed(datum_sign(at, away_deg, longer_mm, letter, &self.style)))
            .filter(|sign| self.signs == Signs::Anywhere || stays_in(sign, view))
            .find(|sign| occupied.takes(sign))
            .map(Form::Sign)
    }
}

/// Whether a sign stays in what the view covers.
fn stays_in(sign: &Annotation, view: Extent) -> bool {
    sign.bounds().is_some_and(|bounds| view.contains(&bounds))
}

/// A datum with the room of its square kept, not only that of its letter.
fn framed(mut sign: Annotation) -> Annotation {
    // The square is one lettering height larger than the letter on every side but for rounding.
    const AROUND: f64 = 0.9;
    for letter in &mut sign.boxes {
        let by = AROUND * letter.height_mm / 2.0;
        *letter = letter.grown(by);
    }
    sign
}
