//! The rooms of the bench, in the order of the job.
//!
//! Fit, cloth and construction are the style's own page with other panels beside its drawing; the others are pages of
//! their own. The collection comes before them all.

use words::Words;

use crate::addresses;
use crate::viewing::{Panel, Viewing};

/// One room of a style.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Room {
    Fit,
    Cloth,
    Construction,
    Cutting,
    Papers,
    History,
}

impl Room {
    /// The rooms of the row at the head of every page; history is reached from the steps beside it.
    pub(crate) const ROW: [Self; 5] = [
        Self::Fit,
        Self::Cloth,
        Self::Construction,
        Self::Cutting,
        Self::Papers,
    ];

    pub(crate) fn title(self, say: &'static Words) -> &'static str {
        match self {
            Self::Fit => say.room_fit(),
            Self::Cloth => say.room_cloth(),
            Self::Construction => say.room_construction(),
            Self::Cutting => say.room_cutting(),
            Self::Papers => say.room_papers(),
            Self::History => say.room_history(),
        }
    }

    /// What an address calls it.
    pub(crate) const fn word(self) -> &'static str {
        match self {
            Self::Fit => "fit",
            Self::Cloth => "cloth",
            Self::Construction => "construction",
            Self::Cutting => "cutting",
            Self::Papers => "papers",
            Self::History => "history",
        }
    }

    /// The key that leads there.
    pub(crate) const fn key(self) -> &'static str {
        match self {
            Self::Fit => "2",
            Self::Cloth => "3",
            Self::Construction => "4",
            Self::Cutting => "5",
            Self::Papers => "6",
            Self::History => "7",
        }
    }

    /// The panels it has beside the drawing; none where it is a page of its own.
    pub(crate) const fn panels(self) -> &'static [Panel] {
        match self {
            Self::Fit => &[Panel::Fit, Panel::Findings],
            Self::Cloth => &[Panel::Cloth, Panel::Findings],
            Self::Construction => &[
                Panel::Details,
                Panel::Construction,
                Panel::Yarn,
                Panel::Order,
                Panel::Findings,
            ],
            Self::Cutting | Self::Papers | Self::History => &[],
        }
    }

    /// Its address for a style, seen as it is seen now.
    pub(crate) fn url(self, name: &str, see: &Viewing) -> String {
        match self.panels().first() {
            None => addresses::room(name, self.word(), see),
            Some(panel) => {
                let to = Viewing {
                    panel: *panel,
                    part: None,
                    ..see.clone()
                };
                addresses::style(name, &to)
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_panel_is_in_a_room_and_every_key_is_once() {
        for panel in Panel::ALL {
            assert!(
                Room::ROW.iter().any(|room| room.panels().contains(&panel)),
                "{panel:?}"
            );
        }
        for (index, room) in Room::ROW.iter().enumerate() {
            assert!(Room::ROW[..index].iter().all(|r| r.key() != room.key()));
        }
    }
}
