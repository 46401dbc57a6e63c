//! An SVG file as a pattern.

use geometry::{Affine, Point, Vec2};
use roxmltree::{Document, Node, ParsingOptions};
use svgtypes::{Length as Written, LengthUnit, ViewBox};
use trade::Length;

use super::outline::{self, transform};
use super::pen::{Run, Wrong};
use super::piece::{Layer, Sheet};
use crate::error::{Place, ReadError, shown};
use crate::grid::{FARTHEST, line_on_grid, on_grid};
use crate::limits::{DEEPEST, MOST_ENTITIES, MOST_PIECES, MOST_POINTS};
use crate::loose::{self, LooseLine};
use crate::model::{Note, PatternFile, Read};
use crate::words::one_line;

/// Scales along and across that differ by no larger a share are one.
const ALIKE: f64 = 1e-3;

/// The largest SVG file that is read, in bytes: a sheet of one size is a hundredth of it.
const MOST_BYTES: usize = 32 * 1024 * 1024;

/// Elements that draw nothing where they stand, and are not looked into.
const STOWED: &[&str] = &[
    "defs", "symbol", "clipPath", "mask", "pattern", "marker", "style", "metadata", "title", "desc",
];

/// Reads an SVG file: one of ours, or any other as loose lines. Its size has to be stated in mm, cm or in.
///
/// # Errors
/// The first thing that is wrong, with its line and column; nothing is half read.
pub fn read(bytes: &[u8]) -> Result<Read, ReadError> {
    if bytes.len() > MOST_BYTES {
        return Err(ReadError::whole(
            format!("{} MB are more than is read", bytes.len() / 1_000_000),
            format!(
                "write at most {} MB, one size to a file",
                MOST_BYTES / 1_000_000
            ),
        ));
    }
    let text = std::str::from_utf8(bytes).map_err(|why| {
        let line = bytes.get(..why.valid_up_to()).unwrap_or_default();
        let line = line.iter().filter(|b| **b == b'\n').count() + 1;
        ReadError::line(
            line,
            "this is not UTF-8 text",
            "save it as a plain SVG file",
        )
    })?;
    too_deep(text)?;
    let options = ParsingOptions {
        nodes_limit: u32::try_from(MOST_ENTITIES).unwrap_or(u32::MAX),
        ..ParsingOptions::default()
    };
    let document = Document::parse_with_options(text, options).map_err(|why| {
        let at = why.pos();
        let place = Place::LineColumn(at.row as usize, at.col as usize);
        let what = format!("this is not an SVG drawing: {}", in_short(&why.to_string()));
        ReadError::new(place, what, "save it as a plain SVG file")
    })?;
    let root = document.root_element();
    if root.tag_name().name() != "svg" {
        let what = format!(
            "the file begins with <{}>, not with <svg>",
            shown(root.tag_name().name())
        );
        return Err(at(&document, root, what, "save it as a plain SVG file"));
    }
    let (map, height) = frame(&document, root)?;
    let ours = root.attribute("data-pattern").is_some();
    let mut walk = Walk {
        document: &document,
        points: 0,
        passed: 0,
    };
    let pattern = if ours {
        walk.ours(root, map)?
    } else {
        walk.loose(
            root,
            Affine::new([1.0, 0.0, 0.0, -1.0, 0.0, height.to_mm()]) * map,
        )?
    };
    if pattern.pieces.is_empty() {
        return Err(ReadError::whole(
            "there is no piece in it",
            "draw the cut line of each piece as a closed path",
        ));
    }
    let passed_over = match walk.passed {
        0 => Vec::new(),
        n => vec![format!("{n} × use, image or text on a path")],
    };
    Ok(Read {
        pattern,
        passed_over,
    })
}

/// The reason a parser gives, without the place it adds.
fn in_short(why: &str) -> String {
    shown(why.split(" at ").next().unwrap_or(why))
}

fn at(document: &Document<'_>, node: Node<'_, '_>, what: String, instead: &str) -> ReadError {
    let at = document.text_pos_at(node.range().start);
    ReadError::new(
        Place::LineColumn(at.row as usize, at.col as usize),
        what,
        instead,
    )
}

/// Refuses groups in groups without end before anything follows them.
fn too_deep(text: &str) -> Result<(), ReadError> {
    let mut depth = 0_usize;
    for (at, _) in text.match_indices('<') {
        let tag = text.get(at..).unwrap_or_default();
        let tag = tag
            .get(..tag.find('>').unwrap_or(tag.len()))
            .unwrap_or_default();
        if tag.starts_with("</") {
            depth = depth.saturating_sub(1);
        } else if !tag.ends_with('/') && !tag.starts_with("<!") && !tag.starts_with("<?") {
            depth += 1;
        }
        if depth > DEEPEST {
            let line = text.get(..at).unwrap_or_default().matches('\n').count() + 1;
            return Err(ReadError::line(
                line,
                format!("elements lie more than {DEEPEST} deep in each other here"),
                "take the paths out of their groups",
            ));
        }
    }
    Ok(())
}

/// From the units of the drawing to millimetres of the sheet, and how high the sheet is.
fn frame(document: &Document<'_>, root: Node<'_, '_>) -> Result<(Affine, Length), ReadError> {
    const INSTEAD: &str =
        "state the true size, such as width=\"900mm\" height=\"1200mm\" viewBox=\"0 0 900 1200\"";
    let wrong = |what: String| at(document, root, what, INSTEAD);
    let size = |name: &str| {
        let text = root.attribute(name).unwrap_or("");
        let length: Option<Written> = text.trim().parse().ok();
        let length = length.and_then(|l| match l.unit {
            LengthUnit::Mm => Some(Length::mm(l.number)),
            LengthUnit::Cm => Some(Length::cm(l.number)),
            LengthUnit::In => Some(Length::inches(l.number)),
            _ => None,
        });
        let fits = length.filter(|l| *l > Length::ZERO && *l <= FARTHEST);
        fits.ok_or_else(|| {
            if text.is_empty() {
                wrong(format!("the drawing does not say its {name}"))
            } else {
                wrong(format!(
                    "the {name} is `{}`, no true size in mm, cm or in",
                    shown(text)
                ))
            }
        })
    };
    let (width, height) = (size("width")?, size("height")?);
    let Some(text) = root.attribute("viewBox") else {
        return Err(wrong("the drawing has no viewBox".to_owned()));
    };
    let view: Option<ViewBox> = text.trim().parse().ok();
    let Some(view) = view.filter(|v| v.w > 0.0 && v.h > 0.0) else {
        return Err(wrong(format!("the viewBox is `{}`", shown(text))));
    };
    let scale = Vec2::new(width.to_mm() / view.w, height.to_mm() / view.h);
    if (scale.x / scale.y - 1.0).abs() > ALIKE {
        return Err(wrong(
            "width, height and viewBox stretch the drawing".to_owned(),
        ));
    }
    let map = Affine::scale_non_uniform(scale.x, scale.y) * Affine::translate((-view.x, -view.y));
    if map.as_coeffs().iter().all(|v| v.is_finite()) {
        Ok((map, height))
    } else {
        Err(wrong(format!("the viewBox is `{}`", shown(text))))
    }
}

/// Going through a document in the order of the file.
pub(super) struct Walk<'a, 'i> {
    document: &'a Document<'i>,
    points: usize,
    passed: usize,
}

impl<'a> Walk<'a, '_> {
    /// What is wrong with an element, with its place.
    pub fn wrong(&self, node: Node<'_, '_>, why: Wrong) -> ReadError {
        let element = node.tag_name().name();
        match why {
            Wrong::Data(why) => at(
                self.document,
                node,
                format!("this <{element}> cannot be read: {}", in_short(&why)),
                "write it as SVG has it, in plain numbers",
            ),
            Wrong::Far => at(
                self.document,
                node,
                format!("this <{element}> reaches more than 100 m"),
                "check its numbers and the viewBox",
            ),
            Wrong::Long => at(
                self.document,
                node,
                format!("more than {MOST_POINTS} points up to here"),
                "write fewer sizes into one file",
            ),
        }
    }

    /// An error that says what is right.
    pub fn at(&self, node: Node<'_, '_>, what: String, instead: &str) -> ReadError {
        at(self.document, node, what, instead)
    }

    /// The lines of an element, counted.
    pub fn runs(&mut self, node: Node<'_, '_>, map: Affine) -> Result<Vec<Run>, ReadError> {
        let left = MOST_POINTS - self.points;
        let runs = outline::runs(node, map, left).map_err(|why| self.wrong(node, why))?;
        self.points += runs.iter().map(|(line, _)| line.len()).sum::<usize>();
        Ok(runs)
    }

    fn ours(&mut self, root: Node<'a, '_>, map: Affine) -> Result<PatternFile, ReadError> {
        let word = |name: &str| one_line(root.attribute(name).unwrap_or(""));
        let title = root.children().find(|n| n.tag_name().name() == "title");
        let mut pattern = PatternFile {
            style: title.map(words_of).unwrap_or_default(),
            author: word("data-author"),
            date: word("data-date"),
            sample_size: word("data-sample-size"),
            pieces: Vec::new(),
        };
        let mut open = vec![(root, map, Layer::None)];
        let mut sheet: Option<Sheet<'_, '_>> = None;
        while let Some((node, map, layer)) = open.pop() {
            if !self.is_drawn(node) {
                continue;
            }
            let map = map * transform(node).map_err(|why| self.wrong(node, why))?;
            let mut layer = layer;
            if node.attribute("class") == Some("piece") && node.tag_name().name() == "g" {
                if let Some(done) = sheet.take() {
                    pattern.pieces.push(done.piece(self)?);
                }
                if pattern.pieces.len() >= MOST_PIECES {
                    let what = format!("more than {MOST_PIECES} pieces up to here");
                    return Err(self.at(node, what, "write fewer sizes into one file"));
                }
                sheet = Some(Sheet::new(self, node, map)?);
                layer = Layer::None;
            } else if let Some(named) = node.attribute("class").and_then(Layer::named) {
                layer = named;
            }
            if let Some(sheet) = &mut sheet {
                sheet.add(self, node, map, layer)?;
            }
            let children: Vec<_> = node.children().filter(Node::is_element).collect();
            open.extend(children.into_iter().rev().map(|child| (child, map, layer)));
        }
        if let Some(done) = sheet {
            pattern.pieces.push(done.piece(self)?);
        }
        Ok(pattern)
    }

    fn loose(&mut self, root: Node<'a, '_>, map: Affine) -> Result<PatternFile, ReadError> {
        let (mut lines, mut texts) = (Vec::new(), Vec::new());
        let mut open = vec![(root, map, String::new())];
        while let Some((node, map, above)) = open.pop() {
            if !self.is_drawn(node) {
                continue;
            }
            let map = map * transform(node).map_err(|why| self.wrong(node, why))?;
            let own = if node == root {
                String::new()
            } else {
                name_of(node)
            };
            let name = if own.is_empty() { above } else { own };
            if node.tag_name().name() == "text" {
                let at = outline::text_at(node, map).map_err(|why| self.wrong(node, why))?;
                let words = words_of(node);
                if !words.is_empty() {
                    texts.push(Note {
                        words,
                        at: on_grid(at),
                    });
                }
                continue;
            }
            for (points, closed) in self.runs(node, map)? {
                let points = line_on_grid(points);
                let meets = points.len() > 3 && points.first() == points.last();
                lines.push(LooseLine {
                    closed: closed || meets,
                    points,
                    name: name.clone(),
                });
            }
            let children: Vec<_> = node.children().filter(Node::is_element).collect();
            open.extend(
                children
                    .into_iter()
                    .rev()
                    .map(|child| (child, map, name.clone())),
            );
        }
        let title = root.children().find(|n| n.tag_name().name() == "title");
        Ok(PatternFile {
            style: title.map(words_of).unwrap_or_default(),
            pieces: loose::pieces(lines, texts)?,
            ..PatternFile::default()
        })
    }

    /// Whether an element is looked into; what draws and cannot be read is counted.
    fn is_drawn(&mut self, node: Node<'_, '_>) -> bool {
        let name = node.tag_name().name();
        if matches!(name, "use" | "image" | "foreignObject" | "textPath") {
            self.passed += 1;
            return false;
        }
        !STOWED.contains(&name) && node.attribute("display") != Some("none")
    }
}

/// The words of a text, in one line.
pub(super) fn words_of(node: Node<'_, '_>) -> String {
    let parts = node.descendants().filter(Node::is_text);
    let words: String = parts.filter_map(|part| part.text()).collect();
    one_line(&words)
        .chars()
        .take(crate::limits::LONGEST_TEXT)
        .collect()
}

/// What an element is called: its label, its title, or an id that somebody chose.
fn name_of(node: Node<'_, '_>) -> String {
    let label = node
        .attributes()
        .find(|a| a.name() == "label")
        .map(|a| one_line(a.value()));
    let title = || {
        let title = node.children().find(|n| n.tag_name().name() == "title");
        title.map(words_of)
    };
    let id = || {
        let id = node.attribute("id")?;
        let stem = id.trim_end_matches(|c: char| c.is_ascii_digit() || c == '-' || c == '_');
        let element = node.tag_name().name();
        let made = [element, "path", "layer", "group", "g", "Layer"].contains(&stem);
        (!made && !stem.is_empty()).then(|| one_line(id))
    };
    let filled = |name: &String| !name.is_empty();
    label
        .filter(filled)
        .or_else(|| title().filter(filled))
        .or_else(id)
        .unwrap_or_default()
}

/// A place as two numbers of an attribute.
pub(super) fn place(node: Node<'_, '_>, name: &str) -> Result<Option<(Point, f64)>, Wrong> {
    let Some(text) = node.attribute(name) else {
        return Ok(None);
    };
    let numbers = outline::numbers(text)?;
    let at = |k: usize| numbers.get(k).copied();
    Ok(at(0)
        .zip(at(1))
        .map(|(x, y)| (Point::new(x, y), at(2).unwrap_or(0.0))))
}
