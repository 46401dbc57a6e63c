//! What a style says about itself besides chart and seams: shape, fly, pockets, loops, hardware and labels.
//!
//! Left and right are the wearer's. A field the file leaves out takes the default stated here.

use std::fmt;
use std::path::{Path, PathBuf};

use serde::Serialize;
use trade::{Angle, Length, Share};
use words::{Key, key};

use crate::choices::choices;
use crate::drawing::Drawing;

/// The `[shape]` section: what the chart leaves open. A split is how much more the back takes than an even share,
/// and the front less.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Shape {
    /// The back is this much over a quarter of the seat, the front this much under. Default 1 cm.
    pub seat_split: Length,
    /// The same against half the thigh. Default 2.5 cm.
    pub thigh_split: Length,
    /// The same against half the knee. Default 1 cm.
    pub knee_split: Length,
    /// The same against half the hem. Default 1 cm.
    pub hem_split: Length,
    /// The same against a quarter of the waist. Default 0.5 cm.
    pub waist_split: Length,
    /// Centre front leans this much towards the side at the waist. Default 1 cm.
    pub front_tilt: Length,
    /// Slope of the seat seam against the grain. Default 13 degrees.
    pub seat_angle: Angle,
    /// What the yoke takes out between seat and waist, a leg. Default 1.8 cm.
    pub seat_dart: Length,
    /// The back inseam is this much shorter than the front's, stretched on between knee and crotch. Default 3 mm.
    pub inseam_stretch: Length,
    /// Body length eased onto the waistband, whole waist. Default 0.
    pub band_ease: Length,
    /// How the outseam runs between hip and hem. Default shaped.
    pub outseam: OutseamLine,
}

/// How the outseam runs between hip and hem.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OutseamLine {
    /// Shaped like the inseam, the leg even about its crease.
    Shaped,
    /// Straight and on the grain, along the cloth's own edge; the inseam takes all the shape of the leg.
    Straight,
}
choices!(OutseamLine: Shaped = "shaped", Straight = "straight");

impl Default for Shape {
    fn default() -> Self {
        Self {
            seat_split: Length::mm(10.0),
            thigh_split: Length::mm(25.0),
            knee_split: Length::mm(10.0),
            hem_split: Length::mm(10.0),
            waist_split: Length::mm(5.0),
            front_tilt: Length::mm(10.0),
            seat_angle: Angle::deg(13.0),
            seat_dart: Length::mm(18.0),
            inseam_stretch: Length::mm(3.0),
            band_ease: Length::ZERO,
            outseam: OutseamLine::Shaped,
        }
    }
}

/// The `[fly]` section.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Fly {
    /// Buttons or a zip.
    pub closing: Closing,
    /// Buttons on the fly, below the band button. Default 4; 0 with a zip.
    pub buttons: u32,
    /// The fly button, a trim name; `None` with a zip.
    pub button: Option<String>,
    /// The zip, a trim name; `None` with buttons.
    pub zip: Option<String>,
    /// The band button, a trim name.
    pub band_button: String,
    /// When its rows are sewn. Default flat.
    pub topstitch: FlyTopstitch,
}

/// When the topstitching of the fly is sewn.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum FlyTopstitch {
    /// On the left front alone while it lies flat, before the front rise is joined: what a workroom takes as usual
    /// (common practice). The rows of the rise then begin on it.
    #[default]
    Flat,
    /// Over both fronts when the rise is sewn: the rows of the rise begin under it.
    AfterRise,
}
choices!(FlyTopstitch: Flat = "flat", AfterRise = "after the rise");

/// How the fly closes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Closing {
    /// Buttons down the fly.
    Buttons,
    /// A zip.
    Zip,
}
choices!(Closing: Buttons = "buttons", Zip = "zip");

/// The wearer's left or right.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// The wearer's left.
    Left,
    /// The wearer's right.
    Right,
}
choices!(Side: Left = "left", Right = "right");

/// The `[pockets]` section.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Pockets {
    /// The coin pocket.
    pub coin: CoinPocket,
    /// The front pocket bags, both alike.
    pub bag: PocketBag,
    /// The back pockets; left and right may differ.
    pub back: BackPockets,
    /// One ply inside, behind a front, up to the lower edge of the band; `None` when there is none.
    pub extra: Option<ExtraPocket>,
}

/// `[pockets.coin]`. Its width and depth are in the chart.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct CoinPocket {
    /// The front it sits in. Default right.
    pub side: Side,
    /// Band seam to its top edge, at its centre. Default 2.2 cm.
    pub below_band: Length,
    /// Outseam to its outer edge. Default 1.4 cm.
    pub from_side: Length,
    /// Its foot is this much narrower than its top. Default 6 mm.
    pub lower_narrowing: Length,
    /// The shape of its foot. Default straight.
    pub shape: CoinShape,
    /// How much of a shape its foot has; what it measures, the shape says. Default 12 mm.
    pub drop: Length,
    /// Free only: the maker's drawing of its outline, inside the style's folder.
    pub art: Option<ArtPath>,
    /// The lines of that drawing; only there when the style was read from its folder.
    #[serde(skip)]
    pub drawing: Option<Drawing>,
}

/// The foot of the coin pocket. Its depth is always measured down its middle.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CoinShape {
    /// Straight across.
    Straight,
    /// Runs to a point in the middle, which hangs below the corners by the drop.
    Pointed,
    /// Both corners are cut off at 45 degrees: the drop is the side of the triangle taken away.
    CutCorner,
    /// Slopes: the side nearer the outseam is longer than the other by the drop.
    Slant,
    /// One even curve, whose lowest place hangs below the sides by the drop.
    Round,
    /// As the maker draws it: one line from the inner top corner down and round to the outer one, stretched to the
    /// width and the depth of the chart.
    Free,
}
choices!(CoinShape:
    Straight = "straight",
    Pointed = "pointed",
    CutCorner = "cut-corner",
    Slant = "slant",
    Round = "round",
    Free = "free",
);

impl Default for CoinPocket {
    fn default() -> Self {
        Self {
            side: Side::Right,
            below_band: Length::mm(22.0),
            from_side: Length::mm(14.0),
            lower_narrowing: Length::mm(6.0),
            shape: CoinShape::Straight,
            drop: Length::mm(12.0),
            art: None,
            drawing: None,
        }
    }
}

/// `[pockets.bag]`.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct PocketBag {
    /// Depth below the band seam. Default 27 cm.
    pub depth: Length,
    /// Width of the finished bag. Default 19.5 cm.
    pub width: Length,
    /// Shell facing behind the mouth, measured beyond the mouth edge. Default 8 cm.
    pub facing: Length,
    /// How far the curve of the mouth keeps to the corner it cuts off: little is nearly a straight slant, much nearly
    /// square. Default 55 %, near a quarter of an ellipse.
    pub mouth_fullness: Share,
}

impl Default for PocketBag {
    fn default() -> Self {
        Self {
            depth: Length::mm(270.0),
            width: Length::mm(195.0),
            facing: Length::mm(80.0),
            mouth_fullness: Share::percent(55.0),
        }
    }
}

/// `[pockets.back]`.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct BackPockets {
    /// The wearer's left.
    pub left: BackPocket,
    /// The wearer's right.
    pub right: BackPocket,
}

/// `[pockets.back.left]` and `[pockets.back.right]`. Top width and length are in the chart.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct BackPocket {
    /// Width at the foot, above the point. Default 12.8 cm.
    pub foot_width: Length,
    /// Length of the inner side. Default 13.8 cm.
    pub side_length: Length,
    /// The outer side is this much longer than the inner (negative: shorter). Default 0.
    pub outer_drop: Length,
    /// How far down it is lined. Default none.
    pub lining: Lining,
    /// The cloth of its lining, a name from `cloths.toml`; `None` for the style's own lining.
    pub lining_cloth: Option<String>,
    /// Its stitching, when no drawing is named and the style has the seam `decoration`. Default tide.
    pub decoration: Decoration,
    /// Tide only: how many half waves lie across the pocket. Default 5.
    pub waves: u32,
    /// Tide only: how high the waves are. Default 6 mm.
    pub crest: Length,
    /// Tide only: the lines end this much higher at the outer side. Default 10 mm.
    pub rise: Length,
    /// The stitching is turned over, left for right, about the pocket's middle. Default no: the two pockets then
    /// mirror each other, and with one of them turned both read the same way.
    pub mirror: bool,
    /// The maker's drawing of its stitching, inside the style's folder, in place of the built-in one.
    pub art: Option<ArtPath>,
    /// The lines of that drawing; only there when the style was read from its folder.
    #[serde(skip)]
    pub drawing: Option<Drawing>,
}

impl Default for BackPocket {
    fn default() -> Self {
        Self {
            foot_width: Length::mm(128.0),
            side_length: Length::mm(138.0),
            outer_drop: Length::ZERO,
            lining: Lining::None,
            lining_cloth: None,
            decoration: Decoration::Tide,
            waves: 5,
            crest: Length::mm(6.0),
            rise: Length::mm(10.0),
            mirror: false,
            art: None,
            drawing: None,
        }
    }
}

/// The built-in stitching of a back pocket.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Decoration {
    /// None.
    None,
    /// Two waved lines, one below the other, that rise towards the outer side.
    Tide,
}
choices!(Decoration: None = "none", Tide = "tide");

/// How far a back pocket is lined.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lining {
    /// Not lined.
    None,
    /// The upper half.
    Half,
    /// All of it.
    Full,
}
choices!(Lining: None = "none", Half = "half", Full = "full");

/// `[pockets.extra]`.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ExtraPocket {
    /// The front it sits behind. Default left.
    pub side: Side,
    /// Finished width.
    pub width: Length,
    /// Finished depth, from the lower edge of the band.
    pub depth: Length,
    /// Centre front to its nearer edge.
    pub from_centre: Length,
}

/// `[loops]`. Their length and width are in the chart.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Loops {
    /// How many. Default 5.
    pub count: u32,
    /// The width of the belt they are made for, which hides what lies behind it. Default 38 mm.
    pub belt: Length,
}

impl Default for Loops {
    fn default() -> Self {
        Self {
            count: 5,
            belt: Length::mm(38.0),
        }
    }
}

/// `[rivets]`.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Rivets {
    /// The rivet, a trim name.
    pub trim: String,
    /// At both ends of each pocket mouth. Default yes.
    pub mouth: bool,
    /// At both top corners of the coin pocket. Default yes.
    pub coin: bool,
    /// At the top corners of the back pockets, set before the pockets are sewn and seen inside only. Default no.
    pub back_hidden: bool,
}

/// `[patch]`.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Patch {
    /// The patch, a trim name.
    pub trim: String,
    /// Centre back to its inner edge, on the wearer's right. Default 3.5 cm.
    pub from_centre: Length,
    /// Which plies of the band it is sewn through, and so when. Default the whole band.
    pub through: PatchThrough,
    /// How its letters are made. Default pressed.
    pub letters: Letters,
    /// The maker's drawing for it, inside the style's folder; `None` for the trim's text alone.
    pub art: Option<ArtPath>,
    /// The lines of that drawing; only there when the style was read from its folder.
    #[serde(skip)]
    pub drawing: Option<Drawing>,
}

/// Which plies of the band a patch is sewn through.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PatchThrough {
    /// All of them, once the band is finished: its row shows inside.
    WholeBand,
    /// The outer one alone, before the band is set on: nothing shows inside.
    OuterPly,
}
choices!(PatchThrough: WholeBand = "whole band", OuterPly = "outer ply");

/// How the letters of a patch are made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Letters {
    /// Pressed into the leather.
    Pressed,
    /// Standing up from a ground that is pressed down.
    Raised,
    /// Printed on it.
    Printed,
}
choices!(Letters: Pressed = "pressed", Raised = "raised", Printed = "printed");

/// What a label tells.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Purpose {
    /// Whose make it is.
    Brand,
    /// The size.
    Size,
    /// What it is made of.
    Fibre,
    /// How it is washed and cared for.
    Care,
    /// Where it was made.
    Origin,
    /// Which run it comes from.
    Run,
}
choices!(Purpose:
    Brand = "brand",
    Size = "size",
    Fibre = "fibre",
    Care = "care",
    Origin = "origin",
    Run = "run",
);

impl Purpose {
    /// What it is called.
    #[must_use]
    pub const fn key(self) -> Key {
        match self {
            Self::Brand => key::LABEL_TELLS_BRAND,
            Self::Size => key::LABEL_TELLS_SIZE,
            Self::Fibre => key::LABEL_TELLS_FIBRE,
            Self::Care => key::LABEL_TELLS_CARE,
            Self::Origin => key::LABEL_TELLS_ORIGIN,
            Self::Run => key::LABEL_TELLS_RUN,
        }
    }
}

/// How a label is cut and folded.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LabelFold {
    /// Cut straight, laid flat.
    Flat,
    /// Both ends turned under.
    EndFold,
    /// Folded in the middle, both ends caught in a seam.
    CentreFold,
    /// Both ends turned up at 45 degrees, to hang from a seam.
    MitreFold,
}
choices!(LabelFold:
    Flat = "flat",
    EndFold = "end fold",
    CentreFold = "centre fold",
    MitreFold = "mitre fold",
);

impl LabelFold {
    /// What it is called.
    #[must_use]
    pub const fn key(self) -> Key {
        match self {
            Self::Flat => key::LABEL_FOLD_FLAT,
            Self::EndFold => key::LABEL_FOLD_END,
            Self::CentreFold => key::LABEL_FOLD_CENTRE,
            Self::MitreFold => key::LABEL_FOLD_MITRE,
        }
    }
}

/// One `[[labels]]`.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Label {
    /// The label, a trim name.
    pub trim: String,
    /// Where it is sewn, in words.
    pub place: String,
    /// What it tells; empty when the file leaves it out.
    pub purpose: Vec<Purpose>,
    /// How it is cut and folded. Default flat.
    pub fold: LabelFold,
    /// What is written on it in this style; `None` for the trim's own text.
    pub text: Option<String>,
    /// The maker's drawing for it, inside the style's folder; `None` for the text alone.
    pub art: Option<ArtPath>,
    /// The lines of that drawing; only there when the style was read from its folder.
    #[serde(skip)]
    pub drawing: Option<Drawing>,
}

/// `[bartacks]`: how every bartack is sewn.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Bartacks {
    /// The needle yarn, a name from `yarns.toml`.
    pub yarn: String,
    /// The bobbin yarn, a name from `yarns.toml`; the needle yarn when the file leaves it out.
    pub under: String,
    /// Length of the tack. Default 10 mm.
    pub length: Length,
    /// Width of the tack. Default 2 mm.
    pub width: Length,
    /// Stitches in the tack. Default 28.
    pub stitches: u32,
    /// Whether they cross both ends of the pocket mouths; `None` for where no rivets sit there.
    pub mouth: Option<bool>,
    /// Whether they hold the top corners of the coin pocket; `None` for where no rivets sit there.
    pub coin: Option<bool>,
    /// Whether they hold the top corners of the back pockets; `None` for where no hidden rivets sit there.
    pub back_pockets: Option<bool>,
    /// Whether they hold the foot of the fly and the end of its stitching. Default true.
    pub fly: bool,
    /// Whether one holds the crotch, where rise, seat and inseams meet. Default true.
    pub crotch: bool,
}

impl Bartacks {
    /// Whether tacks cross the ends of the pocket mouths, beside these rivets.
    ///
    /// Where the style does not say, a rivet takes the place of a tack, since each holds by itself and a needle does not go
    /// through a rivet (common practice).
    #[must_use]
    pub fn at_mouth(&self, rivets: Option<&Rivets>) -> bool {
        self.mouth
            .unwrap_or(!rivets.is_some_and(|rivets| rivets.mouth))
    }

    /// Whether tacks hold the coin pocket; see [`Bartacks::at_mouth`].
    #[must_use]
    pub fn at_coin(&self, rivets: Option<&Rivets>) -> bool {
        self.coin
            .unwrap_or(!rivets.is_some_and(|rivets| rivets.coin))
    }

    /// Whether tacks hold the back pockets; see [`Bartacks::at_mouth`].
    #[must_use]
    pub fn at_back_pockets(&self, rivets: Option<&Rivets>) -> bool {
        self.back_pockets
            .unwrap_or(!rivets.is_some_and(|rivets| rivets.back_hidden))
    }
}

/// A file of the maker's own inside the style's folder, as the style names it ("art/patch.svg").
///
/// Reading a style refuses any path that could lead out of the folder.
#[derive(Clone, Debug, PartialEq, Eq, Hash, Serialize)]
pub struct ArtPath(String);

impl fmt::Display for ArtPath {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(&self.0)
    }
}

impl ArtPath {
    /// Reads a path with forward slashes, relative to the style's folder.
    ///
    /// # Errors
    /// Says why when the path is empty, absolute, has a drive, a backslash, or a part that is `.`, `..`, empty or hidden.
    pub fn new(text: &str) -> Result<Self, String> {
        if text.is_empty() {
            return Err("the path is empty".to_owned());
        }
        if text.starts_with('/') || text.contains(['\\', ':', '\0']) {
            return Err("the path leads out of the style's folder".to_owned());
        }
        for part in text.split('/') {
            match part {
                ".." => return Err("the path leads out of the style's folder".to_owned()),
                "" | "." => return Err("the path has an empty part".to_owned()),
                part if part.starts_with('.') => {
                    return Err("the path names a hidden file".to_owned());
                }
                _ => {}
            }
        }
        Ok(Self(text.to_owned()))
    }

    /// The path as written.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }

    /// Where the file is, for a style in this folder.
    #[must_use]
    pub fn in_folder(&self, style_folder: &Path) -> PathBuf {
        self.0
            .split('/')
            .fold(style_folder.to_path_buf(), |path, part| path.join(part))
    }
}
