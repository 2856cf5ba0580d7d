//! Each flaw found where it is, and nothing found where a draughtsman would find nothing.

use super::*;
use crate::sheets::mark::{PaperPoint, Pattern, Text, at};

fn sheet(marks: Vec<Mark>) -> Sheet {
    Sheet {
        number: 1,
        name: "trial".into(),
        title: "Trial".into(),
        width: 420.0,
        height: 297.0,
        marks,
    }
}

fn flaws(marks: Vec<Mark>) -> Vec<Flaw> {
    audit(&sheet(marks))
        .into_iter()
        .map(|defect| defect.flaw)
        .collect()
}

fn edge(from: PaperPoint, to: PaperPoint) -> Mark {
    Mark::line(from, to, Pen::Wide, Role::Object)
}

/// "88" at 3 mm is 2 × 1300/1500 × 3 = 5.2 mm long, so the next may start 5.2 mm on and not 5.0 mm on.
#[test]
fn by_hand_side_by_side() {
    let pair = |apart: f64| {
        vec![
            Mark::text(at(100.0, 100.0), "88", 3.0),
            Mark::text(at(100.0 + apart, 100.0), "77", 3.0),
        ]
    };
    assert_eq!(flaws(pair(5.2)), []);
    assert_eq!(flaws(pair(5.0)), [Flaw::Overlapped("77".into())]);
}

/// Two lines turned 45° whose upright bounds overlap by half but which lie 5 mm apart across the line.
#[test]
fn by_hand_turned_lines_that_only_their_bounds_mix() {
    let turned = |x: f64| {
        Text::new(at(x, 100.0), "withdrawal", 3.0)
            .turned(45.0)
            .into()
    };
    assert_eq!(flaws(vec![turned(100.0), turned(107.1)]), []);
    assert_eq!(
        flaws(vec![turned(100.0), turned(102.0)]),
        [Flaw::Overlapped("withdrawal".into())]
    );
}

/// Lettering read from the right stands above its point: 20.8 mm of "88888888" at 3 mm reaches from y 100 up to 79.2.
#[test]
fn by_hand_line_through_upright_words() {
    let words = || {
        Text::new(at(100.0, 100.0), "88888888", 3.0)
            .turned(90.0)
            .into()
    };
    let rule = |y: f64| edge(at(90.0, y), at(110.0, y));
    assert_eq!(
        flaws(vec![words(), rule(79.5)]),
        [Flaw::Crossed(Role::Object)]
    );
    assert_eq!(flaws(vec![words(), rule(78.5)]), []);
    assert_eq!(flaws(vec![words(), rule(101.0)]), []);
}

/// A 3.5 mm capital on a base line 1 mm above a 0.25 mm line clears it by 0.875 mm; 0.3 mm above, by 0.175 mm: too near.
#[test]
fn by_hand_figure_over_its_dimension_line() {
    let line = || {
        Mark::line(
            at(50.0, 100.0),
            at(150.0, 100.0),
            Pen::Narrow,
            Role::Dimension,
        )
    };
    let figure = |above: f64| {
        Text::new(at(100.0, 100.0 - above), "44", 3.5)
            .middle()
            .into()
    };
    assert_eq!(flaws(vec![line(), figure(1.0)]), []);
    assert_eq!(
        flaws(vec![line(), figure(0.3)]),
        [Flaw::Crossed(Role::Dimension)]
    );
}

/// The lower digits of a fraction hang 0.5 − 0.055 − 0.14 − 0.7 = −0.395 capital heights below the line: 1.4 mm at 3.5 mm.
#[test]
fn by_hand_fraction_hangs_onto_a_rule() {
    let rule = || {
        Mark::line(
            at(90.0, 101.2),
            at(120.0, 101.2),
            Pen::Narrow,
            Role::Furniture,
        )
    };
    let figure = |words: &str| Mark::text(at(100.0, 100.0), words, 3.5);
    assert_eq!(flaws(vec![rule(), figure("1.8125")]), []);
    assert_eq!(
        flaws(vec![rule(), figure("{1 13/16}")]),
        [Flaw::Crossed(Role::Furniture)]
    );
}

#[test]
fn holds_that_a_number_may_stand_in_its_hole_at_two_millimetres() {
    let hole = |radius: f64| Mark::circle(at(100.0, 100.0), radius, Pen::Wide, Role::Object);
    let number = || Text::new(at(100.0, 101.0), "100", 2.0).middle().into();
    let centre = || Mark::centre_line(at(90.0, 100.0), at(110.0, 100.0));
    assert_eq!(flaws(vec![hole(4.7), centre(), number()]), []);
    assert_eq!(
        flaws(vec![hole(2.0), number()]),
        [
            Flaw::TooLow {
                height: 2.0,
                least: 2.5
            },
            Flaw::Crossed(Role::Object)
        ]
    );
    assert_eq!(
        flaws(vec![number()]),
        [Flaw::TooLow {
            height: 2.0,
            least: 2.5
        }]
    );
}

/// An arc from 0° over 90° clockwise lies in the lower right quarter: words at the upper left of its circle are clear of it.
#[test]
fn by_hand_arc_is_where_it_is_drawn() {
    let arc = |start_deg: f64| Mark::Arc {
        centre: at(100.0, 100.0),
        radius: 30.0,
        start_deg,
        sweep_deg: 90.0,
        pen: Pen::Wide,
        pattern: Pattern::Continuous,
        role: Role::Object,
    };
    let words = || Text::new(at(78.8, 78.8), "88", 3.0).middle().into();
    assert_eq!(flaws(vec![arc(0.0), words()]), []);
    assert_eq!(
        flaws(vec![arc(180.0), words()]),
        [Flaw::Crossed(Role::Object)]
    );
}

/// A line up from 100 at x = 112 meets a hole of 5 mm at (110, 60): 2 mm beside its centre, so it runs through. At x = 115 it
/// touches, from within the hole it is the hole's own, and a line that is no extension line may run there.
#[test]
fn by_hand_extension_line_through_a_hole() {
    let hole = || Mark::circle(at(110.0, 60.0), 5.0, Pen::Wide, Role::Object);
    let line =
        |x: f64, from: f64, role: Role| Mark::line(at(x, from), at(x, 20.0), Pen::Narrow, role);
    let found = |x: f64, from: f64| flaws(vec![hole(), line(x, from, Role::Extension)]);
    assert_eq!(found(112.0, 100.0), [Flaw::ThroughHole]);
    assert_eq!(found(115.0, 100.0), []);
    assert_eq!(found(112.0, 60.0), []);
    assert_eq!(flaws(vec![hole(), line(112.0, 100.0, Role::Centre)]), []);
}

#[test]
fn refuses_marks_off_the_paper_and_out_of_the_frame() {
    let frame =
        || Mark::rectangle(at(20.0, 10.0), 390.0, 277.0, Pen::Frame, Role::Furniture).to_vec();
    let arrow = |x: f64| Mark::Filled {
        corners: vec![at(x, 50.0), at(x - 3.0, 49.5), at(x - 3.0, 50.5)],
        role: Role::Dimension,
    };
    let with = |mark: Mark| flaws(frame().into_iter().chain([mark]).collect());
    assert_eq!(with(arrow(400.0)), []);
    assert_eq!(with(arrow(412.0)), [Flaw::OutOfFrame]);
    assert_eq!(with(arrow(421.0)), [Flaw::OffPaper]);
    assert_eq!(with(Mark::text(at(14.0, 60.0), "A", 3.5)), []);
    assert_eq!(with(Mark::text(at(-1.0, 60.0), "A", 3.5)), [Flaw::OffPaper]);
    assert_eq!(
        with(Mark::text(at(408.0, 60.0), "too long", 3.5)),
        [Flaw::Crossed(Role::Furniture), Flaw::OffPaper]
    );
}

#[test]
fn refuses_marks_without_size_and_numbers_that_are_none() {
    assert_eq!(
        flaws(vec![edge(at(5.0, 5.0), at(5.0, 5.0))]),
        [Flaw::NoSize]
    );
    assert_eq!(
        flaws(vec![Mark::circle(
            at(50.0, 50.0),
            0.0,
            Pen::Wide,
            Role::Object
        )]),
        [Flaw::NoSize]
    );
    assert_eq!(
        flaws(vec![Mark::text(at(50.0, 50.0), "high", 0.0)]),
        [Flaw::NoSize]
    );
    assert_eq!(
        flaws(vec![edge(at(5.0, f64::NAN), at(5.0, 9.0))]),
        [Flaw::NoNumber]
    );
    assert_eq!(
        flaws(vec![Mark::text(at(50.0, 50.0), "漢", 3.5)]),
        [Flaw::CannotLetter('漢')]
    );
}

/// The middle of "88" at 3 mm: 2.6 mm on, and 1.5 mm up, since the figures reach 17/1500 past the line at head and foot alike.
#[test]
fn refuses_in_plain_words() {
    let found = audit(&sheet(vec![
        Mark::text(at(100.0, 100.0), "88", 3.0),
        edge(at(102.0, 90.0), at(102.0, 110.0)),
    ]));
    assert_eq!(
        found[0].to_string(),
        "at 102.6, 98.5 mm: \"88\" is crossed by an edge of the object"
    );
}
