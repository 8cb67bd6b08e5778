//! Flangewright: the window, or one task from the command line.

mod cli;

use std::process::ExitCode;

fn main() -> ExitCode {
    cli::run()
}
