use super::*;
use crate::drawing::lettering::Text;

fn written(scene: &Scene) -> Vec<(String, String)> {
    let text = String::from_utf8_lossy(&dxf(scene, LineGroup::Half)).into_owned();
    let lines: Vec<&str> = text.split("\r\n").collect();
    let pairs = lines.chunks_exact(2);
    pairs
        .filter_map(|pair| Some((pair.first()?.trim().to_owned(), (*pair.last()?).to_owned())))
        .collect()
}

fn entities(scene: &Scene) -> Vec<(String, String)> {
    let all = written(scene);
    let start = all.iter().position(|pair| pair.1 == "ENTITIES").unwrap();
    all[start + 1..].to_vec()
}

fn view_with(shape: Shape) -> Scene {
    let mut scene = Scene::view();
    scene.draw(shape, LineType::ContinuousWide, Role::Ring);
    scene
}

fn has(pairs: &[(String, String)], code: &str, value: &str) -> bool {
    pairs.iter().any(|pair| pair.0 == code && pair.1 == value)
}

#[test]
fn an_arc_turned_clockwise_is_written_counter_clockwise() {
    let path = Path::arc(Point::new(1.0, 2.0), 5.0, 30.0, -60.0);
    let file = entities(&view_with(Shape::Path(path)));
    assert!(has(&file, "0", "ARC") && has(&file, "40", "5.0"));
    assert!(
        has(&file, "50", "330.0") && has(&file, "51", "30.0"),
        "{file:?}"
    );
}

#[test]
fn a_circle_of_two_halves_is_one_circle() {
    let file = entities(&view_with(Shape::Path(Path::circle(
        Point::new(3.0, 4.0),
        2.5,
    ))));
    assert!(has(&file, "0", "CIRCLE") && has(&file, "40", "2.5") && !has(&file, "0", "POLYLINE"));
}

#[test]
fn lettering_has_the_codes_of_release_12() {
    let text = Text::level(
        Point::new(0.0, 0.0),
        3.5,
        "\u{2300}42 \u{b1}0,1 \u{2212}5\u{b0} 2\u{d7} 50 % \u{e9}\n0",
    );
    let bytes = dxf(&view_with(Shape::Text(text)), LineGroup::Half);
    // Code page 1252 has the accented e at 0xE9; a line end inside would break the file and is a blank.
    let wanted = b"%%c42 %%p0,1 -5%%d 2x 50 %%% \xe9 0\r\n";
    assert!(bytes.windows(wanted.len()).any(|window| window == wanted));
}

#[test]
fn drawn_signs_are_strokes_beside_their_letters() {
    let text = Text::level(
        Point::new(0.0, 0.0),
        3.5,
        format!("{} 0,02", crate::drawing::signs::PARALLELISM),
    );
    let file = entities(&view_with(Shape::Text(text)));
    assert!(has(&file, "0", "LINE") && has(&file, "1", "0,02"));
}

#[test]
fn arrowheads_are_solids_and_tints_are_left_out() {
    let corners = [(0.0, 0.0), (3.0, 0.5), (3.0, -0.5)].map(|(x, y)| Point::new(x, y));
    let fill = |tone| Shape::Fill {
        loops: vec![Path::polygon(corners)],
        tone,
    };
    assert!(has(&entities(&view_with(fill(Tone::Solid))), "0", "SOLID"));
    assert!(!has(&entities(&view_with(fill(Tone::Tint))), "0", "SOLID"));
}

#[test]
fn repeated_corners_and_empty_paths_draw_nothing() {
    let spot = Point::new(1.0, 1.0);
    for path in [
        Path::line(spot, spot),
        Path::polygon([spot, spot, spot]),
        Path::open([]),
    ] {
        let file = entities(&view_with(Shape::Path(path)));
        assert_eq!(
            file.iter().filter(|pair| pair.0 == "0").count(),
            2,
            "{file:?}"
        );
    }
}
