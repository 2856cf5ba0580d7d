//! Our own files sent out and brought back: altered in one way each, the alteration and nothing else is found.

use std::path::Path;
use std::sync::OnceLock;

use proptest::prelude::*;
use proptest::test_runner::RngSeed;

use super::super::dxf::{Version, write};
use super::super::part::Shape;
use super::super::{cut_parts, heading};
use super::*;
use crate::design::{Design, Outline, set_out};
use crate::spec::{Spec, read_spec_file};
use crate::units::tolerance::SAVED_AGAIN_MM;

const BOTH: [Version; 2] = [Version::R12, Version::R2000];

/// A spec of the repository set out, with the parts that it cuts.
struct Job {
    spec: Spec,
    design: Design,
    parts: Vec<CutPart>,
}

impl Job {
    fn of(name: &str) -> Job {
        let file = Path::new(env!("CARGO_MANIFEST_DIR"))
            .join("specs")
            .join(name);
        let spec = read_spec_file(&file).expect("the spec is read");
        let design = set_out(&spec).expect("it is set out");
        let parts = cut_parts(&spec, &design).expect("it is cut");
        Job {
            spec,
            design,
            parts,
        }
    }

    /// The plate with tubes cut in it.
    fn plate() -> Job {
        Job::of("hobthrush-smokebox.yaml")
    }

    fn text(&self, part: &CutPart, version: Version) -> String {
        write(part, &heading(&self.spec, part), version).expect("it can be written")
    }

    fn compare(&self, text: &str) -> Comparison {
        let within = Length::mm(SAVED_AGAIN_MM);
        compare_returned(text.as_bytes(), &self.parts, None, within).expect("it is compared")
    }

    /// What is found where the plate came back altered, in both versions.
    fn altered(&self, alter: impl Fn(&mut Vec<(Layer, Shape)>)) -> Vec<String> {
        let mut part = self.parts[0].clone();
        alter(&mut part.shapes);
        let [old, new] = BOTH.map(|version| found(&self.compare(&self.text(&part, version))));
        assert_eq!(old, new);
        new
    }

    /// The circle of a hole in the plate's shapes.
    fn shape_of(&self, id: &str) -> usize {
        let hole = self
            .design
            .holes
            .iter()
            .find(|h| h.id == id)
            .expect("a hole");
        let is_it = |(layer, shape): &(Layer, Shape)| {
            *layer == Layer::CutInside
                && matches!(shape, Shape::Circle { centre, .. } if centre.distance(hole.at) < 1e-6)
        };
        self.parts[0]
            .shapes
            .iter()
            .position(is_it)
            .expect("it is cut")
    }
}

fn found(comparison: &Comparison) -> Vec<String> {
    let told = |d: &Deviation| format!("{}: {d}", d.kind.name());
    comparison.differences.iter().map(told).collect()
}

/// Every part of both specs, in both versions, unaltered.
#[test]
fn holds_nothing_is_found_in_files_that_came_back_as_they_went() {
    for name in ["hobthrush-smokebox.yaml", "marl-hen-smokebox.yaml"] {
        let job = Job::of(name);
        for part in &job.parts {
            for version in BOTH {
                let comparison = job.compare(&job.text(part, version));
                assert_eq!(
                    found(&comparison),
                    Vec::<String>::new(),
                    "{name} {}",
                    part.name
                );
                assert_eq!(comparison.part, part.name);
                assert!(
                    comparison
                        .as_wanted
                        .values()
                        .all(|(found, all)| found == all)
                );
                assert_eq!(comparison.notes, Vec::<String>::new());
            }
        }
    }
}

#[test]
fn by_hand_a_hole_moved_by_three_and_four_tenths_is_moved_by_five() {
    let job = Job::plate();
    let t17 = job.shape_of("T17");
    let told = job.altered(|shapes| {
        let Shape::Circle { centre, .. } = &mut shapes[t17].1 else {
            panic!()
        };
        *centre = *centre + Point::new(0.3, -0.4);
    });
    assert_eq!(told.len(), 1, "{told:?}");
    assert!(
        told[0].starts_with("moved: T17 is moved by 0.5 mm (x +0.3 mm, y -0.4 mm), to ("),
        "{told:?}"
    );
}

/// The tube holes are cut 2 mm under 39 mm: 37 mm.
#[test]
fn by_hand_a_hole_made_a_millimetre_larger_a_missing_and_an_added_one() {
    let job = Job::plate();
    let [t17, t20] = ["T17", "T20"].map(|id| job.shape_of(id));
    let told = job.altered(|shapes| {
        let Shape::Circle { radius, .. } = &mut shapes[t17].1 else {
            panic!()
        };
        *radius += 0.5;
        let added = Shape::Circle {
            centre: Point::new(-400.0, 0.0),
            radius: 10.0,
        };
        shapes[t20].1 = added;
    });
    assert_eq!(told.len(), 3, "{told:?}");
    assert_eq!(told[0], "resized: T17 is 38 mm across, not 37 mm: +1 mm");
    assert!(
        told[1].starts_with("missing: T20 is missing: 37 mm across at ("),
        "{told:?}"
    );
    assert_eq!(
        told[2],
        "extra: a circle 20 mm across at (-400, 0) mm on layer CUT-INSIDE is not of this part"
    );
}

#[test]
fn holds_a_doubled_hole_and_one_on_another_layer_are_found() {
    let job = Job::plate();
    let [t17, t20] = ["T17", "T20"].map(|id| job.shape_of(id));
    let told = job.altered(|shapes| {
        let again = shapes[t17].clone();
        shapes.insert(t17, again);
        shapes[t20 + 1].0 = Layer::Scribe;
    });
    assert_eq!(told.len(), 2, "{told:?}");
    assert_eq!(
        told[0],
        "doubled: T17 is drawn once more on layer CUT-INSIDE: it would be cut twice"
    );
    assert_eq!(
        told[1],
        "layer: T20 lies on layer SCRIBE, and belongs on CUT-INSIDE"
    );
}

#[test]
fn holds_a_mirrored_drawing_is_mirrored_and_nothing_else() {
    let job = Job::plate();
    let told = job.altered(|shapes| {
        shapes
            .iter_mut()
            .for_each(|(_, shape)| *shape = opposite_hand(shape));
    });
    assert_eq!(
        told,
        [
            "mirrored: the drawing is mirrored, left for right: a plate cut from it is of the other hand"
        ]
    );
}

fn opposite_hand(shape: &Shape) -> Shape {
    match shape {
        Shape::Circle { centre, radius } => Shape::Circle {
            centre: centre.opposite_hand(),
            radius: *radius,
        },
        Shape::Closed(outline) => Shape::Closed(outline.opposite_hand()),
        Shape::Line { from, to } => Shape::Line {
            from: from.opposite_hand(),
            to: to.opposite_hand(),
        },
        Shape::Arc { .. } => panic!("no part has an arc"),
        Shape::Dot(at) => Shape::Dot(at.opposite_hand()),
        Shape::Cross { at, arm } => Shape::Cross {
            at: at.opposite_hand(),
            arm: *arm,
        },
    }
}

/// The header says inches, and the numbers stay as they are: 25.4 times too large.
#[test]
fn holds_inches_for_millimetres_are_named() {
    let job = Job::plate();
    for version in BOTH {
        let text = job.text(&job.parts[0], version);
        let inches = text.replace("$INSUNITS\r\n 70\r\n4", "$INSUNITS\r\n 70\r\n1");
        assert_ne!(inches, text);
        let told = found(&job.compare(&inches));
        assert_eq!(
            told,
            [
                "scaled: the drawing is 25.4 times too large: inches and millimetres mixed up (the file says inches, and its numbers are millimetres)"
            ]
        );
    }
}

#[test]
fn holds_an_edge_that_no_longer_closes_is_open_by_the_piece_that_is_gone() {
    let job = Job::plate();
    let text = job.text(&job.parts[0], Version::R2000);
    let edge = text
        .find("CUT-OUTSIDE\r\n100\r\nAcDbPolyline")
        .expect("the edge");
    let flag = edge + text[edge..].find(" 70\r\n").expect("its flag") + 5;
    let end = flag + text[flag..].find("\r\n").expect("a line ends");
    let opened = format!("{}0{}", &text[..flag], &text[end..]);
    assert_ne!(opened, text);
    let told = found(&job.compare(&opened));
    assert_eq!(told.len(), 1, "{told:?}");
    assert!(
        told[0].starts_with("open: the edge does not close: a gap of "),
        "{told:?}"
    );
}

#[test]
fn holds_a_shifted_edge_is_told_where_it_lies_off() {
    let job = Job::plate();
    let told = job.altered(|shapes| {
        for (layer, shape) in shapes {
            if let (Layer::CutOutside, Shape::Closed(outline)) = (layer, shape) {
                *outline = outline.shifted(Point::new(0.25, 0.0));
            }
        }
    });
    assert!(!told.is_empty());
    for words in &told {
        assert!(
            words.starts_with("outline: the edge runs 0.25 mm "),
            "{told:?}"
        );
    }
}

#[test]
fn refuses_what_is_no_cut_file() {
    let job = Job::plate();
    let compare = |bytes: &[u8], part: Option<&str>| {
        compare_returned(bytes, &job.parts, part, Length::mm(SAVED_AGAIN_MM))
            .expect_err("it is refused")
            .fact
    };
    assert!(compare(b"", None).starts_with("the file"));
    assert!(compare(b"job: {}\n", None).starts_with("the file is no DXF that can be read"));
    assert_eq!(
        compare(b"  0\nEOF\n", Some("lid")),
        "the spec cuts no part named lid"
    );
    assert_eq!(compare(b"  0\nEOF\n", None), "the file draws nothing");
}

/// What is done to a random plate.
#[derive(Clone, Copy, Debug)]
enum Change {
    Nothing,
    Moved(f64, f64),
    Resized(f64),
    Missing,
    Extra,
    Doubled,
}

fn change() -> impl Strategy<Value = Change> {
    let turn = 0.0..std::f64::consts::TAU;
    prop_oneof![
        Just(Change::Nothing),
        (turn, 0.02..12.0).prop_map(|(turn, by)| Change::Moved(turn, by)),
        (0.03..4.0).prop_map(Change::Resized),
        Just(Change::Missing),
        Just(Change::Extra),
        Just(Change::Doubled),
    ]
}

/// A plate of these sizes with holes scattered one to a square of 70 mm.
fn random_plate(wide: usize, tall: usize, holes: &[(f64, f64, f64)]) -> Vec<(Layer, Shape)> {
    let square = 70.0;
    let mut shapes: Vec<(Layer, Shape)> = holes
        .iter()
        .take(wide * tall)
        .enumerate()
        .map(|(i, (x, y, radius))| {
            let corner = Point::new((i % wide) as f64 * square, (i / wide) as f64 * square);
            let centre = corner + Point::new(25.0 + x * 20.0, 25.0 + y * 20.0);
            let radius = *radius;
            (Layer::CutInside, Shape::Circle { centre, radius })
        })
        .collect();
    let corners = [(0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0)]
        .map(|(x, y)| Point::new(x * wide as f64 * square, y * tall as f64 * square));
    let edges = (0..4).map(|i| Edge::Line {
        from: corners[i],
        to: corners[(i + 1) % 4],
    });
    let outline = Outline::new(edges.collect()).expect("a rectangle");
    shapes.push((Layer::CutOutside, Shape::Closed(outline)));
    shapes
}

/// Set out once for all the cases of a property.
fn shared() -> &'static Job {
    static JOB: OnceLock<Job> = OnceLock::new();
    JOB.get_or_init(Job::plate)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 96, failure_persistence: None, rng_seed: RngSeed::Fixed(25), ..ProptestConfig::default() })]

    /// One change to a random plate is found, as what it is and where it is; without a change nothing is.
    #[test]
    fn holds_one_change_to_a_random_plate_is_found_and_none_where_there_is_none(
        wide in 2_usize..6, tall in 2_usize..6,
        holes in prop::collection::vec((0.0..1.0, 0.0..1.0, 8.0..18.0), 25),
        which in 0_usize..1000, change in change(), old in any::<bool>(),
    ) {
        let job = shared();
        let mut part = job.parts[0].clone();
        part.shapes = random_plate(wide, tall, &holes);
        let mut altered = part.clone();
        let which = which % (wide * tall);
        let Shape::Circle { centre, radius } = part.shapes[which].1 else { panic!() };
        let wants: Option<&str> = match change {
            Change::Nothing => None,
            Change::Moved(turn, by) => {
                let by = Point::new(by, 0.0).turned_about(Point::CENTRE, turn);
                altered.shapes[which].1 = Shape::Circle { centre: centre + by, radius };
                Some("moved")
            }
            Change::Resized(by) => {
                altered.shapes[which].1 = Shape::Circle { centre, radius: radius + by };
                Some("resized")
            }
            Change::Missing => {
                altered.shapes.remove(which);
                Some("missing")
            }
            Change::Extra => {
                // A corner of its square is free of the hole.
                let corner = Point::new((which % wide) as f64 * 70.0, (which / wide) as f64 * 70.0);
                let added = Shape::Circle { centre: corner + Point::new(3.0, 3.0), radius: 2.0 };
                altered.shapes.insert(0, (Layer::CutInside, added));
                Some("extra")
            }
            Change::Doubled => {
                altered.shapes.insert(0, part.shapes[which].clone());
                Some("doubled")
            }
        };
        let version = if old { Version::R12 } else { Version::R2000 };
        let text = job.text(&altered, version);
        let within = Length::mm(SAVED_AGAIN_MM);
        let comparison = compare_returned(text.as_bytes(), &[part], None, within).expect("it is compared");
        let kinds: Vec<&str> = comparison.differences.iter().map(|d| d.kind.name()).collect();
        prop_assert_eq!(kinds, wants.into_iter().collect::<Vec<_>>(), "{:?}", found(&comparison));
    }

    /// A damaged file is compared or refused, and nothing else comes of it.
    #[test]
    fn holds_a_damaged_file_is_compared_or_refused(
        cuts in prop::collection::vec((any::<prop::sample::Index>(), any::<u8>()), 1..6), short in any::<prop::sample::Index>(), old in any::<bool>(),
    ) {
        let job = shared();
        let mut part = job.parts[0].clone();
        part.shapes = random_plate(2, 2, &[(0.1, 0.2, 9.0), (0.4, 0.3, 12.0), (0.9, 0.1, 8.0), (0.5, 0.5, 10.0)]);
        let version = if old { Version::R12 } else { Version::R2000 };
        let mut bytes = job.text(&part, version).into_bytes();
        for (at, byte) in cuts {
            let at = at.index(bytes.len());
            bytes[at] = byte;
        }
        bytes.truncate(bytes.len() - short.index(bytes.len()) / 4);
        let within = Length::mm(SAVED_AGAIN_MM);
        let _ = compare_returned(&bytes, &[part], None, within);
    }
}
