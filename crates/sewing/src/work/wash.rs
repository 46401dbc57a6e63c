//! The first wash as an operation of the order, and what is set only after it.

use style::{SeamId, SetAfter, Wash, WashStep, WashedBy};
use trade::MachineId;
use words::{Said, key, say};

use super::operation::{Operation, Stage};
use super::operation_key::Task;
use super::plan::{After, Plan, by_hand, once_each, says, washed};
use super::waist::patched_first;
use crate::garment::Garment;

impl Garment {
    /// Whether something is set only after the pair was washed by whoever makes it.
    #[must_use]
    pub fn is_set_after_wash(&self, what: SetAfter) -> bool {
        let wash = self
            .doc
            .wash
            .as_ref()
            .filter(|wash| is_washed_when_sewn(wash));
        wash.is_some_and(|wash| wash.set_after.contains(&what))
    }
}

/// A wash between sewing and delivery; the mill's comes before everything, the wearer's after.
pub(crate) fn is_washed_when_sewn(wash: &Wash) -> bool {
    !wash.is_raw() && matches!(wash.by, WashedBy::Laundry | WashedBy::Workroom)
}

/// Adds the wash after everything that is done; nothing where none is given before the pair is delivered.
pub(super) fn wash(plan: &mut Plan<'_>, done: After) -> After {
    let wash = plan.garment.doc.wash.as_ref();
    let Some(wash) = wash.filter(|wash| is_washed_when_sewn(wash)) else {
        return done;
    };
    let (by, machine) = match wash.by {
        WashedBy::Laundry => (key::MIND_WASH_LAUNDRY, MachineId::Laundry),
        WashedBy::Workroom | WashedBy::Mill | WashedBy::Wearer => {
            (key::MIND_WASH_HERE, MachineId::WashingMachine)
        }
    };
    let steps = wash.steps.iter().map(WashStep::to_string);
    let steps = steps.map(|step| say::MindWashStep { step }.into());
    let recipe: Vec<Said> = if wash.steps.is_empty() {
        vec![key::MIND_WASH_ASK.into()]
    } else {
        steps.collect()
    };
    let trimmed = plan.add(Operation {
        mind: says(&[key::MIND_TRIM_THREADS]),
        after: done,
        ..by_hand(Stage::Finish, Task::TrimThreads)
    });
    plan.add(Operation {
        mind: [by.into()].into_iter().chain(recipe).collect(),
        after: trimmed,
        ..washed(Stage::Finish, Task::Wash, machine)
    })
}

/// Moves what is set after the wash behind it; what was to come after such work follows what that came after.
pub(super) fn set_after(plan: &mut Plan<'_>) {
    let garment = plan.garment;
    let is_wash = |o: &Operation| o.key.task() == Some(Task::Wash);
    let Some(washed) = plan.operations.iter().find(|o| is_wash(o)).map(|o| o.key) else {
        return;
    };
    // A patch on the outer ply alone cannot wait: the band is closed by then.
    let never = |what| what == SetAfter::Patch && patched_first(garment);
    let waits = |o: &Operation| {
        waits(o).is_some_and(|what| garment.is_set_after_wash(what) && !never(what))
    };
    let (later, mut order): (Vec<Operation>, Vec<Operation>) =
        plan.operations.drain(..).partition(waits);
    for operation in &mut order {
        if operation.key.task() == Some(Task::LookOver) {
            operation
                .after
                .extend(later.iter().map(|waiting| waiting.key));
            continue;
        }
        // The last first: it may have come after another that waits too.
        for waiting in later.iter().rev() {
            if operation.after.contains(&waiting.key) {
                operation.after.retain(|key| *key != waiting.key);
                operation.after.extend(waiting.after.iter().copied());
            }
        }
        operation.after = once_each(std::mem::take(&mut operation.after));
    }
    let at = order
        .iter()
        .position(is_wash)
        .map_or(order.len(), |at| at + 1);
    let later = later.into_iter().map(|operation| Operation {
        stage: Stage::Finish,
        after: once_each([washed].into_iter().chain(operation.after.iter().copied())),
        ..operation
    });
    order.splice(at..at, later);
    for (index, operation) in order.iter_mut().enumerate() {
        operation.number = index + 1;
    }
    plan.operations = order;
}

/// What an operation sets that a style may have set after the wash.
fn waits(operation: &Operation) -> Option<SetAfter> {
    match (operation.key.seam(), operation.key.task()) {
        (Some(SeamId::PatchSet), _) => Some(SetAfter::Patch),
        (Some(SeamId::LabelSet), _) => Some(SetAfter::Labels),
        (_, Some(Task::BandButton | Task::FlyButtons)) => Some(SetAfter::Buttons),
        (_, Some(Task::MouthRivets)) => Some(SetAfter::Rivets),
        _ => None,
    }
}
