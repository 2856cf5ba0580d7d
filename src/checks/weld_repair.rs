//! Limits of welded repair in stayed and tubed plates.
//!
//! ```text
//! crack in a stayed plate: wholly inside the stayed area, total ≤ 2 stay pitches
//! weld line in a stayed plate: wholly inside; it may not cross the outer row of stays
//! build-up of a stayed sheet: loss ≤ 40 %, area ≤ 400 in², ≤ 30 in one way, two areas a plate, ≥ 30 in apart
//! girth joint: cracks from hole to hole ≤ 3 in a run, ≤ 6 in all
//! caulking edge: metal left from hole to edge ≥ 1/4 of the hole, ≤ 30 in long
//! build-up of an unstayed area, without leave: ≤ 100 in², ≤ the smaller of 25 % of the required thickness and 1/2 in, never where
//!     less than 60 % of the required thickness is left
//! flush patch on an unstayed part: none without leave
//! ```
//!
//! Source:  46 CFR 59.10 (marine boilers); the last two lines 49 CFR 230.33 (locomotives).
//! Covers:  what `repairs` lists, each limit where it applies. The stayed area is the flat within the outermost stays of a set that
//!          stands in rows and columns; its pitch is the least between neighbouring lines. One way is the longer. Cracks of one
//!          stayed area are taken together. Required thickness is what `survey.required` says of the place. Leave is a
//!          concession in the spec, with who gave it. Clear metal to holes is compared with the works' own limit, where it has one.
//! Leaves:  a new plate, which has no repairs; procedure, welder and heat treatment; wasted flat round a handhole, which 46 CFR 59.10
//!          limits to 40 % and 2 in from its edge, and no key tells; whether stays that stand in no rows make a plate stayed.
//!          British limits were not to be had.

use std::collections::BTreeMap;

use super::measure::{Unit, figure};
use super::repair_metal::{clear_of_holes, clear_of_rivets};
use super::{Finding, Rule, source};
use crate::design::{AmongStays, Design, LeftBy, Repair, RepairWork, between_areas};
use crate::spec::{CaulkingEdgeSpec, GirthCracksSpec, Purpose, Written};
use crate::units::tolerance::SAME_SHARE;
use crate::units::{Length, SQUARE_MM_PER_SQUARE_INCH, Size};

/// The rule.
pub const RULE: Rule = Rule {
    name: "weld_repair",
    asks: "limits of welded repair",
    source: &source::CFR_59_10,
    run,
    page: include_str!("weld_repair.rs"),
};

/// Most total length of cracks wholly inside a stayed area, 46 CFR 59.10.
pub fn longest_crack(stay_pitch: Length) -> Length {
    stay_pitch * 2.0
}

/// Most of the thickness of a stayed sheet that may be lost where it is built up, a share, 46 CFR 59.10.
pub const MOST_LOSS: f64 = 0.40;

/// Most area of a stayed sheet built up in one place, in², 46 CFR 59.10.
pub const MOST_AREA_IN2: f64 = 400.0;

/// Most built-up areas in one stayed plate, 46 CFR 59.10.
pub const MOST_AREAS: u32 = 2;

/// Most size of a built-up area one way, least distance between two of them, and most length of a caulking edge, 46 CFR 59.10.
pub fn thirty_inches() -> Length {
    Length::inches(30.0)
}

/// Most cracks from hole to hole of a girth joint that may be welded, in one run and in all, 46 CFR 59.10.
pub const MOST_GIRTH_CRACKS: (u32, u32) = (3, 6);

/// Least metal from rivet hole to edge that may be built up at a caulking edge, 46 CFR 59.10.
pub fn least_caulking_metal(hole: Length) -> Length {
    hole / 4.0
}

/// Most area of an unstayed part built up without leave, in², 49 CFR 230.33.
pub const MOST_AREA_WITHOUT_LEAVE_IN2: f64 = 100.0;

/// Most build-up of an unstayed area without leave, by thickness, 49 CFR 230.33.
pub fn most_build_up_without_leave(required: Length) -> Length {
    (required * 0.25).min(Length::inches(0.5))
}

/// Least metal left on which an unstayed area may be built up at all, 49 CFR 230.33.
pub fn least_left_to_build_up(required: Length) -> Length {
    required * 0.60
}

fn run(written: &Written, design: &Design) -> Vec<Finding> {
    let mut findings = Vec::new();
    for repair in &design.repairs {
        findings.extend(of_repair(written, design, repair));
        findings.extend(clear_of_holes(written, design, repair));
        findings.extend(clear_of_rivets(written, repair));
    }
    findings.extend(cracks_of_each_stayed_area(design));
    findings.extend(areas_of_the_plate(design));
    findings
}

fn of_repair(written: &Written, design: &Design, repair: &Repair) -> Vec<Finding> {
    match &repair.work {
        RepairWork::BuildUp { .. } => build_up(written, design, repair),
        RepairWork::Crack => vec![crack(design, repair)],
        RepairWork::Line { let_in } => line(design, repair, *let_in),
        RepairWork::GirthCracks(cracks) => girth_cracks(repair, *cracks),
        RepairWork::CaulkingEdge(edge) => caulking_edge(design, repair, edge),
    }
}

fn name(design: &Design, group: usize) -> &str {
    &design.groups[group].name
}

fn ids(design: &Design, holes: impl Iterator<Item = usize>) -> String {
    let ids: Vec<&str> = holes.map(|hole| design.holes[hole].id.as_str()).collect();
    ids.join(", ")
}

/// What is said of the holes of a repair: stays are renewed, others are reamed, or drilled in the piece let in.
fn stays_and_holes(design: &Design, repair: &Repair) -> String {
    let of = |stays: bool| {
        let holes = repair.holes_in_it.iter().copied();
        let is_stay =
            |hole: &usize| design.groups[design.holes[*hole].group].purpose == Purpose::Stay;
        ids(design, holes.filter(|hole| is_stay(hole) == stays))
    };
    let others = match repair.work {
        RepairWork::Line { .. } => "holes in the new piece",
        _ => "holes are reamed after welding",
    };
    let words = [("stays in it are renewed", of(true)), (others, of(false))];
    let words = words.iter().filter(|(_, ids)| !ids.is_empty());
    words
        .map(|(what, ids)| format!("{what}: {ids}"))
        .collect::<Vec<_>>()
        .join("; ")
}

/// The limits of a built-up area, by where it lies.
fn build_up(written: &Written, design: &Design, repair: &Repair) -> Vec<Finding> {
    let RepairWork::BuildUp {
        sizes,
        area_mm2,
        left,
        required,
    } = &repair.work
    else {
        return Vec::new();
    };
    let area = BuiltUp {
        repair,
        sizes,
        area_in2: area_mm2 / SQUARE_MM_PER_SQUARE_INCH,
        left: *left,
        required: required.as_ref(),
        plate: written.plate.thickness.value(),
    };
    let mut findings = match repair.among_stays {
        AmongStays::Within { .. } => area.in_stayed_sheet(design),
        AmongStays::Across { group, .. } => vec![RULE.finding(repair.name.clone()).not_judged(format!(
            "the area lies across the outer row of {}, and the limits of a stayed sheet are for one that lies wholly within it",
            name(design, group)
        ))],
        AmongStays::Clear => vec![RULE.finding(repair.name.clone()).not_judged(
            "the area lies within no stays that stand in rows and columns, and the limits are those of a stayed sheet",
        )],
    };
    match repair.among_stays {
        AmongStays::Within { .. } => findings.push(left_to_practice(repair)),
        AmongStays::Across { .. } | AmongStays::Clear => findings.extend(area.in_unstayed_part()),
    }
    findings
}

/// 49 CFR 230.33 sets no figure for stayed parts.
fn left_to_practice(repair: &Repair) -> Finding {
    RULE.finding_by(&source::CFR_230_33, repair.name.clone()).because(
        "a stayed part: repaired by established practice or a national code, for which the rule has no figure",
    )
}

/// A built-up area with what its limits are worked from.
struct BuiltUp<'a> {
    repair: &'a Repair,
    sizes: &'a (Size, Size),
    area_in2: f64,
    left: Option<(Length, LeftBy)>,
    required: Option<&'a (Size, Size)>,
    plate: Length,
}

impl BuiltUp<'_> {
    fn place(&self, what: &str) -> String {
        format!("{}, {what}", self.repair.name)
    }

    /// Why what is left cannot be compared.
    fn left_is_wanting(&self) -> String {
        format!(
            "`{}.weld.build_up.metal_left` is not given, and no reading of the survey stands in the area",
            self.repair.path
        )
    }

    fn left_by(&self, by: LeftBy) -> String {
        match by {
            LeftBy::Spec => "metal left as the spec gives it".into(),
            LeftBy::Reading(number) => {
                format!("metal left by reading {number}, the least in the area")
            }
        }
    }

    fn area_line(&self) -> String {
        let (wide, high) = (
            self.sizes.0.value().to_inches(),
            self.sizes.1.value().to_inches(),
        );
        match self.is_round() {
            true => format!(
                "area = π/4 × {}² = {} in²",
                figure(wide),
                figure(self.area_in2)
            ),
            false => format!(
                "area = {} × {} = {} in²",
                figure(wide),
                figure(high),
                figure(self.area_in2)
            ),
        }
    }

    fn is_round(&self) -> bool {
        let box_mm2 = self.sizes.0.value().to_mm() * self.sizes.1.value().to_mm();
        self.area_in2 * SQUARE_MM_PER_SQUARE_INCH < box_mm2 * (1.0 - SAME_SHARE)
    }

    fn in_stayed_sheet(&self, design: &Design) -> Vec<Finding> {
        let longest = self.sizes.0.value().max(self.sizes.1.value());
        vec![
            self.loss(),
            RULE.finding(self.place("area"))
                .at_most(MOST_AREA_IN2, self.area_in2, "in2")
                .because(stays_and_holes(design, self.repair))
                .work(self.area_line()),
            RULE.finding(self.place("one way"))
                .at_most_length(thirty_inches(), longest, Unit::Inch)
                .because("the longer way")
                .work(format!("{} in, at most 30 in", figure(longest.to_inches()))),
        ]
    }

    fn loss(&self) -> Finding {
        let finding = RULE.finding(self.place("thickness lost"));
        let Some((left, by)) = self.left else {
            return finding.not_judged(self.left_is_wanting());
        };
        let share = (self.plate - left) / self.plate;
        finding
            .with_length("thickness as made", "", self.plate, Unit::Inch)
            .with_length("metal left", "", left, Unit::Inch)
            .at_most(MOST_LOSS * 100.0, share * 100.0, "%")
            .because(self.left_by(by))
            .work(format!(
                "({} − {})/{} = {} %",
                figure(self.plate.to_inches()),
                figure(left.to_inches()),
                figure(self.plate.to_inches()),
                figure(share * 100.0)
            ))
    }

    fn in_unstayed_part(&self) -> Vec<Finding> {
        let finding = |what: &str| RULE.finding_by(&source::CFR_230_33, self.place(what));
        let area = finding("area, without leave")
            .at_most(MOST_AREA_WITHOUT_LEAVE_IN2, self.area_in2, "in2")
            .because(NOT_STAYED)
            .work(self.area_line());
        let (laid, left) = (
            finding("thickness laid, without leave"),
            finding("metal left"),
        );
        let wanting = match (self.left, self.required) {
            (None, _) => self.left_is_wanting(),
            (_, None) => "`survey.required` says nothing of the area".to_string(),
            (Some((metal, by)), Some(required)) => {
                return vec![
                    area,
                    self.laid(laid, metal, &required.0),
                    self.enough(left, (metal, by), &required.1),
                ];
            }
        };
        vec![
            area,
            laid.not_judged(wanting.clone()),
            left.not_judged(wanting),
        ]
    }

    fn laid(&self, finding: Finding, left: Length, required: &Size) -> Finding {
        let (laid, most) = (
            self.plate - left,
            most_build_up_without_leave(required.value()),
        );
        let t = required.value().to_inches();
        finding
            .with_length("required thickness", "", required.value(), Unit::Inch)
            .at_most_length(most, laid, Unit::Inch)
            .because("built up to the thickness as made")
            .work(format!(
                "smaller of 0.25 × {} = {} in and 0.5 in",
                figure(t),
                figure(t * 0.25)
            ))
            .work(format!(
                "laid {} − {} = {} in",
                figure(self.plate.to_inches()),
                figure(left.to_inches()),
                figure(laid.to_inches())
            ))
    }

    fn enough(&self, finding: Finding, (left, by): (Length, LeftBy), required: &Size) -> Finding {
        let least = least_left_to_build_up(required.value());
        finding
            .with_length("required thickness", "", required.value(), Unit::Inch)
            .at_least_length(least, left, Unit::Inch)
            .because(format!("less is never built up; {}", self.left_by(by)))
            .work(format!(
                "0.60 × {} = {} in; left {} in",
                figure(required.value().to_inches()),
                figure(least.to_inches()),
                figure(left.to_inches())
            ))
    }
}

/// How a part counts as unstayed.
const NOT_STAYED: &str = "an unstayed part: not wholly within stays that stand in rows and columns; leave is a concession with who gave it";

fn crosses_the_outer_row(design: &Design, repair: &Repair, group: usize, times: usize) -> Finding {
    RULE.finding(format!("{}, outer row of stays", repair.name))
        .at_most(0.0, times as f64, "")
        .because(format!(
            "times that the weld crosses the outer row of {}; it must lie wholly inside",
            name(design, group)
        ))
        .work(format!(
            "crossings of the line round the outermost stays: {times}"
        ))
}

fn crack(design: &Design, repair: &Repair) -> Finding {
    let holes = repair.holes_in_it.iter().copied();
    let from_tubes = holes.clone().any(|hole| {
        design.groups[design.holes[hole].group]
            .purpose
            .takes_a_tube()
    });
    match repair.among_stays {
        AmongStays::Within { group, .. } => crosses_the_outer_row(design, repair, group, 0),
        AmongStays::Across { group, times } => crosses_the_outer_row(design, repair, group, times),
        AmongStays::Clear if from_tubes => RULE.finding(repair.name.clone()).because(format!(
            "cracked ligaments of a flat tube plate may be welded; the holes are reamed and the weld ground flush after: {}",
            ids(design, holes)
        )),
        AmongStays::Clear => RULE.finding(repair.name.clone()).not_judged(
            "the crack lies within no stays that stand in rows and columns and starts from no tube hole: no limit known to this program covers it",
        ),
    }
}

/// Cracks of each stayed area together, against two of its pitches.
fn cracks_of_each_stayed_area(design: &Design) -> Vec<Finding> {
    let mut areas: BTreeMap<usize, (Length, Vec<&Repair>)> = BTreeMap::new();
    for repair in &design.repairs {
        if let (RepairWork::Crack, AmongStays::Within { group, pitch }) =
            (&repair.work, repair.among_stays)
        {
            areas
                .entry(group)
                .or_insert((pitch, Vec::new()))
                .1
                .push(repair);
        }
    }
    let total = |(group, (pitch, cracks)): (usize, (Length, Vec<&Repair>))| {
        let lengths: Vec<String> = cracks
            .iter()
            .map(|r| figure(r.length.to_inches()))
            .collect();
        let all = Length::mm(cracks.iter().map(|r| r.length.to_mm()).sum());
        let names: Vec<&str> = cracks.iter().map(|r| r.name.as_str()).collect();
        RULE.finding(format!(
            "{} within {}",
            names.join(", "),
            name(design, group)
        ))
        .with_length("least pitch of the stays", "p", pitch, Unit::Inch)
        .at_most_length(longest_crack(pitch), all, Unit::Inch)
        .because("total length of the cracks of one stayed area, against two pitches")
        .work(format!(
            "2 p = 2 × {} = {} in",
            figure(pitch.to_inches()),
            figure(pitch.to_inches() * 2.0)
        ))
        .work(format!(
            "cracks {} = {} in",
            lengths.join(" + "),
            figure(all.to_inches())
        ))
    };
    areas.into_iter().map(total).collect()
}

fn line(design: &Design, repair: &Repair, let_in: bool) -> Vec<Finding> {
    let mut findings = match repair.among_stays {
        AmongStays::Within { group, .. } => vec![crosses_the_outer_row(design, repair, group, 0)],
        AmongStays::Across { group, times } => {
            vec![crosses_the_outer_row(design, repair, group, times)]
        }
        AmongStays::Clear => vec![RULE.finding(repair.name.clone()).because(
            "the weld runs clear of stays that stand in rows and columns; a wasted part of a flat tube plate may be replaced by a new section",
        )],
    };
    let Some(area) = repair.renews.as_ref().filter(|_| let_in) else {
        return findings;
    };
    let area_in2 = area.area_mm2() / SQUARE_MM_PER_SQUARE_INCH;
    let holes = stays_and_holes(design, repair);
    if !holes.is_empty() {
        findings[0] = findings[0].clone().also(holes);
    }
    findings.push(match repair.among_stays {
        AmongStays::Within { .. } => left_to_practice(repair),
        AmongStays::Across { .. } | AmongStays::Clear => RULE
            .finding_by(
                &source::CFR_230_33,
                format!("{}, let in without leave", repair.name),
            )
            .at_most(0.0, area_in2, "in2")
            .because(NOT_STAYED)
            .work(format!(
                "piece let in, as the face shows it: {} in²; of any size it wants leave",
                figure(area_in2)
            )),
    });
    findings
}

/// How many areas of stayed sheet are built up, and how far each two lie apart.
fn areas_of_the_plate(design: &Design) -> Vec<Finding> {
    let stayed: Vec<&Repair> = design
        .repairs
        .iter()
        .filter(|repair| {
            matches!(repair.work, RepairWork::BuildUp { .. })
                && matches!(repair.among_stays, AmongStays::Within { .. })
        })
        .collect();
    if stayed.len() < 2 {
        return Vec::new();
    }
    let count = stayed.len();
    let mut findings = vec![
        RULE.finding("built-up areas of stayed sheet")
            .at_most(f64::from(MOST_AREAS), count as f64, "")
            .work(format!("{count} areas, at most {MOST_AREAS}")),
    ];
    for (i, a) in stayed.iter().enumerate() {
        for b in &stayed[i + 1..] {
            findings.extend(between_areas(a, b).map(|apart| {
                RULE.finding(format!("{} to {}", a.name, b.name))
                    .at_least_length(thirty_inches(), apart, Unit::Inch)
                    .because("clear metal between two built-up areas")
                    .work(format!(
                        "{} in apart, at least 30 in",
                        figure(apart.to_inches())
                    ))
            }));
        }
    }
    findings
}

fn girth_cracks(repair: &Repair, cracks: GirthCracksSpec) -> Vec<Finding> {
    let limits = [
        ("longest run", cracks.longest_run, MOST_GIRTH_CRACKS.0),
        ("in all", cracks.in_all, MOST_GIRTH_CRACKS.1),
    ];
    let compared = |(what, count, most): (&str, u32, u32)| {
        RULE.finding(format!("{}, {what}", repair.name))
            .at_most(f64::from(most), f64::from(count), "")
            .because("cracks from rivet hole to rivet hole; the holes are reamed after welding")
            .work(format!("{count} cracks, at most {most}"))
    };
    limits.map(compared).into()
}

fn caulking_edge(design: &Design, repair: &Repair, edge: &CaulkingEdgeSpec) -> Vec<Finding> {
    let length = edge.length.value();
    let metal = RULE.finding(format!("{}, metal left", repair.name));
    let metal = match (&edge.metal_left, &design.rivets) {
        (None, _) => metal.not_judged(format!(
            "`{}.weld.caulking_edge.metal_left` is not given",
            repair.path
        )),
        (_, None) => metal.not_judged("`rivets` is not given, and the limit is by their holes"),
        (Some(left), Some(rivets)) => {
            let hole = rivets.hole.value();
            let least = least_caulking_metal(hole);
            metal
                .with_length("rivet hole", "d", hole, Unit::Inch)
                .at_least_length(least, left.value(), Unit::Inch)
                .because("from hole to edge; rivets are taken out 6 in beyond, and the holes reamed after")
                .work(format!(
                    "d/4 = {}/4 = {} in; left {} in",
                    figure(hole.to_inches()),
                    figure(least.to_inches()),
                    figure(left.value().to_inches())
                ))
        }
    };
    vec![
        RULE.finding(format!("{}, length", repair.name))
            .at_most_length(thirty_inches(), length, Unit::Inch)
            .work(format!("{} in, at most 30 in", figure(length.to_inches()))),
        metal,
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 46 CFR 59.10: two pitches of 4 in are 8 in; a quarter of a 24 mm hole is 6 mm; 40 %, 400 in², 30 in, two areas, three cracks
    /// in a run and six in all.
    #[test]
    fn published_limits_of_stayed_sheet() {
        assert!(longest_crack(Length::inches(4.0)).same_as(Length::inches(8.0)));
        assert!(least_caulking_metal(Length::mm(24.0)).same_as(Length::mm(6.0)));
        assert!(thirty_inches().same_as(Length::inches(30.0)));
        assert_eq!((MOST_LOSS, MOST_AREA_IN2, MOST_AREAS), (0.40, 400.0, 2));
        assert_eq!(MOST_GIRTH_CRACKS, (3, 6));
    }

    /// 49 CFR 230.33: 25 % of 1 in is 1/4 in; of 3 in it is 3/4, so 1/2 in; 60 % of 1/2 in is 0.3 in; 100 in².
    #[test]
    fn published_locomotive_limits() {
        assert!(most_build_up_without_leave(Length::inches(1.0)).same_as(Length::inches(0.25)));
        assert!(most_build_up_without_leave(Length::inches(3.0)).same_as(Length::inches(0.5)));
        assert!(least_left_to_build_up(Length::inches(0.5)).same_as(Length::inches(0.3)));
        assert_eq!(MOST_AREA_WITHOUT_LEAVE_IN2, 100.0);
    }
}
