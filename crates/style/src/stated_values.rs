//! Every quantity that a style, its collection and an order hold, each with its path and what it is called.
//!
//! What is usual and possible for each stands in the table of [`ranges`](crate::ranges()). A test holds that this list and
//! the reader know the same quantities.

use words::{Given, Key, key, say};

use crate::range::{Amount, Range, range_of};
use crate::{
    BackPocket, ChartEntry, Closing, Cloth, Collection, Lining, MeasureId, Order, Size,
    SpreadLimits, StyleDoc, Trim, Valued, Yarn,
};

/// One quantity.
#[derive(Clone, Debug, PartialEq)]
pub struct Stated {
    /// Where it stands in its file, and what it is called.
    pub value: Valued,
    /// What it is.
    pub amount: Amount,
}

impl Stated {
    /// What is usual and possible for it.
    #[must_use]
    pub fn range(&self) -> Option<&'static Range> {
        range_of(self.value.path())
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
    let mut list = List::under(format!("cloths.{key}"), say::SubjectCloth { cloth: key });
    list.put("weight", key::VALUED_WEIGHT, cloth.weight);
    list.put("thickness", key::VALUED_THICKNESS, cloth.thickness);
    list.put("width", key::VALUED_WIDTH, cloth.width);
    list.maybe(
        "warp_shrinkage",
        key::VALUED_WARP_SHRINKAGE,
        cloth.warp_shrinkage,
    );
    list.maybe(
        "weft_shrinkage",
        key::VALUED_WEFT_SHRINKAGE,
        cloth.weft_shrinkage,
    );
    list.maybe("skew", key::VALUED_SKEW, cloth.skew);
    for (at, mark) in cloth.wash_test.iter().enumerate() {
        let path = |key: &str| format!("wash_test[{at}].{key}");
        let (along, number) = (mark.along.word(), (at + 1).to_string());
        let before = say::ValuedWashMarkBefore {
            along,
            number: number.clone(),
        };
        list.put(path("before"), before, mark.before);
        let after = say::ValuedWashMarkAfter { along, number };
        list.put(path("after"), after, mark.after);
    }
    if let Some(test) = cloth.skew_test {
        list.put(
            "skew_test.rising",
            key::VALUED_SKEW_TEST_RISING,
            test.rising,
        );
        list.put(
            "skew_test.falling",
            key::VALUED_SKEW_TEST_FALLING,
            test.falling,
        );
    }
    list.all
}

/// The quantities of a yarn.
#[must_use]
pub fn stated_by_yarn(key: &str, yarn: &Yarn) -> Vec<Stated> {
    let mut list = List::under(format!("yarns.{key}"), say::SubjectYarn { yarn: key });
    list.put("size", key::VALUED_SIZE, yarn.size);
    list.maybe("put_up", key::VALUED_PUT_UP, yarn.put_up);
    list.all
}

/// The quantities of a trim.
#[must_use]
pub fn stated_by_trim(key: &str, trim: &Trim) -> Vec<Stated> {
    let mut list = List::under(format!("trims.{key}"), say::SubjectTrim { trim: key });
    list.maybe("diameter", key::VALUED_DIAMETER, trim.diameter);
    list.maybe("width", key::VALUED_WIDTH, trim.width);
    list.maybe("height", key::VALUED_HEIGHT, trim.height);
    list.maybe("length", key::VALUED_LENGTH, trim.length);
    list.maybe("thickness", key::VALUED_THICKNESS, trim.thickness);
    list.all
}

/// The quantities of an order.
#[must_use]
pub fn stated_by_order(order: &Order) -> Vec<Stated> {
    let mut list = List::default();
    for (at, line) in order.lines.iter().enumerate() {
        for (size, pairs) in &line.pairs {
            let path = format!("lines[{at}].pairs.{size}");
            let pairs_of = say::ValuedPairs {
                size: size.to_string(),
                style: &line.style,
            };
            list.put(path, pairs_of, *pairs);
        }
    }
    let mut all = list.all;
    let general = limits("limits", key::VALUED_LIMITS, &order.limits);
    for (key, own) in &order.cloths {
        let path = format!("cloths.{key}");
        let about = || say::SubjectCloth { cloth: key };
        // What a cloth does not state anew is told once, where it is stated.
        let (from, to) = (path.len(), "limits".len());
        let own_limits = limits(&path, about(), &own.limits).into_iter();
        all.extend(own_limits.filter(|stated| {
            let same =
                |one: &&Stated| one.value.path().get(to..) == stated.value.path().get(from..);
            general.iter().find(same).map(|one| one.amount) != Some(stated.amount)
        }));
        let mut list = List::under(path, about());
        for (at, roll) in own.rolls.iter().enumerate() {
            let about = say::ValuedRoll { roll: &roll.name };
            list.put(format!("rolls[{at}].length"), about, roll.length);
        }
        all.append(&mut list.all);
    }
    all.extend(general);
    all
}

fn limits(path: &str, about: impl Into<Given>, limits: &SpreadLimits) -> Vec<Stated> {
    let mut list = List::under(path.to_owned(), about);
    list.maybe("height", key::VALUED_HEIGHT_OF_PLIES, limits.height);
    list.maybe("most_plies", key::VALUED_MOST_PLIES, limits.most_plies);
    list.put("table", key::VALUED_TABLE, limits.table);
    list.put("most_pairs", key::VALUED_MOST_PAIRS, limits.most_pairs);
    list.put("fewest_lays", key::VALUED_FEWEST_LAYS, limits.fewest_lays);
    list.put("most_lays", key::VALUED_MOST_LAYS, limits.most_lays);
    list.put("end_loss", key::VALUED_END_LOSS, limits.end_loss);
    list.put("gap", key::VALUED_GAP, limits.gap);
    list.put("zones", key::VALUED_ZONES, limits.zones);
    list.maybe(
        "match_within",
        key::VALUED_MATCH_WITHIN,
        limits.match_within,
    );
    list.put("most_lap", key::VALUED_MOST_LAP, limits.most_lap);
    list.put("faults", key::VALUED_FAULTS, limits.faults);
    list.put("splices", key::VALUED_SPLICES, limits.splices);
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
    about: Option<Given>,
    all: Vec<Stated>,
}

impl List {
    fn under(path: String, about: impl Into<Given>) -> Self {
        Self {
            path,
            about: Some(about.into()),
            all: Vec::new(),
        }
    }

    /// From now on, quantities are of this section.
    fn section(&mut self, path: &str, about: Option<Given>) {
        path.clone_into(&mut self.path);
        self.about = about;
    }

    fn put(&mut self, key: impl AsRef<str>, about: impl Into<Given>, amount: impl Into<Amount>) {
        let path = match self.path.as_str() {
            "" => key.as_ref().to_owned(),
            section => format!("{section}.{}", key.as_ref()),
        };
        let called = match &self.about {
            None => about.into(),
            Some(section) => say::ValuedWithin {
                section: section.clone(),
                value: about,
            }
            .into(),
        };
        self.all.push(Stated {
            value: Valued::new(path, called),
            amount: amount.into(),
        });
    }

    fn maybe(&mut self, key: &str, about: impl Into<Given>, amount: Option<impl Into<Amount>>) {
        if let Some(amount) = amount {
            self.put(key, about, amount);
        }
    }

    fn measure(&mut self, measure: MeasureId, entry: &ChartEntry, value: trade::Length) {
        let title = Given::from(measure.title());
        self.section("", None);
        self.put(measure.path("value"), title.clone(), value);
        self.section(&format!("chart.{}", measure.code()), Some(title));
        self.maybe("grade", key::VALUED_GRADE, entry.grade);
        self.maybe("per_length", key::VALUED_GRADE_FOR_LENGTH, entry.per_length);
        for (at, step) in entry.breaks.iter().enumerate() {
            let about = say::ValuedGradeAbove {
                size: step.above.to_string(),
            };
            self.put(format!("breaks[{at}].grade"), about, step.grade);
        }
        self.maybe("at", key::VALUED_LEVEL, entry.at);
        self.put("tolerance", key::VALUED_TOLERANCE, entry.tolerance);
    }

    fn shape(&mut self, doc: &StyleDoc) {
        let shape = &doc.shape;
        self.section("shape", None);
        self.put("seat_split", key::VALUED_SEAT_SPLIT, shape.seat_split);
        self.put("thigh_split", key::VALUED_THIGH_SPLIT, shape.thigh_split);
        self.put("knee_split", key::VALUED_KNEE_SPLIT, shape.knee_split);
        self.put("hem_split", key::VALUED_HEM_SPLIT, shape.hem_split);
        self.put("waist_split", key::VALUED_WAIST_SPLIT, shape.waist_split);
        self.put(
            "front_tilt",
            key::VALUED_CENTRE_FRONT_TILT,
            shape.front_tilt,
        );
        self.put("seat_angle", key::VALUED_SEAT_ANGLE, shape.seat_angle);
        self.put("seat_dart", key::VALUED_SEAT_DART, shape.seat_dart);
        self.put(
            "inseam_stretch",
            key::VALUED_INSEAM_STRETCH,
            shape.inseam_stretch,
        );
        self.put("band_ease", key::VALUED_BAND_EASE, shape.band_ease);
    }

    fn details(&mut self, doc: &StyleDoc) {
        self.section("", None);
        if doc.fly.closing == Closing::Buttons {
            self.put("fly.buttons", key::VALUED_FLY_BUTTONS, doc.fly.buttons);
        }
        self.put(
            "band.start_below",
            key::VALUED_BAND_ROWS_START,
            doc.band.start_below,
        );
        self.put("band.v_angle", key::VALUED_BAND_ROWS_V, doc.band.v_angle);
        self.put("loops.count", key::VALUED_BELT_LOOPS_COUNT, doc.loops.count);
        self.put("loops.belt", key::VALUED_BELT_LOOPS_BELT, doc.loops.belt);
        if let Some(patch) = &doc.patch {
            self.put(
                "patch.from_centre",
                key::VALUED_PATCH_FROM_CENTRE,
                patch.from_centre,
            );
        }
        let tacks = &doc.bartacks;
        self.section("bartacks", Some(key::VALUED_BARTACKS.into()));
        self.put("length", key::VALUED_LENGTH, tacks.length);
        self.put("width", key::VALUED_WIDTH, tacks.width);
        self.put("stitches", key::VALUED_STITCHES, tacks.stitches);
        let cutting = &doc.cutting;
        self.section("cutting", Some(key::VALUED_WAISTBAND.into()));
        self.put(
            "residual_warp",
            key::VALUED_RESIDUAL_WARP_SHRINKAGE,
            cutting.residual_warp,
        );
        self.put(
            "residual_weft",
            key::VALUED_RESIDUAL_WEFT_SHRINKAGE,
            cutting.residual_weft,
        );
        for (at, step) in doc
            .wash
            .iter()
            .flat_map(|wash| wash.steps.iter().enumerate())
        {
            let number = (at + 1).to_string();
            let about = say::ValuedWashStep { number };
            self.section(&format!("wash.steps[{at}]"), Some(about.into()));
            self.maybe("temperature", key::VALUED_TEMPERATURE, step.temperature);
            self.maybe("time", key::VALUED_TIME, step.time);
            self.maybe("liquor", key::VALUED_LIQUOR, step.liquor);
        }
        if let Some(pattern) = &doc.pattern {
            self.section("pattern", Some(key::VALUED_OWN_PATTERN.into()));
            self.maybe("allowance", key::VALUED_ALLOWANCE, pattern.allowance);
            for (edge, allowance) in &pattern.allowances {
                let edge = edge.code();
                let about = say::ValuedAllowanceAt { edge };
                self.put(format!("allowances.{edge}"), about, *allowance);
            }
        }
    }

    fn pockets(&mut self, doc: &StyleDoc) {
        let (coin, bag) = (&doc.pockets.coin, &doc.pockets.bag);
        self.section("pockets.coin", Some(key::VALUED_COIN_POCKET.into()));
        self.put("below_band", key::VALUED_BELOW_THE_BAND, coin.below_band);
        self.put("from_side", key::VALUED_FROM_THE_SIDE, coin.from_side);
        self.put(
            "lower_narrowing",
            key::VALUED_NARROWING,
            coin.lower_narrowing,
        );
        self.put("drop", key::VALUED_DROP, coin.drop);
        self.section("pockets.bag", Some(key::VALUED_POCKET_BAG.into()));
        self.put("depth", key::VALUED_DEPTH, bag.depth);
        self.put("width", key::VALUED_WIDTH, bag.width);
        self.put("facing", key::VALUED_FACING, bag.facing);
        self.put(
            "mouth_fullness",
            key::VALUED_MOUTH_FULLNESS,
            bag.mouth_fullness,
        );
        self.back_pocket("left", key::VALUED_LEFT_BACK_POCKET, &doc.pockets.back.left);
        self.back_pocket(
            "right",
            key::VALUED_RIGHT_BACK_POCKET,
            &doc.pockets.back.right,
        );
        if let Some(extra) = &doc.pockets.extra {
            self.section("pockets.extra", Some(key::VALUED_EXTRA_POCKET.into()));
            self.put("width", key::VALUED_WIDTH, extra.width);
            self.put("depth", key::VALUED_DEPTH, extra.depth);
            self.put("from_centre", key::VALUED_FROM_CENTRE, extra.from_centre);
        }
    }

    fn back_pocket(&mut self, side: &str, called: Key, pocket: &BackPocket) {
        self.section(&format!("pockets.back.{side}"), Some(called.into()));
        self.put("foot_width", key::VALUED_FOOT_WIDTH, pocket.foot_width);
        self.put("side_length", key::VALUED_SIDE_LENGTH, pocket.side_length);
        self.put("outer_drop", key::VALUED_OUTER_DROP, pocket.outer_drop);
        self.put("waves", key::VALUED_WAVES, pocket.waves);
        self.put("crest", key::VALUED_CREST, pocket.crest);
        self.put("rise", key::VALUED_RISE, pocket.rise);
    }

    fn sewing(&mut self, doc: &StyleDoc) {
        for (id, seam) in &doc.seams {
            let title = Given::from(id.key());
            self.section(&format!("seams.{}", id.code()), Some(title));
            for (at, row) in seam.rows.iter().flatten().enumerate() {
                let path = |key: &str| format!("rows[{at}].{key}");
                let number = (at + 1).to_string();
                let density = say::ValuedRowDensity {
                    row: number.clone(),
                };
                self.put(path("density"), density, row.density);
                let offset = say::ValuedRowOffset { row: number };
                self.put(path("offset"), offset, row.offset);
            }
        }
    }
}
