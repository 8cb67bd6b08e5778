//! `index-mark`: where the marks of lens and ring come to rest, and what to do about it.

use super::aspects::worst_aspect;
use super::context::{Context, NotJudged};
use super::finding::{Finding, FindingKey, Place, Remedy, Severity};
use super::judge::{Bounds, at_most};
use super::two_piece;
use crate::document::{FieldRef, LORE, Pieces, RingKey, Term, Working};
use crate::mount::{BodyField, Unit, show_number};
use crate::optics::farthest_sharp;
use crate::ring::{KnownBy, Rest, WaysOut, clockwise_deg_per_mm, rest_of, ways_out, wrapped_deg};

pub(super) const KEY: FindingKey = FindingKey::IndexMark;
const SOURCE: &str = "one turn of the lens for each pitch of its thread";
/// Half a turn: a mark is never further off, so it is never a clash.
const NEVER_DEG: f64 = 180.0;
/// What a careful skim takes off, mm.
const HUNDREDTH_MM: f64 = 0.01;

/// Judges the ring's mark against the body's, the lens's mark in the locked ring, and the parts of a two-piece ring.
///
/// # Errors
/// [`NotJudged`] while the body's index is unknown and nothing else can be said.
pub fn check(cx: &Context) -> Result<Finding, NotJudged> {
    let mut aspects = Vec::new();
    match cx.design.ring.pieces {
        Pieces::One => aspects.push(Ok(lens_mark(cx))),
        Pieces::Two {
            clamp_wall_mm,
            screw_diameter_mm,
            screw_count,
        } => {
            let clamp = two_piece::Clamp {
                wall_mm: clamp_wall_mm,
                screw_mm: screw_diameter_mm,
                count: screw_count,
            };
            aspects.push(Ok(insert_mark()));
            aspects.extend(clamp.judged(cx).into_iter().map(Ok));
        }
    }
    aspects.push(ring_mark(cx));
    worst_aspect(KEY, aspects)
}

fn bounds(cx: &Context) -> Bounds {
    Bounds {
        clash: NEVER_DEG,
        caution: cx.limits().index_caution,
        scale: NEVER_DEG,
    }
}

fn ring_mark(cx: &Context) -> Result<Finding, NotJudged> {
    let index = cx.body(BodyField::IndexAngle)?;
    let home = index.value();
    let off = (cx.size(RingKey::IndexMarkAngle) - index)
        .apply("off by", |angle| wrapped_deg(angle).abs());
    let working = Working::new("ring's mark off the body's, locked", off, Unit::Deg, LORE);
    Ok(at_most(KEY, working, bounds(cx))
        .at(Place::Field(FieldRef::Ring(RingKey::IndexMarkAngle)))
        .cured_by(Remedy::dimension(RingKey::IndexMarkAngle, home)))
}

fn insert_mark() -> Finding {
    Finding::said(
        KEY,
        Severity::Ok,
        "two pieces: the insert is turned until lens and ring agree, then clamped; scribe a line across both",
    )
    .at(Place::Field(FieldRef::Pieces))
}

fn lens_mark(cx: &Context) -> Finding {
    let Some(rest) = rest_of(cx.design, cx.ring) else {
        return unknown(cx);
    };
    let mark = Term::named("lens's mark, locked", rest.mark_deg, Unit::Deg);
    let wanted = Term::field(FieldRef::Ring(RingKey::IndexMarkAngle), rest.wanted_deg);
    let off = (mark - wanted).apply("off by", |angle| wrapped_deg(angle).abs());
    let working = Working::new("lens's mark off the ring's", off, Unit::Deg, SOURCE);
    let finding = at_most(KEY, working, bounds(cx));
    let ways = ways_out(rest.off_deg(), &cx.ring.thread);
    finding
        .saying(told(cx, &rest))
        .at(Place::Field(FieldRef::Clocking))
        .cured_by(Remedy::words(in_words(cx, &ways)))
}

/// Nobody knows: only which way it would turn, and by how much.
fn unknown(cx: &Context) -> Finding {
    let message = format!(
        "where the lens's mark comes to rest is not known before a trial fit; {}",
        per_hundredth(cx)
    );
    let mut finding =
        Finding::said(KEY, Severity::Note, message).at(Place::Field(FieldRef::Clocking));
    finding.remedy = Some(Remedy::words(FieldRef::Clocking.how()));
    finding
}

fn per_hundredth(cx: &Context) -> String {
    let turn = clockwise_deg_per_mm(&cx.ring.thread) * HUNDREDTH_MM;
    format!(
        "it turns {} {} (seen from the lens side) for every {} off the seat",
        Unit::Deg.show(turn.abs()),
        way(turn),
        Unit::Mm.show(HUNDREDTH_MM)
    )
}

const fn way(clockwise: f64) -> &'static str {
    if clockwise < 0.0 {
        "anticlockwise"
    } else {
        "clockwise"
    }
}

fn told(cx: &Context, rest: &Rest) -> String {
    let by = match rest.known_by {
        KnownBy::TrialFit => "in the trial fit",
        KnownBy::ThreadStarts => "by the thread starts",
    };
    let off = rest.off_deg();
    format!(
        "{by} the lens's mark comes to rest at {} on the clock face, {} {} of the ring's mark (seen from the lens side); {}",
        Unit::Deg.show(rest.mark_deg),
        Unit::Deg.show(off.abs()),
        way(off),
        per_hundredth(cx)
    )
}

fn in_words(cx: &Context, ways: &WaysOut) -> String {
    let shift = ways.thread_toward_sensor_mm;
    let toward = if shift < 0.0 { "lens" } else { "sensor" };
    let lugs = ways.lugs_clockwise_deg;
    let from_behind = way(-lugs);
    format!(
        "start the thread {} nearer the {toward} (or any whole pitch of {} from there); or mill lugs and lock hole {} further {} seen from the lens side, {from_behind} from the body side; or take {} off the seat{}; or lay {} under the lens{}; or make the ring in two pieces",
        Unit::Mm.show(shift.abs()),
        Unit::Mm.show(cx.ring.thread.pitch_mm()),
        Unit::Deg.show(lugs.abs()),
        way(lugs),
        Unit::Mm.show(ways.skim_mm),
        price_of_a_skim(cx, ways.skim_mm),
        Unit::Mm.show(ways.shim_mm),
        price_of_a_shim(cx, ways.shim_mm)
    )
}

/// Thin lens, scale at infinity: `f² / s + f`.
fn price_of_a_skim(cx: &Context, skim_mm: f64) -> String {
    sharp_at(cx, skim_mm).map_or_else(
        || ": the lens then focuses as far past infinity".to_owned(),
        |metres| format!(": infinity is then sharp where the scale reads {metres}"),
    )
}

fn price_of_a_shim(cx: &Context, shim_mm: f64) -> String {
    sharp_at(cx, shim_mm).map_or_else(
        || ": infinity is then lost".to_owned(),
        |metres| format!(": nothing beyond {metres} is then sharp"),
    )
}

fn sharp_at(cx: &Context, error_mm: f64) -> Option<String> {
    let focal = cx.design.lens.focal_length.number()?;
    let distance = farthest_sharp(focal, error_mm)?;
    Some(format!("{} m", show_number(distance / 1000.0, 2)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::fixture::{cured, design, judged, with};
    use crate::document::Design;
    use crate::mount::Interface;

    fn read(trial_deg: f64) -> Design {
        let mut design = design();
        design.ring.clocking.trial_reading_deg = Some(trial_deg);
        design
    }

    /// Pitch 1 mm: 3.6 degrees for a hundredth, clockwise for a right-hand thread.
    #[test]
    fn an_unknown_start_says_which_way_and_how_much() {
        let finding = judged(check, &design());
        assert_eq!(finding.severity, Severity::Note, "{}", finding.message);
        assert!(
            finding.message.contains("3.60° clockwise"),
            "{}",
            finding.message
        );
        let mut left = design();
        let thread = left.lens.thread.value().unwrap().with_left_hand(true);
        left.lens.thread = Interface::measured(thread, "by eye");
        assert!(judged(check, &left).message.contains("3.60° anticlockwise"));
    }

    #[test]
    fn a_mark_near_twelve_passes() {
        for trial in [0.0, 4.9, 356.0, -3.0] {
            let finding = judged(check, &read(trial));
            assert_eq!(finding.severity, Severity::Ok, "{}", finding.message);
        }
    }

    /// 36° off on 1 mm: shift 0.1, skim 0.9, shim 0.1; f 50: 50²/0.9 + 50 = 2.83 m, 50²/0.1 + 50 = 25.05 m.
    #[test]
    fn the_ways_out_carry_numbers_and_their_price() {
        let finding = judged(check, &read(36.0));
        assert_eq!(finding.severity, Severity::Caution);
        assert!(
            finding.message.contains("36.00° clockwise"),
            "{}",
            finding.message
        );
        let text = finding.remedy.unwrap().text;
        for part in [
            "start the thread 0.10 mm nearer the sensor",
            "36.00° further clockwise seen from the lens side, anticlockwise from the body side",
            "take 0.90 mm off the seat: infinity is then sharp where the scale reads 2.83 m",
            "lay 0.10 mm under the lens: nothing beyond 25.05 m",
        ] {
            assert!(text.contains(part), "{part} is not in: {text}");
        }
    }

    /// Groove at the flange plane at 360 x 1.46 = 525.6 comes to the seat at 0.
    #[test]
    fn thread_starts_tell_where_it_rests() {
        let mut design = design();
        design.ring.clocking.thread_start_deg = Some(525.6 - 360.0 + 90.0);
        design.ring.clocking.lens_start_deg = Some(90.0);
        let finding = judged(check, &design);
        assert_eq!(finding.severity, Severity::Ok, "{}", finding.message);
        assert!(finding.message.starts_with("by the thread starts"));
    }

    #[test]
    fn a_ring_mark_off_the_bodys_is_set_right() {
        let mut design = with(&[(RingKey::IndexMarkAngle, 20.0)]);
        design.ring.clocking.trial_reading_deg = Some(20.0);
        let finding = judged(check, &design);
        assert_eq!(finding.severity, Severity::Caution, "{}", finding.message);
        let mut cured = cured(&design, &finding);
        cured.ring.clocking.trial_reading_deg = Some(0.0);
        assert_eq!(judged(check, &cured).severity, Severity::Ok);
    }
}
