//! The order note: what the cutting contractor is told, in plain lines, a heading in capitals over each paragraph.

use super::entity::{Entity, arc_through, entities, extent, steps, turned};
use super::file_name::{file_name, side};
use super::measured_back::long_sizes;
use super::part::{CutPart, PartKind, Withheld};
use crate::design::cutter::{Settings, in_mm};
use crate::design::number_runs;
use crate::design::{Design, FlangeDesign};
use crate::spec::{Cutting, Order, Process, Spec};
use crate::units::angle::{PI, atan};
use crate::units::print::{decimal, millimetres, trimmed};

/// Letters to a line: what a printed page and a letter hold.
const LINE: usize = 96;

/// The lines of the note for these parts. `not_judged` is how many findings were not judged; none where nothing is cut.
pub fn order_note(
    spec: &Spec,
    design: &Design,
    parts: &[CutPart],
    not_judged: usize,
) -> Vec<String> {
    let Some(cutting) = &spec.written.cutting else {
        return Vec::new();
    };
    let mut note = Note::default();
    opening(&mut note, spec, cutting);
    for part in parts {
        one_part(&mut note, spec, cutting, part);
    }
    rules_of_cutting(&mut note, spec, cutting, design, parts);
    agreed_and_open(&mut note, spec, not_judged);
    cautions(&mut note);
    note.lines
}

#[derive(Default)]
struct Note {
    lines: Vec<String>,
}

impl Note {
    fn heading(&mut self, words: &str) {
        if !self.lines.is_empty() {
            self.lines.push(String::new());
        }
        self.lines.push(words.to_uppercase());
    }

    /// A paragraph, broken between words; later lines stand two in.
    fn say(&mut self, words: &str) {
        let mut line = String::new();
        for word in words.split_whitespace() {
            if !line.trim().is_empty() && line.chars().count() + 1 + word.chars().count() > LINE {
                self.lines.push(std::mem::replace(&mut line, "  ".into()));
            }
            if !line.trim().is_empty() {
                line.push(' ');
            }
            line.push_str(word);
        }
        self.lines.push(line);
    }

    fn fact(&mut self, name: &str, value: &str) {
        self.say(&format!("{name}: {value}"));
    }

    /// A fact that only the spec can give.
    fn stated(&mut self, name: &str, value: Option<&str>) {
        self.fact(name, value.unwrap_or("not stated; ask before cutting"));
    }
}

fn opening(note: &mut Note, spec: &Spec, cutting: &Cutting) {
    let job = &spec.written.job;
    note.heading("Order note for cutting");
    note.fact("Works", &job.works);
    note.fact(
        "Job",
        &format!("{}, {}", job.engine, spec.written.plate.kind.name()),
    );
    note.fact(
        "Drawing",
        &format!(
            "{} revision {}, issued {}",
            job.drawing, job.revision, job.issued
        ),
    );
    note.fact("Fingerprint of the spec", spec.short_fingerprint());
    if !cutting.order.withdrawn.is_empty() {
        note.fact(
            "Withdrawn, not to be cut from",
            &cutting.order.withdrawn.join(", "),
        );
    }
    note.fact(
        "Process",
        &format!("{} ({})", cutting.process.name(), cutting.origin),
    );
    note.stated("Contact", cutting.order.contact.as_deref());
}

fn one_part(note: &mut Note, spec: &Spec, cutting: &Cutting, part: &CutPart) {
    let order = &cutting.order;
    note.heading(&format!("Part: {}", part.name));
    note.fact(
        "File",
        &format!("{}, and the same in R12", file_name(spec, part)),
    );
    note.fact("Number off", &part.number_off.to_string());
    match part.kind {
        PartKind::Template => template_sheet(note, part),
        PartKind::Plate | PartKind::Ring | PartKind::Pad => metal(note, part, order),
    }
    lying(note, spec, part);
    sizes(note, part);
    for holes in &part.holes_cut {
        let which = match &holes.ids[..] {
            [id] if *id == holes.name => String::new(),
            ids => format!(": {}", number_runs(ids)),
        };
        note.fact(
            "Holes cut",
            &format!(
                "{} of {} mm ({}), {}; opened to {} mm at the works{which}",
                holes.ids.len(),
                millimetres(holes.cut),
                holes.name,
                holes.by,
                millimetres(holes.finish),
            ),
        );
    }
    withheld(note, &part.withheld);
    for remark in &part.remarks {
        note.say(remark);
    }
    if !part.by_hand.is_empty() {
        note.fact(
            "By hand where the works says, since the file has no room for it",
            &part.by_hand.join(" / "),
        );
    }
    note.say("Measure on the part as cut, and return with the delivery note:");
    for size in long_sizes(part) {
        let expected = trimmed(size.mm, 2);
        note.say(&format!("- {}: {expected} mm, actual:........", size.words));
    }
}

fn metal(note: &mut Note, part: &CutPart, order: &Order) {
    let material = part.material.as_ref();
    note.stated("Material", material.map(|m| m.grade.as_str()));
    let certificate = material.and_then(|m| m.certificate.as_deref());
    note.stated("Certificate", certificate);
    note.fact("Thickness", &thickness(part, order));
    note.stated("Plate tolerance", order.plate_tolerance.as_deref());
}

/// A template goes into no boiler: what it is cut from is the contractor's to choose where the spec does not say.
fn template_sheet(note: &mut Note, part: &CutPart) {
    note.fact(
        "Material",
        "any flat sheet; no certificate is asked for a template",
    );
    let thickness = part.thickness.as_ref().map(in_mm);
    let any = "any that stays flat in the hand";
    note.fact("Thickness", thickness.as_deref().unwrap_or(any));
}

fn thickness(part: &CutPart, order: &Order) -> String {
    let Some(thickness) = &part.thickness else {
        return "not stated; ask before cutting".into();
    };
    let least = match part.kind {
        PartKind::Plate => &order.thickness_least,
        PartKind::Ring => &order.ring_thickness_least,
        PartKind::Pad => &order.pad_thickness_least,
        PartKind::Template => &None,
    };
    let least = match least {
        Some(least) => format!("nowhere less than {}", in_mm(least)),
        None => "least thickness not stated; ask before cutting".into(),
    };
    format!("{}, {least}", in_mm(thickness))
}

fn lying(note: &mut Note, spec: &Spec, part: &CutPart) {
    let lies = part.lies.to_lowercase();
    note.fact("Lies in the file", &format!("true size, {lies}"));
    if part.kind == PartKind::Plate {
        note.fact(
            "Seen from",
            &format!("the {}", side(spec.written.plate.view_from)),
        );
    }
    note.say(match (part.kind, spec.written.cutting.as_ref().and_then(|c| c.rolling)) {
        (PartKind::Template, _) => {
            "Turn it on the sheet as you like; the lettering is to be read on one face."
        }
        (PartKind::Plate, Some(_)) => {
            "Do not mirror. Lay it on the sheet with its scribed arrow along the rolling, this face up."
        }
        (PartKind::Plate, None) => {
            "Do not mirror. Turn it on the sheet as you like, but this face up; before cutting, stamp an arrow along the rolling, as you find it, into the scribed box under ROLLING."
        }
        (PartKind::Ring | PartKind::Pad, _) => {
            "Do not mirror. Turn it on the sheet as you like, but this face up."
        }
    });
}

fn sizes(note: &mut Note, part: &CutPart) {
    let all = entities(part);
    let cut: Vec<&Entity> = all
        .iter()
        .filter(|(layer, _)| layer.is_cut())
        .map(|(_, entity)| entity)
        .collect();
    let [wide, tall] = extent(cut.iter().copied()).map_or([0.0, 0.0], |e| e.size());
    note.fact(
        "Size over all",
        &format!("{} x {} mm", trimmed(wide, 2), trimmed(tall, 2)),
    );
    let length: f64 = cut.iter().map(|entity| length_mm(entity)).sum();
    note.fact(
        "Cut length and pierces",
        &format!(
            "{} m, {}",
            decimal(length / 1000.0, 2),
            count(cut.len(), "pierce")
        ),
    );
    match part.mass_words() {
        Some(words) => note.fact(
            "Mass",
            &format!(
                "{words} each as cut, {}; an estimate, and a competent person plans the lift",
                part.mass_is_of()
            ),
        ),
        None if part.kind == PartKind::Template => {}
        None => note.fact("Mass", "not stated: the spec gives no density"),
    }
}

fn withheld(note: &mut Note, withheld: &[Withheld]) {
    for holes in withheld {
        note.fact(
            "Not cut",
            &format!(
                "{} ({}), {} instead: {}",
                count(holes.ids.len(), "hole"),
                number_runs(&holes.ids),
                holes.instead,
                holes.reason
            ),
        );
    }
}

fn rules_of_cutting(
    note: &mut Note,
    spec: &Spec,
    cutting: &Cutting,
    design: &Design,
    parts: &[CutPart],
) {
    let order = &cutting.order;
    note.heading("Cutting");
    note.say("Millimetres, scale 1:1. The 100 mm square on layer REFERENCE proves the scale: measure it before cutting.");
    note.say("Kerf is not applied: every contour is the edge as it is to be left, and the contractor compensates.");
    let settings = Settings::of(cutting, Some(design.thickness.value()));
    match settings.dress_outside() {
        Some(dress) if !matches!(design.flange, Some(FlangeDesign::Pressed(_))) => {
            note.say(&format!(
                "The outside edge of the plate carries {} all round for dressing at the works; the scribed line is the finished edge.",
 dress.words
));
        }
        _ => {}
    }
    note.say("Order: pops, scribed lines and lettering first, then inside cuts, then the outside. Lead in on the scrap side; pierce in the slug, and not within one plate thickness of an edge that is kept.");
    note.say("Layers: CUT-OUTSIDE and CUT-INSIDE are cut; POP, SCRIBE and STAMP are marked on the face; REFERENCE is neither cut nor marked.");
    note.say(
        "Nothing is to be altered, added or left out. If something cannot be cut as drawn, ask.",
    );
    note.stated("Edges", order.edges.as_deref());
    if cutting.process == Process::Waterjet {
        // ISO 9013:2017, scope: oxy-fuel, plasma and laser; other processes only where the parties agree.
        note.say("ISO 9013 covers cutting by heat only. A class or range of it holds for this waterjet work only by written agreement.");
    }
    note.stated(
        "Tolerance of the outline",
        order.outline_tolerance.as_deref(),
    );
    if parts.iter().any(|part| !part.holes_cut.is_empty()) {
        note.stated(
            "Tolerance of holes, on the size as cut",
            order.hole_tolerance.as_deref(),
        );
    }
    note.stated("Tolerance of marks", order.mark_tolerance.as_deref());
    note.say("Transfer the heat number by low-stress hard stamp on to every part before it is cut from its plate, in the inspector's presence where he asks for it.");
    note.say("Return the offcut with its heat number, for test pieces.");
    note.stated("Packing and delivery", order.delivery.as_deref());
    note.say(&format!(
        "Quote drawing {} revision {} and fingerprint {} on the delivery note.",
        spec.written.job.drawing,
        spec.written.job.revision,
        spec.short_fingerprint()
    ));
}

fn agreed_and_open(note: &mut Note, spec: &Spec, not_judged: usize) {
    note.heading("Agreed and open");
    for concession in &spec.written.concessions {
        note.fact(
            "Concession",
            &format!(
                "{}{}: agreed by {}, {}; {}",
                concession.rule,
                concession
                    .only
                    .as_ref()
                    .map_or(String::new(), |only| format!(" ({only})")),
                concession.agreed_by,
                concession.reference,
                concession.reason
            ),
        );
    }
    if spec.written.concessions.is_empty() {
        note.say("No concession is recorded.");
    }
    note.say(&format!(
        "{} not judged; the design check sheet names {}.",
        match not_judged {
            1 => "1 finding is".into(),
            n => format!("{n} findings are"),
        },
        if not_judged == 1 { "it" } else { "them" }
    ));
}

fn cautions(note: &mut Note) {
    note.heading("Cautions");
    note.say("A boiler stores energy, and a wrong plate can kill. The figures behind this order were compared with named rules; that approves nothing. Design, material, process and acceptance rest with the works' competent engineer and the inspecting body under local law.");
    note.say("No tube seat, rivet hole or tapped hole is finished by heat.");
    note.say("Edges are sharp, and a plate has no natural point of balance.");
}

fn count(n: usize, what: &str) -> String {
    format!("{n} {what}{}", if n == 1 { "" } else { "s" })
}

fn length_mm(entity: &Entity) -> f64 {
    match entity {
        Entity::Line { from, to } => from.distance(*to),
        Entity::Circle { radius, .. } => 2.0 * PI * radius,
        Entity::Arc {
            radius,
            start_deg,
            end_deg,
            ..
        } => radius * turned(start_deg.to_radians(), end_deg.to_radians()),
        Entity::Polyline { vertices, closed } => steps(vertices, *closed)
            .map(|(from, to, bulge)| match arc_through(from, to, bulge) {
                None => from.distance(to),
                Some(arc) => arc.radius * 4.0 * atan(bulge.abs()),
            })
            .sum(),
        Entity::Dot(_) => 0.0,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn holds_no_line_is_longer_than_the_page() {
        let mut note = Note::default();
        note.say(&"metal ".repeat(100));
        assert!(note.lines.len() > 1);
        assert!(note.lines.iter().all(|line| line.chars().count() <= LINE));
        assert!(note.lines[1].starts_with("  metal"));
    }
}
