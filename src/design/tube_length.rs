//! Length of the tubes to be ordered: between the plates, through both of them, and what stands out at each end.

use crate::spec::{Nest, Plate};
use crate::units::Length;

/// Length of a nest's tubes, or what is missing for it.
#[derive(Clone, Debug, PartialEq)]
pub enum TubeLength {
    /// Between plates + both thicknesses + both projections.
    Known(Length),
    /// Keys of the nest that would settle it.
    Wants(Vec<&'static str>),
}

/// Length of the tubes of a nest as ordered.
pub fn tube_length(nest: &Nest, plate: &Plate) -> TubeLength {
    let parts = [
        ("between_plates", &nest.between_plates),
        ("other_plate", &nest.other_plate),
        ("projection", &nest.projection),
        ("other_projection", &nest.other_projection),
    ];
    let wants: Vec<&'static str> = parts
        .iter()
        .filter(|(_, size)| size.is_none())
        .map(|(key, _)| *key)
        .collect();
    if !wants.is_empty() {
        return TubeLength::Wants(wants);
    }
    let sizes = parts.iter().filter_map(|(_, size)| size.as_ref());
    TubeLength::Known(sizes.map(|size| size.value()).sum::<Length>() + plate.thickness.value())
}

#[cfg(test)]
mod tests {
    use std::path::Path;

    use super::*;
    use crate::spec::read_spec_file;

    /// 108 between plates, 5/8 here and 7/8 there, 3/16 and 1/4 out: 109 15/16 in.
    #[test]
    fn by_hand_tubes_of_marl_hen() {
        let spec = read_spec_file(Path::new("specs/marl-hen-smokebox.yaml")).expect("a sound spec");
        let w = &spec.written;
        let TubeLength::Known(length) = tube_length(&w.tubes[0], &w.plate) else {
            panic!("every part is written");
        };
        assert!(length.same_as(Length::inches(109.9375)));
    }
}
