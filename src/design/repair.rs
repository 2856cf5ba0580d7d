//! Weld repairs of a kept plate in their places: what is welded, what it renews, and what lies near it.
//!
//! The *stayed area* is the flat within the outermost stays of a set that stands on a pitch. A repair is *within* it where it lies
//! wholly inside, and *across* its outer row where only a part of it does. No weld is sized here, and none is said to be allowed.

use super::amount::{Amounts, point};
use super::gap::{gap_of_chains, gap_of_outlines};
use super::numbering::Numbered;
use super::piece::{PieceLetIn, piece_let_in};
use super::repair_line::{LineSite, weld_line};
use super::smokebox_tube_plate::Form;
use super::stay_field::{StayField, stay_fields};
use super::{Edge, FlangeDesign, Hole, HoleGroup, Outline, Point, RivetLine, StayPitch};
use crate::spec::{
    BuildUpSpec, CaulkingEdgeSpec, CrackSpec, Fault, GirthCracksSpec, NamedLine, Purpose,
    RepairWeld, RequiredThickness, Written,
};
use crate::units::tolerance::SAME_LENGTH_MM;
use crate::units::{Length, Size};

/// A weld repair in its place.
#[derive(Clone, Debug)]
pub struct Repair {
    /// As the spec calls it.
    pub name: String,
    /// What is welded.
    pub work: RepairWork,
    /// The weld as the face shows it; of a build-up the edge of its area. Empty for repairs of the flange's joint.
    pub weld: Vec<Edge>,
    /// What is new metal when it is done.
    pub renews: Option<Outline>,
    /// Length of the weld on the flat.
    pub flat_length: Length,
    /// The same with what runs over heel and flange, on mid thickness.
    pub length: Length,
    /// Where the weld runs over the flange.
    pub crossings: Vec<FlangeCrossing>,
    /// Least clear metal from the weld to the holes of each purpose; those that it starts from or builds up round are left out.
    pub nearest: Vec<(Purpose, usize, Length)>,
    /// Clear metal to the line at which the flat ends; below nothing where the weld runs over it.
    pub to_end_of_flat: Option<(NamedLine, Length)>,
    /// Holes in the metal that is renewed, and holes that a crack starts from, as indices into [`super::Design::holes`].
    pub holes_in_it: Vec<usize>,
    /// Rivets in a piece let in, as indices into [`RivetLine::rivets`].
    pub rivets_in_it: Vec<usize>,
    /// What a piece let in is ordered as.
    pub piece: Option<PieceLetIn>,
    /// How it lies to the stayed area.
    pub among_stays: AmongStays,
    /// Where it stands in the spec: `repairs[2]`.
    pub path: String,
}

/// What is welded.
#[derive(Clone, Debug)]
pub enum RepairWork {
    /// A wasted area, built up.
    BuildUp {
        /// Across, and up; both the diameter of a round one.
        sizes: (Size, Size),
        /// Area, mm².
        area_mm2: f64,
        /// Least metal left, and how that is known; none where it is not.
        left: Option<(Length, LeftBy)>,
        /// The least and the most thickness that the works requires anywhere in it; none where it requires none.
        required: Option<(Size, Size)>,
    },
    /// A crack.
    Crack,
    /// A weld line; whether it is the edge of a piece let in.
    Line {
        /// Whether the piece it cuts off is new.
        let_in: bool,
    },
    /// Cracks of the flange's joint.
    GirthCracks(GirthCracksSpec),
    /// The caulking edge of the flange.
    CaulkingEdge(CaulkingEdgeSpec),
}

/// How it is known what metal is left.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LeftBy {
    /// The spec says it.
    Spec,
    /// It is the least reading in the area, of this number.
    Reading(usize),
}

/// How a repair lies to the stayed area.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum AmongStays {
    /// Wholly inside that of this set of stays.
    Within {
        /// Index into [`super::Design::groups`].
        group: usize,
        /// The least pitch of the set.
        pitch: Length,
    },
    /// Across the outer row of this set.
    Across {
        /// Index into [`super::Design::groups`].
        group: usize,
        /// How often the weld crosses the outer row; of an area that has the whole set in it, not at all.
        times: usize,
    },
    /// Clear of every stayed area.
    Clear,
}

/// Where a weld runs over heel and flange.
#[derive(Clone, Debug)]
pub struct FlangeCrossing {
    /// Degrees clockwise from the top, as seen.
    pub angle_deg: f64,
    /// How far off square it comes to the tangent, degrees; from there it runs square.
    pub off_square_deg: f64,
    /// The nearest rivet, and the metal along the bore from its hole to the weld.
    pub rivet: Option<(String, Length)>,
    /// The nearest rivet on each hand of it, anticlockwise first, with the metal to it.
    pub beside: Vec<(String, Length)>,
}

impl Repair {
    /// Whether a piece let in takes in the flange at this angle, degrees clockwise from the top: between its two welds there, on the
    /// side of the lesser angle.
    pub fn takes_in(&self, angle_deg: f64) -> bool {
        let [a, b] = &self.crossings[..] else {
            return false;
        };
        let turn = |from: f64, to: f64| (to - from).rem_euclid(360.0);
        let (first, last) = match turn(a.angle_deg, b.angle_deg) <= 180.0 {
            true => (a, b),
            false => (b, a),
        };
        self.piece.is_some()
            && turn(first.angle_deg, angle_deg) <= turn(first.angle_deg, last.angle_deg)
    }
}

/// Everything that repairs are placed on.
pub(super) struct Site<'a> {
    pub(super) written: &'a Written,
    pub(super) form: &'a Form,
    pub(super) numbered: &'a Numbered,
    pub(super) rivets: Option<&'a RivetLine>,
    pub(super) amounts: Amounts,
}

/// Places every repair; one that contradicts the plate is left out, with its faults.
pub(super) fn place_repairs(
    site: &Site<'_>,
    stay_pitches: &[StayPitch],
    stay_tubes: &[usize],
    faults: &mut Vec<Fault>,
) -> Vec<Repair> {
    let fields = stay_fields(site.numbered, stay_pitches, stay_tubes);
    let repairs = site.written.repairs.iter().enumerate();
    repairs
        .filter_map(|(index, repair)| {
            let path = format!("repairs[{index}]");
            let mut placed = Repair {
                name: repair.name.clone(),
                ..placed(site, &repair.weld, &path, faults)?
            };
            measure_again(&mut placed, &site.numbered.holes, &site.numbered.groups);
            placed.among_stays = among(&placed, &fields);
            Some(placed)
        })
        .collect()
}

fn placed(
    site: &Site<'_>,
    weld: &RepairWeld,
    path: &str,
    faults: &mut Vec<Fault>,
) -> Option<Repair> {
    match weld {
        RepairWeld::BuildUp(area) => build_up(site, area, path, faults),
        RepairWeld::Crack(crack) => a_crack(site, crack, path, faults),
        RepairWeld::Line(line) => {
            let site_of_line = LineSite {
                form: site.form,
                rivets: site.rivets,
                amounts: site.amounts,
            };
            let laid = weld_line(&site_of_line, line, &format!("{path}.weld.line"))
                .map_err(|fault| faults.push(*fault))
                .ok()?;
            let key = format!("{path}.weld.line");
            refuse_through_holes(site, &laid.weld, &key, Length::mm(SAME_LENGTH_MM), faults)?;
            refuse_through_rivets(site, &laid.crossings, &key, faults)?;
            let mut repair = bare(
                path,
                RepairWork::Line {
                    let_in: line.let_in,
                },
            );
            repair.rivets_in_it = rivets_in(site, laid.renews.as_ref());
            repair.holes_in_it = holes_in(site, laid.renews.as_ref());
            repair.to_end_of_flat = match laid.crossings.is_empty() {
                true => to_end_of_flat(site, &laid.weld),
                false => None,
            };
            (repair.flat_length, repair.length) = (laid.flat_length, laid.length);
            (repair.weld, repair.renews) = (laid.weld, laid.renews);
            repair.crossings = laid.crossings;
            repair.piece = piece_let_in(site, line, &repair);
            Some(repair)
        }
        RepairWeld::GirthCracks(cracks) => Some(bare(path, RepairWork::GirthCracks(*cracks))),
        RepairWeld::CaulkingEdge(edge) => {
            let mut repair = bare(path, RepairWork::CaulkingEdge(edge.clone()));
            repair.length = edge.length.value();
            Some(repair)
        }
    }
}

/// A repair with no place on the face yet.
fn bare(path: &str, work: RepairWork) -> Repair {
    Repair {
        name: String::new(),
        work,
        weld: Vec::new(),
        renews: None,
        flat_length: Length::ZERO,
        length: Length::ZERO,
        crossings: Vec::new(),
        nearest: Vec::new(),
        to_end_of_flat: None,
        holes_in_it: Vec::new(),
        rivets_in_it: Vec::new(),
        piece: None,
        among_stays: AmongStays::Clear,
        path: path.to_string(),
    }
}

fn build_up(
    site: &Site<'_>,
    area: &BuildUpSpec,
    path: &str,
    faults: &mut Vec<Fault>,
) -> Option<Repair> {
    let at = point(&area.at);
    let (outline, sizes) = match (&area.diameter, &area.width, &area.height) {
        (Some(across), _, _) => (
            Outline::circle(at, across.value().to_mm() / 2.0),
            (across.clone(), across.clone()),
        ),
        (None, Some(width), Some(height)) => (
            box_about(at, width.value().to_mm(), height.value().to_mm()),
            (width.clone(), height.clone()),
        ),
        // Reading refused it.
        _ => return None,
    };
    let key = format!("{path}.weld.build_up");
    refuse_off_the_flat(site, outline.edges(), &key, faults)?;
    let plate = site.written.plate.thickness.value();
    let left = match (&area.metal_left, &area.loss) {
        (Some(left), _) => Some(left.value()),
        (None, Some(loss)) => Some(plate - loss.value()),
        (None, None) => None,
    };
    let mut repair = bare(
        path,
        RepairWork::BuildUp {
            sizes,
            area_mm2: outline.area_mm2(),
            left: left.map(|left| (left, LeftBy::Spec)),
            required: required_in(site, &outline),
        },
    );
    repair.holes_in_it = holes_touched(site, &outline);
    repair.to_end_of_flat = to_end_of_flat(site, outline.edges());
    repair.flat_length = outline.perimeter();
    repair.length = repair.flat_length;
    repair.weld = outline.edges().to_vec();
    repair.renews = Some(outline);
    Some(repair)
}

/// The least and the most thickness that the works requires in an area: of every region that reaches into the box round it.
fn required_in(site: &Site<'_>, area: &Outline) -> Option<(Size, Size)> {
    let (low, high) = area.bounds();
    let reaches = |region: &&RequiredThickness| match (&region.from, &region.to) {
        (Some(from), Some(to)) => {
            let (a, b) = (point(from), point(to));
            let apart = |low: f64, high: f64, a: f64, b: f64| a.max(b) < low || a.min(b) > high;
            !(apart(low.x, high.x, a.x, b.x) || apart(low.y, high.y, a.y, b.y))
        }
        _ => true,
    };
    let regions = site
        .written
        .survey
        .iter()
        .flat_map(|survey| &survey.required);
    let sizes: Vec<&Size> = regions
        .filter(reaches)
        .map(|region| &region.thickness)
        .collect();
    let by_value = |a: &&&Size, b: &&&Size| a.value().total_cmp(&b.value());
    let least = *sizes.iter().min_by(by_value)?;
    let most = *sizes.iter().max_by(by_value)?;
    Some((least.clone(), most.clone()))
}

fn box_about(at: Point, width: f64, height: f64) -> Outline {
    let corner = |x: f64, y: f64| at + Point::new(x * width / 2.0, y * height / 2.0);
    let corners = [
        corner(-1.0, -1.0),
        corner(1.0, -1.0),
        corner(1.0, 1.0),
        corner(-1.0, 1.0),
    ];
    let side = |i: usize| Edge::Line {
        from: corners[i],
        to: corners[(i + 1) % 4],
    };
    Outline::new((0..4).map(side).collect()).expect("a box of two sizes above nothing closes")
}

fn a_crack(
    site: &Site<'_>,
    crack: &CrackSpec,
    path: &str,
    faults: &mut Vec<Fault>,
) -> Option<Repair> {
    let (from, to) = (point(&crack.from), point(&crack.to));
    let key = format!("{path}.weld.crack");
    if from.distance(to) <= SAME_LENGTH_MM {
        faults.push(
            Fault::new(
                format!("{key}.to"),
                "the crack ends where it starts",
                "write its two ends",
            )
            .and(format!("{key}.from"), "the other end"),
        );
        return None;
    }
    let weld = vec![Edge::Line { from, to }];
    refuse_off_the_flat(site, &weld, &key, faults)?;
    refuse_through_holes(site, &weld, &key, a_64th(), faults)?;
    let mut repair = bare(path, RepairWork::Crack);
    repair.holes_in_it = starting_holes(site, from, to);
    repair.to_end_of_flat = to_end_of_flat(site, &weld);
    repair.flat_length = Length::mm(from.distance(to));
    repair.length = repair.flat_length;
    repair.weld = weld;
    Some(repair)
}

/// How near to a hole's edge the end of a crack is taken to start from it: a place read to the nearest 64th is so far out.
pub(super) fn a_64th() -> Length {
    Length::sixty_fourths(1)
}

fn radius(hole: &Hole) -> f64 {
    hole.finish.value().to_mm() / 2.0
}

/// Holes on whose edge the crack starts or ends.
fn starting_holes(site: &Site<'_>, from: Point, to: Point) -> Vec<usize> {
    let near = |hole: &Hole, end: Point| {
        let off = (end.distance(hole.at) - radius(hole)).abs();
        a_64th().shortfall(Length::mm(off)).is_none()
    };
    let holes = site.numbered.holes.iter().enumerate();
    holes
        .filter(|(_, hole)| near(hole, from) || near(hole, to))
        .map(|(index, _)| index)
        .collect()
}

/// Holes whose centre lies in the metal that is renewed.
fn holes_in(site: &Site<'_>, renews: Option<&Outline>) -> Vec<usize> {
    let Some(renews) = renews else {
        return Vec::new();
    };
    let holes = site.numbered.holes.iter().enumerate();
    holes
        .filter(|(_, hole)| renews.contains(hole.at))
        .map(|(index, _)| index)
        .collect()
}

/// Holes of which any part lies in the area.
fn holes_touched(site: &Site<'_>, area: &Outline) -> Vec<usize> {
    let holes = site.numbered.holes.iter().enumerate();
    holes
        .filter(|(_, hole)| area.depth(hole.at) > SAME_LENGTH_MM - radius(hole))
        .map(|(index, _)| index)
        .collect()
}

fn rivets_in(site: &Site<'_>, renews: Option<&Outline>) -> Vec<usize> {
    let (Some(renews), Some(line), Some(FlangeDesign::Pressed(pressed))) =
        (renews, site.rivets, &site.form.flange)
    else {
        return Vec::new();
    };
    let outside = pressed.outside_diameter.value() / 2.0;
    let middle = (outside - site.written.plate.thickness.value() / 2.0).to_mm();
    let at = |angle_deg: f64| {
        let angle = crate::units::angle::from_top_clockwise(angle_deg);
        Point::new(
            middle * crate::units::angle::cos(angle),
            middle * crate::units::angle::sin(angle),
        )
    };
    let rivets = line.rivets.iter().enumerate();
    rivets
        .filter(|(_, rivet)| renews.contains(at(rivet.angle_deg)))
        .map(|(index, _)| index)
        .collect()
}

/// The clear metal of a repair found again, with holes of other sizes or in other places.
pub(super) fn measure_again(repair: &mut Repair, holes: &[Hole], groups: &[HoleGroup]) {
    let left_out = match repair.work {
        RepairWork::Line { .. } => &[],
        _ => &repair.holes_in_it[..],
    };
    if !repair.weld.is_empty() {
        repair.nearest = nearest(holes, groups, &repair.weld, left_out);
    }
}

/// Least clear metal from a weld to the holes of each purpose, some of them left out.
fn nearest(
    holes: &[Hole],
    groups: &[HoleGroup],
    weld: &[Edge],
    left_out: &[usize],
) -> Vec<(Purpose, usize, Length)> {
    let mut all: Vec<(Purpose, usize, Length)> = Vec::new();
    for (index, hole) in holes.iter().enumerate() {
        if left_out.contains(&index) {
            continue;
        }
        let purpose = groups[hole.group].purpose;
        let metal = Length::mm(distance(weld, hole.at) - radius(hole));
        match all.iter_mut().find(|one| one.0 == purpose) {
            // Nearer by more than a rounding, so that of several alike the first is named.
            Some(best) if metal < best.2 - Length::mm(SAME_LENGTH_MM) => {
                (best.1, best.2) = (index, metal);
            }
            Some(_) => {}
            None => all.push((purpose, index, metal)),
        }
    }
    all.sort_by_key(|one| one.0);
    all
}

/// Distance from a place to a weld, mm.
pub(super) fn distance(weld: &[Edge], place: Point) -> f64 {
    let all = weld.iter().map(|edge| edge.distance(place));
    all.fold(f64::INFINITY, f64::min)
}

/// The line at which the flat ends: the tangent, the inner weld toe, or the edge of a plate without a flange.
pub(super) fn end_of_flat(form: &Form) -> Option<(NamedLine, &Outline)> {
    form.ends_of_flat().next()
}

fn to_end_of_flat(site: &Site<'_>, weld: &[Edge]) -> Option<(NamedLine, Length)> {
    let (name, line) = end_of_flat(site.form)?;
    let inside = weld.iter().all(|edge| line.contains(edge.midpoint()));
    let gap = gap_of_chains(weld, line.edges());
    Some((name, Length::mm(if inside { gap } else { -gap })))
}

/// A weld that leaves the plate, or runs onto the heel, where the face shows no true length.
fn refuse_off_the_flat(
    site: &Site<'_>,
    weld: &[Edge],
    key: &str,
    faults: &mut Vec<Fault>,
) -> Option<()> {
    let ends: [(&Outline, &str, &str); 2] = [
        (
            &site.form.edge,
            "runs off the plate",
            "move it onto the plate, or make it smaller",
        ),
        (
            site.form
                .line(NamedLine::Tangent)
                .unwrap_or(&site.form.edge),
            "runs onto the heel, where the face shows no true length",
            "end it at the tangent; what is welded in the heel is for its own detail",
        ),
    ];
    for (line, fact, remedy) in ends {
        let off = weld
            .iter()
            .map(|edge| out_of(line, edge))
            .fold(0.0, f64::max);
        if off > SAME_LENGTH_MM {
            let fact = format!("the weld {fact}, by {}", site.amounts.mm(off));
            faults.push(Fault::new(key, fact, remedy));
            return None;
        }
    }
    Some(())
}

/// By how much an edge lies outside a line, at its ends, in its middle and where it goes furthest to every side, mm.
pub(super) fn out_of(line: &Outline, edge: &Edge) -> f64 {
    let mut places = vec![edge.from(), edge.midpoint(), edge.to()];
    if let (Edge::Arc { centre, .. }, Some((middle, reach))) = (edge, line.as_circle()) {
        // On a round line an arc goes furthest out where it is furthest from the line's centre.
        let away = *centre + (*centre - middle).unit() * reach;
        places.push(edge.nearest(away));
    }
    let most = places.iter().map(|place| -line.depth(*place));
    most.fold(0.0, f64::max)
}

/// A weld through a hole; the end of a crack may lie in a hole by as much as a place read to the nearest 64th is out.
fn refuse_through_holes(
    site: &Site<'_>,
    weld: &[Edge],
    key: &str,
    allowed: Length,
    faults: &mut Vec<Fault>,
) -> Option<()> {
    let into = |hole: &Hole| Length::mm(radius(hole) - distance(weld, hole.at));
    let mut through: Vec<(Length, &Hole)> = site
        .numbered
        .holes
        .iter()
        .map(|hole| (into(hole), hole))
        .filter(|(into, _)| allowed.shortfall(*into).is_some())
        .collect();
    through.sort_by(|a, b| b.0.total_cmp(&a.0));
    let Some(&(into, worst)) = through.first() else {
        return Some(());
    };
    let purpose = site.numbered.groups[worst.group].purpose;
    let more = match through.len() {
        1 => String::new(),
        2 => ", and 1 hole more".into(),
        many => format!(", and {} holes more", many - 1),
    };
    faults.push(
        Fault::new(
            key,
            format!(
                "the weld runs through {} {} at {}, {} into it{more}",
                purpose.name(),
                worst.id,
                site.amounts.place(worst.at),
                site.amounts.length(into)
            ),
            "lay it clear of every hole; a hole that must lie on a weld is drilled after it",
        )
        .and(&worst.path, "the hole"),
    );
    None
}

fn refuse_through_rivets(
    site: &Site<'_>,
    crossings: &[FlangeCrossing],
    key: &str,
    faults: &mut Vec<Fault>,
) -> Option<()> {
    for crossing in crossings {
        if let Some((id, metal)) = &crossing.rivet
            && metal.to_mm() < -SAME_LENGTH_MM
        {
            faults.push(
                Fault::new(
                    key,
                    format!(
                        "the weld runs over the flange through rivet {id}, {} into its hole",
                        site.amounts.length(metal.abs())
                    ),
                    "take it over the flange midway between two rivets",
                )
                .and("rivets", "the rivets"),
            );
            return None;
        }
    }
    Some(())
}

fn among(repair: &Repair, fields: &[StayField]) -> AmongStays {
    let Some(first) = repair.weld.first() else {
        return AmongStays::Clear;
    };
    for field in fields {
        let group = field.group;
        let times = field.times_crossed(&repair.weld);
        // A weld line lies where it runs; an area also where it has stays within it.
        let holds = |area: &Outline| area.contains(field.outer.edges()[0].from());
        let round_them = match repair.work {
            RepairWork::BuildUp { .. } => repair.renews.as_ref().is_some_and(holds),
            _ => false,
        };
        if times > 0 || round_them {
            return AmongStays::Across { group, times };
        }
        if field.outer.contains(first.from()) {
            return AmongStays::Within {
                group,
                pitch: field.pitch,
            };
        }
    }
    AmongStays::Clear
}

/// Clear metal between the areas of two repairs; nothing where they meet, none where either renews no area.
pub fn between_areas(a: &Repair, b: &Repair) -> Option<Length> {
    let (a, b) = (a.renews.as_ref()?, b.renews.as_ref()?);
    Some(Length::mm(gap_of_outlines(a, b)))
}
