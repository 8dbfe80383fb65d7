//! Figures as a person types them: the text, the unit, and what is wrong with it if anything.
//!
//! Invariant: a figure that could be read in two ways is refused, never guessed: a slip of a thousand in
//! an area is a slip of a thousand in the product. The text itself is never changed.

use super::{Arg, Dimension, Said, Unit};

/// A figure as typed: the text and its unit, kept together.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Figure {
    /// What the person typed.
    pub text: String,
    /// The unit shown beside the field.
    pub unit: Unit,
}

impl Figure {
    /// A figure from its text and unit.
    #[must_use]
    pub fn new(text: impl Into<String>, unit: Unit) -> Self {
        Self { text: text.into(), unit }
    }
}

/// Why a text is not a number.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum NumberProblem {
    /// Nothing was typed.
    #[error("nothing was typed")]
    Empty,
    /// The text is not a plain number.
    #[error("the text is not a plain number")]
    NotANumber,
    /// The text can be read in two ways, like `1,234`.
    #[error("the text can be read in two ways")]
    Ambiguous,
}

/// Why a figure is refused.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum FigureProblem {
    /// Nothing was typed.
    #[error("nothing was typed")]
    Empty,
    /// The text is not a plain number.
    #[error("the text is not a plain number")]
    NotANumber,
    /// The text can be read in two ways, like `1,234`.
    #[error("the text can be read in two ways")]
    Ambiguous,
    /// A negative figure where only positive ones make sense.
    #[error("the figure is negative")]
    Negative,
    /// Zero where something is needed.
    #[error("the figure is zero")]
    Zero,
    /// Less than is ever seen.
    #[error("the figure is smaller than {limit}")]
    TooSmall {
        /// The least that is believed, in `unit`.
        limit: f64,
        /// The unit the figure was typed in.
        unit: Unit,
    },
    /// More than is ever seen.
    #[error("the figure is larger than {limit}")]
    TooLarge {
        /// The most that is believed, in `unit`.
        limit: f64,
        /// The unit the figure was typed in.
        unit: Unit,
    },
    /// A unit that measures something else.
    #[error("{unit:?} measures something else")]
    WrongUnit {
        /// The unit that was given.
        unit: Unit,
    },
}

impl FigureProblem {
    /// The code of the problem, in kebab-case.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Empty => "empty",
            Self::NotANumber => "not-a-number",
            Self::Ambiguous => "ambiguous",
            Self::Negative => "negative",
            Self::Zero => "zero",
            Self::TooSmall { .. } => "too-small",
            Self::TooLarge { .. } => "too-large",
            Self::WrongUnit { .. } => "wrong-unit",
        }
    }

    /// The problem as a message with its arguments.
    #[must_use]
    pub fn said(&self) -> Said {
        let said = Said::new(self.code());
        match self {
            Self::TooSmall { limit, unit } | Self::TooLarge { limit, unit } => {
                said.with("limit", Arg::number(*limit, *unit, 2))
            }
            Self::Empty | Self::NotANumber | Self::Ambiguous | Self::Negative | Self::Zero | Self::WrongUnit { .. } => {
                said
            }
        }
    }
}

impl From<NumberProblem> for FigureProblem {
    fn from(problem: NumberProblem) -> Self {
        match problem {
            NumberProblem::Empty => Self::Empty,
            NumberProblem::NotANumber => Self::NotANumber,
            NumberProblem::Ambiguous => Self::Ambiguous,
        }
    }
}

/// A typed number. Accepts `2.5` and `2,5`, and spaces (also thin ones) between groups of three digits.
///
/// Refuses a comma before exactly three digits (`1,234` is a thousand to some and one and a bit to
/// others), comma and point together, powers of ten, and anything that is not a plain number.
///
/// ```
/// use evensward_core::quantity::{NumberProblem, parse_number};
/// assert_eq!(parse_number(" 2,5 "), Ok(2.5));
/// assert_eq!(parse_number("1 250.5"), Ok(1250.5));
/// assert_eq!(parse_number("1,234.5"), Err(NumberProblem::Ambiguous));
/// ```
pub fn parse_number(text: &str) -> Result<f64, NumberProblem> {
    let text = text.trim();
    if text.is_empty() {
        return Err(NumberProblem::Empty);
    }
    let (is_negative, digits) = match text.strip_prefix('-').or_else(|| text.strip_prefix('\u{2212}')) {
        Some(rest) => (true, rest.trim_start()),
        None => (false, text),
    };
    let is_known = |c: char| c.is_ascii_digit() || c == '.' || c == ',' || is_group_space(c);
    if !digits.chars().all(is_known) || !digits.chars().any(|c| c.is_ascii_digit()) {
        return Err(NumberProblem::NotANumber);
    }
    if digits.len() > 40 {
        return Err(NumberProblem::NotANumber);
    }
    let n_marks = digits.chars().filter(|c| matches!(c, '.' | ',')).count();
    if n_marks > 1 {
        return Err(NumberProblem::Ambiguous);
    }
    let (whole, fraction) = match digits.split_once(['.', ',']) {
        Some((whole, fraction)) => (whole, fraction),
        None => (digits, ""),
    };
    if fraction.chars().any(is_group_space) {
        return Err(NumberProblem::Ambiguous);
    }
    let groups: Vec<&str> = whole.split(is_group_space).collect();
    let is_grouped = groups.len() > 1;
    let is_well_grouped = groups.iter().skip(1).all(|group| group.len() == 3)
        && groups.first().is_some_and(|first| (1..=3).contains(&first.len()));
    if is_grouped && !is_well_grouped {
        return Err(NumberProblem::Ambiguous);
    }
    let whole = groups.concat();
    let looks_grouped_by_comma = digits.contains(',')
        && !is_grouped
        && fraction.len() == 3
        && (1..=3).contains(&whole.len())
        && !whole.starts_with('0');
    if looks_grouped_by_comma {
        return Err(NumberProblem::Ambiguous);
    }
    let plain = format!("{whole}.{fraction}");
    let value: f64 = plain.parse().map_err(|_| NumberProblem::NotANumber)?;
    Ok(if is_negative { -value } else { value })
}

/// A typed whole number, no more than `most`. Refuses fractions.
pub fn count_from_text(text: &str, most: u32) -> Result<u32, FigureProblem> {
    let value = parse_number(text)?;
    if value < 0.0 {
        return Err(FigureProblem::Negative);
    }
    if value.fract() != 0.0 {
        return Err(FigureProblem::NotANumber);
    }
    if value > f64::from(most) {
        return Err(FigureProblem::TooLarge { limit: f64::from(most), unit: Unit::Times });
    }
    // Within 0..=most, and whole, so that the cast loses nothing.
    Ok(value as u32)
}

/// Ordinary, no-break, narrow no-break and thin space.
fn is_group_space(c: char) -> bool {
    matches!(c, ' ' | '\u{a0}' | '\u{202f}' | '\u{2009}')
}

/// The typed figure in the base unit of its dimension, within the range that is believed.
pub(super) fn typed_base(
    figure: &Figure,
    dimensions: &[Dimension],
    low_base: f64,
    high_base: f64,
) -> Result<f64, FigureProblem> {
    let unit = figure.unit;
    if !dimensions.contains(&unit.dimension()) {
        return Err(FigureProblem::WrongUnit { unit });
    }
    let value = parse_number(&figure.text)?;
    let base = unit.to_base(value);
    if low_base >= 0.0 && value < 0.0 && base < 0.0 {
        return Err(FigureProblem::Negative);
    }
    if low_base > 0.0 && base == 0.0 {
        return Err(FigureProblem::Zero);
    }
    if super::is_below(base, low_base) {
        return Err(FigureProblem::TooSmall { limit: unit.from_base(low_base), unit });
    }
    if super::is_above(base, high_base) {
        return Err(FigureProblem::TooLarge { limit: unit.from_base(high_base), unit });
    }
    Ok(base)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Length, Swath, Temperature, Volume, Weight};

    #[test]
    fn numbers_are_read_as_people_write_them() {
        let check = |text: &str, expected: Result<f64, NumberProblem>| {
            assert_eq!(parse_number(text), expected, "{text:?}");
        };
        check("2.5", Ok(2.5));
        check("2,5", Ok(2.5));
        check("  12 ", Ok(12.0));
        check("1 250", Ok(1250.0));
        check("1\u{202f}250,75", Ok(1250.75));
        check("0,125", Ok(0.125));
        check("1.234", Ok(1.234));
        check(".5", Ok(0.5));
        check("5.", Ok(5.0));
        check("-3", Ok(-3.0));
        check("\u{2212}3,5", Ok(-3.5));
        check("", Err(NumberProblem::Empty));
        check("   ", Err(NumberProblem::Empty));
        check("1,234", Err(NumberProblem::Ambiguous));
        check("1,234.5", Err(NumberProblem::Ambiguous));
        check("1.234.5", Err(NumberProblem::Ambiguous));
        check("1 5", Err(NumberProblem::Ambiguous));
        check("12 345 67", Err(NumberProblem::Ambiguous));
        check("NaN", Err(NumberProblem::NotANumber));
        check("inf", Err(NumberProblem::NotANumber));
        check("1e3", Err(NumberProblem::NotANumber));
        check("ten", Err(NumberProblem::NotANumber));
        check(".", Err(NumberProblem::NotANumber));
        check("-", Err(NumberProblem::NotANumber));
        check("--2", Err(NumberProblem::NotANumber));
        check(&"9".repeat(400), Err(NumberProblem::NotANumber));
    }

    #[test]
    fn a_length_says_what_is_wrong_with_it() {
        let check = |text: &str, unit: Unit, code: &str| {
            let problem = Length::from_figure(&Figure::new(text, unit)).unwrap_err();
            assert_eq!(problem.code(), code, "{text} {unit:?}");
            assert_eq!(problem.said().code, code);
        };
        check("", Unit::Metre, "empty");
        check("0", Unit::Metre, "zero");
        check("-2", Unit::Metre, "negative");
        check("0.001", Unit::Metre, "too-small");
        check("99999", Unit::Metre, "too-large");
        check("12", Unit::Litre, "wrong-unit");
        check("1,200", Unit::Metre, "ambiguous");
    }

    #[test]
    fn units_are_turned_into_the_base_unit() {
        let length = Length::from_figure(&Figure::new("10", Unit::Foot)).unwrap();
        assert!((length.m() - 3.048).abs() < 1e-12);
        let weight = Weight::from_figure(&Figure::new("5,5", Unit::Kilogram)).unwrap();
        assert!((weight.kg() - 5.5).abs() < 1e-12);
        let frost = Temperature::from_figure(&Figure::new("-4", Unit::Celsius)).unwrap();
        assert!((frost.deg_c() + 4.0).abs() < 1e-12);
        let none = Volume::from_figure_or_zero(&Figure::new("0", Unit::Litre)).unwrap();
        assert_eq!(none, Volume::ZERO);
        assert_eq!(Swath::from_figure(&Figure::new("0", Unit::Metre)), Err(FigureProblem::Zero));
    }

    #[test]
    fn counts_are_whole_and_bounded() {
        assert_eq!(count_from_text("4", 12), Ok(4));
        assert_eq!(count_from_text("4.5", 12), Err(FigureProblem::NotANumber));
        assert_eq!(count_from_text("-1", 12), Err(FigureProblem::Negative));
        assert_eq!(count_from_text("13", 12).unwrap_err().code(), "too-large");
    }
}
