//! The lug pattern on the sheet: the plan from the body side with lug numbers, section letter and lock hole.

use crate::document::{Design, RingKey};
use crate::drawing::dimension::{Kind, Label, Leader, Size, Style, Terminator, Tolerance, leader};
use crate::drawing::free_room::Occupied;
use crate::drawing::number::plain;
use crate::drawing::plan_view::{CUT_OVERRUN, PlanOptions, plan_view};
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
}

impl RingPlan<'_> {
    /// The plan as drawn on paper, its centre at the origin.
    #[must_use]
    pub fn drawn(&self) -> Annotation {
        let cut_deg = self.design.sheet.section_angle_deg;
        let options = PlanOptions {
            side: Side::Body,
            body: false,
            entry: false,
            cut_deg: Some(cut_deg),
        };
        let view = plan_view(self.design, self.evaluation, &options);
        let mut placed = Scene::default();
        placed.place(&view, self.factor, Point { x: 0.0, y: 0.0 });
        let mut drawn = Annotation {
            items: placed.items,
            boxes: Vec::new(),
        };
        let mut occupied = Occupied::by(&drawn);
        let mut put = |more: Annotation, occupied: &mut Occupied| {
            occupied.add(&more);
            drawn.join(more);
        };
        put(self.section_letter(cut_deg), &mut occupied);
        if let Some(note) = self.lock_hole_note(&occupied) {
            put(note, &mut occupied);
        }
        for number in self.lug_numbers(&occupied) {
            put(number, &mut occupied);
        }
        drawn
    }

    fn at(&self, radius_mm: f64, clock_deg: f64) -> Point {
        plan_point(radius_mm, seen_from(Side::Body, clock_deg.to_radians()))
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
    fn lock_hole_note(&self, occupied: &Occupied) -> Option<Annotation> {
        let sizes = &self.ring.sizes;
        if sizes.lock_hole_diameter <= 0.0 {
            return None;
        }
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
        let notes = elbows.map(|elbow| (elbow, self.note_at(tip, elbow)));
        let mut fitting = notes.clone().filter(|(elbow, note)| {
            occupied.leaves_room_for(note) && occupied.lets_pass(tip, *elbow)
        });
        let first = fitting.next();
        first
            .or_else(|| notes.into_iter().next())
            .map(|(_, note)| note)
    }

    fn note_at(&self, tip: Point, elbow: Point) -> Annotation {
        let sizes = &self.ring.sizes;
        let number = |value: f64| plain(value, 3, self.style.mark);
        let dimension = self
            .evaluation
            .derivation
            .dimension(RingKey::LockHoleDiameter);
        let (lower, upper) = dimension.map_or((0.0, 0.0), |state| state.deviations);
        let through = if sizes.lock_hole_depth + 1e-6 >= sizes.plate_thickness {
            "through".to_owned()
        } else {
            format!("{} deep", number(sizes.lock_hole_depth))
        };
        let hole = Size::new(Kind::Diameter, sizes.lock_hole_diameter)
            .within(Tolerance::Deviations { upper, lower });
        let lines = vec![
            hole.label(self.style.mark),
            Label::plain(format!("{through}, on Ø{}", number(sizes.lock_hole_circle))),
        ];
        leader(
            &Leader {
                tip,
                elbow,
                lines,
                terminator: Terminator::Arrow,
            },
            &self.style,
        )
    }
}
