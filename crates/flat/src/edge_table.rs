//! How far out an edge lies at every height.

use geometry::Path;
use geometry::tolerance::{NO_DIRECTION, ROUNDING};
use trade::Length;

/// x as a function of height along one edge, from a dense polyline, extended straight at both ends.
pub(crate) struct EdgeTable {
    points: Vec<(f64, f64)>,
}

impl EdgeTable {
    pub(crate) fn new(paths: &[&Path]) -> EdgeTable {
        let mut points: Vec<(f64, f64)> = paths
            .iter()
            .flat_map(|p| p.dense(Length::mm(1.0)))
            .map(|p| (p.y, p.x))
            .collect();
        points.sort_by(|a, b| a.0.total_cmp(&b.0));
        points.dedup_by(|a, b| (a.0 - b.0).abs() < ROUNDING);
        EdgeTable { points }
    }

    pub(crate) fn x(&self, y: f64) -> f64 {
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
        if run.abs() < NO_DIRECTION {
            a.1
        } else {
            a.1 + (b.1 - a.1) * (y - a.0) / run
        }
    }
}
