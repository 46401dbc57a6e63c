//! What a construction list says of a seam.

use draft::ClothUse;
use style::{Construction, Seam, SeamId};
use trade::Length;
use words::{Given, Key, Said, say};

use crate::construct::{class_of, operation_of};
use crate::garment::Garment;
use crate::seam::facts;
use crate::seam_words::{ends_of, lies, widths};
use crate::work::{gauge_of, machines_of};
use crate::yarn::thickest;

/// What a construction list says about a seam besides its rows.
#[derive(Clone, Debug, PartialEq)]
pub struct Described {
    /// Which.
    pub seam: SeamId,
    /// "front and back, crotch to hem".
    pub joins: Key,
    /// How its plies lie.
    pub construction: Construction,
    /// "ISO 4916 2.04.06 · ASTM D6193 LSc-2"; none where there is no class for it.
    pub class: Option<Said>,
    /// "feed-off-the-arm": the machines its rows ask for, as the sewing order has them; of a seam without rows the
    /// usual one.
    pub machine: Said,
    /// "4 plies (2 of shell, 2 of pocketing), 2.5 mm": what its thickest row goes through, away from crossings; the
    /// thickness is the sum of the cloths, not pressed, and is left out where no cloth is known.
    pub plies: Said,
    /// "front 8.1 mm, back 17.7 mm"; none where no cloth lies beyond the line.
    pub allowances: Option<Said>,
    /// "front over back; both edges turned into each other".
    pub lies: Said,
    /// How the needles stand that sew each row: "two needles, 6.4 mm", "single needle"; none for a
    /// row without a place.
    pub gauges: Vec<Option<Said>>,
    /// How each row begins and ends: "both ends: threads tucked into the fold"; none for a row
    /// without a place.
    pub ends: Vec<Option<Said>>,
}

/// Describes a seam of a sewn size.
pub fn describe(garment: &Garment, seam: &Seam) -> Described {
    Described {
        seam: seam.id,
        joins: facts(seam.id).joins,
        construction: seam.construction,
        class: class_of(seam).map(|class| {
            let (astm, iso) = (class.astm(), class.iso);
            say::SeamClass { astm, iso }.into()
        }),
        machine: machine(garment, seam),
        plies: plies(garment, seam),
        allowances: widths(garment, seam),
        lies: lies(garment, seam),
        gauges: (1..=seam.rows.len())
            .map(|number| gauge_of(garment, seam, number))
            .collect(),
        ends: (1..=seam.rows.len())
            .map(|number| ends_of(garment, seam.id, number))
            .collect(),
    }
}

/// What the row with the most below it goes through, each ply at its own cloth's thickness, as the yarn is reckoned.
fn plies(garment: &Garment, seam: &Seam) -> Said {
    let through = thickest(garment, seam);
    let plies = u64::from(through.count());
    let thickness = through.thickness.in_mm(1);
    match (&through.layers[..], seam.id) {
        _ if through.thickness <= Length::ZERO => say::SeamPlies { plies }.into(),
        (_, SeamId::PatchSet) if patch_is_counted(garment) => {
            say::SeamPliesAndPatch { plies, thickness }.into()
        }
        ([] | [_], _) => say::SeamPliesThick { plies, thickness }.into(),
        (several, _) => {
            let of = |(n, cloth): &(u8, ClothUse)| {
                let (plies, cloth) = (u64::from(*n), cloth.key());
                Given::from(Said::from(say::SeamPliesOfCloth { cloth, plies }))
            };
            let cloths = Given::List(several.iter().map(of).collect());
            say::SeamPliesMixed {
                cloths,
                plies,
                thickness,
            }
            .into()
        }
    }
}

fn machine(garment: &Garment, seam: &Seam) -> Said {
    let machines = machines_of(garment, seam).into_iter();
    let said = machines.map(|machine| Said::from(machine.key()));
    said.reduce(|first, next| say::SeamMachines { first, next }.into())
        .unwrap_or_else(|| operation_of(seam).machine.into())
}

/// Whether the patch states how thick it is.
fn patch_is_counted(garment: &Garment) -> bool {
    let patch = garment.doc.patch.as_ref();
    let trim = patch.and_then(|patch| garment.collection.trims.get(&patch.trim));
    trim.is_some_and(|trim| trim.thickness.is_some())
}
