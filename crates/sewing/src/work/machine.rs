//! The machine for a pass, and what is put on it.
//!
//! Machines are called as in [`trade::seam::OPERATIONS`], narrowed to the one the stitch of the row
//! needs. Needles and gauges a machine takes are from memory.

use style::{Construction, MeasureId, Seam, SeamId};
use trade::{Confidence, Length, StitchType};

use super::operation::Attachment;
use super::passes::{Does, Holding};
use crate::allowance::{Fell, allowances, turned_depth};
use crate::construct::operation_of;
use crate::context::mm;
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
    let (what, source) = match does {
        Does::Neatens => return None,
        Does::Joins if plain > Length::ZERO => (format!("edge guide, {}", mm(plain)), common),
        Does::Joins => return None,
        Does::Holds(holding) => match holding {
            Holding::Fell => {
                let lap = Fell::of(seam).width;
                (format!("lap folder for a lap of {}", mm(lap)), table)
            }
            Holding::Topstitch if seam.id == SeamId::Fly => {
                ("template of the fly's curve".to_owned(), common)
            }
            Holding::Topstitch | Holding::Enclose => {
                (format!("edge guide, {}", mm(offset)), common)
            }
            Holding::Hem => hem(garment, seam)?,
            Holding::Set => set(garment, seam, (offset, needles)),
            Holding::Round => (
                format!(
                    "edge guide, {} from the band's edges",
                    mm(spec[MeasureId::BandHeight] - offset)
                ),
                common,
            ),
            Holding::Bind => ("binding folder".to_owned(), table),
            Holding::TurnIn => (format!("turning-in folder, {}", mm(plain)), common),
            Holding::Strip => (
                format!("strip folder, {} finished", mm(spec[MeasureId::LoopWidth])),
                table,
            ),
            Holding::Decorate => (
                "template with the lines cut out, to trace".to_owned(),
                common,
            ),
        },
    };
    Some(Attachment { what, source })
}

fn hem(garment: &Garment, seam: &Seam) -> Option<(String, Confidence)> {
    let table = operation_of(seam)?.confidence;
    let depth = match seam.construction {
        Construction::FoldedHem => {
            let at = garment.pattern.spec[MeasureId::HemDepth];
            let what = format!("edge guide, {} from the fold", mm(at));
            return Some((what, Confidence::CommonPractice));
        }
        Construction::TurnedHem => turned_depth(seam),
        _ => garment.pattern.spec[MeasureId::HemDepth],
    };
    Some((format!("hem folder turning {} twice", mm(depth)), table))
}

fn set(garment: &Garment, seam: &Seam, (offset, needles): (Length, usize)) -> (String, Confidence) {
    let common = Confidence::CommonPractice;
    match seam.construction {
        Construction::BandOverEdge => {
            let height = garment.pattern.spec[MeasureId::BandHeight];
            let table = operation_of(seam).map_or(common, |o| o.confidence);
            (
                format!(
                    "band folder for a band of {}, puller behind the foot",
                    mm(height)
                ),
                table,
            )
        }
        Construction::LaidOn => (
            format!("template for the place, edge guide {}", mm(offset)),
            common,
        ),
        _ if needles > 1 => (
            "needle bar that stops one needle at the corners".to_owned(),
            Confidence::FromMemory,
        ),
        _ => (format!("edge guide, {}", mm(offset)), common),
    }
}
