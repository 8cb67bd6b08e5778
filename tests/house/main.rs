//! The house rules that a machine can check: floors, files, headers. They are this project's own, in DEVELOPERS.md.

mod files;
mod floors;
mod source;
