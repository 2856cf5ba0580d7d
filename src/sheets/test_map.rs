//! Sheet: welds and tests. Every weld numbered, every zone to be tested, and blanks for who, how and with what result.

use super::board::{Board, PaperBox};
use super::face_view::{put_centre_lines, put_hole};
use super::flow::{Block, flow};
use super::general::lists_parts;
use super::letter_size::{FIGURES, NOTES, TABLE};
use super::notes::Notes;
use super::paper_size::is_upright;
use super::part_balloons::parts_list;
use super::particulars::view_words;
use super::scale::largest_scale;
use super::set::Set;
use super::survey_marks::{put_repair_numbers, put_repairs};
use super::table::Table;
use super::view::{PlateBox, Stroke, View};
use super::weld_numbers::{repair_number, weld_letter};
use super::{Hang, Pen, Role, at};
use crate::design::{
    FlangeDesign, JointPlace, Point, Repair, RepairWork, Weld, WeldPart, heel_quarter,
    nearest_to_heel, ring_joint, welds,
};
use crate::spec::{Metal, Purpose};
use crate::units::angle::{PI, cos, from_top_clockwise, sin};
use crate::units::print::trimmed;
use crate::units::{Length, Size};

/// Width of the face view, mm.
const VIEW: f64 = 132.0;
/// The same on upright paper, mm.
const UPRIGHT_VIEW: f64 = 92.0;
/// Length of the stroke that marks the ring's own joint, mm of paper.
const JOINT: f64 = 5.0;
/// From the ring to the knee of a leader, mm of paper.
const REACH: f64 = 9.0;
/// Quarters, clockwise from the top.
const QUARTERS: [&str; 4] = ["0° to 90°", "90° to 180°", "180° to 270°", "270° to 360°"];

/// Welds and tests; none where the plate has neither flange nor repair, and so neither weld nor heel.
pub fn test_map(set: &Set<'_>) -> Vec<Board> {
    let repaired = !set.design.repairs.is_empty();
    let name = match &set.design.flange {
        Some(FlangeDesign::Fabricated(_)) => "Welds and tests",
        Some(FlangeDesign::Pressed(_)) if repaired => "Welds and tests of heel and holes",
        Some(FlangeDesign::Pressed(_)) => "Tests of heel and holes",
        None if repaired => "Welds and tests",
        None => return Vec::new(),
    };
    let mut board = set.board("tests", name);
    let room = board.room;
    let upright = is_upright(set.paper);
    // On upright paper the notes stand beside a smaller view, and the tables below.
    let side = if upright { UPRIGHT_VIEW } else { VIEW };
    let view = PaperBox::new(
        room.left,
        room.top,
        room.left + side,
        room.top + side + 14.0,
    );
    put_map(&mut board, set, &view);
    let words = match upright {
        true => PaperBox::new(view.right + 7.0, room.top + 6.0, room.right, view.bottom),
        false => PaperBox::new(view.left, view.bottom + 3.0, view.right, room.bottom),
    };
    let notes = Block::Notes(notes(set).at_height(TABLE), 0);
    let (mut left_over, _) = flow(&mut board, &words, vec![notes]);
    let tables_room = match upright {
        true => PaperBox::new(room.left, view.bottom + 3.0, room.right, room.bottom),
        false => PaperBox::new(view.right + 7.0, room.top + 3.0, room.right, room.bottom),
    };
    let mut tables: Vec<Block> = weld_table(set)
        .into_iter()
        .map(|t| Block::Table(t, 0))
        .collect();
    let parts = parts_list(set, "PARTS, NUMBERED IN CIRCLES ON SHEET 1");
    let parts = parts.filter(|_| !lists_parts(set));
    tables.extend(parts.map(|t| Block::Table(t, 0)));
    tables.push(Block::Table(zone_table(set).filled_in(), 0));
    left_over.extend(flow(&mut board, &tables_room, tables).0);
    super::pages::continued(set, vec![board], ("tests", name), 1, left_over)
}

/// One zone to be tested.
struct Zone {
    number: String,
    what: String,
    extent: String,
    method: String,
}

/// Method words by metal: common practice, proposed.
fn surface_method(set: &Set<'_>) -> &'static str {
    match set.spec.written.plate.material.as_ref().map(|m| m.metal) {
        Some(Metal::Steel | Metal::Iron) => "magnetic particle",
        Some(Metal::Copper) => "dye penetrant",
        None => "by the metal, which is not given",
    }
}

fn zones(set: &Set<'_>) -> Vec<Zone> {
    let fig = set.figures;
    let surface = surface_method(set);
    let mut all: Vec<(String, String, String)> = Vec::new();
    match &set.design.flange {
        Some(FlangeDesign::Pressed(_)) => {
            if let Some(quarter) = heel_quarter(set.design) {
                for words in QUARTERS {
                    all.push((
                        format!("heel, {words}, both faces"),
                        format!("{} along the tangent", fig.short(quarter)),
                        format!("{surface}; thickness by ultrasonic"),
                    ));
                }
            }
        }
        Some(FlangeDesign::Fabricated(_)) => {
            let letter = weld_letter(set);
            let both = welds(set.design, None);
            if let [inside, outside, joint] = &both[..] {
                for words in QUARTERS {
                    all.push((
                        format!("welds {letter}1 and {letter}2, {words}"),
                        format!(
                            "{} and {}",
                            fig.short(inside.length / 4.0),
                            fig.short(outside.length / 4.0)
                        ),
                        surface.into(),
                    ));
                }
                all.push((
                    format!("ring's own joint {letter}3"),
                    fig.short(joint.length),
                    format!("{surface}; ultrasonic or radiography"),
                ));
            }
        }
        None => {}
    }
    let letter = weld_letter(set);
    let before = welds(set.design, None).len();
    for (i, weld) in pad_welds(set).iter().enumerate() {
        all.push((
            format!("weld {letter}{} of the {}", before + i + 1, weld.pad),
            format!("{}, at {}", fig.short(weld.length), weld.hole),
            surface.into(),
        ));
    }
    for (i, repair) in set.design.repairs.iter().enumerate() {
        all.push((
            format!("weld {}, {}", repair_number(set, i), repair.name),
            match repair.length > Length::ZERO {
                true => fig.short(repair.length),
                false => "every crack".into(),
            },
            repair_method(repair, surface),
        ));
    }
    for (index, group) in set.design.groups.iter().enumerate() {
        if set.number_off(index) == 0 || group.purpose == Purpose::FormerPin {
            continue;
        }
        all.push((
            format!("{} {}, edges", group.name, set.numbers(index)),
            match set.number_off(index) {
                1 => "1 hole, both faces".into(),
                off => format!("{off} holes, both faces"),
            },
            format!("by eye; {surface} where in doubt"),
        ));
    }
    all.into_iter()
        .enumerate()
        .map(|(i, (what, extent, method))| Zone {
            number: format!("Z{}", i + 1),
            what,
            extent,
            method,
        })
        .collect()
}

/// Surface tests of every repair; a weld right through the plate from within as well.
fn repair_method(repair: &Repair, surface: &str) -> String {
    match &repair.work {
        RepairWork::BuildUp { .. } | RepairWork::CaulkingEdge(_) => {
            format!("{surface}; thickness by ultrasonic")
        }
        RepairWork::Crack | RepairWork::Line { .. } | RepairWork::GirthCracks(_) => {
            format!("{surface}; ultrasonic or radiography")
        }
    }
}

fn zone_table(set: &Set<'_>) -> Table {
    let mut table = Table::new(
        "ZONES TO BE TESTED; METHODS PROPOSED, THE INSPECTING BODY DECIDES",
        &[
            ("ZONE", 14.0, Hang::Middle),
            ("WHAT", 46.0, Hang::Start),
            ("EXTENT", 38.0, Hang::Start),
            ("METHOD PROPOSED", 40.0, Hang::Start),
            ("METHOD USED", 25.0, Hang::Start),
            ("RESULT", 25.0, Hang::Start),
            ("REPORT No.", 24.0, Hang::Start),
            ("BY, DATE", 26.0, Hang::Start),
        ],
    );
    for zone in zones(set) {
        let mut row = vec![zone.number, zone.what, zone.extent, zone.method];
        row.resize(8, String::new());
        table.rows.push(row);
    }
    table
}

/// Welds with lengths, legs and what stands near; none where nothing is welded.
fn weld_table(set: &Set<'_>) -> Option<Table> {
    let rivets = set.spec.written.rivets.as_ref();
    let head = rivets.and_then(|r| Some(r.head_diameter.as_ref()?.value()));
    let all = welds(set.design, head);
    let fig = set.figures;
    let letter = weld_letter(set);
    let mut table = Table::new(
        "WELDS; TO THE WORKS' PROCEDURE, LEGS AS GIVEN",
        &[
            ("WELD", 14.0, Hang::Middle),
            ("WHERE", 36.0, Hang::Start),
            ("LENGTH", 29.0, Hang::End),
            ("LEG", 10.0, Hang::End),
            ("CLEAR TO HOLE", 31.0, Hang::Start),
            ("TO RIVET HOLE", 18.0, Hang::End),
            ("TO HEAD", 15.0, Hang::End),
            ("PROCEDURE", 25.0, Hang::Start),
            ("WELDER", 20.0, Hang::Start),
            ("CONSUMABLE", 26.0, Hang::Start),
            ("DATE", 19.0, Hang::Start),
        ],
    );
    let joint = ring_joint(set.spec, set.design);
    let rivet = set.design.rivets.as_ref();
    let beside_joint = joint
        .as_ref()
        .and_then(|j| Some(&j.nearest_rivet.as_ref()?.1));
    let or_dash = |length: Option<Length>| length.map_or("–".into(), |l| fig.table(l));
    for (i, weld) in all.iter().enumerate() {
        // The joint of the ring runs between two rivets: what is clear is measured from its middle round the outside.
        let clear_of = |across: Option<Length>| Some(*beside_joint? - across? / 2.0);
        let (to_hole, to_head) = match weld.part {
            WeldPart::Inside | WeldPart::Outside => (weld.to_rivet_hole, weld.to_rivet_head),
            WeldPart::RingJoint => (clear_of(rivet.map(|r| r.hole.value())), clear_of(head)),
        };
        table.rows.push(vec![
            format!("{letter}{}", i + 1),
            place_of(weld, joint.as_ref()),
            fig.table(weld.length),
            or_dash(weld.leg),
            weld.nearest_hole.map_or("–".into(), |(hole, metal)| {
                format!("{} to {}", fig.table(metal), set.design.holes[hole].id)
            }),
            or_dash(to_hole),
            or_dash(to_head),
            String::new(),
            String::new(),
            String::new(),
            String::new(),
        ]);
    }
    for (i, weld) in pad_welds(set).into_iter().enumerate() {
        let mut row = vec![format!("{letter}{}", all.len() + i + 1)];
        row.push(format!("{} to plate, round its edge", weld.pad));
        row.push(fig.table(weld.length));
        row.push(fig.size_short(weld.leg));
        row.push(format!("at {}", weld.hole));
        row.extend(["–", "–"].map(String::from));
        table.row(row);
    }
    for (i, repair) in set.design.repairs.iter().enumerate() {
        table.row(repair_row(set, (i, repair)));
    }
    (!table.rows.is_empty()).then(|| table.filled_in())
}

/// A repair in the table of welds; its leg, if it has one, is the procedure's.
fn repair_row(set: &Set<'_>, (i, repair): (usize, &Repair)) -> Vec<String> {
    let fig = set.figures;
    let nearest = repair.nearest.iter().min_by(|a, b| a.2.total_cmp(&b.2));
    let rivets = repair.crossings.iter().filter_map(|c| c.rivet.as_ref());
    let rivet = rivets.min_by(|a, b| a.1.total_cmp(&b.1));
    let length = Some(repair.length).filter(|length| *length > Length::ZERO);
    vec![
        repair_number(set, i),
        format!("repair, {}", repair.name),
        length.map_or("–".into(), |l| fig.table(l)),
        "–".into(),
        nearest.map_or("–".into(), |(_, hole, metal)| {
            format!("{} to {}", fig.table(*metal), set.design.holes[*hole].id)
        }),
        rivet.map_or("–".into(), |(_, metal)| fig.table(*metal)),
        "–".into(),
    ]
}

/// The weld round the edge of a pad.
pub struct PadWeld<'a> {
    pad: &'a str,
    hole: &'a str,
    length: Length,
    leg: &'a Size,
}

/// A weld for every hole with a pad that is welded on, along the pad's own edge.
pub fn pad_welds<'a>(set: &Set<'a>) -> Vec<PadWeld<'a>> {
    let written = &set.spec.written;
    let groups = &set.design.groups;
    let mut all = Vec::new();
    for (i, holes) in written.holes.iter().enumerate() {
        let Some((at, leg)) = holes
            .pad
            .as_ref()
            .and_then(|at| Some((at, at.weld_leg.as_ref()?)))
        else {
            continue;
        };
        let Some(pad) = written.pads.iter().find(|pad| pad.name == at.name) else {
            continue;
        };
        let path = format!("holes[{i}]");
        let of_set = set
            .design
            .holes
            .iter()
            .filter(|h| groups[h.group].path == path);
        all.extend(of_set.map(|hole| PadWeld {
            pad: &pad.name,
            hole: &hole.id,
            length: PI * pad.diameter.value(),
            leg,
        }));
    }
    all
}

fn place_of(weld: &Weld, joint: Option<&JointPlace>) -> String {
    match (weld.part, joint) {
        (WeldPart::Inside, _) => "plate to ring, inside, all round".into(),
        (WeldPart::Outside, _) => "plate to ring, outside, all round".into(),
        (WeldPart::RingJoint, Some(joint)) => {
            format!("ring's ends, at {}", degrees(joint.angle_deg))
        }
        (WeldPart::RingJoint, None) => "ring's ends".into(),
    }
}

/// An angle within the round, with no more digits than it needs.
fn degrees(deg: f64) -> String {
    format!("{}°", trimmed(deg.rem_euclid(360.0), 3))
}

/// Where the ring's own joint stands: beside which rivet, and how far from the barrel's seam.
fn joint_note(set: &Set<'_>, joint: &JointPlace) -> String {
    let fig = set.figures;
    let mut words = format!(
        "RING'S OWN JOINT {}3 AT {}",
        weld_letter(set),
        degrees(joint.angle_deg)
    );
    if let Some((rivet, away)) = &joint.nearest_rivet {
        words.push_str(&format!(
            ", {} FROM THE MIDDLE OF RIVET HOLE {rivet}",
            fig.short(*away)
        ));
    }
    words.push_str(", ROUND THE OUTSIDE OF THE RING.");
    match (joint.seam, joint.clear_of_seam) {
        (Some((deg, away)), least) => {
            words.push_str(&format!(
                " BARREL SEAM AT {}, {} FROM THE JOINT",
                degrees(deg),
                fig.short(away)
            ));
            match least {
                Some(least) => words.push_str(&format!("; THE WORKS ASKS {}.", fig.short(least))),
                None => words.push('.'),
            }
        }
        (None, _) => words.push_str(
            " KEEP IT CLEAR OF THE BARREL SEAM: NOT JUDGED, `flange.fabricated.joint.barrel_seam` IS NOT GIVEN.",
        ),
    }
    words
}

fn notes(set: &Set<'_>) -> Notes {
    let fig = set.figures;
    let mut notes: Vec<String> = vec![
        "TEST AFTER GRINDING AND BEFORE PAINT. RECORD THE AREA TESTED, NOT ONLY THE RESULT.".into(),
        "ANGLES RUN CLOCKWISE FROM THE TOP, SEEN AS IN THE VIEW.".into(),
    ];
    match &set.design.flange {
        Some(FlangeDesign::Pressed(_)) => {
            notes.push(match set.design.kept {
                true => "THE HEEL STANDS: TEST IT AS FOUND. WHAT IS LET IN IS TESTED BEFORE ITS HOLES ARE FINISHED.".into(),
                false => "TEST THE HEEL AFTER FORMING AND HEAT TREATMENT, BEFORE ANY HOLE IS FINISHED.".into(),
            });
            if let Some((hole, metal)) = nearest_to_heel(set.design) {
                notes.push(format!(
                    "HOLE NEAREST TO THE HEEL: {}, {} FROM EDGE TO TANGENT.",
                    hole.id,
                    fig.short(metal)
                ));
            }
        }
        Some(FlangeDesign::Fabricated(_)) => {
            notes.push("TEST THE WELDS BEFORE TUBE OR RIVET HOLES ARE DRILLED.".into());
            notes.extend(ring_joint(set.spec, set.design).map(|joint| joint_note(set, &joint)));
        }
        None => {}
    }
    notes.push("ULTRASONIC THICKNESS DOES NOT SEE GROOVES OR CRACKS.".into());
    Notes::new("NOTES", notes)
}

/// The face, small, with the zones of weld or heel lettered round it.
fn put_map(board: &mut Board, set: &Set<'_>, room: &PaperBox) {
    let design = set.design;
    let edge = PlateBox::round(&design.edge);
    let inside = (room.width() - 30.0, room.height() - 24.0);
    let scale = largest_scale(edge.width(), edge.height(), inside, set.figures.in_inches());
    let f = scale.factor();
    board.scale_words = scale.words();
    let view = View {
        scale: f,
        centre: at(
            room.middle().x - (edge.left + edge.right) / 2.0 * f,
            room.top + 11.0 + (inside.1 - edge.height() * f) / 2.0 + edge.top * f,
        ),
    };
    view.outline(board, &design.edge, Stroke::SEEN);
    put_centre_lines(board, &view, &edge);
    let wanted = super::face_view::Wanted {
        tube_numbers: None,
        other_numbers: true,
        edge: false,
        rivets: false,
        signs: false,
    };
    for hole in &design.holes {
        put_hole(board, &view, design, hole, wanted);
    }
    let heavy = Stroke {
        pen: Pen::Frame,
        pattern: super::Pattern::Continuous,
        role: Role::Centre,
    };
    let quarters = match &design.flange {
        Some(FlangeDesign::Pressed(p)) => {
            let outside = p.outside_diameter.value() / 2.0;
            view.circle(board, Point::CENTRE, p.tangent_radius.to_mm(), heavy);
            Some(((p.tangent_radius + outside) / 2.0, outside))
        }
        Some(FlangeDesign::Fabricated(r)) => {
            let outside = r.ring_outside_diameter.value() / 2.0;
            let inside = outside - r.ring_thickness.value();
            for weld in [inside, outside] {
                view.circle(board, Point::CENTRE, weld.to_mm(), heavy);
            }
            Some(((inside + outside) / 2.0, outside))
        }
        None => None,
    };
    if let Some((radius, outside)) = quarters {
        put_quarters(board, &view, radius.to_mm(), outside.to_mm());
        if let Some(joint) = ring_joint(set.spec, design) {
            put_joint(board, set, &view, &joint, (radius.to_mm(), outside.to_mm()));
        }
    }
    put_repairs(board, set, &view);
    put_repair_numbers(board, set, &view, &edge);
    let words = format!("FACE, {}, {}", view_words(design.view_from), scale.words());
    let height = super::letter_size::fitting_height(&words, room.width(), NOTES, true);
    board.bold(
        at(room.middle().x, room.bottom - 2.0),
        &words,
        height,
        Hang::Middle,
    );
}

/// A number outside each quarter, with a leader to the weld or heel; a stroke where quarters meet.
fn put_quarters(board: &mut Board, view: &View, radius: f64, outside: f64) {
    let along = |deg: f64, r: f64| {
        let a = from_top_clockwise(deg);
        view.place(Point::new(r * cos(a), r * sin(a)))
    };
    for quarter in 0..4 {
        let start = f64::from(quarter) * 90.0;
        let over = 5.0 / view.scale;
        let (a, b) = (along(start, radius - over), along(start, outside + over));
        let (pen, pattern) = (Pen::Wide, super::Pattern::Continuous);
        board.line(a, b, pen, pattern, Role::Centre);
        let tip = along(start + 45.0, radius);
        let knee = along(start + 45.0, outside + 9.0 / view.scale);
        let words = [format!("Z{}", quarter + 1)];
        super::dimension::leader(board, tip, knee, &words, FIGURES);
    }
}

/// The joint of the ring, a heavy stroke across it with its weld's number; and the seam of the barrel, outside it.
fn put_joint(
    board: &mut Board,
    set: &Set<'_>,
    view: &View,
    joint: &JointPlace,
    (radius, outside): (f64, f64),
) {
    let along = |deg: f64, r: f64| {
        let a = from_top_clockwise(deg);
        view.place(Point::new(r * cos(a), r * sin(a)))
    };
    let half = JOINT / 2.0 / view.scale;
    let (a, b) = (
        along(joint.angle_deg, radius - half),
        along(joint.angle_deg, radius + half),
    );
    board.line(a, b, Pen::Frame, super::Pattern::Continuous, Role::Centre);
    let reach = outside + REACH / view.scale;
    let name = [format!("{}3", weld_letter(set))];
    super::dimension::leader(board, b, along(joint.angle_deg, reach), &name, FIGURES);
    if let Some((deg, _)) = joint.seam {
        let (near, far) = (
            along(deg, outside),
            along(deg, outside + JOINT / view.scale),
        );
        board.line(near, far, Pen::Wide, super::Pattern::Chain, Role::Centre);
        let words = ["BARREL SEAM".to_string()];
        super::dimension::leader(board, far, along(deg, reach), &words, TABLE);
    }
}
