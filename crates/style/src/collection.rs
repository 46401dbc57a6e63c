//! What a label's styles share: the collection itself, its workrooms, cloths, yarns and trims.

use indexmap::IndexMap;
use serde::Serialize;
use trade::{ArealWeight, Colour, Length, Share, YarnSize};

use crate::choices::choices;
use crate::cutting::{Along, Diagonals, WashMark, mean_shrinkage};

/// One label's work: `collection.toml` with its three sibling files.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Collection {
    /// The label's name.
    pub name: String,
    /// Whom a workroom asks, and how: a name with an address, as it is to be printed; may be empty.
    pub contact: String,
    /// The currency prices are in, three capital letters. Default "EUR".
    pub currency: String,
    /// What papers and the bench show lengths in. Default centimetres.
    pub units: Units,
    /// Languages of the papers, two-letter codes, the first is the main one. Default English.
    pub languages: Vec<String>,
    /// The workrooms by name.
    pub workrooms: IndexMap<String, Workroom>,
    /// `cloths.toml` by name.
    pub cloths: IndexMap<String, Cloth>,
    /// `yarns.toml` by name.
    pub yarns: IndexMap<String, Yarn>,
    /// `trims.toml` by name.
    pub trims: IndexMap<String, Trim>,
}

/// What lengths are shown in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Units {
    /// Centimetres.
    Centimetres,
    /// Inches.
    Inches,
}
choices!(Units: Centimetres = "cm", Inches = "in");

/// `[workrooms.NAME]`.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Workroom {
    /// Its name.
    pub name: String,
    /// Where it is; may be empty.
    pub place: String,
    /// Whom to ask there, and how; may be empty.
    pub contact: String,
    /// The language it reads, a two-letter code. Default "en".
    pub language: String,
}

/// Who sells a material, and what they call it: keys that cloths, yarns and trims have alike.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Supply {
    /// Who it is bought from; may be empty.
    pub supplier: String,
    /// The supplier's number for it; may be empty.
    pub article: String,
}

/// `[cloths.NAME]`.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Cloth {
    /// Its name.
    pub name: String,
    /// Who sells it.
    #[serde(flatten)]
    pub supply: Supply,
    /// What it is bought for.
    pub r#use: ClothUse,
    /// Weave, in words; may be empty.
    pub construction: String,
    /// Fibre content, in words; may be empty.
    pub fibre: String,
    /// Weight as bought.
    pub weight: ArealWeight,
    /// Thickness of one ply.
    pub thickness: Length,
    /// Usable width.
    pub width: Length,
    /// Woven on a shuttle loom, with a finished edge to show. Default no.
    pub selvedge: bool,
    /// What the first wash takes along the warp, where stated.
    pub warp_shrinkage: Option<Share>,
    /// What the first wash takes along the weft, where stated.
    pub weft_shrinkage: Option<Share>,
    /// How far the weft lies askew after the wash, where stated; positive where it rises to the right, face up.
    pub skew: Option<Share>,
    /// Marks measured before and after a wash; empty when none were. What is not stated follows from them.
    pub wash_test: Vec<WashMark>,
    /// A square measured after a wash. A skew that is not stated follows from it.
    pub skew_test: Option<Diagonals>,
    /// The face, as seen.
    pub colour: Colour,
    /// The colour in words; may be empty.
    pub colour_name: String,
    /// How it is dyed, in words, such as "rope-dyed indigo"; may be empty.
    pub dye: String,
    /// The inside, as seen; the face's colour when the file leaves it out.
    pub reverse_colour: Colour,
}

impl Cloth {
    /// What the first wash takes along some threads: as stated, else as the wash test measured it, else nothing.
    #[must_use]
    pub fn shrinkage(&self, along: Along) -> Share {
        let stated = match along {
            Along::Warp => self.warp_shrinkage,
            Along::Weft => self.weft_shrinkage,
        };
        let measured = || mean_shrinkage(&self.wash_test, along);
        stated.or_else(measured).unwrap_or(Share::ZERO)
    }
}

/// What a cloth is bought for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ClothUse {
    /// Panels.
    Shell,
    /// Pocket bags.
    Pocketing,
    /// Linings.
    Lining,
}
choices!(ClothUse: Shell = "shell", Pocketing = "pocketing", Lining = "lining");

/// `[yarns.NAME]`.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Yarn {
    /// Its name.
    pub name: String,
    /// Who sells it.
    #[serde(flatten)]
    pub supply: Supply,
    /// Resultant linear density.
    pub size: YarnSize,
    /// Its colour, as seen.
    pub colour: Colour,
    /// The colour in words; may be empty.
    pub colour_name: String,
    /// The supplier's number for the colour; may be empty.
    pub shade: String,
    /// What it is made of, in words; may be empty.
    pub fibre: String,
    /// Length on one cone, when stated.
    pub put_up: Option<Length>,
}

/// `[trims.NAME]`.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Trim {
    /// Its name.
    pub name: String,
    /// Who sells it.
    #[serde(flatten)]
    pub supply: Supply,
    /// What it is.
    pub kind: TrimKind,
    /// What it is made of, in words; may be empty.
    pub material: String,
    /// Its colour, as seen.
    pub colour: Colour,
    /// Across, for round trims.
    pub diameter: Option<Length>,
    /// Finished width, for flat trims.
    pub width: Option<Length>,
    /// Finished height, for flat trims.
    pub height: Option<Length>,
    /// Length, for zips.
    pub length: Option<Length>,
    /// Thickness, for patches, where stated.
    pub thickness: Option<Length>,
    /// How leather was tanned, where stated.
    pub tanning: Option<Tanning>,
    /// What is written on it; empty for nothing.
    pub text: String,
}

impl Trim {
    /// Whether it is leather: it states a tanning, or its material says so and does not name an imitation.
    #[must_use]
    pub fn is_leather(&self) -> bool {
        let material = self.material.to_lowercase();
        let says = |words: &[&str]| words.iter().any(|word| material.contains(word));
        let imitation = ["imitation", "faux", "vegan", "leatherette", "artificial"];
        self.tanning.is_some() || (says(&["leather", "hide", "suede"]) && !says(&imitation))
    }
}

/// What a trim is. It decides which sizes it must state: buttons and rivets a diameter,
/// patches and labels width and height, zips a length.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TrimKind {
    /// A metal button fixed by a nail.
    ShankButton,
    /// A button sewn on.
    SewnButton,
    /// A rivet.
    Rivet,
    /// A zip.
    Zip,
    /// A patch for the band.
    Patch,
    /// A sewn-in label.
    Label,
}
choices!(TrimKind:
    ShankButton = "shank button",
    SewnButton = "sewn button",
    Rivet = "rivet",
    Zip = "zip",
    Patch = "patch",
    Label = "label",
);

/// How leather was tanned.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Tanning {
    /// With bark and other plant extracts.
    Vegetable,
    /// With chromium salts.
    Chrome,
    /// Without chromium, by other means.
    ChromeFree,
}
choices!(Tanning: Vegetable = "vegetable", Chrome = "chrome", ChromeFree = "chrome-free");
