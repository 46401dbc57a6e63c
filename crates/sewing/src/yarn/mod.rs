//! How much yarn a garment takes, and how its yarns read on its cloth.
//!
//! [`consumption`] goes through every row of stitches and every sewn fixing of one size and says
//! how much yarn it takes on the needle and below: length sewn × yarn per length, by the geometric
//! formulas of [`trade::consumption`], with the density of the row, the thickness of the plies at
//! that place and the width of the stitch. [`order`] adds up an order with waste and cones, and
//! [`plan`] sorts everything by colour, size and density beside its contrast to the cloth.
//!
//! Lengths are those of the pair as it is sewn, before its wash, and so are the densities the formulas take:
//! a row that the wash shortens has taken its yarn before.
//!
//! What the figures leave out: thread ends, backtacks and overlaps are in the waste, but for what a hem
//! runs on over its start, which is laid as part of its row; yarn thickness
//! is not added to that of the cloth; cloth counts at the thickness its maker states, not pressed
//! together by the foot. A row counts as it is laid, and work for which the style states no row is
//! not in the total but in [`Consumption::unstated`], with an estimate.

mod count;
mod explain;
mod ground;
mod order;
mod plan;
mod plies;
mod unstated;
mod width;

use draft::PieceId;
use style::{Construction, Size};
use trade::{Confidence, Length, StitchDensity, StitchType, Unwashed, Washed};

use crate::garment::Origin;

pub use count::{BUTTONHOLE_BITE, BUTTONHOLE_DENSITY, consumption};
pub use ground::Ground;
pub use order::{Order, YarnNeed, order, order_with};
pub use plan::{Group, GroupRow, Role, YarnPlan, plan};
pub use plies::SewnThrough;
pub(crate) use plies::thickest;
pub use unstated::{Unstated, UnstatedKind};
pub use width::{StitchWidth, overedge_bite};

/// Yarn drawn from the needles and from below (looper, bobbin, cover), without waste.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct Used {
    /// On the needles.
    pub needle: Length,
    /// Below.
    pub under: Length,
}

impl Used {
    /// Both together.
    pub fn total(self) -> Length {
        self.needle + self.under
    }
}

impl std::ops::Add for Used {
    type Output = Used;
    fn add(self, other: Used) -> Used {
        Used {
            needle: self.needle + other.needle,
            under: self.under + other.under,
        }
    }
}

impl std::iter::Sum for Used {
    fn sum<I: Iterator<Item = Used>>(all: I) -> Used {
        all.fold(Used::default(), |total, one| total + one)
    }
}

/// What an item of the list is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sewn {
    /// The row of this number within its seam.
    Row(usize),
    /// Bartacks of so many stitches.
    Bartack(u32),
    /// Keyhole buttonholes.
    Buttonhole,
}

/// From what the yarn of an item was computed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Basis {
    /// The geometric formula of the stitch type.
    Formula(Confidence),
    /// The ratio table, because no formula is published for the stitch type.
    RatioTable(Confidence),
    /// The path of the thread through a tack or a buttonhole.
    Path(Confidence),
    /// Nothing is published for the stitch type: not counted.
    Unknown,
}

/// One row on one piece, or fixings of one kind, with the yarn they take in one pair.
#[derive(Clone, Debug, PartialEq)]
pub struct Item {
    /// The seam; for a fixing the seam or trim it belongs to.
    pub seam: Origin,
    /// How that seam is made; none where the style has no such seam.
    pub construction: Option<Construction>,
    /// Row or fixing.
    pub sewn: Sewn,
    /// The row in [`crate::Garment::rows`]; none for fixings.
    pub row: Option<usize>,
    /// The piece it is on.
    pub piece: PieceId,
    /// Stitch type.
    pub stitch: StitchType,
    /// Stitches per length, as they are counted on the finished pair; none for fixings.
    pub density: Option<Washed<StitchDensity>>,
    /// Stitches per length the machine is set to; none for fixings.
    pub set_to: Option<Unwashed<StitchDensity>>,
    /// How often it is sewn in a pair.
    pub count: u32,
    /// Length of one as it is sewn: of the row, the tack, or the cut of the buttonhole.
    pub length: Unwashed<Length>,
    /// What the needle goes through.
    pub plies: SewnThrough,
    /// Bite, needle spacing, throw of a tack; nothing where the stitch has none.
    pub width: StitchWidth,
    /// Key of the needle yarn.
    pub needle_yarn: String,
    /// Key of the yarn below.
    pub under_yarn: String,
    /// The yarn of all of them.
    pub used: Used,
    /// From what it was computed.
    pub basis: Basis,
    /// Where the sharing between needle and below comes from.
    pub sharing: Confidence,
}

impl Item {
    /// Length sewn in a pair.
    pub fn sewn_length(&self) -> Unwashed<Length> {
        Unwashed::new(self.length.figure() * f64::from(self.count))
    }
}

/// The yarn of one pair in one size, without waste.
#[derive(Clone, Debug, PartialEq)]
pub struct Consumption {
    /// The size.
    pub size: Size,
    /// Every row and sewn fixing, in the order of the garment.
    pub items: Vec<Item>,
    /// Sewing a workroom does although the style states no row for it; not in any total.
    pub unstated: Vec<Unstated>,
}

impl Consumption {
    /// The whole pair.
    pub fn used(&self) -> Used {
        self.items.iter().map(|i| i.used).sum()
    }

    /// Seam by seam (fixings under the seam or trim they belong to), in the order of the garment.
    pub fn by_seam(&self) -> Vec<(&Origin, Used)> {
        let mut out: Vec<(&Origin, Used)> = Vec::new();
        for item in &self.items {
            add(&mut out, &item.seam, item.used);
        }
        out
    }

    /// Yarn by yarn, by key, in the order in which they are first used.
    pub fn by_yarn(&self) -> Vec<(&str, Used)> {
        let mut out: Vec<(&str, Used)> = Vec::new();
        for item in &self.items {
            let Used { needle, under } = item.used;
            let on_needle = Used {
                needle,
                ..Used::default()
            };
            let below = Used {
                under,
                ..Used::default()
            };
            add(&mut out, item.needle_yarn.as_str(), on_needle);
            add(&mut out, item.under_yarn.as_str(), below);
        }
        out
    }

    /// What the sewing without stated rows would take, both yarns: an estimate. The sum of the figures as they are
    /// printed, each to the nearest `step`, so that wherever they stand they add up to it.
    pub fn unstated_estimate(&self, step: Length) -> Length {
        let steps = |length: Length| (length / step).round();
        let all: f64 = self.unstated.iter().map(|u| steps(u.estimate)).sum();
        step * all
    }
}

fn add<'a, K: PartialEq + ?Sized>(to: &mut Vec<(&'a K, Used)>, key: &'a K, used: Used) {
    match to.iter_mut().find(|(k, _)| *k == key) {
        Some((_, total)) => *total = *total + used,
        None => to.push((key, used)),
    }
}

/// A length that counts: nothing where it is not a number, infinite or below zero.
fn countable(length: Length) -> Length {
    if length.is_finite() {
        length.max(Length::ZERO)
    } else {
        Length::ZERO
    }
}
