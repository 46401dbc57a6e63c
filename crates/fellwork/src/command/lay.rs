//! `fellwork lay`: the pieces of some pairs on one cloth, or one lay of an order's plan.

use std::sync::atomic::AtomicBool;
use std::time::Duration;

use answers::{LaidLay, LayOfPlan};
use cut_sheets::LayMarks;
use cutting::{BandCut, Spread, Way};
use jobs::{
    Finder, Found, Kept, LaidOut, LayJob, LayKind, LayOrder, PlanStage, apart, lay_file,
    order_cloths, plan_order_cloth, system,
};
use lay::{Decides, splices};
use spreading::CutOrder;
use style::Cloth;
use trade::{Length, System, counted};

use crate::args::{LayPieces, Pairs};
use crate::command::named_file::{load, load_order, orders_for};
use crate::command::plan::{plies, roll_ends, told};
use crate::command::watch::watched;
use crate::exit::Exit;
use crate::output::{Kind, OneFile};
use crate::trouble::Trouble;
use crate::{files, printed};

/// A lay with what it was made of and how it is spread.
struct Laid<'a> {
    /// The label, and the style or order, for what is printed.
    label: &'a str,
    of: String,
    cloth_name: &'a str,
    cloth: &'a Cloth,
    spread: Spread,
    found: Found,
    pairs: u32,
    end_loss: Length,
    marks: LayMarks,
    of_plan: Option<OfPlan>,
    /// Whether it was asked where a roll may end.
    laps: bool,
}

/// Which lay of an order's plan it is.
struct OfPlan {
    lay: LayOfPlan,
    sizes: String,
    /// Whether the lay was chosen, or is the first because none was.
    chosen: bool,
}

pub fn run(asked: &LayPieces) -> Result<Exit, Trouble> {
    let kinds = [Kind::Svg, Kind::Dxf, Kind::Pdf];
    let output = asked.output.as_deref();
    let output = output.map(|path| OneFile::new(path, &kinds, asked.over.replace));
    let output = output.transpose()?;
    if style::is_order(&asked.style) {
        return of_order(asked, output.as_ref());
    }
    if asked.lay.is_some() {
        return Err(Trouble::Option {
            what: "--lay names a lay of an order's plan, and this is a style".to_owned(),
            instead: format!(
                "{}; or say the sizes with --pairs",
                orders_for(&asked.style)
            ),
        });
    }
    let loaded = load(&asked.style)?;
    let pairs = asked.pairs.iter();
    let order = LayOrder {
        cloth: asked.cloth.clone(),
        pairs: pairs.map(|Pairs { size, count }| (*size, *count)).collect(),
        way: if asked.one_way {
            Way::OneWay
        } else {
            Way::TwoWay
        },
        gap: asked.gap.unwrap_or_default(),
        zones: asked.zones.unwrap_or(1),
        band: asked.band.map(BandCut::from),
    };
    let job = LayJob::new(&loaded, &order)?;
    let finder = Finder {
        collection: &loaded.collection_folder,
        options: asked.searching.options(),
        kept: asked.searching.kept(),
    };
    let system = system(&loaded.collection);
    let found = watched(&finder, &job.spread, &job.words, system)?;
    let laid = Laid {
        label: &loaded.collection.name,
        of: loaded.style.style.to_string(),
        cloth_name: &job.cloth_name,
        cloth: &job.cloth,
        marks: LayMarks {
            heading: String::new(),
            splices: asked.most_lap.map_or_else(Vec::new, |most| {
                splices(&job.spread.problem, &found.lay.placements, most)
            }),
            zones: order.zones,
        },
        spread: job.spread,
        found,
        pairs: job.pairs,
        end_loss: asked.end_loss.unwrap_or(style::END_LOSS),
        of_plan: None,
        laps: asked.most_lap.is_some(),
    };
    answer(asked, output.as_ref(), &laid, system)
}

/// One lay of an order's plan, looked for as long as is asked. The others are taken as they are kept, or
/// looked for briefly.
fn of_order(asked: &LayPieces, output: Option<&OneFile<'_>>) -> Result<Exit, Trouble> {
    /// Long enough to choose by.
    const BRIEFLY: Duration = Duration::from_secs(3);
    if asked.rules_of_its_own() {
        return Err(Trouble::Option {
            what: "sizes, ways, gaps, laps and ends of an order's lays are the order's own"
                .to_owned(),
            instead: "change them in the order's file, and choose a lay of its plan with --lay"
                .to_owned(),
        });
    }
    let loaded = load_order(&asked.style)?;
    let cut = CutOrder::new(&loaded)?;
    let jobs = order_cloths(&loaded, &cut, asked.cloth.as_deref())?;
    let Some(job) = jobs.first() else {
        return Ok(Exit::Done);
    };
    let number = asked.lay.unwrap_or(1);
    let mut finder = Finder {
        collection: &loaded.collection_folder,
        options: asked.searching.options(),
        kept: Kept::Always,
    };
    finder.options.limits.time = Some(BRIEFLY);
    let never = AtomicBool::new(false);
    let planned = plan_order_cloth(&loaded, job, Some(&finder), &never, &mut |stage| {
        if let PlanStage::Found { found, .. } = stage {
            told(found);
        }
    })?;
    let index = number.wrapping_sub(1);
    let lay = planned
        .plan
        .lays
        .get(index)
        .ok_or_else(|| Trouble::NoSuchLay {
            cloth: job.name.to_owned(),
            asked: number,
            lays: format!("it has {}", planned.plan.lays.len()),
        })?;
    let finder = Finder {
        options: asked.searching.options(),
        kept: asked.searching.kept(),
        ..finder
    };
    let pairs = &lay.planned.pairs;
    let spread = job.spread(pairs);
    let words = job.known_by(pairs);
    let found = watched(&finder, &spread, &words, system(&loaded.collection))?;
    let laid = Laid {
        label: &loaded.collection.name,
        of: loaded.order.name.clone(),
        cloth_name: job.name,
        cloth: job.cloth,
        marks: planned.marks(index, &found.lay),
        spread,
        found,
        pairs: lay.planned.pairs_in_ply(),
        end_loss: job.limits.end_loss,
        of_plan: Some(OfPlan {
            lay: LayOfPlan {
                lay: number,
                of: planned.plan.lays.len(),
                plies: lay.planned.plies,
            },
            sizes: job.in_words(&lay.planned.pairs),
            chosen: asked.lay.is_some(),
        }),
        laps: true,
    };
    answer(asked, output, &laid, system(&loaded.collection))
}

fn answer(
    asked: &LayPieces,
    output: Option<&OneFile<'_>>,
    laid: &Laid<'_>,
    system: System,
) -> Result<Exit, Trouble> {
    if let Some(output) = output {
        let kind = match output.kind() {
            Kind::Dxf => LayKind::Dxf,
            Kind::Pdf => LayKind::Pdf,
            Kind::Svg | Kind::Hpgl | Kind::Png | Kind::Html => LayKind::Svg,
        };
        let laid_out = LaidOut {
            label: laid.label,
            of: &laid.of,
            spread: &laid.spread,
            lay: &laid.found.lay,
            cloth: laid.cloth,
            marks: &laid.marks,
            system,
        };
        let bytes = lay_file(kind, &laid_out, words::Words::english())?;
        output.write(&bytes)?;
    }
    // The drawing on standard output is not mixed with words.
    if asked.output.as_deref().is_some_and(files::is_printed) {
        return Ok(Exit::Done);
    }
    if asked.json {
        printed::json(&answers::lay(&LaidLay {
            cloth: laid.cloth_name,
            spread: &laid.spread,
            found: &laid.found,
            pairs: laid.pairs,
            end_loss: laid.end_loss,
            splices: &laid.marks.splices,
            of_plan: laid.of_plan.as_ref().map(|planned| planned.lay),
        })?)?;
    } else {
        printed::words(&words(laid, system))?;
    }
    Ok(Exit::Done)
}

fn words(laid: &Laid<'_>, system: System) -> String {
    let lay = &laid.found.lay;
    let pairs = laid.pairs;
    let ply = lay.length + laid.end_loss * 2.0;
    let bound = lay.bounds.best();
    let mut text = laid.of_plan.as_ref().map_or_else(String::new, |planned| {
        format!(
            "lay {} of {} of the plan for {}: {} of {}{}\n",
            planned.lay.lay,
            planned.lay.of,
            laid.cloth_name,
            plies(planned.lay.plies),
            planned.sizes,
            if planned.chosen || planned.lay.of == 1 {
                ""
            } else {
                "; --lay chooses another"
            }
        )
    });
    text.push_str(&format!(
        "{} of {}: {} long, {:.1} % of the cloth used{}\n\
         a ply with {} lost at each end: {}, {} a pair\n\
         no lay is shorter than {}, for {}; this one is {:.1} % longer\n",
        counted(lay.placements.len(), "piece", "pieces"),
        counted(pairs, "pair", "pairs"),
        lay.length.show(system),
        lay.efficiency.to_percent(),
        if laid.found.kept {
            "; found before"
        } else {
            ""
        },
        laid.end_loss.show(system),
        ply.show(system),
        (ply / f64::from(pairs.max(1))).show(system),
        bound.show(system),
        decides(lay.bounds.decides()),
        (lay.length / bound - 1.0) * 100.0,
    ));
    if laid.laps {
        let ends = roll_ends(&laid.marks.splices, system);
        text.push_str(&format!("a roll may end at {ends}\n"));
    }
    let apart = apart(&laid.spread, lay);
    if apart > 0 {
        text.push_str(&format!(
            "{} further apart than they may; look longer or cut them from one zone\n",
            counted(
                apart,
                "pair of pieces that has to match in shade lies",
                "pairs of pieces that have to match in shade lie"
            )
        ));
    }
    text
}

/// Why no lay is shorter.
fn decides(by: Decides) -> &'static str {
    match by {
        Decides::Area => "the pieces have that area",
        Decides::Longest => "the longest piece is that long",
        Decides::Wide => "pieces wider than half the cloth cannot lie side by side",
        Decides::Edges => "that much lies on the finished edges",
    }
}
