//! The orders that name a style, each planned: which lays cut it, in how many plies, and how much cloth to buy.

use std::path::Path;

use spreading::{ClothPlan, CutOrder, plan_cloth};
use style::{Loaded, LoadedOrder, Size};
use trade::Length;
use words::Words;

use crate::answer::placed;

/// An order of the collection, by its file.
pub(super) struct Order {
    pub(super) stem: String,
    /// What is in it, or every mistake with its place.
    pub(super) read: Result<Planned, Vec<String>>,
}

/// An order, and how each of its cloths is cut.
pub(super) struct Planned {
    pub(super) name: String,
    pub(super) pairs: u32,
    /// The pairs of each line that names the style.
    pub(super) of_style: Vec<Vec<(Size, u32)>>,
    /// The cloths, or why the order cannot be cut.
    pub(super) cloths: Result<Vec<PlannedCloth>, String>,
}

/// One cloth of an order.
pub(super) struct PlannedCloth {
    pub(super) name: String,
    pub(super) width: Length,
    /// How it is cut, or why it cannot be.
    pub(super) plan: Result<LaysOfCloth, String>,
}

/// The lays of a cloth.
pub(super) struct LaysOfCloth {
    pub(super) plan: ClothPlan,
    /// What a ply of each lay holds, in words.
    pub(super) in_a_ply: Vec<String>,
}

/// The orders that name the style, and those that cannot be read; or why there is no list of them.
pub(super) fn naming(
    say: &'static Words,
    style: &str,
    loaded: &Loaded,
) -> Result<Vec<Order>, String> {
    let files = style::list_orders(&loaded.collection_folder).map_err(|why| why.to_string())?;
    let orders = files.iter().filter_map(|file| order(say, style, file));
    Ok(orders.collect())
}

/// One order, where it names the style or cannot be read.
fn order(say: &'static Words, style: &str, file: &Path) -> Option<Order> {
    let stem = file.file_name().unwrap_or_default().to_string_lossy();
    let read = match style::load_order(file) {
        Ok(loaded) => {
            let lines = loaded.order.lines.iter();
            let lines = lines.filter(|line| line.style == style);
            let of_style: Vec<_> = lines.map(|line| line.pairs.clone()).collect();
            of_style.first()?;
            Ok(Planned {
                name: loaded.order.name.clone(),
                pairs: loaded.order.pairs(),
                of_style,
                cloths: plans(&loaded),
            })
        }
        Err(report) => Err(placed(say, &report)),
    };
    Some(Order {
        stem: stem.into_owned(),
        read,
    })
}

fn plans(order: &LoadedOrder) -> Result<Vec<PlannedCloth>, String> {
    let cut = CutOrder::new(order).map_err(|why| why.to_string())?;
    let jobs = cut.jobs();
    let planned = jobs.iter().map(|job| PlannedCloth {
        name: job.cloth.name.clone(),
        width: job.cloth.width,
        plan: plan_cloth(job, None)
            .map(|plan| LaysOfCloth {
                in_a_ply: plan
                    .lays
                    .iter()
                    .map(|lay| job.in_words(&lay.planned.pairs))
                    .collect(),
                plan,
            })
            .map_err(|why| why.to_string()),
    });
    Ok(planned.collect())
}
