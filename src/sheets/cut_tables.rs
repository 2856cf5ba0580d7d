//! Tables beside the parts as cut: sizes split net, trim and as cut, masses, holes cut and holes left, and why.

use super::Hang;
use super::set::Set;
use super::table::Table;
use crate::cut::{Between, CutPart, PartKind, long_sizes};
use crate::design::FlangeDesign;
use crate::design::cutter::{Figure, Settings};
use crate::spec::Flange;
use crate::units::{Length, print};

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
                fig.for_cutter(p.blank_mid_line),
            );
            row("net blank, equal area", fig.for_cutter(p.blank_equal_area));
            row(
                "the two differ by (forming decides)",
                fig.for_cutter((p.blank_mid_line - p.blank_equal_area).abs()),
            );
            row("trim all round", fig.size_for_cutter(&p.trim));
            row("blank as cut, diameter", fig.for_cutter(p.blank_cut));
            row("length round the heel", fig.for_cutter(p.heel_arc));
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
            row(
                "plate finished, width",
                fig.for_cutter(d.figures.outline_box.0),
            );
            row(
                "plate finished, height",
                fig.for_cutter(d.figures.outline_box.1),
            );
            row(
                "length of its edge",
                fig.for_cutter(d.figures.outline_perimeter),
            );
            row(
                "ring strip, net, on mid thickness",
                fig.for_cutter(f.strip_net),
            );
            row(
                "preparation and roll ends",
                match adds_to_the_strip(set) {
                    true => fig.for_cutter(f.strip_cut - f.strip_net),
                    false => "not given".into(),
                },
            );
            let dress = dress_outside(set, f.ring_thickness.value());
            let dress = dress.map_or(Length::ZERO, |figure| figure.value);
            row(
                "ring strip as cut",
                fig.for_cutter(f.strip_cut + 2.0 * dress),
            );
            row(
                "ring bar, width by thickness",
                format!(
                    "{} × {}",
                    fig.size_for_cutter(&f.ring_width),
                    fig.size_for_cutter(&f.ring_thickness)
                ),
            );
        }
        None => {
            row(
                "plate finished, width",
                fig.for_cutter(d.figures.outline_box.0),
            );
            row(
                "plate finished, height",
                fig.for_cutter(d.figures.outline_box.1),
            );
        }
    }
    if let (Some(dress), false) = (
        dress_outside(set, d.thickness.value()),
        matches!(d.flange, Some(FlangeDesign::Pressed(_))),
    ) {
        row(
            "left on outside edges for dressing",
            fig.for_cutter(dress.value),
        );
    }
    for size in set.parts.iter().flat_map(long_sizes) {
        if size.between == Between::Pops {
            row(&size.words, fig.for_cutter(Length::mm(size.mm)));
        }
    }
    for part in set.parts {
        if let Some(kg) = part.mass_kg {
            row(
                &format!("mass of the {}, {}", part.name, part.mass_is_of()),
                fig.mass(kg),
            );
        }
    }
    if let Some(kg) = d.figures.plate_mass_kg {
        row(
            "mass of the plate alone finished, every hole out",
            fig.mass(kg),
        );
    }
    table
}

/// What the cutter leaves on outside edges of a part of this thickness.
fn dress_outside(set: &Set<'_>, thickness: Length) -> Option<Figure> {
    let cutting = set.spec.written.cutting.as_ref()?;
    Settings::of(cutting, Some(thickness)).dress_outside()
}

/// Whether the spec says what is added to the strip of a ring; what it does not say is no nought.
fn adds_to_the_strip(set: &Set<'_>) -> bool {
    match &set.spec.written.flange {
        Some(Flange::Fabricated(f)) => {
            f.strip_allowance.is_some()
                || f.strip_preparation.is_some()
                || f.strip_roll_waste.is_some()
        }
        Some(Flange::Pressed(_)) | None => false,
    }
}

/// What is called so on a part, by the part's name too where it is no hole of the plate.
fn on_part(part: &CutPart, name: &str) -> String {
    match part.kind {
        PartKind::Pad => format!("{name} of the {}", part.name),
        PartKind::Plate | PartKind::Ring | PartKind::Template => name.into(),
    }
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
                on_part(part, &cut.name),
                cut.ids.len().to_string(),
                set.figures.for_cutter(cut.cut),
                set.figures.for_cutter(cut.finish),
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
                on_part(part, &runs_of_numbers(&left.ids)),
                left.ids.len().to_string(),
                left.instead.into(),
                left.reason.clone(),
            ]);
        }
    }
    (!table.rows.is_empty()).then_some(table)
}

/// What is stamped or scribed into each part, under the letter that stands at its box, with the box's lower left corner; then what is
/// asked for by hand. Corners are measured as in the file.
pub fn stamps(set: &Set<'_>) -> Option<Table> {
    let mut table = Table::new(
        "STAMPED IN BOXES, LOWER LEFT AT x, y; / IS A NEW LINE",
        &[
            ("BOX", 8.0, Hang::Middle),
            ("ON THE", 19.0, Hang::Start),
            ("WORDS", 73.0, Hang::Start),
            ("x, mm", 14.0, Hang::End),
            ("y, mm", 14.0, Hang::End),
        ],
    );
    for part in set.parts {
        for (letter, inscribed) in letters_of(set, part).into_iter().zip(&part.inscriptions) {
            let [x, y] = [inscribed.low.x, inscribed.low.y].map(|mm| print::trimmed(mm, 1));
            let words = inscribed.says.join(" / ");
            table.row(vec![letter, part.name.clone(), words, x, y]);
        }
        if !part.by_hand.is_empty() {
            let words = format!("BY HAND: {}", part.by_hand.join(" / "));
            table.row(vec!["–".into(), part.name.clone(), words]);
        }
    }
    (!table.rows.is_empty()).then_some(table)
}

/// What the contractor measures on each part as cut beside the sizes that its view carries: from hole to hole and corner to corner.
pub fn check_sizes(set: &Set<'_>) -> Option<Table> {
    let mut table = Table::new(
        "MEASURED ON THE PARTS AS CUT, WITH THE SIZES OVER ALL",
        &[
            ("PART", 17.0, Hang::Start),
            ("BETWEEN", 85.0, Hang::Start),
            ("SIZE", 26.0, Hang::End),
        ],
    );
    // A template has every size of it on its view.
    let parts = set
        .parts
        .iter()
        .filter(|part| part.kind != PartKind::Template);
    for part in parts {
        let sizes = long_sizes(part).into_iter();
        for size in sizes.filter(|size| size.between == Between::Places) {
            table.row(vec![
                part.name.clone(),
                size.words,
                set.figures.for_cutter(Length::mm(size.mm)),
            ]);
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
