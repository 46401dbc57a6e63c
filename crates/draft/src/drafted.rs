//! One size drafted: its pieces, and why the chart cannot be met where it cannot.

use style::{Size, StyleDoc};

use crate::block::Shape;
use crate::conflict::Conflict;
use crate::fit::{Fitted, fit};
use crate::layout::{Marks, Mouth, pieces};
use crate::own::own_pattern;
use crate::pattern::{Pattern, Proportions, proportions};
use crate::spec::Spec;

/// A drafted size: always pieces, and the conflict if the chart cannot be met.
#[derive(Clone, Debug)]
pub struct Drafted {
    /// The pieces, as near to the chart as they could be brought.
    pub pattern: Pattern,
    /// Why the chart cannot be drafted, if it cannot.
    pub conflict: Option<Conflict>,
    /// Why the maker's own pattern could not be used, if it could not; the pieces are then drafted from the chart.
    pub unused: Option<String>,
}

/// Solves one size.
pub fn draft(spec: &Spec) -> Drafted {
    let fitted = fit(spec);
    let conflict = (!fitted.holds()).then(|| Conflict {
        reason: fitted.reason(),
    });
    Drafted {
        pattern: pattern_of(spec, &fitted),
        conflict,
        unused: None,
    }
}

/// One size of a style: from the panels the maker brought where there are any, else solved from its chart.
pub fn draft_style(doc: &StyleDoc, size: Size) -> Drafted {
    let spec = Spec::of(doc, size);
    let Some(own) = &doc.pattern else {
        return draft(&spec);
    };
    match own_pattern(&spec, own, size) {
        Ok(pattern) => Drafted {
            pattern,
            conflict: None,
            unused: None,
        },
        Err(why) => Drafted {
            unused: Some(why),
            ..draft(&spec)
        },
    }
}

/// The proportions of the textbook shape the fit starts from, before any measure is met.
pub fn starting_proportions(spec: &Spec) -> Proportions {
    proportions(&Shape::first(spec))
}

fn pattern_of(spec: &Spec, fitted: &Fitted) -> Pattern {
    let block = &fitted.block;
    Pattern {
        spec: spec.clone(),
        pieces: pieces(spec, block, &Marks::on(block), &Mouth::on(spec, block)),
        proportions: proportions(&fitted.shape),
        own: None,
    }
}
