//! The figure of the design check: the face small, with the largest circle, its supports and the tightest ligaments marked.

use super::board::{Board, PaperBox};
use super::clear::{crosses_lettering, touches};
use super::dimension::arrow;
use super::face_view::{Wanted, put_face};
use super::held_areas::put_held_areas;
use super::letter_size::{LINE_PITCH, NOTES, TABLE, fitting_height, wrap};
use super::particulars::view_words;
use super::scale::{Scale, largest_scale};
use super::set::Set;
use super::view::{PlateBox, View};
use super::{Hang, PaperPoint, Pattern, Pen, Role, at};
use crate::design::{LargestCircle, Ligament, Point, Touch};
use crate::units::Length;
use crate::units::angle::{PI, atan2, cos, hypot, sin};
use crate::units::tolerance::SAME_LENGTH_MM;

/// Room for the figure's height, mm.
const HIGH: f64 = 128.0;
/// More pairs than this are not lettered.
const MOST_PAIRS: usize = 8;
/// Room beside it for its letters, mm.
const ASIDE: f64 = 14.0;

/// The narrower of two widths, unless the wider gives the figure a larger scale, mm.
pub fn figure_width(set: &Set<'_>, narrow: f64, wide: f64) -> f64 {
    let gains = scale_within(set, wide).factor() > scale_within(set, narrow).factor();
    if gains { wide } else { narrow }
}

fn scale_within(set: &Set<'_>, width: f64) -> Scale {
    let edge = PlateBox::round(&set.design.edge);
    let space = (width - ASIDE, HIGH);
    largest_scale(edge.width(), edge.height(), space, set.figures.in_inches())
}

/// Puts the figure at the top of a box and tells the y below it.
pub fn put_check_figure(board: &mut Board, set: &Set<'_>, room: &PaperBox) -> f64 {
    let edge = PlateBox::round(&set.design.edge);
    let scale = scale_within(set, room.width());
    let f = scale.factor();
    board.scale_words = scale.words();
    let view = View {
        scale: f,
        centre: at(
            room.middle().x - (edge.left + edge.right) / 2.0 * f,
            room.top + 7.0 + edge.top * f,
        ),
    };
    let wanted = Wanted {
        tube_numbers: None,
        other_numbers: false,
        edge: true,
        rivets: false,
        signs: false,
    };
    put_face(board, &view, set.design, wanted);
    let paper = view.paper_box(&edge);
    let held = put_held_areas(board, set, &view);
    let mut key = Vec::new();
    if let Some(circle) = &set.design.largest_circle {
        put_circle(board, set, &view, circle);
        key.push(circle_words(set, circle));
    }
    key.extend(put_pairs(board, set, &view, paper.bottom + 4.0));
    key.extend(held);
    let foot = put_title(board, set, scale, room, paper.bottom + 6.0);
    put_key(board, room, foot + 3.0, &key)
}

/// The largest circle in words, its figures as the finding on it has them.
fn circle_words(set: &Set<'_>, circle: &LargestCircle) -> String {
    format!(
        "THICK CHAIN: LARGEST CIRCLE ON THE SUPPORTS COUNTED, ⌀{} AT x {}, y {}; SUPPORTS TOUCHED IN BLACK: {}",
        set.figures.decimal(circle.diameter),
        set.figures.decimal(Length::mm(circle.centre.x)),
        set.figures.decimal(Length::mm(circle.centre.y)),
        touched(set, circle)
    )
}

/// What the figure shows, its scale and its side, from a height down; tells the height of its last line.
fn put_title(board: &mut Board, set: &Set<'_>, scale: Scale, room: &PaperBox, top: f64) -> f64 {
    let shows = match (&set.design.largest_circle, set.design.directions.is_empty()) {
        (Some(_), false) => "LARGEST CIRCLE AND LEAST METAL",
        (Some(_), true) => "LARGEST CIRCLE",
        (None, false) => "LEAST METAL",
        (None, true) => "FACE OF THE PLATE",
    };
    let seen = format!(
        "SCALE {}, {}",
        scale.words(),
        view_words(set.design.view_from)
    );
    let mut y = top;
    for words in [shows, &seen] {
        y += NOTES * LINE_PITCH;
        let height = fitting_height(words, room.width(), NOTES, true);
        board.bold(at(room.middle().x, y), words, height, Hang::Middle);
    }
    y
}

/// The words of the key one under another; tells the y below them.
fn put_key(board: &mut Board, room: &PaperBox, top: f64, key: &[String]) -> f64 {
    let mut y = top;
    for words in key {
        let stacked = words.contains('{');
        let pitch = if stacked {
            super::lettering::stacked(TABLE) + 0.1
        } else {
            LINE_PITCH
        };
        for line in wrap(words, room.width(), TABLE, false) {
            y += TABLE * pitch;
            board.text(at(room.left, y), &line, TABLE, Hang::Start);
        }
        // The lower figures of a fraction hang below the line.
        y += if stacked { 1.6 } else { 0.8 };
    }
    y + 1.5
}

/// The pairs of holes that the findings name, each once, in their order: those that stand in the table beside the figure.
fn tight_pairs<'a>(set: &Set<'a>) -> Vec<&'a Ligament> {
    let design = set.design;
    let least = design.least_ligaments.iter().map(|least| &least.ligament);
    let numbered: Vec<(String, &Ligament)> = design
        .close_pairs
        .iter()
        .chain(least)
        .map(|pair| (numbers(set, pair), pair))
        .collect();
    let mut pairs: Vec<&Ligament> = Vec::new();
    for finding in set.findings {
        let named = |(numbers, _): &&(String, &Ligament)| {
            finding.place.split(", ").any(|words| words == numbers)
        };
        if let Some((_, pair)) = numbered.iter().find(named)
            && pairs.iter().all(|known| known.holes != pair.holes)
        {
            pairs.push(pair);
        }
    }
    pairs.truncate(MOST_PAIRS);
    pairs
}

/// Both numbers of a pair, as the findings name it: "T4–W2".
fn numbers(set: &Set<'_>, pair: &Ligament) -> String {
    let id = |hole: usize| set.design.holes[hole].id.as_str();
    format!("{}–{}", id(pair.holes.0), id(pair.holes.1))
}

fn touched(set: &Set<'_>, circle: &LargestCircle) -> String {
    let names: Vec<String> = circle
        .touches
        .iter()
        .map(|t| match t {
            Touch::Hole(i) => set.design.holes[*i].id.clone(),
            Touch::FlangeLine(_) => "FLANGE LINE".into(),
        })
        .collect();
    names.join(", ")
}

fn put_circle(board: &mut Board, set: &Set<'_>, view: &View, circle: &LargestCircle) {
    let c = view.place(circle.centre);
    let r = circle.diameter.to_mm() / 2.0 * view.scale;
    board.circle(c, r, Pen::Wide, Pattern::Chain, Role::Centre);
    board.state(
        at(c.x - r, c.y),
        at(c.x + r, c.y),
        view.scale,
        circle.diameter,
        "largest circle",
    );
    for touch in &circle.touches {
        let p = match touch {
            Touch::Hole(i) => set.design.holes[*i].at,
            Touch::FlangeLine(p) => *p,
        };
        put_dot(board, view.place(p), 1.1);
    }
}

fn put_dot(board: &mut Board, c: PaperPoint, radius: f64) {
    let corners = (0..16)
        .map(|i| {
            let a = f64::from(i) * std::f64::consts::PI / 8.0;
            at(c.x + radius * cos(a), c.y + radius * sin(a))
        })
        .collect();
    board.filled(corners, Role::Object);
}

/// A thick line across the ligament; tells its middle.
fn put_across(board: &mut Board, set: &Set<'_>, view: &View, pair: &Ligament) -> PaperPoint {
    let hole = |i: usize| {
        (
            set.design.holes[i].at,
            set.design.holes[i].ligament_hole.to_mm() / 2.0,
        )
    };
    let ((a, ra), (b, rb)) = (hole(pair.holes.0), hole(pair.holes.1));
    let apart = hypot(b.x - a.x, b.y - a.y);
    let along = |d: f64| {
        view.place(Point::new(
            a.x + (b.x - a.x) * d / apart,
            a.y + (b.y - a.y) * d / apart,
        ))
    };
    let (from, to) = (along(ra), along(apart - rb));
    board.line(from, to, Pen::Frame, Pattern::Continuous, Role::Object);
    at((from.x + to.x) / 2.0, (from.y + to.y) / 2.0)
}

/// Puts every tight pair down with its letter, none below the floor, where the title stands; tells what each letter means.
fn put_pairs(board: &mut Board, set: &Set<'_>, view: &View, floor: f64) -> Vec<String> {
    let pairs = tight_pairs(set);
    let middles: Vec<PaperPoint> = pairs
        .iter()
        .map(|pair| put_across(board, set, view, pair))
        .collect();
    let mut letters = Letters {
        holes: holes_on_paper(set, view),
        leaders: Vec::new(),
        floor,
    };
    let mut key = Vec::new();
    for (i, (pair, middle)) in pairs.into_iter().zip(middles).enumerate() {
        let letter = char::from(b'a' + i as u8).to_string();
        letters.put(board, middle, &letter);
        key.push(format!(
            "{letter}: {}, METAL {}",
            numbers(set, pair),
            set.figures.table(pair.metal)
        ));
    }
    key
}

/// Every hole as a circle on paper.
fn holes_on_paper(set: &Set<'_>, view: &View) -> Vec<(PaperPoint, f64)> {
    let holes = set.design.holes.iter();
    holes
        .map(|hole| {
            let radius = hole.finish.value().to_mm() / 2.0 * view.scale;
            (view.place(hole.at), radius)
        })
        .collect()
}

/// Where letters may stand and their leaders run.
struct Letters {
    holes: Vec<(PaperPoint, f64)>,
    leaders: Vec<(PaperPoint, PaperPoint)>,
    /// No letter stands lower, mm of paper.
    floor: f64,
}

/// From a ligament to its letter, mm: nearest, furthest, and from one place tried to the next.
const REACH: (f64, f64, f64) = (6.5, 60.0, 1.5);
/// Directions in which a place is tried.
const WAYS: u32 = 72;
/// How much longer a leader may be for each hole that it does not run through, and for each leader that it does not cross, mm.
const THROUGH_A_HOLE: f64 = 200.0;
const ACROSS_A_LEADER: f64 = 100.0;
/// How much longer a leader may be for its letter to stand clear of hatching, mm.
const ON_HATCHING: f64 = 20.0;
/// Half a letter and what is clear round it, mm.
const LETTER: f64 = 2.4;

impl Letters {
    /// Puts a letter where there is room for it, and its leader clear of holes and of other leaders where that can be.
    fn put(&mut self, board: &mut Board, middle: PaperPoint, letter: &str) {
        let mut places: Vec<(f64, PaperPoint)> = self.places(middle).collect();
        places.sort_by(|a, b| a.0.total_cmp(&b.0));
        let cost = |place: PaperPoint, reach: f64| match standing(board, place) {
            Standing::Clear => Some(reach),
            Standing::OnHatching => Some(reach + ON_HATCHING),
            Standing::Fouled => None,
        };
        let mut best: Option<(f64, PaperPoint)> = None;
        for (reach, place) in places {
            if best.is_some_and(|(least, _)| least <= reach) {
                break;
            }
            if crosses_lettering(board, middle, place) {
                continue;
            }
            let found = cost(place, reach).map(|cost| (cost, place));
            best = [best, found]
                .into_iter()
                .flatten()
                .reduce(|a, b| if b.0 < a.0 { b } else { a });
        }
        let Some((_, p)) = best else {
            return;
        };
        let away = atan2(p.y - middle.y, p.x - middle.x);
        let end = at(p.x - 2.2 * cos(away), p.y - 2.2 * sin(away));
        board.dimension_line(middle, end);
        arrow(board, middle, away.to_degrees() + 180.0);
        board.bold(at(p.x, p.y + TABLE / 2.0), letter, TABLE, Hang::Middle);
        self.leaders.push((middle, end));
    }

    /// Places about a ligament that are above the floor and in no hole, each with the length of its leader and what it crosses.
    fn places(&self, middle: PaperPoint) -> impl Iterator<Item = (f64, PaperPoint)> + '_ {
        let (least, most, step) = REACH;
        let rings = ((most - least) / step) as u32;
        let all = (0..rings).flat_map(move |ring| (0..WAYS).map(move |way| (ring, way)));
        all.filter_map(move |(ring, way)| {
            let reach = least + f64::from(ring) * step;
            let turn = f64::from(way) * 2.0 * PI / f64::from(WAYS);
            let p = at(middle.x + reach * cos(turn), middle.y + reach * sin(turn));
            let in_a_hole = |(c, r): &(PaperPoint, f64)| apart(*c, p) < r + LETTER;
            if p.y + LETTER > self.floor || self.holes.iter().any(in_a_hole) {
                return None;
            }
            let through = self.holes.iter().filter(|hole| enters(middle, p, hole));
            let across = self
                .leaders
                .iter()
                .filter(|leader| meet((middle, p), **leader));
            let cost = reach
                + THROUGH_A_HOLE * through.count() as f64
                + ACROSS_A_LEADER * across.count() as f64;
            Some((cost, p))
        })
    }
}

/// What a letter would stand on.
enum Standing {
    Clear,
    OnHatching,
    Fouled,
}

fn standing(board: &Board, p: PaperPoint) -> Standing {
    let b = PaperBox::new(p.x - 1.6, p.y - 1.8, p.x + 1.6, p.y + 1.8).grown(0.8);
    let touched = board.marks.iter().filter(|mark| touches(mark, &b));
    touched.fold(Standing::Clear, |stands, mark| {
        match (stands, mark.role()) {
            (Standing::Fouled, _) => Standing::Fouled,
            (_, Role::Hatch) => Standing::OnHatching,
            _ => Standing::Fouled,
        }
    })
}

fn apart(a: PaperPoint, b: PaperPoint) -> f64 {
    hypot(a.x - b.x, a.y - b.y)
}

/// Whether a line comes into a circle or grazes it.
fn enters(from: PaperPoint, to: PaperPoint, (centre, radius): &(PaperPoint, f64)) -> bool {
    let length = apart(from, to);
    let (x, y) = ((to.x - from.x) / length, (to.y - from.y) / length);
    let along = ((centre.x - from.x) * x + (centre.y - from.y) * y).clamp(0.0, length);
    // One that starts close beside a hole may not come closer.
    let clear = (radius + CLEAR).min(apart(*centre, from) - SAME_LENGTH_MM);
    apart(*centre, at(from.x + along * x, from.y + along * y)) < clear
}

/// A line that passes a hole nearer than this grazes it, mm.
const CLEAR: f64 = 0.6;

/// Whether two lines cross.
fn meet(one: (PaperPoint, PaperPoint), two: (PaperPoint, PaperPoint)) -> bool {
    let side = |line: (PaperPoint, PaperPoint), p: PaperPoint| {
        (line.1.x - line.0.x) * (p.y - line.0.y) - (line.1.y - line.0.y) * (p.x - line.0.x)
    };
    let parts =
        |line, other: (PaperPoint, PaperPoint)| side(line, other.0) * side(line, other.1) < 0.0;
    parts(one, two) && parts(two, one)
}

#[cfg(test)]
mod tests {
    use std::path::Path;

    use super::*;
    use crate::checks::run_checks;
    use crate::design::set_out;
    use crate::spec::read_spec_file;

    /// A pair that is lettered stands in the table beside the figure, once; and every ligament that is judged beside a tube is lettered.
    #[test]
    fn holds_that_the_pairs_lettered_stand_in_the_table() {
        for plate in [
            "gritstone",
            "hobthrush",
            "marl-hen",
            "pinders-oak",
            "tallow-moor",
        ] {
            let file = format!("specs/{plate}-smokebox.yaml");
            let spec = read_spec_file(Path::new(&file)).expect("a sound spec");
            let design = set_out(&spec).expect("a sound plate");
            let findings = run_checks(&spec, &design);
            let set = Set::new(&spec, &design, &findings, &[]);
            let lettered: Vec<String> = tight_pairs(&set)
                .into_iter()
                .map(|pair| numbers(&set, pair))
                .collect();
            for (i, pair) in lettered.iter().enumerate() {
                let named = |f: &crate::checks::Finding| f.place.contains(&format!("{pair}, "));
                assert!(findings.iter().any(named), "{plate}: {pair}");
                assert!(!lettered[..i].contains(pair), "{plate}: {pair} twice");
            }
            for finding in findings.iter().filter(|f| f.rule == "tube_ligament") {
                let pair = finding.place.split(", ").next().unwrap_or_default();
                assert!(lettered.iter().any(|one| one == pair), "{plate}: {pair}");
            }
        }
    }

    /// A letter beside a ligament between two holes of 5 mm, 12 mm apart, with others straight above and below them: it stands in no
    /// hole, its leader runs through none, and a second letter's leader does not cross the first's.
    #[test]
    fn holds_that_letters_and_their_leaders_keep_clear_of_holes() {
        let holes = vec![
            (at(94.0, 100.0), 5.0),
            (at(106.0, 100.0), 5.0),
            (at(100.0, 82.0), 4.0),
            (at(100.0, 118.0), 4.0),
        ];
        let mut board = Board::new("t", "t", PaperBox::new(0.0, 0.0, 200.0, 200.0));
        for (c, r) in &holes {
            board.circle(*c, *r, Pen::Wide, Pattern::Continuous, Role::Object);
        }
        let mut letters = Letters {
            holes: holes.clone(),
            leaders: Vec::new(),
            floor: 190.0,
        };
        letters.put(&mut board, at(100.0, 100.0), "a");
        letters.put(&mut board, at(100.0, 92.0), "b");
        let stand: Vec<PaperPoint> = board
            .marks
            .iter()
            .filter_map(|mark| match mark {
                super::super::Mark::Text(text) => Some(text.at),
                _ => None,
            })
            .collect();
        assert_eq!(stand.len(), 2);
        for (c, r) in &holes {
            assert!(stand.iter().all(|p| apart(*p, *c) > *r), "{stand:?}");
            assert!(
                letters
                    .leaders
                    .iter()
                    .all(|(from, to)| !enters(*from, *to, &(*c, *r)))
            );
        }
        assert!(!meet(letters.leaders[0], letters.leaders[1]));
    }

    /// A level line 2 above the middle of a circle of 3 comes into it, one 3.5 above grazes it, one 3.7 above is clear of it, and so
    /// is one that ends 1 before it.
    #[test]
    fn by_hand_a_line_comes_into_a_circle() {
        let circle = (at(0.0, 0.0), 3.0);
        let lines = [
            (2.0, 9.0, true),
            (3.5, 9.0, true),
            (3.7, 9.0, false),
            (0.0, -4.0, false),
        ];
        for (y, end, comes) in lines {
            assert_eq!(enters(at(-9.0, y), at(end, y), &circle), comes, "{y} {end}");
        }
    }
}
