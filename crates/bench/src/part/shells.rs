//! What a pair of the style would take of each shell of the collection.

use style::{ClothUse, Edit, Loaded, Size};
use trade::{Length, Mass};

use crate::garment::Worked;

/// More shells than a label compares are not worked out at once.
const MOST: usize = 12;

/// A shell of the collection, by its name there.
pub(crate) struct Shell {
    pub(crate) key: String,
    /// Whether the style is cut from it now.
    pub(crate) now: bool,
    /// `None` where the style cannot be cut from it.
    pub(crate) taken: Option<Taken>,
}

/// What a pair would take.
pub(crate) struct Taken {
    pub(crate) length: Option<Length>,
    pub(crate) mass: Mass,
}

/// Every shell there is, the style made of each.
pub(crate) fn shells(loaded: &Loaded, worked: &Worked) -> Vec<Shell> {
    let cloths = loaded.collection.cloths.iter();
    let shells = cloths.filter(|(_, cloth)| cloth.r#use == ClothUse::Shell);
    let keys: Vec<&String> = shells.map(|(key, _)| key).take(MOST).collect();
    if keys.len() < 2 {
        return Vec::new();
    }
    let of = |key: &String| {
        let now = *key == loaded.style.cloth.shell;
        Shell {
            key: key.clone(),
            now,
            taken: match now {
                true => Some(Taken::of(worked)),
                false => instead(loaded, key, worked.garment.size),
            },
        }
    };
    keys.into_iter().map(of).collect()
}

impl Taken {
    fn of(worked: &Worked) -> Self {
        Self {
            length: worked.cut.shell_length,
            mass: worked.cut.mass,
        }
    }
}

/// The style cut from another shell, all else as it is.
fn instead(loaded: &Loaded, key: &str, size: Size) -> Option<Taken> {
    let edit = Edit::set("cloth.shell", key).ok()?;
    let other = loaded.with_edit(&edit).ok()?;
    Some(Taken::of(&Worked::out(&other, size)))
}
