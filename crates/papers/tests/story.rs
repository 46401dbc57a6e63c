//! The story sheet: what a customer is told, and what nobody is.
#![allow(clippy::unwrap_used)]

use jpeg_encoder::{ColorType, Encoder};
use papers::{MOST_DETAILS, Story, StoryPicture, story, story_book, story_page};
use style::{Loaded, Subject};
use words::Words;

fn demo() -> Loaded {
    let demo = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../style/demo/saltmarsh/styles/ferryman"
    );
    style::load(demo.as_ref()).unwrap()
}

fn picture(said: &str) -> StoryPicture {
    let mut bytes = Vec::new();
    Encoder::new(&mut bytes, 80)
        .encode(&[90; 4 * 3 * 3], 4, 3, ColorType::Rgb)
        .unwrap();
    StoryPicture::from_jpeg(&bytes, 4, 3, said).unwrap()
}

fn told(loaded: &Loaded) -> Story {
    let garment = sewing::make(&loaded.style, &loaded.collection, loaded.style.sizes.base);
    let pair = vec![picture("the front"), picture("the back")];
    let mut close = |_: &Subject, said: &str| Some(picture(said));
    story(loaded, &garment, pair, &mut close, Words::english())
}

#[test]
fn the_maker_is_quoted_word_by_word_and_in_order() {
    let loaded = demo();
    let story = told(&loaded);
    let said: Vec<&str> = story
        .details
        .iter()
        .map(|detail| detail.says.as_str())
        .collect();
    let written: Vec<&str> = loaded
        .style
        .why
        .iter()
        .map(|why| why.says.as_str())
        .collect();
    assert_eq!(said, written);
    let page = story_page(&story);
    let mut from = 0;
    for words in written {
        from += page[from..]
            .find(words)
            .unwrap_or_else(|| panic!("{words}"));
    }
}

#[test]
fn nothing_private_is_told() {
    let loaded = demo();
    let story = told(&loaded);
    let page = story_page(&story);
    let printed = serde_json::to_string(&story).unwrap();
    let collection = &loaded.collection;
    let cloths = collection.cloths.values().map(|cloth| &cloth.supply);
    let yarns = collection.yarns.values().map(|yarn| &yarn.supply);
    let trims = collection.trims.values().map(|trim| &trim.supply);
    let mut private: Vec<&str> = vec![&collection.contact];
    for supply in cloths.chain(yarns).chain(trims) {
        private.extend([supply.supplier.as_str(), supply.article.as_str()]);
    }
    private.extend(
        collection
            .workrooms
            .values()
            .map(|workroom| workroom.name.as_str()),
    );
    private.retain(|words| !words.is_empty());
    assert!(private.len() > 3, "nothing to keep to oneself");
    for words in private {
        assert!(!page.contains(words) && !printed.contains(words), "{words}");
    }
}

/// What is no longer taken would be no longer true.
#[test]
fn what_the_pair_has_not_is_not_told() {
    let mut loaded = demo();
    loaded.style.patch = None;
    "another".clone_into(&mut loaded.style.cloth.shell);
    let told = told(&loaded);
    let about: Vec<&str> = told
        .details
        .iter()
        .map(|detail| detail.about.as_str())
        .collect();
    assert!(!about.contains(&"Patch"), "{about:?}");
    assert!(
        !about.iter().any(|about| about.contains("Tideline")),
        "{about:?}"
    );
    assert_eq!(about.len(), loaded.style.why.len() - 2);
}

#[test]
fn the_page_needs_nothing_beside_itself() {
    let page = story_page(&told(&demo()));
    for reaches_out in [
        "http:", "https:", "src=\"/", "url(", "@import", "<script", "<link",
    ] {
        assert!(!page.contains(reaches_out), "{reaches_out}");
    }
    let pictures = page.matches("<img ").count();
    assert_eq!(pictures, 2 + demo().style.why.len());
    assert_eq!(page.matches("alt=\"\"").count(), 0);
    assert!(page.contains("prefers-color-scheme: dark"));
    assert!(papers::is_our_story(page.as_bytes()));
}

#[test]
fn it_is_one_page_of_paper_however_much_is_told() {
    let mut loaded = demo();
    assert_eq!(story_book(&told(&loaded), None).unwrap().pages, 1);
    let long = "a long word or two ".repeat(21);
    while loaded.style.why.len() <= MOST_DETAILS {
        let one = loaded.style.why[1].clone();
        loaded.style.why.push(one);
    }
    loaded
        .style
        .why
        .iter_mut()
        .for_each(|why| why.says.clone_from(&long));
    let story = told(&loaded);
    assert_eq!(story.details.len(), MOST_DETAILS);
    assert_eq!(story_book(&story, None).unwrap().pages, 1);
}

#[test]
fn hostile_words_come_back_as_words() {
    let mut loaded = demo();
    "<script>alert(1)</script> & \"#read(\\\"/x\\\")".clone_into(&mut loaded.style.why[0].says);
    let page = story_page(&told(&loaded));
    assert!(!page.contains("<script"));
    assert!(page.contains("&lt;script&gt;"));
}
