//! The no-fit areas of every two shapes, worked out when first asked for.

use std::sync::OnceLock;

use geometry::{Point, Vec2};

use crate::nofit::NoFit;
use crate::problem::Turn;
use crate::shapes::Shapes;

/// A table of no-fit areas, shared by the workers.
///
/// Only the turn of one shape relative to the other matters, and the order of the two does not,
/// so at most four areas are kept for every two shapes.
pub(crate) struct Tables<'a> {
    pub(crate) shapes: &'a Shapes,
    cells: Vec<OnceLock<Box<NoFit>>>,
}

/// A shape at a place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Placed {
    pub shape: usize,
    pub turn: Turn,
    pub at: Point,
}

impl<'a> Tables<'a> {
    pub(crate) fn new(shapes: &'a Shapes) -> Self {
        let n = shapes.shapes.len();
        let mut cells = Vec::new();
        cells.resize_with(n * n * 4, OnceLock::new);
        Self { shapes, cells }
    }

    fn no_fit(&self, first: &Placed, second: &Placed) -> &NoFit {
        let relative = (second.turn.quarters() + 4 - first.turn.quarters()) % 4;
        let index =
            (first.shape * self.shapes.shapes.len() + second.shape) * 4 + usize::from(relative);
        self.cells[index].get_or_init(|| {
            Box::new(NoFit::new(
                &self.shapes.shapes[first.shape],
                &self.shapes.shapes[second.shape],
                Turn::ALL[usize::from(relative)],
                self.shapes.gap,
                self.shapes.touch,
            ))
        })
    }

    /// The intervals of distance along the cloth at which the second overlaps the first, given
    /// their heights.
    pub(crate) fn blocked_along(&self, a: &Placed, b: &Placed) -> Vec<(f64, f64)> {
        let shapes = &self.shapes.shapes;
        let turn = |shape: usize, turn: Turn| {
            let mut turned = shapes[shape].clone();
            for part in &mut turned.parts {
                part.iter_mut().for_each(|p| *p = turn.apply(*p));
            }
            turned
        };
        NoFit::blocked_at(
            (&turn(a.shape, a.turn), &turn(b.shape, b.turn), Turn::None),
            (self.shapes.gap, self.shapes.touch),
            b.at.y - a.at.y,
        )
    }

    /// How far the two must be moved apart at least; 0 when they do not overlap.
    pub(crate) fn depth(&self, a: &Placed, b: &Placed) -> f64 {
        let (first, second) = if a.shape <= b.shape { (a, b) } else { (b, a) };
        let apart = turn_back(second.at - first.at, first.turn);
        self.no_fit(first, second).depth(apart)
    }

    /// The shortest move of `b` that parts the two, when they overlap.
    pub(crate) fn way_out(&self, a: &Placed, b: &Placed) -> Option<Vec2> {
        let (first, second) = if a.shape <= b.shape { (a, b) } else { (b, a) };
        let apart = turn_back(second.at - first.at, first.turn);
        let out = self.no_fit(first, second).way_out(apart)?;
        let out = first.turn.apply(out.to_point()).to_vec2();
        Some(if a.shape <= b.shape { out } else { -out })
    }
}

fn turn_back(v: Vec2, turn: Turn) -> Point {
    let back = Turn::ALL[usize::from((4 - turn.quarters()) % 4)];
    back.apply(v.to_point())
}
