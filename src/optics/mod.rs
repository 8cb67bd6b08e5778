//! Floor `optics`: the ray cone that a bore must leave clear, depth of focus, what a register error, a tilt or a
//! shift does to the image, and the light that bores cut off.
//!
//! Lengths are millimetres. Formulas that a check shows are worked in any [`Number`]: plain, or with their working.
//! May use `document`, `mount`. Must not know of ring dimensions.

mod depth_of_focus;
mod disc;
mod exit_pupil;
mod focus;
mod focus_scale;
mod number;
mod ray_cone;
mod tilt;
mod vignetting;

pub use depth_of_focus::{
    WAVELENGTH_MM, blur_circle_mm, circle_by_pixels, circle_of_format_mm, circle_of_pixels_mm,
    diffraction_floor, diffraction_half_depth_mm, half_depth_mm, half_depth_near_by_mm,
    image_diagonal, left_after_root_sum_square_mm, left_after_sum_mm,
};
pub use disc::{Disc, common_area_mm2};
pub use exit_pupil::{ExitPupil, clear_radius_mm, exit_pupil_distance};
pub use focus::{circle_of_confusion, farthest_sharp, half_depth_of_focus, register_budget};
pub use focus_scale::{FocusScale, Reach, extension_mm, infinity_mark_mm, object_distance_mm};
pub use number::Number;
pub use ray_cone::{RayCone, corner_height};
pub use tilt::{corner_defocus_mm, greatest_parallelism_mm, image_circle_radius_mm, tilt_slope};
pub use vignetting::{BoreEdge, Light, LightCurve, Vignetting, lost_stops};
