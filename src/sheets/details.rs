//! Sheet: details. A key to their places, heel or ring and welds, seats of tubes, stays, plugs and pipes, gauges; full size where the
//! paper holds them.

use super::board::{Board, PaperBox};
use super::detail_letters::{Shows, lettered};
use super::gauge_details::{put_heel_gauge, put_roll_check, roll_check};
use super::heel_detail::put_heel_detail;
use super::hole_detail::put_hole_detail;
use super::joint_detail::put_joint;
use super::key_views::put_key_views;
use super::letter_size::{FIGURES, NOTES, TABLE, fitting_height};
use super::paper_size::in_a4;
use super::preparation_detail::put_preparation;
use super::ring_detail::{self, put_ring_detail};
use super::scale::Scale;
use super::section::whole_depth;
use super::set::Set;
use super::weld_numbers::repair_number;
use super::{Hang, Pattern, Pen, Role, at, face};
use crate::design::FlangeDesign;
use crate::spec::Paper;

/// Least clear strip between details, mm.
const GAP: f64 = 6.0;
/// Height kept below a row of details for their letters and titles, mm.
const TITLE: f64 = 10.5;
/// Flat plate shown inside a heel, mm of plate.
pub const FLAT_SHOWN: f64 = 15.0;
/// Radius of the circle about the letter of a title, mm.
const RING: f64 = 4.2;
/// Scales that a detail is tried at, largest drawing first.
const SCALES: [f64; 5] = [1.0, 2.0, 5.0, 10.0, 20.0];
/// A weld preparation is small, and drawn twice its size.
const PREPARATION: f64 = 0.5;
/// Room that the plate may take in the key, the largest first, mm of paper.
const KEY_ROOMS: [(f64, f64); 3] = [(160.0, 130.0), (128.0, 100.0), (100.0, 78.0)];
/// A detail is taken larger than it need be up to this share of the width and of the height of its sheet.
const LARGEST: (f64, f64) = (0.7, 0.8);
/// A hole wider than this is drawn at half size, mm.
const WIDEST_AT_FULL_SIZE: f64 = 80.0;
/// A detail of a hole is drawn no smaller than this to save a sheet.
const HALF_SIZE: f64 = 2.0;

/// A detail as drawn, about an origin of its own.
struct Detail {
    drawn: Board,
    extent: PaperBox,
    letter: Option<String>,
    title: String,
    scale: Scale,
    is_key: bool,
}

impl Detail {
    fn width(&self) -> f64 {
        self.extent.width().max(self.title_width())
    }

    fn title_width(&self) -> f64 {
        let ring = self.letter.as_ref().map_or(0.0, |_| 2.0 * RING + 2.0);
        ring + face::width(&self.title, NOTES, true)
    }

    fn height(&self) -> f64 {
        self.extent.height() + TITLE
    }
}

/// Details on the paper that takes least of it, the job's own or smaller; where several take equally much, on the smallest of them.
///
/// `first` is the number of the first of these sheets in the set.
pub fn on_least_paper(set: &Set<'_>, first: usize) -> Vec<Board> {
    let papers: &[Paper] = match set.paper {
        Paper::A4 => &[Paper::A4],
        Paper::A3 => &[Paper::A3],
        Paper::A2 => &[Paper::A3, Paper::A2],
        Paper::A1 => &[Paper::A3, Paper::A2, Paper::A1],
        Paper::A0 => &[Paper::A3, Paper::A2, Paper::A1, Paper::A0],
    };
    let drawn = papers.iter().map(|&paper| details(&set.on(paper), first));
    let paper_of = |boards: &Vec<Board>| boards.iter().map(|b| in_a4(b.paper)).sum::<usize>();
    drawn.min_by_key(paper_of).unwrap_or_default()
}

/// Details over as many sheets as they need, and none where there is nothing to detail.
///
/// They are first put down small, which tells the fewest sheets that hold them; then each is taken as large as goes without another
/// sheet. Lettered details keep their order; gauges stand where they leave the least room empty.
pub fn details(set: &Set<'_>, number: usize) -> Vec<Board> {
    let room = set.room();
    let sizes = drawn(set, &room);
    orders(&sizes)
        .into_iter()
        .filter_map(|order| taken_large(&sizes, &order, &room))
        .min_by(|(_, a), (_, b)| {
            let sheets = a.sheets.len().cmp(&b.sheets.len());
            sheets.then(a.empty.total_cmp(&b.empty))
        })
        .map_or_else(Vec::new, |(all, best)| {
            put_down(set, &all, &best.sheets, number)
        })
}

/// Orders to try: the key first, then gauges where they follow, before all that is lettered, or after it.
fn orders(sizes: &[Vec<Detail>]) -> Vec<Vec<usize>> {
    let lettered = |i: &usize| sizes[*i].iter().any(|d| d.letter.is_some());
    let as_they_follow: Vec<usize> = (1..sizes.len()).collect();
    let (letters, gauges): (Vec<usize>, Vec<usize>) =
        as_they_follow.iter().copied().partition(lettered);
    let key: &[usize] = if sizes.is_empty() { &[] } else { &[0] };
    [
        vec![key, &as_they_follow],
        vec![key, &gauges, &letters],
        vec![key, &letters, &gauges],
    ]
    .into_iter()
    .map(|parts| parts.concat())
    .collect()
}

/// Every detail in an order, as large as goes without another sheet, and how they are arranged.
fn taken_large<'d>(
    sizes: &'d [Vec<Detail>],
    order: &[usize],
    room: &PaperBox,
) -> Option<(Vec<&'d Detail>, Arranged)> {
    let mut all: Vec<&Detail> = order.iter().filter_map(|&i| sizes[i].last()).collect();
    let mut best = arranged(&all, room)?;
    // The key comes last: it has only to be read.
    let mut places: Vec<usize> = (0..order.len()).collect();
    places.sort_by_key(|&place| order[place] == 0);
    for place in places {
        let small = all[place];
        for one in sizes[order[place]].iter().rev().skip(1).rev() {
            all[place] = one;
            match arranged(&all, room) {
                Some(found) if found.sheets.len() <= best.sheets.len() => {
                    best = found;
                    break;
                }
                _ => all[place] = small,
            }
        }
    }
    Some((all, best))
}

/// The key and every detail, each at the scales that it may be taken at, the largest first.
fn drawn(set: &Set<'_>, room: &PaperBox) -> Vec<Vec<Detail>> {
    let wanted = lettered(set);
    if wanted.is_empty() {
        return Vec::new();
    }
    let mut all = vec![KEY_ROOMS.map(|within| key(set, within)).into()];
    all.extend(wanted.into_iter().filter_map(|(letter, shows)| {
        let scales: &[f64] = match shows {
            Shows::Preparation => &[PREPARATION],
            // A gauge is cut to its drawing, so it is drawn full size or not at all.
            Shows::HeelGauge | Shows::RollCheck => &[1.0],
            Shows::Hole(group) if is_wide(set, group) => &SCALES[1..],
            Shows::Heel | Shows::Ring | Shows::Joint(_) | Shows::Hole(_) => &SCALES,
        };
        let mut tried: Vec<Detail> = scales
            .iter()
            .filter_map(|&one_to| detail(set, shows, letter.clone(), Scale { one_to }))
            .collect();
        let within = |d: &Detail, share: (f64, f64)| {
            d.width() <= room.width() * share.0 && d.height() <= room.height() * share.1
        };
        let is_gauge = matches!(shows, Shows::HeelGauge | Shows::RollCheck);
        let first = match tried.iter().position(|d| within(d, (1.0, 1.0))) {
            Some(found) => found,
            None if is_gauge => return None,
            // Figures do not shrink with the scale: the least wide of all.
            None => {
                (0..tried.len()).min_by(|&a, &b| tried[a].width().total_cmp(&tried[b].width()))?
            }
        };
        // A hole's detail may go down to half size to save a sheet; heel and ring are wanted as large as they go.
        let half = tried.iter().rposition(|d| d.scale.one_to <= HALF_SIZE);
        let small = match shows {
            Shows::Hole(_) => first.max(half.unwrap_or(first)),
            _ => first,
        };
        tried.truncate(small + 1);
        let smallest = tried.pop()?;
        tried.retain(|d| within(d, LARGEST) && d.scale.one_to < smallest.scale.one_to);
        tried.push(smallest);
        Some(tried)
    }));
    all
}

/// Whether a hole is so wide that full size would only show its empty middle.
fn is_wide(set: &Set<'_>, group: usize) -> bool {
    set.design.groups[group].finish.value().to_mm() > WIDEST_AT_FULL_SIZE
}

fn empty(set: &Set<'_>) -> Board {
    Board::new("details", "Details", set.room())
}

fn key(set: &Set<'_>, within: (f64, f64)) -> Detail {
    let mut drawn = empty(set);
    let scale = put_key_views(&mut drawn, set, within);
    let key = finished(drawn, None, "KEY TO THE DETAILS", scale);
    Detail {
        is_key: true,
        ..key
    }
}

fn finished(drawn: Board, letter: Option<String>, words: &str, scale: Scale) -> Detail {
    let none = PaperBox::new(0.0, 0.0, 0.0, 0.0);
    Detail {
        extent: drawn.extent(|_| true).unwrap_or(none),
        title: format!("{words}, SCALE {}", scale.words()),
        drawn,
        letter,
        scale,
        is_key: false,
    }
}

fn detail(set: &Set<'_>, shows: Shows, letter: Option<String>, scale: Scale) -> Option<Detail> {
    let mut board = empty(set);
    let f = scale.factor();
    let about = |(wide, high): (f64, f64)| PaperBox::new(0.0, 0.0, wide * f, high * f);
    let words = match (shows, &set.design.flange) {
        (Shows::Heel, Some(FlangeDesign::Pressed(p))) => {
            let bend = p.heel_radius.value().to_mm() + set.design.thickness.value().to_mm();
            let size = (whole_depth(set.design), bend + FLAT_SHOWN);
            put_heel_detail(&mut board, set, &about(size), f);
            "HEEL, SECTION AT TOP".to_string()
        }
        (Shows::Ring, Some(FlangeDesign::Fabricated(r))) => {
            let legs = r.weld_leg_inside.value() + r.weld_leg_outside.value();
            let high = (r.ring_thickness.value() + legs).to_mm() + 2.0 * ring_detail::FLAT_SHOWN;
            put_ring_detail(&mut board, set, &about((whole_depth(set.design), high)), f);
            "RING AND WELDS, SECTION AT TOP".into()
        }
        (Shows::Preparation, _) => {
            put_preparation(&mut board, set, f);
            "WELD PREPARATION OF THE RING".into()
        }
        (Shows::HeelGauge, Some(FlangeDesign::Pressed(p))) => {
            let r = p.heel_radius.value().to_mm();
            put_heel_gauge(&mut board, set, &about((r + 32.0, r + 32.0)));
            "HEEL RADIUS GAUGE".into()
        }
        (Shows::RollCheck, Some(FlangeDesign::Fabricated(_))) => {
            let check = roll_check(set)?;
            let size = (check.chord.to_mm(), check.height.to_mm() + 26.0);
            put_roll_check(&mut board, set, &about(size));
            "ROLL CHECK FOR THE RING".into()
        }
        (Shows::Joint(repair), _) => {
            put_joint(&mut board, set, repair, f);
            format!(
                "JOINT OF {}, SQUARE TO THE WELD",
                repair_number(set, repair)
            )
        }
        (Shows::Hole(group), _) => {
            put_hole_detail(&mut board, set, group, f);
            let name = set.design.groups[group].name.to_uppercase();
            format!("{name} {}", set.numbers(group))
        }
        _ => return None,
    };
    Some(finished(board, letter, &words, scale))
}

/// Details side by side, in order, with the height of the tallest.
#[derive(Clone, Debug)]
struct Row {
    /// Which of the details, from the first to before the second.
    of: (usize, usize),
    height: f64,
}

/// Rows on each sheet, and how much room they leave empty.
struct Arranged {
    sheets: Vec<Vec<Row>>,
    empty: f64,
}

/// The most details that one sheet is tried with: every break of them into rows is looked at.
const MOST_ON_A_SHEET: usize = 12;

/// Rows on each sheet: as few sheets as go, and of those ways the one that leaves the least room empty. None where there is
/// nothing to arrange.
fn arranged(all: &[&Detail], room: &PaperBox) -> Option<Arranged> {
    // Sheets and emptiness of the best way to put down the first so many, with where its last sheet starts and its rows.
    let mut best: Vec<(usize, f64, usize, Vec<Row>)> = vec![(0, 0.0, 0, Vec::new())];
    for end in 1..=all.len() {
        let mut found: Option<(usize, f64, usize, Vec<Row>)> = None;
        let first = end.saturating_sub(MOST_ON_A_SHEET);
        for (start, before) in best.iter().enumerate().skip(first) {
            let alone = start + 1 == end;
            let Some((empty, rows)) = rows_of_a_sheet(all, (start, end), room, alone) else {
                continue;
            };
            let (sheets, before) = (before.0 + 1, before.1);
            let better = found
                .as_ref()
                .is_none_or(|(s, e, ..)| sheets < *s || sheets == *s && before + empty < *e);
            if better {
                found = Some((sheets, before + empty, start, rows));
            }
        }
        best.push(found?);
    }
    let mut sheets = Vec::new();
    let mut end = all.len();
    while end > 0 {
        let (_, _, start, rows) = best[end].clone();
        sheets.push(rows);
        end = start;
    }
    sheets.reverse();
    let empty = best[all.len()].1;
    (!sheets.is_empty()).then_some(Arranged { sheets, empty })
}

/// The rows of one sheet that leave the least of it empty, and how much; none where these details do not go on one sheet.
/// A detail by itself goes on a sheet of its own however large it is.
fn rows_of_a_sheet(
    all: &[&Detail],
    (start, end): (usize, usize),
    room: &PaperBox,
    alone: bool,
) -> Option<(f64, Vec<Row>)> {
    let count = end - start;
    let mut best: Option<(f64, Vec<Row>)> = None;
    // Each bit is a break after one of the details.
    for breaks in 0..1_u32 << (count - 1) {
        let mut rows = Vec::new();
        let mut first = start;
        for i in start..end {
            if i + 1 == end || breaks >> (i - start) & 1 == 1 {
                rows.push(Row {
                    of: (first, i + 1),
                    height: tallest(&all[first..=i]),
                });
                first = i + 1;
            }
        }
        let high = rows.iter().map(|row| row.height + GAP).sum::<f64>() - GAP;
        let slack = |row: &Row| {
            let some = &all[row.of.0..row.of.1];
            room.width() - (some.iter().map(|d| d.width() + GAP).sum::<f64>() - GAP)
        };
        let fits = high <= room.height() && rows.iter().all(|row| slack(row) >= 0.0);
        if !fits && !alone {
            continue;
        }
        let share = |spare: f64, of: f64| (spare.max(0.0) / of) * (spare.max(0.0) / of);
        let aside = rows.iter().map(|row| share(slack(row), room.width()));
        let empty =
            aside.sum::<f64>() / rows.len() as f64 + share(room.height() - high, room.height());
        if best.as_ref().is_none_or(|(least, _)| empty < *least) {
            best = Some((empty, rows));
        }
    }
    best
}

fn tallest(some: &[&Detail]) -> f64 {
    some.iter().map(|d| d.height()).fold(0.0, f64::max)
}

/// Spreads the rows of each sheet over its height, and the details of each row over its width; a sheet goes on the smallest paper
/// that holds its details.
fn put_down(set: &Set<'_>, all: &[&Detail], sheets: &[Vec<Row>], number: usize) -> Vec<Board> {
    let elsewhere = on_other_sheets(all, sheets, number);
    const SMALLEST_FIRST: [Paper; 5] = [Paper::A4, Paper::A3, Paper::A2, Paper::A1, Paper::A0];
    sheets
        .iter()
        .filter_map(|rows| {
            let of = (rows.first()?.of.0, rows.last()?.of.1);
            let smaller = SMALLEST_FIRST.into_iter().take_while(|&p| p != set.paper);
            let on_smaller = smaller.into_iter().find_map(|paper| {
                let on = set.on(paper);
                let (_, rows) = rows_of_a_sheet(all, of, &on.room(), false)?;
                Some((on, rows))
            });
            let (on, rows) = on_smaller.unwrap_or_else(|| (*set, rows.clone()));
            Some(put_sheet(&on, all, &rows, &elsewhere))
        })
        .collect()
}

/// Which letters of the key stand on which further sheet, in words; nothing where all stand on the key's own.
fn on_other_sheets(all: &[&Detail], sheets: &[Vec<Row>], number: usize) -> String {
    let further = sheets.iter().enumerate().skip(1).filter_map(|(i, rows)| {
        let (first, last) = (rows.first()?.of.0, rows.last()?.of.1);
        let letters = all[first..last].iter().filter_map(|d| d.letter.as_deref());
        let letters: Vec<&str> = letters.collect();
        (!letters.is_empty()).then(|| format!("{}: SHEET {}", letters.join(", "), number + i))
    });
    further.collect::<Vec<String>>().join("; ")
}

fn put_sheet(set: &Set<'_>, all: &[&Detail], rows: &[Row], elsewhere: &str) -> Board {
    let room = set.room();
    let mut board = set.board("details", "Details");
    if let Some(first) = rows.first() {
        // Each title tells its own scale; the title block that of the first detail that is no key.
        let main = all[first.of.0..].iter().find(|d| d.letter.is_some());
        board.scale_words = main.unwrap_or(&all[first.of.0]).scale.words();
    }
    let high: f64 = rows.iter().map(|row| row.height).sum();
    let between = ((room.height() - high) / rows.len() as f64).max(0.0);
    let mut y = room.top + between / 2.0;
    for row in rows {
        put_row(
            &mut board,
            &all[row.of.0..row.of.1],
            (row, elsewhere),
            y,
            &room,
        );
        y += row.height + between;
    }
    board
}

fn put_row(
    board: &mut Board,
    some: &[&Detail],
    (row, elsewhere): (&Row, &str),
    top: f64,
    room: &PaperBox,
) {
    let wide: f64 = some.iter().map(|d| d.width()).sum();
    let between = ((room.width() - wide) / some.len() as f64).max(0.0);
    let mut x = room.left + between / 2.0;
    for one in some {
        let middle = x + one.width() / 2.0;
        let free = row.height - one.height();
        let right = middle - one.extent.middle().x;
        board.take(&one.drawn, right, top + free / 2.0 - one.extent.top);
        let y = top + row.height - RING - 0.3;
        put_title(board, one, middle, y, room);
        if one.is_key {
            board.text(at(middle, y + NOTES + 3.0), elsewhere, TABLE, Hang::Middle);
        }
        x += one.width() + between;
    }
}

/// Letter in its circle and title on one line, about a middle.
fn put_title(board: &mut Board, one: &Detail, middle: f64, y: f64, room: &PaperBox) {
    let height = fitting_height(&one.title, room.width() - 2.0 * RING - 4.0, NOTES, true);
    let mut x = middle - one.title_width() / 2.0;
    if let Some(letter) = &one.letter {
        let centre = at(x + RING, y);
        let pattern = Pattern::Continuous;
        board.circle(centre, RING, Pen::Middle, pattern, Role::Furniture);
        let size = if letter.len() > 1 { NOTES } else { FIGURES };
        let base = at(centre.x, y + size / 2.0);
        board.bold(base, letter, size, Hang::Middle);
        x += 2.0 * RING + 2.0;
    }
    board.bold(at(x, y + height / 2.0), &one.title, height, Hang::Start);
}
