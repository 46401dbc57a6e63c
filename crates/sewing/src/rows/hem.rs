//! The hem: one row round each leg, from its join over every seam back to it, and where the style lets it
//! run on over its start, over that too.

use draft::{EdgeId, PieceId};
use geometry::Path;
use geometry::tolerance::SAME_MM;
use style::{HemEnds, HemJoin, RowSpec};
use trade::{Length, StitchType};

use super::laid::Laid;
use crate::context::Context;
use crate::garment::{On, RowEnd};
use crate::inset_lines::Ground;

/// What a row runs on over its own start: a chain 3/4 inch, of the 13 to 25 mm that hold it, a
/// lockstitch 10 mm (reasoned, no source: a chain gives way from its last loop, so it needs several stitches more;
/// to be confirmed by a sample).
pub const fn overlap(stitch: StitchType) -> Length {
    if stitch.sews_back() {
        Length::mm(10.0)
    } else {
        Length::inches(0.75)
    }
}

/// The parts of the row in the order of sewing: on the front and on the back, and again on the first
/// of them where the row runs on over its start.
pub(super) fn rows(context: &Context<'_>, spec: &RowSpec) -> Vec<Laid> {
    let mut parts = parts(context, spec.offset).unwrap_or_default();
    let over = (context.doc.hem.ends == HemEnds::Overlapped).then(|| overlap(spec.stitch));
    if let (Some(over), Some(first), Some(last)) = (over, parts.first(), parts.last())
        && over < first.path.length()
    {
        let (again, _) = first.path.split(over);
        let again = Laid {
            path: again,
            begins: RowEnd::RunsOn,
            ends: last.ends,
            ..first.clone()
        };
        if let Some(last) = parts.last_mut() {
            last.ends = RowEnd::RunsOn;
        }
        parts.push(again);
    }
    parts
}

/// Once round the leg.
fn parts(context: &Context<'_>, offset: Length) -> Option<Vec<Laid>> {
    let hem = &context.doc.hem;
    let secured = match hem.ends {
        HemEnds::Overlapped => RowEnd::Overlapped,
        HemEnds::Backtacked => RowEnd::Backtacked,
        HemEnds::TiedByHand => RowEnd::TiedByHand,
    };
    let part = |piece, path, begins, ends| Laid {
        piece,
        on: On::Both,
        path,
        begins,
        ends,
        outside: true,
        inside: true,
    };
    use PieceId::{Back, Front};
    let from_inseam = |piece| from_inseam(context, piece, offset);
    let (front, back) = (from_inseam(Front)?, from_inseam(Back)?);
    let on = RowEnd::RunsOn;
    Some(match hem.join {
        HemJoin::Inseam => vec![
            part(Front, front, secured, on),
            part(Back, back.reversed(), on, secured),
        ],
        HemJoin::Outseam => vec![
            part(Front, front.reversed(), secured, on),
            part(Back, back, on, secured),
        ],
        HemJoin::BackOfLeg => {
            let (to_centre, to_outseam) = back.split(back.length() / 2.0);
            vec![
                part(Back, to_outseam, secured, on),
                part(Front, front.reversed(), on, on),
                part(Back, to_centre, on, secured),
            ]
        }
    })
}

/// The line of the row on one panel, from the inseam to the outseam.
fn from_inseam(context: &Context<'_>, piece: PieceId, offset: Length) -> Option<Path> {
    let piece = context.pattern.piece(piece)?;
    let line = Ground::of(piece)?.inset(&[EdgeId::Hem], offset)?;
    let inseam = piece.edge(EdgeId::Inseam)?;
    let hem = piece.edge(EdgeId::Hem)?;
    let begins_there = (hem.start() - inseam.end()).hypot() < SAME_MM;
    Some(if begins_there { line } else { line.reversed() })
}
