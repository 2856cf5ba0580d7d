//! The written sheets and the face, read by other people's programs.
//!
//! They run where `CENTREPOP_OUTSIDE` is set, and say elsewhere that they were left out. `CENTREPOP_PYTHON` names the Python that
//! has `tests/requirements.txt`; without it that is `python3`.

use std::ffi::OsStr;
use std::process::Command;

use super::{face, pdf, png, sample, svg};

/// What a program says, or nothing where these tests are not asked for.
fn said<S: AsRef<OsStr>>(program: &str, arguments: &[S]) -> Option<Vec<u8>> {
    if std::env::var_os("CENTREPOP_OUTSIDE").is_none() {
        eprintln!("left out: {program} is asked only where CENTREPOP_OUTSIDE is set");
        return None;
    }
    let outcome = Command::new(program).args(arguments).output();
    match outcome {
        Ok(outcome) if outcome.status.success() => Some(outcome.stdout),
        refused => panic!("{program}: {refused:?}"),
    }
}

fn python<S: AsRef<OsStr>>(script: &str, arguments: &[S]) -> Option<serde_json::Value> {
    let program = std::env::var("CENTREPOP_PYTHON").unwrap_or_else(|_| "python3".into());
    let script = format!("{}/tests/outside/{script}", env!("CARGO_MANIFEST_DIR"));
    let arguments: Vec<&OsStr> = [OsStr::new(&script)]
        .into_iter()
        .chain(arguments.iter().map(AsRef::as_ref))
        .collect();
    let said = said(&program, &arguments)?;
    Some(serde_json::from_slice(&said).expect("the script prints JSON"))
}

fn sample_pdf() -> tempfile::NamedTempFile {
    let file = tempfile::NamedTempFile::new().unwrap();
    let sheets = [sample::sheet(), sample::sheet()];
    std::fs::write(file.path(), pdf::write("Sample", &sheets).unwrap()).unwrap();
    file
}

/// Two A3 pages: 420 × 72 / 25.4 = 1190.55 by 297 × 72 / 25.4 = 841.89 points.
#[test]
fn by_hand_page_size_read_by_another() {
    let file = sample_pdf();
    let Some(said) = said("pdfinfo", &[file.path()]) else {
        return;
    };
    let said = String::from_utf8_lossy(&said);
    assert!(said.contains("1190.55 x 841.89 pts (A3)"), "{said}");
    assert!(said.contains("Pages:           2"), "{said}");
    assert!(!said.contains("Date"), "{said}");
}

const FOUND: [&str; 6] = [
    "100 holes 1 27/32 dia (46.83) after reaming",
    "ø1 13/16 – stage ø1 3/4, pilot 1/2, ~11 63/64",
    "2 19/32 in pitch; 7/8 × 11 tpi; □3/4; “fit to girth”",
    "reads from the right 36 1/2",
    "BOLD 1 27/32 ø4 1/2",
    "ø45",
];

#[test]
fn holds_that_fractions_and_signs_are_found_by_a_text_reader() {
    let file = sample_pdf();
    let arguments = [
        OsStr::new("-layout"),
        file.path().as_os_str(),
        OsStr::new("-"),
    ];
    let Some(said) = said("pdftotext", &arguments) else {
        return;
    };
    let said = String::from_utf8_lossy(&said);
    for words in FOUND {
        assert!(said.contains(words), "{words} not in {said}");
    }
}

/// The sides of the 100 mm square, the widths of the four pens, the paper and the words, as another reader of PDF measures them.
#[test]
fn holds_that_a_square_measures_100_mm() {
    let file = sample_pdf();
    let arguments: Vec<&OsStr> = [file.path().as_os_str()]
        .into_iter()
        .chain(FOUND.iter().map(OsStr::new))
        .collect();
    let Some(pages) = python("pdf_marks.py", &arguments) else {
        return;
    };
    let page = &pages[0];
    let number = |value: &serde_json::Value| value.as_f64().unwrap();
    assert_eq!(format!("{:.3}", number(&page["width"])), "420.000");
    assert_eq!(format!("{:.3}", number(&page["height"])), "297.000");
    let strokes: Vec<Vec<f64>> = serde_json::from_value(page["strokes"].clone()).unwrap();
    let sides = [
        "295.000 180.000 395.000 180.000 0.250",
        "395.000 180.000 395.000 280.000 0.250",
        "395.000 280.000 295.000 280.000 0.250",
        "295.000 280.000 295.000 180.000 0.250",
        "20.000 10.000 410.000 10.000 0.700",
        "30.000 34.000 140.000 34.000 0.500",
        "30.000 50.000 140.000 50.000 0.350",
    ];
    let read: Vec<String> = strokes
        .iter()
        .map(|stroke| {
            let numbers: Vec<String> = stroke.iter().map(|n| format!("{n:.3}")).collect();
            numbers.join(" ")
        })
        .collect();
    for side in sides {
        assert!(read.iter().any(|stroke| stroke == side), "{side}");
    }
    for words in FOUND {
        assert!(page["found"][words].as_u64().unwrap() > 0, "{words}");
    }
    assert_eq!(page["fonts"].as_array().unwrap().len(), 2);
}

/// Every character of both faces is as wide here as a general font reader finds it; and the face may be embedded by anyone.
#[test]
fn holds_that_every_advance_is_the_faces_own() {
    for (name, bold) in [("B612-Regular", false), ("B612-Bold", true)] {
        let path = format!("{}/src/sheets/face/{name}.otf", env!("CARGO_MANIFEST_DIR"));
        let Some(read) = python("face_widths.py", &[path]) else {
            return;
        };
        assert_eq!(read["capital"].as_f64(), Some(face::CAPITAL_UNITS));
        assert_eq!(read["em"].as_f64(), Some(face::EM_UNITS));
        assert_eq!(read["embedding"].as_u64(), Some(0));
        let advances = read["advances"].as_object().unwrap();
        assert!(advances.len() > 500);
        for (code, advance) in advances {
            let character = char::from_u32(code.parse().unwrap()).unwrap();
            let ours = face::glyph(character, bold).unwrap().advance * face::CAPITAL_UNITS;
            assert!(
                (ours - advance.as_f64().unwrap()).abs() < 1e-9,
                "{character}"
            );
        }
    }
}

/// The PDF drawn by another program against our own picture, in cells of 1 mm: neither shows ink where the other has none, and
/// the ink of the whole sheet is alike to a two-hundredth.
#[test]
fn holds_that_pdf_and_picture_show_the_same() {
    let file = sample_pdf();
    let folder = tempfile::tempdir().unwrap();
    let page = folder.path().join("page");
    let arguments = [
        "-gray",
        "-png",
        "-r",
        "127",
        "-f",
        "1",
        "-l",
        "1",
        "-singlefile",
    ];
    let arguments: Vec<&OsStr> = arguments
        .iter()
        .map(OsStr::new)
        .chain([file.path().as_os_str(), page.as_os_str()])
        .collect();
    if said("pdftocairo", &arguments).is_none() {
        return;
    }
    let sheet = sample::sheet();
    let ours = cells(&png::picture(&svg::write(&sheet), &sheet, DOTS_PER_MM as f64).unwrap());
    let theirs = cells(&png::open(
        &std::fs::read(page.with_extension("png")).unwrap(),
    ));
    for (one, other) in [(&ours, &theirs), (&theirs, &ours)] {
        for (y, row) in one.iter().enumerate() {
            for (x, here) in row.iter().enumerate() {
                let near = neighbours(x, y)
                    .map(|(x, y)| other[y][x])
                    .fold(0.0, f64::max);
                assert!(*here < 0.1 || near > 0.03, "at {x}, {y} mm: {here} {near}");
            }
        }
    }
    let ink = |cells: &[[f64; ACROSS]]| cells.iter().flatten().sum::<f64>();
    let share = ink(&ours) / ink(&theirs);
    assert!((share - 1.0).abs() < 0.005, "{share}");
}

/// 127 dots to the inch.
const DOTS_PER_MM: usize = 5;
const ACROSS: usize = 420;
const DOWN: usize = 297;

fn neighbours(x: usize, y: usize) -> impl Iterator<Item = (usize, usize)> {
    let rows = y.saturating_sub(1)..(y + 2).min(DOWN);
    rows.flat_map(move |row| {
        (x.saturating_sub(1)..(x + 2).min(ACROSS)).map(move |column| (column, row))
    })
}

/// Share of ink in each square millimetre.
fn cells(picture: &png::Picture) -> Vec<[f64; ACROSS]> {
    let mut cells = vec![[0.0; ACROSS]; DOWN];
    let rows = picture.greys.chunks(picture.width as usize);
    for (y, row) in rows.enumerate().take(DOWN * DOTS_PER_MM) {
        for (x, grey) in row.iter().enumerate().take(ACROSS * DOTS_PER_MM) {
            cells[y / DOTS_PER_MM][x / DOTS_PER_MM] += f64::from(255 - grey) / 255.0;
        }
    }
    let dots = (DOTS_PER_MM * DOTS_PER_MM) as f64;
    cells.iter_mut().flatten().for_each(|ink| *ink /= dots);
    cells
}
