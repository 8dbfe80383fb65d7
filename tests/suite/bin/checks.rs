//! Lists every published value beside ours, topic by topic, each with its source under it. The last line reads
//! `N checks, N passed`; the exit code is not zero when a row fails or the data files are not in order.

use std::process::ExitCode;

use evensward_tests::published::{Kind, Row, Tally, Trouble, folder, hold_all, read};

fn main() -> ExitCode {
    match rows() {
        Ok(rows) => listing(&rows),
        Err(trouble) => {
            eprintln!("The published values are not in order: {trouble}");
            ExitCode::FAILURE
        }
    }
}

fn rows() -> Result<Vec<Row>, Trouble> {
    hold_all(&read(&folder())?)
}

fn listing(rows: &[Row]) -> ExitCode {
    let mut topic = "";
    for row in rows {
        if row.topic != topic {
            topic = &row.topic;
            println!("\n{topic}");
        }
        show(row);
    }
    let failed: Vec<&Row> = rows.iter().filter(|row| !row.passed).collect();
    if !failed.is_empty() {
        println!("\nThese do not hold:");
        for row in &failed {
            show(row);
        }
    }
    println!();
    for tally in Tally::by_kind(rows).iter().filter(|tally| tally.n_rows > 0) {
        println!("{:>9}: {} of {} passed", tally.kind.word(), tally.n_passed, tally.n_rows);
    }
    println!("{} checks, {} passed", rows.len(), rows.len() - failed.len());
    if failed.is_empty() { ExitCode::SUCCESS } else { ExitCode::FAILURE }
}

fn show(row: &Row) {
    let published = match row.kind {
        Kind::Trap => format!("must not be {}", row.published),
        Kind::Seen | Kind::Standard | Kind::Derived | Kind::Memory | Kind::Practice => {
            format!("published {}", row.published)
        }
    };
    println!(
        "  {}  {:<8}  {}: ours {}, {} within {}",
        if row.passed { "pass" } else { "FAIL" },
        row.kind.word(),
        row.what,
        row.ours,
        published,
        row.tolerance,
    );
    println!("        {:<8}  {} [{}]", "", row.source, row.id);
}
