//! One rule a file; each compares the design with its source and reports findings. Never draws, reads files or alters the design.
//!
//! A rule *judges* where the spec's `judged_by` names it, or names the rule set of its source, or where the limit is the works'
//! own; what it says otherwise is a note. Nothing passes by silence: a figure that is wanted and not given is *not judged*.

pub mod area_above_tubes;
mod area_held;
mod as_made;
pub mod as_read;
pub mod breathing_space;
pub mod cold_strain;
pub mod concession;
pub mod cut_limits;
pub mod diagonal_stay;
pub mod drum_ligaments;
pub mod end_load;
pub mod end_seam;
mod finding;
pub mod flange_radius;
pub mod flanged_mouth;
pub mod head_room;
pub mod heating_surface;
pub mod hole_growth;
pub mod judged_by;
pub mod land;
pub mod largest_circle;
pub mod legend;
pub mod ligament_at_stage;
pub mod ligament_efficiency;
pub mod longitudinal_stay;
pub mod measure;
mod metal_there;
pub mod mixed_holes;
pub mod old_sizes;
pub mod other_ligaments;
pub mod pairs;
mod repair_metal;
pub mod rivet_edge;
pub mod rivet_joint;
pub mod rivet_pitch;
pub mod rivet_rows;
pub mod roof_girders;
pub mod screwed_stay;
pub mod source;
pub mod stay_core;
pub mod stay_stress;
pub mod stay_tube;
pub mod stayed_surface;
pub mod stayed_surface_rectangular;
pub mod telltale;
pub mod test_pressure;
pub mod thickness_readings;
pub mod tube_hole_clearance;
pub mod tube_ligament;
pub mod tube_ligament_alternative;
pub mod tube_plate_thickness;
mod verdict_changes;
pub mod washer_room;
pub mod weld_repair;

pub use as_made::{CheckedAgain, Effect, Effects, check_again, effect_words, effects};
pub use finding::{Finding, Input, Source, Standing, Verdict};
pub use judged_by::check_names;
pub use legend::{Legend, cautions, legend};
pub use verdict_changes::{VerdictChange, verdict_changes};

use crate::design::Design;
use crate::spec::{Metal, Spec, Written};

/// A rule: its name as printed, what it asks, its principal source, and how it looks at a design.
pub struct Rule {
    /// As printed on the design check sheet, as `judged_by` names it, and the name of its file.
    pub name: &'static str,
    /// What it asks, in words.
    pub asks: &'static str,
    /// Its principal source; a finding may name another.
    pub source: &'static Source,
    /// Gathers what it needs from the design and reports.
    pub run: fn(&Written, &Design) -> Vec<Finding>,
    /// Its own file, whose first page says what it covers and leaves.
    pub page: &'static str,
}

impl Rule {
    /// A finding of this rule against its principal source: a note, until something is compared.
    pub fn finding(&self, place: impl Into<String>) -> Finding {
        self.finding_by(self.source, place)
    }

    /// A finding of this rule against another source.
    pub fn finding_by(&self, source: &Source, place: impl Into<String>) -> Finding {
        Finding {
            rule: self.name,
            asks: self.asks,
            source: source.cite.to_string(),
            set: source.set,
            place: place.into(),
            inputs: Vec::new(),
            required: None,
            provided: None,
            unit: "",
            at_most: false,
            is_pressure: false,
            read_in: None,
            verdict: Verdict::Note,
            why: String::new(),
            working: Vec::new(),
        }
    }

    /// A finding of this rule against a limit of the works' own, with its origin.
    pub fn finding_of_works(&self, origin: &str, place: impl Into<String>) -> Finding {
        Finding {
            source: format!("works' own limit: {origin}"),
            ..self.finding_by(&source::WORKS, place)
        }
    }
}

/// Every rule, in the order of the design check sheet.
pub const REGISTER: &[&Rule] = &[
    &judged_by::RULE,
    &tube_ligament::RULE,
    &tube_ligament_alternative::RULE,
    &hole_growth::RULE,
    &ligament_at_stage::RULE,
    &mixed_holes::RULE,
    &other_ligaments::RULE,
    &tube_plate_thickness::RULE,
    &ligament_efficiency::RULE,
    &drum_ligaments::RULE,
    &cut_limits::RULE,
    &tube_hole_clearance::RULE,
    &land::RULE,
    &washer_room::RULE,
    &breathing_space::RULE,
    &largest_circle::RULE,
    &area_above_tubes::RULE,
    &stay_stress::RULE,
    &longitudinal_stay::RULE,
    &screwed_stay::RULE,
    &stay_tube::RULE,
    &diagonal_stay::RULE,
    &stayed_surface::RULE,
    &stayed_surface_rectangular::RULE,
    &roof_girders::RULE,
    &telltale::RULE,
    &flanged_mouth::RULE,
    &flange_radius::RULE,
    &cold_strain::RULE,
    &rivet_edge::RULE,
    &rivet_pitch::RULE,
    &rivet_rows::RULE,
    &head_room::RULE,
    &rivet_joint::RULE,
    &end_seam::RULE,
    &end_load::RULE,
    &old_sizes::RULE,
    &heating_surface::RULE,
    &thickness_readings::RULE,
    &weld_repair::RULE,
    &test_pressure::RULE,
    &concession::RULE,
];

/// Runs every rule of the register on a design, lets only the rules named judge, and applies the concessions.
pub fn run_checks(spec: &Spec, design: &Design) -> Vec<Finding> {
    let written = &spec.written;
    let mut findings: Vec<Finding> = REGISTER
        .iter()
        .flat_map(|rule| (rule.run)(written, design))
        .collect();
    for finding in &mut findings {
        if judged_by::wants_pressure(finding, written) {
            judged_by::for_want_of_pressure(finding);
        } else {
            judged_by::note_unless_named(finding, &written.judged_by);
        }
    }
    findings.extend(judged_by::idle_words(&findings, &written.judged_by));
    concession::concede(&mut findings, &written.concessions);
    let units = as_read::ReadIn::of_job(written);
    let restated = |finding: Finding| {
        let finding = finding.read_in(units);
        match finding.restated() {
            Some(line) => finding.work(line),
            None => finding,
        }
    };
    findings.into_iter().map(restated).collect()
}

/// The rule of this name, or the nearest name that there is.
pub fn rule_or_nearest(name: &str) -> Result<&'static Rule, &'static str> {
    let names: Vec<&'static str> = REGISTER.iter().map(|rule| rule.name).collect();
    rule_named(name.trim()).ok_or_else(|| judged_by::nearest(name, &names))
}

/// The rule of this name.
pub fn rule_named(name: &str) -> Option<&'static Rule> {
    REGISTER.iter().copied().find(|rule| rule.name == name)
}

/// Why a rule written for steel plates cannot be compared with this plate, with the key that would settle it.
pub(crate) fn why_not_steel(written: &Written) -> Option<String> {
    match written.plate.material.as_ref().map(|m| m.metal) {
        Some(Metal::Steel) => None,
        Some(Metal::Iron) => {
            Some("the rule is for steel and `plate.material.metal` is iron".to_string())
        }
        Some(Metal::Copper) => {
            Some("the rule is for steel and `plate.material.metal` is copper".to_string())
        }
        None => Some("`plate.material` is not given, and the rule is for steel".to_string()),
    }
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;
    use std::fs;

    use super::*;

    #[test]
    fn holds_every_rule_has_a_source_a_page_and_its_own_name() {
        let mut names = BTreeSet::new();
        for rule in REGISTER {
            assert!(
                names.insert(rule.name),
                "{} stands in the register twice",
                rule.name
            );
            assert!(
                !rule.asks.is_empty() && !rule.source.cite.is_empty(),
                "{}",
                rule.name
            );
            for heading in ["Source:", "Covers:", "Leaves:"] {
                assert!(rule.page.contains(heading), "{}: no {heading}", rule.name);
            }
        }
    }

    #[test]
    fn holds_a_rule_is_found_by_its_name() {
        for rule in REGISTER {
            assert_eq!(
                rule_named(rule.name).map(|found| found.name),
                Some(rule.name)
            );
        }
        assert!(rule_named("tube_ligaments").is_none());
        assert_eq!(
            rule_or_nearest("tube_ligaments").err(),
            Some("tube_ligament")
        );
        assert_eq!(rule_or_nearest(" land ").map(|rule| rule.name), Ok("land"));
    }

    #[test]
    fn refuses_a_rule_outside_the_register() {
        let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/src/checks");
        for entry in fs::read_dir(folder).expect("the folder of the rules") {
            let path = entry.expect("a file").path();
            let text = fs::read_to_string(&path).expect("a source file");
            let stem = path
                .file_stem()
                .expect("a name")
                .to_string_lossy()
                .into_owned();
            if stem != "mod" && text.contains("pub const RULE: Rule") {
                let rule = rule_named(&stem);
                assert!(rule.is_some(), "{stem} is a rule and not in the register");
            }
        }
    }
}
