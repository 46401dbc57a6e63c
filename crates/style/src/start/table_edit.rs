//! Values put into a file's text, and taken out, by their place.

use toml_edit::{DocumentMut, Item, Value, value};

/// Sets a value of a section and keeps the comment behind it.
pub(super) fn set(document: &mut DocumentMut, path: &[&str], to: impl Into<Value>) {
    let Some((last, way)) = path.split_last() else {
        return;
    };
    let mut item = document.as_item_mut();
    for key in way {
        let Some(next) = item.get_mut(*key) else {
            return;
        };
        item = next;
    }
    let mut to: Value = to.into();
    match item.get_mut(*last) {
        Some(Item::Value(there)) => {
            *to.decor_mut() = there.decor().clone();
            *there = to;
        }
        Some(other) => *other = value(to),
        None => {
            if let Some(table) = item.as_table_like_mut() {
                table.insert(last, value(to));
            }
        }
    }
}

/// Takes something out; nothing happens where it is not there.
pub(super) fn remove(document: &mut DocumentMut, path: &[&str]) {
    let Some((last, way)) = path.split_last() else {
        return;
    };
    let mut item = document.as_item_mut();
    for key in way {
        let Some(next) = item.get_mut(*key) else {
            return;
        };
        item = next;
    }
    if let Some(table) = item.as_table_like_mut() {
        table.remove(last);
    }
}
