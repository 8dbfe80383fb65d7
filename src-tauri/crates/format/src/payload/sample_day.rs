//! Payloads of the day and the label: ground kept back, and the keys that came with what a label may state and a look may see.

use std::sync::Arc;

use chrono::NaiveDate;
use evensward_core::checks::weather::Sky;
use evensward_core::checks::wind::WindFrom;
use evensward_core::coverage::EarlierGround;
use evensward_core::product::{
    Active, Analysis, AnalysisBasis, Content, Months, Nutrient, Purpose, Situation, Stated, StatedAs, Tagged, TargetUse,
};
use evensward_core::quantity::{Angle, Humidity, Length, ProductDose, ProductKind, Temperature, Unit, WindSpeed};
use evensward_core::visit::event::{KeptBack, Payload, RestOf};
use uuid::Uuid;

use super::sample::{checks, each_kind, measured, typed};

fn m(value: f64) -> Length {
    Length::from_m(value).unwrap()
}

fn day(text: &str) -> NaiveDate {
    text.parse().unwrap()
}

fn dose(ml_per_m2: f64) -> ProductDose {
    ProductDose::of(ProductKind::Volume, ml_per_m2).unwrap()
}

/// One payload of each kind of the day.
pub(super) fn kinds() -> Vec<Payload> {
    let kept = KeptBack { width: m(5.0), sides: vec![(0, 2), (1, 0)] };
    vec![Payload::GroundKeptBack {
        kept,
        measured: Arc::new(measured()),
        typed: typed("width", "5", Unit::Metre),
        checks: checks(),
    }]
}

/// One payload of each kind that has keys of the day or of the label, with all of them said.
pub(super) fn with_keys_of_the_day() -> Vec<Payload> {
    each_kind().into_iter().filter_map(later).collect()
}

fn later(payload: Payload) -> Option<Payload> {
    Some(match payload {
        Payload::Opened(mut lawn) => {
            let now = Arc::make_mut(&mut lawn);
            let (outline, ground) = (now.measured.outline.clone(), now.measured.net.clone());
            now.rest_of = Some(RestOf { visit: Uuid::from_u128(0x91), earlier: EarlierGround { outline, ground } });
            Payload::Opened(lawn)
        }
        Payload::Assessed { mut found, checks } => {
            let now = Arc::make_mut(&mut found);
            now.situation = Some(Situation::AmenityTurf);
            now.sown_on = Some(day("2025-09-15"));
            now.mown_on = Some(day("2026-04-28"));
            Payload::Assessed { found, checks }
        }
        Payload::ProductChosen { mut label, checks } => {
            let now = &mut Arc::make_mut(&mut label).label;
            let degrees = |value| Temperature::from_deg_c(value).unwrap();
            now.situations = vec![Situation::Lawn, Situation::SportsTurf];
            now.hand_held = Some(Tagged::statutory(true));
            now.actives = vec![
                Active { name: "An invented substance".into(), content: Content::GramsPerLitre(62.5) },
                Active { name: "Another".into(), content: Content::GramsPerKilogram(125.0) },
            ];
            let target = "Invented daisy".to_owned();
            let highest = Some(Tagged::statutory(dose(2.25)));
            now.uses = vec![TargetUse { purpose: Purpose::Weeds, target, dose: dose(1.75), highest }];
            now.least_dose = Some(Tagged::advisory(dose(1.5)));
            now.most_amount = Some(Tagged::statutory(dose(7.5)));
            now.months = Months::of(&[4, 5, 9]).map(Tagged::statutory);
            now.least_temperature = Some(Tagged::advisory(degrees(8.0)));
            now.most_temperature = Some(Tagged::advisory(degrees(25.0)));
            now.mowing_before = Some(Tagged::advisory(3));
            now.mowing_after = Some(Tagged::advisory(4));
            now.young_turf = Some(Tagged::statutory(6));
            now.no_drought = Some(Tagged::advisory(true));
            now.water_margin_boom = Some(Tagged::statutory(m(5.0)));
            now.authorised_until = Some(day("2028-12-31"));
            now.use_up_by = Some(day("2029-06-30"));
            now.hazard_words = "Words of the label on hazards.".into();
            let stated = |nutrient, percent, stated_as| Stated { nutrient, percent, stated_as };
            now.analysis = Some(Analysis {
                basis: AnalysisBasis::ByVolume,
                stated: vec![
                    stated(Nutrient::Nitrogen, 6.0, StatedAs::Element),
                    stated(Nutrient::Phosphorus, 2.5, StatedAs::Oxide),
                    stated(Nutrient::Potassium, 4.0, StatedAs::Oxide),
                    stated(Nutrient::Iron, 1.5, StatedAs::Element),
                ],
            });
            Payload::ProductChosen { label, checks }
        }
        Payload::WeatherSeen { mut observation, typed, checks, .. } => {
            if let Some(wind) = &mut observation.wind {
                wind.from = Some(WindFrom::Compass(Angle::from_deg(247.5).unwrap()));
            }
            observation.gust_speed = Some(WindSpeed::from_m_per_s(3.5).unwrap());
            observation.humidity = Some(Humidity::from_percent(62.5).unwrap());
            observation.altitude = Some(m(120.0));
            observation.sky = Some(Sky::Mist);
            Payload::WeatherSeen { observation, typed, checks, limits: Some("united_kingdom".into()) }
        }
        _ => return None,
    })
}
