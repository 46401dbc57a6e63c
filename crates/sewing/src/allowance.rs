//! What a seam needs beyond its line on each ply.
//!
//! Allowances without another source are common practice.

use style::{Construction, Seam, SeamId};
use trade::Length;

use crate::construct::{Rule, construct};

/// The lap of a felled seam lies between these when it is sewn on a two-needle machine
/// (common practice: finished 6 to 11 mm).
pub const FELL_WIDTH: (Length, Length) = (Length::mm(5.0), Length::mm(14.0));

/// A row never lies nearer to a fold than this, so the lap is at least this much wider than its
/// outermost row (common practice: an edge row is sewn at 1/16 inch).
pub const EDGE_MARGIN: Length = Length::mm(1.6);

/// Taken up by the thickness of the cloth at each turn of a hem (trade practice: 1.5 to 3 mm over
/// both turns of a chain-stitched hem; 1/8 inch at historical-tailoring.com, selvedge jeans).
pub const CLOTH_TURN: Length = Length::mm(1.5);

/// The lap of a felled seam.
///
/// Measured from the visible fold, which is the seam line: the ply on top is turned under by
/// `turn`; the ply below reaches across the lap and is turned back by `turn`. So the two
/// allowances together are `width + 2 turn`, wherever the seam line is put within the lap.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fell {
    /// From the visible fold to the fold inside.
    pub width: Length,
    /// How far each edge is turned in.
    pub turn: Length,
}

impl Fell {
    /// The lap that holds a seam's rows: the outermost row keeps the same distance from the inner
    /// fold as the first row keeps from the visible one. The turn is 1.5 mm less than the lap
    /// (trade practice: 8 mm in a lap of 9.5 mm, 9.5 mm in one of 11 mm).
    pub fn of(seam: &Seam) -> Fell {
        let offsets = || seam.rows.iter().map(|r| r.offset).filter(|o| o.is_finite());
        let near = offsets()
            .fold(Length::mm(8.0), Length::min)
            .max(EDGE_MARGIN);
        let far = offsets().fold(Length::ZERO, Length::max);
        let width = (far + near).max(FELL_WIDTH.0).min(FELL_WIDTH.1);
        Fell {
            width,
            turn: width - Length::mm(1.5),
        }
    }

    /// Allowance of the ply on top.
    pub fn over(&self) -> Length {
        self.turn
    }

    /// Allowance of the ply below.
    pub fn under(&self) -> Length {
        self.width + self.turn
    }
}

/// How deep a pocket's hem is turned: enough for its rows.
pub fn turned_depth(seam: &Seam) -> Length {
    let far = seam.rows.iter().map(|r| r.offset).filter(|o| o.is_finite());
    (far.fold(Length::ZERO, Length::max) + EDGE_MARGIN)
        .max(Length::mm(6.0))
        .min(Length::mm(60.0))
}

/// Allowances of the two plies of a seam.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Allowances {
    /// On the ply on top, seen from outside.
    pub over: Length,
    /// On the ply below.
    pub under: Length,
}

/// What a seam needs beyond its line on each ply, given the chart's hem depth.
pub fn allowances(seam: &Seam, hem_depth: Length) -> Allowances {
    let both = |a: Length| Allowances { over: a, under: a };
    // A facing that is only overedged keeps its edge on the finished line.
    if (seam.id, seam.construction) == (SeamId::FlyEdge, Construction::Overlocked) {
        return both(Length::ZERO);
    }
    match construct(seam.construction).rule {
        Rule::Even(a) => both(a),
        Rule::Felled => {
            let fell = Fell::of(seam);
            Allowances {
                over: fell.over(),
                under: fell.under(),
            }
        }
        Rule::RolledHem => both(turned_twice(hem_depth)),
        Rule::FoldedHem => both(folded(hem_depth)),
        Rule::TurnedHem => both(turned_twice(turned_depth(seam))),
        Rule::None => both(Length::ZERO),
    }
}

/// What a folded hem turns under before it is turned up (common practice: 10 mm), less where the hem
/// itself is shallower.
pub const TURNED_UNDER: Length = Length::mm(10.0);

fn folded(depth: Length) -> Length {
    if depth.is_finite() {
        let depth = depth.max(Length::ZERO);
        depth + depth.min(TURNED_UNDER) + CLOTH_TURN * 2.0
    } else {
        Length::ZERO
    }
}

fn turned_twice(depth: Length) -> Length {
    if depth.is_finite() {
        depth.max(Length::ZERO) * 2.0 + CLOTH_TURN * 2.0
    } else {
        Length::ZERO
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use style::RowSpec;
    use trade::{StitchDensity, StitchType};

    fn seam(id: SeamId, construction: Construction, offsets: &[f64]) -> Seam {
        Seam {
            id,
            construction,
            lap: None,
            rows: offsets
                .iter()
                .map(|mm| RowSpec {
                    stitch: StitchType::S401,
                    density: StitchDensity::per_inch(8.0),
                    yarn: String::new(),
                    under: String::new(),
                    offset: Length::mm(*mm),
                    begin: None,
                    end: None,
                })
                .collect(),
        }
    }

    fn near(found: Length, wanted_mm: f64) {
        assert!((found.to_mm() - wanted_mm).abs() < 1e-9, "{found}");
    }

    /// Trade practice, from memory: a lap of 9.5 mm turned in by 8 mm needs 8 mm on top and 17.5 mm
    /// below; one of 11 mm turned in by 9.5 mm needs 9.5 and 20.5 mm.
    #[test]
    fn a_felled_seam_of_the_trade() {
        for (far, over, under) in [(7.9, 8.0, 17.5), (9.4, 9.5, 20.5)] {
            let felled = seam(SeamId::Inseam, Construction::LapFelled, &[1.6, far]);
            let found = allowances(&felled, Length::ZERO);
            near(found.over, over);
            near(found.under, under);
        }
    }

    #[test]
    fn both_edges_of_a_fell_need_the_lap_and_two_turns() {
        for far in [-5.0, 0.0, 3.0, 8.0, 11.0, 500.0, f64::NAN] {
            let fell = Fell::of(&seam(SeamId::Seat, Construction::LapFelled, &[1.6, far]));
            near(
                fell.over() + fell.under(),
                (fell.width + fell.turn * 2.0).to_mm(),
            );
            assert!(fell.turn > Length::ZERO && fell.turn < fell.width);
        }
    }

    /// Trade practice, from memory: a chain-stitched hem of 12.7 mm takes 27 to 28 mm; a hem of
    /// 3/8 inch takes 7/8 inch at historical-tailoring.com, selvedge jeans.
    #[test]
    fn a_hem_turned_twice() {
        let hem = seam(SeamId::Hem, Construction::RolledHem, &[11.0]);
        let wide = allowances(&hem, Length::mm(12.7)).over.to_mm();
        assert!((27.0..=28.5).contains(&wide), "{wide}");
        let narrow = allowances(&hem, Length::inches(0.375)).over.to_inches();
        assert!((narrow - 0.875).abs() < 0.02, "{narrow}");
        near(allowances(&hem, Length::mm(-50.0)).over, 3.0);
        near(allowances(&hem, Length::mm(f64::NAN)).over, 0.0);
    }
}
