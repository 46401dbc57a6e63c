//! From a sample of the near picture, its slope and the light about it, to the light that leaves it.

use crate::asked::Asked;
use crate::dye::{Rgb, absorbed, reflected};
use crate::light::{SKY, Sun, leaves};
use crate::metal::shine;
use crate::scene::{Scene, Stuff};
use crate::sewing_yarn::paler;
use crate::tables::Tables;
use crate::wear::Causes;

/// What a sample is of.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Kind {
    Table,
    Warp,
    Weft,
    /// Sewing yarn, and the direction it lies in.
    Thread {
        yarn: u16,
        way: [f32; 2],
    },
    Metal(u16),
    Flat,
}

/// One sample.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Sample {
    pub(crate) z: f32,
    /// Height of the middle of the cloth below it.
    pub(crate) base: f32,
    /// Of cloth how much dye, of a thread its streak, of a patch its letter.
    pub(crate) tint: f32,
    /// How much it bears when something rubs.
    pub(crate) micro: f32,
    pub(crate) top: u16,
    pub(crate) kind: Kind,
}

impl Sample {
    pub(crate) fn table(z: f32) -> Sample {
        Sample {
            z,
            base: z,
            tint: 0.0,
            micro: 0.0,
            top: crate::relief::TABLE,
            kind: Kind::Table,
        }
    }
}

/// What changes slowly over the picture.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Soft {
    pub(crate) proud: f32,
    pub(crate) zone: f32,
    pub(crate) horizon: f32,
    pub(crate) sky: f32,
}

impl Soft {
    pub(crate) fn mixed(&self, other: &Soft, share: f32) -> Soft {
        let mix = |a: f32, b: f32| a + (b - a) * share;
        Soft {
            proud: mix(self.proud, other.proud),
            zone: mix(self.zone, other.zone),
            horizon: mix(self.horizon, other.horizon),
            sky: mix(self.sky, other.sky),
        }
    }
}

/// The table the pair lies on: a light grey that tints nothing (chosen).
pub(crate) const TABLE_TONE: Rgb = [0.80, 0.80, 0.79];

/// One cloth's face, ready for its samples.
#[derive(Clone, Copy)]
struct Dyed {
    warp: Rgb,
    weft: Rgb,
    ground: Rgb,
    gain: Rgb,
}

/// What turns samples into light.
pub(crate) struct Shader<'a> {
    scene: &'a Scene,
    sun: Sun,
    causes: Causes,
    tables: Tables,
    /// By sheet; what is no cloth has none.
    dyed: Vec<Option<Dyed>>,
    half: [f32; 3],
}

/// Where a sample is, and the light about it.
#[derive(Clone, Copy)]
pub(crate) struct Here {
    pub(crate) slope: [f32; 2],
    /// The tangent of the horizon towards the sun, and the sky, as the samples about it leave them.
    pub(crate) horizon: f32,
    pub(crate) sky: f32,
    pub(crate) soft: Soft,
    pub(crate) place: [f32; 2],
}

impl<'a> Shader<'a> {
    pub(crate) fn of(asked: &'a Asked<'a>, gains: &[[Rgb; 2]]) -> Shader<'a> {
        let (scene, sun, causes) = (asked.scene, asked.sun, asked.causes);
        let dyed = scene.sheets.iter().map(|sheet| match &sheet.stuff {
            Stuff::Woven { cloth, reverse, .. } => {
                let colour = &scene.cloths[*cloth].colour;
                let stain = if *reverse { 0.0 } else { causes.stain };
                Some(Dyed {
                    warp: colour.warp,
                    weft: colour.stain.map(|s| s * stain),
                    ground: colour.ground,
                    gain: gains
                        .get(*cloth)
                        .map_or([1.0; 3], |g| g[usize::from(*reverse)]),
                })
            }
            Stuff::Flat(_) => None,
        });
        let [x, y, z] = sun.towards;
        let long = (x * x + y * y + (z + 1.0) * (z + 1.0)).sqrt();
        Shader {
            scene,
            sun,
            causes,
            tables: Tables::new(),
            dyed: dyed.collect(),
            half: [x / long, y / long, (z + 1.0) / long],
        }
    }

    /// Dye lost at a place, as the exponent of what is left.
    fn lost(&self, micro: f32, soft: &Soft) -> f32 {
        self.causes.loss + self.causes.dose * soft.zone * micro * (1.0 + soft.proud)
    }

    /// The colour of a fibre that stands off a sample's yarn.
    pub(crate) fn hair(&self, sample: &Sample) -> Rgb {
        if let Kind::Thread { yarn, .. } = sample.kind {
            return self.scene.yarns[yarn as usize]
                .fibre
                .map(|c| (1.5 * c).min(0.9));
        }
        let Some(Some(dyed)) = self.dyed.get(sample.top as usize) else {
            return [0.0; 3];
        };
        let left = self.tables.fade(self.causes.loss + 0.4 * self.causes.dose);
        std::array::from_fn(|k| (1.7 * reflected(dyed.warp[k] * left + dyed.ground[k])).min(0.9))
    }

    pub(crate) fn light(&self, sample: &Sample, here: &Here) -> Rgb {
        let Here {
            slope,
            horizon,
            sky,
            soft,
            place: at,
        } = *here;
        let seen = Sun::seen_over(horizon.max(soft.horizon));
        let sky = sky * soft.sky;
        let direct = self.sun.direct(slope[0], slope[1]) * seen;
        match sample.kind {
            Kind::Table => leaves(direct, sky, TABLE_TONE),
            Kind::Warp | Kind::Weft => {
                let Some(Some(dyed)) = self.dyed.get(sample.top as usize) else {
                    return [0.0; 3];
                };
                let left = self.tables.fade(self.lost(sample.micro, &soft));
                let warp = sample.kind == Kind::Warp;
                let albedo: Rgb = std::array::from_fn(|k| {
                    let dye = if warp {
                        dyed.warp[k] * sample.tint.max(0.0)
                    } else {
                        dyed.weft[k]
                    };
                    let ground = if warp {
                        dyed.ground[k]
                    } else {
                        dyed.ground[k] * sample.tint
                    };
                    reflected(dye * left + ground)
                });
                let out = leaves(direct, sky, albedo);
                std::array::from_fn(|k| out[k] * dyed.gain[k])
            }
            Kind::Thread { yarn, way } => {
                self.thread(sample, (yarn as usize, way), slope, (direct, sky), &soft)
            }
            Kind::Metal(index) => {
                let metal = &self.scene.metals[index as usize];
                shine(metal, &self.sun, slope, (seen, sky), at, self.causes.age)
            }
            Kind::Flat => self.flat(sample, slope, (direct, sky), at),
        }
    }

    fn thread(
        &self,
        sample: &Sample,
        (yarn, way): (usize, [f32; 2]),
        slope: [f32; 2],
        (direct, sky): (f32, f32),
        soft: &Soft,
    ) -> Rgb {
        let yarn = &self.scene.yarns[yarn];
        let left = self
            .tables
            .fade(0.30 * self.lost(1.0, soft) * self.causes.rinsed);
        let albedo = yarn.fibre.map(|c| {
            let k = absorbed(c.clamp(0.003, 0.9)) * (1.0 - 0.22 * sample.tint);
            reflected(paler(k, left))
        });
        let out = leaves(direct, sky, albedo);
        // A little light mirrored along the fibres.
        let up = 1.0 / (1.0 + slope[0] * slope[0] + slope[1] * slope[1]).sqrt();
        let n = [-slope[0] * up, -slope[1] * up, up];
        let dot = |a: [f32; 3], b: [f32; 3]| a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
        let along = [way[0], way[1], 0.0];
        let nt = dot(n, along);
        let t = [along[0] - n[0] * nt, along[1] - n[1] * nt, -n[2] * nt];
        let th = dot(t, self.half);
        let sheen = power(1.0 - th * th, 12) * power(dot(n, self.half), 6) * direct * 0.03;
        out.map(|c| c + sheen)
    }

    fn flat(
        &self,
        sample: &Sample,
        slope: [f32; 2],
        (direct, sky): (f32, f32),
        at: [f32; 2],
    ) -> Rgb {
        let Some(Stuff::Flat(index)) = self.scene.sheets.get(sample.top as usize).map(|s| &s.stuff)
        else {
            return [0.0; 3];
        };
        let flat = &self.scene.flats[*index];
        let on = crate::flats::OnFlat {
            z: 0.0,
            letter: sample.tint,
        };
        let albedo = flat.albedo(&on, at[0], at[1], self.causes.age);
        let out = leaves(direct, sky, albedo);
        let up = 1.0 / (1.0 + slope[0] * slope[0] + slope[1] * slope[1]).sqrt();
        let towards = (self.half[2] - slope[0] * self.half[0] - slope[1] * self.half[1]) * up;
        let gloss = (0.012 + 0.035 * self.causes.age) * power(towards, 16) * direct;
        out.map(|c| c + gloss * (1.0 - SKY))
    }
}

/// A whole power of what is not below nothing.
fn power(base: f32, exponent: u32) -> f32 {
    let mut out = 1.0;
    let mut square = base.clamp(0.0, 1.0);
    let mut left = exponent;
    while left > 0 {
        if left & 1 == 1 {
            out *= square;
        }
        square *= square;
        left >>= 1;
    }
    out
}
