//! A plan with figures chosen by hand: nothing here comes from the planner.

use evensward_core::plan::{
    Ends, Fill, FillMoment, Heading, Layout, Leg, NarrowOption, NarrowReport, Pass, Plan, Refill, Remedy, Run, Strip,
    StripId,
};
use evensward_core::quantity::*;

use super::sample::{checks, dose, l, m, measured, ml, rate};

/// One strip, one leg, one fill and one refill: every part of a plan once.
pub(super) fn plan() -> Plan {
    let ring = measured().outline.rings().remove(0);
    let moment = FillMoment { pass: 1, strip: StripId(1), nth: 0 };
    let run = Run {
        ground: vec![ring],
        from: (0.5, 0.0),
        to: (0.5, 3.0),
        length: m(3.0),
        area: Area::from_m2(3.0).unwrap(),
        is_beside_dry: true,
    };
    let strip = Strip {
        id: StripId(1),
        width: m(1.0),
        is_narrow: false,
        is_lap: false,
        centre: m(0.5),
        markers: [(0.5, 0.0), (0.5, 3.0)],
        runs: vec![run],
    };
    let leg = Leg {
        strip: StripId(1),
        run_idx: 0,
        length: m(3.0),
        pace: Pace::from_m_per_s(1.0).unwrap(),
        width: m(1.0),
        volume: l(0.045),
        time: Span::from_s(3.0).unwrap(),
        reversed: false,
        empty_before: Length::ZERO,
    };
    let narrow = NarrowOption {
        remedy: Remedy::EvenOut,
        pace: None,
        is_walkable: true,
        dose: Some(dose(1.9)),
        extra_water: l(0.1),
        water: rate(44.0),
        left_out: Area::ZERO,
        checks: Vec::new(),
    };
    let fill = Fill {
        number: 1,
        from: moment,
        to: moment,
        mixture: l(0.295),
        product_exact: ml(6.1),
        product: ml(6.0),
        own_volume: l(0.006),
        water: l(0.289),
        in_tank_before: Volume::ZERO,
        half_mark: l(0.15),
        make_up_to: l(0.295),
        left_after: Volume::ZERO,
    };
    Plan {
        layouts: vec![Layout {
            heading: Heading::Along,
            angle: Angle::from_deg(0.0).unwrap(),
            strips: vec![strip],
            remedy: Some(Remedy::EvenOut),
        }],
        passes: vec![Pass {
            number: 1,
            heading: Heading::Along,
            legs: vec![leg],
            volume: l(0.045),
            time: Span::from_s(3.0).unwrap(),
            empty: Length::ZERO,
            n_turns: 0,
        }],
        flow: FlowRate::from_l_per_min(0.945).unwrap(),
        pace: Pace::from_m_per_s(1.1).unwrap(),
        swath: Swath::from_m(1.0).unwrap(),
        treated: measured().net_area,
        left_out: Area::ZERO,
        walked: l(0.045),
        dead: l(0.25),
        mixture: l(0.295),
        product_exact: ml(6.1),
        product: ml(6.0),
        rounding_error_percent: -1.6,
        own_volume: l(0.006),
        clean_water: l(0.289),
        fills: vec![fill],
        refills: vec![Refill { fill: 1, before: moment, is_between_passes: true }],
        water: rate(45.0),
        dose: dose(2.0),
        highest_on_ground: dose(2.1),
        concentration: Concentration::of(ProductKind::Volume, 20.3).unwrap(),
        weight_full: Weight::from_kg(4.5).unwrap(),
        time: Span::from_s(3.0).unwrap(),
        narrow: vec![NarrowReport {
            heading: Heading::Along,
            strip: StripId(1),
            width: m(0.4),
            as_it_is_factor: 2.5,
            fan_turn: Angle::from_deg(66.4).unwrap(),
            options: vec![narrow],
            suggested: Remedy::EvenOut,
            taken: Remedy::EvenOut,
        }],
        checks: checks(),
        ends: Ends::NONE,
        partners: Vec::new(),
    }
}
