//! What the style file itself says for each value, in the maker's own words.

use std::collections::BTreeMap;

use toml_edit::{Document, Item, TableLike, Value};

/// Every value of a style file by its path, as the maker wrote it.
#[derive(Clone, Debug, Default)]
pub(crate) struct FileWords(BTreeMap<String, String>);

impl FileWords {
    /// Reads a text that is a style file; any other text has nothing written.
    pub(crate) fn of(text: &str) -> Self {
        let mut all = Self::default();
        if let Ok(document) = Document::parse(text) {
            all.table("", document.as_table());
        }
        all
    }

    /// What stands at a path, such as `chart.thigh.value`.
    pub(crate) fn get(&self, path: &str) -> Option<&str> {
        self.0.get(path).map(String::as_str)
    }

    fn table(&mut self, path: &str, table: &dyn TableLike) {
        for (key, item) in table.iter() {
            let path = if path.is_empty() {
                key.to_owned()
            } else {
                format!("{path}.{key}")
            };
            match item {
                Item::Value(value) => self.value(path, value),
                Item::Table(table) => self.table(&path, table),
                Item::ArrayOfTables(tables) => {
                    for (number, table) in tables.iter().enumerate() {
                        self.table(&format!("{path}[{number}]"), table);
                    }
                }
                Item::None => {}
            }
        }
    }

    fn value(&mut self, path: String, value: &Value) {
        match value {
            Value::InlineTable(table) => self.table(&path, table),
            Value::Array(array) => {
                for (number, value) in array.iter().enumerate() {
                    self.value(format!("{path}[{number}]"), value);
                }
            }
            Value::String(text) => {
                self.0.insert(path, text.value().clone());
            }
            other => {
                self.0.insert(path, other.to_string().trim().to_owned());
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn values_are_found_by_path_as_written() {
        let written = FileWords::of(
            "[chart.thigh]\nvalue = \"24 1/2 in\" # note\n[seams.a]\nrows = [{ density = \"8 /in\" }]\n[[labels]]\ntrim = 'x'\n[loops]\ncount = 5 # five\n",
        );
        assert_eq!(written.get("chart.thigh.value"), Some("24 1/2 in"));
        assert_eq!(written.get("seams.a.rows[0].density"), Some("8 /in"));
        assert_eq!(written.get("labels[0].trim"), Some("x"));
        assert_eq!(written.get("loops.count"), Some("5"));
        assert_eq!(written.get("chart.thigh"), None);
    }
}
