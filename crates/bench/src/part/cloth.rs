//! What the pair is cut from: the style's cloths, how each behaves, and what a pair takes of it.

use cutting::ClothWash;
use maud::{Markup, html};
use style::{Cloth, ClothUse, SkewCutting};
use trade::{Share, System};
use words::Words;

use crate::chosen_fields::ChosenField;
use crate::consequence::area;
use crate::garment::{ClothShare, Worked};
use crate::part::cloths_file::ClothsFile;
use crate::part::shells::Shell;
use crate::part::{cloth_values, shells_table};
use crate::typed_fields::{Fields, capital, problem_place, swatch};
use crate::viewing::{Panel, Viewing};
use crate::{addresses, chosen_fields};

/// One use of cloth that the style names a cloth for.
struct Use<'a> {
    path: &'static str,
    title: &'static str,
    how: &'static str,
    /// What holds when none is named, where that may be.
    none: Option<&'static str>,
    bought_for: ClothUse,
    chosen: &'a str,
}

pub(crate) fn render(
    show: &Fields<'_>,
    file: &ClothsFile,
    shells: &[Shell],
    worked: &Worked,
    see: &Viewing,
) -> Markup {
    let say = show.say;
    let doc = &show.loaded.style;
    let open = see.panel == Panel::Cloth;
    let uses = [
        Use {
            path: "cloth.shell",
            title: say.cloth_shell(),
            how: say.cloth_shell_how(),
            none: None,
            bought_for: ClothUse::Shell,
            chosen: &doc.cloth.shell,
        },
        Use {
            path: "cloth.pocketing",
            title: say.cloth_pocketing(),
            how: say.cloth_pocketing_how(),
            none: None,
            bought_for: ClothUse::Pocketing,
            chosen: &doc.cloth.pocketing,
        },
        Use {
            path: "cloth.lining",
            title: say.cloth_lining(),
            how: say.cloth_lining_how(),
            none: Some(say.cloth_lining_none()),
            bought_for: ClothUse::Lining,
            chosen: doc.cloth.lining.as_deref().unwrap_or_default(),
        },
    ];
    let skew = ChosenField::of_words(
        "cutting.skew",
        say.cloth_skew_choice(),
        SkewCutting::WORDS,
        doc.cutting.skew.word(),
    );
    html! {
        section #cloth aria-labelledby="cloth-title" hidden[!open] data-held=(file.held) {
            h2 #cloth-title { (say.cloth_title()) }
            p.lead { (say.cloth_lead(worked.garment.size)) }
            @for one in &uses { (one_use(show, file, worked, one)) }
            section.group data-name=(say.cloth_compared()) {
                h3 { (say.cloth_compared()) }
                @if open { (shells_table::render(show, shells, worked.garment.size)) }
            }
            (more(show, file))
            section.group data-name=(say.cloth_skew_group()) {
                h3 { (say.cloth_skew_title()) }
                div.cells {
                    label.cell data-how=(say.cloth_skew_how()) {
                        span { (say.cloth_skew_cut()) } (skew.render())
                    }
                }
                (problem_place("skew"))
            }
        }
    }
}

/// A cloth like another, and the last change taken back.
fn more(show: &Fields<'_>, file: &ClothsFile) -> Markup {
    let say = show.say;
    let cloths = &show.collection().cloths;
    html! {
        section.group data-name=(say.cloth_collection()) {
            h3 { (say.cloth_collection()) }
            form.add-cloth data-send={ (style_path(show)) "/cloths/add" } {
                input type="hidden" name="held" value=(file.held);
                div.cells {
                    label.cell { span { (say.cloth_new()) } input type="text" name="name" value="" required maxlength="60" autocomplete="off"; }
                    label.cell { span { (say.cloth_new_like()) } select name="like" { @for (key, cloth) in cloths { option value=(key) { (cloth.name) } } } }
                    div.sending { button.small type="submit" { (say.cloth_add()) } p.problem role="alert" hidden {} }
                }
            }
        }
    }
}

/// Where the style this page shows takes its changes.
fn style_path(show: &Fields<'_>) -> String {
    let folder = show.loaded.folder().file_name().unwrap_or_default();
    addresses::style_path(&folder.to_string_lossy())
}

fn one_use(show: &Fields<'_>, file: &ClothsFile, worked: &Worked, one: &Use<'_>) -> Markup {
    let say = show.say;
    let cloth = show.collection().cloths.get(one.chosen);
    let list = chosen_fields::cloth(
        show.collection(),
        one.path,
        &say.cloth_of_use(one.title),
        (one.bought_for, one.none),
        one.chosen,
    );
    let mut shares = worked.cut.of_cloth.iter();
    let taken = shares.find(|share| share.name == one.chosen);
    html! {
        section.group data-name=(one.title) aria-label=(say.cloth_of_use(one.title)) {
            h3 { (one.title) }
            div.cells.one {
                label.cell data-how=(one.how) {
                    span { (one.how) }
                    span.with-swatch { @if let Some(cloth) = cloth { (swatch(cloth.colour)) } (list.render()) }
                }
            }
            @if let Some(cloth) = cloth { (facts(say, show.system, cloth, taken)) }
            @if let Some(cloth) = cloth {
                (cloth_values::render(&Fields { written: &file.written, ..*show }, one.chosen, cloth))
            }
            (problem_place(one.path.trim_start_matches("cloth.")))
        }
    }
}

fn facts(say: &'static Words, system: System, cloth: &Cloth, taken: Option<&ClothShare>) -> Markup {
    let wash = ClothWash::of(cloth);
    let (warp, weft) = (percent(wash.shrinkage.warp), percent(wash.shrinkage.weft));
    let measured = !cloth.wash_test.is_empty() && cloth.warp_shrinkage.is_none();
    let width = cloth.width.show(system);
    html! {
        dl.facts {
            (fact(say.cloth_weight(), &cloth.weight.show(system)))
            (fact(say.cloth_ply(), &format!("{:.2} mm", cloth.thickness.to_mm())))
            (fact(say.cloth_width(), &if cloth.selvedge { say.cloth_width_edge(&width) } else { width }))
            @if !cloth.construction.is_empty() { (fact(say.cloth_weave(), &cloth.construction)) }
            @if !cloth.fibre.is_empty() { (fact(say.cloth_fibre(), &cloth.fibre)) }
            (fact(say.cloth_shrinks(), &if measured { say.say(words::say::ClothShrinksMeasured { warp, weft }) } else { say.say(words::say::ClothShrinksBy { warp, weft }) }))
            @if wash.skew != Share::ZERO { (fact(say.cloth_skew(), &percent(wash.skew))) }
            @if let Some(share) = taken {
                (fact(say.cloth_pair(), &say.say(words::say::ClothPairTakes { area: area(share.area, system), length: (share.area / cloth.width).show(system), mass: format!("{:.0} g", (share.area * cloth.weight).to_g()), pieces: share.pieces })))
            }
        }
        @if let Some(share) = taken {
            @let pieces: Vec<&str> = share.named.iter().map(|piece| piece.words(say)).collect();
            p.aside { (capital(&pieces.join(", ").to_lowercase())) "." }
        } @else {
            p.aside { (say.cloth_not_used()) }
        }
    }
}

fn fact(title: &str, value: &str) -> Markup {
    html! { div { dt { (title) } dd { (value) } } }
}

fn percent(share: Share) -> String {
    format!("{:.1} %", share.to_percent())
}
