//! The machines and tables of a workroom.

use words::key;

words::identities! {
    /// A machine, press or table at which one operation is done, as an order of operations names it. Common practice.
    pub enum MachineId {
        /// Flatbed lockstitch with one needle.
        Lockstitch = "lockstitch" => key::MACHINE_LOCKSTITCH,
        /// Flatbed lockstitch with two needles.
        TwoNeedleLockstitch = "two-needle-lockstitch" => key::MACHINE_TWO_NEEDLE_LOCKSTITCH,
        /// Lockstitch on a cylinder bed, for the foot of a leg.
        CylinderBedLockstitch = "cylinder-bed-lockstitch" => key::MACHINE_CYLINDER_BED_LOCKSTITCH,
        /// Lockstitch on a long arm, along the inside of a tube.
        CylinderArmLockstitch = "cylinder-arm-lockstitch" => key::MACHINE_CYLINDER_ARM_LOCKSTITCH,
        /// Lockstitch that swings its needle.
        ZigzagLockstitch = "zigzag-lockstitch" => key::MACHINE_ZIGZAG_LOCKSTITCH,
        /// Flatbed chainstitch with one needle.
        FlatbedChainstitch = "flatbed-chainstitch" => key::MACHINE_FLATBED_CHAINSTITCH,
        /// Flatbed chainstitch with two needles or more.
        TwoNeedleChainstitch = "two-needle-chainstitch" => key::MACHINE_TWO_NEEDLE_CHAINSTITCH,
        /// Chainstitch on a cylinder bed, for the foot of a leg.
        CylinderBedChainstitch = "cylinder-bed-chainstitch" => key::MACHINE_CYLINDER_BED_CHAINSTITCH,
        /// Chainstitch rows along a tube, fed off the end of the arm.
        FeedOffTheArm = "feed-off-the-arm" => key::MACHINE_FEED_OFF_THE_ARM,
        /// Chainstitch rows as far apart as a band is high, behind a band folder.
        Waistband = "waistband" => key::MACHINE_WAISTBAND,
        /// Flatbed coverstitch.
        Coverstitch = "coverstitch" => key::MACHINE_COVERSTITCH,
        /// Overedge.
        Overedge = "overedge" => key::MACHINE_OVEREDGE,
        /// Overedge with a chain row beside it.
        SafetyOveredge = "safety-overedge" => key::MACHINE_SAFETY_OVEREDGE,
        /// Bartacks.
        Bartacker = "bartacker" => key::MACHINE_BARTACKER,
        /// Buttonholes with an eye.
        EyeletButtonhole = "eyelet-buttonhole" => key::MACHINE_EYELET_BUTTONHOLE,
        /// Sets rivets.
        RivetPress = "rivet-press" => key::MACHINE_RIVET_PRESS,
        /// Sets buttons.
        ButtonPress = "button-press" => key::MACHINE_BUTTON_PRESS,
        /// An iron and its table.
        Iron = "iron" => key::MACHINE_IRON,
        /// Washes pairs where they are sewn.
        WashingMachine = "washing-machine" => key::MACHINE_WASHING_MACHINE,
        /// A laundry, which has machines of its own.
        Laundry = "laundry" => key::MACHINE_LAUNDRY,
        /// A table; nothing but hands and shears.
        ByHand = "by-hand" => key::MACHINE_BY_HAND,
    }
}
