//! The door to the library that finds collisions of polygons (jagua-rs): shapes made ready for it, and the field on which pieces lie. It works
//! in single precision; what it says is judged by `check`. The edges of the strip are not its matter: pieces never leave it.

use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::Arc;

use jagua_rs::collision_detection::hazards::collector::HazardCollector;
use jagua_rs::collision_detection::hazards::filter::HazardFilter;
use jagua_rs::collision_detection::hazards::{HazKey, Hazard, HazardEntity};
use jagua_rs::collision_detection::{CDEConfig, CDEngine};
use jagua_rs::geometry::fail_fast::SPSurrogateConfig;
use jagua_rs::geometry::geo_enums::GeoPosition;
use jagua_rs::geometry::geo_traits::{CollidesWith, Transformable, TransformableFrom};
use jagua_rs::geometry::primitives::{Point, Rect, SPolygon};
use jagua_rs::geometry::shape_modification::{ShapeModifyMode, close_narrow_concavities, offset_shape, simplify_shape};
use jagua_rs::geometry::{DTransformation, Transformation};

use crate::base::tolerance::lay;

/// Circles inside a shape: up to 64, or 16 once they cover 80 % of it, or 8 once they cover 90 %. The first ones, up to half of the area, are tried
/// before the outline.
const CIRCLES: SPSurrogateConfig =
    SPSurrogateConfig { n_pole_limits: [(64, 0.0), (16, 0.8), (8, 0.9)], ff_pole_area_ratio: 0.5, n_ff_piers: 0 };

/// The same for shapes so thin that no more circles are found.
const FEW_CIRCLES: SPSurrogateConfig =
    SPSurrogateConfig { n_pole_limits: [(2, 0.0), (2, 0.8), (2, 0.9)], ff_pole_area_ratio: 0.5, n_ff_piers: 0 };

const CONFIG: CDEConfig = CDEConfig { quadtree_depth: 4, cd_threshold: 16, item_surrogate_config: CIRCLES };

/// A shape that is ready to be tried on a field: simplified outwards, with circles inside it, in one pose about its origin.
#[derive(Clone, Debug)]
pub(super) struct Form {
    shape: SPolygon,
}

/// A circle inside a shape: its middle and radius.
pub(super) type Circle = (f32, f32, f32);

impl Form {
    /// From an outline about its origin, grown by some mm all round. None if it is no simple polygon with an area, or too thin for single
    /// precision.
    pub(super) fn new(outline: &[(f64, f64)], grown: f64) -> Option<Self> {
        let points: Vec<Point> = outline.iter().map(|(x, y)| Point(*x as f32, *y as f32)).collect();
        let exact = SPolygon::new(points).ok()?;
        // The library ends the program where its own steps go wrong; then the outline is taken as it is.
        let grow = |shape: &SPolygon| {
            let mode = ShapeModifyMode::Inflate;
            if grown > 0.0 { offset_shape(shape, mode, grown as f32).ok() } else { Some(shape.clone()) }
        };
        let simplify = |shape: &SPolygon| {
            let mode = ShapeModifyMode::Inflate;
            let shape = simplify_shape(shape, mode, lay::SIMPLER);
            let shape = close_narrow_concavities(&shape, mode, lay::NOTCH);
            simplify_shape(&shape, mode, lay::SIMPLER / 10.0)
        };
        let grown = catch_unwind(AssertUnwindSafe(|| grow(&exact))).ok().flatten()?;
        let simple = catch_unwind(AssertUnwindSafe(|| simplify(&grown))).unwrap_or(grown);
        let farthest = simple.vertices().iter().map(|p| p.0.hypot(p.1)).fold(f32::MIN_POSITIVE, f32::max);
        let share = (1.0 - lay::TOUCHING / farthest).max(0.5);
        let mut shape =
            SPolygon::new(simple.vertices().iter().map(|p| Point(p.0 * share, p.1 * share)).collect()).ok()?;
        let circles = |shape: &mut SPolygon, config| {
            catch_unwind(AssertUnwindSafe(|| shape.generate_surrogate(config).is_ok())).unwrap_or(false)
        };
        (circles(&mut shape, CIRCLES) || circles(&mut shape, FEW_CIRCLES)).then_some(Self { shape })
    }

    /// Turned over (y becomes -y), then turned by some radians from x to y.
    pub(super) fn turned(&self, mirrored: bool, radians: f32) -> Self {
        let turn = DTransformation::new(radians, (0.0, 0.0)).with_reflection(mirrored).compose();
        Self { shape: self.shape.transform_clone(&turn) }
    }

    /// Moved.
    pub(super) fn moved(&self, x: f32, y: f32) -> Self {
        Self { shape: self.shape.transform_clone(&Transformation::from_translation((x, y))) }
    }

    /// Its circles, largest first; at least one.
    pub(super) fn circles(&self) -> Vec<Circle> {
        self.shape.surrogate().poles.iter().map(|c| (c.center.0, c.center.1, c.radius)).collect()
    }

    /// The area of its hull, mm².
    pub(super) fn hull_area(&self) -> f32 {
        self.shape.surrogate().convex_hull_area
    }

    /// The largest distance of two of its points, mm.
    pub(super) fn diameter(&self) -> f32 {
        self.shape.diameter()
    }

    /// Whether a point lies in it, both told from its origin.
    pub(super) fn contains(&self, x: f32, y: f32) -> bool {
        self.shape.collides_with(&Point(x, y))
    }

    /// Makes it the form `of`, moved. Both must have been made of the same form.
    fn follow(&mut self, of: &Self, (x, y): (f32, f32)) {
        self.shape.transform_from(&of.shape, &Transformation::from_translation((x, y)));
    }
}

/// What can be collided with.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
enum Thing {
    /// All beyond the field; never looked at, but the library wants it.
    Beyond,
    /// A piece, by its place.
    Piece(usize),
}

impl HazardEntity for Thing {
    fn scope(&self) -> GeoPosition {
        match self {
            Self::Beyond => GeoPosition::Exterior,
            Self::Piece(_) => GeoPosition::Interior,
        }
    }

    fn is_dynamic(&self) -> bool {
        matches!(self, Self::Piece(_))
    }
}

/// Leaves out the piece itself and what is beyond the field.
struct Others(Option<HazKey>);

impl HazardFilter<Thing> for Others {
    fn is_irrelevant(&self, key: HazKey, thing: &Thing) -> bool {
        self.0 == Some(key) || *thing == Thing::Beyond
    }
}

/// What was hit so far; seldom more than four things, so that a list is fastest.
#[derive(Clone, Debug, Default)]
struct Hits(Vec<(HazKey, Thing)>);

impl HazardCollector for Hits {
    type Entity = Thing;

    fn contains_key(&self, key: HazKey) -> bool {
        self.0.iter().any(|(k, _)| *k == key)
    }

    fn insert(&mut self, key: HazKey, thing: Thing) {
        self.0.push((key, thing));
    }

    fn remove_by_key(&mut self, key: HazKey) {
        self.0.retain(|(k, _)| *k != key);
    }

    fn len(&self) -> usize {
        self.0.len()
    }

    fn iter(&self) -> impl Iterator<Item = (HazKey, &Thing)> {
        self.0.iter().map(|(k, t)| (*k, t))
    }
}

/// Pieces as they lie, to be asked which of them a further one would hit.
#[derive(Clone, Debug)]
pub(super) struct Field {
    engine: CDEngine<Thing>,
    keys: Vec<Option<HazKey>>,
    hits: Hits,
}

impl Field {
    /// An empty field for so many pieces. The box (least x and y, greatest x and y) must hold all that will lie on it. None if it has no area.
    pub(super) fn new((x0, y0, x1, y1): (f32, f32, f32, f32), pieces: usize) -> Option<Self> {
        let room = Rect::try_new(x0, y0, x1, y1).ok()?.inflate_to_square();
        let side = room.x_max - room.x_min;
        let outer = room.resize_by(side / 50.0, side / 50.0)?;
        let corners = [
            Point(room.x_min, room.y_min),
            Point(room.x_max, room.y_min),
            Point(room.x_max, room.y_max),
            Point(room.x_min, room.y_max),
        ];
        let beyond = Hazard::new(Thing::Beyond, Arc::new(SPolygon::new(corners.to_vec()).ok()?));
        let engine = CDEngine::new(outer, vec![beyond], CONFIG);
        Some(Self { engine, keys: vec![None; pieces], hits: Hits::default() })
    }

    /// Lays a piece; where it lay before does not count any more.
    pub(super) fn put(&mut self, piece: usize, form: &Form, at: (f32, f32)) {
        self.take(piece);
        let mut lying = form.clone();
        lying.follow(form, at);
        self.engine.register_hazard(Hazard::new(Thing::Piece(piece), Arc::new(lying.shape)));
        self.keys[piece] = self.engine.haz_key(&Thing::Piece(piece));
    }

    /// Takes a piece away, if it lies there.
    pub(super) fn take(&mut self, piece: usize) {
        if let Some(key) = self.keys[piece].take() {
            self.engine.deregister_hazard_by_key(key);
        }
    }

    /// Tells of each piece other than `own` that a form would hit, once, in no order that means anything, until `enough` says so.
    /// `try_on` is a clone of the form, whose place is changed. Whether it was enough.
    pub(super) fn hits(
        &mut self,
        own: usize,
        form: &Form,
        try_on: &mut Form,
        at: (f32, f32),
        mut enough: impl FnMut(usize) -> bool,
    ) -> bool {
        try_on.follow(form, at);
        self.hits.0.clear();
        let others = Others(self.keys[own]);
        let mut told = |thing| match thing {
            Thing::Beyond => false,
            Thing::Piece(piece) => enough(piece),
        };
        self.engine.collect_surrogate_collisions_until(&try_on.shape, &others, &mut self.hits, &mut told)
            || self.engine.collect_poly_collisions_until(&try_on.shape, &others, &mut self.hits, &mut told)
    }
}
