//! The workpiece as it stands after each step: the bar less what has been cut off, in half-section, with what holds it.

use super::cut_zones::{Bar, Zone};
use super::operation::Operation as Op;
use super::route::Setting;
use super::stock::Stock;
use crate::document::Route;
use crate::geometry::{BooleanError, Outline, Region, difference, intersection};
use crate::ring::{Feature, ResolvedRing};

/// How far jaws are drawn to reach, mm.
const JAW_MM: f64 = 6.0;
/// Gap between the step of soft jaws and the lugs, mm.
const JAW_GAP_MM: f64 = 0.5;
/// Share of the plate that soft jaws hold.
const HELD_SHARE: f64 = 0.6;
/// How far the shoulder of an arbor is drawn, mm.
const SHOULDER_MM: f64 = 7.0;
/// Less area than this is a crumb of the geometry, mm2.
const CRUMB_MM2: f64 = 1e-6;

/// The workpiece after a step.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Stage {
    /// The metal in half-section: x is z along the axis, y the radius, mm.
    pub metal: Region,
    /// What this step takes off.
    pub taken: Vec<Outline>,
    /// What holds the work: jaws or arbor.
    pub held: Vec<Outline>,
    /// The steps done so far, this one among them.
    pub done: Vec<Op>,
    /// Whether the step shows in the plan from the body side rather than in the half-section.
    pub in_plan: bool,
}

impl Stage {
    /// Whether an operation is done.
    #[must_use]
    pub fn has(&self, operation: Op) -> bool {
        self.done.contains(&operation)
    }
}

/// Whether an operation shows in the plan.
const fn shows_in_plan(operation: Op) -> bool {
    match operation {
        Op::AngleMark | Op::MillGaps | Op::LockHole | Op::IndexMark | Op::DeburrLugs => true,
        Op::FaceEnd
        | Op::RoughOutside
        | Op::RoughBore
        | Op::Rim
        | Op::MakeArbor
        | Op::BoreJaws
        | Op::FaceSecondSide
        | Op::PlateFront
        | Op::SeatSide
        | Op::SeatFace
        | Op::ThreadBore
        | Op::PinAnnulus
        | Op::Relief
        | Op::ThreadChamfer
        | Op::SetScrews
        | Op::Thread
        | Op::ThreadMouth
        | Op::BayonetDiameters
        | Op::RearBore
        | Op::FlangeRear
        | Op::Groove
        | Op::LugLeadIn
        | Op::FinalSkim
        | Op::PartOff
        | Op::DeburrAndWash
        | Op::Measure
        | Op::TrialFit
        | Op::Coat => false,
    }
}

/// The workpiece after each of the operations, in their order. `outline` is the finished ring cut through a lug.
///
/// # Errors
/// [`BooleanError`] where two shapes cannot be cut from each other.
pub fn stages(
    route: Route,
    operations: &[Op],
    ring: &ResolvedRing,
    outline: &Outline<Feature>,
    stock: Stock,
) -> Result<Vec<Stage>, BooleanError> {
    let bar = Bar { ring, route, stock };
    let mut metal = bar
        .whole()
        .outline()
        .map_or_else(Region::default, |bar| Region::of(&bar));
    let mut all: Vec<Stage> = Vec::with_capacity(operations.len());
    for operation in operations {
        let mut taken = Vec::new();
        for zone in bar.zones(*operation) {
            for chips in chips(zone, outline)? {
                taken.extend(shared(&metal, &chips)?);
                metal = metal.without(&chips)?;
            }
        }
        let mut done = all.last().map_or_else(Vec::new, |stage| stage.done.clone());
        done.push(*operation);
        all.push(Stage {
            metal: metal.clone(),
            taken,
            held: held(&bar, route.setting(*operation)),
            done,
            in_plan: shows_in_plan(*operation),
        });
    }
    Ok(all)
}

/// What a zone takes off: all of it but the ring.
fn chips(zone: Zone, ring: &Outline<Feature>) -> Result<Vec<Outline>, BooleanError> {
    let Some(swept) = zone.outline() else {
        return Ok(Vec::new());
    };
    let left = difference(&swept, ring)?;
    Ok(left
        .outer
        .into_iter()
        .filter(|chips| chips.area() > CRUMB_MM2)
        .collect())
}

/// The metal that lies in an outline.
fn shared(metal: &Region, chips: &Outline) -> Result<Vec<Outline>, BooleanError> {
    let mut all = Vec::new();
    for outer in &metal.outer {
        let part = intersection(outer, chips)?;
        all.extend(part.outer.into_iter().filter(|one| one.area() > CRUMB_MM2));
    }
    Ok(all)
}

/// Jaws or arbor, above the axis.
fn held(bar: &Bar<'_>, setting: Setting) -> Vec<Outline> {
    let sizes = &bar.ring.sizes;
    let rim = sizes.flange_diameter / 2.0;
    let jaw = rim + JAW_MM;
    let zones = match (setting, bar.route) {
        (Setting::First, _) => {
            let surface = bar.stock.diameter_mm / 2.0;
            vec![Zone {
                z: bar.gripped(),
                r: (surface, surface + JAW_MM),
            }]
        }
        (Setting::Second, Route::ThreadFirst) => {
            let seat = -sizes.seat_height;
            let lip = seat + sizes.lip_face_depth;
            vec![
                Zone {
                    z: (seat, lip),
                    r: (0.0, bar.ring.thread_minor / 2.0),
                },
                Zone {
                    z: (seat - SHOULDER_MM, seat),
                    r: (0.0, sizes.seat_diameter.min(sizes.flange_diameter) / 2.0),
                },
            ]
        }
        (Setting::Second, Route::LugsInTheBar | Route::LugsOnAMandrel) => vec![
            Zone {
                z: (-HELD_SHARE * sizes.plate_thickness, 0.0),
                r: (rim, jaw),
            },
            Zone {
                z: (0.0, sizes.spigot_length.max(JAW_MM)),
                r: (sizes.lug_diameter / 2.0 + JAW_GAP_MM, jaw),
            },
        ],
        (Setting::Third | Setting::Bench, _) => Vec::new(),
    };
    zones.into_iter().filter_map(Zone::outline).collect()
}

#[cfg(test)]
#[path = "as_it_stands_tests.rs"]
mod tests;
