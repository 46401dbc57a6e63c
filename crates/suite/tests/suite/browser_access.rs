//! Every page can be used by everybody, as far as a program can judge: axe-core finds nothing to object to, by day and by
//! night, on a desk's screen and on a tablet's, and no page is wider than its window.

use std::fs;
use std::path::Path;

use serde_json::{Value, json};
use suite::browser::{Screen, every_page, found, home, in_a_browser_over, resize};
use suite::outside::axe;
use thirtyfour::prelude::*;

/// The rules of WCAG 2.2 A and AA, and good practice.
const RULES: [&str; 6] = [
    "wcag2a",
    "wcag2aa",
    "wcag21a",
    "wcag21aa",
    "wcag22aa",
    "best-practice",
];

const DESK: (u32, u32) = (1280, 800);
const TABLET: (u32, u32) = (820, 1180);

/// What axe objects to on the page that is open, each with its place.
const JUDGE: &str = r"
const [rules, done] = arguments;
axe.run(document, { runOnly: { type: 'tag', values: rules }, resultTypes: ['violations'] }).then(
  ({ violations }) => done(violations.flatMap(({ id, help, nodes }) => nodes.slice(0, 5).map(({ target, failureSummary }) =>
    `${id} (${help}) ${target.join(' ')}: ${failureSummary}`))),
  (error) => done([String(error)]),
);";

const WIDER: &str = "return Math.max(0, document.documentElement.scrollWidth - innerWidth)";
const OPENED: &str = "for (const each of document.querySelectorAll('details')) each.open = true";

/// A style that has something to tell of itself, and another that cannot be opened but has a version that could be.
fn lived_in(file: &Path) {
    let text = fs::read_to_string(file).unwrap();
    let styles = file.parent().unwrap().parent().unwrap();
    let kept = styles.join("spoilt/.revisions");
    fs::create_dir_all(&kept).unwrap();
    let id = style::RevisionId::of(&text);
    fs::write(kept.join(format!("0001-{id}.toml")), &text).unwrap();
    fs::write(
        styles.join("spoilt/style.toml"),
        text.replace("format = 1", "format = 1\nfit = 3"),
    )
    .unwrap();
}

/// Some changes, so that there is a history.
async fn changes(page: &WebDriver) -> WebDriverResult<()> {
    const CHANGE: &str = r"
const [edits, done] = arguments;
const at = '/style/ferryman';
(async () => {
  for (const edit of edits) {
    const { revision } = await (await fetch(`${at}/fragments`, { headers: { 'x-bench': '1' } })).json();
    const body = JSON.stringify({ revision, edits: [edit] });
    await fetch(`${at}/edit`, { method: 'POST', headers: { 'x-bench': '1', 'content-type': 'application/json' }, body });
  }
  done();
})();";
    let edits = json!([
        { "edit": "set", "path": "chart.knee.value", "value": "17 in" },
        { "edit": "set", "path": "chart.thigh.value", "value": "22 in" },
        { "edit": "set", "path": "seams.inseam.construction", "value": "overlocked" },
    ]);
    page.execute_async(CHANGE, vec![edits]).await?;
    Ok(())
}

pub(crate) async fn judged(page: &WebDriver, script: &str) -> WebDriverResult<Vec<String>> {
    page.execute(script, Vec::new()).await?;
    let mut found: Vec<String> = page
        .execute_async(JUDGE, vec![Value::from(RULES.to_vec())])
        .await?
        .convert()?;
    let wider: f64 = page.execute(WIDER, Vec::new()).await?.convert()?;
    if wider > 0.0 {
        found.push(format!("the page is {wider} px wider than its window"));
    }
    Ok(found)
}

/// Every page on one screen, with what is folded away as it is or opened.
async fn on(
    page: &WebDriver,
    url: &str,
    pages: &[String],
    (width, height): (u32, u32),
    opened: bool,
) -> WebDriverResult<Vec<String>> {
    resize(page, width, height).await?;
    let script = axe().unwrap_or_default();
    let mut wrong = Vec::new();
    for (at, address) in pages.iter().enumerate() {
        // Plates are alike as pages: some of them speak for all.
        if address.contains("plate=") && at % 6 != 0 {
            continue;
        }
        page.goto(address).await?;
        found(page, "h1").await?;
        if opened {
            page.execute(OPENED, Vec::new()).await?;
        }
        let place = address.replace(home(url), "/");
        let objections = judged(page, &script).await?;
        wrong.extend(
            objections
                .into_iter()
                .map(|objection| format!("{place} at {width}: {objection}")),
        );
    }
    Ok(wrong)
}

async fn everything(page: &WebDriver, url: &str, dark: bool) -> WebDriverResult<()> {
    page.goto(url).await?;
    changes(page).await?;
    let mut pages = every_page(page, url).await?;
    pages.push(format!("{}nowhere", home(url)));
    let mut wrong = on(page, url, &pages, DESK, dark).await?;
    if !dark {
        wrong.extend(on(page, url, &pages, TABLET, true).await?);
    }
    assert!(
        wrong.is_empty(),
        "{} objections:\n{}",
        wrong.len(),
        wrong.join("\n")
    );
    Ok(())
}

fn nothing_to_object_to(dark: bool) {
    if axe().is_none() {
        return;
    }
    let screen = Screen {
        width: DESK.0,
        height: DESK.1,
        dark,
    };
    in_a_browser_over(screen, lived_in, async |page, url, _| {
        everything(page, url, dark).await
    });
}

#[test]
fn axe_objects_to_nothing_by_day() {
    nothing_to_object_to(false);
}

#[test]
fn axe_objects_to_nothing_by_night() {
    nothing_to_object_to(true);
}
