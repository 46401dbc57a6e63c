//! The chart of the pair before its wash, for whoever measures it in the workroom.

use draft::measure::{Measurable, Panel, Run, taking};
use draft::{Pattern, PieceId, PointId};
use geometry::Point;
use style::MeasureId;
use trade::{Length, Unwashed, Washed};

use super::before::{ACROSS, BeforeWash, DOWN};
use super::behaviour::Washes;
use crate::garment::Garment;

/// A pair as it is sewn, for a tape: the finished pattern, and how it is cut.
struct AsSewn<'g>(&'g Pattern, &'g BeforeWash);

impl Measurable for AsSewn<'_> {
    fn run_length(&self, run: Run) -> Option<Length> {
        self.1.pattern.run_length(run)
    }

    /// The same thread of the cloth as on the finished pair: a level moves with the cloth.
    fn width(&self, panel: Panel, y_mm: f64) -> Option<Length> {
        let finished = Washed::new(self.0.width(panel, y_mm)?);
        Some(self.1.unwashed(piece_of(panel), ACROSS, finished).figure())
    }

    fn named_point(&self, piece: PieceId, id: PointId) -> Option<Point> {
        self.1.pattern.named_point(piece, id)
    }
}

/// The piece whose cloth is measured straight across a panel.
const fn piece_of(panel: Panel) -> PieceId {
    match panel {
        Panel::Front => PieceId::Front,
        Panel::Back => PieceId::Back,
    }
}

impl BeforeWash {
    /// What a measure of a pattern's chart is before the wash; none where a piece it is taken on is not there.
    pub(super) fn measure(
        &self,
        finished: &Pattern,
        measure: MeasureId,
    ) -> Option<Unwashed<Length>> {
        let taken = taking(measure)
            .take
            .of(&AsSewn(finished, self), &finished.spec)?;
        Some(Unwashed::new(taken))
    }
}

/// A raw pair after the first wash somebody gives it, for a tape.
pub struct OnceWashed<'g> {
    garment: &'g Garment,
    wash: BeforeWash,
}

impl Measurable for OnceWashed<'_> {
    fn run_length(&self, run: Run) -> Option<Length> {
        run.edges()
            .iter()
            .map(|(piece, edge)| {
                let path = self.garment.pattern.piece(*piece)?.edge(*edge)?;
                let back = self.wash.scale(*piece)?.map.inverse();
                Some(path.transformed(back).length())
            })
            .sum()
    }

    fn width(&self, panel: Panel, y_mm: f64) -> Option<Length> {
        let raw = Unwashed::new(self.garment.pattern.width(panel, y_mm)?);
        let lost = self.wash.lost(piece_of(panel), ACROSS);
        Some(raw.washed(lost).figure())
    }

    fn named_point(&self, piece: PieceId, id: PointId) -> Option<Point> {
        let back = self.wash.scale(piece)?.map.inverse();
        Some(back * self.garment.pattern.named_point(piece, id)?)
    }
}

impl OnceWashed<'_> {
    /// What a measure of the chart is expected to be then; none where a piece it is taken on is not there.
    #[must_use]
    pub fn measure(&self, measure: MeasureId) -> Option<Washed<Length>> {
        let taken = taking(measure).take.of(self, &self.garment.pattern.spec)?;
        Some(Washed::new(taken))
    }
}

impl Garment {
    /// The pair after the first wash somebody gives it raw, as far as its cloths are known, for several measures.
    #[must_use]
    pub fn once_washed(&self) -> OnceWashed<'_> {
        let (washes, _) = Washes::first(&self.doc, &self.collection, |_| None);
        OnceWashed {
            garment: self,
            wash: BeforeWash::by(&self.pattern, &self.doc, washes),
        }
    }

    /// What a measure of the chart is on the pair before its wash; none where a piece it is taken on is not
    /// there. A measure at a level is taken at [`Garment::level_before_wash`].
    #[must_use]
    pub fn measure_before_wash(&self, measure: MeasureId) -> Option<Unwashed<Length>> {
        self.before_wash.measure(&self.pattern, measure)
    }

    /// What a measure of the chart is as the pair is sewn; as stated where no piece it is taken on is there.
    #[must_use]
    pub fn sewn(&self, measure: MeasureId) -> Unwashed<Length> {
        let stated = || Unwashed::new(self.pattern.spec[measure]);
        self.measure_before_wash(measure).unwrap_or_else(stated)
    }

    /// How far from the fork a measure with a level is taken before the wash: the level lies along the leg
    /// and moves with the cloth of the front.
    #[must_use]
    pub fn level_before_wash(&self, finished: Washed<Length>) -> Unwashed<Length> {
        self.before_wash.unwashed(PieceId::Front, DOWN, finished)
    }
}
