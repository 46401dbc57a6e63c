//! `fellwork new`: a style to begin with.

use style::NewStyle;

use crate::args::New;
use crate::exit::Exit;
use crate::printed;
use crate::trouble::Trouble;

pub fn run(asked: &New) -> Result<Exit, Trouble> {
    let answers = NewStyle {
        name: asked.name.clone(),
        code: asked.code.clone().unwrap_or_else(|| code_from(&asked.name)),
        label: None,
    };
    let path = style::new_style(&asked.folder, &answers)?;
    let folder = path.parent().unwrap_or(&asked.folder);
    printed::to_stdout(format!(
        "{} begins at {}\nnext: fellwork check {}\n",
        asked.name,
        path.display(),
        folder.display()
    ))?;
    Ok(Exit::Done)
}

/// "Harbour Wide" → "HW-1".
fn code_from(name: &str) -> String {
    let initials: String = name
        .split(|c: char| !c.is_alphanumeric())
        .filter_map(|word| word.chars().next())
        .flat_map(char::to_uppercase)
        .take(4)
        .collect();
    format!("{initials}-1")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_code_is_made_of_first_letters() {
        assert_eq!(code_from("Harbour Wide"), "HW-1");
        assert_eq!(code_from("lighter"), "L-1");
    }
}
