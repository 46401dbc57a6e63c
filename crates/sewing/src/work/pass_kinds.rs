//! What is done in a pass of a seam.

/// What a pass does.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub(super) enum Does {
    /// Covers raw edges.
    Neatens,
    /// Joins the plies before anything else holds them.
    Joins,
    /// What the seam is sewn for.
    Holds(Holding),
}

/// How the rows that hold a seam hold it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub(super) enum Holding {
    /// Through both plies turned into each other.
    Fell,
    /// Along the seam from outside.
    Topstitch,
    /// Through the turned edge.
    Hem,
    /// Through a piece onto another.
    Set,
    /// The band's row round its ends and its top.
    Round,
    /// Through a strip wrapped round an edge.
    Bind,
    /// Through an edge turned in once.
    TurnIn,
    /// Outside the edges of a seam turned over.
    Enclose,
    /// Along a strip folded in a folder.
    Strip,
    /// Through one ply, to be looked at.
    Decorate,
}

impl Does {
    pub const fn holds(self) -> bool {
        matches!(self, Does::Holds(_))
    }

    /// The end of a code: "fell".
    pub const fn code(self) -> &'static str {
        match self {
            Does::Neatens => "neaten",
            Does::Joins => "join",
            Does::Holds(holding) => match holding {
                Holding::Fell => "fell",
                Holding::Topstitch => "topstitch",
                Holding::Hem => "hem",
                Holding::Set => "set",
                Holding::Round => "round",
                Holding::Bind => "bind",
                Holding::TurnIn => "turn-in",
                Holding::Enclose => "enclose",
                Holding::Strip => "sew",
                Holding::Decorate => "stitch",
            },
        }
    }
}
