//! The measurement chart in every size and length, and how each measure is taken.

use draft::measure::{MEASURES, Measure};
use style::{Size, Tag, known};
use trade::Length;

use super::context::Context;
use super::words::{Words, capital};
use crate::{Chart, ChartRow, ChartValues, LengthLine};

pub(super) fn chart(context: &Context<'_>) -> Chart {
    let sizes = &context.loaded.style.sizes;
    let words = context.words;
    Chart {
        note: format!(
            "Finished garment after its first wash, flat and closed; {}, {}. Girths are whole girths. \
             The numbers are those of the measure diagrams.",
            words.unit(),
            words.rounding()
        ),
        sizes_label: "waist size, inches".to_owned(),
        sizes: sizes.waists.iter().map(Tag::to_string).collect(),
        sample: sizes
            .waists
            .iter()
            .position(|&w| w == context.shown.size.waist),
        lengths_label: "length".to_owned(),
        rows: MEASURES
            .iter()
            .filter_map(|measure| row(context, measure))
            .collect(),
    }
}

fn row(context: &Context<'_>, measure: &Measure) -> Option<ChartRow> {
    let style = &context.loaded.style;
    let words = context.words;
    let entry = style.chart.get(measure.key);
    let known = known::measure(measure.key);
    let tolerance = entry.map(|e| e.tolerance).or(known.map(|k| k.tolerance));
    let level = style.level(measure.key);
    let values = values(context, measure)?;
    Some(ChartRow {
        number: drawing::measure_number(measure.key).map_or_else(String::new, |n| n.to_string()),
        name: named(measure, level, known.map_or("", |k| k.from), words),
        how: how(measure, level, words),
        tolerance: tolerance.map_or_else(String::new, |t| words.tolerance(t)),
        values,
    })
}

/// "Seat, 8 cm above the crotch".
fn named(measure: &Measure, level: Option<Length>, from: &str, words: Words) -> String {
    match level {
        Some(level) => format!("{}, {} {from}", capital(measure.name), words.length(level)),
        None => capital(measure.name),
    }
}

/// The definition speaks of the stated level; here it is stated.
fn how(measure: &Measure, level: Option<Length>, words: Words) -> String {
    let Some(level) = level else {
        return measure.how.to_owned();
    };
    let level = words.length(level);
    measure
        .how
        .replace("the stated height", &level)
        .replace("the stated distance", &level)
}

/// One figure a waist, or a line of figures for each length where the measure follows it.
fn values(context: &Context<'_>, measure: &Measure) -> Option<ChartValues> {
    let sizes = &context.loaded.style.sizes;
    let figures = |length: Tag| -> Vec<Option<String>> {
        sizes
            .waists
            .iter()
            .map(|&waist| value(context, measure, Size { waist, length }))
            .map(|value| value.map(|v| context.words.figure(v)))
            .collect()
    };
    let lines: Vec<(Tag, Vec<Option<String>>)> = sizes
        .lengths
        .iter()
        .map(|&length| (length, figures(length)))
        .collect();
    let nothing = lines
        .iter()
        .all(|(_, line)| line.iter().all(Option::is_none));
    if nothing {
        return None;
    }
    let text =
        |line: Vec<Option<String>>| line.into_iter().map(Option::unwrap_or_default).collect();
    let follows = lines.windows(2).any(|pair| pair[0].1 != pair[1].1);
    Some(if follows {
        let line = |(length, line): (Tag, _)| LengthLine {
            length: length.to_string(),
            values: text(line),
        };
        ChartValues::ByLength(lines.into_iter().map(line).collect())
    } else {
        ChartValues::BySize(text(lines.into_iter().next()?.1))
    })
}

/// The chart's value; where the chart leaves it to the draft, the pattern's.
fn value(context: &Context<'_>, measure: &Measure, size: Size) -> Option<Length> {
    let drafted = || {
        let garment = context.run.iter().find(|g| g.size == size)?;
        measure.of(&garment.pattern, &garment.pattern.spec)
    };
    context
        .loaded
        .style
        .value(measure.key, size)
        .or_else(drafted)
}
