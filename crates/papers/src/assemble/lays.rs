//! A lay of one pair on each cloth, and of the smallest and the largest on the shell, always the same.

use std::collections::VecDeque;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Mutex, MutexGuard, PoisonError};

use cutting::{CutSize, SizePairs, Spread, SpreadRules, Way};
use lay::{Lay, Limits, Options, Problem, search};
use style::Cloth;
use trade::Length;

use super::context::Context;
use crate::PaperError;

/// How many places are tried for each lay: a count, not a time, so that the same style gives the same
/// pack. About a fifth of a second.
const PLACES: u64 = 300_000;

/// The lays of the last packs that were filled, the newest last.
///
/// A lay follows from its problem alone, as the number of places is given and the chance too, so what is kept here changes
/// no byte: a maker who prints again after a change of words does not wait for it again.
struct Known(Mutex<VecDeque<(Problem, Lay)>>);

static KNOWN: Known = Known(Mutex::new(VecDeque::new()));

/// Two or three packs of a style with three cloths.
const MOST_KNOWN: usize = 16;

impl Known {
    fn all(&self) -> MutexGuard<'_, VecDeque<(Problem, Lay)>> {
        // Whoever panicked while holding it had not begun to change it.
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }

    fn lay_of(&self, problem: &Problem) -> Option<Lay> {
        let all = self.all();
        let known = all.iter().find(|(known, _)| known == problem);
        known.map(|(_, lay)| lay.clone())
    }

    fn keep(&self, problem: &Problem, lay: &Lay) {
        let mut all = self.all();
        all.retain(|(known, _)| known != problem);
        while all.len() >= MOST_KNOWN {
            all.pop_front();
        }
        all.push_back((problem.clone(), lay.clone()));
    }
}

/// How the pieces of a lay may lie.
pub(super) const WAY: Way = Way::TwoWay;

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

/// A lay for every cloth that pieces are cut from, in the order of the pieces. `tell` hears before each
/// how many are found and how many there are.
pub(super) fn lays<'a>(
    context: &Context<'a>,
    cancel: &AtomicBool,
    tell: &mut dyn FnMut(usize, usize),
) -> Result<Vec<ClothLay<'a>>, PaperError> {
    let size = context.cut.size.to_string();
    let cloths = cloths(context);
    let mut out = Vec::new();
    for (key, cloth) in &cloths {
        tell(out.len(), cloths.len());
        out.push(laid((key, cloth), (&size, &context.cut), cancel)?);
    }
    Ok(out)
}

/// A lay of one pair in another size than the drawn one.
pub(super) struct SizeLay<'a> {
    pub size: String,
    pub on: ClothLay<'a>,
}

/// The smallest and the largest waist on the cloth the shell is cut from, each by itself: how long a pair lies, and
/// how else its pieces share the width. None for a size that is drawn already.
pub(super) fn of_other_sizes<'a>(
    context: &Context<'a>,
    cancel: &AtomicBool,
) -> Result<Vec<SizeLay<'a>>, PaperError> {
    let run = &context.growth.waists;
    let ends = [run.first(), run.last()];
    let others = ends.into_iter().flatten();
    let mut others: Vec<&CutSize> = others.filter(|c| c.size != context.cut.size).collect();
    others.dedup_by_key(|cut| cut.size);
    let mut out = Vec::new();
    for (cut, cloth) in others
        .iter()
        .filter_map(|cut| Some((*cut, shell(context)?)))
    {
        let size = cut.size.to_string();
        let on = laid(cloth, (&size, cut), cancel)?;
        out.push(SizeLay { size, on });
    }
    Ok(out)
}

fn shell<'a>(context: &Context<'a>) -> Option<(&'a str, &'a Cloth)> {
    cloths(context).into_iter().next()
}

/// One pair of a size on a cloth.
fn laid<'a>(
    (key, cloth): (&'a str, &'a Cloth),
    (label, cut): (&str, &CutSize),
    cancel: &AtomicBool,
) -> Result<ClothLay<'a>, PaperError> {
    let pairs = SizePairs {
        label,
        cut,
        pairs: 1,
    };
    let rules = SpreadRules::plain(WAY, Length::ZERO);
    let spread = Spread::new(&[pairs], key, cloth, &rules);
    let options = Options {
        seed: SEED,
        limits: Limits {
            time: None,
            places: Some(PLACES),
        },
        ..Options::default()
    };
    let known = KNOWN.lay_of(&spread.problem);
    let found = match known {
        Some(lay) => Ok(lay),
        None => search(&spread.problem, &options, cancel, &mut |_| ()),
    };
    // A search that was cancelled gives what it had, which is not the lay of this style.
    if cancel.load(Ordering::Relaxed) {
        return Err(PaperError::Cancelled);
    }
    if let Ok(lay) = &found {
        KNOWN.keep(&spread.problem, lay);
    }
    Ok(ClothLay {
        key,
        cloth,
        spread,
        lay: found.map_err(|why| why.to_string()),
    })
}

/// Every cloth of the collection that pieces are cut from, each once.
fn cloths<'a>(context: &Context<'a>) -> Vec<(&'a str, &'a Cloth)> {
    let mut out: Vec<(&str, &Cloth)> = Vec::new();
    for piece in &context.cut.pieces {
        let cloths = &context.loaded.collection.cloths;
        let known = cloths.get_key_value(piece.cloth_name.as_str());
        if let Some((key, cloth)) = known
            && out.iter().all(|(seen, _)| seen != key)
        {
            out.push((key, cloth));
        }
    }
    out
}
