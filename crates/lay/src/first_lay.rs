//! A first lay within a fraction of a second: piece by piece, the largest first, each as far left
//! as it is seen to fit.
//!
//! Here the collision engine of `jagua-rs` is asked whether a piece may lie at a place. It needs no
//! preparation, so that even an order of a hundred different pieces has its first lay at once.

use std::sync::Arc;

use geometry::Point;
use jagua_rs::collision_detection::hazards::filter::NoFilter;
use jagua_rs::collision_detection::hazards::{Hazard, HazardEntity};
use jagua_rs::collision_detection::{CDEConfig, CDEngine};
use jagua_rs::geometry::DTransformation;
use jagua_rs::geometry::fail_fast::SPSurrogateConfig;
use jagua_rs::geometry::geo_enums::GeoPosition;
use jagua_rs::geometry::geo_traits::TransformableFrom;
use jagua_rs::geometry::primitives::{Point as EnginePoint, Rect as EngineRect, SPolygon};
use jagua_rs::geometry::shape_modification::{ShapeModifyMode, offset_shape};

use crate::poses::{Pose, Poses};
use crate::problem::{LayError, Problem};
use crate::random::Random;
use crate::shapes::{Shapes, Stance};

/// How far off everything a piece waits, as a share of the width.
const CLEAR: f64 = 1e-5;
/// The finest steps in which a place is looked for, as a share of the width.
const FINEST: f64 = 1e-4;

/// Places tried for each piece.
const TRIES: usize = 600;

/// What occupies a part of the cloth, for the collision engine.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
enum Occupant {
    BeyondTheCloth,
    Piece(usize),
    Fault(usize),
}

impl HazardEntity for Occupant {
    fn scope(&self) -> GeoPosition {
        match self {
            Self::BeyondTheCloth => GeoPosition::Exterior,
            Self::Piece(_) | Self::Fault(_) => GeoPosition::Interior,
        }
    }

    fn is_dynamic(&self) -> bool {
        matches!(self, Self::Piece(_))
    }
}

/// Lays all copies without overlap.
///
/// # Errors
/// [`LayError::NoPlace`] when faults leave no place for a piece on the edge of the cloth.
pub(crate) fn start(problem: &Problem, shapes: &Shapes, seed: u64) -> Result<Poses, LayError> {
    let mut random = Random::new(seed, 0);
    let mut order: Vec<usize> = (0..shapes.copies.len()).collect();
    let size = |copy: usize| shapes.of(copy).hull_area * shapes.of(copy).diameter;
    let on_edge = |copy: usize| shapes.of(copy).stances.iter().all(Stance::fixed);
    order.sort_by(|&a, &b| {
        on_edge(b)
            .cmp(&on_edge(a))
            .then(size(b).total_cmp(&size(a)))
    });
    let mut filler = Filler::new(shapes, problem)?;
    let mut poses = vec![None; shapes.copies.len()];
    for copy in order {
        let pose = filler.place(copy, &mut random)?;
        poses[copy] = Some(pose);
    }
    let poses: Vec<Pose> = poses.into_iter().flatten().collect();
    Ok(Poses {
        length: filler.reach,
        poses,
    })
}

struct Filler<'a> {
    shapes: &'a Shapes,
    problem: &'a Problem,
    engine: CDEngine<Occupant>,
    /// Each shape grown by half the gap, and one of each to turn and move about.
    grown: Vec<SPolygon>,
    moving: Vec<SPolygon>,
    reach: f64,
    longest: f64,
}

impl<'a> Filler<'a> {
    fn new(shapes: &'a Shapes, problem: &'a Problem) -> Result<Self, LayError> {
        let longest_piece = |c: &usize| {
            let half = shapes.shapes[*c].half;
            2.0 * half.0.max(half.1) + shapes.gap
        };
        let faults_end = problem
            .faults
            .iter()
            .map(|f| f.x1 + shapes.gap)
            .fold(0.0, f64::max);
        let longest = faults_end + shapes.copies.iter().map(longest_piece).sum::<f64>() * 1.01;
        let mut grown = Vec::with_capacity(shapes.shapes.len());
        for (number, shape) in shapes.shapes.iter().enumerate() {
            grown.push(
                engine_shape(&shape.outline, shapes.gap)
                    .ok_or_else(|| name(shapes, problem, number))?,
            );
        }
        let margin = shapes.width + shapes.gap;
        let side = |v: f64| v as f32;
        let cloth = EngineRect {
            x_min: side(-margin),
            y_min: side(-margin),
            x_max: side(longest + margin),
            y_max: side(shapes.width + margin),
        };
        let beyond = Hazard::new(Occupant::BeyondTheCloth, Arc::new(SPolygon::from(cloth)));
        let config = CDEConfig {
            quadtree_depth: 6,
            cd_threshold: 16,
            item_surrogate_config: SPSurrogateConfig::none(),
        };
        let mut engine = CDEngine::new(cloth.inflate_to_square(), vec![beyond], config);
        for (k, (shape, at)) in shapes.faults.iter().enumerate() {
            let mut fault = grown[*shape].clone();
            fault.transform_from(
                &grown[*shape],
                &DTransformation::new(0.0, (at.x as f32, at.y as f32)).compose(),
            );
            engine.register_hazard(Hazard::new(Occupant::Fault(k), Arc::new(fault)));
        }
        Ok(Self {
            shapes,
            problem,
            engine,
            moving: grown.clone(),
            grown,
            reach: 0.0,
            longest,
        })
    }

    /// Puts the copy where it ends farthest left of all places tried.
    fn place(&mut self, copy: usize, random: &mut Random) -> Result<Pose, LayError> {
        let stances = &self.shapes.of(copy).stances;
        let mut best: Option<(f64, Pose)> = None;
        let mut longest = self.reach;
        for attempt in 0..TRIES {
            // When nothing was found on the cloth already used, a little more is offered.
            if attempt % 100 == 0 {
                longest = if best.is_some() {
                    longest
                } else {
                    (longest + 2.0 * self.shapes.of(copy).diameter).min(self.longest)
                };
            }
            let number = random.below(stances.len());
            let stance = stances[number];
            let right = best.map_or(longest, |(_, p)| p.at.x + stance.half.0) - stance.half.0;
            let at = Point::new(
                random.between(stance.half.0, right),
                random.between(stance.low, stance.high),
            );
            let pose = Pose { stance: number, at };
            if best.is_none_or(|(score, _)| self.score(pose, stance) < score)
                && self.free(copy, pose)
            {
                let pose = self.push(copy, pose);
                best = Some((self.score(pose, stance), pose));
            }
        }
        let found = match best {
            Some((_, pose)) => Some(pose),
            None => self.at_the_end(copy),
        };
        let Some(pose) = found else {
            return Err(name(self.shapes, self.problem, self.shapes.copies[copy]));
        };
        let shape = self.lay(copy, pose).clone();
        self.engine
            .register_hazard(Hazard::new(Occupant::Piece(copy), Arc::new(shape)));
        self.reach = self.reach.max(pose.at.x + stances[pose.stance].half.0);
        Ok(pose)
    }

    /// Far left counts ten times as much as low.
    fn score(&self, pose: Pose, stance: Stance) -> f64 {
        10.0 * (pose.at.x + stance.half.0) + pose.at.y
    }

    /// Right of everything, where no fault reaches either.
    fn at_the_end(&mut self, copy: usize) -> Option<Pose> {
        let shapes = self.shapes;
        let faults_end = self.problem.faults.iter().map(|f| f.x1).fold(0.0, f64::max);
        let beyond = self.reach.max(faults_end) + shapes.gap * 1.01 + shapes.width * CLEAR;
        let (number, stance) = shapes.of(copy).stances.iter().enumerate().next()?;
        let pose = Pose {
            stance: number,
            at: Point::new(beyond + stance.half.0, stance.low),
        };
        self.free(copy, pose).then_some(pose)
    }

    /// Slides left and down by ever smaller steps as long as it stays free.
    fn push(&mut self, copy: usize, start: Pose) -> Pose {
        let stance = self.shapes.of(copy).stances[start.stance];
        let mut pose = start;
        let finest = self.shapes.width * FINEST;
        let mut step = stance.half.0.max(stance.half.1);
        while step > finest {
            let mut moved = false;
            for (dx, dy) in [(step, 0.0), (0.0, step)] {
                let at = Point::new(
                    (pose.at.x - dx).max(stance.half.0),
                    (pose.at.y - dy).max(stance.low),
                );
                let next = Pose { at, ..pose };
                if at != pose.at && self.free(copy, next) {
                    pose = next;
                    moved = true;
                }
            }
            if !moved {
                step /= 2.0;
            }
        }
        pose
    }

    fn free(&mut self, copy: usize, pose: Pose) -> bool {
        let shape = self.shapes.copies[copy];
        self.lay(copy, pose);
        !self
            .engine
            .detect_poly_collision(&self.moving[shape], &NoFilter)
    }

    fn lay(&mut self, copy: usize, pose: Pose) -> &SPolygon {
        let shape = self.shapes.copies[copy];
        let turn = self.shapes.of(copy).stances[pose.stance].turn;
        let angle = f32::from(turn.degrees()).to_radians();
        let to = DTransformation::new(angle, (pose.at.x as f32, pose.at.y as f32)).compose();
        self.moving[shape].transform_from(&self.grown[shape], &to);
        &self.moving[shape]
    }
}

/// The outline for the engine, grown by half the gap and by what its single precision may lose.
fn engine_shape(outline: &[Point], gap: f64) -> Option<SPolygon> {
    let corners = outline
        .iter()
        .map(|p| EnginePoint(p.x as f32, p.y as f32))
        .collect();
    let shape = SPolygon::new(corners).ok()?;
    if gap > 0.0 {
        offset_shape(&shape, ShapeModifyMode::Inflate, (gap * 0.5 * 1.05) as f32).ok()
    } else {
        Some(shape)
    }
}

fn name(shapes: &Shapes, problem: &Problem, shape: usize) -> LayError {
    let piece = shapes
        .copies
        .iter()
        .position(|s| *s == shape)
        .and_then(|c| problem.pieces.get(shapes.piece_of[c]));
    LayError::NoPlace(piece.map_or_else(String::new, |p| p.key.clone()))
}
