//! The page of limits.

use egui::{Key, Modifiers};
use flangewright::document::LimitKey;

use crate::bench::Bench;

#[test]
fn a_changed_limit_is_marked_and_goes_back_to_its_default() {
    let mut bench = Bench::new();
    bench.press(Modifiers::COMMAND, Key::Num2);
    assert!(bench.says("0 of "));
    bench.enter("Lip thickness, clash under", "0.9");
    assert!((bench.workspace().design().limits.get(LimitKey::LipClash) - 0.9).abs() < 1e-12);
    assert!(bench.says("1 of "));
    bench.click("Lip thickness, clash under back to its default");
    assert!(
        !bench
            .workspace()
            .design()
            .limits
            .is_changed(LimitKey::LipClash)
    );
}
