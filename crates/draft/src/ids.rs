//! The points, lines and notches of pieces, each known by a code that does not change.

use words::key;

words::identities! {
    /// A point of a piece that others refer to; unique within the piece.
    pub enum PointId {
        /// The waist at the centre front or back.
        WaistCentre = "waist_centre" => key::POINT_WAIST_CENTRE,
        /// The foot of the fly opening.
        FlyFoot = "fly_foot" => key::POINT_FLY_FOOT,
        /// The crotch point.
        Crotch = "crotch" => key::POINT_CROTCH,
        /// The knee on the inseam.
        KneeIn = "knee_in" => key::POINT_KNEE_IN,
        /// The hem at the inseam.
        HemIn = "hem_in" => key::POINT_HEM_IN,
        /// The middle of the hem.
        HemMiddle = "hem_middle" => key::POINT_HEM_MIDDLE,
        /// The top of the hem fold, above its middle.
        HemTop = "hem_top" => key::POINT_HEM_TOP,
        /// The hem at the outseam.
        HemOut = "hem_out" => key::POINT_HEM_OUT,
        /// The knee on the outseam.
        KneeOut = "knee_out" => key::POINT_KNEE_OUT,
        /// The hip on the outseam.
        Hip = "hip" => key::POINT_HIP,
        /// The pocket mouth at the outseam.
        MouthSide = "mouth_side" => key::POINT_MOUTH_SIDE,
        /// The pocket mouth at the waist.
        MouthWaist = "mouth_waist" => key::POINT_MOUTH_WAIST,
        /// The outseam at the waist.
        SideWaist = "side_waist" => key::POINT_SIDE_WAIST,
        /// The yoke seam at the centre back.
        YokeCentre = "yoke_centre" => key::POINT_YOKE_CENTRE,
        /// The yoke seam at the outseam.
        YokeSide = "yoke_side" => key::POINT_YOKE_SIDE,
        /// The inner top corner of the back pocket.
        PocketInner = "pocket_inner" => key::POINT_POCKET_INNER,
        /// Its outer top corner.
        PocketOuter = "pocket_outer" => key::POINT_POCKET_OUTER,
        /// The yoke seam straight above the inner top corner.
        PocketInnerOnYoke = "pocket_inner_on_yoke" => key::POINT_POCKET_INNER_ON_YOKE,
        /// The seat seam beside the inner top corner.
        PocketInnerOnSeat = "pocket_inner_on_seat" => key::POINT_POCKET_INNER_ON_SEAT,
        /// The yoke's lower edge at the centre back.
        SeamCentre = "seam_centre" => key::POINT_SEAM_CENTRE,
        /// The yoke's lower edge at the outseam.
        SeamSide = "seam_side" => key::POINT_SEAM_SIDE,
        /// The left end of the band.
        CentreFrontLeft = "centre_front_left" => key::POINT_CENTRE_FRONT_LEFT,
        /// The right end of the band, at the end of its overlap.
        EndRight = "end_right" => key::POINT_END_RIGHT,
        /// The left outseam on the band.
        SideLeft = "side_left" => key::POINT_SIDE_LEFT,
        /// The centre back on the band.
        CentreBack = "centre_back" => key::POINT_CENTRE_BACK,
        /// The right outseam on the band.
        SideRight = "side_right" => key::POINT_SIDE_RIGHT,
        /// The right centre front on the band.
        CentreFrontRight = "centre_front_right" => key::POINT_CENTRE_FRONT_RIGHT,
        /// The first belt loop from the left front.
        Loop1 = "loop_1" => key::POINT_LOOP_1,
        /// The second.
        Loop2 = "loop_2" => key::POINT_LOOP_2,
        /// The third.
        Loop3 = "loop_3" => key::POINT_LOOP_3,
        /// The fourth.
        Loop4 = "loop_4" => key::POINT_LOOP_4,
        /// The fifth.
        Loop5 = "loop_5" => key::POINT_LOOP_5,
        /// The sixth.
        Loop6 = "loop_6" => key::POINT_LOOP_6,
        /// The seventh.
        Loop7 = "loop_7" => key::POINT_LOOP_7,
        /// The eighth.
        Loop8 = "loop_8" => key::POINT_LOOP_8,
        /// The ninth.
        Loop9 = "loop_9" => key::POINT_LOOP_9,
        /// Where the left fold of the loop strip meets the end of a loop.
        FoldLeft = "fold_left" => key::POINT_FOLD_LEFT,
        /// Where the right one does.
        FoldRight = "fold_right" => key::POINT_FOLD_RIGHT,
        /// The lower end of a finished loop.
        LoopFoot = "loop_foot" => key::POINT_LOOP_FOOT,
        /// The upper end of a finished loop.
        LoopTop = "loop_top" => key::POINT_LOOP_TOP,
        /// The top of the fly edge.
        Top = "top" => key::POINT_TOP,
        /// The foot of the fly edge.
        Foot = "foot" => key::POINT_FOOT,
        /// Where the far edge of the fly facing begins to curve.
        Shoulder = "shoulder" => key::POINT_SHOULDER,
        /// The top of a fold.
        FoldTop = "fold_top" => key::POINT_FOLD_TOP,
        /// The foot of a fold.
        FoldFoot = "fold_foot" => key::POINT_FOLD_FOOT,
        /// The inner top corner of a back pocket.
        TopInner = "top_inner" => key::POINT_TOP_INNER,
        /// The middle of a pocket's top edge.
        TopMiddle = "top_middle" => key::POINT_TOP_MIDDLE,
        /// The outer top corner of a back pocket.
        TopOuter = "top_outer" => key::POINT_TOP_OUTER,
        /// The inner corner of a back pocket's foot.
        FootInner = "foot_inner" => key::POINT_FOOT_INNER,
        /// The point of a back pocket.
        Point = "point" => key::POINT_POINT,
        /// The outer corner of a back pocket's foot.
        FootOuter = "foot_outer" => key::POINT_FOOT_OUTER,
        /// The middle of a pocket's foot.
        FootMiddle = "foot_middle" => key::POINT_FOOT_MIDDLE,
    }
}

impl PointId {
    /// The places of the belt loops on the band, from the left front round to the right; a style has so many of them
    /// as it has loops.
    pub const LOOPS: [PointId; 9] = [
        PointId::Loop1,
        PointId::Loop2,
        PointId::Loop3,
        PointId::Loop4,
        PointId::Loop5,
        PointId::Loop6,
        PointId::Loop7,
        PointId::Loop8,
        PointId::Loop9,
    ];
}

words::identities! {
    /// A line inside a piece: a fold, or where another piece is set; unique within the piece.
    pub enum LineId {
        /// Where the fly is topstitched.
        FlyStitch = "fly_stitch" => key::LINE_FLY_STITCH,
        /// Where the concealed pocket is set.
        ExtraPocket = "extra_pocket" => key::LINE_EXTRA_POCKET,
        /// Where the left back pocket is set.
        PocketLeft = "pocket_left" => key::LINE_POCKET_LEFT,
        /// Where the right back pocket is set.
        PocketRight = "pocket_right" => key::LINE_POCKET_RIGHT,
        /// Where the coin pocket is set.
        CoinPocket = "coin_pocket" => key::LINE_COIN_POCKET,
        /// The fold of a band, a shield or a bag.
        Fold = "fold" => key::LINE_FOLD,
        /// The left fold of the loop strip.
        FoldLeft = "fold_left" => key::LINE_FOLD_LEFT,
        /// The right fold of the loop strip.
        FoldRight = "fold_right" => key::LINE_FOLD_RIGHT,
    }
}

words::identities! {
    /// What meets at a notch; the partner notch carries the same.
    pub enum NotchId {
        /// The knee on the inseam.
        InseamKnee = "inseam knee" => key::NOTCH_INSEAM_KNEE,
        /// The knee on the outseam.
        OutseamKnee = "outseam knee" => key::NOTCH_OUTSEAM_KNEE,
        /// The hip on the outseam.
        Hip = "hip" => key::NOTCH_HIP,
        /// The foot of the fly.
        FlyFoot = "fly foot" => key::NOTCH_FLY_FOOT,
        /// The middle of the yoke seam.
        YokeMiddle = "yoke middle" => key::NOTCH_YOKE_MIDDLE,
        /// The pocket mouth on the outseam.
        MouthAtOutseam = "mouth at outseam" => key::NOTCH_MOUTH_AT_OUTSEAM,
        /// The pocket mouth on the waist.
        MouthAtWaist = "mouth at waist" => key::NOTCH_MOUTH_AT_WAIST,
        /// The left outseam on the band.
        SideLeft = "side_left" => key::NOTCH_SIDE_LEFT,
        /// The centre back on the band.
        CentreBack = "centre_back" => key::NOTCH_CENTRE_BACK,
        /// The right outseam on the band.
        SideRight = "side_right" => key::NOTCH_SIDE_RIGHT,
        /// The right centre front on the band.
        CentreFrontRight = "centre_front_right" => key::NOTCH_CENTRE_FRONT_RIGHT,
        /// Where a hem is folded up; on cut pieces alone, for the fold lies in what is cut beyond the sewn line.
        HemFold = "hem fold" => key::NOTCH_HEM_FOLD,
    }
}
