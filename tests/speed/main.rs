//! Placeholder.
fn main() {
    let design = flangewright::document::read_design(include_str!(
        "../../assets/demos/archive_portrait.ron"
    ))
    .unwrap();
    let workshop = flangewright::workshop::Workshop::default_set().unwrap();
    let start = std::time::Instant::now();
    for _ in 0..3000 {
        std::hint::black_box(flangewright::evaluate::evaluate(&design, &workshop));
    }
    println!("{:?}", start.elapsed() / 3000);
}
