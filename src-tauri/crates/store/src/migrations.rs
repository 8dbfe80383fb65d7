//! The numbered steps that bring a file to this version's schema.
//!
//! Steps only add. Every file runs all of them, new or old, so there is one way to each schema; a step is
//! never changed once it was released. The number reached is the file's `user_version`.

use rusqlite::{Connection, TransactionBehavior};

use crate::failure::StoreError;
use crate::pragmas::APPLICATION_ID;

const MIGRATIONS: &[&str] =
    &[include_str!("migrations/0001.sql"), include_str!("migrations/0002.sql"), include_str!("migrations/0003.sql")];

/// The schema version that this program writes.
pub const VERSION: u32 = 3;

/// The version of an open file.
pub(crate) fn version_of(connection: &Connection) -> Result<u32, StoreError> {
    Ok(connection.pragma_query_value(None, "user_version", |row| row.get(0))?)
}

/// Runs the steps that a file lacks, each in a transaction of its own, and answers with the version before.
pub(crate) fn migrate(connection: &mut Connection) -> Result<u32, StoreError> {
    let before = version_of(connection)?;
    for (version, step) in (1_u32..).zip(MIGRATIONS) {
        if version <= before {
            continue;
        }
        let transaction = connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
        // Another program may have run the step while this one waited for the lock.
        if version_of(&transaction)? < version {
            transaction.execute_batch(step)?;
            transaction.pragma_update(None, "user_version", version)?;
            transaction.pragma_update(None, "application_id", APPLICATION_ID)?;
            tracing::info!(version, "the file was brought forward");
        }
        transaction.commit()?;
    }
    Ok(before)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Every object of a schema with its text, comments and spacing left out.
    fn objects(connection: &Connection) -> Vec<(String, String)> {
        let mut query =
            connection.prepare("SELECT name, sql FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY name").unwrap();
        let rows = query.query_map((), |row| Ok((row.get(0)?, row.get::<_, String>(1)?))).unwrap();
        rows.map(|row| {
            let (name, sql) = row.unwrap();
            let bare: Vec<&str> = sql.lines().map(|line| line.split("--").next().unwrap_or_default()).collect();
            (name, bare.join(" ").split_whitespace().collect::<Vec<_>>().join(" "))
        })
        .collect()
    }

    #[test]
    fn the_commented_schema_is_what_the_migrations_make() {
        let mut migrated = Connection::open_in_memory().unwrap();
        migrate(&mut migrated).unwrap();
        let described = Connection::open_in_memory().unwrap();
        described.execute_batch(include_str!("schema.sql")).unwrap();
        assert_eq!(objects(&migrated), objects(&described));
        assert!(objects(&migrated).len() > 10);
    }

    #[test]
    fn the_last_migration_is_this_version() {
        assert_eq!(u32::try_from(MIGRATIONS.len()), Ok(VERSION));
    }

    #[test]
    fn every_column_has_its_meaning_beside_it() {
        let mut in_table = false;
        for line in include_str!("schema.sql").lines() {
            in_table = (in_table || line.starts_with("CREATE TABLE")) && !line.starts_with(')');
            let first = line.trim_start().split(' ').next().unwrap_or_default();
            let is_column = first.chars().next().is_some_and(|letter| letter.is_ascii_lowercase());
            assert!(!in_table || !is_column || line.contains("  -- "), "no meaning: {line}");
        }
    }
}
