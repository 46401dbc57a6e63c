//! How the legs lie: what the back wraps of them, and how they spread from the hip to the hem.

use geometry::tolerance::NO_LENGTH_MM;
use geometry::{Point, Vec2};

use crate::level::{Level, STEP_MM};
use crate::looks::{LEG_FROM_MM, SIDE_OUT_MM, SPREAD_DEG, WRAP_RUN_MM};
use crate::smooth;

/// Below the seat level the back comes to wrap both folds alike.
pub(crate) fn share_wraps(levels: &mut [Level], low: f64, seat_y: f64) {
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
pub(crate) fn lay_legs(levels: &mut [Level], low: f64, seat_y: f64) {
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
    let slope =
        |a: &Level, b: &Level| (b.outer.x - a.outer.x) / (b.outer.y - a.outer.y).max(NO_LENGTH_MM);
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
