//! What changed between two versions of a style, as data: what each change is about, what it was and what it is. Words
//! are made of it where somebody reads them ([`Change::said`]), in that reader's language and units.

mod change;
mod chart;
mod found;
mod hardware;
mod identity;
mod labels;
mod making;
mod middle;
mod muted;
mod names;
mod pattern;
mod pockets;
mod said;
mod seams;
mod shape;
mod value;
mod why;

pub use change::{Change, Kind, Part};
pub use said::{Columns, ToldChange};
pub use value::{PocketValue, Value, Written};

use crate::StyleDoc;
use found::Found;

/// What changed from one version to another, in the order of a style file.
///
/// A style differs from itself in nothing.
#[must_use]
pub fn difference(old: &StyleDoc, new: &StyleDoc) -> Vec<Change> {
    let mut found = Found::default();
    identity::style(&mut found, &old.style, &new.style);
    identity::sizes(&mut found, &old.sizes, &new.sizes);
    identity::cloth(&mut found, &old.cloth, &new.cloth);
    chart::chart(&mut found, old, new);
    shape::shape(&mut found, &old.shape, &new.shape);
    making::fly(&mut found, &old.fly, &new.fly);
    making::band(&mut found, &old.band, &new.band);
    pockets::pockets(&mut found, &old.pockets, &new.pockets);
    making::hem(&mut found, &old.hem, &new.hem);
    hardware::loops(&mut found, &old.loops, &new.loops);
    hardware::rivets(&mut found, old.rivets.as_ref(), new.rivets.as_ref());
    hardware::patch(&mut found, old.patch.as_ref(), new.patch.as_ref());
    labels::labels(&mut found, &old.labels, &new.labels);
    seams::seams(&mut found, old, new);
    making::bartacks(&mut found, &old.bartacks, &new.bartacks);
    pattern::pattern(&mut found, old.pattern.as_ref(), new.pattern.as_ref());
    making::cutting(&mut found, &old.cutting, &new.cutting);
    making::wash(&mut found, old.wash.as_ref(), new.wash.as_ref());
    why::why(&mut found, &old.why, &new.why);
    muted::muted(&mut found, &old.muted, &new.muted);
    found.changes
}
