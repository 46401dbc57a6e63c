//! Finding one piece a better place while all others stay.

use geometry::Point;

use crate::board::Board;
use crate::poses::Pose;
use crate::random::Random;

/// Places tried at random over the whole cloth, and round where the piece lies.
const ANYWHERE: usize = 50;
const NEARBY: usize = 25;
/// The same for a piece that only moves along the cloth.
const ANYWHERE_ALONG: usize = 15;
const NEARBY_ALONG: usize = 15;
/// How many of the best places are refined.
const KEPT: usize = 3;

/// A place and what it costs.
#[derive(Clone, Copy, Debug)]
struct Candidate {
    pose: Pose,
    cost: f64,
}

/// Step lengths of a refinement, as shares of the smaller side of the piece. Nothing finer is
/// needed: small overlaps are parted by moving all pieces at once.
const FIRST_STEP: f64 = 0.25;
const LAST_STEP: f64 = 0.02;

/// Moves the copy to the place of least weighted overlap that a sampled search finds, if that is
/// no worse than where it is.
pub(crate) fn improve(board: &mut Board, copy: usize, random: &mut Random) {
    let here = board.poses[copy];
    let now = board.cost_now(copy);
    let mut kept: Vec<Candidate> = vec![Candidate {
        pose: here,
        cost: now,
    }];
    let stance_now = board.stance(copy, here.stance);
    let (anywhere, nearby) = if stance_now.fixed() {
        (ANYWHERE_ALONG, NEARBY_ALONG)
    } else {
        (ANYWHERE, NEARBY)
    };
    let apart = 0.05 * smaller_side(board, copy);
    for k in 0..anywhere + nearby {
        let stance = random.below(board.stances(copy).len());
        let s = board.stance(copy, stance);
        let (mut left, mut right) = (s.half.0, board.length - s.half.0);
        let (mut low, mut high) = (s.low, s.high);
        if k < nearby {
            left = left.max(here.at.x - stance_now.half.0).min(right);
            right = right.min(here.at.x + stance_now.half.0).max(left);
            if !s.fixed() {
                low = low.max(here.at.y - stance_now.half.1).min(high);
                high = high.min(here.at.y + stance_now.half.1).max(low);
            }
        }
        let at = Point::new(random.between(left, right), random.between(low, high));
        let pose = Pose { stance, at };
        let enough = if kept.len() < KEPT {
            f64::INFINITY
        } else {
            kept[kept.len() - 1].cost
        };
        let cost = board.cost(copy, pose, enough);
        keep(&mut kept, Candidate { pose, cost }, apart);
    }
    let mut best = kept[0];
    for candidate in kept {
        let refined = refine(board, copy, candidate, random);
        if refined.cost < best.cost || (refined.cost == best.cost && best.pose == here) {
            best = refined;
        }
    }
    if best.cost <= now && best.pose != here {
        board.put(copy, best.pose);
    }
}

fn smaller_side(board: &Board, copy: usize) -> f64 {
    let half = board.stance(copy, 0).half;
    2.0 * half.0.min(half.1)
}

/// Keeps the best few places that differ from one another.
fn keep(kept: &mut Vec<Candidate>, new: Candidate, apart: f64) {
    let like = kept.iter().position(|k| {
        k.pose.stance == new.pose.stance && (k.pose.at - new.pose.at).hypot() < apart
    });
    if let Some(i) = like {
        if kept[i].cost <= new.cost {
            return;
        }
        kept.remove(i);
    }
    let at = kept.partition_point(|k| k.cost <= new.cost);
    if at < KEPT {
        kept.insert(at, new);
        kept.truncate(KEPT);
    }
}

/// Walks downhill along one axis at a time, with longer steps after a success and shorter ones
/// after a failure.
fn refine(board: &mut Board, copy: usize, start: Candidate, random: &mut Random) -> Candidate {
    let side = smaller_side(board, copy);
    let s = board.stance(copy, start.pose.stance);
    let (left, right) = (s.half.0, (board.length - s.half.0).max(s.half.0));
    let (mut dx, mut dy) = (
        FIRST_STEP * side,
        if s.fixed() { 0.0 } else { FIRST_STEP * side },
    );
    let limit = LAST_STEP * side;
    let mut best = start;
    let mut axis = axis_of_chance(s.fixed(), random);
    while dx >= limit || dy >= limit {
        if best.cost <= 0.0 {
            break;
        }
        let (mx, my) = (axis.0 * dx, axis.1 * dy);
        let mut better = false;
        for sign in [1.0, -1.0] {
            let at = Point::new(
                (best.pose.at.x + sign * mx).min(right).max(left),
                (best.pose.at.y + sign * my).min(s.high).max(s.low),
            );
            if at == best.pose.at {
                continue;
            }
            let pose = Pose {
                stance: start.pose.stance,
                at,
            };
            let cost = board.cost(copy, pose, best.cost);
            if cost <= best.cost {
                better = cost < best.cost;
                best = Candidate { pose, cost };
                break;
            }
        }
        let factor: f64 = if better { 1.1 } else { 0.5 };
        if axis.0 != 0.0 && axis.1 != 0.0 {
            dx *= factor.sqrt();
            dy *= factor.sqrt();
        } else if axis.0 != 0.0 {
            dx *= factor;
        } else {
            dy *= factor;
        }
        if !better {
            axis = axis_of_chance(s.fixed(), random);
        }
    }
    best
}

fn axis_of_chance(fixed: bool, random: &mut Random) -> (f64, f64) {
    if fixed {
        return (1.0, 0.0);
    }
    [(1.0, 0.0), (0.0, 1.0), (1.0, 1.0), (1.0, -1.0)][random.below(4)]
}
