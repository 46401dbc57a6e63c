//! What a sewer or a pattern cutter would notice.

mod pockets;
mod seams;

use draft::Finding;

use crate::context::Context;
use crate::garment::Fixing;

pub(crate) fn check(context: &Context<'_>, fixings: &[Fixing], findings: &mut Vec<Finding>) {
    findings.extend(seams::findings(context));
    findings.extend(pockets::findings(context));
    findings.extend(pockets::loops_under_patch(context, fixings));
}
