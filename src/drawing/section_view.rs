//! The half-section: ring, lens and body as they stand, z to the right, r upward, axis at the bottom.

use crate::document::Design;
use crate::drawing::outlines::{path_of, pieces_of};
use crate::drawing::{Hatch, Item, LineType, Path, Role, Scene, Shape, Tone};
use crate::evaluate::Evaluation;
use crate::geometry::{Outline, Point};
use crate::mount::Sector;
use crate::ring::{BodyPart, Feature, Parts, ResolvedRing};

/// What the half-section shows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SectionOptions {
    /// Clock angle of the cut, degrees, seen from the lens side.
    pub angle_deg: f64,
    /// Whether lens and body are drawn as adjacent parts.
    pub partners: bool,
    /// Whether the edges behind the cut are drawn down to the axis.
    pub edges_behind: bool,
    /// Least distance between crest and root line of the thread in the lengths of the part, mm (ISO 6410-1
    /// wants it readable on paper); 0 draws it true.
    pub least_thread_gap_mm: f64,
    /// Distance of the hatch lines on paper, mm.
    pub hatch_spacing_mm: f64,
    /// How far the axis runs past what is drawn, mm of the part.
    pub axis_overrun_mm: f64,
}

impl SectionOptions {
    /// What the window shows.
    #[must_use]
    pub const fn on_screen(angle_deg: f64) -> Self {
        Self {
            angle_deg,
            partners: true,
            edges_behind: false,
            least_thread_gap_mm: 0.0,
            hatch_spacing_mm: 1.8,
            axis_overrun_mm: AXIS_OVERRUN,
        }
    }
}

/// How far the axis runs past what is drawn on screen, mm of the part.
const AXIS_OVERRUN: f64 = 3.0;

/// The half-section of a design; empty while the ring is not whole.
#[must_use]
pub fn section_view(design: &Design, evaluation: &Evaluation, options: &SectionOptions) -> Scene {
    let mut scene = Scene::default();
    let (Some(ring), Some(parts)) = (&evaluation.derivation.ring, &evaluation.parts) else {
        return scene;
    };
    if options.partners {
        body(design, parts, options.angle_deg, &mut scene);
        lens(parts, &mut scene);
    }
    cut_metal(ring, parts, options, &mut scene);
    if options.edges_behind {
        edges_behind(parts, &mut scene);
    }
    let extent = scene.bounds();
    if let Some(extent) = extent {
        let (from, to) = (
            extent.left - options.axis_overrun_mm,
            extent.right + options.axis_overrun_mm,
        );
        scene.draw(
            Shape::Path(Path::line(
                Point { x: from, y: 0.0 },
                Point { x: to, y: 0.0 },
            )),
            LineType::LongDashDotNarrow,
            Role::Axis,
        );
    }
    scene
}

/// Whether a clock angle lies in one of the sectors.
pub(super) fn in_any(sectors: &[Sector], angle_deg: f64) -> bool {
    sectors
        .iter()
        .any(|sector| (angle_deg - sector.start_deg).rem_euclid(360.0) <= sector.extent_deg)
}

fn tinted<T: Copy + PartialEq>(outline: &Outline<T>, role: Role, scene: &mut Scene) {
    let path = path_of(outline);
    scene.draw(
        Shape::Fill {
            loops: vec![path.clone()],
            tone: Tone::Tint,
        },
        LineType::ContinuousNarrow,
        role,
    );
    scene.draw(Shape::Path(path), LineType::LongDashDoubleDotNarrow, role);
}

fn lens(parts: &Parts, scene: &mut Scene) {
    let solids = [
        &parts.shoulder,
        &parts.male_thread,
        &parts.barrel_at_infinity,
        &parts.aperture_ring,
    ];
    for outline in solids.into_iter().flatten() {
        tinted(outline, Role::Lens, scene);
    }
    if let Some(pin) = &parts.pin {
        tinted(pin, Role::Pin, scene);
    }
}

fn body(design: &Design, parts: &Parts, angle_deg: f64, scene: &mut Scene) {
    let body = &design.body;
    if let Some(flange) = &parts.flange {
        tinted(flange, Role::Body, scene);
    }
    let ears = body.ears.value().map_or(&[] as &[Sector], Vec::as_slice);
    if let Some(ear) = parts.ear.as_ref().filter(|_| in_any(ears, angle_deg)) {
        tinted(ear, Role::Body, scene);
    }
    let obstacles = body.obstacles.value().map_or(&[] as &[_], Vec::as_slice);
    for outline in &parts.obstacles {
        let cut = outline.pieces().next().is_some_and(|(_, tag)| match tag {
            BodyPart::Obstacle(index) => obstacles
                .get(index)
                .is_some_and(|obstacle| in_any(&[obstacle.sector], angle_deg)),
            BodyPart::Flange | BodyPart::Ear | BodyPart::LockPin | BodyPart::BehindFlange => false,
        });
        if cut {
            tinted(outline, Role::Body, scene);
        }
    }
    if let (Some(pin), Some(hole)) = (&parts.lock_pin, body.lock_pin_angle.number())
        && let (Some(circle), Some(diameter)) = (
            body.lock_pin_circle.number(),
            body.lock_pin_diameter.number(),
        )
        && half_width_at(hole, angle_deg, circle / 2.0, diameter / 2.0).is_some()
    {
        tinted(pin, Role::Pin, scene);
    }
    if let Some(behind) = &parts.behind_flange {
        let points =
            behind
                .pieces()
                .map(|(segment, _)| segment)
                .fold(Vec::new(), |mut points, segment| {
                    if points.is_empty() {
                        points.push(segment.a);
                    }
                    points.push(segment.b);
                    points
                });
        scene.draw(
            Shape::Path(Path::open(points)),
            LineType::LongDashDoubleDotNarrow,
            Role::Body,
        );
    }
}

/// Half the length of the cut through a round hole at a clock angle, mm; none where the cut misses it.
fn half_width_at(hole_deg: f64, cut_deg: f64, circle_radius: f64, radius: f64) -> Option<f64> {
    let off = circle_radius * (cut_deg - hole_deg).to_radians().sin();
    let same_side = (cut_deg - hole_deg).to_radians().cos() > 0.0;
    (same_side && off.abs() < radius).then(|| (radius * radius - off * off).sqrt())
}

/// The lock hole as the cut meets it: a rectangle (z, r), if it meets it.
fn hole_rectangle(ring: &ResolvedRing, angle_deg: f64) -> Option<[Point; 4]> {
    let sizes = &ring.sizes;
    if sizes.lock_hole_diameter <= 0.0 {
        return None;
    }
    let radius = sizes.lock_hole_circle / 2.0;
    let half = half_width_at(
        sizes.lock_hole_angle,
        angle_deg,
        radius,
        sizes.lock_hole_diameter / 2.0,
    )?;
    let middle = radius * (angle_deg - sizes.lock_hole_angle).to_radians().cos();
    let floor = -sizes.lock_hole_depth;
    let corner = |x, y| Point { x, y };
    Some([
        corner(floor, middle - half),
        corner(0.0, middle - half),
        corner(0.0, middle + half),
        corner(floor, middle + half),
    ])
}

fn cut_metal(ring: &ResolvedRing, parts: &Parts, options: &SectionOptions, scene: &mut Scene) {
    let outline = if in_any(&ring.lugs, options.angle_deg) {
        &parts.through_lug
    } else {
        &parts.between_lugs
    };
    let mut loops = vec![path_of(outline)];
    let hole = hole_rectangle(ring, options.angle_deg);
    if let Some(corners) = hole {
        loops.push(Path::polygon(corners));
    }
    scene.draw(
        Shape::Fill {
            loops: loops.clone(),
            tone: Tone::Tint,
        },
        LineType::ContinuousNarrow,
        Role::Ring,
    );
    let hatch = Hatch::at_45_deg(loops, options.hatch_spacing_mm);
    scene.draw(
        Shape::Hatch(hatch),
        LineType::ContinuousNarrow,
        Role::RingHatch,
    );
    for (path, feature) in pieces_of(outline) {
        let item = Item::new(Shape::Path(path), LineType::ContinuousWide, Role::Ring);
        scene.items.push(item.tagged(tag_of(feature)));
    }
    if let Some([a, b, c, d]) = hole {
        scene.draw(
            Shape::Path(Path::open([b, a, d, c])),
            LineType::ContinuousWide,
            Role::Ring,
        );
    }
    thread(ring, options, scene);
}

/// Root of the thread as a narrow line, and the wide line that ends the full thread (ISO 6410-1).
fn thread(ring: &ResolvedRing, options: &SectionOptions, scene: &mut Scene) {
    let sizes = &ring.sizes;
    let crest = ring.thread_minor / 2.0;
    let root = (ring.thread_major / 2.0).max(crest + options.least_thread_gap_mm);
    let begin = -sizes.seat_height;
    let end = if ring.thread_runs_through {
        sizes.spigot_length
    } else {
        begin + sizes.thread_length.min(sizes.lip_face_depth)
    };
    let line = |a: Point, b: Point| Shape::Path(Path::line(a, b));
    scene.draw(
        line(Point { x: begin, y: root }, Point { x: end, y: root }),
        LineType::ContinuousNarrow,
        Role::Ring,
    );
}

/// Circles of the inside seen edge-on behind the cut: from every corner of the bore down to the axis.
fn edges_behind(parts: &Parts, scene: &mut Scene) {
    let mut stations: Vec<Point> = Vec::new();
    for (segment, feature) in parts.between_lugs.pieces() {
        if is_inside(feature) {
            stations.extend([segment.a, segment.b]);
        }
    }
    // At one station the smallest radius hides nothing, the larger ones lie behind the same line.
    stations.sort_by(|a, b| a.x.total_cmp(&b.x).then(b.y.total_cmp(&a.y)));
    stations.dedup_by(|later, kept| (later.x - kept.x).abs() < 1e-6);
    for point in stations {
        scene.draw(
            Shape::Path(Path::line(point, Point { x: point.x, y: 0.0 })),
            LineType::ContinuousWide,
            Role::Ring,
        );
    }
}

const fn is_inside(feature: Feature) -> bool {
    match feature {
        Feature::RearBore
        | Feature::LipBore
        | Feature::LipFace
        | Feature::AnnulusFloor
        | Feature::AnnulusSide
        | Feature::ReliefEnd
        | Feature::ReliefFloor
        | Feature::ReliefStart
        | Feature::Thread
        | Feature::ThreadChamfer => true,
        Feature::Seat
        | Feature::BossSide
        | Feature::CounterboreSide
        | Feature::PlateFront
        | Feature::Rim
        | Feature::FlangeRearFace
        | Feature::GrooveRoot
        | Feature::LugFront
        | Feature::LugTip
        | Feature::LugLeadIn
        | Feature::LugRear
        | Feature::Nose
        | Feature::NoseFace => false,
    }
}

/// The picking number of a feature: its place in the list of features.
#[must_use]
pub const fn tag_of(feature: Feature) -> u32 {
    // A field-less enum: its discriminant is its place.
    feature as u32
}
