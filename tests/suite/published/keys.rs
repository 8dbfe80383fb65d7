//! The keys by which a row names what it asks of `core`.
//!
//! Invariant: a key stands once, and every key that is here is answered in `formula`.

macro_rules! formulas {
    ($($(#[$doc:meta])* $name:ident = $key:literal,)*) => {
        /// What may be asked of `core`.
        #[derive(Debug, Clone, Copy, PartialEq, Eq)]
        pub(super) enum Formula {
            $($(#[$doc])* $name,)*
        }

        impl Formula {
            pub(super) fn from_key(key: &str) -> Option<Self> {
                match key {
                    $($key => Some(Self::$name),)*
                    _ => None,
                }
            }
        }
    };
}

formulas! {
    /// A length in another unit.
    LengthIn = "length-in",
    /// An area in another unit.
    AreaIn = "area-in",
    /// A volume in another unit.
    VolumeIn = "volume-in",
    /// A mass in another unit.
    MassIn = "mass-in",
    /// A wind speed in another unit.
    WindSpeedIn = "wind-speed-in",
    /// Mixture per area in another unit.
    VolumePerAreaIn = "volume-per-area-in",
    /// Product per area in another unit.
    DoseIn = "dose-in",
    /// A metric figure in the customary unit that stands beside it.
    Beside = "beside",
    /// The dose that an amount makes on an area.
    DoseOf = "dose-of",
    /// The area of a rectangle.
    Rectangle = "rectangle",
    /// The area of a triangle from its three sides.
    Triangle = "triangle",
    /// The area of a triangle from base and height.
    BaseAndHeight = "base-and-height",
    /// The area of a circle.
    Circle = "circle",
    /// The area of a part of a circle.
    PartCircle = "part-circle",
    /// The net area of a rectangle with a bed taken out.
    LawnLessBeds = "lawn-less-beds",
    /// The net area of a lawn of several parts.
    LawnOfParts = "lawn-of-parts",
    /// The net area of a rectangle with a semicircle on its front.
    LawnWithSemicircle = "lawn-with-semicircle",
    /// The net area of a square with its corners taken out.
    LawnLessCorners = "lawn-less-corners",
    /// The area of offsets from a baseline by the trapezoid rule.
    OffsetsTrapezoid = "offsets-trapezoid",
    /// The area of offsets from a baseline by Simpson's rule.
    OffsetsSimpson = "offsets-simpson",
    /// The area of corners given by their coordinates.
    Corners = "corners",
    /// The adjusted area of sides and braces.
    Braced = "braced",
    /// The standard uncertainty of a rectangle's area.
    RectangleSpread = "rectangle-spread",
    /// The horizontal length of a length along a slope.
    PlanLength = "plan-length",
    /// The flow of a catch.
    JugTest = "jug-test",
    /// The pace of a walk.
    TimedWalk = "timed-walk",
    /// Volume per area by a test plot.
    TestPlot = "test-plot",
    /// Volume per area of one pass from flow, pace and swath.
    VolumePerPass = "volume-per-pass",
    /// The mean flow of several catches.
    MeanFlow = "mean-flow",
    /// The flow for a wanted volume per area.
    FlowFor = "flow-for",
    /// The length of a calibration course.
    CourseLength = "course-length",
    /// The area one tankful treats.
    AreaPerFill = "area-per-fill",
    /// A nozzle's nominal flow at a pressure.
    NozzleAtPressure = "nozzle-at-pressure",
    /// A flow at another pressure.
    FlowAtPressure = "flow-at-pressure",
    /// The pressure for another flow.
    PressureForFlow = "pressure-for-flow",
    /// What a measured flow says about a nozzle.
    NozzleWear = "nozzle-wear",
    /// The width of a fan on the ground.
    FanBase = "fan-base",
    /// The width of a fan turned about the lance.
    FanTurned = "fan-turned",
    /// What the weight on the back comes to as a verdict.
    WeightOnTheBack = "weight-on-the-back",
    /// The weight of an amount of water.
    WeightOfWater = "weight-of-water",
    /// The Beaufort force of a speed at 10 m.
    ForceFromSpeed = "force-from-speed",
    /// The Beaufort force of a speed at 10 m in whole knots.
    ForceFromKnots = "force-from-knots",
    /// The Beaufort force of a land sign.
    ForceOfSign = "force-of-sign",
    /// The verdict on a wind read by its land sign.
    WindBySign = "wind-by-sign",
    /// The verdict on a wind read by a meter at a height.
    WindByMeter = "wind-by-meter",
    /// The class of a wind read at spray height.
    WindClassAtSprayHeight = "wind-class-at-spray-height",
    /// The coefficient of variation of an overlapped pattern.
    Evenness = "evenness",
    /// The swath by the half-rate rule.
    HalfRateSwath = "half-rate-swath",
    /// The share that stays after some rinses.
    RinseResidual = "rinse-residual",
    /// The smallest area that leftover may go on.
    SmallestArea = "smallest-area",
    /// The water to add after a pass.
    ExtraWater = "extra-water",
    /// How many times the dose a narrow strip takes when nothing is done.
    NarrowFactor = "narrow-factor",
    /// The pace on a narrow strip that is sprayed in some of the passes.
    NarrowPace = "narrow-pace",
    /// All mixture of a plan.
    PlanMixture = "plan-mixture",
    /// The product of a plan.
    PlanProduct = "plan-product",
    /// The largest fill of a plan.
    PlanLargestFill = "plan-largest-fill",
    /// How many fills a plan has.
    PlanFillCount = "plan-fill-count",
    /// How long a length takes at a pace.
    TimeToWalk = "time-to-walk",
    /// Product for an area: dose times area.
    ProductForArea = "product-for-area",
    /// Mixture for an area.
    MixtureForArea = "mixture-for-area",
    /// What one fill holds of the product, from dose and mixture per area.
    ProductInFill = "product-in-fill",
    /// What a volume of mixture of a known concentration holds.
    ProductAtConcentration = "product-at-concentration",
    /// What more of the same mixture holds.
    SameMixture = "same-mixture",
    /// The distance of two positions on the ellipsoid.
    GeodesicDistance = "geodesic-distance",
    /// The area of a ring of positions on the ellipsoid.
    GeodesicArea = "geodesic-area",
    /// The way round a ring of positions on the ellipsoid.
    GeodesicPerimeter = "geodesic-perimeter",
    /// The area of a ring of positions in the lawn's plane.
    AreaInThePlane = "area-in-the-plane",
    /// The latitude one comes to at a bearing.
    DestinationLatitude = "destination-latitude",
    /// The longitude one comes to at a bearing.
    DestinationLongitude = "destination-longitude",
    /// The wet-bulb temperature.
    WetBulb = "wet-bulb",
    /// The drying difference: dry less wet bulb.
    DryingDifference = "drying-difference",
    /// The dew point.
    DewPoint = "dew-point",
    /// The pressure of saturated vapour, in pascals.
    SaturationPressure = "saturation-pressure",
    /// The standard pressure of the air at an altitude, in pascals.
    StandardPressure = "standard-pressure",
    /// What the drying difference means, by the neutral limits.
    DryingClass = "drying-class",
    /// Grams of an element in 100 grams of its oxide.
    ElementInOxide = "element-in-oxide",
    /// Grams of a nutrient on a square metre.
    NutrientDelivered = "nutrient-delivered",
    /// Grams of iron sulphate crystals that dissolve in 100 grams of added water.
    IronSulphateDissolves = "iron-sulphate-dissolves",
    /// The highest concentration of a dose and the least water.
    HighestConcentration = "highest-concentration",
    /// The place of a formulation in the order of adding.
    AddingGroup = "adding-group",
}
