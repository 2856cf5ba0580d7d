//! Bars that prove a print: 100 mm and 4 in of paper, and the scale bar of a view.

use super::at;
use super::board::Board;
use super::figure::Figures;
use super::letter_size::TABLE;
use super::text_box::rise_and_fall;
use super::{Hang, PaperPoint, Pen, Role};
use crate::units::Length;

/// 100 mm above and 4 in below one line, from its left end.
pub fn put_proving_bar(board: &mut Board, left: PaperPoint) {
    let four_inches = Length::inches(4.0).to_mm();
    board.rule(left, at(left.x + four_inches, left.y), Pen::Middle);
    for i in 0..=10 {
        let x = left.x + f64::from(i) * 10.0;
        let high = if i % 5 == 0 { 2.6 } else { 1.6 };
        board.rule(at(x, left.y - high), at(x, left.y), Pen::Narrow);
    }
    for i in 0..=8 {
        let x = left.x + Length::inches(f64::from(i) / 2.0).to_mm();
        let deep = if i % 2 == 0 { 2.6 } else { 1.6 };
        board.rule(at(x, left.y), at(x, left.y + deep), Pen::Narrow);
    }
    board.text(at(left.x + 102.5, left.y - 0.8), "100 mm", 2.5, Hang::Start);
    board.text(at(left.x + 102.5, left.y + 3.2), "4 in", 2.5, Hang::Start);
}

/// Scale bar of a view: plate lengths at its scale, filled and open by turns; tells its width on paper.
pub fn put_scale_bar(board: &mut Board, left: PaperPoint, scale: f64, figures: Figures) -> f64 {
    let steps = match figures.in_inches() {
        true => &INCH_STEPS[..],
        false => &MM_STEPS,
    };
    let (step, count) = step_and_count(scale, figures, steps, 8.0);
    let whole = figures.short(step * count as f64);
    put_bar(
        board,
        (left, scale),
        (step, count),
        &format!("{whole} {}", figures.unit_sign()),
    )
}

/// Scale bar of lengths that are drawn this much larger than they are, for differences between what was designed and made: its length
/// reads as a decimal; tells its width on paper.
pub fn put_residual_bar(board: &mut Board, left: PaperPoint, scale: f64, figures: Figures) -> f64 {
    let (step, count) = step_and_count(scale, figures, &RESIDUAL_STEPS, 4.0);
    let whole = figures.decimal(step * count as f64);
    put_bar(
        board,
        (left, scale),
        (step, count),
        &format!("{whole} {}", figures.unit_sign()),
    )
}

fn put_bar(
    board: &mut Board,
    (left, scale): (PaperPoint, f64),
    (step, count): (Length, usize),
    words: &str,
) -> f64 {
    let width = step.to_mm() * scale;
    let (top, foot) = (left.y - 1.6, left.y);
    for i in 0..count {
        let x = left.x + width * i as f64;
        if i % 2 == 0 {
            let corners = vec![
                at(x, top),
                at(x + width, top),
                at(x + width, foot),
                at(x, foot),
            ];
            board.filled(corners, Role::Furniture);
        }
    }
    let right = left.x + width * count as f64;
    board.ruled_box(
        super::board::PaperBox::new(left.x, top, right, foot),
        Pen::Narrow,
    );
    board.text(at(left.x, foot + TABLE + 1.0), "0", TABLE, Hang::Middle);
    let whole = step * count as f64;
    board.state(left, at(right, foot), scale, whole, "scale bar");
    let (rise, _) = rise_and_fall(words, TABLE);
    board.text(at(right, foot + rise + 1.0), words, TABLE, Hang::Middle);
    right - left.x
}

/// Steps of the scale bar of a view in inches, in.
const INCH_STEPS: [f64; 10] = [0.25, 0.5, 1.0, 2.0, 3.0, 6.0, 12.0, 24.0, 60.0, 120.0];
/// Steps of the scale bar of a view in millimetres, mm.
const MM_STEPS: [f64; 10] = [
    5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0, 2000.0, 5000.0,
];
/// Steps of a bar of differences, in the job's unit.
const RESIDUAL_STEPS: [f64; 16] = [
    0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0,
];

/// A round step of the job's unit that takes at least so much paper, mm, and how many of them make a bar.
fn step_and_count(scale: f64, figures: Figures, steps: &[f64], least: f64) -> (Length, usize) {
    let unit = |s: f64| {
        if figures.in_inches() {
            Length::inches(s)
        } else {
            Length::mm(s)
        }
    };
    let step = steps
        .iter()
        .map(|&s| unit(s))
        .find(|s| s.to_mm() * scale >= least)
        .unwrap_or(unit(steps[steps.len() - 1]));
    (step, if step.to_mm() * scale > 15.0 { 3 } else { 5 })
}
