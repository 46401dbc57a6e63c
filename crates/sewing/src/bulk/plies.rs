//! Plies by cloth, and how many of them a sewn seam lies in.

use draft::ClothUse;
use style::{Collection, Construction, StyleDoc};
use trade::Length;
use words::{Given, Said, say};

use crate::construct::construct;

/// Plies lying on one another, counted by cloth.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub struct Plies {
    /// Of the shell.
    pub shell: u32,
    /// Of the pocketing.
    pub pocketing: u32,
    /// Of the lining.
    pub lining: u32,
}

/// Thickness of one ply of each cloth.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Thicknesses {
    /// Of the shell.
    pub shell: Length,
    /// Of the pocketing.
    pub pocketing: Length,
    /// Of the lining; the thicker where the two back pockets have different ones.
    pub lining: Length,
}

/// A cloth the collection does not know counts as denim of 12 oz/yd² (0.70 mm, from memory).
const USUAL_SHELL: Length = Length::mm(0.70);

/// The same for pocketing and lining (common practice).
const USUAL_LIGHT: Length = Length::mm(0.40);

impl Thicknesses {
    /// Of the style's cloths, from the collection.
    pub fn of(doc: &StyleDoc, collection: &Collection) -> Thicknesses {
        let of = |key: &str, usual: Length| thickness_of(collection, key).unwrap_or(usual);
        let linings = doc.linings();
        let thickest = linings.iter().map(|key| of(key, USUAL_LIGHT));
        Thicknesses {
            shell: of(&doc.cloth.shell, USUAL_SHELL),
            pocketing: of(&doc.cloth.pocketing, USUAL_LIGHT),
            lining: thickest.reduce(Length::max).unwrap_or(USUAL_LIGHT),
        }
    }

    /// The same where a back pocket is lined with a cloth of its own.
    pub(super) fn lined_with(self, collection: &Collection, cloth: Option<&str>) -> Thicknesses {
        let own = cloth.and_then(|key| thickness_of(collection, key));
        Thicknesses {
            lining: own.unwrap_or(self.lining),
            ..self
        }
    }
}

/// What a cloth of the collection states, where that can be a thickness.
fn thickness_of(collection: &Collection, key: &str) -> Option<Length> {
    let cloth = collection.cloths.get(key)?;
    Some(cloth.thickness).filter(|t| t.is_finite() && *t > Length::ZERO)
}

impl Plies {
    /// So many plies of the shell.
    pub const fn shell(plies: u32) -> Plies {
        Plies {
            shell: plies,
            pocketing: 0,
            lining: 0,
        }
    }

    /// So many plies of the pocketing.
    pub const fn pocketing(plies: u32) -> Plies {
        Plies {
            pocketing: plies,
            ..Plies::shell(0)
        }
    }

    /// So many plies of the lining.
    pub const fn lining(plies: u32) -> Plies {
        Plies {
            lining: plies,
            ..Plies::shell(0)
        }
    }

    /// How many in all.
    pub const fn total(self) -> u32 {
        self.shell + self.pocketing + self.lining
    }

    /// Both on one another.
    pub const fn and(self, other: Plies) -> Plies {
        Plies {
            shell: self.shell + other.shell,
            pocketing: self.pocketing + other.pocketing,
            lining: self.lining + other.lining,
        }
    }

    /// So often on itself.
    pub const fn times(self, n: u32) -> Plies {
        Plies {
            shell: self.shell * n,
            pocketing: self.pocketing * n,
            lining: self.lining * n,
        }
    }

    /// How thick they are together, not pressed: the sum of the thicknesses of the cloths.
    pub fn thickness(self, one: &Thicknesses) -> Length {
        one.shell * f64::from(self.shell)
            + one.pocketing * f64::from(self.pocketing)
            + one.lining * f64::from(self.lining)
    }

    /// In words: "six plies of 0.82 mm", or by cloth where there are several.
    pub fn words(self, one: &Thicknesses) -> Said {
        let cloths = [
            (self.shell, ClothUse::Shell, one.shell),
            (self.pocketing, ClothUse::Pocketing, one.pocketing),
            (self.lining, ClothUse::Lining, one.lining),
        ];
        let used: Vec<_> = cloths.iter().filter(|(n, ..)| *n > 0).collect();
        let plies = u64::from(self.total());
        let number = Said::from(say::CrossingNumber { plies });
        match used[..] {
            [(_, _, thickness)] => say::CrossingPlies {
                number,
                plies,
                thickness: thickness.in_mm(2),
            }
            .into(),
            _ => {
                let of = |(n, cloth, _): &&(u32, ClothUse, Length)| {
                    let (plies, cloth) = (u64::from(*n), cloth.key());
                    Given::from(Said::from(say::SeamPliesOfCloth { cloth, plies }))
                };
                let cloths = Given::List(used.iter().map(of).collect());
                say::CrossingPliesMixed {
                    cloths,
                    number,
                    plies,
                }
                .into()
            }
        }
    }
}

/// How the plies of a finished seam lie on one another at its thickest place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lying {
    /// Each side on itself this often, the other side beside it.
    Apart(u32),
    /// The ply on top this often, over the ply below this often.
    Stacked {
        /// The ply on top, seen from outside.
        over: u32,
        /// The ply below.
        under: u32,
    },
}

/// How a construction lies once it is sewn and pressed; what is not said here follows from the
/// plies it joins and the plies it has.
pub fn lying(construction: Construction) -> Lying {
    use Construction as C;
    let stacked = |over, under| Lying::Stacked { over, under };
    match construction {
        C::PressedOpen => Lying::Apart(2),
        // Each ply and its own edge turned in.
        C::LapFelled => stacked(2, 2),
        // The ply on top, its allowance, and the allowance of the ply below.
        C::MockFelled | C::SafetyStitched | C::Overlocked => stacked(2, 1),
        // Both edges enclosed on one side of the seam, the other ply beside them.
        C::FrenchSeam => stacked(3, 1),
        // Both allowances lie between the two plies.
        C::TurnedEdge => stacked(2, 2),
        other => {
            let facts = construct(other);
            let below = u32::from(facts.joins.saturating_sub(1));
            stacked(u32::from(facts.plies).saturating_sub(below), below)
        }
    }
}

/// How it lies where its turned-in edges have been cut away, as is done inside a seam that crosses
/// it; other constructions have nothing that could be cut away.
pub fn lying_trimmed(construction: Construction) -> Lying {
    match construction {
        Construction::LapFelled => Lying::Stacked { over: 1, under: 1 },
        other => lying(other),
    }
}

impl Lying {
    /// The plies where the two sides are themselves several plies.
    pub fn of(self, over: Plies, under: Plies) -> Plies {
        match self {
            Lying::Apart(n) if over.total() >= under.total() => over.times(n),
            Lying::Apart(n) => under.times(n),
            Lying::Stacked { over: a, under: b } => over.times(a).and(under.times(b)),
        }
    }

    /// The plies where both sides are one ply of the shell.
    pub fn plain(self) -> Plies {
        self.of(Plies::shell(1), Plies::shell(1))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A felled seam has four plies (trade practice, from memory) and a hem turned twice has three,
    /// so a hem over a felled seam has twelve, as sewcouture.blogspot.com counts on jeans.
    #[test]
    fn a_hem_over_a_felled_seam_has_twelve_plies() {
        let felled = lying(Construction::LapFelled).plain();
        assert_eq!(felled, Plies::shell(4));
        let hem = lying(Construction::RolledHem).of(felled, Plies::default());
        assert_eq!(hem.total(), 12);
    }

    /// Crossings of felled seams are of eight to ten plies (trade practice, from memory) where the
    /// turned edges inside are cut away.
    #[test]
    fn a_trimmed_crossing_of_felled_seams_has_eight_plies() {
        let crossed = lying_trimmed(Construction::LapFelled).plain();
        let all = lying(Construction::LapFelled).of(crossed, crossed);
        assert_eq!(all.total(), 8);
    }

    #[test]
    fn a_seam_pressed_open_is_as_thick_as_its_thicker_side() {
        let lying = lying(Construction::PressedOpen);
        let thick = Plies::shell(3).and(Plies::pocketing(1));
        assert_eq!(lying.of(Plies::shell(1), thick), thick.times(2));
        assert_eq!(lying.of(thick, Plies::shell(1)), thick.times(2));
    }

    #[test]
    fn constructions_of_one_piece_lie_on_themselves() {
        let plain = |c| lying(c).plain().total();
        assert_eq!(plain(Construction::RolledHem), 3);
        assert_eq!(plain(Construction::Strip), 2);
        assert_eq!(plain(Construction::PatchSet), 3);
        assert_eq!(plain(Construction::BandOverEdge), 5);
        assert_eq!(plain(Construction::MockFelled), 3);
    }

    #[test]
    fn plies_are_said_in_words() {
        let one = Thicknesses {
            shell: Length::mm(0.82),
            pocketing: Length::mm(0.45),
            lining: Length::mm(0.3),
        };
        let said = |plies: Plies| words::Words::english().saying(&plies.words(&one));
        assert_eq!(said(Plies::shell(6)), "six plies of 0.82 mm");
        assert_eq!(said(Plies::lining(1)), "one ply of 0.30 mm");
        let mixed = Plies::shell(7).and(Plies::lining(2));
        assert_eq!(said(mixed), "nine plies (7 of shell, 2 of lining)");
        // 7 × 0.82 + 2 × 0.30
        assert!((mixed.thickness(&one).to_mm() - 6.34).abs() < 1e-9);
        assert_eq!(said(Plies::shell(25)), "25 plies of 0.82 mm");
    }
}
