//! A refusal of the decider as a failure that a screen can act on.

use evensward_core::quantity::{Arg, Said as Sentence};
use evensward_core::visit::Position;
use evensward_core::visit::command::Refusal;

use crate::dto::ask::{Failure, FailureCode};
use crate::dto::figures::FieldProblem;
use crate::show;

/// What the decider refused, for the screen.
pub(crate) fn failure(position: &Position, refusal: Refusal) -> Failure {
    let refused = |problems: Vec<FieldProblem>| Failure::refused(problems);
    match refusal {
        Refusal::Barred(checks) => {
            let passed = position.passed_rules();
            let barring = checks.iter().filter(|check| check.bars(&passed));
            Failure::barred(barring.map(|check| show::check(check, None)).collect())
        }
        Refusal::NotNow(stage) => Failure {
            code: FailureCode::Stale,
            said: show::said(
                &Sentence::new("failure-not-now").with("stage", Arg::Code(format!("stage-{}", stage.code()).into())),
            ),
            problems: Vec::new(),
            checks: Vec::new(),
        },
        Refusal::First(reasons) => refused(reasons.iter().map(|said| show::problem("first", said)).collect()),
        Refusal::Field { field, said } => refused(vec![show::problem(field, &said)]),
        Refusal::NoPlan(reasons) => refused(reasons.iter().map(|said| show::problem("plan", said)).collect()),
        Refusal::Lawn { lawn_idx, because } => {
            let mut failure = failure(position, *because);
            for problem in &mut failure.problems {
                problem.field = format!("later.{}.{}", lawn_idx.saturating_sub(1), problem.field);
            }
            failure
        }
        Refusal::NothingToUndo => refused(vec![show::problem("undo", &Sentence::new("nothing-to-undo"))]),
        Refusal::UnknownItem => refused(vec![show::problem("item", &Sentence::new("no-such-item"))]),
        Refusal::IsPaused => refused(vec![show::problem("pause", &Sentence::new("is-paused"))]),
    }
}
