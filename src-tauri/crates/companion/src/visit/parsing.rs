//! Parsing a visit's small forms: all problems at once, each at its field, and the figures as typed kept beside.

use evensward_core::quantity::{self as q, Code, Figure};
use evensward_core::visit::event::TypedFigure;

use crate::dto::ask::Failure;
use crate::dto::figures::{FieldProblem, Typed};
use crate::show;

/// Collects what is wrong, field by field.
#[derive(Default)]
pub(crate) struct Problems(Vec<FieldProblem>);

impl Problems {
    pub(crate) fn add(&mut self, field: &str, what: &q::Said) {
        self.0.push(show::problem(field, what));
    }

    /// A code of a closed list, or a problem at its field.
    pub(crate) fn code<T: Copy>(&mut self, field: &str, code: &str, known: &[(&str, T)]) -> Option<T> {
        let found = known.iter().find(|(name, _)| *name == code).map(|(_, value)| *value);
        if found.is_none() {
            let what = if code.is_empty() { "choose-one" } else { "not-one-of-these" };
            self.add(field, &q::Said::new(what));
        }
        found
    }

    /// A figure that may be left empty.
    pub(crate) fn optional<T>(
        &mut self,
        field: &str,
        typed: &Typed,
        parse: impl FnOnce(&Figure) -> Result<T, q::FigureProblem>,
    ) -> Option<T> {
        if typed.text.trim().is_empty() {
            return None;
        }
        match show::figure(typed).and_then(|figure| parse(&figure).map_err(|problem| problem.said())) {
            Ok(value) => Some(value),
            Err(said) => {
                self.add(field, &said);
                None
            }
        }
    }

    pub(crate) fn settle<T>(self, value: Option<T>) -> Result<T, Failure> {
        match value {
            Some(value) if self.0.is_empty() => Ok(value),
            _ => Err(Failure::refused(self.0)),
        }
    }
}

/// The figures of a form as typed; empty ones say nothing.
pub(crate) fn typed_figures<const N: usize>(figures: [(&'static str, &Typed); N]) -> Vec<TypedFigure> {
    figures
        .into_iter()
        .filter(|(_, typed)| !typed.text.trim().is_empty())
        .filter_map(|(field, typed)| {
            Some(TypedFigure { field: Code::Borrowed(field), figure: show::figure(typed).ok()? })
        })
        .collect()
}
