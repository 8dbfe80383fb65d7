//! The clock is set, or summer time ends, in the middle of a walk: how long things took must not change, and dates stay right.
//!
//! One walk is done three times by the same hand, alike but for the wall clock; what the steady clock of the run measured is
//! then the same to the millisecond.

use std::sync::Arc;

use evensward_companion::dto::visit::{Act, Panel};
use evensward_core::visit::state::{PassTruth, Pause, State};
use evensward_store::Store;
use serde_json::Value;

use super::{Hand, SetClock, copied, entered, firm_in, fold_of, plain};

const HOUR_MS: i64 = 3_600_000;
/// 2026-10-25 00:50 in UTC, 01:50 by British summer time, which ends at 01:00 in UTC.
const BEFORE_SUMMER_ENDS_UTC_MS: i64 = 1_792_889_400_000;

struct Done {
    record: Value,
    state: State,
}

/// A whole visit that begins then; in its second pass something happens to the clock while the walk is paused.
fn walked(clock: &Arc<SetClock>, happens: impl Fn(&SetClock)) -> Done {
    let folder = tempfile::tempdir().unwrap();
    let firm = tempfile::tempdir().unwrap();
    firm_in(firm.path());
    copied(firm.path(), folder.path());
    let companion = entered(Store::open(folder.path()).unwrap(), folder.path(), Arc::clone(clock));
    let mut hand = Hand::opens(companion, Arc::clone(clock)).unwrap();
    hand.goes_until(|view| matches!(&view.panel, Panel::Walk(walk) if walk.pass == 2));
    hand.act(Act::Pause { reason: "phone".into(), note: String::new() });
    clock.goes_on(120_000);
    happens(clock);
    clock.goes_on(60_000);
    hand.goes_until(|view| matches!(view.panel, Panel::Closed { .. }));
    let Panel::Closed { record } = &hand.view.panel else { panic!("not closed") };
    let record = serde_json::from_str(record.json.as_ref().unwrap()).unwrap();
    let visit_id = hand.visit_id();
    drop(hand);
    let state = fold_of(&Store::open(folder.path()).unwrap().store.events(visit_id).unwrap());
    Done { record, state }
}

/// Seconds of each pass and of its pauses, and of each pause.
fn durations(state: &State) -> (Vec<(f64, f64)>, Vec<f64>) {
    let walk = &state.position.walk;
    let pass = |truth: &PassTruth| (truth.ended.seconds_since(truth.began), truth.paused_s);
    let pause = |pause: &Pause| pause.ended.unwrap().seconds_since(pause.began);
    (walk.truths.iter().map(pass).collect(), walk.pauses.iter().map(pause).collect())
}

#[test]
fn a_clock_that_is_set_back_or_forward_during_a_walk_changes_no_duration_and_no_date() {
    let plainly = walked(&SetClock::at_noon(), |_| {});
    let (passes, pauses) = durations(&plainly.state);
    // Three minutes and the two taps of twenty seconds around them.
    assert_eq!(pauses, [200.0]);
    assert_eq!(passes.iter().map(|(_, paused_s)| *paused_s).sum::<f64>(), 200.0);
    for set_ms in [-HOUR_MS, HOUR_MS] {
        let set = walked(&SetClock::at_noon(), |clock| clock.is_set_by(set_ms));
        assert_eq!(durations(&set.state), (passes.clone(), pauses.clone()), "set by {set_ms} ms");
        assert_eq!(set.record["date"], "2026-11-24");
        assert_eq!(set.record["date"], plainly.record["date"]);
        assert_eq!(set.record["look_back_on"], plainly.record["look_back_on"]);
        assert_eq!(set.record["started"], plainly.record["started"], "what was written down before stays");
    }
}

#[test]
fn the_end_of_summer_time_during_a_walk_changes_no_duration_and_each_moment_keeps_its_own_offset() {
    let begins = || SetClock::at(BEFORE_SUMMER_ENDS_UTC_MS, 60);
    let in_summer = walked(&begins(), |_| {});
    let ends = walked(&begins(), |clock| clock.local_offset_is(0));
    assert_eq!(durations(&ends.state), durations(&in_summer.state));
    let moment = |done: &Done, key: &str| done.record[key].as_str().unwrap().to_owned();
    assert_eq!(moment(&ends, "started"), moment(&in_summer, "started"));
    assert!(moment(&ends, "started").ends_with("+01:00") && moment(&ends, "ended").ends_with("+00:00"));
    let utc = |text: String| chrono::DateTime::parse_from_rfc3339(&text).unwrap().to_utc();
    assert_eq!(utc(moment(&ends, "ended")), utc(moment(&in_summer, "ended")), "the same instant by two clocks");
    assert!(utc(moment(&ends, "ended")) > utc(moment(&ends, "started")));
    assert_eq!(ends.record["date"], "2026-10-25");
}

#[test]
fn the_reminder_to_look_at_the_weather_goes_by_the_steady_clock() {
    let folder = tempfile::tempdir().unwrap();
    firm_in(folder.path());
    let clock = SetClock::at_noon();
    let companion = entered(Store::open(folder.path()).unwrap(), folder.path(), Arc::clone(&clock));
    let mut hand = Hand::opens(companion, Arc::clone(&clock)).unwrap();
    hand.goes_until(|view| matches!(view.panel, Panel::Walk(_)));
    clock.is_set_by(HOUR_MS);
    hand.act(Act::Pause { reason: "phone".into(), note: String::new() });
    assert_eq!(hand.view.weather_due, None, "the wall clock was set forward, and no time went by");
    clock.is_set_by(-2 * HOUR_MS);
    clock.goes_on(31 * 60_000);
    let resume = plain(&hand.view);
    hand.act(resume);
    assert!(hand.view.weather_due.is_some(), "half an hour went by, whatever the wall clock says");
}

/// The program is started again with a clock that stands before the events: nothing took less than no time.
#[test]
fn a_new_run_with_a_clock_an_hour_behind_goes_on_and_counts_no_time_below_nothing() {
    let folder = tempfile::tempdir().unwrap();
    firm_in(folder.path());
    let clock = SetClock::at_noon();
    let companion = entered(Store::open(folder.path()).unwrap(), folder.path(), Arc::clone(&clock));
    let mut hand = Hand::opens(companion, clock).unwrap();
    hand.goes_until(|view| matches!(view.panel, Panel::Walk(_)));
    hand.act(Act::Pause { reason: "phone".into(), note: String::new() });
    let visit_id = hand.visit_id();
    drop(hand);
    let behind = SetClock::at_noon();
    behind.is_set_by(-HOUR_MS);
    let companion = entered(Store::open(folder.path()).unwrap(), folder.path(), Arc::clone(&behind));
    let mut hand = Hand::takes_up(companion, behind, visit_id);
    hand.goes_until(|view| matches!(view.panel, Panel::Closed { .. }));
    drop(hand);
    let state = fold_of(&Store::open(folder.path()).unwrap().store.events(visit_id).unwrap());
    let (passes, pauses) = durations(&state);
    assert!(passes.iter().all(|(all_s, paused_s)| *all_s >= 0.0 && *paused_s >= 0.0), "{passes:?}");
    assert_eq!(pauses, [0.0]);
    assert_eq!(state.position.treated_on().unwrap().to_string(), "2026-11-24");
}
