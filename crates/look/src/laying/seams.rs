//! Seams as they stand out: more plies along a line, folded at one edge and sloping away at the other.

use draft::{EdgeId, LineId, PieceId};
use flat::{Hand, View};
use geometry::{Path, Point, left_of};
use sewing::{Face, Finish, InsideLap, Lying, allowances, lying};
use style::{Construction, Seam, SeamId};
use trade::Length;

use super::{Laying, SELVEDGE, SHELL, fine};
use crate::place::{Place, places};
use crate::scene::{Border, Ridge, Sheet, Stands, Stuff, Waves};

/// The slope beside a covered edge, and beside an allowance pressed open (chosen).
const SLOPE: Border = Border::Slope(2.4);
const OPEN_SLOPE: Border = Border::Slope(3.2);
/// Width of the undyed edge of a selvedge.
const UNDYED_EDGE: f64 = 3.0;

pub(super) const fn waves(length: f32, lean: f32, more: f32) -> Waves {
    Waves { length, lean, more }
}

impl Laying<'_> {
    pub(super) fn seam(&self, id: SeamId) -> Option<&Seam> {
        self.garment.seams.iter().find(|seam| seam.id == id)
    }

    fn panel_sheet(&self, id: PieceId) -> Option<usize> {
        self.panels
            .iter()
            .find(|(piece, _)| *piece == id)
            .map(|(_, sheet)| *sheet)
    }

    /// What stands out on one half.
    pub(super) fn seams_of(&mut self, hand: Hand) {
        for lap in &self.garment.laps {
            if self.laid.copies(lap.piece, lap.on).contains(&hand) {
                self.lap(lap, hand);
            }
        }
        if self.face == Face::Outside {
            self.mouth(hand);
            self.fly(hand);
            self.set_pockets();
        }
    }

    fn lap(&mut self, lap: &InsideLap, hand: Hand) {
        let Some(seam) = lap.seam().and_then(|id| self.seam(id)) else {
            return;
        };
        let construction = seam.construction;
        let more = match lying(construction) {
            Lying::Apart(n) => n.saturating_sub(1),
            stacked => stacked.plain().total().saturating_sub(1),
        };
        let sheet = match self.panel_sheet(lap.piece) {
            Some(sheet) => sheet,
            // Round the fold the back is seen beside the front.
            None if lap.piece == PieceId::Back && self.view == View::Front => self.base,
            None => return,
        };
        let open = matches!(lying(construction), Lying::Apart(_))
            || matches!(
                construction,
                Construction::Overlocked | Construction::SafetyStitched
            );
        let inside = self.inside();
        let (near, far) = match (inside, open) {
            (false, false) => (Border::Fold, SLOPE),
            (false, true) => (Border::Valley, OPEN_SLOPE),
            // From inside it is the other edge that is seen.
            (true, true) => (Border::Valley, Border::Fold),
            (true, false) => (Border::Rise, Border::Fold),
        };
        let Some(line) = lap.line(&self.garment.pattern) else {
            return;
        };
        let id = seam.id;
        for (points, side) in self.seen_runs(lap.piece, &line, hand) {
            let waves = self.waves_of(id, construction, &points);
            self.scene.ridges.push(Ridge {
                sheet,
                line: points,
                side,
                height: more as f32 * self.step(),
                width: lap.width.to_mm() as f32,
                near,
                far,
                waves,
                ply: self.ply,
                taper: if id == SeamId::Hem { 0.0 } else { 2.0 },
            });
        }
    }

    fn waves_of(&self, seam: SeamId, construction: Construction, line: &[Place]) -> Option<Waves> {
        let rolled = construction == Construction::RolledHem;
        if seam == SeamId::Hem && rolled && self.garment.doc.hem.roping {
            // Both legs are sewn round the same way, and a twist leans alike from wherever it is seen; only the inside
            // shows it leaning the other way.
            let rightwards = line
                .first()
                .zip(line.last())
                .is_some_and(|(a, b)| b[0] > a[0]);
            let lean = if rightwards == self.inside() {
                0.9
            } else {
                -0.9
            };
            return Some(waves(6.5, lean, 2.2));
        }
        match construction {
            Construction::LapFelled | Construction::MockFelled => Some(waves(5.4, 0.45, 1.0)),
            Construction::PressedOpen => Some(waves(8.0, 0.2, 0.25)),
            _ => Some(waves(6.5, 0.5, 0.8)),
        }
    }

    /// The runs of a line that face the viewer, and on which side of each the piece lies.
    pub(super) fn seen_runs(
        &self,
        piece: PieceId,
        line: &Path,
        hand: Hand,
    ) -> Vec<(Vec<Place>, f32)> {
        let side = self.side_of(piece, line, hand);
        let back = matches!(self.laid.body(piece), PieceId::Back | PieceId::Yoke);
        if back == (self.view == View::Back) && piece != PieceId::Band {
            // Beyond a fold it runs on and is cut to the outline of its half.
            return vec![(places(&self.laid.area(piece, &fine(line), hand)), side)];
        }
        let runs = self.laid.line(piece, &fine(line), hand);
        runs.iter().map(|run| (places(run), side)).collect()
    }

    /// A piece runs anticlockwise; on the view one copy of it is mirrored.
    fn side_of(&self, piece: PieceId, line: &Path, hand: Hand) -> f32 {
        let middle = line.length() * 0.5;
        let (at, way) = (line.point_at(middle), line.direction_at(middle));
        let mapped = self
            .laid
            .area(piece, &[at, at + way, at + left_of(way)], hand);
        let turned = (mapped[1] - mapped[0]).cross(mapped[2] - mapped[0]);
        if turned < 0.0 { -1.0 } else { 1.0 }
    }

    fn along_edge(
        &mut self,
        piece: PieceId,
        line: &Path,
        hand: Hand,
        ridge: (f32, f32, Border, Option<Waves>),
    ) {
        let Some(sheet) = self.panel_sheet(piece) else {
            return;
        };
        let (height, width, far, waves) = ridge;
        for (points, side) in self.seen_runs(piece, line, hand) {
            self.scene.ridges.push(Ridge {
                sheet,
                line: points,
                side,
                height,
                width,
                near: Border::Fold,
                far,
                waves,
                ply: self.ply,
                taper: 0.0,
            });
        }
    }

    /// The mouth of the front pocket is turned over its facing.
    fn mouth(&mut self, hand: Hand) {
        let edge = self
            .piece(PieceId::Front)
            .and_then(|p| p.edge(EdgeId::Mouth))
            .cloned();
        let (Some(edge), Some(seam)) = (edge, self.seam(SeamId::Mouth)) else {
            return;
        };
        let width = allowances(seam, Length::ZERO).over.to_mm().clamp(4.0, 25.0) as f32;
        let more = 2.0 * self.step();
        self.along_edge(
            PieceId::Front,
            &edge,
            hand,
            (more, width, SLOPE, Some(waves(6.5, 0.5, 0.9))),
        );
    }

    /// The left fly edge lies over the right front, its facing behind it.
    fn fly(&mut self, hand: Hand) {
        let front = self.piece(PieceId::Front);
        let edge = front.and_then(|p| p.edge(EdgeId::Fly)).cloned();
        let stitch = front.and_then(|p| p.line(LineId::FlyStitch)).is_some();
        let (Some(edge), true, Hand::Left) = (edge, stitch, hand) else {
            return;
        };
        let before = self.scene.ridges.len();
        let ridge = (
            self.step(),
            7.0,
            Border::Slope(3.0),
            Some(waves(7.0, 0.4, 0.5)),
        );
        self.along_edge(PieceId::Front, &edge, hand, ridge);
        // At its foot the front rise goes on.
        self.scene
            .ridges
            .iter_mut()
            .skip(before)
            .for_each(|r| r.taper = 5.0);
    }

    /// The turned-in sides of pockets that are set on.
    fn set_pockets(&mut self) {
        let pockets = self.panels.clone();
        for (id, _) in pockets {
            let (seam, edges): (SeamId, &[EdgeId]) = match id {
                PieceId::BackPocketLeft | PieceId::BackPocketRight => (
                    SeamId::BackPocketSet,
                    &[
                        EdgeId::Inner,
                        EdgeId::FootInner,
                        EdgeId::FootOuter,
                        EdgeId::Outer,
                    ],
                ),
                PieceId::CoinPocket => (
                    SeamId::CoinSet,
                    &[EdgeId::Left, EdgeId::Foot, EdgeId::Right],
                ),
                _ => continue,
            };
            let Some(seam) = self.seam(seam) else {
                continue;
            };
            let width = allowances(seam, Length::ZERO).over.to_mm().clamp(4.0, 20.0) as f32;
            let copies = self.copies_of(id);
            let sides: Vec<Path> = edges
                .iter()
                .filter_map(|e| self.piece(id)?.edge(*e).cloned())
                .collect();
            let Some(line) = sides.into_iter().reduce(|a, b| a.then(&b)) else {
                continue;
            };
            for hand in copies {
                let ridge = (
                    self.step(),
                    width,
                    Border::Slope(2.0),
                    Some(waves(6.5, 0.5, 0.9)),
                );
                self.along_edge(id, &line, hand, ridge);
            }
        }
    }

    fn copies_of(&self, id: PieceId) -> Vec<Hand> {
        let on = sewing::placed(&self.garment.pattern, id).map_or(sewing::On::Both, |p| p.on);
        self.laid.copies(id, on).to_vec()
    }

    /// Allowances as they lie inside, as sheets of their own.
    pub(super) fn laps(&mut self, hand: Hand, pieces: &[PieceId]) {
        for lap in &self.garment.laps {
            if pieces.contains(&lap.piece) && self.laid.copies(lap.piece, lap.on).contains(&hand) {
                self.lap_sheet(lap, hand);
            }
        }
    }

    fn lap_sheet(&mut self, lap: &InsideLap, hand: Hand) {
        let Some(edge) = lap.line(&self.garment.pattern) else {
            return;
        };
        let line = fine(&edge);
        let width = lap.width.to_mm();
        // A hem turned up and an allowance pressed open show the face of the cloth; a fell goes on with the other panel.
        let construction = lap
            .seam()
            .and_then(|id| self.seam(id))
            .map(|s| s.construction);
        let felled = matches!(construction, Some(Construction::LapFelled));
        self.lap_strip(lap, hand, &line, (0.0, width), (SHELL, felled));
        if lap.finish == Finish::Selvedge && width > UNDYED_EDGE {
            self.lap_strip(
                lap,
                hand,
                &line,
                (width - UNDYED_EDGE, width),
                (SELVEDGE, false),
            );
        }
        if lap.finish == Finish::Overedged {
            self.overedge(lap, hand, &line, width);
        }
    }

    fn lap_strip(
        &mut self,
        lap: &InsideLap,
        hand: Hand,
        line: &[Point],
        (from, to): (f64, f64),
        (cloth, reverse): (usize, bool),
    ) {
        let mut points = inward(line, from);
        points.extend(inward(line, to).into_iter().rev());
        let outline = places(&self.laid.area(lap.piece, &points, hand));
        let stuff = self.cloth_of(lap.piece, hand, cloth, reverse);
        let stuff = match (stuff, cloth) {
            // A hem is turned up, an allowance over: its warp lies mirrored about the line.
            (
                Stuff::Woven {
                    cloth,
                    reverse,
                    warp,
                    from,
                },
                SHELL,
            ) if !reverse => Stuff::Woven {
                cloth,
                reverse,
                warp: [-warp[0], warp[1]],
                from,
            },
            (stuff, _) => stuff,
        };
        let sheet = Sheet {
            outline,
            clip: Some(self.half),
            stuff,
            stands: Stands::On(0.0),
            rims: Vec::new(),
            round: 0.0,
            folds: false,
        };
        self.push(sheet);
    }
}

/// The polyline moved to its left, into an anticlockwise piece.
pub(super) fn inward(points: &[Point], by: f64) -> Vec<Point> {
    let n = points.len();
    (0..n)
        .map(|k| {
            let way = points[(k + 1).min(n - 1)] - points[k.saturating_sub(1)];
            points[k] + left_of(geometry::unit(way)) * by
        })
        .collect()
}
