//! What a style speaks of: its measures, its seams and its pieces, each known by a code that does not change.

use std::fmt;

use serde::{Serialize, Serializer};
use words::{Key, Words, key};

words::identities! {
    /// A measure of the chart.
    pub enum MeasureId {
        /// Waist.
        Waist = "waist" => key::MEASURE_WAIST,
        /// Seat.
        Seat = "seat" => key::MEASURE_SEAT,
        /// Front rise.
        FrontRise = "front_rise" => key::MEASURE_FRONT_RISE,
        /// Back rise.
        BackRise = "back_rise" => key::MEASURE_BACK_RISE,
        /// Thigh.
        Thigh = "thigh" => key::MEASURE_THIGH,
        /// Knee.
        Knee = "knee" => key::MEASURE_KNEE,
        /// Hem.
        Hem = "hem" => key::MEASURE_HEM,
        /// Inseam.
        Inseam = "inseam" => key::MEASURE_INSEAM,
        /// Outseam.
        Outseam = "outseam" => key::MEASURE_OUTSEAM,
        /// Band height.
        BandHeight = "band_height" => key::MEASURE_BAND_HEIGHT,
        /// Band overlap.
        BandOverlap = "band_overlap" => key::MEASURE_BAND_OVERLAP,
        /// Fly length.
        FlyLength = "fly_length" => key::MEASURE_FLY_LENGTH,
        /// Fly width.
        FlyWidth = "fly_width" => key::MEASURE_FLY_WIDTH,
        /// Yoke height, centre back.
        YokeCentre = "yoke_centre" => key::MEASURE_YOKE_CENTRE,
        /// Yoke height, side.
        YokeSide = "yoke_side" => key::MEASURE_YOKE_SIDE,
        /// Pocket mouth, width.
        MouthWidth = "mouth_width" => key::MEASURE_MOUTH_WIDTH,
        /// Pocket mouth, depth.
        MouthDepth = "mouth_depth" => key::MEASURE_MOUTH_DEPTH,
        /// Coin pocket, width.
        CoinWidth = "coin_width" => key::MEASURE_COIN_WIDTH,
        /// Coin pocket, depth.
        CoinDepth = "coin_depth" => key::MEASURE_COIN_DEPTH,
        /// Back pocket, width.
        BackPocketWidth = "back_pocket_width" => key::MEASURE_BACK_POCKET_WIDTH,
        /// Back pocket, length.
        BackPocketLength = "back_pocket_length" => key::MEASURE_BACK_POCKET_LENGTH,
        /// Back pocket below yoke.
        BackPocketFromYoke = "back_pocket_from_yoke" => key::MEASURE_BACK_POCKET_FROM_YOKE,
        /// Back pocket from centre back.
        BackPocketFromCentre = "back_pocket_from_centre" => key::MEASURE_BACK_POCKET_FROM_CENTRE,
        /// Belt loop, length.
        LoopLength = "loop_length" => key::MEASURE_LOOP_LENGTH,
        /// Belt loop, width.
        LoopWidth = "loop_width" => key::MEASURE_LOOP_WIDTH,
        /// Hem depth.
        HemDepth = "hem_depth" => key::MEASURE_HEM_DEPTH,
    }
}

words::identities! {
    /// A seam of the garment.
    pub enum SeamId {
        /// Outseam.
        Outseam = "outseam" => key::SEAM_OUTSEAM,
        /// Inseam.
        Inseam = "inseam" => key::SEAM_INSEAM,
        /// Seat seam.
        Seat = "seat" => key::SEAM_SEAT,
        /// Yoke seam.
        Yoke = "yoke" => key::SEAM_YOKE,
        /// Front rise seam.
        FrontRise = "front_rise" => key::SEAM_FRONT_RISE,
        /// Waistband set on.
        Band = "band" => key::SEAM_BAND,
        /// Waistband joined at the centre back, where it is cut in two.
        BandJoin = "band_halves" => key::SEAM_BAND_JOIN,
        /// Hem.
        Hem = "hem" => key::SEAM_HEM,
        /// Pocket mouth.
        Mouth = "mouth" => key::SEAM_MOUTH,
        /// Fly.
        Fly = "fly" => key::SEAM_FLY,
        /// Fly facing edge.
        FlyEdge = "fly_edge" => key::SEAM_FLY_EDGE,
        /// Coin pocket hem.
        CoinHem = "coin_hem" => key::SEAM_COIN_HEM,
        /// Coin pocket set on.
        CoinSet = "coin_set" => key::SEAM_COIN_SET,
        /// Back pocket hem.
        BackPocketHem = "back_pocket_hem" => key::SEAM_BACK_POCKET_HEM,
        /// Back pockets set on.
        BackPocketSet = "back_pocket_set" => key::SEAM_BACK_POCKET_SET,
        /// Pocket facing set on the bag.
        FacingSet = "facing_set" => key::SEAM_FACING_SET,
        /// Pocket bag closed.
        BagClose = "bag_close" => key::SEAM_BAG_CLOSE,
        /// Extra pocket hem.
        ExtraHem = "extra_hem" => key::SEAM_EXTRA_HEM,
        /// Extra pocket set on.
        ExtraSet = "extra_set" => key::SEAM_EXTRA_SET,
        /// Belt loop strip.
        LoopEdge = "loop_edge" => key::SEAM_LOOP_EDGE,
        /// Back pocket stitching.
        Decoration = "decoration" => key::SEAM_DECORATION,
        /// Patch sewn on.
        PatchSet = "patch_set" => key::SEAM_PATCH_SET,
        /// Labels sewn on.
        LabelSet = "label_set" => key::SEAM_LABEL_SET,
    }
}

words::identities! {
    /// A kind of piece of a five-pocket jean.
    pub enum PieceId {
        /// Front panel, with the hip pocket cut away.
        Front = "front" => key::PIECE_FRONT,
        /// Back panel below the yoke.
        Back = "back" => key::PIECE_BACK,
        /// Back yoke.
        Yoke = "yoke" => key::PIECE_YOKE,
        /// Waistband, one piece, folded along its length.
        Band = "band" => key::PIECE_BAND,
        /// Facing of the left fly edge (carries the buttonholes of a button fly).
        FlyFacing = "fly_facing" => key::PIECE_FLY_FACING,
        /// Shield behind the fly on the right.
        FlyShield = "fly_shield" => key::PIECE_FLY_SHIELD,
        /// Shell facing behind the hip pocket mouth.
        PocketFacing = "pocket_facing" => key::PIECE_POCKET_FACING,
        /// Coin pocket.
        CoinPocket = "coin_pocket" => key::PIECE_COIN_POCKET,
        /// Hip pocket bag, one piece folded.
        PocketBag = "pocket_bag" => key::PIECE_POCKET_BAG,
        /// Left back pocket.
        BackPocketLeft = "back_pocket_left" => key::PIECE_BACK_POCKET_LEFT,
        /// Right back pocket.
        BackPocketRight = "back_pocket_right" => key::PIECE_BACK_POCKET_RIGHT,
        /// Lining of the left back pocket.
        BackLiningLeft = "back_lining_left" => key::PIECE_BACK_LINING_LEFT,
        /// Lining of the right back pocket.
        BackLiningRight = "back_lining_right" => key::PIECE_BACK_LINING_RIGHT,
        /// Strip from which all belt loops are cut.
        LoopStrip = "loop_strip" => key::PIECE_LOOP_STRIP,
        /// Concealed inner pocket.
        ExtraPocket = "extra_pocket" => key::PIECE_EXTRA_POCKET,
    }
}

impl Serialize for SeamId {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(self.code())
    }
}

impl Serialize for PieceId {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(self.code())
    }
}

impl fmt::Display for PieceId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words(Words::english()))
    }
}

impl PieceId {
    /// Its name within a sentence.
    #[must_use]
    pub const fn within(self) -> Key {
        match self {
            Self::Front => key::PIECE_WITHIN_FRONT,
            Self::Back => key::PIECE_WITHIN_BACK,
            Self::Yoke => key::PIECE_WITHIN_YOKE,
            Self::Band => key::PIECE_WITHIN_BAND,
            Self::FlyFacing => key::PIECE_WITHIN_FLY_FACING,
            Self::FlyShield => key::PIECE_WITHIN_FLY_SHIELD,
            Self::PocketFacing => key::PIECE_WITHIN_POCKET_FACING,
            Self::CoinPocket => key::PIECE_WITHIN_COIN_POCKET,
            Self::PocketBag => key::PIECE_WITHIN_POCKET_BAG,
            Self::BackPocketLeft => key::PIECE_WITHIN_BACK_POCKET_LEFT,
            Self::BackPocketRight => key::PIECE_WITHIN_BACK_POCKET_RIGHT,
            Self::BackLiningLeft => key::PIECE_WITHIN_BACK_LINING_LEFT,
            Self::BackLiningRight => key::PIECE_WITHIN_BACK_LINING_RIGHT,
            Self::LoopStrip => key::PIECE_WITHIN_LOOP_STRIP,
            Self::ExtraPocket => key::PIECE_WITHIN_EXTRA_POCKET,
        }
    }
}
