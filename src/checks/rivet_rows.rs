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
//! Covers:  joints of two rows and more. The Board of Trade's zig-zag gap is the smaller: 1.540 in against 1.576 in at a pitch of 3 in.
//! Leaves:  the flange of a tube plate, which has one row.

use super::{Finding, Rule, source};
use crate::design::Design;
use crate::spec::{Kind, Written};
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

fn run(written: &Written, _: &Design) -> Vec<Finding> {
    match written.plate.kind {
        // One row only.
        Kind::SmokeboxTubePlate => Vec::new(),
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
