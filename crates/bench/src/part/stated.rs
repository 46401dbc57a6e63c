//! What the collection states of a cloth, each value a field that is saved to `cloths.toml`, and what its wash test says.

use cutting::{Shrunk, WashTest, skew_test, wash_test};
use maud::{Markup, html};
use serde_json::json;
use style::{Along, Cloth, ClothUse, WashMark};
use trade::Share;

use crate::choice::{self, Chosen, insert, remove, set};
use crate::field::{Show, swatch};

/// Marks a test begins with, to be measured: as far apart as is usual.
const APART: &str = "50 cm";

/// `show` reads the file of cloths, not the style's.
pub(super) fn render(show: &Show<'_>, key: &str, cloth: &Cloth) -> Markup {
    let at = |what: &str| format!("cloths.{key}.{what}");
    let words = |what: &str, label: &str, usual: Option<&str>| {
        show.words(&at(what), &format!("{}: {label}", cloth.name), usual)
            .render()
    };
    let kind = Chosen::of_words(
        &at("use"),
        &format!("{}: bought for", cloth.name),
        ClothUse::WORDS,
        cloth.r#use.word(),
    );
    let measured = wash_test(&cloth.wash_test).ok();
    let by_test = |share: Option<Share>| match share {
        Some(share) => format!("{} by its test", percent(share)),
        None => "0 %".to_owned(),
    };
    let warp = by_test(measured.as_ref().map(|test| test.warp.mean));
    let weft = by_test(measured.as_ref().map(|test| test.weft.mean));
    let askew = cloth.skew_test;
    let askew = askew.and_then(|square| skew_test(square.rising, square.falling).ok());
    html! {
        details.stated {
            summary { "What it states, and its wash test" }
            p.aside { "Saved to cloths.toml; every style that is cut from it follows." }
            div.cells {
                label.cell { span { "Name" } (words("name", "name", None)) }
                label.cell { span { "Bought for" } (kind.render()) }
                label.cell { span { "Colour of the face" } span.with-swatch { (swatch(cloth.colour)) (words("colour", "colour of the face", None)) } }
                label.cell { span { "Weight" } (words("weight", "weight", None)) }
                label.cell { span { "Thickness of a ply" } (words("thickness", "thickness of a ply", None)) }
                label.cell { span { "Usable width" } (words("width", "usable width", None)) }
                label.cell { span { "Weave" } (words("construction", "weave", Some("not stated"))) }
                label.cell { span { "Fibre" } (words("fibre", "fibre", Some("not stated"))) }
                label.tick { (choice::flag(&at("selvedge"), &format!("{}: has an edge of its own", cloth.name), cloth.selvedge)) "Its own edge to show" }
                label.cell { span { "Shrinks along the warp" } (words("warp_shrinkage", "shrinkage along the warp", Some(&warp))) }
                label.cell { span { "Along the weft" } (words("weft_shrinkage", "shrinkage along the weft", Some(&weft))) }
                label.cell { span { "Skew after the wash" } (words("skew", "skew after the wash", Some(&by_test(askew)))) }
            }
            (washed(show, key, cloth))
            (square(show, key, cloth, askew))
        }
    }
}

/// The marks, what each came to, and what they say together.
fn washed(show: &Show<'_>, key: &str, cloth: &Cloth) -> Markup {
    let marks = &cloth.wash_test;
    let list = format!("cloths.{key}.wash_test");
    let mark = |along: Along| json!({ "along": along.word(), "before": APART, "after": APART });
    html! {
        h4 { "Wash test" }
        @if marks.is_empty() {
            p.aside { "Mark a specimen along warp and weft, better three times each, wash and dry it as the pair will be, and measure again." }
            (choice::button(&[set(&list, json!([mark(Along::Warp), mark(Along::Weft)]))], "Begin a wash test", None))
        } @else {
            table.marks-of-wash {
                thead { tr { th scope="col" { "Along" } th scope="col" { "Before" } th scope="col" { "After" } th.figure scope="col" { "Shrinks" } th scope="col" { span.unseen { "Take out" } } } }
                tbody {
                    @for (number, one) in marks.iter().enumerate() { (row(show, key, cloth, number, one)) }
                }
            }
            div.adding {
                @for (word, along) in Along::WORDS {
                    (choice::button(&[insert(&format!("{list}[{}]", marks.len()), mark(*along))], &format!("Add a distance along the {word}"), None))
                }
                (choice::button(&[remove(&list)], "Take the test out", None))
            }
            @match wash_test(marks) {
                Ok(test) => (result(cloth, &test)),
                Err(wrong) => @for why in wrong { p.problem { (why) } },
            }
        }
    }
}

fn row(show: &Show<'_>, key: &str, cloth: &Cloth, number: usize, mark: &WashMark) -> Markup {
    let at = |what: &str| format!("cloths.{key}.wash_test[{number}].{what}");
    let said = |what: &str| format!("{}, distance {}: {what}", cloth.name, number + 1);
    let along = Chosen::of_words(
        &at("along"),
        &said("along"),
        Along::WORDS,
        mark.along.word(),
    );
    let lost = (mark.before - mark.after) / mark.before;
    html! {
        tr {
            td { (along.render()) }
            td { (show.words(&at("before"), &said("before the wash"), None).render()) }
            td { (show.words(&at("after"), &said("after the wash"), None).render()) }
            td.figure { (percent(Share::ratio(lost))) }
            td { (choice::button(&[remove(&format!("cloths.{key}.wash_test[{number}]"))], "×", Some(&said("take out")))) }
        }
    }
}

/// The means with their spread, what leaves doubts, and where something else is stated.
fn result(cloth: &Cloth, test: &WashTest) -> Markup {
    let found = |along: &str, shrunk: Shrunk, stated: Option<Share>| {
        let stated = stated.filter(|stated| percent(*stated) != percent(shrunk.mean));
        html! {
            div {
                dt { "Along the " (along) }
                dd {
                    strong { (percent(shrunk.mean)) } ", from " (percent(shrunk.least)) " to " (percent(shrunk.most))
                    @if let Some(stated) = stated { "; stated, and cut for: " (percent(stated)) }
                }
            }
        }
    };
    html! {
        dl.facts {
            (found("warp", test.warp, cloth.warp_shrinkage))
            (found("weft", test.weft, cloth.weft_shrinkage))
        }
        @for doubt in &test.doubts { p.doubt { (crate::field::capital(doubt)) "." } }
    }
}

/// The square of the skew test and what it comes to.
fn square(show: &Show<'_>, key: &str, cloth: &Cloth, askew: Option<Share>) -> Markup {
    let at = |what: &str| format!("cloths.{key}.skew_test.{what}");
    let label = |what: &str| format!("{}, skew test: {what}", cloth.name);
    let begin = json!({ "rising": "35.4 cm", "falling": "35.4 cm" });
    html! {
        h4 { "Skew test" }
        @if cloth.skew_test.is_some() {
            div.cells {
                label.cell { span { "Diagonal rising" } (show.words(&at("rising"), &label("rising diagonal"), None).render()) }
                label.cell { span { "Diagonal falling" } (show.words(&at("falling"), &label("falling diagonal"), None).render()) }
                p.aside { @match askew { Some(share) => { "Skew " (percent(share)) }, None => "These diagonals are of no square." } }
            }
            (choice::button(&[remove(&format!("cloths.{key}.skew_test"))], "Take the test out", None))
        } @else {
            p.aside { "A square of 25 cm marked before the wash: its diagonals after it, face up, warp upright." }
            (choice::button(&[set(&format!("cloths.{key}.skew_test"), begin)], "Begin a skew test", None))
        }
    }
}

fn percent(share: Share) -> String {
    format!("{:.1} %", share.to_percent())
}
