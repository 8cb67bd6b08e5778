//! Checks against published tables, worked examples and general libraries: one file a source.

mod asme_b1_1;
mod cutting_speeds;
mod din_76_iso_4755_gb_3;
mod dividing;
mod fed_std_h28;
mod iso_261;
mod iso_2768;
mod iso_286;
mod iso_68_1;
mod iso_965_engagement;
mod iso_965_limits;
mod iso_965_tables;
mod jcgm;
mod machinerys_handbook_whitworth;
mod machinerys_handbook_wires;
mod optics;
mod stacks;
mod thread_cutting;
mod thread_designation_garbage;
mod thread_designations;
mod thread_play;

/// Fails unless two numbers agree to within the tolerance, saying which number it was.
#[track_caller]
fn close(what: &str, got: f64, expected: f64, tolerance: f64) {
    assert!(
        (got - expected).abs() <= tolerance,
        "{what}: got {got}, expected {expected} within {tolerance}"
    );
}

/// Fails unless a number that may be missing is there and rounds to the printed one.
#[track_caller]
fn printed(what: &str, got: Option<f64>, expected: f64, decimals: i32) {
    let got = got.unwrap_or_else(|| panic!("{what} is missing"));
    close(what, got, expected, 0.5 * 10f64.powi(-decimals) + 1e-9);
}
