//! Floor `paper`: what is printed beside the drawing, as pages: the shop plan, and pictures of its steps.
//!
//! It joins `plan` and `inspection`, which know nothing of drawing, with `drawing`, which knows nothing of them. May use
//! these and every floor under them; must not plan, judge or measure anything itself, open a file, or look at the
//! screen. Same plan, same bytes.
//!
//! - [`plan_sheet`]: the shop plan as a [`PrintedSheet`](crate::drawing::printed::PrintedSheet);
//! - [`step_picture`]: the workpiece as it stands after a step;
//! - [`file`]: the shop plan as the bytes of a file.

pub mod file;
pub mod plan_sheet;
pub mod plan_tables;
pub mod step_picture;
