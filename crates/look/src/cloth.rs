//! What a cloth is woven of: spacings, yarns and waves, derived from its weight and its weave where no file states them.
//!
//! Weight = ends × yarn × (1 + crimp) over both systems (costcalculator.calculator.city; the same sum in tex), yarn
//! diameter 0.03733 √tex mm (Peirce, at textilecoach.net), waves 4/3 · spacing · √crimp (business.vsnl.com,
//! YarnCloth). Cover, size, flattening and unevenness are working values from memory.

use style::{Along, Cloth};
use trade::{Length, Share, YarnSize};

/// Peirce: 1/(28 √Ne) inch, as a factor on the square root of tex, in millimetres.
const DIAMETER: f32 = 0.037_33;
/// Starch on the warp of loomstate cloth, as a share of its weight.
const SIZE_ON_WARP: f32 = 0.08;
/// Height of a section over its width: the weft is twisted less and lies freer.
const FLAT_WARP: f32 = 0.76;
const FLAT_WEFT: f32 = 0.62;
/// Turns a metre of single yarns are this over the root of their tex.
pub(crate) const TWIST: f32 = 3800.0;

/// What was worked out of a cloth, for whoever says what a picture rests on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Construction {
    /// Both yarns; derived from weight, cover and crimp.
    pub yarn: YarnSize,
    /// From end to end across the cloth; derived from the cover of the warp.
    pub end_spacing: Length,
    /// From pick to pick along it; derived from the cover of the weft.
    pub pick_spacing: Length,
    /// From the crowns of the face to those of the reverse; derived from how the yarns touch.
    pub thickness: Length,
    /// Ends and picks after which the weave comes again; as the file's words say.
    pub repeat: u8,
    /// How much longer the warp is than the cloth it lies in; a working value from memory.
    pub warp_crimp: Share,
    /// The same of the weft.
    pub weft_crimp: Share,
}

/// A weave by how many ends in a row lie over a pick, and how many under it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Twill {
    pub(crate) under: i32,
    pub(crate) repeat: i32,
    pub(crate) right_hand: bool,
}

impl Twill {
    /// From the words of the file: "3/1 right-hand twill", "2/1 drill", "plain weave". A three-to-one twill of the
    /// right hand where they say nothing.
    pub(crate) fn of(words: &str) -> Twill {
        let low = words.to_lowercase();
        let number = |text: Option<&str>, from_end: bool| {
            let text = text?;
            let digits: String = match from_end {
                true => text
                    .chars()
                    .rev()
                    .take_while(char::is_ascii_digit)
                    .collect(),
                false => text.chars().take_while(char::is_ascii_digit).collect(),
            };
            digits.parse::<i32>().ok().filter(|n| (1..=5).contains(n))
        };
        let halves = low.split_once('/');
        let over = number(halves.map(|h| h.0), true);
        let under = number(halves.map(|h| h.1), false);
        let (over, under) = match (over, under) {
            (Some(over), Some(under)) => (over, under),
            _ if low.contains("plain") => (1, 1),
            _ => (3, 1),
        };
        Twill {
            under,
            repeat: over + under,
            right_hand: !low.contains("left"),
        }
    }

    /// Whether an end lies over a pick on the face, by how far the pick is ahead of the end in the repeat.
    pub(crate) fn over(self, phase: i32) -> bool {
        phase.rem_euclid(self.repeat) >= self.under
    }
}

/// One system of yarns: warp or weft.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct System {
    /// From yarn to yarn.
    pub(crate) pitch: f32,
    /// Yarns a millimetre.
    pub(crate) per_mm: f32,
    /// Half width and half height of a section.
    pub(crate) half: [f32; 2],
    /// How high its wave is, crest to trough of its axis.
    pub(crate) wave: f32,
    pub(crate) crimp: f32,
}

/// A cloth as the picture weaves it, millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Woven {
    pub(crate) twill: Twill,
    pub(crate) warp: System,
    pub(crate) weft: System,
    pub(crate) tex: f32,
    pub(crate) diameter: f32,
    /// How far yarns stray sideways, how uneven they are, and the relief of single fibres.
    pub(crate) stray: f32,
    pub(crate) uneven: f32,
    pub(crate) fibre: f32,
    shrinkage: [f32; 2],
}

impl Woven {
    pub(crate) fn of(cloth: &Cloth) -> Woven {
        let twill = Twill::of(&cloth.construction);
        // A plain weave binds so often that its yarns have to stand apart.
        let cover = match twill.repeat {
            2 => [0.62, 0.55],
            _ => [0.95, 0.63],
        };
        let grams = cloth.weight.to_gsm() as f32;
        let grams = if grams.is_finite() {
            grams.clamp(40.0, 1200.0)
        } else {
            400.0
        };
        let shrinkage = [Along::Warp, Along::Weft].map(|along| {
            let share = cloth.shrinkage(along).to_ratio() as f32;
            if share.is_finite() {
                share.clamp(0.0, 0.25)
            } else {
                0.0
            }
        });
        let crimp = [0.12, 0.04];
        let sum = cover[0] * (1.0 + crimp[0]) * (1.0 + SIZE_ON_WARP) + cover[1] * (1.0 + crimp[1]);
        let root = grams * DIAMETER / sum;
        let mut woven = Woven::from_yarn(twill, root * root, cover, crimp);
        woven.shrinkage = shrinkage;
        woven
    }

    /// What stands in for a cloth that no file knows: a twill of about 14 oz/yd².
    pub(crate) fn usual() -> Woven {
        Woven::from_yarn(Twill::of(""), 96.0, [0.95, 0.63], [0.12, 0.04])
    }

    /// The woven edge of a selvedge cloth: undyed, plain.
    pub(crate) fn selvedge() -> Woven {
        Woven::from_yarn(Twill::of("plain"), 60.0, [0.62, 0.55], [0.08, 0.05])
    }

    fn from_yarn(twill: Twill, tex: f32, cover: [f32; 2], crimp: [f32; 2]) -> Woven {
        let d = DIAMETER * tex.sqrt();
        let pitch = cover.map(|c| d / c);
        let half = |flat: f32| [d / 2.0 / flat.sqrt(), d / 2.0 * flat.sqrt()];
        let (a, b) = (half(FLAT_WARP), half(FLAT_WEFT));
        let repeat = twill.repeat as f32;
        // Waves as the crimps ask, two crossings a repeat, both scaled until the yarns touch.
        let wave =
            |pitch: f32, crimp: f32| pitch * (8.0 * repeat * crimp).sqrt() / std::f32::consts::PI;
        let (up, across) = (wave(pitch[1], crimp[0]), wave(pitch[0], crimp[1]));
        let touch = 2.0 * (a[1] + b[1]) / (up + across);
        let system = |pitch: f32, half, wave: f32, crimp| System {
            pitch,
            per_mm: 1.0 / pitch,
            half,
            wave: wave * touch,
            crimp,
        };
        Woven {
            twill,
            warp: system(pitch[0], a, up, crimp[0]),
            weft: system(pitch[1], b, across, crimp[1]),
            tex,
            diameter: d,
            stray: 0.03,
            uneven: 0.12,
            fibre: 0.014,
            shrinkage: [0.0; 2],
        }
    }

    /// The same cloth when so much of its first wash is done: ends nearer by what the weft shrinks, picks by what the
    /// warp does, more crimp, more fibre ends.
    pub(crate) fn washed(&self, share: f32) -> Woven {
        let [along, across] = self.shrinkage.map(|s| s * share);
        // The yarn itself swells and takes part of the shrinkage (from memory).
        let tex = self.tex * (1.0 + 0.3 * along);
        let d = DIAMETER * tex.sqrt();
        let cover = [
            d / (self.warp.pitch * (1.0 - across)),
            d / (self.weft.pitch * (1.0 - along)),
        ];
        let more = 0.6 * along;
        let crimp = [self.warp.crimp + more, self.weft.crimp + 0.6 * along];
        Woven {
            stray: self.stray,
            fibre: self.fibre * (1.0 + 0.3 * share),
            shrinkage: self.shrinkage,
            ..Woven::from_yarn(self.twill, tex, cover, crimp)
        }
    }

    /// Without any unevenness: what is baked for the distance.
    pub(crate) fn even(&self) -> Woven {
        Woven {
            stray: 0.0,
            uneven: 0.0,
            ..*self
        }
    }

    /// How high the crowns of the face stand above the middle of the cloth.
    pub(crate) fn crown(&self) -> f32 {
        (self.warp.wave / 2.0 + self.warp.half[1]).max(self.weft.wave / 2.0 + self.weft.half[1])
    }

    /// Width and height of the repeat.
    pub(crate) fn repeat(&self) -> [f32; 2] {
        let n = self.twill.repeat as f32;
        [n * self.warp.pitch, n * self.weft.pitch]
    }

    pub(crate) fn construction(&self) -> Construction {
        let mm = |v: f32| Length::mm(f64::from(v));
        Construction {
            yarn: YarnSize::tex(f64::from(self.tex)),
            end_spacing: mm(self.warp.pitch),
            pick_spacing: mm(self.weft.pitch),
            thickness: mm(self.crown() * 2.0),
            repeat: self.twill.repeat as u8,
            warp_crimp: Share::ratio(f64::from(self.warp.crimp)),
            weft_crimp: Share::ratio(f64::from(self.weft.crimp)),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_weave_is_read_from_its_words() {
        let of = |words| {
            let t = Twill::of(words);
            (t.repeat - t.under, t.under, t.right_hand)
        };
        assert_eq!(of("3/1 right-hand twill"), (3, 1, true));
        assert_eq!(of("2/1 left-hand twill"), (2, 1, false));
        assert_eq!(of("plain weave"), (1, 1, true));
        assert_eq!(of(""), (3, 1, true));
        assert_eq!(of("99/7 nonsense"), (3, 1, true));
    }

    /// Cotton of 14 oz/yd² has 66 ends and 44 picks an inch of Ne 6.1 by the same published formula worked apart in a
    /// table; its weight comes back from them.
    #[test]
    fn fourteen_ounces_are_woven_as_the_formula_says() {
        let twill = Twill::of("3/1");
        let sum = 0.95 * 1.12 * 1.08 + 0.63 * 1.04;
        let root = 474.7_f32 * DIAMETER / sum;
        let woven = Woven::from_yarn(twill, root * root, [0.95, 0.63], [0.12, 0.04]);
        assert!((25.4 / woven.warp.pitch - 66.0).abs() < 0.6);
        assert!((25.4 / woven.weft.pitch - 44.0).abs() < 0.6);
        assert!((590.54 / woven.tex - 6.1).abs() < 0.1);
        let per_cm = [10.0 / woven.warp.pitch, 10.0 / woven.weft.pitch];
        let grams = woven.tex / 10.0 * (per_cm[0] * 1.12 * 1.08 + per_cm[1] * 1.04);
        assert!((grams - 474.7).abs() < 1.0, "{grams}");
    }

    #[test]
    fn washing_draws_ends_and_picks_together() {
        let mut woven = Woven::from_yarn(Twill::of("3/1"), 96.0, [0.95, 0.63], [0.12, 0.04]);
        woven.shrinkage = [0.08, 0.04];
        let washed = woven.washed(1.0);
        assert!((washed.warp.pitch / woven.warp.pitch - 0.96).abs() < 1e-4);
        assert!((washed.weft.pitch / woven.weft.pitch - 0.92).abs() < 1e-4);
        assert!(washed.warp.crimp > woven.warp.crimp);
    }
}
