//! Questions in, answers out: the messages of the press in the words of the typesetter, and back.

use label::{Fonts, Gathering, Job, Layout, Outcome, Paper, Printed, Refused, Setter, Stroke, Wanted};
use ports::press::{Answer, Format, Laid, Line, Order, Over, Proof, Request};
use units::{Millimetres, Points};

/// Why there is no answer.
#[derive(Debug, PartialEq, Eq)]
pub enum Unanswered {
    /// A length in the question is not a number.
    NoNumber,
    /// A label names a style or has a code that is none.
    NoSuch,
    /// It is larger work, which is answered by [`crate::work::Desk`].
    Larger,
}

/// Answers one question.
pub fn answer(fonts: &Fonts, request: Request) -> Result<Answer, Unanswered> {
    let mut setter = Setter::new(fonts);
    match request {
        Request::Proof { orders, format } => proofs(&mut setter, &orders, &sizes(format)?),
        Request::Lay { labels, format, paper, check_words } => {
            Ok(laid(&mut setter, labels as usize, &sizes(format)?, sheet(paper), &check_words))
        }
        Request::Print { orders, format, paper, title, check_words, made } => {
            let format = sizes(format)?;
            let count = orders.len();
            let wanted =
                |order: &Order| Wanted { lines: lines(&order.lines), code: None, format, copies: order.copies };
            let job = Job {
                labels: orders.iter().map(wanted).collect(),
                gathering: Gathering::AsGiven,
                layout: Layout::fresh(sheet(paper)),
                title,
                words: vec![check_words],
                made,
            };
            Ok(printed(label::print(&mut setter, job), count))
        }
        Request::Work(_) => Err(Unanswered::Larger),
    }
}

/// Places, cut lines and bar exactly as the PDF has them.
fn laid(setter: &mut Setter<'_>, labels: usize, format: &label::Format, paper: Paper, check_words: &str) -> Answer {
    let layout = Layout::fresh(paper);
    let (columns, rows) = layout.grid(format.width, format.height);
    let capacity = columns * rows;
    let size = (format.width, format.height);
    let plan = match label::plan(&vec![size; labels.max(capacity).max(1)], &layout) {
        Ok(plan) => plan,
        Err(by) => return Answer::DoesNotFit(vec![(0, vec![Over::Sheet { by_mm: by.millimetres() }])]),
    };
    let place = |cell: &label::Cell| (cell.x.millimetres(), cell.y.millimetres());
    let wanted = label::plan(&vec![size; labels], &layout).expect("one label fits, as was seen above");
    let (width, height) = paper.size();
    let words = label::words(setter, &layout, &[check_words]);
    Answer::Laid(Laid {
        paper_mm: (width.millimetres(), height.millimetres()),
        columns,
        rows,
        places: plan.cells[..capacity].iter().map(place).collect(),
        cuts: (0..wanted.sheets).map(|number| path_of(&wanted.cut_lines(number, &layout))).collect(),
        bar: path_of(&layout.bar()),
        words_at: layout.words_at(),
        words: words.map_or_else(String::new, |words| label::path(setter, &words)),
    })
}

pub(crate) fn path_of(strokes: &[Stroke]) -> String {
    strokes.iter().map(|((x, y), (to_x, to_y))| format!("M{x:.3} {y:.3}L{to_x:.3} {to_y:.3}")).collect()
}

fn proofs(setter: &mut Setter<'_>, orders: &[Order], format: &label::Format) -> Result<Answer, Unanswered> {
    let proof = |order: &Order| {
        let outcome = setter.frame(&lines(&order.lines), format);
        proof(setter, outcome)
    };
    Ok(Answer::Proofs(orders.iter().map(proof).collect()))
}

pub(crate) fn proof(setter: &Setter<'_>, Outcome { frame, over }: Outcome) -> Proof {
    let middle = |length: Millimetres| length.half().millimetres();
    Proof {
        lines: frame.lines.iter().map(|line| line.text.clone()).collect(),
        path: label::path(setter, &frame),
        type_pt: frame.size.points(),
        pin: (frame.pin_x.millimetres(), middle(frame.height), middle(frame.pin)),
        lines_above_pin: frame.above,
        over: over.into_iter().map(said).collect(),
    }
}

fn printed(result: Result<Printed, Refused>, orders: usize) -> Answer {
    let count =
        |number: usize| u32::try_from(number).expect("copies are counted in 32 bits and each label needs memory");
    match result {
        Ok(Printed { bytes, sheets, labels }) => Answer::Pdf { bytes, sheets: count(sheets), labels: count(labels) },
        Err(Refused::Over(over)) => {
            let each = |(order, over): (usize, Vec<label::Over>)| (order, over.into_iter().map(said).collect());
            Answer::DoesNotFit(over.into_iter().map(each).collect())
        }
        Err(Refused::Sheet(by)) => {
            let over = |order| (order, vec![Over::Sheet { by_mm: by.millimetres() }]);
            Answer::DoesNotFit((0..orders).map(over).collect())
        }
        Err(Refused::Document(reason)) => Answer::NotWritten(reason),
    }
}

pub(crate) fn said(over: label::Over) -> Over {
    match over {
        label::Over::Long { text, by } => Over::Long { text, by_mm: by.millimetres() },
        label::Over::High { by } => Over::High { by_mm: by.millimetres() },
        label::Over::Glyph(letter) => Over::Glyph { letter },
        label::Over::Code { text, by } => Over::Long { text, by_mm: by.millimetres() },
    }
}

pub(crate) fn lines(order: &[Line]) -> Vec<label::Line> {
    let line = |line: &Line| line.iter().map(|run| label::Run { text: run.text.clone(), italic: run.italic }).collect();
    order.iter().map(line).collect()
}

pub(crate) fn sizes(format: Format) -> Result<label::Format, Unanswered> {
    Ok(label::Format {
        width: Millimetres::new(format.width_mm).ok_or(Unanswered::NoNumber)?,
        height: Millimetres::new(format.height_mm).ok_or(Unanswered::NoNumber)?,
        largest: Points::new(format.type_largest_pt).ok_or(Unanswered::NoNumber)?,
        least: Points::new(format.type_least_pt).ok_or(Unanswered::NoNumber)?,
        pin: Millimetres::new(format.pin_mm).ok_or(Unanswered::NoNumber)?,
        pin_at: label::PinAt::Middle,
    })
}

fn sheet(paper: ports::press::Paper) -> Paper {
    match paper {
        ports::press::Paper::A4 => Paper::A4,
        ports::press::Paper::Letter => Paper::Letter,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use ports::press::Run;

    fn fonts() -> Fonts {
        let read = |name: &str| {
            let path = format!("{}/../../public/fonts/{name}", env!("CARGO_MANIFEST_DIR"));
            std::fs::read(&path).expect("the fonts are part of the project")
        };
        let further = vec![read("DejaVuSansCondensed-gaps.ttf")];
        Fonts::new(read("FiraSansCondensed-Regular.ttf"), read("FiraSansCondensed-Italic.ttf"), further)
            .expect("the fonts of the project can be read")
    }

    fn order(text: &str, copies: u32) -> Order {
        Order { lines: vec![vec![Run { text: text.to_owned(), italic: false }]], copies }
    }

    fn format(width_mm: f64) -> Format {
        Format { width_mm, height_mm: 8.0, type_largest_pt: 5.0, type_least_pt: 4.0, pin_mm: 0.7 }
    }

    fn print(orders: Vec<Order>, width_mm: f64) -> Answer {
        let request = Request::Print {
            orders,
            format: format(width_mm),
            paper: ports::press::Paper::A4,
            title: "Labels".into(),
            check_words: "This bar must measure 50 mm.".into(),
            made: (2027, 6, 19, 12, 0, 0),
        };
        answer(&fonts(), request).expect("all lengths are numbers")
    }

    #[test]
    fn a_proof_says_where_the_pin_passes() {
        let orders = vec![order("19.vi.2027", 3)];
        let answer =
            answer(&fonts(), Request::Proof { orders, format: format(18.0) }).expect("all lengths are numbers");
        let Answer::Proofs(proofs) = answer else { panic!("a proof was asked for") };
        assert_eq!(proofs.len(), 1);
        assert_eq!((proofs[0].pin, proofs[0].lines_above_pin), ((9.0, 4.0, 0.35), 1));
        assert_eq!((proofs[0].lines.as_slice(), proofs[0].type_pt), (&["19.vi.2027".to_owned()][..], 5.0));
        assert!(proofs[0].path.starts_with('M') && proofs[0].over.is_empty());
    }

    #[test]
    fn a_print_counts_sheets_and_labels() {
        let Answer::Pdf { bytes, sheets, labels } = print(vec![order("a", 330), order("b", 1)], 18.0) else {
            panic!("both labels fit");
        };
        assert!(bytes.starts_with(b"%PDF-"));
        assert_eq!((sheets, labels), (2, 331));
    }

    #[test]
    fn what_does_not_fit_is_said_and_nothing_is_printed() {
        let answer =
            print(vec![order("fits", 1), order("Llanfairpwllgwyngyllgogerychwyrn", 1), order("昆虫", 1)], 18.0);
        let Answer::DoesNotFit(over) = answer else { panic!("two labels do not fit") };
        assert_eq!(over.iter().map(|(order, _)| *order).collect::<Vec<_>>(), [1, 2]);
        assert!(matches!(over[0].1[..], [Over::Long { by_mm, .. }] if by_mm > 0.0));
        assert_eq!(over[1].1, [Over::Glyph { letter: '昆' }, Over::Glyph { letter: '虫' }]);
    }

    #[test]
    fn a_label_larger_than_the_sheet_is_said() {
        let Answer::DoesNotFit(over) = print(vec![order("a", 1)], 300.0) else { panic!("it is too wide") };
        assert_eq!(over, [(0, vec![Over::Sheet { by_mm: 110.0 }])]);
    }

    #[test]
    fn a_sheet_is_laid_as_it_is_printed() {
        let request = Request::Lay {
            labels: 331,
            format: format(18.0),
            paper: ports::press::Paper::A4,
            check_words: "50 mm".into(),
        };
        let Ok(Answer::Laid(laid)) = answer(&fonts(), request) else { panic!("it fits") };
        assert_eq!((laid.paper_mm, laid.columns, laid.rows), ((210.0, 297.0), 10, 33));
        assert_eq!((laid.places.len(), laid.places[11], laid.cuts.len()), (330, (28.0, 18.0), 2));
        assert!(laid.cuts[1].starts_with("M7.000 10.000L31.000 10.000"), "{}", laid.cuts[1]);
        assert!(laid.bar.starts_with("M10.000 283.500L60.000 283.500") && laid.words.starts_with('M'));
    }

    #[test]
    fn questions_and_answers_travel_as_json() {
        let request = Request::Proof { orders: vec![order("♀ 47.6138° N", 2)], format: format(18.0) };
        let json = serde_json::to_vec(&request).expect("a question is plain data");
        assert_eq!(serde_json::from_slice::<Request>(&json).expect("and comes back"), request);
        let answer = answer(&fonts(), request).expect("all lengths are numbers");
        let json = serde_json::to_vec(&answer).expect("an answer is plain data");
        assert_eq!(serde_json::from_slice::<Answer>(&json).expect("and comes back"), answer);
    }
}
