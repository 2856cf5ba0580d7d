//! The title block: a number that files can be named by, an index, a date, and a revision table that agrees with them.

use std::path::Path;

use crate::spec::{Fault, Job};

/// Longer than this a drawing number does not fit the title block and the file names, characters.
const LONGEST_NUMBER: usize = 16;

/// Longer than this a name runs out of its box in the title block at the least height of letters, characters.
const LONGEST_NAME: usize = 40;

/// The same for who drew it, whose box is narrower.
const LONGEST_PERSON: usize = 20;

pub(super) fn title_block(job: &Job, faults: &mut Vec<Fault>) {
    faults.extend(drawing_number(&job.drawing));
    faults.extend(index("job.revision", &job.revision));
    faults.extend(date("job.issued", &job.issued));
    for (key, text) in [("works", &job.works), ("engine", &job.engine)] {
        if text.trim().is_empty() {
            faults.push(Fault::new(
                format!("job.{key}"),
                format!("`{key}` is empty, and it stands in the title block"),
                "write the name",
            ));
        }
    }
    let named = [
        ("works", Some(&job.works), LONGEST_NAME),
        ("engine", Some(&job.engine), LONGEST_NAME),
        ("title", job.title.as_ref(), LONGEST_NAME),
        ("drawn_by", job.drawn_by.as_ref(), LONGEST_PERSON),
    ];
    for (key, text, most) in named {
        let long = text.map_or(0, |text| text.chars().count());
        if long > most {
            faults.push(Fault::new(
                format!("job.{key}"),
                format!("`{key}` is {long} characters long, and the title block takes {most}"),
                "shorten it",
            ));
        }
    }
    revision_table(job, faults);
}

fn drawing_number(number: &str) -> Option<Fault> {
    let stray = number
        .chars()
        .find(|c| !c.is_ascii_alphanumeric() && *c != '-');
    let fact = match stray {
        Some(c) => format!("the drawing number holds `{c}`, and every file is named by it"),
        None if number.len() > LONGEST_NUMBER => format!(
            "the drawing number is {} characters long, and files and title block take {LONGEST_NUMBER}",
            number.len()
        ),
        None if number.trim_matches('-').is_empty() => "the drawing number is empty".into(),
        // A file that begins with a hyphen is taken for an option by many a command.
        None if number.starts_with('-') => "the drawing number begins with a hyphen".into(),
        None => return None,
    };
    let remedy = "write letters, figures and hyphens: MH-TP1";
    Some(Fault::new("job.drawing", fact, remedy))
}

/// A to Z without I and O, which are taken for figures; AA after Z.
fn index(path: &str, index: &str) -> Option<Fault> {
    let good = |c: char| c.is_ascii_uppercase() && c != 'I' && c != 'O';
    if (1..=2).contains(&index.len()) && index.chars().all(good) {
        return None;
    }
    let fact = match index {
        "I" | "O" => format!("`{index}` is left out of the indices, since it is read as a figure"),
        _ => format!("`{index}` is not a revision index"),
    };
    Some(Fault::new(path, fact, "write A, B, C …, without I and O"))
}

pub(super) fn date(path: &str, text: &str) -> Option<Fault> {
    let parts: Vec<&str> = text.split('-').collect();
    let is_date = match parts.as_slice() {
        [year, month, day] if year.len() == 4 && month.len() == 2 && day.len() == 2 => {
            match (
                year.parse::<u32>(),
                month.parse::<u32>(),
                day.parse::<u32>(),
            ) {
                (Ok(year), Ok(month), Ok(day)) => (1..=days_in(year, month)).contains(&day),
                _ => false,
            }
        }
        _ => false,
    };
    (!is_date).then(|| {
        let fact = format!("`{text}` is not a day of the calendar");
        Fault::new(path, fact, "write year-month-day: 2026-11-16")
    })
}

fn days_in(year: u32, month: u32) -> u32 {
    let leap = year.is_multiple_of(4) && (!year.is_multiple_of(100) || year.is_multiple_of(400));
    match month {
        1 | 3 | 5 | 7 | 8 | 10 | 12 => 31,
        4 | 6 | 9 | 11 => 30,
        2 if leap => 29,
        2 => 28,
        _ => 0,
    }
}

/// The last line of the table is the issue in hand: a letter that moved without its date has sent old plates out as new.
fn revision_table(job: &Job, faults: &mut Vec<Fault>) {
    for (i, line) in job.revisions.iter().enumerate() {
        faults.extend(index(&format!("job.revisions[{i}].index"), &line.index));
        faults.extend(date(&format!("job.revisions[{i}].date"), &line.date));
        if i > 0 && line.date < job.revisions[i - 1].date {
            faults.push(
                Fault::new(
                    format!("job.revisions[{i}].date"),
                    format!(
                        "{} comes before the line above it, {}",
                        line.date,
                        job.revisions[i - 1].date
                    ),
                    "write the oldest issue first",
                )
                .and(format!("job.revisions[{}].date", i - 1), "the issue before"),
            );
        }
    }
    faults.extend(former_specs(job));
    let Some(last) = job.revisions.last() else {
        return;
    };
    let path = format!("job.revisions[{}]", job.revisions.len() - 1);
    if last.index != job.revision {
        faults.push(
            Fault::new(
                format!("{path}.index"),
                format!(
                    "the last revision is {}, and the drawing is at {}",
                    last.index, job.revision
                ),
                "add the issue in hand to the table, or mend job.revision",
            )
            .and("job.revision", "the issue in hand"),
        );
    } else if last.date != job.issued {
        faults.push(
            Fault::new(
                format!("{path}.date"),
                format!(
                    "revision {} is dated {}, and the drawing {}",
                    last.index, last.date, job.issued
                ),
                "write one date for one issue",
            )
            .and("job.issued", "the issue in hand"),
        );
    }
}

/// A former issue is named from the folder of this spec, so that both may be moved together; the issue in hand is this spec.
fn former_specs(job: &Job) -> Vec<Fault> {
    let mut faults = Vec::new();
    for (i, line) in job.revisions.iter().enumerate() {
        let Some(file) = &line.spec else { continue };
        let path = format!("job.revisions[{i}].spec");
        if line.index == job.revision {
            faults.push(
                Fault::new(
                    path,
                    format!(
                        "revision {} is the issue in hand, and its spec is this one",
                        line.index
                    ),
                    "write the spec of a former issue beside its own line, or leave the key out",
                )
                .and("job.revision", "the issue in hand"),
            );
        } else if file.trim().is_empty() || Path::new(file).is_absolute() {
            faults.push(Fault::new(
                path,
                format!("`{file}` is not a path from the folder of this spec"),
                "write it so: former/tp1-a.yaml",
            ));
        }
    }
    faults
}
