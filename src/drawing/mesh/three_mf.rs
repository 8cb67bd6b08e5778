//! A mesh as a 3MF package: three small texts in a zip file (3MF core specification 1.3).

use std::fmt::Write as _;

use super::zip::{Part, zip};
use super::{Mesh, MeshError};
use crate::drawing::number::machine;
use crate::drawing::svg::escaped;

const TYPES: &str = r#"<?xml version="1.0" encoding="UTF-8"?>
<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">
<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>
<Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/>
</Types>
"#;

const RELATIONS: &str = r#"<?xml version="1.0" encoding="UTF-8"?>
<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">
<Relationship Target="/3D/3dmodel.model" Id="rel0" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/>
</Relationships>
"#;

/// Decimals of a coordinate: a nanometre, so that no two corners fall together.
const DECIMALS: usize = 6;

/// The file.
///
/// # Errors
/// [`MeshError::Packing`] when it cannot be put together.
pub fn three_mf(mesh: &Mesh, title: &str) -> Result<Vec<u8>, MeshError> {
    zip(&[
        Part {
            name: "[Content_Types].xml",
            text: TYPES,
        },
        Part {
            name: "_rels/.rels",
            text: RELATIONS,
        },
        Part {
            name: "3D/3dmodel.model",
            text: &model(mesh, title),
        },
    ])
    .map_err(|error| MeshError::Packing(error.to_string()))
}

fn model(mesh: &Mesh, title: &str) -> String {
    let mut text = format!(
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<model unit=\"millimeter\" xml:lang=\"en\" \
         xmlns=\"http://schemas.microsoft.com/3dmanufacturing/core/2015/02\">\n<metadata name=\"Title\">{}</metadata>\n\
         <metadata name=\"Application\">Flangewright</metadata>\n<metadata name=\"Description\">{}</metadata>\n\
         <resources>\n<object id=\"1\" type=\"model\">\n<mesh>\n<vertices>\n",
        escaped(title),
        escaped(&mesh.notes.join(" "))
    );
    for place in &mesh.vertices {
        let [x, y, z] = place.map(|length| machine(length, DECIMALS));
        put(
            &mut text,
            format_args!("<vertex x=\"{x}\" y=\"{y}\" z=\"{z}\"/>\n"),
        );
    }
    text.push_str("</vertices>\n<triangles>\n");
    for [a, b, c] in &mesh.triangles {
        put(
            &mut text,
            format_args!("<triangle v1=\"{a}\" v2=\"{b}\" v3=\"{c}\"/>\n"),
        );
    }
    text.push_str("</triangles>\n</mesh>\n</object>\n</resources>\n<build>\n<item objectid=\"1\"/>\n</build>\n</model>\n");
    text
}

/// Writing to a string cannot fail.
fn put(text: &mut String, what: std::fmt::Arguments<'_>) {
    let _always_well = text.write_fmt(what);
}
