//! The area of flat that each stay of a group is taken to hold.

use super::area_above_tubes::area_lines;
use super::measure::{figure, rounded};
use super::stay_core::StayGroup;
use crate::design::{Design, StayArea, largest_rectangle};
use crate::units::SQUARE_MM_PER_SQUARE_INCH;

/// What each stay of a group is taken to hold.
pub(super) struct AreaHeld {
    /// The area, in².
    pub in2: f64,
    /// How it was come by, in words.
    pub because: String,
    /// The sum, line by line.
    pub lines: Vec<String>,
}

/// What each stay of a group is taken to hold: the rectangle of its pitches or an even share of the flat above the tubes, whichever is
/// more; or what is wanting to know it. Where the stays of the group hold unlike pieces, the largest counts for all.
pub(super) fn area_held(design: &Design, group: &StayGroup) -> Result<AreaHeld, String> {
    let by_pitch = by_pitch(design, |area| group.has(design, area.hole));
    let share = even_share(design, group);
    match (by_pitch, share) {
        (Some(pitch), Some(share)) if share.in2 > pitch.in2 => Ok(AreaHeld {
            because: format!(
                "{}, which is more than the {} in² of the pitches",
                share.because,
                rounded(pitch.in2, 2)
            ),
            ..share
        }),
        (Some(held), _) | (None, Some(held)) => Ok(held),
        (None, None) => Err(why_unknown(design)),
    }
}

/// The largest rectangle of pitches that a stay of these holds.
pub(super) fn by_pitch(design: &Design, of: impl Fn(&StayArea) -> bool) -> Option<AreaHeld> {
    let in2 = |mm2: f64| mm2 / SQUARE_MM_PER_SQUARE_INCH;
    let own = design.stay_areas.iter().filter(|area| of(area));
    let (held, rectangle) = largest_rectangle(own)?;
    let area = held.area_mm2;
    Some(AreaHeld {
        in2: in2(area),
        because: "area by the pitches, less other holes (regulation 588)".into(),
        lines: vec![format!(
            "A = {} × {} − {} = {} in²",
            figure(rectangle.across.to_inches()),
            figure(rectangle.up.to_inches()),
            figure(in2(rectangle.holes_mm2)),
            figure(in2(area))
        )],
    })
}

fn even_share(design: &Design, group: &StayGroup) -> Option<AreaHeld> {
    let above = design.above_tubes.as_ref()?;
    let among = above.stays.len();
    let stands_above = |hole: &usize| group.has(design, *hole);
    above.stays.iter().any(stands_above).then(|| {
        let all = above.area_mm2 / SQUARE_MM_PER_SQUARE_INCH;
        let each = all / among as f64;
        let mut lines = area_lines(above.radius, above.base, all);
        lines.push(format!(
            "A = {}/{among} = {} in²",
            rounded(all, 2),
            figure(each)
        ));
        AreaHeld {
            in2: each,
            because: format!("area above the tubes shared evenly by {among} stays"),
            lines,
        }
    })
}

fn why_unknown(design: &Design) -> String {
    let why = "these stays stand on no even pitch, and the area that each holds is not known";
    match design.above_tubes {
        Some(_) => format!("{why}: none of them stands above the tubes"),
        None => format!("{why}: `support.above_tubes` or its round flange line is not given"),
    }
}
