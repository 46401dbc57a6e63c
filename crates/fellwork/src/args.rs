//! What can be asked on the command line.

mod look;
mod set;
mod sides;
mod story;

use std::path::PathBuf;
use std::str::FromStr;
use std::time::Duration;

use clap::{Args as ClapArgs, Parser, Subcommand, ValueEnum};
use cutting::{BandCut, Shrinkage};
use drawing::View;
use intake::SizeName;
use jiff::civil::Date;
use jobs::Kept;
use lay::{Limits, Options};
use papers::Paper;
use patterns::dxf::FileUnit;
use sewing::Face;
use style::{Size, Tag};
use trade::Length;

use crate::exit;

pub use sides::{NamedPiece, Pairs, PieceCorners, VersionName};

const EXAMPLES: &str = "\
Examples:
  fellwork demo                              the demo, its pack and the bench
  fellwork check saltmarsh/styles/ferryman   what a sewer would notice
  fellwork draw saltmarsh/styles/ferryman --view back --face inside -o back.svg
  fellwork look saltmarsh/styles/ferryman --view back --at patch -o patch.png
  fellwork pack saltmarsh/styles/ferryman -o ferryman.pdf
  fellwork plan saltmarsh/orders/spring.toml the lays of an order and its cloth
  fellwork new mylabel --name \"Harbour Wide\" --code HW-1

STYLE is a style's folder or its style.toml.

A name given with -o ends as what is written ends. A file that is there is written over where Fellwork wrote it \
itself; any other only with --replace, and a file of a collection never.";

pub use look::Look;
pub use set::{Set, Undo, with_values_below_zero, without_space};
pub use story::Story;

/// Everything a workroom needs to sew a pair of jeans, computed from one style file.
#[derive(Debug, Parser)]
#[command(name = "fellwork", version, arg_required_else_help = true, after_help = after_help())]
pub struct Args {
    /// What to do.
    #[command(subcommand)]
    pub command: Command,
}

fn after_help() -> String {
    format!("{EXAMPLES}\n\n{}", exit::IN_WORDS)
}

/// The commands.
#[derive(Debug, Subcommand)]
pub enum Command {
    /// Write the demo collection, make its production pack and open the bench
    Demo(Demo),
    /// Draft and sew every size and say what was noticed
    Check(Check),
    /// List the pattern pieces of one size, with every edge for programs
    Pieces(Pieces),
    /// List how one size is sewn: every operation with its machine and what that is set to
    Sew(Sew),
    /// Draw the garment from the front or back, outside or inside, as SVG
    Draw(Draw),
    /// Look at a place of the pair closely, new or worn, as PNG
    Look(Look),
    /// Tell a customer why a pair is as it is, as one page of paper or of the web
    Story(Story),
    /// Print the production pack as PDF
    Pack(Pack),
    /// Lay the pieces of some pairs on one cloth, as short as can be found
    Lay(LayPieces),
    /// Write the cut pieces as pattern files for other programs and plotters, or print them at true size
    Patterns(Patterns),
    /// Plan an order: which sizes in which lay, how many plies, how much of each cloth
    Plan(PlanOrder),
    /// Open the bench: see and change a collection's styles in the browser
    Bench(Bench),
    /// Bring a pattern of your own, from a pattern file into a style
    Bring(Bring),
    /// Begin a new style, in a new collection or in one that is there
    New(New),
    /// List the versions a style had, give one a name, or put one back
    History(HistoryOf),
    /// Say what is different between two versions of a style
    Compare(Compare),
    /// Change values of a style or of another file, with the checks of the bench
    Set(Set),
    /// Take the last change of a collection back, whichever file it was in
    Undo(Undo),
    /// Make the change again that was taken back last
    Redo(Undo),
}

/// `fellwork demo`.
#[derive(Debug, ClapArgs)]
pub struct Demo {
    /// Where the demo goes; a folder that is not there yet, is empty, or holds the demo already
    #[arg(value_name = "DIR", default_value = "saltmarsh")]
    pub folder: PathBuf,
    /// Stop after the papers
    #[arg(long, conflicts_with_all = ["no_open", "port", "key"])]
    pub no_bench: bool,
    #[command(flatten)]
    pub serving: Serving,
}

/// How the bench is opened.
#[derive(Debug, ClapArgs)]
pub struct Serving {
    /// Do not open the browser; print the address only
    #[arg(long)]
    pub no_open: bool,
    /// The port on this machine; 0 for any free one
    #[arg(long, value_name = "N")]
    pub port: Option<u16>,
    /// The key of the pages, 16 to 128 letters and digits, so that open pages go on after a new start; a new one when left out.
    /// Every user of this machine can read it here; --key-file keeps it from them
    #[arg(long, value_name = "KEY", conflicts_with = "key_file")]
    pub key: Option<String>,
    /// The file whose first line is the key, which only you may read (chmod 600); - for standard input
    #[arg(long, value_name = "FILE")]
    pub key_file: Option<PathBuf>,
}

/// `fellwork check`.
#[derive(Debug, ClapArgs)]
#[command(after_help = "\
Examples:
  fellwork check saltmarsh/styles/ferryman
  fellwork check saltmarsh/styles/ferryman --measures | less
  fellwork check saltmarsh/styles/ferryman --json

An order is checked too: every style and size it names is there, and its limits leave a plan.

The JSON: { format, style, sizes, errors, warnings, notes, findings, measures }.
A finding: { code, severity, about, message, remedy, source, sizes }, of a muted one also its reason, { muted }, \
which is in no count; of a conflict of the chart also what goes with it, { followers }, in no count either.
A measure, with --measures: { size, key, name, chart_mm, pattern_mm, difference_mm, tolerance_mm }, chart_mm null \
where the draft chose.
Of an order: { format, order, errors, cloths }, a cloth with its lays and length_mm or its problem.
For what cannot be read: { format, problems, more }, a problem with file, line and column.")]
pub struct Check {
    /// The style's folder or its style.toml; or an order, a file in orders
    #[arg(value_name = "STYLE|ORDER")]
    pub style: PathBuf,
    /// Also print chart, pattern and difference of every measure in every size
    #[arg(long)]
    pub measures: bool,
    /// Print JSON for programs
    #[arg(long)]
    pub json: bool,
}

/// `fellwork pieces`.
#[derive(Debug, ClapArgs)]
#[command(after_help = "\
Examples:
  fellwork pieces saltmarsh/styles/ferryman
  fellwork pieces saltmarsh/styles/ferryman --size 34x32 --json > pieces.json

The JSON is in millimetres, x towards the weft, y up along the warp: pieces with their edges as points at most \
0.5 mm apart, named points, lines, notches, grain and cut outlines; the joins with both sides, declared ease and \
what is left of the gap; the measures with how each is taken on the pieces.")]
pub struct Pieces {
    /// The style's folder or its style.toml
    pub style: PathBuf,
    /// The size, such as 32x32; the base size when left out
    #[arg(long)]
    pub size: Option<Size>,
    /// Print JSON for programs
    #[arg(long)]
    pub json: bool,
}

/// `fellwork sew`.
#[derive(Debug, ClapArgs)]
#[command(after_help = "\
Examples:
  fellwork sew saltmarsh/styles/ferryman
  fellwork sew saltmarsh/styles/ferryman --size 34x32 --json > order.json

Every figure is of the pair as it is sewn, before its wash.")]
pub struct Sew {
    /// The style's folder or its style.toml
    pub style: PathBuf,
    /// The size, such as 32x32; the base size when left out
    #[arg(long)]
    pub size: Option<Size>,
    /// Print JSON for programs
    #[arg(long)]
    pub json: bool,
}

/// `fellwork draw`.
#[derive(Debug, ClapArgs)]
#[command(
    override_usage = "fellwork draw [OPTIONS] --view <VIEW> --face <FACE> -o <FILE> <STYLE>",
    after_help = "\
Examples:
  fellwork draw saltmarsh/styles/ferryman --view front --face outside \\
      -o front.svg
  fellwork draw saltmarsh/styles/ferryman --view back --face inside \\
      --size 36x34 -o - > back.svg

The drawing is true to scale: one unit of the SVG is one millimetre of the garment."
)]
pub struct Draw {
    /// The style's folder or its style.toml
    pub style: PathBuf,
    /// Which side of the garment
    #[arg(long)]
    pub view: ViewWord,
    /// Which face of the cloth
    #[arg(long)]
    pub face: FaceWord,
    /// The size, such as 32x32; the base size when left out
    #[arg(long)]
    pub size: Option<Size>,
    /// Where the drawing goes; - prints it
    #[arg(short, long, value_name = "FILE")]
    pub output: PathBuf,
    #[command(flatten)]
    pub over: Over,
}

/// `fellwork pack`.
#[derive(Debug, ClapArgs)]
#[command(after_help = "\
Examples:
  fellwork pack saltmarsh/styles/ferryman -o ferryman.pdf
  fellwork pack saltmarsh/styles/ferryman -o ferryman.pdf --date 2026-11-25

The same style and date give the same bytes.")]
pub struct Pack {
    /// The style's folder or its style.toml
    pub style: PathBuf,
    /// Where the pack goes; - prints it
    #[arg(short, long, value_name = "FILE")]
    pub output: PathBuf,
    #[command(flatten)]
    pub over: Over,
    /// The size that is drawn, such as 32x32; the base size when left out. The chart has every size
    #[arg(long)]
    pub size: Option<Size>,
    /// The date on every page; today when left out
    #[arg(long, value_name = "YYYY-MM-DD")]
    pub date: Option<Date>,
}

/// Whether something may be written over.
#[derive(Debug, ClapArgs)]
pub struct Over {
    /// Write over a file that Fellwork did not write; never over one of a collection
    #[arg(long, requires = "output")]
    pub replace: bool,
}

/// `fellwork lay`.
#[derive(Debug, ClapArgs)]
#[command(after_help = "\
Examples:
  fellwork lay saltmarsh/styles/ferryman --seconds 20 -o lay.svg
  fellwork lay saltmarsh/styles/ferryman --pairs 30x32=2 --pairs 32x32=4 \\
      --gap \"2 mm\" -o lay.svg
  fellwork lay saltmarsh/styles/ferryman --cloth bargeman-drill --json
  fellwork lay saltmarsh/orders/spring.toml --lay 2 --seconds 120 -o lay-2.svg

Pieces are cut before the wash, with their allowances. On cloth with a finished edge the outseams of the legs lie \
on it. Of an order, the lays are those of its plan, by its own rules.

A lay that was found is kept in the collection, in lays, and found again while pieces, cloth and rules are the same; \
a longer search goes on from there and only a shorter lay takes its place. The same seed and --places give the same \
lay again; a time limit may not. Ctrl-C ends the search and takes what was found.")]
pub struct LayPieces {
    /// The style's folder or its style.toml; or an order, a file in orders
    #[arg(value_name = "STYLE|ORDER")]
    pub style: PathBuf,
    /// The cloth, a name from cloths.toml; the shell when left out
    #[arg(long, value_name = "NAME")]
    pub cloth: Option<String>,
    /// How many pairs of a size, such as 32x32=4; may be said several times and adds up. One pair of the base size when left out
    #[arg(long, value_name = "SIZE=N")]
    pub pairs: Vec<Pairs>,
    /// Of an order: which lay of its plan
    #[arg(long, value_name = "N")]
    pub lay: Option<usize>,
    #[command(flatten)]
    pub searching: Searching,
    /// Leave this much between pieces; nothing when left out
    #[arg(long, value_name = "LENGTH")]
    pub gap: Option<Length>,
    /// Lose this much at each end of a ply; 2 cm when left out
    #[arg(long, value_name = "LENGTH")]
    pub end_loss: Option<Length>,
    /// How the band is cut, in place of what the style says under [cutting]
    #[arg(long, value_name = "WAY")]
    pub band: Option<BandWord>,
    /// All pieces the same way up, for cloth with a nap
    #[arg(long)]
    pub one_way: bool,
    /// Part the width into this many shade zones; left and right of a pair lie in one
    #[arg(long, value_name = "N", value_parser = clap::value_parser!(u32).range(1..=6))]
    pub zones: Option<u32>,
    /// Mark where a roll may end, with a lap up to this
    #[arg(long, value_name = "LENGTH")]
    pub most_lap: Option<Length>,
    /// Where the drawing goes, true to scale: a name that ends in .svg, .dxf or .pdf; - prints SVG
    #[arg(short, long, value_name = "FILE")]
    pub output: Option<PathBuf>,
    #[command(flatten)]
    pub over: Over,
    /// Print JSON for programs
    #[arg(long)]
    pub json: bool,
}

impl LayPieces {
    /// Whether anything is asked that an order decides itself.
    pub fn rules_of_its_own(&self) -> bool {
        !self.pairs.is_empty()
            || self.one_way
            || self.band.is_some()
            || self.zones.is_some()
            || [self.gap, self.end_loss, self.most_lap]
                .iter()
                .any(Option::is_some)
    }
}

/// How long and from where a lay is looked for.
#[derive(Debug, ClapArgs)]
pub struct Searching {
    /// How long to look for a lay
    #[arg(long, value_name = "N", default_value_t = 10)]
    pub seconds: u64,
    /// Where chance starts
    #[arg(long, value_name = "N", default_value_t = 1)]
    pub seed: u64,
    /// Try no more places than this, so that the same seed gives the same lay
    #[arg(long, value_name = "N")]
    pub places: Option<u64>,
    /// Leave lays aside that were found before
    #[arg(long)]
    pub fresh: bool,
}

impl Searching {
    /// The same for the search itself.
    pub fn options(&self) -> Options {
        Options {
            seed: self.seed,
            limits: Limits {
                time: Some(Duration::from_secs(self.seconds)),
                places: self.places,
            },
            ..Options::default()
        }
    }

    /// When a kept lay will do.
    pub const fn kept(&self) -> Kept {
        if self.fresh {
            Kept::Never
        } else {
            Kept::LongEnough
        }
    }
}

/// `fellwork plan`.
#[derive(Debug, ClapArgs)]
#[command(after_help = "\
Examples:
  fellwork plan saltmarsh/orders/spring.toml --estimate
  fellwork plan saltmarsh/orders/spring.toml --seconds 20 -o spring-lays
  fellwork plan saltmarsh/orders/spring.toml --cloth tideline-14 --json

The lays cut the order exactly, with the least cloth that keeps its [limits]. Lengths are first estimated; then the \
chosen lays are looked for and the plan is made again with what was found, until that changes nothing. Lays are \
kept: a plan made again is quick, and better where fellwork lay has bettered one of them.")]
pub struct PlanOrder {
    /// The order, a file in orders
    pub order: PathBuf,
    /// This cloth only, a name from cloths.toml
    #[arg(long, value_name = "NAME")]
    pub cloth: Option<String>,
    /// Look for no lay: every length is an estimate
    #[arg(long, conflicts_with_all = ["output", "fresh", "seconds", "seed", "places"])]
    pub estimate: bool,
    #[command(flatten)]
    pub searching: Searching,
    /// A folder for the drawings, one SVG a lay, with the places where a roll may end
    #[arg(short, long, value_name = "DIR")]
    pub output: Option<PathBuf>,
    #[command(flatten)]
    pub over: Over,
    /// Print JSON for programs
    #[arg(long)]
    pub json: bool,
}

/// `fellwork patterns`.
#[derive(Debug, ClapArgs)]
#[command(after_help = "\
Examples:
  fellwork patterns saltmarsh/styles/ferryman --kind dxf -o patterns
  fellwork patterns saltmarsh/styles/ferryman --kind svg --size 32x32 \\
      --size 34x32 -o patterns
  fellwork patterns saltmarsh/styles/ferryman --kind hpgl --width \"90 cm\" \\
      -o patterns
  fellwork patterns saltmarsh/styles/ferryman --kind pdf --paper a4 \\
      --size 32x32 -o patterns
  fellwork patterns saltmarsh/styles/ferryman --kind roll --width \"90 cm\" \\
      --nested -o patterns

Pieces are cut before the wash, with their allowances, in true millimetres.
dxf: one file by the practice of ASTM D6673, a block for each piece in each size.
svg and hpgl: a file for each size.
pdf: tiled on A4 or A3 with register marks and a check square; roll: one page as wide as a plotter's roll; a file \
for each size, or with --nested one with all sizes on each other.
The same style and date give the same bytes.

The JSON of pdf and roll says where everything lies, in millimetres: { format, unit, files }, a file with its plan: \
pages with the part of the joined plane they show, register marks, check square and cut lines.")]
pub struct Patterns {
    /// The style's folder or its style.toml
    pub style: PathBuf,
    /// What kind of file
    #[arg(long)]
    pub kind: PatternKind,
    /// The folder the files go into; made where it is not there
    #[arg(short, long, value_name = "DIR")]
    pub output: PathBuf,
    #[command(flatten)]
    pub over: Over,
    /// A size, such as 32x32; may be said several times. Every size when left out
    #[arg(long, value_name = "SIZE")]
    pub size: Vec<Size>,
    /// The date in the files; today when left out
    #[arg(long, value_name = "YYYY-MM-DD")]
    pub date: Option<Date>,
    /// How the band is cut, in place of what the style says under [cutting]
    #[arg(long, value_name = "WAY")]
    pub band: Option<BandWord>,
    /// How wide the plotter's roll is, for hpgl and roll; 150 cm when left out
    #[arg(long, value_name = "LENGTH")]
    pub width: Option<Length>,
    /// The paper of pdf; a4 when left out
    #[arg(long)]
    pub paper: Option<PaperWord>,
    /// All sizes on each other in one file, for pdf and roll
    #[arg(long)]
    pub nested: bool,
    /// Print JSON for programs, for pdf and roll
    #[arg(long)]
    pub json: bool,
}

/// `--kind`.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub enum PatternKind {
    /// For pattern and cutting programs
    Dxf,
    /// For drawing programs, true to scale
    Svg,
    /// For a plotter or cutting table
    Hpgl,
    /// At true size, tiled on office paper
    Pdf,
    /// At true size, one page as wide as a plotter's roll
    Roll,
}

/// `--paper`.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub enum PaperWord {
    /// 210 by 297 mm
    A4,
    /// 297 by 420 mm
    A3,
}

impl From<PaperWord> for Paper {
    fn from(word: PaperWord) -> Self {
        match word {
            PaperWord::A4 => Self::A4,
            PaperWord::A3 => Self::A3,
        }
    }
}

/// `--band`.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub enum BandWord {
    /// Its length along the weft, so that it shrinks as the body does
    Weft,
    /// Its length along the warp, of cloth that was washed and no longer shrinks
    Preshrunk,
    /// Its length along the warp, eased by no more than the machine takes
    Eased,
}

impl From<BandWord> for BandCut {
    fn from(word: BandWord) -> Self {
        match word {
            BandWord::Weft => Self::AlongWeft,
            BandWord::Preshrunk => Self::Preshrunk(Shrinkage::NONE),
            BandWord::Eased => Self::StatedEase,
        }
    }
}

/// `fellwork bring`.
#[derive(Debug, ClapArgs)]
#[command(after_help = "\
Examples:
  fellwork bring harbour.dxf --list          what is in the file
  fellwork bring harbour.dxf -o saltmarsh/styles/harbour --size 32x32
  fellwork bring harbour.dxf -o saltmarsh/styles/harbour --allowance \"1 cm\" \\
      --before-wash
  fellwork bring harbour.dxf -o saltmarsh/styles/harbour \\
      --piece front=\"P-01\" --corners front=3,4,6,8,9

A piece of which the file has no sewn line needs --allowance; other widths go into [pattern.allowances]. What the \
file does not name is guessed and marked in the style file for you to confirm. Everything is brought or nothing; a \
pattern brought before stays beside the style for the versions that name it.")]
pub struct Bring {
    /// The pattern file: DXF, or SVG with its size in mm, cm or in
    #[arg(value_name = "FILE")]
    pub file: PathBuf,
    /// The style it goes into: its folder or its style.toml
    #[arg(short, long, value_name = "STYLE", required_unless_present = "list")]
    pub output: Option<PathBuf>,
    /// Only list the pieces with their corners and edges, and write nothing
    #[arg(long, conflicts_with_all = ["allowance", "before_wash"])]
    pub list: bool,
    /// The size of a file without grading, such as 32x32; or which size a name of the file is, such as M=32x32
    #[arg(long, value_name = "SIZE")]
    pub size: Vec<SizeName>,
    /// Which piece of the file is which, such as front=\"P-01\"
    #[arg(long, value_name = "PIECE=NAME")]
    pub piece: Vec<NamedPiece>,
    /// The corners at which the edges of a piece begin, in the order of the edges, such as yoke=1,2,3,4
    #[arg(long, value_name = "PIECE=CORNERS")]
    pub corners: Vec<PieceCorners>,
    /// The unit of a file that does not say it, or says it wrongly
    #[arg(long, value_name = "UNIT")]
    pub unit: Option<UnitWord>,
    /// What is cut beyond the seam, for pieces that have the cut line only
    #[arg(long, value_name = "LENGTH")]
    pub allowance: Option<Length>,
    /// Outlines are what is sewn along, without allowance, where the file does not say
    #[arg(long, conflicts_with = "allowance")]
    pub sewn: bool,
    /// The grain runs up the page on pieces without grain line
    #[arg(long)]
    pub grain_up: bool,
    /// The pattern is larger by what the first wash takes, and its file does not say by how much (our own do)
    #[arg(long)]
    pub before_wash: bool,
    /// Print JSON for programs, with --list
    #[arg(long, requires = "list")]
    pub json: bool,
}

/// `--unit`.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub enum UnitWord {
    /// Millimetres
    Mm,
    /// Centimetres
    Cm,
    /// Inches
    In,
}

impl From<UnitWord> for FileUnit {
    fn from(word: UnitWord) -> Self {
        match word {
            UnitWord::Mm => Self::Millimetre,
            UnitWord::Cm => Self::Centimetre,
            UnitWord::In => Self::Inch,
        }
    }
}

/// `fellwork bench`.
#[derive(Debug, ClapArgs)]
pub struct Bench {
    /// The collection's folder
    #[arg(value_name = "DIR")]
    pub folder: PathBuf,
    #[command(flatten)]
    pub serving: Serving,
}

/// `fellwork new`.
#[derive(Debug, ClapArgs)]
#[command(after_help = "\
Examples:
  fellwork new mylabel --name \"Harbour Wide\" --code HW-1   a new collection
  fellwork new mylabel --name \"Harbour Wide\" --label \"My Label\" \\
      --workroom \"The Weir\" --origin Ireland
  fellwork new saltmarsh --name \"Lighter\"                  another style in one
  fellwork new saltmarsh --name \"Teal\" --figure women --fit tapered \\
      --waists 24,26,28,30 --taste quiet
  fellwork new saltmarsh --name \"Ferryman Two\" \\
      --from saltmarsh/styles/ferryman

Every question of the cut has an answer already; change the rest in its style.toml, or on the bench. What only you \
know (workroom, words of patch and labels, origin) stays open until you say it, and fellwork check lists it.")]
pub struct New {
    /// The folder of a collection, or one that is not there yet
    #[arg(value_name = "DIR")]
    pub folder: PathBuf,
    /// The style's name
    #[arg(long)]
    pub name: String,
    /// Your code for it, which no other style has; made from the name's first letters when left out
    #[arg(long)]
    pub code: Option<String>,
    /// The style's folder in the collection; named after the style when left out
    #[arg(long = "folder", value_name = "NAME")]
    pub folder_name: Option<String>,
    /// The label's name, for a new collection; patch and main label say it. The style's name when left out
    #[arg(long, conflicts_with = "from")]
    pub label: Option<String>,
    /// The workroom that sews it, for a new collection; open when left out
    #[arg(long, value_name = "NAME", conflicts_with = "from")]
    pub workroom: Option<String>,
    /// Where the workroom is
    #[arg(
        long,
        value_name = "WHERE",
        requires = "workroom",
        conflicts_with = "from"
    )]
    pub place: Option<String>,
    /// The country it is made in, as its label says it; open when left out
    #[arg(long, value_name = "COUNTRY", conflicts_with = "from")]
    pub origin: Option<String>,
    /// Begin as a copy of another style of the collection, with its drawings and its pattern
    #[arg(long, value_name = "STYLE", conflicts_with_all = ["figure", "fit", "leg", "outseam", "waists", "lengths", "shell", "taste"])]
    pub from: Option<PathBuf>,
    /// Whose figure it is cut for: men (usual) or women
    #[arg(long, value_parser = worded(style::Figure::WORDS))]
    pub figure: Option<style::Figure>,
    /// How it fits: slim, straight (usual), tapered or relaxed
    #[arg(long, value_parser = worded(style::Fit::WORDS))]
    pub fit: Option<style::Fit>,
    /// How wide the leg is below the knee: usual for the fit, or wide
    #[arg(long, value_parser = worded(style::Leg::WORDS))]
    pub leg: Option<style::Leg>,
    /// How the outseam runs: shaped, or straight on the cloth's own edge (usual where the cloth has one)
    #[arg(long, value_parser = worded(style::OutseamLine::WORDS))]
    pub outseam: Option<style::OutseamLine>,
    /// The waists of its run in inches, halves with a point, with commas between: 30,31,31.5
    #[arg(long, value_name = "N,N", value_delimiter = ',', value_parser = spaced::<Tag>)]
    pub waists: Vec<Tag>,
    /// The lengths of its run in inches, halves with a point, with commas between
    #[arg(long, value_name = "N,N", value_delimiter = ',', value_parser = spaced::<Tag>)]
    pub lengths: Vec<Tag>,
    /// What it is cut from, a name from cloths.toml
    #[arg(long, value_name = "CLOTH")]
    pub shell: Option<String>,
    /// How it is sewn: felled (usual), topstitched or quiet
    #[arg(long, value_parser = worded(style::Taste::WORDS))]
    pub taste: Option<style::Taste>,
}

/// Reads a member of a list, which may have spaces round it.
fn spaced<T: FromStr>(text: &str) -> Result<T, T::Err> {
    text.trim().parse()
}

/// Reads one of the words a style file has for a choice.
fn worded<T: Copy + Send + Sync + 'static>(
    words: &'static [(&'static str, T)],
) -> impl Fn(&str) -> Result<T, String> + Clone + Send + Sync + 'static {
    move |text| {
        let found = words.iter().find(|(word, _)| *word == text);
        found.map(|(_, value)| *value).ok_or_else(|| {
            let known: Vec<&str> = words.iter().map(|(word, _)| *word).collect();
            format!("choose from {}", known.join(", "))
        })
    }
}

/// `fellwork history`.
#[derive(Debug, ClapArgs)]
#[command(after_help = "\
Examples:
  fellwork history saltmarsh/styles/ferryman
  fellwork history saltmarsh/styles/ferryman --name \"12=first sample\"
  fellwork history saltmarsh/styles/ferryman --name 12=     takes the name
  fellwork history saltmarsh/styles/ferryman --put-back 12  makes it present
  fellwork history saltmarsh/styles/ferryman --named --json
  fellwork history saltmarsh/cloths.toml        any file of a collection has one
  fellwork history saltmarsh                    all changes of all its files

A version is called by its number, by its name, or now for the one in the file. What was written by hand is a \
version too. Putting a version back is a save like any other: what was there before is kept.

The JSON: { format, file, names_problem, versions }, newest first; a version: { number, id, file, written, name, \
now, outside, same_as, changes, problem }, outside where it was written by hand, same_as an earlier version with the \
same text, changes against the version before it, null where there is none that can be read, problem why it cannot be \
read itself. Of a collection: { format, collection, changes }, a change: { file, version, way, written, changes, \
problem }.")]
pub struct HistoryOf {
    /// A style's folder, another file of a collection, or the collection's folder
    #[arg(value_name = "FILE")]
    pub file: PathBuf,
    /// Give a version a name; no words take it away
    #[arg(long, value_name = "VERSION=WORDS")]
    pub name: Option<VersionName>,
    /// Make a version the present one again
    #[arg(long, value_name = "VERSION", conflicts_with = "name")]
    pub put_back: Option<String>,
    /// Only versions with a name
    #[arg(long, conflicts_with_all = ["name", "put_back"])]
    pub named: bool,
    /// Print JSON for programs
    #[arg(long, conflicts_with_all = ["name", "put_back"])]
    pub json: bool,
}

/// `fellwork compare`.
#[derive(Debug, ClapArgs)]
#[command(after_help = "\
Examples:
  fellwork compare saltmarsh/styles/ferryman 12 now
  fellwork compare saltmarsh/styles/ferryman \"first sample\" 14 --json
  fellwork compare saltmarsh/cloths.toml 1 now

The JSON: { format, a, b, same_text, changes }, a change with its path in the file and a sentence.")]
pub struct Compare {
    /// A style's folder or another file of a collection
    #[arg(value_name = "FILE")]
    pub file: PathBuf,
    /// The one version: its number, its name, or now
    pub a: String,
    /// The other
    pub b: String,
    /// Print JSON for programs
    #[arg(long)]
    pub json: bool,
}

/// `--view`.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub enum ViewWord {
    /// From the front
    Front,
    /// From the back
    Back,
}

impl From<ViewWord> for View {
    fn from(word: ViewWord) -> Self {
        match word {
            ViewWord::Front => Self::Front,
            ViewWord::Back => Self::Back,
        }
    }
}

/// `--face`.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub enum FaceWord {
    /// The outside
    Outside,
    /// The inside, turned out: left and right change places
    Inside,
}

impl From<FaceWord> for Face {
    fn from(word: FaceWord) -> Self {
        match word {
            FaceWord::Outside => Self::Outside,
            FaceWord::Inside => Self::Inside,
        }
    }
}
