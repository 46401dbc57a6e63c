//! What is noticed about the rows that only their own shapes can tell.

use draft::{Finding, PieceId, PointId, Severity};
use style::{BandMethod, CoinShape, HemEnds, MeasureId, SeamId};
use trade::{Length, StitchType};
use words::{key, say};

use super::{band, decoration};
use crate::context::{Context, finding, with_remedy};
use crate::garment::{RowEnd, StitchRow};

/// Rows nearer to each other than this read as one (common practice).
const APART: Length = Length::mm(2.5);

/// From the end of the band to the eye of its buttonhole: nearer, the hole tears out (common
/// practice).
const EYE_FROM_END: Length = Length::mm(8.0);

pub(super) fn notes(context: &Context<'_>, rows: &[StitchRow]) -> Vec<Finding> {
    let mut out = band_rows(context);
    out.extend(button(context));
    out.extend(hem_ends(context, rows));
    out.extend(coin_foot(context));
    out.extend(decoration::notes(context));
    out
}

/// Offsets that belong to the other way of sewing the band.
fn band_rows(context: &Context<'_>) -> Vec<Finding> {
    let Some(seam) = context.seam(SeamId::Band) else {
        return Vec::new();
    };
    let height = context.pattern.spec[MeasureId::BandHeight];
    let all_round = context.doc.band.method == BandMethod::AllRound;
    let mut out = Vec::new();
    for (index, row) in seam.rows.iter().enumerate() {
        if band::is_round(context, index) && height - row.offset >= height / 2.0 {
            let found = finding(
                context,
                "sewing::band-row-round",
                Severity::Error,
                SeamId::Band,
                say::SewingNotesBandRows {
                    height: height.in_mm(1),
                    index: (index + 1).to_string(),
                    offset: (height - row.offset).in_mm(1),
                },
            );
            out.push(with_remedy(found, key::SEWING_NOTES_BAND_ROWS_3));
        }
        let near = |other: &style::RowSpec| (other.offset - row.offset).abs() < APART;
        if !all_round && seam.rows.iter().take(index).any(near) {
            let found = finding(
                context,
                "sewing::band-rows-together",
                Severity::Warning,
                SeamId::Band,
                say::SewingNotesBandRows2 {
                    index: (index + 1).to_string(),
                },
            );
            out.push(with_remedy(found, key::SEWING_NOTES_BAND_ROWS_4));
        }
    }
    out
}

/// The button under the V must find a place for its hole in the other end.
fn button(context: &Context<'_>) -> Option<Finding> {
    let point = band::v_point(context)?;
    let waist = context
        .pattern
        .piece(PieceId::Band)?
        .point(PointId::CentreFrontRight)?;
    let eye = Length::mm(point.x - waist.x);
    (eye < EYE_FROM_END).then(|| {
        let found = finding(
            context,
            "sewing::band-button",
            Severity::Warning,
            SeamId::Band,
            say::SewingNotesButton { eye: eye.in_mm(1) },
        );
        with_remedy(found, key::SEWING_NOTES_BUTTON_2)
    })
}

/// A chain stitch runs back from an end that is not secured.
fn hem_ends(context: &Context<'_>, rows: &[StitchRow]) -> Option<Finding> {
    let chained = |row: &&StitchRow| {
        row.seam == SeamId::Hem && matches!(row.stitch, StitchType::S101 | StitchType::S401)
    };
    let ends = || {
        let rows = rows.iter().filter(chained);
        rows.flat_map(|row| [row.begins, row.ends])
    };
    let (severity, how) = if ends().any(|end| end == RowEnd::Cut) {
        (Severity::Warning, key::SEWING_NOTES_HEM_ENDS_4)
    } else if ends().any(|end| end == RowEnd::Overlapped) {
        (Severity::Note, key::SEWING_NOTES_HEM_ENDS_2)
    } else {
        return None;
    };
    let found = finding(
        context,
        "sewing::hem-ends",
        severity,
        SeamId::Hem,
        say::SewingNotesHemEnds { how },
    );
    let found = with_remedy(found, key::SEWING_NOTES_HEM_ENDS_3);
    // What a row itself says goes before [hem], so there it has to be changed at the row.
    let by_rows = context.seam(SeamId::Hem).is_some_and(|seam| {
        let mut rows = seam.rows.iter();
        rows.any(|row| row.begin.is_some() || row.end.is_some())
    });
    Some(if by_rows {
        found
    } else {
        found.curing("hem.ends", HemEnds::TiedByHand.word())
    })
}

/// The foot of the coin pocket takes no more shape than its depth leaves.
fn coin_foot(context: &Context<'_>) -> Option<Finding> {
    let spec = &context.pattern.spec;
    let most = spec[MeasureId::CoinDepth] * 0.8;
    (spec.coin_shape != CoinShape::Straight && spec.coin_drop > most).then(|| {
        let found = finding(
            context,
            "sewing::coin-foot",
            Severity::Warning,
            SeamId::CoinSet,
            say::SewingNotesCoinFoot {
                coin_drop: spec.coin_drop.in_mm(1),
                coindepth: spec[MeasureId::CoinDepth].in_mm(1),
                most: most.in_mm(1),
            },
        );
        with_remedy(found, key::SEWING_NOTES_COIN_FOOT_2)
    })
}
