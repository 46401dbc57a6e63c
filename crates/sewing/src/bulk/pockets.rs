//! Crossings at the ends of the pocket mouths and at the upper corners of set-on pockets.

use draft::{EdgeId, Lining, PieceId, PointId};
use geometry::Point;
use style::SeamId;

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
            name: "where the band crosses the end of the pocket mouth".to_owned(),
            plies: band_over(site, end),
            trimmed: None,
            machine: site.machine(SeamId::Band),
            piece: PieceId::Front,
            on: On::Both,
        };
        out.push(site.crossing(found, at));
    }
    if let Some(at) = site.point(PieceId::Front, PointId::MouthSide) {
        let found = Found {
            kind: CrossingKind::Mouth,
            name: "where the outseam crosses the end of the pocket mouth".to_owned(),
            plies: site.lying(SeamId::Outseam).of(end, Plies::shell(1)),
            trimmed: None,
            machine: site.machine(SeamId::Outseam),
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
        (spec.back_pocket_left.lining, &stated.left, "left"),
        (spec.back_pocket_right.lining, &stated.right, "right"),
    ];
    let mut out = Vec::new();
    for ((id, on), (lining, pocket, side)) in back_pockets().into_iter().zip(linings) {
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
        for (point, end) in [(PointId::TopInner, "inner"), (PointId::TopOuter, "outer")] {
            let Some(at) = site.point(id, point) else {
                continue;
            };
            let found = Found {
                kind: CrossingKind::BackPocket,
                name: format!("at the {end} top corner of the {side} back pocket"),
                plies,
                trimmed: None,
                machine: site.machine(SeamId::BackPocketSet),
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
        .zip(["inner", "outer"])
        .map(|(at, end)| {
            let found = Found {
                kind: CrossingKind::CoinPocket,
                name: format!("at the {end} top corner of the coin pocket"),
                plies,
                trimmed: None,
                machine: site.machine(SeamId::CoinSet),
                piece: PieceId::CoinPocket,
                on: coin_on(&site.context.pattern.spec),
            };
            site.crossing(found, at)
        })
        .collect()
}
