//! Answers with nothing left open: what was not answered is as is usual, and what does not hold is said.

use std::ops::RangeInclusive;

use super::answers::{
    Answers, OFFERED_LENGTHS, Settled, USUAL_LENGTHS, offered_waists, usual_waists,
};
use super::chart::{BASE_LENGTH, base_waist};
use super::materials::stands_for;
use crate::details::OutseamLine;
use crate::{ClothUse, Collection, Figure, Size, Tag, demo};

/// Which sizes can be begun with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Offered {
    /// Those the charts hold in.
    Charted,
    /// Any: the panels are the maker's own.
    Any,
}

/// Settles what was left open, or says which answer does not hold and what would.
pub(super) fn settle(
    answers: &Answers,
    collection: &Collection,
    sizes: Offered,
) -> Result<Settled, String> {
    let figure = answers.figure;
    let (of_waists, of_lengths) = match sizes {
        Offered::Charted => (tags(offered_waists(figure)), tags(OFFERED_LENGTHS)),
        Offered::Any => (any_tag(), any_tag()),
    };
    let waists = run(
        "waist",
        &answers.waists,
        usual_waists(figure),
        of_waists,
        &format!(" for a {} style", figure_words(figure)),
    )?;
    let lengths = run("length", &answers.lengths, USUAL_LENGTHS, of_lengths, "")?;
    let shell = shell(answers.shell.as_deref(), collection)?;
    let own_edge = collection.cloths.get(&shell).is_some_and(|c| c.selvedge);
    let outseam = match answers.outseam {
        None if own_edge => OutseamLine::Straight,
        None => OutseamLine::Shaped,
        Some(OutseamLine::Straight) if !own_edge => {
            return Err(format!(
                "the outseam cannot lie on the cloth's own edge: {shell} has none to show; choose a shaped outseam, or a cloth with a selvedge"
            ));
        }
        Some(line) => line,
    };
    // A chart is stated in the middle of its run, where most pairs are sold.
    let nearest = |tags: &[Tag], wanted: u32| {
        let wanted = Tag::inches(wanted);
        let best = tags.iter().copied().min_by_key(|tag| tag.abs_diff(wanted));
        best.unwrap_or(wanted)
    };
    let base = Size::of(
        nearest(&waists, base_waist(figure)),
        nearest(&lengths, BASE_LENGTH),
    );
    Ok(Settled {
        figure,
        fit: answers.fit,
        leg: answers.leg,
        outseam,
        waists,
        lengths,
        base,
        shell,
        taste: answers.taste,
    })
}

const fn figure_words(figure: Figure) -> &'static str {
    match figure {
        Figure::Men => "men's",
        Figure::Women => "women's",
    }
}

/// The tags from one inch to another.
fn tags(inches: RangeInclusive<u32>) -> RangeInclusive<Tag> {
    Tag::inches(*inches.start())..=Tag::inches(*inches.end())
}

fn any_tag() -> RangeInclusive<Tag> {
    Tag::halves(1)..=Tag::halves(u32::MAX)
}

fn run(
    what: &str,
    asked: &[Tag],
    usual: &[u32],
    offered: RangeInclusive<Tag>,
    whose: &str,
) -> Result<Vec<Tag>, String> {
    if let Some(tag) = asked.iter().find(|tag| !offered.contains(tag)) {
        return Err(format!(
            "{what} {tag} cannot be begun with; choose from {} to {}{whose}, and add others in the chart once it is there",
            offered.start(),
            offered.end(),
        ));
    }
    let mut tags = if asked.is_empty() {
        usual.iter().copied().map(Tag::inches).collect()
    } else {
        asked.to_vec()
    };
    tags.sort_unstable();
    tags.dedup();
    Ok(tags)
}

fn shell(asked: Option<&str>, collection: &Collection) -> Result<String, String> {
    let cloths = &collection.cloths;
    let shells = || {
        let all = cloths.iter();
        all.filter(|(_, cloth)| cloth.r#use == ClothUse::Shell)
            .map(|(name, _)| name.as_str())
    };
    match asked {
        Some(name) if cloths.contains_key(name) => Ok(name.to_owned()),
        Some(name) => {
            let known: Vec<&str> = shells().collect();
            let known = if known.is_empty() {
                "it has no shell yet: write one into cloths.toml".to_owned()
            } else {
                format!("choose from {}", known.join(", "))
            };
            Err(format!(
                "the collection has no cloth {}; {known}",
                crate::reader::short(name)
            ))
        }
        None => {
            let usual = demo::SHELL;
            let known = [Some(usual), stands_for(usual)];
            let first = known
                .into_iter()
                .flatten()
                .find(|name| cloths.contains_key(*name));
            let first = first.or_else(|| shells().next());
            // Without any shell the style says what is missing when it is read.
            Ok(first.unwrap_or(usual).to_owned())
        }
    }
}
