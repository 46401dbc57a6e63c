//! From sewn garments to a filled [`Pack`]: every figure, word and drawing of the production pack.

mod back_pockets;
mod by_size;
mod cautions;
mod chart;
mod chart_basis;
mod checks;
mod construction;
mod context;
mod cover;
mod cut;
mod figures;
mod findings;
mod lays;
mod materials;
mod open;
mod order;
mod pack_words;
mod pieces;
mod shrinkage;
mod spreading;
mod supply;
mod trims;
mod wash;
mod words;
mod yarn;
mod yarn_on_cloth;

use std::sync::atomic::AtomicBool;

use sewing::{Garment, make};
use style::Loaded;

use crate::{OpenPart, Pack, PaperError};
pub use context::Assembly;
use context::{Context, Growth};
pub(crate) use findings::by_name;
use words::Words;
pub(crate) use words::{Words as Quantities, capital, joined};

/// Fills a pack from a style and its garments in every size.
///
/// Figures are rounded once, here: centimetres to a tenth, inches to a sixteenth where that is exact,
/// in the collection's units. Drawings and counts are those of one size.
///
/// # Errors
/// [`PaperError::Drawing`] when a drawing states no usable size.
pub fn assemble(loaded: &Loaded, run: &[Garment], assembly: &Assembly) -> Result<Pack, PaperError> {
    let never = AtomicBool::new(false);
    assemble_watched(loaded, run, assembly, &never, &mut |_, _| ())
}

/// As [`assemble`], for somebody who waits: `tell` hears how many of how many lays are found, and setting
/// `cancel` ends it.
///
/// # Errors
/// As [`assemble`], and [`PaperError::Cancelled`].
pub fn assemble_watched(
    loaded: &Loaded,
    run: &[Garment],
    assembly: &Assembly,
    cancel: &AtomicBool,
    tell: &mut dyn FnMut(usize, usize),
) -> Result<Pack, PaperError> {
    let size = assembly
        .size
        .filter(|size| loaded.style.sizes.contains(*size))
        .unwrap_or(loaded.style.sizes.base);
    // A run that lacks the size is completed, so that there is always a garment to draw.
    let made;
    let shown = match run.iter().find(|garment| garment.size == size) {
        Some(garment) => garment,
        None => {
            made = make(&loaded.style, &loaded.collection, size);
            &made
        }
    };
    let plan = cut::plan(loaded);
    let context = Context {
        loaded,
        run,
        shown,
        sewn: shown.as_sewn(),
        cut: cutting::cut(shown, &plan),
        growth: Growth::of(&loaded.style, run, &plan),
        words: Words::of(&loaded.collection),
        say: ::words::Words::english(),
    };
    let lays = lays::lays(&context, cancel, tell)?;
    let other_sizes = lays::of_other_sizes(&context, cancel)?;
    let figures = figures::figures(&context)?;
    let mut pack = Pack {
        style: cover::head(&context, assembly),
        words: pack_words::pack_words(&context),
        cover: cover::cover(&context)?,
        changes: findings::changes(&assembly.changes, context.say, context.words.system),
        chart: chart::chart(&context),
        chart_in_other_state: chart::in_other_state(&context),
        diagrams: figures.diagrams,
        order_note: order::note(&context),
        order_asks: order::asks(&context),
        order: order::order(&context),
        construction_note: construction::note(&context),
        seams: construction::seams(&context)?,
        yarn: yarn::part(&context)?,
        plates: figures.plates,
        views: figures.views,
        pieces_note: pieces::note(&context),
        pieces: pieces::pieces(&context)?,
        piece_sheets: figures.piece_sheets,
        cutting: cut::part(&context, &lays, &other_sizes)?,
        materials_note: materials::note(&context),
        materials: materials::materials(&context, &lays),
        by_size: by_size::tables(&context, &lays, &other_sizes),
        checks: checks::checks(&context),
        findings: findings::findings(&context),
        cautions: cautions::cautions(&context),
        why: findings::why(&context),
        open: OpenPart::default(),
    };
    pack.open = open::list(&context, &pack);
    pack.findings.extend(findings::unprintable(&context, &pack));
    Ok(pack)
}
