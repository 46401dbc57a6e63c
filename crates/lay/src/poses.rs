//! Where pieces lie: poses as the search sees them, placements as everybody else does.

use std::collections::BTreeMap;

use geometry::Point;
use trade::Length;

use crate::lay::Placement;
use crate::problem::Problem;
use crate::shapes::Shapes;

/// Where one copy lies: which of its shape's stances, and the place of its middle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Pose {
    pub stance: usize,
    pub at: Point,
}

/// A way to lay all copies on a length of cloth.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Poses {
    pub length: f64,
    pub poses: Vec<Pose>,
}

/// The placements as poses of the copies, in the order of the pieces. Nothing when they are not the
/// problem's pieces.
pub(crate) fn poses_of(
    problem: &Problem,
    shapes: &Shapes,
    placements: &[Placement],
) -> Option<Poses> {
    let first_copy: BTreeMap<&str, usize> = problem
        .pieces
        .iter()
        .scan(0, |at, piece| {
            let first = *at;
            *at += piece.demand;
            Some((piece.key.as_str(), first))
        })
        .collect();
    let mut poses = vec![None; shapes.copies.len()];
    let mut length: f64 = 0.0;
    for placement in placements {
        let copy = first_copy.get(placement.key.as_str())? + placement.copy;
        if problem.pieces.get(*shapes.piece_of.get(copy)?)?.key != placement.key {
            return None;
        }
        let shape = shapes.of(copy);
        let stance = shape
            .stances
            .iter()
            .position(|s| s.turn == placement.turn)?;
        let middle = placement.turn.apply(shape.middle);
        let at = Point::new(
            placement.x.to_mm() + middle.x,
            placement.y.to_mm() + middle.y,
        );
        length = length.max(at.x + shape.stances[stance].half.0);
        *poses.get_mut(copy)? = Some(Pose { stance, at });
    }
    let poses: Option<Vec<Pose>> = poses.into_iter().collect();
    Some(Poses {
        length,
        poses: poses?,
    })
}

/// The poses in the pieces' own coordinates, copies of a piece numbered from 0.
pub(crate) fn placements(problem: &Problem, shapes: &Shapes, poses: &Poses) -> Vec<Placement> {
    let mut laid = vec![0; problem.pieces.len()];
    poses
        .poses
        .iter()
        .enumerate()
        .map(|(c, pose)| {
            let piece = shapes.piece_of[c];
            let copy = laid[piece];
            laid[piece] += 1;
            let turn = shapes.of(c).stances[pose.stance].turn;
            let middle = turn.apply(shapes.of(c).middle);
            Placement {
                key: problem.pieces[piece].key.clone(),
                copy,
                turn,
                x: Length::mm(pose.at.x - middle.x),
                y: Length::mm(pose.at.y - middle.y),
            }
        })
        .collect()
}
