//! The order while it is being drawn up, and what is said of every operation that is added to it.

use draft::PieceId;
use style::{Seam, SeamId};
use trade::yarn::nearest_row;
use trade::{Confidence, MachineId, NeedleSize, Unwashed};
use words::{Key, Said, say};

use super::operation::{Attachment, NotStated, Operation, Stage, Work};
use super::operation_key::{Called, OperationKey};
use super::order_words::thinning_called;
use super::passes::needles_in;
use crate::bulk::{CrossingKind, bulk};
use crate::edges::edge_use;
use crate::garment::{Fixing, Garment};
use crate::seam::facts;
use crate::yarn::{Consumption, Unstated, consumption};

/// What has to be done before.
pub(super) type After = Vec<OperationKey>;

/// The order so far.
pub(super) struct Plan<'g> {
    pub garment: &'g Garment,
    pub consumption: Consumption,
    pub operations: Vec<Operation>,
}

/// An operation of which only name and kind are said yet.
pub(super) fn operation(
    stage: Stage,
    (work, machine): (Work, MachineId),
    called: impl Into<Called>,
) -> Operation {
    let Called { key, name } = called.into();
    Operation {
        number: 0,
        key,
        name,
        stage,
        work,
        pieces: Vec::new(),
        parts: Vec::new(),
        needles: Vec::new(),
        fixings: Vec::new(),
        machine,
        attachment: None,
        needle_count: 0,
        gauges: Vec::new(),
        bite: None,
        sewn: Unwashed::default(),
        eased: None,
        not_stated: None,
        mind: Vec::new(),
        after: Vec::new(),
        usual: None,
        source: Confidence::CommonPractice,
    }
}

/// At the iron.
pub(super) fn pressed(stage: Stage, called: impl Into<Called>) -> Operation {
    operation(stage, (Work::Pressed, MachineId::Iron), called)
}

/// At a table.
pub(super) fn by_hand(stage: Stage, called: impl Into<Called>) -> Operation {
    operation(stage, (Work::ByHand, MachineId::ByHand), called)
}

/// In a washing machine, here or at a laundry.
pub(super) fn washed(stage: Stage, called: impl Into<Called>, machine: MachineId) -> Operation {
    operation(stage, (Work::Washed, machine), called)
}

/// Sewn, but the style states no row for it; with what the yarn list estimates for it, if anything.
pub(super) fn not_stated(
    stage: Stage,
    called: impl Into<Called>,
    (what, found): (Key, &[Unstated]),
) -> Operation {
    let first = found.first();
    Operation {
        needle_count: first.map_or(1, |u| needles_in(u.stitch, 1)),
        sewn: found.iter().map(|u| u.sewn).sum(),
        not_stated: Some(NotStated {
            what: what.into(),
            stitch: first.map(|u| u.stitch),
            density: first.map(|u| u.density),
        }),
        ..operation(stage, (Work::Sewn, MachineId::Lockstitch), called)
    }
}

pub(super) fn says(what: &[Key]) -> Vec<Said> {
    what.iter().copied().map(Said::from).collect()
}

/// The part of the drawing a seam is.
pub(super) fn part_of(seam: SeamId) -> String {
    format!("seam:{}", seam.code())
}

pub(super) fn aid(what: impl Into<Said>) -> Option<Attachment> {
    Some(Attachment {
        what: what.into(),
        set_to: None,
        source: Confidence::CommonPractice,
    })
}

/// Everything that has to be done before, from several chains.
pub(super) fn all_of(chains: &[&After]) -> After {
    chains
        .iter()
        .flat_map(|chain| chain.iter().copied())
        .collect()
}

impl<'g> Plan<'g> {
    pub fn new(garment: &'g Garment) -> Plan<'g> {
        Plan {
            garment,
            consumption: consumption(garment),
            operations: Vec::new(),
        }
    }

    pub fn has(&self, piece: PieceId) -> bool {
        self.garment.pattern.piece(piece).is_some()
    }

    pub fn seam_of(&self, id: SeamId) -> Option<&'g Seam> {
        self.garment.seams.iter().find(|seam| seam.id == id)
    }

    /// Adds an operation at the end; what comes next may name it as done before.
    pub fn add(&mut self, mut operation: Operation) -> After {
        operation.number = self.operations.len() + 1;
        operation.key = self.free_key(operation.key);
        operation.pieces.retain(|piece| self.has(*piece));
        operation.pieces.sort_unstable();
        operation.pieces.dedup();
        let from = |index: &usize| self.garment.fixings.get(*index);
        let fixings = operation.fixings.iter().filter_map(from);
        let fixings = fixings.map(|fixing| format!("fixing:{}", fixing.from.code()));
        let pieces = operation
            .pieces
            .iter()
            .map(|p| format!("piece:{}", p.code()));
        let parts: Vec<String> = operation
            .parts
            .drain(..)
            .chain(fixings)
            .chain(pieces)
            .collect();
        operation.parts = once_each(parts);
        operation.after = once_each(operation.after);
        let key = operation.key;
        self.operations.push(operation);
        vec![key]
    }

    /// Turned-in edges cut away where a seam is too thick for its machine to cross, before it is sewn.
    pub fn thinned(
        &mut self,
        kind: CrossingKind,
        seam: SeamId,
        stage: Stage,
        after: &After,
    ) -> After {
        let crossings = bulk(self.garment);
        let thick = crossings
            .iter()
            .find(|crossing| crossing.kind == kind && crossing.asks_for_trimming());
        let Some((thick, (_, left))) = thick.and_then(|thick| Some((thick, thick.trimmed?))) else {
            return after.clone();
        };
        let told = say::MindThin {
            left: left.in_mm(1),
            place: thick.name.clone(),
            thick: thick.thickness.in_mm(1),
        };
        self.add(Operation {
            pieces: self.pieces_of(seam),
            parts: vec![part_of(seam)],
            mind: vec![told.into()],
            after: after.clone(),
            ..by_hand(stage, thinning_called(seam))
        })
    }

    /// Notes what is set in an operation that is there already.
    pub fn sets(&mut self, key: &After, fixings: Vec<usize>) {
        let fixing = |index: &usize| self.garment.fixings.get(*index);
        let parts: Vec<String> = fixings
            .iter()
            .filter_map(fixing)
            .map(|fixing| format!("fixing:{}", fixing.from.code()))
            .collect();
        if let Some(operation) = self.operations.iter_mut().find(|o| key.contains(&o.key)) {
            operation.fixings.extend(fixings);
            operation.parts.extend(parts);
            operation.parts = once_each(std::mem::take(&mut operation.parts));
        }
    }

    /// The needles that are usual for a yarn; from memory.
    pub fn needle_sizes(&self, yarn: &str) -> Option<(NeedleSize, NeedleSize)> {
        let yarn = self.garment.collection.yarns.get(yarn)?;
        Some(nearest_row(yarn.size).needles)
    }

    /// Whether any row of a seam has a place.
    pub fn is_laid(&self, seam: SeamId) -> bool {
        self.garment.rows.iter().any(|row| row.seam == seam)
    }

    /// Whether an operation sews rows of a seam already.
    pub fn sews(&self, seam: SeamId) -> bool {
        let needles = || self.operations.iter().flat_map(|o| &o.needles);
        needles().any(|needle| needle.row.is_some() && needle.seam == seam)
    }

    /// The places in the list of fixings of those that are wanted.
    pub fn fixings(&self, wanted: impl Fn(&Fixing) -> bool) -> Vec<usize> {
        let all = self.garment.fixings.iter().enumerate();
        all.filter(|(_, fixing)| wanted(fixing))
            .map(|(index, _)| index)
            .collect()
    }

    /// Every piece with an edge in a seam, what it is sewn onto, and what it catches.
    pub fn pieces_of(&self, seam: SeamId) -> Vec<PieceId> {
        let facts = facts(seam);
        let mut out: Vec<PieceId> = facts
            .onto
            .iter()
            .chain(facts.catches)
            .copied()
            .filter(|piece| self.has(*piece))
            .collect();
        for piece in &self.garment.pattern.pieces {
            let in_seam = |edge| edge_use(piece.id, edge).seam() == Some(seam);
            if piece.edges.iter().any(|edge| in_seam(edge.id)) {
                out.push(piece.id);
            }
        }
        out
    }

    /// The key, or the first of those that do the same that is not taken.
    fn free_key(&self, mut key: OperationKey) -> OperationKey {
        // A seam's name can say of two passes what they do, so codes are compared: they are what has to be told apart.
        while self.operations.iter().any(|o| o.key.code() == key.code()) {
            key = key.next();
        }
        key
    }
}

/// Each of them once, where it first comes.
pub(super) fn once_each<T: PartialEq>(items: impl IntoIterator<Item = T>) -> Vec<T> {
    let mut out: Vec<T> = Vec::new();
    for item in items {
        if !out.contains(&item) {
            out.push(item);
        }
    }
    out
}
