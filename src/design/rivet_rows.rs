//! Rows of rivets on the flange: how far in each lies, and what refuses them: the heel, the weld, one another.
//!
//! Row 1 is nearest the flange's edge. Zig-zag rows stand half a pitch over from the next, so that a zig-zag closes round the
//! flange whatever the count; rows two apart stand in line in both arrangements.

use super::amount::Amounts;
use super::{FlangeDesign, Rivet, RivetLine, RivetMade, chord};
use crate::spec::{Arrangement, Fault, RivetLineSpec, RowsSpec};
use crate::units::angle::{cos, hypot, sin, sqrt};
use crate::units::{Length, Size};

/// Two rows or more, each with as many rivets as the others.
#[derive(Clone, Debug)]
pub struct RivetRows {
    /// How many, two or more.
    pub number: u32,
    /// How the rivets of one row stand to those of the next.
    pub arrangement: Arrangement,
    /// Centres of one row to centres of the next, as written.
    pub apart: Size,
    /// From a hole to the nearest of the next row, along the bore unrolled.
    pub diagonal_bore: Length,
}

impl RivetRows {
    /// Rows of this pitch along the bore.
    pub(super) fn of(spec: &RowsSpec, pitch_bore: Length) -> RivetRows {
        RivetRows {
            number: spec.number,
            arrangement: spec.arrangement,
            apart: spec.apart.clone(),
            diagonal_bore: slant(
                spec.apart.value(),
                half_pitch_over(spec.arrangement, pitch_bore / 2.0),
            ),
        }
    }
}

impl RivetLine {
    /// The tack holes that stand nearest to the four quarters, from the bottom clockwise, each once: where the plate is bolted first.
    pub fn tacks_at_quarters(&self) -> Vec<&Rivet> {
        let apart = |a: f64, b: f64| {
            let apart = (a - b).rem_euclid(360.0);
            apart.min(360.0 - apart)
        };
        let mut found: Vec<&Rivet> = Vec::new();
        for quarter in [180.0, 270.0, 0.0, 90.0] {
            let tacks = self.rivets.iter().filter(|r| r.made == RivetMade::Tack);
            let away = |r: &&Rivet| apart(r.angle_deg, quarter);
            let nearest = tacks.min_by(|a, b| away(a).total_cmp(&away(b)));
            found.extend(nearest.filter(|r| found.iter().all(|f| f.id != r.id)));
        }
        found
    }

    /// How many rows there are; one where the spec says nothing of rows.
    pub fn row_count(&self) -> u32 {
        self.rows.as_ref().map_or(1, |rows| rows.number)
    }

    /// How many rivets stand in a row.
    pub fn in_a_row(&self) -> usize {
        self.rivets.len() / self.row_count() as usize
    }

    /// The rivets of each row, that nearest the flange's edge first, each in order of its numbers.
    pub fn each_row(&self) -> impl Iterator<Item = (u32, &[Rivet])> {
        (1..).zip(self.rivets.chunks(self.in_a_row().max(1)))
    }

    /// Hole centres of a row, counted from 1, to the flange's edge.
    pub fn from_edge_of(&self, row: u32) -> Length {
        match &self.rows {
            Some(rows) => row_from_edge(self.from_edge.value(), &rows.apart, row),
            None => self.from_edge.value(),
        }
    }

    /// Hole centres of the row furthest from the flange's edge, nearest to heel or weld, to that edge.
    pub fn inner_row_from_edge(&self) -> Length {
        self.from_edge_of(self.row_count())
    }

    /// Half the opening of a row's hole in a section through the barrel's axis at an angle, where flange or barrel has this radius;
    /// none where the section passes the row's holes by.
    pub fn opened_at(&self, row: u32, angle_deg: f64, radius: Length) -> Option<Length> {
        let r = self.hole.value().to_mm() / 2.0;
        let of_row = self.rivets.iter().filter(|rivet| rivet.row == row);
        let halves = of_row.filter_map(|rivet| {
            let turn = (rivet.angle_deg - angle_deg).to_radians();
            let off = radius.to_mm() * sin(turn);
            let inside = r * r - off * off;
            (cos(turn) > 0.0 && inside > 0.0).then(|| Length::mm(sqrt(inside)))
        });
        halves.max_by(Length::total_cmp)
    }

    /// One rivet for every place of the rivet circle as it is seen along the barrel, where rows in line cover one another.
    pub fn places_round(&self) -> &[Rivet] {
        let rows_seen = match &self.rows {
            Some(rows) if rows.arrangement == Arrangement::ZigZag => 2,
            Some(_) | None => 1,
        };
        &self.rivets[..self.in_a_row() * rows_seen]
    }
}

fn row_from_edge(first: Length, apart: &Size, row: u32) -> Length {
    first + f64::from(row - 1) * apart.value()
}

/// From the flange's edge to the centres of the inner row.
pub(super) fn inner_row_of(spec: &RivetLineSpec) -> Length {
    let first = spec.from_edge.value();
    match &spec.rows {
        Some(rows) => row_from_edge(first, &rows.apart, rows.number),
        None => first,
    }
}

/// How far a row starts along from the row before it, in pitches.
pub(super) fn steps_over(rows: Option<&RowsSpec>, row: u32) -> f64 {
    match rows.map(|rows| rows.arrangement) {
        Some(Arrangement::ZigZag) if row.is_multiple_of(2) => 0.5,
        Some(_) | None => 0.0,
    }
}

fn half_pitch_over(arrangement: Arrangement, half_pitch: Length) -> Length {
    match arrangement {
        Arrangement::ZigZag => half_pitch,
        Arrangement::Chain => Length::ZERO,
    }
}

fn slant(along: Length, round: Length) -> Length {
    Length::mm(hypot(along.to_mm(), round.to_mm()))
}

/// The holes of the inner row lie on the straight of the flange, or on the ring clear of both its welds. Whether they do.
pub(super) fn refuse_inner_row(
    spec: &RivetLineSpec,
    flange: &FlangeDesign,
    amounts: Amounts,
    faults: &mut Vec<Fault>,
) -> bool {
    let Some(rows) = &spec.rows else {
        return true;
    };
    let (given, lost, key, over, of_what) = match flange {
        FlangeDesign::Pressed(pressed) => (
            pressed.straight.value(),
            Length::ZERO,
            "flange.pressed.straight",
            "onto the heel",
            "straight flange",
        ),
        FlangeDesign::Fabricated(ring) => {
            let inside = ring.weld_leg_inside.value();
            let leg = inside.max(ring.weld_leg_outside.value());
            (
                ring.ring_width.value() - leg,
                leg,
                "flange.fabricated.ring_width",
                "into the weld",
                "ring clear of its welds",
            )
        }
    };
    let needed = inner_row_of(spec) + spec.hole.value() / 2.0;
    let Some(short) = given.shortfall(needed) else {
        return true;
    };
    faults.push(
        Fault::new(
            "rivets.rows",
            format!(
                "the holes of row {} run {} {over}: {} rows need {} of {of_what}, and there is {}",
                rows.number,
                amounts.length(short),
                rows.number,
                amounts.length(needed),
                amounts.length(given)
            ),
            format!(
                "make `{key}` {} or more, or have fewer rows or closer ones",
                amounts.length(needed + lost)
            ),
        )
        .and(key, of_what),
    );
    false
}

/// Holes of neighbouring rows leave metal between them on the flange's inside face, where they stand closest; so do those two
/// rows apart, which stand in line. Whether they do.
pub(super) fn refuse_rows_that_meet(
    spec: &RivetLineSpec,
    count: u32,
    flange_inside: Length,
    amounts: Amounts,
    faults: &mut Vec<Fault>,
) -> bool {
    let Some(rows) = &spec.rows else {
        return true;
    };
    let half_step = chord(flange_inside, count.saturating_mul(2));
    let apart = rows.apart.value();
    let next = slant(apart, half_pitch_over(rows.arrangement, half_step));
    let (row, closest) = match 2.0 * apart {
        in_line if rows.number > 2 && in_line < next => (3, in_line),
        _ => (2, next),
    };
    let Some(short) = closest.shortfall(spec.hole.value()) else {
        return true;
    };
    faults.push(
        Fault::new(
            "rivets.rows.apart",
            format!(
                "rivet holes of {} in rows 1 and {row} overlap by {}: their centres stand {} from one another at the flange's \
                 inside face",
                spec.hole,
                amounts.length(short),
                amounts.length(closest)
            ),
            "set the rows further apart, or look again at the hole",
        )
        .and("rivets.hole", "the hole"),
    );
    false
}
