//! The style document, and what makes a text of each file of a collection sound. The files are kept by [`store`].
//!
//! A maker describes one pair of jeans in a **style file** (TOML) that lies in a **collection**: the folder with the
//! label's cloths, yarns and trims. [`load`] reads both into a [`Loaded`]: the [`StyleDoc`] with every quantity in its
//! unit, and the [`Collection`] it names things from. A mistake gives a [`Report`] with the file, line and column of
//! every problem and what would be right; there is never half a document.
//!
//! [`apply`] makes an [`Edit`] to a style's text and leaves the rest of it, comments included, as it was. [`save`]
//! puts it into the file; [`merge`] makes edits that were meant for an earlier text where nothing they touch has changed
//! since. [`KeptFile`] does the same for every file of a collection, and [`step`] takes changes back in the order of
//! time, whichever file they were in. [`difference`] says what changed between two versions of a style, as data; [`Change`] makes words of it. A pattern of the maker's own lies beside its style as plain outlines, which [`OwnPattern`] gives names;
//! [`save_beside`] puts it there. [`MeasureId`] and [`known`] are the names a style file may use; `FORMAT.md` beside this crate describes the files for
//! the people who write them.
//!
//! ```
//! let folder = tempfile::tempdir()?;
//! let loaded = style::load(&style::write_demo(folder.path())?)?;
//! let wider = loaded.with_edit(&style::Edit::set("chart.thigh.value", "63 cm")?)?;
//! let changes = style::difference(&loaded.style, &wider.style);
//! assert_eq!(changes[0].path, "chart.thigh.value");
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod band_and_hem;
mod by_measure;
mod chart;
mod choices;
mod cloths_file;
mod collection;
mod content;
mod cutting;
pub mod demo;
mod details;
mod difference;
mod document;
mod drawing;
mod drawing_text;
mod edges;
mod edit;
mod files;
mod ids;
pub mod known;
mod last_sound;
mod lays;
mod load;
mod load_order;
mod measures;
mod merge;
mod muted;
mod old_subjects;
mod order;
mod own;
mod parse;
mod path;
mod quantities;
mod range;
mod read_chart;
mod read_collection;
mod read_order;
mod read_seams;
mod read_style;
mod read_wash;
mod reader;
mod report;
mod save;
mod seams;
mod size;
mod start;
mod stated_values;
mod subject;
mod tag;
mod teller;
mod wash;
mod why;

pub use band_and_hem::{Band, BandMethod, Hem, HemEnds, HemJoin, RowEnding};
pub use by_measure::ByMeasure;
pub use chart::{Break, ChartEntry};
pub use cloths_file::{add_cloth, cloths_of};
pub use collection::{
    Cloth, ClothUse, Collection, Supply, Tanning, Trim, TrimKind, Units, Workroom, Yarn,
};
pub use cutting::{Along, BandCutting, Cutting, Diagonals, SkewCutting, WashMark, mean_shrinkage};
pub use details::{
    ArtPath, BackPocket, BackPockets, Bartacks, Closing, CoinPocket, CoinShape, Decoration,
    ExtraPocket, Fly, FlyTopstitch, Label, LabelFold, Letters, Lining, Loops, OutseamLine, Patch,
    PatchThrough, PocketBag, Pockets, Purpose, Rivets, Shape, Side,
};
pub use difference::{
    Change, Columns as ChangeColumns, Kind as ChangeKind, Part as ChangePart, PocketValue,
    ToldChange, Value, Written, difference,
};
pub use document::{ClothRefs, Figure, Fit, Identity, StyleDoc};
pub use drawing::{Drawing, DrawnLine, DrawnStep, Spot};
pub use drawing_text::read_drawing;
pub use edges::{EdgeId, HALF_LINING};
pub use edit::{Edit, EditValue, apply};
pub use files::{
    FileKind, KeepError, KeptFile, SHARED_FILES, kept_files, step, take_note, timeline,
};
pub use ids::{MeasureId, PieceId, SeamId};
pub use last_sound::{Sound, last_sound};
pub use lays::{KeptBounds, KeptLay, KeptPlace, LAYS_FOLDER, keep_lay, kept_lay};
pub use load::{
    CLOTHS_FILE, Loaded, STYLE_FILE, TRIMS_FILE, YARNS_FILE, list_styles, load, load_collection,
};
pub use load_order::{ORDERS_FOLDER, is_order, list_orders, load_order};
pub use measures::{LeftOut, Level, Measure};
pub use merge::{Clash, Merged, merge};
pub use muted::Muted;
pub use order::{
    ClothOrder, END_LOSS, LoadedOrder, MOST_LAYS, MOST_PLIES, Order, OrderLine, OrderWay, Roll,
    SpreadLimits,
};
pub use own::{
    Beside, Drawn, OWN_PIECES, OwnEdge, OwnOutline, OwnPattern, OwnPiece, OwnPieceName, PieceBlock,
    PieceFile, Place, own_piece, piece_file_text, read_piece_file, save_beside, toml_text,
    with_pattern,
};
pub use parse::parse;
pub use path::{DocPath, DocPathError, Step};
pub use range::{Amount, Range, range_of, ranges};
pub use report::{Diagnostic, MOST_PROBLEMS, Report};
pub use save::{
    SaveError, Saved, history, list_revisions, name_version, names_problem, names_report,
    read_revision, save, save_next,
};
pub use seams::{Construction, Lap, Ply, RowSpec, Seam, SeamSpec};
pub use size::{Size, SizeError, Sizes};
pub use start::{
    Answers, BroughtPattern, LabelWords, Leg, NewStyle, OFFERED_LENGTHS, StartError, Taste,
    USUAL_LENGTHS, can_begin_in, copy_style, foresee, new_style, new_style_of_pattern,
    offered_waists, usual_grade, usual_measure, usual_waists, write_demo,
};
pub use stated_values::{
    Stated, stated_by_cloth, stated_by_order, stated_by_style, stated_by_supplies, stated_by_trim,
    stated_by_yarn,
};
pub use store::{
    COLLECTION_FILE, Change as FileChange, Direction, History, LARGEST_FILE, LONGEST_NAME,
    NameError, REVISIONS_FOLDER, ReadError, Revision, RevisionId, Stamp, Timeline, VersionedFile,
    Way, clear_unfinished, collection_of, list_versions, read_bytes, read_text, real, unfinished,
};
pub use subject::{PartId, Subject, Valued};
pub use tag::{Tag, TagError};
pub use teller::{Teller, VersionRead};
pub use wash::{SetAfter, Wash, WashFinish, WashStep, WashedBy};
pub use why::Why;
