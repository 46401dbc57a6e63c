//! How short the open packing instances are laid in a given time.
//!
//! `cargo bench -p lay -- [SECONDS [SEED [CORES]]]` lays every instance found in
//! `../shared/data/esicup` beside the workspace, 60 seconds each on two threads, and prints one
//! line for each. Without that folder there is nothing to do. The lays are checked here by our own
//! check; `crates/suite/checks/layout.py` checks what the example `packing` prints by other means.
// What it says is its result.
#![allow(clippy::print_stdout)]

#[path = "../tests/instance/mod.rs"]
mod instance;

use std::path::{Path, PathBuf};
use std::sync::atomic::AtomicBool;
use std::time::Duration;

use lay::{Limits, Options, check, search};

/// Mean density in percent of 100 runs of 20 minutes on three threads of a fast desktop: Gardeyn,
/// Vanden Berghe and Wauters, arXiv 2509.13329v3, as quoted by a public script from its tables.
const PUBLISHED: [(&str, f64); 7] = [
    ("trousers", 91.73),
    ("shirts", 89.66),
    ("swim", 78.26),
    ("marques", 90.93),
    ("albano", 89.47),
    ("dagli", 89.26),
    ("mao", 86.14),
];

fn main() {
    let numbers: Vec<u64> = std::env::args()
        .skip(1)
        .filter_map(|a| a.parse().ok())
        .collect();
    let number = |i: usize, usual: u64| numbers.get(i).copied().unwrap_or(usual);
    let options = Options {
        seed: number(1, 1),
        workers: number(2, 2) as usize,
        limits: Limits {
            time: Some(Duration::from_secs(number(0, 60))),
            places: None,
        },
    };
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../../shared/data/esicup");
    let files = instances(&folder);
    if files.is_empty() {
        println!("no instances in {}", folder.display());
    }
    for file in files {
        let name = file
            .file_stem()
            .map(|s| s.to_string_lossy().into_owned())
            .unwrap_or_default();
        match lay_one(&file, &options) {
            Ok(line) => {
                let published = PUBLISHED
                    .iter()
                    .find(|p| p.0 == name)
                    .map_or(String::new(), |p| format!("   published mean {:.2} %", p.1));
                println!("{name:10} {line}{published}");
            }
            Err(wrong) => println!("{name:10} {wrong}"),
        }
    }
}

fn instances(folder: &Path) -> Vec<PathBuf> {
    let Ok(entries) = std::fs::read_dir(folder) else {
        return Vec::new();
    };
    let mut files: Vec<PathBuf> = entries
        .filter_map(|e| e.ok().map(|e| e.path()))
        .filter(|p| p.extension().is_some_and(|e| e == "json"))
        .collect();
    files.sort();
    files
}

fn lay_one(file: &Path, options: &Options) -> Result<String, String> {
    let problem = instance::read(&file.to_string_lossy())?;
    let mut first = None;
    let lay = search(&problem, options, &AtomicBool::new(false), &mut |p| {
        first.get_or_insert_with(|| p.clone());
    })
    .map_err(|e| e.to_string())?;
    let faults = check(&problem, &lay.placements, lay.length);
    let first = first.map_or(String::new(), |p| {
        format!(
            "{:.2} % after {:4.0} ms",
            p.efficiency.to_percent(),
            p.elapsed.as_secs_f64() * 1e3
        )
    });
    Ok(format!(
        "{:.3} %  (first {first})  length {:.3}, bound {:.3}, {:.0} million places, {}",
        lay.efficiency.to_percent(),
        lay.length.to_mm(),
        lay.bounds.best().to_mm(),
        lay.places as f64 / 1e6,
        if faults.is_empty() {
            "right".to_owned()
        } else {
            format!("{} faults", faults.len())
        },
    ))
}
