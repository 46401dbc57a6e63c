//! The measurement chart in every size and length, and how each measure is taken.

use draft::ClothUse;
use sewing::wash::{OnceWashed, Shrinkage, Washes};
use style::{Level, MeasureId, Size, Tag, Wash};
use trade::{Length, Washed};
use words::{key, say};

use super::chart_basis;
use super::context::Context;
use super::words::{capital, joined};
use crate::{Chart, ChartRow, ChartValues, LengthLine};

/// What no tape tells apart: a measure that differs by less from length to length does not follow it.
const AS_LONG: Length = Length::mm(0.3);

/// In which state the pair is measured.
#[derive(Clone, Copy)]
pub(super) enum Measured<'a> {
    /// As the chart states it.
    Stated,
    /// On the line, before its wash.
    AsSewn,
    /// Sold raw, and washed by whoever wears it: every size once washed.
    Expected(&'a [(Size, OnceWashed<'a>)]),
}

/// The chart of the finished pair.
pub(super) fn chart(context: &Context<'_>) -> Chart {
    let said = context.say;
    let (rounding, unit) = (context.words.rounding(), context.words.unit());
    let note = if is_raw(context) {
        said.say(say::PapersChartRaw { rounding, unit })
    } else {
        said.say(say::PapersChartWashed { rounding, unit })
    };
    let note = [Some(note), size_is_a_name(context)];
    let note: Vec<String> = note.into_iter().flatten().collect();
    in_state(context, Measured::Stated, note.join(" "))
}

/// What the size that is drawn measures: its name is no measure, and a cutter who takes it for one cuts a smaller pair.
fn size_is_a_name(context: &Context<'_>) -> Option<String> {
    let size = context.shown.size;
    let style = &context.loaded.style;
    let measured = |measure| {
        let value = style.value(measure, size)?;
        Some(context.words.with_unit(value))
    };
    Some(context.say.say(say::PapersChartSizeIsAName {
        inseam: measured(MeasureId::Inseam)?,
        size: size.to_string(),
        waist: measured(MeasureId::Waist)?,
    }))
}

/// The chart of the pair in its other state: as it comes off the machine, for the check in the workroom, or,
/// where it is sold raw, as it is expected after the wearer's first wash. None where the wash takes
/// nothing, for then it is the same.
pub(super) fn in_other_state(context: &Context<'_>) -> Option<Chart> {
    let said = context.say;
    let loaded = context.loaded;
    let (washes, _) = Washes::first(&loaded.style, &loaded.collection, |_| None);
    let shell = washes.of(ClothUse::Shell).shrinkage;
    if shell == Shrinkage::NONE {
        return None;
    }
    let (rounding, unit) = (context.words.rounding(), context.words.unit());
    let (warp, weft) = (shell.warp.to_string(), shell.weft.to_string());
    Some(if is_raw(context) {
        let note = said.say(say::PapersChartExpected {
            rounding,
            unit,
            warp,
            weft,
        });
        let run = context.run.iter();
        let washed: Vec<_> = run.map(|g| (g.size, g.once_washed())).collect();
        in_state(context, Measured::Expected(&washed), note)
    } else {
        let note = said.say(say::PapersChartBeforeWash {
            rounding,
            unit,
            warp,
            weft,
        });
        in_state(context, Measured::AsSewn, note)
    })
}

fn is_raw(context: &Context<'_>) -> bool {
    let wash = context.loaded.style.wash.as_ref();
    wash.is_some_and(Wash::is_raw)
}

fn in_state(context: &Context<'_>, state: Measured<'_>, note: String) -> Chart {
    let sizes = &context.loaded.style.sizes;
    let title = match state {
        Measured::Stated => key::PAPERS_CHART_TITLE,
        Measured::AsSewn => key::PAPERS_CHART_BEFORE_WASH_TITLE,
        Measured::Expected(_) => key::PAPERS_CHART_EXPECTED_TITLE,
    };
    let values = match state {
        Measured::Stated => chart_basis::of_values(context),
        // These are worked out, as their note says.
        Measured::AsSewn | Measured::Expected(_) => String::new(),
    };
    let tolerances = chart_basis::of_tolerances(context);
    Chart {
        title: context.say.named(title).to_owned(),
        note: joined([note.as_str(), &values, &tolerances], " "),
        sizes_label: context.say.named(key::PAPERS_CHART_WAISTS).to_owned(),
        sizes: sizes.waists.iter().map(Tag::to_string).collect(),
        sample: sizes
            .waists
            .iter()
            .position(|&w| w == context.shown.size.waist),
        lengths_label: context.say.named(key::PAPERS_CHART_LENGTH).to_owned(),
        rows: MeasureId::ALL
            .into_iter()
            .filter_map(|measure| row(context, state, measure))
            .collect(),
    }
}

fn row(context: &Context<'_>, state: Measured<'_>, measure: MeasureId) -> Option<ChartRow> {
    let style = &context.loaded.style;
    let words = context.words;
    let level = style.level(measure).map(|level| match state {
        Measured::Stated | Measured::Expected(_) => level,
        Measured::AsSewn => context.shown.level_before_wash(Washed::new(level)).figure(),
    });
    let values = values(context, state, measure)?;
    Some(ChartRow {
        number: measure.number().to_string(),
        name: named(context, measure, level),
        how: how(context, measure, level),
        tolerance: words.tolerance(style.tolerance(measure)),
        values,
    })
}

/// "Seat, 8 cm above the crotch".
fn named(context: &Context<'_>, measure: MeasureId, level: Option<Length>) -> String {
    let (said, words) = (context.say, context.words);
    let name = capital(measure.words(said));
    match measure.known().level.zip(level) {
        Some((taken, level)) => said.say(say::PapersMeasureAt {
            from: taken.from(),
            level: words.length(level),
            name,
        }),
        None => name,
    }
}

/// How a measure is taken, at its level where it has one.
fn how(context: &Context<'_>, measure: MeasureId, level: Option<Length>) -> String {
    let said = context.say;
    let known = measure.known();
    let Some((taken, level)) = known.level.zip(level) else {
        return said.named(known.how).to_owned();
    };
    let level = context.words.length(level);
    match taken {
        Level::Seat => said.say(say::MeasureAtSeat { level }),
        Level::Thigh | Level::Knee => said.say(say::MeasureAtLeg { level }),
    }
}

/// One figure a waist, or a line of figures for each length where the measure follows it.
fn values(context: &Context<'_>, state: Measured<'_>, measure: MeasureId) -> Option<ChartValues> {
    let sizes = &context.loaded.style.sizes;
    let figures = |length: Tag| -> Vec<Option<Length>> {
        let of = |&waist| value(context, state, measure, Size { waist, length });
        sizes.waists.iter().map(of).collect()
    };
    let lines: Vec<(Tag, Vec<Option<Length>>)> = sizes
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
    let text = |line: Vec<Option<Length>>| {
        let figure = |value| context.words.figure(value);
        let shown = |value: Option<Length>| value.map(figure).unwrap_or_default();
        line.into_iter().map(shown).collect()
    };
    let differ = |(one, other): (&Option<Length>, &Option<Length>)| match (one, other) {
        (Some(one), Some(other)) => (*one - *other).abs() > AS_LONG,
        (one, other) => one.is_some() != other.is_some(),
    };
    let follows = lines
        .windows(2)
        .any(|pair| pair[0].1.iter().zip(&pair[1].1).any(differ));
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

/// The chart's value; where the chart leaves it to the draft, and before the wash, the pattern's.
fn value(
    context: &Context<'_>,
    state: Measured<'_>,
    measure: MeasureId,
    size: Size,
) -> Option<Length> {
    let garment = || context.run.iter().find(|g| g.size == size);
    let drafted = || garment()?.pattern.measure(measure);
    match state {
        Measured::Stated => context.loaded.style.value(measure, size).or_else(drafted),
        Measured::AsSewn => Some(garment()?.measure_before_wash(measure)?.figure()),
        Measured::Expected(washed) => {
            let (_, once) = washed.iter().find(|(of, _)| *of == size)?;
            Some(once.measure(measure)?.figure())
        }
    }
}
