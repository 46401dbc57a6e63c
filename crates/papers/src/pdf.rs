//! From a pack, or another job, to the bytes of its PDF.

use jiff::civil::Date;
use serde::Serialize;
use typst::diag::SourceDiagnostic;
use typst::foundations::{Datetime, Smart};
use typst_layout::PagedDocument;
use typst_pdf::Timestamp;

use crate::typeset::{Job, PressWorld, job};
use crate::{Pack, PaperError};

/// What a pack's PDF needs to know beyond the pack.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct PdfOptions {
    /// The date printed on every page and written to the PDF's metadata. `None` prints none.
    /// It is always given, never read from a clock, so that the same pack gives the same bytes.
    pub date: Option<Date>,
}

/// The layout of the pack.
const LAYOUT: &str = "/pack.typ";

/// How many printings typst's memory of earlier layouts is kept for.
const REMEMBERED_PRINTINGS: usize = 4;

#[derive(Serialize)]
struct Root<'a> {
    #[serde(flatten)]
    pack: &'a Pack,
    date: String,
}

/// Sets `pack` in type and returns the bytes of a tagged PDF.
///
/// # Errors
/// [`PaperError::NoStyleName`] if the style has no name; [`PaperError::Drawing`] if a drawing is not
/// SVG that can be read; [`PaperError::Layout`] and [`PaperError::Write`] if typst fails otherwise.
pub fn pack_pdf(pack: &Pack, options: &PdfOptions) -> Result<Vec<u8>, PaperError> {
    if pack.style.name.trim().is_empty() {
        return Err(PaperError::NoStyleName);
    }
    let date = options.date.map(long_date).unwrap_or_default();
    let root = Root { pack, date };
    let job = job(LAYOUT, &root).map_err(|error| PaperError::Layout(error.to_string()))?;
    let style = &pack.style;
    let edition = Edition {
        ident: format!("{} {} {}", style.collection, style.code, style.revision),
        date: options.date,
    };
    print(job, &edition)
}

/// What the PDF says of itself beyond its title.
pub(crate) struct Edition {
    /// What tells this document from others.
    pub ident: String,
    /// The date in its metadata.
    pub date: Option<Date>,
}

/// "4 March 2026".
pub(crate) fn long_date(date: Date) -> String {
    date.strftime("%-d %B %Y").to_string()
}

/// Sets a job in type.
pub(crate) fn print(job: Job, edition: &Edition) -> Result<Vec<u8>, PaperError> {
    let world = PressWorld::new(job)
        .ok_or_else(|| PaperError::Layout("a layout file has no valid path".to_owned()))?;
    let document = typst::compile::<PagedDocument>(&world)
        .output
        .map_err(layout_error)?;
    let bytes = typst_pdf::pdf(&document, &pdf_options(edition))
        .map_err(|errors| PaperError::Write(first_message(&errors)));
    typst::comemo::evict(REMEMBERED_PRINTINGS);
    bytes
}

fn pdf_options(edition: &Edition) -> typst_pdf::PdfOptions {
    let midnight = edition.date.and_then(|date| {
        Datetime::from_ymd_hms(
            i32::from(date.year()),
            u8::try_from(date.month()).ok()?,
            u8::try_from(date.day()).ok()?,
            0,
            0,
            0,
        )
    });
    typst_pdf::PdfOptions {
        ident: Smart::Custom(edition.ident.clone()),
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
