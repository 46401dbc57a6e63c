//! What an operation is known by: a pass of a seam, or a task of its own.

use style::SeamId;
use words::{Said, key};

use super::pass_kinds::{Does, Holding};

words::identities! {
    /// An operation that is no pass of a seam.
    pub enum Task {
        /// Belt loops cut from their strip.
        LoopsCut = "loops-cut" => key::TASK_LOOPS_CUT,
        /// Edges of the coin pocket turned in.
        CoinPocketPress = "coin-pocket-press" => key::TASK_COIN_POCKET_PRESS,
        /// Corners of the coin pocket tacked.
        CoinPocketBartacks = "coin-pocket-bartacks" => key::TASK_COIN_POCKET_BARTACKS,
        /// Corners of the coin pocket riveted.
        CoinPocketRivets = "coin-pocket-rivets" => key::TASK_COIN_POCKET_RIVETS,
        /// Linings laid into the back pockets.
        BackPocketsLine = "back-pockets-line" => key::TASK_BACK_POCKETS_LINE,
        /// Edges of the back pockets turned in.
        BackPocketsPress = "back-pockets-press" => key::TASK_BACK_POCKETS_PRESS,
        /// Edges of the extra pocket turned in.
        ExtraPocketPress = "extra-pocket-press" => key::TASK_EXTRA_POCKET_PRESS,
        /// Buttonholes of the fly.
        FlyButtonholes = "fly-buttonholes" => key::TASK_FLY_BUTTONHOLES,
        /// Left tape of the zip sewn on.
        ZipLeft = "zip-left" => key::TASK_ZIP_LEFT,
        /// Strip with the buttonholes of the fly closed along its front edge.
        FlyStripClose = "fly-strip-close" => key::TASK_FLY_STRIP_CLOSE,
        /// Foot of the fly shield closed.
        FlyShieldClose = "fly-shield-close" => key::TASK_FLY_SHIELD_CLOSE,
        /// Waistband marked.
        BandMark = "band-mark" => key::TASK_BAND_MARK,
        /// Inner edges of the hip pocket facings turned in.
        FacingPress = "facing-press" => key::TASK_FACING_PRESS,
        /// Pocket bags held to waist and outseam.
        BagsBaste = "bags-baste" => key::TASK_BAGS_BASTE,
        /// Fly shield joined to the right front.
        FlyShieldJoin = "fly-shield-join" => key::TASK_FLY_SHIELD_JOIN,
        /// Joined edges of shield and right front overedged.
        FlyShieldNeaten = "fly-shield-neaten" => key::TASK_FLY_SHIELD_NEATEN,
        /// Rivets that the back pockets hide.
        BackPocketsRivets = "back-pockets-rivets" => key::TASK_BACK_POCKETS_RIVETS,
        /// Labels held in the allowance of the outseam.
        LabelsSeam = "labels-seam" => key::TASK_LABELS_SEAM,
        /// Ends of the waistband closed.
        BandEnds = "band-ends" => key::TASK_BAND_ENDS,
        /// Ends of the waistband turned in.
        BandEndsTurn = "band-ends-turn" => key::TASK_BAND_ENDS_TURN,
        /// Belt loops set.
        LoopsSet = "loops-set" => key::TASK_LOOPS_SET,
        /// Thread ends of the hems tied.
        HemTie = "hem-tie" => key::TASK_HEM_TIE,
        /// Corners of the back pockets tacked.
        BartacksBackPockets = "bartacks-back-pockets" => key::TASK_BARTACKS_BACK_POCKETS,
        /// Ends of the pocket mouths tacked.
        BartacksMouths = "bartacks-mouths" => key::TASK_BARTACKS_MOUTHS,
        /// Fly tacked.
        BartacksFly = "bartacks-fly" => key::TASK_BARTACKS_FLY,
        /// Crotch tacked.
        BartacksCrotch = "bartacks-crotch" => key::TASK_BARTACKS_CROTCH,
        /// Buttonhole of the waistband.
        BandButtonhole = "band-buttonhole" => key::TASK_BAND_BUTTONHOLE,
        /// Button of the waistband.
        BandButton = "band-button" => key::TASK_BAND_BUTTON,
        /// Buttons of the fly.
        FlyButtons = "fly-buttons" => key::TASK_FLY_BUTTONS,
        /// Rivets of the pocket mouths.
        MouthRivets = "mouth-rivets" => key::TASK_MOUTH_RIVETS,
        /// Anything set that has no place of its own.
        SetRest = "set-rest" => key::TASK_SET_REST,
        /// Thread ends trimmed before the wash.
        TrimThreads = "trim-threads" => key::TASK_TRIM_THREADS,
        /// The first wash.
        Wash = "wash" => key::TASK_WASH,
        /// The last look.
        LookOver = "look-over" => key::TASK_LOOK_OVER,
    }
}

/// What an operation is known by, the same while the style keeps this work.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct OperationKey {
    of: Of,
    /// Which of those that do the same, from 1.
    nth: usize,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
enum Of {
    Seam(SeamId, SeamWork),
    Task(Task),
}

/// What is done to a seam.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub(super) enum SeamWork {
    /// A pass of it is sewn.
    Pass(Does),
    /// It is pressed.
    Press,
    /// It is sewn, though it has no rows at all.
    Sew,
    /// Turned-in edges are cut away where it has to cross them.
    Thin,
}

impl OperationKey {
    pub(super) const fn of_seam(seam: SeamId, work: SeamWork) -> OperationKey {
        OperationKey {
            of: Of::Seam(seam, work),
            nth: 1,
        }
    }

    /// The task, where it is no pass of a seam.
    #[must_use]
    pub const fn task(self) -> Option<Task> {
        match self.of {
            Of::Task(task) => Some(task),
            Of::Seam(..) => None,
        }
    }

    /// The seam, where it is work on one.
    #[must_use]
    pub const fn seam(self) -> Option<SeamId> {
        match self.of {
            Of::Seam(seam, _) => Some(seam),
            Of::Task(_) => None,
        }
    }

    /// How pages and programs write it: "inseam-fell", and "inseam-fell-2" for the second that does the same.
    #[must_use]
    pub fn code(self) -> String {
        let code = match self.of {
            Of::Seam(seam, work) => of_seam(seam, work),
            Of::Task(task) => task.code().to_owned(),
        };
        match self.nth {
            1 => code,
            nth => format!("{code}-{nth}"),
        }
    }

    /// The next that does the same.
    pub(super) const fn next(self) -> OperationKey {
        OperationKey {
            nth: self.nth + 1,
            ..self
        }
    }
}

impl From<Task> for OperationKey {
    fn from(task: Task) -> OperationKey {
        OperationKey {
            of: Of::Task(task),
            nth: 1,
        }
    }
}

/// Where its name says what is done to a seam, the code need not.
fn of_seam(seam: SeamId, work: SeamWork) -> String {
    let stem = seam.code().replace('_', "-");
    let done = match work {
        SeamWork::Press => "press",
        SeamWork::Sew => "sew",
        SeamWork::Thin => "thin",
        SeamWork::Pass(does) => {
            if is_in_its_name(seam, does) {
                return stem;
            }
            does.code()
        }
    };
    format!("{stem}-{done}")
}

fn is_in_its_name(seam: SeamId, does: Does) -> bool {
    match does {
        Does::Joins => seam == SeamId::BagClose,
        Does::Neatens => false,
        Does::Holds(holding) => {
            seam != SeamId::Band
                && matches!(
                    holding,
                    Holding::Hem | Holding::Set | Holding::Strip | Holding::Decorate
                )
        }
    }
}

/// An operation with what it is called.
pub(super) struct Called {
    pub key: OperationKey,
    pub name: Said,
}

impl From<Task> for Called {
    fn from(task: Task) -> Called {
        Called {
            key: task.into(),
            name: task.into(),
        }
    }
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::*;

    #[test]
    fn no_two_operations_have_one_code() {
        let holds = [
            Holding::Fell,
            Holding::Topstitch,
            Holding::Hem,
            Holding::Set,
            Holding::Round,
            Holding::Bind,
            Holding::TurnIn,
            Holding::Enclose,
            Holding::Strip,
            Holding::Decorate,
        ];
        // Where a seam's name says what is done to it, only that is done to it.
        let passes = holds.map(Does::Holds).into_iter();
        let passes = passes
            .chain([Does::Joins, Does::Neatens])
            .map(SeamWork::Pass);
        let works: Vec<SeamWork> = passes
            .chain([SeamWork::Press, SeamWork::Sew, SeamWork::Thin])
            .collect();
        let mut seen = BTreeSet::new();
        for seam in SeamId::ALL {
            let mut own = BTreeSet::new();
            for work in &works {
                own.insert(OperationKey::of_seam(seam, *work).code());
            }
            for code in own {
                assert!(seen.insert(code.clone()), "{code} is of two seams");
            }
        }
        for task in Task::ALL {
            let code = OperationKey::from(task).code();
            assert!(seen.insert(code.clone()), "{code} is of a task and a seam");
        }
        let again = OperationKey::from(Task::HemTie).next();
        assert_eq!(again.code(), "hem-tie-2");
    }
}
