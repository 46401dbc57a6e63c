//! Everything set at a place: buttons and rivets, bartacks and belt loops, patch and labels.

mod hardware;
mod labels;
mod setting;
mod tacks;

use draft::Finding;

use crate::context::Context;
use crate::garment::Fixing;

pub use labels::label_below_band;
pub(crate) use labels::{OnBand, labels_on_band, patch_on_band};
pub(crate) use setting::{BAND_HOLE_FROM_END, FLY_HOLE_FROM_EDGE, HOLE_TO_ROW, fly_eye};

pub(crate) fn fixings(context: &Context<'_>, findings: &mut Vec<Finding>) -> Vec<Fixing> {
    let mut out = Vec::new();
    out.extend(tacks::loops(context));
    out.extend(tacks::bartacks(context));
    out.extend(hardware::rivets(context));
    out.extend(hardware::buttons(context));
    out.extend(labels::patch(context, findings));
    out.extend(labels::labels(context, findings));
    out.retain(|f| f.at.is_finite());
    out
}
