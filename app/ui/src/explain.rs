//! What happened, what went wrong, what is missing: every variant is matched to a phrase, without a wildcard.

use crate::context::say;
use crate::parts::Sign;
use logbook::bench::MountFault;
use logbook::book::ReadOnly;
use logbook::deed::What;
use logbook::driver::SaveFault;
use logbook::exchange::ExchangeFault;
use logbook::numbers::{SpanFault, SpanSays};
use logbook::setup::Refused;
use logbook::typed::{Notation, Problem, Typed};
use logbook::view::{self, Next, Plate, Span};
use ports::position::NoFix;
use ports::store::StoreFault;

/// Why a deed was not saved: what happened; what is safe and what to do.
pub fn save_fault(fault: &SaveFault) -> (String, String) {
    let words = say().faults;
    match fault {
        SaveFault::Store(fault) => store_fault(fault),
        SaveFault::Locked => (words.not_ours().into(), words.not_ours_do().into()),
        SaveFault::ReadOnly(ReadOnly::Newer) => (words.newer().into(), words.read_only_newer().into()),
        SaveFault::ReadOnly(ReadOnly::Outdated) => (words.outdated().into(), words.outdated_do().into()),
        SaveFault::Opening => (words.opening().into(), words.opening_do().into()),
    }
}

/// Why the storage said no.
pub fn store_fault(fault: &StoreFault) -> (String, String) {
    let words = say().faults;
    match fault {
        StoreFault::Refused(reason) => (words.refused().into(), words.refused_do(reason)),
        StoreFault::Full => (words.full().into(), words.full_do().into()),
        StoreFault::Newer { found } => (words.newer().into(), words.newer_do(*found)),
        StoreFault::Outdated => (words.outdated().into(), words.outdated_do().into()),
        StoreFault::Taken => (words.taken().into(), words.taken_do().into()),
        StoreFault::Cut(reason) => (words.cut().into(), words.cut_do(reason)),
    }
}

/// What was done, for the undo bar.
pub fn done(what: What) -> String {
    let (catch, container, open, event) = (say().catch, say().container, say().open, say().event);
    match what {
        What::Catch(count) => catch.saved(count),
        What::Nothing => catch.saved_nothing().into(),
        What::EventChanged => catch.saved_changes().into(),
        What::Containers(count) => container.added(count),
        What::Placed(count) => event.placed(count),
        What::ContainerChanged => container.changed().into(),
        What::Site => say().site.saved().into(),
        What::EventDeleted => catch.deleted_event().into(),
        What::ContainerDeleted => container.deleted().into(),
        What::LampOff => open.off_done().into(),
        What::TrapSet => open.trap_set_done().into(),
        What::TakenUp => open.trap_up_done().into(),
        What::Picked => event.picked().into(),
        What::Pinned(count) => event.pinned(count),
        What::Labelled(count) => event.labelled(count),
        What::Printed(count) => event.printed(count),
        What::Wording => event.wording().into(),
        What::Determined => event.determined().into(),
        What::Emerged => event.emerged().into(),
        What::Piece => event.piece().into(),
        What::Mounts(count) => event.mounts(count),
        What::MountOut => event.mount_out().into(),
        What::Arrangement => event.arrangement().into(),
        What::Setup => event.setup().into(),
        What::Undone => event.undone().into(),
    }
}

/// A mark with its sign and words.
pub fn mark(mark: &view::Mark) -> (Sign, String) {
    let words = say().marks;
    let caret = |text: &str| (Sign::Caret, text.to_owned());
    match mark {
        view::Mark::Open => (Sign::Ring, words.open().into()),
        view::Mark::Nothing => (Sign::Tick, words.nothing().into()),
        view::Mark::Site => caret(words.site()),
        view::Mark::Coordinates => caret(words.coordinates()),
        view::Mark::Radius(metres, limit) => caret(&words.radius(*metres, *limit)),
        view::Mark::Caught => caret(words.caught()),
        view::Mark::Method => caret(words.method()),
        view::Mark::Host => caret(words.host()),
        view::Mark::Collector => caret(words.collector()),
        view::Mark::Elevation => caret(words.elevation()),
        view::Mark::Catch => caret(words.catch()),
        view::Mark::Unnumbered(count) => caret(&words.unnumbered(*count)),
        view::Mark::Twice(number) => (Sign::Twice, words.twice(number)),
        view::Mark::Conflicts(count) => (Sign::Look, words.conflicts(*count)),
    }
}

/// The command that mends a mark; `None` where the event itself cannot mend it.
pub fn mend(mark: &view::Mark) -> Option<String> {
    let words = say().marks;
    match mark {
        view::Mark::Open | view::Mark::Nothing | view::Mark::Twice(_) | view::Mark::Conflicts(_) => None,
        view::Mark::Site => Some(words.write_site().into()),
        view::Mark::Coordinates => Some(words.write_coordinates().into()),
        view::Mark::Radius(..) => Some(words.write_radius().into()),
        view::Mark::Caught => Some(words.write_caught().into()),
        view::Mark::Method => Some(words.write_method().into()),
        view::Mark::Host => Some(words.write_host().into()),
        view::Mark::Collector => Some(words.write_collector().into()),
        view::Mark::Elevation => Some(words.write_elevation().into()),
        view::Mark::Catch => Some(words.write_catch().into()),
        view::Mark::Unnumbered(count) => Some(words.write_unnumbered(*count)),
    }
}

/// Why there is no fix.
pub fn no_fix(why: NoFix) -> &'static str {
    let words = say().place;
    match why {
        NoFix::Denied => words.denied(),
        NoFix::Unavailable => words.unavailable(),
        NoFix::Slow => words.slow(),
    }
}

/// The next number, beside the main command.
pub fn next(next: &Next, first: bool) -> String {
    let words = say().start;
    match next {
        Next::Number(Plate { prefix, run, .. }) => {
            format!("{} {prefix}{run}", if first { words.first() } else { words.next() })
        }
        Next::None | Next::Unasked => String::new(),
        Next::RangeFull => words.next_full().into(),
    }
}

/// Numbers of an event as spans: `0147–0149`.
pub fn spans(spans: &[Span]) -> String {
    let one = |span: &Span| {
        if span.first == span.last { span.first.clone() } else { format!("{}–{}", span.first, span.last) }
    };
    spans.iter().map(one).collect::<Vec<_>>().join(", ")
}

/// Numbers of an event in a list; where there are none, how many containers wait for one.
pub fn numbers(line: &view::EventLine) -> String {
    let written = spans(&line.numbers);
    match (written.is_empty(), line.unnumbered) {
        (true, 0) => String::new(),
        (true, waiting) => say().open.containers(waiting),
        (false, 0) => written,
        (false, waiting) => format!("{written} + {waiting}"),
    }
}

/// What the page makes of a span: how many; what else; and whether that is a fault.
pub fn span(says: &SpanSays, vessel: &str) -> (String, String, bool) {
    let words = say().container;
    match says {
        SpanSays::Unnumbered(count) => (words.says_count(vessel, *count), String::new(), false),
        SpanSays::Free(count) => (words.says_count(vessel, *count), words.says_free().into(), false),
        SpanSays::Taken(count, taken) => {
            (words.says_count(vessel, *count), words.says_taken(&taken.join(", "), taken.len()), true)
        }
        SpanSays::Fault(fault) => (String::new(), span_fault(fault), true),
    }
}

/// Why a span cannot be read.
pub fn span_fault(fault: &SpanFault) -> String {
    let words = say().container;
    match fault {
        SpanFault::First => words.says_first().into(),
        SpanFault::Last => words.says_last().into(),
        SpanFault::Reversed => words.says_backwards().into(),
        SpanFault::TooLong(_) => words.says_too_many(logbook::numbers::SPAN_LIMIT as usize),
        SpanFault::PrefixDiffers => words.says_prefix().into(),
        SpanFault::Letters => words.says_letters().into(),
    }
}

/// Why no pin was added.
pub fn mount_fault(fault: &MountFault) -> String {
    let words = say().bench;
    match fault {
        MountFault::Count(most) => words.mount_count_fault(*most),
        MountFault::NoDigits => words.mount_no_digits().into(),
        MountFault::Taken(code) => words.mount_taken(code),
    }
}

/// What cannot be taken in Setup as it was typed.
pub fn refused(refused: &Refused) -> String {
    let words = say().first;
    match refused {
        Refused::NoName => words.refused_name().into(),
        Refused::TooSmall { least, .. } => words.refused_small(*least),
        Refused::TooLarge { most, .. } => words.refused_large(*most),
        Refused::PrefixEndsInDigit => words.refused_prefix().into(),
        Refused::NotALetter => words.refused_letter().into(),
        Refused::LetterTaken => words.refused_letter_taken().into(),
        Refused::NotARange => words.refused_range().into(),
        Refused::RangeUsed(count) => words.own_range_taken(*count),
        Refused::RangeTaken => words.refused_range_taken().into(),
    }
}

/// What is odd about coordinates as typed. Where nothing could be read at all, that is enough to say.
pub fn place_problems(typed: &Typed) -> Vec<String> {
    let unread = typed.readings.is_empty() && typed.problems.contains(&Problem::Nothing);
    let said = |problem: &&Problem| !unread || matches!(problem, Problem::Nothing);
    typed.problems.iter().filter(said).map(place_problem).collect()
}

fn place_problem(problem: &Problem) -> String {
    let value = match problem {
        Problem::LatitudeRange(number)
        | Problem::LongitudeRange(number)
        | Problem::Minutes(number)
        | Problem::Seconds(number) => number.to_string(),
        Problem::Far(metres) => metres.round().to_string(),
        Problem::Height(metres) => metres.to_string(),
        Problem::ZoneLetter(letter) => letter.to_string(),
        Problem::Datum(text) | Problem::NotUnderstood(text) => text.clone(),
        Problem::Nothing
        | Problem::OneNumber
        | Problem::TooManyNumbers
        | Problem::FractionBefore
        | Problem::SignAndLetter
        | Problem::Order
        | Problem::Swapped
        | Problem::Sign
        | Problem::ZeroZero
        | Problem::LetterO
        | Problem::Comma
        | Problem::ZoneHemisphere
        | Problem::Grid
        | Problem::Iso6709Digits
        | Problem::Iso6709End => String::new(),
    };
    say().place.problem(problem.code(), &value)
}

/// In which notation coordinates were read.
pub fn notation(notation: Notation) -> String {
    let code = match notation {
        Notation::Decimal => "decimal",
        Notation::Minutes => "minutes",
        Notation::Seconds => "seconds",
        Notation::Iso6709 => "iso6709",
        Notation::GeoUri => "geo_uri",
        Notation::Utm => "utm",
        Notation::Mgrs => "mgrs",
    };
    say().place.notation(code)
}

/// Why the sample did not come in.
pub fn sample_fault(fault: &ExchangeFault) -> (String, String) {
    let words = say().faults;
    match fault {
        ExchangeFault::Save(fault) => save_fault(fault),
        ExchangeFault::Empty | ExchangeFault::Refused(_) | ExchangeFault::Courier(_) | ExchangeFault::Garbled => {
            (words.sample().into(), words.sample_do().into())
        }
    }
}
