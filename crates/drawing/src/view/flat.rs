//! The garment laid flat: one mapping from any point of a panel to the view.
//!
//! The pair lies closed, as an inspector lays it to measure. Each level of a leg is a tube of girth
//! *front width + back width*, so flattened it is half as wide. The front panel lies in the middle of
//! the front face; the wider back panel wraps round the folds, which is why outseam and inseam show
//! just inside the edges. Above the seat level the tube is the whole body with the centre front
//! upright; between seat level and crotch one runs into the other, and the fork of the crotch lies
//! folded between the legs.
//!
//! Coordinates: y up, x from the centre line towards the side, for one half; the other half is the
//! mirror image. Widths along a level are true: what the tape measures on the view is what it
//! measures on the pattern.

use draft::{EdgeId, Pattern, Piece, PieceId, PointId};
use geometry::{Path, Point, Vec2};
use trade::Length;

/// How far the legs spread from the vertical. Chosen for looks: enough to see both inseams.
const SPREAD_DEG: f64 = 4.4;
/// Spacing of the tabulated levels.
const STEP_MM: f64 = 1.0;
/// Down to here below the crotch the back goes from wrapping one fold to wrapping both alike.
const WRAP_RUN_MM: f64 = 150.0;
/// The leg proper begins this far below the crotch.
const LEG_FROM_MM: f64 = 130.0;
/// There the side fold lies this far outside the seat.
const SIDE_OUT_MM: f64 = 15.0;
/// Share of the back's extra height at the centre that shows when the pair lies flat; the rest is
/// taken up by the fullness of the seat.
const SEAT_SHARE: f64 = 0.2;

/// The two faces of the flat garment.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Half {
    /// Seen from the front.
    Front,
    /// Seen from the back.
    Back,
}

/// A place on the flat garment.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Spot {
    pub half: Half,
    pub at: Point,
}

/// x as a function of height along one edge, from a dense polyline, extended straight at both ends.
struct EdgeTable {
    points: Vec<(f64, f64)>,
}

impl EdgeTable {
    fn new(paths: &[&Path]) -> EdgeTable {
        let mut points: Vec<(f64, f64)> = paths
            .iter()
            .flat_map(|p| p.dense(Length::mm(1.0)))
            .map(|p| (p.y, p.x))
            .collect();
        points.sort_by(|a, b| a.0.total_cmp(&b.0));
        points.dedup_by(|a, b| (a.0 - b.0).abs() < 1e-9);
        EdgeTable { points }
    }

    fn x(&self, y: f64) -> f64 {
        let p = &self.points;
        match p.len() {
            0 => return 0.0,
            1 => return p[0].1,
            _ => {}
        }
        let i = p.partition_point(|q| q.0 < y).clamp(1, p.len() - 1);
        // Beyond the ends the slope of the last few millimetres goes on.
        let (a, b) = if y > p[p.len() - 1].0 {
            (p[p.len().saturating_sub(6)], p[p.len() - 1])
        } else {
            (p[i - 1], p[i])
        };
        let run = b.0 - a.0;
        if run.abs() < 1e-12 {
            a.1
        } else {
            a.1 + (b.1 - a.1) * (y - a.0) / run
        }
    }
}

/// One level of the flat garment.
#[derive(Clone, Copy, Debug)]
struct Level {
    front_in: f64,
    back_in: f64,
    back_out: f64,
    /// Width of the front along the level.
    front: f64,
    /// Width of the flat garment (half of the half).
    flat: f64,
    /// How much of the back shows on the front face beside the inner and the outer fold.
    wrap_in: f64,
    wrap_out: f64,
    /// Outer end of the level and its direction from the inner end.
    outer: Point,
    along: Vec2,
    /// Stretch of front widths, so that the waist seam has its true length.
    stretch: f64,
    /// Stretch of back widths.
    back_stretch: f64,
}

impl Level {
    fn mix(a: &Level, b: &Level, t: f64) -> Level {
        let m = |x: f64, y: f64| x + (y - x) * t;
        Level {
            front_in: m(a.front_in, b.front_in),
            back_in: m(a.back_in, b.back_in),
            back_out: m(a.back_out, b.back_out),
            front: m(a.front, b.front),
            flat: m(a.flat, b.flat),
            wrap_in: m(a.wrap_in, b.wrap_in),
            wrap_out: m(a.wrap_out, b.wrap_out),
            outer: a.outer.lerp(b.outer, t),
            along: a.along.lerp(b.along, t),
            stretch: m(a.stretch, b.stretch),
            back_stretch: m(a.back_stretch, b.back_stretch),
        }
    }

    /// The place `p` from the inner fold.
    fn place(&self, p: f64) -> Point {
        self.outer - self.along * (self.flat - p)
    }
}

/// The flat garment of one pattern.
pub(crate) struct Flat {
    levels: Vec<Level>,
    lift: Lift,
    low: f64,
    seat_y: f64,
    hem_y: f64,
    /// Waist: half widths along the seam, and heights.
    front_waist: Path,
    front_waist_length: f64,
    yoke_waist_length: f64,
    side_waist_y: f64,
    centre_back_y: f64,
    band_ease_scale: f64,
    pub band_height: f64,
    squeeze: f64,
    yoke: Option<YokeRules>,
}

/// The back crotch point lies a little lower than the front one, but both meet in the crotch cross:
/// between thigh and seat level the back is lifted to it.
struct Lift {
    drop: f64,
    thigh: f64,
    seat: f64,
}

impl Lift {
    /// How far the point of the back that belongs at level `y` lies below it.
    fn at(&self, y: f64) -> f64 {
        let reach = if y < 0.0 { self.thigh } else { self.seat };
        self.drop * smooth(1.0 - y.abs() / reach.max(1.0))
    }

    /// The level at which a point of the back is drawn.
    fn level_of(&self, back_y: f64) -> f64 {
        // The lift changes by less than its argument, so this settles at once.
        (0..8).fold(back_y, |y, _| back_y + self.at(y))
    }
}

/// The yoke as a ruled strip between its two long edges.
struct YokeRules {
    lower: Vec<Point>,
    upper: Vec<Point>,
    /// Places of the lower edge on the unfolded back: distance from centre, height.
    lower_flat: Vec<(f64, f64)>,
    low_flat_width: f64,
}

const YOKE_RULES: usize = 160;

impl Flat {
    /// `None` when the panels are missing or have no height.
    pub fn new(pattern: &Pattern) -> Option<Flat> {
        let front = pattern.piece(PieceId::Front)?;
        let facing = pattern.piece(PieceId::PocketFacing)?;
        let back = pattern.piece(PieceId::Back)?;
        let yoke = pattern.piece(PieceId::Yoke)?;
        let front_inner = EdgeTable::new(&edges(
            front,
            &[EdgeId::Fly, EdgeId::Crotch, EdgeId::Inseam],
        )?);
        let front_outer = EdgeTable::new(&[front.edge(EdgeId::Side)?, facing.edge(EdgeId::Side)?]);
        let back_inner = EdgeTable::new(&edges(back, &[EdgeId::Seat, EdgeId::Inseam])?);
        let back_outer = EdgeTable::new(&[back.edge(EdgeId::Side)?]);

        let hem_y = front
            .point(PointId::HemIn)?
            .y
            .min(back.point(PointId::HemIn)?.y);
        let side_waist = front.point(PointId::SideWaist)?;
        let seat_y = pattern.spec.seat_at.to_mm();
        let yoke_side_y = back.point(PointId::YokeSide)?.y;
        let low = hem_y - 5.0;
        let high = side_waist.y.max(front.point(PointId::WaistCentre)?.y) + 40.0;
        if !(high - low).is_finite() || high - low > 5000.0 || high - low < 50.0 {
            return None;
        }

        let front_waist = facing
            .edge(EdgeId::Waist)?
            .then(front.edge(EdgeId::Waist)?)
            .reversed();
        let front_waist_length = front_waist.length().to_mm();
        let yoke_waist_length = yoke.edge(EdgeId::Top)?.length().to_mm();
        let straight = side_waist.x - front_inner.x(side_waist.y);
        let full_stretch = front_waist_length / straight.max(1.0) - 1.0;
        let rise = (side_waist.y - seat_y).max(1.0);
        let waist_wrap = ((yoke_waist_length - front_waist_length) / 2.0).max(0.0);

        let lift = Lift {
            drop: front.point(PointId::Crotch)?.y - back.point(PointId::Crotch)?.y,
            thigh: pattern.spec.thigh_at.to_mm().max(10.0),
            seat: seat_y,
        };
        let count = ((high - low) / STEP_MM).ceil() as usize + 1;
        let mut levels: Vec<Level> = (0..count)
            .map(|k| {
                let y = low + k as f64 * STEP_MM;
                let t = ((y - seat_y) / rise).clamp(0.0, 1.0);
                let stretch = 1.0 + full_stretch * t;
                let front_in = front_inner.x(y);
                let front_w = (front_outer.x(y) - front_in).max(0.0) * stretch;
                let back_y = y - lift.at(y);
                let (back_in, back_out) = (back_inner.x(back_y), back_outer.x(back_y));
                let back_w = (back_out - back_in).max(0.0);
                let spare = if y <= yoke_side_y {
                    (back_w - front_w) / 2.0
                } else {
                    let seam_spare =
                        (back_outer.x(yoke_side_y) - back_inner.x(yoke_side_y) - front_w) / 2.0;
                    let share =
                        ((y - yoke_side_y) / (side_waist.y - yoke_side_y).max(1.0)).clamp(0.0, 1.0);
                    seam_spare + (waist_wrap - seam_spare) * share
                }
                .max(0.0);
                Level {
                    front_in,
                    back_in,
                    back_out,
                    front: front_w,
                    flat: front_w + spare,
                    wrap_in: 0.0,
                    wrap_out: spare,
                    outer: Point::new(front_w + spare, y),
                    along: Vec2::new(1.0, 0.0),
                    stretch,
                    back_stretch: 1.0,
                }
            })
            .collect();
        share_wraps(&mut levels, low, seat_y);
        lay_legs(&mut levels, low, seat_y);

        let centre_top = yoke.point(PointId::WaistCentre)?;
        let centre_back_y = side_waist.y + SEAT_SHARE * (centre_top.y - side_waist.y);
        // The yoke keeps its height; the fullness lies in the back below it.
        let seam_y = back.point(PointId::YokeCentre)?.y;
        let drawn_seam_y = centre_back_y - pattern.spec.yoke_centre.to_mm();
        let squeeze = (drawn_seam_y - seat_y) / (seam_y - seat_y).max(1.0);
        let waist = pattern
            .piece(PieceId::Band)?
            .edge(EdgeId::Join)?
            .length()
            .to_mm();
        let mut flat = Flat {
            levels,
            lift,
            low,
            seat_y,
            hem_y,
            front_waist,
            front_waist_length,
            yoke_waist_length,
            side_waist_y: side_waist.y,
            centre_back_y,
            band_ease_scale: 2.0 * (front_waist_length + yoke_waist_length) / waist.max(1.0),
            band_height: pattern.spec.band_height.to_mm(),
            squeeze,
            yoke: None,
        };
        flat.yoke = YokeRules::new(&flat, back, yoke);
        Some(flat)
    }

    fn level(&self, y: f64) -> Level {
        let k = ((y - self.low) / STEP_MM).clamp(0.0, (self.levels.len() - 1) as f64);
        let i = (k.floor() as usize).min(self.levels.len() - 2);
        Level::mix(&self.levels[i], &self.levels[i + 1], k - i as f64)
    }

    /// The inner and the outer end of a level: what a tape straight across finds.
    pub fn across(&self, y: f64) -> (Point, Point) {
        let level = self.level(y);
        (level.place(0.0), level.outer)
    }

    /// The ends of the lower edge of a leg.
    pub fn hem(&self) -> (Point, Point) {
        self.across(self.hem_y)
    }

    /// A point in the frame of the front (front, pocket facing, bag, fly).
    pub fn front(&self, p: Point) -> Spot {
        let level = self.level(p.y);
        let along = level.wrap_in + (p.x - level.front_in) * level.stretch;
        Spot {
            half: Half::Front,
            at: level.place(along) + Vec2::new(0.0, self.beyond(p.y)),
        }
    }

    /// Points above the tabulated levels keep their height.
    fn beyond(&self, y: f64) -> f64 {
        let top = self.low + (self.levels.len() - 1) as f64 * STEP_MM;
        (y - top).max(0.0)
    }

    /// A point in the frame of the back (back panel and what is set on it).
    pub fn back(&self, p: Point) -> Spot {
        let p = Point::new(p.x, self.lift.level_of(p.y));
        let level = self.level(p.y);
        let width = (level.back_out - level.back_in) * level.back_stretch;
        let from_in = (p.x - level.back_in) * level.back_stretch;
        let from_out = width - from_in;
        let height = |at: Point, share: f64| Point::new(at.x, self.squeezed(at.y, p.y, share));
        if p.y < self.seat_y && from_in < level.wrap_in {
            return Spot {
                half: Half::Front,
                at: level.place(level.wrap_in - from_in),
            };
        }
        if from_out < level.wrap_out {
            return Spot {
                half: Half::Front,
                at: level.place(level.wrap_in + level.front + from_out),
            };
        }
        let along = from_in - level.wrap_in;
        let at = level.place(along);
        Spot {
            half: Half::Back,
            at: height(at, along / level.flat.max(1.0)),
        }
    }

    /// A point in the frame of the back, unfolded onto the back face: beyond the folds it simply
    /// goes on, for areas that are clipped to the outline.
    pub fn back_unfolded(&self, p: Point) -> Point {
        let p = Point::new(p.x, self.lift.level_of(p.y));
        let level = self.level(p.y);
        let along = (p.x - level.back_in) * level.back_stretch - level.wrap_in;
        let at = level.place(along);
        Point::new(at.x, self.squeezed(at.y, p.y, along / level.flat.max(1.0)))
    }

    /// Heights above the seat level are drawn in towards the centre back, where the fullness of the
    /// seat takes up part of the seam.
    fn squeezed(&self, drawn_y: f64, y: f64, share: f64) -> f64 {
        if y <= self.seat_y {
            return drawn_y;
        }
        let share = share.clamp(0.0, 1.0);
        let factor = self.squeeze + (1.0 - self.squeeze) * share;
        drawn_y + (y - self.seat_y) * (factor - 1.0)
    }

    /// A point in the frame of the yoke.
    pub fn yoke(&self, p: Point) -> Spot {
        let (at, fold) = self.yoke_on_back(p);
        folded(at.x, at.y, fold)
    }

    /// A point in the frame of the yoke, unfolded onto the back face.
    pub fn yoke_unfolded(&self, p: Point) -> Point {
        self.yoke_on_back(p).0
    }

    fn yoke_on_back(&self, p: Point) -> (Point, f64) {
        let Some(rules) = &self.yoke else {
            return (self.back_unfolded(p), f64::INFINITY);
        };
        let (s, t) = rules.locate(p);
        let k = (s * YOKE_RULES as f64).clamp(0.0, YOKE_RULES as f64);
        let i = (k.floor() as usize).min(YOKE_RULES - 1);
        let (a, b) = (rules.lower_flat[i], rules.lower_flat[i + 1]);
        let f = k - i as f64;
        let low = (a.0 + (b.0 - a.0) * f, a.1 + (b.1 - a.1) * f);
        let top_x = s * self.yoke_waist_length;
        let top = (top_x, self.back_waist_y(top_x));
        let x = low.0 + (top.0 - low.0) * t;
        let y = low.1 + (top.1 - low.1) * t;
        let fold = rules.low_flat_width + (self.fold() - rules.low_flat_width) * t;
        (Point::new(x, y), fold)
    }

    /// Distance from centre front (or back) to the side fold, at the waist.
    pub fn fold(&self) -> f64 {
        (self.front_waist_length + self.yoke_waist_length) / 2.0
    }

    /// Height of the waist seam on the back face, `x` from the centre back.
    fn back_waist_y(&self, x: f64) -> f64 {
        let t = (x / self.yoke_waist_length.max(1.0)).clamp(-1.0, 1.2);
        self.side_waist_y + (self.centre_back_y - self.side_waist_y) * (1.0 - t * t)
    }

    /// Height of the waist seam on the front face, `x` from the centre front.
    fn front_waist_y(&self, x: f64) -> f64 {
        if x <= self.front_waist_length {
            let p = self.front_waist.point_at(Length::mm(x));
            return self.front(p).at.y;
        }
        // Round the fold the yoke's waist goes on.
        self.back_waist_y(self.yoke_waist_length - (x - self.front_waist_length))
    }

    /// A point of the band: `along` from the centre front of this half over the side towards the
    /// centre back, `up` above the band seam.
    pub fn band(&self, along: f64, up: f64) -> Spot {
        let along = along * self.band_ease_scale;
        let fold = self.fold();
        if along <= fold {
            return Spot {
                half: Half::Front,
                at: Point::new(along, self.front_waist_y(along.abs()) + up),
            };
        }
        let x = 2.0 * fold - along;
        Spot {
            half: Half::Back,
            at: Point::new(x, self.back_waist_y(x) + up),
        }
    }

    /// The waist seam of a face from the centre to the fold.
    pub fn waist_line(&self, half: Half) -> Vec<Point> {
        let fold = self.fold();
        (0..=60)
            .map(|k| {
                let x = fold * f64::from(k) / 60.0;
                let y = match half {
                    Half::Front => self.front_waist_y(x),
                    Half::Back => self.back_waist_y(x),
                };
                Point::new(x, y)
            })
            .collect()
    }

    /// The outer fold from hem to waist, and the inner fold from hem to crotch.
    pub fn folds(&self) -> (Vec<Point>, Vec<Point>) {
        let heights = |from: f64, to: f64| {
            let n = ((to - from) / 4.0).ceil().max(1.0) as usize;
            (0..=n).map(move |k| from + (to - from) * k as f64 / n as f64)
        };
        let mut outer: Vec<Point> = heights(self.hem_y, self.side_waist_y - 8.0)
            .map(|y| self.level(y).outer)
            .collect();
        // Into the waist the fold meets the band where the band folds.
        outer.push(Point::new(self.fold(), self.front_waist_y(self.fold())));
        let inner = heights(self.hem_y, 0.0)
            .map(|y| self.level(y).place(0.0))
            .collect();
        (outer, inner)
    }
}

/// A point on the unfolded back, folded to the front where it lies beyond the fold.
fn folded(x: f64, y: f64, fold: f64) -> Spot {
    if x > fold {
        Spot {
            half: Half::Front,
            at: Point::new(2.0 * fold - x, y),
        }
    } else {
        Spot {
            half: Half::Back,
            at: Point::new(x, y),
        }
    }
}

/// Below the seat level the back comes to wrap both folds alike.
fn share_wraps(levels: &mut [Level], low: f64, seat_y: f64) {
    let at_seat = {
        let k = ((seat_y - low) / STEP_MM).clamp(0.0, (levels.len() - 1) as f64) as usize;
        levels[k].wrap_out
    };
    let at_thigh = {
        let k = ((-WRAP_RUN_MM - low) / STEP_MM).clamp(0.0, (levels.len() - 1) as f64) as usize;
        levels[k].wrap_out / 2.0
    };
    for (k, level) in levels.iter_mut().enumerate() {
        let y = low + k as f64 * STEP_MM;
        if y >= seat_y {
            continue;
        }
        let spare = level.wrap_out;
        let target = if y < -WRAP_RUN_MM {
            spare / 2.0
        } else {
            let t = smooth((seat_y - y) / (seat_y + WRAP_RUN_MM));
            at_seat + (at_thigh - at_seat) * t
        };
        level.wrap_out = target.min(spare);
        level.wrap_in = spare - level.wrap_out;
    }
}

/// Places every level below the seat: the side fold runs on smoothly from the hip into the leg, the
/// leg hangs from it, a little spread. The crotch is about twice as deep as the flat leg has room
/// for, so the fork folds in between the legs, as it does on a table.
fn lay_legs(levels: &mut [Level], low: f64, seat_y: f64) {
    let spread = SPREAD_DEG.to_radians();
    let last = levels.len() - 1;
    let index = |y: f64| ((y - low) / STEP_MM).clamp(0.0, last as f64) as usize;
    let height = |k: usize| low + k as f64 * STEP_MM;
    let (seat, leg) = (index(seat_y), index(-LEG_FROM_MM));
    // The leg, rigid from its top down.
    let along = Vec2::new(spread.cos(), spread.sin());
    let up = Vec2::new(-along.y, along.x);
    let fold = Point::new(levels[seat].outer.x + SIDE_OUT_MM, height(leg));
    let top = fold - along * (levels[leg].flat / 2.0);
    for (k, level) in levels.iter_mut().enumerate().take(leg + 1) {
        let axis = top + up * (height(k) - height(leg));
        level.along = along;
        level.outer = axis + along * (level.flat / 2.0);
    }
    // From the seat level to the leg: one cubic that leaves and arrives in line with both.
    let run = height(seat) - height(leg);
    if run <= 0.0 || leg < 2 || seat + 1 >= levels.len() {
        return;
    }
    let slope = |a: &Level, b: &Level| (b.outer.x - a.outer.x) / (b.outer.y - a.outer.y).max(1e-9);
    let (x0, m0) = (levels[leg].outer.x, slope(&levels[leg - 2], &levels[leg]));
    let (x1, m1) = (
        levels[seat].outer.x,
        slope(&levels[seat], &levels[seat + 1]),
    );
    for (k, level) in levels.iter_mut().enumerate().take(seat).skip(leg + 1) {
        let t = (height(k) - height(leg)) / run;
        let (t2, t3) = (t * t, t * t * t);
        let x = (2.0 * t3 - 3.0 * t2 + 1.0) * x0
            + (t3 - 2.0 * t2 + t) * run * m0
            + (3.0 * t2 - 2.0 * t3) * x1
            + (t3 - t2) * run * m1;
        // The whole turn is done above the crotch, so that the inseam keeps its length.
        let turn = spread * smooth(1.0 - height(k) / seat_y.max(1.0));
        level.along = Vec2::new(turn.cos(), turn.sin());
        level.outer = Point::new(x, height(k));
        // Above the crotch the centre seams must not part from the centre line; the panels are
        // drawn out by the few millimetres that takes.
        let missing = x - level.wrap_out - level.front;
        if height(k) > 0.0 && missing > 0.0 {
            level.stretch *= (level.front + missing) / level.front.max(1.0);
            level.front += missing;
            level.wrap_in = 0.0;
            level.flat = x;
            let back = (level.back_out - level.back_in).max(1.0);
            level.back_stretch = (level.flat + level.wrap_out) / back;
        }
    }
    keep_inseam(levels, index(0.0), seat);
}

/// Moves the levels of the leg up or down, a few millimetres in all, such that the inseam keeps its
/// length though the view shows the leg even about its middle; what is over is spread up to the seat.
fn keep_inseam(levels: &mut [Level], crotch: usize, seat: usize) {
    let inseam = |l: &Level| l.place(l.wrap_in);
    let mut moved = 0.0;
    for k in 1..=crotch {
        let run = (levels[k].front_in - levels[k - 1].front_in).hypot(STEP_MM);
        levels[k].outer.y += moved;
        let (from, to) = (inseam(&levels[k - 1]), inseam(&levels[k]));
        let across = to.x - from.x;
        let rise = (run * run - across * across).max(0.0).sqrt();
        let more = rise - (to.y - from.y);
        levels[k].outer.y += more;
        moved += more;
    }
    for (k, level) in levels.iter_mut().enumerate().take(seat).skip(crotch + 1) {
        let share = (seat - k) as f64 / (seat - crotch).max(1) as f64;
        level.outer.y += moved * smooth(share);
    }
}

/// Smooth step from 0 to 1.
fn smooth(t: f64) -> f64 {
    let t = t.clamp(0.0, 1.0);
    t * t * (3.0 - 2.0 * t)
}

fn edges<'a>(piece: &'a Piece, ids: &[EdgeId]) -> Option<Vec<&'a Path>> {
    ids.iter().map(|id| piece.edge(*id)).collect()
}

impl YokeRules {
    fn new(flat: &Flat, back: &Piece, yoke: &Piece) -> Option<YokeRules> {
        let along = |path: &Path| -> Vec<Point> {
            let total = path.length();
            (0..=YOKE_RULES)
                .map(|k| path.point_at(total * (k as f64 / YOKE_RULES as f64)))
                .collect()
        };
        let seam = along(&back.edge(EdgeId::Top)?.reversed());
        let lower_flat = seam
            .iter()
            .map(|p| {
                let level = flat.level(p.y);
                let x = p.x - level.back_in;
                let share = x / level.flat.max(1.0);
                (x, flat.squeezed(level.outer.y, p.y, share))
            })
            .collect();
        let side = back.point(PointId::YokeSide)?;
        Some(YokeRules {
            lower: along(yoke.edge(EdgeId::Lower)?),
            upper: along(&yoke.edge(EdgeId::Top)?.reversed()),
            lower_flat,
            low_flat_width: flat.level(side.y).flat,
        })
    }

    /// Share along and share up of a point, by finding the rule it lies on.
    fn locate(&self, p: Point) -> (f64, f64) {
        let rule = |k: usize| (self.lower[k], self.upper[k] - self.lower[k]);
        let off = |k: usize| {
            let (from, to) = rule(k);
            to.cross(p - from)
        };
        // Left of a rule the cross product is positive; it changes sign once along the strip.
        let (mut low, mut high) = (0, YOKE_RULES);
        while high - low > 1 {
            let middle = (low + high) / 2;
            if off(middle) > 0.0 {
                high = middle;
            } else {
                low = middle;
            }
        }
        let (a, b) = (off(low), off(high));
        let f = if (a - b).abs() > 1e-9 {
            a / (a - b)
        } else {
            0.0
        };
        let f = f.clamp(-3.0, 4.0);
        let (from, to) = rule(low);
        let (from2, to2) = rule(high);
        let foot = from.lerp(from2, f);
        let up = to.lerp(to2, f);
        let t = (p - foot).dot(up) / up.hypot2().max(1e-9);
        ((low as f64 + f) / YOKE_RULES as f64, t)
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use draft::{Spec, draft};

    fn demo() -> style::StyleDoc {
        let folder = concat!(
            env!("CARGO_MANIFEST_DIR"),
            "/../style/demo/saltmarsh/styles/ferryman"
        );
        style::load(folder.as_ref()).unwrap().style
    }

    fn length(points: &[Point]) -> f64 {
        points.windows(2).map(|w| (w[1] - w[0]).hypot()).sum()
    }

    /// What an inspector's tape finds on the view is the chart, in every size.
    #[test]
    fn the_view_measures_like_the_chart() {
        let doc = demo();
        for size in doc.sizes.all() {
            let spec = Spec::of(&doc, size);
            let pattern = draft(&spec).pattern;
            let flat = Flat::new(&pattern).unwrap();
            let near = |what: &str, got: f64, chart: Length| {
                let miss = got - chart.to_mm();
                assert!(miss.abs() <= 1.0, "{size} {what}: off by {miss:.2} mm");
            };
            near("waist", 4.0 * flat.fold(), spec.waist);
            let across = |y: f64| {
                let level = flat.level(y);
                (level.outer - level.place(0.0)).hypot()
            };
            near("seat", 4.0 * across(spec.seat_at.to_mm()), spec.seat);
            near("thigh", 2.0 * across(-spec.thigh_at.to_mm()), spec.thigh);
            near("knee", 2.0 * across(-spec.knee_at.to_mm()), spec.knee);
            near("hem", 2.0 * across(flat.hem_y), spec.hem);
            let front = pattern.piece(PieceId::Front).unwrap();
            let inseam: Vec<Point> = front
                .edge(EdgeId::Inseam)
                .unwrap()
                .dense(Length::mm(2.0))
                .into_iter()
                .map(|p| flat.front(p).at)
                .collect();
            near("inseam", length(&inseam), spec.inseam);
        }
    }

    /// Going once round a leg at any level, no point is lost and none is shown twice: the front and
    /// the back together cover both faces.
    #[test]
    fn a_level_is_covered_once() {
        let doc = demo();
        let pattern = draft(&Spec::of(&doc, doc.sizes.base)).pattern;
        let flat = Flat::new(&pattern).unwrap();
        for y in [-700.0, -400.0, -200.0, -80.0, 30.0, 80.0, 120.0, 160.0] {
            let level = flat.level(y);
            let back_face = (level.back_out - level.back_in) * level.back_stretch
                - level.wrap_in
                - level.wrap_out;
            assert!(
                (back_face - level.flat).abs() < 0.6,
                "at {y}: the back face is {back_face} wide, the view {}",
                level.flat
            );
            let edge = flat.back(Point::new(level.back_out - 0.01, y));
            assert_eq!(
                edge.half,
                Half::Front,
                "the outseam shows on the front at {y}"
            );
        }
    }

    #[test]
    fn a_yoke_sits_between_its_seam_and_the_waist() {
        let doc = demo();
        let pattern = draft(&Spec::of(&doc, doc.sizes.base)).pattern;
        let flat = Flat::new(&pattern).unwrap();
        let yoke = pattern.piece(PieceId::Yoke).unwrap();
        let low = flat.yoke(yoke.point(PointId::SeamCentre).unwrap());
        let seam = flat.back(
            pattern
                .piece(PieceId::Back)
                .unwrap()
                .point(PointId::YokeCentre)
                .unwrap(),
        );
        assert!((low.at - seam.at).hypot() < 0.5, "{low:?} {seam:?}");
        let top = flat.yoke(yoke.point(PointId::WaistCentre).unwrap());
        assert!((top.at.y - low.at.y - pattern.spec.yoke_centre.to_mm()).abs() < 0.5);
        assert_eq!(
            flat.yoke(yoke.point(PointId::SideWaist).unwrap()).half,
            Half::Front
        );
    }
}
