//! The dialogs in front of the page: what they ask, and what is done with the answers.

use std::path::{Path, PathBuf};

use std::time::SystemTime;

use egui::{Context, Modal, Ui};

use super::command::Command;
use super::disk_question::{DiskAnswer, disk_ui};
use super::export_panel::{ExportError, ExportPanel, ExportWanted, write_export};
use super::files::{FileError, exists};
use super::job::{Job, Progress};
use super::mount_question::{MountAnswer, MountQuestion};
use super::new_panel::{NewPanel, Wanted};
use super::palette::Palette;
use super::path_panel::{PathPanel, PathWanted, Purpose};
use super::recovery_panel::{RecoveryAnswer, RecoveryPanel};
use super::unsaved_question::{Answer, Next, unsaved_ui};
use super::view::View;
use super::window::Window;
use crate::document::demo_designs;
use crate::drawing::export::ExportOptions;

/// The one dialog in front of the page.
pub(super) enum Dialog {
    New(NewPanel),
    Unsaved(Next),
    Path(PathPanel),
    Export(ExportPanel),
    Mount(MountQuestion),
    /// The file of the design in hand was changed by others.
    Disk(PathBuf),
    /// Unsaved work of a crash.
    Recovery(RecoveryPanel),
}

/// A drawing being written off the frame.
pub(super) struct Writing {
    pub(super) path: PathBuf,
    pub(super) job: Job<Result<(), ExportError>>,
}

/// What a dialog answered.
enum Reply {
    New(Wanted),
    Unsaved(Answer),
    Path(PathWanted),
    Export(ExportWanted),
    Mount(MountAnswer),
    Disk(DiskAnswer),
    Recovery(RecoveryAnswer),
}

impl Window {
    pub(super) fn dialog_ui(&mut self, ui: &mut Ui, colours: Palette, commands: &mut Vec<Command>) {
        let Some(dialog) = self.dialog.take() else {
            return;
        };
        let room = ui.ctx().content_rect();
        let width = (room.width() - 60.0).clamp(320.0, 640.0);
        let name = self.workspace.title_name();
        let has_changes = self.workspace.is_changed();
        let left = &self.keeping.left_behind.found;
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
        let mut dialog = dialog;
        let frame = egui::Frame::popup(ui.style()).inner_margin(14.0);
        let shown = Modal::new(egui::Id::unique("dialog"))
            .frame(frame)
            .show(ui.ctx(), |ui| {
                ui.set_width(width);
                match &mut dialog {
                    Dialog::New(panel) => Reply::New(panel.new_ui(ui)),
                    Dialog::Unsaved(next) => Reply::Unsaved(unsaved_ui(ui, &name, *next)),
                    Dialog::Path(panel) => Reply::Path(panel.path_ui(ui, colours)),
                    Dialog::Export(panel) => Reply::Export(panel.export_ui(ui, &mut view)),
                    Dialog::Mount(question) => Reply::Mount(question.question_ui(ui)),
                    Dialog::Disk(path) => Reply::Disk(disk_ui(ui, path, has_changes)),
                    Dialog::Recovery(panel) => {
                        Reply::Recovery(panel.recovery_ui(ui, left, SystemTime::now(), colours))
                    }
                }
            });
        let given_up = shown.should_close();
        self.dialog = Some(dialog);
        self.take_reply(ui.ctx(), shown.inner);
        if given_up {
            self.close_dialog();
        }
    }

    fn take_reply(&mut self, context: &Context, reply: Reply) {
        match reply {
            Reply::New(Wanted::Nothing)
            | Reply::Path(PathWanted::Nothing)
            | Reply::Export(ExportWanted::Nothing)
            | Reply::Mount(MountAnswer::Waiting)
            | Reply::Disk(DiskAnswer::Waiting)
            | Reply::Recovery(RecoveryAnswer::Waiting)
            | Reply::Unsaved(Answer::Waiting) => {}
            Reply::New(Wanted::Close)
            | Reply::Path(PathWanted::Close)
            | Reply::Export(ExportWanted::Close)
            | Reply::Mount(MountAnswer::Cancel)
            | Reply::Unsaved(Answer::Cancel) => self.close_dialog(),
            Reply::New(Wanted::Do(command)) => {
                self.close_dialog();
                self.do_command(context, command);
            }
            Reply::Path(PathWanted::Ask) | Reply::Export(ExportWanted::Ask) => self.ask_system(),
            Reply::Path(PathWanted::Use(path)) => self.use_path(context, &path),
            Reply::Export(ExportWanted::Write(path, options, force)) => {
                self.write_drawing(context, path, options, force);
            }
            Reply::Mount(answer) => self.answer_mount(answer),
            Reply::Disk(answer) => self.answer_disk(answer),
            Reply::Recovery(answer) => self.answer_recovery(answer),
            Reply::Unsaved(Answer::Save) => self.save_then_go_on(context),
            Reply::Unsaved(Answer::Discard) => {
                if let Some(Dialog::Unsaved(next)) = self.dialog.take() {
                    self.given_up.insert(self.workspace.number());
                    self.go_on(context, next);
                }
            }
        }
    }

    fn close_dialog(&mut self) {
        self.dialog = None;
        self.after_saving = None;
        self.given_up.clear();
    }

    fn ask_system(&mut self) {
        match &self.dialog {
            Some(Dialog::Path(panel)) => match panel.purpose {
                Purpose::Open | Purpose::Import => self.chooser.start_open(panel.question()),
                Purpose::Save | Purpose::Print(_) => self.chooser.start_save(panel.question()),
            },
            Some(Dialog::Export(panel)) => self.chooser.start_save(panel.question()),
            Some(
                Dialog::New(_)
                | Dialog::Unsaved(_)
                | Dialog::Mount(_)
                | Dialog::Disk(_)
                | Dialog::Recovery(_),
            )
            | None => {}
        }
    }

    /// Takes an answer of the system's dialog, if there is one.
    pub(super) fn poll_chooser(&mut self, context: &Context) {
        let Some(answer) = self.chooser.poll() else {
            return;
        };
        match &mut self.dialog {
            Some(Dialog::Path(panel)) => {
                let wanted = panel.answered(answer);
                self.take_reply(context, Reply::Path(wanted));
            }
            Some(Dialog::Export(panel)) => panel.answered(answer),
            // The panel was closed while the dialog was open: its answer is for nobody.
            Some(
                Dialog::New(_)
                | Dialog::Unsaved(_)
                | Dialog::Mount(_)
                | Dialog::Disk(_)
                | Dialog::Recovery(_),
            )
            | None => {}
        }
    }

    fn use_path(&mut self, context: &Context, path: &Path) {
        let Some(Dialog::Path(panel)) = &mut self.dialog else {
            return;
        };
        let refused = match panel.purpose {
            Purpose::Open => self.open_tab(path).err(),
            Purpose::Save => return self.save_to(context, path),
            Purpose::Import => return self.import_mounts(path),
            Purpose::Print(sheet) => return self.print_out(context, sheet, path),
        };
        match refused {
            Some(error) => self.refuse_path(&error),
            None => self.close_dialog(),
        }
    }

    /// Says why a path does not serve, in the panel that asked for it and in the bar of messages.
    fn refuse_path(&mut self, error: &FileError) {
        if let Some(Dialog::Path(panel)) = &mut self.dialog {
            panel.refuse(error);
        }
        self.messages.fault(error.to_string());
    }

    /// Saves the design in hand there, and goes on with what waited for it.
    fn save_to(&mut self, context: &Context, path: &Path) {
        match self.keeping.locks.save(&mut self.workspace, path) {
            Ok(before_lost) => {
                self.dialog = None;
                self.claim_file();
                self.add_recent(path);
                if let Some(why) = before_lost {
                    self.messages.fault(format!(
                        "the version before of {} could not be kept: {why}",
                        path.display()
                    ));
                }
                self.messages
                    .written(format!("saved to {}", path.display()), path);
                if let Some(next) = self.after_saving.take() {
                    self.go_on(context, next);
                }
            }
            Err(FileError::ChangedMeanwhile(path)) => {
                self.after_saving = None;
                self.given_up.clear();
                self.dialog = Some(Dialog::Disk(path));
            }
            Err(error) => {
                if self.dialog.is_none() {
                    self.after_saving = None;
                    self.given_up.clear();
                }
                self.refuse_path(&error);
            }
        }
    }

    /// Draws and writes off the frame: a fine picture takes longer than a frame may.
    fn write_drawing(
        &mut self,
        context: &Context,
        path: PathBuf,
        options: ExportOptions,
        force: bool,
    ) {
        if !force
            && exists(&path)
            && let Some(Dialog::Export(panel)) = &mut self.dialog
        {
            let error = ExportError::File(FileError::Exists(path.clone()));
            panel.refuse(path, &error);
            return;
        }
        let design = self.workspace.design().clone();
        let evaluation = self.workspace.evaluation().clone();
        let target = path.clone();
        let work = move || write_export(&design, &evaluation, &target, &options, force);
        match Job::begin("drawing", context, work) {
            Ok(job) => {
                self.dialog = None;
                self.writing = Some(Writing { path, job });
            }
            Err(error) => self
                .messages
                .fault(format!("the system gives no thread to draw on: {error}")),
        }
    }

    /// Tells what came of a drawing that was being written.
    pub(super) fn poll_writing(&mut self) {
        let Some(writing) = &self.writing else { return };
        match writing.job.poll() {
            Progress::Working => return,
            Progress::Done(Ok(())) => self.messages.written(
                format!("written to {}", writing.path.display()),
                &writing.path,
            ),
            Progress::Done(Err(error)) => self.messages.fault(error.to_string()),
            Progress::BrokenOff => self
                .messages
                .fault(format!("{}: the drawing broke off", writing.path.display())),
        }
        self.writing = None;
    }

    pub(super) fn save(&mut self, context: &Context) {
        let Some(path) = self.workspace.path().map(Path::to_owned) else {
            self.ask_path(Purpose::Save);
            return;
        };
        self.save_to(context, &path);
    }

    fn save_then_go_on(&mut self, context: &Context) {
        if let Some(Dialog::Unsaved(next)) = self.dialog.take() {
            self.after_saving = Some(next);
            self.save(context);
        }
    }

    pub(super) fn ask_path(&mut self, purpose: Purpose) {
        let near = match purpose {
            Purpose::Open | Purpose::Save | Purpose::Print(_) => self.workspace.path(),
            Purpose::Import => None,
        };
        self.dialog = Some(Dialog::Path(PathPanel::new(purpose, near)));
        self.ask_system();
    }

    pub(super) fn ask_new(&mut self) {
        match self.mounts.all() {
            Ok(library) => {
                let demos = demo_designs().unwrap_or_default();
                self.dialog = Some(Dialog::New(NewPanel::new(library, demos)));
            }
            Err(error) => self
                .messages
                .fault(format!("the library of mounts cannot be read: {error}")),
        }
    }

    /// Closes the design in hand; asks first where something would be lost.
    pub(super) fn close_tab(&mut self) {
        if self.workspace.is_changed() {
            self.dialog = Some(Dialog::Unsaved(Next::CloseTab));
        } else {
            self.put_away();
        }
    }

    fn go_on(&mut self, context: &Context, next: Next) {
        match next {
            Next::CloseTab => self.put_away(),
            Next::Quit => self.quit_or_ask(context),
        }
    }

    fn answer_disk(&mut self, answer: DiskAnswer) {
        self.dialog = None;
        match answer {
            DiskAnswer::Waiting | DiskAnswer::Later => {}
            DiskAnswer::KeepMine => self.workspace.keep_mine(),
            DiskAnswer::LoadTheirs => {
                if let Err(error) = self.workspace.take_theirs() {
                    self.messages.fault(error.to_string());
                }
            }
            DiskAnswer::SaveAs => self.ask_path(Purpose::Save),
        }
    }

    pub(super) fn ask_export(&mut self) {
        if self.workspace.evaluation().parts.is_some() {
            self.dialog = Some(Dialog::Export(ExportPanel::new(
                self.workspace.path(),
                self.workspace.design().sheet.transparent,
            )));
        } else {
            self.messages
                .fault("there is no whole ring to draw yet; the page Design lists what is missing");
        }
    }
}
