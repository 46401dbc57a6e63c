//! Whether the cloths suit what they are used for, and the shell what the chart asks of it.

use draft::{PieceId, PointId, mean_seat, mean_thigh};
use style::{ClothUse, Lining, MeasureId, Subject};
use trade::Length;

use words::{Said, key, say};

use super::case::{Broken, Case};
use super::fibres::{stretches, told};

/// A chart smaller than a mean body by more than this is drafted for cloth that stretches. Charts for rigid cloth go
/// down to nothing, those for stretch denim to 4 cm less at the seat and 3 at the thigh (common practice, from memory).
const SMALLER: Length = Length::cm(2.0);

/// A cloth bought for one thing and used for another.
pub(super) fn unfit_use(case: &Case<'_>) -> Vec<Broken> {
    let (doc, cloths) = (case.context.doc, &case.context.collection.cloths);
    let pockets = [&doc.pockets.back.left, &doc.pockets.back.right];
    let linings = pockets
        .into_iter()
        .filter(|pocket| pocket.lining != Lining::None)
        .filter_map(|pocket| pocket.lining_cloth.as_ref().or(doc.cloth.lining.as_ref()));
    let used = [
        (&doc.cloth.shell, ClothUse::Shell),
        (&doc.cloth.pocketing, ClothUse::Pocketing),
    ];
    let mut out: Vec<Broken> = Vec::new();
    for (key, asked) in used
        .into_iter()
        .chain(linings.map(|key| (key, ClothUse::Lining)))
    {
        let Some(cloth) = cloths.get(key).filter(|cloth| cloth.r#use != asked) else {
            continue;
        };
        let (about, said) = (
            Subject::Cloth(key.clone()),
            say::SewingClothsUnfitUse {
                asked: asked.to_string(),
                cloth: cloth.name.to_string(),
                use_of: (cloth.r#use).to_string(),
            }
            .into(),
        );
        if out.iter().any(|b| b.subject == about && b.message == said) {
            continue;
        }
        // A shell of pocketing or lining tears; the other way round is heavier or lighter than need be.
        let broken = match asked {
            ClothUse::Shell => Broken::warning(about, said),
            ClothUse::Pocketing | ClothUse::Lining => Broken::note(about, said),
        };
        let help = say::SewingClothsUnfitUseHelp {
            asked: asked.to_string(),
        };
        out.push(
            broken
                .help(help)
                .at(case.point(PieceId::Front, PointId::KneeOut)),
        );
    }
    out
}

/// A chart that is smaller than the body it is for, in a cloth of which nothing says that it stretches.
pub(super) fn needs_stretch(case: &Case<'_>) -> Vec<Broken> {
    let (doc, spec) = (case.context.doc, &case.context.pattern.spec);
    let Some(cloth) = case.context.collection.cloths.get(&doc.cloth.shell) else {
        return Vec::new();
    };
    if stretches(&cloth.fibre) {
        return Vec::new();
    }
    let tag = case.context.size.waist;
    let (figure, waist) = (doc.style.figure, tag.length());
    let measures = [
        (
            MeasureId::Seat,
            spec[MeasureId::Seat],
            mean_seat(figure, waist),
        ),
        (
            MeasureId::Thigh,
            spec[MeasureId::Thigh],
            mean_thigh(figure, waist),
        ),
    ];
    let fibre: Said = match told(&cloth.fibre) {
        Some(words) => say::SewingClothsNeedsStretch {
            words: words.to_string(),
        }
        .into(),
        None => key::SEWING_CLOTHS_NEEDS_STRETCH_3.into(),
    };
    let tight = measures
        .into_iter()
        .filter(|(_, chart, body)| *body - *chart > SMALLER);
    tight
        .map(|(measure, chart, body)| {
            Broken::warning(
                measure,
                say::SewingClothsNeedsStretch2 {
                    chart: format!("{:.0}", (body / chart - 1.0) * 100.0),
                    cloth: cloth.name.to_string(),
                    fibre: fibre.clone(),
                    tag: tag.to_string(),
                    to_cm: format!("{:.1}", (body - chart).to_cm()),
                    to_cm_2: format!("{:.1}", body.to_cm()),
                },
            )
            .help(key::SEWING_CLOTHS_NEEDS_STRETCH_HELP)
            .at(case.point(PieceId::Front, PointId::KneeOut))
        })
        .collect()
}
