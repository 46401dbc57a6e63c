//! Which changes would end a conflict, sought when somebody asks.
//!
//! Each value of the style that shapes the panels is moved to the nearest at which the hardest sizes close, that value is put
//! into a copy of the style, and every size of the copy is solved. Only what drafts in all of them is proposed, the
//! nearest to what was asked first. Where no single value helps, the ones furthest from what is usual are moved together.

use geometry::tolerance::ROUNDING;
use style::{Size, StyleDoc};

use crate::conflict::{Moved, Remedy};
use crate::drafted::draft;
use crate::fit::{closes, nearest_value};
use crate::knob::{Knob, knobs};
use crate::spec::Spec;

/// A knob that moves by less, in its own unit, was not moved.
const UNMOVED: f64 = 1e-6;

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
