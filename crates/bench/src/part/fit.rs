//! The chart: what the finished garment measures, how that grows, and what the pattern measures in the size shown.

use draft::Measured;
use maud::{Markup, html};
use sewing::Garment;
use sewing::wash::OnceWashed;
use style::{MeasureId, Size, Wash};
use trade::Length;
use words::Words;

use crate::sentences::{SLOTS, filled};
use crate::typed_fields::{Fields, TypedField, capital, problem_place};
use crate::viewing::{Panel, Viewing};

/// Measures that belong together.
#[derive(Clone, Copy, PartialEq)]
enum Group {
    Body,
    Band,
    Yoke,
    FrontPockets,
    CoinPocket,
    BackPockets,
    Loops,
}

impl Group {
    /// In the order in which the chart shows them.
    const ALL: [Self; 7] = [
        Self::Body,
        Self::Band,
        Self::Yoke,
        Self::FrontPockets,
        Self::CoinPocket,
        Self::BackPockets,
        Self::Loops,
    ];

    /// The group a measure stands in.
    const fn of(measure: MeasureId) -> Self {
        match measure {
            MeasureId::Waist
            | MeasureId::Seat
            | MeasureId::FrontRise
            | MeasureId::BackRise
            | MeasureId::Thigh
            | MeasureId::Knee
            | MeasureId::Hem
            | MeasureId::Inseam
            | MeasureId::Outseam
            | MeasureId::HemDepth => Self::Body,
            MeasureId::BandHeight
            | MeasureId::BandOverlap
            | MeasureId::FlyLength
            | MeasureId::FlyWidth => Self::Band,
            MeasureId::YokeCentre | MeasureId::YokeSide => Self::Yoke,
            MeasureId::MouthWidth | MeasureId::MouthDepth => Self::FrontPockets,
            MeasureId::CoinWidth | MeasureId::CoinDepth => Self::CoinPocket,
            MeasureId::BackPocketWidth
            | MeasureId::BackPocketLength
            | MeasureId::BackPocketFromYoke
            | MeasureId::BackPocketFromCentre => Self::BackPockets,
            MeasureId::LoopLength | MeasureId::LoopWidth => Self::Loops,
        }
    }

    fn measures(self) -> impl Iterator<Item = MeasureId> {
        let all = MeasureId::ALL.into_iter();
        all.filter(move |measure| Self::of(*measure) == self)
    }

    fn title(self, say: &Words) -> &str {
        match self {
            Self::Body => say.fit_group_body(),
            Self::Band => say.fit_group_band(),
            Self::Yoke => say.fit_group_yoke(),
            Self::FrontPockets => say.fit_group_front_pockets(),
            Self::CoinPocket => say.fit_group_coin_pocket(),
            Self::BackPockets => say.fit_group_back_pockets(),
            Self::Loops => say.fit_group_loops(),
        }
    }

    /// The parts of the drawing that its measures say something about.
    const fn parts(self) -> &'static str {
        match self {
            Self::Body => "piece:front piece:back",
            Self::Band => "piece:band piece:fly_facing piece:fly_shield",
            Self::Yoke => "piece:yoke",
            Self::FrontPockets => "piece:pocket_facing piece:pocket_bag",
            Self::CoinPocket => "piece:coin_pocket",
            Self::BackPockets => {
                "piece:back_pocket_left piece:back_pocket_right piece:back_lining_left piece:back_lining_right"
            }
            Self::Loops => "piece:loop_strip fixing:loop_edge",
        }
    }
}

/// What the pattern may be off the chart before it is marked: the solver's own promise is a hundredth of a millimetre.
const OFF: Length = Length::mm(0.05);

/// The other side of the wash of a pair: what it measures before it, and a raw one after the wearer's.
enum OtherSide<'g> {
    Before(&'g Garment),
    After(Box<OnceWashed<'g>>),
}

impl<'g> OtherSide<'g> {
    fn of(garment: &'g Garment) -> Self {
        if garment.doc.wash.as_ref().is_some_and(Wash::is_raw) {
            Self::After(Box::new(garment.once_washed()))
        } else {
            Self::Before(garment)
        }
    }

    /// What a measure is there; none where the wash leaves it as the pattern has it.
    fn of_measure(&self, taken: &Measured) -> Option<Length> {
        let there = match self {
            Self::Before(garment) => garment.measure_before_wash(taken.measure)?.figure(),
            Self::After(washed) => washed.measure(taken.measure)?.figure(),
        };
        ((there - taken.pattern).abs() > OFF).then_some(there)
    }

    fn title<'w>(&self, say: &'w Words) -> &'w str {
        match self {
            Self::Before(_) => say.fit_before_wash(),
            Self::After(_) => say.fit_after_wash(),
        }
    }
}

/// What the rows show of the size at hand.
struct Shown<'a> {
    size: Size,
    taken: Vec<Measured>,
    other: OtherSide<'a>,
}

pub(crate) fn render(show: &Fields<'_>, garment: &Garment, see: &Viewing) -> Markup {
    let say = show.say;
    let sizes = &show.loaded.style.sizes;
    let shown = Shown {
        size: garment.size,
        taken: garment.pattern.measures(),
        other: OtherSide::of(garment),
    };
    let shrinks = shown
        .taken
        .iter()
        .any(|taken| shown.other.of_measure(taken).is_some());
    let lead = match shown.other {
        OtherSide::Before(_) => say.fit_lead(),
        OtherSide::After(_) => say.fit_lead_raw(),
    };
    html! {
        section #fit aria-labelledby="fit-title" hidden[see.panel != Panel::Fit] {
            h2 #fit-title { (say.fit_title()) }
            p.lead { (lead) }
            table.chart {
                thead {
                    tr {
                        th scope="col" { (say.fit_measure()) }
                        th scope="col" { (say.fit_at_size(sizes.base)) }
                        th scope="col" { (say.fit_grade()) }
                        th scope="col" { (say.fit_tolerance()) }
                        th.figure scope="col" {
                            (say.fit_at_size(garment.size))
                            @if shrinks { small { (shown.other.title(say)) } }
                        }
                        th.figure scope="col" { (say.fit_pattern()) }
                    }
                }
                @for group in Group::ALL {
                    @let title = group.title(say);
                    tbody.head data-for=(group.parts()) data-name=(title) id={ "group-" (group.measures().next().map_or("", MeasureId::code)) } {
                        tr { th colspan="6" scope="rowgroup" { (title) } }
                    }
                    @for measure in group.measures() { (row(show, &shown, measure)) }
                }
            }
        }
    }
}

fn row(show: &Fields<'_>, shown: &Shown<'_>, measure: MeasureId) -> Markup {
    let say = show.say;
    let (code, title) = (measure.code(), title(show, measure));
    let path = |key: &str| measure.path(key);
    let entry = show.loaded.style.chart.get(&measure);
    let said = |value: Length| value.show(show.system);
    let value = value(show, measure);
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
        &said(measure.known().tolerance),
    );
    let taken = shown.taken.iter().find(|taken| taken.measure == measure);
    let charted = show.loaded.style.value(measure, shown.size);
    let other = taken.and_then(|taken| shown.other.of_measure(taken));
    let off = taken
        .zip(charted)
        .is_some_and(|(taken, charted)| (taken.pattern - charted).abs() > OFF);
    let how = say.named(measure.known().how);
    html! {
        tbody.measure id={ "measure-" (code) } data-for={ "measure:" (code) } data-name=(title) data-how=(how) {
            tr {
                th scope="row" { (title) (level(show, measure)) }
                td { (value.render()) }
                td.grade { (grade.render()) (further_grades(show, measure)) }
                td.tolerance { (tolerance.render()) }
                td.figure {
                    @match charted { Some(charted) => (said(charted)), None => "–" }
                    @if let Some(other) = other {
                        small { span.unseen { (shown.other.title(say)) " " } (said(to_a_tape(other))) }
                    }
                }
                td.figure.off[off] { @match taken { Some(taken) => (said(rounded(taken.pattern))), None => "–" } }
            }
            tr.said { td colspan="6" { (problem_place(code)) } }
        }
    }
}

/// What a measure is called at the head of its row.
fn title(show: &Fields<'_>, measure: MeasureId) -> String {
    capital(show.say.named(measure.title()))
}

/// The field of a measure's value.
pub(crate) fn value(show: &Fields<'_>, measure: MeasureId) -> TypedField {
    let say = show.say;
    let entry = show.loaded.style.chart.get(&measure);
    let usual = measure.known().value();
    let usual = usual.map_or(say.fit_drafted().to_owned(), |value| {
        value.show(show.system)
    });
    show.optional(
        measure.path("value"),
        say.say(words::say::FitValueLabel {
            measure: title(show, measure),
            size: show.loaded.style.sizes.base,
        }),
        entry.map(|entry| entry.value),
        &usual,
    )
}

/// The level a measure is taken at, for measures that have one.
fn level(show: &Fields<'_>, measure: MeasureId) -> Markup {
    let Some(level) = measure.known().level else {
        return html! {};
    };
    let entry = show.loaded.style.chart.get(&measure);
    let from = show.say.named(level.from());
    let field = show.optional(
        measure.path("at"),
        show.say.say(words::say::FitLevelLabel {
            from,
            measure: title(show, measure),
        }),
        entry.and_then(|entry| entry.at),
        &level.usual().show(show.system),
    );
    html! { span.level { (field.render()) " " (from) } }
}

/// Grades for length and above break sizes, where the file has them or the measure runs along the leg.
fn further_grades(show: &Fields<'_>, measure: MeasureId) -> Markup {
    let say = show.say;
    let title = title(show, measure);
    let entry = show.loaded.style.chart.get(&measure);
    let per_length = entry.and_then(|entry| entry.per_length);
    let along = matches!(measure, MeasureId::Inseam | MeasureId::Outseam);
    html! {
        @if along || per_length.is_some() {
            @let field = show.optional(
                measure.path("per_length"),
                say.fit_per_length_label(&title),
                per_length,
                "–",
            );
            span.further { (filled(&say.fit_per_length(SLOTS[0]), &[field.render()])) }
        }
        @for (number, step) in entry.iter().flat_map(|entry| entry.breaks.iter().enumerate()) {
            @let field = show.length(
                measure.path(&format!("breaks[{number}].grade")),
                say.say(words::say::FitAboveLabel { measure: &title, waist: step.above }),
                step.grade,
            );
            span.further { (filled(&say.say(words::say::FitAbove { field: SLOTS[0], waist: step.above }), &[field.render()])) }
        }
    }
}

/// To the millimetre: what is expected is read off a tape.
fn to_a_tape(length: Length) -> Length {
    Length::mm(length.to_mm().round())
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
        for measure in MeasureId::ALL {
            let shown = Group::ALL.into_iter().flat_map(Group::measures);
            let times = shown.filter(|shown| *shown == measure).count();
            assert_eq!(times, 1, "{measure:?} is shown {times} times");
        }
    }
}
