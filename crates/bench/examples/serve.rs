//! Serves a collection folder: `cargo run -p bench --example serve -- FOLDER [PORT] [KEY]`.
// What it says is its result.
#![allow(clippy::print_stdout)]

use std::path::PathBuf;

use bench::{Options, start};

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let mut given = std::env::args().skip(1);
    let folder = given
        .next()
        .map(PathBuf::from)
        .ok_or("name a collection folder")?;
    let port = given.next().map(|port| port.parse()).transpose()?;
    let running = start(Options {
        folder,
        port,
        key: given.next(),
    })?;
    println!("{}", running.url);
    running.wait()?;
    Ok(())
}
