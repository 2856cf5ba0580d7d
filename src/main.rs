//! The command line: arguments, one command called, its words printed and its status returned.

use std::io::{self, Write};
use std::path::PathBuf;
use std::process::ExitCode;

use centrepop::commands::{self, Outcome, Refused};
use clap::{Parser, Subcommand};

/// Boiler tube plates: from one written spec to sheets, cut files, a design check, tables and records.
///
/// It compares figures with named rules and approves nothing: design, repair, material, welding, testing and pressure rest
/// with the works' competent engineer and the inspecting body.
#[derive(Parser)]
#[command(name = "centrepop", version, after_help = AFTER_HELP)]
struct Arguments {
    #[command(subcommand)]
    command: Command,
}

const AFTER_HELP: &str = "\
Exit status:
  0  done, and nothing judged is below its rule
  1  done, but something judged is below its rule and not conceded
  2  the spec was refused, or nothing could be written

Examples:
  centrepop new smokebox-tube-plate-pressed > my-plate.yaml
  centrepop draw my-plate.yaml
  centrepop draw specs/marl-hen-smokebox.yaml --out output
  centrepop check my-plate.yaml
  centrepop explain tube_ligament my-plate.yaml
  centrepop schema > spec.schema.json";

const COMPARE_HELP: &str = "\
Exit status:
  0  no difference
  1  differences
  2  the spec was refused, or a file cannot be read

Examples:
  centrepop compare specs/hobthrush-smokebox.yaml returned.dxf
  centrepop compare specs/hobthrush-smokebox.yaml returned.dxf --part plate --within '0.05 mm'
  centrepop compare my-plate-a.yaml my-plate-b.yaml";

#[derive(Subcommand)]
enum Command {
    /// Draw a plate: write its sheets, cut files, checks, tables and record as one folder
    #[command(after_help = "Example:\n  centrepop draw specs/marl-hen-smokebox.yaml --out output")]
    Draw {
        /// The spec of the plate, a YAML file
        spec: PathBuf,
        /// Folder in which the plate's own folder, named by drawing and revision, is written
        #[arg(long, default_value = "output", value_name = "DIR")]
        out: PathBuf,
        /// Also write the cut files and their order note as one .zip to send to the contractor
        #[arg(long)]
        zip: bool,
    },
    /// Compare a plate with the rules that judge it, and say what came of it; nothing is written
    #[command(after_help = "Example:\n  centrepop check specs/marl-hen-smokebox.yaml")]
    Check {
        /// The spec of the plate, a YAML file
        spec: PathBuf,
        /// For machines: every finding with its inputs and working, numbers unrounded
        #[arg(long)]
        json: bool,
    },
    /// Explain a rule: formula, source, limits; with a spec, this plate's figures put in line by line
    #[command(
        after_help = "Examples:\n  centrepop explain\n  centrepop explain tube_ligament\n  centrepop explain tube_ligament specs/marl-hen-smokebox.yaml"
    )]
    Explain {
        /// Name of the rule, as the design check sheet prints it; every rule is listed where none is named
        rule: Option<String>,
        /// The spec of a plate, a YAML file
        spec: Option<PathBuf>,
    },
    /// Compare a cut file that came back with its spec, or two specs with each other; nothing is written
    #[command(after_help = COMPARE_HELP)]
    Compare {
        /// The spec of the plate, a YAML file
        spec: PathBuf,
        /// A cut file, whose name ends in .dxf, or the newer of two specs
        other: PathBuf,
        /// The part that a cut file is compared with; the one it is most like where none is named
        #[arg(long, value_name = "NAME")]
        part: Option<String>,
        /// Distance below which two places of a cut file are one: a length with its unit
        #[arg(long, value_name = "LENGTH")]
        within: Option<String>,
        /// For machines: every difference, numbers unrounded
        #[arg(long)]
        json: bool,
    },
    /// Try other pitches, holes and lands: what each would come to in tubes and findings; a table, and nothing is written
    #[command(
        after_help = "Examples:\n  centrepop propose specs/marl-hen-smokebox.yaml\n  centrepop propose my-plate.yaml --rule tube_ligament"
    )]
    Propose {
        /// The spec of the plate, a YAML file
        spec: PathBuf,
        /// The rule to be met, as the design check sheet names it; every rule that judges where none is named
        #[arg(long, value_name = "RULE")]
        rule: Option<String>,
        /// For machines: every figure tried, numbers unrounded
        #[arg(long)]
        json: bool,
    },
    /// Read a filled-in inspection record: what was made otherwise than designed, and every check run again on the plate as made
    #[command(
        name = "asmade",
        after_help = "Examples:\n  centrepop asmade my-plate.yaml output/MP-TP1-A/record/inspection.csv\n  centrepop asmade my-plate.yaml filled-in.csv --out output"
    )]
    AsMade {
        /// The spec of the plate, a YAML file
        spec: PathBuf,
        /// The record, filled in: record/inspection.csv of the plate's pack, saved as CSV
        record: PathBuf,
        /// Also write sheets, table of deviations and results of the plate as made, into a folder of its own under this one
        #[arg(long, value_name = "DIR")]
        out: Option<PathBuf>,
        /// For machines: every measured hole and every finding, numbers unrounded
        #[arg(long)]
        json: bool,
    },
    /// Print a commented spec to start from
    #[command(after_help = "Example:\n  centrepop new smokebox-tube-plate-pressed > my-plate.yaml")]
    New {
        #[arg(required = true, value_name = "KIND", help = kinds_of_start())]
        kind: Vec<String>,
    },
    /// Print the JSON Schema of a spec, for editors that complete keys
    #[command(after_help = "Example:\n  centrepop schema > spec.schema.json")]
    Schema,
}

/// Help on the kinds of spec that there are to start from.
fn kinds_of_start() -> String {
    let kinds: Vec<&str> = commands::new::kinds().collect();
    format!("Which spec to start from: {}", kinds.join(", "))
}

fn main() -> ExitCode {
    let outcome: Outcome = match Arguments::parse().command {
        Command::Draw { spec, out, zip } => commands::draw::draw(&spec, &out, zip),
        Command::Check { spec, json } => commands::check::check(&spec, json, screen_width()),
        Command::Explain { rule, spec } => {
            commands::explain::explain(rule.as_deref(), spec.as_deref(), screen_width())
        }
        Command::Compare {
            spec,
            other,
            part,
            within,
            json,
        } => {
            let asked = commands::compare::Asked {
                part: part.as_deref(),
                within: within.as_deref(),
                json,
                width: screen_width(),
            };
            commands::compare::compare(&spec, &other, asked)
        }
        Command::Propose { spec, rule, json } => {
            let asked = commands::propose::Asked {
                rule: rule.as_deref(),
                json,
                width: screen_width(),
            };
            commands::propose::propose(&spec, asked)
        }
        Command::AsMade {
            spec,
            record,
            out,
            json,
        } => {
            let asked = commands::as_made::Asked {
                out: out.as_deref(),
                json,
                width: screen_width(),
            };
            commands::as_made::asmade(&spec, &record, asked)
        }
        Command::New { kind } => commands::new::start(&kind.join("-")),
        Command::Schema => commands::schema::schema(),
    };
    match outcome {
        Ok(said) => match print(&said.words) {
            Ok(()) => ExitCode::from(said.status.code()),
            Err(e) => refuse(&format!("cannot write to the screen: {e}")),
        },
        Err(refused) => refuse(&refused.to_string()),
    }
}

/// Characters in a line of the screen; 100 where the words go to a file.
fn screen_width() -> usize {
    terminal_size::terminal_size().map_or(100, |(width, _)| usize::from(width.0))
}

/// Writes to standard output; whoever closes it early has seen what he wanted.
fn print(words: &str) -> io::Result<()> {
    let mut out = io::stdout().lock();
    match out.write_all(words.as_bytes()).and_then(|()| out.flush()) {
        Err(e) if e.kind() == io::ErrorKind::BrokenPipe => Ok(()),
        result => result,
    }
}

fn refuse(report: &str) -> ExitCode {
    // Nobody is left to tell where standard error cannot be written either.
    let _ = writeln!(io::stderr(), "{report}");
    ExitCode::from(Refused::CODE)
}
