//! What comes of a change: made on the text the page shows, or beside what changed meanwhile, or refused with the reason.

use style::{Direction, Edit, KeepError};
use trade::System;
use words::Words;

use crate::answer::{Verdict, placed, sentences};
use crate::part::notice::Notice;
use crate::session::{Disk, Edited, Refused, Session, clashes_in_words};
use crate::state::Bench;

/// How often a change is tried again when somebody writes between our look and our save.
const TRIES: usize = 3;
/// How many changes of others are told one by one.
const MOST_TOLD: usize = 3;

/// What came of a request, before the page is drawn again.
#[derive(Default)]
pub(crate) struct Outcome {
    pub(crate) came: Verdict,
    pub(crate) said: String,
    pub(crate) problems: Vec<String>,
    pub(crate) reset: bool,
    pub(crate) notice: Notice,
}

impl Outcome {
    fn refused(came: Verdict, problem: impl Into<String>, notice: Notice) -> Self {
        Self {
            came,
            problems: vec![problem.into()],
            notice,
            ..Self::default()
        }
    }

    /// After a step through the history every field shows what the file says.
    fn putting_back(self, say: &'static Words, direction: Direction) -> Self {
        let said = match (self.came, direction) {
            (Verdict::Done, Direction::Back) => say.answer_undone(self.said),
            (Verdict::Done, Direction::Forward) => say.answer_made_again(self.said),
            _ => self.said,
        };
        Self {
            said,
            reset: true,
            ..self
        }
    }
}

/// Makes edits that were meant for the revision a page shows. What was changed meanwhile, in another tab or in an editor,
/// is taken over; where the edits touch it they are refused.
pub(crate) fn edited(
    session: &mut Session,
    revision: &str,
    edits: &[Edit],
    system: System,
) -> Outcome {
    let say = session.say();
    let mut told = Notice::None;
    for _ in 0..TRIES {
        match caught_up(session) {
            Notice::None => {}
            broken @ Notice::Broken(_) => {
                let problem = say.answer_unreadable_now();
                return Outcome::refused(Verdict::Behind, problem, broken);
            }
            taken_over => told = taken_over,
        }
        match session.edit(revision, edits, system) {
            Ok(edited) => {
                return Outcome {
                    said: words(say, edited),
                    notice: told,
                    ..Outcome::default()
                };
            }
            Err(Refused::Stale) => {}
            Err(refused) => return refusal(say, refused, told),
        }
    }
    let problem = say.answer_being_changed();
    Outcome::refused(Verdict::Behind, problem, told)
}

/// What was changed, and what others changed meanwhile.
fn words(say: &'static Words, edited: Edited) -> String {
    let more = edited.meanwhile.len().saturating_sub(MOST_TOLD);
    let mut told: Vec<String> = edited.meanwhile.into_iter().take(MOST_TOLD).collect();
    if more > 0 {
        told.push(say.answer_meanwhile_more(more));
    }
    match (edited.words.as_str(), told.is_empty()) {
        (words, true) => words.to_owned(),
        ("", false) => say.answer_meanwhile(told.join("; ")),
        (words, false) => say.say(words::say::AnswerAlsoMeanwhile {
            change: words,
            changes: told.join("; "),
        }),
    }
}

/// Steps through the history when the page, the session and the file all hold the same text.
pub(crate) fn stepped(
    session: &mut Session,
    revision: &str,
    step: impl FnOnce(&mut Session) -> Result<String, Refused>,
) -> Outcome {
    let say = session.say();
    match session.look_at_disk() {
        Disk::Same => {}
        changed => {
            let problem = say.answer_load_again();
            return Outcome::refused(Verdict::Behind, problem, notice(say, changed));
        }
    }
    if session.loaded().revision.as_str() != revision {
        let problem = say.answer_earlier_state();
        return Outcome::refused(Verdict::Behind, problem, Notice::None);
    }
    match step(session) {
        Ok(said) => Outcome {
            said,
            ..Outcome::default()
        },
        // Somebody wrote between our look and our save.
        Err(Refused::Stale) => {
            let problem = say.answer_same_moment();
            Outcome::refused(
                Verdict::Behind,
                problem,
                notice(say, session.look_at_disk()),
            )
        }
        Err(refused) => refusal(say, refused, Notice::None),
    }
}

/// Takes the last change of the collection back, whichever file it was in, or makes the one again that was taken back
/// last. `token` names the change that the page showed.
pub(crate) fn step(
    bench: &Bench,
    (session, style): (&mut Session, &str),
    (revision, token): (&str, Option<&str>),
    direction: Direction,
    system: System,
) -> Outcome {
    let outcome = stepped(session, revision, |session| {
        let done = style::step(bench.folder(), direction, token);
        match done {
            Ok(change) => {
                session.follow();
                Ok(bench.words(&change, style, system).to_string())
            }
            Err(KeepError::Nothing) => Err(Refused::Nothing),
            Err(KeepError::Behind) => Err(Refused::Earlier),
            Err(KeepError::Invalid(report)) => Err(Refused::Problems(report)),
            Err(other) => Err(Refused::Failed(other.to_string())),
        }
    });
    outcome.putting_back(bench.say(), direction)
}

/// What became of a change of a file that is not this style's: the style follows, whether the change was made or somebody
/// else's was found.
pub(crate) fn elsewhere<T>(
    session: &mut Session,
    done: Result<T, KeepError>,
    words: String,
) -> Outcome {
    let say = session.say();
    session.follow();
    let refused = |came, problem: String| Outcome::refused(came, problem, Notice::None);
    match done {
        Ok(_) => Outcome {
            said: words,
            ..Outcome::default()
        },
        Err(KeepError::Invalid(report)) => refusal(say, Refused::Problems(report), Notice::None),
        Err(KeepError::Clash { clashes, .. }) if !clashes.is_empty() => refusal(
            say,
            Refused::Clash(clashes_in_words(say, &clashes, &[], System::Metric)),
            Notice::None,
        ),
        Err(error @ KeepError::Clash { .. }) => {
            refused(Verdict::Behind, say.collection_cloths_behind(error))
        }
        Err(
            error @ (KeepError::StyleBreaks { .. }
            | KeepError::Unknown(_)
            | KeepError::NoSuchVersion(_)),
        ) => refused(Verdict::Refused, error.to_string()),
        Err(error @ (KeepError::Nothing | KeepError::Behind)) => {
            refused(Verdict::Nothing, error.to_string())
        }
        Err(error @ KeepError::Save(_)) => refused(Verdict::Failed, error.to_string()),
    }
}

fn refusal(say: &'static Words, refused: Refused, notice: Notice) -> Outcome {
    match refused {
        Refused::Problems(report) => Outcome {
            came: Verdict::Refused,
            problems: sentences(say, &report),
            notice,
            ..Outcome::default()
        },
        Refused::Clash(problems) => Outcome {
            came: Verdict::Behind,
            problems,
            notice,
            ..Outcome::default()
        },
        Refused::Unknown | Refused::Stale => {
            let problem = say.answer_state_not_kept();
            Outcome::refused(Verdict::Behind, problem, notice)
        }
        Refused::Earlier => {
            let problem = say.answer_earlier_state();
            Outcome::refused(Verdict::Behind, problem, notice)
        }
        Refused::Nothing => {
            let problem = say.answer_nothing_to_step();
            Outcome::refused(Verdict::Nothing, problem, notice)
        }
        Refused::Failed(words) => Outcome::refused(Verdict::Failed, words, notice),
    }
}

/// Takes over what somebody else wrote into the file, where it is sound. Every change was saved when it was made and the
/// version before it is kept, so this loses nothing.
pub(crate) fn caught_up(session: &mut Session) -> Notice {
    match session.look_at_disk() {
        Disk::Changed(on_disk, words) => {
            session.take_over(*on_disk);
            Notice::TakenOver(words)
        }
        other => notice(session.say(), other),
    }
}

/// What the page says about the file on disk.
pub(crate) fn notice(say: &'static Words, disk: Disk) -> Notice {
    match disk {
        Disk::Same => Notice::None,
        Disk::Changed(_, words) => Notice::Changed(words),
        Disk::Broken(report) => Notice::Broken(placed(say, &report)),
    }
}
