//! What each operation sweeps clear in the half-section: rectangles of z and r, the finished ring itself left standing.

use super::operation::Operation as Op;
use super::step_sizes::{ROUGHING_ALLOWANCE_MM, SKIM_ALLOWANCE_MM};
use super::stock::{FACING_MM, PARTED_FACE_MM, Stock};
use crate::document::{Route, SeatKind};
use crate::geometry::{Outline, OutlineBuilder, OutlineError, Point};
use crate::ring::ResolvedRing;

/// How far a zone reaches past the bar, mm, so that no skin stays.
const PAST_MM: f64 = 1.0;
/// Left on the faces while diameters are turned, mm; common practice, no source.
const FACE_ALLOWANCE_MM: f64 = 0.3;
/// Left beside a boss while the plate is faced, mm; common practice, no source.
const BOSS_ALLOWANCE_MM: f64 = 1.0;

/// A rectangle in the half-section, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Zone {
    /// From and to along the axis.
    pub(super) z: (f64, f64),
    /// From and to from the axis.
    pub(super) r: (f64, f64),
}

impl Zone {
    /// The rectangle as an outline; `None` where it has no area.
    pub(super) fn outline(self) -> Option<Outline> {
        let corner = |z, r| Point::new(z, r);
        let drawn: Result<Outline, OutlineError> =
            OutlineBuilder::start(corner(self.z.0, self.r.0))
                .line_to(corner(self.z.1, self.r.0), ())
                .line_to(corner(self.z.1, self.r.1), ())
                .line_to(corner(self.z.0, self.r.1), ())
                .close(());
        drawn
            .ok()
            .filter(|_| self.z.1 > self.z.0 && self.r.1 > self.r.0)
    }
}

/// Where the bar and the ring in it lie along the axis, mm.
#[derive(Clone, Copy, Debug)]
pub(super) struct Bar<'a> {
    pub(super) ring: &'a ResolvedRing,
    pub(super) route: Route,
    pub(super) stock: Stock,
}

impl Bar<'_> {
    /// Whether the body side stands outward in the first setting.
    const fn is_body_outward(&self) -> bool {
        match self.route {
            Route::LugsInTheBar | Route::LugsOnAMandrel => true,
            Route::ThreadFirst => false,
        }
    }

    /// Most forward and most rearward face of the ring.
    fn faces(&self) -> (f64, f64) {
        let sizes = &self.ring.sizes;
        (
            -sizes.plate_thickness.max(sizes.seat_height),
            sizes.spigot_length,
        )
    }

    /// The ends of the bar.
    pub(super) fn ends(&self) -> (f64, f64) {
        let (front, rear) = self.faces();
        let in_the_chuck = PARTED_FACE_MM + self.stock.kerf_mm + self.stock.grip_mm;
        if self.is_body_outward() {
            (front - in_the_chuck, rear + FACING_MM)
        } else {
            (front - FACING_MM, rear + in_the_chuck)
        }
    }

    /// The bar before anything is cut.
    pub(super) fn whole(&self) -> Zone {
        Zone {
            z: self.ends(),
            r: (0.0, self.stock.diameter_mm / 2.0),
        }
    }

    /// What lies in the jaws of the chuck.
    pub(super) fn gripped(&self) -> (f64, f64) {
        let (left, right) = self.ends();
        if self.is_body_outward() {
            (left, left + self.stock.grip_mm)
        } else {
            (right - self.stock.grip_mm, right)
        }
    }

    /// What is turned in the first setting: from the free end past the kerf.
    fn reached(&self) -> (f64, f64) {
        let (left, right) = self.ends();
        let kept = self.stock.grip_mm;
        if self.is_body_outward() {
            (left + kept, right + PAST_MM)
        } else {
            (left - PAST_MM, right - kept)
        }
    }

    /// The zones of an operation; none for those that take no metal off in this picture.
    pub(super) fn zones(&self, operation: Op) -> Vec<Zone> {
        match operation {
            Op::FaceEnd => vec![self.face_end()],
            Op::RoughOutside => vec![self.rim(ROUGHING_ALLOWANCE_MM / 2.0)],
            Op::Rim => vec![self.rim(0.0)],
            Op::RoughBore => vec![self.rough_bore()],
            Op::PartOff => vec![self.second_face(PARTED_FACE_MM)],
            Op::FaceSecondSide => vec![self.second_face(self.left_on_the_seat())],
            Op::FinalSkim => vec![self.final_skim()],
            Op::BayonetDiameters => self.bayonet_diameters(),
            Op::FlangeRear => vec![self.behind(self.left_on_the_flange(), self.lug_radii())],
            Op::Groove => vec![self.groove()],
            Op::LugLeadIn => vec![self.lug_lead_in()],
            Op::RearBore => self.rear_bore(),
            Op::PlateFront => self.plate_front(),
            Op::SeatSide => self.seat_side(),
            Op::SeatFace => vec![self.ahead(self.rough_seat(), self.seat_radii())],
            Op::ThreadBore => self.thread_bore(),
            Op::PinAnnulus => vec![self.pin_annulus()],
            Op::Relief => vec![self.relief()],
            Op::ThreadChamfer => vec![self.thread_chamfer()],
            Op::MakeArbor
            | Op::BoreJaws
            | Op::SetScrews
            | Op::Thread
            | Op::ThreadMouth
            | Op::AngleMark
            | Op::MillGaps
            | Op::LockHole
            | Op::IndexMark
            | Op::DeburrLugs
            | Op::DeburrAndWash
            | Op::Measure
            | Op::TrialFit
            | Op::Coat => Vec::new(),
        }
    }

    /// Everything ahead of a plane.
    fn ahead(&self, z: f64, r: (f64, f64)) -> Zone {
        let left = self.ends().0 - PAST_MM;
        Zone { z: (left, z), r }
    }

    /// Everything behind a plane.
    fn behind(&self, z: f64, r: (f64, f64)) -> Zone {
        let right = self.ends().1 + PAST_MM;
        Zone { z: (z, right), r }
    }

    /// From the axis past the surface of the bar.
    fn all_radii(&self) -> (f64, f64) {
        self.outside_of(0.0)
    }

    /// From a radius past the surface of the bar.
    fn outside_of(&self, radius: f64) -> (f64, f64) {
        (radius, self.stock.diameter_mm / 2.0 + PAST_MM)
    }

    fn face_end(&self) -> Zone {
        let (front, rear) = self.faces();
        if self.is_body_outward() {
            self.behind(rear, self.all_radii())
        } else {
            self.ahead(front, self.all_radii())
        }
    }

    fn rim(&self, allowance: f64) -> Zone {
        Zone {
            z: self.reached(),
            r: self.outside_of(self.ring.sizes.flange_diameter / 2.0 + allowance),
        }
    }

    fn rough_bore(&self) -> Zone {
        let sizes = &self.ring.sizes;
        let bore = if self.ring.thread_runs_through {
            self.ring.thread_minor
        } else {
            self.ring
                .thread_minor
                .min(sizes.lip_bore)
                .min(sizes.rear_bore)
        };
        Zone {
            z: self.reached(),
            r: (0.0, (bore - ROUGHING_ALLOWANCE_MM) / 2.0),
        }
    }

    /// The side that was parted, with something left on it.
    fn second_face(&self, left_mm: f64) -> Zone {
        let (front, rear) = self.faces();
        if self.is_body_outward() {
            self.ahead(front - left_mm, self.all_radii())
        } else {
            let left_mm = if left_mm < PARTED_FACE_MM {
                0.0
            } else {
                left_mm
            };
            self.behind(rear + left_mm, self.all_radii())
        }
    }

    fn final_skim(&self) -> Zone {
        let sizes = &self.ring.sizes;
        if self.is_body_outward() {
            self.ahead(-sizes.seat_height, self.seat_radii())
        } else {
            self.behind(0.0, self.outside_of(sizes.groove_root_diameter / 2.0))
        }
    }

    /// What is left on the seat till the last skim, mm.
    const fn left_on_the_seat(&self) -> f64 {
        if self.is_body_outward() {
            SKIM_ALLOWANCE_MM
        } else {
            0.0
        }
    }

    /// What is left on the flange rear face till the last skim, mm.
    const fn left_on_the_flange(&self) -> f64 {
        SKIM_ALLOWANCE_MM - self.left_on_the_seat()
    }

    fn rough_seat(&self) -> f64 {
        -self.ring.sizes.seat_height - self.left_on_the_seat()
    }

    /// Radii over which the seat's plane is faced, mm.
    fn seat_radii(&self) -> (f64, f64) {
        match self.ring.seat {
            SeatKind::Flush | SeatKind::Boss => self.all_radii(),
            SeatKind::Counterbore => (0.0, self.ring.sizes.seat_diameter / 2.0),
        }
    }

    fn lug_radii(&self) -> (f64, f64) {
        self.outside_of(self.ring.sizes.lug_diameter / 2.0)
    }

    fn lug_rear(&self) -> f64 {
        self.ring.sizes.groove_width + self.ring.sizes.lug_thickness
    }

    fn bayonet_diameters(&self) -> Vec<Zone> {
        let nose = self.outside_of(self.ring.sizes.nose_diameter / 2.0);
        vec![
            self.behind(
                self.left_on_the_flange() + FACE_ALLOWANCE_MM,
                self.lug_radii(),
            ),
            self.behind(self.lug_rear(), nose),
        ]
    }

    fn groove(&self) -> Zone {
        let sizes = &self.ring.sizes;
        Zone {
            z: (self.left_on_the_flange(), sizes.groove_width),
            r: self.outside_of(sizes.groove_root_diameter / 2.0),
        }
    }

    fn lug_lead_in(&self) -> Zone {
        let sizes = &self.ring.sizes;
        let rear = self.lug_rear();
        Zone {
            z: (rear - sizes.lug_lead_in, rear),
            r: self.outside_of(sizes.lug_diameter / 2.0 - sizes.lug_lead_in),
        }
    }

    fn lip_face(&self) -> f64 {
        self.ring.sizes.lip_face_depth - self.ring.sizes.seat_height
    }

    fn rear_bore(&self) -> Vec<Zone> {
        if self.ring.thread_runs_through {
            return Vec::new();
        }
        let sizes = &self.ring.sizes;
        let inside = (0.0, sizes.nose_diameter / 2.0);
        vec![self.behind(self.lip_face() + sizes.lip_thickness, inside)]
    }

    fn plate_front(&self) -> Vec<Zone> {
        let sizes = &self.ring.sizes;
        let radii = match self.ring.seat {
            SeatKind::Flush => return Vec::new(),
            SeatKind::Boss => self.outside_of(sizes.seat_diameter / 2.0 + BOSS_ALLOWANCE_MM),
            SeatKind::Counterbore => self.all_radii(),
        };
        vec![self.ahead(-sizes.plate_thickness, radii)]
    }

    fn seat_side(&self) -> Vec<Zone> {
        let sizes = &self.ring.sizes;
        let seat = sizes.seat_diameter / 2.0;
        match self.ring.seat {
            SeatKind::Flush => Vec::new(),
            SeatKind::Boss => vec![self.ahead(-sizes.plate_thickness, self.outside_of(seat))],
            SeatKind::Counterbore => vec![self.ahead(self.rough_seat(), (0.0, seat))],
        }
    }

    fn thread_bore(&self) -> Vec<Zone> {
        let sizes = &self.ring.sizes;
        let bore = (0.0, self.ring.thread_minor / 2.0);
        if self.ring.thread_runs_through {
            return vec![self.behind(self.ends().0 - PAST_MM, bore)];
        }
        let lip_face = self.lip_face();
        vec![
            self.ahead(lip_face, bore),
            self.ahead(lip_face + sizes.lip_thickness, (0.0, sizes.lip_bore / 2.0)),
        ]
    }

    fn pin_annulus(&self) -> Zone {
        let sizes = &self.ring.sizes;
        let outer = sizes.annulus_outer.min(self.ring.thread_minor);
        Zone {
            z: (self.lip_face(), sizes.annulus_depth - sizes.seat_height),
            r: (0.0, outer / 2.0),
        }
    }

    fn relief(&self) -> Zone {
        let sizes = &self.ring.sizes;
        Zone {
            z: (sizes.thread_length - sizes.seat_height, self.lip_face()),
            r: (0.0, sizes.relief_diameter / 2.0),
        }
    }

    fn thread_chamfer(&self) -> Zone {
        let sizes = &self.ring.sizes;
        Zone {
            z: (-sizes.seat_height, sizes.thread_chamfer - sizes.seat_height),
            r: (0.0, self.ring.thread_minor / 2.0 + sizes.thread_chamfer),
        }
    }
}
