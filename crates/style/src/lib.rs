//! The style document, and the only room that reads or writes files.
//!
//! A maker describes one pair of jeans in a **style file** (TOML) that lies in a **collection**: the folder with the
//! label's cloths, yarns and trims. [`load`] reads both into a [`Loaded`]: the [`StyleDoc`] with every quantity in its
//! unit, and the [`Collection`] it names things from. A mistake gives a [`Report`] with the file, line and column of
//! every problem and what would be right; there is never half a document.
//!
//! [`apply`] makes an [`Edit`] to a style's text and leaves the rest of it, comments included, as it was. [`save`]
//! writes it so that the file is always a whole earlier or a whole later version, keeps every earlier one, and never
//! overwrites what somebody else wrote in the meantime; [`merge`] makes edits that were meant for an earlier text where
//! nothing they touch has changed since. [`History`] lists every version, with the names given by [`name_version`], and
//! where undo and redo lead. [`difference`] says in words what changed between two
//! versions. A pattern of the maker's own lies beside its style as plain outlines, which [`OwnPattern`] gives names;
//! [`save_beside`] puts it there. [`known`] lists every name a style file may use; `FORMAT.md` beside this crate describes the files for
//! the people who write them.

mod chart;
mod cloths_file;
mod collection;
mod cutting;
pub mod demo;
mod details;
mod difference;
mod document;
mod drawing;
mod drawing_text;
mod edit;
mod history;
pub mod known;
mod lays;
mod load;
mod load_order;
mod making;
mod mend;
mod merge;
mod muted;
mod names;
mod order;
mod own;
mod parse;
mod path;
mod quantities;
mod read_chart;
mod read_collection;
mod read_order;
mod read_seams;
mod read_style;
mod reader;
mod report;
mod save;
mod seams;
mod size;
mod start;

pub use chart::{Break, ChartEntry};
pub use cloths_file::{
    CLOTHS_FILE, ClothsError, add_cloth, cloths_revision, cloths_steps, edit_cloths, redo_cloths,
    undo_cloths,
};
pub use collection::{Cloth, ClothUse, Collection, Tanning, Trim, TrimKind, Units, Workroom, Yarn};
pub use cutting::{Along, BandCutting, Cutting, Diagonals, SkewCutting, WashMark, mean_shrinkage};
pub use details::{
    ArtPath, BackPocket, BackPockets, Bartacks, Closing, CoinPocket, CoinShape, Decoration,
    ExtraPocket, Fly, Label, LabelFold, Letters, Lining, Loops, OutseamLine, Patch, PocketBag,
    Pockets, Purpose, Rivets, Shape, Side,
};
pub use difference::{Change, difference, difference_in};
pub use document::{ClothRefs, Figure, Fit, Identity, StyleDoc};
pub use drawing::{Drawing, DrawnLine, DrawnStep, Spot};
pub use drawing_text::read_drawing;
pub use edit::{Edit, EditValue, apply};
pub use history::{History, Steps};
pub use lays::{KeptBounds, KeptLay, KeptPlace, LAYS_FOLDER, keep_lay, kept_lay};
pub use load::{
    COLLECTION_FILE, LARGEST_FILE, Loaded, RevisionId, STYLE_FILE, list_styles, load,
    load_collection,
};
pub use load_order::{ORDERS_FOLDER, is_order, list_orders, load_order};
pub use making::{Band, BandMethod, Hem, HemEnds, HemJoin, RowEnding};
pub use mend::{Sound, last_sound};
pub use merge::{Clash, Merged, merge};
pub use muted::Muted;
pub use names::{LONGEST_NAME, NameError, name_version};
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
pub use report::{Diagnostic, MOST_PROBLEMS, Report};
pub use save::{
    REVISIONS_FOLDER, Revision, SaveError, Saved, keep_before, list_revisions, read_revision, save,
    save_next,
};
pub use seams::{Construction, Lap, Ply, RowSpec, Seam, SeamSpec};
pub use size::{Size, SizeError, Sizes};
pub use start::{
    Answers, BroughtPattern, Leg, NewStyle, OFFERED_LENGTHS, StartError, Taste, USUAL_LENGTHS,
    can_begin_in, copy_style, foresee, new_style, new_style_of_pattern, offered_waists, usual_code,
    usual_grade, usual_measure, usual_waists, write_demo,
};
