use super::*;

fn request(id: u32, low_mm: f64, high_mm: f64) -> Request {
    Request {
        id,
        low_mm,
        high_mm,
        on_part_low: true,
        on_part_high: true,
        text_mm: 10.0,
        rise_mm: 4.5,
    }
}

fn side(text_outward: bool) -> Side {
    Side {
        part_low_mm: 0.0,
        part_high_mm: 100.0,
        text_outward,
    }
}

#[test]
fn a_chain_lies_in_one_tier_and_the_whole_outside_it() {
    let requests = [
        request(1, 0.0, 30.0),
        request(2, 30.0, 55.0),
        request(3, 55.0, 100.0),
        request(4, 0.0, 100.0),
    ];
    let placed = place(&requests, &side(true), &Style::default());
    let tiers: Vec<usize> = placed.iter().map(|place| place.tier).collect();
    assert_eq!(tiers, [0, 0, 0, 1]);
    // 10 mm to the first line and 8 mm to the next (common practice).
    assert!((placed[0].offset_mm - 10.0).abs() < 1e-9);
    assert!((placed[3].offset_mm - 18.0).abs() < 1e-9);
    assert!((placed[3].text_centre_mm - 50.0).abs() < 1e-9);
}

#[test]
fn parallel_dimensions_from_one_face_are_nested() {
    let requests = [
        request(1, 0.0, 80.0),
        request(2, 0.0, 20.0),
        request(3, 0.0, 50.0),
    ];
    let placed = place(&requests, &side(false), &Style::default());
    let tiers: Vec<usize> = placed.iter().map(|place| place.tier).collect();
    assert_eq!(tiers, [2, 0, 1]);
}

#[test]
fn text_moves_out_of_the_way_of_a_passing_extension_line() {
    // The line at 50 of the longer dimension runs through the middle of the shorter one.
    let requests = [request(1, 20.0, 80.0), request(2, 50.0, 150.0)];
    let wide = Side {
        part_high_mm: 150.0,
        ..side(true)
    };
    let placed = place(&requests, &wide, &Style::default());
    assert_eq!(placed[0].tier, 0);
    assert!((placed[0].text_centre_mm - 50.0).abs() > 6.0);
}

#[test]
fn stacked_lettering_gets_more_room() {
    let tall = Request {
        rise_mm: 9.05,
        ..request(2, 0.0, 100.0)
    };
    let requests = [request(1, 10.0, 60.0), tall];
    let inward = place(&requests, &side(false), &Style::default());
    // Lettering 9.05 over its line, 1 mm clear of 2 mm that the inner extension lines stick out.
    assert!((inward[1].offset_mm - inward[0].offset_mm - 12.05).abs() < 1e-9);
    let outward = place(&requests, &side(true), &Style::default());
    assert!((outward[1].offset_mm - outward[0].offset_mm - 8.0).abs() < 1e-9);
}

#[test]
fn nothing_wanted_is_nothing_placed() {
    assert!(place(&[], &side(true), &Style::default()).is_empty());
}
