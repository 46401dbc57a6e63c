//! The edges of pieces: which there are, and which a piece has in which order.

use serde::{Serialize, Serializer};
use words::key;

use crate::PieceId;

words::identities! {
    /// An edge of a piece. One code may be on several pieces; within a piece it is on one edge.
    pub enum EdgeId {
        /// The fly opening, waist to fly foot.
        Fly = "fly" => key::EDGE_FLY,
        /// The front rise below the fly.
        Crotch = "crotch" => key::EDGE_CROTCH,
        /// Crotch to hem.
        Inseam = "inseam" => key::EDGE_INSEAM,
        /// The finished lower edge.
        Hem = "hem" => key::EDGE_HEM,
        /// The outseam, hem to waist.
        Side = "side" => key::EDGE_SIDE,
        /// The hip pocket mouth.
        Mouth = "mouth" => key::EDGE_MOUTH,
        /// The upper edge, under the band.
        Waist = "waist" => key::EDGE_WAIST,
        /// The seat seam of the back.
        Seat = "seat" => key::EDGE_SEAT,
        /// The upper edge of a yoke, a back or a pocket.
        Top = "top" => key::EDGE_TOP,
        /// The centre back of the yoke.
        Centre = "centre" => key::EDGE_CENTRE,
        /// The yoke's edge towards the back.
        Lower = "lower" => key::EDGE_LOWER,
        /// The band's seam with the body.
        Join = "join" => key::EDGE_JOIN,
        /// The band beyond the centre front, where it goes under.
        Overlap = "overlap" => key::EDGE_OVERLAP,
        /// The right end of the band.
        EndRight = "end_right" => key::EDGE_END_RIGHT,
        /// The edge towards the inside: of a band the other long edge, of a pocket the side towards the centre.
        Inner = "inner" => key::EDGE_INNER,
        /// The left end of the band.
        EndLeft = "end_left" => key::EDGE_END_LEFT,
        /// The fly facing's seam with the front.
        Edge = "edge" => key::EDGE_EDGE,
        /// The lower edge of a facing, a shield or a pocket.
        Foot = "foot" => key::EDGE_FOOT,
        /// The fly facing's edge away from the fly.
        Back = "back" => key::EDGE_BACK,
        /// The left edge as drawn.
        Left = "left" => key::EDGE_LEFT,
        /// The right edge as drawn.
        Right = "right" => key::EDGE_RIGHT,
        /// The upper edge where it lies under another piece.
        WaistUnder = "waist_under" => key::EDGE_WAIST_UNDER,
        /// The outseam where it lies under another piece.
        SideUnder = "side_under" => key::EDGE_SIDE_UNDER,
        /// The upper edge of a bag's upper layer.
        WaistUpper = "waist_upper" => key::EDGE_WAIST_UPPER,
        /// The outseam of a bag's upper layer.
        SideUpper = "side_upper" => key::EDGE_SIDE_UPPER,
        /// The foot of a bag's upper layer.
        FootUpper = "foot_upper" => key::EDGE_FOOT_UPPER,
        /// The foot of a bag's under layer.
        FootUnder = "foot_under" => key::EDGE_FOOT_UNDER,
        /// The foot from the inner side to the point.
        FootInner = "foot_inner" => key::EDGE_FOOT_INNER,
        /// The foot from the point to the outer side.
        FootOuter = "foot_outer" => key::EDGE_FOOT_OUTER,
        /// The side of a pocket away from the centre.
        Outer = "outer" => key::EDGE_OUTER,
        /// The lower end of the loop strip.
        EndFoot = "end_foot" => key::EDGE_END_FOOT,
        /// The upper end of the loop strip.
        EndTop = "end_top" => key::EDGE_END_TOP,
        /// Where a band cut in two is joined; on its halves alone.
        CentreBack = "centre_back" => key::EDGE_CENTRE_BACK,
    }
}

impl Serialize for EdgeId {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(self.code())
    }
}

impl PieceId {
    /// Its edges in order round it, anticlockwise. A back pocket's lining has these when it lines the whole pocket;
    /// one that lines the upper half has [`HALF_LINING`].
    #[must_use]
    pub const fn edges(self) -> &'static [EdgeId] {
        use EdgeId as E;
        match self {
            PieceId::Front => &[
                E::Fly,
                E::Crotch,
                E::Inseam,
                E::Hem,
                E::Side,
                E::Mouth,
                E::Waist,
            ],
            PieceId::Back => &[E::Seat, E::Inseam, E::Hem, E::Side, E::Top],
            PieceId::Yoke => &[E::Centre, E::Lower, E::Side, E::Top],
            PieceId::Band => &[E::Join, E::Overlap, E::EndRight, E::Inner, E::EndLeft],
            PieceId::FlyFacing => &[E::Edge, E::Foot, E::Back, E::Top],
            PieceId::PocketFacing => &[E::Waist, E::WaistUnder, E::Inner, E::SideUnder, E::Side],
            PieceId::FlyShield | PieceId::CoinPocket | PieceId::ExtraPocket => {
                &[E::Left, E::Foot, E::Right, E::Top]
            }
            PieceId::PocketBag => &[
                E::WaistUpper,
                E::Mouth,
                E::SideUpper,
                E::FootUpper,
                E::FootUnder,
                E::SideUnder,
                E::WaistUnder,
            ],
            PieceId::BackPocketLeft
            | PieceId::BackPocketRight
            | PieceId::BackLiningLeft
            | PieceId::BackLiningRight => &[E::Inner, E::FootInner, E::FootOuter, E::Outer, E::Top],
            PieceId::LoopStrip => &[E::EndFoot, E::Right, E::EndTop, E::Left],
        }
    }
}

/// The edges of a lining that reaches half way down its pocket, in order.
pub const HALF_LINING: [EdgeId; 4] = [EdgeId::Foot, EdgeId::Outer, EdgeId::Top, EdgeId::Inner];
