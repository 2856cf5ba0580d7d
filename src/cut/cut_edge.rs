//! The edge as it is cut: the finished edge, the metal left on it for dressing, and sharp re-entrant corners relieved.
//!
//! A *re-entrant* corner points into the metal. No process cuts one sharp, and a sharp one cracks; so the spec says what is
//! made of it, or the plate is refused.

use crate::design::{Edge, Outline, Point};
use crate::spec::{CornerShape, Cutting, Fault};
use crate::units::Length;
use crate::units::angle::asin;
use crate::units::print::millimetres;
use crate::units::tolerance::{SAME_LENGTH_MM, SMOOTH_JOINT};

/// An edge to be cut.
#[derive(Clone, Debug)]
pub(super) struct CutEdge {
    pub(super) outline: Outline,
    /// What the contractor is told of it, a sentence each.
    pub(super) remarks: Vec<String>,
}

/// The edge as cut, this much outside the finished edge. `path` is where the metal for dressing is written.
pub(super) fn cut_edge(
    cutting: &Cutting,
    finished: &Outline,
    dress: Length,
    path: &str,
) -> Result<CutEdge, Vec<Fault>> {
    let dressed = dressed(finished, dress, path)?;
    let mut remarks = vanished(finished, &dressed, dress);
    let corners = sharp_re_entrant(&dressed);
    if corners.is_empty() {
        return Ok(CutEdge {
            outline: dressed,
            remarks,
        });
    }
    let outline = relieved(cutting, &dressed, &corners)?;
    remarks.push(format!(
        "Sharp corners that point into the metal are relieved, {} of them.",
        corners.len()
    ));
    Ok(CutEdge { outline, remarks })
}

fn dressed(finished: &Outline, dress: Length, path: &str) -> Result<Outline, Vec<Fault>> {
    let fault = |fact: &str| vec![Fault::new(path, fact, "leave less metal for dressing")];
    if dress < Length::ZERO {
        return Err(fault("metal left for dressing cannot be below nothing"));
    }
    let mut outlines = finished
        .offset(dress)
        .map_err(|failed| fault(&failed.to_string()))?;
    match (outlines.pop(), outlines.is_empty()) {
        (Some(outline), true) => Ok(outline),
        _ => Err(fault(
            "the edge with this much left on it is not one closed line",
        )),
    }
}

/// Pieces of the finished edge that nothing of the cut edge runs beside: hollows narrower than the metal left in them.
fn vanished(finished: &Outline, cut: &Outline, dress: Length) -> Vec<String> {
    if dress <= Length::ZERO {
        return Vec::new();
    }
    let gone = |edge: &&Edge| {
        (1..20).all(|i| {
            let place = edge.at_share(f64::from(i) / 20.0);
            cut.distance(place) > dress.to_mm() + SAME_LENGTH_MM
        })
    };
    let words = |edge: &Edge| {
        let at = edge.midpoint();
        format!(
            "The edge near ({} mm, {} mm) does not show in the cut edge: the metal left for dressing closes it. The works opens it.",
            millimetres(Length::mm(at.x)),
            millimetres(Length::mm(at.y))
        )
    };
    finished.edges().iter().filter(gone).map(words).collect()
}

/// Numbers of the edges at whose end a sharp corner points into the metal.
fn sharp_re_entrant(outline: &Outline) -> Vec<usize> {
    let edges = outline.edges();
    let turn = |i: usize| {
        let next = &edges[(i + 1) % edges.len()];
        edges[i].direction_at_end().cross(next.direction_at_start())
    };
    // The metal lies left of the walk, so that a turn to the right points into it.
    (0..edges.len())
        .filter(|i| turn(*i) < -SMOOTH_JOINT)
        .collect()
}

fn relieved(
    cutting: &Cutting,
    outline: &Outline,
    corners: &[usize],
) -> Result<Outline, Vec<Fault>> {
    let at = outline.edges()[corners[0]].to();
    let near = format!(
        "near ({} mm, {} mm)",
        millimetres(Length::mm(at.x)),
        millimetres(Length::mm(at.y))
    );
    let fault = |fact: String| {
        let remedy = "write `cutting.corner_relief` with `shape: radius` or `shape: relief` and a radius that has room, or round the corner in `outline`";
        vec![Fault::new("cutting.corner_relief", fact, remedy)]
    };
    let Some(relief) = &cutting.corner_relief else {
        return Err(fault(format!(
            "a corner {near} points into the metal and is sharp: no process leaves it so, and a sharp corner cracks"
        )));
    };
    let radius = relief.radius.as_ref().map_or(0.0, |r| r.value().to_mm());
    let no_room = || {
        fault(format!(
            "there is no room for {} mm at the corner {near}",
            millimetres(Length::mm(radius))
        ))
    };
    match relief.shape {
        CornerShape::None => Err(fault(format!(
            "nothing is to be made of the corner {near}, which points into the metal and is sharp"
        ))),
        CornerShape::Radius => {
            let radii: Vec<f64> = (0..outline.edges().len())
                .map(|i| if corners.contains(&i) { radius } else { 0.0 })
                .collect();
            outline.with_corners_rounded(&radii).map_err(|_| no_room())
        }
        CornerShape::Relief => notched(outline, corners, radius).ok_or_else(no_room),
    }
}

/// The outline with a round notch about each of these corners; none where an edge is shorter than the notch is wide.
fn notched(outline: &Outline, corners: &[usize], radius: f64) -> Option<Outline> {
    let edges = outline.edges();
    let count = edges.len();
    let mut all = Vec::new();
    for (i, edge) in edges.iter().enumerate() {
        let after_notch = corners.contains(&((i + count - 1) % count));
        let before_notch = corners.contains(&i);
        let start = match after_notch {
            true => Some(away_from(edge, radius)?),
            false => None,
        };
        let end = match before_notch {
            true => Some(away_from(&edge.reversed(), radius)?),
            false => None,
        };
        let (from, to) = (start.unwrap_or(edge.from()), end.unwrap_or(edge.to()));
        if edge.run_to(from) >= edge.run_to(to) {
            return None;
        }
        all.push(edge.between(from, to));
        if before_notch {
            let next = away_from(&edges[(i + 1) % count], radius)?;
            all.push(Edge::Arc {
                from: to,
                to: next,
                centre: edge.to(),
                radius,
                anticlockwise: false,
            });
        }
    }
    Outline::new(all).ok()
}

/// The place of an edge at this distance from its start, as the crow flies.
fn away_from(edge: &Edge, distance: f64) -> Option<Point> {
    let share = match *edge {
        Edge::Line { from, to } => distance / from.distance(to),
        Edge::Arc { radius, .. } if distance < 2.0 * radius => {
            2.0 * asin(distance / (2.0 * radius)) / edge.sweep().abs()
        }
        Edge::Arc { .. } => return None,
    };
    (share < 1.0).then(|| edge.at_share(share))
}

#[cfg(test)]
mod tests;
