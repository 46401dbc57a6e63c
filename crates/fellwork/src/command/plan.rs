//! `fellwork plan`: the lays of an order, the plies of each, the cloth, and which roll gives what.

mod json;
mod words;

use std::sync::atomic::AtomicBool;

use cut_sheets::LayMarks;
use cutting::Spread;
use jobs::{Finder, Found, apart, cloth_of, system};
use lay::{Lay, LayError};
use spreading::{ClothJob, ClothPlan, CutOrder, Rolls, plan_cloth, spread_rolls};
use style::{LoadedOrder, Order};
use trade::System;

use crate::args::PlanOrder;
use crate::command::load_order;
use crate::exit::Exit;
use crate::output::Folder;
use crate::printed;
use crate::trouble::Trouble;

pub use json::SpliceRow;
pub use words::{plies, roll_ends};

/// One cloth of the order, planned.
struct Planned<'a> {
    job: &'a ClothJob<'a>,
    plan: ClothPlan,
    /// `None` where the order states no rolls of it.
    rolls: Option<Rolls>,
    /// Pairs of pieces that have to match and lie too far apart.
    apart: usize,
}

pub fn run(asked: &PlanOrder) -> Result<Exit, Trouble> {
    let folder = asked.output.as_deref();
    let folder = folder.map(|path| Folder::new(path, asked.over.replace));
    let folder = folder.transpose()?;
    let loaded = load_order(&asked.order)?;
    let cut = CutOrder::new(&loaded)?;
    let jobs = jobs_on(&loaded, &cut, asked.cloth.as_deref())?;
    let finder = Finder {
        collection: &loaded.collection_folder,
        options: asked.searching.options(),
        kept: asked.searching.kept(),
    };
    let mut planned = Vec::with_capacity(jobs.len());
    for job in &jobs {
        planned.push(plan_one(
            &loaded,
            job,
            (!asked.estimate).then_some(&finder),
        )?);
    }
    let system = system(&loaded.collection);
    if let Some(folder) = &folder {
        folder.write(&drawings(&planned, system))?;
    }
    if asked.json {
        printed::json(&json::answer(&loaded, &planned)?)?;
    } else {
        printed::words(&words::answer(&loaded, &planned, system))?;
    }
    Ok(Exit::Done)
}

/// What the order states beyond what is usual, in words with the reason.
fn unusual(order: &Order) -> Vec<String> {
    let english = ::words::Words::english();
    let stated = style::stated_by_order(order).into_iter();
    stated
        .filter_map(|one| {
            let range = one.range().filter(|range| !range.is_usual(one.amount))?;
            let [from, to] = range.usual;
            Some(format!(
                "{}: it is {}; {from} to {to} is usual ({})",
                english.putting(one.value.called()),
                one.amount,
                range.reason
            ))
        })
        .collect()
}

/// What is to be laid on the cloth asked for, or on every cloth.
pub fn jobs_on<'a>(
    loaded: &LoadedOrder,
    cut: &'a CutOrder<'_>,
    cloth: Option<&str>,
) -> Result<Vec<ClothJob<'a>>, Trouble> {
    let mut jobs = cut.jobs();
    if let Some(name) = cloth {
        cloth_of(&loaded.collection, name)?;
        let known: Vec<&str> = jobs.iter().map(|job| job.name).collect();
        let cloths = format!("it has pieces of {}", known.join(", "));
        jobs.retain(|job| job.name == name);
        if jobs.is_empty() {
            return Err(Trouble::NothingOfCloth {
                cloth: name.to_owned(),
                cloths,
            });
        }
    }
    Ok(jobs)
}

fn plan_one<'a>(
    loaded: &LoadedOrder,
    job: &'a ClothJob<'a>,
    finder: Option<&Finder<'_>>,
) -> Result<Planned<'a>, Trouble> {
    let plan = match finder {
        None => plan_cloth(job, None)?,
        Some(finder) => plan_cloth(
            job,
            Some(&mut |spread, pairs| {
                let found = found(finder, spread, &job.known_by(pairs))?;
                if !found.kept {
                    // A search takes seconds; somebody waits.
                    let length = found.lay.length.show(system(&loaded.collection));
                    let lay = job.in_words(pairs);
                    printed::to_stderr(&format!("{}, {lay}: {length}\n", job.name));
                }
                Ok(found.lay)
            }),
        )?,
    };
    let rolls = loaded.order.rolls_of(job.name);
    let far = |lay: &spreading::SpreadLay| Some(apart(&lay.spread, lay.found.as_ref()?));
    Ok(Planned {
        job,
        apart: plan.lays.iter().filter_map(far).sum(),
        rolls: (!rolls.is_empty()).then(|| spread_rolls(rolls, &plan.lays, job.limits.end_loss)),
        plan,
    })
}

/// Looks for a lay, with nobody to cancel it. One that cannot be kept is told of.
pub fn found(finder: &Finder<'_>, spread: &Spread, words: &str) -> Result<Found, LayError> {
    let never = AtomicBool::new(false);
    finder.find(spread, words, &never, &mut |_| ()).map(told)
}

/// A lay that was found, after it was told why it could not be kept, where it could not.
pub fn told(found: Found) -> Found {
    if let Some(why) = &found.not_kept {
        printed::to_stderr(&format!("the lay could not be kept: {why}\n"));
    }
    found
}

/// What is marked on the drawing of one lay of a plan.
pub fn marks(job: &ClothJob<'_>, plan: &ClothPlan, index: usize, lay: &Lay) -> LayMarks {
    let planned = plan.lays.get(index);
    LayMarks {
        heading: planned.map_or_else(String::new, |one| {
            format!(
                "Lay {} of {}: {} of {}",
                index + 1,
                plan.lays.len(),
                words::plies(one.planned.plies),
                job.in_words(&one.planned.pairs)
            )
        }),
        splices: planned.map_or_else(Vec::new, |one| {
            lay::splices(&one.spread.problem, &lay.placements, job.limits.most_lap)
        }),
        zones: job.limits.zones,
    }
}

/// One drawing a lay, named after cloth and number.
fn drawings(planned: &[Planned<'_>], system: System) -> Vec<(String, String)> {
    let mut drawings = Vec::new();
    for one in planned {
        for (index, spread_lay) in one.plan.lays.iter().enumerate() {
            let Some(found) = &spread_lay.found else {
                continue;
            };
            let marks = marks(one.job, &one.plan, index, found);
            let sheet =
                cut_sheets::lay_sheet(&spread_lay.spread, found, one.job.cloth, &marks, system);
            let name = format!("{}-{}.svg", one.job.name, index + 1);
            drawings.push((name, drawing::svg(&sheet)));
        }
    }
    drawings
}
