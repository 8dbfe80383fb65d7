//! What a run of cases came to: a law over visits that never reach a jar test says nothing of jar tests.
//!
//! Invariant: every turn that is named here is counted from the events themselves, never from the taps that were meant.

use std::collections::BTreeMap;
use std::sync::Mutex;

use evensward_core::visit::event::{CorrectionKind, Payload, Stamped, StopReason, UseUpKind};
use evensward_core::visit::item::PauseReason;
use evensward_core::visit::state::{Stage, State};

/// Every turn that a run of the usual number of cases has to reach, and in how many of a hundred cases at least.
const TURNS: [(&str, u32); 17] = [
    ("an advisory Stop passed", 10),
    ("automatic pause", 5),
    ("closed after a stop for good", 10),
    ("closed as planned", 5),
    ("correction", 5),
    ("fewer or more passes", 1),
    ("jar test", 5),
    ("kept-back ground", 3),
    ("kept-back ground walked to its end", 1),
    ("partner in a tankful", 2),
    ("ran dry", 2),
    ("refill", 5),
    ("several looks at the weather on one walk", 5),
    ("stop for good on the walk", 2),
    ("undo", 10),
    ("use-up", 3),
    ("water seen", 10),
];

/// Counts the cases that came to each turn.
#[derive(Default)]
pub struct Reach {
    counted: Mutex<(u32, BTreeMap<&'static str, u32>)>,
}

impl Reach {
    /// Counts one visit, once for each turn that it took.
    pub fn count(&self, events: &[Stamped], state: &State) {
        let mut counted = self.counted.lock().unwrap();
        counted.0 += 1;
        for (turn, _) in TURNS {
            if came_to(turn, events, state) {
                *counted.1.entry(turn).or_default() += 1;
            }
        }
    }

    /// Fails where a run of enough cases came to a turn too seldom.
    #[track_caller]
    pub fn holds(&self) {
        let (n_cases, reached) = &*self.counted.lock().unwrap();
        if *n_cases < 200 {
            return;
        }
        let seldom: Vec<String> = TURNS
            .iter()
            .map(|(turn, percent)| (turn, reached.get(turn).copied().unwrap_or(0), n_cases * percent / 100))
            .filter(|(_, found, least)| found < least)
            .map(|(turn, found, least)| format!("{turn}: {found} of {n_cases} cases, and at least {least} are wanted"))
            .collect();
        assert!(seldom.is_empty(), "{}", seldom.join("\n"));
    }
}

fn came_to(turn: &str, events: &[Stamped], state: &State) -> bool {
    let position = &state.position;
    let any = |is: &dyn Fn(&Payload) -> bool| events.iter().any(|event| is(&event.payload));
    let stopped_at = position.stopped.as_ref().filter(|stopped| stopped.reason != StopReason::LookedBack);
    match turn {
        "an advisory Stop passed" => any(&|payload| matches!(payload, Payload::AdvisoryPassed { .. })),
        "automatic pause" => any(&|payload| matches!(payload, Payload::Paused { reason: PauseReason::Weather, .. })),
        "closed after a stop for good" => position.closed.is_some() && stopped_at.is_some(),
        "closed as planned" => position.closed.is_some() && position.stopped.is_none() && position.walk.short.is_none(),
        "correction" => any(&|payload| {
            matches!(payload, Payload::Corrected { kind: CorrectionKind::AddWater | CorrectionKind::LessWater, .. })
        }),
        "fewer or more passes" => any(&|payload| {
            matches!(payload, Payload::Corrected { kind: CorrectionKind::FewerPasses | CorrectionKind::MorePasses, .. })
        }),
        "jar test" => any(&|payload| matches!(payload, Payload::JarTested { .. })),
        "kept-back ground" => any(&|payload| matches!(payload, Payload::GroundKeptBack { .. })),
        "kept-back ground walked to its end" => position.kept_back.is_some() && !position.walk.truths.is_empty(),
        "partner in a tankful" => position.walk.made.iter().any(|fill| !fill.partners.is_empty()),
        "ran dry" => any(&|payload| matches!(payload, Payload::RanShort { .. })),
        "refill" => position.walk.made.len() > 1,
        "several looks at the weather on one walk" => {
            position.weather.iter().filter(|seen| (Stage::Mix..=Stage::UseUp).contains(&seen.stage)).count() > 1
        }
        "stop for good on the walk" => stopped_at.is_some_and(|stopped| stopped.stage == Stage::Walk),
        "undo" => any(&|payload| matches!(payload, Payload::Undone { .. })),
        "use-up" => position.walk.used_up.is_some_and(|used_up| used_up.kind != UseUpKind::None),
        "water seen" => any(&|payload| matches!(payload, Payload::WaterSeen { .. })),
        _ => panic!("nobody counts {turn}"),
    }
}
