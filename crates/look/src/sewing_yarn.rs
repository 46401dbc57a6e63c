//! Sewing yarn: plies twisted about one another, lying in the cloth from hole to hole.

use trade::{Colour, Length};

use crate::chance::{chance, over};
use crate::dye::{Rgb, absorbed, linear, reflected};
use crate::place::Place;
use crate::tables::Tables;

/// One float of sewing yarn from hole to hole.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Strand {
    pub(crate) from: Place,
    pub(crate) to: Place,
    pub(crate) yarn: usize,
    /// It lies on the sheets before this one, and below it.
    pub(crate) level: usize,
    pub(crate) bow: f32,
    /// How deep it dives at its ends, and how high it rests, in diameters.
    pub(crate) sink: f32,
    pub(crate) rest: f32,
    /// Whether it draws the cloth in.
    pub(crate) pulls: bool,
}

/// Corespun yarn is 0.0384 √tex thick (`trade::yarn`, from the volume of its fibre).
const DIAMETER: f32 = 0.0384;
/// Turns a metre of a three-ply yarn are this over the root of its tex (from memory).
const TWIST: f32 = 4700.0;
const PLIES: usize = 3;

/// A sewing yarn as it is drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct SewingYarn {
    pub(crate) diameter: f32,
    /// Millimetres a turn.
    pub(crate) lead: f32,
    /// Its stated colour.
    pub(crate) colour: Rgb,
    /// The colour of its fibres: a length of it on cloth, seen along with its shaded flanks, has the stated one.
    pub(crate) fibre: Rgb,
}

impl SewingYarn {
    pub(crate) fn of(colour: Colour, diameter: Length) -> SewingYarn {
        let d = diameter.to_mm() as f32;
        let diameter = if d.is_finite() {
            d.clamp(0.08, 1.2)
        } else {
            0.3
        };
        let root = diameter / DIAMETER;
        SewingYarn {
            diameter,
            lead: 1000.0 * root / TWIST,
            colour: linear(colour),
            fibre: linear(colour),
        }
    }
}

impl SewingYarn {
    /// One of its colours when so much of its dye is left; fading goes towards undyed fibre.
    pub(crate) fn faded(&self, colour: Rgb, left: f32) -> Rgb {
        colour.map(|c| reflected(paler(absorbed(c.clamp(0.003, 0.9)), left)))
    }
}

/// Absorption when so much dye is left; that of undyed fibre stays.
pub(crate) fn paler(k: f32, left: f32) -> f32 {
    const BARE: f32 = 0.25;
    if k > BARE {
        BARE + (k - BARE) * left
    } else {
        k
    }
}

/// A point on a strand.
#[derive(Clone, Copy, Debug)]
pub(crate) struct OnStrand {
    /// Above the cloth's crowns.
    pub(crate) z: f32,
    /// Streak of its fibres, -1 to 1.
    pub(crate) fibre: f32,
}

/// A strand, ready to be asked point by point.
pub(crate) struct Lying<'a> {
    strand: &'a Strand,
    yarn: &'a SewingYarn,
    long: f32,
    pub(crate) way: [f32; 2],
    start: f32,
    tables: Tables,
}

impl<'a> Lying<'a> {
    pub(crate) fn of(strand: &'a Strand, yarn: &'a SewingYarn) -> Lying<'a> {
        let (a, b) = (strand.from, strand.to);
        let long = ((b[0] - a[0]).powi(2) + (b[1] - a[1]).powi(2))
            .sqrt()
            .max(0.02);
        Lying {
            strand,
            yarn,
            long,
            way: [(b[0] - a[0]) / long, (b[1] - a[1]) / long],
            start: chance((a[0] * 97.0) as i32, (a[1] * 89.0) as i32, 5),
            tables: Tables::new(),
        }
    }

    /// How far from its line something of it lies.
    pub(crate) fn reach(&self) -> f32 {
        self.yarn.diameter * 0.8 + self.strand.bow.abs()
    }

    pub(crate) fn at(&self, x: f32, y: f32) -> Option<OnStrand> {
        let (strand, yarn) = (self.strand, self.yarn);
        let d = yarn.diameter;
        let r = d / 2.0;
        let (dx, dy) = (x - strand.from[0], y - strand.from[1]);
        let s = dx * self.way[0] + dy * self.way[1];
        if s < -0.3 * r || s > self.long + 0.3 * r {
            return None;
        }
        let t = (s / self.long).clamp(0.0, 1.0);
        let bow = 4.0 * t * (1.0 - t);
        let v = dy * self.way[0] - dx * self.way[1] - strand.bow * bow;
        if v.abs() > r * 1.05 {
            return None;
        }
        let dive = |from_end: f32| (1.0 - from_end / (2.0 * d)).clamp(0.0, 1.0);
        let (e0, e1) = (dive(s), dive(self.long - s));
        let drawn = |e: f32| e * e * (0.8 + 0.2 * e);
        let middle = d * (strand.rest + 0.06 * bow) - strand.sink * d * (drawn(e0) + drawn(e1));
        // Plies that just touch in a round yarn, pressed on one another; drawn together where the yarn dives.
        let rp = r * 0.464_1 * 1.06;
        let rc = r * 0.535_9;
        let most = e0.max(e1);
        let v = v / (1.0 - 0.30 * most * most);
        let turn = s / yarn.lead + self.start;
        let mut best: Option<(f32, f32, usize)> = None;
        for ply in 0..PLIES {
            let turn = turn + ply as f32 / PLIES as f32;
            let o = (v - rc * self.tables.cosine(turn)) / rp;
            if o.abs() < 1.0 {
                let z = rc * self.tables.sine(turn) + rp * (1.0 - o * o).sqrt();
                if best.is_none_or(|b| z > b.0) {
                    best = Some((z, o, ply));
                }
            }
        }
        let (z, o, ply) = best?;
        let own = 9.0 * ply as f32;
        let fibre = 0.6 * over(o * rp / 0.03 + own, s / 0.5, 21)
            + 0.4 * over(o * rp / 0.014 + own, s / 0.3, 22);
        Some(OnStrand {
            z: middle + z + 0.008 * fibre,
            fibre,
        })
    }
}
