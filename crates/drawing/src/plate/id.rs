//! The detail plates there are.

use words::key;

words::identities! {
    /// A detail plate, in the order of the pack.
    pub enum PlateId {
        /// The coin pocket on its facing.
        CoinPocket = "coin-pocket" => key::PLATE_COIN_POCKET,
        /// The mouth of the hip pocket.
        HipPocketMouth = "hip-pocket-mouth" => key::PLATE_HIP_POCKET_MOUTH,
        /// The bag of the hip pocket.
        PocketBag = "pocket-bag" => key::PLATE_POCKET_BAG,
        /// The concealed inner pocket.
        ExtraPocket = "extra-pocket" => key::PLATE_EXTRA_POCKET,
        /// The left back pocket.
        BackPocketLeft = "back-pocket-left" => key::PLATE_BACK_POCKET_LEFT,
        /// The right back pocket.
        BackPocketRight = "back-pocket-right" => key::PLATE_BACK_POCKET_RIGHT,
        /// Both back pockets from inside.
        BackPocketsInside = "back-pockets-inside" => key::PLATE_BACK_POCKETS_INSIDE,
        /// The upper corners of the pockets, with their rivets and tacks.
        PocketCorners = "pocket-corners" => key::PLATE_POCKET_CORNERS,
        /// Both ends of the waistband.
        WaistbandEnds = "waistband-ends" => key::PLATE_WAISTBAND_ENDS,
        /// The waistband from outside.
        WaistbandOutside = "waistband-outside" => key::PLATE_WAISTBAND_OUTSIDE,
        /// The waistband from inside.
        WaistbandInside = "waistband-inside" => key::PLATE_WAISTBAND_INSIDE,
        /// The fly.
        Fly = "fly" => key::PLATE_FLY,
        /// A belt loop.
        BeltLoop = "belt-loop" => key::PLATE_BELT_LOOP,
        /// The hem.
        Hem = "hem" => key::PLATE_HEM,
        /// The patch on the waistband.
        Patch = "patch" => key::PLATE_PATCH,
        /// The labels on the waistband.
        LabelsOnBand = "labels-on-band" => key::PLATE_LABELS_ON_BAND,
        /// The labels in a side seam.
        LabelsInSeam = "labels-in-seam" => key::PLATE_LABELS_IN_SEAM,
    }
}
