//! The yarn: what lies where in which colour, size and density, how it reads on the cloth, and how much of it there is.

use maud::{Markup, html};
use sewing::Origin;
use sewing::yarn::{Ground, Group, GroupRow, Item, Role, order, plan};
use trade::{Length, System};
use words::Words;

use crate::addresses;
use crate::consequence::{reach, reach_step};
use crate::garment::Worked;
use crate::sentences::{SLOTS, filled};
use crate::typed_fields::{Fields, capital, swatch};
use crate::viewing::{OnPaper, Panel, Viewing};

/// How many times larger than it is a stitch is shown in the list.
const ENLARGED: f64 = 3.0;
/// A strip of cloth in the list, in millimetres of the page.
const STRIP: (f64, f64) = (30.0, 8.0);

pub(crate) fn render(show: &Fields<'_>, name: &str, worked: &Worked, see: &Viewing) -> Markup {
    let say = show.say;
    // Nothing is counted for a panel that nobody looks at.
    if see.panel != Panel::Yarn {
        return html! { section #yarn hidden {} };
    }
    let plan = plan(&worked.garment);
    let colours = count(plan.groups.iter().map(|group| group.colour));
    let sizes = count(
        plan.groups
            .iter()
            .filter_map(|group| group.size)
            .map(|size| size.to_string()),
    );
    let densities = count(
        plan.groups
            .iter()
            .filter_map(|group| group.density)
            .map(|density| density.figure().show(System::Inch)),
    );
    let to = Viewing {
        plate: Some(OnPaper::YarnPlan),
        ..see.clone()
    };
    html! {
        section #yarn aria-labelledby="yarn-title" {
            h2 #yarn-title { (say.yarn_title()) " " a.plate href=(addresses::style(name, &to)) data-swap { (say.yarn_plate()) } }
            p.lead { (say.say(words::say::YarnLead { colours, densities, enlarged: ENLARGED.to_string(), sizes })) }
            @for (role, title) in [(Role::Needle, say.yarn_needles()), (Role::Under, say.yarn_below())] {
                h3 { (title) }
                ul.yarns {
                    @for group in plan.groups.iter().filter(|group| group.role == role) { (one(show, group)) }
                }
            }
            h3 { (say.yarn_amounts()) }
            (amounts(show, worked, see))
            h3 { (say.yarn_by_seam()) }
            p.lead { (say.yarn_by_seam_lead(worked.garment.size)) }
            (by_seam(show, worked))
            (unstated(show, worked))
        }
    }
}

fn one(show: &Fields<'_>, group: &Group) -> Markup {
    let say = show.say;
    html! {
        li {
            (strip(group))
            div.what {
                p.name {
                    @match group.size { Some(size) => (size.show(show.system)), None => (say.yarn_size_unknown()) }
                    " " (group.colour_name)
                    @if let Some(density) = group.density { span.density { (density.figure().show(show.system)) } }
                    @else { span.density { (say.yarn_tacks()) } }
                }
                p.of { (rows(say, &group.rows)) }
                p.contrast {
                    @for ground in &group.grounds {
                        span { (contrast(show, ground)) }
                    }
                }
            }
            p.figure { (reach(group.yarn, show.system)) }
        }
    }
}

/// How the yarn stands out on a cloth.
fn contrast(show: &Fields<'_>, ground: &Ground) -> String {
    let say = show.say;
    let (cloth, difference) = (cloth(show, &ground.cloth), ground.difference);
    if ground.reverse {
        say.say(words::say::YarnContrastReverse {
            cloth,
            contrast: difference.contrast().key(),
            difference: difference.to_string(),
        })
    } else {
        say.say(words::say::YarnContrast {
            cloth,
            contrast: difference.contrast().key(),
            difference: difference.to_string(),
        })
    }
}

fn cloth<'a>(show: &Fields<'a>, key: &'a str) -> &'a str {
    let cloth = show.collection().cloths.get(key);
    cloth.map_or(key, |cloth| cloth.name.as_str())
}

/// Stitches of the group at their pitch and thickness, on the cloth most of them lie on.
fn strip(group: &Group) -> Markup {
    let (wide, tall) = (STRIP.0 / ENLARGED, STRIP.1 / ENLARGED);
    let pitch = group
        .density
        .map_or(Length::mm(0.4), |d| d.figure().pitch())
        .to_mm();
    let thick = group.diameter.to_mm().clamp(0.05, tall);
    // Between two stitches the thread is in the cloth for about its own thickness.
    let seen = (pitch - thick).max(pitch * 0.3);
    let ground = group.grounds.first().map(|ground| ground.colour);
    let (x, y) = (pitch / 2.0, tall / 2.0);
    html! {
        svg.strip viewBox={ "0 0 " (mm(wide)) " " (mm(tall)) } preserveAspectRatio="none" aria-hidden="true" {
            rect width=(mm(wide)) height=(mm(tall)) fill=[ground] {}
            line x1=(mm(x)) y1=(mm(y)) x2=(mm(wide)) y2=(mm(y)) stroke=(group.colour) stroke-width=(mm(thick))
                stroke-dasharray={ (mm(seen)) " " (mm(pitch - seen)) } {}
        }
    }
}

fn mm(value: f64) -> String {
    format!("{value:.3}")
}

/// The rows of a group, each leading to its seam; those not seen are in brackets.
fn rows(say: &'static Words, rows: &[GroupRow]) -> Markup {
    html! {
        @for (index, row) in rows.iter().enumerate() {
            @if index > 0 { ", " }
            @if row.seen { (linked(say, row)) } @else { (filled(&say.yarn_unseen(SLOTS[0]), &[linked(say, row)])) }
        }
    }
}

/// The words of a row, leading to its seam where it has one.
fn linked(say: &'static Words, row: &GroupRow) -> Markup {
    html! {
        @if let Some(seam) = row.seam.seam() {
            a href="#panel" data-panel="construction" data-part={ "seam:" (seam.code()) } { (say.say(row.said())) }
        } @else { (say.say(row.said())) }
    }
}

/// Yarn by yarn: a pair, and an order of so many pairs of the size shown.
fn amounts(show: &Fields<'_>, worked: &Worked, see: &Viewing) -> Markup {
    let say = show.say;
    let system = show.system;
    let consumption = worked.yarn();
    let used = consumption.used();
    let order = order(&[(&worked.garment, see.pairs)]);
    let pairs = html! {
        input type="text" inputmode="numeric" data-see="pairs" value=(see.pairs) aria-label=(say.yarn_pairs_label()) id="pairs" autocomplete="off";
    };
    html! {
        table.sums {
            thead {
                tr {
                    th scope="col" { (say.yarn_pair(worked.garment.size)) }
                    th.figure scope="col" { (say.yarn_needle()) }
                    th.figure scope="col" { (say.yarn_under()) }
                    th.figure scope="col" { (say.yarn_together()) }
                    th.figure scope="col" {
                        label.pairs { (filled(&say.yarn_pairs(SLOTS[0]), &[pairs])) }
                    }
                    th.figure scope="col" { (say.yarn_cones()) }
                }
            }
            tbody {
                @for (key, used) in consumption.by_yarn() {
                    @let yarn = show.collection().yarns.get(key);
                    @let need = order.yarns.iter().find(|need| need.yarn == key);
                    tr {
                        th scope="row" {
                            @if let Some(yarn) = yarn { (swatch(yarn.colour)) (yarn.name) } @else { (key) }
                        }
                        td.figure { (dashed(used.needle, system)) }
                        td.figure { (dashed(used.under, system)) }
                        td.figure { (reach(used.total(), system)) }
                        td.figure { @if let Some(need) = need { (whole(need.with_waste, system)) } }
                        td.figure { @match need.and_then(|need| need.cones) { Some(cones) => (cones), None => "–" } }
                    }
                }
            }
            tfoot {
                tr {
                    th scope="row" { (say.yarn_all()) }
                    td.figure { (reach(used.needle, system)) }
                    td.figure { (reach(used.under, system)) }
                    td.figure { (reach(used.total(), system)) }
                    td.figure { (whole(order.total(), system)) }
                    td {}
                }
            }
        }
        p.lead { (say.yarn_order(order.waste)) }
    }
}

fn dashed(length: Length, system: System) -> String {
    if length > Length::ZERO {
        reach(length, system)
    } else {
        "–".to_owned()
    }
}

/// Large lengths, without decimals.
fn whole(length: Length, system: System) -> String {
    let words = reach(length, system);
    match words.split_once('.') {
        Some((before, after)) => {
            let unit = after.trim_start_matches(|c: char| c.is_ascii_digit());
            format!("{before}{unit}")
        }
        None => words,
    }
}

/// Seam by seam, with every figure explained.
fn by_seam(show: &Fields<'_>, worked: &Worked) -> Markup {
    let consumption = worked.yarn();
    html! {
        div.by-seam {
            @for (seam, used) in consumption.by_seam() {
                details id={ "yarn-of-" (seam.code()) } {
                    summary {
                        span { (name(show, seam)) }
                        span.figure { (dashed(used.needle, show.system)) }
                        span.figure { (dashed(used.under, show.system)) }
                        span.figure { (reach(used.total(), show.system)) }
                    }
                    ul {
                        @for item in consumption.items.iter().filter(|item| item.seam == *seam) { (explained(show, item)) }
                    }
                }
            }
        }
    }
}

fn explained(show: &Fields<'_>, item: &Item) -> Markup {
    let (say, collection) = (show.say, show.collection());
    html! {
        li { (capital(&say.saying(&item.explain(collection)))) span.source { (capital(&say.saying(&item.source()))) } }
    }
}

/// A seam's or a trim's name.
fn name(show: &Fields<'_>, of: &Origin) -> String {
    let trim = of.trim().and_then(|key| show.collection().trims.get(key));
    match trim {
        Some(trim) => capital(&trim.name),
        None => capital(&show.say.putting(&of.title())),
    }
}

fn unstated(show: &Fields<'_>, worked: &Worked) -> Markup {
    let say = show.say;
    let consumption = worked.yarn();
    if consumption.unstated.is_empty() {
        return html! {};
    }
    html! {
        details.by-seam {
            summary {
                span { (say.yarn_unstated()) }
                span.figure { (say.yarn_about(reach(consumption.unstated_estimate(reach_step(show.system)), show.system))) }
            }
            ul {
                @for work in &consumption.unstated {
                    li {
                        (say.say(words::say::YarnUnstatedWork { length: reach(work.sewn.figure(), show.system), stitch: work.stitch.code(), what: capital(&say.saying(&work.what)) }))
                        span.source { (say.yarn_unstated_about(reach(work.estimate, show.system))) }
                    }
                }
            }
        }
    }
}

/// How many different ones there are.
fn count<T: PartialEq>(all: impl Iterator<Item = T>) -> usize {
    let mut seen: Vec<T> = Vec::new();
    for one in all {
        if !seen.contains(&one) {
            seen.push(one);
        }
    }
    seen.len()
}
