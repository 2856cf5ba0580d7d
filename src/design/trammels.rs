//! Where the trammels stand: quarter pops on the datum lines, and the two of them from which each hole on no line is struck.

use super::{Design, FlangeDesign, Hole, Point};
use crate::units::Length;

/// A pop on a datum line, from which trammels are set.
#[derive(Clone, Copy, Debug)]
pub struct QuarterPop {
    /// TOP, RIGHT, BOTTOM or LEFT, as seen from the declared side.
    pub name: &'static str,
    /// Where it stands.
    pub at: Point,
}

/// A hole on no line of a nest, struck from two pops.
#[derive(Clone, Debug)]
pub struct Strike {
    /// Index into [`Design::holes`].
    pub hole: usize,
    /// Each pop with its distance from the hole's centre.
    pub from: [(QuarterPop, Length); 2],
}

/// Radius of the circle on which the quarter pops stand: where the flat ends, or the nearest edge of a plate without a flange.
pub fn pop_circle(design: &Design) -> Length {
    match &design.flange {
        Some(FlangeDesign::Pressed(pressed)) => pressed.tangent_radius,
        Some(FlangeDesign::Fabricated(ring)) => ring.inner_toe_radius,
        None => Length::mm(design.edge.distance(Point::CENTRE)),
    }
}

/// The four quarter pops, clockwise from the top.
pub fn quarter_pops(design: &Design) -> [QuarterPop; 4] {
    let r = pop_circle(design).to_mm();
    let pop = |name, x, y| QuarterPop {
        name,
        at: Point::new(x, y),
    };
    [
        pop("TOP", 0.0, r),
        pop("RIGHT", r, 0.0),
        pop("BOTTOM", 0.0, -r),
        pop("LEFT", -r, 0.0),
    ]
}

/// From each quarter pop to the next: four lengths alike while the datum lines stand square, r √2.
pub fn quarter_chord(design: &Design) -> Length {
    let [top, right, ..] = quarter_pops(design);
    Length::mm(top.at.distance(right.at))
}

/// Every hole that stands on no line of a nest, with its two pops: of the six pairs, the one whose arcs cross most squarely at the hole.
pub fn strikes(design: &Design) -> Vec<Strike> {
    let pops = quarter_pops(design);
    design
        .holes
        .iter()
        .enumerate()
        .filter(|(_, hole)| {
            hole.line.is_none() || !design.groups[hole.group].purpose.takes_a_tube()
        })
        .filter_map(|(index, hole)| {
            let (a, b) = squarest(&pops, hole)?;
            Some(Strike {
                hole: index,
                from: [a, b].map(|pop| (pop, Length::mm(pop.at.distance(hole.at)))),
            })
        })
        .collect()
}

fn squarest(pops: &[QuarterPop; 4], hole: &Hole) -> Option<(QuarterPop, QuarterPop)> {
    let mut best: Option<(f64, QuarterPop, QuarterPop)> = None;
    for i in 0..pops.len() {
        for j in i + 1..pops.len() {
            let (u, v) = ((pops[i].at - hole.at).unit(), (pops[j].at - hole.at).unit());
            // The sine of the angle at which the two arcs cross.
            let square = u.cross(v).abs();
            let better = best.is_none_or(|(so_far, _, _)| square > so_far + SAME_SINE);
            if square.is_finite() && better {
                best = Some((square, pops[i], pops[j]));
            }
        }
    }
    best.map(|(_, a, b)| (a, b))
}

/// Sines nearer than this are alike; the first pair is then kept, so that the same plate gives the same pair everywhere.
const SAME_SINE: f64 = 1e-9;

#[cfg(test)]
mod tests {
    use std::path::Path;

    use super::*;
    use crate::design::set_out;
    use crate::spec::read_spec_file;

    /// Two arcs struck from the pops meet at the hole again, and never at less than 30°: a flatter crossing cannot be seen.
    #[test]
    fn holds_arcs_meet_at_the_hole() {
        for file in [
            "specs/marl-hen-smokebox.yaml",
            "specs/hobthrush-smokebox.yaml",
        ] {
            let spec = read_spec_file(Path::new(file)).expect("a sound spec");
            let design = set_out(&spec).expect("a sound plate");
            let strikes = strikes(&design);
            assert!(!strikes.is_empty());
            for strike in strikes {
                let hole = &design.holes[strike.hole];
                let [(a, da), (b, db)] = strike.from;
                assert!(
                    Length::mm(a.at.distance(hole.at)).same_as(da),
                    "{}",
                    hole.id
                );
                assert!(
                    Length::mm(b.at.distance(hole.at)).same_as(db),
                    "{}",
                    hole.id
                );
                let sine = (a.at - hole.at).unit().cross((b.at - hole.at).unit()).abs();
                assert!(sine > 0.5, "{}: arcs cross too flat", hole.id);
            }
        }
    }

    /// Steam pipe of Marl Hen at (0, 11 1/4), pops 16 7/8 from the centre: from RIGHT √(16.875² + 11.25²) = 20.2812 in, and
    /// from LEFT the same; their arcs cross at 2 atan(16.875/11.25) = 112.6°, more squarely than any other pair.
    #[test]
    fn by_hand_steam_pipe_of_marl_hen() {
        let spec = read_spec_file(Path::new("specs/marl-hen-smokebox.yaml")).expect("a sound spec");
        let design = set_out(&spec).expect("a sound plate");
        let pipe = strikes(&design)
            .into_iter()
            .find(|s| design.holes[s.hole].id == "P1")
            .expect("the steam pipe");
        let said: Vec<(&str, String)> = pipe
            .from
            .iter()
            .map(|(pop, d)| (pop.name, format!("{:.4}", d.to_inches())))
            .collect();
        assert_eq!(
            said,
            [("RIGHT", "20.2812".into()), ("LEFT", "20.2812".into())]
        );
    }
}
