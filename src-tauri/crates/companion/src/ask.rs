//! Every question and what answers it: one arm each, so that a new question can't be forgotten.

use crate::dto::ask::{Answer, Ask, Failure, Kept};
use crate::dto::kit::KitView;
use crate::dto::product::ProductView;
use crate::dto::register::ClientInput;
use crate::failure::id;
use crate::register::{CLIENT, KIT, LAWN, PRODUCT};
use crate::{Companion, forms, outlines, visit};

impl Companion {
    /// Answers a question.
    ///
    /// # Errors
    /// See [`crate::dto::ask::FailureCode`]. Nothing is kept of what was refused, and its draft stays.
    pub fn ask(&mut self, ask: Ask) -> Result<Answer, Failure> {
        match ask {
            Ask::Home => Ok(Answer::Home(self.home()?)),
            // The doorway puts a damaged file aside; one that is open is not damaged.
            Ask::PutAsideDamaged => Ok(Answer::Done),
            Ask::Operator => Ok(Answer::Operator(self.operator()?.map(|(_, operator)| operator).unwrap_or_default())),
            Ask::SaveOperator { input, draft_key } => {
                self.save_operator(&input, draft_key.as_deref())?;
                Ok(Answer::Done)
            }
            Ask::Limits { input } => Ok(Answer::Limits(forms::limits::view(&input))),
            Ask::Clients => Ok(Answer::Clients(self.clients()?)),
            Ask::SaveClient { client_id, input, draft_key } => {
                self.save_client(id(&client_id)?, &input, draft_key.as_deref())?;
                Ok(Answer::Done)
            }
            Ask::PreviewLawn { input } => Ok(Answer::Lawn(forms::lawn::view(&input))),
            Ask::Lawn { lawn_id } => {
                let entry = self.entry(LAWN, id(&lawn_id)?)?;
                Ok(Answer::Lawn(forms::lawn::view(&self.lawn_of(&entry)?)))
            }
            Ask::SaveLawn { lawn_id, input, draft_key } => {
                self.save_lawn(id(&lawn_id)?, &input, draft_key.as_deref())?;
                Ok(Answer::Lawn(forms::lawn::view(&input)))
            }
            Ask::ImportOutline { kind, text, lawn, part_idx } => {
                Ok(Answer::Imported(outlines::brought(&kind, &text, lawn.as_ref(), part_idx)))
            }
            Ask::ExportLawn { lawn_id } => Ok(Answer::File(outlines::given_out(self, id(&lawn_id)?)?)),
            Ask::MoveCorner { input, part_idx, corner_idx, to, snap } => {
                let moved = forms::lawn::moved(&input, part_idx, corner_idx, to, snap);
                Ok(Answer::Moved(moved.map_err(Failure::refused)?))
            }
            Ask::PreviewProduct { input } => Ok(Answer::Product(forms::product::view(&input, self.today()))),
            Ask::Products => Ok(Answer::Products(self.products()?)),
            Ask::Product { product_id } => {
                let (_, input) = self.label_of(&self.entry(PRODUCT, id(&product_id)?)?)?;
                Ok(Answer::Product(forms::product::view(&input, self.today())))
            }
            Ask::SaveProduct { product_id, label_id, input, draft_key } => {
                self.save_product(id(&product_id)?, id(&label_id)?, &input, draft_key.as_deref())?;
                Ok(Answer::Product(forms::product::view(&input, self.today())))
            }
            Ask::LabelVersions { product_id } => Ok(Answer::LabelVersions(self.label_versions(id(&product_id)?)?)),
            Ask::LabelVersion { label_id } => Ok(Answer::LabelVersion(self.label_version(id(&label_id)?)?)),
            Ask::PreviewKit { input } => {
                Ok(Answer::Kit(forms::kit::view(&input, forms::kit::Beside::default(), self.today())))
            }
            Ask::Kits => Ok(Answer::Kits(self.kits()?)),
            Ask::Kit { kit_id } => Ok(Answer::Kit(self.kit_view(&self.entry(KIT, id(&kit_id)?)?)?)),
            Ask::SaveKit { kit_id, input, draft_key } => {
                let kit_id = id(&kit_id)?;
                self.save_kit(kit_id, &input, draft_key.as_deref())?;
                Ok(Answer::Kit(self.kit_view(&self.entry(KIT, kit_id)?)?))
            }
            Ask::PreviewCalibration { kit_id, input } => {
                let (kit, _) = self.kit_of(&self.entry(KIT, id(&kit_id)?)?)?;
                Ok(Answer::Calibration(self.calibration_view(&kit, &input)))
            }
            Ask::SaveCalibration { kit_id, calibration_id, input, draft_key } => {
                let kit_id = id(&kit_id)?;
                self.save_calibration(kit_id, id(&calibration_id)?, &input, draft_key.as_deref())?;
                let (kit, _) = self.kit_of(&self.entry(KIT, kit_id)?)?;
                Ok(Answer::Calibration(self.calibration_view(&kit, &input)))
            }
            Ask::SignCleaning { kit_id, cleaning_id, input, draft_key } => {
                let kit_id = id(&kit_id)?;
                self.sign_cleaning(kit_id, id(&cleaning_id)?, &input, draft_key.as_deref())?;
                Ok(Answer::Kit(self.kit_view(&self.entry(KIT, kit_id)?)?))
            }
            Ask::KitQuestions { kit_id, wanted, n_passes, pace } => {
                Ok(Answer::KitAnswers(self.kit_questions(id(&kit_id)?, &wanted, n_passes, &pace)?))
            }
            Ask::Shelf => Ok(Answer::Shelf(self.shelf()?)),
            Ask::PreviewContainer { input } => Ok(Answer::Container(self.preview_container(&input)?)),
            Ask::Container { container_id } => Ok(Answer::Container(self.container_view(id(&container_id)?)?)),
            Ask::SaveContainer { container_id, input, draft_key } => {
                let container_id = id(&container_id)?;
                self.save_container(container_id, &input, draft_key.as_deref())?;
                Ok(Answer::Container(self.container_view(container_id)?))
            }
            Ask::TakeOutContainer { container_id } => {
                let container_id = id(&container_id)?;
                self.set_taken_out(container_id, true)?;
                Ok(Answer::Container(self.container_view(container_id)?))
            }
            Ask::PutBackContainer { container_id } => {
                let container_id = id(&container_id)?;
                self.set_taken_out(container_id, false)?;
                Ok(Answer::Container(self.container_view(container_id)?))
            }
            Ask::CountContainer { container_id, count_id, input, draft_key } => {
                let container_id = id(&container_id)?;
                self.count_container(container_id, id(&count_id)?, &input, draft_key.as_deref())?;
                Ok(Answer::Container(self.container_view(container_id)?))
            }
            Ask::OpenVisit { visit_id, command_id, lawn_id, rest_of } => {
                let rest_of = rest_of.as_deref().map(id).transpose()?;
                visit::open(self, id(&visit_id)?, id(&command_id)?, id(&lawn_id)?, rest_of)
            }
            Ask::Visit { visit_id } => visit::view(self, id(&visit_id)?),
            Ask::PreviewPlan { visit_id, choice } => visit::preview_plan(self, id(&visit_id)?, choice),
            Ask::Act { visit_id, command_id, expected_seq, act, draft_key } => {
                let asked = visit::Asked { visit_id: id(&visit_id)?, command_id: id(&command_id)?, expected_seq };
                visit::act(self, asked, act, draft_key.as_deref())
            }
            Ask::Record { visit_id } => visit::record(self, id(&visit_id)?),
            Ask::Emergency { visit_id } => {
                let visit_id = visit_id.as_deref().map(id).transpose()?;
                Ok(Answer::Emergency(self.emergency(visit_id)?))
            }
            Ask::PutDraft { key, body } => {
                if let Err(error) = serde_json::from_str::<serde::de::IgnoredAny>(&body) {
                    return Err(Failure::malformed(error.to_string()));
                }
                self.store.put_draft(&key, &body)?;
                Ok(Answer::Done)
            }
            Ask::Draft { key } => Ok(Answer::Draft(self.store.draft(&key)?)),
            Ask::ClearDraft { key } => {
                self.store.clear_draft(&key)?;
                Ok(Answer::Done)
            }
        }
    }

    fn clients(&self) -> Result<Vec<Kept<ClientInput>>, Failure> {
        let kept = self.entries(CLIENT)?.into_iter().map(|entry| Ok((entry.entry_id, self.client_of(&entry)?)));
        let mut clients = Self::readable(kept)?;
        clients.sort_by_key(|(client_id, client)| (client.name.to_lowercase(), *client_id));
        Ok(listed(clients))
    }

    fn products(&self) -> Result<Vec<Kept<ProductView>>, Failure> {
        let today = self.today();
        let kept = self.entries(PRODUCT)?.into_iter().map(|entry| {
            let (_, input) = self.label_of(&entry)?;
            Ok((entry.entry_id, forms::product::view(&input, today)))
        });
        let mut products = Self::readable(kept)?;
        products.sort_by_key(|(product_id, product)| (product.input.name.to_lowercase(), *product_id));
        Ok(listed(products))
    }

    fn kits(&self) -> Result<Vec<Kept<KitView>>, Failure> {
        let kept = self.entries(KIT)?.into_iter().map(|entry| Ok((entry.entry_id, self.kit_view(&entry)?)));
        let mut kits = Self::readable(kept)?;
        kits.sort_by_key(|(kit_id, kit)| (kit.input.name.to_lowercase(), *kit_id));
        Ok(listed(kits))
    }
}

fn listed<T: ts_rs::TS>(kept: Vec<(uuid::Uuid, T)>) -> Vec<Kept<T>> {
    kept.into_iter().map(|(id, entry)| Kept { id: id.to_string(), entry }).collect()
}
