//! Widths and heights beside a drawing, each on a level where its line and words have room.

use geometry::Point;

use crate::lettering::text_width;
use crate::palette::TYPE_FIGURES;

/// From the drawing to the first line, and from line to line.
pub(super) const FIRST_MM: f64 = 5.5;
const STEP_MM: f64 = 4.6;
/// Room two arrow heads take on a line beside its words.
const HEADS_MM: f64 = 4.2;
/// Below this the heads stand outside and point in.
pub(super) const SHORT_MM: f64 = 4.6;
/// Tail of a head that stands outside.
pub(super) const TAIL_MM: f64 = 3.4;
/// Air round words.
pub(super) const AIR_MM: f64 = 0.7;
/// From an upright line to the words beside it.
pub(super) const ASIDE_MM: f64 = 1.2;
/// Words beside an upright line keep this far from extension lines that run out past them.
const CLEAR_MM: f64 = 1.7;
/// The side of the drawing a dimension stands on. Above and below, widths are measured; at the
/// sides, heights.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Side {
    Above,
    Below,
    Left,
    Right,
}

impl Side {
    pub const ALL: [Side; 4] = [Side::Above, Side::Below, Side::Left, Side::Right];

    pub const fn level(self) -> bool {
        matches!(self, Side::Above | Side::Below)
    }
}

/// A width or a height, beside the drawing.
#[derive(Clone, Debug)]
pub(super) struct Linear {
    pub from: Point,
    pub to: Point,
    pub side: Side,
    pub words: String,
}

/// A linear dimension with its line's place found.
pub(super) struct Stacked<'a> {
    pub dim: &'a Linear,
    pub level: usize,
    pub lo: f64,
    pub hi: f64,
    pub place: Place,
}

/// Where words stand, and how far they and their line reach.
#[derive(Clone, Copy, Debug)]
pub(super) struct Place {
    /// Middle of the words along the line.
    pub words_at: f64,
    /// Whether the words stand level beside an upright line that is too short for them.
    pub beside: bool,
    /// Line and words reach from here to there; beyond the arrows where they stand outside.
    pub reach: (f64, f64),
}

pub(super) fn along(side: Side, p: Point) -> f64 {
    if side.level() { p.x } else { p.y }
}

/// Finds a level for every dimension of one side: short ones near the drawing, each as near as its
/// line and words leave room.
pub(super) fn stack(dims: &[Linear], side: Side) -> Vec<Stacked<'_>> {
    let mut mine: Vec<&Linear> = dims.iter().filter(|d| d.side == side).collect();
    let ends = |d: &Linear| {
        let (a, b) = (along(side, d.from), along(side, d.to));
        (a.min(b), a.max(b))
    };
    let span = |d: &Linear| ends(d).1 - ends(d).0;
    mine.sort_by(|a, b| span(a).total_cmp(&span(b)));
    let mut levels: Vec<Vec<(f64, f64)>> = Vec::new();
    let mut out = Vec::new();
    for (k, dim) in mine.iter().enumerate() {
        let (lo, hi) = ends(dim);
        let wide = words_wide(dim);
        let places = if side.level() {
            places(lo, hi, wide)
        } else {
            let outer = mine.iter().skip(k + 1).map(|d| ends(d));
            upright_places(
                lo,
                hi,
                wide,
                &outer.flat_map(|(a, b)| [a, b]).collect::<Vec<f64>>(),
            )
        };
        let free = |level: &[(f64, f64)], r: (f64, f64)| {
            level.iter().all(|o| r.1 <= o.0 + 0.05 || r.0 >= o.1 - 0.05)
        };
        let found = (0..=levels.len()).find_map(|n| {
            let level = levels.get(n).map_or(&[][..], Vec::as_slice);
            let place = places.iter().find(|p| free(level, p.reach))?;
            Some((n, *place))
        });
        let Some((level, place)) = found else {
            continue;
        };
        if level == levels.len() {
            levels.push(Vec::new());
        }
        levels[level].push(place.reach);
        out.push(Stacked {
            dim,
            level,
            lo,
            hi,
            place,
        });
    }
    out
}

fn words_wide(dim: &Linear) -> f64 {
    text_width(&dim.words, TYPE_FIGURES).to_mm() + 2.0 * AIR_MM
}

/// Where words may stand on a level line from `lo` to `hi`, and how far line and words then reach.
fn places(lo: f64, hi: f64, wide: f64) -> Vec<Place> {
    if hi - lo >= wide + HEADS_MM {
        return vec![within(lo, hi)];
    }
    let tail = if hi - lo < SHORT_MM { TAIL_MM } else { 0.8 };
    let (before, after) = (lo - tail - wide, hi + tail + wide);
    let near = tails(lo, hi);
    [
        (after - wide / 2.0, (lo - near, after)),
        (before + wide / 2.0, (before, hi + near)),
    ]
    .map(|(words_at, reach)| Place {
        words_at,
        beside: false,
        reach,
    })
    .into()
}

fn within(lo: f64, hi: f64) -> Place {
    Place {
        words_at: (lo + hi) / 2.0,
        beside: false,
        reach: (lo, hi),
    }
}

/// How far the tails of a short line reach beyond it.
const fn tails(lo: f64, hi: f64) -> f64 {
    if hi - lo < SHORT_MM { TAIL_MM } else { 0.0 }
}

/// The same on an upright line: where it is too short for turned words they stand level beside it, as near its middle
/// as the extension lines at `outer`, of dimensions further out, leave them clear.
fn upright_places(lo: f64, hi: f64, wide: f64, outer: &[f64]) -> Vec<Place> {
    if hi - lo >= wide + HEADS_MM {
        return vec![within(lo, hi)];
    }
    let (middle, near) = ((lo + hi) / 2.0, tails(lo, hi));
    let half = TYPE_FIGURES.to_mm() * 0.6;
    let at = (0..=8).flat_map(|n| [0.5, -0.5].map(|step| middle + step * f64::from(n)));
    let clear = |s: &f64| outer.iter().all(|end| (end - s).abs() >= CLEAR_MM);
    let mut kept: Vec<f64> = at.filter(clear).collect();
    kept.push(middle);
    kept.into_iter()
        .map(|words_at| Place {
            words_at,
            beside: true,
            reach: (
                (lo - near).min(words_at - half),
                (hi + near).max(words_at + half),
            ),
        })
        .collect()
}

/// How far out each level of one side stands: words beside a line push the next one on.
pub(super) fn levels_out(stacked: &[Stacked<'_>]) -> Vec<f64> {
    let count = stacked.iter().map(|s| s.level + 1).max().unwrap_or(0);
    let mut out = Vec::with_capacity(count);
    let mut off = FIRST_MM;
    for level in 0..count {
        out.push(off);
        let beside = stacked
            .iter()
            .filter(|s| s.level == level && s.place.beside);
        let wide = beside.map(|s| words_wide(s.dim)).fold(0.0, f64::max);
        off += STEP_MM.max(wide + 2.0 * ASIDE_MM);
    }
    out
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    fn upright(from: f64, to: f64, words: &str) -> Linear {
        Linear {
            from: Point::new(0.0, from),
            to: Point::new(0.0, to),
            side: Side::Right,
            words: words.to_owned(),
        }
    }

    /// A figure past the end of an upright line reads as that of the next one.
    #[test]
    fn an_upright_figure_stands_on_its_line_or_level_beside_it() {
        let dims = [
            upright(0.0, 2.0, "2 mm"),
            upright(0.0, 16.0, "3.16 cm"),
            upright(16.0, 24.5, "tack 1.69 cm"),
            upright(0.0, 60.0, "12 cm"),
        ];
        let stacked = stack(&dims, Side::Right);
        assert_eq!(stacked.len(), dims.len());
        for one in &stacked {
            let (lo, hi) = (one.lo - CLEAR_MM, one.hi + CLEAR_MM);
            assert!(
                (lo..=hi).contains(&one.place.words_at),
                "{}: {}",
                one.dim.words,
                one.place.words_at
            );
            let turned = !one.place.beside;
            assert_eq!(turned, one.hi - one.lo >= words_wide(one.dim) + HEADS_MM);
        }
    }

    #[test]
    fn words_beside_a_line_push_the_next_level_out() {
        let dims = [
            upright(0.0, 8.0, "tack 1.69 cm"),
            upright(0.0, 60.0, "12 cm"),
        ];
        let stacked = stack(&dims, Side::Right);
        let out = levels_out(&stacked);
        assert_eq!(out.len(), 2);
        assert!(out[1] - out[0] >= words_wide(&dims[0]) + ASIDE_MM);
    }
}
