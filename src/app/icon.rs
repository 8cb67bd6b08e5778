//! The program's own sign: a ring from ahead with three lugs and its index mark.

use egui::IconData;

/// Ring and lugs in steel, the mark in brass, on a dark disc: seen on a light and on a dark ground.
const DISC: [f64; 3] = [31.0, 42.0, 48.0];
const STEEL: [f64; 3] = [222.0, 226.0, 224.0];
const LUGS: [f64; 3] = [98.0, 176.0, 196.0];
const MARK: [f64; 3] = [236.0, 176.0, 72.0];

/// Radii as shares of half the side.
const DISC_RADIUS: f64 = 0.98;
const RING: (f64, f64) = (0.52, 0.72);
const LUG: (f64, f64) = (0.72, 0.88);
/// Start and extent of each lug, clock degrees; no two gaps alike, as on a keyed bayonet.
const LUG_SPANS: [(f64, f64); 3] = [(28.0, 62.0), (150.0, 56.0), (262.0, 66.0)];
/// Where the mark is and how large, shares of half the side.
const MARK_AT: (f64, f64) = (0.0, 0.82);
const MARK_RADIUS: f64 = 0.085;
/// Samples along each side of a dot.
const FINE: u32 = 4;

/// The sign as a picture of so many dots a side.
#[must_use]
pub fn icon(side: u32) -> IconData {
    let mut rgba = Vec::new();
    for row in 0..side {
        for column in 0..side {
            rgba.extend(dot(side, column, row));
        }
    }
    IconData {
        rgba,
        width: side,
        height: side,
    }
}

/// One dot: the mean of its samples, not premultiplied.
fn dot(side: u32, column: u32, row: u32) -> [u8; 4] {
    let mut sum = [0.0; 3];
    let mut covered = 0.0;
    for fine_row in 0..FINE {
        for fine_column in 0..FINE {
            let share = |place: u32, fine: u32| {
                let at = f64::from(place) + (f64::from(fine) + 0.5) / f64::from(FINE);
                at / f64::from(side) * 2.0 - 1.0
            };
            let (x, y) = (share(column, fine_column), -share(row, fine_row));
            if let Some(colour) = colour_at(x, y) {
                covered += 1.0;
                for (total, part) in sum.iter_mut().zip(colour) {
                    *total += part;
                }
            }
        }
    }
    if covered <= 0.0 {
        return [0; 4];
    }
    let [red, green, blue] = sum.map(|total| byte(total / covered));
    [
        red,
        green,
        blue,
        byte(255.0 * covered / f64::from(FINE * FINE)),
    ]
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "clamped to a byte before"
)]
fn byte(value: f64) -> u8 {
    value.round().clamp(0.0, 255.0) as u8
}

/// The colour at a place, both from -1 to 1, up is positive.
fn colour_at(x: f64, y: f64) -> Option<[f64; 3]> {
    let radius = x.hypot(y);
    let clock_deg = x.atan2(y).to_degrees();
    let on_a_lug = LUG_SPANS
        .iter()
        .any(|(start, extent)| (clock_deg - start).rem_euclid(360.0) <= *extent);
    if (x - MARK_AT.0).hypot(y - MARK_AT.1) <= MARK_RADIUS {
        Some(MARK)
    } else if radius >= RING.0 && radius <= RING.1 {
        Some(STEEL)
    } else if radius >= LUG.0 && radius <= LUG.1 && on_a_lug {
        Some(LUGS)
    } else {
        (radius <= DISC_RADIUS).then_some(DISC)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(picture: &IconData, x: u32, y: u32) -> [u8; 4] {
        let from = usize::try_from((y * picture.width + x) * 4).unwrap();
        picture.rgba[from..from + 4].try_into().unwrap()
    }

    #[test]
    fn the_sign_is_round_with_its_mark_on_top() {
        let picture = icon(64);
        assert_eq!(picture.rgba.len(), 64 * 64 * 4);
        assert_eq!(at(&picture, 0, 0), [0; 4], "clear corners");
        assert_eq!(
            at(&picture, 32, 6),
            [236, 176, 72, 255],
            "the mark at 12 o'clock"
        );
        assert_eq!(
            at(&picture, 32, 32),
            [31, 42, 48, 255],
            "the disc through the bore"
        );
        assert_eq!(
            at(&picture, 52, 32),
            [222, 226, 224, 255],
            "the ring at 3 o'clock"
        );
    }
}
