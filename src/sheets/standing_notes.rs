//! Notes of the general arrangement: what the spec makes necessary, then what the works has written.

use super::beginning::Beginning;
use super::kept::{pieces_named, rivets_made};
use super::marking_tables::{From, with_hand};
use super::notes::Notes;
use super::set::Set;
use crate::design::{
    BesideOriginal, FlangeDesign, HoleIndex, MetalThere, OriginalFigure, RivetLine, RivetMade,
    Told, beside_original,
};
use crate::spec::{RivetHow, ViewFrom};
use crate::units::Length;

/// The caution that every general arrangement carries.
pub const CAUTION: &str = "A BOILER IS A STORE OF ENERGY. THIS DRAWING APPROVES NOTHING: DESIGN, MATERIAL, WELDING, TESTING AND \
PRESSURE REST WITH THE WORKS' COMPETENT ENGINEER AND THE INSPECTING BODY.";

/// Numbered notes of the general arrangement, in the imperative; the works' own come last.
pub fn general_notes(set: &Set<'_>) -> Notes {
    let w = &set.spec.written;
    let this_face = match set.design.view_from {
        ViewFrom::Smokebox => "SMOKEBOX",
        ViewFrom::Firebox => "FIREBOX",
    };
    let mut notes = vec![
        format!("MARK THE PLATE “TOP” AND “THIS FACE TO {this_face}” BEFORE ANYTHING ELSE."),
        "STRIKE THE BARREL CENTRE LINES: VERTICAL IS DATUM A, HORIZONTAL DATUM B, THE PLATE FACE DATUM C. MEASURE FROM THEM ALONE.".into(),
        "HOLES STAND ALIKE ON BOTH HANDS OF DATUM A UNLESS SHOWN OTHERWISE.".into(),
    ];
    if !is_symmetrical(set) {
        notes.pop();
    }
    if set.figures.in_inches() {
        notes.push(
            "READ ~ AS ROUNDED TO THE NEAREST 1/64; THE MARKING-OUT TABLES GIVE THE DECIMAL."
                .into(),
        );
    }
    if let Some(since) = &set.design.since {
        notes.push(format!(
            "WHAT IS CLOUDED, HERE AND ON SETTING-OUT AND MARKING-OUT, CHANGED SINCE REVISION {}; A FORMER PLACE STANDS IN DOUBLE CHAIN WHERE THE SCALE SHOWS IT. THE REST STANDS IN THE TABLE OF CHANGES.",
            since.revision
        ));
    }
    notes.extend(w.sheets.notes.iter().map(|n| n.to_uppercase()));
    Notes::new("NOTES", notes)
}

/// Whether every hole has its opposite hand.
pub fn is_symmetrical(set: &Set<'_>) -> bool {
    let holes = &set.design.holes;
    let index = HoleIndex::new(holes);
    holes.iter().all(|h| {
        let on_datum = Length::mm(h.at.x).same_as(Length::ZERO);
        let alike = |other: usize| holes[other].finish.value().same_as(h.finish.value());
        on_datum || index.within(h.at.opposite_hand(), 0.0).any(alike)
    })
}

/// Notes beside the setting-out of the nest.
pub fn nest_notes(set: &Set<'_>) -> Notes {
    let mut made = set.design.groups_made();
    if !made.any(|(_, group)| group.purpose.takes_a_tube()) {
        return Notes::new(
            "NOTES",
            vec!["THE TUBE HOLES STAND: THEY ARE MEASURED, AND NONE IS STRUCK OR DRILLED.".into()],
        );
    }
    let all = Beginning::of_plate(set);
    Notes::new(
        "NOTES",
        vec![
            "STRIKE EVERY LINE FROM THE DATUM LINES. NEVER STEP ONE PITCH ON ANOTHER.".into(),
            match all.pops() {
                0 => format!(
                    "PROVE THE HOLES AS CUT FROM THE DATUM LINES. {} UNTIL THE COUNT IS SIGNED. A DRILLED HOLE IS PERMANENT.",
                    all.no_further()
                ),
                _ => format!(
                    "POP LIGHT. {} UNTIL THE COUNT IS SIGNED; THEN POP DEEP. A DRILLED HOLE IS PERMANENT.",
                    all.no_further()
                ),
            },
            "TAKE SHARP EDGES OFF EVERY TUBE HOLE, BOTH SIDES.".into(),
        ],
    )
}

/// Notes beside flange and rivets.
pub fn flange_notes(set: &Set<'_>) -> Notes {
    let mut notes: Vec<String> = flange_note(set).into_iter().collect();
    if let Some(line) = &set.design.rivets {
        notes.extend(row_numbers(line));
        notes.extend(rivet_notes(set, line));
    }
    Notes::new("NOTES", notes)
}

fn flange_note(set: &Set<'_>) -> Option<String> {
    let flange = set.design.flange.as_ref()?;
    if set.design.kept {
        let pieces = pieces_named(set);
        return Some(match pieces.is_empty() {
            true => "THE FLANGE STANDS AS FOUND.".into(),
            false => format!(
                "THE FLANGE STANDS AS FOUND. TAKE HEEL AND FLANGE OF {pieces} FROM IT AND FROM THE BORE."
            ),
        });
    }
    let words = match flange {
        FlangeDesign::Pressed(_) => {
            "MAKE THE FLANGE TO THE GIRTH OF THE BORE. LEAVE THE TRIM ON UNTIL THE PLATE HAS BEEN OFFERED UP."
        }
        FlangeDesign::Fabricated(_) => {
            "MAKE THE RING TO THE GIRTH OF THE BORE. WELD ONLY TO THE WORKS' PROCEDURE; WELD SIZES SHOWN ARE THE WORKS' OWN."
        }
    };
    Some(words.into())
}

fn rivet_notes(set: &Set<'_>, line: &RivetLine) -> Vec<String> {
    let mut notes = Vec::new();
    if set.design.kept {
        let made = rivets_made(set);
        if made.is_empty() {
            return vec!["EVERY RIVET STANDS.".into()];
        }
        notes.push(format!("NEW RIVETS: {made}. ALL OTHERS STAND."));
    }
    notes.push(match line.how {
        RivetHow::InPlace if set.design.kept => {
            "DRILL THE NEW RIVETS' HOLES THROUGH THE BARREL WITH THE PARTS PULLED TOGETHER.".into()
        }
        RivetHow::InPlace if !line.rivets.iter().any(|r| r.made == RivetMade::Tack) => {
            "DRILL RIVET HOLES THROUGH THE BARREL WITH THE PARTS PULLED TOGETHER; NONE IS DRILLED TO THE DRAWING.".into()
        }
        RivetHow::InPlace if line.rows.is_some() => {
            "DRILL RIVET HOLES THROUGH THE BARREL WITH THE PARTS PULLED TOGETHER; ONLY TACK HOLES, ALL OF THEM IN ROW 1, ARE DRILLED TO THE DRAWING.".into()
        }
        RivetHow::InPlace => {
            "DRILL RIVET HOLES THROUGH THE BARREL WITH THE PARTS PULLED TOGETHER; ONLY TACK HOLES ARE DRILLED TO THE DRAWING.".into()
        }
        RivetHow::Drawn => "DRILL RIVET HOLES TO THE ANGLES OF THE RIVET TABLE.".into(),
    });
    notes.push(
        "HOLES ARE RADIAL: THE ANGLE CARRIES FROM BARREL TO FLANGE, THE CHORD DOES NOT.".into(),
    );
    notes.push(match set.design.kept {
        true => "NO RIVET IS CLOSED ON A BURR BETWEEN THE PLATES.".into(),
        false => "PART THE PLATES AND TAKE BURRS OFF BEFORE CLOSING ANY RIVET.".into(),
    });
    notes
}

/// Which row is which, and how its rivets are numbered; none where there is one row.
pub fn row_numbers(line: &RivetLine) -> Option<String> {
    let rows = line.rows.as_ref()?;
    let runs = line.each_row().filter_map(|(row, rivets)| {
        Some(format!(
            "ROW {row} {}–{}",
            rivets.first()?.id,
            rivets.last()?.id
        ))
    });
    Some(format!(
        "{} ROWS, {}: ROW 1 NEAREST THE FLANGE EDGE. EACH IS COUNTED CLOCKWISE FROM BOTTOM CENTRE: {}.",
        rows.number,
        rows.arrangement.name().to_uppercase(),
        runs.collect::<Vec<_>>().join(", ")
    ))
}

/// Notes beside the part as cut.
pub fn cut_notes(set: &Set<'_>) -> Notes {
    let mut notes = vec![
        "TRANSFER HEAT AND PLATE NUMBERS TO EVERY PART BEFORE CUTTING.".into(),
        "KERF IS THE CUTTER'S: SIZES ARE THE CUT EDGE. DO NOT MIRROR.".into(),
    ];
    if set
        .spec
        .written
        .cutting
        .as_ref()
        .is_some_and(|c| c.process.is_thermal())
    {
        notes.push("FINISH NO PRESSURE HOLE BY HEAT. GRIND EDGES TO SOUND METAL.".into());
    }
    let away_from = match &set.design.flange {
        Some(FlangeDesign::Pressed(_)) => "HEEL AND NEST",
        Some(FlangeDesign::Fabricated(_)) => "WELDS AND NEST",
        None => "THE NEST",
    };
    notes.push(format!("STAMP ONLY ON THE FLAT, AWAY FROM {away_from}."));
    if let Some(FlangeDesign::Fabricated(ring)) = &set.design.flange {
        notes.push("ON THE STRIP x AND y ARE MEASURED FROM ITS LOWER LEFT CORNER.".into());
        if ring.towards != set.design.view_from {
            notes.push(
                "THE RING STANDS ON THE FACE THAT LIES DOWN: THE WORKS STRIKES ITS LINE THERE."
                    .into(),
            );
        }
    }
    if set.figures.in_inches() {
        notes.push("[ ] ARE THE MILLIMETRES OF THE CUT FILE; ~ IS ROUNDED TO 1/64.".into());
    }
    notes.push(tolerances(set));
    notes.push("HAVE A COMPETENT PERSON PLAN THE LIFT; MASSES ARE ESTIMATES.".into());
    Notes::new("NOTES", notes)
}

/// What the order allows on outline, holes and marks; what it does not say is to be asked for.
fn tolerances(set: &Set<'_>) -> String {
    let order = set.spec.written.cutting.as_ref().map(|c| &c.order);
    let of = |what: &str, said: Option<&String>| {
        let said = said.map_or("NOT STATED, ASK".into(), |s| s.to_uppercase());
        format!("{what} {said}")
    };
    let holes = set.parts.iter().any(|part| !part.holes_cut.is_empty());
    let mut said = vec![of(
        "OUTLINE",
        order.and_then(|o| o.outline_tolerance.as_ref()),
    )];
    if holes {
        said.push(of(
            "HOLES AS CUT",
            order.and_then(|o| o.hole_tolerance.as_ref()),
        ));
    }
    said.push(of("MARKS", order.and_then(|o| o.mark_tolerance.as_ref())));
    format!("TOLERANCES: {}.", said.join("; "))
}

/// Points at which work stops.
pub fn hold_points(set: &Set<'_>) -> Notes {
    let written = &set.spec.written.sheets.hold_points;
    let points = if written.is_empty() {
        vec![
            "NONE IS WRITTEN IN THE SPEC: AGREE THEM WITH THE INSPECTING BODY BEFORE WORK BEGINS."
                .into(),
        ]
    } else {
        written.iter().map(|p| p.to_uppercase()).collect()
    };
    Notes::new("HOLD POINTS: STOP UNTIL SIGNED", points)
}

/// Holes that depart from their pattern, figures that depart from the original, and concessions; none where there are none.
pub fn departures(set: &Set<'_>) -> Option<Notes> {
    let mut list: Vec<String> = set
        .design
        .omissions
        .iter()
        .map(|o| {
            format!(
                "NO HOLE OF THE {} {}, {}: {}",
                set.design.groups[o.group].name.to_uppercase(),
                with_hand(set, Length::mm(o.at.x), From::A),
                with_hand(set, Length::mm(o.at.y), From::B),
                o.reason.to_uppercase()
            )
        })
        .collect();
    list.extend(set.design.holes.iter().filter_map(|h| {
        h.exception
            .as_ref()
            .map(|why| format!("{} (RINGED): {}", h.id, why.to_uppercase()))
    }));
    list.extend(from_original(set));
    list.extend(set.findings.iter().filter_map(|f| match &f.verdict {
        crate::checks::Verdict::Conceded { concession, .. } => Some(format!(
            "CONCEDED, {} AT {}{}: {} ({}), {}",
            f.asks.to_uppercase(),
            f.place.to_uppercase(),
            asked_and_had(f),
            concession.agreed_by,
            concession.reference,
            concession.reason
        )),
        crate::checks::Verdict::Meets
        | crate::checks::Verdict::Below { .. }
        | crate::checks::Verdict::NotJudged { .. }
        | crate::checks::Verdict::Note => None,
    }));
    (!list.is_empty()).then(|| Notes::new("DEPARTURES AND EXCEPTIONS", list))
}

/// What a finding asks and has, as its reader reads it: ", ASKS 17.575 mm, HAS 17.500 mm"; nothing where it compares no figures.
fn asked_and_had(finding: &crate::checks::Finding) -> String {
    let read = finding.as_read();
    let least = if finding.at_most { "AT MOST " } else { "" };
    match (read.required, read.provided) {
        (Some(required), Some(provided)) => format!(", ASKS {least}{required}, HAS {provided}"),
        _ => String::new(),
    }
}

fn from_original(set: &Set<'_>) -> Vec<String> {
    let written = &set.spec.written;
    let Some(original) = &written.plate.original else {
        return Vec::new();
    };
    let told = |told: &Told| match told {
        Told::Size(size) => size.as_written().to_string(),
        Told::Length(length) => {
            format!("{} {}", set.figures.table(*length), set.figures.unit_sign())
        }
        Told::Count(count) => count.to_string(),
        Told::Words(words) => words.clone(),
        Told::Nothing(why) => why.to_uppercase(),
    };
    let metal = set.design.metal_there(|_| true);
    let as_found = matches!(metal, MetalThere::AsFound(_));
    let departures = beside_original(written, set.design).into_iter();
    let departures = departures.filter(BesideOriginal::departs);
    let mut list: Vec<String> = departures
        .map(|one| {
            format!(
                "{}: ORIGINAL {}, {} {}",
                one.what.name().to_uppercase(),
                told(&one.was),
                match as_found && one.what == OriginalFigure::Thickness {
                    true => "LEAST READING THAT STAYS",
                    false => "NOW",
                },
                told(&one.now)
            )
        })
        .collect();
    if !list.is_empty() {
        list.insert(
            0,
            format!(
                "ORIGINAL SIZES ARE FROM: {}.",
                original.source.to_uppercase()
            ),
        );
    }
    list
}
