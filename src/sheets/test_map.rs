//! Sheet: welds and tests. Every weld numbered, every zone to be tested, and blanks for who, how and with what result.

use super::beginning::Beginning;
use super::board::{Board, PaperBox};
use super::clear::{crosses_hole, crosses_lettering, is_clear};
use super::face_view::{
    loose_holes, number_height, put_centre_lines, put_hole, put_number_beside, put_pads,
};
use super::flow::{Block, flow};
use super::general::lists_parts;
use super::letter_size::{FIGURES, LINE_PITCH, NOTES, TABLE, wrap};
use super::notes::Notes;
use super::paper_size::is_upright;
use super::part_balloons::parts_list;
use super::particulars::view_words;
use super::preparation_detail::preparation_of;
use super::scale::largest_scale;
use super::set::Set;
use super::survey_marks::{put_repair_names, put_repairs};
use super::table::Table;
use super::view::{PlateBox, Stroke, View};
use super::weld_numbers::{pad_weld_numbers, repair_number, weld_letter};
use super::{Hang, Pen, Role, at, face};
use crate::design::{
    Design, FlangeDesign, Hole, JointPlace, PlacedPad, Point, Repair, RepairWork, Weld, WeldPart,
    heel_quarter, nearest_to_heel, ring_joint, welds,
};
use crate::spec::{Metal, Purpose};
use crate::units::angle::{PI, cos, from_top_clockwise, sin};
use crate::units::print::trimmed;
use crate::units::{Length, Size};

/// Width of the face view, mm.
const VIEW: f64 = 135.0;
/// Clear strip between the view and the tables beside it, mm.
const BESIDE: f64 = 4.0;
/// The same on upright paper, mm.
const UPRIGHT_VIEW: f64 = 92.0;
/// Length of the stroke that marks the ring's own joint, mm of paper.
const JOINT: f64 = 5.0;
/// From the ring to the knee of a leader, mm of paper.
const REACH: f64 = 9.0;
/// Room beside the plate for a name, and for the ends of its centre lines alone, mm of paper.
const NAMES: f64 = 15.0;
const CENTRE_LINES: f64 = 6.0;
/// How far from straight outwards a line ends on the edge of a hole.
const ASIDE: f64 = PI / 7.0;
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
    let mut view = PaperBox::new(
        room.left,
        room.top,
        room.left + side,
        room.top + side + 14.0,
    );
    let foot = put_map(&mut board, set, &view);
    view.bottom = match upright {
        true => view.bottom.max(foot),
        false => foot,
    };
    let words = match upright {
        true => PaperBox::new(view.right + 7.0, room.top + 6.0, room.right, view.bottom),
        false => PaperBox::new(view.left, view.bottom + 3.0, view.right, room.bottom),
    };
    let notes = Block::Notes(notes(set).at_height(TABLE), 0);
    let (mut left_over, _) = flow(&mut board, &words, vec![notes]);
    let tables_room = match upright {
        true => PaperBox::new(room.left, view.bottom + 3.0, room.right, room.bottom),
        false => PaperBox::new(view.right + BESIDE, room.top + 3.0, room.right, room.bottom),
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
    marked: Marked,
    /// Its name as it stands on the view: with the number of its weld or of its only hole.
    on_view: String,
}

/// Where a zone is found on the view.
#[derive(Clone, Copy)]
enum Marked {
    /// A quarter of heel or ring, named where it lies.
    Quarter,
    /// The weld of the pad of this index.
    Pad(usize),
    /// The holes of a group.
    Holes(usize),
    /// The joint of a ring's own ends, named with its weld.
    RingJoint,
    /// The weld of the repair of this index, named with it.
    Repair(usize),
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
    let mut all: Vec<(String, String, String, Marked)> = Vec::new();
    match &set.design.flange {
        Some(FlangeDesign::Pressed(_)) => {
            if let Some(quarter) = heel_quarter(set.design) {
                for words in QUARTERS {
                    all.push((
                        format!("heel, {words}, both faces"),
                        format!("{} along the tangent", fig.short(quarter)),
                        format!("{surface}; thickness by ultrasonic"),
                        Marked::Quarter,
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
                        Marked::Quarter,
                    ));
                }
                all.push((
                    format!("ring's own joint {letter}3"),
                    fig.short(joint.length),
                    format!("{surface}; ultrasonic or radiography"),
                    Marked::RingJoint,
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
            Marked::Pad(weld.placed),
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
            Marked::Repair(i),
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
            Marked::Holes(index),
        ));
    }
    all.into_iter()
        .enumerate()
        .map(|(i, (what, extent, method, marked))| {
            let number = format!("Z{}", i + 1);
            let on_view = match marked {
                Marked::Pad(pad) => {
                    let hole = &set.design.holes[set.design.pads[pad].hole].id;
                    let weld = pad_weld_numbers(set, |id| id == hole).join(", ");
                    format!("{weld}, {number}")
                }
                Marked::Holes(group) if set.number_off(group) == 1 => {
                    format!("{}, {number}", set.numbers(group))
                }
                Marked::RingJoint => format!("{letter}3, {number}"),
                Marked::Repair(repair) => format!("{}, {number}", repair_number(set, repair)),
                Marked::Quarter | Marked::Holes(_) => number.clone(),
            };
            Zone {
                number,
                what,
                extent,
                method,
                marked,
                on_view,
            }
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
        &format!(
            "ZONES TO BE TESTED, EXTENTS IN {}; METHODS PROPOSED, THE INSPECTING BODY DECIDES",
            unit_word(set)
        ),
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

/// The unit that sizes are printed in.
fn unit_word(set: &Set<'_>) -> &'static str {
    match set.figures.in_inches() {
        true => "INCHES",
        false => "MILLIMETRES",
    }
}

/// Welds with lengths, legs and what stands near; none where nothing is welded.
fn weld_table(set: &Set<'_>) -> Option<Table> {
    let rivets = set.spec.written.rivets.as_ref();
    let head = rivets.and_then(|r| Some(r.head_diameter.as_ref()?.value()));
    let all = welds(set.design, head);
    let fig = set.figures;
    let letter = weld_letter(set);
    let mut table = Table::new(
        &format!(
            "WELDS, SIZES IN {}; TO THE WORKS' PROCEDURE, LEGS AS GIVEN",
            unit_word(set)
        ),
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
            clear_to_hole(set, weld.nearest_hole),
            or_dash(to_hole),
            or_dash(to_head),
            procedure_of(set, weld),
            String::new(),
            String::new(),
            String::new(),
        ]);
    }
    for (i, weld) in pad_welds(set).into_iter().enumerate() {
        let mut row = vec![format!("{letter}{}", all.len() + i + 1)];
        row.push(format!(
            "{} to plate at {}, round its edge",
            weld.pad, weld.hole
        ));
        row.push(fig.table(weld.length));
        row.push(fig.size_short(weld.leg));
        row.push(clear_to_hole(set, weld.nearest_hole));
        row.extend(["–", "–"].map(String::from));
        table.row(row);
    }
    for (i, repair) in set.design.repairs.iter().enumerate() {
        table.row(repair_row(set, (i, repair)));
    }
    (!table.rows.is_empty()).then(|| table.filled_in())
}

/// The procedure that the ring's preparation names, for the welds that it prepares; a blank else.
fn procedure_of(set: &Set<'_>, weld: &Weld) -> String {
    let named = preparation_of(set).and_then(|p| p.procedure.clone());
    match weld.part {
        WeldPart::Inside | WeldPart::Outside => named.unwrap_or_default(),
        WeldPart::RingJoint => String::new(),
    }
}

/// The hole nearest to a weld's toe and the metal between, a dash where there is none.
fn clear_to_hole(set: &Set<'_>, nearest: Option<(usize, Length)>) -> String {
    nearest.map_or("–".into(), |(hole, metal)| {
        let id = &set.design.holes[hole].id;
        format!("{} to {id}", set.figures.table(metal))
    })
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
    /// The hole that the pad lies round.
    pub hole: &'a str,
    length: Length,
    leg: &'a Size,
    nearest_hole: Option<(usize, Length)>,
    /// Index of the pad.
    placed: usize,
}

/// A weld for every pad that is welded on, along the pad's own edge.
pub fn pad_welds<'a>(set: &Set<'a>) -> Vec<PadWeld<'a>> {
    let (pads, design) = (&set.spec.written.pads, set.design);
    let weld = |(index, placed): (usize, &'a PlacedPad)| {
        let leg = placed.weld_leg.as_ref()?;
        Some(PadWeld {
            pad: &pads[placed.part].name,
            hole: &design.holes[placed.hole].id,
            length: PI * placed.diameter,
            leg,
            nearest_hole: placed.nearest_hole(design),
            placed: index,
        })
    };
    design.pads.iter().enumerate().filter_map(weld).collect()
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
            " KEEP IT CLEAR OF THE BARREL SEAM: NOT JUDGED, THE SEAM'S PLACE IS NOT GIVEN.",
        ),
    }
    words.push_str(" PREPARATION OF THE RING'S ENDS NOT GIVEN: TO THE WORKS' PROCEDURE.");
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
            let letter = weld_letter(set);
            notes.push(format!(
                "HEAVY CIRCLES ARE THE WELDS OF THE RING, {letter}1 INSIDE AND {letter}2 OUTSIDE."
            ));
            notes.push(match Beginning::of_plate(set).cut {
                0 => "TEST THE WELDS BEFORE TUBE OR RIVET HOLES ARE DRILLED.".into(),
                _ => "TEST THE WELDS BEFORE ANY HOLE IS OPENED BEYOND ITS SIZE AS CUT AND BEFORE RIVET HOLES ARE DRILLED.".into(),
            });
            notes.extend(ring_joint(set.spec, set.design).map(|joint| joint_note(set, &joint)));
        }
        None => {}
    }
    notes.push("ULTRASONIC THICKNESS DOES NOT SEE GROOVES OR CRACKS.".into());
    Notes::new("NOTES", notes)
}

/// The face with its welds and the zones of weld, heel and holes named round it; tells how far down its title reaches.
fn put_map(board: &mut Board, set: &Set<'_>, room: &PaperBox) -> f64 {
    let design = set.design;
    let edge = PlateBox::round(&design.edge);
    // Names of quarters stand in the corners; those of a ring's joint and of repairs stand where these are.
    let is_named_aside = ring_joint(set.spec, design).is_some() || !design.repairs.is_empty();
    let aside = match is_named_aside {
        true => 2.0 * NAMES,
        false => 2.0 * CENTRE_LINES,
    };
    let inside = (room.width() - aside, room.height() - 24.0);
    let scale = largest_scale(edge.width(), edge.height(), inside, set.figures.in_inches());
    let f = scale.factor();
    board.scale_words = scale.words();
    let view = View {
        scale: f,
        centre: at(
            room.middle().x - (edge.left + edge.right) / 2.0 * f,
            room.top + 11.0 + edge.top * f,
        ),
    };
    view.outline(board, &design.edge, Stroke::SEEN);
    put_centre_lines(board, &view, &edge);
    put_pads(board, &view, design, |_| true);
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
    put_flange_zones(board, set, &view);
    put_repairs(board, set, &view);
    let names = |repair: usize| {
        let is_its = |zone: &Zone| matches!(zone.marked, Marked::Repair(i) if i == repair);
        let zone = zones(set).into_iter().find(is_its);
        zone.map_or_else(|| repair_number(set, repair), |zone| zone.on_view)
    };
    put_repair_names(board, set, (&view, &edge), &names);
    put_numbers_of_several(board, set, &view);
    put_names(board, set, &view, room);
    let words = format!(
        "FACE, {}, SCALE {}",
        view_words(design.view_from),
        scale.words()
    );
    let lowest = board.extent(|_| true).map_or(room.bottom, |b| b.bottom);
    let mut base = lowest + 3.0;
    for line in wrap(&words, room.width(), NOTES, true) {
        base += NOTES * LINE_PITCH;
        board.bold(at(room.middle().x, base), &line, NOTES, Hang::Middle);
    }
    base
}

/// The lines of weld or heel and their quarters, and the joint of a ring.
fn put_flange_zones(board: &mut Board, set: &Set<'_>, view: &View) {
    let design = set.design;
    let circle = |board: &mut Board, radius: Length, pen: Pen| {
        let stroke = Stroke {
            pen,
            pattern: super::Pattern::Continuous,
            role: Role::Centre,
        };
        view.circle(board, Point::CENTRE, radius.to_mm(), stroke);
    };
    let (radius, outside) = match &design.flange {
        Some(FlangeDesign::Pressed(p)) => {
            circle(board, p.tangent_radius, Pen::Middle);
            let outside = p.outside_diameter.value() / 2.0;
            ((p.tangent_radius + outside) / 2.0, outside)
        }
        Some(FlangeDesign::Fabricated(r)) => {
            let outside = r.ring_outside_diameter.value() / 2.0;
            let inside = outside - r.ring_thickness.value();
            for weld in [inside, outside] {
                circle(board, weld, Pen::Frame);
            }
            ((inside + outside) / 2.0, outside)
        }
        None => return,
    };
    put_quarters(board, view, radius.to_mm(), outside.to_mm());
    if let Some(joint) = ring_joint(set.spec, design) {
        put_joint(board, set, view, &joint, (radius.to_mm(), outside.to_mm()));
    }
}

/// Names of the welds of ring and pads, and of the zones that are no quarter, each on a line to what it names.
fn put_names(board: &mut Board, set: &Set<'_>, view: &View, room: &PaperBox) {
    let design = set.design;
    let reach = PlateBox::round(&design.edge);
    let reach = reach.right.max(-reach.left);
    if let Some(FlangeDesign::Fabricated(r)) = &design.flange {
        let outside = r.ring_outside_diameter.value() / 2.0;
        let inside = outside - r.ring_thickness.value();
        // Clear of the strokes between the quarters and of the lines at their middles, and each on a hand of its own: side by side
        // both lines would seem to end at the outer weld.
        let clockwise = [110.0, 70.0, 20.0, 250.0, 290.0, 340.0];
        let counter_clockwise = [250.0, 290.0, 340.0, 110.0, 70.0, 20.0];
        let welds = [(1, inside, clockwise), (2, outside, counter_clockwise)];
        for (number, radius, tips) in welds {
            let tips = tips.map(|deg| on_circle(radius.to_mm(), deg));
            let name = format!("{}{number}", weld_letter(set));
            put_name(board, view, &tips, (&name, reach, room));
        }
    }
    for zone in zones(set) {
        let tips = match zone.marked {
            Marked::Pad(pad) => {
                let pad = &design.pads[pad];
                let middle = pad.at(design);
                let rim = |deg: f64| {
                    let p = on_circle(pad.diameter.to_mm() / 2.0, deg);
                    Point::new(middle.x + p.x, middle.y + p.y)
                };
                // The side away from the middle of the plate first: the line leaves the plate there.
                let out = if middle.y > 0.0 { 0.0 } else { 180.0 };
                [60.0, -60.0, 30.0, -30.0, 90.0, -90.0]
                    .map(|turn| rim(out + turn))
                    .to_vec()
            }
            Marked::Holes(group) => outermost_rims(design, group),
            Marked::Quarter | Marked::RingJoint | Marked::Repair(_) => continue,
        };
        put_name(board, view, &tips, (&zone.on_view, reach, room));
    }
}

/// Numbers beside the holes that are too small to hold them; a hole that is a zone by itself is numbered with its zone.
fn put_numbers_of_several(board: &mut Board, set: &Set<'_>, view: &View) {
    for hole in loose_holes(set.design).filter(|h| set.number_off(h.group) > 1) {
        let radius = hole.finish.value().to_mm() / 2.0 * view.scale;
        if number_height(&hole.id, radius).is_none() {
            put_number_beside(board, view.place(hole.at), radius, &hole.id, (0.4, 6));
        }
    }
}

/// Numbers of all zones, and of the welds of ring and pads.
#[cfg(test)]
pub fn zone_names(set: &Set<'_>) -> Vec<String> {
    let zones = zones(set).into_iter();
    let ring = welds(set.design, None).len();
    let count = ring + pad_welds(set).len();
    let welds = (1..=count).map(|i| format!("{}{i}", weld_letter(set)));
    zones.map(|zone| zone.number).chain(welds).collect()
}

/// A place on a circle about the barrel's centre, by its angle clockwise from the top.
fn on_circle(radius: f64, deg: f64) -> Point {
    let a = from_top_clockwise(deg);
    Point::new(radius * cos(a), radius * sin(a))
}

/// The outward edges of the holes of a group that lie furthest out.
fn outermost_rims(design: &Design, group: usize) -> Vec<Point> {
    let mut holes: Vec<&Hole> = design.holes.iter().filter(|h| h.group == group).collect();
    holes.sort_by(|a, b| b.at.radius().total_cmp(&a.at.radius()));
    // Aside of straight outwards: no line lies on a centre line.
    let rims = |hole: &&Hole| {
        let (at, radius) = (hole.at, hole.finish.value().to_mm() / 2.0);
        let outwards = crate::units::angle::atan2(at.y, at.x);
        [ASIDE, -ASIDE].map(|turn| {
            let a = outwards + turn;
            Point::new(at.x + radius * cos(a), at.y + radius * sin(a))
        })
    };
    holes.iter().flat_map(rims).take(24).collect()
}

/// A name outside the plate with a line to the first of some places from which it goes clear of all lettering: past every hole
/// where that can be.
fn put_name(
    board: &mut Board,
    view: &View,
    tips: &[Point],
    (words, reach, room): (&str, f64, &PaperBox),
) {
    let wide = face::width(words, TABLE, false);
    let reaches = [REACH, 1.6 * REACH, 2.4 * REACH];
    let past = reaches.map(|out| (out, true));
    for (out, past_holes) in past.into_iter().chain(reaches.map(|out| (out, false))) {
        for tip in tips {
            let deg = 90.0 - crate::units::angle::atan2(tip.y, tip.x).to_degrees();
            for turn in [0.0, 6.0, -6.0, 12.0, -12.0, 18.0, -18.0, 26.0, -26.0] {
                let from = view.place(*tip);
                let knee = view.place(on_circle(reach + out / view.scale, deg + turn));
                let way = if knee.x >= from.x { 1.0 } else { -1.0 };
                let start = knee.x + way * 4.0;
                let end = start + way * wide;
                let (a, b) = (start.min(end), start.max(end));
                let round = PaperBox::new(a, knee.y - TABLE / 2.0, b, knee.y + TABLE / 2.0);
                let is_free = room.holds(&round)
                    && is_clear(board, &round, 1.0)
                    && !crosses_lettering(board, from, knee)
                    && !(past_holes && crosses_hole(board, from, knee));
                if is_free {
                    let lines = [words.to_string()];
                    return super::dimension::leader(board, from, knee, &lines, TABLE);
                }
            }
        }
    }
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
        let (pen, pattern) = (Pen::Narrow, super::Pattern::Continuous);
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
    let mut zones = zones(set).into_iter();
    let zone = zones.find(|zone| matches!(zone.marked, Marked::RingJoint));
    let name = zone.map_or_else(|| format!("{}3", weld_letter(set)), |zone| zone.on_view);
    super::dimension::leader(board, b, along(joint.angle_deg, reach), &[name], FIGURES);
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
