//! Change gears between spindle and leadscrew: whether a pitch can be cut, with what error, and whether the half-nut
//! may be opened.
//!
//! The carriage goes `leadscrew pitch x drivers / driven` a turn of the spindle (arithmetic of gears). The half-nut
//! may be closed anywhere where the leadscrew's pitch is a whole number of thread pitches; else only every so many
//! turns of the leadscrew, which a thread dial counts.

use std::fmt;

/// So many gears are looked at; a box that holds more has them twice.
const MOST_GEARS: usize = 30;
/// The greatest error of pitch taken for a thread that fits, as a share: 0.5 % are 0.02 mm over four turns of 1 mm.
/// Own choice.
const GREATEST_ERROR: f64 = 0.005;
/// Pitches that differ by less than this share are the same.
const EXACT: f64 = 1e-9;

/// Gears from spindle to leadscrew, in pairs of driver and driven; idlers between them do not count.
#[derive(Clone, Debug, PartialEq)]
pub struct GearTrain {
    /// Pairs of driver and driven teeth: one, or two on a common stud.
    pub pairs: Vec<(u32, u32)>,
    /// The pitch it cuts, mm.
    pub pitch_mm: f64,
    /// That pitch over the wanted one, less 1.
    pub error_share: f64,
}

impl GearTrain {
    fn of(pairs: Vec<(u32, u32)>, leadscrew_mm: f64, wanted_mm: f64) -> Self {
        let ratio: f64 = pairs
            .iter()
            .map(|(driver, driven)| f64::from(*driver) / f64::from(*driven))
            .product();
        let pitch_mm = leadscrew_mm * ratio;
        Self {
            pairs,
            pitch_mm,
            error_share: pitch_mm / wanted_mm - 1.0,
        }
    }

    /// Whether it cuts the wanted pitch without error.
    #[must_use]
    pub fn is_exact(&self) -> bool {
        self.error_share.abs() < EXACT
    }

    /// The error over a length of thread, mm.
    #[must_use]
    pub fn error_mm(&self, length_mm: f64) -> f64 {
        self.error_share * length_mm
    }

    /// After how many turns of the leadscrew the half-nut meets the thread again.
    #[must_use]
    pub fn leadscrew_turns(&self) -> u64 {
        let product = |side: fn(&(u32, u32)) -> u32| -> u64 {
            self.pairs
                .iter()
                .map(|pair| u64::from(side(pair)))
                .product()
        };
        let (drivers, driven) = (product(|pair| pair.0), product(|pair| pair.1));
        drivers / common_divisor(drivers, driven)
    }

    /// What to do with the half-nut, with the wheels that the thread dial can be given.
    #[must_use]
    pub fn half_nut(&self, dial_teeth: &[u32]) -> HalfNut {
        let every = self.leadscrew_turns();
        if every == 1 {
            return HalfNut::Anywhere;
        }
        dial_teeth
            .iter()
            .find(|teeth| **teeth > 0 && u64::from(**teeth) % every == 0)
            .map_or(HalfNut::StopAndReverse { every }, |teeth| HalfNut::ByDial {
                teeth: *teeth,
                every,
            })
    }
}

impl fmt::Display for GearTrain {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (index, (driver, driven)) in self.pairs.iter().enumerate() {
            let join = if index > 0 { ", then " } else { "" };
            write!(f, "{join}{driver} drives {driven}")?;
        }
        Ok(())
    }
}

/// Whether the half-nut may be opened between passes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HalfNut {
    /// Close it anywhere.
    Anywhere,
    /// Close it at a mark of the thread dial.
    ByDial {
        /// Teeth of the dial's wheel.
        teeth: u32,
        /// Turns of the leadscrew from one place to the next.
        every: u64,
    },
    /// Leave it closed; withdraw the tool, stop, run back.
    StopAndReverse {
        /// Turns of the leadscrew after which it would meet the thread again.
        every: u64,
    },
}

/// The train that comes nearest to a pitch, one pair before two; `None` where none comes within half a per cent.
#[must_use]
pub fn best_train(leadscrew_mm: f64, pitch_mm: f64, gears: &[u32]) -> Option<GearTrain> {
    let usable = leadscrew_mm > 0.0 && pitch_mm > 0.0;
    let gears: Vec<u32> = gears
        .iter()
        .copied()
        .filter(|teeth| *teeth > 0 && usable)
        .take(MOST_GEARS)
        .collect();
    let pairs = all_pairs(&gears);
    let mut best: Option<GearTrain> = None;
    let mut offer = |train: GearTrain| {
        let is_better = best
            .as_ref()
            .is_none_or(|old| train.error_share.abs() + EXACT < old.error_share.abs());
        if is_better {
            best = Some(train);
        }
    };
    for one in &pairs {
        offer(GearTrain::of(vec![one.teeth], leadscrew_mm, pitch_mm));
    }
    // A compound train is looked at only through its plain ratio, so that the search allocates little.
    for (index, one) in pairs.iter().enumerate() {
        for two in pairs
            .iter()
            .skip(index + 1)
            .filter(|two| one.is_free_of(two))
        {
            let pitch = leadscrew_mm * one.ratio() * two.ratio();
            if (pitch / pitch_mm - 1.0).abs() <= GREATEST_ERROR {
                offer(GearTrain::of(
                    vec![one.teeth, two.teeth],
                    leadscrew_mm,
                    pitch_mm,
                ));
            }
        }
    }
    best.filter(|train| train.error_share.abs() <= GREATEST_ERROR)
}

/// Two different gears of the box.
struct Pair {
    places: (usize, usize),
    teeth: (u32, u32),
}

impl Pair {
    fn ratio(&self) -> f64 {
        f64::from(self.teeth.0) / f64::from(self.teeth.1)
    }

    const fn is_free_of(&self, other: &Self) -> bool {
        self.places.0 != other.places.0
            && self.places.0 != other.places.1
            && self.places.1 != other.places.0
            && self.places.1 != other.places.1
    }
}

fn all_pairs(gears: &[u32]) -> Vec<Pair> {
    let placed = || gears.iter().copied().enumerate();
    placed()
        .flat_map(|driver| placed().map(move |driven| (driver, driven)))
        .filter(|(driver, driven)| driver.0 != driven.0)
        .map(|(driver, driven)| Pair {
            places: (driver.0, driven.0),
            teeth: (driver.1, driven.1),
        })
        .collect()
}

const fn common_divisor(mut a: u64, mut b: u64) -> u64 {
    while b != 0 {
        (a, b) = (b, a % b);
    }
    a
}

#[cfg(test)]
mod tests {
    use super::*;

    const BOX: [u32; 14] = [20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 75, 80, 127];

    /// Arithmetic: 3 mm x 20/60 = 1 mm, three threads to a turn of the leadscrew.
    #[test]
    fn a_metric_thread_on_a_metric_leadscrew() {
        let train = best_train(3.0, 1.0, &BOX).unwrap();
        assert!(train.is_exact());
        assert_eq!(train.to_string(), "20 drives 60");
        assert_eq!(train.half_nut(&[]), HalfNut::Anywhere);
        // 0.75 is a quarter of 3: anywhere; 1.25 = 3 x 5/12: every 5 turns.
        let fine = best_train(3.0, 0.75, &BOX).unwrap();
        assert_eq!(fine.half_nut(&[]), HalfNut::Anywhere);
        let odd = best_train(3.0, 1.25, &BOX).unwrap();
        assert_eq!(odd.half_nut(&[14]), HalfNut::StopAndReverse { every: 5 });
        assert_eq!(
            odd.half_nut(&[14, 15]),
            HalfNut::ByDial {
                teeth: 15,
                every: 5
            }
        );
    }

    #[test]
    fn no_gears_no_train() {
        assert_eq!(best_train(3.0, 1.0, &[]), None);
        assert_eq!(best_train(3.0, 1.0, &[0, 40]), None);
        assert_eq!(best_train(3.0, 1.0, &[40, 41]), None);
        assert_eq!(best_train(0.0, 1.0, &BOX), None);
    }

    /// Every pair and every pair of pairs tried without any shortcut.
    #[test]
    fn no_train_of_the_box_comes_nearer() {
        let small = [20, 25, 30, 45, 50, 63];
        for pitch in [0.7056, 0.9, 1.0, 1.0583, 1.27] {
            let mut least = f64::INFINITY;
            let n = small.len();
            for (a, b) in (0..n).flat_map(|a| (0..n).map(move |b| (a, b))) {
                if a == b {
                    continue;
                }
                let simple = 3.0 * f64::from(small[a]) / f64::from(small[b]);
                least = least.min((simple / pitch - 1.0).abs());
                for (c, d) in (0..n).flat_map(|c| (0..n).map(move |d| (c, d))) {
                    if c != d && ![a, b].contains(&c) && ![a, b].contains(&d) {
                        let compound = simple * f64::from(small[c]) / f64::from(small[d]);
                        least = least.min((compound / pitch - 1.0).abs());
                    }
                }
            }
            match best_train(3.0, pitch, &small) {
                Some(train) => assert!(train.error_share.abs() <= least + EXACT, "{pitch}"),
                None => assert!(least > GREATEST_ERROR, "{pitch}: {least}"),
            }
        }
    }
}
