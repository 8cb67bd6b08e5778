//! A ring round whatever has the keyboard, and the list it stands in scrolled to it: seen on every widget alike.

use egui::accesskit::{Action, ActionRequest, TreeId};
use egui::{Context, Event, Id, LayerId, Order, Rect, Stroke, StrokeKind};

use super::palette::Palette;

/// Who had the keyboard in the frame before.
#[derive(Debug, Default)]
pub struct FocusRing {
    had: Option<Id>,
}

/// How far outside the widget the ring runs, points.
const OUTSIDE: f32 = 1.5;

impl FocusRing {
    /// Before the widgets are laid out: brings into sight what was given the keyboard out of sight.
    pub fn follow(&mut self, context: &Context) {
        let has = context.memory(egui::Memory::focused);
        if has == self.had {
            return;
        }
        self.had = has;
        let Some(response) = has.and_then(|id| context.read_response(id)) else {
            return;
        };
        if response.interact_rect.contains_rect(response.rect) {
            return;
        }
        // The request of a screen reader to show a widget is heard by every widget of the library.
        let request = ActionRequest {
            action: Action::ScrollIntoView,
            target_tree: TreeId::ROOT,
            target_node: response.id.accesskit_id(),
            data: None,
        };
        context.input_mut(|input| input.events.push(Event::AccessKitActionRequest(request)));
        context.request_repaint();
    }

    /// After the widgets: the ring, over everything, cut off where the widget is.
    pub fn paint(&self, context: &Context, palette: Palette) {
        let Some(response) = self.had.and_then(|id| context.read_response(id)) else {
            return;
        };
        let seen: Rect = response
            .interact_rect
            .intersect(context.content_rect())
            .expand(OUTSIDE);
        if !response.interact_rect.is_positive() {
            return;
        }
        let layer = LayerId::new(Order::Tooltip, Id::unique("focus ring"));
        context.layer_painter(layer).rect_stroke(
            seen,
            3.0,
            Stroke::new(2.0, palette.accent),
            StrokeKind::Outside,
        );
    }
}
