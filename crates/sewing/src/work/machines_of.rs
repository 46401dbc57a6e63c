//! The machines a seam needs.

use style::Seam;
use trade::MachineId;

use super::legs::closing_seam;
use super::machine::machine;
use super::passes::passes;
use crate::garment::Garment;

/// The machines that sew the stated rows of a seam, in the order of its passes, each once; none for a seam without
/// rows.
pub(crate) fn machines_of(garment: &Garment, seam: &Seam) -> Vec<MachineId> {
    let in_tube = closing_seam(garment) == seam.id;
    let mut out = Vec::new();
    for pass in passes(garment, seam) {
        let spec = |number: &usize| seam.rows.get(number.wrapping_sub(1));
        let Some(row) = pass.rows.first().and_then(spec) else {
            continue;
        };
        let machine = machine(seam, pass.does, (row.stitch, pass.rows.len()), in_tube);
        if !out.contains(&machine) {
            out.push(machine);
        }
    }
    out
}
