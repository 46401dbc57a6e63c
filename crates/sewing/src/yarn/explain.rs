//! Every figure in words: what was sewn, how long, how thick, by which formula.

use std::fmt;

use style::{Collection, Construction};
use trade::{Confidence, Length};
use words::{Figure, Given, Said, Words, key, say};

use super::{Basis, Item, Sewn, SewnThrough};
use crate::garment::Origin;
use crate::seam_words::all_said;

impl Origin {
    /// What it is called: the seam, or the trim by its name in the collection; by its key where that has none.
    pub fn called(&self, collection: &Collection) -> Given {
        match self {
            Origin::Seam(seam) => (*seam).into(),
            Origin::Trim(key) => match collection.trims.get(key) {
                Some(trim) if !trim.name.is_empty() => trim.name.as_str().into(),
                _ => key.into(),
            },
        }
    }
}

impl Item {
    /// One line: "inseam lap-felled, row 1, 401, 3.15 stitches/cm, 2 × 81.3 cm, T 3.3 mm → 5.0 m
    /// needle, 4.9 m under".
    pub fn explain(&self, collection: &Collection) -> Said {
        let mut parts: Vec<Given> = vec![self.called(collection)];
        parts.extend(self.of_its_kind());
        let thickness = self.plies.thickness.in_mm(1);
        parts.push(say::YarnItemThickness { thickness }.into());
        if self.width.source.is_some() {
            let width = self.width.width.in_mm(1);
            parts.push(say::YarnItemWidth { width }.into());
            if self.width.pass < 1.0 {
                let share = format!("{:.0}", 1.0 / self.width.pass);
                parts.push(say::YarnItemPass { share }.into());
            }
        }
        let parts = Given::List(parts);
        if self.basis == Basis::Unknown {
            return say::YarnItemNotCounted { parts }.into();
        }
        say::YarnItem {
            needle: metres(self.used.needle),
            parts,
            under: metres(self.used.under),
        }
        .into()
    }

    /// What it belongs to, with how that is made where its name does not say so.
    fn called(&self, collection: &Collection) -> Given {
        let of = self.seam.called(collection);
        let row = matches!(self.sewn, Sewn::Row(_));
        // A strip is called one.
        let construction = self
            .construction
            .filter(|c| row && *c != Construction::Strip);
        match construction {
            Some(construction) => {
                let construction = construction.word();
                say::YarnItemOf { construction, of }.into()
            }
            None => of,
        }
    }

    /// What there is to say of a row, of tacks, or of buttonholes.
    fn of_its_kind(&self) -> Vec<Given> {
        let count = self.count;
        let size = self.length.figure().in_mm(1);
        match self.sewn {
            Sewn::Row(row) => {
                let length = self.length.figure().in_cm(1);
                let density = self.set_to.map(|density| {
                    let stitches = format!("{:.2}", density.figure().to_per_cm());
                    Given::from(say::YarnItemDensity { stitches })
                });
                [say::YarnItemRow { row }.into(), self.stitch.code().into()]
                    .into_iter()
                    .chain(density)
                    .chain([say::YarnItemTimes {
                        count,
                        size: length,
                    }
                    .into()])
                    .collect()
            }
            Sewn::Bartack(stitches) => {
                let width = self.width.width.in_mm(1);
                vec![
                    say::YarnItemBartack { stitches }.into(),
                    say::YarnItemTimesBy { count, size, width }.into(),
                ]
            }
            Sewn::Buttonhole => vec![
                key::YARN_ITEM_BUTTONHOLE.into(),
                say::YarnItemTimes { count, size }.into(),
            ],
        }
    }

    /// Where the figures come from: the plies, the total and its sharing.
    pub fn source(&self) -> Said {
        let mut parts: Vec<Said> = vec![
            say::YarnSourcePlies {
                plies: self.plies.said(),
            }
            .into(),
        ];
        if let Some(source) = self.width.source {
            let source = text(source);
            parts.push(say::YarnSourceWidth { source }.into());
        }
        let basis = self.basis.said();
        parts.push(say::YarnSourceYarn { basis }.into());
        if self.basis != Basis::Unknown {
            let source = text(self.sharing);
            parts.push(say::YarnSourceSharing { source }.into());
        }
        all_said(parts).unwrap_or_else(|| self.basis.said())
    }
}

/// A source as the trade's tables write it.
fn text(source: Confidence) -> String {
    source.to_string()
}

impl Basis {
    /// In words.
    pub fn said(&self) -> Said {
        match self {
            Self::Formula(source) => {
                let source = text(*source);
                say::YarnBasisFormula { source }.into()
            }
            Self::RatioTable(source) => {
                let source = text(*source);
                say::YarnBasisRatio { source }.into()
            }
            Self::Path(source) => {
                let source = text(*source);
                say::YarnBasisPath { source }.into()
            }
            Self::Unknown => key::YARN_BASIS_UNKNOWN.into(),
        }
    }
}

/// In English.
impl fmt::Display for Basis {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&Words::english().saying(&self.said()))
    }
}

impl SewnThrough {
    /// "2 plies shell, 1 ply pocketing".
    pub fn said(&self) -> Given {
        let of = |(plies, cloth): &(u8, draft::ClothUse)| {
            let (plies, cloth) = (u64::from(*plies), cloth.key());
            say::YarnSourceLayer { cloth, plies }.into()
        };
        Given::List(self.layers.iter().map(of).collect())
    }
}

/// "8.4 m".
fn metres(length: Length) -> Figure {
    length.in_m(1)
}
