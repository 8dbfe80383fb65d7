//! One payload of each kind with figures chosen by hand, and some more for the variants that one cannot show.
//!
//! Nothing here comes from the planner: a mended planner must not change a published format.

use std::sync::Arc;

use chrono::NaiveDate;
use evensward_core::checks::weather::Observation;
use evensward_core::checks::wind::{Wind, WindFrom, WindReading};
use evensward_core::checks::{Check, Verdict};
use evensward_core::kit::{Calibration, JugSteps, Kit, LastIn};
use evensward_core::lawn::{
    Beside, Measured, MeasuredSide, NetArea, Part, Patch, PatchKind, Ring, Shape, Side, Survey, ValidOutline,
};
use evensward_core::plan::{Cause, Choice, Heading, NarrowAt, NarrowChoice, Remedy, StartSide, Walkable};
use evensward_core::product::{
    FirstAid, Form, Label, LegalClass, Protective, ProtectiveByPhase, Purpose, Rain, Source, Tag, Tagged, WaterRange,
    Year,
};
use evensward_core::quantity::{
    Angle, Area, Arg, Concentration, Density, Doubt, Figure, FlowRate, Length, Mass, Pace, ProductAmount, ProductDose,
    ProductKind, Span, Swath, Temperature, Unit, Volume, VolumePerArea, Weight, WindSpeed,
};
use evensward_core::visit::event::{
    Applied, CorrectionKind, DueFill, Found, FrozenKit, FrozenLabel, FrozenLawn, FrozenPlan, Guide, LookBack, NoteRef,
    Payload, Place, Share, Signature, StopReason, Survivors, TypedFigure, UseUpKind,
};
use evensward_core::visit::item::PauseReason;
use uuid::Uuid;

use super::sample_plan::plan;

fn day(text: &str) -> NaiveDate {
    text.parse().unwrap()
}

pub(super) fn note(number: u128) -> NoteRef {
    NoteRef { id: Uuid::from_u128(number), hash: format!("{number:064x}") }
}

pub(super) fn m(value: f64) -> Length {
    Length::from_m(value).unwrap()
}

pub(super) fn l(value: f64) -> Volume {
    Volume::from_l(value).unwrap()
}

pub(super) fn ml(value: f64) -> ProductAmount {
    ProductAmount::of(ProductKind::Volume, value).unwrap()
}

pub(super) fn dose(value: f64) -> ProductDose {
    ProductDose::of(ProductKind::Volume, value).unwrap()
}

pub(super) fn rate(value: f64) -> VolumePerArea {
    VolumePerArea::from_ml_per_m2(value).unwrap()
}

/// A check with every kind of argument, in an order that is not the alphabet's.
pub(super) fn checks() -> Vec<Check> {
    vec![
        Check::new("dose", Verdict::Stop, Tag::Own, "label", "dose-above-highest")
            .with_value(Arg::number(2.6, Unit::MillilitrePerSquareMetre, 3))
            .with_limit(Arg::number(2.5, Unit::MillilitrePerSquareMetre, 3))
            .with("product", Arg::Text("Invented Feed".into()))
            .with("purpose", Arg::Code("feeding".into()))
            .with("on", Arg::Date(day("2026-05-04")))
            .with("passes", Arg::Count(3)),
        Check::new("water", Verdict::Go, Tag::Statutory, "label", "water-fine"),
        Check::new("wind", Verdict::Caution, Tag::Advisory, "common-practice", "wind-light"),
    ]
}

pub(super) fn typed(field: &'static str, text: &str, unit: Unit) -> Vec<TypedFigure> {
    vec![TypedFigure { field: field.into(), figure: Figure::new(text, unit) }]
}

/// A lawn of 4 m by 3 m with a bed in it, between a hedge and open water.
fn survey() -> Survey {
    let grass = Part::taped(Shape::Rectangle { width: m(4.0), length: m(3.0) });
    let bed = Part::taped(Shape::Rectangle { width: m(1.0), length: m(1.0) })
        .taken_out(PatchKind::Bed)
        .placed_at(Some((2.0, 1.0)));
    let side = |side_idx, beside, margin_m| Side { part_idx: 0, side_idx, beside, margin: m(margin_m) };
    Survey {
        sides: vec![side(1, Beside::Hedge, 0.0), side(2, Beside::OpenWater, 0.5)],
        doubt: Doubt::from_percent(2.0).unwrap(),
        away_bearing: Some(Angle::from_deg(90.0).unwrap()),
        ..Survey::of(vec![grass, bed])
    }
}

/// Shapes that the lawn above has not.
fn other_survey() -> Survey {
    let part = |shape| Part::taped(shape).placed_at(Some((10.0, 0.0)));
    let triangle = Part::taped(Shape::Triangle { a: m(3.0), b: m(4.0), c: m(5.0) });
    Survey::of(vec![
        triangle,
        part(Shape::Circle { diameter: m(4.0) }),
        part(Shape::PartCircle { radius: m(2.0), angle: Angle::from_deg(90.0).unwrap() }),
    ])
}

fn ground(corners: &[(f64, f64)], hole: &[(f64, f64)]) -> ValidOutline {
    let holes = if hole.is_empty() { Vec::new() } else { vec![hole.to_vec()] };
    ValidOutline::recalled(&[Ring { outer: corners.to_vec(), holes }]).unwrap()
}

/// The survey above as it was measured, corner by corner.
pub(super) fn measured() -> Measured {
    let bed = [(2.0, 1.0), (3.0, 1.0), (3.0, 2.0), (2.0, 2.0)];
    let water = Side { part_idx: 0, side_idx: 2, beside: Beside::OpenWater, margin: m(0.5) };
    Measured {
        outline: ground(&[(0.0, 0.0), (4.0, 0.0), (4.0, 3.0), (0.0, 3.0)], &[]),
        patches: vec![Patch { kind: PatchKind::Bed, outline: ground(&bed, &[]), is_place_assumed: false }],
        margins: ground(&[(0.0, 2.5), (4.0, 2.5), (4.0, 3.0), (0.0, 3.0)], &[]),
        net: ground(&[(0.0, 0.0), (4.0, 0.0), (4.0, 2.5), (0.0, 2.5)], &bed),
        outline_area: Area::from_m2(12.0).unwrap(),
        net_area: NetArea { area: Area::from_m2(9.0).unwrap(), doubt: Doubt::from_percent(2.0).unwrap() },
        sides: vec![MeasuredSide { side: water, line: vec![(4.0, 3.0), (0.0, 3.0)], is_patch_edge: false }],
        away_bearing: Some(Angle::from_deg(90.0).unwrap()),
        slope: None,
        origin: None,
        entry: None,
        tap: None,
    }
}

fn lawn(survey: Survey, measured: Measured) -> FrozenLawn {
    FrozenLawn {
        lawn_id: Uuid::from_u128(0x1a),
        client_id: Some(Uuid::from_u128(0xc1)),
        client: Some(note(0xc2)),
        survey,
        measured,
        rest_of: None,
    }
}

pub(super) fn label() -> Label {
    Label {
        name: "Invented Feed".into(),
        legal_class: LegalClass::Fertiliser,
        purposes: vec![Purpose::Feeding, Purpose::Colour],
        form: Form::Liquid,
        density: Some(Density::from_g_per_ml(1.2).unwrap()),
        dose: dose(2.0),
        highest_dose: Some(Tagged::statutory(dose(2.5))),
        water: WaterRange { least: Some(Tagged::advisory(rate(30.0))), most: Some(Tagged::own(rate(60.0))) },
        highest_concentration: Some(Tagged {
            value: Concentration::of(ProductKind::Volume, 80.0).unwrap(),
            tag: Tag::Advisory,
            source: Source::SafetySheet,
        }),
        least_days: Some(Tagged { value: 42, tag: Tag::Statutory, source: Source::Law }),
        most_per_year: Some(Tagged::statutory(3)),
        year: Year::Rolling,
        keep_off: Some(Tagged { value: Span::from_s(7_200.0).unwrap(), tag: Tag::Own, source: Source::CodeOfPractice }),
        rain: Rain::Free(Tagged::advisory(Span::from_s(14_400.0).unwrap())),
        mowing: "Words of the label on mowing.".into(),
        protective: ProtectiveByPhase {
            mixing: vec![Protective::Gloves, Protective::FaceShield],
            spraying: vec![Protective::Boots],
            washing: vec![],
        },
        water_margin: Some(Tagged::statutory(m(2.0))),
        authorisation_number: None,
        is_total_herbicide: false,
        contains_iron: true,
        entered_by: String::new(),
        entered_on: day("2026-01-10"),
        label_version: "Edition 3".into(),
        formulation: None,
        dissolving: None,
        partners: None,
        first_aid: FirstAid {
            splash: "Words of the label on a splash.".into(),
            spill: "Words of the label on a spill.".into(),
            swallowed: "Words of the label on swallowing.".into(),
            whom_to_call: "Words of the label on whom to call.".into(),
        },
        ..Label::plain("", LegalClass::Fertiliser, Purpose::Feeding, Form::Liquid, dose(2.0))
    }
}

pub(super) fn frozen_label(label: Label) -> FrozenLabel {
    FrozenLabel { product_id: Uuid::from_u128(0xf1), label_id: Uuid::from_u128(0xf2), label, measured: measured() }
}

fn kit(last_in: LastIn) -> FrozenKit {
    FrozenKit {
        kit_id: Uuid::from_u128(0xb1),
        calibration_id: Uuid::from_u128(0xb2),
        kit: Kit {
            tank: l(15.0),
            empty_weight: Weight::from_kg(4.2).unwrap(),
            dead_volume: l(0.25),
            nozzle: "Flat fan, blue".into(),
            swath: Swath::from_m(1.0).unwrap(),
            jug_steps: JugSteps { volume: l(0.005), mass: Mass::from_g(5.0).unwrap() },
            last_in,
            cleaned_since: true,
            fill_limit: Some(l(12.0)),
            reach: None,
            head: None,
            clean_signed_on: None,
            checked_on: None,
        },
        calibration: Calibration {
            flow: FlowRate::from_l_per_min(0.9).unwrap(),
            pace: Pace::from_m_per_s(1.0).unwrap(),
            steps_per_min: Some(96.0),
            made_on: day("2026-04-20"),
            evidence: None,
        },
        is_first_use: false,
    }
}

fn choice() -> Choice {
    Choice {
        n_passes: 1,
        headings: vec![Heading::Along],
        angle: Angle::from_deg(0.0).unwrap(),
        start_side: StartSide::Left,
        narrow_at: NarrowAt::Last,
        edge_first: false,
        narrow: NarrowChoice { along: Some(Remedy::SomePasses { k: 1 }), across: None },
        pace: Some(Pace::from_m_per_s(1.1).unwrap()),
        dose: dose(2.0),
        jug_step: Some(ml(0.7)),
        trim: 1.05,
        clean_water_in_tank: l(0.5),
        carry_limit: Some(Weight::from_kg(25.0).unwrap()),
        walkable: Walkable { slowest: Pace::from_m_per_s(0.6).unwrap(), fastest: Pace::from_m_per_s(1.4).unwrap() },
    }
}

pub(super) fn due() -> Vec<DueFill> {
    vec![DueFill {
        from: Place { pass: 1, strips_done: 0 },
        to: Place { pass: 1, strips_done: 1 },
        mixture: l(0.295),
        product: ml(6.0),
        product_exact: ml(6.1),
        water: l(0.289),
    }]
}

fn observation(reading: WindReading) -> Observation {
    Observation {
        wind: Some(Wind { reading, from: Some(WindFrom::Lawn(Angle::from_deg(270.0).unwrap())) }),
        gusts: Some(false),
        rain_now: Some(false),
        dry_hours_expected: Some(6.5),
        temperature: Some(Temperature::from_deg_c(-3.5).unwrap()),
        grass_wet: None,
        frozen: Some(true),
        ..Observation::default()
    }
}

/// One payload of each kind.
pub(super) fn each_kind() -> Vec<Payload> {
    let found = Found {
        target: Some(Purpose::Feeding),
        share: Some(Share::Much),
        applied: Applied::Something { what: Some(note(3)), on: Some(day("2026-03-01")) },
        look_back: Some(LookBack { visit: Uuid::from_u128(0xa1), survivors: Survivors::AlongStrip }),
        situation: None,
        sown_on: None,
        mown_on: None,
    };
    let signature = Signature {
        by: note(4),
        cause: Some(Cause::PaceOrFlow),
        advice: vec!["advice-keep-off".into()],
        look_back_on: Some(day("2026-05-18")),
        note: Some(note(5)),
        learned_factor: Some(1.07),
    };
    vec![
        Payload::Opened(Arc::new(lawn(survey(), measured()))),
        Payload::Assessed { found: Arc::new(found), checks: checks() },
        Payload::ProductChosen { label: Arc::new(frozen_label(label())), checks: checks() },
        Payload::KitChosen { kit: Arc::new(kit(LastIn::Product { name: "Invented Iron".into() })), checks: checks() },
        Payload::PlanAgreed {
            plan: Arc::new(FrozenPlan { choice: choice(), plan: plan(), guide: Guide::ByStrip }),
            fills: due(),
            typed: typed("dose", "2,0", Unit::MillilitrePerSquareMetre),
            checks: checks(),
            later: None,
        },
        Payload::ReadyTicked { item: "ready-gloves".into(), on: true },
        Payload::WeatherSeen {
            observation: observation(WindReading::ByMeter {
                speed: WindSpeed::from_m_per_s(1.2).unwrap(),
                height: m(1.0),
            }),
            typed: typed("wind_speed", "1.2", Unit::MetrePerSecond),
            checks: checks(),
            limits: None,
        },
        Payload::AdvisoryPassed { rule: "frozen".into(), because: note(6) },
        Payload::MixingBegun { carried: vec!["ready-nozzle-sound".into()], checks: checks() },
        Payload::MixTicked { item: "mix-half-water".into(), on: false },
        Payload::FillMade {
            fill: 1,
            product: ml(6.0),
            mixture: l(0.295),
            in_tank: l(0.045),
            typed: typed("product", "6", Unit::Millilitre),
            partners: Vec::new(),
            checks: Vec::new(),
            containers: Vec::new(),
        },
        Payload::StripDone,
        Payload::PassDone,
        Payload::RefillCalled { strips_done: None },
        Payload::RanShort { strips_done: 7 },
        Payload::Paused { reason: PauseReason::PersonOrAnimal, note: Some(note(7)) },
        Payload::Resumed { seen: vec!["ready-people-away".into(), "ready-pets-away".into()] },
        Payload::TankMeasured { left: l(1.3), is_as_planned: false, typed: typed("left", "1.3", Unit::Litre) },
        Payload::Corrected {
            kind: CorrectionKind::AddWater,
            water_now: l(1.8),
            water_more: l(0.9),
            water_less: Volume::ZERO,
            n_passes: 3,
            fills: due(),
            checks: checks(),
        },
        Payload::UsedUp {
            kind: UseUpKind::Part,
            leftover: l(0.4),
            water: l(0.1),
            area_m2: 12.5,
            checks: checks(),
            strips: Vec::new(),
        },
        Payload::WashTicked { item: "wash-boots".into(), on: true },
        Payload::Washed,
        Payload::Stopped { reason: StopReason::Health, note: Some(note(8)) },
        Payload::Closed(Arc::new(signature)),
        Payload::Undone { command: Uuid::from_u128(0x99) },
    ]
    .into_iter()
    .chain(super::sample_mixing::kinds())
    .chain(super::sample_day::kinds())
    .chain(super::sample_walk::kinds())
    .chain(super::sample_several::kinds())
    .collect()
}

/// Variants that the ones above cannot show, solids among them.
pub(super) fn other_variants() -> Vec<Payload> {
    let solid = |base| ProductDose::of(ProductKind::Mass, base).unwrap();
    let mut crystals = label();
    crystals.form = Form::Crystals;
    crystals.density = None;
    crystals.dose = solid(2.0);
    crystals.highest_dose = Some(Tagged::statutory(solid(2.5)));
    crystals.highest_concentration = Some(Tagged::own(Concentration::of(ProductKind::Mass, 80.0).unwrap()));
    crystals.rain = Rain::WantedWithin(Tagged::own(Span::from_s(3_600.0).unwrap()));
    let mut silent = label();
    silent.rain = Rain::NotStated;
    silent.highest_dose = None;
    silent.water = WaterRange::default();
    let assessed = |applied| Payload::Assessed {
        found: Arc::new(Found {
            target: None,
            share: None,
            applied,
            look_back: None,
            situation: None,
            sown_on: None,
            mown_on: None,
        }),
        checks: Vec::new(),
    };
    let labelled = |label| Payload::ProductChosen { label: Arc::new(frozen_label(label)), checks: Vec::new() };
    let remedied = |remedy| {
        let choice = Choice { narrow: NarrowChoice { along: None, across: Some(remedy) }, ..choice() };
        let plan = Arc::new(FrozenPlan { choice, plan: plan(), guide: Guide::ByPass });
        Payload::PlanAgreed { plan, fills: Vec::new(), typed: Vec::new(), checks: Vec::new(), later: None }
    };
    let mut variants = vec![
        Payload::Opened(Arc::new(lawn(other_survey(), other_survey().measure(None).unwrap()))),
        assessed(Applied::Nothing),
        assessed(Applied::Unknown),
        assessed(Applied::Something { what: None, on: None }),
        labelled(crystals),
        labelled(silent),
        remedied(Remedy::AsItIs),
        remedied(Remedy::OtherDirection),
        remedied(Remedy::Leave),
        Payload::WeatherSeen {
            observation: observation(WindReading::BySign { force: 2 }),
            typed: Vec::new(),
            checks: Vec::new(),
            limits: None,
        },
        Payload::WeatherSeen {
            observation: Observation::default(),
            typed: Vec::new(),
            checks: Vec::new(),
            limits: None,
        },
        Payload::FillMade {
            fill: 2,
            // A third has no end in binary: it must come back to the last bit.
            product: ProductAmount::of(ProductKind::Mass, 1_000.0 / 3.0).unwrap(),
            mixture: l(10.0 / 3.0),
            in_tank: l(1.0 / 3.0),
            typed: Vec::new(),
            partners: Vec::new(),
            checks: Vec::new(),
            containers: Vec::new(),
        },
        Payload::FillMade {
            fill: 3,
            product: ml(1_000.0 / 3.0),
            mixture: l(1e-9),
            in_tank: l(9.7),
            typed: Vec::new(),
            partners: Vec::new(),
            checks: Vec::new(),
            containers: Vec::new(),
        },
        Payload::Paused { reason: PauseReason::Wind, note: None },
        Payload::Stopped { reason: StopReason::Other, note: None },
    ];
    let lasts = [LastIn::Nothing, LastIn::CleanWater, LastIn::TotalHerbicide, LastIn::Unknown];
    variants.extend(lasts.map(|last_in| Payload::KitChosen { kit: Arc::new(kit(last_in)), checks: Vec::new() }));
    variants
}
