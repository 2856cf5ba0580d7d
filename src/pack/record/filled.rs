//! A record that came back filled in: what was measured of each hole, or every fault in it.
//!
//! Bare figures are millimetres, as the columns say; a size with its unit may stand there as the trade writes it. `within` in place of
//! a size says that the hole is what was designed. A row left blank is a hole that was not recorded.

use std::collections::BTreeMap;

use super::COLUMNS;
use crate::design::{Design, FilledRecord, HoleMade, Point, RivetHoleMade};
use crate::pack::csv_file::{NumberedRow, rows_of};
use crate::pack::manifest::sha256;
use crate::spec::Spec;
use crate::units::tolerance::RECORD_LAST_DIGIT_MM;
use crate::units::{Length, Size};

/// A hole whose measured size differs from the designed one by more than this share of it is taken for a slip of the pen.
const SLIP_SHARE: f64 = 0.5;

/// Said in place of a size of a hole that was measured and is what was designed.
const WITHIN: &str = "within";

/// A fault in a record: its line and column, the fact and the remedy.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RecordFault {
    /// Line of the file, from 1.
    pub line: usize,
    /// Column, where one is to blame.
    pub column: String,
    /// What is wrong.
    pub fact: String,
    /// What to do.
    pub remedy: String,
}

/// Reads the filled-in record of a plate; every fault in it at once.
pub fn read_record(
    text: &str,
    spec: &Spec,
    design: &Design,
) -> Result<FilledRecord, Vec<RecordFault>> {
    let as_read = sha256(text.as_bytes());
    let text = text.trim_start_matches('\u{feff}');
    let rows = rows_of(text).map_err(|(line, why)| {
        vec![fault(
            line,
            "",
            format!("the row cannot be read: {why}"),
            "save the record as CSV, with commas or semicolons",
        )]
    })?;
    let head_ends = rows.iter().position(|(_, row)| row[0] == COLUMNS[0]);
    let Some(head_ends) = head_ends else {
        return Err(vec![fault(
            1,
            "",
            "no row begins with `item`, so this is no inspection record",
            "fill in record/inspection.csv of the plate's own pack",
        )]);
    };
    let mut reader = Reader {
        design,
        faults: Vec::new(),
        record: FilledRecord {
            sha256: as_read,
            ..FilledRecord::default()
        },
    };
    reader.head(&rows[..head_ends], spec);
    if let Some(columns) = reader.columns(&rows[head_ends]) {
        reader.items(&rows[head_ends + 1..], &columns);
    }
    match reader.faults.is_empty() {
        true => Ok(reader.record),
        false => Err(reader.faults),
    }
}

fn fault(
    line: usize,
    column: &str,
    fact: impl Into<String>,
    remedy: impl Into<String>,
) -> RecordFault {
    RecordFault {
        line,
        column: column.into(),
        fact: fact.into(),
        remedy: remedy.into(),
    }
}

/// Most characters of a cell that a fault repeats.
const MOST_SHOWN: usize = 40;

/// A cell as a fault repeats it: on one line, cut where it is long, its marks that cannot be seen written out.
fn as_shown(cell: &str) -> String {
    let mut shown: String = cell
        .chars()
        .take(MOST_SHOWN)
        .map(|c| match c {
            ' '..='~' => c.to_string(),
            c if c.is_alphanumeric() => c.to_string(),
            // Such as a zero or what turns the line about: a screen would not show it, or would obey it.
            c if c.is_control() || c.is_whitespace() || matches!(c, '\u{ad}' | '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2060}'..='\u{206f}' | '\u{feff}') => {
                c.escape_unicode().to_string()
            }
            c => c.to_string(),
        })
        .collect();
    if cell.chars().nth(MOST_SHOWN).is_some() {
        shown.push('…');
    }
    shown
}

struct Reader<'a> {
    design: &'a Design,
    faults: Vec<RecordFault>,
    record: FilledRecord,
}

/// Where each column of the record stands in a row.
struct Columns {
    places: BTreeMap<&'static str, usize>,
    /// Cells of the heading.
    wide: usize,
}

/// A row of the record.
struct Row<'a> {
    line: usize,
    cells: &'a [String],
    columns: &'a Columns,
}

impl<'a> Row<'a> {
    fn cell(&self, column: &str) -> &'a str {
        let place = self.columns.places.get(column);
        let cell = place.and_then(|&place| self.cells.get(place));
        cell.map_or("", String::as_str)
    }
}

impl Reader<'_> {
    /// The head rows: whose record it is.
    fn head(&mut self, rows: &[NumberedRow], spec: &Spec) {
        let job = &spec.written.job;
        let said = |name: &str| {
            let row = rows.iter().find(|(_, row)| row[0] == name);
            row.map(|(line, row)| (*line, row.get(1).cloned().unwrap_or_default()))
        };
        let must_be = [
            ("drawing", job.drawing.as_str()),
            ("revision", &job.revision),
            ("view from", self.design.view_from.name()),
        ];
        for (name, wanted) in must_be {
            match said(name) {
                Some((_, found)) if found == wanted => {}
                Some((line, found)) => self.faults.push(fault(
                    line,
                    name,
                    format!(
                        "the record is of {name} {}, and the spec is of {wanted}",
                        as_shown(&found)
                    ),
                    "give the spec for which the record was printed",
                )),
                None => self.faults.push(fault(
                    1,
                    name,
                    format!("the record does not say its {name}"),
                    "leave the head rows of record/inspection.csv as they were printed",
                )),
            }
        }
        let word = |name: &str| said(name).map_or(String::new(), |(_, word)| word);
        self.record.instrument = word("instrument");
        self.record.witness = word("witness");
        self.record.fingerprint = word("fingerprint");
    }

    /// Finds every column of the record in its heading; a column that is not there may be one misspelt, so it is a fault.
    fn columns(&mut self, (line, heading): &NumberedRow) -> Option<Columns> {
        let mut places = BTreeMap::new();
        for name in COLUMNS {
            let found: Vec<usize> = (0..heading.len())
                .filter(|&place| heading[place] == name)
                .collect();
            match found[..] {
                [place] => {
                    places.insert(name, place);
                }
                [] => self.faults.push(fault(
                    *line,
                    name,
                    format!("there is no column {name}"),
                    "leave the columns of record/inspection.csv as they were printed; more may stand beside them",
                )),
                _ => self.faults.push(fault(
                    *line,
                    name,
                    format!("the column {name} stands there twice"),
                    "leave one of them out",
                )),
            }
        }
        let own = |name: &&String| COLUMNS.contains(&name.as_str()) || name.is_empty();
        let more = heading.iter().filter(|name| !own(name));
        self.record.more_columns = more.cloned().collect();
        (places.len() == COLUMNS.len()).then_some(Columns {
            places,
            wide: heading.len(),
        })
    }

    fn items(&mut self, rows: &[NumberedRow], columns: &Columns) {
        let mut lines: BTreeMap<&str, usize> = BTreeMap::new();
        let design = self.design;
        let holes: BTreeMap<&str, usize> = (0..design.holes.len())
            .map(|hole| (design.holes[hole].id.as_str(), hole))
            .collect();
        let mut made: BTreeMap<usize, HoleMade> = BTreeMap::new();
        for (line, cells) in rows {
            let row = Row {
                line: *line,
                cells,
                columns,
            };
            let id = row.cell(COLUMNS[0]);
            if id.is_empty() {
                self.faults.push(fault(
                    *line,
                    COLUMNS[0],
                    "the row does not say which hole it is of",
                    "leave the numbers as they were printed",
                ));
                continue;
            }
            if cells.len() > columns.wide {
                self.faults.push(fault(
                    *line,
                    "",
                    format!(
                        "{} has {} cells, and the heading {}",
                        as_shown(id),
                        cells.len(),
                        columns.wide
                    ),
                    "write a decimal point where a decimal comma stands, and words with a comma in quotes",
                ));
                continue;
            }
            if let Some(first) = lines.insert(id, *line) {
                self.faults.push(fault(
                    *line,
                    COLUMNS[0],
                    format!("{} stands in line {first} already", as_shown(id)),
                    "leave the row that was not measured out",
                ));
                continue;
            }
            let remark = row.cell("remarks");
            if !remark.is_empty() {
                self.record.remarks.insert(id.into(), remark.into());
            }
            if let Some(&hole) = holes.get(id) {
                if self.agrees_with_the_design(&row, hole)
                    && let Some(measured) = self.hole(&row, hole)
                {
                    made.insert(hole, measured);
                }
            } else if self.is_rivet(id) {
                self.rivet_hole(&row, id);
            } else {
                self.faults.push(fault(
                    *line,
                    COLUMNS[0],
                    format!("the plate has no hole {}", as_shown(id)),
                    "leave the numbers as they were printed",
                ));
            }
        }
        self.record.blank = (0..design.holes.len())
            .filter(|hole| !made.contains_key(hole))
            .collect();
        self.record.holes = made.into_values().collect();
        let rivets = design.rivets.as_ref().map_or(0, |line| line.rivets.len());
        self.record.rivets_blank = rivets - self.record.rivets.len().min(rivets);
    }

    fn is_rivet(&self, id: &str) -> bool {
        let rivets = self.design.rivets.iter().flat_map(|line| &line.rivets);
        rivets.into_iter().any(|rivet| rivet.id == id)
    }

    /// The printed figures of a row must be those of the design, or the row is another hole's.
    fn agrees_with_the_design(&mut self, row: &Row, hole: usize) -> bool {
        let hole = &self.design.holes[hole];
        let printed = [
            ("x_mm", hole.at.x),
            ("y_mm", hole.at.y),
            ("designed_mm", hole.finish.value().to_mm()),
        ];
        let mut agrees = true;
        for (column, designed) in printed {
            let Some(found) = self.number(row, column) else {
                // Left empty, it contradicts nothing; not a number, it was told.
                agrees &= row.cell(column).is_empty();
                continue;
            };
            if (found.value().to_mm() - designed).abs() > RECORD_LAST_DIGIT_MM {
                self.faults.push(fault(
                    row.line,
                    column,
                    format!(
                        "{} has {} here, and {designed:.3} in the spec",
                        hole.id,
                        as_shown(row.cell(column))
                    ),
                    "give the spec for which the record was printed; what was measured goes into the columns that begin with `made`",
                ));
                agrees = false;
            }
        }
        agrees
    }

    /// What was measured of a hole; nothing where its row is blank or at fault.
    fn hole(&mut self, row: &Row, hole: usize) -> Option<HoleMade> {
        let designed = &self.design.holes[hole];
        let at = self.place(row, designed.at, designed.finish.value());
        let first = self.size(row, "made_first_way_mm", &designed.finish)?;
        let mut sized = true;
        let (first_way, across) = match first {
            Measured::Nothing => {
                let across = self.size(row, "made_across_it_mm", &designed.finish)?;
                match across {
                    Measured::Nothing if at.is_none() => return None,
                    // A place alone was measured.
                    Measured::Nothing => {
                        sized = false;
                        (designed.finish.clone(), None)
                    }
                    Measured::As(size) => (size, None),
                }
            }
            Measured::As(first) => match self.size(row, "made_across_it_mm", &designed.finish)? {
                Measured::Nothing => (first, None),
                Measured::As(across) => (first, Some(across)),
            },
        };
        Some(HoleMade {
            hole,
            sized,
            first_way,
            across,
            at,
        })
    }

    /// Where the hole was found, where both figures are filled in.
    fn place(&mut self, row: &Row, designed: Point, finish: Length) -> Option<Point> {
        let x = self.number(row, "made_x_mm");
        let y = self.number(row, "made_y_mm");
        let empty = |column: &str| row.cell(column).is_empty();
        let (x, y) = match (x, y) {
            (Some(x), Some(y)) => (x.value().to_mm(), y.value().to_mm()),
            _ if empty("made_x_mm") != empty("made_y_mm") => {
                self.faults.push(fault(
                    row.line,
                    if empty("made_x_mm") {
                        "made_x_mm"
                    } else {
                        "made_y_mm"
                    },
                    "one figure of two is filled in, and a place has both",
                    "write both, or neither",
                ));
                return None;
            }
            _ => return None,
        };
        let at = Point::new(x, y);
        let away = Length::mm(at.distance(designed));
        if finish.shortfall(away).is_some() {
            self.faults.push(fault(
                row.line,
                "made_x_mm",
                format!(
                    "({x}, {y}) mm is {:.1} mm from where the hole was to be, more than its own diameter",
                    away.to_mm()
                ),
                "look at the number, the signs and the side: x is to the right and y up, from the barrel's centre",
            ));
            return None;
        }
        Some(at)
    }

    /// A size that was measured of a hole; nothing, with its fault, where it cannot be one.
    fn size(&mut self, row: &Row, column: &str, designed: &Size) -> Option<Measured> {
        if row.cell(column).is_empty() {
            return Some(Measured::Nothing);
        }
        if row.cell(column).eq_ignore_ascii_case(WITHIN) {
            return Some(Measured::As(designed.clone()));
        }
        let size = self.number(row, column)?;
        let share = size.value() / designed.value() - 1.0;
        if share.abs() > SLIP_SHARE {
            self.faults.push(fault(
                row.line,
                column,
                format!(
                    "{} is no size of a hole that was to be {designed}",
                    as_shown(row.cell(column))
                ),
                "look at the decimal point, and write the unit where it is not mm",
            ));
            return None;
        }
        Some(Measured::As(size))
    }

    /// A figure of a row in mm, or with a unit of its own; nothing where the cell is empty or, with its fault, cannot be read.
    fn number(&mut self, row: &Row, column: &str) -> Option<Size> {
        let cell = row.cell(column);
        if cell.is_empty() {
            return None;
        }
        let bare = cell.parse::<f64>().is_ok_and(f64::is_finite);
        let text = match bare {
            true => format!("{cell} mm"),
            false => cell.to_string(),
        };
        if cell != as_shown(cell) {
            self.faults.push(fault(
                row.line,
                column,
                format!("{} is no length", as_shown(cell)),
                "write a figure in mm, or one with its unit, and nothing else",
            ));
            return None;
        }
        match Size::read(&text) {
            Ok(size) => Some(size),
            Err(unread) => {
                self.faults
                    .push(fault(row.line, column, unread.fact, unread.remedy));
                None
            }
        }
    }

    /// The printed size of a rivet hole must be that of the design; its place is not read, since none is printed for it.
    fn rivet_agrees(&mut self, row: &Row, id: &str, designed: Length) -> bool {
        let mut agrees = true;
        for column in ["x_mm", "y_mm", "made_x_mm", "made_y_mm"] {
            if !row.cell(column).is_empty() {
                self.faults.push(fault(
                    row.line,
                    column,
                    format!("{id} is a rivet hole, of which no place on the face is read"),
                    "leave the cell empty, and write what was measured under `remarks`",
                ));
                agrees = false;
            }
        }
        let column = "designed_mm";
        match self.number(row, column) {
            Some(found) if (found.value() - designed).abs().to_mm() > RECORD_LAST_DIGIT_MM => {
                self.faults.push(fault(
                    row.line,
                    column,
                    format!(
                        "{id} has {} here, and {:.3} in the spec",
                        as_shown(row.cell(column)),
                        designed.to_mm()
                    ),
                    "give the spec for which the record was printed; what was measured goes into the columns that begin with `made`",
                ));
                false
            }
            Some(_) => agrees,
            None => agrees && row.cell(column).is_empty(),
        }
    }

    fn rivet_hole(&mut self, row: &Row, id: &str) {
        let Some(line) = &self.design.rivets else {
            return;
        };
        let designed = line.hole.clone();
        if !self.rivet_agrees(row, id, designed.value()) {
            return;
        }
        let first = self.size(row, "made_first_way_mm", &designed);
        let across = self.size(row, "made_across_it_mm", &designed);
        let sizes = [first, across].into_iter().flatten();
        let sizes: Vec<Size> = sizes
            .filter_map(|measured| match measured {
                Measured::As(size) => Some(size),
                Measured::Nothing => None,
            })
            .collect();
        let made = match &sizes[..] {
            [] => return,
            [first] => RivetHoleMade {
                id: id.into(),
                designed,
                made: first.clone(),
                oval_by: None,
            },
            [first, across, ..] => {
                let over = across.value() - first.value();
                let larger = if over > Length::ZERO { across } else { first };
                RivetHoleMade {
                    id: id.into(),
                    designed,
                    made: larger.clone(),
                    oval_by: Some(over.abs()),
                }
            }
        };
        self.record.rivets.push(made);
    }
}

/// What a cell says of a size.
enum Measured {
    Nothing,
    As(Size),
}
