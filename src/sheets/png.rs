//! One sheet as a picture: drawn from its SVG, so that what is seen is what the SVG holds.

use std::fmt;

use resvg::tiny_skia::{Path, PathSegment, Pixmap, Transform};
use resvg::usvg::{Node, Options, Tree};

use super::mark::Sheet;
use super::svg;
use crate::units::Length;

/// Most dots a picture may have: an A1 sheet at 300 dots to the inch is 70 million.
pub const MOST_DOTS: f64 = 80e6;

/// Why a picture could not be made.
#[derive(Debug)]
pub enum NoPicture {
    /// So many dots would be needed.
    TooLarge {
        /// Across.
        width: f64,
        /// Down.
        height: f64,
    },
    /// The reader of SVG refused our sheet.
    Unreadable(resvg::usvg::Error),
    /// The reader of SVG lost something of our sheet.
    Lost {
        /// Shapes that were written.
        written: usize,
        /// Shapes that were read.
        read: usize,
    },
    /// The picture could not be packed.
    Unpacked(png::EncodingError),
}

impl fmt::Display for NoPicture {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            NoPicture::TooLarge { width, height } => write!(
                f,
                "the picture would be {width:.0} by {height:.0} dots, more than {:.0} million; ask for fewer dots to the inch",
                MOST_DOTS / 1e6
            ),
            NoPicture::Unreadable(cause) => write!(f, "the sheet could not be read back: {cause}"),
            NoPicture::Lost { written, read } => {
                write!(
                    f,
                    "the sheet has {written} shapes, but {read} were read back"
                )
            }
            NoPicture::Unpacked(cause) => write!(f, "the picture could not be packed: {cause}"),
        }
    }
}

impl std::error::Error for NoPicture {}

/// Draws a sheet at so many dots to the inch, in greys; the file states the resolution, so that it prints at its true size.
pub fn write(sheet: &Sheet, dots_per_inch: f64) -> Result<Vec<u8>, NoPicture> {
    write_svg(&svg::write(sheet), sheet, dots_per_inch)
}

/// The same, from a sheet that is already written as SVG.
pub fn write_svg(written: &str, sheet: &Sheet, dots_per_inch: f64) -> Result<Vec<u8>, NoPicture> {
    let dots_per_mm = dots_per_inch / Length::inches(1.0).to_mm();
    let picture = picture(written, sheet, dots_per_mm)?;
    pack(&picture, dots_per_mm)
}

/// A picture in greys, row by row from the top: 0 black, 255 white.
pub(super) struct Picture {
    /// Dots across.
    pub width: u32,
    /// Dots down.
    pub height: u32,
    /// One byte a dot.
    pub greys: Vec<u8>,
}

/// Draws a sheet that is written as SVG.
pub(super) fn picture(
    written: &str,
    sheet: &Sheet,
    dots_per_mm: f64,
) -> Result<Picture, NoPicture> {
    let (width, height) = dots(sheet, dots_per_mm)?;
    let tree = read_back(written, sheet)?;
    let mut drawn = Pixmap::new(width, height).ok_or(NoPicture::TooLarge {
        width: f64::from(width),
        height: f64::from(height),
    })?;
    let scale = Transform::from_scale(
        width as f32 / tree.size().width(),
        height as f32 / tree.size().height(),
    );
    resvg::render(&tree, scale, &mut drawn.as_mut());
    // Black on white has no colours: one byte a dot.
    let greys = drawn.pixels().iter().map(|dot| dot.red()).collect();
    Ok(Picture {
        width,
        height,
        greys,
    })
}

fn dots(sheet: &Sheet, dots_per_mm: f64) -> Result<(u32, u32), NoPicture> {
    let (width, height) = (
        (sheet.width * dots_per_mm).round(),
        (sheet.height * dots_per_mm).round(),
    );
    let possible = width >= 1.0 && height >= 1.0 && width * height <= MOST_DOTS;
    possible
        .then_some((width as u32, height as u32))
        .ok_or(NoPicture::TooLarge { width, height })
}

/// Reads our SVG, and counts its shapes: the reader only logs what it leaves out.
fn read_back(written: &str, sheet: &Sheet) -> Result<Tree, NoPicture> {
    let tree = Tree::from_str(written, &Options::default()).map_err(NoPicture::Unreadable)?;
    let written = svg::shapes_of(sheet);
    let read = shapes(tree.root());
    if read == written {
        Ok(tree)
    } else {
        Err(NoPicture::Lost { written, read })
    }
}

fn shapes(group: &resvg::usvg::Group) -> usize {
    group
        .children()
        .iter()
        .map(|node| match node {
            Node::Group(inner) => shapes(inner),
            Node::Path(path) if path.stroke().is_some() => lines(path.data()),
            Node::Path(_) => 1,
            Node::Image(_) | Node::Text(_) => 0,
        })
        .sum()
}

/// Lines of a path: each begins where the pen is set down.
fn lines(data: &Path) -> usize {
    let is_beginning = |segment: &PathSegment| matches!(segment, PathSegment::MoveTo(_));
    data.segments().filter(is_beginning).count()
}

fn pack(picture: &Picture, dots_per_mm: f64) -> Result<Vec<u8>, NoPicture> {
    let mut file = Vec::new();
    let mut encoder = png::Encoder::new(&mut file, picture.width, picture.height);
    encoder.set_color(png::ColorType::Grayscale);
    encoder.set_depth(png::BitDepth::Four);
    // Lines on white are alike along a row: any reckoning from row to row only makes the file longer.
    encoder.set_filter(png::Filter::NoFilter);
    let per_metre = (dots_per_mm * 1000.0).round() as u32;
    encoder.set_pixel_dims(Some(png::PixelDimensions {
        xppu: per_metre,
        yppu: per_metre,
        unit: png::Unit::Meter,
    }));
    let mut writer = encoder.write_header().map_err(NoPicture::Unpacked)?;
    writer
        .write_image_data(&in_sixteen_greys(picture))
        .map_err(NoPicture::Unpacked)?;
    writer.finish().map_err(NoPicture::Unpacked)?;
    Ok(file)
}

/// Two dots to a byte, each row from a byte of its own: the edge of a line needs no more greys than sixteen.
fn in_sixteen_greys(picture: &Picture) -> Vec<u8> {
    let sixteenth = |grey: &u8| ((u16::from(*grey) * 15 + 127) / 255) as u8;
    picture
        .greys
        .chunks(picture.width as usize)
        .flat_map(|row| row.chunks(2))
        .map(|two| (sixteenth(&two[0]) << 4) | two.get(1).map_or(0, sixteenth))
        .collect()
}

/// Opens somebody else's picture in greys.
#[cfg(test)]
pub(super) fn open(file: &[u8]) -> Picture {
    let mut reader = png::Decoder::new(std::io::Cursor::new(file))
        .read_info()
        .unwrap();
    let mut greys = vec![0; reader.output_buffer_size().unwrap()];
    let read = reader.next_frame(&mut greys).unwrap();
    assert_eq!(read.color_type, png::ColorType::Grayscale);
    Picture {
        width: read.width,
        height: read.height,
        greys,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sheets::sample;

    /// 150 dots to the inch are 150 / 0.0254 = 5905.5 dots to the metre, so 5906; an A3 sheet is 420 × 5.9055 = 2480 dots across.
    #[test]
    fn by_hand_resolution_stated_in_the_file() {
        let file = write(&sample::sheet(), 150.0).unwrap();
        let reader = png::Decoder::new(std::io::Cursor::new(file))
            .read_info()
            .unwrap();
        let stated = reader.info();
        assert_eq!((stated.width, stated.height), (2480, 1754));
        let dots = stated.pixel_dims.unwrap();
        assert_eq!(
            (dots.xppu, dots.yppu, dots.unit),
            (5906, 5906, png::Unit::Meter)
        );
    }

    #[test]
    fn refuses_a_picture_too_large_to_hold() {
        let refused = write(&sample::sheet(), 2400.0).unwrap_err();
        assert_eq!(
            refused.to_string(),
            "the picture would be 39685 by 28063 dots, more than 80 million; ask for fewer dots to the inch"
        );
    }

    #[test]
    fn refuses_a_sheet_of_which_something_is_lost() {
        // A glyph under another name: whatever refers to it shows nothing, and the reader only logs that.
        let broken = svg::write(&sample::sheet()).replacen(r#"id="r"#, r#"id="unknown"#, 1);
        let refused = write_svg(&broken, &sample::sheet(), 72.0).unwrap_err();
        let told = refused.to_string();
        let shapes = svg::shapes_of(&sample::sheet());
        assert!(
            told.starts_with(&format!("the sheet has {shapes} shapes, but ")),
            "{told}"
        );
    }
}
