//! The shapes of ring, lens and body in the half-section: x is z along the axis, y is the radius.

use super::feature::{BodyPart, Feature, LensPart};
use crate::geometry::{Outline, Path};

/// Everything that has a shape in the half-section. Lengths mm, z = 0 at the flange rear face.
#[derive(Clone, Debug)]
pub struct Parts {
    /// The ring cut through a lug.
    pub through_lug: Outline<Feature>,
    /// The ring cut between the lugs.
    pub between_lugs: Outline<Feature>,
    /// The lens: what is ahead of the seat, as far as it is known.
    pub shoulder: Option<Outline<LensPart>>,
    /// The male thread at its major diameter.
    pub male_thread: Option<Outline<LensPart>>,
    /// The rear barrel at infinity.
    pub barrel_at_infinity: Option<Outline<LensPart>>,
    /// The rear barrel over its whole motion: focusing, and screwing in.
    pub barrel_swept: Option<Outline<LensPart>>,
    /// The aperture ring.
    pub aperture_ring: Option<Outline<LensPart>>,
    /// The stop-down pin where it comes to rest.
    pub pin: Option<Outline<LensPart>>,
    /// The body's flange.
    pub flange: Option<Outline<BodyPart>>,
    /// An ear.
    pub ear: Option<Outline<BodyPart>>,
    /// The lock pin.
    pub lock_pin: Option<Outline<BodyPart>>,
    /// What ends the free depth behind the flange: an open line of (z, r).
    pub behind_flange: Option<Path<BodyPart>>,
    /// Obstacles, each with its sector kept in the body.
    pub obstacles: Vec<Outline<BodyPart>>,
}
