//! Whatever is typed, the parser answers: no panic, nothing that is no position, and never nothing.
//!
//! 200,000 texts as part of the tests; `FUZZ_INPUTS` says another number, and `bash tests/run.sh fuzz` runs ten
//! million with overflow checked.

mod made;

use place::parse::{Understood, parse};

/// Texts that are tried where nothing else is said.
const INPUTS: u64 = 200_000;

/// What is wrong with an answer.
fn wrong(text: &str, understood: &Understood) -> Option<&'static str> {
    let possible = understood.readings.iter().all(|reading| {
        let (north, east) = (reading.latitude.degrees(), reading.longitude.degrees());
        (-90.0..=90.0).contains(&north)
            && (-180.0..180.0).contains(&east)
            && reading.radius.metres().is_finite()
            && reading.radius.metres() >= 0.0
            && reading.step.is_none_or(|step| step.degrees().is_finite() && step.degrees() > 0.0)
    });
    match () {
        () if understood.text != text => Some("the text is not kept"),
        () if !possible => Some("a reading is no position"),
        () if understood.readings.is_empty() && understood.problems.is_empty() => Some("nothing is said"),
        () => None,
    }
}

#[test]
fn every_text_has_an_answer() {
    let inputs = std::env::var("FUZZ_INPUTS").map_or(INPUTS, |text| text.parse().expect("FUZZ_INPUTS is a number"));
    let (mut read, mut unclear) = (0_u64, 0_u64);
    for number in 0..inputs {
        let text = made::text(number);
        let Ok(understood) = std::panic::catch_unwind(|| parse(&text)) else { panic!("text {number}: {text:?}") };
        assert_eq!(wrong(&text, &understood), None, "text {number}: {text:?} {understood:?}");
        read += u64::from(understood.readings.len() == 1);
        unclear += u64::from(understood.readings.len() > 1);
    }
    // The texts are neither all nonsense nor all right, or nothing would be tried.
    assert!(read > inputs / 10 && unclear > inputs / 50 && read + unclear < inputs * 9 / 10, "{read} {unclear}");
}
