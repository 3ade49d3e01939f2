//! The first run, and how a device numbers.

use super::{English, counted};
use crate::sentences::say;

say! { English says First {
    title: "Before the first catch";
    note: "A minute, all can be changed";
    install: "Put it on the Home Screen";
    install_says: "On an iPhone do this first: what you log in the browser does not move into the installed app.";
    install_show: "Show me how";
    install_step_1: "Tap the Share sign of the browser, the square with an arrow.";
    install_step_2: "Choose “Add to Home Screen”, then “Add”.";
    install_step_3: "Open Glassine from the Home Screen and begin there.";
    name: "Your name, as labels should say it";
    name_label: "Name on labels";
    name_field: "The name can wait. It is asked again in Setup.";
    habits: "How you number";
    example(code: &str): example(code).to_owned();
    storage: "Storage";
    promised: "This browser has promised not to clear your records.";
    not_promised: "This browser has not promised to keep your records. Export often.";
    not_said: "This browser does not say whether it keeps your records. Export often.";
    ask_promise: "Ask for the promise";
    no_backup: "A promise is not a backup. The start page says what exists only on this phone.";
    begin: "Begin";
    can_wait: "Not now";
    how_1: "Two questions, and both can wait: your name, and how you number your vials.";
    how_2: "Nothing leaves this phone unless you export it. There is no account.";
    own_title: "Numbers on this device";
    own_note(person: &str): format!("another device of {person}");
    own_says: "Two devices that count for themselves would give the same number twice. So this one takes its own.";
    own_legend: "How this device numbers";
    own_letter: "A letter of its own";
    own_letter_field: "Letter";
    own_from: "from";
    own_range: "A range of its own";
    own_range_to: "to";
    own_range_count(count: usize): format!("{}, all free here", counted(count, "number", "numbers"));
    own_range_taken(count: usize): format!("{} taken here already", counted(count, "number", "numbers"));
    own_range_order: "the last is not after the first";
    own_none: "No numbers here";
    own_none_says: "for reading, the bench and labels";
    own_both: "Then both can count";
    own_both_says: "Tell the other device by exporting once: then it knows what is taken.";
    own_other: "the other device";
    own_other_says(number: &str): format!("highest seen {number}");
    own_this: "this device";
    own_this_says: "none given yet";
    own_take_letter(letter: &str): format!("Take letter {letter}");
    own_take_range(first: u32, last: u32): format!("Take {first} to {last}");
    own_take_none: "Give no numbers here";
    own_how: "The next number is the highest that this device has seen plus one. It cannot see what another phone gives at the same hour.";
} }

fn example(code: &str) -> &'static str {
    match code {
        "one" => "IV27-0001, IV27-0002, IV27-0003",
        "letters" => "1a, 1b, 1c, 2a",
        "engraved" => "12, 40, 7, and 12 next week",
        "none" => "numbered at the evening’s sorting",
        _ => "",
    }
}
