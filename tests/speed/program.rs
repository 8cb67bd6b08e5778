//! The program itself: how large it is, how soon its window is there, and what memory it takes then.

use std::fmt;
use std::fs;
use std::io::{BufRead as _, BufReader};
use std::process::{Child, Command, Stdio};
use std::thread::sleep;
use std::time::{Duration, Instant};

/// The program as it was built for this benchmark.
const PROGRAM: &str = env!("CARGO_BIN_EXE_flangewright");
/// Longer than this a start does not take.
const PATIENCE: Duration = Duration::from_secs(20);
/// Between two looks at the screen.
const LOOK: Duration = Duration::from_millis(5);

/// One figure with what it must be and what it aims at, in its own unit.
struct Line {
    name: &'static str,
    value: Option<f64>,
    must: f64,
    aim: f64,
    unit: &'static str,
}

impl fmt::Display for Line {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let unit = self.unit;
        let bounds = format!(
            "{:>11}{:>11}",
            format!("{} {unit}", self.must),
            format!("{} {unit}", self.aim)
        );
        let Some(value) = self.value else {
            return write!(
                f,
                "{:<34}{:>22}{bounds}  not measured: no screen to start on",
                self.name, ""
            );
        };
        let verdict = if value <= self.aim {
            "aim met"
        } else if value <= self.must {
            "must met"
        } else {
            "MISSED"
        };
        let shown = format!("{value:.2} {unit}");
        write!(
            f,
            "{:<34}{shown:>11}{:>11}{bounds}  {verdict}",
            self.name, ""
        )
    }
}

/// Something that ends when it goes.
struct Running(Child);

impl Drop for Running {
    fn drop(&mut self) {
        let _already_gone = self.0.kill();
        let _already_waited = self.0.wait();
    }
}

/// A screen without a monitor, and its name; none where there is no such program.
fn screen() -> Option<(Running, String)> {
    let mut server = Command::new("Xvfb")
        .args(["-displayfd", "1", "-screen", "0", "1280x800x24"])
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .ok()?;
    let mut number = String::new();
    let out = server.stdout.take()?;
    let running = Running(server);
    BufReader::new(out).read_line(&mut number).ok()?;
    let number = number.trim();
    (!number.is_empty()).then(|| (running, format!(":{number}")))
}

/// The picture on the screen, as `import` gives it.
fn colours(display: &str) -> Option<usize> {
    let dots = Command::new("import")
        .env("DISPLAY", display)
        .args(["-window", "root", "-crop", "400x300+100+100", "rgb:-"])
        .stderr(Stdio::null())
        .output()
        .ok()?
        .stdout;
    let mut seen: Vec<&[u8]> = dots.chunks_exact(3).collect();
    seen.sort_unstable();
    seen.dedup();
    Some(seen.len())
}

/// Seconds from start to the first frame seen on the screen, and megabytes two seconds later.
fn started() -> Option<(f64, f64)> {
    let (_server, display) = screen()?;
    colours(&display)?;
    let home = tempfile::tempdir().ok()?;
    let begun = Instant::now();
    let program = Command::new(PROGRAM)
        .env("DISPLAY", &display)
        .env("HOME", home.path())
        .env("XDG_CONFIG_HOME", home.path())
        .env("XDG_DATA_HOME", home.path())
        .env("LIBGL_ALWAYS_SOFTWARE", "1")
        .env_remove("WAYLAND_DISPLAY")
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .spawn()
        .ok()?;
    let program = Running(program);
    // An empty screen has one colour, the page Design has dozens.
    while colours(&display)? < 20 {
        if begun.elapsed() > PATIENCE {
            return None;
        }
        sleep(LOOK);
    }
    let first_frame = begun.elapsed().as_secs_f64();
    sleep(Duration::from_secs(2));
    let facts = fs::read_to_string(format!("/proc/{}/statm", program.0.id())).ok()?;
    let pages: f64 = facts.split(' ').nth(1)?.parse().ok()?;
    Some((first_frame, pages * 4096.0 / 1e6))
}

/// Prints what the program takes; each line with the bounds that it must keep and that it aims at.
pub fn print() {
    let megabytes = fs::metadata(PROGRAM).ok().map(|facts| {
        // A file is far smaller than what an f64 holds exactly.
        #[allow(clippy::cast_precision_loss)]
        let bytes = facts.len() as f64;
        bytes / 1e6
    });
    let started = started();
    for line in [
        Line {
            name: "start to first frame, looked at",
            value: started.map(|(seconds, _)| seconds),
            must: 0.5,
            aim: 0.2,
            unit: "s",
        },
        Line {
            name: "memory of the running window",
            value: started.map(|(_, megabytes)| megabytes),
            must: 200.0,
            aim: 100.0,
            unit: "MB",
        },
        Line {
            name: "size of the program",
            value: megabytes,
            must: 30.0,
            aim: 20.0,
            unit: "MB",
        },
    ] {
        println!("{line}");
    }
}
