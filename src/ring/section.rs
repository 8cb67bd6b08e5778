//! The half-section of the ring as a closed outline, every piece with its feature.

use thiserror::Error;

use crate::document::SeatKind;
use crate::geometry::{Outline, OutlineBuilder, OutlineError, Point};
use crate::mount::Unit;

use super::feature::Feature;
use super::resolved::ResolvedRing;

/// Why resolved sizes make no shape that can be turned.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum ShapeFault {
    /// Two sizes that must stand in order do not.
    #[error("{small} ({}) must be less than {large} ({}): the ring has no metal between them", Unit::Mm.show(*.small_mm), Unit::Mm.show(*.large_mm))]
    Order {
        /// What must be smaller.
        small: &'static str,
        /// Its size, mm.
        small_mm: f64,
        /// What must be larger.
        large: &'static str,
        /// Its size, mm.
        large_mm: f64,
    },
    /// The outline crosses itself.
    #[error("the outline of the {what} cannot be turned: {source}")]
    Outline {
        /// Of what.
        what: &'static str,
        /// The geometric reason.
        source: OutlineError,
    },
}

/// Least metal between two faces for an outline to be drawn at all, mm.
const LEAST: f64 = 0.01;

/// Stations along the axis and radii of the bores, mm, cut to what there is.
struct Stations {
    seat: f64,
    plate_front: f64,
    thread_end: f64,
    relief_end: f64,
    lip_face: f64,
    lip_rear: f64,
    nose: f64,
    thread: f64,
    chamfer: f64,
    relief: f64,
    lip: f64,
    rear: f64,
}

impl Stations {
    fn of(ring: &ResolvedRing) -> Result<Self, ShapeFault> {
        let sizes = &ring.sizes;
        let seat = -sizes.seat_height;
        let nose = sizes.spigot_length;
        let depth = seat + sizes.lip_face_depth;
        let thread_end = (seat + sizes.thread_length).min(depth);
        let stations = Self {
            seat,
            plate_front: -sizes.plate_thickness,
            thread_end,
            relief_end: (thread_end + sizes.relief_width).min(depth),
            lip_face: depth,
            lip_rear: (depth + sizes.lip_thickness).min(nose),
            nose,
            thread: ring.thread_minor / 2.0,
            chamfer: sizes.thread_chamfer,
            relief: sizes.relief_diameter / 2.0,
            lip: sizes.lip_bore / 2.0,
            rear: sizes.rear_bore / 2.0,
        };
        stations.check(ring)?;
        Ok(stations)
    }

    fn check(&self, ring: &ResolvedRing) -> Result<(), ShapeFault> {
        let sizes = &ring.sizes;
        let seat_outer = match ring.seat {
            SeatKind::Flush => sizes.flange_diameter / 2.0,
            SeatKind::Boss | SeatKind::Counterbore => sizes.seat_diameter / 2.0,
        };
        in_order(
            "thread mouth radius",
            self.thread + self.chamfer,
            "seat radius",
            seat_outer,
        )?;
        in_order(
            "groove root radius",
            sizes.groove_root_diameter / 2.0,
            "flange radius",
            sizes.flange_diameter / 2.0,
        )?;
        in_order(
            "groove root radius",
            sizes.groove_root_diameter / 2.0,
            "lug radius",
            sizes.lug_diameter / 2.0,
        )?;
        in_order(
            "nose radius",
            sizes.nose_diameter / 2.0,
            "lug radius",
            sizes.lug_diameter / 2.0 - sizes.lug_lead_in,
        )?;
        in_order(
            "groove with lug",
            sizes.groove_width + sizes.lug_thickness - LEAST,
            "spigot length",
            self.nose + LEAST,
        )?;
        in_order(
            "rear bore radius",
            self.rear,
            "nose radius",
            sizes.nose_diameter / 2.0,
        )?;
        if ring.seat != SeatKind::Flush {
            in_order(
                "seat radius",
                seat_outer - LEAST,
                "flange radius",
                sizes.flange_diameter / 2.0,
            )?;
        }
        if ring.seat == SeatKind::Counterbore {
            in_order(
                "counterbore floor behind the flange",
                self.seat,
                "nose face",
                self.nose,
            )?;
        }
        if !ring.thread_runs_through {
            in_order(
                "thread chamfer",
                self.chamfer,
                "thread length",
                sizes.thread_length,
            )?;
            in_order(
                "lip face behind the flange",
                self.lip_face,
                "nose face behind the flange",
                self.nose,
            )?;
            in_order(
                "lip bore radius",
                self.lip,
                "chamber radius",
                self.relief.max(self.thread),
            )?;
        }
        Ok(())
    }
}

fn in_order(
    small: &'static str,
    small_mm: f64,
    large: &'static str,
    large_mm: f64,
) -> Result<(), ShapeFault> {
    if small_mm + LEAST <= large_mm {
        Ok(())
    } else {
        Err(ShapeFault::Order {
            small,
            small_mm,
            large,
            large_mm,
        })
    }
}

/// The outline in work.
type Pen = OutlineBuilder<Feature>;

/// The outline cut through a lug, and between the lugs.
///
/// # Errors
/// [`ShapeFault`] names the sizes that leave no metal, or the crossing.
pub fn outlines(ring: &ResolvedRing) -> Result<(Outline<Feature>, Outline<Feature>), ShapeFault> {
    let stations = Stations::of(ring)?;
    let through = outline(ring, &stations, true)?;
    let between = outline(ring, &stations, false)?;
    Ok((through, between))
}

fn outline(ring: &ResolvedRing, at: &Stations, lug: bool) -> Result<Outline<Feature>, ShapeFault> {
    let mouth = OutlineBuilder::start(Point::new(at.seat, at.thread + at.chamfer));
    let rear = spigot(ring, at, lug, front(ring, at, mouth));
    inside(ring, at, rear)
        .close(Feature::ThreadChamfer)
        .map_err(|source| ShapeFault::Outline {
            what: "ring",
            source,
        })
}

/// Seat, boss or counterbore, plate, rim, rear face.
fn front(ring: &ResolvedRing, at: &Stations, mut pen: Pen) -> Pen {
    let sizes = &ring.sizes;
    let (seat, flange) = (sizes.seat_diameter / 2.0, sizes.flange_diameter / 2.0);
    match ring.seat {
        SeatKind::Flush => pen = pen.line_to(Point::new(at.seat, flange), Feature::Seat),
        SeatKind::Boss => {
            pen = pen.line_to(Point::new(at.seat, seat), Feature::Seat);
            pen = pen.line_to(Point::new(at.plate_front, seat), Feature::BossSide);
            pen = pen.line_to(Point::new(at.plate_front, flange), Feature::PlateFront);
        }
        SeatKind::Counterbore => {
            pen = pen.line_to(Point::new(at.seat, seat), Feature::Seat);
            pen = pen.line_to(Point::new(at.plate_front, seat), Feature::CounterboreSide);
            pen = pen.line_to(Point::new(at.plate_front, flange), Feature::PlateFront);
        }
    }
    pen = pen.line_to(Point::new(0.0, flange), Feature::Rim);
    pen = pen.line_to(
        Point::new(0.0, sizes.groove_root_diameter / 2.0),
        Feature::FlangeRearFace,
    );
    pen
}

/// Groove, lug, nose and nose face.
fn spigot(ring: &ResolvedRing, at: &Stations, lug: bool, mut pen: Pen) -> Pen {
    let sizes = &ring.sizes;
    let (root, nose, tip) = (
        sizes.groove_root_diameter / 2.0,
        sizes.nose_diameter / 2.0,
        sizes.lug_diameter / 2.0,
    );
    let (front, rear) = (sizes.groove_width, sizes.groove_width + sizes.lug_thickness);
    pen = pen.line_to(Point::new(front, root), Feature::GrooveRoot);
    if lug {
        pen = pen.line_to(Point::new(front, tip), Feature::LugFront);
        pen = pen.line_to(Point::new(rear - sizes.lug_lead_in, tip), Feature::LugTip);
        pen = pen.line_to(
            Point::new(rear, tip - sizes.lug_lead_in),
            Feature::LugLeadIn,
        );
        pen = pen.line_to(Point::new(rear, nose), Feature::LugRear);
    } else {
        pen = pen.line_to(Point::new(front, nose), Feature::Nose);
    }
    pen = pen.line_to(Point::new(at.nose, nose), Feature::Nose);
    pen = pen.line_to(
        Point::new(
            at.nose,
            if ring.thread_runs_through {
                at.thread
            } else {
                at.rear
            },
        ),
        Feature::NoseFace,
    );
    pen
}

/// From the nose face forward through bores, lip and relief to the thread's mouth.
fn inside(ring: &ResolvedRing, at: &Stations, mut pen: Pen) -> Pen {
    if !ring.thread_runs_through {
        pen = pen.line_to(Point::new(at.lip_rear, at.lip), Feature::RearBore);
        let pocket = Pocket::of(ring, at);
        // A pocket open to the bore ends it at its floor.
        let opening = pocket.as_ref().filter(|pocket| pocket.inner <= at.lip);
        let bore_end = opening.map_or(at.lip_face, |pocket| pocket.floor);
        pen = pen.line_to(Point::new(bore_end, at.lip), Feature::LipBore);
        if let Some(pocket) = &pocket {
            pen = pocket.draw(at, pen);
        }
        let chamber = if at.relief_end >= at.lip_face {
            at.relief
        } else {
            at.thread
        };
        pen = pen.line_to(Point::new(at.lip_face, chamber), Feature::LipFace);
        if at.relief_end < at.lip_face {
            pen = pen.line_to(Point::new(at.relief_end, at.thread), Feature::ReliefEnd);
            pen = pen.line_to(Point::new(at.relief_end, at.relief), Feature::ReliefEnd);
        }
        pen = pen.line_to(Point::new(at.thread_end, at.relief), Feature::ReliefFloor);
        pen = pen.line_to(Point::new(at.thread_end, at.thread), Feature::ReliefStart);
    }
    pen = pen.line_to(Point::new(at.seat + at.chamfer, at.thread), Feature::Thread);
    pen
}

/// The pocket that leaves a pin free: its floor along the axis and the radii of its walls, mm.
struct Pocket {
    floor: f64,
    inner: f64,
    outer: f64,
}

impl Pocket {
    /// The pocket, where it stands clear of bore and chamber.
    fn of(ring: &ResolvedRing, at: &Stations) -> Option<Self> {
        let sizes = &ring.sizes;
        let pocket = Self {
            floor: at.seat + sizes.annulus_depth,
            inner: (sizes.annulus_inner / 2.0).max(at.lip),
            outer: (sizes.annulus_outer / 2.0).min(at.thread),
        };
        let is_drawn = pocket.floor > at.lip_face + LEAST
            && pocket.floor < at.nose - LEAST
            && pocket.outer > pocket.inner + LEAST;
        is_drawn.then_some(pocket)
    }

    /// From the lip bore round the pocket to the lip face outside it.
    fn draw(&self, at: &Stations, mut pen: Pen) -> Pen {
        if self.inner > at.lip {
            pen = pen.line_to(Point::new(at.lip_face, self.inner), Feature::LipFace);
            pen = pen.line_to(Point::new(self.floor, self.inner), Feature::AnnulusSide);
        }
        pen = pen.line_to(Point::new(self.floor, self.outer), Feature::AnnulusFloor);
        pen.line_to(Point::new(at.lip_face, self.outer), Feature::AnnulusSide)
    }
}
