//! How the legs lie: what the back wraps of them, how they hang from the hip, and what of them lies behind.
//!
//! At the fork both legs together are wider than the seat, by the extensions of front and back under the crotch. On a table
//! that cloth does not lie beside the hip: it sinks between the legs and lies behind their inner edges. So the outer
//! line runs on from the hip into the leg without a bulge, the inner edges meet at the fork, and what a level is wider
//! than the room between them is [`Tucked`]. From about a hand below the fork a leg lies flat in its whole girth, its
//! front as it was drafted, only turned.

use geometry::tolerance::NO_LENGTH_MM;
use geometry::{Point, Vec2};

use crate::level::{Level, STEP_MM, Tucked};
use crate::looks::{
    APART_MM, ENOUGH_APART_MM, FORK_SLOPE, LEAST_APART_MM, LEG_FROM_SHARES, RISE_SHARE, SPREAD_DEG,
    TURN_DEG,
};
use crate::smooth;

/// Heights and lengths the legs are laid by, in millimetres; heights up from the crotch.
pub(crate) struct LegMeasures {
    pub(crate) seat_y: f64,
    pub(crate) knee_y: f64,
    pub(crate) hem_y: f64,
    /// The centre seam of the front from the band to the fork, along the seam and straight up.
    pub(crate) rise: f64,
    pub(crate) rise_height: f64,
}

/// The table of levels, asked by height.
struct Table<'a> {
    levels: &'a mut [Level],
    low: f64,
}

impl Table<'_> {
    fn index(&self, y: f64) -> usize {
        ((y - self.low) / STEP_MM).clamp(0.0, (self.levels.len() - 1) as f64) as usize
    }

    fn height(&self, k: usize) -> f64 {
        self.low + k as f64 * STEP_MM
    }
}

/// The rows of the table at which the lie of a leg changes, from the hem up.
struct Marks {
    hem: usize,
    /// From here down the leg lies flat.
    leg: usize,
    crotch: usize,
    seat: usize,
}

/// Lays every level below the seat.
pub(crate) fn lay_legs(levels: &mut [Level], low: f64, measures: &LegMeasures) {
    let mut table = Table { levels, low };
    let mut laid = None;
    for share in LEG_FROM_SHARES {
        let marks = Marks {
            hem: table.index(measures.hem_y),
            leg: table.index(measures.knee_y * share),
            crotch: table.index(0.0),
            seat: table.index(measures.seat_y),
        };
        // A draft whose levels have come out of order is laid as it is.
        let ordered = marks.hem + 2 < marks.leg
            && marks.leg + 2 < marks.crotch
            && marks.crotch + 2 < marks.seat
            && marks.seat + 6 < table.levels.len();
        if !ordered {
            break;
        }
        let hung = hang(&table, &marks);
        let enough = hung.apart >= ENOUGH_APART_MM;
        laid = Some((marks, hung));
        if enough {
            break;
        }
    }
    let Some((marks, hung)) = laid else {
        return;
    };
    share_wraps(&mut table, &marks);
    let (leg_top, fork) = ends(&table, &marks, &hung, measures);
    lay_flat(&mut table, &marks, &hung, leg_top);
    lay_thigh(&mut table, &marks, &hung, fork);
}

/// The back wraps the outer fold alone down to the fork, where the inseam lies on the inner edge; below, it comes to wrap
/// both folds alike.
fn share_wraps(table: &mut Table, marks: &Marks) {
    let at_seat = table.levels[marks.seat].wrap_out;
    let at_leg = table.levels[marks.leg].wrap_out / 2.0;
    for k in 0..marks.seat {
        let spare = table.levels[k].wrap_out;
        let part = |from: usize| smooth((from - k) as f64 / (from - marks.leg) as f64);
        let level = &mut table.levels[k];
        if k <= marks.leg {
            level.wrap_out = spare / 2.0;
            level.wrap_in = spare / 2.0;
            continue;
        }
        level.wrap_out = at_seat + (at_leg - at_seat) * part(marks.seat);
        level.wrap_in = if k < marks.crotch {
            at_leg * part(marks.crotch)
        } else {
            0.0
        };
    }
}

/// Both edges of a leg that lies flat, in the frame of the front: its seams, with what the back adds round each fold.
fn drafted_outer(level: &Level) -> f64 {
    drafted_inner(level) + level.flat
}

fn drafted_inner(level: &Level) -> f64 {
    level.front_in - (level.flat - level.front) / 2.0
}

/// How a leg hangs: by how much its front is turned, and how its edges run where it begins to lie flat.
struct Hung {
    /// Up the leg, as it lies.
    up: Vec2,
    along: Vec2,
    /// How far the inner edges are from the centre line there.
    apart: f64,
    /// Outwards per millimetre down: the outer line at the seat, and both edges at the top of the leg.
    seat_slope: f64,
    outer_slope: f64,
    inner_slope: f64,
}

fn hang(table: &Table, marks: &Marks) -> Hung {
    let levels = &table.levels;
    let down = |from: usize, to: usize| (from - to) as f64 * STEP_MM;
    let slope = |of: fn(&Level) -> f64, from: usize, to: usize| {
        (of(&levels[to]) - of(&levels[from])) / down(from, to)
    };
    let outward = slope(drafted_outer, marks.leg, marks.hem).atan();
    let turn = (SPREAD_DEG - outward.to_degrees())
        .clamp(*TURN_DEG.start(), *TURN_DEG.end())
        .to_radians();
    let turned = |drafted: f64| (drafted.atan() + turn).tan();
    let near = 8.min(marks.leg - marks.hem);
    let outer_slope = turned(slope(drafted_outer, marks.leg, marks.leg - near));
    let inner_slope = turned(slope(drafted_inner, marks.leg, marks.leg - near));
    let half = |l: &Level| l.flat;
    let above = (marks.seat + 8).min(levels.len() - 1);
    let seat_slope = slope(half, above, marks.seat);
    // A cubic between the two has no turn of its own while its mean slope is in this range.
    let calm = [
        (seat_slope + 2.0 * outer_slope) / 3.0,
        (2.0 * seat_slope + outer_slope) / 3.0,
    ];
    let run = down(marks.seat, marks.leg);
    let width = levels[marks.leg].flat * turn.cos();
    let least = levels[marks.seat].flat + calm[0].min(calm[1]) * run - width;
    let most = levels[marks.seat].flat + calm[0].max(calm[1]) * run - width;
    Hung {
        up: Vec2::new(-turn.sin(), turn.cos()),
        along: Vec2::new(turn.cos(), turn.sin()),
        // Of numbers that are none neither bound holds, which `clamp` would not stand.
        apart: APART_MM.max(least).min(most).max(LEAST_APART_MM),
        seat_slope,
        outer_slope,
        inner_slope,
    }
}

/// The inner end of the top of the leg, and the fork. The outseam keeps its length; where the fork can sink so far that the
/// inseam keeps it too, it does, else the rest of the inseam's beginning lies in the fork.
fn ends(table: &Table, marks: &Marks, hung: &Hung, measures: &LegMeasures) -> (Point, Point) {
    let levels = &table.levels;
    let length = |of: &dyn Fn(&Level) -> f64, from: usize, to: usize| -> f64 {
        levels[from..=to]
            .windows(2)
            .map(|w| (of(&w[1]) - of(&w[0])).hypot(STEP_MM))
            .sum()
    };
    let outseam = length(&|l| l.front_in + l.front / l.stretch, marks.leg, marks.seat);
    let inseam = length(&|l| l.front_in, marks.leg, marks.crotch);
    let leg = &levels[marks.leg];
    let out = hung.apart + leg.flat * hung.along.x;
    let across = out - levels[marks.seat].flat;
    let deep = (outseam * outseam - across * across).max(0.0).sqrt();
    let mut inner_y = measures.seat_y - deep - leg.flat * hung.along.y;
    let in_across = hung.apart + leg.wrap_in;
    let inseam_deep = (inseam * inseam - in_across * in_across).max(0.0).sqrt();
    let lowest = -(measures.rise - measures.rise_height).max(0.0);
    let mut fork_y = (inner_y + inseam_deep).min(lowest * RISE_SHARE);
    if fork_y < lowest {
        inner_y += lowest - fork_y;
        fork_y = lowest;
    }
    (Point::new(hung.apart, inner_y), Point::new(0.0, fork_y))
}

/// The leg proper: the front as it was drafted, turned.
fn lay_flat(table: &mut Table, marks: &Marks, hung: &Hung, top: Point) {
    let from = drafted_inner(&table.levels[marks.leg]);
    for k in 0..=marks.leg {
        let down = table.height(k) - table.height(marks.leg);
        let level = &mut table.levels[k];
        let inner = top + hung.up * down + hung.along * (drafted_inner(level) - from);
        level.along = hung.along;
        level.outer = inner + hung.along * level.flat;
    }
}

/// Between seat and leg: the outer line is one cubic in line with both, the inner one runs down the centre line to the fork
/// and then parts from it.
fn lay_thigh(table: &mut Table, marks: &Marks, hung: &Hung, fork: Point) {
    let [hip, leg] = [marks.seat, marks.leg].map(|k| table.levels[k].outer);
    let leg_inner = table.levels[marks.leg].place(0.0);
    let seat_y = table.height(marks.seat);
    let outer_run = hip.y - leg.y;
    let inner_run = fork.y - leg_inner.y;
    // A steeper arrival would let the inner edge swing back over the centre line.
    let steepest = 3.0 * leg_inner.x / inner_run.max(1.0);
    let arrival = hung.inner_slope.max(0.0).min(steepest);
    for k in marks.leg + 1..marks.seat {
        let outer_t = (marks.seat - k) as f64 / (marks.seat - marks.leg) as f64;
        let outer = Point::new(
            cubic(
                outer_t,
                [hip.x, leg.x],
                [hung.seat_slope * outer_run, hung.outer_slope * outer_run],
            ),
            hip.y - outer_run * outer_t,
        );
        let inner = if k >= marks.crotch {
            let t = (marks.seat - k) as f64 / (marks.seat - marks.crotch) as f64;
            Point::new(0.0, seat_y + (fork.y - seat_y) * t)
        } else {
            let t = (marks.crotch - k) as f64 / (marks.crotch - marks.leg) as f64;
            let slopes = [FORK_SLOPE * inner_run, arrival * inner_run];
            Point::new(
                cubic(t, [0.0, leg_inner.x], slopes).max(0.0),
                fork.y - inner_run * t,
            )
        };
        set(&mut table.levels[k], inner, outer);
    }
}

/// Lays a level between two points; what has no room there is tucked away.
fn set(level: &mut Level, inner: Point, outer: Point) {
    let across = outer - inner;
    level.flat = across.hypot();
    level.along = across / level.flat.max(NO_LENGTH_MM);
    level.outer = outer;
    level.tucked = Tucked {
        front: level.front + level.wrap_in + level.wrap_out - level.flat,
        back: level.back_out - level.back_in - level.wrap_in - level.wrap_out - level.flat,
    };
}

/// The cubic from one value to another that leaves and arrives with these slopes, at `t` of its way.
fn cubic(t: f64, [from, to]: [f64; 2], [leaves, arrives]: [f64; 2]) -> f64 {
    let (t2, t3) = (t * t, t * t * t);
    (2.0 * t3 - 3.0 * t2 + 1.0) * from
        + (t3 - 2.0 * t2 + t) * leaves
        + (3.0 * t2 - 2.0 * t3) * to
        + (t3 - t2) * arrives
}
