//! The same window once more in this process, to know from its accessibility tree where things stand on the real one.
//!
//! Whatever the hand does to the real window is done to the twin as well; at the end both must have come to the same.

use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

use egui::accesskit::Role;
use egui::{Event, Key, Modifiers, PointerButton, Pos2, Vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use flangewright::app::chooser::{FileAnswer, FileChooser, FileQuestion};
use flangewright::app::window::Window;
use flangewright::app::workspace::Workspace;
use flangewright::workshop::Workshop;

use super::hand::Bench;

/// There is no dialog here: the typed path is the way.
#[derive(Default)]
struct NoDialog {
    asked: bool,
}

impl FileChooser for NoDialog {
    fn start_open(&mut self, _: FileQuestion) {
        self.asked = true;
    }

    fn start_save(&mut self, _: FileQuestion) {
        self.asked = true;
    }

    fn poll(&mut self) -> Option<FileAnswer> {
        std::mem::take(&mut self.asked)
            .then(|| FileAnswer::Unavailable("none in this test".to_owned()))
    }
}

/// The real window and its twin.
pub struct Both {
    pub real: Bench,
    pub twin: Harness<'static, Window>,
    folder: tempfile::TempDir,
}

/// A key and what is held with it, as both sides name them.
pub struct Chord {
    real: &'static str,
    modifiers: Modifiers,
    key: Key,
}

impl Chord {
    pub const fn plain(real: &'static str, key: Key) -> Self {
        Self {
            real,
            modifiers: Modifiers::NONE,
            key,
        }
    }

    pub const fn command(real: &'static str, key: Key) -> Self {
        Self {
            real,
            modifiers: Modifiers::COMMAND,
            key,
        }
    }
}

impl Both {
    /// Both on a copy of the same design.
    pub fn open(design: &Path, size: (u16, u16)) -> Self {
        let folder = tempfile::tempdir().unwrap();
        let twin = twin_of(design, size, folder.path());
        let real = Bench::open(design, (u32::from(size.0), u32::from(size.1)));
        Self { real, twin, folder }
    }

    /// A file name in the twin's own folder: as long as the real one's, so that both look alike.
    pub fn twin_path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    /// Where something of this role and name stands.
    #[track_caller]
    pub fn place(&self, role: Role, label: &str) -> Pos2 {
        self.twin.get_by_role_and_label(role, label).rect().center()
    }

    /// Lets the twin draw until it rests.
    pub fn settle(&mut self) {
        self.real.keep_picture();
        for _ in 0..12 {
            self.twin.step();
            std::thread::sleep(Duration::from_millis(5));
        }
    }

    /// Draws the twin until something is so.
    #[track_caller]
    pub fn twin_until(&mut self, what: &str, is_so: impl Fn(&Harness<'static, Window>) -> bool) {
        let begun = Instant::now();
        while !is_so(&self.twin) {
            assert!(begun.elapsed() < Duration::from_mins(1), "the twin: {what}");
            std::thread::sleep(Duration::from_millis(5));
            self.twin.step();
        }
    }

    fn button(&mut self, at: Pos2, pressed: bool) {
        self.twin.event(Event::PointerButton {
            pos: at,
            button: PointerButton::Primary,
            pressed,
            modifiers: Modifiers::NONE,
        });
        self.twin.step();
    }

    fn move_twin(&mut self, at: Pos2) {
        self.twin.event(Event::PointerMoved(at));
        self.twin.step();
        self.twin.step();
    }

    /// Clicks a place.
    pub fn click_at(&mut self, at: Pos2) {
        self.real.click(dots(at));
        self.move_twin(at);
        self.button(at, true);
        self.button(at, false);
        self.settle();
    }

    /// Clicks something by its role and name.
    #[track_caller]
    pub fn click(&mut self, role: Role, label: &str) {
        let at = self.place(role, label);
        self.click_at(at);
    }

    /// Clicks the last thing whose name holds these words, such as an entry of an open menu.
    #[track_caller]
    pub fn click_named(&mut self, words: &str) {
        let found = self.twin.query_all_by_label_contains(words).last();
        let at = found.map(|node| node.rect().center());
        self.click_at(at.unwrap_or_else(|| panic!("nothing is called \"{words}\"")));
    }

    /// Goes by Tab to something of this role and name.
    #[track_caller]
    pub fn focus_by_tab(&mut self, role: Role, label: &str) {
        const FAR: usize = 400;
        let mut tabs = 0;
        // What is out of sight may not be in the tree.
        while !self
            .twin
            .query_by_role_and_label(role, label)
            .is_some_and(|node| node.is_focused())
        {
            assert!(tabs < FAR, "no Tab leads to \"{label}\"");
            tabs += 1;
            self.twin.key_press(Key::Tab);
            self.twin.step();
            self.twin.step();
        }
        self.real.tabs(tabs);
        self.settle();
    }

    /// Drags from a place over others to a last one, the button held all the way.
    pub fn drag(&mut self, way: &[Pos2]) {
        let places: Vec<(u32, u32)> = way.iter().map(|at| dots(*at)).collect();
        self.real.drag(&places);
        let (Some(first), Some(last)) = (way.first(), way.last()) else {
            return;
        };
        self.move_twin(*first);
        self.button(*first, true);
        for at in &way[1..] {
            self.move_twin(*at);
        }
        self.button(*last, false);
        self.settle();
    }

    /// Presses a key or chord.
    pub fn key(&mut self, chord: &Chord) {
        self.real.key(chord.real);
        self.twin.key_press_modifiers(chord.modifiers, chord.key);
        self.settle();
    }

    /// Replaces the text of the field that has the focus, and presses Enter.
    pub fn write(&mut self, real: &str, twin: &str) {
        self.real.replace_text(real);
        self.twin.key_press_modifiers(Modifiers::COMMAND, Key::A);
        self.twin.step();
        self.twin.event(Event::Text(twin.to_owned()));
        self.settle();
        self.key(&Chord::plain("Return", Key::Enter));
    }

    /// Clicks a field of numbers, writes, and presses Enter.
    #[track_caller]
    pub fn enter(&mut self, label: &str, text: &str) {
        self.click(Role::TextInput, label);
        self.write(text, text);
    }
}

/// A window in this process on a copy of a design, with a folder of its own.
fn twin_of(design: &Path, size: (u16, u16), folder: &Path) -> Harness<'static, Window> {
    let copy = folder.join("ring.ron");
    std::fs::copy(design, &copy).unwrap();
    let own = folder.join("own");
    let build = move |creation: &mut eframe::CreationContext<'static>| {
        let workspace = Workspace::empty(Workshop::default_set().unwrap());
        let chooser = Box::<NoDialog>::default();
        let mut window = Window::new(workspace, chooser, &creation.egui_ctx);
        window.use_own_folder(own.clone());
        window.open(&copy);
        window
    };
    let mut twin = Harness::builder()
        .with_size(Vec2::new(f32::from(size.0), f32::from(size.1)))
        .with_max_steps(30)
        .build_eframe(build);
    twin.run();
    twin
}

/// Where something of this role and name stands in a window on this design.
#[track_caller]
pub fn place_of(design: &Path, size: (u16, u16), role: Role, label: &str) -> (u32, u32) {
    let folder = tempfile::tempdir().unwrap();
    let twin = twin_of(design, size, folder.path());
    dots(twin.get_by_role_and_label(role, label).rect().center())
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "places in a window are small and positive"
)]
fn dots(at: Pos2) -> (u32, u32) {
    (at.x.round() as u32, at.y.round() as u32)
}
