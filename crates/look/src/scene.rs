//! Everything that lies on one side of the laid pair, as plain lines and areas in the frame of the view: sheets from the
//! lowest up, seams that stand out, strands of sewing yarn, what is set.

use std::sync::OnceLock;

use trade::Length;

use crate::cloth::{Construction, Woven};
use crate::cloth_colour::ClothColour;
use crate::dye::Rgb;
use crate::flats::Flat;
use crate::metal::Metal;
use crate::place::Place;
use crate::sewing_yarn::{SewingYarn, Strand};
use crate::wear_zones::Zone;

/// What a sheet is made of.
#[derive(Clone, Debug)]
pub(crate) enum Stuff {
    /// Cloth: which, its reverse or its face, the direction of its warp, a place its weave is reckoned from.
    Woven {
        cloth: usize,
        reverse: bool,
        warp: Place,
        from: Place,
    },
    /// A patch or a label.
    Flat(usize),
}

/// How a sheet stands on what lies below it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Stands {
    /// It lies at this height whatever is below it.
    At(f32),
    /// It stands so much higher than what it lies on.
    On(f32),
    /// It is stiff: it lies at this height over what is below, and at its edges comes down to it.
    Bridges(f32),
    /// It lies beside others, and over what is hidden below it: of that a little shows through.
    Beside,
}

/// An area of one stuff.
#[derive(Clone, Debug)]
pub(crate) struct Sheet {
    pub(crate) outline: Vec<Place>,
    /// The area it is cut to, if any.
    pub(crate) clip: Option<usize>,
    pub(crate) stuff: Stuff,
    pub(crate) stands: Stands,
    /// The lines at which it ends, round by this radius.
    pub(crate) rims: Vec<Vec<Place>>,
    pub(crate) round: f32,
    /// Whether its cloth goes on round those lines.
    pub(crate) folds: bool,
}

/// How a seam begins or ends across.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Border {
    /// A fold: round, and seen.
    Fold,
    /// What it covers lies below a whole ply and makes a slope as wide as this.
    Slope(f32),
    /// Two plies that part at a line.
    Valley,
    /// It rises from what runs on beside it.
    Rise,
}

/// Waves that a seam lies in, because one of its plies is fuller.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Waves {
    /// From ridge to ridge.
    pub(crate) length: f32,
    /// How far a ridge runs along the seam while it crosses it.
    pub(crate) lean: f32,
    /// How much fuller than an ordinary felled seam.
    pub(crate) more: f32,
}

/// More plies along a line.
#[derive(Clone, Debug)]
pub(crate) struct Ridge {
    pub(crate) sheet: usize,
    pub(crate) line: Vec<Place>,
    /// On the left of the line (+1) or on its right (-1).
    pub(crate) side: f32,
    /// How much higher it stands.
    pub(crate) height: f32,
    pub(crate) width: f32,
    pub(crate) near: Border,
    pub(crate) far: Border,
    pub(crate) waves: Option<Waves>,
    /// Thickness of a ply, for its folds.
    pub(crate) ply: f32,
    /// Over how much of its ends it fades away.
    pub(crate) taper: f32,
}

/// A slit in the cloth.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Slit {
    pub(crate) from: Place,
    pub(crate) to: Place,
    /// It is cut into the sheets before this one.
    pub(crate) level: usize,
}

/// One cloth as it is drawn.
#[derive(Clone)]
pub(crate) struct ClothLook {
    pub(crate) woven: Woven,
    pub(crate) colour: ClothColour,
    /// Gains of closer zooms, found when first asked for.
    pub(crate) hairs: OnceLock<[Rgb; 2]>,
    pub(crate) fibres: OnceLock<[Rgb; 2]>,
}

/// One side of the laid pair, ready to be looked at from anywhere.
pub struct Scene {
    pub(crate) sheets: Vec<Sheet>,
    pub(crate) clips: Vec<Vec<Place>>,
    pub(crate) ridges: Vec<Ridge>,
    pub(crate) strands: Vec<Strand>,
    pub(crate) slits: Vec<Slit>,
    pub(crate) metals: Vec<Metal>,
    pub(crate) yarns: Vec<SewingYarn>,
    pub(crate) cloths: Vec<ClothLook>,
    pub(crate) flats: Vec<Flat>,
    pub(crate) zones: Vec<Zone>,
    /// Left, lowest, right, highest of what is drawn.
    pub(crate) bounds: [f32; 4],
    /// How far below the upper cloth the table is.
    pub(crate) table: f32,
}

/// One ply of cloth under the foot of a machine is this share of its thickness, and of several plies on one another this
/// much stands up while the rest sinks into what is below (both chosen; from memory).
const PRESSED: f32 = 0.85;
const STANDS_UP: f32 = 0.65;

/// How much higher a place stands for each ply of this thickness.
pub(crate) fn step_of(ply: f32) -> f32 {
    ply * PRESSED * STANDS_UP
}

impl Scene {
    /// What was worked out of the shell's weave, for the words beside a picture.
    pub fn shell(&self) -> Option<Construction> {
        self.cloths.first().map(|cloth| cloth.woven.construction())
    }

    /// How much higher each ply more of the shell stands as drawn.
    pub fn step(ply: Length) -> Length {
        Length::mm(f64::from(step_of(ply.to_mm() as f32)))
    }

    /// Shows the other face of plain cloth.
    pub(crate) fn turn_over(&mut self, to_reverse: bool) {
        for sheet in &mut self.sheets {
            if let Stuff::Woven { reverse, .. } = &mut sheet.stuff {
                *reverse = to_reverse;
            }
        }
    }

    /// An endless piece of one cloth and nothing else.
    pub(crate) fn plain(look: ClothLook, reverse: bool, warp: Place) -> Scene {
        const FAR: f32 = 1.0e4;
        Scene {
            sheets: vec![Sheet {
                outline: vec![[-FAR, -FAR], [FAR, -FAR], [FAR, FAR], [-FAR, FAR]],
                clip: None,
                stuff: Stuff::Woven {
                    cloth: 0,
                    reverse,
                    warp,
                    from: [0.0, 0.0],
                },
                stands: Stands::At(0.0),
                rims: Vec::new(),
                round: 0.0,
                folds: false,
            }],
            clips: Vec::new(),
            ridges: Vec::new(),
            strands: Vec::new(),
            slits: Vec::new(),
            metals: Vec::new(),
            yarns: Vec::new(),
            cloths: vec![look],
            flats: Vec::new(),
            zones: Vec::new(),
            bounds: [-FAR, -FAR, FAR, FAR],
            table: -2.0,
        }
    }
}
