//! The relief between its cells.

use crate::relief::Relief;

/// The relief between its cells, as a smooth surface (a cubic B-spline).
pub(crate) struct Smooth<'a> {
    relief: &'a Relief,
}

fn spline(f: f32) -> [f32; 4] {
    let g = 1.0 - f;
    let (f2, g2) = (f * f, g * g);
    [
        g2 * g / 6.0,
        2.0 / 3.0 - 0.5 * f2 * (2.0 - f),
        2.0 / 3.0 - 0.5 * g2 * (2.0 - g),
        f2 * f / 6.0,
    ]
}

impl<'a> Smooth<'a> {
    pub(crate) fn of(relief: &'a Relief) -> Smooth<'a> {
        Smooth { relief }
    }

    /// Height and shift of each column of cells at a height of the picture.
    pub(crate) fn row(&self, y: f32, line: &mut Vec<(f32, [f32; 2])>) {
        let frame = &self.relief.frame;
        let at = frame.row_of(y).clamp(1.0, frame.high as f32 - 3.0);
        let r = at as usize;
        let f = at - r as f32;
        let weights = spline(f);
        line.clear();
        line.extend((0..frame.wide).map(|c| {
            let cell = |k: usize| &self.relief.cells[(r + k - 1) * frame.wide + c];
            let z = (0..4).map(|k| weights[k] * cell(k).height).sum();
            let (a, b) = (cell(1).shift, cell(2).shift);
            (z, [a[0] + (b[0] - a[0]) * f, a[1] + (b[1] - a[1]) * f])
        }));
    }

    pub(crate) fn at(&self, line: &[(f32, [f32; 2])], x: f32) -> (f32, [f32; 2]) {
        let frame = &self.relief.frame;
        let at = frame.column_of(x).clamp(1.0, frame.wide as f32 - 3.0);
        let c = at as usize;
        let f = at - c as f32;
        let w = spline(f);
        let z =
            w[0] * line[c - 1].0 + w[1] * line[c].0 + w[2] * line[c + 1].0 + w[3] * line[c + 2].0;
        let (a, b) = (line[c].1, line[c + 1].1);
        (z, [a[0] + (b[0] - a[0]) * f, a[1] + (b[1] - a[1]) * f])
    }
}
