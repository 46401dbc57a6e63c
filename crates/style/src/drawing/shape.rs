//! What an element draws, as lines.

use std::ops::Range;

use roxmltree::Node;
use svgtypes::{
    Length as Written, LengthUnit, PointsParser, SimplePathSegment, SimplifyingPathParser, ViewBox,
};
use trade::Length;

use super::drawn_line::{DrawnLine, DrawnStep, FARTHEST_MM, MOST_STEPS, Problem, Spot};
use crate::reader::short;

/// The handle of a curve that makes a quarter of a circle, as a share of its radius (the usual approximation, off by less
/// than a three-thousandth).
const QUARTER: f64 = 0.552_284_749_8;

/// An affine map: a point (x, y) goes to (a·x + c·y + e, b·x + d·y + f).
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Map(pub [f64; 6]);

impl Default for Map {
    fn default() -> Self {
        Self([1.0, 0.0, 0.0, 1.0, 0.0, 0.0])
    }
}

impl Map {
    /// This map with another inside it.
    pub fn then(self, inner: Self) -> Self {
        let [a, b, c, d, e, f] = self.0;
        let [a2, b2, c2, d2, e2, f2] = inner.0;
        Self([
            a * a2 + c * b2,
            b * a2 + d * b2,
            a * c2 + c * d2,
            b * c2 + d * d2,
            a * e2 + c * f2 + e,
            b * e2 + d * f2 + f,
        ])
    }

    fn spot(self, x: f64, y: f64) -> Option<Spot> {
        let [a, b, c, d, e, f] = self.0;
        let (x, y) = (a * x + c * y + e, b * x + d * y + f);
        let near = |v: f64| v.abs() <= FARTHEST_MM;
        (near(x) && near(y)).then(|| [Length::mm(x), Length::mm(y)])
    }
}

/// The map of a drawing that states its true size: from its units to millimetres. Without one a unit is a millimetre.
pub(super) fn true_size(root: Node<'_, '_>) -> Result<Map, Problem> {
    let size = |name: &str| {
        let written: Written = root.attribute(name)?.trim().parse().ok()?;
        let length = match written.unit {
            LengthUnit::Mm => Length::mm(written.number),
            LengthUnit::Cm => Length::cm(written.number),
            LengthUnit::In => Length::inches(written.number),
            _ => return None,
        };
        (length > Length::ZERO).then(|| length.to_mm())
    };
    let view: Option<ViewBox> = root
        .attribute("viewBox")
        .and_then(|v| v.trim().parse().ok());
    let (Some(view), Some(width), Some(height)) = (view, size("width"), size("height")) else {
        return Ok(Map::default());
    };
    let (across, down) = (width / view.w, height / view.h);
    if !(across.is_finite() && down.is_finite()) || (across / down - 1.0).abs() > 0.01 {
        let message = "width, height and viewBox stretch the drawing".to_owned();
        let hint = "state its true size in the proportions of its viewBox, such as width=\"75mm\" height=\"55mm\" viewBox=\"0 0 75 55\"";
        let range = root
            .attribute_node("viewBox")
            .map_or(root.range(), |a| a.range());
        return Err((range, "style::unfit-art", message, hint));
    }
    Ok(Map([across, 0.0, 0.0, across, 0.0, 0.0]))
}

/// The lines an element draws; none for one that only holds others.
pub(super) fn lines(
    node: Node<'_, '_>,
    map: Map,
    steps: &mut usize,
) -> Result<Vec<DrawnLine>, Problem> {
    let mut pen = Pen {
        map,
        span: node.range(),
        steps,
        out: Vec::new(),
        last: (0.0, 0.0),
        began: (0.0, 0.0),
    };
    match node.tag_name().name() {
        "path" => path(node, &mut pen)?,
        "polyline" | "polygon" => many(node, &mut pen)?,
        "line" => {
            let at = |name| number(node, name);
            pen.go(at("x1")?.0, at("y1")?.0)?;
            pen.straight(at("x2")?.0, at("y2")?.0)?;
        }
        "rect" => rect(node, &mut pen)?,
        "circle" => {
            let r = number(node, "r")?.0;
            round(node, &mut pen, r, r)?;
        }
        "ellipse" => {
            let (rx, ry) = (number(node, "rx")?.0, number(node, "ry")?.0);
            round(node, &mut pen, rx, ry)?;
        }
        _ => {}
    }
    let mut out = pen.out;
    out.retain(|line| !line.steps.is_empty());
    Ok(out)
}

/// Draws lines, counting their steps and never leaving what is near.
struct Pen<'a> {
    map: Map,
    span: Range<usize>,
    steps: &'a mut usize,
    out: Vec<DrawnLine>,
    last: (f64, f64),
    began: (f64, f64),
}

impl Pen<'_> {
    fn spot(&self, x: f64, y: f64) -> Result<Spot, Problem> {
        self.map.spot(x, y).ok_or_else(|| {
            let message =
                format!("the path leaves the {FARTHEST_MM} mm around the pocket's corner");
            let hint = "one unit of the drawing is one millimetre: scale it down";
            (self.span.clone(), "style::unfit-art", message, hint)
        })
    }

    fn count(&mut self) -> Result<(), Problem> {
        *self.steps += 1;
        if *self.steps > MOST_STEPS {
            let message = format!("the drawing has more than {MOST_STEPS} steps");
            let hint = "stitching needs far fewer: simplify the paths";
            return Err((self.span.clone(), "style::unfit-art", message, hint));
        }
        Ok(())
    }

    fn go(&mut self, x: f64, y: f64) -> Result<(), Problem> {
        self.count()?;
        let from = self.spot(x, y)?;
        self.out.push(DrawnLine {
            from,
            steps: Vec::new(),
            closed: false,
        });
        (self.last, self.began) = ((x, y), (x, y));
        Ok(())
    }

    fn step(&mut self, step: DrawnStep, to: (f64, f64)) {
        self.last = to;
        if let Some(line) = self.out.last_mut() {
            line.steps.push(step);
        }
    }

    fn straight(&mut self, x: f64, y: f64) -> Result<(), Problem> {
        self.count()?;
        let step = DrawnStep::Straight(self.spot(x, y)?);
        self.step(step, (x, y));
        Ok(())
    }

    fn curve(&mut self, a: (f64, f64), b: (f64, f64), to: (f64, f64)) -> Result<(), Problem> {
        self.count()?;
        let (one, other) = (self.spot(a.0, a.1)?, self.spot(b.0, b.1)?);
        let step = DrawnStep::Curve(one, other, self.spot(to.0, to.1)?);
        self.step(step, to);
        Ok(())
    }

    fn close(&mut self) -> Result<(), Problem> {
        if let Some(line) = self.out.last_mut() {
            line.closed = true;
        }
        if self.last == self.began {
            return self.count();
        }
        self.straight(self.began.0, self.began.1)
    }
}

fn path(node: Node<'_, '_>, pen: &mut Pen<'_>) -> Result<(), Problem> {
    let Some(data) = node.attribute_node("d") else {
        let hint = "write d=\"M 20 60 L 130 60\", or take the path out";
        let message = "a <path> has no `d`".to_owned();
        return Err((node.range(), "style::unfit-art", message, hint));
    };
    pen.span = data.range();
    for segment in SimplifyingPathParser::from(data.value()) {
        let segment = segment.map_err(|error| {
            let hint = "a path begins with M and a place: \"M 20 60 L 130 60\"";
            let message = format!("`d`: {}", short(&error.to_string()));
            (data.range(), "style::unreadable-art", message, hint)
        })?;
        match segment {
            SimplePathSegment::MoveTo { x, y } => pen.go(x, y)?,
            SimplePathSegment::LineTo { x, y } => pen.straight(x, y)?,
            SimplePathSegment::CurveTo {
                x1,
                y1,
                x2,
                y2,
                x,
                y,
            } => pen.curve((x1, y1), (x2, y2), (x, y))?,
            SimplePathSegment::Quadratic { x1, y1, x, y } => {
                // The same curve as a cubic: its handles reach two thirds of the way.
                let handle = |(a, b): (f64, f64)| (a + (x1 - a) / 1.5, b + (y1 - b) / 1.5);
                pen.curve(handle(pen.last), handle((x, y)), (x, y))?;
            }
            SimplePathSegment::ClosePath => pen.close()?,
        }
    }
    Ok(())
}

fn many(node: Node<'_, '_>, pen: &mut Pen<'_>) -> Result<(), Problem> {
    let Some(points) = node.attribute_node("points") else {
        return Ok(());
    };
    pen.span = points.range();
    for (k, (x, y)) in PointsParser::from(points.value()).enumerate() {
        if k == 0 {
            pen.go(x, y)?;
        } else {
            pen.straight(x, y)?;
        }
    }
    if node.tag_name().name() == "polygon" && !pen.out.is_empty() {
        pen.close()?;
    }
    Ok(())
}

/// A number of an attribute, and whether it is there; zero where it is not.
fn number(node: Node<'_, '_>, name: &str) -> Result<(f64, bool), Problem> {
    let Some(attribute) = node.attribute_node(name) else {
        return Ok((0.0, false));
    };
    let text = attribute.value().trim();
    let number: Option<f64> = text.strip_suffix("px").unwrap_or(text).parse().ok();
    match number.filter(|v| v.is_finite()) {
        Some(number) => Ok((number, true)),
        None if text == "auto" => Ok((0.0, false)),
        None => Err((
            attribute.range(),
            "style::unreadable-art",
            format!(
                "`{name}` is \"{}\", not a number of the drawing's units",
                short(text)
            ),
            "write it as a plain number",
        )),
    }
}

fn rect(node: Node<'_, '_>, pen: &mut Pen<'_>) -> Result<(), Problem> {
    let of = |name| number(node, name);
    let (x, y, w, h) = (of("x")?.0, of("y")?.0, of("width")?.0, of("height")?.0);
    if w <= 0.0 || h <= 0.0 {
        return Ok(());
    }
    // One radius stands for both where the other is not said (SVG 2, 10.2).
    let (rx, ry) = match (of("rx")?, of("ry")?) {
        ((rx, true), (ry, true)) => (rx, ry),
        ((rx, true), _) => (rx, rx),
        (_, (ry, _)) => (ry, ry),
    };
    let (rx, ry) = (rx.clamp(0.0, w / 2.0), ry.clamp(0.0, h / 2.0));
    if rx <= 0.0 || ry <= 0.0 {
        pen.go(x, y)?;
        pen.straight(x + w, y)?;
        pen.straight(x + w, y + h)?;
        pen.straight(x, y + h)?;
        return pen.close();
    }
    let (kx, ky) = (rx * (1.0 - QUARTER), ry * (1.0 - QUARTER));
    let (r, b) = (x + w, y + h);
    pen.go(x + rx, y)?;
    pen.straight(r - rx, y)?;
    pen.curve((r - kx, y), (r, y + ky), (r, y + ry))?;
    pen.straight(r, b - ry)?;
    pen.curve((r, b - ky), (r - kx, b), (r - rx, b))?;
    pen.straight(x + rx, b)?;
    pen.curve((x + kx, b), (x, b - ky), (x, b - ry))?;
    pen.straight(x, y + ry)?;
    pen.curve((x, y + ky), (x + kx, y), (x + rx, y))?;
    pen.close()
}

fn round(node: Node<'_, '_>, pen: &mut Pen<'_>, rx: f64, ry: f64) -> Result<(), Problem> {
    let (cx, cy) = (number(node, "cx")?.0, number(node, "cy")?.0);
    if rx <= 0.0 || ry <= 0.0 {
        return Ok(());
    }
    let (kx, ky) = (rx * QUARTER, ry * QUARTER);
    let at = |x: f64, y: f64| (cx + x, cy + y);
    pen.go(cx + rx, cy)?;
    pen.curve(at(rx, ky), at(kx, ry), at(0.0, ry))?;
    pen.curve(at(-kx, ry), at(-rx, ky), at(-rx, 0.0))?;
    pen.curve(at(-rx, -ky), at(-kx, -ry), at(0.0, -ry))?;
    pen.curve(at(kx, -ry), at(rx, -ky), at(rx, 0.0))?;
    pen.close()
}
