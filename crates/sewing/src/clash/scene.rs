//! Everything sewn and set, each in the frame of the panel it comes to lie on, with the operation in which it happens.

use draft::{EdgeId, Pattern, PieceId, PointId};
use geometry::tolerance::NO_SQUARE_MM2;
use geometry::{Affine, Path, Point, Straight, contains, left_of};
use style::{SeamId, Subject};
use trade::Length;
use words::{Given, say};

use super::through;
use crate::garment::{Fixing, FixingKind, On, StitchRow};
use crate::placement::{Placed, placements};
use crate::work::Operation;

/// How closely curved rows are followed.
const FOLLOW: Length = Length::mm(0.1);

/// The metal in the middle of a zip: teeth and slider (a chain of 6 mm, from memory); a needle goes through its tapes.
const ZIP_TEETH: Length = Length::mm(6.0);

/// A buttonhole's stitches beside its cut (from memory).
const HOLE_BITE_MM: f64 = 3.0;

/// What is sewn.
#[derive(Clone, Copy)]
pub(super) enum What<'a> {
    Row(&'a StitchRow),
    /// A tack or a buttonhole.
    Set(&'a Fixing),
}

impl What<'_> {
    /// The seam it belongs to.
    pub fn seam(&self) -> Option<SeamId> {
        match self {
            What::Row(row) => Some(row.seam),
            What::Set(fixing) => fixing.from.seam(),
        }
    }

    /// What it is called.
    pub fn called(&self) -> Given {
        match self {
            What::Row(row) => (&Subject::Row(row.seam, row.number)).into(),
            What::Set(fixing) => match (&fixing.kind, fixing.from.seam()) {
                (FixingKind::Buttonhole(_), _) => (&Subject::Buttonhole(fixing.piece)).into(),
                (_, Some(SeamId::LoopEdge)) => words::key::CLASH_LOOP_TACK.into(),
                _ => say::ClashTack {
                    seam: fixing.from.title(),
                }
                .into(),
            },
        }
    }
}

/// A row, tack or buttonhole on the panel it lies on.
pub(super) struct Sewn<'a> {
    pub what: What<'a>,
    /// The panel in whose frame the line lies, and on which copies of it.
    pub ground: PieceId,
    pub on: On,
    pub line: Vec<Point>,
    /// How far its stitches reach to either side of the line, millimetres.
    pub half_mm: f64,
    /// The pieces the needle goes through.
    pub through: Vec<PieceId>,
    /// Its operation: a place in the order.
    pub operation: usize,
}

/// A rivet, a button, or the teeth of a zip.
pub(super) struct Metal<'a> {
    pub fixing: &'a Fixing,
    pub ground: PieceId,
    pub on: On,
    /// From one end to the other; both the same for what is round.
    pub ends: (Point, Point),
    /// How far it reaches to either side.
    pub half_mm: f64,
    pub through: Vec<PieceId>,
    pub operation: usize,
}

/// The pair as it is sewn, laid out for looking at clashes.
pub(crate) struct Scene<'a> {
    pub(super) order: &'a [Operation],
    pub(super) sewn: Vec<Sewn<'a>>,
    pub(super) metal: Vec<Metal<'a>>,
    placed: Vec<Placed>,
    outlines: Vec<Outline>,
}

/// A piece that is set on another, as it lies on its panel.
pub(super) struct Outline {
    pub piece: PieceId,
    pub ground: PieceId,
    pub on: On,
    pub polygon: Vec<Point>,
}

/// Where a piece comes to lie.
struct Lies {
    ground: PieceId,
    on: On,
    map: Affine,
}

impl<'a> Scene<'a> {
    pub fn of(
        pattern: &'a Pattern,
        rows: &'a [StitchRow],
        fixings: &'a [Fixing],
        order: &'a [Operation],
    ) -> Scene<'a> {
        let mut scene = Scene {
            order,
            sewn: Vec::new(),
            metal: Vec::new(),
            placed: placements(pattern),
            outlines: Vec::new(),
        };
        // Without an order nothing lies on anything yet.
        if !order.is_empty() {
            scene.outlines = scene.laid(pattern);
        }
        for (number, operation) in order.iter().enumerate() {
            let sewn = operation.rows().filter_map(|index| rows.get(index));
            for row in sewn {
                scene.row(row, number);
            }
            for fixing in operation.fixings.iter().filter_map(|i| fixings.get(*i)) {
                scene.fixing(pattern, fixing, number);
            }
        }
        scene
    }

    fn laid(&self, pattern: &Pattern) -> Vec<Outline> {
        let pieces = self.placed.iter().map(|placed| placed.piece);
        let laid = pieces.filter_map(|id| {
            let lies = self.lies(id, On::Both);
            let edges = pattern.piece(id)?.edges.iter();
            let corners = edges.flat_map(|edge| edge.path.flattened(FOLLOW));
            let polygon: Vec<Point> = corners.map(|p| lies.map * p).collect();
            let sound = polygon.len() > 2 && polygon.iter().all(|p| p.is_finite());
            sound.then_some(Outline {
                piece: id,
                ground: lies.ground,
                on: lies.on,
                polygon,
            })
        });
        laid.collect()
    }

    fn row(&mut self, row: &'a StitchRow, operation: usize) {
        let lies = self.lies(row.piece, row.on);
        let line: Vec<Point> = row.path.flattened(FOLLOW);
        if !line.iter().all(|p| p.is_finite()) {
            return;
        }
        self.sewn.push(Sewn {
            what: What::Row(row),
            ground: lies.ground,
            on: lies.on,
            line: line.into_iter().map(|p| lies.map * p).collect(),
            half_mm: 0.0,
            through: through::of_seam(row.seam).to_vec(),
            operation,
        });
    }

    fn fixing(&mut self, pattern: &Pattern, fixing: &'a Fixing, operation: usize) {
        let lies = self.lies(fixing.piece, fixing.on);
        let through = through::of_fixing(fixing).to_vec();
        let ends = |length: Length| {
            let half = fixing.along * (length.to_mm() / 2.0);
            (lies.map * (fixing.at - half), lies.map * (fixing.at + half))
        };
        let (length, half_mm, metal) = match fixing.kind {
            FixingKind::Rivet(across) | FixingKind::Button(across) => {
                (Length::ZERO, across.to_mm() / 2.0, true)
            }
            FixingKind::Zip(length, _) => (length, ZIP_TEETH.to_mm() / 2.0, true),
            FixingKind::Bartack(length, width, _) => (length, width.to_mm() / 2.0, false),
            FixingKind::Buttonhole(length) => (length, HOLE_BITE_MM, false),
            FixingKind::Loop(..) | FixingKind::Patch(..) | FixingKind::Label(..) => return,
        };
        let (from, to) = ends(length);
        if metal {
            self.metal.push(Metal {
                fixing,
                ground: lies.ground,
                on: lies.on,
                ends: (from, to),
                half_mm,
                through: self.with_all_there(fixing, &lies, &[from, to], through),
                operation,
            });
            return;
        }
        let below = (fixing.from == SeamId::LoopEdge)
            .then(|| body_below_band(pattern, fixing, length))
            .flatten();
        let (lies, line) = match below {
            Some((lies, line)) => (lies, line),
            None => (lies, vec![from, to]),
        };
        let through = match lies.ground {
            PieceId::Band => through,
            ground if fixing.piece == PieceId::Band => vec![ground],
            _ => through,
        };
        let through = self.with_all_there(fixing, &lies, &line, through);
        self.sewn.push(Sewn {
            what: What::Set(fixing),
            ground: lies.ground,
            on: lies.on,
            line,
            half_mm,
            through,
            operation,
        });
    }

    /// What something goes through that may be driven through everything: its own pieces, and those that lie on the same
    /// copy of its panel and reach to some of it.
    fn with_all_there(
        &self,
        fixing: &Fixing,
        lies: &Lies,
        line: &[Point],
        mut through: Vec<PieceId>,
    ) -> Vec<PieceId> {
        if through::all_that_lies_there(fixing) {
            let there = self.outlines.iter().filter(|outline| {
                outline.ground == lies.ground
                    && share(outline.on, lies.on)
                    && stands(line).any(|at| contains(&outline.polygon, at))
            });
            through.extend(there.map(|outline| outline.piece));
        }
        through
    }

    /// The panel a piece comes to lie on, through whatever it is set on.
    fn lies(&self, piece: PieceId, on: On) -> Lies {
        let mut lies = Lies {
            ground: piece,
            on: On::Both,
            map: Affine::IDENTITY,
        };
        // A coin pocket lies on its facing and that on the front: no piece is set on more.
        for _ in 0..2 {
            let Some(placed) = self.placed.iter().find(|p| p.piece == lies.ground) else {
                break;
            };
            lies.ground = placed.onto;
            lies.map = placed.map * lies.map;
            if lies.on == On::Both {
                lies.on = placed.on;
            }
        }
        if lies.on == On::Both {
            lies.on = on;
        }
        lies
    }

    /// Points of a piece where they come to lie on its panel.
    pub(super) fn on_panel(&self, piece: PieceId, points: &[Point]) -> Vec<Point> {
        let map = self.lies(piece, On::Both).map;
        points.iter().map(|p| map * *p).collect()
    }

    /// A piece that is set on another, as it lies on its panel.
    pub(super) fn outline(&self, piece: PieceId) -> Option<&Outline> {
        self.outlines.iter().find(|outline| outline.piece == piece)
    }

    /// The operation in which a seam is first sewn.
    pub(super) fn first_of(&self, seam: SeamId) -> Option<usize> {
        self.operations_of(seam).min()
    }

    /// The operation in which a seam is sewn last.
    pub(super) fn last_of(&self, seam: SeamId) -> Option<usize> {
        self.operations_of(seam).max()
    }

    fn operations_of(&self, seam: SeamId) -> impl Iterator<Item = usize> + '_ {
        let rows = self.sewn.iter();
        rows.filter(move |sewn| matches!(sewn.what, What::Row(row) if row.seam == seam))
            .map(|sewn| sewn.operation)
    }
}

/// Both ends of a line and its middle.
fn stands(line: &[Point]) -> impl Iterator<Item = Point> + '_ {
    let ends = line.first().zip(line.last());
    ends.into_iter()
        .flat_map(|(from, to)| [*from, from.midpoint(*to), *to])
}

/// A tack at the foot of a loop, which lies below the band seam: on the front or the yoke.
fn body_below_band(
    pattern: &Pattern,
    fixing: &Fixing,
    length: Length,
) -> Option<(Lies, Vec<Point>)> {
    if fixing.at.y >= 0.0 {
        return None;
    }
    let band = pattern.piece(PieceId::Band)?;
    let x_of = |id| band.point(id).map(|p| p.x);
    let (left, centre) = (x_of(PointId::SideLeft)?, x_of(PointId::CentreBack)?);
    let (right, end) = (x_of(PointId::SideRight)?, x_of(PointId::CentreFrontRight)?);
    let x = fixing.at.x;
    // From centre front on the fronts and from centre back on the yokes. Fronts are drawn as the left, yokes as the right.
    let (ground, on, from_centre, whole) = if x <= left {
        (PieceId::Front, On::AsDrawn, x, left)
    } else if x <= centre {
        (PieceId::Yoke, On::Mirrored, centre - x, centre - left)
    } else if x <= right {
        (PieceId::Yoke, On::AsDrawn, x - centre, right - centre)
    } else {
        (PieceId::Front, On::Mirrored, end - x, end - right)
    };
    let waist = waist(pattern, ground)?;
    let share = (from_centre / whole).clamp(0.0, 1.0);
    // Edges run from the side to the centre, the piece at their left.
    let along = waist.length() * (1.0 - share);
    let direction = waist.direction_at(along);
    let middle = waist.point_at(along) + left_of(direction) * -fixing.at.y;
    let half = direction * (length.to_mm() / 2.0);
    let line = vec![middle - half, middle + half];
    let lies = Lies {
        ground,
        on,
        map: Affine::IDENTITY,
    };
    line.iter().all(|p| p.is_finite()).then_some((lies, line))
}

/// The waist of a half, from the side to the centre. What the mouth cuts off the front its facing has.
fn waist(pattern: &Pattern, ground: PieceId) -> Option<Path> {
    if ground == PieceId::Yoke {
        return pattern.piece(ground)?.edge(EdgeId::Top).cloned();
    }
    let front = pattern.piece(PieceId::Front)?.edge(EdgeId::Waist)?;
    let facing = pattern.piece(PieceId::PocketFacing);
    let behind = facing.and_then(|facing| facing.edge(EdgeId::Waist));
    Some(behind.map_or_else(|| front.clone(), |behind| behind.then(front)))
}

/// Whether two things are on the same copy of a panel.
pub(super) fn share(a: On, b: On) -> bool {
    a == On::Both || b == On::Both || a == b
}

/// Whether a needle goes through something of what another thing goes through, on the same panel.
pub(super) fn meets(
    (ground, on, through): (PieceId, On, &[PieceId]),
    other: (PieceId, On, &[PieceId]),
) -> bool {
    ground == other.0 && share(on, other.1) && through.iter().any(|p| other.2.contains(p))
}

/// How near a line comes to a stretch, and where on the line; `None` for a line of no points.
pub(super) fn nearest(line: &[Point], ends: (Point, Point)) -> Option<(Point, f64)> {
    let stretch = Straight::between(ends.0, ends.1);
    let mut best: Option<(Point, f64)> = None;
    let mut look = |at: Point, far: f64| {
        if best.is_none_or(|(_, known)| far < known) {
            best = Some((at, far));
        }
    };
    for side in line.windows(2) {
        let side = Straight::between(side[0], side[1]);
        if let Some(at) = side.crossing(stretch, geometry::tolerance::PARALLEL) {
            return Some((at, 0.0));
        }
        for end in [stretch.from, stretch.at(1.0)] {
            let at = side.nearest(end, NO_SQUARE_MM2);
            look(at, (at - end).hypot());
        }
        for corner in [side.from, side.at(1.0)] {
            look(corner, stretch.distance(corner, NO_SQUARE_MM2).to_mm());
        }
    }
    best
}
