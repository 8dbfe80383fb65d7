//! Wind: how strong it is, read how and at which height, and where it blows.
//!
//! A land sign gives the Beaufort force (WMO-No. 8), which is a speed at 10 m. A meter is read near the spray,
//! at 1 m, and only such a reading meets the spray-height table. A speed at 10 m goes through the force.
//! The limits are the profile's (`limits`). Wind is told by the lawn's own sides or by the compass, and [`WindFrom`] keeps the two
//! frames apart.
//! Invariant: drift towards open water, neighbours or food plants is never Go, whatever the speed.

use super::limits::{Limit, LimitProfile};
use super::{Check, Verdict};
use crate::lawn::{Beside, MeasuredSide};
use crate::product::Tag;
use crate::quantity::{Angle, Arg, Length, Unit, WindSpeed};

/// Where it stands that drift must not go towards water, neighbours and food plants.
const SOURCE: &str = "uk-code-of-practice-2006";

/// A wind as it was read.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wind {
    /// How strong, and how that was read.
    pub reading: WindReading,
    /// Where it comes from, and in which frame; nothing when it is not known.
    pub from: Option<WindFrom>,
}

/// Where a wind comes from. The two frames are types of their own, so that nobody can take one for the other.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum WindFrom {
    /// Told by the lawn's own sides: degrees clockwise from the direction away from the front.
    Lawn(Angle),
    /// Told by the compass: degrees clockwise from north.
    Compass(Angle),
}

impl WindFrom {
    /// Where the wind blows on the lawn: (x right, y away). A compass direction says nothing without the lawn's bearing.
    #[must_use]
    pub fn blows_towards(self, away_bearing: Option<Angle>) -> Option<(f64, f64)> {
        let clockwise_from_away_deg = match self {
            Self::Lawn(from) => from.deg() + 180.0,
            Self::Compass(from) => from.deg() + 180.0 - away_bearing?.deg(),
        };
        Some(clockwise_from_away_deg.to_radians().sin_cos())
    }

    /// How far the true direction may lie to either side of the one that was told, in degrees: half of a quarter of the
    /// circle for one of four sides, half of a step for a point of the compass.
    #[must_use]
    pub const fn doubt_deg(self) -> f64 {
        match self {
            Self::Lawn(_) => 45.0,
            Self::Compass(_) => 11.25,
        }
    }
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

/// A meter is read near the spray when it is held between these heights, in metres.
const NEAR_SPRAY_M: (f64, f64) = (0.3, 2.0);
/// A speed counts as one at 10 m between these heights, in metres.
const NEAR_10_M: (f64, f64) = (8.0, 12.0);
/// A side counts as downwind when the wind blows at least this squarely at it: ten degrees off its line.
const DOWNWIND_FACING: f64 = 0.17;

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

/// Whether a height is one at which a meter is read near the spray.
#[must_use]
pub fn is_near_spray(height: Length) -> bool {
    (NEAR_SPRAY_M.0..=NEAR_SPRAY_M.1).contains(&height.m())
}

/// The class of a wind as it was read; nothing when it was read at a height that fits no table.
#[must_use]
pub fn class(reading: WindReading, limits: &LimitProfile) -> Option<WindClass> {
    match reading {
        WindReading::BySign { force } => Some(limits.class_of_force(force)),
        WindReading::ByMeter { speed, height } => class_at(speed, height, limits),
    }
}

fn class_at(speed: WindSpeed, height: Length, limits: &LimitProfile) -> Option<WindClass> {
    if is_near_spray(height) {
        Some(limits.class_at_spray_height(speed))
    } else if (NEAR_10_M.0..=NEAR_10_M.1).contains(&height.m()) {
        Some(limits.class_of_force(force_from_speed(speed)))
    } else {
        None
    }
}

/// The least force that the limits call too strong.
fn too_strong_force(limits: &LimitProfile) -> u8 {
    (0..=12).find(|force| limits.class_of_force(*force) == WindClass::TooStrong).unwrap_or(12)
}

/// The speed at a height from which a wind is too strong: the limit itself near the spray, the force's own speed at 10 m.
fn too_strong_at(height: Length, limits: &LimitProfile) -> Arg {
    let m_per_s = if is_near_spray(height) {
        limits.wind_most.value.m_per_s()
    } else {
        BEAUFORT.get(usize::from(too_strong_force(limits))).map_or(0.0, |row| row.from_m_per_s)
    };
    Arg::number(m_per_s, Unit::MetrePerSecond, 1)
}

/// The strength of the wind against the operator's limits.
#[must_use]
pub fn wind_strength(wind: Option<&Wind>, limits: &LimitProfile) -> Check {
    let check = |verdict, code, limit: Limit<WindSpeed>| Check::new("wind", verdict, limit.tag, limit.source, code);
    let Some(wind) = wind else {
        return check(Verdict::Caution, "wind-not-seen", limits.wind_most);
    };
    let found = match class(wind.reading, limits) {
        None => check(Verdict::Caution, "wind-height-fits-no-table", limits.wind_most),
        Some(WindClass::Calm) => check(Verdict::Caution, "wind-calm", limits.wind_calm),
        Some(WindClass::Light) => check(Verdict::Caution, "wind-light", limits.wind_ideal_from),
        Some(WindClass::Ideal) => check(Verdict::Go, "wind-ideal", limits.wind_ideal_to),
        Some(WindClass::Fresh) => check(Verdict::Caution, "wind-fresh", limits.wind_ideal_to),
        Some(WindClass::TooStrong) => check(Verdict::Stop, "wind-too-strong", limits.wind_most),
    };
    match wind.reading {
        WindReading::BySign { force } => found
            .with_value(Arg::Count(force.into()))
            .with_limit(Arg::Count(u32::from(too_strong_force(limits).saturating_sub(1)))),
        WindReading::ByMeter { speed, height } => found
            .with_value(Arg::number(speed.m_per_s(), Unit::MetrePerSecond, 1))
            .with_limit(too_strong_at(height, limits))
            .with("height", Arg::number(height.m(), Unit::Metre, 1)),
    }
}

/// Gusts carry drops further than the mean wind says. Worth a thought, and so is not having felt for them; a gust that is
/// itself too strong is as a wind that is.
///
/// The speed of a gust is read by the same meter at the same height as the wind; without that it says nothing.
#[must_use]
pub fn gusts(felt: Option<bool>, gust: Option<WindSpeed>, wind: Option<&Wind>, limits: &LimitProfile) -> Check {
    let height = wind.and_then(|wind| match wind.reading {
        WindReading::ByMeter { height, .. } => Some(height),
        WindReading::BySign { .. } => None,
    });
    if let Some((speed, height)) = gust.zip(height)
        && class_at(speed, height, limits) == Some(WindClass::TooStrong)
    {
        let most = limits.wind_most;
        return Check::new("gusts", Verdict::Stop, most.tag, most.source, "gusts-too-strong")
            .with_value(Arg::number(speed.m_per_s(), Unit::MetrePerSecond, 1))
            .with_limit(too_strong_at(height, limits));
    }
    let (verdict, code) = match felt.or(gust.map(|_| true)) {
        None => (Verdict::Caution, "gusts-not-felt-for"),
        Some(true) => (Verdict::Caution, "wind-gusty"),
        Some(false) => (Verdict::Go, "wind-steady"),
    };
    Check::new("gusts", verdict, Tag::Advisory, "common-practice", code)
}

/// A direction of the wind that can't be Go, whatever it is: some grass lies upwind of a pond inside the lawn, and an edge
/// that nobody was asked about may be water.
#[must_use]
pub const fn never_go(code: &'static str) -> Check {
    Check::new("wind-direction", Verdict::Caution, Tag::Advisory, SOURCE, code)
}

/// The wind against each edge that must not get drift. One check an edge; a single Go where there is no such edge.
///
/// `is_kept_back` says of a part and side whether ground along it is kept dry because the wind blows there: then the rest can
/// be treated, with an eye on it. An edge that the wind may reach is never Go.
#[must_use]
pub fn wind_direction(
    wind: Option<&Wind>,
    sides: &[MeasuredSide],
    away_bearing: Option<Angle>,
    is_kept_back: &dyn Fn(usize, usize) -> bool,
    limits: &LimitProfile,
) -> Vec<Check> {
    let rule = "wind-direction";
    let sensitive: Vec<&MeasuredSide> = sides.iter().filter(|side| side.side.beside.must_not_get_drift()).collect();
    if sensitive.is_empty() {
        return vec![Check::new(rule, Verdict::Go, Tag::Advisory, SOURCE, "no-edge-must-stay-clear")];
    }
    sensitive
        .into_iter()
        .map(|side| {
            let is_kept_back = is_kept_back(side.side.part_idx, side.side.side_idx);
            let (verdict, code) = towards_edge(wind, side, away_bearing, is_kept_back, limits);
            Check::new(rule, verdict, Tag::Advisory, SOURCE, code)
                .with("beside", Arg::Code(side.side.beside.code().into()))
                .with("part", Arg::Count(u32::try_from(side.side.part_idx).unwrap_or(u32::MAX)))
                .with("side", Arg::Count(u32::try_from(side.side.side_idx).unwrap_or(u32::MAX)))
        })
        .collect()
}

fn towards_edge(
    wind: Option<&Wind>,
    side: &MeasuredSide,
    away_bearing: Option<Angle>,
    is_kept_back: bool,
    limits: &LimitProfile,
) -> (Verdict, &'static str) {
    let Some(wind) = wind else { return (Verdict::Caution, "drift-may-go-anywhere") };
    let class = class(wind.reading, limits);
    if class == Some(WindClass::Calm) {
        return (Verdict::Caution, "drift-may-go-anywhere");
    }
    let Some(from) = wind.from else { return (Verdict::Caution, "wind-direction-unknown") };
    let Some(towards) = from.blows_towards(away_bearing) else {
        return (Verdict::Caution, "wind-lawn-bearing-unknown");
    };
    if side.facing(towards) > DOWNWIND_FACING {
        // A wind of unknown strength is taken for one that carries.
        let is_stop = class.is_none_or(|class| class >= WindClass::Fresh) || side.side.beside == Beside::OpenWater;
        return match (is_kept_back, is_stop) {
            (true, _) => (Verdict::Caution, "wind-towards-edge-kept-back"),
            (false, true) => (Verdict::Stop, "wind-towards-edge"),
            (false, false) => (Verdict::Caution, "wind-towards-edge"),
        };
    }
    if may_reach(side, towards, from.doubt_deg()) {
        return (Verdict::Caution, "wind-may-reach-edge");
    }
    if class.is_none() { (Verdict::Caution, "wind-strength-unknown") } else { (Verdict::Go, "wind-away-from-edge") }
}

/// Whether a wind blows onto a side from anywhere within its doubt.
fn may_reach(side: &MeasuredSide, (x, y): (f64, f64), doubt_deg: f64) -> bool {
    // Where the doubt ends, and half-way there: a side of several bits may face any of them.
    [-1.0, -0.5, 0.0, 0.5, 1.0].into_iter().any(|share: f64| {
        let (sin, cos) = (share * doubt_deg).to_radians().sin_cos();
        side.facing((x * cos + y * sin, y * cos - x * sin)) > 1e-9
    })
}
