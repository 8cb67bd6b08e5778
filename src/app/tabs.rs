//! Several designs in one window: the bar of their tabs, going from one to another, opening and closing.

use std::path::Path;

use egui::{Button, Context, RichText, Role, Ui, ViewportCommand, WidgetInfo};

use super::command::Command;
use super::desk::Aside;
use super::dialogs::Dialog;
use super::files::{self, FileError};
use super::page::Page;
use super::palette::Palette;
use super::path_words::path_shown;
use super::sight::Sight;
use super::unsaved_question::Next;
use super::window::Window;
use super::workspace::Workspace;

/// The longest name on a tab, letters.
const LONGEST: usize = 28;

/// A tab of the bar.
pub(super) struct Tab {
    name: String,
    hover: String,
    changed: bool,
}

impl Tab {
    fn of(workspace: &Workspace) -> Self {
        Self {
            name: workspace.title_name(),
            hover: workspace
                .path()
                .map_or_else(|| "not saved to a file yet".to_owned(), path_shown),
            changed: workspace.is_changed(),
        }
    }

    fn words(&self) -> String {
        let mut words: String = self.name.chars().take(LONGEST).collect();
        if words.len() < self.name.len() {
            words.push('…');
        }
        if self.changed {
            words.push_str(" *");
        }
        words
    }
}

/// The bar: a tab for each design, the one in hand marked, and a cross to close it.
pub(super) fn tab_bar_ui(
    ui: &mut Ui,
    tabs: &[Tab],
    in_hand: usize,
    palette: Palette,
    commands: &mut Vec<Command>,
) {
    ui.horizontal_wrapped(|ui| {
        for (place, tab) in tabs.iter().enumerate() {
            let words = RichText::new(tab.words());
            let words = if place == in_hand {
                words.strong().color(palette.ink)
            } else {
                words.color(palette.faint_ink)
            };
            let star = if tab.changed {
                "; has changes that are not saved"
            } else {
                ""
            };
            let shown = ui
                .selectable_label(place == in_hand, words)
                .on_hover_text(format!("{}{star}", tab.hover));
            if shown.clicked() {
                commands.push(Command::ShowTab(place));
            }
            let cross = ui.add(Button::new("×").frame(false).small());
            let cross = cross.on_hover_text(format!("close {}", tab.name));
            let name = format!("Close {}", tab.name);
            cross.widget_info(|| WidgetInfo::labeled(Role::Button, true, name.as_str()));
            if cross.clicked() || shown.middle_clicked() {
                commands.push(Command::ShowTab(place));
                commands.push(Command::CloseTab);
            }
            ui.separator();
        }
    });
}

impl Window {
    /// The tabs, in their order.
    pub(super) fn tabs(&self) -> Vec<Tab> {
        let mut tabs: Vec<Tab> = self
            .desk
            .others()
            .map(|(_, workspace)| Tab::of(workspace))
            .collect();
        tabs.insert(self.desk.place(), Tab::of(&self.workspace));
        tabs
    }

    /// How many designs are open.
    #[must_use]
    pub fn open_designs(&self) -> usize {
        self.desk.count()
    }

    fn swap_in_hand(&mut self, aside: &mut Aside) {
        std::mem::swap(&mut self.workspace, &mut aside.workspace);
        std::mem::swap(&mut self.page, &mut aside.page);
        std::mem::swap(&mut self.design_page, &mut aside.design_page);
        std::mem::swap(&mut self.drawing_page, &mut aside.drawing_page);
        std::mem::swap(&mut self.selection, &mut aside.selection);
    }

    /// An empty place for the swap: what it holds is never shown.
    fn blank(&self) -> Aside {
        Aside::new(Workspace::empty(self.workspace.workshop().clone()))
    }

    /// Goes to the design at this place.
    pub(super) fn show_tab(&mut self, place: usize) {
        // What was changed in this very frame is kept before the design goes out of hand.
        self.keep_work();
        let mut in_hand = self.blank();
        self.swap_in_hand(&mut in_hand);
        let moved = self.desk.take_up(place, &mut in_hand);
        self.swap_in_hand(&mut in_hand);
        if moved {
            self.meet_workshop(&in_hand.workspace);
        }
    }

    /// The workshop is one for all designs: one that was changed meanwhile is taken over.
    fn meet_workshop(&mut self, from: &Workspace) {
        if self.workspace.workshop() != from.workshop() {
            self.workspace.use_workshop(from.workshop().clone());
        }
        self.typing = super::view::Typing::default();
    }

    /// Goes to the next tab or the one before, round the ends.
    pub(super) fn turn_tabs(&mut self, forward: bool) {
        let (place, count) = (self.desk.place(), self.desk.count());
        let step = if forward { 1 } else { count - 1 };
        self.show_tab((place + step) % count);
    }

    /// Takes a design in hand: in the place of one that nobody has touched, else beside the others.
    pub(super) fn take_in_hand(&mut self, workspace: Workspace) {
        self.keep_work();
        let mut aside = Aside::new(workspace);
        let replaces = self.workspace.is_untouched();
        if !replaces {
            aside.page = self.page;
        }
        self.swap_in_hand(&mut aside);
        if !replaces {
            self.desk.lay_aside(aside);
        }
        self.design_page.look(Sight::Ring);
        self.typing = super::view::Typing::default();
    }

    /// Starts a design from what `begin` makes of an empty one.
    pub(super) fn start(&mut self, begin: impl FnOnce(&mut Workspace)) {
        let mut workspace = Workspace::empty(self.workspace.workshop().clone());
        begin(&mut workspace);
        self.take_in_hand(workspace);
        self.page = Page::Design;
    }

    /// The tab of the design of this file, where it is open.
    pub(super) fn place_of(&self, path: &Path) -> Option<usize> {
        let real = files::real_path(path);
        let in_hand = (self.desk.place(), &self.workspace);
        let mut open = self.desk.others().chain([in_hand]);
        open.find(|(_, workspace)| {
            let own = workspace.path().map(files::real_path);
            own.as_ref() == Some(&real)
        })
        .map(|(place, _)| place)
    }

    /// Opens a file in a tab of its own, or goes to the tab that has it already.
    ///
    /// # Errors
    /// What [`files::open_design`] refuses; everything stays as it was then.
    pub(super) fn open_tab(&mut self, path: &Path) -> Result<(), FileError> {
        if let Some(place) = self.place_of(path) {
            self.show_tab(place);
            return Ok(());
        }
        let workspace = Workspace::opened(path, self.workspace.workshop().clone())?;
        self.take_in_hand(workspace);
        self.claim_file();
        self.add_recent(path);
        Ok(())
    }

    /// Puts the design in hand away; the last one leaves an empty one behind.
    pub(super) fn put_away(&mut self) {
        self.forget_work(self.workspace.number());
        let mut next = self.desk.neighbour().unwrap_or_else(|| self.blank());
        self.swap_in_hand(&mut next);
        self.meet_workshop(&next.workspace);
    }

    /// The place of a design with unsaved changes that nobody has given up, the one in hand first.
    pub(super) fn unsaved_place(&self) -> Option<usize> {
        let is_unsaved = |workspace: &Workspace| {
            workspace.is_changed() && !self.given_up.contains(&workspace.number())
        };
        if is_unsaved(&self.workspace) {
            return Some(self.desk.place());
        }
        self.desk
            .others()
            .find(|(_, workspace)| is_unsaved(workspace))
            .map(|(place, _)| place)
    }

    /// Asks about the next design with unsaved changes; closes the window where there is none left.
    pub(super) fn quit_or_ask(&mut self, context: &Context) {
        if let Some(place) = self.unsaved_place() {
            self.show_tab(place);
            self.dialog = Some(Dialog::Unsaved(Next::Quit));
        } else {
            self.may_close = true;
            context.send_viewport_cmd(ViewportCommand::Close);
        }
    }
}
