//! A hand on mouse and keys and an eye on the screen.

use std::path::{Path, PathBuf};
use std::process::{Child, Command, Output, Stdio};
use std::time::{Duration, Instant};

/// How long anything may take before the test gives up; software drawing on a busy machine is slow.
const PATIENCE: Duration = Duration::from_secs(30);
const STEP: Duration = Duration::from_millis(60);

/// A part of the window, points from its upper left corner.
#[derive(Clone, Copy)]
pub struct Area {
    pub x: u32,
    pub y: u32,
    pub width: u32,
    pub height: u32,
}

/// The program in its window, with a folder of its own to write to.
pub struct Bench {
    program: Option<Child>,
    window: String,
    folder: tempfile::TempDir,
    shown_after: Option<Duration>,
}

fn run(program: &str, arguments: &[&str]) -> Output {
    Command::new(program)
        .args(arguments)
        .output()
        .unwrap_or_else(|error| panic!("{program} is not installed: {error}"))
}

fn said(output: &Output) -> String {
    String::from_utf8_lossy(&output.stdout).trim().to_owned()
}

/// Waits until something holds.
#[track_caller]
pub fn until(what: &str, mut holds: impl FnMut() -> bool) {
    let begun = Instant::now();
    while !holds() {
        assert!(begun.elapsed() < PATIENCE, "gave up waiting until {what}");
        std::thread::sleep(STEP);
    }
}

/// The picture once two in a row are the same.
fn settled(picture: impl Fn() -> PathBuf) -> PathBuf {
    let mut last = picture();
    let begun = Instant::now();
    loop {
        std::thread::sleep(3 * STEP);
        let next = picture();
        let same = std::fs::read(&last).unwrap() == std::fs::read(&next).unwrap();
        if same || begun.elapsed() > PATIENCE {
            return next;
        }
        last = next;
    }
}

/// Width and height of a PNG file, dots.
pub fn size_of(png: &Path) -> (u32, u32) {
    let bytes = std::fs::read(png).unwrap();
    assert_eq!(&bytes[1..4], b"PNG");
    let number = |at: usize| u32::from_be_bytes(bytes[at..at + 4].try_into().unwrap());
    (number(16), number(20))
}

/// Lets the program take in what was done.
pub fn pause() {
    std::thread::sleep(10 * STEP);
}

/// How many dots of two pictures differ.
pub fn differing(a: &Path, b: &Path) -> f64 {
    let (a, b) = (a.display().to_string(), b.display().to_string());
    let output = run("compare", &["-metric", "AE", &a, &b, "null:"]);
    let text = String::from_utf8_lossy(&output.stderr).trim().to_owned();
    let first = text.split_whitespace().next().unwrap_or_default();
    first
        .parse()
        .unwrap_or_else(|_| panic!("compare says {text}"))
}

impl Bench {
    /// Starts the program on a copy of a design and waits for its window.
    pub fn open(design: &Path, size: (u32, u32)) -> Self {
        Self::open_with(design, size, &[])
    }

    /// The same with some variables of the system's set.
    pub fn open_with(design: &Path, size: (u32, u32), variables: &[(&str, &str)]) -> Self {
        let folder = tempfile::tempdir().unwrap();
        std::fs::copy(design, folder.path().join("ring.ron")).unwrap();
        Self::start(folder, size, variables)
    }

    /// Ends the program without a warning, as a crash does, and starts it again on the same file.
    pub fn cut_short_and_started_again(mut self, size: (u32, u32)) -> Self {
        let mut program = self.program.take().unwrap();
        program.kill().unwrap();
        program.wait().unwrap();
        let folder = std::mem::replace(&mut self.folder, tempfile::tempdir().unwrap());
        Self::start(folder, size, &[])
    }

    fn start(folder: tempfile::TempDir, size: (u32, u32), variables: &[(&str, &str)]) -> Self {
        let copy = folder.path().join("ring.ron");
        let begun = Instant::now();
        let program = Command::new(env!("CARGO_BIN_EXE_flangewright"))
            .arg(&copy)
            .env("HOME", folder.path())
            .env("XDG_DATA_HOME", folder.path())
            .env("XDG_CONFIG_HOME", folder.path())
            .env("LIBGL_ALWAYS_SOFTWARE", "1")
            .env_remove("WAYLAND_DISPLAY")
            .envs(variables.iter().copied())
            .stdout(Stdio::null())
            .spawn()
            .unwrap();
        let mut bench = Self {
            program: Some(program),
            window: String::new(),
            folder,
            shown_after: None,
        };
        until("the window is there", || {
            let found = said(&run(
                "xdotool",
                &["search", "--onlyvisible", "--name", "ring.* - Flangewright"],
            ));
            bench.window = found.lines().last().map(str::to_owned).unwrap_or_default();
            !bench.window.is_empty()
        });
        let whole = Area {
            x: 0,
            y: 0,
            width: size.0.min(1000),
            height: size.1.min(600),
        };
        until("the first frame is painted", || bench.colours(whole) > 20);
        bench.shown_after = Some(begun.elapsed());
        let (width, height) = (size.0.to_string(), size.1.to_string());
        run(
            "xdotool",
            &["windowsize", "--sync", &bench.window, &width, &height],
        );
        run(
            "xdotool",
            &["windowmove", "--sync", &bench.window, "0", "0"],
        );
        run("xdotool", &["windowactivate", "--sync", &bench.window]);
        pause();
        bench
    }

    /// How long the first frame took, seen from outside.
    pub fn shown_after(&self) -> Option<Duration> {
        self.shown_after
    }

    /// The folder the design lies in.
    pub fn folder(&self) -> &Path {
        self.folder.path()
    }

    /// A key or a chord.
    pub fn key(&self, key: &str) {
        run(
            "xdotool",
            &["key", "--clearmodifiers", "--window", &self.window, key],
        );
        pause();
    }

    /// Clicks at a place of the window.
    pub fn click(&self, at: (u32, u32)) {
        let (x, y) = (at.0.to_string(), at.1.to_string());
        run("xdotool", &["mousemove", "--window", &self.window, &x, &y]);
        pause();
        run("xdotool", &["click", "1"]);
        pause();
    }

    /// Clicks a field, replaces its text and presses Enter.
    pub fn type_into(&self, field: (u32, u32), text: &str) {
        self.click(field);
        self.replace_text(text);
        self.key("Return");
    }

    /// Replaces the text of the field that has the focus.
    pub fn replace_text(&self, text: &str) {
        self.key("ctrl+a");
        run(
            "xdotool",
            &["type", "--window", &self.window, "--delay", "20", text],
        );
        pause();
    }

    /// Waits for words in the window's title.
    #[track_caller]
    pub fn wait_for_title(&self, words: &str) {
        let mut title = String::new();
        let begun = Instant::now();
        while !title.contains(words) {
            assert!(
                begun.elapsed() < PATIENCE,
                "the title says \"{title}\", not \"{words}\""
            );
            std::thread::sleep(STEP);
            title = said(&run("xdotool", &["getwindowname", &self.window]));
        }
    }

    /// A part of the window as a picture file.
    pub fn picture(&self, area: Area) -> PathBuf {
        static COUNT: std::sync::atomic::AtomicU32 = std::sync::atomic::AtomicU32::new(0);
        let number = COUNT.fetch_add(1, std::sync::atomic::Ordering::Relaxed);
        let path = self.folder.path().join(format!("seen-{number}.ppm"));
        let crop = format!("{}x{}+{}+{}", area.width, area.height, area.x, area.y);
        run(
            "import",
            &[
                "-window",
                &self.window,
                "-crop",
                &crop,
                "+repage",
                &path.display().to_string(),
            ],
        );
        path
    }

    /// A part of the window once it has settled, the mouse out of the way so that nothing is lit by it.
    pub fn look(&self, area: Area) -> PathBuf {
        run(
            "xdotool",
            &["mousemove", "--window", &self.window, "860", "14"],
        );
        settled(|| self.picture(area))
    }

    fn colours(&self, area: Area) -> u32 {
        let picture = self.picture(area);
        if !picture.exists() {
            return 0;
        }
        said(&run(
            "convert",
            &[&picture.display().to_string(), "-format", "%k", "info:"],
        ))
        .parse()
        .unwrap_or(0)
    }

    /// Closes the window as its keys do and waits for a clean end.
    pub fn quit(mut self) {
        self.key("ctrl+q");
        let mut program = self.program.take().unwrap();
        let mut ended = None;
        until("the program has ended", || {
            ended = program.try_wait().unwrap();
            ended.is_some()
        });
        assert!(ended.unwrap().success(), "the program ended with {ended:?}");
    }
}

impl Drop for Bench {
    fn drop(&mut self) {
        if let Some(program) = &mut self.program {
            let _already_gone = program.kill();
            let _already_waited = program.wait();
        }
    }
}
