//! Lists every published value beside ours. The last line reads `N checks, N passed`; the exit code is not zero
//! when a row fails or the data files are not in order.

use std::process::ExitCode;

use evensward_tests::published::{Row, Tally, Trouble, folder, hold_all, read};

fn main() -> ExitCode {
    match rows() {
        Ok(rows) => {
            for row in &rows {
                show(row);
            }
            summary(&rows)
        }
        Err(trouble) => {
            eprintln!("The published values are not in order: {trouble}");
            ExitCode::FAILURE
        }
    }
}

fn rows() -> Result<Vec<Row>, Trouble> {
    hold_all(&read(&folder())?)
}

fn show(row: &Row) {
    let relation = match row.kind {
        evensward_tests::published::Kind::Trap => "must not be",
        _ => "published",
    };
    println!(
        "{} | {} | {} | ours {} | {} {} | within {} | {} | {} | {}",
        if row.passed { "pass" } else { "FAIL" },
        row.topic,
        row.what,
        row.ours,
        relation,
        row.published,
        row.tolerance,
        row.kind.word(),
        row.id,
        row.source,
    );
}

/// Each kind counted apart, then all together.
fn summary(rows: &[Row]) -> ExitCode {
    println!();
    for tally in Tally::by_kind(rows) {
        println!("{:>9}: {} checks, {} passed", tally.kind.word(), tally.n_rows, tally.n_passed);
    }
    let failed: Vec<&Row> = rows.iter().filter(|row| !row.passed).collect();
    if !failed.is_empty() {
        println!("\nThese do not hold:");
        for row in &failed {
            show(row);
        }
    }
    println!("{} checks, {} passed", rows.len(), rows.len() - failed.len());
    if failed.is_empty() { ExitCode::SUCCESS } else { ExitCode::FAILURE }
}
