//! The order in which runs are walked: down and back, with the fewest metres walked without spraying.
//!
//! Runs of neighbouring strips that face each other alone form a field; it is walked down and back from either side and
//! either end. Up to six fields their order is exact (Held and Karp, 1962); beyond, the nearest field comes next. This is
//! held against going through the strips one by one, over patches as they come, and the shorter walk is taken.
//! Empty metres are straight lines along the ground from the end of one run to the beginning of the next; a patch on the
//! way is stepped over or walked round by the walker, and that is not counted.
//! Invariant: every run comes once, and the walk begins in the first strip it is given.

use super::runs::WITHIN_M;

/// Walks that differ by less than this are equally long, in metres.
const SAME_M: f64 = 1e-6;
/// Up to so many fields the order is exact.
const MOST_EXACT: usize = 6;

/// A run on the ground: strips are counted in the order in which they lie, from the side where the walk begins.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Lane {
    pub(super) strip: usize,
    pub(super) from: (f64, f64),
    pub(super) to: (f64, f64),
    /// Its extent along the walking direction.
    pub(super) t_from_m: f64,
    pub(super) t_to_m: f64,
}

impl Lane {
    fn ends(&self, is_reversed: bool) -> ((f64, f64), (f64, f64)) {
        if is_reversed { (self.to, self.from) } else { (self.from, self.to) }
    }
}

/// One run of the walk: which lane, and whether it is walked from its end.
pub(super) type Step = (usize, bool);

pub(super) fn apart_m(a: (f64, f64), b: (f64, f64)) -> f64 {
    (a.0 - b.0).hypot(a.1 - b.1)
}

/// Whether a walk is truly shorter: of two equals the first stays, so that rounding does not decide.
pub(super) fn is_shorter(one_m: f64, than_m: f64) -> bool {
    one_m < than_m - SAME_M
}

/// The walk over the lanes. `at` is where the walker stands; without it the first lane is walked forwards. `leave` is
/// where the walker goes when all is done.
pub(super) fn order(lanes: &[Lane], at: Option<(f64, f64)>, leave: Option<(f64, f64)>) -> Vec<Step> {
    let cost = |steps: &[Step]| empty_m(lanes, steps, at, leave);
    let first_ways: &[bool] = if at.is_some() { &[false, true] } else { &[false] };
    let by_strip = first_ways.iter().map(|is_back| strip_by_strip(lanes, *is_back));
    let shorter = |best: Vec<Step>, other: Vec<Step>| if is_shorter(cost(&other), cost(&best)) { other } else { best };
    let mut best = by_strip.reduce(shorter).unwrap_or_default();
    let fields = fields(lanes);
    if fields.len() > 1 {
        let by_field = if fields.len() <= MOST_EXACT {
            exact(lanes, &fields, at, leave)
        } else {
            nearest_next(lanes, &fields, at)
        };
        // A hair's difference is none: then the plainer walk is better.
        if let Some(walk) = by_field.filter(|walk| cost(walk) < cost(&best) - WITHIN_M) {
            best = walk;
        }
    }
    best
}

/// The metres walked without spraying.
pub(super) fn empty_m(lanes: &[Lane], steps: &[Step], at: Option<(f64, f64)>, leave: Option<(f64, f64)>) -> f64 {
    let mut total_m = 0.0;
    let mut here = at;
    for (idx, is_reversed) in steps {
        let Some(lane) = lanes.get(*idx) else { continue };
        let (begin, end) = lane.ends(*is_reversed);
        total_m += here.map_or(0.0, |here| apart_m(here, begin));
        here = Some(end);
    }
    total_m + here.zip(leave).map_or(0.0, |(here, leave)| apart_m(here, leave))
}

/// One strip after the other, each the other way than the one before.
fn strip_by_strip(lanes: &[Lane], is_first_back: bool) -> Vec<Step> {
    let mut steps = Vec::with_capacity(lanes.len());
    let mut is_back = is_first_back;
    let mut idx = 0;
    for strip in lanes.chunk_by(|one, next| one.strip == next.strip) {
        let here = idx..idx + strip.len();
        idx = here.end;
        if is_back {
            steps.extend(here.rev().map(|lane| (lane, true)));
        } else {
            steps.extend(here.map(|lane| (lane, false)));
        }
        is_back = !is_back;
    }
    steps
}

/// Lanes that are walked down and back without a hindrance, in strip order.
type Field = Vec<usize>;

fn fields(lanes: &[Lane]) -> Vec<Field> {
    let strips: Vec<(usize, usize)> = {
        let mut from = 0;
        let ranges = lanes.chunk_by(|one, next| one.strip == next.strip).map(|strip| {
            let range = (from, from + strip.len());
            from = range.1;
            range
        });
        ranges.collect()
    };
    let faces = |a: &Lane, b: &Lane| a.t_from_m.max(b.t_from_m) < a.t_to_m.min(b.t_to_m) - WITHIN_M;
    // For each lane: the field it belongs to.
    let mut field_of: Vec<usize> = Vec::with_capacity(lanes.len());
    let mut fields: Vec<Field> = Vec::new();
    let mut before: Option<(usize, usize)> = None;
    for (from, to) in strips {
        for idx in from..to {
            let Some(lane) = lanes.get(idx) else { continue };
            let only_before = before.and_then(|(b_from, b_to)| {
                let facing = |other: &usize| {
                    lanes.get(*other).is_some_and(|other| other.strip + 1 == lane.strip && faces(other, lane))
                };
                let mut behind = (b_from..b_to).filter(facing);
                let one = behind.next().filter(|_| behind.next().is_none())?;
                let one_lane = lanes.get(one)?;
                let n_ahead = (from..to).filter(|other| lanes.get(*other).is_some_and(|o| faces(one_lane, o))).count();
                (n_ahead == 1).then_some(one)
            });
            let field = only_before.and_then(|one| field_of.get(one).copied()).unwrap_or(fields.len());
            match fields.get_mut(field) {
                Some(known) => known.push(idx),
                None => fields.push(vec![idx]),
            }
            field_of.push(field);
        }
        before = Some((from, to));
    }
    fields
}

/// A way through a field: from its first or last strip, forwards or back.
#[derive(Debug, Clone, Copy)]
struct Way {
    is_from_last: bool,
    is_first_back: bool,
    begin: (f64, f64),
    end: (f64, f64),
    empty_m: f64,
}

const N_WAYS: usize = 4;

fn steps_of(field: &Field, is_from_last: bool, is_first_back: bool) -> Vec<Step> {
    let step = |(nth, lane): (usize, &usize)| (*lane, is_first_back != (nth % 2 == 1));
    if is_from_last {
        field.iter().rev().enumerate().map(step).collect()
    } else {
        field.iter().enumerate().map(step).collect()
    }
}

fn ways(lanes: &[Lane], field: &Field) -> Vec<Way> {
    let turns = [(false, false), (false, true), (true, false), (true, true)];
    let way = |(is_from_last, is_first_back)| {
        let steps = steps_of(field, is_from_last, is_first_back);
        let (first, last) = (steps.first()?, steps.last()?);
        Some(Way {
            is_from_last,
            is_first_back,
            begin: lanes.get(first.0)?.ends(first.1).0,
            end: lanes.get(last.0)?.ends(last.1).1,
            empty_m: empty_m(lanes, &steps, None, None),
        })
    };
    turns.into_iter().filter_map(way).collect()
}

/// Whether the walk may begin that way: in the first strip, and forwards where nobody says where the walker stands.
fn may_begin(lanes: &[Lane], field: &Field, way: &Way, at: Option<(f64, f64)>) -> bool {
    let begins_in = if way.is_from_last { field.last() } else { field.first() };
    let is_in_first = begins_in.is_some_and(|lane| *lane < lanes.len())
        && begins_in.and_then(|lane| lanes.get(*lane)).map(|lane| lane.strip) == lanes.first().map(|lane| lane.strip);
    is_in_first && (at.is_some() || (!way.is_first_back && begins_in == Some(&0)))
}

/// The shortest walk over all fields, by dynamic programming over the sets of fields that are done.
fn exact(lanes: &[Lane], fields: &[Field], at: Option<(f64, f64)>, leave: Option<(f64, f64)>) -> Option<Vec<Step>> {
    let options: Vec<Vec<Way>> = fields.iter().map(|field| ways(lanes, field)).collect();
    let n_fields = fields.len();
    let n_states = (1_usize << n_fields) * n_fields * N_WAYS;
    let state = |done: usize, field: usize, way: usize| (done * n_fields + field) * N_WAYS + way;
    let mut best: Vec<(f64, usize)> = vec![(f64::INFINITY, usize::MAX); n_states];
    for (field_idx, (field, ways)) in fields.iter().zip(&options).enumerate() {
        for (way_idx, way) in ways.iter().enumerate().filter(|(_, way)| may_begin(lanes, field, way, at)) {
            let cost_m = way.empty_m + at.map_or(0.0, |at| apart_m(at, way.begin));
            if let Some(slot) = best.get_mut(state(1 << field_idx, field_idx, way_idx)) {
                *slot = (cost_m, usize::MAX);
            }
        }
    }
    for done in 1..1_usize << n_fields {
        for (field_idx, ways) in options.iter().enumerate().filter(|(idx, _)| done & (1 << idx) != 0) {
            for (way_idx, way) in ways.iter().enumerate() {
                let from = state(done, field_idx, way_idx);
                let Some((so_far_m, _)) = best.get(from).copied().filter(|(cost, _)| cost.is_finite()) else {
                    continue;
                };
                for (next_idx, next_ways) in options.iter().enumerate().filter(|(idx, _)| done & (1 << idx) == 0) {
                    for (next_way_idx, next) in next_ways.iter().enumerate() {
                        let cost_m = so_far_m + apart_m(way.end, next.begin) + next.empty_m;
                        let to = state(done | (1 << next_idx), next_idx, next_way_idx);
                        if let Some(slot) = best.get_mut(to).filter(|slot| is_shorter(cost_m, slot.0)) {
                            *slot = (cost_m, from);
                        }
                    }
                }
            }
        }
    }
    let all = (1_usize << n_fields) - 1;
    let finals = options.iter().enumerate().flat_map(|(field_idx, ways)| {
        ways.iter().enumerate().map(move |(way_idx, way)| (state(all, field_idx, way_idx), way.end))
    });
    let (mut at_state, _) = finals
        .filter_map(|(idx, end)| {
            let (cost_m, _) = best.get(idx).copied().filter(|(cost, _)| cost.is_finite())?;
            Some((idx, cost_m + leave.map_or(0.0, |leave| apart_m(end, leave))))
        })
        .reduce(|best, other| if is_shorter(other.1, best.1) { other } else { best })?;
    let mut walk: Vec<Vec<Step>> = Vec::new();
    while let Some((_, before)) = best.get(at_state).copied() {
        let field_idx = at_state / N_WAYS % n_fields;
        let (field, way) = (fields.get(field_idx)?, options.get(field_idx)?.get(at_state % N_WAYS)?);
        walk.push(steps_of(field, way.is_from_last, way.is_first_back));
        at_state = before;
    }
    Some(walk.into_iter().rev().flatten().collect())
}

/// Always the nearest field next.
fn nearest_next(lanes: &[Lane], fields: &[Field], at: Option<(f64, f64)>) -> Option<Vec<Step>> {
    let mut open: Vec<(&Field, Vec<Way>)> = fields.iter().map(|field| (field, ways(lanes, field))).collect();
    let mut walk: Vec<Step> = Vec::with_capacity(lanes.len());
    let mut here = at;
    while !open.is_empty() {
        let is_first = walk.is_empty();
        let all =
            open.iter().enumerate().flat_map(|(idx, (field, ways))| ways.iter().map(move |way| (idx, *field, way)));
        let (idx, field, way) = all
            .filter(|(_, field, way)| !is_first || may_begin(lanes, field, way, at))
            .reduce(|best, other| {
                let cost_m = |way: &Way| here.map_or(0.0, |here| apart_m(here, way.begin));
                if is_shorter(cost_m(other.2), cost_m(best.2)) { other } else { best }
            })
            .map(|(idx, field, way)| (idx, field, *way))?;
        walk.extend(steps_of(field, way.is_from_last, way.is_first_back));
        here = Some(way.end);
        open.swap_remove(idx);
    }
    Some(walk)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Lanes of 1 m along t: (strip, from, to).
    fn lanes(of: &[(usize, f64, f64)]) -> Vec<Lane> {
        let lane = |(strip, from, to): &(usize, f64, f64)| Lane {
            strip: *strip,
            from: (*strip as f64, *from),
            to: (*strip as f64, *to),
            t_from_m: *from,
            t_to_m: *to,
        };
        of.iter().map(lane).collect()
    }

    #[test]
    fn a_plain_lawn_is_walked_down_and_back() {
        let lanes = lanes(&[(0, 0.0, 9.0), (1, 0.0, 9.0), (2, 0.0, 9.0)]);
        assert_eq!(order(&lanes, None, None), [(0, false), (1, true), (2, false)]);
        assert_eq!(order(&lanes, Some((0.0, 9.0)), None), [(0, true), (1, false), (2, true)]);
    }

    #[test]
    fn a_wide_bed_is_worked_round_and_each_side_finished_before_the_next() {
        // A bed 20 m long over four strips: stepping over it each time would cost 80 m.
        let mut of = vec![(0, 0.0, 60.0)];
        for strip in 1..5 {
            of.extend([(strip, 0.0, 20.0), (strip, 40.0, 60.0)]);
        }
        of.push((5, 0.0, 60.0));
        let lanes = lanes(&of);
        let walk = order(&lanes, None, None);
        assert_eq!(walk.len(), lanes.len());
        let sides: Vec<bool> = walk.iter().map(|(idx, _)| lanes[*idx].t_from_m > 30.0).collect();
        assert_eq!(sides.windows(2).filter(|pair| pair[0] != pair[1]).count(), 2, "{walk:?}");
        assert!(empty_m(&lanes, &walk, None, None) < 30.0);
    }

    #[test]
    fn a_narrow_bed_is_stepped_over() {
        let lanes = lanes(&[(0, 0.0, 20.0), (1, 0.0, 9.0), (1, 11.0, 20.0), (2, 0.0, 20.0)]);
        let walk = order(&lanes, None, None);
        assert_eq!(walk, [(0, false), (2, true), (1, true), (3, false)]);
    }

    #[test]
    fn the_walk_ends_near_the_way_out() {
        let lanes = lanes(&[(0, 0.0, 9.0), (1, 0.0, 9.0)]);
        let walk = order(&lanes, Some((0.0, 4.4)), Some((1.0, 20.0)));
        assert_eq!(walk, [(0, true), (1, false)]);
    }

    #[test]
    fn many_fields_come_each_once() {
        let of: Vec<(usize, f64, f64)> =
            (0..9).flat_map(|strip| [(strip, 0.0, 2.0 + (strip % 2) as f64), (strip, 5.0, 8.0)]).collect();
        let comb: Vec<(usize, f64, f64)> = (0..12).map(|strip| (strip * 2, 0.0, 5.0)).collect();
        for lanes in [lanes(&of), lanes(&comb)] {
            let mut seen: Vec<usize> = order(&lanes, None, None).into_iter().map(|(idx, _)| idx).collect();
            seen.sort_unstable();
            assert_eq!(seen, (0..lanes.len()).collect::<Vec<_>>());
        }
    }
}
