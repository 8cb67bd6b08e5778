//! A window on an invented demo design, with a scripted way to choose files.

use std::cell::RefCell;
use std::collections::VecDeque;
use std::path::{Path, PathBuf};
use std::rc::Rc;
use std::thread::sleep;
use std::time::{Duration, Instant};

use egui::accesskit::Role;
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use flangewright::app::chooser::{FileAnswer, FileChooser, FileQuestion};
use flangewright::app::page::Page;
use flangewright::app::window::Window;
use flangewright::app::workspace::Workspace;
use flangewright::checks::{FindingKey, Severity};
use flangewright::document::RingKey;
use flangewright::workshop::Workshop;

/// Answers that were laid ready.
#[derive(Clone, Default)]
pub struct Script {
    pub answers: Rc<RefCell<VecDeque<FileAnswer>>>,
    pub asked: Rc<RefCell<Vec<FileQuestion>>>,
}

struct Scripted(Script);

impl FileChooser for Scripted {
    fn start_open(&mut self, question: FileQuestion) {
        self.0.asked.borrow_mut().push(question);
    }

    fn start_save(&mut self, question: FileQuestion) {
        self.0.asked.borrow_mut().push(question);
    }

    fn poll(&mut self) -> Option<FileAnswer> {
        if self.0.asked.borrow().is_empty() {
            None
        } else {
            self.0.answers.borrow_mut().pop_front()
        }
    }
}

/// A window under test.
pub struct Bench {
    pub window: Harness<'static, Window>,
    pub script: Script,
}

pub fn demo(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("assets/demos")
        .join(name)
}

impl Bench {
    /// A window of this size on an invented demo design.
    pub fn sized(file: &Path, width: f32, height: f32) -> Self {
        Self::built(file, width, height, None)
    }

    /// The usual window, with the user's own folder there.
    pub fn with_own_folder(folder: &Path) -> Self {
        Self::built(
            &demo("archive_portrait.ron"),
            1280.0,
            800.0,
            Some(folder.to_owned()),
        )
    }

    /// The usual window on this file, with the user's own folder there.
    pub fn on_file(file: &Path, own_folder: &Path) -> Self {
        Self::built(file, 1280.0, 800.0, Some(own_folder.to_owned()))
    }

    fn built(file: &Path, width: f32, height: f32, own: Option<PathBuf>) -> Self {
        let script = Script::default();
        let (file, scripted) = (file.to_owned(), script.clone());
        let build = move |creation: &mut eframe::CreationContext<'static>| {
            let workspace = Workspace::empty(Workshop::default_set().unwrap());
            let mut window =
                Window::new(workspace, Box::new(Scripted(scripted)), &creation.egui_ctx);
            if let Some(folder) = own.clone() {
                window.use_own_folder(folder);
            }
            // What is worked beside the window is asked for by the tests that look at it.
            window.show_room(false);
            window.open(&file);
            window
        };
        let mut window = Harness::builder()
            .with_size(egui::vec2(width, height))
            .with_max_steps(12)
            .build_eframe(build);
        window.run();
        Self { window, script }
    }

    /// The usual window on the demo design that has no clash.
    pub fn new() -> Self {
        Self::sized(&demo("archive_portrait.ron"), 1280.0, 800.0)
    }

    /// The usual window, with the room to move worked.
    pub fn with_room() -> Self {
        let mut bench = Self::new();
        bench.window.state_mut().show_room(true);
        bench.window.step();
        bench
    }

    pub fn workspace(&self) -> &Workspace {
        self.window.state().workspace()
    }

    pub fn size(&self, key: RingKey) -> f64 {
        self.workspace()
            .evaluation()
            .derivation
            .dimension(key)
            .unwrap()
            .value
            .unwrap()
    }

    pub fn severity(&self, key: FindingKey) -> Severity {
        self.workspace().evaluation().finding(key).unwrap().severity
    }

    /// Types a text into the box of this name and leaves the keyboard in it.
    pub fn write(&mut self, label: &str, text: &str) {
        self.window
            .get_by_role_and_label(Role::TextInput, label)
            .focus();
        self.window.run();
        self.window
            .key_press_modifiers(egui::Modifiers::COMMAND, egui::Key::A);
        self.window
            .get_by_role_and_label(Role::TextInput, label)
            .type_text(text);
        self.window.run();
    }

    /// Types a text and presses Enter.
    pub fn enter(&mut self, label: &str, text: &str) {
        self.write(label, text);
        self.press(egui::Modifiers::NONE, egui::Key::Enter);
    }

    pub fn press(&mut self, modifiers: egui::Modifiers, key: egui::Key) {
        self.window.key_press_modifiers(modifiers, key);
        self.window.run();
    }

    pub fn click(&mut self, label: &str) {
        self.window
            .get_by_role_and_label(Role::Button, label)
            .click();
        self.window.run();
    }

    /// Goes to a page by its key.
    pub fn show(&mut self, page: Page) {
        self.press(egui::Modifiers::COMMAND, page.key().unwrap());
    }

    /// Presses a button and draws one frame: what it begins may go on for many.
    pub fn press_button(&mut self, label: &str) {
        self.window
            .get_by_role_and_label(Role::Button, label)
            .click();
        self.window.run_steps(2);
    }

    /// Presses a button by the keyboard, also where it is out of sight.
    pub fn press_by_key(&mut self, label: &str) {
        self.window
            .get_by_role_and_label(Role::Button, label)
            .focus();
        self.window.run();
        self.press(egui::Modifiers::NONE, egui::Key::Space);
    }

    /// Draws frames until something is so; gives up after a minute.
    pub fn wait_until(&mut self, is_so: impl Fn(&Self) -> bool) {
        let begun = Instant::now();
        while !is_so(self) {
            assert!(begun.elapsed() < Duration::from_mins(1), "waited too long");
            sleep(Duration::from_millis(5));
            self.window.step();
        }
    }

    /// Takes one of a few choices.
    pub fn choose(&mut self, label: &str, choice: &str) {
        self.window
            .get_by_role_and_label(Role::ComboBox, label)
            .scroll_to_me();
        self.window.run();
        self.window
            .get_by_role_and_label(Role::ComboBox, label)
            .click();
        self.window.run();
        self.window
            .query_all_by_label(choice)
            .last()
            .unwrap()
            .click();
        self.window.run();
    }

    /// Takes an entry of a menu.
    pub fn menu(&mut self, title: &str, entry: &str) {
        self.click(title);
        self.window
            .query_all_by_label_contains(entry)
            .last()
            .unwrap()
            .click();
        self.window.run();
    }

    pub fn shown(&self, label: &str) -> Option<String> {
        self.window
            .get_by_role_and_label(Role::TextInput, label)
            .value()
    }

    pub fn says(&self, part: &str) -> bool {
        self.window
            .query_all_by_label_contains(part)
            .next()
            .is_some()
    }
}
