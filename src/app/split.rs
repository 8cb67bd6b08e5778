//! Two parts of the window with an edge between them that can be dragged; the shares follow the window's size.

use egui::{CursorIcon, Id, Rect, Sense, Stroke, Ui, WidgetInfo, pos2};

use super::palette::Palette;

/// How the two parts lie.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lie {
    /// Left and right.
    SideBySide,
    /// One above the other.
    Stacked,
}

/// An edge and how the room is shared at it.
#[derive(Clone, Copy, Debug)]
pub struct Split {
    lie: Lie,
    name: &'static str,
    usual: f32,
    share: f32,
    /// Least room of the first and second part, points.
    least: (f32, f32),
}

/// Width of the edge that can be grabbed, points.
const EDGE: f32 = 6.0;

impl Split {
    /// An edge that gives the first part this share of the room.
    #[must_use]
    pub const fn new(lie: Lie, name: &'static str, share: f32, least: (f32, f32)) -> Self {
        Self {
            lie,
            name,
            usual: share,
            share,
            least,
        }
    }

    /// Shows the edge and gives the two parts; a double click puts it back.
    pub fn split_ui(&mut self, ui: &mut Ui, room: Rect, palette: Palette) -> (Rect, Rect) {
        let (first, edge, second) = self.parts(room);
        let response = ui.interact(
            edge,
            Id::unique(("split", self.name)),
            Sense::CLICK | Sense::DRAG,
        );
        response.widget_info(|| WidgetInfo::labeled(egui::Role::Splitter, true, self.name));
        if response.double_clicked() {
            self.share = self.usual;
        }
        if let Some(at) = response
            .interact_pointer_pos()
            .filter(|_| response.dragged())
        {
            self.share = match self.lie {
                Lie::SideBySide => (at.x - room.left()) / room.width().max(1.0),
                Lie::Stacked => (at.y - room.top()) / room.height().max(1.0),
            };
        }
        let cursor = match self.lie {
            Lie::SideBySide => CursorIcon::ResizeHorizontal,
            Lie::Stacked => CursorIcon::ResizeVertical,
        };
        let held = response.hovered() || response.dragged();
        let line = Stroke::new(
            if held { 2.0 } else { 1.0 },
            if held { palette.accent } else { palette.border },
        );
        match self.lie {
            Lie::SideBySide => ui.painter().vline(edge.center().x, edge.y_range(), line),
            Lie::Stacked => ui.painter().hline(edge.x_range(), edge.center().y, line),
        };
        response.on_hover_and_drag_cursor(cursor);
        (first, second)
    }

    fn parts(&self, room: Rect) -> (Rect, Rect, Rect) {
        let length = match self.lie {
            Lie::SideBySide => room.width(),
            Lie::Stacked => room.height(),
        };
        let most = (length - self.least.1).max(0.0);
        let at = (length * self.share)
            .clamp(self.least.0.min(most), most)
            .round();
        let (from, to) = (at - EDGE / 2.0, at + EDGE / 2.0);
        match self.lie {
            Lie::SideBySide => (
                Rect::from_min_max(room.min, pos2(room.left() + from, room.bottom())),
                Rect::from_min_max(
                    pos2(room.left() + from, room.top()),
                    pos2(room.left() + to, room.bottom()),
                ),
                Rect::from_min_max(pos2(room.left() + to, room.top()), room.max),
            ),
            Lie::Stacked => (
                Rect::from_min_max(room.min, pos2(room.right(), room.top() + from)),
                Rect::from_min_max(
                    pos2(room.left(), room.top() + from),
                    pos2(room.right(), room.top() + to),
                ),
                Rect::from_min_max(pos2(room.left(), room.top() + to), room.max),
            ),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_parts_fill_the_room_from_small_to_large() {
        let split = Split::new(Lie::SideBySide, "test", 0.7, (300.0, 260.0));
        for (width, height) in [(1024.0, 700.0), (1920.0, 1080.0), (3840.0, 2160.0)] {
            let room = Rect::from_min_size(pos2(0.0, 0.0), egui::vec2(width, height));
            let (first, edge, second) = split.parts(room);
            assert!((first.width() + edge.width() + second.width() - width).abs() < 0.01);
            assert!(first.width() >= 290.0 && second.width() >= 250.0, "{width}");
        }
    }
}
