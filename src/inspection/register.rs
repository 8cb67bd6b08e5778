//! Seat height and parallelism from readings round the ring, by a method that suits the seat.
//!
//! Readings at places evenly round the ring, the first at 12 o'clock, on clockwise seen from the lens side. A tilted
//! face makes one wave of them in a turn; the wave is fitted by least squares and what is left over is the spread.

use super::doubt::Doubt;
use super::wave::Wave;
use crate::document::SeatKind;
use crate::tolerance::{Component, ReadingsError, STEP_CAUSE, components_of};
use crate::workshop::Instrument;

/// Equal blocks differ by at most so much either way, mm; common practice, no source.
const BLOCKS_MM: f64 = 0.002;
/// A small surface plate is flat within so much either way, mm; common practice, no source.
const PLATE_MM: f64 = 0.003;
/// How the seat height is measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RegisterMethod {
    /// A micrometer over seat and flange rear face.
    Micrometer,
    /// Ring on equal blocks under its flange on a surface plate, depth gauge or indicator on the seat, the height of
    /// the blocks taken off.
    OverBlocks,
}

impl RegisterMethod {
    /// The method for a seat: only of a flush plate do seat and flange rear face stand opposite each other.
    #[must_use]
    pub const fn for_seat(seat: SeatKind) -> Self {
        match seat {
            SeatKind::Flush => Self::Micrometer,
            SeatKind::Boss | SeatKind::Counterbore => Self::OverBlocks,
        }
    }

    /// How it is done, for the sheet.
    #[must_use]
    pub const fn how(self) -> &'static str {
        match self {
            Self::Micrometer => {
                "micrometer over seat and flange rear face, at five or more places evenly round the ring, the first at \
                 12 o'clock, on clockwise seen from the lens side"
            }
            Self::OverBlocks => {
                "flange rear face on three equal blocks on a surface plate, lugs hanging free; depth micrometer or \
                 indicator on the seat at five or more places evenly round, the first at 12 o'clock, on clockwise seen \
                 from the lens side; take the height of the blocks off. Zero on the bare blocks before and after"
            }
        }
    }

    /// Causes of uncertainty besides instrument and spread.
    #[must_use]
    pub fn besides(self) -> Vec<Component> {
        match self {
            Self::Micrometer => Vec::new(),
            Self::OverBlocks => vec![
                Component::within("difference of the blocks", BLOCKS_MM),
                Component::within("flatness of the plate", PLATE_MM),
            ],
        }
    }
}

/// How the seat leans.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tilt {
    /// Highest less lowest of the fitted wave, mm: the parallelism of the faces where they are flat.
    pub parallelism_mm: f64,
    /// Its expanded uncertainty, mm: from the spread alone, an instrument's own error is the same all round.
    pub expanded_mm: f64,
    /// Clock angle of the highest place, degrees.
    pub highest_deg: f64,
    /// The fitted wave, mm: its parts that are highest at 12 and at 3 o'clock.
    pub wave_mm: (f64, f64),
}

/// Seat height and parallelism.
#[derive(Clone, Debug, PartialEq)]
pub struct Register {
    /// Mean height of the seat, mm.
    pub mean_mm: f64,
    /// The causes of doubt that were counted.
    pub causes: Vec<Component>,
    /// How well that is known, mm.
    pub doubt: Doubt,
    /// Highest less lowest reading, mm.
    pub range_mm: f64,
    /// How many places round the ring the readings go through.
    pub places: usize,
    /// How the seat leans; none from fewer than five readings.
    pub tilt: Option<Tilt>,
}

/// Seat height and parallelism from readings in mm, the first at 12 o'clock and every next one place further clockwise,
/// of `places` evenly round; 0 for as many places as readings.
///
/// # Errors
/// [`ReadingsError`] where there are fewer than two or one is no number.
pub fn register(
    readings_mm: &[f64],
    places: usize,
    method: RegisterMethod,
    instrument: &Instrument,
) -> Result<Register, ReadingsError> {
    let (plain, mut causes) = components_of(readings_mm, instrument)?;
    let places = if places == 0 {
        readings_mm.len()
    } else {
        places
    };
    let wave = Wave::of(readings_mm, places);
    if let (Some(wave), Some(first)) = (&wave, causes.first_mut()) {
        *first = spread_of_the_mean(wave, instrument);
    }
    causes.extend(method.besides());
    Ok(Register {
        mean_mm: wave.map_or(plain.mean, |wave| wave.mean),
        doubt: Doubt::of(&causes),
        causes,
        range_mm: plain.range,
        places,
        tilt: wave.map(tilt),
    })
}

/// The spread about the wave: a leaning seat is no doubt about its mean height. Never less than the display's step
/// shows.
fn spread_of_the_mean(wave: &Wave, instrument: &Instrument) -> Component {
    let spread = wave.of_the_mean();
    let step = Component::within(STEP_CAUSE, instrument.step_mm / 2.0);
    if spread.standard_uncertainty >= step.standard_uncertainty {
        spread
    } else {
        step
    }
}

/// The difference of highest and lowest is twice the wave.
fn tilt(wave: Wave) -> Tilt {
    Tilt {
        parallelism_mm: wave.height(),
        expanded_mm: 2.0 * Doubt::of(&[wave.of_a_part()]).expanded,
        highest_deg: wave.highest_deg(),
        wave_mm: (wave.cosine, wave.sine),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn micrometer() -> Instrument {
        Instrument {
            name: "micrometer".into(),
            permissible_error_mm: 0.004,
            step_mm: 0.001,
        }
    }

    fn wave(count: u32, height: f64, lean: f64, at_deg: f64) -> Vec<f64> {
        (0..count)
            .map(|place| {
                let angle = 360.0 * f64::from(place) / f64::from(count) - at_deg;
                height + lean / 2.0 * angle.to_radians().cos()
            })
            .collect()
    }

    #[test]
    fn a_leaning_seat_is_found_with_its_highest_place() {
        for (count, at) in [(5, 77.0), (6, 200.0), (8, 0.0), (12, 333.0)] {
            let found = register(
                &wave(count, 1.46, 0.02, at),
                0,
                RegisterMethod::Micrometer,
                &micrometer(),
            )
            .unwrap();
            let tilt = found.tilt.unwrap();
            assert!((found.mean_mm - 1.46).abs() < 1e-12);
            assert!((tilt.parallelism_mm - 0.02).abs() < 1e-12);
            let off = (tilt.highest_deg - at + 180.0).rem_euclid(360.0) - 180.0;
            assert!(off.abs() < 1e-6, "{off}");
            // Only the step and the instrument are left: a tilt is no doubt about the mean.
            let by_hand = (0.001_f64.powi(2) / 12.0 + 0.004_f64.powi(2) / 3.0).sqrt();
            assert!((found.doubt.standard - by_hand).abs() < 1e-9);
        }
    }

    #[test]
    fn blocks_and_plate_add_their_doubt() {
        let readings = wave(6, 1.46, 0.0, 0.0);
        let direct = register(&readings, 0, RegisterMethod::Micrometer, &micrometer()).unwrap();
        let blocks = register(&readings, 0, RegisterMethod::OverBlocks, &micrometer()).unwrap();
        let more = blocks.doubt.standard.powi(2) - direct.doubt.standard.powi(2);
        assert!((more - (0.002_f64.powi(2) + 0.003_f64.powi(2)) / 3.0).abs() < 1e-12);
        assert_eq!(
            RegisterMethod::for_seat(SeatKind::Boss),
            RegisterMethod::OverBlocks
        );
        assert_eq!(
            RegisterMethod::for_seat(SeatKind::Flush),
            RegisterMethod::Micrometer
        );
    }

    #[test]
    fn few_readings_have_no_wave() {
        let found = register(
            &[1.46, 1.47, 1.45],
            0,
            RegisterMethod::Micrometer,
            &micrometer(),
        )
        .unwrap();
        assert_eq!(found.tilt, None);
        assert!(register(&[1.46], 0, RegisterMethod::Micrometer, &micrometer()).is_err());
    }
}
