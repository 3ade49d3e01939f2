use crate::context::say;
use leptos::prelude::*;

/// A row of a chart: what, in italics or not, and how many.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BarRow {
    /// What is counted.
    pub words: String,
    /// A Latin name.
    pub latin: bool,
    /// How many.
    pub count: usize,
}

/// Rows of a chart at most; the others are counted.
const SHOWN: usize = 12;

/// A chart that is a table with a drawn column.
#[component]
pub fn Bars(
    /// What is counted.
    name: &'static str,
    /// The rows, the most frequent first.
    rows: Vec<BarRow>,
) -> impl IntoView {
    let words = say().day;
    let most = rows.iter().map(|row| row.count).max().unwrap_or(1).max(1);
    let more = rows.len().saturating_sub(SHOWN);
    let row = move |row: BarRow| {
        let name = if row.latin { view! { <em>{row.words}</em> }.into_any() } else { row.words.into_any() };
        let length = (row.count * 100).div_ceil(most);
        view! {
            <tr>
                <th scope="row">{name}</th>
                <td class="count">{say().dates.number(row.count)}</td>
                <td><svg class="drawing" viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true"><path class="bar-line" d=format!("M0 5H{length}")/></svg></td>
            </tr>
        }
    };
    view! {
        <table class="bars">
            <thead><tr><th scope="col">{name}</th><th scope="col" class="count">{words.bar_count()}</th><th scope="col"><span class="unseen">{words.drawn()}</span></th></tr></thead>
            <tbody>{rows.into_iter().take(SHOWN).map(row).collect_view()}</tbody>
        </table>
        {(more > 0).then(|| view! { <p class="note">{words.others(more)}</p> })}
    }
    .into_any()
}
