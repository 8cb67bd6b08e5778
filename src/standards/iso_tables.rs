//! Tables 1 and 3 to 6 of ISO 965-1: deviations and tolerances of metric threads, in micrometres.
//!
//! Read in a public transcription of ISO 965-1:1998, checked against Machinery's Handbook 27 p. 1794 and
//! 31 p. 2025 and an openly licensed table of printed limits. From memory are: the column f, the two cells of
//! 355 marked below, and the rows of the group 5.6 to 11.2 (their departures from the formula are confirmed).

/// A cell the table leaves blank.
pub(super) const BLANK: u16 = 0;

/// What depends on the pitch alone: one row of tables 1, 3 and 4.
pub(super) struct PitchRow {
    pub(super) pitch_mm: f64,
    /// Table 1, G and g (magnitude).
    pub(super) g_um: u16,
    /// Table 1, f (magnitude, from memory).
    pub(super) f_um: u16,
    /// Table 1, e (magnitude).
    pub(super) e_um: u16,
    /// Table 3, minor diameter of the internal thread, grades 4 to 8.
    pub(super) internal_minor_um: [u16; 5],
    /// Table 4, major diameter of the external thread, grades 4, 6, 8.
    pub(super) external_major_um: [u16; 3],
}

const fn pitch_row(
    pitch_mm: f64,
    deviations: [u16; 3],
    internal_minor_um: [u16; 5],
    external_major_um: [u16; 3],
) -> PitchRow {
    let [g_um, f_um, e_um] = deviations;
    PitchRow {
        pitch_mm,
        g_um,
        f_um,
        e_um,
        internal_minor_um,
        external_major_um,
    }
}

#[rustfmt::skip] // one printed row a line
pub(super) const BY_PITCH: [PitchRow; 10] = [
    pitch_row(0.5,  [20, 36, 50], [ 90, 112, 140, 180, BLANK], [ 67, 106, BLANK]),
    pitch_row(0.6,  [21, 36, 53], [100, 125, 160, 200, BLANK], [ 80, 125, BLANK]),
    pitch_row(0.7,  [22, 38, 56], [112, 140, 180, 224, BLANK], [ 90, 140, BLANK]),
    pitch_row(0.75, [22, 38, 56], [118, 150, 190, 236, BLANK], [ 90, 140, BLANK]),
    pitch_row(0.8,  [24, 38, 60], [125, 160, 200, 250,   315], [ 95, 150,   236]),
    pitch_row(1.0,  [26, 40, 60], [150, 190, 236, 300,   375], [112, 180,   280]),
    pitch_row(1.25, [28, 42, 63], [170, 212, 265, 335,   425], [132, 212,   335]),
    pitch_row(1.5,  [32, 45, 67], [190, 236, 300, 375,   475], [150, 236,   375]),
    pitch_row(1.75, [34, 48, 71], [212, 265, 335, 425,   530], [170, 265,   425]),
    pitch_row(2.0,  [38, 52, 71], [236, 300, 375, 475,   600], [180, 280,   450]),
];

/// What depends on diameter group and pitch: one row of tables 5 and 6.
pub(super) struct GroupRow {
    pub(super) over_mm: f64,
    pub(super) pitch_mm: f64,
    /// Table 5, pitch diameter of the internal thread, grades 4 to 8.
    pub(super) internal_um: [u16; 5],
    /// Table 6, pitch diameter of the external thread, grades 3 to 9.
    pub(super) external_um: [u16; 7],
}

const fn row(
    over_mm: f64,
    pitch_mm: f64,
    internal_um: [u16; 5],
    external_um: [u16; 7],
) -> GroupRow {
    GroupRow {
        over_mm,
        pitch_mm,
        internal_um,
        external_um,
    }
}

#[rustfmt::skip] // one printed row a line
pub(super) const BY_GROUP: [GroupRow; 14] = [
    row( 5.6, 0.75, [ 85, 106, 132, 170, BLANK], [50,  63,  80, 100, 125, BLANK, BLANK]),
    row( 5.6, 1.0,  [ 95, 118, 150, 190,   236], [56,  71,  90, 112, 140, 180, 224]),
    row( 5.6, 1.25, [100, 125, 160, 200,   250], [60,  75,  95, 118, 150, 190, 236]),
    row( 5.6, 1.5,  [112, 140, 180, 224,   280], [67,  85, 106, 132, 170, 212, 265]),
    row(11.2, 1.0,  [100, 125, 160, 200,   250], [60,  75,  95, 118, 150, 190, 236]),
    row(11.2, 1.25, [112, 140, 180, 224,   280], [67,  85, 106, 132, 170, 212, 265]),
    row(11.2, 1.5,  [118, 150, 190, 236,   300], [71,  90, 112, 140, 180, 224, 280]),
    row(11.2, 1.75, [125, 160, 200, 250,   315], [75,  95, 118, 150, 190, 236, 300]),
    row(11.2, 2.0,  [132, 170, 212, 265,   335], [80, 100, 125, 160, 200, 250, 315]),
    row(22.4, 1.0,  [106, 132, 170, 212, BLANK], [63,  80, 100, 125, 160, 200, 250]),
    row(22.4, 1.5,  [125, 160, 200, 250,   315], [75,  95, 118, 150, 190, 236, 300]),
    // Internal grade 8: the transcription prints 335, the formula gives 355.8; 355 from memory.
    row(22.4, 2.0,  [140, 180, 224, 280,   355], [85, 106, 132, 170, 212, 265, 335]),
    row(45.0, 1.5,  [132, 170, 212, 265,   335], [80, 100, 125, 160, 200, 250, 315]),
    // External grade 9: the transcription prints 335, the formula gives 359.8; 355 from memory.
    row(45.0, 2.0,  [150, 190, 236, 300,   375], [90, 112, 140, 180, 224, 280, 355]),
];

/// Bounds of the diameter groups, mm: over the one, up to and including the next.
pub(super) const GROUP_BOUNDS_MM: [f64; 10] =
    [0.99, 1.4, 2.8, 5.6, 11.2, 22.4, 45.0, 90.0, 180.0, 355.0];

/// Whether two pitches are the same but for the last bits of a decimal number.
pub(super) fn same_pitch(a_mm: f64, b_mm: f64) -> bool {
    (a_mm - b_mm).abs() < 1e-9
}
