//! A dimension, note or sign with the places that its lettering takes up.

use crate::drawing::extent::Extent;
use crate::drawing::line_type::LineType;
use crate::drawing::path::Path;
use crate::drawing::placement::Placement;
use crate::drawing::scene::{Item, Role, Shape, Tone};
use crate::drawing::text_box::TextBox;
use crate::geometry::Point;

/// Things to draw, and the boxes that nothing else should be drawn across.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Annotation {
    /// What is drawn.
    pub items: Vec<Item>,
    /// The rectangles of its lettering.
    pub boxes: Vec<TextBox>,
}

impl Annotation {
    /// The rectangle round everything drawn; none where nothing is.
    #[must_use]
    pub fn bounds(&self) -> Option<Extent> {
        self.items
            .iter()
            .filter_map(Item::extent)
            .reduce(Extent::union)
    }

    /// Adds everything of another one.
    pub fn join(&mut self, other: Self) {
        self.items.extend(other.items);
        self.boxes.extend(other.boxes);
    }

    /// The same with a feature number on every item.
    #[must_use]
    pub fn tagged(self, tag: u32) -> Self {
        Self {
            items: self
                .items
                .into_iter()
                .map(|item| item.tagged(tag))
                .collect(),
            boxes: self.boxes,
        }
    }

    /// The same moved by some mm.
    #[must_use]
    pub fn moved(self, x_mm: f64, y_mm: f64) -> Self {
        let placement = Placement::translation(x_mm, y_mm);
        Self {
            items: self
                .items
                .into_iter()
                .map(|item| Item {
                    shape: item.shape.placed(&placement),
                    ..item
                })
                .collect(),
            boxes: self
                .boxes
                .into_iter()
                .map(|text_box| TextBox {
                    corner: placement.point(text_box.corner),
                    ..text_box
                })
                .collect(),
        }
    }

    /// Adds a narrow continuous line.
    pub fn narrow(&mut self, path: Path, role: Role) {
        self.items.push(Item::new(
            Shape::Path(path),
            LineType::ContinuousNarrow,
            role,
        ));
    }

    /// Adds a straight narrow continuous line.
    pub fn narrow_line(&mut self, from: Point, to: Point, role: Role) {
        self.narrow(Path::line(from, to), role);
    }

    /// Adds a filled area.
    pub fn filled(&mut self, outline: Path, role: Role) {
        let shape = Shape::Fill {
            loops: vec![outline],
            tone: Tone::Solid,
        };
        self.items
            .push(Item::new(shape, LineType::ContinuousNarrow, role));
    }
}
