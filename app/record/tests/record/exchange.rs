//! Sessions that exchange files in any order, doubled and late, end with the same bytes.

use crate::schema::written;
use crate::sessions::{SESSIONS, Session, play_on, step};
use proptest::prelude::*;
use record::Record;
use record::wire::read;

fn file_of(session: &Session) -> Vec<u8> {
    written(&crate::wire::header(), &session.copies.values().cloned().collect::<Vec<Record>>())
}

fn import(session: &mut Session, file: &[u8]) {
    read(file).expect("it was just written").records.iter().for_each(|record| session.take(record));
}

proptest! {
    #[test]
    fn files_in_any_order_doubled_and_late_end_in_the_same_bytes(
        rounds in prop::collection::vec(prop::collection::vec(step(), 0..12), 1..4),
        order in prop::collection::vec((0..SESSIONS, any::<prop::sample::Index>()), 0..30),
    ) {
        let mut sessions: Vec<Session> = (0..SESSIONS).map(Session::new).collect();
        let mut sent: Vec<Vec<u8>> = Vec::new();
        let mut order = order.into_iter();
        for steps in &rounds {
            sessions = play_on(sessions, steps).pop().expect("there is a last state");
            sent.extend(sessions.iter().map(file_of));
            // Some files arrive now, some again, some long after they were written.
            for (to, which) in order.by_ref().take(10) {
                let file = which.get(&sent).clone();
                import(&mut sessions[to], &file);
            }
        }
        // In the end everybody gets everybody's last file, each in an order of their own.
        let last: Vec<Vec<u8>> = sessions.iter().map(file_of).collect();
        for (number, session) in sessions.iter_mut().enumerate() {
            for turn in 0..SESSIONS {
                import(session, &last[(number + turn) % SESSIONS]);
            }
        }
        let ends: Vec<Vec<u8>> = sessions.iter().map(file_of).collect();
        for end in &ends {
            prop_assert_eq!(end, &ends[0]);
        }
    }
}
