//! Signs on a leader: surface texture, and a geometrical tolerance in its frame.

use crate::drawing::dimension::{Style, arrowhead};
use crate::drawing::path::Path;
use crate::drawing::placement::direction_deg;
use crate::drawing::signs::surface::{Removal, SurfaceSign, surface_sign};
use crate::drawing::signs::tolerance_frame::{ToleranceFrame, tolerance_frame};
use crate::drawing::{Annotation, Extent, TextBox};
use crate::geometry::Point;

/// Signs on a leader whose arrow touches a surface or its extension line.
#[derive(Debug, Clone, PartialEq)]
pub struct CallOut {
    /// Where the arrow points, mm.
    pub tip: Point,
    /// Where the leader meets the frame or the landing, mm; the signs lie on the side away from the tip.
    pub elbow: Point,
    /// The tolerance, if any.
    pub frame: Option<ToleranceFrame>,
    /// The surface texture, such as "Ra 1,6", if any; it stands on the frame or on the landing.
    pub texture: Option<String>,
}

/// Room over a landing, in lettering heights.
const OVER_LANDING: f64 = 0.2;
/// Half the height of a frame, in lettering heights.
const HALF_FRAME: f64 = 1.0;

impl CallOut {
    fn sign(&self) -> Option<SurfaceSign> {
        self.texture.as_ref().map(|texture| SurfaceSign {
            at: Point { x: 0.0, y: 0.0 },
            rotation_deg: 0.0,
            removal: Removal::Required,
            requirement: texture.clone(),
        })
    }

    /// Left edge of the signs, mm.
    fn left(&self, style: &Style) -> f64 {
        if self.elbow.x >= self.tip.x {
            self.elbow.x
        } else {
            self.elbow.x - self.width_mm(style)
        }
    }

    /// Width of the signs, mm.
    #[must_use]
    pub fn width_mm(&self, style: &Style) -> f64 {
        let frame = self
            .frame
            .as_ref()
            .map_or(0.0, |frame| frame.width_mm(style));
        let sign = self.sign().map_or(0.0, |sign| sign.size_mm(style).0);
        frame.max(sign)
    }

    /// What the signs cover, mm.
    #[must_use]
    pub fn space(&self, style: &Style) -> Extent {
        let half = if self.frame.is_some() {
            HALF_FRAME * style.height_mm
        } else {
            0.0
        };
        let sign = self.sign().map_or(0.0, |sign| sign.size_mm(style).1);
        let corner = Point {
            x: self.left(style),
            y: self.elbow.y - half,
        };
        Extent::sized(corner, self.width_mm(style), 2.0 * half + sign)
    }

    /// Leader, arrow and signs; one box covers all of the signs.
    #[must_use]
    pub fn drawn(&self, style: &Style) -> Annotation {
        let mut drawn = Annotation::default();
        let left = self.left(style);
        let far = Point {
            x: left + self.width_mm(style),
            ..self.elbow
        };
        let near = Point {
            x: left,
            ..self.elbow
        };
        let landing = if self.frame.is_some() {
            vec![self.tip, self.elbow]
        } else {
            let end = if self.elbow.x >= self.tip.x {
                far
            } else {
                near
            };
            vec![self.tip, self.elbow, end]
        };
        drawn.narrow(Path::open(landing), style.role);
        drawn.join(arrowhead(
            self.tip,
            direction_deg(self.elbow, self.tip),
            style,
        ));
        let mut floor = self.elbow.y;
        if let Some(frame) = &self.frame {
            drawn.join(tolerance_frame(frame, near, style));
            floor += HALF_FRAME * style.height_mm;
        }
        if let Some(mut sign) = self.sign() {
            let (_, _, reach) = sign.size_mm(style);
            sign.at = Point {
                x: left + reach,
                y: floor,
            };
            drawn.join(surface_sign(&sign, style));
        }
        let space = self.space(style);
        drawn.boxes = vec![TextBox {
            corner: Point {
                x: space.left,
                y: space.bottom - OVER_LANDING * style.height_mm,
            },
            width_mm: space.width(),
            height_mm: space.height() + OVER_LANDING * style.height_mm,
            rotation_deg: 0.0,
        }];
        drawn
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::signs::tolerance_frame::Characteristic;

    #[test]
    fn signs_lie_inside_their_space_on_either_side_of_the_tip() {
        let style = Style::default();
        for side in [-1.0, 1.0] {
            for framed in [false, true] {
                let frame = ToleranceFrame {
                    characteristic: Characteristic::Parallelism,
                    zone: "0,02".to_owned(),
                    datums: vec!['A'],
                };
                let call = CallOut {
                    tip: Point { x: 0.0, y: 0.0 },
                    elbow: Point {
                        x: 12.0 * side,
                        y: 6.0,
                    },
                    frame: framed.then_some(frame),
                    texture: Some("Ra 1,6".to_owned()),
                };
                let drawn = call.drawn(&style);
                let space = call.space(&style).grown(0.01);
                // The leader and its arrow come first, then the signs.
                for item in drawn.items.iter().skip(2) {
                    assert!(
                        space.contains(&item.extent().unwrap()),
                        "{side} {framed} {item:?}"
                    );
                }
                assert!((space.left > 0.0) == (side > 0.0));
            }
        }
    }
}
