//! What a boiler drawing says beside its title block: pressure, material, rules, scale, view, and who has still to sign.

use super::at;
use super::board::{Board, PaperBox};
use super::figure::Figures;
use super::furniture::{FOOT, FOOT_ABOVE};
use super::paper_size::{frame, is_upright};
use super::proving_bar::put_proving_bar;
use super::title_block::{Field, WIDTH, put_field};
use super::{Pattern, Pen, Role};
use crate::checks::{Finding, Verdict};
use crate::spec::{Spec, ViewFrom};

/// Widths of the fields, row by row, mm, beside the title block; the proving bar stands in the first of the last row.
const BESIDE: [&[f64]; 4] = [
    &[40.0, 98.0, 72.0],
    &[46.0, 56.0, 82.0, 26.0],
    &[48.0, 68.0, 44.0, 50.0],
    &[121.0, 89.0],
];
/// Height of the rows there, mm.
const ROWS_BESIDE: [f64; 4] = [9.0; 4];
/// Widths on the title block of upright paper.
const UPRIGHT: [&[f64]; 4] = [
    &[40.0, 80.0, 60.0],
    &[36.0, 36.0, 84.0, 24.0],
    &[44.0, 50.0, 40.0, 46.0],
    &[121.0, 59.0],
];

/// Height of the rows there, mm: the second has words on two lines.
const ROWS_UPRIGHT: [f64; 4] = [9.0, 12.0, 9.0, 9.0];

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

/// Puts the particulars left of the title block, or on it, in four rows.
pub fn put_particulars(board: &mut Board, spec: &Spec, findings: &[Finding]) {
    let f = frame(board.paper);
    let upright = is_upright(board.paper);
    // Beside the title block; on it where it fills the width of the paper.
    let (right, top, heights, widths) = match upright {
        true => (
            f.right,
            f.bottom - FOOT - FOOT_ABOVE,
            ROWS_UPRIGHT,
            &UPRIGHT,
        ),
        false => (f.right - WIDTH, f.bottom - FOOT, ROWS_BESIDE, &BESIDE),
    };
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
    let material_words = if upright {
        "PLATE AND MATERIAL"
    } else {
        "PLATE: THICKNESS, MATERIAL"
    };
    let units_words = if upright {
        "DIMENSIONS IN"
    } else {
        "ALL DIMENSIONS IN"
    };
    let stamp_words = if upright {
        "INSPECTING BODY (STAMP)"
    } else {
        "INSPECTING BODY (SIGN, STAMP)"
    };
    let field = |label, value, height| Field {
        label,
        value,
        height,
        bold: false,
    };
    let rows: [Vec<Field<'_>>; 4] = [
        vec![
            field("WORKING PRESSURE", &pressure, 3.0),
            field(material_words, &metal, 3.0),
            field("CERTIFICATE", &certificate, 3.0),
        ],
        vec![
            field("SCALE", &scale, 3.5),
            field(units_words, units, 2.5),
            field("FACE VIEW", view_words(w.plate.view_from), 2.5),
            field("PROJECTION", "", 2.5),
        ],
        vec![
            field("WORKS APPROVAL (SIGN)", "", 2.5),
            field(stamp_words, "", 2.5),
            field("SPEC FINGERPRINT", &fingerprint, 3.5),
            field("FINDINGS NOT JUDGED", &open, 3.5),
        ],
        vec![field("", "", 2.5), field("JUDGED BY", &rules, 2.5)],
    ];
    let mut y = top;
    for ((fields, widths), row) in rows.iter().zip(widths).zip(heights) {
        let mut x = left;
        for (one, wide) in fields.iter().zip(*widths) {
            let b = PaperBox::new(x, y, x + wide, y + row);
            put_field(board, b, one);
            if one.label == "PROJECTION" {
                put_first_angle_symbol(board, x + (wide - SYMBOL) / 2.0, b.bottom - 2.7);
            }
            x += wide;
        }
        y += row;
    }
    board.rule(at(left, top), at(right, top), Pen::Frame);
    board.rule(at(left, top), at(left, y), Pen::Frame);
    put_proving_bar(board, at(left + 2.5, y - heights[3] / 2.0));
}

/// Width of the symbol with its centre lines, mm.
const SYMBOL: f64 = 15.0;

/// First-angle symbol (ISO 5456-2): the small end of the cone away from the circles, both circles seen.
fn put_first_angle_symbol(board: &mut Board, left: f64, middle: f64) {
    let h = 2.0;
    let cone = left + 1.0;
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
