//! Each rule's own function, asked by the rule's name with the figures of a case. A label's limits are statutory here.

use evensward_core::checks::air::{Air, drying};
use evensward_core::checks::label::{Past, amount_this_year, interval, kills_grass, number_this_year};
use evensward_core::checks::label::{use_is_allowed, water_margin};
use evensward_core::checks::mixing::{self, JarOutcome};
use evensward_core::checks::need::{Seen, treat_at_all};
use evensward_core::checks::ready::{clean_water_trial, protective};
use evensward_core::checks::weight::weight_on_the_back;
use evensward_core::checks::{Check, authorised, calibration, dose, kit, water};
use evensward_core::kit::{Evidence, LastIn, NozzleRating, NozzleSize, Pattern, SetUp, SprayHead, Valve};
use evensward_core::plan::Walkable;
use evensward_core::product::solubility::{Dissolving, OwnTable, SolubilityPoint};
use evensward_core::product::{
    Label, LegalClass, Months, Phase, Protective, Purpose, Situation, Tag, Tagged, TargetUse, WaterRange, Year,
};
use evensward_core::quantity::{
    Acidity, Angle, Concentration, FlowRate, Hardness, Length, Mass, Pace, Pressure, ProductAmount, ProductDose,
    ProductKind, Swath, Temperature, Volume, VolumePerArea, Weight,
};

use super::given::Given;
use super::{air_of_day, on_shelf, planned};
use crate::visit_sample::World;

fn ml(ml_per_m2: f64) -> ProductDose {
    ProductDose::of(ProductKind::Volume, ml_per_m2).unwrap()
}

fn purpose(code: &str) -> Purpose {
    match code {
        "moss" => Purpose::Moss,
        "weeds" => Purpose::Weeds,
        "feeding" => Purpose::Feeding,
        other => panic!("no purpose {other}"),
    }
}

/// An invented moss killer with an authorisation number.
fn label() -> Label {
    World::plain().label
}

fn set_up(nozzle: &str, pressure_bar: f64) -> SetUp {
    SetUp {
        nozzle: nozzle.to_owned(),
        head: SprayHead {
            rating: NozzleSize::named(nozzle).map(NozzleRating::of_size),
            fan: Angle::from_deg(110.0).ok(),
            pattern: Some(Pattern::Tapered),
            height: Length::from_m(0.5).ok(),
            pressure: Pressure::from_bar(pressure_bar).ok(),
            valve: Some(Valve::Constant),
        },
        swath: Swath::from_m(0.7).unwrap(),
    }
}

fn evidence(catches_off_percent: f64, walks_off_percent: f64, n: u32) -> Evidence {
    Evidence {
        n_catches: n,
        catches_off_percent,
        n_walks: n,
        walks_off_percent,
        is_loaded: true,
        pressure: None,
        made_with: Some(set_up("02", 2.0)),
    }
}

fn flow(l_per_min: f64) -> FlowRate {
    FlowRate::from_l_per_min(l_per_min).unwrap()
}

fn rate(ml_per_m2: f64) -> VolumePerArea {
    VolumePerArea::from_ml_per_m2(ml_per_m2).unwrap()
}

fn concentration(ml_per_l: f64) -> Concentration {
    Concentration::of(ProductKind::Volume, ml_per_l).unwrap()
}

fn pieces(codes: &[&str]) -> Vec<Protective> {
    let piece = |code: &&str| match *code {
        "gloves" => Protective::Gloves,
        "boots" => Protective::Boots,
        "face-shield" => Protective::FaceShield,
        other => panic!("no piece {other}"),
    };
    codes.iter().map(piece).collect()
}

/// The answer to a case: the check of that rule, or nothing where the rule is silent.
pub fn ask(rule: &str, given: &Given<'_>) -> Option<Check> {
    match rule {
        "use" | "kills-grass" | "situation" | "hand-held" | "authorisation" | "water-margin" => of_label(rule, given),
        "interval" | "number-this-year" | "amount-this-year" | "months" | "young-turf" | "mowing-before" => {
            of_calendar(rule, given)
        }
        "dose" | "dose-by-own-water" | "dose-on-ground" | "dose-for-target" | "least-dose" | "concentration"
        | "rounding" | "water" => of_dose(rule, given),
        "calibration-age"
        | "calibration-kit"
        | "calibration-repeats"
        | "calibration-ways"
        | "last-in-sprayer"
        | "nozzle-wear"
        | "sprayer-check"
        | "swath"
        | "weight"
        | "pace" => of_kit(rule, given),
        "clean-water-trial" | "dissolving" | "jar-test" | "mix-water" | "partner-label" | "partners"
        | "partners-active" | "protective" | "protective-mixing" | "water-hardness" | "need" => of_mixing(rule, given),
        "container-date" | "container-left" => on_shelf::ask(rule, given),
        "drying-difference" => {
            let any = Temperature::from_deg_c(10.0).unwrap();
            let air = Air {
                wet_bulb: any,
                dew_point: any,
                drying_difference_k: given.number("difference_k"),
                pressure: Pressure::from_bar(1.013).unwrap(),
            };
            drying(Some(air), &air_of_day::limits())
        }
        "drought" | "frozen" | "grass-wet" | "gusts" | "inversion" | "rain" | "temperature" | "wind"
        | "wind-direction" => air_of_day::ask(rule, given),
        "clean-water-in-tank"
        | "ends-beyond"
        | "ends-missed"
        | "ends-on-the-lap"
        | "fan-over-dry-ground"
        | "narrow-pace"
        | "other-direction" => planned::by_plan(rule, given),
        "earlier-ground" => planned::by_history(given),
        "applied-by-others" | "leftover-area" | "leftover-kept" | "room-in-tank" | "use-against-plan" => {
            planned::by_visit(rule, given)
        }
        _ => panic!("nobody asks {rule}"),
    }
}

fn of_label(rule: &str, given: &Given<'_>) -> Option<Check> {
    let plain = label();
    match rule {
        "use" => {
            let legal_class =
                if given.is("is_fertiliser") { LegalClass::Fertiliser } else { LegalClass::PlantProtection };
            Some(use_is_allowed(&Label { legal_class, ..plain }, purpose(given.text("for"))))
        }
        "kills-grass" => Some(kills_grass(&Label { is_total_herbicide: given.is("is_total_herbicide"), ..plain })),
        "situation" => {
            let lawn = match given.text("ground") {
                "lawn" => Situation::Lawn,
                "sports-turf" => Situation::SportsTurf,
                other => panic!("no ground {other}"),
            };
            authorised::situation(&Label { situations: vec![Situation::Lawn], ..plain }, Some(lawn))
        }
        "hand-held" => {
            authorised::hand_held(&Label { hand_held: Some(Tagged::statutory(given.is("is_allowed"))), ..plain })
        }
        "authorisation" => {
            let (authorised_until, use_up_by) = (given.maybe_day("until"), given.maybe_day("use_up_by"));
            authorised::authorisation(&Label { authorised_until, use_up_by, ..plain }, given.day("today"))
        }
        _ => {
            let water_margin_m = Length::from_m(given.number("margin_m")).unwrap();
            let asked = Label { water_margin: Some(Tagged::statutory(water_margin_m)), ..plain };
            Some(water_margin(&asked, given.maybe("has_water"), given.is("is_kept")))
        }
    }
}

fn of_calendar(rule: &str, given: &Given<'_>) -> Option<Check> {
    let today = given.day("today");
    match rule {
        "interval" => {
            let least = Tagged::statutory(given.count("least_days"));
            Some(interval(Some(&[given.day("last")]), today, Some(&least)))
        }
        "number-this-year" => {
            let most = Tagged::statutory(u8::try_from(given.count("most")).unwrap());
            let year = if given.is("is_rolling") { Year::Rolling } else { Year::Calendar };
            Some(number_this_year(Some(&given.days("history")), today, Some(&most), year))
        }
        "amount-this-year" => {
            let before = Past { on: given.day("last"), dose: given.maybe_number("before_ml_per_m2").map(ml) };
            let most = Tagged::statutory(ml(given.number("most_ml_per_m2")));
            Some(amount_this_year(Some(&[before]), ml(given.number("dose_ml_per_m2")), today, &most, Year::Calendar))
        }
        "months" => {
            let stated = Months::of(&[4, 5, 6, 7, 8, 9]).unwrap();
            authorised::months(Some(&Tagged::statutory(stated)), today)
        }
        "young-turf" => authorised::young_turf(
            Some(&Tagged::statutory(given.count("least_months"))),
            given.maybe_day("sown"),
            today,
        ),
        _ => authorised::mowing_before(
            Some(&Tagged::statutory(given.count("least_days"))),
            given.maybe_day("mown"),
            today,
        ),
    }
}

fn of_dose(rule: &str, given: &Given<'_>) -> Option<Check> {
    let highest = || Tagged::statutory(ml(given.number("highest_ml_per_m2")));
    let of = || ml(given.number("dose_ml_per_m2"));
    match rule {
        "dose" => Some(dose::dose_against_highest(of(), Some(&highest()))),
        "dose-on-ground" => Some(dose::dose_on_ground(of(), Some(&highest()))),
        "dose-by-own-water" => Some(dose::dose_by_own_water(of(), ml(given.number("chosen_ml_per_m2")))),
        "dose-for-target" => {
            let used = TargetUse {
                purpose: Purpose::Weeds,
                target: "an invented weed".to_owned(),
                dose: highest().value,
                highest: Some(highest()),
            };
            authorised::dose_for_target(of(), Purpose::Weeds, &[used])
        }
        "least-dose" => authorised::least_dose(of(), Some(&Tagged::statutory(ml(given.number("least_ml_per_m2"))))),
        "concentration" => {
            let limit = Tagged::statutory(concentration(given.number("highest_ml_per_l")));
            Some(dose::concentration(concentration(given.number("strongest_ml_per_l")), Some(&limit)))
        }
        "rounding" => {
            let product = ProductAmount::of(ProductKind::Volume, 100.0).unwrap();
            Some(dose::rounding(product, given.number("error_percent")))
        }
        _ => {
            let range =
                WaterRange { least: Some(Tagged::statutory(rate(40.0))), most: Some(Tagged::statutory(rate(80.0))) };
            Some(water::water_range(rate(given.number("water_ml_per_m2")), &range))
        }
    }
}

fn of_kit(rule: &str, given: &Given<'_>) -> Option<Check> {
    Some(match rule {
        "calibration-age" => calibration::calibration_age(given.day("made"), given.day("today")),
        "calibration-kit" => {
            let mut made = evidence(0.0, 0.0, 3);
            made.pressure = given.maybe_number("read_bar").map(|bar| Pressure::from_bar(bar).unwrap());
            kit::calibration_kit(Some(&made), &set_up(given.text("nozzle"), 2.0))
        }
        "calibration-repeats" => {
            let n = u32::from(given.count("n_each"));
            let made = evidence(given.number("catches_off_percent"), given.number("walks_off_percent"), n);
            kit::calibration_repeats(Some(&made))
        }
        "calibration-ways" => {
            kit::two_ways(rate(given.number("by_tests_ml_per_m2")), rate(given.number("by_plot_ml_per_m2")))
        }
        "last-in-sprayer" => {
            let last_in = match given.text("last_in") {
                "total-herbicide" => LastIn::TotalHerbicide,
                name => LastIn::Product { name: name.to_owned() },
            };
            kit::last_in_sprayer(&last_in, given.is("is_cleaned"), given.maybe_day("signed"), Some("Invented Iron"))
        }
        "nozzle-wear" => {
            kit::nozzle_wear(flow(given.number("measured_l_per_min")), flow(given.number("nominal_l_per_min")))
        }
        "sprayer-check" => kit::sprayer_check(given.maybe_day("checked"), given.day("today")),
        "swath" => kit::swath_by_pattern(
            Swath::from_m(given.number("swath_m")).unwrap(),
            Length::from_m(given.number("spacing_m")).unwrap(),
        ),
        "weight" => weight_on_the_back(Weight::from_kg(given.number("full_kg")).unwrap()),
        _ => water::pace_walkable(Pace::from_m_per_s(given.number("pace_m_per_s")).unwrap(), Walkable::default()),
    })
}

fn of_mixing(rule: &str, given: &Given<'_>) -> Option<Check> {
    Some(match rule {
        "clean-water-trial" => clean_water_trial(given.is("is_owed"), given.is("is_done")),
        "dissolving" => {
            // An operator's own table: 100 g in a litre at 10 degrees.
            let at = Temperature::from_deg_c(10.0).unwrap();
            let table = OwnTable::new(vec![SolubilityPoint { temperature: at, g_per_l: 100.0 }]).unwrap();
            let amount = Mass::from_g(given.number("amount_g")).unwrap();
            let water = Volume::from_l(given.number("water_l")).unwrap();
            mixing::dissolving("Invented Crystals", amount, Some(&Dissolving::Own(table)), Some(at), water)
        }
        "jar-test" => mixing::jar_test(given.maybe_text("outcome").map(|outcome| match outcome {
            "fine" => JarOutcome::Fine,
            "heat" => JarOutcome::Heat,
            "clumps" => JarOutcome::Clumps,
            "layers" => JarOutcome::Layers,
            other => panic!("no outcome {other}"),
        })),
        "mix-water" => mixing::water_and_iron(given.maybe_number("ph").map(|ph| Acidity::from_ph(ph).unwrap())),
        "partner-label" => {
            mixing::partner_allowed("Invented Wetter", given.maybe("is_allowed"), Tag::Statutory, "label")
        }
        "partners" => mixing::number_of_products(u32::from(given.count("n_products"))),
        "partners-active" => return super::actives::shared(given.text("own"), given.text("partner")),
        "protective" => {
            let (asked, ticked) = (pieces(&given.words("asked")), pieces(&given.words("ticked")));
            return protective(Phase::Mixing, &asked, &ticked).into_iter().max_by_key(|check| check.verdict);
        }
        "protective-mixing" => {
            let (mixing, spraying) = (pieces(&given.words("mixing")), pieces(&given.words("spraying")));
            return mixing::concentrate_is_strictest(&mixing, &spraying).into_iter().next();
        }
        "water-hardness" => {
            mixing::water_hardness(given.maybe_number("mg_per_l").map(|mg| Hardness::from_mg_per_l(mg).unwrap()))
        }
        _ => {
            let seen = match given.text("seen") {
                "nothing" => Seen::Nothing,
                "a-few" => Seen::AFew,
                "throughout" => Seen::Throughout,
                other => panic!("nobody sees {other}"),
            };
            treat_at_all(purpose(given.text("for")), seen)
        }
    })
}
