//! How the seat height of a finished ring is measured, by seat kind: the ring lying on its flange, axis upright.

use super::marks::{across, at, line, part, words};
use crate::document::SeatKind;
use crate::drawing::{LineType, Role, Scene};

/// Height of the surface plate's face.
const PLATE: f64 = -26.0;
const PLATE_HALF: f64 = 62.0;
const BLOCK: (f64, f64) = (33.0, 46.0);
const BORE: f64 = 14.0;
const SPIGOT: f64 = 22.0;
const LUG: f64 = 28.0;
const FLANGE: f64 = 46.0;
const FRONT: f64 = 7.0;
const NOSE: f64 = -15.0;

/// The sketch for a seat; `over_blocks` says whether the ring lies on blocks, which a flush plate only does where no
/// micrometer spans it.
#[must_use]
pub fn register_sketch(seat: SeatKind, over_blocks: bool) -> Scene {
    let mut scene = Scene::view();
    let seat_at = match seat {
        SeatKind::Boss => FRONT + 8.0,
        SeatKind::Flush => FRONT,
        SeatKind::Counterbore => FRONT - 4.0,
    };
    draw_ring(&mut scene, seat, seat_at);
    if over_blocks {
        draw_plate(&mut scene);
        match seat {
            SeatKind::Boss | SeatKind::Flush => depth_gauge(&mut scene, seat_at),
            SeatKind::Counterbore => indicator(&mut scene, seat_at),
        }
        let face = at(BORE + 4.0, seat_at);
        let edge = at(-BLOCK.1, PLATE);
        across(&mut scene, edge, at(face.x, face.y), -70.0, "read");
        let top = at(-FLANGE, 0.0);
        across(&mut scene, edge, top, -58.0, "blocks");
        words(
            &mut scene,
            at(0.0, PLATE - 13.0),
            "surface plate, lugs hang free",
        );
        words(
            &mut scene,
            at(0.0, PLATE - 21.0),
            "seat height = read - blocks",
        );
    } else {
        micrometer(&mut scene, seat_at);
        across(
            &mut scene,
            at(FLANGE - 6.0, 0.0),
            at(FLANGE - 6.0, seat_at),
            -58.0,
            "seat height",
        );
        words(
            &mut scene,
            at(0.0, NOSE - 9.0),
            "micrometer over seat and flange rear face",
        );
    }
    scene
}

fn draw_ring(scene: &mut Scene, seat: SeatKind, seat_at: f64) {
    let above: Vec<(f64, f64)> = match seat {
        SeatKind::Boss => vec![
            (FLANGE, FRONT),
            (30.0, FRONT),
            (30.0, seat_at),
            (BORE, seat_at),
        ],
        SeatKind::Flush => vec![(FLANGE, FRONT), (BORE, FRONT)],
        SeatKind::Counterbore => vec![
            (FLANGE, FRONT),
            (31.0, FRONT),
            (31.0, seat_at),
            (BORE, seat_at),
        ],
    };
    let below = [
        (BORE, NOSE),
        (SPIGOT, NOSE),
        (SPIGOT, -12.0),
        (LUG, -12.0),
        (LUG, -7.0),
        (SPIGOT, -7.0),
        (SPIGOT, 0.0),
        (FLANGE, 0.0),
    ];
    for side in [1.0, -1.0] {
        let around = above.iter().chain(&below);
        part(scene, Role::Ring, around.map(|(x, y)| at(x * side, *y)));
    }
    let dash = LineType::LongDashDotNarrow;
    line(
        scene,
        Role::Axis,
        dash,
        at(0.0, NOSE - 4.0),
        at(0.0, FRONT + 40.0),
    );
    for side in [1.0, -1.0] {
        let seat_face = [at(BORE * side, seat_at), at((BORE + 12.0) * side, seat_at)];
        line(
            scene,
            Role::Highlight,
            LineType::ContinuousWide,
            seat_face[0],
            seat_face[1],
        );
    }
}

fn draw_plate(scene: &mut Scene) {
    let deep = PLATE - 6.0;
    part(
        scene,
        Role::Body,
        [
            at(-PLATE_HALF, PLATE),
            at(PLATE_HALF, PLATE),
            at(PLATE_HALF, deep),
            at(-PLATE_HALF, deep),
        ],
    );
    for side in [1.0, -1.0] {
        let (near, far) = (BLOCK.0 * side, BLOCK.1 * side);
        part(
            scene,
            Role::Body,
            [at(near, PLATE), at(far, PLATE), at(far, 0.0), at(near, 0.0)],
        );
    }
}

/// A depth micrometer: base on the seat, spindle through the bore down to the plate.
fn depth_gauge(scene: &mut Scene, seat_at: f64) {
    let role = Role::Lens;
    let top = seat_at + 5.0;
    part(
        scene,
        role,
        [
            at(-24.0, seat_at),
            at(24.0, seat_at),
            at(24.0, top),
            at(-24.0, top),
        ],
    );
    part(
        scene,
        role,
        [
            at(-1.4, PLATE),
            at(1.4, PLATE),
            at(1.4, seat_at),
            at(-1.4, seat_at),
        ],
    );
    part(
        scene,
        role,
        [
            at(-4.0, top),
            at(4.0, top),
            at(4.0, top + 22.0),
            at(-4.0, top + 22.0),
        ],
    );
}

/// An indicator on a stand: set to zero on blocks, moved over to the sunk seat.
fn indicator(scene: &mut Scene, seat_at: f64) {
    let role = Role::Lens;
    let x = BORE + 6.0;
    let arm = seat_at + 26.0;
    part(
        scene,
        role,
        [
            at(55.0, PLATE),
            at(59.0, PLATE),
            at(59.0, arm + 4.0),
            at(55.0, arm + 4.0),
        ],
    );
    part(
        scene,
        role,
        [
            at(x, arm),
            at(59.0, arm),
            at(59.0, arm + 3.0),
            at(x, arm + 3.0),
        ],
    );
    part(
        scene,
        role,
        [
            at(x - 6.0, arm - 10.0),
            at(x + 6.0, arm - 10.0),
            at(x + 6.0, arm),
            at(x - 6.0, arm),
        ],
    );
    part(
        scene,
        role,
        [
            at(x, seat_at),
            at(x + 1.2, seat_at + 3.0),
            at(x + 1.2, arm - 10.0),
            at(x - 1.2, arm - 10.0),
            at(x - 1.2, seat_at + 3.0),
        ],
    );
}

/// A micrometer from the rim: anvil under the flange, spindle on the seat.
fn micrometer(scene: &mut Scene, seat_at: f64) {
    let role = Role::Lens;
    let (near, far) = (FLANGE - 10.0, FLANGE - 4.0);
    part(
        scene,
        role,
        [at(near, 0.0), at(far, 0.0), at(far, -7.0), at(near, -7.0)],
    );
    part(
        scene,
        role,
        [
            at(near, seat_at),
            at(far, seat_at),
            at(far, seat_at + 9.0),
            at(near, seat_at + 9.0),
        ],
    );
    part(
        scene,
        role,
        [
            at(near - 2.0, -7.0),
            at(near - 2.0, -12.0),
            at(66.0, -12.0),
            at(66.0, seat_at + 14.0),
            at(near - 2.0, seat_at + 14.0),
            at(near - 2.0, seat_at + 9.0),
            at(60.0, seat_at + 9.0),
            at(60.0, -7.0),
        ],
    );
    part(
        scene,
        role,
        [
            at(near, seat_at + 14.0),
            at(far, seat_at + 14.0),
            at(far, seat_at + 32.0),
            at(near, seat_at + 32.0),
        ],
    );
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::Shape;

    #[test]
    fn every_seat_kind_has_a_sketch_of_its_own_that_marks_the_seat() {
        let mut seen: Vec<Scene> = Vec::new();
        for (seat, over_blocks) in [
            (SeatKind::Flush, false),
            (SeatKind::Flush, true),
            (SeatKind::Boss, true),
            (SeatKind::Counterbore, true),
        ] {
            let scene = register_sketch(seat, over_blocks);
            let asked = scene
                .items
                .iter()
                .filter(|item| item.pen.role == Role::Highlight);
            let texts = asked
                .clone()
                .filter(|item| matches!(item.shape, Shape::Text(_)));
            assert!(asked.count() >= 3 && texts.count() >= 1, "{seat:?}");
            let size = scene.bounds().unwrap();
            assert!(size.width() < 190.0 && size.height() < 160.0, "{seat:?}");
            assert!(!seen.contains(&scene), "{seat:?}");
            seen.push(scene);
        }
    }
}
