//! Bands of samples filled with what lies there: cloth, strands of sewing yarn, metal.

use crate::areas::{around, runs};
use crate::chance::{chance, over};
use crate::field::Frame;
use crate::metal::profile;
use crate::relief::{Relief, TABLE};
use crate::scene::{Scene, Sheet, Stuff};
use crate::sewing_yarn::Lying;
use crate::shading::{Kind, Sample};
use crate::smooth_relief::Smooth;
use crate::weave::{Face, Hit};
use crate::weave_tile::{Memory, Tile};

/// How far an edge of cloth strays from its line, for it is of yarns.
const EDGE_STRAYS: f32 = 0.09;

/// The sheet on top of each sample of a band, with a rim of rows and columns about it.
pub(crate) struct Tops {
    tops: Vec<u16>,
    wide: usize,
    rim: usize,
    step: f32,
}

impl Tops {
    pub(crate) fn of(scene: &Scene, band: &Frame) -> Tops {
        let rim = (EDGE_STRAYS / band.step).ceil() as usize + 1;
        let frame = band.rimmed(rim);
        let mut tops = vec![TABLE; frame.wide * frame.high];
        for (index, sheet) in scene.sheets.iter().enumerate() {
            if around(&sheet.outline, 0.0, &frame).is_none() {
                continue;
            }
            let clip = sheet.clip.map(|k| &scene.clips[k][..]);
            for (row, runs) in runs(&sheet.outline, clip, &frame).iter().enumerate() {
                for run in runs {
                    tops[row * frame.wide + run.start..row * frame.wide + run.end]
                        .fill(index as u16);
                }
            }
        }
        Tops {
            tops,
            wide: frame.wide,
            rim,
            step: band.step,
        }
    }

    /// The sheet on top; beside an edge, as its yarns stray.
    fn at(&self, row: usize, column: usize, x: f32, y: f32) -> u16 {
        let at = (row + self.rim) * self.wide + column + self.rim;
        let own = self.tops[at];
        let (r, w) = (self.rim, self.wide);
        let about = [at - r, at + r, at - r * w, at + r * w];
        if about.iter().all(|k| self.tops[*k] == own) {
            return own;
        }
        let most = (self.rim - 1) as f32;
        let stray = |salt| {
            (over(x / 0.33, y / 0.33, salt) * EDGE_STRAYS / self.step).clamp(-most, most) as isize
        };
        let (dx, dy) = (stray(77), stray(78));
        let moved = at as isize + dy * w as isize + dx;
        self.tops[moved as usize]
    }
}

/// A face of a cloth, and its repeat as a table where that is enough.
pub(crate) struct Woven {
    pub(crate) face: Face,
    pub(crate) tile: Option<Tile>,
}

impl Woven {
    #[inline(always)]
    fn at(&self, x: f32, y: f32, memory: &mut Memory) -> Hit {
        match &self.tile {
            Some(tile) => tile.at(&self.face, x, y, memory),
            None => self.face.at(x, y),
        }
    }
}

/// Fills a band of samples.
pub(crate) struct Filling<'a> {
    pub(crate) scene: &'a Scene,
    pub(crate) faces: &'a [[Woven; 2]],
    pub(crate) relief: &'a Relief,
    pub(crate) frame: Frame,
    pub(crate) tops: Tops,
    pub(crate) samples: &'a mut [Sample],
}

impl Filling<'_> {
    pub(crate) fn cloth(&mut self) {
        let smooth = Smooth::of(self.relief);
        let mut line = Vec::new();
        let mut memory = Memory::default();
        for row in 0..self.frame.high {
            let y = self.frame.y(row);
            smooth.row(y, &mut line);
            for column in 0..self.frame.wide {
                let x = self.frame.x(column);
                let top = self.tops.at(row, column, x, y);
                let base = smooth.at(&line, x);
                let sample = match self.scene.sheets.get(top as usize) {
                    None => Sample::table(base.0),
                    Some(sheet) => self.on_sheet(sheet, top, base, [x, y], &mut memory),
                };
                self.samples[row * self.frame.wide + column] = sample;
            }
        }
    }

    fn on_sheet(
        &self,
        sheet: &Sheet,
        top: u16,
        (base, shift): (f32, [f32; 2]),
        [x, y]: [f32; 2],
        memory: &mut Memory,
    ) -> Sample {
        match &sheet.stuff {
            Stuff::Flat(index) => {
                let on = self.scene.flats[*index].at(x, y, true);
                Sample {
                    z: base + on.z,
                    base,
                    tint: on.letter,
                    micro: 0.0,
                    top,
                    kind: Kind::Flat,
                }
            }
            Stuff::Woven {
                cloth,
                reverse,
                warp,
                from,
            } => {
                let woven = &self.faces[*cloth][usize::from(*reverse)];
                let face = &woven.face;
                let (dx, dy) = (x + shift[0] - from[0], y + shift[1] - from[1]);
                let hit = woven.at(
                    dx * warp[1] - dy * warp[0],
                    dx * warp[0] + dy * warp[1],
                    memory,
                );
                let fibre = face.fibres(&hit);
                let tint = if hit.weft {
                    (1.0 - 0.3 * fibre) * (1.0 + 0.5 * (chance(hit.yarn, 9, 8) - 0.5))
                } else {
                    face.shade_of_yarn(hit.yarn, hit.along) * (1.0 - 0.30 * fibre)
                };
                let micro = (1.0 - (face.crown - hit.z) / 0.14).clamp(0.0, 1.3);
                let kind = if hit.weft { Kind::Weft } else { Kind::Warp };
                Sample {
                    z: base + hit.z + face.woven.fibre * fibre,
                    base,
                    tint,
                    micro,
                    top,
                    kind,
                }
            }
        }
    }

    pub(crate) fn strands(&mut self) {
        for strand in &self.scene.strands {
            let yarn = &self.scene.yarns[strand.yarn];
            let lying = Lying::of(strand, yarn);
            let Some((columns, rows)) =
                around(&[strand.from, strand.to], lying.reach(), &self.frame)
            else {
                continue;
            };
            let turn = lying.way;
            for row in rows {
                for column in columns.clone() {
                    let at = row * self.frame.wide + column;
                    let top = self.samples[at].top;
                    if top as usize >= strand.level {
                        continue;
                    }
                    let (x, y) = (self.frame.x(column), self.frame.y(row));
                    let Some(on) = lying.at(x, y) else { continue };
                    let z = self.samples[at].base + self.crown(top) + on.z;
                    if z > self.samples[at].z {
                        let base = self.samples[at].base;
                        let kind = Kind::Thread {
                            yarn: strand.yarn as u16,
                            way: turn,
                        };
                        self.samples[at] = Sample {
                            z,
                            base,
                            tint: on.fibre,
                            micro: 1.0,
                            top,
                            kind,
                        };
                    }
                }
            }
        }
    }

    /// How high the crowns of what is on top stand.
    fn crown(&self, top: u16) -> f32 {
        match self.scene.sheets.get(top as usize).map(|s| &s.stuff) {
            Some(Stuff::Woven { cloth, reverse, .. }) => {
                self.faces[*cloth][usize::from(*reverse)].face.crown * 0.87
            }
            _ => 0.0,
        }
    }

    pub(crate) fn metals(&mut self) {
        for (index, metal) in self.scene.metals.iter().enumerate() {
            let Some((columns, rows)) = around(&[metal.at; 2], metal.radius, &self.frame) else {
                continue;
            };
            let seat = self.relief.seat(metal) + 0.25;
            for row in rows {
                for column in columns.clone() {
                    let sample = &mut self.samples[row * self.frame.wide + column];
                    if sample.top != TABLE && sample.top as usize >= metal.level {
                        continue;
                    }
                    let (dx, dy) = (
                        self.frame.x(column) - metal.at[0],
                        self.frame.y(row) - metal.at[1],
                    );
                    let d = (dx * dx + dy * dy).sqrt();
                    if d < metal.radius {
                        sample.z = seat + profile(metal, d);
                        sample.kind = Kind::Metal(index as u16);
                    }
                }
            }
        }
    }
}
