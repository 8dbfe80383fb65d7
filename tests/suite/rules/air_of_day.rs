//! The rules of the day, by the limits of the United Kingdom's code of practice.

use evensward_core::checks::Check;
use evensward_core::checks::limits::LimitProfile;
use evensward_core::checks::weather::{
    LabelTemperature, Sky, drought, frozen, grass_wet, inversion, rain_against_label, temperature,
};
use evensward_core::checks::wind::{Wind, WindFrom, WindReading, gusts, wind_direction, wind_strength};
use evensward_core::lawn::{Beside, Part, Shape, Side, Survey};
use evensward_core::product::{Rain, Tagged};
use evensward_core::quantity::{Angle, Length, Span, Temperature, Unit, WindSpeed};

use super::given::Given;
use crate::visit_sample::m;

pub fn limits() -> LimitProfile {
    LimitProfile::united_kingdom()
}

fn speed(km_per_h: f64) -> WindSpeed {
    WindSpeed::from_unit(km_per_h, Unit::KilometrePerHour).unwrap()
}

/// A meter at the height of the spray, 1 m.
fn by_meter(km_per_h: f64) -> Wind {
    Wind { reading: WindReading::ByMeter { speed: speed(km_per_h), height: m(1.0) }, from: None }
}

/// Open water lies along the right-hand, eastern edge of a lawn whose back lies to the north.
fn towards_water(from_deg: f64) -> Option<Check> {
    let lawn = Part::taped(Shape::Rectangle { width: m(10.0), length: m(10.0) });
    let right = Side { part_idx: 0, side_idx: 1, beside: Beside::OpenWater, margin: Length::ZERO };
    let sides = Survey { sides: vec![right], ..Survey::of(vec![lawn]) }.measure(None).unwrap().sides;
    let from = Some(WindFrom::Compass(Angle::from_deg(from_deg).unwrap()));
    let wind = Wind { reading: WindReading::BySign { force: 2 }, from };
    wind_direction(Some(&wind), &sides, Angle::from_deg(0.0).ok(), &|_, _| false, &limits()).into_iter().next()
}

pub fn ask(rule: &str, given: &Given<'_>) -> Option<Check> {
    let limits = limits();
    Some(match rule {
        "drought" => drought(given.maybe("is_thirsty"), None),
        "frozen" => frozen(given.maybe("is_frozen")),
        "grass-wet" => grass_wet(given.maybe("is_wet")),
        "gusts" => {
            let gust = given.maybe_number("gust_km_per_h").map(speed);
            gusts(given.maybe("is_felt"), gust, Some(&by_meter(5.0)), &limits)
        }
        "inversion" => {
            let sky = given.maybe_text("sky").map(|sky| match sky {
                "clear" => Sky::Clear,
                "cloudy" => Sky::Cloudy,
                "mist" => Sky::Mist,
                other => panic!("no sky is {other}"),
            });
            inversion(Some(&by_meter(given.number("wind_km_per_h"))), sky, &limits)
        }
        "rain" => {
            let free = Tagged::statutory(Span::from_s(given.number("label_dry_h") * 3_600.0).unwrap());
            rain_against_label(&Rain::Free(free), given.maybe("is_raining"), given.maybe_number("expected_dry_h"))
        }
        "temperature" => {
            let seen = given.maybe_number("deg_c").map(|deg_c| Temperature::from_deg_c(deg_c).unwrap());
            temperature(seen, &LabelTemperature::default(), &limits)
        }
        "wind" => wind_strength(given.maybe_number("wind_km_per_h").map(by_meter).as_ref(), &limits),
        "wind-direction" => return towards_water(given.number("from_deg")),
        _ => panic!("the day does not ask {rule}"),
    })
}
