//! Every row of stitches at its true place.
//!
//! Most rows run along edges of a piece at the distance the style states: [`course`] says along
//! which, on which copies, and where they show. The fly, the hem, the row round the band, the loop
//! strip and the decoration have their own shapes.

mod band;
mod course;
mod decoration;
mod fly;
mod hem;
mod laid;
mod laid_on;
mod notes;

use draft::{Finding, LineId, PieceId, Severity};
use geometry::Point;
use style::{Construction, Lap, RowEnding, RowSpec, Seam, SeamId};
use trade::{Length, StitchType};
use words::{key, say};

use crate::band_parts;
use crate::context::{Context, finding, with_remedy};
use crate::garment::{On, RowEnd, StitchRow};
use crate::inset_lines::Ground;
use crate::joining::JOINING;
use crate::laps::selvedge_reach;
use course::{Course, courses};

pub(crate) use band::{from_seam_line, v_point};
pub(crate) use fly::{is_stitched_flat, line as fly_line};
pub use hem::overlap as hem_overlap;

use laid::Laid;

pub(crate) fn rows(context: &Context<'_>, findings: &mut Vec<Finding>) -> Vec<StitchRow> {
    let mut out = Vec::new();
    for seam in context.seams {
        for (index, spec) in seam.rows.iter().enumerate() {
            let laid = lay(context, seam, index, spec);
            if laid.is_empty() && wanted(context, seam) {
                let found = finding(
                    context,
                    "sewing::row-without-place",
                    Severity::Error,
                    seam.id,
                    say::SewingModRows {
                        index: (index + 1).to_string(),
                        offset: spec.offset.in_mm(1),
                    },
                );
                findings.push(with_remedy(found, key::SEWING_MOD_ROWS_2));
            }
            out.extend(
                laid.into_iter()
                    .map(|line| row(context, seam, index, spec, line)),
            );
        }
    }
    findings.extend(notes::notes(context, &out));
    out
}

fn lay(context: &Context<'_>, seam: &Seam, index: usize, spec: &RowSpec) -> Vec<Laid> {
    match seam.id {
        SeamId::Band if band::is_round(context, index) => {
            band::round(context, spec.offset).into_iter().collect()
        }
        SeamId::BandJoin => band::join(context, spec.offset),
        SeamId::Hem => hem::rows(context, spec),
        SeamId::Fly => fly_row(context, spec).into_iter().collect(),
        SeamId::LoopEdge => strip_row(context, spec).into_iter().collect(),
        SeamId::Decoration => decoration::rows(context, spec),
        SeamId::PatchSet => laid_on::patch(context, spec.offset),
        SeamId::LabelSet => laid_on::labels(context, spec.offset),
        SeamId::Outseam
        | SeamId::Inseam
        | SeamId::Seat
        | SeamId::Yoke
        | SeamId::FrontRise
        | SeamId::Band
        | SeamId::Mouth
        | SeamId::FlyEdge
        | SeamId::CoinHem
        | SeamId::CoinSet
        | SeamId::BackPocketHem
        | SeamId::BackPocketSet
        | SeamId::FacingSet
        | SeamId::BagClose
        | SeamId::ExtraHem
        | SeamId::ExtraSet => {
            let turned = on_other_side(seam, spec);
            let (seam, spec) = turned
                .as_ref()
                .map_or((seam, spec), |(seam, spec)| (seam, spec));
            courses(context, seam, spec)
                .into_iter()
                .filter_map(|course| follow(context, &course, spec))
                .filter_map(|laid| on_raw_edge(context, seam, spec, laid))
                .collect()
        }
    }
}

/// A row at a negative offset beside a seam pressed open lies as far into the ply below: the same
/// seam with its plies changed over. The first row of a French seam, sewn in its allowance, follows
/// the seam line.
fn on_other_side(seam: &Seam, spec: &RowSpec) -> Option<(Seam, RowSpec)> {
    if seam.construction == Construction::FrenchSeam && spec.offset < Length::ZERO {
        let on_line = RowSpec {
            offset: Length::ZERO,
            ..spec.clone()
        };
        return Some((seam.clone(), on_line));
    }
    let beside = seam.construction == Construction::PressedOpen && spec.offset <= -JOINING;
    let usual = style::known::seam(seam.id).usual_lap?;
    beside.then(|| {
        let lap = seam.lap.unwrap_or(usual);
        let seam = Seam {
            lap: Some(Lap {
                over: lap.under,
                under: lap.over,
            }),
            ..seam.clone()
        };
        let spec = RowSpec {
            offset: -spec.offset,
            ..spec.clone()
        };
        (seam, spec)
    })
}

/// An overedge of an edge by itself, only where that edge is raw: what the cloth itself finishes has none.
fn on_raw_edge(context: &Context<'_>, seam: &Seam, spec: &RowSpec, laid: Laid) -> Option<Laid> {
    let alone = seam.construction == Construction::PressedOpen && spec.stitch.is_overedge();
    let Some(reach) = selvedge_reach(context, seam, laid.piece).filter(|_| alone) else {
        return Some(laid);
    };
    let long = laid.path.length();
    (reach < long).then(|| Laid {
        path: laid.path.part(reach, long),
        begins: RowEnd::Cut,
        ..laid
    })
}

fn follow(context: &Context<'_>, course: &Course, spec: &RowSpec) -> Option<Laid> {
    let piece = context.pattern.piece(course.piece)?;
    let path = course
        .from_fly
        .then(|| fly::from_stitching(context, spec.offset))
        .flatten()
        .or_else(|| Ground::of(piece)?.inset(course.edges, spec.offset))?;
    Some(Laid {
        piece: course.piece,
        on: course.on,
        path,
        begins: course.begins,
        ends: course.ends,
        outside: course.outside,
        inside: course.inside,
    })
}

fn fly_row(context: &Context<'_>, spec: &RowSpec) -> Option<Laid> {
    Some(Laid {
        piece: PieceId::Front,
        on: On::AsDrawn,
        path: fly_line(context.pattern, spec.offset)?,
        begins: RowEnd::CaughtInSeam,
        ends: RowEnd::Backtacked,
        outside: true,
        inside: true,
    })
}

/// A row on the loop strip: at the offset from the finished loop's left edge, the whole strip long.
fn strip_row(context: &Context<'_>, spec: &RowSpec) -> Option<Laid> {
    let strip = context.pattern.piece(PieceId::LoopStrip)?;
    let fold = strip.line(LineId::FoldLeft)?;
    let shift = geometry::Vec2::new(spec.offset.to_mm(), 0.0);
    let line: [Point; 2] = [fold.start() + shift, fold.end() + shift];
    Some(Laid {
        piece: PieceId::LoopStrip,
        on: On::AsDrawn,
        path: Ground::of(strip)?.clip(&line)?,
        begins: RowEnd::CaughtInSeam,
        ends: RowEnd::CaughtInSeam,
        outside: true,
        inside: false,
    })
}

/// What the style says about an end of the row, or what is usual there. An end in the middle of a
/// row that runs on is none. What is usually sewn back and forth is chained off where the stitch has
/// no reverse; how a hem ends the style says itself.
fn ending(usual: RowEnd, stated: Option<RowEnding>, row: (SeamId, StitchType)) -> RowEnd {
    match (usual, stated, row) {
        (RowEnd::RunsOn, _, _) => usual,
        (_, Some(stated), _) => stated.into(),
        (RowEnd::Backtacked, None, (seam, stitch))
            if seam != SeamId::Hem && !stitch.sews_back() =>
        {
            RowEnd::ChainedOff
        }
        (_, None, _) => usual,
    }
}

fn row(context: &Context<'_>, seam: &Seam, index: usize, spec: &RowSpec, laid: Laid) -> StitchRow {
    StitchRow {
        seam: seam.id,
        number: index + 1,
        piece: laid.piece,
        on: laid.on,
        path: laid.path,
        stitch: spec.stitch,
        density: spec.density,
        needle: context.yarn(&spec.yarn),
        under: context.yarn(&spec.under),
        begins: ending(laid.begins, spec.begin, (seam.id, spec.stitch)),
        ends: ending(laid.ends, spec.end, (seam.id, spec.stitch)),
        shows_outside: laid.outside,
        shows_inside: laid.inside,
    }
}

/// Whether the style has what this seam is sewn on.
fn wanted(context: &Context<'_>, seam: &Seam) -> bool {
    match seam.id {
        SeamId::ExtraHem | SeamId::ExtraSet => {
            context.pattern.piece(PieceId::ExtraPocket).is_some()
        }
        SeamId::BandJoin => band_parts::joined(context),
        SeamId::Decoration => decoration::wanted(context),
        SeamId::PatchSet => context.doc.patch.is_some(),
        SeamId::LabelSet => laid_on::labels_wanted(context),
        SeamId::Outseam
        | SeamId::Inseam
        | SeamId::Seat
        | SeamId::Yoke
        | SeamId::FrontRise
        | SeamId::Band
        | SeamId::Hem
        | SeamId::Mouth
        | SeamId::Fly
        | SeamId::FlyEdge
        | SeamId::CoinHem
        | SeamId::CoinSet
        | SeamId::BackPocketHem
        | SeamId::BackPocketSet
        | SeamId::FacingSet
        | SeamId::BagClose
        | SeamId::LoopEdge => true,
    }
}
