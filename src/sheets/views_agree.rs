//! Views, sections and details of one plate show the same things: pads, rivet holes, sides, datums, welds and zones.

use super::board::Board;
use super::sample_jobs::{jobs, with_changed_set, with_set};
use super::section::rivet_openings;
use super::set::Set;
use super::test_map::zone_names;
use super::{Mark, Pattern, Pen, boards};
use crate::spec::{Spec, ViewFrom};

const HOBTHRUSH: &str = "specs/hobthrush-smokebox.yaml";
const MARL_HEN: &str = "specs/marl-hen-smokebox.yaml";
const PINDERS_OAK: &str = "specs/pinders-oak-smokebox.yaml";
const TALLOW_MOOR: &str = "specs/tallow-moor-smokebox.yaml";

/// The scale of a board's main view as printed, as a factor.
fn factor(words: &str) -> f64 {
    let (paper, plate) = words.split_once(':').expect("a scale");
    paper.parse::<f64>().expect("a number") / plate.parse::<f64>().expect("a number")
}

/// Pens and patterns of the circles of this radius on a board, mm of paper.
fn circles(board: &Board, wanted: f64) -> Vec<(Pen, Pattern)> {
    let circle = |mark: &Mark| match mark {
        Mark::Circle {
            radius,
            pen,
            pattern,
            ..
        } if (radius - wanted).abs() < 1e-6 => Some((*pen, *pattern)),
        _ => None,
    };
    board.marks.iter().filter_map(circle).collect()
}

fn says(board: &Board, words: &str) -> bool {
    let is = |mark: &Mark| matches!(mark, Mark::Text(text) if text.words == words);
    board.marks.iter().any(is)
}

fn named<'b>(boards: &'b [Board], name: &str) -> &'b Board {
    boards.iter().find(|b| b.name == name).expect("the sheet")
}

/// General arrangement and map of welds show a pad's edge, wide on the near face and dashed on the far one, whichever side one looks from.
#[test]
fn holds_a_pad_is_in_every_face_view() {
    for job in [HOBTHRUSH, MARL_HEN] {
        for view in [ViewFrom::Smokebox, ViewFrom::Firebox] {
            let change = |spec: &mut Spec| spec.written.plate.view_from = view;
            with_changed_set(job, change, |set| {
                let boards = boards(set);
                let pad = &set.design.pads[0];
                let wanted = match pad.side == view {
                    true => (Pen::Wide, Pattern::Continuous),
                    false => (Pen::Middle, Pattern::Dashed),
                };
                for name in ["general", "tests"] {
                    let board = named(&boards, name);
                    let radius = pad.diameter.to_mm() / 2.0 * factor(&board.scale_words);
                    assert!(circles(board, radius).contains(&wanted), "{job}, {name}");
                }
            });
        }
    }
}

/// Hobthrush counts from a hole at bottom centre, 48 of them, so the 25th stands at the top. Pinder's Oak has 62 and its 32nd there.
/// Marl Hen and Tallow Moor have bottom centre between two holes and an even count, so the top lies between two as well.
#[test]
fn by_hand_rivet_holes_that_the_section_opens() {
    for (job, top) in [
        (HOBTHRUSH, true),
        (PINDERS_OAK, true),
        (MARL_HEN, false),
        (TALLOW_MOOR, false),
    ] {
        with_set(job, |set| {
            for deg in [0.0, 180.0] {
                let open = rivet_openings(set.design, deg);
                assert_eq!(!open.is_empty(), top, "{job} at {deg}");
                let line = set.design.rivets.as_ref().expect("rivets");
                for (from, to) in open {
                    // The plane runs through the hole's middle: it opens the whole of it.
                    assert!((to - from - line.hole.value().to_mm()).abs() < 1e-6);
                }
            }
            let boards = boards(set);
            let title =
                |mark: &Mark| matches!(mark, Mark::Text(t) if t.words.contains("TURNED INTO"));
            let flange = named(&boards, "flange-rivets");
            let said = flange.marks.iter().any(title);
            assert_eq!(
                said, !top,
                "{job}: a hole that is not at the top is said to be turned in"
            );
        });
    }
}

/// Every section tells its sides, and the general arrangement bears the letters of the three datums and of the section.
#[test]
fn holds_sections_tell_their_sides_and_datums_are_lettered() {
    for job in jobs() {
        with_set(&job, |set| {
            let boards = boards(set);
            for name in ["general", "flange-rivets", "details"] {
                let board = named(&boards, name);
                for words in ["BOILER", "SMOKEBOX"] {
                    assert!(says(board, words), "{job}, {name}: {words}");
                }
            }
            for letter in ["A", "B", "C", "X"] {
                assert!(says(named(&boards, "general"), letter), "{job}: {letter}");
            }
        });
    }
}

/// Every lettered detail is pointed to on the general arrangement.
#[test]
fn holds_every_detail_has_its_place() {
    for job in jobs() {
        with_set(&job, |set| {
            let boards = boards(set);
            for (letter, _) in super::detail_letters::lettered(set) {
                let Some(letter) = letter else { continue };
                assert!(says(&boards[0], &letter), "{job}: {letter}");
            }
        });
    }
}

/// What the tables list as a zone or as the weld of ring or pad is named on the view too: words outside every table.
#[test]
fn holds_zones_and_welds_are_named_on_the_map() {
    for job in jobs() {
        with_set(&job, |set: &Set<'_>| {
            let boards = boards(set);
            let map = named(&boards, "tests");
            for name in zone_names(set) {
                let stands = |mark: &&Mark| {
                    matches!(mark, Mark::Text(text)
                        if text.words.split(", ").any(|part| part == name))
                };
                // Once in the table of its kind, and once on the view.
                let count = map.marks.iter().filter(stands).count();
                assert!(count >= 2, "{job}: {name} stands {count} times");
            }
        });
    }
}

/// Marl Hen's pad: 5/32 in from the weld's toe to the nearest tube (worked in `design::pads`). Hobthrush's: 21.36 mm.
#[test]
fn by_hand_a_pad_weld_tells_its_distance() {
    for (job, words) in [(MARL_HEN, "{5/32}"), (HOBTHRUSH, "21.36 to")] {
        with_set(job, |set| {
            let boards = boards(set);
            let map = named(&boards, "tests");
            let said = |mark: &Mark| matches!(mark, Mark::Text(t) if t.words.starts_with(words));
            assert!(map.marks.iter().any(said), "{job}");
        });
    }
}
