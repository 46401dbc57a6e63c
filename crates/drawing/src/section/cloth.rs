//! The plies on paper: band, face line, outlines and cut ends.

use geometry::{Point, Vec2, left_of};
use trade::{Colour, Length};

use super::band::{band, beside};
use super::model::{End, Section, SectionPly};
use super::scale::Scale;
use super::section_size::Look;
use crate::palette::{INK, QUIET};
use crate::sheet::{Layer, Stroke, closed, open};

/// The face takes this share of the thickness.
const FACE: f64 = 0.34;
/// Length of the finished edge shown paler.
const SELVEDGE_MM: f64 = 2.5;

/// The layers of the cloth: one, or one on each side of the stretch left out.
pub(super) fn cloth(section: &Section, scale: &Scale, look: &Look, part: &str) -> Vec<Layer> {
    let Some((from, to)) = scale.cut else {
        let mut layer = Layer::named("cloth");
        draw(&mut layer, section, look, part, |p| scale.right(p));
        return vec![layer];
    };
    let far = 1000.0;
    let wave = |x: f64| -> Vec<Point> {
        (0..=24)
            .map(|k| {
                let share = f64::from(k) / 24.0;
                let y = -2.0 + share * 9.0;
                Point::new(x + 0.35 * (share * 4.0 * std::f64::consts::PI).sin(), y)
            })
            .collect()
    };
    let side = |at: &dyn Fn(Point) -> Point, x: f64, out: f64| {
        let line: Vec<Point> = wave(x).into_iter().map(at).collect();
        let mut outline = line.clone();
        if let (Some(first), Some(last)) = (line.first(), line.last()) {
            outline.push(Point::new(last.x, -far));
            outline.push(Point::new(out, -far));
            outline.push(Point::new(out, far));
            outline.push(Point::new(first.x, far));
        }
        let mut layer = Layer::named("cloth");
        layer.clip = Some(closed(&outline));
        draw(&mut layer, section, look, part, at);
        layer
    };
    let left = side(&|p| scale.left(p), from, -far);
    let right = side(&|p| scale.right(p), to, far);
    vec![
        left,
        right,
        break_lines(section, scale, look, (from, to), &wave),
    ]
}

/// The wavy lines on both sides of what is left out, as high as the cloth there.
fn break_lines(
    section: &Section,
    scale: &Scale,
    look: &Look,
    (from, to): (f64, f64),
    wave: &dyn Fn(f64) -> Vec<Point>,
) -> Layer {
    let mut layer = Layer::named("break");
    let stroke = Stroke::plain(QUIET, Length::mm(look.line));
    let Some((top, foot)) = super::model::heights(&section.plies, (from + to) / 2.0) else {
        return layer;
    };
    let near = |p: &Point| p.y < top + 0.5 && p.y > foot - 0.5;
    let drawn = |x: f64| wave(x).into_iter().filter(near);
    let left: Vec<Point> = drawn(from).map(|p| scale.left(p)).collect();
    let right: Vec<Point> = drawn(to).map(|p| scale.right(p)).collect();
    layer.line(None, open(&left), stroke);
    layer.line(None, open(&right), stroke);
    layer
}

fn draw(
    layer: &mut Layer,
    section: &Section,
    look: &Look,
    part: &str,
    at: impl Fn(Point) -> Point,
) {
    let on = |points: Vec<Point>| -> Vec<Point> { points.into_iter().map(&at).collect() };
    for ply in &section.plies {
        let line = ply.line();
        let (Some(first), Some(last)) = (line.first(), line.last()) else {
            continue;
        };
        let t = ply.thickness.to_mm();
        let half = t / 2.0;
        let begin = cap(ply.ends.0, first.0, -first.1, t);
        let end = cap(ply.ends.1, last.0, last.1, t);
        let mut outline = beside(&line, -half);
        outline.extend(end.iter().copied());
        outline.extend(beside(&line, half).into_iter().rev());
        outline.extend(begin.iter().copied());
        layer.area(Some(part), closed(&on(outline)), ply.reverse, None);
        let (inner, outer) = if ply.face_left {
            (half * (1.0 - 2.0 * FACE), half)
        } else {
            (-half, -half * (1.0 - 2.0 * FACE))
        };
        layer.area(
            Some(part),
            closed(&on(band(&line, inner, outer))),
            ply.face,
            None,
        );
        pale_edges(layer, ply, &line, &on);
        let ink = Stroke::plain(INK, Length::mm(look.line));
        for side in [-half, half] {
            layer.line(None, open(&on(beside(&line, side))), ink);
        }
        for (kind, cap) in [(ply.ends.0, begin), (ply.ends.1, end)] {
            let stroke = match kind {
                End::GoesOn => Stroke::plain(QUIET, Length::mm(look.line * 0.8)),
                End::Selvedge => Stroke::plain(INK, Length::mm(look.line * 1.6)),
                End::Raw | End::Overedged => ink,
            };
            layer.line(None, open(&on(cap)), stroke);
        }
    }
}

/// The finished edge of a cloth is woven in undyed yarn: paler over its last few millimetres.
fn pale_edges(
    layer: &mut Layer,
    ply: &SectionPly,
    line: &[(Point, Vec2)],
    on: &dyn Fn(Vec<Point>) -> Vec<Point>,
) {
    let half = ply.thickness.to_mm() / 2.0;
    let mut pale = |p: Point, out: Vec2| {
        let outline = band(&[(p - out * SELVEDGE_MM, out), (p, out)], -half, half);
        let undyed = ply.reverse.mixed(Colour::WHITE, 0.7);
        layer.area(None, closed(&on(outline)), undyed, None);
    };
    match (ply.ends, line.first(), line.last()) {
        ((_, End::Selvedge), _, Some(last)) => pale(last.0, last.1),
        ((End::Selvedge, _), Some(first), _) => pale(first.0, -first.1),
        _ => {}
    }
}

/// The line of an end from the right side of the cloth to its left, looking outwards.
fn cap(kind: End, at: Point, out: Vec2, t: f64) -> Vec<Point> {
    let left = left_of(out) * (t / 2.0);
    let steps = match kind {
        End::Raw => 6,
        End::Overedged => 1,
        End::GoesOn | End::Selvedge => 16,
    };
    (0..=steps)
        .map(|k| {
            let share = f64::from(k) / f64::from(steps);
            let beyond = match kind {
                End::Overedged => 0.0,
                End::Raw if k % 2 == 1 => 0.2,
                End::Raw => 0.0,
                End::GoesOn => 0.28 * (share * 2.0 * std::f64::consts::PI).sin(),
                End::Selvedge => 0.4 * (share * std::f64::consts::PI).sin(),
            };
            at + left * (2.0 * share - 1.0) + out * (beyond * t)
        })
        .collect()
}
