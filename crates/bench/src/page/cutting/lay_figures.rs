//! What is said of a lay, in words and figures.

use jobs::LayJob;
use lay::{Decides, Lay};
use style::{Loaded, Size};
use trade::{Length, System};
use words::Words;

/// What a file of a lay is called: the style, the cloth and the pairs.
pub(crate) fn file_stem(loaded: &Loaded, job: &LayJob) -> String {
    let plain = |c: char| if c.is_ascii_alphanumeric() { c } else { '-' };
    let cloth: String = job.cloth_name.chars().map(plain).collect();
    let pairs = if job.pairs == 1 { "pair" } else { "pairs" };
    format!("{}-{cloth}-{}-{pairs}", jobs::stem(loaded), job.pairs)
}

/// "2 pairs 32x32, 1 pair 34x32".
pub(crate) fn pairs(say: &'static Words, pairs: &[(Size, u32)]) -> String {
    let each: Vec<String> = pairs
        .iter()
        .map(|(size, count)| {
            say.say(words::say::LayPairsOfSize {
                pairs: *count,
                size,
            })
        })
        .collect();
    each.join(", ")
}

/// A length along the cloth: a short one to the millimetre, a long one as cloth is bought.
pub(crate) fn long(length: Length, system: System) -> String {
    const LONG: Length = Length::cm(1000.0);
    if length < LONG {
        length.show(system)
    } else {
        length.show_cloth(system)
    }
}

/// By how much a lay is longer than the bound, such as "4.2 %".
pub(crate) fn over(length: Length, bound: Length) -> String {
    let share = (length / bound - 1.0) * 100.0;
    if share.is_finite() {
        format!("{:.1} %", share.max(0.0))
    } else {
        "–".to_owned()
    }
}

/// Why no lay is shorter than the bound.
fn decides(say: &'static Words, by: Decides) -> String {
    let words = match by {
        Decides::Area => say.lay_decides_area(),
        Decides::Longest => say.lay_decides_longest(),
        Decides::Wide => say.lay_decides_wide(),
        Decides::Edges => say.lay_decides_edges(),
    };
    words.to_owned()
}

/// The figures of a lay, each with what it is.
pub(crate) fn figures(
    say: &'static Words,
    job: &LayJob,
    lay: &Lay,
    ends: Length,
    system: System,
) -> Vec<(String, String)> {
    let ply = lay.length + ends * 2.0;
    let bound = lay.bounds.best();
    let lost = ends.show(system);
    let row = |what: &str, figure| (what.to_owned(), figure);
    let mut rows = vec![
        row(say.lay_length(), long(lay.length, system)),
        row(
            say.lay_cloth_used(),
            format!("{:.1} %", lay.efficiency.to_percent()),
        ),
        row(say.lay_bound(), long(bound, system)),
        row(say.lay_decides(), decides(say, lay.bounds.decides())),
        row(say.lay_longer_by(), over(lay.length, bound)),
    ];
    if job.pairs > 1 {
        rows.push((say.lay_ply(lost), ply.show_cloth(system)));
        let each = ply / f64::from(job.pairs);
        rows.push(row(say.lay_cloth_each(), each.show_cloth(system)));
    } else {
        let what = say.lay_cloth_each_with_ends(lost);
        rows.push((what, ply.show_cloth(system)));
    }
    rows
}

/// A number of places tried, such as "1.2 million".
pub(crate) fn many(say: &'static Words, places: u64) -> String {
    match places {
        0..=999 => places.to_string(),
        1000..=999_999 => say.lay_thousand(places / 1000),
        _ => say.lay_million(format!("{:.1}", places as f64 / 1e6)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_said_as_people_say_them() {
        assert_eq!(many(Words::english(), 7), "7");
        assert_eq!(many(Words::english(), 52_900), "52 thousand");
        assert_eq!(many(Words::english(), 1_250_000), "1.2 million");
        assert_eq!(over(Length::mm(1050.0), Length::mm(1000.0)), "5.0 %");
        assert_eq!(over(Length::mm(1050.0), Length::ZERO), "–");
        let long = |mm| long(Length::mm(mm), System::Metric);
        assert_eq!(
            (long(2415.6), long(59915.5)),
            ("241.56 cm".into(), "59.92 m".into())
        );
        let sizes = [(Size::new(32, 32), 2), (Size::new(34, 30), 1)];
        assert_eq!(
            pairs(Words::english(), &sizes),
            "2 pairs 32x32, 1 pair 34x30"
        );
    }
}
