//! One figure of the table.

use std::fmt;
use std::hint::black_box;
use std::time::{Duration, Instant};

/// A measured time beside what it must be.
pub struct Figure {
    name: String,
    median: Duration,
    slowest: Duration,
    must_s: f64,
    aim_s: f64,
}

impl Figure {
    /// Times something so many times, after a few runs that are not counted. `bounds_s`: must and aim, seconds.
    pub fn measured<T>(
        name: impl Into<String>,
        bounds_s: (f64, f64),
        runs: usize,
        mut work: impl FnMut() -> T,
    ) -> Self {
        for _ in 0..3 {
            black_box(work());
        }
        let times = (0..runs)
            .map(|_| {
                let start = Instant::now();
                black_box(work());
                start.elapsed()
            })
            .collect();
        Self::of(name, bounds_s, times)
    }

    /// A figure of times that were taken elsewhere.
    pub fn of(name: impl Into<String>, bounds_s: (f64, f64), mut times: Vec<Duration>) -> Self {
        times.sort_unstable();
        Self {
            name: name.into(),
            median: times[times.len() / 2],
            slowest: times[(times.len() * 99 / 100).min(times.len() - 1)],
            must_s: bounds_s.0,
            aim_s: bounds_s.1,
        }
    }

    /// The median, seconds.
    pub fn median_s(&self) -> f64 {
        self.median.as_secs_f64()
    }

    /// Whether it takes twice the time that it must not exceed.
    pub fn is_far_off(&self) -> bool {
        self.median.as_secs_f64() > 2.0 * self.must_s
    }
}

/// Seconds in the unit that reads best.
pub fn shown(seconds: f64) -> String {
    if seconds < 1e-3 {
        format!("{:.0} us", seconds * 1e6)
    } else {
        format!("{:.2} ms", seconds * 1e3)
    }
}

impl fmt::Display for Figure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let median = self.median.as_secs_f64();
        let verdict = if median <= self.aim_s {
            "aim met"
        } else if median <= self.must_s {
            "must met"
        } else {
            "MISSED"
        };
        write!(
            f,
            "{:<34}{:>11}{:>11}{:>11}{:>11}  {verdict}",
            self.name,
            shown(median),
            shown(self.slowest.as_secs_f64()),
            shown(self.must_s),
            shown(self.aim_s)
        )
    }
}
