//! What sheets say of a plate that is kept: which pieces are new, what lies in them, and that the rest stands.

use super::inspection::called_for;
use super::route::Feature;
use super::set::Set;
use super::weld_numbers::repair_number;
use crate::design::{PieceSize, Point, Repair, number_runs};
use crate::spec::{At, Material, PieceSpec, RepairWeld};
use crate::units::Size;

/// The line that every reader has to see first; none for a plate that is to be made.
pub fn kept_words(set: &Set<'_>) -> Option<String> {
    let pieces = piece_numbers(set);
    set.design.kept.then(|| match pieces.len() {
        0 => "PLATE KEPT: IT STANDS. NO PART OF IT IS NEW.".into(),
        1 => format!("PLATE KEPT: ONLY {} AND WHAT LIES IN IT IS NEW.", pieces[0]),
        _ => format!(
            "PLATE KEPT: ONLY {} AND WHAT LIES IN THEM IS NEW.",
            pieces.join(", ")
        ),
    })
}

/// The numbers of the pieces let in: "J1, J2"; empty where none is.
pub fn pieces_named(set: &Set<'_>) -> String {
    piece_numbers(set).join(", ")
}

fn piece_numbers(set: &Set<'_>) -> Vec<String> {
    let pieces = set.design.pieces();
    pieces.map(|(i, _)| repair_number(set, i)).collect()
}

/// Pieces let in, each with its number and what the spec orders it as.
pub fn pieces<'a>(set: &Set<'a>) -> Vec<(String, &'a Repair, Option<&'a PieceSpec>)> {
    let written = &set.spec.written.repairs;
    let pieces = set.design.pieces();
    pieces
        .map(|(i, repair)| {
            let ordered = match &written[i].weld {
                RepairWeld::Line(line) => line.piece.as_ref(),
                _ => None,
            };
            (repair_number(set, i), repair, ordered)
        })
        .collect()
}

/// Grade and certificate of a material: "P265GH to EN 10028-2; EN 10204 type 3.1".
pub fn material_words(material: Option<&Material>) -> String {
    material.map_or("not given".into(), called_for)
}

/// Numbers of the rivets that are closed: "R1–R5, R45–R48".
pub fn rivets_made(set: &Set<'_>) -> String {
    let rivets = set.design.rivets.iter().flat_map(|line| &line.rivets);
    let made = rivets
        .enumerate()
        .filter(|(i, _)| set.design.rivet_is_made(*i));
    let ids: Vec<&str> = made.map(|(_, rivet)| rivet.id.as_str()).collect();
    number_runs(&ids).replace('-', "–")
}

/// The sizes that a piece is ordered by, each with what it is.
pub fn piece_sizes(set: &Set<'_>, size: PieceSize) -> Vec<(&'static str, String)> {
    let fig = set.figures;
    match size {
        PieceSize::Flat(wide, high) => vec![
            ("across, weld to weld", fig.table(wide)),
            ("up, weld to weld", fig.table(high)),
        ],
        PieceSize::Flanged { round, out } => vec![
            ("round the bore, weld to weld", fig.table(round)),
            (
                "from the weld straight out to the flange edge, on mid thickness",
                fig.table(out),
            ),
        ],
    }
}

/// A size as it was written, with the same in the job's unit where that is another: "12.7 mm = 0.500".
pub fn in_both_units(set: &Set<'_>, size: &Size) -> String {
    let in_mm = size.as_written().ends_with("mm");
    match in_mm == set.figures.in_inches() {
        true => format!(
            "{} = {}",
            size.as_written(),
            set.figures.decimal(size.value())
        ),
        false => set.figures.size(size),
    }
}

/// A written place.
pub fn point(at: &At) -> Point {
    Point::new(at.0.value().to_mm(), at.1.value().to_mm())
}

/// The corners of every weld line as they are struck, before they are rounded off.
pub fn weld_corners(set: &Set<'_>) -> Vec<Feature> {
    let repairs = set.spec.written.repairs.iter().enumerate();
    let of = |(i, repair): (usize, &crate::spec::Repair)| match &repair.weld {
        RepairWeld::Line(line) => {
            let steps = line.steps.iter().map(|step| &step.to);
            let places = [&line.start].into_iter().chain(steps);
            let feature = |at: &At| Feature {
                at: point(at),
                half: 0.0,
                name: repair_number(set, i),
            };
            places.map(feature).collect()
        }
        _ => Vec::new(),
    };
    repairs.flat_map(of).collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample_jobs::{jobs, with_set};
    use super::super::{Mark, boards};

    /// Everything lettered on the sheets of a job, sheet by sheet.
    fn lettered(job: &str) -> Vec<(String, String)> {
        let mut sheets = Vec::new();
        with_set(job, |set| {
            sheets = boards(set)
                .into_iter()
                .map(|board| {
                    let words = board.marks.iter().filter_map(|mark| match mark {
                        Mark::Text(text) => Some(text.words.as_str()),
                        _ => None,
                    });
                    let words: Vec<&str> = words.collect();
                    (board.name.clone(), words.join(" "))
                })
                .collect();
        });
        sheets
    }

    const KEPT: &str = "specs/gritstone-smokebox.yaml";

    /// Nothing tells a shop to form, trim, fit or order a plate that stands, and each of these words is said of a plate that is made.
    #[test]
    fn holds_nothing_of_a_kept_plate_is_made_again() {
        let forbidden = [
            "LEAVE THE TRIM ON",
            "SCRIBE THE TRIM",
            "TRIM TAKEN OFF",
            "AFTER FORMING AND HEAT TREATMENT",
            "NEVER ON THE BLANK",
            "FIT TO GIRTH",
            "blank as cut",
        ];
        let kept: String = lettered(KEPT).into_iter().map(|(_, words)| words).collect();
        let made: String = lettered("specs/marl-hen-smokebox.yaml")
            .into_iter()
            .map(|(_, words)| words)
            .collect();
        for words in forbidden {
            assert!(!kept.contains(words), "{words}");
            assert!(made.contains(words), "{words} is said of no plate");
        }
    }

    /// The general arrangement and the orders open with what is new, and only of a plate that is kept.
    #[test]
    fn holds_a_kept_plate_says_so() {
        for job in jobs() {
            let sheets = lettered(&job);
            let says = |name: &str| {
                let sheet = sheets.iter().find(|(sheet, _)| sheet == name);
                sheet.is_some_and(|(_, words)| words.contains("PLATE KEPT: ONLY J1"))
            };
            let is_kept = job == KEPT;
            assert_eq!(says("general"), is_kept, "{job}");
            assert_eq!(says("summary"), is_kept, "{job}");
        }
    }

    /// The piece is drawn and numbered wherever the plate is: 8.959 in out and 13.407 down are the ends of its line.
    #[test]
    fn holds_the_piece_is_on_every_sheet_of_the_plate() {
        let sheets = lettered(KEPT);
        for name in [
            "general",
            "flange-rivets",
            "details",
            "tests",
            "marking-out",
            "survey",
            "fit",
        ] {
            let sheet = sheets.iter().find(|(sheet, _)| sheet == name);
            let (_, words) = sheet.unwrap_or_else(|| panic!("no sheet {name}"));
            assert!(
                words.split([' ', ',', '.', ':']).any(|word| word == "J1"),
                "{name}"
            );
        }
        let struck = sheets.iter().filter(|(sheet, _)| sheet == "marking-out");
        let struck: String = struck.map(|(_, words)| words.as_str()).collect();
        assert!(
            struck.contains("= 8.959") && struck.contains("= 13.407"),
            "{struck}"
        );
        // 92 holes stand, and the count is of two plugs and nine rivets.
        let (_, count) = sheets
            .iter()
            .find(|(sheet, _)| sheet == "count")
            .expect("a count");
        assert!(!count.contains("T1") && count.contains("W1–W2"), "{count}");
        assert!(count.contains("R45–R48"), "{count}");
    }
}
