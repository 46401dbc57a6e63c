//! How far a pair is worn, from raw to worn, and what that means for each of its causes.
//!
//! All strengths are choices, from memory; no readable table of fading by wear was found. A worn pair is a forecast.

use trade::Share;

/// How far a pair is worn: 0 is raw, 1 worn.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Wear(f32);

impl Wear {
    /// As it leaves the workroom, unwashed.
    pub const RAW: Wear = Wear(0.0);
    /// After its first wash.
    pub const RINSED: Wear = Wear(0.2);
    /// Worn for a year or two and washed now and then.
    pub const WORN: Wear = Wear(1.0);

    /// So far between raw and worn; what is not between them counts as the nearer end.
    pub fn of(share: Share) -> Wear {
        let share = share.to_ratio() as f32;
        Wear(if share.is_finite() {
            share.clamp(0.0, 1.0)
        } else {
            0.0
        })
    }

    /// As a share of the way from raw to worn.
    pub fn share(self) -> Share {
        Share::ratio(f64::from(self.0))
    }

    pub(crate) fn causes(self) -> Causes {
        let rinsed = (self.0 / Wear::RINSED.0).min(1.0);
        let worn = ((self.0 - Wear::RINSED.0) / (1.0 - Wear::RINSED.0)).max(0.0);
        let mark = |raw: f32, at_rinse: f32, at_end: f32| {
            raw + (at_rinse - raw) * rinsed + (at_end - at_rinse) * worn
        };
        Causes {
            rinsed,
            feed: mark(0.004, 0.012, 0.016),
            loss: mark(0.0, 0.15, 0.45),
            dose: mark(0.0, 0.0, 2.2),
            hairs: mark(3.0, 7.0, 9.0),
            stain: mark(1.0, 0.6, 0.3),
            age: mark(0.0, 0.05, 0.8),
        }
    }
}

/// What wear does, each by its cause.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Causes {
    /// How much of the first wash is done.
    pub(crate) rinsed: f32,
    /// How much longer the fuller ply of a seam is.
    pub(crate) feed: f32,
    /// Dye lost everywhere, as the exponent of what is left.
    pub(crate) loss: f32,
    /// Rubbing where cloth bears.
    pub(crate) dose: f32,
    /// Fibre ends a square millimetre that stand off.
    pub(crate) hairs: f32,
    /// Loose dye on the weft, of what the stated colours allow.
    pub(crate) stain: f32,
    /// Of leather: air, light and hands.
    pub(crate) age: f32,
}
