//! Gauges to be cut from sheet metal, drawn full size: the heel radius, and the chord of a rolled ring.

use super::board::{Board, PaperBox};
use super::dimension::{FIRST_ROW, across, leader, saying, upwards};
use super::letter_size::FIGURES;
use super::set::Set;
use super::{Pattern, Pen, Role, at};
use crate::design::{FlangeDesign, chord_height};
use crate::units::Length;
use crate::units::angle::{asin, cos, sin};

/// Height of the body of a gauge beyond its curve, mm.
const BODY: f64 = 22.0;
/// Length of the straight legs of the heel gauge, mm.
const LEG: f64 = 28.0;

/// A chord that proves the roll of a ring from inside.
#[derive(Clone, Copy, Debug)]
pub struct RollCheck {
    /// Inside radius of the ring.
    pub radius: Length,
    /// Length of the chord.
    pub chord: Length,
    /// Height of the arc above it.
    pub height: Length,
}

/// The longest round chord that goes on the job's paper and inside the ring: 12, 6 or 3 in, or 300, 150 or 75 mm.
pub fn roll_check(set: &Set<'_>) -> Option<RollCheck> {
    let Some(FlangeDesign::Fabricated(ring)) = &set.design.flange else {
        return None;
    };
    let radius = ring.ring_outside_diameter.value() / 2.0 - ring.ring_thickness.value();
    let chords = if set.figures.in_inches() {
        [12.0, 6.0, 3.0].map(Length::inches)
    } else {
        [300.0, 150.0, 75.0].map(Length::mm)
    };
    let room = set.room().width() - 30.0;
    chords
        .into_iter()
        .filter(|chord| chord.to_mm() <= room && *chord < radius * 1.8)
        .find_map(|chord| {
            Some(RollCheck {
                radius,
                chord,
                height: chord_height(radius, chord)?,
            })
        })
}

/// A gauge that goes into the heel: a quarter round of the inside radius between two straight legs.
pub fn put_heel_gauge(board: &mut Board, set: &Set<'_>, b: &PaperBox) {
    let Some(FlangeDesign::Pressed(p)) = &set.design.flange else {
        return;
    };
    let r = p.heel_radius.value().to_mm();
    let (x, y) = (b.left, b.top);
    let (pen, pattern) = (Pen::Wide, Pattern::Continuous);
    let (far_x, far_y) = (x + r + LEG, y + r + LEG);
    board.arc(at(x + r, y + r), r, 180.0, 90.0, pen, pattern, Role::Object);
    board.edge_line(at(x + r, y), at(far_x, y));
    board.edge_line(at(x, y + r), at(x, far_y));
    board.edge_line(at(far_x, y), at(far_x, y + r * 0.6));
    board.edge_line(at(x, far_y), at(x + r * 0.6, far_y));
    board.edge_line(at(far_x, y + r * 0.6), at(x + r * 0.6, far_y));
    let lean = std::f64::consts::FRAC_PI_4;
    let tip = at(x + r - r * cos(lean), y + r - r * sin(lean));
    let knee = at(x + r * 0.55 + 6.0, y + r * 0.55 + 9.0);
    let words = vec![format!("R{}", set.figures.size_short(&p.heel_radius))];
    leader(board, tip, knee, &words, FIGURES);
}

/// A gauge that goes inside the ring: its curve above, its chord and height given.
pub fn put_roll_check(board: &mut Board, set: &Set<'_>, b: &PaperBox) {
    let Some(check) = roll_check(set) else {
        return;
    };
    let (c, h, r) = (
        check.chord.to_mm(),
        check.height.to_mm(),
        check.radius.to_mm(),
    );
    let (left, right) = (b.left, b.left + c);
    let (crown, chord) = (b.top, b.top + h);
    let foot = chord + BODY;
    let half = asin(c / 2.0 / r).to_degrees();
    board.arc(
        at(left + c / 2.0, crown + r),
        r,
        270.0 - half,
        2.0 * half,
        Pen::Wide,
        Pattern::Continuous,
        Role::Object,
    );
    board.edge_line(at(left, chord), at(left, foot));
    board.edge_line(at(right, chord), at(right, foot));
    board.edge_line(at(left, foot), at(right, foot));
    board.centre_line(at(left, chord), at(right, chord));
    let says = saying(1.0);
    let fig = set.figures;
    across(
        board,
        at(left, foot),
        at(right, foot),
        foot + FIRST_ROW - 1.0,
        says(&fig.short(check.chord), check.chord),
    );
    upwards(
        board,
        at(right, chord),
        at(left + c / 2.0, crown),
        right + 10.0,
        says(&fig.short(check.height), check.height),
    );
    let words = format!("R{} INSIDE THE RING", fig.short(check.radius));
    let middle = at(left + c / 2.0, chord + BODY / 2.0 + FIGURES);
    board.text(middle, &words, FIGURES, super::Hang::Middle);
}
