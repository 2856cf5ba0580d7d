//! What the spec gives of nuts, washers, plugs, pads, joint faces, beads and weld preparations, as it stands on the details.

use super::audit::audit;
use super::board::Board;
use super::details::details;
use super::finish;
use super::order_tables::fitted_list;
use super::sample_jobs::{with_changed_set, with_set};
use super::set::Set;
use crate::checks::run_checks;
use crate::design::set_out;
use crate::spec::{Spec, ViewFrom, read_spec};
use crate::units::Length;

const MARL_HEN: &str = "specs/marl-hen-smokebox.yaml";
const HOBTHRUSH: &str = "specs/hobthrush-smokebox.yaml";

/// A plate with a plug in a pad, welded and riveted, and a pipe on studs.
const PADDED: &str = "job: {works: Small Works, engine: Launch No. 4, drawing: LN4-TP, revision: A, issued: 2026-11-16, units: inches}
plate: {kind: smokebox tube plate, view_from: smokebox, thickness: 3/8 in}
barrel: {bore: 30 in, thickness: 3/8 in}
flange: {pressed: {towards: smokebox, outside_diameter: 30 in, heel_radius_inside: 1 in, straight: 2 in, trim: 1/2 in}}
holes:
  - name: plug
    purpose: plug
    hole: 1 1/2 in
    at: [[0 in, -8 in]]
    plug: {large_end: 1 9/16 in, threads_per_inch: 11, taper_one_in: 12, length: 1 7/8 in, square: 7/8 in, origin: by gauge}
    pad: {name: plug pad, side: firebox, weld_leg: 1/4 in}
  - name: steam pipe
    purpose: steam pipe
    hole: 3 in
    at: [[0 in, 8 in]]
    joint_face: {diameter: 6 in, studs: studs}
  - name: studs
    purpose: bolt
    hole: 9/16 in
    at: [[2 1/4 in, 8 in], [-2 1/4 in, 8 in], [0 in, 10 1/4 in], [0 in, 5 3/4 in]]
pads:
  - name: plug pad
    diameter: 4 1/2 in
    bore: 1 1/2 in
    thickness: 1/2 in
    holes: [{name: rivets, purpose: bolt, hole: 7/16 in, at: [[1 5/8 in, 0 in], [-1 5/8 in, 0 in]]}]
";

/// Panics unless some dimension of the details states this length and shows it by its marks at its scale.
#[track_caller]
fn shows(boards: &[Board], inches: f64, of: &str) {
    let length = Length::inches(inches);
    let found = boards.iter().flat_map(|b| &b.stated).any(|s| {
        s.words.contains(of)
            && (s.length - length).abs().to_mm() < 1e-9
            && (s.shown() - length).abs().to_mm() < 1e-9
    });
    assert!(found, "{inches} in, {of}");
}

fn without_defects(set: &Set<'_>, boards: Vec<Board>) {
    for sheet in finish(set, boards) {
        let defects: Vec<String> = audit(&sheet).iter().map(ToString::to_string).collect();
        assert!(defects.is_empty(), "{defects:#?}");
    }
}

/// Sizes as written in the spec of Marl Hen: stays, plug, tubes and pipe. The large end of the plug stands out 12 × (1 25/32 − 1 3/4) = 3/8 in.
#[test]
fn by_hand_sizes_drawn_are_those_written() {
    for view in [ViewFrom::Smokebox, ViewFrom::Firebox] {
        let change = |spec: &mut Spec| spec.written.plate.view_from = view;
        with_changed_set(MARL_HEN, change, |set| {
            let boards = details(set, 4);
            for (inches, of) in [
                (2.0, "A/F"),
                (1.25, "{1 1/4}"),
                (0.875, "{7/8}"),
                (3.0, "WASHER"),
                (0.375, "{3/8}"),
                (0.25, "{1/4}"),
                (1.25, "⌀{1 1/4}"),
                (1.78125, "LARGE END"),
                (1.375, "THREAD"),
                (1.0, "□1"),
                (2.0625, "BEAD"),
                (1.84375, "HOLE"),
                (0.1875, "{3/16}"),
                (7.0, "JOINT FACE"),
            ] {
                shows(&boards, inches, of);
            }
            without_defects(set, boards);
        });
    }
}

/// A bevel of 6 mm on both sides of a ring of 16 leaves a root face of 4; the gap is 2.
#[test]
fn by_hand_weld_preparation() {
    with_set(HOBTHRUSH, |set| {
        let boards = details(set, 4);
        for (mm, of) in [(6.0, "6"), (4.0, "4"), (2.0, "2"), (16.0, "16")] {
            shows(&boards, Length::mm(mm).to_inches(), of);
        }
    });
}

/// Pad, its thickness and its plug; studs turned into the section and counted. On either paper no defect.
#[test]
fn by_hand_pad_and_studs() {
    let spec = read_spec("padded.yaml", PADDED.as_bytes()).unwrap_or_else(|f| panic!("{f}"));
    let design = set_out(&spec).unwrap_or_else(|f| panic!("{f:#?}"));
    let findings = run_checks(&spec, &design);
    let set = Set::new(&spec, &design, &findings, &[]);
    for paper in [
        crate::spec::Paper::A4,
        crate::spec::Paper::A3,
        crate::spec::Paper::A2,
    ] {
        let boards = details(&set.on(paper), 4);
        shows(&boards, 4.5, "PAD");
        shows(&boards, 0.5, "{1/2}");
        shows(&boards, 0.75, "{3/4}");
        shows(&boards, 6.0, "JOINT FACE");
        let said = |words: &str| {
            let marks = boards.iter().flat_map(|b| &b.marks);
            marks
                .into_iter()
                .any(|mark| matches!(mark, super::Mark::Text(text) if text.words.contains(words)))
        };
        assert!(said("4 STUD HOLES"));
        assert!(said("2 HOLES"));
        without_defects(&set, boards);
    }
}

/// What is not written is not drawn: without nuts there is no A/F, and the words say whose standard holds.
#[test]
fn holds_nothing_is_assumed() {
    let change = |spec: &mut Spec| {
        let stay = spec.written.holes[2].stay.as_mut().expect("a stay");
        (stay.outside_nut, stay.inside_nut) = (None, None);
        (stay.outside_washer, stay.inside_washer, stay.stands_out) = (None, None, None);
    };
    with_changed_set(MARL_HEN, change, |set| {
        let boards = details(set, 4);
        let stated = || boards.iter().flat_map(|b| &b.stated);
        assert!(!stated().any(|s| s.words.contains("A/F") || s.words.contains("WASHER")));
        let marks = boards.iter().flat_map(|b| &b.marks);
        let said = marks.into_iter().any(
            |mark| matches!(mark, super::Mark::Text(t) if t.words.contains("NUTS AND WASHERS TO")),
        );
        assert!(said);
    });
}

/// Four stays with a nut and a washer each side: four of each of four parts, and the plug.
#[test]
fn by_hand_what_is_fitted_is_counted() {
    with_set(MARL_HEN, |set| {
        let rows = fitted_list(set).expect("a list").rows;
        let counts: Vec<(&str, &str)> = rows
            .iter()
            .map(|row| (row[1].as_str(), row[2].as_str()))
            .collect();
        assert_eq!(
            counts,
            [
                ("washout plug", "1"),
                ("outside nut", "4"),
                ("outside washer", "4"),
                ("inside nut", "4"),
                ("inside washer", "4"),
            ]
        );
    });
}
