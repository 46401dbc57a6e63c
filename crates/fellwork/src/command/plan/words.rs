//! The plan for a person.

use std::fmt::Write;

use jobs::PlannedCloth;
use lay::Splice;
use spreading::{ClothPlan, Rolls, SpreadLay};
use style::{LoadedOrder, SpreadLimits};
use trade::{Length, System, counted};

pub fn answer(loaded: &LoadedOrder, planned: &[PlannedCloth], system: System) -> String {
    let order = &loaded.order;
    let mut text = format!(
        "{}: {}\n",
        order.name,
        counted(order.pairs(), "pair", "pairs")
    );
    for said in jobs::unusual(order) {
        let _ = writeln!(text, "  look again: {said}");
    }
    for one in planned {
        text.push('\n');
        cloth(&mut text, one, system);
    }
    text
}

/// "1 ply", "8 plies".
pub fn plies(count: u32) -> String {
    counted(count, "ply", "plies")
}

// Writing to a String cannot fail, so what `write!` answers is left aside here.
fn cloth(text: &mut String, one: &PlannedCloth, system: System) {
    let (job, plan) = (&one.job(), &one.plan);
    let all: u32 = plan.lays.iter().map(|lay| lay.planned.plies).sum();
    let _ = writeln!(
        text,
        "{} ({}, {} wide): {} in {}, {}, {} a pair{}",
        job.cloth.name,
        job.name,
        job.cloth.width.show(system),
        plies(all),
        counted(plan.lays.len(), "lay", "lays"),
        plan.cloth.show_cloth(system),
        plan.each().show(system),
        if plan.lays.iter().all(|lay| lay.found.is_some()) {
            ""
        } else {
            " (estimated)"
        },
    );
    for (index, lay) in plan.lays.iter().enumerate() {
        lay_lines(
            text,
            index + 1,
            lay,
            &job.in_words(&lay.planned.pairs),
            system,
        );
    }
    let _ = writeln!(
        text,
        "  {} is lost at the ends of plies, {:.1} % of the cloth is no piece; to buy: {}{}",
        plan.ends.show_cloth(system),
        plan.waste.to_percent(),
        plan.to_buy.show_cloth(system),
        on_top(job.limits, system),
    );
    let _ = writeln!(text, "  {}", how(one));
    choices(text, plan, system);
    if one.apart > 0 {
        let _ = writeln!(
            text,
            "  {} further apart than they may: look longer",
            counted(
                one.apart,
                "pair of pieces that has to match in shade lies",
                "pairs of pieces that have to match in shade lie"
            ),
        );
    }
    if let Some(used) = &one.rolls {
        rolls(text, used, plan, system);
    }
}

fn lay_lines(text: &mut String, number: usize, lay: &SpreadLay, sizes: &str, system: System) {
    let pairs = lay.planned.pairs_in_ply();
    let _ = writeln!(
        text,
        "  lay {number}: {} of {sizes}; a ply {} with its ends, {} a pair; {}",
        plies(lay.planned.plies),
        lay.ply.show(system),
        (lay.ply / f64::from(pairs.max(1))).show(system),
        lay.cloth.show_cloth(system),
    );
    let Some(found) = &lay.found else {
        let _ = writeln!(text, "         estimated");
        return;
    };
    let _ = writeln!(
        text,
        "         {:.1} % of the cloth used, no lay is shorter than {}; a roll may end at {}",
        found.efficiency.to_percent(),
        found.bounds.best().show(system),
        roll_ends(&lay.splices, system),
    );
}

/// Where a roll may end: "120 cm (lap 14 cm), 240 cm (lap 9 cm)", or "no place".
pub fn roll_ends(splices: &[Splice], system: System) -> String {
    if splices.is_empty() {
        return "no place".to_owned();
    }
    let places = splices.iter().map(|splice| {
        format!(
            "{} (lap {})",
            splice.from.show(system),
            splice.lap().show(system)
        )
    });
    places.collect::<Vec<_>>().join(", ")
}

fn on_top(limits: &SpreadLimits, system: System) -> String {
    let parts = [("faults", limits.faults), ("splices", limits.splices)];
    let parts: Vec<String> = parts
        .iter()
        .filter(|(_, share)| share.to_ratio() > 0.0)
        .map(|(what, share)| format!("{} for {what}", share.show(system)))
        .collect();
    if parts.is_empty() {
        String::new()
    } else {
        format!(", with {}", parts.join(" and "))
    }
}

/// How plies are laid.
fn how(one: &PlannedCloth) -> &'static str {
    let face_to_face = one.plan.lays.iter().all(|lay| lay.spread.face_to_face);
    let even = one.plan.lays.iter().all(|lay| lay.planned.plies % 2 == 0);
    match (face_to_face, even) {
        (true, true) => {
            "spread face up; face to face will do too, for every piece comes with its mirror image and plies are even"
        }
        (true, false) => {
            "spread face up; face to face will do where the plies are even, for every piece comes with its mirror image"
        }
        (false, _) => "spread face up, every ply: some pieces have no mirror image",
    }
}

fn choices(text: &mut String, plan: &ClothPlan, system: System) {
    let others: Vec<String> = plan
        .choices
        .iter()
        .filter(|choice| choice.lays != plan.lays.len())
        .map(|choice| {
            let estimated = if choice.found { "" } else { ", estimated" };
            format!(
                "{} {}{estimated}",
                counted(choice.lays, "lay", "lays"),
                choice.cloth.show_cloth(system)
            )
        })
        .collect();
    if !others.is_empty() {
        let _ = writeln!(text, "  the best with {}", others.join("; with "));
    }
    if !plan.proved {
        let _ = writeln!(
            text,
            "  there are too many plans to weigh them all: a better one may exist, but none that takes less than {}; allow fewer lays to be sure",
            plan.no_less.show_cloth(system)
        );
    }
    if !plan.settled {
        let _ = writeln!(
            text,
            "  this is the best of the lays looked for; others might be better: plan again to go on"
        );
    }
}

fn rolls(text: &mut String, rolls: &Rolls, plan: &ClothPlan, system: System) {
    let mut shade = None;
    for drawn in &rolls.drawn {
        if shade != Some(&drawn.shade) {
            shade = Some(&drawn.shade);
            let named = if drawn.shade.is_empty() {
                "not judged"
            } else {
                &drawn.shade
            };
            let _ = writeln!(text, "  shade {named}:");
        }
        let begun = drawn.begun.as_ref().map_or_else(String::new, |begun| {
            format!(
                ", the first begun by {}, which ends at {}; go on from {}",
                begun.by,
                begun.at.until.show(system),
                begun.at.from.show(system),
            )
        });
        let _ = writeln!(
            text,
            "    roll {}: {} of lay {}{begun}",
            drawn.roll,
            plies(drawn.plies),
            drawn.lay + 1,
        );
    }
    let left = |whole: bool| {
        let rests = rolls.rests.iter();
        let rests = rests.filter(|rest| rest.whole == whole && rest.length > Length::mm(1.0));
        let words: Vec<String> = rests
            .map(|rest| format!("{} {}", rest.roll, rest.length.show_cloth(system)))
            .collect();
        words.join(", ")
    };
    for (words, whole) in [("left on rolls", false), ("rolls not used", true)] {
        let left = left(whole);
        if !left.is_empty() {
            let _ = writeln!(text, "    {words}: {left}");
        }
    }
    if rolls.laps > Length::ZERO {
        let _ = writeln!(
            text,
            "    double at splices: {}",
            rolls.laps.show_cloth(system)
        );
    }
    if rolls.short > Length::ZERO {
        let missing: Vec<String> = rolls
            .missing
            .iter()
            .enumerate()
            .filter(|(_, missing)| **missing > 0)
            .map(|(lay, missing)| format!("{} of lay {}", plies(*missing), lay + 1))
            .collect();
        let _ = writeln!(
            text,
            "    the rolls are too short: {} is missing for {}{}",
            rolls.short.show_cloth(system),
            missing.join(", "),
            if plan.lays.iter().any(|lay| !lay.splices.is_empty()) {
                ""
            } else {
                "; allowing a lap (`most_lap`) would use the ends of rolls"
            }
        );
    }
}
