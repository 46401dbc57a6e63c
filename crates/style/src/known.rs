//! The seams a style file may describe and what each may say, and which name a slip of the pen was meant for.
//!
//! This is the one place the list of seams lives; that of the measures is [`MeasureId::known`](crate::MeasureId::known).

use crate::seams::{Construction, Lap, Ply};

/// A seam a style may describe.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SeamName {
    /// Its name in a file, such as `back_pocket_set`.
    pub name: &'static str,
    /// Its name for a person, such as "back pockets set on".
    pub title: &'static str,
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

impl SeamName {
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
const FACED: &[Construction] = &[Construction::TurnedEdge];
const LAID: &[Construction] = &[Construction::LaidOn];

const JOINS_PANELS: &str = "two panels of the shell are joined here, to lie flat and bear strain";
const SETS_POCKET: &str = "a pocket with its raw edges turned in is set on here";
const HEMS_POCKET: &str = "the open edge of a pocket is turned down here";
const FACES_EDGE: &str = "an edge of the front is faced here";

const fn seam(
    name: &'static str,
    title: &'static str,
    constructions: &'static [Construction],
    asks: &'static str,
) -> SeamName {
    SeamName {
        name,
        title,
        needed: Needed::Always,
        constructions,
        asks,
        usual_lap: None,
    }
}

const fn joining(name: &'static str, title: &'static str, over: Ply, under: Ply) -> SeamName {
    SeamName {
        usual_lap: Some(Lap { over, under }),
        ..seam(name, title, JOINS, JOINS_PANELS)
    }
}

const fn needed(seam: SeamName, needed: Needed) -> SeamName {
    SeamName { needed, ..seam }
}

/// The seams, in the order a garment is usually described.
pub const SEAMS: &[SeamName] = &[
    joining("outseam", "outseam", Ply::Front, Ply::Back),
    joining("inseam", "inseam", Ply::Front, Ply::Back),
    joining("seat", "seat seam", Ply::Left, Ply::Right),
    joining("yoke", "yoke seam", Ply::Yoke, Ply::Back),
    joining("front_rise", "front rise seam", Ply::Left, Ply::Right),
    seam(
        "band",
        "waistband set on",
        &[Construction::BandOverEdge, Construction::BandTurned],
        "the waistband is set on the body here",
    ),
    seam(
        "hem",
        "hem",
        &[Construction::RolledHem, Construction::FoldedHem],
        "the leg is turned up here, its raw edge hidden",
    ),
    seam("mouth", "pocket mouth", FACED, FACES_EDGE),
    seam("fly", "fly", FACED, FACES_EDGE),
    needed(
        seam(
            "fly_edge",
            "fly facing edge",
            &[
                Construction::Overlocked,
                Construction::BoundEdge,
                Construction::CleanFinished,
            ],
            "a single raw edge inside the fly is neatened here",
        ),
        Needed::Optional,
    ),
    seam("coin_hem", "coin pocket hem", POCKET_HEM, HEMS_POCKET),
    seam("coin_set", "coin pocket set on", SET_ON, SETS_POCKET),
    seam(
        "back_pocket_hem",
        "back pocket hem",
        POCKET_HEM,
        HEMS_POCKET,
    ),
    seam(
        "back_pocket_set",
        "back pockets set on",
        SET_ON,
        SETS_POCKET,
    ),
    seam(
        "facing_set",
        "pocket facing set on the bag",
        SET_ON,
        "the facing is set on the pocket bag here",
    ),
    seam(
        "bag_close",
        "pocket bag closed",
        &[
            Construction::SafetyStitched,
            Construction::Overlocked,
            Construction::PressedOpen,
            Construction::FrenchSeam,
            Construction::BoundEdge,
        ],
        "two layers of light cloth are closed into a bag here",
    ),
    needed(
        seam("extra_hem", "extra pocket hem", POCKET_HEM, HEMS_POCKET),
        Needed::WithExtraPocket,
    ),
    needed(
        seam("extra_set", "extra pocket set on", SET_ON, SETS_POCKET),
        Needed::WithExtraPocket,
    ),
    seam(
        "loop_edge",
        "belt loop strip",
        &[Construction::Strip],
        "the strip of the belt loops is made here",
    ),
    needed(
        seam(
            "decoration",
            "back pocket stitching",
            &[Construction::Surface],
            "stitches lie on a single piece here",
        ),
        Needed::Optional,
    ),
    needed(
        seam(
            "patch_set",
            "patch sewn on",
            LAID,
            "the patch is sewn on with its cut edges showing here",
        ),
        Needed::Optional,
    ),
    needed(
        seam(
            "label_set",
            "labels sewn on",
            LAID,
            "woven labels are sewn on along their edges here",
        ),
        Needed::Optional,
    ),
];

/// The seam of this name.
#[must_use]
pub fn seam_name(name: &str) -> Option<&'static SeamName> {
    SEAMS.iter().find(|seam| seam.name == name)
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
        for (index, seam) in SEAMS.iter().enumerate() {
            assert!(
                SEAMS
                    .iter()
                    .skip(index + 1)
                    .all(|other| other.name != seam.name)
            );
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
