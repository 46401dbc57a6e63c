//! Places of the pair that one looks at closely, by name.

use draft::{EdgeId, PieceId, PointId};
use flat::{Half, Hand, LaidGarment, View};
use geometry::{Point, bounds_of};
use sewing::{Face, Fixing, FixingKind, Garment};
use trade::Length;
use words::key;

words::identities! {
    /// A place that can be looked at.
    pub enum PlaceId {
        /// The whole pair.
        Whole = "whole" => key::PLACE_WHOLE,
        /// The right back pocket.
        BackPocketRight = "back pocket right" => key::PLACE_BACK_POCKET_RIGHT,
        /// The left back pocket.
        BackPocketLeft = "back pocket left" => key::PLACE_BACK_POCKET_LEFT,
        /// The inner upper corner of the right back pocket.
        BackPocketCorner = "back pocket corner" => key::PLACE_BACK_POCKET_CORNER,
        /// Where yoke seam and seat seam cross.
        YokeSeam = "yoke seam" => key::PLACE_YOKE_SEAM,
        /// The patch.
        Patch = "patch" => key::PLACE_PATCH,
        /// The belt loop nearest to the middle of the view.
        BeltLoop = "belt loop" => key::PLACE_BELT_LOOP,
        /// The coin pocket, as much of it as is seen.
        CoinPocket = "coin pocket" => key::PLACE_COIN_POCKET,
        /// The mouth of the left front pocket.
        PocketMouth = "pocket mouth" => key::PLACE_POCKET_MOUTH,
        /// The button of the band.
        BandButton = "band button" => key::PLACE_BAND_BUTTON,
        /// Where the fly ends.
        FlyFoot = "fly foot" => key::PLACE_FLY_FOOT,
        /// Where front, back and both legs meet.
        Fork = "fork" => key::PLACE_FORK,
        /// The outseam at the hip, below the pocket mouth.
        Outseam = "outseam" => key::PLACE_OUTSEAM,
        /// The knee.
        Knee = "knee" => key::PLACE_KNEE,
        /// The hem at the inseam.
        Hem = "hem" => key::PLACE_HEM,
        /// The main label.
        Label = "label" => key::PLACE_LABEL,
    }
}

impl PlaceId {
    /// How much of the pair shows it well, where nobody says.
    pub const fn usual_width(self) -> Length {
        match self {
            Self::Whole => Length::mm(760.0),
            Self::BackPocketRight | Self::BackPocketLeft => Length::mm(220.0),
            Self::Patch | Self::Label | Self::CoinPocket => Length::mm(110.0),
            Self::Knee => Length::mm(260.0),
            Self::BackPocketCorner
            | Self::YokeSeam
            | Self::BeltLoop
            | Self::PocketMouth
            | Self::BandButton
            | Self::FlyFoot
            | Self::Fork
            | Self::Outseam
            | Self::Hem => Length::mm(60.0),
        }
    }
}

/// Where a place lies on a view, millimetres, y up; `None` where it is not on this side or the style has no such thing.
pub fn whereabouts(garment: &Garment, view: View, face: Face, place: PlaceId) -> Option<Point> {
    let laid = LaidGarment::of(garment, view, face)?;
    let seeker = Seeker {
        garment,
        laid: &laid,
        view,
        face,
    };
    match place {
        PlaceId::Whole => seeker.middle(),
        PlaceId::BackPocketRight => seeker.pocket(PieceId::BackPocketRight, Hand::Right),
        PlaceId::BackPocketLeft => seeker.pocket(PieceId::BackPocketLeft, Hand::Left),
        PlaceId::BackPocketCorner => {
            seeker.outside(PieceId::BackPocketRight, PointId::TopInner, Hand::Right)
        }
        PlaceId::YokeSeam => seeker.point(PieceId::Yoke, PointId::SeamCentre, Hand::Right),
        PlaceId::Patch => seeker.fixing(|kind| matches!(kind, FixingKind::Patch(..))),
        PlaceId::BeltLoop => seeker.fixing(|kind| matches!(kind, FixingKind::Loop(..))),
        PlaceId::CoinPocket => {
            let hand = if garment.pattern.spec.coin_on_right {
                Hand::Right
            } else {
                Hand::Left
            };
            seeker.outside(PieceId::CoinPocket, PointId::TopMiddle, hand)
        }
        PlaceId::PocketMouth => seeker.on_edge(PieceId::Front, EdgeId::Mouth, 0.5, Hand::Left),
        PlaceId::BandButton => seeker.band_button(),
        PlaceId::FlyFoot => seeker.point(PieceId::Front, PointId::FlyFoot, Hand::Left),
        PlaceId::Fork => Some(Point::new(0.0, laid.fork().y)),
        PlaceId::Outseam => seeker.outseam(),
        PlaceId::Knee => seeker.knee(),
        PlaceId::Hem => seeker.hem(),
        PlaceId::Label => seeker.fixing(|kind| matches!(kind, FixingKind::Label(..))),
    }
}

struct Seeker<'a> {
    garment: &'a Garment,
    laid: &'a LaidGarment,
    view: View,
    face: Face,
}

impl Seeker<'_> {
    fn middle(&self) -> Option<Point> {
        let mut all = self.laid.half_outline(Hand::Left, Length::ZERO);
        all.extend(self.laid.half_outline(Hand::Right, Length::ZERO));
        all.extend(self.laid.band_top(Half::Back));
        let middle = bounds_of(&all).center();
        middle.is_finite().then_some(Point::new(0.0, middle.y))
    }

    fn point(&self, piece: PieceId, id: PointId, hand: Hand) -> Option<Point> {
        let at = self.garment.pattern.piece(piece)?.point(id)?;
        self.laid.point(piece, at, hand)
    }

    fn outside(&self, piece: PieceId, id: PointId, hand: Hand) -> Option<Point> {
        (self.face == Face::Outside).then(|| self.point(piece, id, hand))?
    }

    fn on_edge(&self, piece: PieceId, edge: EdgeId, share: f64, hand: Hand) -> Option<Point> {
        let edge = self.garment.pattern.piece(piece)?.edge(edge)?;
        self.laid
            .point(piece, edge.point_at(edge.length() * share), hand)
    }

    fn pocket(&self, piece: PieceId, hand: Hand) -> Option<Point> {
        let found = self
            .garment
            .pattern
            .piece(piece)
            .filter(|_| self.face == Face::Outside)?;
        let middle = bounds_of(&found.polygon(Length::mm(4.0))).center();
        self.laid.point(piece, middle, hand)
    }

    /// Of several the one nearest to the middle of the view.
    fn fixing(&self, wanted: impl Fn(&FixingKind) -> bool) -> Option<Point> {
        let shows = |f: &&Fixing| match self.face {
            Face::Outside => f.outside,
            Face::Inside => f.inside,
        };
        let fixings = self.garment.fixings.iter().filter(shows);
        let places = fixings.filter(|f| wanted(&f.kind)).flat_map(|f| {
            let copies = self.laid.copies(f.piece, f.on).iter();
            copies.filter_map(|hand| self.laid.point(f.piece, f.at, *hand))
        });
        places.min_by(|a, b| a.x.abs().total_cmp(&b.x.abs()))
    }

    fn band_button(&self) -> Option<Point> {
        let on_band =
            |f: &&Fixing| f.piece == PieceId::Band && matches!(f.kind, FixingKind::Button(_));
        let found = self.garment.fixings.iter().find(on_band)?;
        self.laid.point(found.piece, found.at, Hand::Left)
    }

    fn outseam(&self) -> Option<Point> {
        /// Below the mouth and, inside, below the bag.
        const BELOW_MOUTH: Length = Length::mm(240.0);
        /// So that both edges of the seam are in the picture.
        const INWARD_MM: f64 = 12.0;
        let (View::Front, Some(front)) = (self.view, self.garment.pattern.piece(PieceId::Front))
        else {
            return None;
        };
        let side = front.edge(EdgeId::Side)?;
        let along = side.length() - BELOW_MOUTH;
        let at = side.point_at(along) + geometry::left_of(side.direction_at(along)) * INWARD_MM;
        self.laid.point(PieceId::Front, at, Hand::Right)
    }

    fn knee(&self) -> Option<Point> {
        let piece = match self.view {
            View::Front => PieceId::Front,
            View::Back => PieceId::Back,
        };
        let found = self.garment.pattern.piece(piece)?;
        let middle = found
            .point(PointId::KneeIn)?
            .midpoint(found.point(PointId::KneeOut)?);
        self.laid.point(piece, middle, Hand::Left)
    }

    fn hem(&self) -> Option<Point> {
        let inner = self.laid.folds().inner.first().copied()?;
        let at = Point::new(inner.x + 24.0, inner.y + 20.0);
        Some(self.laid.mirrored(at, Hand::Left))
    }
}
