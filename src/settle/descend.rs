//! Downhill by trial: steps along single dimensions as long as the clashes get less, for clashes without a slope.

use super::cancelled::Cancelled;
use super::level::Level;
use super::problem::Problem;
use super::reading::{Reading, Stop};

/// First step as a share of the span a dimension may move over.
const FIRST_SHARE: f64 = 0.25;
/// First step at most, mm or degrees.
const FIRST: f64 = 2.0;
/// The steps are halved so many times.
const HALVINGS: u32 = 8;
/// A single clash weighs at most this.
const MOST: f64 = 10.0;
/// A ring that is none weighs more than all clashes together.
const NO_RING: f64 = 1000.0;

/// How bad a ring is: 0 without a clash.
fn badness(reading: &Reading) -> f64 {
    if reading.level > Level::Clash {
        return 0.0;
    }
    let clashes = reading.at(Level::Clash).map(|mark| match mark.judged {
        Some(judged) => 0.1 + (-judged.share).clamp(0.0, MOST),
        None => 1.0,
    });
    let none = match reading.stop {
        None => 0.0,
        Some(Stop::Shape(_) | Stop::Refused(_) | Stop::Lacking) => NO_RING,
    };
    clashes.sum::<f64>() + none
}

/// A ring without a clash, downhill from `from`.
pub(super) fn descend(problem: &Problem, from: &[f64]) -> Result<Option<Vec<f64>>, Cancelled> {
    let mut at = problem.inside(from);
    let mut bad = badness(&problem.read(&at)?);
    let mut scale = 1.0;
    for _ in 0..HALVINGS {
        let mut moved = true;
        while moved && bad > 0.0 {
            moved = false;
            for (index, one) in problem.let_go.iter().enumerate() {
                let step = scale * FIRST.min((one.high - one.low) * FIRST_SHARE);
                for way in [step, -step] {
                    let mut next = at.clone();
                    if let Some(value) = next.get_mut(index) {
                        *value += way;
                    }
                    let next = problem.inside(&next);
                    let less = badness(&problem.read(&next)?);
                    if less < bad {
                        (at, bad, moved) = (next, less, true);
                    }
                }
            }
        }
        if bad == 0.0 {
            return Ok(Some(at));
        }
        scale /= 2.0;
    }
    Ok(None)
}
