//! Every figure in words: what was sewn, how long, how thick, by which formula.

use std::fmt;

use trade::Length;
use words::Words;

use super::{Basis, Item, Sewn, SewnThrough};
use crate::context::mm;

impl Item {
    /// One line: "inseam lap-felled, row 1, 401, 3.15 stitches/cm, 2 × 81.3 cm, T 3.3 mm → 5.0 m
    /// needle, 4.9 m under".
    pub fn explain(&self) -> String {
        let mut out = Words::english().putting(&self.seam.title());
        let row = matches!(self.sewn, Sewn::Row(_));
        if let Some(construction) = self.construction.filter(|c| row && !out.contains(c.word())) {
            out += &format!(" {construction}");
        }
        let size = mm(self.length.figure());
        match self.sewn {
            Sewn::Row(number) => {
                out += &format!(", row {number}, {}", self.stitch);
                if let Some(density) = self.set_to {
                    out += &format!(", {:.2} stitches/cm", density.figure().to_per_cm());
                }
                out += &format!(", {} × {:.1} cm", self.count, self.length.figure().to_cm());
            }
            Sewn::Bartack(stitches) => {
                let width = mm(self.width.width);
                out += &format!(
                    ", bartack of {stitches} stitches, {} × {size} by {width}",
                    self.count
                );
            }
            Sewn::Buttonhole => out += &format!(", keyhole buttonhole, {} × {size}", self.count),
        }
        out += &format!(", T {}", mm(self.plies.thickness));
        if self.width.source.is_some() {
            out += &format!(", W {}", mm(self.width.width));
            if self.width.pass < 1.0 {
                out += &format!(", 1/{:.0} of a pass", 1.0 / self.width.pass);
            }
        }
        if self.basis == Basis::Unknown {
            return out + " → not counted";
        }
        out + &format!(
            " → {} needle, {} under",
            metres(self.used.needle),
            metres(self.used.under)
        )
    }

    /// Where the figures come from: the plies, the total and its sharing.
    pub fn source(&self) -> String {
        let mut out = format!("T: {}", self.plies);
        if let Some(source) = self.width.source {
            out += &format!("; W: {source}");
        }
        out += &format!("; yarn: {}", self.basis);
        if self.basis != Basis::Unknown {
            out += &format!("; sharing: {}", self.sharing);
        }
        out
    }
}

impl fmt::Display for Basis {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Formula(source) => write!(f, "geometric formula ({source})"),
            Self::RatioTable(source) => write!(
                f,
                "ratio table, no formula being published for this stitch ({source})"
            ),
            Self::Path(source) => source.fmt(f),
            Self::Unknown => f.write_str("nothing is published for this stitch, so it is left out"),
        }
    }
}

/// "2 plies shell, 1 ply pocketing".
impl fmt::Display for SewnThrough {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let words: Vec<String> = self
            .layers
            .iter()
            .map(|(n, cloth)| {
                let word = if *n == 1 { "ply" } else { "plies" };
                format!("{n} {word} {}", cloth.code())
            })
            .collect();
        f.write_str(&words.join(", "))
    }
}

/// "8.4 m".
fn metres(length: Length) -> String {
    format!("{:.1} m", length.to_m())
}
