//! Tells those who do not see the list that a finding has turned to a clash, or that the last clash is gone.

use std::collections::BTreeSet;

use egui::accesskit::{Live, Role};
use egui::{Id, Rect, Sense, Ui, vec2};

use crate::checks::{FindingKey, Severity};
use crate::evaluate::Evaluation;

/// What was told last.
#[derive(Debug, Default)]
pub struct Announcer {
    revision: Option<u64>,
    clashing: BTreeSet<FindingKey>,
    told: String,
}

impl Announcer {
    /// Looks at the findings of this revision; says what is new of the clashes.
    pub fn watch(&mut self, revision: u64, evaluation: &Evaluation) {
        if self.revision == Some(revision) {
            return;
        }
        let first = self.revision.replace(revision).is_none();
        let now: BTreeSet<FindingKey> = evaluation
            .findings
            .iter()
            .filter(|finding| finding.severity == Severity::Clash)
            .map(|finding| finding.key)
            .collect();
        if !first {
            let fresh = evaluation.findings.iter().filter(|finding| {
                now.contains(&finding.key) && !self.clashing.contains(&finding.key)
            });
            let words: Vec<String> = fresh
                .map(|finding| format!("clash: {}: {}", finding.key.title(), finding.message))
                .collect();
            if !words.is_empty() {
                self.told = words.join(". ");
            } else if now.is_empty() && !self.clashing.is_empty() {
                "no clash any more".clone_into(&mut self.told);
            } else if now.len() < self.clashing.len() {
                self.told = format!("{} left", counted(now.len()));
            }
        }
        self.clashing = now;
    }

    /// A status that a screen reader speaks whenever it changes; nothing is painted, the list shows the same.
    pub fn announce_ui(&self, ui: &Ui) {
        let id = Id::unique("announced");
        let rect =
            Rect::from_min_size(ui.max_rect().left_bottom() - vec2(0.0, 1.0), vec2(1.0, 1.0));
        ui.interact(rect, id, Sense::HOVER);
        ui.ctx().accesskit_node_builder(id, |node| {
            node.set_role(Role::Status);
            node.set_live(Live::Assertive);
            node.set_label("What changed among the clashes");
            node.set_value(self.told.as_str());
        });
    }
}

fn counted(clashes: usize) -> String {
    if clashes == 1 {
        "1 clash".to_owned()
    } else {
        format!("{clashes} clashes")
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{Choice, demo_designs};
    use crate::evaluate::evaluate;
    use crate::workshop::Workshop;

    fn with_lip(mm: f64) -> Evaluation {
        let workshop = Workshop::default_set().unwrap();
        let mut design = demo_designs().unwrap().remove(0);
        design.ring.dimensions.lip_thickness.value = Choice::Set(mm);
        evaluate(&design, &workshop)
    }

    #[test]
    fn a_finding_that_turns_to_a_clash_is_told_once_and_so_is_its_end() {
        let mut announcer = Announcer::default();
        let good = with_lip(1.0);
        let bad = with_lip(0.5);
        announcer.watch(0, &good);
        assert_eq!(
            announcer.told, "",
            "what was there at the start is in the list"
        );
        announcer.watch(1, &bad);
        assert!(
            announcer.told.starts_with("clash: Lip thickness: "),
            "{}",
            announcer.told
        );
        let told = announcer.told.clone();
        announcer.watch(2, &bad);
        assert_eq!(announcer.told, told);
        announcer.watch(3, &good);
        assert_eq!(announcer.told, "no clash any more");
    }
}
