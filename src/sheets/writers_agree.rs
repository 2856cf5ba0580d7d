//! Tests that hold the writers to each other and to the paper.

use super::{pdf, png, sample, svg};

#[test]
fn holds_that_nothing_is_lost_on_the_way_to_the_picture() {
    let sheet = sample::sheet();
    let picture = png::write(&sheet, 100.0).unwrap();
    if let Some(folder) = std::env::var_os("CENTREPOP_LOOK") {
        let folder = std::path::PathBuf::from(folder);
        std::fs::write(folder.join("sample.svg"), svg::write(&sheet)).unwrap();
        std::fs::write(
            folder.join("sample.png"),
            png::write(&sheet, 150.0).unwrap(),
        )
        .unwrap();
    }
    if let Some(folder) = std::env::var_os("CENTREPOP_LOOK") {
        let file = std::path::PathBuf::from(folder).join("sample.pdf");
        std::fs::write(
            file,
            pdf::write("Sample", &[sample::sheet(), sample::sheet()]).unwrap(),
        )
        .unwrap();
    }
    assert!(picture.len() > 10_000);
}

#[test]
fn holds_that_two_runs_give_the_same_bytes() {
    let sheet = sample::sheet();
    assert_eq!(svg::write(&sheet), svg::write(&sheet));
    assert_eq!(
        png::write(&sheet, 72.0).unwrap(),
        png::write(&sheet, 72.0).unwrap()
    );
}
