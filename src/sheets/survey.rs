//! Sheet: survey and repairs. The face with thickness as found and what is to be welded; readings, limits, repairs and clearances.

use super::board::{Board, PaperBox};
use super::face_view::{Wanted, loose_holes, number_height, put_face, put_number_beside};
use super::flow::{Block, flow};
use super::letter_size::{FIGURES, NOTES, TABLE, fitting_height};
use super::notes::Notes;
use super::pages::continued;
use super::paper_size::is_upright;
use super::particulars::view_words;
use super::repair_tables::repair_table;
use super::scale::largest_scale;
use super::set::Set;
use super::survey_marks::{
    CLEAR, KEY, ends_of_welds, put_corners, put_key, put_marks, put_readings, put_repair_numbers,
    put_repairs, put_rivets_beside, put_words_outside, unit_of_readings,
};
use super::survey_tables::{reading_table, required_table};
use super::view::{PlateBox, Stroke, View};
use super::{Hang, at};
use crate::design::{Point, RepairWork};
use crate::spec::{RequiredThickness, Survey};

/// Share of the sheet that the face takes, across or down.
const FACE: f64 = 0.585;
/// Room beside the face for numbers and leaders, mm.
const ASIDE: f64 = 17.0;
/// Room over and under it for its centre lines, mm.
const OVER: f64 = 5.0;
/// Rings about a hole on which its number is tried: the welds leave less room than a plain face.
const RINGS: u32 = 5;
/// Room below it for its title, mm.
const TITLE: f64 = 9.0;

/// The survey and the repairs; none where the spec tells of neither.
pub fn survey(set: &Set<'_>) -> Vec<Board> {
    let surveyed = set.spec.written.survey.is_some();
    let title = match (surveyed, set.design.repairs.is_empty()) {
        (true, true) => "Thickness survey",
        (true, false) => "Survey and repairs",
        (false, false) => "Repairs",
        (false, true) => return Vec::new(),
    };
    let mut board = set.board("survey", title);
    let room = board.room;
    let (face, column) = face_and_column(set, &room);
    put_view(&mut board, set, &face);
    let columns = if is_upright(set.paper) { 1 } else { 2 };
    let left_over = flow(&mut board, &column, blocks(set)).0;
    continued(set, vec![board], ("survey", title), columns, left_over)
}

/// Where the face goes, and the tables: side by side, or one under the other on upright paper.
fn face_and_column(set: &Set<'_>, room: &PaperBox) -> (PaperBox, PaperBox) {
    let (left, top, right, bottom) = (room.left, room.top, room.right, room.bottom);
    if is_upright(set.paper) {
        let foot = top + room.height() * FACE;
        return (
            PaperBox::new(left, top, right, foot),
            PaperBox::new(left, foot + 4.0, right, bottom),
        );
    }
    let side = left + room.width() * FACE;
    (
        PaperBox::new(left, top, side, bottom),
        PaperBox::new(side + 4.0, top + 3.5, right, bottom),
    )
}

fn blocks(set: &Set<'_>) -> Vec<Block> {
    let survey = set.spec.written.survey.as_ref();
    let mut blocks = vec![Block::Caution(CAUTION.into(), NOTES)];
    let mut tables = Vec::new();
    tables.extend(survey.map(|survey| reading_table(set, survey)));
    tables.extend(survey.and_then(|survey| required_table(set, survey)));
    tables.extend(repair_table(set));
    blocks.extend(tables.into_iter().map(|table| Block::Table(table, 0)));
    blocks.push(Block::Notes(notes(set, survey).at_height(TABLE), 0));
    blocks
}

const CAUTION: &str =
    "ULTRASONIC THICKNESS DOES NOT FIND CRACKS OR GROOVING. SOUND METAL TO BE PROVED ON CUTTING.";

fn notes(set: &Set<'_>, survey: Option<&Survey>) -> Notes {
    let mut notes: Vec<String> = Vec::new();
    if let Some(survey) = survey {
        let by = survey
            .by
            .as_ref()
            .map_or(String::new(), |by| format!(" BY {by}"));
        let face = survey
            .face
            .map_or("WHICH FACE NOT TOLD".to_string(), |face| {
                format!("ON THE {} FACE", face.name())
            });
        let otherwise = survey
            .readings
            .iter()
            .any(|r| r.face.is_some() || r.instrument.is_some());
        let unless = if otherwise {
            " UNLESS THE TABLE SAYS OTHERWISE"
        } else {
            ""
        };
        notes.push(format!(
            "READ {}{by} WITH {}, {face}{unless}.",
            survey.date, survey.instrument
        ));
        notes.push("A READING SPEAKS OF ITS OWN PLACE ALONE. NOTHING IS INTERPOLATED BETWEEN READINGS, NOR ACROSS THE HEEL.".into());
    }
    if !set.design.repairs.is_empty() {
        notes.push("WELD ONLY AS THE INSPECTING BODY HAS AGREED: NO WELD IS SIZED HERE AND NONE IS ALLOWED BY THIS SHEET. IF THE CUT DOES NOT SHOW SOUND METAL ALL ROUND, STOP AND ASK.".into());
    }
    if set
        .design
        .repairs
        .iter()
        .any(|r| matches!(r.work, RepairWork::Line { .. }))
    {
        notes.push("CORNERS OF WELD LINES AND THE ENDS OF THEIR ARCS: MARKING-OUT SHEET. CORNERS ARE THOSE BEFORE THEY ARE ROUNDED OFF.".into());
    }
    if set.design.repairs.iter().any(|r| !r.crossings.is_empty()) {
        notes.push("CROSS THE HEEL SQUARE AND MIDWAY BETWEEN RIVETS, NEVER ALONG IT. ANGLES: CLOCKWISE FROM THE TOP.".into());
    }
    let notes = notes.into_iter().map(|note| note.to_uppercase()).collect();
    Notes::new("NOTES", notes)
}

/// The face with readings and repairs on it, and the key of the marks.
fn put_view(board: &mut Board, set: &Set<'_>, room: &PaperBox) {
    let design = set.design;
    let edge = PlateBox::round(&design.edge);
    let inside = (
        room.width() - 2.0 * ASIDE,
        room.height() - 2.0 * OVER - TITLE - KEY,
    );
    let scale = largest_scale(edge.width(), edge.height(), inside, set.figures.in_inches());
    let f = scale.factor();
    board.scale_words = scale.words();
    let high = edge.height() * f;
    let over = (room.height() - TITLE - KEY - high) / 2.0;
    let view = View {
        scale: f,
        centre: at(
            room.middle().x - (edge.left + edge.right) / 2.0 * f,
            room.top + over + edge.top * f,
        ),
    };
    let wanted = Wanted {
        tube_numbers: None,
        other_numbers: true,
        edge: true,
        rivets: true,
        signs: false,
    };
    put_face(board, &view, design, wanted);
    for region in set.spec.written.survey.iter().flat_map(|s| &s.required) {
        put_region(board, &view, &edge, region);
    }
    put_repairs(board, set, &view);
    put_marks(board, set, &view);
    put_hole_numbers(board, set, &view, &edge);
    put_rivets_beside(board, set, &view, &edge);
    put_readings(board, set, &view, &edge);
    put_repair_numbers(board, set, &view, &edge);
    let beside = PaperBox {
        bottom: room.bottom - KEY - TITLE,
        ..*room
    };
    put_corners(board, set, &view, &beside);
    let unit = unit_of_readings(set);
    let unit = unit.map_or(String::new(), |unit| format!("; THICKNESS FOUND IN {unit}"));
    let view_words = view_words(design.view_from);
    let words = format!("FACE, {view_words}, {}{unit}", scale.words());
    let height = fitting_height(&words, room.width(), FIGURES, true);
    let base = room.bottom - KEY - 2.0;
    board.bold(at(room.middle().x, base), &words, height, Hang::Middle);
    put_key(
        board,
        set,
        &PaperBox::new(room.left, room.bottom - KEY, room.right, room.bottom),
    );
}

/// The number of every hole off the nest: within it, beside it, or outside the plate at the end of a leader.
fn put_hole_numbers(board: &mut Board, set: &Set<'_>, view: &View, edge: &PlateBox) {
    let plate = view.paper_box(edge);
    for hole in loose_holes(set.design) {
        let radius = hole.finish.value().to_mm() / 2.0 * view.scale;
        let c = view.place(hole.at);
        if number_height(&hole.id, radius).is_none()
            && !put_number_beside(board, c, radius, &hole.id, (CLEAR, RINGS))
        {
            let ends = ends_of_welds(set, view);
            put_words_outside(board, (c, radius), &hole.id, (&plate, &ends));
        }
    }
}

/// The sides of a region that has corners, as far as they lie over the plate.
fn put_region(board: &mut Board, view: &View, edge: &PlateBox, region: &RequiredThickness) {
    let (Some(from), Some(to)) = (&region.from, &region.to) else {
        return;
    };
    let place = |at: &crate::spec::At| {
        let (x, y) = (at.0.value().to_mm(), at.1.value().to_mm());
        Point::new(
            x.clamp(edge.left, edge.right),
            y.clamp(edge.bottom, edge.top),
        )
    };
    let (a, b) = (place(from), place(to));
    let corners = [a, Point::new(b.x, a.y), b, Point::new(a.x, b.y)];
    for i in 0..4 {
        view.line(board, corners[i], corners[(i + 1) % 4], Stroke::ADJACENT);
    }
}

#[cfg(test)]
mod tests {
    use super::super::audit::audit;
    use super::super::finish;
    use super::super::sample_jobs::{jobs, with_changed_set, with_set};
    use super::super::test_map::test_map;
    use super::*;
    use crate::spec::{Repair, Spec};

    /// No spec without a survey or a repair has the sheet.
    #[test]
    fn holds_the_sheet_comes_only_where_it_is_wanted() {
        for job in jobs() {
            with_set(&job, |set| {
                let written = &set.spec.written;
                let wanted = written.survey.is_some() || !written.repairs.is_empty();
                assert_eq!(!survey(set).is_empty(), wanted, "{job}");
            });
        }
    }

    fn surveyed(spec: &mut Spec) {
        let survey = r#"{"date": "2026-11-02", "instrument": "gauge No. 7", "required": [
            {"region": "bottom", "thickness": "0.5 in", "origin": "works", "from": ["-20 in", "-20 in"], "to": ["20 in", "-8 in"]},
            {"region": "rest", "thickness": "0.45 in", "origin": "works"}],
            "readings": [{"at": ["0 in", "-16 in"], "thickness": "0.40 in"},
                {"at": ["2 in", "-15.5 in"], "thickness": "0.52 in"}, {"at": ["-12 in", "8 in"], "thickness": "0.60 in"},
                {"at": ["1.125 in", "0 in"], "thickness": "0.44 in"}]}"#;
        spec.written.survey = Some(serde_json::from_str(survey).expect("a survey"));
    }

    fn repaired(spec: &mut Spec) {
        let repairs = r#"[{"name": "build-up", "weld": {"build_up": {"at": ["0 in", "-16 in"], "width": "2 in", "height": "0.5 in"}}},
            {"name": "round", "weld": {"build_up": {"at": ["-13 in", "8 in"], "diameter": "2 in"}}},
            {"name": "crack", "weld": {"crack": {"from": ["12 in", "8 in"], "to": ["13.5 in", "8.5 in"]}}}]"#;
        let repairs: Vec<Repair> = serde_json::from_str(repairs).expect("repairs");
        spec.written.repairs = repairs;
    }

    /// A survey, repairs, and both, drawn on the pressed plate without a defect; titles say which it is.
    #[test]
    fn holds_the_sheet_has_no_defect() {
        type Change = fn(&mut Spec);
        let both: Change = |spec| {
            surveyed(spec);
            repaired(spec);
        };
        let ways: [(Change, &str); 3] = [
            (surveyed, "Thickness survey"),
            (repaired, "Repairs"),
            (both, "Survey and repairs"),
        ];
        for (change, title) in ways {
            with_changed_set("specs/marl-hen-smokebox.yaml", change, |set| {
                let boards = survey(set);
                assert_eq!(boards[0].title, title);
                let boards = boards.into_iter().chain(test_map(set)).collect();
                for sheet in finish(set, boards) {
                    let defects: Vec<String> =
                        audit(&sheet).iter().map(ToString::to_string).collect();
                    assert!(defects.is_empty(), "{title}: {defects:#?}");
                }
            });
        }
    }
}
