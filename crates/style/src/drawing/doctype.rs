//! The line a drawing program writes before the drawing: which kind of document it is.

use std::borrow::Cow;

use super::drawn_line::Problem;

/// The text with its document type blanked out, every place as it was. It is never followed: what it names is not
/// fetched, and one that declares something of its own is refused.
pub(super) fn blanked(text: &str) -> Result<Cow<'_, str>, Problem> {
    let Some(start) = place(text) else {
        return Ok(Cow::Borrowed(text));
    };
    let Some(end) = end(text, start) else {
        let hint = "close it with >, or take it out";
        return Err((
            start..start,
            "style::unreadable-art",
            "the document type has no end".to_owned(),
            hint,
        ));
    };
    let (before, rest) = text.split_at(start);
    let (kind, after) = rest.split_at(end - start);
    if kind.contains('[') {
        return Err((
            start..end,
            "style::unreadable-art",
            "the document type declares something of its own".to_owned(),
            "take out what stands between [ and ], or save the drawing as a plain SVG file",
        ));
    }
    let blank: String = kind
        .bytes()
        .map(|byte| if byte == b'\n' { '\n' } else { ' ' })
        .collect();
    Ok(Cow::Owned(format!("{before}{blank}{after}")))
}

/// Where the document type begins: before the first element, past comments and instructions.
fn place(text: &str) -> Option<usize> {
    let mut at = 0;
    loop {
        let rest = text.get(at..)?;
        let next = at + rest.find('<')?;
        let rest = text.get(next..)?;
        let skipped = if rest.starts_with("<!--") {
            rest.find("-->")? + 3
        } else if rest.starts_with("<?") {
            rest.find("?>")? + 2
        } else {
            return rest.starts_with("<!DOCTYPE").then_some(next);
        };
        at = next + skipped;
    }
}

/// Where it ends: after the first > outside quotes; what it declares of its own counts as part of it.
fn end(text: &str, start: usize) -> Option<usize> {
    let (mut quote, mut inside) = (None, false);
    for (k, c) in text.get(start..)?.char_indices() {
        match (quote, c) {
            (Some(open), c) if c == open => quote = None,
            (Some(_), _) => {}
            (None, '"' | '\'') => quote = Some(c),
            (None, '[') => inside = true,
            (None, ']') => inside = false,
            (None, '>') if !inside => return Some(start + k + 1),
            (None, _) => {}
        }
    }
    None
}
