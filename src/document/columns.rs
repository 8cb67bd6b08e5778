//! Columns and wrapped lines, for whatever is printed as plain text.

/// Rows under a head as text columns, two blanks apart; no line ends in blanks.
///
/// ```
/// use flangewright::document::columns;
/// let text = columns(&["what", "mm"], &[vec!["lip".to_owned(), "1.00".to_owned()]]);
/// assert_eq!(text, "what  mm\nlip   1.00");
/// ```
#[must_use]
pub fn columns(head: &[&str], rows: &[Vec<String>]) -> String {
    let width = |column: usize| {
        let cells = rows.iter().filter_map(|row| row.get(column));
        let widest = cells.map(|cell| cell.chars().count()).max().unwrap_or(0);
        widest.max(head.get(column).map_or(0, |cell| cell.chars().count()))
    };
    let widths: Vec<usize> = (0..head.len()).map(width).collect();
    let line = |cells: Vec<&str>| {
        let padded: Vec<String> = cells
            .into_iter()
            .zip(&widths)
            .map(|(cell, width)| format!("{cell:<width$}"))
            .collect();
        padded.join("  ").trim_end().to_owned()
    };
    let mut lines = vec![line(head.to_vec())];
    lines.extend(
        rows.iter()
            .map(|row| line(row.iter().map(String::as_str).collect())),
    );
    lines.join("\n")
}

/// One line broken at blanks into lines of at most `width` letters, a longer word alone on its line; the second and
/// later ones begin with the blanks of the first and `hanging` more.
///
/// ```
/// use flangewright::document::wrapped;
/// assert_eq!(wrapped("  one two three", 9, 2), "  one two\n    three");
/// ```
#[must_use]
pub fn wrapped(line: &str, width: usize, hanging: usize) -> String {
    let own = line.chars().take_while(|sign| *sign == ' ').count();
    if line.chars().count() <= width {
        return line.to_owned();
    }
    let mut lines = vec![" ".repeat(own)];
    let mut used = own;
    let mut is_fresh = true;
    // Only single blanks are places to break: wider ones set a head off from its text.
    for word in line.trim_start().split(' ') {
        let long = word.chars().count();
        let needed = long + usize::from(!is_fresh);
        if used + needed > width && !is_fresh {
            lines.push(" ".repeat(own + hanging));
            used = own + hanging;
            is_fresh = true;
        }
        if let Some(last) = lines.last_mut() {
            if !is_fresh {
                last.push(' ');
                used += 1;
            }
            last.push_str(word);
            used += long;
            is_fresh = false;
        }
    }
    lines.join("\n")
}
