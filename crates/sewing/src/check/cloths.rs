//! Whether the cloths suit what they are used for, and the shell what the chart asks of it.

use draft::{PieceId, PointId, mean_seat, mean_thigh};
use style::{ClothUse, Lining, MeasureId, Subject};
use trade::Length;

use words::Said;

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
            format!(
                "{} is bought as {} and used as {asked}",
                cloth.name, cloth.r#use
            ),
        );
        if out
            .iter()
            .any(|b| b.subject == about && b.message == Said::from(said.as_str()))
        {
            continue;
        }
        // A shell of pocketing or lining tears; the other way round is heavier or lighter than need be.
        let broken = match asked {
            ClothUse::Shell => Broken::warning(about, said),
            ClothUse::Pocketing | ClothUse::Lining => Broken::note(about, said),
        };
        let help = format!("another cloth, or \"{asked}\" as its use in cloths.toml");
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
    let fibre = match told(&cloth.fibre) {
        Some(words) => format!("({words}) has no fibre that stretches"),
        None => "does not say what it is made of".to_owned(),
    };
    let tight = measures
        .into_iter()
        .filter(|(_, chart, body)| *body - *chart > SMALLER);
    tight
        .map(|(measure, chart, body)| {
            Broken::warning(
                measure,
                format!(
                    "it is {:.1} cm smaller than that of a mean body with a {tag} in waist ({:.1} cm): the cloth has to stretch by {:.0} % when it is put on, and {} {fibre}",
                    (body - chart).to_cm(),
                    body.to_cm(),
                    (body / chart - 1.0) * 100.0,
                    cloth.name
                ),
            )
            .help("a larger measure, or a cloth with stretch, whose `fibre` says so")
            .at(case.point(PieceId::Front, PointId::KneeOut))
        })
        .collect()
}
