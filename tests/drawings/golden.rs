//! The sheets of the demo designs against golden ones, by structure: same things in the same order, same words, every
//! number within 0.01 mm. After a wanted change write them anew with `FLANGEWRIGHT_WRITE_GOLDEN=1` and look at the
//! difference.

use std::fmt::Write as _;

use flangewright::drawing::{Item, Path, Scene, Shape, ring_sheet};

use super::bench::{DEMOS, demo, evaluated, package};

/// Numbers may differ by this, mm or degrees.
const SLACK: f64 = 0.01;

fn path_words(path: &Path) -> String {
    let mut words = if path.closed { "closed" } else { "open" }.to_owned();
    for vertex in &path.vertices {
        write!(
            words,
            " | {:.3} {:.3} {:.4}",
            vertex.at.x, vertex.at.y, vertex.bulge
        )
        .unwrap();
    }
    words
}

/// A line for a thing drawn.
fn line(item: &Item) -> String {
    let shape = match &item.shape {
        Shape::Path(path) => format!("path {}", path_words(path)),
        Shape::Circle { centre, radius_mm } => {
            format!("circle {:.3} {:.3} {radius_mm:.3}", centre.x, centre.y)
        }
        Shape::Arc {
            centre,
            radius_mm,
            start_deg,
            sweep_deg,
        } => {
            format!(
                "arc {:.3} {:.3} {radius_mm:.3} {start_deg:.3} {sweep_deg:.3}",
                centre.x, centre.y
            )
        }
        Shape::Fill { loops, tone } => {
            let loops: Vec<String> = loops.iter().map(path_words).collect();
            format!("fill {tone:?} {}", loops.join(" || "))
        }
        Shape::Hatch(hatch) => {
            let loops: Vec<String> = hatch.loops.iter().map(path_words).collect();
            format!(
                "hatch {:.3} {:.3} {}",
                hatch.angle_deg,
                hatch.spacing_mm,
                loops.join(" || ")
            )
        }
        Shape::Text(text) => format!(
            "text {:.3} {:.3} {:.3} {:.3} {:?} = {}",
            text.at.x, text.at.y, text.height_mm, text.rotation_deg, text.anchor, text.text
        ),
    };
    format!("{:?} {:?} {shape}", item.pen.line, item.pen.role)
}

fn lines(scene: &Scene) -> Vec<String> {
    scene.items.iter().map(line).collect()
}

/// Whether two lines say the same; words of a text must be the same to the letter.
fn same(own: &str, golden: &str) -> bool {
    let split = |line: &str| {
        let (place, words) = line.split_once(" = ").unwrap_or((line, ""));
        (
            place.split(' ').map(str::to_owned).collect::<Vec<_>>(),
            words.to_owned(),
        )
    };
    let ((own, own_words), (golden, golden_words)) = (split(own), split(golden));
    let near = |own: &str, golden: &str| match (own.parse::<f64>(), golden.parse::<f64>()) {
        (Ok(own), Ok(golden)) => (own - golden).abs() <= SLACK,
        _ => own == golden,
    };
    own_words == golden_words
        && own.len() == golden.len()
        && own.iter().zip(&golden).all(|(a, b)| near(a, b))
}

#[test]
fn demo_sheets_are_as_they_were() {
    for name in DEMOS {
        let design = demo(name);
        let sheet = lines(&ring_sheet(&design, &evaluated(&design)).unwrap());
        let path = package(&format!("tests/drawings/golden/{name}.txt"));
        if std::env::var_os("FLANGEWRIGHT_WRITE_GOLDEN").is_some() {
            std::fs::create_dir_all(path.parent().unwrap()).unwrap();
            std::fs::write(&path, sheet.join("\n") + "\n").unwrap();
        }
        let text = std::fs::read_to_string(&path).unwrap();
        let golden: Vec<&str> = text.lines().collect();
        for (number, (own, golden)) in sheet.iter().zip(&golden).enumerate() {
            assert!(
                same(own, golden),
                "{name}, line {}:\n{own}\nwas\n{golden}",
                number + 1
            );
        }
        assert_eq!(sheet.len(), golden.len(), "{name}: number of things drawn");
    }
}

#[test]
fn a_hundredth_is_let_pass_and_more_is_not() {
    let golden = "ContinuousWide Ring circle 10.000 20.000 5.000";
    assert!(same(
        "ContinuousWide Ring circle 10.004 20.000 5.000",
        golden
    ));
    assert!(!same(
        "ContinuousWide Ring circle 10.020 20.000 5.000",
        golden
    ));
    assert!(!same(
        "ContinuousNarrow Ring circle 10.000 20.000 5.000",
        golden
    ));
    assert!(!same("A text 1.000 = 12.5", "A text 1.000 = 12.505"));
}
