//! Reading an order's file: everything that can be judged without the styles it names.

use trade::{Length, Share};

use crate::order::{ClothOrder, END_LOSS, Order, OrderLine, OrderWay, Roll, SpreadLimits};
use crate::read_collection::{all, allowed, format, named, words};
use crate::reader::{Node, Reference, Table, Target, short};
use crate::{Size, known};

/// The most pairs of one size, and of one order together.
const MOST_PAIRS: u32 = 10_000;

/// The limits as one section states them.
#[derive(Default)]
struct Stated {
    most_plies: Option<u32>,
    height: Option<Length>,
    table: Option<Length>,
    most_pairs: Option<u32>,
    fewest_lays: Option<u32>,
    most_lays: Option<u32>,
    end_loss: Option<Length>,
    gap: Option<Length>,
    way: Option<OrderWay>,
    zones: Option<u32>,
    match_within: Option<Length>,
    most_lap: Option<Length>,
    faults: Option<Share>,
    splices: Option<Share>,
}

pub(crate) fn order(mut root: Table<'_>) -> Option<Order> {
    format(&mut root);
    let mut table = root.section("order");
    let name = table
        .required("name", "name = \"...\"")
        .and_then(|node| node.text());
    table.finish();
    let lines = root
        .required("lines", "a section that begins with the line [[lines]]")
        .and_then(|node| lines(&node));
    let general = limits(root.section("limits"));
    let own = root.optional_section("cloths");
    own_cloths_exist(&own);
    let cloths = named(&own, |table| cloth(table, general.as_ref()));
    root.finish();
    Some(Order {
        name: name?,
        lines: lines?,
        limits: general?,
        cloths: cloths?,
    })
}

fn own_cloths_exist(section: &Table<'_>) {
    for (name, span, node) in section.entries() {
        let reference = Reference {
            to: Target::Cloth,
            name,
            path: node.path.clone(),
            span,
        };
        node.context.references.borrow_mut().push(reference);
    }
}

fn lines(node: &Node<'_>) -> Option<Vec<OrderLine>> {
    let members = node.list("[[lines]] with style and pairs below it")?;
    if members.is_empty() {
        let hint = "add [[lines]] with a style and its pairs";
        node.problem("style::empty-list", "nothing is ordered", hint);
        return None;
    }
    let lines = all(members.iter().map(|member| line(member.table()?)))?;
    let pairs = lines.iter().flat_map(|line| &line.pairs);
    let all = pairs.fold(0u32, |sum, (_, pairs)| sum.saturating_add(*pairs));
    if all > MOST_PAIRS {
        let message = format!("the order is for {all} pairs");
        let hint = format!("plan at most {MOST_PAIRS} pairs at once; split the order");
        node.problem("style::out-of-range", message, hint);
        return None;
    }
    Some(lines)
}

fn line(mut table: Table<'_>) -> Option<OrderLine> {
    let style = table
        .required("style", "style = \"...\", the name of the style's folder")
        .and_then(|node| node.text());
    let cloth = table
        .optional("cloth")
        .map(|node| node.reference(Target::Cloth));
    let pairs = table
        .required("pairs", "pairs = { 32x32 = 12 }")
        .and_then(|node| pairs(&node));
    table.finish();
    Some(OrderLine {
        style: style?,
        cloth: allowed(cloth)?,
        pairs: pairs?,
    })
}

fn pairs(node: &Node<'_>) -> Option<Vec<(Size, u32)>> {
    let table = node.table()?;
    let entries = table.entries();
    if entries.is_empty() {
        let message = format!("`{}` names no size", node.key());
        node.problem(
            "style::empty-list",
            message,
            "write a size and how many pairs, such as { 32x32 = 12 }",
        );
        return None;
    }
    let mut read: Vec<Option<(Size, u32)>> = Vec::new();
    for (name, span, node) in entries {
        if let Some(size) = unquoted(&name, &node) {
            let message = format!("`{size}` is not in quotes, and a dot parts a name in two");
            let hint = format!("write it in quotes: \"{size}\" = 4");
            node.context
                .problem(&node.path, span, "style::unreadable-size", message, hint);
            read.push(None);
            continue;
        }
        let size = match name.parse::<Size>() {
            Ok(size) => Some(size),
            Err(why) => {
                let message = format!("`{}` is not a size", short(&name));
                let hint = why.instead();
                node.context.problem(
                    &node.path,
                    span.clone(),
                    "style::unreadable-size",
                    message,
                    hint,
                );
                None
            }
        };
        let count = node.count(1);
        // "32x32" and "32X32" are two keys and one size.
        let twice = size.is_some_and(|size| read.iter().flatten().any(|(known, _)| *known == size));
        if twice {
            let message = format!("`{}` is there twice", short(&name));
            node.context.problem(
                &node.path,
                span,
                "style::duplicate-size",
                message,
                "take one out",
            );
        }
        read.push(size.zip(count).filter(|_| !twice));
    }
    all(read.into_iter())
}

/// The size that was meant by a name the dots of halves have cut: `31.5x32` is read as `5x32` in a section `31`.
fn unquoted(name: &str, node: &Node<'_>) -> Option<Size> {
    let parts = node.parts();
    let mut sizes = parts
        .iter()
        .map(|part| format!("{name}.{part}").parse().ok());
    sizes.find_map(|size| size)
}

fn cloth(mut table: Table<'_>, general: Option<&SpreadLimits>) -> Option<ClothOrder> {
    let rolls = table.optional("rolls").map(|node| rolls(&node));
    let path = table.node.clone();
    let stated = stated(&mut table);
    table.finish();
    let limits = over(&stated?, general?);
    fits(&path, &limits)?;
    Some(ClothOrder {
        limits,
        rolls: allowed(rolls)?.unwrap_or_default(),
    })
}

fn rolls(node: &Node<'_>) -> Option<Vec<Roll>> {
    let members = node.list("[{ name = \"R-1\", length = \"50 m\", shade = \"A\" }]")?;
    let mut rolls: Vec<Option<Roll>> = Vec::new();
    for member in &members {
        let roll = member.table().and_then(roll);
        let twice = roll
            .as_ref()
            .filter(|roll| rolls.iter().flatten().any(|known| known.name == roll.name));
        if let Some(twice) = twice {
            let message = format!("there are two rolls named \"{}\"", short(&twice.name));
            member.problem("style::duplicate-name", message, "give each its own name");
        }
        rolls.push(roll);
    }
    all(rolls.into_iter())
}

fn roll(mut table: Table<'_>) -> Option<Roll> {
    let name = table
        .required("name", "name = \"...\", what is written on the roll")
        .and_then(|node| node.text());
    let length = table
        .required("length", "length = \"50 m\"")
        .and_then(|node| node.quantity());
    let shade = words(&mut table, "shade");
    table.finish();
    Some(Roll {
        name: name?,
        length: length?,
        shade: shade?,
    })
}

fn limits(mut table: Table<'_>) -> Option<SpreadLimits> {
    let node = table.node.clone();
    let there = table.is_there();
    let read = stated(&mut table);
    table.finish();
    let stated = read?;
    if !there {
        return None;
    }
    let mut fine = true;
    let mut wants = |missing: bool, what: &str, hint: &str| {
        if missing {
            node.problem(
                "style::missing-key",
                format!("[{}] has no {what}", node.path),
                hint,
            );
            fine = false;
        }
    };
    wants(
        stated.most_plies.is_none() && stated.height.is_none(),
        "`height` and no `most_plies`",
        "add height = \"4 cm\", as high as the knife cuts, or most_plies = 30",
    );
    wants(
        stated.table.is_none(),
        "`table`",
        "add table = \"8 m\", the longest ply",
    );
    wants(
        stated.most_pairs.is_none(),
        "`most_pairs`",
        "add most_pairs = 4, the most pairs in one lay",
    );
    let limits = SpreadLimits {
        most_plies: stated.most_plies,
        height: stated.height,
        table: stated.table.unwrap_or_default(),
        most_pairs: stated.most_pairs.unwrap_or(1),
        fewest_lays: stated.fewest_lays.unwrap_or(1),
        most_lays: stated.most_lays.unwrap_or(4),
        end_loss: stated.end_loss.unwrap_or(END_LOSS),
        gap: stated.gap.unwrap_or_default(),
        way: stated.way.unwrap_or(OrderWay::TwoWay),
        zones: stated.zones.unwrap_or(1),
        match_within: stated.match_within,
        most_lap: stated.most_lap.unwrap_or_default(),
        faults: stated.faults.unwrap_or_default(),
        splices: stated.splices.unwrap_or_default(),
    };
    if !fine {
        return None;
    }
    fits(&node, &limits)?;
    Some(limits)
}

/// What a cloth states goes before what holds for all.
fn over(own: &Stated, general: &SpreadLimits) -> SpreadLimits {
    // A cloth that states its plies one way is not held by the other.
    let own_plies = own.most_plies.is_some() || own.height.is_some();
    SpreadLimits {
        most_plies: if own_plies {
            own.most_plies
        } else {
            general.most_plies
        },
        height: if own_plies {
            own.height
        } else {
            general.height
        },
        table: own.table.unwrap_or(general.table),
        most_pairs: own.most_pairs.unwrap_or(general.most_pairs),
        fewest_lays: own.fewest_lays.unwrap_or(general.fewest_lays),
        most_lays: own.most_lays.unwrap_or(general.most_lays),
        end_loss: own.end_loss.unwrap_or(general.end_loss),
        gap: own.gap.unwrap_or(general.gap),
        way: own.way.unwrap_or(general.way),
        zones: own.zones.unwrap_or(general.zones),
        match_within: own.match_within.or(general.match_within),
        most_lap: own.most_lap.unwrap_or(general.most_lap),
        faults: own.faults.unwrap_or(general.faults),
        splices: own.splices.unwrap_or(general.splices),
    }
}

/// Limits that contradict each other.
fn fits(node: &Node<'_>, limits: &SpreadLimits) -> Option<()> {
    let mut fine = true;
    if limits.fewest_lays > limits.most_lays {
        let message = format!(
            "[{}] asks for {} lays at least and {} at most",
            node.path, limits.fewest_lays, limits.most_lays
        );
        let hint = "make `fewest_lays` no more than `most_lays`";
        node.problem("style::limits-fight", message, hint);
        fine = false;
    }
    if limits.end_loss * 2.0 >= limits.table {
        let message = format!(
            "[{}] loses {} at each end of a ply, and the table is {} long",
            node.path, limits.end_loss, limits.table
        );
        let hint = "check `end_loss` and `table`: nothing is left to lay on";
        node.problem("style::limits-fight", message, hint);
        fine = false;
    }
    fine.then_some(())
}

fn stated(table: &mut Table<'_>) -> Option<Stated> {
    let most_plies = table.optional("most_plies").map(|n| n.count(1));
    let height = table.optional("height").map(|n| n.quantity());
    let longest = table.optional("table").map(|n| n.quantity());
    let most_pairs = table.optional("most_pairs").map(|n| n.count(1));
    let fewest_lays = table.optional("fewest_lays").map(|n| n.count(1));
    let most_lays = table.optional("most_lays").map(|n| n.count(1));
    let end_loss = table.optional("end_loss").map(|n| n.quantity());
    let gap = table.optional("gap").map(|n| n.quantity());
    let way = table
        .optional("way")
        .map(|n| n.choice("style::unknown-word", OrderWay::WORDS));
    let zones = table.optional("zones").map(|n| n.count(1));
    let match_within = table.optional("match_within").map(|n| n.quantity());
    let most_lap = table.optional("most_lap").map(|n| n.quantity());
    let faults = table.optional("faults").map(|n| n.quantity());
    let splices = table.optional("splices").map(|n| n.quantity());
    Some(Stated {
        most_plies: allowed(most_plies)?,
        height: allowed(height)?,
        table: allowed(longest)?,
        most_pairs: allowed(most_pairs)?,
        fewest_lays: allowed(fewest_lays)?,
        most_lays: allowed(most_lays)?,
        end_loss: allowed(end_loss)?,
        gap: allowed(gap)?,
        way: allowed(way)?,
        zones: allowed(zones)?,
        match_within: allowed(match_within)?,
        most_lap: allowed(most_lap)?,
        faults: allowed(faults)?,
        splices: allowed(splices)?,
    })
}

/// "did you mean ...?" or the names there are.
pub(crate) fn offered(written: &str, names: &[String]) -> String {
    match known::nearest(written, names.iter().map(String::as_str)) {
        Some(near) => format!("did you mean \"{near}\"?"),
        None if names.is_empty() => "there is none yet".to_owned(),
        None => format!("there are {}", names.join(", ")),
    }
}
