//! A piece read back from our own groups.

use geometry::{Affine, Point, Vec2, area};
use roxmltree::Node;
use trade::{Angle, Length};

use super::outline;
use super::pen::Wrong;
use super::read::{Walk, place, words_of};
use super::write::{COPIES, LINES, NOTCHES};
use crate::error::{ReadError, shown};
use crate::grid::{line_on_grid, number_on_grid, on_grid, on_grid_angle, ring_on_grid};
use crate::limits::{MOST_MARKS, MOST_ON_CUT};
use crate::model::{Drill, InnerLine, Named, Notch, Note, Piece, SewLine, TurnPoint};
use crate::words::one_line;

/// What a group holds.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Layer {
    None,
    Cut,
    Cutout,
    Sewn,
    Grain,
    Mirror,
    Inner,
    Notch,
    Drill,
    Point,
    EdgeStart,
    Note,
    Annotation,
}

impl Layer {
    /// The layer of a class; none for a class that is not ours.
    pub fn named(class: &str) -> Option<Layer> {
        Some(match class {
            "cut" => Layer::Cut,
            "cutout" => Layer::Cutout,
            "sewn" => Layer::Sewn,
            "grain" => Layer::Grain,
            "mirror" => Layer::Mirror,
            "inner" => Layer::Inner,
            "notch" => Layer::Notch,
            "drill" => Layer::Drill,
            "point" => Layer::Point,
            "edge-start" => Layer::EdgeStart,
            "note" => Layer::Note,
            "annotation" => Layer::Annotation,
            "title" => Layer::None,
            _ => return None,
        })
    }
}

/// A piece being read, and where on the sheet it has its origin.
pub(super) struct Sheet<'a, 'i> {
    node: Node<'a, 'i>,
    origin: Point,
    piece: Piece,
}

impl<'a, 'i> Sheet<'a, 'i> {
    pub fn new(walk: &Walk<'_, '_>, node: Node<'a, 'i>, map: Affine) -> Result<Self, ReadError> {
        let wrong = |why| walk.wrong(node, why);
        let word = |name: &str| one_line(node.attribute(name).unwrap_or(""));
        let count = |name: &str, other: u32| {
            let Some(text) = node.attribute(name) else {
                return Ok(other);
            };
            let count = text.trim().parse().ok().filter(|n| *n <= 1_000);
            count.ok_or_else(|| {
                let what = format!("{name} is `{}`", shown(text));
                walk.at(node, what, "write how many as a whole number up to 1000")
            })
        };
        let (origin, _) = place(node, "data-origin")
            .map_err(wrong)?
            .unwrap_or_default();
        let origin = outline::near(map * origin).map_err(wrong)?;
        let mut sheet = Sheet {
            node,
            origin,
            piece: Piece {
                name: word("data-name"),
                size: word("data-size"),
                category: word("data-category"),
                material: word("data-material"),
                as_drawn: count("data-as-drawn", 1)?,
                mirrored: count("data-mirrored", 0)?,
                ..Piece::default()
            },
        };
        if let Some((at, along)) = place(node, "data-words").map_err(wrong)? {
            let at = outline::near(map * at).map_err(wrong)?;
            sheet.piece.words_at = sheet.on_piece(at);
            sheet.piece.words_along = turned(map, along);
        }
        Ok(sheet)
    }

    /// A place of the sheet, in the frame of the piece.
    fn on_piece(&self, p: Point) -> Point {
        on_grid(Point::new(p.x - self.origin.x, self.origin.y - p.y))
    }

    fn line(&self, points: Vec<Point>) -> Vec<Point> {
        line_on_grid(points.into_iter().map(|p| self.on_piece(p)))
    }

    fn ring(&self, points: Vec<Point>) -> Vec<Point> {
        ring_on_grid(points.into_iter().map(|p| self.on_piece(p)))
    }

    /// Takes an element of a layer.
    pub fn add(
        &mut self,
        walk: &mut Walk<'_, '_>,
        node: Node<'_, '_>,
        map: Affine,
        layer: Layer,
    ) -> Result<(), ReadError> {
        match (layer, node.tag_name().name()) {
            (Layer::None, _) | (_, "g") => return Ok(()),
            (Layer::Note, "text") => {
                let at = outline::text_at(node, map).map_err(|why| walk.wrong(node, why))?;
                let (at, words) = (self.on_piece(at), words_of(node));
                self.piece.texts.push(Note { words, at });
            }
            (Layer::Annotation, "text") => self.piece.notes.push(words_of(node)),
            (Layer::Notch, _) => {
                let notch = self.notch(node, map).map_err(|why| walk.wrong(node, why))?;
                self.piece.notches.extend(notch);
            }
            (Layer::Drill | Layer::Point | Layer::EdgeStart, "circle") => {
                let at = outline::centre(node, map).map_err(|why| walk.wrong(node, why))?;
                self.mark(node, layer, self.on_piece(at));
            }
            _ => {
                for (points, closed) in walk.runs(node, map)? {
                    self.run(node, layer, points, closed);
                }
            }
        }
        self.not_too_many(walk, node)
    }

    fn not_too_many(&self, walk: &Walk<'_, '_>, node: Node<'_, '_>) -> Result<(), ReadError> {
        let piece = &self.piece;
        let counts = [
            (piece.sewn.len(), "sewn lines"),
            (piece.inner.len(), "inner lines"),
            (piece.notches.len(), "notches"),
            (piece.drills.len(), "drill holes"),
            (piece.texts.len() + piece.notes.len(), "texts"),
        ];
        match counts.iter().find(|(n, _)| *n > MOST_MARKS) {
            None => Ok(()),
            Some((_, what)) => {
                let what = format!("more than {MOST_MARKS} {what} on this piece up to here");
                Err(walk.at(node, what, "give each piece a group of its own"))
            }
        }
    }

    fn run(&mut self, node: Node<'_, '_>, layer: Layer, points: Vec<Point>, closed: bool) {
        let name = one_line(node.attribute("data-name").unwrap_or(""));
        let ends = |line: &[Point]| line.first().copied().zip(line.last().copied());
        match layer {
            Layer::Cut if self.piece.cut.is_empty() => self.piece.cut = self.ring(points),
            Layer::Cut | Layer::Cutout => {
                let ring = self.ring(points);
                self.piece.cutouts.push(ring);
            }
            Layer::Grain => self.piece.grain = ends(&self.line(points)),
            Layer::Mirror => self.piece.mirror = ends(&self.line(points)),
            Layer::Sewn => {
                let line = if closed {
                    self.ring(points)
                } else {
                    self.line(points)
                };
                self.piece.sewn.push(SewLine { name, closed, line });
            }
            Layer::Inner => {
                let mut line = self.line(points);
                if closed && line.first() != line.last() {
                    line.extend(line.first().copied());
                }
                self.piece.inner.push(InnerLine {
                    name,
                    kind: of_word(&LINES, node.attribute("data-kind")),
                    on: of_word(&COPIES, node.attribute("data-on")),
                    line,
                });
            }
            _ => {}
        }
    }

    fn mark(&mut self, node: Node<'_, '_>, layer: Layer, at: Point) {
        let name = one_line(node.attribute("data-name").unwrap_or(""));
        match layer {
            Layer::Drill => self.piece.drills.push(Drill {
                name,
                on: of_word(&COPIES, node.attribute("data-on")),
                at,
            }),
            Layer::EdgeStart => self.piece.edge_starts.push(Named { name, at }),
            _ => self.piece.points.push(TurnPoint {
                name,
                at,
                corner: node.attribute("data-corner").is_some(),
            }),
        }
    }

    fn notch(&self, node: Node<'_, '_>, map: Affine) -> Result<Option<Notch>, Wrong> {
        let Some((at, _)) = place(node, "data-at")? else {
            return Ok(None);
        };
        let number = |name: &str| -> Result<f64, Wrong> {
            let numbers = outline::numbers(node.attribute(name).unwrap_or(""))?;
            Ok(numbers.first().copied().unwrap_or(0.0))
        };
        let scale = map.determinant().abs().sqrt();
        let depth = number("data-depth")?.abs() * scale;
        Ok(Some(Notch {
            name: one_line(node.attribute("data-name").unwrap_or("")),
            at: self.on_piece(outline::near(map * at)?),
            into: turned(map, number("data-into")?),
            depth: Length::mm(number_on_grid(depth)),
            kind: of_word(&NOTCHES, node.attribute("data-kind")),
            double: node.attribute("data-double").is_some(),
        }))
    }

    /// The finished piece.
    pub fn piece(mut self, walk: &Walk<'_, '_>) -> Result<Piece, ReadError> {
        const INSTEAD: &str = "draw its cut line as a closed path in its group of class cut";
        /// In square millimetres.
        const LEAST_AREA: f64 = 1.0;
        let cut = &self.piece.cut;
        if cut.len() < 3 || area(cut).to_mm2() < LEAST_AREA {
            let what = format!("the piece {} has no cut line", shown(&self.piece.title()));
            return Err(walk.at(self.node, what, INSTEAD));
        }
        if cut.len() > MOST_ON_CUT {
            let what = format!("its cut line has {} points", cut.len());
            return Err(walk.at(self.node, what, &format!("write at most {MOST_ON_CUT}")));
        }
        if self.piece.name.is_empty() {
            "Piece".clone_into(&mut self.piece.name);
        }
        Ok(self.piece)
    }
}

/// The thing of a word; the first where the word is missing or unknown.
fn of_word<T: Copy + Default + PartialEq>(words: &[(T, &str)], word: Option<&str>) -> T {
    let word = word.unwrap_or("");
    words
        .iter()
        .find(|(_, w)| *w == word)
        .map(|(t, _)| *t)
        .unwrap_or_default()
}

/// A direction, anticlockwise from x with y up, as the sheet's map turns it.
fn turned(map: Affine, degrees: f64) -> Angle {
    let (sin, cos) = degrees.to_radians().sin_cos();
    // The sheet's y runs down.
    let v = map * Point::new(cos, -sin) - map * Point::ORIGIN;
    on_grid_angle(Angle::rad(Vec2::new(v.x, -v.y).atan2()))
}
