//! The production pack of a style as it is on disk.

use std::sync::atomic::AtomicBool;

use jiff::civil::Date;
use papers::{Assembly, PdfOptions};
use style::{Change, Loaded, Size};

use crate::asked::{size_of, wanted};
use crate::error::JobError;

/// What pack is made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PackOrder {
    /// The size that is drawn and counted; `None` is the base size.
    pub size: Option<Size>,
    /// The date printed on it.
    pub date: Date,
}

/// How far a pack is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PackStage {
    /// So many of all sizes are drafted and sewn.
    Sizes(usize, usize),
    /// So many of all cloths are laid.
    Lays(usize, usize),
    /// The pages are set in type. This is done in one go and cannot be cancelled half way.
    Pages,
}

/// A pack that was made.
#[derive(Clone, Debug, PartialEq)]
pub struct MadePack {
    /// The PDF.
    pub pdf: Vec<u8>,
    /// How many pages it has.
    pub pages: usize,
    /// Its parts, each with the page on which it begins, from 1.
    pub parts: Vec<(String, usize)>,
    /// How many of its findings are errors. They do not hold it back; they are printed in it.
    pub errors: usize,
    /// The number of the version it shows.
    pub revision: u32,
}

/// Makes the pack.
///
/// # Errors
/// The size is unknown, earlier versions cannot be listed, the pages cannot be set, or it was cancelled.
pub fn pack(
    loaded: &Loaded,
    order: &PackOrder,
    cancel: &AtomicBool,
    tell: &mut dyn FnMut(PackStage),
) -> Result<MadePack, JobError> {
    let size = size_of(&loaded.style, order.size)?;
    let (revision, changes) = history(loaded)?;
    let sizes: Vec<Size> = loaded.style.sizes.all().collect();
    let mut run = Vec::with_capacity(sizes.len());
    for size in &sizes {
        wanted(cancel)?;
        tell(PackStage::Sizes(run.len(), sizes.len()));
        run.push(sewing::make(&loaded.style, &loaded.collection, *size));
    }
    let assembly = Assembly {
        size: Some(size),
        revision,
        changes,
    };
    let lays = &mut |done, of| tell(PackStage::Lays(done, of));
    let pack = papers::assemble_watched(loaded, &run, &assembly, cancel, lays)?;
    wanted(cancel)?;
    tell(PackStage::Pages);
    let date = Some(order.date);
    let book = papers::pack_book(&pack, &PdfOptions { date })?;
    wanted(cancel)?;
    let is_error = |finding: &&papers::FindingRow| finding.severity == papers::Severity::Error;
    Ok(MadePack {
        pdf: book.pdf,
        pages: book.pages,
        parts: book.parts,
        errors: pack.findings.iter().filter(is_error).count(),
        revision,
    })
}

/// The number of the version on disk, and what differs from the one before it.
fn history(loaded: &Loaded) -> Result<(u32, Vec<Change>), JobError> {
    let revisions = style::list_revisions(loaded.folder()).map_err(|why| JobError::Revisions {
        folder: loaded.folder().to_path_buf(),
        why,
    })?;
    let Some(last) = revisions.last() else {
        return Ok((1, Vec::new()));
    };
    // An earlier version may name what the collection no longer has; then its changes cannot be told.
    let before = style::read_revision(last)
        .and_then(|text| loaded.with_text(&text))
        .ok();
    let changes = before.map_or_else(Vec::new, |before| {
        style::difference(&before.style, &loaded.style)
    });
    Ok((last.number.saturating_add(1), changes))
}
