//! Which samples lie inside an area, and how far they lie from a line.

use std::ops::Range;

use crate::field::Frame;
use crate::place::Place;

/// The runs of columns of each row that lie inside an outline (even-odd), cut to another where there is one.
pub(crate) fn runs(
    outline: &[Place],
    clip: Option<&[Place]>,
    frame: &Frame,
) -> Vec<Vec<Range<usize>>> {
    let within = clip.map(|clip| crossings(clip, frame));
    crossings(outline, frame)
        .into_iter()
        .enumerate()
        .map(|(row, pairs)| {
            let mut out = Vec::new();
            for [from, to] in pairs {
                match &within {
                    None => out.push(frame.columns(from, to)),
                    Some(within) => out.extend(
                        within[row]
                            .iter()
                            .map(|[a, b]| frame.columns(from.max(*a), to.min(*b))),
                    ),
                }
            }
            out.retain(|run| !run.is_empty());
            out
        })
        .collect()
}

/// Where each row's middle line enters and leaves an outline.
fn crossings(outline: &[Place], frame: &Frame) -> Vec<Vec<[f32; 2]>> {
    let mut rows: Vec<Vec<f32>> = vec![Vec::new(); frame.high];
    for k in 0..outline.len() {
        let (a, b) = (outline[k], outline[(k + 1) % outline.len()]);
        let (low, high) = if a[1] < b[1] { (a, b) } else { (b, a) };
        // One row more on either side: which of them is crossed is decided by its own height alone.
        for row in frame.rows(high[1] + frame.step, low[1] - frame.step) {
            let y = frame.y(row);
            if y >= low[1] && y < high[1] {
                let share = (y - low[1]) / (high[1] - low[1]);
                rows[row].push(low[0] + (high[0] - low[0]) * share);
            }
        }
    }
    rows.into_iter()
        .map(|mut row| {
            row.sort_by(f32::total_cmp);
            row.chunks_exact(2).map(|pair| [pair[0], pair[1]]).collect()
        })
        .collect()
}

/// For the samples near a line: how far to its left they lie, how far along it, and which way its left is.
pub(crate) struct Beside {
    pub(crate) columns: Range<usize>,
    pub(crate) rows: Range<usize>,
    cells: Vec<Nearest>,
}

#[derive(Clone, Copy)]
pub(crate) struct Nearest {
    square: f32,
    /// To the left of the line, less than nothing on its right.
    pub(crate) left: f32,
    pub(crate) along: f32,
    /// The direction in which the line runs there.
    pub(crate) way: Place,
}

const NOWHERE: Nearest = Nearest {
    square: f32::INFINITY,
    left: f32::INFINITY,
    along: 0.0,
    way: [1.0, 0.0],
};

/// Beyond its ends a line still counts so far.
const SLACK: f32 = 0.4;

impl Beside {
    /// `reach` is how far from the line it is asked.
    pub(crate) fn of(line: &[Place], closed: bool, reach: f32, frame: &Frame) -> Option<Beside> {
        let (columns, rows) = around(line, reach, frame)?;
        let mut beside = Beside {
            cells: vec![NOWHERE; columns.len() * rows.len()],
            columns,
            rows,
        };
        let count = if closed { line.len() } else { line.len() - 1 };
        let mut run = 0.0;
        for k in 0..count {
            let (a, b) = (line[k], line[(k + 1) % line.len()]);
            let long = ((b[0] - a[0]).powi(2) + (b[1] - a[1]).powi(2)).sqrt();
            if long > 0.0 {
                let open = [!closed && k == 0, !closed && k + 1 == count];
                beside.side([a, b], long, (run, open), reach, frame);
            }
            run += long;
        }
        Some(beside)
    }

    fn side(
        &mut self,
        [a, b]: [Place; 2],
        long: f32,
        (run, open): (f32, [bool; 2]),
        reach: f32,
        frame: &Frame,
    ) {
        let way = [(b[0] - a[0]) / long, (b[1] - a[1]) / long];
        let Some((columns, rows)) = around(&[a, b], reach, frame) else {
            return;
        };
        let wide = self.columns.len();
        for row in rows {
            let dy = frame.y(row) - a[1];
            let at = (row - self.rows.start) * wide;
            for column in columns.clone() {
                let dx = frame.x(column) - a[0];
                let s = dx * way[0] + dy * way[1];
                let left = dy * way[0] - dx * way[1];
                if (open[0] && s < -SLACK) || (open[1] && s > long + SLACK) {
                    continue;
                }
                let over = (-s).max(s - long).max(0.0);
                let square = left * left + over * over;
                let cell = &mut self.cells[at + column - self.columns.start];
                if square < cell.square {
                    let far = if over > 0.0 {
                        square.sqrt()
                    } else {
                        left.abs()
                    };
                    *cell = Nearest {
                        square,
                        left: if left < 0.0 { -far } else { far },
                        along: run + s.clamp(0.0, long),
                        way,
                    };
                }
            }
        }
    }

    /// What is known at a sample, if it lies near enough.
    pub(crate) fn at(&self, row: usize, column: usize) -> Option<&Nearest> {
        let inside = self.rows.contains(&row) && self.columns.contains(&column);
        let at = inside
            .then(|| (row - self.rows.start) * self.columns.len() + column - self.columns.start)?;
        self.cells.get(at).filter(|cell| cell.square.is_finite())
    }
}

/// The samples within `reach` of the box round some places; `None` where there are none.
pub(crate) fn around(
    places: &[Place],
    reach: f32,
    frame: &Frame,
) -> Option<(Range<usize>, Range<usize>)> {
    let mut bounds = [
        f32::INFINITY,
        f32::INFINITY,
        f32::NEG_INFINITY,
        f32::NEG_INFINITY,
    ];
    for p in places {
        bounds = [
            bounds[0].min(p[0]),
            bounds[1].min(p[1]),
            bounds[2].max(p[0]),
            bounds[3].max(p[1]),
        ];
    }
    let columns = frame.columns(bounds[0] - reach, bounds[2] + reach);
    let rows = frame.rows(bounds[3] + reach, bounds[1] - reach);
    (!columns.is_empty() && !rows.is_empty() && places.len() > 1).then_some((columns, rows))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    const FRAME: Frame = Frame {
        left: 0.0,
        top: 10.0,
        step: 0.5,
        wide: 20,
        high: 20,
    };

    #[test]
    fn a_square_is_filled_as_far_as_its_clip() {
        let square = [[2.0, 2.0], [8.0, 2.0], [8.0, 8.0], [2.0, 8.0]];
        let clip = [[0.0, 0.0], [5.0, 0.0], [5.0, 10.0], [0.0, 10.0]];
        let count = |clip| -> usize {
            runs(&square, clip, &FRAME)
                .iter()
                .flatten()
                .map(Range::len)
                .sum()
        };
        assert_eq!(count(None), 144);
        assert_eq!(count(Some(&clip[..])), 72);
    }

    #[test]
    fn left_of_a_line_is_more_than_nothing() {
        let beside = Beside::of(&[[5.0, 0.0], [5.0, 10.0]], false, 3.0, &FRAME).unwrap();
        let near = beside.at(10, 8).unwrap();
        assert!(
            (near.left - 0.75).abs() < 1e-5 && (near.along - 4.75).abs() < 1e-5,
            "{} {}",
            near.left,
            near.along
        );
        assert!(beside.at(10, 12).unwrap().left < 0.0);
        assert!(beside.at(10, 2).is_none());
    }
}
