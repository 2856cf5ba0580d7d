//! `propose`: what another pitch, spacing, hole or land would come to, in tubes and in findings. A table, and no decision.

use std::path::Path;

use serde::Serialize;

use super::wrapped::wrapped;
use super::{Outcome, Refused, Said, Status, read_and_set_out, set_out_or_faults};
use crate::checks::measure::Unit;
use crate::checks::{Finding, Verdict, rule_or_nearest, run_checks};
use crate::design::{Design, Varied};
use crate::spec::{Nest, Spec};
use crate::units::print::{inch_fraction, inches, trimmed};
use crate::units::{Length, Size};

/// Steps shown each way of the figure as it is.
const SHOWN: i32 = 4;

/// The nearest figure with nothing below is looked for no further than this many steps each way: an inch in 64ths.
const FURTHEST: i32 = 64;

/// Nor further than so many holes are set out afresh each way: a plate of hundreds is looked at in full, one of thousands nearby only.
const MOST_HOLES: usize = 50_000;

/// What is asked besides the spec.
#[derive(Clone, Copy, Debug, Default)]
pub struct Asked<'a> {
    /// The rule that is to be met; every one that judges where none is named.
    pub rule: Option<&'a str>,
    /// For machines.
    pub json: bool,
    /// Characters in a line of the screen.
    pub width: usize,
}

/// Tries other figures for every nest of a spec, one at a time, and tells what each would come to.
pub fn propose(spec_file: &Path, asked: Asked<'_>) -> Outcome {
    let (spec, design) = read_and_set_out(spec_file)?;
    let rule = match asked.rule {
        None => None,
        Some(name) => Some(named(name)?),
    };
    let mut as_designed = spec.clone();
    as_designed.written.cutting = None;
    let trial = Trial {
        spec: &spec,
        rule,
        as_is: came_to(&as_designed, &design, rule),
        unit: Unit::of_job(&spec.written),
        furthest: furthest(design.holes.len()),
    };
    let mut figures = Vec::new();
    for (index, nest) in spec.written.tubes.iter().enumerate() {
        for figure in Varied::of(nest) {
            figures.extend(trial.figure(index, nest, figure));
        }
    }
    let words = match asked.json {
        true => trial.as_json(&figures),
        false => trial.on_screen(&figures, asked.width),
    };
    Ok(Said {
        words,
        status: Status::Done,
    })
}

/// Steps to look each way on a plate of so many holes.
fn furthest(holes: usize) -> i32 {
    let steps = MOST_HOLES / holes.max(1);
    i32::try_from(steps).map_or(FURTHEST, |steps| steps.clamp(SHOWN, FURTHEST))
}

fn named(name: &str) -> Result<&'static str, Refused> {
    match rule_or_nearest(name) {
        Ok(rule) => Ok(rule.name),
        Err(nearest) => Err(Refused {
            report: format!(
                "refused: there is no rule `{name}`\n   = remedy: did you mean `{nearest}`? `centrepop explain` lists every rule"
            ),
        }),
    }
}

/// What a plate came to.
#[derive(Clone, Debug, Serialize)]
struct CameTo {
    tubes: usize,
    /// Least metal between tubes or flues.
    metal_mm: Option<f64>,
    /// Findings that judge.
    judged: usize,
    /// Findings below that somebody has conceded.
    conceded: usize,
    /// What is below, the furthest place of each rule and source.
    below: Vec<Below>,
}

/// A finding that is below.
#[derive(Clone, Debug, Serialize)]
struct Below {
    rule: &'static str,
    #[serde(rename = "where")]
    place: String,
    has: String,
    asks: String,
}

/// One other figure, and what it would come to or why it cannot be.
#[derive(Clone, Debug, Serialize)]
struct Other {
    size: String,
    size_mm: f64,
    steps: i32,
    came_to: Option<CameTo>,
    refused: Option<String>,
}

impl Other {
    fn has_nothing_below(&self) -> bool {
        self.came_to.as_ref().is_some_and(|c| c.below.is_empty())
    }
}

/// One figure of a nest, with those around it.
#[derive(Clone, Debug, Serialize)]
struct Figure {
    nest: String,
    figure: String,
    as_is: String,
    others: Vec<Other>,
    /// The nearest with nothing below each way, where there is one; the figure itself is not among them.
    nearest_smaller: Option<Other>,
    nearest_larger: Option<Other>,
}

struct Trial<'a> {
    spec: &'a Spec,
    rule: Option<&'static str>,
    as_is: CameTo,
    unit: Unit,
    /// Steps to look each way.
    furthest: i32,
}

fn came_to(spec: &Spec, design: &Design, rule: Option<&str>) -> CameTo {
    let tubes = design.holes.iter();
    let least = design.least_ligaments.iter();
    let metal = least
        .filter(|l| l.between.0.takes_a_tube() && l.between.1.takes_a_tube())
        .map(|l| l.ligament.metal)
        .min_by(Length::total_cmp);
    let findings = run_checks(spec, design);
    let asked_after = |finding: &&Finding| rule.is_none_or(|rule| rule == finding.rule);
    let judges = |finding: &&Finding| {
        matches!(
            finding.verdict,
            Verdict::Meets | Verdict::Below { .. } | Verdict::Conceded { .. }
        )
    };
    let findings: Vec<&Finding> = findings.iter().filter(asked_after).filter(judges).collect();
    let below = findings.iter().filter(|finding| finding.is_below());
    CameTo {
        tubes: tubes
            .filter(|hole| design.groups[hole.group].purpose.takes_a_tube())
            .count(),
        metal_mm: metal.map(Length::to_mm),
        judged: findings.len(),
        conceded: findings
            .iter()
            .filter(|f| matches!(f.verdict, Verdict::Conceded { .. }))
            .count(),
        below: below.map(|finding| told_below(finding)).collect(),
    }
}

fn told_below(finding: &Finding) -> Below {
    let read = finding.as_read();
    Below {
        rule: finding.rule,
        place: finding.place.clone(),
        has: read.provided.unwrap_or_default(),
        asks: read.required.unwrap_or_default(),
    }
}

impl Trial<'_> {
    /// The figures round one of a nest; none where it has none.
    fn figure(&self, index: usize, nest: &Nest, figure: Varied) -> Option<Figure> {
        let size = figure.size(nest)?;
        let at = |steps: i32| self.other(index, nest, figure, size, steps);
        let shown = (-SHOWN..=SHOWN).filter(|&steps| steps != 0);
        let others: Vec<Other> = shown.filter_map(at).collect();
        let nearest = |way: i32| {
            let known = (1..=SHOWN).find_map(|away| {
                let other = others.iter().find(|other| other.steps == way * away);
                other.filter(|other| other.has_nothing_below()).cloned()
            });
            let further = || (SHOWN + 1..=self.furthest).map(|away| at(way * away));
            known.or_else(|| {
                further()
                    .map_while(|other| other)
                    .find(Other::has_nothing_below)
            })
        };
        // Where nothing is below as it is, what can be had further off is of no use to anybody.
        let wanted = !self.as_is.below.is_empty();
        Some(Figure {
            nest: nest.name.clone(),
            figure: figure.name(nest),
            as_is: size.to_string(),
            nearest_smaller: wanted.then(|| nearest(-1)).flatten(),
            nearest_larger: wanted.then(|| nearest(1)).flatten(),
            others,
        })
    }

    /// The figure so many steps off, tried; none where it would be nothing or less.
    fn other(
        &self,
        index: usize,
        nest: &Nest,
        figure: Varied,
        size: &Size,
        steps: i32,
    ) -> Option<Other> {
        let value = size.value() + self.step(figure) * f64::from(steps);
        if value <= Length::ZERO {
            return None;
        }
        let size = self.written(value);
        let mut spec = self.spec.clone();
        spec.written.tubes[index] = figure.put(nest, size.clone());
        put_off(&mut spec, index);
        let tried = set_out_or_faults(&spec);
        let refused = tried
            .as_ref()
            .err()
            .and_then(|faults| faults.first())
            .map(|fault| fault.fact.clone());
        Some(Other {
            size: size.to_string(),
            size_mm: value.to_mm(),
            steps,
            came_to: tried.ok().map(|design| came_to(&spec, &design, self.rule)),
            refused,
        })
    }

    /// A 64th of an inch or half a millimetre; for land, which is no fit, a 16th or a millimetre.
    fn step(&self, figure: Varied) -> Length {
        match (self.unit, figure) {
            (Unit::Inch, Varied::Land(_)) => Length::sixty_fourths(4),
            (Unit::Inch, _) => Length::sixty_fourths(1),
            (Unit::Mm, Varied::Land(_)) => Length::mm(1.0),
            (Unit::Mm, _) => Length::mm(0.5),
        }
    }

    /// A length as it would be written in the spec.
    fn written(&self, value: Length) -> Size {
        let text = match self.unit {
            Unit::Inch if inch_fraction(value).remainder.same_as(Length::ZERO) => {
                format!("{} in", inches(value))
            }
            Unit::Inch => format!("{} in", trimmed(value.to_inches(), 6)),
            Unit::Mm => format!("{} mm", trimmed(value.to_mm(), 6)),
        };
        Size::read(&text).expect("what is printed so can be read")
    }

    fn met(&self) -> String {
        match self.rule {
            Some(rule) => rule.to_string(),
            None => "every rule that judges this job".into(),
        }
    }

    fn on_screen(&self, figures: &[Figure], width: usize) -> String {
        let job = &self.spec.written.job;
        let mut text = wrapped(
            "",
            &format!(
                "{} {}: what other figures would come to, one changed at a time, against {}. A table and no decision: the works decides, and it approves nothing.",
                job.drawing,
                job.revision,
                self.met()
            ),
            width,
        );
        text.push_str(&wrapped(
            "",
            &format!("As it is: {}.", self.told(&self.as_is)),
            width,
        ));
        text.push_str(&wrapped(
            "",
            "Cutting, former pins and the stages of the nest are left aside, and are for the works to set again.",
            width,
        ));
        if figures.is_empty() {
            text.push_str("\nThere is no nest of tubes to change.\n");
        }
        for figure in figures {
            text.push_str(&format!(
                "\n{}: {}, {} as it is\n",
                figure.nest, figure.figure, figure.as_is
            ));
            let wide = figure.others.iter().map(|o| o.size.chars().count()).max();
            for other in &figure.others {
                let pad = wide.unwrap_or(0) - other.size.chars().count();
                let first = format!("  {}{}  ", other.size, " ".repeat(pad));
                text.push_str(&wrapped(&first, &self.words(other), width));
            }
            for line in nearest(figure, &self.as_is, self.furthest) {
                text.push_str(&wrapped("  ", &line, width));
            }
        }
        text
    }

    fn words(&self, other: &Other) -> String {
        match (&other.came_to, &other.refused) {
            (Some(came_to), _) => self.told(came_to),
            (None, Some(fact)) => format!("cannot be: {fact}"),
            (None, None) => "cannot be".into(),
        }
    }

    fn told(&self, came_to: &CameTo) -> String {
        let more = came_to.tubes as i64 - self.as_is.tubes as i64;
        let by = match more {
            0 => String::new(),
            more if more > 0 => format!(" (+{more})"),
            fewer => format!(" (−{})", -fewer),
        };
        let metal = match came_to.metal_mm {
            Some(mm) => format!(", {} between them", self.unit.text(Length::mm(mm))),
            None => String::new(),
        };
        let one = |below: &Below| {
            format!(
                "{}, {}: has {}, asks {}",
                below.rule, below.place, below.has, below.asks
            )
        };
        let below: Vec<String> = came_to.below.iter().map(one).collect();
        let verdict = match (came_to.judged, below.is_empty()) {
            (0, _) => "nothing judged".to_string(),
            (_, true) if came_to.conceded > 0 => {
                format!("nothing below but {} conceded", came_to.conceded)
            }
            (_, true) => "nothing below".to_string(),
            (_, false) => format!("below: {}", below.join("; ")),
        };
        format!("{} tubes{by}{metal}, {verdict}", came_to.tubes)
    }

    fn as_json(&self, figures: &[Figure]) -> String {
        let job = &self.spec.written.job;
        let report = serde_json::json!({
            "version": env!("CARGO_PKG_VERSION"),
            "fingerprint": self.spec.fingerprint,
            "drawing": job.drawing,
            "revision": job.revision,
            "rule": self.rule,
            "as_is": self.as_is,
            "figures": figures,
        });
        let mut text = serde_json::to_string_pretty(&report).expect("a table is plain JSON");
        text.push('\n');
        text
    }
}

/// Puts off what is settled once the figures are: how the holes are cut and where the former's pins stand, and the stages before the
/// last. They would be contradicted by most other figures.
fn put_off(spec: &mut Spec, nest: usize) {
    spec.written.cutting = None;
    spec.written.tubes[nest].stages.clear();
}

/// What would have nothing below, where something is below as it is.
fn nearest(figure: &Figure, as_is: &CameTo, furthest: i32) -> Vec<String> {
    if as_is.below.is_empty() {
        return Vec::new();
    }
    let found = [&figure.nearest_smaller, &figure.nearest_larger];
    let told: Vec<String> = found
        .into_iter()
        .flatten()
        .filter_map(|other| {
            let tubes = other.came_to.as_ref()?.tubes as i64 - as_is.tubes as i64;
            let cost = match tubes {
                0 => "and no tube less".to_string(),
                more if more > 0 => format!("and {more} more tubes"),
                fewer => format!("at a cost of {} tubes", -fewer),
            };
            Some(format!(
                "nearest with nothing below: {}, {cost}",
                other.size
            ))
        })
        .collect();
    match told.is_empty() {
        true => vec![format!(
            "no {} within {furthest} steps has nothing below",
            figure.figure
        )],
        false => told,
    }
}

#[cfg(test)]
mod tests {
    use super::furthest;

    /// 50,000/780 = 64.1 and 50,000/790 = 63.3; 50,000/10,000 = 5; of more, no less than is shown.
    #[test]
    fn by_hand_steps_on_plates_of_many_holes() {
        assert_eq!(
            [0, 100, 780, 790, 10_000, 100_000].map(furthest),
            [64, 64, 64, 63, 5, 4]
        );
    }
}
