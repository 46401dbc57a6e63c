//! Bartacks and buttonholes.

use trade::Confidence;
use words::key;

use super::operation::{Needle, Operation, Stage, Work};
use super::plan::{After, Plan, aid, operation, says};
use crate::context::{Context, mm};
use crate::garment::{Fixing, FixingKind};
use crate::yarn::{BUTTONHOLE_DENSITY, Sewn};

impl Plan<'_> {
    /// Tacks, all at once.
    pub fn bartacks(
        &mut self,
        (stage, id, name): (Stage, &str, &str),
        fixings: Vec<usize>,
        mind: &[&str],
        after: After,
    ) -> After {
        let tack = &self.garment.doc.bartacks;
        let size = format!(
            "{} by {}, {} stitches",
            mm(tack.length),
            mm(tack.width),
            tack.stitches
        );
        let clamp = aid(key::ATTACHMENT_TACK_CLAMP);
        let mind = mind.iter().map(|text| (*text).to_owned()).chain([size]);
        let operation = Operation {
            attachment: clamp,
            mind: mind.collect(),
            after,
            usual: Some("bartack"),
            ..operation(stage, (Work::Sewn, "bartacker"), id, name)
        };
        self.tacked(operation, fixings)
    }

    /// Buttonholes, all alike.
    pub fn buttonholes(
        &mut self,
        (stage, id, name): (Stage, &str, &str),
        fixings: Vec<usize>,
        how: &[&str],
        after: After,
    ) -> After {
        let cut = fixings
            .first()
            .and_then(|index| self.garment.fixings.get(*index));
        let cut = cut.map(|fixing| match fixing.kind {
            FixingKind::Buttonhole(length) => format!("cut {}", mm(length)),
            _ => String::new(),
        });
        let operation = Operation {
            attachment: aid(key::ATTACHMENT_BUTTONHOLE_KNIFE),
            mind: says(how).into_iter().chain(cut).collect(),
            after,
            ..operation(stage, (Work::Sewn, "eyelet buttonhole"), id, name)
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
            parts: seams.map(|seam| format!("seam:{}", seam.code())).collect(),
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
            let density = match item.sewn {
                Sewn::Bartack(_) => None,
                Sewn::Buttonhole => Some(BUTTONHOLE_DENSITY),
                Sewn::Row(_) => continue,
            };
            let set = |f: &&Fixing| {
                f.from == item.seam
                    && f.piece == item.piece
                    && matches!(f.kind, FixingKind::Buttonhole(_)) == density.is_some()
            };
            if !fixings.iter().any(set) {
                continue;
            }
            let same = |n: &&mut Needle| n.seam == item.seam && n.stitch == item.stitch;
            match out.iter_mut().find(same) {
                Some(needle) => needle.sewn += item.sewn_length(),
                None => out.push(Needle {
                    seam: item.seam.clone(),
                    row: None,
                    rows: Vec::new(),
                    stitch: item.stitch,
                    density,
                    offset: None,
                    yarn: context.yarn(&item.needle_yarn),
                    under: context.yarn(&item.under_yarn),
                    sewn: item.sewn_length(),
                    ends: "both ends: locked by the machine".to_owned(),
                }),
            }
        }
        out
    }
}
