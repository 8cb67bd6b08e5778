//! Tests of the pictures of mounts.

use super::*;
use crate::drawing::Shape;

#[test]
fn every_topic_has_a_picture_with_words_on_it_and_a_text_beside_it() {
    for topic in Topic::ALL {
        let scene = topic.scene();
        let texts = scene
            .items
            .iter()
            .filter(|item| matches!(item.shape, Shape::Text(_)))
            .count();
        assert!(texts >= 2, "{}", topic.title());
        assert!(
            topic.text().split_whitespace().count() > 30,
            "{}",
            topic.title()
        );
        let extent = scene.bounds().unwrap();
        assert!(
            extent.width() < 220.0 && extent.height() < 140.0,
            "{}",
            topic.title()
        );
    }
}

#[test]
fn lugs_pass_the_slots_and_lie_behind_the_ears_when_turned() {
    let inside =
        |clock: f64, (start, extent): (f64, f64)| (clock - start).rem_euclid(360.0) <= extent;
    let mut covered = 0;
    for (start, extent) in slots() {
        for share in [0.1, 0.5, 0.9] {
            let clock = start + ROOM_DEG + share * (extent - 2.0 * ROOM_DEG);
            assert!(
                !EARS.iter().any(|ear| inside(clock, *ear)),
                "{clock} enters"
            );
            covered += u32::from(EARS.iter().any(|ear| inside(clock + TWIST_DEG, *ear)));
        }
    }
    // Nine places of three lugs: most lie behind an ear.
    assert!(covered >= 7, "{covered}");
}
