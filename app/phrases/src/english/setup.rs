//! Setup.

use super::English;
use crate::sentences::say;

say! { English says Setup {
    title: "Setup";
    you: "You and your numbers";
    name: "Name";
    team: "With";
    team_says: "Those who usually come along, set apart by semicolons.";
    numbers: "Numbers";
    prefix: "Prefix";
    habit: "Habit";
    habit_none: "Not said yet";
    width: "Digits";
    width_unit: "digits";
    own_numbers: "Letter or range of this device";
    letter: "Letter";
    range: "Range";
    range_to: "to";
    next: "Next";
    next_none: "none proposed";
    next_full: "range used up";
    keep_numbers: "Number like this";
    numbers_new: "Numbers already given keep their old prefix.";
    second(person: &str): format!("Another device numbers for {person} as well.");
    second_do: "Take numbers of its own";
    labels: "Labels and limits";
    sheet: "Label sheet";
    label_size: "Label";
    label_width: "Width of a label in millimetres";
    label_height: "Height of a label in millimetres";
    spares: "Spare labels";
    spares_unit: "of each kind";
    radius: "Radius limit";
    radius_says: "A position vaguer than this is marked on the day’s list.";
    language: "Language";
    theme: "Light you work in";
    theme_system: "As the system";
    lamp_says: "Lamp is red only. Turn the screen’s brightness down as well.";
    storage: "Storage";
    used: "used";
    used_none: "not said";
    events: "events";
    only_here: "only here";
    promised: "This browser has promised not to clear them.";
    not_promised: "This browser has not promised to keep them. Export often.";
    not_said: "This browser does not say whether it keeps them. Export often.";
    ask_promise: "Ask for the promise";
    no_backup: "A promise is not a backup.";
    backup: "Full backup";
    import: "Import";
    undo_import: "Undo the last import";
    undo_import_says: "Brings back what stood before it, and keeps what you wrote since.";
    version(app: &str): format!("Version {app}");
    how_1: "Name, numbering, label sheet and limits travel with your log. Theme, language and the measured screen stay on this device.";
    how_2: "What is changed here is kept at once and can be undone.";
} }
