//! When a chart cannot be drafted: why, and which changes would end it.
//!
//! A [`Conflict`] is only the reason, and costs nothing; a [`Remedy`] is what [`remedies`](crate::remedies) finds.

use style::{Edit, Size, StyleDoc};
use words::{Figure, Said, say};

use crate::knob::Knob;

/// Why a chart cannot be drafted.
#[derive(Clone, Debug, PartialEq)]
pub struct Conflict {
    /// What would go wrong.
    pub reason: Said,
}

/// One value of a style that becomes another.
#[derive(Clone, Debug, PartialEq)]
pub struct Moved {
    pub(crate) knob: Knob,
    pub(crate) becomes: f64,
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
    pub(crate) fn cost(&self) -> f64 {
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
