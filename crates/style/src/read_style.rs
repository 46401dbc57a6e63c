//! Reading a style file: identity, sizes, cloths, shape and details. Chart and seams have files of their own.

use crate::band_and_hem::{Band, BandMethod, Hem, HemEnds, HemJoin};
use crate::cutting::{BandCutting, Cutting, SkewCutting};
use crate::details::{
    ArtPath, BackPocket, BackPockets, Bartacks, Closing, CoinPocket, CoinShape, Decoration,
    ExtraPocket, Fly, FlyTopstitch, Label, LabelFold, Letters, Lining, Loops, OutseamLine, Patch,
    PatchThrough, PocketBag, Pockets, Purpose, Rivets, Shape, Side,
};
use crate::document::{ClothRefs, Figure, Fit, Identity};
use crate::muted::Muted;
use crate::read_collection::{all, allowed, format, words};
use crate::reader::{Node, Table, Target};
use crate::{Size, Sizes, StyleDoc, Tag, TrimKind, own, read_chart, read_seams, read_wash, why};
use trade::Length;

const BUTTONS: &[TrimKind] = &[TrimKind::ShankButton, TrimKind::SewnButton];

pub(crate) fn style(mut root: Table<'_>) -> Option<StyleDoc> {
    format(&mut root);
    let style = identity(root.section("style"));
    let sizes = sizes(root.section("sizes"));
    let cloth = cloth(root.section("cloth"));
    let chart = read_chart::chart(&root.section("chart"), sizes.as_ref());
    let shape = shape(root.optional_section("shape"));
    let fly = fly(root.section("fly"));
    let band = band(root.optional_section("band"));
    let (pockets, extra) = pockets(root.section("pockets"));
    let hem = hem(root.optional_section("hem"));
    let loops = loops(root.optional_section("loops"));
    let rivets = root.optional("rivets").map(|node| rivets(node.table()?));
    let patch = root.optional("patch").map(|node| patch(node.table()?));
    let labels = labels(root.optional("labels"));
    let seams = read_seams::seams(&root.section("seams"), extra);
    let bartacks = bartacks(root.section("bartacks"));
    let pattern = root
        .optional("pattern")
        .map(|node| own::pattern(node.table()?));
    let cutting = cutting(root.optional_section("cutting"));
    let wash = root
        .optional("wash")
        .map(|node| read_wash::wash(node.table()?));
    let why = why::whys(root.optional("why"));
    let muted = muted(root.optional("muted"));
    root.finish();
    Some(StyleDoc {
        style: style?,
        sizes: sizes?,
        cloth: cloth?,
        chart: chart?,
        shape: shape?,
        fly: fly?,
        band: band?,
        pockets: pockets?,
        hem: hem?,
        loops: loops?,
        rivets: allowed(rivets)?,
        patch: allowed(patch)?,
        labels: labels?,
        seams: seams?,
        bartacks: bartacks?,
        pattern: allowed(pattern)?,
        cutting: cutting?,
        wash: allowed(wash)?,
        why: why?,
        muted: muted?,
    })
}

fn identity(mut table: Table<'_>) -> Option<Identity> {
    let name = table
        .required("name", "name = \"...\"")
        .and_then(|node| node.text());
    let code = table
        .required("code", "code = \"...\"")
        .and_then(|node| node.text());
    let figure = table
        .required("figure", "figure = \"men\" or \"women\"")
        .and_then(|node| node.choice("style::unknown-word", Figure::WORDS));
    let fit = table
        .required(
            "fit",
            "fit = \"slim\", \"straight\", \"tapered\" or \"relaxed\"",
        )
        .and_then(|node| node.choice("style::unknown-word", Fit::WORDS));
    let summary = words(&mut table, "summary");
    let workroom = match table.optional("workroom") {
        Some(node) => node.reference(Target::Workroom),
        None => Some(String::new()),
    };
    table.finish();
    Some(Identity {
        name: name?,
        code: code?,
        figure: figure?,
        fit: fit?,
        summary: summary?,
        workroom: workroom?,
    })
}

fn sizes(mut table: Table<'_>) -> Option<Sizes> {
    let waists = table
        .required("waists", "waists = [30, 31, 32]")
        .and_then(|node| run(&node));
    let lengths = table
        .required("lengths", "lengths = [32, 34]")
        .and_then(|node| run(&node));
    let base = table.required("base", "base = \"32x32\"");
    table.finish();
    let (waists, lengths, node) = (waists?, lengths?, base?);
    let base: Size = node.parsed(
        "style::unreadable-size",
        "a size",
        "it as \"32x32\" or \"31.5x32\"",
    )?;
    for (list, key, tag) in [
        (&waists, "waists", base.waist),
        (&lengths, "lengths", base.length),
    ] {
        if !list.contains(&tag) {
            let message =
                format!("the base size {base} is not in the run: {tag} is not one of `{key}`");
            let near = list.iter().min_by_key(|&&other| other.abs_diff(tag))?;
            let hint = format!("add {tag} to `{key}`, or take {near} in `base`");
            node.problem("style::base-not-in-run", message, hint);
            return None;
        }
    }
    Some(Sizes {
        waists,
        lengths,
        base,
    })
}

/// A run of tags: at least one, rising, none twice.
fn run(node: &Node<'_>) -> Option<Vec<Tag>> {
    let members = node.list("[30, 31, 32]")?;
    if members.is_empty() {
        let message = format!("`{}` is empty", node.key());
        node.problem(
            "style::empty-list",
            message,
            "write at least one, such as [32]",
        );
        return None;
    }
    let tags = all(members.iter().map(|member| member.tag()))?;
    let mut fine = true;
    for (index, (tag, member)) in tags.iter().zip(&members).enumerate() {
        let before = tags.get(..index).unwrap_or_default();
        if before.contains(tag) {
            let message = format!("{tag} stands twice in `{}`", node.key());
            member.problem("style::duplicate-size", message, "take one out");
            fine = false;
        } else if before.last().is_some_and(|last| last > tag) {
            let message = format!("{tag} is out of order in `{}`", node.key());
            member.problem(
                "style::size-order",
                message,
                "write them from small to large",
            );
            fine = false;
        }
    }
    fine.then_some(tags)
}

fn cloth(mut table: Table<'_>) -> Option<ClothRefs> {
    let shell = table
        .required("shell", "shell = \"...\", a name from cloths.toml")
        .and_then(|node| node.reference(Target::Cloth));
    let pocketing = table
        .required("pocketing", "pocketing = \"...\", a name from cloths.toml")
        .and_then(|node| node.reference(Target::Cloth));
    let lining = table
        .optional("lining")
        .map(|node| node.reference(Target::Cloth));
    table.finish();
    Some(ClothRefs {
        shell: shell?,
        pocketing: pocketing?,
        lining: allowed(lining)?,
    })
}

/// A length that may be left out.
fn length(table: &mut Table<'_>, key: &'static str, default: Length) -> Option<Length> {
    table
        .optional(key)
        .map_or(Some(default), |node| node.quantity())
}

fn shape(mut table: Table<'_>) -> Option<Shape> {
    let usual = Shape::default();
    let mut difference = |key, default| length(&mut table, key, default);
    let seat_split = difference("seat_split", usual.seat_split);
    let thigh_split = difference("thigh_split", usual.thigh_split);
    let knee_split = difference("knee_split", usual.knee_split);
    let hem_split = difference("hem_split", usual.hem_split);
    let waist_split = difference("waist_split", usual.waist_split);
    let front_tilt = difference("front_tilt", usual.front_tilt);
    let seat_angle = table
        .optional("seat_angle")
        .map_or(Some(usual.seat_angle), |node| node.quantity());
    let mut distance = |key, default| length(&mut table, key, default);
    let seat_dart = distance("seat_dart", usual.seat_dart);
    let inseam_stretch = distance("inseam_stretch", usual.inseam_stretch);
    let band_ease = distance("band_ease", usual.band_ease);
    let outseam = table
        .optional("outseam")
        .map_or(Some(usual.outseam), |node| {
            node.choice("style::unknown-word", OutseamLine::WORDS)
        });
    table.finish();
    Some(Shape {
        seat_split: seat_split?,
        thigh_split: thigh_split?,
        knee_split: knee_split?,
        hem_split: hem_split?,
        waist_split: waist_split?,
        front_tilt: front_tilt?,
        seat_angle: seat_angle?,
        seat_dart: seat_dart?,
        inseam_stretch: inseam_stretch?,
        band_ease: band_ease?,
        outseam: outseam?,
    })
}

fn fly(mut table: Table<'_>) -> Option<Fly> {
    let closing = table
        .required("closing", "closing = \"buttons\" or \"zip\"")
        .and_then(|node| node.choice("style::unknown-word", Closing::WORDS));
    let by_zip = closing == Some(Closing::Zip);
    let buttons = table
        .optional("buttons")
        .map(|node| node.count(u32::from(!by_zip)));
    let button = if closing == Some(Closing::Buttons) {
        table.required("button", "button = \"...\", a button from trims.toml")
    } else {
        table.optional("button")
    };
    let button = button.map(|node| node.reference(Target::Trim(BUTTONS)));
    let zip = if by_zip {
        table.required("zip", "zip = \"...\", a zip from trims.toml")
    } else {
        table.optional("zip")
    };
    let zip = zip.map(|node| node.reference(Target::Trim(&[TrimKind::Zip])));
    let band_button = table
        .required(
            "band_button",
            "band_button = \"...\", a button from trims.toml",
        )
        .and_then(|node| node.reference(Target::Trim(BUTTONS)));
    let usual = FlyTopstitch::default();
    let topstitch = choice(&mut table, "topstitch", FlyTopstitch::WORDS, usual);
    table.finish();
    let buttons = buttons.unwrap_or(Some(4));
    Some(match closing? {
        Closing::Buttons => Fly {
            closing: Closing::Buttons,
            buttons: buttons?,
            button: Some(button??),
            zip: None,
            band_button: band_button?,
            topstitch: topstitch?,
        },
        Closing::Zip => Fly {
            closing: Closing::Zip,
            buttons: 0,
            button: None,
            zip: Some(zip??),
            band_button: band_button?,
            topstitch: topstitch?,
        },
    })
}

fn band(mut table: Table<'_>) -> Option<Band> {
    let usual = Band::default();
    let method = choice(&mut table, "method", BandMethod::WORDS, usual.method);
    let start_below = length(&mut table, "start_below", usual.start_below);
    let v_angle = table
        .optional("v_angle")
        .map_or(Some(usual.v_angle), |node| node.quantity());
    table.finish();
    Some(Band {
        method: method?,
        start_below: start_below?,
        v_angle: v_angle?,
    })
}

fn hem(mut table: Table<'_>) -> Option<Hem> {
    let usual = Hem::default();
    let join = choice(&mut table, "join", HemJoin::WORDS, usual.join);
    let ends = choice(&mut table, "ends", HemEnds::WORDS, usual.ends);
    let roping = flag(&mut table, "roping", usual.roping);
    table.finish();
    Some(Hem {
        join: join?,
        ends: ends?,
        roping: roping?,
    })
}

fn cutting(mut table: Table<'_>) -> Option<Cutting> {
    let usual = Cutting::default();
    let band = table
        .optional("band")
        .map(|node| node.choice("style::unknown-word", BandCutting::WORDS));
    let mut residual = |key, default| {
        table
            .optional(key)
            .map_or(Some(default), |node| node.quantity())
    };
    let residual_warp = residual("residual_warp", usual.residual_warp);
    let residual_weft = residual("residual_weft", usual.residual_weft);
    let skew = choice(&mut table, "skew", SkewCutting::WORDS, usual.skew);
    table.finish();
    Some(Cutting {
        band: allowed(band)?,
        residual_warp: residual_warp?,
        residual_weft: residual_weft?,
        skew: skew?,
    })
}

/// A word that may be left out.
fn choice<T: Copy>(
    table: &mut Table<'_>,
    key: &'static str,
    words: &[(&str, T)],
    default: T,
) -> Option<T> {
    let node = table.optional(key);
    node.map_or(Some(default), |node| {
        node.choice("style::unknown-word", words)
    })
}

/// A list of words that may be left out.
pub(crate) fn word_list<T: Copy>(
    table: &mut Table<'_>,
    key: &'static str,
    example: &'static str,
    words: &[(&str, T)],
) -> Option<Vec<T>> {
    table.optional(key).map_or(Some(Vec::new()), |node| {
        let members = node.list(example)?;
        let word = |member: &Node<'_>| member.choice("style::unknown-word", words);
        all(members.iter().map(word))
    })
}

/// A yes or no that may be left out.
/// A flag that follows from something else where the file does not say.
#[allow(clippy::option_option)]
fn said(table: &mut Table<'_>, key: &'static str) -> Option<Option<bool>> {
    table
        .optional(key)
        .map_or(Some(None), |node| node.flag().map(Some))
}

fn flag(table: &mut Table<'_>, key: &'static str, default: bool) -> Option<bool> {
    table
        .optional(key)
        .map_or(Some(default), |node| node.flag())
}

/// The pockets, and whether there is an extra one: its seams are then needed.
fn pockets(mut table: Table<'_>) -> (Option<Pockets>, bool) {
    let coin = coin(table.optional_section("coin"));
    let bag = bag(table.optional_section("bag"));
    let mut back = table.optional_section("back");
    let left = back_pocket(back.optional_section("left"));
    let right = back_pocket(back.optional_section("right"));
    back.finish();
    let extra = table.optional("extra").map(|node| extra(node.table()?));
    table.finish();
    let with_extra = extra.is_some();
    let pockets = || {
        let back = BackPockets {
            left: left?,
            right: right?,
        };
        Some(Pockets {
            coin: coin?,
            bag: bag?,
            back,
            extra: allowed(extra)?,
        })
    };
    (pockets(), with_extra)
}

fn side(table: &mut Table<'_>, default: Side) -> Option<Side> {
    let node = table.optional("side");
    node.map_or(Some(default), |node| {
        node.choice("style::unknown-word", Side::WORDS)
    })
}

fn coin(mut table: Table<'_>) -> Option<CoinPocket> {
    let usual = CoinPocket::default();
    let side = side(&mut table, usual.side);
    let below_band = length(&mut table, "below_band", usual.below_band);
    let from_side = length(&mut table, "from_side", usual.from_side);
    let narrowing = length(&mut table, "lower_narrowing", usual.lower_narrowing);
    let shape = choice(&mut table, "shape", CoinShape::WORDS, usual.shape);
    let drop = length(&mut table, "drop", usual.drop);
    let art = art(&mut table);
    if shape == Some(CoinShape::Free) && art == Some(None) {
        let message = format!("[{}] is \"free\" and has no `art`", table.node.path);
        let hint = "name a drawing of its outline, such as art = \"art/coin.svg\", or choose another shape";
        table.node.problem("style::missing-key", message, hint);
        table.finish();
        return None;
    }
    table.finish();
    Some(CoinPocket {
        side: side?,
        below_band: below_band?,
        from_side: from_side?,
        lower_narrowing: narrowing?,
        shape: shape?,
        drop: drop?,
        art: art?,
        drawing: None,
    })
}

fn bag(mut table: Table<'_>) -> Option<PocketBag> {
    let usual = PocketBag::default();
    let depth = length(&mut table, "depth", usual.depth);
    let width = length(&mut table, "width", usual.width);
    let facing = length(&mut table, "facing", usual.facing);
    let mouth_fullness = table
        .optional("mouth_fullness")
        .map_or(Some(usual.mouth_fullness), |node| node.quantity());
    table.finish();
    Some(PocketBag {
        depth: depth?,
        width: width?,
        facing: facing?,
        mouth_fullness: mouth_fullness?,
    })
}

fn back_pocket(mut table: Table<'_>) -> Option<BackPocket> {
    let usual = BackPocket::default();
    let foot_width = length(&mut table, "foot_width", usual.foot_width);
    let side_length = length(&mut table, "side_length", usual.side_length);
    let outer_drop = length(&mut table, "outer_drop", usual.outer_drop);
    let lining = choice(&mut table, "lining", Lining::WORDS, usual.lining);
    let lining_cloth = table
        .optional("lining_cloth")
        .map(|node| node.reference(Target::Cloth));
    let decoration = choice(
        &mut table,
        "decoration",
        Decoration::WORDS,
        usual.decoration,
    );
    let waves = table
        .optional("waves")
        .map_or(Some(usual.waves), |node| node.count(1));
    let crest = length(&mut table, "crest", usual.crest);
    let rise = length(&mut table, "rise", usual.rise);
    let mirror = flag(&mut table, "mirror", usual.mirror);
    let art = art(&mut table);
    table.finish();
    Some(BackPocket {
        foot_width: foot_width?,
        side_length: side_length?,
        outer_drop: outer_drop?,
        lining: lining?,
        lining_cloth: allowed(lining_cloth)?,
        decoration: decoration?,
        waves: waves?,
        crest: crest?,
        rise: rise?,
        mirror: mirror?,
        art: art?,
        drawing: None,
    })
}

fn extra(mut table: Table<'_>) -> Option<ExtraPocket> {
    let side = side(&mut table, Side::Left);
    let width = table
        .required("width", "width = \"13 cm\"")
        .and_then(|node| node.quantity());
    let depth = table
        .required("depth", "depth = \"15 cm\"")
        .and_then(|node| node.quantity());
    let from_centre = table
        .required("from_centre", "from_centre = \"9 cm\"")
        .and_then(|node| node.quantity());
    table.finish();
    Some(ExtraPocket {
        side: side?,
        width: width?,
        depth: depth?,
        from_centre: from_centre?,
    })
}

fn loops(mut table: Table<'_>) -> Option<Loops> {
    let count = table.optional("count");
    let count = count.map_or(Some(Loops::default().count), |node| node.count(0));
    let belt = length(&mut table, "belt", Loops::default().belt);
    table.finish();
    Some(Loops {
        count: count?,
        belt: belt?,
    })
}

fn rivets(mut table: Table<'_>) -> Option<Rivets> {
    let trim = table
        .required("trim", "trim = \"...\", a rivet from trims.toml")
        .and_then(|node| node.reference(Target::Trim(&[TrimKind::Rivet])));
    let mouth = flag(&mut table, "mouth", true);
    let coin = flag(&mut table, "coin", true);
    let back_hidden = flag(&mut table, "back_hidden", false);
    table.finish();
    Some(Rivets {
        trim: trim?,
        mouth: mouth?,
        coin: coin?,
        back_hidden: back_hidden?,
    })
}

fn patch(mut table: Table<'_>) -> Option<Patch> {
    let trim = table
        .required("trim", "trim = \"...\", a patch from trims.toml")
        .and_then(|node| node.reference(Target::Trim(&[TrimKind::Patch])));
    let from_centre = length(&mut table, "from_centre", Length::mm(35.0));
    let through = choice(
        &mut table,
        "through",
        PatchThrough::WORDS,
        PatchThrough::WholeBand,
    );
    let letters = choice(&mut table, "letters", Letters::WORDS, Letters::Pressed);
    let art = art(&mut table);
    table.finish();
    Some(Patch {
        trim: trim?,
        from_centre: from_centre?,
        through: through?,
        letters: letters?,
        art: art?,
        drawing: None,
    })
}

fn labels(node: Option<Node<'_>>) -> Option<Vec<Label>> {
    let Some(node) = node else {
        return Some(Vec::new());
    };
    let members = node.list("[[labels]] above each label")?;
    all(members.iter().map(|member| label(member.table()?)))
}

fn label(mut table: Table<'_>) -> Option<Label> {
    let trim = table
        .required("trim", "trim = \"...\", a label from trims.toml")
        .and_then(|node| node.reference(Target::Trim(&[TrimKind::Label])));
    let place = table
        .required("place", "place = \"band inside, centre back\"")
        .and_then(|node| node.text());
    let purpose = word_list(
        &mut table,
        "purpose",
        "[\"fibre\", \"care\"]",
        Purpose::WORDS,
    );
    let fold = choice(&mut table, "fold", LabelFold::WORDS, LabelFold::Flat);
    let text = table.optional("text").map(|node| node.text());
    let art = art(&mut table);
    table.finish();
    Some(Label {
        trim: trim?,
        place: place?,
        purpose: purpose?,
        fold: fold?,
        text: allowed(text)?,
        art: art?,
        drawing: None,
    })
}

fn muted(node: Option<Node<'_>>) -> Option<Vec<Muted>> {
    let Some(node) = node else {
        return Some(Vec::new());
    };
    let members = node.list("[[muted]] above each muted finding")?;
    all(members.iter().map(|member| muted_one(member.table()?)))
}

fn muted_one(mut table: Table<'_>) -> Option<Muted> {
    let code = table
        .required("code", "code = \"sewing::...\", the code of the finding")
        .and_then(|node| node.text());
    let about = table
        .required(
            "about",
            "about = \"...\", what the finding is about, by its code",
        )
        .and_then(|node| node.text());
    let reason = table
        .required("reason", "reason = \"...\", why you live with it")
        .and_then(|node| node.text());
    table.finish();
    let code = code?;
    Some(Muted {
        subject: Muted::subject(&code, &about?),
        code,
        reason: reason?,
    })
}

/// `art` may name a file inside the style's own folder only.
fn art(table: &mut Table<'_>) -> Option<Option<ArtPath>> {
    let Some(node) = table.optional("art") else {
        return Some(None);
    };
    match ArtPath::new(&node.text()?) {
        Ok(path) => Some(Some(path)),
        Err(why) => {
            let hint = "name a file inside the style's own folder, such as \"art/patch.svg\"";
            node.problem("style::art-outside", format!("`art`: {why}"), hint);
            None
        }
    }
}

fn bartacks(mut table: Table<'_>) -> Option<Bartacks> {
    let yarn = table
        .required("yarn", "yarn = \"...\", a name from yarns.toml")
        .and_then(|node| node.reference(Target::Yarn));
    let under = table
        .optional("under")
        .map(|node| node.reference(Target::Yarn));
    let tack_length = length(&mut table, "length", Length::mm(10.0));
    let width = length(&mut table, "width", Length::mm(2.0));
    let stitches = table
        .optional("stitches")
        .map_or(Some(28), |node| node.count(5));
    let mouth = said(&mut table, "mouth");
    let coin = said(&mut table, "coin");
    let back_pockets = said(&mut table, "back_pockets");
    let fly = flag(&mut table, "fly", true);
    let crotch = flag(&mut table, "crotch", true);
    table.finish();
    let yarn = yarn?;
    Some(Bartacks {
        under: under.unwrap_or_else(|| Some(yarn.clone()))?,
        yarn,
        length: tack_length?,
        width: width?,
        stitches: stitches?,
        mouth: mouth?,
        coin: coin?,
        back_pockets: back_pockets?,
        fly: fly?,
        crotch: crotch?,
    })
}
