//! Length of engagement: the groups S, N and L of ISO 965-1 table 2, and the class recommended for each.

use super::iso_tables::same_pitch;
use super::iso_tolerance::diameter_group_mm;
use super::limits::{Basis, Side};

/// Group of thread engagement.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum EngagementGroup {
    /// Short.
    Short,
    /// Normal.
    Normal,
    /// Long.
    Long,
}

impl EngagementGroup {
    /// The letter of the standard.
    #[must_use]
    pub fn letter(self) -> char {
        match self {
            Self::Short => 'S',
            Self::Normal => 'N',
            Self::Long => 'L',
        }
    }

    /// Class recommended for the group at medium quality (ISO 965-1, from memory).
    #[must_use]
    pub fn recommended_class(self, side: Side) -> &'static str {
        match (self, side) {
            (Self::Short, Side::Internal) => "5H",
            (Self::Short, Side::External) => "5g6g",
            (Self::Normal, Side::Internal) => "6H",
            (Self::Normal, Side::External) => "6g",
            (Self::Long, Side::Internal) => "7H",
            (Self::Long, Side::External) => "7g6g",
        }
    }
}

/// Bounds of the normal group, mm: short up to the first, long over the second.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NormalEngagement {
    /// Normal begins over this length, mm.
    pub over_mm: f64,
    /// Normal ends with this length, mm.
    pub up_to_mm: f64,
    /// Table 2, or its formula where the table has no such pair.
    pub basis: Basis,
}

impl NormalEngagement {
    /// Group that a length of engagement in mm falls in.
    #[must_use]
    pub fn group(&self, length_mm: f64) -> EngagementGroup {
        if length_mm <= self.over_mm {
            EngagementGroup::Short
        } else if length_mm <= self.up_to_mm {
            EngagementGroup::Normal
        } else {
            EngagementGroup::Long
        }
    }
}

/// Table 2 of ISO 965-1 (Machinery's Handbook 27 p. 1792 table 7): lower bound of the diameter group, pitch,
/// normal over, normal up to; mm.
const TABLE: [(f64, f64, f64, f64); 9] = [
    (11.2, 1.0, 3.8, 11.0),
    (11.2, 1.25, 4.5, 13.0),
    (11.2, 1.5, 5.6, 16.0),
    (11.2, 2.0, 8.0, 24.0),
    (22.4, 1.0, 4.0, 12.0),
    (22.4, 1.5, 6.3, 19.0),
    (22.4, 2.0, 8.5, 25.0),
    (45.0, 1.5, 7.5, 22.0),
    (45.0, 2.0, 9.5, 28.0),
];

/// Normal lengths of engagement for a nominal diameter and pitch in mm.
///
/// Where the table has no such pair: 2.24 P d^0.2 and 6.7 P d^0.2, d the lower bound of the diameter group
/// (from memory), to a tenth of a millimetre; the table itself leaves the formula by up to 11 %.
#[must_use]
pub fn normal_engagement(nominal_mm: f64, pitch_mm: f64) -> NormalEngagement {
    let (group_over_mm, _) = diameter_group_mm(nominal_mm);
    let listed = TABLE.iter().find(|(over, pitch, _, _)| {
        same_pitch(*over, group_over_mm) && same_pitch(*pitch, pitch_mm)
    });
    if let Some((_, _, over_mm, up_to_mm)) = listed {
        return NormalEngagement {
            over_mm: *over_mm,
            up_to_mm: *up_to_mm,
            basis: Basis::Table,
        };
    }
    let (over_mm, up_to_mm) = formula_mm(group_over_mm, pitch_mm);
    let tenth = |value: f64| (value * 10.0).round() / 10.0;
    NormalEngagement {
        over_mm: tenth(over_mm),
        up_to_mm: tenth(up_to_mm),
        basis: Basis::Computed,
    }
}

/// The formulas behind table 2, mm, not rounded: normal over, normal up to.
#[must_use]
pub fn formula_mm(group_over_mm: f64, pitch_mm: f64) -> (f64, f64) {
    let scale = pitch_mm * group_over_mm.powf(0.2);
    (2.24 * scale, 6.7 * scale)
}
