//! A person's pointer: it presses the middle of what it sees, and scrolls there first if need be. What is typed goes into
//! the field that was pressed.

use std::time::Instant;

use fantoccini::elements::Element;
use fantoccini::error::CmdError;
use fantoccini::key::Key;
use serde_json::json;

use crate::sought::Sought;
use crate::trouble::Trouble;
use crate::window::{LOOK_AGAIN, PATIENCE, Window, is_passing};

impl Window {
    /// Clicks something once it is there and can be used.
    ///
    /// # Errors
    ///
    /// Says that it did not come or could not be clicked.
    pub async fn click(&self, sought: Sought<'_>) -> Result<(), Trouble> {
        let since = Instant::now();
        loop {
            let element = self.find_by(sought, true, since).await?;
            match element.click().await {
                Ok(()) => return Ok(()),
                // It lies below the fold, or the page was drawn anew between looking and clicking: scroll to it, as
                // a person would, and look again.
                Err(why) if is_passing(&why) && since.elapsed() < PATIENCE => {
                    self.scroll_to(&element).await;
                    tokio::time::sleep(LOOK_AGAIN).await;
                }
                Err(why) => return Err(Trouble::while_doing(format!("clicking {sought} ({})", kind_of(&why)))(why)),
            }
        }
    }

    async fn scroll_to(&self, element: &Element) {
        let script = "arguments[0].scrollIntoView({ block: 'center' });";
        let Ok(element) = serde_json::to_value(element) else { return };
        // An element that is gone meanwhile is looked for anew by whoever called.
        let _scrolled = self.run(script, json!([element])).await;
    }

    /// Types into a field in place of what stood there.
    ///
    /// # Errors
    ///
    /// Says that the field did not come or would not take the text.
    pub async fn type_in(&self, field: Sought<'_>, text: &str) -> Result<(), Trouble> {
        self.click(field).await?;
        let element = self.find(field).await?;
        let select_all = format!("{}a{}", char::from(Key::Control), char::from(Key::Null));
        for keys in [select_all.as_str(), &char::from(Key::Backspace).to_string(), text] {
            element.send_keys(keys).await.map_err(Trouble::while_doing(format!("typing into {field}")))?;
        }
        Ok(())
    }

    /// Picks an entry from a list by its words.
    ///
    /// # Errors
    ///
    /// Says that the list or the entry did not come.
    pub async fn pick(&self, list: Sought<'_>, entry: &str) -> Result<(), Trouble> {
        let element = self.find_by(list, true, Instant::now()).await?;
        let doing = Trouble::while_doing(format!("picking \"{entry}\" from {list}"));
        element.select_by_label(entry).await.map_err(doing)
    }
}

/// The driver's own word for what went wrong; its message is often empty.
fn kind_of(why: &CmdError) -> String {
    match why {
        CmdError::Standard(said) => said.error.to_string(),
        other => other.to_string(),
    }
}
