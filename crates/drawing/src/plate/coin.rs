//! The coin pocket on its facing.

use draft::{ClothUse, PieceId};
use geometry::{Affine, Path, Point};
use sewing::{Face, Garment, On, placed};

use super::figure::{Figure, Outline};
use super::measure::Side;
use super::page::Draft;
use super::scale::PlateScale;
use super::tone::set_back;
use super::words::row_words;
use crate::palette::QUIET;

pub(super) fn draw(garment: &Garment, scale: PlateScale) -> Option<Draft<'_>> {
    let pattern = &garment.pattern;
    let coin = pattern.piece(PieceId::CoinPocket)?;
    let facing = pattern.piece(PieceId::PocketFacing)?;
    let set = placed(pattern, PieceId::CoinPocket)?;
    let _ = (coin, facing);
    let frame = set.map.inverse();
    let mirrored = set.on == On::Mirrored;
    let mut figure = Figure::new(garment, scale, (Face::Outside, "Outside"), frame, mirrored);
    let shell = figure.tone(ClothUse::Shell);
    figure.piece(
        PieceId::PocketFacing,
        Affine::IDENTITY,
        set_back(shell),
        Outline::Light,
    );
    figure.piece(PieceId::CoinPocket, set.map, shell, Outline::Heavy);
    let rows = figure.rows(PieceId::CoinPocket, set.map, |_| true);
    for k in rows {
        let row = &garment.rows[k];
        let along = |share: f64| set.map * row.path.point_at(row.length() * share);
        let words = format!(
            "{} row {}: {}",
            row.seam,
            row.number,
            row_words(&garment.collection, row)
        );
        figure.note(words, &[along(0.5), along(0.2), along(0.8)]);
    }
    for fixing in garment
        .fixings
        .iter()
        .filter(|f| f.piece == PieceId::CoinPocket)
    {
        figure.fixing(fixing, set.map, false);
    }
    let half = pattern.spec.coin_width.to_mm() / 2.0;
    let at = |x: f64, y: f64| set.map * Point::new(x, y);
    figure.dimension(Side::Above, at(-half, 0.0), at(half, 0.0), "");
    figure.name("coin pocket", &[at(0.0, -40.0)], QUIET);
    let _ = Path::line(Point::ORIGIN, Point::ORIGIN);
    Some(Draft {
        title: "Coin pocket".to_owned(),
        caption: String::new(),
        figures: vec![figure],
    })
}
