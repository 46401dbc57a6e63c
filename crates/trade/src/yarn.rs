//! Sewing yarns: the sizes used on jeans and their diameters.

use std::f64::consts::PI;

use crate::needle::NeedleSize;
use crate::{ArealWeight, Confidence, Length, YarnSize};

/// A yarn size used on jeans.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct YarnRow {
    /// The size.
    pub size: YarnSize,
    /// The metric tickets printed on labels of this size.
    pub tickets: &'static [u16],
    /// The finest and the heaviest needle usual for it.
    pub needles: (NeedleSize, NeedleSize),
    /// What it is usually chosen for.
    pub usual_use: &'static str,
    /// Where tickets, needles and use come from.
    pub confidence: Confidence,
}

impl YarnRow {
    /// The diameter as a corespun yarn; see [`yarn_diameter`].
    pub fn diameter(&self) -> Length {
        yarn_diameter(self.size)
    }
}

const fn row(
    tex: f64,
    tickets: &'static [u16],
    needles: (u16, u16),
    usual_use: &'static str,
) -> YarnRow {
    YarnRow {
        size: YarnSize::tex(tex),
        tickets,
        needles: (NeedleSize::metric(needles.0), NeedleSize::metric(needles.1)),
        usual_use,
        confidence: Confidence::FromMemory,
    }
}

/// Yarn sizes used on jeans, finest first. Labels round tickets, so two may share a size; one
/// thread maker's leaflet asks for needles 90 to 110 with tex 30.
pub const YARN_SIZES: [YarnRow; 12] = [
    row(24.0, &[120, 125], (65, 80), "overedge loopers, pocket bags"),
    row(27.0, &[120], (70, 80), "overedge"),
    row(30.0, &[100], (80, 100), "overedge, bobbin on light denim"),
    row(
        40.0,
        &[75, 80],
        (90, 100),
        "overedge, loopers, pocketing, seams in 4 to 8 oz denim",
    ),
    row(
        60.0,
        &[50],
        (100, 110),
        "looper or bobbin under topstitching, seams in 8 to 12 oz denim",
    ),
    row(
        80.0,
        &[36],
        (110, 120),
        "lighter topstitching, seams in 12 to 14 oz denim",
    ),
    row(
        105.0,
        &[30],
        (110, 130),
        "classic topstitching on 12 to 16 oz denim",
    ),
    row(120.0, &[25], (120, 140), "bold topstitching"),
    row(150.0, &[20], (130, 150), "heavy decorative topstitching"),
    row(180.0, &[16, 18], (140, 160), "extra heavy topstitching"),
    row(240.0, &[12], (160, 180), "extra heavy topstitching"),
    row(300.0, &[10], (180, 200), "extra heavy topstitching"),
];

const FIRST: &YarnRow = &YARN_SIZES[0];

/// The row of [`YARN_SIZES`] nearest to a size, by ratio.
pub fn nearest_row(size: YarnSize) -> &'static YarnRow {
    let off = |row: &YarnRow| (size / row.size).ln().abs();
    YARN_SIZES
        .iter()
        .min_by(|a, b| off(a).total_cmp(&off(b)))
        .unwrap_or(FIRST)
}

/// How a yarn is built, for its diameter.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum YarnBuild {
    /// A polyester filament core wrapped in cotton.
    Corespun,
    /// Spun polyester.
    SpunPolyester,
    /// Bonded polyester or nylon filament.
    BondedFilament,
    /// Spun cotton.
    Cotton,
}

impl YarnBuild {
    /// The diameter of a yarn of this build, as a factor on the square root of its tex.
    ///
    /// Corespun and spun polyester: from the volume at packing 0.6 and fibre densities of 1.44 and
    /// 1.38 g/cm3, see [`diameter_from_volume`]. Cotton: Peirce's 1/(28 √Ne) inch. Bonded
    /// filament: nominal values, from memory.
    pub fn diameter(self, size: YarnSize) -> Length {
        let factor = match self {
            Self::Corespun => 0.0384,
            Self::SpunPolyester => 0.0392,
            Self::BondedFilament => 0.035,
            Self::Cotton => 0.03733,
        };
        Length::mm(factor * size.to_tex().max(0.0).sqrt())
    }

    /// Where the factor of [`Self::diameter`] comes from.
    pub const fn confidence(self) -> Confidence {
        match self {
            Self::Corespun | Self::SpunPolyester => {
                Confidence::Derived("the volume of a cylinder at a usual packing of 0.6")
            }
            Self::BondedFilament | Self::Cotton => Confidence::FromMemory,
        }
    }
}

/// The diameter of a corespun yarn: 0.0384 √tex in millimetres. A negative size counts as none.
pub fn yarn_diameter(size: YarnSize) -> Length {
    YarnBuild::Corespun.diameter(size)
}

/// The diameter of a yarn from its volume: √(4 tex / (1000 π ρ φ)) millimetres, with the fibre
/// density ρ in g/cm3 and the packing φ between 0 and 1 (0.55 to 0.65 is usual). None when the
/// size is negative, the density or the packing not above zero, or the result not finite.
pub fn diameter_from_volume(size: YarnSize, fibre_g_per_cm3: f64, packing: f64) -> Option<Length> {
    let makes_sense = size >= YarnSize::ZERO && fibre_g_per_cm3 > 0.0 && packing > 0.0;
    let mm = (4.0 * size.to_tex() / (1000.0 * PI * fibre_g_per_cm3 * packing)).sqrt();
    (makes_sense && mm.is_finite()).then_some(Length::mm(mm))
}

/// Yarn sizes usual for a weight of denim, in tex, finest first.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct YarnAdvice {
    /// The heaviest cloth the advice is for.
    pub up_to: ArealWeight,
    /// On the needle.
    pub needle: &'static [YarnSize],
    /// On the looper or bobbin.
    pub under: &'static [YarnSize],
    /// On the overedge.
    pub overedge: &'static [YarnSize],
    /// Where the advice comes from.
    pub confidence: Confidence,
}

const T24: YarnSize = YarnSize::tex(24.0);
const T27: YarnSize = YarnSize::tex(27.0);
const T40: YarnSize = YarnSize::tex(40.0);
const T60: YarnSize = YarnSize::tex(60.0);
const T80: YarnSize = YarnSize::tex(80.0);
const T105: YarnSize = YarnSize::tex(105.0);
const T120: YarnSize = YarnSize::tex(120.0);
const T150: YarnSize = YarnSize::tex(150.0);

/// Yarn sizes by weight of denim, lightest first; the last row has no upper end.
pub const YARNS_BY_WEIGHT: [YarnAdvice; 4] = [
    YarnAdvice {
        up_to: ArealWeight::oz_per_yd2(7.5),
        needle: &[T40, T60],
        under: &[T27, T40],
        overedge: &[T24, T27],
        confidence: Confidence::FromMemory,
    },
    YarnAdvice {
        up_to: ArealWeight::oz_per_yd2(10.5),
        needle: &[T60, T80],
        under: &[T40, T60],
        overedge: &[T27, T40],
        confidence: Confidence::FromMemory,
    },
    YarnAdvice {
        up_to: ArealWeight::oz_per_yd2(14.5),
        needle: &[T80, T105, T120],
        under: &[T60, T80],
        overedge: &[T40],
        confidence: Confidence::FromMemory,
    },
    YarnAdvice {
        up_to: ArealWeight::gsm(f64::INFINITY),
        needle: &[T105, T120, T150],
        under: &[T80],
        overedge: &[T40, T60],
        confidence: Confidence::FromMemory,
    },
];

const HEAVIEST: &YarnAdvice = &YARNS_BY_WEIGHT[3];

/// The yarn sizes usual for a weight of denim. From memory, to be confirmed.
pub fn yarns_for(cloth: ArealWeight) -> &'static YarnAdvice {
    YARNS_BY_WEIGHT
        .iter()
        .find(|row| cloth <= row.up_to)
        .unwrap_or(HEAVIEST)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    fn near(found: f64, wanted: f64, within: f64) {
        assert!(
            (found - wanted).abs() <= within,
            "{found} is not {wanted} ± {within}"
        );
    }

    /// The definitions of a thread maker's page on thread numbering: dtex is ten times and denier
    /// nine times tex, Nm is 1000 and Ne is 590.54 over tex.
    #[test]
    fn size_systems_convert() {
        let size = YarnSize::tex(60.0);
        near(size.to_dtex(), 600.0, 1e-9);
        near(size.to_denier(), 540.0, 1e-9);
        near(size.to_nm(), 16.667, 0.0005);
        near(size.to_ne() * 60.0, 590.54, 0.005);
        near(YarnSize::ne(12.0).to_tex(), 590.54 / 12.0, 0.0005);
    }

    /// Tex 30 corespun is sold as ticket 100: the same maker's page on hemming threads. The
    /// rule 3000/tex itself is from memory.
    #[test]
    fn tickets_are_three_thousand_over_tex() {
        near(YarnSize::tex(30.0).to_ticket(), 100.0, 1e-9);
        for row in YARN_SIZES {
            let ticket = row.size.to_ticket();
            let off = |label: &u16| (f64::from(*label) / ticket - 1.0).abs();
            assert!(
                row.tickets.iter().any(|label| off(label) <= 0.09),
                "{}",
                row.size
            );
        }
    }

    /// 0.0384 √tex, worked by hand.
    #[test]
    fn corespun_diameters() {
        let wanted = [
            0.19, 0.20, 0.21, 0.24, 0.30, 0.34, 0.39, 0.42, 0.47, 0.52, 0.60, 0.67,
        ];
        for (row, mm) in YARN_SIZES.iter().zip(wanted) {
            near(row.diameter().to_mm(), mm, 0.006);
        }
        assert_eq!(yarn_diameter(YarnSize::tex(-1.0)), Length::ZERO);
    }

    /// The factors follow from the volume of a cylinder at packing 0.6.
    #[test]
    fn factors_follow_from_the_volume() {
        let one = YarnSize::tex(1.0);
        near(
            diameter_from_volume(one, 1.44, 0.6).unwrap().to_mm(),
            0.0384,
            0.00005,
        );
        near(
            diameter_from_volume(one, 1.38, 0.6).unwrap().to_mm(),
            0.0392,
            0.00005,
        );
        assert_eq!(diameter_from_volume(one, 0.0, 0.6), None);
        assert_eq!(diameter_from_volume(YarnSize::tex(-1.0), 1.4, 0.6), None);
    }

    /// Peirce's 1/(28 √Ne) inch, from memory, worked by hand for tex 60 and 105.
    #[test]
    fn cotton_follows_peirce() {
        for (tex, mm) in [(60.0, 0.289), (105.0, 0.383)] {
            let size = YarnSize::tex(tex);
            near(YarnBuild::Cotton.diameter(size).to_mm(), mm, 0.0006);
            near(1.0 / (28.0 * size.to_ne().sqrt()) * 25.4, mm, 0.0006);
        }
    }

    /// Nominal diameters of bonded filament, from memory.
    #[test]
    fn bonded_filament_is_finer() {
        for (tex, mm) in [
            (70.0, 0.29),
            (90.0, 0.33),
            (135.0, 0.42),
            (210.0, 0.51),
            (270.0, 0.58),
        ] {
            near(
                YarnBuild::BondedFilament
                    .diameter(YarnSize::tex(tex))
                    .to_mm(),
                mm,
                0.015,
            );
        }
    }

    #[test]
    fn the_nearest_row_is_by_ratio() {
        assert_eq!(nearest_row(YarnSize::tex(100.0)).size, T105);
        assert_eq!(nearest_row(YarnSize::tex(1.0)).size, T24);
        assert_eq!(
            nearest_row(YarnSize::tex(9999.0)).size,
            YarnSize::tex(300.0)
        );
        assert!(YARN_SIZES.contains(nearest_row(YarnSize::tex(f64::NAN))));
        assert!(YARN_SIZES.is_sorted_by(|a, b| a.size < b.size && a.needles <= b.needles));
    }

    /// From memory: 11 to 14 oz takes tex 80 to 120 on the needle.
    #[test]
    fn heavier_cloth_takes_heavier_yarn() {
        assert_eq!(
            yarns_for(ArealWeight::oz_per_yd2(14.0)).needle,
            [T80, T105, T120]
        );
        assert_eq!(yarns_for(ArealWeight::oz_per_yd2(4.0)).needle, [T40, T60]);
        assert_eq!(yarns_for(ArealWeight::oz_per_yd2(21.0)).under, [T80]);
        assert_eq!(yarns_for(ArealWeight::gsm(f64::NAN)), HEAVIEST);
    }
}
