//! Room for rivet heads beside the heel or the ring's weld.
//!
//! ```text
//! straight needed = edge + rows + half the head + clearance  pressed flange, up to the tangent of the heel
//!                   rows: from the row nearest the edge to the inner row, none for one row
//! outer weld toe to hole centre ≥ 1.5 D                      fabricated ring: the edge of the barrel's lap    D  rivet hole
//!                               ≥ half the head + clearance  the same, where the works gives both
//! ```
//!
//! Source:  the works' own clearance, given under `rivets.head_clearance` with its origin. Beside a ring the barrel's end stands
//!          1.5 holes beyond the rivets (Indian Boiler Regulations 1950, regulation 184) and must come clear of the weld; the
//!          source of the larger of the two is cited.
//! Covers:  a head of the inner row that must lie on the straight, clear of the bend or the weld; the edge of the barrel's lap beside a ring.
//! Leaves:  room to get the rivet in and to hold it up.

use super::measure::{Unit, figure};
use super::rivet_edge::least_edge;
use super::{Finding, Rule, source};
use crate::design::{Design, FlangeDesign, HeadRoom};
use crate::spec::{RivetLineSpec, Written};
use crate::units::Length;

/// The rule.
pub const RULE: Rule = Rule {
    name: "head_room",
    asks: "room for rivet heads",
    source: &source::WORKS,
    run,
    page: include_str!("head_room.rs"),
};

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    let (Some(rivets), Some(given)) = (&design.rivets, &written.rivets) else {
        return Vec::new();
    };
    let unit = Unit::of_job(written);
    let Some(room) = &rivets.head_room else {
        let missing = match (&given.head_diameter, &given.head_clearance) {
            (None, None) => "`rivets.head_diameter` and `rivets.head_clearance` are not given",
            (None, Some(_)) => "`rivets.head_diameter` is not given",
            (Some(_), None) => "`rivets.head_clearance` is not given",
            (Some(_), Some(_)) => "the flange has no heel or weld to stand clear of",
        };
        return vec![RULE.finding("flange").not_judged(missing)];
    };
    let finding = match &given.head_clearance {
        Some(clearance) if !lap_governs(design, given) => {
            RULE.finding_of_works(&clearance.origin, "flange")
        }
        _ => RULE.finding_by(&source::IBR_184, "ring"),
    };
    let finding = finding
        .at_least_length(room.needed, room.given, unit)
        .because(match lap_governs(design, given) {
            true => "1.5 holes: the edge of the barrel's lap, clear of the outer weld toe".into(),
            false => room.words.clone(),
        });
    let finding = match (&given.head_diameter, &given.head_clearance) {
        (Some(_), Some(_)) => finding,
        _ => finding.also(
            "the head itself is not compared, since `rivets.head_diameter` and `rivets.head_clearance` are not both given",
        ),
    };
    let finding = working(design, given, room, unit)
        .into_iter()
        .fold(finding, |finding, line| finding.work(line));
    vec![finding]
}

/// Whether the edge of the barrel's lap beside a ring asks more than the head and its clearance, or is all that is known.
fn lap_governs(design: &Design, spec: &RivetLineSpec) -> bool {
    let ring = matches!(design.flange, Some(FlangeDesign::Fabricated(_)));
    ring && match (&spec.head_diameter, &spec.head_clearance) {
        (Some(head), Some(clearance)) => {
            let beside_head = head.value() / 2.0 + clearance.size.value();
            beside_head
                .shortfall(least_edge(spec.hole.value()))
                .is_some()
        }
        _ => true,
    }
}

/// How needed and given were reckoned, line by line.
fn working(design: &Design, spec: &RivetLineSpec, room: &HeadRoom, unit: Unit) -> Vec<String> {
    let text = |length: Length| figure(unit.of(length));
    let spaces = spec
        .rows
        .as_ref()
        .map(|rows| (rows.number - 1, rows.apart.value()));
    let rows = spaces.map_or(Length::ZERO, |(number, apart)| f64::from(number) * apart);
    let (rows_word, rows_sum) = match (spaces, &design.flange) {
        (None, _) => ("", String::new()),
        (Some((number, apart)), Some(FlangeDesign::Fabricated(_))) => {
            (" − rows", format!(" − {number} × {}", text(apart)))
        }
        (Some((number, apart)), _) => (" + rows", format!(" + {number} × {}", text(apart))),
    };
    let (head, clearance) = match (&spec.head_diameter, &spec.head_clearance) {
        (Some(head), Some(clearance)) => (head.value(), clearance.size.value()),
        _ => (Length::ZERO, Length::ZERO),
    };
    match &design.flange {
        Some(FlangeDesign::Pressed(_)) => vec![
            format!(
                "needed = edge{rows_word} + half head + clearance = {}{rows_sum} + {}/2 + {} = {} {}",
                text(room.needed - rows - head / 2.0 - clearance),
                text(head),
                text(clearance),
                text(room.needed),
                unit.name()
            ),
            format!("given = straight = {} {}", text(room.given), unit.name()),
        ],
        Some(FlangeDesign::Fabricated(ring)) => vec![
            format!(
                "needed = {} = {} {}",
                if head == Length::ZERO {
                    format!("1.5 × {}", text(spec.hole.value()))
                } else {
                    let (hole, head) = (text(spec.hole.value()), text(head));
                    format!(
                        "the larger of 1.5 × {hole} and {head}/2 + {}",
                        text(clearance)
                    )
                },
                text(room.needed),
                unit.name()
            ),
            format!(
                "given = ring − edge{rows_word} − weld = {} − {}{rows_sum} − {} = {} {}",
                text(ring.ring_width.value()),
                text(spec.from_edge.value()),
                text(ring.toe_on_ring),
                text(room.given),
                unit.name()
            ),
        ],
        None => Vec::new(),
    }
}
