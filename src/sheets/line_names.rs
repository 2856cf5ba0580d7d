//! The name of every line of the nest, written at an end of it.

use super::board::{Board, PaperBox};
use super::clear::{clear_of_all_but_lines, is_clear};
use super::letter_size::NOTES;
use super::set::Set;
use super::view::View;
use super::{Hang, PaperPoint, at, face};
use crate::design::{Hole, LineWay, NestLine};

/// From the end of a line to its name, mm.
const GAP: f64 = 0.8;
/// A name that does not go at the end of its line goes beside it, so far aside at first, mm.
const ASIDE: f64 = 0.9;

/// Which holes of a line a view shows, and how far from the centre of the last of them the line is drawn, mm of paper.
pub struct Ends<'a> {
    /// Whether the view shows a hole.
    pub shown: &'a dyn Fn(&Hole) -> bool,
    /// How far the line, or its last hole, reaches past that hole's centre.
    pub reach: &'a dyn Fn(&Hole) -> f64,
}

/// Puts the names down where nothing stands in their way: at the upper or right end of a line, at its other end, or beside an end.
pub fn put_line_names(board: &mut Board, set: &Set<'_>, view: &View, ends: &Ends<'_>) {
    for line in &set.design.nest_lines {
        let mut ways = set.design.line_way.iter();
        let own = ways.find(|(group, _)| *group == line.group);
        if let Some(&(_, way)) = own {
            put_name(board, set, view, ends, (line, way));
        }
    }
}

fn put_name(
    board: &mut Board,
    set: &Set<'_>,
    view: &View,
    ends: &Ends<'_>,
    (line, way): (&NestLine, LineWay),
) {
    let holes = set.design.holes.iter();
    let own: Vec<&Hole> = holes
        .filter(|h| line.holes.contains(&h.id) && (ends.shown)(h))
        .collect();
    let (Some(first), Some(last)) = (own.first(), own.last()) else {
        return;
    };
    let wide = face::width(&line.name, NOTES, true);
    let places = [(*last, 1.0), (*first, -1.0)].map(|(hole, hand)| {
        let p = view.place(hole.at);
        let reach = (ends.reach)(hole) + GAP;
        let (across, up) = (wide / 2.0, NOTES / 2.0);
        // Centres of the name: in line, then beside the end on either hand.
        match way {
            LineWay::Columns => {
                let y = p.y - hand * (reach + up);
                let aside = across + ASIDE;
                [at(p.x, y), at(p.x + aside, y), at(p.x - aside, y)]
            }
            LineWay::Rows => {
                let x = p.x + hand * (reach + across);
                let aside = up + ASIDE;
                [at(x, p.y), at(x, p.y - aside), at(x, p.y + aside)]
            }
        }
    });
    let places = || places.iter().flatten().copied();
    let round = |c: PaperPoint| {
        PaperBox::new(
            c.x - wide / 2.0,
            c.y - NOTES / 2.0,
            c.x + wide / 2.0,
            c.y + NOTES / 2.0,
        )
    };
    let found = places()
        .find(|c| is_clear(board, &round(*c), 0.7))
        .or_else(|| places().find(|c| clear_of_all_but_lines(board, &round(*c))));
    if let Some(c) = found {
        board.bold(at(c.x, c.y + NOTES / 2.0), &line.name, NOTES, Hang::Middle);
    }
}

#[cfg(test)]
mod tests {
    use super::super::Mark;
    use super::super::board::Board;
    use super::super::marking_out::marking_out;
    use super::super::sample_jobs::{jobs, with_set};
    use super::super::setting_out::setting_out;

    fn names_on(boards: &[Board], name: &str) -> usize {
        let marks = boards.iter().flat_map(|board| &board.marks);
        marks
            .filter(|mark| matches!(mark, Mark::Text(text) if text.words == name))
            .count()
    }

    /// Every line's name stands on the setting-out view and on the marking-out view, beside its places in their tables.
    #[test]
    fn holds_every_line_is_named_on_both_views() {
        for job in jobs() {
            with_set(&job, |set| {
                for line in &set.design.nest_lines {
                    let setting = setting_out(set);
                    assert!(names_on(&setting, &line.name) >= 2, "{job}: {}", line.name);
                    // On a plate that is kept no line of the nest is struck.
                    if set.design.kept {
                        continue;
                    }
                    let marking = &marking_out(set)[..1];
                    assert!(names_on(marking, &line.name) >= 1, "{job}: {}", line.name);
                }
            });
        }
    }
}
