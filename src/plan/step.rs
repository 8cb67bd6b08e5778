//! One step of the plan: sizes to reach, tool, speed and feed, what to check before going on, and the caution.

use super::operation::Operation as Op;
use super::route::Setting;
use super::run_out::RunOut;
use super::shortfall::{boring_bar, groove_tool, relief_tool};
use super::speeds::{
    SpindleSpeed, Work, cutting_row, feed_a_tooth_mm, speed_m_min, spindle_speed, table_feed_mm_min,
};
use super::step_sizes::{TargetSize, target_sizes};
use super::threading::threading_tool;
use crate::document::Design;
use crate::document::Route;
use crate::mount::Unit;
use crate::ring::{Derivation, ResolvedRing};
use crate::workshop::{CuttingGroup, Dials, Workshop};

/// How the edge is fed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Feed {
    /// So much a turn, mm, least and greatest.
    ATurn(f64, f64),
    /// So much a tooth, mm, which makes so much a minute, mm.
    Table {
        /// Feed a tooth, mm.
        a_tooth_mm: f64,
        /// Feed of the table, mm/min.
        mm_min: f64,
    },
    /// One pitch a turn, mm.
    Pitch(f64),
    /// By hand, with feeling.
    ByHand,
}

/// Spindle speed and feed of a step.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CutSpeed {
    /// The spindle.
    pub spindle: SpindleSpeed,
    /// The feed.
    pub feed: Feed,
}

/// One step.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// What to do.
    pub operation: Op,
    /// Where the work stands.
    pub setting: Setting,
    /// The tool; empty where none is listed for it in the workshop.
    pub tool: String,
    /// The sizes to reach.
    pub sizes: Vec<TargetSize>,
    /// Speed and feed; none for bench work, and while nobody has said how the material cuts.
    pub speed: Option<CutSpeed>,
    /// What to check before going on.
    pub check: &'static str,
    /// What to beware of; empty where there is nothing special.
    pub caution: &'static str,
}

/// What every step is made from.
pub(super) struct Bench<'a> {
    pub(super) design: &'a Design,
    pub(super) workshop: &'a Workshop,
    pub(super) derivation: &'a Derivation,
    pub(super) ring: &'a ResolvedRing,
    pub(super) route: Route,
    pub(super) bar_mm: f64,
    pub(super) run_out: Option<RunOut>,
}

impl Bench<'_> {
    pub(super) fn step(&self, operation: Op) -> Step {
        Step {
            operation,
            setting: self.route.setting(operation),
            tool: self.tool(operation),
            sizes: target_sizes(self.route, operation, self.derivation, self.ring),
            speed: self.speed(operation),
            check: check(operation),
            caution: caution(operation),
        }
    }

    fn group(&self) -> CuttingGroup {
        self.workshop
            .material(&self.design.ring.material)
            .map_or(CuttingGroup::Unknown, |stuff| stuff.cutting)
    }

    fn tool(&self, operation: Op) -> String {
        let (ring, shop) = (self.ring, self.workshop);
        let named = match operation {
            Op::RearBore | Op::ThreadBore => boring_bar(ring, shop).map(|tool| tool.name.as_str()),
            Op::Relief => relief_tool(ring, shop).map(|tool| tool.name.as_str()),
            Op::Thread => threading_tool(ring, shop).map(|tool| tool.name.as_str()),
            Op::Groove => groove_tool(ring, shop).map(|tool| tool.name.as_str()),
            Op::MillGaps => shop
                .cutter(&self.design.ring.cutter)
                .map(|cutter| cutter.name.as_str()),
            Op::PartOff => super::stock::parting_tool(shop).map(|tool| tool.name.as_str()),
            Op::FaceEnd
            | Op::RoughOutside
            | Op::Rim
            | Op::MakeArbor
            | Op::FaceSecondSide
            | Op::PlateFront
            | Op::SeatSide
            | Op::SeatFace
            | Op::BayonetDiameters
            | Op::FlangeRear
            | Op::FinalSkim => Some("turning tool"),
            Op::RoughBore => Some("drills, then boring bar"),
            Op::PinAnnulus => Some("face grooving tool"),
            Op::ThreadChamfer | Op::ThreadMouth | Op::LugLeadIn => Some("45 degree tool"),
            Op::SetScrews | Op::LockHole => Some("centre drill, drill"),
            Op::BoreJaws => Some("boring bar"),
            Op::AngleMark | Op::IndexMark => Some("scribing point"),
            Op::DeburrLugs | Op::DeburrAndWash => Some("fine file, stone, brush"),
            Op::Measure | Op::TrialFit | Op::Coat => None,
        };
        named.unwrap_or_default().to_owned()
    }

    /// What the edge does, and the diameter that counts for its speed, mm.
    fn work(&self, operation: Op) -> Option<(Work, f64)> {
        let sizes = &self.ring.sizes;
        Some(match operation {
            Op::FaceEnd | Op::RoughOutside => (Work::Roughing, self.bar_mm),
            Op::Rim | Op::FaceSecondSide | Op::PlateFront | Op::FlangeRear => {
                (Work::Finishing, sizes.flange_diameter)
            }
            Op::MakeArbor => (Work::Finishing, self.ring.thread_major),
            Op::SeatSide | Op::SeatFace => (Work::Finishing, sizes.seat_diameter),
            Op::FinalSkim => match self.route {
                Route::ThreadFirst => (Work::Finishing, sizes.flange_diameter),
                Route::LugsInTheBar | Route::LugsOnAMandrel => {
                    (Work::Finishing, sizes.seat_diameter)
                }
            },
            Op::RoughBore | Op::ThreadBore | Op::ThreadChamfer | Op::ThreadMouth => {
                (Work::Boring, self.ring.thread_minor)
            }
            Op::RearBore => (Work::Boring, sizes.rear_bore),
            Op::BoreJaws => (Work::Boring, sizes.flange_diameter),
            Op::PinAnnulus => (Work::Parting, sizes.annulus_outer),
            Op::Relief => (Work::Parting, sizes.relief_diameter),
            Op::Thread => (Work::Threading, self.ring.thread_major),
            Op::BayonetDiameters | Op::LugLeadIn => (Work::Finishing, sizes.lug_diameter),
            Op::Groove => (Work::Parting, sizes.lug_diameter),
            Op::PartOff => (Work::Parting, self.bar_mm),
            Op::MillGaps => (Work::Milling, 2.0 * self.ring.cutter_radius),
            Op::LockHole => (Work::Drilling, sizes.lock_hole_diameter),
            Op::SetScrews
            | Op::AngleMark
            | Op::IndexMark
            | Op::DeburrLugs
            | Op::DeburrAndWash
            | Op::Measure
            | Op::TrialFit
            | Op::Coat => return None,
        })
    }

    fn speed(&self, operation: Op) -> Option<CutSpeed> {
        let (work, diameter) = self.work(operation)?;
        let wanted = speed_m_min(self.group(), work)?;
        let lathe = &self.workshop.lathe;
        let spindle = match work {
            Work::Milling | Work::Drilling => {
                spindle_speed(wanted, diameter, &self.workshop.mill.speeds_rpm(), None)?
            }
            Work::Threading => self.threading_speed(wanted, diameter)?,
            Work::Roughing | Work::Finishing | Work::Boring | Work::Parting => spindle_speed(
                wanted,
                diameter,
                &lathe.speeds_rpm(),
                self.workshop.chuck.limit_rpm,
            )?,
        };
        Some(CutSpeed {
            spindle,
            feed: self.feed(work, &spindle)?,
        })
    }

    /// The time to stop in the relief comes before the cutting speed.
    fn threading_speed(&self, wanted: f64, diameter: f64) -> Option<SpindleSpeed> {
        let lathe = &self.workshop.lathe;
        let limit = match self.run_out {
            None => None,
            Some(run_out) => run_out
                .fastest_rpm(&lathe.speeds_rpm())
                .or(Some(lathe.threading_rpm)),
        };
        let marked = self.workshop.chuck.limit_rpm;
        let limit = match (limit, marked) {
            (Some(one), Some(other)) => Some(one.min(other)),
            (one, other) => one.or(other),
        };
        spindle_speed(wanted, diameter, &lathe.speeds_rpm(), limit)
    }

    fn feed(&self, work: Work, spindle: &SpindleSpeed) -> Option<Feed> {
        let row = cutting_row(self.group())?;
        Some(match work {
            Work::Roughing => Feed::ATurn(row.roughing_feed_mm.0, row.roughing_feed_mm.1),
            Work::Finishing | Work::Boring => {
                Feed::ATurn(row.finishing_feed_mm.0, row.finishing_feed_mm.1)
            }
            Work::Parting | Work::Drilling => Feed::ByHand,
            Work::Threading => Feed::Pitch(self.ring.thread.pitch_mm()),
            Work::Milling => {
                let cutter = self.workshop.cutter(&self.design.ring.cutter)?;
                let a_tooth_mm = feed_a_tooth_mm(self.group(), cutter.diameter_mm)?;
                Feed::Table {
                    a_tooth_mm,
                    mm_min: table_feed_mm_min(spindle.rpm, cutter.flutes, a_tooth_mm),
                }
            }
        })
    }
}

impl Step {
    /// Tool, sizes, speed and check, each under its head; a size is given as the dials of the lathe show it.
    #[must_use]
    pub fn details(&self, dials: Dials) -> Vec<(&'static str, String)> {
        let speed = self.speed.map(|speed| speed.text()).unwrap_or_default();
        std::iter::once(("tool", self.tool.clone()))
            .chain(self.sizes.iter().map(|size| ("size", size.text_on(dials))))
            .chain([("speed", speed), ("check", self.check.to_owned())])
            .filter(|(_, text)| !text.is_empty())
            .collect()
    }
}

impl CutSpeed {
    /// Speed and feed as they stand on the plan.
    #[must_use]
    pub fn text(&self) -> String {
        let SpindleSpeed {
            wanted_m_min,
            rpm,
            reached_m_min,
            is_too_fast,
        } = self.spindle;
        let feed = match self.feed {
            Feed::ATurn(least, greatest) => format!("feed {least:.2} to {greatest:.2} mm a turn"),
            Feed::Table { a_tooth_mm, mm_min } => {
                format!("feed {mm_min:.0} mm/min ({a_tooth_mm:.3} a tooth)")
            }
            Feed::Pitch(pitch) => format!("feed {} a turn", Unit::Mm.show(pitch)),
            Feed::ByHand => "feed by hand".to_owned(),
        };
        let warning = if is_too_fast {
            "; the lowest speed is still faster than wanted: cut lightly"
        } else {
            ""
        };
        format!(
            "{rpm:.0} rpm = {reached_m_min:.0} m/min (wanted {wanted_m_min:.0}), {feed}{warning}"
        )
    }
}

/// What to check before going on; common practice, no source.
const fn check(operation: Op) -> &'static str {
    match operation {
        Op::FaceEnd => "no pip left in the middle",
        Op::RoughOutside | Op::RoughBore => {
            "allowance left all round; let it cool before finishing"
        }
        Op::Rim | Op::BayonetDiameters => "measure at two places a quarter turn apart",
        Op::MakeArbor => {
            "thread over wires, shoulder square; a mating thread runs up to the shoulder by hand"
        }
        Op::BoreJaws => "the rim goes in without play, the flange lies on the step all round",
        Op::FaceSecondSide => "no feeler goes under the flange or shoulder before cutting",
        Op::PlateFront => "plate thickness at three places",
        Op::SeatSide => "the lens shoulder, or a disc of its size, goes on",
        Op::SeatFace => "allowance for the last skim is there; seat runs true on an indicator",
        Op::ThreadBore => {
            "bore with a gauge at three places; three-jaw lobes do not show between two points"
        }
        Op::PinAnnulus => "depth from the seat, both walls",
        Op::Relief => "width with the tool's own marks; deeper than the thread will be",
        Op::ThreadChamfer => "chamfer wider than the thread is deep",
        Op::SetScrews => "no burr inside",
        Op::Thread => "balls or a male gauge: the lens, or its gauge, runs in by hand",
        Op::ThreadMouth => "a straight edge lies flat across the mouth",
        Op::RearBore => "bore, and what is left of the lip",
        Op::FlangeRear => "runs true on an indicator",
        Op::Groove => "groove width with blocks or a pin; the ear's thickness goes in",
        Op::LugLeadIn => "both chamfers the same",
        Op::FinalSkim => "measure the register at five places before the last cut, and after it",
        Op::AngleMark => "crank at datum zero, play taken up the way it will be turned",
        Op::MillGaps => "count turns and holes aloud; first gap against the paper template",
        Op::LockHole => "the body's pin, or a drill of its size, drops in",
        Op::IndexMark => "mark against the first gap as on the list",
        Op::DeburrLugs => "a fingernail finds no edge",
        Op::PartOff => "the wall only is left to part",
        Op::DeburrAndWash => "no chip in groove, relief or hole",
        Op::Measure => "every row of the inspection sheet",
        Op::TrialFit => "rear barrel, mirror and contacts clear before the ring is turned",
        Op::Coat => "seat, flange rear face and thread masked or allowed for",
    }
}

/// What to beware of; from public machine shop safety rules, the rest common practice, no source.
const fn caution(operation: Op) -> &'static str {
    match operation {
        Op::FaceEnd => "chuck key out; turn the chuck once by hand, jaws clear of the slides",
        Op::RoughOutside | Op::RoughBore => "long strings: stop, then a hook, never fingers",
        Op::BoreJaws | Op::FaceSecondSide => {
            "grip lightly: a thin ring is squeezed out of round by a few newtons"
        }
        Op::Relief | Op::Groove => "narrow tool: low speed, keep it cut or out, never let it rub",
        Op::Thread => {
            "half-nut and cross-slide both at the relief; reverse only with a locked chuck"
        }
        Op::PartOff => "catch the ring on a rod in its bore, never with a hand",
        Op::MillGaps => {
            "spindle of the head locked while cutting; cut against the cutter's turn, overrun the play"
        }
        Op::LockHole => "clamp the work; the drill pulls when it breaks through",
        Op::DeburrLugs => "interrupted lugs cut while they turn: deburr at a standstill",
        Op::TrialFit => {
            "a hand under the lens, a soft surface below; never force it, find the burr"
        }
        Op::Rim
        | Op::MakeArbor
        | Op::PlateFront
        | Op::SeatSide
        | Op::SeatFace
        | Op::ThreadBore
        | Op::PinAnnulus
        | Op::ThreadChamfer
        | Op::SetScrews
        | Op::ThreadMouth
        | Op::BayonetDiameters
        | Op::RearBore
        | Op::FlangeRear
        | Op::LugLeadIn
        | Op::FinalSkim
        | Op::AngleMark
        | Op::IndexMark
        | Op::DeburrAndWash
        | Op::Measure
        | Op::Coat => "",
    }
}
