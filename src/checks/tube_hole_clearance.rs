//! Clearance of a tube in its hole, on the diameter.
//!
//! ```text
//! clearance = hole − outside of the tube where it sits in this plate
//! ```
//!
//! Source:  geometry; judged only against a limit of the works' own.
//! Covers:  every nest that states its tube, by its largest hole. 1/32 in stands in the example of Indian Boiler Regulations 1950, regulation 215;
//!          1/16 in was called usual for American locomotive flues. Tubes expanded 1/8 in have been tried and given up.
//! Leaves:  how far a tube may be expanded, its wall after expanding, and the seat.

use super::measure::{Unit, figure};
use super::{Finding, Rule, source};
use crate::design::Design;
use crate::spec::Written;
use crate::units::Length;

/// The rule.
pub const RULE: Rule = Rule {
    name: "tube_hole_clearance",
    asks: "clearance of a tube in its hole",
    source: &source::GEOMETRY,
    run,
    page: include_str!("tube_hole_clearance.rs"),
};

/// Above this clearance the note says that it is more than was usual.
fn usual() -> Length {
    Length::inches(1.0 / 16.0)
}

/// Clearance on the diameter; negative where the tube is larger than its hole.
pub fn clearance(hole: Length, tube_end: Length) -> Length {
    hole - tube_end
}

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    let mut findings = Vec::new();
    for (index, group) in design.groups.iter().enumerate() {
        if !group.purpose.takes_a_tube() {
            continue;
        }
        let Some(tube) = &group.tube_end else {
            let why = format!("`{}.tube` is not given", group.path);
            findings.push(RULE.finding(group.name.clone()).not_judged(why));
            continue;
        };
        let Some(seat) = loosest(design, index, tube.value()) else {
            continue;
        };
        findings.push(noted(written, &seat));
        if let Some(limit) = &written.own_limits.tube_hole_clearance {
            let finding = RULE.finding_of_works(&limit.origin, seat.place.clone());
            findings.push(figures(finding, written, &seat).at_most_length(
                limit.limit.value(),
                seat.clearance(),
                Unit::of_job(written),
            ));
        }
    }
    findings
}

/// Where the tubes of a nest sit with most clearance.
struct Seat {
    place: String,
    hole: Length,
    tube: Length,
}

impl Seat {
    fn clearance(&self) -> Length {
        clearance(self.hole, self.tube)
    }
}

/// The largest hole of a nest, named where it is not the size of the others.
fn loosest(design: &Design, group: usize, tube: Length) -> Option<Seat> {
    let holes = design.holes.iter().filter(|hole| hole.group == group);
    let largest = holes.reduce(|a, b| match a.finish.value().shortfall(b.finish.value()) {
        Some(_) => b,
        None => a,
    })?;
    let nest = &design.groups[group];
    let place = match largest.finish.value().same_as(nest.finish.value()) {
        true => nest.name.clone(),
        false => format!("{}, {}", nest.name, largest.id),
    };
    Some(Seat {
        place,
        hole: largest.finish.value(),
        tube,
    })
}

fn noted(written: &Written, seat: &Seat) -> Finding {
    let given = seat.clearance();
    let why = if given < Length::ZERO {
        "the tube is larger than its hole".to_string()
    } else if usual().shortfall(given).is_some() {
        "more than the 1/16 in that was usual for locomotive flues: a tube expanded so far is thinned".to_string()
    } else {
        "within the 1/16 in that was usual for locomotive flues".to_string()
    };
    let finding = RULE.finding(seat.place.clone());
    figures(finding, written, seat)
        .provides_length(given, Unit::of_job(written))
        .because(why)
}

fn figures(finding: Finding, written: &Written, seat: &Seat) -> Finding {
    let unit = Unit::of_job(written);
    finding
        .with_length("hole", "", seat.hole, unit)
        .with_length("tube where it sits", "", seat.tube, unit)
        .work(format!(
            "clearance = {} − {} = {} {}",
            figure(unit.of(seat.hole)),
            figure(unit.of(seat.tube)),
            figure(unit.of(seat.clearance())),
            unit.name()
        ))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Example of regulation 215: a 3 1/4 in tube in a 3 9/32 in hole, 1/32 in of clearance.
    #[test]
    fn published_three_and_a_quarter_tube() {
        let given = clearance(Length::inches(3.0 + 9.0 / 32.0), Length::inches(3.25));
        assert!(given.same_as(Length::inches(1.0 / 32.0)));
    }

    /// One hole of the nest opened to 40 mm for a tube end of 38.1: 1.9 mm, and the finding names it.
    #[test]
    fn by_hand_a_hole_opened_further_than_the_others() {
        let path = std::path::Path::new("specs/hobthrush-smokebox.yaml");
        let spec = crate::spec::read_spec_file(path).expect("it reads");
        let mut design = crate::design::set_out(&spec).expect("it sets out");
        let given = |design: &Design| {
            let found = run(&spec.written, design).remove(0);
            (found.place, found.provided.map(|mm| format!("{mm:.3}")))
        };
        assert_eq!(given(&design), ("tubes".into(), Some("0.900".into())));
        design.holes[4].finish = crate::units::Size::read("40 mm").expect("a size");
        assert_eq!(given(&design), ("tubes, T5".into(), Some("1.900".into())));
    }
}
