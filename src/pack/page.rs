//! `index.html`: the job on one page. Read without a script and without a network; prints each sheet at its true size.

use std::fmt::Write;

use super::finding_words::{figures, why};
use super::{Counts, Gate, PackFile, sheet_path};
use crate::checks::{Finding, Verdict};
use crate::design::Design;
use crate::sheets::{Sheet, change_rows};
use crate::spec::Spec;
use crate::units::print;

/// What everybody who opens the page is told first.
const CAUTIONS: [&str; 8] = [
    "A boiler is a store of energy, and a wrong plate can kill. This pack helps drawing and checking; it approves nothing. \
     Design, repair, material, welding, heat treatment, testing and pressure rest with the works' competent engineer and \
     the inspecting body under local law.",
    "“Meets” is said only against the rule that is named. What is not judged is listed, and has not been judged.",
    "Which side one looks from stands on every sheet. Mark the plate TOP and THIS FACE TO … before it is cut.",
    "Drilled holes are for ever: stop at the hold points, and drill nothing past its pilot before the marking-out has been counted.",
    "No pressure hole is finished by a thermal cut; dress such edges back to sound metal.",
    "Verify a full-size print by its proving bar. The steel rule wins over paper.",
    "Masses are estimates. Plates have sharp edges and no natural point of balance; a competent person plans the lift.",
    "Not done here: fatigue, cracks, creep, stress by finite elements, thermal stress, weld sizes, test pressures, and \
     approval under any code.",
];

/// The page, linking to the files of the pack by the paths given.
pub fn page(
    spec: &Spec,
    design: &Design,
    findings: &[Finding],
    sheets: &[Sheet],
    paths: &[&str],
) -> PackFile {
    let mut html = String::new();
    head(&mut html, spec, sheets);
    title(&mut html, spec, design);
    gate(&mut html, findings);
    cautions(&mut html);
    picture(&mut html, spec, paths);
    changes(&mut html, spec, design);
    sheet_list(&mut html, sheets);
    findings_tables(&mut html, findings);
    holes(&mut html, design);
    files(&mut html, sheets, paths);
    sheet_pictures(&mut html, sheets);
    html.push_str("</body>\n</html>\n");
    PackFile::new("index.html", html)
}

/// Text as it may stand in HTML, between tags or in a quoted attribute.
pub(super) fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            c => out.push(c),
        }
    }
    out
}

/// Writes to a string, which cannot fail.
macro_rules! put {
    ($html:expr, $($words:tt)*) => {
        write!($html, $($words)*).expect("a string takes what is written to it")
    };
}

const STYLE: &str = "\
body { font: 16px/1.45 sans-serif; max-width: 60em; margin: 1.5em auto; padding: 0 1em; color: #000; background: #fff }
h1 { margin-bottom: 0 } h2 { margin-top: 1.6em }
table { border-collapse: collapse; width: 100% } th, td { border: 1px solid #666; padding: .2em .5em; text-align: left; vertical-align: top }
td.figure { text-align: right; white-space: nowrap }
.box { border: 3px solid #000; padding: .2em 1em } .shut { border-style: double; border-width: 6px }
.below td { font-weight: bold }
@media screen and (max-width: 45em) { table { display: block; overflow-x: auto } td.figure { white-space: normal } }
img { max-width: 100% } .sheet img { border: 1px solid #666 }
@media print {
  body { max-width: none; margin: 0; padding: 0 }
  .sheet { break-before: page; margin: 0 } .sheet h2, .sheet p { display: none }
  .sheet img { display: block; border: 0; max-width: none }
}
@page { size: A4 portrait; margin: 12mm }
";

fn head(html: &mut String, spec: &Spec, sheets: &[Sheet]) {
    let job = &spec.written.job;
    let title = escaped(&format!(
        "{} revision {}: {}",
        job.drawing, job.revision, job.engine
    ));
    put!(
        html,
        "<!DOCTYPE html>\n<html lang=\"en-GB\">\n<head>\n<meta charset=\"utf-8\">\n<title>{title}</title>\n\
         <meta name=\"viewport\" content=\"width=device-width\">\n<style>\n{STYLE}"
    );
    for (number, sheet) in sheets.iter().enumerate() {
        // A page of each sheet's own size without margins: a bare SVG would be fitted to whatever paper is loaded.
        let (width, height) = (millimetres(sheet.width), millimetres(sheet.height));
        put!(
            html,
            "@page sheet{number} {{ size: {width}mm {height}mm; margin: 0 }}\n\
             @media print {{ #sheet{number} {{ page: sheet{number} }} #sheet{number} img {{ width: {width}mm; height: {height}mm }} }}\n"
        );
    }
    html.push_str("</style>\n</head>\n<body>\n");
}

fn millimetres(mm: f64) -> String {
    let text = print::decimal(mm, 3);
    text.trim_end_matches('0').trim_end_matches('.').to_string()
}

fn title(html: &mut String, spec: &Spec, design: &Design) {
    let job = &spec.written.job;
    let plate = job.title.as_deref().unwrap_or(design.kind.name());
    put!(
        html,
        "<h1>{} revision {}</h1>\n<p>{}, {}. {}. Issued {}. Looking from the {}. Fingerprint of the spec {}.</p>\n",
        escaped(&job.drawing),
        escaped(&job.revision),
        escaped(&job.engine),
        escaped(plate),
        escaped(&job.works),
        escaped(&job.issued),
        design.view_from.name(),
        spec.short_fingerprint(),
    );
    if design.kept {
        kept(html, design);
    }
}

/// That the plate stands, and which pieces of it are new.
fn kept(html: &mut String, design: &Design) {
    let pieces: Vec<&str> = design.pieces().map(|(_, p)| p.name.as_str()).collect();
    let new = match pieces.len() {
        0 => "nothing of it is new".to_string(),
        1 => format!("only {} and what lies in it is new", pieces[0]),
        _ => format!(
            "only these and what lies in them is new: {}",
            pieces.join(", ")
        ),
    };
    put!(
        html,
        "<p><strong>Plate kept: {}.</strong></p>\n",
        escaped(&new)
    );
}

fn gate(html: &mut String, findings: &[Finding]) {
    put!(
        html,
        "<p><strong>Findings: {}.</strong></p>\n",
        Counts::of(findings)
    );
    if let Gate::Shut(reasons) = Gate::of(findings) {
        html.push_str(
            "<div class=\"box shut\">\n<p><strong>NOT FOR CUTTING.</strong> No cut file was written, because something judged \
             is below its rule and nobody has conceded it:</p>\n<ul>\n",
        );
        for reason in reasons {
            put!(html, "<li>{}</li>\n", escaped(&reason));
        }
        html.push_str("</ul>\n</div>\n");
    }
}

fn cautions(html: &mut String) {
    html.push_str("<div class=\"box\">\n<ul>\n");
    for caution in CAUTIONS {
        put!(html, "<li>{}</li>\n", escaped(caution));
    }
    html.push_str("</ul>\n</div>\n");
}

fn picture(html: &mut String, spec: &Spec, paths: &[&str]) {
    if paths.contains(&"preview.png") {
        put!(
            html,
            "<p><a href=\"drawing.pdf\"><img src=\"preview.png\" alt=\"General arrangement of {}\"></a></p>\n",
            escaped(&spec.written.job.drawing)
        );
    }
}

/// What changed since the former issue, where the spec names one.
fn changes(html: &mut String, spec: &Spec, design: &Design) {
    let Some((title, rows)) = change_rows(spec, design) else {
        return;
    };
    put!(
        html,
        "<h2>{}</h2>\n<table>\n<tr><th>what</th><th>was</th><th>now</th></tr>\n",
        escaped(&title)
    );
    for row in rows {
        // On the page fractions stand in a line, so the braces that stack them on a sheet are left out.
        let plain = |words: &str| escaped(&words.replace(['{', '}'], ""));
        put!(
            html,
            "<tr><td>{}</td><td>{}</td><td>{}</td></tr>\n",
            plain(&row.what),
            plain(&row.was),
            plain(&row.now)
        );
    }
    html.push_str("</table>\n");
}

/// The sheets in their order, each leading to its picture further down.
fn sheet_list(html: &mut String, sheets: &[Sheet]) {
    html.push_str("<h2>Sheets</h2>\n<ol>\n");
    for (number, sheet) in sheets.iter().enumerate() {
        put!(
            html,
            "<li><a href=\"#sheet{number}\">{}</a></li>\n",
            escaped(&told_apart(sheet, sheets))
        );
    }
    html.push_str("</ol>\n");
}

/// The title of a sheet; where several bear it, which of them it is.
fn told_apart(sheet: &Sheet, sheets: &[Sheet]) -> String {
    let alike = || sheets.iter().filter(|other| other.title == sheet.title);
    match alike().count() {
        0 | 1 => sheet.title.clone(),
        of => {
            let before = alike().filter(|other| other.number < sheet.number).count();
            format!("{}, {} of {of}", sheet.title, before + 1)
        }
    }
}

/// What a file of the pack is for, by its path; a sheet goes by its title.
fn purpose_of(path: &str, sheets: &[Sheet]) -> String {
    if let Some(sheet) = sheets.iter().find(|sheet| sheet_path(sheet) == path) {
        return format!("sheet {}: {}", sheet.number, told_apart(sheet, sheets));
    }
    let purpose = match path {
        "drawing.pdf" => "all sheets at true size: print this one",
        "preview.png" => "picture of the general arrangement",
        "results.json" => "every figure and finding, for machines",
        "manifest.json" => "every file with its SHA-256",
        path if path.ends_with(".dxf") && path.starts_with("cut/r12/") => {
            "cut file, older form (R12), mm"
        }
        path if path.ends_with(".dxf") => "cut file, mm",
        path if path.starts_with("cut/order-note") => "what the contractor is told",
        path if path.starts_with("tables/") => "table for marking out or ordering",
        path if path.starts_with("record/") => "record to fill in",
        _ => "",
    };
    purpose.to_string()
}

/// The files in the order in which they are wanted: to print, to cut, to mark out and record, for machines, sheet by sheet.
fn files(html: &mut String, sheets: &[Sheet], paths: &[&str]) {
    html.push_str("<h2>Files</h2>\n<table>\n");
    for path in in_order_of_use(sheets, paths) {
        put!(
            html,
            "<tr><td><a href=\"{0}\">{0}</a></td><td>{1}</td></tr>\n",
            escaped(path),
            escaped(&purpose_of(path, sheets))
        );
    }
    html.push_str("</table>\n");
}

fn in_order_of_use<'a>(sheets: &[Sheet], paths: &[&'a str]) -> Vec<&'a str> {
    const FOLDERS: [&str; 3] = ["cut/", "tables/", "record/"];
    let order_of = |path: &str| match path {
        "drawing.pdf" => 0,
        path => match FOLDERS.iter().position(|folder| path.starts_with(folder)) {
            Some(folder) => 1 + folder,
            // By the sheet's number: by name the tenth would stand before the second.
            None => match sheets.iter().position(|sheet| sheet_path(sheet) == path) {
                Some(sheet) => 5 + sheet,
                None => 4,
            },
        },
    };
    let mut ordered = paths.to_vec();
    ordered.sort_by_cached_key(|path| order_of(path));
    ordered
}

fn holes(html: &mut String, design: &Design) {
    html.push_str(
        "<h2>Holes</h2>\n<table>\n<tr><th>group</th><th>number off</th><th>finished hole</th></tr>\n",
    );
    for (number, group) in design.groups.iter().enumerate() {
        let off = design.holes.iter().filter(|hole| hole.group == number);
        row(html, &group.name, off.count(), group.finish.as_written());
    }
    if let Some(line) = &design.rivets {
        row(
            html,
            "rivets of the flange",
            line.rivets.len(),
            line.hole.as_written(),
        );
    }
    html.push_str("</table>\n");
}

fn row(html: &mut String, name: &str, number_off: usize, finish: &str) {
    put!(
        html,
        "<tr><td>{}</td><td class=\"figure\">{number_off}</td><td>{}</td></tr>\n",
        escaped(name),
        escaped(finish)
    );
}

/// What is compared, the worst on top; what is not judged; and the notes, each in a table of its own.
fn findings_tables(html: &mut String, findings: &[Finding]) {
    let of = |wanted: &[&str]| -> Vec<&Finding> {
        wanted
            .iter()
            .flat_map(|name| findings.iter().filter(move |f| f.verdict.name() == *name))
            .collect()
    };
    findings_table(html, "Findings", &of(&["below", "conceded", "meets"]));
    findings_table(html, "Not judged", &of(&["not judged"]));
    findings_table(html, "Notes, which judge nothing", &of(&["note"]));
}

fn findings_table(html: &mut String, heading: &str, findings: &[&Finding]) {
    if findings.is_empty() {
        return;
    }
    put!(
        html,
        "<h2>{heading}</h2>\n<table>\n<tr><th>verdict</th><th>what is asked</th><th>where</th><th>required</th>\
         <th>provided</th><th>compared with</th></tr>\n"
    );
    for finding in findings {
        let below = matches!(finding.verdict, Verdict::Below { .. });
        let (required, provided) = figures(finding);
        put!(
            html,
            "<tr{}><td>{}</td><td>{}</td><td>{}</td><td class=\"figure\">{}</td><td class=\"figure\">{}</td>\
             <td>{}<br>{}</td></tr>\n",
            if below { " class=\"below\"" } else { "" },
            finding.verdict.name(),
            escaped(finding.asks),
            escaped(&finding.place),
            escaped(&required),
            escaped(&provided),
            escaped(&finding.source),
            escaped(&why(finding)),
        );
    }
    html.push_str("</table>\n");
}

fn sheet_pictures(html: &mut String, sheets: &[Sheet]) {
    for (number, sheet) in sheets.iter().enumerate() {
        let path = escaped(&sheet_path(sheet));
        put!(
            html,
            "<section class=\"sheet\" id=\"sheet{number}\">\n<h2>Sheet {}: {}</h2>\n<p>{} × {} mm</p>\n\
             <a href=\"{}\"><img src=\"{}\" alt=\"Sheet {}\"></a>\n</section>\n",
            sheet.number,
            escaped(&told_apart(sheet, sheets)),
            millimetres(sheet.width),
            millimetres(sheet.height),
            path,
            path,
            sheet.number,
        );
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Two sheets of one title are the first and the second of two; one alone is not numbered.
    #[test]
    fn by_hand_sheets_of_one_title_are_told_apart() {
        let sheet = |number: usize, title: &str| Sheet {
            number,
            name: "name".into(),
            title: title.into(),
            width: 420.0,
            height: 297.0,
            marks: Vec::new(),
        };
        let sheets = [sheet(1, "Details"), sheet(2, "Count"), sheet(3, "Details")];
        let told: Vec<String> = sheets.iter().map(|s| told_apart(s, &sheets)).collect();
        assert_eq!(told, ["Details, 1 of 2", "Count", "Details, 2 of 2"]);
    }

    #[test]
    fn by_hand_marks_of_html_are_escaped() {
        assert_eq!(
            escaped("<b>\"Old\" & 'new'</b>"),
            "&lt;b&gt;&quot;Old&quot; &amp; &#39;new&#39;&lt;/b&gt;"
        );
    }
}
