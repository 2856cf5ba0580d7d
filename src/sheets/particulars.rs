//! What a boiler drawing says beside its title block: pressure, material, rules, scale, view, and who has still to sign.

use super::at;
use super::board::{Board, PaperBox};
use super::figure::Figures;
use super::furniture::{FOOT, FOOT_ABOVE};
use super::kept::pieces;
use super::paper_size::{frame, is_upright};
use super::proving_bar::put_proving_bar;
use super::set::Set;
use super::title_block::{Field, WIDTH, put_field};
use super::{Pattern, Pen, Role};
use crate::checks::{Finding, Verdict};
use crate::spec::ViewFrom;

/// How the particulars are shared out, mm.
struct Shares {
    /// Heights of the four rows.
    rows: [f64; 4],
    /// Widths of the fields of the first three; of the third only those left of the signatures.
    widths: [&'static [f64]; 3],
    /// Fields for signatures and stamps with their widths; they are as high as the last two rows.
    signed: [(&'static str, f64); 2],
}

/// Beside the title block.
const BESIDE: Shares = Shares {
    rows: [9.0; 4],
    widths: [
        &[38.0, 80.0, 50.0, 42.0],
        &[46.0, 56.0, 82.0, 26.0],
        &[36.0, 84.0],
    ],
    signed: [("WORKS APPROVAL", 40.0), ("INSPECTING BODY, STAMP", 50.0)],
};

/// On the title block of upright paper: the second row has words on two lines.
const UPRIGHT: Shares = Shares {
    rows: [9.0, 12.0, 9.0, 9.0],
    widths: [
        &[38.0, 60.0, 40.0, 42.0],
        &[36.0, 36.0, 84.0, 24.0],
        &[36.0, 84.0],
    ],
    signed: [("WORKS, SIGN", 26.0), ("INSPECTING BODY", 34.0)],
};

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
pub fn put_particulars(board: &mut Board, set: &Set<'_>) {
    let (spec, findings) = (set.spec, set.findings);
    let f = frame(board.paper);
    let upright = is_upright(board.paper);
    // Beside the title block; on it where it fills the width of the paper.
    let (right, top, shares) = match upright {
        true => (f.right, f.bottom - FOOT - FOOT_ABOVE, UPRIGHT),
        false => (f.right - WIDTH, f.bottom - FOOT, BESIDE),
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
    let certificate = match w.plate.kept {
        true => certificates_of_pieces(set),
        false => material
            .and_then(|m| m.certificate.clone())
            .unwrap_or_else(|| "NOT GIVEN".into()),
    };
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
    let material_words = match (w.plate.kept, upright) {
        (true, true) => "OLD PLATE AS MADE",
        (true, false) => "OLD PLATE: THICKNESS AS MADE, MATERIAL",
        (false, true) => "PLATE AND MATERIAL",
        (false, false) => "PLATE: THICKNESS, MATERIAL",
    };
    let units_words = if upright {
        "DIMENSIONS IN"
    } else {
        "ALL DIMENSIONS IN"
    };
    let field = |label, value, height| Field {
        label,
        value,
        height,
        bold: false,
    };
    let rows: [Vec<Field<'_>>; 3] = [
        vec![
            field("WORKING PRESSURE", &pressure, 3.0),
            field(material_words, &metal, 3.0),
            field("CERTIFICATE", &certificate, 3.0),
            field("FINDINGS NOT JUDGED", &open, 3.5),
        ],
        vec![
            field("SCALE", &scale, 3.5),
            field(units_words, units, 2.5),
            field("FACE VIEW", view_words(w.plate.view_from), 2.5),
            field("PROJECTION", "", 2.5),
        ],
        vec![
            field("SPEC FINGERPRINT", &fingerprint, 3.5),
            field("JUDGED BY", &rules, 2.5),
        ],
    ];
    let (mut x, mut y) = (left, top);
    for ((fields, widths), row) in rows.iter().zip(shares.widths).zip(shares.rows) {
        x = left;
        for (one, wide) in fields.iter().zip(widths) {
            let b = PaperBox::new(x, y, x + wide, y + row);
            put_field(board, b, one);
            if one.label == "PROJECTION" {
                put_first_angle_symbol(board, x + (wide - SYMBOL) / 2.0, b.bottom - 2.7);
            }
            x += wide;
        }
        y += row;
    }
    let [.., third, fourth] = shares.rows;
    let foot = y + fourth;
    put_field(board, PaperBox::new(left, y, x, foot), &field("", "", 2.5));
    put_proving_bar(board, at(left + 2.5, foot - fourth / 2.0));
    for (label, wide) in shares.signed {
        let b = PaperBox::new(x, y - third, x + wide, foot);
        put_field(board, b, &field(label, "", 2.5));
        x += wide;
    }
    board.rule(at(left, top), at(right, top), Pen::Frame);
    board.rule(at(left, top), at(left, foot), Pen::Frame);
}

/// The certificates of the new pieces in a plate that is kept: "J1: EN 10204 type 3.1".
fn certificates_of_pieces(set: &Set<'_>) -> String {
    let each = pieces(set).into_iter().map(|(number, _, ordered)| {
        let material = ordered.and_then(|piece| piece.material.as_ref());
        let certificate = material.and_then(|m| m.certificate.as_deref());
        format!("{number}: {}", certificate.unwrap_or("NOT GIVEN"))
    });
    let each: Vec<String> = each.collect();
    match each.is_empty() {
        true => "NONE: THE PLATE STANDS".into(),
        false => each.join("; "),
    }
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

#[cfg(test)]
mod tests {
    use super::super::face;
    use super::super::letter_size::LABEL;
    use super::*;

    /// A signature wants some 12 mm below the label of its field, and a stamp no less (common practice, no source); labels stay
    /// clear of the rule beside them.
    #[test]
    fn holds_there_is_room_to_sign_and_stamp() {
        for shares in [BESIDE, UPRIGHT] {
            let [.., third, fourth] = shares.rows;
            assert!(third + fourth - LABEL - 2.0 >= 12.0);
            for (label, wide) in shares.signed {
                let room = wide - 2.0 * 1.2;
                assert!(face::width(label, LABEL, false) <= room, "{label}");
            }
            let whole = |widths: &[f64]| widths.iter().sum::<f64>();
            let signed: f64 = shares.signed.iter().map(|(_, wide)| wide).sum();
            assert_eq!(whole(shares.widths[0]), whole(shares.widths[1]));
            assert_eq!(whole(shares.widths[0]), whole(shares.widths[2]) + signed);
        }
    }
}
