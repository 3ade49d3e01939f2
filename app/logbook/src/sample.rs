//! The sample survey: a book of its own, loaded by one tap and thrown away by another.

use crate::book::Book;
use crate::driver::{Driver, Held};
use crate::exchange::ExchangeFault;
use ports::files::File;
use ports::store::StoreFault;

/// Where the sample lies among the files of the app.
const SURVEY: &str = "sample/survey.json";

impl<H: Held> Driver<H> {
    /// Fills the sample book, which must be the open one. Loading it again changes nothing.
    ///
    /// **Errors**: as [`ExchangeFault`]; [`ExchangeFault::Empty`] when the app has no sample.
    pub async fn load_sample(&self) -> Result<(), ExchangeFault> {
        let bytes = self.ports.assets.bytes(SURVEY).await.map_err(|_| ExchangeFault::Empty)?;
        let file = File { name: SURVEY.to_owned(), media: "application/json".to_owned(), bytes };
        let preview = self.plan_import(file).await?;
        self.accept(preview).await.map(|_| ())
    }

    /// Throws the sample book away with its drafts. A person's own book is never touched.
    ///
    /// **Errors**: as [`StoreFault`]; the sample is then still there.
    pub async fn throw_sample_away(&self) -> Result<(), StoreFault> {
        let sample = Book::Sample.name();
        self.ports.store.erase(sample).await?;
        for name in self.ports.draft.names(&format!("glassine/{sample}/")) {
            self.ports.draft.remove(&name);
        }
        Ok(())
    }
}
