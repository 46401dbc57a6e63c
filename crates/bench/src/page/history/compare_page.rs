//! Two versions beside one another, or one over the other, drawn in one frame so that what is the same lies alike.

use drawing::{Sheet, View, garment_view};
use maud::{Markup, PreEscaped, html};
use sewing::Face;
use style::Loaded;
use trade::Length;
use words::Words;

use crate::addresses;
use crate::garment::written;
use crate::page::history::address;
use crate::page::history::compare::{Compared, Look, Side};
use crate::page::layout::PageAssets;
use crate::page::room_frame;
use crate::part::page_head::Head;
use crate::part::strip;
use crate::room::Room;
use crate::sentences::{SLOTS, filled};
use crate::typed_fields::capital;
use crate::viewing::Viewing;

fn unread(say: &'static Words, side: &Side) -> Markup {
    html! {
        @if let Err(why) = &side.worked {
            div.notice.asks { div {
                p { (say.compare_unreadable(side.short(say))) }
                ul { @for line in why { li { (capital(line)) } } }
            } }
        }
    }
}

/// Gives both drawings the frame that holds them both, so that a millimetre of one is a millimetre of the other.
fn in_one_frame(sheets: &mut [Sheet; 2]) {
    let [a, b] = &*sheets;
    let right = |sheet: &Sheet| sheet.origin.x + sheet.width.to_mm();
    let foot = |sheet: &Sheet| sheet.origin.y + sheet.height.to_mm();
    let (x0, y0) = (a.origin.x.min(b.origin.x), a.origin.y.min(b.origin.y));
    let (x1, y1) = (right(a).max(right(b)), foot(a).max(foot(b)));
    for sheet in sheets {
        (sheet.origin.x, sheet.origin.y) = (x0, y0);
        (sheet.width, sheet.height) = (Length::mm(x1 - x0), Length::mm(y1 - y0));
    }
}

impl Compared {
    pub(crate) fn render(
        &self,
        say: &'static Words,
        name: &str,
        loaded: &Loaded,
        see: &Viewing,
    ) -> Markup {
        let head = Head {
            say,
            name,
            loaded,
            room: Room::History,
            leaf: &address::compare_leaf(&self.a.key, &self.b.key, self.look),
            see,
        };
        let main = html! {
            div.opening {
                h2 { (say.compare_title()) }
                a href=(Room::History.url(name, see)) { (say.compare_all()) }
            }
            (self.form(say, name, see))
            div.compared {
                section.drawings.(self.look.word()) aria-label=(say.compare_drawings()) { (self.drawings(say, see)) }
                div.differences {
                    section aria-labelledby="what-differs" {
                        h3 #what-differs { (say.compare_differs()) }
                        (self.words(say))
                    }
                    (self.figures(say))
                }
            }
        };
        let loads = PageAssets {
            styles: &["history.css"],
            scripts: &["keys.js"],
        };
        room_frame::render(&head, loads, &main)
    }

    /// What is compared, and how it is looked at.
    fn form(&self, say: &'static Words, name: &str, see: &Viewing) -> Markup {
        let choose = |id: &str, words: &str, side: &Side| {
            html! {
                label for={ "version-" (id) } { span { (words) }
                    select #{ "version-" (id) } name=(id) {
                        @for (key, says) in &self.choices { option value=(key) selected[*key == side.key] { (says) } }
                    }
                }
            }
        };
        let to =
            |a: &str, b: &str, look: Look, see: &Viewing| address::compare(name, a, b, look, see);
        let step = |key: &'static str, words: &'static str, number: Option<u32>| {
            html! {
                @match number {
                    Some(number) => a href=(to(&number.to_string(), &self.b.key, self.look, see)) aria-keyshortcuts=(key) title=(say.keys_key(key)) { (words) },
                    None => a role="link" aria-disabled="true" { (words) },
                }
            }
        };
        let turned = |view: View, face: Face| Viewing {
            view,
            face,
            ..see.clone()
        };
        let link = |key: &'static str, words: &'static str, is: bool, address: String| {
            html! { a href=(address) aria-current=[is.then_some("true")] aria-keyshortcuts=(key) title=(say.keys_key(key)) { (words) } }
        };
        let here = |see: Viewing| to(&self.a.key, &self.b.key, self.look, &see);
        html! {
            form.pairing method="get" action={ (addresses::style_path(name)) "/history/compare" } {
                (choose("a", say.compare_version(), &self.a))
                (choose("b", say.compare_with(), &self.b))
                @if let Some(size) = self.size {
                    label.size for="size" { span { (say.compare_size()) }
                        select #size name="size" {
                            @for each in &self.sizes { option value=(each) selected[*each == size] { (each.waist) " × " (each.length) } }
                        }
                    }
                }
                input type="hidden" name="look" value=(self.look.word());
                input type="hidden" name="view" value=(see.view.word());
                input type="hidden" name="face" value=(see.face_word());
                @if let Some(units) = see.units { input type="hidden" name="units" value=(units); }
                button type="submit" { (say.compare_go()) }
            }
            div.looks {
                nav.choice aria-label=(say.compare_others()) {
                    (link("x", say.compare_swap(), false, to(&self.b.key, &self.a.key, self.look, see)))
                    (step("p", say.compare_previous(), self.steps.0))
                    (step("n", say.compare_next(), self.steps.1))
                }
                nav.choice aria-label=(say.compare_look()) {
                    @for (look, key, words) in Look::all(say) {
                        (link(key, words, look == self.look, to(&self.a.key, &self.b.key, look, see)))
                    }
                }
                nav.choice aria-label=(say.compare_view()) {
                    (link("f", say.compare_front(), see.view == View::Front, here(turned(View::Front, see.face))))
                    (link("b", say.compare_back(), see.view == View::Back, here(turned(View::Back, see.face))))
                }
                nav.choice aria-label=(say.compare_face()) {
                    (link("o", say.compare_outside(), see.face == Face::Outside, here(turned(see.view, Face::Outside))))
                    (link("i", say.compare_inside(), see.face == Face::Inside, here(turned(see.view, Face::Inside))))
                }
            }
        }
    }

    fn drawings(&self, say: &'static Words, see: &Viewing) -> Markup {
        let (Ok(a), Ok(b)) = (&self.a.worked, &self.b.worked) else {
            return html! { (unread(say, &self.a)) (unread(say, &self.b)) };
        };
        let Some(size) = self.size else {
            return html! { p { (say.compare_no_size()) } };
        };
        let mut sheets =
            [a, b].map(|worked| garment_view(&worked.garment, see.view, see.face, say));
        for sheet in &mut sheets {
            // Two versions are told apart by their lines; weave and shade would only veil them.
            sheet.layers.retain(|layer| layer.cover.is_none());
        }
        in_one_frame(&mut sheets);
        for (sheet, side) in sheets.iter_mut().zip([&self.a, &self.b]) {
            // The names of clips come from the title, and no two drawings of a page may share those.
            sheet.title = say.say(words::say::CompareDrawing {
                drawing: &sheet.title,
                number: side.version.number,
            });
        }
        let [a, b] = sheets.map(written);
        // Our own writer made these; it escapes all words it is given.
        let (a, b) = (PreEscaped(a.svg), PreEscaped(b.svg));
        match self.look {
            Look::Beside => html! {
                // Each is named by its caption; the lines of a drawing say nothing to whoever cannot see it.
                figure { figcaption { (self.a.title(say)) } div aria-hidden="true" { (a) } }
                figure { figcaption { (self.b.title(say)) } div aria-hidden="true" { (b) } }
            },
            Look::Over => html! {
                figure aria-label=(say.say(words::say::CompareOverlaid { size, under: self.b.words(say), upper: self.a.words(say) })) {
                    figcaption {
                        span.legend.upper-line { span { (self.a.title(say)) } }
                        span.legend.under-line { span { (self.b.title(say)) } }
                    }
                    div.stack aria-hidden="true" { div.under { (b) } div.upper { (a) } }
                }
            },
        }
    }

    fn words(&self, say: &'static Words) -> Markup {
        let readable = self.a.worked.is_ok() && self.b.worked.is_ok();
        html! {
            @if !readable { p.lead { (say.compare_not_known()) } }
            @else if self.a.version.id == self.b.version.id { p.lead { (say.compare_same()) } }
            @else if self.told.is_empty() { p.lead { (say.compare_only_comments()) } }
            @else { ul.told { @for line in &self.told { li { (capital(line)) } } } }
        }
    }

    fn figures(&self, say: &'static Words) -> Markup {
        let (Ok(a), Ok(b), Some(size)) = (&self.a.worked, &self.b.worked, self.size) else {
            return html! {};
        };
        let (of_a, of_b) = (
            strip::figures(say, a, a, self.system),
            strip::figures(say, b, a, self.system),
        );
        html! {
            section aria-labelledby="what-it-takes" {
                h3 #what-it-takes { (say.compare_takes(size)) }
                table.sums {
                    thead { tr {
                        td {}
                        th.figure scope="col" { (self.a.short(say)) }
                        th.figure scope="col" { (self.b.short(say)) }
                        th.figure scope="col" { (say.compare_difference()) }
                    } }
                    tbody {
                        @for (a, b) in of_a.iter().zip(&of_b) {
                            tr title=(b.how) {
                                th scope="row" { (b.title) }
                                td.figure { (a.value) }
                                td.figure { (b.value) }
                                td.figure { @if b.change.is_empty() { "–" } @else { (b.change) } }
                            }
                        }
                    }
                }
            }
        }
    }
}

impl Side {
    pub(super) fn short(&self, say: &'static Words) -> String {
        match self.now {
            true => say.compare_now().to_owned(),
            false => say.compare_number(self.version.number),
        }
    }

    pub(super) fn words(&self, say: &'static Words) -> String {
        let number = self.version.number;
        match &self.name {
            Some(name) => say.say(words::say::CompareNumberName { name, number }),
            None => say.compare_number(number),
        }
    }

    pub(super) fn title(&self, say: &'static Words) -> Markup {
        match &self.when {
            _ if self.now => html! { (say.compare_in_file_now(self.words(say))) },
            Some(when) => filled(
                &say.say(words::say::CompareWritten {
                    version: self.words(say),
                    when: SLOTS[0],
                }),
                &[html! { time datetime=(when.machine) { (when.shown) } }],
            ),
            None => html! { (self.words(say)) },
        }
    }
}
