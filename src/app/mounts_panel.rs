//! "Mounts explained": how the parts of a mount work, each with a picture.

use egui::{RichText, Sense, Ui, WidgetInfo, vec2};

use super::palette::Palette;
use super::scene_paint::painted;
use super::sight::{Scope, Sight};
use crate::drawing::Topic;

/// Size of a picture, points.
const PICTURE: egui::Vec2 = vec2(320.0, 210.0);

/// All topics below each other, pictures on the left.
pub fn mounts_ui(ui: &mut Ui, palette: Palette) {
    for topic in Topic::ALL {
        ui.horizontal_top(|ui| {
            picture_ui(ui, palette, topic);
            ui.vertical(|ui| {
                ui.label(RichText::new(topic.title()).strong());
                ui.add(egui::Label::new(topic.text()).wrap());
            });
        });
        ui.separator();
    }
    ui.label(
        RichText::new("Pictures of no one's mounts, not to scale. What to measure on yours, and how, is on the page Measure.")
            .small()
            .weak(),
    );
}

fn picture_ui(ui: &mut Ui, palette: Palette, topic: Topic) {
    let (rect, response) = ui.allocate_exact_size(PICTURE, Sense::HOVER);
    response.widget_info(|| {
        WidgetInfo::labeled(
            egui::Role::Image,
            true,
            format!("Picture: {}", topic.title()),
        )
    });
    if !ui.is_rect_visible(rect) {
        return;
    }
    let painter = ui.painter_at(rect);
    painter.rect_filled(rect, 3.0, palette.paper);
    let scene = topic.scene();
    let scope = Scope {
        ring: None,
        everything: scene.frame(),
    };
    let way = Sight::Everything.to_screen(rect, scope);
    painted(&scene, &way, palette, &|_| false).paint(&painter, &way);
}
