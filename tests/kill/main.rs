//! The program cut short at any moment, disks that are full or may not be written to, and two windows on one file.
//!
//! The ones that are cut short are real processes: this test program starts itself again with a task in
//! `FLANGEWRIGHT_TASK`, and the one test below that does such a task is all that runs there.

mod child;
mod crowded;
mod cut_short;
mod long_session;
mod two_at_once;
