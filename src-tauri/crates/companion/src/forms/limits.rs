//! The form of the weather's limits: which profile, and the operator's own figures where these are chosen.
//!
//! Invariant: an own figure that was left empty is the neutral profile's, with that profile's source beside it.

use evensward_core::checks::limits::{LimitProfile, LimitRow, OwnLimits, ProfileId};
use evensward_core::quantity::{self as q, Length, Span, Temperature, WindSpeed};

use super::Problems;
use crate::dto::figures::FieldProblem;
use crate::dto::limits::{LimitRowView, LimitsInput, LimitsView, ProfileView};
use crate::show;

/// The profile that a form chooses. Every problem has its field's path under `limits`.
pub(crate) fn profile(input: &LimitsInput) -> Result<LimitProfile, Vec<FieldProblem>> {
    let mut problems = Problems::default();
    let profile = parsed(input, &mut problems);
    problems.give(profile)
}

/// What stands in the profiles, the own one as typed.
pub(crate) fn view(input: &LimitsInput) -> LimitsView {
    let own = LimitsInput { profile: ProfileId::Own.code().to_owned(), ..input.clone() };
    let (own, problems) = match profile(&own) {
        Ok(own) => (own, profile(input).err().unwrap_or_default()),
        Err(problems) => (LimitProfile::own(OwnLimits::default()), problems),
    };
    let profiles = [LimitProfile::united_kingdom(), LimitProfile::neutral(), own];
    LimitsView { profiles: profiles.iter().map(profile_view).collect(), problems }
}

fn profile_view(profile: &LimitProfile) -> ProfileView {
    ProfileView { id: profile.id.code().to_owned(), rows: profile.rows().iter().map(row_view).collect() }
}

fn row_view(row: &LimitRow) -> LimitRowView {
    LimitRowView {
        what: row.what.to_owned(),
        value: show::argument(&row.value),
        tag: show::tag(row.tag),
        source: row.source.to_owned(),
        is_seen: row.is_seen,
    }
}

fn parsed(input: &LimitsInput, problems: &mut Problems) -> Option<LimitProfile> {
    let id =
        if input.profile.is_empty() { Some(ProfileId::UnitedKingdom) } else { ProfileId::from_code(&input.profile) };
    let Some(id) = id else {
        problems.add("limits.profile", &q::Said::new("not-one-of-these"));
        return None;
    };
    Some(match id {
        ProfileId::UnitedKingdom => LimitProfile::united_kingdom(),
        ProfileId::Neutral => LimitProfile::neutral(),
        ProfileId::Own => own(input, problems),
    })
}

fn own(input: &LimitsInput, problems: &mut Problems) -> LimitProfile {
    let profile = LimitProfile::own(OwnLimits {
        wind_calm: problems.optional("limits.wind_calm", &input.wind_calm, WindSpeed::from_figure).flatten(),
        wind_most: problems.optional("limits.wind_most", &input.wind_most, WindSpeed::from_figure).flatten(),
        temperature_lowest: problems.optional("limits.temp_low", &input.temp_low, Temperature::from_figure).flatten(),
        temperature_highest: problems
            .optional("limits.temp_high", &input.temp_high, Temperature::from_figure)
            .flatten(),
        keep_back: problems.optional("limits.keep_back", &input.keep_back, Length::from_figure).flatten(),
        reminder: problems.optional("limits.reminder", &input.reminder, Span::from_figure).flatten(),
    });
    if profile.wind_calm.value >= profile.wind_most.value {
        problems.add("limits.wind_most", &q::Said::new("limit-not-above-calm"));
    }
    if profile.temperature_lowest.value >= profile.temperature_highest.value {
        problems.add("limits.temp_high", &q::Said::new("limit-not-above-lowest"));
    }
    profile
}
