//! Whatever a text of the collection says, it is shown as words and nothing else.

use std::fs;
use std::path::{Path, PathBuf};

use axum::http::StatusCode;
use serde_json::{Value, json};
use style::Edit;
use toml_edit::{Item, TableLike};

use crate::house::walk::{is, walk};
use crate::house::{House, STYLE};

/// What stands in texts, and how it would look had it become markup.
const HOSTILE: &[(&str, &[&str])] = &[
    (
        "A<script>window.ran=1</script><img src=x onerror=window.ran=1><svg onload=ran()>",
        &["<script>window", "<img src=x", "<svg onload"],
    ),
    (
        "B\" onfocus=\"ran()\" autofocus x=\"",
        &["B\" onfocus", "\" autofocus"],
    ),
    ("C' onfocus='ran()' x='", &["='C'", "=\"C'\" onfocus"]),
    (
        "D</textarea></select></title></svg></style>]]>--><script src=//x.example/y.js></script>",
        &["D</", "]]><", "--><", "<script src=//x"],
    ),
    (
        "E&lt;script&gt;ran()&lt;/script&gt;&quot;&#x22;&#34;",
        &["E&lt;script", "&quot;&#x22;", "&#x22;"],
    ),
    (
        "F javascript:ran() ${ran()} {{ran()}} <%= ran %> `ran`",
        &["href=\"F", "<%= ran"],
    ),
    (
        "G\u{5e9}\u{5dc}\u{5d5}\u{5dd} \u{627}\u{644}\u{642}\u{645}\u{627}\u{634} \u{1f9f5} \u{0301}\u{0301}\u{0301}",
        &[],
    ),
    (
        "Hinterbeinlängenmaßbandhalterungsnahtzugabenverstärkungsgarnspulenhalterahmenschraube",
        &[],
    ),
];

/// What no text may hold: it would not print, would break the drawing's file, or turn round what stands beside it.
const UNFIT: &[&str] = &[
    "x\u{0}y",
    "x\u{7}y",
    "x\u{1b}[2Jy",
    "x\ny",
    "x\u{85}y",
    "x\u{202e}y",
    "x\u{2066}y",
    "x\u{fffe}y",
    "x\u{ffff}y",
];

/// The paths of all texts of a TOML file.
fn texts(file: &Path) -> Vec<String> {
    let text = fs::read_to_string(file).unwrap();
    let document: toml_edit::DocumentMut = text.parse().unwrap();
    let mut found = Vec::new();
    table("", document.as_table(), &mut found);
    found
}

fn table(path: &str, table: &dyn TableLike, found: &mut Vec<String>) {
    for (key, item) in table.iter() {
        let path = if path.is_empty() {
            key.to_owned()
        } else {
            format!("{path}.{key}")
        };
        member(path, item, found);
    }
}

fn member(path: String, item: &Item, found: &mut Vec<String>) {
    if item.is_str() {
        found.push(path);
    } else if let Some(inner) = item.as_table_like() {
        table(&path, inner, found);
    } else if let Some(tables) = item.as_array_of_tables() {
        for (at, inner) in tables.iter().enumerate() {
            table(&format!("{path}[{at}]"), inner, found);
        }
    } else if let Some(array) = item.as_array() {
        for (at, value) in array.iter().enumerate() {
            member(format!("{path}[{at}]"), &Item::Value(value.clone()), found);
        }
    }
}

/// Puts a text into every place of every file of a collection that takes it, and gives how many do.
fn spoil(house: &House, text: &str) -> usize {
    let mut taken = 0;
    let names = ["collection.toml", "cloths.toml", "yarns.toml", "trims.toml"];
    let mut files: Vec<PathBuf> = names
        .iter()
        .map(|name| house.collection().join(name))
        .collect();
    files.push(house.file());
    for file in files {
        for path in texts(&file) {
            let before = fs::read_to_string(&file).unwrap();
            let mut document: toml_edit::DocumentMut = before.parse().unwrap();
            *at(&mut document, &path) = toml_edit::value(text);
            fs::write(&file, document.to_string()).unwrap();
            if style::load(&house.file()).is_ok() {
                taken += 1;
            } else {
                fs::write(&file, before).unwrap();
            }
        }
    }
    taken
}

/// What stands at a path.
fn at<'a>(document: &'a mut toml_edit::DocumentMut, path: &str) -> &'a mut Item {
    let mut item = document.as_item_mut();
    for step in path.split('.') {
        let mut parts = step.split('[');
        item = item.get_mut(parts.next().unwrap()).unwrap();
        for index in parts {
            let index: usize = index.trim_end_matches(']').parse().unwrap();
            item = item.get_mut(index).unwrap();
        }
    }
    item
}

/// What an answer shows of a text is only ever its words.
fn only_words(text: &str, markup: &[&str], address: &str) {
    for raw in markup {
        let found = text.find(raw);
        let around = found.map(|at| {
            let from = (0..=at.saturating_sub(80))
                .rev()
                .find(|at| text.is_char_boundary(*at));
            let cut = &text[from.unwrap_or(0)..];
            cut.chars().take(240).collect::<String>()
        });
        assert_eq!(around, None, "{address} lets {raw} through");
    }
}

/// All of it at once that could be markup, as one text.
fn everything() -> (String, Vec<&'static str>) {
    let hostile = || HOSTILE.iter().filter(|(_, markup)| !markup.is_empty());
    let words: Vec<&str> = hostile().map(|(text, _)| *text).collect();
    let markup = hostile().flat_map(|(_, markup)| markup.iter().copied());
    (words.join(" "), markup.collect())
}

#[tokio::test]
async fn markup_in_any_text_is_shown_as_words_everywhere() {
    let (text, markup) = everything();
    let house = House::new();
    let taken = spoil(&house, &text);
    assert!(taken >= 30, "it is taken in {taken} places only");
    let mut shown = 0;
    for (address, got) in walk(&house).await {
        assert_eq!(got.status, StatusCode::OK, "{address}");
        if address.starts_with("/asset/") {
            continue;
        }
        only_words(&got.text, &markup, &address);
        if is(&got, "text/html") {
            shown += usize::from(got.text.contains("A&lt;script&gt;window"));
        }
        if is(&got, "image/svg+xml") {
            sound(&got.text, &address);
        }
    }
    assert!(shown > 5, "{shown} pages show it");
    for view in ["front", "back"] {
        let address = format!("{STYLE}/drawing.svg?view={view}");
        sound(&house.get(&address).await.text, &address);
    }
    // A change, so that what followed from it is said in words too.
    let answer = house.set("style.name", &text.replace('A', "2")).await;
    assert_eq!(answer["outcome"], "done", "{}", answer["problems"]);
    for fragment in answer["fragments"].as_array().unwrap() {
        let html = fragment["html"].as_str().unwrap();
        only_words(html, &markup, fragment["id"].as_str().unwrap());
    }
}

/// A drawing that stands alone is sound XML of marks and words.
fn sound(svg: &str, address: &str) {
    const MARKS: &[&str] = &[
        "svg", "title", "defs", "clipPath", "g", "path", "circle", "rect", "line", "text", "tspan",
        "use",
    ];
    let parsed = roxmltree::Document::parse(svg);
    let parsed = parsed.unwrap_or_else(|error| panic!("{address}: {error}"));
    for node in parsed.descendants().filter(roxmltree::Node::is_element) {
        let name = node.tag_name().name();
        assert!(MARKS.contains(&name), "{address}: {name}");
        for attribute in node.attributes() {
            let name = attribute.name();
            let leads_out = name == "href" && !attribute.value().starts_with('#');
            assert!(!name.starts_with("on") && !leads_out, "{address}: {name}");
        }
    }
}

/// Every text of the style, set through the bench to what is markup: whether it is taken or refused, the answer shows words.
#[tokio::test]
async fn every_refusal_shows_words_too() {
    let house = House::new();
    let (text, markup) = HOSTILE[0];
    let mut revision = house.revision().await;
    let mut refused = 0;
    for path in texts(&house.file()) {
        let edits = json!([{ "edit": "set", "path": path, "value": text }]);
        let body = json!({ "revision": revision, "edits": edits });
        let answer = house.post("edit", body).await;
        for fragment in answer["fragments"].as_array().unwrap() {
            only_words(fragment["html"].as_str().unwrap(), markup, &path);
        }
        revision = answer["revision"].as_str().unwrap().to_owned();
        if answer["outcome"] == "refused" {
            refused += 1;
            assert!(answer["problems"].to_string().len() > 10, "{path}");
        }
    }
    assert!(refused > 50, "{refused}");
}

#[tokio::test]
async fn what_cannot_be_shown_as_words_is_refused() {
    let house = House::new();
    let before = house.text();
    let names = ["style.name", "style.code", "style.summary"];
    for (path, text) in names
        .iter()
        .flat_map(|path| UNFIT.iter().map(move |text| (path, text)))
    {
        let answer = house.set(path, text).await;
        assert_eq!(answer["outcome"], "refused", "{path} = {text:?}");
        let problems = answer["problems"].to_string();
        let quoted = text.chars().filter(|c| !c.is_ascii_alphanumeric());
        assert!(
            quoted.clone().all(|c| c == '[' || !problems.contains(c)),
            "{problems}"
        );
    }
    assert_eq!(house.text(), before);
}

/// A file that came by post with such texts in it is told of in words, and markup in its mistakes is shown as words.
#[tokio::test]
async fn mistakes_of_a_file_are_shown_as_words() {
    for (text, markup) in HOSTILE {
        let house = House::new();
        let edit = Edit::Set {
            path: "style.name".parse().unwrap(),
            value: (*text).into(),
        };
        let spoilt = style::apply(&house.text(), &edit).unwrap();
        let quoted = Value::from(*text).to_string();
        let broken = [
            spoilt.replace("figure = \"men\"", &format!("figure = {quoted}")),
            spoilt.replace(
                "[chart.waist]",
                &format!("[chart.{quoted}]\nvalue = 1\n[chart.waist]"),
            ),
            format!("{spoilt}\n[seams.inseam.{quoted}]\n"),
            format!("{spoilt}\n{text}\n"),
            format!("{spoilt}\n[a{}]\n", ".a".repeat(100_000)),
            format!("{spoilt}\n[a]\na{} = 1\n", ".a".repeat(100_000)),
            format!("{spoilt}\n[a]\na = {}\n", "[".repeat(100_000)),
        ];
        for file in broken {
            fs::write(house.file(), file).unwrap();
            for address in ["/", STYLE] {
                let fresh = House::over(&house.collection());
                let got = fresh.get(address).await;
                assert!(got.text.starts_with("<!DOCTYPE html>"));
                only_words(&got.text, markup, address);
            }
        }
    }
}

/// Why a thing is so is the maker's own, and comes back as words.
#[tokio::test]
async fn a_why_is_words() {
    for (text, markup) in HOSTILE {
        let house = House::new();
        let why = json!({ "about": "part:band", "says": text });
        let edit = json!({ "edit": "insert", "path": "why[0]", "value": why });
        let body = json!({ "revision": house.revision().await, "edits": [edit] });
        let answer = house.post("edit?panel=details", body).await;
        assert_eq!(answer["outcome"], "done", "{text}: {}", answer["problems"]);
        for fragment in answer["fragments"].as_array().unwrap() {
            only_words(fragment["html"].as_str().unwrap(), markup, "why");
        }
    }
}

/// A reason for muting is the maker's own, and comes back as words.
#[tokio::test]
async fn a_reason_is_words() {
    for (text, markup) in HOSTILE {
        let house = House::new();
        let page = house.get(&format!("{STYLE}?panel=findings")).await.text;
        let muting = page.split("data-told=\"reason\"").nth(1).unwrap();
        let edit = muting.split("data-tell=\"").nth(1).unwrap();
        let edit = edit.split('"').next().unwrap().replace("&quot;", "\"");
        let mut edit: Value = serde_json::from_str(&edit).unwrap();
        let muted = if edit["value"].is_array() {
            &mut edit["value"][0]
        } else {
            &mut edit["value"]
        };
        muted["reason"] = json!(text);
        let body = json!({ "revision": house.revision().await, "edits": [edit] });
        let answer = house.post("edit?panel=findings", body).await;
        assert_eq!(answer["outcome"], "done", "{text}: {}", answer["problems"]);
        for fragment in answer["fragments"].as_array().unwrap() {
            only_words(fragment["html"].as_str().unwrap(), markup, "muted");
        }
    }
}
