//! What a DXF file wants round its entities: header, tables, blocks and, from R13 on, handles and dictionaries.

use super::{Pairs, Version, look, units_and_extents};
use crate::cut::entity::Extent;
use crate::cut::part::Layer;
use crate::design::Point;

// Handles of R2000. Each thing in the file has one of its own; entities follow from `FIRST_ENTITY`.
const VPORT_TABLE: usize = 0x1;
const LTYPE_TABLE: usize = 0x2;
const LAYER_TABLE: usize = 0x3;
const STYLE_TABLE: usize = 0x4;
const VIEW_TABLE: usize = 0x5;
const UCS_TABLE: usize = 0x6;
const APPID_TABLE: usize = 0x7;
const DIMSTYLE_TABLE: usize = 0x8;
const BLOCK_RECORD_TABLE: usize = 0x9;
const ACTIVE_VIEW: usize = 0x10;
const LINE_TYPES: usize = 0x11;
const TEXT_STYLE: usize = 0x14;
const APPLICATION: usize = 0x15;
const DIM_STYLE: usize = 0x16;
/// The block record that owns every entity.
pub(super) const MODEL_SPACE: usize = 0x17;
const PAPER_SPACE: usize = 0x18;
const MODEL_BLOCK: usize = 0x19;
const PAPER_BLOCK: usize = 0x1B;
const ROOT_DICTIONARY: usize = 0x20;
const GROUP_DICTIONARY: usize = 0x21;
const LAYOUT_DICTIONARY: usize = 0x22;
const MODEL_LAYOUT: usize = 0x23;
const PAPER_LAYOUT: usize = 0x24;
const PLOT_STYLES: usize = 0x25;
const PLOT_STYLE: usize = 0x26;
const LAYERS: usize = 0x30;
/// Handle of the first entity.
pub(super) const FIRST_ENTITY: usize = 0x100;

/// Header and tables of an R12 file, up to its entities.
pub(super) fn r12_before(pairs: &mut Pairs, extent: &Extent) {
    pairs.section("HEADER");
    pairs.text(9, "$ACADVER");
    pairs.text(1, Version::R12.name());
    units_and_extents(pairs, extent);
    pairs.end_section();
    pairs.section("TABLES");
    r12_table(pairs, "LTYPE", 1, |pairs| {
        pairs.text(0, "LTYPE");
        pairs.text(2, "CONTINUOUS");
        pairs.whole(70, 0);
        solid_line(pairs);
    });
    r12_table(pairs, "LAYER", Layer::ALL.len() as i64 + 1, |pairs| {
        for (name, colour) in
            std::iter::once(("0", 7)).chain(Layer::ALL.map(|layer| (layer.name(), look(layer).0)))
        {
            pairs.text(0, "LAYER");
            pairs.text(2, name);
            pairs.whole(70, 0);
            pairs.whole(62, colour);
            pairs.text(6, "CONTINUOUS");
        }
    });
    r12_table(pairs, "STYLE", 1, |pairs| {
        pairs.text(0, "STYLE");
        pairs.text(2, "STANDARD");
        pairs.whole(70, 0);
        plain_lettering(pairs);
    });
    pairs.end_section();
}

fn r12_table(pairs: &mut Pairs, name: &str, count: i64, rows: impl FnOnce(&mut Pairs)) {
    pairs.text(0, "TABLE");
    pairs.text(2, name);
    pairs.whole(70, count);
    rows(pairs);
    pairs.text(0, "ENDTAB");
}

/// Header, tables and blocks of an R2000 file, up to its entities.
pub(super) fn r2000_before(pairs: &mut Pairs, extent: &Extent, entities: usize) {
    pairs.section("HEADER");
    pairs.text(9, "$ACADVER");
    pairs.text(1, Version::R2000.name());
    pairs.text(9, "$DWGCODEPAGE");
    pairs.text(3, "ANSI_1252");
    pairs.text(9, "$HANDSEED");
    pairs.handle(5, FIRST_ENTITY + entities);
    units_and_extents(pairs, extent);
    pairs.end_section();
    pairs.section("CLASSES");
    pairs.end_section();
    pairs.section("TABLES");
    vport_table(pairs, extent);
    ltype_table(pairs);
    layer_table(pairs);
    table(pairs, "STYLE", STYLE_TABLE, 1);
    row(
        pairs,
        "STYLE",
        TEXT_STYLE,
        STYLE_TABLE,
        "AcDbTextStyleTableRecord",
        "Standard",
    );
    plain_lettering(pairs);
    pairs.text(0, "ENDTAB");
    table(pairs, "VIEW", VIEW_TABLE, 0);
    pairs.text(0, "ENDTAB");
    table(pairs, "UCS", UCS_TABLE, 0);
    pairs.text(0, "ENDTAB");
    table(pairs, "APPID", APPID_TABLE, 1);
    row(
        pairs,
        "APPID",
        APPLICATION,
        APPID_TABLE,
        "AcDbRegAppTableRecord",
        "ACAD",
    );
    pairs.text(0, "ENDTAB");
    dimstyle_table(pairs);
    block_record_table(pairs);
    pairs.end_section();
    pairs.section("BLOCKS");
    block(pairs, "*Model_Space", MODEL_BLOCK, MODEL_SPACE, false);
    block(pairs, "*Paper_Space", PAPER_BLOCK, PAPER_SPACE, true);
    pairs.end_section();
}

fn table(pairs: &mut Pairs, name: &str, handle: usize, count: i64) {
    pairs.text(0, "TABLE");
    pairs.text(2, name);
    pairs.handle(5, handle);
    pairs.handle(330, 0);
    pairs.text(100, "AcDbSymbolTable");
    pairs.whole(70, count);
}

/// Opens a row of a table: kind, handle, owner, classes, name and flags.
fn row(pairs: &mut Pairs, kind: &str, handle: usize, owner: usize, class: &str, name: &str) {
    pairs.text(0, kind);
    pairs.handle(if kind == "DIMSTYLE" { 105 } else { 5 }, handle);
    pairs.handle(330, owner);
    pairs.text(100, "AcDbSymbolTableRecord");
    pairs.text(100, class);
    pairs.text(2, name);
    if kind != "BLOCK_RECORD" {
        pairs.whole(70, 0);
    }
}

fn vport_table(pairs: &mut Pairs, extent: &Extent) {
    let [width, height] = extent.size();
    table(pairs, "VPORT", VPORT_TABLE, 1);
    row(
        pairs,
        "VPORT",
        ACTIVE_VIEW,
        VPORT_TABLE,
        "AcDbViewportTableRecord",
        "*Active",
    );
    let flat = |pairs: &mut Pairs, code: u16, x: f64, y: f64| {
        pairs.length(code, x);
        pairs.length(code + 10, y);
    };
    flat(pairs, 10, 0.0, 0.0);
    flat(pairs, 11, 1.0, 1.0);
    flat(
        pairs,
        12,
        (extent.low.x + extent.high.x) / 2.0,
        (extent.low.y + extent.high.y) / 2.0,
    );
    flat(pairs, 13, 0.0, 0.0);
    flat(pairs, 14, 10.0, 10.0);
    flat(pairs, 15, 10.0, 10.0);
    for (code, z) in [(16, 1.0), (17, 0.0)] {
        flat(pairs, code, 0.0, 0.0);
        pairs.length(code + 20, z);
    }
    // A tenth more than the part each way, so that it opens with its edge in sight.
    pairs.length(40, 1.2 * height.max(width));
    pairs.length(41, 1.0);
    pairs.length(42, 50.0);
    for code in [43, 44, 50, 51] {
        pairs.length(code, 0.0);
    }
    for (code, flag) in [
        (71, 0),
        (72, 100),
        (73, 1),
        (74, 3),
        (75, 0),
        (76, 0),
        (77, 0),
        (78, 0),
    ] {
        pairs.whole(code, flag);
    }
    pairs.text(0, "ENDTAB");
}

fn ltype_table(pairs: &mut Pairs) {
    table(pairs, "LTYPE", LTYPE_TABLE, 3);
    for (number, name) in ["ByBlock", "ByLayer", "Continuous"].into_iter().enumerate() {
        row(
            pairs,
            "LTYPE",
            LINE_TYPES + number,
            LTYPE_TABLE,
            "AcDbLinetypeTableRecord",
            name,
        );
        solid_line(pairs);
    }
    pairs.text(0, "ENDTAB");
}

fn layer_table(pairs: &mut Pairs) {
    table(pairs, "LAYER", LAYER_TABLE, Layer::ALL.len() as i64 + 1);
    let nought = ("0", (7, 25));
    let ours = Layer::ALL.map(|layer| (layer.name(), look(layer)));
    for (number, (name, (colour, weight))) in std::iter::once(nought).chain(ours).enumerate() {
        row(
            pairs,
            "LAYER",
            LAYERS + number,
            LAYER_TABLE,
            "AcDbLayerTableRecord",
            name,
        );
        pairs.whole(62, colour);
        pairs.text(6, "Continuous");
        pairs.whole(370, weight);
        pairs.handle(390, PLOT_STYLE);
    }
    pairs.text(0, "ENDTAB");
}

fn dimstyle_table(pairs: &mut Pairs) {
    table(pairs, "DIMSTYLE", DIMSTYLE_TABLE, 1);
    pairs.text(100, "AcDbDimStyleTable");
    pairs.whole(71, 1);
    row(
        pairs,
        "DIMSTYLE",
        DIM_STYLE,
        DIMSTYLE_TABLE,
        "AcDbDimStyleTableRecord",
        "Standard",
    );
    pairs.handle(340, TEXT_STYLE);
    pairs.text(0, "ENDTAB");
}

fn block_record_table(pairs: &mut Pairs) {
    table(pairs, "BLOCK_RECORD", BLOCK_RECORD_TABLE, 2);
    for (name, handle, layout) in [
        ("*Model_Space", MODEL_SPACE, MODEL_LAYOUT),
        ("*Paper_Space", PAPER_SPACE, PAPER_LAYOUT),
    ] {
        row(
            pairs,
            "BLOCK_RECORD",
            handle,
            BLOCK_RECORD_TABLE,
            "AcDbBlockTableRecord",
            name,
        );
        pairs.handle(340, layout);
    }
    pairs.text(0, "ENDTAB");
}

fn block(pairs: &mut Pairs, name: &str, handle: usize, owner: usize, on_paper: bool) {
    let mut open = |kind: &str, handle: usize, class: &str| {
        pairs.text(0, kind);
        pairs.handle(5, handle);
        pairs.handle(330, owner);
        pairs.text(100, "AcDbEntity");
        if on_paper {
            pairs.whole(67, 1);
        }
        pairs.text(8, "0");
        pairs.text(100, class);
        if kind == "BLOCK" {
            pairs.text(2, name);
            pairs.whole(70, 0);
            pairs.place(10, Point::CENTRE);
            pairs.text(3, name);
            pairs.text(1, "");
        }
    };
    open("BLOCK", handle, "AcDbBlockBegin");
    open("ENDBLK", handle + 1, "AcDbBlockEnd");
}

fn solid_line(pairs: &mut Pairs) {
    pairs.text(3, "");
    pairs.whole(72, 65);
    pairs.whole(73, 0);
    pairs.length(40, 0.0);
}

fn plain_lettering(pairs: &mut Pairs) {
    pairs.length(40, 0.0);
    pairs.length(41, 1.0);
    pairs.length(50, 0.0);
    pairs.whole(71, 0);
    pairs.length(42, 2.5);
    pairs.text(3, "txt");
    pairs.text(4, "");
}

/// The dictionaries that close an R2000 file.
pub(super) fn r2000_after(pairs: &mut Pairs, extent: &Extent) {
    pairs.section("OBJECTS");
    dictionary(
        pairs,
        ROOT_DICTIONARY,
        0,
        &[
            ("ACAD_GROUP", GROUP_DICTIONARY),
            ("ACAD_LAYOUT", LAYOUT_DICTIONARY),
            ("ACAD_PLOTSTYLENAME", PLOT_STYLES),
        ],
    );
    dictionary(pairs, GROUP_DICTIONARY, ROOT_DICTIONARY, &[]);
    dictionary(
        pairs,
        LAYOUT_DICTIONARY,
        ROOT_DICTIONARY,
        &[("Model", MODEL_LAYOUT), ("Layout1", PAPER_LAYOUT)],
    );
    plot_styles(pairs);
    layout(pairs, "Model", MODEL_LAYOUT, MODEL_SPACE, Some(extent));
    layout(pairs, "Layout1", PAPER_LAYOUT, PAPER_SPACE, None);
    pairs.end_section();
}

fn dictionary(pairs: &mut Pairs, handle: usize, owner: usize, entries: &[(&str, usize)]) {
    pairs.text(0, "DICTIONARY");
    pairs.handle(5, handle);
    pairs.handle(330, owner);
    pairs.text(100, "AcDbDictionary");
    pairs.whole(281, 1);
    for (name, entry) in entries {
        pairs.text(3, name);
        pairs.handle(350, *entry);
    }
}

fn plot_styles(pairs: &mut Pairs) {
    pairs.text(0, "ACDBDICTIONARYWDFLT");
    pairs.handle(5, PLOT_STYLES);
    pairs.handle(330, ROOT_DICTIONARY);
    pairs.text(100, "AcDbDictionary");
    pairs.whole(281, 1);
    pairs.text(3, "Normal");
    pairs.handle(350, PLOT_STYLE);
    pairs.text(100, "AcDbDictionaryWithDefault");
    pairs.handle(340, PLOT_STYLE);
    pairs.text(0, "ACDBPLACEHOLDER");
    pairs.handle(5, PLOT_STYLE);
    pairs.handle(330, PLOT_STYLES);
}

/// A layout: the model's own, with the part's extents, and the one of paper that every file must have, which is empty.
fn layout(pairs: &mut Pairs, name: &str, handle: usize, space: usize, extent: Option<&Extent>) {
    let (low, high) = extent.map_or((Point::CENTRE, Point::new(420.0, 297.0)), |e| {
        (e.low, e.high)
    });
    let model = extent.is_some();
    pairs.text(0, "LAYOUT");
    pairs.handle(5, handle);
    pairs.handle(330, LAYOUT_DICTIONARY);
    pairs.text(100, "AcDbPlotSettings");
    for code in [1, 2, 4, 6] {
        pairs.text(code, "");
    }
    for (code, mm) in [
        (40, 0.0),
        (41, 0.0),
        (42, 0.0),
        (43, 0.0),
        (44, 420.0),
        (45, 297.0),
        (46, 0.0),
        (47, 0.0),
        (48, 0.0),
        (49, 0.0),
        (140, 0.0),
        (141, 0.0),
        (142, 1.0),
        (143, 1.0),
    ] {
        pairs.length(code, mm);
    }
    // Flag 1024 marks the model's own settings; paper units 1 are millimetres.
    for (code, flag) in [
        (70, if model { 1024 } else { 0 }),
        (72, 1),
        (73, 0),
        (74, 5),
    ] {
        pairs.whole(code, flag);
    }
    pairs.text(7, "");
    pairs.whole(75, 16);
    for (code, mm) in [(147, 1.0), (148, 0.0), (149, 0.0)] {
        pairs.length(code, mm);
    }
    pairs.text(100, "AcDbLayout");
    pairs.text(1, name);
    pairs.whole(70, 1);
    pairs.whole(71, i64::from(!model));
    for (code, corner) in [(10, low), (11, high)] {
        pairs.length(code, corner.x);
        pairs.length(code + 10, corner.y);
    }
    pairs.place(12, Point::CENTRE);
    pairs.place(14, low);
    pairs.place(15, high);
    pairs.length(146, 0.0);
    pairs.place(13, Point::CENTRE);
    pairs.place(16, Point::new(1.0, 0.0));
    pairs.place(17, Point::new(0.0, 1.0));
    pairs.whole(76, 0);
    pairs.handle(330, space);
}
