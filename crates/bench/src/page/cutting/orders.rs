//! The orders that name the style: which lays cut each, in how many plies, and how much cloth to buy, as estimated.

use std::path::Path;

use maud::{Markup, html};
use spreading::{ClothJob, ClothPlan, CutOrder, plan_cloth};
use style::{Loaded, LoadedOrder};
use trade::System;
use words::Words;

use super::lay::row;
use super::lay_words::pairs;
use crate::answer::placed;
use crate::said::{SLOTS, filled};
use crate::see::See;

pub(super) fn render(say: &'static Words, name: &str, loaded: &Loaded, see: &See) -> Markup {
    let system = see.system(&loaded.collection);
    let files = style::list_orders(&loaded.collection_folder);
    html! {
        (row(say, name, see, "cutting/orders"))
        div.sheets {
            h2 { (say.orders_title()) }
            p.lead { (filled(&say.orders_lead(SLOTS[0]), &[html! { code { "fellwork plan" } }])) }
            @match files {
                Ok(files) => {
                    @let orders: Vec<Markup> = files.iter().filter_map(|file| order(say, name, file, system)).collect();
                    @if orders.is_empty() {
                        p { (filled(&say.orders_none(SLOTS[0]), &[html! { code { "orders" } }])) }
                    }
                    @for order in orders { (order) }
                }
                Err(why) => p.bad { (say.orders_unreadable(why)) },
            }
        }
    }
}

/// One order, where it names the style or cannot be read.
fn order(say: &'static Words, name: &str, file: &Path, system: System) -> Option<Markup> {
    let stem = file.file_name().unwrap_or_default().to_string_lossy();
    let loaded = match style::load_order(file) {
        Ok(loaded) => loaded,
        Err(report) => {
            return Some(html! {
                section {
                    h3 { (stem) }
                    @for words in placed(say, &report) { p.bad { (words) } }
                }
            });
        }
    };
    let lines = || loaded.order.lines.iter().filter(|line| line.style == name);
    lines().next()?;
    Some(html! {
        section {
            h3 { (loaded.order.name) " " small { (say.orders_pairs(stem, loaded.order.pairs())) } }
            @for line in lines() { p.lead { (say.orders_of_style(pairs(say, &line.pairs))) } }
            (plans(say, &loaded, system))
        }
    })
}

fn plans(say: &'static Words, loaded: &LoadedOrder, system: System) -> Markup {
    let cut = match CutOrder::new(loaded) {
        Ok(cut) => cut,
        Err(why) => return html! { p.bad { (why) } },
    };
    let jobs = cut.jobs();
    html! {
        @for job in &jobs {
            @match plan_cloth(job, None) {
                Ok(plan) => (cloth(say, job, &plan, system)),
                Err(why) => p.bad { (say.orders_cloth_wrong(&job.cloth.name, why)) },
            }
        }
    }
}

fn cloth(say: &'static Words, job: &ClothJob<'_>, plan: &ClothPlan, system: System) -> Markup {
    let (each, width) = (plan.each().show_cloth(system), job.cloth.width.show(system));
    let caption = filled(
        &say.orders_cloth(SLOTS[1], SLOTS[0], each, width),
        &[
            html! { strong { (job.cloth.name) } },
            html! { strong { (plan.to_buy.show_cloth(system)) } },
        ],
    );
    html! {
        table.plan {
            caption { (caption) }
            thead { tr {
                th scope="col" { (say.orders_lay()) } th scope="col" { (say.orders_in_a_ply()) } th.figure scope="col" { (say.orders_plies()) }
                th.figure scope="col" { (say.orders_ply()) } th.figure scope="col" { (say.orders_of_cloth()) }
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
