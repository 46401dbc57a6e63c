//! From a sewn garment to its cut pieces.

use draft::{ClothUse, EdgeId, Finding, InnerKind, Pattern, Piece, PieceId, Severity};
use geometry::tolerance::SAME_MM;
use geometry::{Point, clip_to_polygon};
use sewing::wash::{
    AgainstSkew, Follows, Scale, Washes, band_grain_along_weft, cloth_key, eased_shrinkage,
    scale_of, scaled,
};
use sewing::{Garment, On, band_join_allowance};
use style::{MeasureId, Ply, SeamId, Subject};
use trade::{Length, Share, Washed};
use words::{Said, key, say};

use crate::allowance_lie::{EdgeLie, lies, side_of};
use crate::band::{BandCase, BandConflict, BandCut, BandWay};
use crate::band_halves;
use crate::label::{Named, label};
use crate::marks::{SET_ON, SetOn, drills, hem_folds, notches, set_on};
use crate::outline::{Ground, NoOutline, Outline, outline, sewn_lines};
use crate::piece::{CutEdge, CutPiece, CutSize, Drill, Inner, Part};
use crate::plan::Plan;
use crate::seams_before_wash::{Legs, SeamBeforeWash, walk};
use crate::selvedge::{cloth_edge, runs_along};

/// How far apart the points of lines lie that are neither cut nor sewn.
const INNER_STEP: Length = Length::mm(2.0);

/// The cut pieces of one size.
///
/// Always gives pieces; what cannot be cut as asked is left out or drawn as near as may be, and said in
/// the findings, worst first. A band that could only be cut wrongly is refused, with three ways out.
pub fn cut(garment: &Garment, plan: &Plan) -> CutSize {
    let mut cutter = Cutter::new(garment, plan);
    let walked = walk(&cutter.legs);
    let conflict = cutter.settle_band(&walked);
    let walked = walk(&cutter.legs);
    cutter.say_seams(&walked, conflict.is_some());
    cutter.say_thread();
    let pieces = cutter.pieces(conflict.is_some());
    let too_wide = cutter.too_wide(&pieces);
    let mut findings = cutter.findings;
    findings.extend(too_wide);
    findings.sort_by_key(|f| std::cmp::Reverse(f.severity));
    CutSize {
        size: garment.size,
        pieces,
        band_cut: cutter.band_cut,
        refused: conflict.into_iter().collect(),
        walked,
        findings,
    }
}

/// The cut pieces of every size, in the order given.
pub fn cut_run(garments: &[Garment], plan: &Plan) -> Vec<CutSize> {
    garments.iter().map(|garment| cut(garment, plan)).collect()
}

pub(crate) struct Cutter<'a> {
    pub garment: &'a Garment,
    pub washes: Washes,
    pub against: AgainstSkew,
    legs: Legs,
    /// How each copy of each piece was made larger.
    scales: Vec<(PieceId, On, Scale)>,
    band_case: Option<BandCase>,
    pub band_cut: BandCut,
    pub findings: Vec<Finding>,
}

impl<'a> Cutter<'a> {
    fn new(garment: &'a Garment, plan: &Plan) -> Cutter<'a> {
        let (washes, wrong) = plan.washes(garment);
        let mut scales = Vec::new();
        for piece in &garment.pattern.pieces {
            for on in [On::AsDrawn, On::Mirrored] {
                scales.push((piece.id, on, scale(washes, plan.against_skew, piece, on)));
            }
        }
        let mut cutter = Cutter {
            garment,
            washes,
            against: plan.against_skew,
            legs: Legs {
                left: garment.pattern.clone(),
                right: garment.pattern.clone(),
            },
            scales,
            band_case: None,
            band_cut: plan.band,
            findings: Vec::new(),
        };
        for (cloth, why) in wrong {
            let found = cutter.finding(
                "cutting::shrinkage",
                Severity::Error,
                Subject::Cloth(cloth_key(&garment.doc, cloth).to_owned()),
                say::CuttingAsFinished {
                    why: Said::from(&why),
                },
            );
            cutter.findings.push(found);
        }
        cutter.check_preshrunk();
        cutter.say_tests();
        cutter.say_inner();
        cutter.say_skew();
        cutter.make_legs();
        cutter
    }

    /// A washed band that shrinks as no cloth does counts as not stated.
    fn check_preshrunk(&mut self) {
        if let BandCut::Preshrunk(residual) = self.band_cut
            && let Err(why) = residual.checked()
        {
            let found = self.finding(
                "cutting::shrinkage",
                Severity::Error,
                PieceId::Band,
                Said::from(&why),
            );
            self.findings.push(found);
            self.band_cut = BandCut::Unstated;
        }
    }

    /// A finding of this size from common practice.
    pub fn finding(
        &self,
        code: &'static str,
        severity: Severity,
        subject: impl Into<Subject>,
        message: impl Into<Said>,
    ) -> Finding {
        Finding::new(
            code,
            severity,
            subject,
            message,
            key::SOURCE_COMMON_PRACTICE,
        )
        .of_size(self.garment.size)
    }

    fn scale(&self, piece: PieceId, on: On) -> Option<&Scale> {
        let on = if on == On::Mirrored { on } else { On::AsDrawn };
        self.scales
            .iter()
            .find(|(id, copy, _)| *id == piece && *copy == on)
            .map(|(_, _, scale)| scale)
    }

    /// The pieces of each leg, larger by what the wash takes.
    fn make_legs(&mut self) {
        let leg = |ply: Ply| Pattern {
            pieces: self
                .garment
                .pattern
                .pieces
                .iter()
                .map(|piece| {
                    let only_mirrored = piece.cut.as_drawn == 0 && piece.cut.mirrored > 0;
                    let on = match side_of(piece.id, false) {
                        _ if only_mirrored => On::Mirrored,
                        Some(drawn) if drawn != ply => On::Mirrored,
                        _ => On::AsDrawn,
                    };
                    self.scale(piece.id, on)
                        .map_or_else(|| piece.clone(), |scale| scaled(piece, scale))
                })
                .collect(),
            ..self.garment.pattern.clone()
        };
        self.legs = Legs {
            left: leg(Ply::Left),
            right: leg(Ply::Right),
        };
    }

    /// Decides how the band is cut; gives the conflict where nobody said.
    fn settle_band(&mut self, walked: &[SeamBeforeWash]) -> Option<BandConflict> {
        let pattern = &self.garment.pattern;
        let band = pattern.piece(PieceId::Band)?;
        let seam = walked.iter().find(|w| w.join.seam == SeamId::Band)?;
        let doc = &self.garment.doc;
        let shell = self.washes.of(ClothUse::Shell).shrinkage;
        let cloth = self.garment.collection.cloths.get(&doc.cloth.shell);
        let ends = self.garment.cut.iter().find(|c| c.piece == PieceId::Band);
        let end_allowance = ends
            .and_then(|c| {
                c.allowances
                    .iter()
                    .find(|(edge, _)| *edge == EdgeId::EndLeft)
            })
            .map_or(Length::ZERO, |(_, a)| *a);
        let case = BandCase {
            size: self.garment.size,
            shell,
            band: band.edge(EdgeId::Join).map_or(Length::ZERO, |e| e.length()),
            overlap: band
                .edge(EdgeId::Overlap)
                .map_or(Length::ZERO, |e| e.length()),
            body: seam.a - seam.ease,
            end_allowance,
            join_allowance: band_join_allowance(&self.garment.seams),
            width: cloth.map_or(Length::m(1.5), |c| c.width),
            tolerance: doc
                .chart
                .get(&MeasureId::Waist)
                .map_or(Length::ZERO, |entry| entry.tolerance),
        };
        self.band_case = Some(case);
        let conflict = case.is_conflict().then(|| case.conflict());
        if self.band_cut == BandCut::Unstated && conflict.is_some() {
            let found = conflict.as_ref().map(|c| {
                let ways = c.ways.iter().map(BandWay::as_help);
                let ways = ways.reduce(|first, next| say::JoinedOrElse { first, next }.into());
                self.finding(
                    "cutting::band",
                    Severity::Error,
                    PieceId::Band,
                    say::CuttingBandRefused { why: c.message() },
                )
                .helped(ways)
            });
            self.findings.extend(found);
            return conflict;
        }
        self.scale_band(&case);
        let way = case.way(self.band_cut);
        if conflict.is_some() || self.band_cut != BandCut::Unstated {
            let severity = if way.holds {
                Severity::Note
            } else {
                Severity::Warning
            };
            let found = self.finding("cutting::band", severity, PieceId::Band, way.said.clone());
            self.findings.push(found);
        }
        None
    }

    /// Makes the band larger in the way it is cut.
    fn scale_band(&mut self, case: &BandCase) {
        let Some(band) = self.garment.pattern.piece(PieceId::Band) else {
            return;
        };
        let shell = self.washes.of(ClothUse::Shell);
        let scale = |grain, shrinkage, cloth, follows| {
            Scale::new(grain, shrinkage, cloth, follows, Share::ZERO)
                .against(shell.skew, self.against)
        };
        let made = match self.band_cut {
            BandCut::Unstated => return,
            BandCut::AlongWeft => scale(
                band_grain_along_weft(band),
                shell.shrinkage,
                shell.shrinkage,
                Follows::OwnCloth,
            ),
            BandCut::Preshrunk(residual) => scale(band.grain, residual, residual, Follows::Stated),
            BandCut::StatedEase => {
                // Cut for the shrinkage that gives the length the ease allows.
                let length = case.length(BandCut::StatedEase);
                let stated = eased_shrinkage(case.band, length, shell.shrinkage);
                scale(band.grain, stated, shell.shrinkage, Follows::Stated)
            }
        };
        for entry in &mut self.scales {
            if entry.0 == PieceId::Band {
                entry.2 = made;
            }
        }
        self.make_legs();
    }

    fn hem_depth(&self) -> Length {
        let warp = self.washes.of(ClothUse::Shell).shrinkage.warp;
        let depth = Washed::new(self.garment.pattern.spec[MeasureId::HemDepth]);
        depth.unwashed(warp).figure()
    }

    fn lies(&self, piece: PieceId, on: On) -> Option<Vec<EdgeLie>> {
        let stated = self
            .garment
            .cut
            .iter()
            .find(|c| c.piece == piece && (c.on == on || c.on == On::Both))
            .or_else(|| self.garment.cut.iter().find(|c| c.piece == piece))?;
        Some(lies(
            &self.garment.seams,
            self.hem_depth(),
            piece,
            on,
            &stated.allowances,
        ))
    }

    fn pieces(&mut self, without_band: bool) -> Vec<CutPiece> {
        let mut out = Vec::new();
        let pockets = [set_on(&self.legs.left), set_on(&self.legs.right)];
        for stated in &self.garment.cut {
            if without_band && stated.piece == PieceId::Band {
                continue;
            }
            let Some(piece) = self.garment.pattern.piece(stated.piece) else {
                continue;
            };
            let askew = self
                .scale(piece.id, On::AsDrawn)
                .is_some_and(|s| s.skew != Share::ZERO);
            let copies: &[On] = match stated.on {
                // Against a skew the two copies are no longer each other's mirror image.
                On::Both if askew => &[On::AsDrawn, On::Mirrored],
                On::Both => &[On::Both],
                On::AsDrawn => &[On::AsDrawn],
                On::Mirrored => &[On::Mirrored],
            };
            for on in copies {
                self.copy(piece, *on, &pockets, &mut out);
            }
        }
        out
    }

    fn copy(&mut self, piece: &Piece, on: On, pockets: &[Vec<SetOn>; 2], out: &mut Vec<CutPiece>) {
        let Some(scale) = self.scale(piece.id, on).copied() else {
            return;
        };
        let Some(lies) = self.lies(piece.id, on) else {
            return;
        };
        let large = scaled(piece, &scale);
        let in_two = piece.id == PieceId::Band
            && self
                .band_case
                .is_some_and(|case| case.way(self.band_cut).pieces == 2);
        let parts = if in_two {
            band_halves::halves(&large, &lies, &self.garment.seams)
        } else {
            vec![(Part::Whole, large, lies)]
        };
        for (part, mut large, lies) in parts {
            large.notches.extend(hem_folds(&large, &lies));
            out.push(self.one(&scale, part, &large, on, &lies, pockets));
        }
    }

    fn one(
        &mut self,
        scale: &Scale,
        part: Part,
        piece: &Piece,
        on: On,
        lies: &[EdgeLie],
        pockets: &[Vec<SetOn>; 2],
    ) -> CutPiece {
        let garment = self.garment;
        let sewn = sewn_lines(piece);
        let edge_on_cloth = piece
            .edges
            .iter()
            .position(|e| runs_along(garment, piece, e.id))
            .and_then(|k| cloth_edge(piece, sewn.as_ref()?.get(k)?, lies.get(k)?.allowance));
        // Neighbours are taken from the leg this copy is on.
        let left = side_of(piece.id, on == On::Mirrored) != Some(Ply::Right);
        let legs = if left {
            (&self.legs.left, &self.legs.right)
        } else {
            (&self.legs.right, &self.legs.left)
        };
        let lies_of = |id, on| self.lies(id, on);
        let made = outline(&Ground {
            legs,
            piece,
            on,
            lies,
            cloth_edge: edge_on_cloth.as_ref(),
            lies_of: &lies_of,
        });
        let outline = self.outline_or_less(made, piece);
        let edge_on_cloth = edge_on_cloth.map(|edge| {
            let place = piece.edges.iter().position(|e| e.id == edge.edge);
            let seam = place.and_then(|k| outline.sewn.get(k));
            edge.settled(&outline.cut, seam.map_or(&[], Vec::as_slice))
        });
        let asked = piece.edges.iter().any(|e| runs_along(garment, piece, e.id));
        self.say_cloth_edge(piece, on, asked, edge_on_cloth.as_ref());
        let allowance_of = |edge| {
            let place = piece.edges.iter().position(|e| e.id == edge);
            place
                .and_then(|k| lies.get(k))
                .map_or(Length::ZERO, |l| l.allowance)
        };
        let notches = notches(piece, &outline, allowance_of, |edge, at| {
            edge_on_cloth
                .as_ref()
                .is_some_and(|c| c.edge == edge && at.y <= c.to.y + SAME_MM)
        });
        let mut set: Vec<&SetOn> = Vec::new();
        for (pockets, side) in pockets.iter().zip([Ply::Left, Ply::Right]) {
            for pocket in pockets.iter().filter(|p| p.onto == piece.id) {
                let here = side_of(piece.id, pocket.on == On::Mirrored).unwrap_or(Ply::Left);
                let fits = on == On::Both || on == pocket.on;
                if here == side && fits {
                    set.push(pocket);
                }
            }
        }
        let whole: Vec<Point> = outline
            .sewn
            .iter()
            .flat_map(|l| l.iter().take(l.len().saturating_sub(1)).copied())
            .collect();
        let drills: Vec<Drill> = drills(piece, &whole, &set, &garment.fixings, scale.map)
            .into_iter()
            .filter(|d| on == On::Both || d.on == On::Both || d.on == on)
            .collect();
        self.say_marks_in_sight(&set, &drills);
        let inner = inner_lines(piece, &set, on, &whole);
        let edges = piece
            .edges
            .iter()
            .zip(lies)
            .enumerate()
            .map(|(k, (edge, lie))| CutEdge {
                id: edge.id,
                sewn: outline.sewn.get(k).cloned().unwrap_or_default(),
                cut: outline.edges.get(k).cloned().unwrap_or_default(),
                allowance: lie.allowance,
                seam: lie.seam,
                construction: lie.construction,
                lie: lie.lie,
            })
            .collect();
        let copies = match on {
            On::Both => (piece.cut.as_drawn, piece.cut.mirrored),
            On::AsDrawn => (piece.cut.as_drawn, 0),
            On::Mirrored => (0, piece.cut.mirrored),
        };
        let key = cloth_key(&garment.doc, piece.cloth);
        let named = garment.collection.cloths.get(key);
        CutPiece {
            piece: piece.id,
            part,
            on,
            as_drawn: copies.0,
            mirrored: copies.1,
            pair: piece.cut.as_drawn > 0 && piece.cut.mirrored > 0,
            cloth: piece.cloth,
            cloth_name: key.to_owned(),
            cut: outline.cut,
            edges,
            corners: outline.corners,
            inner,
            notches,
            drills,
            points: piece.points.iter().map(|p| (p.id, p.at)).collect(),
            grain: piece.grain,
            cloth_edge: edge_on_cloth,
            label: label(&Named {
                doc: &garment.doc,
                size: garment.size,
                piece: piece.id,
                part,
                copies,
                cloth: named.map_or("", |c| c.name.as_str()),
                grain: piece.grain,
            }),
            scale: *scale,
        }
    }

    /// The cut line, or the next best one with a finding.
    fn outline_or_less(&mut self, made: Result<Outline, NoOutline>, piece: &Piece) -> Outline {
        let (outline, severity, message): (_, _, Said) = match made {
            Ok(outline) => return outline,
            Err(NoOutline::Plain(outline)) => {
                (outline, Severity::Warning, key::CUTTING_MITRED.into())
            }
            Err(NoOutline::Finished(outline, reason)) => (
                outline,
                Severity::Error,
                say::CuttingFinished { reason }.into(),
            ),
            Err(NoOutline::NoShape) => (
                Outline {
                    cut: Vec::new(),
                    sewn: Vec::new(),
                    edges: Vec::new(),
                    corners: Vec::new(),
                },
                Severity::Error,
                key::CUTTING_NO_SHAPE.into(),
            ),
        };
        let found = self
            .finding("cutting::cut-line", severity, piece.id, message)
            .help(key::CUTTING_LINE_HELP);
        self.findings.push(found);
        outline
    }
}

/// How much larger a copy of a piece is cut.
fn scale(washes: Washes, against: AgainstSkew, piece: &Piece, on: On) -> Scale {
    let skew = washes.of(piece.cloth).skew;
    // The cloth's skew is the same for both copies, so it is the opposite one in the frame of the
    // mirror image.
    let skew = if on == On::Mirrored { -skew } else { skew };
    scale_of(washes, piece).against(skew, against)
}

/// Folds as drafted, placements as the pockets really lie before the wash.
fn inner_lines(piece: &Piece, set: &[&SetOn], on: On, sewn: &[Point]) -> Vec<Inner> {
    let mut out: Vec<Inner> = piece
        .lines
        .iter()
        .filter(|l| !set.iter().any(|s| s.line == l.id))
        .filter(|l| l.kind == InnerKind::Fold || !SET_ON.iter().any(|(_, line)| *line == l.id))
        .map(|l| Inner {
            id: l.id,
            part: 0,
            kind: l.kind,
            on,
            line: l.path.dense(INNER_STEP),
        })
        .collect();
    for pocket in set {
        // All round but the top edge, which is open; it comes last in every pocket.
        let closed = pocket.edges.len().saturating_sub(1);
        let mut line: Vec<Point> = Vec::new();
        for edge in pocket.edges.iter().take(closed) {
            let skip = usize::from(!line.is_empty());
            line.extend(edge.dense(INNER_STEP).into_iter().skip(skip));
        }
        // One that lies on several pieces is drawn on each as far as that reaches.
        let parts = match pocket.pocket {
            PieceId::ExtraPocket => clip_to_polygon(&line, sewn),
            _ => vec![line],
        };
        out.extend(parts.into_iter().enumerate().map(|(part, line)| Inner {
            id: pocket.line,
            part,
            kind: InnerKind::Placement,
            on: pocket.on,
            line,
        }));
    }
    out
}
