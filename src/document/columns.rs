//! Rows under a head as text columns, for whatever is printed as plain text.

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
