//! The folder that is handed over: sheets, cut files, tables, page, results and manifest, written whole or not at all.
