//! The relief of the laid pair without its weave: which sheet is on top, how high it stands, how its cloth runs over a fold.

use crate::areas::{Beside, around, runs};
use crate::asked::Asked;
use crate::chance::{over, smooth};
use crate::field::{Frame, blurred, in_bands};
use crate::metal::Metal;
use crate::ridge_shape::{Shape, length_of, round_a_fold, rounded};
use crate::scene::{Border, Ridge, Scene, Sheet, Stands};
use crate::tables::Tables;
use crate::wear::Causes;
use crate::wear_zones::EVERYWHERE;

/// No sheet: the table.
pub(crate) const TABLE: u16 = u16::MAX;

/// One place of the relief.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Cell {
    /// Height of the cloth's middle.
    pub(crate) height: f32,
    /// The same with what is set on it, for shadows.
    pub(crate) body: f32,
    /// How far the cloth that lies here would lie away from here, were its fold opened.
    pub(crate) shift: [f32; 2],
    /// The sheet on top.
    pub(crate) top: u16,
    /// How much this place is rubbed in wear.
    pub(crate) zone: f32,
}

/// The relief over a window.
pub(crate) struct Relief {
    pub(crate) frame: Frame,
    pub(crate) cells: Vec<Cell>,
    /// How far each place stands out of what lies about it, -0.55 to 1.6.
    pub(crate) proud: Vec<f32>,
}

/// Farthest that a ridge, with its slopes and waves, is looked at beyond its width.
const BEYOND: f32 = 4.0;
/// How much of what lies behind a panel shows through it (chosen).
const SHOWS_THROUGH: f32 = 0.3;
/// What lies about a place, for whether it stands out; and by how much it has to.
const ABOUT: f32 = 2.2;
const OUT_BY: f32 = 0.25;

impl Relief {
    pub(crate) fn of(asked: &Asked, frame: Frame) -> Relief {
        let (scene, causes, threads) = (asked.scene, &asked.causes, asked.threads);
        let blank = Cell {
            height: scene.table,
            body: scene.table,
            shift: [0.0; 2],
            top: TABLE,
            zone: 0.0,
        };
        let mut cells = vec![blank; frame.wide * frame.high];
        in_bands(threads, &mut cells, frame.wide, |first, band| {
            let part = frame.part(first, band.len() / frame.wide.max(1));
            Band {
                scene,
                frame: part,
                causes,
                cells: band,
            }
            .lay();
        });
        let heights: Vec<f32> = cells.iter().map(|c| c.height).collect();
        let reach = (ABOUT / frame.step * 0.8) as usize;
        let about = blurred(&heights, frame.wide, reach.clamp(1, 64));
        let proud = heights.iter().zip(&about);
        let proud = proud
            .map(|(h, a)| ((h - a) / OUT_BY).clamp(-0.55, 1.6))
            .collect();
        Relief {
            frame,
            cells,
            proud,
        }
    }
}

impl Relief {
    /// The height of the cell nearest to a place.
    #[cfg(test)]
    pub(crate) fn height_at(&self, at: [f32; 2]) -> f32 {
        let clamp =
            |v: f32, count: usize| (v.round().max(0.0) as usize).min(count.saturating_sub(1));
        let column = clamp(self.frame.column_of(at[0]), self.frame.wide);
        let row = clamp(self.frame.row_of(at[1]), self.frame.high);
        self.cells
            .get(row * self.frame.wide + column)
            .map_or(0.0, |cell| cell.height)
    }

    /// The height that a head of metal is set on.
    pub(crate) fn seat(&self, metal: &Metal) -> f32 {
        let column = self
            .frame
            .columns(metal.at[0], metal.at[0] + self.frame.step)
            .start;
        let row = self
            .frame
            .rows(metal.at[1], metal.at[1] - self.frame.step)
            .start;
        let d = {
            let (dx, dy) = (
                self.frame.x(column) - metal.at[0],
                self.frame.y(row) - metal.at[1],
            );
            (dx * dx + dy * dy).sqrt()
        };
        let cell = self.cells.get(row * self.frame.wide + column);
        cell.map_or(0.0, |cell| cell.body - crate::metal::profile(metal, d))
    }
}

/// Some rows of the relief.
struct Band<'a> {
    scene: &'a Scene,
    frame: Frame,
    causes: &'a Causes,
    cells: &'a mut [Cell],
}

impl Band<'_> {
    fn lay(&mut self) {
        for (index, sheet) in self.scene.sheets.iter().enumerate() {
            self.sheet(index, sheet);
        }
        self.uneven();
        self.drawn_in();
        self.rubbed();
        for metal in &self.scene.metals {
            self.metal(metal);
        }
        self.slits();
    }

    fn sheet(&mut self, index: usize, sheet: &Sheet) {
        if around(&sheet.outline, 0.0, &self.frame).is_none() {
            return;
        }
        let clip = sheet.clip.map(|k| &self.scene.clips[k][..]);
        let runs = runs(&sheet.outline, clip, &self.frame);
        let rims = sheet.rims.iter().filter(|_| sheet.round > 0.0);
        let rims: Vec<Beside> = rims
            .filter_map(|rim| Beside::of(rim, false, sheet.round * 1.5, &self.frame))
            .collect();
        let wide = self.frame.wide;
        for (row, runs) in runs.iter().enumerate() {
            for column in runs.iter().flat_map(Clone::clone) {
                let near = rims.iter().filter_map(|rim| rim.at(row, column));
                let near = near.min_by(|a, b| a.left.abs().total_cmp(&b.left.abs()));
                let inside = near.map_or(f32::INFINITY, |n| n.left.abs());
                let up = rounded(inside, sheet.round);
                let cell = &mut self.cells[row * wide + column];
                cell.height = match sheet.stands {
                    Stands::At(z) => self.scene.table + (z - self.scene.table) * up,
                    Stands::On(more) => cell.height + more * up,
                    Stands::Bridges(z) => cell.height + (z - cell.height).max(0.0) * up,
                    Stands::Beside => cell.height * shows_through(cell.height),
                };
                cell.top = index as u16;
                cell.shift = near.filter(|_| sheet.folds).map_or([0.0; 2], |n| {
                    round_a_fold(n.left.abs(), sheet.round, n.way, n.left.signum())
                });
            }
        }
        for ridge in self.scene.ridges.iter().filter(|r| r.sheet == index) {
            self.ridge(ridge, &runs);
        }
    }

    fn ridge(&mut self, ridge: &Ridge, runs: &[Vec<std::ops::Range<usize>>]) {
        let reach = ridge.width + BEYOND;
        let Some(beside) = Beside::of(&ridge.line, false, reach, &self.frame) else {
            return;
        };
        let tables = Tables::new();
        let shape = Shape {
            long: length_of(&ridge.line),
            ridge,
            tables: &tables,
            feed: self.causes.feed,
        };
        let wide = self.frame.wide;
        for row in beside.rows.clone() {
            for run in &runs[row] {
                let columns = run.start.max(beside.columns.start)..run.end.min(beside.columns.end);
                for column in columns {
                    let Some(near) = beside.at(row, column) else {
                        continue;
                    };
                    let s = near.left * ridge.side;
                    let cell = &mut self.cells[row * wide + column];
                    cell.height += shape.height(s, near.along);
                    if ridge.near == Border::Fold && s >= 0.0 {
                        cell.shift = round_a_fold(s, 0.8 * ridge.ply, near.way, ridge.side);
                    }
                }
            }
            for column in beside.columns.clone() {
                let cell = &mut self.cells[row * wide + column];
                if let Some(near) = beside.at(row, column).filter(|_| cell.top != TABLE) {
                    cell.height -= shape.groove(near.left * ridge.side);
                }
            }
        }
    }

    /// Cloth never lies quite flat.
    fn uneven(&mut self) {
        let wide = self.frame.wide;
        for (k, cell) in self.cells.iter_mut().enumerate() {
            if cell.top != TABLE {
                let (x, y) = (self.frame.x(k % wide), self.frame.y(k / wide));
                cell.height +=
                    0.12 * over(x / 17.0, y / 14.0, 61) + 0.05 * over(x / 6.0, y / 7.0, 62);
            }
            cell.body = cell.height;
        }
    }

    /// Rows draw the cloth in, deeper at each hole.
    fn drawn_in(&mut self) {
        /// Beyond this the pull of a row is nothing.
        const PULL: f32 = 1.7;
        let step = self.frame.step;
        if step > 0.4 {
            return;
        }
        let tables = Tables::new();
        let mut dents = vec![0.0_f32; self.cells.len()];
        for strand in self.scene.strands.iter().filter(|s| s.pulls) {
            let (a, b) = (strand.from, strand.to);
            let Some((columns, rows)) = around(&[a, b], PULL, &self.frame) else {
                continue;
            };
            let long = ((b[0] - a[0]).powi(2) + (b[1] - a[1]).powi(2))
                .sqrt()
                .max(0.01);
            let way = [(b[0] - a[0]) / long, (b[1] - a[1]) / long];
            for row in rows {
                for column in columns.clone() {
                    let (dx, dy) = (self.frame.x(column) - a[0], self.frame.y(row) - a[1]);
                    let (s, v) = (dx * way[0] + dy * way[1], dy * way[0] - dx * way[1]);
                    let out = (-s).max(s - long).max(0.0);
                    let line = 0.20 * tables.fade((v * v + 4.0 * out * out) / 0.5625);
                    let hole = 0.16 * tables.fade((dx * dx + dy * dy) / 0.1024);
                    let dent = &mut dents[row * self.frame.wide + column];
                    *dent = dent.max(line + hole);
                }
            }
        }
        for (cell, dent) in self.cells.iter_mut().zip(dents) {
            cell.height -= dent;
            cell.body -= dent;
        }
    }

    fn slits(&mut self) {
        const HALF: f32 = 0.45;
        const DEEP: f32 = 0.9;
        for slit in &self.scene.slits {
            let Some(beside) = Beside::of(&[slit.from, slit.to], false, HALF * 2.0, &self.frame)
            else {
                continue;
            };
            for row in beside.rows.clone() {
                for column in beside.columns.clone() {
                    if let Some(near) = beside.at(row, column) {
                        let deep = DEEP * smooth((HALF * 1.6 - near.left.abs()) / HALF);
                        let cell = &mut self.cells[row * self.frame.wide + column];
                        if cell.top != TABLE && cell.top as usize >= slit.level {
                            continue;
                        }
                        cell.height -= deep;
                    }
                }
            }
        }
    }

    fn rubbed(&mut self) {
        let tables = Tables::new();
        for cell in self.cells.iter_mut().filter(|c| c.top != TABLE) {
            cell.zone = EVERYWHERE;
        }
        for zone in &self.scene.zones {
            let Some((columns, rows)) = around(&[zone.middle; 2], zone.reach(), &self.frame) else {
                continue;
            };
            for row in rows {
                for column in columns.clone() {
                    let more = zone.at(self.frame.x(column), self.frame.y(row), &tables);
                    self.cells[row * self.frame.wide + column].zone += more;
                }
            }
        }
        for cell in self.cells.iter_mut() {
            cell.zone = cell.zone.clamp(0.05, 1.8);
        }
    }

    /// A head of metal presses its seat in and stands in the way of the light.
    fn metal(&mut self, metal: &Metal) {
        const PRESSES: f32 = 9.0;
        let at = metal.at;
        let Some((columns, rows)) = around(&[at, at], metal.radius + PRESSES, &self.frame) else {
            return;
        };
        let tables = Tables::new();
        for row in rows {
            for column in columns.clone() {
                let (dx, dy) = (self.frame.x(column) - at[0], self.frame.y(row) - at[1]);
                let d = (dx * dx + dy * dy).sqrt();
                let cell = &mut self.cells[row * self.frame.wide + column];
                if cell.top as usize >= metal.level && cell.top != TABLE {
                    continue;
                }
                let beyond = ((d - 0.5 * metal.radius) / 4.2).max(0.0);
                let pressed = 0.30 * tables.fade(beyond * beyond);
                cell.height -= pressed;
                cell.body -= pressed;
                if d < metal.radius {
                    cell.body = cell.height + crate::metal::profile(metal, d);
                }
            }
        }
    }
}

/// What is left of a height under a panel that lies over it; where a leg falls away to its fold the panel does too.
fn shows_through(height: f32) -> f32 {
    SHOWS_THROUGH + (1.0 - SHOWS_THROUGH) * smooth((-height - 0.2) / 0.5)
}
