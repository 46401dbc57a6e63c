//! The cloth with every piece on it, overlaps allowed and measured.

use geometry::Point;

use crate::poses::{Pose, Poses};
use crate::problem::Turn;
use crate::shapes::Stance;
use crate::tables::{Placed, Tables};

/// An overlap counts as if it were deeper by this share of the smaller piece's size (the square root
/// of its hull's area). Few pieces then overlap by much instead of many by a little, and few are
/// mended by finding one piece another place.
const TOUCHING: f64 = 0.05;

/// The pieces on the cloth, with the overlap of every two and how much it weighs at present.
pub(crate) struct Board<'a> {
    pub tables: &'a Tables<'a>,
    pub length: f64,
    /// Poses of the copies; the faults follow in `placed` only.
    pub poses: Vec<Pose>,
    placed: Vec<Placed>,
    boxes: Vec<Extent>,
    /// What an overlap of this copy's shape counts for, by depth.
    factor: Vec<f64>,
    /// By how much deeper an overlap with this copy counts than it is.
    touching: Vec<f64>,
    /// Overlap of every two, a full square so that a row lies together.
    overlap: Vec<f64>,
    weight: Vec<f64>,
    /// Places tried so far.
    pub tried: u64,
}

/// The upright rectangle round a placed shape.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Extent {
    left: f64,
    right: f64,
    low: f64,
    high: f64,
}

impl Extent {
    pub(crate) fn new(at: Point, half: (f64, f64)) -> Self {
        Self {
            left: at.x - half.0,
            right: at.x + half.0,
            low: at.y - half.1,
            high: at.y + half.1,
        }
    }

    pub(crate) fn wider(self, by: f64) -> Self {
        Self {
            left: self.left - by,
            right: self.right + by,
            low: self.low - by,
            high: self.high + by,
        }
    }

    pub(crate) fn meets(&self, other: &Self) -> bool {
        (self.left < other.right)
            & (self.right > other.left)
            & (self.low < other.high)
            & (self.high > other.low)
    }
}

impl<'a> Board<'a> {
    pub(crate) fn new(tables: &'a Tables<'a>, start: &Poses) -> Self {
        let shapes = tables.shapes;
        let copies = shapes.copies.len();
        let all = copies + shapes.faults.len();
        let typical = shapes
            .copies
            .iter()
            .map(|&s| root4(shapes.shapes[s].hull_area))
            .sum::<f64>()
            / copies.max(1) as f64;
        let mut board = Self {
            tables,
            length: start.length,
            poses: start.poses.clone(),
            placed: Vec::with_capacity(all),
            boxes: Vec::with_capacity(all),
            factor: shapes
                .copies
                .iter()
                .copied()
                .chain(shapes.faults.iter().map(|f| f.0))
                .map(|s| root4(shapes.shapes[s].hull_area) / typical)
                .collect(),
            touching: shapes
                .copies
                .iter()
                .copied()
                .chain(shapes.faults.iter().map(|f| f.0))
                .map(|s| TOUCHING * shapes.shapes[s].hull_area.max(0.0).sqrt())
                .collect(),
            overlap: vec![0.0; all * all],
            weight: vec![1.0; all * all],
            tried: 0,
        };
        for copy in 0..copies {
            let placed = board.as_placed(copy, board.poses[copy]);
            board.placed.push(placed);
            board.boxes.push(Extent::new(
                placed.at,
                board.stance(copy, board.poses[copy].stance).half,
            ));
        }
        for &(shape, at) in &shapes.faults {
            board.placed.push(Placed {
                shape,
                turn: Turn::None,
                at,
            });
            board.boxes.push(Extent::new(at, shapes.shapes[shape].half));
        }
        board.measure_all();
        board
    }

    pub(crate) fn copies(&self) -> usize {
        self.poses.len()
    }

    pub(crate) fn stances(&self, copy: usize) -> &'a [Stance] {
        let shapes = self.tables.shapes;
        &shapes.shapes[shapes.copies[copy]].stances
    }

    pub(crate) fn stance(&self, copy: usize, stance: usize) -> Stance {
        self.stances(copy)[stance]
    }

    fn as_placed(&self, copy: usize, pose: Pose) -> Placed {
        Placed {
            shape: self.tables.shapes.copies[copy],
            turn: self.stance(copy, pose.stance).turn,
            at: pose.at,
        }
    }

    pub(crate) fn poses(&self) -> Poses {
        Poses {
            length: self.length,
            poses: self.poses.clone(),
        }
    }

    /// Lays everything anew; the weights stay.
    pub(crate) fn load(&mut self, poses: &Poses) {
        self.length = poses.length;
        for (copy, pose) in poses.poses.iter().enumerate() {
            self.set(copy, *pose);
        }
        self.measure_all();
    }

    pub(crate) fn placed(&self) -> &[Placed] {
        &self.placed
    }

    /// Moves a copy without measuring; [`Self::measure_all`] has to follow.
    pub(crate) fn set(&mut self, copy: usize, pose: Pose) {
        self.poses[copy] = pose;
        self.placed[copy] = self.as_placed(copy, pose);
        self.boxes[copy] = Extent::new(pose.at, self.stance(copy, pose.stance).half);
    }

    pub(crate) fn measure_all(&mut self) {
        let all = self.placed.len();
        for i in 0..all {
            for j in 0..i {
                let overlap = if i < self.copies() || j < self.copies() {
                    self.overlap_of(i, j)
                } else {
                    0.0
                };
                self.overlap[i * all + j] = overlap;
                self.overlap[j * all + i] = overlap;
            }
        }
    }

    fn overlap_of(&self, i: usize, j: usize) -> f64 {
        let gap = self.tables.shapes.gap;
        if self.boxes[i].wider(gap).meets(&self.boxes[j]) {
            self.counts(i, j, self.tables.depth(&self.placed[i], &self.placed[j]))
        } else {
            0.0
        }
    }

    /// What an overlap of that depth counts for.
    fn counts(&self, i: usize, j: usize, depth: f64) -> f64 {
        if depth > 0.0 {
            (depth + self.touching[i].min(self.touching[j])) * self.factor[i] * self.factor[j]
        } else {
            0.0
        }
    }

    /// Moves a copy and measures its overlaps anew.
    pub(crate) fn put(&mut self, copy: usize, pose: Pose) {
        self.set(copy, pose);
        let all = self.placed.len();
        for j in 0..all {
            if j != copy {
                let overlap = self.overlap_of(copy, j);
                self.overlap[copy * all + j] = overlap;
                self.overlap[j * all + copy] = overlap;
            }
        }
    }

    /// The weighted overlap the copy would have in that pose. Stops adding where the sum passes
    /// `enough`.
    pub(crate) fn cost(&mut self, copy: usize, pose: Pose, enough: f64) -> f64 {
        self.tried += 1;
        let all = self.placed.len();
        let shapes = self.tables.shapes;
        let half = self.stance(copy, pose.stance).half;
        let wide = Extent::new(pose.at, (half.0 + shapes.gap, half.1 + shapes.gap));
        let placed = self.as_placed(copy, pose);
        let weight = &self.weight[copy * all..(copy + 1) * all];
        let mut sum = 0.0;
        for (j, other) in self.boxes.iter().enumerate() {
            if wide.meets(other) && j != copy {
                let depth = self.tables.depth(&placed, &self.placed[j]);
                if depth > 0.0 {
                    sum += self.counts(copy, j, depth) * weight[j];
                    if sum > enough {
                        break;
                    }
                }
            }
        }
        sum
    }

    /// The weighted overlap of a copy where it lies.
    pub(crate) fn cost_now(&self, copy: usize) -> f64 {
        let all = self.placed.len();
        let row = copy * all..(copy + 1) * all;
        self.overlap[row.clone()]
            .iter()
            .zip(&self.weight[row])
            .map(|(o, w)| o * w)
            .sum()
    }

    pub(crate) fn overlaps(&self, copy: usize) -> bool {
        let all = self.placed.len();
        self.overlap[copy * all..(copy + 1) * all]
            .iter()
            .any(|o| *o > 0.0)
    }

    /// The overlap of all, each two counted once, unweighted.
    pub(crate) fn total(&self) -> f64 {
        self.overlap.iter().sum::<f64>() / 2.0
    }

    pub(crate) fn reset_weights(&mut self) {
        self.weight.fill(1.0);
    }

    /// Makes the overlaps that last weigh more and lets the others fade.
    pub(crate) fn update_weights(&mut self) {
        let most = self.overlap.iter().copied().fold(0.0, f64::max);
        if most <= 0.0 {
            return;
        }
        for (weight, overlap) in self.weight.iter_mut().zip(&self.overlap) {
            if *overlap > 0.0 {
                *weight = (*weight * (1.2 + 0.8 * overlap / most)).min(1e12);
            } else {
                *weight = f64::max(1.0, *weight * 0.95);
            }
        }
    }

    /// Shortens the cloth by taking out a strip at `cut`: what lies right of it moves left, and
    /// nothing reaches beyond the end.
    pub(crate) fn shorten(&mut self, length: f64, cut: f64) {
        let step = self.length - length;
        self.length = length;
        for copy in 0..self.copies() {
            let mut pose = self.poses[copy];
            let half = self.stance(copy, pose.stance).half.0;
            if pose.at.x > cut {
                pose.at.x -= step;
            }
            pose.at.x = pose.at.x.min(length - half).max(half);
            self.set(copy, pose);
        }
        self.measure_all();
    }

    /// Lengthens the cloth by putting in a strip at `cut`: what lies right of it moves right.
    pub(crate) fn lengthen(&mut self, by: f64, cut: f64) {
        self.length += by;
        for copy in 0..self.copies() {
            let mut pose = self.poses[copy];
            if pose.at.x > cut {
                pose.at.x += by;
                self.set(copy, pose);
            }
        }
        self.measure_all();
    }

    /// How far right the pieces reach.
    pub(crate) fn reach(&self) -> f64 {
        self.boxes[..self.copies()]
            .iter()
            .map(|b| b.right)
            .fold(0.0, f64::max)
    }
}

fn root4(x: f64) -> f64 {
    x.max(0.0).sqrt().sqrt()
}
