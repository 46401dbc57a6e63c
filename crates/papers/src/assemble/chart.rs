//! The measurement chart in every size and length, and how each measure is taken.

use style::{MeasureId, Size, Tag};
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
        rows: MeasureId::ALL
            .into_iter()
            .filter_map(|measure| row(context, measure))
            .collect(),
    }
}

fn row(context: &Context<'_>, measure: MeasureId) -> Option<ChartRow> {
    let style = &context.loaded.style;
    let words = context.words;
    let level = style.level(measure);
    let values = values(context, measure)?;
    Some(ChartRow {
        number: measure.number().to_string(),
        name: named(measure, level, words),
        how: how(measure, level, words),
        tolerance: words.tolerance(style.tolerance(measure)),
        values,
    })
}

/// "Seat, 8 cm above the crotch".
fn named(measure: MeasureId, level: Option<Length>, words: Words) -> String {
    let said = words::Words::english();
    let name = capital(measure.words(said));
    match measure.known().level.zip(level) {
        Some((taken, level)) => {
            let from = said.named(taken.from());
            format!("{name}, {} {from}", words.length(level))
        }
        None => name,
    }
}

/// The definition speaks of the stated level; here it is stated.
fn how(measure: MeasureId, level: Option<Length>, words: Words) -> String {
    let how = words::Words::english().named(measure.known().how);
    let Some(level) = level else {
        return how.to_owned();
    };
    let level = words.length(level);
    how.replace("the stated height", &level)
        .replace("the stated distance", &level)
}

/// One figure a waist, or a line of figures for each length where the measure follows it.
fn values(context: &Context<'_>, measure: MeasureId) -> Option<ChartValues> {
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
fn value(context: &Context<'_>, measure: MeasureId, size: Size) -> Option<Length> {
    let drafted = || {
        let garment = context.run.iter().find(|g| g.size == size)?;
        garment.pattern.measure(measure)
    };
    context.loaded.style.value(measure, size).or_else(drafted)
}
