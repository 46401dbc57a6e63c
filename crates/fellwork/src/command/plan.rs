//! `fellwork plan`: the lays of an order, the plies of each, the cloth, and which roll gives what.

mod words;

use std::sync::atomic::AtomicBool;

use jobs::{Finder, Found, LayDrawing, PlanStage, plan_order, system};
use trade::System;

use crate::args::PlanOrder;
use crate::command::named_file::load_order;
use crate::exit::Exit;
use crate::output::Folder;
use crate::printed;
use crate::trouble::Trouble;

pub use words::{plies, roll_ends};

pub fn run(asked: &PlanOrder) -> Result<Exit, Trouble> {
    let folder = asked.output.as_deref();
    let folder = folder.map(|path| Folder::new(path, asked.over.replace));
    let folder = folder.transpose()?;
    let loaded = load_order(&asked.order)?;
    let finder = Finder {
        collection: &loaded.collection_folder,
        options: asked.searching.options(),
        kept: asked.searching.kept(),
    };
    let system = system(&loaded.collection);
    let never = AtomicBool::new(false);
    let planned = plan_order(
        &loaded,
        asked.cloth.as_deref(),
        (!asked.estimate).then_some(&finder),
        &never,
        &mut |stage| told_on_the_way(stage, system),
    )?;
    if let Some(folder) = &folder {
        let drawings = planned
            .iter()
            .flat_map(|one| one.drawings(system, ::words::Words::english()));
        let files = drawings.map(|LayDrawing { name, svg }| (name, svg));
        folder.write(&files.collect::<Vec<_>>())?;
    }
    if asked.json {
        printed::json(&answers::plan(&loaded, &planned)?)?;
    } else {
        printed::words(&words::answer(&loaded, &planned, system))?;
    }
    Ok(Exit::Done)
}

/// A lay that is looked for takes seconds, and somebody waits.
fn told_on_the_way(stage: PlanStage<'_>, system: System) {
    let PlanStage::Found {
        cloth,
        pairs,
        found,
    } = stage
    else {
        return;
    };
    told(found);
    if !found.kept {
        let length = found.lay.length.show(system);
        printed::to_stderr(&format!("{cloth}, {pairs}: {length}\n"));
    }
}

/// Tells why a lay could not be kept, where it could not.
pub fn told(found: &Found) {
    if let Some(why) = &found.not_kept {
        printed::to_stderr(&format!("the lay could not be kept: {why}\n"));
    }
}
