//! Patterns at true size, laid beside one another on paper of some width.

use cutting::{CutPiece, CutSize, Landmark, Nest, Nested};
use draft::{Pattern, PointId};
use drawing::lettering::centred;
use drawing::palette::{INK, Pen, SEWN_LINE, TYPE_FIGURES};
use drawing::{Layer, Sheet, closed};
use geometry::{Affine, Point, Rect, Vec2};
use style::Size;
use trade::Length;
use words::{Said, Words};

use crate::laid_piece::PieceCaption;
use crate::nest_sheet::{NestLook, hand_of, nest_sheet};
use crate::packing::{Cell, Room, pack};
use crate::piece_overview::piece_number;
use crate::piece_sheet::draw;
use crate::piece_words::Place;

/// Words on a paper pattern are read at arm's length.
const TYPE_SIZE: f64 = 2.0;
/// Clear paper between patterns, for the scissors.
const BETWEEN_MM: f64 = 6.0;
/// The side of the square by which a print is checked.
pub const CHECK_SQUARE: Length = Length::mm(100.0);

/// One pattern, drawn upright and turned by a quarter.
#[derive(Clone, Debug)]
struct Ready {
    code: String,
    /// The cut line of every size on it.
    outlines: Vec<(Size, Vec<Point>)>,
    upright: (Vec<Layer>, Rect),
}

/// The patterns of one size, or of all sizes on each other, ready to be laid on paper.
#[derive(Clone, Debug)]
pub struct PatternSet {
    title: String,
    /// What stands in the square by which a print is checked.
    square: [String; 2],
    ready: Vec<Ready>,
}

/// One cut line on paper.
#[derive(Clone, Debug, PartialEq)]
pub struct OnPaper {
    /// The piece, by its code.
    pub code: String,
    /// The size.
    pub size: Size,
    /// The cut line, millimetres on the sheet.
    pub outline: Vec<Point>,
}

/// Patterns laid on paper.
#[derive(Clone, Debug, PartialEq)]
pub struct PatternSheet {
    /// All of them at true size; the origin is the upper left corner.
    pub sheet: Sheet,
    /// The rectangles they take.
    pub taken: Vec<Rect>,
    /// Where each cut line lies.
    pub pieces: Vec<OnPaper>,
    /// The square by which a print is checked, where one was asked for.
    pub square: Option<Rect>,
}

impl PatternSet {
    /// The cut pieces of one size.
    pub fn of_size(pattern: &Pattern, cut: &CutSize, words: &Words) -> PatternSet {
        let ready = cut.pieces.iter().map(|piece| {
            let caption = PieceCaption {
                number: piece_number(pattern, piece),
                style_and_size: true,
                scale: 1.0,
                type_size: TYPE_SIZE,
            };
            let drawn = draw(
                piece,
                drawing::to_paper(0.0, 0.0),
                Pen::FULL,
                Some((&caption, words, Place::InsideOrBeside)),
            );
            Ready {
                code: piece.code(),
                outlines: vec![(cut.size, on_paper(&piece.cut, piece.as_cut()))],
                upright: (drawn.layers, drawn.bounds.inflate(0.5, 0.5)),
            }
        });
        PatternSet {
            title: words.pattern_set_title(cut.size),
            square: square_words(words),
            ready: ready.collect(),
        }
    }

    /// The pieces of every size given, each piece with its sizes on each other. A piece that cannot be
    /// nested in these sizes is left out, and named.
    pub fn nested(run: &[CutSize], base: Size, words: &Words) -> (PatternSet, Vec<Said>) {
        let mut ready = Vec::new();
        let mut without = Vec::new();
        let like = run.iter().find(|cut| cut.size == base).or(run.first());
        for piece in like.into_iter().flat_map(|cut| &cut.pieces) {
            let laid = |at| cutting::nest(run, piece.piece, piece.part, piece.on, at).ok();
            let Some(nest) = nest_point(piece).and_then(laid) else {
                without.push(piece.said());
                continue;
            };
            let base = like.map_or(base, |cut| cut.size);
            ready.push(nested(run, piece, (&nest, base), words));
        }
        let set = PatternSet {
            title: words.pattern_set_nested().to_owned(),
            square: square_words(words),
            ready,
        };
        (set, without)
    }

    /// The widest any of the patterns is in its narrower direction: no paper can be less wide.
    pub fn least_width(&self) -> Length {
        let narrow = self
            .ready
            .iter()
            .map(|r| r.upright.1.width().min(r.upright.1.height()));
        Length::mm(narrow.fold(0.0, f64::max))
    }

    /// Lays the patterns on paper of a width, as long as they need: the tallest first, each at the
    /// highest free place. One too wide to stand upright lies on its side.
    pub fn on_width(&self, width: Length, check_square: bool) -> PatternSheet {
        let wide = width.to_mm();
        let mut cells: Vec<Cell> = Vec::new();
        let mut turns = Vec::new();
        for ready in &self.ready {
            let (layers, bounds) = ready.upright.clone();
            let turn = bounds.width() > wide && bounds.height() < bounds.width();
            turns.push(turn);
            cells.push(if turn {
                turned(layers, bounds)
            } else {
                Cell { layers, bounds }
            });
        }
        if check_square {
            cells.push(square_cell(&self.square));
        }
        let room = Room {
            wide,
            tall: f64::INFINITY,
            between: BETWEEN_MM,
        };
        // There is room without end below, so one page holds all.
        let filled = pack(cells, room).into_iter().next().unwrap_or_default();
        let mut pieces = Vec::new();
        let mut square = None;
        for (k, by) in &filled.moved {
            let (Some(ready), Some(turn)) = (self.ready.get(*k), turns.get(*k)) else {
                let side = CHECK_SQUARE.to_mm();
                square = Some(Rect::new(0.0, 0.0, side, side) + *by);
                continue;
            };
            for (size, outline) in &ready.outlines {
                let place = |p: &Point| (if *turn { quarter() * *p } else { *p }) + *by;
                pieces.push(OnPaper {
                    code: ready.code.clone(),
                    size: *size,
                    outline: outline.iter().map(place).collect(),
                });
            }
        }
        let tall = filled.used.iter().map(|r| r.y1).fold(0.0, f64::max);
        let used = filled.used.iter().map(|r| r.x1).fold(wide, f64::max);
        PatternSheet {
            sheet: Sheet {
                title: self.title.clone(),
                origin: Point::ORIGIN,
                width: Length::mm(used),
                height: Length::mm(tall),
                layers: filled.layers,
            },
            taken: filled.used,
            pieces,
            square,
        }
    }
}

/// The point at which the sizes of a piece are laid on each other: where legs fork, else the centre,
/// the side or the top, so that what grows is seen to grow away from it (common practice).
pub fn nest_point(piece: &CutPiece) -> Option<Landmark> {
    const BEST: [PointId; 10] = [
        PointId::Crotch,
        PointId::SeamCentre,
        PointId::CentreFrontLeft,
        PointId::SideWaist,
        PointId::Top,
        PointId::FoldTop,
        PointId::TopMiddle,
        PointId::TopInner,
        PointId::FoldLeft,
        PointId::EndRight,
    ];
    let there = |wanted: &PointId| piece.points.iter().find(|(id, _)| id == wanted);
    let best = BEST.iter().find_map(there).or(piece.points.first());
    best.map(|(id, _)| Landmark::Point(*id))
}

fn nested(run: &[CutSize], piece: &CutPiece, (nest, base): (&Nest, Size), words: &Words) -> Ready {
    let look = NestLook {
        base,
        scale: 1.0,
        type_size: TYPE_SIZE,
        named: true,
    };
    let sheet = nest_sheet(run, nest, &look, words);
    let room = Vec2::new(sheet.width.to_mm(), sheet.height.to_mm());
    let hand = hand_of(piece);
    let outline = |one: &Nested| (one.size, on_paper(&one.cut, hand));
    Ready {
        code: piece.code(),
        outlines: nest.sizes.iter().map(outline).collect(),
        upright: (
            sheet.layers,
            Rect::from_points(sheet.origin, sheet.origin + room),
        ),
    }
}

fn on_paper(line: &[Point], as_cut: Affine) -> Vec<Point> {
    let map = drawing::to_paper(0.0, 0.0) * as_cut;
    line.iter().map(|p| map * *p).collect()
}

/// A quarter turn clockwise, as seen on paper.
fn quarter() -> Affine {
    Affine::new([0.0, 1.0, -1.0, 0.0, 0.0, 0.0])
}

fn turned(mut layers: Vec<Layer>, bounds: Rect) -> Cell {
    for layer in &mut layers {
        for path in layer.paths_mut() {
            path.apply_affine(quarter());
        }
        for text in layer.texts_mut() {
            text.at = quarter() * text.at;
            text.turn_deg += 90.0;
        }
    }
    Cell {
        layers,
        bounds: Rect::new(-bounds.y1, bounds.x0, -bounds.y0, bounds.x1),
    }
}

/// What stands in the square by which a print is checked, line by line.
fn square_words(words: &Words) -> [String; 2] {
    [words.pattern_set_square(), words.pattern_set_measure()].map(str::to_owned)
}

fn square_cell(told: &[String; 2]) -> Cell {
    let side = CHECK_SQUARE.to_mm();
    let square = Rect::new(0.0, 0.0, side, side);
    let mut layer = Layer::named("check");
    let corners = [(0.0, 0.0), (side, 0.0), (side, side), (0.0, side)];
    let outline = corners.map(|(x, y)| Point::new(x, y));
    layer.line(None, closed(&outline), Pen::FULL.stroke(INK, SEWN_LINE));
    let size = TYPE_FIGURES * 1.6;
    for (k, words) in told.iter().enumerate() {
        let down = 1.5 * size.to_mm() * (k as f64 - 0.5);
        layer.text(
            None,
            centred(words, size, square.center() + Vec2::new(0.0, down)),
        );
    }
    Cell {
        layers: vec![layer],
        bounds: square,
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use crate::samples::{cut_out, plan, sewn, words_stand_clear};
    use cutting::cut;
    use drawing::{Shape, to_paper};

    #[test]
    fn every_piece_lies_on_the_paper_and_on_no_other() {
        let garment = sewn(32, 32);
        let cut = cut(&garment, &plan());
        let set = PatternSet::of_size(&garment.pattern, &cut, Words::english());
        for width in [Length::cm(60.0), Length::cm(90.0), Length::cm(150.0)] {
            let laid = set.on_width(width, true);
            assert_eq!(laid.pieces.len(), cut.pieces.len());
            assert_eq!(laid.sheet.width, width);
            assert!(laid.square.is_some());
            for (k, one) in laid.taken.iter().enumerate() {
                assert!(
                    laid.taken[k + 1..]
                        .iter()
                        .all(|other| !one.overlaps(*other))
                );
            }
            words_stand_clear(&laid.sheet);
        }
    }

    /// What is said of where a piece lies is where it is drawn, also of one on its side.
    #[test]
    fn a_turned_piece_lies_where_it_is_said_to() {
        let garment = sewn(32, 32);
        let cut = cut_out(32, 32);
        let set = PatternSet::of_size(&garment.pattern, &cut, Words::english());
        let laid = set.on_width(Length::cm(48.0), false);
        let band = laid
            .pieces
            .iter()
            .find(|p| p.code == "band_right_half")
            .unwrap();
        let bounds = |points: &[Point]| geometry::bounds(&closed(points));
        let said = bounds(&band.outline);
        assert!(said.height() > said.width());
        let outlines = laid
            .sheet
            .layers
            .iter()
            .find(|l| l.name == "outline")
            .unwrap();
        let drawn = outlines.marks.iter().any(|m| match &m.shape {
            Shape::Line { path, .. } => {
                let at = geometry::bounds(path);
                (at.origin() - said.origin()).hypot() < 1e-6
                    && (at.width() - said.width()).abs() < 1e-6
            }
            _ => false,
        });
        assert!(drawn);
        // Turned, not mirrored.
        let piece = cut
            .pieces
            .iter()
            .find(|p| p.code() == "band_right_half")
            .unwrap();
        let upright: Vec<Point> = piece.cut.iter().map(|p| to_paper(0.0, 0.0) * *p).collect();
        let sign = |line: &[Point]| geometry::area(line).to_mm2().signum();
        assert_eq!(sign(&band.outline), sign(&upright));
    }
}
