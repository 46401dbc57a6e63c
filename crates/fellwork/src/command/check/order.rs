//! An order, checked: every style and size it names is there, its pieces can be cut, and its limits leave a plan.

use answers::CheckedCloth;
use spreading::{CutOrder, OrderError, plan_cloth};
use style::LoadedOrder;
use trade::counted;

use super::table;
use crate::args::Check;
use crate::command::named_file::take_note;
use crate::exit::Exit;
use crate::printed;
use crate::trouble::Trouble;

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
                printed::json(&answers::unread(&report)?)?;
            }
            return Err(report.into());
        }
    };
    let rows = cloths(&loaded);
    let errors = rows.iter().filter(|row| row.problem.is_some()).count();
    if asked.json {
        printed::json(&answers::check_order(&loaded, &rows)?)?;
    } else {
        printed::words(&words(&loaded, &rows, errors))?;
    }
    Ok(if errors > 0 {
        Exit::ErrorFound
    } else {
        Exit::Done
    })
}

fn cloths(loaded: &LoadedOrder) -> Vec<CheckedCloth> {
    let wrong = |cloth: &str, why: &OrderError| CheckedCloth {
        cloth: cloth.to_owned(),
        lays: None,
        length: None,
        problem: Some(why.to_string()),
    };
    let cut = match CutOrder::new(loaded) {
        Ok(cut) => cut,
        Err(why) => return vec![wrong("", &why)],
    };
    let jobs = cut.jobs();
    jobs.iter()
        .map(|job| match plan_cloth(job, None) {
            Ok(plan) => CheckedCloth {
                cloth: job.name.to_owned(),
                lays: Some(plan.lays.len()),
                length: Some(plan.cloth),
                problem: None,
            },
            Err(why) => wrong(job.name, &why),
        })
        .collect()
}

fn words(loaded: &LoadedOrder, rows: &[CheckedCloth], errors: usize) -> String {
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
