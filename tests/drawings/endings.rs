//! The ending of a name says what is written.

use std::path::Path;

use flangewright::drawing::export::{ExportError, ExportOptions, Format, bytes};
use flangewright::drawing::mesh::MeshOptions;
use flangewright::mount::Interface;

use super::bench::{DEMOS, demo, evaluated, file, template};

#[test]
fn every_ending_is_known_in_capitals_too() {
    for format in Format::ALL {
        for name in [
            format!("ring.{}", format.ending()),
            format!("RING.{}", format.ending().to_uppercase()),
        ] {
            assert_eq!(Format::of_ending(Path::new(&name)), Ok(format));
        }
    }
}

#[test]
fn an_unknown_ending_is_told_the_right_ones() {
    for name in ["ring", "ring.dwg", ".pdf", "ring.pdf/", "pdf"] {
        match Format::of_ending(Path::new(name)) {
            Err(error @ ExportError::Ending(_)) => {
                let said = error.to_string();
                assert!(
                    said.contains(name) && said.contains(".png, .svg, .pdf, .dxf, .3mf or .stl"),
                    "{said}"
                );
            }
            // A trailing stroke is no part of the name.
            other => assert!(
                name == "ring.pdf/" && other == Ok(Format::Pdf),
                "{name}: {other:?}"
            ),
        }
    }
}

/// First bytes by which other programs know the files: PNG 1.2 section 3.1, ISO 32000-1 section 7.5.2, ZIP 6.3
/// section 4.3.7; a DXF begins with its first group.
#[test]
fn every_file_begins_as_its_kind_begins() {
    let heads: [(Format, &[u8]); 5] = [
        (Format::Png, b"\x89PNG\r\n\x1a\n"),
        (Format::Svg, b"<?xml"),
        (Format::Pdf, b"%PDF-1."),
        (Format::Dxf, b"  0\r\nSECTION\r\n"),
        (Format::ThreeMf, b"PK\x03\x04"),
    ];
    for (format, head) in heads {
        let made = file("archive_portrait", format, &ExportOptions::default());
        assert!(made.starts_with(head), "{format:?}");
    }
    // A binary STL must not begin like a text one.
    assert!(
        !file("archive_portrait", Format::Stl, &ExportOptions::default()).starts_with(b"solid")
    );
}

#[test]
fn same_design_same_bytes() {
    for name in DEMOS {
        for format in Format::ALL {
            let options = ExportOptions {
                dpi: Some(72),
                ..ExportOptions::default()
            };
            assert_eq!(
                file(name, format, &options),
                file(name, format, &options),
                "{name} {format:?}"
            );
        }
    }
}

#[test]
fn a_solid_of_the_template_is_refused() {
    let design = demo("archive_portrait");
    for format in [Format::Stl, Format::ThreeMf] {
        let refused = bytes(&design, &evaluated(&design), format, &template());
        assert_eq!(refused, Err(ExportError::SolidTemplate));
    }
}

#[test]
fn what_has_no_whole_ring_says_what_to_measure() {
    let mut design = demo("archive_portrait");
    design.body.throat = Interface::Unknown;
    let evaluation = evaluated(&design);
    for format in Format::ALL {
        for options in [ExportOptions::default(), template()] {
            let said = bytes(&design, &evaluation, format, &options)
                .unwrap_err()
                .to_string();
            let solid_template = options.template && format.is_solid();
            assert!(
                solid_template || said.contains("throat"),
                "{format:?}: {said}"
            );
        }
    }
}

#[test]
fn mesh_options_out_of_range_are_refused_with_the_range() {
    let design = demo("archive_portrait");
    let evaluation = evaluated(&design);
    let said = |mesh| {
        let options = ExportOptions {
            mesh,
            ..ExportOptions::default()
        };
        bytes(&design, &evaluation, Format::Stl, &options)
            .unwrap_err()
            .to_string()
    };
    for chord_mm in [0.0, -1.0, 0.5, f64::NAN, f64::INFINITY] {
        let told = said(MeshOptions {
            chord_mm,
            ..MeshOptions::default()
        });
        assert!(told.contains("0.001 to 0.2"), "{told}");
    }
    for thread_allowance_mm in [-2.0, 9.0, f64::NAN] {
        let told = said(MeshOptions {
            thread_allowance_mm,
            ..MeshOptions::default()
        });
        assert!(told.contains("-0.5 to 5"), "{told}");
    }
}
