//! What must not compile: sums that mean nothing. Each case stands in its own file beside the words the compiler
//! refuses it with, so that a case cannot fail for another reason unseen. They stand with `core` and not with the other
//! tests, because the cases are built with every dependency of the package they stand in.

#[test]
fn quantities_that_do_not_belong_together_do_not_compile() {
    let cases = trybuild::TestCases::new();
    cases.pass("tests/compile_fail/meaningful.rs");
    cases.compile_fail("tests/compile_fail/dose_added_to_swath.rs");
    cases.compile_fail("tests/compile_fail/dose_times_tank.rs");
    cases.compile_fail("tests/compile_fail/dose_times_length.rs");
    cases.compile_fail("tests/compile_fail/swath_as_length.rs");
    cases.compile_fail("tests/compile_fail/pace_as_wind.rs");
}
