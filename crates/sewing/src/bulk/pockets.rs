//! Crossings at the ends of the pocket mouths and at the upper corners of set-on pockets.

use draft::{EdgeId, Lining, PieceId, PointId};
use geometry::Point;
use style::SeamId;
use words::key;

use super::crossing::{Crossing, CrossingKind, Found, Site};
use super::panels::{MOUTH_GROUND, band_over};
use super::plies::Plies;
use crate::garment::On;
use crate::placement::{back_pockets, coin_on};

pub(super) fn crossings(site: &Site<'_>) -> Vec<Crossing> {
    let mut out = mouth_ends(site);
    out.extend(back_pocket_corners(site));
    out.extend(coin_corners(site));
    out
}

/// The mouth edge with the upper bag, on the facing with the lower bag.
pub(super) fn mouth_stack(site: &Site<'_>) -> Plies {
    site.lying(SeamId::Mouth)
        .of(Plies::shell(1), Plies::pocketing(1))
        .and(MOUTH_GROUND)
}

fn mouth_ends(site: &Site<'_>) -> Vec<Crossing> {
    let end = mouth_stack(site);
    let mut out = Vec::new();
    if let Some(at) = site.point(PieceId::Front, PointId::MouthWaist) {
        let found = Found {
            kind: CrossingKind::Band,
            name: key::CROSSING_BAND_MOUTH.into(),
            plies: band_over(site, end),
            trimmed: None,
            sewn: site.sewn(SeamId::Band),
            piece: PieceId::Front,
            on: On::Both,
        };
        out.push(site.crossing(found, at));
    }
    if let Some(at) = site.point(PieceId::Front, PointId::MouthSide) {
        let found = Found {
            kind: CrossingKind::Mouth,
            name: key::CROSSING_OUTSEAM_MOUTH.into(),
            plies: site.lying(SeamId::Outseam).of(end, Plies::shell(1)),
            trimmed: None,
            sewn: site.sewn(SeamId::Outseam),
            piece: PieceId::Front,
            on: On::Both,
        };
        out.push(site.crossing(found, at));
    }
    out
}

/// The hemmed top of a patch with its side turned in, on whatever it is set on.
fn corner(site: &Site<'_>, hem: SeamId, set: SeamId, ground: Plies) -> Plies {
    let hem = site.lying(hem).of(Plies::shell(1), Plies::default());
    site.lying(set).of(hem, ground)
}

fn back_pocket_corners(site: &Site<'_>) -> Vec<Crossing> {
    let spec = &site.context.pattern.spec;
    let (doc, collection) = (site.context.doc, site.context.collection);
    let stated = &doc.pockets.back;
    let linings = [
        (
            spec.back_pocket_left.lining,
            &stated.left,
            [
                key::CROSSING_BACK_POCKET_LEFT_INNER,
                key::CROSSING_BACK_POCKET_LEFT_OUTER,
            ],
        ),
        (
            spec.back_pocket_right.lining,
            &stated.right,
            [
                key::CROSSING_BACK_POCKET_RIGHT_INNER,
                key::CROSSING_BACK_POCKET_RIGHT_OUTER,
            ],
        ),
    ];
    let mut out = Vec::new();
    for ((id, on), (lining, pocket, names)) in back_pockets().into_iter().zip(linings) {
        let site = &Site {
            context: site.context,
            one: site.one.lined_with(collection, doc.lining_of(pocket)),
        };
        // Caught in the hem, and turned in at the side with it.
        let lined = Plies::lining(if lining == Lining::None { 0 } else { 2 });
        let plies = corner(
            site,
            SeamId::BackPocketHem,
            SeamId::BackPocketSet,
            Plies::shell(1).and(lined),
        );
        for (point, name) in [PointId::TopInner, PointId::TopOuter]
            .into_iter()
            .zip(names)
        {
            let Some(at) = site.point(id, point) else {
                continue;
            };
            let found = Found {
                kind: CrossingKind::BackPocket,
                name: name.into(),
                plies,
                trimmed: None,
                sewn: site.sewn(SeamId::BackPocketSet),
                piece: id,
                on,
            };
            out.push(site.crossing(found, at));
        }
    }
    out
}

/// The coin pocket is set on the facing before the facing is set on the bag.
fn coin_corners(site: &Site<'_>) -> Vec<Crossing> {
    let top = site
        .context
        .pattern
        .piece(PieceId::CoinPocket)
        .and_then(|p| p.edge(EdgeId::Top));
    let Some(top) = top else {
        return Vec::new();
    };
    let plies = corner(site, SeamId::CoinHem, SeamId::CoinSet, Plies::shell(1));
    let mut ends: [Point; 2] = [top.start(), top.end()];
    ends.sort_by(|a, b| a.x.total_cmp(&b.x));
    ends.into_iter()
        .zip([key::CROSSING_COIN_INNER, key::CROSSING_COIN_OUTER])
        .map(|(at, name)| {
            let found = Found {
                kind: CrossingKind::CoinPocket,
                name: name.into(),
                plies,
                trimmed: None,
                sewn: site.sewn(SeamId::CoinSet),
                piece: PieceId::CoinPocket,
                on: coin_on(&site.context.pattern.spec),
            };
            site.crossing(found, at)
        })
        .collect()
}
