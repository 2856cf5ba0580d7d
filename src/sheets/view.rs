//! A view: the transform from plate to paper, and plate shapes put down through it.

use super::at;
use super::board::{Board, PaperBox};
use super::{PaperPoint, Pattern, Pen, Role};
use crate::design::{Edge, Outline, Point};
use crate::units::angle::atan2;

/// Plate millimetres, y up, to paper millimetres, y down.
#[derive(Clone, Copy, Debug)]
pub struct View {
    /// Millimetres of paper for a millimetre of plate.
    pub scale: f64,
    /// Where the barrel centre lies on the paper.
    pub centre: PaperPoint,
}

/// How a line is drawn: pen, pattern and role in one.
#[derive(Clone, Copy, Debug)]
pub struct Stroke {
    /// Width.
    pub pen: Pen,
    /// Pattern.
    pub pattern: Pattern,
    /// What it belongs to.
    pub role: Role,
}

impl Stroke {
    /// An edge that one sees.
    pub const SEEN: Stroke = Stroke {
        pen: Pen::Wide,
        pattern: Pattern::Continuous,
        role: Role::Object,
    };
    /// An edge hidden behind metal.
    pub const HIDDEN: Stroke = Stroke {
        pen: Pen::Middle,
        pattern: Pattern::Dashed,
        role: Role::Object,
    };
    /// A line where faces run into each other: the tangent of a bend, a weld toe.
    pub const TANGENT: Stroke = Stroke {
        pen: Pen::Narrow,
        pattern: Pattern::Continuous,
        role: Role::Centre,
    };
    /// The toe of a weld behind the plate.
    pub const HIDDEN_TOE: Stroke = Stroke {
        pen: Pen::Narrow,
        pattern: Pattern::Dashed,
        role: Role::Centre,
    };
    /// A pitch circle or centre line.
    pub const CENTRE: Stroke = Stroke {
        pen: Pen::Narrow,
        pattern: Pattern::Chain,
        role: Role::Centre,
    };
    /// A neighbouring part, or the shape before forming.
    pub const ADJACENT: Stroke = Stroke {
        pen: Pen::Narrow,
        pattern: Pattern::DoubleChain,
        role: Role::Centre,
    };
}

impl View {
    /// A place on the paper.
    pub fn place(&self, p: Point) -> PaperPoint {
        at(
            self.centre.x + p.x * self.scale,
            self.centre.y - p.y * self.scale,
        )
    }

    /// x of the paper for x of the plate.
    pub fn x(&self, x: f64) -> f64 {
        self.centre.x + x * self.scale
    }

    /// y of the paper for y of the plate.
    pub fn y(&self, y: f64) -> f64 {
        self.centre.y - y * self.scale
    }

    /// The box on paper of a box of the plate.
    pub fn paper_box(&self, b: &PlateBox) -> PaperBox {
        PaperBox::new(
            self.x(b.left),
            self.y(b.top),
            self.x(b.right),
            self.y(b.bottom),
        )
    }

    /// A circle of the plate.
    pub fn circle(&self, board: &mut Board, centre: Point, radius: f64, stroke: Stroke) {
        board.circle(
            self.place(centre),
            radius * self.scale,
            stroke.pen,
            stroke.pattern,
            stroke.role,
        );
    }

    /// A line of the plate.
    pub fn line(&self, board: &mut Board, from: Point, to: Point, stroke: Stroke) {
        board.line(
            self.place(from),
            self.place(to),
            stroke.pen,
            stroke.pattern,
            stroke.role,
        );
    }

    /// A closed outline of the plate; a full circle is one circle.
    pub fn outline(&self, board: &mut Board, outline: &Outline, stroke: Stroke) {
        if let Some((centre, radius)) = whole_circle(outline) {
            self.circle(board, centre, radius, stroke);
            return;
        }
        for edge in outline.edges() {
            self.edge(board, edge, stroke);
        }
    }

    /// One edge of the plate.
    pub fn edge(&self, board: &mut Board, edge: &Edge, stroke: Stroke) {
        match *edge {
            Edge::Line { from, to } => self.line(board, from, to, stroke),
            Edge::Arc {
                from,
                to,
                centre,
                radius,
                anticlockwise,
            } => {
                let start = atan2(from.y - centre.y, from.x - centre.x).to_degrees();
                let end = atan2(to.y - centre.y, to.x - centre.x).to_degrees();
                let mut turn = if anticlockwise {
                    end - start
                } else {
                    start - end
                };
                if turn <= 0.0 {
                    turn += 360.0;
                }
                // Paper angles run clockwise, plate angles anticlockwise.
                let sweep = if anticlockwise { -turn } else { turn };
                board.arc(
                    self.place(centre),
                    radius * self.scale,
                    -start,
                    sweep,
                    stroke.pen,
                    stroke.pattern,
                    stroke.role,
                );
            }
        }
    }
}

/// Centre and radius where every edge of an outline lies on one circle.
pub fn whole_circle(outline: &Outline) -> Option<(Point, f64)> {
    let mut found = None;
    for edge in outline.edges() {
        match *edge {
            Edge::Line { .. } => return None,
            Edge::Arc { centre, radius, .. } => match found {
                None => found = Some((centre, radius)),
                Some(one) if one == (centre, radius) => {}
                Some(_) => return None,
            },
        }
    }
    found
}

/// An upright box on the plate, mm, y up.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlateBox {
    /// Least x.
    pub left: f64,
    /// Greatest y.
    pub top: f64,
    /// Greatest x.
    pub right: f64,
    /// Least y.
    pub bottom: f64,
}

impl PlateBox {
    /// The smallest box round an outline.
    pub fn round(outline: &Outline) -> PlateBox {
        let mut b = PlateBox::NONE;
        for edge in outline.edges() {
            match *edge {
                Edge::Line { from, to } => {
                    b.take(from, 0.0);
                    b.take(to, 0.0);
                }
                Edge::Arc { .. } => b.take_arc(edge),
            }
        }
        b
    }

    /// A box that holds nothing yet.
    pub const NONE: PlateBox = PlateBox {
        left: f64::INFINITY,
        top: f64::NEG_INFINITY,
        right: f64::NEG_INFINITY,
        bottom: f64::INFINITY,
    };

    /// Grows to hold a circle.
    pub fn take(&mut self, centre: Point, radius: f64) {
        self.left = self.left.min(centre.x - radius);
        self.right = self.right.max(centre.x + radius);
        self.top = self.top.max(centre.y + radius);
        self.bottom = self.bottom.min(centre.y - radius);
    }

    /// Whether a place lies in it; of two boxes side by side only one holds their common side.
    pub fn holds(&self, p: Point) -> bool {
        p.x >= self.left && p.x < self.right && p.y <= self.top && p.y > self.bottom
    }

    /// Width, mm.
    pub fn width(&self) -> f64 {
        self.right - self.left
    }

    /// Height, mm.
    pub fn height(&self) -> f64 {
        self.top - self.bottom
    }

    fn take_arc(&mut self, arc: &Edge) {
        let Edge::Arc {
            from,
            to,
            centre,
            radius,
            anticlockwise,
        } = *arc
        else {
            return;
        };
        self.take(from, 0.0);
        self.take(to, 0.0);
        let (first, last) = if anticlockwise {
            (from, to)
        } else {
            (to, from)
        };
        let start = atan2(first.y - centre.y, first.x - centre.x).to_degrees();
        let mut turn = atan2(last.y - centre.y, last.x - centre.x).to_degrees() - start;
        if turn <= 0.0 {
            turn += 360.0;
        }
        let quarters = [
            (0.0, 1.0, 0.0),
            (90.0, 0.0, 1.0),
            (180.0, -1.0, 0.0),
            (270.0, 0.0, -1.0),
        ];
        for (angle, x, y) in quarters {
            let mut on = angle - start;
            while on < 0.0 {
                on += 360.0;
            }
            if on <= turn {
                self.take(
                    Point::new(centre.x + radius * x, centre.y + radius * y),
                    0.0,
                );
            }
        }
    }
}
