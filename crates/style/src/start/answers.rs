//! What a maker answers before a style begins, and what holds where nothing is answered.

use std::ops::RangeInclusive;

use trade::Length;

use crate::details::OutseamLine;
use crate::document::words;
use crate::{ClothUse, Collection, Figure, Fit, Size, Tag};

/// What a new style needs to be told.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
pub struct NewStyle {
    /// The style's name; its folder is named after it.
    pub name: String,
    /// The label's code for it; empty for one that is made of the name and free.
    pub code: String,
    /// Its folder, where it is not to be named after the style.
    pub folder: Option<String>,
    /// The label's name, for a new collection; the style's name when left out, and what patch and main label say is then
    /// open.
    pub label: Option<String>,
    /// What else only the label knows.
    pub words: LabelWords,
    /// What it is to be like.
    pub answers: Answers,
}

/// What only the label knows. What is not told is left open, and is a finding until it is.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
pub struct LabelWords {
    /// The workroom that sews it, for a new collection.
    pub workroom: Option<String>,
    /// Where that is.
    pub place: Option<String>,
    /// The country it is made in, as its label says it.
    pub origin: Option<String>,
}

/// What a style is to be like to begin with. Everything can be changed afterwards.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Answers {
    /// Whose figure it is cut for.
    pub figure: Figure,
    /// How it fits.
    pub fit: Fit,
    /// How wide the leg is below the knee.
    pub leg: Leg,
    /// How the outseam runs; `None` takes the cloth's own edge where the cloth has one.
    pub outseam: Option<OutseamLine>,
    /// Waist tags; empty takes the usual ones of the figure.
    pub waists: Vec<Tag>,
    /// Length tags; empty takes the usual ones.
    pub lengths: Vec<Tag>,
    /// The shell, a name from `cloths.toml`; `None` takes the demo's, else the first shell there is.
    pub shell: Option<String>,
    /// How it is sewn.
    pub taste: Taste,
}

impl Default for Answers {
    fn default() -> Self {
        Self {
            figure: Figure::Men,
            fit: Fit::Straight,
            leg: Leg::Usual,
            outseam: None,
            waists: Vec::new(),
            lengths: Vec::new(),
            shell: None,
            taste: Taste::Felled,
        }
    }
}

/// How wide the leg is below the knee.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Leg {
    /// As is usual for the fit.
    Usual,
    /// Wider at the hem than is usual for the fit.
    Wide,
}
words!(Leg: Usual = "usual", Wide = "wide");

impl Leg {
    /// What the hem is wider by than is usual (common practice).
    pub(super) fn at_hem(self) -> Length {
        match self {
            Self::Usual => Length::ZERO,
            Self::Wide => Length::inches(2.0),
        }
    }

    /// What the knee is wider by, so that the line from thigh to hem stays even (common practice).
    pub(super) fn at_knee(self) -> Length {
        match self {
            Self::Usual => Length::ZERO,
            Self::Wide => Length::inches(0.5),
        }
    }
}

/// How a style is sewn: a whole set of constructions and rows that go together.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Taste {
    /// Inseam, seat and yoke lap-felled, chain-stitched in two colours, a rolled hem.
    Felled,
    /// Overlocked inside, topstitched in two rows, a folded hem.
    Topstitched,
    /// One row in the cloth's own tone, no rivets, plain pockets.
    Quiet,
}
words!(Taste: Felled = "felled", Topstitched = "topstitched", Quiet = "quiet");

impl Taste {
    /// What it is, in a line for the maker.
    #[must_use]
    pub const fn about(self) -> &'static str {
        match self {
            Self::Felled => {
                "Inseam, seat and yoke lap-felled and chain-stitched, a rolled hem, copper rivets. Strong, and slow to sew."
            }
            Self::Topstitched => {
                "Overlocked inside and topstitched in two rows, a folded hem. Any workroom has the machines."
            }
            Self::Quiet => {
                "One row in the tone of the cloth where others have two, no rivets, plain pockets. Little to see, less to sew."
            }
        }
    }
}

/// The waists that can be begun with, in inches: where the charts hold, halves between included (men's and women's runs as published).
#[must_use]
pub const fn offered_waists(figure: Figure) -> RangeInclusive<u32> {
    match figure {
        Figure::Men => 28..=42,
        Figure::Women => 24..=36,
    }
}

/// The lengths that can be begun with, in inches, halves between included.
pub const OFFERED_LENGTHS: RangeInclusive<u32> = 28..=36;

/// The waists a figure's run usually has (common practice: every inch where most pairs are sold, then every other).
#[must_use]
pub const fn usual_waists(figure: Figure) -> &'static [u32] {
    match figure {
        Figure::Men => &[28, 29, 30, 31, 32, 33, 34, 36, 38],
        Figure::Women => &[24, 25, 26, 27, 28, 29, 30, 31, 32, 34],
    }
}

/// The lengths a run usually has (common practice).
pub const USUAL_LENGTHS: &[u32] = &[30, 32, 34];

/// The answers with nothing left open.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Settled {
    pub(super) figure: Figure,
    pub(super) fit: Fit,
    pub(super) leg: Leg,
    pub(super) outseam: OutseamLine,
    pub(super) waists: Vec<Tag>,
    pub(super) lengths: Vec<Tag>,
    pub(super) base: Size,
    pub(super) shell: String,
    pub(super) taste: Taste,
}

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
        nearest(&waists, super::chart::base_waist(figure)),
        nearest(&lengths, super::chart::BASE_LENGTH),
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
            let usual = super::demo_shell();
            let known = [Some(usual), super::materials::stands_for(usual)];
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
