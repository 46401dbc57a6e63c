//! Lays an open packing instance and prints the lay as JSON, so that anyone can check it.
//!
//! `cargo run --release -p lay --example packing -- INSTANCE.json SECONDS SEED CORES`
//!
//! The instance is read in the JSON form of `jagua-rs` 1.0 and later. A fifth argument bounds the
//! search by places tried instead of by seconds.
// What it says is its result.
#![allow(clippy::print_stdout, clippy::print_stderr)]

#[path = "../tests/instance/mod.rs"]
mod instance;

use std::process::ExitCode;
use std::sync::atomic::AtomicBool;
use std::time::Duration;

use lay::{Lay, Limits, Options, Problem, search};
use serde_json::{Value, json};
use trade::Share;

fn main() -> ExitCode {
    match run() {
        Ok(()) => ExitCode::SUCCESS,
        Err(wrong) => {
            eprintln!("{wrong}");
            ExitCode::FAILURE
        }
    }
}

fn run() -> Result<(), String> {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let [file, seconds, seed, cores, rest @ ..] = &arguments[..] else {
        return Err("usage: packing INSTANCE.json SECONDS SEED CORES [PLACES]".into());
    };
    let number = |text: &String, what: &str| {
        text.parse::<f64>()
            .map_err(|_| format!("{what}: {text} is not a number"))
    };
    let seconds = number(seconds, "seconds")?;
    let time = Duration::try_from_secs_f64(seconds).map_err(|e| format!("seconds: {e}"))?;
    let places = rest
        .first()
        .map(|p| number(p, "places"))
        .transpose()?
        .map(|p| p as u64);
    let problem = instance::read(file)?;
    let options = Options {
        seed: number(seed, "seed")? as u64,
        workers: number(cores, "cores")? as usize,
        limits: Limits {
            time: (places.is_none()).then_some(time),
            places,
        },
    };
    let mut first = None;
    let lay = search(&problem, &options, &AtomicBool::new(false), &mut |p| {
        first.get_or_insert_with(|| p.clone());
        if std::env::var_os("PACKING_PROGRESS").is_some() {
            eprintln!(
                "{:8.3} s  {:12} places  {:.3}  {:.3} %",
                p.elapsed.as_secs_f64(),
                p.places,
                p.length.to_mm(),
                p.efficiency.to_percent()
            );
        }
    })
    .map_err(|e| e.to_string())?;
    println!(
        "{}",
        answer(&problem, &lay, first.map(|p| (p.elapsed, p.efficiency)))
    );
    Ok(())
}

/// The lay with all that is needed to check it: outlines are turned about the origin by
/// `rotation` degrees anticlockwise and then moved by `x` and `y`.
fn answer(problem: &Problem, lay: &Lay, first: Option<(Duration, Share)>) -> Value {
    let placements: Vec<Value> = lay
        .placements
        .iter()
        .map(|p| {
            json!({
                "id": p.key,
                "copy": p.copy,
                "rotation": p.turn.degrees(),
                "x": p.x.to_mm(),
                "y": p.y.to_mm(),
            })
        })
        .collect();
    json!({
        "strip_height": problem.width.to_mm(),
        "length": lay.length.to_mm(),
        "density": lay.efficiency.to_ratio(),
        "bound": lay.bounds.best().to_mm(),
        "ended": format!("{:?}", lay.ended),
        "places": lay.places,
        "first": first.map(|(time, share)| json!({ "seconds": time.as_secs_f64(), "density": share.to_ratio() })),
        "placements": placements,
    })
}
