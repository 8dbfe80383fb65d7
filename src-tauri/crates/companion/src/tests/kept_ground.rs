//! The ground of a closed visit, as later visits count it.

use super::visit::{FRONT_LAWN, MOSS_IRON, Walk};
use crate::dto::ask::{Answer, Ask};
use crate::dto::visit::{Act, Panel};
use crate::visit::with_summaries;

#[test]
fn a_closed_visit_keeps_its_ground_and_a_lawn_measured_anew_counts_whole() {
    let mut walk = Walk::open();
    walk.until_mix();
    walk.finish();
    let Panel::Closed { record } = &walk.view.panel else { panic!("not closed") };
    let json: serde_json::Value = serde_json::from_str(record.json.as_ref().unwrap()).unwrap();
    let covered = json["place"]["covered"].as_array().unwrap();
    assert_eq!((covered.len(), &covered[0]["n_passes"]), (1, &serde_json::json!(4)));
    assert_eq!(json["place"]["covered_geojson"], serde_json::Value::Null, "nobody knows where it lies");
    let row = walk.trial.companion.store.visit(walk.visit_id.parse().unwrap()).unwrap().unwrap();
    let summaries = with_summaries(&walk.trial.companion, [row]).unwrap();
    assert!(summaries[0].1.ground.is_some());

    let Answer::Lawn(view) = walk.trial.done(Ask::Lawn { lawn_id: FRONT_LAWN.into() }) else { panic!("no lawn") };
    let mut changed = view.input;
    changed.parts[0].length.text = "19".into();
    walk.trial.done(Ask::SaveLawn { lawn_id: FRONT_LAWN.into(), input: changed, draft_key: None });
    let mut again = Walk::open_in(walk.trial, 0x9000);
    again.assess();
    let failure = again.try_act(Act::ChooseProduct { product_id: MOSS_IRON.into() }).unwrap_err();
    let rules: Vec<&str> = failure.checks.iter().map(|check| check.rule.as_str()).collect();
    assert!(rules.contains(&"interval"), "{rules:?}");
}
