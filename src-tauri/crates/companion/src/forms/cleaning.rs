//! The cleaning of a sprayer as it is signed: who, when, how many rinses, with an agent or without.

use chrono::NaiveDate;
use evensward_core::kit::N_RINSES;
use evensward_core::quantity::{Arg, Said, count_from_text};

use super::Problems;
use crate::dto::figures::FieldProblem;
use crate::dto::kit::{CleaningInput, CleaningView};
use crate::show;

/// More rinses than this are a slip of the pen.
const MOST_RINSES: u32 = 20;

/// Everything that is wrong with a cleaning's form; nothing when it may be signed.
pub(crate) fn check(input: &CleaningInput, today: NaiveDate) -> Result<(), Vec<FieldProblem>> {
    let mut problems = Problems::default();
    problems.line("by", &input.by);
    if let Some(on) = problems.date("on", &input.on)
        && on > today
    {
        problems.add("on", &Said::new("cleaning-in-the-future"));
    }
    match problems.count("n_rinses", &input.n_rinses, &["times", "count"], MOST_RINSES) {
        Some(None) => problems.add("n_rinses", &Said::new("empty")),
        Some(Some(n_rinses)) if n_rinses < N_RINSES => {
            problems.add("n_rinses", &Said::new("rinses-too-few").with("limit", Arg::Count(N_RINSES)));
        }
        Some(Some(_)) | None => {}
    }
    problems.words("how_words", &input.how_words);
    problems.give(Some(()))
}

/// A cleaning that was signed.
pub(crate) fn view(input: &CleaningInput) -> CleaningView {
    let n_rinses = count_from_text(&input.n_rinses.text, MOST_RINSES).unwrap_or(N_RINSES);
    let how = if input.agent { Said::new("cleaned-with-agent") } else { Said::new("cleaned-with-water") };
    let how = how.with("rinses", Arg::Count(n_rinses)).with("words", Arg::Text(input.how_words.trim().to_owned()));
    CleaningView { on: input.on.clone(), by: input.by.clone(), how: show::said(&how) }
}
