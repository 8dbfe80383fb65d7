//! Stock: what is left in a container, reckoned from its size, what was counted in it and what visits took.
//!
//! Left is what was counted last (or the whole size, when nobody counted) less what was taken after that count, by time.
//! Invariant: what comes out below zero stays below zero. It says that something was not counted, not taken from here, or
//! taken twice; a figure cut off at nothing would hide it.

use chrono::NaiveDate;
use uuid::Uuid;

use crate::quantity::{Arg, Dimension, ProductAmount, ProductKind, Unit, is_below};

/// Below this share of its size a container is low (own setting).
pub const LOW_SHARE: f64 = 0.1;

/// What a ledger says is left: an amount that may lie below zero.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Balance {
    kind: ProductKind,
    base: f64,
}

impl From<ProductAmount> for Balance {
    fn from(amount: ProductAmount) -> Self {
        Self { kind: amount.kind(), base: amount.base() }
    }
}

impl Balance {
    /// By volume or by mass.
    #[must_use]
    pub const fn kind(self) -> ProductKind {
        self.kind
    }

    /// Millilitres or grams, by its kind.
    #[must_use]
    pub const fn base(self) -> f64 {
        self.base
    }

    /// The unit of [`Balance::base`].
    #[must_use]
    pub const fn base_unit(self) -> Unit {
        match self.kind {
            ProductKind::Volume => Unit::Millilitre,
            ProductKind::Mass => Unit::Gram,
        }
    }

    /// The value in a unit of volume or mass, with that unit and the decimals that mean something. A unit of another kind
    /// gives way to the one of [`Balance::base`].
    #[must_use]
    pub fn in_unit(self, unit: Unit) -> (f64, Unit, u8) {
        let per_base = match (self.kind, unit.dimension()) {
            (ProductKind::Volume, Dimension::Volume) => unit.factor() * 1_000.0,
            (ProductKind::Mass, Dimension::Mass) => unit.factor(),
            _ => return (self.base, self.base_unit(), decimals(self.base, 1.0)),
        };
        let value = self.base / per_base;
        (value, unit, decimals(value, per_base))
    }

    /// The value in a unit, for a sentence.
    #[must_use]
    pub fn figure(self, unit: Unit) -> Arg {
        let (value, unit, decimals) = self.in_unit(unit);
        Arg::number(value, unit, decimals)
    }

    /// What is left when so much is taken; nothing when the kinds differ.
    #[must_use]
    pub fn less(self, amount: ProductAmount) -> Option<Self> {
        (self.kind == amount.kind()).then_some(Self { base: self.base - amount.base(), ..self })
    }

    /// This less another: what a count found beyond what was reckoned; nothing when the kinds differ.
    #[must_use]
    pub fn beyond(self, other: Self) -> Option<Self> {
        (self.kind == other.kind).then_some(Self { base: self.base - other.base, ..self })
    }

    /// Whether more was taken than was there. Arithmetic's last bits are no amount.
    #[must_use]
    pub fn is_below_zero(self) -> bool {
        self.base < -LAST_BITS
    }

    /// What of it can still be poured: none when it lies below zero.
    #[must_use]
    pub fn usable(self) -> ProductAmount {
        ProductAmount::computed(self.kind, self.base)
    }
}

/// Decimals that show a millilitre or a gram of a small container, and ten of them in a large one.
fn decimals(value: f64, per_base: f64) -> u8 {
    match (per_base, value.abs()) {
        (large, value) if large >= 400.0 => {
            if value < 10.0 {
                3
            } else {
                2
            }
        }
        (middle, _) if middle >= 20.0 => 1,
        (_, value) => u8::from(value < 100.0),
    }
}

/// Less than a thousandth of a millilitre or gram comes of arithmetic, not of a jug.
const LAST_BITS: f64 = 1e-3;

/// What somebody counted in a container.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Counted {
    /// When, in UTC milliseconds.
    pub utc_ms: i64,
    /// What was left.
    pub left: ProductAmount,
}

/// What a fill took from a container.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Taken {
    /// When, in UTC milliseconds.
    pub utc_ms: i64,
    /// How much.
    pub amount: ProductAmount,
}

impl Taken {
    /// Whether it comes off what the last count found: what was taken before it was counted is in the count already.
    #[must_use]
    pub fn is_after(&self, last: Option<Counted>) -> bool {
        last.is_none_or(|count| self.utc_ms > count.utc_ms)
    }
}

/// The last of several counts: of two at the same moment, the one that stands last.
#[must_use]
pub fn last_count(counts: &[Counted]) -> Option<Counted> {
    counts.iter().copied().max_by_key(|count| count.utc_ms)
}

/// What is left in a container.
///
/// A count or a taking of another kind than the size (a container whose size was mended from litres to kilograms) says
/// nothing of it and is left out.
///
/// ```
/// use evensward_core::product::stock::{Counted, Taken, reckon};
/// use evensward_core::quantity::{ProductAmount, ProductKind};
/// let ml = |value| ProductAmount::of(ProductKind::Volume, value).unwrap();
/// let taken = [Taken { utc_ms: 10, amount: ml(300.0) }, Taken { utc_ms: 30, amount: ml(200.0) }];
/// assert_eq!(reckon(ml(1_000.0), &[], &taken).base(), 500.0);
/// // Somebody looked in between: what went before is in the count.
/// assert_eq!(reckon(ml(1_000.0), &[Counted { utc_ms: 20, left: ml(650.0) }], &taken).base(), 450.0);
/// ```
#[must_use]
pub fn reckon(size: ProductAmount, counts: &[Counted], taken: &[Taken]) -> Balance {
    let of_kind: Vec<Counted> = counts.iter().copied().filter(|count| count.left.kind() == size.kind()).collect();
    let last = last_count(&of_kind);
    let start = Balance::from(last.map_or(size, |count| count.left));
    let since = taken.iter().filter(|taken| taken.is_after(last));
    since.fold(start, |left, taken| left.less(taken.amount).unwrap_or(left))
}

/// Whether a container is low.
#[must_use]
pub fn is_low(size: ProductAmount, left: Balance) -> bool {
    left.kind() == size.kind() && is_below(left.base(), size.base() * LOW_SHARE)
}

/// A container on the shelf, as far as a visit must know it.
#[derive(Debug, Clone, PartialEq)]
pub struct Container {
    /// Which.
    pub id: Uuid,
    /// The product in it.
    pub product_id: Uuid,
    /// Its batch, as printed.
    pub batch: String,
    /// What is left in it.
    pub left: Balance,
    /// Whether it was opened.
    pub is_opened: bool,
    /// Its own last day.
    pub use_up_by: Option<NaiveDate>,
    /// The unit in which its size was typed.
    pub unit: Unit,
    /// Whether it was taken off the shelf.
    pub is_taken_out: bool,
}

/// The order in which containers of one product are best used: what stands open before what is closed, then by the last
/// day, then by id so that every device agrees.
#[must_use]
pub fn use_first(one: &Container, other: &Container) -> std::cmp::Ordering {
    let key = |container: &Container| {
        (!container.is_opened, container.use_up_by.is_none(), container.use_up_by, container.id)
    };
    key(one).cmp(&key(other))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ml(value: f64) -> ProductAmount {
        ProductAmount::of(ProductKind::Volume, value).unwrap()
    }

    #[test]
    fn a_use_counts_when_it_came_after_the_last_count_and_only_then() {
        let counts = [Counted { utc_ms: 20, left: ml(700.0) }, Counted { utc_ms: 10, left: ml(900.0) }];
        let at = |utc_ms| Taken { utc_ms, amount: ml(100.0) };
        let left = |taken: &[Taken]| reckon(ml(1_000.0), &counts, taken).base();
        assert!((left(&[at(5), at(15), at(20)]) - 700.0).abs() < 1e-9, "the count saw all of these");
        assert!((left(&[at(21), at(15)]) - 600.0).abs() < 1e-9);
    }

    #[test]
    fn more_taken_than_was_there_stays_below_zero() {
        let left = reckon(ml(100.0), &[], &[Taken { utc_ms: 1, amount: ml(150.0) }]);
        assert!(left.is_below_zero() && (left.base() + 50.0).abs() < 1e-9);
        assert_eq!(left.usable(), ml(0.0));
        let even = reckon(ml(0.3), &[], &[0.1, 0.2].map(|value| Taken { utc_ms: 1, amount: ml(value) }));
        assert!(!even.is_below_zero(), "the last bits of a sum are no missing product: {even:?}");
    }

    #[test]
    fn what_is_of_another_kind_says_nothing() {
        let grams = ProductAmount::of(ProductKind::Mass, 5.0).unwrap();
        let taken = [Taken { utc_ms: 3, amount: grams }];
        let left = reckon(ml(100.0), &[Counted { utc_ms: 2, left: grams }], &taken);
        assert_eq!(left, Balance::from(ml(100.0)));
        assert_eq!(left.less(grams), None);
    }

    #[test]
    fn a_figure_is_told_in_the_containers_own_unit() {
        let told = |base, unit| Balance::from(ml(base)).in_unit(unit);
        assert_eq!(told(4_235.0, Unit::Litre), (4.235, Unit::Litre, 3));
        assert_eq!(told(250.0, Unit::Millilitre), (250.0, Unit::Millilitre, 0));
        assert_eq!(told(250.0, Unit::Kilogram), (250.0, Unit::Millilitre, 0), "no litre is a kilogram");
        let grams = Balance::from(ProductAmount::of(ProductKind::Mass, 2_500.0).unwrap());
        assert_eq!(grams.in_unit(Unit::Kilogram), (2.5, Unit::Kilogram, 3));
        let below = grams.less(ProductAmount::of(ProductKind::Mass, 3_000.0).unwrap()).unwrap();
        assert_eq!(below.in_unit(Unit::Kilogram).0, -0.5);
    }

    #[test]
    fn low_is_less_than_a_tenth() {
        assert!(!is_low(ml(1_000.0), Balance::from(ml(100.0))));
        assert!(is_low(ml(1_000.0), Balance::from(ml(99.9))));
    }

    #[test]
    fn what_stands_open_comes_first_and_then_the_earliest_last_day() {
        let container = |n: u128, is_opened, day: Option<&str>| Container {
            id: Uuid::from_u128(n),
            product_id: Uuid::nil(),
            batch: String::new(),
            left: Balance::from(ml(1.0)),
            is_opened,
            use_up_by: day.map(|day| day.parse().unwrap()),
            unit: Unit::Litre,
            is_taken_out: false,
        };
        let mut shelf = [
            container(1, false, Some("2026-01-01")),
            container(2, true, None),
            container(3, true, Some("2027-01-01")),
            container(4, true, Some("2026-06-01")),
            container(5, false, None),
        ];
        shelf.sort_by(use_first);
        assert_eq!(shelf.map(|container| container.id.as_u128()), [4, 3, 2, 1, 5]);
    }
}
