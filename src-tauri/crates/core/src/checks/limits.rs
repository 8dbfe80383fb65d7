//! The limits of the weather: profiles by country or the operator's own, each row with its value, tag and source, and
//! whether that source was seen or the row is from memory.
//!
//! United Kingdom: code of practice for using plant protection products (2006), wind at spray height. The band of Force 2
//! (3.2 to 6.5 km/h) was seen in the public guide that repeats it; the other bands are from memory.
//! Neutral: the default of the pesticide stewardship pages of the United States where a label is silent, at least 3 and no more
//! than 8 mph (seen). The drying difference: 2 to 8, not above 10 (seen, guidance of the Australian weather bureau as quoted).
//! Invariant: a limit of wind holds for a reading near the spray. A speed at 10 m never meets it; it goes through the force.

use super::wind::WindClass;
use crate::product::Tag;
use crate::quantity::{Arg, Length, Span, Temperature, Unit, WindSpeed};

/// Which profile.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum ProfileId {
    /// The United Kingdom's code of practice.
    UnitedKingdom,
    /// Advice that belongs to no one country's law.
    Neutral,
    /// The operator's own figures.
    Own,
}

impl ProfileId {
    /// Every profile.
    pub const ALL: [Self; 3] = [Self::UnitedKingdom, Self::Neutral, Self::Own];

    /// Its code.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::UnitedKingdom => "united_kingdom",
            Self::Neutral => "neutral",
            Self::Own => "own",
        }
    }

    /// The profile of that code.
    #[must_use]
    pub fn from_code(code: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|id| id.code() == code)
    }
}

/// A limit with where it stands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limit<T> {
    /// The value.
    pub value: T,
    /// How binding it is.
    pub tag: Tag,
    /// Where it stands, as a code.
    pub source: &'static str,
    /// Whether that source was seen; else the figure is from memory or common practice.
    pub is_seen: bool,
}

impl<T> Limit<T> {
    const fn advisory(value: T, source: &'static str, is_seen: bool) -> Self {
        Self { value, tag: Tag::Advisory, source, is_seen }
    }

    const fn own(value: T) -> Self {
        Self { value, tag: Tag::Own, source: "own", is_seen: true }
    }
}

/// The limits that an operator works by.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LimitProfile {
    /// Which profile.
    pub id: ProfileId,
    /// Below this the wind is calm, at spray height.
    pub wind_calm: Limit<WindSpeed>,
    /// From this on it is ideal, at spray height.
    pub wind_ideal_from: Limit<WindSpeed>,
    /// Up to this it is ideal, at spray height.
    pub wind_ideal_to: Limit<WindSpeed>,
    /// From this on it is too strong, at spray height.
    pub wind_most: Limit<WindSpeed>,
    /// The lowest temperature.
    pub temperature_lowest: Limit<Temperature>,
    /// The highest temperature.
    pub temperature_highest: Limit<Temperature>,
    /// Below this drying difference, in kelvins, drops hang in the air.
    pub drying_least: Limit<f64>,
    /// Above this drying difference, in kelvins, small drops dry on their way.
    pub drying_most: Limit<f64>,
    /// Above this drying difference, in kelvins, spraying is best avoided.
    pub drying_avoid: Limit<f64>,
    /// The width that is offered to be kept dry along an edge that the wind blows towards.
    pub keep_back: Limit<Length>,
    /// After this time the weather is looked at again.
    pub reminder: Limit<Span>,
}

/// The operator's own figures; what is not given is taken from the neutral profile.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct OwnLimits {
    /// Below this the wind is calm.
    pub wind_calm: Option<WindSpeed>,
    /// From this on it is too strong.
    pub wind_most: Option<WindSpeed>,
    /// The lowest temperature.
    pub temperature_lowest: Option<Temperature>,
    /// The highest temperature.
    pub temperature_highest: Option<Temperature>,
    /// The width kept dry.
    pub keep_back: Option<Length>,
    /// When to look again.
    pub reminder: Option<Span>,
}

const UK_CODE: &str = "uk-code-of-practice-2006";
const STEWARDSHIP: &str = "us-stewardship-default";
const DRYING: &str = "australian-weather-bureau";
const COMMON: &str = "common-practice";

fn km_per_h(value: f64) -> WindSpeed {
    WindSpeed::computed(value / 3.6)
}

fn mph(value: f64) -> WindSpeed {
    WindSpeed::computed(Unit::MilePerHour.to_base(value))
}

impl LimitProfile {
    /// The United Kingdom's code of practice.
    #[must_use]
    pub fn united_kingdom() -> Self {
        Self {
            id: ProfileId::UnitedKingdom,
            wind_calm: Limit::advisory(km_per_h(2.0), UK_CODE, false),
            wind_ideal_from: Limit::advisory(km_per_h(3.2), UK_CODE, true),
            wind_ideal_to: Limit::advisory(km_per_h(6.5), UK_CODE, true),
            wind_most: Limit::advisory(km_per_h(9.6), UK_CODE, false),
            ..Self::neutral()
        }
    }

    /// Advice that belongs to no one country's law.
    #[must_use]
    pub fn neutral() -> Self {
        Self {
            id: ProfileId::Neutral,
            wind_calm: Limit::advisory(mph(3.0), STEWARDSHIP, true),
            wind_ideal_from: Limit::advisory(mph(3.0), STEWARDSHIP, true),
            wind_ideal_to: Limit::advisory(mph(8.0), STEWARDSHIP, true),
            wind_most: Limit::advisory(mph(8.0), STEWARDSHIP, true),
            temperature_lowest: Limit::advisory(Temperature::computed(5.0), COMMON, false),
            temperature_highest: Limit::advisory(Temperature::computed(28.0), "australian-spray-advice", false),
            drying_least: Limit::advisory(2.0, DRYING, true),
            drying_most: Limit::advisory(8.0, DRYING, true),
            drying_avoid: Limit::advisory(10.0, DRYING, true),
            keep_back: Limit::advisory(Length::computed(2.0), COMMON, false),
            reminder: Limit::advisory(Span::computed(1_800.0), COMMON, false),
        }
    }

    /// The operator's own figures over the neutral ones.
    #[must_use]
    pub fn own(own: OwnLimits) -> Self {
        let neutral = Self::neutral();
        let calm = own.wind_calm.map_or(neutral.wind_calm, Limit::own);
        let most = own.wind_most.map_or(neutral.wind_most, Limit::own);
        // Between the operator's own calm and most the neutral band stays ideal as far as it goes.
        let ideal_from = if neutral.wind_ideal_from.value < calm.value { calm } else { neutral.wind_ideal_from };
        let ideal_to = if neutral.wind_ideal_to.value > most.value { most } else { neutral.wind_ideal_to };
        Self {
            id: ProfileId::Own,
            wind_calm: calm,
            wind_ideal_from: ideal_from,
            wind_ideal_to: ideal_to,
            wind_most: most,
            temperature_lowest: own.temperature_lowest.map_or(neutral.temperature_lowest, Limit::own),
            temperature_highest: own.temperature_highest.map_or(neutral.temperature_highest, Limit::own),
            keep_back: own.keep_back.map_or(neutral.keep_back, Limit::own),
            reminder: own.reminder.map_or(neutral.reminder, Limit::own),
            ..neutral
        }
    }

    /// The class of a speed read near the spray. Never for a speed read at 10 m.
    #[must_use]
    pub fn class_at_spray_height(&self, speed: WindSpeed) -> WindClass {
        let m_per_s = speed.m_per_s();
        let is_below = |limit: Limit<WindSpeed>| crate::quantity::is_below(m_per_s, limit.value.m_per_s());
        let is_above = |limit: Limit<WindSpeed>| crate::quantity::is_above(m_per_s, limit.value.m_per_s());
        if is_below(self.wind_calm) {
            WindClass::Calm
        } else if is_below(self.wind_ideal_from) {
            WindClass::Light
        } else if is_above(self.wind_most) {
            WindClass::TooStrong
        } else if !is_above(self.wind_ideal_to) {
            WindClass::Ideal
        } else if is_below(self.wind_most) {
            WindClass::Fresh
        } else {
            WindClass::TooStrong
        }
    }

    /// The class of a force told by a land sign, by the band of speeds at spray height that the code of practice gives it.
    ///
    /// A band that reaches over a limit is taken by its worse end.
    #[must_use]
    pub fn class_of_force(&self, force: u8) -> WindClass {
        let band = usize::from(force);
        let (Some(from), Some(to)) = (FORCE_BANDS_KM_PER_H.get(band), FORCE_BANDS_KM_PER_H.get(band.saturating_add(1)))
        else {
            return WindClass::TooStrong;
        };
        let (from, to) = (*from / 3.6, *to / 3.6);
        let is_above =
            |m_per_s: f64, limit: Limit<WindSpeed>| crate::quantity::is_above(m_per_s, limit.value.m_per_s());
        let is_below =
            |m_per_s: f64, limit: Limit<WindSpeed>| crate::quantity::is_below(m_per_s, limit.value.m_per_s());
        if is_above(to, self.wind_most) {
            WindClass::TooStrong
        } else if !is_above(to, self.wind_calm) {
            WindClass::Calm
        } else if is_above(to, self.wind_ideal_to) {
            WindClass::Fresh
        } else if is_below(from, self.wind_ideal_from) {
            WindClass::Light
        } else {
            WindClass::Ideal
        }
    }

    /// Every row with where it stands.
    #[must_use]
    pub fn rows(&self) -> Vec<LimitRow> {
        let wind = |value: WindSpeed| Arg::number(value.m_per_s(), Unit::MetrePerSecond, 1);
        let warm = |value: Temperature| Arg::number(value.deg_c(), Unit::Celsius, 0);
        let kelvins = |value_k: f64| Arg::number(value_k, Unit::Kelvin, 0);
        vec![
            LimitRow::of("limit-wind-calm", self.wind_calm, wind),
            LimitRow::of("limit-wind-ideal-from", self.wind_ideal_from, wind),
            LimitRow::of("limit-wind-ideal-to", self.wind_ideal_to, wind),
            LimitRow::of("limit-wind-most", self.wind_most, wind),
            LimitRow::of("limit-temperature-lowest", self.temperature_lowest, warm),
            LimitRow::of("limit-temperature-highest", self.temperature_highest, warm),
            LimitRow::of("limit-drying-least", self.drying_least, kelvins),
            LimitRow::of("limit-drying-most", self.drying_most, kelvins),
            LimitRow::of("limit-drying-avoid", self.drying_avoid, kelvins),
            LimitRow::of("limit-keep-back", self.keep_back, |value| Arg::number(value.m(), Unit::Metre, 1)),
            LimitRow::of("limit-reminder", self.reminder, |value| Arg::number(value.s() / 60.0, Unit::Minute, 0)),
        ]
    }
}

/// What nobody has chosen is the code that the checks have always gone by.
impl Default for LimitProfile {
    fn default() -> Self {
        Self::united_kingdom()
    }
}

/// Speeds at spray height where one force ends and the next begins, in km/h, from force 0 to the end of force 4.
const FORCE_BANDS_KM_PER_H: [f64; 6] = [0.0, 2.0, 3.2, 6.5, 9.6, 14.5];

/// One row of a profile, to be shown.
#[derive(Debug, Clone, PartialEq)]
pub struct LimitRow {
    /// Code of what it limits.
    pub what: &'static str,
    /// Its value.
    pub value: Arg,
    /// How binding it is.
    pub tag: Tag,
    /// Where it stands.
    pub source: &'static str,
    /// Whether that was seen.
    pub is_seen: bool,
}

impl LimitRow {
    fn of<T>(what: &'static str, limit: Limit<T>, show: impl Fn(T) -> Arg) -> Self {
        Self { what, value: show(limit.value), tag: limit.tag, source: limit.source, is_seen: limit.is_seen }
    }
}
