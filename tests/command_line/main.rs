//! The built program, driven by its command line as a machinist or a script would.

mod check;
mod draw;
mod hostile;
mod inspect;
mod mounts;
mod new;
mod plan;
mod program;
mod readme;
mod room;
mod settle;
mod thread;
