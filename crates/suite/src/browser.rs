//! A bench over a fresh demo, opened in a real browser without a window.

use std::fs;
use std::io::{BufRead, BufReader, Read};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

use thirtyfour::prelude::*;
use thirtyfour::{ChromiumLikeCapabilities, LoggingPrefsLogLevel};

use crate::fellwork::program;
use crate::outside::tool;

/// Long enough for a loaded machine, on which what the bench does in the background gets little; nothing waits this
/// long when all is well.
pub const PATIENCE: Duration = Duration::from_secs(120);
/// How often something awaited is looked at again.
const GLANCE: Duration = Duration::from_millis(20);

/// How the browser is set.
#[derive(Clone, Copy, Debug)]
pub struct Screen {
    /// Width of a page, in CSS pixels.
    pub width: u32,
    /// Height of a page, in CSS pixels.
    pub height: u32,
    /// Whether pages are to be dark.
    pub dark: bool,
}

/// A desk's screen in daylight.
pub const DESK: Screen = Screen {
    width: 1400,
    height: 1000,
    dark: false,
};

/// A program that ends with the test.
pub struct Served {
    child: Child,
}

impl Served {
    /// The number the system knows it by.
    #[must_use]
    pub fn id(&self) -> u32 {
        self.child.id()
    }
}

impl Drop for Served {
    fn drop(&mut self) {
        // It may have ended already.
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

/// Starts a program and reads what it prints until `find` finds something.
///
/// # Panics
/// It cannot be started, or ends before that.
pub fn started(command: &mut Command, find: impl Fn(&str) -> Option<String>) -> (Served, String) {
    match ready(command, find) {
        Some(ready) => ready,
        None => panic!("{command:?} ended before it was ready"),
    }
}

/// The same; `None` when it ends before that.
fn ready(command: &mut Command, find: impl Fn(&str) -> Option<String>) -> Option<(Served, String)> {
    let mut child = command
        .stdout(Stdio::piped())
        .spawn()
        .expect("it can be started");
    let mut lines = BufReader::new(child.stdout.take().expect("it prints into a pipe"));
    let served = Served { child };
    let mut line = String::new();
    while lines.read_line(&mut line).expect("it prints UTF-8") > 0 {
        if let Some(found) = find(&line) {
            // Reading on, so that the program never waits for its pipe.
            std::thread::spawn(move || lines.read_to_end(&mut Vec::new()));
            return Some((served, found));
        }
        line.clear();
    }
    None
}

/// Starts the bench over a collection and gives the address that opens it.
pub fn bench(folder: &Path) -> (Served, String) {
    let mut command = Command::new(program());
    command
        .arg("bench")
        .arg(folder)
        .args(["--port", "0", "--no-open"]);
    started(command.stderr(Stdio::null()), |line| {
        line.find("http://").map(|at| line[at..].trim().to_owned())
    })
}

/// A port that is free in one family of addresses may be taken in the other; the driver then ends and another port has
/// to be tried.
fn chromedriver(driver: &Path) -> (Served, String) {
    const TRIES: usize = 10;
    let port = |line: &str| {
        let port = line.split_once("successfully on port ")?.1;
        let port: String = port.chars().take_while(char::is_ascii_digit).collect();
        Some(format!("http://127.0.0.1:{port}"))
    };
    (0..TRIES)
        .find_map(|_| ready(Command::new(driver).arg("--port=0"), port))
        .expect("a driver starts")
}

async fn browser(
    driver: &str,
    chromium: &Path,
    profile: &Path,
    screen: Screen,
) -> WebDriverResult<WebDriver> {
    let mut wanted = DesiredCapabilities::chrome();
    wanted.set_binary(&chromium.display().to_string())?;
    wanted.set_browser_log_level(LoggingPrefsLogLevel::All)?;
    let profile = format!("--user-data-dir={}", profile.display());
    let size = format!("--window-size={},{}", screen.width, screen.height);
    for argument in [
        "--headless=new",
        "--no-sandbox",
        "--disable-gpu",
        &size,
        &profile,
    ] {
        wanted.add_arg(argument)?;
    }
    if screen.dark {
        wanted.add_arg("--blink-settings=preferredColorScheme=0")?;
    }
    let page = WebDriver::new(driver, wanted).await?;
    page.set_script_timeout(PATIENCE).await?;
    Ok(page)
}

/// Opens a bench over a fresh demo in a browser and does something there with the page, the bench's address and the
/// style's file. Skipped where there is no browser.
///
/// # Panics
/// What is done there fails.
pub fn in_a_browser(act: impl AsyncFn(&WebDriver, &str, &Path) -> WebDriverResult<()>) {
    in_a_browser_over(DESK, |_| (), act);
}

/// The same on a screen of another kind, the demo changed first by `prepare`, which is given the style's file.
///
/// # Panics
/// What is done there fails.
pub fn in_a_browser_over(
    screen: Screen,
    prepare: impl FnOnce(&Path),
    act: impl AsyncFn(&WebDriver, &str, &Path) -> WebDriverResult<()>,
) {
    let folder = tempfile::tempdir().expect("a folder can be made");
    let demo = folder.path().join("demo");
    let file = style::write_demo(&demo).expect("the demo can be written");
    prepare(&file);
    let (_bench, url) = bench(&demo);
    browsing(screen, async |page| act(page, &url, &file).await);
}

/// Opens a browser and does something in it. Skipped where there is none.
///
/// # Panics
/// What is done there fails.
pub fn browsing(screen: Screen, act: impl AsyncFn(&WebDriver) -> WebDriverResult<()>) {
    let Some(driver) = tool(&["chromedriver"]) else {
        return;
    };
    let Some(chromium) = tool(&["chromium", "chromium-browser", "google-chrome"]) else {
        return;
    };
    let profile = tempfile::tempdir().expect("a folder can be made");
    let (_driver, driver) = chromedriver(&driver);
    let runtime = tokio::runtime::Builder::new_current_thread()
        .enable_all()
        .build()
        .expect("the system gives a runtime");
    runtime.block_on(async {
        let page = browser(&driver, &chromium, profile.path(), screen).await;
        let page = page.expect("the browser starts");
        // The browser ends with the test, also when the test ends early.
        let went = page.run_and_quit(async |page| act(&page).await).await;
        went.expect("the page does what it should");
    });
}

/// Waits for an element.
///
/// # Errors
/// There is none in the end.
pub async fn found(page: &WebDriver, css: &str) -> WebDriverResult<WebElement> {
    let start = Instant::now();
    loop {
        let query = page.query(By::Css(css)).wait(PATIENCE, GLANCE);
        match query.first().await {
            // Asked while one page gives way to the next, the driver finds neither.
            Err(_) if start.elapsed() < PATIENCE => tokio::time::sleep(GLANCE).await,
            found => return found,
        }
    }
}

/// A page of the style, by what is looked at, once its drawing is there and stays as it is: whoever comes to the page is
/// shown it anew, which would take from under the hand what it was about to hold.
///
/// # Errors
/// It never is.
pub async fn look(page: &WebDriver, url: &str, query: &str) -> WebDriverResult<()> {
    // The key is a cookie by now.
    page.goto(&format!("{}style/ferryman?{query}", home(url)))
        .await?;
    found(page, "#drawing svg[data-dressed]").await?;
    let come = "window.dispatchEvent(new Event('focus'))";
    page.execute(come, Vec::new()).await?;
    until(page, "return !document.querySelector('#bench[aria-busy]')").await
}

/// The bench's address without the key.
#[must_use]
pub fn home(url: &str) -> &str {
    url.split('?').next().unwrap_or(url)
}

/// Waits until a script gives true.
///
/// # Errors
/// The script cannot be run.
///
/// # Panics
/// It never does.
pub async fn until(page: &WebDriver, script: &str) -> WebDriverResult<()> {
    let start = Instant::now();
    loop {
        match page.execute(script, Vec::new()).await {
            Ok(told) if told.convert()? => return Ok(()),
            // Asked while one page gives way to the next, the driver can run nothing.
            Err(error) if start.elapsed() >= PATIENCE => return Err(error),
            Ok(_) | Err(_) => {}
        }
        assert!(start.elapsed() < PATIENCE, "never true: {script}");
        tokio::time::sleep(GLANCE).await;
    }
}

/// Waits until the file says something.
///
/// # Errors
/// None; it goes with others that have some.
///
/// # Panics
/// It never does.
pub async fn saved(file: &Path, words: &str) -> WebDriverResult<()> {
    let start = Instant::now();
    while !fs::read_to_string(file).is_ok_and(|text| text.contains(words)) {
        assert!(start.elapsed() < PATIENCE, "the file never says {words}");
        tokio::time::sleep(GLANCE).await;
    }
    Ok(())
}

/// Types words in place of a field's, as a hand does: all that stands there is chosen first. The driver's own clearing is
/// heard by no page, so one that is just then shown anew would put the old words back before the new ones.
///
/// # Errors
/// The field cannot be typed into.
pub async fn typed(field: &WebElement, words: &str) -> WebDriverResult<()> {
    field.scroll_into_view().await?;
    field.send_keys(Key::Control + "a").await?;
    field.send_keys(words).await
}

/// Nothing was called an error in the browser's console since this was last asked.
///
/// # Errors
/// The console cannot be read.
///
/// # Panics
/// Something was.
pub async fn no_complaints(page: &WebDriver) -> WebDriverResult<()> {
    let log = page.browser_log().await?;
    let errors: Vec<_> = log.iter().filter(|entry| entry.level == "SEVERE").collect();
    assert!(errors.is_empty(), "{errors:#?}");
    Ok(())
}

/// Gives a page a size of its own, in CSS pixels.
///
/// # Errors
/// The browser does not.
pub async fn resize(page: &WebDriver, width: u32, height: u32) -> WebDriverResult<()> {
    // What the browser's own frame takes is only known once there is one.
    page.set_window_rect(0, 0, width, height).await?;
    let script = "return [outerWidth - innerWidth, outerHeight - innerHeight]";
    let frame: (u32, u32) = page.execute(script, Vec::new()).await?.convert()?;
    page.set_window_rect(0, 0, width + frame.0, height + frame.1)
        .await
}

/// Every page of the bench, found as a maker finds it: by the links of the pages before it, and the plates a page offers.
///
/// # Errors
/// The pages cannot be read.
pub async fn every_page(page: &WebDriver, url: &str) -> WebDriverResult<Vec<String>> {
    page.goto(url).await?;
    let pages: Vec<String> = page
        .execute_async(EVERY_PAGE, Vec::new())
        .await?
        .convert()?;
    assert!(pages.len() > 12, "only {pages:?} are linked to");
    Ok(pages)
}

/// Follows every link from the first page on, one address for each page: sides, faces, sizes and units are not others.
const EVERY_PAGE: &str = r"
const done = arguments[arguments.length - 1];
const kind = ({ pathname, searchParams: query }) => {
  // Only the style's own page has panels and plates; others carry them along.
  if (!/^\/style\/[^/]+$/.test(pathname)) return pathname;
  return query.has('plate') ? `${pathname} ${query.get('plate')}` : `${pathname} ${query.get('panel')} ${query.get('room')}`;
};
(async () => {
  const waiting = [new URL('/', location)];
  const seen = new Set();
  const pages = [];
  while (waiting.length > 0) {
    const address = waiting.shift();
    if (address.origin !== location.origin || seen.has(kind(address))) continue;
    seen.add(kind(address));
    const answer = await fetch(address);
    if (!(answer.headers.get('content-type') ?? '').startsWith('text/html')) continue;
    pages.push(address.href);
    const text = new DOMParser().parseFromString(await answer.text(), 'text/html');
    for (const link of text.querySelectorAll('a[href]')) waiting.push(new URL(link.getAttribute('href'), address));
    for (const { value } of text.querySelectorAll('#plate option')) {
      if (value) waiting.push(new URL(`${address.pathname}?plate=${value}`, address));
    }
  }
  done(pages);
})();";
