//! Laws of the geometry floor.
