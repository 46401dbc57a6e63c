//! One solved size: its pieces, how they measure, and what was found.

use geometry::{Point, angle_between};
use style::MeasureId;
use trade::{Angle, Length};

use crate::block::Shape;
use crate::measure::{Measurable, Panel, Run, extent_at, taking};
use crate::piece::{EdgeId, Piece, PieceId, PointId};
use crate::spec::Spec;

/// The numbers by which a draft is judged to be a trouser at all.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Proportions {
    /// Front crotch extension beyond the centre front line.
    pub front_extension: Length,
    /// Back crotch extension beyond the foot of the seat line.
    pub back_extension: Length,
    /// How much lower the back crotch point lies.
    pub drop: Length,
    /// Height of the waist at the side above that at the centre front.
    pub waist_rise: Length,
    /// How far the yoke's lower edge turns.
    pub yoke_turn: Angle,
}

/// All pieces of one size.
#[derive(Clone, Debug)]
pub struct Pattern {
    /// What was asked for; of panels the maker brought, what they measure.
    pub spec: Spec,
    /// The pieces, in the order of [`PieceId::ALL`]; those the style does not have are absent.
    pub pieces: Vec<Piece>,
    /// Proportions of the draft.
    pub proportions: Proportions,
    /// Where the panels come from when they are not drafted from the chart.
    pub own: Option<FromFile>,
}

/// What a pattern owes to a file the maker brought.
#[derive(Clone, Debug)]
pub struct FromFile {
    /// The file of pieces.
    pub file: String,
    /// The pieces that were brought; all others are laid out on them.
    pub pieces: Vec<PieceId>,
    /// What the chart asks for.
    pub chart: Spec,
}

/// A measure as charted and as the pattern measures.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measured {
    /// Which.
    pub measure: MeasureId,
    /// The chart's value; `None` where the draft chose it.
    pub chart: Option<Length>,
    /// The pattern's value.
    pub pattern: Length,
}

pub(crate) fn proportions(shape: &Shape) -> Proportions {
    Proportions {
        front_extension: Length::mm(shape.front_extension),
        back_extension: Length::mm(shape.back_extension),
        drop: Length::mm(shape.drop),
        waist_rise: Length::mm(shape.side_waist.1 - shape.front_waist_y),
        yoke_turn: Angle::rad(shape.yoke_turn),
    }
}

impl Pattern {
    /// The piece, if the style has it.
    pub fn piece(&self, id: PieceId) -> Option<&Piece> {
        self.pieces.iter().find(|p| p.id == id)
    }

    /// What the chart asks for.
    pub fn chart(&self) -> &Spec {
        self.own.as_ref().map_or(&self.spec, |own| &own.chart)
    }

    /// Every measure of the chart taken on the pieces.
    pub fn measures(&self) -> Vec<Measured> {
        let taken = MeasureId::ALL.into_iter().filter_map(|measure| {
            Some(Measured {
                measure,
                chart: self.chart().stated(measure),
                pattern: self.measure(measure)?,
            })
        });
        taken.collect()
    }

    /// A measure taken on the pieces. `None` when a piece it needs is not part of the style.
    pub fn measure(&self, measure: MeasureId) -> Option<Length> {
        taking(measure).take.of(self, &self.spec)
    }

    /// The length of a run of edges; none where a piece or an edge of it is not there.
    pub fn run(&self, edges: &[(PieceId, EdgeId)]) -> Option<Length> {
        edges
            .iter()
            .map(|(piece, edge)| Some(self.piece(*piece)?.edge(*edge)?.length()))
            .sum()
    }

    /// Largest difference between pattern and chart over all measures.
    pub fn worst_measure(&self) -> Length {
        self.measures()
            .iter()
            .filter_map(|m| m.chart.map(|c| (m.pattern - c).abs()))
            .fold(Length::ZERO, Length::max)
    }

    /// The angle by which the joined crotch line bends at the inseam (zero when it runs smooth).
    pub fn crotch_jump(&self) -> Option<Angle> {
        let corner = |id, crotch| {
            let piece = self.piece(id)?;
            let out = -piece.edge(crotch)?.end_direction();
            Some(angle_between(out, piece.edge(EdgeId::Inseam)?.start_direction()).to_deg())
        };
        let sum = corner(PieceId::Front, EdgeId::Crotch)? + corner(PieceId::Back, EdgeId::Seat)?;
        Some(Angle::deg((sum - 180.0).abs()))
    }
}

impl Measurable for Pattern {
    fn run_length(&self, run: Run) -> Option<Length> {
        self.run(run.edges())
    }

    fn width(&self, panel: Panel, y_mm: f64) -> Option<Length> {
        let ids: &[PieceId] = match panel {
            Panel::Front => &[PieceId::Front, PieceId::PocketFacing],
            Panel::Back => &[PieceId::Back],
        };
        let pieces = ids.iter().filter_map(|id| self.piece(*id));
        extent_at(pieces.flat_map(|p| p.edges.iter().map(|e| &e.path)), y_mm)
    }

    fn named_point(&self, piece: PieceId, id: PointId) -> Option<Point> {
        self.piece(piece)?.point(id)
    }
}
