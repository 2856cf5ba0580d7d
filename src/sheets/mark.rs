//! What a sheet is made of: marks in millimetres of paper, x right and y **down** from the top left corner of the paper.

use crate::units::angle;

/// A place on the paper, mm, x right, y down.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct PaperPoint {
    /// From the left edge, mm.
    pub x: f64,
    /// From the top edge, mm.
    pub y: f64,
}

/// A place on the paper, mm from its left and top edges.
pub fn at(x: f64, y: f64) -> PaperPoint {
    PaperPoint { x, y }
}

/// Width of a line on paper; two widths and a finer one, 2:1 (ISO 128 series).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pen {
    /// 0.7 mm: the frame.
    Frame,
    /// 0.5 mm: edges that one sees.
    Wide,
    /// 0.25 mm: dimensions, centre lines, hatching, leaders.
    Narrow,
    /// 0.35 mm: hidden edges, lettering strokes.
    Middle,
}

/// Pattern of a line.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pattern {
    /// Unbroken.
    Continuous,
    /// Hidden edges.
    Dashed,
    /// Centre lines and pitch circles: long dash, dot.
    Chain,
    /// Outline before forming, adjacent parts: long dash, two dots.
    DoubleChain,
}

/// What a mark belongs to, so that the audit knows what may touch what.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Role {
    /// Frame, zones, title block and table rules.
    Furniture,
    /// An edge of the object, which no text may cross.
    Object,
    /// Centre lines, pitch circles, construction.
    Centre,
    /// Hatching.
    Hatch,
    /// Dimension lines, leaders and their arrows.
    Dimension,
    /// Extension lines, from a feature to its dimension line.
    Extension,
    /// Lettering.
    Lettering,
}

/// One mark.
#[derive(Clone, Debug, PartialEq)]
pub enum Mark {
    /// A straight line.
    Line {
        /// One end.
        from: PaperPoint,
        /// Other end.
        to: PaperPoint,
        /// Width.
        pen: Pen,
        /// Dashes; a patterned line begins and ends on a long dash.
        pattern: Pattern,
        /// What it belongs to.
        role: Role,
    },
    /// An arc, from start angle over a sweep, degrees clockwise on paper from x.
    Arc {
        /// Its centre.
        centre: PaperPoint,
        /// Radius, mm.
        radius: f64,
        /// Where it begins, degrees clockwise on paper from x.
        start_deg: f64,
        /// How far it goes, degrees clockwise; below nothing, anticlockwise.
        sweep_deg: f64,
        /// Width.
        pen: Pen,
        /// Dashes.
        pattern: Pattern,
        /// What it belongs to.
        role: Role,
    },
    /// A full circle.
    Circle {
        /// Its centre.
        centre: PaperPoint,
        /// Radius, mm.
        radius: f64,
        /// Width.
        pen: Pen,
        /// Dashes; a patterned circle has a long dash on each quarter.
        pattern: Pattern,
        /// What it belongs to.
        role: Role,
    },
    /// A filled polygon: arrowheads, solid sections, origin dots. Never drawn larger than its corners.
    Filled {
        /// Its corners in order.
        corners: Vec<PaperPoint>,
        /// What it belongs to.
        role: Role,
    },
    /// A line of lettering in the bundled face.
    Text(Text),
}

/// Where a line of lettering hangs on its point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hang {
    /// Starts there.
    Start,
    /// Centred there.
    Middle,
    /// Ends there.
    End,
}

/// A line of lettering: its base line starts, is centred or ends at a point.
#[derive(Clone, Debug, PartialEq)]
pub struct Text {
    /// Point on the base line.
    pub at: PaperPoint,
    /// The words. May hold the diameter sign ø, ± and fractions as `{1 13/16}`, which are drawn stacked.
    pub words: String,
    /// Height of capitals, mm.
    pub height: f64,
    /// Where it hangs.
    pub hang: Hang,
    /// Turned anticlockwise by this many degrees (90 reads from the right).
    pub turn_deg: f64,
    /// Bold face.
    pub bold: bool,
}

/// A finished sheet of paper.
#[derive(Clone, Debug)]
pub struct Sheet {
    /// Its number in the set, from 1.
    pub number: usize,
    /// Short name for its file: "general".
    pub name: String,
    /// Title as in the title block.
    pub title: String,
    /// Width and height of the paper, mm.
    pub width: f64,
    /// Height, mm.
    pub height: f64,
    /// The marks, in drawing order.
    pub marks: Vec<Mark>,
}

impl Sheet {
    /// The marks that there is anything to draw of, in drawing order.
    pub fn drawn(&self) -> impl Iterator<Item = &Mark> {
        self.marks.iter().filter(|mark| mark.has_size())
    }
}

impl Mark {
    /// An unbroken straight line.
    pub fn line(from: PaperPoint, to: PaperPoint, pen: Pen, role: Role) -> Self {
        let pattern = Pattern::Continuous;
        Mark::Line {
            from,
            to,
            pen,
            pattern,
            role,
        }
    }

    /// A centre line: narrow chain.
    pub fn centre_line(from: PaperPoint, to: PaperPoint) -> Self {
        Mark::Line {
            from,
            to,
            pen: Pen::Narrow,
            pattern: Pattern::Chain,
            role: Role::Centre,
        }
    }

    /// An unbroken full circle of this radius, mm.
    pub fn circle(centre: PaperPoint, radius: f64, pen: Pen, role: Role) -> Self {
        let pattern = Pattern::Continuous;
        Mark::Circle {
            centre,
            radius,
            pen,
            pattern,
            role,
        }
    }

    /// The four unbroken sides of an upright rectangle with this top left corner.
    pub fn rectangle(
        corner: PaperPoint,
        width: f64,
        height: f64,
        pen: Pen,
        role: Role,
    ) -> [Self; 4] {
        let (left, top) = (corner.x, corner.y);
        let (right, foot) = (left + width, top + height);
        let corners = [
            at(left, top),
            at(right, top),
            at(right, foot),
            at(left, foot),
        ];
        [0, 1, 2, 3].map(|i| Mark::line(corners[i], corners[(i + 1) % 4], pen, role))
    }

    /// A line of lettering that starts here, level, in the regular face.
    pub fn text(start: PaperPoint, words: impl Into<String>, height: f64) -> Self {
        Mark::Text(Text::new(start, words, height))
    }
}

impl Mark {
    /// Length of its line, mm; of a filled one, that of its edge; nothing for lettering.
    pub fn length(&self) -> f64 {
        let apart = |a: PaperPoint, b: PaperPoint| angle::hypot(b.x - a.x, b.y - a.y);
        match self {
            Mark::Line { from, to, .. } => apart(*from, *to),
            Mark::Arc {
                radius, sweep_deg, ..
            } => radius * sweep_deg.to_radians().abs(),
            Mark::Circle { radius, .. } => 2.0 * angle::PI * radius,
            Mark::Filled { corners, .. } => {
                let next = corners.iter().cycle().skip(1);
                corners.iter().zip(next).map(|(a, b)| apart(*a, *b)).sum()
            }
            Mark::Text(_) => 0.0,
        }
    }

    /// Whether there is anything to draw: a line of no length and words of no height are not drawn by any writer.
    pub fn has_size(&self) -> bool {
        match self {
            Mark::Text(text) => text.height > 0.0,
            _ => self.length() > 0.0,
        }
    }

    /// The same, so far to the right and down, mm.
    pub fn moved(&self, right: f64, down: f64) -> Mark {
        let to = |p: PaperPoint| at(p.x + right, p.y + down);
        let mut moved = self.clone();
        match &mut moved {
            Mark::Line { from, to: end, .. } => (*from, *end) = (to(*from), to(*end)),
            Mark::Arc { centre, .. } | Mark::Circle { centre, .. } => *centre = to(*centre),
            Mark::Filled { corners, .. } => {
                for corner in corners {
                    *corner = to(*corner);
                }
            }
            Mark::Text(text) => text.at = to(text.at),
        }
        moved
    }

    /// What it belongs to.
    pub fn role(&self) -> Role {
        match self {
            Mark::Line { role, .. }
            | Mark::Arc { role, .. }
            | Mark::Circle { role, .. }
            | Mark::Filled { role, .. } => *role,
            Mark::Text(_) => Role::Lettering,
        }
    }
}

impl Text {
    /// Level lettering of this capital height that starts at a point, in the regular face.
    pub fn new(start: PaperPoint, words: impl Into<String>, height: f64) -> Self {
        Text {
            at: start,
            words: words.into(),
            height,
            hang: Hang::Start,
            turn_deg: 0.0,
            bold: false,
        }
    }

    /// The same, centred on its point.
    pub fn middle(self) -> Self {
        Text {
            hang: Hang::Middle,
            ..self
        }
    }

    /// The same, ending at its point.
    pub fn end(self) -> Self {
        Text {
            hang: Hang::End,
            ..self
        }
    }

    /// The same, turned anticlockwise by so many degrees about its point.
    pub fn turned(self, turn_deg: f64) -> Self {
        Text { turn_deg, ..self }
    }

    /// The same in the bold face.
    pub fn bold(self) -> Self {
        Text { bold: true, ..self }
    }
}

impl From<Text> for Mark {
    fn from(text: Text) -> Self {
        Mark::Text(text)
    }
}
