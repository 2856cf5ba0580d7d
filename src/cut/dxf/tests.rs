//! The writer, on parts built by hand: what stands in the text, and that it comes back as it went in.

use super::*;
use crate::cut::part::{PartKind, Shape};
use crate::cut::read_back::read_back;
use crate::design::Outline;
use crate::spec::Process;
use crate::units::Size;

/// One of everything that a file may hold, on every layer.
pub(crate) fn one_of_each() -> CutPart {
    let at = Point::new;
    CutPart {
        name: "plate".into(),
        kind: PartKind::Plate,
        number_off: 1,
        process: Process::Waterjet,
        thickness: Size::read("16 mm").ok(),
        material: None,
        lies: "FACE UP IS THE SMOKEBOX SIDE".into(),
        shapes: vec![
            (
                Layer::Pop,
                Shape::Cross {
                    at: at(-100.0, 5.0),
                    arm: 3.0,
                },
            ),
            (Layer::Pop, Shape::Dot(at(100.0, -1e-9))),
            (
                Layer::Scribe,
                Shape::Arc {
                    centre: at(0.0, 0.0),
                    radius: 300.0,
                    start: 6.0,
                    end: 7.0,
                },
            ),
            (
                Layer::Stamp,
                Shape::Line {
                    from: at(1.0, 1.0),
                    to: at(1.0 / 3.0, 2.0),
                },
            ),
            (
                Layer::CutInside,
                Shape::Circle {
                    centre: at(0.0, 30.0),
                    radius: 18.5,
                },
            ),
            (
                Layer::CutOutside,
                Shape::Closed(Outline::circle(Point::CENTRE, 400.0)),
            ),
            (
                Layer::Reference,
                Shape::Line {
                    from: at(500.0, 0.0),
                    to: at(600.0, 0.0),
                },
            ),
        ],
        holes_cut: Vec::new(),
        withheld: Vec::new(),
        places: Vec::new(),
        remarks: Vec::new(),
        inscriptions: Vec::new(),
        by_hand: Vec::new(),
        quarters: Vec::new(),
        mass_kg: None,
    }
}

fn heading() -> Heading {
    Heading {
        lines: vec!["UNITS MILLIMETRES".into(), "caf\u{e9}\r\n  0".into()],
    }
}

fn written(version: Version) -> String {
    write(&one_of_each(), &heading(), version).expect("it can be written")
}

const BOTH: [Version; 2] = [Version::R12, Version::R2000];

#[test]
fn holds_what_was_written_is_read_back() {
    for version in BOTH {
        let read = read_back(&written(version), &one_of_each(), version);
        assert_eq!(read, Ok(()), "{version:?}");
    }
}

#[test]
fn holds_a_moved_hole_is_found_in_reading_back() {
    let mut moved = one_of_each();
    moved.shapes[4].1 = Shape::Circle {
        centre: Point::new(0.0, 30.000_002),
        radius: 18.5,
    };
    for version in BOTH {
        let differences = read_back(&written(version), &moved, version).expect_err("it differs");
        assert_eq!(differences.len(), 1);
        assert_eq!(differences[0].place, "entity 6 on CUT-INSIDE");
    }
}

#[test]
fn holds_a_lost_entity_an_other_unit_and_a_mirrored_one_are_found_in_reading_back() {
    let part = one_of_each();
    for version in BOTH {
        let text = written(version);
        let circle = text.find("CIRCLE").expect("a circle");
        let renamed = format!("{}ELLIPSE{}", &text[..circle], &text[circle + 6..]);
        assert!(read_back(&renamed, &part, version).is_err());
        let inches = text.replace("$INSUNITS\r\n 70\r\n4", "$INSUNITS\r\n 70\r\n1");
        assert!(read_back(&inches, &part, version).is_err());
        let mirrored = text.replace(
            " 40\r\n18.500000\r\n",
            " 40\r\n18.500000\r\n210\r\n0.0\r\n220\r\n0.0\r\n230\r\n-1.0\r\n",
        );
        assert_ne!(mirrored, text);
        assert!(read_back(&mirrored, &part, version).is_err());
    }
}

#[test]
fn holds_every_line_is_ascii_and_ends_in_cr_lf() {
    for version in BOTH {
        let text = written(version);
        assert!(text.is_ascii());
        assert_eq!(text.matches('\n').count(), text.matches("\r\n").count());
        assert_eq!(text.matches('\r').count(), text.matches("\r\n").count());
        assert!(text.starts_with("999\r\nUNITS MILLIMETRES\r\n999\r\ncaf???  0\r\n"));
        assert!(text.ends_with("  0\r\nEOF\r\n"));
    }
}

#[test]
fn holds_numbers_have_fixed_places_and_no_negative_nought() {
    for version in BOTH {
        let text = written(version);
        assert!(!text.contains("-0.000000\r\n"));
        for number in text
            .lines()
            .filter(|l| l.contains('.') && l.parse::<f64>().is_ok())
        {
            let places = number.rsplit('.').next().expect("it has a point").len();
            assert!(places == 6 || places == 12, "{number}");
        }
        // A third of a millimetre, to the sixth place.
        assert!(text.contains("\r\n0.333333\r\n"));
    }
}

#[test]
fn holds_corners_and_ends_of_an_r12_polyline_lie_on_its_layer() {
    let text = written(Version::R12);
    for kind in ["VERTEX", "SEQEND"] {
        let on_layer = format!("  0\r\n{kind}\r\n  8\r\nCUT-OUTSIDE\r\n");
        assert_eq!(text.matches(kind).count(), text.matches(&*on_layer).count());
    }
    assert_eq!(text.matches("\r\nVERTEX\r\n").count(), 2);
}

/// The circle of 400 reaches from -400 to 400; the reference line at 600 does not count.
#[test]
fn by_hand_extents_are_those_of_the_cut_layers() {
    for version in BOTH {
        let text = written(version);
        for wanted in [
            "$EXTMIN\r\n 10\r\n-400.000000\r\n 20\r\n-400.000000\r\n",
            "$EXTMAX\r\n 10\r\n400.000000\r\n 20\r\n400.000000\r\n",
            "$LIMMIN\r\n 10\r\n-400.000000\r\n 20\r\n-400.000000\r\n",
            "$LIMMAX\r\n 10\r\n400.000000\r\n 20\r\n400.000000\r\n",
            "$INSUNITS\r\n 70\r\n4\r\n",
            "$MEASUREMENT\r\n 70\r\n1\r\n",
        ] {
            assert!(text.contains(wanted), "{wanted}");
        }
    }
}

/// Half a turn has the tangent of 45°, which is 1.
#[test]
fn by_hand_a_circle_as_a_contour_is_two_bulges_of_one() {
    for version in BOTH {
        assert_eq!(
            written(version)
                .matches(" 42\r\n1.000000000000\r\n")
                .count(),
            2
        );
    }
}

#[test]
fn refuses_numbers_that_are_none_and_places_beyond_any_plate() {
    for bad in [f64::NAN, f64::INFINITY, 1e300] {
        let mut part = one_of_each();
        part.shapes[1].1 = Shape::Dot(Point::new(bad, 0.0));
        assert_eq!(
            write(&part, &heading(), Version::R12),
            Err(Unwritable::OutOfRange("point", "POP"))
        );
    }
}

#[test]
fn refuses_a_part_with_nothing_to_cut() {
    let mut part = one_of_each();
    part.shapes.retain(|(layer, _)| !layer.is_cut());
    assert_eq!(
        write(&part, &heading(), Version::R2000),
        Err(Unwritable::NothingToCut)
    );
}

#[test]
fn holds_writing_twice_gives_the_same_bytes() {
    for version in BOTH {
        assert_eq!(written(version), written(version));
    }
}

/// Nothing but lines, arcs, circles, polylines and points is let through, on whatever layer it lies.
#[test]
fn refuses_entities_that_no_cut_file_holds() {
    let entities = [
        (
            "TEXT",
            "AcDbText",
            " 10\r\n0.0\r\n 20\r\n0.0\r\n 40\r\n5.0\r\n  1\r\nTOP\r\n",
        ),
        (
            "MTEXT",
            "AcDbMText",
            " 10\r\n0.0\r\n 20\r\n0.0\r\n 40\r\n5.0\r\n  1\r\nTOP\r\n",
        ),
        ("SPLINE", "AcDbSpline", " 70\r\n8\r\n 71\r\n3\r\n"),
        (
            "ELLIPSE",
            "AcDbEllipse",
            " 10\r\n0.0\r\n 20\r\n0.0\r\n 11\r\n5.0\r\n 40\r\n0.5\r\n",
        ),
        (
            "INSERT",
            "AcDbBlockReference",
            "  2\r\nPLATE\r\n 10\r\n0.0\r\n 20\r\n0.0\r\n",
        ),
        (
            "DIMENSION",
            "AcDbDimension",
            "  2\r\n*D1\r\n 70\r\n0\r\n100\r\nAcDbAlignedDimension\r\n",
        ),
        ("LEADER", "AcDbLeader", "  3\r\nStandard\r\n"),
    ];
    for (kind, class, pairs) in entities {
        let entity = format!(
            "  0\r\n{kind}\r\n  5\r\nFFF\r\n100\r\nAcDbEntity\r\n  8\r\nCUT-INSIDE\r\n100\r\n{class}\r\n{pairs}"
        );
        let text = written(Version::R2000);
        let section = "  2\r\nENTITIES\r\n";
        let planted = text.replacen(section, &format!("{section}{entity}"), 1);
        assert_ne!(planted, text);
        let read = read_back(&planted, &one_of_each(), Version::R2000);
        assert!(read.is_err(), "{kind} is let through");
    }
}
