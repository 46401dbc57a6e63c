//! What a pair is made of and how much is sewn in it, for whoever wears it.

use sewing::Garment;
use sewing::yarn::{Consumption, consumption};
use style::{Cloth, Loaded, Tag, TrimKind, WashFinish};
use trade::{Length, Unwashed};
use words::{Key, Words, key, say};

use crate::Fact;
use crate::assemble::{Quantities, capital, joined};

pub(super) fn facts(loaded: &Loaded, garment: &Garment, words: &Words) -> Vec<Fact> {
    let style = &loaded.style;
    let collection = &loaded.collection;
    let quantities = Quantities::of(collection);
    let cloth = |key: &str| {
        let cloth = collection.cloths.get(key);
        cloth.map_or_else(String::new, |cloth| told_cloth(cloth, quantities, words))
    };
    let place = collection.workrooms.get(&style.style.workroom);
    let place = place.map_or_else(String::new, |workroom| workroom.place.clone());
    let taken = consumption(garment);
    let all = [
        (key::STORY_CLOTH, cloth(&style.cloth.shell)),
        (key::STORY_POCKETS, cloth(&style.cloth.pocketing)),
        (key::STORY_YARN, yarns(loaded, &taken)),
        (key::STORY_SEWN, sewn(&taken, quantities, words)),
        (key::STORY_METAL, metal(loaded)),
        (key::STORY_PATCH, patch(loaded)),
        (key::STORY_WASH, wash(loaded, words)),
        (key::STORY_SIZES, sizes(loaded, words)),
        (key::STORY_PLACE, place),
    ];
    let line = |(label, value): (Key, String)| Fact {
        label: words.named(label).to_owned(),
        value: capital(&value),
        asks: Vec::new(),
    };
    let told = all.into_iter().filter(|(_, value)| !value.is_empty());
    told.map(line).collect()
}

fn told_cloth(cloth: &Cloth, quantities: Quantities, words: &Words) -> String {
    let weight = quantities.weight(cloth.weight);
    let weight = words.say(say::StoryWeight { weight });
    joined(
        [
            cloth.name.as_str(),
            cloth.construction.as_str(),
            cloth.fibre.as_str(),
            weight.as_str(),
            cloth.dye.as_str(),
        ],
        ", ",
    )
}

/// The yarns that are seen outside or in, in the order in which they are met, each once.
fn yarns(loaded: &Loaded, taken: &Consumption) -> String {
    let mut met: Vec<&str> = Vec::new();
    for key in taken.items.iter().map(|item| item.needle_yarn.as_str()) {
        if !met.contains(&key) {
            met.push(key);
        }
    }
    let named = met.iter().filter_map(|key| {
        let yarn = loaded.collection.yarns.get(*key)?;
        let size = yarn.size.to_string();
        Some(joined(
            [yarn.name.as_str(), yarn.fibre.as_str(), size.as_str()],
            ", ",
        ))
    });
    let named: Vec<String> = named.collect();
    named.join("; ")
}

fn sewn(taken: &Consumption, quantities: Quantities, words: &Words) -> String {
    let seams = taken.items.iter().map(|item| item.sewn_length());
    let seams: Unwashed<Length> = seams.fold(Unwashed::default(), |all, one| all + one);
    let yarn: Length = taken.items.iter().map(|item| item.used.total()).sum();
    words.say(say::StorySewnHow {
        seams: quantities.sewn(seams.figure()),
        size: taken.size.to_string(),
        yarn: quantities.much_yarn(yarn),
    })
}

fn metal(loaded: &Loaded) -> String {
    const METAL: [TrimKind; 4] = [
        TrimKind::ShankButton,
        TrimKind::SewnButton,
        TrimKind::Rivet,
        TrimKind::Zip,
    ];
    let used = loaded.style.trim_names();
    let trims = used
        .iter()
        .filter_map(|key| loaded.collection.trims.get(*key));
    let of = trims.filter(|trim| METAL.contains(&trim.kind));
    let named: Vec<String> = of
        .map(|trim| joined([trim.name.as_str(), trim.material.as_str()], ", "))
        .collect();
    named.join("; ")
}

fn patch(loaded: &Loaded) -> String {
    let patch = loaded.style.patch.as_ref();
    let trim = patch.and_then(|patch| loaded.collection.trims.get(&patch.trim));
    trim.map_or_else(String::new, |trim| trim.material.clone())
}

fn wash(loaded: &Loaded, words: &Words) -> String {
    let told = loaded.style.wash.as_ref().map(|wash| match wash.finish {
        WashFinish::Raw => key::STORY_WASH_RAW,
        WashFinish::Rinsed => key::STORY_WASH_RINSED,
        WashFinish::Washed => key::STORY_WASH_WASHED,
    });
    told.map_or_else(String::new, |told| words.named(told).to_owned())
}

fn sizes(loaded: &Loaded, words: &Words) -> String {
    let run = |tags: &[Tag]| {
        let tags: Vec<String> = tags.iter().map(Tag::to_string).collect();
        tags.join(", ")
    };
    words.say(say::StorySizesRun {
        lengths: run(&loaded.style.sizes.lengths),
        waists: run(&loaded.style.sizes.waists),
    })
}
