//! The limits and clearances a design is derived and judged by, each with its default and reason.

use serde::{Deserialize, Serialize};

use crate::mount::Unit;

/// Writes the limits struct, its keys and its defaults.
macro_rules! limits {
    ($($variant:ident = $field:ident, $default:expr, $unit:ident, $label:literal, $why:literal;)*) => {
        /// The settings.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
        pub enum LimitKey { $(#[doc = $label] $variant,)* }

        impl LimitKey {
            /// Every setting, in the order shown.
            pub const ALL: &'static [Self] = &[$(Self::$variant,)*];

            /// The name in the file.
            #[must_use]
            pub const fn name(self) -> &'static str {
                match self { $(Self::$variant => stringify!($field),)* }
            }

            /// The label on screen.
            #[must_use]
            pub const fn label(self) -> &'static str {
                match self { $(Self::$variant => $label,)* }
            }

            /// The unit.
            #[must_use]
            pub const fn unit(self) -> Unit {
                match self { $(Self::$variant => Unit::$unit,)* }
            }

            /// The default.
            #[must_use]
            pub const fn default_value(self) -> f64 {
                match self { $(Self::$variant => $default,)* }
            }

            /// Why the default is what it is.
            #[must_use]
            pub const fn why(self) -> &'static str {
                match self { $(Self::$variant => $why,)* }
            }
        }

        /// Limits and clearances of one design; common practice, no source, unless the reason names one.
        #[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
        #[serde(deny_unknown_fields, default)]
        pub struct Limits {
            $(#[doc = $label] pub $field: f64,)*
        }

        impl Default for Limits {
            fn default() -> Self {
                Self { $($field: $default,)* }
            }
        }

        impl Limits {
            /// The value behind `key`.
            #[must_use]
            pub const fn get(&self, key: LimitKey) -> f64 {
                match key { $(LimitKey::$variant => self.$field,)* }
            }

            /// The value behind `key`, to change.
            pub const fn get_mut(&mut self, key: LimitKey) -> &mut f64 {
                match key { $(LimitKey::$variant => &mut self.$field,)* }
            }
        }
    };
}

limits! {
    LipClash = lip_clash, 0.8, Mm, "Lip thickness, clash under", "a thinner lip bends under the pin and tears in turning";
    LipCaution = lip_caution, 1.0, Mm, "Lip thickness, caution under", "1 mm is usual";
    WallClash = wall_clash, 0.6, Mm, "Wall in metal, clash under", "thinner walls spring away from the tool";
    WallCaution = wall_caution, 1.0, Mm, "Wall in metal, caution under", "1 mm is comfortable on a small lathe";
    HoleRimClash = hole_rim_clash, 0.8, Mm, "Rim of a hole, clash under", "a drill breaks out of a thinner rim";
    HoleRimCaution = hole_rim_caution, 1.2, Mm, "Rim of a hole, caution under", "a drill wanders";
    TurnsClash = turns_clash, 2.0, Turns, "Full turns engaged, clash under", "two turns are the least that hold a lens straight while it is screwed in";
    TurnsCaution = turns_caution, 3.0, Turns, "Full turns engaged, caution under", "three turns are usual";
    ReliefPitchesClash = relief_pitches_clash, 1.5, One, "Relief, clash under so many pitches", "the tool needs its own width and a stop";
    StopTimeCaution = stop_time_caution, 1.0, S, "Time to stop in the relief, caution under", "two hands must move: simple reaction 0.2 s and the lever on top";
    PinTravelMargin = pin_travel_margin, 0.1, Mm, "Pin travel, margin at both ends", "a pin at its bottom carries the lens off its seat";
    PinLanding = pin_landing, 0.5, Mm, "Lip beyond the pin, wanted", "the pin must not slip off the lip";
    PinLandingClash = pin_landing_clash, 0.2, Mm, "Lip beyond the pin, clash under", "a worn pin slips off";
    TurningRadialClash = turning_radial_clash, 0.3, Mm, "Radial gap to a turning ring, clash under", "play of the ring and fingers";
    TurningRadialCaution = turning_radial_caution, 0.5, Mm, "Radial gap to a turning ring, caution under", "play of the ring and fingers";
    TurningAxialClash = turning_axial_clash, 0.15, Mm, "Axial gap to a turning ring, clash under", "grit under the ring";
    TurningAxialCaution = turning_axial_caution, 0.3, Mm, "Axial gap to a turning ring, caution under", "grit under the ring";
    ClearanceClash = clearance_clash, 0.1, Mm, "Gap to anything else, clash under", "burrs and finish";
    ClearanceCaution = clearance_caution, 0.2, Mm, "Gap to anything else, caution under", "burrs and finish";
    MirrorClash = mirror_clash, 0.5, Mm, "Gap to the mirror, clash under", "a mirror bounces";
    MirrorCaution = mirror_caution, 1.0, Mm, "Gap to the mirror, caution under", "a mirror bounces";
    BarrelClearance = barrel_clearance, 0.5, Mm, "Radial gap over the rear barrel, wanted", "the barrel may run out and the lens may sit off centre";
    LugOverlapClash = lug_overlap_clash, 60.0, Percent, "Ear covered by the lug, clash under", "less than this share of the ear holds too little";
    LugOverlapCaution = lug_overlap_caution, 80.0, Percent, "Ear covered by the lug, caution under", "most bayonets cover nearly all of it";
    PlayClash = play_clash, 0.03, Mm, "Unsprung axial play, clash over", "play goes straight into focus and tilt";
    PlayCaution = play_caution, 0.01, Mm, "Unsprung axial play, caution over", "play goes straight into focus and tilt";
    GroovePlaySprung = groove_play_sprung, 0.05, Mm, "Groove play where springs pull", "the springs take it up";
    SpigotClearance = spigot_clearance, 0.15, Mm, "Spigot in the throat, radial", "a running fit that does not bind when tilted";
    LugClearance = lug_clearance, 0.15, Mm, "Lug in the slot bore, radial", "a running fit that does not bind when tilted";
    EntryClearance = entry_clearance, 0.15, Mm, "Lug in its slot, each side", "the ring must drop in";
    EntryClearanceClash = entry_clearance_clash, 0.05, Mm, "Lug in its slot, clash under", "burrs jam it";
    ThickShare = thick_share, 1.0, One, "Register too thick, share of the focus budget", "beyond the budget infinity is lost";
    ThickLeast = thick_least, 0.01, Mm, "Register too thick, least budget", "a hundredth is the finest a careful hobby lathe holds";
    ThinCaution = thin_caution, 0.10, Mm, "Register too thin, caution over", "the distance scale is off";
    ThinClash = thin_clash, 0.25, Mm, "Register too thin, clash over", "close focus and scale are lost";
    BodyRegisterTolerance = body_register_tolerance, 0.02, Mm, "Register tolerance of the body", "in practice plus or minus 0.02";
    LensRegisterTolerance = lens_register_tolerance, 0.02, Mm, "Register tolerance of the lens", "in practice plus or minus 0.02";
    CocDivisor = coc_divisor, 1500.0, One, "Circle of confusion: diagonal over", "format diagonal / 1500 is one of the printed conventions";
    PlateMost = plate_most, 2.5, Mm, "Plate, at most", "more only adds weight";
    PlateRecessed = plate_recessed, 1.5, Mm, "Plate with a counterbore", "leaves metal under the sunk seat";
    SeatProudLeast = seat_proud_least, 1.2, Mm, "Seat height for a proud seat, at least", "a thinner plate springs in turning";
    BossLand = boss_land, 0.5, Mm, "Boss beyond the shoulder, radial", "the shoulder sits on whole metal";
    BossWall = boss_wall, 1.5, Mm, "Boss beyond the thread, radial", "wall over the thread";
    CounterboreGap = counterbore_gap, 0.2, Mm, "Counterbore round the shoulder, radial", "the shoulder drops in";
    SeatBearingClash = seat_bearing_clash, 0.6, Mm, "Seat under the shoulder, clash under", "a narrow seat is bruised and tilts";
    SeatBearingCaution = seat_bearing_caution, 1.0, Mm, "Seat under the shoulder, caution under", "a millimetre of face all round is comfortable";
    FlangeBearingClash = flange_bearing_clash, 1.5, Mm, "Flange on the bearing face, clash under", "a narrow flange tilts";
    FlangeBearingCaution = flange_bearing_caution, 2.5, Mm, "Flange on the bearing face, caution under", "most flanges bear on more";
    LugThickness = lug_thickness, 1.3, Mm, "Lug thickness", "most metal bayonets have 1.2 to 1.5";
    LugBehindGap = lug_behind_gap, 0.3, Mm, "Gap behind the lugs", "screws and grit behind the ears";
    LipThickness = lip_thickness, 1.0, Mm, "Lip thickness", "1 mm is usual";
    ThreadTurns = thread_turns, 3.0, Turns, "Thread, full turns wanted", "three turns are usual";
    ThreadEndGap = thread_end_gap, 0.3, Mm, "Gap behind the male thread", "the lens must stop on its seat, never on the thread's end";
    ThreadEndClash = thread_end_clash, 0.1, Mm, "Gap behind the male thread, clash under", "burrs and finish";
    AnnulusDepthGap = annulus_depth_gap, 0.5, Mm, "Annulus behind the free pin", "the pin must stay out";
    NoseGap = nose_gap, 0.5, Mm, "Free depth behind the nose", "nothing behind may touch it";
    LockHoleGap = lock_hole_gap, 0.15, Mm, "Lock hole over the pin, diameter", "the pin must drop without searching";
    LockHolePlayCaution = lock_hole_play_caution, 0.25, Mm, "Lock hole over the pin, caution over", "the ring rocks in its lock";
    LockHoleDepthGap = lock_hole_depth_gap, 0.3, Mm, "Lock hole beyond the pin", "swarf at the bottom";
    LockAngleClash = lock_angle_clash, 0.1, Mm, "Lock hole off the pin, clash over", "the pin does not drop";
    StopGapCaution = stop_gap_caution, 0.3, Deg, "Lug short of the stop when locked, caution over", "the lock pin alone then carries the turn";
    Handling = handling, 3.0, One, "Handling factor on the lens weight", "a camera is set down hard";
    StressCaution = stress_caution, 50.0, Percent, "Stress, caution over so much of the yield strength", "twice over for a load known only roughly";
    StressClash = stress_clash, 100.0, Percent, "Stress, clash over so much of the yield strength", "beyond it the metal stays bent";
    CreepShare = creep_share, 33.3, Percent, "Strength of a plastic that counts", "plastics creep under a lasting load: a third is usual";
    VignettingCaution = vignetting_caution, 0.1, Stops, "Light clipped at the corner, caution over", "a tenth of a stop is seen on an even sky";
    VignettingClash = vignetting_clash, 0.5, Stops, "Light clipped at the corner, clash over", "half a stop is seen in every picture";
    TemperatureSpan = temperature_span, 20.0, K, "Warmer or colder than the workshop", "0 to 40 °C about the 20 °C of ISO 1";
    ReachShareCaution = reach_share_caution, 90.0, Percent, "Rings that reach infinity, caution under", "one ring is made: nine in ten is a fair chance";
    ReachShareClash = reach_share_clash, 50.0, Percent, "Rings that reach infinity, clash under", "more likely than not infinity is lost";
    Parallelism = parallelism, 0.02, Mm, "Seat out of parallel with the flange, at most", "a second setting on a shouldered arbor holds two hundredths";
    IndexCaution = index_caution, 5.0, Deg, "Mark off 12 o'clock, caution over", "five degrees are seen at a glance";
    ToolRoom = tool_room, 0.1, Mm, "Room round a tool, caution under", "chips must get out, and no slide stops dead";
    BarOverhang = bar_overhang, 4.0, One, "Overhang of an inside tool in bar diameters", "a steel bar chatters beyond four diameters (public table of a tool school)";
    CutterRunOut = cutter_run_out, 0.3, Mm, "Run-out of the end mill past the lug", "the corner of the mill must pass the whole lug";
    RoundnessCaution = roundness_caution, 0.01, Mm, "Out of round from the chuck, caution over", "the thread class leaves a few hundredths, the seat less";
    RoundnessClash = roundness_clash, 0.05, Mm, "Out of round from the chuck, clash over", "the running fits of spigot and lugs are gone";
    ServiceTorque = service_torque, 300.0, Nmm, "Torque of a hand on the lens rings", "a stiff focusing ring";
    SetScrewStress = set_screw_stress, 60.0, Mpa, "Stress in a set-screw tightened by hand", "a small hex key, and a tapped hole in soft metal";
    ScrewThreadCaution = screw_thread_caution, 1.0, One, "Set-screw thread, caution under so many diameters", "one diameter of thread is usual in soft metal";
    ScrewThreadClash = screw_thread_clash, 0.5, One, "Set-screw thread, clash under so many diameters", "under half a diameter it strips";
}

impl Limits {
    /// Whether `key` differs from its default.
    #[must_use]
    pub fn is_changed(&self, key: LimitKey) -> bool {
        // Exact on purpose: any other number is a change.
        self.get(key).to_bits() != key.default_value().to_bits()
    }
}
