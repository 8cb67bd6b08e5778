//! The command line of the program, one file a subcommand.
//!
//! May use every floor of the library. Must not compute a dimension, judge one, or open a file by itself.

mod check;
mod dimension_name;
mod draw;
mod inputs;
mod inspect;
mod json;
mod mount_name;
mod mounts;
mod new;
mod output;
mod plan;
mod room;
mod settle;
mod thread;

use std::path::PathBuf;
use std::process::ExitCode;

use anyhow::anyhow;
use clap::{Parser, Subcommand};

/// Exit code of a task that could not be done: a file that cannot be read, a name that fits nothing.
const FAILED: u8 = 2;

/// Designs lens adapter rings: opens the window, or does one task and ends.
#[derive(Debug, Parser)]
#[command(version, args_conflicts_with_subcommands = true)]
struct Arguments {
    /// Design to open in the window.
    file: Option<PathBuf>,
    #[command(subcommand)]
    task: Option<Task>,
}

#[derive(Debug, Subcommand)]
enum Task {
    New(new::New),
    Mounts(mounts::Mounts),
    Check(check::Check),
    Room(room::Room),
    Settle(settle::Settle),
    Draw(draw::Draw),
    Plan(plan::Plan),
    Inspect(inspect::Inspect),
    Thread(thread::ThreadLimits),
}

/// Does what the command line asks for.
pub fn run() -> ExitCode {
    let arguments = Arguments::parse();
    let done = match &arguments.task {
        Some(Task::New(task)) => task.run(),
        Some(Task::Mounts(task)) => task.run(),
        Some(Task::Check(task)) => task.run(),
        Some(Task::Room(task)) => task.run(),
        Some(Task::Settle(task)) => task.run(),
        Some(Task::Draw(task)) => task.run(),
        Some(Task::Plan(task)) => task.run(),
        Some(Task::Inspect(task)) => task.run(),
        Some(Task::Thread(task)) => task.run(),
        None => open_window(arguments.file),
    };
    done.unwrap_or_else(|error| {
        output::complain(&format!("{error:#}"));
        ExitCode::from(FAILED)
    })
}

fn open_window(file: Option<PathBuf>) -> anyhow::Result<ExitCode> {
    // The window's own error cannot cross threads, so only its words are kept.
    flangewright::app::run(file).map_err(|error| anyhow!("{error}"))?;
    Ok(ExitCode::SUCCESS)
}
