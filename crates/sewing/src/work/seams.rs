//! How a seam becomes operations: its passes, the pressing between them, and what no row states.

use draft::PieceId;
use style::{Construction, Seam, SeamId};
use trade::seam::{SeamOperation, operation as operation_named};
use trade::{Confidence, Length, StitchType};

use super::machine;
use super::operation::{Needle, Operation, Stage, Work};
use super::order_words;
use super::passes::{Does, Holding, Pass, bite_of, gauges, needles_in, passes};
use super::plan::{After, Plan, not_stated, once_each, operation, pressed};
use crate::construct::Finish;
use crate::construct::operation_of;
use crate::garment::{InsideLap, StitchRow};
use crate::seam::facts;
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
        let needles: Vec<Needle> = pass
            .rows
            .iter()
            .filter_map(|number| self.needle(seam, *number))
            .collect();
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
                .fold(Length::ZERO, Length::max),
            mind: order_words::of_pass(self.garment, seam, pass, at.in_tube),
            after: after.clone(),
            usual: usual.map(|operation| operation.key),
            source: usual.map_or(Confidence::CommonPractice, |operation| operation.confidence),
            ..operation(
                at.stage,
                (
                    Work::Sewn,
                    machine::machine(seam, pass.does, (stitch, needles.len()), at.in_tube),
                ),
                &key_of(seam.id, pass.does),
                &name_of(seam, pass),
            )
        };
        operation.needles = needles;
        self.add(operation)
    }

    /// What the construction needs pressed before its last rows, or to be done.
    fn press(&mut self, seam: &Seam, more: bool, at: &At<'_>, after: After) -> After {
        let Some((what, mind)) = order_words::pressing(self.garment, seam, more, at.in_tube) else {
            return after;
        };
        let key = format!("{}-press", stem(seam.id));
        let name = format!("{}: {what}", facts(seam.id).head());
        self.add(Operation {
            pieces: self.pieces_of(seam.id),
            parts: vec![part_of(seam.id)],
            mind,
            after,
            ..pressed(at.stage, &key, &name)
        })
    }

    /// Work of this seam for which the style states no row.
    pub fn unstated(&mut self, seam: &Seam, does: Does, at: &At<'_>, after: &After) -> After {
        let Some(found) = self.unstated_of(seam.id, does) else {
            return after.clone();
        };
        let key = key_of(seam.id, does);
        let name = format!(
            "{}: {}",
            facts(seam.id).head(),
            order_words::phrase(seam.id, does)
        );
        let usual = usual(seam, does);
        let what = match does {
            Does::Neatens => "overedge of the raw edges",
            _ => "joining row below the topstitching",
        };
        let raw = (does == Does::Neatens)
            .then(|| self.raw_beside_selvedge(seam.id))
            .flatten();
        let mut mind = order_words::of_unstated(self.garment, seam, does, at.in_tube);
        if raw.is_some() {
            mind.push("the cloth's own finished edge needs none".to_owned());
        }
        let operation = Operation {
            pieces: raw.unwrap_or_else(|| self.pieces_of(seam.id)),
            parts: vec![part_of(seam.id)],
            machine: machine::machine(seam, does, (found.stitch, 1), at.in_tube),
            bite: found.stitch.is_overedge().then(overedge_bite),
            attachment: machine::attachment(self.garment, seam, does, (Length::ZERO, 1)),
            mind,
            after: after.clone(),
            usual: usual.map(|operation| operation.key),
            source: usual.map_or(Confidence::CommonPractice, |operation| operation.confidence),
            ..not_stated(at.stage, &key, &name, (what, &[found]))
        };
        self.add(operation)
    }

    /// Of a seam that runs along the cloth's own finished edge in part, the pieces whose edge in it is
    /// raw; `None` for a seam that nowhere does.
    fn raw_beside_selvedge(&self, seam: SeamId) -> Option<Vec<PieceId>> {
        let of_seam = |lap: &&InsideLap| lap.seam() == Some(seam);
        let laps = || self.garment.laps.iter().filter(of_seam);
        laps().any(|lap| lap.finish == Finish::Selvedge).then(|| {
            let raw = laps().filter(|lap| lap.finish != Finish::Selvedge);
            raw.map(|lap| lap.piece).collect()
        })
    }

    /// The yarn list's entry for work of a seam that no row states.
    pub fn unstated_of(&self, seam: SeamId, does: Does) -> Option<Unstated> {
        let kind = match does {
            Does::Neatens => UnstatedKind::Overedge,
            _ => UnstatedKind::Joining,
        };
        let of_seam = |u: &&Unstated| u.kind == kind && u.of == seam;
        self.consumption.unstated.iter().find(of_seam).cloned()
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
        let key = format!("{}-sew", stem(seam));
        let title = format!("{}: sew", facts(seam).head());
        self.add(Operation {
            pieces,
            parts: vec![part_of(seam)],
            after: at.after.clone(),
            ..not_stated(at.stage, &key, &title, ("every row of this seam", &[]))
        })
    }

    /// The bite or spacing that is not the distance of two rows.
    fn bite(&self, seam: &Seam, pass: &Pass) -> Option<Length> {
        let [number] = pass.rows[..] else {
            return None;
        };
        bite_of(seam, number)
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
            density: Some(laid.density),
            offset: Some(spec.offset),
            yarn: laid.needle.clone(),
            under: laid.under.clone(),
            sewn: items.iter().map(|item| item.sewn_length()).sum(),
            ends: ends_of(self.garment, seam.id, number),
        })
    }
}

/// The operation of the trade that a pass is.
fn usual(seam: &Seam, does: Does) -> Option<&'static SeamOperation> {
    match does {
        Does::Neatens => operation_named("edge-overedge"),
        Does::Holds(Holding::Round) => operation_named("waistband-topstitched"),
        _ => operation_of(seam),
    }
}

/// The part of the drawing a seam is.
fn part_of(seam: SeamId) -> String {
    format!("seam:{}", seam.code())
}

/// How the keys of a seam's operations begin: "back-pocket-set".
fn stem(seam: SeamId) -> String {
    seam.code().replace('_', "-")
}

/// Where its name says what is done to a seam, the key need not.
fn key_of(seam: SeamId, does: Does) -> String {
    let plain = match does {
        Does::Joins => seam == SeamId::BagClose,
        Does::Neatens => false,
        Does::Holds(holding) => {
            seam != SeamId::Band
                && matches!(
                    holding,
                    Holding::Hem | Holding::Set | Holding::Strip | Holding::Decorate
                )
        }
    };
    let name = stem(seam);
    if plain {
        name
    } else {
        format!("{name}-{}", does.key())
    }
}

fn name_of(seam: &Seam, pass: &Pass) -> String {
    let subject = facts(seam.id).head();
    let phrase = order_words::phrase(seam.id, pass.does);
    let rows: Vec<String> = pass.rows.iter().map(usize::to_string).collect();
    match &rows[..] {
        _ if seam.rows.len() == 1 => format!("{subject}: {phrase}"),
        [one] => format!("{subject}: {phrase}, row {one}"),
        [most @ .., last] => format!("{subject}: {phrase}, rows {} and {last}", most.join(", ")),
        [] => format!("{subject}: {phrase}"),
    }
}
