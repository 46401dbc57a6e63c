//! One figure of a plate: a detail seen from one face, true to scale on paper.
//!
//! Everything is given in the frame of a piece and mapped to paper here: turned upright, mirrored
//! where the wearer's other side or the other face is seen, enlarged by the scale of the plate. Paper
//! millimetres, y down.

mod more;

use draft::{ClothUse, PieceId};
use geometry::{Affine, BezPath, Path, Point, Rect, Vec2, bounds_of};
use sewing::{Face, Fixing, FixingKind, Garment, StitchRow, edge_use};
use trade::{Colour, Length};
use words::{Given, Key, Words, say};

use super::measure::{Aligned, Linear, Side, on_paper};
use super::scale::PlateScale;
use super::stitch::{DrawnStitches, On, stitches};
use super::tone::{AROUND, BELOW, EDGE, tone};
use super::words::{amount, system};
use crate::dimension::{dash_dot, unit};
use crate::lettering::Taken;
use crate::palette::{CONSTRUCTION, HAIRLINE, INK, Pen};
use crate::sheet::{Layer, Stroke, circle, closed, open};

/// Chords of curves, on the cloth.
const STEP: Length = Length::mm(0.7);
/// A dimension of less than this says nothing.
const LEAST_VALUE: Length = Length::mm(0.05);
/// Bartacks of more stitches are drawn no denser.
const MOST_TACKED: u32 = 120;

/// How the edge of an area is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Outline {
    /// What the plate is about.
    Heavy,
    /// What lies round it.
    Light,
    /// None: it is drawn by its seams.
    None,
}

/// Words with an arrow, a name, an angle: set when everything else is drawn.
pub(super) enum Said {
    /// An arrow from the words to a point.
    Pointed(Point, String),
    /// A name at the first free of these places.
    Named(Vec<Point>, String, Colour),
    /// A letter beside a small mark at a point.
    Marked(Point, char),
    /// An angle at a corner between two directions, its arc this far out.
    Angle(Point, Vec2, Vec2, f64),
}

/// A number in a circle whose words stand in the key.
pub(super) struct Note {
    pub said: Given,
    /// What it points at: one of these.
    pub at: Vec<Point>,
}

pub(super) use more::Spot;

/// One figure.
pub(super) struct Figure<'a> {
    pub garment: &'a Garment,
    /// The language of everything said on it.
    pub words: &'a Words,
    pub face: Face,
    pub title: String,
    pub layers: Vec<Layer>,
    pub linear: Vec<Linear>,
    pub aligned: Vec<Aligned>,
    pub notes: Vec<Note>,
    /// What the key says without a number.
    pub remarks: Vec<Given>,
    pub said: Vec<Said>,
    pub counted: Vec<DrawnStitches>,
    pub taken: Taken,
    /// Round everything drawn, and what the window shows of it.
    pub body: Option<Rect>,
    times: f64,
    map: Affine,
    window: Option<Rect>,
}

impl<'a> Figure<'a> {
    /// An empty figure. `frame` takes the frame everything is given in to the upright drawing, y up,
    /// cloth millimetres; `mirrored` turns left into right.
    pub fn new(
        garment: &'a Garment,
        words: &'a Words,
        scale: PlateScale,
        (face, title): (Face, impl Into<Given>),
        frame: Affine,
        mirrored: bool,
    ) -> Figure<'a> {
        let times = scale.times();
        let across = if mirrored { -times } else { times };
        let map = Affine::new([across, 0.0, 0.0, -times, 0.0, 0.0]) * frame;
        Figure {
            garment,
            words,
            face,
            title: words.putting(&title.into()),
            layers: Vec::new(),
            linear: Vec::new(),
            aligned: Vec::new(),
            notes: Vec::new(),
            remarks: Vec::new(),
            said: Vec::new(),
            counted: Vec::new(),
            taken: Taken::default(),
            body: None,
            times,
            map,
            window: None,
        }
    }

    /// Only what lies within these corners (in the frame) is drawn from now on.
    pub fn window(&mut self, corners: &[Point]) {
        let on_paper: Vec<Point> = corners.iter().map(|p| self.map * *p).collect();
        let window = bounds_of(&on_paper);
        self.window = Some(window);
        self.body = Some(window);
    }

    /// The layer of this name on top, within the window.
    fn layer(&mut self, name: &str) -> &mut Layer {
        let clip = self.window.map(rectangle);
        let fits = self
            .layers
            .last()
            .is_some_and(|l| l.name == name && l.clip == clip);
        if !fits {
            self.layers.push(Layer {
                clip,
                ..Layer::named(name)
            });
        }
        let last = self.layers.len().saturating_sub(1);
        &mut self.layers[last]
    }

    fn grow(&mut self, points: &[Point]) {
        if self.window.is_none() && !points.is_empty() {
            let b = bounds_of(points);
            self.body = Some(self.body.map_or(b, |a| a.union(b)));
        }
    }

    fn clear_of(&mut self, points: &[Point]) {
        let points = thinned(points);
        match self.window {
            None => self.taken.keep_clear_of(&points),
            Some(w) => {
                let seen = |p: &Point| w.contains(*p);
                for pair in points.windows(2) {
                    if pair.iter().any(seen) {
                        self.taken.keep_clear_of(pair);
                    }
                }
            }
        }
    }

    /// A filled area through the points of `path` under a map into the frame.
    pub fn area(&mut self, part: &str, points: &[Point], fill: Colour, outline: Outline) {
        let points: Vec<Point> = points.iter().map(|p| self.map * *p).collect();
        let stroke = match outline {
            Outline::Heavy => Some(Stroke::plain(INK, EDGE)),
            Outline::Light => Some(Stroke::plain(CONSTRUCTION, AROUND)),
            Outline::None => None,
        };
        self.grow(&points);
        self.layer("cloth")
            .area(Some(part), closed(&points), fill, stroke);
        if outline != Outline::None {
            let mut ring = points;
            ring.extend(ring.first().copied());
            self.clear_of(&ring);
        }
    }

    /// A whole piece under a map into the frame.
    pub fn piece(&mut self, id: PieceId, map: Affine, fill: Colour, outline: Outline) {
        let Some(piece) = self.garment.pattern.piece(id) else {
            return;
        };
        let points: Vec<Point> = piece.polygon(STEP).iter().map(|p| map * *p).collect();
        self.area(&format!("piece:{}", id.code()), &points, fill, outline);
    }

    /// The heavy edge of a piece, where its area is already drawn.
    pub fn piece_outline(&mut self, id: PieceId, map: Affine) {
        let Some(piece) = self.garment.pattern.piece(id) else {
            return;
        };
        let points: Vec<Point> = piece.polygon(STEP).iter().map(|p| map * *p).collect();
        self.piece_outline_of(&format!("piece:{}", id.code()), &points);
    }

    /// The heavy edge through these points of the frame, closed.
    pub fn piece_outline_of(&mut self, part: &str, points: &[Point]) {
        let mut points: Vec<Point> = points.iter().map(|p| self.map * *p).collect();
        points.extend(points.first().copied());
        self.layer("lines")
            .line(Some(part), open(&points), Stroke::plain(INK, EDGE));
        self.clear_of(&points);
    }

    /// The tone of a cloth on the face shown.
    pub fn tone(&self, cloth: ClothUse) -> Colour {
        tone(self.garment, cloth, self.face)
    }

    /// A line of the frame: an edge that shows, at the weight of the detail or of what lies round it.
    pub fn edge(&mut self, part: &str, path: &Path, heavy: bool) {
        let stroke = if heavy {
            Stroke::plain(INK, EDGE)
        } else {
            Stroke::plain(CONSTRUCTION, AROUND)
        };
        let points = self.along(path);
        self.layer("lines").line(Some(part), open(&points), stroke);
        self.clear_of(&points);
    }

    /// A line that lies below, or a place: short dashes.
    pub fn below(&mut self, part: &str, path: &Path) {
        let points = self.along(path);
        let stroke = Stroke::plain(INK, BELOW).dashed(Length::mm(1.5), Length::mm(0.9));
        self.layer("lines").line(Some(part), open(&points), stroke);
        self.clear_of(&points);
    }

    /// A fold: dash and dot.
    pub fn fold(&mut self, part: &str, path: &Path) {
        let points = self.along(path);
        let stroke = Stroke::plain(INK, BELOW);
        self.layer("lines")
            .line(Some(part), dash_dot(&points, Pen::FULL), stroke);
        self.clear_of(&points);
    }

    /// Points of a path on paper.
    pub fn along(&self, path: &Path) -> Vec<Point> {
        path.dense(STEP).iter().map(|p| self.map * *p).collect()
    }

    /// Draws a row that lies on a piece mapped into the frame, each stitch at its place, and counts it.
    pub fn row(&mut self, index: usize, map: Affine) {
        let Some(row) = self.garment.rows.get(index) else {
            return;
        };
        let on = On {
            map: self.map * map,
            times: self.times,
            window: self.window,
            face: self.face,
            edge: edge_beyond(self.garment, row),
        };
        let (drawn, whole) = stitches(self.layer("rows"), row, &on);
        let points: Vec<Point> = row.path.dense(Length::mm(2.0));
        let points: Vec<Point> = points.iter().map(|p| on.map * *p).collect();
        self.clear_of(&points);
        if drawn > 0 || whole {
            self.counted.push(DrawnStitches {
                row: index,
                seam: row.seam,
                number: row.number,
                piece: row.piece,
                face: self.face,
                drawn,
                whole,
            });
        }
    }

    /// Draws every row on a piece for which `wanted` holds; gives their places in the garment's list.
    pub fn rows(
        &mut self,
        piece: PieceId,
        map: Affine,
        wanted: impl Fn(&StitchRow) -> bool,
    ) -> Vec<usize> {
        let garment = self.garment;
        let found: Vec<usize> = garment
            .rows
            .iter()
            .enumerate()
            .filter(|(_, r)| r.piece == piece && wanted(r))
            .map(|(k, _)| k)
            .collect();
        for k in &found {
            self.row(*k, map);
        }
        found
    }

    /// Draws a fixing on a piece mapped into the frame; `below` when cloth lies over it.
    pub fn fixing(&mut self, fixing: &Fixing, map: Affine, below: bool) {
        let map = self.map * map;
        let at = map * fixing.at;
        let Some(along) = unit(map * (fixing.at + fixing.along) - at) else {
            return;
        };
        let times = self.times;
        let part = format!("fixing:{}", fixing.from.code());
        let part = Some(part.as_str());
        let colour = fixing.colour;
        let rim = Stroke::plain(INK, HAIRLINE);
        let hidden = Stroke::plain(INK, BELOW).dashed(Length::mm(0.9), Length::mm(0.6));
        let layer = self.layer("fixings");
        let mut reach = 0.0;
        match &fixing.kind {
            FixingKind::Rivet(d) | FixingKind::Button(d) => {
                let r = *d * (times / 2.0);
                reach = r.to_mm();
                if below {
                    layer.line(part, circle(at, r), hidden);
                    layer.line(part, circle(at, r * 0.3), hidden);
                } else {
                    layer.area(part, circle(at, r), colour, Some(rim));
                    let light = colour.mixed(Colour::WHITE, 0.45);
                    layer.line(part, circle(at, r * 0.62), Stroke::plain(light, HAIRLINE));
                    layer.area(
                        part,
                        circle(at, r * 0.22),
                        colour.mixed(Colour::BLACK, 0.4),
                        None,
                    );
                }
            }
            FixingKind::Bartack(length, width, stitches) => {
                let half = along * (length.to_mm() * times / 2.0);
                let across = geometry::left_of(along) * (width.to_mm() * times / 2.0);
                let count = (*stitches).clamp(1, MOST_TACKED);
                let points: Vec<Point> = (0..=count)
                    .map(|k| {
                        let side = if k % 2 == 0 { -1.0 } else { 1.0 };
                        let share = 2.0 * f64::from(k) / f64::from(count) - 1.0;
                        at + half * share + across * side
                    })
                    .collect();
                reach = half.hypot();
                let thick = Length::mm((0.3 * times).clamp(0.16, 0.45));
                let round = |colour, width| Stroke {
                    round: true,
                    ..Stroke::plain(colour, width)
                };
                layer.line(
                    None,
                    open(&points),
                    round(colour.mixed(Colour::BLACK, 0.5), thick + Length::mm(0.1)),
                );
                layer.line(part, open(&points), round(colour, thick));
            }
            FixingKind::Buttonhole(length) => {
                let half = along * (length.to_mm() * times / 2.0);
                let wide = Stroke {
                    round: true,
                    ..Stroke::plain(colour, Length::mm(4.0 * times))
                };
                layer.line(part, open(&[at - half * 0.85, at + half * 0.85]), wide);
                // The eye, at the end the button pulls to.
                let eye = at + half;
                layer.area(part, circle(eye, Length::mm(2.9 * times)), colour, None);
                layer.area(part, circle(eye, Length::mm(1.2 * times)), INK, None);
                layer.line(
                    part,
                    open(&[at - half * 0.8, at + half * 0.8]),
                    Stroke::plain(INK, BELOW),
                );
                reach = half.hypot();
            }
            FixingKind::Zip(length, width)
            | FixingKind::Loop(length, width)
            | FixingKind::Patch(length, width, _)
            | FixingKind::Label(length, width, _) => {
                let half = along * (length.to_mm() * times / 2.0);
                let across = geometry::left_of(along) * (width.to_mm() * times / 2.0);
                let corners = [
                    at - half - across,
                    at + half - across,
                    at + half + across,
                    at - half + across,
                ];
                if below {
                    layer.line(part, closed(&corners), hidden);
                } else {
                    layer.area(part, closed(&corners), colour, Some(rim));
                }
            }
        }
        let seen = self.window.is_none_or(|w| w.contains(at));
        if reach > 0.0 && seen {
            let corner = Vec2::new(reach, reach) * 0.9;
            let place = Rect::from_points(at - corner, at + corner);
            self.taken.boxes.push(place);
        }
    }

    /// A width (above, below) or height (left, right) between two points of the frame, its value read
    /// off the drawing; `name` before it may be empty. Nothing where there is no distance.
    pub fn dimension(&mut self, side: Side, from: Point, to: Point, name: Option<Key>) {
        let (from, to) = (self.map * from, self.map * to);
        let value = on_paper(side, from, to) / self.times;
        self.dimensioned(side, (from, to), value, name);
    }

    /// Files a dimension between two places on the paper; nothing where it says nothing.
    fn dimensioned(
        &mut self,
        side: Side,
        (from, to): (Point, Point),
        value: Length,
        name: Option<Key>,
    ) {
        let says = value.is_finite() && value >= LEAST_VALUE;
        if says && from.is_finite() && to.is_finite() {
            let words = self.valued(name, value);
            self.linear.push(Linear {
                from,
                to,
                side,
                words,
            });
        }
    }

    /// A width or height between the ends of a path of the frame whose value is the length along it,
    /// for measures taken along a curved seam.
    pub fn dimension_along(&mut self, side: Side, path: &Path, name: Option<Key>) {
        let (from, to) = (self.map * path.start(), self.map * path.end());
        if on_paper(side, from, to) >= LEAST_VALUE {
            self.dimensioned(side, (from, to), path.length(), name);
        }
    }

    /// The side of the paper towards which a direction of the frame points: left or right.
    pub fn side_towards(&self, way: Vec2) -> Side {
        let on_paper = self.map * (Point::ORIGIN + way) - self.map * Point::ORIGIN;
        if on_paper.x < 0.0 {
            Side::Left
        } else {
            Side::Right
        }
    }

    /// Fills the window with cloth, for a detail whose surroundings are told by their seams alone.
    pub fn ground(&mut self, part: &str, fill: Colour) {
        if let Some(window) = self.window {
            self.layer("cloth")
                .area(Some(part), rectangle(window), fill, None);
        }
    }

    /// A length along a slanted straight line of the frame, its dimension `beside_mm` on paper away
    /// from it, on the side of the point `away`.
    pub fn slanted(
        &mut self,
        from: Point,
        to: Point,
        away: Point,
        beside_mm: f64,
        name: Option<Key>,
    ) {
        let (from, to, away) = (self.map * from, self.map * to, self.map * away);
        let value = Length::mm((to - from).hypot() / self.times);
        if !(value.to_mm() >= 0.05 && value.to_mm().is_finite()) {
            return;
        }
        // Left of a direction is anticlockwise of it with y up, and so on paper as this sign has it.
        let side = (to - from).cross(away - from).signum();
        let words = self.valued(name, value);
        self.aligned.push(Aligned {
            from,
            to,
            beside_mm: beside_mm * side,
            words,
        });
    }

    /// A length as a dimension says it.
    pub fn amount_of(&self, length: Length) -> String {
        amount(length, system(&self.garment.collection))
    }

    fn valued(&self, name: Option<Key>, value: Length) -> String {
        let value = self.amount_of(value);
        match name {
            None => value,
            Some(name) => self.words.say(say::DrawnMeasure { name, value }),
        }
    }

    /// A note of the key about one of these points of the frame.
    pub fn note(&mut self, said: impl Into<Given>, at: &[Point]) {
        let at: Vec<Point> = at
            .iter()
            .map(|p| self.map * *p)
            .filter(|p| p.is_finite() && self.window.is_none_or(|w| w.contains(*p)))
            .collect();
        if !at.is_empty() {
            let said = said.into();
            self.notes.push(Note { said, at });
        }
    }

    /// A line of the key that stands without a number.
    pub fn remark(&mut self, said: impl Into<Given>) {
        self.remarks.push(said.into());
    }

    /// A small mark with a letter at a point of the frame.
    pub fn mark(&mut self, p: Point, letter: char) {
        let p = self.map * p;
        if self.window.is_none_or(|w| w.contains(p)) {
            self.said.push(Said::Marked(p, letter));
        }
    }

    /// Words with an arrow to a point of the frame.
    pub fn point_at(&mut self, p: Point, said: impl Into<Given>) {
        let p = self.map * p;
        if p.is_finite() {
            let words = self.words.putting(&said.into());
            self.said.push(Said::Pointed(p, words));
        }
    }

    /// A quiet name at the first free of these places of the frame.
    pub fn name(&mut self, said: impl Into<Given>, at: &[Point], colour: Colour) {
        let at = at.iter().map(|p| self.map * *p);
        let at = at.filter(|p| p.is_finite()).collect();
        let words = self.words.putting(&said.into());
        self.said.push(Said::Named(at, words, colour));
    }

    /// The angle at a corner of the frame between two directions of the frame.
    pub fn angle(&mut self, corner: Point, from: Vec2, to: Vec2, radius_mm: f64) {
        let c = self.map * corner;
        let way = |v: Vec2| self.map * (corner + v) - c;
        if c.is_finite() && way(from).is_finite() && way(to).is_finite() {
            let said = Said::Angle(c, way(from), way(to), radius_mm);
            self.said.push(said);
        }
    }
}

/// The points without those that follow the one before by less than a millimetre of paper: words
/// need not keep clear of a curve any closer.
fn thinned(points: &[Point]) -> Vec<Point> {
    let mut out: Vec<Point> = Vec::new();
    let last = points.len().saturating_sub(1);
    for (k, p) in points.iter().enumerate() {
        if k == last || out.last().is_none_or(|q| (*p - *q).hypot() >= 1.0) {
            out.push(*p);
        }
    }
    out
}

/// From a row to the cut edge of its piece.
fn edge_beyond(garment: &Garment, row: &StitchRow) -> Option<f64> {
    let cut = garment.cut.iter().find(|c| c.piece == row.piece)?;
    let sewn = |edge| edge_use(row.piece, edge).seam() == Some(row.seam);
    let (_, allowance) = cut.allowances.iter().find(|(edge, _)| sewn(*edge))?;
    let seam = garment.seams.iter().find(|s| s.id == row.seam)?;
    let offset = seam.rows.get(row.number.checked_sub(1)?)?.offset;
    let beyond = (*allowance + offset).to_mm();
    beyond.is_finite().then_some(beyond)
}

/// The rectangle as a path.
pub(super) fn rectangle(r: Rect) -> BezPath {
    closed(&[
        Point::new(r.x0, r.y0),
        Point::new(r.x1, r.y0),
        Point::new(r.x1, r.y1),
        Point::new(r.x0, r.y1),
    ])
}
