//! Everything the style says besides chart and seams, grouped by part of the garment.
//!
//! A group is found from the drawing by the parts it names; a detail that has no line in the file shows what then
//! holds, and gets its line when it is changed.

use drawing::PlateId;
use maud::{Markup, html};

use crate::addresses;
use crate::part::details::group::{Details, Group};
use crate::part::details::{back, closing, front, hardware, identity, labels, shape, wash, why};
use crate::typed_fields::{capital, problem_place};
use crate::viewing::{OnPaper, Panel, Viewing};

pub(crate) fn render(details: &Details<'_>) -> Markup {
    let say = details.show.say;
    let groups = groups(details);
    html! {
        section #details aria-labelledby="details-title" hidden[details.see.panel != Panel::Details] {
            h2 #details-title { (say.details_title()) }
            p.lead { (say.details_lead()) }
            nav.jump aria-label=(say.details_groups()) {
                @for group in &groups {
                    a href={ "#group-" (group.key) } data-panel="details" data-part={ "group:" (group.key) } { (group.title) }
                }
            }
            @for group in &groups { (section(details, group)) }
        }
    }
}

fn groups(details: &Details<'_>) -> Vec<Group> {
    let mut groups = vec![
        identity::style(details),
        shape::group(details),
        closing::fly(details),
        closing::band(details),
        front::coin(details),
        front::bag(details),
        front::extra(details),
        back::group(details),
        closing::loops(details),
        closing::hem(details),
        hardware::rivets(details),
        hardware::bartacks(details),
        hardware::patch(details),
    ];
    groups.push(labels::group(details));
    groups.push(wash::group(details));
    groups.push(why::group(details));
    groups
}

fn section(details: &Details<'_>, group: &Group) -> Markup {
    let say = details.show.say;
    let pieces = group.pieces.iter().map(|piece| format!(" piece:{piece}"));
    let trims = group.trims.iter().map(|trim| format!(" fixing:{trim}"));
    let seams = group
        .seams
        .iter()
        .map(|seam| format!(" seam:{}", seam.code()));
    let parts: String = pieces.chain(seams).chain(trims).collect();
    html! {
        section.group id={ "group-" (group.key) } data-for={ "group:" (group.key) (parts) } data-name=(group.title) aria-labelledby={ "title-" (group.key) } {
            h3 id={ "title-" (group.key) } tabindex="-1" {
                (group.title)
                @for plate in PlateId::ALL.into_iter().filter(|plate| group.plates.contains(plate)) {
                    @let title = plate.words(say);
                    @let to = Viewing { plate: Some(OnPaper::Detail(plate)), ..details.see.clone() };
                    " " a.plate href=(addresses::style(details.name, &to)) data-swap aria-label=(say.details_plate_of(title)) {
                        @if group.plates.len() > 1 { (capital(title)) } @else { (say.details_plate()) }
                    }
                }
            }
            (group.body)
            (problem_place(group.key))
        }
    }
}
