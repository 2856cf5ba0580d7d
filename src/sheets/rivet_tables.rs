//! Tables of the rivet line: its figures, and every hole with its angle and runs.

use super::Hang;
use super::set::Set;
use super::table::Table;
use crate::design::{RivetLine, RivetMade};
use crate::spec::Arrangement;
use crate::units::print;

/// Figures of the whole line.
pub fn rivet_figures(set: &Set<'_>, line: &RivetLine) -> Table {
    let mut table = Table::new(
        "RIVET LINE",
        &[("", 60.0, Hang::Start), ("FIGURE", 40.0, Hang::End)],
    );
    let fig = set.figures;
    // Unstacked, so that each figure keeps to a low line.
    let mut row = |what: &str, value: String| {
        table
            .rows
            .push(vec![what.into(), value.replace(['{', '}'], "")]);
    };
    row("rivet, cold", fig.size(&line.rivet));
    row("finished hole", fig.size(&line.hole));
    match &line.rows {
        None => row("hole centres to flange edge", fig.size(&line.from_edge)),
        Some(rows) => {
            row(
                &format!("rows, {}", rows.arrangement.name()),
                format!("{} of {}", rows.number, line.in_a_row()),
            );
            row("row 1 to flange edge", fig.size(&line.from_edge));
            row("row to row", fig.size(&rows.apart));
            row(
                &format!("row {} to flange edge", rows.number),
                fig.table(line.inner_row_from_edge()),
            );
            if rows.arrangement == Arrangement::ZigZag {
                row(
                    "diagonal pitch round the bore",
                    fig.table(rows.diagonal_bore),
                );
            }
        }
    }
    row("pitch round the bore", fig.table(line.pitch_bore));
    row("pitch round barrel outside", fig.table(line.pitch_outside));
    row(
        "pitch round flange inside",
        fig.table(line.pitch_flange_face),
    );
    row("chord at bore", fig.table(line.chord_bore));
    row("chord at barrel outside", fig.table(line.chord_outside));
    if line.girth_flange.same_as(line.girth_bore) {
        row("girth of flange outside, bore", fig.table(line.girth_bore));
    } else {
        row("girth of flange outside", fig.table(line.girth_flange));
        row("girth of bore", fig.table(line.girth_bore));
    }
    if let Some(room) = &line.head_room {
        let figures = format!(
            "needs {}, has {}",
            fig.short(room.needed),
            fig.short(room.given)
        );
        row(&room.words, figures);
    }
    table
}

/// Every rivet hole, a line each: an inch job has its fraction and its decimal in two columns, unstacked: as many low lines as there are
/// rivets stand beside the views, where stacked ones want a sheet of their own that is half empty.
pub fn rivet_table(set: &Set<'_>, line: &RivetLine) -> Table {
    let inches = set.figures.in_inches();
    let mut columns = vec![("NO.", 9.5, Hang::Middle), ("ANGLE°", 16.4, Hang::End)];
    if inches {
        columns.push(("AT BORE", 24.0, Hang::End));
    }
    let run = if inches { 16.4 } else { 17.5 };
    columns.push((if inches { "DECIMAL" } else { "AT BORE" }, run, Hang::End));
    columns.push(("OUTSIDE", run, Hang::End));
    columns.push(("MADE", 15.0, Hang::Start));
    if line.rows.is_some() {
        columns.insert(1, ("ROW", 9.0, Hang::Middle));
    }
    let mut table = Table::new("RIVETS, ANGLES FROM TOP", &columns);
    for (i, rivet) in line.rivets.iter().enumerate() {
        let mut row = vec![rivet.id.clone(), print::decimal(rivet.angle_deg, 3)];
        if inches {
            row.push(print::inches(rivet.run));
        }
        row.push(set.figures.decimal(rivet.run));
        row.push(set.figures.decimal(rivet.run_outside));
        row.push(match rivet.made {
            _ if !set.design.rivet_is_made(i) => "stands".into(),
            RivetMade::Tack => "TACK".into(),
            RivetMade::Drawn | RivetMade::InPlace => rivet.made.name().into(),
        });
        if line.rows.is_some() {
            row.insert(1, rivet.row.to_string());
        }
        table.rows.push(row);
    }
    table
}
