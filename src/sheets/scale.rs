//! Scales that people own a rule for (ISO 5455), and which one a view takes.

/// A scale of reduction.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scale {
    /// So many millimetres of plate to one of paper.
    pub one_to: f64,
}

impl Scale {
    /// Millimetres of paper for a millimetre of plate.
    pub fn factor(self) -> f64 {
        1.0 / self.one_to
    }

    /// As printed: "1:5", "2:1".
    pub fn words(self) -> String {
        if self.one_to < 1.0 {
            format!("{}:1", self.factor())
        } else {
            format!("1:{}", self.one_to)
        }
    }
}

/// Scales of metric jobs, largest drawing first.
const METRIC: [f64; 9] = [1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0];
/// Scales of inch jobs: 1:4 is 3 in to the foot, 1:8 is 1 1/2 in to the foot.
const INCH: [f64; 11] = [
    1.0, 2.0, 4.0, 5.0, 8.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0,
];

/// The largest drawing of something this wide and high that the room holds.
pub fn largest_scale(width: f64, height: f64, room: (f64, f64), in_inches: bool) -> Scale {
    let scales: &[f64] = if in_inches { &INCH } else { &METRIC };
    let fits = |one_to: f64| width / one_to <= room.0 && height / one_to <= room.1;
    let smallest = scales[scales.len() - 1];
    Scale {
        one_to: scales
            .iter()
            .copied()
            .find(|&s| fits(s))
            .unwrap_or(smallest),
    }
}

/// Scales that draw larger than this one, the next larger first.
pub fn larger_scales(scale: Scale, in_inches: bool) -> Vec<Scale> {
    let scales: &[f64] = if in_inches { &INCH } else { &METRIC };
    scales
        .iter()
        .rev()
        .filter(|&&s| s < scale.one_to)
        .map(|&one_to| Scale { one_to })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 38 in is 965.2 mm: 1:4 takes 241.3 mm of paper, 1:5 takes 193.04.
    #[test]
    fn by_hand_a_38_in_plate() {
        assert_eq!(
            largest_scale(965.2, 965.2, (300.0, 200.0), true).words(),
            "1:5"
        );
        assert_eq!(
            largest_scale(965.2, 965.2, (300.0, 242.0), true).words(),
            "1:4"
        );
        assert_eq!(
            largest_scale(965.2, 965.2, (300.0, 242.0), false).words(),
            "1:5"
        );
    }
}
