//! Looking for one lay, or finding it again where it was kept.

use std::path::Path;
use std::sync::atomic::AtomicBool;
use std::time::Duration;

use cutting::Spread;
use lay::{
    Bounds, Ended, Lay, LayError, Options, Placement, Progress, Turn, match_copies, search_on,
};
use style::{KeptBounds, KeptLay, KeptPlace, RevisionId, SaveError};
use trade::{Length, Share};

/// Lays whose lengths differ by less are equally long.
const SAME: Length = Length::mm(1e-6);

/// How lays are looked for.
pub struct Finder<'a> {
    /// The collection they are kept in.
    pub collection: &'a Path,
    /// How to search.
    pub options: Options,
    /// When a kept lay will do.
    pub kept: Kept,
}

/// When a lay that is kept from an earlier search will do.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kept {
    /// Never: it is left aside.
    Never,
    /// When it was looked for at least as long as is asked now; else the search goes on from it.
    LongEnough,
    /// However briefly it was looked for.
    Always,
    /// The search goes on from it in any case.
    ToGoOn,
}

/// A lay, and where it came from.
#[derive(Debug)]
pub struct Found {
    /// The lay.
    pub lay: Lay,
    /// Whether it was kept from an earlier search and nothing shorter was found now.
    pub kept: bool,
    /// Why it could not be kept. Such a lay is as good as one that is; it only has to be looked for again.
    pub not_kept: Option<SaveError>,
}

impl Finder<'_> {
    /// The shortest lay known of these pieces. Where the search goes on from a kept one, the shorter of the
    /// two is kept. So is what a cancelled search found.
    ///
    /// `words` are what the lay is known by, such as "tideline-14 32x32=4".
    ///
    /// # Errors
    /// A [`LayError`] when there is no lay.
    pub fn find(
        &self,
        spread: &Spread,
        words: &str,
        cancel: &AtomicBool,
        tell: &mut dyn FnMut(&Progress),
    ) -> Result<Found, LayError> {
        let made_of = made_of(spread);
        // A search limited by places is made to be repeated, so what was found before must not enter.
        let kept = (self.kept != Kept::Never && self.options.limits.places.is_none())
            .then(|| kept_of(self.collection, spread, words, &made_of))
            .flatten();
        let asked = self.options.limits.time.map_or(0, |time| time.as_secs());
        let will_do = |seconds: u64| match self.kept {
            Kept::Never | Kept::ToGoOn => false,
            Kept::LongEnough => seconds >= asked,
            Kept::Always => true,
        };
        if let Some((lay, seconds)) = &kept
            && will_do(*seconds)
        {
            return Ok(Found {
                lay: lay.clone(),
                kept: true,
                not_kept: None,
            });
        }
        let known = kept.as_ref().map(|(lay, _)| lay.placements.as_slice());
        let mut spent = Duration::ZERO;
        let mut so_far = SoFar {
            collection: self.collection,
            spread,
            words,
            made_of: &made_of,
            shortest: kept.as_ref().map(|(lay, _)| lay.length),
            bounds: None,
            looked: Duration::ZERO,
        };
        let mut found = search_on(
            &spread.problem,
            &self.options,
            known.unwrap_or_default(),
            cancel,
            &mut |progress| {
                spent = progress.elapsed;
                so_far.keep(progress);
                tell(progress);
            },
        )?;
        match_copies(&spread.problem, &mut found.placements, &spread.matched);
        let seconds = match found.ended {
            Ended::Cancelled => spent.as_secs(),
            Ended::Time | Ended::Places | Ended::Bound => asked,
        };
        let seconds = seconds.saturating_sub(so_far.looked.as_secs());
        let note = note(&found, &made_of, words, seconds);
        let not_kept = style::keep_lay(self.collection, &note).err();
        Ok(match kept {
            Some((lay, _)) if lay.length <= found.length => Found {
                // How it ended is told of the search that was made now.
                lay: Lay {
                    ended: found.ended,
                    ..lay
                },
                kept: true,
                not_kept,
            },
            _ => Found {
                lay: found,
                kept: false,
                not_kept,
            },
        })
    }
}

/// How often a search keeps what it has so far.
const KEEP_EVERY: Duration = Duration::from_secs(2);

/// What a search that goes on has kept already: it may be killed before its end.
struct SoFar<'a> {
    collection: &'a Path,
    spread: &'a Spread,
    words: &'a str,
    made_of: &'a RevisionId,
    /// The shortest lay that is kept.
    shortest: Option<Length>,
    /// What no lay can be shorter than, once it was asked for.
    bounds: Option<Bounds>,
    /// How long was looked for what is kept, to whole seconds.
    looked: Duration,
}

impl SoFar<'_> {
    /// Keeps the lay of a search that goes on, where it is shorter than what is kept and that is a while ago.
    fn keep(&mut self, progress: &Progress) {
        let shorter = self.shortest.is_none_or(|kept| progress.length < kept);
        if !shorter || progress.elapsed < self.looked + KEEP_EVERY {
            return;
        }
        let problem = &self.spread.problem;
        let bounds = self.bounds.or_else(|| lay::bounds(problem).ok());
        let Some(bounds) = bounds else { return };
        self.bounds = Some(bounds);
        let mut placements = progress.placements.clone();
        match_copies(problem, &mut placements, &self.spread.matched);
        let lay = Lay {
            placements,
            length: progress.length,
            efficiency: progress.efficiency,
            bounds,
            ended: Ended::Cancelled,
            places: progress.places,
        };
        let seconds = (progress.elapsed - self.looked).as_secs();
        let note = note(&lay, self.made_of, self.words, seconds);
        // Where the disk refuses, the end of the search says so.
        if style::keep_lay(self.collection, &note).is_ok() {
            self.shortest = Some(progress.length);
            self.looked += Duration::from_secs(seconds);
        }
    }
}

/// The lay that is kept of these pieces, and for how many seconds it was looked for.
pub fn kept_lay(collection: &Path, spread: &Spread, words: &str) -> Option<(Lay, u64)> {
    kept_of(collection, spread, words, &made_of(spread))
}

fn kept_of(
    collection: &Path,
    spread: &Spread,
    words: &str,
    made_of: &RevisionId,
) -> Option<(Lay, u64)> {
    let kept = style::kept_lay(collection, words, made_of)?;
    Some((lay_of(&kept, spread)?, kept.seconds))
}

/// What everything a lay depends on hashes to. All of the problem is printed, so that whatever is added
/// to it counts without anybody having to think of it here.
fn made_of(spread: &Spread) -> RevisionId {
    RevisionId::of(&format!("{:?} {:?}", spread.problem, spread.matched))
}

fn note(lay: &Lay, made_of: &RevisionId, words: &str, seconds: u64) -> KeptLay {
    let bounds = KeptBounds {
        area: lay.bounds.area,
        longest: lay.bounds.longest,
        wide: lay.bounds.wide,
        segment: lay.bounds.segment,
        path: lay.bounds.path,
        skeleton: lay.bounds.skeleton,
        lines: lay.bounds.lines,
    };
    let places = lay.placements.iter().map(|placed| KeptPlace {
        key: placed.key.clone(),
        copy: placed.copy,
        turn: placed.turn.degrees(),
        x: placed.x,
        y: placed.y,
    });
    let places = places.collect();
    KeptLay::new(
        made_of,
        words.to_owned(),
        (lay.length, bounds),
        places,
        seconds,
    )
}

/// The kept lay, if it keeps every rule of the pieces as they are now.
fn lay_of(kept: &KeptLay, spread: &Spread) -> Option<Lay> {
    let placements = kept
        .places
        .iter()
        .map(|place| {
            Some(Placement {
                key: place.key.clone(),
                copy: place.copy,
                turn: Turn::ALL
                    .into_iter()
                    .find(|turn| turn.degrees() == place.turn)?,
                x: place.x,
                y: place.y,
            })
        })
        .collect::<Option<Vec<_>>>()?;
    let problem = &spread.problem;
    // What the note says of its length is not believed: it is what the pieces take, as they lie there.
    let reach = lay::reach(problem, &placements);
    let length = if (reach - kept.length).abs() < SAME {
        kept.length
    } else {
        reach
    };
    if !lay::check(problem, &placements, length).is_empty() {
        return None;
    }
    let area: f64 = problem
        .pieces
        .iter()
        .map(|piece| geometry::area(&piece.outline).to_mm2().abs() * piece.demand as f64)
        .sum();
    Some(Lay {
        placements,
        length,
        efficiency: Share::ratio(area / (problem.width.to_mm() * length.to_mm())),
        bounds: Bounds {
            area: kept.bounds.area,
            longest: kept.bounds.longest,
            wide: kept.bounds.wide,
            segment: kept.bounds.segment,
            path: kept.bounds.path,
            skeleton: kept.bounds.skeleton,
            lines: kept.bounds.lines,
        },
        ended: Ended::Time,
        places: 0,
    })
}

/// How many matched pairs of pieces lie further apart than they may.
pub fn apart(spread: &Spread, lay: &Lay) -> usize {
    lay::check_matches(&spread.problem, &lay.placements, &spread.matched).len()
}
