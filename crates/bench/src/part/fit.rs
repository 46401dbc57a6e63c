//! The chart: what the finished garment measures, how that grows, and what the pattern measures in the size shown.

use draft::Measured;
use maud::{Markup, html};
use sewing::Garment;
use style::Size;
use style::known::{self, Measure};
use trade::Length;
use words::Words;

use crate::sentences::{SLOTS, Saying, filled};
use crate::typed_fields::{Fields, TypedField, capital, problem_place};
use crate::viewing::{Panel, Viewing};

/// Measures that belong together, and the parts of the drawing they say something about.
struct Group {
    title: Saying,
    measures: &'static [&'static str],
    parts: &'static str,
}

const GROUPS: &[Group] = &[
    Group {
        title: Words::fit_group_body,
        measures: &[
            "waist",
            "seat",
            "front_rise",
            "back_rise",
            "thigh",
            "knee",
            "hem",
            "inseam",
            "outseam",
            "hem_depth",
        ],
        parts: "piece:front piece:back",
    },
    Group {
        title: Words::fit_group_band,
        measures: &["band_height", "band_overlap", "fly_length", "fly_width"],
        parts: "piece:band piece:fly_facing piece:fly_shield",
    },
    Group {
        title: Words::fit_group_yoke,
        measures: &["yoke_centre", "yoke_side"],
        parts: "piece:yoke",
    },
    Group {
        title: Words::fit_group_front_pockets,
        measures: &["mouth_width", "mouth_depth"],
        parts: "piece:pocket_facing piece:pocket_bag",
    },
    Group {
        title: Words::fit_group_coin_pocket,
        measures: &["coin_width", "coin_depth"],
        parts: "piece:coin_pocket",
    },
    Group {
        title: Words::fit_group_back_pockets,
        measures: &[
            "back_pocket_width",
            "back_pocket_length",
            "back_pocket_from_yoke",
            "back_pocket_from_centre",
        ],
        parts: "piece:back_pocket_left piece:back_pocket_right piece:back_lining_left piece:back_lining_right",
    },
    Group {
        title: Words::fit_group_loops,
        measures: &["loop_length", "loop_width"],
        parts: "piece:loop_strip fixing:loop_edge",
    },
];

/// What the pattern may be off the chart before it is marked: the solver's own promise is a hundredth of a millimetre.
const OFF: Length = Length::mm(0.05);

pub(crate) fn render(show: &Fields<'_>, garment: &Garment, see: &Viewing) -> Markup {
    let say = show.say;
    let sizes = &show.loaded.style.sizes;
    let taken = garment.pattern.measures();
    html! {
        section #fit aria-labelledby="fit-title" hidden[see.panel != Panel::Fit] {
            h2 #fit-title { (say.fit_title()) }
            p.lead { (say.fit_lead()) }
            table.chart {
                thead {
                    tr {
                        th scope="col" { (say.fit_measure()) }
                        th scope="col" { (say.fit_at_size(sizes.base)) }
                        th scope="col" { (say.fit_grade()) }
                        th scope="col" { (say.fit_tolerance()) }
                        th.figure scope="col" { (say.fit_at_size(garment.size)) }
                        th.figure scope="col" { (say.fit_pattern()) }
                    }
                }
                @for group in GROUPS {
                    @let title = (group.title)(say);
                    tbody.head data-for=(group.parts) data-name=(title) id={ "group-" (group.measures.first().copied().unwrap_or_default()) } {
                        tr { th colspan="6" scope="rowgroup" { (title) } }
                    }
                    @for name in group.measures {
                        @if let Some(measure) = known::measure(name) { (row(show, garment.size, &taken, measure)) }
                    }
                }
            }
        }
    }
}

fn row(show: &Fields<'_>, size: Size, taken: &[Measured], measure: &Measure) -> Markup {
    let say = show.say;
    let (name, title) = (measure.name, capital(measure.title));
    let path = |key: &str| format!("chart.{name}.{key}");
    let entry = show.loaded.style.chart.get(name);
    let said = |value: Length| value.show(show.system);
    let value = value_of(show, measure);
    let grade = show.optional(
        path("grade"),
        say.fit_grade_label(&title),
        entry.and_then(|entry| entry.grade),
        "–",
    );
    let tolerance = show.optional(
        path("tolerance"),
        say.fit_tolerance_label(&title),
        entry.map(|entry| entry.tolerance),
        &said(measure.tolerance),
    );
    let taken = taken.iter().find(|taken| taken.measure.key == name);
    let charted = show.loaded.style.value(name, size);
    let off = taken
        .zip(charted)
        .is_some_and(|(taken, charted)| (taken.pattern - charted).abs() > OFF);
    let how = draft::measure::measure(name).map_or("", |measure| measure.how);
    html! {
        tbody.measure id={ "measure-" (name) } data-for={ "measure:" (name) } data-name=(title) data-how=(how) {
            tr {
                th scope="row" { (title) (level(show, measure)) }
                td { (value.render()) }
                td.grade { (grade.render()) (further_grades(show, measure)) }
                td.tolerance { (tolerance.render()) }
                td.figure { @match charted { Some(charted) => (said(charted)), None => "–" } }
                td.figure.off[off] { @match taken { Some(taken) => (said(rounded(taken.pattern))), None => "–" } }
            }
            tr.said { td colspan="6" { (problem_place(name)) } }
        }
    }
}

/// The field of a measure's value, by its name.
pub(crate) fn value(show: &Fields<'_>, name: &str) -> Option<TypedField> {
    known::measure(name).map(|measure| value_of(show, measure))
}

fn value_of(show: &Fields<'_>, measure: &Measure) -> TypedField {
    let say = show.say;
    let entry = show.loaded.style.chart.get(measure.name);
    let usual = measure.value.map_or(say.fit_drafted().to_owned(), |value| {
        value.show(show.system)
    });
    show.optional(
        format!("chart.{}.value", measure.name),
        say.say(words::say::FitValueLabel {
            measure: capital(measure.title),
            size: show.loaded.style.sizes.base,
        }),
        entry.map(|entry| entry.value),
        &usual,
    )
}

/// The level a measure is taken at, for measures that have one.
fn level(show: &Fields<'_>, measure: &Measure) -> Markup {
    let Some(usual) = measure.at else {
        return html! {};
    };
    let entry = show.loaded.style.chart.get(measure.name);
    let field = show.optional(
        format!("chart.{}.at", measure.name),
        show.say.say(words::say::FitLevelLabel {
            from: measure.from,
            measure: capital(measure.title),
        }),
        entry.and_then(|entry| entry.at),
        &usual.show(show.system),
    );
    html! { span.level { (field.render()) " " (measure.from) } }
}

/// Grades for length and above break sizes, where the file has them or the measure runs along the leg.
fn further_grades(show: &Fields<'_>, measure: &Measure) -> Markup {
    let say = show.say;
    let name = measure.name;
    let title = capital(measure.title);
    let entry = show.loaded.style.chart.get(name);
    let per_length = entry.and_then(|entry| entry.per_length);
    let along = matches!(name, "inseam" | "outseam");
    html! {
        @if along || per_length.is_some() {
            @let field = show.optional(
                format!("chart.{name}.per_length"),
                say.fit_per_length_label(&title),
                per_length,
                "–",
            );
            span.further { (filled(&say.fit_per_length(SLOTS[0]), &[field.render()])) }
        }
        @for (number, step) in entry.iter().flat_map(|entry| entry.breaks.iter().enumerate()) {
            @let field = show.length(
                format!("chart.{name}.breaks[{number}].grade"),
                say.say(words::say::FitAboveLabel { measure: &title, waist: step.above }),
                step.grade,
            );
            span.further { (filled(&say.say(words::say::FitAbove { field: SLOTS[0], waist: step.above }), &[field.render()])) }
        }
    }
}

/// To a hundredth of a millimetre, as far as the pattern is solved.
fn rounded(length: Length) -> Length {
    Length::mm((length.to_mm() * 100.0).round() / 100.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_measure_has_its_place_in_the_chart() {
        let mut shown: Vec<&str> = GROUPS
            .iter()
            .flat_map(|group| group.measures)
            .copied()
            .collect();
        let mut known: Vec<&str> = known::MEASURES.iter().map(|measure| measure.name).collect();
        shown.sort_unstable();
        known.sort_unstable();
        assert_eq!(shown, known);
    }
}
