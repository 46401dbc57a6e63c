//! Every name a style file may use: measures and seams, and what each may say.
//!
//! This is the one place these lists live. Default values are the demo style's and common practice.

use trade::Length;

use crate::seams::{Construction, Lap, Ply};

/// A measure the chart may hold.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measure {
    /// Its name in a file, such as `front_rise`.
    pub name: &'static str,
    /// Its name for a person, such as "front rise".
    pub title: &'static str,
    /// Whether every chart must state it.
    pub required: bool,
    /// What it is in every size when a chart leaves it out; `None` for the required ones and for the outseam,
    /// which then follows from the other measures.
    pub value: Option<Length>,
    /// The level it is taken at when a chart does not say; `None` for measures without one.
    pub at: Option<Length>,
    /// What `at` is measured from, for a person; empty for measures without a level.
    pub from: &'static str,
    /// The tolerance when a chart does not say (common practice).
    pub tolerance: Length,
}

const fn required(name: &'static str, title: &'static str, tolerance_mm: f64) -> Measure {
    Measure {
        name,
        title,
        required: true,
        value: None,
        at: None,
        from: "",
        tolerance: Length::mm(tolerance_mm),
    }
}

const fn level(measure: Measure, at_mm: f64, from: &'static str) -> Measure {
    Measure {
        at: Some(Length::mm(at_mm)),
        from,
        ..measure
    }
}

const fn optional(
    name: &'static str,
    title: &'static str,
    value_mm: f64,
    tolerance_mm: f64,
) -> Measure {
    let value = Some(Length::mm(value_mm));
    Measure {
        required: false,
        value,
        ..required(name, title, tolerance_mm)
    }
}

/// The measures, in the order a chart is usually read.
pub const MEASURES: &[Measure] = &[
    required("waist", "waist", 13.0),
    level(required("seat", "seat", 13.0), 80.0, "above the crotch"),
    required("front_rise", "front rise", 6.5),
    required("back_rise", "back rise", 6.5),
    level(required("thigh", "thigh", 8.0), 25.4, "below the crotch"),
    level(required("knee", "knee", 6.5), 355.6, "below the crotch"),
    required("hem", "hem", 6.5),
    required("inseam", "inseam", 13.0),
    Measure {
        required: false,
        ..required("outseam", "outseam", 13.0)
    },
    required("band_height", "band height", 3.0),
    optional("band_overlap", "band overlap", 42.0, 3.0),
    optional("fly_length", "fly length", 165.0, 3.0),
    optional("fly_width", "fly width", 38.0, 3.0),
    optional("yoke_centre", "yoke at centre back", 65.0, 3.0),
    optional("yoke_side", "yoke at the side", 38.0, 3.0),
    optional("mouth_width", "pocket mouth width", 105.0, 3.0),
    optional("mouth_depth", "pocket mouth depth", 70.0, 3.0),
    optional("coin_width", "coin pocket width", 75.0, 3.0),
    optional("coin_depth", "coin pocket depth", 85.0, 3.0),
    optional("back_pocket_width", "back pocket width", 155.0, 3.0),
    optional("back_pocket_length", "back pocket length", 170.0, 3.0),
    optional("back_pocket_from_yoke", "back pocket from yoke", 32.0, 3.0),
    optional(
        "back_pocket_from_centre",
        "back pocket from centre back",
        55.0,
        3.0,
    ),
    optional("loop_length", "belt loop length", 57.0, 3.0),
    optional("loop_width", "belt loop width", 12.0, 2.0),
    optional("hem_depth", "hem depth", 12.0, 2.0),
];

/// The measure of this name.
#[must_use]
pub fn measure(name: &str) -> Option<&'static Measure> {
    MEASURES.iter().find(|measure| measure.name == name)
}

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
        for (index, measure) in MEASURES.iter().enumerate() {
            assert!(
                MEASURES
                    .iter()
                    .skip(index + 1)
                    .all(|other| other.name != measure.name)
            );
        }
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
        let names = || MEASURES.iter().map(|measure| measure.name);
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
