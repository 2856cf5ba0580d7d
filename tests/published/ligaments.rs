//! Ligaments and tube holes.

use centrepop::checks::ligament_efficiency::{efficiency, equivalent_hole};
use centrepop::checks::tube_ligament::least_ligament;

use super::{inches, mm, prints};

const REDDY: &str = "G. Subhash Reddy, Max. working pressure calculations of parts as per IBR";

/// Indian Boiler Regulations 1950, regulation 215, Figs. 10, 11 and 12: a repeating length, the 3.281 in holes in it, efficiency.
#[test]
fn published_regulation_215_figures() {
    let figures = [
        ("Fig. 10", 5.25, 1, "0.375"),
        ("Fig. 11", 12.0, 2, "0.453"),
        ("Fig. 12", 29.25, 5, "0.439"),
    ];
    for (figure, pitch, holes, printed) in figures {
        prints(
            printed,
            efficiency(inches(pitch), holes, inches(3.281)),
            figure,
        );
    }
}

#[test]
fn published_reddy_efficiency() {
    prints("0.85714", efficiency(mm(350.0), 1, mm(50.0)), REDDY);
}

/// The same worked sheet, regulation 580: a 63.5 mm hole asks 20.6375 mm, and 90 mm pitch leaves 26.5 mm.
#[test]
fn published_reddy_ligament() {
    let (hole, pitch) = (mm(63.5), mm(90.0));
    prints("20.6375", least_ligament(hole).to_mm(), REDDY);
    prints("26.5", (pitch - hole).to_mm(), REDDY);
    assert!((pitch - hole).shortfall(least_ligament(hole)).is_none());
}

/// holooly.com, question 17.4: five diameters through a plate of 1.25 in. Printed 0.888 for 0.8875.
#[test]
fn published_stepped_hole() {
    let steps = [
        (0.875, 0.25),
        (0.9375, 0.125),
        (0.875, 0.25),
        (0.9375, 0.125),
        (0.875, 0.5),
    ];
    let steps = steps.map(|(hole, depth)| (inches(hole), inches(depth)));
    let hole = equivalent_hole(&steps).to_inches();
    assert!((hole - 0.888).abs() <= 0.0005 + 1e-9, "{hole}");
}

/// Boilers of 1846 to 1857 as J. Bourne and G. L. Vose describe them: tube, clear space, and the shortfall against regulation 580
/// if the tube's outside were the hole. Pallas lies exactly on the limit, and equal meets. True holes are larger than their
/// tubes, so the true shortfalls are greater.
#[test]
fn published_historic_boilers() {
    let boilers = [
        ("Great Britain", 2.0, 0.5, Some("0.250")),
        ("Pallas", 2.0, 0.75, None),
        ("Snake", 1.875, 0.5, Some("0.234")),
        ("Vose's specification", 2.0, 0.5, Some("0.250")),
        ("Stephenson's patent", 1.625, 0.75, None),
    ];
    for (name, tube, clear, short) in boilers {
        let shortfall = inches(clear).shortfall(least_ligament(inches(tube)));
        assert_eq!(
            shortfall
                .map(|by| format!("{:.3}", by.to_inches()))
                .as_deref(),
            short,
            "{name}"
        );
    }
}
