//! The sizes that something holds in, in words.

use style::{Size, Sizes};

/// Sizes in words: "every size", or waist by waist, those in every length together.
pub fn in_words(sizes: &[Size], run: &Sizes) -> String {
    if run.all().all(|size| sizes.contains(&size)) {
        return "every size".to_owned();
    }
    let (mut whole, mut single) = (Vec::new(), Vec::new());
    for &waist in &run.waists {
        let lengths = run.lengths.iter().map(|&length| Size::of(waist, length));
        let found: Vec<Size> = lengths.filter(|size| sizes.contains(size)).collect();
        if found.len() == run.lengths.len() && found.len() > 1 {
            whole.push(waist.to_string());
        } else {
            single.extend(found.iter().map(Size::to_string));
        }
    }
    let mut parts = Vec::new();
    if !whole.is_empty() {
        parts.push(format!("waist {} in every length", whole.join(", ")));
    }
    if !single.is_empty() {
        parts.push(single.join(", "));
    }
    parts.join("; ")
}

#[cfg(test)]
mod tests {
    use style::Tag;

    use super::*;

    #[test]
    fn sizes_are_gathered_by_waist() {
        let run = Sizes {
            waists: [28, 30, 32].map(Tag::inches).into(),
            lengths: [30, 32].map(Tag::inches).into(),
            base: Size::new(30, 32),
        };
        let sizes = |tags: &[(u32, u32)]| -> Vec<Size> {
            tags.iter().map(|&(w, l)| Size::new(w, l)).collect()
        };
        let all: Vec<Size> = run.all().collect();
        assert_eq!(in_words(&all, &run), "every size");
        let some = sizes(&[(28, 30), (28, 32), (32, 32)]);
        assert_eq!(in_words(&some, &run), "waist 28 in every length; 32x32");
        assert_eq!(in_words(&sizes(&[(30, 30)]), &run), "30x30");
    }
}
