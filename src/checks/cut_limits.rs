//! Holes, and the metal beside them, as the contractor cuts them: against what his process makes clean and leaves sound.
//!
//! ```text
//! hole as cut ≥ least hole        metal between two cuts ≥ least web        metal from a cut to the edge ≥ least edge
//! ```
//!
//! Source:  the works' own settings under `cutting`, with their origin; each a size, or so many thicknesses of the plate.
//! Covers:  every hole that the contractor cuts, at the size that he leaves; the edge is the finished one, so dressing adds to it.
//! Leaves:  holes that are popped or left to be marked out, and a plate that is pressed, in which none is cut. The finished metal
//!          is `tube_ligament` and `land`.

use super::measure::{Unit, figure};
use super::{Finding, Rule, source};
use crate::design::cutter::{Figure, Settings, holes_as_cut};
use crate::design::{Design, Hole, Ligament, survey};
use crate::spec::{Cutting, Written};
use crate::units::Length;

/// The rule.
pub const RULE: Rule = Rule {
    name: "cut_limits",
    asks: "holes and metal as the contractor cuts them",
    source: &source::WORKS,
    run,
    page: include_str!("cut_limits.rs"),
};

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    let Some(cutting) = &written.cutting else {
        return Vec::new();
    };
    let holes = holes_as_cut(written, design);
    let settings = Settings::of(cutting, Some(design.thickness.value()));
    let job = Unit::of_job(written);
    let mut findings = Vec::new();
    if let Some(hole) = smallest(&holes) {
        let place = format!("{} as cut", hole.id);
        let finding = compared(
            cutting,
            place,
            settings.least_hole(),
            hole.ligament_hole,
            "least_hole",
            job,
        );
        let (finish, cut) = (hole.finish.value(), hole.ligament_hole);
        findings.push(
            finding
                .with_length("hole as cut", "d", cut, job)
                .work(format!(
                    "d = {} − {} = {} {}",
                    figure(job.of(finish)),
                    figure(job.of(finish - cut)),
                    figure(job.of(cut)),
                    job.name()
                )),
        );
    }
    if let Some(web) = thinnest(&holes, design) {
        let (a, b) = (&holes[web.holes.0], &holes[web.holes.1]);
        let place = format!("{}–{} as cut", a.id, b.id);
        let finding = compared(
            cutting,
            place,
            settings.least_web(),
            web.metal,
            "least_web",
            job,
        );
        findings.push(
            finding
                .with_length("pitch", "p", web.pitch, job)
                .with_length(format!("hole {}", a.id), "d", a.ligament_hole, job)
                .with_length(format!("hole {}", b.id), "d", b.ligament_hole, job)
                .work(format!(
                    "metal = {} − ({} + {})/2 = {} {}",
                    figure(job.of(web.pitch)),
                    figure(job.of(a.ligament_hole)),
                    figure(job.of(b.ligament_hole)),
                    figure(job.of(web.metal)),
                    job.name()
                )),
        );
    }
    if let Some((hole, metal)) = nearest_the_edge(&holes, design) {
        let place = format!("{} as cut to the edge", hole.id);
        let finding = compared(
            cutting,
            place,
            settings.least_edge(),
            metal,
            "least_edge",
            job,
        );
        let cut = hole.ligament_hole;
        findings.push(
            finding
                .with_length("hole as cut", "d", cut, job)
                .work(format!(
                    "metal = {} − {}/2 = {} {}",
                    figure(job.of(metal + cut / 2.0)),
                    figure(job.of(cut)),
                    figure(job.of(metal)),
                    job.name()
                )),
        );
    }
    findings
}

/// Against the works' figure; a note, with the key that would set one, where there is none.
fn compared(
    cutting: &Cutting,
    place: String,
    least: Option<Figure>,
    provided: Length,
    key: &str,
    job: Unit,
) -> Finding {
    match least {
        Some(least) => RULE
            .finding_of_works(&cutting.origin, place)
            .at_least_length(least.value, provided, job)
            .because(format!("{} by {}", least.words, cutting.process.name())),
        None => RULE
            .finding(place)
            .provides_length(provided, job)
            .because(format!("`cutting.{key}` would set a limit to it")),
    }
}

fn smallest(holes: &[Hole]) -> Option<&Hole> {
    holes
        .iter()
        .min_by(|a, b| a.ligament_hole.total_cmp(&b.ligament_hole))
}

fn thinnest(holes: &[Hole], design: &Design) -> Option<Ligament> {
    let least = survey(holes, &design.groups).least.into_iter();
    least
        .map(|least| least.ligament)
        .min_by(|a, b| a.metal.total_cmp(&b.metal))
}

fn nearest_the_edge<'a>(holes: &'a [Hole], design: &Design) -> Option<(&'a Hole, Length)> {
    let metal = |hole: &Hole| Length::mm(design.edge.depth(hole.at)) - hole.ligament_hole / 2.0;
    holes
        .iter()
        .map(|hole| (hole, metal(hole)))
        .min_by(|a, b| a.1.total_cmp(&b.1))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::set_out;
    use crate::spec::read_spec_file;
    use crate::units::Size;
    use crate::units::print::decimal;

    fn judged(path: &str, change: impl Fn(&mut Cutting)) -> Vec<[String; 4]> {
        let spec = read_spec_file(std::path::Path::new(path)).expect("a demo spec reads");
        let design = set_out(&spec).expect("a demo spec sets out");
        let mut written = spec.written.clone();
        change(written.cutting.as_mut().expect("it is cut"));
        let number = |n: Option<f64>| n.map_or("-".into(), |n| decimal(n, 3));
        run(&written, &design)
            .into_iter()
            .map(|f| {
                let (required, provided) = (number(f.required), number(f.provided));
                [f.place, provided, required, f.verdict.name().into()]
            })
            .collect()
    }

    const HOBTHRUSH: &str = "specs/hobthrush-smokebox.yaml";

    /// Stay 33 − 2 = 31 mm. Row pitch 56.5 − (39 − 2) = 19.5 mm against one thickness, 16 mm. The tubes at (±339, ±98) stand
    /// √(339² + 98²) = 352.881 mm out: 470 − 352.881 − 37/2 = 98.619 mm, against the web's figure, none being written for edges.
    #[test]
    fn by_hand_hobthrush_as_cut() {
        let rows = judged(HOBTHRUSH, |_| {});
        assert_eq!(rows.len(), 3);
        assert_eq!(rows[0][1..], ["31.000", "5.000", "meets"]);
        assert_eq!(rows[1], ["T1–T2 as cut", "19.500", "16.000", "meets"]);
        assert_eq!(rows[2][1..], ["98.619", "16.000", "meets"]);
    }

    /// Two thicknesses are 32 mm, and 19.5 mm of metal stands; 100 mm to an edge, and 98.619. What is exactly asked for meets.
    #[test]
    fn by_hand_too_little_metal_is_below() {
        let rows = judged(HOBTHRUSH, |cutting| {
            cutting.least_web_thicknesses = Some(2.0);
            cutting.least_edge = Some(Size::read("100 mm").expect("a size"));
        });
        assert_eq!(rows[1][1..], ["19.500", "32.000", "below"]);
        assert_eq!(rows[2][1..], ["98.619", "100.000", "below"]);
        let rows = judged(HOBTHRUSH, |cutting| {
            cutting.least_web_thicknesses = None;
            cutting.least_web = Some(Size::read("19.5 mm").expect("a size"));
        });
        assert_eq!(rows[1][1..], ["19.500", "19.500", "meets"]);
    }

    /// A stay of 31 mm becomes a pop where nothing below 35 mm comes out clean: the tube of 37 mm is then the smallest that is cut.
    #[test]
    fn holds_a_hole_that_becomes_a_pop_is_not_compared() {
        let rows = judged(HOBTHRUSH, |cutting| {
            cutting.least_hole = Some(Size::read("35 mm").expect("a size"));
        });
        assert_eq!(rows[0][1..], ["37.000", "35.000", "meets"]);
    }

    #[test]
    fn holds_without_a_setting_the_figure_is_a_note() {
        let rows = judged(HOBTHRUSH, |cutting| {
            cutting.least_hole = None;
            cutting.least_web_thicknesses = None;
        });
        let verdicts: Vec<&str> = rows.iter().map(|row| row[3].as_str()).collect();
        assert_eq!(verdicts, ["note"; 3]);
    }

    #[test]
    fn holds_nothing_is_cut_in_a_plate_to_be_pressed() {
        assert!(judged("specs/marl-hen-smokebox.yaml", |_| {}).is_empty());
        assert!(judged(HOBTHRUSH, |cutting| cutting.holes.clear()).is_empty());
    }
}
