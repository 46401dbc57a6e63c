//! The plan of an order: the lays of each cloth, one after another, with the rolls that give them.

use std::sync::atomic::AtomicBool;

use cut_sheets::LayMarks;
use lay::{Lay, LayError, Progress};
use spreading::{ClothJob, ClothPlan, CutOrder, Kind, Rolls, SpreadLay, spread_rolls};
use style::{Cloth, LoadedOrder, Order, SpreadLimits};
use trade::{System, counted};

use crate::asked::{cloth_of, wanted};
use crate::error::JobError;
use crate::lay_search::{Finder, Found, apart};

/// One cloth of an order, planned.
#[derive(Clone, Debug)]
pub struct PlannedCloth {
    /// Its name in the collection.
    pub name: String,
    /// The cloth.
    pub cloth: Cloth,
    /// What the cutting room can do with it.
    pub limits: SpreadLimits,
    /// The sizes that have pieces of it.
    pub kinds: Vec<Kind>,
    /// Its lays.
    pub plan: ClothPlan,
    /// Which roll gives what; `None` where the order states no rolls of it.
    pub rolls: Option<Rolls>,
    /// Pairs of pieces that have to match and lie too far apart.
    pub apart: usize,
}

/// How far a plan is.
#[derive(Clone, Copy, Debug)]
pub enum PlanStage<'a> {
    /// So many of all cloths are planned.
    Cloths(usize, usize),
    /// A lay of a cloth is looked for.
    Looking {
        /// The cloth's name.
        cloth: &'a str,
        /// What is laid, such as "1 x 30x32, 2 x 32x32".
        pairs: &'a str,
        /// How the search stands.
        progress: &'a Progress,
    },
    /// A lay of a cloth was found, now or before.
    Found {
        /// The cloth's name.
        cloth: &'a str,
        /// What is laid.
        pairs: &'a str,
        /// The lay.
        found: &'a Found,
    },
}

/// Plans every cloth of an order, or the one that is named. With a finder every lay is looked for, or found again where it
/// was kept; without one all lengths are estimates. Lays that were found before a plan is cancelled stay kept.
///
/// # Errors
/// The cloth is unknown or nothing is cut from it, a piece cannot be cut as its style says, the limits leave no plan or
/// none was found, or it was cancelled.
pub fn plan_order(
    loaded: &LoadedOrder,
    cloth: Option<&str>,
    finder: Option<&Finder<'_>>,
    cancel: &AtomicBool,
    tell: &mut dyn FnMut(PlanStage<'_>),
) -> Result<Vec<PlannedCloth>, JobError> {
    let cut = CutOrder::new(loaded)?;
    let jobs = order_cloths(loaded, &cut, cloth)?;
    let mut planned = Vec::with_capacity(jobs.len());
    for job in &jobs {
        tell(PlanStage::Cloths(planned.len(), jobs.len()));
        planned.push(plan_order_cloth(loaded, job, finder, cancel, tell)?);
    }
    Ok(planned)
}

/// What an order asks of every cloth, or of the one that is named.
///
/// # Errors
/// The cloth is unknown, or nothing is cut from it.
pub fn order_cloths<'a>(
    loaded: &LoadedOrder,
    cut: &'a CutOrder<'_>,
    cloth: Option<&str>,
) -> Result<Vec<ClothJob<'a>>, JobError> {
    let mut jobs = cut.jobs();
    if let Some(name) = cloth {
        cloth_of(&loaded.collection, name)?;
        let known: Vec<&str> = jobs.iter().map(|job| job.name).collect();
        let cloths = format!("it has pieces of {}", known.join(", "));
        jobs.retain(|job| job.name == name);
        if jobs.is_empty() {
            return Err(JobError::NothingOfCloth {
                cloth: name.to_owned(),
                cloths,
            });
        }
    }
    Ok(jobs)
}

/// Plans one cloth of an order, as [`plan_order`] plans each.
///
/// # Errors
/// The limits leave no plan or none was found, or it was cancelled.
pub fn plan_order_cloth(
    loaded: &LoadedOrder,
    job: &ClothJob<'_>,
    finder: Option<&Finder<'_>>,
    cancel: &AtomicBool,
    tell: &mut dyn FnMut(PlanStage<'_>),
) -> Result<PlannedCloth, JobError> {
    wanted(cancel)?;
    let plan = match finder {
        None => spreading::plan_cloth(job, None)?,
        Some(finder) => spreading::plan_cloth(
            job,
            Some(&mut |spread, pairs| {
                // What a cancelled search has is kept, but nobody waits for the next.
                wanted(cancel).map_err(|_| LayError::Cancelled)?;
                let (cloth, words) = (job.name, &job.in_words(pairs));
                let looking = &mut |progress: &Progress| {
                    tell(PlanStage::Looking {
                        cloth,
                        pairs: words,
                        progress,
                    });
                };
                let found = finder.find(spread, &job.known_by(pairs), cancel, looking)?;
                tell(PlanStage::Found {
                    cloth,
                    pairs: words,
                    found: &found,
                });
                Ok(found.lay)
            }),
        )?,
    };
    wanted(cancel)?;
    let rolls = loaded.order.rolls_of(job.name);
    let far = |lay: &SpreadLay| Some(apart(&lay.spread, lay.found.as_ref()?));
    Ok(PlannedCloth {
        name: job.name.to_owned(),
        cloth: job.cloth.clone(),
        limits: job.limits.clone(),
        kinds: job.kinds.iter().map(|kind| (*kind).clone()).collect(),
        apart: plan.lays.iter().filter_map(far).sum(),
        rolls: (!rolls.is_empty()).then(|| spread_rolls(rolls, &plan.lays, job.limits.end_loss)),
        plan,
    })
}

impl PlannedCloth {
    /// What was planned.
    #[must_use]
    pub fn job(&self) -> ClothJob<'_> {
        ClothJob {
            name: &self.name,
            cloth: &self.cloth,
            limits: &self.limits,
            kinds: self.kinds.iter().collect(),
        }
    }

    /// What is marked on the drawing of one of its lays, which may be another of the same pieces.
    #[must_use]
    pub fn marks(&self, index: usize, lay: &Lay) -> LayMarks {
        let planned = self.plan.lays.get(index);
        LayMarks {
            heading: planned.map_or_else(String::new, |one| {
                format!(
                    "Lay {} of {}: {} of {}",
                    index + 1,
                    self.plan.lays.len(),
                    counted(one.planned.plies, "ply", "plies"),
                    self.job().in_words(&one.planned.pairs)
                )
            }),
            splices: planned.map_or_else(Vec::new, |one| {
                lay::splices(&one.spread.problem, &lay.placements, self.limits.most_lap)
            }),
            zones: self.limits.zones,
        }
    }

    /// One drawing for each lay that was found.
    #[must_use]
    pub fn drawings(&self, system: System, words: &words::Words) -> Vec<LayDrawing> {
        let lays = self.plan.lays.iter().enumerate();
        lays.filter_map(|(index, lay)| {
            let found = lay.found.as_ref()?;
            let marks = self.marks(index, found);
            let read = (words, system);
            let sheet = cut_sheets::lay_sheet(&lay.spread, found, &self.cloth, &marks, read);
            Some(LayDrawing {
                name: format!("{}-{}.svg", self.name, index + 1),
                svg: drawing::svg(&sheet),
            })
        })
        .collect()
    }
}

/// A lay of a plan, drawn.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LayDrawing {
    /// The name of its file: the cloth and the lay's number.
    pub name: String,
    /// The drawing, true to scale.
    pub svg: String,
}

/// What an order states beyond what is usual, in words with the reason.
#[must_use]
pub fn unusual(order: &Order) -> Vec<String> {
    let english = words::Words::english();
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
