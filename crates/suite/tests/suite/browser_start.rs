//! A maker comes with nothing in a real browser: a style begins by a few answers and ends as a pack, with every click and
//! every field counted; a drawing, a cloth and a pattern of the maker's own come in on the way.

use std::fs;
use std::path::{Path, PathBuf};

use suite::browser::{found, home, in_a_browser, no_complaints, saved, typed, until};
use thirtyfour::prelude::*;

/// What a maker does, counted.
struct Hand<'a> {
    page: &'a WebDriver,
    done: usize,
}

/// From the list of styles to a pack that can be sent.
const MOST: usize = 40;

impl Hand<'_> {
    async fn click(&mut self, css: &str) -> WebDriverResult<()> {
        self.done += 1;
        let what = found(self.page, css).await?;
        what.scroll_into_view().await?;
        what.click().await
    }

    async fn fill(&mut self, css: &str, words: &str) -> WebDriverResult<()> {
        self.done += 1;
        let field = found(self.page, css).await?;
        typed(&field, words).await
    }

    /// A value that is saved when it is left.
    async fn enter(&mut self, css: &str, words: &str) -> WebDriverResult<()> {
        self.fill(css, words).await?;
        let field = found(self.page, css).await?;
        field.send_keys(Key::Enter + "").await
    }

    /// Chooses a file, as one does in the system's own window.
    async fn choose(&mut self, css: &str, file: &Path) -> WebDriverResult<()> {
        self.done += 1;
        let field = found(self.page, css).await?;
        field.send_keys(file.display().to_string()).await
    }
}

fn drawing_of_the_makers_own(beside: &Path) -> PathBuf {
    let file = beside.join("wave.svg");
    let text = "<svg xmlns=\"http://www.w3.org/2000/svg\"><title>mine</title>\
                <path d=\"M 0 90 C 40 70 80 110 120 90\"/></svg>";
    fs::write(&file, text).unwrap();
    file
}

/// Waits until the page of a style hears what is done on it.
async fn awake(page: &WebDriver, address: &str) -> WebDriverResult<()> {
    until(page, &format!("return location.href.includes('{address}')")).await?;
    found(page, "#drawing path.reach").await?;
    found(page, "#bench:not([aria-busy])").await.map(drop)
}

async fn from_nothing_to_a_pack(page: &WebDriver, url: &str, file: &Path) -> WebDriverResult<()> {
    let collection = file.ancestors().nth(3).unwrap();
    let wave = drawing_of_the_makers_own(collection);
    page.goto(url).await?;
    let mut hand = Hand { page, done: 0 };

    // The questions; what begins is drawn anew with each answer.
    hand.click("a[href='/new']").await?;
    found(page, ".foreseen img").await?;
    let shown = "return document.querySelector('.foreseen img').getAttribute('src')";
    let before: String = page.execute(shown, Vec::new()).await?.convert()?;
    hand.fill("[name=name]", "Teal").await?;
    hand.click("label:has([name=figure][value=women])").await?;
    hand.click("label:has([name=fit][value=tapered])").await?;
    hand.click("label:has([name=taste][value=topstitched])")
        .await?;
    let after: String = page.execute(shown, Vec::new()).await?.convert()?;
    assert_ne!(before, after);
    until(
        page,
        "return [...document.querySelectorAll('.foreseen img')].every((image) => image.complete && image.naturalWidth > 0)",
    )
    .await?;
    // The run follows the figure: only the women's waists are there to choose.
    for waist in [24, 25, 27, 29, 31, 32, 34] {
        hand.click(&format!("label:has([name=waists_women][value='{waist}'])"))
            .await?;
    }
    hand.click("button.main").await?;
    awake(page, "/style/teal").await?;
    let style = collection.join("styles/teal/style.toml");
    let begun = fs::read_to_string(&style).unwrap();
    assert!(
        begun.contains("fit = \"tapered\"") && begun.contains("[26, 28, 30]"),
        "{begun:.900}"
    );
    no_complaints(page).await?;

    // A value of the chart, and the maker's own stitching on a pocket.
    hand.enter("input[data-path='chart.thigh.value']", "24 1/2 in")
        .await?;
    saved(&style, "value = \"24 1/2 in\"").await?;
    hand.click("a[href*='panel=details']").await?;
    hand.choose("input[data-art='pockets.back.left.art']", &wave)
        .await?;
    saved(&style, "art = \"art/wave.svg\"").await?;
    let kept = fs::read_to_string(style.with_file_name("art").join("wave.svg")).unwrap();
    assert!(kept.contains("<path") && !kept.contains("mine"), "{kept}");

    // What the cloth really weighs.
    hand.click(".rooms a[href*='panel=cloth']").await?;
    awake(page, "panel=cloth").await?;
    hand.click("#cloth details.stated summary").await?;
    hand.enter("input[data-path='cloths.tideline-14.weight']", "13 oz/yd2")
        .await?;
    saved(&collection.join("cloths.toml"), "weight = \"13 oz/yd2\"").await?;
    found(page, "#bench:not([aria-busy])").await?;
    no_complaints(page).await?;

    // And the pack.
    hand.click(".rooms a[href*='/papers']").await?;
    hand.click("form[data-start='pack'] button").await?;
    found(page, "#pack-work a[download]").await?;
    let told = found(page, "#pack-work").await?.text().await?;
    assert!(told.contains("teal.pdf"), "{told}");
    let size = "return fetch(document.querySelector('#pack-work a[download]').href)\
                .then((answer) => answer.arrayBuffer()).then((bytes) => bytes.byteLength)";
    let bytes: u64 = page.execute(size, Vec::new()).await?.convert()?;
    assert!(bytes > 100_000, "{bytes}");
    assert!(hand.done < MOST, "{} interactions", hand.done);
    no_complaints(page).await
}

async fn a_pattern_comes_in(page: &WebDriver, url: &str, file: &Path) -> WebDriverResult<()> {
    let collection = file.ancestors().nth(3).unwrap();
    let pattern = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/data/harbour.dxf");
    page.goto(url).await?;
    page.goto(&format!("{}bring", home(url))).await?;
    let mut hand = Hand { page, done: 0 };
    // Without a size the file cannot be told; with one it is.
    hand.choose("#pattern", &pattern).await?;
    found(page, "#found .problem").await?;
    hand.enter("[name=size]", "32x32").await?;
    until(
        page,
        "return document.querySelectorAll('#found .piece svg').length === 3",
    )
    .await?;
    hand.fill("[name=name]", "Harbour").await?;
    hand.click("button.main").await?;
    found(page, "#drawing svg").await?;
    let begun = fs::read_to_string(collection.join("styles/harbour/style.toml")).unwrap();
    assert!(begun.contains("[pattern.front]"), "{begun:.300}");

    // A copy by keys alone.
    page.goto(&format!("{}copy/harbour", home(url))).await?;
    let name = found(page, "[name=name]").await?;
    typed(&name, "Harbour Second").await?;
    name.send_keys(Key::Enter + "").await?;
    found(page, "#drawing svg").await?;
    let copy = collection.join("styles/harbour-second");
    assert!(copy.join("pattern/harbour.toml").is_file());
    // What cannot be is said in the form, and what was filled in stays.
    page.goto(&format!("{}copy/harbour", home(url))).await?;
    hand.fill("[name=name]", "Ferryman").await?;
    hand.click("button.main").await?;
    until(
        page,
        "return document.querySelector('.sending .problem').textContent.includes('is there already')",
    )
    .await?;
    let kept = found(page, "[name=name]").await?.prop("value").await?;
    assert_eq!(kept.as_deref(), Some("Ferryman"));
    Ok(())
}

#[test]
fn a_style_and_its_pack_take_few_interactions() {
    in_a_browser(from_nothing_to_a_pack);
}

#[test]
fn a_pattern_of_the_makers_own_becomes_a_style_and_a_copy() {
    in_a_browser(a_pattern_comes_in);
}
