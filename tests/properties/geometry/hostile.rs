//! Ten thousand shapes of the classes on which polygon libraries are known to fail: nothing may panic, and no answer
//! may be a number that is none.

use flangewright::geometry::{
    AnnularSector, Flank, Interval, Method, Outline, OutlineBuilder, Path, Point, SHORTEST, Step,
    StepProfile, clearance, clearance_to_path, difference, interference, intersection, revolve,
    thinnest_wall, union,
};

use super::shapes::{Random, lug, polygon, ring, star};

type Vertices = Vec<(Point, f64)>;

fn random_vertices(random: &mut Random, count: u64, size: f64) -> Vertices {
    (0..count)
        .map(|_| {
            let place = Point::new(random.between(-size, size), random.between(-size, size));
            (
                place,
                if random.below(2) == 0 {
                    0.0
                } else {
                    random.between(-2.0, 2.0)
                },
            )
        })
        .collect()
}

fn built(vertices: &Vertices) -> Option<Outline> {
    let (first, mut bulge) = *vertices.first()?;
    let mut run = OutlineBuilder::start(first);
    for (place, next) in &vertices[1..] {
        run = run.arc_to(*place, bulge, ());
        bulge = *next;
    }
    run.close_with(bulge, ()).ok()
}

fn vertices_of(outline: &Outline) -> Vertices {
    outline
        .pieces()
        .map(|(segment, ())| (segment.a, segment.bulge))
        .collect()
}

/// One outline of a class, if the gate lets it through.
fn hostile(random: &mut Random, class: u64) -> Option<Outline> {
    match class {
        0 => {
            let count = 3 + random.below(8);
            built(&random_vertices(random, count, 10.0))
        }
        1 => {
            let points = 30 + u32::try_from(random.below(30)).unwrap();
            star(random, Point::new(0.0, 20.0), 8.0, points)
        }
        2 => ring(random, 0.0),
        3 => {
            let start = random.between(0.0, 6.0);
            lug(
                24.0,
                27.0,
                start,
                random.between(1e-6, 6.0),
                random.between(0.0, 2.0),
            )
        }
        4 => without_thickness(random),
        5 => sliver(random),
        6 => doubled_vertex(random),
        7 => run_backward(random),
        8 => {
            let count = random.below(3);
            built(&random_vertices(random, count, 10.0))
        }
        9 => {
            let size = if random.below(2) == 0 { 1e9 } else { 1e-7 };
            let count = 3 + random.below(4);
            built(&random_vertices(random, count, size))
        }
        10 => on_a_grid(random),
        _ => with_a_bad_number(random),
    }
}

fn corners(corners: [(f64, f64); 4]) -> Option<Outline> {
    polygon(&corners.map(|(x, y)| Point::new(x, y)))
}

fn without_thickness(random: &mut Random) -> Option<Outline> {
    let width = random.between(1.0, 5.0);
    corners([(0.0, 1.0), (width, 1.0), (width, 1.0), (0.0, 1.0)])
}

fn sliver(random: &mut Random) -> Option<Outline> {
    let thin = 10_f64.powf(random.between(-12.0, -4.0));
    corners([(0.0, 0.0), (9.0, 0.0), (9.0, thin), (0.0, thin)])
}

fn doubled_vertex(random: &mut Random) -> Option<Outline> {
    let mut vertices = vertices_of(&star(random, Point::default(), 6.0, 9)?);
    let index = usize::try_from(random.below(9)).unwrap();
    let (place, bulge) = vertices[index];
    let off = 10_f64.powf(random.between(-16.0, -5.0));
    vertices.insert(index + 1, (place + Point::new(off, -off), bulge));
    vertices[index].1 = 0.0;
    built(&vertices)
}

fn run_backward(random: &mut Random) -> Option<Outline> {
    let mut vertices = vertices_of(&star(random, Point::default(), 6.0, 9)?);
    vertices.reverse();
    for vertex in &mut vertices {
        vertex.1 = 0.0;
    }
    built(&vertices)
}

fn on_a_grid(random: &mut Random) -> Option<Outline> {
    let count = 3 + random.below(5);
    let mut vertices = random_vertices(random, count, 4.0);
    for (place, bulge) in &mut vertices {
        (*place, *bulge) = (Point::new(place.x.round(), place.y.round()), 0.0);
    }
    built(&vertices)
}

fn with_a_bad_number(random: &mut Random) -> Option<Outline> {
    let count = 3 + random.below(5);
    let mut vertices = random_vertices(random, count, 10.0);
    let bad = [f64::NAN, f64::INFINITY, -f64::INFINITY, 1e308, -1e308];
    let value = bad[usize::try_from(random.below(5)).unwrap()];
    let index = usize::try_from(random.below(count)).unwrap();
    match random.below(3) {
        0 => vertices[index].0.x = value,
        1 => vertices[index].0.y = value,
        _ => vertices[index].1 = value,
    }
    built(&vertices)
}

fn assert_sound(one: &Outline, two: &Outline) {
    assert!(one.area() > 0.0 && one.area().is_finite());
    let found = clearance(one, two);
    assert!(found.distance >= 0.0 && found.distance.is_finite());
    assert!(found.a.is_finite() && found.b.is_finite());
    if let Some(clash) = interference(one, two) {
        assert!(clash.area >= 0.0 && clash.area.is_finite());
        assert!(clash.depth >= 0.0 && clash.depth.is_finite());
        assert!(!found.is_free());
    }
    let (a, b) = (one.area(), two.area());
    let shared = intersection(one, two).unwrap().area();
    let covered = union(one, two).unwrap().area();
    let rest = difference(one, two).unwrap().area();
    // What is thinner than the shortest piece may be lost.
    let allowed = 1e-4 * (a + b) + SHORTEST * (one.perimeter() + two.perimeter());
    assert!(
        (shared + covered - a - b).abs() <= allowed,
        "{shared} {covered} {one:?} {two:?}"
    );
    assert!(
        (rest + shared - a).abs() <= allowed,
        "{shared} {rest} {one:?} {two:?}"
    );
}

#[test]
fn ten_thousand_hostile_shapes() {
    let mut random = Random(20);
    let mut passed = [0_u32; 12];
    for round in 0..10_000_u64 {
        let class = round % 12;
        let (one, two) = (hostile(&mut random, class), hostile(&mut random, class));
        let Some((one, two)) = one.zip(two) else {
            continue;
        };
        passed[usize::try_from(class).unwrap()] += 1;
        assert_sound(&one, &two);
        if let Some(wall) = thinnest_wall(&one) {
            assert!(wall.thickness > 0.0 && wall.thickness.is_finite());
        }
        if let Ok(solid) = revolve(&one) {
            assert!(solid.volume > 0.0 && solid.surface > 0.0 && solid.moment.is_finite());
        }
        if let Ok(path) = Path::straight(two.flattened(0.1), ()) {
            assert!(clearance_to_path(&one, &path).distance.is_finite());
        }
    }
    // What the gate must let through, and what it must not.
    for class in [1, 2, 3, 6, 7] {
        assert!(passed[class] > 200, "class {class}: {passed:?}");
    }
    for class in [4, 11] {
        assert_eq!(passed[class], 0, "class {class}: {passed:?}");
    }
}

#[test]
fn numbers_that_are_none_are_refused_everywhere() {
    for bad in [f64::NAN, f64::INFINITY, -f64::INFINITY] {
        assert!(Interval::new(bad, 1.0).is_none());
        assert!(Interval::new(1.0, bad).is_none() || bad > 0.0);
        assert!(AnnularSector::new(bad, 2.0, Interval::full_turn()).is_err());
        assert!(AnnularSector::new(1.0, bad, Interval::full_turn()).is_err());
        for method in [Method::OffsetFeed, Method::CentreFeed, Method::RadialOffset] {
            assert!(Flank::new(method, bad, 27.0, 2.0).is_err());
            assert!(Flank::new(method, 24.0, bad, 2.0).is_err());
            assert!(Flank::new(method, 24.0, 27.0, bad).is_err());
        }
        let step = Step {
            from_z: 0.0,
            to_z: bad,
            radius: 2.0,
        };
        assert!(StepProfile::new(&[step]).is_err());
        assert!(Path::straight([Point::new(bad, 0.0), Point::new(1.0, 1.0)], ()).is_err());
    }
}
