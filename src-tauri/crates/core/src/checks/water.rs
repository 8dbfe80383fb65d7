//! Water against the label: the sum of a visit's passes, never one pass alone.

use super::{Check, Verdict};
use crate::plan::Walkable;
use crate::product::{Tag, WaterRange};
use crate::quantity::{Arg, Pace, Unit, VolumePerArea, is_above, is_below};

/// The water of all passes together against the label's range.
#[must_use]
pub fn water_range(water: VolumePerArea, range: &WaterRange) -> Check {
    let figure = |value: VolumePerArea| Arg::number(value.ml_per_m2(), Unit::MillilitrePerSquareMetre, 1);
    let rule = "water";
    if let Some(least) = range.least.filter(|least| is_below(water.ml_per_m2(), least.value.ml_per_m2())) {
        return Check::new(rule, Verdict::Stop, least.tag, least.source.code(), "water-too-little")
            .with_value(figure(water))
            .with_limit(figure(least.value));
    }
    if let Some(most) = range.most.filter(|most| is_above(water.ml_per_m2(), most.value.ml_per_m2())) {
        return Check::new(rule, Verdict::Stop, most.tag, most.source.code(), "water-too-much")
            .with_value(figure(water))
            .with_limit(figure(most.value));
    }
    match range.least.or(range.most) {
        None => {
            Check::new(rule, Verdict::Caution, Tag::Advisory, "label", "water-not-stated").with_value(figure(water))
        }
        Some(stated) => Check::new(rule, Verdict::Go, stated.tag, stated.source.code(), "water-fine")
            .with_value(figure(water))
            .with_limit(figure(stated.value)),
    }
}

/// Whether a pace can be walked evenly.
#[must_use]
pub fn pace_walkable(pace: Pace, walkable: Walkable) -> Check {
    let figure = |value: Pace| Arg::number(value.m_per_s(), Unit::MetrePerSecond, 2);
    let (verdict, code, limit) = if is_below(pace.m_per_s(), walkable.slowest.m_per_s()) {
        (Verdict::Stop, "pace-too-slow", walkable.slowest)
    } else if is_above(pace.m_per_s(), walkable.fastest.m_per_s()) {
        (Verdict::Stop, "pace-too-fast", walkable.fastest)
    } else {
        (Verdict::Go, "pace-fine", walkable.fastest)
    };
    Check::new("pace", verdict, Tag::Own, "common-practice", code).with_value(figure(pace)).with_limit(figure(limit))
}
