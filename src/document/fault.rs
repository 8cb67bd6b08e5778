//! Values that no design may have: each named with its field, the value and what is allowed.

use thiserror::Error;

use super::inspected_fault::{inspected_faults, row_reading_faults};
use super::ring_fault::{limit_faults, ring_faults};
use super::sheet_fault::sheet_faults;
use super::{Design, FieldRef};
use crate::geometry::sector::disjoint_degrees;
use crate::mount::{BarrelStep, Body, BodyField, Interface, Lens, LensField, Origin, Sector, Unit};

/// A value that is refused.
#[derive(Clone, Debug, Error, PartialEq)]
#[error("{field}: {value} is refused; {allowed}")]
pub struct Fault {
    /// The field, by its label.
    pub field: String,
    /// The value, as text.
    pub value: String,
    /// What is allowed.
    pub allowed: String,
}

impl Fault {
    pub(super) fn new(
        field: impl Into<String>,
        value: impl Into<String>,
        allowed: impl Into<String>,
    ) -> Self {
        Self {
            field: field.into(),
            value: value.into(),
            allowed: allowed.into(),
        }
    }
}

/// Whether `value` may stand in a field of `range`.
///
/// # Errors
/// The fault, naming the field, the value and the range.
pub fn check_range(field: &str, value: f64, unit: Unit, range: (f64, f64)) -> Result<(), Fault> {
    // NaN fails the comparison, as it should.
    if value >= range.0 && value <= range.1 {
        return Ok(());
    }
    let shown = if value.abs() >= 1e6 {
        format!("{value:e}")
    } else {
        unit.show(value)
    };
    Err(Fault::new(
        field,
        shown,
        format!(
            "allowed is {} to {}",
            unit.show(range.0),
            unit.show(range.1)
        ),
    ))
}

/// Every fault of a design; empty when it may be worked with.
#[must_use]
pub fn faults_of(design: &Design) -> Vec<Fault> {
    let mut faults = Vec::new();
    faults.extend(faults_of_lens(&design.lens));
    faults.extend(faults_of_body(&design.body));
    ring_faults(design, &mut faults);
    limit_faults(design, &mut faults);
    sheet_faults(design, &mut faults);
    inspected_faults(design, &mut faults);
    faults
}

pub(super) fn range(
    faults: &mut Vec<Fault>,
    field: &str,
    value: f64,
    unit: Unit,
    allowed: (f64, f64),
) {
    faults.extend(check_range(field, value, unit, allowed).err());
}

/// Every fault of a lens.
#[must_use]
pub fn faults_of_lens(lens: &Lens) -> Vec<Fault> {
    let mut faults = Vec::new();
    for key in LensField::ALL {
        scalar(
            &mut faults,
            &FieldRef::Lens(*key).long_label(),
            lens.field(*key),
            key.unit(),
            key.range(),
        );
    }
    for (barrel, name) in [
        (&lens.barrel_at_infinity, "lens rear barrel at infinity"),
        (
            &lens.barrel_at_close_focus,
            "lens rear barrel at close focus",
        ),
    ] {
        barrel_faults(&mut faults, barrel.value().map_or(&[], Vec::as_slice), name);
    }
    row_reading_faults(&mut faults, "lens", &lens.row_readings, true);
    let number = |key: LensField| lens.field(key).number();
    let ordered = [
        (LensField::PinBottom, LensField::PinStoppedDown),
        (LensField::PinStoppedDown, LensField::PinFree),
        (LensField::ApertureRingInner, LensField::ApertureRingOuter),
    ];
    for (small, large) in ordered {
        in_order(
            &mut faults,
            (FieldRef::Lens(small), number(small)),
            (FieldRef::Lens(large), number(large)),
        );
    }
    faults
}

/// Every fault of a body.
#[must_use]
pub fn faults_of_body(body: &Body) -> Vec<Fault> {
    let mut faults = Vec::new();
    for key in BodyField::ALL {
        scalar(
            &mut faults,
            &FieldRef::Body(*key).long_label(),
            body.field(*key),
            key.unit(),
            key.range(),
        );
    }
    row_reading_faults(&mut faults, "body", &body.row_readings, false);
    let number = |key: BodyField| body.field(key).number();
    let ordered = [
        (BodyField::Throat, BodyField::SlotDiameter),
        (BodyField::FlangeInner, BodyField::FlangeOuter),
    ];
    for (small, large) in ordered {
        in_order(
            &mut faults,
            (FieldRef::Body(small), number(small)),
            (FieldRef::Body(large), number(large)),
        );
    }
    if let Some(ears) = body.ears.value() {
        sector_faults(&mut faults, "body ears", "ear", ears);
    }
    for point in body.free_depth.value().into_iter().flatten() {
        range(
            &mut faults,
            "free depth, radius",
            point.radius_mm,
            Unit::Mm,
            (0.0, 200.0),
        );
        range(
            &mut faults,
            "free depth",
            point.depth_mm,
            Unit::Mm,
            (0.0, 400.0),
        );
    }
    for obstacle in body.obstacles.value().into_iter().flatten() {
        let name = format!("obstacle \"{}\"", obstacle.name);
        sector_faults(
            &mut faults,
            &name,
            "sector",
            std::slice::from_ref(&obstacle.sector),
        );
        range(
            &mut faults,
            &format!("{name}, inner radius"),
            obstacle.inner_radius_mm,
            Unit::Mm,
            (0.0, 500.0),
        );
        range(
            &mut faults,
            &format!("{name}, outer radius"),
            obstacle.outer_radius_mm,
            Unit::Mm,
            (0.0, 500.0),
        );
        range(
            &mut faults,
            &format!("{name}, from z"),
            obstacle.from_z_mm,
            Unit::Mm,
            (-400.0, 400.0),
        );
        range(
            &mut faults,
            &format!("{name}, to z"),
            obstacle.to_z_mm,
            Unit::Mm,
            (-400.0, 400.0),
        );
        if obstacle.outer_radius_mm <= obstacle.inner_radius_mm
            || obstacle.to_z_mm <= obstacle.from_z_mm
        {
            faults.push(Fault::new(
                name,
                "an empty space",
                "its outer radius must exceed the inner, and its end its beginning",
            ));
        }
    }
    faults
}

fn scalar(
    faults: &mut Vec<Fault>,
    field: &str,
    value: &Interface<f64>,
    unit: Unit,
    allowed: (f64, f64),
) {
    let Interface::Known(known) = value else {
        return;
    };
    range(faults, field, known.value, unit, allowed);
    range(
        faults,
        &format!("{field}, uncertainty"),
        known.uncertainty,
        unit,
        (0.0, allowed.1),
    );
    match &known.origin {
        Origin::Measured { readings, .. } => {
            for reading in readings {
                range(
                    faults,
                    &format!("{field}, reading"),
                    *reading,
                    unit,
                    allowed,
                );
            }
        }
        Origin::Published(citations) => {
            for citation in citations {
                range(
                    faults,
                    &format!("{field}, as printed"),
                    citation.says,
                    unit,
                    allowed,
                );
            }
        }
        Origin::Standard(_) | Origin::Assumed(_) => {}
    }
}

fn barrel_faults(faults: &mut Vec<Fault>, steps: &[BarrelStep], name: &str) {
    let mut before = 0.0;
    for step in steps {
        range(
            faults,
            &format!("{name}, diameter"),
            step.diameter_mm,
            Unit::Mm,
            (0.5, 300.0),
        );
        range(
            faults,
            &format!("{name}, depth"),
            step.depth_mm,
            Unit::Mm,
            (0.0, 300.0),
        );
        if step.depth_mm <= before {
            faults.push(Fault::new(
                name,
                Unit::Mm.show(step.depth_mm),
                "each step must end deeper than the step before it",
            ));
        }
        before = step.depth_mm;
    }
}

fn in_order(
    faults: &mut Vec<Fault>,
    small: (FieldRef, Option<f64>),
    large: (FieldRef, Option<f64>),
) {
    if let (Some(low), Some(high)) = (small.1, large.1)
        && low >= high
    {
        let allowed = format!(
            "it must be less than {} ({})",
            large.0.long_label(),
            large.0.unit().show(high)
        );
        faults.push(Fault::new(
            small.0.long_label(),
            small.0.unit().show(low),
            allowed,
        ));
    }
}

/// Faults of a list of sectors on one circle.
pub(super) fn sector_faults(faults: &mut Vec<Fault>, field: &str, one: &str, sectors: &[Sector]) {
    const MOST: usize = 72;
    if sectors.len() > MOST {
        faults.push(Fault::new(
            field,
            format!("{} of them", sectors.len()),
            format!("at most {MOST} are worked with"),
        ));
        return;
    }
    let before = faults.len();
    for (index, sector) in sectors.iter().enumerate() {
        range(
            faults,
            &format!("{field}, start of {one} {}", index + 1),
            sector.start_deg,
            Unit::Deg,
            (-720.0, 720.0),
        );
        range(
            faults,
            &format!("{field}, extent of {one} {}", index + 1),
            sector.extent_deg,
            Unit::Deg,
            (0.1, 360.0),
        );
    }
    if faults.len() > before {
        return;
    }
    let pairs: Vec<(f64, f64)> = sectors
        .iter()
        .map(|sector| (sector.start_deg, sector.extent_deg))
        .collect();
    if let Err((first, second)) = disjoint_degrees(&pairs) {
        faults.push(Fault::new(
            field,
            format!("{one} {} and {one} {}", first + 1, second + 1),
            "they overlap, or all together exceed 360°; each must end before the next begins",
        ));
    }
}
