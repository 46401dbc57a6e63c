//! The story sheet of a style, with its pictures.

use std::sync::atomic::AtomicBool;

use flat::View;
use jiff::civil::Date;
use jpeg_encoder::{ColorType, Encoder};
use look::{Light, Picture, PlaceId, Scene, Wear, Window, picture, whereabouts};
use papers::{PaperError, Story, StoryPicture, story_book, story_page};
use sewing::{Face, Garment};
use style::{Loaded, PartId, SeamId, Size, Subject};
use trade::Length;
use words::{Words, key};

use crate::asked::{size_of, wanted};
use crate::error::JobError;

/// What story is told.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StoryOrder {
    /// The size that is drawn and counted; `None` is the base size.
    pub size: Option<Size>,
    /// How worn the pair is drawn.
    pub wear: Wear,
    /// Threads that draw.
    pub threads: usize,
}

/// A story, ready for paper and for the web.
#[derive(Clone, Debug, PartialEq)]
pub struct MadeStory(Story);

impl MadeStory {
    /// One page of the web that needs nothing beside itself.
    #[must_use]
    pub fn page(&self) -> String {
        story_page(&self.0)
    }

    /// One page of paper.
    ///
    /// # Errors
    /// It cannot be set.
    pub fn pdf(&self, date: Date) -> Result<Vec<u8>, JobError> {
        Ok(story_book(&self.0, Some(date))?.pdf)
    }
}

/// Draws and tells the story.
///
/// # Errors
/// The size is unknown, a picture cannot be written, or it was cancelled.
pub fn story(
    loaded: &Loaded,
    order: &StoryOrder,
    words: &Words,
    cancel: &AtomicBool,
) -> Result<MadeStory, JobError> {
    let size = size_of(&loaded.style, order.size)?;
    let garment = sewing::make(&loaded.style, &loaded.collection, size);
    let mut eye = Eye {
        garment: &garment,
        wear: order.wear,
        threads: order.threads,
        scenes: Vec::new(),
    };
    let mut pair = Vec::new();
    for (view, said) in [
        (View::Front, key::STORY_FRONT),
        (View::Back, key::STORY_BACK),
    ] {
        wanted(cancel)?;
        let shot = Shot {
            view,
            face: Face::Outside,
            place: PlaceId::Whole,
            width: PlaceId::Whole.usual_width(),
        };
        pair.extend(eye.sees(&shot, WHOLE, words.named(said))?);
    }
    let mut trouble = None;
    let mut close_up = |subject: &Subject, said: &str| {
        let shot = shot_of(subject, loaded)?;
        let ended = wanted(cancel);
        let seen = ended.and_then(|()| eye.sees(&shot, CLOSE, said));
        seen.unwrap_or_else(|why| {
            trouble.get_or_insert(why);
            None
        })
    };
    let mut told = papers::story(loaded, &garment, pair, &mut close_up, words);
    if order.wear > Wear::RAW {
        told.note = words.story_drawn_worn(size);
    }
    match trouble {
        Some(why) => Err(why),
        None => Ok(MadeStory(told)),
    }
}

/// Pixels across and down of the whole pair, and of a close-up.
const WHOLE: (u32, u32) = (640, 960);
const CLOSE: (u32, u32) = (600, 540);
/// Of 100; beyond it bytes grow faster than anybody sees.
const QUALITY: u8 = 82;

/// Where a detail is seen.
struct Shot {
    view: View,
    face: Face,
    place: PlaceId,
    width: Length,
}

/// What draws; each side is laid out once.
struct Eye<'a> {
    garment: &'a Garment,
    wear: Wear,
    threads: usize,
    scenes: Vec<(View, Face, Scene)>,
}

impl Eye<'_> {
    /// `None` where the place is not on this pair.
    fn sees(
        &mut self,
        shot: &Shot,
        (wide, high): (u32, u32),
        said: &str,
    ) -> Result<Option<StoryPicture>, JobError> {
        let Some(middle) = whereabouts(self.garment, shot.view, shot.face, shot.place) else {
            return Ok(None);
        };
        let known =
            |(view, face, _): &(View, Face, Scene)| (*view, *face) == (shot.view, shot.face);
        let at = match self.scenes.iter().position(known) {
            Some(at) => at,
            None => {
                let Some(scene) = Scene::of(self.garment, shot.view, shot.face) else {
                    return Ok(None);
                };
                self.scenes.push((shot.view, shot.face, scene));
                self.scenes.len() - 1
            }
        };
        let window = Window {
            middle,
            width: shot.width,
            wide,
            high,
        };
        let scene = &self.scenes[at].2;
        let drawn = picture(scene, &window, &Light::default(), self.wear, self.threads);
        Ok(Some(jpeg(&drawn, said)?))
    }
}

fn jpeg(drawn: &Picture, said: &str) -> Result<StoryPicture, JobError> {
    let fail = |reason: String| PaperError::Drawing {
        place: said.to_owned(),
        reason,
    };
    let side = |pixels: u32| u16::try_from(pixels).map_err(|why| fail(why.to_string()));
    let (wide, high) = (side(drawn.wide)?, side(drawn.high)?);
    let mut bytes = Vec::new();
    Encoder::new(&mut bytes, QUALITY)
        .encode(&drawn.rgb, wide, high, ColorType::Rgb)
        .map_err(|why| fail(why.to_string()))?;
    Ok(StoryPicture::from_jpeg(
        &bytes, drawn.wide, drawn.high, said,
    )?)
}

/// Where what is told about is seen best; `None` for what shows nowhere.
fn shot_of(subject: &Subject, loaded: &Loaded) -> Option<Shot> {
    use PlaceId as At;
    let outside = |view, place: At| Shot {
        view,
        face: Face::Outside,
        place,
        width: place.usual_width(),
    };
    let inside = |view, place: At| Shot {
        face: Face::Inside,
        ..outside(view, place)
    };
    Some(match subject {
        Subject::Cloth(key) if *key == loaded.style.cloth.shell => Shot {
            width: Length::mm(24.0),
            ..outside(View::Front, At::Knee)
        },
        // The cloth's own edges lie open on the inside.
        Subject::Seam(SeamId::Outseam) => inside(View::Front, At::Outseam),
        Subject::Seam(seam) | Subject::Row(seam, _) | Subject::Rows(seam, _, _) => {
            let (view, place) = of_seam(*seam)?;
            outside(view, place)
        }
        Subject::Part(PartId::Labels) => inside(View::Back, At::Label),
        Subject::Part(part) => {
            let (view, place) = of_part(*part)?;
            outside(view, place)
        }
        Subject::Label(_) => inside(View::Back, At::Label),
        Subject::Rivet(_) | Subject::RivetOn(_) => outside(View::Front, At::CoinPocket),
        Subject::Trim(key) => {
            let patch = loaded.style.patch.as_ref();
            let is_patch = patch.is_some_and(|patch| patch.trim == *key);
            is_patch.then(|| outside(View::Back, At::Patch))?
        }
        _ => return None,
    })
}

/// Where a seam is seen from outside; `None` for one that is covered.
fn of_seam(seam: SeamId) -> Option<(View, PlaceId)> {
    Some(match seam {
        SeamId::Outseam => (View::Front, PlaceId::Outseam),
        SeamId::Inseam => (View::Back, PlaceId::Fork),
        SeamId::Seat | SeamId::Yoke => (View::Back, PlaceId::YokeSeam),
        SeamId::FrontRise | SeamId::Fly => (View::Front, PlaceId::FlyFoot),
        SeamId::Band => (View::Front, PlaceId::BandButton),
        SeamId::Hem => (View::Front, PlaceId::Hem),
        SeamId::Mouth => (View::Front, PlaceId::PocketMouth),
        SeamId::CoinHem | SeamId::CoinSet => (View::Front, PlaceId::CoinPocket),
        SeamId::BackPocketHem | SeamId::BackPocketSet => (View::Back, PlaceId::BackPocketCorner),
        SeamId::LoopEdge => (View::Back, PlaceId::BeltLoop),
        SeamId::Decoration => (View::Back, PlaceId::BackPocketRight),
        SeamId::PatchSet => (View::Back, PlaceId::Patch),
        SeamId::BandJoin
        | SeamId::FlyEdge
        | SeamId::FacingSet
        | SeamId::BagClose
        | SeamId::ExtraHem
        | SeamId::ExtraSet
        | SeamId::LabelSet => return None,
    })
}

/// Where a part is seen from outside; `None` for one that is inside, or no part but a rule of the whole.
fn of_part(part: PartId) -> Option<(View, PlaceId)> {
    Some(match part {
        PartId::Fly | PartId::Zip | PartId::Bartacks => (View::Front, PlaceId::FlyFoot),
        PartId::Band | PartId::Waistband | PartId::BandButton => (View::Front, PlaceId::BandButton),
        PartId::CoinPocket => (View::Front, PlaceId::CoinPocket),
        PartId::PocketMouth | PartId::PocketBag => (View::Front, PlaceId::PocketMouth),
        PartId::LeftBackPocket => (View::Back, PlaceId::BackPocketLeft),
        PartId::RightBackPocket | PartId::BackPockets | PartId::BackPocket => {
            (View::Back, PlaceId::BackPocketRight)
        }
        PartId::BeltLoops | PartId::BeltLoop => (View::Back, PlaceId::BeltLoop),
        PartId::Patch => (View::Back, PlaceId::Patch),
        PartId::Crotch => (View::Front, PlaceId::Fork),
        PartId::SeatAndYoke => (View::Back, PlaceId::YokeSeam),
        _ => return None,
    })
}
