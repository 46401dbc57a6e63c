//! The waistband before the wash: it is usually cut along the warp, the body round the waist shrinks
//! along the weft, and both are sewn together before either has shrunk.

use sewing::band_parts;
use style::{BandCutting, Size};
use trade::{Length, Share, Unwashed, Washed};
use words::{Given, Said, key, say};

use geometry::tolerance::ROUNDING;
use sewing::wash::{MOST_EASE, Shrinkage, eased_band};

/// Below this difference between warp and weft no solution is asked for (common practice).
pub const APART: Share = Share::percent(2.0);

/// How the waistband is to be cut.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub enum BandCut {
    /// Not stated: along the warp where warp and weft shrink nearly alike, else refused.
    #[default]
    Unstated,
    /// Along the weft, so that it shrinks with the body; joined at the centre back where the cloth is
    /// too narrow for its length.
    AlongWeft,
    /// Along the warp, of cloth washed before cutting, which then shrinks no more than this.
    Preshrunk(Shrinkage),
    /// Along the warp, with as much ease as the machine takes and no more.
    StatedEase,
}

impl BandCut {
    /// How a style file states it under `[cutting]`; `None` for what is stated by leaving it out.
    pub const fn stated(self) -> Option<BandCutting> {
        match self {
            BandCut::Unstated => None,
            BandCut::AlongWeft => Some(BandCutting::Weft),
            BandCut::Preshrunk(_) => Some(BandCutting::Preshrunk),
            BandCut::StatedEase => Some(BandCutting::Eased),
        }
    }
}

/// One way of cutting the band, with its figures.
#[derive(Clone, Debug, PartialEq)]
pub struct BandWay {
    /// Which.
    pub cut: BandCut,
    /// The band between its ends at centre front, before the wash, as sewn.
    pub band: Length,
    /// The waist seam of the body it is sewn to, before the wash.
    pub body: Length,
    /// How much longer the body is than the band, as a share of the band; negative where the band is
    /// the longer. Ease the style declares is not counted.
    pub ease: Share,
    /// The waist seam after the wash, as the band then measures.
    pub finished: Length,
    /// By how much that misses the chart.
    pub off: Length,
    /// Pieces the band is cut in.
    pub pieces: u32,
    /// Whether a workroom can sew it and the waist comes within its tolerance.
    pub holds: bool,
    /// What to do and what comes of it.
    pub said: Said,
}

impl BandWay {
    /// What to write into the style file, and what comes of it.
    #[must_use]
    pub fn as_help(&self) -> Said {
        let way = self.said.clone();
        match self.cut.stated() {
            Some(stated) => say::CuttingBandWrite {
                way,
                word: stated.word(),
            }
            .into(),
            None => way,
        }
    }
}

/// Why the band cannot be cut until somebody says how.
#[derive(Clone, Debug, PartialEq)]
pub struct BandConflict {
    /// In which size.
    pub size: Size,
    /// The shell's shrinkage.
    pub shrinkage: Shrinkage,
    /// The waist seam of the band as finished, without the overlap.
    pub finished: Length,
    /// The body's waist seam before the wash.
    pub body: Length,
    /// A band cut along the warp for the finished waist.
    pub along_warp: Length,
    /// The three ways, best first: those that hold before those that do not.
    pub ways: Vec<BandWay>,
}

impl BandConflict {
    /// What is wrong, in one sentence.
    #[must_use]
    pub fn message(&self) -> Said {
        say::CuttingBand {
            apart: (self.along_warp - self.body).abs().figure(),
            band: self.along_warp.figure(),
            body: self.body.figure(),
            finished: self.finished.figure(),
            warp: self.shrinkage.warp.figure(),
            weft: self.shrinkage.weft.figure(),
        }
        .into()
    }
}

/// What the ways are worked out from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BandCase {
    /// The size.
    pub size: Size,
    /// The shell's shrinkage.
    pub shell: Shrinkage,
    /// The band's join from centre front to centre front, finished.
    pub band: Length,
    /// What it runs on for the overlap, finished.
    pub overlap: Length,
    /// The body's waist seam before the wash, less the ease the style declares.
    pub body: Length,
    /// Turned in at each end of the band.
    pub end_allowance: Length,
    /// Beyond the centre back on each half, where it is joined there.
    pub join_allowance: Length,
    /// Usable width of the shell.
    pub width: Length,
    /// How far the finished waist may be off.
    pub tolerance: Length,
}

fn grown(finished: Length, shrinkage: Share) -> Length {
    Washed::new(finished).unwashed(shrinkage).figure()
}

/// A hair over the limit is the limit, reached by rounding.
fn is_sewable(ease: Share) -> bool {
    ease.abs().to_ratio() <= MOST_EASE.to_ratio() + ROUNDING
}

fn left(cut: Length, shrinkage: Share) -> Length {
    Unwashed::new(cut).washed(shrinkage).figure()
}

impl BandCase {
    /// Whether warp and weft shrink too differently for a band cut along the warp to be sewn on as it
    /// is.
    pub fn is_conflict(&self) -> bool {
        // A hair over the limit is the limit, reached by rounding.
        (self.shell.warp - self.shell.weft).abs().to_ratio() > APART.to_ratio() + ROUNDING
    }

    /// Length of the band before the wash, from centre front to centre front, for a way of cutting it.
    pub fn length(&self, cut: BandCut) -> Length {
        match cut {
            BandCut::AlongWeft => grown(self.band, self.shell.weft),
            BandCut::Preshrunk(residual) => grown(self.band, residual.warp),
            BandCut::Unstated => grown(self.band, self.shell.warp),
            BandCut::StatedEase => eased_band(self.band, self.shell.warp, self.body),
        }
    }

    /// What a way of cutting the band comes to.
    pub fn way(&self, cut: BandCut) -> BandWay {
        let band = self.length(cut);
        let shrinks = match cut {
            BandCut::AlongWeft => self.shell.weft,
            BandCut::Preshrunk(residual) => residual.warp,
            _ => self.shell.warp,
        };
        let finished = left(band, shrinks);
        let off = finished - self.band;
        let ease = Share::ratio((self.body - band) / band);
        let whole = grown(self.band + self.overlap, shrinks) + self.end_allowance * 2.0;
        let pieces = if cut == BandCut::AlongWeft {
            band_parts(whole, self.width)
        } else {
            1
        };
        let longest = if pieces == 2 {
            let half = grown(self.band * 0.5 + self.overlap, shrinks);
            half + self.end_allowance + self.join_allowance
        } else {
            whole
        };
        let fits = cut != BandCut::AlongWeft || longest <= self.width;
        let holds = is_sewable(ease) && fits && off.abs() <= self.tolerance;
        let way = BandWay {
            cut,
            band,
            body: self.body,
            ease,
            finished,
            off,
            pieces,
            holds,
            said: key::CUTTING_BAND_WARP.into(),
        };
        BandWay {
            said: self.said(&way, whole, fits),
            ..way
        }
    }

    fn said(&self, way: &BandWay, whole: Length, fits: bool) -> Said {
        let start: Said = match way.cut {
            BandCut::AlongWeft => key::CUTTING_BAND_WEFT.into(),
            BandCut::Preshrunk(_) => key::CUTTING_BAND_WASHED.into(),
            BandCut::Unstated => key::CUTTING_BAND_WARP.into(),
            BandCut::StatedEase => say::CuttingBandEased {
                most: MOST_EASE.figure(),
            }
            .into(),
        };
        say::CuttingBandWay {
            against: self.against_body(way),
            band: way.band.figure(),
            finished: way.finished.figure(),
            more: self.in_pieces(way, whole, fits),
            off: self.off_chart(way.off),
            start,
        }
        .into()
    }

    /// How the body is eased onto the band.
    fn against_body(&self, way: &BandWay) -> Said {
        let (by, ease) = ((self.body - way.band).abs(), way.ease.abs().figure());
        let longer = by.figure();
        let said: Said = if by < Length::mm(1.0) {
            key::CUTTING_BAND_AS_LONG.into()
        } else if self.body > way.band {
            say::CuttingBandBodyLonger { by: longer, ease }.into()
        } else {
            say::CuttingBandLonger { by: longer, ease }.into()
        };
        if is_sewable(way.ease) {
            return said;
        }
        let most = MOST_EASE.figure();
        say::CuttingBandTooMuch { most, said }.into()
    }

    /// How far the finished waist misses the chart, where that is worth saying.
    fn off_chart(&self, off: Length) -> Given {
        if off.abs() <= Length::mm(0.5) {
            return "".into();
        }
        let by = off.abs().figure();
        let said: Said = if off > Length::ZERO {
            say::CuttingBandOver { by }.into()
        } else {
            say::CuttingBandUnder { by }.into()
        };
        if off.abs() <= self.tolerance {
            return said.into();
        }
        let tolerance = self.tolerance.figure();
        say::CuttingBandNotAllowed { said, tolerance }.into()
    }

    /// Whether it is cut in two, and whether that is enough.
    fn in_pieces(&self, way: &BandWay, whole: Length, fits: bool) -> Given {
        let said: Given = if way.pieces == 2 {
            let (whole, width) = (whole.figure(), self.width.figure());
            say::CuttingBandInTwo { whole, width }.into()
        } else {
            "".into()
        };
        if fits {
            return said;
        }
        say::CuttingBandNoRoom { said }.into()
    }

    /// The three ways out, those that hold first.
    pub fn conflict(&self) -> BandConflict {
        let mut ways: Vec<BandWay> = [
            BandCut::AlongWeft,
            BandCut::Preshrunk(Shrinkage::NONE),
            BandCut::StatedEase,
        ]
        .map(|cut| self.way(cut))
        .into();
        ways.sort_by_key(|way| !way.holds);
        BandConflict {
            size: self.size,
            shrinkage: self.shell,
            finished: self.band,
            body: self.body,
            along_warp: grown(self.band, self.shell.warp),
            ways,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn case(warp: f64, weft: f64, band_cm: f64) -> BandCase {
        let shell = Shrinkage {
            warp: Share::percent(warp),
            weft: Share::percent(weft),
        };
        BandCase {
            size: Size::new(32, 32),
            shell,
            band: Length::cm(band_cm),
            overlap: Length::mm(42.0),
            body: grown(Length::cm(band_cm), shell.weft),
            end_allowance: Length::mm(9.5),
            join_allowance: Length::mm(12.7),
            width: Length::cm(150.0),
            tolerance: Length::mm(13.0),
        }
    }

    fn english(way: &BandWay) -> String {
        words::Words::english().saying(&way.said)
    }

    fn near(found: Length, cm: f64) {
        assert!((found.to_cm() - cm).abs() < 0.005, "{found} is not {cm} cm");
    }

    /// Worked by hand: a finished waist of 84.0 cm at warp 3 %, weft 12 % wants a body seam of
    /// 95.45 cm and a warp-cut band of 86.60 cm.
    #[test]
    fn a_stretch_denim_of_the_trade() {
        let case = case(3.0, 12.0, 84.0);
        let conflict = case.conflict();
        near(conflict.body, 95.45);
        near(conflict.along_warp, 86.60);
        let best = &conflict.ways[0];
        assert_eq!(best.cut, BandCut::AlongWeft);
        assert!(best.holds && best.pieces == 1);
        near(best.band, 95.45);
        near(best.finished, 84.0);
        for way in &conflict.ways[1..] {
            assert!(!way.holds, "{}", english(way));
        }
        let washed = case.way(BandCut::Preshrunk(Shrinkage::NONE));
        near(washed.band, 84.0);
        assert!((washed.ease.to_percent() - 13.636).abs() < 0.01);
        let eased = case.way(BandCut::StatedEase);
        // 95.45 ÷ 1.02 = 93.58, which the wash leaves at 90.78: 6.8 cm too wide.
        near(eased.band, 93.58);
        near(eased.finished, 90.78);
    }

    #[test]
    fn nearly_alike_is_no_conflict() {
        assert!(!case(3.0, 5.0, 84.0).is_conflict());
        assert!(case(8.0, 4.0, 84.0).is_conflict());
        let eased = case(3.0, 5.0, 84.0).way(BandCut::StatedEase);
        // 88.42 ÷ 1.02 = 86.69, which the wash leaves at 84.09: 0.9 mm over.
        assert!(eased.holds, "{}", english(&eased));
        near(eased.finished, 84.09);
    }

    #[test]
    fn a_narrow_cloth_needs_a_join() {
        let narrow = BandCase {
            width: Length::cm(78.0),
            ..case(8.0, 4.0, 85.09)
        };
        let way = narrow.way(BandCut::AlongWeft);
        assert_eq!(way.pieces, 2);
        assert!(
            way.holds && english(&way).contains("centre back"),
            "{}",
            english(&way)
        );
        let too_narrow = BandCase {
            width: Length::cm(40.0),
            ..narrow
        };
        assert!(!too_narrow.way(BandCut::AlongWeft).holds);
    }
}
