//! The bundled lettering face: which characters it has, how wide they are, and their outlines.
//!
//! The face is B612 under the SIL Open Font License; its text lies beside it in `src/sheets/face`. Every size is stated by the
//! height of its capitals, since that is what a drawing rule speaks of; one capital is [`CAPITAL_UNITS`] of the face's own units.

use std::collections::BTreeMap;
use std::sync::OnceLock;

use kurbo::{BezPath, Point, Shape};
use skrifa::instance::{LocationRef, Size};
use skrifa::outline::{DrawSettings, OutlinePen};
use skrifa::{FontRef, GlyphId, MetadataProvider};

use super::lettering;

/// The regular face, as embedded.
pub const REGULAR: &[u8] = include_bytes!("face/B612-Regular.otf");
/// The bold face, as embedded.
pub const BOLD: &[u8] = include_bytes!("face/B612-Bold.otf");

/// Height of a capital in both faces, in units of the face (its table `OS/2`, `sCapHeight`).
pub const CAPITAL_UNITS: f64 = 1500.0;
/// Units of the face to one em.
pub const EM_UNITS: f64 = 2000.0;

/// No character, nor a sign of our own, takes more room than this along a line or across it, capital heights.
pub const WIDEST: f64 = 2.5;

/// One glyph of a face.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Glyph {
    /// Its number in the face.
    pub number: u32,
    /// How far the next one stands, capital heights.
    pub advance: f64,
    /// Highest point of its ink above the base line, capital heights.
    pub above: f64,
    /// Lowest point of its ink below the base line, capital heights, nothing where it stands on the line.
    pub below: f64,
    /// Whether anything is seen of it; nothing is of a space.
    pub inked: bool,
}

/// One face, read once.
struct Face {
    font: FontRef<'static>,
    glyphs: BTreeMap<char, Glyph>,
    /// The same for the characters that nearly all lettering is of, by their code.
    plain: [Option<Glyph>; 128],
}

fn face(bold: bool) -> &'static Face {
    static FACES: [OnceLock<Face>; 2] = [OnceLock::new(), OnceLock::new()];
    FACES[usize::from(bold)].get_or_init(|| read(if bold { BOLD } else { REGULAR }))
}

fn read(bytes: &'static [u8]) -> Face {
    let font = FontRef::new(bytes).expect("the bundled face is a whole font file");
    let metrics = font.glyph_metrics(Size::unscaled(), LocationRef::default());
    let glyphs: BTreeMap<char, Glyph> = font
        .charmap()
        .mappings()
        .filter_map(|(code, id)| {
            let bounds = outline_in(&font, id).bounding_box();
            let glyph = Glyph {
                number: id.to_u32(),
                advance: f64::from(metrics.advance_width(id)?) / CAPITAL_UNITS,
                above: (bounds.y1 / CAPITAL_UNITS).max(0.0),
                below: (-bounds.y0 / CAPITAL_UNITS).max(0.0),
                inked: bounds.area() > 0.0,
            };
            Some((char::from_u32(code)?, glyph))
        })
        .collect();
    let plain = std::array::from_fn(|code| {
        let character = char::from(u8::try_from(code).ok()?);
        glyphs.get(&character).copied()
    });
    Face {
        font,
        glyphs,
        plain,
    }
}

fn outline_in(font: &FontRef<'static>, id: GlyphId) -> BezPath {
    let mut pen = Outline(BezPath::new());
    if let Some(glyph) = font.outline_glyphs().get(id) {
        let settings = DrawSettings::unhinted(Size::unscaled(), LocationRef::default());
        glyph
            .draw(settings, &mut pen)
            .expect("the bundled face's outlines can be drawn");
    }
    pen.0
}

/// The glyph that shows this character, or nothing where the face lacks it.
pub fn glyph(character: char, bold: bool) -> Option<Glyph> {
    let face = face(bold);
    match face.plain.get(character as usize) {
        Some(plain) => *plain,
        None => face.glyphs.get(&character).copied(),
    }
}

/// Outline of a glyph in units of the face, x right and y **up** from the base line; filled by the non-zero rule.
pub fn outline(number: u32, bold: bool) -> BezPath {
    outline_in(&face(bold).font, GlyphId::new(number))
}

/// Width on paper of a line of lettering of this capital height, mm. Stacked fractions `{1 13/16}` count as drawn.
pub fn width(words: &str, height: f64, bold: bool) -> f64 {
    lettering::lay_words(words, height, bold).width * height
}

/// The first character of these words that can be neither lettered nor drawn, if there is one.
pub fn cannot_letter(words: &str) -> Option<char> {
    lettering::lay_words(words, 1.0, false).missing
}

/// Whether every character of these words can be lettered.
pub fn can_letter(words: &str) -> bool {
    cannot_letter(words).is_none()
}

/// Gathers an outline as the face hands it over.
struct Outline(BezPath);

fn point(x: f32, y: f32) -> Point {
    Point::new(f64::from(x), f64::from(y))
}

impl OutlinePen for Outline {
    fn move_to(&mut self, x: f32, y: f32) {
        self.0.move_to(point(x, y));
    }

    fn line_to(&mut self, x: f32, y: f32) {
        self.0.line_to(point(x, y));
    }

    fn quad_to(&mut self, cx0: f32, cy0: f32, x: f32, y: f32) {
        self.0.quad_to(point(cx0, cy0), point(x, y));
    }

    fn curve_to(&mut self, cx0: f32, cy0: f32, cx1: f32, cy1: f32, x: f32, y: f32) {
        self.0
            .curve_to(point(cx0, cy0), point(cx1, cy1), point(x, y));
    }

    fn close(&mut self) {
        self.0.close_path();
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The face's own tables, read with a general font reader: capital height 1500, digits all 1300 wide, space 700, of 2000.
    #[test]
    fn published_advances_of_b612() {
        for bold in [false, true] {
            for digit in '0'..='9' {
                assert_eq!(glyph(digit, bold).unwrap().advance, 1300.0 / 1500.0);
            }
            assert_eq!(glyph(' ', bold).unwrap().advance, 700.0 / 1500.0);
            assert_eq!(glyph('W', bold).unwrap().advance, 1900.0 / 1500.0);
        }
    }

    #[test]
    fn holds_no_glyph_is_wider_or_higher_than_the_widest() {
        for bold in [false, true] {
            for glyph in face(bold).glyphs.values() {
                assert!(glyph.advance <= WIDEST && glyph.above.max(glyph.below) <= WIDEST);
            }
        }
    }

    /// Four digits and a full stop, 3.5 mm high: (4 × 1300 + 600) / 1500 × 3.5 = 13.533 mm.
    #[test]
    fn by_hand_width_of_a_figure() {
        assert_eq!(format!("{:.3}", width("38.000", 3.5, false)), "16.567");
        assert_eq!(format!("{:.3}", width("12.25", 3.5, false)), "13.533");
    }

    /// E stands on the base line and reaches the stated capital height.
    #[test]
    fn published_capital_height() {
        let bounds = outline(glyph('E', false).unwrap().number, false).bounding_box();
        assert_eq!((bounds.y0, bounds.y1), (0.0, CAPITAL_UNITS));
    }

    /// Type B lettering of ISO 3098: figures as tall as capitals, lower case 7/10 of them, strokes 1/10, words 6/10 apart. Another
    /// face may be larger or heavier, and must not be smaller or closer, to be read as well.
    #[test]
    fn published_iso_3098_type_b_is_the_least() {
        for bold in [false, true] {
            for figure in '0'..='9' {
                assert!(glyph(figure, bold).unwrap().above >= 1.0, "{figure}");
            }
            for letter in "acemnorsuvwxz".chars() {
                assert!(glyph(letter, bold).unwrap().above >= 0.7, "{letter}");
            }
            let dash = outline(glyph('-', bold).unwrap().number, bold).bounding_box();
            assert!(dash.height() / CAPITAL_UNITS >= 0.1);
        }
        // From the ink of one figure to that of the next: the space, and what the figures leave beside them. The bold face, which
        // is for headings, falls just short of it between noughts: (700 + 1300 − 1120) / 1500 = 0.587.
        let zero = outline(glyph('0', false).unwrap().number, false).bounding_box();
        let beside = glyph('0', false).unwrap().advance - zero.width() / CAPITAL_UNITS;
        assert!(glyph(' ', false).unwrap().advance + beside >= 0.6);
    }

    #[test]
    fn refuses_what_the_face_lacks() {
        assert!(can_letter("ø 1 27/32 ± 0.5° × 6 – “fit to girth” ⌀"));
        assert_eq!(cannot_letter("pitch 漢 57"), Some('漢'));
        assert_eq!(cannot_letter("tab\there"), Some('\t'));
    }
}
