//! Damaged specs: whatever is in the file, the program answers at once and in words.

use std::time::{Duration, Instant};

use centrepop::design::set_out;
use centrepop::spec::read_spec;
use proptest::prelude::*;
use proptest::test_runner::{Config, RngAlgorithm, TestRng, TestRunner};

/// Longest that any one damaged spec may take. Far above what any takes (a few milliseconds): it is here to catch what grows without bound, on however busy a machine.
const LONGEST: Duration = Duration::from_secs(5);

const SPECS: [&str; 3] = [
    include_str!("../specs/marl-hen-smokebox.yaml"),
    include_str!("../specs/hobthrush-smokebox.yaml"),
    include_str!("refused/base.yaml"),
];

/// What a stray finger or another program may leave in a file.
const SCRAPS: &[&str] = &[
    ":",
    ": ",
    "- ",
    "[",
    "]",
    "{",
    "}",
    "\"",
    "'",
    "#",
    "&a ",
    "*a",
    "!!str ",
    "|",
    ">",
    "%",
    "\t",
    "\n",
    "\r\n",
    "\n\n    ",
    "---\n",
    "...",
    "?",
    ", ",
    "~",
    "null",
    "1e309",
    "-0",
    "NaN",
    "0x10",
    "１",
    "½",
    "⁄",
    "\u{202e}",
    "\u{0}",
    "\u{7f}",
    "\u{feff}",
    "999999",
    "-1",
    "0",
    "0 mm",
    "-5 in",
    "1/0 in",
    "1e9 mm",
    "000001 mm",
    "113/16",
    "1.3/16",
    " mm",
    " in",
    "é",
    "💥",
    "[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[",
    "{a: {a: {a: {a: ",
    "yes",
    "smokebox",
    "tubes:",
    "  first: -2000000000\n",
];

/// One piece of damage: how, where (a share of the length), how much, with what.
type Damage = (u8, f64, usize, usize);

fn damaged(source: &str, damage: &[Damage]) -> String {
    let mut text: Vec<char> = source.chars().collect();
    for &(how, share, count, scrap) in damage {
        if text.is_empty() {
            break;
        }
        let at = ((text.len() as f64) * share) as usize % text.len();
        let end = (at + count).min(text.len());
        let scrap: Vec<char> = SCRAPS[scrap % SCRAPS.len()].chars().collect();
        match how {
            0 => drop(text.drain(at..end)),
            1 => drop(text.splice(at..at, scrap)),
            2 => drop(text.splice(at..end, scrap)),
            3 => {
                let copy: Vec<char> = text[at..end].to_vec();
                drop(text.splice(at..at, copy));
            }
            4 => text.truncate(at),
            _ => text[at..end].reverse(),
        }
    }
    text.into_iter().collect()
}

/// 3,000 damaged specs: none panics, none takes long, and each refusal names the file, a fact and a remedy.
#[test]
fn holds_damaged_specs_are_answered_at_once() {
    let config = Config {
        cases: 3000,
        failure_persistence: None,
        ..Config::default()
    };
    let seed = TestRng::deterministic_rng(RngAlgorithm::ChaCha);
    let mut runner = TestRunner::new_with_rng(config, seed);
    let damage = proptest::collection::vec((0u8..6, 0.0..1.0, 1usize..40, 0usize..1000), 1..4);
    let answered = runner.run(&(0usize..SPECS.len(), damage), |(spec, damage)| {
        let text = damaged(SPECS[spec], &damage);
        let begun = Instant::now();
        let report = match read_spec("damaged.yaml", text.as_bytes()) {
            Ok(spec) => set_out(&spec)
                .err()
                .map(|faults| spec.refuse(faults).report),
            Err(faults) => Some(
                faults
                    .and_beyond(|spec| set_out(spec).err().unwrap_or_default())
                    .report,
            ),
        };
        prop_assert!(begun.elapsed() < LONGEST, "took {:?}", begun.elapsed());
        if let Some(report) = report {
            prop_assert!(
                report.contains("damaged.yaml") && report.contains("remedy: "),
                "{report}"
            );
        }
        Ok(())
    });
    if let Err(failure) = answered {
        panic!("{failure}");
    }
}

#[test]
fn refuses_a_file_of_brackets_at_once() {
    for bomb in [
        "[".repeat(200_000),
        "{a: ".repeat(100_000),
        "- ".repeat(100_000),
    ] {
        let begun = Instant::now();
        let faults = read_spec("bomb.yaml", bomb.as_bytes()).expect_err("no spec");
        assert!(begun.elapsed() < LONGEST);
        assert!(
            faults
                .report
                .contains("look for brackets or braces that are never closed"),
            "{}",
            &faults.report[..300]
        );
    }
}

/// A YAML reader that follows references would make 10^9 words of these nine lines.
#[test]
fn refuses_references_before_they_multiply() {
    let mut bomb = String::from("a: &a [x, x, x, x, x, x, x, x, x, x]\n");
    for (this, last) in ["b", "c", "d", "e", "f", "g", "h", "i"]
        .iter()
        .zip("abcdefgh".chars())
    {
        bomb.push_str(&format!(
            "{this}: &{this} [{}]\n",
            vec![format!("*{last}"); 10].join(", ")
        ));
    }
    let faults = read_spec("bomb.yaml", bomb.as_bytes()).expect_err("no spec");
    assert!(
        faults
            .report
            .contains("an anchor, `&` is not read in a spec"),
        "{}",
        faults.report
    );
}

/// Three thousand tubes written at one place have 4.5 million pairs; they are one fault.
#[test]
fn refuses_a_heap_of_holes_at_once() {
    let places = vec!["[0 in, 0 in]"; 3000].join(", ");
    let pattern =
        "columns: {through: [0, 1 19/64], spacing: 2 1/4, pitch: 2 19/32, first: -1, last: 1}";
    let text = SPECS[2].replace(pattern, &format!("points: [{places}]"));
    assert_ne!(text, SPECS[2]);
    let begun = Instant::now();
    let spec = read_spec("heap.yaml", text.as_bytes()).unwrap_or_else(|faults| panic!("{faults}"));
    let faults = set_out(&spec).expect_err("a heap");
    assert!(begun.elapsed() < LONGEST);
    assert_eq!(
        faults[0].fact,
        "more than 32 holes have their centres inside T1 at (0, 0) in"
    );
}
