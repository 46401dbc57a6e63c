//! The history in a real browser: versions are named, compared by key and put back; and a page that was open when the
//! bench was killed says so, keeps what was typed, and goes on when the bench is back, undo included.

use std::fs;
use std::path::Path;

use suite::browser::{found, home, in_a_browser, no_complaints, saved, typed, until};
use thirtyfour::prelude::*;

use crate::recover::{bench, free_port};

const KEY: &str = "theSameKeyBothTimes1";
const THIGH: &str = r#"input[data-path="chart.thigh.value"]"#;

async fn type_into(page: &WebDriver, field: &str, words: &str) -> WebDriverResult<()> {
    let field = found(page, field).await?;
    typed(&field, words).await?;
    field.send_keys(Key::Enter + "").await
}

async fn press(page: &WebDriver, key: &str) -> WebDriverResult<()> {
    page.action_chain().send_keys(key).perform().await
}

async fn versions(page: &WebDriver, url: &str, file: &Path) -> WebDriverResult<()> {
    let first = fs::read_to_string(file).unwrap();
    page.goto(url).await?;
    page.goto(&format!("{}style/ferryman", home(url))).await?;
    type_into(page, THIGH, "63 cm").await?;
    saved(file, "63 cm").await?;
    found(page, "#bench:not([aria-busy])").await?;
    page.find(By::LinkText("History")).await?.click().await?;

    // The first version gets a name, by keys only; the list is the same page afterwards, and the focus stays there.
    found(page, "#version-1 img").await?;
    found(page, "#naming-1").await?.click().await?;
    let field = found(page, "#name-1").await?;
    field.send_keys("first sample").await?;
    field.send_keys(Key::Enter + "").await?;
    found(page, "#version-1 .called").await?;
    until(
        page,
        "return document.activeElement.closest('#version-1') !== null",
    )
    .await?;
    until(
        page,
        "return document.getElementById('told').textContent.includes('first sample')",
    )
    .await?;
    // A name that is taken is refused beside its field.
    found(page, "#naming-2").await?.click().await?;
    let field = found(page, "#name-2").await?;
    field.send_keys("first sample").await?;
    field.send_keys(Key::Enter + "").await?;
    found(page, "#version-2 .problem:not([hidden])").await?;
    until(page, "return document.activeElement.id === 'name-2'").await?;
    // Pictures that are looked at are there.
    until(
        page,
        "return [...document.images].every((image) => image.complete && image.naturalWidth > 0)",
    )
    .await?;

    // The two are compared, overlaid, and swapped by key; both drawings have one frame and one size.
    page.find(By::LinkText("Compare with now"))
        .await?
        .click()
        .await?;
    found(page, ".beside figure + figure svg").await?;
    let frames = "const [a, b] = [...document.querySelectorAll('.drawings svg')];\
        const [r, s] = [a, b].map((svg) => svg.getBoundingClientRect());\
        return a.getAttribute('viewBox') === b.getAttribute('viewBox') && r.width === s.width && r.height === s.height";
    until(page, frames).await?;
    press(page, "v").await?;
    found(page, ".stack .upper svg").await?;
    until(page, frames).await?;
    let over = "const [a, b] = [...document.querySelectorAll('.stack svg')].map((svg) => svg.getBoundingClientRect());\
        return a.x === b.x && a.y === b.y && a.width === b.width";
    until(page, over).await?;
    press(page, "x").await?;
    until(
        page,
        "return new URLSearchParams(location.search).get('a') === 'now'",
    )
    .await?;
    no_complaints(page).await?;

    // It is put back, and that is undone on the style's own page.
    page.find(By::LinkText("All versions"))
        .await?
        .click()
        .await?;
    found(page, "#version-1 form[data-send='put-back'] button")
        .await?
        .click()
        .await?;
    found(page, "#version-3.now").await?;
    assert_eq!(fs::read_to_string(file).unwrap(), first);
    page.find(By::LinkText("Fit")).await?.click().await?;
    found(page, "#undo:enabled").await?.click().await?;
    saved(file, "63 cm").await?;
    no_complaints(page).await
}

async fn killed(page: &WebDriver, _: &str, file: &Path) -> WebDriverResult<()> {
    let first = fs::read_to_string(file).unwrap();
    let collection = file.ancestors().nth(3).unwrap();
    let port = free_port();
    let url = format!("http://127.0.0.1:{port}/style/ferryman?key={KEY}");
    let served = bench(collection, port, KEY);
    page.goto(&url).await?;
    type_into(page, THIGH, "63 cm").await?;
    saved(file, "63 cm").await?;
    found(page, "#bench:not([aria-busy])").await?;
    // The bench is killed; the next change finds nobody.
    drop(served);
    type_into(page, THIGH, "64 cm").await?;
    until(
        page,
        "return document.getElementById('notice').textContent.includes('does not answer')",
    )
    .await?;
    found(page, "#measure-thigh .problem:not([hidden])").await?;
    // It comes back; the page notices by itself, and what was typed is still there.
    let served = bench(collection, port, KEY);
    until(
        page,
        "return document.getElementById('notice').textContent.trim() === ''",
    )
    .await?;
    let typed = found(page, THIGH).await?.value().await?;
    assert_eq!(typed.as_deref(), Some("64 cm"));
    assert!(!fs::read_to_string(file).unwrap().contains("64 cm"));
    found(page, THIGH).await?.send_keys(Key::Enter + "").await?;
    saved(file, "64 cm").await?;
    found(page, "#bench:not([aria-busy])").await?;
    // Undo goes back beyond the new start.
    found(page, "#undo:enabled").await?.click().await?;
    saved(file, "63 cm").await?;
    found(page, "#undo:enabled").await?.click().await?;
    saved(file, "24 1/2 in").await?;
    assert_eq!(fs::read_to_string(file).unwrap(), first);
    found(page, "#undo:disabled").await?;
    // Another key is another lock.
    drop(served);
    page.execute("window.dispatchEvent(new Event('focus'))", Vec::new())
        .await?;
    until(
        page,
        "return document.getElementById('notice').textContent.includes('does not answer')",
    )
    .await?;
    let _other = bench(collection, port, "anotherKeyThisTime12");
    until(
        page,
        "return document.getElementById('notice').textContent.includes('another key')",
    )
    .await
}

#[test]
fn versions_are_named_compared_and_put_back() {
    in_a_browser(versions);
}

#[test]
fn a_page_outlives_a_killed_bench() {
    in_a_browser(killed);
}
