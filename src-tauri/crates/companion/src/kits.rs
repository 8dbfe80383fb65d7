//! Kits as the use cases see them: the cleaning that is signed, and the questions asked from the other end.

use evensward_core::quantity::Said;
use uuid::Uuid;

use crate::dto::ask::Failure;
use crate::dto::figures::Typed;
use crate::dto::kit::{CleaningInput, KitAnswersView};
use crate::register::KIT;
use crate::{Companion, show};

impl Companion {
    pub(crate) fn sign_cleaning(
        &mut self,
        kit_id: Uuid,
        _cleaning_id: Uuid,
        _input: &CleaningInput,
        _draft_key: Option<&str>,
    ) -> Result<(), Failure> {
        self.entry(KIT, kit_id)?;
        Err(Failure::refused(vec![show::problem("by", &Said::new("empty"))]))
    }

    pub(crate) fn kit_questions(
        &self,
        kit_id: Uuid,
        _wanted: &Typed,
        _n_passes: u32,
        _pace: &Typed,
    ) -> Result<KitAnswersView, Failure> {
        self.entry(KIT, kit_id)?;
        let problems = vec![show::problem("wanted", &Said::new("empty"))];
        Ok(KitAnswersView { problems, pace_for: None, pace_check: None, passes: Vec::new(), sizes: Vec::new() })
    }
}
