//! Where to set the work for every lug edge, the lock hole and the index mark.
//!
//! The list is made for who stands on the body side, where the gaps are milled. All angles count clockwise from datum
//! zero as seen from there; datum zero is 12 o'clock of the locked ring, the witness line. Positions of the cutter for
//! each way of milling are worked from the geometry of a round cutter (own derivation).

use super::degrees::{DegreesMinutesSeconds, tidy_deg};
use super::dividing_head::{Setting, settings_on_few_plates};
use crate::document::MillingMethod;
use crate::geometry::{Flank, Point, Side, plan_point, seen_from};
use crate::mount::Unit;
use crate::ring::{ResolvedRing, gaps_between, lug_flank};
use crate::workshop::Workshop;

/// The side the list is seen from: the gaps are milled from the body side.
pub const SEEN_FROM: Side = Side::Body;

/// What a row of the list is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mark {
    /// The edge where a gap begins, clockwise seen from the body side; gaps counted from 1.
    GapBegins(usize),
    /// The edge where it ends.
    GapEnds(usize),
    /// The lock hole.
    LockHole,
    /// The index mark on the rim.
    IndexMark,
}

impl Mark {
    /// The words in the list.
    #[must_use]
    pub fn label(self) -> String {
        match self {
            Self::GapBegins(gap) => format!("gap {gap} begins"),
            Self::GapEnds(gap) => format!("gap {gap} ends"),
            Self::LockHole => "lock hole".to_owned(),
            Self::IndexMark => "index mark".to_owned(),
        }
    }
}

/// One setting of the work.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// What for.
    pub mark: Mark,
    /// The true edge or centre, degrees from datum zero, seen from the body side.
    pub edge_deg: f64,
    /// The angle to be turned to the cutter's line, degrees from datum zero: the edge less what the cutter covers.
    pub work_deg: f64,
    /// Radius of the cutter's centre at its last place, mm; 0 for the index mark.
    pub centre_radius_mm: f64,
    /// Turns and holes, where the head can divide.
    pub setting: Option<Setting>,
    /// The error of that setting at the lug diameter, mm, signed.
    pub error_mm: f64,
    /// The same angle for a rotary table.
    pub table: DegreesMinutesSeconds,
    /// Centre of the tool in the plan for a digital readout, mm from the axis: x right, y up, seen from the body
    /// side, 12 o'clock up. `None` where the tool points at the axis.
    pub readout: Option<Point>,
}

/// The list of settings and how the cutter stands.
#[derive(Clone, Debug, PartialEq)]
pub struct DividingList {
    /// Every setting, clockwise by gaps, then hole and mark.
    pub rows: Vec<Row>,
    /// How cutter and slides are set, in words, with the numbers.
    pub set_up: Vec<String>,
    /// What stands against it, such as a gap narrower than the cutter.
    pub faults: Vec<String>,
}

/// The list for a ring and a workshop.
#[must_use]
pub fn dividing_list(ring: &ResolvedRing, workshop: &Workshop) -> DividingList {
    let mut list = DividingList {
        rows: Vec::new(),
        set_up: Vec::new(),
        faults: Vec::new(),
    };
    match lug_flank(ring) {
        Some(flank) => list.add_gaps(ring, &flank),
        None => list.faults.push(format!(
            "a cutter of {} cannot mill lugs of {} on a nose of {}",
            mm(2.0 * ring.cutter_radius),
            mm(ring.sizes.lug_diameter),
            mm(ring.sizes.nose_diameter)
        )),
    }
    list.add_hole_and_mark(ring);
    list.divide(ring, workshop);
    list
}

impl DividingList {
    fn add_gaps(&mut self, ring: &ResolvedRing, flank: &Flank) {
        self.set_up = set_up(ring, flank);
        let mut gaps: Vec<(f64, f64)> = gaps_between(&ring.lugs)
            .iter()
            .map(|gap| (from_body_side(gap.end_deg()), gap.extent_deg))
            .collect();
        gaps.sort_by(|a, b| a.0.total_cmp(&b.0));
        for (index, (begins, extent)) in gaps.into_iter().enumerate() {
            if let Err(fault) = flank.check_gap(extent.to_radians()) {
                self.faults.push(format!("gap {}: {fault}", index + 1));
            }
            let edges = [
                (Mark::GapBegins(index + 1), begins, 1.0),
                (Mark::GapEnds(index + 1), begins + extent, -1.0),
            ];
            for (mark, edge, into_gap) in edges {
                for place in places(ring.milling, flank) {
                    self.rows.push(Row {
                        readout: place.centre_deg.map(|covered| {
                            plan_point(place.radius_mm, (edge + into_gap * covered).to_radians())
                        }),
                        centre_radius_mm: place.radius_mm,
                        ..row(mark, edge, edge + into_gap * place.turned_deg)
                    });
                }
            }
        }
    }

    fn add_hole_and_mark(&mut self, ring: &ResolvedRing) {
        let sizes = &ring.sizes;
        if sizes.lock_hole_diameter > 0.0 {
            let angle = from_body_side(sizes.lock_hole_angle);
            let radius = sizes.lock_hole_circle / 2.0;
            self.rows.push(Row {
                readout: Some(plan_point(radius, angle.to_radians())),
                centre_radius_mm: radius,
                ..row(Mark::LockHole, angle, angle)
            });
        }
        let angle = from_body_side(sizes.index_mark_angle);
        self.rows.push(row(Mark::IndexMark, angle, angle));
    }

    fn divide(&mut self, ring: &ResolvedRing, workshop: &Workshop) {
        let angles: Vec<f64> = self.rows.iter().map(|row| row.work_deg).collect();
        let found = settings_on_few_plates(&workshop.dividing_head, &angles);
        let step = workshop
            .rotary_table
            .as_ref()
            .map_or(1, |table| table.step_seconds);
        for (row, setting) in self.rows.iter_mut().zip(found) {
            row.table = DegreesMinutesSeconds::nearest(row.work_deg, step);
            row.error_mm = setting.map_or(0.0, |one| one.error_mm(ring.sizes.lug_diameter / 2.0));
            row.setting = setting;
        }
    }
}

fn row(mark: Mark, edge_deg: f64, work_deg: f64) -> Row {
    Row {
        mark,
        edge_deg: tidy_deg(edge_deg),
        work_deg: tidy_deg(work_deg),
        centre_radius_mm: 0.0,
        setting: None,
        error_mm: 0.0,
        table: DegreesMinutesSeconds::nearest(work_deg, 1),
        readout: None,
    }
}

/// A stored clock angle as it reads from the body side, degrees.
fn from_body_side(clock_deg: f64) -> f64 {
    tidy_deg(seen_from(SEEN_FROM, clock_deg.to_radians()).to_degrees())
}

/// A last place of the cutter at an edge.
struct Place {
    /// Radius of its centre, mm.
    radius_mm: f64,
    /// How far into the gap the line on the cutter's path lies from the edge, degrees.
    turned_deg: f64,
    /// How far into the gap the cutter's centre lies from the edge, degrees; none where it points at the axis.
    centre_deg: Option<f64>,
}

fn places(milling: MillingMethod, flank: &Flank) -> Vec<Place> {
    let centre = flank.centre_radius();
    let covered = flank.half_angle_rad().to_degrees();
    let half_gap = flank.least_gap_rad().to_degrees() / 2.0;
    match milling {
        MillingMethod::OffsetFeed => vec![Place {
            radius_mm: centre,
            turned_deg: 0.0,
            centre_deg: Some(covered),
        }],
        MillingMethod::CentreFeed => vec![Place {
            radius_mm: centre,
            turned_deg: half_gap,
            centre_deg: Some(half_gap),
        }],
        MillingMethod::PlungeAndTurn => flank
            .plunge_radii()
            .into_iter()
            .map(|radius_mm| {
                let covered = (flank.cutter() / radius_mm).min(1.0).asin().to_degrees();
                Place {
                    radius_mm,
                    turned_deg: covered,
                    centre_deg: Some(covered),
                }
            })
            .collect(),
        MillingMethod::RadialCutter => vec![Place {
            radius_mm: flank.centre_radius() - flank.cutter(),
            turned_deg: 0.0,
            centre_deg: None,
        }],
    }
}

fn set_up(ring: &ResolvedRing, flank: &Flank) -> Vec<String> {
    let cutter = flank.cutter();
    let mut lines = vec![format!(
        "{}, cutter {} across as it cuts; lug edges hold at the lug diameter {}",
        ring.milling.word(),
        mm(2.0 * cutter),
        mm(ring.sizes.lug_diameter)
    )];
    match ring.milling {
        MillingMethod::OffsetFeed => {
            lines.push(format!(
                "cutter parallel to the axis; cross offset {} toward the gap, feed in until the centre stands {} from \
                 the axis along the feed",
                mm(cutter),
                mm(flank.tangent_radius())
            ));
            lines.push(format!(
                "then lock the slides and turn the work through the gap less {} to clear the floor; change the offset \
                 to the other side for the other edge",
                Unit::Deg.show(2.0 * flank.half_angle_rad().to_degrees())
            ));
        }
        MillingMethod::CentreFeed => lines.push(format!(
            "cutter parallel to the axis and on its line (offset 0); feed in until the centre stands {} from the axis",
            mm(flank.centre_radius())
        )),
        MillingMethod::PlungeAndTurn => lines.push(
            "cutter parallel to the axis and on its line (offset 0); plunge at each radius listed, slides locked, and \
             turn the work from edge to edge"
                .to_owned(),
        ),
        MillingMethod::RadialCutter => lines.push(format!(
            "cutter pointing at the axis, offset {} toward the gap; feed down until its end stands {} from the axis; \
             change the offset to the other side for the other edge",
            mm(cutter),
            mm(flank.centre_radius() - cutter)
        )),
    }
    lines
}

fn mm(value: f64) -> String {
    Unit::Mm.show(value)
}

#[cfg(test)]
#[path = "dividing_tests.rs"]
mod tests;
