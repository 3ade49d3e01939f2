//! Where labels lie, how much paper they take, and where it is cut.

use super::*;
use proptest::prelude::*;

fn mm(value: f64) -> Millimetres {
    Millimetres::new(value).expect("the test gives numbers")
}

fn same(count: usize, width: f64, height: f64) -> Vec<(Millimetres, Millimetres)> {
    vec![(mm(width), mm(height)); count]
}

fn planned(sizes: &[(Millimetres, Millimetres)], layout: &Layout) -> Plan {
    plan(sizes, layout).expect("the labels are smaller than the paper")
}

fn at(plan: &Plan, label: usize) -> (usize, f64, f64) {
    let cell = plan.cells[label];
    (cell.sheet, cell.x.millimetres(), cell.y.millimetres())
}

#[test]
fn papers_hold_whole_labels() {
    let check = |paper, width, height, grid: (usize, usize)| {
        let layout = Layout::fresh(paper);
        assert_eq!(layout.grid(mm(width), mm(height)), grid);
        let whole = grid.0 * grid.1;
        assert_eq!(planned(&same(whole, width, height), &layout).sheets, 1);
        assert_eq!(planned(&same(whole + 1, width, height), &layout).sheets, 2);
    };
    check(Paper::A4, 18.0, 8.0, (10, 33));
    check(Paper::A4, 19.0, 9.0, (10, 30));
    check(Paper::Letter, 18.0, 8.0, (10, 31));
    check(Paper::Own(mm(100.0), mm(150.0)), 18.0, 8.0, (4, 15));
    check(Paper::Own(mm(60.0), mm(90.0)), 18.0, 8.0, (2, 8));
}

#[test]
fn labels_of_one_size_run_row_by_row_and_sheet_by_sheet() {
    let plan = planned(&same(331, 18.0, 8.0), &Layout::fresh(Paper::A4));
    assert_eq!(
        [0, 9, 10, 330].map(|label| at(&plan, label)),
        [(0, 10.0, 10.0), (0, 172.0, 10.0), (0, 10.0, 18.0), (1, 10.0, 10.0)]
    );
    assert_eq!(planned(&[], &Layout::fresh(Paper::A4)).sheets, 1);
}

#[test]
fn a_part_used_sheet_is_used_up() {
    let used = Layout { used_down: mm(16.0), used_across: mm(54.0), ..Layout::fresh(Paper::A4) };
    let plan = planned(&same(8, 18.0, 8.0), &used);
    assert_eq!([0, 6, 7].map(|label| at(&plan, label)), [(0, 64.0, 26.0), (0, 172.0, 26.0), (0, 10.0, 34.0)]);
    let full = Layout { used_down: mm(263.0), used_across: mm(18.0), ..Layout::fresh(Paper::A4) };
    assert_eq!(at(&planned(&same(1, 18.0, 8.0), &full), 0), (1, 10.0, 10.0));
    let narrow = Layout { used_across: mm(175.0), ..Layout::fresh(Paper::A4) };
    assert_eq!(at(&planned(&same(1, 18.0, 8.0), &narrow), 0), (0, 10.0, 18.0));
    let beyond = Layout { used_down: mm(9000.0), ..Layout::fresh(Paper::A4) };
    assert_eq!(at(&planned(&same(1, 18.0, 8.0), &beyond), 0), (1, 10.0, 10.0));
}

#[test]
fn several_heights_stand_in_strips_of_their_own() {
    let sizes = [(18.0, 8.0), (25.0, 10.0), (18.0, 8.0), (15.0, 8.0)].map(|(width, height)| (mm(width), mm(height)));
    let plan = planned(&sizes, &Layout::fresh(Paper::A4));
    assert_eq!(
        [0, 1, 2, 3].map(|label| at(&plan, label)),
        [(0, 10.0, 20.0), (0, 10.0, 10.0), (0, 28.0, 20.0), (0, 46.0, 20.0)]
    );
    assert_eq!(plan.labels(0), [1, 0, 2, 3]);
}

#[test]
fn cut_lines_lie_around_every_label_and_run_through() {
    let layout = Layout::fresh(Paper::A4);
    assert_eq!(planned(&[], &layout).cut_lines(0, &layout), []);
    let lines = planned(&same(12, 18.0, 8.0), &layout).cut_lines(0, &layout);
    assert_eq!(lines.len(), 3 + 11);
    assert_eq!(lines[1], ((7.0, 18.0), (193.0, 18.0)));
    assert_eq!(lines[3], ((10.0, 7.0), (10.0, 27.5)));
    assert_eq!(lines[13], ((190.0, 7.0), (190.0, 18.0)), "below the last of ten there is no label");
}

#[test]
fn the_bar_is_50_mm_long_where_the_card_is_as_wide() {
    assert_eq!(Layout::fresh(Paper::A4).bar()[0], ((10.0, 283.5), (60.0, 283.5)));
    assert_eq!(Layout::fresh(Paper::Own(mm(60.0), mm(90.0))).bar(), []);
}

#[test]
fn a_label_larger_than_the_sheet_is_refused() {
    let over = plan(&same(1, 200.0, 8.0), &Layout::fresh(Paper::A4)).expect_err("it is too wide");
    assert!((over.millimetres() - 10.0).abs() < 1e-9);
    let all_margin = Layout::fresh(Paper::Own(mm(20.0), mm(90.0)));
    assert_eq!(plan(&[], &all_margin), Err(Millimetres::ZERO));
}

/// The least number of sheets for these strips: every way of putting them onto sheets, tried one by one.
fn fewest(heights: &[f64], filled: &mut Vec<f64>, room: f64) -> usize {
    let Some((first, rest)) = heights.split_first() else { return filled.len() };
    let mut best = usize::MAX;
    for sheet in 0..=filled.len() {
        if sheet == filled.len() {
            filled.push(0.0);
        }
        if filled[sheet] + first <= room + ROUNDING_MM {
            filled[sheet] += first;
            best = best.min(fewest(rest, filled, room));
            filled[sheet] -= first;
        }
        if filled[filled.len() - 1] == 0.0 {
            filled.pop();
            break;
        }
    }
    best
}

const KINDS: [(f64, f64); 6] = [(18.0, 8.0), (18.0, 5.0), (12.0, 8.0), (40.0, 15.0), (25.0, 10.0), (70.0, 40.0)];

fn mixed() -> impl Strategy<Value = Vec<(Millimetres, Millimetres)>> {
    let kind = (0..KINDS.len(), 1_usize..60);
    let all = |kinds: Vec<(usize, usize)>| {
        kinds.into_iter().flat_map(|(kind, count)| same(count, KINDS[kind].0, KINDS[kind].1)).collect()
    };
    proptest::collection::vec(kind, 1..8).prop_map(all)
}

/// A number of sheets that no plan can beat: labels of one height need at least so many strips, a sheet holds only so
/// many strips of one height, and only so much height in all.
fn bound(sizes: &[(Millimetres, Millimetres)], layout: &Layout) -> f64 {
    let bare: Vec<(f64, f64)> = sizes.iter().map(|size| (size.0.millimetres(), size.1.millimetres())).collect();
    let mut heights: Vec<f64> = bare.iter().map(|size| size.1).collect();
    heights.sort_by(f64::total_cmp);
    heights.dedup();
    let strips = |height: f64| {
        let widths: Vec<f64> = bare.iter().filter(|size| size.1 == height).map(|size| size.0).collect();
        let narrowest = widths.iter().copied().fold(f64::INFINITY, f64::min);
        let by_count = widths.len() as f64 / (layout.across() / narrowest + 1e-9).floor();
        by_count.max(widths.iter().sum::<f64>() / layout.across() - 1e-9).ceil()
    };
    let of_one = |height: &f64| (strips(*height) / (layout.down() / height + 1e-9).floor()).ceil();
    let of_all = (heights.iter().map(|height| strips(*height) * height).sum::<f64>() / layout.down() - 1e-9).ceil();
    heights.iter().map(of_one).fold(of_all, f64::max)
}

fn overlap(a: (Cell, (Millimetres, Millimetres)), b: (Cell, (Millimetres, Millimetres))) -> bool {
    let apart = |from: Millimetres, size: Millimetres, other: Millimetres, other_size: Millimetres| {
        let (from, other) = (from.millimetres(), other.millimetres());
        from + size.millimetres() <= other + ROUNDING_MM || other + other_size.millimetres() <= from + ROUNDING_MM
    };
    a.0.sheet == b.0.sheet && !apart(a.0.x, a.1.0, b.0.x, b.1.0) && !apart(a.0.y, a.1.1, b.0.y, b.1.1)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(120))]

    #[test]
    fn no_two_labels_share_paper_and_all_lie_within_the_margins(sizes in mixed()) {
        let layout = Layout::fresh(Paper::Own(mm(148.0), mm(105.0)));
        let plan = planned(&sizes, &layout);
        let all: Vec<_> = plan.cells.iter().copied().zip(sizes.iter().copied()).collect();
        for (index, one) in all.iter().enumerate() {
            prop_assert!(one.0.x.millimetres() + one.1.0.millimetres() <= 138.0 + ROUNDING_MM);
            prop_assert!(one.0.y.millimetres() + one.1.1.millimetres() <= 88.0 + ROUNDING_MM);
            prop_assert!(!all[..index].iter().any(|other| overlap(*one, *other)));
        }
    }

    #[test]
    fn paper_is_near_the_bound(sizes in mixed()) {
        let layout = Layout::fresh(Paper::Own(mm(148.0), mm(105.0)));
        let (sheets, bound) = (planned(&sizes, &layout).sheets as f64, bound(&sizes, &layout));
        prop_assert!(sheets >= bound && sheets <= bound * 11.0 / 9.0 + 2.0, "{} sheets, no fewer than {}", sheets, bound);
    }

    #[test]
    fn strips_take_as_few_sheets_as_brute_force_finds(kinds in proptest::collection::vec(0_usize..6, 1..9)) {
        let layout = Layout::fresh(Paper::Own(mm(90.0), mm(97.0)));
        let sizes: Vec<_> = kinds.iter().map(|kind| (mm(70.0), mm(KINDS[*kind].1))).collect();
        let heights: Vec<f64> = sizes.iter().map(|size| size.1.millimetres()).collect();
        let best = fewest(&heights, &mut Vec::new(), layout.down());
        let plan = planned(&sizes, &layout);
        prop_assert!(plan.sheets as f64 <= best as f64 * 11.0 / 9.0 + 6.0 / 9.0, "{} sheets, {} would do", plan.sheets, best);
    }
}
