//! How a measure is taken, as data a program can follow on the pieces.

use draft::measure::{MeasureId, Take, taking};
use draft::{EdgeRun, PieceId, Spec};
use serde::Serialize;

use crate::pieces::rounded;

/// The pieces that make up the front and the back where a girth is taken; the level lies below the
/// yoke, and the hip pocket is cut out of the front.
const PANELS: [&[PieceId]; 2] = [&[PieceId::Front, PieceId::PocketFacing], &[PieceId::Back]];

/// How a measure is taken.
#[derive(Serialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum Taken {
    /// The lengths of edges added up, each `times` its run's factor.
    Along(Vec<RunTaken>),
    /// Straight across at a height, in the frame front and back share: for each panel the distance of
    /// the outermost crossings of its pieces' edges with the level, added up, times `times`.
    Across {
        /// Height above the front crotch point, mm.
        y: f64,
        /// Factor.
        times: f64,
        /// The pieces of each panel.
        panels: [Vec<&'static str>; 2],
    },
    /// The distance of two named points of a piece.
    Between {
        /// The piece.
        piece: &'static str,
        /// First point.
        from: &'static str,
        /// Second point.
        to: &'static str,
    },
}

/// One run of edges.
#[derive(Serialize)]
pub(crate) struct RunTaken {
    /// Piece and edge.
    edges: Vec<(&'static str, &'static str)>,
    /// Factor.
    times: f64,
}

/// How this measure is taken in this size.
pub(crate) fn taken(measure: MeasureId, spec: &Spec) -> Taken {
    match taking(measure).take {
        Take::Along(runs) => Taken::Along(
            runs.iter()
                .map(|(run, times)| RunTaken {
                    edges: edges(run.edges()),
                    times: rounded(*times),
                })
                .collect(),
        ),
        Take::Across { level, times } => Taken::Across {
            y: rounded(spec.height(level).to_mm()),
            times: rounded(times),
            panels: PANELS.map(|ids| ids.iter().map(|id| id.code()).collect()),
        },
        Take::Between { piece, from, to } => Taken::Between {
            piece: piece.code(),
            from: from.code(),
            to: to.code(),
        },
    }
}

/// Edges by the stable names of their pieces.
pub(crate) fn edges(run: EdgeRun) -> Vec<(&'static str, &'static str)> {
    run.iter()
        .map(|(piece, edge)| (piece.code(), edge.code()))
        .collect()
}
