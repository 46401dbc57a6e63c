//! A DXF file as a pattern.

use std::collections::{BTreeMap, BTreeSet};

use geometry::{Affine, Point, Vec2};
use trade::{Angle, Length};

use super::drawing::{self, Drawing};
use super::entity::{Budget, Entity, Shape};
use super::groups::decoded;
use super::piece;
use crate::arcs;
use crate::error::{ReadError, shown};
use crate::grid::{is_near, line_on_grid, on_grid, on_grid_angle};
use crate::limits::{DEEPEST, MOST_PIECES};
use crate::model::{PatternFile, Read};

/// What one unit of a file is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FileUnit {
    /// A millimetre.
    Millimetre,
    /// A centimetre.
    Centimetre,
    /// A metre.
    Metre,
    /// An inch.
    Inch,
}

impl FileUnit {
    /// How long it is.
    pub const fn length(self) -> Length {
        match self {
            FileUnit::Millimetre => Length::mm(1.0),
            FileUnit::Centimetre => Length::cm(1.0),
            FileUnit::Metre => Length::m(1.0),
            FileUnit::Inch => Length::inches(1.0),
        }
    }
}

/// Reads a DXF file. Its unit is the `stated` one; else what its text `Units:` says (METRIC is the
/// millimetre, ENGLISH the inch), else `$INSUNITS`, else `$MEASUREMENT` of its header.
///
/// Where the pieces are placed among the entities is their arrangement and is passed over; how they are
/// turned, mirrored and scaled there is kept. A file without blocks is read as loose lines: each outermost
/// closed line is a piece, named by the text inside it.
///
/// # Errors
/// The first thing that is wrong, with its line; nothing is half read.
pub fn read(bytes: &[u8], stated: Option<FileUnit>) -> Result<Read, ReadError> {
    let text = decoded(bytes)?;
    let mut budget = Budget::default();
    let drawing = drawing::read(&text, &mut budget)?;
    let mut pattern = PatternFile::default();
    let unit = style_texts(&drawing, &mut pattern, stated)?;
    let mut reading = Reading {
        drawing: &drawing,
        budget,
        passed: BTreeMap::new(),
    };
    let scale = Affine::scale(unit.length().to_mm());
    pieces(&mut reading, scale, &mut pattern)?;
    if pattern.pieces.is_empty() {
        let flats = reading.flattened(&drawing.entities, scale, None)?;
        pattern.pieces = super::loose::pieces(flats, &mut reading.passed)?;
    }
    if pattern.pieces.is_empty() {
        return Err(ReadError::whole(
            "there is no piece in it",
            "draw each piece as a closed POLYLINE on layer 1 of a block of its own, and insert the block",
        ));
    }
    let passed_over = reading
        .passed
        .iter()
        .map(|(what, n)| format!("{n} × {what}"));
    Ok(Read {
        pattern,
        passed_over: passed_over.collect(),
    })
}

/// Takes what the texts among the entities say of the style, and finds the unit.
fn style_texts(
    drawing: &Drawing,
    pattern: &mut PatternFile,
    stated: Option<FileUnit>,
) -> Result<FileUnit, ReadError> {
    let mut units = None;
    for entity in &drawing.entities {
        let Shape::Text(_, _, words) = &entity.shape else {
            continue;
        };
        let Some((key, value)) = words.split_once(':') else {
            continue;
        };
        let value = value.trim();
        match key.trim().to_ascii_lowercase().as_str() {
            "style name" => pattern.style = value.to_owned(),
            "author" => pattern.author = value.to_owned(),
            "creation date" => pattern.date = value.to_owned(),
            "sample size" => pattern.sample_size = value.to_owned(),
            "units" => units = Some((entity.line, value.to_owned())),
            _ => {}
        }
    }
    if let Some(unit) = stated {
        return Ok(unit);
    }
    if let Some((line, word)) = units {
        return match word.to_ascii_uppercase().as_str() {
            "METRIC" => Ok(FileUnit::Millimetre),
            "ENGLISH" => Ok(FileUnit::Inch),
            _ => Err(ReadError::line(
                line,
                format!("the units are `{}`", shown(&word)),
                "write Units: METRIC for millimetres or Units: ENGLISH for inches",
            )),
        };
    }
    match (drawing.insunits, drawing.measurement) {
        (Some(1), _) => Ok(FileUnit::Inch),
        (Some(4), _) => Ok(FileUnit::Millimetre),
        (Some(5), _) => Ok(FileUnit::Centimetre),
        (Some(6), _) => Ok(FileUnit::Metre),
        (_, Some(0)) => Ok(FileUnit::Inch),
        (_, Some(1)) => Ok(FileUnit::Millimetre),
        _ => Err(ReadError::whole(
            "it does not say its units",
            "add a text Units: METRIC (millimetres) or Units: ENGLISH (inches) among its entities",
        )),
    }
}

/// Reads each block that is used among the entities, or every block where none is.
fn pieces(
    reading: &mut Reading<'_>,
    scale: Affine,
    pattern: &mut PatternFile,
) -> Result<(), ReadError> {
    let drawing = reading.drawing;
    let mut seen = BTreeSet::new();
    let mut used: Vec<(&str, Affine)> = Vec::new();
    for entity in &drawing.entities {
        let Shape::Insert {
            block,
            scale: (x, y),
            degrees,
            ..
        } = &entity.shape
        else {
            continue;
        };
        if !drawing.blocks.contains_key(block) {
            return Err(ReadError::line(
                entity.line,
                format!("there is no block {}", shown(block)),
                "insert a block that the section BLOCKS holds",
            ));
        }
        if seen.insert((block, x.to_bits(), y.to_bits(), degrees.to_bits())) {
            let turn = Affine::rotate(degrees.to_radians());
            used.push((block, scale * turn * Affine::scale_non_uniform(*x, *y)));
        }
    }
    if used.is_empty() {
        let all = drawing.blocks.keys().filter(|name| !name.starts_with('*'));
        used = all.map(|name| (name.as_str(), scale)).collect();
    }
    for (name, map) in used {
        let Some(block) = drawing.blocks.get(name) else {
            continue;
        };
        let flats = reading.flattened(&block.entities, map, Some(name))?;
        match piece::build(name, block.line, flats, &mut reading.passed)? {
            Some(piece) => pattern.pieces.push(piece),
            None => pass(&mut reading.passed, "block without a piece"),
        }
        if pattern.pieces.len() > MOST_PIECES {
            return Err(ReadError::line(
                block.line,
                format!("more than {MOST_PIECES} pieces up to here"),
                "write fewer sizes into one file",
            ));
        }
    }
    Ok(())
}

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

struct Reading<'a> {
    drawing: &'a Drawing,
    budget: Budget,
    passed: Passed,
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
    fn flattened(
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
