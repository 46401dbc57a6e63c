//! Leading the names of a starting style into another collection: the nearest yarn, a cloth of the same use, a trim of
//! the same kind, the first workroom. What cannot be led anywhere stays, and is reported when the style is read.

use toml_edit::{DocumentMut, Item, TableLike, Value};

use super::materials;
use crate::{Cloth, ClothUse, Collection, Trim, TrimKind};

/// What stands for each of the demo's names.
struct Names<'a> {
    collection: &'a Collection,
    /// Its declarations say what each of its names is.
    demo: Collection,
}

/// The text of a style with every name the collection lacks replaced by its nearest there.
pub(crate) fn into_collection(text: &str, collection: &Collection) -> String {
    let (Some(demo), Ok(mut document)) =
        (materials::demo_collection(), text.parse::<DocumentMut>())
    else {
        return text.to_owned();
    };
    let names = Names { collection, demo };
    walk(document.as_table_mut(), &names);
    document.to_string()
}

/// Visits every section; the key says what a text names.
fn walk(table: &mut dyn TableLike, names: &Names<'_>) {
    for (key, item) in table.iter_mut() {
        let key = key.get().to_owned();
        match item {
            Item::Value(value) => walk_value(&key, value, names),
            Item::Table(table) => walk(table, names),
            Item::ArrayOfTables(tables) => {
                for table in tables.iter_mut() {
                    walk(table, names);
                }
            }
            Item::None => {}
        }
    }
}

fn walk_value(key: &str, value: &mut Value, names: &Names<'_>) {
    match value {
        Value::InlineTable(table) => walk(table, names),
        Value::Array(array) => {
            for member in array.iter_mut() {
                walk_value("", member, names);
            }
        }
        Value::String(text) => {
            if let Some(name) = names.stands_for(key, text.value()) {
                let decor = value.decor().clone();
                *value = name.into();
                *value.decor_mut() = decor;
            }
        }
        _ => {}
    }
}

impl Names<'_> {
    /// The name to take instead, when the collection does not have this one.
    fn stands_for(&self, key: &str, name: &str) -> Option<&str> {
        if let Some(same) = materials::stands_for(name).filter(|same| self.has(key, name, same)) {
            return Some(same);
        }
        match key {
            "workroom" => self.workroom(name),
            "shell" => self.cloth(name, ClothUse::Shell),
            "pocketing" => self.cloth(name, ClothUse::Pocketing),
            "lining" => self.cloth(name, ClothUse::Lining),
            "yarn" | "under" => self.yarn(name),
            "button" | "band_button" | "zip" | "trim" => self.trim(name),
            _ => None,
        }
    }

    /// Whether the collection does not have a material of the demo's and has the one a new collection has for it.
    fn has(&self, key: &str, demo: &str, same: &str) -> bool {
        match key {
            "shell" | "pocketing" | "lining" => {
                let cloths = &self.collection.cloths;
                !cloths.contains_key(demo) && cloths.contains_key(same)
            }
            "yarn" | "under" => {
                let yarns = &self.collection.yarns;
                !yarns.contains_key(demo) && yarns.contains_key(same)
            }
            _ => false,
        }
    }

    fn workroom(&self, name: &str) -> Option<&str> {
        let rooms = &self.collection.workrooms;
        if rooms.contains_key(name) {
            None
        } else {
            rooms.keys().next().map(String::as_str)
        }
    }

    /// "lining" is also how far a pocket is lined: only names the demo declares are looked at.
    fn cloth(&self, name: &str, r#use: ClothUse) -> Option<&str> {
        let cloths = &self.collection.cloths;
        if cloths.contains_key(name) || !self.demo.cloths.contains_key(name) {
            return None;
        }
        let same = |(_, cloth): &(&String, &Cloth)| cloth.r#use == r#use;
        cloths.iter().find(same).map(|(name, _)| name.as_str())
    }

    fn yarn(&self, name: &str) -> Option<&str> {
        let yarns = &self.collection.yarns;
        let wanted = self
            .demo
            .yarns
            .get(name)
            .filter(|_| !yarns.contains_key(name))?
            .size;
        let off = |yarn: &crate::Yarn| {
            if yarn.size > wanted {
                yarn.size - wanted
            } else {
                wanted - yarn.size
            }
        };
        let nearest = yarns.iter().min_by(|a, b| off(a.1).total_cmp(&off(b.1)));
        nearest.map(|(name, _)| name.as_str())
    }

    fn trim(&self, name: &str) -> Option<&str> {
        let trims = &self.collection.trims;
        let wanted = self.demo.trims.get(name)?.kind;
        let is_button = |kind| matches!(kind, TrimKind::ShankButton | TrimKind::SewnButton);
        let fits = |trim: &Trim| trim.kind == wanted || (is_button(trim.kind) && is_button(wanted));
        if trims.get(name).is_some_and(fits) {
            return None;
        }
        trims
            .iter()
            .find(|(_, trim)| fits(trim))
            .map(|(name, _)| name.as_str())
    }
}
