//! One lay of one pair on each cloth, always the same.

use std::collections::BTreeMap;
use std::sync::atomic::AtomicBool;

use cutting::{SizePairs, Spread, SpreadRules, Way};
use lay::{Lay, Limits, Options, search};
use style::Cloth;
use trade::Length;

use super::Context;

/// How many places are tried for each lay: a count, not a time, so that the same style gives the same
/// pack. About a fifth of a second.
const PLACES: u64 = 30_000;

/// Where chance starts.
const SEED: u64 = 1;

/// The lay of one cloth.
pub(super) struct ClothLay<'a> {
    /// The cloth's name in the collection.
    pub key: &'a str,
    pub cloth: &'a Cloth,
    pub spread: Spread,
    /// The lay, or why there is none.
    pub lay: Result<Lay, String>,
}

impl ClothLay<'_> {
    /// The cloth one pair takes.
    pub fn length(&self) -> Option<Length> {
        self.lay.as_ref().ok().map(|lay| lay.length)
    }
}

/// A lay for every cloth that pieces are cut from, in the order of the pieces.
pub(super) fn lays<'a>(context: &Context<'a>) -> Vec<ClothLay<'a>> {
    let mut seen: BTreeMap<&str, ()> = BTreeMap::new();
    let mut out = Vec::new();
    for piece in &context.cut.pieces {
        let cloths = &context.loaded.collection.cloths;
        let Some((key, cloth)) = cloths.get_key_value(piece.cloth_name.as_str()) else {
            continue;
        };
        if seen.insert(key, ()).is_some() {
            continue;
        }
        let size = context.cut.size.to_string();
        let pairs = SizePairs {
            label: &size,
            cut: &context.cut,
            pairs: 1,
        };
        let rules = SpreadRules::plain(Way::TwoWay, Length::ZERO);
        let spread = Spread::new(&[pairs], key, cloth, &rules);
        let options = Options {
            seed: SEED,
            limits: Limits {
                time: None,
                places: Some(PLACES),
            },
            ..Options::default()
        };
        let found = search(
            &spread.problem,
            &options,
            &AtomicBool::new(false),
            &mut |_| (),
        );
        out.push(ClothLay {
            key,
            cloth,
            spread,
            lay: found.map_err(|why| why.to_string()),
        });
    }
    out
}
