//! What units measure. Units of one dimension convert into each other and into nothing else.

/// What a unit measures. Units convert only within one dimension.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Dimension {
    /// Lengths and swaths; base m.
    Length,
    /// Areas; base m2.
    Area,
    /// Volumes; base L.
    Volume,
    /// Masses and weights; base g.
    Mass,
    /// Durations; base s.
    Time,
    /// Calendar months, which are counted and never converted.
    Calendar,
    /// Flows; base L/min.
    Flow,
    /// Paces and wind speeds; base m/s.
    Speed,
    /// Water or liquid product per area; base mL/m2.
    VolumePerArea,
    /// Solid product per area; base g/m2.
    MassPerArea,
    /// Liquid product per litre of mixture; base mL/L.
    VolumePerVolume,
    /// Solid product per litre of mixture; base g/L.
    MassPerVolume,
    /// Densities; base g/mL.
    Density,
    /// Pressures; base bar.
    Pressure,
    /// Angles; base degree.
    Angle,
    /// Temperatures; base degree Celsius, with an offset for Fahrenheit.
    Temperature,
    /// Differences between two temperatures; base kelvin. No temperature is one: 4 kelvins are not 4 degrees of warmth.
    TemperatureDifference,
    /// Ratios; base per cent.
    Ratio,
    /// Counted things.
    Count,
    /// Steps per minute.
    StepRate,
    /// How acid water is; base pH.
    Acidity,
    /// Lime in water, as calcium carbonate; base mg/L.
    Hardness,
}
