//! A maker who uses keys alone: everything is reached, the focus is always seen and never lost, and nothing keeps it.

use std::path::Path;
use std::time::{Duration, Instant};

use suite::browser::{PATIENCE, found, in_a_browser, no_complaints, saved, until};
use thirtyfour::prelude::*;

/// A page and a keyboard.
struct Hands<'a>(&'a WebDriver);

/// More steps than any page has places for the focus.
const MOST: usize = 600;

/// Where the focus is: whether it matches what is looked for, whether it can be seen, and which part of the page it is in.
const FOCUS: &str = r"
const [wanted] = arguments;
const held = document.activeElement;
const box = held.getBoundingClientRect();
const style = getComputedStyle(held);
// Marks on the drawing, and pictures to choose from, show the focus by other means than an outline of their own.
const other = held.closest('.grip, .mark') || held.closest('.pictured label');
const shown = held.matches(':focus-visible') && (style.outlineStyle !== 'none' || Boolean(other));
const seen = box.bottom > 0 && box.right > 0 && box.top < innerHeight && box.left < innerWidth;
const parts = ['.skip', '#bar', '#notice', '.board', '#panel', '#strip', '#history'];
return [
  held.matches(wanted),
  held === document.body,
  shown && seen,
  parts.findIndex((part) => held.closest(part)),
  held.outerHTML.slice(0, 160),
];";

struct Focus {
    there: bool,
    lost: bool,
    shown: bool,
    part: i64,
    what: String,
}

impl Hands<'_> {
    async fn press(&self, keys: impl Into<TypingData>) -> WebDriverResult<()> {
        self.0.action_chain().send_keys(keys).perform().await
    }

    /// Presses a key while others are held.
    async fn chord(&self, held: Key, key: &str) -> WebDriverResult<()> {
        let chain = self.0.action_chain().key_down(held.clone());
        chain.send_keys(key).key_up(held).perform().await
    }

    async fn focus(&self, wanted: &str) -> WebDriverResult<Focus> {
        let told = self.0.execute(FOCUS, vec![wanted.into()]).await?;
        let (there, lost, shown, part, what) = told.convert()?;
        Ok(Focus {
            there,
            lost,
            shown,
            part,
            what,
        })
    }

    /// The focus once it is seen: a browser scrolls to it a frame or two after it was given. One that stays out of
    /// sight is told as it is.
    async fn settled_focus(&self, wanted: &str) -> WebDriverResult<Focus> {
        for _ in 0..20 {
            let focus = self.focus(wanted).await?;
            if focus.shown || focus.lost {
                return Ok(focus);
            }
            tokio::time::sleep(Duration::from_millis(50)).await;
        }
        self.focus(wanted).await
    }

    /// Goes on with the tab key until something has the focus, which is seen at every step and goes on through the page.
    async fn tab_to(&self, wanted: &str) -> WebDriverResult<()> {
        let mut before = -1;
        for _ in 0..MOST {
            self.press(Key::Tab + "").await?;
            let focus = self.settled_focus(wanted).await?;
            if focus.lost {
                // Past the end of the page, and from its start again.
                before = -1;
                continue;
            }
            assert!(focus.shown, "the focus is not to be seen: {}", focus.what);
            assert!(
                focus.part >= before || focus.part <= 0,
                "the focus goes back to {} after part {before}",
                focus.what
            );
            // Pages of their own have other parts between bar and foot.
            before = if focus.part < 0 { before } else { focus.part };
            if focus.there {
                return Ok(());
            }
        }
        panic!("{wanted} is never reached");
    }

    /// After a change the focus is where it was, or where it is said to be.
    async fn stays(&self, wanted: &str) -> WebDriverResult<()> {
        found(self.0, "#bench:not([aria-busy])").await?;
        self.stays_at(wanted).await
    }

    /// The same on a page that asks for nothing.
    async fn stays_at(&self, wanted: &str) -> WebDriverResult<()> {
        let start = Instant::now();
        loop {
            let focus = self.focus(wanted).await?;
            // What was scrolled to may still be on its way.
            if focus.there && focus.shown {
                return Ok(());
            }
            assert!(
                start.elapsed() < PATIENCE,
                "the focus is not on {wanted} but on {}",
                focus.what
            );
        }
    }

    /// Goes on to a field and types words in place of its own, to be saved.
    async fn enter(&self, field: &str, words: &str) -> WebDriverResult<()> {
        self.tab_to(field).await?;
        self.chord(Key::Control, "a").await?;
        self.press(words).await?;
        self.press(Key::Enter + "").await
    }

    /// Leaves fields, so that single keys mean something.
    async fn leaves_the_field(&self) -> WebDriverResult<()> {
        self.tab_to("a, summary, button").await
    }
}

async fn keys_alone(page: &WebDriver, url: &str, file: &Path) -> WebDriverResult<()> {
    let hands = Hands(page);
    let first = std::fs::read_to_string(file).unwrap();
    page.goto(url).await?;
    hands.tab_to("a[href^='/style/ferryman?']").await?;
    hands.press(Key::Enter + "").await?;
    found(page, "#drawing svg").await?;

    // The inseam's construction: the room by its key, the panel and the seam by tab.
    hands.press("4").await?;
    found(page, "#details:not([hidden])").await?;
    hands.tab_to("#tabs [data-panel=construction]").await?;
    hands.press(Key::Enter + "").await?;
    found(page, "#construction:not([hidden])").await?;
    hands.tab_to("#seam-inseam > summary").await?;
    hands.press(Key::Enter + "").await?;
    hands
        .tab_to("#seam-inseam select[data-path='seams.inseam.construction']")
        .await?;
    hands.press("over").await?;
    saved(file, "construction = \"overlocked\"").await?;
    hands
        .stays("[data-path='seams.inseam.construction']")
        .await?;

    // Taken back, by the key that takes back everywhere.
    hands.chord(Key::Control, "z").await?;
    saved(file, &first).await?;
    hands
        .stays("[data-path='seams.inseam.construction']")
        .await?;

    // A corner of a back pocket, by arrow keys.
    hands.leaves_the_field().await?;
    hands.press("b").await?;
    found(page, "[data-grip='back-pocket-left-outer']").await?;
    hands.tab_to("[data-grip='back-pocket-left-outer']").await?;
    hands.press(Key::Enter + "").await?;
    found(page, "#holding span").await?;
    hands.press(Key::Down + "").await?;
    hands.press(Key::Down + "").await?;
    hands.press(Key::Enter + "").await?;
    saved(file, "outer_drop = \"").await?;
    until(page, "return !document.querySelector('.grip.held')").await?;
    hands.stays("[data-grip='back-pocket-left-outer']").await?;
    hands.chord(Key::Control, "z").await?;
    saved(file, &first).await?;
    hands.stays("[data-grip='back-pocket-left-outer']").await?;

    // A measure where it is taken.
    hands.press("f").await?;
    hands.press("m").await?;
    found(page, ".dim input[data-path='chart.knee.value']").await?;
    hands
        .enter(".dim input[data-path='chart.knee.value']", "46.5 cm")
        .await?;
    saved(file, "value = \"46.5 cm\"").await?;
    hands
        .stays(".dim input[data-path='chart.knee.value']")
        .await?;
    hands.chord(Key::Control, "z").await?;
    saved(file, &first).await?;

    // A finding is opened on the drawing, and muted with its reason.
    hands.leaves_the_field().await?;
    hands.tab_to("#tabs [data-panel=findings]").await?;
    hands.press(Key::Enter + "").await?;
    found(page, "#findings:not([hidden])").await?;
    found(page, "#bench:not([aria-busy])").await?;
    hands.tab_to("#findings .muting summary").await?;
    hands.press(Key::Enter + "").await?;
    hands.tab_to("#findings [data-told]").await?;
    hands.press("It is meant to hang.").await?;
    hands.press(Key::Enter + "").await?;
    saved(file, "reason = \"It is meant to hang.\"").await?;
    hands.stays("#findings-title").await?;
    hands.tab_to("[data-mark]").await?;
    hands.press(Key::Enter + "").await?;
    hands.stays("#findings li[data-finding]").await?;
    hands.chord(Key::Control, "z").await?;
    saved(file, &first).await?;
    no_complaints(page).await
}

/// What takes a while, and what was: a lay, the pack, two versions beside each other, and one put back.
async fn rooms_by_keys(page: &WebDriver, url: &str, file: &Path) -> WebDriverResult<()> {
    let hands = Hands(page);
    let first = std::fs::read_to_string(file).unwrap();
    page.goto(url).await?;
    hands.tab_to("a[href^='/style/ferryman?']").await?;
    hands.press(Key::Enter + "").await?;
    found(page, "#drawing svg").await?;

    // A version to compare with: one measure is another.
    hands
        .enter("#fit input[data-path='chart.knee.value']", "46.5 cm")
        .await?;
    saved(file, "value = \"46.5 cm\"").await?;
    hands
        .stays("#fit input[data-path='chart.knee.value']")
        .await?;

    // A lay of a second, and a long search that is given up.
    hands.leaves_the_field().await?;
    hands.press("5").await?;
    found(page, "#lay-form").await?;
    for (seconds, told) in [("1", "The search ended"), ("600", "cancelled")] {
        hands.enter("#lay-form [name=seconds]", seconds).await?;
        if told == "cancelled" {
            found(page, "#cancel").await?;
            hands.tab_to("#cancel").await?;
            hands.press(Key::Enter + "").await?;
        }
        let there = format!(
            "return document.querySelector('#result')?.textContent.includes('{told}') ?? false"
        );
        until(page, &there).await?;
    }

    // The pack, to the link that downloads it.
    hands.leaves_the_field().await?;
    hands.press("6").await?;
    hands.tab_to("form[data-start='pack'] button").await?;
    hands.press(Key::Enter + "").await?;
    found(page, "#pack-work a[download]").await?;
    hands.tab_to("#pack-work a[download]").await?;

    // The version before beside the one now, over it, and put back.
    hands.press("7").await?;
    found(page, "#version-2.now").await?;
    hands.tab_to("#version-1 a[href*='compare']").await?;
    hands.press(Key::Enter + "").await?;
    found(page, ".beside figure + figure svg").await?;
    hands.press("v").await?;
    found(page, ".stack .upper svg").await?;
    hands.tab_to("a[href*='/history?']").await?;
    hands.press(Key::Enter + "").await?;
    found(page, "#version-1").await?;
    hands
        .tab_to("#version-1 form[data-send='put-back'] button")
        .await?;
    hands.press(Key::Enter + "").await?;
    found(page, "#version-3.now").await?;
    assert_eq!(std::fs::read_to_string(file).unwrap(), first);
    no_complaints(page).await
}

/// A style begun with its questions as they are, one label more, and a cloth that weighs something else.
async fn begun_by_keys(page: &WebDriver, url: &str, file: &Path) -> WebDriverResult<()> {
    let hands = Hands(page);
    let collection = file.ancestors().nth(3).unwrap();
    page.goto(url).await?;
    hands.tab_to("a[href='/new']").await?;
    hands.press(Key::Enter + "").await?;
    hands.tab_to("#begin [name=name]").await?;
    hands.chord(Key::Control, "a").await?;
    hands.press("Teal").await?;
    hands.tab_to("#begin [name=fit]").await?;
    hands.press(Key::Right + "").await?;
    let chosen = "return document.activeElement.checked && document.activeElement.name === 'fit'";
    until(page, chosen).await?;
    hands.tab_to("#begin button[type=submit]").await?;
    hands.press(Key::Enter + "").await?;
    found(page, "#drawing path.reach").await?;
    let style = collection.join("styles/teal/style.toml");
    assert!(
        !std::fs::read_to_string(&style)
            .unwrap()
            .contains("fit = \"straight\"")
    );

    hands.press("4").await?;
    found(page, "#details:not([hidden])").await?;
    let labels = "return document.querySelectorAll('#details [data-path^=\"labels[\"][data-path$=\".trim\"]').length";
    let before: usize = page.execute(labels, Vec::new()).await?.convert()?;
    hands
        .tab_to(".adding button[data-edits*='labels[']")
        .await?;
    hands.press(Key::Enter + "").await?;
    until(page, &format!("{labels} === {}", before + 1)).await?;

    hands.press("3").await?;
    found(page, "#cloth:not([hidden])").await?;
    hands.tab_to("#cloth details.stated > summary").await?;
    hands.press(Key::Enter + "").await?;
    let weight = "#cloth input[data-path='cloths.tideline-14.weight']";
    hands.enter(weight, "13 oz/yd2").await?;
    let cloths = collection.join("cloths.toml");
    saved(&cloths, "weight = \"13 oz/yd2\"").await?;
    hands.stays(weight).await?;
    hands.tab_to("[data-step='undo']").await?;
    hands.press(Key::Enter + "").await?;
    saved(&cloths, "weight = \"14 oz/yd2\"").await?;
    no_complaints(page).await
}

/// The keys of a page are told by the page, and the list goes away again to where one was.
async fn the_list(page: &WebDriver, url: &str, _: &Path) -> WebDriverResult<()> {
    let hands = Hands(page);
    page.goto(url).await?;
    hands.tab_to("a[href^='/style/ferryman?']").await?;
    for told in ["Keys", "This list"] {
        hands.press("?").await?;
        let words = found(page, "#keys[open]").await?.text().await?;
        assert!(words.contains(told), "{words}");
        hands.press(Key::Escape + "").await?;
        until(page, "return !document.querySelector('#keys').open").await?;
        hands.stays_at("a[href^='/style/ferryman?']").await?;
    }
    hands.press(Key::Enter + "").await?;
    found(page, "#drawing svg").await?;
    hands.tab_to("[data-keys]").await?;
    hands.press(Key::Enter + "").await?;
    let words = found(page, "#keys[open]").await?.text().await?;
    for told in [
        "Construction",
        "Front",
        "Undo",
        "Ctrl",
        "Stitches",
        "This list",
    ] {
        assert!(words.contains(told), "{told} is not told:\n{words}");
    }
    // Every key that an element has is in it, once.
    let script = r"
const named = [...document.querySelectorAll('[aria-keyshortcuts]')].length;
const more = document.getElementById('more-keys').content.children.length;
return named + more === document.querySelectorAll('#keys .own').length && named > 15";
    until(page, script).await?;
    // Single keys do nothing behind it.
    hands.press("b").await?;
    hands.tab_to("#keys button").await?;
    hands.press(Key::Enter + "").await?;
    until(page, "return !document.querySelector('#keys').open").await?;
    hands.stays("[data-keys]").await?;
    assert!(!page.current_url().await?.as_str().contains("view=back"));
    no_complaints(page).await
}

#[test]
fn the_usual_tasks_are_done_by_keys_alone() {
    in_a_browser(keys_alone);
}

#[test]
fn the_keys_of_a_page_are_listed() {
    in_a_browser(the_list);
}

#[test]
fn long_work_and_history_are_reached_by_keys_alone() {
    in_a_browser(rooms_by_keys);
}

#[test]
fn a_style_is_begun_and_changed_by_keys_alone() {
    in_a_browser(begun_by_keys);
}
