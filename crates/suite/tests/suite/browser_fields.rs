//! Fields in a real browser: at rest they show what the file holds, whoever changed it; nothing typed is lost in silence or
//! mixed with what comes from elsewhere; and what is open is marked without being covered.

use std::fs;
use std::path::Path;

use serde_json::Value;
use suite::browser::{
    DESK, PATIENCE, browsing, found, home, in_a_browser, look, no_complaints, saved, typed, until,
};
use suite::picture::Picture;
use thirtyfour::prelude::*;

use crate::recover::{bench, free_port};

/// What happens to fields in an order drawn by chance.
const INTERLEAVINGS: &str = include_str!("../../checks/interleavings.js");
/// Where chance begins, and how often: each round of runs on a page of its own.
const SEED: u32 = 20_261_130;
const ROUNDS: u32 = 10;
const RUNS: u32 = 50;

async fn in_any_order(page: &WebDriver, url: &str, _: &Path) -> WebDriverResult<()> {
    page.goto(url).await?;
    // A loaded machine takes its time.
    page.set_script_timeout(PATIENCE * 5).await?;
    let mut all: [u64; 5] = [0; 5];
    for round in 0..ROUNDS {
        look(page, url, "panel=fit&layers=stitches+measures").await?;
        let given = vec![(SEED + round).into(), RUNS.into()];
        let told: Value = page.execute_async(INTERLEAVINGS, given).await?.convert()?;
        let faults = &told["faults"];
        assert_eq!(faults, &Value::Array(Vec::new()), "seed {}", SEED + round);
        assert_eq!(told["runs"], RUNS);
        let counts = ["taken", "refused", "told", "lost", "elsewhere"];
        for (sum, what) in all.iter_mut().zip(counts) {
            *sum += told["counts"][what].as_u64().unwrap_or(0);
        }
    }
    assert!(all.iter().all(|count| *count > 20), "{all:?}");
    Ok(())
}

#[test]
fn in_any_order_a_field_at_rest_is_the_files_and_nothing_typed_is_lost() {
    in_a_browser(in_any_order);
}

const HEM: &str = "#fit input[data-path='chart.hem.value']";
const HOLDS: &str = "const field = document.querySelector(\"#fit input[data-path='chart.hem.value']\");\
    return field.value === 'WORDS' && !field.hasAttribute('aria-busy')";

/// Waits until the hem's field shows something and is not busy.
async fn shows(page: &WebDriver, words: &str) -> WebDriverResult<()> {
    until(page, &HOLDS.replace("WORDS", words)).await
}

async fn two_pages(page: &WebDriver, url: &str, file: &Path) -> WebDriverResult<()> {
    page.goto(url).await?;
    look(page, url, "panel=fit").await?;
    let one = page.window().await?;
    let other = page.new_window().await?;
    page.switch_to_window(other.clone()).await?;
    look(page, url, "panel=fit").await?;
    // 40 is typed on what the other page is about to change to 43: it is refused, told of, and can be gone on with.
    typed(&found(page, HEM).await?, "40 cm").await?;
    page.switch_to_window(one.clone()).await?;
    let field = found(page, HEM).await?;
    typed(&field, "43 cm").await?;
    field.send_keys(Key::Enter + "").await?;
    saved(file, "value = \"43 cm\"").await?;
    page.switch_to_window(other.clone()).await?;
    found(page, HEM).await?.send_keys(Key::Enter + "").await?;
    shows(page, "43 cm").await?;
    let said = found(page, "#measure-hem .problem:not([hidden])").await?;
    let said = said.text().await?;
    assert!(
        said.contains("“40 cm” was not taken") && said.contains("43"),
        "{said}"
    );
    assert!(fs::read_to_string(file).unwrap().contains("\"43 cm\""));
    found(page, "#measure-hem .problem button")
        .await?
        .click()
        .await?;
    let field = found(page, HEM).await?;
    assert_eq!(field.prop("value").await?.as_deref(), Some("40 cm"));
    field.send_keys(Key::Enter + "").await?;
    saved(file, "value = \"40 cm\"").await?;
    shows(page, "40 cm").await?;
    let place = page.find(By::Css("#measure-hem .problem")).await?;
    assert_eq!(place.attr("hidden").await?.as_deref(), Some("true"));
    // The first page learns of it by itself.
    page.switch_to_window(one).await?;
    shows(page, "40 cm").await?;
    // A line that was typed and sent is followed by another without choosing anything: not by more of the same.
    let field = found(page, HEM).await?;
    typed(&field, "45 cm").await?;
    field.send_keys(Key::Enter + "38 cm").await?;
    field.send_keys(Key::Enter + "").await?;
    saved(file, "value = \"38 cm\"").await?;
    shows(page, "38 cm").await?;
    // An editor's change comes to both.
    let text = fs::read_to_string(file).unwrap();
    fs::write(file, text.replace("\"38 cm\"", "\"39 cm\"")).unwrap();
    shows(page, "39 cm").await?;
    page.switch_to_window(other).await?;
    shows(page, "39 cm").await?;
    no_complaints(page).await
}

#[test]
fn two_pages_of_one_style_show_what_the_file_holds() {
    in_a_browser(two_pages);
}

async fn refused(page: &WebDriver, url: &str, file: &Path) -> WebDriverResult<()> {
    let first = fs::read_to_string(file).unwrap();
    page.goto(url).await?;
    look(page, url, "panel=fit").await?;
    let field = found(page, HEM).await?;
    let held = field.prop("value").await?.unwrap();
    typed(&field, "wide").await?;
    field.send_keys(Key::Enter + "").await?;
    let said = found(page, "#measure-hem .problem:not([hidden])").await?;
    assert!(said.text().await?.contains("“wide” was not taken"));
    shows(page, &held).await?;
    assert_eq!(fs::read_to_string(file).unwrap(), first);
    // Escape is done with it.
    field.send_keys(Key::Escape + "").await?;
    until(
        page,
        "return document.querySelector('#measure-hem .problem').hidden",
    )
    .await?;
    // A reason that is being written for a finding stays where it is, whatever is changed meanwhile.
    look(page, url, "panel=findings").await?;
    found(page, "#finding-1 .muting summary")
        .await?
        .click()
        .await?;
    let reason = found(page, "#finding-1 [data-told]").await?;
    reason.send_keys("It is meant").await?;
    fs::write(file, first.replace("\"24 1/2 in\"", "\"63 cm\"")).unwrap();
    until(
        page,
        "return document.querySelector(\"#fit input[data-path='chart.thigh.value']\").value === '63 cm'",
    )
    .await?;
    let kept = "return [...document.querySelectorAll('#findings [data-told]')].filter((field) => field.value === 'It is meant').length === 1";
    until(page, kept).await?;
    no_complaints(page).await
}

#[test]
fn what_is_refused_is_told_and_the_field_shows_the_file() {
    in_a_browser(refused);
}

const KEY: &str = "anotherStartOfTheSame1";
const SAYS_GONE: &str = "document.body.innerText.includes('does not answer')";

/// On every page that says so, nothing says that the bench does not answer once it does.
#[test]
fn after_a_new_start_nothing_says_that_the_bench_does_not_answer() {
    let folder = tempfile::tempdir().unwrap();
    let collection = folder.path().join("demo");
    style::write_demo(&collection).unwrap();
    let port = free_port();
    let url = format!("http://127.0.0.1:{port}/?key={KEY}");
    let asks = [
        ("style/ferryman", "#undo, #bench", ""),
        (
            "style/ferryman/cutting",
            "#lay-form",
            "document.querySelector('#lay-form button').click()",
        ),
        (
            "style/ferryman/papers",
            "form[data-start]",
            "document.querySelector('form[data-start] button').click()",
        ),
        (
            "style/ferryman/history",
            "#naming-1",
            "document.querySelector('#version-1 form').requestSubmit()",
        ),
        (
            "new",
            "form[data-send]",
            "const form = document.querySelector('form[data-send]'); form.noValidate = true; form.requestSubmit()",
        ),
    ];
    browsing(DESK, async |page| {
        for (address, there, act) in asks {
            let served = bench(&collection, port, KEY);
            if address.ends_with("history") {
                // There is a version to name once something was changed.
                let file = collection.join("styles/ferryman/style.toml");
                let text = fs::read_to_string(&file).unwrap();
                style::save(
                    &style::load(&file).unwrap(),
                    &text.replace("24 1/2 in", "63 cm"),
                )
                .unwrap();
            }
            page.goto(&url).await?;
            page.goto(&format!("{}{address}", home(&url))).await?;
            found(page, there).await?;
            drop(served);
            page.execute(act, Vec::new()).await?;
            until(page, &format!("return {SAYS_GONE}")).await?;
            let _again = bench(&collection, port, KEY);
            until(page, &format!("return !{SAYS_GONE}")).await?;
        }
        Ok(())
    });
}

/// Looks closely at the middle of a part's first line.
const CLOSER: &str = "const line = document.querySelector(arguments[0]);\
    const at = line.getPointAtLength(line.getTotalLength() / 3).matrixTransform(line.getScreenCTM());\
    document.getElementById('drawing').dispatchEvent(new WheelEvent('wheel', { deltaY: -1000, clientX: at.x, clientY: at.y, bubbles: true, cancelable: true }));\
    document.activeElement.blur();";
/// The middle of every stitch that is seen of a part.
const STITCHES: &str = "const board = document.getElementById('drawing').getBoundingClientRect();\
    const found = [];\
    for (const line of document.querySelectorAll(arguments[0])) {\
      const [on, off] = line.getAttribute('stroke-dasharray').split(' ').map(Number);\
      for (let far = on / 2; far < line.getTotalLength(); far += on + off) {\
        const at = line.getPointAtLength(far).matrixTransform(line.getScreenCTM());\
        if (at.x > board.left + 4 && at.x < board.right - 4 && at.y > board.top + 4 && at.y < board.bottom - 60) found.push([Math.floor(at.x), Math.floor(at.y)]);\
      }\
    }\
    return found;";

/// The page as it is seen, and where the stitches of a seam lie on it.
async fn pictured(
    page: &WebDriver,
    url: &str,
    query: &str,
    file: &Path,
) -> WebDriverResult<(Picture, Vec<(usize, usize)>)> {
    const SEAM: &str = "#drawing path[data-part='seam:yoke'][stroke-dasharray]:not(.reach)";
    look(page, url, query).await?;
    page.execute(CLOSER, vec![SEAM.into()]).await?;
    until(
        page,
        "return document.getAnimations().length === 0 && document.fonts.status === 'loaded'",
    )
    .await?;
    let shot = page.screenshot_as_png().await?;
    fs::write(file, shot).unwrap();
    let stitches = page.execute(STITCHES, vec![SEAM.into()]).await?;
    Ok((Picture::read(file), stitches.convert()?))
}

async fn marked(page: &WebDriver, url: &str, file: &Path) -> WebDriverResult<()> {
    let shot = file.with_file_name("shot.png");
    page.goto(url).await?;
    // The same panel, once with the seam open and once with another.
    let open = "view=back&panel=construction&part=seam:yoke";
    let (open, stitches) = pictured(page, url, open, &shot).await?;
    let other = "view=back&panel=construction&part=seam:hem";
    let (other, same) = pictured(page, url, other, &shot).await?;
    assert_eq!(stitches, same);
    assert!(stitches.len() > 40, "{stitches:?}");
    let width = open.width;
    let covered = stitches
        .iter()
        .filter(|(x, y)| open.shades[y * width + x] != other.shades[y * width + x]);
    assert_eq!(
        covered.count(),
        0,
        "stitches look otherwise when they are open"
    );
    // And yet it is marked: something is drawn beside them.
    let beside = |(x, y): &(usize, usize)| {
        (1..8).any(|by| open.shades[(y + by) * width + x] != other.shades[(y + by) * width + x])
    };
    let marked = stitches.iter().filter(|at| beside(at)).count();
    assert!(
        marked * 2 > stitches.len(),
        "{marked} of {}",
        stitches.len()
    );
    Ok(())
}

#[test]
fn what_is_open_is_marked_beside_its_stitches_and_not_over_them() {
    in_a_browser(marked);
}
