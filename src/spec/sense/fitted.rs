//! What is fitted to a hole goes on, does not fall through, and leaves metal.

use crate::spec::{
    Fault, Flange, HoleSet, Nest, Nut, PlugSpec, StayEnds, StaySpec, Washer, Written,
};
use crate::units::print::trimmed;
use crate::units::{Length, Size, whitworth_core};

/// Every contradiction in what is fitted to the holes, and in the preparation of a ring for its welds.
pub(super) fn fitted(written: &Written, faults: &mut Vec<Fault>) {
    for (i, nest) in written.tubes.iter().enumerate() {
        edge_radius(written, nest, i, faults);
        bead(nest, i, faults);
    }
    for (i, set) in written.holes.iter().enumerate() {
        let path = format!("holes[{i}]");
        if let Some(stay) = &set.stay {
            nuts(&path, stay, set, faults);
            washers(&path, stay, set, faults);
            held_by(&path, stay, faults);
        }
        if let Some(plug) = &set.plug {
            taper_plug(written, &path, plug, set, faults);
        }
        joint_face(written, &path, set, faults);
        pad(written, &path, set, faults);
    }
    preparation(written, faults);
}

fn no_size(path: String, size: &Size, faults: &mut Vec<Fault>) {
    if size.value() <= Length::ZERO {
        faults.push(Fault::new(
            path,
            format!("{size} is no size: it is not above nothing"),
            "write the size itself, without a sign",
        ));
    }
}

fn below_nothing(path: String, size: &Size, faults: &mut Vec<Fault>) {
    if size.value() < Length::ZERO {
        let fact = format!("{size} is below nothing");
        faults.push(Fault::new(path, fact, "write it without the sign"));
    }
}

fn edge_radius(written: &Written, nest: &Nest, i: usize, faults: &mut Vec<Fault>) {
    let Some(radius) = &nest.edge_radius else {
        return;
    };
    let path = format!("tubes[{i}].edge_radius");
    no_size(path.clone(), radius, faults);
    let plate = &written.plate.thickness;
    if radius.value() > Length::ZERO && plate.value() <= 2.0 * radius.value() {
        faults.push(
            Fault::new(
                path,
                format!("a radius of {radius} on both edges leaves no seat in a plate of {plate}"),
                "write the radius that takes the sharp edge off",
            )
            .and("plate.thickness", "the plate"),
        );
    }
}

fn bead(nest: &Nest, i: usize, faults: &mut Vec<Fault>) {
    let Some(bead) = &nest.bead else { return };
    let path = |key: &str| format!("tubes[{i}].bead.{key}");
    no_size(path("diameter"), &bead.diameter, faults);
    no_size(path("stands_out"), &bead.stands_out, faults);
    if nest.hole.value() >= bead.diameter.value() && bead.diameter.value() > Length::ZERO {
        faults.push(
            Fault::new(
                path("diameter"),
                format!(
                    "a bead of {} does not lie over a hole of {}",
                    bead.diameter, nest.hole
                ),
                "write the outside diameter of the bead, which is larger than the hole",
            )
            .and(format!("tubes[{i}].hole"), "the hole"),
        );
    }
    if let Some(out) = &nest.projection
        && bead.stands_out.value() > out.value()
    {
        faults.push(
            Fault::new(
                path("stands_out"),
                format!(
                    "the bead stands out {}, and the tube no more than {out} before it is beaded",
                    bead.stands_out
                ),
                "a tube only gets shorter as it is turned over: look again at both",
            )
            .and(format!("tubes[{i}].projection"), "before beading"),
        );
    }
}

/// The nuts of a stay, each with its key.
fn nuts_of(stay: &StaySpec) -> impl Iterator<Item = (&'static str, &Nut)> {
    let outside = stay.outside_nut.iter().map(|nut| ("outside_nut", nut));
    outside.chain(stay.inside_nut.iter().map(|nut| ("inside_nut", nut)))
}

/// Its washers, each with its key and the nut that bears on it.
fn washers_of(stay: &StaySpec) -> impl Iterator<Item = (&'static str, &Washer)> {
    let outside = stay
        .outside_washer
        .iter()
        .map(|one| ("outside_washer", one));
    outside.chain(stay.inside_washer.iter().map(|one| ("inside_washer", one)))
}

fn nuts(path: &str, stay: &StaySpec, set: &HoleSet, faults: &mut Vec<Fault>) {
    for (key, nut) in nuts_of(stay) {
        let place = format!("{path}.stay.{key}");
        no_size(format!("{place}.across_flats"), &nut.across_flats, faults);
        no_size(format!("{place}.thickness"), &nut.thickness, faults);
        let washer = match key {
            "outside_nut" => &stay.outside_washer,
            _ => &stay.inside_washer,
        };
        let across = nut.across_flats.value();
        if across > Length::ZERO && across <= stay.diameter.value() {
            faults.push(
                Fault::new(
                    format!("{place}.across_flats"),
                    format!(
                        "a nut {} across its flats leaves no metal round a thread of {}",
                        nut.across_flats, stay.diameter
                    ),
                    "write what a spanner takes hold of",
                )
                .and(format!("{path}.stay.diameter"), "over the threads"),
            );
        } else if across > Length::ZERO && washer.is_none() && across <= set.hole.value() {
            faults.push(
                Fault::new(
                    format!("{place}.across_flats"),
                    format!(
                        "a nut {} across its flats goes through a hole of {}, and no washer is under it",
                        nut.across_flats, set.hole
                    ),
                    "write the washer too, or look again at nut and hole",
                )
                .and(format!("{path}.hole"), "the hole"),
            );
        }
    }
    let Some(out) = &stay.stands_out else { return };
    let place = format!("{path}.stay.stands_out");
    below_nothing(place.clone(), out, faults);
    if stay.outside_nut.is_none() {
        faults.push(Fault::new(
            place,
            format!("{out} is reckoned from the outside nut, and none is written"),
            "add `outside_nut: {across_flats: …, thickness: …}`",
        ));
    }
}

fn washers(path: &str, stay: &StaySpec, set: &HoleSet, faults: &mut Vec<Fault>) {
    for (key, washer) in washers_of(stay) {
        let place = |inner: &str| format!("{path}.stay.{key}.{inner}");
        no_size(place("diameter"), &washer.diameter, faults);
        no_size(place("thickness"), &washer.thickness, faults);
        let diameter = washer.diameter.value();
        if diameter > Length::ZERO && diameter <= set.hole.value() {
            faults.push(
                Fault::new(
                    place("diameter"),
                    format!(
                        "a washer of {} goes through a hole of {}",
                        washer.diameter, set.hole
                    ),
                    "write its outside diameter, which is larger than the hole",
                )
                .and(format!("{path}.hole"), "the hole"),
            );
        }
        if let Some(hole) = &washer.hole {
            if hole.value() < stay.diameter.value() {
                faults.push(
                    Fault::new(
                        place("hole"),
                        format!(
                            "a washer with a hole of {hole} does not go over a stay of {}",
                            stay.diameter
                        ),
                        "write the hole in the washer, which is larger than the stay",
                    )
                    .and(format!("{path}.stay.diameter"), "over the threads"),
                );
            } else if hole.value() >= diameter {
                faults.push(
                    Fault::new(
                        place("hole"),
                        format!(
                            "a hole of {hole} leaves nothing of a washer of {}",
                            washer.diameter
                        ),
                        "write the hole in the washer, and its outside diameter",
                    )
                    .and(place("diameter"), "the washer"),
                );
            }
        }
        if let Some(clear) = &set.needs_clear
            && clear.value() < diameter
        {
            faults.push(
                Fault::new(
                    format!("{path}.needs_clear"),
                    format!("{clear} is kept clear for a washer of {}", washer.diameter),
                    "keep clear what the washer takes, or leave the key out: the washer is then kept clear of itself",
                )
                .and(place("diameter"), "the washer"),
            );
        }
    }
}

/// How the ends are held, against what is written of nuts and washers.
fn held_by(path: &str, stay: &StaySpec, faults: &mut Vec<Fault>) {
    let (Some(ends), place) = (stay.ends, format!("{path}.stay.ends")) else {
        return;
    };
    let mut contradicted = |key: &str, fact: &str, remedy: &str| {
        faults.push(
            Fault::new(place.clone(), fact, remedy)
                .and(format!("{path}.stay.{key}"), "written here"),
        );
    };
    match ends {
        StayEnds::RivetedOver | StayEnds::FormedHeads => {
            if let Some((key, _)) = nuts_of(stay).next() {
                contradicted(
                    key,
                    "the ends have no nuts, and a nut is written",
                    "write `nuts` or `nuts and washers`, or take the nut out",
                );
            }
        }
        StayEnds::Nuts => {
            if let Some((key, _)) = washers_of(stay).next() {
                contradicted(
                    key,
                    "the ends have nuts without washers, and a washer is written",
                    "write `nuts and washers`, or take the washer out",
                );
            }
        }
        StayEnds::NutsAndWashers => {}
    }
}

fn taper_plug(
    written: &Written,
    path: &str,
    plug: &PlugSpec,
    set: &HoleSet,
    faults: &mut Vec<Fault>,
) {
    let place = |key: &str| format!("{path}.plug.{key}");
    let before = faults.len();
    if set.purpose != crate::spec::Purpose::Plug {
        faults.push(
            Fault::new(
                format!("{path}.plug"),
                format!(
                    "a plug is written, and the holes are for a {}",
                    set.purpose.name()
                ),
                "write `purpose: plug`, or take the plug out",
            )
            .and(format!("{path}.purpose"), "the purpose"),
        );
    }
    no_size(place("large_end"), &plug.large_end, faults);
    for (key, size) in [("length", &plug.length), ("square", &plug.square)] {
        if let Some(size) = size {
            no_size(place(key), size, faults);
        }
    }
    if plug.taper_one_in <= 0.0 {
        faults.push(Fault::new(
            place("taper_one_in"),
            format!(
                "a taper of one in {} is no taper",
                trimmed(plug.taper_one_in, 4)
            ),
            "write 12 for an inch to the foot on the diameter, 16 for three quarters",
        ));
    }
    if plug.threads_per_inch <= 0.0 {
        faults.push(Fault::new(
            place("threads_per_inch"),
            format!("{} threads to the inch is no thread", plug.threads_per_inch),
            "count them against a gauge on the old plug",
        ));
    }
    if faults.len() > before {
        return;
    }
    if plug.large_end.value() < set.hole.value() {
        faults.push(
            Fault::new(
                place("large_end"),
                format!(
                    "a plug of {} at its large end goes through a hole of {}",
                    plug.large_end, set.hole
                ),
                "gauge the plug over the threads at its large end, and the hole at the smokebox face",
            )
            .and(format!("{path}.hole"), "the hole"),
        );
        return;
    }
    // Where no length is written the thread goes through the plate at least.
    let stands_out = plug.taper_one_in * (plug.large_end.value() - set.hole.value());
    let least = stands_out + written.plate.thickness.value();
    let length = plug.length.as_ref().map_or(least, Size::value);
    if let Some(length) = &plug.length
        && length.value() <= stands_out
    {
        faults.push(
            Fault::new(
                place("length"),
                format!(
                    "a thread of {length} on a plug of {}, one in {}, does not reach a hole of {}",
                    plug.large_end,
                    trimmed(plug.taper_one_in, 4),
                    set.hole
                ),
                "gauge the plug and the hole again",
            )
            .and(format!("{path}.hole"), "the hole")
            .and(place("large_end"), "the large end"),
        );
        return;
    }
    let small_end = plug.large_end.value() - length / plug.taper_one_in;
    if whitworth_core(small_end, plug.threads_per_inch) <= Length::ZERO {
        faults.push(
            Fault::new(
                place("taper_one_in"),
                format!(
                    "one in {} leaves no core under {} threads to the inch at the small end",
                    trimmed(plug.taper_one_in, 4),
                    trimmed(plug.threads_per_inch, 4)
                ),
                "write the taper on the diameter: 12 for an inch to the foot",
            )
            .and(place("threads_per_inch"), "the thread"),
        );
    }
}

fn joint_face(written: &Written, path: &str, set: &HoleSet, faults: &mut Vec<Fault>) {
    let Some(face) = &set.joint_face else { return };
    let place = |key: &str| format!("{path}.joint_face.{key}");
    no_size(place("diameter"), &face.diameter, faults);
    if face.diameter.value() > Length::ZERO && face.diameter.value() <= set.hole.value() {
        faults.push(
            Fault::new(
                place("diameter"),
                format!(
                    "a joint face of {} is no wider than its hole, {}",
                    face.diameter, set.hole
                ),
                "write the outside diameter of the face",
            )
            .and(format!("{path}.hole"), "the hole"),
        );
    }
    if let Some(name) = &face.studs {
        let known: Vec<&str> = written.holes.iter().map(|one| one.name.as_str()).collect();
        if !known.contains(&name.as_str()) || *name == set.name {
            faults.push(Fault::new(
                place("studs"),
                format!("no group of holes is called `{name}` for its studs"),
                "give the stud holes a group of their own under `holes`, and its name here",
            ));
        }
    }
}

fn pad(written: &Written, path: &str, set: &HoleSet, faults: &mut Vec<Fault>) {
    let Some(at) = &set.pad else { return };
    let place = |key: &str| format!("{path}.pad.{key}");
    let found = written.pads.iter().position(|pad| pad.name == at.name);
    let Some(i) = found else {
        faults.push(Fault::new(
            place("name"),
            format!("no pad is called `{}`", at.name),
            "write the pad under `pads`, and its name here",
        ));
        return;
    };
    let pad = &written.pads[i];
    if pad.diameter.value() > Length::ZERO && pad.diameter.value() <= set.hole.value() {
        faults.push(
            Fault::new(
                place("name"),
                format!(
                    "a pad of {} is no wider than the hole, {}",
                    pad.diameter, set.hole
                ),
                "write the outside diameter of the pad",
            )
            .and(format!("pads[{i}].diameter"), "the pad")
            .and(format!("{path}.hole"), "the hole"),
        );
    }
    if let Some(leg) = &at.weld_leg {
        no_size(place("weld_leg"), leg, faults);
        if leg.value() > pad.thickness.value() {
            faults.push(
                Fault::new(
                    place("weld_leg"),
                    format!(
                        "a leg of {leg} does not stand on the edge of a pad {} thick",
                        pad.thickness
                    ),
                    "write the leg that the works gives, no more than the pad's thickness",
                )
                .and(format!("pads[{i}].thickness"), "the pad"),
            );
        }
    }
}

fn preparation(written: &Written, faults: &mut Vec<Fault>) {
    let Some(Flange::Fabricated(ring)) = &written.flange else {
        return;
    };
    let Some(preparation) = &ring.weld_preparation else {
        return;
    };
    let path = |key: &str| format!("flange.fabricated.weld_preparation.{key}");
    let before = faults.len();
    let mut depth = Length::ZERO;
    let mut deepest = Vec::new();
    for (key, bevel) in [
        ("bevel_inside", &preparation.bevel_inside),
        ("bevel_outside", &preparation.bevel_outside),
    ] {
        let Some(bevel) = bevel else { continue };
        no_size(path(&format!("{key}.depth")), &bevel.depth, faults);
        if !(bevel.angle > 0.0 && bevel.angle < 90.0) {
            faults.push(Fault::new(
                path(&format!("{key}.angle")),
                format!("a bevel of {}° is none", trimmed(bevel.angle, 4)),
                "write the angle between the bevel and the face of the plate, above 0 and below 90",
            ));
        }
        depth += bevel.depth.value();
        deepest.push((path(&format!("{key}.depth")), bevel.depth.to_string()));
    }
    if let Some(gap) = &preparation.root_gap {
        below_nothing(path("root_gap"), gap, faults);
    }
    let thickness = &ring.ring_thickness;
    if faults.len() == before && depth > thickness.value() {
        let sizes: Vec<&str> = deepest.iter().map(|(_, size)| size.as_str()).collect();
        let (place, _) = &deepest[0];
        faults.push(
            Fault::new(
                place,
                format!(
                    "bevels {} deep are more than the ring, {thickness}",
                    sizes.join(" and ")
                ),
                "leave a root face, or bevels that meet",
            )
            .and("flange.fabricated.ring_thickness", "the ring"),
        );
    }
}
