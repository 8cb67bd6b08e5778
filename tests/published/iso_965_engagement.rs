//! ISO 965-1 table 2, lengths of engagement: Machinery's Handbook 27 p. 1792 table 7 prints the same.

use flangewright::standards::engagement::{EngagementGroup, formula_mm, normal_engagement};
use flangewright::standards::iso_tolerance::diameter_group_mm;
use flangewright::standards::{Basis, Side};

use crate::close;

#[test]
fn table_2_lengths_of_engagement() {
    // Machinery's Handbook 27 p. 1792 table 7.
    let rows = [
        (16.0, 1.0, 3.8, 11.0),
        (16.0, 1.25, 4.5, 13.0),
        (16.0, 1.5, 5.6, 16.0),
        (16.0, 2.0, 8.0, 24.0),
        (42.0, 1.0, 4.0, 12.0),
        (42.0, 1.5, 6.3, 19.0),
        (42.0, 2.0, 8.5, 25.0),
        (52.0, 1.5, 7.5, 22.0),
        (52.0, 2.0, 9.5, 28.0),
    ];
    for (diameter, pitch, over, up_to) in rows {
        let got = normal_engagement(diameter, pitch);
        assert_eq!(
            (got.over_mm, got.up_to_mm, got.basis),
            (over, up_to, Basis::Table)
        );
        let formula = formula_mm(diameter_group_mm(diameter).0, pitch);
        close("over, by formula", formula.0 / over, 1.0, 0.11);
        close("up to, by formula", formula.1 / up_to, 1.0, 0.11);
    }
    let formula = formula_mm(22.4, 1.0);
    close("formula", formula.0, 4.17, 5e-3);
    close("formula", formula.1, 12.48, 5e-3);
}

#[test]
fn a_lens_thread_of_1_mm_pitch_is_a_short_engagement() {
    let normal = normal_engagement(42.0, 1.0);
    assert_eq!(normal.group(3.5), EngagementGroup::Short);
    assert_eq!(normal.group(4.0), EngagementGroup::Short);
    assert_eq!(normal.group(4.1), EngagementGroup::Normal);
    assert_eq!(normal.group(12.1), EngagementGroup::Long);
    // Pair not in the table: formula, and said so.
    let computed = normal_engagement(52.0, 0.75);
    assert_eq!(computed.basis, Basis::Computed);
    assert!((computed.over_mm - 2.24 * 0.75 * 45f64.powf(0.2)).abs() < 0.05);
}

#[test]
fn recommended_classes() {
    // Medium quality, ISO 965-1 (from memory).
    for (group, letter, ring, lens) in [
        (EngagementGroup::Short, 'S', "5H", "5g6g"),
        (EngagementGroup::Normal, 'N', "6H", "6g"),
        (EngagementGroup::Long, 'L', "7H", "7g6g"),
    ] {
        assert_eq!(group.letter(), letter);
        assert_eq!(group.recommended_class(Side::Internal), ring);
        assert_eq!(group.recommended_class(Side::External), lens);
    }
}
