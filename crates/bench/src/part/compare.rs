//! The shells of the collection beside each other, with what this style would take of each: worked out, not typed.

use maud::{Markup, html};
use style::{Cloth, ClothUse, Edit, Loaded, Size};
use trade::{Length, Mass, System};
use words::Words;

use crate::field::{Show, swatch};
use crate::garment::Worked;

/// More shells than a label compares are not worked out at once.
const MOST: usize = 12;

/// What a pair would take.
struct Taken {
    length: Option<Length>,
    mass: Mass,
}

/// Nothing where there is only one shell to look at.
pub(super) fn render(show: &Show<'_>, worked: &Worked) -> Markup {
    let say = show.say;
    let cloths = show.collection().cloths.iter();
    let shells = cloths.filter(|(_, cloth)| cloth.r#use == ClothUse::Shell);
    let shells: Vec<(&str, &Cloth)> = shells.map(|(key, cloth)| (key.as_str(), cloth)).collect();
    if shells.len() < 2 {
        return html! {
            p.aside { (say.cloth_compared_none()) }
        };
    }
    let now = show.loaded.style.cloth.shell.as_str();
    let size = worked.garment.size;
    html! {
        table.sums.compared {
            thead { tr {
                th scope="col" { (say.cloth_shell()) }
                th.figure scope="col" { (say.cloth_weight()) } th.figure scope="col" { (say.cloth_width()) } th.figure scope="col" { (say.cloth_shrinks()) }
                th.figure scope="col" { (say.cloth_compared_length()) } th.figure scope="col" { (say.cloth_compared_mass()) }
            } }
            tbody {
                @for (key, cloth) in shells.iter().take(MOST) {
                    (row(say, show.system, show.loaded, (key, cloth), (now == *key).then_some(worked), size))
                }
            }
        }
        p.lead { (say.cloth_compared_lead(size)) }
    }
}

fn row(
    say: &'static Words,
    system: System,
    loaded: &Loaded,
    (key, cloth): (&str, &Cloth),
    now: Option<&Worked>,
    size: Size,
) -> Markup {
    let taken = match now {
        Some(worked) => Some(Taken::of(worked)),
        None => instead(loaded, key, size),
    };
    let wash = cutting::ClothWash::of(cloth).shrinkage;
    html! {
        tr {
            th scope="row" { (swatch(cloth.colour)) (cloth.name) @if now.is_some() { small { " " (say.cloth_compared_now()) } } }
            td.figure { (cloth.weight.show(system)) }
            td.figure { (cloth.width.show(system)) }
            td.figure { (format!("{:.1} / {:.1} %", wash.warp.to_percent(), wash.weft.to_percent())) }
            @match taken {
                Some(taken) => {
                    td.figure { @if let Some(length) = taken.length { (length.show_cloth(system)) } }
                    td.figure { (format!("{:.0} g", taken.mass.to_g())) }
                }
                None => td colspan="2" { (say.cloth_compared_not()) },
            }
        }
    }
}

impl Taken {
    fn of(worked: &Worked) -> Self {
        Self {
            length: worked.cut.shell_length,
            mass: worked.cut.mass,
        }
    }
}

/// The style cut from another shell, all else as it is.
fn instead(loaded: &Loaded, key: &str, size: Size) -> Option<Taken> {
    let edit = Edit::set("cloth.shell", key).ok()?;
    let other = loaded.with_edit(&edit).ok()?;
    Some(Taken::of(&Worked::out(&other, size)))
}
