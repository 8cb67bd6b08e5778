//! How long each file takes. Run it as
//! `cargo test --release --test drawings how_long -- --ignored --nocapture`.

use std::time::{Duration, Instant};

use flangewright::drawing::export::{ExportOptions, Format, bytes};

use super::bench::{DEMOS, demo, evaluated};

/// Most that a file may take on one core.
fn limit(format: Format) -> Duration {
    Duration::from_millis(match format {
        Format::Png => 300,
        Format::Svg | Format::Pdf | Format::Dxf => 100,
        Format::Stl | Format::ThreeMf => 200,
    })
}

#[test]
#[ignore = "says something only of a release build on a quiet machine"]
fn how_long_each_file_takes() {
    const RUNS: u32 = 5;
    let options = ExportOptions {
        dpi: Some(300),
        ..ExportOptions::default()
    };
    for name in DEMOS {
        let design = demo(name);
        let evaluation = evaluated(&design);
        for format in Format::ALL {
            let run = |_| {
                let start = Instant::now();
                bytes(&design, &evaluation, format, &options).unwrap();
                start.elapsed()
            };
            let best = (0..RUNS).map(run).min().unwrap();
            println!(
                "{name} {}: {:.1} ms",
                format.ending(),
                best.as_secs_f64() * 1000.0
            );
            assert!(best <= limit(format), "{name} {format:?}: {best:?}");
        }
    }
}
