//! An order, checked: every style and size it names is there, its pieces can be cut, and its limits leave a plan.

use serde::Serialize;
use spreading::{CutOrder, OrderError, plan_cloth};
use style::LoadedOrder;
use trade::counted;

use super::{json, table};
use crate::args::Check;
use crate::command::take_note;
use crate::exit::Exit;
use crate::printed;
use crate::trouble::Trouble;

/// The version of the shape.
const FORMAT: u32 = 1;

#[derive(Serialize)]
struct Checked<'a> {
    format: u32,
    order: Head<'a>,
    errors: usize,
    cloths: Vec<ClothRow>,
}

#[derive(Serialize)]
struct Head<'a> {
    name: &'a str,
    file: String,
    pairs: u32,
}

/// One cloth of the order: its plan by estimates, or why there is none.
#[derive(Serialize)]
struct ClothRow {
    cloth: String,
    lays: Option<usize>,
    length_mm: Option<f64>,
    problem: Option<String>,
}

pub fn run(asked: &Check) -> Result<Exit, Trouble> {
    if asked.measures {
        return Err(Trouble::Option {
            what: format!(
                "--measures are those of a style, and {} is an order",
                asked.style.display()
            ),
            instead: "leave it out, or check a style that the order names".to_owned(),
        });
    }
    take_note(&asked.style);
    let loaded = match style::load_order(&asked.style) {
        Ok(loaded) => loaded,
        Err(report) => {
            if asked.json {
                printed::json(&json::unread(&report)?)?;
            }
            return Err(report.into());
        }
    };
    let rows = cloths(&loaded);
    let errors = rows.iter().filter(|row| row.problem.is_some()).count();
    if asked.json {
        let checked = Checked {
            format: FORMAT,
            order: Head {
                name: &loaded.order.name,
                file: loaded.path.display().to_string(),
                pairs: loaded.order.pairs(),
            },
            errors,
            cloths: rows,
        };
        printed::json(&json::line(&checked)?)?;
    } else {
        printed::words(&words(&loaded, &rows, errors))?;
    }
    Ok(if errors > 0 {
        Exit::ErrorFound
    } else {
        Exit::Done
    })
}

fn cloths(loaded: &LoadedOrder) -> Vec<ClothRow> {
    let wrong = |cloth: &str, why: &OrderError| ClothRow {
        cloth: cloth.to_owned(),
        lays: None,
        length_mm: None,
        problem: Some(why.to_string()),
    };
    let cut = match CutOrder::new(loaded) {
        Ok(cut) => cut,
        Err(why) => return vec![wrong("", &why)],
    };
    let jobs = cut.jobs();
    jobs.iter()
        .map(|job| match plan_cloth(job, None) {
            Ok(plan) => ClothRow {
                cloth: job.name.to_owned(),
                lays: Some(plan.lays.len()),
                length_mm: Some((plan.cloth.to_mm() * 1e3).round() / 1e3),
                problem: None,
            },
            Err(why) => wrong(job.name, &why),
        })
        .collect()
}

fn words(loaded: &LoadedOrder, rows: &[ClothRow], errors: usize) -> String {
    let mut text = format!(
        "{} is an order: {} of {}\n\n",
        loaded.order.name,
        counted(loaded.order.pairs(), "pair", "pairs"),
        counted(loaded.styles.len(), "style", "styles"),
    );
    for row in rows {
        text.push_str(&match (&row.problem, row.lays) {
            (Some(problem), _) => format!("error    {problem}\n"),
            (None, lays) => format!(
                "{}: by estimates it can be cut in {}\n",
                row.cloth,
                counted(lays.unwrap_or(0), "lay", "lays")
            ),
        });
    }
    text.push_str(&format!("\n{}\n", table::how_many(errors, "error")));
    let next = loaded.path.display();
    text.push_str(&format!(
        "next: fellwork plan {next}; its styles are checked one by one, with fellwork check\n"
    ));
    text
}
