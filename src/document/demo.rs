//! The demo designs: an invented scenario, and each file says so.

use super::codec::{ReadError, read_design};
use super::design::Design;

/// The demo files as shipped, the one that opens by default first.
const DEMOS: [&str; 4] = [
    include_str!("../../assets/demos/archive_portrait.ron"),
    include_str!("../../assets/demos/tall_ring.ron"),
    include_str!("../../assets/demos/cine_interface.ron"),
    include_str!("../../assets/demos/four_clashes.ron"),
];

/// The demo designs, the one that opens by default first.
///
/// # Errors
/// None in a whole program: a test reads every shipped file.
pub fn demo_designs() -> Result<Vec<Design>, ReadError> {
    DEMOS.iter().map(|text| read_design(text)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_demo_is_whole_and_says_that_it_is_invented() {
        let designs = demo_designs().unwrap();
        assert_eq!(designs.len(), 4);
        for design in designs {
            assert!(design.notes.contains("Invented"), "{}", design.name);
            assert!(
                design.lens.notes.contains("Invented") && design.body.notes.contains("Invented")
            );
        }
    }
}
