//! How long the lettering, the three writers and the audit take over an A3 sheet with 400 numbered holes.

use centrepop::sheets::{Mark, Pen, Role, Sheet, Text, at, audit, face, pdf, png, svg};

fn main() {
    // The faces are read once a run; that is timed by itself.
    divan::main();
}

/// 20 columns of 20 holes, each with its centre lines and its number in it, and a column of sizes with fractions.
fn sheet() -> Sheet {
    let mut marks =
        Mark::rectangle(at(20.0, 10.0), 390.0, 277.0, Pen::Frame, Role::Furniture).to_vec();
    for i in 0..400_u32 {
        let centre = at(
            40.0 + 13.0 * f64::from(i % 20),
            25.0 + 12.0 * f64::from(i / 20),
        );
        marks.push(Mark::circle(centre, 4.7, Pen::Wide, Role::Object));
        marks.push(Mark::centre_line(
            at(centre.x - 6.0, centre.y),
            at(centre.x + 6.0, centre.y),
        ));
        marks.push(Mark::centre_line(
            at(centre.x, centre.y - 5.5),
            at(centre.x, centre.y + 5.5),
        ));
        marks.push(
            Text::new(at(centre.x, centre.y + 1.0), (i + 1).to_string(), 2.0)
                .middle()
                .into(),
        );
    }
    for i in 0..30_u32 {
        let line = format!("ø{{1 {}/32}} (46.83)", 2 * i + 1);
        marks.push(Mark::text(at(320.0, 30.0 + 8.0 * f64::from(i)), line, 3.0));
    }
    Sheet {
        number: 1,
        name: "bench".into(),
        title: "Four hundred holes".into(),
        width: 420.0,
        height: 297.0,
        marks,
    }
}

#[divan::bench]
fn width_of_a_line() -> f64 {
    face::width(
        divan::black_box("100 holes {1 27/32} dia after reaming"),
        3.5,
        false,
    )
}

#[divan::bench]
fn svg_of_a_sheet(bencher: divan::Bencher) {
    let sheet = sheet();
    bencher.bench(|| svg::write(&sheet));
}

#[divan::bench]
fn pdf_of_a_sheet(bencher: divan::Bencher) {
    let sheets = [sheet()];
    bencher.bench(|| pdf::write("Four hundred holes", &sheets));
}

#[divan::bench]
fn pdf_of_eight_sheets(bencher: divan::Bencher) {
    let sheets = [0; 8].map(|_| sheet());
    bencher.bench(|| pdf::write("Four hundred holes", &sheets));
}

#[divan::bench(sample_count = 10)]
fn picture_at_150_dots(bencher: divan::Bencher) {
    let sheet = sheet();
    bencher.bench(|| png::write(&sheet, 150.0));
}

#[divan::bench]
fn audit_of_a_sheet(bencher: divan::Bencher) {
    let sheet = sheet();
    bencher.bench(|| audit::audit(&sheet));
}
