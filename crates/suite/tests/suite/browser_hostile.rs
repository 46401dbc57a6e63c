//! A collection whose every text is an attack, in a real browser: no script runs, no dialog opens, nothing of it becomes
//! part of a page, and no page is stretched by it.

use std::fs;
use std::path::{Path, PathBuf};

use suite::browser::{
    DESK, every_page, found, in_a_browser_over, look, no_complaints, resize, typed, until,
};
use thirtyfour::prelude::*;
use toml_edit::{DocumentMut, Item};

const HOSTILE: &str = "A<script>window.ran=1</script><img src=x onerror=window.ran=1><svg onload=window.ran=1>\" onfocus=\"window.ran=1\" autofocus x='\" \
     B</textarea></select></title></svg>]]>--><script>alert(1)</script><iframe srcdoc='<script>parent.ran=1</script>'> \
     javascript:alert(1) C<a href=javascript:alert(1)>Hinterbeinlängenmaßbandhalterungsnahtzugabenverstärkungsgarn";

/// Puts the text wherever a file takes one.
fn spoil(file: &Path) {
    let collection = file.ancestors().nth(3).unwrap();
    let names = ["collection.toml", "cloths.toml", "yarns.toml", "trims.toml"];
    let mut files: Vec<PathBuf> = names.iter().map(|name| collection.join(name)).collect();
    files.push(file.to_owned());
    let mut taken = 0;
    for each in files {
        let mut places = Vec::new();
        let document: DocumentMut = fs::read_to_string(&each).unwrap().parse().unwrap();
        texts(document.as_item(), &mut Vec::new(), &mut places);
        for place in places {
            let before = fs::read_to_string(&each).unwrap();
            let mut document: DocumentMut = before.parse().unwrap();
            let mut item = document.as_item_mut();
            for key in &place {
                item = &mut item[key.as_str()];
            }
            *item = toml_edit::value(HOSTILE);
            fs::write(&each, document.to_string()).unwrap();
            match style::load(file) {
                Ok(_) => taken += 1,
                Err(_) => fs::write(&each, before).unwrap(),
            }
        }
    }
    assert!(taken > 20, "{taken}");
}

/// The places of all texts that lie in sections only.
fn texts(item: &Item, place: &mut Vec<String>, found: &mut Vec<Vec<String>>) {
    if item.is_str() {
        found.push(place.clone());
    }
    for (key, inner) in item
        .as_table_like()
        .into_iter()
        .flat_map(|table| table.iter())
    {
        place.push(key.to_owned());
        texts(inner, place, found);
        place.pop();
    }
}

/// What of a page came from a text: scripts of its own, what listens in its markup, frames, addresses that run.
const PLANTED: &str = r"
const all = [...document.querySelectorAll('*')];
const listens = all.filter((each) => [...each.attributes].some(({ name }) => name.startsWith('on') || name === 'srcdoc' || name === 'autofocus'));
const runs = all.filter((each) => ['href', 'src', 'action'].some((name) => /^\s*javascript:/i.test(each.getAttribute(name) ?? '')));
const foreign = all.filter((each) => each.matches('script:not([src]), iframe, object, embed, base, a:not([href])'));
const beyond = (each) => each.getBoundingClientRect().right > innerWidth + 1;
const wider = document.documentElement.scrollWidth > innerWidth ? all.filter((each) => beyond(each) && ![...each.children].some(beyond)) : [];
return [...listens, ...runs, ...foreign, ...wider].map((each) => each.outerHTML.slice(0, 200)).concat(window.ran ? ['a script ran'] : []);";

async fn attacked(page: &WebDriver, url: &str) -> WebDriverResult<()> {
    let pages = every_page(page, url).await?;
    for (width, height) in [(1280, 800), (820, 1180)] {
        resize(page, width, height).await?;
        for address in &pages {
            // Plates are as wide as they are.
            if width < 1000 && address.contains("plate=") {
                continue;
            }
            page.goto(address).await?;
            found(page, "h1").await?;
            // A dialog would make this fail.
            let planted: Vec<String> = page.execute(PLANTED, Vec::new()).await?.convert()?;
            assert!(planted.is_empty(), "{address} at {width}: {planted:#?}");
            no_complaints(page).await?;
        }
    }
    // What comes with a change is put in by script.
    look(page, url, "panel=details").await?;
    let field = found(page, "input[data-path='style.summary']").await?;
    typed(&field, &format!("2{HOSTILE}")).await?;
    field.send_keys(Key::Enter + "").await?;
    until(
        page,
        "return document.querySelector('#history').textContent.includes('2A<script>')",
    )
    .await?;
    look(page, url, "panel=fit").await?;
    let field = found(page, "#fit input[data-path='chart.knee.value']").await?;
    typed(&field, HOSTILE).await?;
    field.send_keys(Key::Enter + "").await?;
    found(page, "#measure-knee .problem:not([hidden])").await?;
    let planted: Vec<String> = page.execute(PLANTED, Vec::new()).await?.convert()?;
    assert!(planted.is_empty(), "{planted:#?}");
    no_complaints(page).await
}

#[test]
fn nothing_that_a_text_says_runs_or_stretches_a_page() {
    in_a_browser_over(DESK, spoil, async |page, url, _| attacked(page, url).await);
}
