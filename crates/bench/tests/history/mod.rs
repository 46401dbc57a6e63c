//! Undo after a new start, the list of versions, their names and pictures, and two of them compared.

use std::fs;

use axum::http::StatusCode;
use serde_json::{Value, json};

use crate::house::{Got, House, between, fragment, post};
use crate::house::{KEY, PORT, STYLE};

/// The same collection with a bench started anew, as after a power cut.
fn again(house: &House) -> House {
    House::over(&house.collection())
}

async fn ok(house: &House, address: &str) -> Got {
    let got = house.get(address).await;
    assert_eq!(got.status, StatusCode::OK, "{address}: {}", got.text);
    got
}

async fn name(house: &House, number: u32, name: Option<&str>) -> Value {
    house
        .post("name-version", json!({ "number": number, "name": name }))
        .await
}

#[tokio::test]
async fn undo_goes_on_after_a_new_start_without_limit() {
    let house = House::new();
    let mut texts = vec![house.text()];
    for step in 0..12 {
        let value = format!("{} cm", 62.0 + 0.1 * f64::from(step));
        assert_eq!(
            house.set("chart.thigh.value", &value).await["outcome"],
            "done"
        );
        texts.push(house.text());
    }
    // Two are undone before the bench dies, and wait to be made again.
    house.step("undo").await;
    house.step("undo").await;
    let later = again(&house);
    let page = ok(&later, STYLE).await.text;
    assert!(page.contains("Undo: thigh at size 32x32: 62.8 cm → 62.9 cm"));
    assert!(page.contains("Redo: thigh at size 32x32: 62.9 cm → 63.0 cm"));
    for want in texts.iter().rev().skip(3) {
        let answer = later.step("undo").await;
        assert_eq!(answer["outcome"], "done");
        assert!(
            answer["said"]
                .as_str()
                .unwrap()
                .starts_with("Undone: thigh")
        );
        assert_eq!(&house.text(), want);
    }
    assert_eq!(later.step("undo").await["outcome"], "nothing");
    // And the whole way forward, through another death.
    let last = again(&house);
    for want in texts.iter().skip(1) {
        assert_eq!(last.step("redo").await["outcome"], "done");
        assert_eq!(&house.text(), want);
    }
    assert_eq!(last.step("redo").await["outcome"], "nothing");
}

/// A weft shrinkage, as the page of cloths sends it.
async fn shrinks(house: &House, value: &str) -> Value {
    let page = ok(house, &format!("{STYLE}?panel=cloth")).await.text;
    let held = between(&page, "data-held=\"", "\"");
    let edit =
        json!({ "edit": "set", "path": "cloths.tideline-14.weft_shrinkage", "value": value });
    house
        .post("cloths", json!({ "held": held, "edits": [edit] }))
        .await
}

#[tokio::test]
async fn undo_takes_back_the_last_change_whichever_file_it_was_in() {
    let house = House::new();
    let cloths = || fs::read_to_string(house.collection().join("cloths.toml")).unwrap();
    let first = (house.text(), cloths());
    house.set("cloth.pocketing", "oar-lining").await;
    let chosen = house.text();
    assert_eq!(shrinks(&house, "2 %").await["outcome"], "done");
    let shrunk = cloths();
    // By hand, in a file that no page changes.
    let yarns = house.collection().join("yarns.toml");
    let by_hand = fs::read_to_string(&yarns).unwrap() + "# mine\n";
    let yarns_first = fs::read_to_string(&yarns).unwrap();
    fs::write(&yarns, &by_hand).unwrap();
    let page = ok(&house, STYLE).await.text;
    assert!(
        page.contains("Undo: yarns.toml: changes made outside the bench"),
        "{page:.3000}"
    );
    let listed = between(&page, "<ol reversed>", "</ol>");
    assert_eq!(listed.matches("<li>").count(), 3, "{listed}");
    for _ in 0..2 {
        let later = again(&house);
        assert_eq!(later.step("undo").await["outcome"], "done");
        assert_eq!(fs::read_to_string(&yarns).unwrap(), yarns_first);
        let undone = later.step("undo").await;
        assert!(
            undone["said"]
                .as_str()
                .unwrap()
                .starts_with("Undone: cloths.toml: tideline-14, weft shrinkage"),
            "{}",
            undone["said"]
        );
        assert_eq!((house.text(), cloths()), (chosen.clone(), first.1.clone()));
        assert_eq!(later.step("undo").await["outcome"], "done");
        assert_eq!((house.text(), cloths()), first);
        for _ in 0..3 {
            assert_eq!(house.step("redo").await["outcome"], "done");
        }
        assert_eq!((house.text(), cloths()), (chosen.clone(), shrunk.clone()));
        assert_eq!(fs::read_to_string(&yarns).unwrap(), by_hand);
    }
}

#[tokio::test]
async fn all_changes_of_all_files_are_listed_and_each_can_be_put_back() {
    let house = House::new();
    ok(&house, STYLE).await;
    let yarns = house.collection().join("yarns.toml");
    let first = fs::read_to_string(&yarns).unwrap();
    fs::write(&yarns, first.replace("2500 m", "2600 m")).unwrap();
    house.set("loops.count", "7").await;
    let page = ok(&house, &format!("{STYLE}/history?all=yes")).await.text;
    let at = |words: &str| {
        page.find(words)
            .unwrap_or_else(|| panic!("{words}: {page}"))
    };
    let order = [
        ": 5 → 7",
        "styles/ferryman/style.toml, version 2",
        ">yarns.toml: ",
        "yarns.toml, version 2",
    ]
    .map(at);
    assert!(order.is_sorted(), "{order:?}");
    let put = |file: &str, number: u32| json!({ "file": file, "number": number });
    let done = house.post("put-file-back", put("yarns.toml", 1)).await;
    assert_eq!(done["outcome"], "done", "{done}");
    assert_eq!(fs::read_to_string(&yarns).unwrap(), first);
    let none = house.post("put-file-back", put("yarns.toml", 9)).await;
    assert_eq!(none["outcome"], "refused", "{none}");
    for file in ["../secret.toml", "styles/ferryman/art/patch.svg", ""] {
        let request = post(&format!("{STYLE}/put-file-back"), &put(file, 1));
        assert_eq!(
            house.send(request).await.status,
            StatusCode::NOT_FOUND,
            "{file}"
        );
    }
    house.step("undo").await;
    assert!(fs::read_to_string(&yarns).unwrap().contains("2600 m"));
}

#[tokio::test]
async fn shared_files_that_cannot_be_read_go_back_to_the_last_versions_that_can() {
    let house = House::new();
    ok(&house, STYLE).await;
    let texts = || {
        ["cloths.toml", "trims.toml"]
            .map(|name| fs::read_to_string(house.collection().join(name)).unwrap())
    };
    let before = texts();
    for name in ["cloths.toml", "trims.toml"] {
        fs::write(house.collection().join(name), "[[[").unwrap();
    }
    // A bench that never saw them sound offers the way back.
    let later = again(&house);
    let page = later.get(STYLE).await;
    assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(page.text.contains("/mend"), "{}", page.text);
    let got = later.send(post(&format!("{STYLE}/mend"), &json!({}))).await;
    assert_eq!(got.status, StatusCode::OK, "{}", got.text);
    assert_eq!(texts(), before);
    ok(&later, STYLE).await;
}

#[tokio::test]
async fn a_page_takes_back_only_the_change_it_shows() {
    let house = House::new();
    house.set("loops.count", "7").await;
    let page = ok(&house, STYLE).await.text;
    let shown = between(&page, "data-next=\"", "\"").to_owned();
    // Another tab changes a cloth: the style is the same, but its change is not the last any more.
    shrinks(&house, "2 %").await;
    let before = (
        house.text(),
        fs::read_to_string(house.collection().join("cloths.toml")).unwrap(),
    );
    let revision = house.revision().await;
    let behind = house
        .post("undo", json!({ "revision": revision, "next": shown }))
        .await;
    assert_eq!(behind["outcome"], "behind", "{behind:.300}");
    let after = (
        house.text(),
        fs::read_to_string(house.collection().join("cloths.toml")).unwrap(),
    );
    assert_eq!(before, after);
    assert!(fragment(&behind, "bar").contains("Undo: cloths.toml: tideline-14, weft shrinkage"));
}

#[tokio::test]
async fn a_kept_version_that_is_gone_or_spoilt_is_told_and_nothing_changes() {
    let house = House::new();
    house.set("chart.thigh.value", "63 cm").await;
    let before = house.text();
    let folder = house.file().with_file_name(".revisions");
    let kept = style::list_revisions(folder.parent().unwrap()).unwrap();
    fs::write(&kept[0].path, "format = 1\n").unwrap();
    let answer = house.step("undo").await;
    assert_eq!(answer["outcome"], "refused");
    assert!(
        answer["problems"]
            .to_string()
            .contains("changed after it was kept")
    );
    let page = ok(&house, &format!("{STYLE}/history")).await.text;
    assert!(page.contains("changed after it was kept"));
    fs::remove_file(&kept[0].path).unwrap();
    assert_eq!(house.step("undo").await["outcome"], "nothing");
    assert_eq!(house.text(), before);
    assert_eq!(again(&house).step("undo").await["outcome"], "nothing");
}

#[tokio::test]
async fn the_list_tells_every_version_newest_first() {
    let house = House::new();
    house.set("chart.thigh.value", "63 cm").await;
    house.set("loops.count", "7").await;
    house.step("undo").await;
    let page = ok(&house, &format!("{STYLE}/history")).await.text;
    let at = |words: &str| {
        page.find(words)
            .unwrap_or_else(|| panic!("{words} is not in the list"))
    };
    let order = ["Version 4", "Version 3", "Version 2", "Version 1"].map(at);
    assert!(order.is_sorted(), "{order:?}");
    let row = |number: u32| between(&page, &format!("id=\"version-{number}\""), "</li>");
    let whole = |number: u32| {
        let from = at(&format!("id=\"version-{number}\""));
        let to = page[from..].find("class=\"naming\"").unwrap();
        &page[from..from + to]
    };
    assert!(row(4).contains("In the file now"));
    assert!(row(4).contains("As version 2 was"));
    assert!(whole(4).contains(": 7 → 5"), "{}", whole(4));
    assert!(whole(2).contains("Thigh at size 32x32"));
    assert!(whole(1).contains("first version that is kept"));
    assert!(!whole(4).contains("Put back") && whole(3).contains("Put version 3 back"));
    assert_eq!(page.matches("<time datetime=\"20").count(), 4);
    assert_eq!(page.matches("loading=\"lazy\"").count(), 4);
}

#[tokio::test]
async fn a_version_has_its_own_small_picture() {
    let house = House::new();
    house.set("chart.hem.value", "50 cm").await;
    let page = ok(&house, &format!("{STYLE}/history")).await.text;
    let addresses: Vec<String> = page
        .split("img src=\"")
        .skip(1)
        .map(|part| part.split('"').next().unwrap().replace("&amp;", "&"))
        .collect();
    assert_eq!(addresses.len(), 2);
    let mut pictures = Vec::new();
    for address in &addresses {
        let got = ok(&house, address).await;
        assert_eq!(got.headers["content-type"], "image/svg+xml");
        assert!(got.text.starts_with("<svg") && !got.text.contains("data-layer=\"rows\""));
        // The second time it is the one that was kept.
        assert_eq!(ok(&house, address).await.text, got.text);
        pictures.push(got.text);
    }
    assert_ne!(pictures[0], pictures[1]);
    for wrong in [
        format!("{STYLE}/revision/9/drawing.svg?id=0123456789abcdef"),
        format!("{STYLE}/revision/1/drawing.svg?id=0123456789abcdef"),
    ] {
        assert_eq!(
            house.get(&wrong).await.status,
            StatusCode::NOT_FOUND,
            "{wrong}"
        );
    }
    for wrong in [
        format!("{STYLE}/revision/x/drawing.svg?id=1"),
        format!("{STYLE}/revision/1/drawing.svg"),
    ] {
        assert!(house.get(&wrong).await.status.is_client_error(), "{wrong}");
    }
}

#[tokio::test]
async fn a_version_that_can_no_longer_be_read_says_why_and_shows_no_picture() {
    let house = House::new();
    let answer = house.set("seams.inseam.rows[1].yarn", "rope-80").await;
    assert_eq!(answer["outcome"], "done");
    let gone = "night-80";
    // The yarn of the first version is no longer bought.
    let text = house.text().replace(gone, "rope-80");
    fs::write(house.file(), &text).unwrap();
    let yarns = house.collection().join("yarns.toml");
    let all = fs::read_to_string(&yarns).unwrap();
    let from = all
        .find(&format!("[yarns.{gone}]"))
        .unwrap_or_else(|| all.find(&format!("[{gone}]")).unwrap());
    let to = all[from + 1..]
        .find("\n[")
        .map_or(all.len(), |at| from + 1 + at);
    fs::write(&yarns, format!("{}{}", &all[..from], &all[to..])).unwrap();
    let page = ok(&house, &format!("{STYLE}/history")).await.text;
    assert!(page.contains("This version cannot be read now."));
    let reason = format!("Yarns.toml has no yarn named &quot;{gone}&quot;");
    let unread = page.matches("This version cannot be read now.").count();
    assert_eq!(page.matches(&reason).count(), unread, "each reason once");
    assert_eq!(page.matches("loading=\"lazy\"").count(), 1);
    let compare = ok(&house, &format!("{STYLE}/compare?a=1&b=now")).await.text;
    assert!(compare.contains("Version 1 cannot be read now."));
    let revision = house.revision().await;
    let body = json!({ "revision": revision, "number": 1 });
    assert_eq!(house.post("put-back", body).await["outcome"], "refused");
    assert_eq!(house.text(), text);
}

#[tokio::test]
async fn a_long_history_comes_in_pages() {
    let house = House::new();
    let folder = house.file().parent().unwrap().join(".revisions");
    fs::create_dir(&folder).unwrap();
    for number in 1..=120_u32 {
        let text = house.text().replace(
            "summary = \"Straight",
            &format!("summary = \"Version {number}. Straight"),
        );
        let id = style::RevisionId::of(&text);
        fs::write(folder.join(format!("{number:04}-{id}.toml")), text).unwrap();
    }
    let first = ok(&house, &format!("{STYLE}/history")).await.text;
    assert_eq!(first.matches("<h3>Version ").count(), 50);
    assert!(first.contains("Page 1 of 3") && first.contains("id=\"version-121\""));
    let last = ok(&house, &format!("{STYLE}/history?page=3")).await.text;
    assert_eq!(last.matches("<h3>Version ").count(), 21);
    assert!(last.contains("id=\"version-1\""));
    assert!(last.contains("/style/ferryman/history?page=3&amp;view=front"));
    for query in ["?page=99", "?page=0", "?page=x"] {
        ok(&house, &format!("{STYLE}/history{query}")).await;
    }
    // All of them can be undone.
    assert_eq!(house.step("undo").await["outcome"], "done");
    assert!(house.text().contains("Version 120."));
}

#[tokio::test]
async fn versions_are_named_renamed_and_listed_alone() {
    let house = House::new();
    house.set("chart.thigh.value", "63 cm").await;
    let answer = name(&house, 1, Some("sent to the workroom, first sample")).await;
    assert_eq!(answer["outcome"], "done");
    house.set("chart.thigh.value", "64 cm").await;
    name(&house, 3, Some("<b>second</b>")).await;
    let named = ok(&house, &format!("{STYLE}/history?named=yes")).await.text;
    assert_eq!(named.matches("<h3>Version ").count(), 2);
    assert!(named.contains("sent to the workroom, first sample"));
    assert!(named.contains("&lt;b&gt;second") && !named.contains("<b>second"));
    let taken = name(&house, 2, Some("sent to the workroom, first sample")).await;
    assert_eq!(taken["outcome"], "refused");
    assert!(taken["problems"].to_string().contains("version 1"));
    for wrong in ["", "now", "7"] {
        assert_eq!(name(&house, 2, Some(wrong)).await["outcome"], "refused");
    }
    assert_eq!(name(&house, 9, Some("ninth")).await["outcome"], "refused");
    name(&house, 1, None).await;
    let named = ok(&house, &format!("{STYLE}/history?named=yes")).await.text;
    assert_eq!(named.matches("<h3>Version ").count(), 1);
    // Names are the file's, not the session's.
    let later = again(&house);
    assert!(
        ok(&later, &format!("{STYLE}/history"))
            .await
            .text
            .contains("second")
    );
    let names = house.file().with_file_name(".revisions/names.toml");
    fs::write(&names, "[names").unwrap();
    let page = ok(&house, &format!("{STYLE}/history")).await.text;
    assert!(page.contains("The names cannot be read") && page.contains("names.toml"));
    assert_eq!(name(&house, 2, Some("third")).await["outcome"], "refused");
    assert_eq!(fs::read_to_string(&names).unwrap(), "[names");
}

#[tokio::test]
async fn a_version_put_back_is_a_change_that_can_be_undone() {
    let house = House::new();
    let first = house.text();
    house.set("chart.thigh.value", "63 cm").await;
    house.set("chart.knee.value", "46 cm").await;
    let last = house.text();
    let old = house.revision().await;
    let answer = house
        .post("put-back", json!({ "revision": old, "number": 1 }))
        .await;
    assert_eq!(answer["outcome"], "done");
    let said = answer["said"].as_str().unwrap();
    assert!(said.starts_with("version 1 put back: thigh"), "{said}");
    assert_eq!(house.text(), first);
    let page = ok(&house, STYLE).await.text;
    assert!(page.contains("Undo: version 1 put back"));
    // A page that shows an earlier state does not put anything back.
    let behind = house
        .post("put-back", json!({ "revision": old, "number": 2 }))
        .await;
    assert_eq!(behind["outcome"], "behind");
    house.step("undo").await;
    assert_eq!(house.text(), last);
    let revision = house.revision().await;
    for number in [0, 99] {
        let body = json!({ "revision": revision, "number": number });
        assert_eq!(house.post("put-back", body).await["outcome"], "failed");
    }
    let listed = ok(&house, &format!("{STYLE}/history")).await.text;
    assert_eq!(listed.matches("<h3>Version ").count(), 5);
    let answer = house.get(&format!("{STYLE}/fragments")).await.text;
    let answer: Value = serde_json::from_str(&answer).unwrap();
    assert!(fragment(&answer, "bar").contains("Undo: knee"));
}

#[tokio::test]
async fn two_versions_are_compared_in_one_frame() {
    let house = House::new();
    house.set("chart.hem.value", "50 cm").await;
    name(&house, 1, Some("first sample")).await;
    let page = ok(&house, &format!("{STYLE}/compare?a=1&b=now")).await.text;
    assert!(page.contains("Hem at size 32x32"));
    let frames: Vec<&str> = page
        .split("viewBox=\"")
        .skip(1)
        .map(|part| part.split('"').next().unwrap())
        .collect();
    assert_eq!(frames.len(), 2);
    assert_eq!(frames[0], frames[1]);
    let clips: Vec<&str> = page
        .split("clipPath id=\"")
        .skip(1)
        .map(|part| part.split('"').next().unwrap())
        .collect();
    let once: std::collections::BTreeSet<_> = clips.iter().collect();
    assert_eq!(clips.len(), once.len(), "two clips share a name");
    for figure in [
        "Yarn",
        "Shell, at least",
        "Cloth weight",
        "Thickest",
        "Findings",
    ] {
        assert!(
            page.contains(&format!("<th scope=\"row\">{figure}</th>")),
            "{figure}"
        );
    }
    let over =
        format!("{STYLE}/compare?a=first%20sample&b=2&look=over&view=back&face=inside&size=34x32");
    let over = ok(&house, &over).await.text;
    assert!(over.contains("class=\"upper\"") && over.contains("size 34x32"));
    // Other units are another view of the same two.
    assert!(over.contains("/style/ferryman/history/compare?a=1&amp;b=now&amp;look=over&amp;view=back&amp;face=inside&amp;size=34x32&amp;units=in"));
    let inches = format!("{STYLE}/history/compare?a=1&b=now&units=in");
    assert!(ok(&house, &inches).await.text.contains("16 1/2 in"));
    let same = ok(&house, &format!("{STYLE}/compare?a=1&b=1")).await.text;
    assert!(same.contains("the texts are the same"));
    // Left out, it is the last change that is shown.
    assert!(
        ok(&house, &format!("{STYLE}/compare"))
            .await
            .text
            .contains("Hem at size")
    );
    for wrong in ["a=77&b=now", "a=1&b=nothing", "a=%3Cscript%3E"] {
        let got = house.get(&format!("{STYLE}/compare?{wrong}")).await;
        assert_eq!(got.status, StatusCode::NOT_FOUND, "{wrong}");
    }
}

#[tokio::test]
async fn sizes_that_both_have_are_offered_and_none_is_said() {
    let house = House::new();
    let text = house.text();
    let waists = between(&text, "waists = ", "\n");
    let (lengths, base) = (
        between(&text, "lengths = ", "\n"),
        between(&text, "base = ", "\n"),
    );
    let other = text
        .replace(&format!("waists = {waists}"), "waists = [26]")
        .replace(&format!("base = {base}"), "base = \"26x32\"");
    assert_ne!(other, text, "{lengths}");
    house.revision().await;
    fs::write(house.file(), other).unwrap();
    let page = ok(&house, &format!("{STYLE}/compare?a=1&b=now")).await.text;
    assert!(page.contains("no size in common"));
}

#[tokio::test]
async fn the_history_needs_the_key_and_our_own_pages() {
    let house = House::new();
    for address in ["history", "compare", "revision/1/drawing.svg?id=1"] {
        let request = axum::http::Request::get(format!("{STYLE}/{address}"))
            .header("host", format!("127.0.0.1:{PORT}"));
        let got = house
            .send(request.body(axum::body::Body::empty()).unwrap())
            .await;
        assert_eq!(got.status, StatusCode::FORBIDDEN, "{address}");
    }
    for (action, body) in [
        ("put-back", json!({ "revision": "x", "number": 1 })),
        ("name-version", json!({ "number": 1, "name": "mine" })),
    ] {
        let mut request = post(&format!("{STYLE}/{action}?key={KEY}"), &body);
        request
            .headers_mut()
            .insert("origin", "http://bench.example".parse().unwrap());
        assert_eq!(
            house.send(request).await.status,
            StatusCode::FORBIDDEN,
            "{action}"
        );
        let got = house
            .send(post(
                &format!("{STYLE}/{action}"),
                &json!({ "number": "one" }),
            ))
            .await;
        assert_eq!(got.status, StatusCode::UNPROCESSABLE_ENTITY, "{action}");
    }
}

#[tokio::test]
async fn a_file_that_cannot_be_read_offers_the_last_version_that_can_be() {
    let house = House::new();
    house.set("chart.thigh.value", "63 cm").await;
    let sound = house.text();
    fs::write(house.file(), "[style\nname = 7").unwrap();
    // A bench that never saw it sound.
    let again = again(&house);
    let page = again.get(STYLE).await;
    assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY);
    let form = "data-send=\"/style/ferryman/mend\"";
    assert!(
        page.text.contains("style.toml:1:") && page.text.contains(form),
        "{}",
        page.text
    );
    assert!(again.get("/").await.text.contains(form));
    let mend = || post(&format!("{STYLE}/mend"), &json!({}));
    let got = again.send(mend()).await;
    assert_eq!(got.status, StatusCode::OK, "{}", got.text);
    assert_eq!(house.text(), sound);
    assert_eq!(again.get(STYLE).await.status, StatusCode::OK);
    assert!(!again.get("/").await.text.contains(form));
    // There is nothing to mend any more.
    let got = again.send(mend()).await;
    assert_eq!(got.status, StatusCode::UNPROCESSABLE_ENTITY, "{}", got.text);
    // Where no version can be read, none is offered.
    let other = House::new();
    fs::write(other.file(), "[style\nname = 7").unwrap();
    assert!(!other.get(STYLE).await.text.contains(form));
}
