//! The fields of a page, read from its text, and the edits that the page's script makes of them.

use serde_json::{Value, json};

/// One field: an input, a list, or the radio buttons of one value.
#[derive(Clone, Debug, Default)]
pub struct Field {
    pub path: String,
    kind: String,
    tag: &'static str,
    label: bool,
    value: String,
    placeholder: String,
    checked: bool,
    options: Vec<Choice>,
}

#[derive(Clone, Debug, Default)]
struct Choice {
    value: String,
    edits: Option<Value>,
    selected: bool,
    barred: bool,
}

/// Every field of a page; radio buttons and ticks of one value are one field.
pub fn fields(html: &str) -> Vec<Field> {
    let mut all: Vec<Field> = Vec::new();
    let mut rest = html;
    while let Some(start) = rest.find('<') {
        rest = &rest[start..];
        let end = rest.find('>').unwrap();
        let tag = &rest[..end];
        let attribute = |name: &str| {
            let from = tag.find(&format!(" {name}=\""))? + name.len() + 3;
            let text = &tag[from..];
            Some(
                text[..text.find('"').unwrap()]
                    .replace("&quot;", "\"")
                    .replace("&amp;", "&"),
            )
        };
        let has =
            |name: &str| tag.ends_with(&format!(" {name}")) || tag.contains(&format!(" {name} "));
        let choice = || Choice {
            value: attribute("value").unwrap_or_default(),
            edits: attribute("data-edits").map(|text| serde_json::from_str(&text).unwrap()),
            selected: has("selected") || has("checked"),
            barred: has("disabled"),
        };
        if let Some(path) = attribute("data-path").filter(|_| !tag.starts_with("<div")) {
            let radio = attribute("type").as_deref() == Some("radio");
            let listed = attribute("data-kind").as_deref() == Some("list");
            let known = all
                .iter_mut()
                .find(|field| (radio || listed) && field.path == path);
            match known {
                Some(field) => field.options.push(choice()),
                None => all.push(Field {
                    path,
                    kind: attribute("data-kind").unwrap_or_default(),
                    tag: if tag.starts_with("<select") || radio {
                        "select"
                    } else {
                        "input"
                    },
                    // Radio buttons and ticks stand inside a label of their own.
                    label: attribute("aria-label").is_some_and(|words| !words.is_empty())
                        || radio
                        || listed,
                    value: attribute("value").unwrap_or_default(),
                    placeholder: attribute("placeholder").unwrap_or_default(),
                    checked: has("checked"),
                    options: if radio || listed {
                        vec![choice()]
                    } else {
                        Vec::new()
                    },
                }),
            }
        } else if tag.starts_with("<option")
            && let Some(field) = all.last_mut()
        {
            field.options.push(choice());
        }
        rest = &rest[end..];
    }
    all
}

impl Field {
    /// What a reader sees in it.
    pub fn shown(&self) -> String {
        let chosen = self.options.iter().filter(|option| option.selected);
        let chosen: Vec<&str> = chosen.map(|option| option.value.as_str()).collect();
        format!("{} {} {chosen:?}", self.value, self.checked)
    }

    pub fn is_named(&self) -> bool {
        self.label
    }

    pub fn has_one_choice(&self) -> bool {
        self.tag == "select" && self.options.iter().filter(|option| !option.barred).count() <= 1
    }

    pub fn offers(&self, value: &str) -> bool {
        self.options
            .iter()
            .any(|option| option.value == value && !option.barred)
    }

    /// The edits for one of its choices.
    pub fn edits_for(&self, value: &str) -> Value {
        let option = self
            .options
            .iter()
            .find(|option| option.value == value)
            .unwrap();
        match (&option.edits, value) {
            (Some(edits), _) => edits.clone(),
            (None, "") => json!([{ "edit": "remove", "path": self.path }]),
            (None, value) => json!([{ "edit": "set", "path": self.path, "value": value }]),
        }
    }

    /// Changes to try, each with what the file says afterwards.
    pub fn changes(&self) -> Vec<(Value, Option<String>)> {
        let set = |value: Value| json!([{ "edit": "set", "path": self.path, "value": value }]);
        if self.kind == "flag" {
            let turned = !self.checked;
            return vec![(set(json!(turned)), Some(turned.to_string()))];
        }
        if self.kind == "list" {
            let turned: Vec<&str> = self
                .options
                .iter()
                .filter(|option| !option.selected)
                .map(|option| option.value.as_str())
                .collect();
            let words: Vec<String> = turned.iter().map(|word| format!("\"{word}\"")).collect();
            return vec![(set(json!(turned)), Some(format!("[{}]", words.join(", "))))];
        }
        if self.tag == "select" {
            let others = self
                .options
                .iter()
                .filter(|option| !option.selected && !option.barred);
            return others
                .map(|option| {
                    let said = (!option.value.is_empty()).then(|| option.value.clone());
                    (self.edits_for(&option.value), said)
                })
                .collect();
        }
        let now = if self.value.is_empty() {
            &self.placeholder
        } else {
            &self.value
        };
        let changed = changed(now);
        let value = match changed.parse::<u32>() {
            Ok(number) if self.kind == "whole" => json!(number),
            _ => json!(changed),
        };
        vec![(set(value), Some(changed))]
    }
}

/// A quantity a little larger, a number one more, words with one more word.
fn changed(text: &str) -> String {
    let end = text
        .find(|c: char| !(c.is_ascii_digit() || c == '.' || c == '-'))
        .unwrap_or(text.len());
    let (number, unit) = text.split_at(end);
    match (number.parse::<f64>(), unit) {
        (Ok(number), "") => format!("{}", number + 1.0),
        (Ok(number), " cm" | " /cm") => format!("{:.1}{unit}", number + 0.2),
        (Ok(number), " mm" | " deg" | " %" | " °C" | " min") => format!("{}{unit}", number + 1.0),
        _ => format!("{text} anew"),
    }
}
