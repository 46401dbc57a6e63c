//! `fellwork pack`: the production pack as PDF.

use std::path::Path;

use jiff::civil::Date;
use papers::{Assembly, PdfOptions};
use style::{Change, Loaded, Size, Units};
use trade::System;

use crate::args::Pack;
use crate::command::{load, size_of};
use crate::exit::Exit;
use crate::trouble::Trouble;
use crate::{files, printed};

pub fn run(asked: &Pack) -> Result<Exit, Trouble> {
    let loaded = load(&asked.style)?;
    let size = size_of(&loaded.style, asked.size)?;
    make(
        &loaded,
        Some(size),
        asked.date.unwrap_or_else(today),
        &asked.output,
    )?;
    if !files::is_printed(&asked.output) {
        printed::to_stdout(format!("{} is written\n", asked.output.display()))?;
    }
    Ok(Exit::Done)
}

/// Today's date where the maker is.
pub fn today() -> Date {
    jiff::ZonedDateTime::now().date()
}

/// Makes the pack of a style and writes it. Errors among its findings do not hold it back: they are
/// printed in it, and told here.
pub fn make(loaded: &Loaded, size: Option<Size>, date: Date, output: &Path) -> Result<(), Trouble> {
    let (revision, changes) = history(loaded)?;
    let run = sewing::make_run(&loaded.style, &loaded.collection);
    let assembly = Assembly {
        size,
        revision,
        changes,
    };
    let pack = papers::assemble(loaded, &run, &assembly)?;
    let pdf = papers::pack_pdf(&pack, &PdfOptions { date: Some(date) })?;
    files::write(output, &pdf)?;
    let errors = pack
        .findings
        .iter()
        .filter(|finding| finding.severity == papers::Severity::Error)
        .count();
    if errors > 0 {
        printed::to_stderr(&format!(
            "{} finding{} of grade error stand{} in the pack; fellwork check tells them\n",
            errors,
            if errors == 1 { "" } else { "s" },
            if errors == 1 { "s" } else { "" }
        ));
    }
    Ok(())
}

/// The number of the version on disk, and what differs from the one before it.
fn history(loaded: &Loaded) -> Result<(u32, Vec<Change>), Trouble> {
    let revisions = style::list_revisions(loaded.folder()).map_err(|why| Trouble::Revisions {
        folder: loaded.folder().to_path_buf(),
        why,
    })?;
    let Some(last) = revisions.last() else {
        return Ok((1, Vec::new()));
    };
    let system = match loaded.collection.units {
        Units::Centimetres => System::Metric,
        Units::Inches => System::Inch,
    };
    // An earlier version may name what the collection no longer has; then its changes cannot be told.
    let before = style::read_revision(last)
        .and_then(|text| loaded.with_text(&text))
        .ok();
    let changes = before.map_or_else(Vec::new, |before| {
        style::difference_in(&before.style, &loaded.style, system)
    });
    Ok((last.number.saturating_add(1), changes))
}
