//! Tables of the marking-out: lines in runs, struck lines with what rounding leaves over, circles and trammel lengths.

use super::Hang;
use super::beginning::open_at_the_centre;
use super::kept::weld_corners;
use super::set::Set;
use super::table::Table;
use crate::design::{Hole, LineWay, NestLine, Point, Run, number_runs, pop_circle, runs, strikes};
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

/// A length for trammels and long rules: the nearest 64th and the decimal that it stands for, or millimetres.
pub fn long_length(set: &Set<'_>, length: Length) -> String {
    let words = set.figures.short(length);
    match set.figures.in_inches() {
        true => format!("{words} = {}", set.figures.decimal(length)),
        false => words,
    }
}

/// Columns or rows of the nests: where each is, its first hole, pitch, number off, and its last as a check.
pub fn run_table(set: &Set<'_>) -> Option<Table> {
    let runs = runs(set.design);
    let way = runs.first()?.way;
    let (title, offset, along) = match way {
        LineWay::Columns => ("COLUMNS", From::A, From::B),
        LineWay::Rows => ("ROWS", From::B, From::A),
    };
    let mut table = Table::new(
        &format!("{title}: CHECK THE LAST HOLE BY ITS OWN RUNNING SIZE"),
        &[
            ("LINE", 14.0, Hang::Middle),
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
            each(&|r| r.line.clone(), ", "),
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

/// Running size of every struck line, what it is struck for, and what the nearest 64th leaves over.
pub fn struck_tables(set: &Set<'_>) -> Vec<Table> {
    [
        struck_table(set, "UPRIGHT LINES, RUNNING FROM DATUM A", From::A),
        struck_table(set, "LEVEL LINES, RUNNING FROM DATUM B", From::B),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// Where a hole or a corner of a weld line lies from a datum.
fn from_datum(at: Point, from: From) -> Length {
    Length::mm(match from {
        From::A => at.x,
        From::B => at.y,
    })
}

/// What a line is struck for: the lines of the nest that lie on it, or that their holes stand along, and every hole off the nest.
fn struck_for(set: &Set<'_>, at: Length, from: From) -> String {
    let design = set.design;
    let on_it = |hole: &&Hole| from_datum(hole.at, from).same_as(at);
    let way_of = |line: &NestLine| {
        let mut ways = design.line_way.iter();
        ways.find(|(group, _)| *group == line.group)
            .map(|(_, way)| *way)
    };
    let along = match from {
        From::A => LineWay::Columns,
        From::B => LineWay::Rows,
    };
    let own = design
        .nest_lines
        .iter()
        .filter(|line| way_of(line) == Some(along) && Length::mm(line.offset).same_as(at));
    let mut words: Vec<String> = own.map(|line| line.name.clone()).collect();
    let mut named: Vec<&str> = Vec::new();
    let mut across: Vec<&str> = Vec::new();
    for hole in design.holes.iter().filter(on_it) {
        let group = &design.groups[hole.group];
        if !group.purpose.takes_a_tube() {
            named.push(&hole.id);
        } else if words.is_empty() && !across.contains(&group.name.as_str()) {
            across.push(&group.name);
        }
    }
    words.extend(across.into_iter().map(String::from));
    words.extend((!named.is_empty()).then(|| number_runs(&named).replace('-', "–")));
    let corners = weld_corners(set).into_iter();
    for corner in corners.filter(|corner| from_datum(corner.at, from).same_as(at)) {
        if !words.contains(&corner.name) {
            words.push(corner.name);
        }
    }
    words.join(", ")
}

fn struck_table(set: &Set<'_>, title: &str, from: From) -> Option<Table> {
    let corners = weld_corners(set);
    let places = set.design.holes.iter().map(|h| h.at);
    let places = places.chain(corners.iter().map(|c| c.at));
    let mut lines: Vec<Length> = places.map(|at| from_datum(at, from)).collect();
    lines.sort_by(Length::total_cmp);
    lines.dedup_by(|a, b| a.same_as(*b));
    let in_inches = set.figures.in_inches();
    // A column that would say NOTHING all the way down says it in none.
    let rounded = in_inches && lines.iter().any(|line| left_over(line.abs()) != NOTHING);
    let mut columns = vec![("STRUCK AT", 38.0, Hang::End), ("FOR", 34.0, Hang::Start)];
    if in_inches {
        columns.push(("DECIMAL, in", 24.0, Hang::End));
        if rounded {
            columns.push(("64TH LEAVES, in", 28.0, Hang::End));
        }
        columns.push(("mm", 22.0, Hang::End));
    } else {
        columns.push(("mm", 26.0, Hang::End));
        columns.push(("NEAREST 1/64 in", 32.0, Hang::End));
    }
    let mut table = Table::new(title, &columns);
    for line in &lines {
        let other = lines.iter().find(|l| l.same_as(-*line));
        let other = other.filter(|_| matches!(from, From::A) && !line.same_as(Length::ZERO));
        if other.is_some() && *line < Length::ZERO {
            continue;
        }
        let mut row = match other {
            Some(other) => vec![
                format!("L AND R {}", set.figures.short(*line)),
                match (struck_for(set, *other, from), struck_for(set, *line, from)) {
                    (left, right) if left == right => left,
                    (left, right) => format!("{left}; {right}"),
                },
            ],
            None => vec![with_hand(set, *line, from), struck_for(set, *line, from)],
        };
        if in_inches {
            row.push(trimmed(line.abs().to_inches(), 6));
            if rounded {
                row.push(left_over(line.abs()));
            }
            row.push(millimetres(line.abs()));
        } else {
            row.push(decimal(line.abs().to_mm(), 2));
            row.push(super::figure::stacked_inches(line.abs()));
        }
        table.row(row);
    }
    (!lines.is_empty()).then_some(table)
}

/// What is said where a size is a whole number of 64ths.
const NOTHING: &str = "NOTHING";

/// What the nearest 64th leaves over, to five places of an inch with its sign.
fn left_over(length: Length) -> String {
    let remainder = inch_fraction(length).remainder;
    if remainder.abs().to_mm() <= SAME_LENGTH_MM {
        return NOTHING.into();
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
        match open_at_the_centre(set) {
            Some(hole) => format!("A × B, bridge in {}", hole.id),
            None => "A × B".into(),
        },
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
        "HOLES OFF THE NEST, TRAMMEL LENGTHS FROM TWO POPS",
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
