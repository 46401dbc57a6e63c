//! The yarn plan, and the yarn of a pair and of an order.

use drawing::{PlanFor, Sheet, yarn_plan_sheet};
use sewing::work::sewing_order;
use sewing::yarn::{
    Basis, Consumption, Group, Item, Order, Role, Sewn, Used, YarnNeed, YarnPlan, consumption,
    order, plan,
};
use trade::consumption::{Formula, RatioRow, with_waste};
use trade::yarn::nearest_row;
use trade::{Length, StitchType, Unwashed, trimmed};
use words::{Given, Said, Words, key, say};

use super::context::Context;
use super::figures::drawn;
use super::words::{capital, joined, swatch};
use super::yarn_on_cloth;
use crate::{Figure, PaperError, Scale, SeamYarnRow, YarnNeedRow, YarnNote, YarnPart, YarnText};

/// The larger quantity that is counted up, all of the drawn size: as long as no order is stated, a number
/// that is easily multiplied.
const PAIRS: u32 = 100;

/// What a page leaves for the drawn plan, in millimetres.
const TALL_MM: f64 = 233.0;

/// A yarn with its size and colour.
pub(super) fn yarn_text(context: &Context<'_>, key: &str) -> YarnText {
    context.loaded.collection.yarns.get(key).map_or_else(
        || YarnText {
            name: key.to_owned(),
            ..YarnText::default()
        },
        |yarn| {
            let size = yarn.size.show(context.words.system);
            YarnText {
                name: yarn.name.clone(),
                what: joined([size.as_str(), yarn.colour_name.as_str()], ", "),
                colour: swatch(yarn.colour),
            }
        },
    )
}

pub(super) fn part(context: &Context<'_>) -> Result<YarnPart, PaperError> {
    let taken = consumption(context.shown);
    let of_pair = order(&[(context.shown, 1)]);
    let of_order = order(&[(context.shown, PAIRS)]);
    let mut notes = Notes::default();
    let seams = seams(context, &taken, &of_pair, &mut notes);
    let plan = plan(context.shown);
    Ok(YarnPart {
        sheets: sheets(context, &plan)?,
        on_cloth: yarn_on_cloth::rows(context, &plan),
        note: context.say.say(say::PapersYarnNote {
            size: context.shown.size.to_string(),
        }),
        order_label: context.say.say(say::PapersYarnPairs {
            pairs: PAIRS.to_string(),
        }),
        waste: of_pair.waste.show(context.words.system),
        yarns: of_pair
            .yarns
            .iter()
            .zip(&of_order.yarns)
            .map(|(pair, order)| need(context, pair, order))
            .collect(),
        total: total(context, &of_pair, &of_order),
        seams,
        unstated: taken
            .unstated
            .iter()
            .map(|work| {
                (
                    context.say.saying(&work.what),
                    context.words.yarn(work.estimate),
                )
            })
            .collect(),
        unstated_total: context
            .words
            .yarn(taken.unstated_estimate(context.words.yarn_step())),
        unreckoned: unreckoned(context),
        notes: notes.told(),
    })
}

/// The operations that sew though nothing states or estimates what they take.
fn unreckoned(context: &Context<'_>) -> String {
    let order = sewing_order(context.shown);
    let of = order.iter().filter(|operation| {
        let open = operation.not_stated.as_ref();
        open.is_some_and(|open| open.stitch.is_none())
    });
    let operations: Vec<Given> = of.map(|operation| operation.name.clone().into()).collect();
    if operations.is_empty() {
        return String::new();
    }
    let operations = Given::List(operations);
    context.say.say(say::PapersYarnUnreckoned { operations })
}

/// The drawn plan, needle yarns before under yarns, in as many pages as they need.
fn sheets(context: &Context<'_>, plan: &YarnPlan) -> Result<Vec<Figure>, PaperError> {
    let mut out = Vec::new();
    for (role, title) in [
        (Role::Needle, key::PAPERS_NEEDLE_YARNS),
        (Role::Under, key::PAPERS_UNDER_YARNS),
    ] {
        let groups = plan.groups.iter().filter(|group| group.role == role);
        for page in pages(context, plan, groups.cloned().collect()) {
            out.push(Figure {
                callouts: Vec::new(),
                state: String::new(),
                drawing: drawn(&page)?,
                title: context.say.named(title).to_owned(),
                caption: context.say.say(say::PapersYarnSize {
                    size: context.shown.size.to_string(),
                }),
                scale: Some(Scale::Shown("1:1 and 3:1".to_owned())),
            });
        }
    }
    Ok(out)
}

/// The groups drawn, halved until each part fits a page.
fn pages(context: &Context<'_>, plan: &YarnPlan, groups: Vec<Group>) -> Vec<Sheet> {
    if groups.is_empty() {
        return Vec::new();
    }
    let mut part = YarnPlan {
        groups,
        size: plan.size,
    };
    let sheet = yarn_plan_sheet(
        &part,
        &context.loaded.collection,
        PlanFor::Workroom,
        context.say,
    );
    if part.groups.len() == 1 || sheet.height <= Length::mm(TALL_MM) {
        return vec![sheet];
    }
    let second = part.groups.split_off(part.groups.len().div_ceil(2));
    let mut out = pages(context, plan, part.groups);
    out.extend(pages(context, plan, second));
    out
}

fn need(context: &Context<'_>, pair: &YarnNeed, order: &YarnNeed) -> YarnNeedRow {
    let words = context.words;
    YarnNeedRow {
        yarn: yarn_text(context, &pair.yarn),
        needles: if pair.net.needle > Length::ZERO {
            needles(context, &pair.yarn)
        } else {
            String::new()
        },
        needle: some_yarn(context, pair.net.needle),
        under: some_yarn(context, pair.net.under),
        net: words.yarn(pair.net.total()),
        with_waste: words.yarn(pair.with_waste),
        order: words.much_yarn(order.with_waste),
        cone: order
            .per_cone
            .map_or_else(String::new, |cone| words.much_yarn(cone)),
        cones: order
            .cones
            .map_or_else(String::new, |cones| cones.to_string()),
    }
}

/// The needles that are usual for a yarn.
fn needles(context: &Context<'_>, key: &str) -> String {
    let yarn = context.loaded.collection.yarns.get(key);
    yarn.map_or_else(String::new, |yarn| {
        let (finest, heaviest) = nearest_row(yarn.size).needles;
        context.say.say(say::PapersYarnNeedles {
            finest: finest.to_string(),
            heaviest: heaviest.to_string(),
        })
    })
}

/// A length of yarn; a dash where there is none.
fn some_yarn(context: &Context<'_>, length: Length) -> String {
    if length > Length::ZERO {
        context.words.yarn(length)
    } else {
        "–".to_owned()
    }
}

fn total(context: &Context<'_>, pair: &Order, order: &Order) -> Option<YarnNeedRow> {
    if pair.yarns.len() < 2 {
        return None;
    }
    let words = context.words;
    let net: Used = pair.yarns.iter().map(|yarn| yarn.net).sum();
    let cones: Option<u64> = order.yarns.iter().map(|yarn| yarn.cones).sum();
    Some(YarnNeedRow {
        yarn: YarnText {
            name: context.say.named(key::PAPERS_ALL_YARNS).to_owned(),
            ..YarnText::default()
        },
        needles: String::new(),
        needle: words.yarn(net.needle),
        under: words.yarn(net.under),
        net: words.yarn(net.total()),
        with_waste: words.yarn(pair.total()),
        order: words.much_yarn(order.total()),
        cone: String::new(),
        cones: cones.map_or_else(String::new, |cones| cones.to_string()),
    })
}

/// What one line of the table of seams adds up.
#[derive(Default)]
struct Line {
    name: String,
    stitches: Vec<&'static str>,
    sewn: Unwashed<Length>,
    used: Used,
    basis: Vec<String>,
}

fn seams(
    context: &Context<'_>,
    taken: &Consumption,
    pair: &Order,
    notes: &mut Notes,
) -> Vec<SeamYarnRow> {
    let mut lines: Vec<Line> = Vec::new();
    for item in &taken.items {
        let name = name(context, item);
        let at = match lines.iter().position(|line| line.name == name) {
            Some(at) => at,
            None => {
                lines.push(Line {
                    name,
                    ..Line::default()
                });
                lines.len() - 1
            }
        };
        let line = &mut lines[at];
        let stitch = match item.sewn {
            Sewn::Row(_) => item.stitch.code(),
            Sewn::Bartack(_) => context.say.named(key::PAPERS_ZIGZAG),
            Sewn::Buttonhole => context.say.named(key::PAPERS_KEYHOLE),
        };
        if !line.stitches.contains(&stitch) {
            line.stitches.push(stitch);
        }
        let mark = notes.mark(&basis(context.say, item));
        if !line.basis.contains(&mark) {
            line.basis.push(mark);
        }
        line.sewn = line.sewn + item.sewn_length();
        line.used = line.used + item.used;
    }
    let words = context.words;
    lines
        .into_iter()
        .map(|line| SeamYarnRow {
            seam: line.name,
            stitches: line.stitches.join(", "),
            sewn: words.sewn(line.sewn.figure()),
            needle: words.yarn(line.used.needle),
            under: words.yarn(line.used.under),
            net: words.yarn(line.used.total()),
            with_waste: words.yarn(with_waste(line.used.total(), pair.waste)),
            basis: line.basis,
        })
        .collect()
}

/// The seam, or what else is sewn.
fn name(context: &Context<'_>, item: &Item) -> String {
    let words = context.say;
    capital(&match item.sewn {
        Sewn::Bartack(_) => words.named(key::PAPERS_BARTACKS).to_owned(),
        Sewn::Buttonhole => words.named(key::PAPERS_BUTTONHOLES).to_owned(),
        Sewn::Row(_) => words.putting(&item.seam.title()),
    })
}

/// The formula behind a figure, its source and that of its sharing.
fn basis(words: &Words, item: &Item) -> String {
    let what = match item.sewn {
        Sewn::Bartack(_) => words.named(key::PAPERS_YARN_BARTACK).to_owned(),
        Sewn::Buttonhole => words.named(key::PAPERS_YARN_BUTTONHOLE).to_owned(),
        Sewn::Row(_) => formula(words, item.stitch),
    };
    let basis = item.basis.to_string();
    let said: Said = match (item.sewn, item.basis) {
        (Sewn::Row(_), Basis::Formula(_) | Basis::RatioTable(_)) => say::PapersYarnShared {
            basis,
            sharing: item.sharing.to_string(),
            what,
        }
        .into(),
        _ => say::PapersYarnBasis { basis, what }.into(),
    };
    capital(&words.saying(&said))
}

/// "401, 4 + 2ST times the seam".
fn formula(words: &Words, stitch: StitchType) -> String {
    let times = |formula: String| {
        let stitch = stitch.to_string();
        words.say(say::PapersYarnTimes { formula, stitch })
    };
    if let Some(formula) = Formula::of(stitch) {
        let part = |factor: f64, letters: &str| {
            (factor > 0.0).then(|| format!(" + {}{letters}", trimmed(factor, 0, 1)))
        };
        return times(format!(
            "{}{}{}",
            trimmed(formula.base, 0, 1),
            part(formula.per_width, "SW").unwrap_or_default(),
            part(formula.per_thickness, "ST").unwrap_or_default(),
        ));
    }
    match RatioRow::of(stitch) {
        Some(row) => times(trimmed(row.total, 0, 1)),
        None => stitch.to_string(),
    }
}

/// What is told below the tables, each once, with its mark.
#[derive(Default)]
struct Notes(Vec<String>);

impl Notes {
    fn mark(&mut self, text: &str) -> String {
        let at = match self.0.iter().position(|known| known == text) {
            Some(at) => at,
            None => {
                self.0.push(text.to_owned());
                self.0.len() - 1
            }
        };
        letters(at)
    }

    fn told(self) -> Vec<YarnNote> {
        let marked = self.0.into_iter().enumerate();
        marked
            .map(|(at, text)| YarnNote {
                mark: letters(at),
                text,
            })
            .collect()
    }
}

/// "a" to "z", then "aa".
fn letters(at: usize) -> String {
    let letter = |n: usize| char::from(b'a' + u8::try_from(n % 26).unwrap_or(0));
    if at < 26 {
        letter(at).to_string()
    } else {
        format!("{}{}", letters(at / 26 - 1), letter(at))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_formula_is_told_with_its_letters() {
        let words = Words::english();
        // The published equations, as crate `trade` has them.
        assert_eq!(
            formula(words, StitchType::S301),
            "301, 2 + 2ST times the seam"
        );
        assert_eq!(
            formula(words, StitchType::S516),
            "516, 9 + 4SW + 6ST times the seam"
        );
        // No equation is published for 304; its ratio is 7.
        assert_eq!(formula(words, StitchType::S304), "304, 7 times the seam");
    }

    #[test]
    fn marks_go_on_after_z() {
        let marks: Vec<String> = [0, 25, 26, 51, 52, 702].map(letters).into();
        assert_eq!(marks, ["a", "z", "aa", "az", "ba", "aaa"]);
    }
}
