//! Every page of the bench, found as a maker finds it: by the links of the pages before it. A new page is among them by
//! being linked to.

use std::collections::{BTreeMap, VecDeque};

use super::{Got, House};

/// Every address that can be reached from the first page, one for each page, with its answer.
pub async fn walk(house: &House) -> BTreeMap<String, Got> {
    let mut waiting = VecDeque::from(["/".to_owned()]);
    let mut seen: Vec<String> = Vec::new();
    let mut found = BTreeMap::new();
    while let Some(address) = waiting.pop_front() {
        let kind = kind(&address);
        if seen.contains(&kind) {
            continue;
        }
        seen.push(kind);
        let got = house.get(&address).await;
        if is(&got, "text/html") {
            waiting.extend(addresses(&address, &got.text));
        }
        found.insert(address, got);
    }
    found
}

pub fn is(got: &Got, kind: &str) -> bool {
    let said = got.headers.get("content-type");
    said.is_some_and(|said| said.to_str().unwrap().starts_with(kind))
}

/// What makes a page another one, and not the same seen from another side: the path, and for the style's own page the
/// plate or the panel. Other pages only carry these along.
fn kind(address: &str) -> String {
    let (path, query) = address.split_once('?').unwrap_or((address, ""));
    let own = path.starts_with("/style/") && path.matches('/').count() == 2;
    let value = |key: &str| {
        query
            .split('&')
            .find(|pair| pair.split('=').next() == Some(key))
    };
    let telling = match (own, value("plate")) {
        (false, _) => Vec::new(),
        (true, Some(plate)) => vec![plate],
        (true, None) => ["panel", "room"].into_iter().filter_map(value).collect(),
    };
    format!("{path} {}", telling.join(" "))
}

/// Where a page leads: its links, what it loads, and the plates it offers.
fn addresses(page: &str, text: &str) -> Vec<String> {
    let starts = ["href=\"/", "src=\"/", "action=\"/"];
    let mut found: Vec<String> = Vec::new();
    for start in starts {
        let parts = text.split(start).skip(1);
        let ends = parts.filter_map(|part| Some(part.split_once('"')?.0));
        found.extend(ends.map(|end| format!("/{}", end.replace("&amp;", "&"))));
    }
    let path = page.split('?').next().unwrap();
    if let Some((_, plates)) = text.split_once("<select id=\"plate\"") {
        let plates = plates.split("</select>").next().unwrap();
        let keys = plates.split("value=\"").skip(1);
        let keys = keys.filter_map(|part| Some(part.split_once('"')?.0));
        let keys = keys.filter(|key| !key.is_empty());
        found.extend(keys.map(|key| format!("{path}?plate={key}")));
    }
    found
}
