//! Heights of lettering, and how words are fitted into a width.

use super::face;

/// Figures of dimensions, mm.
pub const FIGURES: f64 = 3.5;
/// Notes, mm.
pub const NOTES: f64 = 3.0;
/// Tables and small captions, mm.
pub const TABLE: f64 = 2.5;
/// Labels of the title block's fields; nothing but a hole number is smaller, mm.
pub const LABEL: f64 = 2.5;
/// Hole numbers are never under this, mm.
pub const LEAST_NUMBER: f64 = 2.0;
/// From one line of lettering to the next, as a share of its height (ISO 3098, capitals with fractions).
pub const LINE_PITCH: f64 = 1.5;

/// Breaks words into lines no wider than this, mm. A single word wider than that stands alone.
pub fn wrap(words: &str, width: f64, height: f64, bold: bool) -> Vec<String> {
    let mut lines = Vec::new();
    for paragraph in words.split('\n') {
        let mut line = String::new();
        for word in words_of(paragraph) {
            let longer = if line.is_empty() {
                word.clone()
            } else {
                format!("{line} {word}")
            };
            if line.is_empty() || face::width(&longer, height, bold) <= width {
                line = longer;
            } else {
                lines.push(std::mem::replace(&mut line, word));
            }
        }
        lines.push(line);
    }
    lines
}

/// Words of a sentence; a fraction in braces is one word.
pub fn words_of(text: &str) -> Vec<String> {
    let (mut words, mut word, mut depth) = (Vec::new(), String::new(), 0);
    for c in text.chars() {
        match c {
            '{' => depth += 1,
            '}' => depth -= 1,
            _ => {}
        }
        if c == ' ' && depth == 0 {
            if !word.is_empty() {
                words.push(std::mem::take(&mut word));
            }
        } else {
            word.push(c);
        }
    }
    if !word.is_empty() {
        words.push(word);
    }
    words
}

/// The height at which the words fit the width: this one, or less, but never under the label's.
pub fn fitting_height(words: &str, width: f64, height: f64, bold: bool) -> f64 {
    let wide = face::width(words, height, bold);
    if wide <= width {
        height
    } else {
        (height * width / wide).max(LABEL)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// No line is wider than asked, and no word is lost.
    #[test]
    fn holds_wrapped_lines_fit_and_lose_nothing() {
        let words = "DRILL ALL HOLES {1 27/32} DIA FROM THE DATUM LINES, NEVER FROM ANOTHER HOLE";
        let lines = wrap(words, 40.0, 3.0, false);
        assert!(lines.iter().all(|l| face::width(l, 3.0, false) <= 40.0));
        assert_eq!(lines.join(" "), words);
    }
}
