//! The former issue of a plate, read by the same reader as the one in hand.

use std::path::Path;

use super::read::{Spec, read_one_spec_file};
use super::{Fault, Faults};

/// An issue before the one in hand.
#[derive(Clone, Debug)]
pub struct Former {
    /// Its spec. What that says of issues before it is not read.
    pub spec: Box<Spec>,
    /// The key that names it, `job.revisions[0].spec`.
    pub path: String,
}

/// The last former issue that a spec names, read; none where it names none.
///
/// Refused: a file that cannot be read or is itself refused; another drawing, or the same seen from another side; an index or a
/// date that is not that of its own line in the table.
pub(super) fn former_issue(spec: &Spec, file: &Path) -> Result<Option<Former>, Faults> {
    let job = &spec.written.job;
    let lines = job.revisions.iter().enumerate().rev();
    let named = lines.filter_map(|(i, line)| Some((i, line, line.spec.as_ref()?)));
    let Some((i, line, name)) = named.into_iter().next() else {
        return Ok(None);
    };
    let path = format!("job.revisions[{i}].spec");
    let former_file = file.parent().unwrap_or(Path::new("")).join(name);
    let former = read_one_spec_file(&former_file).map_err(|faults| {
        let first = faults.faults.first().expect("what is refused has a fault");
        let (fact, remedy) = match first.path.is_empty() {
            true => (
                first.fact.clone(),
                "put the former issue's spec there, or leave the key out".to_string(),
            ),
            false => (
                format!("it is refused, for `{}` first: {}", first.path, first.fact),
                format!(
                    "run `centrepop check {}` to see every fault of it, and mend it there",
                    former_file.display()
                ),
            ),
        };
        let fact = format!("revision {} is in `{name}`, and {fact}", line.index);
        spec.refuse(vec![Fault::new(&path, fact, remedy)])
    })?;
    let was = &former.written.job;
    let mut faults = Vec::new();
    let mut differs = |key: &str, there: &str, here: &str, remedy: &str| {
        if there != here {
            let fact = format!("`{key}` in `{name}` is {there}, and {here} was looked for");
            faults.push(Fault::new(&path, fact, remedy));
        }
    };
    let other = "name the spec of this plate's own former issue";
    differs("job.drawing", &was.drawing, &job.drawing, other);
    differs(
        "job.revision",
        &was.revision,
        &line.index,
        "name each issue's spec on its own line",
    );
    differs(
        "job.issued",
        &was.issued,
        &line.date,
        "write the date of that issue on its line",
    );
    let (there, here) = (&former.written.plate, &spec.written.plate);
    let side =
        "places cannot be compared from two sides: set the former issue out again from this one";
    differs(
        "plate.view_from",
        there.view_from.name(),
        here.view_from.name(),
        side,
    );
    differs("plate.kind", there.kind.name(), here.kind.name(), other);
    match faults.is_empty() {
        true => Ok(Some(Former {
            spec: Box::new(former),
            path,
        })),
        false => Err(spec.refuse(faults)),
    }
}
