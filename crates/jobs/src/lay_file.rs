//! A lay as a file: for other programs, or drawn.

use cut_sheets::LayMarks;
use cutting::Spread;
use lay::Lay;
use papers::PatternHead;
use style::Cloth;
use trade::System;
use words::Words;

use crate::error::JobError;

/// What kind of file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LayKind {
    /// For cutting programs, in true millimetres.
    Dxf,
    /// One page to scale.
    Pdf,
    /// Drawn, one unit to the millimetre.
    Svg,
}

/// A lay with what it lies on and what is marked on it.
#[derive(Clone, Copy, Debug)]
pub struct LaidOut<'a> {
    /// The label, for the PDF's author.
    pub label: &'a str,
    /// The style or order, for its title.
    pub of: &'a str,
    /// The pieces.
    pub spread: &'a Spread,
    /// Where they lie.
    pub lay: &'a Lay,
    /// The cloth.
    pub cloth: &'a Cloth,
    /// What is marked besides.
    pub marks: &'a LayMarks,
    /// What lengths are written in.
    pub system: System,
}

/// The file of a lay, in the words of whoever it is for.
///
/// # Errors
/// [`JobError::Paper`] when the page cannot be set.
pub fn lay_file(kind: LayKind, laid: &LaidOut<'_>, words: &Words) -> Result<Vec<u8>, JobError> {
    let sheet = || {
        let read = (words, laid.system);
        cut_sheets::lay_sheet(laid.spread, laid.lay, laid.cloth, laid.marks, read)
    };
    Ok(match kind {
        LayKind::Dxf => patterns::dxf::write_lay(laid.spread, laid.lay, words).into_bytes(),
        LayKind::Svg => drawing::svg(&sheet()).into_bytes(),
        LayKind::Pdf => {
            let head = PatternHead {
                collection: laid.label.to_owned(),
                style: laid.of.to_owned(),
                ..PatternHead::default()
            };
            papers::lay_pdf(&sheet(), &head)?
        }
    })
}
