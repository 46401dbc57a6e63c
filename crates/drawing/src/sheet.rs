//! A sheet: marks in millimetres, x to the right and y **down** as on paper. Writers (SVG, later
//! others) only write marks down; nothing is computed there.

use geometry::{Affine, BezPath, Path, Point};
use trade::{Colour, Length, Share};

/// A drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct Sheet {
    /// What it shows, for people who cannot see it.
    pub title: String,
    /// Upper left corner.
    pub origin: Point,
    /// Width of the drawing.
    pub width: Length,
    /// Height of the drawing.
    pub height: Length,
    /// Layers from the bottom up.
    pub layers: Vec<Layer>,
}

/// Marks that belong together; readers may show or hide them.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct Layer {
    /// Name, a plain word such as "cloth", "rows".
    pub name: String,
    /// Only what lies inside this outline is seen.
    pub clip: Option<BezPath>,
    /// How much of what is drawn here covers what lies below, where it does not cover it whole: light and shade on
    /// cloth, and its weave. Nothing else is told by such a layer.
    pub cover: Option<Share>,
    /// The marks from the bottom up.
    pub marks: Vec<Mark>,
}

/// One mark, with the part of the garment it stands for.
#[derive(Clone, Debug, PartialEq)]
pub struct Mark {
    /// The part, such as "seam:inseam" or "piece:front"; what a click on it asks for.
    pub part: Option<String>,
    /// What is drawn.
    pub shape: Shape,
}

/// What a mark looks like.
#[derive(Clone, Debug, PartialEq)]
pub enum Shape {
    /// A filled area, with or without an outline.
    Area {
        /// The closed outline.
        path: BezPath,
        /// Its colour.
        fill: Colour,
        /// Its outline.
        stroke: Option<Stroke>,
    },
    /// A line.
    Line {
        /// The line.
        path: BezPath,
        /// How it is drawn.
        stroke: Stroke,
    },
    /// Words.
    Text(Text),
}

/// How a line is drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stroke {
    /// Colour.
    pub colour: Colour,
    /// Thickness.
    pub width: Length,
    /// Dash and gap; `None` for a full line.
    pub dash: Option<(Length, Length)>,
    /// Round ends (yarn) instead of cut ones.
    pub round: bool,
}

impl Stroke {
    /// A full line with cut ends.
    pub const fn plain(colour: Colour, width: Length) -> Stroke {
        Stroke {
            colour,
            width,
            dash: None,
            round: false,
        }
    }

    /// The same line dashed.
    #[must_use]
    pub const fn dashed(self, dash: Length, gap: Length) -> Stroke {
        Stroke {
            dash: Some((dash, gap)),
            ..self
        }
    }
}

/// Where words stand against their point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anchor {
    /// Begin there.
    Start,
    /// Centred on it.
    Middle,
    /// End there.
    End,
}

/// Words on a drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct Text {
    /// The point on the base line.
    pub at: Point,
    /// The words.
    pub words: String,
    /// Height of the type (its em).
    pub size: Length,
    /// Where they stand.
    pub anchor: Anchor,
    /// Turned clockwise by this many degrees about the point.
    pub turn_deg: f64,
    /// Colour.
    pub colour: Colour,
    /// Bold.
    pub bold: bool,
}

impl Sheet {
    /// All words of the sheet.
    pub fn texts(&self) -> impl Iterator<Item = &Text> {
        let marks = self.layers.iter().flat_map(|layer| &layer.marks);
        marks.filter_map(|mark| match &mark.shape {
            Shape::Text(text) => Some(text),
            _ => None,
        })
    }
}

impl Layer {
    /// An empty layer.
    pub fn named(name: &str) -> Layer {
        Layer {
            name: name.to_owned(),
            ..Layer::default()
        }
    }

    /// Adds a filled area.
    pub fn area(
        &mut self,
        part: Option<&str>,
        path: BezPath,
        fill: Colour,
        stroke: Option<Stroke>,
    ) {
        self.marks.push(Mark {
            part: part.map(str::to_owned),
            shape: Shape::Area { path, fill, stroke },
        });
    }

    /// Adds a line.
    pub fn line(&mut self, part: Option<&str>, path: BezPath, stroke: Stroke) {
        self.marks.push(Mark {
            part: part.map(str::to_owned),
            shape: Shape::Line { path, stroke },
        });
    }

    /// Every path of the layer, clip included.
    pub fn paths_mut(&mut self) -> impl Iterator<Item = &mut BezPath> {
        let marks = self.marks.iter_mut().filter_map(|m| match &mut m.shape {
            Shape::Area { path, .. } | Shape::Line { path, .. } => Some(path),
            Shape::Text(_) => None,
        });
        self.clip.iter_mut().chain(marks)
    }

    /// Every text of the layer.
    pub fn texts_mut(&mut self) -> impl Iterator<Item = &mut Text> {
        self.marks.iter_mut().filter_map(|m| match &mut m.shape {
            Shape::Text(text) => Some(text),
            _ => None,
        })
    }

    /// Adds words.
    pub fn text(&mut self, part: Option<&str>, text: Text) {
        self.marks.push(Mark {
            part: part.map(str::to_owned),
            shape: Shape::Text(text),
        });
    }
}

/// A closed outline through the points.
pub fn closed(points: &[Point]) -> BezPath {
    let mut path = open(points);
    if !points.is_empty() {
        path.close_path();
    }
    path
}

/// An open line through the points.
pub fn open(points: &[Point]) -> BezPath {
    let mut path = BezPath::new();
    for (i, p) in points.iter().enumerate() {
        if i == 0 {
            path.move_to(*p);
        } else {
            path.line_to(*p);
        }
    }
    path
}

/// A circle.
pub fn circle(centre: Point, radius: Length) -> BezPath {
    let r = radius.to_mm();
    let k = 0.552_284_749_8 * r;
    let p = |x: f64, y: f64| Point::new(centre.x + x, centre.y + y);
    let mut path = BezPath::new();
    path.move_to(p(r, 0.0));
    path.curve_to(p(r, k), p(k, r), p(0.0, r));
    path.curve_to(p(-k, r), p(-r, k), p(-r, 0.0));
    path.curve_to(p(-r, -k), p(-k, -r), p(0.0, -r));
    path.curve_to(p(k, -r), p(r, -k), p(r, 0.0));
    path.close_path();
    path
}

/// The map from pattern coordinates (y up) to a sheet (y down) with this offset.
pub fn to_paper(dx: f64, dy: f64) -> Affine {
    Affine::new([1.0, 0.0, 0.0, -1.0, dx, dy])
}

/// A pattern path on paper.
pub fn on_paper(path: &Path, map: Affine) -> BezPath {
    path.transformed(map).to_bez()
}
