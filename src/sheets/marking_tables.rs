//! Tables of the marking-out: lines in runs, struck lines with what rounding leaves over, circles and trammel lengths.

use super::Hang;
use super::kept::weld_corners;
use super::set::Set;
use super::table::Table;
use crate::design::{LineWay, Run, levels, pop_circle, runs, strikes, uprights};
use crate::units::Length;
use crate::units::print::{decimal, inch_fraction, millimetres, trimmed};
use crate::units::tolerance::SAME_LENGTH_MM;

/// Which datum a running size is from: its hand is told in words, never by a sign.
#[derive(Clone, Copy)]
pub enum From {
    /// From the upright datum: left or right.
    A,
    /// From the level datum: up or down.
    B,
}

/// A running size with its hand: "R {2 1/4}", "{11 43/64} DOWN".
pub fn with_hand(set: &Set<'_>, length: Length, from: From) -> String {
    let words = set.figures.short(length.abs());
    if length.same_as(Length::ZERO) {
        return match from {
            From::A => "ON A".into(),
            From::B => "ON B".into(),
        };
    }
    match (from, length > Length::ZERO) {
        (From::A, true) => format!("R {words}"),
        (From::A, false) => format!("L {words}"),
        (From::B, true) => format!("UP {words}"),
        (From::B, false) => format!("DOWN {words}"),
    }
}

/// A length for trammels and long rules: the nearest 64th with the decimal that it stands for, or millimetres.
pub fn long_length(set: &Set<'_>, length: Length) -> String {
    let words = set.figures.short(length);
    match set.figures.in_inches() {
        true => format!("{words} ({})", set.figures.decimal(length)),
        false => words,
    }
}

/// Columns or rows of the nests: where each is, its first hole, pitch, number off, and its last as a check.
pub fn run_table(set: &Set<'_>) -> Option<Table> {
    let runs = runs(set.design);
    let way = runs.first()?.way;
    let (title, line, offset, along) = match way {
        LineWay::Columns => ("COLUMNS", "COL.", From::A, From::B),
        LineWay::Rows => ("ROWS", "ROW", From::B, From::A),
    };
    let mut table = Table::new(
        &format!("{title}: CHECK THE LAST POP BY ITS OWN RUNNING SIZE"),
        &[
            (line, 14.0, Hang::Middle),
            ("LINE AT", 24.0, Hang::End),
            ("FIRST HOLE", 25.0, Hang::End),
            ("PITCH", 15.0, Hang::End),
            ("OFF", 12.0, Hang::Middle),
            ("LAST HOLE", 25.0, Hang::End),
            ("NUMBERS", 34.0, Hang::Start),
        ],
    );
    let mut done = vec![false; runs.len()];
    for (i, run) in runs.iter().enumerate() {
        if done[i] {
            continue;
        }
        let other = (i + 1..runs.len()).find(|&k| !done[k] && other_hand(run, &runs[k]));
        let both: Vec<&Run> = match other {
            Some(k) => {
                done[k] = true;
                vec![run, &runs[k]]
            }
            None => vec![run],
        };
        let each = |words: &dyn Fn(&Run) -> String, by: &str| -> String {
            both.iter().map(|r| words(r)).collect::<Vec<_>>().join(by)
        };
        let line_at = match other {
            Some(_) => format!("L AND R {}", set.figures.short(run.offset.abs())),
            None => with_hand(set, run.offset, offset),
        };
        table.row(vec![
            each(&|r| minus(r.line), ", "),
            line_at,
            with_hand(set, run.first, along),
            run.pitch.map_or("–".into(), |p| set.figures.short(p)),
            each(&|r| r.count.to_string(), " + "),
            with_hand(set, run.last, along),
            each(&numbers_of, ", "),
        ]);
    }
    let total: usize = runs.iter().map(|r| r.count).sum();
    table.row(vec![
        String::new(),
        String::new(),
        String::new(),
        "TOTAL".into(),
        total.to_string(),
    ]);
    table.loud.push(table.rows.len() - 1);
    Some(table)
}

/// Whether two columns stand alike on both hands.
fn other_hand(a: &Run, b: &Run) -> bool {
    a.way == LineWay::Columns
        && a.group == b.group
        && a.count == b.count
        && a.offset.same_as(-b.offset)
        && a.first.same_as(b.first)
        && a.last.same_as(b.last)
}

fn numbers_of(run: &Run) -> String {
    match run.count {
        1 => run.ids.0.clone(),
        _ => format!("{}–{}", run.ids.0, run.ids.1),
    }
}

/// The number of a line with a minus sign as it is lettered.
fn minus(number: i32) -> String {
    number.to_string().replace('-', "−")
}

/// Running size of every struck line, and what the nearest 64th leaves over.
pub fn struck_tables(set: &Set<'_>) -> Vec<Table> {
    let design = set.design;
    let loose = || {
        design
            .holes
            .iter()
            .filter(|h| !design.groups[h.group].purpose.takes_a_tube())
    };
    let mut across = uprights(design);
    let corners = weld_corners(set);
    across.extend(loose().map(|h| Length::mm(h.at.x)));
    across.extend(corners.iter().map(|c| Length::mm(c.at.x)));
    let mut up = levels(design);
    up.extend(loose().map(|h| Length::mm(h.at.y)));
    up.extend(corners.iter().map(|c| Length::mm(c.at.y)));
    [
        struck_table(set, "UPRIGHT LINES, RUNNING FROM DATUM A", across, From::A),
        struck_table(set, "LEVEL LINES, RUNNING FROM DATUM B", up, From::B),
    ]
    .into_iter()
    .flatten()
    .collect()
}

fn struck_table(set: &Set<'_>, title: &str, mut lines: Vec<Length>, from: From) -> Option<Table> {
    lines.sort_by(Length::total_cmp);
    lines.dedup_by(|a, b| a.same_as(*b));
    let in_inches = set.figures.in_inches();
    let mut columns = vec![("STRUCK AT", 40.0, Hang::End)];
    if in_inches {
        columns.push(("DECIMAL, in", 26.0, Hang::End));
        columns.push(("64TH LEAVES, in", 32.0, Hang::End));
        columns.push(("mm", 26.0, Hang::End));
    } else {
        columns.push(("mm", 26.0, Hang::End));
        columns.push(("NEAREST 1/64 in", 32.0, Hang::End));
    }
    let mut table = Table::new(title, &columns);
    for line in &lines {
        let both = lines.iter().any(|l| l.same_as(-*line)) && !line.same_as(Length::ZERO);
        if matches!(from, From::A) && both && *line < Length::ZERO {
            continue;
        }
        let mut row = vec![match from {
            From::A if both => format!("L AND R {}", set.figures.short(*line)),
            From::A | From::B => with_hand(set, *line, from),
        }];
        if in_inches {
            row.push(trimmed(line.abs().to_inches(), 6));
            row.push(left_over(line.abs()));
            row.push(millimetres(line.abs()));
        } else {
            row.push(decimal(line.abs().to_mm(), 2));
            row.push(super::figure::stacked_inches(line.abs()));
        }
        table.row(row);
    }
    (!lines.is_empty()).then_some(table)
}

/// What the nearest 64th leaves over, to five places of an inch with its sign.
fn left_over(length: Length) -> String {
    let remainder = inch_fraction(length).remainder;
    if remainder.abs().to_mm() <= SAME_LENGTH_MM {
        return "NOTHING".into();
    }
    let words = decimal(remainder.to_inches(), 5);
    match words.starts_with('-') {
        true => words.replace('-', "−"),
        false => format!("+{words}"),
    }
}

/// Circles that are struck with trammels or dividers.
pub fn circle_table(set: &Set<'_>) -> Table {
    let mut table = Table::new(
        "CIRCLES TO STRIKE",
        &[
            ("CIRCLE", 62.0, Hang::Start),
            ("CENTRE", 26.0, Hang::Start),
            ("RADIUS", 40.0, Hang::End),
        ],
    );
    let radius = |length: Length| set.figures.table(length);
    table.row(vec![
        "pop circle, where the flat ends".into(),
        "A × B".into(),
        radius(pop_circle(set.design)),
    ]);
    for (index, group) in set.design.groups_made() {
        table.row(vec![
            format!("witness circles, {}", group.name),
            set.numbers_made(index),
            radius(group.finish.value() / 2.0),
        ]);
    }
    table
}

/// Trammel lengths of every hole on no line from two quarter pops; none where every hole stands on one.
pub fn strike_table(set: &Set<'_>) -> Option<Table> {
    let mut table = Table::new(
        "HOLES ON NO LINE, TRAMMEL LENGTHS FROM TWO POPS",
        &[
            ("NO.", 12.0, Hang::Start),
            ("FROM A", 26.0, Hang::End),
            ("FROM B", 28.0, Hang::End),
            ("FIRST POP", 44.0, Hang::Start),
            ("SECOND POP", 44.0, Hang::Start),
        ],
    );
    for strike in strikes(set.design) {
        let hole = &set.design.holes[strike.hole];
        let pop = |i: usize| {
            let (pop, length) = &strike.from[i];
            format!("{} {}", pop.name, long_length(set, *length))
        };
        table.row(vec![
            hole.id.clone(),
            with_hand(set, Length::mm(hole.at.x), From::A),
            with_hand(set, Length::mm(hole.at.y), From::B),
            pop(0),
            pop(1),
        ]);
    }
    (!table.rows.is_empty()).then_some(table)
}
