//! Cutting speed, spindle speed and feed by material and operation, clamped to what the machine has.
//!
//! The table is for high-speed steel, the low end for small machines; carbide goes about twice as fast (public tables
//! of cutting speeds). `n = 1000 v / (π D)`.

use crate::workshop::CuttingGroup;

/// What the edge does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Work {
    /// Roughing on the lathe.
    Roughing,
    /// Finishing on the lathe.
    Finishing,
    /// Boring.
    Boring,
    /// Grooving and parting.
    Parting,
    /// Drilling.
    Drilling,
    /// Cutting a thread with a single point.
    Threading,
    /// End milling.
    Milling,
}

/// Speeds and feeds of one group of materials for high-speed steel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CuttingRow {
    /// Speed for roughing, m/min.
    pub roughing_m_min: f64,
    /// Speed for finishing, m/min.
    pub finishing_m_min: f64,
    /// Feed for roughing, mm a turn, least and greatest.
    pub roughing_feed_mm: (f64, f64),
    /// Feed for finishing, mm a turn, least and greatest.
    pub finishing_feed_mm: (f64, f64),
    /// Feed a tooth in milling as a share of that in aluminium; common practice, no source.
    pub milling_share: f64,
    /// Where the speeds come from.
    pub source: &'static str,
}

/// The row of a group; `None` for a material whose group nobody has stated.
#[must_use]
pub const fn cutting_row(group: CuttingGroup) -> Option<CuttingRow> {
    match group {
        CuttingGroup::Unknown => None,
        CuttingGroup::Aluminium => Some(CuttingRow {
            roughing_m_min: 60.0,
            finishing_m_min: 120.0,
            roughing_feed_mm: (0.15, 0.30),
            finishing_feed_mm: (0.05, 0.10),
            milling_share: 1.0,
            source: "public table of cutting speeds, 200 to 300 ft/min",
        }),
        CuttingGroup::Brass => Some(CuttingRow {
            roughing_m_min: 60.0,
            finishing_m_min: 90.0,
            roughing_feed_mm: (0.10, 0.25),
            finishing_feed_mm: (0.05, 0.10),
            milling_share: 1.0,
            source: "public table of cutting speeds, 150 to 300 ft/min",
        }),
        CuttingGroup::MildSteel => Some(CuttingRow {
            roughing_m_min: 25.0,
            finishing_m_min: 35.0,
            roughing_feed_mm: (0.10, 0.25),
            finishing_feed_mm: (0.05, 0.10),
            milling_share: 2.0 / 3.0,
            source: "public table of cutting speeds, 110 ft/min at 125 to 175 HB",
        }),
        CuttingGroup::FreeStainless => Some(CuttingRow {
            roughing_m_min: 8.0,
            finishing_m_min: 20.0,
            roughing_feed_mm: (0.08, 0.20),
            finishing_feed_mm: (0.05, 0.10),
            milling_share: 0.5,
            source: "US T.O. 1-1A-9 table 2-8, 25 to 55 and 65 to 105 ft/min",
        }),
        CuttingGroup::Stainless => Some(CuttingRow {
            roughing_m_min: 6.0,
            finishing_m_min: 15.0,
            roughing_feed_mm: (0.08, 0.20),
            finishing_feed_mm: (0.05, 0.10),
            milling_share: 0.5,
            source: "US T.O. 1-1A-9 table 2-8, 20 to 40 and 50 to 80 ft/min",
        }),
        CuttingGroup::Acetal => Some(CuttingRow {
            roughing_m_min: 90.0,
            finishing_m_min: 180.0,
            roughing_feed_mm: (0.10, 0.38),
            finishing_feed_mm: (0.10, 0.20),
            milling_share: 1.0,
            source: "public turning guidelines for acetal; speed for high-speed steel: common practice, no source",
        }),
    }
}

/// The speed of an operation as a factor of that for roughing; common practice, no source, but for drilling (0.82 of
/// turning in a public table; taken lower) and threading (US Army TC 9-524, from memory: 0.2 to 0.4).
const fn factor(work: Work) -> f64 {
    match work {
        Work::Roughing | Work::Finishing | Work::Milling => 1.0,
        Work::Boring => 0.7,
        Work::Parting => 0.5,
        Work::Drilling => 0.6,
        Work::Threading => 0.3,
    }
}

/// Cutting speed of an operation, m/min, where the material's group is known.
#[must_use]
pub const fn speed_m_min(group: CuttingGroup, work: Work) -> Option<f64> {
    match cutting_row(group) {
        None => None,
        Some(row) => {
            let base = match work {
                Work::Finishing => row.finishing_m_min,
                Work::Roughing
                | Work::Boring
                | Work::Parting
                | Work::Drilling
                | Work::Threading
                | Work::Milling => row.roughing_m_min,
            };
            Some(base * factor(work))
        }
    }
}

/// Spindle speed for a cutting speed in m/min on a diameter in mm, rpm: `1000 v / (π D)`.
///
/// ```
/// use flangewright::plan::rpm_of;
/// assert!((rpm_of(90.0, 65.0) - 440.7).abs() < 0.05);
/// ```
#[must_use]
pub const fn rpm_of(speed_m_min: f64, diameter_mm: f64) -> f64 {
    1000.0 * speed_m_min / (std::f64::consts::PI * diameter_mm)
}

/// A spindle speed chosen from those of a machine.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpindleSpeed {
    /// The cutting speed that was wanted, m/min.
    pub wanted_m_min: f64,
    /// The spindle speed chosen, rpm.
    pub rpm: f64,
    /// The cutting speed it gives, m/min.
    pub reached_m_min: f64,
    /// Whether even the lowest speed is faster than wanted.
    pub is_too_fast: bool,
}

/// The highest speed of `steps_rpm` that does not exceed the wanted cutting speed, nor the chuck's mark; the lowest
/// where all exceed it. `None` where the machine has no speeds within the mark, or the diameter is not above 0.
#[must_use]
pub fn spindle_speed(
    wanted_m_min: f64,
    diameter_mm: f64,
    steps_rpm: &[f64],
    limit_rpm: Option<f64>,
) -> Option<SpindleSpeed> {
    if diameter_mm.is_nan() || diameter_mm <= 0.0 {
        return None;
    }
    let most = rpm_of(wanted_m_min, diameter_mm);
    let allowed = |rpm: &&f64| **rpm > 0.0 && limit_rpm.is_none_or(|limit| **rpm <= limit);
    let within = steps_rpm
        .iter()
        .filter(allowed)
        .filter(|rpm| **rpm <= most)
        .copied()
        .max_by(f64::total_cmp);
    let rpm = within.or_else(|| {
        steps_rpm
            .iter()
            .filter(allowed)
            .copied()
            .min_by(f64::total_cmp)
    })?;
    Some(SpindleSpeed {
        wanted_m_min,
        rpm,
        reached_m_min: rpm * std::f64::consts::PI * diameter_mm / 1000.0,
        is_too_fast: within.is_none(),
    })
}

/// Feed a tooth of an end mill, mm: 0.02 at 3 mm, 0.04 at 6, 0.065 at 10 in aluminium, straight lines between, less in
/// steel; common practice, no source.
#[must_use]
pub fn feed_a_tooth_mm(group: CuttingGroup, cutter_mm: f64) -> Option<f64> {
    const POINTS: [(f64, f64); 4] = [(0.0, 0.0), (3.0, 0.02), (6.0, 0.04), (10.0, 0.065)];
    let row = cutting_row(group)?;
    let in_aluminium = POINTS
        .iter()
        .zip(POINTS.iter().skip(1))
        .find(|(_, to)| cutter_mm <= to.0)
        .map_or(0.065, |(from, to)| {
            from.1 + (to.1 - from.1) * (cutter_mm - from.0) / (to.0 - from.0)
        });
    Some(in_aluminium * row.milling_share)
}

/// Feed of the table, mm/min: teeth times turns times the feed a tooth.
#[must_use]
pub fn table_feed_mm_min(rpm: f64, flutes: u32, feed_a_tooth_mm: f64) -> f64 {
    rpm * f64::from(flutes) * feed_a_tooth_mm
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The default lathe's speeds.
    const STEPS: [f64; 10] = [
        70.0, 100.0, 125.0, 180.0, 250.0, 360.0, 500.0, 710.0, 1000.0, 1400.0,
    ];

    #[test]
    fn the_step_below_is_taken_and_the_speed_reached_is_told() {
        let speed = spindle_speed(90.0, 65.0, &STEPS, None).unwrap();
        assert!((speed.rpm - 360.0).abs() < 1e-12 && !speed.is_too_fast);
        assert!((speed.reached_m_min - 73.5).abs() < 0.05);
    }

    #[test]
    fn chuck_and_machine_limit_it() {
        let marked = spindle_speed(120.0, 30.0, &STEPS, Some(800.0)).unwrap();
        assert!((marked.rpm - 710.0).abs() < 1e-12);
        let slow = spindle_speed(8.0, 65.0, &STEPS, None).unwrap();
        assert!(slow.is_too_fast && (slow.rpm - 70.0).abs() < 1e-12);
        assert_eq!(spindle_speed(60.0, 65.0, &[], None), None);
        assert_eq!(spindle_speed(60.0, 65.0, &STEPS, Some(50.0)), None);
        assert_eq!(spindle_speed(60.0, 0.0, &STEPS, None), None);
    }

    #[test]
    fn a_material_nobody_has_grouped_gets_no_speed() {
        assert_eq!(speed_m_min(CuttingGroup::Unknown, Work::Roughing), None);
        assert_eq!(feed_a_tooth_mm(CuttingGroup::Unknown, 4.0), None);
    }

    /// Common practice, no source: a 6 mm mill takes 0.03 to 0.05 mm a tooth in aluminium, half of it in stainless.
    #[test]
    fn feeds_of_end_mills() {
        let tooth = feed_a_tooth_mm(CuttingGroup::Aluminium, 6.0).unwrap();
        assert!((0.03..=0.05).contains(&tooth));
        let stainless = feed_a_tooth_mm(CuttingGroup::FreeStainless, 6.0).unwrap();
        assert!((stainless * 2.0 - tooth).abs() < 1e-12);
        assert!((table_feed_mm_min(1000.0, 3, 0.04) - 120.0).abs() < 1e-9);
        assert!(feed_a_tooth_mm(CuttingGroup::Brass, 20.0).unwrap() <= 0.08);
    }
}
