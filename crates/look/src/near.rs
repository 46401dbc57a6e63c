//! The near picture: every yarn and every stitch as a height, lit sample by sample.

use crate::areas::{around, runs};
use crate::asked::Asked;
use crate::chance::{chance, over};
use crate::dye::Rgb;
use crate::field::{Frame, in_bands};
use crate::hairs;
use crate::light::{Heights, Lit, Steps};
use crate::metal::profile;
use crate::relief::{Relief, TABLE};
use crate::scene::{Scene, Sheet, Stuff};
use crate::sewing_yarn::Lying;
use crate::shading::{Here, Kind, Sample, Shader, Soft};
use crate::weave::{Face, Hit};
use crate::weave_tile::{Memory, Tile};

/// Between samples of the relief at the least.
const RELIEF_STEP: f32 = 0.12;
/// How far the light looks round at the samples themselves, and at the relief.
const LOOKS_NEAR: f32 = 0.8;
const LOOKS_FAR: f32 = 7.0;
/// How far an edge of cloth strays from its line, for it is of yarns.
const EDGE_STRAYS: f32 = 0.09;

/// Pixels wider than this are looked at more than once.
const ONCE_TO: f32 = 0.045;

/// How samples make pixels, along each side.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Fold {
    /// One sample a pixel.
    One,
    /// Three samples for every two pixels: the middle one of them is of both.
    ThreeOverTwo,
}

impl Fold {
    const fn ratio(self) -> f32 {
        match self {
            Fold::One => 1.0,
            Fold::ThreeOverTwo => 1.5,
        }
    }

    /// So many samples hold so many pixels.
    const fn samples(self, pixels: usize) -> usize {
        match self {
            Fold::One => pixels,
            Fold::ThreeOverTwo => (pixels * 3).div_ceil(2),
        }
    }

    /// The first sample of a pixel of an even number.
    const fn first_of(self, pixel: usize) -> usize {
        match self {
            Fold::One => pixel,
            Fold::ThreeOverTwo => pixel / 2 * 3,
        }
    }

    /// The sample in the middle of a pixel, or beside it.
    const fn middle_of(self, pixel: usize) -> usize {
        match self {
            Fold::One => pixel,
            Fold::ThreeOverTwo => pixel / 2 * 3 + pixel % 2 * 2,
        }
    }

    /// The pixels that a sample is part of, and the share of each that it makes.
    const fn shares(self, sample: usize) -> [(usize, f32); 2] {
        const NONE: (usize, f32) = (usize::MAX, 0.0);
        const WHOLE: f32 = 2.0 / 3.0;
        const HALF: f32 = 1.0 / 3.0;
        match self {
            Fold::One => [(sample, 1.0), NONE],
            Fold::ThreeOverTwo => {
                let pair = sample / 3 * 2;
                match sample % 3 {
                    0 => [(pair, WHOLE), NONE],
                    1 => [(pair, HALF), (pair + 1, HALF)],
                    _ => [(pair + 1, WHOLE), NONE],
                }
            }
        }
    }
}

/// A near picture as it is made.
struct Near<'a> {
    asked: &'a Asked<'a>,
    pixels: Frame,
    /// How samples make pixels.
    fold: Fold,
    /// Samples about the picture, for its shade.
    rim: usize,
    fine: Frame,
}

/// Linear light for each pixel of a frame; `gains` bring each cloth's faces to their stated colours.
pub(crate) fn near(asked: &Asked, pixels: &Frame, gains: &[[Rgb; 2]]) -> Vec<Rgb> {
    let fold = if pixels.step > ONCE_TO {
        Fold::ThreeOverTwo
    } else {
        Fold::One
    };
    let step = pixels.step / fold.ratio();
    let rim = (LOOKS_NEAR / step).ceil() as usize + 2;
    let fine = Frame {
        left: pixels.left - rim as f32 * step,
        top: pixels.top + rim as f32 * step,
        step,
        wide: fold.samples(pixels.wide) + 2 * rim,
        high: fold.samples(pixels.high) + 2 * rim,
    };
    let near = Near {
        asked,
        pixels: *pixels,
        fold,
        rim,
        fine,
    };
    let relief = near.relief();
    let soft = near.soft(&relief);
    let samples = near.samples(&relief);
    let z: Vec<f32> = samples.iter().map(|s| s.z).collect();
    let plane = Plane {
        near: &near,
        soft,
        z: &z,
        shader: Shader::of(asked, gains),
        steps: Steps::of(&asked.sun, step, step, LOOKS_NEAR),
        samples: &samples,
    };
    let mut out = vec![[0.0; 3]; pixels.wide * pixels.high];
    in_bands(asked.threads, &mut out, pixels.wide, |first, band| {
        plane.light(first, band);
        if pixels.step < hairs::SEEN_TO {
            plane.hairs(first, band);
        }
    });
    out
}

/// All samples, ready to be lit.
struct Plane<'a> {
    near: &'a Near<'a>,
    soft: Field,
    z: &'a [f32],
    shader: Shader<'a>,
    steps: Steps,
    samples: &'a [Sample],
}

impl Plane<'_> {
    fn light(&self, first: usize, band: &mut [Rgb]) {
        let (near, fold) = (self.near, self.near.fold);
        let wide = near.pixels.wide;
        let heights = Heights {
            z: self.z,
            wide: near.fine.wide,
            high: near.fine.high,
        };
        let mut lit = Lit::default();
        let mut line = vec![[0.0; 3]; fold.samples(wide)];
        let rows = band.len() / wide;
        for sample in fold.first_of(first)..fold.first_of(first) + fold.samples(rows) {
            self.line(sample + near.rim, &heights, &mut lit, &mut line);
            for (row, down) in fold.shares(sample) {
                let Some(row) = row.checked_sub(first).filter(|r| *r < rows) else {
                    continue;
                };
                let into = &mut band[row * wide..(row + 1) * wide];
                for (n, light) in line.iter().enumerate() {
                    for (column, across) in fold.shares(n) {
                        if let Some(pixel) = into.get_mut(column) {
                            let share = down * across;
                            pixel
                                .iter_mut()
                                .zip(light)
                                .for_each(|(p, l)| *p += l * share);
                        }
                    }
                }
            }
        }
    }

    /// The light of one row of samples, without those about the picture.
    fn line(&self, at: usize, heights: &Heights, lit: &mut Lit, line: &mut [Rgb]) {
        let (fine, z) = (&self.near.fine, self.z);
        lit.look(heights, &self.steps, at);
        let around = self.soft.row(fine.y(at));
        let scale = 0.5 / fine.step;
        for (n, light) in line.iter_mut().enumerate() {
            let c = self.near.rim + n;
            let i = at * fine.wide + c;
            let place = [fine.x(c), fine.y(at)];
            let here = Here {
                slope: [
                    (z[i + 1] - z[i - 1]) * scale,
                    (z[i - fine.wide] - z[i + fine.wide]) * scale,
                ],
                horizon: lit.horizon[c],
                sky: lit.sky[c],
                soft: around.at(place[0]),
                place,
            };
            *light = self.shader.light(&self.samples[i], &here);
        }
    }

    /// Fibres over the cloth: what lies takes more light, what stands off has the colour of its yarn.
    fn hairs(&self, first: usize, band: &mut [Rgb]) {
        let near = self.near;
        let part = near.pixels.part(first, band.len() / near.pixels.wide);
        let cover = hairs::Cover::of(&part, near.asked.causes.hairs);
        for (k, pixel) in band.iter_mut().enumerate() {
            let (row, column) = (first + k / near.pixels.wide, k % near.pixels.wide);
            let (row, column) = (near.fold.middle_of(row), near.fold.middle_of(column));
            let at = (row + near.rim) * near.fine.wide + column + near.rim;
            let (lies, own) = match self.samples[at].kind {
                Kind::Warp | Kind::Weft => (0.55, self.shader.hair(&self.samples[at])),
                Kind::Thread { .. } => (0.3, self.shader.hair(&self.samples[at])),
                Kind::Table | Kind::Metal(_) | Kind::Flat => continue,
            };
            let loose = 0.30 * cover.loose[k];
            let lit = 1.0 + lies * cover.lying[k];
            for (p, own) in pixel.iter_mut().zip(own) {
                *p = *p * lit * (1.0 - loose) + own * loose;
            }
        }
    }
}

impl Near<'_> {
    fn relief(&self) -> Relief {
        let fine = &self.fine;
        let step = RELIEF_STEP.max(fine.step);
        let rim = LOOKS_FAR + 1.0;
        let left = ((fine.left - rim) / step).floor() * step;
        let top = ((fine.top + rim) / step).ceil() * step;
        let cells = |long: f32| ((long + 2.0 * rim) / step) as usize + 4;
        let frame = Frame {
            left,
            top,
            step,
            wide: cells(fine.wide as f32 * fine.step),
            high: cells(fine.high as f32 * fine.step),
        };
        Relief::of(self.asked, frame)
    }

    /// What changes slowly: how proud and how rubbed a place is, and the light that the relief leaves it.
    fn soft(&self, relief: &Relief) -> Field {
        let body: Vec<f32> = relief.cells.iter().map(|c| c.body).collect();
        let frame = relief.frame;
        let heights = Heights {
            z: &body,
            wide: frame.wide,
            high: frame.high,
        };
        let steps = Steps::of(&self.asked.sun, frame.step, LOOKS_NEAR, LOOKS_FAR);
        let mut values = vec![Soft::default(); relief.cells.len()];
        in_bands(
            self.asked.threads,
            &mut values,
            frame.wide,
            |first, band| {
                let mut lit = Lit::default();
                for (k, row) in band.chunks_mut(frame.wide).enumerate() {
                    lit.look(&heights, &steps, first + k);
                    for (c, value) in row.iter_mut().enumerate() {
                        let at = (first + k) * frame.wide + c;
                        *value = Soft {
                            proud: relief.proud[at],
                            zone: relief.cells[at].zone,
                            horizon: lit.horizon[c],
                            sky: lit.sky[c],
                        };
                    }
                }
            },
        );
        Field { frame, values }
    }

    /// A face of a cloth as samples so far apart ask it.
    fn woven(&self, cloth: usize, reverse: bool, step: f32) -> Woven {
        let woven = self.asked.scene.cloths[cloth]
            .woven
            .washed(self.asked.causes.rinsed);
        let face = Face::of(&woven, reverse, step);
        let used = self
            .asked
            .scene
            .sheets
            .iter()
            .any(|sheet| match sheet.stuff {
                Stuff::Woven {
                    cloth: c,
                    reverse: r,
                    ..
                } => (c, r) == (cloth, reverse),
                Stuff::Flat(_) => false,
            });
        let tile = (used && !face.fine).then(|| Tile::of(&Face::of(&woven.even(), reverse, step)));
        Woven { face, tile }
    }

    fn samples(&self, relief: &Relief) -> Vec<Sample> {
        let (fine, scene) = (&self.fine, self.asked.scene);
        let faces: Vec<[Woven; 2]> = (0..scene.cloths.len())
            .map(|cloth| [false, true].map(|reverse| self.woven(cloth, reverse, fine.step)))
            .collect();
        let blank = Sample::table(scene.table);
        let mut samples = vec![blank; fine.wide * fine.high];
        in_bands(
            self.asked.threads,
            &mut samples,
            fine.wide,
            |first, band| {
                let part = fine.part(first, band.len() / fine.wide);
                let tops = Tops::of(scene, &part);
                let mut work = Filling {
                    scene,
                    faces: &faces,
                    relief,
                    frame: part,
                    tops,
                    samples: band,
                };
                work.cloth();
                work.strands();
                work.metals();
            },
        );
        samples
    }
}

/// The sheet on top of each sample of a band, with a rim of rows and columns about it.
struct Tops {
    tops: Vec<u16>,
    wide: usize,
    rim: usize,
    step: f32,
}

impl Tops {
    fn of(scene: &Scene, band: &Frame) -> Tops {
        let rim = (EDGE_STRAYS / band.step).ceil() as usize + 1;
        let frame = Frame {
            left: band.left - rim as f32 * band.step,
            top: band.top + rim as f32 * band.step,
            step: band.step,
            wide: band.wide + 2 * rim,
            high: band.high + 2 * rim,
        };
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
struct Woven {
    face: Face,
    tile: Option<Tile>,
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
struct Filling<'a> {
    scene: &'a Scene,
    faces: &'a [[Woven; 2]],
    relief: &'a Relief,
    frame: Frame,
    tops: Tops,
    samples: &'a mut [Sample],
}

impl Filling<'_> {
    fn cloth(&mut self) {
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

    fn strands(&mut self) {
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

    fn metals(&mut self) {
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

/// The relief between its cells, as a smooth surface (a cubic B-spline).
struct Smooth<'a> {
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
    fn of(relief: &'a Relief) -> Smooth<'a> {
        Smooth { relief }
    }

    /// Height and shift of each column of cells at a height of the picture.
    fn row(&self, y: f32, line: &mut Vec<(f32, [f32; 2])>) {
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

    fn at(&self, line: &[(f32, [f32; 2])], x: f32) -> (f32, [f32; 2]) {
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

/// Slow values between their cells.
pub(crate) struct Field {
    frame: Frame,
    values: Vec<Soft>,
}

/// The same on one row.
pub(crate) struct FieldRow<'a> {
    frame: Frame,
    rows: [&'a [Soft]; 2],
    f: f32,
}

impl Field {
    fn row(&self, y: f32) -> FieldRow<'_> {
        let at = self
            .frame
            .row_of(y)
            .clamp(0.0, self.frame.high as f32 - 2.0);
        let r = at as usize;
        let row = |r: usize| &self.values[r * self.frame.wide..(r + 1) * self.frame.wide];
        FieldRow {
            frame: self.frame,
            rows: [row(r), row(r + 1)],
            f: at - r as f32,
        }
    }
}

impl FieldRow<'_> {
    fn at(&self, x: f32) -> Soft {
        let at = self
            .frame
            .column_of(x)
            .clamp(0.0, self.frame.wide as f32 - 2.0);
        let c = at as usize;
        let g = at - c as f32;
        let mix = |row: &[Soft]| row[c].mixed(&row[c + 1], g);
        mix(self.rows[0]).mixed(&mix(self.rows[1]), self.f)
    }
}
