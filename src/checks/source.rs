//! The sources that rules cite, each with the rule set it belongs to and how far its text could be read.

use super::{Source, Standing};

/// The rule set of the Indian Boiler Regulations.
pub const IBR_SET: &str = "Indian Boiler Regulations 1950";
/// The rule set of the United States' locomotive rules.
pub const CFR_230_SET: &str = "49 CFR Part 230";
/// The rule set of the United States' marine boiler repair rules.
pub const CFR_59_SET: &str = "46 CFR Part 59";
/// The rule set of the German boiler rules.
pub const TRD_SET: &str = "TRD 305";
/// The rule set of Lloyd's Register for naval ships.
pub const LLOYDS_NAVAL_SET: &str = "Lloyd's Register Naval Ship Rules";
/// The rule set of the square-pitch form of stayed surfaces.
pub const PG_46_SET: &str = "ASME Section I 2007";
/// The rule set of the National Board's proposal on historical boilers.
pub const NB_1201_SET: &str = "National Board proposal NB12-1201";
/// The rule set of the Board of Trade's riveting rules.
pub const BOARD_OF_TRADE_SET: &str = "Board of Trade rules";
/// The rule set of the Malaysian boiler regulations.
pub const MALAYSIA_SET: &str =
    "Factories and Machinery (Steam Boiler and Unfired Pressure Vessel) Regulations 1970";
/// The set that holds every limit of the works' own: it always judges.
pub const WORKS_SET: &str = "works' own limits";
/// The set of what can only be noted: no `judged_by` names it.
pub const NOTED: &str = "";

const fn read(cite: &'static str, set: &'static str) -> Source {
    Source {
        cite,
        set,
        standing: Standing::Read,
    }
}

const fn restated(cite: &'static str, set: &'static str) -> Source {
    Source {
        cite,
        set,
        standing: Standing::Restated,
    }
}

/// Plain geometry or mechanics.
pub const GEOMETRY: Source = Source {
    cite: "geometry",
    set: NOTED,
    standing: Standing::Geometry,
};
/// The works' own limits; a finding prints the origin that the spec gives.
pub const WORKS: Source = Source {
    cite: "works' own limit",
    set: WORKS_SET,
    standing: Standing::Works,
};

/// End-plate and other circumferential seams.
pub const IBR_104: Source = read("Indian Boiler Regulations 1950, regulation 104", IBR_SET);
/// Riveted joints.
pub const IBR_177: Source = read("Indian Boiler Regulations 1950, regulation 177", IBR_SET);
/// Rows and edges of rivets.
pub const IBR_184: Source = read("Indian Boiler Regulations 1950, regulation 184", IBR_SET);
/// Flanged mouths.
pub const IBR_201: Source = read("Indian Boiler Regulations 1950, regulation 201", IBR_SET);
/// Ligaments of shells and drums.
pub const IBR_215: Source = read("Indian Boiler Regulations 1950, regulation 215", IBR_SET);
/// Hydraulic test.
pub const IBR_379: Source = read("Indian Boiler Regulations 1950, regulation 379", IBR_SET);
/// Largest circle through points of support; seen in a worked sheet that cites it.
pub const IBR_574: Source = restated("Indian Boiler Regulations 1950, regulation 574", IBR_SET);
/// Tube plates.
pub const IBR_580: Source = read("Indian Boiler Regulations 1950, regulation 580", IBR_SET);
/// The alternative that regulation 580 allows: taken by explicit choice only, so that no set brings it in.
pub const IBR_580_ALTERNATIVE: Source = read(
    "Indian Boiler Regulations 1950, regulation 580, alternative",
    NOTED,
);
/// Screwed stay tubes.
pub const IBR_581: Source = read("Indian Boiler Regulations 1950, regulation 581", IBR_SET);
/// Firebox tube plate pressed by roof girders. The copy read was a mirror of unknown standing.
pub const IBR_582: Source = read("Indian Boiler Regulations 1950, regulation 582", IBR_SET);
/// Screwed stays.
pub const IBR_585: Source = read("Indian Boiler Regulations 1950, regulation 585", IBR_SET);
/// Longitudinal bar stays.
pub const IBR_587: Source = read("Indian Boiler Regulations 1950, regulation 587", IBR_SET);
/// Area carried by a stay tube within the nest.
pub const IBR_588: Source = read("Indian Boiler Regulations 1950, regulation 588", IBR_SET);
/// Breathing spaces; written for shell boilers, so that it is noted and never judges.
pub const IBR_590: Source = read("Indian Boiler Regulations 1950, regulation 590", NOTED);
/// Factor of safety of a locomotive boiler.
pub const CFR_230_24: Source = read("49 CFR 230.24", CFR_230_SET);
/// Stress on stays and braces.
pub const CFR_230_25: Source = read("49 CFR 230.25", CFR_230_SET);
/// Welded repair.
pub const CFR_230_33: Source = read("49 CFR 230.33", CFR_230_SET);
/// Hydraulic test.
pub const CFR_230_36: Source = read("49 CFR 230.36", CFR_230_SET);
/// Telltale holes.
pub const CFR_230_38: Source = read("49 CFR 230.38", CFR_230_SET);
/// Repairs of marine boilers.
pub const CFR_59_10: Source = read("46 CFR 59.10", CFR_59_SET);
/// Inside radius of a flat end flanged for connection to a shell.
pub const LLOYDS_NAVAL_9_1: Source = read(
    "Lloyd's Register Naval Ship Rules, Vol 2 Pt 8 Ch 1, 9.1",
    LLOYDS_NAVAL_SET,
);
/// Knuckle radius of flat flanged ends.
pub const TRD_305: Source = read("TRD 305 (June 1977), 3.1.2", TRD_SET);
/// Square pitch of stays.
pub const PG_46: Source = restated("ASME Section I 2007, PG-46.1", PG_46_SET);
/// Square and rectangular pitch of stays, and the table that tests the square one.
pub const NB_1201: Source = read("National Board proposal NB12-1201, S2.10.4", NB_1201_SET);
/// Zig-zag and chain rows of rivets.
pub const BOARD_OF_TRADE: Source = read(
    "Board of Trade rules, in J. Rose, Modern Machine-Shop Practice",
    BOARD_OF_TRADE_SET,
);
/// First and repeat hydraulic tests.
pub const MALAYSIA_72: Source = read(
    "Factories and Machinery (Steam Boiler and Unfired Pressure Vessel) Regulations 1970, regulation 72",
    MALAYSIA_SET,
);
/// Diagonal stays.
pub const LAYING_OUT: Source = read(
    "Laying Out for Boiler Makers and Sheet Metal Workers, p. 48",
    NOTED,
);
/// Area above the tubes that needs staying.
pub const HAWKINS: Source = read(
    "N. Hawkins, Maxims and Instructions for the Boiler Room",
    NOTED,
);
/// Largest pitch of rivets for tightness.
pub const LARGEST_PITCH: Source = restated("form p = C t + 41.28 mm, machine-design texts", NOTED);
/// Least inside radii for cold flanging of structural steel; recommended values.
pub const EN_10025_2: Source = restated("EN 10025-2, recommended radii for cold flanging", NOTED);
/// Clear space between tubes and practice of the day.
pub const BOURNE: Source = read("J. Bourne, A Catechism of the Steam Engine, Q. 420", NOTED);

/// Every source that a rule may cite.
pub const ALL: &[Source] = &[
    GEOMETRY,
    WORKS,
    IBR_104,
    IBR_177,
    IBR_184,
    IBR_201,
    IBR_215,
    IBR_379,
    IBR_574,
    IBR_580,
    IBR_580_ALTERNATIVE,
    IBR_581,
    IBR_582,
    IBR_585,
    IBR_587,
    IBR_588,
    IBR_590,
    CFR_230_24,
    CFR_230_25,
    CFR_230_33,
    CFR_230_36,
    CFR_230_38,
    CFR_59_10,
    LLOYDS_NAVAL_9_1,
    TRD_305,
    PG_46,
    NB_1201,
    BOARD_OF_TRADE,
    MALAYSIA_72,
    LAYING_OUT,
    HAWKINS,
    LARGEST_PITCH,
    EN_10025_2,
    BOURNE,
];
