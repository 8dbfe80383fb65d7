//! Fills: how the mixture is shared out over tankfuls, and how the product is measured for each.
//!
//! Whole passes come first, the tank second: three passes of 8 L in a 15 L tank are three fills of 8 L. Where one
//! pass does not fit, its fills are equal to each other, so that equal measures give ONE concentration within
//! it; what is left at the end of a strip stays in the tank and is topped up.
//! Invariant: exact shares sum to the total. Measured ones are whole steps of the measure, and none passes the
//! highest product for its share of the mixture. The dead volume is in the first fill, once.

use super::types::{Fill, FillMoment, Leg, Pass, Refill};
use crate::quantity::{Density, ProductAmount, Said, Volume, is_above};

/// More fills than this are no day's work.
const MOST_FILLS: usize = 200;

/// What the fills are made for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FillRequest {
    /// What stays in the kit.
    pub dead: Volume,
    /// The most that a fill may be, the dead volume included.
    pub capacity: Volume,
    /// The exact product for all fills.
    pub product: ProductAmount,
    /// The most product that the label allows for all fills, when it states a highest dose.
    pub product_most: Option<ProductAmount>,
    /// The step of the measure. Zero means exact measure.
    pub step: ProductAmount,
    /// Clean water that is already in the tank.
    pub clean_water_in_tank: Volume,
    /// The density of a liquid product, for the room it takes.
    pub density: Option<Density>,
}

/// What one strip of one pass takes. Never split: no one should run dry in mid-strip.
#[derive(Debug, Clone, Copy)]
struct Load {
    moment: FillMoment,
    volume_l: f64,
}

/// One tankful, before the product is measured.
#[derive(Debug, Clone, Copy)]
struct Tankful {
    from: FillMoment,
    to: FillMoment,
    mixture_l: f64,
    before_l: f64,
    after_l: f64,
    is_between_passes: bool,
}

/// Fills of equal size and equal product.
#[derive(Debug, Clone)]
struct Group {
    tankfuls: Vec<Tankful>,
}

/// Shares mixture and product out over fills. Refuses when the tank cannot hold what one strip takes.
pub fn share_out(passes: &[Pass], request: FillRequest) -> Result<(Vec<Fill>, Vec<Refill>), Said> {
    let loads: Vec<Vec<Load>> = passes.iter().map(loads_of).filter(|loads: &Vec<Load>| !loads.is_empty()).collect();
    let groups = groups(&loads, request.dead.l(), request.capacity.l())
        .ok_or_else(|| Said::new("tank-too-small-for-a-strip"))?;
    if groups.iter().map(|group| group.tankfuls.len()).sum::<usize>() > MOST_FILLS {
        return Err(Said::new("too-many-fills"));
    }
    let fills = measured(&groups, request);
    let tankfuls = groups.iter().flat_map(|group| &group.tankfuls);
    let refills = fills
        .iter()
        .zip(tankfuls)
        .skip(1)
        .map(|(fill, tankful)| Refill {
            fill: fill.number,
            before: fill.from,
            is_between_passes: tankful.is_between_passes,
        })
        .collect();
    Ok((fills, refills))
}

fn loads_of(pass: &Pass) -> Vec<Load> {
    let litres = |legs: &[Leg]| legs.iter().map(|leg| leg.volume.l()).sum();
    pass.moments().into_iter().map(|(moment, legs)| Load { moment, volume_l: litres(legs) }).collect()
}

fn sum(loads: &[Load]) -> f64 {
    loads.iter().map(|load| load.volume_l).sum()
}

/// Whole passes where they fit; else each pass in equal fills; else equal fills over all passes, when that is fewer.
fn groups(passes: &[Vec<Load>], dead_l: f64, capacity_l: f64) -> Option<Vec<Group>> {
    if passes.is_empty() {
        return Some(Vec::new());
    }
    let room_l = capacity_l - dead_l;
    if let Some(counts) = whole_passes(&passes.iter().map(|loads| sum(loads)).collect::<Vec<_>>(), room_l) {
        return Some(whole_pass_groups(passes, &counts, dead_l));
    }
    let all: Vec<Load> = passes.concat();
    let throughout = equal_fills(&all, dead_l, true, capacity_l);
    let mut by_pass = Some(Vec::new());
    for (pass_idx, loads) in passes.iter().enumerate() {
        let group = equal_fills(loads, dead_l, pass_idx == 0, capacity_l);
        by_pass = match (by_pass, group) {
            (Some(mut groups), Some(group)) => {
                groups.push(group);
                Some(groups)
            }
            _ => None,
        };
    }
    let n_fills = |groups: &[Group]| groups.iter().map(|group| group.tankfuls.len()).sum::<usize>();
    match (by_pass, throughout) {
        (Some(by_pass), Some(throughout)) if n_fills(&by_pass) <= throughout.tankfuls.len() => Some(by_pass),
        (_, Some(throughout)) => Some(vec![throughout]),
        (by_pass, None) => by_pass,
    }
}

/// How many whole passes go into each fill: as few fills as the room allows, as even as can be.
fn whole_passes(volumes_l: &[f64], room_l: f64) -> Option<Vec<usize>> {
    let fits = |volumes: &[f64]| !is_above(volumes.iter().sum(), room_l);
    let mut greedy: Vec<usize> = Vec::new();
    let mut in_fill_l = f64::INFINITY;
    for volume_l in volumes_l {
        if !fits(&[*volume_l]) {
            return None;
        }
        match greedy.last_mut() {
            Some(count) if fits(&[in_fill_l, *volume_l]) => {
                *count += 1;
                in_fill_l += volume_l;
            }
            _ => {
                greedy.push(1);
                in_fill_l = *volume_l;
            }
        }
    }
    let n_fills = greedy.len();
    if n_fills == 0 {
        return None;
    }
    let (each, n_larger) = (volumes_l.len() / n_fills, volumes_l.len() % n_fills);
    let even: Vec<usize> = (0..n_fills).map(|idx| each + usize::from(idx < n_larger)).collect();
    let mut rest = volumes_l;
    let is_even_possible = even.iter().all(|count| {
        let (fill, later) = rest.split_at_checked(*count).unwrap_or((rest, &[]));
        rest = later;
        fits(fill)
    });
    Some(if is_even_possible { even } else { greedy })
}

fn whole_pass_groups(passes: &[Vec<Load>], counts: &[usize], dead_l: f64) -> Vec<Group> {
    let mut rest = passes;
    let mut groups: Vec<Group> = Vec::new();
    for count in counts {
        let (now, later) = rest.split_at_checked(*count).unwrap_or((rest, &[]));
        rest = later;
        let loads = now.concat();
        if let (Some(first), Some(last)) = (loads.first(), loads.last()) {
            let dead_now_l = if groups.is_empty() { dead_l } else { 0.0 };
            groups.push(Group {
                tankfuls: vec![Tankful {
                    from: first.moment,
                    to: last.moment,
                    mixture_l: sum(&loads) + dead_now_l,
                    before_l: 0.0,
                    after_l: 0.0,
                    is_between_passes: true,
                }],
            });
        }
    }
    groups
}

/// The fewest equal fills that carry these loads without running dry in mid-strip.
fn equal_fills(loads: &[Load], dead_l: f64, is_first_group: bool, capacity_l: f64) -> Option<Group> {
    let dead_now_l = if is_first_group { dead_l } else { 0.0 };
    let total_l = sum(loads) + dead_now_l;
    let room_l = if is_first_group { capacity_l } else { capacity_l - dead_l };
    if room_l <= 0.0 || total_l <= 0.0 {
        return None;
    }
    let least = (total_l / room_l - crate::quantity::RELATIVE_TOLERANCE).ceil().max(1.0);
    if least > loads.len() as f64 {
        return None;
    }
    // Whole, at least 1 and at most the number of strips.
    (least as usize..=loads.len())
        .find_map(|n_fills| carried(loads, total_l / n_fills as f64, n_fills, dead_now_l, room_l))
}

/// Walks the loads with equal fills; nothing when a top-up would overflow or a strip run dry.
fn carried(loads: &[Load], fill_l: f64, n_fills: usize, dead_l: f64, room_l: f64) -> Option<Group> {
    let noise_l = fill_l * 1e-9;
    // What can be sprayed: the dead volume stays below zero until the first fill has covered it.
    let mut ready_l = -dead_l;
    let mut tankfuls: Vec<Tankful> = Vec::new();
    let mut last_pass = None;
    for load in loads {
        if ready_l + noise_l < load.volume_l {
            let before_l = if tankfuls.is_empty() { 0.0 } else { ready_l.max(0.0) };
            if is_above(ready_l + dead_l + fill_l, room_l) || tankfuls.len() == n_fills {
                return None;
            }
            ready_l += fill_l;
            if ready_l + noise_l < load.volume_l {
                return None;
            }
            tankfuls.push(Tankful {
                from: load.moment,
                to: load.moment,
                mixture_l: fill_l,
                before_l,
                after_l: 0.0,
                is_between_passes: last_pass != Some(load.moment.pass),
            });
        }
        ready_l -= load.volume_l;
        last_pass = Some(load.moment.pass);
        if let Some(current) = tankfuls.last_mut() {
            current.to = load.moment;
            current.after_l = ready_l.max(0.0);
        }
    }
    (tankfuls.len() == n_fills).then_some(Group { tankfuls })
}

/// Measures the product for each fill. What one group's steps could not show is made good in the next.
fn measured(groups: &[Group], request: FillRequest) -> Vec<Fill> {
    let kind = request.product.kind();
    let mixture_l = |group: &Group| group.tankfuls.iter().map(|tankful| tankful.mixture_l).sum::<f64>();
    let total_l: f64 = groups.iter().map(mixture_l).sum();
    let share = |part_l: f64| if total_l > 0.0 { part_l / total_l } else { 0.0 };
    let step = if request.step.kind() == kind { request.step.base() } else { 0.0 };
    let mut owed = 0.0;
    let mut fills: Vec<Fill> = Vec::new();
    for group in groups {
        let n_fills = group.tankfuls.len().max(1) as f64;
        let exact = request.product.base() * share(mixture_l(group)) / n_fills;
        let most = request.product_most.map(|most| most.base() * share(mixture_l(group)) / n_fills);
        let amount = in_steps(exact + owed / n_fills, step, most);
        owed += (exact - amount) * n_fills;
        for tankful in &group.tankfuls {
            let is_first = fills.is_empty();
            let product = ProductAmount::computed(kind, amount);
            let own_volume = product.own_volume(request.density);
            let mixture = Volume::computed(tankful.mixture_l);
            let clean = if is_first { request.clean_water_in_tank } else { Volume::ZERO };
            let in_tank_before = if is_first { clean } else { Volume::computed(tankful.before_l) };
            let base_l = if is_first { 0.0 } else { tankful.before_l };
            fills.push(Fill {
                number: u8::try_from(fills.len() + 1).unwrap_or(u8::MAX),
                from: tankful.from,
                to: tankful.to,
                mixture,
                product_exact: ProductAmount::computed(kind, exact),
                product,
                own_volume,
                water: mixture.less(own_volume).less(clean),
                in_tank_before,
                half_mark: Volume::computed(base_l + tankful.mixture_l / 2.0).max(clean),
                make_up_to: Volume::computed(base_l + tankful.mixture_l),
                left_after: Volume::computed(tankful.after_l),
            });
        }
    }
    fills
}

/// The nearest whole step, or the next lower one where the nearest would pass the most that is allowed.
pub(super) fn in_steps(wanted: f64, step: f64, most: Option<f64>) -> f64 {
    let wanted = wanted.max(0.0);
    if step <= 0.0 {
        return most.map_or(wanted, |most| wanted.min(most));
    }
    let nearest = (wanted / step).round() * step;
    match most {
        // A whole number of steps that only rounding noise puts below the limit still counts.
        Some(most) if is_above(nearest, most) => (most / step + crate::quantity::RELATIVE_TOLERANCE).floor() * step,
        _ => nearest,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::{Heading, StripId};
    use crate::quantity::{Length, Pace, ProductKind, Span};

    fn pass(number: u8, volumes_l: &[f64]) -> Pass {
        let legs: Vec<Leg> = volumes_l
            .iter()
            .enumerate()
            .map(|(idx, volume_l)| Leg {
                strip: StripId(u16::try_from(idx + 1).unwrap()),
                run_idx: 0,
                length: Length::from_m(1.0).unwrap(),
                pace: Pace::from_m_per_s(1.0).unwrap(),
                width: Length::from_m(1.0).unwrap(),
                volume: Volume::from_l(*volume_l).unwrap(),
                time: Span::from_s(1.0).unwrap(),
                reversed: false,
                empty_before: Length::ZERO,
            })
            .collect();
        let volume = legs.iter().map(|leg| leg.volume).sum();
        Pass { number, heading: Heading::Along, legs, volume, time: Span::ZERO, empty: Length::ZERO, n_turns: 0 }
    }

    fn request(capacity_l: f64, dead_l: f64, product_ml: f64, step_ml: f64) -> FillRequest {
        let ml = |value| ProductAmount::of(ProductKind::Volume, value).unwrap();
        FillRequest {
            dead: Volume::from_l(dead_l).unwrap(),
            capacity: Volume::from_l(capacity_l).unwrap(),
            product: ml(product_ml),
            product_most: None,
            step: ml(step_ml),
            clean_water_in_tank: Volume::ZERO,
            density: None,
        }
    }

    fn check(passes: &[Pass], request: FillRequest, mixtures_l: &[f64]) -> Vec<Fill> {
        let (fills, refills) = share_out(passes, request).unwrap();
        let found: Vec<f64> = fills.iter().map(|fill| fill.mixture.l()).collect();
        assert_eq!(found.len(), mixtures_l.len(), "{found:?}");
        for (found, expected) in found.iter().zip(mixtures_l) {
            assert!((found - expected).abs() < 1e-9, "{found} and {expected}");
        }
        assert_eq!(refills.len(), fills.len() - 1);
        fills
    }

    #[test]
    fn whole_passes_come_before_a_full_tank() {
        let three: Vec<Pass> = (1..=3).map(|number| pass(number, &[2.0; 4])).collect();
        check(&three, request(15.0, 0.0, 100.0, 0.0), &[8.0, 8.0, 8.0]);
        check(&three, request(16.0, 0.0, 100.0, 0.0), &[16.0, 8.0]);
        let four: Vec<Pass> = (1..=4).map(|number| pass(number, &[1.0; 4])).collect();
        check(&four, request(15.0, 0.0, 100.0, 0.0), &[8.0, 8.0]);
    }

    #[test]
    fn the_dead_volume_is_made_once_and_needs_its_room() {
        let two: Vec<Pass> = (1..=2).map(|number| pass(number, &[2.0; 4])).collect();
        check(&two, request(16.0, 0.5, 100.0, 0.0), &[8.5, 8.0]);
        check(&two, request(16.5, 0.5, 100.0, 0.0), &[16.5]);
    }

    #[test]
    fn a_pass_that_does_not_fit_is_made_in_equal_fills_of_one_concentration() {
        let one = vec![pass(1, &[3.0; 8])];
        let fills = check(&one, request(15.0, 0.0, 101.0, 5.0), &[12.0, 12.0]);
        assert!(fills.windows(2).all(|pair| pair[0].product == pair[1].product));
        // 12 L last for four strips of 3 L, so the refill falls before the fifth.
        assert_eq!(fills[1].from.strip, StripId(5));
        let uneven = vec![pass(1, &[3.5; 7])];
        let fills = check(&uneven, request(15.0, 0.0, 100.0, 0.0), &[12.25, 12.25]);
        assert!((fills[0].left_after.l() - 1.75).abs() < 1e-9);
        assert!((fills[1].make_up_to.l() - 14.0).abs() < 1e-9);
    }

    #[test]
    fn what_one_fill_could_not_show_is_made_good_in_the_next() {
        let three: Vec<Pass> = (1..=3).map(|number| pass(number, &[2.0; 4])).collect();
        let fills = check(&three, request(8.0, 0.0, 100.0, 5.0), &[8.0, 8.0, 8.0]);
        let measured: Vec<f64> = fills.iter().map(|fill| fill.product.base()).collect();
        assert_eq!(measured, [35.0, 30.0, 35.0]);
    }

    #[test]
    fn a_strip_that_takes_more_than_the_tank_is_refused() {
        let refused = share_out(&[pass(1, &[20.0])], request(15.0, 0.0, 100.0, 0.0)).unwrap_err();
        assert_eq!(refused.code, "tank-too-small-for-a-strip");
    }

    #[test]
    fn the_measure_rounds_to_the_nearest_step_and_down_at_the_most() {
        let check = |wanted: f64, step: f64, most: Option<f64>, expected: f64| {
            assert!((in_steps(wanted, step, most) - expected).abs() < 1e-9, "{wanted} in {step}");
        };
        check(33.0, 5.0, None, 35.0);
        check(33.0, 5.0, Some(33.0), 30.0);
        check(35.0, 5.0, Some(35.0), 35.0);
        check(0.3, 0.1, Some(0.3), 0.3);
        check(33.0, 0.0, Some(32.0), 32.0);
        check(2.0, 5.0, None, 0.0);
    }
}
