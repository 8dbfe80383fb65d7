//! What is spoiled in a row of the file must not make a treatment count as none.

use evensward_format::journal::VisitRow;
use evensward_store::Append;
use uuid::Uuid;

use super::visit::Walk;
use crate::visit::with_summaries;

#[test]
fn a_treatment_counts_though_its_summary_is_spoiled() {
    let mut walk = Walk::open();
    walk.until_mix();
    walk.finish();
    let visit_id = walk.visit_id.parse().unwrap();
    let store = &mut walk.trial.companion.store;
    let row = store.visit(visit_id).unwrap().unwrap();
    let mut events = store.events(visit_id).unwrap();
    // The same journal once more under another id, on a lawn of its own, with nothing readable in its row.
    let (copy_id, lawn_id) = (Uuid::from_u128(0xc0), Uuid::from_u128(0x1a));
    for event in &mut events {
        event.event_id = Uuid::from_u128(0xc000 + u128::from(event.seq));
        event.visit_id = copy_id;
        event.command_id = Uuid::from_u128(0xc1);
    }
    let projection = VisitRow { visit_id: copy_id, lawn_id, summary: "\"spoiled\"".into(), ..row.clone() };
    let append = Append {
        expected_seq: 0,
        events: &events,
        projection: &projection,
        lawns: &[],
        private: &[],
        link: None,
        clear_draft: None,
        uses: None,
    };
    store.append(&append).unwrap();
    let rows = walk.trial.companion.store.visits_of_lawn(lawn_id).unwrap();
    let found = with_summaries(&walk.trial.companion, rows).unwrap();
    let expected = with_summaries(&walk.trial.companion, [row]).unwrap();
    assert!(expected[0].1.treated_on.is_some());
    assert_eq!(found[0].1, expected[0].1);
}
