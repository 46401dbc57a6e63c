//! The kinds of quantity, their names, and the spellings of their units.

/// The system of measures a value is printed in for people.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Default)]
pub enum System {
    /// Centimetres, grams per square metre, stitches per centimetre.
    #[default]
    Metric,
    /// Inches, ounces per square yard, stitches per inch.
    Inch,
}

/// A kind of quantity, as named in messages about units.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Quantity {
    /// A length, inside in millimetres.
    Length,
    /// An angle, inside in radians.
    Angle,
    /// An area, inside in square millimetres.
    Area,
    /// A weight of cloth by area, inside in grams per square metre.
    ArealWeight,
    /// A mass, inside in grams.
    Mass,
    /// A yarn or sewing thread size, inside in tex.
    YarnSize,
    /// Stitches along a seam, inside in stitches per centimetre.
    StitchDensity,
    /// A share of a whole, inside as a ratio.
    Share,
    /// A temperature, inside in degrees Celsius.
    Temperature,
    /// How long something takes, inside in minutes.
    Duration,
}

/// How a number beside a unit becomes a number of base units.
#[derive(Clone, Copy, Debug)]
pub(super) enum Conversion {
    /// base = number × factor
    Times(f64),
    /// base = dividend ÷ number: the counts that rise as the yarn gets finer
    Under(f64),
}

impl Conversion {
    pub(super) fn to_base(self, number: f64) -> f64 {
        match self {
            Self::Times(factor) => number * factor,
            Self::Under(dividend) => dividend / number,
        }
    }
}

/// Millimetres in an inch: exact, international yard and pound agreement of 1959.
pub(super) const MM_PER_INCH: f64 = 25.4;
/// Millimetres in a yard of 36 inches.
pub(super) const MM_PER_YARD: f64 = 914.4;
/// Millimetres in a ligne, 1/40 inch in the button trade (common practice).
pub(super) const MM_PER_LIGNE: f64 = 0.635;
/// Grams in an avoirdupois ounce: exact, international yard and pound agreement of 1959.
pub(super) const G_PER_OUNCE: f64 = 28.349_523_125;
/// Square metres in a square yard: exact from the inch.
pub(super) const M2_PER_YD2: f64 = 0.836_127_36;
/// Tex × cotton count: Ne counts hanks of 840 yards in a pound of 453.59237 g, so about 590.54.
pub(super) const TEX_NE: f64 = 453.592_37 * 1000.0 / (840.0 * 0.9144);
/// Tex × metric count: Nm counts kilometres in a kilogram.
pub(super) const TEX_NM: f64 = 1000.0;
/// Tex × ticket of a synthetic thread: three times the metric count. From memory.
pub(super) const TEX_TICKET: f64 = 3000.0;

use Conversion::{Times, Under};

/// Units written after the number.
const AFTER: &[(&str, Quantity, Conversion)] = &[
    ("mm", Quantity::Length, Times(1.0)),
    ("cm", Quantity::Length, Times(10.0)),
    ("m", Quantity::Length, Times(1000.0)),
    ("in", Quantity::Length, Times(MM_PER_INCH)),
    ("inch", Quantity::Length, Times(MM_PER_INCH)),
    ("inches", Quantity::Length, Times(MM_PER_INCH)),
    ("yd", Quantity::Length, Times(MM_PER_YARD)),
    ("yard", Quantity::Length, Times(MM_PER_YARD)),
    ("yards", Quantity::Length, Times(MM_PER_YARD)),
    ("l", Quantity::Length, Times(MM_PER_LIGNE)),
    ("ligne", Quantity::Length, Times(MM_PER_LIGNE)),
    ("lignes", Quantity::Length, Times(MM_PER_LIGNE)),
    ("deg", Quantity::Angle, Times(std::f64::consts::PI / 180.0)),
    ("°", Quantity::Angle, Times(std::f64::consts::PI / 180.0)),
    ("rad", Quantity::Angle, Times(1.0)),
    ("mm2", Quantity::Area, Times(1.0)),
    ("mm²", Quantity::Area, Times(1.0)),
    ("cm2", Quantity::Area, Times(100.0)),
    ("cm²", Quantity::Area, Times(100.0)),
    ("m2", Quantity::Area, Times(1.0e6)),
    ("m²", Quantity::Area, Times(1.0e6)),
    ("in2", Quantity::Area, Times(MM_PER_INCH * MM_PER_INCH)),
    ("in²", Quantity::Area, Times(MM_PER_INCH * MM_PER_INCH)),
    ("yd2", Quantity::Area, Times(MM_PER_YARD * MM_PER_YARD)),
    ("yd²", Quantity::Area, Times(MM_PER_YARD * MM_PER_YARD)),
    ("g/m2", Quantity::ArealWeight, Times(1.0)),
    ("g/m²", Quantity::ArealWeight, Times(1.0)),
    ("gsm", Quantity::ArealWeight, Times(1.0)),
    (
        "oz/yd2",
        Quantity::ArealWeight,
        Times(G_PER_OUNCE / M2_PER_YD2),
    ),
    (
        "oz/yd²",
        Quantity::ArealWeight,
        Times(G_PER_OUNCE / M2_PER_YD2),
    ),
    ("g", Quantity::Mass, Times(1.0)),
    ("kg", Quantity::Mass, Times(1000.0)),
    ("oz", Quantity::Mass, Times(G_PER_OUNCE)),
    ("tex", Quantity::YarnSize, Times(1.0)),
    ("dtex", Quantity::YarnSize, Times(0.1)),
    ("denier", Quantity::YarnSize, Times(1.0 / 9.0)),
    ("/cm", Quantity::StitchDensity, Times(1.0)),
    ("/in", Quantity::StitchDensity, Times(10.0 / MM_PER_INCH)),
    ("/inch", Quantity::StitchDensity, Times(10.0 / MM_PER_INCH)),
    ("%", Quantity::Share, Times(0.01)),
    ("percent", Quantity::Share, Times(0.01)),
    ("°C", Quantity::Temperature, Times(1.0)),
    ("C", Quantity::Temperature, Times(1.0)),
    ("min", Quantity::Duration, Times(1.0)),
    ("s", Quantity::Duration, Times(1.0 / 60.0)),
    ("h", Quantity::Duration, Times(60.0)),
];

/// Yarn systems written before the number.
const BEFORE: &[(&str, Conversion)] = &[
    ("tex", Times(1.0)),
    ("dtex", Times(0.1)),
    ("denier", Times(1.0 / 9.0)),
    ("nm", Under(TEX_NM)),
    ("ne", Under(TEX_NE)),
    ("ticket", Under(TEX_TICKET)),
];

/// The unit spelled after a number, upper and lower case alike.
pub(super) fn unit_after(spelling: &str) -> Option<(Quantity, Conversion)> {
    AFTER
        .iter()
        .find(|(name, _, _)| name.eq_ignore_ascii_case(spelling))
        .map(|&(_, quantity, conversion)| (quantity, conversion))
}

/// The yarn system spelled before a number, upper and lower case alike.
pub(super) fn system_before(spelling: &str) -> Option<Conversion> {
    BEFORE
        .iter()
        .find(|(name, _)| name.eq_ignore_ascii_case(spelling))
        .map(|&(_, conversion)| conversion)
}

impl Quantity {
    /// The kind with its article, as used in a message: "a length".
    pub const fn noun(self) -> &'static str {
        match self {
            Self::Length => "a length",
            Self::Angle => "an angle",
            Self::Area => "an area",
            Self::ArealWeight => "a cloth weight",
            Self::Mass => "a mass",
            Self::YarnSize => "a yarn size",
            Self::StitchDensity => "a stitch density",
            Self::Share => "a percentage",
            Self::Temperature => "a temperature",
            Self::Duration => "a time",
        }
    }

    /// Well-formed examples, quoted, for the hint of a message.
    pub const fn examples(self) -> &'static str {
        match self {
            Self::Length => "\"26.5 cm\", \"3 mm\" or \"10 1/2 in\"",
            Self::Angle => "\"13 deg\"",
            Self::Area => "\"45 cm2\" or \"1.2 m2\"",
            Self::ArealWeight => "\"14 oz/yd2\" or \"475 g/m2\"",
            Self::Mass => "\"650 g\" or \"1.2 kg\"",
            Self::YarnSize => "\"tex 105\", \"Nm 20\" or \"Ne 10\"",
            Self::StitchDensity => "\"8 /in\" or \"3.1 /cm\"",
            Self::Share => "\"8 %\"",
            Self::Temperature => "\"40 °C\"",
            Self::Duration => "\"20 min\"",
        }
    }

    /// The same number written properly, once in each usual unit.
    pub(super) fn with_units(self, number: &str) -> String {
        let forms: &[(&str, &str)] = match self {
            Self::Length => &[("", " cm"), ("", " mm"), ("", " in")],
            Self::Angle => &[("", " deg")],
            Self::Area => &[("", " cm2"), ("", " m2")],
            Self::ArealWeight => &[("", " oz/yd2"), ("", " g/m2")],
            Self::Mass => &[("", " g"), ("", " kg")],
            Self::YarnSize => &[("tex ", ""), ("Nm ", ""), ("Ne ", "")],
            Self::StitchDensity => &[("", " /in"), ("", " /cm")],
            Self::Share => &[("", " %")],
            Self::Temperature => &[("", " °C")],
            Self::Duration => &[("", " min")],
        };
        let written: Vec<String> = forms
            .iter()
            .map(|(before, after)| format!("\"{before}{number}{after}\""))
            .collect();
        match written.split_last() {
            Some((last, [])) => last.clone(),
            Some((last, rest)) => format!("{} or {last}", rest.join(", ")),
            None => number.to_owned(),
        }
    }
}
