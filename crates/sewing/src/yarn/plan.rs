//! All sewing by the colour, the size and the density of its yarn.

use style::Size;
use trade::{Colour, Length, StitchDensity, StitchType, Unwashed, Washed, YarnSize};
use words::{Given, Said, say};

use super::ground::{Ground, of_item};
use super::{Item, Sewn, consumption};
use crate::context::Context;
use crate::garment::Origin;
use crate::garment::{Garment, RowYarn};

/// Where a yarn is in the stitch.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Role {
    /// On the needle: seen on the face the needle enters.
    Needle,
    /// Below: looper, bobbin, cover.
    Under,
}

impl Role {
    /// "needle" or "under".
    pub const fn word(self) -> &'static str {
        match self {
            Self::Needle => "needle",
            Self::Under => "under",
        }
    }
}

/// All sewing of one size, sorted.
#[derive(Clone, Debug, PartialEq)]
pub struct YarnPlan {
    /// The size.
    pub size: Size,
    /// The groups: needle before under, heavier before finer, then by colour and density, tacks
    /// last.
    pub groups: Vec<Group>,
}

/// Sewing of one colour, size and density, in one role.
#[derive(Clone, Debug, PartialEq)]
pub struct Group {
    /// Needle or under.
    pub role: Role,
    /// Colour of the yarn.
    pub colour: Colour,
    /// The colour in words; the hexadecimal where the collection does not say.
    pub colour_name: String,
    /// Its size; none for a yarn that is not in the collection.
    pub size: Option<YarnSize>,
    /// Its thickness.
    pub diameter: Length,
    /// Stitches per length on the finished pair; none for bartacks and buttonholes.
    pub density: Option<Washed<StitchDensity>>,
    /// Keys of the yarns that look like this, in the order of first use.
    pub yarns: Vec<String>,
    /// What is sewn with it, in the order of the garment.
    pub rows: Vec<GroupRow>,
    /// Yarn in a pair, without waste.
    pub yarn: Length,
    /// The faces it lies on, most sewing first.
    pub grounds: Vec<Ground>,
}

/// A row, or fixings of one kind, within a group.
#[derive(Clone, Debug, PartialEq)]
pub struct GroupRow {
    /// The seam; for a fixing the seam or trim it belongs to.
    pub seam: Origin,
    /// What that is called.
    pub called: Given,
    /// Row or fixing.
    pub sewn: Sewn,
    /// Stitch type.
    pub stitch: StitchType,
    /// Length sewn in a pair, before its wash.
    pub length: Unwashed<Length>,
    /// Yarn in a pair, without waste.
    pub yarn: Length,
    /// Whether it is seen on the face its yarn lies on.
    pub seen: bool,
}

impl GroupRow {
    /// "inseam 1", "fly bartacks".
    pub fn said(&self) -> Said {
        self.said_with(&self.number().unwrap_or_default())
    }

    /// The same with the numbers of several rows of its seam: "inseam 1+2".
    pub fn said_with(&self, numbers: &str) -> Said {
        let of = self.called.clone();
        match self.sewn {
            Sewn::Row(_) => say::PlanOfYarnsRow { numbers, seam: of }.into(),
            Sewn::Bartack(_) => say::PlanOfYarnsBartacksOf { of }.into(),
            Sewn::Buttonhole => say::PlanOfYarnsButtonholesOf { of }.into(),
        }
    }

    /// The number of a row within its seam; `None` for what is no row.
    pub fn number(&self) -> Option<String> {
        match self.sewn {
            Sewn::Row(number) => Some(number.to_string()),
            Sewn::Bartack(_) | Sewn::Buttonhole => None,
        }
    }
}

/// Sorts the sewing of a garment by colour, size and density.
pub fn plan(garment: &Garment) -> YarnPlan {
    let mut groups: Vec<Group> = Vec::new();
    for item in &consumption(garment).items {
        for role in [Role::Needle, Role::Under] {
            put(garment, &mut groups, item, role);
        }
    }
    for group in &mut groups {
        group
            .grounds
            .sort_by(|a, b| b.sewn.figure().total_cmp(&a.sewn.figure()));
    }
    let tex = |g: &Group| g.size.unwrap_or_default();
    let density = |g: &Group| {
        let per_cm = |density: Washed<StitchDensity>| density.figure().to_per_cm();
        g.density.map_or(f64::INFINITY, per_cm)
    };
    groups.sort_by(|a, b| {
        a.role
            .cmp(&b.role)
            .then_with(|| tex(b).total_cmp(&tex(a)))
            .then_with(|| a.colour.cmp(&b.colour))
            .then_with(|| density(a).total_cmp(&density(b)))
    });
    YarnPlan {
        size: garment.size,
        groups,
    }
}

fn put(garment: &Garment, groups: &mut Vec<Group>, item: &Item, role: Role) {
    let yarn = yarn_of(garment, item, role);
    let known = garment.collection.yarns.get(&yarn.key);
    let size = known.map(|y| y.size);
    let alike = |g: &Group| {
        g.role == role && g.colour == yarn.colour && g.size == size && g.density == item.density
    };
    let place = groups.iter().position(alike).unwrap_or_else(|| {
        groups.push(Group {
            role,
            colour: yarn.colour,
            colour_name: known
                .map(|y| y.colour_name.clone())
                .filter(|name| !name.is_empty())
                .unwrap_or_else(|| yarn.colour.to_string()),
            size,
            diameter: yarn.diameter,
            density: item.density,
            yarns: Vec::new(),
            rows: Vec::new(),
            yarn: Length::ZERO,
            grounds: Vec::new(),
        });
        groups.len() - 1
    });
    let group = &mut groups[place];
    if !group.yarns.contains(&yarn.key) {
        group.yarns.push(yarn.key);
    }
    let used = match role {
        Role::Needle => item.used.needle,
        Role::Under => item.used.under,
    };
    group.yarn += used;
    let seen = item
        .row
        .and_then(|index| garment.rows.get(index))
        .is_none_or(|row| match role {
            Role::Needle => row.shows_outside,
            Role::Under => row.shows_inside,
        });
    let same = |r: &&mut GroupRow| r.seam == item.seam && r.sewn == item.sewn;
    match group.rows.iter_mut().find(same) {
        Some(row) => {
            row.length = row.length + item.sewn_length();
            row.yarn += used;
            row.seen |= seen;
        }
        None => group.rows.push(GroupRow {
            seam: item.seam.clone(),
            called: item.seam.called(&garment.collection),
            sewn: item.sewn,
            stitch: item.stitch,
            length: item.sewn_length(),
            yarn: used,
            seen,
        }),
    }
    let ground = of_item(garment, item, role, yarn.colour);
    let face = |g: &&mut Ground| g.cloth == ground.cloth && g.reverse == ground.reverse;
    match group.grounds.iter_mut().find(face) {
        Some(known) => known.sewn = known.sewn + ground.sewn,
        None => group.grounds.push(ground),
    }
}

/// The yarn as a row shows it; for tacks and buttonholes as a row of it would.
fn yarn_of(garment: &Garment, item: &Item, role: Role) -> RowYarn {
    if let Some(row) = item.row.and_then(|index| garment.rows.get(index)) {
        return match role {
            Role::Needle => row.needle.clone(),
            Role::Under => row.under.clone(),
        };
    }
    let key = match role {
        Role::Needle => &item.needle_yarn,
        Role::Under => &item.under_yarn,
    };
    let context = Context {
        doc: &garment.doc,
        collection: &garment.collection,
        size: garment.size,
        pattern: &garment.pattern,
        seams: &garment.seams,
    };
    context.yarn(key)
}
