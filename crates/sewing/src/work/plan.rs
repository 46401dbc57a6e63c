//! The order while it is being drawn up: what is added to it, and how a seam becomes operations.

use draft::PieceId;
use style::{Construction, Seam, known};
use trade::seam::operation as operation_named;
use trade::{Confidence, Length, StitchType};

use super::machine;
use super::mind;
use super::operation::{Attachment, Needle, NotStated, Operation, Stage, Work};
use super::passes::{Does, Holding, Pass, bite_of, gauges, needles_in, passes};
use crate::construct::operation_of;
use crate::context::{Context, mm};
use crate::describe::ends_of;
use crate::edges::{EdgeUse, edge_use};
use crate::garment::{Fixing, FixingKind, Garment};
use crate::yarn::{BUTTONHOLE_DENSITY, Consumption, Sewn, Unstated, consumption, overedge_bite};

/// Keys of what has to be done before.
pub(super) type After = Vec<String>;

/// The order so far.
pub(super) struct Plan<'g> {
    pub garment: &'g Garment,
    consumption: Consumption,
    pub operations: Vec<Operation>,
}

/// An operation of which only key, name and kind are said yet.
pub(super) fn operation(
    stage: Stage,
    (work, machine): (Work, &'static str),
    key: &str,
    name: &str,
) -> Operation {
    Operation {
        number: 0,
        key: key.to_owned(),
        name: name.to_owned(),
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
        sewn: Length::ZERO,
        not_stated: None,
        mind: Vec::new(),
        after: Vec::new(),
        usual: None,
        source: Confidence::CommonPractice,
    }
}

/// At the iron.
pub(super) fn pressed(stage: Stage, key: &str, name: &str) -> Operation {
    operation(stage, (Work::Pressed, "iron"), key, name)
}

/// At a table.
pub(super) fn by_hand(stage: Stage, key: &str, name: &str) -> Operation {
    operation(stage, (Work::ByHand, "by hand"), key, name)
}

/// Sewn, but the style states no row for it.
pub(super) fn not_stated(stage: Stage, key: &str, name: &str, what: &str) -> Operation {
    Operation {
        needle_count: 1,
        not_stated: Some(NotStated {
            what: what.to_owned(),
            stitch: None,
            density: None,
        }),
        ..operation(stage, (Work::Sewn, "lockstitch"), key, name)
    }
}

pub(super) fn says(what: &[&str]) -> Vec<String> {
    what.iter().map(|text| (*text).to_owned()).collect()
}

pub(super) fn aid(what: &str) -> Option<Attachment> {
    Some(Attachment {
        what: what.to_owned(),
        source: Confidence::CommonPractice,
    })
}

/// Everything that has to be done before, from several chains.
pub(super) fn all_of(chains: &[&After]) -> After {
    chains
        .iter()
        .flat_map(|chain| chain.iter().cloned())
        .collect()
}

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

    pub fn seam_of(&self, name: &str) -> Option<&'g Seam> {
        self.garment.seams.iter().find(|seam| seam.name == name)
    }

    /// Adds an operation at the end; what comes next may name it as done before.
    pub fn add(&mut self, mut operation: Operation) -> After {
        operation.number = self.operations.len() + 1;
        operation.key = self.free_key(&operation.key);
        operation.pieces.retain(|piece| self.has(*piece));
        operation.pieces.sort_unstable();
        operation.pieces.dedup();
        let from = |index: &usize| self.garment.fixings.get(*index);
        let fixings = operation.fixings.iter().filter_map(from);
        let fixings = fixings.map(|fixing| format!("fixing:{}", fixing.from));
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
        let key = operation.key.clone();
        self.operations.push(operation);
        vec![key]
    }

    /// Sews a seam: all its passes, pressing where the construction needs it, and what the style does
    /// not state. Gives what has to be done before whatever comes after the seam.
    pub fn seam(&mut self, name: &str, at: &At<'_>) -> After {
        let after = self.first(name, at);
        self.held(
            name,
            &At {
                after: &after,
                ..*at
            },
        )
    }

    /// Everything before the rows that hold a seam: raw edges neatened, plies joined, pressed.
    pub fn first(&mut self, name: &str, at: &At<'_>) -> After {
        let mut after = at.after.clone();
        let Some(seam) = self.seam_of(name) else {
            return self.without_rows(name, at);
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
            after = self.without_rows(name, &after_these);
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
    pub fn held(&mut self, name: &str, at: &At<'_>) -> After {
        let mut after = at.after.clone();
        if let Some(seam) = self.seam_of(name) {
            let passes = passes(self.garment, seam);
            for pass in passes.iter().filter(|pass| pass.does.holds()) {
                after = self.pass(seam, pass, at, &after);
            }
        }
        after
    }

    /// Notes what is set in an operation that is there already.
    pub fn sets(&mut self, key: &After, fixings: Vec<usize>) {
        let fixing = |index: &usize| self.garment.fixings.get(*index);
        let parts: Vec<String> = fixings
            .iter()
            .filter_map(fixing)
            .map(|fixing| format!("fixing:{}", fixing.from))
            .collect();
        if let Some(operation) = self.operations.iter_mut().find(|o| key.contains(&o.key)) {
            operation.fixings.extend(fixings);
            operation.parts.extend(parts);
            operation.parts = once_each(std::mem::take(&mut operation.parts));
        }
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
        let usual = match pass.does {
            Does::Holds(Holding::Round) => operation_named("waistband-topstitched"),
            _ => operation_of(seam),
        };
        let mut operation = Operation {
            pieces: self.pieces_of(&seam.name),
            parts: vec![format!("seam:{}", seam.name)],
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
            mind: mind::of_pass(self.garment, seam, pass, at.in_tube),
            after: after.clone(),
            usual: usual.map(|operation| operation.key),
            source: usual.map_or(Confidence::CommonPractice, |operation| operation.confidence),
            ..operation(
                at.stage,
                (
                    Work::Sewn,
                    machine::machine(seam, pass.does, (stitch, needles.len()), at.in_tube),
                ),
                &key_of(&seam.name, pass.does),
                &name_of(seam, pass),
            )
        };
        operation.needles = needles;
        self.add(operation)
    }

    /// What the construction needs pressed before its last rows, or to be done.
    fn press(&mut self, seam: &Seam, more: bool, at: &At<'_>, after: After) -> After {
        let Some((what, mind)) = mind::pressing(self.garment, seam, more, at.in_tube) else {
            return after;
        };
        let key = format!("{}-press", seam.name.replace('_', "-"));
        let name = format!("{}: {what}", mind::subject(&seam.name));
        self.add(Operation {
            pieces: self.pieces_of(&seam.name),
            parts: vec![format!("seam:{}", seam.name)],
            mind,
            after,
            ..pressed(at.stage, &key, &name)
        })
    }

    /// Work of this seam for which the style states no row.
    pub fn unstated(&mut self, seam: &Seam, does: Does, at: &At<'_>, after: &After) -> After {
        let Some(found) = self.unstated_of(&seam.name, does) else {
            return after.clone();
        };
        let key = key_of(&seam.name, does);
        let name = format!(
            "{}: {}",
            mind::subject(&seam.name),
            mind::phrase(&seam.name, does)
        );
        let machine = machine::machine(seam, does, (found.stitch, 1), at.in_tube);
        let operation = Operation {
            pieces: self.pieces_of(&seam.name),
            parts: vec![format!("seam:{}", seam.name)],
            needle_count: needles_in(found.stitch, 1),
            bite: found.stitch.is_overedge().then(overedge_bite),
            sewn: found.sewn,
            not_stated: Some(NotStated {
                what: match does {
                    Does::Neatens => "overedge of the raw edges".to_owned(),
                    _ => "joining row below the topstitching".to_owned(),
                },
                stitch: Some(found.stitch),
                density: Some(found.density),
            }),
            attachment: machine::attachment(self.garment, seam, does, (Length::ZERO, 1)),
            mind: mind::of_unstated(self.garment, seam, does),
            after: after.clone(),
            ..operation(at.stage, (Work::Sewn, machine), &key, &name)
        };
        self.add(operation)
    }

    /// The yarn list's entry for work of a seam that no row states.
    pub fn unstated_of(&self, seam: &str, does: Does) -> Option<Unstated> {
        let title = known::seam_name(seam).map_or(seam, |s| s.title);
        let what = match does {
            Does::Neatens => "overedge",
            _ => "joining row",
        };
        let begins = format!("{title}, {what}");
        let of_seam = |u: &&Unstated| u.what.starts_with(&begins);
        self.consumption.unstated.iter().find(of_seam).cloned()
    }

    /// The trims of what is set.
    pub fn trims_of(&self, fixings: &[usize]) -> Vec<&'g str> {
        let from = |index: &usize| self.garment.fixings.get(*index);
        fixings
            .iter()
            .filter_map(from)
            .map(|f| f.from.as_str())
            .collect()
    }

    /// The yarn list's entries for patch or labels that no row sews on.
    pub fn unstated_trims(&self, trims: &[&str]) -> Vec<Unstated> {
        let of_trim = |u: &&Unstated| {
            trims
                .iter()
                .any(|trim| u.what.starts_with(&format!("{trim}, ")))
        };
        self.consumption
            .unstated
            .iter()
            .filter(of_trim)
            .cloned()
            .collect()
    }

    /// Whether any row of a seam has a place.
    pub fn is_laid(&self, seam: &str) -> bool {
        self.garment.rows.iter().any(|row| row.seam == seam)
    }

    /// Whether an operation sews rows of a seam already.
    pub fn sews(&self, seam: &str) -> bool {
        let needles = || self.operations.iter().flat_map(|o| &o.needles);
        needles().any(|needle| needle.row.is_some() && needle.seam == seam)
    }

    /// Tacks, all at once.
    pub fn bartacks(
        &mut self,
        (stage, key, name): (Stage, &str, &str),
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
        let clamp = aid("clamp of the tack's length");
        let mind = mind.iter().map(|text| (*text).to_owned()).chain([size]);
        let operation = Operation {
            attachment: clamp,
            mind: mind.collect(),
            after,
            usual: Some("bartack"),
            ..operation(stage, (Work::Sewn, "bartacker"), key, name)
        };
        self.tacked(operation, fixings)
    }

    /// Buttonholes, all alike.
    pub fn buttonholes(
        &mut self,
        (stage, key, name): (Stage, &str, &str),
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
            attachment: aid("knife and clamp of the hole's length"),
            mind: says(how).into_iter().chain(cut).collect(),
            after,
            ..operation(stage, (Work::Sewn, "eyelet buttonhole"), key, name)
        };
        self.tacked(operation, fixings)
    }

    /// Sews tacks or buttonholes on the pieces they are on.
    fn tacked(&mut self, operation: Operation, fixings: Vec<usize>) -> After {
        let needles = self.tacks(&fixings);
        let on = |index: &usize| self.garment.fixings.get(*index).map(|f| f.piece);
        let seams = needles
            .iter()
            .filter(|needle| self.seam_of(&needle.seam).is_some());
        let operation = Operation {
            pieces: fixings.iter().filter_map(on).collect(),
            parts: seams
                .map(|needle| format!("seam:{}", needle.seam))
                .collect(),
            sewn: needles.iter().map(|needle| needle.sewn).sum(),
            needle_count: 1,
            needles,
            fixings,
            source: Confidence::FromMemory,
            ..operation
        };
        self.add(operation)
    }

    /// A seam that is there but has no rows at all.
    fn without_rows(&mut self, name: &str, at: &At<'_>) -> After {
        let pieces = self.pieces_of(name);
        if pieces.is_empty() {
            return at.after.clone();
        }
        let key = format!("{}-sew", name.replace('_', "-"));
        let title = format!("{}: sew", mind::subject(name));
        self.add(Operation {
            pieces,
            parts: vec![format!("seam:{name}")],
            mind: says(&["the style states no row for it: ask before sewing"]),
            after: at.after.clone(),
            ..not_stated(at.stage, &key, &title, "every row of this seam")
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
        let of_row = |r: &&crate::StitchRow| r.seam == seam.name && r.number == number;
        let laid = self.garment.rows.iter().find(of_row)?;
        let items = self.consumption.items.iter();
        let items: Vec<_> = items
            .filter(|item| item.seam == seam.name && item.sewn == Sewn::Row(number))
            .collect();
        Some(Needle {
            seam: seam.name.clone(),
            row: Some(number),
            rows: items.iter().filter_map(|item| item.row).collect(),
            stitch: laid.stitch,
            density: Some(laid.density),
            offset: Some(spec.offset),
            yarn: laid.needle.clone(),
            under: laid.under.clone(),
            sewn: items.iter().map(|item| item.sewn_length()).sum(),
            ends: ends_of(self.garment, &seam.name, number),
        })
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

    /// The places in the list of fixings of those that are wanted.
    pub fn fixings(&self, wanted: impl Fn(&Fixing) -> bool) -> Vec<usize> {
        let all = self.garment.fixings.iter().enumerate();
        all.filter(|(_, fixing)| wanted(fixing))
            .map(|(index, _)| index)
            .collect()
    }

    /// Every piece with an edge in a seam, and what it is sewn onto.
    pub fn pieces_of(&self, seam: &str) -> Vec<PieceId> {
        let mut out: Vec<PieceId> = mind::sewn_onto(seam)
            .iter()
            .copied()
            .filter(|piece| self.has(*piece))
            .collect();
        for piece in &self.garment.pattern.pieces {
            let in_seam = |name: &str| match edge_use(piece.id, name) {
                EdgeUse::Sewn(of, _) | EdgeUse::SewnOrFree(of, _) => of == seam,
                EdgeUse::Free(_) => false,
            };
            if piece.edges.iter().any(|edge| in_seam(edge.name)) {
                out.push(piece.id);
            }
        }
        out
    }

    /// The key, or the first of its numbered forms that is not taken.
    fn free_key(&self, key: &str) -> String {
        let taken = |key: &str| self.operations.iter().any(|o| o.key == key);
        if !taken(key) {
            return key.to_owned();
        }
        (2..)
            .map(|n| format!("{key}-{n}"))
            .find(|key| !taken(key))
            .unwrap_or_default()
    }
}

/// Where its name says what is done to a seam, the key need not.
fn key_of(seam: &str, does: Does) -> String {
    let plain = match does {
        Does::Joins => seam == "bag_close",
        Does::Neatens => false,
        Does::Holds(holding) => {
            seam != "band"
                && matches!(
                    holding,
                    Holding::Hem | Holding::Set | Holding::Strip | Holding::Decorate
                )
        }
    };
    let name = seam.replace('_', "-");
    if plain {
        name
    } else {
        format!("{name}-{}", does.key())
    }
}

fn name_of(seam: &Seam, pass: &Pass) -> String {
    let subject = mind::subject(&seam.name);
    let phrase = mind::phrase(&seam.name, pass.does);
    let rows: Vec<String> = pass.rows.iter().map(usize::to_string).collect();
    match &rows[..] {
        _ if seam.rows.len() == 1 => format!("{subject}: {phrase}"),
        [one] => format!("{subject}: {phrase}, row {one}"),
        [most @ .., last] => format!("{subject}: {phrase}, rows {} and {last}", most.join(", ")),
        [] => format!("{subject}: {phrase}"),
    }
}

fn once_each(texts: Vec<String>) -> Vec<String> {
    let mut out: Vec<String> = Vec::new();
    for text in texts {
        if !out.contains(&text) {
            out.push(text);
        }
    }
    out
}
