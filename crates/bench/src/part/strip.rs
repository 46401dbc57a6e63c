//! What a pair takes, in a line, and how that differs from where the session began or from the maker's own mark.

use draft::Finding;
use maud::{Markup, html};
use trade::{Area, Length, Mass, System};

use crate::consequence::{area, reach};
use crate::garment::Worked;

/// Differences smaller than these are no difference to tell.
const TELLING_YARN: Length = Length::mm(50.0);
const TELLING_AREA: Area = Area::cm2(1.0);
const TELLING_MASS: Mass = Mass::g(0.5);
const TELLING_BULK: Length = Length::mm(0.05);

/// One figure of what a pair takes.
pub(crate) struct Figure {
    pub(crate) title: &'static str,
    pub(crate) value: String,
    /// How it differs; empty where it does not.
    pub(crate) change: String,
    /// What is to be known about it besides.
    pub(crate) how: &'static str,
}

pub(crate) fn render(now: &Worked, since: &Worked, marked: bool, system: System) -> Markup {
    let changed = if marked {
        "since your mark"
    } else {
        "since the session began"
    };
    html! {
        section #strip aria-label={ "What a pair takes in size " (now.garment.size) ", and what is different " (changed) } {
            dl {
                @for figure in figures(now, since, system) {
                    div title=(figure.how) {
                        dt { (figure.title) }
                        dd { (figure.value) @if !figure.change.is_empty() { " " strong { (figure.change) } } }
                    }
                }
            }
            p { (changed) " "
                button.small type="button" data-step="mark" title="What follows is compared with the pair as it is now" { "Mark" }
            }
        }
    }
}

/// What a pair takes, and how that differs from another.
pub(crate) fn figures(now: &Worked, since: &Worked, system: System) -> [Figure; 5] {
    let yarn = |worked: &Worked| worked.yarn().used().total();
    let more_yarn = yarn(now) - yarn(since);
    let (cut, was) = (&now.cut, &since.cut);
    let (more_cloth, more_mass) = (cut.area - was.area, cut.mass - was.mass);
    let more_bulk = now.thickest() - since.thickest();
    let mass = |mass: Mass| match system {
        System::Metric => format!("{:.0} g", mass.to_g()),
        System::Inch => format!("{:.1} oz", mass.to_oz()),
    };
    let thick = |length: Length| format!("{:.1} mm", length.to_mm());
    let least = cut.shell_length;
    [
        Figure {
            title: "Yarn",
            value: reach(yarn(now), system),
            change: change(
                more_yarn > Length::ZERO,
                more_yarn.abs() >= TELLING_YARN,
                &reach(more_yarn.abs(), system),
            ),
            how: "All yarns of a pair, needle and under.",
        },
        Figure {
            title: "Shell, at least",
            value: least.map_or("–".to_owned(), |length| reach2(length, system)),
            change: change(
                more_cloth > Area::ZERO,
                more_cloth.abs() >= TELLING_AREA,
                &area(more_cloth.abs(), system),
            ),
            how: "The shell's pieces as they are cut, at its whole width: a length that no lay can go below. The change is that of all cloth.",
        },
        Figure {
            title: "Cloth weight",
            value: mass(cut.mass),
            change: change(
                more_mass > Mass::ZERO,
                more_mass.abs() >= TELLING_MASS,
                &mass(more_mass.abs()),
            ),
            how: "All pieces as they are cut, at the weight of each cloth as bought; yarn and hardware are not in it.",
        },
        Figure {
            title: "Thickest",
            value: thick(now.thickest()),
            change: change(
                more_bulk > Length::ZERO,
                more_bulk.abs() >= TELLING_BULK,
                &thick(more_bulk.abs()),
            ),
            how: "The thickest place to be sewn across, not pressed.",
        },
        findings(now, since),
    ]
}

/// A length of cloth, to a hundredth.
fn reach2(length: Length, system: System) -> String {
    match system {
        System::Metric => format!("{:.2} m", length.to_m()),
        System::Inch => format!("{:.2} yd", length.to_yards()),
    }
}

fn change(more: bool, telling: bool, shown: &str) -> String {
    match (telling, more) {
        (false, _) => String::new(),
        (true, true) => format!("+{shown}"),
        (true, false) => format!("−{shown}"),
    }
}

/// How many are counted, how many have gone and how many are new.
fn findings(now: &Worked, since: &Worked) -> Figure {
    let same = |a: &Finding, b: &Finding| a.code == b.code && a.about == b.about;
    let (are, were) = (now.counted(), since.counted());
    let missing = |from: &[&Finding], among: &[&Finding]| {
        let missing = |a: &&&Finding| !among.iter().any(|b| same(a, b));
        from.iter().filter(missing).count()
    };
    let told = [
        (missing(&were, &are), "gone"),
        (missing(&are, &were), "new"),
    ];
    let told = told.iter().filter(|(count, _)| *count > 0);
    let told: Vec<String> = told
        .map(|(count, word)| format!("{count} {word}"))
        .collect();
    Figure {
        title: "Findings",
        value: are.len().to_string(),
        change: told.join(", "),
        how: "What a sewer would notice, without what is muted.",
    }
}
