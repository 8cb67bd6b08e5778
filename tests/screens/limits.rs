//! The page of limits.

use flangewright::app::page::Page;
use flangewright::document::LimitKey;

use crate::bench::Bench;

#[test]
fn a_changed_limit_is_marked_and_goes_back_to_its_default() {
    let mut bench = Bench::new();
    bench.show(Page::Limits);
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

#[test]
fn all_limits_go_back_by_one_click_and_undo_brings_them_again() {
    let mut bench = Bench::new();
    bench.show(Page::Limits);
    bench.enter("Lip thickness, clash under", "0.9");
    bench.enter("Lip thickness, caution under", "1.2");
    assert!(bench.says("2 of ") && bench.says("* changed"));
    bench.click("All back to their defaults");
    assert!(bench.says("0 of ") && !bench.says("* changed"));
    bench.click("Undo");
    assert!((bench.workspace().design().limits.get(LimitKey::LipCaution) - 1.2).abs() < 1e-12);
}
