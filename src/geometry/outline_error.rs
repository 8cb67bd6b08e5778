//! Why a run of lines and arcs is no outline.

use thiserror::Error;

use super::Point;

/// Why a shape cannot be drawn.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
pub enum OutlineError {
    /// A coordinate or a bulge is not a finite number.
    #[error(
        "piece {piece} of the outline has a size that is not a number; give every size that it rests on"
    )]
    NotFinite {
        /// Which piece, counted from 0 in the order they were given.
        piece: usize,
    },
    /// A coordinate beyond [`super::FARTHEST`].
    #[error("the outline reaches ({:.1}, {:.1}), beyond 10 m; look for a size typed in the wrong unit", at.x, at.y)]
    TooFar {
        /// The place.
        at: Point,
    },
    /// Fewer pieces than enclose anything.
    #[error(
        "only {pieces} piece(s) of the outline have any length; make its sizes different from each other"
    )]
    TooFewPieces {
        /// How many are left once those without length are dropped.
        pieces: usize,
    },
    /// Two pieces cross or touch.
    #[error(
        "the outline crosses itself at ({:.3}, {:.3}); the sizes that meet there contradict each other",
        at.x, at.y
    )]
    CrossesItself {
        /// The place.
        at: Point,
        /// One piece, counted after those without length are dropped.
        first: usize,
        /// The other piece.
        second: usize,
    },
    /// The pieces enclose no area.
    #[error("the outline encloses nothing; make it thicker")]
    NoArea,
    /// A piece was added before the start was given.
    #[error("the outline has no starting place")]
    NotStarted,
}
