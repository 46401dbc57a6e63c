//! Which roll gives which plies: shade by shade, roll by roll.
//!
//! All plies that can be taken from one shade band are laid before the next band is begun, so that few
//! lays hold two shades and no ply does. When less than a ply is left on a roll, it may begin a ply that
//! the next roll of its shade goes on with at a splice of the lay; else it stays as a remnant.

use lay::Splice;
use style::Roll;
use trade::Length;

use crate::plan_cloth::SpreadLay;
use geometry::tolerance::ROUNDING;

/// Whole plies from one roll.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawn {
    /// The roll.
    pub roll: String,
    /// Its shade band; empty where not judged.
    pub shade: String,
    /// Which lay of the plan, from 0.
    pub lay: usize,
    /// How many plies follow each other from this roll.
    pub plies: u32,
    /// Set where the first of these plies was begun by the roll before.
    pub begun: Option<Begun>,
}

/// A ply that one roll begins and the next ends.
#[derive(Clone, Debug, PartialEq)]
pub struct Begun {
    /// The roll that begins it.
    pub by: String,
    /// Where it ends and the next begins.
    pub at: Splice,
}

/// What stays on a roll.
#[derive(Clone, Debug, PartialEq)]
pub struct Rest {
    /// The roll.
    pub roll: String,
    /// Its shade band.
    pub shade: String,
    /// What is left on it.
    pub length: Length,
    /// Whether nothing of it was used.
    pub whole: bool,
}

/// How the rolls are used up.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct Rolls {
    /// What is laid, in order.
    pub drawn: Vec<Drawn>,
    /// What is left of each roll, in the order they are used.
    pub rests: Vec<Rest>,
    /// The plies of each lay for which no cloth was left; the same number as lays.
    pub missing: Vec<u32>,
    /// The cloth of those plies.
    pub short: Length,
    /// Cloth that lies double at splices.
    pub laps: Length,
}

struct OnHand<'a> {
    roll: &'a Roll,
    left: Length,
}

/// Lays the plies of a plan from the rolls that are there.
///
/// The shade with the most cloth is begun first, within a shade the shortest roll: long rolls at the
/// end leave the longest remnant in one piece. `end` is lost at each end of each piece of cloth.
#[must_use]
pub fn spread_rolls(rolls: &[Roll], lays: &[SpreadLay], end: Length) -> Rolls {
    let of_shade = |shade: &str| {
        let same = rolls.iter().filter(|roll| roll.shade == shade);
        same.fold(Length::ZERO, |sum, roll| sum + roll.length)
    };
    let mut on_hand: Vec<OnHand<'_>> = rolls
        .iter()
        .map(|roll| OnHand {
            roll,
            left: roll.length,
        })
        .collect();
    on_hand.sort_by(|a, b| {
        of_shade(&b.roll.shade)
            .total_cmp(&of_shade(&a.roll.shade))
            .then_with(|| a.roll.shade.cmp(&b.roll.shade))
            .then_with(|| a.roll.length.total_cmp(&b.roll.length))
            .then_with(|| a.roll.name.cmp(&b.roll.name))
    });
    let mut used = Rolls::default();
    let mut current = 0;
    for (number, lay) in lays.iter().enumerate() {
        let mut wanted = lay.planned.plies;
        while wanted > 0 && current < on_hand.len() {
            let whole = plies_of(on_hand[current].left, lay.ply).min(wanted);
            if whole > 0 {
                let roll = &mut on_hand[current];
                roll.left -= lay.ply * f64::from(whole);
                used.draw(roll.roll, number, whole, None);
                wanted -= whole;
                continue;
            }
            // Too little for a ply: begin one and let the next roll of the shade end it.
            let (here, after) = on_hand.split_at_mut(current + 1);
            if let (Some(here), Some(next)) = (here.last_mut(), after.first_mut())
                && here.roll.shade == next.roll.shade
                && let Some(at) = begin(lay, here.left, end)
                && let rest = lay.planned.length - at.from + end * 2.0
                && rest <= next.left
            {
                here.left = here.left - at.until - end * 2.0;
                next.left -= rest;
                used.laps += at.lap();
                let begun = Begun {
                    by: here.roll.name.clone(),
                    at,
                };
                used.draw(next.roll, number, 1, Some(begun));
                wanted -= 1;
            }
            current += 1;
        }
        used.missing.push(wanted);
        used.short += lay.ply * f64::from(wanted);
    }
    used.rests = on_hand
        .iter()
        .map(|on_hand| Rest {
            roll: on_hand.roll.name.clone(),
            shade: on_hand.roll.shade.clone(),
            length: on_hand.left,
            whole: on_hand.left == on_hand.roll.length,
        })
        .collect();
    used
}

/// The splice nearest the end of the ply that so much cloth reaches, its own two ends counted.
fn begin(lay: &SpreadLay, left: Length, end: Length) -> Option<Splice> {
    let reached = |splice: &&Splice| splice.until + end * 2.0 <= left;
    lay.splices.iter().rfind(reached).copied()
}

fn plies_of(left: Length, ply: Length) -> u32 {
    let plies = (left / ply + ROUNDING).floor();
    // Saturates, and is nothing for what is no number.
    plies as u32
}

impl Rolls {
    fn draw(&mut self, roll: &Roll, lay: usize, plies: u32, begun: Option<Begun>) {
        // What follows a begun ply from the same roll is one entry with it.
        if let Some(last) = self.drawn.last_mut()
            && begun.is_none()
            && last.roll == roll.name
            && last.lay == lay
        {
            last.plies += plies;
            return;
        }
        self.drawn.push(Drawn {
            roll: roll.name.clone(),
            shade: roll.shade.clone(),
            lay,
            plies,
            begun,
        });
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use crate::plan::PlannedLay;
    use cutting::{Spread, SpreadRules, Way};
    use trade::Area;

    fn roll(name: &str, m: f64, shade: &str) -> Roll {
        Roll {
            name: name.to_owned(),
            length: Length::m(m),
            shade: shade.to_owned(),
        }
    }

    fn lay(
        m: f64,
        plies: u32,
        splices: &[(f64, f64)],
        collection: &style::Collection,
    ) -> SpreadLay {
        let rules = SpreadRules::plain(Way::OneWay, Length::ZERO);
        let (name, cloth) = collection.cloths.first().unwrap();
        SpreadLay {
            planned: PlannedLay {
                pairs: vec![1],
                plies,
                length: Length::m(m),
            },
            spread: Spread::new(&[], name, cloth, &rules),
            found: None,
            ply: Length::m(m + 0.1),
            cloth: Length::m((m + 0.1) * f64::from(plies)),
            pieces: Area::mm2(0.0),
            splices: splices
                .iter()
                .map(|(from, until)| Splice {
                    from: Length::m(*from),
                    until: Length::m(*until),
                })
                .collect(),
        }
    }

    fn demo() -> style::Collection {
        let folder = tempfile::tempdir().unwrap();
        let root = folder.path().join("saltmarsh");
        style::write_demo(&root).unwrap();
        style::load_collection(&root).unwrap()
    }

    #[test]
    fn rolls_by_hand() {
        let end = Length::m(0.05);
        let cloths = demo();
        // Plies of 4.9 m and their ends: 5 m. A holds 11 m and 12 m, B 50 m: B is begun first.
        let rolls = [
            roll("a1", 12.0, "A"),
            roll("b1", 50.0, "B"),
            roll("a2", 11.0, "A"),
        ];
        let plan = [
            lay(4.9, 8, &[], &cloths),
            lay(4.9, 5, &[(0.7, 0.8)], &cloths),
        ];
        let used = spread_rolls(&rolls, &plan, end);
        let drawn: Vec<(&str, usize, u32, bool)> = used
            .drawn
            .iter()
            .map(|d| (d.roll.as_str(), d.lay, d.plies, d.begun.is_some()))
            .collect();
        // b1 gives all of the first lay and two of the second, nothing is left on it. a2 gives two; its
        // last metre begins a ply up to 0.8 m, with its two ends 0.9 m, and a1 goes on from 0.7 m.
        let expected = [
            ("b1", 0, 8, false),
            ("b1", 1, 2, false),
            ("a2", 1, 2, false),
            ("a1", 1, 1, true),
        ];
        assert_eq!(drawn, expected);
        let rest: Vec<(&str, f64)> = used
            .rests
            .iter()
            .map(|rest| {
                (
                    rest.roll.as_str(),
                    (rest.length.to_m() * 1000.0).round() / 1000.0,
                )
            })
            .collect();
        assert_eq!(rest, [("b1", 0.0), ("a2", 0.1), ("a1", 7.7)]);
        assert_eq!(used.missing, [0, 0]);
        assert!((used.laps - Length::m(0.1)).abs() < Length::mm(1e-6));
    }

    #[test]
    fn what_is_missing_is_said() {
        let cloths = demo();
        let plan = [lay(4.9, 3, &[], &cloths), lay(1.9, 2, &[], &cloths)];
        let used = spread_rolls(&[roll("a", 11.0, "")], &plan, Length::m(0.05));
        assert_eq!(used.missing, [1, 2]);
        assert!((used.short - Length::m(9.0)).abs() < Length::mm(1e-6));
    }

    #[test]
    fn no_ply_holds_two_shades() {
        let cloths = demo();
        let plan = [lay(4.9, 4, &[(2.0, 2.0)], &cloths)];
        let rolls = [roll("a", 13.0, "A"), roll("b", 12.0, "B")];
        let used = spread_rolls(&rolls, &plan, Length::m(0.05));
        assert!(used.drawn.iter().all(|drawn| drawn.begun.is_none()));
        assert_eq!(used.drawn.len(), 2);
    }
}
