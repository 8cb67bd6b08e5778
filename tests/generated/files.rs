//! What is written is read back as it was.

use flangewright::document::{Design, read_design, write_ron};

use crate::distort::{half_known, hostile};
use crate::pairs::plausible;

#[test]
fn every_design_comes_back_as_it_was_written() {
    for index in 0..300 {
        for design in [
            plausible(40, index),
            half_known(40, index),
            hostile(40, index),
        ] {
            let text = write_ron(&design).unwrap();
            match read_design(&text) {
                Ok(back) => assert_eq!(back, design, "{index}"),
                // Half known designs may hold a guess that is out of order; the others are allowed by construction.
                Err(error) => assert!(
                    !flangewright::document::faults_of(&design).is_empty(),
                    "{index}: {error}"
                ),
            }
            let again: Design = flangewright::document::read_ron(&text).unwrap();
            assert_eq!(
                write_ron(&again).unwrap(),
                text,
                "{index}: written twice is not the same"
            );
        }
    }
}
