//! The works' figures for one part, each with the words that say where it comes from.
//!
//! What the spec writes comes first; a starting figure stands in only where the spec names the set; else there is none.

use super::starting_figures::{Start, StartingFigures, TO_CONFIRM};
use crate::spec::{Cutting, HoleAllowance, HoleCut, HolePolicy, Process, Purpose};
use crate::units::print::{millimetres, trimmed};
use crate::units::{Length, Size};

/// A figure and how it came about.
#[derive(Clone, Debug, PartialEq)]
pub struct Figure {
    pub value: Length,
    pub words: String,
}

/// What the works lets be cut of one purpose of hole.
#[derive(Clone, Debug, PartialEq)]
pub struct Policy {
    pub cut: HoleCut,
    /// How much smaller on the diameter, where it is cut undersize.
    pub under: Option<Figure>,
    pub guide_pin: Option<Size>,
    /// Said of whatever follows from it: nothing, or that it is a starting figure.
    pub remark: &'static str,
}

/// The figures for one part.
#[derive(Clone, Copy, Debug)]
pub struct Settings<'a> {
    cutting: &'a Cutting,
    thickness: Option<Length>,
    starting: Option<&'static StartingFigures>,
}

impl<'a> Settings<'a> {
    /// For a part of this thickness; without one, multiples of it say nothing.
    pub fn of(cutting: &'a Cutting, thickness: Option<Length>) -> Settings<'a> {
        Settings {
            cutting,
            thickness,
            starting: cutting.starting_figures.map(StartingFigures::of),
        }
    }

    /// The process.
    pub fn process(&self) -> Process {
        self.cutting.process
    }

    /// What is cut of a purpose of hole; none where neither the spec nor a starting figure says.
    pub fn policy(&self, purpose: Purpose) -> Option<Policy> {
        let written = self.cutting.holes.iter().find(|p| p.purpose == purpose);
        if let Some(policy) = written {
            return Some(Policy {
                cut: policy.cut,
                under: self.under(policy),
                guide_pin: policy.guide_pin.clone(),
                remark: "",
            });
        }
        let start = self.starting?.hole(purpose)?;
        Some(Policy {
            cut: start.word(),
            under: starting_under(start),
            guide_pin: None,
            remark: TO_CONFIRM,
        })
    }

    fn under(&self, policy: &HolePolicy) -> Option<Figure> {
        if policy.cut != HoleCut::Undersize {
            return None;
        }
        if let Some(under) = &policy.under {
            return Some(Figure {
                value: under.value(),
                words: format!("{under} under on the diameter"),
            });
        }
        let allowance = policy.allowance.as_ref();
        if let Some(allowance) = allowance.or(self.cutting.hole_allowance.as_ref()) {
            return Some(allowed(allowance));
        }
        starting_under(self.starting?.hole(policy.purpose)?)
    }

    /// Least hole that the process makes clean.
    pub fn least_hole(&self) -> Option<Figure> {
        let written = self.larger(
            &self.cutting.least_hole,
            self.cutting.least_hole_thicknesses,
        );
        written.or_else(|| {
            let value = self.starting?.least_hole(self.thickness?)?;
            Some(Figure {
                value,
                words: format!("{} mm ({TO_CONFIRM})", millimetres(value)),
            })
        })
    }

    /// Least metal between two cuts.
    pub fn least_web(&self) -> Option<Figure> {
        self.larger(&self.cutting.least_web, self.cutting.least_web_thicknesses)
    }

    /// Least metal between a hole and the edge.
    pub fn least_edge(&self) -> Option<Figure> {
        let own = self.larger(
            &self.cutting.least_edge,
            self.cutting.least_edge_thicknesses,
        );
        own.or_else(|| self.least_web())
    }

    /// Metal left on outside edges for dressing.
    pub fn dress_outside(&self) -> Option<Figure> {
        if let Some(size) = &self.cutting.dress_outside {
            return Some(Figure {
                value: size.value(),
                words: in_mm(size),
            });
        }
        let value = self.starting?.dress_outside();
        (value > Length::ZERO).then(|| Figure {
            value,
            words: format!("{} mm ({TO_CONFIRM})", millimetres(value)),
        })
    }

    /// Metal left on inside edges other than holes.
    pub fn dress_inside(&self) -> Length {
        let written = self.cutting.dress_inside.as_ref();
        written.map_or(Length::ZERO, Size::value)
    }

    /// The larger of a size and a multiple of the thickness, as far as they are written.
    fn larger(&self, size: &Option<Size>, thicknesses: Option<f64>) -> Option<Figure> {
        let size = size.as_ref().map(|size| Figure {
            value: size.value(),
            words: size.to_string(),
        });
        let multiple = thicknesses.zip(self.thickness).map(|(times, thickness)| {
            let value = times * thickness;
            let so_many = match trimmed(times, 3).as_str() {
                "1" => "the thickness".to_string(),
                times => format!("{times} thicknesses of {} mm", millimetres(thickness)),
            };
            let words = format!("{} mm, {so_many}", millimetres(value));
            Figure { value, words }
        });
        match (size, multiple) {
            (Some(a), Some(b)) if b.value > a.value => Some(b),
            (one, other) => one.or(other),
        }
    }
}

/// A size as written, with its millimetres where it was written otherwise: the contractor works in them.
pub fn in_mm(size: &Size) -> String {
    let mm = format!("{} mm", millimetres(size.value()));
    match size.as_written() == mm {
        true => mm,
        false => format!("{size} ({mm})"),
    }
}

/// Edge, taper and position add up on each side, and both sides count on the diameter.
fn allowed(allowance: &HoleAllowance) -> Figure {
    let each_side = allowance.edge.value() + allowance.taper.value() + allowance.position.value();
    let value = 2.0 * each_side;
    Figure {
        value,
        words: format!(
            "{} mm under on the diameter: edge {}, taper {} and position {} on each side ({})",
            millimetres(value),
            allowance.edge,
            allowance.taper,
            allowance.position,
            allowance.origin
        ),
    }
}

fn starting_under(start: Start) -> Option<Figure> {
    match start {
        Start::Pop => None,
        Start::Under(mm) => {
            let value = Length::mm(mm);
            let words = format!(
                "{} mm under on the diameter ({TO_CONFIRM})",
                millimetres(value)
            );
            Some(Figure { value, words })
        }
    }
}
