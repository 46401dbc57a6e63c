//! The seams of a style with what they take from others filled in.

use crate::ids::SeamId;
use crate::known;
use crate::seams::{Lap, Seam, SeamSpec};

use super::StyleDoc;

impl StyleDoc {
    /// A seam with everything it takes from its `like` filled in; `None` when the style has no such seam.
    ///
    /// A lap not stated on the way, or stated for plies this seam does not join, is the seam's usual one.
    #[must_use]
    pub fn seam(&self, id: SeamId) -> Option<Seam> {
        let known = known::seam(id);
        let chain = self.like_chain(id);
        let construction = chain.iter().find_map(|spec| spec.construction)?;
        let rows = chain.iter().find_map(|spec| spec.rows.clone())?;
        let lap = known
            .usual_lap
            .filter(|_| construction.is_lapped())
            .map(|usual| {
                let joins = |lap: &Lap| known.joins(*lap);
                chain
                    .iter()
                    .filter_map(|spec| spec.lap)
                    .find(joins)
                    .unwrap_or(usual)
            });
        Some(Seam {
            id,
            construction,
            lap,
            rows,
        })
    }

    /// Every seam of the style, resolved, in the file's order.
    pub fn all_seams(&self) -> impl Iterator<Item = Seam> + '_ {
        self.seams.keys().filter_map(|id| self.seam(*id))
    }

    /// The seam and those it is like, nearest first; ends where one is missing or comes round again.
    fn like_chain(&self, id: SeamId) -> Vec<&SeamSpec> {
        let mut met = Vec::new();
        let mut chain = Vec::new();
        let mut next = Some(id);
        while let Some(id) = next {
            let Some(spec) = self.seams.get(&id).filter(|_| !met.contains(&id)) else {
                break;
            };
            met.push(id);
            chain.push(spec);
            next = spec.like;
        }
        chain
    }
}
