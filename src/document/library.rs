//! The library of mounts: what is shipped, and the user's own beside it.

use serde::{Deserialize, Serialize};

use super::codec::{ReadError, read_ron};
use super::fault::{Fault, faults_of_body, faults_of_lens};
use crate::mount::{Body, Lens};

/// The shipped lens threads.
const LENSES: &str = include_str!("../../assets/mounts/lenses.ron");
/// The shipped bayonet bodies.
const BODIES: &str = include_str!("../../assets/mounts/bodies.ron");

/// Lenses and bodies to begin a design from, each with a name of its own.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Library {
    /// Lens mounts.
    pub lenses: Vec<Lens>,
    /// Bayonet bodies.
    pub bodies: Vec<Body>,
}

impl Library {
    /// Takes in the mounts of another list: one that has the name of a mount already here takes its place, any
    /// other is added behind, so that a user's own measured mount wins over a shipped one.
    pub fn take_in(&mut self, own: Self) {
        take_in(&mut self.lenses, own.lenses, |lens| &lens.name);
        take_in(&mut self.bodies, own.bodies, |body| &body.name);
    }

    /// Every value that no mount may have; empty when all may be worked with.
    #[must_use]
    pub fn faults(&self) -> Vec<Fault> {
        let mut faults = Vec::new();
        for lens in &self.lenses {
            faults.extend(named(&lens.name, faults_of_lens(lens)));
        }
        for body in &self.bodies {
            faults.extend(named(&body.name, faults_of_body(body)));
        }
        faults
    }
}

fn take_in<T>(here: &mut Vec<T>, own: Vec<T>, name: impl Fn(&T) -> &str) {
    for mount in own {
        match here
            .iter_mut()
            .find(|shipped| name(shipped) == name(&mount))
        {
            Some(shipped) => *shipped = mount,
            None => here.push(mount),
        }
    }
}

fn named(name: &str, faults: Vec<Fault>) -> impl Iterator<Item = Fault> {
    faults.into_iter().map(move |fault| Fault {
        field: format!("{name}: {}", fault.field),
        ..fault
    })
}

/// The shipped mounts.
///
/// # Errors
/// None in a whole program: a test reads the shipped lists.
pub fn library() -> Result<Library, ReadError> {
    Ok(Library {
        lenses: read_ron(LENSES)?,
        bodies: read_ron(BODIES)?,
    })
}

/// Reads a user's own list, such as `(lenses: [(name: "my 50")], bodies: [])`.
///
/// # Errors
/// As a design: too large, empty, not a list of mounts, or values that no mount may have, each named.
pub fn read_library(text: &str) -> Result<Library, ReadError> {
    let own: Library = read_ron(text)?;
    let faults = own.faults();
    if faults.is_empty() {
        Ok(own)
    } else {
        Err(ReadError::Faults(faults))
    }
}

#[cfg(test)]
mod tests {
    use std::collections::HashSet;

    use super::*;
    use crate::mount::{Interface, Presence, Standing};

    fn lens(name: &str) -> Lens {
        let all = library().unwrap();
        all.lenses
            .into_iter()
            .find(|lens| lens.name == name)
            .unwrap()
    }

    fn body(name: &str) -> Body {
        let all = library().unwrap();
        all.bodies
            .into_iter()
            .find(|body| body.name == name)
            .unwrap()
    }

    #[test]
    fn the_shipped_lists_are_whole_and_every_name_is_its_own() {
        let all = library().unwrap();
        assert_eq!(all.faults(), []);
        assert!(all.lenses.len() > 20 && all.bodies.len() > 20);
        let names: HashSet<&str> = all
            .lenses
            .iter()
            .map(|lens| lens.name.as_str())
            .chain(all.bodies.iter().map(|body| body.name.as_str()))
            .collect();
        assert_eq!(names.len(), all.lenses.len() + all.bodies.len());
    }

    /// The C interface: 1-32 UN, 0.690 in (ISO 10935 as public interface pages give it).
    #[test]
    fn the_c_interface_has_the_inch_figures() {
        let lens = lens("C interface (ISO 10935), 1-32 UN, register 17.526");
        assert!((lens.register.number().unwrap() - 0.690 * 25.4).abs() < 1e-9);
        assert_eq!(lens.register.standing(), Standing::Standard);
        let thread = lens.thread.value().unwrap();
        assert!((thread.nominal_mm() - 25.4).abs() < 1e-12);
        assert!((thread.pitch_mm() - 0.793_75).abs() < 1e-12);
        assert_eq!(lens.male_thread_length.number(), Some(4.0));
    }

    /// The 5 mm spacer between the two interfaces is on every public page that names both.
    #[test]
    fn the_short_interface_is_one_spacer_shorter_and_its_prints_disagree() {
        let long = lens("C interface (ISO 10935), 1-32 UN, register 17.526");
        let short = lens("CS interface, 1-32 UN, register 12.526");
        let spacer = long.register.number().unwrap() - short.register.number().unwrap();
        assert!((spacer - 5.0).abs() < 1e-9);
        assert_eq!(short.register.standing(), Standing::Disputed);
    }

    /// Two prints say 45.46, a page drawn from a GOST says 45.5.
    #[test]
    fn prints_that_disagree_are_marked() {
        assert_eq!(
            lens("M42x1, register 45.46").register.standing(),
            Standing::Disputed
        );
        assert_eq!(
            lens("39 x 26 tpi Whitworth, register 28.80")
                .register
                .standing(),
            Standing::Published
        );
        assert_eq!(
            body("bayonet 27.80, throat 44, 4 lugs").register.standing(),
            Standing::Disputed
        );
        assert_eq!(
            lens("M40x1, register 44").register.standing(),
            Standing::Assumed
        );
    }

    #[test]
    fn a_lens_thread_carries_no_class_and_a_name_no_other_register() {
        for lens in library().unwrap().lenses {
            let thread = lens.thread.value().unwrap();
            assert!(thread.class().is_none(), "{}", lens.name);
            match (lens.register.number(), lens.name.rsplit_once("register ")) {
                (Some(register), Some((_, told))) => {
                    assert_eq!(told.parse(), Ok(register), "{}", lens.name);
                }
                (None, None) => {}
                other => panic!("{}: {other:?}", lens.name),
            }
        }
    }

    #[test]
    fn nobody_publishes_lugs_so_no_shipped_body_has_them() {
        for body in library().unwrap().bodies {
            assert_eq!(body.ears, Interface::Unknown, "{}", body.name);
            assert_eq!(body.twist, Interface::Unknown, "{}", body.name);
            assert_eq!(body.lock_pin, Presence::Unknown, "{}", body.name);
            assert!(
                body.register.number().is_some() && body.throat.number().is_some(),
                "{}",
                body.name
            );
        }
    }

    #[test]
    fn an_own_mount_takes_the_place_of_its_namesake_and_others_are_added() {
        let mut all = library().unwrap();
        let before = all.lenses.len();
        let own = read_library(
            "(lenses: [(name: \"M42x1, register 45.46\", notes: \"mine\"), (name: \"my 58\")])",
        )
        .unwrap();
        all.take_in(own);
        assert_eq!(all.lenses.len(), before + 1);
        assert!(all.lenses.iter().any(|lens| lens.notes == "mine"));
        assert_eq!(all.lenses.last().unwrap().name, "my 58");
    }

    #[test]
    fn an_own_list_with_an_impossible_value_is_refused_by_mount_and_field() {
        let error = read_library(
            "(bodies: [(name: \"mine\", register: Known(value: -44.0, origin: Assumed(\"\")))])",
        )
        .unwrap_err()
        .to_string();
        assert!(
            error.contains("mine") && error.contains("register") && error.contains("-44"),
            "{error}"
        );
    }
}
