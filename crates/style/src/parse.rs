//! From text to a checked document: syntax, keys and values, then the names that lead into other files.

use std::collections::BTreeMap;
use std::ops::Range;

use crate::reader::{Context, Reference, Table, Target, or_list, short};
use crate::report::{Diagnostic, MOST_PROBLEMS, Report, Source};
use crate::{Collection, StyleDoc, TrimKind, known, read_style};

/// Where each value of a style file stands, by path.
pub(crate) type Places = BTreeMap<String, Range<usize>>;

/// What reading one file gave: the value unless something was wrong, and everything that was.
pub(crate) struct Reading<T> {
    pub(crate) value: Option<T>,
    pub(crate) report: Report,
    pub(crate) places: Places,
    pub(crate) references: Vec<Reference>,
    #[cfg(test)]
    pub(crate) asked: crate::reader::Asked,
}

/// Reads one file's text with the reading function for its kind.
pub(crate) fn read<T>(source: &Source, kind: impl FnOnce(Table<'_>) -> Option<T>) -> Reading<T> {
    let context = Context::new(source);
    let value = match toml_edit::Document::parse(&*source.text) {
        Ok(document) => kind(Table::root(&context, document.as_table())),
        Err(error) => {
            context.push(syntax(source, &error));
            None
        }
    };
    let report = context.report.into_inner();
    Reading {
        value: value.filter(|_| report.is_empty()),
        report,
        places: context.places.into_inner(),
        references: context.references.into_inner(),
        #[cfg(test)]
        asked: context.asked.into_inner(),
    }
}

fn syntax(source: &Source, error: &toml_edit::TomlError) -> Diagnostic {
    let end = source.text.len();
    let span = error.span().unwrap_or(end..end);
    let lines: Vec<&str> = error
        .message()
        .lines()
        .map(str::trim)
        .filter(|l| !l.is_empty())
        .collect();
    let message = short_message(&lines.join("; "));
    let hint = if message.contains("duplicate key") {
        "a section can say a thing only once: take one of the two out"
    } else if span.start >= source.text.trim_end().len() {
        "the file ends too early: it may have been cut off while it was copied"
    } else {
        "a line is `key = value`, a section begins with [name], texts and quantities stand in \"quotes\""
    };
    Diagnostic::at(
        source,
        span,
        "style::syntax",
        format!("this is not TOML: {message}"),
    )
    .hint(hint)
}

fn short_message(message: &str) -> String {
    let plain: String = message
        .chars()
        .filter(|c| !c.is_control())
        .take(200)
        .collect();
    if plain.is_empty() {
        "it cannot be read here".to_owned()
    } else {
        plain
    }
}

/// Reads a style file's text alone: everything but the names that lead into other files is checked.
pub(crate) fn style_alone(source: &Source) -> Reading<StyleDoc> {
    read(source, read_style::style)
}

/// Reads a style file's text against its collection.
///
/// `file` is the name shown in messages.
///
/// # Errors
/// Every problem found, in the order of the file.
pub fn parse(text: &str, file: &str, collection: &Collection) -> Result<StyleDoc, Report> {
    let source = Source::new(file, text);
    let mut reading = style_alone(&source);
    check_references(
        &source,
        &reading.references,
        collection,
        &mut reading.report,
    );
    reading.report.sort();
    match reading.value {
        Some(style) if reading.report.is_empty() => Ok(style),
        _ => Err(reading.report),
    }
}

/// Reports every name that the collection does not declare, or declares as another kind of trim.
pub(crate) fn check_references(
    source: &Source,
    references: &[Reference],
    collection: &Collection,
    report: &mut Report,
) {
    for reference in references {
        // Beyond what is listed, finding out what each was meant to be is not worth the time.
        if report.problems.len() >= MOST_PROBLEMS {
            return;
        }
        if let Some(problem) = dangling(source, reference, collection) {
            report.push(problem);
        }
    }
}

fn dangling(source: &Source, reference: &Reference, collection: &Collection) -> Option<Diagnostic> {
    let name = reference.name.as_str();
    let (code, noun, file, declared): (_, _, _, Vec<&str>) = match reference.to {
        Target::Workroom => {
            let declared = collection.workrooms.keys().map(String::as_str).collect();
            (
                "style::unknown-workroom",
                "workroom",
                "collection.toml",
                declared,
            )
        }
        Target::Cloth => {
            let declared = collection.cloths.keys().map(String::as_str).collect();
            ("style::unknown-cloth", "cloth", "cloths.toml", declared)
        }
        Target::Yarn => {
            let declared = collection.yarns.keys().map(String::as_str).collect();
            ("style::unknown-yarn", "yarn", "yarns.toml", declared)
        }
        Target::Trim(kinds) => {
            let declared = collection
                .trims
                .iter()
                .filter(|(_, trim)| kinds.contains(&trim.kind));
            let declared = declared.map(|(name, _)| name.as_str()).collect();
            if let Some(trim) = collection
                .trims
                .get(name)
                .filter(|t| !kinds.contains(&t.kind))
            {
                return Some(wrong_kind(source, reference, trim.kind, kinds, declared));
            }
            ("style::unknown-trim", "trim", "trims.toml", declared)
        }
    };
    if declared.contains(&name)
        || (matches!(reference.to, Target::Trim(_)) && collection.trims.contains_key(name))
    {
        return None;
    }
    let message = format!("{file} has no {noun} named \"{}\"", short(name));
    let hint = match known::nearest(name, declared.iter().copied()) {
        Some(near) => format!("did you mean \"{near}\"?"),
        None => offer(&declared, &format!("add it to {file}")),
    };
    let problem = Diagnostic::at(source, reference.span.clone(), code, message);
    Some(problem.about(&reference.path).hint(hint))
}

fn wrong_kind(
    source: &Source,
    reference: &Reference,
    is: TrimKind,
    kinds: &[TrimKind],
    declared: Vec<&str>,
) -> Diagnostic {
    let wanted: Vec<String> = kinds.iter().map(ToString::to_string).collect();
    let wanted = or_list(&wanted);
    let message = format!(
        "\"{}\" is a {is}; a {wanted} is wanted here",
        reference.name
    );
    let hint = offer(&declared, &format!("add a {wanted} to trims.toml"));
    Diagnostic::at(source, reference.span.clone(), "style::wrong-trim", message)
        .about(&reference.path)
        .hint(hint)
}

/// "it has a, b or c", or what else to do when there is nothing to offer.
fn offer(declared: &[&str], otherwise: &str) -> String {
    const MOST: usize = 12;
    let quoted: Vec<String> = declared
        .iter()
        .take(MOST)
        .map(|name| format!("\"{name}\""))
        .collect();
    match (quoted.is_empty(), declared.len() > MOST) {
        (true, _) => otherwise.to_owned(),
        (false, false) => format!("write {}", or_list(&quoted)),
        (false, true) => format!("write {} or another name declared there", quoted.join(", ")),
    }
}
