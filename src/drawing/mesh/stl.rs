//! A mesh as a binary STL file.

use super::{Mesh, cross, dot};
use crate::drawing::whole::single;

/// Bytes of the head.
const HEAD: usize = 80;

/// The file. Its head, 80 bytes without meaning to readers, says what they are lengths of.
#[must_use]
pub fn stl(mesh: &Mesh) -> Vec<u8> {
    // It must not begin with "solid", which marks the text form.
    let words = format!("Flangewright, mm. {}", mesh.notes.join(" "));
    let mut file: Vec<u8> = words
        .bytes()
        .filter(u8::is_ascii)
        .chain(std::iter::repeat(b' '))
        .take(HEAD)
        .collect();
    let count = u32::try_from(mesh.triangles.len()).unwrap_or(u32::MAX);
    file.extend(count.to_le_bytes());
    for [a, b, c] in mesh.corners() {
        for place in [normal(a, b, c), a, b, c] {
            file.extend(
                place
                    .into_iter()
                    .flat_map(|length| single(length).to_le_bytes()),
            );
        }
        file.extend([0, 0]);
    }
    file
}

fn normal(a: [f64; 3], b: [f64; 3], c: [f64; 3]) -> [f64; 3] {
    let less = |p: [f64; 3], q: [f64; 3]| [p[0] - q[0], p[1] - q[1], p[2] - q[2]];
    let upright = cross(less(b, a), less(c, a));
    let length = dot(upright, upright).sqrt();
    if length > 0.0 {
        upright.map(|part| part / length)
    } else {
        [0.0; 3]
    }
}
