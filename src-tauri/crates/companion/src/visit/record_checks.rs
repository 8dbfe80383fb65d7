//! Every check that a visit was held against, for the record: with value, limit, tag and source, as it stood then.
//!
//! Invariant: nothing is asked anew here. What a mended rule would say today is no part of a record.

use evensward_core::checks::Check;
use evensward_core::quantity::Arg;
use evensward_core::visit::Position;
use evensward_format::record::{Checked, Quantity};

use crate::dto::figures::Argument;
use crate::dto::record::RecordLine;
use crate::show;

/// The checks of a visit with the code of the step that each was asked at.
fn all(position: &Position) -> impl Iterator<Item = (&'static str, &Check)> {
    let gates = position.gates.iter().flat_map(|gate| gate.checks.iter().map(|check| (gate.stage.code(), check)));
    let weather = position.weather.iter().flat_map(|seen| seen.checks.iter().map(|check| (seen.stage.code(), check)));
    let water = position.water.iter().flat_map(|seen| seen.checks.iter().map(|check| (seen.stage.code(), check)));
    gates.chain(weather).chain(water)
}

/// The checks as they are given out.
pub(crate) fn written(position: &Position) -> Vec<Checked> {
    let checked = |(stage, check): (&'static str, &Check)| Checked {
        stage: stage.to_owned(),
        rule: check.rule.to_string(),
        verdict: check.verdict.code().to_owned(),
        value: check.value.as_ref().and_then(figure),
        limit: check.limit.as_ref().and_then(figure),
        tag: check.tag.code().to_owned(),
        source: check.source.to_string(),
        said: check.said.code.to_string(),
    };
    all(position).map(checked).collect()
}

fn figure(arg: &Arg) -> Option<Quantity> {
    match arg {
        Arg::Number { value, unit, .. } => Some(Quantity { value: *value, unit: unit.code().to_owned() }),
        Arg::Count(count) => Some(Quantity { value: f64::from(*count), unit: String::new() }),
        Arg::Text(_) | Arg::Code(_) | Arg::Date(_) => None,
    }
}

/// The checks as they are read: the step, verdict, value against limit, whose limit it is, and the sentence.
pub(crate) fn lines(position: &Position) -> Vec<RecordLine> {
    let line = |(stage, check): (&'static str, &Check)| {
        let mut values = vec![Argument::Code(format!("verdict-{}", check.verdict.code()))];
        // A partner's check says whose it is.
        values.extend(check.said.arg("partner").map(show::recorded));
        values.extend(check.value.iter().chain(&check.limit).map(show::recorded));
        values.push(Argument::Code(format!("limit-tag-{}", check.tag.code())));
        values.push(Argument::Code(check.source.to_string()));
        RecordLine { label: format!("stage-{stage}"), values, said: vec![show::recorded_said(&check.said)] }
    };
    all(position).map(line).collect()
}
