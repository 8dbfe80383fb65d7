//! The rules of the kit, each just inside and just outside its limit.

use chrono::NaiveDate;

use super::kit::{
    calibration_kit, calibration_repeats, cleaning_owed, last_in_sprayer, nozzle_wear, sprayer_check, swath_by_pattern,
    two_ways,
};
use super::{Check, Verdict};
use crate::kit::{Evidence, LastIn, NozzleRating, NozzleSize, Pattern, SetUp, SprayHead, Valve};
use crate::quantity::{Angle, FlowRate, Length, Pressure, Swath, VolumePerArea};

fn is(check: &Check, verdict: Verdict, code: &str) {
    assert_eq!((check.verdict, check.said.code.as_ref()), (verdict, code), "{check:?}");
}

fn day(text: &str) -> NaiveDate {
    text.parse().unwrap()
}

fn bar(value: f64) -> Pressure {
    Pressure::from_bar(value).unwrap()
}

fn set_up() -> SetUp {
    SetUp {
        nozzle: "Flat fan 02".to_owned(),
        head: SprayHead {
            rating: NozzleSize::named("02").map(NozzleRating::of_size),
            fan: Angle::from_deg(110.0).ok(),
            pattern: Some(Pattern::Tapered),
            height: Length::from_m(0.5).ok(),
            pressure: Some(bar(2.0)),
            valve: Some(Valve::Constant),
        },
        swath: Swath::from_m(0.7).unwrap(),
    }
}

fn evidence() -> Evidence {
    Evidence {
        n_catches: 3,
        catches_off_percent: 5.0,
        n_walks: 3,
        walks_off_percent: 10.0,
        is_loaded: true,
        pressure: None,
        made_with: Some(set_up()),
    }
}

#[test]
fn a_total_herbicide_holds_until_the_sprayer_is_cleaned_and_that_is_signed() {
    let check = |cleaned, signed: Option<&str>, verdict, code| {
        let check = last_in_sprayer(&LastIn::TotalHerbicide, cleaned, signed.map(day), Some("Lawn tonic"));
        is(&check, verdict, code);
        assert!(!check.can_be_passed(), "no reason helps");
    };
    check(false, None, Verdict::Stop, "total-herbicide-was-in-sprayer");
    check(false, Some("2026-05-01"), Verdict::Stop, "total-herbicide-was-in-sprayer");
    check(true, None, Verdict::Stop, "cleaning-not-signed");
    check(true, Some("2026-05-01"), Verdict::Go, "sprayer-cleaned");
}

#[test]
fn another_product_waits_for_cleaning_and_the_same_one_does_not() {
    let check = |name: &str, cleaned, next: Option<&str>, verdict, code| {
        is(&last_in_sprayer(&LastIn::Product { name: name.to_owned() }, cleaned, None, next), verdict, code);
    };
    check("Moss brown", false, Some("Lawn tonic"), Verdict::Stop, "cleaning-owed-before-another");
    check("Moss brown", true, Some("Lawn tonic"), Verdict::Go, "sprayer-cleaned");
    check("Lawn tonic", false, Some(" lawn TONIC"), Verdict::Caution, "sprayer-held-the-same");
    check("", false, Some("Lawn tonic"), Verdict::Caution, "sprayer-not-cleaned");
    check("Moss brown", false, None, Verdict::Caution, "sprayer-not-cleaned");
    is(&last_in_sprayer(&LastIn::Unknown, false, None, None), Verdict::Stop, "last-in-sprayer-unknown");
    is(&last_in_sprayer(&LastIn::CleanWater, false, None, None), Verdict::Go, "sprayer-had-clean-water");
    is(&last_in_sprayer(&LastIn::Nothing, false, None, None), Verdict::Go, "sprayer-new");
}

#[test]
fn cleaning_is_owed_for_as_long_as_its_check_is_not_go() {
    let lasts = [
        LastIn::Nothing,
        LastIn::CleanWater,
        LastIn::Product { name: "Moss brown".to_owned() },
        LastIn::TotalHerbicide,
        LastIn::Unknown,
    ];
    for last_in in lasts {
        for cleaned in [false, true] {
            for signed_on in [None, Some(day("2026-05-01"))] {
                let check = last_in_sprayer(&last_in, cleaned, signed_on, Some("Lawn tonic"));
                let owed = cleaning_owed(&last_in, cleaned, signed_on);
                assert_eq!(owed.is_some(), check.verdict != Verdict::Go, "{last_in:?} {cleaned} {signed_on:?}");
            }
        }
    }
}

#[test]
fn a_new_nozzle_pressure_or_swath_ends_a_calibration() {
    let check = |change: &dyn Fn(&mut SetUp), verdict, code| {
        let mut now = set_up();
        change(&mut now);
        is(&calibration_kit(Some(&evidence()), &now), verdict, code);
    };
    check(&|_| {}, Verdict::Go, "calibration-kit-same");
    check(&|now| now.nozzle = " FLAT fan 02".to_owned(), Verdict::Go, "calibration-kit-same");
    check(&|now| now.nozzle = "Flat fan 03".to_owned(), Verdict::Stop, "calibration-ended-by-nozzle");
    let rated = |size| NozzleSize::named(size).map(NozzleRating::of_size);
    check(&|now| now.head.rating = rated("03"), Verdict::Stop, "calibration-ended-by-nozzle");
    check(&|now| now.head.pressure = Some(bar(2.5)), Verdict::Stop, "calibration-ended-by-pressure");
    check(&|now| now.head.valve = Some(Valve::None), Verdict::Stop, "calibration-ended-by-pressure");
    check(&|now| now.head.height = Length::from_m(0.6).ok(), Verdict::Stop, "calibration-ended-by-swath");
    check(&|now| now.head.pattern = Some(Pattern::Even), Verdict::Stop, "calibration-ended-by-swath");
    check(&|now| now.swath = Swath::from_m(0.8).unwrap(), Verdict::Stop, "calibration-ended-by-swath");
    // The same rating by the maker's own words at another pressure is the same nozzle.
    check(
        &|now| {
            let at = bar(1.0);
            let flow = NozzleSize::named("02").unwrap().flow_at(at);
            now.head.rating = Some(NozzleRating { size: None, flow, at });
        },
        Verdict::Go,
        "calibration-kit-same",
    );
    // What is not known any more, or was not known then, is no change.
    check(&|now| now.head = SprayHead::default(), Verdict::Go, "calibration-kit-same");
}

#[test]
fn a_catch_at_another_pressure_is_held_against_what_it_does_to_the_flow() {
    // The flow goes with the square root: 5 % more flow is 10.25 % more pressure.
    let check = |read: f64, verdict, code| {
        let evidence = Evidence { pressure: Some(bar(read)), ..evidence() };
        is(&calibration_kit(Some(&evidence), &set_up()), verdict, code);
    };
    check(2.0, Verdict::Go, "calibration-kit-same");
    check(2.0 / 1.1025, Verdict::Go, "calibration-kit-same");
    check(2.0 / 1.11, Verdict::Stop, "calibration-ended-by-pressure");
    check(3.0, Verdict::Stop, "calibration-ended-by-pressure");
}

#[test]
fn a_calibration_kept_before_repeats_were_asked_is_a_caution_and_no_stop() {
    is(&calibration_repeats(None), Verdict::Caution, "calibration-once");
    is(&calibration_kit(None, &set_up()), Verdict::Caution, "calibration-kit-unknown");
    let unknown = Evidence { made_with: None, ..evidence() };
    is(&calibration_kit(Some(&unknown), &set_up()), Verdict::Caution, "calibration-kit-unknown");
}

#[test]
fn repeats_agree_within_their_limits() {
    let check = |change: &dyn Fn(&mut Evidence), verdict, code| {
        let mut changed = evidence();
        change(&mut changed);
        is(&calibration_repeats(Some(&changed)), verdict, code);
    };
    check(&|_| {}, Verdict::Go, "calibration-repeats-agree");
    check(&|evidence| evidence.catches_off_percent = 5.1, Verdict::Stop, "catches-apart");
    check(&|evidence| evidence.walks_off_percent = 10.1, Verdict::Stop, "walks-apart");
    check(&|evidence| evidence.n_catches = 2, Verdict::Caution, "calibration-once");
    check(&|evidence| evidence.n_walks = 2, Verdict::Caution, "calibration-once");
    check(&|evidence| evidence.is_loaded = false, Verdict::Caution, "walks-not-loaded");
}

#[test]
fn a_nozzle_is_fine_within_ten_per_cent_and_replaced_beyond() {
    let flow = |value| FlowRate::from_l_per_min(value).unwrap();
    let check = |measured, verdict, code| is(&nozzle_wear(flow(measured), flow(0.8)), verdict, code);
    check(0.88, Verdict::Go, "nozzle-sound");
    check(0.881, Verdict::Stop, "nozzle-worn");
    check(0.72, Verdict::Go, "nozzle-sound");
    check(0.719, Verdict::Stop, "nozzle-low");
}

#[test]
fn two_ways_agree_within_ten_per_cent_of_the_larger() {
    let rate = |value| VolumePerArea::from_ml_per_m2(value).unwrap();
    is(&two_ways(rate(10.0), rate(9.0)), Verdict::Go, "two-ways-agree");
    is(&two_ways(rate(9.0), rate(10.0)), Verdict::Go, "two-ways-agree");
    is(&two_ways(rate(10.0), rate(8.99)), Verdict::Caution, "two-ways-disagree");
    is(&two_ways(rate(8.99), rate(10.0)), Verdict::Caution, "two-ways-disagree");
}

#[test]
fn a_sprayer_is_looked_over_every_twelve_months() {
    let check = |on: Option<&str>, verdict, code| is(&sprayer_check(on.map(day), day("2026-06-01")), verdict, code);
    check(None, Verdict::Caution, "sprayer-check-unknown");
    check(Some("2026-06-02"), Verdict::Caution, "sprayer-check-in-the-future");
    check(Some("2026-06-01"), Verdict::Go, "sprayer-checked");
    check(Some("2025-06-01"), Verdict::Go, "sprayer-checked");
    check(Some("2025-05-31"), Verdict::Caution, "sprayer-check-due");
    is(&sprayer_check(Some(NaiveDate::MAX), NaiveDate::MAX), Verdict::Go, "sprayer-checked");
}

#[test]
fn a_swath_wider_than_its_pattern_is_looked_at_again() {
    let check = |swath: f64, verdict, code| {
        is(&swath_by_pattern(Swath::from_m(swath).unwrap(), Length::from_m(0.5).unwrap()), verdict, code);
    };
    check(0.55, Verdict::Go, "swath-within-pattern");
    check(0.551, Verdict::Caution, "swath-wider-than-pattern");
    check(0.4, Verdict::Go, "swath-within-pattern");
}
