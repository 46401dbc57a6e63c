//! Reading `collection.toml` and its siblings `cloths.toml`, `yarns.toml` and `trims.toml`.

use indexmap::IndexMap;

use crate::collection::{Cloth, ClothUse, Supply, Tanning, Trim, TrimKind, Units, Workroom, Yarn};
use crate::cutting::{Along, Diagonals, WashMark};
use crate::reader::{Node, Table};

/// The format this program reads; every file states it on its first lines.
const FORMAT: u32 = 1;

/// What `collection.toml` says.
pub(crate) struct Label {
    pub(crate) name: String,
    pub(crate) contact: String,
    pub(crate) currency: String,
    pub(crate) units: Units,
    pub(crate) languages: Vec<String>,
    pub(crate) workrooms: IndexMap<String, Workroom>,
}

/// Reads the `format` line every file begins with.
pub(crate) fn format(root: &mut Table<'_>) {
    let Some(node) = root.required("format", "format = 1 as the first line") else {
        return;
    };
    if node
        .whole(0, u32::MAX)
        .is_some_and(|format| format != FORMAT)
    {
        let hint = format!("this program reads format {FORMAT}; a newer one may be needed");
        node.problem(
            "style::unknown-format",
            "the file is in another format",
            hint,
        );
    }
}

pub(crate) fn collection(mut root: Table<'_>) -> Option<Label> {
    format(&mut root);
    let mut table = root.section("collection");
    let name = table
        .required("name", "name = \"...\"")
        .and_then(|node| node.text());
    let contact = words(&mut table, "contact");
    let currency = table.optional("currency").map(|node| currency(&node));
    let units = table
        .optional("units")
        .map(|node| node.choice("style::unknown-word", Units::WORDS));
    let languages = table.optional("languages").map(|node| languages(&node));
    table.finish();
    let workrooms = named(&root.optional_section("workrooms"), workroom);
    root.finish();
    Some(Label {
        name: name?,
        contact: contact?,
        currency: currency.unwrap_or_else(|| Some("EUR".to_owned()))?,
        units: units.unwrap_or(Some(Units::Centimetres))?,
        languages: languages.unwrap_or_else(|| Some(vec!["en".to_owned()]))?,
        workrooms: workrooms?,
    })
}

fn currency(node: &Node<'_>) -> Option<String> {
    let text = node.text()?;
    if text.len() == 3 && text.bytes().all(|b| b.is_ascii_uppercase()) {
        return Some(text);
    }
    node.problem(
        "style::unfit-text",
        "`currency` is not a currency code",
        "write its three capital letters, such as \"EUR\"",
    );
    None
}

fn language(node: &Node<'_>) -> Option<String> {
    let text = node.text()?;
    if text.len() == 2 && text.bytes().all(|b| b.is_ascii_lowercase()) {
        return Some(text);
    }
    let message = format!("`{}` is not a language code", node.key());
    node.problem(
        "style::unfit-text",
        message,
        "write its two small letters, such as \"pt\"",
    );
    None
}

fn languages(node: &Node<'_>) -> Option<Vec<String>> {
    let members = node.list("[\"en\"]")?;
    if members.is_empty() {
        node.problem(
            "style::empty-list",
            "`languages` is empty",
            "name at least one, such as [\"en\"]",
        );
        return None;
    }
    all(members.iter().map(language))
}

fn workroom(mut table: Table<'_>) -> Option<Workroom> {
    let name = table
        .required("name", "name = \"...\"")
        .and_then(|node| node.text());
    let place = words(&mut table, "place");
    let contact = words(&mut table, "contact");
    let language = table.optional("language").map(|node| language(&node));
    table.finish();
    Some(Workroom {
        name: name?,
        place: place?,
        contact: contact?,
        language: language.unwrap_or_else(|| Some("en".to_owned()))?,
    })
}

pub(crate) fn cloths(mut root: Table<'_>) -> Option<IndexMap<String, Cloth>> {
    format(&mut root);
    let cloths = named(&root.section("cloths"), cloth);
    root.finish();
    cloths
}

fn cloth(mut table: Table<'_>) -> Option<Cloth> {
    let name = table
        .required("name", "name = \"...\"")
        .and_then(|node| node.text());
    let r#use = table
        .required("use", "use = \"shell\", \"pocketing\" or \"lining\"")
        .and_then(|node| node.choice("style::unknown-word", ClothUse::WORDS));
    let supply = supply(&mut table);
    let construction = words(&mut table, "construction");
    let fibre = words(&mut table, "fibre");
    let weight = table
        .required("weight", "weight = \"14 oz/yd2\"")
        .and_then(|node| node.quantity());
    let thickness = table
        .required("thickness", "thickness = \"0.82 mm\"")
        .and_then(|node| node.quantity());
    let width = table
        .required("width", "width = \"148 cm\"")
        .and_then(|node| node.quantity());
    let selvedge = table
        .optional("selvedge")
        .map_or(Some(false), |node| node.flag());
    let mut share = |key| table.optional(key).map(|node| node.quantity());
    let warp_shrinkage = share("warp_shrinkage");
    let weft_shrinkage = share("weft_shrinkage");
    let skew = share("skew");
    let wash_test = table.optional("wash_test").map(|node| wash_test(&node));
    let skew_test = table
        .optional("skew_test")
        .map(|node| diagonals(node.table()?));
    let colour = table
        .required("colour", "colour = \"#27324a\"")
        .and_then(|node| node.colour());
    let colour_name = words(&mut table, "colour_name");
    let dye = words(&mut table, "dye");
    let reverse = table.optional("reverse_colour").map(|node| node.colour());
    table.finish();
    let colour = colour?;
    Some(Cloth {
        name: name?,
        supply: supply?,
        r#use: r#use?,
        construction: construction?,
        fibre: fibre?,
        weight: weight?,
        thickness: thickness?,
        width: width?,
        selvedge: selvedge?,
        warp_shrinkage: allowed(warp_shrinkage)?,
        weft_shrinkage: allowed(weft_shrinkage)?,
        skew: allowed(skew)?,
        wash_test: wash_test.unwrap_or_else(|| Some(Vec::new()))?,
        skew_test: allowed(skew_test)?,
        colour,
        colour_name: colour_name?,
        dye: dye?,
        reverse_colour: reverse.unwrap_or(Some(colour))?,
    })
}

/// Marks along both threads; one direction alone says nothing of the other.
fn wash_test(node: &Node<'_>) -> Option<Vec<WashMark>> {
    let example = "[{ along = \"warp\", before = \"50 cm\", after = \"48.5 cm\" }]";
    let members = node.list(example)?;
    let marks = all(members.iter().map(|member| wash_mark(member.table()?)))?;
    for (word, along) in Along::WORDS {
        if !marks.iter().any(|mark| mark.along == *along) {
            let message = format!("`{}` has no distance along the {word}", node.key());
            let hint = format!(
                "mark, wash and measure at least one, better three: {{ along = \"{word}\", before = \"50 cm\", after = \"48.5 cm\" }}"
            );
            node.problem("style::missing-distance", message, hint);
            return None;
        }
    }
    Some(marks)
}

fn wash_mark(mut table: Table<'_>) -> Option<WashMark> {
    let along = table
        .required("along", "along = \"warp\" or \"weft\"")
        .and_then(|node| node.choice("style::unknown-word", Along::WORDS));
    let mut distance = |key, example| {
        table
            .required(key, example)
            .and_then(|node| node.quantity())
    };
    let before = distance("before", "before = \"50 cm\"");
    let after = distance("after", "after = \"48.5 cm\"");
    table.finish();
    Some(WashMark {
        along: along?,
        before: before?,
        after: after?,
    })
}

fn diagonals(mut table: Table<'_>) -> Option<Diagonals> {
    let mut distance = |key, example| {
        table
            .required(key, example)
            .and_then(|node| node.quantity())
    };
    let rising = distance("rising", "rising = \"35.8 cm\"");
    let falling = distance("falling", "falling = \"34.8 cm\"");
    table.finish();
    Some(Diagonals {
        rising: rising?,
        falling: falling?,
    })
}

pub(crate) fn yarns(mut root: Table<'_>) -> Option<IndexMap<String, Yarn>> {
    format(&mut root);
    let yarns = named(&root.section("yarns"), yarn);
    root.finish();
    yarns
}

fn yarn(mut table: Table<'_>) -> Option<Yarn> {
    let name = table
        .required("name", "name = \"...\"")
        .and_then(|node| node.text());
    let supply = supply(&mut table);
    let size = table
        .required("size", "size = \"tex 105\"")
        .and_then(|node| node.quantity());
    let colour = table
        .required("colour", "colour = \"#c0813a\"")
        .and_then(|node| node.colour());
    let colour_name = words(&mut table, "colour_name");
    let shade = words(&mut table, "shade");
    let fibre = words(&mut table, "fibre");
    let put_up = table.optional("put_up").map(|node| node.quantity());
    table.finish();
    Some(Yarn {
        name: name?,
        supply: supply?,
        size: size?,
        colour: colour?,
        colour_name: colour_name?,
        shade: shade?,
        fibre: fibre?,
        put_up: allowed(put_up)?,
    })
}

pub(crate) fn trims(mut root: Table<'_>) -> Option<IndexMap<String, Trim>> {
    format(&mut root);
    let trims = named(&root.section("trims"), trim);
    root.finish();
    trims
}

fn trim(mut table: Table<'_>) -> Option<Trim> {
    let name = table
        .required("name", "name = \"...\"")
        .and_then(|node| node.text());
    let kind = table
        .required(
            "kind",
            "kind = \"shank button\", \"rivet\", \"patch\" or another kind of trim",
        )
        .and_then(|node| node.choice("style::unknown-word", TrimKind::WORDS));
    let supply = supply(&mut table);
    let material = words(&mut table, "material");
    let colour = table
        .required("colour", "colour = \"#8a7444\"")
        .and_then(|node| node.colour());
    let round = matches!(
        kind,
        Some(TrimKind::ShankButton | TrimKind::SewnButton | TrimKind::Rivet)
    );
    let flat = matches!(kind, Some(TrimKind::Patch | TrimKind::Label));
    let mut size = |key, wanted: bool, example| {
        let node = if wanted {
            table.required(key, example)
        } else {
            table.optional(key)
        };
        match node {
            Some(node) => node.quantity().map(Some),
            None if wanted => None,
            None => Some(None),
        }
    };
    let diameter = size("diameter", round, "diameter = \"17.1 mm\"");
    let width = size("width", flat, "width = \"60 mm\"");
    let height = size("height", flat, "height = \"30 mm\"");
    let length = size("length", kind == Some(TrimKind::Zip), "length = \"15 cm\"");
    let thickness = table.optional("thickness").map(|node| node.quantity());
    let tanning = table
        .optional("tanning")
        .map(|node| node.choice("style::unknown-word", Tanning::WORDS));
    let text = words(&mut table, "text");
    table.finish();
    Some(Trim {
        name: name?,
        supply: supply?,
        kind: kind?,
        material: material?,
        colour: colour?,
        diameter: diameter?,
        width: width?,
        height: height?,
        length: length?,
        thickness: allowed(thickness)?,
        tanning: allowed(tanning)?,
        text: text?,
    })
}

/// Who sells a material; either half may be left out.
fn supply(table: &mut Table<'_>) -> Option<Supply> {
    let supplier = words(table, "supplier");
    let article = words(table, "article");
    Some(Supply {
        supplier: supplier?,
        article: article?,
    })
}

/// A text that may be left out, and is then empty.
pub(crate) fn words(table: &mut Table<'_>, key: &'static str) -> Option<String> {
    table
        .optional(key)
        .map_or_else(|| Some(String::new()), |node| node.text())
}

/// Turns "perhaps left out, perhaps unreadable" round: `None` only when it was there and unreadable.
#[allow(clippy::option_option)]
pub(crate) fn allowed<T>(value: Option<Option<T>>) -> Option<Option<T>> {
    match value {
        None => Some(None),
        Some(value) => value.map(Some),
    }
}

/// All of them, or `None` when one could not be read; every one is read either way.
pub(crate) fn all<T>(values: impl Iterator<Item = Option<T>>) -> Option<Vec<T>> {
    let values: Vec<Option<T>> = values.collect();
    values.into_iter().collect()
}

/// Reads every `[section.NAME]` of a section.
pub(crate) fn named<'a, T>(
    section: &Table<'a>,
    read: impl Fn(Table<'a>) -> Option<T>,
) -> Option<IndexMap<String, T>> {
    let one = |(name, span, node): (String, std::ops::Range<usize>, Node<'a>)| {
        let fit = name.len() <= 64
            && !name.is_empty()
            && name
                .bytes()
                .all(|b| b.is_ascii_alphanumeric() || b == b'-' || b == b'_');
        if !fit {
            let message = format!("`{}` cannot be a name", crate::reader::short(&name));
            let hint = "use letters a to z, digits, - and _; the full name goes into `name`";
            node.context
                .problem(&node.path, span, "style::unfit-name", message, hint);
        }
        let value = node.table().and_then(&read);
        fit.then_some(())?;
        Some((name, value?))
    };
    all(section.entries().into_iter().map(one)).map(|entries| entries.into_iter().collect())
}
