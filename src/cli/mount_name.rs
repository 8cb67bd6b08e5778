//! Finding a mount by its name, or by a part of the name that fits no other.

use thiserror::Error;

/// How many names a message lists.
const LISTED: usize = 8;

/// Why no mount was found.
#[derive(Debug, Error, PartialEq, Eq)]
pub enum NameError {
    /// No name has it.
    #[error(
        "no {kind} has \"{wanted}\" in its name; near it:\n{}\n`flangewright mounts` lists them all",
        list(.near)
    )]
    Unknown {
        /// Lens mount or body.
        kind: &'static str,
        /// What was asked for.
        wanted: String,
        /// Names that resemble it, nearest first.
        near: Vec<String>,
    },
    /// Several names have it.
    #[error("\"{wanted}\" fits more than one {kind}; give more of the name:\n{}", list(.fits))]
    Ambiguous {
        /// Lens mount or body.
        kind: &'static str,
        /// What was asked for.
        wanted: String,
        /// The names that have it.
        fits: Vec<String>,
    },
}

fn list(names: &[String]) -> String {
    let mut lines: Vec<String> = names
        .iter()
        .take(LISTED)
        .map(|name| format!("  {name}"))
        .collect();
    if names.len() > LISTED {
        lines.push(format!("  and {} more", names.len() - LISTED));
    }
    lines.join("\n")
}

/// The one of `mounts` whose name is `wanted`, or has `wanted` as a part that no other name has. Case and
/// blanks do not count.
///
/// # Errors
/// [`NameError`] where no name or more than one fits; it lists names.
pub fn find<'a, T>(
    kind: &'static str,
    wanted: &str,
    mounts: &'a [T],
    name: impl Fn(&T) -> &str,
) -> Result<&'a T, NameError> {
    if let Some(exact) = mounts.iter().find(|mount| name(mount) == wanted) {
        return Ok(exact);
    }
    let part = plain(wanted);
    let fits: Vec<&T> = mounts
        .iter()
        .filter(|mount| plain(name(mount)).contains(&part))
        .collect();
    let names = |mounts: &[&T]| mounts.iter().map(|mount| name(mount).to_owned()).collect();
    match fits.as_slice() {
        [only] => Ok(only),
        [] => {
            let mut near: Vec<&T> = mounts.iter().collect();
            // A stable sort: equally near ones stay in the order of the library.
            near.sort_by_key(|mount| std::cmp::Reverse(shared_pairs(&part, &plain(name(mount)))));
            near.truncate(LISTED);
            Err(NameError::Unknown {
                kind,
                wanted: wanted.to_owned(),
                near: names(&near),
            })
        }
        several => Err(NameError::Ambiguous {
            kind,
            wanted: wanted.to_owned(),
            fits: names(several),
        }),
    }
}

fn plain(name: &str) -> String {
    let small = name.to_lowercase();
    small.chars().filter(|sign| !sign.is_whitespace()).collect()
}

/// How many neighbouring pairs of letters of `a` stand somewhere in `b`.
fn shared_pairs(a: &str, b: &str) -> usize {
    let letters: Vec<char> = a.chars().collect();
    letters
        .windows(2)
        .filter(|pair| b.contains(&pair.iter().collect::<String>()))
        .count()
}

#[cfg(test)]
mod tests {
    use super::*;

    const NAMES: [&str; 3] = [
        "M42x1, register 45.46",
        "M42x1, register 12",
        "M39x1, register 28.8",
    ];

    fn find_name(wanted: &str) -> Result<&'static str, NameError> {
        find("lens mount", wanted, &NAMES, |name| name).copied()
    }

    #[test]
    fn a_whole_name_or_a_part_of_one_only() {
        assert_eq!(find_name("M42x1, register 12"), Ok(NAMES[1]));
        assert_eq!(find_name("m39 x 1"), Ok(NAMES[2]));
        assert_eq!(find_name("45.46"), Ok(NAMES[0]));
    }

    #[test]
    fn more_than_one_is_asked_back_and_none_is_answered_with_near_ones() {
        let both = find_name("M42x1").unwrap_err().to_string();
        assert!(both.contains(NAMES[0]) && both.contains(NAMES[1]) && !both.contains(NAMES[2]));
        let Err(NameError::Unknown { near, .. }) = find_name("M39x7") else {
            panic!("found")
        };
        assert_eq!(near[0], NAMES[2]);
        assert!(matches!(find_name(""), Err(NameError::Ambiguous { .. })));
    }
}
