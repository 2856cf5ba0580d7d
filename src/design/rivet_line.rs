//! The line of rivets on the flange, in one row or in several.

use super::amount::Amounts;
use super::rivet_rows::{
    RivetRows, inner_row_of, refuse_inner_row, refuse_rows_that_meet, steps_over,
};
use super::{Fabricated, FlangeDesign, Pressed, chord};
use crate::spec::{Barrel, BottomCentre, Fault, RivetHow, RivetLineSpec, Written};
use crate::units::angle::PI;
use crate::units::tolerance::SAME_LENGTH_MM;
use crate::units::{Length, Size};

/// How one rivet hole is made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RivetMade {
    /// To the drawing.
    Drawn,
    /// Through the barrel or marked from it.
    InPlace,
    /// To the drawing, for a tack bolt; the rest are made in place.
    Tack,
}

impl RivetMade {
    /// As `results.json` has it.
    pub fn name(self) -> &'static str {
        match self {
            RivetMade::Drawn => "drawn",
            RivetMade::InPlace => "in place",
            RivetMade::Tack => "tack",
        }
    }
}

/// One rivet hole.
#[derive(Clone, Debug)]
pub struct Rivet {
    /// Its number, R1 nearest bottom centre and then clockwise as seen from the declared side; the next row goes on where the
    /// row before it ended, again from bottom centre.
    pub id: String,
    /// Its row, 1 nearest the flange's edge.
    pub row: u32,
    /// Degrees clockwise from the top, as seen from the declared side.
    pub angle_deg: f64,
    /// Running length along the bore from bottom centre, clockwise.
    pub run: Length,
    /// The same along the barrel's outside.
    pub run_outside: Length,
    /// How it is made.
    pub made: RivetMade,
}

/// A line of rivets round the flange, in one row or in several of as many rivets each.
///
/// *Pitch at bore* is the arc along the barrel's bore, where flange and barrel meet; *at outside* along the barrel's outside;
/// *at flange face* along the flange's inside face. Holes are drilled radially, so the angle carries and the pitch does not.
#[derive(Clone, Debug)]
pub struct RivetLine {
    /// Its name in records: R.
    pub line: String,
    /// Rivet, cold, as written.
    pub rivet: Size,
    /// Finished hole as written.
    pub hole: Size,
    /// Hole centres of the row nearest the flange's edge to that edge, as written.
    pub from_edge: Size,
    /// Rows, where there are two or more.
    pub rows: Option<RivetRows>,
    /// The rivets in order of their numbers, row by row.
    pub rivets: Vec<Rivet>,
    /// Angle from one to the next of a row, degrees.
    pub step_deg: f64,
    /// Arc pitch along the bore.
    pub pitch_bore: Length,
    /// Arc pitch along the barrel's outside.
    pub pitch_outside: Length,
    /// Arc pitch along the flange's inside face.
    pub pitch_flange_face: Length,
    /// Chord at bore.
    pub chord_bore: Length,
    /// Chord at the barrel's outside.
    pub chord_outside: Length,
    /// Chord at the flange's inside face, where the holes stand closest.
    pub chord_flange_face: Length,
    /// Girth of the flange outside, and of the barrel's bore.
    pub girth_flange: Length,
    /// Girth of the bore.
    pub girth_bore: Length,
    /// How the spec says holes are made.
    pub how: RivetHow,
    /// Straight flange that edge, head and clearance together need (pressed), or from outer weld toe to hole centre
    /// (fabricated), with what there is.
    pub head_room: Option<HeadRoom>,
}

/// Room for the rivet head beside the heel or the weld.
#[derive(Clone, Debug)]
pub struct HeadRoom {
    /// Length needed.
    pub needed: Length,
    /// Length there is.
    pub given: Length,
    /// What is measured, in words for the sheet.
    pub words: String,
}

/// Sheet angle of bottom centre, degrees clockwise from the top.
const BOTTOM_DEG: f64 = 180.0;

/// Fewer rivets than this make no line round a flange.
const FEWEST_RIVETS: u32 = 3;

/// The sizes round which a line of rivets is set out.
struct Seat<'a> {
    bore: Length,
    barrel_outside: Length,
    flange_outside: Length,
    flange_thickness: Length,
    flange: &'a FlangeDesign,
}

/// Sets out the rivets of the flange; nothing where the spec has none, or, with the faults, where they contradict the rest.
pub(super) fn set_out_rivets(
    written: &Written,
    flange: Option<&FlangeDesign>,
    amounts: Amounts,
    faults: &mut Vec<Fault>,
) -> Option<RivetLine> {
    let spec = written.rivets.as_ref()?;
    let seat = seat_of(written, flange, faults)?;
    refuse_off_the_flange(spec, &seat, amounts, faults);
    let rows_fit = refuse_inner_row(spec, seat.flange, amounts, faults);
    let count = count_rivets(spec, seat.bore, faults)?;
    let inside = seat.flange_inside();
    // Before a rivet is set out, since rows of no depth could be as many as one likes.
    if !refuse_rows_that_meet(spec, count, inside, amounts, faults) || !rows_fit {
        return None;
    }
    let step_deg = 360.0 / f64::from(count);
    let pitch_bore = PI * seat.bore / f64::from(count);
    let rows = spec.rows.as_ref();
    let line = RivetLine {
        line: RIVET_LETTER.into(),
        rivet: spec.rivet.clone(),
        hole: spec.hole.clone(),
        from_edge: spec.from_edge.clone(),
        rows: rows.map(|rows| RivetRows::of(rows, pitch_bore)),
        rivets: rivets_round(spec, count, &seat),
        step_deg,
        pitch_bore,
        pitch_outside: PI * seat.barrel_outside / f64::from(count),
        pitch_flange_face: PI * seat.flange_inside() / f64::from(count),
        chord_bore: chord(seat.bore, count),
        chord_outside: chord(seat.barrel_outside, count),
        chord_flange_face: chord(seat.flange_inside(), count),
        girth_flange: PI * seat.flange_outside,
        girth_bore: PI * seat.bore,
        how: spec.how,
        head_room: match seat.flange {
            FlangeDesign::Pressed(pressed) => room_beside_heel(spec, pressed),
            FlangeDesign::Fabricated(ring) => Some(room_beside_weld(spec, ring)),
        },
    };
    refuse_holes_that_meet(&line, amounts, faults);
    Some(line)
}

/// The letter of the rivets.
pub(super) const RIVET_LETTER: &str = "R";

impl Seat<'_> {
    fn flange_inside(&self) -> Length {
        self.flange_outside - 2.0 * self.flange_thickness
    }

    /// From the edge of the flange to the outer face of the plate.
    fn depth(&self) -> Length {
        match self.flange {
            FlangeDesign::Pressed(pressed) => pressed.depth,
            FlangeDesign::Fabricated(ring) => ring.ring_width.value(),
        }
    }
}

fn seat_of<'a>(
    written: &Written,
    flange: Option<&'a FlangeDesign>,
    faults: &mut Vec<Fault>,
) -> Option<Seat<'a>> {
    let barrel: Option<&Barrel> = written.barrel.as_ref();
    if barrel.is_none() {
        faults.push(Fault::new(
            "rivets",
            "a line of rivets is pitched along the barrel's bore, and there is no barrel",
            "write the barrel's bore and thickness",
        ));
    }
    if written.flange.is_none() {
        faults.push(Fault::new(
            "rivets",
            "rivets hold a flange, and this plate has none",
            "write the flange, or leave the rivets out",
        ));
    }
    let (barrel, flange) = (barrel?, flange?);
    let bore = barrel.bore.value();
    if bore <= Length::ZERO {
        faults.push(Fault::new(
            "barrel.bore",
            format!("{} is no bore", barrel.bore),
            "write the inside diameter of the barrel",
        ));
        return None;
    }
    let (flange_outside, flange_thickness) = match flange {
        FlangeDesign::Pressed(pressed) => (
            pressed.outside_diameter.value(),
            written.plate.thickness.value(),
        ),
        FlangeDesign::Fabricated(ring) => (
            ring.ring_outside_diameter.value(),
            ring.ring_thickness.value(),
        ),
    };
    Some(Seat {
        bore,
        barrel_outside: bore + 2.0 * barrel.thickness.value(),
        flange_outside,
        flange_thickness,
        flange,
    })
}

/// A hole that runs over the edge of its flange, or off it altogether, is none.
fn refuse_off_the_flange(
    spec: &RivetLineSpec,
    seat: &Seat,
    amounts: Amounts,
    faults: &mut Vec<Fault>,
) {
    let (from_edge, radius) = (spec.from_edge.value(), spec.hole.value() / 2.0);
    if let Some(short) = from_edge.shortfall(radius) {
        faults.push(
            Fault::new(
                "rivets.from_edge",
                format!(
                    "the rivet holes run {} over the edge of the flange",
                    amounts.length(short)
                ),
                "make it more than half the hole",
            )
            .and("rivets.hole", "the hole"),
        );
    }
    if let Some(short) = seat.depth().shortfall(from_edge + radius) {
        faults.push(Fault::new(
            "rivets.from_edge",
            format!(
                "the rivet holes run {} beyond the face of the plate: the flange is {} deep",
                amounts.length(short),
                amounts.length(seat.depth())
            ),
            "measure it from the edge of the flange to the centres of the holes",
        ));
    }
}

fn count_rivets(spec: &RivetLineSpec, bore: Length, faults: &mut Vec<Fault>) -> Option<u32> {
    let (path, count) = match (&spec.count, &spec.pitch) {
        (Some(count), None) => ("rivets.count", *count),
        (None, Some(pitch)) if pitch.value().to_mm() > SAME_LENGTH_MM => (
            "rivets.pitch",
            // A float too large for the whole number stops at its end, and is refused as holes that meet.
            (PI * bore / pitch.value()).round() as u32,
        ),
        (None, Some(pitch)) => {
            faults.push(Fault::new(
                "rivets.pitch",
                format!("{pitch} is no pitch"),
                "write a pitch above nothing",
            ));
            return None;
        }
        (Some(_), Some(_)) => {
            faults.push(
                Fault::new(
                    "rivets.count",
                    "a line of rivets goes by count or by pitch, and this one says both",
                    "leave one of them out",
                )
                .and("rivets.pitch", "the pitch"),
            );
            return None;
        }
        (None, None) => {
            faults.push(Fault::new(
                "rivets",
                "nothing says how many rivets there are",
                "write `count`, or the `pitch` aimed at",
            ));
            return None;
        }
    };
    if count < FEWEST_RIVETS {
        faults.push(Fault::new(
            path,
            format!("that makes {count} rivets round the flange"),
            format!("have {FEWEST_RIVETS} or more"),
        ));
        return None;
    }
    // As many holes as would fill the bore without any metal; more need not be set out one by one to be refused.
    let most = (PI * bore / spec.hole.value()).floor();
    if f64::from(count) > most {
        faults.push(
            Fault::new(
                path,
                format!(
                    "{count} holes of {} are more than the girth of the bore holds",
                    spec.hole
                ),
                "have fewer, or look again at the hole",
            )
            .and("rivets.hole", "the hole"),
        );
        return None;
    }
    Some(count)
}

/// The rivets row by row, each clockwise from bottom centre as seen from the declared side.
fn rivets_round(spec: &RivetLineSpec, count: u32, seat: &Seat) -> Vec<Rivet> {
    let first = match spec.bottom_centre {
        BottomCentre::OnAHole => 0.0,
        BottomCentre::BetweenHoles => 0.5,
    };
    let made = |row: u32, index: u32| match (spec.how, spec.tack_every) {
        (RivetHow::Drawn, _) => RivetMade::Drawn,
        (RivetHow::InPlace, Some(every))
            if row == 1 && every > 0 && index.is_multiple_of(every) =>
        {
            RivetMade::Tack
        }
        (RivetHow::InPlace, _) => RivetMade::InPlace,
    };
    let rows = spec.rows.as_ref().map_or(1, |rows| rows.number);
    (1..=rows)
        .flat_map(|row| (0..count).map(move |index| (row, index)))
        .map(|(row, index)| {
            // A row's first rivet is the first on or after bottom centre, so half a step over from half a step is none.
            let over = (first + steps_over(spec.rows.as_ref(), row)) % 1.0;
            let steps = f64::from(index) + over;
            // Steps before division, so that the whole turn and its quarters come out as whole degrees.
            let from_bottom = 360.0 * steps / f64::from(count);
            Rivet {
                id: format!("{RIVET_LETTER}{}", (row - 1) * count + index + 1),
                row,
                angle_deg: (BOTTOM_DEG + from_bottom) % 360.0,
                run: PI * seat.bore * steps / f64::from(count),
                run_outside: PI * seat.barrel_outside * steps / f64::from(count),
                made: made(row, index),
            }
        })
        .collect()
}

/// Straight flange that edge, half head and clearance take together; only where the spec gives head and clearance.
fn room_beside_heel(spec: &RivetLineSpec, pressed: &Pressed) -> Option<HeadRoom> {
    let (head, clearance) = (spec.head_diameter.as_ref()?, spec.head_clearance.as_ref()?);
    let beyond_row_1 = inner_row_of(spec) - spec.from_edge.value();
    Some(HeadRoom {
        needed: edge_needed(spec).max(spec.from_edge.value())
            + beyond_row_1
            + head.value() / 2.0
            + clearance.size.value(),
        given: pressed.straight.value(),
        words: match spec.rows {
            Some(_) => "straight flange for edge distance, rows, half head and clearance".into(),
            None => "straight flange for edge distance, half head and clearance".into(),
        },
    })
}

/// From the outer weld toe to the holes: an edge distance, and half head and clearance where the spec gives them.
fn room_beside_weld(spec: &RivetLineSpec, ring: &Fabricated) -> HeadRoom {
    let head = match (&spec.head_diameter, &spec.head_clearance) {
        (Some(head), Some(clearance)) => head.value() / 2.0 + clearance.size.value(),
        _ => Length::ZERO,
    };
    HeadRoom {
        needed: edge_needed(spec).max(head),
        given: ring.ring_width.value() - inner_row_of(spec) - ring.toe_on_ring,
        words: match spec.rows {
            Some(_) => "outer weld toe to centres of the inner row".into(),
            None => "outer weld toe to rivet centres".into(),
        },
    }
}

/// One and a half holes from centre to edge: Indian Boiler Regulations 1950, regulation 184(e). Beside a ring the weld toe is
/// taken for the edge.
fn edge_needed(spec: &RivetLineSpec) -> Length {
    1.5 * spec.hole.value()
}

fn refuse_holes_that_meet(line: &RivetLine, amounts: Amounts, faults: &mut Vec<Fault>) {
    if let Some(short) = line.chord_flange_face.shortfall(line.hole.value()) {
        faults.push(
            Fault::new(
                "rivets",
                format!(
                    "{} rivet holes of {} overlap by {} at the flange's inside face",
                    line.rivets.len(),
                    line.hole,
                    amounts.length(short)
                ),
                "have fewer, or look again at the hole",
            )
            .and("rivets.hole", "the hole"),
        );
    }
}
