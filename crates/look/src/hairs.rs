//! Ends of fibres that stand off the cloth, and others that lie on it: thin curves that hang on absolute cells.

use crate::chance::chance;
use crate::field::Frame;
use crate::tables::Tables;

/// Pixels wider than this show no single fibre.
pub(crate) const SEEN_TO: f32 = 0.045;
/// Lying fibres a square millimetre (from memory).
const LYING: f32 = 40.0;
/// How wide a fibre of cotton is seen, in millimetres.
const WIDE: f32 = 0.016;
const LONGEST: f32 = 1.1;

/// How much of each pixel of a band fibres cover: those that lie, and those that stand off.
pub(crate) struct Cover {
    pub(crate) lying: Vec<f32>,
    pub(crate) loose: Vec<f32>,
}

impl Cover {
    pub(crate) fn of(band: &Frame, loose_per_mm2: f32) -> Cover {
        let blank = vec![0.0; band.wide * band.high];
        let mut cover = Cover {
            lying: blank.clone(),
            loose: blank,
        };
        let low = |v: f32| (v - LONGEST).floor() as i32;
        let high = |v: f32| (v + LONGEST).ceil() as i32;
        let right = band.left + band.wide as f32 * band.step;
        let foot = band.top - band.high as f32 * band.step;
        let tables = Tables::new();
        for j in low(foot)..high(band.top) {
            for i in low(band.left)..high(right) {
                let count =
                    |most: f32, salt| most as i32 + i32::from(chance(i, j, salt) < most.fract());
                for k in 0..count(LYING, 201) {
                    Hair::of(i, j, k, false).draw(band, &tables, &mut cover.lying);
                }
                for k in 0..count(loose_per_mm2, 202) {
                    Hair::of(i, j, k, true).draw(band, &tables, &mut cover.loose);
                }
            }
        }
        cover
    }
}

struct Hair {
    from: [f32; 2],
    /// Its direction and how it turns along its length, in turns.
    way: f32,
    curl: f32,
    long: f32,
    strength: f32,
}

impl Hair {
    fn of(i: i32, j: i32, k: i32, loose: bool) -> Hair {
        let salt = if loose { 230 } else { 210 };
        let any = |n: u32| chance(i, j.wrapping_mul(64).wrapping_add(k), salt + n);
        // What lies follows the twist of the warp, or of the weft.
        let lies = if any(6) < 0.5 { 0.18 } else { 0.43 } + 0.08 * (any(2) - 0.5);
        let square = any(3) * any(3);
        Hair {
            from: [i as f32 + any(0), j as f32 + any(1)],
            way: if loose { any(2) } else { lies },
            curl: (any(4) - 0.5) * if loose { 0.32 } else { 0.1 },
            long: 0.2 + if loose { 0.9 } else { 0.7 } * square,
            strength: 0.3 + 0.7 * any(5),
        }
    }

    fn draw(&self, band: &Frame, tables: &Tables, cover: &mut [f32]) {
        let steps = ((self.long / band.step) as i32).clamp(6, 200);
        let share = (WIDE / band.step).min(1.0) * self.strength;
        for n in 0..=steps {
            let t = n as f32 / steps as f32;
            let turns = self.way + self.curl * t;
            let x = self.from[0] + self.long * t * tables.cosine(turns);
            let y = self.from[1] + self.long * t * tables.sine(turns);
            let (column, row) = (band.column_of(x), band.row_of(y));
            if column < -1.0 || row < -1.0 || column > band.wide as f32 || row > band.high as f32 {
                continue;
            }
            let (c, r) = (column.floor(), row.floor());
            let (f, g) = (column - c, row - r);
            let fades = share * tables.sine(0.5 * (0.15 + 0.7 * t));
            for (dc, dr, part) in [
                (0, 0, (1.0 - f) * (1.0 - g)),
                (1, 0, f * (1.0 - g)),
                (0, 1, (1.0 - f) * g),
                (1, 1, f * g),
            ] {
                let (c, r) = (c as i32 + dc, r as i32 + dr);
                if c >= 0 && r >= 0 && (c as usize) < band.wide && (r as usize) < band.high {
                    let at = &mut cover[r as usize * band.wide + c as usize];
                    *at = at.max(part * fades);
                }
            }
        }
    }
}
