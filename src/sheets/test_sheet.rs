//! Sheet: hydraulic and steam test. Blank but for what different rules would ask, side by side; none is chosen.

use super::Hang;
use super::board::Board;
use super::flow::Block;
use super::key_words::{Keys, in_words};
use super::pages::pages;
use super::set::Set;
use super::table::Table;
use crate::checks::Verdict;

/// Rule whose findings set the pressures side by side.
const RULE: &str = "test_pressure";
/// So many lines stand blank for what is seen.
const SEEN: usize = 17;

/// Height of a line of the tests, mm: two lines are written in it.
const TEST_ROW: f64 = 11.0;

/// The test sheet.
pub fn test_sheet(set: &Set<'_>) -> Vec<Board> {
    let blocks = vec![
        Block::Caution(
            "THE INSPECTING BODY STATES THE TEST PRESSURE. THIS SHEET CHOOSES NONE AND CERTIFIES NOTHING.".into(),
            4.0,
        ),
        Block::Table(factors(set), 0),
        Block::Table(tests(set), 0),
        Block::NextColumn,
        Block::Caution(
            "FILL TO THE HIGHEST VENT AND PROVE EVERY VENT. NON-ESSENTIAL PEOPLE AWAY. NOBODY STANDS IN LINE WITH THE PLATE, A PLUG OR A TUBE END.".into(),
            3.5,
        ),
        Block::Table(seen(), 0),
        Block::Table(signatures(), 0),
    ];
    pages(set, "test", "Test sheet", 2, blocks)
}

/// What each rule would ask, in the unit that the working pressure is written in.
fn factors(set: &Set<'_>) -> Table {
    let mut table = Table::new(
        "TEST PRESSURES BY DIFFERENT RULES, SIDE BY SIDE: NONE IS CHOSEN",
        &[
            ("RULE", 76.0, Hang::Start),
            ("FORM, p WORKING PRESSURE", 54.0, Hang::Start),
            ("PRESSURE", 40.0, Hang::End),
        ],
    );
    for finding in set.findings.iter().filter(|f| f.rule == RULE) {
        if let Verdict::NotJudged { why } = &finding.verdict {
            table.row(vec![in_words(set, why, Keys::LeftOut)]);
        }
        for line in &finding.working {
            table.row(cells_of(line));
        }
    }
    if table.rows.is_empty() {
        table.row(vec!["working pressure not given".into()]);
    }
    table
}

/// A line of working, "rule: form = pressure", in its three cells.
fn cells_of(line: &str) -> Vec<String> {
    let (rule, rest) = line.split_once(": ").unwrap_or((line, ""));
    let (form, pressure) = rest.rsplit_once(" = ").unwrap_or((rest, ""));
    // The rules work in psi; a job in bar reads its own unit first.
    let pressure = match pressure.trim_end_matches(')').split_once(" (") {
        Some((psi, own)) => format!("{own} = {psi}"),
        None => pressure.into(),
    };
    vec![rule.into(), form.into(), pressure]
}

/// The unit that pressures are written down in: that of the working pressure.
fn unit_of(set: &Set<'_>) -> &'static str {
    let written = set.spec.written.working_pressure.as_ref();
    let written = written.map_or("", |pressure| pressure.as_written());
    match (written.contains("bar"), written.contains("N/mm")) {
        (true, _) => "bar",
        (_, true) => "N/mm²",
        _ if written.is_empty() && !set.figures.in_inches() => "bar",
        _ => "psi",
    }
}

/// What is written down of each test.
fn tests(set: &Set<'_>) -> Table {
    let mut table = Table::new(
        "TESTS",
        &[
            ("", 62.0, Hang::Start),
            ("HYDRAULIC", 54.0, Hang::Middle),
            ("STEAM", 54.0, Hang::Middle),
        ],
    )
    .filled_in();
    table.least_row = TEST_ROW;
    let pressure = set
        .spec
        .written
        .working_pressure
        .as_ref()
        .map_or("not given".into(), |p| p.as_written().to_string());
    table.row(vec![format!("working pressure, as drawn: {pressure}")]);
    let unit = unit_of(set);
    for line in [
        format!("test pressure, {unit}"),
        "stated by, and in which letter".into(),
        "date".into(),
        "gauge, number and certificate".into(),
        "second gauge, number and certificate".into(),
        "temperature of water, °C".into(),
        "temperature of plate, °C".into(),
        "held, from and to, hours and minutes".into(),
        format!("pressure at the end, {unit}"),
    ] {
        table.row(vec![line]);
    }
    table
}

fn seen() -> Table {
    let mut table = Table::new(
        "WHAT IS SEEN",
        &[
            ("NO.", 10.0, Hang::Middle),
            ("WHERE (HOLE OR RIVET NO.)", 48.0, Hang::Middle),
            ("WHAT", 48.0, Hang::Middle),
            ("WHAT IS DONE", 44.0, Hang::Middle),
            ("BY", 20.0, Hang::Middle),
        ],
    )
    .filled_in();
    for i in 1..=SEEN {
        table.row(vec![i.to_string()]);
    }
    table
}

fn signatures() -> Table {
    let mut table = Table::new(
        "SIGNED",
        &[
            ("FOR", 44.0, Hang::Start),
            ("NAME", 46.0, Hang::Middle),
            ("SIGNATURE", 50.0, Hang::Middle),
            ("DATE", 30.0, Hang::Middle),
        ],
    );
    table.least_row = 11.0;
    for who in ["the works", "the inspecting body", "the owner"] {
        table.row(vec![who.into()]);
    }
    table
}

#[cfg(test)]
mod tests_of_sheet {
    use super::super::sample_jobs::with_set;
    use super::*;

    /// 160 psi: 1.25 p = 200, 1.5 p = 240, first test 1.5 × 160 + 50 = 290 psi, and none of them is marked.
    #[test]
    fn by_hand_pressures_stand_side_by_side() {
        with_set("specs/marl-hen-smokebox.yaml", |set| {
            let table = factors(set);
            let psi: Vec<&str> = table.rows.iter().map(|r| r[2].as_str()).collect();
            assert_eq!(psi, ["200.0 psi", "200.0 psi", "240.0 psi", "290.0 psi"]);
            assert!(table.loud.is_empty());
        });
    }

    /// Hobthrush works at 10.34 bar: 1.5 p = 15.51 bar; 10.34 bar is 149.97 psi (14.50377 psi to the bar), so the first test is
    /// 1.5 × 149.97 + 50 = 274.95 psi, which is 18.96 bar. The job's own unit stands first, and every form is written out.
    #[test]
    fn by_hand_pressures_in_bar() {
        with_set("specs/hobthrush-smokebox.yaml", |set| {
            let rows = factors(set).rows;
            assert!(rows[2][2].starts_with("15.51 bar"), "{:?}", rows[2]);
            assert_eq!(rows[3][1], "1.5 p + 50 psi, first test");
            assert!(rows[3][2].starts_with("18.96 bar"), "{:?}", rows[3]);
        });
    }
}
