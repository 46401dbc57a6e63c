//! `fellwork bench`: a collection in the browser.

use std::path::Path;
use std::process::{Command, Stdio};

use super::key;
use crate::args::{Bench, Serving};
use crate::exit::Exit;
use crate::printed;
use crate::trouble::Trouble;

pub fn run(asked: &Bench) -> Result<Exit, Trouble> {
    serve(&asked.folder, &asked.serving)
}

/// Serves a collection until the program is ended, and opens the browser where there is one.
pub fn serve(folder: &Path, serving: &Serving) -> Result<Exit, Trouble> {
    let running = bench::start(bench::Options {
        folder: folder.to_path_buf(),
        port: serving.port,
        key: key::asked_for(serving)?,
    })?;
    printed::words(&format!(
        "the bench is open at {}\nit answers on this machine only; end it with Ctrl-C\n",
        running.url
    ))?;
    if !serving.no_open {
        open_browser(&running.opens);
    }
    running.wait().map_err(bench::BenchError::from)?;
    Ok(Exit::Done)
}

/// Asks the system to show an address. Where it cannot, the printed address has to do.
fn open_browser(url: &str) {
    let Some(program) = opener() else { return };
    let started = Command::new(program)
        .arg(url)
        .stdin(Stdio::null())
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .spawn();
    if let Ok(mut child) = started {
        // Waited for elsewhere, so that it does not stay behind as a finished process.
        std::thread::spawn(move || child.wait());
    }
}

fn opener() -> Option<&'static str> {
    if cfg!(target_os = "macos") {
        return Some("open");
    }
    if cfg!(windows) {
        return Some("explorer");
    }
    // Without a screen the opener would start a browser inside the terminal.
    let screen = ["DISPLAY", "WAYLAND_DISPLAY"];
    let there = screen.iter().any(|name| std::env::var_os(name).is_some());
    there.then_some("xdg-open")
}
