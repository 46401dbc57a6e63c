//! What the sewing order tells of each seam besides what it tells of any: one row a seam.
//!
//! Common practice. What depends on the style beyond a figure is said in [`super::mind`].

use draft::EaseOf;
use style::{Closing, SeamId};

use super::passes::{Does, Holding};
use crate::garment::Garment;

/// What the sewing order tells of one seam.
pub(super) struct Told {
    /// What is done to it, where that is said otherwise than of any seam.
    pub phrases: &'static [(Does, &'static str)],
    /// What has to meet or be caught when it is first sewn.
    pub meets: &'static [&'static str],
    /// What is eased or stretched while it is sewn.
    pub ease: EaseOf,
    /// How its plies lie when they are joined; the figure is what lies beyond the joining row.
    pub joined: fn(&str) -> String,
    /// What to mind when it is sewn along from outside; `None` where its lie says all.
    pub topstitched: Option<fn(&Garment) -> &'static str>,
    /// What to mind when a piece is set on.
    pub set: &'static [&'static str],
    /// Which way the work lies under the machine; `None` where the pieces are small or lie flat.
    pub reach: Option<Reach>,
}

/// Which way a leg lies under the machine.
pub(super) struct Reach {
    /// While it is open on its other side.
    pub open: &'static str,
    /// When it is a tube.
    pub tube: &'static str,
}

fn each_ply(plain: &str) -> String {
    format!("right sides together, {plain} on each ply")
}

/// A seam of which there is nothing to tell besides.
const PLAIN: Told = Told {
    phrases: &[],
    meets: &[],
    ease: EaseOf::None,
    joined: each_ply,
    topstitched: None,
    set: &[],
    reach: None,
};

const SET: Does = Does::Holds(Holding::Set);
const TOPSTITCH: Does = Does::Holds(Holding::Topstitch);

/// What the sewing order tells of a seam.
pub(super) fn told(seam: SeamId) -> Told {
    match seam {
        SeamId::Outseam => Told {
            meets: &["catch facing and bag at the top; the yoke seam keeps its height"],
            reach: Some(Reach {
                open: "the legs are open at the inseams and lie flat",
                tube: "the legs are tubes now: over the arm of the machine, from the hem",
            }),
            ..PLAIN
        },
        SeamId::Inseam => Told {
            meets: &["front rise and seat seam meet at the crotch"],
            ease: EaseOf::InseamStretch,
            joined: |plain| {
                format!(
                    "{}, from hem to hem over the crossing at the crotch",
                    each_ply(plain)
                )
            },
            reach: Some(Reach {
                open: "from hem to hem over the crossing at the crotch; the legs are open at the outseams and lie flat",
                tube: "from hem to hem over the crossing at the crotch; the legs are tubes now, over the arm of the machine",
            }),
            ..PLAIN
        },
        SeamId::Seat => Told {
            meets: &["the yoke seams meet at centre back"],
            ..PLAIN
        },
        SeamId::FrontRise => Told {
            joined: |plain| {
                format!(
                    "{}, from the foot of the fly to the crotch",
                    each_ply(plain)
                )
            },
            ..PLAIN
        },
        SeamId::Band => Told {
            phrases: &[
                (Does::Joins, "join to the body"),
                (TOPSTITCH, "sew down from outside"),
                (SET, "set on the body"),
            ],
            ease: EaseOf::Band,
            joined: |plain| {
                format!(
                    "right side of the band on the right side of the body, {plain} from the edges; match centre back, sides and fronts"
                )
            },
            topstitched: Some(
                |_| "inner edge turned in just past the joining row, so that this row catches it",
            ),
            set: &["match centre back, sides and fronts; ends of equal height"],
            ..PLAIN
        },
        SeamId::Hem => Told {
            phrases: &[(Does::Holds(Holding::Hem), "sew")],
            ..PLAIN
        },
        SeamId::Mouth => Told {
            phrases: &[(Does::Joins, "join the bags to the fronts")],
            joined: |plain| {
                format!(
                    "right side of the front on the bag's upper layer, {plain} from the edge; clip the curve"
                )
            },
            topstitched: Some(
                |_| "through front and upper layer of the bag only; fold the under layer away",
            ),
            ..PLAIN
        },
        SeamId::Fly => Told {
            phrases: &[(Does::Joins, "join the facing to the left front")],
            joined: |plain| {
                format!(
                    "right sides together, {plain} from the edge, from the band edge to the foot of the fly"
                )
            },
            topstitched: Some(|garment| match garment.doc.fly.closing {
                Closing::Buttons => {
                    "from the band edge down; fold the shield out of the way, catch the facing all along"
                }
                Closing::Zip => {
                    "from the band edge down; fold shield and zip out of the way, catch the facing all along"
                }
            }),
            ..PLAIN
        },
        SeamId::FlyEdge => Told {
            phrases: &[
                (Does::Neatens, "overedge the curved edge"),
                (TOPSTITCH, "sew along the curved edge"),
            ],
            ..PLAIN
        },
        SeamId::CoinSet => Told {
            phrases: &[(SET, "set on its facing")],
            set: &["on the placement line of the facing; the top edge stays open"],
            ..PLAIN
        },
        SeamId::BackPocketSet => Told {
            phrases: &[(SET, "set on the backs")],
            set: &[
                "on the placement lines of the backs; the top edge stays open",
                "the setting rows catch the sides of the lining",
            ],
            ..PLAIN
        },
        SeamId::FacingSet => Told {
            phrases: &[(SET, "set on the bags")],
            set: &["right side up on the under layer of the bag, outer edges level"],
            ..PLAIN
        },
        SeamId::BagClose => Told {
            phrases: &[(Does::Joins, "close")],
            joined: |plain| {
                format!("right sides together, {plain} on each layer, from the fold to the outseam")
            },
            ..PLAIN
        },
        SeamId::ExtraSet => Told {
            phrases: &[(SET, "set on the bag")],
            set: &[
                "on the side of the bag that lies towards the body, through the one layer",
                "the top edge stays open, level with the lower edge of the band",
            ],
            ..PLAIN
        },
        SeamId::PatchSet => Told {
            set: &["all round, through the whole band"],
            ..PLAIN
        },
        SeamId::LabelSet => Told {
            set: &["through the inner ply of the band alone: nothing shows outside"],
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
