use super::*;

#[test]
fn sheets_have_the_sizes_and_borders_of_the_standards() {
    // ISO 216 sizes; borders 20 and 10 mm (ISO 5457): usable field 267 x 190, 180 x 277, 390 x 277.
    for (format, size, field) in [
        (SheetFormat::A4Landscape, (297.0, 210.0), (267.0, 190.0)),
        (SheetFormat::A4Portrait, (210.0, 297.0), (180.0, 277.0)),
        (SheetFormat::A3Landscape, (420.0, 297.0), (390.0, 277.0)),
    ] {
        assert_eq!(format.size_mm(), size);
        let frame = format.frame();
        assert_eq!((frame.width(), frame.height()), field);
        assert_eq!((frame.left, frame.bottom), (20.0, 10.0));
    }
}

#[test]
fn everything_lies_on_the_paper_and_the_rooms_inside_the_frame() {
    for format in SheetFormat::ALL {
        let made = sheet(format, &TitleBlock::default()).unwrap();
        let (width_mm, height_mm) = format.size_mm();
        let paper = Extent::sized(Point { x: 0.0, y: 0.0 }, width_mm, height_mm);
        assert!(paper.grown(-4.0).contains(&made.scene.bounds().unwrap()));
        for room in std::iter::once(made.field).chain(made.beside) {
            assert!(made.frame.contains(&room));
            assert!(!room.overlaps(&made.title_block));
        }
        assert!((made.title_block.right - made.frame.right).abs() < 1e-9);
        assert!((made.title_block.bottom - made.frame.bottom).abs() < 1e-9);
    }
}

#[test]
fn title_block_takes_the_width_of_a4_portrait() {
    // ISO 7200: 180 mm, which is what A4 upright leaves between its borders.
    let made = sheet(SheetFormat::A4Portrait, &TitleBlock::default()).unwrap();
    assert!((made.title_block.left - made.frame.left).abs() < 1e-9);
    assert_eq!(made.beside, None);
}

#[test]
fn centring_marks_stand_on_the_axes_and_out_of_the_title_block_and_rooms() {
    for format in SheetFormat::ALL {
        let made = sheet(format, &TitleBlock::default()).unwrap();
        let marks = centring_marks(&made.frame, format.size_mm(), &made.title_block);
        assert_eq!(marks.len(), 4);
        for mark in marks {
            let around = mark.extent().unwrap().grown(0.35);
            let inner = Extent {
                bottom: made.title_block.bottom + 0.4,
                ..made.title_block
            };
            assert!(!around.overlaps(&inner));
            assert!(!around.overlaps(&made.field.grown(-0.4)));
        }
    }
}
