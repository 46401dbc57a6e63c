//! A board for measuring diagrams: pieces laid flat, and every measure taken on them as its
//! definition says.

use std::f64::consts::TAU;

use draft::measure::{Run, Take, taking};
use draft::{EdgeId, LineId, Pattern, PieceId};
use geometry::{Affine, Point, Rect, Vec2, bounds_of, contains, left_of};
use style::MeasureId;
use trade::{Colour, Length};
use words::{Key, Words};

use crate::dimension::{Dimension, Dimensions, beside, place_along, unit};
use crate::lettering::{Taken, centred, no_leader, text_box, text_width};
use crate::palette::{CONSTRUCTION, HAIRLINE, INK, NOTCH, Pen, QUIET, TYPE_WORDS};
use crate::sheet::{Layer, Sheet, closed, open};

const STEP: Length = Length::mm(2.0);
/// Runs whose ends lie closer than this follow one another.
const JOINED_MM: f64 = 1.0;
/// White round the drawing.
const MARGIN_MM: f64 = 2.0;

/// A drawing of some pieces at one scale, at its printed size.
pub(crate) struct Board<'a> {
    pattern: &'a Pattern,
    words: &'a Words,
    /// Where each piece lies, in millimetres of cloth with y up.
    placed: Vec<(PieceId, Affine)>,
    /// From cloth to paper.
    map: Affine,
    /// Everything below this height of the cloth is left out.
    above: Option<f64>,
    pieces: Layer,
    dimension_lines: Layer,
    dimensions: Dimensions,
    taken: Taken,
    /// What is drawn as an area, on paper: dimensions stand outside these.
    areas: Vec<Vec<Point>>,
    /// The wave along which the pieces are broken off, on paper.
    broken: Vec<Point>,
    bounds: Option<Rect>,
}

impl<'a> Board<'a> {
    /// An empty board at 1:`one_to`.
    pub fn new(pattern: &'a Pattern, words: &'a Words, one_to: f64) -> Board<'a> {
        let s = if one_to.is_finite() {
            1.0 / one_to.max(0.1)
        } else {
            0.1
        };
        Board {
            pattern,
            words,
            placed: Vec::new(),
            map: Affine::new([s, 0.0, 0.0, -s, 0.0, 0.0]),
            above: None,
            pieces: Layer::named("pieces"),
            dimension_lines: Layer::named("dimensions"),
            dimensions: Dimensions::default(),
            taken: Taken::default(),
            areas: Vec::new(),
            broken: Vec::new(),
            bounds: None,
        }
    }

    /// Leaves out everything below a height of the cloth.
    pub fn only_above(&mut self, y_mm: f64) {
        self.above = Some(y_mm);
    }

    /// Lays a piece on the board; measures are then taken on it there.
    pub fn lay(&mut self, piece: PieceId, place: Affine) {
        self.placed.push((piece, place));
    }

    /// Points of an edge of a piece that lies on the board, in cloth millimetres.
    pub fn edge(&self, piece: PieceId, edge: EdgeId) -> Option<Vec<Point>> {
        let place = self.place(piece)?;
        let path = self.pattern.piece(piece)?.edge(edge)?;
        Some(path.dense(STEP).iter().map(|p| place * *p).collect())
    }

    /// Points of an inner line of a piece that lies on the board.
    pub fn inner(&self, piece: PieceId, line: LineId) -> Option<Vec<Point>> {
        let place = self.place(piece)?;
        let path = self.pattern.piece(piece)?.line(line)?;
        Some(path.dense(STEP).iter().map(|p| place * *p).collect())
    }

    fn place(&self, piece: PieceId) -> Option<Affine> {
        let found = self.placed.iter().find(|(id, _)| *id == piece);
        found.map(|(_, place)| *place)
    }

    fn outline(&self, piece: PieceId) -> Option<Vec<Point>> {
        let place = self.place(piece)?;
        let polygon = self.pattern.piece(piece)?.polygon(STEP);
        Some(polygon.iter().map(|p| place * *p).collect())
    }

    /// Draws a laid piece as an area.
    pub fn draw(&mut self, piece: PieceId, fill: Colour) {
        if let Some(outline) = self.outline(piece) {
            self.area(Some(piece), &outline, fill);
        }
    }

    /// Draws any area given in cloth millimetres.
    pub fn area(&mut self, piece: Option<PieceId>, outline: &[Point], fill: Colour) {
        let mut ring = self.on_paper(outline);
        self.grow(&ring);
        let part = piece.map(|id| format!("piece:{}", id.code()));
        let stroke = Pen::FULL.stroke(INK, NOTCH);
        self.pieces
            .area(part.as_deref(), closed(&ring), fill, Some(stroke));
        self.areas.push(ring.clone());
        ring.extend(ring.first().copied());
        self.taken.keep_clear_of(&ring);
    }

    /// Draws a line seen on the cloth.
    pub fn full_line(&mut self, points: &[Point]) {
        let path = open(&self.on_paper(points));
        self.pieces.line(None, path, Pen::FULL.stroke(INK, NOTCH));
    }

    /// Draws a line that lies below or is stitched.
    pub fn dashed_line(&mut self, points: &[Point]) {
        let path = open(&self.on_paper(points));
        self.pieces
            .line(None, path, Pen::FULL.fine_dashes(CONSTRUCTION, HAIRLINE));
    }

    /// Draws the long wave of a piece broken off, between two places at the same height.
    pub fn break_line(&mut self, from: Point, to: Point) {
        let ends = self.on_paper(&[from, to]);
        let (a, b) = (ends[0], ends[1]);
        self.broken = (0..=24)
            .map(|k| {
                let t = f64::from(k) / 24.0;
                a + (b - a) * t - Vec2::new(0.0, (TAU * t).sin())
            })
            .collect();
        // Drawn with the dimensions, because the pieces are clipped here.
        self.dimension_lines
            .line(None, open(&self.broken), Pen::FULL.stroke(INK, HAIRLINE));
    }

    fn on_paper(&self, points: &[Point]) -> Vec<Point> {
        points.iter().map(|p| self.map * *p).collect()
    }

    fn grow(&mut self, paper: &[Point]) {
        let mut here = bounds_of(paper);
        if let Some(above) = self.above {
            let lowest = (self.map * Point::new(0.0, above)).y + 1.0;
            here.y1 = here.y1.min(lowest);
        }
        self.bounds = Some(self.bounds.map_or(here, |b| b.union(here)));
    }

    /// Draws the dimension of a measure, taken as its definition says on the pieces laid here,
    /// `outside_mm` printed millimetres outside (or on the cloth when nought).
    pub fn measure(&mut self, measure: MeasureId, outside_mm: f64) {
        let runs = self.runs(taking(measure).take);
        self.dimension(measure, &runs, outside_mm);
    }

    /// Draws the dimension of a measure along runs given in cloth millimetres, outside what is
    /// already drawn.
    pub fn dimension(&mut self, measure: MeasureId, runs: &[Vec<Point>], outside_mm: f64) {
        let runs: Vec<Vec<Point>> = runs.iter().map(|r| self.on_paper(r)).collect();
        let side = if runs.first().is_some_and(|run| self.outside_is_left(run)) {
            1.0
        } else {
            -1.0
        };
        let dimension = Dimension {
            number: measure.number(),
            runs,
            beside_mm: side * outside_mm,
        };
        let before = self.taken.lines.len();
        self.dimensions.line(
            &mut self.dimension_lines,
            &mut self.taken,
            Pen::FULL,
            &dimension,
        );
        let ends: Vec<Point> = self.taken.lines[before..]
            .iter()
            .flat_map(|(a, b)| [*a, *b])
            .collect();
        let here = bounds_of(&ends);
        self.bounds = Some(self.bounds.map_or(here, |b| b.union(here)));
    }

    /// Whether the paper to the left of a run is bare at more places than that to its right.
    fn outside_is_left(&self, run: &[Point]) -> bool {
        let covered = |p: Point| self.areas.iter().any(|area| contains(area, p));
        let bare = |side: f64| {
            let shares = [0.15, 0.35, 0.5, 0.65, 0.85];
            let places = shares.iter().filter_map(|s| place_along(run, *s));
            places
                .filter(|(p, along)| !covered(*p + left_of(*along) * side))
                .count()
        };
        bare(1.0) >= bare(-1.0)
    }

    /// The lines a tape takes for a measure, in cloth millimetres.
    pub fn runs(&self, take: Take) -> Vec<Vec<Point>> {
        match take {
            Take::Along(runs) => {
                let edges = runs
                    .iter()
                    .filter(|(run, _)| *run != Run::BandEnd)
                    .flat_map(|(run, _)| run.edges())
                    .filter_map(|(piece, edge)| self.edge(*piece, *edge));
                let mut runs_here = chained(edges);
                if runs.len() > 1 && runs.iter().any(|(run, _)| *run == Run::BandEnd) {
                    for run in &mut runs_here {
                        over_the_band(run, self.pattern.spec[MeasureId::BandHeight].to_mm());
                    }
                }
                runs_here
            }
            Take::Across { level, .. } => {
                let y = self.pattern.spec.height(level).to_mm();
                let panels: [&[PieceId]; 2] =
                    [&[PieceId::Front, PieceId::PocketFacing], &[PieceId::Back]];
                panels
                    .iter()
                    .filter_map(|ids| self.across(ids, y))
                    .collect()
            }
            Take::Between { piece, from, to } => {
                let ends = self.place(piece).and_then(|place| {
                    let piece = self.pattern.piece(piece)?;
                    Some(vec![place * piece.point(from)?, place * piece.point(to)?])
                });
                ends.into_iter().collect()
            }
        }
    }

    /// Straight across some pieces at a height of their own frame, outermost edge to outermost edge.
    pub fn across(&self, ids: &[PieceId], y_mm: f64) -> Option<Vec<Point>> {
        let mut found: Vec<Point> = Vec::new();
        for id in ids {
            let (Some(place), Some(piece)) = (self.place(*id), self.pattern.piece(*id)) else {
                continue;
            };
            let crossings = piece.edges.iter().flat_map(|e| e.path.crossings_at_y(y_mm));
            found.extend(crossings.map(|p| place * p));
        }
        found.sort_by(|a, b| a.x.total_cmp(&b.x));
        match found[..] {
            [first, .., last] => Some(vec![first, last]),
            _ => None,
        }
    }

    /// Writes the name of a part near a place of the cloth, once the dimensions stand.
    fn write(&mut self, layer: &mut Layer, words: &str, at: Point) {
        let at = self.map * at;
        let size = Vec2::new(
            text_width(words, TYPE_WORDS).to_mm() + 1.0,
            TYPE_WORDS.to_mm(),
        );
        let steps = (0..40).map(|k| {
            // Rings of eight places round the wished one.
            let (ring, turn) = (k / 8, f64::from(k % 8) / 8.0 * TAU);
            at + Vec2::from_angle(turn) * (f64::from(ring) * 4.0)
        });
        if let Some(centre) = self.taken.place(size, steps, no_leader) {
            let mut text = centred(words, TYPE_WORDS, centre);
            text.colour = QUIET;
            let place = text_box(&text);
            self.bounds = Some(self.bounds.map_or(place, |b| b.union(place)));
            layer.text(None, text);
        }
    }

    /// Sets numbers and names, and frames the drawing.
    pub fn finish(mut self, title: Key, names: &[(Key, Point)]) -> Sheet {
        let mut numbers = Layer::named("numbers");
        let dimensions = std::mem::take(&mut self.dimensions);
        dimensions.numbers(&mut numbers, &mut self.taken, Pen::FULL);
        for (name, at) in names {
            self.write(&mut numbers, self.words.named(*name), *at);
        }
        let drawn = self.bounds.unwrap_or(Rect::ZERO);
        let room = self
            .taken
            .boxes
            .iter()
            .fold(drawn, |r, b| r.union(*b))
            .inflate(MARGIN_MM, MARGIN_MM);
        if let (Some(first), Some(last)) = (self.broken.first(), self.broken.last()) {
            let mut shown = vec![
                Point::new(room.x1, last.y),
                Point::new(room.x1, room.y0),
                Point::new(room.x0, room.y0),
                Point::new(room.x0, first.y),
            ];
            shown.extend_from_slice(&self.broken);
            self.pieces.clip = Some(closed(&shown));
        }
        Sheet {
            title: self.words.named(title).to_owned(),
            origin: room.origin(),
            width: Length::mm(room.width()),
            height: Length::mm(room.height()),
            layers: vec![self.pieces, self.dimension_lines, numbers],
        }
    }
}

/// Joins runs that meet end to end, turning them where needed; others stay apart.
fn chained(edges: impl Iterator<Item = Vec<Point>>) -> Vec<Vec<Point>> {
    let near = |a: Option<&Point>, b: Option<&Point>| match (a, b) {
        (Some(a), Some(b)) => (*b - *a).hypot() < JOINED_MM,
        _ => false,
    };
    let mut runs: Vec<Vec<Point>> = Vec::new();
    for mut edge in edges {
        if let Some(run) = runs.last_mut() {
            if near(run.first(), edge.first()) || near(run.first(), edge.last()) {
                run.reverse();
            }
            if near(run.last(), edge.last()) {
                edge.reverse();
            }
            if near(run.last(), edge.first()) {
                run.extend(edge.into_iter().skip(1));
                continue;
            }
        }
        runs.push(edge);
    }
    runs
}

/// Carries a run that ends at the band seam on over the band.
fn over_the_band(run: &mut Vec<Point>, height: f64) {
    let upward = match run[..] {
        [first, .., last] => last.y > first.y,
        _ => return,
    };
    if !upward {
        run.reverse();
    }
    if let [.., before, last] = run[..]
        && let Some(on) = unit(last - before)
    {
        run.push(last + on * height);
    }
    if !upward {
        run.reverse();
    }
}

/// A band of this height sewn to a waist line that runs from the side to the centre, as an area.
/// Its ends carry on the side and centre lines it stands on.
pub(crate) fn band_on(
    waist: &[Point],
    height: f64,
    side_up: Option<Vec2>,
    centre_up: Option<Vec2>,
) -> Vec<Point> {
    let mut top = beside(waist, -height);
    let ends = (waist.first().copied(), waist.last().copied());
    if let (Some(first), Some(on), Some(up)) = (top.first_mut(), ends.0, side_up) {
        *first = on + up * height;
    }
    if let (Some(last), Some(on), Some(up)) = (top.last_mut(), ends.1, centre_up) {
        *last = on + up * height;
    }
    waist.iter().copied().chain(top.into_iter().rev()).collect()
}
