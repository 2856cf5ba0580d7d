//! Tables of the rivet line: its figures, and every hole with its angle and runs.

use super::Hang;
use super::set::Set;
use super::table::Table;
use crate::design::{RivetLine, RivetMade};
use crate::units::print;

/// Figures of the whole line.
pub fn rivet_figures(set: &Set<'_>, line: &RivetLine) -> Table {
    let mut table = Table::new(
        "RIVET LINE",
        &[("", 60.0, Hang::Start), ("FIGURE", 40.0, Hang::End)],
    );
    let fig = set.figures;
    let mut row = |what: &str, value: String| table.rows.push(vec![what.into(), value]);
    row("rivet, cold", fig.size(&line.rivet));
    row("finished hole", fig.size(&line.hole));
    row("hole centres to flange edge", fig.size(&line.from_edge));
    row(
        "angle from hole to hole, degrees",
        print::decimal(line.step_deg, 4),
    );
    row("pitch round the bore", fig.table(line.pitch_bore));
    row("pitch round barrel outside", fig.table(line.pitch_outside));
    row(
        "pitch round flange inside",
        fig.table(line.pitch_flange_face),
    );
    row("chord at bore", fig.table(line.chord_bore));
    row("chord at barrel outside", fig.table(line.chord_outside));
    row("girth of flange outside", fig.table(line.girth_flange));
    row("girth of bore", fig.table(line.girth_bore));
    if let Some(room) = &line.head_room {
        let figures = format!(
            "{} of {} needed",
            fig.short(room.given),
            fig.short(room.needed)
        );
        row(&room.words, figures);
    }
    table
}

/// Every rivet hole.
pub fn rivet_table(set: &Set<'_>, line: &RivetLine) -> Table {
    let mut table = Table::new(
        "RIVETS FROM BOTTOM CENTRE, CLOCKWISE",
        &[
            ("NO.", 10.0, Hang::Middle),
            ("ANGLE°", 16.0, Hang::End),
            ("RUN AT BORE", 29.0, Hang::End),
            ("AT OUTSIDE", 29.0, Hang::End),
            ("MADE", 15.0, Hang::Start),
        ],
    );
    for rivet in &line.rivets {
        if rivet.made == RivetMade::Tack {
            table.loud.push(table.rows.len());
        }
        table.rows.push(vec![
            rivet.id.clone(),
            print::decimal(rivet.angle_deg, 3),
            set.figures.level(rivet.run),
            set.figures.level(rivet.run_outside),
            rivet.made.name().into(),
        ]);
    }
    table
}
