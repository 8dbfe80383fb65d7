//! What a row gives, handed out one by one and counted.
//!
//! Invariant: a formula that leaves an input untouched is an error ([`Given::finish`]), and so is one that asks
//! for an input the row does not give. Figures go through `core`'s own reading of typed numbers and units.

use std::collections::BTreeMap;

use evensward_core::quantity::{Figure, FigureProblem, Length, Unit};

use super::data::Trouble;

/// The inputs of one row that were not asked for yet.
pub(super) struct Given<'a> {
    place: &'a str,
    left: BTreeMap<&'a str, &'a str>,
}

impl<'a> Given<'a> {
    pub(super) fn new(place: &'a str, given: &'a BTreeMap<String, String>) -> Self {
        Self { place, left: given.iter().map(|(name, text)| (name.as_str(), text.as_str())).collect() }
    }

    /// The text given under a name.
    pub(super) fn word(&mut self, name: &str) -> Result<&'a str, Trouble> {
        self.left.remove(name).ok_or_else(|| Trouble::new(self.place, format!("`{name}` is not given")))
    }

    /// Whether something is given under that name and was not asked for yet.
    pub(super) fn has(&self, name: &str) -> bool {
        self.left.contains_key(name)
    }

    /// The figure given under a name, as a person would type it.
    pub(super) fn figure(&mut self, name: &str) -> Result<Figure, Trouble> {
        let text = self.word(name)?;
        let (number, code) =
            text.rsplit_once(' ').ok_or_else(|| Trouble::new(self.place, format!("`{name}` has no unit: {text}")))?;
        let unit =
            Unit::from_code(code).ok_or_else(|| Trouble::new(self.place, format!("there is no unit `{code}`")))?;
        Ok(Figure::new(number, unit))
    }

    /// The quantity given under a name, read by the quantity's own reader.
    pub(super) fn quantity<T>(
        &mut self,
        name: &str,
        read: impl FnOnce(&Figure) -> Result<T, FigureProblem>,
    ) -> Result<T, Trouble> {
        let figure = self.figure(name)?;
        read(&figure).map_err(|problem| Trouble::new(self.place, format!("`{name}` is refused: {}", problem.code())))
    }

    /// The lengths given under a name, in one text with their unit at the end.
    pub(super) fn lengths(&mut self, name: &str) -> Result<Vec<Length>, Trouble> {
        let text = self.word(name)?;
        let (numbers, unit) =
            text.rsplit_once(' ').ok_or_else(|| Trouble::new(self.place, format!("`{name}` has no unit: {text}")))?;
        let length = |number: &str| {
            let unit = Unit::from_code(unit).ok_or_else(|| self.trouble(format!("there is no unit `{unit}`")))?;
            Length::from_figure_or_zero(&Figure::new(number, unit))
                .map_err(|problem| self.trouble(format!("`{name}` is refused: {}", problem.code())))
        };
        numbers.split_whitespace().map(length).collect()
    }

    /// A small whole number given under a name.
    pub(super) fn count(&mut self, name: &str) -> Result<u8, Trouble> {
        let text = self.word(name)?;
        text.parse().map_err(|_| self.trouble(format!("`{name}` is no small whole number: {text}")))
    }

    /// An error at this row.
    pub(super) fn trouble(&self, what: impl Into<String>) -> Trouble {
        Trouble::new(self.place, what)
    }

    /// Says which input nobody asked for.
    pub(super) fn finish(self) -> Result<(), Trouble> {
        match self.left.keys().next() {
            None => Ok(()),
            Some(name) => Err(Trouble::new(self.place, format!("`{name}` is given and the formula does not use it"))),
        }
    }
}
