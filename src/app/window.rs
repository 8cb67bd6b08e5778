//! The window: draws the pages and dialogs, gathers the wishes, and does them.

use std::collections::BTreeSet;
use std::path::Path;

use egui::{CentralPanel, Context, Frame, Margin, Panel, Ui};

use super::announcer::Announcer;
use super::chooser::FileChooser;
use super::clipboard::Copying;
use super::command::{CUT_STEP_DEG, Command};
use super::compare_page::ComparePage;
use super::design_page::DesignPage;
use super::desk::Desk;
use super::dialogs::{Dialog, Writing};
use super::drawing_page::DrawingPage;
use super::edit::Edit;
use super::focus_ring::FocusRing;
use super::help::Help;
use super::inspection_page::InspectionPage;
use super::keeping::Keeping;
use super::key_presses::keys;
use super::limits_page::limits_ui;
use super::measure_page::MeasurePage;
use super::menu_bar::{Possible, menu_bar_ui};
use super::messages::Messages;
use super::opener::Opener;
use super::optics_page::OpticsPage;
use super::own_mounts::OwnMounts;
use super::own_settings::OwnSettings;
use super::own_shop::OwnShop;
use super::page::Page;
use super::palette::{Palette, dress, palette};
use super::path_panel::Purpose;
use super::room_page::RoomPage;
use super::room_work::RoomWork;
use super::shop_plan_page::ShopPlanPage;
use super::sight::{Sight, ToScreen};
use super::stack_page::StackPage;
use super::tabs::tab_bar_ui;
use super::unsaved_question::Next;
use super::view::{Lit, Selection, Typing, View};
use super::watching::Watching;
use super::workshop_page::{Kept, workshop_ui};
use super::workspace::Workspace;

/// The window.
pub struct Window {
    /// The design in hand.
    pub(super) workspace: Workspace,
    /// Those beside it.
    pub(super) desk: Desk,
    pub(super) keeping: Keeping,
    pub(super) watching: Watching,
    /// The numbers of designs whose changes are let go when the window closes.
    pub(super) given_up: BTreeSet<u64>,
    pub(super) chooser: Box<dyn FileChooser>,
    pub(super) selection: Selection,
    pub(super) typing: Typing,
    pub(super) messages: Messages,
    pub(super) page: Page,
    pub(super) design_page: DesignPage,
    pub(super) compare_page: ComparePage,
    measure_page: MeasurePage,
    optics_page: OpticsPage,
    stack_page: StackPage,
    pub(super) room: RoomWork,
    room_page: RoomPage,
    pub(super) drawing_page: DrawingPage,
    pub(super) shop_plan_page: ShopPlanPage,
    inspection_page: InspectionPage,
    /// The user's workshop.
    pub(super) shop: OwnShop,
    pub(super) copying: Copying,
    opener: Opener,
    pub(super) mounts: OwnMounts,
    pub(super) settings: OwnSettings,
    pub(super) help: Option<Help>,
    pub(super) help_about: Option<Lit>,
    pub(super) hints: bool,
    announcer: Announcer,
    focus: FocusRing,
    pub(super) writing: Option<Writing>,
    pub(super) dialog: Option<Dialog>,
    /// What to go on with once the design is saved.
    pub(super) after_saving: Option<Next>,
    /// Whether the window may close without asking.
    pub(super) may_close: bool,
    pub(super) title: String,
}

impl Window {
    /// A window on a workspace, with a way to ask for files.
    #[must_use]
    pub fn new(workspace: Workspace, chooser: Box<dyn FileChooser>, context: &Context) -> Self {
        dress(context);
        Self {
            shop: OwnShop::starting_at(workspace.workshop(), Kept::Nowhere),
            workspace,
            desk: Desk::default(),
            keeping: Keeping::default(),
            watching: Watching::default(),
            given_up: BTreeSet::new(),
            chooser,
            selection: Selection::default(),
            typing: Typing::default(),
            messages: Messages::default(),
            page: Page::default(),
            design_page: DesignPage::default(),
            compare_page: ComparePage::default(),
            measure_page: MeasurePage::default(),
            optics_page: OpticsPage::default(),
            stack_page: StackPage::default(),
            drawing_page: DrawingPage::default(),
            shop_plan_page: ShopPlanPage::default(),
            room: RoomWork::default(),
            room_page: RoomPage::default(),
            inspection_page: InspectionPage::default(),
            copying: Copying::default(),
            opener: Opener::default(),
            mounts: OwnMounts::default(),
            settings: OwnSettings::default(),
            help: None,
            help_about: None,
            hints: false,
            announcer: Announcer::default(),
            focus: FocusRing::default(),
            writing: None,
            dialog: None,
            after_saving: None,
            may_close: false,
            title: String::new(),
        }
    }

    /// The workspace.
    #[must_use]
    pub const fn workspace(&self) -> &Workspace {
        &self.workspace
    }

    /// Opens a design in a tab of its own; a fault becomes a message.
    pub fn open(&mut self, path: &Path) {
        if let Err(error) = self.open_tab(path) {
            self.messages.fault(error.to_string());
        }
    }

    /// The way from millimetres of the half-section to the screen, once it has been drawn.
    #[must_use]
    pub fn section_way(&self) -> Option<ToScreen> {
        self.design_page.section.canvas.way_drawn()
    }

    /// One frame.
    pub fn window_ui(&mut self, ui: &mut Ui) {
        self.agree_on_workshop();
        self.settings.put_on(ui.ctx());
        self.focus.follow(ui.ctx());
        let by_key = if self.dialog.is_none() && self.help.is_none() {
            keys(ui.ctx())
        } else {
            Vec::new()
        };
        let mut commands = Vec::new();
        let colours = palette(ui, self.settings.now().look.strong_contrast);
        self.bars_ui(ui, colours, &mut commands);
        let frame = Frame::new()
            .fill(colours.ground)
            .inner_margin(Margin::same(0));
        CentralPanel::default()
            .frame(frame)
            .show(ui, |ui| self.page_ui(ui, colours, &mut commands));
        self.dialog_ui(ui, colours, &mut commands);
        self.help_ui(ui, colours);
        self.focus.paint(ui.ctx(), colours);
        // Keys come last: a text that the key ended is taken first.
        commands.extend(by_key);
        for command in commands {
            self.do_command(ui.ctx(), command);
        }
        self.announcer
            .watch(self.workspace.revision(), self.workspace.evaluation());
        self.announcer.announce_ui(ui);
        if self.selection.end_frame() {
            ui.ctx().request_repaint();
        }
        self.keep_work();
        self.show_title(ui.ctx());
    }

    fn bars_ui(&mut self, ui: &mut Ui, colours: Palette, commands: &mut Vec<Command>) {
        let possible = Possible {
            undo: self.steps().0,
            redo: self.steps().1,
            export: self.workspace.evaluation().parts.is_some(),
            page: self.page,
            look: self.settings.now().look,
        };
        let frame = Frame::new()
            .fill(colours.ground)
            .inner_margin(Margin::symmetric(6, 3));
        Panel::top("menus").frame(frame).show(ui, |ui| {
            menu_bar_ui(
                ui,
                possible,
                self.watching.recent.files(),
                colours,
                commands,
            );
        });
        if self.desk.count() > 1 {
            let (tabs, in_hand) = (self.tabs(), self.desk.place());
            Panel::top("tabs")
                .frame(frame)
                .show(ui, |ui| tab_bar_ui(ui, &tabs, in_hand, colours, commands));
        }
        self.hints_bar_ui(ui, colours, frame);
        if !self.messages.is_empty() {
            let shown = Panel::bottom("messages")
                .frame(frame)
                .show(ui, |ui| self.messages.messages_ui(ui, colours));
            if let Some(path) = shown.inner
                && let Err(error) = self.opener.begin(ui.ctx(), &path)
            {
                self.messages.fault(format!(
                    "the system gives no thread to show a file: {error}"
                ));
            }
        }
    }

    fn page_ui(&mut self, ui: &mut Ui, colours: Palette, commands: &mut Vec<Command>) {
        let subject = self.room.on_page(ui.ctx(), &self.workspace, self.page);
        let mut view = View {
            design: self.workspace.design(),
            evaluation: self.workspace.evaluation(),
            workshop: self.workspace.workshop(),
            room: &self.room,
            selection: &mut self.selection,
            typing: &mut self.typing,
            commands,
            palette: colours,
        };
        match self.page {
            Page::Design => self
                .design_page
                .design_ui(ui, &mut view, self.workspace.revision()),
            Page::Compare => {
                self.compare_page
                    .compare_ui(ui, &mut view, self.workspace.revision());
            }
            Page::Room => {
                if let Some(subject) = &subject {
                    self.room_page.room_ui(ui, &mut view, subject);
                }
            }
            Page::Measure => self.measure_page.measure_ui(ui, &mut view),
            Page::Optics => {
                self.optics_page
                    .optics_ui(ui, &mut view, self.workspace.revision());
            }
            Page::Tolerance => {
                self.stack_page
                    .stack_ui(ui, &mut view, self.workspace.revision());
            }
            Page::Drawing => {
                self.drawing_page
                    .drawing_ui(ui, &mut view, self.workspace.revision());
            }
            Page::Inspection => {
                self.inspection_page
                    .inspection_ui(ui, &mut view, self.workspace.revision());
            }
            Page::ShopPlan => {
                self.shop_plan_page
                    .shop_plan_ui(ui, &mut view, self.workspace.revision());
            }
            Page::Workshop => workshop_ui(ui, &mut view, &self.shop.kept),
            Page::Limits => limits_ui(ui, &mut view),
        }
    }

    pub(super) fn do_command(&mut self, context: &Context, command: Command) {
        match command {
            Command::Edit(edit) => self.refusable(|workspace| workspace.edit(&edit)),
            Command::Shop(edit) => self.change_workshop(&edit),
            Command::Drag(edit) => self.refusable(|workspace| workspace.drag(&edit)),
            Command::DragEnded => self.workspace.end_drag(),
            Command::DragGivenUp => self.workspace.give_up_drag(),
            Command::New => self.ask_new(),
            Command::Start(lens, body) => {
                self.start(|workspace| workspace.start(*lens, *body));
            }
            Command::StartFrom(design) => {
                self.start(|workspace| workspace.start_from(*design));
            }
            Command::ShowTab(place) => self.show_tab(place),
            Command::NextTab => self.turn_tabs(true),
            Command::TabBefore => self.turn_tabs(false),
            Command::CloseTab => self.close_tab(),
            Command::Recover => self.recover(),
            Command::OpenRecent(path) => self.open_recent(&path),
            Command::ClearRecent => self.clear_recent(),
            Command::KeepLens => self.keep_lens(),
            Command::KeepBody => self.keep_body(),
            Command::ImportMounts => self.ask_path(Purpose::Import),
            Command::WriteWorkshop => self.write_workshop(),
            Command::Open => self.ask_path(Purpose::Open),
            Command::Save => self.save(context),
            Command::SaveAs => self.ask_path(Purpose::Save),
            Command::Export => self.ask_export(),
            Command::Print(sheet) => self.ask_path(Purpose::Print(sheet)),
            Command::CopyDrawing => self.copy_drawing(context),
            Command::KeepVariant => self.keep_variant(),
            Command::BringIn => self.ask_path(Purpose::BringIn),
            Command::TakeOut(number) => self.compare_page.take_out(number),
            Command::ExportComparison => self.ask_path(Purpose::Comparison),
            Command::Quit => self.quit_or_ask(context),
            Command::Undo => self.undo(),
            Command::Redo => self.redo(),
            Command::Fit => self.look(Sight::Ring),
            Command::ShowAll => self.look(Sight::Everything),
            Command::ZoomIn => self.zoom_by(1.25),
            Command::ZoomOut => self.zoom_by(0.8),
            Command::TurnPlan => self.turn_plan(),
            Command::CutClockwise => self.turn_cut(CUT_STEP_DEG),
            Command::CutAnticlockwise => self.turn_cut(-CUT_STEP_DEG),
            Command::Room(wish) => self.room.take(wish),
            Command::Show(page) => self.page = page,
            Command::Look(choice) => self.choose_look(choice),
            Command::Help(help) => self.ask_help(help),
        }
        context.request_repaint();
    }

    /// Whether there is a step back and one forward, of what the page in sight changes.
    fn steps(&self) -> (bool, bool) {
        if self.page == Page::Workshop {
            self.shop.steps()
        } else {
            (self.workspace.can_undo(), self.workspace.can_redo())
        }
    }

    fn undo(&mut self) {
        if self.page == Page::Workshop {
            self.undo_workshop();
        } else {
            self.workspace.undo();
        }
    }

    fn redo(&mut self) {
        if self.page == Page::Workshop {
            self.redo_workshop();
        } else {
            self.workspace.redo();
        }
    }

    fn copy_drawing(&mut self, context: &Context) {
        let (design, evaluation) = (self.workspace.design(), self.workspace.evaluation());
        if let Err(error) = self.copying.begin(context, design, evaluation) {
            self.messages
                .fault(format!("the system gives no thread to draw on: {error}"));
        }
    }

    /// Tells what came of the work that goes on beside the window.
    fn poll_work(&mut self, context: &Context) {
        self.poll_writing();
        match self.copying.poll(context) {
            Some(Ok(said)) => self.messages.done(said),
            Some(Err(error)) => self.messages.fault(error.to_string()),
            None => {}
        }
        if let Some(error) = self.opener.poll() {
            self.messages.fault(error.to_string());
        }
    }

    fn turn_cut(&mut self, by_deg: f64) {
        let edit = Edit::SectionAngle(self.workspace.design().sheet.section_angle_deg + by_deg);
        self.refusable(|workspace| workspace.edit(&edit));
    }

    pub(super) fn refusable(
        &mut self,
        change: impl FnOnce(&mut Workspace) -> Result<(), crate::document::Fault>,
    ) {
        if let Err(fault) = change(&mut self.workspace) {
            self.messages.fault(fault.to_string());
        }
    }
}

impl eframe::App for Window {
    fn logic(&mut self, context: &Context, _frame: &mut eframe::Frame) {
        self.watch_closing(context);
        self.poll_chooser(context);
        self.poll_work(context);
        self.take_drops(context);
        self.watch_files(context);
    }

    fn ui(&mut self, ui: &mut Ui, _frame: &mut eframe::Frame) {
        self.window_ui(ui);
    }

    fn on_exit(&mut self, _painter: Option<&eframe::glow::Context>) {
        self.end_keeping();
    }
}
