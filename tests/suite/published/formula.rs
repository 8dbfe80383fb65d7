//! Which public function of `core` answers which formula key.
//!
//! Invariant: this file only hands figures to `core` and takes the answer back. Where a published example is
//! not put as `core` puts it, the steps between are calls to `core` too, and the comment says which.

use evensward_core::checks::limits::LimitProfile;
use evensward_core::checks::weight::weight_on_the_back;
use evensward_core::checks::wind::{
    BEAUFORT, Wind, WindClass, WindReading, force_from_knots, force_from_speed, wind_strength,
};
use evensward_core::coverage::{Pattern, cv_percent, half_rate_swath};
use evensward_core::kit::{
    JugTest, NozzleSize, NozzleState, TestPlot, TimedWalk, area_per_fill, course_length, fan_width, flow_at_pressure,
    flow_for, nozzle_state, pattern_base, per_pass, pressure_for_flow, spread,
};
use evensward_core::plan::{as_it_is_factor, extra_water_l, narrow_pace, rinse_residual, smallest_area, weight_with};
use evensward_core::quantity::{
    Angle, Area, Concentration, FlowRate, Length, Mass, Pace, Pressure, ProductAmount, ProductDose, ProductKind, Span,
    Swath, Unit, Volume, VolumePerArea, Weight, WindSpeed, customary, parse_number,
};

use super::data::Trouble;
use super::given::Given;
pub(super) use super::keys::Formula;
use super::{chemistry, geodesy, lawn, survey, visit};

/// What `core` answers.
pub(super) enum Answer {
    /// A quantity, to be read in the unit of the published figure; nothing when that unit measures something else.
    Quantity(Box<dyn Fn(Unit) -> Option<f64>>),
    /// A bare number: a share, a factor, a count, a class.
    Number(f64),
    /// A word: a verdict, a class.
    Word(&'static str),
}

impl Formula {
    pub(super) fn answer(self, given: &mut Given<'_>) -> Result<Answer, Trouble> {
        Ok(match self {
            Self::LengthIn => length(given.quantity("length", Length::from_figure)?),
            Self::AreaIn => area(given.quantity("area", Area::from_figure)?),
            Self::VolumeIn => volume(given.quantity("volume", Volume::from_figure)?),
            Self::MassIn => {
                let mass = given.quantity("mass", Mass::from_figure)?;
                quantity(move |unit| mass.in_unit(unit))
            }
            Self::WindSpeedIn => {
                let speed = given.quantity("speed", WindSpeed::from_figure)?;
                quantity(move |unit| speed.in_unit(unit))
            }
            Self::VolumePerAreaIn => volume_per_area(given.quantity("volume_per_area", VolumePerArea::from_figure)?),
            Self::DoseIn => dose(given.quantity("dose", ProductDose::from_figure)?),
            Self::Beside => {
                let figure = given.figure("figure")?;
                let value = parse_number(&figure.text).map_err(|_| given.trouble("this is no number"))?;
                let beside = customary(value, figure.unit, 6).ok_or_else(|| given.trouble("it has no counterpart"))?;
                quantity(move |unit| (unit == beside.unit).then_some(beside.value))
            }
            Self::DoseOf => {
                let product = given.quantity("product", ProductAmount::from_figure)?;
                let area = given.quantity("area", Area::from_figure)?;
                dose(product.over(area).ok_or_else(|| given.trouble("there is no area"))?)
            }
            Self::Rectangle => area(lawn::area(given, |given| lawn::rectangle(given, "width", "length"))?),
            Self::Triangle => area(lawn::area(given, lawn::triangle)?),
            Self::BaseAndHeight => area(lawn::area(given, |given| lawn::on_base(given, "base", "height"))?),
            Self::Circle => area(lawn::area(given, |given| lawn::circle(given, "diameter"))?),
            Self::PartCircle => area(lawn::area(given, lawn::part_circle)?),
            Self::LawnLessBeds => area(lawn::less_a_bed(given)?),
            Self::LawnOfParts => area(lawn::of_parts(given)?),
            Self::LawnWithSemicircle => area(lawn::with_semicircle(given)?),
            Self::LawnLessCorners => area(lawn::less_its_corners(given)?),
            Self::WetBulb
            | Self::DryingDifference
            | Self::DewPoint
            | Self::SaturationPressure
            | Self::StandardPressure
            | Self::DryingClass
            | Self::ElementInOxide
            | Self::NutrientDelivered
            | Self::IronSulphateDissolves
            | Self::HighestConcentration
            | Self::AddingGroup => chemistry::answer(self, given)?,
            Self::GeodesicDistance => length(geodesy::distance(given)?),
            Self::GeodesicArea => area(geodesy::area(given)?),
            Self::GeodesicPerimeter => length(geodesy::perimeter(given)?),
            Self::AreaInThePlane => area(geodesy::area_in_plane(given)?),
            Self::DestinationLatitude => Answer::Number(geodesy::destination(given)?.lat_deg()),
            Self::DestinationLongitude => Answer::Number(geodesy::destination(given)?.lon_deg()),
            Self::OffsetsTrapezoid => area(survey::trapezoid(given)?),
            Self::OffsetsSimpson => area(survey::simpson(given)?),
            Self::Corners => area(lawn::area(given, survey::corners)?),
            Self::Braced => area(survey::braced(given)?),
            Self::RectangleSpread => area(survey::rectangle_spread(given)?),
            Self::PlanLength => length(survey::plan_length(given)?),
            Self::JugTest => {
                let test = JugTest {
                    volume: given.quantity("volume", Volume::from_figure)?,
                    time: given.quantity("time", Span::from_figure)?,
                };
                flow(test.flow().ok_or_else(|| given.trouble("the jug test measured nothing"))?)
            }
            Self::TimedWalk => {
                let walk = TimedWalk {
                    length: given.quantity("length", Length::from_figure)?,
                    time: given.quantity("time", Span::from_figure)?,
                    steps: None,
                };
                let pace = walk.pace().ok_or_else(|| given.trouble("the walk measured nothing"))?;
                quantity(move |unit| pace.in_unit(unit))
            }
            Self::TestPlot => {
                let plot = TestPlot {
                    area: given.quantity("area", Area::from_figure)?,
                    caught: given.quantity("volume", Volume::from_figure)?,
                };
                volume_per_area(plot.per_pass().ok_or_else(|| given.trouble("the plot has no area"))?)
            }
            Self::VolumePerPass => volume_per_area(per_pass(
                given.quantity("flow", FlowRate::from_figure)?,
                given.quantity("pace", Pace::from_figure)?,
                given.quantity("swath", Swath::from_figure)?,
            )),
            Self::MeanFlow => {
                let time = given.quantity("time", Span::from_figure)?;
                let mut catches = Vec::new();
                let mut name = "catch_1".to_owned();
                while given.has(&name) {
                    catches.push(JugTest { volume: given.quantity(&name, Volume::from_figure)?, time });
                    name = format!("catch_{}", catches.len() + 1);
                }
                flow(spread(&catches).ok_or_else(|| given.trouble("no catch is given"))?.mean)
            }
            Self::FlowFor => {
                let wanted = given.quantity("volume_per_area", VolumePerArea::from_figure)?;
                let pace = given.quantity("pace", Pace::from_figure)?;
                flow(flow_for(pace, given.quantity("swath", Swath::from_figure)?, wanted))
            }
            Self::CourseLength => {
                let area = given.quantity("area", Area::from_figure)?;
                length(course_length(area, given.quantity("swath", Swath::from_figure)?))
            }
            Self::AreaPerFill => {
                let fill = given.quantity("fill", Volume::from_figure)?;
                let rate = given.quantity("volume_per_area", VolumePerArea::from_figure)?;
                area(area_per_fill(fill, rate).ok_or_else(|| given.trouble("no volume is put out"))?)
            }
            Self::NozzleAtPressure => {
                let size = given.word("size")?;
                let nozzle =
                    NozzleSize::named(size).ok_or_else(|| given.trouble(format!("there is no size {size}")))?;
                flow(nozzle.flow_at(given.quantity("pressure", Pressure::from_figure)?))
            }
            Self::FlowAtPressure => flow(flow_at_pressure(
                given.quantity("flow", FlowRate::from_figure)?,
                given.quantity("pressure", Pressure::from_figure)?,
                given.quantity("wanted", Pressure::from_figure)?,
            )),
            Self::PressureForFlow => {
                let at = given.quantity("pressure", Pressure::from_figure)?;
                let measured = given.quantity("flow", FlowRate::from_figure)?;
                let pressure = pressure_for_flow(at, measured, given.quantity("wanted", FlowRate::from_figure)?);
                quantity(move |unit| pressure.in_unit(unit))
            }
            Self::NozzleWear => {
                let measured = given.quantity("measured", FlowRate::from_figure)?;
                Answer::Word(match nozzle_state(measured, given.quantity("nominal", FlowRate::from_figure)?) {
                    NozzleState::Sound => "sound",
                    NozzleState::Worn => "worn",
                    NozzleState::Low => "low",
                })
            }
            Self::FanBase => {
                let height = given.quantity("height", Length::from_figure)?;
                let fan = given.quantity("angle", Angle::from_figure)?;
                length(pattern_base(height, fan).ok_or_else(|| given.trouble("the fan is too wide"))?)
            }
            Self::FanTurned => {
                let full = given.quantity("swath", Swath::from_figure)?;
                length(fan_width(full, given.quantity("angle", Angle::from_figure)?))
            }
            Self::WeightOnTheBack => {
                Answer::Word(weight_on_the_back(given.quantity("full", Weight::from_figure)?).verdict.code())
            }
            Self::WeightOfWater => {
                let water = given.quantity("water", Volume::from_figure)?;
                let weight = weight_with(Weight::ZERO, water, ProductAmount::zero(ProductKind::Volume), None);
                quantity(move |unit| weight.in_unit(unit))
            }
            Self::ForceFromSpeed => {
                Answer::Number(force_from_speed(given.quantity("speed", WindSpeed::from_figure)?).into())
            }
            Self::ForceFromKnots => {
                let speed = given.quantity("speed", WindSpeed::from_figure)?;
                let speed_kn = speed.in_unit(Unit::Knot).ok_or_else(|| given.trouble("a wind has a speed"))?;
                Answer::Number(force_from_knots(speed_kn).into())
            }
            Self::ForceOfSign => {
                let sign = given.word("sign")?;
                let row = BEAUFORT.iter().find(|row| row.land_sign == sign);
                Answer::Number(row.ok_or_else(|| given.trouble(format!("there is no sign {sign}")))?.force.into())
            }
            Self::WindBySign => verdict_on(WindReading::BySign { force: given.count("force")? }),
            Self::WindByMeter => verdict_on(WindReading::ByMeter {
                speed: given.quantity("speed", WindSpeed::from_figure)?,
                height: given.quantity("height", Length::from_figure)?,
            }),
            Self::WindClassAtSprayHeight => Answer::Word(
                match LimitProfile::united_kingdom()
                    .class_at_spray_height(given.quantity("speed", WindSpeed::from_figure)?)
                {
                    WindClass::Calm => "calm",
                    WindClass::Light => "light",
                    WindClass::Ideal => "ideal",
                    WindClass::Fresh => "fresh",
                    WindClass::TooStrong => "too-strong",
                },
            ),
            Self::Evenness => {
                let pattern = match given.word("pattern")? {
                    "triangle" => Pattern::Triangular,
                    "rectangle" => Pattern::Rectangular,
                    "cosine-squared" => Pattern::CosineSquared,
                    other => return Err(given.trouble(format!("there is no pattern {other}"))),
                };
                let base = given.quantity("base", Length::from_figure)?;
                let cv = cv_percent(pattern, base, given.quantity("spacing", Swath::from_figure)?)
                    .ok_or_else(|| given.trouble("nothing lands"))?;
                quantity(move |unit| (unit == Unit::Percent).then_some(cv))
            }
            Self::HalfRateSwath => {
                let centre = given.quantity("centre_catch", Volume::from_figure)?;
                let next = given.quantity("next_catch", Volume::from_figure)?;
                let apart = given.quantity("apart", Length::from_figure)?;
                let swath = half_rate_swath(&[centre.ml(), next.ml()], apart)
                    .ok_or_else(|| given.trouble("no catch falls to half"))?;
                quantity(move |unit| swath.in_unit(unit))
            }
            Self::RinseResidual => {
                let residue = given.quantity("residue", Volume::from_figure)?;
                let rinse = given.quantity("rinse", Volume::from_figure)?;
                Answer::Number(rinse_residual(residue, rinse, given.count("n_rinses")?))
            }
            Self::SmallestArea => {
                let left = given.quantity("left", ProductAmount::from_figure)?;
                let highest = given.quantity("highest", ProductDose::from_figure)?;
                let there = given.quantity("there", ProductDose::from_figure)?;
                area(smallest_area(left, highest, there).ok_or_else(|| given.trouble("no dose is open"))?)
            }
            Self::ExtraWater => {
                let n_left = f64::from(given.count("n_passes_left")?);
                let needed = given.quantity("used", Volume::from_figure)?.times(n_left);
                let extra_l = extra_water_l(needed, given.quantity("left", Volume::from_figure)?);
                volume(Volume::from_l(extra_l).map_err(|e| given.trouble(e.to_string()))?)
            }
            Self::NarrowFactor => {
                let swath = given.quantity("swath", Swath::from_figure)?;
                Answer::Number(as_it_is_factor(swath, given.quantity("width", Length::from_figure)?))
            }
            Self::NarrowPace => {
                let pace = narrow_pace(
                    given.quantity("pace", Pace::from_figure)?,
                    given.quantity("swath", Swath::from_figure)?,
                    given.quantity("width", Length::from_figure)?,
                    given.count("n_sprayed")?,
                    given.count("n_passes")?,
                )
                .ok_or_else(|| given.trouble("no pass sprays the strip"))?;
                quantity(move |unit| pace.in_unit(unit))
            }
            Self::PlanMixture => volume(visit::planned(given)?.mixture),
            Self::PlanProduct => product(visit::planned(given)?.product),
            Self::PlanLargestFill => {
                volume(visit::planned(given)?.fills.iter().map(|fill| fill.mixture).fold(Volume::ZERO, Volume::max))
            }
            Self::PlanFillCount => Answer::Number(visit::planned(given)?.fills.len() as f64),
            Self::TimeToWalk => {
                let length = given.quantity("length", Length::from_figure)?;
                let pace = given.quantity("pace", Pace::from_figure)?;
                let time = length / pace;
                quantity(move |unit| time.in_unit(unit))
            }
            Self::ProductForArea => {
                let dose = given.quantity("dose", ProductDose::from_figure)?;
                product(dose * given.quantity("area", Area::from_figure)?)
            }
            Self::MixtureForArea => {
                let rate = given.quantity("volume_per_area", VolumePerArea::from_figure)?;
                volume(rate * given.quantity("area", Area::from_figure)?)
            }
            Self::ProductInFill => {
                let dose = given.quantity("dose", ProductDose::from_figure)?;
                let water = given.quantity("water", VolumePerArea::from_figure)?;
                let fill = given.quantity("fill", Volume::from_figure)?;
                // Dose and water meet on an area; the concentration they make is the same on any.
                let area = Area::from_m2(100.0).map_err(|e| given.trouble(e.to_string()))?;
                let concentration =
                    (dose * area).in_mixture(water * area).ok_or_else(|| given.trouble("there is no mixture"))?;
                product(concentration * fill)
            }
            Self::ProductAtConcentration => {
                let concentration = given.quantity("concentration", Concentration::from_figure)?;
                product(concentration * given.quantity("mixture", Volume::from_figure)?)
            }
            Self::SameMixture => {
                let amount = given.quantity("product", ProductAmount::from_figure)?;
                let mixture = given.quantity("mixture", Volume::from_figure)?;
                let concentration = amount.in_mixture(mixture).ok_or_else(|| given.trouble("there is no mixture"))?;
                product(concentration * given.quantity("more", Volume::from_figure)?)
            }
        })
    }
}

fn verdict_on(reading: WindReading) -> Answer {
    Answer::Word(wind_strength(Some(&Wind { reading, from: None }), &LimitProfile::united_kingdom()).verdict.code())
}

fn quantity(in_unit: impl Fn(Unit) -> Option<f64> + 'static) -> Answer {
    Answer::Quantity(Box::new(in_unit))
}

fn length(length: Length) -> Answer {
    quantity(move |unit| length.in_unit(unit))
}

fn area(area: Area) -> Answer {
    quantity(move |unit| area.in_unit(unit))
}

fn flow(flow: FlowRate) -> Answer {
    quantity(move |unit| flow.in_unit(unit))
}

fn volume(volume: Volume) -> Answer {
    quantity(move |unit| volume.in_unit(unit))
}

fn volume_per_area(rate: VolumePerArea) -> Answer {
    quantity(move |unit| rate.in_unit(unit))
}

fn dose(dose: ProductDose) -> Answer {
    quantity(move |unit| dose.in_unit(unit))
}

fn product(amount: ProductAmount) -> Answer {
    quantity(move |unit| match amount {
        ProductAmount::Volume(volume) => volume.in_unit(unit),
        ProductAmount::Mass(mass) => mass.in_unit(unit),
    })
}
