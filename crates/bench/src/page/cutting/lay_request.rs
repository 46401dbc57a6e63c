//! Which lay is asked for, as a page says it in words, and what is wrong with the words.

use std::collections::BTreeMap;

use cutting::Way;
use jobs::LayOrder;
use serde::Deserialize;
use style::{Loaded, Size};
use trade::{Length, System};
use words::Words;

use crate::addresses::encoded;
use crate::work::lay::LayAsked;

/// The words of a page. What is left out is as it usually is.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(default)]
pub(crate) struct LayRequest {
    cloth: Option<String>,
    /// "32x32=2 34x32=1".
    pairs: Option<String>,
    way: Option<String>,
    gap: Option<String>,
    ends: Option<String>,
    seconds: Option<String>,
    seed: Option<String>,
}

/// More pairs than any table takes in one lay; an order of more is parted into lays by a plan.
pub(crate) const MOST_PAIRS: u32 = 24;
/// The longest search.
const MOST_SECONDS: u64 = 3600;
/// How long is searched where nobody says.
const USUAL_SECONDS: u64 = 20;
/// The widest gap between pieces.
const MOST_GAP: Length = Length::mm(50.0);
/// The most that is lost at an end.
const MOST_ENDS: Length = Length::cm(50.0);
/// The longest text that is looked at.
const LONGEST: usize = 2000;

impl LayRequest {
    /// Whether nothing is said at all.
    pub(crate) fn is_empty(&self) -> bool {
        let all = [
            &self.cloth,
            &self.pairs,
            &self.way,
            &self.gap,
            &self.ends,
            &self.seconds,
            &self.seed,
        ];
        all.iter().all(|words| words.is_none())
    }

    /// What is asked for, and every mistake in it; where there is one, the usual stands in its place.
    pub(crate) fn read(&self, say: &'static Words, loaded: &Loaded) -> (LayAsked, Vec<String>) {
        let mut problems = Vec::new();
        let order = LayOrder {
            cloth: self.cloth(loaded, &mut problems),
            pairs: self.pairs(say, loaded, &mut problems),
            way: match self.way.as_deref() {
                Some("one-way") => Way::OneWay,
                _ => Way::TwoWay,
            },
            gap: length(
                &self.gap,
                (MOST_GAP, Length::ZERO),
                |most, usual| say.say(words::say::LayGapWrong { most, usual }),
                &mut problems,
            ),
            zones: 1,
            band: None,
        };
        let asked = LayAsked {
            order,
            ends: length(
                &self.ends,
                (MOST_ENDS, style::END_LOSS),
                |most, usual| say.say(words::say::LayEndsWrong { most, usual }),
                &mut problems,
            ),
            seconds: self.seconds(say, &mut problems),
            seed: self.seed(say, &mut problems),
        };
        (asked, problems)
    }

    fn cloth(&self, loaded: &Loaded, problems: &mut Vec<String>) -> Option<String> {
        let name = stated(&self.cloth)?;
        match jobs::cloth_of(&loaded.collection, name) {
            Ok(_) => Some(name.to_owned()),
            Err(why) => {
                problems.extend(crate::work::words(&why));
                None
            }
        }
    }

    fn pairs(
        &self,
        say: &'static Words,
        loaded: &Loaded,
        problems: &mut Vec<String>,
    ) -> Vec<(Size, u32)> {
        let text = stated(&self.pairs).unwrap_or_default();
        let mut pairs: BTreeMap<Size, u32> = BTreeMap::new();
        for word in text.split_whitespace() {
            match one_size(say, loaded, word) {
                Ok((size, count)) => {
                    let all = pairs.entry(size).or_default();
                    *all = all.saturating_add(count);
                }
                Err(why) => problems.push(why),
            }
        }
        pairs.retain(|_, count| *count > 0);
        let all = pairs.values().fold(0_u32, |all, n| all.saturating_add(*n));
        if all > MOST_PAIRS {
            problems.push(say.say(words::say::LayPairsTooMany {
                most: MOST_PAIRS,
                pairs: all,
            }));
            pairs.clear();
        }
        if pairs.is_empty() {
            pairs.insert(loaded.style.sizes.base, 1);
        }
        let sizes = loaded.style.sizes.all();
        sizes
            .filter_map(|size| Some((size, *pairs.get(&size)?)))
            .collect()
    }

    fn seconds(&self, say: &'static Words, problems: &mut Vec<String>) -> u64 {
        let Some(text) = stated(&self.seconds) else {
            return USUAL_SECONDS;
        };
        let seconds = text.parse().ok();
        match seconds.filter(|seconds| (1..=MOST_SECONDS).contains(seconds)) {
            Some(seconds) => seconds,
            None => {
                problems.push(say.say(words::say::LaySecondsWrong {
                    most: MOST_SECONDS,
                    usual: USUAL_SECONDS,
                }));
                USUAL_SECONDS
            }
        }
    }

    fn seed(&self, say: &'static Words, problems: &mut Vec<String>) -> u64 {
        let text = stated(&self.seed).unwrap_or("1");
        text.parse().unwrap_or_else(|_| {
            problems.push(say.lay_seed_wrong().to_owned());
            1
        })
    }
}

/// What somebody wrote, if it is anything.
fn stated(words: &Option<String>) -> Option<&str> {
    let words = words.as_deref().map(str::trim)?;
    (!words.is_empty() && words.len() <= LONGEST).then_some(words)
}

fn one_size(say: &'static Words, loaded: &Loaded, word: &str) -> Result<(Size, u32), String> {
    let (size, count) = word
        .split_once('=')
        .ok_or_else(|| say.lay_size_wrong(word))?;
    let size: Size = size.parse().map_err(|why| format!("{why}"))?;
    jobs::size_of(&loaded.style, Some(size)).map_err(|why| crate::work::words(&why).join(": "))?;
    let count: u32 = count
        .parse()
        .ok()
        .filter(|n| *n <= MOST_PAIRS)
        .ok_or_else(|| {
            say.say(words::say::LayCountWrong {
                most: MOST_PAIRS,
                size,
            })
        })?;
    Ok((size, count))
}

fn length(
    words: &Option<String>,
    (most, usual): (Length, Length),
    wrong: impl Fn(String, String) -> String,
    problems: &mut Vec<String>,
) -> Length {
    let Some(text) = stated(words) else {
        return usual;
    };
    let length: Option<Length> = text.parse().ok();
    // The comparisons are false for what is no number.
    match length.filter(|length| *length >= Length::ZERO && *length <= most) {
        Some(length) => length,
        None => {
            problems.push(wrong(
                most.show(System::Metric),
                usual.max(Length::mm(2.0)).show(System::Metric),
            ));
            usual
        }
    }
}

/// An address's query for a lay, so that a file of it can be asked for.
pub(crate) fn query(asked: &LayAsked) -> String {
    let order = &asked.order;
    let pairs: Vec<String> = order
        .pairs
        .iter()
        .map(|(size, count)| format!("{size}={count}"))
        .collect();
    let mut query = format!("pairs={}", encoded(&pairs.join(" ")));
    if let Some(cloth) = &order.cloth {
        query.push_str(&format!("&cloth={}", encoded(cloth)));
    }
    if order.way == Way::OneWay {
        query.push_str("&way=one-way");
    }
    if order.gap > Length::ZERO {
        query.push_str(&format!(
            "&gap={}",
            encoded(&order.gap.show(System::Metric))
        ));
    }
    query
}
