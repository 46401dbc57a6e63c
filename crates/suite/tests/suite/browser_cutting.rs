//! Long work in a real browser: a lay is looked for, seen to shorten, cancelled, and found to the end of a short search;
//! a pack is made and put away. Keys are enough.

use std::fs;
use std::path::Path;
use std::time::Instant;

use suite::browser::{PATIENCE, found, home, in_a_browser, no_complaints, typed};
use thirtyfour::prelude::*;

/// Waits until an element says something.
async fn says(page: &WebDriver, css: &str, words: &str) -> WebDriverResult<String> {
    let start = Instant::now();
    loop {
        // An element that is just being replaced is no news.
        let text = match page.find(By::Css(css)).await {
            Ok(element) => element.text().await.unwrap_or_default(),
            Err(_) => String::new(),
        };
        if text.contains(words) {
            return Ok(text);
        }
        assert!(
            start.elapsed() < PATIENCE,
            "{css} never says {words}: {text}"
        );
        tokio::time::sleep(std::time::Duration::from_millis(50)).await;
    }
}

async fn fill(page: &WebDriver, name: &str, words: &str) -> WebDriverResult<WebElement> {
    let field = found(page, &format!("#lay-form [name='{name}']")).await?;
    typed(&field, words).await?;
    Ok(field)
}

async fn lay_and_pack(page: &WebDriver, url: &str, file: &Path) -> WebDriverResult<()> {
    let text = fs::read_to_string(file).unwrap();
    page.goto(url).await?;
    page.goto(&format!("{}style/ferryman/cutting", home(url)))
        .await?;
    says(page, "#result", "No lay yet").await?;

    // A long search: the lay so far is drawn, named where it is pointed at, and the form stays as it was filled in.
    let seconds = fill(page, "seconds", "600").await?;
    seconds.send_keys(Key::Enter + "").await?;
    says(page, "#work", "left of 10 min 0 s").await?;
    says(page, "#work", "No lay is shorter than").await?;
    let piece = found(page, "#drawing [data-part='cut:0']").await?;
    page.action_chain()
        .move_to_element_center(&piece)
        .perform()
        .await?;
    says(page, "#pointed", "Front").await?;
    assert_eq!(seconds.prop("value").await?.unwrap(), "600");
    no_complaints(page).await?;

    // Cancelled by key, with what was found.
    let cancel = found(page, "#cancel").await?;
    page.execute("document.getElementById('cancel').focus()", Vec::new())
        .await?;
    assert!(cancel.is_displayed().await?);
    page.action_chain()
        .send_keys(Key::Enter + "")
        .perform()
        .await?;
    says(page, "#result", "cancelled").await?;
    let focused = page
        .execute("return document.activeElement.textContent", Vec::new())
        .await?;
    assert_eq!(focused.json(), "Look for a lay", "the keyboard is lost");
    assert!(file.ancestors().nth(3).unwrap().join("lays").is_dir());

    // A short one to its end. Another cloth is looked up as soon as it is chosen.
    let cloth = found(page, "#lay-form [name='cloth']").await?;
    cloth.send_keys("Oar").await?;
    says(page, "#result", "No lay yet").await?;
    let seconds = fill(page, "seconds", "1").await?;
    seconds.send_keys(Key::Enter + "").await?;
    let done = says(page, "#result", "The search ended").await?;
    assert!(done.contains("2 pieces of 1 pair 32x32"), "{done}");
    found(page, "#result a[href*='oar-lining'][href*='.dxf']").await?;
    no_complaints(page).await?;

    page.find(By::LinkText("Papers")).await?.click().await?;
    found(page, "form[data-start='pack'] button")
        .await?
        .click()
        .await?;
    says(page, "#pack-work", "so far").await?;
    let pack = says(page, "#pack-work", "Measurement chart").await?;
    assert!(pack.contains("ferryman.pdf"), "{pack}");
    let kept = "return fetch(document.querySelector('#pack-work a[download]').href)\
                .then(r => r.arrayBuffer()).then(b => String.fromCharCode(...new Uint8Array(b.slice(0, 5))))";
    let begins = page.execute(kept, Vec::new()).await?;
    assert_eq!(begins.json(), "%PDF-");
    no_complaints(page).await?;

    assert_eq!(
        fs::read_to_string(file).unwrap(),
        text,
        "looking changes the style"
    );
    Ok(())
}

#[test]
fn a_lay_is_looked_for_and_a_pack_is_made_while_the_page_tells() {
    in_a_browser(lay_and_pack);
}
