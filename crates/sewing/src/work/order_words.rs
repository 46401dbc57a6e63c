//! What the sewing order says of a seam: what is done to it, and what to mind.
//! Common practice, but for the numbers, which come from the style.

use draft::{EaseOf, EdgeRun, JOINS, Join, PieceId};
use style::{BandMethod, Construction, HemEnds, HemJoin, Lining, MeasureId, Seam, SeamId};
use trade::{Length, StitchType, Unwashed};
use words::{Key, Said, key, say};

use super::bag_at_fly::bag_lies_under_fly;
use super::edge_words::{covers_strip, neatened, stays_raw};
use super::operation_key::{Called, OperationKey, SeamWork};
use super::pass_kinds::{Does, Holding};
use super::passes::Pass;
use super::plan::says;
use super::told::{self, told};
use super::turned_ends::turned_at_ends;
use crate::allowance::{Fell, allowances};
use crate::construct::construct;
use crate::context::Context;
use crate::garment::{Garment, RowEnd};
use crate::laps::to_selvedge;
use crate::lining::has_lining;
use crate::rows::{hem_overlap, is_stitched_flat};
use crate::seam::facts;
use crate::seam_words::{lies, widths};
use crate::wash::EVEN;

/// What is done to a seam: "fell".
pub(super) fn phrase(seam: SeamId, does: Does) -> Key {
    let own = told(seam).phrases.iter().find(|(of, _)| *of == does);
    if let Some((_, phrase)) = own {
        return *phrase;
    }
    match does {
        Does::Neatens => key::SEAM_WORK_NEATEN,
        Does::Joins => key::SEAM_WORK_JOIN,
        Does::Holds(holding) => match holding {
            Holding::Fell => key::SEAM_WORK_FELL,
            Holding::Topstitch => key::SEAM_WORK_TOPSTITCH,
            Holding::Hem => key::SEAM_WORK_HEM,
            Holding::Set => key::SEAM_WORK_SET,
            Holding::Round => key::SEAM_WORK_ROUND,
            Holding::Bind => key::SEAM_WORK_BIND,
            Holding::TurnIn => key::SEAM_WORK_TURN_IN,
            Holding::Enclose => key::SEAM_WORK_ENCLOSE,
            Holding::Strip => key::SEAM_WORK_STRIP,
            Holding::Decorate => key::SEAM_WORK_DECORATE,
        },
    }
}

/// What pressing a seam is called.
pub(super) fn pressing_called(seam: SeamId, how: Key) -> Called {
    called(seam, SeamWork::Press, how)
}

/// What sewing a seam is called that has no rows.
pub(super) fn without_rows_called(seam: SeamId) -> Called {
    called(seam, SeamWork::Sew, key::SEAM_WORK_SEW)
}

/// What work on a seam is called that no row states.
pub(super) fn unstated_called(seam: SeamId, does: Does) -> Called {
    called(seam, SeamWork::Pass(does), phrase(seam, does))
}

/// What a pass of a seam is called; its rows are named where the seam has others besides.
pub(super) fn pass_called(seam: &Seam, pass: &Pass) -> Called {
    let plain = unstated_called(seam.id, pass.does);
    let (head, work) = (facts(seam.id).head, phrase(seam.id, pass.does));
    if seam.rows.len() == 1 {
        return plain;
    }
    let name: Said = match &pass.rows[..] {
        [] => return plain,
        [row] => say::SeamWorkRow {
            row: *row,
            seam: head,
            work,
        }
        .into(),
        [rows @ .., last] => say::SeamWorkRows {
            last: *last,
            rows: rows.to_vec(),
            seam: head,
            work,
        }
        .into(),
    };
    Called { name, ..plain }
}

fn called(seam: SeamId, work: SeamWork, done: Key) -> Called {
    let name = say::SeamWorkDone {
        seam: facts(seam).head,
        work: done,
    };
    Called {
        key: OperationKey::of_seam(seam, work),
        name: name.into(),
    }
}

/// What to mind at a pass.
pub(super) fn of_pass(garment: &Garment, seam: &Seam, pass: &Pass, in_tube: bool) -> Vec<Said> {
    let mut out = match pass.does {
        Does::Neatens => neatened(garment, seam),
        Does::Joins => joined(garment, seam, in_tube),
        Does::Holds(holding) => held(garment, seam, holding, in_tube),
    };
    if is_first(pass) {
        out.extend(meets(garment, seam));
    }
    out.extend(ends(garment, seam, pass));
    out
}

/// Whether the plies of a seam first meet in a pass.
fn is_first(pass: &Pass) -> bool {
    let joins = matches!(
        pass.does,
        Does::Joins | Does::Holds(Holding::Fell | Holding::Set)
    );
    let mut rows = pass.rows.iter();
    joins
        && rows
            .next()
            .is_some_and(|row| *row == 1 || pass.does == Does::Joins)
}

/// The most by which the two sides of a seam differ where a pass joins them.
pub(super) fn eased_by(garment: &Garment, seam: &Seam, pass: &Pass) -> Option<Unwashed<Length>> {
    let joins = JOINS.iter().filter(|join| join.seam == seam.id);
    let fuller = joins.filter_map(|join| garment.before_wash.fuller(join));
    let most = fuller
        .map(|fuller| fuller.figure().abs())
        .filter(|by| by.is_finite() && *by >= EVEN)
        .reduce(Length::max)?;
    is_first(pass).then(|| Unwashed::new(most))
}

/// What has to meet, to be caught or to be eased when a seam is first sewn.
fn meets(garment: &Garment, seam: &Seam) -> Vec<Said> {
    let told = told(seam.id);
    let mut out = says(told.meets);
    let joins = JOINS.iter().filter(|join| join.seam == seam.id);
    out.extend(joins.filter_map(|join| eased(garment, join)));
    out
}

/// How a side of a seam that is cut longer than the other is sewn on: what the style declares and what the
/// threads of the cloth, at another angle on each side, add to it before the wash.
fn eased(garment: &Garment, join: &Join) -> Option<Said> {
    let fuller = garment.before_wash.fuller(join)?.figure();
    if !fuller.is_finite() || fuller.abs() < EVEN {
        return None;
    }
    let by = fuller.abs().in_mm(1);
    Some(match join.ease {
        EaseOf::InseamStretch if fuller > Length::ZERO => {
            say::MindStretchInseam { stretch: by }.into()
        }
        EaseOf::Band if fuller > Length::ZERO => say::MindEaseBand { ease: by }.into(),
        EaseOf::None | EaseOf::InseamStretch | EaseOf::Band => {
            let piece = |run: EdgeRun| run.first().map(|(piece, _)| piece.key());
            let (a, b) = (piece(join.a.0)?, piece(join.b.0)?);
            let (fuller, other) = if fuller > Length::ZERO {
                (a, b)
            } else {
                (b, a)
            };
            say::MindEaseOn { by, fuller, other }.into()
        }
    })
}

/// What to mind where the style states no row for it.
pub(super) fn of_unstated(garment: &Garment, seam: &Seam, does: Does, in_tube: bool) -> Vec<Said> {
    match does {
        Does::Neatens => neatened(garment, seam),
        Does::Joins | Does::Holds(_) => joined(garment, seam, in_tube),
    }
}

fn joined(garment: &Garment, seam: &Seam, in_tube: bool) -> Vec<Said> {
    let plain = allowances(seam, garment.sewn(MeasureId::HemDepth).figure()).over;
    let plain = plain.in_mm(1);
    let how: Said = if let Some(uneven) = uneven_selvedge(garment, seam) {
        uneven
    } else if seam.construction == Construction::FrenchSeam {
        key::MIND_JOIN_FRENCH.into()
    } else if seam.id == SeamId::Outseam && in_tube {
        say::MindJoinInTube { plain }.into()
    } else {
        (told(seam.id).joined)(plain)
    };
    let mut out = vec![how];
    if matches!(
        seam.construction,
        Construction::SafetyStitched | Construction::Overlocked
    ) {
        out.push(lies(garment, seam));
    }
    out
}

/// How the outseam is sewn along the cloth's own edges, where its line lies further from that of one panel than
/// from that of the other: laid edge on edge the leg would come out too wide.
fn uneven_selvedge(garment: &Garment, seam: &Seam) -> Option<Said> {
    /// Less than this is within what a sewer keeps (common practice: 1/32 inch).
    const SAME: Length = Length::mm(0.8);
    let context = Context::of(garment);
    let [front, back] =
        [PieceId::Front, PieceId::Back].map(|piece| to_selvedge(&context, seam, piece));
    let (front, back) = (front?, back?);
    ((front - back).abs() > SAME).then(|| {
        say::MindJoinUneven {
            back: back.in_mm(1),
            front: front.in_mm(1),
        }
        .into()
    })
}

/// What cutting turned-in edges away at a crossing is called.
pub(super) fn thinning_called(seam: SeamId) -> Called {
    called(seam, SeamWork::Thin, key::SEAM_WORK_THIN)
}

fn held(garment: &Garment, seam: &Seam, holding: Holding, in_tube: bool) -> Vec<Said> {
    let sewn = |measure| garment.sewn(measure).figure();
    let doc = &garment.doc;
    let mut out = Vec::new();
    match holding {
        Holding::Fell => {
            out.push(lies(garment, seam));
            out.extend(widths(garment, seam).map(|widths| {
                let turn = Fell::of(seam).turn.in_mm(1);
                say::MindFell { turn, widths }.into()
            }));
        }
        Holding::Topstitch => {
            out.push(topstitched(garment, seam));
            if seam.id == SeamId::Fly && bag_lies_under_fly(garment) {
                out.push(key::MIND_BAG_AWAY.into());
            }
        }
        Holding::Hem if seam.id == SeamId::Hem => {
            let depth = sewn(MeasureId::HemDepth).in_mm(1);
            out.push(say::MindHemDepth { depth }.into());
            out.push(hem_at(doc.hem.join).into());
            if doc.hem.roping {
                out.push(key::MIND_HEM_ROPING.into());
            }
        }
        Holding::Hem | Holding::TurnIn => out.push(lies(garment, seam)),
        Holding::Set => {
            out.extend(set_on(garment, seam));
            if stays_raw(seam) {
                out.push(key::MIND_SET_RAW_ASK.into());
            }
        }
        Holding::Round => {
            let below = garment.before_wash.start_below(doc).figure().in_mm(1);
            out.push(say::MindRoundBegin { below }.into());
            out.push(key::MIND_ROUND_END.into());
            if seam.construction == Construction::BandOverEdge {
                out.push(key::MIND_ROUND_FEET.into());
            }
            out.push(key::MIND_ROUND_CLOSES.into());
        }
        Holding::Bind => out.extend(says(&[key::MIND_BIND_STRIP, key::MIND_BIND_ASK])),
        Holding::Enclose => out.push(key::MIND_ENCLOSE.into()),
        Holding::Strip => {
            let width = sewn(MeasureId::LoopWidth).in_mm(1);
            let lies = lies(garment, seam);
            out.push(say::MindStrip { lies, width }.into());
            if !covers_strip(seam) {
                out.push(key::MIND_STRIP_RAW.into());
            }
        }
        Holding::Decorate => out.push(key::MIND_DECORATE.into()),
    }
    let seen = matches!(holding, Holding::Fell | Holding::Topstitch);
    if seen && seam.id == SeamId::FrontRise {
        let flat = is_stitched_flat(&garment.doc, &garment.seams);
        out.extend(says(&[if flat {
            key::MIND_RISE_ON_FLY
        } else {
            key::MIND_RISE_UNDER_FLY
        }]));
    }
    out.extend(reach(seam, in_tube));
    out
}

/// Where round the leg the row of a hem begins and ends.
const fn hem_at(join: HemJoin) -> Key {
    match join {
        HemJoin::Inseam => key::MIND_HEM_AT_INSEAM,
        HemJoin::Outseam => key::MIND_HEM_AT_OUTSEAM,
        HemJoin::BackOfLeg => key::MIND_HEM_AT_BACK_OF_LEG,
    }
}

fn topstitched(garment: &Garment, seam: &Seam) -> Said {
    match told(seam.id).topstitched {
        Some(how) => how(garment).into(),
        None => lies(garment, seam),
    }
}

/// Where a piece is set on another its place is told; of any other seam first how it lies.
fn set_on(garment: &Garment, seam: &Seam) -> Vec<Said> {
    let set = told::set_on(garment, seam.id);
    let mut out = Vec::new();
    if set.is_empty() || facts(seam.id).onto.is_empty() {
        out.push(lies(garment, seam));
    }
    out.extend(says(set));
    if seam.id == SeamId::BackPocketSet {
        let caught = [
            (Lining::Half, key::MIND_SET_BACK_POCKET_HALF_LINING),
            (Lining::Full, key::MIND_SET_BACK_POCKET_FULL_LINING),
        ];
        let caught = caught
            .into_iter()
            .filter(|(how_far, _)| has_lining(&garment.doc, *how_far));
        out.extend(caught.map(|(_, how)| how.into()));
    }
    if seam.id == SeamId::Band && garment.doc.band.method == BandMethod::AllRound {
        let turned = turned_at_ends(garment).in_mm(1);
        out.push(say::MindSetBandRound { turned }.into());
    }
    out
}

/// Which way the work lies under the machine.
fn reach(seam: &Seam, in_tube: bool) -> Option<Said> {
    let reach = told(seam.id).reach?;
    Some(if in_tube { reach.tube } else { reach.open }.into())
}

/// What a way of ending a row asks for.
fn ends(garment: &Garment, seam: &Seam, pass: &Pass) -> Vec<Said> {
    let rows = || {
        let of_pass = |r: &&crate::StitchRow| r.seam == seam.id && pass.rows.contains(&r.number);
        garment.rows.iter().filter(of_pass)
    };
    let any = |end| rows().any(|row| row.begins == end || row.ends == end);
    let mut out = Vec::new();
    if any(RowEnd::TuckedIn) {
        out.push(key::MIND_ENDS_TUCK.into());
    }
    if any(RowEnd::TiedByHand) {
        let left = if seam.id == SeamId::Hem && garment.doc.hem.ends == HemEnds::TiedByHand {
            key::MIND_ENDS_LEAVE_10_CM
        } else {
            key::MIND_ENDS_LEAVE
        };
        out.push(left.into());
    }
    if any(RowEnd::Overlapped) {
        let stitch = rows().next().map_or(StitchType::S301, |row| row.stitch);
        // A closed row of a chain or a lockstitch runs on as far as one of a hem.
        let over = hem_overlap(stitch).in_mm(0);
        out.push(say::MindEndsRunOn { over }.into());
    }
    if any(RowEnd::ChainedOff) {
        out.push(key::MIND_ENDS_CHAINED_OFF.into());
    }
    out
}

/// What is pressed before the last rows of a seam, and what to mind; `more` rows follow.
pub(super) fn pressing(
    garment: &Garment,
    seam: &Seam,
    more: bool,
    in_tube: bool,
) -> Option<(Key, Vec<Said>)> {
    let what = match seam.construction {
        Construction::PressedOpen => key::SEAM_WORK_PRESS_OPEN,
        Construction::MockFelled => key::SEAM_WORK_PRESS_ASIDE,
        Construction::SafetyStitched | Construction::Overlocked
            if more && seam.id != SeamId::FlyEdge =>
        {
            key::SEAM_WORK_PRESS_ASIDE
        }
        Construction::TurnedEdge => key::SEAM_WORK_TURN_AND_PRESS,
        Construction::FoldedHem => key::SEAM_WORK_FOLD_AND_PRESS,
        _ => return None,
    };
    let mut out = match seam.construction {
        Construction::TurnedEdge => says(&[key::MIND_PRESS_TURNED_EDGE]),
        Construction::FoldedHem => {
            let depth = garment.sewn(MeasureId::HemDepth).figure().in_mm(1);
            let lies = construct(seam.construction).lies;
            vec![say::MindPressFolded { depth, lies }.into()]
        }
        _ => vec![lies(garment, seam)],
    };
    if seam.id == SeamId::BandJoin {
        out.push(key::MIND_BAND_JOIN_RAW.into());
    }
    if in_tube {
        out.push(key::MIND_PRESS_TUBE.into());
    }
    Some((what, out))
}
