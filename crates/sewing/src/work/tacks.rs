//! Bartacks and buttonholes.

use trade::seam::SeamOperationId;
use trade::{Confidence, MachineId, Unwashed};
use words::{Key, Said, key, say};

use super::operation::{Needle, Operation, Stage, Work};
use super::operation_key::Task;
use super::plan::{After, Plan, aid, operation, part_of, says};
use crate::context::Context;
use crate::garment::{Fixing, FixingKind};
use crate::yarn::{BUTTONHOLE_DENSITY, Sewn};

impl Plan<'_> {
    /// Tacks, all at once.
    pub fn bartacks(
        &mut self,
        (stage, task): (Stage, Task),
        fixings: Vec<usize>,
        how: Key,
        after: After,
    ) -> After {
        let tack = &self.garment.doc.bartacks;
        let size = say::MindTack {
            length: tack.length.in_mm(1),
            stitches: tack.stitches,
            width: tack.width.in_mm(1),
        };
        let operation = Operation {
            attachment: aid(key::ATTACHMENT_TACK_CLAMP),
            mind: vec![how.into(), size.into()],
            after,
            usual: Some(SeamOperationId::Bartack),
            ..operation(stage, (Work::Sewn, MachineId::Bartacker), task)
        };
        self.tacked(operation, fixings)
    }

    /// Buttonholes, all alike.
    pub fn buttonholes(
        &mut self,
        (stage, task): (Stage, Task),
        fixings: Vec<usize>,
        how: &[Key],
        after: After,
    ) -> After {
        let cut = fixings
            .first()
            .and_then(|index| self.garment.fixings.get(*index));
        let cut = cut.and_then(|fixing| match fixing.kind {
            FixingKind::Buttonhole(length) => {
                let length = length.in_mm(1);
                Some(Said::from(say::MindHoleCut { length }))
            }
            _ => None,
        });
        let operation = Operation {
            attachment: aid(key::ATTACHMENT_BUTTONHOLE_KNIFE),
            mind: says(how)
                .into_iter()
                .chain(cut)
                .chain(says(&[key::MIND_HOLE_GIMP_ASK]))
                .collect(),
            after,
            ..operation(stage, (Work::Sewn, MachineId::EyeletButtonhole), task)
        };
        self.tacked(operation, fixings)
    }

    /// Sews tacks or buttonholes on the pieces they are on.
    fn tacked(&mut self, operation: Operation, fixings: Vec<usize>) -> After {
        let needles = self.tacks(&fixings);
        let on = |index: &usize| self.garment.fixings.get(*index).map(|f| f.piece);
        let seams = needles
            .iter()
            .filter_map(|needle| needle.seam.seam())
            .filter(|seam| self.seam_of(*seam).is_some());
        let operation = Operation {
            pieces: fixings.iter().filter_map(on).collect(),
            parts: seams.map(part_of).collect(),
            sewn: needles.iter().map(|needle| needle.sewn).sum(),
            needle_count: 1,
            needles,
            fixings,
            source: Confidence::FromMemory,
            ..operation
        };
        self.add(operation)
    }

    /// Tacks or buttonholes, all of those from the same seam or trim on the same piece.
    pub fn tacks(&self, fixings: &[usize]) -> Vec<Needle> {
        let of = |index: &usize| self.garment.fixings.get(*index);
        let fixings: Vec<&Fixing> = fixings.iter().filter_map(of).collect();
        let context = Context {
            doc: &self.garment.doc,
            collection: &self.garment.collection,
            size: self.garment.size,
            pattern: &self.garment.pattern,
            seams: &self.garment.seams,
        };
        let mut out: Vec<Needle> = Vec::new();
        for item in &self.consumption.items {
            let set_to = match item.sewn {
                Sewn::Bartack(_) => None,
                Sewn::Buttonhole => Some(Unwashed::new(BUTTONHOLE_DENSITY)),
                Sewn::Row(_) => continue,
            };
            let set = |f: &&Fixing| {
                f.from == item.seam
                    && f.piece == item.piece
                    && matches!(f.kind, FixingKind::Buttonhole(_)) == set_to.is_some()
            };
            if !fixings.iter().any(set) {
                continue;
            }
            let same = |n: &&mut Needle| n.seam == item.seam && n.stitch == item.stitch;
            match out.iter_mut().find(same) {
                Some(needle) => needle.sewn = needle.sewn + item.sewn_length(),
                None => out.push(Needle {
                    seam: item.seam.clone(),
                    row: None,
                    rows: Vec::new(),
                    stitch: item.stitch,
                    set_to,
                    counted: None,
                    offset: None,
                    yarn: context.yarn(&item.needle_yarn),
                    sizes: self.needle_sizes(&item.needle_yarn),
                    under: context.yarn(&item.under_yarn),
                    sewn: item.sewn_length(),
                    ends: Some(key::ROW_ENDS_LOCKED.into()),
                }),
            }
        }
        out
    }
}
