//! Entities: what is drawn in a DXF file, as far as patterns use it.

use geometry::Point;

use super::groups::{Group, Groups};
use crate::error::{ReadError, shown};
use crate::limits::{LONGEST_TEXT, MOST_ENTITIES, MOST_POINTS};

/// Something drawn.
#[derive(Clone, Debug)]
pub(super) struct Entity {
    /// The line of the file on which it begins.
    pub line: usize,
    pub layer: String,
    pub shape: Shape,
}

/// What is drawn, in the units of the file.
#[derive(Clone, Debug)]
pub(super) enum Shape {
    Line(Point, Point),
    /// Vertices, each with the bulge of the side that follows it.
    Polyline(Vec<(Point, f64)>, bool),
    /// Centre, radius, and from where to where anticlockwise, in degrees.
    Arc(Point, f64, f64, f64),
    Circle(Point, f64),
    Point {
        at: Point,
        thickness: f64,
        degrees: Option<f64>,
    },
    /// Where it begins, how it runs in degrees, and its words.
    Text(Point, f64, String),
    Insert {
        block: String,
        at: Point,
        scale: (f64, f64),
        degrees: f64,
    },
    /// What is not read, by its name.
    Other(String),
}

/// What has been read so far, against what may be.
#[derive(Default)]
pub(super) struct Budget {
    points: usize,
    entities: usize,
}

impl Budget {
    pub fn entity(&mut self, line: usize) -> Result<(), ReadError> {
        self.entities += 1;
        self.holds(line, self.entities, MOST_ENTITIES, "entities")
    }

    pub fn points(&mut self, line: usize, more: usize) -> Result<(), ReadError> {
        self.points = self.points.saturating_add(more);
        self.holds(line, self.points, MOST_POINTS, "points")
    }

    fn holds(&self, line: usize, now: usize, most: usize, what: &str) -> Result<(), ReadError> {
        if now <= most {
            return Ok(());
        }
        Err(ReadError::line(
            line,
            format!("more than {most} {what} up to here"),
            "write fewer sizes into one file",
        ))
    }
}

/// The groups of one entity.
struct Fields<'a> {
    groups: Vec<Group<'a>>,
}

impl<'a> Fields<'a> {
    fn read(groups: &mut Groups<'a>, budget: &mut Budget) -> Result<Self, ReadError> {
        let mut out = Vec::new();
        while let Some(group) = groups.next_within()? {
            if out.len() % 3 == 2 {
                budget.points(group.line, 1)?;
            }
            out.push(group);
        }
        Ok(Fields { groups: out })
    }

    fn find(&self, code: i32) -> Option<&Group<'a>> {
        self.groups.iter().find(|g| g.code == code)
    }

    fn real(&self, code: i32) -> Result<Option<f64>, ReadError> {
        self.find(code).map(Group::real).transpose()
    }

    fn real_or(&self, code: i32, other: f64) -> Result<f64, ReadError> {
        Ok(self.real(code)?.unwrap_or(other))
    }

    fn whole_or(&self, code: i32, other: i64) -> Result<i64, ReadError> {
        Ok(self
            .find(code)
            .map(Group::whole)
            .transpose()?
            .unwrap_or(other))
    }

    fn point(&self, x: i32, at: usize, what: &str) -> Result<Point, ReadError> {
        let part = |code: i32| {
            self.real(code)?.ok_or_else(|| {
                ReadError::line(
                    at,
                    format!("this {what} has no group {code}"),
                    "a place is given by its x (10, 11) and y (20, 21)",
                )
            })
        };
        Ok(Point::new(part(x)?, part(x + 10)?))
    }

    fn layer(&self) -> String {
        let layer = self.find(8).map_or("0", |g| g.value.trim());
        layer.chars().take(LONGEST_TEXT).collect()
    }

    /// Whether the entity is drawn seen from behind (extrusion towards -z).
    fn is_from_behind(&self) -> Result<bool, ReadError> {
        Ok(self.real_or(230, 1.0)? < 0.0)
    }
}

/// Reads the entity whose name was just read.
pub(super) fn read<'a>(
    name: &Group<'a>,
    groups: &mut Groups<'a>,
    budget: &mut Budget,
) -> Result<Entity, ReadError> {
    let line = name.line;
    budget.entity(line)?;
    let kind = name.value.trim();
    let fields = Fields::read(groups, budget)?;
    let mut shape = match kind {
        "LINE" => Shape::Line(
            fields.point(10, line, "LINE")?,
            fields.point(11, line, "LINE")?,
        ),
        "POLYLINE" => polyline(&fields, groups, budget)?,
        "LWPOLYLINE" => light_polyline(&fields)?,
        "ARC" => Shape::Arc(
            fields.point(10, line, "ARC")?,
            radius(&fields, line)?,
            fields.real_or(50, 0.0)?,
            fields.real_or(51, 360.0)?,
        ),
        "CIRCLE" => Shape::Circle(fields.point(10, line, "CIRCLE")?, radius(&fields, line)?),
        "POINT" => Shape::Point {
            at: fields.point(10, line, "POINT")?,
            thickness: fields.real_or(39, 0.0)?,
            degrees: fields.real(50)?,
        },
        "TEXT" | "MTEXT" => Shape::Text(
            fields.point(10, line, kind)?,
            fields.real_or(50, 0.0)?,
            words(&fields, kind),
        ),
        "INSERT" => insert(&fields, line)?,
        other => Shape::Other(shown(other)),
    };
    if fields.is_from_behind()? {
        turn_over(&mut shape);
    }
    Ok(Entity {
        line,
        layer: fields.layer(),
        shape,
    })
}

fn radius(fields: &Fields<'_>, line: usize) -> Result<f64, ReadError> {
    let radius = fields.real(40)?.filter(|r| *r > 0.0);
    radius.ok_or_else(|| {
        ReadError::line(
            line,
            "this curve has no radius above zero",
            "give its radius as group 40",
        )
    })
}

fn insert(fields: &Fields<'_>, line: usize) -> Result<Shape, ReadError> {
    let block = fields.find(2).map(|g| g.value.trim().to_owned());
    let block = block.ok_or_else(|| {
        ReadError::line(
            line,
            "this INSERT names no block",
            "give the block's name as group 2",
        )
    })?;
    Ok(Shape::Insert {
        block,
        at: Point::new(fields.real_or(10, 0.0)?, fields.real_or(20, 0.0)?),
        scale: (fields.real_or(41, 1.0)?, fields.real_or(42, 1.0)?),
        degrees: fields.real_or(50, 0.0)?,
    })
}

/// Bits of group 70 of a POLYLINE and of its vertices.
const CLOSED: i64 = 1;
const MESH: i64 = 16 | 64;
const FRAME_OF_SPLINE: i64 = 16;

fn polyline<'a>(
    fields: &Fields<'a>,
    groups: &mut Groups<'a>,
    budget: &mut Budget,
) -> Result<Shape, ReadError> {
    let flags = fields.whole_or(70, 0)?;
    let mut vertices = Vec::new();
    loop {
        let name = groups.next()?;
        let line = name.line;
        match name.value.trim() {
            "VERTEX" if name.code == 0 => {
                let vertex = Fields::read(groups, budget)?;
                budget.points(line, 1)?;
                if vertex.whole_or(70, 0)? & FRAME_OF_SPLINE == 0 {
                    vertices.push((vertex.point(10, line, "VERTEX")?, vertex.real_or(42, 0.0)?));
                }
            }
            "SEQEND" if name.code == 0 => {
                Fields::read(groups, budget)?;
                break;
            }
            other => {
                return Err(ReadError::line(
                    line,
                    format!(
                        "a VERTEX or SEQEND should stand here, and there is `{}`",
                        shown(other)
                    ),
                    "a POLYLINE ends with SEQEND",
                ));
            }
        }
    }
    if flags & MESH != 0 {
        return Ok(Shape::Other("POLYLINE that is a mesh".to_owned()));
    }
    Ok(Shape::Polyline(vertices, flags & CLOSED != 0))
}

fn light_polyline(fields: &Fields<'_>) -> Result<Shape, ReadError> {
    let mut vertices: Vec<(Point, f64)> = Vec::new();
    let mut x = None;
    for group in &fields.groups {
        match group.code {
            10 => x = Some(group.real()?),
            20 => {
                let y = group.real()?;
                let x = x.take().ok_or_else(|| {
                    ReadError::line(
                        group.line,
                        "this y has no x before it",
                        "write group 10 and then 20",
                    )
                })?;
                vertices.push((Point::new(x, y), 0.0));
            }
            42 => {
                if let Some(last) = vertices.last_mut() {
                    last.1 = group.real()?;
                }
            }
            _ => {}
        }
    }
    Ok(Shape::Polyline(
        vertices,
        fields.whole_or(70, 0)? & CLOSED != 0,
    ))
}

/// The words of a text: what DXF writes as `\U+00E9` is one letter, a new line is a space.
fn words(fields: &Fields<'_>, kind: &str) -> String {
    let is_part = |g: &&Group<'_>| g.code == 1 || (g.code == 3 && kind == "MTEXT");
    let raw: String = fields
        .groups
        .iter()
        .filter(is_part)
        .map(|g| g.value)
        .collect();
    let raw = if kind == "MTEXT" {
        raw.replace("\\P", " ")
    } else {
        raw
    };
    let mut out = String::new();
    let mut rest = raw.as_str();
    while let Some(at) = rest.find("\\U+") {
        let (before, mut codes) = rest.split_at(at);
        out.push_str(before);
        // Letters beyond the first 65 536 are two codes in a row.
        let mut units = Vec::new();
        while let Some((unit, after)) = unit(codes) {
            units.push(unit);
            codes = after;
        }
        if units.is_empty() {
            out.push_str("\\U+");
            codes = codes.get(3..).unwrap_or("");
        }
        out.push_str(&String::from_utf16_lossy(&units));
        rest = codes;
    }
    out.push_str(rest);
    let out = crate::words::one_line(&out);
    out.chars()
        .take(LONGEST_TEXT)
        .collect::<String>()
        .trim_end()
        .to_owned()
}

/// The code at the beginning of a text, and what follows it.
fn unit(text: &str) -> Option<(u16, &str)> {
    let code = text.strip_prefix("\\U+")?;
    let unit = u16::from_str_radix(code.get(..4)?, 16).ok()?;
    Some((unit, code.get(4..)?))
}

fn turn_over(shape: &mut Shape) {
    let over = |p: &mut Point| p.x = -p.x;
    match shape {
        Shape::Line(a, b) => {
            over(a);
            over(b);
        }
        Shape::Polyline(vertices, _) => {
            for (p, bulge) in vertices {
                over(p);
                *bulge = -*bulge;
            }
        }
        Shape::Arc(centre, _, from, to) => {
            over(centre);
            (*from, *to) = (180.0 - *to, 180.0 - *from);
        }
        Shape::Circle(p, _) => over(p),
        Shape::Text(p, degrees, _) => {
            over(p);
            *degrees = 180.0 - *degrees;
        }
        Shape::Point { at, degrees, .. } => {
            over(at);
            *degrees = degrees.map(|d| 180.0 - d);
        }
        Shape::Insert {
            at, scale, degrees, ..
        } => {
            over(at);
            scale.0 = -scale.0;
            *degrees = -*degrees;
        }
        Shape::Other(_) => {}
    }
}
