//! Reading the measurement chart.

use std::ops::Range;

use indexmap::IndexMap;
use trade::Length;
use words::Words;

use crate::chart::{Break, ChartEntry};
use crate::known;
use crate::read_collection::{all, allowed};
use crate::reader::{Node, Table, short};
use crate::{Level, MeasureId, Size, Sizes};

pub(crate) fn chart(
    section: &Table<'_>,
    sizes: Option<&Sizes>,
) -> Option<IndexMap<MeasureId, ChartEntry>> {
    let entries = section.entries();
    if section.is_there() {
        missing(section, &entries);
    }
    let read = entries.into_iter().map(|(name, span, node)| {
        let Some(measure) = MeasureId::of(&name) else {
            let hint = match near(&name) {
                Some(near) => format!("did you mean `{near}`?"),
                None => format!("the chart knows {}", names()),
            };
            let message = format!("`{}` is not a measure known here", short(&name));
            node.context
                .problem("chart", span, "style::unknown-measure", message, hint);
            return None;
        };
        let entry = entry(node.table()?, measure, sizes)?;
        Some((measure, entry))
    });
    let entries: Option<IndexMap<_, _>> = all(read).map(|entries| entries.into_iter().collect());
    entries
}

/// Reports the required measures a chart lacks, unless a misspelt one turns out to be meant for it.
fn missing(section: &Table<'_>, entries: &[(String, Range<usize>, Node<'_>)]) {
    let names = || entries.iter().map(|(name, _, _)| name.as_str());
    let meant: Vec<&str> = names().filter_map(near).collect();
    let required = MeasureId::ALL.into_iter();
    for measure in required.filter(|measure| measure.known().is_required()) {
        let code = measure.code();
        if names().any(|name| name == code) || meant.contains(&code) {
            continue;
        }
        let message = format!("the chart has no {}", title(measure));
        let hint = format!("add a section [chart.{code}] with its `value`");
        section
            .node
            .problem("style::missing-measure", message, hint);
    }
}

/// The measure that a name which is none was probably meant to be.
fn near(name: &str) -> Option<&'static str> {
    if MeasureId::of(name).is_some() {
        return None;
    }
    known::nearest(name, MeasureId::ALL.into_iter().map(MeasureId::code))
}

fn names() -> String {
    MeasureId::ALL
        .map(|measure| format!("`{}`", measure.code()))
        .join(", ")
}

/// What a measure is called within a sentence.
fn title(measure: MeasureId) -> &'static str {
    Words::english().named(measure.title())
}

fn entry(mut table: Table<'_>, measure: MeasureId, sizes: Option<&Sizes>) -> Option<ChartEntry> {
    let value_node = table.required("value", "value = \"26.5 cm\"");
    let value = value_node.as_ref().and_then(|node| node.quantity());
    let grade_node = table.optional("grade");
    let grade = grade_node.as_ref().map(|node| node.quantity());
    let per_length = table.optional("per_length").map(|node| node.quantity());
    let breaks = table
        .optional("breaks")
        .map_or(Some(Vec::new()), |node| breaks(&node));
    let at = table.optional("at").map(|node| level(&node, measure));
    let tolerance = table.optional("tolerance");
    let tolerance = tolerance.map_or(Some(measure.known().tolerance), |node| node.quantity());
    table.finish();
    let entry = ChartEntry {
        value: value?,
        grade: allowed(grade)?,
        per_length: allowed(per_length)?,
        breaks: breaks?,
        at: allowed(at)?.or(measure.known().level.map(Level::usual)),
        tolerance: tolerance?,
    };
    let shown = grade_node.or(value_node)?;
    stays_positive(&entry, measure, sizes, &shown).then_some(entry)
}

fn level(node: &Node<'_>, measure: MeasureId) -> Option<Length> {
    if measure.known().level.is_none() {
        let message = format!("{} is not taken at a level", title(measure));
        node.problem("style::no-level", message, "take `at` out");
        return None;
    }
    node.quantity()
}

fn breaks(node: &Node<'_>) -> Option<Vec<Break>> {
    let members = node.list("[{ above = 34, grade = \"0 in\" }]")?;
    let read = all(members.iter().map(|member| {
        let mut table = member.table()?;
        let above = table
            .required("above", "above = 34")
            .and_then(|node| node.tag());
        let grade = table
            .required("grade", "grade = \"0 in\"")
            .and_then(|node| node.quantity());
        table.finish();
        Some(Break {
            above: above?,
            grade: grade?,
        })
    }))?;
    for ((earlier, later), member) in read
        .iter()
        .zip(read.iter().skip(1))
        .zip(members.iter().skip(1))
    {
        if later.above <= earlier.above {
            let message = format!(
                "the break above {} comes after {}",
                later.above, earlier.above
            );
            member.problem(
                "style::break-order",
                message,
                "write breaks from small to large, each once",
            );
            return None;
        }
    }
    Some(read)
}

/// A grade must not take a measure down to nothing within the run.
fn stays_positive(
    entry: &ChartEntry,
    measure: MeasureId,
    sizes: Option<&Sizes>,
    node: &Node<'_>,
) -> bool {
    let Some(sizes) = sizes else { return true };
    let base = sizes.base;
    let too_small = |size: &Size| {
        let value = entry.value_at(base, *size);
        value <= Length::ZERO
    };
    let Some(size) = sizes.all().find(too_small) else {
        return true;
    };
    let value = entry.value_at(base, size);
    let message = format!("graded to size {size}, {} comes to {value}", title(measure));
    node.problem(
        "style::grade-runs-out",
        message,
        "it has to stay above zero in every size of the run",
    );
    false
}
