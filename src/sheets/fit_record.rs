//! Sheet: fit record. Gaps between flange and barrel, girths, trim taken off; then every rivet.

use super::Hang;
use super::board::{Board, PaperBox};
use super::fit_figure::{PLACES, place_deg, place_words, put_fit_figure};
use super::flow::{Block, flow};
use super::hole_record::rivet_record;
use super::kept::{pieces, pieces_named, rivets_made};
use super::letter_size::TABLE;
use super::notes::Notes;
use super::pages::{continued, pages};
use super::paper_size::is_upright;
use super::set::Set;
use super::signed::signed_table;
use super::standing_notes::row_numbers;
use super::table::Table;
use crate::design::{FlangeDesign, PieceSize, Rivet, RivetLine, RivetMade, girth};
use crate::units::{Length, Size};

const NAME: &str = "fit";
const TITLE: &str = "Fit record";
/// Heights of the figure, mm, the largest first.
const FIGURES: [f64; 3] = [112.0, 104.0, 96.0];
/// Its heights on upright paper, mm.
const UPRIGHT_FIGURES: [f64; 3] = [105.0, 100.0, 95.0];

/// Clear strip between the columns, mm.
const GAP: f64 = 8.0;

/// So many rivets go on one sheet in two wide columns; more take three.
const TWO_COLUMNS: usize = 60;

/// The fit and the rivets over as many sheets as they need; none for a plate without a flange, or where nothing of it is new.
pub fn fit_record(set: &Set<'_>) -> Vec<Board> {
    let Some(flange) = &set.design.flange else {
        return Vec::new();
    };
    // A flange that stands is not fitted again; a piece that takes in a part of it is.
    if set.design.kept && places_felt(set).is_empty() {
        return Vec::new();
    }
    let heights = match is_upright(set.paper) {
        true => UPRIGHT_FIGURES,
        false => FIGURES,
    };
    // The figure gives way a little before the work goes over to another sheet.
    let drawn = heights.map(|high| fit(set, flange, high));
    let whole = drawn.iter().position(|(_, rest)| rest.is_empty());
    let [largest, ..] = &drawn;
    let (board, rest) = whole.map_or(largest, |i| &drawn[i]).clone();
    let mut boards = continued(set, vec![board], (NAME, TITLE), 2, rest);
    if let Some(table) = rivet_record(set) {
        let columns = if table.rows.len() <= TWO_COLUMNS {
            2
        } else {
            3
        };
        let blocks = vec![
            Block::Notes(how_to_fill_in().at_height(TABLE), 0),
            Block::Table(table, 0),
            Block::Table(signed_table(), 0),
        ];
        boards.extend(pages(set, "rivet-record", "Rivet record", columns, blocks));
    }
    boards
}

fn how_to_fill_in() -> Notes {
    Notes::new(
        "HOW TO FILL IN",
        vec![
            "CALLED: THE FINISHED HOLE. REAMED: THE HOLE AS MEASURED.".into(),
            "OUT BY: HOW FAR BARREL AND FLANGE STOOD OUT OF LINE BEFORE REAMING.".into(),
            "SOUND: YES WHERE THE HEAD IS TIGHT ALL ROUND AND RINGS TRUE; ELSE NO, AND A DEVIATION."
                .into(),
        ],
    )
}

/// The sheet itself with a figure so high, mm, and what did not go on it.
fn fit(set: &Set<'_>, flange: &FlangeDesign, high: f64) -> (Board, Vec<Block>) {
    let mut board = set.board(NAME, TITLE);
    let room = board.room;
    let upright = is_upright(set.paper);
    // On upright paper everything stands in one column; else the figure and the work stand beside what is measured.
    let half = (room.width() - GAP) / 2.0;
    let wide = if upright { room.width() } else { half };
    let figure = PaperBox::new(room.left, room.top, room.left + wide, room.top + high + 8.0);
    put_fit_figure(&mut board, set, &figure);
    let below = PaperBox::new(room.left, figure.bottom + 4.0, figure.right, room.bottom);
    let work = vec![Block::Notes(how(set), 0), Block::Table(steps(set), 0)];
    let measured = vec![
        Block::Table(girths(set, flange), 0),
        Block::Table(gaps(set), 0),
        Block::Table(signed_table(), 0),
    ];
    let rest = match upright {
        true => {
            flow(
                &mut board,
                &below,
                work.into_iter().chain(measured).collect(),
            )
            .0
        }
        false => {
            let column = PaperBox::new(figure.right + GAP, room.top, room.right, room.bottom);
            let mut rest = flow(&mut board, &below, work).0;
            rest.extend(flow(&mut board, &column, measured).0);
            rest
        }
    };
    (board, rest)
}

/// The places round the flange at which a gap is felt: all of them, or those within the pieces let in.
fn places_felt(set: &Set<'_>) -> Vec<usize> {
    let places = 1..=PLACES;
    if !set.design.kept {
        return places.collect();
    }
    let within = |place: &usize| {
        let mut pieces = set.design.pieces();
        pieces.any(|(_, piece)| piece.takes_in(place_deg(*place)))
    };
    places.filter(within).collect()
}

/// The order of fitting a piece let in, whose weld and rivets the works' procedure puts in their order.
fn how_of_piece(set: &Set<'_>) -> Notes {
    let pieces = pieces_named(set);
    Notes::new(
        "ORDER OF WORK",
        vec![
            format!(
                "THE FLANGE STANDS. OFFER {pieces} UP TO IT AND TO THE BARREL. FEEL THE GAP AT ITS PLACES BEFORE ANY BOLT IS IN."
            ),
            "FORCE NOTHING: A PIECE DRAWN IN BY BOLTS STAYS STRAINED.".into(),
            format!("NEW RIVETS: {}. ALL OTHERS STAND.", rivets_made(set)),
            "WHETHER WELD OR RIVETS COME FIRST IS THE WORKS' PROCEDURE.".into(),
        ],
    )
}

fn how(set: &Set<'_>) -> Notes {
    if set.design.kept {
        return how_of_piece(set);
    }
    let trim = trim_of(set).is_some();
    let mut notes = vec![match trim {
        true => "OFFER THE PLATE UP WITH THE TRIM STILL ON. FEEL THE GAP AT EVERY PLACE BEFORE ANY BOLT IS IN.".to_string(),
        false => "OFFER THE PLATE UP. FEEL THE GAP AT EVERY PLACE BEFORE ANY BOLT IS IN.".into(),
    }];
    let line = set.design.rivets.as_ref();
    let first = line.map_or_else(Vec::new, RivetLine::tacks_at_quarters);
    let ids = |rivets: &[&Rivet]| {
        let ids: Vec<&str> = rivets.iter().map(|r| r.id.as_str()).collect();
        ids.join(", ")
    };
    notes.push(match first.is_empty() {
        true => "NO TACK HOLE IS CALLED FOR: HOLD THE PLATE AT THE FOUR QUARTERS WITH CLAMPS. FORCE NOTHING: A FLANGE DRAWN IN STAYS STRAINED.".into(),
        false => format!(
            "BOLT FIRST AT THE TACK HOLES NEAREST THE FOUR QUARTERS: {}. FORCE NOTHING: A FLANGE DRAWN IN BY BOLTS STAYS STRAINED.",
            ids(&first)
        ),
    });
    let tack: Vec<&Rivet> = line.map_or_else(Vec::new, |line| {
        let rivets = line.rivets.iter();
        rivets.filter(|r| r.made == RivetMade::Tack).collect()
    });
    let rows = line.and_then(row_numbers);
    if !tack.is_empty() {
        let which = if rows.is_some() { ", ALL IN ROW 1" } else { "" };
        notes.push(format!("TACK BOLTS{which}: {}.", ids(&tack)));
    }
    notes.extend(rows);
    if trim {
        notes.push(
            "SCRIBE THE TRIM LINE IN PLACE, TAKE THE PLATE OUT, TRIM, OFFER UP AGAIN.".into(),
        );
    }
    Notes::new("ORDER OF WORK", notes)
}

/// What is left on the flange to be trimmed off in place; none of a ring, and none where the spec leaves nothing.
fn trim_of<'a>(set: &Set<'a>) -> Option<&'a Size> {
    match &set.design.flange {
        Some(_) if set.design.kept => None,
        Some(FlangeDesign::Pressed(p)) => Some(&p.trim).filter(|t| t.value() > Length::ZERO),
        Some(FlangeDesign::Fabricated(_)) | None => None,
    }
}

/// Girths expected and found.
fn girths(set: &Set<'_>, flange: &FlangeDesign) -> Table {
    let mut table = Table::new(
        "GIRTHS",
        &[
            ("GIRTH", 78.0, Hang::Start),
            ("EXPECTED", 44.0, Hang::End),
            ("FOUND", 40.0, Hang::Middle),
            ("BY", 20.0, Hang::Middle),
        ],
    )
    .filled_in();
    let (what, outside) = match flange {
        FlangeDesign::Pressed(p) => ("outside of the flange", &p.outside_diameter),
        FlangeDesign::Fabricated(f) => ("outside of the ring", &f.ring_outside_diameter),
    };
    if let Some(barrel) = &set.spec.written.barrel {
        table.row(vec![
            "bore of the barrel".into(),
            set.figures.table(girth(barrel.bore.value())),
        ]);
    }
    if set.design.kept {
        for (number, repair, _) in pieces(set) {
            if let Some(PieceSize::Flanged { round, .. }) = repair.piece.as_ref().map(|p| p.size) {
                table.row(vec![
                    format!("round the bore, weld to weld of {number}"),
                    set.figures.table(round),
                ]);
            }
        }
        return table;
    }
    table.row(vec![what.into(), set.figures.table(girth(outside.value()))]);
    table.row(vec![
        "flange less than bore by; the works chooses the fit".into(),
        "…………".into(),
    ]);
    table.row(vec!["largest diameter of the bore".into()]);
    table.row(vec!["least diameter of the bore".into()]);
    table
}

/// Gap at every place, before and after bolting; trim and edge where there are any, each with what is called for.
fn gaps(set: &Set<'_>) -> Table {
    let trim = trim_of(set).map(|trim| {
        let left_on = set.figures.size_short(trim);
        format!("TRIM TAKEN OFF, {left_on} LEFT ON")
    });
    let edge = set.design.rivets.as_ref().map(|line| {
        let called = set.figures.size_short(&line.from_edge);
        format!("EDGE TO HOLE CENTRE, {called} CALLED")
    });
    let mut columns = vec![
        ("PLACE", 26.0, Hang::Middle),
        ("GAP, NO BOLTS", 38.0, Hang::Middle),
        ("GAP, BOLTED UP", 38.0, Hang::Middle),
    ];
    columns.extend(trim.iter().map(|head| (head.as_str(), 38.0, Hang::Middle)));
    columns.extend(edge.iter().map(|head| (head.as_str(), 42.0, Hang::Middle)));
    columns.push(("BY", 20.0, Hang::Middle));
    let title = match trim {
        _ if set.design.kept => {
            "GAPS BY FEELER AT THE PLACES OF NEW FLANGE; ANGLES CLOCKWISE FROM TOP"
        }
        Some(_) => "GAPS BY FEELER, AND TRIM; ANGLES CLOCKWISE FROM TOP",
        None => "GAPS BY FEELER; ANGLES CLOCKWISE FROM TOP",
    };
    let mut table = Table::new(title, &columns).filled_in();
    for place in places_felt(set) {
        table.row(vec![place_words(place)]);
    }
    table
}

const STEPS: [&str; 5] = [
    "bolted nearest the quarters, then at every tack hole",
    "holes back-marked or drilled through the barrel",
    "parted, burrs taken off, faces clean",
    "closed up again and bolted, holes reamed, none drifted",
    "inspected before any rivet is closed",
];

const STEPS_WITHOUT_TACKS: [&str; 5] = [
    "held at the quarters by clamps",
    STEPS[1],
    STEPS[2],
    STEPS[3],
    STEPS[4],
];

const STEPS_OF_PIECE: [&str; 5] = [
    "cut proved to sound metal all round",
    "piece offered up, its gaps felt",
    "holes back-marked or drilled through the barrel",
    "burrs taken off, faces clean, holes reamed, none drifted",
    "inspected before any rivet is closed",
];

/// Steps of fitting up, each signed by who did it.
fn steps(set: &Set<'_>) -> Table {
    let mut table = Table::new(
        "FITTING UP",
        &[
            ("STEP", 118.0, Hang::Start),
            ("DONE BY", 38.0, Hang::Middle),
            ("DATE", 38.0, Hang::Middle),
        ],
    )
    .filled_in();
    let mut rivets = set.design.rivets.iter().flat_map(|line| &line.rivets);
    let tacked = rivets.any(|rivet| rivet.made == RivetMade::Tack);
    let steps = match (set.design.kept, tacked) {
        (true, _) => STEPS_OF_PIECE,
        (false, true) => STEPS,
        (false, false) => STEPS_WITHOUT_TACKS,
    };
    for step in steps {
        table.row(vec![step.into()]);
    }
    table
}
