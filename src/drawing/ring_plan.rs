//! The lug pattern on the sheet: the plan from the body side with lug numbers, section letter and lock hole.

use crate::checks::rests_on_assumed;
use crate::document::{Design, DimensionId, Lengths, RingKey};
use crate::drawing::dimension::{Kind, Label, Leader, Size, Style, Terminator, Tolerance, leader};
use crate::drawing::free_room::Occupied;
use crate::drawing::number::{DecimalMark, plain};
use crate::drawing::placed_dimension::{Form, PlacedDimension, SheetView};
use crate::drawing::plan_view::{CUT_OVERRUN, PlanOptions, plan_view};
use crate::drawing::ring_dimensions::{ASSUMED_MARK, inches};
use crate::drawing::{Annotation, Scene};
use crate::evaluate::Evaluation;
use crate::geometry::{Point, Side, plan_point, seen_from};
use crate::mount::Sector;
use crate::ring::ResolvedRing;

/// Distance of the middle of the section letter from the end of the cutting line, in lettering heights.
const LETTER_AWAY: f64 = 1.2;
/// Places along a lug where its number may stand, from the middle, as a share of its extent.
const ALONG: [f64; 7] = [0.0, 0.12, -0.12, 0.25, -0.25, 0.4, -0.4];
/// Steps in which the elbow of the lock hole's leader is moved away until its note has room, mm.
const ELBOW_STEP: f64 = 5.0;
/// How often it is moved.
const ELBOW_STEPS: u32 = 8;

/// The plan of a ring at a scale, for its sheet.
pub struct RingPlan<'a> {
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
    /// From which side it is seen.
    pub side: Side,
    /// Whether it carries the lock hole's note.
    pub sizes_lock_hole: bool,
}

impl RingPlan<'_> {
    /// The plan as drawn on paper, its centre at the origin.
    #[must_use]
    pub fn drawn(&self) -> SheetView {
        let cut_deg = self.design.sheet.section_angle_deg;
        let options = PlanOptions {
            side: self.side,
            body: false,
            entry: false,
            cut_deg: Some(cut_deg),
        };
        let view = plan_view(self.design, self.evaluation, &options);
        let mut placed = Scene::default();
        placed.place(&view, self.factor, Point { x: 0.0, y: 0.0 });
        let mut drawn = SheetView {
            part: Annotation {
                items: placed.items,
                boxes: Vec::new(),
            },
            ..SheetView::default()
        };
        let mut occupied = Occupied::by(&drawn.part);
        let letter = self.section_letter(cut_deg);
        occupied.add(&letter);
        drawn.part.join(letter);
        let is_hidden = self.design.sheet.hides(DimensionId::LockHole);
        if let Some(note) = self
            .lock_hole_note(&occupied)
            .filter(|_| self.sizes_lock_hole && !is_hidden)
        {
            let dimension = PlacedDimension {
                id: DimensionId::LockHole,
                form: Form::Leader(note),
            };
            occupied.add(&dimension.settled(&self.style));
            drawn.dimensions.push(dimension);
        }
        for number in self.lug_numbers(&occupied) {
            drawn.part.join(number);
        }
        drawn
    }

    fn at(&self, radius_mm: f64, clock_deg: f64) -> Point {
        plan_point(radius_mm, seen_from(self.side, clock_deg.to_radians()))
    }

    /// Rim of the flange on paper, mm.
    fn rim(&self) -> f64 {
        self.ring.sizes.flange_diameter / 2.0 * self.factor
    }

    /// A short label with its middle at a place.
    fn label_at(&self, text: &str, middle: Point) -> Annotation {
        let baseline = Point {
            y: middle.y - self.style.height_mm / 2.0,
            ..middle
        };
        Label::plain(text).centred(baseline, 0.0, &self.style)
    }

    fn section_letter(&self, cut_deg: f64) -> Annotation {
        let end = self.rim() + CUT_OVERRUN * self.factor;
        self.label_at(
            "A",
            self.at(end + LETTER_AWAY * self.style.height_mm, cut_deg),
        )
    }

    /// The numbers of the lugs: all on the first circle that has room for every one of them, else each on the
    /// first that has room for it.
    fn lug_numbers(&self, occupied: &Occupied) -> Vec<Annotation> {
        let circles = self.number_circles();
        let on_circle = |radius: f64| -> Option<Vec<Annotation>> {
            let mut taken = occupied.clone();
            self.ring
                .lugs
                .iter()
                .enumerate()
                .map(|(index, lug)| {
                    let number = self.number_on(radius, index, *lug, &taken)?;
                    taken.add(&number);
                    Some(number)
                })
                .collect()
        };
        if let Some(numbers) = circles.iter().find_map(|radius| on_circle(*radius)) {
            return numbers;
        }
        let mut taken = occupied.clone();
        let mut numbers = Vec::new();
        for (index, lug) in self.ring.lugs.iter().enumerate() {
            let found = circles
                .iter()
                .find_map(|radius| self.number_on(*radius, index, *lug, &taken));
            if let Some(number) = found {
                taken.add(&number);
                numbers.push(number);
            }
        }
        numbers
    }

    /// Radii on which numbers may stand, mm on paper: between bore and nose, between lugs and rim, inside the bore,
    /// and outside the rim farther and farther away.
    fn number_circles(&self) -> Vec<f64> {
        const FARTHEST: u32 = 30;
        let sizes = &self.ring.sizes;
        let height = self.style.height_mm;
        let bore = sizes.rear_bore.max(sizes.lip_bore);
        let beyond = self.rim() + CUT_OVERRUN * self.factor + height;
        let mut circles = vec![
            f64::midpoint(sizes.nose_diameter, bore) / 2.0 * self.factor,
            f64::midpoint(sizes.lug_diameter, sizes.flange_diameter) / 2.0 * self.factor,
            sizes.lip_bore / 2.0 * self.factor - 1.2 * height,
            self.rim() + 1.2 * height,
        ];
        circles.extend((0..FARTHEST).map(|step| beyond + f64::from(step) * height));
        circles.retain(|radius| *radius > height);
        circles
    }

    fn number_on(
        &self,
        radius: f64,
        index: usize,
        lug: Sector,
        taken: &Occupied,
    ) -> Option<Annotation> {
        ALONG
            .iter()
            .map(|share| {
                let clock = share.mul_add(lug.extent_deg, lug.middle_deg());
                self.label_at(&(index + 1).to_string(), self.at(radius, clock))
            })
            .find(|number| taken.leaves_room_for(number))
    }

    /// The lock hole by size, depth and circle, on a leader that crosses no lettering.
    fn lock_hole_note(&self, occupied: &Occupied) -> Option<Leader> {
        let sizes = &self.ring.sizes;
        let lines = lock_hole_labels(self.design, self.evaluation, self.ring, self.style.mark)?;
        let tip = self.at(
            sizes.lock_hole_circle / 2.0 * self.factor,
            sizes.lock_hole_angle,
        );
        let side = if tip.x < 0.0 { -1.0 } else { 1.0 };
        let up = if tip.y < 0.0 { -1.0 } else { 1.0 };
        let reach = self.rim();
        let elbows = (0..ELBOW_STEPS).flat_map(|step| {
            let off = ELBOW_STEP * f64::from(step);
            let level = up * (reach + 3.0);
            [level + up * off, level - up * off].map(|y| Point {
                x: side * (reach + 2.0),
                y,
            })
        });
        let notes: Vec<Leader> = elbows
            .map(|elbow| Leader {
                tip,
                elbow,
                lines: lines.clone(),
                terminator: Terminator::Arrow,
            })
            .collect();
        let fits = |note: &&Leader| occupied.takes(&leader(note, &self.style));
        notes.iter().find(fits).or(notes.first()).cloned()
    }
}

/// What is said of the lock hole: its diameter, its depth and its circle; nothing where there is none.
#[must_use]
pub fn lock_hole_labels(
    design: &Design,
    evaluation: &Evaluation,
    ring: &ResolvedRing,
    mark: DecimalMark,
) -> Option<Vec<Label>> {
    let sizes = &ring.sizes;
    if sizes.lock_hole_diameter <= 0.0 {
        return None;
    }
    let derivation = &evaluation.derivation;
    let lettered = |key: RingKey| {
        let value = sizes.get(key);
        let state = derivation.dimension(key);
        let (lower, upper) = state.map_or((0.0, 0.0), |state| state.deviations);
        let size = Size::new(Kind::Diameter, value).within(Tolerance::Deviations { upper, lower });
        let mut label = size.label(mark);
        if rests_on_assumed(design, derivation, key) {
            label.end_with(ASSUMED_MARK);
        }
        if design.sheet.lengths == Lengths::WithInches {
            label.end_with(&format!(" [{}]", inches(value, mark)));
        }
        label
    };
    let depth = if sizes.lock_hole_depth + 1e-6 >= sizes.plate_thickness {
        "through".to_owned()
    } else {
        format!("{} deep", plain(sizes.lock_hole_depth, 3, mark))
    };
    let circle = lettered(RingKey::LockHoleCircle).text();
    Some(vec![
        lettered(RingKey::LockHoleDiameter),
        Label::plain(format!("{depth}, on {circle}")),
    ])
}
