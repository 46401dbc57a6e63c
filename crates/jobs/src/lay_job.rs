//! The lay of a style: which pairs on which cloth by which rules, ready to be looked for.

use cutting::{BandCut, SizePairs, Spread, SpreadRules, Way, cut};
use style::{Cloth, Loaded, Size};
use trade::Length;

use crate::asked::{can_be_cut, cloth_of, plan, size_of};
use crate::error::JobError;

/// What is to be laid.
#[derive(Clone, Debug, PartialEq)]
pub struct LayOrder {
    /// The cloth's name in the collection; `None` is the shell.
    pub cloth: Option<String>,
    /// How many pairs of each size; one of the base size when there are none.
    pub pairs: Vec<(Size, u32)>,
    /// How pieces may lie.
    pub way: Way,
    /// What is left between pieces.
    pub gap: Length,
    /// How many shade zones the width is parted into.
    pub zones: u32,
    /// How the band is cut, in place of what the style says.
    pub band: Option<BandCut>,
}

/// Pieces of some pairs of a style, ready to be laid on one cloth.
#[derive(Clone, Debug)]
pub struct LayJob {
    /// The cloth's name in the collection.
    pub cloth_name: String,
    /// The cloth.
    pub cloth: Cloth,
    /// The pieces and their rules.
    pub spread: Spread,
    /// How many pairs.
    pub pairs: u32,
    /// What the lay is known by, such as "tideline-14 ferryman 32x32=4".
    pub words: String,
}

/// The pairs of each size once: a size that is named twice is laid as often as both say together.
fn together(loaded: &Loaded, asked: &[(Size, u32)]) -> Result<Vec<(Size, u32)>, JobError> {
    let mut sizes: Vec<(Size, u32)> = Vec::new();
    for (size, pairs) in asked {
        let size = size_of(&loaded.style, Some(*size))?;
        match sizes.iter_mut().find(|(known, _)| *known == size) {
            Some((_, all)) => *all = all.saturating_add(*pairs),
            None => sizes.push((size, *pairs)),
        }
    }
    Ok(sizes)
}

impl LayJob {
    /// Sews and cuts every size of the order and gathers what lies on its cloth.
    ///
    /// # Errors
    /// The cloth or a size is unknown, or a piece cannot be cut as the style says.
    pub fn new(loaded: &Loaded, order: &LayOrder) -> Result<Self, JobError> {
        let shell = &loaded.style.cloth.shell;
        let name = order.cloth.as_ref().unwrap_or(shell);
        let cloth = cloth_of(&loaded.collection, name)?;
        let sizes: Vec<(Size, u32)> = if order.pairs.is_empty() {
            vec![(loaded.style.sizes.base, 1)]
        } else {
            together(loaded, &order.pairs)?
        };
        let plan = plan(loaded, order.band);
        let cuts: Vec<_> = sizes
            .iter()
            .map(|(size, pairs)| {
                let garment = sewing::make(&loaded.style, &loaded.collection, *size);
                (size.to_string(), cut(&garment, &plan), *pairs)
            })
            .collect();
        cuts.iter().try_for_each(|(_, cut, _)| can_be_cut(cut))?;
        let asked_for: Vec<_> = cuts
            .iter()
            .map(|(label, cut, pairs)| SizePairs {
                label,
                cut,
                pairs: *pairs,
            })
            .collect();
        let rules = SpreadRules {
            zones: order.zones,
            ..SpreadRules::plain(order.way, order.gap)
        };
        let style = loaded.folder().file_name().unwrap_or_default();
        let mut of: Vec<String> = sizes
            .iter()
            .map(|(size, pairs)| format!("{size}={pairs}"))
            .collect();
        // Other rules make another lay, kept beside this one.
        if order.way == Way::OneWay {
            of.push("one way".to_owned());
        }
        if order.gap > Length::ZERO {
            of.push(format!("gap {}", order.gap));
        }
        if order.zones > 1 {
            of.push(format!("{} zones", order.zones));
        }
        if let Some(band) = order.band {
            of.push(format!("band {band:?}"));
        }
        Ok(Self {
            cloth_name: name.clone(),
            cloth: cloth.clone(),
            spread: Spread::new(&asked_for, name, cloth, &rules),
            pairs: sizes
                .iter()
                .fold(0, |all: u32, (_, pairs)| all.saturating_add(*pairs)),
            words: format!("{name} {} {}", style.to_string_lossy(), of.join(" ")),
        })
    }
}
