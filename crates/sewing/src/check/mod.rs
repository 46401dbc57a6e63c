//! What a sewer or a pattern cutter would notice.

mod closing;
mod pockets;
mod seams;
mod selvedge;
mod yarns;

use draft::Finding;

use crate::context::Context;
use crate::garment::Fixing;

/// What the style says, against cloth, yarns and usual practice.
pub(crate) fn document(context: &Context<'_>) -> Vec<Finding> {
    let mut out = seams::findings(context);
    out.extend(yarns::findings(context));
    out.extend(closing::findings(context));
    out
}

/// How the pieces come out.
pub(crate) fn pieces(context: &Context<'_>, fixings: &[Fixing]) -> Vec<Finding> {
    let mut out = pockets::findings(context);
    out.extend(pockets::loops_under_patch(context, fixings));
    out.extend(selvedge::findings(context));
    out
}
