//! Enlarged details of the half-section: the relief, and a lug.

use crate::document::{Design, DimensionId};
use crate::drawing::dimension::{Label, Leader, Style, Terminator, leader};
use crate::drawing::free_room::Occupied;
use crate::drawing::number::plain;
use crate::drawing::outlines::path_of;
use crate::drawing::placed_dimension::{Form, PlacedDimension, SheetView};
use crate::drawing::placement::Placement;
use crate::drawing::ring_dimensions::relief_note;
use crate::drawing::ring_section::{HATCH_MM, apart_mm};
use crate::drawing::ring_signs::Signs;
use crate::drawing::round_window::Window;
use crate::drawing::spot::Search;
use crate::drawing::{Extent, Hatch, Item, LineType, Path, Role, Shape, Tone};
use crate::evaluate::Evaluation;
use crate::geometry::Point;
use crate::ring::ResolvedRing;

/// A part of the half-section that is drawn enlarged beside it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Detail {
    /// Its letter.
    pub letter: char,
    /// Middle of what it shows, mm of the part.
    pub centre: Point,
    /// Radius of what it shows, mm of the part.
    pub radius_mm: f64,
    shows: Shows,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Shows {
    Relief,
    Lug,
}

/// Least radius of a detail, mm of the part.
const LEAST_RADIUS: f64 = 1.2;
/// What a detail shows beyond its feature, mm of the part.
const AROUND: f64 = 0.5;
/// Directions of leaders out of a detail, degrees: toward the bore, and away from the axis.
const TO_THE_BORE_DEG: [f64; 6] = [300.0, 240.0, 315.0, 225.0, 330.0, 210.0];
const OUTWARD_DEG: [f64; 6] = [45.0, 30.0, 60.0, 15.0, 0.0, 345.0];

impl Detail {
    /// The relief with the thread that ends in it; none where there is no relief.
    #[must_use]
    pub fn of_relief(
        design: &Design,
        evaluation: &Evaluation,
        ring: &ResolvedRing,
    ) -> Option<Self> {
        let relief = relief_note(design, evaluation, ring, Style::default())?;
        let half = (relief.to.x - relief.from.x) / 2.0;
        let depth = relief.from.y - ring.thread_minor / 2.0;
        Some(Self {
            letter: 'X',
            centre: Point {
                x: f64::midpoint(relief.from.x, relief.to.x),
                y: relief.from.y - depth / 2.0,
            },
            radius_mm: (half.hypot(depth / 2.0) + AROUND).max(LEAST_RADIUS),
            shows: Shows::Relief,
        })
    }

    /// A lug from groove to chamfer; none where it has no chamfer to show.
    #[must_use]
    pub fn of_lug(ring: &ResolvedRing) -> Option<Self> {
        let sizes = &ring.sizes;
        if sizes.lug_lead_in <= 0.0 {
            return None;
        }
        let (root, tip) = (sizes.nose_diameter / 2.0, sizes.lug_diameter / 2.0);
        let half = sizes.lug_thickness / 2.0;
        Some(Self {
            letter: 'Y',
            centre: Point {
                x: sizes.groove_width + half,
                y: f64::midpoint(root, tip),
            },
            radius_mm: (half.hypot((tip - root) / 2.0) + AROUND).max(LEAST_RADIUS),
            shows: Shows::Lug,
        })
    }

    /// Whether it shows the relief.
    #[must_use]
    pub fn shows_relief(&self) -> bool {
        self.shows == Shows::Relief
    }

    /// Whether it shows the chamfer behind a lug.
    #[must_use]
    pub fn shows_lead_in(&self) -> bool {
        self.shows == Shows::Lug
    }
}

/// A detail at a scale, for the sheet.
pub struct RingDetail<'a> {
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
    /// What it shows.
    pub detail: Detail,
}

impl RingDetail<'_> {
    /// The detail as drawn on paper, its middle at the origin; none where its note finds no room.
    #[must_use]
    pub fn drawn(&self) -> Option<SheetView> {
        let mut view = SheetView::default();
        self.metal(&mut view);
        let radius = self.detail.radius_mm * self.factor;
        let middle = Point { x: 0.0, y: 0.0 };
        view.part
            .narrow(Path::circle(middle, radius), Role::Annotation);
        let around = Extent::between(middle, middle).grown(radius);
        let occupied = Occupied::by(&view.part);
        let wanted = match self.detail.shows {
            Shows::Relief => self.relief(),
            Shows::Lug => Some(self.lead_in()),
        };
        let Some((id, label, tip)) = wanted.filter(|(id, ..)| !self.design.sheet.hides(*id)) else {
            return Some(view);
        };
        let directions_deg = match self.detail.shows {
            Shows::Relief => &TO_THE_BORE_DEG,
            Shows::Lug => &OUTWARD_DEG,
        };
        let note = |tip: Point, elbow: Point| Leader {
            tip,
            elbow,
            lines: vec![label.clone()],
            terminator: Terminator::Arrow,
        };
        let search = Search {
            tips: &[self.on_paper(tip)],
            directions_deg,
            view: around,
            signs: Signs::Anywhere,
        };
        let (tip, elbow) = search.best(&occupied, |tip, elbow| {
            leader(&note(tip, elbow), &self.style)
        })?;
        view.dimensions.push(PlacedDimension {
            id,
            form: Form::Leader(note(tip, elbow)),
        });
        Some(view)
    }

    fn on_paper(&self, point: Point) -> Point {
        Point {
            x: (point.x - self.detail.centre.x) * self.factor,
            y: (point.y - self.detail.centre.y) * self.factor,
        }
    }

    fn relief(&self) -> Option<(DimensionId, Label, Point)> {
        let relief = relief_note(self.design, self.evaluation, self.ring, self.style)?;
        let tip = Point {
            x: f64::midpoint(relief.from.x, relief.to.x),
            y: relief.from.y,
        };
        Some((DimensionId::Relief, relief.label, tip))
    }

    fn lead_in(&self) -> (DimensionId, Label, Point) {
        let sizes = &self.ring.sizes;
        let half = sizes.lug_lead_in / 2.0;
        let tip = Point {
            x: sizes.groove_width + sizes.lug_thickness - half,
            y: sizes.lug_diameter / 2.0 - half,
        };
        let size = plain(sizes.lug_lead_in, 3, self.style.mark);
        (
            DimensionId::LeadIn,
            Label::plain(format!("{size} \u{d7} 45\u{b0}")),
            tip,
        )
    }

    /// Cut metal, edges and thread inside the window.
    fn metal(&self, view: &mut SheetView) {
        let Some(parts) = &self.evaluation.parts else {
            return;
        };
        let window = Window {
            centre: self.detail.centre,
            radius_mm: self.detail.radius_mm,
        };
        let outline = &parts.through_lug;
        let to_paper = Placement {
            scale: self.factor,
            origin: self.on_paper(Point { x: 0.0, y: 0.0 }),
            ..Placement::IDENTITY
        };
        let mut put = |shape: Shape, line: LineType, role: Role| {
            view.part
                .items
                .push(Item::new(shape.placed(&to_paper), line, role));
        };
        if let Some(area) = window.area(&path_of(outline)) {
            let loops = vec![area];
            let fill = Shape::Fill {
                loops: loops.clone(),
                tone: Tone::Tint,
            };
            put(fill, LineType::ContinuousNarrow, Role::Ring);
            put(
                Shape::Hatch(Hatch::at_45_deg(loops, HATCH_MM)),
                LineType::ContinuousNarrow,
                Role::RingHatch,
            );
        }
        for (piece, _) in outline.pieces() {
            if let Some((from, to)) = window.stretch(piece.a, piece.b) {
                put(
                    Shape::Path(Path::line(from, to)),
                    LineType::ContinuousWide,
                    Role::Ring,
                );
            }
        }
        let (from, to) = self.thread_root();
        if let Some((from, to)) = window.stretch(from, to) {
            put(
                Shape::Path(Path::line(from, to)),
                LineType::ContinuousNarrow,
                Role::Ring,
            );
        }
    }

    /// The narrow line of the thread (ISO 6410-1).
    fn thread_root(&self) -> (Point, Point) {
        let sizes = &self.ring.sizes;
        let apart = apart_mm(self.design) / self.factor;
        let root = (self.ring.thread_major / 2.0).max(self.ring.thread_minor / 2.0 + apart);
        let seat = -sizes.seat_height;
        let end = if self.ring.thread_runs_through {
            sizes.spigot_length
        } else {
            seat + sizes.thread_length.min(sizes.lip_face_depth)
        };
        (Point { x: seat, y: root }, Point { x: end, y: root })
    }
}
