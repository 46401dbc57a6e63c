//! Reading one size out of a style document.

use style::{
    BackPocket, ByMeasure, Closing, LeftOut, Level, MeasureId, OutseamLine, Side, Size, StyleDoc,
};
use trade::Length;

use crate::spec::{BackPocketSpec, ExtraPocketSpec, Lining, Spec};

impl Spec {
    /// One size of a style. A measure the document does not state takes its documented default;
    /// one that has none (only an incomplete document lacks it) counts as zero, and the draft then
    /// reports the conflict.
    pub fn of(doc: &StyleDoc, size: Size) -> Spec {
        let value = |measure: MeasureId| {
            let stated = doc.value(measure, size);
            match measure.known().left_out {
                LeftOut::Drafted => stated,
                LeftOut::Refused | LeftOut::Usual(_) => Some(stated.unwrap_or(Length::ZERO)),
            }
        };
        let level = |level: Level| doc.level(level.measure()).unwrap_or(level.usual());
        let shape = &doc.shape;
        let pockets = &doc.pockets;
        Spec {
            measures: ByMeasure::of(value),
            levels: Level::ALL.map(level),
            seat_split: shape.seat_split,
            thigh_split: shape.thigh_split,
            knee_split: shape.knee_split,
            hem_split: shape.hem_split,
            waist_split: shape.waist_split,
            front_tilt: shape.front_tilt,
            seat_angle: shape.seat_angle,
            seat_dart: shape.seat_dart,
            inseam_stretch: shape.inseam_stretch,
            band_ease: shape.band_ease,
            straight_outseam: shape.outseam == OutseamLine::Straight,
            coin_on_right: pockets.coin.side == Side::Right,
            coin_below_band: pockets.coin.below_band,
            coin_from_side: pockets.coin.from_side,
            coin_lower_narrowing: pockets.coin.lower_narrowing,
            coin_shape: pockets.coin.shape,
            coin_drop: pockets.coin.drop,
            coin_outline: pockets
                .coin
                .drawing
                .as_ref()
                .filter(|drawing| drawing.unfit_outline().is_none())
                .and_then(|drawing| drawing.lines.first().cloned()),
            button_fly: doc.fly.closing == Closing::Buttons,
            bag_depth: pockets.bag.depth,
            bag_width: pockets.bag.width,
            facing: pockets.bag.facing,
            mouth_fullness: pockets.bag.mouth_fullness,
            back_pocket_left: back_pocket(&pockets.back.left),
            back_pocket_right: back_pocket(&pockets.back.right),
            extra_pocket: pockets.extra.as_ref().map(|extra| ExtraPocketSpec {
                on_left: extra.side == Side::Left,
                width: extra.width,
                depth: extra.depth,
                from_centre: extra.from_centre,
            }),
            loop_count: doc.loops.count,
        }
    }
}

fn back_pocket(pocket: &BackPocket) -> BackPocketSpec {
    BackPocketSpec {
        foot_width: pocket.foot_width,
        side_length: pocket.side_length,
        outer_drop: pocket.outer_drop,
        lining: match pocket.lining {
            style::Lining::None => Lining::None,
            style::Lining::Half => Lining::Half,
            style::Lining::Full => Lining::Full,
        },
    }
}
