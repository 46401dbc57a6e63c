//! What is to be laid, and what is wrong with it when it cannot be.

use std::collections::BTreeSet;

use geometry::tolerance::ROUNDING;
use geometry::{Point, Rect, bounds_of, is_simple};
use thiserror::Error;
use trade::Length;

/// Distances up to this share of the width of the cloth count as none.
const TOUCHING: f64 = 1e-6;

/// A turn of a piece on the cloth, anticlockwise.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Turn {
    /// As drawn.
    None,
    /// A quarter turn: across the grain.
    Quarter,
    /// Head to tail.
    Half,
    /// Three quarters.
    ThreeQuarters,
}

impl Turn {
    /// Every turn, in order.
    pub const ALL: [Self; 4] = [Self::None, Self::Quarter, Self::Half, Self::ThreeQuarters];

    /// The turn in degrees: 0, 90, 180 or 270.
    pub const fn degrees(self) -> u16 {
        self.quarters() as u16 * 90
    }

    pub(crate) const fn quarters(self) -> u8 {
        self as u8
    }

    /// The point turned about the origin, exactly.
    pub const fn apply(self, p: Point) -> Point {
        match self {
            Self::None => p,
            Self::Quarter => Point::new(-p.y, p.x),
            Self::Half => Point::new(-p.x, -p.y),
            Self::ThreeQuarters => Point::new(p.y, -p.x),
        }
    }
}

/// Which side of a piece, as drawn, is the straight one that lies on the cloth's finished edge.
///
/// As drawn (`Turn::None`) a lower side lies on the lower edge of the cloth and an upper side on
/// the upper edge; turned head to tail (`Turn::Half`) they change over.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StraightSide {
    /// The lowest points of the outline.
    Lower,
    /// The highest points of the outline.
    Upper,
}

/// The rule that a piece lies with its straight side on a finished edge of the cloth. Such a
/// piece moves only along the cloth.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OnEdge {
    /// The straight side of the piece as drawn.
    pub side: StraightSide,
    /// How far inside the finished edge the side lies; usually nothing.
    pub inset: Length,
}

/// A stretch across the cloth, from its lower edge.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Zone {
    /// Where it begins.
    pub from: Length,
    /// Where it ends.
    pub to: Length,
}

impl Zone {
    /// How wide it is.
    pub fn width(self) -> Length {
        self.to - self.from
    }
}

/// A piece to be cut, as often as `demand` says.
///
/// The mirrored twin of a piece is a piece of its own.
#[derive(Clone, Debug, PartialEq)]
pub struct Piece {
    /// The name under which it comes back.
    pub key: String,
    /// The closed outline in millimetres, in either direction, the first point not repeated (a
    /// repeated one does no harm). x runs along the cloth, y across it.
    pub outline: Vec<Point>,
    /// How many are to be cut.
    pub demand: usize,
    /// The turns the cloth allows: `None` alone on cloth with a nap, `None` and `Half` for most.
    pub turns: Vec<Turn>,
    /// Set for a piece that lies on a finished edge.
    pub on_edge: Option<OnEdge>,
    /// Set for a piece that keeps to one zone across the cloth, so that it matches another in shade.
    pub within: Option<Zone>,
}

/// A lay to be found: pieces on a cloth of a given width, using as little length as possible.
#[derive(Clone, Debug, PartialEq)]
pub struct Problem {
    /// The usable width of the cloth, from finished edge to finished edge.
    pub width: Length,
    /// What is to be cut.
    pub pieces: Vec<Piece>,
    /// The least distance between two pieces, and between a piece and a fault. Pieces may reach
    /// right to the cloth's own edges.
    pub gap: Length,
    /// Places no piece may touch, in millimetres: x from the start of the cloth, y from its lower
    /// edge.
    pub faults: Vec<Rect>,
    /// What is cut together, such as the pieces of one pair: how many of each piece, in the order of
    /// `pieces`. A lay of several sets is begun from lays of one set each. May be empty.
    pub sets: Vec<Vec<usize>>,
}

/// Why no lay can be looked for.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum LayError {
    /// There is nothing to lay.
    #[error("there is nothing to lay; give at least one piece with a demand of 1 or more")]
    Empty,
    /// The cloth has no width.
    #[error("a cloth {0} wide cannot be laid on; give a width above zero")]
    Width(Length),
    /// The gap is negative or not a number.
    #[error("a gap of {0} between pieces makes no sense; give zero or more")]
    Gap(Length),
    /// Too many pieces for one lay.
    #[error(
        "{0} pieces are too many for one lay; split the order into lays of at most {MOST_PIECES}"
    )]
    TooMany(usize),
    /// An outline is no area.
    #[error("piece {key}: {what}; its outline must be a closed line that does not cross itself")]
    Outline {
        /// The piece.
        key: String,
        /// What is wrong with the outline.
        what: &'static str,
    },
    /// No turn is allowed.
    #[error("piece {0}: no turn is allowed; allow at least the one it is drawn in")]
    NoTurn(String),
    /// A piece on the edge may be turned by a quarter.
    #[error(
        "piece {0}: its straight side cannot lie on the finished edge after a quarter turn; allow only 0 and 180 degrees"
    )]
    EdgeTurn(String),
    /// A piece is wider than the cloth.
    #[error(
        "piece {key}: it is {across} across and the cloth {width} wide; cut it in two or take wider cloth"
    )]
    TooWide {
        /// The piece.
        key: String,
        /// Its least extent across the cloth in the allowed turns.
        across: Length,
        /// The width of the cloth.
        width: Length,
    },
    /// A piece does not fit its zone.
    #[error(
        "piece {key}: it is {across} across and has to keep to a zone {zone} wide; take fewer zones or let it lie anywhere"
    )]
    Zone {
        /// The piece.
        key: String,
        /// Its least extent across the cloth in the allowed turns.
        across: Length,
        /// The width of the zone on the cloth.
        zone: Length,
    },
    /// A piece on the edge has a zone.
    #[error("piece {0}: it lies on the finished edge and cannot keep to a zone as well")]
    EdgeZone(String),
    /// Two pieces have one name.
    #[error("piece {0}: there are two of that name; give each a name of its own")]
    Twice(String),
    /// A fault is no rectangle.
    #[error("fault {0}: it needs a place and a size in millimetres")]
    Fault(usize),
    /// The sets ask for more of a piece than there is, or for a piece there is not.
    #[error("set {0}: it counts more pieces than are to be laid; let each piece be in one set")]
    Set(usize),
    /// No place could be found for a piece.
    #[error("piece {0}: no place was found for it beside the faults of the cloth; check them")]
    NoPlace(String),
    /// Nobody waits for the lay any more. A search never says so, for it hands over what it has; whoever looks for several
    /// lays does, of the next.
    #[error("it was cancelled")]
    Cancelled,
}

/// The most pieces one lay may hold.
pub const MOST_PIECES: usize = 2_000;

/// Coordinates beyond this many millimetres are a mistake of units.
const FARTHEST_MM: f64 = 1e7;

impl Problem {
    /// Says what makes the problem impossible, before any search.
    ///
    /// # Errors
    /// The first [`LayError`] found.
    pub fn validate(&self) -> Result<(), LayError> {
        let width = self.width.to_mm();
        if !(width > 0.0 && width < FARTHEST_MM) {
            return Err(LayError::Width(self.width));
        }
        if !(self.gap.to_mm() >= 0.0 && self.gap.to_mm() < FARTHEST_MM) {
            return Err(LayError::Gap(self.gap));
        }
        let wanted = self
            .pieces
            .iter()
            .map(|p| p.demand)
            .fold(0, usize::saturating_add);
        if wanted == 0 {
            return Err(LayError::Empty);
        }
        if wanted > MOST_PIECES {
            return Err(LayError::TooMany(wanted));
        }
        for (i, fault) in self.faults.iter().enumerate() {
            let sides = [fault.x0, fault.y0, fault.x1, fault.y1];
            let sane = sides.iter().all(|v| v.is_finite() && v.abs() < FARTHEST_MM);
            if !(sane && fault.x1 > fault.x0 && fault.y1 > fault.y0) {
                return Err(LayError::Fault(i + 1));
            }
        }
        let mut keys = BTreeSet::new();
        if let Some(twice) = self.pieces.iter().find(|p| !keys.insert(&p.key)) {
            return Err(LayError::Twice(twice.key.clone()));
        }
        let mut left: Vec<usize> = self.pieces.iter().map(|p| p.demand).collect();
        for (i, set) in self.sets.iter().enumerate() {
            for (piece, count) in set.iter().enumerate() {
                let rest = left.get(piece).and_then(|n| n.checked_sub(*count));
                match (rest, left.get_mut(piece)) {
                    (Some(rest), Some(left)) => *left = rest,
                    _ => return Err(LayError::Set(i + 1)),
                }
            }
        }
        self.pieces.iter().try_for_each(|p| self.validate_piece(p))
    }

    fn validate_piece(&self, piece: &Piece) -> Result<(), LayError> {
        let wrong = |what| {
            Err(LayError::Outline {
                key: piece.key.clone(),
                what,
            })
        };
        let far = |p: &Point| !(p.x.abs() < FARTHEST_MM && p.y.abs() < FARTHEST_MM);
        if piece.outline.iter().any(far) {
            return wrong("a point is not a number or is kilometres away");
        }
        let outline = tidy(&piece.outline);
        if outline.len() < 3 {
            return wrong("it has no area");
        }
        if !is_simple(&outline) {
            return wrong("it crosses itself");
        }
        if piece.turns.is_empty() {
            return Err(LayError::NoTurn(piece.key.clone()));
        }
        let sideways = |t: &Turn| t.quarters() % 2 == 1;
        if piece.on_edge.is_some() && piece.turns.iter().any(sideways) {
            return Err(LayError::EdgeTurn(piece.key.clone()));
        }
        let bounds = bounds_of(&outline);
        let inset = piece.on_edge.map_or(0.0, |e| e.inset.to_mm().max(0.0));
        let across = piece
            .turns
            .iter()
            .map(|t| if sideways(t) { bounds.width() } else { bounds.height() } + inset)
            .fold(f64::INFINITY, f64::min);
        if across > self.width.to_mm() + touch(self.width) {
            return Err(LayError::TooWide {
                key: piece.key.clone(),
                across: Length::mm(across),
                width: self.width,
            });
        }
        let Some(zone) = piece.within else {
            return Ok(());
        };
        if piece.on_edge.is_some() {
            return Err(LayError::EdgeZone(piece.key.clone()));
        }
        let room = zone.to.min(self.width) - zone.from.max(Length::ZERO);
        // The comparison is false for a zone that is no number.
        if across <= room.to_mm() + touch(self.width) {
            return Ok(());
        }
        Err(LayError::Zone {
            key: piece.key.clone(),
            across: Length::mm(across),
            zone: room,
        })
    }
}

/// Distances up to this count as none: a millionth of the width, under a micrometre on a cloth of
/// 78 cm. Sums of floating point numbers need some such slack.
pub(crate) fn touch(width: Length) -> f64 {
    width.to_mm() * TOUCHING
}

/// The outline anticlockwise, without repeated points and points in the middle of a straight run.
/// Fewer than three points are left of an outline without area.
pub(crate) fn tidy(outline: &[Point]) -> Vec<Point> {
    let size = bounds_of(outline);
    let near = (size.width() + size.height()) * ROUNDING;
    let mut points: Vec<Point> = Vec::with_capacity(outline.len());
    for &p in outline {
        if points.last().is_none_or(|last| (p - *last).hypot() > near) {
            points.push(p);
        }
    }
    while points.len() > 1 && (points[0] - points[points.len() - 1]).hypot() <= near {
        points.pop();
    }
    let mut i = 0;
    while points.len() >= 3 && i < points.len() {
        let n = points.len();
        let (a, b, c) = (points[(i + n - 1) % n], points[i], points[(i + 1) % n]);
        let off = crate::convex::turn(a, b, c).abs() / (c - a).hypot().max(near);
        if off <= near {
            points.remove(i);
            i = i.saturating_sub(1);
        } else {
            i += 1;
        }
    }
    let area = if points.len() < 3 {
        0.0
    } else {
        geometry::area(&points).to_mm2()
    };
    if area.abs() <= near * near {
        return Vec::new();
    }
    if area < 0.0 {
        points.reverse();
    }
    points
}
