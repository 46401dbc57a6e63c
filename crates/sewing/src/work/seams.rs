//! How a seam becomes operations: its passes, the pressing between them, and what no row states.

use draft::PieceId;
use style::{Construction, Seam, SeamId};
use trade::seam::{SeamOperation, SeamOperationId, operation as operation_named};
use trade::{Length, MachineId, StitchType, Unwashed, Washed};
use words::key;

use super::apart::apart_after_wash;
use super::machine;
use super::operation::{Needle, Operation, Stage, Work};
use super::order_words;
use super::pass_kinds::{Does, Holding};
use super::passes::{Pass, bite_of, gauges, needles_in, passes};
use super::plan::{After, Plan, not_stated, once_each, operation, part_of, pressed};
use super::thick::thick_crossings;
use crate::construct::{Finish, construct, operation_of};
use crate::garment::{InsideLap, StitchRow};
use crate::seam_words::ends_of;
use crate::yarn::{Sewn, Unstated, UnstatedKind, overedge_bite};

/// Where and after what a seam is sewn.
#[derive(Clone, Copy)]
pub(super) struct At<'a> {
    pub stage: Stage,
    pub after: &'a After,
    /// Whether the leg is closed already.
    pub in_tube: bool,
}

impl<'a> At<'a> {
    pub const fn new(stage: Stage, after: &'a After) -> At<'a> {
        At {
            stage,
            after,
            in_tube: false,
        }
    }
}

impl Plan<'_> {
    /// Sews a seam: all its passes, pressing where the construction needs it, and what the style does
    /// not state. Gives what has to be done before whatever comes after the seam.
    pub fn seam(&mut self, id: SeamId, at: &At<'_>) -> After {
        let after = self.first(id, at);
        self.held(
            id,
            &At {
                after: &after,
                ..*at
            },
        )
    }

    /// Everything before the rows that hold a seam: raw edges neatened, plies joined, pressed.
    pub fn first(&mut self, id: SeamId, at: &At<'_>) -> After {
        let mut after = at.after.clone();
        let Some(seam) = self.seam_of(id) else {
            return self.without_rows(id, at);
        };
        let passes = passes(self.garment, seam);
        let neatened_first = seam.construction == Construction::PressedOpen;
        if neatened_first {
            after = self.unstated(seam, Does::Neatens, at, &after);
        }
        after = self.unstated(seam, Does::Joins, at, &after);
        if passes.is_empty() {
            let after_these = At {
                after: &after,
                ..*at
            };
            after = self.without_rows(id, &after_these);
        }
        for pass in passes.iter().filter(|pass| !pass.does.holds()) {
            after = self.pass(seam, pass, at, &after);
        }
        if !neatened_first {
            after = self.unstated(seam, Does::Neatens, at, &after);
        }
        let held = passes.iter().any(|pass| pass.does.holds());
        self.press(seam, held, at, after)
    }

    /// The rows that hold a seam.
    pub fn held(&mut self, id: SeamId, at: &At<'_>) -> After {
        let mut after = at.after.clone();
        if let Some(seam) = self.seam_of(id) {
            let passes = passes(self.garment, seam);
            for pass in passes.iter().filter(|pass| pass.does.holds()) {
                after = self.pass(seam, pass, at, &after);
            }
        }
        after
    }

    /// One pass of a seam.
    pub fn pass(&mut self, seam: &Seam, pass: &Pass, at: &At<'_>, after: &After) -> After {
        let spec = |number: &usize| seam.rows.get(number.wrapping_sub(1));
        let needles = self.needles(seam, pass);
        let offsets: Vec<Length> = pass
            .rows
            .iter()
            .filter_map(spec)
            .map(|r| r.offset)
            .collect();
        let nearest = offsets
            .iter()
            .copied()
            .reduce(Length::min)
            .unwrap_or_default();
        let stitch = needles
            .first()
            .map_or(StitchType::S301, |needle| needle.stitch);
        let usual = usual(seam, pass.does);
        let mut operation = Operation {
            pieces: self.pieces_of(seam.id),
            parts: vec![part_of(seam.id)],
            attachment: machine::attachment(
                self.garment,
                seam,
                pass.does,
                (nearest, needles.len()),
            ),
            needle_count: needles_in(stitch, needles.len()),
            gauges: gauges(offsets),
            bite: self.bite(seam, pass),
            sewn: needles
                .iter()
                .map(|n| n.sewn)
                .fold(Unwashed::default(), longer),
            eased: order_words::eased_by(self.garment, seam, pass),
            mind: order_words::of_pass(self.garment, seam, pass, at.in_tube),
            after: after.clone(),
            usual: Some(usual.id),
            source: usual.confidence,
            ..operation(
                at.stage,
                (
                    Work::Sewn,
                    machine::machine(seam, pass.does, (stitch, needles.len()), at.in_tube),
                ),
                order_words::pass_called(seam, pass),
            )
        };
        operation.needles = needles;
        // Crossings are reckoned by the machine of the first row.
        if pass.rows.contains(&1) {
            operation
                .mind
                .extend(thick_crossings(self.garment, seam.id));
        }
        operation
            .mind
            .extend(apart_after_wash(self.garment, &operation));
        self.add(operation)
    }

    /// What the construction needs pressed before its last rows, or to be done.
    fn press(&mut self, seam: &Seam, more: bool, at: &At<'_>, after: After) -> After {
        let Some((how, mind)) = order_words::pressing(self.garment, seam, more, at.in_tube) else {
            return after;
        };
        self.add(Operation {
            pieces: self.pieces_of(seam.id),
            parts: vec![part_of(seam.id)],
            mind,
            after,
            ..pressed(at.stage, order_words::pressing_called(seam.id, how))
        })
    }

    /// Work of this seam for which the style states no row.
    pub fn unstated(&mut self, seam: &Seam, does: Does, at: &At<'_>, after: &After) -> After {
        let Some(found) = self.unstated_of(seam.id, does) else {
            return if does == Does::Neatens && self.is_left_raw(seam) {
                self.neatening_asked(seam, at, after)
            } else {
                after.clone()
            };
        };
        let usual = usual(seam, does);
        let what = match does {
            Does::Neatens => key::NOT_STATED_OVEREDGE,
            Does::Joins | Does::Holds(_) => key::NOT_STATED_JOINING,
        };
        let raw = (does == Does::Neatens)
            .then(|| self.raw_beside_selvedge(seam.id))
            .flatten();
        let mut mind = order_words::of_unstated(self.garment, seam, does, at.in_tube);
        if raw.is_some() {
            mind.push(key::MIND_NEATEN_SELVEDGE.into());
        }
        let operation = Operation {
            pieces: raw.unwrap_or_else(|| self.pieces_of(seam.id)),
            parts: vec![part_of(seam.id)],
            machine: machine::machine(seam, does, (found.stitch, 1), at.in_tube),
            bite: (found.stitch.is_overedge()).then(|| Unwashed::new(overedge_bite())),
            attachment: machine::attachment(self.garment, seam, does, (Length::ZERO, 1)),
            mind,
            after: after.clone(),
            usual: Some(usual.id),
            source: usual.confidence,
            ..not_stated(
                at.stage,
                order_words::unstated_called(seam.id, does),
                (what, &[found]),
            )
        };
        self.add(operation)
    }

    /// Whether the construction of a seam is overedged, none of its rows is an overedge, and the yarn list reckons none.
    fn is_left_raw(&self, seam: &Seam) -> bool {
        let overedged = seam.rows.iter().any(|row| row.stitch.is_overedge());
        let lies = self.garment.laps.iter();
        // The halves of a band are joined inside its fold.
        seam.id != SeamId::BandJoin
            && construct(seam.construction).finish == Finish::Overedged
            && self.is_laid(seam.id)
            && !overedged
            && !lies.filter_map(InsideLap::seam).any(|of| of == seam.id)
    }

    fn neatening_asked(&mut self, seam: &Seam, at: &At<'_>, after: &After) -> After {
        let called = order_words::unstated_called(seam.id, Does::Neatens);
        self.add(Operation {
            pieces: self.pieces_of(seam.id),
            parts: vec![part_of(seam.id)],
            machine: MachineId::Overedge,
            mind: order_words::of_unstated(self.garment, seam, Does::Neatens, at.in_tube),
            after: after.clone(),
            ..not_stated(at.stage, called, (key::NOT_STATED_OVEREDGE, &[]))
        })
    }

    /// Of a seam that runs along the cloth's own finished edge in part, the pieces whose edge in it is
    /// raw; `None` for a seam that nowhere does.
    fn raw_beside_selvedge(&self, seam: SeamId) -> Option<Vec<PieceId>> {
        let of_seam = |lap: &&InsideLap| lap.seam() == Some(seam);
        let laps = || self.garment.laps.iter().filter(of_seam);
        laps().any(|lap| lap.finish == Finish::Selvedge).then(|| {
            let raw = laps().filter(|lap| lap.finish != Finish::Selvedge);
            // The bag lies on the facing there.
            let bag = [PieceId::PocketBag].into_iter();
            raw.map(|lap| lap.piece).chain(bag).collect()
        })
    }

    /// The yarn list's entry for work of a seam that no row states.
    pub fn unstated_of(&self, seam: SeamId, does: Does) -> Option<Unstated> {
        let kind = match does {
            Does::Neatens => UnstatedKind::Overedge,
            Does::Joins | Does::Holds(_) => UnstatedKind::Joining,
        };
        let of_seam = |u: &&Unstated| u.kind == kind && u.of == seam;
        self.consumption.unstated.iter().find(of_seam).cloned()
    }

    /// The yarn list's entry for the row that closes the strip of a button fly.
    pub fn unstated_strip(&self) -> Vec<Unstated> {
        let strip = |u: &&Unstated| u.kind == UnstatedKind::ButtonholeStrip;
        self.consumption
            .unstated
            .iter()
            .filter(strip)
            .cloned()
            .collect()
    }

    /// The yarn list's entries for patch or labels that no row sews on.
    ///
    /// The list follows the fixings; where it has an entry for each of a trim, each finds its own.
    pub fn unstated_trims(&self, fixings: &[usize]) -> Vec<Unstated> {
        let trim = |index: usize| self.garment.fixings.get(index).map(|f| &f.from);
        let mut out = Vec::new();
        for name in once_each(fixings.iter().filter_map(|index| trim(*index))) {
            let of_trim = |u: &&Unstated| u.kind == UnstatedKind::SewnOn && u.of == *name;
            let listed: Vec<&Unstated> = self.consumption.unstated.iter().filter(of_trim).collect();
            let set: Vec<usize> = (0..self.garment.fixings.len())
                .filter(|index| trim(*index) == Some(name))
                .collect();
            let each = listed.len() == set.len();
            let mine = listed.into_iter().enumerate().filter(|(nth, _)| {
                !each || set.get(*nth).is_some_and(|index| fixings.contains(index))
            });
            out.extend(mine.map(|(_, entry)| entry.clone()));
        }
        out
    }

    /// A seam that is there but has no rows at all.
    fn without_rows(&mut self, seam: SeamId, at: &At<'_>) -> After {
        let pieces = self.pieces_of(seam);
        if pieces.is_empty() {
            return at.after.clone();
        }
        let what = key::NOT_STATED_EVERY_ROW;
        self.add(Operation {
            pieces,
            parts: vec![part_of(seam)],
            after: at.after.clone(),
            ..not_stated(
                at.stage,
                order_words::without_rows_called(seam),
                (what, &[]),
            )
        })
    }

    /// The bite or spacing that is not the distance of two rows.
    fn bite(&self, seam: &Seam, pass: &Pass) -> Option<Unwashed<Length>> {
        let [number] = pass.rows[..] else {
            return None;
        };
        bite_of(seam, number)
    }

    /// The needles of a pass.
    fn needles(&self, seam: &Seam, pass: &Pass) -> Vec<Needle> {
        pass.rows
            .iter()
            .filter_map(|number| self.needle(seam, *number))
            .collect()
    }

    fn needle(&self, seam: &Seam, number: usize) -> Option<Needle> {
        let spec = seam.rows.get(number.checked_sub(1)?)?;
        let of_row = |r: &&StitchRow| r.seam == seam.id && r.number == number;
        let laid = self.garment.rows.iter().find(of_row)?;
        let items = self.consumption.items.iter();
        let items: Vec<_> = items
            .filter(|item| item.seam == seam.id && item.sewn == Sewn::Row(number))
            .collect();
        Some(Needle {
            seam: seam.id.into(),
            row: Some(number),
            rows: items.iter().filter_map(|item| item.row).collect(),
            stitch: laid.stitch,
            set_to: items.first().and_then(|item| item.set_to),
            counted: Some(Washed::new(laid.density)),
            offset: Some(Unwashed::new(spec.offset)),
            yarn: laid.needle.clone(),
            sizes: self.needle_sizes(&laid.needle.key),
            under: laid.under.clone(),
            sewn: items.iter().map(|item| item.sewn_length()).sum(),
            ends: ends_of(self.garment, seam.id, number),
        })
    }
}

/// The longer of two.
fn longer(one: Unwashed<Length>, other: Unwashed<Length>) -> Unwashed<Length> {
    if other > one { other } else { one }
}

/// The operation of the trade that a pass is.
fn usual(seam: &Seam, does: Does) -> &'static SeamOperation {
    match does {
        Does::Neatens => operation_named(SeamOperationId::EdgeOveredge),
        Does::Holds(Holding::Round) => operation_named(SeamOperationId::WaistbandTopstitched),
        Does::Joins | Does::Holds(_) => operation_of(seam),
    }
}
