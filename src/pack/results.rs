//! `results.json`: every figure and finding, for machines. Lengths in mm, x and y in the spec's axes, nothing rounded.

use serde::Serialize;
use serde::ser::{SerializeMap, Serializer};

use super::finding_words::why;
use super::manifest::json;
use super::{CutFile, PackFile};
use crate::checks::{CheckedAgain, Finding, Input, Verdict, VerdictChange};
use crate::cut::Summary;
use crate::design::{
    Design, FilledRecord, FlangeDesign, Hole, LargestCircle, LeastLigament, Point, RivetLine,
};
use crate::spec::{Purpose, Spec};
use crate::units::Length;

/// The results of one plate as a file of the pack. Cut files are those that the gate let through.
pub fn results(
    spec: &Spec,
    design: &Design,
    findings: &[Finding],
    cut_files: &[CutFile],
) -> PackFile {
    file(spec, design, findings, cut_files, None)
}

/// The results of a plate as it was made: the same, and from which record they come. Nothing of it is cut any more.
pub(super) fn results_as_made(
    spec: &Spec,
    checked: &CheckedAgain,
    designed: &Design,
    record: &FilledRecord,
) -> PackFile {
    let blank = record.blank.iter();
    let as_made = AsMadeResult {
        record_sha256: &record.sha256,
        record_printed_for: &record.fingerprint,
        instrument: &record.instrument,
        witness: &record.witness,
        not_recorded: blank
            .map(|&hole| designed.holes[hole].id.as_str())
            .collect(),
        rivets_not_recorded: record.rivets_blank,
        rivets: record
            .rivets
            .iter()
            .map(|rivet| RivetMadeResult {
                id: &rivet.id,
                designed_mm: rivet.designed.value().to_mm(),
                made_mm: rivet.made.value().to_mm(),
            })
            .collect(),
        verdicts_changed: &checked.changed,
    };
    file(spec, &checked.plate, &checked.findings, &[], Some(as_made))
}

fn file(
    spec: &Spec,
    design: &Design,
    findings: &[Finding],
    cut_files: &[CutFile],
    as_made: Option<AsMadeResult<'_>>,
) -> PackFile {
    let job = &spec.written.job;
    let results = Results {
        version: env!("CARGO_PKG_VERSION"),
        fingerprint: spec.short_fingerprint(),
        drawing: &job.drawing,
        revision: &job.revision,
        kind: design.kind.name(),
        view_from: design.view_from.name(),
        as_made,
        holes: design
            .holes
            .iter()
            .enumerate()
            .map(|(i, hole)| hole_result(design, (i, hole)))
            .collect(),
        rivets: design
            .rivets
            .as_ref()
            .map(rivet_results)
            .unwrap_or_default(),
        ligaments: Ligaments {
            least: design
                .least_ligaments
                .iter()
                .map(|least| least_result(design, findings, least))
                .collect(),
        },
        figures: figures(design),
        findings: findings.iter().map(finding_result).collect(),
        cut_files: cut_files.iter().map(cut_file_result).collect(),
    };
    PackFile::new("results.json", json(&results))
}

#[derive(Serialize)]
struct Results<'a> {
    version: &'static str,
    fingerprint: &'a str,
    drawing: &'a str,
    revision: &'a str,
    kind: &'static str,
    view_from: &'static str,
    /// There where the holes are those of the plate as it was made, and then alone.
    #[serde(skip_serializing_if = "Option::is_none")]
    as_made: Option<AsMadeResult<'a>>,
    holes: Vec<HoleResult<'a>>,
    rivets: Vec<RivetResult<'a>>,
    ligaments: Ligaments<'a>,
    figures: Figures,
    findings: Vec<FindingResult<'a>>,
    cut_files: Vec<CutFileResult<'a>>,
}

/// The record from which a plate as it was made comes; rivets stand in the results as designed, and here as measured.
#[derive(Serialize)]
struct AsMadeResult<'a> {
    record_sha256: &'a str,
    record_printed_for: &'a str,
    instrument: &'a str,
    witness: &'a str,
    not_recorded: Vec<&'a str>,
    rivets_not_recorded: usize,
    rivets: Vec<RivetMadeResult<'a>>,
    verdicts_changed: &'a [VerdictChange],
}

#[derive(Serialize)]
struct RivetMadeResult<'a> {
    id: &'a str,
    designed_mm: f64,
    made_mm: f64,
}

#[derive(Serialize)]
struct HoleResult<'a> {
    id: &'a str,
    group: &'a str,
    purpose: &'static str,
    x_mm: f64,
    y_mm: f64,
    finish_mm: f64,
    stages: Vec<StageResult<'a>>,
}

#[derive(Serialize)]
struct StageResult<'a> {
    name: &'a str,
    mm: Option<f64>,
    #[serde(rename = "where")]
    place: &'static str,
}

fn hole_result<'a>(design: &'a Design, (index, hole): (usize, &'a Hole)) -> HoleResult<'a> {
    let group = &design.groups[hole.group];
    // A hole that stands goes through no stage any more.
    let stages = match design.is_made(index) {
        true => &group.stages[..],
        false => &[],
    };
    HoleResult {
        id: &hole.id,
        group: &group.name,
        purpose: group.purpose.name(),
        x_mm: hole.at.x,
        y_mm: hole.at.y,
        finish_mm: hole.finish.value().to_mm(),
        stages: stages
            .iter()
            .map(|stage| StageResult {
                name: &stage.name,
                mm: stage.size.as_ref().map(|size| size.value().to_mm()),
                place: stage.place.name(),
            })
            .collect(),
    }
}

#[derive(Serialize)]
struct RivetResult<'a> {
    id: &'a str,
    line: &'a str,
    angle_deg: Option<f64>,
    run_mm: f64,
    from_edge_mm: f64,
    finish_mm: f64,
    how: &'static str,
}

fn rivet_results(line: &RivetLine) -> Vec<RivetResult<'_>> {
    line.rivets
        .iter()
        .map(|rivet| RivetResult {
            id: &rivet.id,
            line: &line.line,
            angle_deg: Some(rivet.angle_deg),
            run_mm: rivet.run.to_mm(),
            from_edge_mm: line.from_edge_of(rivet.row).to_mm(),
            finish_mm: line.hole.value().to_mm(),
            how: rivet.made.name(),
        })
        .collect()
}

#[derive(Serialize)]
struct Ligaments<'a> {
    least: Vec<LeastResult<'a>>,
}

#[derive(Serialize)]
struct LeastResult<'a> {
    between: [&'static str; 2],
    ids: [&'a str; 2],
    mm: f64,
    required_mm: Option<f64>,
}

fn least_result<'a>(
    design: &'a Design,
    findings: &[Finding],
    least: &LeastLigament,
) -> LeastResult<'a> {
    let (mut first, mut second) = least.ligament.holes;
    let purpose = |hole: usize| design.groups[design.holes[hole].group].purpose;
    if purpose(first) != least.between.0 {
        std::mem::swap(&mut first, &mut second);
    }
    let ids = [first, second].map(|hole| design.holes[hole].id.as_str());
    LeastResult {
        between: [least.between.0.name(), least.between.1.name()],
        ids,
        mm: least.ligament.metal.to_mm(),
        required_mm: required_between(design, findings, least.between),
    }
}

/// Rules that ask for metal between two holes and name the pair with the least margin.
const ASK_FOR_METAL: [&str; 3] = [
    "tube_ligament",
    "tube_ligament_alternative",
    "other_ligaments",
];

/// Metal that the rules which judge ask between holes of these purposes, mm; the most of them where several do.
fn required_between(
    design: &Design,
    findings: &[Finding],
    between: (Purpose, Purpose),
) -> Option<f64> {
    findings
        .iter()
        .filter(|finding| ASK_FOR_METAL.contains(&finding.rule))
        .filter(|finding| purposes_named(design, &finding.place) == Some(between))
        .filter(|finding| match finding.verdict {
            Verdict::Meets | Verdict::Below { .. } | Verdict::Conceded { .. } => true,
            Verdict::NotJudged { .. } | Verdict::Note => false,
        })
        .filter_map(|finding| match finding.unit {
            "mm" => finding.required,
            "in" => finding.required.map(|it| Length::inches(it).to_mm()),
            _ => None,
        })
        .max_by(f64::total_cmp)
}

/// Purposes of the two holes that a finding's place names, in the order of [`Purpose`].
fn purposes_named(design: &Design, place: &str) -> Option<(Purpose, Purpose)> {
    let mut named = place
        .split(|c: char| !c.is_alphanumeric())
        .filter_map(|word| design.holes.iter().find(|hole| hole.id == word))
        .map(|hole| design.groups[hole.group].purpose);
    let (one, other) = (named.next()?, named.next()?);
    Some((one.min(other), one.max(other)))
}

#[derive(Serialize)]
struct Figures {
    tube_count: usize,
    blank_mid_line_mm: Option<f64>,
    blank_equal_area_mm: Option<f64>,
    ring_length_mm: Option<f64>,
    largest_circle_mm: Option<f64>,
    largest_circle_at_mm: Option<[f64; 2]>,
    largest_circle_without_tubes_mm: Option<f64>,
    rivet_count: Option<usize>,
    rivet_pitch_bore_mm: Option<f64>,
    rivet_pitch_outside_mm: Option<f64>,
    end_load_n: Option<f64>,
    plate_mass_kg: Option<f64>,
    ring_mass_kg: Option<f64>,
    blank_mass_kg: Option<f64>,
}

fn figures(design: &Design) -> Figures {
    let (pressed, fabricated) = match &design.flange {
        Some(FlangeDesign::Pressed(pressed)) => (Some(pressed), None),
        Some(FlangeDesign::Fabricated(fabricated)) => (None, Some(fabricated)),
        None => (None, None),
    };
    // A plate that is kept has no blank any more.
    let blank = pressed.filter(|_| !design.kept);
    let circle = design.largest_circle.as_ref();
    let without_tubes = design.largest_circle_without_tubes.as_ref();
    let rivets = design.rivets.as_ref();
    let diameter = |circle: &LargestCircle| circle.diameter.to_mm();
    Figures {
        tube_count: tube_count(design),
        blank_mid_line_mm: blank.map(|flange| flange.blank_mid_line.to_mm()),
        blank_equal_area_mm: blank.map(|flange| flange.blank_equal_area.to_mm()),
        ring_length_mm: fabricated.map(|flange| flange.strip_net.to_mm()),
        largest_circle_mm: circle.map(diameter),
        largest_circle_at_mm: circle.map(|circle| pair(circle.centre)),
        largest_circle_without_tubes_mm: without_tubes.map(diameter),
        rivet_count: rivets.map(|line| line.rivets.len()),
        rivet_pitch_bore_mm: rivets.map(|line| line.pitch_bore.to_mm()),
        rivet_pitch_outside_mm: rivets.map(|line| line.pitch_outside.to_mm()),
        end_load_n: design.figures.end_load_n,
        plate_mass_kg: design.figures.plate_mass_kg,
        ring_mass_kg: design.figures.ring_mass_kg,
        blank_mass_kg: design.figures.blank_mass_kg,
    }
}

/// Holes for tubes; flues, which are another size, stand apart in the table of tubes.
fn tube_count(design: &Design) -> usize {
    design
        .holes
        .iter()
        .filter(|hole| design.groups[hole.group].purpose == Purpose::Tube)
        .count()
}

fn pair(point: Point) -> [f64; 2] {
    [point.x, point.y]
}

#[derive(Serialize)]
struct FindingResult<'a> {
    rule: &'static str,
    source: &'a str,
    #[serde(rename = "where")]
    place: &'a str,
    inputs: Inputs<'a>,
    required: Option<f64>,
    provided: Option<f64>,
    unit: &'static str,
    verdict: &'static str,
    why: String,
}

fn finding_result(finding: &Finding) -> FindingResult<'_> {
    FindingResult {
        rule: finding.rule,
        source: &finding.source,
        place: &finding.place,
        inputs: Inputs(&finding.inputs),
        required: finding.required,
        provided: finding.provided,
        unit: finding.unit,
        verdict: finding.verdict.name(),
        why: why(finding),
    }
}

/// What went into a comparison, by its trade name, in the order of the rule's working.
struct Inputs<'a>(&'a [Input]);

#[derive(Serialize)]
struct InputResult {
    value: f64,
    unit: &'static str,
}

impl Serialize for Inputs<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(Some(self.0.len()))?;
        for input in self.0 {
            map.serialize_entry(
                &input.name,
                &InputResult {
                    value: input.value,
                    unit: input.unit,
                },
            )?;
        }
        map.end()
    }
}

#[derive(Serialize)]
struct CutFileResult<'a> {
    file: &'a str,
    #[serde(flatten)]
    holds: &'a Summary,
    holes_cut: Vec<HolesCutResult<'a>>,
    withheld: Vec<WithheldResult<'a>>,
}

#[derive(Serialize)]
struct HolesCutResult<'a> {
    ids: &'a [String],
    name: &'a str,
    cut_mm: f64,
    finish_mm: f64,
    by: &'a str,
}

#[derive(Serialize)]
struct WithheldResult<'a> {
    ids: &'a [String],
    instead: &'static str,
    why: &'a str,
}

fn cut_file_result(file: &CutFile) -> CutFileResult<'_> {
    CutFileResult {
        file: &file.file.path,
        holds: &file.summary,
        holes_cut: file
            .holes_cut
            .iter()
            .map(|holes| HolesCutResult {
                ids: &holes.ids,
                name: &holes.name,
                cut_mm: holes.cut.to_mm(),
                finish_mm: holes.finish.to_mm(),
                by: &holes.by,
            })
            .collect(),
        withheld: file
            .withheld
            .iter()
            .map(|holes| WithheldResult {
                ids: &holes.ids,
                instead: holes.instead,
                why: &holes.reason,
            })
            .collect(),
    }
}
