//! Gaps between rows of rivets, and what is lost where rows stand closer.
//!
//! ```text
//! zig-zag, equal rows       R ≥ 0.33 P + 0.67 D          P  pitch of the outer row      D  finished hole      R  from row to row
//! chain                     R ≥ 2 D
//! zig-zag, outer row of half the rivets    outer to next 0.2 P + 1.15 D        between full rows 0.165 P + 0.67 D
//! closer than that          plate % = 100 [P − (2 − actual/prescribed) D]/P
//!
//! Board of Trade            v  = √((11 p + 4 d)(p + 4 d))/10      row to row, zig-zag        p  pitch      d  hole
//!                           pd = (6 p + 4 d)/10                   diagonal pitch
//!                           v  ≥ 2 d, better (4 d + 1)/2 in       chain
//! ```
//!
//! Source:  Indian Boiler Regulations 1950, regulation 184; Board of Trade rules in J. Rose, Modern Machine-Shop Practice.
//! Covers:  a flange with two rows and more of as many rivets each, at the pitch along the bore. The Board of Trade's zig-zag gap is the
//!          smaller: 1.540 in against 1.576 in at a pitch of 3 in. Rows closer than regulation 184 prescribes are a note here, since
//!          it lowers the plate percentage for them; that is in `rivet_joint` and judged under `end_seam`.
//! Leaves:  a flange of one row; an outer row of half the rivets, whose gaps no flange is compared with.

use super::measure::{Unit, figure, rounded};
use super::{Finding, Rule, Verdict, source};
use crate::design::{Design, RivetLine, RivetRows};
use crate::spec::{Arrangement, Kind, Written};
use crate::units::Length;
use crate::units::angle::sqrt;

/// The rule.
pub const RULE: Rule = Rule {
    name: "rivet_rows",
    asks: "gaps between rows of rivets",
    source: &source::IBR_184,
    run,
    page: include_str!("rivet_rows.rs"),
};

/// Least gap of zig-zag rows with equal rivets, regulation 184.
pub fn zig_zag_gap(pitch: Length, hole: Length) -> Length {
    pitch * 0.33 + hole * 0.67
}

/// Least gap of chain rows, regulation 184 and Board of Trade.
pub fn chain_gap(hole: Length) -> Length {
    hole * 2.0
}

/// Least gap from an outer row of half the rivets to the next, regulation 184.
pub fn outer_row_gap(pitch: Length, hole: Length) -> Length {
    pitch * 0.2 + hole * 1.15
}

/// Least gap between the full rows of such a joint, regulation 184.
pub fn full_row_gap(pitch: Length, hole: Length) -> Length {
    pitch * 0.165 + hole * 0.67
}

/// Plate percentage with rows at this gap; the plain one where the gap is what is prescribed or more.
pub fn plate_percent_at_gap(
    pitch: Length,
    hole: Length,
    actual: Length,
    prescribed: Length,
) -> f64 {
    let lost = if actual.shortfall(prescribed).is_some() {
        2.0 - actual / prescribed
    } else {
        1.0
    };
    100.0 * (pitch - lost * hole) / pitch
}

/// Gap of zig-zag rows, Board of Trade.
pub fn board_of_trade_gap(pitch: Length, hole: Length) -> Length {
    let (p, d) = (pitch.to_mm(), hole.to_mm());
    Length::mm(sqrt((11.0 * p + 4.0 * d) * (p + 4.0 * d)) / 10.0)
}

/// Diagonal pitch of zig-zag rows, Board of Trade.
pub fn board_of_trade_diagonal(pitch: Length, hole: Length) -> Length {
    (pitch * 6.0 + hole * 4.0) / 10.0
}

/// The gap of chain rows that the Board of Trade calls better.
pub fn board_of_trade_better_chain_gap(hole: Length) -> Length {
    (hole * 4.0 + Length::inches(1.0)) / 2.0
}

/// Least gap of a flange's rows, regulation 184.
pub fn prescribed_gap(arrangement: Arrangement, pitch: Length, hole: Length) -> Length {
    match arrangement {
        Arrangement::ZigZag => zig_zag_gap(pitch, hole),
        Arrangement::Chain => chain_gap(hole),
    }
}

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    match written.plate.kind {
        Kind::SmokeboxTubePlate => {}
    }
    let Some((line, rows)) = design
        .rivets
        .as_ref()
        .and_then(|line| Some((line, line.rows.as_ref()?)))
    else {
        return Vec::new();
    };
    let unit = Unit::of_job(written);
    vec![
        by_regulation_184(line, rows, unit),
        by_board_of_trade(line, rows, unit),
    ]
}

/// A finding on these rows with the figures that go into it.
fn on_rows(finding: Finding, line: &RivetLine, unit: Unit) -> Finding {
    finding
        .with_length("pitch at bore", "P", line.pitch_bore, unit)
        .with_length("rivet hole", "D", line.hole.value(), unit)
}

/// "zig-zag rows 1 and 2", or "chain rows 1 to 4".
fn place(rows: &RivetRows) -> String {
    let and = if rows.number == 2 { "and" } else { "to" };
    format!("{} rows 1 {and} {}", rows.arrangement.name(), rows.number)
}

fn by_regulation_184(line: &RivetLine, rows: &RivetRows, unit: Unit) -> Finding {
    let (pitch, hole, apart) = (line.pitch_bore, line.hole.value(), rows.apart.value());
    let prescribed = prescribed_gap(rows.arrangement, pitch, hole);
    let text = |length: Length| figure(unit.of(length));
    let asked = match rows.arrangement {
        Arrangement::ZigZag => format!(
            "0.33 P + 0.67 D = 0.33 × {} + 0.67 × {} = {} {}",
            text(pitch),
            text(hole),
            text(prescribed),
            unit.name()
        ),
        Arrangement::Chain => format!(
            "2 D = 2 × {} = {} {}",
            text(hole),
            text(prescribed),
            unit.name()
        ),
    };
    let finding = on_rows(RULE.finding(place(rows)), line, unit)
        .at_least_length(prescribed, apart, unit)
        .because("centres of one row to centres of the next")
        .work(asked)
        .work(format!("provided = {} {}", text(apart), unit.name()));
    match apart.shortfall(prescribed) {
        None => finding,
        Some(short) => Finding {
            verdict: Verdict::Note,
            ..finding.also(format!(
                "closer by {} than is prescribed, for which the regulation lowers the plate percentage to {} %: judged under end_seam",
                unit.text(short),
                rounded(plate_percent_at_gap(pitch, hole, apart, prescribed), 2)
            ))
        },
    }
}

fn by_board_of_trade(line: &RivetLine, rows: &RivetRows, unit: Unit) -> Finding {
    let (pitch, hole, apart) = (line.pitch_bore, line.hole.value(), rows.apart.value());
    let text = |length: Length| figure(unit.of(length));
    let finding = RULE.finding_by(&source::BOARD_OF_TRADE, place(rows));
    let finding = on_rows(finding, line, unit);
    match rows.arrangement {
        Arrangement::ZigZag => {
            let least = board_of_trade_gap(pitch, hole);
            let diagonal = board_of_trade_diagonal(pitch, hole);
            finding
                .with_length("diagonal pitch", "pd", rows.diagonal_bore, unit)
                .at_least_length(least, apart, unit)
                .because("centres of one row to centres of the next")
                .work(format!(
                    "√((11 p + 4 d)(p + 4 d))/10 = √({} × {})/10 = {} {}",
                    text(pitch * 11.0 + hole * 4.0),
                    text(pitch + hole * 4.0),
                    text(least),
                    unit.name()
                ))
                .work(format!(
                    "diagonal pitch (6 p + 4 d)/10 = {}, provided {} {}",
                    text(diagonal),
                    text(rows.diagonal_bore),
                    unit.name()
                ))
        }
        Arrangement::Chain => {
            let better = board_of_trade_better_chain_gap(hole);
            finding
                .at_least_length(chain_gap(hole), apart, unit)
                .because(format!("better {}, by (4 d + 1)/2 in", unit.text(better)))
                .work(format!(
                    "2 d = 2 × {} = {} {}",
                    text(hole),
                    text(chain_gap(hole)),
                    unit.name()
                ))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::angle::hypot;
    use crate::units::print::decimal;

    /// P 3, D 0.875: 0.99 + 0.58625 = 1.57625 in. At 1.2: 100 (3 − 1.238700 × 0.875)/3 = 63.87 % in place of 70.83 %.
    #[test]
    fn by_hand_rows_too_close() {
        let (p, d) = (Length::inches(3.0), Length::inches(0.875));
        let prescribed = zig_zag_gap(p, d);
        assert_eq!(decimal(prescribed.to_inches(), 5), "1.57625");
        assert_eq!(
            decimal(
                plate_percent_at_gap(p, d, Length::inches(1.2), prescribed),
                2
            ),
            "63.87"
        );
        assert_eq!(
            decimal(plate_percent_at_gap(p, d, prescribed, prescribed), 2),
            "70.83"
        );
        assert!(chain_gap(d).same_as(Length::inches(1.75)));
    }

    /// P 150, D 30 mm: full rows 24.75 + 20.1 = 44.85, an outer row of half the rivets 30 + 34.5 = 64.5 mm from the next.
    #[test]
    fn by_hand_full_rows_of_150_pitch() {
        let (p, d) = (Length::mm(150.0), Length::mm(30.0));
        assert_eq!(decimal(full_row_gap(p, d).to_mm(), 2), "44.85");
        assert_eq!(decimal(outer_row_gap(p, d).to_mm(), 2), "64.50");
    }

    /// √((33 + 3.5)(3 + 3.5))/10 = √237.25/10 = 1.5403 in, which is less than regulation 184's 1.576.
    #[test]
    fn by_hand_board_of_trade_is_the_closer() {
        let (p, d) = (Length::inches(3.0), Length::inches(0.875));
        assert_eq!(decimal(board_of_trade_gap(p, d).to_inches(), 4), "1.5403");
        assert!(board_of_trade_gap(p, d) < zig_zag_gap(p, d));
        assert!(board_of_trade_better_chain_gap(d).same_as(Length::inches(2.25)));
    }

    proptest::proptest! {
        /// Gap, half the pitch and diagonal make a right-angled triangle, exactly.
        #[test]
        fn holds_board_of_trade_triangle(p in 20.0..200.0f64, share in 0.1..0.9f64) {
            let (p, d) = (Length::mm(p), Length::mm(p * share));
            let slant = hypot(board_of_trade_gap(p, d).to_mm(), p.to_mm() / 2.0);
            proptest::prop_assert!(Length::mm(slant).same_as(board_of_trade_diagonal(p, d)));
        }
    }
}
