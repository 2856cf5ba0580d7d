//! Screw threads of Whitworth form.

use super::Length;

/// Core diameter of a thread of Whitworth form, D − 1.28/N: what metal is left at its root. Below nothing where the thread is too deep
/// for the diameter.
pub fn whitworth_core(over_threads: Length, threads_per_inch: f64) -> Length {
    over_threads - Length::inches(1.28 / threads_per_inch)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 1 in at 11 to the inch: 1 − 0.116364 = 0.883636 in. 1.28 in at 1 to the inch has no core.
    #[test]
    fn by_hand_cores() {
        let core = whitworth_core(Length::inches(1.0), 11.0).to_inches();
        assert_eq!(format!("{core:.6}"), "0.883636");
        assert!(whitworth_core(Length::inches(1.28), 1.0).same_as(Length::ZERO));
    }
}
