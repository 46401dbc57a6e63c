//! How much larger a piece is cut so that it has its finished size after the wash.
//!
//! Warp and weft shrink each by their own share, so a piece is stretched along its grain by 1/(1 − warp)
//! and across it by 1/(1 − weft). Allowances are not: the machine takes up the same before and after.

use draft::{Edge, InnerLine, NamedPoint, Notch, Piece};
use geometry::tolerance::NO_DIRECTION;
use geometry::{Affine, Point, Vec2};
use style::Along;
use trade::fabric::skew_from_diagonals;
use trade::{Length, Share};
use words::{Key, Said, key, say};

/// The most a cloth can shrink in one direction and still be believed (common practice: loomstate
/// denim 7 to 10 %, stretch weft to 15 %; twice that is a mistake in measuring).
pub const MOST_SHRINKAGE: Share = Share::percent(30.0);

/// The most a cloth can grow in one direction and still be believed.
pub const MOST_GROWTH: Share = Share::percent(10.0);

/// The most a weft can lie askew and still be believed: mills set heavy denim askew by up to 8 % (US
/// patent 3 959 826).
pub const MOST_SKEW: Share = Share::percent(15.0);

/// What the first wash takes from a cloth; negative where it grows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shrinkage {
    /// Along the warp.
    pub warp: Share,
    /// Along the weft.
    pub weft: Share,
}

/// Why a shrinkage or skew is not believed.
#[derive(Clone, Debug, PartialEq)]
pub enum ScaleError {
    /// More than cloth can shrink.
    Shrinks {
        /// Along which threads.
        along: Along,
        /// What was stated.
        found: Share,
    },
    /// More than cloth can grow.
    Grows {
        /// Along which threads.
        along: Along,
        /// What was stated.
        found: Share,
    },
    /// More than a weft can lie askew.
    Skewed(Share),
    /// A shrinkage that is not a number.
    ShrinkageNoNumber,
    /// A skew that is not a number.
    SkewNoNumber,
}

impl From<&ScaleError> for Said {
    fn from(why: &ScaleError) -> Self {
        match why {
            ScaleError::Shrinks { along, found } => say::CuttingShrinks {
                along: threads(*along),
                found: found.to_string(),
                most: MOST_SHRINKAGE.to_string(),
            }
            .into(),
            ScaleError::Grows { along, found } => say::CuttingGrows {
                along: threads(*along),
                found: found.to_string(),
                most: MOST_GROWTH.to_string(),
            }
            .into(),
            ScaleError::Skewed(found) => say::CuttingSkewed {
                found: found.to_string(),
                most: MOST_SKEW.to_string(),
            }
            .into(),
            ScaleError::ShrinkageNoNumber => key::CUTTING_NO_SHRINKAGE.into(),
            ScaleError::SkewNoNumber => key::CUTTING_NO_SKEW.into(),
        }
    }
}

/// What the threads of a cloth are called.
pub const fn threads(along: Along) -> Key {
    match along {
        Along::Warp => key::CUTTING_WARP,
        Along::Weft => key::CUTTING_WEFT,
    }
}

impl Shrinkage {
    /// A cloth that the wash leaves as it is.
    pub const NONE: Shrinkage = Shrinkage {
        warp: Share::ZERO,
        weft: Share::ZERO,
    };

    /// The same, if it can be believed.
    ///
    /// # Errors
    /// [`ScaleError`] for what no cloth does.
    pub fn checked(self) -> Result<Shrinkage, ScaleError> {
        for (along, found) in [(Along::Warp, self.warp), (Along::Weft, self.weft)] {
            believable(along, found)?;
        }
        Ok(self)
    }

    /// The greater difference between this and another, in either direction.
    pub fn apart(self, other: Shrinkage) -> Share {
        let one = (self.warp - other.warp).abs();
        one.max((self.weft - other.weft).abs())
    }
}

/// Refuses a shrinkage that no cloth has.
///
/// # Errors
/// [`ScaleError`] for what no cloth does.
pub fn believable(along: Along, found: Share) -> Result<(), ScaleError> {
    if !found.is_finite() {
        return Err(ScaleError::ShrinkageNoNumber);
    }
    if found > MOST_SHRINKAGE {
        return Err(ScaleError::Shrinks { along, found });
    }
    if found < -MOST_GROWTH {
        return Err(ScaleError::Grows {
            along,
            found: -found,
        });
    }
    Ok(())
}

/// Whose shrinkage a piece is cut for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Follows {
    /// Its own cloth's.
    OwnCloth,
    /// The shell's, for it is sewn to shell before the wash and has to fit it then.
    Shell,
    /// What was stated for it.
    Stated,
}

/// How pieces are cut on a cloth whose weft lies askew after the wash.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum AgainstSkew {
    /// Without regard to it, which is usual: legs turn a little in the wash.
    #[default]
    Straight,
    /// Sheared along the warp, so that the wash turns them straight. Edges that are sewn together then
    /// differ in length before the wash.
    Sheared,
    /// Laid with the grain turned by the angle of the skew. Their shape stays, but no edge can lie on the
    /// cloth's own.
    GrainTurned,
}

/// A line turned about its middle, anticlockwise.
fn turned(line: (Point, Point), by_rad: f64) -> (Point, Point) {
    let middle = line.0.midpoint(line.1);
    let turn = Affine::rotate_about(by_rad, middle);
    (turn * line.0, turn * line.1)
}

/// How a piece was made larger.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scale {
    /// The shrinkage it was cut for.
    pub shrinkage: Shrinkage,
    /// What its cloth really shrinks by.
    pub cloth: Shrinkage,
    /// Whose shrinkage that is.
    pub follows: Follows,
    /// The skew it was cut against, as this copy is drawn.
    pub skew: Share,
    /// In which way.
    pub against: AgainstSkew,
    /// The grain line on the finished piece.
    pub grain: (Point, Point),
    /// From the finished piece to the piece before the wash.
    pub map: Affine,
}

impl Scale {
    /// A scale along and across a grain line, sheared along it where a skew is given.
    pub fn new(
        grain: (Point, Point),
        shrinkage: Shrinkage,
        cloth: Shrinkage,
        follows: Follows,
        skew: Share,
    ) -> Scale {
        Scale {
            shrinkage,
            cloth,
            follows,
            skew,
            against: if skew == Share::ZERO {
                AgainstSkew::Straight
            } else {
                AgainstSkew::Sheared
            },
            grain,
            map: map(grain, shrinkage, skew),
        }
    }

    /// The same against a skew, in one of two ways.
    #[must_use]
    pub fn against(self, skew: Share, way: AgainstSkew) -> Scale {
        let (grain, shear) = match way {
            AgainstSkew::Straight => return self,
            AgainstSkew::Sheared => (self.grain, skew),
            AgainstSkew::GrainTurned => (turned(self.grain, -skew.to_ratio().atan()), Share::ZERO),
        };
        Scale {
            skew,
            against: way,
            grain,
            map: map(grain, self.shrinkage, shear),
            ..self
        }
    }

    /// The same with the origin of the piece's frame where it was. Pieces that lie on one another share a frame,
    /// and keep it.
    #[must_use]
    pub fn about_origin(self) -> Scale {
        let back = (self.map * Point::ORIGIN).to_vec2();
        Scale {
            map: Affine::translate(-back) * self.map,
            ..self
        }
    }

    /// The finished place of a point of the piece before the wash.
    pub fn after_wash(&self, p: Point) -> Point {
        self.map.inverse() * p
    }
}

/// The map from a finished piece to the piece before the wash: sheared along the warp against the skew
/// first, then stretched along and across the grain. The foot of the grain line stays where it is.
fn map(grain: (Point, Point), shrinkage: Shrinkage, skew: Share) -> Affine {
    let v = grain.1 - grain.0;
    let n = v.hypot();
    let warp = if n > NO_DIRECTION {
        v / n
    } else {
        Vec2::new(0.0, 1.0)
    };
    // To the frame in which the warp is y, and back.
    let turn = Affine::new([warp.y, warp.x, -warp.x, warp.y, 0.0, 0.0]);
    let factor = |s: Share| 1.0 / (1.0 - s.to_ratio());
    let grow = Affine::new([
        factor(shrinkage.weft),
        skew.to_ratio() * factor(shrinkage.warp),
        0.0,
        factor(shrinkage.warp),
        0.0,
        0.0,
    ]);
    let about = grain.0.to_vec2();
    Affine::translate(about) * turn.inverse() * grow * turn * Affine::translate(-about)
}

/// The piece under a scale: edges, points, lines, notches and grain.
#[must_use]
pub fn scaled(piece: &Piece, scale: &Scale) -> Piece {
    let map = scale.map;
    let along = |notch: &Notch| {
        let Some(edge) = piece.edge(notch.edge) else {
            return notch.along;
        };
        if notch.along <= Length::ZERO {
            return Length::ZERO;
        }
        edge.part(Length::ZERO, notch.along)
            .transformed(map)
            .length()
    };
    // Skew leaves warp threads where they are, so the grain line keeps its direction.
    Piece {
        edges: piece
            .edges
            .iter()
            .map(|e| Edge {
                id: e.id,
                path: e.path.transformed(map),
            })
            .collect(),
        points: piece
            .points
            .iter()
            .map(|p| NamedPoint {
                id: p.id,
                at: map * p.at,
            })
            .collect(),
        lines: piece
            .lines
            .iter()
            .map(|l| InnerLine {
                id: l.id,
                kind: l.kind,
                path: l.path.transformed(map),
            })
            .collect(),
        notches: piece
            .notches
            .iter()
            .map(|n| Notch {
                along: along(n),
                ..n.clone()
            })
            .collect(),
        grain: (map * scale.grain.0, map * scale.grain.1),
        ..piece.clone()
    }
}

/// A skew that can be believed.
///
/// # Errors
/// [`ScaleError::Skewed`] beyond [`MOST_SKEW`].
pub fn checked_skew(skew: Share) -> Result<Share, ScaleError> {
    if !skew.is_finite() {
        return Err(ScaleError::SkewNoNumber);
    }
    if skew.abs() > MOST_SKEW {
        return Err(ScaleError::Skewed(skew));
    }
    Ok(skew)
}

/// The skew left after the wash, from the diagonals of a marked square; see
/// [`trade::fabric::skew_from_diagonals`].
///
/// # Errors
/// [`ScaleError`] where there are no such diagonals or no cloth is so far askew.
pub fn skew_test(ac: Length, bd: Length) -> Result<Share, ScaleError> {
    let skew = skew_from_diagonals(ac, bd)
        .filter(|_| ac > Length::ZERO && bd > Length::ZERO)
        .ok_or(ScaleError::SkewNoNumber)?;
    checked_skew(skew)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use proptest::prelude::*;

    fn near(found: f64, wanted: f64, within: f64) {
        assert!(
            (found - wanted).abs() <= within,
            "{found} is not {wanted} ± {within}"
        );
    }

    fn upright(warp: f64, weft: f64) -> Scale {
        let shrinkage = Shrinkage {
            warp: Share::percent(warp),
            weft: Share::percent(weft),
        };
        Scale::new(
            (Point::ORIGIN, Point::new(0.0, 100.0)),
            shrinkage,
            shrinkage,
            Follows::OwnCloth,
            Share::ZERO,
        )
    }

    /// Worked examples of the trade: an inseam of 81.3 cm at 3 % warp is cut 83.81 cm, a hip of
    /// 101.6 cm at 5 % weft 106.95 cm, at 12 % 115.45 cm, by L / (1 − s) as published at
    /// foralltex.com, "shrinkage math"; 32 in at 3 % is 32.99 in.
    #[test]
    fn published_lengths_before_the_wash() {
        let along = |s: f64, cm: f64| (upright(s, 0.0).map * Point::new(0.0, cm)).y;
        let across = |s: f64, cm: f64| (upright(0.0, s).map * Point::new(cm, 0.0)).x;
        near(along(3.0, 81.3), 83.81, 0.005);
        near(across(5.0, 101.6), 106.95, 0.005);
        near(across(12.0, 101.6), 115.45, 0.005);
        near(along(3.0, 32.0), 32.99, 0.005);
        // Not multiplied by 1 + s: that would be 1.7 cm short.
        assert!(across(12.0, 101.6) - 101.6 * 1.12 > 1.6);
    }

    #[test]
    fn what_is_too_far_askew_is_refused() {
        assert!(checked_skew(Share::percent(8.0)).is_ok());
        assert!(checked_skew(Share::percent(-16.0)).is_err());
        assert!(checked_skew(Share::ratio(f64::NAN)).is_err());
    }

    /// AATCC TM179 (formula from memory): diagonals of 358 and 348 mm are 2.83 %.
    #[test]
    fn skew_from_a_square() {
        let skew = skew_test(Length::mm(358.0), Length::mm(348.0)).unwrap();
        assert!((skew.to_percent() - 2.83).abs() < 0.005);
        assert!(skew_test(Length::mm(0.0), Length::mm(0.0)).is_err());
        assert!(skew_test(Length::mm(-358.0), Length::mm(900.0)).is_err());
        assert!(skew_test(Length::mm(500.0), Length::mm(300.0)).is_err());
    }

    #[test]
    fn what_no_cloth_does_is_refused() {
        let check = |warp, weft| {
            Shrinkage {
                warp: Share::percent(warp),
                weft: Share::percent(weft),
            }
            .checked()
        };
        assert!(check(10.0, 15.0).is_ok());
        assert!(check(-3.0, 30.0).is_ok());
        assert!(matches!(
            check(31.0, 0.0),
            Err(ScaleError::Shrinks {
                along: Along::Warp,
                ..
            })
        ));
        assert!(matches!(
            check(0.0, -11.0),
            Err(ScaleError::Grows {
                along: Along::Weft,
                ..
            })
        ));
        assert!(matches!(
            check(f64::NAN, 0.0),
            Err(ScaleError::ShrinkageNoNumber)
        ));
    }

    #[test]
    fn a_turned_grain_keeps_the_shape() {
        let none = Shrinkage::NONE;
        let grain = (Point::new(7.0, 0.0), Point::new(7.0, 100.0));
        let straight = Scale::new(grain, none, none, Follows::OwnCloth, Share::ZERO);
        let scale = straight.against(Share::percent(2.0), AgainstSkew::GrainTurned);
        let p = Point::new(100.0, 50.0);
        near((scale.map * p - p).hypot(), 0.0, 1e-12);
        // 2 % is 1.15 degrees.
        let lean = scale.grain.1 - scale.grain.0;
        near((lean.x / lean.y).atan().to_degrees(), 1.146, 0.001);
    }

    #[test]
    fn skew_moves_along_the_warp_only() {
        let none = Shrinkage::NONE;
        let scale = Scale::new(
            (Point::ORIGIN, Point::new(0.0, 1.0)),
            none,
            none,
            Follows::OwnCloth,
            Share::percent(3.0),
        );
        let moved = scale.map * Point::new(100.0, 50.0);
        near(moved.x, 100.0, 1e-12);
        near(moved.y, 53.0, 1e-12);
    }

    proptest! {
        #[test]
        fn the_wash_undoes_the_scale(
            warp in -10.0..30.0f64, weft in -10.0..30.0f64, skew in -15.0..15.0f64,
            lean in 0.0..6.3f64, x in -900.0..900.0f64, y in -900.0..900.0f64,
        ) {
            let shrinkage = Shrinkage { warp: Share::percent(warp), weft: Share::percent(weft) };
            let scale = Scale::new(
                (Point::new(3.0, 4.0), Point::new(3.0 + lean.cos(), 4.0 + lean.sin())),
                shrinkage, shrinkage, Follows::OwnCloth, Share::percent(skew),
            );
            let p = Point::new(x, y);
            prop_assert!((scale.after_wash(scale.map * p) - p).hypot() < 1e-9);
        }

        #[test]
        fn along_the_grain_it_is_the_warp(
            warp in -10.0..30.0f64, weft in -10.0..30.0f64, lean in 0.0..6.3f64,
        ) {
            let shrinkage = Shrinkage { warp: Share::percent(warp), weft: Share::percent(weft) };
            let grain = Vec2::new(lean.cos(), lean.sin());
            let scale = Scale::new(
                (Point::ORIGIN, Point::ORIGIN + grain), shrinkage, shrinkage,
                Follows::OwnCloth, Share::ZERO,
            );
            let along = (scale.map * (Point::ORIGIN + grain * 100.0)).to_vec2().hypot();
            let across = Vec2::new(-grain.y, grain.x);
            let wide = (scale.map * (Point::ORIGIN + across * 100.0)).to_vec2().hypot();
            prop_assert!((along * (1.0 - warp / 100.0) - 100.0).abs() < 1e-9);
            prop_assert!((wide * (1.0 - weft / 100.0) - 100.0).abs() < 1e-9);
        }
    }
}
