//! The yarn of an order: pairs of several sizes or styles, waste, cones.

use trade::consumption::{USUAL_WASTE, cones, with_waste};
use trade::{Length, Share};

use super::{Used, consumption};
use crate::garment::Garment;

/// The yarn of an order.
#[derive(Clone, Debug, PartialEq)]
pub struct Order {
    /// Pairs in all.
    pub pairs: u64,
    /// What is added for waste.
    pub waste: Share,
    /// Yarn by yarn, in the order in which they are first used.
    pub yarns: Vec<YarnNeed>,
}

/// How much of one yarn an order needs.
#[derive(Clone, Debug, PartialEq)]
pub struct YarnNeed {
    /// Key in `yarns.toml`.
    pub yarn: String,
    /// What is sewn in.
    pub net: Used,
    /// Needle and under together, with waste.
    pub with_waste: Length,
    /// What one cone holds; none where the collection does not say.
    pub per_cone: Option<Length>,
    /// Whole cones; none where a cone's length is not known.
    pub cones: Option<u64>,
}

/// The yarn of so many pairs of each garment, with the usual waste.
///
/// Each machine needs a cone of its own on every thread stand, so a small order takes more cones
/// than its metres ask for.
pub fn order(lines: &[(&Garment, u32)]) -> Order {
    order_with(lines, USUAL_WASTE)
}

/// The yarn of so many pairs of each garment, with this share for waste; one below zero or not a
/// number counts as none.
pub fn order_with(lines: &[(&Garment, u32)], waste: Share) -> Order {
    let waste = if waste.is_finite() {
        waste.max(Share::ZERO)
    } else {
        Share::ZERO
    };
    let mut yarns: Vec<YarnNeed> = Vec::new();
    for (garment, pairs) in lines {
        let pairs = f64::from(*pairs);
        for (key, used) in consumption(garment).by_yarn() {
            let used = Used {
                needle: used.needle * pairs,
                under: used.under * pairs,
            };
            let per_cone = garment.collection.yarns.get(key).and_then(|y| y.put_up);
            match yarns.iter_mut().find(|y| y.yarn == key) {
                Some(need) => {
                    need.net = need.net + used;
                    need.per_cone = need.per_cone.or(per_cone);
                }
                None => yarns.push(YarnNeed {
                    yarn: key.to_owned(),
                    net: used,
                    with_waste: Length::ZERO,
                    per_cone,
                    cones: None,
                }),
            }
        }
    }
    for need in &mut yarns {
        need.with_waste = with_waste(need.net.total(), waste);
        need.cones = need.per_cone.and_then(|cone| cones(need.with_waste, cone));
    }
    Order {
        pairs: lines.iter().map(|(_, pairs)| u64::from(*pairs)).sum(),
        waste,
        yarns,
    }
}

impl Order {
    /// All yarns with waste.
    pub fn total(&self) -> Length {
        self.yarns.iter().map(|y| y.with_waste).sum()
    }
}
