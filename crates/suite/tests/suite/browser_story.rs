//! The story sheet in a browser: on a telephone and on a desk, by day and by night, from a file, without a network.

use serde_json::Value;
use suite::browser::{Screen, browsing, found, resize};
use suite::fellwork::run;
use suite::outside::axe;
use thirtyfour::prelude::*;

use crate::browser_access::judged;

const TELEPHONE: (u32, u32) = (390, 844);
const DESK: (u32, u32) = (1280, 800);

/// Pictures that are not there once all had their time, and whatever was fetched from elsewhere.
const MISSING: &str = r"
const done = arguments[0];
const pictures = [...document.images];
Promise.allSettled(pictures.map((each) => each.decode())).then(() => {
  const fetched = performance.getEntriesByType('resource').map(({ name }) => name).filter((name) => !name.startsWith('data:'));
  done([...pictures.filter((each) => !each.naturalWidth).map((each) => each.alt), ...fetched, pictures.length ? '' : 'no picture'].filter(Boolean));
});";

async fn looked_at(page: &WebDriver, address: &str) -> WebDriverResult<Vec<String>> {
    let script = axe().unwrap_or_default();
    let mut wrong = Vec::new();
    for (width, height) in [DESK, TELEPHONE] {
        resize(page, width, height).await?;
        page.goto(address).await?;
        found(page, "h1").await?;
        let missing: Vec<String> = page
            .execute_async(MISSING, Vec::<Value>::new())
            .await?
            .convert()?;
        wrong.extend(
            missing
                .into_iter()
                .map(|what| format!("missing at {width}: {what}")),
        );
        if !script.is_empty() {
            let objections = judged(page, &script).await?;
            wrong.extend(
                objections
                    .into_iter()
                    .map(|what| format!("at {width}: {what}")),
            );
        }
    }
    Ok(wrong)
}

#[test]
fn a_story_opens_anywhere_and_is_for_everybody() {
    let folder = tempfile::tempdir().unwrap();
    let demo = folder.path().join("demo");
    style::write_demo(&demo).unwrap();
    let file = folder.path().join("story.html");
    let made = run([
        "story".as_ref(),
        demo.join("styles/ferryman").as_os_str(),
        "-o".as_ref(),
        file.as_os_str(),
    ]);
    assert!(
        made.status.success(),
        "{}",
        String::from_utf8_lossy(&made.stderr)
    );
    for dark in [false, true] {
        let screen = Screen {
            width: DESK.0,
            height: DESK.1,
            dark,
        };
        browsing(screen, async |page| {
            let address = format!("file://{}", file.display());
            let wrong = looked_at(page, &address).await?;
            assert!(wrong.is_empty(), "{}", wrong.join("\n"));
            Ok(())
        });
    }
}
