//! The core of a screwed stay: what metal is left at the root of its thread.

use super::measure::figure;
use crate::design::{Design, Hole, HoleGroup};
use crate::spec::{HoleSet, Purpose, StayKind, StaySpec, Written};
use crate::units::angle::PI;
use crate::units::{Length, SQUARE_MM_PER_SQUARE_INCH, whitworth_core};

/// Core diameter of a thread of Whitworth form, D − 1.28/N.
pub fn core_diameter(over_threads: Length, threads_per_inch: f64) -> Length {
    whitworth_core(over_threads, threads_per_inch)
}

/// Area of a round section, in².
pub fn round_in2(diameter: Length) -> f64 {
    PI / 4.0 * diameter.to_mm() * diameter.to_mm() / SQUARE_MM_PER_SQUARE_INCH
}

/// Net area of a stay at its thread root, less its telltale hole, in².
pub fn net_area_in2(stay: &StaySpec) -> f64 {
    let telltale = stay
        .telltale
        .as_ref()
        .map_or(0.0, |size| round_in2(size.value()));
    round_in2(core_diameter(stay.diameter.value(), stay.threads_per_inch)) - telltale
}

/// How the core was reckoned, line by line.
pub(super) fn core_lines(stay: &StaySpec) -> Vec<String> {
    let (d, n) = (stay.diameter.value().to_inches(), stay.threads_per_inch);
    let core = core_diameter(stay.diameter.value(), n);
    let mut lines = vec![
        format!(
            "core = D − 1.28/N = {} − 1.28/{} = {} in",
            figure(d),
            figure(n),
            figure(core.to_inches())
        ),
        format!(
            "area = 0.785398 × {}² = {} in²",
            figure(core.to_inches()),
            figure(round_in2(core))
        ),
    ];
    if let Some(telltale) = &stay.telltale {
        lines.push(format!(
            "less telltale 0.785398 × {}²; net {} in²",
            figure(telltale.value().to_inches()),
            figure(net_area_in2(stay))
        ));
    }
    lines
}

/// A group of stay holes with the stay that goes through them, where the spec gives it.
#[derive(Clone, Copy)]
pub(super) struct StayGroup<'a> {
    pub group: &'a HoleGroup,
    pub stay: Option<&'a StaySpec>,
    index: usize,
}

impl<'a> StayGroup<'a> {
    /// Its holes.
    pub fn holes(&self, design: &'a Design) -> impl Iterator<Item = &'a Hole> {
        let index = self.index;
        design.holes.iter().filter(move |hole| hole.group == index)
    }

    /// Its number among the groups of the design.
    pub fn index(&self) -> usize {
        self.index
    }

    /// Whether a hole of the plate is one of its own.
    pub fn has(&self, design: &Design, hole: usize) -> bool {
        design.holes[hole].group == self.index
    }

    /// Whether it is a stay of this kind.
    pub fn is(&self, kind: StayKind) -> bool {
        self.stay.is_some_and(|stay| stay.kind == kind)
    }
}

/// Every group of stay holes, in the order of the design.
pub(super) fn stay_groups<'a>(written: &'a Written, design: &'a Design) -> Vec<StayGroup<'a>> {
    let set_of = |group: &HoleGroup| -> Option<&'a HoleSet> {
        let named = |(i, _): &(usize, &HoleSet)| group.path == format!("holes[{i}]");
        written
            .holes
            .iter()
            .enumerate()
            .find(named)
            .map(|(_, set)| set)
    };
    design
        .groups
        .iter()
        .enumerate()
        .filter(|(_, group)| group.purpose == Purpose::Stay)
        .map(|(index, group)| StayGroup {
            group,
            stay: set_of(group).and_then(|s| s.stay.as_ref()),
            index,
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::print::decimal;

    /// 7/8 × 11: 0.875 − 1.28/11 = 0.7586 in, 0.4520 in²; 1 1/8 × 11: 1.0086 in, 0.7990 in².
    #[test]
    fn by_hand_whitworth_cores() {
        let core = |d: f64| core_diameter(Length::inches(d), 11.0);
        assert_eq!(decimal(core(0.875).to_inches(), 4), "0.7586");
        assert_eq!(decimal(round_in2(core(0.875)), 4), "0.4520");
        assert_eq!(decimal(core(1.125).to_inches(), 4), "1.0086");
        assert_eq!(decimal(round_in2(core(1.125)), 4), "0.7990");
    }
}
