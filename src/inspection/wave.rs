//! One wave in a turn, fitted by least squares to readings at places round the ring.

use std::f64::consts::TAU;

use crate::tolerance::Component;

/// A wave has three unknowns: readings must be more, or too little is left over to tell the spread.
const LEAST_READINGS: usize = 5;
/// A wave needs so many different places.
const LEAST_PLACES: usize = 3;

/// Mean and wave of readings that go round the ring, round after round.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Wave {
    /// The height in the middle of the ring.
    pub mean: f64,
    /// Part of the wave that is highest at 12 o'clock.
    pub cosine: f64,
    /// Part that is highest at 3 o'clock.
    pub sine: f64,
    /// Standard deviation of a reading about the wave.
    pub deviation: f64,
    /// Readings more than unknowns.
    pub dof: f64,
    /// Variances of mean, cosine and sine for a deviation of 1.
    variances: [f64; 3],
}

impl Wave {
    /// Fits readings of which the first was taken at 12 o'clock and every next one place further clockwise, of
    /// `places` evenly round. `None` where there are too few.
    pub fn of(readings: &[f64], places: usize) -> Option<Self> {
        if readings.len() < LEAST_READINGS || places.min(readings.len()) < LEAST_PLACES {
            return None;
        }
        let rows: Vec<([f64; 3], f64)> = angles(places)
            .zip(readings)
            .map(|(angle, reading)| ([1.0, angle.cos(), angle.sin()], *reading))
            .collect();
        let mut normal = [[0.0; 3]; 3];
        let mut right = [0.0; 3];
        for (row, reading) in &rows {
            for (line, (own, sum)) in normal.iter_mut().zip(row.iter().zip(&mut right)) {
                *sum += own * reading;
                for (cell, other) in line.iter_mut().zip(row) {
                    *cell += own * other;
                }
            }
        }
        let inverse = inverted(normal)?;
        let [mean, cosine, sine] = inverse.map(|line| dot(line, right));
        let left: f64 = rows
            .iter()
            .map(|(row, reading)| (reading - dot(*row, [mean, cosine, sine])).powi(2))
            .sum();
        // One by one: a sum of ones is exact.
        let dof = rows.iter().map(|_| 1.0).sum::<f64>() - 3.0;
        let [[of_mean, _, _], [_, of_cosine, _], [_, _, of_sine]] = inverse;
        Some(Self {
            mean,
            cosine,
            sine,
            deviation: (left / dof).sqrt(),
            dof,
            variances: [of_mean, of_cosine, of_sine],
        })
    }

    /// What the spread leaves open of the mean.
    pub fn of_the_mean(&self) -> Component {
        let [of_mean, _, _] = self.variances;
        self.component(of_mean)
    }

    /// What it leaves open of one part of the wave, the worse known one.
    pub fn of_a_part(&self) -> Component {
        let [_, of_cosine, of_sine] = self.variances;
        self.component(of_cosine.max(of_sine))
    }

    fn component(&self, variance: f64) -> Component {
        Component {
            name: "spread of the readings about the tilt".into(),
            sensitivity: 1.0,
            standard_uncertainty: self.deviation * variance.sqrt(),
            dof: self.dof,
        }
    }

    /// Highest less lowest.
    pub fn height(&self) -> f64 {
        2.0 * self.cosine.hypot(self.sine)
    }

    /// Clock angle of the highest place, degrees.
    pub fn highest_deg(&self) -> f64 {
        self.sine.atan2(self.cosine).to_degrees().rem_euclid(360.0)
    }
}

/// The angles of places evenly round, for ever round again, radians clockwise from 12 o'clock.
fn angles(places: usize) -> impl Iterator<Item = f64> {
    // One by one: a sum of ones is exact.
    let count = (0..places).map(|_| 1.0).sum::<f64>();
    let numbers = std::iter::successors(Some(0.0), |place| Some(place + 1.0)).take(places);
    numbers
        .map(move |place| place * TAU / count)
        .collect::<Vec<_>>()
        .into_iter()
        .cycle()
}

fn dot(a: [f64; 3], b: [f64; 3]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}

/// The inverse of a symmetric matrix by its adjugate; `None` where it has none.
#[expect(clippy::many_single_char_names, reason = "the six cells of a matrix")]
fn inverted(matrix: [[f64; 3]; 3]) -> Option<[[f64; 3]; 3]> {
    let [[a, b, c], [_, d, e], [_, _, f]] = matrix;
    let (first, second, third) = (d * f - e * e, c * e - b * f, b * e - c * d);
    let determinant = a * first + b * second + c * third;
    // For places that do not lie on a line the determinant is of the order of the count cubed.
    if determinant < 1e-6 {
        return None;
    }
    let crossed = b * c - a * e;
    let adjugate = [
        [first, second, third],
        [second, a * f - c * c, crossed],
        [third, crossed, a * d - b * b],
    ];
    Some(adjugate.map(|line| line.map(|cell| cell / determinant)))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// For places evenly round the normal equations part: variances 1/n, 2/n, 2/n (least squares, by hand).
    #[test]
    fn whole_rounds_are_as_by_hand() {
        for (places, rounds) in [(5, 1), (6, 2), (8, 1), (3, 3)] {
            let count = places * rounds;
            let readings: Vec<f64> = angles(places)
                .take(count)
                .map(|angle| 7.0 + 0.3 * angle.cos() - 0.4 * angle.sin())
                .collect();
            let wave = Wave::of(&readings, places).unwrap();
            assert!((wave.mean - 7.0).abs() < 1e-12 && (wave.height() - 1.0).abs() < 1e-12);
            assert!(wave.deviation < 1e-12);
            let n = f64::from(u32::try_from(count).unwrap());
            let by_hand = [1.0 / n, 2.0 / n, 2.0 / n];
            for (found, wanted) in wave.variances.iter().zip(by_hand) {
                assert!((found - wanted).abs() < 1e-12, "{places} x {rounds}");
            }
        }
    }

    /// A round that was not finished: the plain mean would be wrong by the wave, the fit is not.
    #[test]
    fn an_unfinished_round_is_fitted_where_it_was_read() {
        let readings: Vec<f64> = angles(8)
            .take(6)
            .map(|angle| 1.46 + 0.02 * (angle - 1.0).cos())
            .collect();
        let wave = Wave::of(&readings, 8).unwrap();
        assert!((wave.mean - 1.46).abs() < 1e-12, "{}", wave.mean);
        assert!((wave.highest_deg() - 1.0_f64.to_degrees()).abs() < 1e-9);
    }

    #[test]
    fn two_places_tell_no_wave() {
        assert_eq!(Wave::of(&[1.0, 1.1, 1.0, 1.1, 1.0, 1.1], 2), None);
        assert_eq!(Wave::of(&[1.0, 1.1, 1.0, 1.1], 4), None);
    }
}
