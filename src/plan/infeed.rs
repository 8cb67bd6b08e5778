//! The infeed table of a single-point thread.
//!
//! Two methods, both named where they are printed. Constant area: the sum after pass n of N is `h √(n / N)`, so that
//! every pass cuts the same area. Softer first cut: `h √(x / (N - 1))` with x = 0.3, 1, 2 … N - 1, as insert makers
//! print it.

use super::whole::whole;
use crate::workshop::CuttingGroup;

/// The least cut with high-speed steel, mm: less rubs. Common practice, no source.
pub const LEAST_CUT_MM: f64 = 0.02;
/// A thread is cut in at least so many passes and at most so many.
const PASSES: (u32, u32) = (3, 60);
/// Passes by pitch in mm, middle of the usual span; common practice, no source.
const USUAL_PASSES: [(f64, f64); 5] =
    [(0.5, 5.5), (0.75, 6.5), (0.8, 7.0), (1.0, 8.0), (1.5, 10.5)];
/// More passes on a small lathe with a boring bar; common practice, no source.
const BORING_BAR: f64 = 1.5;
/// More passes in stainless steel; common practice, no source.
const STAINLESS: f64 = 1.3;
/// Flat of the basic thread form at the major diameter, in pitches (ISO 68-1).
const BASIC_FLAT_PITCHES: f64 = 1.0 / 8.0;
/// Height of a 60 degree triangle of base 1.
const TRIANGLE: f64 = 0.866_025_403_784;
/// The first factor of the softer method.
const SOFT_START: f64 = 0.3;

/// How the depth is shared among the passes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum InfeedMethod {
    /// Every pass cuts the same area.
    ConstantArea,
    /// As constant area over one pass less, with the first cut split.
    SofterFirstCut,
}

impl InfeedMethod {
    /// The name in the table.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::ConstantArea => "constant area",
            Self::SofterFirstCut => "softer first cut",
        }
    }

    /// Depth after each of `passes`, mm, measured radially; one pass takes it all.
    #[must_use]
    pub fn sums_mm(self, depth_mm: f64, passes: u32) -> Vec<f64> {
        let passes = passes.max(1);
        let share = |pass: u32| match self {
            Self::ConstantArea => f64::from(pass) / f64::from(passes),
            Self::SofterFirstCut if passes == 1 => 1.0,
            Self::SofterFirstCut if pass == 1 => SOFT_START / f64::from(passes - 1),
            Self::SofterFirstCut => f64::from(pass - 1) / f64::from(passes - 1),
        };
        (1..=passes)
            .map(|pass| depth_mm * share(pass).sqrt())
            .collect()
    }
}

/// Passes by constant area for a first cut of at most `first_mm`: `⌈(h / d)²⌉`.
#[must_use]
pub fn passes_for_first_cut(depth_mm: f64, first_mm: f64) -> u32 {
    whole((depth_mm / first_mm).powi(2).ceil()).clamp(1, PASSES.1)
}

/// Passes for a thread in a bore: the usual number for its pitch, more for the slender bar and for stainless steel,
/// but never so many that the last one cuts less than [`LEAST_CUT_MM`].
#[must_use]
pub fn suggested_passes(pitch_mm: f64, depth_mm: f64, group: CuttingGroup) -> u32 {
    let usual = usual_passes(pitch_mm) * BORING_BAR;
    let hard = match group {
        CuttingGroup::FreeStainless | CuttingGroup::Stainless => STAINLESS,
        CuttingGroup::Unknown
        | CuttingGroup::Aluminium
        | CuttingGroup::Brass
        | CuttingGroup::MildSteel
        | CuttingGroup::Acetal => 1.0,
    };
    let mut passes = whole(usual * hard).clamp(PASSES.0, PASSES.1);
    let last_cut = |passes: u32| {
        let before = f64::from(passes - 1) / f64::from(passes);
        depth_mm * (1.0 - before.sqrt())
    };
    while passes > PASSES.0 && last_cut(passes) < LEAST_CUT_MM {
        passes -= 1;
    }
    passes
}

/// Straight lines between the rows; beyond them in proportion to the pitch.
fn usual_passes(pitch_mm: f64) -> f64 {
    let [first, .., last] = USUAL_PASSES;
    if pitch_mm <= first.0 {
        return first.1 * pitch_mm / first.0;
    }
    USUAL_PASSES
        .iter()
        .zip(USUAL_PASSES.iter().skip(1))
        .find(|(_, to)| pitch_mm <= to.0)
        .map_or(last.1 * pitch_mm / last.0, |(from, to)| {
            from.1 + (to.1 - from.1) * (pitch_mm - from.0) / (to.0 - from.0)
        })
}

/// Travel of the compound slide for a radial depth, mm: `depth / cos a`, `a` from the cross-slide direction.
///
/// ```
/// use flangewright::plan::on_compound_mm;
/// assert!((on_compound_mm(0.5413, 29.5) - 0.6219).abs() < 5e-5);
/// ```
#[must_use]
pub fn on_compound_mm(radial_mm: f64, compound_angle_deg: f64) -> f64 {
    radial_mm / compound_angle_deg.to_radians().cos()
}

/// How much deeper than the basic depth a 60 degree tool must go whose tip is narrower than the basic flat of an
/// internal thread, mm; negative for a wider tip.
#[must_use]
pub fn deeper_by_tip_mm(pitch_mm: f64, tip_flat_mm: f64) -> f64 {
    (BASIC_FLAT_PITCHES * pitch_mm - tip_flat_mm) * TRIANGLE
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn passes_follow_pitch_and_material_and_never_rub() {
        // Common practice, no source: P 1.0 takes 7 to 9 passes, half as many again with a boring bar.
        let depth = 0.541_27;
        assert_eq!(suggested_passes(1.0, depth, CuttingGroup::Aluminium), 12);
        assert!(suggested_passes(1.5, 0.811_9, CuttingGroup::Stainless) > 15);
        for pitch in [0.25, 0.5, 0.75, 1.0, 2.0, 6.0] {
            let depth = 0.541_27 * pitch;
            let passes = suggested_passes(pitch, depth, CuttingGroup::Stainless);
            let sums = InfeedMethod::ConstantArea.sums_mm(depth, passes);
            let last = sums[sums.len() - 1] - sums[sums.len() - 2];
            assert!(
                last >= LEAST_CUT_MM || passes == PASSES.0,
                "{pitch}: {last}"
            );
        }
    }

    #[test]
    fn both_methods_end_at_the_full_depth_and_never_go_back() {
        for method in [InfeedMethod::ConstantArea, InfeedMethod::SofterFirstCut] {
            for passes in 1..20 {
                let sums = method.sums_mm(0.6, passes);
                assert!((sums.last().unwrap() - 0.6).abs() < 1e-12);
                assert!(sums.is_sorted());
            }
        }
    }
}
