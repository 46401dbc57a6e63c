//! Reading who washes a pair, when and how.

use crate::read_collection::{all, allowed};
use crate::read_style::word_list;
use crate::reader::Table;
use crate::wash::{SetAfter, Wash, WashFinish, WashStep, WashedBy};

pub(crate) fn wash(mut table: Table<'_>) -> Option<Wash> {
    let finish = table
        .required("finish", "finish = \"raw\", \"rinsed\" or \"washed\"")
        .and_then(|node| node.choice("style::unknown-word", WashFinish::WORDS));
    let by = table
        .required(
            "by",
            "by = \"mill\", \"laundry\", \"workroom\" or \"wearer\"",
        )
        .and_then(|node| node.choice("style::unknown-word", WashedBy::WORDS));
    let set_after = word_list(
        &mut table,
        "set_after",
        "[\"patch\", \"rivets\"]",
        SetAfter::WORDS,
    );
    let steps = table.optional("steps").map_or(Some(Vec::new()), |node| {
        let example =
            "[{ does = \"rinse\", temperature = \"40 °C\", time = \"10 min\", liquor = 10 }]";
        let members = node.list(example)?;
        all(members.iter().map(|member| step(member.table()?)))
    });
    table.finish();
    Some(Wash {
        finish: finish?,
        by: by?,
        set_after: set_after?,
        steps: steps?,
    })
}

fn step(mut table: Table<'_>) -> Option<WashStep> {
    let does = table
        .required("does", "does = \"rinse\", what is done in this step")
        .and_then(|node| node.text());
    let temperature = table.optional("temperature").map(|node| node.quantity());
    let time = table.optional("time").map(|node| node.quantity());
    let liquor = table.optional("liquor").map(|node| node.count(1));
    table.finish();
    Some(WashStep {
        does: does?,
        temperature: allowed(temperature)?,
        time: allowed(time)?,
        liquor: allowed(liquor)?,
    })
}
