//! What the sewing order tells of each seam besides what it tells of any: one row a seam.
//!
//! Common practice. What depends on the style beyond a figure is said in [`super::order_words`].

use style::{Closing, PatchThrough, SeamId};
use words::{Figure, Key, Said, key, say};

use super::pass_kinds::{Does, Holding};
use crate::garment::Garment;
use crate::rows::is_stitched_flat;

/// What the sewing order tells of one seam.
pub(super) struct Told {
    /// What is done to it, where that is said otherwise than of any seam.
    pub phrases: &'static [(Does, Key)],
    /// What has to meet or be caught when it is first sewn.
    pub meets: &'static [Key],
    /// How its plies lie when they are joined; the figure is what lies beyond the joining row.
    pub joined: fn(Figure) -> Said,
    /// What to mind when it is sewn along from outside; `None` where its lie says all.
    pub topstitched: Option<fn(&Garment) -> Key>,
    /// What to mind when a piece is set on.
    pub set: &'static [Key],
    /// Which way the work lies under the machine; `None` where the pieces are small or lie flat.
    pub reach: Option<Reach>,
}

/// Which way a leg lies under the machine.
pub(super) struct Reach {
    /// While it is open on its other side.
    pub open: Key,
    /// When it is a tube.
    pub tube: Key,
}

fn each_ply(plain: Figure) -> Said {
    say::MindJoin { plain }.into()
}

/// A seam of which there is nothing to tell besides.
const PLAIN: Told = Told {
    phrases: &[],
    meets: &[],
    joined: each_ply,
    topstitched: None,
    set: &[],
    reach: None,
};

const SET: Does = Does::Holds(Holding::Set);
const TOPSTITCH: Does = Does::Holds(Holding::Topstitch);

/// What to mind when a piece is set on, in this style.
pub(super) fn set_on(garment: &Garment, seam: SeamId) -> &'static [Key] {
    let patch = garment.doc.patch.as_ref();
    match patch.map(|patch| patch.through) {
        Some(PatchThrough::OuterPly) if seam == SeamId::PatchSet => &[key::MIND_SET_PATCH_OUTER],
        Some(PatchThrough::OuterPly | PatchThrough::WholeBand) | None => told(seam).set,
    }
}

/// What the sewing order tells of a seam.
pub(super) fn told(seam: SeamId) -> Told {
    match seam {
        SeamId::Outseam => Told {
            meets: &[key::MIND_MEETS_OUTSEAM],
            reach: Some(Reach {
                open: key::MIND_REACH_OUTSEAM_OPEN,
                tube: key::MIND_REACH_OUTSEAM_TUBE,
            }),
            ..PLAIN
        },
        SeamId::Inseam => Told {
            meets: &[key::MIND_MEETS_INSEAM],
            joined: |plain| say::MindJoinInseam { plain }.into(),
            reach: Some(Reach {
                open: key::MIND_REACH_INSEAM_OPEN,
                tube: key::MIND_REACH_INSEAM_TUBE,
            }),
            ..PLAIN
        },
        SeamId::Seat => Told {
            meets: &[key::MIND_MEETS_SEAT],
            ..PLAIN
        },
        SeamId::FrontRise => Told {
            joined: |plain| say::MindJoinFrontRise { plain }.into(),
            ..PLAIN
        },
        SeamId::Band => Told {
            phrases: &[
                (Does::Joins, key::SEAM_WORK_JOIN_BAND),
                (TOPSTITCH, key::SEAM_WORK_TOPSTITCH_BAND),
                (SET, key::SEAM_WORK_SET_BAND),
            ],
            joined: |plain| say::MindJoinBand { plain }.into(),
            topstitched: Some(|_| key::MIND_TOPSTITCH_BAND),
            set: &[key::MIND_SET_BAND],
            ..PLAIN
        },
        SeamId::BandJoin => Told {
            phrases: &[(Does::Joins, key::SEAM_WORK_JOIN_BAND_JOIN)],
            meets: &[key::MIND_MEETS_BAND_JOIN],
            ..PLAIN
        },
        SeamId::Hem => Told {
            phrases: &[(Does::Holds(Holding::Hem), key::SEAM_WORK_HEM_HEM)],
            ..PLAIN
        },
        SeamId::Mouth => Told {
            phrases: &[(Does::Joins, key::SEAM_WORK_JOIN_MOUTH)],
            joined: |plain| say::MindJoinMouth { plain }.into(),
            topstitched: Some(|_| key::MIND_TOPSTITCH_MOUTH),
            ..PLAIN
        },
        SeamId::Fly => Told {
            phrases: &[(Does::Joins, key::SEAM_WORK_JOIN_FLY)],
            joined: |plain| say::MindJoinFly { plain }.into(),
            topstitched: Some(|garment| {
                let flat = is_stitched_flat(&garment.doc, &garment.seams);
                match (garment.doc.fly.closing, flat) {
                    (Closing::Buttons, true) => key::MIND_TOPSTITCH_FLY_FLAT,
                    (Closing::Zip, true) => key::MIND_TOPSTITCH_FLY_FLAT_ZIP,
                    (Closing::Buttons, false) => key::MIND_TOPSTITCH_FLY_BUTTONS,
                    (Closing::Zip, false) => key::MIND_TOPSTITCH_FLY_ZIP,
                }
            }),
            ..PLAIN
        },
        SeamId::FlyEdge => Told {
            phrases: &[
                (Does::Neatens, key::SEAM_WORK_NEATEN_FLY_EDGE),
                (TOPSTITCH, key::SEAM_WORK_TOPSTITCH_FLY_EDGE),
            ],
            ..PLAIN
        },
        SeamId::CoinSet => Told {
            phrases: &[(SET, key::SEAM_WORK_SET_COIN_SET)],
            set: &[key::MIND_SET_COIN],
            ..PLAIN
        },
        SeamId::BackPocketSet => Told {
            phrases: &[(SET, key::SEAM_WORK_SET_BACK_POCKET_SET)],
            set: &[key::MIND_SET_BACK_POCKET],
            ..PLAIN
        },
        SeamId::FacingSet => Told {
            phrases: &[(SET, key::SEAM_WORK_SET_FACING_SET)],
            set: &[key::MIND_SET_FACING],
            ..PLAIN
        },
        SeamId::BagClose => Told {
            phrases: &[(Does::Joins, key::SEAM_WORK_JOIN_BAG_CLOSE)],
            joined: |plain| say::MindJoinBagClose { plain }.into(),
            ..PLAIN
        },
        SeamId::ExtraSet => Told {
            phrases: &[(SET, key::SEAM_WORK_SET_EXTRA_SET)],
            set: &[key::MIND_SET_EXTRA, key::MIND_SET_EXTRA_OPEN],
            ..PLAIN
        },
        SeamId::PatchSet => Told {
            set: &[key::MIND_SET_PATCH],
            ..PLAIN
        },
        SeamId::LabelSet => Told {
            set: &[key::MIND_SET_LABEL],
            ..PLAIN
        },
        SeamId::Yoke
        | SeamId::CoinHem
        | SeamId::BackPocketHem
        | SeamId::ExtraHem
        | SeamId::LoopEdge
        | SeamId::Decoration => PLAIN,
    }
}
