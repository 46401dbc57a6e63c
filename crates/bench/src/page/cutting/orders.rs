//! The orders that name the style: which lays cut each, in how many plies, and how much cloth to buy, as estimated.

use std::path::Path;

use maud::{Markup, html};
use spreading::{ClothJob, ClothPlan, CutOrder, plan_cloth};
use style::{Loaded, LoadedOrder};
use trade::System;

use super::lay::row;
use super::lay_words::pairs;
use crate::answer::placed;
use crate::see::See;

pub(super) fn render(name: &str, loaded: &Loaded, see: &See) -> Markup {
    let system = see.system(&loaded.collection);
    let files = style::list_orders(&loaded.collection_folder);
    html! {
        (row(name, see, "cutting/orders"))
        div.sheets {
            h2 { "Orders" }
            p.lead { "Which sizes lie together in how many plies, so that an order is cut exactly with the least cloth. Lengths are estimated here; on the command line " code { "fellwork plan" } " looks for the lays and plans again with what it finds." }
            @match files {
                Ok(files) => {
                    @let orders: Vec<Markup> = files.iter().filter_map(|file| order(name, file, system)).collect();
                    @if orders.is_empty() {
                        p { "No order names this style yet. An order is a file in the collection’s folder " code { "orders" } ": how many pairs of which size, and what the cutting room can do." }
                    }
                    @for order in orders { (order) }
                }
                Err(why) => p.bad { "The folder of orders cannot be read: " (why) },
            }
        }
    }
}

/// One order, where it names the style or cannot be read.
fn order(name: &str, file: &Path, system: System) -> Option<Markup> {
    let stem = file.file_name().unwrap_or_default().to_string_lossy();
    let loaded = match style::load_order(file) {
        Ok(loaded) => loaded,
        Err(report) => {
            return Some(html! {
                section {
                    h3 { (stem) }
                    @for words in placed(&report) { p.bad { (words) } }
                }
            });
        }
    };
    let lines = || loaded.order.lines.iter().filter(|line| line.style == name);
    lines().next()?;
    Some(html! {
        section {
            h3 { (loaded.order.name) " " small { (loaded.order.pairs()) " pairs, " (stem) } }
            @for line in lines() { p.lead { "Of this style " (pairs(&line.pairs)) "." } }
            (plans(&loaded, system))
        }
    })
}

fn plans(loaded: &LoadedOrder, system: System) -> Markup {
    let cut = match CutOrder::new(loaded) {
        Ok(cut) => cut,
        Err(why) => return html! { p.bad { (why) } },
    };
    let jobs = cut.jobs();
    html! {
        @for job in &jobs {
            @match plan_cloth(job, None) {
                Ok(plan) => (cloth(job, &plan, system)),
                Err(why) => p.bad { (job.cloth.name) ": " (why) },
            }
        }
    }
}

fn cloth(job: &ClothJob<'_>, plan: &ClothPlan, system: System) -> Markup {
    html! {
        table.plan {
            caption { strong { (job.cloth.name) } ", " (job.cloth.width.show(system)) " wide: to buy " strong { (plan.to_buy.show_cloth(system)) }
                ", " (plan.each().show_cloth(system)) " a pair" }
            thead { tr {
                th scope="col" { "Lay" } th scope="col" { "In a ply" } th.figure scope="col" { "Plies" }
                th.figure scope="col" { "Length of a ply" } th.figure scope="col" { "Cloth" }
            } }
            tbody {
                @for (index, lay) in plan.lays.iter().enumerate() {
                    tr {
                        th scope="row" { (index + 1) }
                        td { (job.in_words(&lay.planned.pairs)) }
                        td.figure { (lay.planned.plies) }
                        td.figure { (lay.ply.show_cloth(system)) }
                        td.figure { (lay.cloth.show_cloth(system)) }
                    }
                }
            }
        }
    }
}
