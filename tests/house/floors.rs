//! A floor uses only floors under it.

use super::source::{rust_files, without_comments};

/// The floors with their heights. Two of one height do not use each other, but for `workshop`, which reads its
/// file by the text form of `document`.
const FLOORS: [(&str, u32); 16] = [
    ("geometry", 0),
    ("standards", 1),
    ("mount", 2),
    ("document", 3),
    ("workshop", 4),
    ("optics", 5),
    ("ring", 6),
    ("tolerance", 7),
    ("checks", 8),
    ("evaluate", 9),
    ("drawing", 10),
    ("plan", 10),
    ("inspection", 10),
    ("settle", 10),
    ("paper", 11),
    ("app", 12),
];

fn height(floor: &str) -> Option<u32> {
    FLOORS
        .iter()
        .find(|(name, _)| *name == floor)
        .map(|(_, height)| *height)
}

/// The floor that a path such as `src/ring/derive.rs` belongs to.
fn floor_of(path: &str) -> Option<&str> {
    let rest = path.strip_prefix("src/")?;
    let name = rest.split('/').next()?;
    Some(name.strip_suffix(".rs").unwrap_or(name))
}

/// Every floor that the text names by `crate::`, alone or in braces.
fn named_floors(text: &str) -> Vec<String> {
    let mut found = Vec::new();
    for rest in text.split("crate::").skip(1) {
        match rest.strip_prefix('{') {
            None => found.extend(first_word(rest)),
            Some(inside) => found.extend(top_level_words(inside)),
        }
    }
    found
}

fn first_word(text: &str) -> Option<String> {
    let word: String = text
        .chars()
        .take_while(|sign| sign.is_alphanumeric() || *sign == '_')
        .collect();
    (!word.is_empty()).then_some(word)
}

/// The first word of each entry of a brace list, whose opening brace is already taken off.
fn top_level_words(inside: &str) -> Vec<String> {
    let mut depth = 1;
    let mut words = vec![String::new()];
    for sign in inside.chars() {
        match sign {
            '{' => depth += 1,
            '}' => depth -= 1,
            ',' if depth == 1 => words.push(String::new()),
            _ => words.last_mut().unwrap().push(sign),
        }
        if depth == 0 {
            break;
        }
    }
    words
        .iter()
        .filter_map(|word| first_word(word.trim()))
        .collect()
}

/// What of `text`, a file of `floor`, reaches up or sideways.
fn upward(floor: &str, text: &str) -> Vec<String> {
    let own = height(floor).unwrap_or_else(|| panic!("src/{floor} is no floor of this house"));
    let mut wrong = named_floors(&without_comments(text));
    wrong.retain(|named| named != floor && height(named).is_some_and(|other| other >= own));
    wrong
}

#[test]
fn no_arrow_points_upward() {
    let mut seen = 0;
    for file in rust_files("src") {
        let floor = floor_of(&file.path).unwrap();
        if ["lib", "main", "cli"].contains(&floor) {
            continue;
        }
        seen += 1;
        assert_eq!(
            upward(floor, &file.text),
            Vec::<String>::new(),
            "{} reaches up",
            file.path
        );
    }
    assert!(seen > 50, "only {seen} files were looked at");
}

#[test]
fn an_arrow_upward_would_be_seen() {
    assert_eq!(upward("geometry", "use crate::ring::Plan;"), ["ring"]);
    assert_eq!(
        upward("mount", "use crate::{standards::{Thread, Side}, document};"),
        ["document"]
    );
    assert_eq!(
        upward("checks", "let ring = crate::evaluate::evaluate(a, b);"),
        ["evaluate"]
    );
    assert!(upward("checks", "use crate::ring::Plan; // not crate::app").is_empty());
    assert!(upward("ring", "use crate::ring::Plan;").is_empty());
}

#[test]
fn every_floor_is_listed_once_in_the_order_of_reading() {
    let library = rust_files("src")
        .into_iter()
        .find(|file| file.path == "src/lib.rs")
        .unwrap();
    let mut listed: Vec<&str> = library
        .text
        .lines()
        .filter_map(|line| line.strip_prefix("pub mod ")?.strip_suffix(';'))
        .collect();
    assert!(
        listed.iter().all(|floor| height(floor).is_some()),
        "{listed:?}"
    );
    listed.sort_by_key(|floor| library.text.find(&format!("[`{floor}`]")));
    let heights: Vec<u32> = listed.iter().filter_map(|floor| height(floor)).collect();
    assert!(heights.is_sorted(), "{listed:?}");
    for floor in listed {
        assert!(
            library.text.contains(&format!("[`{floor}`]")),
            "lib.rs says nothing of {floor}"
        );
    }
}

#[test]
fn the_screen_library_stays_in_the_window() {
    for file in rust_files("src") {
        let floor = floor_of(&file.path).unwrap();
        if ["app", "main"].contains(&floor) {
            continue;
        }
        let code = without_comments(&file.text);
        assert!(
            !code.contains("egui::") && !code.contains("eframe"),
            "{}",
            file.path
        );
    }
}

#[test]
fn files_are_touched_in_one_module_only() {
    for file in rust_files("src") {
        let is_the_module =
            file.path == "src/app/files.rs" || file.path.starts_with("src/app/files/");
        if is_the_module || file.is_tests() {
            continue;
        }
        let code = without_comments(&file.text);
        assert!(
            !code.contains("std::fs") && !code.contains(" fs::"),
            "{}",
            file.path
        );
    }
}

#[test]
fn every_floor_opens_with_what_it_may_and_must_not_use() {
    for file in rust_files("src") {
        let parts: Vec<&str> = file.path.split('/').collect();
        let ["src", floor, "mod.rs"] = parts.as_slice() else {
            continue;
        };
        let head: String = file
            .text
            .lines()
            .take_while(|line| line.starts_with("//!"))
            .collect::<Vec<_>>()
            .join(" ")
            .to_lowercase();
        assert!(
            head.contains("may use"),
            "src/{floor}/mod.rs does not say what it may use"
        );
        assert!(
            head.contains("must not"),
            "src/{floor}/mod.rs does not say what it must not"
        );
    }
}
