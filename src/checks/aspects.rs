//! Several questions of one check, each of which may lack values of its own.

use super::context::NotJudged;
use super::finding::{Finding, FindingKey};
use super::judge::worst_of;
use crate::document::FieldRef;

/// Both values, or everything that either of them lacks.
///
/// # Errors
/// [`NotJudged`] with the fields of both.
pub fn both<A, B>(a: Result<A, NotJudged>, b: Result<B, NotJudged>) -> Result<(A, B), NotJudged> {
    match (a, b) {
        (Ok(a), Ok(b)) => Ok((a, b)),
        (Err(NotJudged(mut first)), Err(NotJudged(second))) => {
            first.extend(second);
            Err(NotJudged(first))
        }
        (Err(missing), Ok(_)) | (Ok(_), Err(missing)) => Err(missing),
    }
}

/// The worst of several aspects; what some of them lack is one note that names it.
///
/// # Errors
/// [`NotJudged`] with every field that is missing, when no aspect could be judged.
pub fn worst_aspect(
    key: FindingKey,
    aspects: Vec<Result<Finding, NotJudged>>,
) -> Result<Finding, NotJudged> {
    let mut judged = Vec::with_capacity(aspects.len() + 1);
    let mut missing: Vec<FieldRef> = Vec::new();
    for aspect in aspects {
        match aspect {
            Ok(finding) => judged.push(finding),
            Err(NotJudged(fields)) => {
                for field in fields {
                    if !missing.contains(&field) {
                        missing.push(field);
                    }
                }
            }
        }
    }
    if judged.is_empty() {
        return Err(NotJudged(missing));
    }
    if !missing.is_empty() {
        judged.push(Finding::not_judged(key, &missing));
    }
    worst_of(judged)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::Severity;

    const KEY: FindingKey = FindingKey::Throat;

    #[test]
    fn both_names_everything_that_is_missing() {
        let lacking = |field: FieldRef| -> Result<f64, NotJudged> { Err(field.into()) };
        assert_eq!(
            both(lacking(FieldRef::Ears), lacking(FieldRef::Stop)),
            Err(NotJudged(vec![FieldRef::Ears, FieldRef::Stop]))
        );
        assert_eq!(both(Ok::<_, NotJudged>(1), Ok(2)), Ok((1, 2)));
    }

    #[test]
    fn a_judged_aspect_is_kept_beside_one_that_lacks_a_value() {
        let clash = Finding::said(KEY, Severity::Clash, "too wide");
        let worst = worst_aspect(KEY, vec![Err(FieldRef::Ears.into()), Ok(clash)]).unwrap();
        assert_eq!(
            (worst.severity, worst.message.as_str()),
            (Severity::Clash, "too wide")
        );
        let well = Finding::said(KEY, Severity::Ok, "fits");
        let note = worst_aspect(KEY, vec![Ok(well), Err(FieldRef::Ears.into())]).unwrap();
        assert_eq!(note.severity, Severity::Note);
        let nothing = worst_aspect(
            KEY,
            vec![Err(FieldRef::Ears.into()), Err(FieldRef::Ears.into())],
        );
        assert_eq!(nothing.unwrap_err(), NotJudged(vec![FieldRef::Ears]));
    }
}
