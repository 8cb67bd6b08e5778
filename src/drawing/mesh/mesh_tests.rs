use super::*;

/// A tetrahedron with corners at the origin and on the axes at 1: volume 1/6.
fn tetrahedron() -> Mesh {
    Mesh {
        vertices: vec![[0.0; 3], [1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]],
        triangles: vec![[0, 2, 1], [0, 1, 3], [0, 3, 2], [1, 2, 3]],
        notes: Vec::new(),
    }
}

#[test]
fn a_tetrahedron_is_closed_and_has_a_sixth_of_its_cube() {
    let mesh = tetrahedron();
    assert!(mesh.is_closed());
    assert!((mesh.volume_mm3() - 1.0 / 6.0).abs() < 1e-15);
    // A body without holes (Euler): 4 - 6 + 4 = 2.
    assert_eq!(mesh.euler(), 2);
}

#[test]
fn a_missing_or_turned_face_is_seen() {
    let mut open = tetrahedron();
    open.triangles.pop();
    assert!(!open.is_closed());
    let mut turned = tetrahedron();
    turned.triangles[3] = [1, 3, 2];
    assert!(!turned.is_closed());
    let mut twice = tetrahedron();
    twice.triangles.extend(tetrahedron().triangles);
    assert!(!twice.is_closed());
    let nothing = Mesh {
        vertices: Vec::new(),
        triangles: Vec::new(),
        notes: Vec::new(),
    };
    assert!(!nothing.is_closed());
}
