//! What is struck on the plate before it is popped: the lines of a nest, each in evenly pitched runs, from the datum lines alone.

use std::collections::BTreeMap;

use super::{Design, Hole, LineWay};
use crate::units::Length;

/// Evenly pitched holes along one line of a nest. A line that lacks a hole in its middle is two runs.
#[derive(Clone, Debug)]
pub struct Run {
    /// Index into [`Design::groups`].
    pub group: usize,
    /// Name of the line.
    pub line: String,
    /// Whether the line is a column or a row.
    pub way: LineWay,
    /// x of a column from the vertical datum, y of a row from the level one.
    pub offset: Length,
    /// y of the lowest hole of a column, x of the leftmost of a row.
    pub first: Length,
    /// From hole to hole; none for a single hole.
    pub pitch: Option<Length>,
    /// How many holes.
    pub count: usize,
    /// y of the highest hole of a column, x of the rightmost of a row.
    pub last: Length,
    /// Numbers of the first and the last hole.
    pub ids: (String, String),
}

/// Every line of every nest, in evenly pitched runs.
pub fn runs(design: &Design) -> Vec<Run> {
    let by_id: BTreeMap<&str, &Hole> = design.holes.iter().map(|h| (h.id.as_str(), h)).collect();
    let mut found = Vec::new();
    for &(group, way) in &design.line_way {
        let lines: Vec<Vec<(String, f64)>> = design
            .nest_lines
            .iter()
            .filter(|line| line.group == group)
            .map(|line| places_along(&by_id, &line.holes, way))
            .collect();
        let Some(pitch) = closest(&lines) else {
            continue;
        };
        let named = design.nest_lines.iter().filter(|line| line.group == group);
        for (line, places) in named.zip(&lines) {
            for run in evenly(places, pitch) {
                let (Some(first), Some(last)) = (run.first(), run.last()) else {
                    continue;
                };
                found.push(Run {
                    group,
                    line: line.name.clone(),
                    way,
                    offset: Length::mm(line.offset),
                    first: Length::mm(first.1),
                    pitch: (run.len() > 1).then(|| Length::mm(run[1].1 - run[0].1)),
                    count: run.len(),
                    last: Length::mm(last.1),
                    ids: (first.0.clone(), last.0.clone()),
                });
            }
        }
    }
    found
}

fn places_along(by_id: &BTreeMap<&str, &Hole>, ids: &[String], way: LineWay) -> Vec<(String, f64)> {
    ids.iter()
        .filter_map(|id| {
            let at = by_id.get(id.as_str())?.at;
            Some((
                id.clone(),
                match way {
                    LineWay::Columns => at.y,
                    LineWay::Rows => at.x,
                },
            ))
        })
        .collect()
}

/// The closest that two neighbours of any line stand: the pitch of the nest.
fn closest(lines: &[Vec<(String, f64)>]) -> Option<f64> {
    let steps = lines
        .iter()
        .flat_map(|line| line.windows(2).map(|pair| pair[1].1 - pair[0].1));
    // A nest whose lines hold a single hole each has no pitch; each hole is then a run.
    Some(steps.fold(f64::INFINITY, f64::min)).filter(|_| lines.iter().any(|l| !l.is_empty()))
}

fn evenly(places: &[(String, f64)], pitch: f64) -> Vec<&[(String, f64)]> {
    let mut runs = Vec::new();
    let mut start = 0;
    for i in 1..=places.len() {
        let breaks = i == places.len()
            || !Length::mm(places[i].1 - places[i - 1].1).same_as(Length::mm(pitch));
        if breaks {
            runs.push(&places[start..i]);
            start = i;
        }
    }
    runs
}

#[cfg(test)]
mod tests {
    use std::path::Path;

    use super::*;
    use crate::design::set_out;
    use crate::spec::read_spec_file;

    fn design(file: &str) -> Design {
        let spec = read_spec_file(Path::new(file)).unwrap_or_else(|faults| panic!("{faults}"));
        set_out(&spec).unwrap_or_else(|faults| panic!("{faults:#?}"))
    }

    /// The middle column from −11.671875 (1 19/64 − 5 × 2 19/32) by 2 19/32 in 8 holes ends at 6.484375; no column has a gap.
    #[test]
    fn by_hand_columns_of_marl_hen() {
        let runs = runs(&design("specs/marl-hen-smokebox.yaml"));
        assert_eq!(runs.len(), 13);
        let middle = runs.iter().find(|r| r.offset.same_as(Length::ZERO));
        let middle = middle.expect("the middle column");
        assert_eq!(middle.count, 8);
        assert!(middle.first.same_as(Length::inches(-11.671875)));
        assert!(middle.last.same_as(Length::inches(6.484375)));
        assert!(
            middle
                .pitch
                .is_some_and(|p| p.same_as(Length::inches(2.59375)))
        );
    }

    /// Every run reaches its last hole by its pitch, and the runs hold the whole nest.
    #[test]
    fn holds_runs_close_and_hold_the_nest() {
        for file in [
            "specs/marl-hen-smokebox.yaml",
            "specs/hobthrush-smokebox.yaml",
        ] {
            let design = design(file);
            let runs = runs(&design);
            let of_nest = |h: &&Hole| design.groups[h.group].purpose.takes_a_tube();
            let in_nest = design.holes.iter().filter(of_nest).count();
            assert_eq!(runs.iter().map(|r| r.count).sum::<usize>(), in_nest);
            for run in runs {
                let pitch = run.pitch.unwrap_or(Length::ZERO);
                let end = run.first + pitch * (run.count as f64 - 1.0);
                assert!(end.same_as(run.last), "{file} line {}", run.line);
            }
        }
    }
}
