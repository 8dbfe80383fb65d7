//! The local SQLite file: opening, migrations, journal, register, drafts.
