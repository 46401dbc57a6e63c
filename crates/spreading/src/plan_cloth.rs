//! Planning one cloth: estimate, plan, look for the chosen lays, and plan again with what was found.

use cutting::Spread;
use lay::{Lay, LayError, Splice, splices};
use trade::{Area, Length, Share, System};

use crate::cut_order::{Asked, ClothJob, OrderError, Unsure};
use crate::estimate::Estimates;
use crate::plan::{PlannedLay, Task, plan};

/// How often a plan is made again with what was found.
const MOST_ROUNDS: usize = 8;

/// One lay of the plan.
#[derive(Clone, Debug)]
pub struct SpreadLay {
    /// Sizes, plies and the length of a ply.
    pub planned: PlannedLay,
    /// The pieces of one ply.
    pub spread: Spread,
    /// Where they lie; `None` where the length is an estimate.
    pub found: Option<Lay>,
    /// A ply with both its ends.
    pub ply: Length,
    /// All its plies with their ends.
    pub cloth: Length,
    /// The area of the pieces of one ply.
    pub pieces: Area,
    /// Where a roll may end; none where the length is an estimate.
    pub splices: Vec<Splice>,
}

/// The best plan with a given number of lays, to weigh work against cloth.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Choice {
    /// How many lays.
    pub lays: usize,
    /// Plies of all lays.
    pub plies: u32,
    /// The cloth of all plies, their ends included.
    pub cloth: Length,
    /// Whether all its lays were found; else the figure is partly an estimate.
    pub found: bool,
}

/// The lays of one cloth.
#[derive(Clone, Debug)]
pub struct ClothPlan {
    /// The cloth's name in the collection.
    pub cloth_name: String,
    /// The lays, the one with the most plies first.
    pub lays: Vec<SpreadLay>,
    /// The cloth of all plies, their ends included.
    pub cloth: Length,
    /// What is lost at the ends of plies.
    pub ends: Length,
    /// What has to be bought: with the order's allowances for faults and splices.
    pub to_buy: Length,
    /// The pairs cut.
    pub pairs: u32,
    /// The share of the cloth that is no piece.
    pub waste: Share,
    /// The best plan of each number of lays.
    pub choices: Vec<Choice>,
    /// Whether every plan was weighed, given the lengths found and the estimates of the others.
    pub proved: bool,
    /// By the same no plan takes less than this.
    pub no_less: Length,
    /// Whether searching more lays would change nothing: the plan is the best by everything known.
    pub settled: bool,
}

impl ClothPlan {
    /// The cloth of one pair, the ends of plies included.
    #[must_use]
    pub fn each(&self) -> Length {
        self.cloth / f64::from(self.pairs.max(1))
    }
}

/// Looks for one lay: the pieces, and the pairs of each size.
pub type Find<'f> = dyn FnMut(&Spread, &[u32]) -> Result<Lay, LayError> + 'f;

/// Plans the lays of one cloth.
///
/// With `find` every lay of the answer was found by it; the plan is made again whenever a lay turns
/// out longer or shorter than estimated. Without it all lengths are estimates.
///
/// # Errors
/// When a pair cannot be laid on the cloth, no plan keeps the limits ([`OrderError::NoPlan`], which is only said
/// where everything was weighed), or none was found ([`OrderError::NotFound`]).
pub fn plan_cloth(
    job: &ClothJob<'_>,
    mut find: Option<&mut Find<'_>>,
) -> Result<ClothPlan, OrderError> {
    let cannot_lay = |pairs: &[u32], why: LayError| OrderError::Lay {
        cloth: job.name.to_owned(),
        pairs: job.in_words(pairs),
        why,
    };
    let mut estimates = Estimates::new(job).map_err(|(pairs, why)| cannot_lay(&pairs, why))?;
    let task = task(job);
    let mut lays: Vec<(Vec<u32>, Lay)> = Vec::new();
    let mut plans = plan(&task, &estimates);
    let mut settled = find.is_none();
    if let Some(find) = find.as_mut() {
        // Where nothing fits the table by the usual estimates, lays are looked for in the hope that they do.
        for hopeful in [false, true] {
            if hopeful {
                if plans.best().is_some() {
                    break;
                }
                estimates = estimates.hopeful();
                plans = plan(&task, &estimates);
            }
            for _ in 0..MOST_ROUNDS {
                let Some(best) = plans.best() else { break };
                let missing: Vec<Vec<u32>> = best
                    .lays
                    .iter()
                    .map(|lay| lay.pairs.clone())
                    .filter(|pairs| !estimates.is_found(pairs))
                    .collect();
                settled = missing.is_empty();
                if settled {
                    break;
                }
                for pairs in missing {
                    let lay =
                        find(&job.spread(&pairs), &pairs).map_err(|why| cannot_lay(&pairs, why))?;
                    estimates.learn(&pairs, lay.length);
                    lays.push((pairs, lay));
                }
                plans = plan(&task, &estimates);
            }
            if !settled {
                plans = plan(&task, &estimates.of_found());
            }
        }
    }
    let Some(best) = plans.best() else {
        return Err(no_plan(job, &task, &estimates, !lays.is_empty()));
    };
    let choices = plans
        .of_lays
        .iter()
        .map(|plan| Choice {
            lays: plan.lays.len(),
            plies: plan.lays.iter().map(|lay| lay.plies).sum(),
            cloth: plan.cloth,
            found: plan.lays.iter().all(|lay| estimates.is_found(&lay.pairs)),
        })
        .collect();
    let lays: Vec<SpreadLay> = best
        .lays
        .iter()
        .map(|planned| {
            let found = lays.iter().find(|(pairs, _)| *pairs == planned.pairs);
            spread_lay(job, planned, found.map(|(_, lay)| lay))
        })
        .collect();
    let area: f64 = lays
        .iter()
        .map(|lay| lay.pieces.to_mm2() * f64::from(lay.planned.plies))
        .sum();
    let plies: u32 = lays.iter().map(|lay| lay.planned.plies).sum();
    let on_top = 1.0 + job.limits.faults.to_ratio() + job.limits.splices.to_ratio();
    Ok(ClothPlan {
        cloth_name: job.name.to_owned(),
        cloth: best.cloth,
        ends: task.ends * f64::from(plies),
        to_buy: best.cloth * on_top,
        pairs: task.wanted.iter().sum(),
        waste: Share::ratio(1.0 - area / (best.cloth.to_mm() * job.cloth.width.to_mm())),
        choices,
        proved: plans.proved,
        no_less: plans.no_less,
        settled,
        lays,
    })
}

fn task(job: &ClothJob<'_>) -> Task {
    let limits = job.limits;
    Task {
        wanted: job.wanted(),
        most_plies: limits.plies(job.cloth.thickness),
        most_pairs: limits.most_pairs,
        lays: limits.fewest_lays as usize..=limits.most_lays as usize,
        ends: limits.end_loss * 2.0,
    }
}

fn spread_lay(job: &ClothJob<'_>, planned: &PlannedLay, found: Option<&Lay>) -> SpreadLay {
    let spread = job.spread(&planned.pairs);
    let ply = planned.length + job.limits.end_loss * 2.0;
    let area =
        |piece: &lay::Piece| geometry::area(&piece.outline).to_mm2().abs() * piece.demand as f64;
    SpreadLay {
        planned: planned.clone(),
        pieces: Area::mm2(spread.problem.pieces.iter().map(area).sum()),
        splices: found.map_or_else(Vec::new, |lay| {
            splices(&spread.problem, &lay.placements, job.limits.most_lap)
        }),
        found: found.cloned(),
        ply,
        cloth: ply * f64::from(planned.plies),
        spread,
    }
}

/// Why there is no plan, or why it is not known whether there is one.
fn no_plan(job: &ClothJob<'_>, task: &Task, estimates: &Estimates, searched: bool) -> OrderError {
    let cloth = job.name.to_owned();
    let asked = Asked {
        pairs: task.wanted.iter().sum(),
        fewest_lays: *task.lays.start(),
        most_lays: *task.lays.end(),
        most_pairs: task.most_pairs,
        most_plies: task.most_plies,
        table: job.limits.table.show(System::Metric),
    };
    let shortest = plan(task, &estimates.bounds());
    let why = match (shortest.best(), shortest.proved) {
        (None, true) => return OrderError::NoPlan { cloth, asked },
        (None, false) => Unsure::TooMany,
        (Some(_), _) if searched => Unsure::LookedFor,
        (Some(_), _) => Unsure::Estimated,
    };
    OrderError::NotFound { cloth, asked, why }
}
