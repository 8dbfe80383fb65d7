//! The forms of the people: the operator, who signs, and a client, whose words can be forgotten.

use super::Problems;
use crate::dto::figures::FieldProblem;
use crate::dto::register::{ClientInput, OperatorInput};

/// What is wrong with the operator's form. The certificate may come later: a record asks for it when it is signed.
pub(crate) fn check_operator(input: &OperatorInput) -> Result<(), Vec<FieldProblem>> {
    let mut problems = Problems::default();
    problems.line("name", &input.name);
    problems.optional_line("certificate", &input.certificate);
    problems.optional_line("firm", &input.firm);
    problems.words("emergency_contacts", &input.emergency_contacts);
    if let Err(of_limits) = super::limits::profile(&input.limits) {
        problems.extend(of_limits);
    }
    problems.give(Some(()))
}

/// What is wrong with a client's form.
pub(crate) fn check_client(input: &ClientInput) -> Result<(), Vec<FieldProblem>> {
    let mut problems = Problems::default();
    problems.line("name", &input.name);
    problems.words("address", &input.address);
    problems.optional_line("phone", &input.phone);
    problems.give(Some(()))
}
