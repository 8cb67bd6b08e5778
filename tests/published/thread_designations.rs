//! Thread designations as ISO 965-1 and ASME B1.1 write them, and as people type them.

use flangewright::standards::{
    DesignationError, Nominal, Side, Thread, ThreadError, ThreadForm, UnifiedSeries,
};

/// Typed, canonical, diameter and pitch in mm.
pub const READ: [(&str, &str, f64, f64); 41] = [
    ("M40x1-6H", "M40x1-6H", 40.0, 1.0),
    ("M42x0.75", "M42x0.75", 42.0, 0.75),
    ("M42x0,75", "M42x0.75", 42.0, 0.75),
    ("M42x1-6g", "M42x1-6g", 42.0, 1.0),
    ("M40 x 1 - 4g6g", "M40x1-4g6g", 40.0, 1.0),
    ("M40x1-4H5H", "M40x1-4H5H", 40.0, 1.0),
    ("M40x1-6H6H", "M40x1-6H", 40.0, 1.0),
    ("  m 42 X 1  ", "M42x1", 42.0, 1.0),
    ("M42*1", "M42x1", 42.0, 1.0),
    ("M42\u{d7}1\u{2013}6H", "M42x1-6H", 42.0, 1.0),
    ("M42x1 6H", "M42x1-6H", 42.0, 1.0),
    ("M 42 mm x 1 mm", "M42x1", 42.0, 1.0),
    ("M42mmx1mm", "M42x1", 42.0, 1.0),
    ("M42x1-LH", "M42x1-LH", 42.0, 1.0),
    ("M42x1-6H-LH", "M42x1-6H-LH", 42.0, 1.0),
    ("M42x1 lh", "M42x1-LH", 42.0, 1.0),
    ("M42.000x1.00", "M42x1", 42.0, 1.0),
    ("M3x.5", "M3x0.5", 3.0, 0.5),
    ("1-32 UN-2B", "1-32 UN-2B", 25.4, 0.79375),
    ("1-32un2b", "1-32 UN-2B", 25.4, 0.79375),
    ("1 x 32 UN", "1-32 UN", 25.4, 0.79375),
    ("1 in - 32 tpi UN", "1-32 UN", 25.4, 0.79375),
    ("1\"-32 UN", "1-32 UN", 25.4, 0.79375),
    ("25.4 mm-32 UN", "1-32 UN", 25.4, 0.79375),
    ("1/4-20 UNC-2A", "1/4-20 UNC-2A", 6.35, 1.27),
    ("15/16-20 UNEF-2A", "15/16-20 UNEF-2A", 23.8125, 1.27),
    ("2 1/2-12 UN-2B", "2 1/2-12 UN-2B", 63.5, 25.4 / 12.0),
    ("2-1/2-12 UN", "2 1/2-12 UN", 63.5, 25.4 / 12.0),
    ("5/8-32 UN", "5/8-32 UN", 15.875, 0.79375),
    ("0.625-32 UN", "5/8-32 UN", 15.875, 0.79375),
    ("0,625 - 32 UN - LH", "5/8-32 UN-LH", 15.875, 0.79375),
    ("10-24 UNC", "10-24 UNC", 4.826, 25.4 / 24.0),
    ("#10-24 UNC", "10-24 UNC", 4.826, 25.4 / 24.0),
    (".19-24 UNC", "10-24 UNC", 4.826, 25.4 / 24.0),
    ("1 in-64 UNS", "1 in-64 UNS", 25.4, 25.4 / 64.0),
    (
        "39 x 26 tpi Whitworth",
        "39 x 26 tpi Whitworth",
        39.0,
        25.4 / 26.0,
    ),
    (
        "39x26TPI WHITWORTH",
        "39 x 26 tpi Whitworth",
        39.0,
        25.4 / 26.0,
    ),
    ("39mmx26 Whit", "39 x 26 tpi Whitworth", 39.0, 25.4 / 26.0),
    (
        "1/4 in x 20 tpi Whitworth",
        "1/4 in x 20 tpi Whitworth",
        6.35,
        1.27,
    ),
    (
        "1 1/2\" x 8 tpi Whitworth-LH",
        "1 1/2 in x 8 tpi Whitworth-LH",
        38.1,
        3.175,
    ),
    ("39 mm-26 UN", "39 mm-26 UN", 39.0, 25.4 / 26.0),
];

#[test]
fn what_people_type_is_read() {
    for (typed, canonical, nominal, pitch) in READ {
        let thread: Thread = typed
            .parse()
            .unwrap_or_else(|error| panic!("{typed}: {error}"));
        assert_eq!(thread.to_string(), canonical, "{typed}");
        assert!(
            (thread.nominal_mm() - nominal).abs() < 1e-9,
            "{typed}: {}",
            thread.nominal_mm()
        );
        assert!(
            (thread.pitch_mm() - pitch).abs() < 1e-9,
            "{typed}: {}",
            thread.pitch_mm()
        );
        assert_eq!(
            canonical.parse::<Thread>().unwrap(),
            thread,
            "{canonical} read back"
        );
        assert_eq!(thread.is_left_hand(), canonical.ends_with("-LH"));
    }
}

#[test]
fn forms_and_series() {
    let form = |text: &str| text.parse::<Thread>().unwrap().form();
    assert_eq!(form("M42x1"), ThreadForm::Metric);
    assert_eq!(form("39 x 26 tpi Whitworth"), ThreadForm::Whitworth);
    for (text, series) in [
        ("1/4-20 UNC", UnifiedSeries::Unc),
        ("1/4-28 UNF", UnifiedSeries::Unf),
        ("15/16-20 UNEF", UnifiedSeries::Unef),
        ("1-32 UN", UnifiedSeries::Un),
        ("1-14 UNS", UnifiedSeries::Uns),
    ] {
        assert_eq!(form(text), ThreadForm::Unified { series });
    }
    assert_eq!("1-32 UN".parse::<Thread>().unwrap().tpi(), Some(32.0));
    assert_eq!("M42x1".parse::<Thread>().unwrap().tpi(), None);
}

#[test]
fn numbered_sizes() {
    // ASME B1.1: 0.060 + 0.013 n in.
    for (text, inch) in [
        ("0-80 UNF", 0.060),
        ("2-56 UNC", 0.086),
        ("6-32 UNC", 0.138),
        ("12-24 UNC", 0.216),
    ] {
        let thread: Thread = text.parse().unwrap();
        assert!((thread.nominal().inch() - inch).abs() < 1e-12, "{text}");
        assert_eq!(thread.to_string(), text);
    }
    // One inch, not number 1; two inches, not number 2.
    assert_eq!(
        "1-32 UN".parse::<Thread>().unwrap().nominal(),
        Nominal::Inches(1.0)
    );
    assert_eq!(
        "2-16 UN".parse::<Thread>().unwrap().nominal(),
        Nominal::Inches(2.0)
    );
    assert!(
        "#7-32 UN"
            .parse::<Thread>()
            .unwrap_err()
            .to_string()
            .contains("0 to 6, 8, 10 and 12")
    );
}

#[test]
fn what_was_not_understood_is_named() {
    // Typed, and what the message must hold.
    for (typed, parts) in [
        ("", &["no thread designation"][..]),
        ("   ", &["no thread designation"]),
        ("42x1", &["does not say its form", "42x1"]),
        ("39 x 26 tpi", &["does not say its form", "Whitworth"]),
        ("1/4-20", &["does not say its form", "UNC"]),
        ("hello", &["hello", "M42x1"]),
        ("M42", &["gives no pitch", "4.5"]),
        ("M25", &["gives no pitch", "no coarse pitch"]),
        ("M", &["stops too early", "diameter"]),
        ("M42x", &["stops too early", "pitch"]),
        ("M42y1", &["\"y\"", "x and the pitch", "M42x1-6H"]),
        ("M42x1-", &["stops too early", "6H or 6g"]),
        ("M42x1-6Q", &["\"Q\"", "M42x1-6H"]),
        ("M42x1-6H?", &["\"?\"", "M42x1-6H"]),
        ("M42x1-6HH", &["\"HH\"", "M42x1-6H"]),
        ("M42x1-6H/6g", &["\"/\"", "LH"]),
        ("M42x1-4g6h", &["\"h\"", "same letter"]),
        ("M42x1-5g", &["crest-diameter grade 5", "5g6g"]),
        ("M42x1-3H", &["pitch-diameter grade 3", "4 to 8"]),
        ("M42x1-0g6g", &["pitch-diameter grade 0", "3 to 9"]),
        ("M42x1-2B", &["\"B\"", "M42x1-6H"]),
        ("M42x26 tpi", &["pitch 26", "0.2 to 8 mm"]),
        ("M1,000.5x1", &["\"1,000.5\"", "decimal sign"]),
        ("M4.2.1x1", &["\"4.2.1\"", "decimal sign"]),
        ("M.x1", &["\".\""]),
        ("1-32 UN-4B", &["4 is no unified class", "2B"]),
        ("1-32 UN-2C", &["\"C\"", "1-32 UN-2B"]),
        ("1-32 UN-6H", &["\"H\"", "1-32 UN-2B"]),
        ("1- UN", &["\"UN\"", "threads per inch"]),
        ("1/0-20 UN", &["\"0\"", "fraction"]),
        ("2 3/2-20 UN", &["below one"]),
        ("2.5 1/2-20 UN", &["below one"]),
        ("39 x 26 tpi Whitworth-2B", &["2B", "no tolerance classes"]),
        ("1/4 x 20 tpi Whitworth", &["fraction", "inches"]),
        (
            "M39 x 26 tpi Whitworth",
            &["\"M\"", "39 x 26 tpi Whitworth"],
        ),
        ("39 x Whitworth", &["threads per inch"]),
    ] {
        let error = typed
            .parse::<Thread>()
            .map(|thread| thread.to_string())
            .unwrap_err();
        for part in parts {
            assert!(error.to_string().contains(part), "{typed:?} gave: {error}");
        }
    }
}

#[test]
fn impossible_numbers_are_refused_by_name() {
    let nines = "9".repeat(60);
    for (typed, parts) in [
        ("M0x1".to_owned(), ["nominal diameter 0", "1 to 355 mm"]),
        ("M-42x1".to_owned(), ["nominal diameter -42", "1 to 355 mm"]),
        ("M42x-1".to_owned(), ["pitch -1", "0.2 to 8 mm"]),
        ("M42x0".to_owned(), ["pitch 0", "0.2 to 8 mm"]),
        ("M42x9".to_owned(), ["pitch 9", "0.2 to 8 mm"]),
        ("M400x1".to_owned(), ["nominal diameter 400", "1 to 355 mm"]),
        (
            format!("M{nines}x1"),
            ["nominal diameter 1e60", "1 to 355 mm"],
        ),
        ("M5x4".to_owned(), ["too coarse", "up to 2.000 mm"]),
        ("1-0 UN".to_owned(), ["threads per inch 0", "3.5 to 80"]),
        ("1-500 UN".to_owned(), ["threads per inch 500", "3.5 to 80"]),
        (
            "-1-32 UN".to_owned(),
            ["nominal diameter -1", "1 to 355 mm"],
        ),
        (
            "0-32 Whitworth".to_owned(),
            ["nominal diameter 0", "1 to 355 mm"],
        ),
        ("x".repeat(500), ["500 characters", "80 are allowed"]),
    ] {
        let error = typed
            .parse::<Thread>()
            .map(|thread| thread.to_string())
            .unwrap_err();
        for part in parts {
            assert!(error.to_string().contains(part), "{typed:?} gave: {error}");
        }
    }
    for value in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 0.0, -1.0, 1e300] {
        assert!(matches!(
            Thread::metric(value, 1.0),
            Err(DesignationError::OutOfRange { .. })
        ));
        assert!(matches!(
            Thread::metric(42.0, value),
            Err(DesignationError::OutOfRange { .. })
        ));
        let series = UnifiedSeries::Un;
        assert!(Thread::unified(Nominal::Inches(value), 32.0, series).is_err());
        assert!(Thread::unified(Nominal::Inches(1.0), value, series).is_err());
        assert!(Thread::whitworth(Nominal::Millimetres(value), 26.0).is_err());
    }
}

#[test]
fn a_class_leaves_one_side_only() {
    let ring: Thread = "M42x1-6H".parse().unwrap();
    assert!(ring.internal().is_ok());
    let error = ring.external().unwrap_err();
    assert!(matches!(
        error,
        ThreadError::OtherSide {
            named: Side::Internal,
            ..
        }
    ));
    assert!(error.to_string().contains("M42x1-6H"));
    assert!(ring.without_class().external().is_ok());
    let lens: Thread = "1-32 UN-2A".parse().unwrap();
    assert!(lens.external().is_ok() && lens.internal().is_err());
    let both: Thread = "1-32 UN".parse().unwrap();
    assert!(both.external().is_ok() && both.internal().is_ok());
}

#[test]
fn classes_of_another_form_are_refused() {
    let metric: Thread = "M42x1".parse().unwrap();
    let unified_class = "1-32 UN-2B".parse::<Thread>().unwrap().class().unwrap();
    assert!(
        metric
            .with_class(unified_class)
            .unwrap_err()
            .to_string()
            .contains("6H or 6g")
    );
}

#[test]
fn through_a_file_and_back() {
    for (_, canonical, ..) in READ {
        let thread: Thread = canonical.parse().unwrap();
        let json = serde_json::to_string(&thread).unwrap();
        assert_eq!(json, serde_json::to_string(canonical).unwrap());
        assert_eq!(serde_json::from_str::<Thread>(&json).unwrap(), thread);
    }
    let error = serde_json::from_str::<Thread>("\"M42\"")
        .unwrap_err()
        .to_string();
    assert!(error.contains("gives no pitch"), "{error}");
}

#[test]
fn limits_print_null_where_the_standard_sets_none() {
    let thread: Thread = "M42x1".parse().unwrap();
    let ring = serde_json::to_value(thread.internal().unwrap()).unwrap();
    assert!(ring["major_max"].is_null());
    assert_eq!(ring["pitch_diameter_max"], 41.52);
    let lens = serde_json::to_value(thread.external().unwrap()).unwrap();
    assert!(lens["minor_min"].is_null());
    assert_eq!(lens["minor_max"], 40.891);
}
