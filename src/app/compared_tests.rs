//! What is evaluated anew, and what is not.

use super::super::variant_edit::VariantEdit;
use super::super::{edit::Edit, workspace::Workspace};
use super::*;
use crate::document::{RingKey, demo_designs};

/// Follows the workspace until nothing waits; gives the versions of the columns.
fn versions(compared: &mut Compared, workspace: &Workspace) -> Vec<u64> {
    let open = Open {
        design: workspace.design(),
        evaluation: workspace.evaluation(),
        workshop: workspace.workshop(),
    };
    while compared.follow(open, workspace.revision()) {}
    let (columns, subjects) = compared.shown(open);
    assert_eq!(columns.len(), subjects.len());
    columns.iter().map(|column| column.version).collect()
}

fn workspace() -> Workspace {
    let demo = demo_designs().unwrap().remove(0);
    Workspace::new(demo, Workshop::default_set().unwrap())
}

fn keep(workspace: &mut Workspace, name: &str) {
    let edit = VariantEdit::Keep(name.to_owned());
    workspace.edit(&Edit::Variant(edit)).unwrap();
}

#[test]
fn a_change_of_the_ring_evaluates_no_variant_and_one_of_the_limits_all() {
    let (mut workspace, mut compared) = (workspace(), Compared::default());
    keep(&mut workspace, "one");
    keep(&mut workspace, "two");
    let first = versions(&mut compared, &workspace);
    assert_eq!(first.len(), 3);
    workspace
        .edit(&Edit::Dimension(RingKey::LipThickness, 1.2))
        .unwrap();
    let second = versions(&mut compared, &workspace);
    assert_eq!(first[1..], second[1..]);
    assert_ne!(first[0], second[0]);
    let limit = crate::document::LimitKey::LipCaution;
    workspace.edit(&Edit::Limit(limit, 1.3)).unwrap();
    let third = versions(&mut compared, &workspace);
    assert!(second.iter().zip(&third).all(|(a, b)| a != b));
    // Nothing changed: nothing is done.
    let state = compared.state();
    versions(&mut compared, &workspace);
    assert_eq!(compared.state(), state);
}

#[test]
fn six_stand_on_the_page_and_the_seventh_waits_until_one_is_left_out() {
    let (mut workspace, mut compared) = (workspace(), Compared::default());
    for _ in 0..5 {
        keep(&mut workspace, "kept");
    }
    assert_eq!(versions(&mut compared, &workspace).len(), MOST);
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("other ring.ron");
    files::save_design(&path, &demo_designs().unwrap()[1]).unwrap();
    assert!(!compared.bring_in(&path, workspace.design()).unwrap());
    assert_eq!(versions(&mut compared, &workspace).len(), MOST);
    let waiting = compared.candidates(workspace.design()).pop().unwrap();
    assert_eq!(
        (waiting.name.as_str(), waiting.is_shown),
        ("other ring", false)
    );
    compared.show(Who::Variant("kept".to_owned()), false);
    compared.show(waiting.who.clone(), true);
    assert_eq!(versions(&mut compared, &workspace).len(), MOST);
    let Who::File(number) = waiting.who else {
        panic!("{waiting:?}");
    };
    compared.take_out(number);
    assert_eq!(versions(&mut compared, &workspace).len(), MOST - 1);
}

#[test]
fn an_unreadable_file_changes_nothing() {
    let (workspace, mut compared) = (workspace(), Compared::default());
    let before = versions(&mut compared, &workspace);
    let error = compared
        .bring_in(Path::new("/nowhere/ring.ron"), workspace.design())
        .unwrap_err();
    assert!(error.to_string().contains("/nowhere/ring.ron"));
    assert_eq!(versions(&mut compared, &workspace), before);
}
