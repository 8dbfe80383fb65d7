//! Passes: which strips are walked in which order, which way, how fast, and what comes out.
//!
//! Down and back: each strip is walked the other way than the one before, and a second pass in the same heading
//! goes back over the strips from where the first one ended.
//! Invariant: the volume of a leg is flow x length / pace, whatever its width; narrowing the fan does not cut
//! the flow.

use super::types::{Heading, Layout, Leg, Pass, Remedy, Strip};
use crate::quantity::{FlowRate, Length, Pace, Span, Swath};

/// The pace on a narrow strip that is sprayed in `k` of `n` passes: v w k / (n r).
///
/// Then the strip gets over its own width what the others get over theirs in all passes. Nothing when `n` is 0
/// or the strip has no width.
///
/// ```
/// use evensward_core::plan::narrow_pace;
/// use evensward_core::quantity::{Length, Pace, Swath};
/// let pace = narrow_pace(
///     Pace::from_m_per_s(1.0).unwrap(), Swath::from_m(1.0).unwrap(), Length::from_m(0.5).unwrap(), 2, 4);
/// assert!((pace.unwrap().m_per_s() - 1.0).abs() < 1e-12);
/// ```
#[must_use]
pub fn narrow_pace(pace: Pace, swath: Swath, width: Length, k: u8, n: u8) -> Option<Pace> {
    (k > 0 && n > 0 && width.m() > 0.0).then(|| pace.times(swath.m() / width.m() * f64::from(k) / f64::from(n)))
}

/// How many times the dose a narrow strip takes when the usual pace is kept in all passes: w / r.
#[must_use]
pub fn as_it_is_factor(swath: Swath, width: Length) -> f64 {
    if width.m() > 0.0 { swath.m() / width.m() } else { f64::INFINITY }
}

/// The flow, pace and swath that are walked with.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Gait {
    /// The flow that is planned with.
    pub flow: FlowRate,
    /// The usual pace.
    pub pace: Pace,
    /// The swath.
    pub swath: Swath,
}

/// The passes over the layouts, in the order of the headings. A heading without a layout gives an empty pass.
#[must_use]
pub fn walk(layouts: &[Layout], headings: &[Heading], gait: Gait) -> Vec<Pass> {
    let mut passes: Vec<Pass> = Vec::with_capacity(headings.len());
    let mut is_back = false;
    let mut is_at_far_end = false;
    for (pass_idx, heading) in headings.iter().copied().enumerate() {
        let continues = passes.last().is_some_and(|last| last.heading == heading);
        is_back = continues && !is_back;
        if !continues {
            is_at_far_end = false;
        }
        let n_same = count(headings, heading, headings.len());
        let nth_same = count(headings, heading, pass_idx + 1);
        let mut legs = Vec::new();
        if let Some(layout) = layouts.iter().find(|layout| layout.heading == heading) {
            let mut strips: Vec<&Strip> = layout.strips.iter().collect();
            if is_back {
                strips.reverse();
            }
            for strip in strips {
                if let Some(pace) = pace_on(strip, layout.remedy, gait, nth_same, n_same) {
                    add_legs(&mut legs, strip, pace, gait, is_at_far_end);
                    is_at_far_end = !is_at_far_end;
                }
            }
        }
        passes.push(Pass {
            number: u8::try_from(pass_idx + 1).unwrap_or(u8::MAX),
            heading,
            volume: legs.iter().map(|leg| leg.volume).sum(),
            time: legs.iter().map(|leg| leg.time).sum(),
            empty: Length::ZERO,
            n_turns: u16::try_from(legs.len().saturating_sub(1)).unwrap_or(u16::MAX),
            legs,
        });
    }
    passes
}

/// How many of the first `n_first` headings are this one.
pub(super) fn count(headings: &[Heading], heading: Heading, n_first: usize) -> u8 {
    let n_same = headings.iter().take(n_first).filter(|other| **other == heading).count();
    u8::try_from(n_same).unwrap_or(u8::MAX)
}

/// The pace on a strip in the n-th pass of its heading; nothing when that pass leaves the strip out.
fn pace_on(strip: &Strip, remedy: Option<Remedy>, gait: Gait, nth: u8, n: u8) -> Option<Pace> {
    match remedy {
        Some(Remedy::SomePasses { k }) if strip.is_narrow => {
            let pace = narrow_pace(gait.pace, gait.swath, strip.width, k, n)?;
            (nth <= k).then_some(pace)
        }
        _ => Some(gait.pace),
    }
}

fn add_legs(legs: &mut Vec<Leg>, strip: &Strip, pace: Pace, gait: Gait, reversed: bool) {
    let width = strip.width.min(Length::computed(gait.swath.m()));
    let leg = |(run_idx, length): (usize, Length)| {
        let time: Span = length / pace;
        Leg {
            strip: strip.id,
            run_idx,
            length,
            pace,
            width,
            volume: gait.flow * time,
            time,
            reversed,
            empty_before: Length::ZERO,
        }
    };
    let runs = strip.runs.iter().map(|run| run.length).enumerate();
    if reversed {
        legs.extend(runs.rev().map(leg));
    } else {
        legs.extend(runs.map(leg));
    }
}
