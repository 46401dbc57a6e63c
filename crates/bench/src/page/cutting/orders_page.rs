//! The orders that name the style: which lays cut each, in how many plies, and how much cloth to buy, as estimated.

use maud::{Markup, html};
use trade::System;
use words::Words;

use crate::page::cutting::lay_figures::pairs;
use crate::page::cutting::lay_page::row;
use crate::page::cutting::orders::{LaysOfCloth, Order, PlannedCloth};
use crate::sentences::{SLOTS, filled};
use crate::viewing::Viewing;

pub(super) fn render(
    say: &'static Words,
    name: &str,
    orders: &Result<Vec<Order>, String>,
    see: &Viewing,
    system: System,
) -> Markup {
    html! {
        (row(say, name, see, "cutting/orders"))
        div.sheets {
            h2 { (say.orders_title()) }
            p.lead { (filled(&say.orders_lead(SLOTS[0]), &[html! { code { "fellwork plan" } }])) }
            @match orders {
                Ok(orders) => {
                    @if orders.is_empty() {
                        p { (filled(&say.orders_none(SLOTS[0]), &[html! { code { "orders" } }])) }
                    }
                    @for order in orders { (one(say, order, system)) }
                }
                Err(why) => p.bad { (say.orders_unreadable(why)) },
            }
        }
    }
}

fn one(say: &'static Words, order: &Order, system: System) -> Markup {
    html! {
        section {
            @match &order.read {
                Err(mistakes) => {
                    h3 { (order.stem) }
                    @for words in mistakes { p.bad { (words) } }
                }
                Ok(planned) => {
                    h3 { (planned.name) " " small { (say.say(words::say::OrdersPairs { file: &order.stem, pairs: planned.pairs })) } }
                    @for line in &planned.of_style { p.lead { (say.orders_of_style(pairs(say, line))) } }
                    @match &planned.cloths {
                        Err(why) => p.bad { (why) },
                        Ok(cloths) => @for planned in cloths {
                            @match &planned.plan {
                                Ok(lays) => (cloth(say, planned, lays, system)),
                                Err(why) => p.bad { (say.say(words::say::OrdersClothWrong { cloth: &planned.name, why })) },
                            }
                        },
                    }
                }
            }
        }
    }
}

fn cloth(say: &'static Words, job: &PlannedCloth, lays: &LaysOfCloth, system: System) -> Markup {
    let plan = &lays.plan;
    let (each, width) = (plan.each().show_cloth(system), job.width.show(system));
    let caption = filled(
        &say.say(words::say::OrdersCloth {
            buy: SLOTS[1],
            cloth: SLOTS[0],
            each,
            width,
        }),
        &[
            html! { strong { (job.name) } },
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
                @for (index, (lay, in_a_ply)) in plan.lays.iter().zip(&lays.in_a_ply).enumerate() {
                    tr {
                        th scope="row" { (index + 1) }
                        td { (in_a_ply) }
                        td.figure { (lay.planned.plies) }
                        td.figure { (lay.ply.show_cloth(system)) }
                        td.figure { (lay.cloth.show_cloth(system)) }
                    }
                }
            }
        }
    }
}
