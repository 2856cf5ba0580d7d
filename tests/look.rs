//! Sheets as they looked when somebody last looked at them: small pictures in `tests/look/`, compared dot for dot but for a few.
//!
//! Where a sheet looks otherwise, its new picture is left in `target/look/`. Look at it beside the old one; if it is better, run
//! `CENTREPOP_ACCEPT_LOOK=1 cargo test --test look` and hand in the new pictures with the change.

use std::fs::{self, File};
use std::io::{BufReader, BufWriter};
use std::path::{Path, PathBuf};

use centrepop::checks::run_checks;
use centrepop::cut::cut_parts;
use centrepop::design::set_out;
use centrepop::sheets::{Sheet, draw_sheets, png as picture};
use centrepop::spec::read_spec_file;

/// Resolution of the pictures, dots to the inch: words of 2.5 mm are five dots high, so a changed figure shows.
const DOTS_PER_INCH: f64 = 50.0;
/// Side of a cell, dots: about the width of one figure.
const CELL: usize = 6;
/// Two cells whose mean greys are nearer than this look alike, of 255: what another machine's rounding of a line's edge makes.
const SAME_GREY: f64 = 12.0;
/// So many cells in ten thousand may differ: the ten figures of the fingerprint, which change with any word of a spec.
const MAY_DIFFER: usize = 15;

/// Greys of a picture, four bits to a dot, row by row.
struct Greys {
    width: usize,
    height: usize,
    dots: Vec<u8>,
}

impl Greys {
    /// Reads a picture of 8 or 4 bits to a dot.
    fn read(bytes: impl std::io::BufRead + std::io::Seek) -> Greys {
        let mut decoder = png::Decoder::new(bytes);
        decoder.set_transformations(png::Transformations::EXPAND);
        let mut reader = decoder.read_info().expect("a picture");
        let mut dots = vec![0; reader.output_buffer_size().expect("a size")];
        let read = reader.next_frame(&mut dots).expect("a picture");
        assert_eq!(read.color_type, png::ColorType::Grayscale);
        Greys {
            width: read.width as usize,
            height: read.height as usize,
            dots: dots.into_iter().map(|grey| grey / 16).collect(),
        }
    }

    fn write(&self, path: &Path) {
        let folder = path.parent().expect("a folder");
        fs::create_dir_all(folder).expect("the folder can be made");
        let file = BufWriter::new(File::create(path).expect("the picture can be written"));
        let mut encoder = png::Encoder::new(file, self.width as u32, self.height as u32);
        encoder.set_color(png::ColorType::Grayscale);
        encoder.set_depth(png::BitDepth::Four);
        encoder.set_compression(png::Compression::High);
        let packed: Vec<u8> = self
            .dots
            .chunks(self.width)
            .flat_map(|row| row.chunks(2).map(|p| p[0] << 4 | p.get(1).unwrap_or(&0)))
            .collect();
        let mut writer = encoder.write_header().expect("a head");
        writer.write_image_data(&packed).expect("the dots");
    }

    /// Mean grey of every cell, of 255.
    fn cells(&self) -> Vec<f64> {
        let across = self.width.div_ceil(CELL);
        let mut sums = vec![(0.0, 0.0); across * self.height.div_ceil(CELL)];
        for (i, &grey) in self.dots.iter().enumerate() {
            let (x, y) = (i % self.width, i / self.width);
            let cell = &mut sums[y / CELL * across + x / CELL];
            *cell = (cell.0 + f64::from(grey) * 17.0, cell.1 + 1.0);
        }
        sums.into_iter().map(|(sum, count)| sum / count).collect()
    }

    /// How many cells differ from those of another picture; all of them where the papers differ.
    fn differ(&self, other: &Greys) -> usize {
        let (a, b) = (self.cells(), other.cells());
        if (self.width, self.height) != (other.width, other.height) {
            return a.len().max(b.len());
        }
        let pairs = a.iter().zip(&b);
        pairs.filter(|(a, b)| (**a - **b).abs() > SAME_GREY).count()
    }
}

fn sheets_of(spec: &str) -> Vec<Sheet> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("specs")
        .join(spec);
    let spec = read_spec_file(&path).expect("the spec can be read");
    let design = set_out(&spec).expect("the spec can be set out");
    let findings = run_checks(&spec, &design);
    let parts = cut_parts(&spec, &design).expect("the parts can be cut");
    draw_sheets(&spec, &design, &findings, &parts)
}

/// Looks at every sheet of a spec; tells which look otherwise, and which are gone.
fn look(spec: &str) {
    let accept = std::env::var_os("CENTREPOP_ACCEPT_LOOK").is_some_and(|set| set == "1");
    let stem = spec.trim_end_matches(".yaml");
    let top = Path::new(env!("CARGO_MANIFEST_DIR"));
    let (old, new) = (
        top.join("tests/look").join(stem),
        top.join("target/look").join(stem),
    );
    if accept {
        let _ = fs::remove_dir_all(&old);
    }
    let _ = fs::remove_dir_all(&new);
    let mut otherwise = Vec::new();
    let mut drawn = Vec::new();
    for sheet in sheets_of(spec) {
        let name = format!("{:02}-{}.png", sheet.number, sheet.name);
        let bytes = picture::write(&sheet, DOTS_PER_INCH).expect("a picture can be made");
        let now = Greys::read(std::io::Cursor::new(bytes));
        drawn.push(name.clone());
        if accept {
            now.write(&old.join(&name));
            continue;
        }
        let differ = match File::open(old.join(&name)) {
            Ok(file) => now.differ(&Greys::read(BufReader::new(file))),
            Err(_) => now.cells().len(),
        };
        if differ * 10_000 > now.cells().len() * MAY_DIFFER {
            now.write(&new.join(&name));
            otherwise.push(format!("{name}: {differ} of {} cells", now.cells().len()));
        }
    }
    let gone = names_in(&old)
        .into_iter()
        .filter(|name| !drawn.contains(name));
    otherwise.extend(gone.map(|name| format!("{name}: no longer drawn")));
    assert!(
        otherwise.is_empty(),
        "these sheets look otherwise than in tests/look/{stem}:\n  {}\nlook at them in {}; if they are better, run\n  CENTREPOP_ACCEPT_LOOK=1 cargo test --test look",
        otherwise.join("\n  "),
        new.strip_prefix(top).unwrap_or(&new).display(),
    );
}

fn names_in(folder: &PathBuf) -> Vec<String> {
    let entries = fs::read_dir(folder).into_iter().flatten();
    let mut names: Vec<String> = entries
        .filter_map(|entry| entry.ok()?.file_name().into_string().ok())
        .collect();
    names.sort();
    names
}

#[test]
fn unchanged_sheets_of_marl_hen() {
    look("marl-hen-smokebox.yaml");
}

#[test]
fn unchanged_sheets_of_hobthrush() {
    look("hobthrush-smokebox.yaml");
}

#[test]
fn unchanged_sheets_of_tallow_moor() {
    look("tallow-moor-smokebox.yaml");
}

#[test]
fn unchanged_sheets_of_pinders_oak() {
    look("pinders-oak-smokebox.yaml");
}

#[test]
fn unchanged_sheets_of_gritstone() {
    look("gritstone-smokebox.yaml");
}
