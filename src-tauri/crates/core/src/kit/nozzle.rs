//! Nozzles: nominal flow by size, the pressure law, wear, and the geometry of a fan.
//!
//! Sources: nominal flows at 3 bar and colours by size, ISO 10625 (numbers from memory, size 03 and 04
//! confirmed by published cards); q2 = q1 sqrt(p2/p1); wear beyond 10 % of the nominal flow means a new
//! nozzle (University of Nebraska extension advice). The fan's geometry is plain trigonometry.
//! Invariant: a nominal flow is for comparison; the plan is always made from a measured one.

use crate::quantity::{Angle, FlowRate, Length, Pressure, Swath};

/// A nozzle size of ISO 10625.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NozzleSize {
    /// The size as printed on the nozzle (tenths of a US gallon a minute at 40 psi).
    pub size: &'static str,
    /// The colour the standard gives it, as a code.
    pub colour: &'static str,
    /// The nominal flow at 3 bar, in litres per minute.
    pub nominal_l_per_min: f64,
}

/// The pressure at which the nominal flows hold, in bar.
pub(super) const NOMINAL_PRESSURE_BAR: f64 = 3.0;

/// The sizes of ISO 10625 with their nominal flow at 3 bar.
pub const NOZZLE_SIZES: &[NozzleSize] = &[
    NozzleSize { size: "01", colour: "orange", nominal_l_per_min: 0.4 },
    NozzleSize { size: "015", colour: "green", nominal_l_per_min: 0.6 },
    NozzleSize { size: "02", colour: "yellow", nominal_l_per_min: 0.8 },
    NozzleSize { size: "025", colour: "lilac", nominal_l_per_min: 1.0 },
    NozzleSize { size: "03", colour: "blue", nominal_l_per_min: 1.2 },
    NozzleSize { size: "04", colour: "red", nominal_l_per_min: 1.6 },
    NozzleSize { size: "05", colour: "brown", nominal_l_per_min: 2.0 },
    NozzleSize { size: "06", colour: "grey", nominal_l_per_min: 2.4 },
    NozzleSize { size: "08", colour: "white", nominal_l_per_min: 3.2 },
];

impl NozzleSize {
    /// The size as printed on a nozzle, if the standard has it.
    #[must_use]
    pub fn named(size: &str) -> Option<&'static Self> {
        NOZZLE_SIZES.iter().find(|known| known.size == size)
    }

    /// The nominal flow at a pressure.
    ///
    /// ```
    /// use evensward_core::kit::NozzleSize;
    /// use evensward_core::quantity::Pressure;
    /// let size_02 = NozzleSize::named("02").unwrap();
    /// let at_1_bar = size_02.flow_at(Pressure::from_bar(1.0).unwrap());
    /// assert!((at_1_bar.l_per_min() - 0.462).abs() < 0.0005);
    /// ```
    #[must_use]
    pub fn flow_at(&self, pressure: Pressure) -> FlowRate {
        flow_at_pressure(FlowRate::computed(self.nominal_l_per_min), Pressure::computed(NOMINAL_PRESSURE_BAR), pressure)
    }
}

/// The flow at another pressure: q2 = q1 sqrt(p2/p1).
#[must_use]
pub fn flow_at_pressure(flow: FlowRate, at: Pressure, wanted: Pressure) -> FlowRate {
    flow.times((wanted.bar() / at.bar()).sqrt())
}

/// The pressure for another flow: p2 = p1 (q2/q1)^2.
#[must_use]
pub fn pressure_for_flow(at: Pressure, flow: FlowRate, wanted: FlowRate) -> Pressure {
    let ratio = wanted.l_per_min() / flow.l_per_min();
    Pressure::computed(at.bar() * ratio * ratio)
}

/// What a measured flow says about the nozzle.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NozzleState {
    /// Within 10 % of the nominal flow.
    Sound,
    /// More than 10 % above: the orifice is worn.
    Worn,
    /// More than 10 % below: blocked, or not the nozzle or pressure that was named.
    Low,
}

/// Compares a measured flow with the nominal one at the same pressure (10 % either way).
#[must_use]
pub fn nozzle_state(measured: FlowRate, nominal: FlowRate) -> NozzleState {
    let ratio = measured.l_per_min() / nominal.l_per_min();
    if crate::quantity::is_above(ratio, 1.1) {
        NozzleState::Worn
    } else if crate::quantity::is_below(ratio, 0.9) {
        NozzleState::Low
    } else {
        NozzleState::Sound
    }
}

/// The width of a fan's pattern on the ground: 2 h tan(angle / 2).
///
/// The spacing swath is less for a pattern that tapers to its edges. Nothing for a fan of 180 degrees or more.
#[must_use]
pub fn pattern_base(height: Length, fan: Angle) -> Option<Length> {
    (fan.deg() < 180.0).then(|| {
        let half_rad = (fan.deg() / 2.0).to_radians();
        Length::computed(2.0 * height.m() * half_rad.tan())
    })
}

/// The width of a fan turned about the lance by an angle: w cos(angle).
///
/// Turning narrows the fan and does not cut its flow, so the strip under it takes more.
#[must_use]
pub fn fan_width(full: Swath, turned: Angle) -> Length {
    Length::computed(full.m() * turned.deg().to_radians().cos())
}

/// How far to turn the fan about the lance so that it covers `wanted`: acos(wanted / full).
///
/// Nothing when the wanted width is wider than the fan.
#[must_use]
pub fn fan_angle_for(full: Swath, wanted: Length) -> Option<Angle> {
    let share = wanted.m() / full.m();
    (share <= 1.0).then(|| Angle::computed(share.acos().to_degrees()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn turning_narrows_the_fan() {
        let full = Swath::from_m(1.0).unwrap();
        let turned = fan_angle_for(full, Length::from_m(0.5).unwrap()).unwrap();
        assert!((turned.deg() - 60.0).abs() < 1e-9);
        assert!((fan_width(full, turned).m() - 0.5).abs() < 1e-9);
        assert_eq!(fan_angle_for(full, Length::from_m(1.2).unwrap()), None);
    }

    #[test]
    fn wear_is_judged_at_ten_per_cent() {
        let check = |measured: f64, expected: NozzleState| {
            let measured = FlowRate::from_l_per_min(measured).unwrap();
            assert_eq!(nozzle_state(measured, FlowRate::from_l_per_min(1.0).unwrap()), expected);
        };
        check(1.1, NozzleState::Sound);
        check(1.101, NozzleState::Worn);
        check(0.9, NozzleState::Sound);
        check(0.899, NozzleState::Low);
    }
}
