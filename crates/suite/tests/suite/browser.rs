//! The bench in a real browser: a maker opens the style, changes the inseam, sees the drawing follow
//! and takes the change back; a corner is dragged, a place moved by key, a measure typed on the drawing, a finding
//! muted. Anything the browser's console calls an error fails the test.

use std::fs;
use std::io::{BufRead, BufReader, Read};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

use suite::fellwork::program;
use suite::outside::tool;
use thirtyfour::prelude::*;
use thirtyfour::{ChromiumLikeCapabilities, LoggingPrefsLogLevel};

/// Long enough for a loaded machine; nothing waits this long when all is well.
const PATIENCE: Duration = Duration::from_secs(30);
const INSEAM: &str = r#"input[data-path="chart.inseam.value"]"#;
const OUTSEAM: &str = r#"input[data-path="chart.outseam.value"]"#;

/// A program that ends with the test.
struct Served {
    child: Child,
}

impl Drop for Served {
    fn drop(&mut self) {
        // It may have ended already.
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

/// Starts a program and reads what it prints until `find` finds something.
fn started(command: &mut Command, find: impl Fn(&str) -> Option<String>) -> (Served, String) {
    let mut child = command.stdout(Stdio::piped()).spawn().unwrap();
    let mut lines = BufReader::new(child.stdout.take().unwrap());
    let served = Served { child };
    let mut line = String::new();
    while lines.read_line(&mut line).unwrap() > 0 {
        if let Some(found) = find(&line) {
            // Reading on, so that the program never waits for its pipe.
            std::thread::spawn(move || lines.read_to_end(&mut Vec::new()));
            return (served, found);
        }
        line.clear();
    }
    panic!("{command:?} ended before it was ready");
}

fn bench(folder: &Path) -> (Served, String) {
    let mut command = Command::new(program());
    command
        .arg("bench")
        .arg(folder)
        .args(["--port", "0", "--no-open"]);
    started(command.stderr(Stdio::null()), |line| {
        line.find("http://").map(|at| line[at..].trim().to_owned())
    })
}

fn chromedriver(driver: &Path) -> (Served, String) {
    started(Command::new(driver).arg("--port=0"), |line| {
        let port = line.split_once("successfully on port ")?.1;
        let port: String = port.chars().take_while(char::is_ascii_digit).collect();
        Some(format!("http://127.0.0.1:{port}"))
    })
}

async fn browser(driver: &str, chromium: &Path, profile: &Path) -> WebDriver {
    let mut wanted = DesiredCapabilities::chrome();
    wanted.set_binary(chromium.to_str().unwrap()).unwrap();
    wanted
        .set_browser_log_level(LoggingPrefsLogLevel::All)
        .unwrap();
    let profile = format!("--user-data-dir={}", profile.display());
    for argument in [
        "--headless=new",
        "--no-sandbox",
        "--disable-gpu",
        "--window-size=1400,1000",
        &profile,
    ] {
        wanted.add_arg(argument).unwrap();
    }
    WebDriver::new(driver, wanted).await.unwrap()
}

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
    field.scroll_into_view().await?;
    field.clear().await?;
    field.send_keys(words).await?;
    field.send_keys(Key::Enter + "").await
}

async fn no_complaints(page: &WebDriver) -> WebDriverResult<()> {
    let log = page.browser_log().await?;
    let errors: Vec<_> = log.iter().filter(|entry| entry.level == "SEVERE").collect();
    assert!(errors.is_empty(), "{errors:#?}");
    Ok(())
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

/// Waits until the file says something.
async fn saved(file: &Path, words: &str) -> WebDriverResult<()> {
    let start = Instant::now();
    while !fs::read_to_string(file).unwrap().contains(words) {
        assert!(start.elapsed() < PATIENCE, "the file never says {words}");
        tokio::time::sleep(Duration::from_millis(20)).await;
    }
    Ok(())
}

async fn found(page: &WebDriver, css: &str) -> WebDriverResult<WebElement> {
    let query = page.query(By::Css(css));
    let query = query.wait(PATIENCE, Duration::from_millis(50));
    query.first().await
}

/// A page of the style, by what is looked at.
async fn look(page: &WebDriver, url: &str, query: &str) -> WebDriverResult<()> {
    // The key is a cookie by now.
    let home = url.split('?').next().unwrap();
    page.goto(&format!("{home}style/ferryman?{query}")).await?;
    found(page, "#drawing svg").await?;
    Ok(())
}

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
    let values = found(page, "#holding span").await?.text().await?;
    assert!(values.contains("foot width"), "{values}");
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
    let reason = found(page, "#finding-1 [data-reason]").await?;
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

/// Opens a bench over a fresh demo in a browser and does something there.
fn in_a_browser(act: impl AsyncFn(&WebDriver, &str, &Path) -> WebDriverResult<()>) {
    let Some(driver) = tool(&["chromedriver"]) else {
        return;
    };
    let Some(chromium) = tool(&["chromium", "chromium-browser", "google-chrome"]) else {
        return;
    };
    let folder = tempfile::tempdir().unwrap();
    let file = style::write_demo(&folder.path().join("demo")).unwrap();
    let (_bench, url) = bench(&folder.path().join("demo"));
    let (_driver, driver) = chromedriver(&driver);
    let runtime = tokio::runtime::Builder::new_current_thread()
        .enable_all()
        .build()
        .unwrap();
    runtime.block_on(async {
        let page = browser(&driver, &chromium, &folder.path().join("profile")).await;
        let went = act(&page, &url, &file).await;
        page.quit().await.unwrap();
        went.unwrap();
    });
}

#[test]
fn a_change_of_the_inseam_is_seen_and_taken_back() {
    in_a_browser(journey);
}

#[test]
fn the_drawing_is_dragged_typed_on_and_its_findings_muted() {
    in_a_browser(on_the_drawing);
}
