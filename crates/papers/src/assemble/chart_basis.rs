//! What the figures of a chart rest on: which the style states, and what stands in for those it does not.

use style::{LeftOut, MeasureId};
use words::{Given, Said, key, say};

use super::context::Context;

/// Where the values of the style's chart come from.
pub(super) fn of_values(context: &Context<'_>) -> String {
    context.say.saying(&values(context))
}

/// Where the tolerances come from.
pub(super) fn of_tolerances(context: &Context<'_>) -> String {
    context.say.saying(&tolerances(context))
}

/// Measures that the chart leaves out, by what holds then.
fn values(context: &Context<'_>) -> Said {
    let style = &context.loaded.style;
    let silent = |measure: &MeasureId| !style.chart.contains_key(measure);
    let with = |usual: bool| -> Vec<Given> {
        let all = MeasureId::ALL.into_iter().filter(silent);
        let of = all.filter(|measure| {
            let known = measure.known().left_out;
            matches!(known, LeftOut::Usual(_)) == usual
        });
        of.map(|measure| measure.known().within.into()).collect()
    };
    let (usual, drafted) = (with(true), with(false));
    match (usual.is_empty(), drafted.is_empty()) {
        (true, true) => key::PAPERS_CHART_STATED.into(),
        (false, true) => say::PapersChartUsual {
            usual: Given::List(usual),
        }
        .into(),
        (true, false) => say::PapersChartDrafted {
            drafted: Given::List(drafted),
        }
        .into(),
        (false, false) => say::PapersChartUsualDrafted {
            drafted: Given::List(drafted),
            usual: Given::List(usual),
        }
        .into(),
    }
}

/// Whose tolerances these are. A chart that was read holds one for every measure, so the file is asked.
fn tolerances(context: &Context<'_>) -> Said {
    let stated = |measure: &MeasureId| {
        let path = format!("chart.{}.tolerance", measure.code());
        context.loaded.place(&path).is_some()
    };
    let (own, usual): (Vec<MeasureId>, Vec<MeasureId>) =
        MeasureId::ALL.into_iter().partition(stated);
    if usual.is_empty() {
        return key::PAPERS_TOLERANCES_STATED.into();
    }
    if own.is_empty() {
        return key::PAPERS_TOLERANCES_USUAL.into();
    }
    let usual = usual
        .into_iter()
        .map(|measure| measure.known().within.into());
    let usual = Given::List(usual.collect());
    say::PapersTolerancesMixed { usual }.into()
}
