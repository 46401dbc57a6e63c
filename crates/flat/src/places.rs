//! Where things lie on a view, for whoever measures on the drawing or moves what it shows.

use draft::measure::{Level, MeasureId, Take, taking};
use draft::{EdgeId, PieceId, PointId};
use geometry::{Path, Point, block};
use sewing::{Face, Fixing, FixingKind, Garment, On, StitchRow, placed};
use trade::Length;

use crate::laid::LaidGarment;
use crate::side::{Hand, View};

/// Into how many equal steps an edge is cut. The same for every draft, so that a point of one answers to the point of
/// the same number of another.
const STEPS: u32 = 16;

/// A pair laid flat, asked where things lie on its drawing: millimetres, x from the centre line, y **down**, as a view is
/// drawn on a sheet.
pub struct Places<'a> {
    garment: &'a Garment,
    laid: LaidGarment,
}

impl<'a> Places<'a> {
    /// `None` when the panels could not be drafted.
    pub fn of(garment: &'a Garment, view: View, face: Face) -> Option<Self> {
        Some(Self {
            garment,
            laid: LaidGarment::of(garment, view, face)?,
        })
    }

    /// The edges of a piece, on the copy that is cut as drawn or, of pieces that are set on one side, there.
    pub fn edges(&self, piece: PieceId) -> Option<Vec<(EdgeId, Vec<Point>)>> {
        let hand = self.copy(piece)?;
        let edges = self.garment.pattern.piece(piece)?.edges.iter();
        Some(
            edges
                .map(|edge| (edge.id, self.drawn(piece, &edge.path, hand)))
                .collect(),
        )
    }

    /// The outline of every copy of a piece that lies on this side.
    pub fn outlines(&self, piece: PieceId) -> Vec<Vec<Point>> {
        let Some(found) = self.garment.pattern.piece(piece) else {
            return Vec::new();
        };
        let on = placed(&self.garment.pattern, piece).map_or(On::Both, |placed| placed.on);
        let copies = self.laid.copies(piece, on).iter();
        copies
            .map(|hand| {
                let edges = found.edges.iter();
                edges
                    .flat_map(|edge| self.drawn(piece, &edge.path, *hand))
                    .collect()
            })
            .collect()
    }

    /// The corners of what is set at a place and has a length and a width.
    pub fn corners(&self, fixing: &Fixing) -> Option<[Point; 4]> {
        let (length, width) = match &fixing.kind {
            FixingKind::Loop(length, width)
            | FixingKind::Patch(length, width, _)
            | FixingKind::Label(length, width, _) => (*length, *width),
            _ => return None,
        };
        let hand = self.laid.copies(fixing.piece, fixing.on).first().copied()?;
        let at = self.laid.point(fixing.piece, fixing.at, hand)?;
        let along = self
            .laid
            .direction(fixing.piece, fixing.at, fixing.along, hand);
        Some(block(at, along, length, width).map(down))
    }

    /// A row of stitches, in equal steps.
    pub fn row(&self, row: &StitchRow) -> Option<Vec<Point>> {
        let hand = self.laid.copies(row.piece, row.on).first().copied()?;
        Some(self.drawn(row.piece, &row.path, hand))
    }

    /// Where the tape lies when a measure is taken on this side, in one line or several.
    pub fn tape(&self, measure: MeasureId) -> Vec<Vec<Point>> {
        let take = taking(measure).take;
        let levels = match take {
            Take::Along(_) if measure == MeasureId::Hem => Some(self.laid.flat.hem()),
            Take::Across { level, .. } => {
                let height = self.garment.pattern.spec.height(level);
                Some(self.laid.flat.across(height.to_mm()))
            }
            Take::Along(_) | Take::Between { .. } => None,
        };
        let whole = matches!(
            take,
            Take::Across {
                level: Level::Seat,
                ..
            }
        );
        match (levels, take) {
            // The tape goes over the whole body, or over one leg.
            (Some((_, outer)), _) if whole => {
                vec![vec![down(Point::new(-outer.x, outer.y)), down(outer)]]
            }
            (Some((inner, outer)), _) => vec![vec![self.on_leg(inner), self.on_leg(outer)]],
            (None, Take::Along(_)) if measure == MeasureId::Waist => {
                let line = self.laid.band_top(self.laid.view.half());
                let side = |sign: f64| {
                    let points = line.iter();
                    points.map(move |p| down(Point::new(sign * p.x, p.y)))
                };
                vec![side(-1.0).rev().chain(side(1.0)).collect()]
            }
            (None, Take::Along(runs)) => {
                let edges = runs.iter().flat_map(|(run, _)| run.edges());
                let runs = edges.flat_map(|(piece, edge)| self.facing(*piece, *edge));
                joined(runs.collect())
            }
            (None, Take::Between { piece, from, to }) => {
                let line = self.between(piece, from, to);
                line.into_iter().collect()
            }
            (None, Take::Across { .. }) => Vec::new(),
        }
    }

    /// A place on one leg, on the sheet: the leg whose panel is cut as it is drawn.
    fn on_leg(&self, p: Point) -> Point {
        let hand = match self.laid.view {
            View::Front => Hand::Left,
            View::Back => Hand::Right,
        };
        down(self.laid.mirrored(p, hand))
    }

    fn between(&self, piece: PieceId, from: PointId, to: PointId) -> Option<Vec<Point>> {
        let hand = self.copy(piece)?;
        let found = self.garment.pattern.piece(piece)?;
        let end = |id| {
            let at = found.point(id)?;
            self.laid.point(piece, at, hand)
        };
        Some(vec![down(end(from)?), down(end(to)?)])
    }

    /// The runs of an edge that face the viewer.
    fn facing(&self, piece: PieceId, edge: EdgeId) -> Vec<Vec<Point>> {
        let path = self
            .garment
            .pattern
            .piece(piece)
            .and_then(|found| found.edge(edge));
        let (Some(hand), Some(path)) = (self.copy(piece), path) else {
            return Vec::new();
        };
        let points = path.dense(Length::mm(2.0));
        let runs = self.laid.line(piece, &points, hand);
        let runs = runs.into_iter();
        runs.map(|run| run.into_iter().map(down).collect())
            .collect()
    }

    fn drawn(&self, piece: PieceId, path: &Path, hand: Hand) -> Vec<Point> {
        let length = path.length();
        let points: Vec<Point> = (0..=STEPS)
            .map(|step| path.point_at(length * (f64::from(step) / f64::from(STEPS))))
            .collect();
        let points = self.laid.area(piece, &points, hand);
        points.into_iter().map(down).collect()
    }

    /// The copy of a piece that is asked about; `None` for one that has no place of its own on the body.
    fn copy(&self, piece: PieceId) -> Option<Hand> {
        if piece == PieceId::LoopStrip {
            return None;
        }
        let on =
            placed(&self.garment.pattern, piece).map_or(On::AsDrawn, |placed| match placed.on {
                On::Both => On::AsDrawn,
                on => on,
            });
        self.laid.copies(piece, on).first().copied()
    }
}

/// Runs that follow one another become one.
fn joined(runs: Vec<Vec<Point>>) -> Vec<Vec<Point>> {
    const TOUCHING_MM: f64 = 3.0;
    let mut out: Vec<Vec<Point>> = Vec::new();
    for mut run in runs {
        let (Some(first), Some(last)) = (run.first().copied(), run.last().copied()) else {
            continue;
        };
        let before = out.iter_mut().find_map(|known| {
            let end = *known.last()?;
            Some((known, end))
        });
        match before {
            Some((known, end)) if (first - end).hypot() < TOUCHING_MM => known.append(&mut run),
            Some((known, end)) if (last - end).hypot() < TOUCHING_MM => {
                known.extend(run.into_iter().rev());
            }
            _ => out.insert(0, run),
        }
    }
    out
}

/// From the view, y up, to the sheet.
fn down(p: Point) -> Point {
    Point::new(p.x, -p.y)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use crate::sample::sewn;
    use draft::measure::Shown;

    fn length(points: &[Point]) -> f64 {
        points.windows(2).map(|w| (w[1] - w[0]).hypot()).sum()
    }

    #[test]
    fn a_back_pocket_keeps_its_edges_where_it_is_drawn() {
        let garment = sewn(32, 32);
        let places = Places::of(&garment, View::Back, Face::Outside).unwrap();
        let edges = places.edges(PieceId::BackPocketLeft).unwrap();
        let (_, top) = edges.iter().find(|(id, _)| *id == EdgeId::Top).unwrap();
        let width = garment.pattern.spec[MeasureId::BackPocketWidth].to_mm();
        assert!((length(top) - width).abs() < 0.1, "{} {width}", length(top));
        // The wearer's left is on the left of who looks at the back.
        assert!(top.iter().all(|p| p.x < 0.0));
    }

    #[test]
    fn the_tape_lies_on_the_side_where_a_measure_is_shown() {
        let garment = sewn(32, 32);
        for face in [Face::Outside, Face::Inside] {
            let [front, back] =
                [View::Front, View::Back].map(|view| Places::of(&garment, view, face).unwrap());
            for measure in MeasureId::ALL {
                let (here, there) = match taking(measure).shown {
                    Shown::Front => (&front, &back),
                    Shown::Back => (&back, &front),
                };
                // The side of the yoke is folded round to the front.
                let folded = measure == MeasureId::YokeSide;
                let places = if folded { there } else { here };
                let tape = places.tape(measure);
                // A belt loop lies on the band many times, its measures only on its strip.
                let on_strip = matches!(measure, MeasureId::LoopLength | MeasureId::LoopWidth);
                assert_eq!(tape.is_empty(), on_strip, "{measure:?}");
                assert!(tape.iter().flatten().all(|p| p.is_finite()));
            }
        }
    }

    #[test]
    fn turned_out_everything_lies_on_the_other_hand() {
        let garment = sewn(32, 32);
        for view in [View::Front, View::Back] {
            let [outside, inside] =
                [Face::Outside, Face::Inside].map(|face| Places::of(&garment, view, face).unwrap());
            let mirrored = |points: &[Point]| -> Vec<Point> {
                points.iter().map(|p| Point::new(-p.x, p.y)).collect()
            };
            let pieces = PieceId::ALL
                .into_iter()
                .filter(|id| *id != PieceId::LoopStrip);
            for piece in pieces {
                let (out, turned) = (outside.edges(piece), inside.edges(piece));
                for ((edge, a), (_, b)) in
                    out.into_iter().flatten().zip(turned.into_iter().flatten())
                {
                    assert_eq!(mirrored(&a), b, "{piece:?} {edge:?}");
                }
            }
            // A leg is measured on the same leg, whichever way the pair lies.
            for measure in [
                MeasureId::Thigh,
                MeasureId::Knee,
                MeasureId::Hem,
                MeasureId::Inseam,
            ] {
                let (out, turned) = (outside.tape(measure), inside.tape(measure));
                for (a, b) in out.iter().zip(&turned) {
                    assert_eq!(mirrored(a), *b, "{measure:?}");
                }
            }
        }
    }

    #[test]
    fn a_girth_is_half_of_what_the_chart_says() {
        let garment = sewn(32, 32);
        let places = Places::of(&garment, View::Front, Face::Outside).unwrap();
        for measure in [
            MeasureId::Seat,
            MeasureId::Thigh,
            MeasureId::Knee,
            MeasureId::Hem,
        ] {
            let taken: f64 = places.tape(measure).iter().map(|run| length(run)).sum();
            let charted = garment.doc.value(measure, garment.size).unwrap().to_mm();
            // At the thigh some of the girth lies behind the inner edge.
            let tucked = match measure {
                MeasureId::Thigh => {
                    let height = -garment.pattern.spec.level(Level::Thigh).to_mm();
                    let tucked = places.laid.flat.level(height).tucked;
                    (tucked.front + tucked.back) / 2.0
                }
                _ => 0.0,
            };
            let whole = taken + tucked;
            assert!((whole - charted * 0.5).abs() < 1.0, "{measure:?} {whole}");
        }
    }
}
