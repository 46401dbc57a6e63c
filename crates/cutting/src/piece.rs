//! The cut piece: the one type that lays, pattern files and drawings share.

use draft::{ClothUse, EdgeId, InnerKind, LineId, NotchId, PieceId, PointId};
use geometry::tolerance::NO_DIRECTION;
use geometry::{Affine, Point, Vec2, area};
use sewing::On;
use style::{Construction, SeamId, Size};
use trade::{Area, Length};
use words::{Said, say};

use crate::allowance_lie::{Lie, side_of};
use crate::band::BandCut;
use crate::corner::Corner;
use crate::label::{Label, how_many};
use crate::selvedge::ClothEdge;
use sewing::wash::Scale;

/// A piece as it is cut: before the wash, with its allowances.
///
/// Coordinates are millimetres in the frame of the draft, y up, drawn as [`PieceId`] draws the piece.
/// Mirrored copies are cut from the mirror image: [`CutPiece::turned_over`] and [`CutPiece::on_cloth`]
/// give it. A piece whose two copies differ has two entries.
#[derive(Clone, Debug, PartialEq)]
pub struct CutPiece {
    /// Which piece.
    pub piece: PieceId,
    /// Which part of it, where it is cut in two.
    pub part: Part,
    /// Which copies are cut like this.
    pub on: On,
    /// How many are cut as drawn, for one pair of jeans.
    pub as_drawn: u32,
    /// How many are cut from the mirror image.
    pub mirrored: u32,
    /// Whether the piece comes as a pair, left and right; both are then cut from the same ply, close
    /// together, so that they match in shade.
    pub pair: bool,
    /// Which cloth of the style.
    pub cloth: ClothUse,
    /// Its name in the collection; empty where the style names none.
    pub cloth_name: String,
    /// The cut line: closed, anticlockwise, first point not repeated.
    pub cut: Vec<Point>,
    /// The edges in order, anticlockwise.
    pub edges: Vec<CutEdge>,
    /// The corners, each after the edge of the same index.
    pub corners: Vec<Corner>,
    /// Folds and placements.
    pub inner: Vec<Inner>,
    /// Notches.
    pub notches: Vec<CutNotch>,
    /// Drill holes.
    pub drills: Vec<Drill>,
    /// Named points of the sewn piece.
    pub points: Vec<(PointId, Point)>,
    /// The grain line, along the warp.
    pub grain: (Point, Point),
    /// Where the piece lies on the cloth's own edge.
    pub cloth_edge: Option<ClothEdge>,
    /// What is written on it.
    pub label: Label,
    /// How it was made larger for the wash.
    pub scale: Scale,
}

/// Which part of a piece a cut piece is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Part {
    /// All of it.
    Whole,
    /// The wearer's left half of a band that is joined at the centre back.
    LeftHalf,
    /// The wearer's right half, with the overlap.
    RightHalf,
}

impl Part {
    /// What a piece is called of which this part is cut.
    pub fn of(self, piece: PieceId) -> Said {
        match self {
            Part::Whole => piece.into(),
            Part::LeftHalf => say::CutPieceLeftHalf { piece }.into(),
            Part::RightHalf => say::CutPieceRightHalf { piece }.into(),
        }
    }
}

/// One edge of a cut piece.
#[derive(Clone, Debug, PartialEq)]
pub struct CutEdge {
    /// Which; unique in the piece.
    pub id: EdgeId,
    /// The sewn line.
    pub sewn: Vec<Point>,
    /// Its own cut line, between the corners; empty where the corners leave nothing of it.
    pub cut: Vec<Point>,
    /// What is cut beyond the sewn line. Along the cloth's own edge it may be more; see
    /// [`CutPiece::cloth_edge`].
    pub allowance: Length,
    /// The seam it is sewn into; `None` for an edge in no seam.
    pub seam: Option<SeamId>,
    /// How that seam is made.
    pub construction: Option<Construction>,
    /// How the allowance lies once sewn; on a piece whose two copies are cut alike, that of the copy cut
    /// as drawn.
    pub lie: Lie,
}

/// A fold or a placement.
#[derive(Clone, Debug, PartialEq)]
pub struct Inner {
    /// Which.
    pub id: LineId,
    /// Which part of it, counted from 0, where the piece ends in between.
    pub part: usize,
    /// What it is for.
    pub kind: InnerKind,
    /// On which of the copies cut from this piece.
    pub on: On,
    /// The line.
    pub line: Vec<Point>,
}

impl Inner {
    /// Its code, unique in the piece: that of the line, and for every further part of it a number.
    pub fn code(&self) -> String {
        match self.part {
            0 => self.id.code().to_owned(),
            k => format!("{}_{}", self.id.code(), k + 1),
        }
    }
}

/// How a notch is made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotchKind {
    /// Cut in from the cut line.
    Slit,
    /// Drawn on the wrong side: the cloth's own edge stays whole, for it is seen.
    Drawn,
}

/// A notch, carried to the cut line.
#[derive(Clone, Debug, PartialEq)]
pub struct CutNotch {
    /// What meets here; the partner is of the same.
    pub id: NotchId,
    /// The edge.
    pub edge: EdgeId,
    /// Arc length along the sewn edge.
    pub along: Length,
    /// On the sewn line.
    pub on_seam: Point,
    /// On the cut line, square to the sewn line.
    pub at: Point,
    /// Into the piece (unit vector).
    pub into: Vec2,
    /// Along the edge (unit vector).
    pub beside: Vec2,
    /// How deep it is cut.
    pub depth: Length,
    /// One cut or two (two mark the back).
    pub double: bool,
    /// How it is made.
    pub kind: NotchKind,
}

/// Between the two cuts of a double notch (common practice: 1/4 inch).
pub const DOUBLE_NOTCH: Length = Length::inches(0.25);

impl CutNotch {
    /// The cuts: one, or two side by side; each from the cut line into the piece.
    pub fn cuts(&self) -> Vec<(Point, Point)> {
        let half = DOUBLE_NOTCH.to_mm() / 2.0;
        let shifts: &[f64] = if self.double { &[-half, half] } else { &[0.0] };
        shifts
            .iter()
            .map(|by| {
                let from = self.at + self.beside * *by;
                (from, from + self.into * self.depth.to_mm())
            })
            .collect()
    }
}

/// What a drill hole marks.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum DrillKind {
    /// A corner of a pocket that is set on; the hole lies under the pocket.
    PocketCorner,
    /// The middle of a rivet, which covers it.
    Rivet,
}

/// A drill hole.
#[derive(Clone, Debug, PartialEq)]
pub struct Drill {
    /// What it marks: the placement and corner, or the rivet's trim.
    pub name: String,
    /// What kind of mark.
    pub kind: DrillKind,
    /// On which of the copies cut from this piece.
    pub on: On,
    /// Where.
    pub at: Point,
    /// How far it lies inside the outline of what will cover it.
    pub inside: Length,
}

/// One copy as it lies on the cloth.
#[derive(Clone, Debug, PartialEq)]
pub struct OnCloth {
    /// The cut line, anticlockwise: x along the warp, y across; the smallest x and y are zero.
    pub outline: Vec<Point>,
    /// The straight side that lies on a finished edge of the cloth, if one does.
    pub edge: Option<EdgeOnCloth>,
}

/// The straight side of a copy that lies on a finished edge of the cloth.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EdgeOnCloth {
    /// Whether it is the upper side of the copy as given, else the lower.
    pub upper: bool,
    /// Where along the warp it begins.
    pub from: Length,
    /// Where it ends.
    pub to: Length,
}

impl CutPiece {
    /// What it is called, with the part.
    pub fn said(&self) -> Said {
        self.part.of(self.piece)
    }

    /// Stable name for files: piece, part and, for the second of two that differ, "mirrored".
    pub fn code(&self) -> String {
        let part = match self.part {
            Part::Whole => "",
            Part::LeftHalf => "_left_half",
            Part::RightHalf => "_right_half",
        };
        let copy = match self.on {
            On::Mirrored if self.pair => "_mirrored",
            _ => "",
        };
        format!("{}{part}{copy}", self.piece.code())
    }

    /// Area of the cut piece.
    pub fn area(&self) -> Area {
        area(&self.cut)
    }

    /// The whole sewn outline: closed, anticlockwise, first point not repeated.
    pub fn sewn(&self) -> Vec<Point> {
        self.edges
            .iter()
            .flat_map(|e| e.sewn.iter().take(e.sewn.len().saturating_sub(1)))
            .copied()
            .collect()
    }

    /// An edge.
    pub fn edge(&self, id: EdgeId) -> Option<&CutEdge> {
        self.edges.iter().find(|e| e.id == id)
    }

    /// Whether something marked `on` belongs to a copy.
    pub fn is_on(on: On, mirrored: bool) -> bool {
        match on {
            On::Both => true,
            On::AsDrawn => !mirrored,
            On::Mirrored => mirrored,
        }
    }

    /// A map of the frame in which the piece is drawn to that of a mirrored copy: over the grain line.
    pub fn turned_over(&self, p: Point) -> Point {
        let (along, origin) = (self.warp(), self.grain.0);
        let v = p - origin;
        let across = Vec2::new(-along.y, along.x);
        origin + along * v.dot(along) - across * v.dot(across)
    }

    /// Whether only mirrored copies are cut from it, so that it is drawn as its mirror image.
    pub const fn is_cut_mirrored(&self) -> bool {
        self.as_drawn == 0 && self.mirrored > 0
    }

    /// From the frame in which the piece is drafted to the piece as it is cut, face up: over the grain line where
    /// only mirrored copies are cut, else as it is.
    pub fn as_cut(&self) -> Affine {
        if !self.is_cut_mirrored() {
            return Affine::IDENTITY;
        }
        let along = self.warp();
        // The reflection over a line along a unit vector (a, b): 2aa − 1, 2ab; 2ab, 2bb − 1.
        let (aa, ab, bb) = (along.x * along.x, along.x * along.y, along.y * along.y);
        let over = Affine::new([2.0 * aa - 1.0, 2.0 * ab, 2.0 * ab, 2.0 * bb - 1.0, 0.0, 0.0]);
        let origin = self.grain.0.to_vec2();
        Affine::translate(origin) * over * Affine::translate(-origin)
    }

    /// What is written on a drawing that shows the piece as it is cut: who lays it on cloth does not turn it over
    /// once more.
    pub fn label_as_cut(&self) -> Label {
        let plain = self.label.clone();
        if !self.is_cut_mirrored() {
            return plain;
        }
        Label {
            cut: how_many(self.mirrored, 0),
            side: side_of(self.piece, true).map(|ply| ply.key().into()),
            ..plain
        }
    }

    /// The unit vector along the warp.
    pub fn warp(&self) -> Vec2 {
        let v = self.grain.1 - self.grain.0;
        let n = v.hypot();
        if n > NO_DIRECTION {
            v / n
        } else {
            Vec2::new(0.0, 1.0)
        }
    }

    /// A copy as it lies on the cloth, warp along x.
    pub fn on_cloth(&self, mirrored: bool) -> OnCloth {
        let warp = self.warp();
        let across = Vec2::new(-warp.y, warp.x);
        let hand = if mirrored { -1.0 } else { 1.0 };
        let lay = |p: Point| {
            let v = p.to_vec2();
            Point::new(v.dot(warp), v.dot(across) * hand)
        };
        let mut outline: Vec<Point> = self.cut.iter().map(|p| lay(*p)).collect();
        if mirrored {
            outline.reverse();
        }
        let least = outline
            .iter()
            .fold(Vec2::new(f64::INFINITY, f64::INFINITY), |low, p| {
                Vec2::new(low.x.min(p.x), low.y.min(p.y))
            });
        let most = outline.iter().map(|p| p.y).fold(f64::MIN, f64::max);
        for p in &mut outline {
            *p -= least;
        }
        let edge = self.cloth_edge.as_ref().map(|edge| {
            let (a, b) = (lay(edge.from), lay(edge.to));
            EdgeOnCloth {
                upper: (most - a.y).abs() < (a.y - least.y).abs(),
                from: Length::mm(a.x.min(b.x) - least.x),
                to: Length::mm(a.x.max(b.x) - least.x),
            }
        });
        OnCloth { outline, edge }
    }
}

/// Every cut piece of one size.
#[derive(Clone, Debug)]
pub struct CutSize {
    /// The size.
    pub size: Size,
    /// The pieces, in the order of [`PieceId::ALL`].
    pub pieces: Vec<CutPiece>,
    /// How the band is cut.
    pub band_cut: BandCut,
    /// Pieces that cannot be cut until somebody decides, with what there is to choose from.
    pub refused: Vec<crate::band::BandConflict>,
    /// Every seam walked before the wash.
    pub walked: Vec<crate::seams_before_wash::SeamBeforeWash>,
    /// What was noticed, worst first.
    pub findings: Vec<draft::Finding>,
}

impl CutSize {
    /// The cut pieces of a piece: usually one, two where copies or parts differ.
    pub fn of(&self, piece: PieceId) -> impl Iterator<Item = &CutPiece> {
        self.pieces.iter().filter(move |p| p.piece == piece)
    }
}
