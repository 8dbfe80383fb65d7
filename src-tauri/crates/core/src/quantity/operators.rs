//! The operators that mean something, and no others. What is not written here does not compile: a dose
//! is not added to a swath, and a dose meets an area, never a tank.

use core::ops::{Div, Mul};

use super::{
    Area, Concentration, FlowRate, Length, Pace, ProductAmount, ProductDose, Span, Swath, Volume, VolumePerArea,
};

/// Product for an area.
impl Mul<Area> for ProductDose {
    type Output = ProductAmount;
    fn mul(self, area: Area) -> ProductAmount {
        ProductAmount::computed(self.kind(), self.base() * area.m2())
    }
}

/// Mixture for an area.
impl Mul<Area> for VolumePerArea {
    type Output = Volume;
    fn mul(self, area: Area) -> Volume {
        Volume::computed(self.ml_per_m2() * area.m2() / 1_000.0)
    }
}

/// What comes out in a time.
impl Mul<Span> for FlowRate {
    type Output = Volume;
    fn mul(self, span: Span) -> Volume {
        Volume::computed(self.l_per_min() * span.s() / 60.0)
    }
}

/// How long a length takes to walk.
impl Div<Pace> for Length {
    type Output = Span;
    fn div(self, pace: Pace) -> Span {
        Span::computed(self.m() / pace.m_per_s())
    }
}

/// The ground a swath covers over a length.
impl Mul<Length> for Swath {
    type Output = Area;
    fn mul(self, length: Length) -> Area {
        Area::computed(self.m() * length.m())
    }
}

/// Product in a volume of mixture.
impl Mul<Volume> for Concentration {
    type Output = ProductAmount;
    fn mul(self, mixture: Volume) -> ProductAmount {
        ProductAmount::computed(self.kind(), self.per_l() * mixture.l())
    }
}

/// Product on the ground where that much mixture of this concentration lands.
impl Mul<VolumePerArea> for Concentration {
    type Output = ProductDose;
    fn mul(self, mixture: VolumePerArea) -> ProductDose {
        ProductDose::computed(self.kind(), self.per_l() * mixture.ml_per_m2() / 1_000.0)
    }
}

impl Volume {
    /// Spread over an area, or nothing when there is no area.
    #[must_use]
    pub fn over(self, area: Area) -> Option<VolumePerArea> {
        (area.m2() > 0.0).then(|| VolumePerArea::computed(self.ml() / area.m2()))
    }

    /// Caught in a time, or nothing when no time passed or nothing was caught.
    #[must_use]
    pub fn per(self, span: Span) -> Option<FlowRate> {
        (span.s() > 0.0 && self.l() > 0.0).then(|| FlowRate::computed(self.l() / span.s() * 60.0))
    }
}

impl Length {
    /// Walked in a time, or nothing when no time passed or no way was made.
    #[must_use]
    pub fn per(self, span: Span) -> Option<Pace> {
        (span.s() > 0.0 && self.m() > 0.0).then(|| Pace::computed(self.m() / span.s()))
    }
}

impl FlowRate {
    /// So many times the flow (a learned trim, a pressure). Never below the smallest flow.
    #[must_use]
    pub fn times(self, factor: f64) -> Self {
        Self::computed(self.l_per_min() * factor)
    }
}

impl Pace {
    /// So many times the pace. Never below the smallest pace.
    #[must_use]
    pub fn times(self, factor: f64) -> Self {
        Self::computed(self.m_per_s() * factor)
    }
}
