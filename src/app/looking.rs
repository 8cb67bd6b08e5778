//! Where the drawings of the page in sight look: what the keys and the menu View do.

use super::page::Page;
use super::sight::Sight;
use super::window::Window;

impl Window {
    /// Looks at the same in the drawings of the page in sight.
    pub(super) fn look(&mut self, at: Sight) {
        if self.page == Page::Drawing {
            self.drawing_page.canvas.sight = at;
        } else if self.page == Page::Compare {
            self.compare_page.look(at);
        } else if self.page == Page::ShopPlan {
            self.shop_plan_page.canvas.sight = at;
        } else {
            self.design_page.look(at);
        }
    }

    /// Zooms the drawing of the page in sight by a factor.
    pub(super) fn zoom_by(&mut self, factor: f64) {
        if self.page == Page::Drawing {
            self.drawing_page.canvas.zoom_by(factor);
        } else if self.page == Page::Compare {
            self.compare_page.zoom_by(factor);
        } else if self.page == Page::ShopPlan {
            self.shop_plan_page.canvas.zoom_by(factor);
        } else {
            self.design_page.section.canvas.zoom_by(factor);
        }
    }

    /// Sees the plan of the page in sight from the other side.
    pub(super) fn turn_plan(&mut self) {
        if self.page == Page::Compare {
            self.compare_page.turn();
        } else {
            self.design_page.plan.turn();
        }
    }
}
