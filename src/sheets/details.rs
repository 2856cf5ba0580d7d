//! Sheet: details. Heel or ring and welds, seats of tubes, stays, plugs and pipes, gauges; full size where the paper holds them.

use super::board::{Board, PaperBox};
use super::gauge_details::{put_heel_gauge, put_roll_check, roll_check};
use super::heel_detail::put_heel_detail;
use super::hole_detail::{hole_extent, put_hole_detail};
use super::letter_size::{FIGURES, NOTES, fitting_height};
use super::paper_size::in_a4;
use super::particulars::below;
use super::ring_detail::put_ring_detail;
use super::scale::{Scale, largest_scale};
use super::section::{flange_is_near, whole_depth};
use super::set::Set;
use super::{Hang, Pen, Role, at};
use crate::design::FlangeDesign;
use crate::spec::Paper;

/// Clear strip between details, mm.
const GAP: f64 = 7.0;
/// Height kept below a detail for its letter and title, mm.
const TITLE: f64 = 12.0;
/// Flat plate shown inside a heel or a ring, mm of plate.
pub const FLAT_SHOWN: f64 = 20.0;
/// A hole wider than this is drawn at half size, mm.
const WIDEST_AT_FULL_SIZE: f64 = 80.0;

/// What a detail shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Shows {
    Heel,
    Ring,
    /// A hole of this group with what goes into it.
    Hole(usize),
    HeelGauge,
    RollCheck,
}

/// A detail with its scale and the room it takes on paper.
struct Detail {
    shows: Shows,
    scale: Scale,
    size: (f64, f64),
}

/// Details on the paper that takes least of it at the scales of the job's own; where several take equally much, on the smallest
/// of them. A sheet that is not filled goes on the smallest paper that holds it.
pub fn on_least_paper(set: &Set<'_>) -> Vec<Board> {
    let papers: &[Paper] = match set.paper {
        Paper::A4 => &[Paper::A4],
        Paper::A3 => &[Paper::A3],
        Paper::A2 => &[Paper::A3, Paper::A2],
        Paper::A1 => &[Paper::A3, Paper::A2, Paper::A1],
        Paper::A0 => &[Paper::A3, Paper::A2, Paper::A1, Paper::A0],
    };
    let scales = |paper: Paper| -> Vec<f64> {
        let details = all(&set.on(paper));
        details.iter().map(|d| d.scale.one_to).collect()
    };
    let wanted = scales(set.paper);
    let with_banner = below(set.findings) > 0;
    let same_scales = papers.iter().filter(|&&paper| scales(paper) == wanted);
    let drawn = same_scales.map(|&paper| -> Vec<Board> {
        let boards = details(&set.on(paper)).into_iter();
        boards.map(|b| b.on_smallest_paper(with_banner)).collect()
    });
    let paper_of = |boards: &Vec<Board>| boards.iter().map(|b| in_a4(b.paper)).sum::<usize>();
    drawn.min_by_key(paper_of).unwrap_or_default()
}

/// Every detail that is wanted, at its scale.
fn all(set: &Set<'_>) -> Vec<Detail> {
    let room = set.room();
    let wanted = wanted(set).into_iter();
    wanted
        .filter_map(|shows| detail(set, shows, &room))
        .collect()
}

/// Details over as many sheets as they need, and none where there is nothing to detail.
pub fn details(set: &Set<'_>) -> Vec<Board> {
    let room = set.room();
    let all = all(set);
    let mut boards: Vec<Board> = Vec::new();
    let mut shelves: Vec<Shelf> = Vec::new();
    for (i, one) in all.iter().enumerate() {
        let (wide, high) = one.size;
        let found = shelves
            .iter()
            .position(|s| s.x + wide <= room.right + 0.01 && high <= s.height + 0.01);
        let shelf = found.unwrap_or_else(|| {
            let below = shelves.last().map(|s| (s.sheet, s.y + s.height + GAP));
            let (sheet, y) = match below {
                Some((sheet, y)) if y + high <= room.bottom + 0.01 => (sheet, y),
                _ => {
                    let mut board = set.board("details", "Details");
                    // Each title tells its own scale; the title block that of the first.
                    board.scale_words = one.scale.words();
                    boards.push(board);
                    (boards.len() - 1, room.top)
                }
            };
            shelves.push(Shelf {
                sheet,
                x: room.left,
                y,
                height: high,
            });
            shelves.len() - 1
        });
        let shelf = &mut shelves[shelf];
        let b = PaperBox::new(shelf.x, shelf.y, shelf.x + wide, shelf.y + high);
        shelf.x = b.right + GAP;
        let board = &mut boards[shelf.sheet];
        put(board, set, one, &b);
        put_title(board, &letter(i), &title(set, one), &b);
    }
    boards
}

/// A strip of a sheet on which details stand side by side.
struct Shelf {
    sheet: usize,
    /// Where the next one begins.
    x: f64,
    y: f64,
    height: f64,
}

fn wanted(set: &Set<'_>) -> Vec<Shows> {
    let mut all = Vec::new();
    match &set.design.flange {
        Some(FlangeDesign::Pressed(_)) => all.extend([Shows::Heel, Shows::HeelGauge]),
        Some(FlangeDesign::Fabricated(_)) => all.push(Shows::Ring),
        None => {}
    }
    let groups = 0..set.design.groups.len();
    all.extend(groups.filter(|&g| set.number_off(g) > 0).map(Shows::Hole));
    if matches!(set.design.flange, Some(FlangeDesign::Fabricated(_))) {
        all.push(Shows::RollCheck);
    }
    all
}

/// Plate shown, mm, and room on paper left, above, right and below it for dimensions.
fn extent(set: &Set<'_>, shows: Shows) -> Option<((f64, f64), [f64; 4])> {
    let depth = whole_depth(set.design);
    Some(match (shows, &set.design.flange) {
        (Shows::Heel, Some(FlangeDesign::Pressed(p))) => {
            let bend = p.heel_radius.value().to_mm() + set.design.thickness.value().to_mm();
            (
                (depth, bend + FLAT_SHOWN),
                mirrored(set, [46.0, 26.0, 34.0, 10.0]),
            )
        }
        (Shows::Ring, Some(FlangeDesign::Fabricated(r))) => {
            let legs = r.weld_leg_inside.value() + r.weld_leg_outside.value();
            let high = r.ring_thickness.value() + legs;
            (
                (depth, high.to_mm() + 2.0 * FLAT_SHOWN),
                mirrored(set, [16.0, 8.0, 30.0, 14.0]),
            )
        }
        (Shows::HeelGauge, Some(FlangeDesign::Pressed(p))) => {
            let r = p.heel_radius.value().to_mm();
            ((r + 32.0, r + 32.0), [6.0, 4.0, 10.0, 4.0])
        }
        (Shows::RollCheck, Some(FlangeDesign::Fabricated(_))) => {
            let check = roll_check(set)?;
            (
                (check.chord.to_mm(), check.height.to_mm() + 26.0),
                [6.0, 6.0, 22.0, 14.0],
            )
        }
        (Shows::Hole(group), _) => hole_extent(set, group),
        _ => return None,
    })
}

/// Room round a section, given for a flange that stands towards the viewer; the other hand for one that stands away.
fn mirrored(set: &Set<'_>, [left, above, right, below]: [f64; 4]) -> [f64; 4] {
    if flange_is_near(set.design) {
        [left, above, right, below]
    } else {
        [right, above, left, below]
    }
}

fn detail(set: &Set<'_>, shows: Shows, room: &PaperBox) -> Option<Detail> {
    let ((wide, high), around) = extent(set, shows)?;
    let [left, above, right, below] = around;
    let (aside, over) = (left + right, above + below + TITLE);
    let inside = (room.width() - aside, room.height() - over);
    let largest = largest_scale(wide, high, inside, set.figures.in_inches());
    let large_hole = match shows {
        Shows::Hole(group) => set.design.groups[group].finish.value().to_mm() > WIDEST_AT_FULL_SIZE,
        Shows::Heel | Shows::Ring | Shows::HeelGauge | Shows::RollCheck => false,
    };
    let scale = Scale {
        one_to: largest.one_to.max(if large_hole { 2.0 } else { 1.0 }),
    };
    let full_size = matches!(shows, Shows::HeelGauge | Shows::RollCheck);
    // A gauge is cut to its drawing, so it is drawn full size or not at all.
    (!full_size || scale.one_to == 1.0).then(|| Detail {
        shows,
        scale,
        size: (
            (wide * scale.factor() + aside).min(room.width()),
            high * scale.factor() + over,
        ),
    })
}

fn put(board: &mut Board, set: &Set<'_>, one: &Detail, b: &PaperBox) {
    let Some((_, [left, above, right, below])) = extent(set, one.shows) else {
        return;
    };
    let inside = PaperBox::new(
        b.left + left,
        b.top + above,
        b.right - right,
        b.bottom - below - TITLE,
    );
    let f = one.scale.factor();
    match one.shows {
        Shows::Heel => put_heel_detail(board, set, &inside, f),
        Shows::Ring => put_ring_detail(board, set, &inside, f),
        Shows::Hole(group) => put_hole_detail(board, set, group, &inside, f),
        Shows::HeelGauge => put_heel_gauge(board, set, &inside),
        Shows::RollCheck => put_roll_check(board, set, &inside),
    }
}

fn title(set: &Set<'_>, one: &Detail) -> String {
    let words = match one.shows {
        Shows::Heel => "HEEL, SECTION AT TOP".into(),
        Shows::Ring => "RING AND WELDS, SECTION AT TOP".into(),
        Shows::HeelGauge => "HEEL RADIUS GAUGE".into(),
        Shows::RollCheck => "ROLL CHECK FOR THE RING".into(),
        Shows::Hole(group) => {
            let name = set.design.groups[group].name.to_uppercase();
            format!("{name} {}", set.numbers(group))
        }
    };
    format!("{words}, {}", one.scale.words())
}

/// Letter of a detail: A … Z without I and O, then AA …
fn letter(i: usize) -> String {
    const LETTERS: &[u8] = b"ABCDEFGHJKLMNPQRSTUVWXYZ";
    let letter = |i: usize| char::from(LETTERS[i % LETTERS.len()]);
    if i < LETTERS.len() {
        letter(i).into()
    } else {
        format!("{}{}", letter(i / LETTERS.len() - 1), letter(i))
    }
}

fn put_title(board: &mut Board, letter: &str, words: &str, b: &PaperBox) {
    let y = b.bottom - 5.0;
    let centre = at(b.left + 5.0, y);
    let pattern = super::Pattern::Continuous;
    board.circle(centre, 4.2, Pen::Middle, pattern, Role::Furniture);
    let letters = at(centre.x, y + FIGURES / 2.0);
    let height = if letter.len() > 1 { NOTES } else { FIGURES };
    board.bold(letters, letter, height, Hang::Middle);
    let room = b.width() - 11.0;
    let height = fitting_height(words, room, NOTES, true);
    let lines = super::letter_size::wrap(words, room, height, true);
    let first = y + height / 2.0 - (lines.len() as f64 - 1.0) * height * 0.75;
    for (i, line) in lines.iter().enumerate() {
        let base = first + i as f64 * height * 1.5;
        board.bold(at(b.left + 11.0, base), line, height, Hang::Start);
    }
}
