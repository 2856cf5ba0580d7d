//! What a sheet is made of: marks in millimetres of paper, x right and y **down** from the top left corner of the paper.

/// A place on the paper, mm, x right, y down.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct PaperPoint {
    /// From the left edge, mm.
    pub x: f64,
    /// From the top edge, mm.
    pub y: f64,
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
    /// Dimension lines, extension lines, leaders and their arrows.
    Dimension,
    /// Lettering.
    Lettering,
}

/// One mark.
#[derive(Clone, Debug, PartialEq)]
pub enum Mark {
    /// A straight line.
    Line {
        from: PaperPoint,
        to: PaperPoint,
        pen: Pen,
        pattern: Pattern,
        role: Role,
    },
    /// An arc, from start angle over a sweep, degrees clockwise on paper from x.
    Arc {
        centre: PaperPoint,
        radius: f64,
        start_deg: f64,
        sweep_deg: f64,
        pen: Pen,
        pattern: Pattern,
        role: Role,
    },
    /// A full circle.
    Circle {
        centre: PaperPoint,
        radius: f64,
        pen: Pen,
        pattern: Pattern,
        role: Role,
    },
    /// A filled polygon: arrowheads, solid sections, origin dots. Never drawn larger than its corners.
    Filled {
        corners: Vec<PaperPoint>,
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
