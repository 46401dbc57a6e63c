//! Sizes of yarns and sewing threads.

use std::fmt;
use std::ops::Mul;

use super::kind::{Quantity, System, TEX_NE, TEX_NM, TEX_TICKET};
use super::length::Length;
use super::number::{plainest, trimmed};
use super::quantity::quantity;
use super::weight::Mass;

/// The size of a yarn or of a sewing thread as sold (all plies together), inside in tex: grams in
/// 1000 metres (ISO 1144).
///
/// The counts (`nm`, `ne`, `ticket`) rise as the yarn gets finer, so a count of zero is an
/// infinitely heavy yarn; reading one from text is refused.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Default)]
pub struct YarnSize(f64);

quantity!(YarnSize, Quantity::YarnSize);

impl YarnSize {
    /// Tex: grams in 1000 metres.
    pub const fn tex(tex: f64) -> Self {
        Self(tex)
    }

    /// Decitex: grams in 10 000 metres.
    pub const fn dtex(dtex: f64) -> Self {
        Self(dtex / 10.0)
    }

    /// Denier: grams in 9000 metres.
    pub const fn denier(denier: f64) -> Self {
        Self(denier / 9.0)
    }

    /// Metric count: metres in a gram.
    pub const fn nm(nm: f64) -> Self {
        Self(TEX_NM / nm)
    }

    /// English cotton count: hanks of 840 yards in a pound, 590.54 over tex.
    pub const fn ne(ne: f64) -> Self {
        Self(TEX_NE / ne)
    }

    /// Metric ticket of a synthetic thread: three times the metric count, 3000 over tex. From
    /// memory; labels round it, so a maker's own tex comes first.
    pub const fn ticket(ticket: f64) -> Self {
        Self(TEX_TICKET / ticket)
    }

    /// The size in tex.
    pub const fn to_tex(self) -> f64 {
        self.0
    }

    /// The size in decitex.
    pub const fn to_dtex(self) -> f64 {
        self.0 * 10.0
    }

    /// The size in denier.
    pub const fn to_denier(self) -> f64 {
        self.0 * 9.0
    }

    /// The size as a metric count.
    pub const fn to_nm(self) -> f64 {
        TEX_NM / self.0
    }

    /// The size as an English cotton count.
    pub const fn to_ne(self) -> f64 {
        TEX_NE / self.0
    }

    /// The size as a metric ticket of a synthetic thread.
    pub const fn to_ticket(self) -> f64 {
        TEX_TICKET / self.0
    }

    /// The size as a person reads it: "tex 105", in either system.
    pub fn show(self, _system: System) -> String {
        format!("tex {}", trimmed(self.to_tex(), 0, 1))
    }
}

/// Prints in tex, or as a count where only the count is exact at four decimals.
impl fmt::Display for YarnSize {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let tex = (self.to_tex(), "tex ", "");
        f.write_str(&plainest(&[
            tex,
            (self.to_ne(), "Ne ", ""),
            (self.to_nm(), "Nm ", ""),
            tex,
        ]))
    }
}

/// The mass of a length of this yarn.
impl Mul<Length> for YarnSize {
    type Output = Mass;
    fn mul(self, length: Length) -> Mass {
        Mass::g(self.0 * length.to_m() / 1000.0)
    }
}
