//! Where a size is on the finished ring, how it is measured, and what the readings look like.

use std::hash::{DefaultHasher, Hash as _, Hasher as _};

use egui::{Rect, RichText, Ui, UiBuilder};

use super::canvas::{Canvas, Showing};
use super::finished_readings::SEAT;
use super::inspection_page::Asked;
use super::pick::Picked;
use super::sight::Sight;
use super::view::View;
use crate::document::{FieldRef, RingKey, SeatKind, SizeOf};
use crate::drawing::plan_view::{LUG_TAG, PlanOptions, plan_view};
use crate::drawing::section_view::{SectionOptions, section_view, tag_of};
use crate::drawing::{Scene, Stations, register_sketch, stations, trial_sketch};
use crate::geometry::Side;
use crate::inspection::{Inspection, RegisterMethod};
use crate::ring::Feature;

/// A picture with its words.
struct Picture {
    title: &'static str,
    axes: [&'static str; 2],
    words: String,
    scene: Scene,
    canvas: Canvas,
}

/// The pictures of what is asked for; drawn anew where the design or the question has changed.
#[derive(Default)]
pub struct FinishedPicture {
    drawn: Option<(u64, Asked)>,
    pictures: Vec<Picture>,
}

/// Room of a line of words above a picture, points.
const WORDS_HEIGHT: f32 = 20.0;

impl FinishedPicture {
    /// The pictures over the room given, one under the other.
    pub fn picture_ui(
        &mut self,
        ui: &mut Ui,
        view: &View<'_>,
        room: Rect,
        (found, asked, revision): (&Inspection, Asked, u64),
    ) {
        if self.drawn != Some((revision, asked)) {
            let same_question = self.drawn.is_some_and(|(_, drawn)| drawn == asked);
            let mut old = std::mem::take(&mut self.pictures).into_iter();
            self.pictures = pictures(view, found, asked);
            if same_question {
                // The look of each picture stays where it was.
                for (picture, old) in self.pictures.iter_mut().zip(old.by_ref()) {
                    picture.canvas = old.canvas;
                }
            }
            self.drawn = Some((revision, asked));
        }
        let mut top = room.top();
        // One by one: a sum of ones is exact.
        let count = self.pictures.iter().map(|_| 1.0).sum::<f32>().max(1.0);
        for (place, picture) in (0_u64..).zip(&mut self.pictures) {
            let height = room.height() / count;
            let part = Rect::from_min_size(
                egui::pos2(room.left(), top),
                egui::vec2(room.width(), height - 4.0),
            );
            top += height;
            let salt = ("finished picture", place);
            ui.scope_builder(UiBuilder::new().id_salt(salt).max_rect(part), |ui| {
                ui.horizontal(|ui| {
                    ui.set_height(WORDS_HEIGHT);
                    ui.strong(picture.title);
                    ui.add(
                        egui::Label::new(RichText::new(&picture.words).small().weak()).truncate(),
                    );
                });
                show(ui, view, picture, (asked, revision * 4 + place));
            });
        }
    }
}

fn show(ui: &mut Ui, view: &View<'_>, picture: &mut Picture, (asked, revision): (Asked, u64)) {
    let showing = Showing {
        name: picture.title,
        scene: &picture.scene,
        revision,
        axes: picture.axes,
        is_lit: &|tag| is_lit(asked, tag),
        light: number(asked),
        grabs: &|_, _| false,
        palette: view.palette,
        sheet: None,
    };
    picture.canvas.canvas_ui(ui, &showing);
}

/// A number of its own for every question.
fn number(asked: Asked) -> u64 {
    // Fixed keys: the same question has the same number in every run.
    let mut hasher = DefaultHasher::new();
    asked.hash(&mut hasher);
    hasher.finish()
}

/// Whether an item of the ring is what is asked for.
fn is_lit(asked: Asked, tag: u32) -> bool {
    match asked {
        Asked::Size(SizeOf::Ring(key)) => {
            Picked::of(tag).is_some_and(|picked| picked.belongs_to(FieldRef::Ring(key)))
        }
        Asked::Size(SizeOf::LugStart(number) | SizeOf::LugWidth(number)) => {
            u32::try_from(number).is_ok_and(|number| tag + 1 == LUG_TAG + number)
        }
        Asked::Size(SizeOf::ThreadOverBalls) => tag == tag_of(Feature::Thread),
        Asked::Trial => false,
        Asked::Correction => tag == tag_of(Feature::Seat),
    }
}

fn pictures(view: &View<'_>, found: &Inspection, asked: Asked) -> Vec<Picture> {
    let picture = |title: &'static str, words: String, scene: Scene| Picture {
        title,
        axes: ["", ""],
        words,
        scene,
        canvas: Canvas::looking_at(Sight::Everything),
    };
    match asked {
        Asked::Size(size) if size == SEAT => {
            let method = register_sketch(found.seat, found.method == RegisterMethod::OverBlocks);
            let sketch = picture(
                "How it is measured",
                format!("sketch, not to scale: a seat {}", found.seat.word()),
                method,
            );
            let round = stations_of(view, found)
                .map(|scene| picture("Readings round the ring", enlarged(found.seat), scene));
            round.into_iter().chain([sketch]).collect()
        }
        Asked::Size(
            SizeOf::LugStart(_)
            | SizeOf::LugWidth(_)
            | SizeOf::Ring(
                RingKey::LockHoleAngle | RingKey::LockHoleCircle | RingKey::LockHoleDiameter,
            ),
        ) => {
            let options = PlanOptions {
                side: Side::Lens,
                body: false,
                entry: false,
                cut_deg: None,
            };
            let scene = plan_view(view.design, view.evaluation, &options);
            let words = "seen from the lens side, 0° at 12 o'clock, clockwise; what is asked for is coloured";
            vec![Picture {
                axes: ["x", "y"],
                canvas: Canvas::default(),
                ..picture("Where it is", words.to_owned(), scene)
            }]
        }
        Asked::Size(SizeOf::Ring(_) | SizeOf::ThreadOverBalls) | Asked::Correction => {
            let angle = view.design.sheet.section_angle_deg;
            let options = SectionOptions {
                partners: false,
                ..SectionOptions::on_screen(angle)
            };
            let scene = section_view(view.design, view.evaluation, &options);
            let words = "half-section, light from the left; what is asked for is coloured";
            vec![Picture {
                axes: ["z", "r"],
                canvas: Canvas::default(),
                ..picture("Where it is", words.to_owned(), scene)
            }]
        }
        Asked::Trial => {
            let words = "sketch, not to scale".to_owned();
            vec![picture("How it is made", words, trial_sketch())]
        }
    }
}

fn enlarged(seat: SeatKind) -> String {
    format!("heights of the seat {}, much enlarged", seat.word())
}

/// The readings round the ring; none before the first.
fn stations_of(view: &View<'_>, found: &Inspection) -> Option<Scene> {
    let one = found.size(SEAT)?;
    let reading = view.design.readings.get(one.place?)?;
    let mean = |values: &[f64]| {
        values.iter().sum::<f64>() / values.iter().map(|_| 1.0).sum::<f64>().max(1.0)
    };
    let places = if reading.places == 0 {
        reading.values.len()
    } else {
        reading.places
    };
    let register = found.register.as_ref();
    Some(stations(&Stations {
        readings_mm: &reading.values,
        places,
        mean_mm: register.map_or_else(|| mean(&reading.values), |found| found.mean_mm),
        wave_mm: register.and_then(|found| Some(found.tilt?.wave_mm)),
        limits_mm: (one.size.limits.low_mm, one.size.limits.high_mm),
    }))
}
