//! Crossings of the seams between panels, band and hem.

use draft::{PieceId, PointId};
use style::{Ply, SeamId};
use words::{key, say};

use super::crossing::{Crossing, CrossingKind, Found, Site};
use super::plies::{Plies, lying, lying_trimmed};
use crate::edges::over_ply;
use crate::garment::On;

/// Behind a pocket mouth the front is the facing on the bag.
pub(super) const MOUTH_GROUND: Plies = Plies::shell(1).and(Plies::pocketing(1));

pub(super) fn crossings(site: &Site<'_>) -> Vec<Crossing> {
    let mut out = Vec::new();
    out.extend(seat_yoke(site));
    out.extend(crotch(site));
    out.extend(outseam_yoke(site));
    out.extend(hems(site));
    out.extend(band(site));
    out
}

fn seat_yoke(site: &Site<'_>) -> Option<Crossing> {
    let at = site.point(PieceId::Back, PointId::YokeCentre)?;
    let yoke = site.construction(SeamId::Yoke);
    let seat = site.lying(SeamId::Seat);
    let (whole, trimmed) = (lying(yoke).plain(), lying_trimmed(yoke).plain());
    let found = Found {
        kind: CrossingKind::SeatYoke,
        name: key::CROSSING_SEAT_YOKE.into(),
        plies: seat.of(whole, whole),
        trimmed: Some(seat.of(trimmed, trimmed)),
        sewn: site.sewn(SeamId::Seat),
        piece: PieceId::Back,
        on: On::Both,
    };
    Some(site.crossing(found, at))
}

/// The inseam is sewn from hem to hem across the finished front rise and seat seam.
fn crotch(site: &Site<'_>) -> Option<Crossing> {
    let at = site.point(PieceId::Front, PointId::Crotch)?;
    let inseam = site.lying(SeamId::Inseam);
    let front_over = site.seam(SeamId::Inseam).and_then(over_ply) != Some(Ply::Back);
    let stack = |rise: Plies, seat: Plies| {
        if front_over {
            inseam.of(rise, seat)
        } else {
            inseam.of(seat, rise)
        }
    };
    let (rise, seat) = (
        site.construction(SeamId::FrontRise),
        site.construction(SeamId::Seat),
    );
    let found = Found {
        kind: CrossingKind::Crotch,
        name: key::CROSSING_CROTCH.into(),
        plies: stack(lying(rise).plain(), lying(seat).plain()),
        trimmed: Some(stack(
            lying_trimmed(rise).plain(),
            lying_trimmed(seat).plain(),
        )),
        sewn: site.sewn(SeamId::Inseam),
        piece: PieceId::Front,
        on: On::Both,
    };
    Some(site.crossing(found, at))
}

/// The end of the yoke seam lies opposite the pocket mouth.
fn outseam_yoke(site: &Site<'_>) -> Option<Crossing> {
    let at = site.point(PieceId::Yoke, PointId::SeamSide)?;
    let yoke = site.construction(SeamId::Yoke);
    let outseam = site.lying(SeamId::Outseam);
    let found = Found {
        kind: CrossingKind::OutseamYoke,
        name: key::CROSSING_OUTSEAM_YOKE.into(),
        plies: outseam.of(MOUTH_GROUND, lying(yoke).plain()),
        trimmed: Some(outseam.of(MOUTH_GROUND, lying_trimmed(yoke).plain())),
        sewn: site.sewn(SeamId::Outseam),
        piece: PieceId::Yoke,
        on: On::Both,
    };
    Some(site.crossing(found, at))
}

fn hems(site: &Site<'_>) -> Vec<Crossing> {
    let hem = site.lying(SeamId::Hem);
    [
        (SeamId::Inseam, PointId::HemIn),
        (SeamId::Outseam, PointId::HemOut),
    ]
    .into_iter()
    .filter_map(|(seam, point)| {
        let at = site.point(PieceId::Front, point)?;
        let crossed = site.construction(seam);
        let found = Found {
            kind: CrossingKind::Hem,
            name: say::CrossingHem { seam }.into(),
            plies: hem.of(lying(crossed).plain(), Plies::default()),
            trimmed: Some(hem.of(lying_trimmed(crossed).plain(), Plies::default())),
            sewn: site.sewn(SeamId::Hem),
            piece: PieceId::Front,
            on: On::Both,
        };
        Some(site.crossing(found, at))
    })
    .collect()
}

/// The body under the band at the outseams: facing and bag in front, yoke behind.
pub(super) fn outseam_at_band(site: &Site<'_>) -> Plies {
    site.lying(SeamId::Outseam)
        .of(MOUTH_GROUND, Plies::shell(1))
}

/// The band seam over a body of so many plies.
pub(super) fn band_over(site: &Site<'_>, body: Plies) -> Plies {
    site.lying(SeamId::Band).of(Plies::shell(1), body)
}

fn band(site: &Site<'_>) -> Vec<Crossing> {
    let outseam = outseam_at_band(site);
    let seat = site.construction(SeamId::Seat);
    [
        (
            PointId::CentreBack,
            key::CROSSING_BAND_SEAT,
            lying(seat).plain(),
            lying_trimmed(seat).plain(),
        ),
        (
            PointId::SideLeft,
            key::CROSSING_BAND_OUTSEAM_LEFT,
            outseam,
            outseam,
        ),
        (
            PointId::SideRight,
            key::CROSSING_BAND_OUTSEAM_RIGHT,
            outseam,
            outseam,
        ),
    ]
    .into_iter()
    .filter_map(|(point, name, whole, trimmed)| {
        let at = site.point(PieceId::Band, point)?;
        let found = Found {
            kind: CrossingKind::Band,
            name: name.into(),
            plies: band_over(site, whole),
            trimmed: Some(band_over(site, trimmed)),
            sewn: site.sewn(SeamId::Band),
            piece: PieceId::Band,
            on: On::AsDrawn,
        };
        Some(site.crossing(found, at))
    })
    .collect()
}
