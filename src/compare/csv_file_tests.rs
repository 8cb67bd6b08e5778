//! The table against rows written by hand.

use super::*;
use crate::document::{Choice, Design, RingKey, demo_designs};
use crate::evaluate::{Evaluation, evaluate};
use crate::workshop::Workshop;

fn table(designs: &[(&str, &Design)]) -> String {
    let workshop = Workshop::default_set().unwrap();
    let evaluations: Vec<Evaluation> = designs
        .iter()
        .map(|(_, design)| evaluate(design, &workshop))
        .collect();
    let subjects: Vec<Subject<'_>> = designs
        .iter()
        .zip(&evaluations)
        .map(|((name, design), evaluation)| Subject {
            name,
            design,
            evaluation,
        })
        .collect();
    String::from_utf8(csv_bytes(&subjects).unwrap()).unwrap()
}

fn lips(thicknesses: [f64; 2]) -> [Design; 2] {
    let demo = demo_designs().unwrap().remove(0);
    thicknesses.map(|thickness| {
        let mut design = demo.clone();
        design.ring.dimensions.get_mut(RingKey::LipThickness).value = Choice::Set(thickness);
        design.ring.dimensions.get_mut(RingKey::EdgeBreak).value = Choice::Set(0.1 * thickness);
        design
    })
}

/// By hand: lips of 1.0 and 0.5 mm, edges of 0.1 and 0.05 mm; a lip is judged by its margin over the limit of its
/// severity, 0.8 mm for a clash: 0.5 - 0.8 = -0.3.
#[test]
fn rows_are_as_worked_by_hand() {
    let [thick, thin] = lips([1.0, 0.5]);
    let text = table(&[("thick", &thick), ("thin, \"risky\"", &thin)]);
    let lines: Vec<&str> = text.split("\r\n").collect();
    assert_eq!(
        lines[0],
        "part,key,name,what,unit,thick,\"thin, \"\"risky\"\"\""
    );
    for expected in [
        "ring,lip_thickness,Lip thickness,value,mm,1,0.5",
        "ring,edge_break,Edge break,value,mm,0.1,0.05",
        "finding,lip-thickness,Lip thickness,severity,,ok,clash",
    ] {
        assert!(lines.contains(&expected), "{expected}\n{text}");
    }
    let margin = lines
        .iter()
        .find(|line| line.starts_with("finding,lip-thickness,Lip thickness,margin,mm,"))
        .unwrap();
    assert!(margin.ends_with(",-0.3"), "{margin}");
    // Every row has as many cells as the head, read by the same package.
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    assert_eq!(reader.headers().unwrap().len(), 7);
    assert!(reader.records().all(|record| record.unwrap().len() == 7));
}

#[test]
fn the_same_design_twice_gives_findings_alone_under_two_heads() {
    let demo = demo_designs().unwrap().remove(0);
    let text = table(&[("ring", &demo), ("ring", &demo)]);
    assert!(text.starts_with("part,key,name,what,unit,ring,ring (2)\r\n"));
    let others = text
        .lines()
        .skip(1)
        .filter(|line| !line.starts_with("finding,"));
    assert_eq!(others.count(), 0);
}

#[test]
fn numbers_are_plain_and_words_are_no_formula() {
    assert_eq!(plain(1.0), "1");
    assert_eq!(plain(-0.000_000_01), "0");
    assert_eq!(plain(17.526), "17.526");
    assert_eq!(plain(-0.25), "-0.25");
    assert_eq!(harmless("=2+3"), "'=2+3");
    assert_eq!(harmless("h9"), "h9");
}
