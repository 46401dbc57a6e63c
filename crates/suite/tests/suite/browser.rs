//! The bench in a real browser: a maker opens the style, changes the inseam, sees the drawing follow
//! and takes the change back; a corner is dragged, a place moved by key, a measure typed on the drawing, a finding
//! muted. Anything the browser's console calls an error fails the test.

use std::fs;
use std::path::Path;
use std::time::{Duration, Instant};

use serde_json::json;
use suite::browser::{
    PATIENCE, found, in_a_browser, look, no_complaints, resize, saved, typed, until,
};
use thirtyfour::prelude::*;

const INSEAM: &str = r#"input[data-path="chart.inseam.value"]"#;
const OUTSEAM: &str = r#"input[data-path="chart.outseam.value"]"#;

/// What the drawing shows, as text.
async fn drawing(page: &WebDriver) -> WebDriverResult<String> {
    let drawn = page
        .find(By::Css("#drawing svg"))
        .await?
        .outer_html()
        .await?;
    assert!(drawn.contains("<path"), "the drawing is empty");
    Ok(drawn)
}

/// Waits until the drawing is another than `before`.
async fn changed(page: &WebDriver, before: &str) -> WebDriverResult<String> {
    let start = Instant::now();
    loop {
        // An element that was just replaced is no news.
        if let Ok(now) = drawing(page).await
            && now != before
        {
            return Ok(now);
        }
        assert!(start.elapsed() < PATIENCE, "the drawing stays as it was");
        tokio::time::sleep(Duration::from_millis(20)).await;
    }
}

async fn type_into(page: &WebDriver, field: &str, words: &str) -> WebDriverResult<()> {
    let field = page
        .query(By::Css(field))
        .wait(PATIENCE, Duration::from_millis(50))
        .first()
        .await?;
    typed(&field, words).await?;
    field.send_keys(Key::Enter + "").await
}

async fn journey(page: &WebDriver, url: &str, file: &Path) -> WebDriverResult<()> {
    let first = fs::read_to_string(file).unwrap();
    page.goto(url).await?;
    page.query(By::LinkText("Ferryman"))
        .or(By::PartialLinkText("Ferryman"))
        .first()
        .await?
        .click()
        .await?;
    page.query(By::Css(INSEAM))
        .wait(PATIENCE, Duration::from_millis(50))
        .first()
        .await?;
    let before = drawing(page).await?;
    no_complaints(page).await?;

    // Inseam and outseam belong together: two centimetres more of each.
    type_into(page, INSEAM, "83.3 cm").await?;
    let longer = changed(page, &before).await?;
    type_into(page, OUTSEAM, "111.2 cm").await?;
    let longest = changed(page, &longer).await?;
    let saved = fs::read_to_string(file).unwrap();
    assert!(
        saved.contains("83.3 cm") && saved.contains("111.2 cm"),
        "the changes are not saved"
    );
    assert!(
        saved.contains("# to the top of the band"),
        "comments are not kept"
    );

    // The other side follows the same chart.
    page.find(By::LinkText("Back")).await?.click().await?;
    let back = changed(page, &longest).await?;
    page.find(By::LinkText("Front")).await?.click().await?;
    let front = changed(page, &back).await?;

    page.find(By::Id("undo")).await?.click().await?;
    let once = changed(page, &front).await?;
    page.find(By::Id("undo")).await?.click().await?;
    let twice = changed(page, &once).await?;
    assert!(
        twice == before,
        "taken back, the drawing is not what it was"
    );
    assert_eq!(
        fs::read_to_string(file).unwrap(),
        first,
        "taken back, the file is not what it was"
    );

    // What cannot be read is refused beside the field, and nothing changes.
    type_into(page, INSEAM, "long").await?;
    let said = page.query(By::Css("#measure-inseam .problem:not([hidden])"));
    let said = said
        .wait(PATIENCE, Duration::from_millis(50))
        .first()
        .await?
        .text()
        .await?;
    assert!(!said.is_empty());
    assert_eq!(fs::read_to_string(file).unwrap(), first);
    no_complaints(page).await
}

/// Whether what is held tells the width it changes; its words are new with every move.
const HOLDS_THE_WIDTH: &str =
    "return document.querySelector('#holding').textContent.includes('foot width')";

/// The number a style file gives for a value of a section, without its unit.
fn number(file: &Path, section: &str, key: &str) -> f64 {
    let text = fs::read_to_string(file).unwrap();
    let from = &text[text.find(section).unwrap()..];
    let value = &from[from.find(&format!("{key} = \"")).unwrap() + key.len() + 4..];
    let digits: String = value.chars().take_while(|c| !c.is_whitespace()).collect();
    digits.parse().unwrap()
}

async fn on_the_drawing(page: &WebDriver, url: &str, file: &Path) -> WebDriverResult<()> {
    let first = fs::read_to_string(file).unwrap();
    page.goto(url).await?;

    // A corner of the left back pocket is dragged inwards and down: one change of two values.
    look(page, url, "view=back").await?;
    let corner = found(page, "[data-grip='back-pocket-left-outer']").await?;
    let actions = page.action_chain().move_to_element_center(&corner);
    let actions = actions.click_and_hold().move_by_offset(4, 4);
    actions.move_by_offset(3, 3).perform().await?;
    until(page, HOLDS_THE_WIDTH).await?;
    page.action_chain().release().perform().await?;
    let narrower = Instant::now();
    while number(file, "[pockets.back.left]", "foot_width") >= 12.8 {
        assert!(narrower.elapsed() < PATIENCE, "the corner was not moved");
        tokio::time::sleep(Duration::from_millis(20)).await;
    }
    assert!(number(file, "[pockets.back.left]", "outer_drop") > 0.0);
    found(page, "#undo:enabled").await?.click().await?;
    saved(
        file,
        "foot_width = \"12.8 cm\"\nside_length = \"13.8 cm\"\nouter_drop = \"0 mm\"",
    )
    .await?;
    found(page, "#bench:not([aria-busy])").await?;
    assert_eq!(fs::read_to_string(file).unwrap(), first);

    // Escape gives up, and nothing but keys is needed: two steps outwards and Enter.
    let place = "[data-grip='back-pocket-right']";
    let focus = format!("document.querySelector(\"{place}\").focus()");
    page.execute(&focus, Vec::new()).await?;
    let keys = |key: Key| page.action_chain().send_keys(key + "");
    keys(Key::Enter).perform().await?;
    found(page, "#holding span").await?;
    keys(Key::Right).perform().await?;
    keys(Key::Escape).perform().await?;
    assert_eq!(fs::read_to_string(file).unwrap(), first);
    keys(Key::Enter).perform().await?;
    found(page, "#holding span").await?;
    keys(Key::Right).perform().await?;
    keys(Key::Right).perform().await?;
    keys(Key::Enter).perform().await?;
    saved(file, "value = \"5.7 cm\"").await?;
    no_complaints(page).await?;

    // A measure is typed where it is taken.
    look(page, url, "view=front&layers=stitches+measures").await?;
    type_into(page, ".dim input[data-path='chart.knee.value']", "46.5 cm").await?;
    saved(file, "value = \"46.5 cm\"").await?;

    // A finding is muted with its reason, and counted again.
    look(page, url, "panel=findings").await?;
    found(page, "#finding-1 .muting summary")
        .await?
        .click()
        .await?;
    let reason = found(page, "#finding-1 [data-told]").await?;
    reason.send_keys("It is meant to hang.").await?;
    reason.send_keys(Key::Enter + "").await?;
    saved(file, "reason = \"It is meant to hang.\"").await?;
    found(page, "#bench:not([aria-busy])").await?;
    found(page, ".muted button").await?.click().await?;
    let start = Instant::now();
    while fs::read_to_string(file).unwrap().contains("[[muted]]") {
        assert!(start.elapsed() < PATIENCE, "the finding stays muted");
        tokio::time::sleep(Duration::from_millis(20)).await;
    }
    no_complaints(page).await
}

/// Where something lies, in the middle of it, in CSS pixels.
async fn middle(page: &WebDriver, css: &str) -> WebDriverResult<(f64, f64)> {
    let script = "const box = document.querySelector(arguments[0]).getBoundingClientRect();\
                  return [box.x + box.width / 2, box.y + box.height / 2]";
    page.execute(script, vec![css.into()]).await?.convert()
}

/// Fingers come down, move and are lifted.
async fn touch(page: &WebDriver, kind: &str, fingers: &[(f64, f64)]) -> WebDriverResult<()> {
    let points = fingers.iter().enumerate();
    let points: Vec<_> = points
        .map(|(id, (x, y))| json!({ "x": x, "y": y, "id": id }))
        .collect();
    let told = json!({ "type": kind, "touchPoints": points });
    let sent = page.cdp().send_raw("Input.dispatchTouchEvent", told).await;
    sent.map(drop)
}

async fn by_finger(page: &WebDriver, url: &str, file: &Path) -> WebDriverResult<()> {
    page.goto(url).await?;
    resize(page, 820, 1180).await?;
    let fingers = json!({ "enabled": true, "maxTouchPoints": 2 });
    page.cdp()
        .send_raw("Emulation.setTouchEmulationEnabled", fingers)
        .await?;
    look(page, url, "view=back").await?;
    let corner = "[data-grip='back-pocket-left-outer']";
    found(page, corner).await?;
    let shown = "return getComputedStyle(document.querySelector(arguments[0])).opacity";
    let opacity: String = page.execute(shown, vec![corner.into()]).await?.convert()?;
    assert!(
        opacity.parse::<f64>().unwrap() > 0.5,
        "the corner is not to be seen: {opacity}"
    );

    // Two fingers look closer.
    let seen = "return document.querySelector('#drawing svg').viewBox.baseVal.width";
    let before: f64 = page.execute(seen, Vec::new()).await?.convert()?;
    let (x, y) = middle(page, corner).await?;
    touch(
        page,
        "touchStart",
        &[(x - 120.0, y + 150.0), (x + 120.0, y + 150.0)],
    )
    .await?;
    for apart in [130.0, 150.0, 180.0] {
        touch(
            page,
            "touchMove",
            &[(x - apart, y + 150.0), (x + apart, y + 150.0)],
        )
        .await?;
    }
    touch(page, "touchEnd", &[]).await?;
    let after: f64 = page.execute(seen, Vec::new()).await?.convert()?;
    assert!(after < 0.8 * before, "{before} mm and {after} mm are seen");

    // One finger, not quite on the corner, takes it along.
    let (x, y) = middle(page, corner).await?;
    touch(page, "touchStart", &[(x + 9.0, y - 9.0)]).await?;
    for by in [6.0, 12.0, 18.0] {
        touch(page, "touchMove", &[(x + 9.0 + by, y - 9.0 + by)]).await?;
    }
    until(page, HOLDS_THE_WIDTH).await?;
    touch(page, "touchEnd", &[]).await?;
    let start = Instant::now();
    while (number(file, "[pockets.back.left]", "foot_width") - 12.8).abs() < 0.05 {
        assert!(start.elapsed() < PATIENCE, "the corner was not moved");
        tokio::time::sleep(Duration::from_millis(20)).await;
    }
    no_complaints(page).await
}

#[test]
fn a_corner_is_dragged_by_a_finger() {
    in_a_browser(by_finger);
}

/// Every answer comes late, so that there is time to type before it.
const SLOW_ANSWERS: &str = "const quick = fetch; \
    window.fetch = async (...what) => { await new Promise((go) => setTimeout(go, 900)); return quick(...what); }";

async fn typing_on(page: &WebDriver, url: &str, file: &Path) -> WebDriverResult<()> {
    page.goto(url).await?;
    look(page, url, "panel=fit").await?;
    page.execute(SLOW_ANSWERS, Vec::new()).await?;
    let field = &format!("#fit {INSEAM}");
    type_into(page, field, "83.3 cm").await?;
    let field = found(page, field).await?;
    typed(&field, "83.5 cm").await?;
    saved(file, "83.3 cm").await?;
    found(page, "#bench:not([aria-busy])").await?;
    let kept = field.prop("value").await?;
    assert_eq!(
        kept.as_deref(),
        Some("83.5 cm"),
        "the answer took the words"
    );
    field.send_keys(Key::Enter + "").await?;
    saved(file, "83.5 cm").await
}

#[test]
fn what_is_typed_before_the_answer_comes_is_kept() {
    in_a_browser(typing_on);
}

#[test]
fn a_change_of_the_inseam_is_seen_and_taken_back() {
    in_a_browser(journey);
}

#[test]
fn the_drawing_is_dragged_typed_on_and_its_findings_muted() {
    in_a_browser(on_the_drawing);
}
