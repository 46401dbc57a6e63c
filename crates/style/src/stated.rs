//! Every quantity that a style, its collection and an order hold, each with its path and what it is called.
//!
//! What is usual and possible for each stands in the table of [`ranges`](crate::ranges()). A test holds that this list and
//! the reader know the same quantities.

use crate::range::{Amount, Range, range_of};
use crate::{
    BackPocket, ChartEntry, Closing, Cloth, Collection, Lining, MeasureId, Order, Size,
    SpreadLimits, StyleDoc, Trim, Yarn, known,
};
use words::Words;

/// One quantity.
#[derive(Clone, Debug, PartialEq)]
pub struct Stated {
    /// Where it stands in its file, as a path.
    pub path: String,
    /// What it is called, such as "fly width" or "inseam, row 2, offset".
    pub about: String,
    /// What it is.
    pub amount: Amount,
}

impl Stated {
    /// What is usual and possible for it.
    #[must_use]
    pub fn range(&self) -> Option<&'static Range> {
        range_of(&self.path)
    }
}

/// The quantities of a style, the measures of its chart as they are at a size.
#[must_use]
pub fn stated_by_style(doc: &StyleDoc, size: Size) -> Vec<Stated> {
    let mut list = List::default();
    for (measure, entry) in &doc.chart {
        list.measure(*measure, entry, entry.value_at(doc.sizes.base, size));
    }
    list.shape(doc);
    list.details(doc);
    list.pockets(doc);
    list.sewing(doc);
    list.all
}

/// The quantities of what a style takes from its collection: its cloths, yarns and trims, each once.
#[must_use]
pub fn stated_by_supplies(doc: &StyleDoc, collection: &Collection) -> Vec<Stated> {
    let mut all = Vec::new();
    let cloths = doc.cloth_names();
    let cloths = collection
        .cloths
        .iter()
        .filter(|(key, _)| cloths.contains(&key.as_str()));
    all.extend(cloths.flat_map(|(key, cloth)| stated_by_cloth(key, cloth)));
    let rows = doc
        .seams
        .values()
        .flat_map(|seam| seam.rows.iter().flatten());
    let mut used: Vec<&str> = rows
        .flat_map(|row| [row.yarn.as_str(), row.under.as_str()])
        .collect();
    used.extend([doc.bartacks.yarn.as_str(), doc.bartacks.under.as_str()]);
    let yarns = collection
        .yarns
        .iter()
        .filter(|(key, _)| used.contains(&key.as_str()));
    all.extend(yarns.flat_map(|(key, yarn)| stated_by_yarn(key, yarn)));
    let trims = doc.trim_names();
    let trims = collection
        .trims
        .iter()
        .filter(|(key, _)| trims.contains(&key.as_str()));
    all.extend(trims.flat_map(|(key, trim)| stated_by_trim(key, trim)));
    all
}

/// The quantities of a cloth.
#[must_use]
pub fn stated_by_cloth(key: &str, cloth: &Cloth) -> Vec<Stated> {
    let mut list = List::under(format!("cloths.{key}"), format!("cloth {key}"));
    list.put("weight", "weight", cloth.weight);
    list.put("thickness", "thickness", cloth.thickness);
    list.put("width", "width", cloth.width);
    list.maybe("warp_shrinkage", "warp shrinkage", cloth.warp_shrinkage);
    list.maybe("weft_shrinkage", "weft shrinkage", cloth.weft_shrinkage);
    list.maybe("skew", "skew", cloth.skew);
    for (at, mark) in cloth.wash_test.iter().enumerate() {
        let path = |key: &str| format!("wash_test[{at}].{key}");
        let about = |when: &str| format!("wash test, {} {}, {when}", mark.along, at + 1);
        list.put(path("before"), about("before"), mark.before);
        list.put(path("after"), about("after"), mark.after);
    }
    if let Some(test) = cloth.skew_test {
        list.put("skew_test.rising", "skew test, rising", test.rising);
        list.put("skew_test.falling", "skew test, falling", test.falling);
    }
    list.all
}

/// The quantities of a yarn.
#[must_use]
pub fn stated_by_yarn(key: &str, yarn: &Yarn) -> Vec<Stated> {
    let mut list = List::under(format!("yarns.{key}"), format!("yarn {key}"));
    list.put("size", "size", yarn.size);
    list.maybe("put_up", "put-up", yarn.put_up);
    list.all
}

/// The quantities of a trim.
#[must_use]
pub fn stated_by_trim(key: &str, trim: &Trim) -> Vec<Stated> {
    let mut list = List::under(format!("trims.{key}"), format!("trim {key}"));
    list.maybe("diameter", "diameter", trim.diameter);
    list.maybe("width", "width", trim.width);
    list.maybe("height", "height", trim.height);
    list.maybe("length", "length", trim.length);
    list.maybe("thickness", "thickness", trim.thickness);
    list.all
}

/// The quantities of an order.
#[must_use]
pub fn stated_by_order(order: &Order) -> Vec<Stated> {
    let mut list = List::default();
    for (at, line) in order.lines.iter().enumerate() {
        for (size, pairs) in &line.pairs {
            let path = format!("lines[{at}].pairs.{size}");
            list.put(path, format!("pairs of {} in {size}", line.style), *pairs);
        }
    }
    let mut all = list.all;
    let general = limits("limits", "limits", &order.limits);
    for (key, own) in &order.cloths {
        let (path, about) = (format!("cloths.{key}"), format!("cloth {key}"));
        // What a cloth does not state anew is told once, where it is stated.
        let (from, to) = (path.len(), "limits".len());
        let own_limits = limits(&path, &about, &own.limits).into_iter();
        all.extend(own_limits.filter(|stated| {
            let same = |one: &&Stated| one.path.get(to..) == stated.path.get(from..);
            general.iter().find(same).map(|one| one.amount) != Some(stated.amount)
        }));
        let mut list = List::under(path, about);
        for (at, roll) in own.rolls.iter().enumerate() {
            let about = format!("roll {}", roll.name);
            list.put(format!("rolls[{at}].length"), about, roll.length);
        }
        all.append(&mut list.all);
    }
    all.extend(general);
    all
}

fn limits(path: &str, about: &str, limits: &SpreadLimits) -> Vec<Stated> {
    let mut list = List::under(path.to_owned(), about.to_owned());
    list.maybe("height", "height of plies", limits.height);
    list.maybe("most_plies", "most plies", limits.most_plies);
    list.put("table", "table", limits.table);
    list.put("most_pairs", "most pairs", limits.most_pairs);
    list.put("fewest_lays", "fewest lays", limits.fewest_lays);
    list.put("most_lays", "most lays", limits.most_lays);
    list.put("end_loss", "end loss", limits.end_loss);
    list.put("gap", "gap", limits.gap);
    list.put("zones", "zones", limits.zones);
    list.maybe("match_within", "match within", limits.match_within);
    list.put("most_lap", "most lap", limits.most_lap);
    list.put("faults", "faults", limits.faults);
    list.put("splices", "splices", limits.splices);
    list.all
}

impl StyleDoc {
    /// The cloths it is cut from, as it names them: the shell first, none twice.
    #[must_use]
    pub fn cloth_names(&self) -> Vec<&str> {
        let back = &self.pockets.back;
        let linings = [&back.left, &back.right].into_iter();
        let linings = linings.filter(|pocket| pocket.lining != Lining::None);
        let linings = linings.filter_map(|pocket| {
            let own = pocket.lining_cloth.as_ref();
            own.or(self.cloth.lining.as_ref()).map(String::as_str)
        });
        each_once(
            [self.cloth.shell.as_str(), &self.cloth.pocketing]
                .into_iter()
                .chain(linings),
        )
    }

    /// The trims it takes, as it names them, none twice.
    #[must_use]
    pub fn trim_names(&self) -> Vec<&str> {
        let fly = [
            Some(&self.fly.band_button),
            self.fly.button.as_ref(),
            self.fly.zip.as_ref(),
        ];
        let set = [
            self.rivets.as_ref().map(|rivets| &rivets.trim),
            self.patch.as_ref().map(|patch| &patch.trim),
        ];
        let named = fly.into_iter().chain(set).flatten();
        let named = named.chain(self.labels.iter().map(|label| &label.trim));
        each_once(named.map(String::as_str))
    }
}

fn each_once<'a>(names: impl Iterator<Item = &'a str>) -> Vec<&'a str> {
    let mut once = Vec::new();
    for name in names {
        if !once.contains(&name) {
            once.push(name);
        }
    }
    once
}

/// Collects quantities of one section.
#[derive(Default)]
struct List {
    path: String,
    about: String,
    all: Vec<Stated>,
}

impl List {
    fn under(path: String, about: String) -> Self {
        Self {
            path,
            about,
            all: Vec::new(),
        }
    }

    /// From now on, quantities are of this section.
    fn section(&mut self, path: &str, about: &str) {
        path.clone_into(&mut self.path);
        about.clone_into(&mut self.about);
    }

    fn put(&mut self, key: impl AsRef<str>, about: impl AsRef<str>, amount: impl Into<Amount>) {
        let join = |section: &str, between: &str, own: &str| match section {
            "" => own.to_owned(),
            section => format!("{section}{between}{own}"),
        };
        self.all.push(Stated {
            path: join(&self.path, ".", key.as_ref()),
            about: join(&self.about, ", ", about.as_ref()),
            amount: amount.into(),
        });
    }

    fn maybe(&mut self, key: &str, about: &str, amount: Option<impl Into<Amount>>) {
        if let Some(amount) = amount {
            self.put(key, about, amount);
        }
    }

    fn measure(&mut self, measure: MeasureId, entry: &ChartEntry, value: trade::Length) {
        let title = Words::english().named(measure.title());
        self.section("", "");
        self.put(measure.path("value"), title, value);
        self.section(&format!("chart.{}", measure.code()), title);
        self.maybe("grade", "grade", entry.grade);
        self.maybe("per_length", "grade for length", entry.per_length);
        for (at, step) in entry.breaks.iter().enumerate() {
            let about = format!("grade above {}", step.above);
            self.put(format!("breaks[{at}].grade"), about, step.grade);
        }
        self.maybe("at", "level", entry.at);
        self.put("tolerance", "tolerance", entry.tolerance);
    }

    fn shape(&mut self, doc: &StyleDoc) {
        let shape = &doc.shape;
        self.section("shape", "");
        self.put("seat_split", "seat split", shape.seat_split);
        self.put("thigh_split", "thigh split", shape.thigh_split);
        self.put("knee_split", "knee split", shape.knee_split);
        self.put("hem_split", "hem split", shape.hem_split);
        self.put("waist_split", "waist split", shape.waist_split);
        self.put("front_tilt", "centre front tilt", shape.front_tilt);
        self.put("seat_angle", "seat angle", shape.seat_angle);
        self.put("seat_dart", "seat dart", shape.seat_dart);
        self.put("inseam_stretch", "inseam stretch", shape.inseam_stretch);
        self.put("band_ease", "band ease", shape.band_ease);
    }

    fn details(&mut self, doc: &StyleDoc) {
        self.section("", "");
        if doc.fly.closing == Closing::Buttons {
            self.put("fly.buttons", "fly buttons", doc.fly.buttons);
        }
        self.put("band.start_below", "band rows, start", doc.band.start_below);
        self.put("band.v_angle", "band rows, V", doc.band.v_angle);
        self.put("loops.count", "belt loops, count", doc.loops.count);
        self.put("loops.belt", "belt loops, belt", doc.loops.belt);
        if let Some(patch) = &doc.patch {
            self.put("patch.from_centre", "patch, from centre", patch.from_centre);
        }
        let tacks = &doc.bartacks;
        self.section("bartacks", "bartacks");
        self.put("length", "length", tacks.length);
        self.put("width", "width", tacks.width);
        self.put("stitches", "stitches", tacks.stitches);
        let cutting = &doc.cutting;
        self.section("cutting", "waistband");
        self.put(
            "residual_warp",
            "residual warp shrinkage",
            cutting.residual_warp,
        );
        self.put(
            "residual_weft",
            "residual weft shrinkage",
            cutting.residual_weft,
        );
        if let Some(pattern) = &doc.pattern {
            self.section("pattern", "own pattern");
            self.maybe("allowance", "allowance", pattern.allowance);
            for (edge, allowance) in &pattern.allowances {
                let about = format!("allowance at {edge}");
                self.put(format!("allowances.{edge}"), about, *allowance);
            }
        }
    }

    fn pockets(&mut self, doc: &StyleDoc) {
        let (coin, bag) = (&doc.pockets.coin, &doc.pockets.bag);
        self.section("pockets.coin", "coin pocket");
        self.put("below_band", "below the band", coin.below_band);
        self.put("from_side", "from the side", coin.from_side);
        self.put("lower_narrowing", "narrowing", coin.lower_narrowing);
        self.put("drop", "drop", coin.drop);
        self.section("pockets.bag", "pocket bag");
        self.put("depth", "depth", bag.depth);
        self.put("width", "width", bag.width);
        self.put("facing", "facing", bag.facing);
        self.put("mouth_fullness", "mouth fullness", bag.mouth_fullness);
        self.back_pocket("left", &doc.pockets.back.left);
        self.back_pocket("right", &doc.pockets.back.right);
        if let Some(extra) = &doc.pockets.extra {
            self.section("pockets.extra", "extra pocket");
            self.put("width", "width", extra.width);
            self.put("depth", "depth", extra.depth);
            self.put("from_centre", "from centre", extra.from_centre);
        }
    }

    fn back_pocket(&mut self, side: &str, pocket: &BackPocket) {
        self.section(
            &format!("pockets.back.{side}"),
            &format!("{side} back pocket"),
        );
        self.put("foot_width", "foot width", pocket.foot_width);
        self.put("side_length", "side length", pocket.side_length);
        self.put("outer_drop", "outer drop", pocket.outer_drop);
        self.put("waves", "waves", pocket.waves);
        self.put("crest", "crest", pocket.crest);
        self.put("rise", "rise", pocket.rise);
    }

    fn sewing(&mut self, doc: &StyleDoc) {
        for (name, seam) in &doc.seams {
            let title = known::seam_name(name).map_or(name.as_str(), |seam| seam.title);
            self.section(&format!("seams.{name}"), title);
            for (at, row) in seam.rows.iter().flatten().enumerate() {
                let path = |key: &str| format!("rows[{at}].{key}");
                let about = |what: &str| format!("row {}, {what}", at + 1);
                self.put(path("density"), about("density"), row.density);
                self.put(path("offset"), about("offset"), row.offset);
            }
        }
    }
}
