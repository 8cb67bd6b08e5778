//! Finding a dimension of the ring by its name in the file.

use flangewright::document::RingKey;
use thiserror::Error;

/// No dimension has that name.
#[derive(Debug, Error, PartialEq, Eq)]
#[error("no ring dimension is called \"{wanted}\"; there are: {}", list())]
pub struct NoDimension {
    wanted: String,
}

fn list() -> String {
    let names: Vec<&str> = RingKey::ALL.iter().map(|key| key.name()).collect();
    names.join(", ")
}

/// The dimension called `name` in the file.
///
/// # Errors
/// [`NoDimension`] lists the names.
pub fn dimension(name: &str) -> Result<RingKey, NoDimension> {
    RingKey::ALL
        .iter()
        .copied()
        .find(|key| key.name() == name)
        .ok_or_else(|| NoDimension {
            wanted: name.to_owned(),
        })
}
