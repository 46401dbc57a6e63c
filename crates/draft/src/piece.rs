//! Pieces: closed outlines made of named edges, with named points, grain and notches.

use std::fmt;

use geometry::{Path, Point, area};
use trade::{Area, Length};

/// Every kind of piece of a five-pocket jean.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum PieceId {
    /// Front panel, with the hip pocket cut away.
    Front,
    /// Back panel below the yoke.
    Back,
    /// Back yoke.
    Yoke,
    /// Waistband, one piece, folded along its length.
    Band,
    /// Facing of the left fly edge (carries the buttonholes of a button fly).
    FlyFacing,
    /// Shield behind the fly on the right.
    FlyShield,
    /// Shell facing behind the hip pocket mouth.
    PocketFacing,
    /// Coin pocket.
    CoinPocket,
    /// Hip pocket bag, one piece folded.
    PocketBag,
    /// Left back pocket.
    BackPocketLeft,
    /// Right back pocket.
    BackPocketRight,
    /// Lining of the left back pocket.
    BackLiningLeft,
    /// Lining of the right back pocket.
    BackLiningRight,
    /// Strip from which all belt loops are cut.
    LoopStrip,
    /// Concealed inner pocket.
    ExtraPocket,
}

impl PieceId {
    /// All kinds, in the order a workroom lists them.
    pub const ALL: [PieceId; 15] = [
        PieceId::Front,
        PieceId::Back,
        PieceId::Yoke,
        PieceId::Band,
        PieceId::FlyFacing,
        PieceId::FlyShield,
        PieceId::PocketFacing,
        PieceId::CoinPocket,
        PieceId::PocketBag,
        PieceId::BackPocketLeft,
        PieceId::BackPocketRight,
        PieceId::BackLiningLeft,
        PieceId::BackLiningRight,
        PieceId::LoopStrip,
        PieceId::ExtraPocket,
    ];

    /// Stable name for files and programs.
    pub const fn code(self) -> &'static str {
        match self {
            PieceId::Front => "front",
            PieceId::Back => "back",
            PieceId::Yoke => "yoke",
            PieceId::Band => "band",
            PieceId::FlyFacing => "fly_facing",
            PieceId::FlyShield => "fly_shield",
            PieceId::PocketFacing => "pocket_facing",
            PieceId::CoinPocket => "coin_pocket",
            PieceId::PocketBag => "pocket_bag",
            PieceId::BackPocketLeft => "back_pocket_left",
            PieceId::BackPocketRight => "back_pocket_right",
            PieceId::BackLiningLeft => "back_lining_left",
            PieceId::BackLiningRight => "back_lining_right",
            PieceId::LoopStrip => "loop_strip",
            PieceId::ExtraPocket => "extra_pocket",
        }
    }

    /// Name for people.
    pub const fn name(self) -> &'static str {
        match self {
            PieceId::Front => "Front",
            PieceId::Back => "Back",
            PieceId::Yoke => "Yoke",
            PieceId::Band => "Waistband",
            PieceId::FlyFacing => "Fly facing",
            PieceId::FlyShield => "Fly shield",
            PieceId::PocketFacing => "Hip pocket facing",
            PieceId::CoinPocket => "Coin pocket",
            PieceId::PocketBag => "Pocket bag",
            PieceId::BackPocketLeft => "Back pocket, left",
            PieceId::BackPocketRight => "Back pocket, right",
            PieceId::BackLiningLeft => "Back pocket lining, left",
            PieceId::BackLiningRight => "Back pocket lining, right",
            PieceId::LoopStrip => "Belt loop strip",
            PieceId::ExtraPocket => "Extra inner pocket",
        }
    }
}

impl fmt::Display for PieceId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name())
    }
}

/// What a piece is cut from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum ClothUse {
    /// The denim.
    Shell,
    /// The cloth of the pocket bags.
    Pocketing,
    /// The cloth that lines the back pockets.
    Lining,
}

impl ClothUse {
    /// Stable name, as the style file writes it.
    pub const fn code(self) -> &'static str {
        match self {
            ClothUse::Shell => "shell",
            ClothUse::Pocketing => "pocketing",
            ClothUse::Lining => "lining",
        }
    }
}

/// How many of a piece one pair of jeans needs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cut {
    /// Pieces cut as drawn, face up.
    pub as_drawn: u32,
    /// Pieces cut mirrored.
    pub mirrored: u32,
}

impl Cut {
    /// One left and one right.
    pub const PAIR: Cut = Cut {
        as_drawn: 1,
        mirrored: 1,
    };
    /// A single piece.
    pub const ONE: Cut = Cut {
        as_drawn: 1,
        mirrored: 0,
    };

    /// Pieces in all.
    pub const fn total(self) -> u32 {
        self.as_drawn + self.mirrored
    }
}

/// A named edge of a piece. Edges follow one another anticlockwise.
#[derive(Clone, Debug, PartialEq)]
pub struct Edge {
    /// Name, unique within the piece.
    pub name: &'static str,
    /// The sewn (finished) line in millimetres.
    pub path: Path,
}

/// A named point of a piece.
#[derive(Clone, Debug, PartialEq)]
pub struct NamedPoint {
    /// Name, unique within the piece.
    pub name: &'static str,
    /// Place in the frame of the piece, millimetres.
    pub at: Point,
}

/// A line on a piece that is neither cut nor an edge: a fold, a placement, a stitched outline.
#[derive(Clone, Debug, PartialEq)]
pub struct InnerLine {
    /// Name, unique within the piece.
    pub name: &'static str,
    /// What the line is for.
    pub kind: InnerKind,
    /// The line in millimetres.
    pub path: Path,
}

/// What an inner line tells the workroom.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum InnerKind {
    /// Fold here.
    Fold,
    /// Another piece is set here.
    Placement,
}

/// A notch on an edge: where two plies must meet.
#[derive(Clone, Debug, PartialEq)]
pub struct Notch {
    /// The edge that carries it.
    pub edge: &'static str,
    /// Arc length from the start of the edge.
    pub along: Length,
    /// What meets here; the partner notch carries the same name.
    pub name: &'static str,
    /// Two cuts instead of one (marks the back).
    pub double: bool,
}

/// One pattern piece at its finished (sewn) size, without allowances.
#[derive(Clone, Debug, PartialEq)]
pub struct Piece {
    /// Which piece.
    pub id: PieceId,
    /// Cloth it is cut from.
    pub cloth: ClothUse,
    /// How many.
    pub cut: Cut,
    /// The outline: edges in order, anticlockwise, each starting where the last ended.
    pub edges: Vec<Edge>,
    /// Points others refer to.
    pub points: Vec<NamedPoint>,
    /// Folds and placements.
    pub lines: Vec<InnerLine>,
    /// Matching marks.
    pub notches: Vec<Notch>,
    /// The grain line, drawn parallel to the warp.
    pub grain: (Point, Point),
}

impl Piece {
    /// The path of the edge with this name.
    pub fn edge(&self, name: &str) -> Option<&Path> {
        self.edges.iter().find(|e| e.name == name).map(|e| &e.path)
    }

    /// The place of the point with this name.
    pub fn point(&self, name: &str) -> Option<Point> {
        self.points.iter().find(|p| p.name == name).map(|p| p.at)
    }

    /// The inner line with this name.
    pub fn line(&self, name: &str) -> Option<&Path> {
        self.lines.iter().find(|l| l.name == name).map(|l| &l.path)
    }

    /// The whole outline as one polygon with no chord longer than `step` on curves, first point not repeated.
    pub fn polygon(&self, step: Length) -> Vec<Point> {
        let mut out: Vec<Point> = Vec::new();
        for edge in &self.edges {
            let points = edge.path.dense(step);
            out.extend_from_slice(&points[..points.len() - 1]);
        }
        out
    }

    /// Area of the finished piece, from its outline at half-millimetre steps.
    pub fn area(&self) -> Area {
        area(&self.polygon(Length::mm(0.5)))
    }

    /// The place of a notch.
    pub fn notch_point(&self, notch: &Notch) -> Option<Point> {
        self.edge(notch.edge).map(|p| p.point_at(notch.along))
    }
}
