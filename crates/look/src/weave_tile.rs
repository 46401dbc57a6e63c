//! One repeat of a weave kept as a table and bent by the unevenness of its yarns: for pictures in which a yarn is a few pixels
//! wide and single fibres are not seen.

use crate::chance::{hash, parted};
use crate::cloth::System;
use crate::weave::{Face, Hit, WARP_SALT, WEFT_SALT};

/// Between two places of the table at the most.
const GRID: f32 = 0.013;

#[derive(Clone, Copy)]
struct Cell {
    z: f32,
    across: f32,
    /// The yarn, from the one below whose place this is.
    yarn: i8,
    weft: bool,
}

/// The repeat of one face.
pub(crate) struct Tile {
    wide: usize,
    high: usize,
    /// Repeats a millimetre.
    per_mm: [f32; 2],
    cells: Vec<Cell>,
}

impl Tile {
    /// From a face whose yarns are even.
    pub(crate) fn of(even: &Face) -> Tile {
        let repeat = even.woven.repeat();
        let [wide, high] = repeat.map(|long| ((long / GRID).ceil() as usize).clamp(8, 1000));
        let cells = (0..wide * high)
            .map(|k| {
                let x = (k % wide) as f32 / wide as f32 * repeat[0];
                let y = (k / wide) as f32 / high as f32 * repeat[1];
                let hit = even.at(x, y);
                let own = if hit.weft {
                    y / even.woven.weft.pitch
                } else {
                    x / even.woven.warp.pitch
                };
                let yarn = (hit.yarn - parted(own).0).clamp(-2, 2) as i8;
                Cell {
                    z: hit.z,
                    across: hit.across,
                    yarn,
                    weft: hit.weft,
                }
            })
            .collect();
        Tile {
            wide,
            high,
            per_mm: repeat.map(|long| 1.0 / long),
            cells,
        }
    }

    /// At a place of the cloth whose yarns are as uneven as `face` says.
    #[inline(always)]
    pub(crate) fn at(&self, face: &Face, x: f32, y: f32, memory: &mut Memory) -> Hit {
        let woven = &face.woven;
        let (aside, thick_warp) = bent(&woven.warp, x, y, WARP_SALT, &mut memory.warp);
        let (up, thick_weft) = bent(&woven.weft, y, x, WEFT_SALT, &mut memory.weft);
        let (x1, y1) = (x - woven.stray * aside, y - woven.stray * up);
        let (u, v) = (parted(x1 * self.per_mm[0]).1, parted(y1 * self.per_mm[1]).1);
        let (u, v) = (u * self.wide as f32, v * self.high as f32);
        let (c, r) = (
            (u as usize).min(self.wide - 1),
            (v as usize).min(self.high - 1),
        );
        let (f, g) = (u - c as f32, v - r as f32);
        let c1 = if c + 1 < self.wide { c + 1 } else { 0 };
        let r1 = if r + 1 < self.high { r + 1 } else { 0 };
        let (low, high) = (r * self.wide, r1 * self.wide);
        let [a, b, d, e] = [low + c, low + c1, high + c, high + c1].map(|at| self.cells[at].z);
        let z = a + (b - a) * f;
        let z = z + (d + (e - d) * f - z) * g;
        let nearest = if f < 0.5 { c } else { c1 };
        let cell = &self.cells[if g < 0.5 { low } else { high } + nearest];
        let (system, own, along, thick) = if cell.weft {
            (&woven.weft, y1, x, thick_weft)
        } else {
            (&woven.warp, x1, y, thick_warp)
        };
        let thicker =
            system.half[1] * woven.uneven * 1.1 * thick * (1.0 - cell.across * cell.across);
        Hit {
            z: z + thicker,
            weft: cell.weft,
            across: cell.across,
            along,
            yarn: parted(own * system.per_mm).0 + i32::from(cell.yarn),
        }
    }
}

/// What is known of the unevenness of the yarns last asked for: neighbouring samples lie on the same ones.
#[derive(Clone, Copy, Default)]
pub(crate) struct Memory {
    warp: [Known; 2],
    weft: [Known; 2],
}

/// One yarn between two places along it.
#[derive(Clone, Copy, Default)]
struct Known {
    yarn: i32,
    cell: i32,
    filled: bool,
    from: (f32, f32),
    to: (f32, f32),
}

impl Known {
    /// Aside and thicker, from -1 to 1.
    #[inline(always)]
    fn at(&mut self, yarn: i32, s: f32, salt: u32) -> (f32, f32) {
        // Each yarn begins elsewhere.
        let (cell, f) = parted(s * (1.0 / 2.1) + yarn as f32 * 0.618_034);
        if !(self.filled && self.yarn == yarn && self.cell == cell) {
            *self = Known {
                yarn,
                cell,
                filled: true,
                from: both(cell, yarn, salt),
                to: both(cell.wrapping_add(1), yarn, salt),
            };
        }
        let f = f * f * (3.0 - 2.0 * f);
        (
            self.from.0 + (self.to.0 - self.from.0) * f,
            self.from.1 + (self.to.1 - self.from.1) * f,
        )
    }
}

/// Two numbers from -1 to 1 of one hash.
fn both(cell: i32, yarn: i32, salt: u32) -> (f32, f32) {
    let h = hash(cell, yarn, salt);
    let half = |v: u32| v as f32 * (2.0 / 65_536.0) - 1.0;
    (half(h >> 16), half(h & 0xFFFF))
}

/// How far aside the yarns at `t` lie at `s` along them, and how much thicker they are, both from -1 to 1 and without a
/// break from one yarn to the next.
#[inline(always)]
fn bent(system: &System, t: f32, s: f32, salt: u32, known: &mut [Known; 2]) -> (f32, f32) {
    let (i, f) = parted(t * system.per_mm - 0.5);
    let next = i.wrapping_add(1);
    let a = known[(i & 1) as usize].at(i, s, salt);
    let b = known[(next & 1) as usize].at(next, s, salt);
    (a.0 + (b.0 - a.0) * f, a.1 + (b.1 - a.1) * f)
}
