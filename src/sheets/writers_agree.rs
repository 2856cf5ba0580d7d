//! Tests that hold the three writers to each other and to the paper.

use super::mark::{Mark, Pen, Role, at};
use super::{audit, pdf, png, sample, svg};

/// Writes the sample where `CENTREPOP_LOOK` names a folder, to be looked at.
#[test]
fn holds_that_the_sample_can_be_written_three_ways() {
    let sheet = sample::sheet();
    let (drawn, printed) = (
        svg::write(&sheet),
        pdf::write("Sample", std::slice::from_ref(&sheet)).unwrap(),
    );
    let seen = png::write_svg(&drawn, &sheet, 150.0).unwrap();
    if let Some(folder) = std::env::var_os("CENTREPOP_LOOK") {
        let folder = std::path::PathBuf::from(folder);
        std::fs::write(folder.join("sample.svg"), drawn).unwrap();
        std::fs::write(folder.join("sample.pdf"), printed).unwrap();
        std::fs::write(folder.join("sample.png"), seen).unwrap();
    }
}

#[test]
fn holds_that_two_runs_give_the_same_bytes() {
    let sheets = [sample::sheet(), sample::sheet()];
    assert_eq!(svg::write(&sheets[0]), svg::write(&sheets[1]));
    assert_eq!(
        pdf::write("Sample", &sheets).unwrap(),
        pdf::write("Sample", &sheets).unwrap()
    );
    assert_eq!(
        png::write(&sheets[0], 72.0).unwrap(),
        png::write(&sheets[1], 72.0).unwrap()
    );
}

#[test]
fn holds_that_the_sample_is_without_defects() {
    let found: Vec<String> = audit::audit(&sample::sheet())
        .iter()
        .map(ToString::to_string)
        .collect();
    assert_eq!(found, Vec::<String>::new());
}

#[test]
fn holds_that_every_mark_and_piece_is_in_the_svg() {
    let sheet = sample::sheet();
    let drawn = svg::write(&sheet);
    let (_, body) = drawn.split_once("</defs>").unwrap();
    // A path sets its pen down once for each line that it holds.
    let in_paths: usize = body
        .split(" d=\"")
        .skip(1)
        .filter_map(|rest| rest.split_once('"'))
        .map(|(data, _)| data.matches('M').count())
        .sum();
    let others: usize = ["<circle", "<use", "<rect"]
        .iter()
        .map(|tag| body.matches(tag).count())
        .sum();
    assert_eq!(in_paths + others, svg::shapes_of(&sheet));
}

#[test]
fn holds_that_an_svg_has_no_font_no_link_and_no_nought_below_nothing() {
    let drawn = svg::write(&sample::sheet());
    assert!(drawn.contains("width=\"420mm\"") && drawn.contains("viewBox=\"0 0 420 297\""));
    assert!(drawn.contains("<title>") && drawn.contains("Sample of pens &amp; lettering"));
    assert!(drawn.contains("aria-label=\"ø1 13/16 – stage ø1 3/4, pilot 1/2, ~11 63/64\""));
    for unwanted in ["<text", "font", "<image", "-0 ", "\"-0\"", "NaN", "url("] {
        assert!(!drawn.contains(unwanted), "{unwanted}");
    }
    let links = drawn.matches("http").count();
    let names = drawn.matches("xmlns").count();
    assert_eq!(links, names, "an address that is no name space");
}

/// Marks without size, a control character and a character that the face lacks: a box is drawn for the last, nothing is lost.
#[test]
fn holds_that_odd_marks_harm_no_writer() {
    let mut sheet = sample::sheet();
    sheet.title = "odd\u{1}title".into();
    sheet.marks.extend([
        Mark::line(at(50.0, 250.0), at(50.0, 250.0), Pen::Wide, Role::Object),
        Mark::circle(at(50.0, 250.0), 0.0, Pen::Wide, Role::Object),
        Mark::text(at(50.0, 250.0), "flat", 0.0),
        Mark::text(at(50.0, 250.0), "", 3.5),
        Mark::text(at(50.0, 260.0), "{ {1/} {a/2} 漢 \u{1}}", 3.5),
        Mark::Filled {
            corners: Vec::new(),
            role: Role::Object,
        },
    ]);
    assert!(png::write(&sheet, 50.0).is_ok());
    assert!(pdf::write("odd\u{1}title", &[sheet]).is_ok());
}
