//! Sheet: marking-out. Struck lines with running dimensions from the datum lines, the order of work, and tables to prove it by.

use super::beginning::{Beginning, open_at_the_centre};
use super::board::{Board, PaperBox};
use super::cross_check_table::cross_check_table;
use super::flow::{Block, flow};
use super::kept::pieces_named;
use super::letter_size::{NOTES, TABLE, fitting_height};
use super::marking_tables::{circle_table, run_table, strike_table, struck_tables};
use super::notes::Notes;
use super::pages::continued;
use super::particulars::view_words;
use super::repair_tables::lines_tables;
use super::set::Set;
use super::struck_view::put_struck_view;
use super::{Hang, at};
use crate::design::{FlangeDesign, near_wall};
use crate::spec::ViewFrom;

/// Height of the warning that says where one stands, mm.
const WARNING: f64 = 10.0;
/// It may be so much smaller where that keeps it on one line, mm.
const LEAST_WARNING: f64 = 6.0;
/// Least width of the column of notes and tables, mm.
const COLUMN: f64 = 128.0;
/// Clear strip beside it, mm.
const BESIDE: f64 = 6.0;

/// Share of the height that the view takes on upright paper.
const VIEWS_ABOVE: f64 = 0.6;

const NAME: &str = "marking-out";
const TITLE: &str = "Marking-out";

/// The marking-out over as many sheets as it needs; none for a plate without holes.
pub fn marking_out(set: &Set<'_>) -> Vec<Board> {
    // Of a plate that is kept the welds are struck, and the holes in its new pieces.
    let struck = set.design.as_made_now();
    let whole = set.design;
    let set = &Set {
        design: &struck,
        ..*set
    };
    let welds = lines_tables(set);
    if set.design.holes.is_empty() && welds.is_empty() {
        return Vec::new();
    }
    let mut board = set.board(NAME, TITLE);
    let room = board.room;
    let top = put_warning(&mut board, set, &room);
    let below_warning = PaperBox { top, ..room };
    let (views, words) = set.shared(&below_warning, COLUMN, BESIDE, VIEWS_ABOVE);
    let used = put_struck_view(&mut board, set, whole, &views);
    let column = match words.top > views.bottom {
        true => words,
        false => PaperBox::new(used + BESIDE, top + 1.0, room.right, room.bottom),
    };
    let mut blocks = vec![Block::Notes(sequence(set), 0)];
    blocks.extend(welds.into_iter().map(|table| Block::Table(table, 0)));
    if !set.design.holes.is_empty() {
        blocks.extend(drill_side(set));
    }
    blocks.extend(run_table(set).map(|t| Block::Table(t, 0)));
    let (mut more, y) = flow(&mut board, &column, blocks);
    let rest = PaperBox::new(column.left, y, column.right, column.bottom);
    let strikes = strike_table(set).map(|t| t.widened_to(column.width()));
    // A table that goes on this sheet whole does; one that does not begins on the next.
    match strikes {
        Some(table) if more.is_empty() && table.full_height() <= rest.height() => {
            table.put(&mut board, &rest, 0);
        }
        Some(table) => more.push(Block::Table(table, 0)),
        None => {}
    }
    let checks = cross_check_table(set);
    more.extend((!checks.rows.is_empty()).then_some(Block::Table(checks, 0)));
    more.push(Block::Table(circle_table(set), 0));
    more.push(Block::NextColumn);
    more.extend(struck_tables(set).into_iter().map(|t| Block::Table(t, 0)));
    continued(set, vec![board], (NAME, "Marking-out tables"), 2, more)
}

/// Where one stands, in letters that are read from the far side of the trestles; tells the y below.
fn put_warning(board: &mut Board, set: &Set<'_>, room: &PaperBox) -> f64 {
    let words = view_words(set.design.view_from);
    let height = fitting_height(words, room.width(), WARNING, true).max(LEAST_WARNING);
    let lines = super::letter_size::wrap(words, room.width(), height, true);
    // The centring mark reaches into the middle of the head, so the lettering begins below it.
    let mut y = room.top + 2.5;
    for line in &lines {
        y += height + 2.0;
        board.bold(at(room.middle().x, y), line, height, Hang::Middle);
    }
    y + 2.0
}

/// The order of work, in the imperative.
fn sequence(set: &Set<'_>) -> Notes {
    let design = set.design;
    let this_face = match design.view_from {
        ViewFrom::Smokebox => "SMOKEBOX",
        ViewFrom::Firebox => "FIREBOX",
    };
    let mut steps = vec![format!(
        "PAINT “TOP” AND “THIS FACE TO {this_face}” ON THE PLATE. STAND WHERE THE HEAD OF THIS SHEET SAYS."
    )];
    steps.extend(
        set.design
            .flange
            .as_ref()
            .map(|flange| centring(set, flange)),
    );
    steps.push(format!(
        "STRIKE DATUM A UPRIGHT, DATUM B LEVEL. TRAMMEL THE POP CIRCLE, R{}{}, AND POP ITS FOUR QUARTERS. POP TO POP MUST READ {} ALL ROUND.",
        set.figures.short(crate::design::pop_circle(design)),
        open_at_the_centre(set).map_or(String::new(), |hole| format!(", FROM A BRIDGE SET IN {}", hole.id)),
        set.figures.short(crate::design::quarter_chord(design)),
    ));
    if design.kept {
        steps.extend(weld_steps(set));
    }
    if !design.holes.is_empty() {
        steps.extend(lines_and_counts(set));
    }
    if set.design.flange.is_some() && set.spec.written.drilling.is_none() {
        steps.push(
            "SIDE TO DRILL FROM: NOT SAID HERE, SINCE HOW FAR THE DRILL'S BODY REACHES FROM ITS SPINDLE IS NOT GIVEN."
                .into(),
        );
    }
    if set.figures.in_inches() {
        steps.push("READ ~ AS ROUNDED TO THE NEAREST 1/64; THE TABLES GIVE THE DECIMAL.".into());
    }
    Notes::new("ORDER OF WORK", steps).at_height(NOTES)
}

/// What is struck on a plate that is kept: its welds, and the holes of what is let in.
fn weld_steps(set: &Set<'_>) -> Vec<String> {
    let mut steps = Vec::new();
    if !lines_tables(set).is_empty() {
        steps.push("STRIKE THE CORNERS OF EVERY WELD LINE FROM A AND B AND THE ENDS OF ITS ARCS, JOIN THEM, AND CARRY ENDS AT THE TANGENT SQUARE OVER HEEL AND FLANGE. POP THE LINE.".into());
    }
    let pieces = pieces_named(set);
    if !pieces.is_empty() {
        steps.push(format!("CUT FOR {pieces} ONLY WHEN THE LINE IS AGREED. PROVE SOUND METAL ALL ROUND THE CUT; WHERE IT IS NOT, STOP AND ASK. CARRY A AND B OVER THE NEW METAL FROM WHAT STANDS OF THEM, AND POP AGAIN WHAT WAS CUT AWAY."));
        if !set.design.holes.is_empty() {
            steps.push(format!("STRIKE THE HOLES OF {pieces} ON THE NEW METAL, BY RUNNING SIZES FROM THE SAME DATUM LINES; PROVE THEM WITH TRAMMELS FROM THE QUARTER POPS. RIVET HOLES ARE NOT STRUCK. ALL OTHER HOLES STAND."));
        }
    }
    steps
}

/// When the plate is marked out, and how its centre is found from the flange. A ring that stands on the other face of a plate wider than
/// itself cannot be measured from this one.
fn centring(set: &Set<'_>, flange: &FlangeDesign) -> String {
    let this_face = set.design.view_from;
    match flange {
        _ if set.design.kept => {
            "THE PLATE STANDS. CENTRE IT BY FOUR MEASURES FROM THE INSIDE OF THE FLANGE.".into()
        }
        FlangeDesign::Pressed(_) => {
            "MARK OUT AFTER FORMING AND HEAT TREATMENT, NEVER ON THE BLANK. CENTRE THE PLATE BY FOUR MEASURES FROM THE OUTSIDE OF THE FLANGE.".into()
        }
        FlangeDesign::Fabricated(ring) if ring.towards != this_face => {
            "MARK OUT AFTER THE RING IS WELDED AND TESTED. THE RING STANDS ON THE OTHER FACE: FIND ITS CENTRE THERE BY FOUR MEASURES FROM ITS OUTSIDE, STRIKE A AND B THERE AND SQUARE THEM ROUND THE EDGE TO THIS FACE.".into()
        }
        FlangeDesign::Fabricated(_) => {
            "MARK OUT AFTER THE RING IS WELDED AND TESTED. CENTRE THE PLATE BY FOUR MEASURES FROM THE OUTSIDE OF THE RING.".into()
        }
    }
}

/// From the lines to the signed count: holes are popped, or proved where the cutter has left them.
fn lines_and_counts(set: &Set<'_>) -> Vec<String> {
    let all = Beginning::of_plate(set);
    let off = set.design.holes.len();
    let mut steps: Vec<String> = match all.pops() {
        0 => vec![
            "PROVE THE HOLES AS CUT FROM THE DATUM LINES: STRIKE EVERY LINE BY ITS RUNNING SIZE FROM A OR B. NEVER STEP ONE PITCH ON ANOTHER.".into(),
            "PROVE THE HOLES OFF THE NEST BY RUNNING SIZES, AND WITH TRAMMELS FROM THE QUARTER POPS TO A BRIDGE SET IN EACH HOLE.".into(),
            "TAKE THE CROSS-CHECKS AND WRITE THEM DOWN.".into(),
            format!("COUNT THE HOLES AS CUT: {off} IN THE FLAT. HAVE THE COUNT SHEET SIGNED, THEN STRIKE WITNESS CIRCLES."),
        ],
        pops if set.design.kept => vec![
            "POP LIGHT. TAKE THE CROSS-CHECKS AND WRITE THEM DOWN.".into(),
            count_of_pops(pops),
        ],
        pops => {
            let mut steps = vec![
                "STRIKE EVERY LINE BY ITS RUNNING SIZE FROM A OR B. NEVER STEP ONE PITCH ON ANOTHER.".into(),
                "STRIKE THE HOLES OFF THE NEST BY RUNNING SIZES; PROVE THEM WITH TRAMMELS FROM THE QUARTER POPS.".into(),
                "POP LIGHT. TAKE THE CROSS-CHECKS AND WRITE THEM DOWN.".into(),
            ];
            if all.cut > 0 {
                steps.push(format!("PROVE THE {} HOLES AS CUT FROM THE SAME LINES.", all.cut));
            }
            steps.push(count_of_pops(pops));
            steps
        }
    };
    steps.push(format!(
        "{} UNTIL THE COUNT IS SIGNED. A DRILLED HOLE IS PERMANENT.",
        all.no_further()
    ));
    steps
}

fn count_of_pops(pops: usize) -> String {
    format!(
        "COUNT THE POPS: {pops} IN THE FLAT. HAVE THE COUNT SHEET SIGNED, THEN POP DEEP AND STRIKE WITNESS CIRCLES."
    )
}

/// Which side to drill from, where the flange stands in the way of the shop's drill.
fn drill_side(set: &Set<'_>) -> Option<Block> {
    let flange = set.design.flange.as_ref()?;
    let towards = match flange {
        FlangeDesign::Pressed(p) => p.towards,
        FlangeDesign::Fabricated(f) => f.towards,
    };
    let drilling = set.spec.written.drilling.as_ref()?;
    let near = near_wall(set.design, drilling.body_radius.value());
    let reach = set.figures.size_short(&drilling.body_radius);
    if near.is_empty() {
        let words = format!(
            "NO HOLE STANDS WITHIN {reach} OF THE FLANGE WALL, WHICH THE DRILL'S BODY WOULD FOUL: DRILL FROM THIS FACE ({}).",
            drilling.origin.to_uppercase()
        );
        return Some(Block::Caution(words, TABLE));
    }
    let ids: Vec<&str> = near
        .iter()
        .map(|n| set.design.holes[n.hole].id.as_str())
        .collect();
    let side = match towards == set.design.view_from {
        true => {
            "FROM THE PLAIN SIDE (SEEN FROM THERE LEFT IS RIGHT: CARRY THEM THROUGH WITH PILOTS)"
        }
        false => "FROM THIS FACE, THE PLAIN SIDE",
    };
    let words = format!(
        "DRILL {side}: {}. THEY STAND WITHIN {reach} OF THE FLANGE WALL, WHICH THE DRILL'S BODY WOULD FOUL ({}).",
        ids.join(", "),
        drilling.origin.to_uppercase()
    );
    Some(Block::Caution(words, TABLE))
}

#[cfg(test)]
mod tests {
    use super::super::board::Stated;
    use super::super::sample_jobs::{jobs, with_set};
    use super::*;
    use crate::units::Length;

    /// A printed running dimension as a length: "~{14 17/64}" is 14.265625 in; "123.45" of a metric job is millimetres.
    fn printed(words: &str, in_inches: bool) -> Length {
        let plain = words.replace(['~', '{', '}'], "");
        if !in_inches {
            return Length::mm(plain.parse().expect("a number of millimetres"));
        }
        let mut total = 0.0;
        for part in plain.split(' ') {
            total += match part.split_once('/') {
                Some((top, bottom)) => {
                    top.parse::<f64>().expect("digits") / bottom.parse::<f64>().expect("digits")
                }
                None => part.parse::<f64>().expect("digits"),
            };
        }
        Length::inches(total)
    }

    /// Every running dimension starts on the datum line itself, and what is printed lies within 1/128 in of where the mark lies.
    #[test]
    fn holds_running_dimensions_never_add_up_errors() {
        for job in jobs() {
            with_set(&job, |set| {
                let board = marking_out(set).remove(0);
                assert!(!board.stated.is_empty(), "{job}");
                let level = |s: &&Stated| (s.from.y - s.to.y).abs() < 1e-9;
                let running = || board.stated.iter().filter(|s| s.words != "scale bar");
                let (across, up): (Vec<&Stated>, Vec<&Stated>) = running().partition(level);
                let across: Vec<f64> = across.iter().map(|s| s.from.x).collect();
                let up: Vec<f64> = up.iter().map(|s| s.from.y).collect();
                for one in [across, up] {
                    assert!(
                        one.iter().all(|d| (d - one[0]).abs() < 1e-9),
                        "{job}: more than one datum"
                    );
                }
                for s in running() {
                    let off = (printed(&s.words, set.figures.in_inches()) - s.shown()).abs();
                    let allowed = Length::inches(1.0 / 128.0);
                    assert!(
                        allowed.shortfall(off).is_none(),
                        "{job}: {} is {} mm off",
                        s.words,
                        off.to_mm()
                    );
                }
            });
        }
    }
}
