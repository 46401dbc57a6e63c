//! What a catalogue's file has: its messages, and what each is given. The build reads the same way.

use fluent_syntax::ast::{
    CallArguments, Entry, Expression, InlineExpression, Pattern, PatternElement, VariantKey,
};
use fluent_syntax::parser;

/// What is put into a message.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Kind {
    /// Anything that can be shown.
    Text,
    /// How many; the words differ by it.
    Count,
}

/// One message.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Message {
    pub(crate) key: String,
    /// By name, in the order of the names: however a sentence is worded anew, what it is given stays in its place.
    pub(crate) given: Vec<(String, Kind)>,
}

/// The messages of a file, in its order.
///
/// # Errors
/// In words: where the file cannot be read, or what it has that a catalogue does not.
pub(crate) fn messages(text: &str) -> Result<Vec<Message>, String> {
    let resource = parser::parse(text).map_err(|(_, errors)| {
        let first = errors.first();
        let at = first.map_or(0, |error| error.pos.start);
        let line = text.get(..at).unwrap_or(text).lines().count().max(1);
        let what = first.map_or_else(String::new, |error| error.kind.to_string());
        format!("line {line}: {what}")
    })?;
    let mut found: Vec<Message> = Vec::new();
    for entry in resource.body {
        let message = match entry {
            Entry::Message(message) => message,
            Entry::Term(term) => {
                return Err(format!("`-{}`: a catalogue has no terms", term.id.name));
            }
            _ => continue,
        };
        let key = message.id.name.to_owned();
        let Some(pattern) = &message.value else {
            return Err(format!("`{key}` says nothing"));
        };
        if !message.attributes.is_empty() {
            return Err(format!(
                "`{key}` has attributes; give them keys of their own"
            ));
        }
        if found.iter().any(|other| other.key == key) {
            return Err(format!("`{key}` is there twice"));
        }
        let mut given = Vec::new();
        of_pattern(pattern, &mut given);
        given.sort_by(|(a, _), (b, _)| a.cmp(b));
        found.push(Message { key, given });
    }
    Ok(found)
}

fn of_pattern(pattern: &Pattern<&str>, given: &mut Vec<(String, Kind)>) {
    for element in &pattern.elements {
        if let PatternElement::Placeable { expression } = element {
            of_expression(expression, given);
        }
    }
}

fn of_expression(expression: &Expression<&str>, given: &mut Vec<(String, Kind)>) {
    match expression {
        Expression::Inline(inline) => of_inline(inline, Kind::Text, given),
        Expression::Select { selector, variants } => {
            let by_number = variants
                .iter()
                .any(|variant| matches!(variant.key, VariantKey::NumberLiteral { .. }))
                || variants.iter().any(|variant| {
                    matches!(
                        variant.key,
                        VariantKey::Identifier {
                            name: "zero" | "one" | "two" | "few" | "many"
                        }
                    )
                });
            let kind = if by_number { Kind::Count } else { Kind::Text };
            of_inline(selector, kind, given);
            for variant in variants {
                of_pattern(&variant.value, given);
            }
        }
    }
}

fn of_inline(inline: &InlineExpression<&str>, kind: Kind, given: &mut Vec<(String, Kind)>) {
    match inline {
        InlineExpression::VariableReference { id } => {
            match given.iter_mut().find(|(name, _)| name == id.name) {
                Some((_, known)) if kind == Kind::Count => *known = kind,
                Some(_) => {}
                None => given.push((id.name.to_owned(), kind)),
            }
        }
        InlineExpression::FunctionReference { arguments, .. } => of_arguments(arguments, given),
        InlineExpression::Placeable { expression } => of_expression(expression, given),
        _ => {}
    }
}

fn of_arguments(arguments: &CallArguments<&str>, given: &mut Vec<(String, Kind)>) {
    for positional in &arguments.positional {
        of_inline(positional, Kind::Count, given);
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;

    fn given(text: &str) -> Vec<(String, Kind)> {
        let mut messages = messages(text).expect("it can be read");
        messages.remove(0).given
    }

    #[test]
    fn a_message_tells_what_it_is_given() {
        assert_eq!(given("a = Nothing is put in\n"), []);
        assert_eq!(
            given("a = Of { $what } and { $more }, { $what } again\n"),
            [
                ("more".to_owned(), Kind::Text),
                ("what".to_owned(), Kind::Text)
            ]
        );
        let counted = "a = { $n } { $n ->\n [one] pair\n *[other] pairs of { $size }\n }\n";
        assert_eq!(
            given(counted),
            [
                ("n".to_owned(), Kind::Count),
                ("size".to_owned(), Kind::Text)
            ]
        );
        let chosen = "a = { $face ->\n [front] Front\n *[back] Back\n }\n";
        assert_eq!(given(chosen), [("face".to_owned(), Kind::Text)]);
    }

    #[test]
    fn what_a_catalogue_has_not_is_refused_with_its_place() {
        let refused = |text| messages(text).unwrap_err();
        assert!(refused("a = One\nb = { $x\n").starts_with("line 2"));
        assert!(refused("a = One\na = Two\n").contains("twice"));
        assert!(refused("-a = One\n").contains("terms"));
        assert!(refused("a = One\n    .b = Two\n").contains("keys of their own"));
    }
}
