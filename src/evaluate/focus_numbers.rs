//! The numbers of focus for one design, each with its working: a further pure function on an evaluation.

use super::Evaluation;
use super::light::once_each;
use crate::document::{Design, FieldRef, LORE, LimitKey, RingKey, Term, Working};
use crate::mount::{BodyField, LensField, Unit, show_number};
use crate::optics::{
    FocusScale, blur_circle_mm, circle_by_pixels, circle_of_confusion, corner_height,
    diffraction_floor, extension_mm, greatest_parallelism_mm, half_depth_of_focus,
    image_circle_radius_mm, object_distance_mm,
};

const REGISTER: &str = "from the definition of the register";
const THIN_LENS: &str =
    "thin-lens equation, lens focused by moving the whole of it; worked by hand";
const GEOMETRY: &str = "geometric optics, similar triangles";
/// A focus error under this is nothing that anybody can see or measure, mm.
const UNSEEN_MM: f64 = 5e-4;

/// Nobody sets a focusing ring closer than this, mm.
const SAME_DISTANCE_MM: f64 = 0.1;

/// One number of focus.
#[derive(Clone, Debug)]
pub struct FocusNumber {
    /// Its name.
    pub label: &'static str,
    /// The working, or the fields that are unknown.
    pub working: Result<Working, Vec<FieldRef>>,
    /// Words that say more than the number would, such as that infinity stands at its mark.
    pub reads: Option<&'static str>,
    /// What it means for the picture.
    pub says: String,
}

/// By how much the ring as drawn holds the lens too far from the sensor, mm; negative too near.
///
/// # Errors
/// The registers and the seat height, where they are unknown.
pub fn focus_error(design: &Design, evaluation: &Evaluation) -> Result<Term, Vec<FieldRef>> {
    let height = FieldRef::Ring(RingKey::SeatHeight);
    let seat = evaluation
        .derivation
        .dimension(RingKey::SeatHeight)
        .and_then(|state| state.value)
        .map(|value| Term::field(height, value))
        .ok_or_else(|| vec![height]);
    let [seat, body, lens] = all([
        seat,
        body(design, BodyField::Register),
        lens(design, LensField::Register),
    ])?;
    let mut error = seat + body - lens;
    let finish = &design.ring.finish;
    if finish.build_up_mm > 0.0 && !finish.faces_masked {
        error = error + 2.0 * Term::field(FieldRef::Finish, finish.build_up_mm);
    }
    Ok(error)
}

/// Every number of focus; `scale_mm` is the mark of the distance scale that is looked at, mm from the image.
#[must_use]
pub fn focus_numbers(design: &Design, evaluation: &Evaluation, scale_mm: f64) -> Vec<FocusNumber> {
    let error = focus_error(design, evaluation);
    let depth = half_depth_of_focus(design);
    vec![
        ring_off(&error),
        FocusNumber {
            label: "Circle of confusion, by the format",
            working: circle_of_confusion(design).map(|term| {
                Working::new(
                    "circle of confusion",
                    term,
                    Unit::Mm,
                    "format diagonal over a printed divisor",
                )
                .assuming("the picture is looked at as a whole, from about its own diagonal")
            }),
            reads: None,
            says: "a larger blur is seen in the finished picture".to_owned(),
        },
        FocusNumber {
            label: "Circle of two pixels",
            working: circle_by_pixels(design).map(|term| {
                Working::new("circle of two pixels", term, Unit::Mm, LORE)
                    .assuming("the picture is looked at pixel by pixel")
            }),
            reads: None,
            says: "a larger blur is seen at full enlargement".to_owned(),
        },
        FocusNumber {
            label: "Half depth of focus, widest stop",
            working: depth.clone().map(|term| {
                Working::new(
                    "half depth of focus",
                    term,
                    Unit::Mm,
                    "N c at infinity, geometric optics",
                )
                .assuming("the pupil is evenly lit and the lens has no focus shift")
            }),
            reads: None,
            says: "infinity stays acceptably sharp while the ring is off by less, either way"
                .to_owned(),
        },
        FocusNumber {
            label: "Defocus that diffraction hides",
            working: diffraction_floor(design).map(|term| {
                Working::new(
                    "defocus hidden",
                    term,
                    Unit::Mm,
                    "2 λ N², a quarter of a wave (Rayleigh; from memory)",
                )
            }),
            reads: None,
            says: "asking the ring for less than this is pointless".to_owned(),
        },
        blur(design, &error),
        infinity(design, &error),
        near(design, &error, scale_mm),
        parallelism(design, evaluation, &error, depth),
        image_circle(design),
    ]
}

fn ring_off(error: &Result<Term, Vec<FieldRef>>) -> FocusNumber {
    let says = match error.as_ref().map(Term::value) {
        Ok(error) if error.abs() < UNSEEN_MM => "the ring is as thick as the registers ask",
        Ok(error) if error > 0.0 => "too thick: the lens stands too far from the sensor",
        Ok(_) => "too thin: the lens focuses past infinity",
        Err(_) => "",
    };
    FocusNumber {
        label: "Ring too thick by",
        working: error.clone().map(|term| {
            Working::new("ring too thick by", term, Unit::Mm, REGISTER)
                .assuming("both registers are those of these very parts")
        }),
        reads: None,
        says: says.to_owned(),
    }
}

fn blur(design: &Design, error: &Result<Term, Vec<FieldRef>>) -> FocusNumber {
    let working = all([error.clone(), lens(design, LensField::FNumber)]).map(|[error, stop]| {
        let size = error.apply("size of", f64::abs);
        let blur = 1000.0 * blur_circle_mm(size, stop);
        Working::new("blur at infinity", blur, Unit::Um, GEOMETRY).assuming(
            "the lens stands at its infinity stop, wide open, and draws a point as a point",
        )
    });
    FocusNumber {
        label: "Blur of a star, lens at its infinity mark",
        working,
        reads: None,
        says: "diameter on the sensor; compare with the two circles above".to_owned(),
    }
}

fn infinity(design: &Design, error: &Result<Term, Vec<FieldRef>>) -> FocusNumber {
    let known = all([error.clone(), lens(design, LensField::FocalLength)]);
    let off = known.as_ref().map(|[error, _]| error.value());
    let number = |label, result: &'static str, says: String| FocusNumber {
        label,
        working: known.clone().map(|[error, focal]| {
            let size = error.apply("size of", f64::abs);
            Working::new(result, object_distance_mm(focal, size), Unit::Mm, THIN_LENS)
                .assuming("the distance is counted from the front principal plane")
        }),
        reads: None,
        says,
    };
    match off {
        Ok(off) if off.abs() < UNSEEN_MM => FocusNumber {
            label: "Infinity mark",
            working: known.map(|[error, _]| {
                Working::new("ring too thick by", error, Unit::Mm, REGISTER)
            }),
            reads: Some("at its mark"),
            says: "infinity is sharp at the infinity mark".to_owned(),
        },
        Ok(off) if off > 0.0 => number(
            "Farthest sharp distance",
            "farthest sharp distance",
            "infinity is not reached: nothing farther than this can be made exactly sharp".to_owned(),
        ),
        Ok(_) => number(
            "Infinity mark",
            "reading of the scale",
            "infinity is sharp where the scale reads this; turned to its stop the lens focuses past it".to_owned(),
        ),
        Err(_) => number("Infinity mark", "reading of the scale", String::new()),
    }
}

fn near(design: &Design, error: &Result<Term, Vec<FieldRef>>, scale_mm: f64) -> FocusNumber {
    let label = "Where that mark of the scale is really sharp";
    let known = all([error.clone(), lens(design, LensField::FocalLength)]);
    let [error, focal] = match known {
        Ok(known) => known,
        Err(lacks) => {
            return FocusNumber {
                label,
                working: Err(lacks),
                reads: None,
                says: String::new(),
            };
        }
    };
    let scale = FocusScale::thin(focal.value());
    let Some(object) = scale.from_principal_plane_mm(scale_mm) else {
        let least = metres(scale.least_distance_mm());
        return FocusNumber {
            label,
            working: Err(Vec::new()),
            reads: Some("out of reach"),
            says: format!(
                "no lens of this focal length focuses so near: give a mark from {least} on"
            ),
        };
    };
    let mark = Term::named("mark, from the front principal plane", object, Unit::Mm);
    let out = extension_mm(focal.clone(), mark) + error;
    if out.value() <= 0.0 {
        return FocusNumber {
            label,
            working: Ok(Working::new(
                "extension beyond infinity",
                out,
                Unit::Mm,
                THIN_LENS,
            )),
            reads: Some("infinity"),
            says: "the lens stands at infinity or past it".to_owned(),
        };
    }
    let sharp = object_distance_mm(focal.clone(), out.clone()) + focal + out;
    let moved = sharp.value() - scale_mm;
    let says = if moved.abs() < SAME_DISTANCE_MM {
        "just there".to_owned()
    } else {
        let side = if moved < 0.0 { "nearer" } else { "farther" };
        format!("{} {side} than the scale says", Unit::Mm.show(moved.abs()))
    };
    FocusNumber {
        label,
        working: Ok(
            Working::new("sharp at, from the image", sharp, Unit::Mm, THIN_LENS)
                .assuming("the whole lens moves to focus; one that focuses inside differs"),
        ),
        reads: None,
        says,
    }
}

fn parallelism(
    design: &Design,
    evaluation: &Evaluation,
    error: &Result<Term, Vec<FieldRef>>,
    depth: Result<Term, Vec<FieldRef>>,
) -> FocusNumber {
    let field = FieldRef::Ring(RingKey::SeatDiameter);
    let seat = evaluation
        .derivation
        .dimension(RingKey::SeatDiameter)
        .and_then(|state| state.value)
        .map(|value| Term::field(field, value))
        .ok_or_else(|| vec![field]);
    let known = all([
        seat,
        lens(design, LensField::ShoulderDiameter),
        depth,
        error.clone(),
        corner_height(&design.body),
    ]);
    FocusNumber {
        label: "Seat out of parallel, at most",
        working: known.map(|[seat, shoulder, depth, error, corner]| {
            let size = error.apply("size of", f64::abs);
            let most = greatest_parallelism_mm(seat.min(shoulder), depth, size, corner, 0.0.into());
            Working::new("greatest error of parallelism", most, Unit::Mm, "worked by hand, checked by a trace of rays")
                .assuming("the body's own flange stands square to the sensor")
        }),
        reads: None,
        says: "over the seat's diameter, for corners within the depth of focus; negative: the focus error takes it all".to_owned(),
    }
}

fn image_circle(design: &Design) -> FocusNumber {
    let decentre = Term::field(
        FieldRef::Limit(LimitKey::SpigotClearance),
        design.limits.spigot_clearance,
    );
    FocusNumber {
        label: "Image circle wanted",
        working: corner_height(&design.body).map(|corner| {
            let circle = 2.0 * image_circle_radius_mm(corner, decentre, 0.0.into());
            Working::new(
                "diameter of the image circle",
                circle,
                Unit::Mm,
                "worked by hand",
            )
            .assuming("the ring lies off centre by its whole play in the throat, and nothing more")
        }),
        reads: None,
        says: "the lens must draw at least so wide to cover the corners".to_owned(),
    }
}

/// A distance in metres, for reading.
fn metres(distance_mm: f64) -> String {
    format!("{} m", show_number(distance_mm / 1000.0, 3))
}

fn lens(design: &Design, key: LensField) -> Result<Term, Vec<FieldRef>> {
    let field = FieldRef::Lens(key);
    let value = design.lens.field(key).number();
    value
        .map(|value| Term::field(field, value))
        .ok_or_else(|| vec![field])
}

fn body(design: &Design, key: BodyField) -> Result<Term, Vec<FieldRef>> {
    let field = FieldRef::Body(key);
    let value = design.body.field(key).number();
    value
        .map(|value| Term::field(field, value))
        .ok_or_else(|| vec![field])
}

/// All terms, or everything that any of them lacks, each once.
fn all<const N: usize>(
    terms: [Result<Term, Vec<FieldRef>>; N],
) -> Result<[Term; N], Vec<FieldRef>> {
    let lacks: Vec<FieldRef> = terms
        .iter()
        .filter_map(|term| term.as_ref().err())
        .flatten()
        .copied()
        .collect();
    let known: Vec<Term> = terms.into_iter().filter_map(Result::ok).collect();
    known.try_into().map_err(|_| once_each(lacks))
}

#[cfg(test)]
#[path = "focus_numbers_tests.rs"]
mod tests;
