//! A lay: the pieces where they lie on the cloth, true to scale.

use cutting::{Named, Spread};
use drawing::lettering::text_width;
use drawing::palette::{
    CONSTRUCTION, CUT_LINE, HAIRLINE, INK, Pen, SEWN_LINE, TINT, TYPE_FIGURES, TYPE_WORDS,
};
use drawing::{Anchor, Layer, Sheet, Text, closed, open};
use geometry::{Point, Rect};
use lay::{Lay, Splice};
use style::Cloth;
use trade::{Colour, Length, System};
use words::{Words, say};

use crate::lay_words::{Key, Lying, NUMBERS_MM, name_pieces};
use crate::listed_piece::ListedPiece;

/// A lay is read from across a table: it is drawn at full size, its words as if at a tenth.
const READ_AT: u32 = 10;

/// Room round the cloth, printed millimetres.
const ROUND_MM: f64 = 6.0;
/// Room below everything, printed.
const BELOW_MM: f64 = 2.0;
/// Room for the rule above the cloth and, over it, the base line of each line of words.
const RULE_MM: f64 = 5.6;
const LINE_MM: f64 = 4.0;
/// From one line of the key to the next, and how wide its columns together are at most.
const KEY_LINE_MM: f64 = 3.3;
const KEY_WIDE_MM: f64 = 250.0;
/// What follows the number of a piece on its mirror image.
const MIRRORED_NUMBER: &str = "m";
/// Words over a short lay are no wider than this, so that short lays stand beside one another.
const HEAD_WIDE_MM: f64 = 58.0;
/// A lay longer than this has a page's width for its words, as printed.
const SHORT_MM: f64 = 100.0;
const PAGE_MM: f64 = 158.0;

/// The undyed threads of a finished edge, as drawn.
const FINISHED_EDGE: Length = Length::mm(6.0);

/// What is marked on a lay besides its pieces.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct LayMarks {
    /// What the lay is and how it is spread: "Lay 2 of 4: 8 plies". Stands over the figures; may be empty.
    pub heading: String,
    /// Where a roll may end. Two lines across: the new cloth begins at the first, the old one may be cut
    /// off at the second.
    pub splices: Vec<Splice>,
    /// How many shade zones the width is parted into; nothing is drawn for one or none.
    pub zones: u32,
}

/// The cloth from above with every piece of the lay, x along the warp; what the figures say stands
/// over it. Its words are meant to be printed at 1:10.
pub fn lay_sheet(
    spread: &Spread,
    lay: &Lay,
    cloth: &Cloth,
    marks: &LayMarks,
    (words, system): (&Words, System),
) -> Sheet {
    sheet(READ_AT, (spread, lay, cloth), (marks, &[]), (words, system))
}

/// The same, without marks, with words meant to be printed at 1:`one_to` and pieces called as in their list.
pub fn lay_sheet_at(
    one_to: u32,
    spread: &Spread,
    lay: &Lay,
    cloth: &Cloth,
    listed: &[ListedPiece],
    said: (&Words, System),
) -> Sheet {
    let marks = LayMarks::default();
    sheet(one_to, (spread, lay, cloth), (&marks, listed), said)
}

fn sheet(
    one_to: u32,
    (spread, lay, cloth): (&Spread, &Lay, &Cloth),
    (marks, listed): (&LayMarks, &[ListedPiece]),
    (say, system): (&Words, System),
) -> Sheet {
    let pen = Pen::for_scale(1.0 / f64::from(one_to));
    let (long, wide) = (lay.length.to_mm(), spread.problem.width.to_mm());
    let mut pieces = Layer::named("pieces");
    let lying = lying(spread, lay, (&mut pieces, pen), (listed, say));
    let lines = lines_across((long, wide), marks);
    let mut words = Layer::named("words");
    let room = Rect::new(0.0, 0.0, long, wide);
    let key = name_pieces(&lying, &lines, room, pen, &mut words);

    let figures = figures(spread, lay, cloth, (say, system));
    // Short lays stand beside one another; a long one has a page's width to itself.
    let least = pen.mm(if long > pen.mm(SHORT_MM) {
        PAGE_MM
    } else {
        HEAD_WIDE_MM
    });
    let head = head_lines([&figures, &marks.heading], long.max(least), pen);
    // The words over a short lay may be longer than the lay.
    let held = head
        .iter()
        .map(|(line, _)| text_width(line, pen.length(TYPE_WORDS)).to_mm())
        .fold(long, f64::max)
        .max(if key.names.is_empty() { 0.0 } else { least });
    let mut above = pen.mm(RULE_MM);
    for (line, bold) in &head {
        words.text(
            None,
            from_left(line, Point::new(0.0, -above), pen.length(TYPE_WORDS), *bold),
        );
        above += pen.mm(LINE_MM);
    }
    let mut across = Layer::named("marks");
    zones(&mut across, pen, (long, wide), (marks.zones, say));
    rule(&mut across, pen, long, system);
    let mut below = wide + if key.below { pen.mm(NUMBERS_MM) } else { 0.0 };
    below += splices(
        &mut across,
        pen,
        (long, below),
        &marks.splices,
        (say, system),
    );
    below += write_key(&mut words, pen, &key, Point::new(0.0, below), held);
    let margin = pen.mm(ROUND_MM);
    above += margin - pen.mm(LINE_MM);
    Sheet {
        title: say.lay_sheet_title(&cloth.name),
        origin: Point::new(-margin, -above),
        width: Length::mm(held + 2.0 * margin),
        height: Length::mm(above + below + pen.mm(BELOW_MM)),
        layers: vec![ground((long, wide), cloth, pen), pieces, across, words],
    }
}

/// The lines over the cloth, the lowest first, broken between words where they are wider than this; the last of
/// what is given is bold.
fn head_lines([figures, heading]: [&str; 2], wide: f64, pen: Pen) -> Vec<(String, bool)> {
    let size = pen.length(TYPE_WORDS);
    let mut out = Vec::new();
    for (said, bold) in [(figures, false), (heading, true)] {
        let mut lines: Vec<String> = Vec::new();
        for word in said.split_whitespace() {
            let longer = lines.last().map(|line| format!("{line} {word}"));
            match (longer, lines.last_mut()) {
                (Some(longer), Some(last)) if text_width(&longer, size).to_mm() <= wide => {
                    *last = longer
                }
                _ => lines.push(word.to_owned()),
            }
        }
        out.extend(lines.into_iter().rev().map(|line| (line, bold)));
    }
    out
}

/// The cloth with its finished edges.
fn ground((long, wide): (f64, f64), cloth: &Cloth, pen: Pen) -> Layer {
    let mut layer = Layer::named("cloth");
    let strip = |top: f64, foot: f64| {
        let corners = [(0.0, top), (long, top), (long, foot), (0.0, foot)];
        closed(&corners.map(|(x, y)| Point::new(x, y)))
    };
    let edge = pen.stroke(CONSTRUCTION, SEWN_LINE);
    layer.area(None, strip(0.0, wide), Colour::WHITE, Some(edge));
    if cloth.selvedge {
        let deep = FINISHED_EDGE.to_mm();
        let pale = cloth.colour.mixed(Colour::WHITE, 0.75);
        for (top, foot) in [(0.0, deep), (wide - deep, wide)] {
            layer.area(None, strip(top, foot), pale, None);
        }
    }
    layer
}

/// Draws the pieces and says how each lies.
fn lying(
    spread: &Spread,
    lay: &Lay,
    (layer, pen): (&mut Layer, Pen),
    (listed, say): (&[ListedPiece], &Words),
) -> Vec<Lying> {
    let wide = spread.problem.width.to_mm();
    let mut lying = Vec::new();
    for placed in &lay.placements {
        let Some(piece) = spread.problem.pieces.iter().find(|p| p.key == placed.key) else {
            continue;
        };
        // The lay's y runs up from the lower edge.
        let on_sheet = |p: Point| Point::new(p.x, wide - p.y);
        let outline: Vec<Point> = placed.outline(piece).into_iter().map(on_sheet).collect();
        let part = format!("cut:{}", placed.key);
        layer.area(
            Some(&part),
            closed(&outline),
            TINT,
            Some(pen.stroke(INK, SEWN_LINE)),
        );
        if let Some(named) = spread.named(&placed.key) {
            let (name, number) = called(named, listed, say);
            lying.push(Lying {
                outline,
                part,
                size: named.size.clone(),
                name,
                number,
                turn: placed.turn,
            });
        }
    }
    lying
}

/// The name of a piece as its list has it, and its number there, the mirror image of what its sheet shows told from it.
fn called(named: &Named, listed: &[ListedPiece], say: &Words) -> (String, Option<String>) {
    let of_name = || listed.iter().filter(|one| one.piece == named.piece);
    let turned = of_name().find(|one| one.turned).filter(|_| named.mirrored);
    if let Some(one) = turned {
        let copy = if one.second { MIRRORED_NUMBER } else { "" };
        return (one.name(say), one.number.map(|n| format!("{n}{copy}")));
    }
    let number = of_name().next().and_then(|one| one.number);
    let name = say.saying(&named.piece);
    if named.mirrored {
        let number = number.map(|n| format!("{n}{MIRRORED_NUMBER}"));
        (say.lay_sheet_mirrored(name), number)
    } else {
        (name, number.map(|n| n.to_string()))
    }
}

/// The lines that run across the pieces.
fn lines_across((long, wide): (f64, f64), marks: &LayMarks) -> Vec<(Point, Point)> {
    let ends = marks.splices.iter().flat_map(|s| [s.from, s.until]);
    let down = ends.map(|x| x.to_mm()).map(|x| {
        // Through the row of numbers below the cloth as well.
        (Point::new(x, 0.0), Point::new(x, 2.0 * wide))
    });
    let parts = (1..marks.zones).map(|zone| wide * f64::from(zone) / f64::from(marks.zones));
    let along = parts.map(|y| (Point::new(0.0, y), Point::new(long, y)));
    down.chain(along).collect()
}

fn from_left(words: &str, at: Point, size: Length, bold: bool) -> Text {
    Text {
        at,
        words: words.to_owned(),
        size,
        anchor: Anchor::Start,
        turn_deg: 0.0,
        colour: INK,
        bold,
    }
}

/// How far along the cloth one is: a rule above it, so that the drawing states its scale however it is
/// shown.
fn rule(layer: &mut Layer, pen: Pen, long: f64, system: System) {
    let inch = Length::inches(1.0).to_mm();
    let (mut step, mut every, unit, each) = match system {
        System::Metric if long < 100.0 => (10.0, 5, "cm", 10.0),
        System::Metric if long < 1000.0 => (10.0, 10, "cm", 10.0),
        System::Metric => (100.0, 10, "m", 1000.0),
        System::Inch => (inch, if long < 12.0 * inch { 3 } else { 12 }, "in", inch),
    };
    // Marks nearer than a millimetre are a grey bar.
    while step < pen.mm(1.0) {
        step *= f64::from(every);
        every = 5;
    }
    let mut free_from = f64::NEG_INFINITY;
    for k in 0..=(long / step) as u32 {
        let x = f64::from(k) * step;
        let whole = k % every == 0;
        let tick = pen.mm(if whole { 1.6 } else { 0.8 });
        layer.line(
            None,
            open(&[Point::new(x, 0.0), Point::new(x, -tick)]),
            pen.stroke(CONSTRUCTION, HAIRLINE),
        );
        let words = format!("{:.0} {unit}", x / each);
        let half = text_width(&words, pen.length(TYPE_FIGURES)).to_mm() / 2.0;
        if whole && k > 0 && x - half > free_from {
            free_from = x + half + pen.mm(2.0);
            let mut text = from_left(
                &words,
                Point::new(x, -pen.mm(2.1)),
                pen.length(TYPE_FIGURES),
                false,
            );
            (text.anchor, text.colour) = (Anchor::Middle, CONSTRUCTION);
            layer.text(None, text);
        }
    }
}

/// Shade zones: thin lines along the cloth, numbered at its end.
fn zones(layer: &mut Layer, pen: Pen, (long, wide): (f64, f64), (zones, say): (u32, &Words)) {
    if zones < 2 {
        return;
    }
    let each = wide / f64::from(zones);
    for zone in 0..zones {
        // Counted from the lower edge, as the lay's own y runs.
        let foot = wide - each * f64::from(zone);
        if zone > 0 {
            let stroke = pen.stroke(CONSTRUCTION, HAIRLINE);
            let stroke = stroke.dashed(pen.length(Length::mm(4.0)), pen.length(Length::mm(1.2)));
            layer.line(
                Some("zones"),
                open(&[Point::new(0.0, foot), Point::new(long, foot)]),
                stroke,
            );
        }
        layer.text(
            Some("zones"),
            Text {
                at: Point::new(-pen.mm(2.0), foot - each / 2.0),
                words: say.lay_sheet_zone(zone + 1),
                size: pen.length(TYPE_FIGURES),
                anchor: Anchor::Middle,
                turn_deg: -90.0,
                colour: CONSTRUCTION,
                bold: false,
            },
        );
    }
}

/// Splices: two dashed lines across and a bar below `foot` that joins them, with the lap beside it.
/// Returns the room taken below.
fn splices(
    layer: &mut Layer,
    pen: Pen,
    (long, foot): (f64, f64),
    splices: &[Splice],
    (words, system): (&Words, System),
) -> f64 {
    let tick = foot + pen.mm(1.6);
    // Laps that lie close together go one below the other: how far each row is taken.
    let mut rows: Vec<f64> = Vec::new();
    for (number, splice) in splices.iter().enumerate() {
        let part = format!("splice:{}", number + 1);
        let (from, until) = (splice.from.to_mm(), splice.until.to_mm());
        let dashed = pen.fine_dashes(INK, HAIRLINE);
        for x in [from, until] {
            layer.line(
                Some(&part),
                open(&[Point::new(x, 0.0), Point::new(x, tick)]),
                dashed,
            );
        }
        layer.line(
            Some(&part),
            open(&[Point::new(from, tick), Point::new(until, tick)]),
            pen.stroke(INK, CUT_LINE),
        );
        let words = words.say(say::LaySheetSplice {
            lap: splice.lap().show(system),
            number: number + 1,
        });
        let half = text_width(&words, pen.length(TYPE_FIGURES)).to_mm() / 2.0;
        let middle =
            ((from + until) / 2.0).clamp(half.min(long / 2.0), (long - half).max(long / 2.0));
        let row = rows.iter().position(|until| middle - half > *until);
        let row = row.unwrap_or_else(|| {
            rows.push(0.0);
            rows.len() - 1
        });
        rows[row] = middle + half + pen.mm(1.0);
        layer.text(
            Some(&part),
            Text {
                at: Point::new(middle, tick + pen.mm(2.8 + 2.9 * row as f64)),
                words,
                size: pen.length(TYPE_FIGURES),
                anchor: Anchor::Middle,
                turn_deg: 0.0,
                colour: INK,
                bold: false,
            },
        );
    }
    if rows.is_empty() {
        0.0
    } else {
        pen.mm(2.2 + 2.9 * rows.len() as f64)
    }
}

/// What the numbers in the lay stand for, in columns. Returns the room taken below.
fn write_key(layer: &mut Layer, pen: Pen, key: &Key, corner: Point, wide: f64) -> f64 {
    if key.names.is_empty() {
        return 0.0;
    }
    let size = pen.length(TYPE_FIGURES);
    let wide_of = |words: &str| text_width(words, size).to_mm();
    let numbers = key.names.iter().map(|(number, _)| wide_of(number));
    let indent = numbers.fold(0.0, f64::max) + pen.mm(1.4);
    let widths = key.names.iter().map(|(_, name)| wide_of(name));
    let column = indent + widths.fold(0.0, f64::max) + pen.mm(5.0);
    let columns = ((wide.min(pen.mm(KEY_WIDE_MM)) / column) as usize).clamp(1, key.names.len());
    let rows = key.names.len().div_ceil(columns);
    for (k, (number, name)) in key.names.iter().enumerate() {
        let down = pen.mm(2.4 + KEY_LINE_MM * (k % rows + 1) as f64);
        let at = corner + geometry::Vec2::new(column * (k / rows) as f64, down);
        layer.text(Some("key"), from_left(number, at, size, true));
        let beside = at + geometry::Vec2::new(indent, 0.0);
        layer.text(Some("key"), from_left(name, beside, size, false));
    }
    pen.mm(2.4 + KEY_LINE_MM * rows as f64)
}

fn figures(spread: &Spread, lay: &Lay, cloth: &Cloth, (words, system): (&Words, System)) -> String {
    words.say(say::LaySheetFigures {
        bound: lay.bounds.best().show(system),
        cloth: &cloth.name,
        length: lay.length.show(system),
        used: lay.efficiency.in_percent(1),
        width: spread.problem.width.show(system),
    })
}
