//! A canvas: a scene on the screen that zooms, pans and tells what the pointer is at.

use egui::{EventFilter, Key, Painter, Pos2, Rect, Response, Sense, Ui, WidgetInfo};

use super::areas::encloses;
use super::palette::Palette;
use super::scene_paint::{IsLit, Painted, paint_grid, painted, screen_points};
use super::sight::{Scope, Sight, ToScreen};
use crate::drawing::{Extent, Item, LineGroup, Role, Scene, Shape as SceneShape};

/// The state of one canvas.
#[derive(Default)]
pub struct Canvas {
    /// Where it looks.
    pub sight: Sight,
    ready: Option<(Ready, Painted)>,
    scope: Option<Scope>,
    holds: Held,
    /// Whether the drag was given up: until the button is up nothing is taken hold of.
    spent: bool,
    /// Whether the arrow keys move what is picked, not the picture; and Escape lets go of it.
    pub arrows_are_taken: bool,
    /// A zoom asked for by command, done about the middle when the canvas is drawn next.
    zoom: Option<f64>,
}

/// What the pointer holds while its button is down.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
enum Held {
    #[default]
    Nothing,
    Ground,
    Thing,
}

/// What a made-ready picture depends on.
#[derive(Clone, Debug, PartialEq)]
struct Ready {
    revision: u64,
    way: ToScreen,
    palette: Palette,
    light: u64,
}

/// What a canvas shows in this frame.
pub struct Showing<'a> {
    /// The name for a screen reader.
    pub name: &'a str,
    /// The picture.
    pub scene: &'a Scene,
    /// Goes up whenever the picture changes.
    pub revision: u64,
    /// The names of the axes, across and up; empty ones for a sketch without a scale.
    pub axes: [&'a str; 2],
    /// Whether an item of this tag is lit.
    pub is_lit: &'a IsLit<'a>,
    /// Changes whenever that answer does.
    pub light: u64,
    /// Whether a press at this place takes hold of something that moves by itself.
    pub grabs: &'a dyn Fn(&ToScreen, Pos2) -> bool,
    /// The colours.
    pub palette: Palette,
    /// The line widths of a sheet that is shown as it prints; none for a view of the part.
    pub sheet: Option<LineGroup>,
}

/// What came of it.
pub struct Shown {
    /// The canvas as a widget.
    pub response: Response,
    /// The way from millimetres to the screen.
    pub way: ToScreen,
    /// To paint more on the canvas.
    pub painter: Painter,
    /// The tag nearest to the pointer.
    pub tag: Option<u32>,
    /// Where the pointer is while it drags a thing that was grabbed.
    pub grabbed_at: Option<Pos2>,
    /// Whether the thing was let go in this frame.
    pub let_go: bool,
}

/// How near the pointer must come to a line, points.
const NEAR: f32 = 7.0;
/// Room left round the ring, as a share of its smaller side.
const ROUND_THE_RING: f64 = 0.25;
/// At most so much, mm.
const MOST_ROUND_MM: f64 = 4.0;

impl Canvas {
    /// A canvas that looks there.
    #[must_use]
    pub fn looking_at(sight: Sight) -> Self {
        Self {
            sight,
            ..Self::default()
        }
    }

    /// The way from millimetres to the screen, as it was drawn last.
    #[must_use]
    pub fn way_drawn(&self) -> Option<ToScreen> {
        self.ready.as_ref().map(|(ready, _)| ready.way)
    }

    /// Zooms by a factor about the middle.
    pub const fn zoom_by(&mut self, factor: f64) {
        self.zoom = Some(factor);
    }

    /// Lets go of what is dragged, though the button is still down.
    pub const fn let_go(&mut self) {
        self.holds = Held::Nothing;
        self.spent = true;
    }

    /// Draws the canvas over all the room there is.
    pub fn canvas_ui(&mut self, ui: &mut Ui, showing: &Showing<'_>) -> Shown {
        let rect = ui.available_rect_before_wrap();
        let response = ui.allocate_rect(rect, Sense::click_and_drag());
        response.widget_info(|| WidgetInfo::labeled(egui::Role::Canvas, true, showing.name));
        let painter = ui.painter_at(rect);
        let ground = match showing.sheet {
            Some(_) => showing.palette.ground,
            None => showing.palette.paper,
        };
        painter.rect_filled(rect, 0.0, ground);

        let way = self.way(ui, rect, showing);
        let (grabbed_at, let_go) = self.drag(&response, showing, &way);
        self.wheel(ui, &response, &way);
        let way = self.way(ui, rect, showing);

        match showing.sheet {
            Some(_) => paint_paper(&painter, &way, showing),
            // A sketch has no scale to be read off.
            None if showing.axes == ["", ""] => {}
            None => paint_grid(&painter, rect, &way, showing.palette, showing.axes),
        }
        self.paint(&painter, showing, way);
        let tag = response
            .hover_pos()
            .and_then(|at| tag_at(showing.scene, &way, at));
        if response.has_focus() {
            let edge = egui::Stroke::new(1.5, showing.palette.accent);
            painter.rect_stroke(rect.shrink(1.0), 0.0, edge, egui::StrokeKind::Inside);
        }
        Shown {
            response,
            way,
            painter,
            tag,
            grabbed_at,
            let_go,
        }
    }

    /// While all is shown the view follows the picture, but not under a drag: it would run from the hand.
    fn way(&mut self, ui: &Ui, rect: Rect, showing: &Showing<'_>) -> ToScreen {
        let dragging = ui.input(|input| input.pointer.any_down());
        let scope = match self.scope {
            Some(scope) if dragging => scope,
            Some(_) | None if showing.sheet.is_some() => Scope {
                ring: None,
                everything: showing.scene.frame(),
            },
            Some(_) | None => scope_of(showing.scene),
        };
        self.scope = Some(scope);
        let way = self.sight.to_screen(rect, scope);
        match showing.sheet {
            Some(group) => way.of_a_sheet(group),
            None => way,
        }
    }

    fn drag(
        &mut self,
        response: &Response,
        showing: &Showing<'_>,
        way: &ToScreen,
    ) -> (Option<Pos2>, bool) {
        let at_a_thing = |at: Pos2| (showing.grabs)(way, at);
        if response.double_clicked() && !response.interact_pointer_pos().is_some_and(at_a_thing) {
            self.sight = Sight::Ring;
        }
        if !response.ctx.input(|input| input.pointer.any_down()) {
            self.spent = false;
        }
        if response.drag_started() && !self.spent {
            let pressed = response.ctx.input(|input| input.pointer.press_origin());
            let grabs = pressed.is_some_and(|at| (showing.grabs)(way, at));
            self.holds = if grabs { Held::Thing } else { Held::Ground };
        }
        let mut grabbed_at = None;
        if response.dragged() {
            match self.holds {
                Held::Ground => self.sight.pan(way, response.drag_delta()),
                Held::Thing => grabbed_at = response.interact_pointer_pos(),
                Held::Nothing => {}
            }
        }
        let mut let_go = false;
        if response.drag_stopped() {
            let_go = self.holds == Held::Thing;
            self.holds = Held::Nothing;
        }
        (grabbed_at, let_go)
    }

    fn wheel(&mut self, ui: &Ui, response: &Response, way: &ToScreen) {
        if let Some(factor) = self.zoom.take() {
            self.sight.zoom(way, factor, response.rect.center());
        }
        if response.has_focus() {
            self.keep_keys(ui, response);
            if !self.arrows_are_taken {
                self.arrow_keys(ui, way);
            }
        }
        let Some(at) = response.hover_pos() else {
            return;
        };
        let (scroll, pinch) = ui.input(|input| (input.smooth_scroll_delta().y, input.zoom_delta()));
        let factor = f64::from(scroll * 0.004).exp() * f64::from(pinch);
        if (factor - 1.0).abs() > 1e-6 {
            self.sight.zoom(way, factor, at);
        }
    }

    /// The arrow keys are the canvas's own: they do not lead the keyboard to another widget.
    fn keep_keys(&self, ui: &Ui, response: &Response) {
        let keys = EventFilter {
            tab: false,
            horizontal_arrows: true,
            vertical_arrows: true,
            escape: self.arrows_are_taken,
        };
        ui.memory_mut(|memory| memory.set_focus_lock_filter(response.id, keys));
    }

    fn arrow_keys(&mut self, ui: &Ui, way: &ToScreen) {
        const STEP: f32 = 24.0;
        let moves = [
            (Key::ArrowLeft, egui::vec2(STEP, 0.0)),
            (Key::ArrowRight, egui::vec2(-STEP, 0.0)),
            (Key::ArrowUp, egui::vec2(0.0, STEP)),
            (Key::ArrowDown, egui::vec2(0.0, -STEP)),
        ];
        for (key, by) in moves {
            if ui.input(|input| input.key_pressed(key)) {
                self.sight.pan(way, by);
            }
        }
    }

    fn paint(&mut self, painter: &Painter, showing: &Showing<'_>, way: ToScreen) {
        let wanted = Ready {
            revision: showing.revision,
            way,
            palette: showing.palette,
            light: showing.light,
        };
        if self
            .ready
            .as_ref()
            .is_none_or(|(ready, _)| *ready != wanted)
        {
            let picture = painted(showing.scene, &way, showing.palette, showing.is_lit);
            self.ready = Some((wanted, picture));
        }
        if let Some((_, picture)) = &self.ready {
            picture.paint(painter, &way);
        }
    }
}

/// The sheet of paper under a drawing.
fn paint_paper(painter: &Painter, way: &ToScreen, showing: &Showing<'_>) {
    let Some(paper) = showing.scene.frame() else {
        return;
    };
    let [low, _, high, _] = paper.corners().map(|corner| way.at(corner));
    let edge = egui::Stroke::new(1.0, showing.palette.border);
    let sheet = Rect::from_two_pos(low, high);
    painter.rect(
        sheet,
        0.0,
        showing.palette.paper,
        edge,
        egui::StrokeKind::Outside,
    );
}

/// The ring with a little room round it, and everything.
pub(super) fn scope_of(scene: &Scene) -> Scope {
    let is_ring = |item: &&Item| item.pen.role == Role::Ring;
    let ring = scene
        .items
        .iter()
        .filter(is_ring)
        .filter_map(Item::extent)
        .reduce(Extent::union);
    let ring = ring.map(|ring| {
        ring.grown((ring.width().min(ring.height()) * ROUND_THE_RING).min(MOST_ROUND_MM))
    });
    Scope {
        ring,
        everything: scene.frame(),
    }
}

/// The tagged item nearest to a place of the screen, if one is near.
pub(super) fn tag_at(scene: &Scene, way: &ToScreen, at: Pos2) -> Option<u32> {
    let mut nearest: Option<(f32, u32)> = None;
    for item in &scene.items {
        let Some(tag) = item.tag else { continue };
        let away = match &item.shape {
            SceneShape::Fill { loops, .. } => {
                let inside = loops
                    .iter()
                    .any(|path| encloses(&screen_points(path, way), at));
                if inside { NEAR } else { f32::INFINITY }
            }
            SceneShape::Path(_)
            | SceneShape::Circle { .. }
            | SceneShape::Arc { .. }
            | SceneShape::Hatch(_) => item.shape.centre_line().map_or(f32::INFINITY, |path| {
                distance_to(&screen_points(&path, way), path.closed, at)
            }),
            SceneShape::Text(text) => {
                let extent = text.text_box().extent();
                let box_on_screen = Rect::from_two_pos(
                    way.at(crate::geometry::Point {
                        x: extent.left,
                        y: extent.bottom,
                    }),
                    way.at(crate::geometry::Point {
                        x: extent.right,
                        y: extent.top,
                    }),
                );
                box_on_screen.distance_to_pos(at)
            }
        };
        if away <= NEAR && nearest.is_none_or(|(least, _)| away < least) {
            nearest = Some((away, tag));
        }
    }
    nearest.map(|(_, tag)| tag)
}

/// Distance from a run of points, points of the screen.
fn distance_to(points: &[Pos2], closed: bool, at: Pos2) -> f32 {
    let pairs = points.windows(2).filter_map(|pair| match pair {
        [a, b] => Some((*a, *b)),
        _ => None,
    });
    let closing = points
        .last()
        .copied()
        .zip(points.first().copied())
        .filter(|_| closed);
    pairs
        .chain(closing)
        .map(|(a, b)| distance_to_line(a, b, at))
        .fold(f32::INFINITY, f32::min)
}

/// Distance from a straight line between two points of the screen.
#[must_use]
pub fn distance_to_line(a: Pos2, b: Pos2, at: Pos2) -> f32 {
    let along = b - a;
    let share = if along.length_sq() > 0.0 {
        ((at - a).dot(along) / along.length_sq()).clamp(0.0, 1.0)
    } else {
        0.0
    };
    (at - (a + along * share)).length()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::{Item, LineType, Path, Role};
    use crate::geometry::Point;

    #[test]
    fn the_nearest_tagged_line_is_picked_and_untagged_ones_are_not() {
        let line = |y: f64| SceneShape::Path(Path::line(Point { x: 0.0, y }, Point { x: 10.0, y }));
        let mut scene = Scene::view();
        scene
            .items
            .push(Item::new(line(0.0), LineType::ContinuousWide, Role::Ring).tagged(3));
        scene
            .items
            .push(Item::new(line(4.0), LineType::ContinuousWide, Role::Ring).tagged(8));
        scene
            .items
            .push(Item::new(line(3.0), LineType::ContinuousWide, Role::Ring));
        let rect = Rect::from_min_size(egui::pos2(0.0, 0.0), egui::vec2(400.0, 300.0));
        let way = Sight::Everything.to_screen(rect, scope_of(&scene));
        let above = |y: f64, by: f32| way.at(Point { x: 5.0, y }) - egui::vec2(0.0, by);
        assert_eq!(tag_at(&scene, &way, above(4.0, 3.0)), Some(8));
        assert_eq!(tag_at(&scene, &way, above(0.0, -5.0)), Some(3));
        assert_eq!(tag_at(&scene, &way, above(3.0, 0.0)), None);
    }
}
