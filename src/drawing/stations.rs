//! Readings round the ring as a picture: each station on a circle, as far off it as the reading is off the mean, much
//! enlarged, with the fitted wave and the limits.

use super::dimension::{Label, Leader, Style, Terminator, leader};
use super::{Anchor, LineType, Path, Role, Scene, Shape, Text};
use crate::geometry::{Point, Side, plan_point, seen_from};
use crate::mount::show_number;

/// Radius of the circle that stands for the mean.
const MEAN: f64 = 36.0;
/// The farthest that anything stands off it.
const FARTHEST: f64 = 12.0;
/// Radius of the lettering round the picture.
const LETTERING: f64 = 56.0;
/// Half the size of the cross at a station.
const CROSS: f64 = 1.6;
/// From line to line of the words under the picture.
const UNDER: f64 = 7.5;
/// Steps in which the wave is drawn.
const WAVE_STEPS: u32 = 90;

/// Readings at places evenly round the ring, the first at 12 o'clock, on clockwise seen from the lens side.
#[derive(Clone, Debug, PartialEq)]
pub struct Stations<'a> {
    /// The readings, mm, round after round.
    pub readings_mm: &'a [f64],
    /// How many places a round has.
    pub places: usize,
    /// Their mean, mm.
    pub mean_mm: f64,
    /// The fitted wave, mm: its parts that are highest at 12 and at 3 o'clock.
    pub wave_mm: Option<(f64, f64)>,
    /// The limits of the size, mm.
    pub limits_mm: (f64, f64),
}

/// The picture, its origin on the axis.
#[must_use]
pub fn stations(of: &Stations<'_>) -> Scene {
    let mut scene = Scene::view();
    let scale = scale(of);
    round(&mut scene, MEAN, LineType::LongDashDotNarrow, Role::Axis);
    for limit_mm in [of.limits_mm.0, of.limits_mm.1] {
        let off = (limit_mm - of.mean_mm) * scale;
        if off.abs() <= FARTHEST + 1e-9 {
            round(&mut scene, MEAN + off, LineType::DashedNarrow, Role::Pin);
        }
    }
    cross_lines(&mut scene);
    if let Some(wave) = of.wave_mm {
        draw_wave(&mut scene, wave, scale);
    }
    for (reading, angle_deg) in of.readings_mm.iter().zip(angles_deg(of.places)) {
        station(
            &mut scene,
            *reading,
            angle_deg,
            (reading - of.mean_mm) * scale,
        );
    }
    let words = [
        format!(
            "mean {} mm; seen from the lens side, clockwise",
            show_number(of.mean_mm, 4)
        ),
        format!(
            "1 mm here is {} µm; dashed: limits in reach",
            show_number(1000.0 / scale, 2)
        ),
    ];
    for (line, text) in [1.0, 2.0].into_iter().zip(words) {
        let below = Point {
            x: 0.0,
            y: -LETTERING - UNDER * line,
        };
        write(&mut scene, below, text);
    }
    scene
}

/// Picture millimetres for a millimetre of height.
fn scale(of: &Stations<'_>) -> f64 {
    let wave = of.wave_mm.map_or(0.0, |(cosine, sine)| cosine.hypot(sine));
    let readings = of
        .readings_mm
        .iter()
        .map(|reading| (reading - of.mean_mm).abs());
    let farthest = readings.fold(wave, f64::max);
    let widest = (of.limits_mm.1 - of.limits_mm.0) / 2.0;
    // Where the readings hardly differ the limits give the measure.
    FARTHEST / farthest.max(widest / 2.0).max(1e-4)
}

/// Clock angles of places evenly round, for ever round again, degrees.
fn angles_deg(places: usize) -> impl Iterator<Item = f64> {
    let count = (0..places).map(|_| 1.0).sum::<f64>();
    let numbers = std::iter::successors(Some(0.0), |place| Some(place + 1.0)).take(places);
    let round: Vec<f64> = numbers.map(|place| place * 360.0 / count).collect();
    round.into_iter().cycle()
}

fn at(radius: f64, clock_deg: f64) -> Point {
    plan_point(radius, seen_from(Side::Lens, clock_deg.to_radians()))
}

fn round(scene: &mut Scene, radius_mm: f64, line: LineType, role: Role) {
    let centre = Point { x: 0.0, y: 0.0 };
    scene.draw(Shape::Circle { centre, radius_mm }, line, role);
}

fn cross_lines(scene: &mut Scene) {
    for angle in [0.0, 90.0] {
        let path = Path::line(
            at(MEAN + FARTHEST, angle),
            at(MEAN + FARTHEST, angle + 180.0),
        );
        scene.draw(Shape::Path(path), LineType::LongDashDotNarrow, Role::Axis);
    }
}

fn draw_wave(scene: &mut Scene, (cosine, sine): (f64, f64), scale: f64) {
    let points = (0..WAVE_STEPS).map(|step| {
        let angle = f64::from(step) * 360.0 / f64::from(WAVE_STEPS);
        let (along_sine, along_cosine) = angle.to_radians().sin_cos();
        at(
            MEAN + (cosine * along_cosine + sine * along_sine) * scale,
            angle,
        )
    });
    let path = Path::polygon(points);
    scene.draw(Shape::Path(path), LineType::ContinuousWide, Role::Highlight);
    let highest = sine.atan2(cosine).to_degrees();
    let tip = at(MEAN + cosine.hypot(sine) * scale, highest);
    // Beside the lettering of a station that may lie on the same ray.
    let wanted = Leader {
        tip,
        elbow: at(LETTERING + 6.0, highest + 14.0),
        lines: vec![Label::plain("highest")],
        terminator: Terminator::Arrow,
    };
    let style = Style {
        role: Role::Highlight,
        ..Style::default()
    };
    scene.extend(leader(&wanted, &style).items);
}

fn station(scene: &mut Scene, reading_mm: f64, angle_deg: f64, off: f64) {
    let place = at(MEAN + off, angle_deg);
    let stem = Path::line(at(MEAN, angle_deg), place);
    scene.draw(Shape::Path(stem), LineType::ContinuousNarrow, Role::Ring);
    for (x, y) in [(CROSS, CROSS), (CROSS, -CROSS)] {
        let from = Point {
            x: place.x - x,
            y: place.y - y,
        };
        let to = Point {
            x: place.x + x,
            y: place.y + y,
        };
        let path = Path::line(from, to);
        scene.draw(Shape::Path(path), LineType::ContinuousWide, Role::Ring);
    }
    write(scene, at(LETTERING, angle_deg), show_number(reading_mm, 4));
}

fn write(scene: &mut Scene, middle: Point, text: String) {
    let text = Text::level(middle, 2.5, text).anchored(Anchor::Centre);
    scene.draw(
        Shape::Text(text),
        LineType::ContinuousNarrow,
        Role::Annotation,
    );
}

#[cfg(test)]
mod tests {
    use super::*;

    fn lettered(scene: &Scene) -> Vec<String> {
        let texts = scene.items.iter().filter_map(|item| match &item.shape {
            Shape::Text(text) => Some(text.text.clone()),
            Shape::Path(_)
            | Shape::Circle { .. }
            | Shape::Arc { .. }
            | Shape::Fill { .. }
            | Shape::Hatch(_) => None,
        });
        texts.collect()
    }

    #[test]
    fn the_highest_reading_stands_farthest_out_and_every_one_is_written() {
        let readings = [1.47, 1.46, 1.45, 1.46];
        let scene = stations(&Stations {
            readings_mm: &readings,
            places: 4,
            mean_mm: 1.46,
            wave_mm: Some((0.01, 0.0)),
            limits_mm: (1.44, 1.48),
        });
        let texts = lettered(&scene);
        for reading in ["1.47", "1.46", "1.45", "highest"] {
            assert!(
                texts.iter().any(|text| text == reading),
                "{reading}: {texts:?}"
            );
        }
        assert!(
            texts.iter().any(|text| text.starts_with("mean 1.46 mm")),
            "{texts:?}"
        );
        // 0.01 mm are 12 mm of the picture: a millimetre of it is 0.83 µm.
        assert!(
            texts.iter().any(|text| text.contains("0.83 µm")),
            "{texts:?}"
        );
    }

    #[test]
    fn the_first_station_is_at_twelve_o_clock_and_the_second_clockwise_of_it() {
        let first = at(10.0, 0.0);
        let angles: Vec<f64> = angles_deg(6).take(8).collect();
        assert!(first.x.abs() < 1e-12 && first.y > 0.0);
        assert!(at(10.0, 60.0).x > 0.0);
        assert_eq!(angles, [0.0, 60.0, 120.0, 180.0, 240.0, 300.0, 0.0, 60.0]);
    }

    #[test]
    fn readings_that_agree_are_drawn_too() {
        let scene = stations(&Stations {
            readings_mm: &[1.46, 1.46],
            places: 2,
            mean_mm: 1.46,
            wave_mm: None,
            limits_mm: (1.44, 1.48),
        });
        assert!(scene.bounds().unwrap().width() < 140.0);
    }
}
