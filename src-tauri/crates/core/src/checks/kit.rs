//! The kit before it is filled: what was last in it, what its calibration rests on and was made with, the nozzle's wear, and
//! the yearly look over the sprayer.
//!
//! Sources: the wear rule of 10 % is an extension rule (University of Nebraska, R. Klein); regular technical checks by the
//! professional user are asked for by Directive 2009/128/EC, article 8 (from memory), a year between them is common
//! practice; how far catches and walks may lie apart is an own setting.
//! Invariant: what is not known of a kit or a calibration is a Caution, so that one kept before this was asked stays usable.

use chrono::{Months, NaiveDate};

use super::{Check, Verdict};
use crate::kit::{
    Ended, Evidence, LastIn, MOST_APART_CATCHES_PERCENT, MOST_APART_WALKS_PERCENT, N_REPEATS, NozzleState, SetUp,
    flow_at_pressure, nozzle_state,
};
use crate::product::Tag;
use crate::quantity::{Arg, Code, FlowRate, Length, Swath, Unit, VolumePerArea, is_above};

/// A pressure that changes the flow by more than this is another pressure (own setting).
const MOST_FLOW_CHANGE_PERCENT: f64 = 5.0;
/// Two ways of measuring that differ by more than this are asked for again (own setting).
const MOST_DISAGREEMENT_PERCENT: f64 = 10.0;
/// How far a measured flow may lie from the nominal one (University of Nebraska extension advice).
const WEAR_LIMIT_PERCENT: f64 = 10.0;
/// A swath wider than its pattern gives by more than this is looked at again (own setting).
const MOST_SWATH_OVER_PERCENT: f64 = 10.0;
/// Months between two looks over the sprayer (common practice, no source).
const CHECKED_EVERY_MONTHS: u32 = 12;

fn percent(value: f64) -> Arg {
    Arg::number(value, Unit::Percent, 1)
}

/// What was last in the sprayer, before `next` goes in.
///
/// A herbicide that kills grass holds until the sprayer is cleaned and the cleaning is signed; another product holds until
/// it is cleaned or passed with a reason, and so does what nobody knows.
#[must_use]
pub fn last_in_sprayer(
    last_in: &LastIn,
    cleaned_since: bool,
    signed_on: Option<NaiveDate>,
    next: Option<&str>,
) -> Check {
    let is_same = |name: &str, next: &str| name.trim().to_lowercase() == next.trim().to_lowercase();
    let (verdict, tag, code) = match (last_in, cleaned_since) {
        (LastIn::Nothing, _) => (Verdict::Go, Tag::Own, "sprayer-new"),
        (LastIn::CleanWater, _) => (Verdict::Go, Tag::Own, "sprayer-had-clean-water"),
        // Binding as a label is: the last product's label asks for cleaning, and a trace kills the lawn.
        (LastIn::TotalHerbicide, false) => (Verdict::Stop, Tag::Statutory, "total-herbicide-was-in-sprayer"),
        (LastIn::TotalHerbicide, true) if signed_on.is_none() => (Verdict::Stop, Tag::Statutory, "cleaning-not-signed"),
        (LastIn::TotalHerbicide | LastIn::Unknown | LastIn::Product { .. }, true) => {
            (Verdict::Go, Tag::Own, "sprayer-cleaned")
        }
        (LastIn::Unknown, false) => (Verdict::Stop, Tag::Advisory, "last-in-sprayer-unknown"),
        (LastIn::Product { name }, false) => match next {
            Some(next) if !name.trim().is_empty() && is_same(name, next) => {
                (Verdict::Caution, Tag::Advisory, "sprayer-held-the-same")
            }
            Some(_) if !name.trim().is_empty() => (Verdict::Stop, Tag::Advisory, "cleaning-owed-before-another"),
            // Its name was not kept: whether it is the same one is not known.
            Some(_) | None => (Verdict::Caution, Tag::Advisory, "sprayer-not-cleaned"),
        },
    };
    let mut check = Check::new("last-in-sprayer", verdict, tag, "label-of-what-was-last-in", code);
    if let LastIn::Product { name } = last_in
        && !name.trim().is_empty()
    {
        check = check.with("product", Arg::Text(name.clone()));
    }
    match signed_on {
        Some(on) => check.with("signed", Arg::Date(on)),
        None => check,
    }
}

/// Whether a calibration was made with the nozzle, pressure and swath that the kit has now.
#[must_use]
pub fn calibration_kit(evidence: Option<&Evidence>, now: &SetUp) -> Check {
    let check = |verdict, code| Check::new("calibration-kit", verdict, Tag::Own, "own", code);
    let Some(made_with) = evidence.and_then(|evidence| evidence.made_with.as_ref()) else {
        return check(Verdict::Caution, "calibration-kit-unknown");
    };
    if let Some(ended) = made_with.ended_by(now) {
        return check(Verdict::Stop, ended.code());
    }
    let read = evidence.and_then(|evidence| evidence.pressure);
    if let (Some(read), Some(works_at)) = (read, now.head.pressure) {
        let flow = FlowRate::computed(1.0);
        let change = (flow_at_pressure(flow, read, works_at).l_per_min() - 1.0).abs() * 100.0;
        let verdict = if is_above(change, MOST_FLOW_CHANGE_PERCENT) { Verdict::Stop } else { Verdict::Go };
        let code = if verdict == Verdict::Stop { Ended::Pressure.code() } else { "calibration-kit-same" };
        return check(verdict, code).with_value(percent(change)).with_limit(percent(MOST_FLOW_CHANGE_PERCENT));
    }
    check(Verdict::Go, "calibration-kit-same")
}

impl Ended {
    /// The code of what ended a calibration.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::Nozzle => "calibration-ended-by-nozzle",
            Self::Pressure => "calibration-ended-by-pressure",
            Self::Swath => "calibration-ended-by-swath",
        }
    }
}

/// Whether a calibration rests on repeats that agree: three catches and three loaded walks.
#[must_use]
pub fn calibration_repeats(evidence: Option<&Evidence>) -> Check {
    let check = |verdict, code| Check::new("calibration-repeats", verdict, Tag::Own, "common-practice", code);
    let Some(evidence) = evidence else {
        return check(Verdict::Caution, "calibration-once").with_value(Arg::Count(1)).with_limit(Arg::Count(N_REPEATS));
    };
    let n_least = evidence.n_catches.min(evidence.n_walks);
    let apart = |verdict, code, off, limit| check(verdict, code).with_value(percent(off)).with_limit(percent(limit));
    let (catches, walks) = (evidence.catches_off_percent, evidence.walks_off_percent);
    if is_above(catches, MOST_APART_CATCHES_PERCENT) {
        apart(Verdict::Stop, "catches-apart", catches, MOST_APART_CATCHES_PERCENT)
    } else if is_above(walks, MOST_APART_WALKS_PERCENT) {
        apart(Verdict::Stop, "walks-apart", walks, MOST_APART_WALKS_PERCENT)
    } else if n_least < N_REPEATS {
        check(Verdict::Caution, "calibration-once").with_value(Arg::Count(n_least)).with_limit(Arg::Count(N_REPEATS))
    } else if !evidence.is_loaded {
        check(Verdict::Caution, "walks-not-loaded")
    } else {
        apart(Verdict::Go, "calibration-repeats-agree", catches, MOST_APART_CATCHES_PERCENT)
    }
}

/// The measured flow against the nominal one at the same pressure: within 10 % it is fine, beyond it is replaced.
#[must_use]
pub fn nozzle_wear(measured: FlowRate, nominal: FlowRate) -> Check {
    let (verdict, code) = match nozzle_state(measured, nominal) {
        NozzleState::Sound => (Verdict::Go, "nozzle-sound"),
        NozzleState::Worn => (Verdict::Stop, "nozzle-worn"),
        NozzleState::Low => (Verdict::Stop, "nozzle-low"),
    };
    let off = (measured.l_per_min() / nominal.l_per_min() - 1.0) * 100.0;
    Check::new("nozzle-wear", verdict, Tag::Advisory, "nozzle-wear-extension", code)
        .with_value(percent(off))
        .with_limit(percent(WEAR_LIMIT_PERCENT))
        .with("nominal", Arg::number(nominal.l_per_min(), Unit::LitrePerMinute, 3))
}

/// Whether the jug and the walk say the same as the test plot.
#[must_use]
pub fn two_ways(by_tests: VolumePerArea, by_plot: VolumePerArea) -> Check {
    let (tests, plot) = (by_tests.ml_per_m2(), by_plot.ml_per_m2());
    let larger = tests.max(plot);
    let apart = if larger > 0.0 { (tests - plot).abs() / larger * 100.0 } else { 0.0 };
    let (verdict, code) = if is_above(apart, MOST_DISAGREEMENT_PERCENT) {
        (Verdict::Caution, "two-ways-disagree")
    } else {
        (Verdict::Go, "two-ways-agree")
    };
    Check::new("calibration-ways", verdict, Tag::Own, "own", code)
        .with_value(percent(apart))
        .with_limit(percent(MOST_DISAGREEMENT_PERCENT))
}

/// Whether the sprayer was looked over within twelve months. Counts local dates.
#[must_use]
pub fn sprayer_check(checked_on: Option<NaiveDate>, today: NaiveDate) -> Check {
    let check = |verdict, code| {
        Check::new("sprayer-check", verdict, Tag::Advisory, "directive-2009-128-article-8", code)
            .with_limit(Arg::Count(CHECKED_EVERY_MONTHS))
    };
    let Some(checked_on) = checked_on else { return check(Verdict::Caution, "sprayer-check-unknown") };
    let (verdict, code) = if checked_on > today {
        (Verdict::Caution, "sprayer-check-in-the-future")
    } else if checked_on.checked_add_months(Months::new(CHECKED_EVERY_MONTHS)).is_none_or(|until| today <= until) {
        (Verdict::Go, "sprayer-checked")
    } else {
        (Verdict::Caution, "sprayer-check-due")
    };
    check(verdict, code).with_value(Arg::Date(checked_on))
}

/// Whether the swath is one that the pattern gives, by height, angle and taper.
#[must_use]
pub fn swath_by_pattern(swath: Swath, spacing: Length) -> Check {
    let over = (swath.m() / spacing.m() - 1.0) * 100.0;
    let (verdict, code) = if is_above(over, MOST_SWATH_OVER_PERCENT) {
        (Verdict::Caution, "swath-wider-than-pattern")
    } else {
        (Verdict::Go, "swath-within-pattern")
    };
    let length = |value: f64| Arg::number(value, Unit::Metre, 2);
    Check::new("swath", verdict, Tag::Own, "half-rate-rule", code)
        .with_value(length(swath.m()))
        .with_limit(length(spacing.m()))
}

/// What cleaning a sprayer owes before its next use: a code, or nothing.
#[must_use]
pub fn cleaning_owed(last_in: &LastIn, cleaned_since: bool, signed_on: Option<NaiveDate>) -> Option<Code> {
    let code = match (last_in, cleaned_since) {
        (LastIn::Nothing | LastIn::CleanWater, _) => return None,
        (LastIn::TotalHerbicide, false) => "cleaning-owed-and-signed",
        (LastIn::TotalHerbicide, true) if signed_on.is_none() => "cleaning-owed-signature",
        (_, true) => return None,
        (LastIn::Unknown, false) => "cleaning-owed-unknown",
        (LastIn::Product { .. }, false) => "cleaning-owed-product",
    };
    Some(Code::Borrowed(code))
}
