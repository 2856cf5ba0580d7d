//! Sheet: inspection record. Set-up, material, welds and tests, hold points, deviations, and every finished hole by its number.

use super::Hang;
use super::board::Board;
use super::fit_figure::{PLACES, place_words};
use super::flow::Block;
use super::hold_table::hold_table;
use super::hole_record::{hole_records, is_whole, ligament_record};
use super::kept::{in_both_units, material_words, pieces};
use super::letter_size::TABLE;
use super::notes::Notes;
use super::pages::pages;
use super::particulars::view_words;
use super::set::Set;
use super::signed::signed_table;
use super::table::Table;
use crate::design::{FlangeDesign, girth, quarter_chord};
use crate::spec::{Material, Purpose};
use crate::units::Strength;
use crate::units::print::stress_as_printed;

const TITLE: &str = "Inspection record";
/// So many lines stand blank for deviations.
const DEVIATIONS: usize = 8;
/// Flatness and thickness are measured at so many-th places of the fit record.
const EVERY: usize = 2;

/// The record over as many sheets as it needs.
pub fn inspection(set: &Set<'_>) -> Vec<Board> {
    let mut blocks = vec![
        Block::Table(set_up(set), 0),
        Block::Table(places(set), 0),
        Block::Table(instruments(), 0),
        Block::Table(material(set), 0),
    ];
    // Of a flange, every weld and every zone of the heel has its blanks on the sheet of welds and tests.
    if set.design.flange.is_none() {
        blocks.push(Block::Table(tests(), 0));
    }
    blocks.extend([
        Block::Table(hold_table(set), 0),
        Block::Table(deviations(), 0),
        Block::Table(ligament_record(set), 0),
        Block::Table(signed_table(), 0),
    ]);
    let mut boards = pages(set, "record", TITLE, 2, blocks);
    if !set.design.holes.is_empty() {
        let mut blocks = vec![Block::Notes(how(set), 0)];
        blocks.extend(hole_records(set).map(|table| Block::Table(table, 0)));
        blocks.push(Block::Table(signed_table(), 0));
        boards.extend(pages(
            set,
            "hole-record",
            match set.design.kept {
                true => "Record of holes",
                false => "Record of finished holes",
            },
            3,
            blocks,
        ));
    }
    boards
}

fn how(set: &Set<'_>) -> Notes {
    let mut steps: Vec<String> = vec![
        "MEASURE EVERY HOLE TWICE, THE SECOND TIME SQUARE TO THE FIRST. OVAL IS THE DIFFERENCE."
            .into(),
        "SEAT: CLEAN, SCORED, TORN OR STEPPED. LEAVE NO LINE EMPTY.".into(),
        "A HOLE THAT IS NOT AS CALLED GOES ON THE LIST OF DEVIATIONS AS WELL.".into(),
    ];
    let holes = &set.design.holes;
    if holes.iter().any(|hole| hole.exception.is_some()) {
        steps.push("LINES IN BOLD DEPART FROM THEIR GROUP.".into());
    }
    if (0..holes.len()).any(|hole| set.design.tapped(hole).is_some()) {
        steps.push("TAP: TRY THE THREAD WITH ITS GAUGE, AND WRITE HOW FAR IT ENTERS.".into());
    }
    steps.push(match is_whole(set) {
        true => "HAND THE SHEETS IN TO THE DRAWING OFFICE, WHICH KEEPS THE READINGS UNDER THE SAME NUMBERS.".into(),
        false => format!(
            "{} HOLES ARE MORE THAN PAPER HOLDS: HERE STAND THOSE THAT DEPART FROM THEIR GROUP. THE DRAWING OFFICE HAS THE TABLE WITH A LINE FOR EVERY HOLE.",
            set.design.holes.len()
        ),
    });
    Notes::new("HOW TO FILL IN", steps).at_height(TABLE)
}

/// What is proved before marking-out begins.
fn set_up(set: &Set<'_>) -> Table {
    let title = match &set.design.flange {
        Some(FlangeDesign::Pressed(_)) => "SET-UP, AFTER FORMING",
        Some(FlangeDesign::Fabricated(_)) => "SET-UP, AFTER WELDING",
        None => "SET-UP",
    };
    let mut table = match set.design.kept {
        // What is proved twice is written down twice.
        true => Table::new(
            "SET-UP, BEFORE CUTTING AND AGAIN AFTER WELDING",
            &[
                ("MEASURED", 60.0, Hang::Start),
                ("EXPECTED", 40.0, Hang::End),
                ("FOUND BEFORE", 20.0, Hang::Middle),
                ("FOUND AFTER", 20.0, Hang::Middle),
                ("INSTR. NO.", 14.0, Hang::Middle),
                ("BY", 12.0, Hang::Middle),
                ("DATE", 18.0, Hang::Middle),
            ],
        ),
        false => Table::new(
            title,
            &[
                ("MEASURED", 66.0, Hang::Start),
                ("EXPECTED", 36.0, Hang::End),
                ("FOUND", 28.0, Hang::Middle),
                ("INSTR. NO.", 22.0, Hang::Middle),
                ("BY", 14.0, Hang::Middle),
                ("DATE", 18.0, Hang::Middle),
            ],
        ),
    }
    .filled_in();
    table.row(vec![format!(
        "side painted: {}",
        view_words(set.design.view_from).to_lowercase()
    )]);
    table.row(vec!["datum A and B struck; how".into()]);
    let chord = set.figures.table(quarter_chord(set.design));
    for pair in [
        "TOP to RIGHT",
        "RIGHT to BOTTOM",
        "BOTTOM to LEFT",
        "LEFT to TOP",
    ] {
        table.row(vec![format!("quarter pops, {pair}"), chord.clone()]);
    }
    // The outside of a flange that stands is within the barrel, where no tape goes.
    if let Some(flange) = set.design.flange.as_ref().filter(|_| !set.design.kept) {
        let (what, diameter) = match flange {
            FlangeDesign::Pressed(p) => ("girth outside the flange", &p.outside_diameter),
            FlangeDesign::Fabricated(f) => ("girth outside the ring", &f.ring_outside_diameter),
        };
        table.row(vec![
            what.into(),
            set.figures.table(girth(diameter.value())),
        ]);
    }
    for row in thickness_expected(set) {
        table.row(row);
    }
    table
}

/// Least thickness and what it is to be: as ordered, or of a plate that is kept what the works requires of it, and of each new piece as
/// ordered.
fn thickness_expected(set: &Set<'_>) -> Vec<Vec<String>> {
    let row = |what: String, expected: String| vec![what, expected];
    if !set.design.kept {
        let thickness = set.figures.size(&set.design.thickness);
        return vec![row("plate thickness, least found".into(), thickness)];
    }
    let required: Vec<_> = set
        .spec
        .written
        .survey
        .iter()
        .flat_map(|survey| &survey.required)
        .collect();
    let mut rows: Vec<Vec<String>> = required
        .iter()
        .map(|region| {
            row(
                format!("old plate, least found, {}", region.region),
                format!("at least {}", in_both_units(set, &region.thickness)),
            )
        })
        .collect();
    if rows.is_empty() {
        rows.push(row(
            "old plate, least found".into(),
            "limit not given".into(),
        ));
    }
    rows.extend(pieces(set).into_iter().map(|(number, repair, _)| {
        let ordered = repair.piece.as_ref().and_then(|p| p.thickness.as_ref());
        let ordered = ordered.map_or("not given".into(), |size| set.figures.size(size));
        row(format!("{number}, least found"), ordered)
    }));
    rows
}

/// Flatness and thickness at places round the plate.
fn places(set: &Set<'_>) -> Table {
    let thickness = match &set.design.flange {
        Some(FlangeDesign::Pressed(_)) => "THICKNESS AT HEEL",
        Some(FlangeDesign::Fabricated(_)) => "THICKNESS BESIDE WELD",
        None => "THICKNESS NEAR EDGE",
    };
    let mut table = Table::new(
        "FLATNESS AND THICKNESS: PLACES AS ON THE FIT RECORD, ANGLES CLOCKWISE FROM TOP",
        &[
            ("PLACE", 24.0, Hang::Middle),
            ("GAP UNDER STRAIGHT-EDGE", 52.0, Hang::Middle),
            (thickness, 52.0, Hang::Middle),
            ("BY", 24.0, Hang::Middle),
            ("DATE", 24.0, Hang::Middle),
        ],
    )
    .filled_in();
    for place in (1..=PLACES).step_by(EVERY) {
        table.row(vec![place_words(place)]);
    }
    table
}

fn instruments() -> Table {
    let mut table = Table::new(
        "INSTRUMENTS",
        &[
            ("INSTRUMENT", 70.0, Hang::Start),
            ("NUMBER", 50.0, Hang::Middle),
            ("CALIBRATED UNTIL", 50.0, Hang::Middle),
        ],
    )
    .filled_in();
    for what in [
        "bore gauge or inside micrometer",
        "plug gauges, go and no-go",
        "thickness gauge",
        "tape for girths",
    ] {
        table.row(vec![what.into()]);
    }
    table
}

/// Every material of the job, and blanks for its papers.
fn material(set: &Set<'_>) -> Table {
    let mut table = Table::new(
        "MATERIAL",
        &[
            ("ITEM", 36.0, Hang::Start),
            ("CALLED FOR", 52.0, Hang::Start),
            ("CERTIFICATE NO.", 30.0, Hang::Middle),
            ("HEAT NO.", 24.0, Hang::Middle),
            ("STAMPED WHERE", 28.0, Hang::Middle),
        ],
    )
    .filled_in();
    let w = &set.spec.written;
    let plate = w.plate.material.as_ref();
    let grade = material_words(plate);
    let thickness = set.figures.size_short(&set.design.thickness);
    match set.design.kept {
        false => table.row(vec![format!("plate {thickness}"), grade]),
        true => table.row(vec![
            "old plate, which stands".into(),
            format!("{thickness} as made; {grade}"),
            "–".into(),
            "–".into(),
            "–".into(),
        ]),
    }
    for (number, repair, ordered) in pieces(set) {
        let thickness = repair.piece.as_ref().and_then(|p| p.thickness.as_ref());
        let thickness = thickness.map_or(String::new(), |t| set.figures.size_short(t));
        let material = ordered.and_then(|piece| piece.material.as_ref());
        table.row(vec![
            format!("piece {number} {thickness}"),
            material_words(material),
        ]);
    }
    if !set.design.repairs.is_empty() {
        table.row(vec![
            "welding consumables".into(),
            "by the works' procedure".into(),
        ]);
    }
    if let Some(FlangeDesign::Fabricated(f)) = &set.design.flange {
        let bar = format!(
            "ring {} × {}",
            set.figures.size_short(&f.ring_width),
            set.figures.size_short(&f.ring_thickness)
        );
        let own = match &w.flange {
            Some(crate::spec::Flange::Fabricated(f)) => f.material.as_ref(),
            Some(crate::spec::Flange::Pressed(_)) | None => None,
        };
        table.row(vec![bar, own_or_as_the_plate(own, plate)]);
        table.row(vec![
            "welding consumables".into(),
            "by the works' procedure".into(),
        ]);
    }
    let rivets = set.design.rivets.as_ref();
    if let Some(line) = rivets.filter(|_| set.design.rivets_made() > 0) {
        let spec = w.rivets.as_ref();
        let strength = spec.and_then(|rivets| rivets.shear_strength.as_ref());
        let called = strength.map_or("not given".into(), |strength| {
            let strength = stress_as_printed(strength.as_written());
            format!("shear strength {strength}; grade not given")
        });
        table.row(vec![
            format!("rivets {}", set.figures.size_short(&line.rivet)),
            called,
        ]);
    }
    for (i, hole_set) in w.holes.iter().enumerate() {
        let path = format!("holes[{i}]");
        let is_made = set
            .design
            .groups_made()
            .any(|(_, group)| group.path == path);
        if let Some(stay) = hole_set.stay.as_ref().filter(|_| is_made) {
            let metal = stay.metal.map_or("metal not given", |m| m.name());
            table.row(vec![
                hole_set.name.clone(),
                format!(
                    "{} stay {}, {metal}{}",
                    stay.kind.name(),
                    set.figures.size_short(&stay.diameter),
                    least_tensile(stay.strength.as_ref())
                ),
            ]);
            if stay.outside_nut.is_some() || stay.inside_nut.is_some() {
                table.row(vec![
                    format!("nuts of {}", hole_set.name),
                    "not given".into(),
                ]);
            }
        }
    }
    let made = |name: &str| {
        set.design
            .groups_made()
            .any(|(_, group)| group.name == name)
    };
    let bolts = w.holes.iter().filter(|set| set.purpose == Purpose::Bolt);
    for hole_set in bolts.filter(|set| made(&set.name)) {
        table.row(vec![
            format!("studs or bolts, {}", hole_set.name),
            "not given".into(),
        ]);
    }
    for pad in &w.pads {
        let off = pad.number_off.unwrap_or(1);
        let thickness = set.figures.size_short(&pad.thickness);
        table.row(vec![
            format!("{off} × {}, {thickness}", pad.name),
            own_or_as_the_plate(pad.material.as_ref(), plate),
        ]);
    }
    for nest in w.tubes.iter().filter(|nest| nest.renewed != Some(false)) {
        table.row(vec![
            nest.name.clone(),
            format!(
                "outside {}; material not given",
                set.figures.size_short(&nest.tube)
            ),
        ]);
    }
    table
}

/// Grade of a material, the least tensile strength that the checks take of it, and the certificate where one is called for.
pub fn called_for(material: &Material) -> String {
    let strength = least_tensile(material.strength.as_ref());
    match &material.certificate {
        Some(certificate) => format!("{}{strength}; {certificate}", material.grade),
        None => format!("{}{strength}", material.grade),
    }
}

/// The strength that the checks take, behind what it is of: "; least tensile 28 tonf/in²". Nothing where none is given.
fn least_tensile(strength: Option<&Strength>) -> String {
    strength.map_or(String::new(), |strength| {
        format!(
            "; least tensile {}",
            stress_as_printed(strength.as_written())
        )
    })
}

/// What is called for of a part that has a material of its own, or is made as the plate, and to its certificate.
fn own_or_as_the_plate(own: Option<&Material>, plate: Option<&Material>) -> String {
    let certificate = plate.and_then(|m| m.certificate.as_ref());
    own.map_or_else(
        || match certificate {
            Some(certificate) => format!("as the plate; {certificate}"),
            None => "as the plate".into(),
        },
        called_for,
    )
}

/// What is tested of a flat plate.
fn tests() -> Table {
    let mut table = Table::new(
        "TESTS",
        &[
            ("PLACE", 40.0, Hang::Start),
            ("METHOD, EXTENT", 40.0, Hang::Middle),
            ("RESULT", 34.0, Hang::Middle),
            ("REPORT NO.", 30.0, Hang::Middle),
            ("BY, DATE", 26.0, Hang::Middle),
        ],
    )
    .filled_in();
    for place in ["face", "cut edges"] {
        table.row(vec![place.into()]);
    }
    table
}

fn deviations() -> Table {
    let mut table = Table::new(
        "DEVIATIONS: WHAT IS NOT AS DRAWN",
        &[
            ("NO.", 10.0, Hang::Middle),
            ("WHERE", 26.0, Hang::Middle),
            ("WHAT", 40.0, Hang::Middle),
            ("WHY", 34.0, Hang::Middle),
            ("CHECKS RUN AGAIN", 34.0, Hang::Middle),
            ("AGREED BY", 26.0, Hang::Middle),
        ],
    )
    .filled_in();
    for i in 1..=DEVIATIONS {
        table.row(vec![i.to_string()]);
    }
    table.least_row = 9.0;
    table
}
