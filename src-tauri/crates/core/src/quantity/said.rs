//! What the trade says: a code and its arguments. The words stand in one catalogue elsewhere; this file
//! must never hold text for a reader. Codes are kebab-case and, once given out, keep their meaning.

use std::borrow::Cow;

use chrono::NaiveDate;

use super::Unit;

/// A code in kebab-case: static where the trade says it, owned where it was read back from a record.
pub type Code = Cow<'static, str>;

/// A message as a code and named arguments.
#[derive(Debug, Clone, PartialEq)]
pub struct Said {
    /// Which message, in kebab-case.
    pub code: Code,
    /// The arguments by name, in the order they were given.
    pub args: Vec<(Code, Arg)>,
}

/// One argument of a message.
#[derive(Debug, Clone, PartialEq)]
pub enum Arg {
    /// A figure with its unit and the decimals worth showing.
    Number {
        /// The figure in `unit`.
        value: f64,
        /// The unit the figure is in.
        unit: Unit,
        /// How many decimals are worth showing.
        decimals: u8,
    },
    /// Words the operator entered (a name).
    Text(String),
    /// A number of things.
    Count(u32),
    /// A code that the catalogue turns into words.
    Code(Code),
    /// A local date.
    Date(NaiveDate),
}

impl Arg {
    /// A code that the catalogue turns into words.
    #[must_use]
    pub const fn code(code: &'static str) -> Self {
        Self::Code(Cow::Borrowed(code))
    }

    /// A figure with its unit and the decimals worth showing.
    #[must_use]
    pub const fn number(value: f64, unit: Unit, decimals: u8) -> Self {
        Self::Number { value, unit, decimals }
    }
}

impl Said {
    /// A message without arguments.
    #[must_use]
    pub const fn new(code: &'static str) -> Self {
        Self { code: Cow::Borrowed(code), args: Vec::new() }
    }

    /// The same message with one more argument.
    #[must_use]
    pub fn with(mut self, name: &'static str, arg: Arg) -> Self {
        self.args.push((Cow::Borrowed(name), arg));
        self
    }

    /// The argument of that name.
    #[must_use]
    pub fn arg(&self, name: &str) -> Option<&Arg> {
        self.args.iter().find(|(known, _)| *known == name).map(|(_, arg)| arg)
    }
}
