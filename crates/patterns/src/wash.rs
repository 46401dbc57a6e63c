//! For which state of the cloth a piece is drawn, as a file says it.

use cutting::{AgainstSkew, Follows, Scale, Shrinkage};
use geometry::{Affine, Point};
use trade::{Angle, Share, trimmed};

use crate::model::{Drill, InnerLine, Named, Notch, Note, Piece, SewLine, TurnPoint};

/// How a note begins that says what the wash takes.
const BEFORE_WASH: &str = "before wash:";

/// How a note begins that says what a piece is cut against.
const SKEW: &str = "skew:";

/// Decimals of a percent: a hundred-millionth moves no point of a pair of jeans by a ten-thousandth of a millimetre.
const DECIMALS: f64 = 1e8;

/// How a piece was made larger for the first wash, from its finished shape.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BeforeWash {
    /// What the wash takes of it along and across its grain.
    pub shrinkage: Shrinkage,
    /// The skew it is cut against, as it is drawn; none where it is cut straight.
    pub skew: Share,
    /// In which way.
    pub against: AgainstSkew,
}

/// The words of the ways against a skew.
const WAYS: [(AgainstSkew, &str); 2] = [
    (AgainstSkew::Sheared, "sheared"),
    (AgainstSkew::GrainTurned, "grain turned"),
];

impl BeforeWash {
    /// What a cut piece was made larger by.
    pub(crate) fn of(scale: &Scale) -> BeforeWash {
        let exact = |share: Share| {
            // Adding zero turns -0 into 0.
            Share::percent((share.to_percent() * DECIMALS).round() / DECIMALS + 0.0)
        };
        BeforeWash {
            shrinkage: Shrinkage {
                warp: exact(scale.shrinkage.warp),
                weft: exact(scale.shrinkage.weft),
            },
            skew: exact(scale.skew),
            against: scale.against,
        }
    }

    /// The notes that say it.
    pub fn notes(&self) -> Vec<String> {
        let percent = |share: Share| format!("{} %", trimmed(share.to_percent(), 0, 8));
        let Shrinkage { warp, weft } = self.shrinkage;
        let mut out = vec![format!(
            "{BEFORE_WASH} warp {}, weft {}",
            percent(warp),
            percent(weft)
        )];
        let way = WAYS.iter().find(|(way, _)| *way == self.against);
        if let Some((_, word)) = way.filter(|_| self.skew != Share::ZERO) {
            out.push(format!("{SKEW} {} {word}", percent(self.skew)));
        }
        out
    }

    /// What notes say; `None` where they say nothing of it.
    ///
    /// # Errors
    /// The note that says something no cloth does, or says it in other words.
    fn heard(notes: &[String]) -> Result<Option<BeforeWash>, String> {
        let after = |start: &str| {
            let mut found = notes.iter().filter_map(|note| {
                let head = note.get(..start.len())?;
                head.eq_ignore_ascii_case(start)
                    .then(|| (note, note[start.len()..].trim()))
            });
            found.next()
        };
        let Some((note, said)) = after(BEFORE_WASH) else {
            return Ok(None);
        };
        let shrinkage = said.split_once(',').and_then(|(warp, weft)| {
            Some(Shrinkage {
                warp: percent(warp.trim().strip_prefix("warp")?)?,
                weft: percent(weft.trim().strip_prefix("weft")?)?,
            })
        });
        let shrinkage = shrinkage.and_then(|found| found.checked().ok());
        let shrinkage = shrinkage.ok_or_else(|| note.clone())?;
        let (skew, against) = match after(SKEW) {
            None => (Share::ZERO, AgainstSkew::Straight),
            Some((note, said)) => WAYS
                .iter()
                .find_map(|(way, word)| Some((percent(said.strip_suffix(word)?)?, *way)))
                .filter(|(skew, _)| sewing::wash::checked_skew(*skew).is_ok())
                .ok_or_else(|| note.clone())?,
        };
        Ok(Some(BeforeWash {
            shrinkage,
            skew,
            against,
        }))
    }

    /// From the piece as it is drawn to the finished piece, by the grain line it is drawn with; and how far that grain
    /// line then has to turn to be the finished piece's.
    fn undone(&self, grain: (Point, Point)) -> (Affine, Angle) {
        let (shear, turn) = match self.against {
            AgainstSkew::Straight => (Share::ZERO, Angle::ZERO),
            AgainstSkew::Sheared => (self.skew, Angle::ZERO),
            AgainstSkew::GrainTurned => (Share::ZERO, Angle::rad(self.skew.to_ratio().atan())),
        };
        // The wash keeps the foot of the grain line and its direction.
        let scale = Scale::new(
            grain,
            self.shrinkage,
            self.shrinkage,
            Follows::Stated,
            shear,
        );
        (scale.map.inverse(), turn)
    }
}

/// "3.5 %".
fn percent(text: &str) -> Option<Share> {
    let number: f64 = text.trim().strip_suffix('%')?.trim().parse().ok()?;
    number.is_finite().then(|| Share::percent(number))
}

impl Piece {
    /// What the piece says of the state of the cloth it is drawn for; `None` where it says nothing.
    ///
    /// # Errors
    /// The note that cannot be understood.
    pub fn before_wash(&self) -> Result<Option<BeforeWash>, String> {
        BeforeWash::heard(&self.notes)
    }

    /// The piece after the wash, as it was before it was made larger; `None` where it has no grain line to do that by.
    /// Its cut line stays right only as a line beside its sewn lines, for allowances do not grow.
    pub fn finished(&self, wash: &BeforeWash) -> Option<Piece> {
        let grain = self.grain.filter(|(a, b)| (*b - *a).hypot() >= 1.0)?;
        let (map, turn) = wash.undone(grain);
        let line = |points: &[Point]| points.iter().map(|p| map * *p).collect::<Vec<_>>();
        let ends = |(a, b): (Point, Point)| (map * a, map * b);
        let upright = ends(grain);
        let turned = Affine::rotate_about(turn.to_rad(), upright.0.midpoint(upright.1));
        Some(Piece {
            cut: line(&self.cut),
            sewn: self
                .sewn
                .iter()
                .map(|sewn| SewLine {
                    line: line(&sewn.line),
                    ..sewn.clone()
                })
                .collect(),
            edge_starts: self
                .edge_starts
                .iter()
                .map(|start| Named {
                    at: map * start.at,
                    ..start.clone()
                })
                .collect(),
            points: self
                .points
                .iter()
                .map(|point| TurnPoint {
                    at: map * point.at,
                    ..point.clone()
                })
                .collect(),
            grain: Some((turned * upright.0, turned * upright.1)),
            mirror: self.mirror.map(ends),
            inner: self
                .inner
                .iter()
                .map(|inner| InnerLine {
                    line: line(&inner.line),
                    ..inner.clone()
                })
                .collect(),
            cutouts: self.cutouts.iter().map(|ring| line(ring)).collect(),
            notches: self
                .notches
                .iter()
                .map(|notch| Notch {
                    at: map * notch.at,
                    ..notch.clone()
                })
                .collect(),
            drills: self
                .drills
                .iter()
                .map(|drill| Drill {
                    at: map * drill.at,
                    ..drill.clone()
                })
                .collect(),
            texts: self
                .texts
                .iter()
                .map(|note| Note {
                    at: map * note.at,
                    ..note.clone()
                })
                .collect(),
            ..self.clone()
        })
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    fn wash(warp: f64, weft: f64, skew: f64, against: AgainstSkew) -> BeforeWash {
        BeforeWash {
            shrinkage: Shrinkage {
                warp: Share::percent(warp),
                weft: Share::percent(weft),
            },
            skew: Share::percent(skew),
            against,
        }
    }

    #[test]
    fn what_is_said_is_heard() {
        let says = |wash: BeforeWash, words: &[&str]| {
            assert_eq!(wash.notes(), words);
            assert_eq!(BeforeWash::heard(&wash.notes()), Ok(Some(wash)));
        };
        says(
            wash(3.0, 12.5, 0.0, AgainstSkew::Straight),
            &["before wash: warp 3 %, weft 12.5 %"],
        );
        says(
            wash(-0.5, 0.0, -3.0, AgainstSkew::Sheared),
            &["before wash: warp -0.5 %, weft 0 %", "skew: -3 % sheared"],
        );
        says(
            wash(8.123_456_78, 4.0, 3.0, AgainstSkew::GrainTurned),
            &[
                "before wash: warp 8.12345678 %, weft 4 %",
                "skew: 3 % grain turned",
            ],
        );
        assert_eq!(BeforeWash::heard(&["cut 1 pair".to_owned()]), Ok(None));
    }

    #[test]
    fn what_no_cloth_does_is_not_believed() {
        for note in [
            "before wash: warp 3 %",
            "before wash: warp 80 %, weft 3 %",
            "before wash: warp NaN %, weft 3 %",
            "before wash: weft 3 %, warp 3 %",
        ] {
            let notes = [note.to_owned()];
            assert_eq!(BeforeWash::heard(&notes), Err(note.to_owned()));
        }
        for skew in ["skew: 40 % sheared", "skew: 3 % bent", "skew: sheared"] {
            let notes = ["before wash: warp 3 %, weft 3 %", skew].map(str::to_owned);
            assert_eq!(BeforeWash::heard(&notes), Err(skew.to_owned()));
        }
    }
}
