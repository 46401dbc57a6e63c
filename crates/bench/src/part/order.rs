//! The sewing order: operation after operation, each with its machine, its stitch and its yarn.

use std::collections::BTreeSet;

use maud::{Markup, html};
use sewing::Garment;
use sewing::work::{Needle, NotStated, Operation, Stage, order_notes, sewing_order};
use style::SeamId;
use trade::{Length, MachineId, System, Unwashed};
use words::Words;

use crate::consequence::reach;
use crate::typed_fields::{Fields, capital, swatch};
use crate::viewing::{Panel, Viewing};

const STAGES: [Stage; 7] = [
    Stage::SmallParts,
    Stage::Fronts,
    Stage::Backs,
    Stage::Legs,
    Stage::Band,
    Stage::Hems,
    Stage::Finish,
];

pub(crate) fn render(show: &Fields<'_>, garment: &Garment, see: &Viewing) -> Markup {
    let say = show.say;
    // Nothing is drawn up for a panel that nobody looks at.
    if see.panel != Panel::Order {
        return html! { section #order hidden {} };
    }
    let order = sewing_order(garment);
    let sewn: Unwashed<Length> = order.iter().map(|operation| operation.sewn).sum();
    let sewn = sewn.figure();
    html! {
        section #order aria-labelledby="order-title" {
            h2 #order-title { (say.order_title()) }
            p.lead { (say.say(words::say::OrderLead { machines: machines(&order), operations: order.len(), sewn: reach(sewn, show.system) })) }
            ul { @for note in order_notes(garment) { li { (capital(say.named(note))) } } }
            @for stage in STAGES {
                @let of_stage: Vec<&Operation> = order.iter().filter(|operation| operation.stage == stage).collect();
                @if !of_stage.is_empty() {
                    h3 { (capital(&say.say(stage.said()))) }
                    ol.operations {
                        @for operation in of_stage { (one(show, &order, operation)) }
                    }
                }
            }
        }
    }
}

/// How many different machines and tables the order needs.
fn machines(order: &[Operation]) -> usize {
    let needed: BTreeSet<MachineId> = order.iter().map(|operation| operation.machine).collect();
    needed.len()
}

fn one(show: &Fields<'_>, order: &[Operation], operation: &Operation) -> Markup {
    let say = show.say;
    let name = say.saying(&operation.name);
    let link = operation.parts.iter().find_map(|part| leads_to(part));
    html! {
        li data-about=(operation.parts.join(" ")) id={ "operation-" (operation.key.code()) } value=(operation.number) {
            span.number { (operation.number) }
            div {
                p.head {
                    @match link {
                        Some((part, panel)) => a href="#panel" data-part=(part) data-panel=(panel.word()) { (name) },
                        None => span { (name) },
                    }
                    @if operation.sewn.figure() > Length::ZERO { span.figure { (reach(operation.sewn.figure(), show.system)) } }
                }
                p.machine {
                    (capital(operation.machine.words(say)))
                    @if let Some(gauge) = operation.gauge_words() { ", " (say.say(gauge)) }
                    @if let Some(needle) = operation.needle_words() { ", " (say.saying(&needle)) }
                    @if let Some(attachment) = &operation.attachment { ", " (say.saying(&attachment.what)) }
                }
                @if let Some(missing) = &operation.not_stated {
                    p.missing { (not_stated(say, missing, show.system)) }
                }
                @for needle in &operation.needles { (needle_line(show, needle)) }
                (more(say, order, operation))
            }
        }
    }
}

/// What the style does not say of an operation, and how it is usually done.
fn not_stated(say: &'static Words, missing: &NotStated, system: System) -> String {
    let what = say.saying(&missing.what);
    match (missing.stitch, missing.density) {
        (None, _) => say.order_not_stated(what),
        (Some(stitch), None) => say.say(words::say::OrderNotStatedStitch {
            stitch: stitch.to_string(),
            what,
        }),
        (Some(stitch), Some(density)) => say.say(words::say::OrderNotStatedDensity {
            density: density.show(system),
            stitch: stitch.to_string(),
            what,
        }),
    }
}

/// A part that has a panel, and which.
fn leads_to(part: &str) -> Option<(&str, Panel)> {
    match part.split_once(':')? {
        ("seam", name) => SeamId::of(name).map(|_| (part, Panel::Construction)),
        ("fixing" | "piece", _) => Some((part, Panel::Details)),
        _ => None,
    }
}

/// What the machine is set to, and what is counted on the finished pair where that differs.
fn density(show: &Fields<'_>, needle: &Needle) -> Option<String> {
    let set = needle.set_to?.figure().show(show.system);
    let counted = needle
        .counted
        .map(|counted| counted.figure().show(show.system));
    Some(match counted.filter(|counted| *counted != set) {
        Some(counted) => show.say.say(words::say::OrderDensity { counted, set }),
        None => set,
    })
}

fn needle_line(show: &Fields<'_>, needle: &Needle) -> Markup {
    let yarns = &show.collection().yarns;
    let name = |key: &str| {
        yarns
            .get(key)
            .map_or(key.to_owned(), |yarn| yarn.name.clone())
    };
    html! {
        p.needle {
            span.stitch { (needle.stitch) @if let Some(density) = density(show, needle) { " " (density) } }
            span { (swatch(needle.yarn.colour)) (name(&needle.yarn.key)) }
            span { (swatch(needle.under.colour)) (name(&needle.under.key)) }
            span.ends { @if let Some(ends) = &needle.ends { (show.say.saying(ends)) } }
        }
    }
}

/// What to mind, what has to be done before, and where the way of doing it comes from.
fn more(say: &'static Words, order: &[Operation], operation: &Operation) -> Markup {
    let before = operation.after.iter().filter_map(|key| {
        let earlier = order.iter().find(|earlier| earlier.key == *key)?;
        Some(say.say(words::say::OrderEarlier {
            number: earlier.number,
            operation: say.saying(&earlier.name).to_lowercase(),
        }))
    });
    let before: Vec<String> = before.collect();
    html! {
        details {
            summary { @if operation.mind.is_empty() { (say.order_source()) } @else { (say.order_mind()) } }
            @if !operation.mind.is_empty() {
                ul { @for mind in &operation.mind { li { (capital(&say.saying(mind))) } } }
            }
            p {
                @if !before.is_empty() { (say.order_after(before.join(", "))) " " }
                (capital(&operation.source.to_string()))
            }
        }
    }
}
