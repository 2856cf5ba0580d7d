//! A sheet with every pen, pattern, lettering height, sign, fraction and turn on it, for looking at and for the writers' tests.

use super::mark::{Mark, Pattern, Pen, Role, Sheet, Text, at};
use crate::units::angle;

const PENS: [Pen; 4] = [Pen::Frame, Pen::Wide, Pen::Middle, Pen::Narrow];
const PATTERNS: [Pattern; 4] = [
    Pattern::Continuous,
    Pattern::Dashed,
    Pattern::Chain,
    Pattern::DoubleChain,
];
/// Lettering heights of ISO 3098, mm.
const HEIGHTS: [f64; 5] = [2.5, 3.5, 5.0, 7.0, 10.0];

/// An A3 sheet of everything that a writer must draw.
pub fn sheet() -> Sheet {
    let mut marks = Vec::new();
    marks.extend(Mark::rectangle(
        at(20.0, 10.0),
        390.0,
        277.0,
        Pen::Frame,
        Role::Furniture,
    ));
    lines(&mut marks);
    circles_and_arcs(&mut marks);
    heights(&mut marks);
    fractions(&mut marks);
    turned(&mut marks);
    // A square of 100 mm to be measured in each of the written files.
    marks.extend(Mark::rectangle(
        at(295.0, 180.0),
        100.0,
        100.0,
        Pen::Narrow,
        Role::Object,
    ));
    Sheet {
        number: 1,
        name: "sample".into(),
        title: "Sample of pens & lettering".into(),
        width: 420.0,
        height: 297.0,
        marks,
    }
}

fn lines(marks: &mut Vec<Mark>) {
    let mut y = 18.0;
    for pen in PENS {
        for pattern in PATTERNS {
            marks.push(Mark::Line {
                from: at(30.0, y),
                to: at(140.0, y),
                pen,
                pattern,
                role: Role::Centre,
            });
            y += 4.0;
        }
    }
}

fn circles_and_arcs(marks: &mut Vec<Mark>) {
    for (i, pattern) in PATTERNS.into_iter().enumerate() {
        let centre = at(175.0 + 50.0 * i as f64, 40.0);
        marks.push(Mark::Circle {
            centre,
            radius: 18.0,
            pen: Pen::Narrow,
            pattern,
            role: Role::Centre,
        });
        marks.push(Mark::Arc {
            centre,
            radius: 12.0,
            start_deg: -90.0,
            sweep_deg: 300.0,
            pen: Pen::Wide,
            pattern,
            role: Role::Object,
        });
        marks.push(Mark::Arc {
            centre,
            radius: 7.0,
            start_deg: 0.0,
            sweep_deg: -120.0,
            pen: Pen::Middle,
            pattern: Pattern::Continuous,
            role: Role::Object,
        });
        marks.push(Mark::centre_line(
            at(centre.x - 21.0, 40.0),
            at(centre.x + 21.0, 40.0),
        ));
        marks.push(Mark::centre_line(at(centre.x, 19.0), at(centre.x, 61.0)));
    }
    marks.push(Mark::line(
        at(355.0, 70.0),
        at(400.0, 70.0),
        Pen::Narrow,
        Role::Dimension,
    ));
    for (tip, back) in [(355.0, 358.0), (400.0, 397.0)] {
        marks.push(Mark::Filled {
            corners: vec![at(tip, 70.0), at(back, 69.5), at(back, 70.5)],
            role: Role::Dimension,
        });
    }
    marks.push(Text::new(at(377.5, 69.0), "ø45", 3.5).middle().into());
}

fn heights(marks: &mut Vec<Mark>) {
    let mut y = 88.0;
    for height in HEIGHTS {
        marks.push(Mark::text(
            at(30.0, y),
            format!("{height} mm ABCDE 1Il O0"),
            height,
        ));
        y += height * 1.9;
        marks.push(
            Text::new(
                at(30.0, y),
                format!("{height} mm bold ø44.45 ± 0.5° × 6"),
                height,
            )
            .bold()
            .into(),
        );
        y += height * 1.9;
    }
}

fn fractions(marks: &mut Vec<Mark>) {
    let words = [
        "100 holes {1 27/32} dia (46.83) after reaming",
        "ø{1 13/16} – stage ⌀{1 3/4}, pilot {1/2}, ~{11 63/64}",
        "{2 19/32} in pitch; {7/8} × 11 tpi; □{3/4}; “fit to girth”",
    ];
    for (i, height) in [2.5, 3.5, 5.0].into_iter().enumerate() {
        for (j, line) in words.into_iter().enumerate() {
            let y = 85.0 + 30.0 * i as f64 + 10.0 * j as f64;
            marks.push(Mark::text(at(245.0, y), line, height));
        }
    }
    marks.push(
        Text::new(at(200.0, 275.0), "BOLD {1 27/32} ø{4 1/2}", 5.0)
            .bold()
            .into(),
    );
}

fn turned(marks: &mut Vec<Mark>) {
    marks.push(
        Text::new(at(28.0, 280.0), "reads from the right {36 1/2}", 3.5)
            .turned(90.0)
            .into(),
    );
    for turn in [0.0_f64, 30.0, 60.0, 120.0, 180.0, 240.0, 300.0] {
        let (sin, cos) = (angle::sin(turn.to_radians()), angle::cos(turn.to_radians()));
        let start = at(245.0 + 12.0 * cos, 225.0 - 12.0 * sin);
        marks.push(
            Text::new(start, format!("ø{turn}°"), 3.5)
                .turned(turn)
                .into(),
        );
    }
}
