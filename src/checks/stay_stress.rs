//! Stress at the thread root of stays.
//!
//! ```text
//! stress = load/net area ≤ 7,500 psi   firebox and combustion-chamber stays
//!                        ≤ 9,000 psi   round, rectangular or gusset braces
//!          net area = π/4 (D − 1.28/N)² less the telltale hole        D  over threads, in       N  threads to the inch
//! ```
//!
//! Source:  49 CFR 230.25; or the stress that the works allows under `stay.allowed_stress`, with its origin.
//! Covers:  stays on an even pitch, which carry the pressure on the rectangle of their pitches, and stays above the tubes, which share
//!          the load of `area_above_tubes` by their net areas; the higher stress is compared. Threads of Whitworth form.
//!          Regulations 585 and 587 allow other stresses; the lower is named as the lower, and never passed over in silence.
//! Leaves:  bending of the stay, wastage in the water, and the fastening of its ends.

use super::area_above_tubes::{AboveTheTubes, above_the_tubes};
use super::area_held::by_pitch;
use super::measure::{figure, rounded};
use super::stay_core::{StayGroup, core_lines, net_area_in2, round_in2, stay_groups};
use super::{Finding, Rule, source};
use crate::design::Design;
use crate::spec::{StayKind, StaySpec, Written};
use crate::units::{Length, Stress};

/// The rule.
pub const RULE: Rule = Rule {
    name: "stay_stress",
    asks: "stress at the thread root of stays",
    source: &source::CFR_230_25,
    run,
    page: include_str!("stay_stress.rs"),
};

/// Most stress on the net area of a stay of this kind, psi, 49 CFR 230.25.
pub fn most_stress_psi(kind: StayKind) -> f64 {
    match kind {
        StayKind::Firebox => 7_500.0,
        StayKind::Longitudinal | StayKind::Palm | StayKind::Diagonal => 9_000.0,
    }
}

/// Load that a round section of this diameter carries at this stress, lb.
pub fn load_at_stress_lb(stress: Stress, diameter: Length) -> f64 {
    stress.to_psi() * round_in2(diameter)
}

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    let groups = stay_groups(written, design);
    let above = above_the_tubes(written, design);
    let of_group = |group: &StayGroup| of_group(written, design, &above, group);
    groups.iter().flat_map(of_group).collect()
}

/// The stress on the stays of a group, with how it was come by.
struct Stressed {
    psi: f64,
    place: String,
    because: String,
    lines: Vec<String>,
}

fn of_group(
    written: &Written,
    design: &Design,
    above: &Result<AboveTheTubes, String>,
    group: &StayGroup,
) -> Vec<Finding> {
    let silent = |why: String| RULE.finding(group.group.name.clone()).not_judged(why);
    let Some(stay) = group.stay else {
        return vec![silent(format!("`{}.stay` is not given", group.group.path))];
    };
    let pitch = by_pitches(written, design, group, stay);
    let shared = match above {
        Ok(above) => shared(above, group),
        Err(why) => Err(why.clone()),
    };
    match (pitch, shared) {
        (Some(pitch), Ok(Some((_, shared)))) if shared.psi > pitch.psi => compared(stay, &shared),
        (Some(pitch), _) => compared(stay, &pitch),
        (None, Ok(Some((counted, shared)))) => {
            let mut findings = compared(stay, &shared);
            let beside = group.holes(design).count() - counted;
            if beside > 0 {
                findings.push(silent(beside_the_tubes(beside, design, group)));
            }
            findings
        }
        (None, Ok(None)) => {
            let count = group.holes(design).count();
            vec![silent(beside_the_tubes(count, design, group))]
        }
        (None, Err(why)) => vec![silent(why)],
    }
}

fn beside_the_tubes(beside: usize, design: &Design, group: &StayGroup) -> String {
    format!(
        "{beside} of {} stays do not stand above the tubes, and the area that each holds is not known to this program",
        group.holes(design).count()
    )
}

/// The load of the pressure on the rectangle of its pitches, on one stay.
fn by_pitches(
    written: &Written,
    design: &Design,
    group: &StayGroup,
    stay: &StaySpec,
) -> Option<Stressed> {
    let pressure = written.working_pressure.as_ref()?.value().to_psi();
    let held = by_pitch(design, |area| group.has(design, area.hole))?;
    let (load_lb, net_in2) = (pressure * held.in2, net_area_in2(stay));
    let psi = load_lb / net_in2;
    Some(Stressed {
        psi,
        place: group.group.name.clone(),
        because: held.because,
        lines: held
            .lines
            .into_iter()
            .chain([format!(
                "stress = {} psi × {} in²/{} in² = {} psi",
                figure(pressure),
                figure(held.in2),
                figure(net_in2),
                rounded(psi, 0)
            )])
            .collect(),
    })
}

/// The load above the tubes, shared by all stays there by their net areas, with how many of the group's stays are among them.
fn shared(above: &AboveTheTubes, group: &StayGroup) -> Result<Option<(usize, Stressed)>, String> {
    let is_own = |(g, _): &&(StayGroup, usize)| g.group.path == group.group.path;
    let Some((_, counted)) = above.stays.iter().find(is_own) else {
        return Ok(None);
    };
    if let Some((bare, _)) = above.stays.iter().find(|(g, _)| g.stay.is_none()) {
        return Err(format!(
            "`{}.stay` is not given, and its stays share the load",
            bare.group.path
        ));
    }
    let each: Vec<(usize, f64)> = above
        .stays
        .iter()
        .filter_map(|(g, n)| Some((*n, net_area_in2(g.stay?))))
        .collect();
    let net_in2: f64 = each.iter().map(|(n, area)| *n as f64 * area).sum();
    let psi = above.load_lb / net_in2;
    let sum: Vec<String> = each
        .iter()
        .map(|(n, area)| format!("{n} × {}", figure(*area)))
        .collect();
    let stressed = Stressed {
        psi,
        place: format!("{counted} {}", group.group.name),
        because: "load above the tubes shared by net area".into(),
        lines: above
            .area_lines()
            .into_iter()
            .chain([
                above.load_line(),
                format!("all = {} = {} in²", sum.join(" + "), figure(net_in2)),
                format!(
                    "stress = {} lb/{} in² = {} psi",
                    rounded(above.load_lb, 0),
                    figure(net_in2),
                    rounded(psi, 0)
                ),
            ])
            .collect(),
    };
    Ok(Some((*counted, stressed)))
}

fn compared(stay: &StaySpec, stressed: &Stressed) -> Vec<Finding> {
    let worked = |finding: Finding| {
        let lines = core_lines(stay)
            .into_iter()
            .chain(stressed.lines.iter().cloned());
        let finding = finding.with("net area of one stay", "", net_area_in2(stay), "in2");
        lines.fold(finding, |finding, line| finding.work(line))
    };
    let published = worked(RULE.finding(stressed.place.clone()))
        .at_most(most_stress_psi(stay.kind), stressed.psi, "psi")
        .because(format!(
            "{}{}; {}",
            stressed.because,
            match stay.telltale {
                Some(_) => ", the core less its tell-tale hole",
                None => "",
            },
            lower_of(stay.kind)
        ));
    let own = stay.allowed_stress.as_ref().map(|allowed| {
        worked(RULE.finding_of_works(&allowed.origin, stressed.place.clone()))
            .at_most(allowed.stress.value().to_psi(), stressed.psi, "psi")
            .because(stressed.because.clone())
    });
    [published].into_iter().chain(own).collect()
}

/// Which of the published stresses is the lower.
fn lower_of(kind: StayKind) -> &'static str {
    match kind {
        StayKind::Firebox => {
            "7,500 psi is the lower; regulation 585 comes to 9,040 psi on a steel core"
        }
        StayKind::Longitudinal | StayKind::Palm | StayKind::Diagonal => {
            "9,000 psi is the lower: regulation 587 comes to 9,995 psi (26 tons) or more on the core"
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::stay_core::core_diameter;

    /// 1 × 11 on 16 in²: core 0.883636 in, 7,500 × 0.613246/16 = 287.5 psi, where regulation 585 gives 346.5: the lower is offered.
    #[test]
    fn by_hand_inch_stay_on_16_square_inches() {
        let core = core_diameter(Length::inches(1.0), 11.0);
        let load = load_at_stress_lb(Stress::psi(most_stress_psi(StayKind::Firebox)), core);
        assert_eq!(rounded(load / 16.0, 1), "287.5");
    }

    /// 49 CFR 230.25: 7,500 psi on firebox stays, 9,000 on braces.
    #[test]
    fn published_stresses() {
        assert_eq!(most_stress_psi(StayKind::Firebox), 7_500.0);
        for brace in [StayKind::Longitudinal, StayKind::Palm, StayKind::Diagonal] {
            assert_eq!(most_stress_psi(brace), 9_000.0);
        }
    }
}
