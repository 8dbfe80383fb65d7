//! A lawn on a slope: lengths along the ground are longer than the plan shows.
//!
//! Areas, doses and every drawing are of the plan; water is put out over the ground that is walked. A slope is taken
//! as one plane: what is measured on it is pressed together along the fall line and stays as it is across it.
//! Formula: horizontal = ground / sqrt(1 + gradient^2); measure horizontal distance for areas (FAO, Simple methods for
//! aquaculture: Topography, chapter 10).
//! Invariant: a gradient is rise over HORIZONTAL run; only a rise over ground length is turned into one here.

use crate::quantity::{Angle, Arg, Length, Said, Unit};

/// The steepest slope that anybody sprays on foot, as rise over run. Common practice, no source.
const STEEPEST: f64 = 1.0;

/// A slope: how steep, and which way is up.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Slope {
    gradient: f64,
    uphill: Angle,
}

/// Why a slope cannot be.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[error("the {field} of the slope cannot be")]
pub struct SlopeProblem {
    /// Which figure: "gradient", "rise" or "ground".
    pub field: &'static str,
    /// What is wrong with it.
    pub said: Said,
}

impl Slope {
    /// From rise over horizontal run. `uphill` is clockwise from the direction away from the front edge.
    pub fn new(gradient: f64, uphill: Angle) -> Result<Self, SlopeProblem> {
        let refused = |said| Err(SlopeProblem { field: "gradient", said });
        if !gradient.is_finite() || gradient < 0.0 {
            return refused(Said::new("not-a-number"));
        }
        if gradient > STEEPEST {
            return refused(steeper_than_walked());
        }
        Ok(Self { gradient, uphill })
    }

    /// From per cent: metres of rise for each 100 m of horizontal run.
    pub fn from_percent(percent: f64, uphill: Angle) -> Result<Self, SlopeProblem> {
        Self::new(percent / 100.0, uphill)
    }

    /// From degrees.
    pub fn from_deg(angle_deg: f64, uphill: Angle) -> Result<Self, SlopeProblem> {
        if angle_deg >= 90.0 {
            return Err(SlopeProblem { field: "gradient", said: steeper_than_walked() });
        }
        Self::new(angle_deg.to_radians().tan(), uphill)
    }

    /// From the rise over a length along the ground.
    pub fn from_rise(rise: Length, ground: Length, uphill: Angle) -> Result<Self, SlopeProblem> {
        if ground.m() <= 0.0 {
            return Err(SlopeProblem { field: "ground", said: Said::new("zero") });
        }
        if rise.m() >= ground.m() {
            let said = Said::new("rise-longer-than-ground").with("ground", Arg::number(ground.m(), Unit::Metre, 2));
            return Err(SlopeProblem { field: "rise", said });
        }
        // The ground is the long side of the right-angled triangle; the run is the other short one.
        let run_m = ((ground.m() - rise.m()) * (ground.m() + rise.m())).sqrt();
        Self::new(rise.m() / run_m, uphill).map_err(|problem| SlopeProblem { field: "rise", ..problem })
    }

    /// Rise over horizontal run.
    #[must_use]
    pub const fn gradient(self) -> f64 {
        self.gradient
    }

    /// Which way is up, clockwise from the direction away from the front edge.
    #[must_use]
    pub const fn uphill(self) -> Angle {
        self.uphill
    }

    /// Plan over ground, for a length on the fall line and for any area.
    #[must_use]
    pub fn plan_share(self) -> f64 {
        1.0 / 1.0_f64.hypot(self.gradient)
    }

    /// The horizontal length of a length taped up or down the fall line.
    ///
    /// ```
    /// use evensward_core::lawn::Slope;
    /// use evensward_core::quantity::{Angle, Length};
    /// let slope = Slope::from_percent(10.0, Angle::from_deg(0.0).unwrap()).unwrap();
    /// let plan = slope.plan_length(Length::from_m(10.0).unwrap());
    /// assert!((plan.m() - 9.950).abs() < 0.000_5);
    /// ```
    #[must_use]
    pub fn plan_length(self, ground: Length) -> Length {
        ground.times(self.plan_share())
    }

    /// The length along the ground of a horizontal length walked in a direction, clockwise from away-from-front.
    #[must_use]
    pub fn ground_length(self, plan: Length, walking: Angle) -> Length {
        let towards_rad = (walking.deg() - self.uphill.deg()).to_radians();
        plan.times(1.0_f64.hypot(self.gradient * towards_rad.cos()))
    }

    /// Where a point measured along the ground lies on the plan.
    #[must_use]
    pub fn plan_point(self, (x, y): (f64, f64)) -> (f64, f64) {
        let (up_x, up_y) = self.uphill.deg().to_radians().sin_cos();
        let shortened = (1.0 - self.plan_share()) * (x * up_x + y * up_y);
        (x - shortened * up_x, y - shortened * up_y)
    }

    /// Where a point of the plan lies as measured along the ground: the way back of [`Slope::plan_point`].
    ///
    /// ```
    /// use evensward_core::lawn::Slope;
    /// use evensward_core::quantity::Angle;
    /// let slope = Slope::from_percent(20.0, Angle::from_deg(30.0).unwrap()).unwrap();
    /// let (x, y) = slope.ground_point(slope.plan_point((7.0, 11.0)));
    /// assert!((x - 7.0).abs() < 1e-9 && (y - 11.0).abs() < 1e-9);
    /// ```
    #[must_use]
    pub fn ground_point(self, (x, y): (f64, f64)) -> (f64, f64) {
        let (up_x, up_y) = self.uphill.deg().to_radians().sin_cos();
        let lengthened = (1.0 / self.plan_share() - 1.0) * (x * up_x + y * up_y);
        (x + lengthened * up_x, y + lengthened * up_y)
    }
}

fn steeper_than_walked() -> Said {
    Said::new("slope-too-steep").with("limit", Arg::number(100.0 * STEEPEST, Unit::Percent, 0))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn m(value: f64) -> Length {
        Length::from_m(value).unwrap()
    }

    fn up(deg: f64) -> Angle {
        Angle::from_deg(deg).unwrap()
    }

    fn near(found: f64, expected: f64) {
        assert!((found - expected).abs() < 1e-9, "{found} and not {expected}");
    }

    #[test]
    fn a_slope_is_the_same_however_it_was_taken() {
        // 3-4-5: 3 m of rise over 5 m of ground is 4 m of plan.
        let by_rise = Slope::from_rise(m(3.0), m(5.0), up(0.0)).unwrap();
        near(by_rise.gradient(), 0.75);
        near(by_rise.plan_length(m(5.0)).m(), 4.0);
        near(Slope::from_percent(75.0, up(0.0)).unwrap().plan_share(), 0.8);
        near(Slope::from_deg(45.0, up(0.0)).unwrap().gradient(), 1.0);
    }

    #[test]
    fn ground_is_longer_only_up_and_down() {
        let slope = Slope::from_percent(75.0, up(90.0)).unwrap();
        near(slope.ground_length(m(4.0), up(90.0)).m(), 5.0);
        near(slope.ground_length(m(4.0), up(270.0)).m(), 5.0);
        near(slope.ground_length(m(4.0), up(0.0)).m(), 4.0);
        let (x, y) = slope.plan_point((5.0, 2.0));
        near(x, 4.0);
        near(y, 2.0);
    }

    #[test]
    fn a_slope_that_cannot_be_says_why() {
        let code = |slope: Result<Slope, SlopeProblem>| slope.unwrap_err().said.code;
        assert_eq!(code(Slope::from_rise(m(5.0), m(5.0), up(0.0))), "rise-longer-than-ground");
        assert_eq!(code(Slope::from_rise(m(0.0), m(0.0), up(0.0))), "zero");
        assert_eq!(code(Slope::from_rise(m(4.9), m(5.0), up(0.0))), "slope-too-steep");
        for wrong in [f64::NAN, f64::INFINITY, -1.0] {
            assert_eq!(code(Slope::from_percent(wrong, up(0.0))), "not-a-number");
        }
        assert_eq!(code(Slope::from_percent(101.0, up(0.0))), "slope-too-steep");
        assert_eq!(code(Slope::from_deg(90.0, up(0.0))), "slope-too-steep");
        assert_eq!(code(Slope::from_deg(f64::NAN, up(0.0))), "not-a-number");
    }
}
