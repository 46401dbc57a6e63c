//! From a pack to the bytes of its PDF.

use typst::diag::SourceDiagnostic;
use typst::foundations::{Datetime, Smart};
use typst_layout::PagedDocument;
use typst_pdf::Timestamp;

use crate::typeset::{PackWorld, files};
use crate::{Pack, PaperError};

/// What a pack's PDF needs to know beyond the pack.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct PdfOptions {
    /// The date printed on every page and written to the PDF's metadata. `None` prints none.
    /// It is always given, never read from a clock, so that the same pack gives the same bytes.
    pub date: Option<jiff::civil::Date>,
}

/// How many printings typst's memory of earlier layouts is kept for.
const REMEMBERED_PRINTINGS: usize = 4;

/// Sets `pack` in type and returns the bytes of a tagged PDF.
///
/// # Errors
/// [`PaperError::NoStyleName`] if the style has no name; [`PaperError::Drawing`] if a drawing is not
/// SVG that can be read; [`PaperError::Layout`] and [`PaperError::Write`] if typst fails otherwise.
pub fn pack_pdf(pack: &Pack, options: &PdfOptions) -> Result<Vec<u8>, PaperError> {
    if pack.style.name.trim().is_empty() {
        return Err(PaperError::NoStyleName);
    }
    let data = files(pack, options).map_err(|error| PaperError::Layout(error.to_string()))?;
    let world = PackWorld::new(data)
        .ok_or_else(|| PaperError::Layout("a layout file has no valid path".to_owned()))?;
    let document = typst::compile::<PagedDocument>(&world)
        .output
        .map_err(layout_error)?;
    let bytes = typst_pdf::pdf(&document, &pdf_options(pack, options))
        .map_err(|errors| PaperError::Write(first_message(&errors)));
    typst::comemo::evict(REMEMBERED_PRINTINGS);
    bytes
}

fn pdf_options(pack: &Pack, options: &PdfOptions) -> typst_pdf::PdfOptions {
    let midnight = options.date.and_then(|date| {
        Datetime::from_ymd_hms(
            i32::from(date.year()),
            u8::try_from(date.month()).ok()?,
            u8::try_from(date.day()).ok()?,
            0,
            0,
            0,
        )
    });
    let style = &pack.style;
    typst_pdf::PdfOptions {
        ident: Smart::Custom(format!(
            "{} {} {}",
            style.collection, style.code, style.revision
        )),
        creator: Smart::Custom(Some("Fellwork".to_owned())),
        timestamp: midnight.map(Timestamp::new_utc),
        ..typst_pdf::PdfOptions::default()
    }
}

fn layout_error(errors: impl AsRef<[SourceDiagnostic]>) -> PaperError {
    let message = first_message(errors.as_ref());
    if message.contains("SVG") {
        PaperError::Drawing {
            place: "a drawing".to_owned(),
            reason: message,
        }
    } else {
        PaperError::Layout(message)
    }
}

fn first_message(errors: &[SourceDiagnostic]) -> String {
    errors.first().map_or_else(
        || "no reason given".to_owned(),
        |error| error.message.to_string(),
    )
}
