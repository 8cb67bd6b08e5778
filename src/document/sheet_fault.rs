//! Values that no sheet may have.

use super::fault::{Fault, range};
use super::{Design, Sheet};
use crate::mount::Unit;

/// Most letters of a field of the title block.
const MOST_LETTERS: usize = 80;
/// Most letters of the notes.
const MOST_IN_NOTES: usize = 1200;
/// Farthest that a dimension is moved, mm on paper: the length of the largest sheet.
const FARTHEST_MM: f64 = 420.0;
/// Most dimensions changed by hand.
const MOST_OVERRIDES: usize = 200;

/// Adds every fault of a design's sheet.
pub(super) fn sheet_faults(design: &Design, faults: &mut Vec<Fault>) {
    let sheet = &design.sheet;
    range(
        faults,
        "section angle",
        sheet.section_angle_deg,
        Unit::Deg,
        (-720.0, 720.0),
    );
    range(
        faults,
        "drawing dpi",
        f64::from(sheet.dpi),
        Unit::One,
        (72.0, 1200.0),
    );
    text_faults(sheet, faults);
    override_faults(sheet, faults);
}

fn text_faults(sheet: &Sheet, faults: &mut Vec<Fault>) {
    let fields = [
        ("legal owner", &sheet.owner),
        ("identification number", &sheet.number),
        ("title", &sheet.title),
        ("supplementary title", &sheet.supplement),
        ("creator", &sheet.creator),
        ("approval person", &sheet.approved),
        ("date of issue", &sheet.date),
        ("revision", &sheet.revision),
        ("status", &sheet.status),
    ];
    for (field, text) in fields {
        let name = || format!("title block, {field}");
        too_long(faults, &name, text, MOST_LETTERS);
        if text.contains(char::is_control) {
            faults.push(Fault::new(
                name(),
                format!("{text:?}"),
                "a field is one line without control signs",
            ));
        }
    }
    too_long(
        faults,
        &|| "drawing notes".to_owned(),
        &sheet.notes,
        MOST_IN_NOTES,
    );
    if sheet
        .notes
        .contains(|sign: char| sign.is_control() && sign != '\n')
    {
        faults.push(Fault::new(
            "drawing notes",
            format!("{:?}", sheet.notes),
            "only line ends stand between words",
        ));
    }
}

fn too_long(faults: &mut Vec<Fault>, field: &dyn Fn() -> String, text: &str, most: usize) {
    let letters = text.chars().count();
    if letters > most {
        faults.push(Fault::new(
            field(),
            format!("{letters} letters"),
            format!("at most {most} fit"),
        ));
    }
}

fn override_faults(sheet: &Sheet, faults: &mut Vec<Fault>) {
    let field = "dimensions changed by hand";
    if sheet.overrides.len() > MOST_OVERRIDES {
        let count = format!("{} of them", sheet.overrides.len());
        faults.push(Fault::new(
            field,
            count,
            format!("at most {MOST_OVERRIDES} are kept"),
        ));
        return;
    }
    for (place, own) in sheet.overrides.iter().enumerate() {
        let name = format!("dimension \"{}\", moved by", own.dimension);
        for moved in [own.moved_mm.0, own.moved_mm.1] {
            range(faults, &name, moved, Unit::Mm, (-FARTHEST_MM, FARTHEST_MM));
        }
        let same = |other: &super::DimensionOverride| other.dimension == own.dimension;
        if sheet.overrides.iter().take(place).any(same) {
            faults.push(Fault::new(
                field,
                format!("\"{}\" twice", own.dimension),
                "each stands once",
            ));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{
        DimensionId, DimensionOverride, RingKey, faults_of, read_design, write_ron,
    };
    use crate::mount::{Body, Lens};

    fn design() -> Design {
        Design::new(Lens::default(), Body::default())
    }

    #[test]
    fn what_no_sheet_can_show_is_refused_by_name() {
        let mut long = design();
        long.sheet.title = "x".repeat(81);
        assert!(
            faults_of(&long)[0]
                .to_string()
                .contains("title block, title: 81 letters")
        );
        let mut two_lines = design();
        two_lines.sheet.owner = "a\nb".to_owned();
        assert!(faults_of(&two_lines)[0].field.contains("legal owner"));
        let mut far = design();
        far.sheet.override_mut(DimensionId::Thread).moved_mm = (f64::NAN, 0.0);
        assert!(faults_of(&far)[0].field.contains("\"thread\""));
        let mut twice = design();
        let own = DimensionOverride {
            dimension: DimensionId::Relief,
            hidden: true,
            moved_mm: (0.0, 0.0),
        };
        twice.sheet.overrides = vec![own.clone(), own];
        assert!(faults_of(&twice)[0].value.contains("twice"));
    }

    #[test]
    fn moves_hides_and_additions_survive_saving() {
        let mut design = design();
        design
            .sheet
            .override_mut(DimensionId::Size(RingKey::LipBore))
            .hidden = true;
        design.sheet.override_mut(DimensionId::Thread).moved_mm = (4.25, -3.5);
        let added = "seat..nose".parse().unwrap();
        design.sheet.override_mut(added);
        design.sheet.scale = "5:1".parse().ok();
        design.sheet.tidy();
        let read = read_design(&write_ron(&design).unwrap()).unwrap();
        assert_eq!(read, design);
        assert_eq!(read.sheet.overrides.len(), 3);
    }

    #[test]
    fn an_old_sheet_is_still_read_and_a_wrong_scale_is_not() {
        let old: Sheet =
            crate::document::read_ron("(paper: A3Landscape, decimal_comma: true)").unwrap();
        assert_eq!(
            old,
            Sheet {
                paper: crate::document::Paper::A3Landscape,
                decimal_comma: true,
                ..Sheet::default()
            }
        );
        let wrong = crate::document::read_ron::<Sheet>("(scale: Some(\"3:1\"))").unwrap_err();
        assert!(wrong.to_string().contains("ISO 5455"), "{wrong}");
    }
}
