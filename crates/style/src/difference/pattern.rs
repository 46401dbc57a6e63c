//! The maker's own pattern.

use words::{key, say};

use super::change::Kind;
use super::found::Found;
use super::names;
use super::value::Value;
use crate::own::{OWN_PIECES, OwnPattern, OwnPiece};

pub(super) fn pattern(found: &mut Found, old: Option<&OwnPattern>, new: Option<&OwnPattern>) {
    let (Some(a), Some(b)) = (old, new) else {
        let drafted = || Value::from(key::DIFFERENCE_DRAFTED);
        let file = |pattern: &OwnPattern| Value::from(&pattern.file);
        let [was, is] = [old, new].map(|pattern| pattern.map_or_else(drafted, file));
        return found.value("pattern", key::DIFFERENCE_PATTERN, was, is);
    };
    found.value("pattern.file", key::DIFFERENCE_PATTERN, &a.file, &b.file);
    let (path, about) = ("pattern.drawn", key::DIFFERENCE_PATTERN_DRAWN);
    found.value(path, about, a.drawn, b.drawn);
    let (path, about) = ("pattern.allowance", key::DIFFERENCE_PATTERN_ALLOWANCE);
    found.value(path, about, a.allowance, b.allowance);
    let here = a.allowances.keys();
    let more = b.allowances.keys();
    let more = more.filter(|edge| !a.allowances.contains_key(*edge));
    for edge in here.chain(more) {
        let path = format!("pattern.allowances.{}", edge.code());
        let (was, is) = (a.allowances.get(edge), b.allowances.get(edge));
        let about = say::DifferencePatternEdgeAllowance { edge: *edge };
        found.value(path, about, was.copied(), is.copied());
    }
    for known in OWN_PIECES {
        let (one, other) = (a.pieces.get(&known.id), b.pieces.get(&known.id));
        let path = format!("pattern.{}", known.id.code());
        let about = || say::DifferencePatternPiece {
            piece: names::piece(known.id),
        };
        let name = |piece: Option<&OwnPiece>| piece.map(|piece| piece.piece.clone());
        let (was, is) = (name(one), name(other));
        found.value(path.as_str(), about(), was.as_ref(), is.as_ref());
        if let (Some(one), Some(other)) = (one, other)
            && one.edges != other.edges
        {
            let nothing = || Value::Nothing;
            found.push(path, about(), Kind::EdgesNamed, nothing(), nothing());
        }
    }
}
