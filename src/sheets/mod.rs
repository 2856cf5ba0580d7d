//! Paper: views, dimensions, tables and lettering as marks, and the three writers that decide nothing.

mod as_cut;
mod as_made;
mod as_made_face;
mod as_made_tables;
pub mod audit;
mod banner;
mod beginning;
mod board;
mod break_line;
mod change_rows;
mod check_figure;
mod check_tables;
mod clear;
mod cloud;
mod count_sheet;
mod cross_check_table;
mod curves;
mod cut_sizes;
mod cut_tables;
mod dashes;
mod datum_letters;
mod design_check;
mod detail_letters;
mod detail_places;
mod details;
mod dimension;
mod edge_dimensions;
#[cfg(test)]
mod every_sheet;
pub mod face;
mod face_view;
mod figure;
mod fit_figure;
mod fit_record;
mod fits_paper;
#[cfg(test)]
mod fitted_drawn;
mod flange_detail;
mod flange_rivets;
mod flange_strip;
mod flow;
mod free_row;
mod furniture;
mod gauge_details;
mod general;
mod hatch;
mod heel_detail;
mod held_areas;
mod hold_table;
mod hole_detail;
mod hole_record;
mod hole_schedule;
mod inspection;
mod interrupt;
mod joint_detail;
mod kept;
mod key_plan;
mod key_views;
mod key_words;
mod letter_size;
mod letterable;
pub mod lettering;
mod lettering_box;
mod ligament_figures;
mod line_names;
mod mark;
mod marking_out;
mod marking_tables;
mod mouth_detail;
mod nest_tables;
mod note;
mod notes;
mod order_note;
mod order_tables;
mod overprint;
mod pad_detail;
mod pages;
mod paper_size;
mod part_balloons;
mod particulars;
pub mod pdf;
mod pipe_joint;
mod plug_detail;
pub mod png;
mod preparation_detail;
#[cfg(test)]
mod proof;
mod proving_bar;
mod repair_tables;
mod ring_detail;
mod rivet_plan;
mod rivet_tables;
mod route;
#[cfg(test)]
mod sample;
#[cfg(test)]
mod sample_jobs;
mod scale;
mod seat;
#[cfg(test)]
mod second_opinion;
mod section;
mod set;
mod setting_out;
mod sheet_references;
mod side_names;
mod signed;
#[cfg(test)]
mod spacing;
mod stage_matrix;
mod stages_by_group;
mod standing_notes;
mod stay_end;
mod struck_view;
mod summary;
mod survey;
mod survey_marks;
mod survey_tables;
pub mod svg;
mod symbols;
mod table;
mod table_numbers;
mod tapped_words;
mod templates;
mod test_map;
mod test_sheet;
mod text_box;
mod tile_clip;
mod title_block;
mod tube_end_tables;
mod tube_ends;
mod tube_record;
mod tube_seat;
mod tubes_lengthwise;
mod view;
#[cfg(test)]
mod views_agree;
mod warning;
mod weld_numbers;
#[cfg(test)]
mod writers_agree;

pub use change_rows::{ChangeRow, change_rows};
pub use face::cannot_letter as unlettered;
pub use fits_paper::faults_of_paper;
pub use letterable::faults_of_lettering;
pub use mark::{Hang, Mark, PaperPoint, Pattern, Pen, Role, Sheet, Text, at};
pub use order_note::order_note_pages;
pub use set::AsMade;

use board::Board;
use pages::least_paper;
use set::Set;
use title_block::SheetPlace;

use crate::checks::Finding;
use crate::cut::CutPart;
use crate::design::Design;
use crate::spec::Spec;

/// Draws every sheet of a plate.
///
/// `parts` are the pieces as the contractor cuts them, for the sheet of the cut part; none where nothing is cut. Sheets are
/// drawn whatever the findings say; while one of them lies below its rule, each sheet says NOT FOR CUTTING.
pub fn draw_sheets(
    spec: &Spec,
    design: &Design,
    findings: &[Finding],
    parts: &[CutPart],
) -> Vec<Sheet> {
    let set = Set::new(spec, design, findings, parts);
    finish(&set, boards(&set))
}

/// Draws the sheets of a plate as it was made: its face, what is not as designed, and the design check run again.
///
/// `plate` and `findings` are those of the plate as made. While one of them lies below its rule, each sheet says BELOW AS MADE.
pub fn draw_as_made(
    spec: &Spec,
    plate: &Design,
    findings: &[Finding],
    made: &AsMade<'_>,
) -> Vec<Sheet> {
    let set = Set::as_made(spec, plate, findings, made);
    let mut boards = as_made::as_made(&set, made);
    boards.extend(least_paper(&set, design_check::design_check));
    finish(&set, boards)
}

/// Every sheet without its furniture, in the order of the set: views of the plate on the paper that the spec asks for, the
/// rest on what takes least paper.
fn boards(set: &Set<'_>) -> Vec<Board> {
    let mut boards = general::general(set);
    boards.extend(setting_out::setting_out(set));
    boards.extend(least_paper(set, flange_rivets::flange_and_rivets));
    let first = boards.len() + 1;
    let details = details::on_least_paper(set, first);
    let tests = least_paper(set, test_map::test_map);
    refer(set, &mut boards, (first, details.len(), tests.len()));
    boards.extend(details);
    boards.extend(tests);
    boards.extend(as_cut::as_cut(set));
    boards.extend(least_paper(set, design_check::design_check));
    boards.extend(marking_out::marking_out(set));
    boards.extend(tube_ends::tube_ends(set));
    boards.extend(survey::survey(set));
    boards.extend(least_paper(set, stages_by_group::stages_by_group));
    boards.extend(count_sheet::count_sheet(set));
    boards.extend(inspection::inspection(set));
    boards.extend(least_paper(set, fit_record::fit_record));
    boards.extend(tube_record::tube_record(set));
    boards.extend(test_sheet::test_sheet(set));
    boards.extend(least_paper(set, summary::summary));
    boards.extend(templates::templates(set));
    boards
}

/// Says on the general arrangement where its lettered places are enlarged, and where its parts are listed if they are not there.
fn refer(set: &Set<'_>, boards: &mut [Board], (first, details, tests): (usize, usize, usize)) {
    let mut lines = Vec::new();
    if details > 0 {
        let words = sheet_references::sheets(first, details);
        lines.push(format!("DETAILS IN LETTERED CIRCLES: {words}"));
    }
    if tests > 0 && part_balloons::has_parts(set) && !general::lists_parts(set) {
        let words = sheet_references::sheets(first + details, 1);
        lines.push(format!("PARTS IN NUMBERED CIRCLES: {words}"));
    }
    if let (Some(general), false) = (boards.first_mut(), lines.is_empty()) {
        sheet_references::put_reference(general, &lines);
    }
}

/// Furniture and numbers, once it is known how many sheets there are.
fn finish(set: &Set<'_>, mut boards: Vec<Board>) -> Vec<Sheet> {
    table_numbers::number_tables(&mut boards);
    let of = boards.len();
    let warning = warning::warning(set);
    boards
        .into_iter()
        .enumerate()
        .map(|(i, mut board)| {
            let (name, title, paper) = (board.name.clone(), board.title.clone(), board.paper);
            let (width, height) = paper_size::paper_size(paper);
            if let Some(warning) = &warning {
                overprint::put_overprint(&mut board, warning.loud);
            }
            interrupt::interrupt_extension_lines_at_holes(&mut board);
            interrupt::interrupt_lines_at_lettering(&mut board);
            furniture::put_frame(&mut board, paper);
            let place = SheetPlace {
                number: i + 1,
                of,
                title: &title,
            };
            title_block::put_title_block(&mut board, set, place);
            particulars::put_particulars(&mut board, set);
            if let Some(warning) = &warning {
                banner::put_banner(&mut board, paper, warning);
            }
            Sheet {
                number: i + 1,
                name,
                title,
                width,
                height,
                marks: board.marks,
            }
        })
        .collect()
}
