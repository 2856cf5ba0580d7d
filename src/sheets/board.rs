//! The drawing board: marks of one sheet as they are put down, before the sheet's number is known.

use super::furniture::room;
use super::text_box::text_box;
use super::{Hang, Mark, PaperPoint, Pattern, Pen, Role, Text, at};
use crate::spec::Paper;
use crate::units::Length;
use crate::units::angle::{cos, hypot, sin};

/// A dimension as it was put down: which length it states, and between which places of the paper.
///
/// Kept so that every printed figure can be proved against the marks and the scale.
#[derive(Clone, Debug)]
#[cfg_attr(not(test), allow(dead_code))] // Read by the proof of the sheets alone.
pub struct Stated {
    /// One end, mm on paper.
    pub from: PaperPoint,
    /// The other end, mm on paper.
    pub to: PaperPoint,
    /// Millimetres of paper for a millimetre of plate.
    pub scale: f64,
    /// The length stated.
    pub length: Length,
    /// What was printed.
    pub words: String,
}

impl Stated {
    /// The length that the marks show, from the paper alone.
    #[cfg(test)]
    pub fn shown(&self) -> Length {
        Length::mm(hypot(self.to.x - self.from.x, self.to.y - self.from.y) / self.scale)
    }
}

/// One sheet under the pencil.
#[derive(Clone, Debug)]
pub struct Board {
    /// Short name for its file: "general".
    pub name: String,
    /// What the sheet shows, for the title block.
    pub title: String,
    /// Scale of its main view as printed: "1:5"; "NONE" where there is no view to scale.
    pub scale_words: String,
    /// Marks in drawing order.
    pub marks: Vec<Mark>,
    /// Dimensions put down, for the proof that each is as long as it says.
    pub stated: Vec<Stated>,
    /// Paper of the series that it goes on, where it is a sheet of the set.
    pub paper: Paper,
    /// Where furniture that only some sheets carry has been left room: the box free for drawing.
    pub room: PaperBox,
}

/// An upright box on the paper, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PaperBox {
    /// Left edge.
    pub left: f64,
    /// Top edge.
    pub top: f64,
    /// Right edge.
    pub right: f64,
    /// Bottom edge.
    pub bottom: f64,
}

impl PaperBox {
    /// A box by its edges.
    pub const fn new(left: f64, top: f64, right: f64, bottom: f64) -> PaperBox {
        PaperBox {
            left,
            top,
            right,
            bottom,
        }
    }

    /// Width, mm.
    pub fn width(&self) -> f64 {
        self.right - self.left
    }

    /// Height, mm.
    pub fn height(&self) -> f64 {
        self.bottom - self.top
    }

    /// The same, larger by so much all round.
    pub fn grown(&self, by: f64) -> PaperBox {
        PaperBox::new(
            self.left - by,
            self.top - by,
            self.right + by,
            self.bottom + by,
        )
    }

    /// Whether two boxes share any area.
    pub fn meets(&self, other: &PaperBox) -> bool {
        self.left < other.right
            && other.left < self.right
            && self.top < other.bottom
            && other.top < self.bottom
    }

    /// Whether the other lies wholly inside this one.
    pub fn holds(&self, other: &PaperBox) -> bool {
        self.left <= other.left
            && self.top <= other.top
            && self.right >= other.right
            && self.bottom >= other.bottom
    }

    /// Its middle.
    pub fn middle(&self) -> PaperPoint {
        at(
            (self.left + self.right) / 2.0,
            (self.top + self.bottom) / 2.0,
        )
    }
}

impl Board {
    /// An empty board with room for drawing inside a box.
    pub fn new(name: &str, title: &str, room: PaperBox) -> Board {
        Board {
            name: name.into(),
            title: title.into(),
            scale_words: "NONE".into(),
            marks: Vec::new(),
            stated: Vec::new(),
            paper: Paper::default(),
            room,
        }
    }

    /// The same sheet on the smallest paper that has room for what is on it; its own where no smaller one has.
    pub fn on_smallest_paper(mut self, with_banner: bool) -> Board {
        const SMALLEST_FIRST: [Paper; 5] = [Paper::A4, Paper::A3, Paper::A2, Paper::A1, Paper::A0];
        let own = self.paper;
        let smaller = SMALLEST_FIRST.into_iter().take_while(|&p| p != own);
        // Every paper's room begins at the same place, so that nothing on it is moved.
        for paper in smaller {
            let kept = (self.paper, self.room);
            (self.paper, self.room) = (paper, room(paper, with_banner));
            if self.is_within_room() {
                break;
            }
            (self.paper, self.room) = kept;
        }
        self
    }

    /// Whether everything put down so far lies within the room for drawing.
    pub fn is_within_room(&self) -> bool {
        let room = self.room.grown(WITHIN_MM);
        self.marks.iter().all(|mark| room.holds(&mark_box(mark)))
    }

    /// A straight line.
    pub fn line(
        &mut self,
        from: PaperPoint,
        to: PaperPoint,
        pen: Pen,
        pattern: Pattern,
        role: Role,
    ) {
        if hypot(to.x - from.x, to.y - from.y) > LEAST_MARK_MM {
            self.marks.push(Mark::Line {
                from,
                to,
                pen,
                pattern,
                role,
            });
        }
    }

    /// A narrow unbroken line of dimensions and leaders.
    pub fn dimension_line(&mut self, from: PaperPoint, to: PaperPoint) {
        self.line(from, to, Pen::Narrow, Pattern::Continuous, Role::Dimension);
    }

    /// A narrow unbroken line from a feature to its dimension line.
    pub fn extension_line(&mut self, from: PaperPoint, to: PaperPoint) {
        self.line(from, to, Pen::Narrow, Pattern::Continuous, Role::Extension);
    }

    /// A narrow chain line.
    pub fn centre_line(&mut self, from: PaperPoint, to: PaperPoint) {
        self.line(from, to, Pen::Narrow, Pattern::Chain, Role::Centre);
    }

    /// An edge that one sees.
    pub fn edge_line(&mut self, from: PaperPoint, to: PaperPoint) {
        self.line(from, to, Pen::Wide, Pattern::Continuous, Role::Object);
    }

    /// A rule of a table or title block.
    pub fn rule(&mut self, from: PaperPoint, to: PaperPoint, pen: Pen) {
        self.line(from, to, pen, Pattern::Continuous, Role::Furniture);
    }

    /// A box of rules.
    pub fn ruled_box(&mut self, b: PaperBox, pen: Pen) {
        let corners = [
            at(b.left, b.top),
            at(b.right, b.top),
            at(b.right, b.bottom),
            at(b.left, b.bottom),
        ];
        for i in 0..4 {
            self.rule(corners[i], corners[(i + 1) % 4], pen);
        }
    }

    /// A full circle.
    pub fn circle(
        &mut self,
        centre: PaperPoint,
        radius: f64,
        pen: Pen,
        pattern: Pattern,
        role: Role,
    ) {
        self.marks.push(Mark::Circle {
            centre,
            radius,
            pen,
            pattern,
            role,
        });
    }

    /// An arc, degrees clockwise on paper from x; the sweep may be negative.
    #[allow(clippy::too_many_arguments)] // The fields of the mark, once each.
    pub fn arc(
        &mut self,
        centre: PaperPoint,
        radius: f64,
        start_deg: f64,
        sweep_deg: f64,
        pen: Pen,
        pattern: Pattern,
        role: Role,
    ) {
        let (start_deg, sweep_deg) = if sweep_deg < 0.0 {
            (start_deg + sweep_deg, -sweep_deg)
        } else {
            (start_deg, sweep_deg)
        };
        self.marks.push(Mark::Arc {
            centre,
            radius,
            start_deg,
            sweep_deg,
            pen,
            pattern,
            role,
        });
    }

    /// A filled polygon.
    pub fn filled(&mut self, corners: Vec<PaperPoint>, role: Role) {
        self.marks.push(Mark::Filled { corners, role });
    }

    /// A line of upright lettering.
    pub fn text(&mut self, place: PaperPoint, words: &str, height: f64, hang: Hang) {
        self.lettering(place, words, height, hang, 0.0, false);
    }

    /// A line of upright bold lettering.
    pub fn bold(&mut self, place: PaperPoint, words: &str, height: f64, hang: Hang) {
        self.lettering(place, words, height, hang, 0.0, true);
    }

    /// A line of lettering, turned anticlockwise.
    pub fn lettering(
        &mut self,
        place: PaperPoint,
        words: &str,
        height: f64,
        hang: Hang,
        turn_deg: f64,
        bold: bool,
    ) {
        if !words.trim().is_empty() {
            self.marks.push(Mark::Text(Text {
                at: place,
                words: words.into(),
                height,
                hang,
                turn_deg,
                bold,
            }));
        }
    }

    /// A board of the same paper and room with nothing on it.
    pub fn emptied(&self) -> Board {
        Board {
            paper: self.paper,
            ..Board::new(&self.name, &self.title, self.room)
        }
    }

    /// Puts down all that another board holds, so far to the right and down, mm.
    pub fn take(&mut self, other: &Board, right: f64, down: f64) {
        let marks = other.marks.iter().map(|mark| mark.moved(right, down));
        self.marks.extend(marks);
        let to = |p: PaperPoint| at(p.x + right, p.y + down);
        self.stated.extend(other.stated.iter().map(|s| Stated {
            from: to(s.from),
            to: to(s.to),
            ..s.clone()
        }));
    }

    /// The smallest box round its marks that belong to one of some roles; none where there are none.
    pub fn extent(&self, wanted: impl Fn(Role) -> bool) -> Option<PaperBox> {
        let marks = self.marks.iter().filter(|mark| wanted(mark.role()));
        marks.map(mark_box).reduce(|a, b| {
            PaperBox::new(
                a.left.min(b.left),
                a.top.min(b.top),
                a.right.max(b.right),
                a.bottom.max(b.bottom),
            )
        })
    }

    /// Remembers what a dimension states.
    pub fn state(
        &mut self,
        from: PaperPoint,
        to: PaperPoint,
        scale: f64,
        length: Length,
        words: &str,
    ) {
        self.stated.push(Stated {
            from,
            to,
            scale,
            length: length.abs(),
            words: words.into(),
        });
    }
}

/// A mark shorter than this is not put down, mm: no pen shows it.
const LEAST_MARK_MM: f64 = 0.01;
/// Half a pen's line may lie outside a box that holds its middle, mm.
const WITHIN_MM: f64 = 0.5;

/// The upright box round places of the paper; nothing at the corner of the paper where there are none.
fn box_round(mut places: impl Iterator<Item = PaperPoint>) -> PaperBox {
    let first = places.next().unwrap_or(at(0.0, 0.0));
    let alone = PaperBox::new(first.x, first.y, first.x, first.y);
    places.fold(alone, |b, p| {
        PaperBox::new(
            b.left.min(p.x),
            b.top.min(p.y),
            b.right.max(p.x),
            b.bottom.max(p.y),
        )
    })
}

/// The upright box round a mark, mm.
pub fn mark_box(mark: &Mark) -> PaperBox {
    let round = |c: PaperPoint, r: f64| PaperBox::new(c.x - r, c.y - r, c.x + r, c.y + r);
    match mark {
        Mark::Line { from, to, .. } => PaperBox::new(
            from.x.min(to.x),
            from.y.min(to.y),
            from.x.max(to.x),
            from.y.max(to.y),
        ),
        Mark::Circle { centre, radius, .. } => round(*centre, *radius),
        Mark::Arc {
            centre,
            radius,
            start_deg,
            sweep_deg,
            ..
        } => {
            let quarters = (-4..=8).map(|quarter| f64::from(quarter) * 90.0);
            let end = start_deg + sweep_deg;
            let mut turns: Vec<f64> = quarters.filter(|q| *start_deg < *q && *q < end).collect();
            turns.extend([*start_deg, end]);
            let places = turns.iter().map(|deg| deg.to_radians());
            box_round(places.map(|a| at(centre.x + radius * cos(a), centre.y + radius * sin(a))))
        }
        Mark::Filled { corners, .. } => box_round(corners.iter().copied()),
        Mark::Text(text) => text_box(text),
    }
}
