//! How quick the bench is for whoever sits at it, measured in a browser: `cargo run --release --example measure_bench`.
//!
//! A change counts from the event in its field to the next frame after the new drawing is in the page. What the server
//! itself worked for it, in processor time, does not depend on how busy the machine is. Nothing here passes or fails.
// What it says is its result.
#![allow(clippy::print_stdout)]

use std::fs;
use std::path::Path;

use serde_json::{Value, json};
use suite::browser::{DESK, bench, browsing, look};
use thirtyfour::prelude::*;

/// How often each thing is done.
const TIMES: usize = 100;
/// A tick of a processor's clock as Linux tells it, in milliseconds.
const TICK_MS: f64 = 10.0;

fn main() -> std::io::Result<()> {
    let folder = tempfile::tempdir()?;
    let demo = folder.path().join("demo");
    style::write_demo(&demo).map_err(std::io::Error::other)?;
    let (server, url) = bench(&demo);
    println!(
        "load of the machine: {}",
        fs::read_to_string("/proc/loadavg")?.trim()
    );
    browsing(DESK, async |page| {
        first_pages(page, &url).await?;
        // Each value once: what was worked out before is kept, and would not be worked out again.
        let steps = || (0..TIMES).map(|step| step as f64 * 0.02);
        let chart: Vec<String> = steps()
            .map(|step| format!("{:.2} cm", 45.0 + step))
            .collect();
        let seam: Vec<String> = steps()
            .map(|step| format!("{:.2} /in", 7.0 + step))
            .collect();
        for (what, panel, field, values) in [
            ("chart", "fit", "#fit [data-path='chart.knee.value']", chart),
            (
                "seam",
                "construction&part=seam%3Ainseam",
                "[data-path='seams.inseam.rows[0].density']",
                seam,
            ),
        ] {
            look(page, &url, &format!("panel={panel}")).await?;
            page.execute(WATCH_SHIFTS, Vec::new()).await?;
            let before = worked(server.id());
            let told = page
                .execute_async(EDITS, vec![json!(field), json!(values)])
                .await?;
            let told: Value = told.convert()?;
            let server_ms = (worked(server.id()) - before) * TICK_MS / TIMES as f64;
            println!(
                "{TIMES} changes of the {what}, to the next frame: {}",
                spread(&told["took"])
            );
            for (part, took) in told["parts"].as_object().into_iter().flatten() {
                println!("    {part}: {}", spread(took));
            }
            println!("    the server's processor time for one: {server_ms:.1} ms");
            println!(
                "    layout shift: {}, of it not after a key or a click: {}; {}",
                told["shift"], told["unasked"], told["of"]
            );
        }
        Ok(())
    });
    Ok(())
}

async fn first_pages(page: &WebDriver, url: &str) -> WebDriverResult<()> {
    page.goto(url).await?;
    for how in ["cold", "warm"] {
        look(page, url, "").await?;
        let told: Value = page.execute_async(FIRST, Vec::new()).await?.convert()?;
        println!("the first page of a style, {how}: {told}");
    }
    Ok(())
}

/// Ticks of processor time a process has had; 0 where the system does not tell.
fn worked(id: u32) -> f64 {
    let told = fs::read_to_string(Path::new("/proc").join(id.to_string()).join("stat"));
    let told = told.unwrap_or_default();
    // The name of the program, in brackets, may hold spaces.
    let after = told.rsplit(')').next().unwrap_or_default();
    let ticks = after.split_whitespace().skip(11).take(2);
    ticks.filter_map(|ticks| ticks.parse::<f64>().ok()).sum()
}

/// Median, 95th percentile and largest of some milliseconds.
fn spread(all: &Value) -> String {
    let all = all.as_array().into_iter().flatten();
    let mut all: Vec<f64> = all.filter_map(Value::as_f64).collect();
    all.sort_by(f64::total_cmp);
    let at = |share: f64| {
        let index = (all.len().saturating_sub(1) as f64 * share).round() as usize;
        all.get(index).copied().unwrap_or(f64::NAN)
    };
    format!(
        "median {:.1}, p95 {:.1}, max {:.1} ms",
        at(0.5),
        at(0.95),
        at(1.0)
    )
}

const WATCH_SHIFTS: &str = r"
window.shifted = 0;
window.unasked = 0;
window.shifting = new Set();
const named = (node) => node?.id || node?.className || (node ? `${named(node.parentElement)} ${node.nodeName}` : 'gone');
new PerformanceObserver((list) => {
  for (const { value, sources, hadRecentInput, startTime } of list.getEntries()) {
    window.shifted += value;
    // What follows the hand within half a second is no shift as browsers count them.
    if (!hadRecentInput) window.unasked += value;
    for (const { node, previousRect: a, currentRect: b } of sources) {
      window.shifting.add(`at ${Math.round(startTime)} by ${value.toFixed(4)}: ${named(node)} ${a.x},${a.y} ${a.width}x${a.height} to ${b.x},${b.y} ${b.width}x${b.height}`);
    }
  }
}).observe({ type: 'layout-shift', buffered: true });";

const FIRST: &str = r"
const done = arguments[arguments.length - 1];
requestAnimationFrame(() => setTimeout(() => {
  const [page] = performance.getEntriesByType('navigation');
  const scripts = performance.getEntriesByType('resource').filter(({ name }) => name.endsWith('.js'));
  done({
    'first contentful paint ms': Math.round(performance.getEntriesByName('first-contentful-paint')[0]?.startTime),
    'load ms': Math.round(page.loadEventEnd),
    'answer ms': Math.round(page.responseEnd),
    'bytes of script': scripts.reduce((sum, { decodedBodySize }) => sum + decodedBodySize, 0),
  });
}, 500));";

const EDITS: &str = r"
const [css, values, done] = arguments;
const drawing = document.getElementById('drawing');
const once = (value) => new Promise((resolve) => {
  const field = document.querySelector(css);
  const seen = new MutationObserver(() => {
    seen.disconnect();
    // The frame after the one that shows it: by then it has been painted.
    requestAnimationFrame(() => requestAnimationFrame((now) => resolve(now - start)));
  });
  seen.observe(drawing, { childList: true });
  field.focus();
  field.value = value;
  field.dispatchEvent(new Event('input', { bubbles: true }));
  const start = performance.now();
  field.dispatchEvent(new Event('change', { bubbles: true }));
});
(async () => {
  const took = [];
  const parts = {};
  for (const value of values) {
    performance.clearResourceTimings();
    took.push(await once(value));
    await new Promise((resolve) => setTimeout(resolve, 20));
    const [asked] = performance.getEntriesByType('resource');
    (parts['request'] ??= []).push(asked?.duration);
    for (const { name, duration } of asked?.serverTiming ?? []) (parts[name] ??= []).push(duration);
  }
  done({ took, parts, shift: window.shifted, unasked: window.unasked, of: [...window.shifting] });
})();";
