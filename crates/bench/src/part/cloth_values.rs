//! What the collection states of a cloth, each value a field that is saved to `cloths.toml`, and what its wash test says.

use cutting::{Shrunk, WashTest, skew_test, wash_test};
use maud::{Markup, html};
use serde_json::json;
use style::{Along, Cloth, ClothUse, WashMark};
use trade::Share;
use words::Words;

use crate::chosen_fields::{self, ChosenField, insert, remove, set};
use crate::sentences::{SLOTS, filled};
use crate::typed_fields::{Fields, swatch};

/// Marks a test begins with, to be measured: as far apart as is usual.
const APART: &str = "50 cm";

/// `show` reads the file of cloths, not the style's.
pub(super) fn render(show: &Fields<'_>, key: &str, cloth: &Cloth) -> Markup {
    let say = show.say;
    let at = |what: &str| format!("cloths.{key}.{what}");
    let words =
        |what: &str, label: &str, usual: Option<&str>| show.words(&at(what), label, usual).render();
    let name = &cloth.name;
    let kind = ChosenField::of_words(
        &at("use"),
        &say.stated_bought_label(name),
        ClothUse::WORDS,
        cloth.r#use.word(),
    );
    let measured = wash_test(&cloth.wash_test).ok();
    let by_test = |share: Option<Share>| match share {
        Some(share) => say.stated_by_test(percent(share)),
        None => "0 %".to_owned(),
    };
    let warp = by_test(measured.as_ref().map(|test| test.warp.mean));
    let weft = by_test(measured.as_ref().map(|test| test.weft.mean));
    let askew = cloth.skew_test;
    let askew = askew.and_then(|square| skew_test(square.rising, square.falling).ok());
    html! {
        details.stated {
            summary { (say.stated_title()) }
            p.aside { (say.stated_saved()) }
            div.cells {
                label.cell { span { (say.stated_name()) } (words("name", &say.stated_name_label(name), None)) }
                label.cell { span { (say.stated_bought()) } (kind.render()) }
                label.cell { span { (say.stated_colour()) } span.with-swatch { (swatch(cloth.colour)) (words("colour", &say.stated_colour_label(name), None)) } }
                label.cell { span { (say.cloth_weight()) } (words("weight", &say.stated_weight_label(name), None)) }
                label.cell { span { (say.stated_thickness()) } (words("thickness", &say.stated_thickness_label(name), None)) }
                label.cell { span { (say.stated_width()) } (words("width", &say.stated_width_label(name), None)) }
                label.cell { span { (say.cloth_weave()) } (words("construction", &say.stated_weave_label(name), Some(say.stated_not()))) }
                label.cell { span { (say.cloth_fibre()) } (words("fibre", &say.stated_fibre_label(name), Some(say.stated_not()))) }
                label.tick { (chosen_fields::flag(&at("selvedge"), &say.stated_edge_label(name), cloth.selvedge)) (say.stated_edge()) }
                label.cell { span { (say.stated_warp()) } (words("warp_shrinkage", &say.stated_warp_label(name), Some(&warp))) }
                label.cell { span { (say.stated_weft()) } (words("weft_shrinkage", &say.stated_weft_label(name), Some(&weft))) }
                label.cell { span { (say.stated_skew()) } (words("skew", &say.stated_skew_label(name), Some(&by_test(askew)))) }
            }
            (washed(show, key, cloth))
            (square(show, key, cloth, askew))
        }
    }
}

/// The marks, what each came to, and what they say together.
fn washed(show: &Fields<'_>, key: &str, cloth: &Cloth) -> Markup {
    let say = show.say;
    let marks = &cloth.wash_test;
    let list = format!("cloths.{key}.wash_test");
    let mark = |along: Along| json!({ "along": along.word(), "before": APART, "after": APART });
    html! {
        h4 { (say.stated_wash()) }
        @if marks.is_empty() {
            p.aside { (say.stated_wash_none()) }
            (chosen_fields::button(&[set(&list, json!([mark(Along::Warp), mark(Along::Weft)]))], say.stated_wash_begin(), None))
        } @else {
            table.marks-of-wash {
                thead { tr { th scope="col" { (say.stated_wash_along()) } th scope="col" { (say.stated_wash_before()) } th scope="col" { (say.stated_wash_after()) } th.figure scope="col" { (say.cloth_shrinks()) } th scope="col" { span.unseen { (say.stated_wash_out()) } } } }
                tbody {
                    @for (number, one) in marks.iter().enumerate() { (row(show, key, cloth, number, one)) }
                }
            }
            div.adding {
                @for (_, along) in Along::WORDS {
                    @let add = match along { Along::Warp => say.stated_wash_add_warp(), Along::Weft => say.stated_wash_add_weft() };
                    (chosen_fields::button(&[insert(&format!("{list}[{}]", marks.len()), mark(*along))], add, None))
                }
                (chosen_fields::button(&[remove(&list)], say.stated_wash_remove(), None))
            }
            @match wash_test(marks) {
                Ok(test) => (result(say, cloth, &test)),
                Err(wrong) => @for why in wrong { p.problem { (say.say(&why)) } },
            }
        }
    }
}

fn row(show: &Fields<'_>, key: &str, cloth: &Cloth, number: usize, mark: &WashMark) -> Markup {
    let say = show.say;
    let at = |what: &str| format!("cloths.{key}.wash_test[{number}].{what}");
    let (name, distance) = (&cloth.name, number + 1);
    let along = ChosenField::of_words(
        &at("along"),
        &say.say(words::say::StatedWashAlongLabel {
            cloth: name,
            distance,
        }),
        Along::WORDS,
        mark.along.word(),
    );
    let lost = (mark.before - mark.after) / mark.before;
    html! {
        tr {
            td { (along.render()) }
            td { (show.words(&at("before"), &say.say(words::say::StatedWashBeforeLabel { cloth: name, distance }), None).render()) }
            td { (show.words(&at("after"), &say.say(words::say::StatedWashAfterLabel { cloth: name, distance }), None).render()) }
            td.figure { (percent(Share::ratio(lost))) }
            td { (chosen_fields::button(&[remove(&format!("cloths.{key}.wash_test[{number}]"))], "×", Some(&say.say(words::say::StatedWashOutLabel { cloth: name, distance })))) }
        }
    }
}

/// The means with their spread, what leaves doubts, and where something else is stated.
fn result(say: &'static Words, cloth: &Cloth, test: &WashTest) -> Markup {
    let found = |along: &str, shrunk: Shrunk, stated: Option<Share>| {
        let stated = stated.filter(|stated| percent(*stated) != percent(shrunk.mean));
        let (least, most) = (percent(shrunk.least), percent(shrunk.most));
        let said = match stated {
            Some(stated) => say.say(words::say::StatedFoundStated {
                least,
                mean: SLOTS[0],
                most,
                stated: percent(stated),
            }),
            None => say.say(words::say::StatedFound {
                least,
                mean: SLOTS[0],
                most,
            }),
        };
        let mean = html! { strong { (percent(shrunk.mean)) } };
        html! { div { dt { (along) } dd { (filled(&said, &[mean])) } } }
    };
    html! {
        dl.facts {
            (found(say.stated_found_warp(), test.warp, cloth.warp_shrinkage))
            (found(say.stated_found_weft(), test.weft, cloth.weft_shrinkage))
        }
        @for doubt in &test.doubts { p.doubt { (crate::typed_fields::capital(&say.saying(doubt))) "." } }
    }
}

/// The square of the skew test and what it comes to.
fn square(show: &Fields<'_>, key: &str, cloth: &Cloth, askew: Option<Share>) -> Markup {
    let say = show.say;
    let at = |what: &str| format!("cloths.{key}.skew_test.{what}");
    let name = &cloth.name;
    let begin = json!({ "rising": "35.4 cm", "falling": "35.4 cm" });
    html! {
        h4 { (say.stated_square()) }
        @if cloth.skew_test.is_some() {
            div.cells {
                label.cell { span { (say.stated_square_rising()) } (show.words(&at("rising"), &say.stated_square_rising_label(name), None).render()) }
                label.cell { span { (say.stated_square_falling()) } (show.words(&at("falling"), &say.stated_square_falling_label(name), None).render()) }
                p.aside { @match askew { Some(share) => (say.stated_square_skew(percent(share))), None => (say.stated_square_not()) } }
            }
            (chosen_fields::button(&[remove(&format!("cloths.{key}.skew_test"))], say.stated_square_remove(), None))
        } @else {
            p.aside { (say.stated_square_none()) }
            (chosen_fields::button(&[set(&format!("cloths.{key}.skew_test"), begin)], say.stated_square_begin(), None))
        }
    }
}

fn percent(share: Share) -> String {
    format!("{:.1} %", share.to_percent())
}
