//! What a pair takes, in a line, and how that differs from where the session began or from the maker's own mark.

use draft::Finding;
use maud::{Markup, html};
use trade::{Area, Length, Mass, System};
use words::Words;

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

pub(crate) fn render(
    say: &'static Words,
    now: &Worked,
    since: &Worked,
    marked: bool,
    system: System,
) -> Markup {
    let size = now.garment.size;
    let (changed, label) = if marked {
        (say.strip_since_mark(), say.strip_since_mark_label(size))
    } else {
        (say.strip_since_begun(), say.strip_since_begun_label(size))
    };
    html! {
        section #strip aria-label=(label) {
            dl {
                @for figure in figures(say, now, since, system) {
                    div title=(figure.how) {
                        dt { (figure.title) }
                        dd { (figure.value) @if !figure.change.is_empty() { " " strong { (figure.change) } } }
                    }
                }
            }
            p { (changed) " "
                button.small type="button" data-step="mark" title=(say.strip_mark_how()) { (say.strip_mark()) }
            }
        }
    }
}

/// What a pair takes, and how that differs from another.
pub(crate) fn figures(
    say: &'static Words,
    now: &Worked,
    since: &Worked,
    system: System,
) -> [Figure; 5] {
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
            title: say.strip_yarn(),
            value: reach(yarn(now), system),
            change: change(
                more_yarn > Length::ZERO,
                more_yarn.abs() >= TELLING_YARN,
                &reach(more_yarn.abs(), system),
            ),
            how: say.strip_yarn_how(),
        },
        Figure {
            title: say.strip_shell(),
            value: least.map_or("–".to_owned(), |length| reach2(length, system)),
            change: change(
                more_cloth > Area::ZERO,
                more_cloth.abs() >= TELLING_AREA,
                &area(more_cloth.abs(), system),
            ),
            how: say.strip_shell_how(),
        },
        Figure {
            title: say.strip_mass(),
            value: mass(cut.mass),
            change: change(
                more_mass > Mass::ZERO,
                more_mass.abs() >= TELLING_MASS,
                &mass(more_mass.abs()),
            ),
            how: say.strip_mass_how(),
        },
        Figure {
            title: say.strip_thickest(),
            value: thick(now.thickest()),
            change: change(
                more_bulk > Length::ZERO,
                more_bulk.abs() >= TELLING_BULK,
                &thick(more_bulk.abs()),
            ),
            how: say.strip_thickest_how(),
        },
        findings(say, now, since),
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
fn findings(say: &'static Words, now: &Worked, since: &Worked) -> Figure {
    let same = |a: &Finding, b: &Finding| a.code == b.code && a.subject == b.subject;
    let (are, were) = (now.counted(), since.counted());
    let missing = |from: &[&Finding], among: &[&Finding]| {
        let missing = |a: &&&Finding| !among.iter().any(|b| same(a, b));
        from.iter().filter(missing).count()
    };
    let change = match (missing(&were, &are), missing(&are, &were)) {
        (0, 0) => String::new(),
        (gone, 0) => say.strip_findings_gone(gone),
        (0, new) => say.strip_findings_new(new),
        (gone, new) => say.say(words::say::StripFindingsBoth { gone, new }),
    };
    Figure {
        title: say.strip_findings(),
        value: are.len().to_string(),
        change,
        how: say.strip_findings_how(),
    }
}
