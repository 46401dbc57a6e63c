//! Rows and tacks through a label or a patch that is sewn on already.

use draft::PieceId;
use geometry::{Point, block, contains, crosses};
use style::{MeasureId, PartId, SeamId, Subject};
use words::{Said, key, say};

use super::scene::{Scene, share};
use super::whereabouts::{operation, place, whereabouts};
use crate::check::case::{Broken, Case};
use crate::garment::{Fixing, FixingKind};

/// A label or a patch: how it lies, and in which operation it comes there.
struct Trim<'a> {
    fixing: &'a Fixing,
    corners: [Point; 4],
    about: Subject,
    operation: usize,
}

fn trims<'a>(case: &Case<'a>, scene: &Scene<'_>) -> Vec<Trim<'a>> {
    let mut out = Vec::new();
    for (number, operation) in scene.order.iter().enumerate() {
        for fixing in operation
            .fixings
            .iter()
            .filter_map(|i| case.fixings.get(*i))
        {
            let (width, height, about) = match &fixing.kind {
                FixingKind::Patch(width, height, _) => (*width, *height, PartId::Patch.into()),
                FixingKind::Label(width, height, _) => (
                    *width,
                    *height,
                    Subject::Label(fixing.from.code().to_owned()),
                ),
                _ => continue,
            };
            out.push(Trim {
                fixing,
                corners: block(fixing.at, fixing.along, width, height),
                about,
                operation: number,
            });
        }
    }
    out
}

/// Where a line first lies on a rectangle.
fn on(corners: &[Point; 4], line: &[Point]) -> Option<Point> {
    if let Some(inside) = line.iter().find(|p| contains(corners, **p)) {
        return Some(*inside);
    }
    line.windows(2).find_map(|side| {
        (0..4)
            .any(|k| crosses((side[0], side[1]), (corners[k], corners[(k + 1) % 4])))
            .then(|| side[0].midpoint(side[1]))
    })
}

/// What is sewn through a label or a patch after it was sewn on. A label too high for the band, and a patch over a label,
/// are said by rules of their own.
pub(crate) fn through_trim(case: &Case<'_>) -> Vec<Broken> {
    let (scene, pattern) = (case.scene, case.context.pattern);
    let fold = pattern.spec[MeasureId::BandHeight].to_mm();
    let mut out: Vec<Broken> = Vec::new();
    for trim in trims(case, scene) {
        let label = trim.about != Subject::Part(PartId::Patch);
        for sewn in &scene.sewn {
            let own = match sewn.what.seam() {
                Some(SeamId::PatchSet | SeamId::LabelSet) => true,
                Some(SeamId::Band | SeamId::Outseam) => label,
                Some(SeamId::LoopEdge) => !label,
                _ => false,
            };
            let there = sewn.ground == trim.fixing.piece && share(sewn.on, trim.fixing.on);
            let known = out.iter().any(|b| b.subject == trim.about);
            if own || !there || known || sewn.operation <= trim.operation {
                continue;
            }
            // A label lies on the inner half of the band, behind what is sewn through the outer one.
            let behind: Vec<Point> = sewn
                .line
                .iter()
                .map(|p| Point::new(p.x, 2.0 * fold - p.y))
                .collect();
            let inside = label && sewn.ground == PieceId::Band;
            let line = if inside { &behind } else { &sewn.line };
            let Some(at) = on(&trim.corners, line) else {
                continue;
            };
            let said: Said = say::ClashThroughTrim {
                now: operation(scene, sewn.operation),
                set: operation(scene, trim.operation),
                sewn: sewn.what.called(),
                where_of: whereabouts(pattern, sewn.ground, at),
            }
            .into();
            out.push(
                Broken::warning(trim.about.clone(), said)
                    .help(key::CLASH_THROUGH_TRIM_HELP)
                    .at(place(sewn.ground, at)),
            );
        }
    }
    out
}
