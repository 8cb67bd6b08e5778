//! The plan: flange, lugs, ears, holes and marks, seen from the lens side or from the body side.

use crate::document::Design;
use crate::drawing::{Item, LineType, Path, Role, Scene, Shape, Tone};
use crate::evaluate::Evaluation;
use crate::geometry::{Point, Side, plan_point, seen_from};
use crate::mount::Sector;
use crate::ring::{Plan, ResolvedRing, Rest, lug_intrusion};

/// What the plan shows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlanOptions {
    /// From which side it is seen; seen from the body side every angle runs the other way.
    pub side: Side,
    /// Whether ears, pins, stop and obstacles of the body are drawn.
    pub body: bool,
    /// Whether the lugs are drawn where they drop in, too.
    pub entry: bool,
    /// Clock angle of the cutting line, degrees, where it is drawn.
    pub cut_deg: Option<f64>,
}

/// Steps in which a root fillet is drawn.
const FILLET_STEPS: u32 = 10;
/// How far the cutting line stands out of the flange, mm of the part.
pub const CUT_OVERRUN: f64 = 4.0;
/// How far inside the rim the lens's mark is drawn, mm.
const LENS_MARK_INSIDE: f64 = 5.0;
/// A turn under this is no turn to draw, degrees.
const LEAST_TURN_DEG: f64 = 1.0;
/// Half width of the index mark, mm.
const MARK: f64 = 0.6;
/// Picking number of the lug with index 0; the others follow.
pub const LUG_TAG: u32 = 1000;
/// Picking number of the lock hole.
pub const LOCK_HOLE_TAG: u32 = 2000;
/// Picking number of the cutting line.
pub const CUT_TAG: u32 = 2001;

pub(super) const CENTRE: Point = Point { x: 0.0, y: 0.0 };

/// The plan of a design; empty while the ring is not whole.
#[must_use]
pub fn plan_view(design: &Design, evaluation: &Evaluation, options: &PlanOptions) -> Scene {
    let mut scene = Scene::default();
    let (Some(ring), Some(plan)) = (&evaluation.derivation.ring, &evaluation.plan) else {
        return scene;
    };
    let pen = PlanPen {
        side: options.side,
        ring,
    };
    if options.body {
        pen.body(design, plan, &mut scene);
    }
    pen.circles(&mut scene);
    if options.entry {
        for lug in &plan.lugs_at_entry {
            scene.draw(
                Shape::Path(pen.lug(*lug)),
                LineType::LongDashDoubleDotNarrow,
                Role::Hidden,
            );
        }
    }
    pen.lugs(plan, &mut scene);
    pen.marks(plan, &mut scene);
    if let Some(cut) = options.cut_deg {
        let reach = ring.sizes.flange_diameter / 2.0 + CUT_OVERRUN;
        let line = Path::line(
            CENTRE,
            plan_point(reach, seen_from(options.side, cut.to_radians())),
        );
        let item = Item::new(
            Shape::Path(line),
            LineType::LongDashDotWide,
            Role::Annotation,
        );
        scene.items.push(item.tagged(CUT_TAG));
    }
    scene
}

pub(super) struct PlanPen<'a> {
    pub(super) side: Side,
    pub(super) ring: &'a ResolvedRing,
}

impl PlanPen<'_> {
    pub(super) fn at(&self, radius: f64, clock_deg: f64) -> Point {
        plan_point(radius, seen_from(self.side, clock_deg.to_radians()))
    }

    /// An arc of constant radius as a path, from one clock angle through an extent.
    fn arc(&self, radius: f64, start_deg: f64, extent_deg: f64) -> Path {
        // Clockwise on the clock face is clockwise in the picture from the lens side, the other way from behind.
        let (paper_start, sweep) = match self.side {
            Side::Lens => (90.0 - start_deg, -extent_deg),
            Side::Body => (90.0 + start_deg, extent_deg),
        };
        Path::arc(CENTRE, radius, paper_start, sweep)
    }

    fn sector(&self, sector: Sector, inner: f64, outer: f64) -> Path {
        let mut path = self.arc(outer, sector.start_deg, sector.extent_deg);
        let back = self.arc(inner, sector.end_deg(), -sector.extent_deg);
        path.vertices.extend(back.vertices);
        path.closed = true;
        path
    }

    /// A lug with the flanks and root fillets that the cutter really leaves.
    fn lug(&self, lug: Sector) -> Path {
        let sizes = &self.ring.sizes;
        let (root, tip) = (sizes.nose_diameter / 2.0, sizes.lug_diameter / 2.0);
        let off_deg = |radius: f64| (lug_intrusion(self.ring, radius) / radius).to_degrees();
        let radii: Vec<f64> = (0..=FILLET_STEPS)
            .map(|step| tip + (root - tip) * f64::from(step) / f64::from(FILLET_STEPS))
            .collect();
        let tip_off = off_deg(tip);
        let between = || radii.iter().skip(1).take(radii.len().saturating_sub(2));
        let mut path = self.arc(tip, lug.start_deg - tip_off, lug.extent_deg + 2.0 * tip_off);
        for radius in between() {
            path.vertices
                .push(straight(self.at(*radius, lug.end_deg() + off_deg(*radius))));
        }
        let foot = off_deg(root);
        path.vertices.extend(
            self.arc(root, lug.end_deg() + foot, -(lug.extent_deg + 2.0 * foot))
                .vertices,
        );
        for radius in between().rev() {
            path.vertices
                .push(straight(self.at(*radius, lug.start_deg - off_deg(*radius))));
        }
        path.closed = true;
        path
    }

    fn body(&self, design: &Design, plan: &Plan, scene: &mut Scene) {
        let body = &design.body;
        let tinted = |path: Path, role: Role, scene: &mut Scene| {
            scene.draw(
                Shape::Fill {
                    loops: vec![path.clone()],
                    tone: Tone::Tint,
                },
                LineType::ContinuousNarrow,
                role,
            );
            scene.draw(Shape::Path(path), LineType::LongDashDoubleDotNarrow, role);
        };
        if let (Some(throat), Some(slot)) = (body.throat.number(), body.slot_diameter.number()) {
            for ear in &plan.ears {
                tinted(
                    self.sector(*ear, throat / 2.0, slot / 2.0),
                    Role::Body,
                    scene,
                );
            }
        }
        for obstacle in body.obstacles.value().into_iter().flatten() {
            let path = self.sector(
                obstacle.sector,
                obstacle.inner_radius_mm,
                obstacle.outer_radius_mm,
            );
            tinted(path, Role::Body, scene);
        }
        if let Some((angle, radius)) = plan.stop {
            let at = self.at(radius, angle);
            scene.draw(
                Shape::Circle {
                    centre: at,
                    radius_mm: MARK,
                },
                LineType::ContinuousWide,
                Role::Body,
            );
        }
        if let Some(rest) = plan.lens_mark {
            self.lens_mark(&rest, scene);
        }
        if let Some(angle) = plan.body_index_deg {
            let outside = self.ring.sizes.flange_diameter / 2.0 + 1.0;
            self.triangle(angle, outside, outside + 2.0, Role::Body, scene);
        }
    }

    /// The lens's mark where it comes to rest, and the turn from there to where it should stand.
    fn lens_mark(&self, rest: &Rest, scene: &mut Scene) {
        let rim = self.ring.sizes.flange_diameter / 2.0;
        let radius = rim - LENS_MARK_INSIDE;
        self.triangle(rest.mark_deg, rim - 3.0, radius, Role::Lens, scene);
        let turn = -rest.off_deg();
        if turn.abs() < LEAST_TURN_DEG {
            return;
        }
        let path = self.arc(radius, rest.mark_deg, turn);
        scene.draw(Shape::Path(path), LineType::ContinuousNarrow, Role::Lens);
        let back = turn.signum() * (2.0 * MARK / radius).to_degrees();
        let corners = [
            self.at(radius, rest.wanted_deg),
            self.at(radius - MARK, rest.wanted_deg - back),
            self.at(radius + MARK, rest.wanted_deg - back),
        ];
        let head = Shape::Fill {
            loops: vec![Path::polygon(corners)],
            tone: Tone::Solid,
        };
        scene.draw(head, LineType::ContinuousNarrow, Role::Lens);
    }

    pub(super) fn circles(&self, scene: &mut Scene) {
        let sizes = &self.ring.sizes;
        let mut circle = |diameter: f64, line: LineType| {
            let shape = Shape::Circle {
                centre: CENTRE,
                radius_mm: diameter / 2.0,
            };
            scene.draw(
                shape,
                line,
                if line == LineType::DashedNarrow {
                    Role::Hidden
                } else {
                    Role::Ring
                },
            );
        };
        circle(sizes.flange_diameter, LineType::ContinuousWide);
        match self.side {
            Side::Lens => {
                if (sizes.seat_diameter - sizes.flange_diameter).abs() > 1e-6 {
                    circle(sizes.seat_diameter, LineType::ContinuousWide);
                }
                circle(self.ring.thread_minor, LineType::ContinuousWide);
                circle(sizes.nose_diameter, LineType::DashedNarrow);
            }
            Side::Body => {
                circle(sizes.nose_diameter, LineType::ContinuousWide);
                if sizes.rear_bore > sizes.lip_bore + 1e-6 {
                    circle(sizes.rear_bore, LineType::ContinuousWide);
                }
            }
        }
        circle(sizes.lip_bore, LineType::ContinuousWide);
        self.thread_circle(scene);
        let reach = sizes.flange_diameter / 2.0 + 3.0;
        for [a, b] in [[(-reach, 0.0), (reach, 0.0)], [(0.0, -reach), (0.0, reach)]] {
            let line = Path::line(Point { x: a.0, y: a.1 }, Point { x: b.0, y: b.1 });
            scene.draw(Shape::Path(line), LineType::LongDashDotNarrow, Role::Axis);
        }
    }

    /// Root of the thread as three quarters of a narrow circle (ISO 6410-1), seen from the lens side.
    fn thread_circle(&self, scene: &mut Scene) {
        if self.side == Side::Lens {
            let shape = Shape::Arc {
                centre: CENTRE,
                radius_mm: self.ring.thread_major / 2.0,
                start_deg: 95.0,
                sweep_deg: 270.0,
            };
            scene.draw(shape, LineType::ContinuousNarrow, Role::Ring);
        }
    }

    pub(super) fn lugs(&self, plan: &Plan, scene: &mut Scene) {
        let line = match self.side {
            Side::Lens => LineType::DashedNarrow,
            Side::Body => LineType::ContinuousWide,
        };
        for (tag, lug) in (LUG_TAG..).zip(&plan.lugs) {
            let path = self.lug(*lug);
            let fill = Shape::Fill {
                loops: vec![path.clone()],
                tone: Tone::Tint,
            };
            scene
                .items
                .push(Item::new(fill, LineType::ContinuousNarrow, Role::Ring));
            scene
                .items
                .push(Item::new(Shape::Path(path), line, Role::Ring).tagged(tag));
        }
    }

    fn marks(&self, plan: &Plan, scene: &mut Scene) {
        let rim = self.ring.sizes.flange_diameter / 2.0;
        self.triangle(
            plan.index_deg,
            rim - 0.3,
            rim - 2.3,
            Role::Annotation,
            scene,
        );
        if let Some(hole) = plan.lock_hole {
            let centre = self.at(hole.radius_mm, hole.angle_deg);
            let shape = Shape::Circle {
                centre,
                radius_mm: hole.diameter_mm / 2.0,
            };
            scene
                .items
                .push(Item::new(shape, LineType::ContinuousWide, Role::Ring).tagged(LOCK_HOLE_TAG));
        }
        if let Some(pin) = plan.lock_pin {
            let centre = self.at(pin.radius_mm, pin.angle_deg);
            let shape = Shape::Circle {
                centre,
                radius_mm: pin.diameter_mm / 2.0,
            };
            scene.draw(shape, LineType::LongDashDoubleDotNarrow, Role::Pin);
        }
    }

    /// A mark whose tip points at the rim.
    pub(super) fn triangle(
        &self,
        clock_deg: f64,
        tip: f64,
        foot: f64,
        role: Role,
        scene: &mut Scene,
    ) {
        let spread = (MARK / foot).to_degrees();
        let corners = [
            self.at(tip, clock_deg),
            self.at(foot, clock_deg - spread),
            self.at(foot, clock_deg + spread),
        ];
        let shape = Shape::Fill {
            loops: vec![Path::polygon(corners)],
            tone: Tone::Solid,
        };
        scene.draw(shape, LineType::ContinuousNarrow, role);
    }
}

fn straight(at: Point) -> crate::drawing::Vertex {
    crate::drawing::Vertex::straight(at)
}
