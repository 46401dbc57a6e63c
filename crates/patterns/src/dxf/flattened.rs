//! Entities of a drawing taken apart: in millimetres on the grid, blocks within blocks resolved.

use std::collections::BTreeMap;

use geometry::{Affine, Point, Vec2};
use trade::{Angle, Length};

use super::drawing::Drawing;
use super::entity::{Budget, Entity, Shape};
use crate::arcs;
use crate::error::{ReadError, shown};
use crate::grid::{is_near, line_on_grid, on_grid, on_grid_angle};
use crate::limits::DEEPEST;

/// What was passed over, counted.
pub(super) type Passed = BTreeMap<String, usize>;

/// Counts something that is passed over. Past a hundred kinds they are no longer told apart.
pub(super) fn pass(passed: &mut Passed, what: &str) {
    let what = if passed.len() < 100 || passed.contains_key(what) {
        what
    } else {
        "something else"
    };
    *passed.entry(what.to_owned()).or_default() += 1;
}

/// An entity in millimetres on the grid, blocks within blocks taken apart.
pub(super) struct Flat {
    pub line: usize,
    /// The layer, where its name is a number.
    pub layer: Option<u32>,
    pub layer_name: String,
    pub shape: FlatShape,
}

pub(super) enum FlatShape {
    Path {
        points: Vec<Point>,
        closed: bool,
    },
    Point {
        at: Point,
        depth: Length,
        into: Option<Angle>,
    },
    Text {
        at: Point,
        along: Angle,
        words: String,
    },
}

/// A drawing while it is taken apart.
pub(super) struct Reading<'a> {
    pub drawing: &'a Drawing,
    pub budget: Budget,
    pub passed: Passed,
}

/// What is still to be taken apart.
struct Level<'a> {
    entities: std::slice::Iter<'a, Entity>,
    map: Affine,
    layer: Option<&'a str>,
}

impl<'a> Reading<'a> {
    /// Entities in millimetres, in their order. `top` is the block they are of; none for the entities of
    /// the drawing, whose blocks are pieces and not parts.
    pub(super) fn flattened(
        &mut self,
        entities: &'a [Entity],
        map: Affine,
        top: Option<&str>,
    ) -> Result<Vec<Flat>, ReadError> {
        let mut out = Vec::new();
        let mut levels = vec![Level {
            entities: entities.iter(),
            map,
            layer: None,
        }];
        while let Some(level) = levels.last_mut() {
            let Some(entity) = level.entities.next() else {
                levels.pop();
                continue;
            };
            let (map, inherited) = (level.map, level.layer);
            let layer = match (entity.layer.as_str(), inherited) {
                ("0", Some(layer)) => layer,
                (layer, _) => layer,
            };
            match &entity.shape {
                Shape::Insert {
                    block,
                    at,
                    scale: (x, y),
                    degrees,
                } if top.is_some() => {
                    self.budget.entity(entity.line)?;
                    let Some(inner) = self.drawing.blocks.get(block) else {
                        return Err(ReadError::line(
                            entity.line,
                            format!("there is no block {}", shown(block)),
                            "insert a block that the section BLOCKS holds",
                        ));
                    };
                    if levels.len() >= DEEPEST {
                        return Err(ReadError::line(
                            entity.line,
                            format!("blocks lie more than {DEEPEST} deep in each other here"),
                            "a block must not hold itself; take the blocks apart",
                        ));
                    }
                    let map = map
                        * Affine::translate(at.to_vec2())
                        * Affine::rotate(degrees.to_radians())
                        * Affine::scale_non_uniform(*x, *y)
                        * Affine::translate(-inner.base.to_vec2());
                    levels.push(Level {
                        entities: inner.entities.iter(),
                        map,
                        layer: Some(layer),
                    });
                }
                Shape::Insert { .. } => {}
                Shape::Other(kind) => pass(&mut self.passed, kind),
                shape => {
                    self.budget.entity(entity.line)?;
                    out.extend(self.flat(entity.line, layer, shape, map)?);
                }
            }
        }
        Ok(out)
    }

    fn flat(
        &mut self,
        line: usize,
        layer: &str,
        shape: &Shape,
        map: Affine,
    ) -> Result<Option<Flat>, ReadError> {
        let scale = map.determinant().abs().sqrt();
        let shape = match shape {
            Shape::Line(a, b) => path(vec![*a, *b], false, map),
            Shape::Polyline(vertices, closed) => {
                let points = self.bulged(line, vertices, *closed, scale)?;
                path(points, *closed, map)
            }
            Shape::Arc(centre, radius, from, to) => {
                let sweep = arcs::sweep(*from, *to);
                let start = Vec2::from_angle(from.to_radians()) * *radius;
                self.budget
                    .points(line, arcs::chords(radius * scale, sweep))?;
                let mut points = vec![*centre + start];
                points.extend(arcs::arc(*centre, start, sweep, scale));
                path(points, false, map)
            }
            Shape::Circle(centre, radius) => {
                let round = std::f64::consts::TAU;
                self.budget
                    .points(line, arcs::chords(radius * scale, round))?;
                let start = Vec2::new(*radius, 0.0);
                path(arcs::arc(*centre, start, round, scale), true, map)
            }
            Shape::Point {
                at,
                thickness,
                degrees,
            } => FlatShape::Point {
                at: map * *at,
                depth: Length::mm(crate::grid::number_on_grid(thickness.abs() * scale)),
                into: degrees.map(|d| turned(map, d)),
            },
            Shape::Text(_, _, words) if words.is_empty() => return Ok(None),
            Shape::Text(at, degrees, words) => FlatShape::Text {
                at: map * *at,
                along: turned(map, *degrees),
                words: words.clone(),
            },
            Shape::Insert { .. } | Shape::Other(_) => return Ok(None),
        };
        let shape = near(shape).ok_or_else(|| {
            ReadError::line(
                line,
                "this reaches more than 100 m from where the piece begins",
                "check its numbers and the units of the file",
            )
        })?;
        Ok(Some(Flat {
            line,
            layer: layer.parse().ok(),
            layer_name: layer.to_owned(),
            shape,
        }))
    }

    fn bulged(
        &mut self,
        line: usize,
        vertices: &[(Point, f64)],
        closed: bool,
        scale: f64,
    ) -> Result<Vec<Point>, ReadError> {
        let mut out: Vec<Point> = vertices.first().map(|v| v.0).into_iter().collect();
        let next = vertices
            .iter()
            .skip(1)
            .chain(vertices.first().filter(|_| closed));
        for ((a, bulge), (b, _)) in vertices.iter().zip(next) {
            let points = arcs::bulged(*a, *b, *bulge, scale);
            if points.len() > 1 {
                self.budget.points(line, points.len())?;
            }
            out.extend(points);
        }
        Ok(out)
    }
}

/// A direction after the map.
fn turned(map: Affine, degrees: f64) -> Angle {
    let v = Vec2::from_angle(degrees.to_radians());
    let turned = (map * v.to_point()) - (map * Point::ORIGIN);
    on_grid_angle(Angle::rad(turned.atan2()))
}

fn path(points: Vec<Point>, closed: bool, map: Affine) -> FlatShape {
    FlatShape::Path {
        points: points.into_iter().map(|p| map * p).collect(),
        closed,
    }
}

/// The shape on the grid; none where a place is not a number or out of all reach.
fn near(shape: FlatShape) -> Option<FlatShape> {
    Some(match shape {
        FlatShape::Path { points, closed } => {
            if !points.iter().all(|p| is_near(*p)) {
                return None;
            }
            let mut points = line_on_grid(points);
            let meets = points.len() > 3 && points.first() == points.last();
            if (meets || closed) && points.len() > 1 && points.first() == points.last() {
                points.pop();
            }
            FlatShape::Path {
                points,
                closed: closed || meets,
            }
        }
        FlatShape::Point { at, depth, into } if is_near(at) => FlatShape::Point {
            at: on_grid(at),
            depth,
            into,
        },
        FlatShape::Text { at, along, words } if is_near(at) => FlatShape::Text {
            at: on_grid(at),
            along,
            words,
        },
        _ => return None,
    })
}
