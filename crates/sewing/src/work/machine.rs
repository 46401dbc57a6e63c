//! The machine for a pass, and what is put on it.
//!
//! Machines are called as in [`trade::seam::OPERATIONS`], narrowed to the one the stitch of the row
//! needs. Needles and gauges a machine takes are from memory.

use style::{Construction, MeasureId, Seam, SeamId};
use trade::{Confidence, Length, StitchType};
use words::{Said, key, say};

use super::operation::Attachment;
use super::passes::{Does, Holding};
use crate::allowance::{Fell, allowances, turned_depth};
use crate::construct::operation_of;
use crate::garment::Garment;
use crate::seam::{OwnMachine, facts};

/// Two needles stand no nearer than this: 1/8 inch (from memory).
pub(super) const LEAST_GAUGE: Length = Length::mm(3.1);

/// How a stitch is made, for the choice of a machine.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Family {
    Lockstitch,
    Zigzag,
    Chainstitch,
    Coverstitch,
    Overedge,
    Safety,
}

const fn family(stitch: StitchType) -> Family {
    use StitchType as S;
    match stitch {
        S::S301 => Family::Lockstitch,
        S::S304 => Family::Zigzag,
        S::S101 | S::S401 | S::S404 => Family::Chainstitch,
        S::S406 | S::S602 | S::S605 | S::S607 => Family::Coverstitch,
        S::S503 | S::S504 | S::S505 => Family::Overedge,
        S::S512 | S::S514 | S::S515 | S::S516 => Family::Safety,
    }
}

/// As many needles as the machine for this work has for rows of this stitch.
pub(super) fn most_needles(seam: &Seam, holding: Holding, stitch: StitchType) -> u8 {
    let usual = operation_of(seam).map_or(1, |operation| operation.needles.1);
    let machine = match family(stitch) {
        // Corners, and lines drawn freely, are sewn with one.
        _ if matches!(holding, Holding::Decorate | Holding::Round) => 1,
        Family::Lockstitch => 2,
        Family::Chainstitch if on_band(seam, holding) => 4,
        Family::Chainstitch => 3,
        Family::Coverstitch => return stitch.threads().needle,
        Family::Zigzag | Family::Overedge | Family::Safety => 1,
    };
    machine.min(usual)
}

/// The farthest two neighbouring needles stand apart (from memory: 1/2 inch, on a waistband machine
/// the height of a band, on a coverstitch machine 3/8 inch).
pub(super) fn widest_gauge(seam: &Seam, holding: Holding, stitch: StitchType) -> Length {
    match family(stitch) {
        Family::Chainstitch if on_band(seam, holding) => Length::mm(60.0),
        Family::Coverstitch => Length::inches(0.375),
        _ => Length::inches(0.5),
    }
}

fn on_band(seam: &Seam, holding: Holding) -> bool {
    seam.construction == Construction::BandOverEdge && holding == Holding::Set
}

/// The machine for rows of a stitch. `in_tube`: along a leg that is closed already.
pub(super) fn machine(
    seam: &Seam,
    does: Does,
    (stitch, needles): (StitchType, usize),
    in_tube: bool,
) -> &'static str {
    let holds = matches!(does, Does::Holds(_));
    let hem = facts(seam.id).machine == Some(OwnMachine::Hemmer);
    match family(stitch) {
        Family::Lockstitch if hem => "cylinder-bed lockstitch",
        Family::Lockstitch if holds && in_tube => "cylinder-arm lockstitch",
        Family::Lockstitch if needles > 1 => "two-needle lockstitch",
        Family::Lockstitch => "lockstitch",
        Family::Zigzag => "zigzag lockstitch",
        Family::Chainstitch if hem => "cylinder-bed chainstitch",
        Family::Chainstitch if does == Does::Holds(Holding::Fell) || (holds && in_tube) => {
            "feed-off-the-arm"
        }
        Family::Chainstitch
            if does == Does::Holds(Holding::Set)
                && facts(seam.id).machine == Some(OwnMachine::Waistband) =>
        {
            "waistband machine"
        }
        Family::Chainstitch if needles > 1 => "two-needle flatbed chainstitch",
        Family::Chainstitch => "flatbed chainstitch",
        Family::Coverstitch => "flatbed coverstitch",
        Family::Overedge => "overedge",
        Family::Safety => "safety overedge",
    }
}

/// What is put on the machine for a pass of `needles` rows, the nearest of them `offset` from the
/// seam line.
pub(super) fn attachment(
    garment: &Garment,
    seam: &Seam,
    does: Does,
    (offset, needles): (Length, usize),
) -> Option<Attachment> {
    let spec = &garment.pattern.spec;
    let plain = allowances(seam, spec[MeasureId::HemDepth]).over;
    // The table of operations names the folders of these.
    let table = operation_of(seam).map_or(Confidence::CommonPractice, |o| o.confidence);
    let common = Confidence::CommonPractice;
    let (what, source): (Said, Confidence) = match does {
        Does::Neatens => return None,
        Does::Joins if plain > Length::ZERO => (edge_guide(plain), common),
        Does::Joins => return None,
        Does::Holds(holding) => match holding {
            Holding::Fell => {
                let lap = Fell::of(seam).width.in_mm(1);
                (say::AttachmentLapFolder { lap }.into(), table)
            }
            Holding::Topstitch if seam.id == SeamId::Fly => {
                (key::ATTACHMENT_FLY_TEMPLATE.into(), common)
            }
            Holding::Topstitch | Holding::Enclose => (edge_guide(offset), common),
            Holding::Hem => hem(garment, seam)?,
            Holding::Set => set(garment, seam, (offset, needles)),
            Holding::Round => {
                let at = (spec[MeasureId::BandHeight] - offset).in_mm(1);
                (say::AttachmentEdgeGuideBand { at }.into(), common)
            }
            Holding::Bind => (key::ATTACHMENT_BINDING_FOLDER.into(), table),
            Holding::TurnIn => {
                let turned = plain.in_mm(1);
                (say::AttachmentTurningInFolder { turned }.into(), common)
            }
            Holding::Strip => {
                let width = spec[MeasureId::LoopWidth].in_mm(1);
                (say::AttachmentStripFolder { width }.into(), table)
            }
            Holding::Decorate => (key::ATTACHMENT_DECORATION_TEMPLATE.into(), common),
        },
    };
    Some(Attachment { what, source })
}

fn edge_guide(at: Length) -> Said {
    say::AttachmentEdgeGuide { at: at.in_mm(1) }.into()
}

fn hem(garment: &Garment, seam: &Seam) -> Option<(Said, Confidence)> {
    let table = operation_of(seam)?.confidence;
    let depth = match seam.construction {
        Construction::FoldedHem => {
            let at = garment.pattern.spec[MeasureId::HemDepth].in_mm(1);
            let what = say::AttachmentEdgeGuideFold { at };
            return Some((what.into(), Confidence::CommonPractice));
        }
        Construction::TurnedHem => turned_depth(seam),
        _ => garment.pattern.spec[MeasureId::HemDepth],
    };
    let depth = depth.in_mm(1);
    Some((say::AttachmentHemFolder { depth }.into(), table))
}

fn set(garment: &Garment, seam: &Seam, (offset, needles): (Length, usize)) -> (Said, Confidence) {
    let common = Confidence::CommonPractice;
    match seam.construction {
        Construction::BandOverEdge => {
            let height = garment.pattern.spec[MeasureId::BandHeight].in_mm(1);
            let table = operation_of(seam).map_or(common, |o| o.confidence);
            (say::AttachmentBandFolder { height }.into(), table)
        }
        Construction::LaidOn => {
            let at = offset.in_mm(1);
            (say::AttachmentPlaceTemplateGuide { at }.into(), common)
        }
        _ if needles > 1 => (key::ATTACHMENT_NEEDLE_BAR.into(), Confidence::FromMemory),
        _ => (edge_guide(offset), common),
    }
}
