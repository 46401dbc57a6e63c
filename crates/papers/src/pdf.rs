//! From a pack, or another job, to the bytes of its PDF.

use jiff::civil::Date;
use serde::Serialize;
use typst::diag::SourceDiagnostic;
use typst::foundations::{Content, Datetime, NativeElement, Smart, StyleChain};
use typst::introspection::Introspector;
use typst::model::HeadingElem;
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
    Ok(pack_book(pack, options)?.pdf)
}

/// A PDF, and what is found where in it.
#[derive(Debug, Clone, PartialEq)]
pub struct Book {
    /// The PDF.
    pub pdf: Vec<u8>,
    /// How many pages it has.
    pub pages: usize,
    /// Its parts in order: what each is headed, and the page on which it begins, from 1.
    pub parts: Vec<(String, usize)>,
}

/// As [`pack_pdf`], saying also what is found where.
///
/// # Errors
/// As [`pack_pdf`].
pub fn pack_book(pack: &Pack, options: &PdfOptions) -> Result<Book, PaperError> {
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
    book(job, &edition)
}

/// The program that every PDF names as its creator.
pub(crate) const CREATOR: &str = "Fellwork";

/// Whether these are the bytes of a PDF that was printed here.
#[must_use]
pub fn is_our_pdf(bytes: &[u8]) -> bool {
    let named = format!("/Creator({CREATOR})");
    bytes.starts_with(b"%PDF-")
        && bytes
            .windows(named.len())
            .any(|part| part == named.as_bytes())
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
    Ok(book(job, edition)?.pdf)
}

pub(crate) fn book(job: Job, edition: &Edition) -> Result<Book, PaperError> {
    let world = PressWorld::new(job)
        .ok_or_else(|| PaperError::Layout("a layout file has no valid path".to_owned()))?;
    let document = typst::compile::<PagedDocument>(&world)
        .output
        .map_err(layout_error)?;
    let bytes = typst_pdf::pdf(&document, &pdf_options(edition))
        .map_err(|errors| PaperError::Write(first_message(&errors)));
    typst::comemo::evict(REMEMBERED_PRINTINGS);
    Ok(Book {
        pdf: bytes?,
        pages: document.pages().len(),
        parts: parts(&document),
    })
}

/// The headings of the first level, each with its page.
fn parts(document: &PagedDocument) -> Vec<(String, usize)> {
    let introspector = document.introspector();
    let headings = introspector.query(&HeadingElem::ELEM.select());
    let first = |heading: &Content| {
        let packed = heading.to_packed::<HeadingElem>()?;
        let level = packed.resolve_level(StyleChain::default());
        (level.get() == 1).then(|| packed.body.plain_text().to_string())
    };
    let at = |heading: &Content| Some(introspector.page(heading.location()?)?.get());
    let parts = headings
        .iter()
        .filter_map(|heading| Some((first(heading)?, at(heading)?)));
    parts.collect()
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
        creator: Smart::Custom(Some(CREATOR.to_owned())),
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
