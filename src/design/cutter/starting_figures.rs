//! Starting figures for each process, to set a works' own figures out from. They come from no standard and no trial.
//!
//! A spec takes them by naming its process under `cutting.starting_figures`; whatever is written in the spec comes first.
//! Where the trade gives a range the figure here is the end that leaves more metal.

use crate::spec::{HoleCut, Process, Purpose};
use crate::units::Length;

/// Said after every starting figure, wherever it is printed.
pub const TO_CONFIRM: &str = "starting figure, works to confirm";

/// What one process starts from.
#[derive(Clone, Copy, Debug)]
pub(in crate::design) struct StartingFigures {
    dress_outside_mm: f64,
    tubes: Start,
    rivets_and_stays: Start,
    least_hole_mm: Option<f64>,
    least_hole_thicknesses: Option<f64>,
}

/// What is made of a hole, and how much smaller on the diameter where it is cut.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(in crate::design) enum Start {
    /// Cut so many millimetres under on the diameter.
    Under(f64),
    /// A pop.
    Pop,
}

impl Start {
    /// The word of a policy for it.
    pub(in crate::design) fn word(self) -> HoleCut {
        match self {
            Start::Under(_) => HoleCut::Undersize,
            Start::Pop => HoleCut::Pop,
        }
    }
}

const WATERJET: StartingFigures = StartingFigures {
    dress_outside_mm: 1.0,
    tubes: Start::Under(2.0),
    rivets_and_stays: Start::Under(2.0),
    least_hole_mm: Some(3.0),
    least_hole_thicknesses: Some(0.3),
};
const LASER: StartingFigures = StartingFigures {
    dress_outside_mm: 1.0,
    tubes: Start::Under(4.0),
    rivets_and_stays: Start::Under(4.0),
    least_hole_mm: None,
    least_hole_thicknesses: Some(1.0),
};
const PLASMA: StartingFigures = StartingFigures {
    dress_outside_mm: 3.0,
    tubes: Start::Under(6.0),
    rivets_and_stays: Start::Pop,
    least_hole_mm: None,
    least_hole_thicknesses: Some(2.0),
};
const OXY_FUEL: StartingFigures = StartingFigures {
    dress_outside_mm: 3.0,
    tubes: Start::Pop,
    rivets_and_stays: Start::Pop,
    least_hole_mm: None,
    least_hole_thicknesses: Some(2.0),
};
const DRILL_ONLY: StartingFigures = StartingFigures {
    dress_outside_mm: 0.0,
    tubes: Start::Pop,
    rivets_and_stays: Start::Pop,
    least_hole_mm: None,
    least_hole_thicknesses: None,
};

impl StartingFigures {
    /// Those of a process.
    pub(in crate::design) fn of(process: Process) -> &'static StartingFigures {
        match process {
            Process::Waterjet => &WATERJET,
            Process::Laser => &LASER,
            Process::Plasma => &PLASMA,
            Process::OxyFuel => &OXY_FUEL,
            Process::DrillOnly => &DRILL_ONLY,
        }
    }

    /// What is made of a hole of this purpose; pipes, plugs and fittings have no starting figure.
    pub(in crate::design) fn hole(&self, purpose: Purpose) -> Option<Start> {
        match purpose {
            Purpose::Tube | Purpose::Flue => Some(self.tubes),
            Purpose::Stay | Purpose::Bolt => Some(self.rivets_and_stays),
            Purpose::SteamPipe | Purpose::Plug | Purpose::Fitting | Purpose::FormerPin => None,
        }
    }

    /// Metal left on outside edges.
    pub(in crate::design) fn dress_outside(&self) -> Length {
        Length::mm(self.dress_outside_mm)
    }

    /// Least clean hole in a plate of this thickness: the larger of a size and a multiple of the thickness.
    pub(in crate::design) fn least_hole(&self, thickness: Length) -> Option<Length> {
        let size = self.least_hole_mm.map(Length::mm);
        let multiple = self.least_hole_thicknesses.map(|times| times * thickness);
        match (size, multiple) {
            (Some(a), Some(b)) => Some(a.max(b)),
            (one, other) => one.or(other),
        }
    }
}
