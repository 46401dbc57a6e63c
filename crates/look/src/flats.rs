//! Patch and labels: leather with letters pressed or raised, woven or printed ribbon.

use style::Letters;

use crate::chance::{chance, over, smooth};
use crate::dye::{Rgb, absorbed, reflected};
use crate::place::Place;

/// How deep letters are pressed, or how high they stand.
const DEPTH: f32 = 0.35;
/// The grid their mask is kept on.
const GRID: f32 = 0.1;

/// What a flat thing is made of.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Made {
    /// Leather, and whether bark tanned it: only then does it darken much.
    Leather {
        darkens: bool,
        letters: Letters,
    },
    Ribbon,
}

/// A patch or a label as it lies.
#[derive(Clone, Debug)]
pub(crate) struct Flat {
    pub(crate) middle: Place,
    /// The direction in which it is read.
    pub(crate) across: Place,
    pub(crate) half: [f32; 2],
    pub(crate) made: Made,
    pub(crate) colour: Rgb,
    mask: Vec<f32>,
    wide: usize,
    high: usize,
}

/// What is seen at a place of it.
#[derive(Clone, Copy, Debug)]
pub(crate) struct OnFlat {
    /// Over its plain surface.
    pub(crate) z: f32,
    /// Whether a letter is there, 0 to 1.
    pub(crate) letter: f32,
}

impl Flat {
    /// `strokes` about its middle, each as thick as `thick`.
    pub(crate) fn of(
        (middle, across, half): (Place, Place, [f32; 2]),
        made: Made,
        colour: Rgb,
        strokes: &[([Place; 2], f32)],
    ) -> Flat {
        let cells = |half: f32| ((half * 2.0 / GRID) as usize + 3).min(3000);
        let (wide, high) = (cells(half[0]), cells(half[1]));
        let mut flat = Flat {
            middle,
            across,
            half,
            made,
            colour,
            mask: vec![0.0; wide * high],
            wide,
            high,
        };
        for (stroke, thick) in strokes {
            flat.stroke(*stroke, thick / 2.0);
        }
        flat
    }

    fn stroke(&mut self, [a, b]: [Place; 2], half: f32) {
        const SOFT: f32 = 0.16;
        let reach = half + SOFT;
        let column = |x: f32| (x + self.half[0]) / GRID;
        let row = |y: f32| (y + self.half[1]) / GRID;
        let limits = |from: f32, to: f32, count: usize| {
            (from.floor().clamp(0.0, count as f32) as usize)
                ..((to.ceil() + 1.0).clamp(0.0, count as f32) as usize)
        };
        let columns = limits(
            column(a[0].min(b[0]) - reach),
            column(a[0].max(b[0]) + reach),
            self.wide,
        );
        let rows = limits(
            row(a[1].min(b[1]) - reach),
            row(a[1].max(b[1]) + reach),
            self.high,
        );
        let way = [b[0] - a[0], b[1] - a[1]];
        let square = (way[0] * way[0] + way[1] * way[1]).max(0.0001);
        for r in rows {
            for c in columns.clone() {
                let p = [
                    c as f32 * GRID - self.half[0] - a[0],
                    r as f32 * GRID - self.half[1] - a[1],
                ];
                let t = ((p[0] * way[0] + p[1] * way[1]) / square).clamp(0.0, 1.0);
                let d = ((p[0] - t * way[0]).powi(2) + (p[1] - t * way[1]).powi(2)).sqrt();
                let m = smooth((reach - d) / (2.0 * SOFT));
                let cell = &mut self.mask[r * self.wide + c];
                *cell = cell.max(m);
            }
        }
    }

    fn letter(&self, u: f32, v: f32) -> f32 {
        let (x, y) = ((u + self.half[0]) / GRID, (v + self.half[1]) / GRID);
        if x < 0.0 || y < 0.0 || x >= (self.wide - 1) as f32 || y >= (self.high - 1) as f32 {
            return 0.0;
        }
        let (c, r) = (x as usize, y as usize);
        let (f, g) = (x - c as f32, y - r as f32);
        let at = |c: usize, r: usize| self.mask[r * self.wide + c];
        let low = at(c, r) + (at(c + 1, r) - at(c, r)) * f;
        let high = at(c, r + 1) + (at(c + 1, r + 1) - at(c, r + 1)) * f;
        low + (high - low) * g
    }

    /// At a place of the view, with its fine grain where `fine`.
    pub(crate) fn at(&self, x: f32, y: f32, fine: bool) -> OnFlat {
        let (dx, dy) = (x - self.middle[0], y - self.middle[1]);
        let u = dx * self.across[0] + dy * self.across[1];
        let v = dy * self.across[0] - dx * self.across[1];
        let letter = self.letter(u, v);
        let z = match self.made {
            Made::Leather { letters, .. } => {
                let pressed = match letters {
                    Letters::Pressed => letter,
                    Letters::Raised => 1.0 - letter,
                    Letters::Printed => 0.0,
                };
                let stamp = match letters {
                    Letters::Pressed => -DEPTH * letter,
                    Letters::Raised => DEPTH * letter,
                    Letters::Printed => 0.0,
                };
                let grain = if fine {
                    hide(u, v) * (1.0 - 0.7 * pressed)
                } else {
                    0.0
                };
                stamp + grain
            }
            Made::Ribbon if fine => ribbon(u, v) + 0.02 * letter,
            Made::Ribbon => 0.0,
        };
        OnFlat { z, letter }
    }

    /// Its colour there, so old.
    pub(crate) fn albedo(&self, on: &OnFlat, x: f32, y: f32, age: f32) -> Rgb {
        match self.made {
            Made::Leather { darkens, letters } => {
                let cloudy =
                    1.0 + 0.16 * over(x / 6.0, y / 4.0, 11) + 0.08 * over(x / 0.8, y / 0.8, 12);
                let raised = letters == Letters::Raised;
                // Hand and belt touch what stands out; a hot stamp browns what it presses.
                let touched = if raised {
                    0.25 + 0.75 * on.letter
                } else {
                    0.45 * (1.0 - 0.8 * on.letter)
                };
                let burnt = if raised {
                    0.3 * (1.0 - on.letter)
                } else {
                    0.9 * on.letter
                };
                let age = if darkens { age } else { 0.25 * age };
                let air = [0.9, 1.4, 2.2];
                std::array::from_fn(|k| {
                    let more =
                        1.0 + age * air[k] + 2.6 * age * touched * (1.0 + 0.1 * k as f32) + burnt;
                    reflected(absorbed(self.colour[k]) * cloudy * more)
                })
            }
            Made::Ribbon => {
                let ink = [0.045, 0.05, 0.065];
                std::array::from_fn(|k| {
                    self.colour[k] + (ink[k] - self.colour[k]) * on.letter * (0.92 - 0.2 * age)
                })
            }
        }
    }
}

/// The grain of a hide: cells about half a millimetre wide, and pores.
fn hide(u: f32, v: f32) -> f32 {
    let x = u / 0.62 + 0.3 * over(u / 2.0, v / 2.0, 3);
    let y = v / 0.55 + 0.3 * over(u / 2.0, v / 2.0, 4);
    let (i, j) = (x.floor() as i32, y.floor() as i32);
    let (mut first, mut second) = (9.0_f32, 9.0_f32);
    for di in -1..=1 {
        for dj in -1..=1 {
            let (a, b) = (i.wrapping_add(di), j.wrapping_add(dj));
            let (px, py) = (a as f32 + chance(a, b, 5), b as f32 + chance(a, b, 6));
            let d = ((x - px).powi(2) + (y - py).powi(2)).sqrt();
            second = second.min(first.max(d));
            first = first.min(d);
        }
    }
    0.022 * smooth((second - first) / 0.25)
}

/// The weave of a ribbon: a fine satin of 60 ends and 30 picks a centimetre (from memory).
fn ribbon(u: f32, v: f32) -> f32 {
    let (end, pick) = (u / 0.166, v / 0.333);
    let (i, j) = (end.floor(), pick.floor());
    let (f, g) = (end - i - 0.5, pick - j - 0.5);
    let sunk = (2 * i as i32).wrapping_add(j as i32).rem_euclid(5) == 0;
    let round = 0.05 * (1.0 - 4.0 * f * f).max(0.0).sqrt();
    if sunk {
        0.03 * (1.0 - 4.0 * g * g).max(0.0).sqrt() - 0.03
    } else {
        round
    }
}
