//! Samples in rows over a window, and rows worked at on several threads with the same outcome as on one.

use std::sync::Mutex;

/// Where samples lie: row 0 is the uppermost, y runs up as on the view. Millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Frame {
    /// The left and the upper border.
    pub(crate) left: f32,
    pub(crate) top: f32,
    pub(crate) step: f32,
    pub(crate) wide: usize,
    pub(crate) high: usize,
}

impl Frame {
    /// The same with so many pixels more on every side.
    pub(crate) fn rimmed(&self, rim: usize) -> Frame {
        Frame {
            left: self.left - rim as f32 * self.step,
            top: self.top + rim as f32 * self.step,
            step: self.step,
            wide: self.wide + 2 * rim,
            high: self.high + 2 * rim,
        }
    }

    pub(crate) fn x(&self, column: usize) -> f32 {
        self.left + (column as f32 + 0.5) * self.step
    }

    pub(crate) fn y(&self, row: usize) -> f32 {
        self.top - (row as f32 + 0.5) * self.step
    }

    /// The column in which something at `x` falls, fractional, 0 at the middle of the first.
    pub(crate) fn column_of(&self, x: f32) -> f32 {
        (x - self.left) / self.step - 0.5
    }

    pub(crate) fn row_of(&self, y: f32) -> f32 {
        (self.top - y) / self.step - 0.5
    }

    /// The columns whose middles lie between two places.
    pub(crate) fn columns(&self, from: f32, to: f32) -> std::ops::Range<usize> {
        span(self.column_of(from), self.column_of(to), self.wide)
    }

    /// The rows whose middles lie between two heights, the higher one first.
    pub(crate) fn rows(&self, high: f32, low: f32) -> std::ops::Range<usize> {
        span(self.row_of(high), self.row_of(low), self.high)
    }

    /// The same frame cut to some of its rows.
    pub(crate) fn part(&self, first: usize, rows: usize) -> Frame {
        Frame {
            top: self.top - first as f32 * self.step,
            high: rows,
            ..*self
        }
    }
}

fn span(from: f32, to: f32, count: usize) -> std::ops::Range<usize> {
    let first = from.ceil().clamp(0.0, count as f32) as usize;
    let end = (to.floor() + 1.0).clamp(0.0, count as f32) as usize;
    first..end.max(first)
}

/// Rows that one thread takes at a time.
const BAND: usize = 24;

/// Works at all rows, a band of them at a time: `work` is given the number of its first row and the band. What comes out does
/// not depend on how many threads there are, for no band sees another.
pub(crate) fn in_bands<T: Send>(
    threads: usize,
    rows: &mut [T],
    wide: usize,
    work: impl Fn(usize, &mut [T]) + Sync,
) {
    let bands = rows.chunks_mut((wide * BAND).max(1)).enumerate();
    if threads <= 1 {
        bands.for_each(|(k, band)| work(k * BAND, band));
        return;
    }
    let queue = Mutex::new(bands);
    std::thread::scope(|scope| {
        for _ in 0..threads.min(64) {
            scope.spawn(|| {
                loop {
                    let next = queue.lock().ok().and_then(|mut left| left.next());
                    let Some((k, band)) = next else { break };
                    work(k * BAND, band);
                }
            });
        }
    });
}

/// Several blurs by a box of `reach` samples to either side, which together are nearly a bell; in place.
pub(crate) fn blurred(values: &[f32], wide: usize, reach: usize) -> Vec<f32> {
    let mut out = values.to_vec();
    let high = values.len() / wide.max(1);
    if reach == 0 || wide == 0 || high == 0 {
        return out;
    }
    let mut line = vec![0.0; wide.max(high)];
    for _ in 0..2 {
        for row in out.chunks_mut(wide) {
            line[..wide].copy_from_slice(row);
            boxed(&line[..wide], reach, |k, v| row[k] = v);
        }
        let mut sums = vec![0.0; wide];
        let before = out.clone();
        let at = |row: isize| {
            let row = row.clamp(0, high as isize - 1) as usize;
            &before[row * wide..(row + 1) * wide]
        };
        let r = reach as isize;
        for k in -r..=r {
            sums.iter_mut().zip(at(k)).for_each(|(s, v)| *s += v);
        }
        let share = 1.0 / (2 * reach + 1) as f32;
        for row in 0..high {
            let into = &mut out[row * wide..(row + 1) * wide];
            into.iter_mut().zip(&sums).for_each(|(o, s)| *o = s * share);
            let (leaves, comes) = (at(row as isize - r), at(row as isize + r + 1));
            for (s, (l, c)) in sums.iter_mut().zip(leaves.iter().zip(comes)) {
                *s += c - l;
            }
        }
    }
    out
}

fn boxed(line: &[f32], reach: usize, mut put: impl FnMut(usize, f32)) {
    let n = line.len();
    let at = |k: isize| line[k.clamp(0, n as isize - 1) as usize];
    let r = reach as isize;
    let share = 1.0 / (2 * reach + 1) as f32;
    let mut sum: f32 = (-r..=r).map(at).sum();
    for k in 0..n {
        put(k, sum * share);
        sum += at(k as isize + r + 1) - at(k as isize - r);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn however_many_threads_work_every_row_is_worked_once() {
        for threads in [1, 2, 5] {
            let mut rows = vec![0_u32; 7 * 100];
            in_bands(threads, &mut rows, 7, |first, band| {
                for (k, v) in band.iter_mut().enumerate() {
                    *v += (first * 7 + k) as u32;
                }
            });
            assert!(rows.iter().enumerate().all(|(k, v)| *v == k as u32));
        }
    }

    #[test]
    fn a_blur_keeps_the_mean_and_an_even_field() {
        let even = blurred(&[2.0; 60], 10, 3);
        assert!(even.iter().all(|v| (v - 2.0).abs() < 1e-5));
        let mut spot = vec![0.0; 41 * 41];
        spot[20 * 41 + 20] = 1.0;
        let sum: f32 = blurred(&spot, 41, 4).iter().sum();
        assert!((sum - 1.0).abs() < 1e-4, "{sum}");
    }
}
