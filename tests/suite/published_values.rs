//! The published values hold, there are enough of them from outside, and every one of them could fail.

use evensward_tests::published::{Kind, Published, Record, Topic, folder, hold, hold_all, parse, read};

/// Definitions and seen values; derived ones, those from memory and common practice come on top.
const LEAST_FROM_OUTSIDE: usize = 60;

fn topics() -> Vec<Topic> {
    read(&folder()).expect("the data files are in order")
}

fn records() -> Vec<Record> {
    topics().into_iter().flat_map(|topic| topic.records).collect()
}

#[test]
fn every_published_value_holds() {
    let rows = hold_all(&topics()).expect("every row can be asked");
    let failed: Vec<String> = rows
        .iter()
        .filter(|row| !row.passed)
        .map(|row| format!("{}: ours {}, published {} ({})", row.id, row.ours, row.published, row.source))
        .collect();
    assert!(failed.is_empty(), "{}", failed.join("\n"));
    let n_from_outside = rows.iter().filter(|row| row.kind.is_from_outside()).count();
    assert!(n_from_outside >= LEAST_FROM_OUTSIDE, "{n_from_outside} values from outside");
}

/// Moves a published figure just past its tolerance, away from where it stands.
fn moved(published: &Published, sign: f64) -> Published {
    match published {
        Published::Figure { value, unit, within } => {
            Published::Figure { value: value + sign * 2.01 * within, unit: *unit, within: *within }
        }
        Published::Number { value, within } => {
            Published::Number { value: value + sign * 2.01 * within, within: *within }
        }
        Published::Word(word) => Published::Word(format!("not-{word}")),
    }
}

#[test]
fn every_row_fails_when_its_published_value_is_another() {
    for record in records().into_iter().filter(|record| record.kind != Kind::Trap) {
        for sign in [-1.0, 1.0] {
            let other = Record { published: moved(&record.published, sign), ..record.clone() };
            let row = hold(&other).expect("a moved row can still be asked");
            assert!(!row.passed, "{} still holds at {}", row.id, row.published);
        }
    }
}

#[test]
fn a_trap_fails_when_the_misprint_is_our_own_answer() {
    let traps: Vec<Record> = records().into_iter().filter(|record| record.kind == Kind::Trap).collect();
    assert!(!traps.is_empty());
    for trap in traps {
        // The same question, with the trap's figure taken for a plain published one, must fail.
        let plain = Record { kind: Kind::Seen, ..trap.clone() };
        assert!(!hold(&plain).expect("a trap can be asked").passed, "{} agrees with its misprint", trap.id);
        assert!(hold(&trap).expect("a trap can be asked").passed);
    }
}

const ROW: &str = r#"
topic = "Test"
[sources]
here = "invented for this test"
[[check]]
id = "one"
what = "a yard in metres"
formula = "length-in"
given = { length = "1 yd" }
published = "0.9144 m"
within = 0.00005
kind = "derived"
source = "here"
"#;

fn with(from: &str, to: &str) -> String {
    assert!(ROW.contains(from), "{from}");
    ROW.replace(from, to)
}

#[test]
fn a_row_that_is_not_in_order_is_refused_with_the_reason() {
    let check = |text: &str, expected: &str| {
        let refusal = parse("test", text)
            .and_then(|topic| hold_all(&[topic]))
            .expect_err(&format!("refused because {expected}"))
            .to_string();
        assert!(refusal.contains(expected), "{refusal} does not say {expected}");
    };
    assert!(parse("test", ROW).and_then(|topic| hold_all(&[topic])).expect("in order")[0].passed);
    check(&with("length-in", "guess"), "there is no formula `guess`");
    check(&with("\"1 yd\" }", "\"1 yd\", width = \"2 m\" }"), "`width` is given and the formula does not use it");
    check(&with("{ length", "{ width"), "`length` is not given");
    check(&with("1 yd", "1 ell"), "there is no unit `ell`");
    check(&with("1 yd", "1yd"), "`length` has no unit");
    check(&with("1 yd", "0 yd"), "`length` is refused: zero");
    check(&with("0.9144 m", "0.9144 ell"), "there is no unit `ell`");
    check(&with("0.9144 m", "0.9144 L"), "the answer is not measured in `L`");
    check(&with("\"0.9144 m\"\nwithin = 0.00005", "\"long\""), "not of one kind");
    check(&with("within = 0.00005\n", ""), "a number needs its `within`");
    check(&with("0.00005", "0.0"), "`within` must be above zero");
    check(&with("0.9144 m", "long"), "a word has no `within`");
    check(&with("source = \"here\"", "source = \"there\""), "the source `there` is not listed");
    check(&with("invented for this test", " "), "`source` is empty");
    check(&with("[sources]", "[sources]\nthere = \"x\""), "the source `there` is listed and never used");
    check(&with("kind = \"derived\"", "kind = \"guessed\""), "guessed");
    check(&with("kind = ", "mood = \"good\"\nkind = "), "mood");
}

#[test]
fn ids_stand_once_and_no_formula_has_more_than_its_share() {
    let folder = tempfile::tempdir().expect("a folder for the test");
    let write = |name: &str, text: &str| {
        #[expect(clippy::disallowed_methods, reason = "the test writes data files of its own")]
        std::fs::write(folder.path().join(name), text).expect("the data file is written");
    };
    write("a.toml", ROW);
    assert!(read(folder.path()).is_ok());
    write("b.toml", ROW);
    assert!(read(folder.path()).expect_err("the same id").to_string().contains("the id stands twice"));
    let rows = ROW.split_once("[[check]]").map(|(head, row)| (head.to_owned(), row.to_owned())).expect("one row");
    let many = (0..9)
        .fold(rows.0, |text, n| format!("{text}[[check]]{}", rows.1.replace("\"one\"", &format!("\"many-{n}\""))));
    write("b.toml", &many);
    assert!(read(folder.path()).expect_err("too many").to_string().contains("has more than 8 rows"));
}
