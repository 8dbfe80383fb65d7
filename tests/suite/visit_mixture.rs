//! Products that share the tank, the water they are mixed with, and what is worn: through the decider, as it happens.

use evensward_core::checks::Verdict;
use evensward_core::checks::mixing::JarOutcome;
use evensward_core::product::Formulation;
use evensward_core::product::solubility::Dissolving;
use evensward_core::product::{Form, Label, LegalClass, Protective, ProtectiveByPhase, Purpose, Tagged, WaterRange};
use evensward_core::quantity::{Acidity, Density, ProductAmount, ProductDose, ProductKind, Temperature, Volume};
use evensward_core::visit::command::{Command, Refusal, TickList};
use evensward_core::visit::event::{MixWater, Payload};
use evensward_core::visit::gates;
use evensward_core::visit::item::{adding_order, mix_steps};
use evensward_core::visit::state::Stage;
use uuid::Uuid;

use crate::visit_sample::{Trial, World, fill_as_planned, is_near, l, note, tick_all_mixing};

const WETTER: Uuid = Uuid::from_u128(0x77);

fn ml_per_m2(value: f64) -> ProductDose {
    ProductDose::of(ProductKind::Volume, value).unwrap()
}

/// An invented wetting agent: a liquid of 1.1 g/mL, 1 mL/m2, as its label says.
fn wetter(world: &World) -> Label {
    Label {
        name: "Invented Wetter".into(),
        legal_class: LegalClass::WettingAgent,
        purposes: vec![Purpose::Water],
        form: Form::Liquid,
        density: Some(Density::from_g_per_ml(1.1).unwrap()),
        dose: ml_per_m2(1.0),
        highest_dose: Some(Tagged::statutory(ml_per_m2(1.0))),
        water: WaterRange::default(),
        highest_concentration: None,
        contains_iron: false,
        formulation: Some(Formulation::SolubleConcentrate),
        partners: Some(Tagged::advisory(true)),
        ..world.label.clone()
    }
}

fn add(product_id: Uuid, label: Label) -> Command {
    let dose = label.dose;
    Command::AddPartner { product_id, label_id: Uuid::from_u128(0x78), label: Box::new(label), dose, typed: Vec::new() }
}

fn mixed() -> Trial {
    let mut trial = Trial::at(World::plain(), Stage::Plan);
    let partner = wetter(&trial.world);
    trial.act(add(WETTER, partner));
    trial
}

#[track_caller]
fn barred_by(answer: Result<Vec<Payload>, Refusal>, verdict_of: &str) -> bool {
    let Err(Refusal::Barred(checks)) = answer else { panic!("not barred: {answer:?}") };
    checks.iter().any(|check| check.rule == verdict_of && check.verdict == Verdict::Stop)
}

#[test]
fn a_partner_follows_the_area_and_takes_its_room_from_the_water() {
    let alone = Trial::at(World::plain(), Stage::Ready);
    let mut with = mixed();
    with.drive_to(Stage::Ready);
    let plan = |trial: &Trial| trial.position().plan.as_ref().unwrap().plan.clone();
    let (alone, with_partner) = (plan(&alone), plan(&with));
    // 1 mL on each of 308 m2, in steps of 5 mL and never above the label: 305 mL, which is as much less water.
    is_near(with_partner.partners[0].exact.base(), 308.0);
    is_near(with_partner.partners[0].product.base(), 305.0);
    is_near(with_partner.clean_water.l(), alone.clean_water.l() - 0.305);
    assert_eq!(with_partner.product, alone.product);
    assert_eq!(with_partner.mixture, alone.mixture);
    // Passes move water, and no product.
    with.act(Command::Undo);
    with.world.choice = evensward_core::plan::Choice::plain(4, with.world.choice.dose);
    with.drive_to(Stage::Ready);
    is_near(plan(&with).partners[0].product.base(), 305.0);
}

#[test]
fn a_label_that_forbids_partners_bars_whichever_product_it_is_of() {
    let mut trial = Trial::at(World::plain(), Stage::Plan);
    let forbidding = Label { partners: Some(Tagged::statutory(false)), ..wetter(&trial.world) };
    assert!(barred_by(trial.try_act(add(WETTER, forbidding)), "partner-label"));
    trial.act(Command::PassAdvisory { rule: "partner-label".into(), because: note(1) });
    let forbidding = Label { partners: Some(Tagged::statutory(false)), ..wetter(&trial.world) };
    assert!(barred_by(trial.try_act(add(WETTER, forbidding)), "partner-label"), "binding words are not passed");
    let mut world = World::plain();
    world.label.partners = Some(Tagged::statutory(false));
    let mut trial = Trial::at(world, Stage::Plan);
    let partner = wetter(&trial.world);
    assert!(barred_by(trial.try_act(add(WETTER, partner)), "partner-label"));
}

#[test]
fn three_products_share_a_tank_and_a_fourth_only_with_a_reason() {
    let mut trial = mixed();
    let partner = wetter(&trial.world);
    trial.act(add(Uuid::from_u128(0x80), partner.clone()));
    assert!(barred_by(trial.try_act(add(Uuid::from_u128(0x81), partner.clone())), "partners"));
    trial.act(Command::PassAdvisory { rule: "partners".into(), because: note(2) });
    trial.act(add(Uuid::from_u128(0x81), partner));
    assert_eq!(trial.position().partners.len(), 3);
    trial.act(Command::LeaveOutPartner { product_id: WETTER });
    assert_eq!(trial.position().partners.len(), 2);
}

#[test]
fn a_bad_jar_stops_the_mixing_until_a_reason_is_given() {
    let mut trial = mixed();
    trial.drive_to(Stage::Mix);
    assert_eq!(trial.position().jar.as_ref().unwrap().outcome, JarOutcome::Fine);
    for outcome in [JarOutcome::Heat, JarOutcome::Clumps, JarOutcome::Layers] {
        let mut trial = mixed();
        trial.drive_to(Stage::Ready);
        trial.act(Command::JarTested { outcome, note: None });
        trial.settle_what_waits();
        trial.act(crate::visit_sample::see(crate::visit_sample::fine()));
        assert!(barred_by(trial.try_act(Command::BeginMixing), "jar-test"), "{outcome:?}");
        trial.act(Command::PassAdvisory { rule: "jar-test".into(), because: note(3) });
        trial.act(Command::BeginMixing);
    }
}

#[test]
fn each_fill_gets_its_share_of_a_partner_and_more_than_the_label_bars() {
    let mut trial = mixed();
    trial.drive_to(Stage::Mix);
    tick_all_mixing(&mut trial);
    let too_much = vec![(WETTER, ProductAmount::of(ProductKind::Volume, 400.0).unwrap())];
    let fill = Command::FillMade {
        product: None,
        in_tank: None,
        typed: Vec::new(),
        partners: too_much,
        containers: Vec::new(),
    };
    assert!(barred_by(trial.try_act(fill), "dose"));
    trial.act(fill_as_planned());
    let made = &trial.position().walk.made[0];
    assert_eq!(made.partners.len(), 1);
    is_near(made.partners[0].1.base(), 305.0);
    trial.drive_to(Stage::Closed);
    // What went out of the partner is what went out of the product, in the proportion in which they were measured.
    let position = trial.position();
    let sprayed = position.partner_sprayed(WETTER).unwrap().base();
    is_near(sprayed / 305.0, position.product_sprayed().unwrap().base() / position.product_made().unwrap().base());
}

/// 1.02 mL on each of 300 m2 in three tankfuls of a pass each: 102 mL a fill, in steps of 5 mL.
#[test]
fn what_a_measure_could_not_show_of_a_partner_in_one_fill_is_made_good_in_the_next() {
    let amounts = |dose: f64, highest: Option<f64>, n_passes: u8, tank_l: f64| -> Vec<f64> {
        let mut world = World::plain().without_narrow_strip().with_passes(n_passes).with_tank(tank_l);
        // Nothing stays in the hose, so that all tankfuls are as large.
        world.kit.dead_volume = l(0.0);
        let mut trial = Trial::at(world, Stage::Plan);
        let partner = Label {
            dose: ml_per_m2(dose),
            highest_dose: highest.map(|highest| Tagged::statutory(ml_per_m2(highest))),
            ..wetter(&trial.world)
        };
        trial.act(add(WETTER, partner));
        trial.drive_to(Stage::Closed);
        let made = trial.position().walk.made.iter().map(|fill| fill.partners[0].1.base());
        let made: Vec<f64> = made.collect();
        let planned = trial.position().plan.as_ref().unwrap().plan.partners[0].product.base();
        is_near(made.iter().sum::<f64>(), planned);
        made
    };
    // Each alone would be 100 mL, and 6 mL would be missing.
    assert_eq!(amounts(1.02, None, 3, 5.0), [100.0, 105.0, 100.0]);
    assert_eq!(amounts(1.02, Some(1.2), 3, 5.0), [100.0, 105.0, 100.0]);
    // At the label's highest dose no fill passes it on its own ground, whatever is owed.
    assert_eq!(amounts(1.02, Some(1.02), 3, 5.0), [100.0, 100.0, 100.0]);
    // Tankfuls that are made in mid-pass are alike: a pass must not be stronger at its end.
    assert_eq!(amounts(1.02, None, 2, 3.0), [100.0, 100.0, 100.0]);
}

#[test]
fn what_is_dry_goes_first_and_a_solution_last() {
    let world = World::plain();
    let of = |formulation| Label { formulation: Some(formulation), ..wetter(&world) };
    let labels = [
        of(Formulation::SolubleConcentrate),
        of(Formulation::EmulsifiableConcentrate),
        of(Formulation::SuspensionConcentrate),
        of(Formulation::DispersibleGranules),
    ];
    let labels: Vec<&Label> = labels.iter().collect();
    assert_eq!(adding_order(&labels), [3, 2, 1, 0]);
    let poured: Vec<String> = mix_steps(&labels, false)
        .into_iter()
        .filter(|step| step.item.starts_with("mix-pour-product"))
        .map(|step| step.item.to_string())
        .collect();
    assert_eq!(poured, ["mix-pour-product-4", "mix-pour-product-3", "mix-pour-product-2", "mix-pour-product"]);
}

#[test]
fn pieces_are_put_on_one_by_one_each_time_a_phase_is_entered() {
    let mut world = World::plain().with_tank(7.0);
    world.label.protective = ProtectiveByPhase {
        mixing: vec![Protective::Gloves, Protective::FaceShield],
        spraying: vec![Protective::Gloves, Protective::Boots],
        washing: vec![Protective::Apron],
    };
    let mut trial = Trial::at(world, Stage::Mix);
    let worn = |trial: &Trial, group: &str| -> Vec<String> {
        let steps = trial.position().mix_steps().into_iter().filter(|step| step.group == group);
        steps.map(|step| step.item.to_string()).collect()
    };
    assert_eq!(worn(&trial, "group-protective"), ["mixing-ready-gloves", "mixing-ready-face-shield"]);
    assert_eq!(worn(&trial, "group-again"), Vec::<String>::new(), "the ready list has them before the first fill");
    trial.drive_to(Stage::Walk);
    trial.drive_to(Stage::Mix);
    assert!(trial.position().mix.is_empty(), "each fill begins with nothing ticked");
    assert_eq!(worn(&trial, "group-again"), ["spraying-ready-gloves", "spraying-ready-boots"]);
    let lacking: Vec<_> =
        gates::mixture_checks(trial.position()).into_iter().filter(|check| check.rule == "protective-mixing").collect();
    assert_eq!(lacking.len(), 1, "boots are asked for on the walk and not at the concentrate");
    trial.drive_to(Stage::Wash);
    assert_eq!(trial.position().wash_steps()[0].item, "washing-ready-apron");
}

#[test]
fn what_is_worn_is_ticked_at_once_and_taken_back_as_one_and_the_site_is_looked_at_one_by_one() {
    let mut trial = Trial::at(World::plain(), Stage::Ready);
    let before = trial.position().ready.len();
    trial.act(Command::TickAll { list: TickList::Ready, group: "group-protective".into() });
    assert_eq!(trial.position().ready.len(), before + 2);
    let again = trial.try_act(Command::TickAll { list: TickList::Ready, group: "group-protective".into() });
    assert!(matches!(again, Err(Refusal::First(_))));
    trial.act(Command::Undo);
    assert_eq!(trial.position().ready.len(), before);
    for group in ["group-nothing", "group-site", "group-sprayer"] {
        let refused = trial.try_act(Command::TickAll { list: TickList::Ready, group: group.into() });
        assert_eq!(refused, Err(Refusal::UnknownItem), "{group}");
    }
    let elsewhere = trial.try_act(Command::TickAll { list: TickList::Wash, group: "group-washing".into() });
    assert_eq!(elsewhere, Err(Refusal::NotNow(Stage::Ready)));
}

/// 770 g of crystals in 14.1 L of mixture: half of it, 7 L, would take far more; a cupful of cold water would not.
#[test]
fn crystals_are_held_against_the_water_that_is_there_when_they_go_in() {
    let mut world = World::plain();
    world.label.dissolving = Some(Dissolving::IronSulphateHeptahydrate);
    let seen = |deg_c: Option<f64>, bucket_l: Option<f64>| Command::SeeWater {
        water: MixWater {
            ph: Some(Acidity::from_ph(6.5).unwrap()),
            temperature: deg_c.map(|deg_c| Temperature::from_deg_c(deg_c).unwrap()),
            bucket: bucket_l.map(|bucket_l| Volume::from_l(bucket_l).unwrap()),
            ..MixWater::default()
        },
        typed: Vec::new(),
    };
    let check = |deg_c, bucket_l, verdict: Verdict, code: &str| {
        let mut trial = Trial::at(world.clone(), Stage::Mix);
        trial.act(seen(deg_c, bucket_l));
        let due = trial.position().walk.due[0].clone();
        let checks = gates::dissolving_checks(trial.position(), due.product, &[], due.mixture);
        assert_eq!((checks[0].verdict, checks[0].said.code.as_ref()), (verdict, code), "{deg_c:?} {bucket_l:?}");
    };
    check(Some(10.0), None, Verdict::Go, "dissolves");
    // At 10 degrees 452 g dissolve in a litre of added water: 770 g need 1.70 L, and below 2.13 L it is near.
    check(Some(10.0), Some(2.2), Verdict::Go, "dissolves");
    check(Some(10.0), Some(2.0), Verdict::Caution, "dissolves-barely");
    check(Some(10.0), Some(1.65), Verdict::Stop, "does-not-dissolve");
    check(Some(25.0), Some(1.65), Verdict::Go, "dissolves");
    check(None, None, Verdict::Caution, "water-temperature-unknown");
    check(Some(55.0), None, Verdict::Caution, "temperature-outside-table");
    let mut trial = Trial::at(world.clone(), Stage::Mix);
    trial.act(seen(Some(10.0), Some(1.65)));
    tick_all_mixing(&mut trial);
    assert!(barred_by(trial.try_act(fill_as_planned()), "dissolving"));
    trial.act(seen(Some(10.0), None));
    trial.act(fill_as_planned());
}

#[test]
fn alkaline_water_and_iron_is_a_caution_and_unseen_water_is_waited_for() {
    let mut trial = Trial::at(World::plain(), Stage::Ready);
    let waits = |trial: &Trial| {
        crate::visit_sample::waiting(trial.position(), &trial.world.facts).contains("water-not-looked-at")
    };
    assert!(waits(&trial));
    let water = MixWater { ph: Some(Acidity::from_ph(7.6).unwrap()), ..MixWater::default() };
    trial.act(Command::SeeWater { water, typed: Vec::new() });
    assert!(!waits(&trial));
    let checks = &trial.position().water[0].checks;
    assert_eq!((checks[0].said.code.as_ref(), checks[0].verdict), ("water-alkaline", Verdict::Caution));
    let mut plain = World::plain();
    plain.label.contains_iron = false;
    plain.label.form = Form::Powder;
    assert!(!waits(&Trial::at(plain, Stage::Ready)), "a product that does not mind the water asks for nothing");
}
