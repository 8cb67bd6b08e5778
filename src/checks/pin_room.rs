//! Whether the ring has a pocket for a pin that is left free.

use super::context::Context;

/// The pocket as it is really cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Annulus {
    /// None: the end of the thread chamber is the floor, or the bore is wide enough.
    None,
    /// Cut behind the end of the thread chamber.
    Cut {
        /// Whether nothing is left between pocket and bore.
        opens_to_the_bore: bool,
    },
}

/// Whether the sizes make a pocket that is deeper than the thread chamber and wider than the bore.
pub(super) fn annulus_of(cx: &Context) -> Annulus {
    let sizes = &cx.ring.sizes;
    if sizes.annulus_depth <= sizes.lip_face_depth
        || sizes.annulus_outer <= sizes.lip_bore.max(sizes.annulus_inner)
    {
        return Annulus::None;
    }
    Annulus::Cut {
        opens_to_the_bore: sizes.annulus_inner <= sizes.lip_bore,
    }
}
