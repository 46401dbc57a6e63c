//! The seams a style file may describe and what each may say, and which name a slip of the pen was meant for.
//!
//! This is the one place the table of seams lives; that of the measures is [`MeasureId::known`](crate::MeasureId::known).

use crate::SeamId;
use crate::seams::{Construction, Lap, Ply};

/// What is constant about a seam, as far as a style file has to know.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct KnownSeam {
    /// Which seam.
    pub id: SeamId,
    /// When a style must describe it.
    pub needed: Needed,
    /// The constructions it can have.
    pub constructions: &'static [Construction],
    /// What is asked of a construction here, in words that can say why another does not suit.
    pub asks: &'static str,
    /// The usual lap, for seams that join two plies of which one can lie over the other;
    /// its two plies are the only ones such a seam can name.
    pub usual_lap: Option<Lap>,
}

/// When a style must describe a seam.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Needed {
    /// Always.
    Always,
    /// When the style has an extra pocket.
    WithExtraPocket,
    /// Only when the maker wants it.
    Optional,
}

impl KnownSeam {
    /// Why this seam cannot have a construction: what the construction does, and what is asked here.
    /// `None` when it can.
    #[must_use]
    pub fn refuses(&self, construction: Construction) -> Option<String> {
        (!self.constructions.contains(&construction))
            .then(|| format!("{}, and {}", construction.does(), self.asks))
    }

    /// Whether a lap names this seam's two plies, either way round.
    #[must_use]
    pub fn joins(&self, lap: Lap) -> bool {
        self.usual_lap.is_some_and(|usual| {
            lap == usual || (lap.over == usual.under && lap.under == usual.over)
        })
    }
}

const JOINS: &[Construction] = &[
    Construction::PressedOpen,
    Construction::LapFelled,
    Construction::MockFelled,
    Construction::SafetyStitched,
    Construction::Overlocked,
];
const POCKET_HEM: &[Construction] = &[Construction::TurnedHem];
const SET_ON: &[Construction] = &[Construction::PatchSet];

const JOINS_PANELS: &str = "two panels of the shell are joined here, to lie flat and bear strain";
const SETS_POCKET: &str = "a pocket with its raw edges turned in is set on here";
const HEMS_POCKET: &str = "the open edge of a pocket is turned down here";

const fn row(id: SeamId, constructions: &'static [Construction], asks: &'static str) -> KnownSeam {
    KnownSeam {
        id,
        needed: Needed::Always,
        constructions,
        asks,
        usual_lap: None,
    }
}

const fn joining(id: SeamId, over: Ply, under: Ply) -> KnownSeam {
    KnownSeam {
        usual_lap: Some(Lap { over, under }),
        ..row(id, JOINS, JOINS_PANELS)
    }
}

const fn needed(seam: KnownSeam, needed: Needed) -> KnownSeam {
    KnownSeam { needed, ..seam }
}

/// What is known of a seam. A seam without its row here does not compile.
#[must_use]
pub const fn seam(id: SeamId) -> KnownSeam {
    use Construction as C;
    match id {
        SeamId::Outseam | SeamId::Inseam => joining(id, Ply::Front, Ply::Back),
        SeamId::Seat | SeamId::FrontRise => joining(id, Ply::Left, Ply::Right),
        SeamId::Yoke => joining(id, Ply::Yoke, Ply::Back),
        SeamId::Band => row(
            id,
            &[C::BandOverEdge, C::BandTurned],
            "the waistband is set on the body here",
        ),
        SeamId::BandJoin => needed(
            row(
                id,
                &[C::PressedOpen],
                "the two halves of the waistband are joined here, to lie flat inside it",
            ),
            Needed::Optional,
        ),
        SeamId::Hem => row(
            id,
            &[C::RolledHem, C::FoldedHem],
            "the leg is turned up here, its raw edge hidden",
        ),
        SeamId::Mouth | SeamId::Fly => {
            row(id, &[C::TurnedEdge], "an edge of the front is faced here")
        }
        SeamId::FlyEdge => needed(
            row(
                id,
                &[C::Overlocked, C::BoundEdge, C::CleanFinished],
                "a single raw edge inside the fly is neatened here",
            ),
            Needed::Optional,
        ),
        SeamId::CoinHem | SeamId::BackPocketHem => row(id, POCKET_HEM, HEMS_POCKET),
        SeamId::CoinSet | SeamId::BackPocketSet => row(id, SET_ON, SETS_POCKET),
        SeamId::FacingSet => row(
            id,
            &[C::PatchSet, C::LaidOn],
            "the facing is set on the pocket bag here",
        ),
        SeamId::BagClose => row(
            id,
            &[
                C::SafetyStitched,
                C::Overlocked,
                C::PressedOpen,
                C::FrenchSeam,
                C::BoundEdge,
            ],
            "two layers of light cloth are closed into a bag here",
        ),
        SeamId::ExtraHem => needed(row(id, POCKET_HEM, HEMS_POCKET), Needed::WithExtraPocket),
        SeamId::ExtraSet => needed(row(id, SET_ON, SETS_POCKET), Needed::WithExtraPocket),
        SeamId::LoopEdge => row(id, &[C::Strip], "the strip of the belt loops is made here"),
        SeamId::Decoration => needed(
            row(id, &[C::Surface], "stitches lie on a single piece here"),
            Needed::Optional,
        ),
        SeamId::PatchSet => needed(
            row(
                id,
                &[C::LaidOn],
                "the patch is sewn on with its cut edges showing here",
            ),
            Needed::Optional,
        ),
        SeamId::LabelSet => needed(
            row(
                id,
                &[C::LaidOn],
                "woven labels are sewn on along their edges here",
            ),
            Needed::Optional,
        ),
    }
}

/// Every seam with what is known of it, in the order a garment is usually described.
pub fn seams() -> impl Iterator<Item = KnownSeam> {
    SeamId::ALL.into_iter().map(seam)
}

/// The seam a file means by this name.
#[must_use]
pub fn seam_name(name: &str) -> Option<KnownSeam> {
    SeamId::of(name).map(seam)
}

/// The known name nearest to what was written, when one is near enough to be a slip of the pen.
#[must_use]
pub fn nearest<'a>(written: &str, names: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    /// Beyond this a name cannot be a slip for any of ours; measuring it would only cost time.
    const LONGEST: usize = 64;
    if written.len() > LONGEST {
        return None;
    }
    let allowed = (written.chars().count() / 3).max(1);
    names
        .into_iter()
        .map(|name| (strsim::damerau_levenshtein(written, name), name))
        .filter(|(distance, _)| *distance <= allowed)
        .min_by_key(|(distance, _)| *distance)
        .map(|(_, name)| name)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_are_there_once() {
        for (index, seam) in SeamId::ALL.iter().enumerate() {
            assert!(
                SeamId::ALL
                    .iter()
                    .skip(index + 1)
                    .all(|other| other.code() != seam.code())
            );
            assert_eq!(seam_name(seam.code()).map(|known| known.id), Some(*seam));
        }
    }

    #[test]
    fn every_seam_can_be_sewn_and_says_what_it_asks() {
        for seam in seams() {
            let name = seam.id.code();
            assert!(!seam.constructions.is_empty(), "{name}");
            assert!(
                !seam.asks.is_empty() && !seam.id.words(words::Words::english()).is_empty(),
                "{name}"
            );
            let lapped = seam.constructions.iter().any(|c| c.is_lapped());
            assert_eq!(lapped, seam.usual_lap.is_some(), "{name}");
        }
    }

    #[test]
    fn a_slip_is_recognised_and_another_word_is_not() {
        let names = || {
            crate::MeasureId::ALL
                .into_iter()
                .map(crate::MeasureId::code)
        };
        for (written, meant) in [
            ("thihg", "thigh"),
            ("Waist", "waist"),
            ("frontrise", "front_rise"),
            ("inseem", "inseam"),
        ] {
            assert_eq!(nearest(written, names()), Some(meant));
        }
        for written in ["", "elbow", "collar", &"x".repeat(1000)] {
            assert_eq!(nearest(written, names()), None, "{written}");
        }
    }
}
