//! A weld line in its place: its run on the face, on over the heel and the flange, and the piece that it cuts off.

use super::amount::{Amounts, point};
use super::bend::{MID_LINE, right_angle_arc};
use super::edges_meet::{edges_meet, edges_meet_again, line_meets_circle};
use super::outline_of_spec::{bad_step, steps_of};
use super::path::{ImpossiblePath, Step, open_walk};
use super::repair::{FlangeCrossing, a_64th, out_of};
use super::smokebox_tube_plate::Form;
use super::{Edge, FlangeDesign, NotAnOutline, Outline, Point, Pressed, RivetLine};
use crate::spec::{Fault, NamedLine, WeldLineSpec};
use crate::units::angle::{acos, hypot, to_top_clockwise};
use crate::units::tolerance::SAME_LENGTH_MM;
use crate::units::{Length, Size};

/// What a weld line is laid on.
pub(super) struct LineSite<'a> {
    pub(super) form: &'a Form,
    pub(super) rivets: Option<&'a RivetLine>,
    pub(super) amounts: Amounts,
}

/// A weld line in its place.
#[derive(Debug)]
pub(super) struct Laid {
    /// As the face shows it, to the edge of the plate where it runs over the flange.
    pub(super) weld: Vec<Edge>,
    pub(super) renews: Option<Outline>,
    pub(super) crossings: Vec<FlangeCrossing>,
    pub(super) flat_length: Length,
    pub(super) length: Length,
}

/// Lays a weld line; `path` is where it stands in the spec.
pub(super) fn weld_line(
    site: &LineSite<'_>,
    line: &WeldLineSpec,
    path: &str,
) -> Result<Laid, Box<Fault>> {
    let start = point(&line.start);
    let steps = steps_of(&line.steps, path)?;
    let Some(end) = steps.last().map(|step| step.to) else {
        return Err(fault(
            path,
            "the weld line has no step, so that it goes nowhere",
            "write its steps",
        ));
    };
    if end.distance(start) <= SAME_LENGTH_MM && steps.len() > 1 {
        return closed(site, line, (start, &steps), path);
    }
    let edges = open(start, &steps, path)?;
    match &line.over_flange {
        Some(over) => over_the_flange(site, line, (edges, over), path),
        None => on_the_flat(site, line, edges, path),
    }
}

fn fault(path: impl Into<String>, fact: impl Into<String>, remedy: &str) -> Box<Fault> {
    Box::new(Fault::new(path, fact, remedy))
}

/// A line that closes on its start.
fn closed(
    site: &LineSite<'_>,
    line: &WeldLineSpec,
    (start, steps): (Point, &[Step]),
    path: &str,
) -> Result<Laid, Box<Fault>> {
    if line.over_flange.is_some() {
        return Err(fault(
            format!("{path}.over_flange"),
            "the line closes on its start, so that nothing of it runs over the flange",
            "leave `over_flange` out, or end the line elsewhere",
        ));
    }
    let outline = Outline::path(start, steps).map_err(|why| impossible(site, path, why))?;
    stays_on_the_flat(site, outline.edges(), path)?;
    let length = outline.perimeter();
    Ok(Laid {
        weld: outline.edges().to_vec(),
        renews: line.let_in.then_some(outline),
        crossings: Vec::new(),
        flat_length: length,
        length,
    })
}

fn impossible(site: &LineSite<'_>, path: &str, why: ImpossiblePath) -> Box<Fault> {
    Box::new(match why {
        ImpossiblePath::Step(index, bad) => bad_step(path, index, bad),
        ImpossiblePath::NotAnOutline(NotAnOutline::Crosses(place)) => crosses(site, path, place),
        other => Fault::new(path, other.to_string(), "look again at the steps"),
    })
}

fn crosses(site: &LineSite<'_>, path: &str, place: Point) -> Fault {
    Fault::new(
        path,
        format!(
            "the weld line crosses or touches itself or the edge of the plate near {}",
            site.amounts.place(place)
        ),
        "look again at the steps that meet there",
    )
}

/// A line with two ends.
fn open(start: Point, steps: &[Step], path: &str) -> Result<Vec<Edge>, Box<Fault>> {
    let last = steps.len() - 1;
    if steps[last].corner_radius > SAME_LENGTH_MM {
        return Err(fault(
            format!("{path}.steps[{last}].corner_radius"),
            "the line ends here, so that there is no corner to round off",
            "leave the radius out, or close the line on its start",
        ));
    }
    open_walk(start, steps).map_err(|why| {
        Box::new(match why {
            ImpossiblePath::Step(index, bad) => bad_step(path, index, bad),
            other => Fault::new(path, other.to_string(), "look again at the steps"),
        })
    })
}

/// A line that stays on the flat: a weld by itself, or from edge to edge of a flat plate.
fn on_the_flat(
    site: &LineSite<'_>,
    line: &WeldLineSpec,
    mut edges: Vec<Edge>,
    path: &str,
) -> Result<Laid, Box<Fault>> {
    let length_of = |edges: &[Edge]| Length::mm(edges.iter().map(Edge::length_mm).sum());
    if !line.let_in {
        stays_on_the_flat(site, &edges, path)?;
        refuse_crossing(site, &edges, path)?;
        let length = length_of(&edges);
        return Ok(Laid {
            weld: edges,
            renews: None,
            crossings: Vec::new(),
            flat_length: length,
            length,
        });
    }
    if let Some(FlangeDesign::Pressed(_)) = &site.form.flange {
        return Err(fault(
            path,
            "a piece is let in, and the line neither closes nor runs over the flange",
            "close it on its start, or write `over_flange`",
        ));
    }
    end_on_the_edge(site, &mut edges, path)?;
    stays_on_the_flat(site, &edges, path)?;
    let length = length_of(&edges);
    Ok(Laid {
        renews: Some(cut_off(site, &edges, path)?),
        weld: edges,
        crossings: Vec::new(),
        flat_length: length,
        length,
    })
}

/// Takes both ends of a line to the edge of a flat plate; each was written as near to it as a place is read.
fn end_on_the_edge(
    site: &LineSite<'_>,
    edges: &mut Vec<Edge>,
    path: &str,
) -> Result<(), Box<Fault>> {
    for first in [true, false] {
        let number = if first { 0 } else { edges.len() - 1 };
        let edge = edges[number];
        let end = if first { edge.from() } else { edge.to() };
        let on_edge = site.form.edge.nearest(end);
        let off = Length::mm(end.distance(on_edge));
        if a_64th().shortfall(off).is_some() {
            return Err(fault(
                path,
                format!(
                    "a piece is let in, and the line ends at {}, {} from the edge of the plate",
                    site.amounts.place(end),
                    site.amounts.length(off)
                ),
                "close it on its start, or take it to the edge",
            ));
        }
        match edge {
            Edge::Line { .. } if first => edges[number] = edge.between(on_edge, edge.to()),
            Edge::Line { .. } => edges[number] = edge.between(edge.from(), on_edge),
            // An arc keeps its radius, so that what is wanting is a straight hair beyond it.
            Edge::Arc { .. } if off.to_mm() <= SAME_LENGTH_MM => {}
            Edge::Arc { .. } if first => edges.insert(
                0,
                Edge::Line {
                    from: on_edge,
                    to: end,
                },
            ),
            Edge::Arc { .. } => edges.push(Edge::Line {
                from: end,
                to: on_edge,
            }),
        }
    }
    Ok(())
}

/// A line both of whose ends run on to the tangent and then square over heel and flange.
fn over_the_flange(
    site: &LineSite<'_>,
    line: &WeldLineSpec,
    (mut edges, over): (Vec<Edge>, &Size),
    path: &str,
) -> Result<Laid, Box<Fault>> {
    let key = format!("{path}.over_flange");
    let Some(FlangeDesign::Pressed(pressed)) = &site.form.flange else {
        return Err(fault(
            key,
            "the line is to run over the flange, and this plate has none that is pressed from it",
            "leave `over_flange` out",
        ));
    };
    if over.value() < Length::ZERO || pressed.straight.value().shortfall(over.value()).is_some() {
        return Err(Box::new(
            Fault::new(
                key,
                format!(
                    "the line is to run {over} along the straight of the flange, which is {} long",
                    pressed.straight
                ),
                "write no more than the straight",
            )
            .and("flange.pressed.straight", "the straight"),
        ));
    }
    if line.let_in && over.value().shortfall(pressed.straight.value()).is_some() {
        let short = pressed.straight.value() - over.value();
        let fact = format!(
            "a piece is let in, and its weld stops {} short of the edge of the flange, so that the piece is not cut free",
            site.amounts.length(short)
        );
        let fault = Fault::new(key, fact, "take the line along the whole straight");
        return Err(Box::new(
            fault.and("flange.pressed.straight", "the straight"),
        ));
    }
    let tangent = pressed.tangent_radius.to_mm();
    for first in [true, false] {
        run_on_to(&mut edges, first, tangent).ok_or_else(|| {
            fault(
                path,
                "the line ends beyond the tangent, or runs past it without meeting it",
                "end it on the flat, on its way to the tangent",
            )
        })?;
    }
    let flat_length = Length::mm(edges.iter().map(Edge::length_mm).sum());
    stays_on_the_flat(site, &edges, path)?;
    let (from, to) = (edges[0], edges[edges.len() - 1]);
    let crossings = vec![
        crossing(
            site,
            pressed,
            (from.from(), -from.direction_at_start()),
            over,
        ),
        crossing(site, pressed, (to.to(), to.direction_at_end()), over),
    ];
    let outside = pressed.outside_diameter.value().to_mm() / 2.0;
    let rim = |at: Point| at.unit() * outside;
    edges.insert(
        0,
        Edge::Line {
            from: rim(from.from()),
            to: from.from(),
        },
    );
    edges.push(Edge::Line {
        from: to.to(),
        to: rim(to.to()),
    });
    let thickness = outside - pressed.tangent_radius.to_mm() - pressed.heel_radius.value().to_mm();
    let heel = right_angle_arc(pressed.heel_radius.value(), Length::mm(thickness), MID_LINE);
    let renews = match line.let_in {
        true => Some(cut_off(site, &edges, path)?),
        false => {
            refuse_crossing(site, &edges, path)?;
            None
        }
    };
    Ok(Laid {
        weld: edges,
        renews,
        crossings,
        flat_length,
        length: flat_length + 2.0 * (heel + over.value()),
    })
}

/// Carries one end of a chain straight on to a circle about the barrel centre, which it must not lie beyond by more than a place
/// is read.
fn run_on_to(edges: &mut Vec<Edge>, first: bool, radius: f64) -> Option<()> {
    let edge = edges[if first { 0 } else { edges.len() - 1 }];
    let (end, way) = match first {
        true => (edge.from(), -edge.direction_at_start()),
        false => (edge.to(), edge.direction_at_end()),
    };
    let beyond = end.radius() - radius;
    if beyond > a_64th().to_mm() {
        return None;
    }
    let mut ahead = line_meets_circle(end, way, Point::CENTRE, radius);
    let meeting = ahead.pop()?;
    let back = (meeting - end).dot(way) < -SAME_LENGTH_MM;
    match (edge, back) {
        // Written a hair beyond: a straight end is drawn in, an arc cannot be.
        (Edge::Arc { .. }, true) => return None,
        (Edge::Line { .. }, _) if first => edges[0] = edge.between(meeting, edge.to()),
        (Edge::Line { .. }, _) => {
            let last = edges.len() - 1;
            edges[last] = edge.between(edge.from(), meeting);
        }
        (Edge::Arc { .. }, false) if end.distance(meeting) <= SAME_LENGTH_MM => {}
        (Edge::Arc { .. }, false) if first => edges.insert(
            0,
            Edge::Line {
                from: meeting,
                to: end,
            },
        ),
        (Edge::Arc { .. }, false) => edges.push(Edge::Line {
            from: end,
            to: meeting,
        }),
    }
    Some(())
}

/// Where a line comes to the tangent, heading outwards, and the rivet it passes nearest.
fn crossing(
    site: &LineSite<'_>,
    pressed: &Pressed,
    (at, way): (Point, Point),
    over: &Size,
) -> FlangeCrossing {
    let angle_deg = to_top_clockwise(at.x, at.y);
    // Metal to every rivet, with its turn clockwise from the weld, -180 to 180 degrees.
    let metal_to = |line: &RivetLine| -> Vec<(String, f64, Length)> {
        // The row stands so far along the straight; the weld may end short of it.
        let row = pressed.straight.value() - line.from_edge.value();
        let short = (row - over.value()).max(Length::ZERO);
        let metal = |turn: f64| {
            let along = line.pitch_bore * (turn.abs() / line.step_deg);
            Length::mm(hypot(along.to_mm(), short.to_mm())) - line.hole.value() / 2.0
        };
        let rivets = line.rivets.iter();
        rivets
            .map(|rivet| {
                let turn = (rivet.angle_deg - angle_deg + 180.0).rem_euclid(360.0) - 180.0;
                (rivet.id.clone(), turn, metal(turn))
            })
            .collect()
    };
    let rivets = site.rivets.map_or(Vec::new(), metal_to);
    let nearest = |on_hand: &dyn Fn(f64) -> bool| {
        let there = rivets.iter().filter(|(_, turn, _)| on_hand(*turn));
        let nearest = there.min_by(|a, b| a.2.total_cmp(&b.2));
        nearest.map(|(id, _, metal)| (id.clone(), *metal))
    };
    let hands = [nearest(&|turn| turn < 0.0), nearest(&|turn| turn >= 0.0)];
    FlangeCrossing {
        angle_deg,
        off_square_deg: acos(way.unit().dot(at.unit()).clamp(-1.0, 1.0)).to_degrees(),
        rivet: nearest(&|_| true),
        beside: hands.into_iter().flatten().collect(),
    }
}

/// The smaller part that a line from edge to edge cuts off of the plate.
fn cut_off(site: &LineSite<'_>, edges: &[Edge], path: &str) -> Result<Outline, Box<Fault>> {
    let plate = &site.form.edge;
    let (start, end) = (edges[0].from(), edges[edges.len() - 1].to());
    let onward = edges.iter().copied().chain(plate.stretch(end, start));
    let back = edges.iter().rev().map(Edge::reversed);
    let backward = back.chain(plate.stretch(start, end));
    let part = |chain: Vec<Edge>| {
        Outline::new(chain).map_err(|why| impossible(site, path, ImpossiblePath::NotAnOutline(why)))
    };
    let (one, other) = (part(onward.collect())?, part(backward.collect())?);
    Ok(match one.area_mm2() <= other.area_mm2() {
        true => one,
        false => other,
    })
}

/// A line that leaves the plate, or runs onto the heel unsaid.
fn stays_on_the_flat(site: &LineSite<'_>, edges: &[Edge], path: &str) -> Result<(), Box<Fault>> {
    let off = |line: &Outline| {
        let most = edges.iter().map(|edge| out_of(line, edge));
        most.fold(0.0, f64::max)
    };
    let beyond = off(&site.form.edge);
    if beyond > SAME_LENGTH_MM {
        let fact = format!(
            "the weld line runs off the plate, by {}",
            site.amounts.mm(beyond)
        );
        return Err(fault(path, fact, "keep it on the plate"));
    }
    let Some(tangent) = site.form.line(NamedLine::Tangent) else {
        return Ok(());
    };
    let beyond = off(tangent);
    if beyond > SAME_LENGTH_MM {
        let fact = format!(
            "the weld line runs onto the heel, by {}, where the face shows no true length",
            site.amounts.mm(beyond)
        );
        let remedy = "end it on the flat; with `over_flange` it runs square over heel and flange";
        return Err(fault(path, fact, remedy));
    }
    Ok(())
}

/// A line that crosses itself.
fn refuse_crossing(site: &LineSite<'_>, edges: &[Edge], path: &str) -> Result<(), Box<Fault>> {
    for (i, a) in edges.iter().enumerate() {
        for (j, b) in edges.iter().enumerate().skip(i + 1) {
            let meeting = match j == i + 1 {
                true => edges_meet_again(a, b, &[a.to()]),
                false => edges_meet(a, b),
            };
            if let Some(place) = meeting {
                return Err(Box::new(crosses(site, path, place)));
            }
        }
    }
    Ok(())
}
