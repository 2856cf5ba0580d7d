//! How a finished hole reads: its size, or the thread that is cut in it. A tapped hole is never told by a size alone, which a driller
//! would open it to.

use super::beginning::cut_sizes;
use super::set::Set;
use crate::design::{Stage, Tapped};
use crate::spec::StagePlace;
use crate::units::print::trimmed;

/// Room for the opening before the tap, where the works has still to give it.
pub const BLANK: &str = "………";

/// The finished hole of a group in the job's unit: "{1 27/32}", "TAP {1 3/4}".
pub fn finish_short(set: &Set<'_>, group: usize) -> String {
    match set.design.all_tapped(group) {
        Some(tapped) => format!("TAP {}", set.figures.size_short(&tapped.over_threads)),
        None => set.figures.size_short(&set.design.groups[group].finish),
    }
}

/// The finished size of one hole in the job's unit.
pub fn hole_short(set: &Set<'_>, hole: usize) -> String {
    match set.design.tapped(hole) {
        Some(tapped) => format!("TAP {}", set.figures.size_short(&tapped.over_threads)),
        None => set.figures.size_short(&set.design.holes[hole].finish),
    }
}

/// The thread in full: "tapped {1 3/4} over threads, at smokebox face, 1 in 12, 11 T.P.I.".
fn thread_words(set: &Set<'_>, tapped: &Tapped) -> String {
    format!(
        "tapped {} over threads {}",
        set.figures.size_short(&tapped.over_threads),
        form_words(tapped)
    )
}

/// Face, taper and pitch: "at smokebox face, 1 in 12, 11 T.P.I.".
fn form_words(tapped: &Tapped) -> String {
    let pitch = format!("{} T.P.I.", trimmed(tapped.per_inch, 2));
    match tapped.taper_one_in {
        Some(one_in) => format!("at smokebox face, 1 in {}, {pitch}", trimmed(one_in, 4)),
        None => pitch,
    }
}

/// The tap, as it is asked for at the store: "taper tap, 1 in 12, 11 T.P.I.".
pub fn tap_words(tapped: &Tapped) -> String {
    let pitch = format!("{} T.P.I.", trimmed(tapped.per_inch, 2));
    match tapped.taper_one_in {
        Some(one_in) => format!("taper tap, 1 in {}, {pitch}", trimmed(one_in, 4)),
        None => format!("tap, {pitch}"),
    }
}

/// What the hole schedule says of a group's thread beside its size, and which tubes where only some are screwed in.
pub fn thread_remark(set: &Set<'_>, group: usize) -> Option<String> {
    let design = set.design;
    let tapped = design.groups[group].tapped.as_ref()?;
    if design.all_tapped(group).is_some() {
        return Some(form_words(tapped).replace("smokebox face", "face"));
    }
    let own = (0..design.holes.len()).filter(|&hole| design.holes[hole].group == group);
    let screwed: Vec<&str> = own
        .filter(|&hole| design.tapped(hole).is_some())
        .map(|hole| design.holes[hole].id.as_str())
        .collect();
    let which = crate::design::number_runs(&screwed).replace('-', "–");
    (!screwed.is_empty()).then(|| format!("{which} {}", thread_words(set, tapped)))
}

/// The stages of a group in one line, as they are made: "cut {37}, bore {38.5}, ream {39}"; none where the finished size is the only
/// one. The size over the threads of a tapped hole is no size to open it to, and stands in [`thread_remark`] alone.
pub fn stages_in_line(set: &Set<'_>, group: usize) -> Option<String> {
    let own = &set.design.groups[group];
    let cut = cut_sizes(set, group);
    let mut words: Vec<String> = match cut.is_empty() {
        true => Vec::new(),
        false => vec![format!("cut {}", cut.join(", "))],
    };
    let taps = |stage: &Stage| match (&own.tapped, &stage.size) {
        (Some(tapped), Some(size)) => tapped.over_threads.value().same_as(size.value()),
        _ => false,
    };
    words.extend(
        own.stages
            .iter()
            .filter(|stage| !taps(stage))
            .map(|stage| match &stage.size {
                Some(size) => format!("{} {}", stage.name, set.figures.size_short(size)),
                None => stage.name.clone(),
            }),
    );
    let says_more = words.len() > 1 || own.tapped.is_some() && !words.is_empty();
    says_more.then(|| words.join(", "))
}

/// The tools that thread a group: what opens the hole, where no stage says so, and the tap.
pub fn tapping_tools(set: &Set<'_>, group: usize) -> Vec<(String, String, String)> {
    let own = &set.design.groups[group];
    let Some(tapped) = &own.tapped else {
        return Vec::new();
    };
    let mut tools = Vec::new();
    let opened = tapped.opening(&own.stages).is_some()
        || own.stages.iter().any(|s| s.place == StagePlace::Cut);
    if !opened {
        tools.push((
            "drill or reamer, before tapping".into(),
            format!("{BLANK} BY THE WORKS"),
            format!("{}, opening before tapping", own.name),
        ));
    }
    tools.push((
        tap_words(tapped),
        format!("{} over threads", set.figures.size(&tapped.over_threads)),
        format!("{}, tapping", own.name),
    ));
    tools
}
