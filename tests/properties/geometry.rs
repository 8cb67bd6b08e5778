//! Laws of the geometry floor.

mod booleans;
mod clearances;
mod hostile;
mod sectors;
mod shapes;
mod solids;
mod speed;
mod walls;
