//! What a boiler drawing says beside its title block: pressure, material, rules, scale, view, and who has still to sign.

use super::at;
use super::board::{Board, PaperBox};
use super::figure::Figures;
use super::furniture::FOOT;
use super::paper_size::frame;
use super::proving_bar::put_proving_bar;
use super::title_block::{Field, WIDTH, put_field};
use super::{Pattern, Pen, Role};
use crate::checks::{Finding, Verdict};
use crate::spec::{Spec, ViewFrom};

/// Height of a row of particulars, mm.
const ROW: f64 = 9.0;
/// Width of the field that holds the proving bar, mm.
const BAR_FIELD: f64 = 121.0;

/// Where one stands and where one looks, in words.
pub fn view_words(view_from: ViewFrom) -> &'static str {
    match view_from {
        ViewFrom::Smokebox => "LOOKING FROM SMOKEBOX TOWARDS FIREBOX",
        ViewFrom::Firebox => "LOOKING FROM FIREBOX TOWARDS SMOKEBOX",
    }
}

/// How many findings nothing was judged in.
pub fn not_judged(findings: &[Finding]) -> usize {
    findings
        .iter()
        .filter(|f| matches!(f.verdict, Verdict::NotJudged { .. }))
        .count()
}

/// How many findings lie below their rule and are not conceded.
pub fn below(findings: &[Finding]) -> usize {
    findings
        .iter()
        .filter(|f| matches!(f.verdict, Verdict::Below { .. }))
        .count()
}

/// Puts the particulars left of the title block, in four rows.
pub fn put_particulars(board: &mut Board, spec: &Spec, findings: &[Finding]) {
    let f = frame(board.paper);
    let right = f.right - WIDTH;
    let top = f.bottom - FOOT;
    // On paper wider than A3 the strip keeps its A3 width and stands against the title block.
    let left = (right - 210.0).max(f.left);
    let w = &spec.written;
    let pressure = w
        .working_pressure
        .as_ref()
        .map_or("NOT GIVEN".into(), |p| p.as_written().to_string());
    let material = w.plate.material.as_ref();
    let metal = material.map_or("NOT GIVEN".into(), |m| {
        format!("{}, {}", w.plate.thickness.as_written(), m.grade)
    });
    let certificate = material
        .and_then(|m| m.certificate.clone())
        .unwrap_or_else(|| "NOT GIVEN".into());
    let rules = if w.judged_by.is_empty() {
        "NONE NAMED".into()
    } else {
        w.judged_by.join("; ")
    };
    let units = Figures::of(spec).unit_words();
    let fingerprint = spec.short_fingerprint().to_string();
    let open = not_judged(findings).to_string();
    let scale = match board.scale_words.as_str() {
        "NONE" => "NONE".into(),
        scale => format!("{scale}, DO NOT SCALE"),
    };
    let field = |label, value, height| Field {
        label,
        value,
        height,
        bold: false,
    };
    let rows: [Vec<(f64, Field<'_>)>; 4] = [
        vec![
            (40.0, field("WORKING PRESSURE", &pressure, 3.0)),
            (98.0, field("PLATE: THICKNESS, MATERIAL", &metal, 3.0)),
            (72.0, field("CERTIFICATE", &certificate, 3.0)),
        ],
        vec![
            (46.0, field("SCALE", &scale, 3.5)),
            (56.0, field("ALL DIMENSIONS IN", units, 2.5)),
            (82.0, field("FACE VIEW", view_words(w.plate.view_from), 2.5)),
            (26.0, field("PROJECTION", "", 2.5)),
        ],
        vec![
            (48.0, field("WORKS APPROVAL (SIGN)", "", 2.5)),
            (68.0, field("INSPECTING BODY (SIGN, STAMP)", "", 2.5)),
            (44.0, field("SPEC FINGERPRINT", &fingerprint, 3.5)),
            (50.0, field("FINDINGS NOT JUDGED", &open, 3.5)),
        ],
        vec![
            (BAR_FIELD, field("", "", 2.5)),
            (89.0, field("JUDGED BY", &rules, 2.5)),
        ],
    ];
    let mut y = top;
    for fields in &rows {
        let mut x = left;
        for (wide, one) in fields {
            put_field(board, PaperBox::new(x, y, x + wide, y + ROW), one);
            x += wide;
        }
        y += ROW;
    }
    put_first_angle_symbol(board, left + 184.0, top + ROW);
    board.rule(at(left, top), at(right, top), Pen::Frame);
    board.rule(at(left, top), at(left, f.bottom), Pen::Frame);
    put_proving_bar(board, at(left + 2.5, y - ROW / 2.0));
}

/// First-angle symbol (ISO 5456-2): the small end of the cone away from the circles, both circles seen.
fn put_first_angle_symbol(board: &mut Board, x: f64, y: f64) {
    let h = 2.0;
    let (cone, middle) = (x + 4.0, y + 6.3);
    let seen = |board: &mut Board, a, b| {
        board.line(a, b, Pen::Middle, Pattern::Continuous, Role::Furniture);
    };
    let (small, large, end) = (h / 2.0, h, cone + 2.0 * h);
    seen(board, at(cone, middle - small), at(cone, middle + small));
    seen(board, at(end, middle - large), at(end, middle + large));
    seen(board, at(cone, middle - small), at(end, middle - large));
    seen(board, at(cone, middle + small), at(end, middle + large));
    let circles = end + 2.6 + h + 1.4;
    for radius in [small, large] {
        board.circle(
            at(circles, middle),
            radius,
            Pen::Middle,
            Pattern::Continuous,
            Role::Furniture,
        );
    }
    let over = 1.0;
    let chain = |board: &mut Board, a, b| {
        board.line(a, b, Pen::Narrow, Pattern::Chain, Role::Furniture);
    };
    chain(board, at(cone - over, middle), at(end + over, middle));
    chain(
        board,
        at(circles - large - over, middle),
        at(circles + large + over, middle),
    );
    chain(
        board,
        at(circles, middle - large - over * 0.4),
        at(circles, middle + large + over * 0.4),
    );
}
