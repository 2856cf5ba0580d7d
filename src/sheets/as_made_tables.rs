//! Tables of a plate as it was made: what is not as designed, how much of it was recorded, and which verdicts changed.

use super::hole_record::LISTED;
use super::key_words::{Keys, in_words, key_words};
use super::letter_size::TABLE;
use super::notes::Notes;
use super::set::{AsMade, Set};
use super::table::Table;
use super::{Hang, face};
use crate::checks::measure::Unit;
use crate::checks::{Effect, effect_words};
use crate::design::{Deviation, number_runs};
use crate::units::Length;

/// A word wider than this is broken: nobody who remarks something thinks of the width of a column, mm.
const WIDEST_WORD: f64 = 30.0;

/// What is not as designed, a line each, with a blank for whoever agrees to it.
pub fn deviation_table(set: &Set<'_>, made: &AsMade<'_>) -> Table {
    let unit = Unit::of_job(&set.spec.written);
    let [difference, oval, off_x, off_y, off] =
        ["DIFFERENCE", "OVAL BY", "OFF, x", "OFF, y", "OFF BY"]
            .map(|head| format!("{head}, {}", unit.name()));
    let mut table = Table::new(
        "DEVIATIONS: WHAT IS NOT AS DESIGNED",
        &[
            ("NO.", 10.0, Hang::Middle),
            ("WHERE", 34.0, Hang::Start),
            ("DESIGNED", 23.0, Hang::End),
            ("MADE", 25.0, Hang::End),
            (&difference, 24.0, Hang::End),
            (&oval, 17.0, Hang::End),
            (&off_x, 18.0, Hang::End),
            (&off_y, 18.0, Hang::End),
            (&off, 18.0, Hang::End),
            ("REMARK", 52.0, Hang::Start),
            ("EFFECT ON THE CHECKS, RUN AGAIN", 86.0, Hang::Start),
            ("AGREED BY", 32.0, Hang::Middle),
        ],
    );
    table.least_row = LISTED;
    for (i, deviation) in made.deviations.iter().enumerate() {
        let effects = deviation.hole.and_then(|hole| made.effects.get(&hole));
        if effects.into_iter().flatten().any(|effect| effect.is_below) {
            table.loud.push(i);
        }
        table.row(row(set, i + 1, deviation, effects));
    }
    table
}

fn row(
    set: &Set<'_>,
    number: usize,
    deviation: &Deviation<'_>,
    effects: Option<&Vec<Effect>>,
) -> Vec<String> {
    let unit = Unit::of_job(&set.spec.written);
    let figure = |words: String| words.trim_end_matches(unit.name()).trim_end().to_string();
    let signed = |length: Length| figure(unit.signed(length));
    let dash = || "–".to_string();
    let oval = match (deviation.made, deviation.both_ways) {
        (None, _) => dash(),
        (Some(_), false) => "one way".into(),
        (Some(_), true) => deviation.oval_by.map_or(dash(), |l| figure(unit.text(l))),
    };
    let [x, y, by] = match (deviation.at, deviation.off) {
        _ if deviation.hole.is_none() => [dash(), dash(), dash()],
        (Some(_), Some(off)) => [
            signed(Length::mm(off.x)),
            signed(Length::mm(off.y)),
            figure(unit.text(Length::mm(off.radius()))),
        ],
        (Some(_), None) => [dash(), dash(), dash()],
        (None, _) => [dash(), dash(), "not taken".into()],
    };
    let is_measured = deviation.made.is_some() || deviation.at.is_some();
    let effect = match (deviation.hole, effects) {
        (None, _) => "none: the joint is judged at the designed hole".into(),
        (Some(_), None) if !is_measured => "not judged: nothing was measured".into(),
        (Some(_), None) => "nothing that is judged is changed".into(),
        (Some(_), Some(effects)) => in_words(set, &effect_words(effects), Keys::LeftOut),
    };
    let made = deviation.made.map(|size| size.as_written().to_string());
    vec![
        number.to_string(),
        format!("{}, {}", deviation.id, deviation.what),
        deviation.designed.as_written().to_string(),
        made.unwrap_or("not recorded".into()),
        deviation.over.map_or(dash(), signed),
        oval,
        x,
        y,
        by,
        lettered(deviation.remark.unwrap_or("–")),
        effect,
    ]
}

/// What somebody wrote by hand as it stands in a cell: braces would be taken for a fraction, and a word wider than the column is broken.
fn lettered(words: &str) -> String {
    let words = words.replace('{', "(").replace('}', ")");
    let mut out = String::new();
    for word in words.split_whitespace() {
        let mut piece = String::new();
        for letter in word.chars() {
            if face::width(&format!("{piece}{letter}"), TABLE, true) > WIDEST_WORD {
                out.push_str(&piece);
                out.push(' ');
                piece.clear();
            }
            piece.push(letter);
        }
        out.push_str(&piece);
        out.push(' ');
    }
    out.trim_end().to_string()
}

/// How many of the holes are off, and the most of each.
pub fn in_numbers(set: &Set<'_>, made: &AsMade<'_>) -> Table {
    let unit = Unit::of_job(&set.spec.written);
    let mut table = Table::new(
        "IN NUMBERS",
        &[
            ("WHAT", 50.0, Hang::Start),
            ("HOLES", 28.0, Hang::Middle),
            ("MOST", 26.0, Hang::End),
            ("AT", 20.0, Hang::Middle),
        ],
    );
    let record = made.record;
    let count = |is: &dyn Fn(&Deviation<'_>) -> bool| {
        made.deviations.iter().filter(|d| is(d)).count().to_string()
    };
    let most = |of: &dyn Fn(&Deviation<'_>) -> Option<Length>| -> Vec<String> {
        let found = made.deviations.iter().filter_map(|d| Some((d.id, of(d)?)));
        match found.reduce(|a, b| if b.1 > a.1 { b } else { a }) {
            Some((id, length)) => vec![unit.text(length), id.to_string()],
            None => vec!["–".into(), "–".into()],
        }
    };
    let over = |d: &Deviation<'_>| d.over.filter(|over| *over > Length::ZERO);
    let under = |d: &Deviation<'_>| d.over.filter(|o| *o < Length::ZERO).map(Length::abs);
    let all = set.design.holes.len();
    let recorded = format!("{} of {all}", record.holes.len());
    table.row(vec!["recorded in the flat".into(), recorded]);
    if let Some(line) = &set.design.rivets {
        let recorded = format!("{} of {}", record.rivets.len(), line.rivets.len());
        table.row(vec!["recorded of the rivet holes".into(), recorded]);
    }
    let mut kind = |what: &str, number: String, most: Vec<String>| {
        table.row([vec![what.to_string(), number], most].concat());
    };
    kind(
        "larger than designed",
        count(&|d| over(d).is_some()),
        most(&over),
    );
    kind(
        "smaller than designed",
        count(&|d| under(d).is_some()),
        most(&under),
    );
    kind(
        "oval",
        count(&|d| d.oval_by.is_some()),
        most(&|d| d.oval_by),
    );
    let off = |d: &Deviation<'_>| d.off.map(|off| Length::mm(off.radius()));
    kind("off their place", count(&|d| d.off.is_some()), most(&off));
    kind("remarked", count(&|d| d.remark.is_some()), Vec::new());
    table
}

/// Verdicts that are not those of the design; none where there are none.
pub fn changed_table(set: &Set<'_>, made: &AsMade<'_>) -> Option<Table> {
    let mut table = Table::new(
        "VERDICTS THAT THE MAKING CHANGED",
        &[
            ("RULE", 44.0, Hang::Start),
            ("WHERE", 58.0, Hang::Start),
            ("AS DESIGNED", 26.0, Hang::Start),
            ("AS MADE", 26.0, Hang::Start),
        ],
    );
    let verdict = |word: &Option<String>| word.clone().unwrap_or("no finding".into());
    for change in made.changed {
        if change.new.as_deref() == Some("below") {
            table.loud.push(table.rows.len());
        }
        table.row(vec![
            key_words(set, change.rule),
            in_words(set, &change.place, Keys::LeftOut),
            verdict(&change.old),
            verdict(&change.new),
        ]);
    }
    (!table.rows.is_empty()).then_some(table)
}

/// Whose record it is, how much of it is filled in, and what that leaves open.
pub fn record_notes(set: &Set<'_>, made: &AsMade<'_>) -> Notes {
    let record = made.record;
    let named = |what: &str, word: &str| match word {
        "" => format!("no {what} named"),
        word => format!("{what} named: {}", lettered(word)),
    };
    let mut notes = vec![format!(
        "record {}: {}; {}.",
        record.short_sha256(),
        named("instrument", &record.instrument),
        named("witness", &record.witness)
    )];
    let blank: Vec<&str> = record
        .blank
        .iter()
        .map(|&hole| set.design.holes[hole].id.as_str())
        .collect();
    if !blank.is_empty() {
        notes.push(format!(
            "not recorded, and taken here as designed: {}.",
            number_runs(&blank)
        ));
    }
    if set.design.rivets.is_some() {
        notes.push(format!(
            "rivet holes not recorded: {}. The riveted joint is judged at the designed hole.",
            record.rivets_blank
        ));
    }
    if record.fingerprint.is_empty() {
        notes.push(format!(
            "the record does not say for which spec it was printed, and this is {}: every printed figure in it agrees with this one.",
            set.spec.short_fingerprint()
        ));
    } else if record.fingerprint != set.spec.short_fingerprint() {
        notes.push(format!(
            "the record was printed for spec {}, and this is {}: every printed figure in it agrees with this one.",
            lettered(&record.fingerprint),
            set.spec.short_fingerprint()
        ));
    }
    if made.deviations.is_empty() {
        notes.push("as far as it is filled in, no hole is other than designed.".into());
    }
    if made.changed.is_empty() {
        notes.push("the making changed no verdict.".into());
    }
    notes.push("effect on the checks: a rule may name its worst place alone, so holes that are named are put back as designed and the checks run again, until none that was made otherwise is named. A change that names no hole stands among the changed verdicts alone.".into());
    let notes = notes.into_iter().map(|note| note.to_uppercase()).collect();
    Notes::new("THE RECORD", notes).at_height(TABLE)
}
