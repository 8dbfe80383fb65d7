//! The mixture through the door: a partner, its jar test, its share of every fill, and what is said of it afterwards.

use super::Trial;
use super::visit::{SPRING_FEED, Walk, typed};
use crate::dto::ask::FailureCode;
use crate::dto::mixing::{MixWaterInput, PartnersView};
use crate::dto::visit::{Act, Panel};
use crate::visit::with_summaries;

fn partners(walk: &Walk) -> PartnersView {
    match &walk.view.panel {
        Panel::Plan { partners, .. } => *partners.clone(),
        other => panic!("no plan: {other:?}"),
    }
}

fn mixed() -> Walk {
    let mut walk = Walk::open_in(Trial::with_demo(), 0x7000);
    walk.until_plan();
    let can_add = partners(&walk).can_add;
    assert!(can_add.iter().any(|choice| choice.product_id == SPRING_FEED), "{can_add:?}");
    walk.act(Act::AddPartner { product_id: SPRING_FEED.into(), dose: typed("", "mL/m2") });
    walk
}

#[test]
fn a_partner_is_planned_tried_measured_recorded_and_counted() {
    let mut walk = mixed();
    let view = partners(&walk);
    assert_eq!((view.chosen.len(), view.order.len()), (1, 2));
    assert!(view.can_add.iter().all(|choice| choice.product_id != SPRING_FEED), "it is in the tank already");
    let Panel::Plan { plan: Some(plan), .. } = walk.view.panel.clone() else { panic!("no plan") };
    assert!(plan.fills.iter().all(|fill| fill.partners.len() == 1), "every fill has its share");
    let choice = walk.choice();
    walk.until_ready_with(choice);
    let Panel::Ready { jar: Some(jar), waits_for, can_begin, .. } = walk.view.panel.clone() else { panic!("no jar") };
    assert!(jar.steps.len() >= 7 && jar.outcome.is_empty() && !can_begin);
    assert!(waits_for.iter().any(|said| said.code == "jar-test-owed"));
    walk.act(Act::JarTested { outcome: "fine".into(), note: "Clear.".into() });
    let Panel::Ready { jar: Some(jar), .. } = walk.view.panel.clone() else { panic!("no jar") };
    assert_eq!((jar.outcome.as_str(), jar.note.as_str()), ("fine", "Clear."));
    walk.see_wind_towards("right");
    walk.act(Act::BeginMixing);
    let Panel::Mix { steps, fill, .. } = walk.view.panel.clone() else { panic!("not mixing") };
    assert_eq!(fill.partners.len(), 1);
    let poured: Vec<&str> =
        steps.iter().map(|step| step.item.as_str()).filter(|item| item.starts_with("mix-pour-product")).collect();
    assert_eq!(poured.len(), 2, "{poured:?}");
    assert!(
        steps.iter().any(|step| step.item == "mix-agitate-before-next" || step.item == "mix-agitate-before-next-2")
    );
    walk.finish();
    let Panel::Closed { record } = &walk.view.panel else { panic!("not closed") };
    let json: serde_json::Value = serde_json::from_str(record.json.as_ref().unwrap()).unwrap();
    let partner = &json["partners"][0];
    assert!(partner["dose_given"]["value"].as_f64().unwrap() > 0.0);
    assert_eq!(json["fills"][0]["partners"].as_array().unwrap().len(), 1);
    assert_eq!(json["jar_test"]["outcome"], "fine");
    assert_eq!(json["mix_water"].as_array().unwrap().len(), 1);
    let rows = walk.trial.companion.store.visits_between(i64::MIN, i64::MAX).unwrap();
    let rows = with_summaries(&walk.trial.companion, rows).unwrap();
    let (_, summary) = rows.iter().find(|(row, _)| row.visit_id.to_string() == walk.visit_id).unwrap();
    assert_eq!(summary.partners[0].product_id.to_string(), SPRING_FEED);
    assert!(summary.partners[0].dose_per_m2.is_some(), "the partner counts as a treatment of its own");
}

#[test]
fn a_partner_is_left_out_again_and_the_visits_own_product_is_none() {
    let mut walk = mixed();
    walk.act(Act::LeaveOutPartner { product_id: SPRING_FEED.into() });
    assert!(partners(&walk).chosen.is_empty() && partners(&walk).order.is_empty());
    let failure = walk.try_act(Act::LeaveOutPartner { product_id: SPRING_FEED.into() }).unwrap_err();
    assert_eq!(failure.code, FailureCode::Refused, "{failure:?}");
    let own = super::visit::MOSS_IRON;
    let failure = walk.try_act(Act::AddPartner { product_id: own.into(), dose: typed("", "mL/m2") }).unwrap_err();
    assert_eq!(failure.problems[0].field, "product_id");
}

#[test]
fn the_water_is_refused_field_by_field_and_kept_as_it_was_typed() {
    let mut walk = Walk::open_in(Trial::with_demo(), 0x7100);
    walk.until_plan();
    let choice = walk.choice();
    walk.until_ready_with(choice);
    let wrong = MixWaterInput {
        ph: typed("15", "pH"),
        hardness: typed("10", "pH"),
        temperature: typed("warm", "degC"),
        ..MixWaterInput::default()
    };
    let failure = walk.try_act(Act::SeeWater { input: wrong }).unwrap_err();
    let fields: Vec<&str> = failure.problems.iter().map(|problem| problem.field.as_str()).collect();
    assert_eq!(fields, ["ph", "hardness", "temperature"]);
    let right = MixWaterInput {
        source: "Butt by the shed".into(),
        ph: typed("7,8", "pH"),
        hardness: typed("12", "dH"),
        temperature: typed("50", "degF"),
        bucket: typed("", "L"),
    };
    walk.act(Act::SeeWater { input: right.clone() });
    let Panel::Ready { water: Some(water), .. } = walk.view.panel.clone() else { panic!("no water") };
    assert_eq!(water.input, right);
    assert!(water.checks.iter().any(|check| check.said.code == "water-alkaline"));
    assert!(water.checks.iter().any(|check| check.said.code == "water-hard"), "12 German degrees are 214 mg/L");
}
