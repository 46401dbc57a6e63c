//! Reading the seams and their rows.

use std::ops::Range;

use indexmap::IndexMap;
use trade::Length;

use crate::SeamId;
use crate::band_and_hem::RowEnding;
use crate::known::{self, KnownSeam, Needed};
use crate::read_collection::{all, allowed};
use crate::reader::{Node, Table, Target, or_list, short};
use crate::seams::{Construction, Lap, Ply, RowSpec, SeamSpec};

/// A seam's `like`, as far as it could be read.
struct Like {
    seam: SeamId,
    to: String,
    span: Range<usize>,
}

pub(crate) fn seams(
    section: &Table<'_>,
    with_extra_pocket: bool,
) -> Option<IndexMap<SeamId, SeamSpec>> {
    let entries = section.entries();
    if section.is_there() {
        missing(section, &entries, with_extra_pocket);
    }
    let mut likes = Vec::new();
    let mut read = Vec::new();
    for (name, span, node) in &entries {
        let Some(known) = known::seam_name(name) else {
            let hint = match near(name) {
                Some(near) => format!("did you mean `{near}`?"),
                None => format!("the seams are {}", names()),
            };
            let message = format!("`{}` is not a seam known here", short(name));
            node.context
                .problem("seams", span.clone(), "style::unknown-seam", message, hint);
            read.push(None);
            continue;
        };
        let spec = node
            .table()
            .and_then(|table| seam(table, &known, &mut likes));
        read.push(spec.map(|spec| (known.id, spec)));
    }
    let stated: Vec<&str> = entries.iter().map(|(name, _, _)| name.as_str()).collect();
    let mut fine = true;
    for like in &likes {
        fine &= points_somewhere(section, like, &stated);
    }
    fine &= no_circles(section, &likes);
    let seams: IndexMap<SeamId, SeamSpec> = all(read.into_iter())?.into_iter().collect();
    (fine && fit(section, &seams)).then_some(seams)
}

fn names() -> String {
    let names: Vec<String> = SeamId::ALL
        .iter()
        .map(|seam| format!("`{}`", seam.code()))
        .collect();
    names.join(", ")
}

/// The seam that a name which is none was probably meant to be.
fn near(name: &str) -> Option<&'static str> {
    if SeamId::of(name).is_some() {
        return None;
    }
    known::nearest(name, SeamId::ALL.iter().map(|seam| seam.code()))
}

/// Reports the needed seams a style lacks, unless a misspelt one turns out to be meant for it.
fn missing(
    section: &Table<'_>,
    entries: &[(String, Range<usize>, Node<'_>)],
    with_extra_pocket: bool,
) {
    let meant: Vec<&str> = entries
        .iter()
        .filter_map(|(name, _, _)| near(name))
        .collect();
    for seam in known::seams() {
        let name = seam.id.code();
        let needed = match seam.needed {
            Needed::Always => true,
            Needed::WithExtraPocket => with_extra_pocket,
            Needed::Optional => false,
        };
        if needed && !meant.contains(&name) && !entries.iter().any(|(stated, _, _)| stated == name)
        {
            let message = format!("nothing says how the seam `{name}` is sewn");
            let hint = format!(
                "add a section [seams.{name}] ({})",
                seam.id.words(words::Words::english())
            );
            section.node.problem("style::missing-seam", message, hint);
        }
    }
}

fn seam(mut table: Table<'_>, known: &KnownSeam, likes: &mut Vec<Like>) -> Option<SeamSpec> {
    let construction = table
        .optional("construction")
        .map(|node| node.choice("style::unknown-construction", Construction::WORDS));
    let lap = table.optional("lap").map(|node| lap(&node, known));
    let like_node = table.optional("like");
    let like = like_node.as_ref().map(|node| node.text());
    let rows_node = table.optional("rows");
    let rows = rows_node.as_ref().map(rows);
    if like_node.is_none() {
        let path = table.node.path.clone();
        for (key, there) in [
            ("construction", construction.is_some()),
            ("rows", rows.is_some()),
        ] {
            if !there {
                let message = format!("[{path}] has no `{key}`");
                let hint = "state it, or take it from another seam with `like`";
                table.node.problem("style::missing-key", message, hint);
            }
        }
        if construction.is_none() || rows.is_none() {
            table.finish();
            return None;
        }
    }
    table.finish();
    if let (Some(Some(to)), Some(node)) = (&like, &like_node) {
        let span = node.span.clone();
        likes.push(Like {
            seam: known.id,
            to: to.clone(),
            span,
        });
    }
    Some(SeamSpec {
        construction: allowed(construction)?,
        lap: allowed(lap)?,
        like: allowed(like)?.as_deref().and_then(SeamId::of),
        rows: allowed(rows)?,
    })
}

fn lap(node: &Node<'_>, known: &KnownSeam) -> Option<Lap> {
    let text = node.text()?;
    let Some(usual) = known.usual_lap else {
        let message = format!("the seam `{}` has no lap", known.id.code());
        node.problem("style::unfit-lap", message, "take `lap` out");
        return None;
    };
    let ply = |word: &str| {
        let found = Ply::WORDS.iter().find(|(name, _)| *name == word.trim());
        found.map(|(_, ply)| *ply)
    };
    let read = text.split_once(" over ").and_then(|(over, under)| {
        Some(Lap {
            over: ply(over)?,
            under: ply(under)?,
        })
    });
    let fitting = read.filter(|lap| known.joins(*lap));
    if fitting.is_none() {
        let other = Lap {
            over: usual.under,
            under: usual.over,
        };
        let message = format!(
            "`lap` cannot be \"{}\" on the seam `{}`",
            short(&text),
            known.id.code()
        );
        node.problem(
            "style::unfit-lap",
            message,
            format!("write \"{usual}\" or \"{other}\""),
        );
    }
    fitting
}

fn rows(node: &Node<'_>) -> Option<Vec<RowSpec>> {
    const MOST: usize = 8;
    let members = node.list("[{ stitch = \"301\", density = \"8 /in\", yarn = \"...\" }]")?;
    if members.is_empty() || members.len() > MOST {
        let message = format!("`rows` has {} rows", members.len());
        node.problem(
            "style::row-count",
            message,
            format!("a seam has from 1 to {MOST} rows"),
        );
        return None;
    }
    all(members.iter().map(|member| row(member.table()?)))
}

fn row(mut table: Table<'_>) -> Option<RowSpec> {
    let stitch = table
        .required("stitch", "stitch = \"301\"")
        .and_then(|node| {
            node.parsed(
                "style::unknown-stitch",
                "a stitch type",
                "its number in quotes, such as \"301\"",
            )
        });
    let density = table
        .required("density", "density = \"8 /in\"")
        .and_then(|node| node.quantity());
    let yarn = table
        .required("yarn", "yarn = \"...\", a name from yarns.toml")
        .and_then(|node| node.reference(Target::Yarn));
    let under = table
        .optional("under")
        .map(|node| node.reference(Target::Yarn));
    let offset = table.optional("offset");
    let offset = offset.map_or(Some(Length::ZERO), |node| node.quantity());
    let mut ending = |key| {
        let node = table.optional(key);
        node.map(|node| node.choice("style::unknown-word", RowEnding::WORDS))
    };
    let (begin, end) = (ending("begin"), ending("end"));
    table.finish();
    let yarn = yarn?;
    Some(RowSpec {
        stitch: stitch?,
        density: density?,
        under: under.unwrap_or_else(|| Some(yarn.clone()))?,
        yarn,
        offset: offset?,
        begin: allowed(begin)?,
        end: allowed(end)?,
    })
}

fn points_somewhere(section: &Table<'_>, like: &Like, stated: &[&str]) -> bool {
    if stated.contains(&like.to.as_str()) {
        return true;
    }
    let message = format!(
        "`{}` is like `{}`, which this style does not have",
        like.seam.code(),
        short(&like.to)
    );
    let hint = match known::nearest(&like.to, stated.iter().copied()) {
        Some(near) => format!("did you mean \"{near}\"?"),
        None => "name one of this style's seams".to_owned(),
    };
    let path = format!("seams.{}.like", like.seam.code());
    section.node.context.problem(
        &path,
        like.span.clone(),
        "style::unknown-seam",
        message,
        hint,
    );
    false
}

/// Finds every circle of `like` once, at its first seam in the file.
fn no_circles(section: &Table<'_>, likes: &[Like]) -> bool {
    let mut seen: Vec<SeamId> = Vec::new();
    let mut fine = true;
    for start in likes {
        let mut way: Vec<&Like> = vec![start];
        while let Some(next) = way
            .last()
            .and_then(|last| likes.iter().find(|l| l.seam.code() == last.to))
        {
            if let Some(at) = way.iter().position(|l| l.seam == next.seam) {
                let circle = way.get(at..).unwrap_or_default();
                if at == 0 && !seen.contains(&start.seam) {
                    tell_circle(section, circle);
                    fine = false;
                }
                seen.extend(circle.iter().map(|l| l.seam));
                break;
            }
            way.push(next);
        }
    }
    fine
}

fn tell_circle(section: &Table<'_>, circle: &[&Like]) {
    let Some((first, rest)) = circle.split_first() else {
        return;
    };
    let steps: Vec<String> =
        std::iter::once(format!("{} is sewn like {}", first.seam.code(), first.to))
            .chain(
                rest.iter()
                    .map(|like| format!("{} like {}", like.seam.code(), like.to)),
            )
            .collect();
    let hint =
        "say on one of them how it is sewn (`construction` and `rows`) and take its `like` out";
    let context = section.node.context;
    context.problem(
        &format!("seams.{}.like", first.seam.code()),
        first.span.clone(),
        "style::like-circle",
        steps.join(", "),
        hint,
    );
}

/// Each seam's construction, its own or taken over, must be one it can have.
fn fit(section: &Table<'_>, seams: &IndexMap<SeamId, SeamSpec>) -> bool {
    let mut fine = true;
    for (id, spec) in seams {
        let (known, name) = (known::seam(*id), id.code());
        let mut source = spec;
        while source.construction.is_none() {
            let Some(next) = source.like.as_ref().and_then(|like| seams.get(like)) else {
                break;
            };
            source = next;
        }
        let Some(construction) = source.construction else {
            continue;
        };
        if known.constructions.contains(&construction) {
            continue;
        }
        fine = false;
        let own = if spec.construction.is_some() {
            "construction"
        } else {
            "like"
        };
        let path = format!("seams.{name}.{own}");
        let span = section.node.context.places.borrow().get(&path).cloned();
        let why = known.refuses(construction).unwrap_or_default();
        let message = format!("the seam `{name}` cannot be {construction}: {why}");
        let can: Vec<String> = known
            .constructions
            .iter()
            .map(ToString::to_string)
            .collect();
        let span = span.unwrap_or_else(|| section.node.span.clone());
        let hint = format!("it can be {}", or_list(&can));
        section
            .node
            .context
            .problem(&path, span, "style::unfit-construction", message, hint);
    }
    fine
}
