//! What an element of SVG draws.

use geometry::{Affine, Point, Vec2};
use roxmltree::Node;
use svgtypes::{TransformListParser, TransformListToken as Token};

use super::pen::{self, Run, Wrong};
use crate::arcs;
use crate::error::shown;
use crate::grid::is_near;

/// A number of an attribute; zero where it is missing.
fn number(node: Node<'_, '_>, name: &str) -> Result<f64, Wrong> {
    let Some(text) = node.attribute(name) else {
        return Ok(0.0);
    };
    let text = text.trim();
    let number: Option<f64> = text.strip_suffix("px").unwrap_or(text).parse().ok();
    number.filter(|v| v.is_finite()).ok_or_else(|| {
        Wrong::Data(format!(
            "{name} is `{}`, not a number of the viewBox",
            shown(text)
        ))
    })
}

/// The transform of an element.
pub(super) fn transform(node: Node<'_, '_>) -> Result<Affine, Wrong> {
    let Some(text) = node.attribute("transform") else {
        return Ok(Affine::IDENTITY);
    };
    let mut map = Affine::IDENTITY;
    for token in TransformListParser::from(text) {
        map *= match token.map_err(|why| Wrong::Data(why.to_string()))? {
            Token::Matrix { a, b, c, d, e, f } => Affine::new([a, b, c, d, e, f]),
            Token::Translate { tx, ty } => Affine::translate(Vec2::new(tx, ty)),
            Token::Scale { sx, sy } => Affine::scale_non_uniform(sx, sy),
            Token::Rotate { angle } => Affine::rotate(angle.to_radians()),
            Token::SkewX { angle } => Affine::skew(angle.to_radians().tan(), 0.0),
            Token::SkewY { angle } => Affine::skew(0.0, angle.to_radians().tan()),
        };
    }
    if map.as_coeffs().iter().all(|v| v.is_finite()) {
        Ok(map)
    } else {
        Err(Wrong::Far)
    }
}

/// The lines an element draws, in millimetres of the sheet; none for one that draws no line.
pub(super) fn runs(node: Node<'_, '_>, map: Affine, most: usize) -> Result<Vec<Run>, Wrong> {
    let runs = match node.tag_name().name() {
        "path" => pen::runs(node.attribute("d").unwrap_or(""), map, most)?,
        "polyline" | "polygon" => {
            let closed = node.tag_name().name() == "polygon";
            let points = points(node.attribute("points").unwrap_or(""))?;
            vec![(points.into_iter().map(|p| map * p).collect(), closed)]
        }
        "line" => {
            let a = Point::new(number(node, "x1")?, number(node, "y1")?);
            let b = Point::new(number(node, "x2")?, number(node, "y2")?);
            vec![(vec![map * a, map * b], false)]
        }
        "rect" => {
            let (x, y) = (number(node, "x")?, number(node, "y")?);
            let (w, h) = (number(node, "width")?, number(node, "height")?);
            let corners = [(x, y), (x + w, y), (x + w, y + h), (x, y + h)];
            vec![(corners.map(|(x, y)| map * Point::new(x, y)).into(), true)]
        }
        "circle" => {
            let r = number(node, "r")?;
            vec![ellipse(node, Vec2::new(r, r), map)?]
        }
        "ellipse" => vec![ellipse(
            node,
            Vec2::new(number(node, "rx")?, number(node, "ry")?),
            map,
        )?],
        _ => Vec::new(),
    };
    if runs.iter().map(|(line, _)| line.len()).sum::<usize>() > most {
        return Err(Wrong::Long);
    }
    if runs.iter().flat_map(|(line, _)| line).all(|p| is_near(*p)) {
        Ok(runs)
    } else {
        Err(Wrong::Far)
    }
}

fn ellipse(node: Node<'_, '_>, radii: Vec2, map: Affine) -> Result<Run, Wrong> {
    let centre = Vec2::new(number(node, "cx")?, number(node, "cy")?);
    let to_ellipse = map * Affine::translate(centre) * Affine::scale_non_uniform(radii.x, radii.y);
    let scale = radii.x.abs().max(radii.y.abs()) * map.determinant().abs().sqrt();
    if !scale.is_finite() {
        return Err(Wrong::Far);
    }
    let points = arcs::arc(
        Point::ORIGIN,
        Vec2::new(1.0, 0.0),
        std::f64::consts::TAU,
        scale,
    );
    Ok((points.into_iter().map(|p| to_ellipse * p).collect(), true))
}

/// Where a circle has its middle.
pub(super) fn centre(node: Node<'_, '_>, map: Affine) -> Result<Point, Wrong> {
    near(map * Point::new(number(node, "cx")?, number(node, "cy")?))
}

/// Where a text begins.
pub(super) fn text_at(node: Node<'_, '_>, map: Affine) -> Result<Point, Wrong> {
    near(map * Point::new(number(node, "x")?, number(node, "y")?))
}

/// A place that an attribute gives as two numbers.
pub(super) fn near(p: Point) -> Result<Point, Wrong> {
    if is_near(p) { Ok(p) } else { Err(Wrong::Far) }
}

/// Numbers of an attribute, between spaces or commas.
pub(super) fn numbers(text: &str) -> Result<Vec<f64>, Wrong> {
    text.split([' ', ',', '\n', '\t', '\r'])
        .filter(|word| !word.is_empty())
        .map(|word| {
            let number: Option<f64> = word.parse().ok();
            let number = number.filter(|v| v.is_finite());
            number.ok_or_else(|| Wrong::Data(format!("`{}` is not a number", shown(word))))
        })
        .collect()
}

fn points(text: &str) -> Result<Vec<Point>, Wrong> {
    let numbers = numbers(text)?;
    let pairs = numbers.chunks_exact(2);
    Ok(pairs
        .filter_map(|pair| Some(Point::new(*pair.first()?, *pair.get(1)?)))
        .collect())
}
