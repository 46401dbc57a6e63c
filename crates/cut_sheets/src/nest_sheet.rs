//! All sizes of a piece on each other at one point: the base strong, the others thin, each labelled.

mod apart;

use cutting::{CutPiece, CutSize, Nest, Nested};
use drawing::dimension::{arrow_head, unit};
use drawing::lettering::{CAPITALS, Taken, centred, no_leader, text_box, text_width};
use drawing::palette::{
    CONSTRUCTION, CUT_LINE, HAIRLINE, INK, NOTCH, Pen, SEWN_LINE, TYPE_FIGURES,
};
use drawing::{Anchor, Layer, Sheet, Stroke, Text, circle, closed, open};
use geometry::{Affine, Point, Rect, Vec2, bounds_of};
use sewing::On;
use style::Size;
use trade::Length;
use words::Words;

use crate::piece_words::heading_words;
use apart::{called, groups, widest};

/// White round the drawing, as printed.
const MARGIN_MM: f64 = 2.0;
/// From the nest to the labels of its sizes, as printed.
const ASIDE_MM: f64 = 6.0;
/// Radius of the dot where a label's leader ends, as printed.
const DOT_MM: f64 = 0.4;
/// Radius of the ring at the point at which the sizes lie on each other, as printed.
const RING_MM: f64 = 1.2;
/// Label to label, in ems.
const LEADING: f64 = 1.35;
/// Dash and gap of each size in turn, as printed, so that one line can be followed among many.
const DASHES: [(f64, f64); 4] = [(6.0, 1.2), (3.0, 1.0), (1.4, 0.8), (0.5, 0.7)];

/// How a nest is drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NestLook {
    /// The size drawn strong.
    pub base: Size,
    /// How the sheet will be printed: 1.0 at true size, 0.2 at 1:5.
    pub scale: f64,
    /// How many times as large as on a page words are.
    pub type_size: f64,
    /// Whether what the piece is stands on it.
    pub named: bool,
}

/// One size on the drawing.
struct Laid {
    size: Size,
    /// From the frame of the nest to the paper.
    map: Affine,
    shift: Vec2,
    cut: Vec<Point>,
    sewn: Vec<Vec<Point>>,
}

/// The linear part of how a piece is turned over to be as it is cut, for lines laid on each other at one point.
pub(crate) fn hand_of(piece: &CutPiece) -> Affine {
    let turned = piece.as_cut();
    let at = turned * Point::ORIGIN;
    Affine::translate(-at.to_vec2()) * turned
}

impl Laid {
    fn new(nested: &Nested, hand: Affine) -> Laid {
        let map = drawing::to_paper(0.0, 0.0) * hand;
        let drawn = |line: &[Point]| line.iter().map(|p| map * *p).collect::<Vec<_>>();
        Laid {
            size: nested.size,
            map,
            shift: nested.shift,
            cut: drawn(&nested.cut),
            sewn: nested.sewn.iter().map(|(_, line)| drawn(line)).collect(),
        }
    }

    fn place(&self, p: Point) -> Point {
        self.map * (p + self.shift)
    }

    fn ring(&self) -> Vec<Point> {
        let mut ring = self.cut.clone();
        ring.extend(self.cut.first().copied());
        ring
    }
}

/// The cut piece of one size of a nest.
fn piece_of<'a>(run: &'a [CutSize], nest: &Nest, size: Size) -> Option<&'a CutPiece> {
    let cut = run.iter().find(|cut| cut.size == size)?;
    let mut pieces = cut.of(nest.piece);
    pieces.find(|p| {
        p.part == nest.part && (p.on == nest.on || p.on == On::Both || nest.on == On::Both)
    })
}

/// A nest drawn true to scale, in the frame of the nest with y down. `run` are the sizes it was made
/// from: notches and grain are theirs.
pub fn nest_sheet(run: &[CutSize], nest: &Nest, look: &NestLook, say: &Words) -> Sheet {
    let pen = Pen::for_scale(look.scale);
    let words = pen.enlarged(look.type_size);
    let like = piece_of(run, nest, look.base)
        .or_else(|| nest.sizes.iter().find_map(|n| piece_of(run, nest, n.size)));
    let hand = like.map_or(Affine::IDENTITY, hand_of);
    let sizes: Vec<Laid> = nest.sizes.iter().map(|n| Laid::new(n, hand)).collect();
    let base = sizes.iter().find(|s| s.size == look.base);
    let all: Vec<Point> = sizes.iter().flat_map(|s| s.cut.iter().copied()).collect();
    let mut bounds = bounds_of(&all);
    let mut taken = Taken::default();

    let mut lines = Layer::named("sizes");
    let others = sizes.iter().filter(|s| s.size != look.base);
    for (laid, (dash, gap)) in others.zip(DASHES.into_iter().cycle()) {
        let stroke = pen.stroke(CONSTRUCTION, SEWN_LINE);
        let stroke = stroke.dashed(pen.length(Length::mm(dash)), pen.length(Length::mm(gap)));
        lines.line(None, closed(&laid.cut), stroke);
        taken.keep_clear_of(&laid.ring());
    }
    let mut strong = Layer::named("base");
    if let Some(base) = base {
        for line in &base.sewn {
            strong.line(None, open(line), pen.stroke(INK, HAIRLINE));
        }
        strong.line(None, closed(&base.cut), pen.stroke(INK, CUT_LINE));
        taken.keep_clear_of(&base.ring());
    }
    let mut marks = Layer::named("marks");
    for laid in &sizes {
        if let Some(piece) = piece_of(run, nest, laid.size) {
            notches(&mut marks, pen, laid, piece, laid.size == look.base);
        }
    }
    let of_base = base.zip(piece_of(run, nest, look.base));
    if let Some((laid, piece)) = of_base {
        grain(&mut marks, pen, laid, piece, &mut taken);
    }

    let mut labels = Layer::named("labels");
    let at = point_words(&mut labels, words, &mut taken, &nest.at.words(say), bounds);
    let sized = size_words(
        &mut labels,
        (words, say),
        &mut taken,
        (&sizes, look.base),
        bounds,
    );
    if let Some((laid, piece)) = of_base.filter(|_| look.named) {
        let sewn: Vec<Point> = laid.sewn.iter().flatten().copied().collect();
        let label = piece.label_as_cut();
        let lines = [
            label.style.clone(),
            say.nest_strong_line(look.base),
            say.saying(&label.cut),
            label.side_in(say),
            label.cloth.clone(),
        ];
        let place = (sewn.as_slice(), bounds.union(sized));
        let room = heading_words(
            &say.saying(&piece.label.piece),
            &lines,
            place,
            words,
            &mut taken,
            &mut labels,
        );
        bounds = bounds.union(room);
    }
    bounds = bounds.union(at).union(sized);
    let room = bounds.inflate(pen.mm(MARGIN_MM), pen.mm(MARGIN_MM));
    Sheet {
        title: say.nest_title(nest.piece.words(say)),
        origin: room.origin(),
        width: Length::mm(room.width()),
        height: Length::mm(room.height()),
        layers: vec![lines, strong, marks, labels],
    }
}

fn notches(layer: &mut Layer, pen: Pen, laid: &Laid, piece: &CutPiece, is_base: bool) {
    let stroke = if is_base {
        pen.stroke(INK, NOTCH)
    } else {
        pen.stroke(CONSTRUCTION, HAIRLINE)
    };
    for (from, to) in piece.notches.iter().flat_map(cutting::CutNotch::cuts) {
        layer.line(None, open(&[laid.place(from), laid.place(to)]), stroke);
    }
}

fn grain(layer: &mut Layer, pen: Pen, laid: &Laid, piece: &CutPiece, taken: &mut Taken) {
    let (from, to) = (laid.place(piece.grain.0), laid.place(piece.grain.1));
    let Some(along) = unit(to - from) else {
        return;
    };
    layer.line(None, open(&[from, to]), pen.stroke(INK, SEWN_LINE));
    let room = (to - from).hypot();
    arrow_head(layer, pen, to, along, Length::mm(room));
    arrow_head(layer, pen, from, -along, Length::mm(room));
    taken.keep_clear_of(&[from, to]);
}

/// A ring at the point at which the sizes lie on each other, with its name.
fn point_words(layer: &mut Layer, pen: Pen, taken: &mut Taken, name: &str, bounds: Rect) -> Rect {
    let ring = pen.mm(RING_MM);
    let stroke = Stroke::plain(INK, pen.length(HAIRLINE));
    layer.line(None, circle(Point::ORIGIN, Length::mm(ring)), stroke);
    let size = pen.length(TYPE_FIGURES);
    let wide = text_width(name, size).to_mm() + pen.mm(1.4);
    let tall = CAPITALS * size.to_mm() + pen.mm(1.4);
    // Into the piece first.
    let inward = unit(bounds.center().to_vec2()).unwrap_or(Vec2::new(0.0, 1.0));
    let candidates = [1.0, 1.5, 2.2, 3.2].into_iter().flat_map(|away| {
        [0.0, 0.5, -0.5, 1.0, -1.0, 2.0, -2.0, 3.1]
            .into_iter()
            .map(move |turn: f64| {
                let (sin, cos) = turn.sin_cos();
                let out = Vec2::new(
                    inward.x * cos - inward.y * sin,
                    inward.x * sin + inward.y * cos,
                );
                Point::new(
                    out.x * (wide / 2.0 + ring) * away,
                    out.y * (tall / 2.0 + 2.0 * ring) * away,
                )
            })
    });
    let Some(centre) = taken.place(Vec2::new(wide, tall), candidates, no_leader) else {
        return bounds;
    };
    let text = centred(name, size, centre);
    let room = text_box(&text);
    layer.text(None, text);
    room
}

/// One side of the nest, seen square to it.
#[derive(Clone, Copy)]
enum Side {
    Right,
    Left,
    Foot,
    Top,
}

impl Side {
    const ALL: [Side; 4] = [Side::Right, Side::Left, Side::Foot, Side::Top];

    /// How far out along this side, and along it.
    fn split(self, p: Point) -> (f64, f64) {
        match self {
            Side::Right => (p.x, p.y),
            Side::Left => (-p.x, p.y),
            Side::Foot => (p.y, p.x),
            Side::Top => (-p.y, p.x),
        }
    }

    fn join(self, out: f64, along: f64) -> Point {
        match self {
            Side::Right => Point::new(out, along),
            Side::Left => Point::new(-out, along),
            Side::Foot => Point::new(along, out),
            Side::Top => Point::new(along, -out),
        }
    }
}

/// A line that leans more than this along a side says little of how far out it lies.
const MOST_LEAN: f64 = 0.4;

/// How far out an outline reaches on one side at a level; none where it leans there.
fn reach(outline: &[Point], side: Side, level: f64) -> Option<f64> {
    let ends = outline.iter().zip(outline.iter().cycle().skip(1));
    let crossed = ends.filter_map(|(a, b)| {
        let ((out_a, a), (out_b, b)) = (side.split(*a), side.split(*b));
        let lean = (out_b - out_a) / (b - a);
        ((a <= level) != (b <= level)).then(|| (out_a + lean * (level - a), lean.abs()))
    });
    let (out, lean) = crossed.max_by(|a, b| a.0.total_cmp(&b.0))?;
    (lean <= MOST_LEAN).then_some(out)
}

/// Labels every size, those that share a line together, beside the place where the outlines lie furthest apart, each with a leader to its
/// line. Returns the room taken.
fn size_words(
    layer: &mut Layer,
    (pen, say): (Pen, &Words),
    taken: &mut Taken,
    (sizes, base): (&[Laid], Size),
    bounds: Rect,
) -> Rect {
    let Some((side, level, reaches)) = widest(sizes, bounds) else {
        return bounds;
    };
    let size = pen.length(TYPE_FIGURES);
    let pitch = size.to_mm() * LEADING;
    let groups = groups(&reaches);
    let all: Vec<Size> = sizes.iter().map(|s| s.size).collect();
    let of_group = |group: &[usize]| group.iter().map(|k| all[*k]).collect::<Vec<Size>>();
    let names: Vec<String> = groups
        .iter()
        .map(|group| called(&of_group(group), &all, say))
        .collect();
    let upright = matches!(side, Side::Right | Side::Left);
    // Labels stand below one another on a side, beside one another at foot and top.
    let half = |name: &str| text_width(name, size).to_mm() / 2.0;
    let step = |before: &str, name: &str| match upright {
        true => pitch,
        false => half(before) + half(name) + 0.8 * size.to_mm(),
    };
    let edge = side.split(Point::new(bounds.x1, bounds.y1)).0;
    let edge = edge.max(side.split(Point::new(bounds.x0, bounds.y0)).0) + pen.mm(ASIDE_MM);

    let mut room = bounds;
    let mut along = level;
    let mut before: Option<&String> = None;
    for (group, name) in groups.iter().zip(&names) {
        let out = group.first().map_or(0.0, |k| reaches[*k]);
        along += before.map_or(0.0, |before| step(before, name));
        before = Some(name);
        // Along its own line and then straight out, so that no leader runs over another.
        let (foot, end) = (side.join(out, level), side.join(edge, along));
        let leader = [foot, side.join(out, along), end];
        let stroke = Stroke::plain(CONSTRUCTION, pen.length(HAIRLINE));
        layer.line(None, open(&leader), stroke);
        layer.area(None, circle(foot, Length::mm(pen.mm(DOT_MM))), INK, None);
        let gap = pen.mm(0.7);
        let (at, anchor) = match side {
            Side::Right => (
                end + Vec2::new(gap, size.to_mm() * CAPITALS / 2.0),
                Anchor::Start,
            ),
            Side::Left => (
                end + Vec2::new(-gap, size.to_mm() * CAPITALS / 2.0),
                Anchor::End,
            ),
            Side::Foot => (
                end + Vec2::new(0.0, gap + size.to_mm() * CAPITALS),
                Anchor::Middle,
            ),
            Side::Top => (end - Vec2::new(0.0, gap), Anchor::Middle),
        };
        let text = Text {
            at,
            words: name.clone(),
            size,
            anchor,
            turn_deg: 0.0,
            colour: INK,
            bold: of_group(group).contains(&base),
        };
        let place = text_box(&text);
        room = room.union(place);
        taken.boxes.push(place);
        taken.keep_clear_of(&leader);
        layer.text(None, text);
    }
    room
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sizes_on_one_line_are_called_together() {
        let size = Size::new;
        let called = |group: &[Size], all: &[Size]| called(group, all, Words::english());
        let all = [size(30, 32), size(30, 34), size(32, 32), size(32, 34)];
        assert_eq!(called(&all, &all), "all sizes");
        assert_eq!(called(&all[..2], &all), "waist 30");
        assert_eq!(called(&[all[0], all[2]], &all), "length 32");
        assert_eq!(called(&[all[0], all[3]], &all), "30x32, 32x34");
        assert_eq!(called(&all[..1], &all), "30x32");
        let one_length = [all[0], all[2]];
        assert_eq!(called(&all[..1], &one_length), "30");
        let one_waist = &all[..2];
        assert_eq!(called(&all[..1], one_waist), "length 32");
    }

    #[test]
    fn lines_on_each_other_share_a_label_the_outermost_first() {
        assert_eq!(
            groups(&[1.0, 5.0, 1.02, 3.0]),
            [vec![1], vec![3], vec![2, 0]]
        );
    }
}
