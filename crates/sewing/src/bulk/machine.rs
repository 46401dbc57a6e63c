//! Which kind of machine sews a crossing, how high it lifts its foot, and how much it sews.

use style::{Construction, Seam};
use trade::{Length, StitchType};
use words::{Key, key};

use crate::seam::{OwnMachine, facts};

/// A kind of machine, by what goes under its foot and what it sews.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Machine {
    /// What it is called, with its article.
    pub name: Key,
    /// The clearance under the raised foot or clamp; from memory, of machines for heavy cloth.
    pub lift: Length,
    /// The thickest stack it forms stitches in, from [`SEWN_OF_LIFT`].
    pub sews: Length,
}

/// What a machine sews is less than what goes under its raised foot: the needle has to leave the cloth, the take-up and
/// the feed have to carry it. Four fifths of the lift are from memory, to be confirmed at the machine.
const SEWN_OF_LIFT: f64 = 0.8;

const fn machine(name: Key, lift_mm: f64) -> Machine {
    Machine {
        name,
        lift: Length::mm(lift_mm),
        sews: Length::mm(lift_mm * SEWN_OF_LIFT),
    }
}

/// Flatbed lockstitch, its foot raised by the knee.
pub const LOCKSTITCH: Machine = machine(key::CROSSING_MACHINE_LOCKSTITCH, 13.0);
/// Two or three chain rows along a tube.
pub const FEED_OFF_THE_ARM: Machine = machine(key::CROSSING_MACHINE_FEED_OFF_THE_ARM, 10.0);
/// Flatbed two-thread chainstitch.
pub const CHAINSTITCH: Machine = machine(key::CROSSING_MACHINE_CHAINSTITCH, 10.0);
/// Two chain rows with a band folder.
pub const WAISTBAND: Machine = machine(key::CROSSING_MACHINE_WAISTBAND, 12.0);
/// Chainstitch on a cylinder bed, with a hem folder.
pub const HEMMER: Machine = machine(key::CROSSING_MACHINE_HEMMER, 10.0);
/// Overedge and safety stitch. One for heavy cloth, which closes inseams over two flat-felled or mock-felled seams all
/// day, lifts higher than one for shirtings, which takes 5 to 6 mm; both from memory, to be confirmed at the machine.
pub const OVERLOCK: Machine = machine(key::CROSSING_MACHINE_OVERLOCK, 8.0);
/// Coverstitch.
pub const COVERSTITCH: Machine = machine(key::CROSSING_MACHINE_COVERSTITCH, 8.0);
/// Bartack.
pub const BARTACKER: Machine = machine(key::CROSSING_MACHINE_BARTACKER, 14.0);

/// The machine that sews a seam, from its stitches; `None` where it has no rows.
pub fn machine_of(seam: &Seam) -> Option<Machine> {
    use StitchType as S;
    let stitch = seam.rows.first()?.stitch;
    Some(match stitch {
        S::S301 | S::S304 => LOCKSTITCH,
        S::S101 | S::S401 | S::S404 => match (facts(seam.id).machine, seam.construction) {
            (Some(OwnMachine::Hemmer), _) => HEMMER,
            (Some(OwnMachine::Waistband), _) => WAISTBAND,
            (None, Construction::LapFelled) => FEED_OFF_THE_ARM,
            (None, _) => CHAINSTITCH,
        },
        S::S406 | S::S602 | S::S605 | S::S607 => COVERSTITCH,
        _ => OVERLOCK,
    })
}
