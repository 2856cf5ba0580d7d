//! A nest with one of its figures changed, and what hangs on its pattern moved along: what would another pitch, hole or land come to?

use super::Point;
use super::amount::point;
use crate::spec::{At, Lines, Nest, Pattern, Square, WhichTubes};
use crate::units::{Length, Size};

/// A figure of a nest that may be asked after.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Varied {
    /// From hole to hole along a line; both ways in a square nest.
    Pitch,
    /// From one line to the next.
    Spacing,
    /// The finished hole.
    Hole,
    /// The clear metal that the filling leaves to a line, by its place in the list.
    Land(usize),
}

impl Varied {
    /// Every figure that a nest has.
    pub fn of(nest: &Nest) -> Vec<Varied> {
        let lines = match nest.pattern {
            Pattern::Columns(_) | Pattern::Rows(_) => vec![Varied::Pitch, Varied::Spacing],
            Pattern::Square(_) => vec![Varied::Pitch],
            Pattern::Points(_) => Vec::new(),
        };
        let is_filled = !lines.is_empty();
        let lands = (0..nest.within.land.len()).filter(|_| is_filled);
        lines
            .into_iter()
            .chain([Varied::Hole])
            .chain(lands.map(Varied::Land))
            .collect()
    }

    /// In words: "pitch", "from column to column", "land to tangent".
    pub fn name(self, nest: &Nest) -> String {
        match self {
            Varied::Pitch => "pitch".into(),
            Varied::Spacing => match nest.pattern {
                Pattern::Rows(_) => "row to row".into(),
                _ => "column to column".into(),
            },
            Varied::Hole => "hole".into(),
            Varied::Land(index) => format!("land to {}", nest.within.land[index].to.name()),
        }
    }

    /// The figure as it is written; none where the nest has no such figure.
    pub fn size(self, nest: &Nest) -> Option<&Size> {
        match (self, &nest.pattern) {
            (Varied::Pitch, Pattern::Columns(lines) | Pattern::Rows(lines)) => Some(&lines.pitch),
            (Varied::Spacing, Pattern::Columns(lines) | Pattern::Rows(lines)) => {
                Some(&lines.spacing)
            }
            (Varied::Pitch, Pattern::Square(square)) => Some(&square.pitch),
            (Varied::Hole, _) => Some(&nest.hole),
            (Varied::Land(index), _) => Some(&nest.within.land.get(index)?.at_least),
            (Varied::Pitch | Varied::Spacing, _) => None,
        }
    }

    /// The nest with another size in its place. Exceptions and stay tubes that name a hole of the pattern go where that hole goes; a
    /// hole added by itself stays. A pattern that lies alike on both hands of the vertical centre line goes on doing so. The last stage
    /// follows the finished hole.
    pub fn put(self, nest: &Nest, size: Size) -> Nest {
        let mut varied = nest.clone();
        match (self, &mut varied.pattern) {
            (Varied::Pitch, Pattern::Columns(lines) | Pattern::Rows(lines)) => lines.pitch = size,
            (Varied::Spacing, Pattern::Columns(lines) | Pattern::Rows(lines)) => {
                lines.spacing = size;
            }
            (Varied::Pitch, Pattern::Square(square)) => square.pitch = size,
            (Varied::Hole, _) => {
                if let Some(last) = varied
                    .stages
                    .last_mut()
                    .filter(|stage| stage.size.is_some())
                {
                    last.size = Some(size.clone());
                }
                varied.hole = size;
            }
            (Varied::Land(index), _) => varied.within.land[index].at_least = size,
            (Varied::Pitch | Varied::Spacing, _) => {}
        }
        keep_hands_alike(&nest.pattern, &mut varied.pattern);
        let moved = |at: &mut At| *at = carried(at, &nest.pattern, &varied.pattern);
        for exception in &mut varied.exceptions {
            for at in [
                &mut exception.omit,
                &mut exception.shift,
                &mut exception.resize,
            ] {
                at.iter_mut().for_each(moved);
            }
        }
        if let Some(stay_tubes) = &mut varied.stay_tubes
            && let WhichTubes::At(places) = &mut stay_tubes.which
        {
            places.iter_mut().for_each(moved);
        }
        varied
    }
}

/// The place of hole 0 of line 0, and the steps across and up from hole to hole or line to line.
struct Grid {
    through: Point,
    across: Length,
    up: Length,
}

impl Grid {
    /// Of a pattern; none where every hole is written by its place.
    fn of(pattern: &Pattern) -> Option<Grid> {
        let (through, across, up) = match pattern {
            Pattern::Columns(Lines {
                through,
                spacing,
                pitch,
                ..
            }) => (through, spacing, pitch),
            Pattern::Rows(Lines {
                through,
                spacing,
                pitch,
                ..
            }) => (through, pitch, spacing),
            Pattern::Square(Square { through, pitch }) => (through, pitch, pitch),
            Pattern::Points(_) => return None,
        };
        Some(Grid {
            through: point(through),
            across: across.value(),
            up: up.value(),
        })
    }
}

/// Where the vertical centre line passes through a hole or half-way between two, it goes on doing so at another step across.
fn keep_hands_alike(old: &Pattern, new: &mut Pattern) {
    let (Some(was), Some(is)) = (Grid::of(old), Grid::of(new)) else {
        return;
    };
    let halves = was.through.x / (was.across.to_mm() / 2.0);
    let nearest = halves.round() * was.across / 2.0;
    if was.across.same_as(is.across) || !nearest.same_as(Length::mm(was.through.x)) {
        return;
    }
    let x = Size::reckoned(halves.round() * is.across / 2.0);
    match new {
        Pattern::Columns(lines) | Pattern::Rows(lines) => lines.through.0 = x,
        Pattern::Square(square) => square.through.0 = x,
        Pattern::Points(_) => {}
    }
}

/// Where a place of one pattern lies in the other of the same lines at other distances.
fn carried(at: &At, old: &Pattern, new: &Pattern) -> At {
    let (Some(was), Some(is)) = (Grid::of(old), Grid::of(new)) else {
        return at.clone();
    };
    if was.across.same_as(is.across) && was.up.same_as(is.up) {
        return at.clone();
    }
    let off = point(at) - was.through;
    (
        Size::reckoned(Length::mm(is.through.x + off.x * (is.across / was.across))),
        Size::reckoned(Length::mm(is.through.y + off.y * (is.up / was.up))),
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::set_out;
    use crate::spec::{Spec, read_spec_file};

    fn marl_hen() -> Spec {
        let path = std::path::Path::new("specs/marl-hen-smokebox.yaml");
        read_spec_file(path).expect("it reads")
    }

    fn size(text: &str) -> Size {
        Size::read(text).expect("a size")
    }

    /// The plug's hole stands 6 pitches below `through`, at 1 19/64 − 6 × 2 19/32 = −14.265625 in; at a pitch of 2 5/8 it is
    /// 1.296875 − 15.75 = −14.453125 in.
    #[test]
    fn by_hand_what_is_left_out_goes_with_the_pattern() {
        let nest = &marl_hen().written.tubes[0];
        let varied = Varied::Pitch.put(nest, size("2 5/8 in"));
        let (x, y) = varied.exceptions[0].omit.clone().expect("it is left out");
        assert!(x.value().same_as(Length::ZERO));
        assert_eq!(format!("{:.6}", y.value().to_inches()), "-14.453125");
        assert_eq!(
            Varied::Pitch.size(&varied).expect("a pitch"),
            &size("2 5/8 in")
        );
    }

    /// The last stage is the finished hole, or the plate would be refused.
    #[test]
    fn holds_the_last_stage_follows_the_hole() {
        let mut spec = marl_hen();
        let nest = Varied::Hole.put(&spec.written.tubes[0], size("1 53/64 in"));
        assert_eq!(
            nest.stages.last().and_then(|s| s.size.clone()),
            Some(size("1 53/64 in"))
        );
        spec.written.tubes[0] = nest;
        assert!(set_out(&spec).is_ok());
    }

    /// Its own figures put in again leave the plate as it is.
    #[test]
    fn holds_the_same_figure_changes_nothing() {
        let mut spec = marl_hen();
        let before = set_out(&spec).expect("it sets out");
        for figure in Varied::of(&spec.written.tubes[0]) {
            let nest = spec.written.tubes[0].clone();
            let same = figure.size(&nest).expect("it has the figure").clone();
            spec.written.tubes[0] = figure.put(&nest, same);
        }
        let after = set_out(&spec).expect("it sets out");
        assert_eq!(format!("{before:?}"), format!("{after:?}"));
    }

    /// A square nest whose centre line passes half-way between two columns does so at another pitch: 1 5/16 in is half of 2 5/8, and
    /// 1 21/64 half of 2 21/32.
    #[test]
    fn by_hand_a_nest_alike_on_both_hands_stays_so() {
        let path = std::path::Path::new("specs/pinders-oak-smokebox.yaml");
        let nest = read_spec_file(path)
            .expect("it reads")
            .written
            .tubes
            .remove(0);
        let x = |nest: &Nest| match &nest.pattern {
            Pattern::Square(square) => square.through.0.value(),
            _ => panic!("it is square"),
        };
        assert!(x(&nest).same_as(Length::inches(1.3125)));
        let wider = Varied::Pitch.put(&nest, size("2 21/32 in"));
        assert!(x(&wider).same_as(Length::inches(1.328125)));
    }
}
