//! What scripts say: each page brings along what its scripts ask for, and nothing else.

use std::borrow::Cow;

use serde_json::{Map, Value};
use words::Words;

use crate::asset;

/// Some words of scripts: by what they are asked for, which scripts ask for them, and what is said. What a script puts
/// in stands in braces, such as `{problems}`.
type Word = (
    &'static str,
    &'static [&'static str],
    fn(&'static Words) -> Cow<'static, str>,
);

const WORDS: &[Word] = &[
    ("no-answer", &["bring.js", "work.js"], |say| {
        say.script_no_answer().into()
    }),
    ("no-answer-unchanged", &["history.js"], |say| {
        say.script_no_answer_unchanged().into()
    }),
    ("no-answer-unmade", &["forms.js"], |say| {
        say.script_no_answer_unmade().into()
    }),
    ("not-in-the-file", &["fields.js"], |say| {
        say.script_not_in_the_file().into()
    }),
    ("not-answered", &["fields.js"], |say| {
        say.script_not_answered().into()
    }),
    ("choose-again", &["fields.js"], |say| {
        say.script_choose_again().into()
    }),
    ("not-taken", &["fields.js"], |say| {
        say.script_not_taken("{typed}").into()
    }),
    ("take-up-again", &["fields.js"], |say| {
        say.script_take_up_again().into()
    }),
    ("field-gone", &["fields.js"], |say| {
        say.script_field_gone("{typed}").into()
    }),
    ("art-not-sent", &["art.js"], |say| {
        say.script_art_not_sent().into()
    }),
    ("gone", &["gone.js"], |say| say.script_gone().into()),
    ("other-key", &["gone.js"], |say| {
        say.script_other_key().into()
    }),
    ("answers-again", &["swap.js"], |say| {
        say.script_answers_again().into()
    }),
    ("not-changed", &["fields.js"], |say| {
        say.script_not_changed("{problems}").into()
    }),
    ("version-not-changed", &["history.js"], |say| {
        say.script_version_not_changed("{problems}").into()
    }),
    ("cannot-be-moved", &["grips.js"], |say| {
        say.script_cannot_be_moved().into()
    }),
    ("left-as-it-was", &["grips.js"], |say| {
        say.script_left_as_it_was().into()
    }),
    ("why-muted", &["marks.js"], |say| {
        say.script_why_muted().into()
    }),
    ("why-so", &["marks.js"], |say| say.script_why_so().into()),
    ("key-control", &["keys.js"], |say| {
        say.script_key_control().into()
    }),
    ("key-shift", &["keys.js"], |say| {
        say.script_key_shift().into()
    }),
];

/// Everything that these scripts and those they load ask for.
pub(super) fn of(say: &'static Words, scripts: &[&'static str]) -> Value {
    let loaded = asset::with_imports(scripts);
    let asked = |by: &[&str]| by.iter().any(|script| loaded.contains(script));
    let words = WORDS.iter().filter(|(_, by, _)| asked(by));
    let said = words.map(|(key, _, words)| ((*key).to_owned(), words(say).into()));
    said.collect::<Map<_, _>>().into()
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;

    /// What a script asks for: each key, and what follows it.
    fn asked(text: &str) -> Vec<(&str, &str)> {
        let calls = text.split("say('").skip(1);
        calls.map(|call| call.split_once('\'').unwrap()).collect()
    }

    #[test]
    fn scripts_are_given_what_they_ask_for_and_nothing_else() {
        let mut all = 0;
        for (script, text) in asset::scripts() {
            let given = WORDS.iter().filter(|(_, by, _)| by.contains(&script));
            let mut given: Vec<&str> = given.map(|(key, ..)| *key).collect();
            let mut keys: Vec<&str> = asked(text).into_iter().map(|(key, _)| key).collect();
            given.sort_unstable();
            keys.sort_unstable();
            keys.dedup();
            assert_eq!(given, keys, "{script}");
            all += keys.len();
            // A key that is made up while the script runs would not be found here.
            if script != "words.js" {
                let calls = text.matches("say(").count();
                assert_eq!(calls, asked(text).len(), "{script}");
            }
        }
        let listed: usize = WORDS.iter().map(|(_, by, _)| by.len()).sum();
        assert_eq!(listed, all, "a script that is not there is given words");
        for (at, (key, by, _)) in WORDS.iter().enumerate() {
            assert!(!by.is_empty(), "nobody asks for {key}");
            assert!(WORDS[..at].iter().all(|(other, ..)| other != key), "{key}");
        }
    }

    #[test]
    fn scripts_put_in_what_their_words_leave_open() {
        for (script, text) in asset::scripts() {
            for (key, rest) in asked(text) {
                let (_, _, words) = WORDS.iter().find(|(known, ..)| *known == key).unwrap();
                let words = words(Words::english());
                match words.split_once('{') {
                    None => assert!(rest.starts_with(')'), "{script}: {key}"),
                    Some((_, open)) => {
                        let (name, after) = open.split_once('}').unwrap();
                        assert!(
                            rest.starts_with(&format!(", {{ {name}: ")),
                            "{script}: {key}"
                        );
                        assert!(!after.contains('{'), "{key} leaves two things open");
                    }
                }
            }
        }
    }

    #[test]
    fn a_page_brings_the_words_of_the_scripts_that_its_scripts_load() {
        let given = |scripts| {
            let words = of(Words::english(), scripts);
            let keys = words.as_object().unwrap().keys().cloned();
            keys.collect::<Vec<String>>()
        };
        assert_eq!(given(&["keys.js"]), ["key-control", "key-shift"]);
        assert!(given(&["begin.js"]).contains(&"no-answer-unmade".to_owned()));
        let style = given(&["bench.js"]);
        assert!(style.contains(&"gone".to_owned()), "{style:?}");
        assert!(!style.contains(&"version-not-changed".to_owned()));
    }
}
