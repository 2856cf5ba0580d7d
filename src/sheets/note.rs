//! Plain lines on A4 paper: the order note as the contractor prints it.

use super::face;
use super::mark::{Hang, Mark, PaperPoint, Sheet, Text};

/// A4, portrait, mm.
pub(super) const PAPER: (f64, f64) = (210.0, 297.0);
/// Clear on the left, for the binder, mm.
const LEFT: f64 = 20.0;
/// Clear on the other edges, mm.
const EDGE: f64 = 12.0;
/// Capital height of the lines, mm: a typed letter's.
const HEIGHT: f64 = 2.3;
/// Base line to base line, mm.
const STEP: f64 = 4.4;

/// Lines on a page.
fn on_a_page() -> usize {
    let room = PAPER.1 - 2.0 * EDGE - 2.0 * STEP;
    (room / STEP) as usize
}

/// A page may end so many lines early to keep a section in one piece.
const EARLY: usize = 24;

/// The lines of each page: full pages, but for a section that would begin at the foot of one and run over, and for a sentence of
/// several lines.
pub(super) fn pages_of(lines: &[String]) -> Vec<&[String]> {
    let full = on_a_page();
    let mut pages = Vec::new();
    let mut rest = lines;
    while !rest.is_empty() {
        if rest.len() <= full {
            pages.push(rest);
            break;
        }
        let blank = (full - EARLY..full).rev().find(|&i| rest[i].is_empty());
        let whole = (full - EARLY..=full)
            .rev()
            .find(|&i| !rest[i].starts_with(' '));
        let end = blank.or(whole).unwrap_or(full);
        pages.push(&rest[..end]);
        rest = &rest[end..];
        while rest.first().is_some_and(String::is_empty) {
            rest = &rest[1..];
        }
    }
    pages
}

/// The lines on as many pages as they need, each with a foot that names it among all the pages of the note. A line all in capitals
/// is a heading, in bold.
pub(super) fn note_pages(title: &str, lines: &[String], of: usize) -> Vec<Sheet> {
    pages_of(lines)
        .into_iter()
        .enumerate()
        .map(|(page, lines)| note_page(title, lines, page + 1, of))
        .collect()
}

fn note_page(title: &str, lines: &[String], number: usize, of: usize) -> Sheet {
    let mut marks: Vec<Mark> = lines
        .iter()
        .enumerate()
        .filter(|(_, line)| !line.is_empty())
        .map(|(row, line)| note_line(line, EDGE + STEP * (row + 1) as f64))
        .collect();
    marks.push(note_foot(title, number, of));
    Sheet {
        number,
        name: "order-note".into(),
        title: title.into(),
        width: PAPER.0,
        height: PAPER.1,
        marks,
    }
}

/// The foot of a page.
pub(super) fn note_foot(title: &str, number: usize, of: usize) -> Mark {
    let foot = format!("{title}, page {number} of {of}");
    note_line(&foot, PAPER.1 - EDGE)
}

fn note_line(words: &str, y: f64) -> Mark {
    // What runs over from the line before may be hole numbers alone, and is no heading.
    let capitals = words.chars().any(char::is_alphabetic) && !words.chars().any(char::is_lowercase);
    let bold = capitals && !words.starts_with(' ');
    // A long word of the spec may run past the line that the note was broken to; it is set smaller and never cut off.
    let wide = face::width(words, HEIGHT, bold);
    let height = HEIGHT * (1.0_f64).min((PAPER.0 - LEFT - EDGE) / wide);
    Mark::Text(Text {
        at: PaperPoint { x: LEFT, y },
        words: words.to_string(),
        height,
        hang: Hang::Start,
        turn_deg: 0.0,
        bold,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::tolerance::SAME_LENGTH_MM;

    /// (297 − 24 − 8.8)/4.4 = 60.05, so 60 lines a page, and 121 lines make three pages.
    #[test]
    fn by_hand_121_lines_are_three_pages() {
        let lines = vec!["a line of the note".to_string(); 121];
        let pages = note_pages("MH-TP1 A", &lines, 3);
        assert_eq!((pages.len(), pages_of(&lines).len()), (3, 3));
        let on_each: Vec<usize> = pages.iter().map(|page| page.marks.len() - 1).collect();
        assert_eq!(on_each, [60, 60, 1]);
    }

    /// Ten lines of a section that begins at line 56 do not fit on a page of 60: the page ends before it. Without the gap the page
    /// is full, unless its last sentence runs over.
    #[test]
    fn by_hand_a_section_is_kept_in_one_piece() {
        let mut lines = vec!["a line of the note".to_string(); 66];
        lines[55] = String::new();
        let on_each =
            |lines: &[String]| pages_of(lines).iter().map(|p| p.len()).collect::<Vec<_>>();
        assert_eq!(on_each(&lines), [55, 10]);
        lines[55] = "a line of the note".into();
        assert_eq!(on_each(&lines), [60, 6]);
        lines[60] = "  and what runs over".into();
        assert_eq!(on_each(&lines), [59, 7]);
    }

    #[test]
    fn holds_what_runs_over_is_no_heading() {
        let lines = ["CUTTING", "Holes cut: 119 of 37 mm", "  T1-T119"].map(String::from);
        let pages = note_pages("HB-TP1 A", &lines, 1);
        let bold: Vec<bool> = pages[0]
            .marks
            .iter()
            .filter_map(|mark| match mark {
                Mark::Text(text) => Some(text.bold),
                _ => None,
            })
            .collect();
        assert_eq!(bold, [true, false, false, false]);
    }

    #[test]
    fn holds_a_long_line_stays_on_the_paper() {
        let pages = note_pages("MH-TP1 A", &["W".repeat(300)], 1);
        for mark in &pages[0].marks {
            let Mark::Text(text) = mark else { continue };
            let end = text.at.x + face::width(&text.words, text.height, text.bold);
            assert!(end <= PAPER.0 - EDGE + SAME_LENGTH_MM, "{end}");
        }
    }
}
