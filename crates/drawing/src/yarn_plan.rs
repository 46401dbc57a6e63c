//! The yarn plan as a page: every colour, size and density of yarn on the cloth it lies on, at its
//! true pitch and thickness and three times enlarged.

mod strip;

use geometry::{Point, Rect};
use sewing::yarn::{Ground, Group, GroupRow, Role, Sewn, YarnPlan};
use style::Collection;
use trade::{Length, System};
use words::{Figure, Given, Said, Words, key, say};

use crate::lettering::text_width;
use crate::palette::{
    CONSTRUCTION, HAIRLINE, INK, Pen, QUIET, TYPE_FIGURES, TYPE_HEADING, TYPE_WORDS,
};
use crate::sheet::{Anchor, Layer, Sheet, Text, open};
use strip::{breadth, strip};

/// What an upright A4 page leaves between its margins.
const WIDE_MM: f64 = 172.0;
/// The words beside the strips.
const WORDS_MM: f64 = 58.0;
const TRUE_X_MM: f64 = 60.0;
const ENLARGED_X_MM: f64 = 118.0;
const STRIP_WIDE_MM: f64 = 54.0;
const STRIP_TALL_MM: f64 = 6.6;
/// A strip of a broad stitch is taller, up to this.
const STRIP_TALLEST_MM: f64 = 24.0;
/// Cloth above and below broad stitches together.
const ROUND_STITCHES_MM: f64 = 1.6;
/// How much the second strip is enlarged.
const ENLARGED: f64 = 3.0;
/// From one base line of words to the next, as a share of the type.
const LEADING: f64 = 1.3;
const BETWEEN_MM: f64 = 1.8;
/// Above and below the whole drawing.
const MARGIN_MM: f64 = 1.0;

/// For whom the plan is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PlanFor {
    /// Who chooses yarns: how far each is from the colour of its cloth is told.
    Maker,
    /// Who threads machines.
    Workroom,
}

/// The plan of one size, at its printed size: as wide as an upright A4 page leaves, and as tall as
/// its groups need. About a dozen groups fit one page; a plan of more is drawn in parts, each with
/// some of its groups.
///
/// A strip shows the stitch most of the group is sewn with, on the face most of it lies on; the
/// words name the others. Every stitch is a mark of its own.
pub fn yarn_plan_sheet(
    plan: &YarnPlan,
    collection: &Collection,
    reader: PlanFor,
    words: &Words,
) -> Sheet {
    let mut page = Page {
        say: words,
        collection,
        reader,
        words: Layer::named("words"),
        lines: Layer::named("lines"),
        strips: Vec::new(),
        y: MARGIN_MM,
    };
    for role in [Role::Needle, Role::Under] {
        let groups: Vec<&Group> = plan.groups.iter().filter(|g| g.role == role).collect();
        if groups.is_empty() {
            continue;
        }
        page.heading(role);
        for group in groups {
            page.group(group);
        }
    }
    page.notes();
    let mut layers = page.strips;
    layers.push(page.lines);
    layers.push(page.words);
    Sheet {
        title: words.plan_of_yarns(plan.size),
        origin: Point::ORIGIN,
        width: Length::mm(WIDE_MM),
        height: Length::mm(page.y + MARGIN_MM),
        layers,
    }
}

/// The page while it fills from the top.
struct Page<'a> {
    say: &'a Words,
    collection: &'a Collection,
    reader: PlanFor,
    words: Layer,
    lines: Layer,
    strips: Vec<Layer>,
    y: f64,
}

impl Page<'_> {
    fn write(&mut self, x: f64, words: String, size: Length, bold: bool) {
        let colour = if bold || size == TYPE_WORDS {
            INK
        } else {
            QUIET
        };
        let text = Text {
            at: Point::new(x, self.y),
            words,
            size,
            anchor: Anchor::Start,
            turn_deg: 0.0,
            colour,
            bold,
        };
        self.words.text(None, text);
    }

    /// Lines of words below one another, the first with its capitals under the present height;
    /// leaves the height below them.
    fn lines_of(&mut self, x: f64, lines: Vec<String>, size: Length, bold: bool) {
        for line in lines {
            self.y += size.to_mm();
            self.write(x, line, size, bold);
            self.y += (LEADING - 1.0) * size.to_mm();
        }
    }

    fn heading(&mut self, role: Role) {
        if self.y > MARGIN_MM {
            self.y += BETWEEN_MM;
        }
        let title = match role {
            Role::Needle => self.say.plan_of_yarns_needle(),
            Role::Under => self.say.plan_of_yarns_under(),
        };
        self.y += TYPE_HEADING.to_mm();
        self.write(0.0, title.to_owned(), TYPE_HEADING, true);
        let true_size = self.say.plan_of_yarns_true_size().to_owned();
        self.write(TRUE_X_MM, true_size, TYPE_FIGURES, false);
        let enlarged = self
            .say
            .plan_of_yarns_enlarged(Figure::new(ENLARGED, 0, ""));
        self.write(ENLARGED_X_MM, enlarged, TYPE_FIGURES, false);
        self.y += 1.5;
        let ends = [Point::new(0.0, self.y), Point::new(WIDE_MM, self.y)];
        let pen = Pen::FULL.stroke(CONSTRUCTION, HAIRLINE);
        self.lines.line(None, open(&ends), pen);
        self.y += 2.0;
    }

    fn group(&mut self, group: &Group) {
        let top = self.y;
        let strips = [(TRUE_X_MM, 1.0), (ENLARGED_X_MM, ENLARGED)];
        // A thickness that is no number draws no strand either.
        let needed = breadth(group).to_mm() * ENLARGED + ROUND_STITCHES_MM;
        let tall = STRIP_TALL_MM.max(needed).min(STRIP_TALLEST_MM);
        for (x, scale) in strips {
            let place = Rect::new(x, top, x + STRIP_WIDE_MM, top + tall);
            self.strips.push(strip(group, place, scale));
        }
        self.lines_of(
            0.0,
            wrapped(&self.say.say(name(group)), TYPE_WORDS, WORDS_MM),
            TYPE_WORDS,
            true,
        );
        self.lines_of(
            0.0,
            wrapped(
                &self.say.say(amount(group, self.collection)),
                TYPE_WORDS,
                WORDS_MM,
            ),
            TYPE_WORDS,
            false,
        );
        let told = match self.reader {
            PlanFor::Maker => group.grounds.as_slice(),
            PlanFor::Workroom => &[],
        };
        for ground in told {
            let contrast = contrast(ground, self.collection);
            let words = wrapped(&self.say.say(contrast), TYPE_FIGURES, WORDS_MM);
            self.lines_of(0.0, words, TYPE_FIGURES, false);
        }
        let beside = self.y;
        self.y = top + tall + 1.0;
        let rows = wrapped(
            &self.say.putting(&rows(group)),
            TYPE_FIGURES,
            WIDE_MM - TRUE_X_MM,
        );
        self.lines_of(TRUE_X_MM, rows, TYPE_FIGURES, false);
        self.y = self.y.max(beside) + BETWEEN_MM;
    }

    fn notes(&mut self) {
        let notes = match self.reader {
            PlanFor::Maker => self.say.plan_of_yarns_notes(),
            PlanFor::Workroom => self.say.plan_of_yarns_notes_for_workroom(),
        };
        let notes = wrapped(notes, TYPE_FIGURES, WIDE_MM);
        self.lines_of(0.0, notes, TYPE_FIGURES, false);
    }
}

/// "tex 105 ochre, 3.15 /cm (8 /in)".
fn name(group: &Group) -> Said {
    let size = group.size.map_or_else(
        || key::PLAN_OF_YARNS_SIZE_UNKNOWN.into(),
        |size| Given::from(size.show(System::Metric)),
    );
    let density = group.density.map_or_else(
        || Given::from(key::PLAN_OF_YARNS_TACKS),
        |density| {
            say::PlanOfYarnsBothDensities {
                inch: density.figure().show(System::Inch),
                metric: density.figure().show(System::Metric),
            }
            .into()
        },
    );
    let colour = &group.colour_name;
    say::PlanOfYarnsGroup {
        colour,
        density,
        size,
    }
    .into()
}

/// "16.1 m: Rope 105 in 401, 301", the yarns as the maker wrote them.
fn amount(group: &Group, collection: &Collection) -> Said {
    let mut stitches: Vec<Given> = Vec::new();
    for row in &group.rows {
        let stitch = match row.sewn {
            Sewn::Row(_) => row.stitch.code().into(),
            Sewn::Bartack(_) => key::PLAN_OF_YARNS_BARTACKS.into(),
            Sewn::Buttonhole => key::PLAN_OF_YARNS_BUTTONHOLES.into(),
        };
        if !stitches.contains(&stitch) {
            stitches.push(stitch);
        }
    }
    let named = |key: &'_ String| {
        collection
            .yarns
            .get(key)
            .map_or(key.clone(), |y| y.name.clone())
    };
    let yarns: Vec<String> = group.yarns.iter().map(named).collect();
    say::PlanOfYarnsAmount {
        metres: Figure::new(group.yarn.to_m(), 1, ""),
        stitches: Given::List(stitches),
        yarns,
    }
    .into()
}

/// "on Tideline selvedge, reverse: 30.1, strong contrast".
fn contrast(ground: &Ground, collection: &Collection) -> Said {
    let difference = ground.difference.to_string();
    let named = collection.cloths.get(&ground.cloth).map(|c| &c.name);
    let (cloth, contrast) = (
        named.unwrap_or(&ground.cloth),
        ground.difference.contrast().key(),
    );
    if ground.reverse {
        say::PlanOfYarnsOnReverse {
            cloth,
            contrast,
            difference,
        }
        .into()
    } else {
        say::PlanOfYarnsOnFace {
            cloth,
            contrast,
            difference,
        }
        .into()
    }
}

/// "inseam 1, seat seam 1+2, (outseam 1)".
fn rows(group: &Group) -> Given {
    let mut told = Vec::new();
    let mut rest = group.rows.as_slice();
    while let Some(row) = rest.first() {
        // Rows of one seam that follow one another are told together; a tack is never joined to them.
        let alike = |other: &&GroupRow| {
            matches!((row.sewn, other.sewn), (Sewn::Row(_), Sewn::Row(_)))
                && (&other.seam, other.seen) == (&row.seam, row.seen)
        };
        let together = rest.iter().take_while(alike).count().max(1);
        let (rows, others) = rest.split_at(together);
        let numbers: Vec<String> = rows.iter().filter_map(GroupRow::number).collect();
        let said = row.said_with(&numbers.join("+"));
        told.push(if row.seen {
            Given::from(said)
        } else {
            say::PlanOfYarnsUnseen { row: said }.into()
        });
        rest = others;
    }
    Given::List(told)
}

/// Words in lines no wider than this; a word that is wider by itself is cut.
fn wrapped(words: &str, size: Length, wide_mm: f64) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    let mut line = String::new();
    for word in words.split_whitespace() {
        let word = cut(word, size, wide_mm);
        let longer = if line.is_empty() {
            word.clone()
        } else {
            format!("{line} {word}")
        };
        if text_width(&longer, size).to_mm() <= wide_mm {
            line = longer;
        } else {
            lines.push(std::mem::replace(&mut line, word));
        }
    }
    if !line.is_empty() {
        lines.push(line);
    }
    lines
}

fn cut(word: &str, size: Length, wide_mm: f64) -> String {
    if text_width(word, size).to_mm() <= wide_mm {
        return word.to_owned();
    }
    let mut short = String::new();
    for letter in word.chars() {
        short.push(letter);
        if text_width(&format!("{short}…"), size).to_mm() > wide_mm {
            short.pop();
            break;
        }
    }
    short + "…"
}

#[cfg(test)]
mod tests;
