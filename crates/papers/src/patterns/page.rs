//! One page of a tiled pattern with its joining lines and marks; the map of pages; the page of a roll.

use cut_sheets::PatternSheet;
use drawing::palette::{CONSTRUCTION, HAIRLINE, INK, QUIET, SEWN_LINE, TINT};
use drawing::{Anchor, Layer, Shape, Sheet, Stroke, Text, circle, closed, open};
use geometry::{Affine, BezPath, Point, Rect, Vec2, bounds};
use trade::Length;

use super::PatternHead;
use super::grid::{Grid, Tile};

/// Arms and ring of a register mark.
const MARK_ARM_MM: f64 = 4.0;
const MARK_RING_MM: f64 = 2.0;
/// Type of the words in the margins and of the page's code.
const WORDS: Length = Length::mm(2.4);
const CODE: Length = Length::mm(7.0);
/// The line of words above the patterns on a roll.
const ROLL_HEAD_MM: f64 = 10.0;
/// The map of pages is at most this large.
const MAP_WIDE_MM: f64 = 80.0;
const MAP_TALL_MM: f64 = 110.0;
/// A line drawn is not wider than this.
const WIDEST_LINE_MM: f64 = 1.0;

/// The page of a tile at its printed size.
pub(super) fn leaf(
    sheet: &PatternSheet,
    grid: &Grid,
    tile: &Tile,
    tiles: &[Tile],
    head: &PatternHead,
    (page, of): (usize, usize),
) -> Sheet {
    let window = grid.window(tile);
    let by = grid.corner().to_vec2() - window.origin().to_vec2();
    let shown = window + by;
    let mut layers = moved(&sheet.sheet, Some(window), by);
    let there = |t: Option<Tile>| t.filter(|t| tiles.contains(t));
    let mut frame = Layer::named("joins");
    let step = grid.step();
    let full = Stroke::plain(CONSTRUCTION, SEWN_LINE);
    let dashed = Stroke::plain(CONSTRUCTION, SEWN_LINE).dashed(Length::mm(3.0), Length::mm(2.0));
    let (right, foot) = (shown.x0 + step.x, shown.y0 + step.y);
    let p = Point::new;
    let words = |at: Point, turn_deg: f64, words: String| Text {
        at,
        words,
        size: WORDS,
        anchor: Anchor::Middle,
        turn_deg,
        colour: QUIET,
        bold: false,
    };
    let middle = shown.center();
    if let Some(other) = there(tile.left()) {
        frame.line(
            None,
            open(&[p(shown.x0, shown.y0), p(shown.x0, shown.y1)]),
            full,
        );
        let said = format!(
            "cut along this line and lay it on the dashed line of {}",
            other.code()
        );
        frame.text(None, words(p(shown.x0 - 1.6, middle.y), -90.0, said));
    }
    if let Some(other) = there(tile.above()) {
        frame.line(
            None,
            open(&[p(shown.x0, shown.y0), p(shown.x1, shown.y0)]),
            full,
        );
        let said = format!(
            "cut along this line and lay it on the dashed line of {}",
            other.code()
        );
        frame.text(None, words(p(middle.x, shown.y0 - 1.2), 0.0, said));
    }
    if let Some(other) = there(Some(tile.right())) {
        frame.line(
            None,
            open(&[p(right, shown.y0), p(right, shown.y1)]),
            dashed,
        );
        let said = format!("{} joins at the dashed line", other.code());
        frame.text(None, words(p(shown.x1 + 1.6, middle.y), 90.0, said));
    }
    if let Some(other) = there(Some(tile.below())) {
        frame.line(None, open(&[p(shown.x0, foot), p(shown.x1, foot)]), dashed);
        let said = format!("{} joins at the dashed line", other.code());
        frame.text(None, words(p(middle.x, shown.y1 + 3.2), 0.0, said));
    }
    for mark in grid.marks(tile, tiles) {
        register(&mut frame, mark + by);
    }
    let base = shown.y1 + 9.6;
    let mut code = words(p(shown.x0, base), 0.0, tile.code());
    (code.size, code.anchor, code.bold, code.colour) = (CODE, Anchor::Start, true, INK);
    frame.text(None, code);
    let said = [
        head.style.as_str(),
        head.sizes.as_str(),
        "true size: print at 100 %, not fitted to the page",
    ];
    let mut line = words(p(shown.x0 + 18.0, base), 0.0, said.join(", "));
    line.anchor = Anchor::Start;
    frame.text(None, line);
    let mut number = words(p(shown.x1, base), 0.0, format!("page {page} of {of}"));
    number.anchor = Anchor::End;
    frame.text(None, number);
    layers.push(frame);
    let [wide, tall] = grid.page();
    Sheet {
        title: format!("{}, {}, page {}", head.style, head.sizes, tile.code()),
        origin: Point::ORIGIN,
        width: Length::mm(wide),
        height: Length::mm(tall),
        layers,
    }
}

/// A ring with a cross through it.
fn register(layer: &mut Layer, at: Point) {
    let stroke = Stroke::plain(INK, HAIRLINE);
    layer.line(None, circle(at, Length::mm(MARK_RING_MM)), stroke);
    for arm in [Vec2::new(MARK_ARM_MM, 0.0), Vec2::new(0.0, MARK_ARM_MM)] {
        layer.line(None, open(&[at - arm, at + arm]), stroke);
    }
}

/// The layers of a sheet moved, with only what shows in a window.
pub(super) fn moved(sheet: &Sheet, window: Option<Rect>, by: Vec2) -> Vec<Layer> {
    let seen = |room: Rect| {
        window.is_none_or(|w| w.overlaps(room.inflate(WIDEST_LINE_MM, WIDEST_LINE_MM)))
    };
    let shift = Affine::translate(by);
    let shifted = |path: &BezPath| {
        let mut path = path.clone();
        path.apply_affine(shift);
        path
    };
    let clip = window.map(|w| rectangle(w + by));
    let mut layers = Vec::new();
    for layer in &sheet.layers {
        let mut out = Layer {
            name: layer.name.clone(),
            clip: clip.clone(),
            cover: layer.cover,
            marks: Vec::new(),
        };
        for mark in &layer.marks {
            let mut mark = mark.clone();
            let shown = match &mut mark.shape {
                Shape::Area { path, .. } | Shape::Line { path, .. } => {
                    let shown = seen(bounds(path));
                    *path = shifted(path);
                    shown
                }
                Shape::Text(text) => {
                    // Words reach no further from their point than their letters could make them.
                    let far = text.size.to_mm() * text.words.chars().count() as f64;
                    let shown = seen(Rect::from_center_size(text.at, (2.0 * far, 2.0 * far)));
                    text.at += by;
                    shown
                }
            };
            if shown {
                out.marks.push(mark);
            }
        }
        if !out.marks.is_empty() {
            layers.push(out);
        }
    }
    layers
}

fn rectangle(r: Rect) -> BezPath {
    closed(&[
        Point::new(r.x0, r.y0),
        Point::new(r.x1, r.y0),
        Point::new(r.x1, r.y1),
        Point::new(r.x0, r.y1),
    ])
}

/// All pages small, with their codes and the pieces on them.
pub(super) fn map(sheet: &PatternSheet, grid: &Grid, tiles: &[Tile]) -> Sheet {
    let rooms = tiles.iter().map(|tile| {
        let step = grid.step();
        Rect::from_origin_size(grid.window(tile).origin(), (step.x, step.y))
    });
    let all = rooms
        .clone()
        .fold(Rect::new(0.0, 0.0, 1.0, 1.0), |a, b| a.union(b));
    let small = (MAP_WIDE_MM / all.width()).min(MAP_TALL_MM / all.height());
    let scale = Affine::scale(small);
    let mut pages = Layer::named("pages");
    let mut codes = Layer::named("codes");
    for (tile, room) in tiles.iter().zip(rooms) {
        let mut path = rectangle(room);
        path.apply_affine(scale);
        pages.line(None, path, Stroke::plain(CONSTRUCTION, HAIRLINE));
        codes.text(
            None,
            Text {
                at: scale * room.origin() + Vec2::new(1.0, 3.0),
                words: tile.code(),
                size: WORDS,
                anchor: Anchor::Start,
                turn_deg: 0.0,
                colour: INK,
                bold: true,
            },
        );
    }
    let mut pieces = Layer::named("pieces");
    for piece in &sheet.pieces {
        let mut path = closed(&piece.outline);
        path.apply_affine(scale);
        pieces.area(
            None,
            path,
            TINT,
            Some(Stroke::plain(CONSTRUCTION, HAIRLINE)),
        );
    }
    let white = 0.5;
    Sheet {
        title: "Map of the pages".to_owned(),
        origin: Point::new(-white, -white),
        width: Length::mm(all.width() * small + 2.0 * white),
        height: Length::mm(all.height() * small + 2.0 * white),
        layers: vec![pieces, pages, codes],
    }
}

/// Where the patterns begin on the page of a roll.
pub(super) fn roll_corner(margin: Length) -> Vec2 {
    Vec2::new(margin.to_mm(), margin.to_mm() + ROLL_HEAD_MM)
}

/// The page of a roll: a line of words, then the patterns.
pub(super) fn roll(
    sheet: &PatternSheet,
    head: &PatternHead,
    width: Length,
    margin: Length,
) -> Sheet {
    let by = roll_corner(margin);
    let mut layers = moved(&sheet.sheet, None, by);
    let mut words = Layer::named("head");
    let said = [
        head.style.as_str(),
        head.sizes.as_str(),
        "true size: plot at 100 %",
    ];
    words.text(
        None,
        Text {
            at: Point::new(by.x, margin.to_mm() + 5.0),
            words: said.join(", "),
            size: Length::mm(5.0),
            anchor: Anchor::Start,
            turn_deg: 0.0,
            colour: INK,
            bold: false,
        },
    );
    layers.push(words);
    Sheet {
        title: format!("{}, {}", head.style, head.sizes),
        origin: Point::ORIGIN,
        width,
        height: Length::mm(sheet.sheet.height.to_mm() + by.y + margin.to_mm()),
        layers,
    }
}
