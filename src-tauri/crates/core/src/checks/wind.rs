//! Wind: how strong it is, read how and at which height, and where it blows.
//!
//! A land sign gives the Beaufort force (WMO-No. 8), which is a speed at 10 m. A meter is read near the spray,
//! at 1 m, and only such a reading meets the spray-height table. A speed at 10 m goes through the force.
//! Sources of the limits: UK code of practice for using plant protection products (2006), drift: Force 2
//! (3.2 to 6.5 km/h at spray height) ideal was seen; the rows for 0, 1, 3 and 4 are from memory.
//! Invariant: drift towards open water, neighbours or food plants is never Go, whatever the speed.

use super::{Check, Verdict};
use crate::lawn::{Beside, MeasuredSide};
use crate::product::Tag;
use crate::quantity::{Angle, Arg, Length, Unit, WindSpeed};

/// Where the limits stand.
const SOURCE: &str = "uk-code-of-practice-2006";

/// A wind as it was read.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wind {
    /// How strong, and how that was read.
    pub reading: WindReading,
    /// The compass direction it comes from, or, told by the sides of a lawn, clockwise from away-from-front; nothing when
    /// it is not known.
    pub from: Option<Angle>,
}

/// How the strength of a wind was read.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum WindReading {
    /// By a land sign: the Beaufort force.
    BySign {
        /// The force, 0 to 12.
        force: u8,
    },
    /// By a meter, or from a forecast, always with its height.
    ByMeter {
        /// The speed.
        speed: WindSpeed,
        /// The height above the ground it was read at.
        height: Length,
    },
}

/// One force of the Beaufort scale.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BeaufortForce {
    /// The force.
    pub force: u8,
    /// The least speed at 10 m, in metres per second.
    pub from_m_per_s: f64,
    /// The least speed at 10 m, in knots.
    pub from_kn: f64,
    /// The code of its land sign.
    pub land_sign: &'static str,
}

/// The Beaufort scale: speeds at 10 m and signs on land.
pub const BEAUFORT: &[BeaufortForce] = &[
    BeaufortForce { force: 0, from_m_per_s: 0.0, from_kn: 0.0, land_sign: "smoke-rises-straight" },
    BeaufortForce { force: 1, from_m_per_s: 0.3, from_kn: 1.0, land_sign: "smoke-drifts" },
    BeaufortForce { force: 2, from_m_per_s: 1.6, from_kn: 4.0, land_sign: "leaves-rustle" },
    BeaufortForce { force: 3, from_m_per_s: 3.4, from_kn: 7.0, land_sign: "twigs-move-constantly" },
    BeaufortForce { force: 4, from_m_per_s: 5.5, from_kn: 11.0, land_sign: "dust-and-small-branches" },
    BeaufortForce { force: 5, from_m_per_s: 8.0, from_kn: 17.0, land_sign: "small-trees-sway" },
    BeaufortForce { force: 6, from_m_per_s: 10.8, from_kn: 22.0, land_sign: "large-branches-move" },
    BeaufortForce { force: 7, from_m_per_s: 13.9, from_kn: 28.0, land_sign: "whole-trees-move" },
    BeaufortForce { force: 8, from_m_per_s: 17.2, from_kn: 34.0, land_sign: "twigs-break" },
    BeaufortForce { force: 9, from_m_per_s: 20.8, from_kn: 41.0, land_sign: "slates-fly" },
    BeaufortForce { force: 10, from_m_per_s: 24.5, from_kn: 48.0, land_sign: "trees-fall" },
    BeaufortForce { force: 11, from_m_per_s: 28.5, from_kn: 56.0, land_sign: "wide-damage" },
    BeaufortForce { force: 12, from_m_per_s: 32.7, from_kn: 64.0, land_sign: "hurricane" },
];

/// The least force that is too strong.
const TOO_STRONG_FORCE: u8 = 4;
/// Speeds at spray height where the class changes, in km/h: calm below, ideal from to, too strong from.
const SPRAY_HEIGHT_KM_PER_H: SprayHeight = SprayHeight { calm: 2.0, ideal_from: 3.2, ideal_to: 6.5, most: 9.6 };
/// A meter is read near the spray when it is held between these heights, in metres.
const NEAR_SPRAY_M: (f64, f64) = (0.3, 2.0);
/// A speed counts as one at 10 m between these heights, in metres.
const NEAR_10_M: (f64, f64) = (8.0, 12.0);
/// A side counts as downwind when the wind blows at least this squarely at it: ten degrees off its line.
const DOWNWIND_FACING: f64 = 0.17;

struct SprayHeight {
    calm: f64,
    ideal_from: f64,
    ideal_to: f64,
    most: f64,
}

/// The Beaufort force of a speed at 10 m, by the table in metres per second.
///
/// ```
/// use evensward_core::checks::wind::force_from_speed;
/// use evensward_core::quantity::WindSpeed;
/// assert_eq!(force_from_speed(WindSpeed::from_m_per_s(3.3).unwrap()), 2);
/// assert_eq!(force_from_speed(WindSpeed::from_m_per_s(3.4).unwrap()), 3);
/// ```
#[must_use]
pub fn force_from_speed(at_10_m: WindSpeed) -> u8 {
    // The table has one decimal; the gap between two rows goes to the nearer one.
    let rounded = (at_10_m.m_per_s() * 10.0).round() / 10.0;
    highest_force(|row| row.from_m_per_s <= rounded)
}

/// The Beaufort force of a speed at 10 m in whole knots, by the table in knots.
///
/// The two tables round differently at their edges; a speed reported in knots is read in knots.
#[must_use]
pub fn force_from_knots(at_10_m_kn: f64) -> u8 {
    let rounded = at_10_m_kn.round();
    highest_force(|row| row.from_kn <= rounded)
}

fn highest_force(reached: impl Fn(&BeaufortForce) -> bool) -> u8 {
    BEAUFORT.iter().filter(|row| reached(row)).map(|row| row.force).max().unwrap_or(0)
}

/// How a wind is for spraying.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum WindClass {
    /// No wind: drops hang and drift anywhere.
    Calm,
    /// Hardly any.
    Light,
    /// Ideal.
    Ideal,
    /// More risk.
    Fresh,
    /// Spraying is inadvisable.
    TooStrong,
}

/// The class of a wind by its force: 2 is ideal, 4 and more too strong.
#[must_use]
pub const fn class_of_force(force: u8) -> WindClass {
    match force {
        0 => WindClass::Calm,
        1 => WindClass::Light,
        2 => WindClass::Ideal,
        TOO_STRONG_FORCE.. => WindClass::TooStrong,
        _ => WindClass::Fresh,
    }
}

/// The class of a wind by its speed at spray height. Never for a speed read at 10 m.
#[must_use]
pub fn class_at_spray_height(speed: WindSpeed) -> WindClass {
    let km_per_h = speed.m_per_s() * 3.6;
    let limits = SPRAY_HEIGHT_KM_PER_H;
    if crate::quantity::is_below(km_per_h, limits.calm) {
        WindClass::Calm
    } else if crate::quantity::is_below(km_per_h, limits.ideal_from) {
        WindClass::Light
    } else if !crate::quantity::is_above(km_per_h, limits.ideal_to) {
        WindClass::Ideal
    } else if crate::quantity::is_below(km_per_h, limits.most) {
        WindClass::Fresh
    } else {
        WindClass::TooStrong
    }
}

/// The class of a wind as it was read; nothing when it was read at a height that fits no table.
#[must_use]
pub fn class(reading: WindReading) -> Option<WindClass> {
    match reading {
        WindReading::BySign { force } => Some(class_of_force(force)),
        WindReading::ByMeter { speed, height } => {
            let is_within = |(low, high): (f64, f64)| height.m() >= low && height.m() <= high;
            if is_within(NEAR_SPRAY_M) {
                Some(class_at_spray_height(speed))
            } else if is_within(NEAR_10_M) {
                Some(class_of_force(force_from_speed(speed)))
            } else {
                None
            }
        }
    }
}

/// The strength of the wind. Advisory.
#[must_use]
pub fn wind_strength(wind: Option<&Wind>) -> Check {
    let check = |verdict, code| Check::new("wind", verdict, Tag::Advisory, SOURCE, code);
    let Some(wind) = wind else {
        return check(Verdict::Caution, "wind-not-seen");
    };
    let found = match class(wind.reading) {
        None => check(Verdict::Caution, "wind-height-fits-no-table"),
        Some(WindClass::Calm) => check(Verdict::Caution, "wind-calm"),
        Some(WindClass::Light) => check(Verdict::Caution, "wind-light"),
        Some(WindClass::Ideal) => check(Verdict::Go, "wind-ideal"),
        Some(WindClass::Fresh) => check(Verdict::Caution, "wind-fresh"),
        Some(WindClass::TooStrong) => check(Verdict::Stop, "wind-too-strong"),
    };
    match wind.reading {
        WindReading::BySign { force } => {
            found.with_value(Arg::Count(force.into())).with_limit(Arg::Count(u32::from(TOO_STRONG_FORCE) - 1))
        }
        WindReading::ByMeter { speed, height } => {
            let limit_m_per_s = if height.m() <= NEAR_SPRAY_M.1 {
                SPRAY_HEIGHT_KM_PER_H.most / 3.6
            } else {
                BEAUFORT.get(usize::from(TOO_STRONG_FORCE)).map_or(0.0, |row| row.from_m_per_s)
            };
            found
                .with_value(Arg::number(speed.m_per_s(), Unit::MetrePerSecond, 1))
                .with_limit(Arg::number(limit_m_per_s, Unit::MetrePerSecond, 1))
                .with("height", Arg::number(height.m(), Unit::Metre, 1))
        }
    }
}

/// Gusts carry drops further than the mean wind says. Worth a thought, and so is not having felt for them.
#[must_use]
pub fn gusts(seen: Option<bool>) -> Check {
    let (verdict, code) = match seen {
        None => (Verdict::Caution, "gusts-not-felt-for"),
        Some(true) => (Verdict::Caution, "wind-gusty"),
        Some(false) => (Verdict::Go, "wind-steady"),
    };
    Check::new("gusts", verdict, Tag::Advisory, "common-practice", code)
}

/// Where the wind blows on the lawn: (x right, y away), from its compass direction and the lawn's own bearing.
#[must_use]
pub fn blows_towards(from: Angle, away_bearing: Angle) -> (f64, f64) {
    let clockwise_from_away = (from.deg() + 180.0 - away_bearing.deg()).to_radians();
    clockwise_from_away.sin_cos()
}

/// A direction of the wind that can't be Go, whatever it is: some grass lies upwind of a pond inside the lawn, and an edge
/// that nobody was asked about may be water.
#[must_use]
pub const fn never_go(code: &'static str) -> Check {
    Check::new("wind-direction", Verdict::Caution, Tag::Advisory, SOURCE, code)
}

/// The wind against each edge that must not get drift. One check an edge; a single Go where there is no such edge.
#[must_use]
pub fn wind_direction(wind: Option<&Wind>, sides: &[MeasuredSide], away_bearing: Option<Angle>) -> Vec<Check> {
    let rule = "wind-direction";
    let sensitive: Vec<&MeasuredSide> = sides.iter().filter(|side| side.side.beside.must_not_get_drift()).collect();
    if sensitive.is_empty() {
        return vec![Check::new(rule, Verdict::Go, Tag::Advisory, SOURCE, "no-edge-must-stay-clear")];
    }
    let strength = wind.and_then(|wind| class(wind.reading));
    let towards = wind.and_then(|wind| wind.from).zip(away_bearing).map(|(from, away)| blows_towards(from, away));
    sensitive
        .into_iter()
        .map(|side| {
            let (verdict, code) = match (strength, towards) {
                (None | Some(WindClass::Calm), _) => (Verdict::Caution, "drift-may-go-anywhere"),
                (Some(_), None) => (Verdict::Caution, "wind-direction-unknown"),
                (Some(class), Some(towards)) if side.facing(towards) > DOWNWIND_FACING => {
                    let is_stop = class >= WindClass::Fresh || side.side.beside == Beside::OpenWater;
                    (if is_stop { Verdict::Stop } else { Verdict::Caution }, "wind-towards-edge")
                }
                (Some(_), Some(_)) => (Verdict::Go, "wind-away-from-edge"),
            };
            Check::new(rule, verdict, Tag::Advisory, SOURCE, code)
                .with("beside", Arg::Code(side.side.beside.code().into()))
                .with("part", Arg::Count(u32::try_from(side.side.part_idx).unwrap_or(u32::MAX)))
                .with("side", Arg::Count(u32::try_from(side.side.side_idx).unwrap_or(u32::MAX)))
        })
        .collect()
}
