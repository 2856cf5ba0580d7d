//! The record that was filled in at the plate: what was measured of each hole, and what of it is not as designed.

use std::collections::BTreeMap;

use super::{Design, HoleMade, Point};
use crate::units::{Length, Size};

/// The record of one plate, filled in as far as it was.
#[derive(Clone, Debug, Default)]
pub struct FilledRecord {
    /// Instrument named in its head, where one is.
    pub instrument: String,
    /// Witness named in its head, where one is.
    pub witness: String,
    /// Fingerprint of the spec for which it was printed.
    pub fingerprint: String,
    /// SHA-256 of the record as it was read, 64 hex digits.
    pub sha256: String,
    /// Holes in the flat that were measured, in the order of the design.
    pub holes: Vec<HoleMade>,
    /// Holes in the flat that are not recorded, as indices into the design's.
    pub blank: Vec<usize>,
    /// Rivet holes that were measured.
    pub rivets: Vec<RivetHoleMade>,
    /// Rivet holes that are not recorded.
    pub rivets_blank: usize,
    /// Remarks by the number of the hole.
    pub remarks: BTreeMap<String, String>,
    /// Columns that are none of the record's own, and were not read.
    pub more_columns: Vec<String>,
}

/// A rivet hole as it was measured.
#[derive(Clone, Debug)]
pub struct RivetHoleMade {
    /// Its number.
    pub id: String,
    /// What it was to be.
    pub designed: Size,
    /// What it is, the larger of two sizes measured.
    pub made: Size,
    /// By how much the larger is over the other; none where one alone was measured.
    pub oval_by: Option<Length>,
}

impl FilledRecord {
    /// The record's own fingerprint as printed: the first 10 digits of its SHA-256.
    pub fn short_sha256(&self) -> &str {
        self.sha256.get(..10).unwrap_or(&self.sha256)
    }

    /// The largest rivet hole that was measured.
    pub fn largest_rivet(&self) -> Option<&RivetHoleMade> {
        let larger = |a, b: &RivetHoleMade| b.made.value() > Size::value(a);
        self.rivets.iter().reduce(|a, b| match larger(&a.made, b) {
            true => b,
            false => a,
        })
    }

    fn remark(&self, id: &str) -> Option<&str> {
        self.remarks.get(id).map(String::as_str)
    }
}

/// A hole that is not what was designed, or of which something was remarked.
#[derive(Clone, Debug)]
pub struct Deviation<'a> {
    /// Index into [`Design::holes`]; none for a rivet hole.
    pub hole: Option<usize>,
    /// Its number.
    pub id: &'a str,
    /// Name of its group; "rivet hole" of a rivet's.
    pub what: &'a str,
    /// Its finished size as designed.
    pub designed: &'a Size,
    /// The larger size that was measured; none where its size was not.
    pub made: Option<&'a Size>,
    /// By how much that is over the designed one, negative where it is under; none where nothing of it is seen.
    pub over: Option<Length>,
    /// Whether it was measured both ways.
    pub both_ways: bool,
    /// By how much it is oval; none where nothing of it is seen.
    pub oval_by: Option<Length>,
    /// Where it was found; none where its place was not measured.
    pub at: Option<Point>,
    /// How far to the right and up it is off its place, mm; none where nothing of it is seen.
    pub off: Option<Point>,
    /// What was remarked of it.
    pub remark: Option<&'a str>,
}

impl Deviation<'_> {
    fn is_any(&self) -> bool {
        self.over.is_some() || self.oval_by.is_some() || self.off.is_some() || self.remark.is_some()
    }
}

/// What is not as designed, as far as it shows: holes in the flat in the order of the design, then rivet holes. A hole that was not
/// measured stands there where something was remarked of it.
pub fn deviations<'a>(
    design: &'a Design,
    record: &'a FilledRecord,
    shows: impl Fn(Length) -> bool,
) -> Vec<Deviation<'a>> {
    let made: BTreeMap<usize, &HoleMade> = record.holes.iter().map(|m| (m.hole, m)).collect();
    let seen = |length: Length| shows(length).then_some(length);
    let in_flat = design.holes.iter().enumerate().map(|(index, hole)| {
        let measured = made.get(&index).copied();
        let sized = measured.filter(|measured| measured.sized);
        let off = measured.and_then(|measured| measured.off(design));
        Deviation {
            hole: Some(index),
            id: &hole.id,
            what: &design.groups[hole.group].name,
            designed: &hole.finish,
            made: sized.map(HoleMade::larger),
            over: sized.and_then(|measured| seen(measured.over(design))),
            both_ways: sized.is_some_and(|measured| measured.across.is_some()),
            oval_by: sized.and_then(HoleMade::oval_by).and_then(seen),
            at: measured.and_then(|measured| measured.at),
            off: off.filter(|off| shows(Length::mm(off.radius()))),
            remark: record.remark(&hole.id),
        }
    });
    let measured: BTreeMap<&str, &RivetHoleMade> =
        record.rivets.iter().map(|r| (r.id.as_str(), r)).collect();
    let rivets = design.rivets.iter().flat_map(|line| {
        line.rivets.iter().map(|rivet| {
            let measured = measured.get(rivet.id.as_str()).copied();
            Deviation {
                hole: None,
                id: &rivet.id,
                what: "rivet hole",
                designed: &line.hole,
                made: measured.map(|r| &r.made),
                over: measured.and_then(|r| seen(r.made.value() - r.designed.value())),
                both_ways: measured.is_some_and(|r| r.oval_by.is_some()),
                oval_by: measured.and_then(|r| r.oval_by).and_then(seen),
                at: None,
                off: None,
                remark: record.remark(&rivet.id),
            }
        })
    });
    in_flat.chain(rivets).filter(Deviation::is_any).collect()
}
