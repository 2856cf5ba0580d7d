//! Tables beside the parts as cut: sizes split net, trim and as cut, masses, holes cut and holes left, and why.

use super::Hang;
use super::set::Set;
use super::table::Table;
use crate::cut::CutPart;
use crate::design::FlangeDesign;
use crate::units::print;

/// Sizes of blank and ring with their allowances, and masses.
pub fn blank_sizes(set: &Set<'_>) -> Table {
    let mut table = Table::new(
        "SIZES AND ALLOWANCES",
        &[("", 80.0, Hang::Start), ("FIGURE", 48.0, Hang::End)],
    );
    let (fig, d) = (set.figures, set.design);
    let mut row = |what: &str, value: String| table.rows.push(vec![what.into(), value]);
    match &d.flange {
        Some(FlangeDesign::Pressed(p)) => {
            row(
                &format!("net blank, {}", p.allowance_words),
                fig.table(p.blank_mid_line),
            );
            row("net blank by equal area", fig.table(p.blank_equal_area));
            row(
                "the two differ by (forming decides)",
                fig.table((p.blank_mid_line - p.blank_equal_area).abs()),
            );
            row("trim all round", fig.size(&p.trim));
            row("blank as cut, diameter", fig.table(p.blank_cut));
            row("length round the heel", fig.table(p.heel_arc));
            row(
                "heel strain if bent cold",
                format!("{} %", print::decimal(100.0 * p.heel_strain, 1)),
            );
            row(
                "rim shrinks in girth by",
                format!("{} %", print::decimal(100.0 * p.rim_shrink, 1)),
            );
        }
        Some(FlangeDesign::Fabricated(f)) => {
            row("plate, width", fig.table(d.figures.outline_box.0));
            row("plate, height", fig.table(d.figures.outline_box.1));
            row(
                "length of the plate's edge",
                fig.table(d.figures.outline_perimeter),
            );
            row("ring strip, net, on mid thickness", fig.table(f.strip_net));
            row(
                "preparation and roll ends",
                fig.table(f.strip_cut - f.strip_net),
            );
            row("ring strip as cut", fig.table(f.strip_cut));
            row(
                "ring bar, width by thickness",
                format!(
                    "{} × {}",
                    fig.size_short(&f.ring_width),
                    fig.size_short(&f.ring_thickness)
                ),
            );
        }
        None => {
            row("plate, width", fig.table(d.figures.outline_box.0));
            row("plate, height", fig.table(d.figures.outline_box.1));
        }
    }
    let cutting = set.spec.written.cutting.as_ref();
    if let Some(dress) = cutting.and_then(|c| c.dress_outside.as_ref()) {
        row("left on outside edges for dressing", fig.size(dress));
    }
    for part in set.parts {
        if let Some(kg) = part.mass_kg {
            row(
                &format!("mass of the {} as cut, no hole out", part.name),
                fig.mass(kg),
            );
        }
    }
    if let Some(kg) = d.figures.plate_mass_kg {
        row("mass of the plate finished, every hole out", fig.mass(kg));
    }
    table
}

/// Holes that the contractor cuts; none where he cuts none.
pub fn holes_cut(set: &Set<'_>) -> Option<Table> {
    let mut table = Table::new(
        "HOLES CUT",
        &[
            ("HOLES", 40.0, Hang::Start),
            ("OFF", 14.0, Hang::Middle),
            ("CUT TO", 37.0, Hang::End),
            ("FINISHED AT THE WORKS", 37.0, Hang::End),
        ],
    );
    for part in set.parts {
        for cut in &part.holes_cut {
            table.rows.push(vec![
                cut.name.clone(),
                cut.ids.len().to_string(),
                set.figures.table(cut.cut),
                set.figures.table(cut.finish),
            ]);
        }
    }
    (!table.rows.is_empty()).then_some(table)
}

/// Holes that he leaves, what he makes instead, and why.
pub fn not_cut(set: &Set<'_>) -> Option<Table> {
    let mut table = Table::new(
        "NOT CUT, AND WHY",
        &[
            ("HOLES", 34.0, Hang::Start),
            ("OFF", 11.0, Hang::Middle),
            ("INSTEAD", 19.0, Hang::Start),
            ("WHY", 64.0, Hang::Start),
        ],
    );
    for part in set.parts {
        for left in &part.withheld {
            table.rows.push(vec![
                runs_of_numbers(&left.ids),
                left.ids.len().to_string(),
                left.instead.into(),
                left.reason.clone(),
            ]);
        }
    }
    (!table.rows.is_empty()).then_some(table)
}

/// What is stamped or scribed into each part, under the letter that stands at its box.
pub fn stamps(set: &Set<'_>) -> Option<Table> {
    let mut table = Table::new(
        "STAMPED WHERE BOXED",
        &[
            ("BOX", 12.0, Hang::Middle),
            ("ON THE", 28.0, Hang::Start),
            ("WORDS", 88.0, Hang::Start),
        ],
    );
    for part in set.parts {
        for (letter, inscribed) in letters_of(set, part).into_iter().zip(&part.inscriptions) {
            table
                .rows
                .push(vec![letter, part.name.clone(), inscribed.says.join(" / ")]);
        }
    }
    (!table.rows.is_empty()).then_some(table)
}

/// Letters of what is stamped on a part, going on from part to part: a to z, then a1.
pub fn letters_of(set: &Set<'_>, part: &CutPart) -> Vec<String> {
    let before: usize = set
        .parts
        .iter()
        .take_while(|p| !std::ptr::eq(*p, part))
        .map(|p| p.inscriptions.len())
        .sum();
    (before..before + part.inscriptions.len())
        .map(|n| {
            let letter = char::from(b'a' + u8::try_from(n % 26).unwrap_or(0));
            match n / 26 {
                0 => letter.to_string(),
                round => format!("{letter}{round}"),
            }
        })
        .collect()
}

/// Numbers in runs: "T1–T17, T19–T100, W1".
pub fn runs_of_numbers(ids: &[String]) -> String {
    let split = |id: &str| {
        let figures = id.trim_start_matches(|c: char| !c.is_ascii_digit());
        let letters = id[..id.len() - figures.len()].to_string();
        (letters, figures.parse::<u32>().ok())
    };
    let mut runs: Vec<(String, String)> = Vec::new();
    for id in ids {
        let follows = runs.last().is_some_and(|(_, last)| {
            let ((a, n), (b, m)) = (split(last), split(id));
            a == b && n.zip(m).is_some_and(|(n, m)| m == n + 1)
        });
        match runs.last_mut() {
            Some(run) if follows => run.1 = id.clone(),
            _ => runs.push((id.clone(), id.clone())),
        }
    }
    let words: Vec<String> = runs
        .into_iter()
        .map(|(a, b)| if a == b { a } else { format!("{a}–{b}") })
        .collect();
    words.join(", ")
}

#[cfg(test)]
mod tests {
    use super::*;

    /// T1, T2, T3, T5, W1 is two runs and a single.
    #[test]
    fn by_hand_numbers_in_runs() {
        let ids = ["T1", "T2", "T3", "T5", "W1"].map(String::from);
        assert_eq!(runs_of_numbers(&ids), "T1–T3, T5, W1");
    }
}
