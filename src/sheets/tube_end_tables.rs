//! Tables of the tube ends: count and drift, what fouls the door and what would let it pass, and every tube end to end.

use super::Hang;
use super::figure::Figures;
use super::set::Set;
use super::table::Table;
use crate::design::{Against, DrawnOut, OtherEndOfNest, TubeEnds};
use crate::units::{Length, print};

/// Rows of fouling tubes on the sheet itself; the full table carries every one.
const MOST_FOULS: usize = 12;

/// For every nest: count, seats, distance, extremes of drift.
pub fn ends_figures(set: &Set<'_>) -> Vec<Table> {
    set.design
        .other_ends
        .iter()
        .map(|e| figures_of(set, e))
        .collect()
}

fn figures_of(set: &Set<'_>, end: &OtherEndOfNest) -> Table {
    let fig = set.figures;
    let group = &set.design.groups[end.group];
    let mut table = Table::new(
        &format!("{}: BOTH ENDS", group.name.to_uppercase()),
        &[("", 62.0, Hang::Start), ("", 66.0, Hang::Start)],
    );
    table.columns[0].head = "OF THE TUBES".into();
    table.columns[1].head = format!("FIGURE, {}", fig.unit_sign());
    let mut row = |what: &str, figure: String| table.rows.push(vec![what.into(), figure]);
    row(
        "Tubes here and at the other end",
        format!("{} and {}", set.number_off(end.group), end.tubes.len()),
    );
    row("Hole here; at the other end", {
        format!("{}; {}", fig.size(&group.finish), fig.size(&end.hole))
    });
    if let Some(here) = &group.tube_end {
        row("Tube's end here; there", {
            format!("{}; {}", fig.size(here), fig.size(&end.tube_end))
        });
    }
    row(
        "Between plates",
        end.between
            .map_or("NOT GIVEN: tubes.between_plates".into(), |b| fig.table(b)),
    );
    for (what, axis) in [
        ("Drift across, least … most", 0),
        ("Drift up, least … most", 1),
    ] {
        let along = |t: &TubeEnds| if axis == 0 { t.drift().x } else { t.drift().y };
        let least = end.tubes.iter().map(along).fold(f64::INFINITY, f64::min);
        let most = end
            .tubes
            .iter()
            .map(along)
            .fold(f64::NEG_INFINITY, f64::max);
        if least <= most {
            row(
                what,
                format!("{} … {}", signed(fig, least), signed(fig, most)),
            );
        }
    }
    if let Some(furthest) = end.furthest() {
        let id = &set.design.holes[furthest.hole].id;
        row(
            "Largest drift",
            format!("{} at {id}", fig.decimal(furthest.drift_length())),
        );
        row(
            "Its slope",
            end.between.map_or("–".into(), |b| {
                format!("{}°", print::decimal(furthest.slope_deg(b), 3))
            }),
        );
    }
    table
}

/// A displacement with its sign.
fn signed(fig: Figures, mm: f64) -> String {
    let words = fig.decimal(Length::mm(mm));
    if mm > 0.0 { format!("+{words}") } else { words }
}

/// Door, clearance, the tubes that foul with the amounts, and what would let them pass.
pub fn fouling_table(set: &Set<'_>, drawn: &DrawnOut) -> Table {
    let fig = set.figures;
    let mut table = Table::new(
        "WITHDRAWAL THROUGH THE DOOR: TUBES THAT FOUL",
        &[
            ("TUBE", 16.0, Hang::Start),
            ("FOULS", 66.0, Hang::Start),
            ("BY", 46.0, Hang::End),
        ],
    );
    let place = |p: crate::design::Point| {
        format!(
            "({}, {})",
            fig.decimal(Length::mm(p.x)),
            fig.decimal(Length::mm(p.y))
        )
    };
    let mut say = |head: &str, words: String, figure: String| {
        table.rows.push(vec![head.into(), words, figure]);
    };
    say(
        "door",
        format!("its centre at {}, ⌀", place(drawn.door_centre)),
        fig.size(&drawn.door),
    );
    say(
        "clear",
        "wanted all round the tube's larger end".into(),
        fig.size(&drawn.clearance),
    );
    for foul in drawn.fouls.iter().take(MOST_FOULS) {
        let what = foul.obstruction.map_or("edge of the door", |index| {
            drawn.obstructions[index].name.as_str()
        });
        say(
            &set.design.holes[foul.hole].id,
            what.into(),
            fig.table(foul.by),
        );
    }
    if drawn.fouls.len() > MOST_FOULS {
        let more = drawn.fouls.len() - MOST_FOULS;
        say(
            "…",
            format!("and {more} more: see every tube"),
            String::new(),
        );
    }
    if drawn.fouls.is_empty() {
        say(
            "none",
            "every tube passes with its clearance".into(),
            String::new(),
        );
    }
    if drawn.fouls.iter().any(|f| f.obstruction.is_none()) {
        match drawn.lower_by {
            Some(down) if down >= Length::ZERO => {
                say("remedy", "lower the door by".into(), rounded_up(fig, down));
            }
            Some(up) => say(
                "remedy",
                "raise the door by".into(),
                rounded_up(fig, up.abs()),
            ),
            None => say(
                "remedy",
                "no height of a door of this size lets every tube pass".into(),
                String::new(),
            ),
        }
        say(
            "remedy",
            "or open it, where it stands, to ⌀".into(),
            rounded_up(fig, drawn.open_to),
        );
        if let Some(most) = drawn.tilt_for_all() {
            say(
                "remedy",
                "or withdraw at a tilt, as indicated, of".into(),
                // A tilt short of what is wanted would not clear.
                format!("{}°", print::decimal((most * 10.0 - 1e-9).ceil() / 10.0, 1)),
            );
        }
    }
    table
}

/// The tilt at which each tube that fouls the door would pass it, and what stands against that; none where none is indicated.
pub fn tilt_table(set: &Set<'_>, drawn: &DrawnOut) -> Option<Table> {
    let fig = set.figures;
    let mut table = Table::new(
        "OR WITHDRAW AT A TILT: INDICATED ONLY",
        &[
            ("TUBE", 12.0, Hang::Start),
            ("TILT WANTED", 18.0, Hang::End),
            ("HOLE GIVES", 15.0, Hang::End),
            ("OTHER END ASIDE", 22.0, Hang::End),
            ("AGAINST IT", 61.0, Hang::Start),
        ],
    );
    let degrees = |deg: f64| format!("{}°", print::decimal(deg, 2));
    let of_the_door = drawn.fouls.iter().filter(|foul| foul.obstruction.is_none());
    for foul in of_the_door.take(MOST_FOULS) {
        let id = set.design.holes[foul.hole].id.clone();
        let Some(tilt) = &foul.tilt else {
            continue;
        };
        let against = match tilt.against {
            None => "nothing reckoned here".to_string(),
            Some(Against::Hole) => "the hole gives less than is wanted".into(),
            Some(Against::Obstruction(index)) => {
                format!("then fouls {}", drawn.obstructions[index].name)
            }
            Some(Against::OtherHole) => "other end still in its hole".into(),
            Some(Against::Barrel(by)) => {
                format!("other end {} beyond the bore", fig.decimal(by))
            }
            Some(Against::NotKnown) => "not known: length of tube or barrel".into(),
        };
        table.row(vec![
            id,
            degrees(tilt.wanted_deg),
            degrees(tilt.hole_gives_deg),
            tilt.other_end_aside
                .map_or("–".into(), |aside| fig.decimal(aside)),
            against,
        ]);
    }
    (!table.rows.is_empty()).then_some(table)
}

/// A remedy rounded up to the next 1/16 in or whole millimetre, since less would not clear.
fn rounded_up(fig: Figures, length: Length) -> String {
    if fig.in_inches() {
        let sixteenths = (length.to_inches() * 16.0 - 1e-9).ceil();
        fig.short(Length::inches(sixteenths / 16.0))
    } else {
        fig.short(Length::mm((length.to_mm() - 1e-9).ceil()))
    }
}

/// Every tube: place at both ends, drift, slope, and how far it is from the door's edge.
pub fn every_tube(set: &Set<'_>) -> Vec<Table> {
    let design = set.design;
    let fig = set.figures;
    let sign = fig.unit_sign();
    let mut tables = Vec::new();
    for end in &design.other_ends {
        let group = &design.groups[end.group];
        let mut table = Table::new(
            &format!("{}: EVERY TUBE, {sign}", group.name.to_uppercase()),
            &[
                ("NO.", 11.0, Hang::Start),
                ("x HERE", 15.5, Hang::End),
                ("y HERE", 15.5, Hang::End),
                ("x THERE", 17.5, Hang::End),
                ("y THERE", 17.5, Hang::End),
                ("DRIFT", 13.0, Hang::End),
                ("SLOPE °", 16.0, Hang::End),
                ("FOULS BY", 14.0, Hang::End),
            ],
        );
        let d = |mm: f64| fig.decimal(Length::mm(mm));
        for tube in &end.tubes {
            let slope = end
                .between
                .map_or("–".into(), |b| print::decimal(tube.slope_deg(b), 3));
            let foul = design.withdrawal.as_ref().map_or("–".into(), |drawn| {
                let worst = drawn.fouls.iter().find(|f| f.hole == tube.hole);
                worst.map_or("clear".into(), |f| fig.decimal(f.by))
            });
            table.rows.push(vec![
                design.holes[tube.hole].id.clone(),
                d(tube.here.x),
                d(tube.here.y),
                d(tube.there.x),
                d(tube.there.y),
                fig.decimal(tube.drift_length()),
                slope,
                foul,
            ]);
        }
        tables.push(table);
    }
    tables
}
