//! Two specs: the keys that changed as written, and what they do to the holes, the figures and the verdicts.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use serde::Serialize;

use super::super::wrapped::wrapped;
use super::super::{Outcome, Said, Status, read_and_set_out};
use super::Asked;
use crate::checks::measure::shown;
use crate::checks::run_checks;
use crate::checks::{VerdictChange, verdict_changes};
use crate::design::{
    Changes, FigureChange, GroupCount, HoleAt, HoleChange, Point, Renumbered, changes,
};
use crate::spec::Spec;
use crate::units::print::trimmed;

/// Compares an older spec with a newer one.
pub(super) fn compare(old_file: &Path, new_file: &Path, asked: Asked<'_>) -> Outcome {
    let (old, old_design) = read_and_set_out(old_file)?;
    let (new, new_design) = read_and_set_out(new_file)?;
    let list = ChangeList {
        keys: keys(&old, &new),
        design: changes(&old_design, &new_design),
        verdicts: verdict_changes(
            &run_checks(&old, &old_design),
            &run_checks(&new, &new_design),
        ),
        old: &old,
        new: &new,
    };
    let words = match asked.json {
        true => list.as_json(),
        false => list.on_screen(asked.width),
    };
    let status = match list.is_empty() {
        true => Status::Done,
        false => Status::Differs,
    };
    Ok(Said { words, status })
}

struct ChangeList<'a> {
    old: &'a Spec,
    new: &'a Spec,
    keys: Vec<KeyChange>,
    design: Changes,
    verdicts: Vec<VerdictChange>,
}

/// A key whose word is another one, with its line in either file.
#[derive(Serialize)]
struct KeyChange {
    key: String,
    old: Option<String>,
    old_line: Option<usize>,
    new: Option<String>,
    new_line: Option<usize>,
}

/// Keys of either spec whose words differ: those of the old one in its order, then those that are new.
fn keys(old: &Spec, new: &Spec) -> Vec<KeyChange> {
    let words = |spec: &Spec| -> BTreeMap<String, (String, usize)> {
        let words = spec.words().into_iter();
        words
            .map(|(path, word, line)| (path, (word.to_string(), line)))
            .collect()
    };
    let (was, is) = (words(old), words(new));
    let order = old
        .words()
        .into_iter()
        .chain(new.words())
        .map(|(path, ..)| path);
    let mut found: Vec<KeyChange> = Vec::new();
    let mut told = BTreeSet::new();
    for key in order {
        let (old, new) = (was.get(&key), is.get(&key));
        if old.map(|o| &o.0) != new.map(|n| &n.0) && told.insert(key.clone()) {
            found.push(KeyChange {
                key,
                old: old.map(|o| o.0.clone()),
                old_line: old.map(|o| o.1),
                new: new.map(|n| n.0.clone()),
                new_line: new.map(|n| n.1),
            });
        }
    }
    found
}

fn place(at: Point) -> String {
    format!("({}, {}) mm", trimmed(at.x, 3), trimmed(at.y, 3))
}

fn hole(hole: &HoleAt) -> String {
    format!(
        "{} ({}), {} at {}",
        hole.id,
        hole.group,
        hole.finish,
        place(hole.at)
    )
}

/// How one hole changed: its sort, and the words.
fn hole_words(change: &HoleChange) -> (&'static str, String) {
    let numbers = |old: &HoleAt, new: &HoleAt| match old.id == new.id {
        true => old.id.clone(),
        false => format!("{}, now {}", old.id, new.id),
    };
    match change {
        HoleChange::Added(new) => ("added", hole(new)),
        HoleChange::Omitted(old) => ("left out", hole(old)),
        HoleChange::Renumbered { old, new } => ("renumbered", numbers(old, new)),
        HoleChange::Altered { old, new } => {
            let by = new.at - old.at;
            let mut words = format!("{} ({})", numbers(old, new), old.group);
            if !old.same_place(new) {
                words.push_str(&format!(
                    ": from {} to {}, by {} mm",
                    place(old.at),
                    place(new.at),
                    trimmed(by.radius(), 3)
                ));
            }
            if !old.same_size(new) {
                words.push_str(&format!(": {} was {}", new.finish, old.finish));
            }
            let sort = match (old.same_place(new), old.same_size(new)) {
                (false, true) => "moved",
                (true, _) => "resized",
                (false, false) => "moved and resized",
            };
            (sort, words)
        }
    }
}

/// Numbers that became others: "T5 to T119, now T1 to T115".
fn renumbered(run: &Renumbered) -> String {
    let Renumbered { first, last } = run;
    match first == last {
        true => format!("{}, now {}", first.0, first.1),
        false => format!("{} to {}, now {} to {}", first.0, last.0, first.1, last.1),
    }
}

fn figure(value: Option<f64>, unit: &str) -> String {
    match value {
        None => "none".into(),
        Some(value) if unit.is_empty() => trimmed(value, 0),
        Some(value) => shown(value, unit),
    }
}

fn or_nothing<T: ToString>(value: Option<T>) -> String {
    value.map_or("nothing".into(), |value| value.to_string())
}

impl ChangeList<'_> {
    fn is_empty(&self) -> bool {
        self.keys.is_empty() && self.verdicts.is_empty() && self.design.is_empty()
    }

    fn on_screen(&self, width: usize) -> String {
        let named = |spec: &Spec| {
            let job = &spec.written.job;
            format!(
                "{} {}, spec {}",
                job.drawing,
                job.revision,
                spec.short_fingerprint()
            )
        };
        let heading = format!("From {} to {}.", named(self.old), named(self.new));
        let mut text = wrapped("", &heading, width);
        if self.is_empty() {
            text.push_str("\nNo difference.\n");
            return text;
        }
        self.section(&mut text, "Keys", self.key_lines(), width);
        self.section(&mut text, "Holes", self.hole_lines(), width);
        self.section(&mut text, "Figures", self.figure_lines(), width);
        self.section(&mut text, "Verdicts", self.verdict_lines(), width);
        text
    }

    fn section(&self, text: &mut String, heading: &str, lines: Vec<String>, width: usize) {
        text.push_str(&format!("\n{heading}\n"));
        if lines.is_empty() {
            text.push_str("  no difference\n");
        }
        for line in lines {
            text.push_str(&wrapped("  ", &line, width));
        }
    }

    fn key_lines(&self) -> Vec<String> {
        let tell = |key: &KeyChange| match (&key.old, &key.new) {
            (Some(old), Some(new)) => format!("{}: {new}, was {old}", key.key),
            (None, Some(new)) => format!("{}: {new}, was not written", key.key),
            (Some(old), None) => format!("{}: not written, was {old}", key.key),
            (None, None) => key.key.clone(),
        };
        self.keys.iter().map(tell).collect()
    }

    fn hole_lines(&self) -> Vec<String> {
        let design = &self.design;
        let count = |c: &GroupCount| {
            format!(
                "{}: {} holes, were {}",
                c.group,
                or_nothing(c.new),
                or_nothing(c.old)
            )
        };
        let mut lines: Vec<String> = design.counts.iter().map(count).collect();
        let is_renumbered = |change: &&HoleChange| matches!(change, HoleChange::Renumbered { .. });
        let altered = design.holes.iter().filter(|c| !is_renumbered(c));
        lines.extend(altered.map(|change| {
            let (sort, words) = hole_words(change);
            format!("{sort}: {words}")
        }));
        let numbers: Vec<String> = design.renumbered().iter().map(renumbered).collect();
        if !numbers.is_empty() {
            lines.push(format!(
                "renumbered, else unchanged: {}",
                numbers.join("; ")
            ));
        }
        lines
    }

    fn figure_lines(&self) -> Vec<String> {
        let tell = |f: &FigureChange| {
            format!(
                "{}: {}, was {}",
                f.name,
                figure(f.new, f.unit),
                figure(f.old, f.unit)
            )
        };
        let mut lines: Vec<String> = self.design.figures.iter().map(tell).collect();
        if let Some((at, off)) = self.design.edge {
            lines.push(format!(
                "the edge runs up to {} mm off the old one, at {}",
                trimmed(off, 3),
                place(at)
            ));
        }
        lines
    }

    fn verdict_lines(&self) -> Vec<String> {
        self.verdicts.iter().map(VerdictChange::words).collect()
    }

    fn as_json(&self) -> String {
        let side = |spec: &Spec| {
            let job = &spec.written.job;
            serde_json::json!({
                "file": spec.file, "drawing": job.drawing, "revision": job.revision, "fingerprint": spec.fingerprint,
            })
        };
        let at = |hole: &HoleAt| {
            serde_json::json!({
                "id": hole.id, "group": hole.group, "x_mm": hole.at.x, "y_mm": hole.at.y,
                "finish_mm": hole.finish.value().to_mm(), "finish": hole.finish.as_written(),
            })
        };
        let hole = |change: &HoleChange| {
            let (sort, _) = hole_words(change);
            let (old, new) = match change {
                HoleChange::Added(new) => (None, Some(at(new))),
                HoleChange::Omitted(old) => (Some(at(old)), None),
                HoleChange::Altered { old, new } | HoleChange::Renumbered { old, new } => {
                    (Some(at(old)), Some(at(new)))
                }
            };
            serde_json::json!({"change": sort, "old": old, "new": new})
        };
        let design = &self.design;
        let count =
            |c: &GroupCount| serde_json::json!({"group": c.group, "old": c.old, "new": c.new});
        let figure = |f: &FigureChange| serde_json::json!({"name": f.name, "unit": f.unit, "old": f.old, "new": f.new});
        let report = serde_json::json!({
            "version": env!("CARGO_PKG_VERSION"),
            "old": side(self.old),
            "new": side(self.new),
            "keys": self.keys,
            "holes": design.holes.iter().map(hole).collect::<Vec<_>>(),
            "counts": design.counts.iter().map(count).collect::<Vec<_>>(),
            "figures": design.figures.iter().map(figure).collect::<Vec<_>>(),
            "edge": design.edge.map(|(at, off)| serde_json::json!({"x_mm": at.x, "y_mm": at.y, "off_mm": off})),
            "verdicts": self.verdicts,
        });
        let mut text = serde_json::to_string_pretty(&report).expect("a change list is plain JSON");
        text.push('\n');
        text
    }
}
