//! The machine for a pass, and what is put on it.
//!
//! Machines are those of [`trade::seam::OPERATIONS`], narrowed to the one the stitch of the row needs.
//! Needles and gauges a machine takes are from memory.

use style::{Construction, MeasureId, Seam, SeamId};
use trade::{Confidence, Length, MachineId, StitchType, Unwashed};
use words::{Key, Said, key, say};

use super::operation::Attachment;
use super::pass_kinds::{Does, Holding};
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
    let usual = operation_of(seam).needles.1;
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
) -> MachineId {
    let holds = matches!(does, Does::Holds(_));
    let hem = facts(seam.id).machine == Some(OwnMachine::Hemmer);
    match family(stitch) {
        Family::Lockstitch if hem => MachineId::CylinderBedLockstitch,
        Family::Lockstitch if holds && in_tube => MachineId::CylinderArmLockstitch,
        Family::Lockstitch if needles > 1 => MachineId::TwoNeedleLockstitch,
        Family::Lockstitch => MachineId::Lockstitch,
        Family::Zigzag => MachineId::ZigzagLockstitch,
        Family::Chainstitch if hem => MachineId::CylinderBedChainstitch,
        Family::Chainstitch if does == Does::Holds(Holding::Fell) || (holds && in_tube) => {
            MachineId::FeedOffTheArm
        }
        Family::Chainstitch
            if does == Does::Holds(Holding::Set)
                && facts(seam.id).machine == Some(OwnMachine::Waistband) =>
        {
            MachineId::Waistband
        }
        Family::Chainstitch if needles > 1 => MachineId::TwoNeedleChainstitch,
        Family::Chainstitch => MachineId::FlatbedChainstitch,
        Family::Coverstitch => MachineId::Coverstitch,
        Family::Overedge => MachineId::Overedge,
        Family::Safety => MachineId::SafetyOveredge,
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
    let sewn = |measure| garment.sewn(measure).figure();
    let plain = allowances(seam, sewn(MeasureId::HemDepth)).over;
    // The table of operations names the folders of these.
    let table = operation_of(seam).confidence;
    let common = Confidence::CommonPractice;
    Some(match does {
        Does::Neatens => return None,
        Does::Joins if plain > Length::ZERO => edge_guide(plain),
        Does::Joins => return None,
        Does::Holds(holding) => match holding {
            Holding::Fell => {
                let width = Fell::of(seam).width;
                let lap = width.in_mm(1);
                put_on(say::AttachmentLapFolder { lap }, width, table)
            }
            Holding::Topstitch if seam.id == SeamId::Fly => traced(key::ATTACHMENT_FLY_TEMPLATE),
            Holding::Topstitch | Holding::Enclose => edge_guide(offset),
            Holding::Hem => hem(garment, seam),
            Holding::Set => set(garment, seam, (offset, needles)),
            Holding::Round => {
                // Stated from the band's edge, and reckoned from the seam line of the finished band.
                let from_edge = garment.pattern.spec[MeasureId::BandHeight] - offset;
                let at = from_edge.in_mm(1);
                put_on(say::AttachmentEdgeGuideBand { at }, from_edge, common)
            }
            Holding::Bind => Attachment {
                source: table,
                ..traced(key::ATTACHMENT_BINDING_FOLDER)
            },
            Holding::TurnIn => {
                let turned = plain.in_mm(1);
                put_on(say::AttachmentTurningInFolder { turned }, plain, common)
            }
            Holding::Strip => {
                let finished = sewn(MeasureId::LoopWidth);
                let width = finished.in_mm(1);
                put_on(say::AttachmentStripFolder { width }, finished, table)
            }
            Holding::Decorate => traced(key::ATTACHMENT_DECORATION_TEMPLATE),
        },
    })
}

/// Something that is set to a length.
fn put_on(what: impl Into<Said>, set_to: Length, source: Confidence) -> Attachment {
    Attachment {
        what: what.into(),
        set_to: Some(Unwashed::new(set_to)),
        source,
    }
}

/// Something that is set to nothing: a template, a folder made for one width.
fn traced(what: Key) -> Attachment {
    Attachment {
        what: what.into(),
        set_to: None,
        source: Confidence::CommonPractice,
    }
}

fn edge_guide(at: Length) -> Attachment {
    let said = say::AttachmentEdgeGuide { at: at.in_mm(1) };
    put_on(said, at, Confidence::CommonPractice)
}

fn hem(garment: &Garment, seam: &Seam) -> Attachment {
    let table = operation_of(seam).confidence;
    let sewn = garment.sewn(MeasureId::HemDepth).figure();
    let depth = match seam.construction {
        Construction::FoldedHem => {
            let at = sewn.in_mm(1);
            let said = say::AttachmentEdgeGuideFold { at };
            return put_on(said, sewn, Confidence::CommonPractice);
        }
        Construction::TurnedHem => turned_depth(seam),
        _ => sewn,
    };
    let said = say::AttachmentHemFolder {
        depth: depth.in_mm(1),
    };
    put_on(said, depth, table)
}

fn set(garment: &Garment, seam: &Seam, (offset, needles): (Length, usize)) -> Attachment {
    let common = Confidence::CommonPractice;
    match seam.construction {
        Construction::BandOverEdge => {
            let sewn = garment.sewn(MeasureId::BandHeight).figure();
            let height = sewn.in_mm(1);
            let table = operation_of(seam).confidence;
            put_on(say::AttachmentBandFolder { height }, sewn, table)
        }
        Construction::LaidOn => {
            let at = offset.in_mm(1);
            put_on(say::AttachmentPlaceTemplateGuide { at }, offset, common)
        }
        _ if needles > 1 => Attachment {
            source: Confidence::FromMemory,
            ..traced(key::ATTACHMENT_NEEDLE_BAR)
        },
        _ => edge_guide(offset),
    }
}
