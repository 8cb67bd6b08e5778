//! Cutting speeds for high-speed steel against the printed spans, in feet a minute: a public table of cutting speeds
//! (aluminium 200 to 300, brass 150 to 300), another (mild steel 110), and US T.O. 1-1A-9 table 2-8 (stainless 303: 25
//! to 55 rough, 65 to 105 finish; 304: 20 to 40 and 50 to 80). The program takes the low end for small machines.

use flangewright::plan::{Work, cutting_row, rpm_of, speed_m_min};
use flangewright::workshop::CuttingGroup;

use crate::close;

/// Metres in a foot.
const FOOT: f64 = 0.3048;

#[test]
fn speeds_lie_at_the_low_end_of_what_is_printed() {
    for (group, rough_ft, finish_ft) in [
        (CuttingGroup::Aluminium, (200.0, 300.0), (200.0, 700.0)),
        (CuttingGroup::Brass, (150.0, 300.0), (150.0, 500.0)),
        (CuttingGroup::FreeStainless, (25.0, 55.0), (65.0, 105.0)),
        (CuttingGroup::Stainless, (20.0, 40.0), (50.0, 80.0)),
    ] {
        let row = cutting_row(group).unwrap();
        let within = |speed: f64, (low, high): (f64, f64)| {
            (0.95 * low * FOOT..=high * FOOT).contains(&speed)
        };
        assert!(within(row.roughing_m_min, rough_ft), "{group:?} {row:?}");
        assert!(within(row.finishing_m_min, finish_ft), "{group:?} {row:?}");
    }
    let steel = cutting_row(CuttingGroup::MildSteel).unwrap();
    assert!(
        steel.roughing_m_min < steel.finishing_m_min
            && steel.finishing_m_min <= 1.05 * 110.0 * FOOT
    );
}

/// From memory, US Army TC 9-524: threading runs at 0.2 to 0.4 of turning; drilling at 0.6 to 0.82 of it.
#[test]
fn threading_and_drilling_run_slower() {
    for group in [
        CuttingGroup::Aluminium,
        CuttingGroup::Brass,
        CuttingGroup::MildSteel,
        CuttingGroup::FreeStainless,
        CuttingGroup::Acetal,
    ] {
        let turning = speed_m_min(group, Work::Roughing).unwrap();
        let share = |work| speed_m_min(group, work).unwrap() / turning;
        assert!((0.2..=0.4).contains(&share(Work::Threading)));
        assert!((0.6..=0.82).contains(&share(Work::Drilling)));
    }
}

/// n = 1000 v / (π D): 90 m/min on 65 mm, 60 m/min on 6 mm; and the workshop form 3.82 x ft/min / inches.
#[test]
fn spindle_speeds() {
    close("65", rpm_of(90.0, 65.0), 440.7, 0.05);
    close("6", rpm_of(60.0, 6.0), 3183.0, 0.2);
    close("inch", rpm_of(100.0 * FOOT, 25.4), 382.0, 0.1);
}
