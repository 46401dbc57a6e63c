//! The shells of the collection beside each other, with what this style would take of each: worked out, not typed.

use maud::{Markup, html};
use style::{Cloth, Size};

use crate::part::shells::Shell;
use crate::typed_fields::{Fields, swatch};

/// Nothing where there is only one shell to look at.
pub(super) fn render(show: &Fields<'_>, shells: &[Shell], size: Size) -> Markup {
    let say = show.say;
    if shells.is_empty() {
        return html! {
            p.aside { (say.cloth_compared_none()) }
        };
    }
    html! {
        table.sums.compared {
            thead { tr {
                th scope="col" { (say.cloth_shell()) }
                th.figure scope="col" { (say.cloth_weight()) } th.figure scope="col" { (say.cloth_width()) } th.figure scope="col" { (say.cloth_shrinks()) }
                th.figure scope="col" { (say.cloth_compared_length()) } th.figure scope="col" { (say.cloth_compared_mass()) }
            } }
            tbody {
                @for shell in shells {
                    @if let Some(cloth) = show.collection().cloths.get(&shell.key) { (row(show, shell, cloth)) }
                }
            }
        }
        p.lead { (say.cloth_compared_lead(size)) }
    }
}

fn row(show: &Fields<'_>, shell: &Shell, cloth: &Cloth) -> Markup {
    let (say, system) = (show.say, show.system);
    let wash = cutting::ClothWash::of(cloth).shrinkage;
    html! {
        tr {
            th scope="row" { (swatch(cloth.colour)) (cloth.name) @if shell.now { small { " " (say.cloth_compared_now()) } } }
            td.figure { (cloth.weight.show(system)) }
            td.figure { (cloth.width.show(system)) }
            td.figure { (format!("{:.1} / {:.1} %", wash.warp.to_percent(), wash.weft.to_percent())) }
            @match &shell.taken {
                Some(taken) => {
                    td.figure { @if let Some(length) = taken.length { (length.show_cloth(system)) } }
                    td.figure { (format!("{:.0} g", taken.mass.to_g())) }
                }
                None => td colspan="2" { (say.cloth_compared_not()) },
            }
        }
    }
}
