//! Rows of stitches as strands from hole to hole, each at its place.

use draft::PieceId;
use flat::{Half, Hand, View};
use geometry::{Point, left_of, polyline_length, unit};
use sewing::{Face, InsideLap, RowYarn, StitchRow};
use style::SeamId;
use trade::Length;
use trade::stitch::FaceLook;

use super::Laying;
use super::seams::inward;
use crate::place::{Place, place};
use crate::sewing_yarn::Strand;

/// How far an overedge reaches in from the cut edge (3/16 inch is sewn, of which the fraying edge hides a little).
const BITE: f64 = 4.2;
/// Half the width of a zigzag.
const ZIGZAG: f64 = 1.0;
/// Between two points of a row where it is followed.
const ROW_STEP: Length = Length::mm(1.0);

/// A strand over another or on the cloth.
#[derive(Clone, Copy)]
struct Lie {
    bow: f32,
    sink: f32,
    rest: f32,
    pulls: bool,
}

const PLAIN: Lie = Lie {
    bow: 0.0,
    sink: 1.5,
    rest: 0.20,
    pulls: true,
};

impl Laying<'_> {
    /// Rows on the pieces of one half, above all of it.
    pub(super) fn rows_of(&mut self, hand: Hand) {
        use PieceId as P;
        let under_front = self.view == View::Front && self.face == Face::Outside;
        let hidden = |piece: PieceId| {
            let on_band = matches!(piece, P::Band | P::LoopStrip | P::FlyShield);
            on_band
                || under_front
                    && matches!(
                        piece,
                        P::CoinPocket | P::PocketFacing | P::PocketBag | P::ExtraPocket
                    )
        };
        let pieces: Vec<PieceId> = P::ALL.into_iter().filter(|p| !hidden(*p)).collect();
        self.rows_of_pieces(hand, &pieces);
    }

    pub(super) fn rows_of_pieces(&mut self, hand: Hand, pieces: &[PieceId]) {
        let garment = self.garment;
        for row in &garment.rows {
            let mine =
                pieces.contains(&row.piece) && self.laid.copies(row.piece, row.on).contains(&hand);
            if mine && self.shows(row) && !self.lies_on_an_edge(row) {
                let holes = holes(row);
                let seen = holes
                    .iter()
                    .map(|p| self.laid.point(row.piece, *p, hand))
                    .collect();
                self.stitched(row, self.face, seen, self.turned_over(row, hand));
            }
        }
    }

    /// Whether this copy of the row's piece is mirrored on the view.
    fn turned_over(&self, row: &StitchRow, hand: Hand) -> bool {
        let at = row.path.start();
        let probe = [
            at,
            Point::new(at.x + 1.0, at.y),
            Point::new(at.x, at.y + 1.0),
        ];
        let on = self.laid.area(row.piece, &probe, hand);
        (on[1] - on[0]).cross(on[2] - on[0]) < 0.0
    }

    fn shows(&self, row: &StitchRow) -> bool {
        match self.face {
            Face::Outside => row.shows_outside,
            Face::Inside => row.shows_inside,
        }
    }

    /// An overedge alone lies on the edge of the allowance, not on the seam line.
    fn lies_on_an_edge(&self, row: &StitchRow) -> bool {
        let alone = row.stitch.looks().under_face == FaceLook::Overedge;
        alone
            && self
                .garment
                .laps
                .iter()
                .any(|lap| lap.seam() == Some(row.seam))
    }

    pub(super) fn rows_on_band(&mut self) {
        self.band_rows(|row, face| !on_top(row) || face == Face::Inside && row.shows_outside);
    }

    /// The rows of patch and labels, on top of them.
    pub(super) fn rows_on_top(&mut self) {
        self.band_rows(|row, face| on_top(row) && (face == Face::Outside || !row.shows_outside));
    }

    fn band_rows(&mut self, wanted: impl Fn(&StitchRow, Face) -> bool) {
        let garment = self.garment;
        for row in &garment.rows {
            if row.piece == PieceId::Band && self.shows(row) && wanted(row, self.face) {
                let seen = holes(row).into_iter().map(|p| {
                    let covered = self.laid.covered(p);
                    if covered {
                        None
                    } else {
                        self.laid.point(row.piece, p, Hand::Left)
                    }
                });
                let seen = seen.collect();
                self.stitched(row, self.face, seen, false);
            }
        }
    }

    /// The rows of the back band as one sees them over the front waist, from inside.
    pub(super) fn rows_behind(&mut self) {
        let other = match self.face {
            Face::Outside => Face::Inside,
            Face::Inside => Face::Outside,
        };
        let garment = self.garment;
        for row in garment.rows.iter().filter(|row| row.piece == PieceId::Band) {
            let shows = match other {
                Face::Outside => row.shows_outside,
                Face::Inside => row.shows_inside,
            };
            if shows {
                let spots = holes(row).into_iter().map(|p| self.laid.band(p));
                let seen = spots
                    .map(|spot| (spot.half == Half::Back).then_some(spot.at))
                    .collect();
                self.stitched(row, other, seen, false);
            }
        }
    }

    /// One row of which these holes are seen.
    fn stitched(&mut self, row: &StitchRow, face: Face, holes: Vec<Option<Point>>, over: bool) {
        let looks = row.stitch.looks();
        // A label is sewn from the side it is read on.
        let read_inside = face == Face::Inside && !row.shows_outside && on_top(row);
        let (yarn, look) = match face {
            Face::Outside => (&row.needle, looks.needle_face),
            Face::Inside if read_inside => (&row.needle, looks.needle_face),
            Face::Inside => (&row.under, looks.under_face),
        };
        let index = self.yarn_of(yarn);
        for (k, pair) in holes.windows(2).enumerate() {
            if let [Some(a), Some(b)] = pair {
                // Round a fold two holes may lie far apart.
                if (*b - *a).hypot() < 3.0 * row.density.pitch().to_mm() {
                    // What lies beside the row is on the other hand of a copy that is mirrored.
                    let ends = if over { (*b, *a) } else { (*a, *b) };
                    self.stitch(look, ends, k, index);
                }
            }
        }
    }

    fn yarn_of(&mut self, yarn: &RowYarn) -> usize {
        self.yarn(yarn.colour, yarn.diameter)
    }

    fn stitch(&mut self, look: FaceLook, (a, b): (Point, Point), k: usize, yarn: usize) {
        match look {
            FaceLook::Dashes => self.strand((a, b), yarn, PLAIN),
            FaceLook::Chain => self.chain((a, b), yarn),
            FaceLook::Zigzag | FaceLook::ZigzagChain => {
                let side = if k.is_multiple_of(2) { ZIGZAG } else { -ZIGZAG };
                let out = left_of(unit(b - a)) * side;
                self.strand((a - out, b + out), yarn, PLAIN);
            }
            FaceLook::Overedge => self.over_edge((a, b), yarn, 0.0),
            FaceLook::OveredgeTwoRows | FaceLook::DashesAndOveredge => {
                self.strand((a, b), yarn, PLAIN);
                self.over_edge((a, b), yarn, 1.5);
            }
            FaceLook::ChainAndOveredge => {
                self.chain((a, b), yarn);
                self.over_edge((a, b), yarn, 3.0);
            }
            FaceLook::CoverLoops => {
                let out = left_of(unit(b - a)) * 3.0;
                self.strand(
                    (a - out, b + out),
                    yarn,
                    Lie {
                        sink: 0.4,
                        rest: 0.3,
                        pulls: false,
                        ..PLAIN
                    },
                );
                self.strand(
                    (b + out, b - out),
                    yarn,
                    Lie {
                        sink: 0.4,
                        rest: 0.5,
                        pulls: false,
                        ..PLAIN
                    },
                );
            }
        }
    }

    pub(super) fn strand_at(&mut self, ends: (Place, Place), yarn: usize, lie: (f32, f32, bool)) {
        let (sink, rest, pulls) = lie;
        let (from, to) = ends;
        let level = self.scene.sheets.len();
        self.scene.strands.push(Strand {
            from,
            to,
            yarn,
            level,
            bow: 0.0,
            sink,
            rest,
            pulls,
        });
    }

    fn strand(&mut self, (a, b): (Point, Point), yarn: usize, lie: Lie) {
        let level = self.scene.sheets.len();
        let Lie {
            bow,
            sink,
            rest,
            pulls,
        } = lie;
        self.scene.strands.push(Strand {
            from: place(a),
            to: place(b),
            yarn,
            level,
            bow,
            sink,
            rest,
            pulls,
        });
    }

    /// The under side of 401: from hole to hole a loop of two strands, drawn through the one before.
    fn chain(&mut self, (a, b): (Point, Point), yarn: usize) {
        let d = f64::from(self.scene.yarns[yarn].diameter);
        let way = unit(b - a);
        let out = left_of(way);
        let half = 1.15 * d;
        let tail = a - way * (1.3 * d);
        self.scene.strands.push(Strand {
            from: place(a),
            to: place(b),
            yarn,
            level: 0,
            bow: 0.0,
            sink: 1.0,
            rest: 0.0,
            pulls: true,
        });
        for side in [1.0, -1.0] {
            let middle = a.lerp(b, 0.32) + out * (half * side);
            let bow = (0.25 * d * side) as f32;
            let loose = Lie {
                bow,
                sink: 0.25,
                rest: 0.25,
                pulls: false,
            };
            self.strand((tail + out * (0.25 * d * side), middle), yarn, loose);
            let end = b + out * (0.3 * d * side) - way * (0.4 * d);
            self.strand(
                (middle, end),
                yarn,
                Lie {
                    bow: bow * 1.6,
                    sink: 0.5,
                    rest: 0.40,
                    ..loose
                },
            );
        }
        let across = |side: f64| b + out * (0.9 * d * side) - way * (0.75 * d);
        let bow = (-0.5 * d) as f32;
        self.strand(
            (across(1.0), across(-1.0)),
            yarn,
            Lie {
                bow,
                sink: 0.6,
                rest: 0.75,
                pulls: false,
            },
        );
    }

    /// Yarn laid over a cut edge, beside a line by so much.
    fn over_edge(&mut self, (a, b): (Point, Point), yarn: usize, beside: f64) {
        let out = left_of(unit(b - a));
        let near = |p: Point| p - out * beside;
        let far = |p: Point| p - out * (beside + BITE);
        let lie = Lie {
            sink: 0.6,
            rest: 0.25,
            pulls: false,
            ..PLAIN
        };
        let middle = a.midpoint(b);
        self.strand((near(a), far(middle)), yarn, lie);
        self.strand((far(middle), near(b)), yarn, Lie { rest: 0.35, ..lie });
        self.strand((far(a), far(b)), yarn, Lie { rest: 0.5, ..lie });
    }

    /// The overedge along an allowance, in the yarn and at the pitch of the row that states it.
    pub(super) fn overedge(&mut self, lap: &InsideLap, hand: Hand, line: &[Point], width: f64) {
        let seam = lap.seam();
        let rows = &self.garment.rows;
        let Some(row) = rows
            .iter()
            .find(|r| Some(r.seam) == seam && r.stitch.is_overedge())
        else {
            return;
        };
        let mirrored = self.turned_over(row, hand);
        let yarn = self.yarn_of(&row.under.clone());
        let edge = inward(line, width);
        let edge = geometry::resample(&edge, row.density.pitch());
        let seen: Vec<Option<Point>> = edge
            .iter()
            .map(|p| self.laid.point(lap.piece, *p, hand))
            .collect();
        for pair in seen.windows(2) {
            if let [Some(a), Some(b)] = pair {
                // The bite lies towards the seam.
                let ends = if mirrored { (*b, *a) } else { (*a, *b) };
                self.over_edge(ends, yarn, -BITE);
            }
        }
    }
}

/// Rows that hold what lies on top of the band.
fn on_top(row: &StitchRow) -> bool {
    matches!(row.seam, SeamId::PatchSet | SeamId::LabelSet)
}

/// Where the needle goes in, in the frame of the piece: as often as the row counts.
pub(crate) fn holes(row: &StitchRow) -> Vec<Point> {
    const MOST: usize = 20_000;
    let line = row.path.dense(ROW_STEP);
    let pitch = row.density.pitch().to_mm();
    let count = row.stitches().min(MOST);
    // What following a curve by points loses of its length is spread over all stitches.
    let scale = polyline_length(&line).to_mm() / row.length().to_mm().max(0.1);
    let mut out = Vec::with_capacity(count);
    let (mut k, mut run) = (0, 0.0);
    for side in line.windows(2) {
        let long = (side[1] - side[0]).hypot();
        while k < count && (k as f64 * pitch * scale) <= run + long {
            let share = (k as f64 * pitch * scale - run) / long.max(0.001);
            out.push(side[0].lerp(side[1], share.clamp(0.0, 1.0)));
            k += 1;
        }
        run += long;
    }
    if k + 1 == count {
        out.extend(line.last().copied());
    }
    out
}
