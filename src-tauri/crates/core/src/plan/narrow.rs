//! The narrow strip: what each way of treating it does to dose, water and pace, and which one is taken.
//!
//! The order is the trade's: some passes at another pace, even-out, the other direction, leave it. Turning or
//! lowering the fan does not cut the flow, so that doing nothing gives it swath / width times the dose.

use super::choice::{Choice, Heading, Remedy};
use super::draft::{Draft, Ground, Remedies, different, product_for, turned};
use super::types::{NarrowOption, NarrowReport};
use super::walk::{Gait, as_it_is_factor, count, narrow_pace};
use crate::checks::{Check, Verdict, dose, water};
use crate::kit::fan_angle_for;
use crate::product::{Label, Tag};
use crate::quantity::{Angle, Arg, Length, Pace, ProductDose, Said, Unit, Volume, VolumePerArea};

/// What the ways are compared for.
#[derive(Clone, Copy)]
pub(super) struct Case<'a> {
    pub(super) ground: &'a Ground<'a>,
    pub(super) choice: &'a Choice,
    pub(super) label: &'a Label,
    pub(super) gait: Gait,
    pub(super) dead: Volume,
    /// Ground for each square metre of plan, more than one on a slope: the label's dose is by the plan.
    pub(super) ground_per_plan: f64,
}

/// Settles the remedy of each heading and reports the narrow strips. Ways not chosen are suggested.
pub(super) fn settle(case: Case<'_>) -> Result<(Remedies, Vec<NarrowReport>), Said> {
    let chosen = case.choice.narrow;
    if chosen.along == Some(Remedy::OtherDirection) && chosen.across == Some(Remedy::OtherDirection) {
        return Err(Said::new("both-headings-turned"));
    }
    // A remedy for a strip that is not narrow would move work for nothing, so it is dropped. A choice for the
    // other heading stands only once that heading is walked.
    let mut remedies = Remedies { along: Remedy::AsItIs, across: Remedy::AsItIs };
    let mut reports = Vec::new();
    let mut waiting = different(&case.choice.headings);
    // A heading that is turned away comes first, so that the other one is settled with all its passes.
    waiting.sort_by_key(|heading| chosen.of(*heading) != Some(Remedy::OtherDirection));
    let is_mixed = waiting.len() > 1;
    let mut heading_idx = 0;
    while let Some(heading) = waiting.get(heading_idx).copied() {
        heading_idx += 1;
        let Some(narrow) = case.ground.narrow_strip(heading)? else {
            continue;
        };
        let n_passes = count(&turned(case.choice, remedies), heading, usize::MAX);
        let options = options(case, heading, narrow.width, n_passes, remedies)?;
        let suggested = suggested(&options, case.gait.pace, is_mixed);
        let taken = chosen.of(heading).unwrap_or(suggested);
        let other_is_turned_here = remedies.of(heading.other()) == Remedy::OtherDirection;
        if taken == Remedy::OtherDirection && other_is_turned_here {
            return Err(Said::new("both-headings-turned"));
        }
        if let Remedy::SomePasses { k } = taken
            && (k == 0 || k > n_passes)
        {
            return Err(Said::new("no-such-number-of-passes").with("passes", Arg::Count(n_passes.into())));
        }
        remedies = remedies.with(heading, taken);
        if taken == Remedy::OtherDirection && !waiting.contains(&heading.other()) {
            waiting.push(heading.other());
        }
        reports.push(NarrowReport {
            heading,
            strip: narrow.strip,
            width: narrow.width,
            as_it_is_factor: as_it_is_factor(case.gait.swath, narrow.width),
            fan_turn: fan_angle_for(case.gait.swath, narrow.width).unwrap_or(Angle::computed(0.0)),
            options,
            suggested,
            taken,
        });
    }
    Ok((remedies, reports))
}

fn options(
    case: Case<'_>,
    heading: Heading,
    width: Length,
    n_passes: u8,
    remedies: Remedies,
) -> Result<Vec<NarrowOption>, Said> {
    let mut options = Vec::new();
    for k in 1..=n_passes {
        let pace = narrow_pace(case.gait.pace, case.gait.swath, width, k, n_passes);
        options.push(option(case, heading, Remedy::SomePasses { k }, pace, remedies)?);
    }
    options.push(option(case, heading, Remedy::EvenOut, None, remedies)?);
    if remedies.of(heading.other()) != Remedy::OtherDirection {
        options.push(option(case, heading, Remedy::OtherDirection, None, remedies)?);
    }
    match option(case, heading, Remedy::Leave, None, remedies) {
        Ok(leave) => options.push(leave),
        // Where the narrow strip is the whole lawn, leaving it is no way to treat it.
        Err(said) if said.code == "nothing-left-to-treat" => {}
        Err(said) => return Err(said),
    }
    options.push(option(case, heading, Remedy::AsItIs, None, remedies)?);
    Ok(options)
}

fn option(
    case: Case<'_>,
    heading: Heading,
    remedy: Remedy,
    pace: Option<Pace>,
    remedies: Remedies,
) -> Result<NarrowOption, Said> {
    let drafted = case.ground.draft(case.choice, case.gait, remedies.with(heading, remedy))?;
    let highest = case.label.highest_dose.as_ref();
    let is_walkable = pace.is_none_or(|pace| case.choice.walkable.takes(pace));
    let water = drafted.walked.over(drafted.treated.area).unwrap_or(VolumePerArea::ZERO);
    let rate = match remedy {
        Remedy::EvenOut | Remedy::OtherDirection => Some(drafted.highest_rate_ml_per_m2()),
        Remedy::Leave => None,
        Remedy::AsItIs | Remedy::SomePasses { .. } => Some(drafted.narrow_rate_ml_per_m2(heading)),
    };
    let dose_on_strip = rate.and_then(|rate| dose_at(&drafted, case, rate));
    let mut checks = vec![water::water_range(water, &case.label.water)];
    if let Some(on_strip) = dose_on_strip {
        checks.push(dose::dose_on_ground(on_strip, highest));
    }
    if let Some(pace) = pace {
        checks.push(water::pace_walkable(pace, case.choice.walkable));
    }
    if remedy == Remedy::OtherDirection
        && let Some(narrow) = case.ground.narrow_strip(heading.other())?
    {
        checks.push(
            Check::new("other-direction", Verdict::Caution, Tag::Own, "geometry", "other-direction-narrow-too")
                .with_value(Arg::number(narrow.width.m(), Unit::Metre, 2)),
        );
    }
    let exact = case.gait_rate(&drafted) * drafted.treated.area;
    Ok(NarrowOption {
        remedy,
        pace,
        is_walkable,
        dose: dose_on_strip,
        extra_water: drafted.walked.less(exact),
        water,
        left_out: drafted.left_out,
        checks,
    })
}

impl Case<'_> {
    /// The water of all passes where no strip is narrow and nothing overlaps.
    fn gait_rate(&self, drafted: &Draft) -> VolumePerArea {
        let per_pass = crate::kit::per_pass(self.gait.flow, self.gait.pace, self.gait.swath);
        per_pass.times(drafted.headings.len() as f64)
    }
}

/// The dose that a rate of mixture brings, with the exact product in all the mixture.
fn dose_at(drafted: &Draft, case: Case<'_>, rate_ml_per_m2: f64) -> Option<ProductDose> {
    let highest = case.label.highest_dose.as_ref().map(|highest| highest.value);
    let product = product_for(case.choice.dose, drafted.treated, highest);
    let concentration = product.in_mixture(drafted.walked + case.dead)?;
    Some(concentration * VolumePerArea::computed(rate_ml_per_m2 * case.ground_per_plan))
}

/// The first way that works: some passes at the walkable pace nearest the usual one, then the others in order.
///
/// Water that is out of the range anyway is no reason against a way, only water that the way itself makes too
/// much. The other direction is suggested only where it leaves no narrow strip and is not walked already.
fn suggested(options: &[NarrowOption], usual: Pace, is_mixed: bool) -> Remedy {
    let is_stopped = |option: &NarrowOption| {
        option.checks.iter().any(|check| {
            check.verdict == Verdict::Stop && (check.rule != "water" || check.said.code == "water-too-much")
        })
    };
    let rank = |option: &NarrowOption| match option.remedy {
        Remedy::SomePasses { .. } => Some(0),
        Remedy::EvenOut => Some(1),
        Remedy::OtherDirection => {
            let is_narrow_too = option.checks.iter().any(|check| check.rule == "other-direction");
            (!is_mixed && !is_narrow_too).then_some(2)
        }
        Remedy::Leave => Some(3),
        Remedy::AsItIs => None,
    };
    let change = |option: &NarrowOption| option.pace.map_or(0.0, |pace| (pace.m_per_s() / usual.m_per_s()).ln().abs());
    options
        .iter()
        .filter(|option| !is_stopped(option))
        .filter_map(|option| rank(option).map(|rank| (rank, change(option), option.remedy)))
        .min_by(|a, b| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)))
        .map_or(Remedy::EvenOut, |(_, _, remedy)| remedy)
}
