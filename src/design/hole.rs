//! Holes in the flat of the plate, in groups, numbered once for every sheet and file.

use super::Point;
use crate::spec::{Fault, MouthSpec, Purpose, StagePlace, StageSpec, ViewFrom};
use crate::units::{Length, Size};

/// One stage in the making of a hole: what size it is now.
#[derive(Clone, Debug)]
pub struct Stage {
    /// What is done.
    pub name: String,
    /// The size it leaves; none for a pop.
    pub size: Option<Size>,
    /// Where it is done.
    pub place: StagePlace,
}

/// Holes alike in purpose and size that stand in one line of the hole schedule.
#[derive(Clone, Debug)]
pub struct HoleGroup {
    /// As the spec calls it.
    pub name: String,
    /// What the holes are for.
    pub purpose: Purpose,
    /// Finished hole.
    pub finish: Size,
    /// Size through which ligaments are judged: the bush's outside where there is one, else the finished hole.
    pub ligament_hole: Length,
    /// Largest hole that the tolerance lets through, where the spec says.
    pub largest: Option<Size>,
    /// Hole after the next re-bore, where the spec says.
    pub next_rebore: Option<Size>,
    /// Tube's outside where it sits in this plate, for tubes and flues.
    pub tube_end: Option<Size>,
    /// Diameter that heads, nuts or washers need clear.
    pub needs_clear: Option<Size>,
    /// What anything written of it takes up on each face.
    pub takes_up: TakesUp,
    /// The mouth turned out of the plate round each hole, where it is flanged.
    pub mouth: Option<MouthSpec>,
    /// The thread that is cut in its holes; of a nest, in those of its stay tubes alone. None where they stay plain.
    pub tapped: Option<super::Tapped>,
    /// Stages in order, the last one the finished hole; never empty.
    pub stages: Vec<Stage>,
    /// For the hole schedule.
    pub remarks: Option<String>,
    /// Where it stands in the spec: `tubes[0]` or `holes[2]`.
    pub path: String,
}

/// The largest diameter that anything written of a group takes up on each face of the plate: what is needed clear, a washer, a
/// nut across its corners, the large end of a plug, a joint face, a pad with its weld, a bead. None where nothing is written.
#[derive(Clone, Copy, Debug, Default)]
pub struct TakesUp {
    /// On the face towards the smokebox.
    pub smokebox: Option<Length>,
    /// On the face towards the firebox.
    pub firebox: Option<Length>,
}

impl TakesUp {
    /// On one face.
    pub fn on(self, face: ViewFrom) -> Option<Length> {
        match face {
            ViewFrom::Smokebox => self.smokebox,
            ViewFrom::Firebox => self.firebox,
        }
    }
}

impl HoleGroup {
    /// The stages that one hole of the group goes through: the group's, the last of them that hole's own finished size.
    pub fn stages_of(&self, hole: &Hole) -> Vec<Stage> {
        let mut stages = self.stages.clone();
        if let Some(last) = stages.last_mut() {
            last.size = Some(hole.finish.clone());
        }
        stages
    }
}

/// A hole in the flat.
#[derive(Clone, Debug)]
pub struct Hole {
    /// Its number, a letter and figures: T17. The same on every sheet, file and record.
    pub id: String,
    /// Index into [`super::Design::groups`].
    pub group: usize,
    /// Centre.
    pub at: Point,
    /// Finished hole; an exception may differ from its group's.
    pub finish: Size,
    /// Diameter through which ligaments are judged.
    pub ligament_hole: Length,
    /// Why it departs from its pattern, where it does.
    pub exception: Option<String>,
    /// Number of the line of its nest on which it stands; none for a hole listed by itself, added, or moved off its line.
    pub line: Option<i32>,
    /// Where it stands in the spec, `tubes[0].exceptions[1]` where an exception made it.
    pub path: String,
}

/// A line of a nest, for the column or row table.
#[derive(Clone, Debug)]
pub struct NestLine {
    /// Index into [`super::Design::groups`].
    pub group: usize,
    /// Its name on every sheet: a letter.
    pub name: String,
    /// Number of the line in its pattern; 0 runs through the pattern's `through`.
    pub number: i32,
    /// x of a column or y of a row, mm.
    pub offset: f64,
    /// Ids of its holes, from low to high (column) or left to right (row).
    pub holes: Vec<String>,
    /// Lowest y of a column or leftmost x of a row, mm.
    pub first: f64,
    /// Highest y or rightmost x, mm.
    pub last: f64,
}

/// A hole of the pattern that is left out, and why.
#[derive(Clone, Debug)]
pub struct Omission {
    /// Index into [`super::Design::groups`].
    pub group: usize,
    /// Where it would have been.
    pub at: Point,
    /// The reason given.
    pub reason: String,
}

/// Whether the lines of a nest are columns or rows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LineWay {
    /// Vertical.
    Columns,
    /// Horizontal.
    Rows,
}

/// The stages of a group in order. A spec that lists none has one: the finished hole, to the drawing.
///
/// A fault where the last stage leaves another size than the finished hole, or where a stage is larger than a later one.
pub(super) fn stages_of_group(
    written: &[StageSpec],
    finish: &Size,
    path: &str,
    faults: &mut Vec<Fault>,
) -> Vec<Stage> {
    let Some(last) = written.last() else {
        return vec![Stage {
            name: "finish".into(),
            size: Some(finish.clone()),
            place: StagePlace::default(),
        }];
    };
    let ends_finished = last
        .size
        .as_ref()
        .is_some_and(|size| size.value().same_as(finish.value()));
    if !ends_finished {
        let size = last
            .size
            .as_ref()
            .map_or("no size".to_string(), Size::to_string);
        faults.push(
            Fault::new(
                format!("{path}.stages[{}]", written.len() - 1),
                format!(
                    "the last stage, {}, leaves {size}, and the finished hole is {finish}",
                    last.name
                ),
                "end the stages with the finished hole",
            )
            .and(format!("{path}.hole"), "the finished hole"),
        );
    }
    let sized = written
        .iter()
        .enumerate()
        .filter_map(|(index, stage)| Some((index, stage, stage.size.as_ref()?)));
    let mut before: Option<(&StageSpec, &Size)> = None;
    for (index, stage, size) in sized {
        if let Some((earlier, larger)) = before
            && size.value().shortfall(larger.value()).is_some()
        {
            faults.push(Fault::new(
                format!("{path}.stages[{index}]"),
                format!(
                    "{} leaves {size}, smaller than the {larger} that {} left before it",
                    stage.name, earlier.name
                ),
                "write the stages in the order of their sizes, the smallest first",
            ));
        }
        before = Some((stage, size));
    }
    let stage = |stage: &StageSpec| Stage {
        name: stage.name.clone(),
        size: stage.size.clone(),
        place: stage.place,
    };
    written.iter().map(stage).collect()
}
