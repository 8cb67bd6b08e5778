//! Nothing grows out of bounds: coarse ceilings, far above what the bench measures, that a change of order breaks.

use std::time::Instant;

use flangewright::geometry::{Outline, OutlineBuilder, Point, clearance, thinnest_wall};

/// A comb with `teeth` teeth, four pieces each.
fn comb(teeth: u32, z: f64) -> Outline {
    let mut run = OutlineBuilder::start(Point::new(z, 20.0))
        .line_to(Point::new(z + f64::from(teeth), 20.0), ());
    for tooth in (0..teeth).rev() {
        let x = z + f64::from(tooth);
        for (dx, y) in [(1.0, 22.0), (0.5, 22.0), (0.5, 21.0), (0.0, 21.0)] {
            run = run.line_to(Point::new(x + dx, y), ());
        }
    }
    run.close(()).unwrap()
}

#[test]
fn two_hundred_pieces_stay_quick() {
    let (one, two) = (
        comb(50, 0.0),
        comb(50, 0.0).translated(Point::new(0.0, 2.1)),
    );
    let began = Instant::now();
    for _ in 0..20 {
        let _ = comb(50, 0.0);
        assert!((clearance(&one, &two).distance - 0.1).abs() < 1e-12);
        assert!((thinnest_wall(&one).unwrap().thickness - 0.5).abs() < 1e-12);
    }
    let each_ms = began.elapsed().as_secs_f64() * 1000.0 / 20.0;
    assert!(each_ms < 250.0, "{each_ms} ms");
}
