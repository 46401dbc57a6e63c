//! What every part of the sewing looks at, and how it reports.

use draft::{Finding, Pattern, Severity};
use style::{Collection, Seam, SeamId, Size, StyleDoc, Subject};
use trade::yarn::YarnBuild;
use trade::{Colour, YarnSize};
use words::{Said, key};

use crate::garment::{Garment, RowYarn};

/// One size of one style while it is being sewn.
pub(crate) struct Context<'a> {
    pub doc: &'a StyleDoc,
    pub collection: &'a Collection,
    pub size: Size,
    pub pattern: &'a Pattern,
    pub seams: &'a [Seam],
}

/// Colour of what has none because its name is unknown.
const UNKNOWN_COLOUR: Colour = Colour::rgb(0x80, 0x80, 0x80);

impl<'a> Context<'a> {
    /// A size that is sewn already, to look at it once more.
    pub fn of(garment: &'a Garment) -> Context<'a> {
        Context {
            doc: &garment.doc,
            collection: &garment.collection,
            size: garment.size,
            pattern: &garment.pattern,
            seams: &garment.seams,
        }
    }
}

impl Context<'_> {
    /// A seam of the style.
    pub fn seam(&self, id: SeamId) -> Option<&Seam> {
        self.seams.iter().find(|s| s.id == id)
    }

    /// A yarn as a row shows it; one that is not in the collection is grey and of tex 60.
    pub fn yarn(&self, key: &str) -> RowYarn {
        let (colour, diameter) = match self.collection.yarns.get(key) {
            Some(yarn) => (yarn.colour, build_of(&yarn.fibre).diameter(yarn.size)),
            None => (UNKNOWN_COLOUR, trade::yarn_diameter(YarnSize::tex(60.0))),
        };
        RowYarn {
            key: key.to_owned(),
            colour,
            diameter,
        }
    }

    /// The colour of a trim; grey when it is not in the collection.
    pub fn trim_colour(&self, key: &str) -> Colour {
        self.collection
            .trims
            .get(key)
            .map_or(UNKNOWN_COLOUR, |t| t.colour)
    }
}

/// How a yarn is built, from the words for its fibre; corespun where they do not say.
fn build_of(fibre: &str) -> YarnBuild {
    let fibre = fibre.to_lowercase();
    if fibre.contains("corespun") || fibre.contains("core-spun") {
        YarnBuild::Corespun
    } else if fibre.contains("spun polyester") {
        YarnBuild::SpunPolyester
    } else if fibre.contains("filament") || fibre.contains("bonded") {
        YarnBuild::BondedFilament
    } else if fibre.contains("cotton") && !fibre.contains("polyester") {
        YarnBuild::Cotton
    } else {
        YarnBuild::Corespun
    }
}

/// A finding of this size from common practice.
pub(crate) fn finding(
    context: &Context<'_>,
    code: &'static str,
    severity: Severity,
    subject: impl Into<Subject>,
    message: impl Into<Said>,
) -> Finding {
    Finding::new(
        code,
        severity,
        subject,
        message,
        key::SOURCE_COMMON_PRACTICE,
    )
    .of_size(context.size)
}

/// The finding with what would help.
pub(crate) fn with_remedy(finding: Finding, remedy: impl Into<Said>) -> Finding {
    Finding {
        remedy: Some(remedy.into()),
        ..finding
    }
}
