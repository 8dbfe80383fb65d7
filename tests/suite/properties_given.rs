//! Invented lawns, kits, labels and choices for the laws of the trade, within what a person could meet.
//! Must never lean on a particular number: the laws hold for all of them.

use chrono::NaiveDate;
use evensward_core::kit::{Calibration, JugSteps, Kit, LastIn};
use evensward_core::lawn::{Beside, Measured, Part, PatchKind, Shape, Side, Survey};
use evensward_core::plan::{Choice, Heading, NarrowAt, NarrowChoice, Remedy, StartSide};
use evensward_core::product::{Form, Label, LegalClass, Purpose, Tagged, WaterRange};
use evensward_core::quantity::{
    Angle, Doubt, FlowRate, Length, Mass, Pace, ProductDose, ProductKind, Swath, Volume, VolumePerArea, Weight,
};
use proptest::prelude::*;

/// Everything a plan is made from.
#[derive(Debug, Clone)]
pub struct Given {
    pub measured: Measured,
    pub kit: Kit,
    pub calibration: Calibration,
    pub label: Label,
    pub choice: Choice,
}

pub fn m(value: f64) -> Length {
    Length::from_m(value).unwrap()
}

pub fn l(value: f64) -> Volume {
    Volume::from_l(value).unwrap()
}

fn grass(shape: Shape, at: Option<(f64, f64)>) -> Part {
    Part::taped(shape).placed_at(at)
}

fn rectangle(width: f64, length: f64) -> Shape {
    Shape::Rectangle { width: m(width), length: m(length) }
}

fn surveyed(parts: Vec<Part>, sides: Vec<Side>, doubt: f64) -> Survey {
    Survey { sides, doubt: Doubt::from_percent(doubt).unwrap(), ..Survey::of(parts) }
}

/// A plain rectangle.
pub fn rectangular(doubt: BoxedStrategy<f64>) -> impl Strategy<Value = Survey> {
    (3.0..30.0f64, 3.0..30.0f64, doubt)
        .prop_map(|(width, length, doubt)| surveyed(vec![grass(rectangle(width, length), None)], vec![], doubt))
}

/// Rectangles joined, beds and ponds taken out, a margin along the front.
pub fn joined() -> impl Strategy<Value = Survey> {
    let frame = (6.0..20.0f64, 6.0..20.0f64);
    let annexe = (2.0..8.0f64, 2.0..8.0f64, 0.0..1.0f64);
    let bed = (0.5..2.0f64, 0.1..0.9f64, 0.1..0.9f64, any::<bool>());
    (frame, annexe, bed, 0.0..0.8f64, 0.0..8.0f64).prop_map(|(frame, annexe, bed, margin, doubt)| {
        let (width, length) = frame;
        let (a_width, a_length, share) = annexe;
        let (size, bed_x, bed_y, is_round) = bed;
        let shape = if is_round { Shape::Circle { diameter: m(size) } } else { rectangle(size, size) };
        let kind = if is_round { PatchKind::Pond } else { PatchKind::Bed };
        let place = (bed_x * (width - size), bed_y * (length - size));
        let bed = Part::taped(shape).taken_out(kind).placed_at(Some(place));
        let parts = vec![
            grass(rectangle(width, length), None),
            grass(rectangle(a_width, a_length), Some((width, share * (length - 1.0)))),
            bed,
        ];
        let front = Side { part_idx: 0, side_idx: 0, beside: Beside::Hedge, margin: m(margin) };
        surveyed(parts, vec![front], doubt)
    })
}

/// Round and oblique lawns, where square ends overshoot.
pub fn oblique() -> impl Strategy<Value = Survey> {
    let circle = (3.0..20.0f64).prop_map(|d| Shape::Circle { diameter: m(d) });
    let part = (3.0..15.0f64, 20.0..350.0f64)
        .prop_map(|(r, angle)| Shape::PartCircle { radius: m(r), angle: Angle::from_deg(angle).unwrap() });
    let triangle = (5.0..20.0f64, 5.0..20.0f64, 0.1..0.9f64).prop_map(|(a, b, share)| {
        let c = (a - b).abs() + share * (a + b - (a - b).abs());
        Shape::Triangle { a: m(a), b: m(b), c: m(c) }
    });
    (prop_oneof![circle, part, triangle], 0.0..8.0f64)
        .prop_map(|(shape, doubt)| surveyed(vec![grass(shape, None)], vec![], doubt))
}

pub fn any_lawn() -> impl Strategy<Value = Survey> {
    prop_oneof![rectangular((0.0..8.0f64).boxed()), joined(), oblique()]
}

fn remedy() -> impl Strategy<Value = Option<Remedy>> {
    prop_oneof![
        3 => Just(None),
        1 => Just(Some(Remedy::AsItIs)),
        1 => Just(Some(Remedy::SomePasses { k: 1 })),
        1 => Just(Some(Remedy::EvenOut)),
        1 => Just(Some(Remedy::OtherDirection)),
        1 => Just(Some(Remedy::Leave)),
    ]
}

fn headings() -> impl Strategy<Value = Vec<Heading>> {
    prop::collection::vec(prop_oneof![2 => Just(Heading::Along), 1 => Just(Heading::Across)], 1..5)
}

fn start_side() -> impl Strategy<Value = StartSide> {
    prop_oneof![Just(StartSide::Left), Just(StartSide::Right), Just(StartSide::Front), Just(StartSide::Back)]
}

/// Which way the strips lie: the plain way, and any other.
fn laying() -> impl Strategy<Value = (Angle, NarrowAt, bool)> {
    let angle = prop_oneof![1 => Just(0.0), 1 => 0.0..180.0f64].prop_map(|deg| Angle::from_deg(deg).unwrap());
    let narrow_at = prop_oneof![Just(NarrowAt::Last), Just(NarrowAt::First)];
    (angle, narrow_at, prop::bool::weighted(0.3))
}

/// How a label limits the dose: not at all, at the dose itself, or somewhat above it.
fn highest_share() -> impl Strategy<Value = Option<f64>> {
    prop_oneof![Just(None), Just(Some(1.0)), (1.0..1.6f64).prop_map(Some)]
}

pub fn kit() -> impl Strategy<Value = Kit> {
    (8.0..20.0f64, 0.0..0.6f64, 0.5..1.5f64, prop_oneof![Just(0.0), 0.1..10.0f64]).prop_map(
        |(tank, dead, swath, step)| Kit {
            tank: l(tank),
            empty_weight: Weight::from_kg(5.0).unwrap(),
            dead_volume: l(dead),
            nozzle: "a flat fan".to_owned(),
            swath: Swath::from_m(swath).unwrap(),
            jug_steps: JugSteps { volume: Volume::from_ml(step).unwrap(), mass: Mass::from_g(step).unwrap() },
            last_in: LastIn::CleanWater,
            cleaned_since: true,
            fill_limit: None,
            reach: None,
            head: None,
            clean_signed_on: None,
            checked_on: None,
        },
    )
}

pub fn calibration() -> impl Strategy<Value = Calibration> {
    (0.3..1.6f64, 0.6..1.4f64).prop_map(|(flow, pace)| Calibration {
        flow: FlowRate::from_l_per_min(flow).unwrap(),
        pace: Pace::from_m_per_s(pace).unwrap(),
        steps_per_min: None,
        made_on: NaiveDate::from_ymd_opt(2026, 4, 1).unwrap(),
        evidence: None,
    })
}

pub fn label(dose: ProductDose, highest_share: Option<f64>) -> Label {
    let water = |ml: f64| Some(Tagged::statutory(VolumePerArea::from_ml_per_m2(ml).unwrap()));
    Label {
        highest_dose: highest_share.map(|share| Tagged::statutory(dose.times(share))),
        water: WaterRange { least: water(20.0), most: water(100.0) },
        authorisation_number: Some("0000".to_owned()),
        entered_by: "a person".to_owned(),
        entered_on: NaiveDate::from_ymd_opt(2026, 4, 1).unwrap(),
        label_version: "1".to_owned(),
        ..Label::plain("An invented product", LegalClass::PlantProtection, Purpose::Weeds, Form::Liquid, dose)
    }
}

fn dose() -> impl Strategy<Value = ProductDose> {
    prop_oneof![
        (0.05..2.0f64).prop_map(|base| ProductDose::of(ProductKind::Volume, base).unwrap()),
        (0.5..4.0f64).prop_map(|base| ProductDose::of(ProductKind::Mass, base).unwrap()),
    ]
}

impl Given {
    /// The same with strips along and across a side, and no lap.
    pub fn square(mut self) -> Self {
        self.choice.angle = Angle::from_deg(0.0).unwrap();
        self.choice.edge_first = false;
        self
    }
}

/// Everything for a plan on one of these lawns.
pub fn given(lawn: impl Strategy<Value = Survey>) -> impl Strategy<Value = Given> {
    given_on(lawn).prop_map(|(_, given)| given)
}

/// Everything for a plan, with the survey the lawn comes from.
pub fn given_on(lawn: impl Strategy<Value = Survey>) -> impl Strategy<Value = (Survey, Given)> {
    let labelled = (dose(), highest_share());
    let choice = (headings(), start_side(), remedy(), remedy(), 0.8..1.25f64, laying());
    (lawn, kit(), calibration(), labelled, choice).prop_map(|(survey, kit, calibration, labelled, chosen)| {
        let (dose, highest_share) = labelled;
        let (headings, start_side, along, across, trim, (angle, narrow_at, edge_first)) = chosen;
        let n_passes = u8::try_from(headings.len()).unwrap();
        let mut choice = Choice::plain(n_passes, dose);
        choice.headings = headings;
        choice.start_side = start_side;
        choice.angle = angle;
        choice.narrow_at = narrow_at;
        choice.edge_first = edge_first;
        choice.narrow = NarrowChoice { along, across };
        choice.trim = trim;
        let (measured, label) = (survey.measure(None).unwrap(), label(dose, highest_share));
        (survey, Given { measured, kit, calibration, label, choice })
    })
}
