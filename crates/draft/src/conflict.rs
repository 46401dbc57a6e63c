//! When a chart cannot be drafted: why, and which changes would end it.
//!
//! A [`Conflict`] is only the reason, and costs nothing. What would end it is sought when somebody asks ([`remedies`]): each
//! value of the style that shapes the panels is moved to the nearest at which the hardest sizes close, that value is put
//! into a copy of the style, and every size of the copy is solved. Only what drafts in all of them is proposed, the
//! nearest to what was asked first. Where no single value helps, the ones furthest from what is usual are moved together.

use style::{Edit, Size, StyleDoc};
use words::{Figure, Said, say};

use crate::fit::{closes, nearest_value};
use crate::knob::{Knob, knobs};
use crate::pattern::draft;
use crate::spec::Spec;
use geometry::tolerance::ROUNDING;

/// A knob that moves by less, in its own unit, was not moved.
const UNMOVED: f64 = 1e-6;

/// Why a chart cannot be drafted.
#[derive(Clone, Debug, PartialEq)]
pub struct Conflict {
    /// What would go wrong.
    pub reason: Said,
}

/// One value of a style that becomes another.
#[derive(Clone, Debug, PartialEq)]
pub struct Moved {
    knob: Knob,
    becomes: f64,
}

/// Changes under which every size of a style can be drafted; nearly always one.
#[derive(Clone, Debug, PartialEq)]
pub struct Remedy {
    /// The values that are moved.
    pub moved: Vec<Moved>,
}

impl Moved {
    /// Where the style says it, such as `chart.thigh.value`.
    #[must_use]
    pub fn path(&self) -> &str {
        &self.knob.path
    }

    /// What it is called in a sentence.
    #[must_use]
    pub fn name(&self) -> Said {
        self.knob.name.clone()
    }

    /// What the style would say, as it is written there.
    #[must_use]
    pub fn value(&self) -> String {
        self.knob.written(self.becomes)
    }

    /// "at least 13.0 cm (+2.0 cm)".
    fn bound(&self) -> Said {
        let (change, value) = (self.change(), self.shown());
        if self.becomes > self.knob.asked {
            say::ConflictAtLeast { change, value }.into()
        } else {
            say::ConflictAtMost { change, value }.into()
        }
    }

    fn shown(&self) -> Figure {
        self.knob.shown(self.becomes)
    }

    fn change(&self) -> Said {
        let change = self.becomes - self.knob.asked;
        let by = self.knob.shown(change.abs());
        if change > 0.0 {
            say::ConflictMore { by }.into()
        } else {
            say::ConflictLess { by }.into()
        }
    }

    fn as_asked(&self) -> Said {
        let (name, value) = (self.name(), self.knob.shown(self.knob.asked));
        say::ConflictAsked { name, value }.into()
    }

    fn as_drafts(&self) -> Said {
        let (name, value) = (self.name(), self.shown());
        let change = self.change();
        say::ConflictDrafts {
            change,
            name,
            value,
        }
        .into()
    }

    fn as_step(&self) -> Said {
        let (name, value) = (self.name(), self.shown());
        say::ConflictSet { name, value }.into()
    }
}

impl Remedy {
    /// A copy of the style with the changes made.
    #[must_use]
    pub fn applied(&self, doc: &StyleDoc) -> StyleDoc {
        let mut copy = doc.clone();
        for moved in &self.moved {
            moved.knob.put(&mut copy, moved.becomes);
        }
        copy
    }

    /// The same change taken further by a share of what the value becomes; `None` where it is no single one.
    #[must_use]
    pub fn further(&self, share: f64) -> Option<Remedy> {
        let [Moved { knob, becomes }] = self.moved.as_slice() else {
            return None;
        };
        let up = *becomes > knob.asked;
        let more = becomes.abs() * if up { share } else { -share };
        let becomes = knob.rounded(becomes + more, up);
        let moved = Moved {
            knob: knob.clone(),
            becomes,
        };
        knob.is_sensible(becomes)
            .then(|| Remedy { moved: vec![moved] })
    }

    /// The change as an edit of the style, where it is a single one.
    #[must_use]
    pub fn edit(&self) -> Option<Edit> {
        match self.moved.as_slice() {
            [one] => Edit::set(one.path(), &one.value()).ok(),
            _ => None,
        }
    }

    /// As a next step: "set thigh to 72.1 cm"; `None` where it changes nothing.
    #[must_use]
    pub fn advice(&self) -> Option<Said> {
        self.joined(Moved::as_step)
    }

    /// Something of every change, in a row.
    fn joined(&self, each: fn(&Moved) -> Said) -> Option<Said> {
        let all = self.moved.iter().map(each);
        all.reduce(|first, next| say::JoinedAnd { first, next }.into())
    }

    /// How far it goes from what was asked.
    fn cost(&self) -> f64 {
        self.moved.iter().map(|m| m.knob.cost(m.becomes)).sum()
    }
}

impl Conflict {
    /// What does not go together and what would. `at` is the size the values are stated at, where that has to be said.
    #[must_use]
    pub fn with(&self, remedies: &[Remedy], at: Option<Size>) -> Said {
        let reason = self.reason.clone();
        let first = remedies.split_first();
        let asked = first.and_then(|(first, _)| first.joined(Moved::as_asked));
        let (Some((first, others)), Some(asked)) = (first, asked) else {
            return say::ConflictNoWay { reason }.into();
        };
        let asked: Said = match at {
            Some(size) => say::ConflictAskedAt {
                asked,
                size: size.to_string(),
            }
            .into(),
            None => asked,
        };
        let said: Said = match (first.moved.as_slice(), first.joined(Moved::as_drafts)) {
            ([one], _) => say::ConflictOne {
                asked,
                bound: one.bound(),
                reason,
            }
            .into(),
            (_, Some(drafts)) => say::ConflictSeveral {
                asked,
                drafts,
                reason,
            }
            .into(),
            (_, None) => return say::ConflictNoWay { reason }.into(),
        };
        let others = others.iter().flat_map(|remedy| &remedy.moved);
        others.fold(said, |said, moved| {
            let (bound, name) = (moved.bound(), moved.name());
            say::ConflictOr { bound, name, said }.into()
        })
    }
}

/// How many are proposed.
const PROPOSED: usize = 3;
/// What goes this many times as far as the nearest is no choice beside it.
const MUCH_FURTHER: f64 = 4.0;
/// Most values that are moved together where no single one helps.
const TOGETHER: usize = 3;
/// Steps beyond the estimate at which a value is tried.
const TRIES: [f64; 7] = [0.0, 1.0, 2.0, 4.0, 8.0, 16.0, 32.0];

/// The changes that each end a style's conflict in every size, the nearest to what was asked first; empty where there is
/// no conflict, or where none was found.
#[must_use]
pub fn remedies(doc: &StyleDoc) -> Vec<Remedy> {
    let failing = failing(doc);
    let hardest = hardest(&failing);
    if hardest.is_empty() {
        return Vec::new();
    }
    let all: Vec<Size> = doc.sizes.all().collect();
    let sizes = in_turn(&failing, &all);
    let mut found: Vec<Remedy> = Vec::new();
    for start in ranked(doc, &knobs(doc, failing.len() < all.len()), &hardest) {
        let furthest = found
            .first()
            .map_or(f64::INFINITY, |best| best.cost() * MUCH_FURTHER);
        if found.len() == PROPOSED || start.knob.cost(start.becomes) > furthest {
            break;
        }
        found.extend(drafting(doc, &start, &sizes));
    }
    found.sort_by(|a, b| a.cost().total_cmp(&b.cost()));
    if found.is_empty() {
        found.extend(together(doc, &sizes));
    }
    found
}

/// The sizes that cannot be drafted.
fn failing(doc: &StyleDoc) -> Vec<Size> {
    let mut sizes: Vec<Size> = doc.sizes.all().collect();
    sizes.retain(|size| !closes(&Spec::of(doc, *size)));
    sizes
}

/// The ends of the failing part of the run, where each value has to move the furthest.
fn hardest(failing: &[Size]) -> Vec<Size> {
    let mut ends: Vec<Size> = [failing.iter().min(), failing.iter().max()]
        .into_iter()
        .flatten()
        .copied()
        .collect();
    ends.dedup();
    ends
}

/// Those that fail now first, from both ends, for they decide soonest.
fn in_turn(failing: &[Size], all: &[Size]) -> Vec<Size> {
    let mut order = hardest(failing);
    let rest = failing.iter().chain(all);
    for size in rest {
        if !order.contains(size) {
            order.push(*size);
        }
    }
    order
}

/// Where each value would have to go by the estimate of the hardest sizes, the nearest to what was asked first.
fn ranked(doc: &StyleDoc, knobs: &[Knob], hardest: &[Size]) -> Vec<Moved> {
    let mut all: Vec<Moved> = knobs
        .iter()
        .filter_map(|knob| {
            let becomes =
                estimate(doc, knob, hardest).or_else(|| towards_usual(doc, knob, hardest))?;
            let moved = Moved {
                knob: knob.clone(),
                becomes,
            };
            knob.is_sensible(becomes).then_some(moved)
        })
        .collect();
    all.sort_by(|a, b| a.knob.cost(a.becomes).total_cmp(&b.knob.cost(b.becomes)));
    all
}

fn estimate(doc: &StyleDoc, knob: &Knob, hardest: &[Size]) -> Option<f64> {
    let mut furthest: Option<f64> = None;
    for size in hardest {
        let spec = Spec::of(doc, *size);
        let turned = |value| knob.turned(&spec, doc, *size, value);
        if furthest.is_some_and(|value| closes(&turned(value))) {
            continue;
        }
        let becomes = nearest_value(&spec, knob.asked, turned)?;
        let change = becomes - knob.asked;
        // A value that does nothing for this size helps nobody, and one that must go both ways neither.
        if change.abs() < UNMOVED || furthest.is_some_and(|f| (f - knob.asked) * change < 0.0) {
            return None;
        }
        if furthest.is_none_or(|f| (f - knob.asked).abs() < change.abs()) {
            furthest = Some(becomes);
        }
    }
    furthest
}

/// Where no estimate converges: how far the value has to go towards what is usual, by halving, if that helps at all.
fn towards_usual(doc: &StyleDoc, knob: &Knob, hardest: &[Size]) -> Option<f64> {
    const HALVINGS: usize = 8;
    let specs: Vec<(Size, Spec)> = hardest
        .iter()
        .map(|size| (*size, Spec::of(doc, *size)))
        .collect();
    let drafts = |value: f64| {
        let mut sizes = specs.iter();
        sizes.all(|(size, spec)| closes(&knob.turned(spec, doc, *size, value)))
    };
    let mut inside = knob.usual.filter(|usual| drafts(*usual))?;
    let mut outside = knob.asked;
    for _ in 0..HALVINGS {
        let middle = (inside + outside) / 2.0;
        if drafts(middle) {
            inside = middle;
        } else {
            outside = middle;
        }
    }
    Some(inside)
}

/// The value from there on at which every size drafts.
fn drafting(doc: &StyleDoc, start: &Moved, sizes: &[Size]) -> Option<Remedy> {
    let knob = &start.knob;
    let up = start.becomes > knob.asked;
    let sign = if up { knob.step() } else { -knob.step() };
    let from = knob.rounded(start.becomes, up);
    TRIES
        .into_iter()
        .map(|step| from + step * sign)
        .filter(|value| (value - knob.asked).abs() > ROUNDING && knob.is_sensible(*value))
        .map(|becomes| Remedy {
            moved: vec![Moved {
                knob: knob.clone(),
                becomes,
            }],
        })
        .find(|remedy| drafts(&remedy.applied(doc), sizes))
}

/// Whether every size closes, and the pieces of the hardest, which come first, keep the rules.
fn drafts(doc: &StyleDoc, sizes: &[Size]) -> bool {
    const LOOKED_AT: usize = 4;
    let sound = |size: &Size| {
        let drafted = draft(&Spec::of(doc, *size));
        drafted.conflict.is_none() && crate::rules::sound(&drafted, *size, doc)
    };
    sizes.iter().all(|size| closes(&Spec::of(doc, *size)))
        && sizes.iter().take(LOOKED_AT).all(sound)
}

/// The few values furthest from what is usual, brought to it one after another until every size drafts.
fn together(doc: &StyleDoc, sizes: &[Size]) -> Option<Remedy> {
    let mut odd: Vec<Moved> = knobs(doc, false)
        .into_iter()
        .filter_map(|knob| {
            let becomes = knob.rounded(knob.usual?, true);
            (knob.cost(becomes) > 0.0).then_some(Moved { knob, becomes })
        })
        .collect();
    odd.sort_by(|a, b| b.knob.cost(b.becomes).total_cmp(&a.knob.cost(a.becomes)));
    (2..=TOGETHER.min(odd.len()))
        .map(|many| Remedy {
            moved: odd[..many].to_vec(),
        })
        .find(|remedy| drafts(&remedy.applied(doc), sizes))
}
