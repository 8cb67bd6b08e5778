//! ISO 68-1 basic profile: Machinery's Handbook 27 p. 1786 table 3 (factors) and p. 1815 (BS 3643, by pitch);
//! rounded-root design profile as a public tap catalogue prints it.

use flangewright::standards::Thread;

use crate::close;

#[test]
fn factors_of_the_profile() {
    let profile = Thread::metric(42.0, 1.0).unwrap().basic();
    close("H", profile.triangle_height, 0.866_025, 5e-7);
    close("5/8 H", profile.internal_depth, 0.541_266, 5e-7);
    close("d2", profile.pitch_diameter, 42.0 - 0.649_519, 5e-7);
    close("d1", profile.minor_diameter, 42.0 - 1.082_532, 5e-7);
    close("h3", profile.external_depth, 0.613_434, 1e-6);
    close("R", profile.root_radius, 0.144_338, 5e-7);
    close("major", profile.major_diameter, 42.0, 0.0);
}

#[test]
fn rows_by_pitch() {
    // Pitch, H, 5/8 H: Machinery's Handbook 27 p. 1815.
    for (pitch, height, depth) in [(1.0, 0.866_025, 0.541_266), (0.75, 0.649_519, 0.405_949)] {
        let profile = Thread::metric(42.0, pitch).unwrap().basic();
        close("H", profile.triangle_height, height, 5e-7);
        close("5/8 H", profile.internal_depth, depth, 5e-7);
    }
}

#[test]
fn depths_a_turner_cuts() {
    // Pitch, external depth 17/24 H, internal depth 5/8 H, as rounded from ISO 68-1.
    for (pitch, external, internal) in [
        (0.5, 0.3067, 0.2706),
        (0.75, 0.4601, 0.4059),
        (1.0, 0.6134, 0.5413),
        (1.5, 0.9202, 0.8119),
    ] {
        let profile = Thread::metric(30.0, pitch).unwrap().basic();
        close("external depth", profile.external_depth, external, 5.1e-5);
        close("internal depth", profile.internal_depth, internal, 5.1e-5);
    }
}
