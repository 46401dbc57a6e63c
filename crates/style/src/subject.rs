//! What a finding is about, as data: a stable code for files and programs, words only where somebody reads.

use std::fmt;

use serde::{Serialize, Serializer};
use words::{Given, Said, key, say};

use crate::{Along, MeasureId, PieceId, SeamId};

words::identities! {
    /// A part of the pair, of its pattern or of its style that a finding can be about by itself.
    pub enum PartId {
        /// Chart.
        Chart = "chart" => key::PART_CHART,
        /// Own pattern.
        OwnPattern = "own-pattern" => key::PART_OWN_PATTERN,
        /// Workroom.
        Workroom = "workroom" => key::PART_WORKROOM,
        /// Labels.
        Labels = "labels" => key::PART_LABELS,
        /// Bartacks.
        Bartacks = "bartacks" => key::PART_BARTACKS,
        /// Sewing thread.
        SewingThread = "sewing-thread" => key::PART_SEWING_THREAD,
        /// Other texts.
        OtherTexts = "other-texts" => key::PART_OTHER_TEXTS,
        /// Band button.
        BandButton = "band-button" => key::PART_BAND_BUTTON,
        /// Fly.
        Fly = "fly" => key::PART_FLY,
        /// Zip.
        Zip = "zip" => key::PART_ZIP,
        /// Patch.
        Patch = "patch" => key::PART_PATCH,
        /// Belt loops.
        BeltLoops = "belt-loops" => key::PART_BELT_LOOPS,
        /// Extra pocket.
        ExtraPocket = "extra-pocket" => key::PART_EXTRA_POCKET,
        /// Pocket bag.
        PocketBag = "pocket-bag" => key::PART_POCKET_BAG,
        /// Coin pocket.
        CoinPocket = "coin-pocket" => key::PART_COIN_POCKET,
        /// Back pockets.
        BackPockets = "back-pockets" => key::PART_BACK_POCKETS,
        /// Left back pocket.
        LeftBackPocket = "left-back-pocket" => key::PART_LEFT_BACK_POCKET,
        /// Right back pocket.
        RightBackPocket = "right-back-pocket" => key::PART_RIGHT_BACK_POCKET,
        /// Waistband.
        Waistband = "waistband" => key::PART_WAISTBAND,
        /// Seat and yoke.
        SeatAndYoke = "seat-and-yoke" => key::PART_SEAT_AND_YOKE,
        /// Crotch.
        Crotch = "crotch" => key::PART_CROTCH,
        /// Outseam and yoke.
        OutseamAndYoke = "outseam-and-yoke" => key::PART_OUTSEAM_AND_YOKE,
        /// Band.
        Band = "band" => key::PART_BAND,
        /// Belt loop.
        BeltLoop = "belt-loop" => key::PART_BELT_LOOP,
        /// Pocket mouth.
        PocketMouth = "pocket-mouth" => key::PART_POCKET_MOUTH,
        /// Back pocket.
        BackPocket = "back-pocket" => key::PART_BACK_POCKET,
        /// Rises.
        Rises = "rises" => key::PART_RISES,
        /// Crotch point.
        CrotchPoint = "crotch-point" => key::PART_CROTCH_POINT,
        /// Crotch curves.
        CrotchCurves = "crotch-curves" => key::PART_CROTCH_CURVES,
        /// Crotch line.
        CrotchLine = "crotch-line" => key::PART_CROTCH_LINE,
        /// Front crotch curve.
        FrontCrotchCurve = "front-crotch-curve" => key::PART_FRONT_CROTCH_CURVE,
        /// Back crotch curve.
        BackCrotchCurve = "back-crotch-curve" => key::PART_BACK_CROTCH_CURVE,
        /// Balance of the leg.
        LegBalance = "leg-balance" => key::PART_LEG_BALANCE,
        /// Seat seam.
        SeatSeam = "seat-seam" => key::PART_SEAT_SEAM,
        /// Yoke seam.
        YokeSeam = "yoke-seam" => key::PART_YOKE_SEAM,
        /// Band seam.
        BandSeam = "band-seam" => key::PART_BAND_SEAM,
        /// Front crease.
        FrontCrease = "front-crease" => key::PART_FRONT_CREASE,
        /// Back crease.
        BackCrease = "back-crease" => key::PART_BACK_CREASE,
        /// Front outseam.
        FrontOutseam = "front-outseam" => key::PART_FRONT_OUTSEAM,
        /// Back outseam.
        BackOutseam = "back-outseam" => key::PART_BACK_OUTSEAM,
        /// Leg below the knee.
        LegBelowKnee = "leg-below-knee" => key::PART_LEG_BELOW_KNEE,
        /// The front crotch.
        FrontCrotch = "front-crotch" => key::PART_FRONT_CROTCH,
        /// The back crotch.
        BackCrotch = "back-crotch" => key::PART_BACK_CROTCH,
        /// The whole crotch.
        WholeCrotch = "whole-crotch" => key::PART_WHOLE_CROTCH,
        /// Outseam, hem to knee.
        OutseamHemToKnee = "outseam-hem-to-knee" => key::PART_OUTSEAM_HEM_TO_KNEE,
        /// Outseam, knee to hip.
        OutseamKneeToHip = "outseam-knee-to-hip" => key::PART_OUTSEAM_KNEE_TO_HIP,
        /// Outseam, hip to waist.
        OutseamHipToWaist = "outseam-hip-to-waist" => key::PART_OUTSEAM_HIP_TO_WAIST,
        /// Inseam, hem to knee.
        InseamHemToKnee = "inseam-hem-to-knee" => key::PART_INSEAM_HEM_TO_KNEE,
        /// Inseam, knee to crotch.
        InseamKneeToCrotch = "inseam-knee-to-crotch" => key::PART_INSEAM_KNEE_TO_CROTCH,
        /// Outseam at the pocket mouth.
        OutseamAtMouth = "outseam-at-mouth" => key::PART_OUTSEAM_AT_MOUTH,
        /// Waist at the pocket mouth.
        WaistAtMouth = "waist-at-mouth" => key::PART_WAIST_AT_MOUTH,
        /// Centre front at the waist.
        FrontCentreAtWaist = "front-centre-at-waist" => key::PART_FRONT_CENTRE_AT_WAIST,
        /// Centre back at the waist.
        BackCentreAtWaist = "back-centre-at-waist" => key::PART_BACK_CENTRE_AT_WAIST,
        /// Front hem at the inseam.
        FrontHemAtInseam = "front-hem-at-inseam" => key::PART_FRONT_HEM_AT_INSEAM,
        /// Front hem at the outseam.
        FrontHemAtOutseam = "front-hem-at-outseam" => key::PART_FRONT_HEM_AT_OUTSEAM,
        /// Back hem at the inseam.
        BackHemAtInseam = "back-hem-at-inseam" => key::PART_BACK_HEM_AT_INSEAM,
        /// Back hem at the outseam.
        BackHemAtOutseam = "back-hem-at-outseam" => key::PART_BACK_HEM_AT_OUTSEAM,
        /// Left band end, lower corner.
        LeftBandEndLower = "left-band-end-lower" => key::PART_LEFT_BAND_END_LOWER,
        /// Right band end, lower corner.
        RightBandEndLower = "right-band-end-lower" => key::PART_RIGHT_BAND_END_LOWER,
        /// Right band end, inner corner.
        RightBandEndInner = "right-band-end-inner" => key::PART_RIGHT_BAND_END_INNER,
        /// Left band end, inner corner.
        LeftBandEndInner = "left-band-end-inner" => key::PART_LEFT_BAND_END_INNER,
        /// Front hem at the crease.
        FrontHemAtCrease = "front-hem-at-crease" => key::PART_FRONT_HEM_AT_CREASE,
        /// Back hem at the crease.
        BackHemAtCrease = "back-hem-at-crease" => key::PART_BACK_HEM_AT_CREASE,
        /// Seat seam across the yoke seam.
        SeatAcrossYoke = "seat-across-yoke" => key::PART_SEAT_ACROSS_YOKE,
        /// Outseam across the yoke seam.
        OutseamAcrossYoke = "outseam-across-yoke" => key::PART_OUTSEAM_ACROSS_YOKE,
        /// Waist across the outseam.
        WaistAcrossOutseam = "waist-across-outseam" => key::PART_WAIST_ACROSS_OUTSEAM,
        /// Hem across the outseam.
        HemAcrossOutseam = "hem-across-outseam" => key::PART_HEM_ACROSS_OUTSEAM,
        /// Hem across the inseam.
        HemAcrossInseam = "hem-across-inseam" => key::PART_HEM_ACROSS_INSEAM,
        /// Knee on the outseam.
        KneeOnOutseam = "knee-on-outseam" => key::PART_KNEE_ON_OUTSEAM,
        /// Hip.
        Hip = "hip" => key::PART_HIP,
        /// Knee on the inseam.
        KneeOnInseam = "knee-on-inseam" => key::PART_KNEE_ON_INSEAM,
        /// Middle of the yoke seam.
        YokeSeamMiddle = "yoke-seam-middle" => key::PART_YOKE_SEAM_MIDDLE,
        /// Pocket mouth on the outseam.
        MouthOnOutseam = "mouth-on-outseam" => key::PART_MOUTH_ON_OUTSEAM,
        /// Left side on the band.
        LeftSideOnBand = "left-side-on-band" => key::PART_LEFT_SIDE_ON_BAND,
        /// Centre back on the band.
        BackCentreOnBand = "back-centre-on-band" => key::PART_BACK_CENTRE_ON_BAND,
        /// Right side on the band.
        RightSideOnBand = "right-side-on-band" => key::PART_RIGHT_SIDE_ON_BAND,
        /// Yoke seam.
        JoinYoke = "join-yoke" => key::PART_JOIN_YOKE,
        /// Seat seam.
        JoinSeat = "join-seat" => key::PART_JOIN_SEAT,
        /// Front rise.
        JoinFrontRise = "join-front-rise" => key::PART_JOIN_FRONT_RISE,
        /// Inseam.
        JoinInseam = "join-inseam" => key::PART_JOIN_INSEAM,
        /// Outseam.
        JoinOutseam = "join-outseam" => key::PART_JOIN_OUTSEAM,
        /// Band seam.
        JoinBand = "join-band" => key::PART_JOIN_BAND,
        /// Pocket mouth.
        JoinMouth = "join-mouth" => key::PART_JOIN_MOUTH,
        /// Fly edge.
        JoinFlyEdge = "join-fly-edge" => key::PART_JOIN_FLY_EDGE,
        /// Pocket bag foot.
        JoinBagFoot = "join-bag-foot" => key::PART_JOIN_BAG_FOOT,
        /// Front.
        FrontPanel = "front-panel" => key::PART_FRONT_PANEL,
        /// Back.
        BackPanel = "back-panel" => key::PART_BACK_PANEL,
    }
}

/// What a finding is about.
#[derive(Clone, Debug, PartialEq)]
pub enum Subject {
    /// A part by itself.
    Part(PartId),
    /// A measure of the chart.
    Measure(MeasureId),
    /// The tolerance of a measure.
    Tolerance(MeasureId),
    /// A seam.
    Seam(SeamId),
    /// A row of a seam, the first is 1.
    Row(SeamId, usize),
    /// Two rows of a seam.
    Rows(SeamId, usize, usize),
    /// A piece.
    Piece(PieceId),
    /// The left half of a piece that is cut in two.
    LeftHalf(PieceId),
    /// The right half.
    RightHalf(PieceId),
    /// A cloth, by its name in the collection.
    Cloth(String),
    /// The wash test of a cloth.
    WashTest(String),
    /// The shrinkage of a cloth one way.
    Shrinkage(String, Along),
    /// The skew of a cloth.
    ClothSkew(String),
    /// A yarn, by its name in the collection.
    Yarn(String),
    /// A yarn where it is on the needle.
    NeedleYarn(String),
    /// A yarn where it is on looper or bobbin.
    UnderYarn(String),
    /// A trim, by its name in the collection.
    Trim(String),
    /// A label, by its trim.
    Label(String),
    /// The rivets of a trim.
    Rivet(String),
    /// The rivets on a piece; on the front, at the pocket mouth.
    RivetOn(PieceId),
    /// The buttonholes of a piece.
    Buttonhole(PieceId),
    /// The buttonholes made for a trim.
    ButtonholeFor(String),
    /// A value of a file.
    Value(Valued),
    /// What was written about an old finding in words nobody knows any more. It is about nothing.
    Other(String),
}

/// A value of a file: where it stands, and what it is called.
#[derive(Clone, Debug)]
pub struct Valued {
    path: String,
    called: Given,
}

impl Valued {
    /// A value at a path, with what it is called.
    #[must_use]
    pub fn new(path: impl Into<String>, called: impl Into<Given>) -> Self {
        Self {
            path: path.into(),
            called: called.into(),
        }
    }

    /// A value of which only the path is known.
    #[must_use]
    pub fn at(path: String) -> Self {
        let called = Given::Text(path.clone());
        Self { path, called }
    }

    /// What it is called.
    #[must_use]
    pub const fn called(&self) -> &Given {
        &self.called
    }

    /// Where it stands in its file.
    #[must_use]
    pub fn path(&self) -> &str {
        &self.path
    }
}

impl PartialEq for Valued {
    /// A value is known by its place, whatever it is called.
    fn eq(&self, other: &Self) -> bool {
        self.path == other.path
    }
}

impl Subject {
    /// Its stable code, as files and programs write it: `seam:inseam`, `row:inseam/2`, `cloth:tideline-14`.
    #[must_use]
    pub fn code(&self) -> String {
        match self {
            Self::Part(part) => format!("part:{}", part.code()),
            Self::Measure(measure) => format!("measure:{}", measure.code()),
            Self::Tolerance(measure) => format!("tolerance:{}", measure.code()),
            Self::Seam(seam) => format!("seam:{}", seam.code()),
            Self::Row(seam, row) => format!("row:{}/{row}", seam.code()),
            Self::Rows(seam, first, second) => format!("rows:{}/{first}/{second}", seam.code()),
            Self::Piece(piece) => format!("piece:{}", piece.code()),
            Self::LeftHalf(piece) => format!("left-half:{}", piece.code()),
            Self::RightHalf(piece) => format!("right-half:{}", piece.code()),
            Self::Cloth(key) => format!("cloth:{key}"),
            Self::WashTest(key) => format!("wash-test:{key}"),
            Self::Shrinkage(key, along) => format!("{along}-shrinkage:{key}"),
            Self::ClothSkew(key) => format!("skew:{key}"),
            Self::Yarn(key) => format!("yarn:{key}"),
            Self::NeedleYarn(key) => format!("needle-yarn:{key}"),
            Self::UnderYarn(key) => format!("under-yarn:{key}"),
            Self::Trim(key) => format!("trim:{key}"),
            Self::Label(key) => format!("label:{key}"),
            Self::Rivet(key) => format!("rivet:{key}"),
            Self::RivetOn(piece) => format!("rivet-on:{}", piece.code()),
            Self::Buttonhole(piece) => format!("buttonhole:{}", piece.code()),
            Self::ButtonholeFor(key) => format!("buttonhole-for:{key}"),
            Self::Value(value) => format!("value:{}", value.path),
            Self::Other(words) => words.clone(),
        }
    }

    /// The subject with this code.
    #[must_use]
    pub fn of(code: &str) -> Option<Self> {
        let (kind, rest) = code.split_once(':')?;
        let own = || (!rest.is_empty()).then(|| rest.to_owned());
        let row = |text: &str| text.parse::<usize>().ok();
        match kind {
            "part" => PartId::of(rest).map(Self::Part),
            "measure" => MeasureId::of(rest).map(Self::Measure),
            "tolerance" => MeasureId::of(rest).map(Self::Tolerance),
            "seam" => SeamId::of(rest).map(Self::Seam),
            "row" => {
                let (seam, number) = rest.split_once('/')?;
                Some(Self::Row(SeamId::of(seam)?, row(number)?))
            }
            "rows" => {
                let (seam, numbers) = rest.split_once('/')?;
                let (first, second) = numbers.split_once('/')?;
                Some(Self::Rows(SeamId::of(seam)?, row(first)?, row(second)?))
            }
            "piece" => PieceId::of(rest).map(Self::Piece),
            "left-half" => PieceId::of(rest).map(Self::LeftHalf),
            "right-half" => PieceId::of(rest).map(Self::RightHalf),
            "cloth" => own().map(Self::Cloth),
            "wash-test" => own().map(Self::WashTest),
            "warp-shrinkage" => own().map(|key| Self::Shrinkage(key, Along::Warp)),
            "weft-shrinkage" => own().map(|key| Self::Shrinkage(key, Along::Weft)),
            "skew" => own().map(Self::ClothSkew),
            "yarn" => own().map(Self::Yarn),
            "needle-yarn" => own().map(Self::NeedleYarn),
            "under-yarn" => own().map(Self::UnderYarn),
            "trim" => own().map(Self::Trim),
            "label" => own().map(Self::Label),
            "rivet" => own().map(Self::Rivet),
            "rivet-on" => PieceId::of(rest).map(Self::RivetOn),
            "buttonhole" => PieceId::of(rest).map(Self::Buttonhole),
            "buttonhole-for" => own().map(Self::ButtonholeFor),
            "value" => own().map(|path| Self::Value(Valued::at(path))),
            _ => None,
        }
    }
}

impl From<PartId> for Subject {
    fn from(part: PartId) -> Self {
        Self::Part(part)
    }
}

impl From<MeasureId> for Subject {
    fn from(measure: MeasureId) -> Self {
        Self::Measure(measure)
    }
}

impl From<SeamId> for Subject {
    fn from(seam: SeamId) -> Self {
        Self::Seam(seam)
    }
}

impl From<PieceId> for Subject {
    fn from(piece: PieceId) -> Self {
        Self::Piece(piece)
    }
}

impl From<&Subject> for Said {
    fn from(subject: &Subject) -> Self {
        match subject {
            Subject::Part(part) => (*part).into(),
            Subject::Measure(measure) => measure.within().into(),
            Subject::Tolerance(measure) => say::SubjectTolerance {
                measure: measure.title(),
            }
            .into(),
            Subject::Seam(seam) => say::SubjectSeam { seam: seam.code() }.into(),
            Subject::Row(seam, row) => say::SubjectRow {
                row: row.to_string(),
                seam: seam.code(),
            }
            .into(),
            Subject::Rows(seam, first, second) => say::SubjectRows {
                first: first.to_string(),
                seam: seam.code(),
                second: second.to_string(),
            }
            .into(),
            Subject::Piece(piece) => (*piece).into(),
            Subject::LeftHalf(piece) => say::SubjectLeftHalf { piece: *piece }.into(),
            Subject::RightHalf(piece) => say::SubjectRightHalf { piece: *piece }.into(),
            Subject::Cloth(cloth) => say::SubjectCloth { cloth }.into(),
            Subject::WashTest(cloth) => say::SubjectWashTest { cloth }.into(),
            Subject::Shrinkage(cloth, along) => say::SubjectShrinkage {
                along: along.word(),
                cloth,
            }
            .into(),
            Subject::ClothSkew(cloth) => say::SubjectClothSkew { cloth }.into(),
            Subject::Yarn(yarn) => say::SubjectYarn { yarn }.into(),
            Subject::NeedleYarn(yarn) => say::SubjectNeedleYarn { yarn }.into(),
            Subject::UnderYarn(yarn) => say::SubjectUnderYarn { yarn }.into(),
            Subject::Trim(trim) => say::SubjectTrim { trim }.into(),
            Subject::Label(label) => say::SubjectLabel { label }.into(),
            Subject::Rivet(from) => say::SubjectRivet { from }.into(),
            Subject::RivetOn(PieceId::Front) => key::SUBJECT_RIVET_AT_MOUTH.into(),
            Subject::RivetOn(piece) => say::SubjectRivetOn {
                piece: piece.within(),
            }
            .into(),
            Subject::Buttonhole(piece) => say::SubjectButtonhole {
                piece: piece.within(),
            }
            .into(),
            Subject::ButtonholeFor(from) => say::SubjectButtonholeFor { from }.into(),
            Subject::Value(value) => say::SubjectValue {
                path: value.called.clone(),
            }
            .into(),
            Subject::Other(words) => say::SubjectValue { path: words }.into(),
        }
    }
}

impl From<&Subject> for Given {
    fn from(subject: &Subject) -> Self {
        Said::from(subject).into()
    }
}

impl Serialize for Subject {
    /// Its code.
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(&self.code())
    }
}

impl fmt::Display for Subject {
    /// Its code.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.code())
    }
}
