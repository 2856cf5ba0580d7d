//! Neighbouring holes, at least one of which takes a tube or flue: what every ligament rule looks at.

use std::collections::BTreeMap;

use crate::design::{Design, Hole, HoleGroup, HoleIndex, Ligament};
use crate::spec::Purpose;
use crate::units::Length;
use crate::units::tolerance::SAME_LENGTH_MM;

/// Two holes with the metal between them.
#[derive(Clone, Copy)]
pub struct Pair<'a> {
    /// The hole of the lower number in the design.
    pub a: &'a Hole,
    /// The other.
    pub b: &'a Hole,
    /// Their groups.
    pub groups: (&'a HoleGroup, &'a HoleGroup),
    /// Edge to edge, on the diameters through which ligaments are judged.
    pub metal: Length,
    /// Centre to centre.
    pub pitch: Length,
}

impl<'a> Pair<'a> {
    fn new(design: &'a Design, ligament: &Ligament) -> Pair<'a> {
        let (a, b) = (
            &design.holes[ligament.holes.0],
            &design.holes[ligament.holes.1],
        );
        let groups = (&design.groups[a.group], &design.groups[b.group]);
        Pair {
            a,
            b,
            groups,
            metal: ligament.metal,
            pitch: ligament.pitch,
        }
    }

    /// Purposes of the two, in the order of [`Purpose`].
    pub fn purposes(&self) -> (Purpose, Purpose) {
        let (a, b) = (self.groups.0.purpose, self.groups.1.purpose);
        (a.min(b), a.max(b))
    }

    /// Tube and flue holes of the pair, as ligaments are judged: one or two.
    fn tube_holes(&self) -> impl Iterator<Item = Length> {
        [(self.a, self.groups.0), (self.b, self.groups.1)]
            .into_iter()
            .filter(|(_, group)| group.purpose.takes_a_tube())
            .map(|(hole, _)| hole.ligament_hole)
    }

    /// The larger of the tube or flue holes of the pair.
    pub fn tube_hole(&self) -> Length {
        self.tube_holes().fold(Length::ZERO, Length::max)
    }

    /// The mean of the tube or flue holes of the pair.
    pub fn mean_tube_hole(&self) -> Length {
        let count = self.tube_holes().count();
        self.tube_holes().sum::<Length>() / count as f64
    }

    /// Both numbers and the way they lie: "T12–T19, diagonal"; and what they are where one of them takes no tube: "T4–W2, diagonal,
    /// tube hole to plug".
    pub fn place(&self) -> String {
        let place = format!("{}, {}", self.numbers(), self.way());
        match self.purposes() {
            (tube, other) if tube.takes_a_tube() && !other.takes_a_tube() => {
                format!("{place}, {} hole to {}", tube.name(), other.name())
            }
            _ => place,
        }
    }

    /// Both numbers: "T12–T19".
    pub fn numbers(&self) -> String {
        format!("{}–{}", self.a.id, self.b.id)
    }

    fn way(&self) -> &'static str {
        if (self.a.at.x - self.b.at.x).abs() <= SAME_LENGTH_MM {
            "column"
        } else if (self.a.at.y - self.b.at.y).abs() <= SAME_LENGTH_MM {
            "row"
        } else {
            "diagonal"
        }
    }
}

/// Every close pair of holes with a tube or flue in it, by the purposes of the two; each pair once, in the order of the design. The
/// least ligament of every two purposes is among the close pairs, unless those two are no neighbours.
pub fn beside_tubes(design: &Design) -> BTreeMap<(Purpose, Purpose), Vec<Pair<'_>>> {
    let index = HoleIndex::new(&design.holes);
    let mut by_purposes: BTreeMap<_, Vec<Pair>> = BTreeMap::new();
    for ligament in &design.close_pairs {
        let pair = Pair::new(design, ligament);
        if counts(pair.purposes()) && are_neighbours(design, &index, ligament) {
            by_purposes.entry(pair.purposes()).or_default().push(pair);
        }
    }
    by_purposes
}

/// Whether two holes are neighbours. They are not where there is more metal between them than the larger hole is wide, which is more
/// than any rule here asks of it, and a third hole has its centre inside the circle drawn on their pitch: the metal is judged from
/// each of them to the hole between.
fn are_neighbours(design: &Design, index: &HoleIndex, ligament: &Ligament) -> bool {
    let (a, b) = ligament.holes;
    let (one, two) = (&design.holes[a], &design.holes[b]);
    if ligament.metal <= one.ligament_hole.max(two.ligament_hole) {
        return true;
    }
    let reach = ligament.pitch.to_mm() / 2.0 - 2.0 * SAME_LENGTH_MM;
    let mut inside = index.within(one.at.midway(two.at), reach);
    let stands_between = |third: usize| {
        let purpose = design.groups[design.holes[third].group].purpose;
        third != a && third != b && purpose != Purpose::FormerPin
    };
    !inside.any(stands_between)
}

/// Whether a tube or flue is among the two, and no former pin, which is gone once its tube is drilled.
fn counts(purposes: (Purpose, Purpose)) -> bool {
    purposes.1 != Purpose::FormerPin && (purposes.0.takes_a_tube() || purposes.1.takes_a_tube())
}

/// The least ligament of every pair of purposes in which neither takes a tube or flue.
pub fn apart_from_tubes(design: &Design) -> Vec<Pair<'_>> {
    design
        .least_ligaments
        .iter()
        .filter(|least| !least.between.0.takes_a_tube() && !least.between.1.takes_a_tube())
        .filter(|least| least.between.1 != Purpose::FormerPin)
        .map(|least| Pair::new(design, &least.ligament))
        .collect()
}
