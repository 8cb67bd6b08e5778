//! Zooming and showing all, in the drawings of the page in sight.

use super::page::Page;
use super::sight::Sight;
use super::window::Window;

impl Window {
    /// Looks at the same in the drawings of the page in sight.
    pub(super) fn look(&mut self, at: Sight) {
        if self.page == Page::Drawing {
            self.drawing_page.canvas.sight = at;
        } else if self.page == Page::ShopPlan {
            self.shop_plan_page.canvas.sight = at;
        } else {
            self.design_page.look(at);
        }
    }

    pub(super) fn zoom_by(&mut self, factor: f64) {
        if self.page == Page::Drawing {
            self.drawing_page.canvas.zoom_by(factor);
        } else if self.page == Page::ShopPlan {
            self.shop_plan_page.canvas.zoom_by(factor);
        } else {
            self.design_page.section.canvas.zoom_by(factor);
        }
    }
}
